//! Many drives in one run: each answer when it is ready, in forms of one line a drive.

use crate::edit::Edit;
use crate::run::{SEWER, example, file, jackpull, stderr, stdout};
use serde_json::Value;
use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::mpsc;
use std::thread;
use std::time::Duration;

const CLAY_WINS: &str = "fennbridge_mill_lane.yaml";
const PE_WINS: &str = "fennbridge_quarry_road.yaml";

/// A folder of its own with a good drive, a faulty one, another good one, and what is no drive file.
fn folder(name: &str) -> String {
    let folder = Path::new(&file("unused", b"")).parent().unwrap().join(name);
    std::fs::create_dir_all(&folder).unwrap();
    for (name, from) in [("a.yaml", CLAY_WINS), ("c.yaml", PE_WINS)] {
        std::fs::copy(example(from), folder.join(name)).unwrap();
    }
    std::fs::write(folder.join("b.yaml"), "length: 3\n").unwrap();
    std::fs::write(folder.join("notes.txt"), "no drive").unwrap();
    folder.display().to_string()
}

fn started(arguments: &[&str]) -> Child {
    let mut command = Command::new(env!("CARGO_BIN_EXE_jackpull"));
    command.args(arguments).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap()
}

/// The files of a folder by name, a faulty one among them; one line each, and the line names its file.
#[test]
fn a_folder_gives_a_line_for_each_of_its_files() {
    let folder = folder("lines");
    let output = jackpull(&["assess", "--format", "ndjson", &folder]);
    assert_eq!(output.status.code(), Some(2), "{}", stderr(&output));
    let lines: Vec<Value> = stdout(&output).lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    let names: Vec<&str> = lines.iter().map(|line| line["file"].as_str().unwrap()).collect();
    assert_eq!(names, ["a.yaml", "b.yaml", "c.yaml"].map(|name| format!("{folder}/{name}")));
    assert!(lines[1]["faults"][0]["message"].as_str().unwrap().contains("got 3 without a unit"), "{}", lines[1]);
    // A line holds what the object of one file holds.
    let alone = jackpull(&["assess", "--format", "json", &format!("{folder}/a.yaml")]);
    assert_eq!(lines[0], serde_json::from_slice::<Value>(&alone.stdout).unwrap());
    let array = jackpull(&["assess", "--format", "json", &folder]);
    assert_eq!(serde_json::from_slice::<Vec<Value>>(&array.stdout).unwrap(), lines);
    let empty = Path::new(&folder).join("empty");
    std::fs::create_dir_all(&empty).unwrap();
    let output = jackpull(&["assess", &empty.display().to_string()]);
    assert_eq!((output.status.code(), stderr(&output).contains("has no drive file")), (Some(2), true));
}

/// One drive refused ends in 2, each further one in one more, the hundredth and every one after it in 101.
#[test]
fn the_exit_code_tells_how_many_drives_are_refused() {
    let table = |rows: usize| {
        let rows = "30 km\n".repeat(rows);
        file(&format!("refused_{}.csv", rows.len()), format!("length\n90 m\n{rows}").as_bytes())
    };
    for (rows, code) in [(1, 2), (2, 3), (7, 8), (100, 101), (260, 101)] {
        let arguments = ["assess", "--format", "csv", "--each", &table(rows), &example(CLAY_WINS)];
        assert_eq!(jackpull(&arguments).status.code(), Some(code), "{rows}");
    }
}

/// A row a drive: what the JSON says of the first scheme, or the faults.
#[test]
fn a_table_has_a_row_for_each_drive() {
    let folder = folder("rows");
    let table = stdout(&jackpull(&["assess", "--format", "csv", &folder]));
    let mut reader = csv::Reader::from_reader(table.as_bytes());
    let header: Vec<String> = reader.headers().unwrap().iter().map(ToOwned::to_owned).collect();
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let cell = |row: usize, column: &str| rows[row][header.iter().position(|one| one == column).unwrap()].to_owned();
    assert_eq!((header[0].as_str(), rows.len()), ("file", 3));
    for (row, name) in [(0, "a.yaml"), (2, "c.yaml")] {
        let report = jackpull(&["assess", "--format", "json", &format!("{folder}/{name}")]);
        let report: Value = serde_json::from_slice(&report.stdout).unwrap();
        let choice = &report["choice"];
        assert_eq!(cell(row, "file"), report["file"]);
        assert_eq!(cell(row, "answer"), report["answer"]);
        for key in ["standing", "method", "pipe"] {
            assert_eq!(cell(row, key), choice[key], "{key}");
        }
        assert_eq!(cell(row, "governing check"), choice["governed_by"]["subject"]);
        let governing = &choice["governed_by"];
        assert_eq!(cell(row, "utilisation"), governing["utilisation"].to_string());
        let checks = report["schemes"][0]["checks"].as_array().unwrap();
        let check = checks.iter().find(|check| check["subject"] == governing["subject"]).unwrap();
        assert_eq!(cell(row, "mark"), check["weakest_mark"]);
        let used = format!(
            "{}={:.3} ({})",
            governing["code"].as_str().unwrap(),
            governing["utilisation"].as_f64().unwrap(),
            cell(row, "mark")
        );
        let three = cell(row, "governing checks");
        assert!(three.starts_with(&used) && three.split("; ").count() == 3, "{three}");
        assert_eq!(cell(row, "fields to write") + &cell(row, "faults"), "");
    }
    assert_eq!(cell(1, "answer"), "");
    assert!(cell(1, "faults").starts_with("length: expected a length, got 3 without a unit (line 1, column 9)"));
}

