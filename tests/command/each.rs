//! `assess --each`: a table with a drive in each row.

use crate::edit::Edit;
use crate::run::{SEWER, example, file, jackpull, stderr, stdout};
use serde_json::Value;

/// Its pipe.
const PIPE: &str = "candidates: [{ material: clay, size: 10 in, certificate: en_295_7 }]\n";

/// All but the length, the ground and the pipe.
fn base() -> String {
    SEWER.edit("length: 40 m\n", "").edit("class: firm_to_very_stiff_clay, ", "").edit(PIPE, "")
}

/// The answers of a table over the base, and the exit code.
fn answers(name: &str, table: &str, base: &str) -> (Vec<Value>, Option<i32>) {
    let base = file(&format!("{name}.yaml"), base.as_bytes());
    let table = file(&format!("{name}.csv"), table.as_bytes());
    let output = jackpull(&["assess", "--format", "ndjson", "--each", &table, &base]);
    let lines = stdout(&output);
    (lines.lines().map(|line| serde_json::from_str(line).unwrap()).collect(), output.status.code())
}

/// What stands of an answer without the name and the digest of its file.
fn bare(mut answer: Value) -> Value {
    answer.as_object_mut().unwrap().retain(|key, _| !["file", "drive_digest"].contains(&key.as_str()));
    answer
}

/// Each row is the drive of a file that says the same, whatever the field: a length, a word, a count, a band, a list, a
/// block, an entry that the base does not have; an empty cell leaves what the base says.
#[test]
fn a_row_is_the_drive_that_it_says() {
    let table = "name,length [m],groundwater [m],ground[0].class,ground[0].spt_n,ground[0].unit_friction,ground[0].hazards,\
        candidates[0].material,candidates[0].size [in],candidates[1],work.round_the_clock,crossings,pace.shift_price,# who\n\
        one,40,none,firm_to_very_stiff_clay,12,,,clay,10,,,,,me\n\
        ,,,,,,,,,,,,,\n\
        \"two, wet\",60.5,2.5,medium_to_dense_sand,,\"{ low: 3 kPa, likely: 8 kPa, high: 20 kPa }\",[swelling],clay,12,\
        \"{ material: concrete, size: 600 mm, strength: 50 MPa }\",true,[],4000,\n";
    let (rows, code) = answers("whole", table, &base());
    assert_eq!(rows.len(), 2, "{rows:?}");
    assert_ne!(code, Some(2), "{rows:?}");
    let files = [
        SEWER.edit("spt_n: 14", "spt_n: 12").edit(", certificate: en_295_7", "") + "name: one\n",
        SEWER
            .edit("40 m", "60.5 m")
            .edit("groundwater: none", "groundwater: 2.5 m")
            .edit("firm_to_very_stiff_clay", "medium_to_dense_sand")
            .edit("20 mm", "20 mm, hazards: [swelling], unit_friction: { low: 3 kPa, likely: 8 kPa, high: 20 kPa }")
            .edit("10 in, certificate: en_295_7 }", "12 in }, { material: concrete, size: 600 mm, strength: 50 MPa }")
            + "name: two, wet\nwork: { round_the_clock: true }\ncrossings: []\npace: { shift_price: 4000 }\n",
    ];
    for (place, (row, text)) in rows.into_iter().zip(files).enumerate() {
        // The third line has nothing in it.
        let line = [2, 4][place];
        assert!(row["file"].as_str().unwrap().ends_with(&format!("whole.csv:{line}")), "{}", row["file"]);
        let path = file(&format!("row_{place}.yaml"), text.as_bytes());
        let alone = jackpull(&["assess", "--format", "json", &path]);
        assert_eq!(bare(row), bare(serde_json::from_slice(&alone.stdout).unwrap()), "{text}");
    }
}

