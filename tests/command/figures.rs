//! `assess --figures DIR`: what is drawn is what the report tells, and stays on its sheet.

use crate::edit::Edit;
use crate::run::{example, file, jackpull, stdout};
use serde_json::Value;
use std::path::{Path, PathBuf};

const NAMES: [&str; 6] = ["long_section", "forces", "limits", "bore", "settlement", "score"];
const EXAMPLES: [&str; 6] = ["mill_lane", "quarry_road", "kiln_bank", "osier_road", "sallow_junction", "tarn_head"];

fn folder(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("figures").join(name)
}

fn drawn(into: &Path, path: &str, units: &str) -> Vec<(String, String)> {
    let into = into.display().to_string();
    let output = jackpull(&["assess", "--format", "crew", "--units", units, "--figures", &into, path]);
    assert!(output.stderr.is_empty(), "{output:?}");
    let stem = Path::new(path).file_stem().unwrap().to_str().unwrap();
    let read = |name: &str| std::fs::read_to_string(format!("{into}/{stem}_{name}.svg"));
    NAMES.iter().filter_map(|name| Some(((*name).to_owned(), read(name).ok()?))).collect()
}

/// The values of an attribute.
fn values<'a>(svg: &'a str, attribute: &str) -> Vec<&'a str> {
    let opening = format!(" {attribute}=\"");
    svg.split(&opening).skip(1).map(|rest| rest.split_once('"').unwrap().0).collect()
}

fn numbers(svg: &str, attributes: &[&str]) -> Vec<f64> {
    let all = attributes.iter().flat_map(|attribute| values(svg, attribute));
    all.flat_map(|value| value.split([' ', ','])).map(|number| number.parse().unwrap()).collect()
}

/// Every mark lies on the sheet, every text too by its letters, and each figure says in words what it shows.
#[test]
fn figures_stay_on_their_sheet() {
    for name in EXAMPLES {
        for units in ["si", "us"] {
            let figures = drawn(&folder(units), &example(&format!("fennbridge_{name}.yaml")), units);
            assert_eq!(figures.len(), NAMES.len(), "{name}");
            for (figure, svg) in figures {
                let of = format!("{name} {figure} {units}");
                assert!(svg.starts_with("<svg ") && svg.contains("role=\"img\""), "{of}");
                let said = |tag: &str| svg.split_once(&format!("<{tag}>")).unwrap().1.split_once("</").unwrap().0.len();
                assert!(said("title") > 15 && said("desc") > 15, "{of}");
                let view = values(&svg, "viewBox")[0].split(' ').map(|n| n.parse().unwrap()).collect::<Vec<f64>>();
                let (width, height) = (view[2], view[3]);
                let points = numbers(&svg, &["points"]);
                let xs = points.iter().step_by(2).copied().chain(numbers(&svg, &["x", "x1", "x2", "cx"]));
                let ys = points.iter().skip(1).step_by(2).copied().chain(numbers(&svg, &["y", "y1", "y2", "cy"]));
                for (place, most) in xs.map(|x| (x, width)).chain(ys.map(|y| (y, height))) {
                    assert!((-0.1..=most + 0.1).contains(&place), "{of}: {place} of {most}");
                }
                for text in svg.split("<text ").skip(1) {
                    let (mark, rest) = text.split_once('>').unwrap();
                    let mark = format!(" {mark}");
                    let (class, text) = (values(&mark, "class")[0], rest.split_once("</").unwrap().0);
                    let long = (if class.contains("small") { 9.0 } else { 10.5 })
                        * (if class.contains("strong") { 0.64 } else { 0.54 })
                        * f64::from(u32::try_from(text.chars().count()).unwrap());
                    let x = numbers(&mark, &["x"])[0];
                    let from = if class.contains("end") {
                        x - long
                    } else if class.contains("middle") {
                        x - long / 2.0
                    } else {
                        x
                    };
                    assert!(from > -2.0 && from + long < width + 6.0, "{of}: {text}");
                }
                let other: &[&str] = if units == "us" {
                    &[" kN", " MPa", " kPa", " m<", " mm"]
                } else {
                    &[" kip", " psi", " ft", " in<"]
                };
                for unit in other {
                    // A pipe is called by the size that the file gives.
                    let named = |text: &&str| text.ends_with("PE100 315") || text.ends_with("concrete 400");
                    let before: Vec<&str> = svg.split(unit).collect();
                    let told = before.split_last().unwrap().1.iter().filter(|text| !named(text)).count();
                    assert_eq!(told, 0, "{of}: {unit}");
                }
            }
        }
    }
}

/// Mill Lane: 206.8 kN likely on the pipe and 9.0 mm of settlement, as in the report; the invert at 25.4 of 30 mm is
/// 0.8467 of a scale of 1.25 over 240 pixels, 162.6.
#[test]
fn figures_tell_what_the_report_tells() {
    let path = example("fennbridge_mill_lane.yaml");
    let report: Value = serde_json::from_slice(&jackpull(&["assess", "--format", "json", &path]).stdout).unwrap();
    let first = &report["schemes"][0];
    let figures = drawn(&folder("told"), &path, "si");
    let of = |name: &str| &figures.iter().find(|figure| figure.0 == name).unwrap().1;
    let force = first["force"]["likely"]["value"].as_f64().unwrap();
    assert!(of("forces").contains(&format!("likely, up to {force:.1} kN")), "{force}");
    let settled = first["site_figures"][0]["values"]["high"]["value"].as_f64().unwrap();
    assert!(of("settlement").contains(&format!("high {settled:.1} mm")), "{settled}");
    assert!(values(of("limits"), "width").contains(&"162.6"), "{}", of("limits"));
    for check in first["checks"].as_array().unwrap() {
        let told = of("limits").contains(&format!(">{}</text>", check["subject"].as_str().unwrap()));
        assert_eq!(told, !check["utilisation"].is_null(), "{check}");
    }
}

/// A service that is crossed stands in the long section, as far along as it is told: at 15 of 60 m a quarter of the way
/// between the pits, from 36 to 670 pixels, and what the file calls it is no mark-up. A folder that cannot be made is a fault.
#[test]
fn services_are_drawn_and_faults_are_told() {
    let text = std::fs::read_to_string(example("fennbridge_mill_lane.yaml")).unwrap();
    let crossed = text.edit("crossings: []", "crossings: [{ kind: 'gas <b>&', at: 15 m, depth: 1 m }]");
    let figures = drawn(&folder("crossed"), &file("crossed.yaml", crossed.as_bytes()), "si");
    assert!(figures[0].1.contains("<circle class=\"open\" cx=\"194.5\""), "{}", figures[0].1);
    assert!(figures[0].1.contains(">gas &lt;b&gt;&amp;</text>"), "{}", figures[0].1);

    let path = file("figures_blocked", b"a file, no folder");
    let output = jackpull(&["assess", "--figures", &path, &example("fennbridge_mill_lane.yaml")]);
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    assert!(String::from_utf8_lossy(&output.stderr).contains("cannot be written: "), "{output:?}");
    assert!(stdout(&output).is_empty());
}
