//! Runs the built command.

use std::path::PathBuf;
use std::process::{Command, Output};

pub(crate) fn jackpull(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_jackpull")).args(arguments).output().unwrap()
}

pub(crate) fn example(name: &str) -> String {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("examples").join(name).display().to_string()
}

/// A short sewer in clay that is jacked, of which little is told.
pub(crate) const SEWER: &str = "service: gravity_sewer
length: 40 m
launch: { invert_depth: 4.2 m }
grade: 0.5 %
groundwater: none
lubrication: metered
ground: [{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 20 mm }]
rig: { thrust: 1500 kN, pull: 500 kN }
candidates: [{ material: clay, size: 10 in, certificate: en_295_7 }]
";

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
