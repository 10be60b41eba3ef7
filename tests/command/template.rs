//! `template` prints a file that assesses as printed.

use crate::run::{file, jackpull, stderr, stdout};
use jackpull::DriveFile;
use jackpull::drive_file::fields::{Shape, Spec};

#[test]
fn every_template_assesses_as_printed() {
    for service in ["gravity_sewer", "pressure_main", "casing"] {
        for units in ["si", "us"] {
            let output = jackpull(&["template", "--service", service, "--units", units]);
            assert_eq!(output.status.code(), Some(0));
            assert!(!stdout(&output).contains('<'), "a placeholder is left:\n{}", stdout(&output));
            let path = file(&format!("template_{service}_{units}.yaml"), &output.stdout);
            let assessed = jackpull(&["assess", &path]);
            let page = stdout(&assessed);
            assert_eq!(assessed.status.code(), Some(0), "{service}, {units}: {}{page}", stderr(&assessed));
            assert!(stderr(&assessed).is_empty(), "{}", stderr(&assessed));
            // A main of PE is pulled; a sewer pushes the clay pipe that it lists first, and a casing is of steel.
            let start = match service {
                "pressure_main" => "PULLBACK, PE",
                "casing" => "PIPE JACKING, steel 16 in wall",
                _ => "PIPE JACKING, clay 10 in: ",
            };
            assert!(page.starts_with(start), "{service}, {units}: {page}");
        }
    }
}

/// The optional lines are right too once their `# ` is taken off.
#[test]
fn the_optional_lines_are_read() {
    for units in ["si", "us"] {
        let output = jackpull(&["template", "--units", units]);
        let text = stdout(&output);
        // `face` and `spoil` may stand together; a rate may not stand beside a duration.
        let optional = |line: &str| {
            let line = line.strip_prefix("# ")?;
            let key = line.split(':').next()?;
            let known = [
                "grade",
                "rig",
                "stem",
                "spoil",
                "face",
                "steering",
                "tolerance",
                "contents",
                "string_on",
                "ramp_angle",
                "bend_radius",
                "excess_length",
                "welds",
                "stress_edition",
                "reamer",
                "fluid_stands_for",
                "depths",
                "stops",
                "reaming_torque",
                "push_assist",
                "soil",
                "traffic",
                "wall",
                "line",
                "weights",
                "needed_inside_diameter",
                "pilot",
                "design_flow",
                "half_wave",
                "surface",
                "crossings",
                "plug",
                "pace",
                "work",
                "if_stalled",
                "fluid_level",
                "laydown",
                "pull_head",
                "score",
                "inside_pressure",
                "unit_drag",
                "collapsed_bore",
                "hole",
                "ramp_room",
                "reaction",
                "returns",
                "ground_temperature",
                "annulus",
                "soil",
                "traffic",
                "wall",
            ];
            known.contains(&key).then(|| {
                let top = [
                    "grade",
                    "rig",
                    "stem",
                    "spoil",
                    "face",
                    "steering",
                    "tolerance",
                    "depths",
                    "stops",
                    "traffic",
                    "annulus",
                    "pilot",
                    "design_flow",
                    "half_wave",
                    "surface",
                    "crossings",
                    "plug",
                    "pace",
                    "work",
                    "if_stalled",
                    "line",
                    "weights",
                    "needed_inside_diameter",
                ];
                let inside_pull = !top.contains(&key);
                if inside_pull { format!("  {line}") } else { line.to_owned() }
            })
        };
        fn key(line: &str) -> &str {
            line.split(':').next().unwrap_or_default()
        }
        let taken: Vec<String> = text.lines().filter_map(optional).collect();
        // An optional line stands in place of a shorter one with its key.
        let replaced = |line: &str| !line.starts_with(' ') && taken.iter().any(|taken| key(taken) == key(line));
        let lines = text.lines().filter(|line| !replaced(line)).map(|line| match optional(line) {
            Some(line) => line,
            None => line.to_owned(),
        });
        let all = lines.collect::<Vec<_>>().join("\n");
        assert_eq!(taken.len(), 45, "{all}");
        let path = file(&format!("template_whole_{units}.yaml"), all.as_bytes());
        let assessed = jackpull(&["assess", &path]);
        assert_eq!(assessed.status.code(), Some(0), "{}{}", stderr(&assessed), stdout(&assessed));
    }
}

/// No field of the drive file is left out of the template.
#[test]
fn every_field_is_named() {
    fn walk(specs: &[Spec], words: &[&str]) {
        for spec in specs {
            assert!(words.contains(&spec.key), "{}", spec.names[0].0);
            if let Shape::Block(inner) | Shape::Blocks(inner) = spec.shape {
                walk(inner, words);
            }
        }
    }
    let text = stdout(&jackpull(&["template"]));
    let words: Vec<&str> = text.split(|c: char| !(c.is_ascii_alphanumeric() || c == '_')).collect();
    walk(DriveFile::FIELDS, &words);
}