/// What a drive that is not decided waits for stands in its row.
#[test]
fn a_row_tells_what_to_write() {
    let text = std::fs::read_to_string(example(CLAY_WINS)).unwrap();
    let untold: String =
        text.lines().filter(|line| !line.contains("largest_stone")).map(|l| l.to_owned() + "\n").collect();
    assert_ne!(text, untold);
    let path = file("untold.yaml", untold.as_bytes());
    let report: Value = serde_json::from_slice(&jackpull(&["assess", "--format", "json", &path]).stdout).unwrap();
    let open = report["schemes"][0]["if_settled"]["open"].as_array().unwrap();
    let open: Vec<&str> = open.iter().map(|open| open.as_str().unwrap()).collect();
    let table = stdout(&jackpull(&["assess", "--format", "csv", &path]));
    let row = csv::Reader::from_reader(table.as_bytes()).records().next().unwrap().unwrap();
    assert_eq!(&row[10], open.join("; "), "{table}");
    assert!(row[11].contains("ground[].largest_stone"), "{table}");
}

/// The first answer is out before the second drive, on standard input, is written.
#[test]
fn an_answer_is_written_when_it_is_ready() {
    for format in ["ndjson", "csv", "json", "text"] {
        let mut child = started(&["assess", "--format", format, &example(CLAY_WINS), "-"]);
        let mut input = child.stdin.take().unwrap();
        let (ready, is_ready) = mpsc::channel();
        // Where the first is held back, the second comes all the same, and too late.
        let fed = thread::spawn(move || {
            let in_time = is_ready.recv_timeout(Duration::from_secs(60)).is_ok();
            input.write_all(&std::fs::read(example(PE_WINS)).unwrap()).unwrap();
            in_time
        });
        let mut out = BufReader::new(child.stdout.take().unwrap());
        let mut first = String::new();
        while !first.contains("governed by invert, line and grade") {
            assert!(out.read_line(&mut first).unwrap() > 0, "{first}");
        }
        // Nobody listens where it was too late.
        let _ = ready.send(());
        let mut rest = String::new();
        out.read_to_string(&mut rest).unwrap();
        assert!(fed.join().unwrap(), "{format}: the first answer came after the second drive");
        assert!(rest.contains("governed by bore fluid, break-out"), "{format}: {rest}");
        assert_eq!(child.wait().unwrap().code(), Some(0));
    }
}

/// A reader that goes away ends the run, and its exit code is that of an output that went wrong.
#[test]
fn a_reader_that_goes_away_is_no_success() {
    let mut child = started(&["assess", &example(CLAY_WINS)]);
    drop(child.stdout.take());
    let output = child.wait_with_output().unwrap();
    assert_eq!((output.status.code(), stderr(&output).as_str()), (Some(2), ""));
}

/// The same bytes on both streams, whatever number of threads share the drives; a faulty one stays in its place.
#[test]
fn threads_change_no_byte() {
    let folder = folder("threads");
    // More than are read ahead for two threads, and no multiple of three.
    for number in 20..60 {
        let path = Path::new(&folder).join(format!("d{number}.yaml"));
        std::fs::write(path, SEWER.edit("length: 40 m", &format!("length: {number} m"))).unwrap();
    }
    let run = |threads: &str| {
        let output = jackpull(&["assess", "--format", "csv", "--threads", threads, &folder]);
        assert_eq!(output.status.code(), Some(2));
        (stdout(&output), stderr(&output))
    };
    let alone = run("1");
    assert_eq!(alone.0.lines().count(), 1 + 43, "{}", alone.0);
    assert!(alone.1.contains("b.yaml"), "{}", alone.1);
    for threads in ["2", "3"] {
        assert_eq!(run(threads), alone, "{threads}");
    }
    assert_eq!(jackpull(&["assess", "--threads", "0", &folder]).status.code(), Some(2));
}

/// What cannot be written whole leaves the page that was there, and no part of another.
#[test]
#[cfg(target_os = "linux")]
fn a_full_disk_leaves_no_half_of_a_page() {
    let from = folder("full");
    let out = format!("{from}/pages");
    let _ = std::fs::remove_dir_all(&out);
    std::fs::create_dir_all(&out).unwrap();
    std::fs::write(Path::new(&out).join("a.html"), "as it was").unwrap();
    // No file may grow beyond a few blocks; the signal that tells of it is ignored, so that writing fails as on a full disk.
    let program = env!("CARGO_BIN_EXE_jackpull");
    let script = format!("trap '' XFSZ; ulimit -f 16; exec {program} assess --format html --out {out} {from}");
    let output = Command::new("bash").args(["-c", &script]).output().unwrap();
    assert!(stderr(&output).contains("cannot be written"), "{}", stderr(&output));
    assert_eq!(std::fs::read_to_string(Path::new(&out).join("a.html")).unwrap(), "as it was");
    let names: Vec<_> = std::fs::read_dir(&out).unwrap().map(|one| one.unwrap().file_name()).collect();
    assert!(names.iter().all(|name| name == "a.html" || name == "index.html"), "{names:?}");
}

/// Help that nobody can read is no success.
#[test]
#[cfg(target_os = "linux")]
fn help_on_a_full_disk_fails() {
    for arguments in [&["--help"][..], &["--version"], &["assess", "--help"]] {
        let full = std::fs::File::create("/dev/full").unwrap();
        let output =
            Command::new(env!("CARGO_BIN_EXE_jackpull")).args(arguments).stdout(full).stderr(Stdio::piped()).output();
        assert_eq!(output.unwrap().status.code(), Some(2), "{arguments:?}");
    }
}
