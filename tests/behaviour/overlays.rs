//! A user's tables laid over those of the handbook.

use crate::drives::text;
use crate::edit::Edit;
use jackpull::check::Subject;
use jackpull::handbook::{Handbook, HandbookError};
use jackpull::quantity::Measure;
use jackpull::source::{Mark, Origin};
use jackpull::yaml::MOST_FAULTS;
use jackpull::{InputError, Method, Scheme, assess, choose, read_drive};
use std::sync::Arc;

/// A user's file for the table of iron pipe sizes.
fn overlay(rows: &str) -> String {
    format!("id: pe_ips\ntitle: Pipe on our yard\nmark: published\nrows:\n{rows}")
}

fn overlay_row(key: &str, size: &str, outside_diameter: &str) -> String {
    format!("  - key: {key}\n    value:\n      size: {size}\n      outside_diameter: {outside_diameter}\n")
}

#[test]
fn an_overlay_replaces_a_row_by_its_key() {
    let book = Handbook::embedded();
    let before = book.pe_ips().unwrap();
    let at = before.rows.len() / 2;
    let old = &before.rows[at];
    let text = overlay(&overlay_row(&old.key, "20 in", "508 mm")) + "    mark: published\n    range: 500 to 510 mm\n";
    let laid = book.with_overlay("yard.yaml", &text).unwrap();
    let after = laid.pe_ips().unwrap();
    assert_eq!(after.rows.len(), before.rows.len());
    let new = &after.rows[at];
    assert_eq!(new.key, old.key);
    assert!((new.value.outside_diameter.value.si() - 0.508).abs() < 1e-12);
    assert_eq!(new.citation.mark, Mark::Given);
    assert_eq!((new.citation.source.as_str(), new.citation.note.as_deref()), ("yard.yaml", None));
    assert!(new.citation.locator.contains(&old.key));
    assert_eq!(new.citation.range.as_deref(), Some("500 to 510 mm"));
    let kept = new.replaced.as_ref().unwrap();
    assert_eq!((&kept.key, &kept.citation), (&old.key, &old.citation));
    assert_eq!(kept.value.outside_diameter.value.si(), old.value.outside_diameter.value.si());
    // The rows around it, and the handbook it was laid over, are as they were.
    for (old, new) in before.rows.iter().zip(&after.rows).filter(|(row, _)| row.key != kept.key) {
        assert_eq!((&new.key, &new.citation, new.replaced.is_none()), (&old.key, &old.citation, true));
    }
    assert!(book.pe_ips().unwrap().rows.iter().all(|row| row.replaced.is_none()));
    let Origin::Row(id) = after.get(&old.key).unwrap().origin else { panic!("no row") };
    assert_eq!(laid.citation(id), Some(("pe_ips", old.key.as_str(), &new.citation)));
}

#[test]
fn an_overlay_appends_a_new_key_and_overlays_add_up() {
    let book = Handbook::embedded();
    let rows = book.pe_ips().unwrap().rows.len();
    let one = book.with_overlay("one.yaml", &overlay(&overlay_row("ours", "20 in", "508 mm"))).unwrap();
    let two = one.with_overlay("two.yaml", &overlay(&overlay_row("ours", "20 in", "509 mm"))).unwrap();
    let other = two.with_overlay("three.yaml", "id: pe_iso4427\ntitle: none\nrows: []\n").unwrap();
    assert_eq!(one.pe_ips().unwrap().rows.len(), rows + 1);
    let last = other.pe_ips().unwrap().rows.last().unwrap();
    assert_eq!((last.key.as_str(), last.citation.source.as_str()), ("ours", "two.yaml"));
    assert_eq!(last.citation.mark, Mark::Given);
    let kept = last.replaced.as_ref().unwrap();
    assert_eq!((kept.citation.source.as_str(), kept.citation.mark), ("one.yaml", Mark::Given));
    assert!(kept.replaced.is_none());
}

fn refusal(text: &str) -> HandbookError {
    Handbook::embedded().with_overlay("yard.yaml", text).err().unwrap_or_else(|| panic!("taken: {text}"))
}

#[test]
fn an_overlay_of_no_table_is_refused() {
    let text = overlay("").edit("pe_ips", "pe_ipz").edit("rows:\n", "rows: []\n");
    assert_eq!(refusal(&text), HandbookError::NoTable("pe_ipz".to_owned()));
}

