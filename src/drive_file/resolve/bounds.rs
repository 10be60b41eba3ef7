//! Every number of the file within what it may be at all, and what lies beyond the usual.

use super::Resolver;
use crate::drive::{Concern, Unusual};
use crate::drive_file::DriveFile;
use crate::drive_file::examples::example;
use crate::drive_file::fields::{Bounds, FileNumber, Value, within};
use crate::drive_file::limits::STEEPEST_BARE;
use crate::quantity::shown::plain;
use crate::quantity::{Role, Shown, unit};
use crate::yaml::Complaint;

/// A round number of one family of units may be so much beyond that of the other.
const ROUND: f64 = 1.02;

/// Where most slips are.
pub(super) const SLIP: &str = "check the unit and the decimal point";

impl Resolver<'_> {
    /// Holds every number of the file against the bounds of its field.
    pub(super) fn within_bounds(&mut self) {
        if let Some(spec) = DriveFile::FIELDS.first() {
            self.file.numbers(spec, &mut String::new(), &mut |told| self.held(told));
        }
    }

    /// Holds one number against the bounds of its field.
    fn held(&mut self, told: &FileNumber<'_>) {
        let shown = Shown { si: told.si, role: told.number.role };
        if !told.number.bounds.hold(told.si) {
            let complaint = self.out_of_bounds(told);
            self.senseless(told.at, told.path, complaint);
        } else if told.is_bare && told.number.role == Role::Slope && told.si.abs() > STEEPEST_BARE {
            let (bare, percent) = (plain(told.si), plain(told.si * 100.0));
            let why = format!("expected a slope with its %, got {bare}, which is {percent} %");
            let advice = format!("write \"{bare} %\", or \"{percent} %\" if that is meant");
            self.senseless(told.at, told.path, (why, advice).into());
        } else if let Some((least, most)) = told.number.usual.filter(|_| told.is_judged) {
            self.beyond_usual(told.path, shown, (least, most));
        }
    }

    /// Tells of a value that is beyond what is usual.
    pub(super) fn beyond_usual(&mut self, path: &str, value: Shown, (least, most): (f64, f64)) {
        // Round numbers of either family of units are within: 6 in for 150 mm, 20 ft for 6 m.
        let (from, to) = (least.min(least / ROUND), most * ROUND);
        if !within(value.si, from, to) {
            let usual = [least, most].map(|si| Shown { si, role: value.role });
            let concern = concern(path);
            self.unusual.push(Unusual { concern, field: path.to_owned(), value, usual });
        }
    }

    fn out_of_bounds(&self, told: &FileNumber<'_>) -> Complaint {
        let role = told.number.role;
        let shown = |si| Shown { si, role }.display(told.written_in.unwrap_or_default());
        let (what, _) = unit::describe(role.dim());
        let example = || {
            let example = example(told.path, role.dim(), told.written_in.unwrap_or(self.system));
            format!("write for example \"{example}\"")
        };
        let slip = || SLIP.to_owned();
        let (expected, advice) = match told.number.bounds {
            _ if !told.si.is_finite() => ("that is finite".to_owned(), example()),
            Bounds::UpTo(most) if told.si > most => (format!("of at most {}", shown(most)), slip()),
            Bounds::Within(least, _) if least > 0.0 && told.si <= 0.0 => ("above zero".to_owned(), example()),
            Bounds::Within(least, _) if least == 0.0 && told.si < 0.0 => ("of zero or more".to_owned(), example()),
            Bounds::Within(least, most) => (format!("from {} to {}", shown(least), shown(most)), slip()),
            Bounds::UpTo(_) => ("above zero".to_owned(), example()),
        };
        (format!("expected {what} {expected}, got {}", shown(told.si)), advice).into()
    }
}

/// What a value of the file concerns, by its block.
fn concern(path: &str) -> Concern {
    let block = path.split(['.', '[']).next().unwrap_or_default();
    match block {
        "stem" => Concern::Stem,
        "ground" => Concern::Ground,
        "tolerance" | "half_wave" | "design_flow" => Concern::Grade,
        "face" | "cutting_edge" | "steering" | "plug" => Concern::Jacking,
        "pull" | "annulus" | "vacuum" => Concern::Pull,
        "candidates" => {
            let index = path.split(['[', ']']).nth(1).and_then(|index| index.parse().ok());
            index.map_or(Concern::Drive, Concern::Pipe)
        }
        _ => Concern::Drive,
    }
}
