//! PVC pressure pipe: jacked, where its joint sets the force; pulled, fused into a string or with restrained joints.

use super::label::size_text;
use super::listed::Listed;
use super::pe::{bracket, rising};
use super::row::{Applies, IDLE_LENGTH, NOT_PUSHED, PULLED, Pulled, Pushed, RATINGS, STRENGTHS, Section, keys};
use super::{Resolved, Resolver, iron, sizes};
use crate::drive::{Barrel, Creep, FactorPoints, JointedPipe, NotGiven, Pull, PulledPipe, PvcPipe};
use crate::drive_file::fields::Keys;
use crate::drive_file::{CandidateFile, PullFile, Series};
use crate::handbook::Family;
use crate::quantity::shown::plain;
use crate::quantity::{Length, Measure, Ratio, Role};
use crate::source::Cited;
use crate::yaml::MayBe;

pub(super) const JACKED: Pushed = Pushed {
    what: "PVC",
    noun: "PVC pipe",
    family: Family::Pvc,
    applies: Applies {
        used: iron::JACKED.applies.used.or(keys![sdr]),
        reasons: &[
            (STRENGTHS, "does not apply to jacked PVC: the joint sets the force"),
            (keys![factor], "the maker's force has its factors in it"),
            (keys![end_bearing_area], "the maker's force stands for it"),
            (keys![joint_stress_ratio], "the maker's force holds it"),
            (keys![packer], "the maker's force stands for the joint"),
            (keys![free_length], "is for steel pipe"),
        ],
        otherwise: "does not apply to PVC",
        ..iron::JACKED.applies
    },
    sizes: |resolver| sizes::cast_iron(resolver.handbook),
    density: Some("pvc"),
    ..iron::JACKED
};

const WEIGHT: (Keys, &str) = (keys![weight], "the weight of PVC pipe follows from its wall");

pub(super) const FUSED: Pulled = Pulled {
    what: "this pipe",
    family: Family::PvcFused,
    applies: Applies {
        used: PULLED.or(keys![sdr, ovality, joint_factor]),
        reasons: &[WEIGHT],
        way: NOT_PUSHED,
        otherwise: "is for pipe that is jacked",
        idle: &[],
    },
    section: |resolver, of| {
        let Some(outside_diameter) = resolver.cast_iron_size(of)? else { return Ok(None) };
        Ok(resolver.pvc_wall(of, outside_diameter).map(|wall| Section { outside_diameter, wall }))
    },
    pipe: |resolver, of, pull, section| {
        let Some(temperature) = resolver.pvc_temperature(pull)? else { return Ok(None) };
        let joint = resolver.joint_factor(of)?;
        let pipe = resolver.pvc_pipe(of, section.wall, temperature, joint, "pvc_250")?;
        Ok(Some(PulledPipe::Pvc(Box::new(pipe))))
    },
    label: |_, of, section| Ok(label("fused", of, section)),
};

pub(super) const RESTRAINED: Pulled = Pulled {
    family: Family::PvcRestrained,
    applies: Applies {
        used: PULLED.or(RATINGS).or(keys![sdr, ovality, pipe_length]),
        idle: IDLE_LENGTH,
        ..FUSED.applies
    },
    pipe: |resolver, of, pull, section| {
        let Some(temperature) = resolver.pvc_temperature(pull)? else { return Ok(None) };
        let whole = Cited::given(Ratio::from_si(1.0), CandidateFile::joint_factor.spec.name(of.path));
        let pipe = resolver.pvc_pipe(of, section.wall, temperature, whole, "pvc_300")?;
        let Some(joint) = resolver.joint_pull(of, pull)? else { return Ok(None) };
        let deflection = resolver.joint_deflection(of, pull, false);
        let jointed = JointedPipe { barrel: Barrel::Pvc(pipe), pull: joint, deflection, weight: None };
        Ok(Some(PulledPipe::Jointed(Box::new(jointed))))
    },
    label: |_, of, section| Ok(label("restrained", of, section)),
    ..FUSED
};

fn label(kind: &str, of: &Listed<'_>, section: Section) -> String {
    let dimension_ratio = match &of.pipe.sdr {
        Some(sdr) => format!("DR {}", plain(sdr.value.si())),
        None => format!("wall {}", size_text(section.wall.value, Series::Ips)),
    };
    format!("PVC {kind} {} {dimension_ratio}", size_text(of.size, Series::Ips))
}

