//! The input door: every fault at once, with its place; hostile texts refused in bounded memory.

use crate::drives::{STEM, drive, text};
use crate::edit::Edit;
use allocation_counter::measure;
use jackpull::drive_file::fields::{Shape, Spec};
use jackpull::drive_file::{DriveFile, WaterTable};
use jackpull::quantity::{Length, Measure, Ratio, ThermodynamicTemperature};
use jackpull::yaml::{Fault, LARGEST_INPUT, MOST_FAULTS, Words, text_of};
use jackpull::{Handbook, InputError, choose, read_drive};
use proptest::prelude::*;

fn faults(text: &str) -> Vec<Fault> {
    match read_drive(text, &Handbook::embedded()) {
        Err(InputError::Faults(faults)) => faults,
        Err(error) => panic!("{error}"),
        Ok(_) => Vec::new(),
    }
}

fn shown(faults: &[Fault]) -> Vec<String> {
    faults.iter().map(ToString::to_string).collect()
}

#[test]
fn every_faulty_value_is_reported_with_its_place() {
    let text = text(|text| {
        text.edit("length: 60 m", "length: 60 kN")
            .edit("invert_depth: 4.20 m", "invert_depth: 4.20")
            .edit("lubrication: metered", "lubrication: meterd")
            .edit("class: silt", "class: slit")
            .edit("thrust: 900 kN", "thrust: 900 tonf")
            .edit("25 degC", "25 degrees")
            .edit("sdr: 11", "sdr: eleven")
    });
    let found = shown(&faults(&text));
    let expected = [
        "length: expected a length, got \"60 kN\" which is a force (write for example \"60 m\") at line 2 column 9",
        "launch.invert_depth: expected a length, got 4.2 without a unit (write for example \"4.2 m\") at line 3 column 25",
        "lubrication: expected how the pipe is lubricated, got \"meterd\" (did you mean \"metered\"? write one of: none, \
         not_metered, metered, logged) at line 6 column 14",
        "ground[1].class: expected a ground class, got \"slit\" (did you mean \"silt\"? write one of: soft_clay, \
         firm_to_very_stiff_clay, hard_clay, silt, loose_sand, medium_to_dense_sand, gravel, fill, weak_rock, hard_rock, peat, \
         unknown) at line 9 column 24",
        "rig.thrust: expected a force, got \"900 tonf\" with the unknown unit \"tonf\" (write \"tonf_us\" (2000 lbf) or \
         \"tf\" (1000 kgf)) at line 11 column 16",
        "pull.pipe_temperature: expected a temperature, got \"25 degrees\" with the unknown unit \"degrees\" \
         (write \"deg\" for an angle, \"degC\" or \"degF\" for a temperature) at line 12 column 42",
        "candidates[1].sdr: expected a plain number or a percentage, got \"eleven\" (write for example \"11\") at \
         line 17 column 43",
    ];
    assert_eq!(found, expected);
}

#[test]
fn every_unknown_and_missing_key_is_told_with_the_faulty_values() {
    let text = text(|text| {
        text.edit("length: 60 m", "length: 60")
            .edit("launch: { invert_depth: 4.20 m }", "launch: { depth: 4.20 m, wall: 3 m }")
            .edit("groundwater: 5.5 m\n", "")
            .edit("silt, spt_n: 14", "silt, N: 14")
            .edit("thrust: 900 kN", "push: [900 kN, 1 MN]")
            .edit("candidates:", "pipes:")
    });
    let found = shown(&faults(&text));
    let begins = [
        "length: expected a length, got 60 without a unit",
        "launch: the key \"depth\" is not known here (did you mean \"invert_depth\"? known here: invert_depth, space, ",
        "launch.wall: expected a block of keys, got",
    ];
    assert_eq!(found.len(), begins.len(), "{found:#?}");
    for (found, begins) in found.iter().zip(begins) {
        assert!(found.starts_with(begins), "{found}");
    }
    // What ends the reading is out of the way.
    let found = shown(&faults(&text.edit(", wall: 3 m", "")));
    let wanted = [
        ("length: expected a length", "at line 2 column 9"),
        ("launch: the key \"depth\" is not known here", "at line 3 column 11"),
        ("ground[1]: the key \"N\" is not known here (did you mean \"spt_n\"? ", "at line 8 column 30"),
        ("rig: the key \"push\" is not known here (did you mean \"thrust\"? ", "at line 10 column 8"),
        ("the key \"pipes\" is not known here (did you mean \"candidates\"? ", "at line 14 column 1"),
        ("the key \"groundwater\" is missing at the top level of the file", "shows one of each)"),
    ];
    assert_eq!(found.len(), wanted.len(), "{found:#?}");
    for (found, (begins, ends)) in found.iter().zip(wanted) {
        assert!(found.starts_with(begins) && found.ends_with(ends), "{found}");
    }
}

