//! What is left to the contractor and to owners where a file is short: on condition and by number, never a plain fit.

use crate::drives::drive;
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Care, Check, Subject, Verdict};
use jackpull::choice::asks;
use jackpull::handbook::Method;
use jackpull::{assess, choose, read_drive};

const CONDITION: (Verdict, Option<Care>) = (Verdict::WithCare, Some(Care::Condition));

fn check(text: &str, method: Method, subject: Subject) -> Check {
    let drive = drive(text);
    *assess(&drive, &drive.candidates()[0], method).checks.get(subject).unwrap()
}

fn came_out(check: &Check) -> (Verdict, Option<Care>) {
    (check.verdict, check.care)
}

fn says(check: &Check, words: &str) -> bool {
    check.note.is_some_and(|note| note.contains(words))
}

/// A storm sewer behind a slurry machine.
const STORM: &str = "service: gravity_sewer
length: 130 m
launch: { invert_depth: 12 m }
grade: 0.4 %
groundwater: 2 m
lubrication: metered
ground: [{ class: hard_clay, spt_n: 32, largest_stone: 50 mm }]
spoil: slurry
surface: { over: road, allowed_settlement: 25 mm }
crossings: []
rig: { thrust: 6000 kN }
candidates: [{ material: concrete, size: 1000 mm, outside_diameter: 1280 mm, inside_diameter: 1000 mm, strength: 40 MPa }]
";

/// Of the end of concrete nothing is told: it is ordered of its maker for no more than makers print, 0.8 of 0.3 of the strength on
/// nine tenths of the section, and the jacks are held to it. A line that turns its joints further than is usual gets no more than
/// they bear there.
#[test]
fn concrete_is_ordered_for_what_makers_print() {
    let end = |text: &str| check(text, Method::PipeJacking, Subject::EndCapacity);
    let section = std::f64::consts::FRAC_PI_4 * (1.28 * 1.28 - 1.0);
    let held = end(STORM);
    assert_eq!(came_out(&held), CONDITION);
    assert_relative_eq!(held.high().unwrap().1.si, 0.8 * 0.3 * 40e6 * 0.9 * section, max_relative = 1e-6);
    let turned = end(&STORM.edit("spoil: slurry", "spoil: slurry\nsteering: { joint_angle: 0.4 deg }"));
    assert_eq!(turned.verdict, Verdict::NotDecided);
    assert!(turned.high().unwrap().1.si < 0.5 * held.high().unwrap().1.si, "{turned:?}");
}

/// Clay of 18 ft over a pipe that an open shield drives: as weak and soft as 16 blows may be it presses 61 kPa past half of the play,
/// more than the 50 that lubricant is pumped with; in the middle of both it does not close so far.
#[test]
fn clay_that_likely_stays_off_is_watched() {
    let text = "service: gravity_sewer
length: 250 ft
launch: { invert_depth: 18 ft }
grade: 0.2 %
groundwater: 30 ft
lubrication: metered
ground: [{ class: firm_to_very_stiff_clay, spt_n: 16, largest_stone: 2 in }]
rig: { thrust: 400 tonf_us }
stem: { outside_diameter: none }
spoil: open_edge
surface: { over: road }
crossings: []
candidates: [{ material: concrete, size: 36 in, outside_diameter: 44 in, inside_diameter: 36 in, strength: 6000 psi }]
";
    let closes = |blows: &str| {
        check(&text.edit("spt_n: 16", &format!("spt_n: {blows}")), Method::PipeJacking, Subject::ClayCloses)
    };
    let watched = closes("16");
    assert_eq!(came_out(&watched), CONDITION);
    assert!(says(&watched, "log the force"), "{watched:?}");
    assert!(!says(&closes("30"), "log the force"));
}

/// A main of 630 mm under a creek.
const CREEK: &str = "service: pressure_main
length: 120 m
launch: { invert_depth: 4.5 m }
reception: { invert_depth: 4.5 m }
groundwater: 2 m
ground: [{ class: firm_to_very_stiff_clay, spt_n: 18, largest_stone: 0 mm }]
surface: { over: stream }
depths: [{ at: 60 m, invert_depth: 3.4 m }]
crossings: []
rig: { pull: 1000 kN }
pull: { duration: 6 h, pipe_temperature: 20 degC }
candidates: [{ material: pe100, size: 630 mm, sdr: 11 }]
";

