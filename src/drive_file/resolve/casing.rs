//! The casing that goes in before a pipe.

use super::Resolver;
use super::applies::{CASING_PARTS, keys};
use super::listed::{Listed, Resolved};
use crate::drive::{Casing, CasingTube};
use crate::drive_file::CandidateFile;
use crate::quantity::Length;
use crate::yaml::Complaint;

impl Resolver<'_> {
    /// The casing before a pipe of this name and diameter.
    pub(super) fn casing(&mut self, of: &Listed<'_>, label: &str, pipe: Length) -> Resolved<Option<Casing>> {
        let Some(outside_diameter) = self.own(of, CandidateFile::casing) else {
            self.refuse_all(of, CASING_PARTS, &Complaint::from("there is no casing"));
            return Ok(None);
        };
        let outside_diameter = outside_diameter.value;
        if outside_diameter < pipe {
            let message = format!("is smaller than {label}, which it makes room for");
            self.fault(of, CandidateFile::casing, message);
        }
        let tube = match &of.pipe.casing_wall {
            Some(field) => {
                let wall = self.tube_wall(field, &of.at("casing_wall"), outside_diameter);
                if outside_diameter - 2.0 * wall < pipe {
                    let message = format!("leaves no room for {label} in the casing");
                    self.fault(of, CandidateFile::casing_wall, message);
                }
                Some(Box::new(self.casing_tube(of, outside_diameter, wall)?))
            }
            None => {
                let complaint = Complaint::from("says nothing without the wall of the casing");
                let complaint = complaint.advise("add `casing_wall: 10 mm`");
                self.refuse_all(of, keys![casing_factor, casing_yield_strength, casing_free_length], &complaint);
                None
            }
        };
        let joint_thrust = self.own(of, CandidateFile::casing_joint_thrust);
        Ok(Some(Casing { outside_diameter, tube, joint_thrust }))
    }

    fn casing_tube(&mut self, of: &Listed<'_>, outside_diameter: Length, wall: Length) -> Resolved<CasingTube> {
        let least = self.steel_row("casing_least")?;
        let yield_strength = self.own_or(of, CandidateFile::casing_yield_strength, least);
        let mut section = self.steel_section(of.file, outside_diameter, wall, yield_strength)?;
        self.assume_modulus(&of.at("casing"))?;
        section.yield_factor = self.steel_factor(of, CandidateFile::casing_factor, section.yield_factor)?;
        let free = self.free_length(of, CandidateFile::casing_free_length)?;
        Ok(CasingTube { weight: self.steel_weight(outside_diameter, wall)?, section, free })
    }
}
