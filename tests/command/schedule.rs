//! Many drives on one page, and a folder with a web page of each.

use crate::edit::Edit;
use crate::run::{example, jackpull, stderr, stdout};
use std::path::{Path, PathBuf};

/// One that fits, one for which nothing does, one that is not decided and one that is no drive.
fn folder(name: &str) -> (String, PathBuf) {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("schedule").join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    let good = std::fs::read_to_string(example("fennbridge_mill_lane.yaml")).unwrap();
    let named = |name: &str| good.edit("name: Mill Lane sewer, Fennbridge (invented)", &format!("name: {name}"));
    for (file, text) in [
        ("a good", named("Good")),
        ("b bad", named("Bad").edit("largest_stone: 20 mm", "largest_stone: 400 mm")),
        ("c open", named("Open <b>").edit("    largest_stone: 20 mm\n", "")),
        ("d faulty", named("Faulty").edit("length: 60 m", "length: 60")),
    ] {
        std::fs::write(folder.join(format!("{file}.yaml")), text).unwrap();
    }
    (folder.display().to_string(), folder.join("out"))
}

/// The places of some words in a text, which holds each.
fn places(text: &str, words: &[&str]) -> Vec<usize> {
    words.iter().map(|word| text.find(word).unwrap_or_else(|| panic!("{word} in {text}"))).collect()
}

#[test]
fn the_worst_drive_stands_first() {
    let (drives, _) = folder("text");
    let output = jackpull(&["assess", "--format", "schedule", &drives]);
    assert_eq!(output.status.code(), Some(2), "{}", stderr(&output));
    let page = stdout(&output);
    assert!(page.starts_with("4 drives: 1 faulty, 1 barred, 1 not decided, 1 fits\n"), "{page}");
    let words = page.split_whitespace().collect::<Vec<_>>().join(" ");
    let rows = places(&words, &[" faulty /", " barred Bad: ", " not decided Open <b>: ", " 0.85 fits Good: "]);
    assert!(rows.is_sorted(), "{page}");
    for part in ["got 60 without a unit", "barred by ground", "could fit; write ground[].largest_stone"] {
        assert!(words.contains(part), "{part} in {page}");
    }
    assert!(!page.contains('\r') && !stderr(&output).contains("drives"), "progress is for a terminal: {output:?}");
}

/// Of two that stand alike the one that uses more of its limit.
#[test]
fn the_more_used_limit_stands_before() {
    let examples = ["kiln_bank", "quarry_road"].map(|name| example(&format!("fennbridge_{name}.yaml")));
    let [one, other] = &examples;
    let page = stdout(&jackpull(&["assess", "--format", "schedule", one, other]));
    let used: Vec<f64> = page
        .lines()
        .filter(|line| line.contains(" Kiln Bank ") || line.contains(" Quarry Road "))
        .map(|line| line.split_whitespace().find_map(|word| word.parse().ok()).unwrap())
        .collect();
    assert!(used.len() == 2 && used[0] > used[1], "{page}");
}

/// A web page of each drive, and one that leads to them; what a file is called is an address and no mark-up.
#[test]
fn a_folder_of_web_pages_has_an_index() {
    let (drives, out) = folder("html");
    let folder = out.display().to_string();
    let output = jackpull(&["assess", "--format", "html", "--out", &folder, &drives]);
    assert_eq!((output.status.code(), stdout(&output).as_str()), (Some(2), ""), "{}", stderr(&output));
    let index = std::fs::read_to_string(out.join("index.html")).unwrap();
    let rows = places(&index, &["d faulty.yaml</th>", ">Bad</a>", ">Open &lt;b&gt;</a>", ">Good</a>"]);
    assert!(rows.is_sorted() && index.starts_with("<!doctype html>") && !index.contains("<script"), "{index}");
    for page in ["a good", "b bad", "c open"] {
        assert!(index.contains(&format!("href=\"{}.html\"", page.edit(" ", "%20"))), "{index}");
        let page = std::fs::read_to_string(out.join(format!("{page}.html"))).unwrap();
        assert!(page.starts_with("<!doctype html>") && page.ends_with("</html>\n"));
    }
    assert_eq!(std::fs::read_dir(&out).unwrap().count(), 4);
}

/// Several web pages in one stream are none; two drives of one name are not written over each other.
#[test]
fn pages_are_kept_apart() {
    let (drives, out) = folder("apart");
    let output = jackpull(&["assess", "--format", "html", &drives]);
    assert_eq!((output.status.code(), stdout(&output).as_str()), (Some(2), ""));
    assert!(stderr(&output).contains("name a folder for them with --out"), "{}", stderr(&output));
    let (again, _) = folder("apart_again");
    let file = |folder: &str| Path::new(folder).join("a good.yaml").display().to_string();
    let folder = out.display().to_string();
    let output = jackpull(&["assess", "--format", "markdown", "--out", &folder, &file(&drives), &file(&again)]);
    assert_eq!(output.status.code(), Some(2));
    assert!(stderr(&output).contains("a good.md is the page of another drive"), "{}", stderr(&output));
    assert_eq!(std::fs::read_dir(&out).unwrap().count(), 1);
    let output = jackpull(&["assess", "--format", "csv", "--out", &folder, &drives]);
    assert!(stderr(&output).contains("is for forms that have a page for each drive"), "{}", stderr(&output));
}

/// As the files come, or by the share alone: what has none stands behind.
#[test]
fn the_order_is_what_is_asked_for() {
    let (drives, _) = folder("sorted");
    let rows = |sort: &str| {
        let page = stdout(&jackpull(&["assess", "--format", "schedule", "--sort", sort, &drives]));
        let words = page.split_whitespace().collect::<Vec<_>>().join(" ");
        places(&words, &["Good: ", "Bad: ", "Open <b>: ", "d faulty.yaml"])
    };
    assert!(rows("file").is_sorted());
    assert!(rows("utilisation").iter().all(|place| rows("utilisation")[3] >= *place));
    let standing = rows("standing");
    assert!(standing[3] < standing[1] && standing[2] < standing[0], "{standing:?}");
}