/// Faults name the row and the column; the other rows are assessed.
#[test]
fn faults_name_row_and_column() {
    let table = "length [m],ground[0].class,candidates,ground[2].class\n\
        forty,firm_to_very_stiff_clay,\"[{ material: clay, size: 10 in }]\",\n\
        40,stif_clay,\"[{ material: clay, size: 10 in }]\",\n\
        40,firm_to_very_stiff_clay,\"[{ material: clay, size: 10 in }]\",\n\
        40,firm_to_very_stiff_clay,\"[{ material: clay\",\n\
        40,firm_to_very_stiff_clay,\"[{ material: clay, size: 11 in }]\",\n\
        40,firm_to_very_stiff_clay,\"[{ material: clay, size: 10 in }]\",silt\n\
        40,firm_to_very_stiff_clay\n\
        ,firm_to_very_stiff_clay,\"[{ material: clay, size: 10 in }]\",\n";
    let (rows, code) = answers("faults", table, &base());
    assert_eq!((rows.len(), code), (8, Some(8)));
    let of = |row: &Value| {
        let fault = &row["faults"][0];
        (
            fault["path"].as_str().unwrap().to_owned(),
            fault["message"].as_str().unwrap().to_owned(),
            fault["line"].clone(),
        )
    };
    for (row, path, part) in [
        (0, "length [m]", "expected a length, got \"forty\""),
        (1, "ground[0].class", "expected a ground class"),
        (3, "candidates", ""),
        (4, "candidates[0].size", "no clay jacking pipe of 11 in"),
        (5, "ground[2].class", "does not fit the drive file"),
        (6, "", "2 cells, where the header has 4"),
        (7, "", "\"length\" is missing"),
    ] {
        let (its, message, line) = of(&rows[row]);
        assert!(its == path && message.contains(part), "{its}: {message}");
        assert_eq!(line, Value::Null, "a place in a text that nobody wrote");
        assert!(rows[row]["file"].as_str().unwrap().ends_with(&format!("faults.csv:{}", row + 2)));
    }
    assert!(rows[2]["answer"].as_str().unwrap().contains("clay 10 in"), "{}", rows[2]);
}

/// A header that is no field is refused before any row, and so is a base that is no YAML, and a second base.
#[test]
fn a_header_that_is_no_field_is_refused() {
    let base = file("header.yaml", base().as_bytes());
    let refused = |name: &str, table: &str, bases: &[&str]| {
        let table = file(name, table.as_bytes());
        let output = jackpull(&[&["assess", "--each", &table], bases].concat());
        assert_eq!(output.status.code(), Some(2));
        assert!(output.stdout.is_empty(), "{}", stdout(&output));
        stderr(&output)
    };
    let told = refused("header.csv", "lenght [m],ground[0].colour,grade,grade [%]\n40,red,,\n", &[&base]);
    for part in [
        "lenght [m]: is no field of the drive file",
        "did you mean \"length\"?",
        "ground[0].colour: is no field",
        "grade [%]: stands in the header twice",
    ] {
        assert!(told.contains(part), "{part}\n{told}");
    }
    let broken = file("broken_base.yaml", b"service: casing\nservice: casing\n");
    let told = refused("fine.csv", "length [m]\n40\n", &[&broken]);
    assert!(told.contains("broken_base.yaml:2:1"), "{told}");
    let told = refused("fine.csv", "length [m]\n40\n", &[&base, &example("fennbridge_mill_lane.yaml")]);
    assert!(told.contains("over one drive file"), "{told}");
}

/// A table without a row is refused in words, in the place of an answer: nothing assessed is no success.
#[test]
fn a_table_without_rows_is_told() {
    let (base, table) = (file("no_rows.yaml", base().as_bytes()), file("no_rows.csv", b"length [m]\n,\n"));
    let empty = file("no_row.csv", b"length [m]\n");
    for (format, start) in [("json", "[{\"file\":"), ("ndjson", "{\"file\":"), ("csv", "file,drive,answer,")] {
        let output = jackpull(&["assess", "--format", format, "--each", &empty, &base]);
        assert!(stdout(&output).starts_with(start), "{format}: {}", stdout(&output));
        assert!(stderr(&output).contains("has no row below its header"), "{}", stderr(&output));
        assert_eq!(output.status.code(), Some(2));
    }
    // One cell too many is told of its row, and a header never takes over a screen.
    let output = jackpull(&["assess", "--each", &table, &base]);
    assert!(stderr(&output).contains("2 cells, where the header has 1"), "{}", stderr(&output));
    let wild = file("wild.csv", b"\x1b[31mlength\n40\n");
    let output = jackpull(&["assess", "--each", &wild, &base]);
    assert!(stderr(&output).contains("is no field") && !stderr(&output).contains('\u{1b}'), "{}", stderr(&output));
}

