//! Every file beside a `main.rs` is a module of it, and every arrow between the folders of `src` points one way.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

pub(crate) fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

pub(crate) fn rust_files(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files.extend(rust_files(&path));
        } else if path.extension().is_some_and(|ext| ext == "rs") {
            files.push(path);
        }
    }
    files.sort();
    files
}

/// The files of the crate: all of `src` but the build script, which runs before it and belongs to no room.
fn crate_files() -> Vec<PathBuf> {
    let mut files = rust_files(&root().join("src"));
    files.retain(|file| !file.ends_with("src/build.rs"));
    files
}

/// A file without its `mod` line is never compiled, and its tests never run. `fixtures` holds what the others share; a
/// folder with a `mod.rs` is a part of another program.
#[test]
fn every_test_file_is_a_module() {
    for binary in fs::read_dir(root().join("tests")).unwrap() {
        let folder = binary.unwrap().path();
        if folder.ends_with("fixtures") {
            continue;
        }
        let list = ["main", "mod"].into_iter().find(|list| folder.join(list).with_extension("rs").exists());
        let list = list.unwrap_or_else(|| panic!("{} has no main.rs and is never compiled", folder.display()));
        let main = fs::read_to_string(folder.join(list).with_extension("rs")).unwrap();
        for file in fs::read_dir(&folder).unwrap() {
            let path = file.unwrap().path();
            let stem = path.file_stem().unwrap().to_string_lossy().into_owned();
            if path.extension().is_some_and(|ext| ext == "rs") && stem != list {
                assert!(main.contains(&format!("mod {stem};")), "{} is not a module of its {list}.rs", path.display());
            }
        }
    }
}

/// What the document for contributors names is there, and each decision names the file where it is to be seen.
#[test]
fn decisions_name_their_files() {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    let folders = ["src", "tests", "examples", "benches"].map(|folder| rust_files(&root().join(folder)));
    let mut files: Vec<PathBuf> = folders.into_iter().flatten().collect();
    files.push(root().join("Cargo.toml"));
    let named = |text: &str| -> Vec<String> {
        let words = text.split('`').filter(|word| word.ends_with(".rs") || word.ends_with(".toml"));
        words.filter(|word| !word.contains([' ', '*'])).map(str::to_owned).collect()
    };
    for name in named(&text) {
        assert!(files.iter().any(|file| file.ends_with(&name)), "{name} is not there");
    }
    let (_, decisions) = text.split_once("\n## Decisions").unwrap();
    let (decisions, _) = decisions.split_once("\n## ").unwrap();
    for decision in decisions.split("\n- **").skip(1) {
        assert!(!named(decision).is_empty(), "{decision}");
    }
}

/// Nor is a file of `src` that no file names.
#[test]
fn every_source_file_is_a_module() {
    let source = root().join("src");
    for file in crate_files() {
        let (folder, stem) = (file.parent().unwrap(), file.file_stem().unwrap().to_str().unwrap());
        let parent = if folder == source { source.join("lib.rs") } else { folder.with_extension("rs") };
        if !["lib", "main"].contains(&stem) {
            let text = fs::read_to_string(&parent).unwrap();
            assert!(
                text.contains(&format!("mod {stem};")),
                "{} is not a module of {}",
                file.display(),
                parent.display()
            );
        }
    }
}

/// A change to a text that is not there changes nothing, and its test no longer tests it: `edit` stops there.
#[test]
fn every_change_to_a_text_finds_it() {
    let fixtures = root().join("tests/fixtures");
    for file in rust_files(&root().join("tests")).into_iter().filter(|file| !file.starts_with(&fixtures)) {
        let text = fs::read_to_string(&file).unwrap();
        for change in [".replace", ".replacen"] {
            let unguarded = text.split(&format!("{change}(")).skip(1).any(|behind| !behind.starts_with('\''));
            assert!(!unguarded, "{} has {change} in place of edit", file.display());
        }
    }
}

/// Who may use whom. A room not named here may use no other.
const ARROWS: &[(&str, &[&str])] = &[
    ("guide", &[]),
    ("quantity", &[]),
    ("source", &[]),
    ("yaml", &["quantity"]),
    ("law", &["quantity", "source"]),
    ("laws", &["quantity", "source", "law"]),
    ("handbook", &["quantity", "source", "yaml"]),
    ("drive", &["quantity", "source", "handbook"]),
    ("drive_file", &["quantity", "source", "yaml", "handbook", "law", "laws", "drive"]),
    ("check", &["quantity", "source", "law", "handbook", "drive"]),
    ("conditions", &["quantity", "source", "law", "laws", "handbook", "drive", "check"]),
    ("method", &["quantity", "source", "law", "laws", "handbook", "drive", "check", "conditions"]),
    ("choice", &["quantity", "source", "handbook", "drive", "check", "conditions", "method"]),
    ("vary", &["quantity", "source", "handbook", "drive", "drive_file", "check", "method", "choice"]),
    (
        "report",
        &["quantity", "source", "handbook", "drive", "drive_file", "check", "conditions", "method", "choice", "vary"],
    ),
    ("cli", &["quantity", "source", "yaml", "handbook", "drive_file", "choice", "vary", "report"]),
];

#[test]
fn arrows_point_one_way() {
    let source = root().join("src");
    let mut seen = BTreeSet::new();
    for path in crate_files() {
        let inside = path.strip_prefix(&source).unwrap();
        let first = inside.components().next().unwrap().as_os_str().to_string_lossy().into_owned();
        let room = first.trim_end_matches(".rs").to_owned();
        if room == "lib" || room == "main" {
            continue;
        }
        let allowed = ARROWS
            .iter()
            .find(|(name, _)| *name == room)
            .unwrap_or_else(|| panic!("the room {room} is not in ARROWS"))
            .1;
        seen.insert(room.clone());
        let text = fs::read_to_string(&path).unwrap();
        for (number, line) in text.lines().enumerate() {
            // Doc comments link and examples use anything.
            if line.trim_start().starts_with("//") {
                continue;
            }
            for used in line.split("crate::").skip(1) {
                let used: String = used.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
                let is_room = ARROWS.iter().any(|(name, _)| *name == used);
                assert!(
                    !is_room || used == room || allowed.contains(&used.as_str()),
                    "{}:{}: {room} must not use {used}",
                    path.display(),
                    number + 1
                );
                assert!(is_room || !line.contains("use crate::{"), "{}: name each room in a use line", path.display());
            }
        }
    }
    assert_eq!(seen.len(), ARROWS.len(), "a room of ARROWS is gone");
}

/// The list itself must be without cycles: each room comes after all that it uses.
#[test]
fn the_list_of_arrows_has_no_cycle() {
    for (place, (room, uses)) in ARROWS.iter().enumerate() {
        for used in *uses {
            let before = ARROWS.iter().position(|(name, _)| name == used).unwrap();
            assert!(before < place, "{room} uses {used}, which comes later");
        }
    }
}

/// Only one file names the YAML crate.
#[test]
fn one_file_names_the_yaml_crate() {
    for path in crate_files() {
        let names = fs::read_to_string(&path).unwrap().contains("serde_yaml");
        assert_eq!(names, path.ends_with("src/yaml.rs"), "{}", path.display());
    }
}
