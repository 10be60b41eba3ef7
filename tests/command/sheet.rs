//! `assess --format html` and `markdown`: the report in other clothes, word for word.

use crate::edit::Edit;
use crate::run::{example, file, jackpull, stderr, stdout};

const EXAMPLES: [&str; 3] = ["fennbridge_mill_lane.yaml", "fennbridge_quarry_road.yaml", "fennbridge_kiln_bank.yaml"];

fn assess(arguments: &[&str]) -> String {
    let output = jackpull(&[&["assess"], arguments].concat());
    assert!(output.stderr.is_empty(), "{}", stderr(&output));
    stdout(&output)
}

/// The text with `to` wherever `from` is.
fn swapped(text: &str, from: &str, to: &str) -> String {
    text.split(from).collect::<Vec<_>>().join(to)
}

fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What a reader of the page hears: its text without tags, figures and styles apart.
fn heard(html: &str) -> String {
    let mut text = String::new();
    let mut rest = html;
    while let Some((before, tag)) = rest.split_once('<') {
        text.push_str(before);
        let (tag, after) = tag.split_once('>').unwrap();
        rest = match tag.split(' ').next().unwrap() {
            skipped @ ("style" | "svg") => after.split_once(&format!("</{skipped}>")).unwrap().1,
            _ => after,
        };
        text.push(' ');
    }
    let marks = [("&lt;", "<"), ("&gt;", ">"), ("&quot;", "\""), ("&amp;", "&")];
    words(&marks.iter().fold(text + rest, |text, (from, to)| swapped(&text, from, to)))
}

/// The first page of the text.
fn first_page(path: &str, units: &str) -> String {
    let text = assess(&["--units", units, path]);
    words(text.split_once("\nRanking\n").unwrap().0)
}

const SI: [&str; 4] = [" kN", " MPa", " kPa", " mm"];
const US: [&str; 4] = [" kip", " psi", " psf", " lbf"];

#[test]
fn the_web_page_is_the_report() {
    for name in EXAMPLES {
        for (units, others) in [("si", US), ("us", SI)] {
            let html = assess(&["--format", "html", "--units", units, &example(name)]);
            let heard = heard(&html);
            assert!(heard.contains(&first_page(&example(name), units)), "{name}: {heard}");
            for unit in others {
                // What a condition asks for is told in both, a pipe is called by the size that the file gives, and a source in its words.
                let both = ["100 x 15 mm (4 x 0.6 in)", "PE100 315 mm", "concrete 400 mm", "tube of around 100 mm"];
                let plain = both.iter().fold(heard.clone(), |text, told| swapped(&text, told, ""));
                assert!(!plain.contains(unit), "{name}: {unit} in {heard}");
            }
            let full = assess(&["--format", "html", "--full", "--units", units, &example(name)]);
            assert!(full.contains("<h2>Working: ") && !html.contains("<h2>Working: "));
            for page in [html, full] {
                stands_alone(&page);
            }
        }
    }
}

/// One file without script or anything from elsewhere, its tags in order, headings by rank, tables with scope.
fn stands_alone(html: &str) {
    assert!(html.starts_with("<!doctype html>\n<html lang=\"en\">"), "{html}");
    for part in ["<script", "src=", "href=", "url(", "@import"] {
        assert!(!html.contains(part), "{part}");
    }
    let mut open: Vec<&str> = Vec::new();
    let mut last = 0;
    for tag in html.split('<').skip(1) {
        let (tag, _) = tag.split_once('>').unwrap();
        let name = tag.split([' ', '\n']).next().unwrap();
        if let Some(closed) = name.strip_prefix('/') {
            assert_eq!(open.pop(), Some(closed), "{tag}");
        } else if !tag.ends_with('/') && !["!doctype", "meta", "br"].contains(&name) {
            open.push(name);
        }
        if let Some(rank) = name.strip_prefix('h').and_then(|rank| rank.parse::<i32>().ok()) {
            assert!(rank <= last + 1, "{tag}");
            last = rank;
        }
        if name == "th" {
            assert!(tag.contains("scope=\"col\"") || tag.contains("scope=\"row\""), "{tag}");
        }
    }
    assert_eq!(open, Vec::<&str>::new());
    assert_eq!((html.matches("<h1>").count(), html.matches("<figure>").count()), (1, 6));
}

#[test]
fn markdown_is_the_report() {
    for name in EXAMPLES {
        for units in ["si", "us"] {
            let text = assess(&["--format", "markdown", "--units", units, &example(name)]);
            let plain = ["\\", ":**", "**"].iter().fold(text.clone(), |text, mark| swapped(&text, mark, ""));
            let plain = words(&plain);
            assert!(plain.contains(&first_page(&example(name), units)), "{name}: {text}");
            assert_eq!(text.matches("\n*Figure: ").count(), 6, "{text}");
            let rows: Vec<&str> = text.lines().filter(|line| line.starts_with("| ")).collect();
            assert!(rows.len() > 10);
            for row in rows {
                assert_eq!(
                    swapped(row, "\\|", "").matches('|').count(),
                    9,
                    "seven columns and what they rest on: {row}"
                );
            }
        }
    }
}

/// What a file says is text in every form.
#[test]
fn names_are_text() {
    let text = std::fs::read_to_string(example(EXAMPLES[0])).unwrap();
    let path = file(
        "sheet_named.yaml",
        text.edit("name: Mill Lane sewer, Fennbridge (invented)", "name: 'a <i>b</i> & *c* | d'").as_bytes(),
    );
    let html = assess(&["--format", "html", &path]);
    assert!(html.contains("<h1>a &lt;i&gt;b&lt;/i&gt; &amp; *c* | d</h1>") && !html.contains("<i>"), "{html}");
    stands_alone(&html);
    let markdown = assess(&["--format", "markdown", &path]);
    assert!(markdown.starts_with("# a \\<i\\>b\\</i\\> & \\*c\\* \\| d\n"), "{markdown}");
}