/// What no usual plate bears is anchored, up to twice as much; more waits for what the rig leans on.
#[test]
fn a_rig_is_anchored() {
    let plate = |text: &str| check(text, Method::Pullback, Subject::PullReaction);
    let (stiff, firm) = (plate(CREEK), plate(&CREEK.edit("firm_to_very_stiff_clay, spt_n: 18", "soft_clay, spt_n: 3")));
    assert_eq!(came_out(&stiff), CONDITION);
    assert!(says(&stiff, "anchor the rig"), "{stiff:?}");
    let ((asked, most), (more, usual)) = (stiff.high().unwrap(), firm.high().unwrap());
    assert!(asked.si > usual.si && asked.si <= most.si && more.si > most.si, "{stiff:?} {firm:?}");
    assert_eq!((firm.verdict, most.si), (Verdict::NotDecided, 2.0 * usual.si));
}

/// The ground under a stream is full of water, whatever the file says of it: an auger meets running sand.
#[test]
fn a_stream_is_never_dry() {
    let sewer = |over: &str, depths: &str| {
        format!(
            "service: gravity_sewer\nlength: 40 m\nlaunch: {{ invert_depth: 4 m }}\ngrade: 1 %\ngroundwater: none\n\
             lubrication: metered\nground: [{{ class: medium_to_dense_sand, spt_n: 20, largest_stone: 0 mm }}]\n\
             rig: {{ thrust: 1 MN }}\nspoil: auger\nsurface: {{ over: {over} }}\ncrossings: []\n{depths}\
             candidates: [{{ material: clay, size: 10 in, certificate: en_295_7 }}]\n"
        )
    };
    let ground = |over: &str, depths: &str| check(&sewer(over, depths), Method::PipeJacking, Subject::Ground).verdict;
    assert!(ground("open", "") <= Verdict::WithCare);
    const BED: &str = "depths: [{ at: 20 m, invert_depth: 2.6 m }]\n";
    assert_eq!([ground("stream", BED), ground("stream", "")], [Verdict::Over; 2]);
}

/// The clay over the crown of PE 630 in a bore of 800 mm weighs 125 pcf: fluid that presses with 1.3 times that comes up, and presses no
/// harder on the string.
#[test]
fn fluid_presses_no_harder_than_the_ground_bears() {
    let field = CREEK.edit("depths: [{ at: 60 m, invert_depth: 3.4 m }]\n", "").edit("over: stream", "over: open");
    let field = field.edit("groundwater: 2 m", "groundwater: none").edit_all("4.5 m", "2.5 m");
    let pressed = |text: &str| check(text, Method::Pullback, Subject::Collapse).high().unwrap().0.si;
    let field = field.edit("sdr: 11", "sdr: 11, bore: 800 mm");
    let crown = 2.5 - (0.630 + 0.800) / 2.0;
    assert_relative_eq!(pressed(&field), 1.3 * 125.0 * 157.087_46 * crown, max_relative = 1e-3);
    // Rock, and what nobody tells of, may bear more: 1,500 kg/m3 up to the ground and 10 psi.
    let rock = field.edit("class: firm_to_very_stiff_clay, spt_n: 18", "class: weak_rock");
    assert_relative_eq!(pressed(&rock), 1_500.0 * 9.806_65 * 2.5 + 68_947.57, max_relative = 1e-3);
    assert_relative_eq!(pressed(&field.edit("surface: { over: open }\n", "")), pressed(&rock), max_relative = 1e-9);
}

/// A pilot is sighted through its stem over 300 ft, and nobody reports to have read it at more than 1.8 times that.
#[test]
fn a_target_is_lost_past_its_reach() {
    let text = STORM
        .edit("spoil: slurry\n", "guidance: laser\ntolerance: 100 mm\n")
        .edit("size: 1000 mm, outside_diameter: 1280 mm, inside_diameter: 1000 mm, strength: 40 MPa", "size: 12 in")
        .edit("material: concrete", "material: clay");
    let length = |metres: u32| {
        check(&text.edit("length: 130 m", &format!("length: {metres} m")), Method::PipeJacking, Subject::Length)
    };
    assert_eq!((length(160).verdict, length(160).care), (Verdict::WithCare, Some(Care::Screen)));
    assert_eq!(length(170).verdict, Verdict::Over);
}

