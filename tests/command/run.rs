//! Runs the built command.

use std::path::PathBuf;
use std::process::{Command, Output};

pub(crate) fn jackpull(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_jackpull")).args(arguments).output().unwrap()
}

pub(crate) fn example(name: &str) -> String {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("examples").join(name).display().to_string()
}

/// A file of this text in a folder of its own.
pub(crate) fn file(name: &str, text: &[u8]) -> String {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("command");
    std::fs::create_dir_all(&folder).unwrap();
    let path = folder.join(name);
    std::fs::write(&path, text).unwrap();
    path.display().to_string()
}

pub(crate) fn stdout(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap()
}

pub(crate) fn stderr(output: &Output) -> String {
    String::from_utf8(output.stderr.clone()).unwrap()
}
