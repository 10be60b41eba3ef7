//! Every source with pages takes part in the doubling.

use std::fs;
use std::path::PathBuf;

#[test]
fn every_source_with_pages_is_doubled() {
    for (folder, prefix) in [("published", "/"), ("recalled", "/recalled/"), ("worked", "/worked/")] {
        let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests").join(folder);
        for entry in fs::read_dir(&folder).unwrap() {
            let path = entry.unwrap().path();
            let stem = path.file_stem().unwrap().to_string_lossy().into_owned();
            if path.extension().is_some_and(|ext| ext == "rs") {
                let text = fs::read_to_string(&path).unwrap();
                let lists_pages = text.lines().any(|line| line.trim_start().starts_with("pages!("));
                let takes_part = crate::doubled::SOURCES.iter().any(|source| source.name == format!("{prefix}{stem}"));
                assert_eq!(lists_pages, takes_part, "{stem} must be in the list of the doubling if it has pages");
            }
        }
    }
}
