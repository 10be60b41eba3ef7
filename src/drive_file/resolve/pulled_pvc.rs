//! A pulled PVC pressure pipe out of size and dimension ratio: fused into a string, or with restrained joints.

use super::label::as_written;
use super::pipe::{Named, same_size, size_text};
use super::{Resolver, no_row};
use crate::drive::{BY_ITS_MAKER, Barrel, FactorPoints, JointPull, JointedPipe, NotGiven, Pull, PulledPipe, PvcPipe};
use crate::drive_file::{CandidateFile, DriveFile, Material, Series};
use crate::handbook::{Family, HandbookError};
use crate::quantity::shown::plain;
use crate::quantity::{Angle, Length, MassDensity, Measure, Ratio, Role, ThermodynamicTemperature};
use crate::source::{Cited, FieldName};
use crate::yaml::Complaint;

impl Resolver<'_> {
    pub(super) fn pulled_pvc(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        size: Length,
        file: &DriveFile,
        pull: Option<&Pull>,
    ) -> Result<Option<Named>, HandbookError> {
        self.refuse_pushed(path, candidate);
        self.refuse_jacked(path, candidate);
        self.refuse_steel(path, candidate);
        self.refuse(path, "weight", candidate.weight.as_ref(), "the weight of PVC pipe follows from its wall");
        let fused = candidate.material.value == Material::PvcFused;
        let Some(outside_diameter) = self.cast_iron_size(path, candidate, size)? else { return Ok(None) };
        let Some(wall) = self.pvc_wall(path, candidate, outside_diameter) else { return Ok(None) };
        let Some(pull) = self.how_pulled(candidate, file, pull) else { return Ok(None) };
        let Some(temperature) = self.pvc_temperature(file, pull)? else { return Ok(None) };
        let one = Cited::given(Ratio::from_si(1.0), &FieldName("candidates[].joint_factor"));
        let joint_factor = if fused { self.joint_factor(path, candidate) } else { Some(one) };
        let Some(joint_factor) = joint_factor else { return Ok(None) };
        let pipe = self.pvc_pipe(path, candidate, wall, temperature, joint_factor)?;
        let dimension_ratio = match &candidate.sdr {
            Some(sdr) => format!("DR {}", plain(sdr.value.si())),
            None => format!("wall {}", size_text(wall.value, Series::Ips)),
        };
        let kind = if fused { "fused" } else { "restrained" };
        let label = format!("PVC {kind} {} {dimension_ratio}", size_text(size, Series::Ips));
        let (family, pulled) = if fused {
            self.refuse_joint(path, candidate);
            (Family::PvcFused, PulledPipe::Pvc(Box::new(pipe)))
        } else {
            self.refuse(path, "joint_factor", candidate.joint_factor.as_ref(), "is for fused pipe");
            let Some(joint) = self.joint_pull(path, candidate, file, pull) else { return Ok(None) };
            let deflection = self.joint_deflection(path, candidate, pull, false);
            let jointed = JointedPipe { barrel: Barrel::Pvc(pipe), pull: joint, deflection, weight: None };
            (Family::PvcRestrained, PulledPipe::Jointed(Box::new(jointed)))
        };
        Ok(Some(Named { label, family, outside_diameter, jacked: None, pulled: Some(pulled) }))
    }

    fn pvc_pipe(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        wall: Cited<Length>,
        temperature: FactorPoints,
        joint_factor: Cited<Ratio>,
    ) -> Result<PvcPipe, HandbookError> {
        let (stresses, ratios) = (self.handbook.pvc_stress()?, self.handbook.pvc_ratio()?);
        let tensile = stresses.value("tensile")?;
        let safety = ratios.value("pull_safety")?;
        let modulus = stresses.value("modulus")?;
        let modulus_long = stresses.value("modulus_long")?;
        let poisson = ratios.value("poisson")?;
        let density = self.density("pvc")?;
        let fused = candidate.material.value == Material::PvcFused;
        let key = if fused { "pvc_250" } else { "pvc_300" };
        let bend_ratio = self.bend_ratio(key)?;
        self.assume_one(format!("{path}: tensile strength of PVC"), tensile, Role::Strength);
        self.assume_one(format!("{path}: safety on it"), safety, Role::Ratio);
        self.assume_one(format!("{path}: modulus of PVC"), modulus, Role::Modulus);
        self.assume_one(format!("{path}: modulus of PVC over years"), modulus_long, Role::Modulus);
        self.assume_one(format!("{path}: Poisson's ratio of PVC"), poisson, Role::Ratio);
        self.assume_one(format!("{path}: density"), density, Role::Density);
        self.assume_one(format!("{path}: smallest radius over outside diameter"), bend_ratio, Role::Ratio);
        Ok(PvcPipe {
            wall,
            density: density.value,
            tensile,
            safety: safety.value,
            temperature,
            joint_factor,
            modulus: modulus.value,
            modulus_long: modulus_long.value,
            poisson: poisson.value,
            ovality: self.declared_ovality(path, candidate),
            bend_ratio,
        })
    }

    fn pvc_wall(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        outside_diameter: Cited<Length>,
    ) -> Option<Cited<Length>> {
        match (&candidate.wall, &candidate.sdr) {
            (Some(field), None) => {
                let wall = self.tube_wall(field, &format!("{path}.wall"), outside_diameter.value);
                Some(Cited::given(wall, &FieldName("candidates[].wall")))
            }
            (None, Some(field)) => {
                if !(5.0..=50.0).contains(&field.value.si()) {
                    let message = format!("expected a dimension ratio from 5 to 50, got {}", plain(field.value.si()));
                    self.senseless(field, &format!("{path}.sdr"), message);
                }
                Some(Cited::new(outside_diameter.value / field.value, outside_diameter.origin))
            }
            (Some(_), Some(field)) => {
                self.flaw(field, &format!("{path}.sdr"), "give either the wall or the dimension ratio, not both");
                None
            }
            (None, None) => {
                let complaint =
                    Complaint::from("the wall of the PVC pipe is missing").advise("add `sdr: 18` or `wall: ...`");
                self.flaw(&candidate.size, &format!("{path}.sdr"), complaint);
                None
            }
        }
    }

    fn joint_factor(&mut self, path: &str, candidate: &CandidateFile) -> Option<Cited<Ratio>> {
        let place = format!("{path}.joint_factor");
        let Some(field) = &candidate.joint_factor else {
            if self.is_for_the_maker(NotGiven::JointFactor) {
                return Some(Cited::new(Ratio::from_si(1.0), BY_ITS_MAKER));
            }
            let complaint = Complaint::from("the strength of the fused joint over that of the pipe is missing");
            let complaint = complaint.advise("add `joint_factor: 0.9` from the maker of the pipe; there is no default");
            self.flaw(&candidate.material, &place, complaint);
            return None;
        };
        if !(field.value.si() > 0.0 && field.value.si() <= 1.0) {
            self.flaw(field, &place, "expected a factor above 0 and at most 1");
        }
        Some(Cited::given(field.value, &FieldName("candidates[].joint_factor")))
    }

    /// Rows of factors around the wall temperature. Colder than the first row counts as the first; colder than the
    /// least and warmer than the last are refused.
    fn pvc_temperature(&mut self, file: &DriveFile, pull: &Pull) -> Result<Option<FactorPoints>, HandbookError> {
        let table = self.handbook.pvc_temperature()?;
        let mut rows: Vec<(ThermodynamicTemperature, Ratio)> =
            table.rows.iter().map(|row| (row.value.at.value, row.value.factor.value)).collect();
        rows.sort_by(|a, b| a.0.si().total_cmp(&b.0.si()));
        rows.dedup_by(|later, first| later.0 == first.0);
        let (Some(first), Some(last)) = (rows.first().copied(), rows.last().copied()) else {
            return Err(no_row("pvc_temperature", "any"));
        };
        let least = self.handbook.pull_temperature()?.value("pvc_least")?.value;
        let wall = pull.temperature;
        if !(wall >= least && wall <= last.0) {
            if let Some(field) = file.pull.as_ref().map(|pull| &pull.pipe_temperature) {
                let complaint = Complaint::from("PVC pipe is pulled between 5 degC and 60 degC only");
                let complaint = complaint.advise("colder it is brittle, warmer no factor is known");
                self.flaw(field, "pull.pipe_temperature", complaint);
            }
            return Ok(None);
        }
        let at = wall.max_of(first.0);
        let below = rows.iter().rev().find(|row| row.0 <= at).copied().unwrap_or(first);
        let above = rows.iter().find(|row| row.0 >= at).copied().unwrap_or(last);
        Ok(Some(FactorPoints { at, below, above }))
    }

    /// Outside diameter given or of the cast iron sizes.
    pub(super) fn cast_iron_size(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        size: Length,
    ) -> Result<Option<Cited<Length>>, HandbookError> {
        if let Some(field) = &candidate.outside_diameter {
            let diameter = self.positive(field, &format!("{path}.outside_diameter"), Role::Diameter);
            return Ok(Some(Cited::given(diameter, &FieldName("candidates[].outside_diameter"))));
        }
        let table = self.handbook.pvc_pipe()?;
        if let Some(row) = table.find(|row| same_size(row.size.value, size)) {
            let diameter = row.map(|row| row.outside_diameter.value);
            self.assume_one(format!("{path}.outside_diameter"), diameter, Role::Diameter);
            return Ok(Some(diameter));
        }
        let sizes = table.rows.iter().map(|row| size_text(row.value.size.value, Series::Ips));
        let known = sizes.collect::<Vec<_>>().join(", ");
        let message = format!("no pipe of {} in the table of cast iron sizes", as_written(&candidate.size));
        let complaint = Complaint::from(message).advise(format!("there are {known}; or give outside_diameter"));
        self.flaw(&candidate.size, &format!("{path}.size"), complaint);
        Ok(None)
    }

    /// What the restrained joint holds: its maker's pull, or the thrust of its pressure rating.
    pub(super) fn joint_pull(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        file: &DriveFile,
        pull: &Pull,
    ) -> Option<JointPull> {
        let factor = candidate.joint_deflection_factor.as_ref();
        match (&candidate.joint_pull, &candidate.joint_pressure) {
            (Some(field), None) => {
                self.refuse(
                    path,
                    "joint_deflection_factor",
                    factor,
                    "the maker's pull is for the deflection it states",
                );
                let force = self.positive(field, &format!("{path}.joint_pull"), Role::Pull);
                Some(JointPull::Rated(Cited::given(force, &FieldName("candidates[].joint_pull"))))
            }
            (None, Some(field)) => {
                let pressure = self.positive(field, &format!("{path}.joint_pressure"), Role::Pressure);
                if let Some(inside) = file.pull.as_ref().and_then(|pull| pull.inside_pressure.as_ref()) {
                    let message = "the thrust of the joint's pressure rating is used up by a pressure inside";
                    self.flaw(inside, "pull.inside_pressure", message);
                }
                let in_pit = pull.works.laydown.is_some_and(|laydown| laydown.in_pit);
                let deflection_factor = match factor {
                    Some(field) => {
                        if !(field.value.si() > 0.0 && field.value.si() <= 1.0) {
                            let place = format!("{path}.joint_deflection_factor");
                            self.flaw(field, &place, "expected a factor above 0 and at most 1");
                        }
                        field.value
                    }
                    // A straight string: nothing is deflected.
                    None if in_pit => Ratio::from_si(1.0),
                    None => {
                        let complaint =
                            Complaint::from("what the deflection on the ramp leaves of the joint is missing");
                        let advice = "add `joint_deflection_factor` from the maker, or join the string in the pit with \
                                      `pull: { laydown: { length: 6 m, place: pit } }`";
                        let place = format!("{path}.joint_deflection_factor");
                        self.flaw(field, &place, complaint.advise(advice));
                        return None;
                    }
                };
                Some(JointPull::Thrust { pressure, deflection_factor })
            }
            (Some(_), Some(field)) => {
                let message = "the maker's pull is given: the pressure rating stands in for it only where it is not";
                self.flaw(field, &format!("{path}.joint_pressure"), message);
                None
            }
            (None, None) if self.is_for_the_maker(NotGiven::JointPull) => Some(JointPull::NotGiven),
            (None, None) => {
                let complaint = Complaint::from("what the restrained joint holds is missing");
                let advice = "add `joint_pull` from the joint's maker, or `joint_pressure`, its pressure rating";
                self.flaw(&candidate.material, &format!("{path}.joint_pull"), complaint.advise(advice));
                None
            }
        }
    }

    /// Deflection of the joint and laying length, which set the radius of the ramp.
    pub(super) fn joint_deflection(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        pull: &Pull,
        needed: bool,
    ) -> Option<(Cited<Angle>, Length)> {
        let angle = candidate.joint_deflection.as_ref().map(|field| {
            if !(field.value.si() > 0.0 && field.value.si() < 0.2) {
                let complaint = Complaint::from("expected an angle above 0 deg and below 11 deg");
                let complaint = complaint.advise("write for example \"3 deg\"");
                self.flaw(field, &format!("{path}.joint_deflection"), complaint);
            }
            Cited::given(field.value, &FieldName("candidates[].joint_deflection"))
        });
        let length = candidate
            .pipe_length
            .as_ref()
            .map(|field| self.positive(field, &format!("{path}.pipe_length"), Role::Distance));
        let in_pit = pull.works.laydown.is_some_and(|laydown| laydown.in_pit);
        match (angle, length) {
            (Some(angle), Some(length)) => Some((angle, length)),
            (Some(_), None) => {
                let complaint = Complaint::from("the laying length of the pipe is missing");
                let complaint = complaint.advise("add `pipe_length: 6 m`: with the deflection it sets the radius");
                self.flaw(&candidate.material, &format!("{path}.pipe_length"), complaint);
                None
            }
            (None, _) if needed && !in_pit && !self.is_for_the_maker(NotGiven::JointDeflection) => {
                let complaint = Complaint::from("the deflection that the joint may take is missing");
                let advice = "add `joint_deflection` from its maker, or join the string in the pit with \
                              `pull: { laydown: { length: 6 m, place: pit } }`";
                self.flaw(&candidate.material, &format!("{path}.joint_deflection"), complaint.advise(advice));
                None
            }
            (None, _) => None,
        }
    }

    /// Density of a material, from its specific gravity.
    pub(super) fn density(&self, key: &str) -> Result<Cited<MassDensity>, HandbookError> {
        Ok(self.handbook.pipe_density()?.value(key)?.map(|gravity| super::pull::water() * gravity))
    }

    /// Radius over outside diameter of a row of `bend_radius`.
    pub(super) fn bend_ratio(&self, key: &str) -> Result<Cited<Ratio>, HandbookError> {
        self.handbook.bend_radius()?.value(key)
    }

    /// Ovality as delivered, 0 where it is not given.
    pub(super) fn declared_ovality(&mut self, path: &str, candidate: &CandidateFile) -> Ratio {
        candidate.ovality.as_ref().map_or(Ratio::default(), |field| {
            if !(0.0..=0.12).contains(&field.value.si()) {
                let complaint = Complaint::from("expected an ovality from 0 % to 12 %");
                self.flaw(field, &format!("{path}.ovality"), complaint.advise("write for example \"4 %\""));
            }
            field.value
        })
    }

    /// How the pipe is pulled; a fault where the file does not say.
    pub(super) fn how_pulled<'p>(
        &mut self,
        candidate: &CandidateFile,
        file: &DriveFile,
        pull: Option<&'p Pull>,
    ) -> Option<&'p Pull> {
        if pull.is_none() && file.pull.is_none() {
            let complaint = Complaint::from("this pipe is pulled, and how is missing")
                .advise("add `pull: { duration: 6 h, pipe_temperature: 25 degC }`");
            self.flaw(&candidate.material, "pull", complaint);
        }
        pull
    }

    /// What is only said of pipe that is pushed or of PE.
    pub(super) fn refuse_pushed(&mut self, path: &str, candidate: &CandidateFile) {
        const PUSHED: &str = "is for pipe that is pushed";
        self.refuse(path, "series", candidate.series.as_ref(), "is for PE pipe");
        self.refuse(path, "end_bearing_area", candidate.end_bearing_area.as_ref(), PUSHED);
        self.refuse(path, "certificate", candidate.certificate.as_ref(), "is for clay pipe");
        self.refuse(path, "factor", candidate.factor.as_ref(), "is for clay pipe");
        self.refuse(path, "joint_stress_ratio", candidate.joint_stress_ratio.as_ref(), PUSHED);
        self.refuse(path, "casing", candidate.casing.as_ref(), PUSHED);
    }

    pub(super) fn refuse_steel(&mut self, path: &str, candidate: &CandidateFile) {
        self.refuse(path, "steel_grade", candidate.steel_grade.as_ref(), "is for steel pipe");
        self.refuse(path, "yield_strength", candidate.yield_strength.as_ref(), "is for steel pipe");
    }

    pub(super) fn refuse_joint(&mut self, path: &str, candidate: &CandidateFile) {
        self.refuse_joint_ratings(path, candidate);
        self.refuse(path, "pipe_length", candidate.pipe_length.as_ref(), "is for pipe with joints");
    }

    /// Ratings of a joint that holds pull.
    pub(super) fn refuse_joint_ratings(&mut self, path: &str, candidate: &CandidateFile) {
        const WHY: &str = "is for pipe with restrained joints";
        self.refuse(path, "joint_pull", candidate.joint_pull.as_ref(), WHY);
        self.refuse(path, "joint_pressure", candidate.joint_pressure.as_ref(), WHY);
        self.refuse(path, "joint_deflection_factor", candidate.joint_deflection_factor.as_ref(), WHY);
        self.refuse(path, "joint_deflection", candidate.joint_deflection.as_ref(), WHY);
    }
}

/// The warmer of two.
trait Warmer {
    fn max_of(self, other: Self) -> Self;
}

impl Warmer for ThermodynamicTemperature {
    fn max_of(self, other: Self) -> Self {
        if other > self { other } else { self }
    }
}