impl Resolver<'_> {
    fn pvc_pipe(
        &mut self,
        of: &Listed<'_>,
        wall: Cited<Length>,
        temperature: FactorPoints,
        joint_factor: Cited<Ratio>,
        bend: &str,
    ) -> Resolved<PvcPipe> {
        let (stresses, ratios) = (self.handbook.pvc_stress()?, self.handbook.pvc_ratio()?);
        let (bends, path) = (self.handbook.bend_radius()?, of.path);
        let creep = self.pvc_creep()?;
        let what = |what: &str| format!("{path}: {what}");
        let tensile = self.taken(what("tensile strength of PVC"), stresses.value("tensile"), Role::Strength)?;
        let safety = self.taken(what("safety on it"), ratios.value("pull_safety"), Role::Ratio)?;
        let modulus = self.taken(what("modulus of PVC"), stresses.value("modulus"), Role::Modulus)?;
        self.taken(what("modulus of PVC over years"), stresses.value("modulus_long"), Role::Modulus)?;
        let poisson = self.taken(what("Poisson's ratio of PVC"), ratios.value("poisson"), Role::Ratio)?;
        let density = self.taken(what("density"), self.density("pvc"), Role::Density)?;
        let bend_ratio = self.taken(what("smallest radius over outside diameter"), bends.value(bend), Role::Ratio)?;
        Ok(PvcPipe {
            wall,
            density: density.value,
            tensile,
            safety: safety.value,
            temperature,
            joint_factor,
            modulus: modulus.value,
            creep,
            poisson: poisson.value,
            ovality: self.ovality(of),
            bend_ratio,
        })
    }

    /// How PVC softens with the time under load.
    pub(super) fn pvc_creep(&self) -> Resolved<Creep> {
        let stresses = self.handbook.pvc_stress()?;
        let after = |time, modulus| Ok((self.handbook.duration(time)?.value, stresses.value(modulus)?.value));
        Ok(Creep { short: after("pvc.modulus", "modulus")?, long: after("pvc.modulus_long", "modulus_long")? })
    }

    fn pvc_wall(&mut self, of: &Listed<'_>, outside_diameter: Cited<Length>) -> Option<Cited<Length>> {
        match (self.given_wall(of, outside_diameter.value), of.pipe.sdr.given()) {
            (Some(wall), None) => Some(wall),
            (None, Some(ratio)) => Some(outside_diameter.map(|outside| outside / ratio)),
            (Some(_), Some(_)) => {
                self.fault(of, CandidateFile::sdr, "give either the wall or the dimension ratio, not both");
                None
            }
            (None, None) => {
                let what = "the wall of the PVC pipe is missing";
                self.lacks(&of.pipe.size, &of.at("sdr"), what, "add `sdr: 18` or `wall: ...`");
                None
            }
        }
    }

    fn joint_factor(&mut self, of: &Listed<'_>) -> Resolved<Cited<Ratio>> {
        if let Some(told) = self.own(of, CandidateFile::joint_factor) {
            return Ok(told);
        }
        self.ask_the_maker(NotGiven::JointFactor);
        self.taken(of.at("joint_factor"), self.handbook.pvc_ratio()?.value("fused_joint"), Role::Ratio)
    }

    /// Rows of factors around the wall temperature. Colder than the first row counts as the first; colder than the
    /// least and warmer than the last are refused.
    fn pvc_temperature(&mut self, pull: &Pull) -> Resolved<Option<FactorPoints>> {
        let table = self.handbook.pvc_temperature()?;
        let rows = rising(table.rows.iter().map(|row| (row.value.at.value, row.value.factor.value)));
        let no_row = || table.lacks("any");
        let first = rows.first().ok_or_else(no_row)?.0;
        let warmest = rows.last().ok_or_else(no_row)?.0;
        let least = self.handbook.pull_temperature()?.value("pvc_least")?.value;
        let wall = pull.temperature;
        if !(wall >= least && wall <= warmest) {
            let why = "PVC pipe is pulled between 5 degC and 60 degC only";
            self.wrong(PullFile::pipe_temperature, (why, "colder it is brittle, warmer no factor is known"));
            return Ok(None);
        }
        let at = if first > wall { first } else { wall };
        let (below, above) = bracket(&rows, at).ok_or_else(no_row)?;
        Ok(Some(FactorPoints { at, below, above }))
    }
}
