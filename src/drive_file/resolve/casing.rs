//! The casing that goes in before a pipe.

use super::Resolver;
use crate::drive::{Casing, CasingTube};
use crate::drive_file::{CandidateFile, DriveFile};
use crate::handbook::HandbookError;
use crate::quantity::{Length, Role};
use crate::source::{Cited, FieldName};
use crate::yaml::Complaint;

impl Resolver<'_> {
    /// The casing before a pipe of this name and diameter.
    pub(super) fn casing(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        file: &DriveFile,
        label: &str,
        pipe: Length,
    ) -> Result<Option<Casing>, HandbookError> {
        let Some(field) = &candidate.casing else {
            const NONE: &str = "there is no casing";
            self.refuse(path, "casing_wall", candidate.casing_wall.as_ref(), NONE);
            self.refuse(path, "casing_yield_strength", candidate.casing_yield_strength.as_ref(), NONE);
            self.refuse(path, "casing_factor", candidate.casing_factor.as_ref(), NONE);
            self.refuse(path, "casing_free_length", candidate.casing_free_length.as_ref(), NONE);
            self.refuse(path, "casing_joint_thrust", candidate.casing_joint_thrust.as_ref(), NONE);
            return Ok(None);
        };
        let outside_diameter = self.positive(field, &format!("{path}.casing"), Role::Diameter);
        if outside_diameter < pipe {
            self.flaw(field, &format!("{path}.casing"), format!("is smaller than {label}, which it makes room for"));
        }
        let tube = match &candidate.casing_wall {
            Some(field) => {
                let wall = self.tube_wall(field, &format!("{path}.casing_wall"), outside_diameter);
                if outside_diameter - 2.0 * wall < pipe {
                    let message = format!("leaves no room for {label} in the casing");
                    self.flaw(field, &format!("{path}.casing_wall"), message);
                }
                Some(Box::new(self.casing_tube(path, candidate, file, outside_diameter, wall)?))
            }
            None => {
                self.needs_wall(path, "casing_factor", candidate.casing_factor.as_ref());
                self.needs_wall(path, "casing_yield_strength", candidate.casing_yield_strength.as_ref());
                self.needs_wall(path, "casing_free_length", candidate.casing_free_length.as_ref());
                None
            }
        };
        const RATING: &FieldName = &FieldName("candidates[].casing_joint_thrust");
        let rating = candidate.casing_joint_thrust.as_ref();
        let joint_thrust = rating.map(|field| {
            Cited::given(self.positive(field, &format!("{path}.casing_joint_thrust"), Role::Thrust), RATING)
        });
        Ok(Some(Casing { outside_diameter, tube, joint_thrust }))
    }

    fn needs_wall<T>(&mut self, path: &str, key: &str, field: Option<&crate::yaml::Field<T>>) {
        if let Some(field) = field {
            let complaint = Complaint::from("says nothing without the wall of the casing");
            self.flaw(field, &format!("{path}.{key}"), complaint.advise("add `casing_wall: 10 mm`"));
        }
    }

    fn casing_tube(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        file: &DriveFile,
        outside_diameter: Length,
        wall: Length,
    ) -> Result<CasingTube, HandbookError> {
        const FACTOR: &FieldName = &FieldName("candidates[].casing_factor");
        const YIELD: &FieldName = &FieldName("candidates[].casing_yield_strength");
        let place = format!("{path}.casing_yield_strength");
        let yield_strength = match &candidate.casing_yield_strength {
            Some(field) => Cited::given(self.positive(field, &place, Role::Strength), YIELD),
            None => {
                let least = self.steel_row("casing_least")?;
                self.assume_one(place, least, Role::Strength);
                least
            }
        };
        let mut section = self.steel_section(file, outside_diameter, wall, yield_strength)?;
        self.assume_modulus(&format!("{path}.casing"))?;
        let place = format!("{path}.casing_factor");
        match &candidate.casing_factor {
            Some(field) => section.yield_factor = self.steel_factor(field, &place, FACTOR)?,
            None => self.assume_one(place, section.yield_factor, Role::Ratio),
        }
        const FREE: &FieldName = &FieldName("candidates[].casing_free_length");
        let free = candidate.casing_free_length.as_ref();
        let free = match free {
            Some(field) => Some(self.free_length(field, &format!("{path}.casing_free_length"), FREE)?),
            None => None,
        };
        Ok(CasingTube { weight: self.steel_weight(outside_diameter, wall)?, section, free })
    }
}
