//! What pulled pipes share: outside diameter, ovality, density, and joints that hold pull.

use super::listed::Listed;
use super::sizes::{self, Known};
use super::{Resolved, Resolver};
use crate::drive::{Ends, JointPull, NotGiven, Pull};
use crate::drive_file::{CandidateFile, PullFile, Series};
use crate::laws::soil::water_density;
use crate::quantity::{Angle, Length, MassDensity, Measure, Ratio, Role};
use crate::source::Cited;
use crate::yaml::MayBe;

impl Resolver<'_> {
    /// Outside diameter given or of a size of the table.
    pub(super) fn outside_diameter(
        &mut self,
        of: &Listed<'_>,
        sizes: &[Known],
        what: [&str; 2],
        advice: impl FnOnce() -> String,
    ) -> Option<Cited<Length>> {
        let known = sizes::of_size(sizes, of.size).map(|known| known.outside_diameter());
        if known.is_none() && of.pipe.outside_diameter.is_none() {
            self.no_such_size(of, what, advice());
            return None;
        }
        match known {
            Some(known) => Some(self.own_or(of, CandidateFile::outside_diameter, known)),
            None => self.own(of, CandidateFile::outside_diameter),
        }
    }

    /// Outside diameter given or of the cast iron sizes.
    pub(super) fn cast_iron_size(&mut self, of: &Listed<'_>) -> Resolved<Option<Cited<Length>>> {
        let known = sizes::cast_iron(self.handbook)?;
        let advice = || format!("there are {}; or give outside_diameter", sizes::texts(&known, Series::Ips));
        Ok(self.outside_diameter(of, &known, ["no pipe of", "in the table of cast iron sizes"], advice))
    }

    /// What the restrained joint holds: its maker's pull, or the thrust of its pressure rating.
    pub(super) fn joint_pull(&mut self, of: &Listed<'_>, pull: &Pull) -> Resolved<Option<JointPull>> {
        let force = self.own(of, CandidateFile::joint_pull);
        let pressure = self.own(of, CandidateFile::joint_pressure);
        Ok(match (force, pressure) {
            (Some(force), None) => {
                let why = "the maker's pull is for the deflection it states";
                self.fault(of, CandidateFile::joint_deflection_factor, why);
                Some(JointPull::Rated(force))
            }
            (None, Some(pressure)) => {
                let message = "the thrust of the joint's pressure rating is used up by a pressure inside";
                self.wrong(PullFile::inside_pressure, message);
                let all = Ratio::from_si(1.0);
                let deflection_factor = match self.own(of, CandidateFile::joint_deflection_factor) {
                    Some(factor) => Ends::same(factor.value),
                    // A straight string: nothing is deflected.
                    None if Listed::is_joined_in_pit(pull) => Ends::same(all),
                    None => {
                        let row = self.handbook.ratio("joint.deflected")?;
                        self.assume_one(of.at("joint_deflection_factor"), row, Role::Ratio);
                        Ends { low: row.value, high: all }
                    }
                };
                Some(JointPull::Thrust { pressure: pressure.value, deflection_factor })
            }
            (Some(_), Some(_)) => {
                let message = "the maker's pull is given: the pressure rating stands in for it only where it is not";
                self.fault(of, CandidateFile::joint_pressure, message);
                None
            }
            (None, None) => {
                self.ask_the_maker(NotGiven::JointPull);
                Some(JointPull::NotGiven)
            }
        })
    }

    /// Deflection of the joint and laying length, which set the radius of the ramp.
    pub(super) fn joint_deflection(
        &mut self,
        of: &Listed<'_>,
        pull: &Pull,
        needed: bool,
    ) -> Option<(Cited<Angle>, Length)> {
        let Some(field) = &of.pipe.joint_deflection else {
            if needed && !Listed::is_joined_in_pit(pull) {
                self.ask_the_maker(NotGiven::JointDeflection);
            }
            return None;
        };
        let Some(length) = self.own(of, CandidateFile::pipe_length) else {
            let what = "the laying length of the pipe is missing";
            let advice = "add `pipe_length: 6 m`: with the deflection it sets the radius";
            self.lacks(&of.pipe.material, &of.at("pipe_length"), what, advice);
            return None;
        };
        Some((Cited::given(field.value, CandidateFile::joint_deflection.spec.name(of.path)), length.value))
    }

    /// Density of a material, from its specific gravity.
    pub(super) fn density(&self, key: &str) -> Resolved<Cited<MassDensity>> {
        Ok(self.handbook.pipe_density()?.value(key)?.map(|gravity| water_density() * gravity))
    }

    /// Ovality as delivered, 0 where it is not given.
    pub(super) fn ovality(&mut self, of: &Listed<'_>) -> Ratio {
        let ovality = of.pipe.ovality.given();
        if ovality.is_some_and(|ovality| !(0.0..=0.12).contains(&ovality.si())) {
            let complaint = ("expected an ovality from 0 % to 12 %", "write for example \"4 %\"");
            self.fault(of, CandidateFile::ovality, complaint);
        }
        ovality.unwrap_or_default()
    }
}