#[test]
fn a_list_or_a_block_in_place_of_a_value_does_not_end_the_reading() {
    let text =
        text(|text| text.edit("length: 60 m", "length: [60 m]").edit("thrust: 900 kN", "thrust: { most: 900 kN }"));
    let found = shown(&faults(&text));
    let wanted = [
        "length: expected one value, got a list (write for example `key: 60 m`) at line 2 column 9",
        "rig.thrust: expected one value, got a block of keys (write for example `key: 60 m`) at line 11 column 16",
    ];
    assert_eq!(found, wanted);
}

/// What people write for a key leads to that key, in its own block.
#[test]
fn what_people_write_for_a_key_leads_to_it() {
    fn look(specs: &'static [Spec], counted: &mut usize) {
        let keys: Vec<&str> = specs.iter().map(|spec| spec.key).collect();
        let said: Vec<&str> = specs.iter().flat_map(|spec| spec.said).copied().collect();
        for (place, said_of_one) in said.iter().enumerate() {
            assert!(!keys.contains(said_of_one), "{said_of_one} is a key");
            assert!(!said[place + 1..].contains(said_of_one), "{said_of_one} stands for two keys");
        }
        *counted += said.len();
        for spec in specs {
            if let Shape::Block(inner) | Shape::Blocks(inner) = spec.shape {
                look(inner, counted);
            }
        }
    }
    let mut counted = 0;
    look(DriveFile::FIELDS, &mut counted);
    assert!(counted > 50, "{counted}");
    for (from, to, guess) in [
        ("length: 60 m", "length: 60 m\nfall: 0.4 %", "did you mean \"grade\"?"),
        ("size: 10 in", "dn: 10 in", "did you mean \"size\"?"),
        ("sdr: 11", "dr: 11", "did you mean \"sdr\"?"),
    ] {
        let text = text(|text| text.edit(from, to));
        let found = shown(&faults(&text));
        assert!(found.iter().any(|fault| fault.contains(guess)), "{found:#?}");
    }
}

#[test]
fn a_missing_key_is_named_with_where_it_belongs() {
    let top = text(|text| text.edit("groundwater: 5.5 m\n", ""));
    let found = shown(&faults(&top));
    assert!(found[0].starts_with("the key \"groundwater\" is missing at the top level of the file"), "{found:?}");
    let inside = text(|text| text.edit("material: clay, size: 10 in", "material: clay"));
    let found = shown(&faults(&inside));
    assert!(found[0].starts_with("candidates[0]: the key \"size\" is missing from this block"), "{found:?}");
    assert!(found[0].contains("at line 16"), "{found:?}");
}

