//! Pages as they were read and found good, word for word: the first page of each example and two pages for the crew, so
//! that a change of wording or of a figure shows in a diff. `JACKPULL_RENEW=1 cargo test --test command golden` renews them.

use crate::run::{example, jackpull, stdout};
use std::path::PathBuf;

const FIRST: [&str; 6] = ["mill_lane", "quarry_road", "kiln_bank", "osier_road", "sallow_junction", "tarn_head"];
const CREW: [&str; 2] = ["mill_lane", "quarry_road"];

fn page(name: &str, form: &str) -> String {
    let page = stdout(&jackpull(&["assess", "--format", form, &example(&format!("fennbridge_{name}.yaml"))]));
    match page.split_once("\nRanking\n") {
        Some((first, _)) => first.to_owned(),
        None => page,
    }
}

#[test]
fn pages_are_as_they_were_read() {
    let renews = std::env::var_os("JACKPULL_RENEW").is_some();
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/command/golden");
    let pages = FIRST.map(|name| (name, "text")).into_iter().chain(CREW.map(|name| (name, "crew")));
    let mut changed = Vec::new();
    let mut kept = 0;
    for (name, form) in pages {
        let (path, now) = (folder.join(format!("{name}.{form}")), page(name, form));
        assert!(now.lines().count() > 10, "{now}");
        if renews {
            std::fs::write(&path, &now).unwrap();
        }
        let before = std::fs::read_to_string(&path).unwrap_or_default();
        if before != now {
            changed.push(format!("{}:\n{now}", path.display()));
        }
        kept += 1;
    }
    assert!(changed.is_empty(), "renew what is meant to change:\n{}", changed.join("\n"));
    assert_eq!(kept, std::fs::read_dir(&folder).unwrap().count(), "a page that nothing makes");
}
