//! Every file of these folders is compiled, and every source with pages takes part in the doubling.

use std::fs;
use std::path::PathBuf;

/// A file without its `mod` line is never compiled, and its pages never run.
#[test]
fn every_file_is_a_module() {
    for (folder, list, prefix) in
        [("published", "main", "/"), ("recalled", "mod", "/recalled/"), ("worked", "mod", "/worked/")]
    {
        let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests").join(folder);
        let main = fs::read_to_string(folder.join(list).with_extension("rs")).unwrap();
        for entry in fs::read_dir(&folder).unwrap() {
            let path = entry.unwrap().path();
            let stem = path.file_stem().unwrap().to_string_lossy().into_owned();
            if path.extension().is_some_and(|ext| ext == "rs") && stem != list {
                let is_listed =
                    main.lines().any(|line| line.trim_start_matches("pub(crate) ") == format!("mod {stem};"));
                assert!(is_listed, "{list}.rs has no `mod {stem};`");
                let text = fs::read_to_string(&path).unwrap();
                let lists_pages = text.lines().any(|line| line.starts_with("pages!("));
                let takes_part = crate::doubled::SOURCES.iter().any(|source| source.name == format!("{prefix}{stem}"));
                assert_eq!(lists_pages, takes_part, "{stem} must be in the list of the doubling if it has pages");
            }
        }
    }
}