#[test]
fn contradictions_are_located_like_faulty_values() {
    let text = text(|text| {
        text.edit("to: 40 m", "from: 30 m, to: 40 m")
            .edit("to: 60 m", "to: 55 m")
            .edit("thrust: 900 kN", "thrust: -900 kN")
            .edit("size: 315 mm, sdr: 11", "size: 315 mm, wall: 200 mm")
            .edit("size: 10 in", "size: 10 in, casing: 300 mm")
    });
    let found = shown(&faults(&text));
    let expected = [
        "ground[1].from: leaves a gap: the ground is given up to 25.0 m only at line 9 column 13",
        "ground[2].to: the ground ends here, 5.0 m short of the drive; stretches lie one behind the other along it at line 10 column 11",
        "rig.thrust: expected a force above zero, got -900.0 kN (write for example \"900 kN\") at line 11 column 16",
        "candidates[0].casing: is smaller than clay 10 in, which it makes room for at line 16 column 44",
        "candidates[1].wall: leaves no bore inside the pipe at line 17 column 44",
    ];
    assert_eq!(found, expected);
    for (from, to, part) in [
        ("to: 40 m", "from: 20 m, to: 40 m", "ground[1].from: overlaps: the ground is given up to 25.0 m already"),
        ("to: 60 m", "to: 65 m", "ground[2].to: lies beyond the drive, which is 60.0 m long"),
        ("{ to: 25 m, ", "{ ", "ground[0].to: missing: only the last stretch"),
        ("invert_depth: 3.96 m", "invert_depth: 0.2 m", "candidates[0].size: clay 10 in stands out of the ground"),
        ("sdr: 11", "sdr: 17, wall: 28.6 mm", "candidates[1].sdr: 17 contradicts the wall, which gives 11.0"),
        (
            "  - { material: clay, size: 10 in }\n",
            "  - { material: clay, size: 10 in }\n  - { material: clay, size: 10 in }\n",
            "candidates[1]: clay 10 in is among the candidates twice",
        ),
    ] {
        let text = crate::drives::text(|text| text.edit(from, to));
        let found = shown(&faults(&text));
        assert!(found.iter().any(|fault| fault.starts_with(part) && fault.contains(" at line ")), "{part}: {found:?}");
    }
}

#[test]
fn faults_are_capped() {
    let stretches: String = (0..200).map(|_| "  - { to: 1, class: silt }\n").collect();
    let text = text(|text| text.edit("ground:\n", &format!("ground:\n{stretches}")));
    assert_eq!(faults(&text).len(), MOST_FAULTS);
}

/// Texts that a parser chokes on. None gives a drive; each is refused in little memory.
#[test]
fn hostile_texts_are_refused_in_bounded_memory() {
    let base = text(|text| text);
    let bomb = "a: &a [x,x,x,x,x,x,x,x,x]\nb: &b [*a,*a,*a,*a,*a,*a,*a,*a,*a]\nc: &c [*b,*b,*b,*b,*b,*b,*b,*b,*b]\n";
    let deep_block: String = (0..1_000).map(|depth| format!("{}a:\n", " ".repeat(depth))).collect();
    let deep_list = "- ".repeat(100_000);
    let corpus: Vec<(&str, String)> = vec![
        ("brackets", "[".repeat(100_000)),
        ("braces", "{".repeat(100_000)),
        ("brackets in a value", format!("length: {}", "[".repeat(100_000))),
        ("alias bomb", bomb.to_owned()),
        ("anchor on a value", base.edit("length: 60 m", "length: &x 60 m")),
        ("alias as a value", base.edit("length: 60 m", "length: *x")),
        ("deep block", deep_block),
        ("deep list", deep_list),
        ("11 MiB", "# filling\n".repeat(11 << 17)),
        ("NUL", base.edit("length: 60 m", "length: 60\0 m")),
        ("NUL alone", "\0".to_owned()),
        ("escape", base.edit("length: 60 m", "length: \u{1b}[31m60 m")),
        ("two documents", format!("{base}---\n{base}")),
        ("empty", String::new()),
        ("only a comment", "# nothing\n".to_owned()),
        ("list at the top", "- 1\n- 2\n".to_owned()),
        ("text at the top", "drive\n".to_owned()),
        ("duplicate key", base.edit("length: 60 m", "length: 60 m\nlength: 61 m")),
        ("tag", base.edit("length: 60 m", "length: !secret 60 m")),
        ("list for a value", base.edit("length: 60 m", "length: [60 m]")),
        ("block for a value", base.edit("length: 60 m", "length: { m: 60 }")),
        ("value for a block", base.edit("rig: { thrust: 900 kN, pull: 500 kN }", "rig: 900 kN")),
        ("null", base.edit("length: 60 m", "length: ~")),
        ("boolean", base.edit("length: 60 m", "length: true")),
        ("beyond f64", base.edit("length: 60 m", "length: 1e999 m")),
        ("beyond f64, bare", base.edit("spt_n: 12", "spt_n: 1e999")),
        ("not a number", base.edit("spt_n: 12", "spt_n: .nan")),
        ("infinite", base.edit("spt_n: 12", "spt_n: .inf")),
        ("merge key", base.edit("length: 60 m", "<<: { length: 60 m }")),
        ("tab as indent", base.edit("  - { to: 25 m", "\t- { to: 25 m")),
        ("unclosed quote", base.edit("length: 60 m", "length: \"60 m")),
    ];
    for (name, hostile) in &corpus {
        let mut refused = false;
        let used = measure(|| refused = !faults(hostile).is_empty());
        assert!(refused, "{name} was taken for a drive");
        assert!(used.bytes_max < 64 << 20, "{name} took {} bytes", used.bytes_max);
    }
}