/// The header that `template --csv` prints, filled in, goes over the template.
#[test]
fn the_header_of_the_template_goes_over_the_template() {
    for (units, cells) in [
        ("si", "a,40,4.2,4.0,5,firm_to_very_stiff_clay,12,20,10 in"),
        ("us", "a,130,14,13.4,16,firm_to_very_stiff_clay,12,0.75,10 in"),
    ] {
        let base = stdout(&jackpull(&["template", "--units", units]));
        let header = stdout(&jackpull(&["template", "--csv", "--units", units]));
        assert_eq!(header.matches(',').count(), cells.matches(',').count(), "{header}");
        let (rows, code) = answers(&format!("template_{units}"), &format!("{header}{cells}\n"), &base);
        assert_eq!(rows[0]["drive"], "a", "{rows:?}");
        assert_ne!(code, Some(2));
    }
}

/// Each row has figures of its own.
#[test]
fn the_figures_of_a_row_are_its_own() {
    let base = file("figured.yaml", base().as_bytes());
    let table = "length [m],ground[0].class,candidates\n\
        40,firm_to_very_stiff_clay,\"[{ material: clay, size: 10 in }]\"\n\
        50,firm_to_very_stiff_clay,\"[{ material: clay, size: 10 in }]\"\n";
    let table = file("figured.csv", table.as_bytes());
    let folder = format!("{table}_figures");
    let _ = std::fs::remove_dir_all(&folder);
    let output = jackpull(&["assess", "--format", "csv", "--figures", &folder, "--each", &table, &base]);
    assert_ne!(output.status.code(), Some(2), "{}", stderr(&output));
    let names = std::fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let names: Vec<String> = names.collect();
    let of = |row: &str| names.iter().filter(|name| name.starts_with(row)).count();
    assert!(of("figured.csv_2_") > 0 && of("figured.csv_2_") == of("figured.csv_3_"), "{names:?}");
    assert_eq!(of("figured.csv_2_") + of("figured.csv_3_"), names.len(), "{names:?}");
}

/// Rows of a spreadsheet end in two characters: row 3 is the third line of it, whoever wrote it.
#[test]
fn rows_are_counted_as_a_spreadsheet_does() {
    let base = file("crlf.yaml", base().as_bytes());
    let table = "length [m],ground[0].class,candidates\n40,firm_to_very_stiff_clay,\"[{ material: clay, size: 10 in }]\"\n\
        forty,firm_to_very_stiff_clay,\"[{ material: clay, size: 10 in }]\"\n";
    for (name, table) in [("lf.csv", table.to_owned()), ("crlf.csv", table.replace('\n', "\r\n"))] {
        let path = file(name, table.as_bytes());
        let output = jackpull(&["assess", "--format", "ndjson", "--each", &path, &base]);
        let rows: Vec<Value> = stdout(&output).lines().map(|line| serde_json::from_str(line).unwrap()).collect();
        let files: Vec<&str> = rows.iter().map(|row| row["file"].as_str().unwrap()).collect();
        assert_eq!(files, [format!("{path}:2"), format!("{path}:3")]);
        assert!(stderr(&output).contains(&format!("{path}:3")), "{}", stderr(&output));
    }
    for parted in [";", "\t"] {
        let path = file("parted.csv", table.replace(',', parted).as_bytes());
        let output = jackpull(&["assess", "--each", &path, &base]);
        let told = stderr(&output);
        assert!(output.status.code() == Some(2) && told.contains("parted by semicolons or tabs"), "{told}");
    }
}

/// The table may come from another program.
#[test]
fn a_table_is_read_from_standard_input() {
    use std::io::Write as _;
    use std::process::{Command, Stdio};
    let base = file("piped.yaml", SEWER.as_bytes());
    let run = |base: &str| {
        let mut command = Command::new(env!("CARGO_BIN_EXE_jackpull"));
        command.args(["assess", "--format", "csv", "--each", "-", base]);
        let mut child = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        let _ = child.stdin.take().unwrap().write_all(b"length [m]\n40\n50\n");
        child.wait_with_output().unwrap()
    };
    let output = run(&base);
    let lines: Vec<String> = stdout(&output).lines().map(ToOwned::to_owned).collect();
    assert!(lines.len() == 3 && lines[1].starts_with("-:2,") && lines[2].starts_with("-:3,"), "{lines:?}");
    assert!(stderr(&run("-")).contains("not both"));
}