/// Each text with what its message must say.
#[test]
fn a_malformed_overlay_is_refused_with_its_line() {
    let row = |key| overlay_row(key, "20 in", "508 mm");
    let twice = row("ours") + &row("other") + &row("ours");
    let cases = [
        // A unit of another dimension, an unknown unit, none.
        (overlay_row("ours", "20 in", "508 kPa"), "line 8", "outside_diameter"),
        (overlay_row("ours", "20 inchs", "508 mm"), "line 7", "size"),
        (overlay_row("ours", "20 in", "508"), "line 8", "without a unit"),
        (overlay_row("ours", "20 in", "NaN mm"), "line 8", "not a finite number"),
        (twice, "line 13", "\"ours\" is given twice"),
        (row("ours") + "      wall: 20 mm\n", "line 9", "wall"),
        (row("ours") + "    note: \"\\e[31mred\"\n", "line 9", "note: expected a text without control characters"),
        (row("ours") + "    colour: blue\n", "line 9", "colour"),
        (row("ours") + "    mark: honest\n", "line 9", "mark"),
        ("  - key: ours\n    value:\n      size: 20 in\n".to_owned(), "line 7", "outside_diameter"),
        ("  - key: ours\n    value: [20 in\n".to_owned(), "line", ""),
        ("  - key: ours\n   value: 3\n".to_owned(), "line 6", ""),
    ];
    for (rows, line, word) in cases {
        let error = refusal(&overlay(&rows));
        let message = error.to_string();
        assert!(matches!(&error, HandbookError::Malformed { table, .. } if table == "yard.yaml"), "{error:?}");
        assert!(message.contains(line) && message.contains(word), "no {line} or {word} in: {message}");
    }
}

/// A row that nothing can look up would be taken in silence: a slip of the key in a table whose rows go by fixed keys.
#[test]
fn an_unknown_key_where_keys_are_fixed_is_refused_with_the_near_one() {
    for (table, key, value, near) in [
        ("practice_ratio", "clay.factr", "4", "clay.factor"),
        ("practice_pressure", "pull.anular", "10 psi", "pull.annular"),
        ("practice_length", "pilot.drild", "12 mm", "pilot.drilled"),
        ("practice_angle", "pull.rmp", "15 deg", "pull.ramp"),
        ("practice_duration", "collapse.laod", "30 h", "collapse.load"),
        ("score_weight", "load_margn", "0.5", "load_margin"),
        ("clay_strength", "en_295", "75 MPa", "en_295_7"),
        ("bore_rule", "generall", "{ times: 1.4, plus: 0 mm }", "general"),
        ("adhesion", "staled", "{ interface: any, soil: any, low: 1 kPa, high: 2 kPa }", "stalled"),
        ("pipe_density", "stel", "7.9", "steel"),
        ("face_rule", "china_rng", "{ machine: any, high: 400 kPa }", "china_ring"),
        ("ream_step", "sofft", "{ ground: soft }", "soft"),
        (
            "pe_material",
            "pe1000",
            "{ density: 0.96 g/cm3, tensile_yield: 3500 psi, american: pe4710, german: pe100, soft: pe4xxx, stiff: \
             pe4xxx }",
            "pe100",
        ),
    ] {
        let text = format!("id: {table}\ntitle: ours\nrows:\n  - key: {key}\n    value: {value}\n");
        let message = refusal(&text).to_string();
        for part in [
            format!("the table \"{table}\" has no row \"{key}\""),
            format!("did you mean \"{near}\"?"),
            "line 4 column 10".to_owned(),
        ] {
            assert!(message.contains(&part), "no {part} in: {message}");
        }
    }
}

fn with(overlays: &[&str], text: &str) -> [Scheme; 2] {
    let lay = |book: Arc<Handbook>, overlay: &&str| Arc::new(book.with_overlay("ours.yaml", overlay).unwrap());
    let drive = read_drive(text, &overlays.iter().fold(Handbook::embedded(), lay)).unwrap();
    let [clay, pe] = drive.candidates() else { panic!("two pipes") };
    [assess(&drive, clay, Method::PipeJacking), assess(&drive, pe, Method::Pullback)]
}