/// Oddly saved, but right.
#[test]
fn byte_order_mark_and_carriage_returns_are_read() {
    let base = text(|text| text);
    let plain = format!("{:?}", choose(&drive(&base)).unwrap().ranked);
    for odd in [format!("\u{feff}{base}"), base.replace('\n', "\r\n")] {
        assert_eq!(plain, format!("{:?}", choose(&drive(&odd)).unwrap().ranked));
    }
    let broken = base.edit("length: 60 m", "length: 60 kN").replace('\n', "\r\n");
    assert!(shown(&faults(&broken))[0].ends_with("at line 2 column 9"));
}

#[test]
fn bytes_that_are_no_text_are_refused_with_their_place() {
    let mut bytes = text(|text| text).into_bytes();
    bytes[31] = 0xff;
    let fault = text_of(&bytes).unwrap_err();
    assert_eq!(fault.to_string(), "the file is not text in UTF-8 (save it as UTF-8) at line 2 column 9");
    assert!(text_of(&vec![b' '; LARGEST_INPUT + 1]).is_err());
}

/// An anchor behind a quote that goes over two lines is not seen by the guard of the text; the values that its aliases make
/// are counted.
#[test]
fn values_are_counted_whoever_makes_them() {
    let list = "swelling, ".repeat(2_000);
    let hidden = format!("name: [\"a\n\", &h [{list}]");
    let aliases = ", *h".repeat(200);
    let told = DriveFile::read(&text(|text| text.edit("service:", &format!("{hidden}{aliases}]\nservice:"))));
    assert!(told.is_err());
    let many = format!("hazards: [{}]", list.repeat(11));
    let told = DriveFile::read(&text(|text| text.edit("spt_n: 12", &format!("spt_n: 12, {many}"))));
    let told = told.unwrap_err().to_string();
    assert!(told.contains("more than 20000 values"), "{told}");
}