/// Off by half of its fall at either end a sewer has none left, whatever tolerance its owner gives; and a wave of the line is no longer
/// than the line.
#[test]
fn a_tolerance_leaves_a_fall() {
    let sewer = "service: gravity_sewer
length: 90 m
launch: { invert_depth: 3.5 m }
grade: 0.4 %
groundwater: none
tolerance: 300 mm
ground: [{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 0 mm }]
rig: { pull: 400 kN }
surface: { over: open }
crossings: []
pull: { duration: 6 h, pipe_temperature: 20 degC }
candidates: [{ material: pe100, size: 315 mm, sdr: 11 }]
";
    let invert = |grade: &str| {
        check(&sewer.edit("grade: 0.4 %", &format!("grade: {grade} %")), Method::Pullback, Subject::Invert)
    };
    assert_eq!(invert("2").verdict, Verdict::Within);
    let flat = invert("0.1");
    assert_eq!(flat.verdict, Verdict::Over);
    assert_relative_eq!(flat.high().unwrap().1.si, 0.001 * 90.0 / 2.0, max_relative = 1e-6);
    let long = sewer.edit("tolerance: 300 mm", "tolerance: 300 mm\nhalf_wave: 100 m");
    let fault = read_drive(&long, &jackpull::Handbook::embedded()).unwrap_err().to_string();
    assert!(fault.contains("half_wave: is longer than the drive"), "{fault}");
}

/// Water and ground are asked for before what is put into it, and relief pits stand on the first line.
#[test]
fn the_site_comes_first() {
    let fill = "service: gravity_sewer
length: 60 m
launch: { invert_depth: 3 m }
grade: 0.8 %
groundwater: none
lubrication: none
ground: [{ class: fill }]
rig: { thrust: 900 kN }
surface: { over: road }
crossings: []
candidates: [{ material: clay, size: 12 in }]
";
    let asked = asks(&choose(&drive(fill)).unwrap().ranked[0]);
    assert!(asked.len() > 1 && asked[0].line().starts_with("ground[]"), "{asked:?}");
    let street = "service: pressure_main
length: 100 m
launch: { invert_depth: 1.6 m }
groundwater: none
ground: [{ class: silt, spt_n: 14, largest_stone: 0 mm }]
rig: { pull: 150 kN }
surface: { over: road }
crossings: []
pull: { duration: 5 h, pipe_temperature: 20 degC }
candidates: [{ material: pe100, size: 110 mm, sdr: 11 }]
";
    let reason = choose(&drive(street)).unwrap().reason;
    assert!(reason.contains("relief pits"), "{reason}");
}

/// Of a pull nothing is told: it is taken as hot and long, passes where that passes, and asks for its data where it hangs on them.
#[test]
fn a_pull_that_hangs_on_its_data_asks_for_them() {
    let main = |length: &str, pull: &str| {
        format!(
            "service: pressure_main\nlength: {length} m\nlaunch: {{ invert_depth: 1.6 m }}\ngroundwater: none\n\
             ground: [{{ class: silt, spt_n: 14, largest_stone: 0 mm }}]\nrig: {{ pull: 150 kN }}\n\
             surface: {{ over: road }}\ncrossings: []\n{pull}candidates: [{{ material: pe100, size: 110 mm, sdr: 11 }}]\n"
        )
    };
    const TOLD: &str = "pull: { duration: 5 h, pipe_temperature: 20 degC }\n";
    let bent = |length: &str, pull: &str| check(&main(length, pull), Method::Pullback, Subject::TensionAndBending);
    assert!(bent("40", "").verdict <= Verdict::WithCare);
    let untold = bent("100", "");
    assert_eq!(untold.settled_by, [["pull.duration", "pull.pipe_temperature"]]);
    assert_eq!(untold.verdict, Verdict::NotDecided);
    assert!(bent("100", TOLD).verdict <= Verdict::WithCare);
    // What neither cool nor short lets pass asks for neither.
    assert_ne!(bent("700", "").settled_by, untold.settled_by);
}