/// Where rows are found by their columns, a user's row under a key of its own wins over the embedded one that fits
/// too, and of two users' rows the one laid over last.
#[test]
fn a_row_laid_over_wins_where_rows_are_found_by_column() {
    // With the joint told, so that the end goes with its area.
    let text = text(|text| text.edit("size: 10 in", "size: 10 in, joint_stress_ratio: 0.5"));
    let plain = with(&[], &text);
    let limit = |schemes: &[Scheme; 2], pipe: usize, subject| {
        let check = schemes[pipe].checks.get(subject).unwrap();
        check.high().unwrap().1.si
    };
    let row = |table: &str, value: &str| format!("id: {table}\ntitle: ours\nrows: [{{ key: ours, value: {value} }}]\n");
    let clay = "{ size: 10 in, outside_diameter: 13.3125 in, weight: 65 lbf/ft, rated_at_2_5: 30 tonf_us, rated_at_3_0: \
                25 tonf_us, rated_at_3_5: 21.5 tonf_us, rating_strength: 7000 psi }";
    let ours = with(&[&row("clay_pipe", clay)], &text);
    let share = limit(&ours, 0, Subject::EndCapacity) / limit(&plain, 0, Subject::EndCapacity);
    assert!((share - 0.5).abs() < 1e-9, "{share}");

    let friction = |likely: &str| {
        row(
            "friction_band",
            &format!(
                "{{ ground: silt, water: any, lubrication: metered, low: 1 kPa, likely: {likely}, high: 90 kPa }}"
            ),
        )
    };
    let force = |overlays: &[&str]| with(overlays, &text)[0].force.unwrap().likely.si();
    let (one, two, usual) = (friction("60 kPa"), friction("80 kPa"), force(&[]));
    let first = force(&[&one]) - usual;
    assert!(first > 0.0);
    assert!(force(&[&one, &two]) - usual > 1.2 * first, "the last one counts");

    // Pull stress, and the modulus at the very duration of a printed one.
    let stress = "{ edition: ppi_2008, material: pe4710, up_to: 12 h, stress: 1 MPa, at: 73 degF }";
    let ours = with(&[&row("pe_pull_stress", stress)], &text);
    let usual = limit(&plain, 1, Subject::Tension);
    assert!(limit(&ours, 1, Subject::Tension) < 0.3 * usual);
    let modulus = |value: &str| row("pe_modulus", &format!("{{ material: pe4xxx, duration: 24 h, modulus: {value} }}"));
    let collapse = |overlays: &[&str]| limit(&with(overlays, &text), 1, Subject::Collapse);
    let embedded = collapse(&[]);
    assert!(collapse(&[&modulus("100 MPa")]) < 0.5 * embedded);
    let factor =
        |factor: &str| row("pe_duration_factor", &format!("{{ edition: gw_321, up_to: 20 h, factor: {factor} }}"));
    let tension = limit(&with(&[&factor("0.2")], &text), 1, Subject::Tension);
    assert!(tension < 0.5 * usual, "{tension} {usual}");

    // A longer drive of wide pipe says nothing of the guided pilot of this one.
    let wide = row("method_limit", "{ method: pipe jacking, od_from: 1 m, od_to: 3 m, length: 500 m }");
    let length = |overlays: &[&str], pipe| limit(&with(overlays, &text), pipe, Subject::Length);
    assert_eq!([0, 1].map(|pipe| length(&[&wide], pipe)), [0, 1].map(|pipe| length(&[], pipe)));
}

/// What is laid over can be told, in the order of laying.
#[test]
fn overlays_are_listed() {
    let book = Handbook::embedded();
    assert_eq!(book.overlays().count(), 0);
    let one = book.with_overlay("one.yaml", &overlay(&overlay_row("ours", "20 in", "508 mm"))).unwrap();
    let two = one.with_overlay("two.yaml", &overlay(&overlay_row("ours", "20 in", "509 mm"))).unwrap();
    assert_eq!(two.overlays().collect::<Vec<_>>(), [("pe_ips", "one.yaml"), ("pe_ips", "two.yaml")]);
}

/// The user's factor is not that of the printed ratings: the end area behind them stays what it is.
#[test]
fn a_factor_of_the_users_leaves_the_end_area_alone() {
    // A soft packer and a square joint bear evenly, so that the factor on even load governs.
    let soft = "size: 10 in, end_squareness: 0 mm, packer: { thickness: 20 mm, modulus: 5 MPa }";
    let text = text(|text| text.edit("size: 10 in", soft));
    let capacity =
        |overlays: &[&str]| with(overlays, &text)[0].checks.get(Subject::EndCapacity).unwrap().high().unwrap();
    let factor = |factor: &str| {
        capacity(&[&format!("id: practice_ratio\ntitle: ours\nrows: [{{ key: clay.factor, value: {factor} }}]\n")]).1.si
    };
    let usual = capacity(&[]).1.si;
    for (given, share) in [("2.0", 1.5), ("2.5", 1.2), ("3.75", 0.8)] {
        assert!((factor(given) / usual - share).abs() < 1e-9, "{given}: {}", factor(given) / usual);
    }
}