/// Hundreds of stretches are read, resolved and ranked: as many as two pipes may have.
#[test]
fn hundreds_of_stretches_are_assessed() {
    let count = 150_u32;
    let stretches: String = (1..=count)
        .map(|index| {
            let to = 60.0 * f64::from(index) / f64::from(count);
            format!("  - to: {to} m\n    class: firm_to_very_stiff_clay\n    spt_n: 12\n    largest_stone: 0 mm\n")
        })
        .collect();
    let one = "  - { to: 60 m, class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }\n";
    let with = |stretches: &str| {
        let base = text(|text| text);
        let (before, rest) = base.split_once("ground:\n").unwrap();
        let (_, after) = rest.split_once("rig:").unwrap();
        drive(&format!("{before}ground:\n{stretches}rig:{after}"))
    };
    let (many, whole) = (with(&stretches), with(one));
    let told = |count: usize| {
        let more = "  - class: silt\n".repeat(count);
        shown(&faults(&text(|text| text.edit("ground:\n", &format!("ground:\n{more}")))))
    };
    let beside = "ground: more than 300 of stretches times pipes, 153 times 2";
    assert!(told(150).iter().any(|fault| fault.starts_with(beside)), "{:?}", told(150));
    for (a, b) in choose(&many).unwrap().ranked.iter().zip(&choose(&whole).unwrap().ranked) {
        assert_eq!(a.standing, b.standing);
        if let (Some(a), Some(b)) = (a.scheme.force, b.scheme.force) {
            approx::assert_relative_eq!(a.high.value, b.high.value, max_relative = 1e-9);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_text_makes_the_door_panic(text in "\\PC{0,200}") {
        let _ = read_drive(&text, &Handbook::embedded());
    }

    #[test]
    fn no_bytes_make_the_door_panic(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        if let Ok(text) = text_of(&bytes) {
            let _ = read_drive(text, &Handbook::embedded());
        }
    }

    /// A right file with one piece cut out, doubled or replaced.
    #[test]
    fn no_edit_of_a_right_file_makes_the_door_panic(
        at in 0..600_usize, cut in 0..20_usize, put in "[ -~\\n]{0,12}",
    ) {
        let base = text(|text| text);
        let at = at.min(base.len());
        let end = (at + cut).min(base.len());
        // The file is ASCII, so every index is a boundary.
        let edited = format!("{}{put}{}", &base[..at], &base[end..]);
        if let Ok(drive) = read_drive(&edited, &Handbook::embedded()) {
            let _ = choose(&drive);
        }
    }

    /// Written out in base units and read back, a drive gives the same assessment, bit by bit.
    #[test]
    fn a_drive_written_and_read_back_is_the_same(
        length in 20.0..120.0_f64, depth in 2.0..9.0_f64, hours in 0.5..20.0_f64, celsius in -10.0..39.0_f64,
        n in 5.0..29.0_f64, thrust in 100.0..3000.0_f64, water in prop::option::of(0.5..12.0_f64),
    ) {
        let text = text(|text| {
            text.edit("length: 60 m", &format!("length: {length} m"))
                .edit("to: 25 m", &format!("to: {} m", length / 3.0))
                .edit("to: 40 m", &format!("to: {} m", length / 2.0))
                .edit("to: 60 m", &format!("to: {length} m"))
                .edit("4.20 m", &format!("{depth} m"))
                .edit("3.96 m", &format!("{} ft", depth / 0.3048 - 0.5))
                .edit("duration: 6 h", &format!("duration: {hours} h"))
                .edit("25 degC", &format!("{celsius} degC"))
                .edit("spt_n: 12", &format!("spt_n: {n}"))
                .edit("900 kN", &format!("{thrust} kN"))
                .edit("groundwater: 5.5 m", &water.map_or("groundwater: none".to_owned(), |d| format!("groundwater: {d} m")))
        });
        let file = DriveFile::read(&text).unwrap();
        let written = file.to_yaml().unwrap();
        let again = DriveFile::read(&written).unwrap();
        let handbook = Handbook::embedded();
        let one = choose(&file.resolve(&handbook).unwrap()).unwrap();
        let other = choose(&again.resolve(&handbook).unwrap()).unwrap();
        prop_assert_eq!(format!("{:?}", one.ranked), format!("{:?}", other.ranked));
        prop_assert_eq!(again.to_yaml().unwrap(), written);
    }
}

/// A drive made in code that no file can hold is refused when it is written, not when it is read.
#[test]
fn what_cannot_be_read_back_is_not_written() {
    let file = || DriveFile::read(&text(|text| text)).unwrap();
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let mut faulty = file();
        faulty.length = Length::from_si(bad).into();
        let fault = faulty.to_yaml().unwrap_err();
        assert_eq!((fault.path.as_str(), fault.place), ("length", None), "{fault}");
        let mut faulty = file();
        faulty.candidates[1].sdr = Some(Ratio::from_si(bad).into());
        assert_eq!(faulty.to_yaml().unwrap_err().path, "candidates[1].sdr");
        let mut faulty = file();
        faulty.groundwater = WaterTable::At(Length::from_si(bad)).into();
        assert_eq!(faulty.to_yaml().unwrap_err().path, "groundwater");
    }
    let mut cold = file();
    cold.pull.as_mut().unwrap().pipe_temperature = Some(ThermodynamicTemperature::from_si(f64::NAN).into());
    assert_eq!(cold.to_yaml().unwrap_err().path, "pull.pipe_temperature");
    let named = |name: &str| DriveFile { name: Some(Words(name.to_owned()).into()), ..file() };
    for name in ["", "  ", "\u{1b}[2J", "\u{0}"] {
        assert_eq!(named(name).to_yaml().unwrap_err().path, "name", "{name:?}");
    }
    let words =
        ["~", "null", "true", "60", "1e3", "- a", "a: b", "# a", "&a *b", "'", "\"", "Müller \u{1f6a7}", " a ", "a\nb"];
    for name in words {
        let written = named(name).to_yaml().unwrap();
        assert_eq!(DriveFile::read(&written).unwrap().name.unwrap().value.0, name);
    }
}

/// A list for a value, a value for a block: said in the words of the file, not of the parser.
#[test]
fn wrong_shapes_are_named_plainly() {
    for (from, to, expected) in [
        ("length: 60 m", "length: [60 m]", "length: expected one value, got a list (write for example `key: 60 m`)"),
        ("length: 60 m", "length: { m: 60 }", "length: expected one value, got a block of keys"),
        ("length: 60 m", "length: !secret 60 m", "length: expected one value, got a tag"),
        (
            "rig: { thrust: 900 kN, pull: 500 kN }",
            "rig: 900 kN",
            "rig: expected a block of keys, got string \"900 kN\"",
        ),
        (
            "lubrication: metered",
            "lubrication: metered\ncandidates: 3",
            "candidates: expected a list, got integer \"3\"",
        ),
    ] {
        let text = text(|text| text.edit(from, to));
        let found = shown(&faults(&text));
        assert!(found.iter().any(|fault| fault.starts_with(expected)), "{expected}: {found:?}");
    }
}

/// A user's table that nothing can be computed with is refused, not computed with.
#[test]
fn unfit_values_of_an_overlay_are_refused() {
    let base = text(|text| text);
    let with = |overlay: &str| {
        let handbook = std::sync::Arc::new(Handbook::embedded().with_overlay("mine", overlay).unwrap());
        read_drive(&base, &handbook).and_then(|drive| choose(&drive).map_err(InputError::from))
    };
    let weights = |value: &str| -> String {
        let rows: String = ["load_margin", "ground", "grade", "size"]
            .map(|key| format!("  - {{ key: {key}, value: \"{value}\" }}\n"))
            .concat();
        format!("id: score_weight\ntitle: mine\nrows:\n{rows}")
    };
    let band = "id: friction_band\ntitle: mine\nrows:\n  - key: firm_to_very_stiff_clay_metered\n    value: { ground: \
                firm_to_very_stiff_clay, water: any, lubrication: metered, low: 3 kPa, likely: 30 kPa, high: 6 kPa }\n";
    for (overlay, part) in [
        (weights("0"), "sum to nothing"),
        (weights("-1"), "below zero"),
        (band.to_owned(), "do not rise"),
        ("id: practice_ratio\ntitle: mine\nrows:\n  - { key: score.grade_zero, value: 0 }\n".to_owned(), "above zero"),
    ] {
        let error = with(&overlay).unwrap_err().to_string();
        assert!(error.contains(part), "{part}: {error}");
    }
    // A factor of zero makes no limit: the check is not decided.
    let factor = "id: practice_ratio\ntitle: mine\nrows:\n  - { key: clay.factor, value: 0 }\n";
    let choice = with(factor).unwrap();
    let jacked = choice.ranked.iter().find(|ranked| ranked.candidate == 0 && !ranked.scheme.is_excluded()).unwrap();
    assert!(!jacked.standing.can_be_chosen());
}

/// What cannot be built is refused, with its place.
#[test]
fn impossible_geometry_is_refused() {
    for (from, to, expected) in [
        (
            "size: 10 in",
            "size: 10 in, outside_diameter: 150 mm",
            "candidates[0].end_bearing_area: the end bearing area",
        ),
        (STEM, "stem: { outside_diameter: 350 mm }", "candidates[0].size: clay 10 in is no larger than the stem"),
        ("sdr: 11", "sdr: 11, bore: 4 m", "candidates[1].size: PE100 315 mm SDR 11"),
        ("size: 10 in", "size: 10 in, casing: 4.1 m", "candidates[0].size: clay 10 in"),
        (STEM, "stem: { outside_diameter: none }", "candidates[1].material: a pipe that is pulled needs the stem"),
        ("4.20 m", "50 m", "reception.invert_depth: gives a slope of 77 %"),
        ("to: 60 m", "to: 60.004 m", ""),
        ("duration: 6 h", "duration: 6 h, fluid_stands_for: 1 h", "pull.fluid_stands_for: is shorter than the pull"),
    ] {
        let text = text(|text| text.edit(from, to));
        let found = shown(&faults(&text));
        if expected.is_empty() {
            assert!(found.is_empty(), "{to}: {found:?}");
        } else {
            assert!(found.iter().any(|fault| fault.starts_with(expected)), "{expected}: {found:?}");
        }
    }
    let beyond = "  - { to: 60 m, class: medium_to_dense_sand, spt_n: 20, largest_stone: 20 mm }\n";
    let more = format!("{beyond}  - {{ class: hard_clay, spt_n: 60, largest_stone: 900 mm }}\n");
    let found = shown(&faults(&text(|text| text.edit(beyond, &more))));
    assert!(found[0].starts_with("ground[3].class: begins where the drive ends"), "{found:?}");
    // A pipe that is not in the table has no weight of its own: missing only where it counts.
    let own = "size: 10 in, outside_diameter: 400 mm, end_bearing_area: 0.03 m2";
    let uphill = shown(&faults(&text(|text| text.edit("size: 10 in", own))));
    assert!(uphill[0].starts_with("candidates[0].weight: is pushed uphill"), "{uphill:?}");
}

/// Contradictions are capped like faulty values, since each place costs one more reading.
#[test]
fn contradictions_are_capped() {
    let stretches: String =
        (1..=100).map(|n| format!("  - {{ to: {} m, class: soft_clay, spt_n: 29 }}\n", n as f64 * 0.6)).collect();
    let (before, after) = {
        let base = text(|text| text);
        let (before, rest) = base.split_once("ground:\n").unwrap();
        let (_, after) = rest.split_once("rig:").unwrap();
        (before.to_owned(), after.to_owned())
    };
    assert_eq!(faults(&format!("{before}ground:\n{stretches}rig:{after}")).len(), MOST_FAULTS);
}

/// What YAML writes as an escape would reach the terminal: refused in every text, with its place.
#[test]
fn escaped_control_characters_are_refused() {
    for escape in ["\\e[2J", "\\x07", "\\0", "\\x01", "\\x9b", "\\x7f", "\\r", "\\N", "\\b"] {
        let named = text(|text| format!("name: \"Mill {escape} Lane\"\n{text}"));
        let found = shown(&faults(&named));
        assert_eq!(found.len(), 1, "{escape}: {found:?}");
        assert!(found[0].starts_with("name: expected a text without control characters, got \"Mill "), "{found:?}");
        assert!(found[0].ends_with("at line 1 column 7"), "{found:?}");
        let key = text(|text| format!("\"na{escape}me\": Mill Lane\n{text}"));
        let word = text(|text| text.edit("class: silt", &format!("class: \"si{escape}lt\"")));
        for text in [key, word] {
            let found = shown(&faults(&text));
            assert!(!found.is_empty() && !found.iter().any(|fault| fault.contains(char::is_control)), "{found:?}");
        }
    }
    // Tabs and line ends are no more than space.
    assert!(faults(&text(|text| format!("name: \"Mill\\tLane\\n\"\n{text}"))).is_empty());
    assert!(faults(&text(|text| format!("name: |\n  Mill\n  Lane\n{text}"))).is_empty());
}

/// Layers, stops, passes, faces and stems that cannot be are refused, each at its own place.
#[test]
fn new_fields_are_checked() {
    const TORQUE: &str = "{ low: 1 kN*m, likely: 2 kN*m, high: 3 kN*m }";
    let soil = |soil: &str| {
        text(|text| text)
            .edit("spt_n: 12, largest_stone: 20 mm", &format!("spt_n: 12, largest_stone: 20 mm, soil: {{ {soil} }}"))
    };
    let stem = |stem: &str| text(|text| text).edit(STEM, &format!("stem: {{ {stem} }}"));
    for (text, wanted) in [
        (
            soil(
                "moist: 18 kN/m3, friction_angle: 30 deg, layers: [{ thickness: 5 m, moist: 18 kN/m3, friction_angle: 30 deg }]",
            ),
            "below the crown",
        ),
        (
            soil("moist: 18 kN/m3, saturated: 20 kN/m3, buoyant: 12 kN/m3, friction_angle: 30 deg"),
            "give one of the two",
        ),
        (soil("moist: 16 kN/m3, buoyant: 17 kN/m3, friction_angle: 30 deg"), "leaves out the water"),
        (soil("moist: 18 kN/m3, friction_angle: 30 deg, undrained_modulus: 10 MPa"), "undrained_strength"),
        (stem("outside_diameter: 100 mm, wall: 60 mm"), "half of the outside diameter"),
        (stem("outside_diameter: 100 mm, head_diameter: 80 mm"), "smaller than the stem"),
        (stem("outside_diameter: 100 mm, free_length: 2 m"), "without the wall"),
        (stem("outside_diameter: none, joint_pull: 20 kN"), "there is no stem"),
        (stem(&format!("outside_diameter: none, joint_torque: 9 kN*m, torque: {TORQUE}")), "there is no stem"),
        (stem(&format!("outside_diameter: 100 mm, torque: {TORQUE}")), "what stem or rig can bear"),
        (
            text(|text| text.edit("pull: 500 kN }", &format!("pull: 500 kN, auger_torque: {TORQUE} }}"))),
            "without the torque of the rig",
        ),
        (
            text(|text| {
                let rig = format!("pull: 500 kN, torque: 9 kN*m, auger_torque: {TORQUE} }}\nspoil: vacuum");
                text.edit("pull: 500 kN }", &rig)
            }),
            "soil that leaves by auger",
        ),
        (text(|text| text).edit("rig:", "stops: [{ at: 90 m }]\nrig:"), "beyond the drive"),
        (text(|text| text).edit("rig:", "cutting_edge: 20 mm\nrig:"), "open_edge"),
        (text(|text| text).edit("sdr: 11 }", "sdr: 11, passes: [300 mm, 200 mm] }"), "rise from the pilot head"),
        (text(|text| text).edit("size: 10 in }", "size: 10 in, passes: [300 mm] }"), "for pipe that is pulled"),
        (text(|text| text).edit("size: 10 in }", "size: 10 in, casing_wall: 8 mm }"), "there is no casing"),
        (text(|text| text).edit("size: 10 in }", "size: 10 in, casing_joint_thrust: 9 kN }"), "there is no casing"),
        (
            text(|text| text).edit("size: 10 in }", "size: 10 in, casing: 406 mm, casing_free_length: 3 m }"),
            "without the wall of the casing",
        ),
        (text(|text| text).edit("class: silt", "class: silt, mixed_with: silt"), "class of the stretch itself"),
        (
            text(|text| text).edit("rig:", "grade: 0.4 %\ndepths: [{ at: 70 m, invert_depth: 5 m }]\nrig:"),
            "within the drive",
        ),
    ] {
        let error = read_drive(&text, &Handbook::embedded()).expect_err(wanted).to_string();
        assert!(error.contains(wanted), "{wanted}: {error}");
        assert!(error.contains("line"), "{error}");
    }
}
