//! Drive files that the tests of this folder share.

use jackpull::conditions::Plan;
use jackpull::drive::Pipe;
use jackpull::{Drive, Handbook, Method, read_drive};

/// The stem of the shared drive: as thick as its head.
pub(crate) const STEM: &str = "stem: { outside_diameter: 100 mm, head_diameter: 100 mm }";

/// A gravity sewer that is worked round the clock, with a clay and a PE candidate; `change` edits the text.
pub(crate) fn text(change: impl FnOnce(String) -> String) -> String {
    change(
        "\
service: gravity_sewer
length: 60 m
launch: { invert_depth: 4.20 m }
reception: { invert_depth: 3.96 m }
groundwater: 5.5 m
lubrication: metered
ground:
  - { to: 25 m, class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 20 mm }
  - { to: 40 m, class: silt, spt_n: 14, largest_stone: 0 mm }
  - { to: 60 m, class: medium_to_dense_sand, spt_n: 20, largest_stone: 20 mm }
rig: { thrust: 900 kN, pull: 500 kN }
pull: { duration: 6 h, pipe_temperature: 25 degC }
work: { round_the_clock: true }
stem: { outside_diameter: 100 mm, head_diameter: 100 mm }
candidates:
  - { material: clay, size: 10 in }
  - { material: pe100, size: 315 mm, sdr: 11 }
"
        .to_owned(),
    )
}

/// The clay pipe of [`sewer`].
pub(crate) const TOLD_CLAY: &str =
    "  - { material: clay, size: 10 in, certificate: en_295_7, pipe_length: 1 m, packer: { thickness: 12 mm } }\n";

/// A short gravity sewer of which all is told that its checks need: its clay pipe fits.
pub(crate) fn sewer(change: impl FnOnce(String) -> String) -> String {
    change(format!(
        "\
service: gravity_sewer
length: 60 m
launch:
  invert_depth: 4.20 m
  wall: {{ width: 2.6 m, height: 2.6 m, movement: checked }}
  soil: {{ moist: 19 kN/m3, saturated: 20 kN/m3, friction_angle: 25 deg }}
reception: {{ invert_depth: 3.60 m }}
groundwater: 5.5 m
lubrication: metered
ground:
  - {{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 20 mm }}
rig: {{ thrust: 900 kN, pull: 500 kN }}
stem: {{ outside_diameter: 100 mm, head_diameter: 120 mm, wall: 12 mm, free_length: 1 m, joint_thrust: 600 kN }}
steering: {{ joint_angle: 0.1 deg }}
work: {{ round_the_clock: true }}
tolerance: 30 mm
surface: {{ over: road }}
crossings: []
pull: {{ duration: 6 h, pipe_temperature: 25 degC }}
candidates:
{TOLD_CLAY}"
    ))
}

/// The PE pipe of [`main`].
pub(crate) const MAIN_PE: &str = "  - { material: pe100, size: 180 mm, sdr: 11 }\n";

/// A water main through a field, drilled and pulled: its PE pipe fits with care.
pub(crate) fn main(change: impl FnOnce(String) -> String) -> String {
    change(format!(
        "\
service: pressure_main
length: 90 m
launch: {{ invert_depth: 2 m }}
grade: 0.5 %
groundwater: none
lubrication: none
surface: {{ over: open }}
crossings: []
ground:
  - {{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 20 mm }}
rig: {{ thrust: 300 kN, pull: 250 kN }}
pilot: drilled
pull: {{ duration: 5 h, fluid_level: 1.2 m, pipe_temperature: 20 degC }}
candidates:
{MAIN_PE}"
    ))
}

/// The drive of a text that is right.
pub(crate) fn drive(text: &str) -> Drive {
    match read_drive(text, &Handbook::embedded()) {
        Ok(drive) => drive,
        Err(error) => panic!("{error}\n{text}"),
    }
}

/// A pipe, and how it is put in.
pub(crate) fn put_in<'a>(drive: &'a Drive, pipe: &'a Pipe, method: Method) -> Plan<'a> {
    Plan { drive, pipe, method }
}