/// Bands that fall are refused when a drive is put together, with table and row.
#[test]
fn bands_that_fall_are_refused() {
    let base = text(|text| text);
    let not_metered = text(|text| text.edit("lubrication: metered", "lubrication: not_metered"));
    let one = |table: &str, key: &str, value: &str| {
        format!("id: {table}\ntitle: ours\nrows: [{{ key: {key}, value: {value} }}]\n")
    };
    let band = |lubrication: &str, low: &str, likely: &str, high: &str| {
        one(
            "friction_band",
            &format!("silt_above_{lubrication}"),
            &format!(
                "{{ ground: silt, water: any, lubrication: {lubrication}, low: {low} kPa, likely: {likely} kPa, high: \
                 {high} kPa }}"
            ),
        )
    };
    let class = |n: [&str; 3]| {
        let [low, likely, high] = n;
        one(
            "ground_class",
            "silt",
            &format!("{{ ground: silt, n_low: {low}, n_likely: {likely}, n_high: {high}, tip: sand }}"),
        )
    };
    let falls = "low, likely and high do not rise";
    let cases = [
        (one("practice_ratio", "pull.friction_fluid_low", "0.31"), &base, "pull.friction_fluid", falls),
        (one("practice_ratio", "pull.friction_fluid", "0.2"), &base, "pull.friction_fluid", falls),
        (one("practice_ratio", "pull.fluid_light", "1.2"), &base, "pull.fluid_", falls),
        (one("practice_ratio", "pull.fluid_heavy", "1.01"), &base, "pull.fluid_", falls),
        (one("practice_ratio", "tip.clay_low", "30"), &base, "tip.clay_", falls),
        (one("practice_pressure", "pull.annular_low", "11 psi"), &base, "pull.annular", falls),
        (class(["5", "4", "30"]), &base, "silt", falls),
        (class(["5", "15", "10"]), &base, "silt", falls),
        (class(["-1", "15", "30"]), &base, "silt", falls),
        (band("metered", "50", "60", "70"), &not_metered, "silt", "metered lubrication leaves more friction than none"),
        (band("metered", "1", "2", "70"), &not_metered, "silt", "metered lubrication leaves more friction than none"),
        (band("metered", "1", "60", "10"), &base, "silt, metered", falls),
        (band("metered", "-1", "5", "10"), &base, "silt, metered", falls),
        // The law of the scored wall ends at half of it.
        (one("after_pull", "score", "60 %"), &base, "score", "must be from 0 to 50 %"),
        (one("after_pull", "score_least", "-1 %"), &base, "score_least", "must be from 0 to 50 %"),
    ];
    for (overlay, text, row, why) in cases {
        let book = Arc::new(Handbook::embedded().with_overlay("ours.yaml", &overlay).unwrap());
        let error = match read_drive(text, &book) {
            Err(InputError::Handbook(error)) => error,
            Err(error) => panic!("{error}"),
            Ok(drive) => choose(&drive).err().unwrap_or_else(|| panic!("taken:\n{overlay}")),
        };
        let message = error.to_string();
        assert!(message.contains(row) && message.contains(why), "{overlay}\n{message}");
        // The user's file is to blame, at the row.
        let (name, blamed, fault) = book.blamed(&error).unwrap();
        assert_eq!((name, blamed, fault.path.as_str()), ("ours.yaml", overlay.as_str(), "rows[0]"));
        assert_eq!((fault.place.map(|place| place.line), fault.complaint.message), (Some(3), message), "{overlay}");
    }
}

/// No value by use has a sense below zero.
#[test]
fn values_by_use_below_zero_are_refused() {
    let embedded = Handbook::embedded();
    let mut seen = 0;
    for (table, key, _) in embedded.citations().unwrap() {
        let with = |value: &str| {
            let text = format!("id: {table}\ntitle: ours\nrows: [{{ key: {key}, value: {value} }}]\n");
            embedded.with_overlay("ours.yaml", &text).unwrap()
        };
        let got = match table {
            "practice_ratio" => with("-0.1").ratio(key).map(|_| ()),
            "practice_pressure" => with("-1 Pa").pressure(key).map(|_| ()),
            "practice_length" => with("-1 mm").length(key).map(|_| ()),
            "practice_angle" => with("-1 deg").angle(key).map(|_| ()),
            "practice_duration" => with("-1 h").duration(key).map(|_| ()),
            _ => continue,
        };
        assert_eq!(got.unwrap_err().to_string(), format!("table {table}, {key}: is below zero"));
        seen += 1;
    }
    assert!(seen > 40);
}

