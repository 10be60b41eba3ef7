//! Version, completions and manual.

use crate::run::{jackpull, stderr, stdout};
use std::path::Path;
use std::process::Command;

/// The version tells the digest of the tables, which anyone can take of the files.
#[test]
fn the_version_tells_the_digest_of_the_tables() {
    let told = stdout(&jackpull(&["--version"]));
    let digest = told.trim_end().strip_suffix(')').and_then(|told| told.split_once("(tables sha256:")).unwrap().1;
    let tables = Path::new(env!("CARGO_MANIFEST_DIR")).join("tables");
    let summed =
        Command::new("sh").current_dir(tables).args(["-c", "LC_ALL=C; cat *.yaml | sha256sum"]).output().unwrap();
    assert_eq!(stdout(&summed).split_whitespace().next().unwrap(), digest, "{told}");
}

/// Help of every verb has examples, and those that write no file run.
#[test]
fn help_has_examples_that_run() {
    for verb in ["assess", "screen", "handbook", "template", "schema", "completions", "man"] {
        let help = stdout(&jackpull(&[verb, "--help"]));
        let (_, examples) = help.split_once("\nExamples:\n").unwrap_or_else(|| panic!("{verb}: {help}"));
        for line in examples.lines().filter_map(|line| line.trim().strip_prefix("jackpull ")) {
            let command = line.split("  ").next().unwrap().split(['>', '|']).next().unwrap();
            // Drive files that are named need not be there, and quotes ask for a shell.
            if !command.contains('"') && !command.starts_with("assess") {
                let words: Vec<&str> = command.split_whitespace().collect();
                assert!(jackpull(&words).status.success(), "{command}");
            }
        }
    }
}

/// Every verb and option is completed, and stands in the manual.
#[test]
fn completions_and_manual_know_the_arguments() {
    for shell in ["bash", "zsh", "fish"] {
        let script = stdout(&jackpull(&["completions", shell]));
        assert!(script.contains("ndjson") && script.contains("screen"), "{shell}: {script}");
    }
    let whole = stdout(&jackpull(&["man"]));
    assert!(whole.starts_with(".ie") && whole.contains(".TH jackpull 1"), "{whole}");
    assert!(whole.contains("jackpull\\-screen(1)"), "{whole}");
    let page = stdout(&jackpull(&["man", "assess"]));
    assert!(page.contains("\\-\\-each") && page.contains("ndjson: "), "{page}");
    let wrong = jackpull(&["man", "asess"]);
    assert_eq!((wrong.status.code(), stderr(&wrong).contains("no such verb")), (Some(2), true));
}
