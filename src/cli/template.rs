//! `jackpull template`: a commented drive file to start from.

use super::output::{Outcome, print};
use super::units::Units;
use clap::{Args, ValueEnum};

/// Print a commented drive file to start from.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  jackpull template > sewer.yaml                 a file to fill in
  jackpull template --service casing --units us  that of a casing, in US units
  jackpull template --csv > drives.csv           the header of a table for assess --each")]
pub(super) struct Template {
    /// What the pipe will carry.
    #[arg(long, value_enum, default_value_t = Service::GravitySewer)]
    service: Service,
    /// Units of the file.
    #[arg(long, value_enum, default_value_t = Units::Si)]
    units: Units,
    /// Print the header of a table for `assess --each` instead: add the columns that differ, leave out those that do not.
    #[arg(long)]
    csv: bool,
}

/// Columns of a table of drives, with the unit of their numbers in either family.
const COLUMNS: [[&str; 2]; 9] = [
    ["name", "name"],
    ["length [m]", "length [ft]"],
    ["launch.invert_depth [m]", "launch.invert_depth [ft]"],
    ["reception.invert_depth [m]", "reception.invert_depth [ft]"],
    ["groundwater [m]", "groundwater [ft]"],
    ["ground[0].class", "ground[0].class"],
    ["ground[0].spt_n", "ground[0].spt_n"],
    ["ground[0].largest_stone [mm]", "ground[0].largest_stone [in]"],
    ["candidates[0].size", "candidates[0].size"],
];

/// What the pipe will carry, as in the drive file.
#[derive(Debug, Clone, Copy, ValueEnum)]
#[value(rename_all = "snake_case")]
enum Service {
    GravitySewer,
    PressureMain,
    Casing,
}

/// In angle brackets stand names, and quantities in SI and in US units.
const TEXT: &str = include_str!("template.yaml");

impl Template {
    pub(super) fn run(&self) -> Outcome {
        print(&if self.csv { self.header() } else { self.text() }, Outcome::Chosen)
    }

    fn header(&self) -> String {
        // No name of a field has a comma or a quote in it.
        format!("{}\n", COLUMNS.map(|names| self.units.of(names)).join(","))
    }

    fn text(&self) -> String {
        let (service, name) = match self.service {
            Service::GravitySewer => ("gravity_sewer", "Sewer from manhole A to manhole B"),
            Service::PressureMain => ("pressure_main", "Water main under the road"),
            Service::Casing => ("casing", "Casing under the road"),
        };
        // A main keeps its shape by a thicker wall than what is not under pressure.
        let sdr = if matches!(self.service, Service::PressureMain) { "9" } else { "11" };
        let (pe, packer, wall) = self.units.of([
            ("material: pe100, size: 315 mm", "12 mm", "10 mm"),
            ("material: pe4710, size: 12 in", "0.5 in", "0.375 in"),
        ]);
        let pe = format!("  - {{ {pe}, sdr: {sdr} }}");
        // Clay carries no pressure; a file that offers it for a main would only show that. A casing is of steel.
        let candidates = match self.service {
            Service::PressureMain => pe,
            Service::Casing => format!("  - {{ material: steel, size: 16 in, wall: {wall}, steel_grade: a139_b }}"),
            Service::GravitySewer => {
                format!("  - {{ material: clay, size: 10 in, packer: {{ thickness: {packer} }} }}\n{pe}")
            }
        };
        let mut parts = TEXT.split(['<', '>']);
        let mut text = parts.next().unwrap_or_default().to_owned();
        while let (Some(word), Some(rest)) = (parts.next(), parts.next()) {
            text.push_str(match (word, word.split_once('|')) {
                ("service", _) => service,
                ("name", _) => name,
                ("candidates", _) => &candidates,
                (_, Some((si, us))) => self.units.of([si, us]),
                (_, None) => word,
            });
            text.push_str(rest);
        }
        text
    }
}