/// Of several files the one with the row is to blame, the last of them; a row that hides one of the book is missed as
/// its own fault; and a row that the book never had is nobody's.
#[test]
fn the_file_with_the_row_is_to_blame() {
    let lay = |files: &[(&str, &str)]| {
        let lay = |book: Arc<Handbook>, file: &(&str, &str)| Arc::new(book.with_overlay(file.0, file.1).unwrap());
        files.iter().fold(Handbook::embedded(), lay)
    };
    let ratio = |rows: &str| format!("id: practice_ratio\ntitle: ours\nrows:\n{rows}");
    let (bad, good) = (
        ratio("  - { key: clay.joint_ratio, value: 0.5 }\n  - { key: clay.factor, value: -3 }\n"),
        "id: practice_ratio\ntitle: ours\nrows: []\n".to_owned(),
    );
    let book = lay(&[("first.yaml", &bad), ("bad.yaml", &bad), ("good.yaml", &good)]);
    let error = book.ratio("clay.factor").unwrap_err();
    let (name, _, fault) = book.blamed(&error).unwrap();
    let place = fault.place.unwrap();
    assert_eq!((name, fault.path.as_str(), place.line, place.column), ("bad.yaml", "rows[1]", 5, 12));

    // The row of firm clay is taken for silt.
    let moved = "id: ground_class\ntitle: ours\nrows:\n  - { key: firm_to_very_stiff_clay, value: { ground: silt, n_low: 4, \
                 n_likely: 15, n_high: 30, tip: clay } }\n";
    let book = lay(&[("moved.yaml", moved)]);
    let missing = |wanted: &str| HandbookError::NoRow { table: "ground_class", wanted: wanted.to_owned() };
    let (name, _, fault) = book.blamed(&missing("firm_to_very_stiff_clay")).unwrap();
    assert_eq!((name, fault.place.map(|place| place.line)), ("moved.yaml", Some(4)));
    assert_eq!(book.blamed(&missing("glacier")), None);

    // Weights that all are zero: the file, and no row of it.
    let every = HandbookError::Unfit { table: "practice_ratio", row: "every row".to_owned(), why: "is zero" };
    let book = lay(&[("bad.yaml", &bad)]);
    let (name, _, fault) = book.blamed(&every).unwrap();
    assert_eq!((name, fault.place), ("bad.yaml", None));
    assert_eq!(Handbook::embedded().blamed(&every), None);
}

/// A factor that takes safety away, and what is ten times off, are faults of the file that says so.
#[test]
fn a_row_that_makes_no_sense_is_refused() {
    for (table, row, wanted) in [
        ("practice_ratio", "key: clay.factor, value: \"0.8\"", "0.8 is a factor below 1, where the handbook has 3.0"),
        ("practice_ratio", "key: collapse.safety, value: \"0.5\"", "0.5 is a factor below 1"),
        ("thrust_wall", "key: safety_default, value: { value: \"0.9\" }", "value: 0.9 is a factor below 1"),
        (
            "clay_strength",
            "key: en_295_7, value: 7500 MPa",
            "7500 MPa is more than 10 times off, where the handbook has 75",
        ),
        ("practice_pressure", "key: pull.annular, value: 10 MPa", "10 MPa is more than 10 times off"),
        (
            "pe_ips",
            "key: ours, value: { size: 20 in, outside_diameter: 50.8 m }",
            "outside_diameter: 50.8 m is more than 10",
        ),
    ] {
        let text = format!("id: {table}\ntitle: ours\nrows:\n  - {{ {row} }}\n");
        let message = refusal(&text).to_string();
        assert!(message.contains(wanted) && message.contains("line 4"), "{wanted}: {message}");
    }
    // Places cost a reading of the text each: of thousands the first are told.
    let rows: String = (0..6_000).map(|row| format!("  - key: k{row}\n    value: \"90000\"\n")).collect();
    match refusal(&format!("id: bend_radius\ntitle: ours\nrows:\n{rows}")) {
        HandbookError::Malformed { faults, .. } => assert_eq!(faults.len(), MOST_FAULTS),
        other => panic!("{other}"),
    }
    // What is near is the user's own word.
    for (table, row) in [
        ("practice_ratio", "key: clay.factor, value: \"2.5\""),
        ("score_weight", "key: load_margin, value: \"9\""),
        ("clay_strength", "key: en_295_7, value: 60 MPa"),
    ] {
        let text = format!("id: {table}\ntitle: ours\nrows:\n  - {{ {row} }}\n");
        assert!(Handbook::embedded().with_overlay("ours.yaml", &text).is_ok(), "{row}");
    }
}
