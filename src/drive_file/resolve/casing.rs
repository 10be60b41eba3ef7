//! The casing that goes in before a pipe.

use super::applies::{CASING_PARTS, keys};
use super::jacked::SAME_PIPE;
use super::listed::Listed;
use super::{Resolved, Resolver};
use crate::drive::{Casing, CasingTube, SteelEnd};
use crate::drive_file::CandidateFile;
use crate::drive_file::limits::mm;
use crate::handbook::SteelCasingWallRow;
use crate::quantity::{Length, Measure, Role};
use crate::source::Cited;
use crate::yaml::Complaint;

/// In m, that a casing as wide as the pipe may be less by rounding.
const ROUNDING: f64 = mm(1.0);

impl Resolver<'_> {
    /// The casing before a pipe of this name and diameter.
    pub(super) fn casing(&mut self, of: &Listed<'_>, label: &str, pipe: Length) -> Resolved<Option<Casing>> {
        let Some(outside_diameter) = self.own(of, CandidateFile::casing) else {
            self.refuse_all(of, CASING_PARTS, &Complaint::from("there is no casing"));
            return Ok(None);
        };
        let outside_diameter = outside_diameter.value;
        if outside_diameter + Length::from_si(ROUNDING) < pipe {
            let message = format!("is smaller than {label}, which it makes room for");
            self.fault(of, CandidateFile::casing, message);
        }
        let tube = match &of.pipe.casing_wall {
            Some(field) => {
                // The pipe follows the casing and need not go into it.
                let wall = self.tube_wall(field, &of.at("casing_wall"), outside_diameter);
                Some(Box::new(self.casing_tube(of, outside_diameter, wall)?))
            }
            None => {
                let complaint = Complaint::from("says nothing without the wall of the casing");
                let complaint = complaint.advise("add `casing_wall: 10 mm`");
                self.refuse_all(of, keys![casing_factor, casing_yield_strength, casing_free_length], &complaint);
                self.usual_casing(of, outside_diameter)?.map(Box::new)
            }
        };
        let joint_thrust = self.own(of, CandidateFile::casing_joint_thrust);
        Ok(Some(Casing { outside_diameter, tube, joint_thrust }))
    }

    fn casing_tube(&mut self, of: &Listed<'_>, outside_diameter: Length, wall: Length) -> Resolved<CasingTube> {
        let (least, usual) = (self.steel_row("a139_a")?, self.steel_row("casing_least")?);
        let yield_strength = self.own_or(of, CandidateFile::casing_yield_strength, least);
        let mut section = self.steel_section(outside_diameter, wall, yield_strength)?;
        self.assume_modulus(&of.at("casing"))?;
        section.yield_factor = self.steel_factor(of, CandidateFile::casing_factor, section.yield_factor)?;
        let best = match &of.pipe.casing_yield_strength {
            Some(_) => None,
            None => {
                let best = self.steel_section(outside_diameter, wall, usual)?;
                Some(SteelEnd { yield_factor: section.yield_factor, ..best })
            }
        };
        let free = self.free_length(of, CandidateFile::casing_free_length)?;
        Ok(CasingTube { weight: self.steel_weight(outside_diameter, wall)?, section, best, free })
    }

    /// A casing whose wall is not told: the least that a table has for its size, at best twice that, and as heavy.
    fn usual_casing(&mut self, of: &Listed<'_>, outside_diameter: Length) -> Resolved<Option<CasingTube>> {
        let Some(wall) = self.casing_row(outside_diameter)?.map(|row| row.map(|row| row.coated.value)) else {
            return Ok(None);
        };
        let (least, usual) = (self.steel_row("a139_a")?, self.steel_row("casing_least")?);
        self.assume_one(of.at("casing_wall"), wall, Role::Wall);
        self.assume_one(of.at("casing_yield_strength"), least, Role::Strength);
        let thick = 2.0 * wall.value;
        Ok(Some(CasingTube {
            weight: self.steel_weight(outside_diameter, thick)?,
            section: self.steel_section(outside_diameter, wall.value, least)?,
            best: Some(self.steel_section(outside_diameter, thick, usual)?),
            free: self.free_length(of, CandidateFile::casing_free_length)?,
        }))
    }

    /// The row of the least wall under a railway, of the size or the next larger.
    pub(super) fn casing_row(&self, outside_diameter: Length) -> Resolved<Option<Cited<&SteelCasingWallRow>>> {
        let rows = self.handbook.steel_casing_wall()?.iter().map(|row| row.map(|row| &row.value));
        let fits = rows.filter(|row| row.value.size.value * (1.0 + SAME_PIPE) >= outside_diameter);
        Ok(fits.min_by(|a, b| a.value.size.value.si().total_cmp(&b.value.size.value.si())))
    }
}
