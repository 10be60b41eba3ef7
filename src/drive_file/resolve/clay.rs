//! Clay jacking pipe.

use super::applies::{Applies, NOT_PULLED, PUSHED, STRENGTHS, keys};
use super::listed::Listed;
use super::row::{Bears, End, Pushed};
use super::sizes::{both, clay_in_inches, metric_clay};
use super::{Resolved, Resolver};
use crate::drive::Capacity;
use crate::drive_file::{CandidateFile, Certificate};
use crate::handbook::Family;
use crate::quantity::{Pressure, Ratio, Role};
use crate::source::Cited;
use crate::yaml::MayBe;

pub(super) const CLAY: Pushed = Pushed {
    what: "clay",
    noun: "clay jacking pipe",
    by_bore: false,
    other_size: "for another give outside_diameter, and end_bearing_area or rated_force",
    family: Family::Clay,
    applies: Applies {
        used: PUSHED.or(keys![end_bearing_area, certificate, factor, joint_stress_ratio, packer, end_squareness]),
        reasons: &[
            (keys![series], "a clay pipe has no series"),
            (keys![sdr], "a clay pipe has no dimension ratio"),
            (STRENGTHS, "does not apply to clay pipe: give the certificate"),
            (keys![wall], "does not apply to clay pipe: give outside_diameter and inside_diameter"),
            (keys![free_length], "is for steel pipe"),
            (keys![joint_factor], "is for fused pipe"),
        ],
        way: NOT_PULLED,
        otherwise: "does not apply to clay pipe",
        idle: &[],
    },
    sizes: |resolver| both(metric_clay(resolver.handbook), clay_in_inches(resolver.handbook)),
    density: Some("clay"),
    trade: Some("clay"),
    end: End::Area,
    bears: |resolver, of, barrel| {
        let weight = resolver.jacked_weight(of, barrel)?;
        let certificate = of.pipe.certificate.given().unwrap_or(Certificate::Unknown);
        let table = resolver.handbook.clay_strength()?;
        let strength = table.value(certificate.key())?;
        let certificates = table.iter().map(|row| row.map(|row| row.value.value));
        let certified = certificates.filter(|_| certificate == Certificate::Unknown).reduce(stronger);
        if of.pipe.certificate.is_none() {
            resolver.assume_one(of.at("certificate (strength)"), strength, Role::Strength);
        }
        let habit = resolver.handbook.ratio("clay.factor")?;
        let factor = resolver.ratio_or(of, CandidateFile::factor, BRITTLE, habit);
        let ratio = resolver.joint_ratio(of)?;
        let capacity = resolver.brittle(of, (strength, certified), factor)?;
        Ok(Some(Bears { weight, ratio, capacity }))
    },
};

fn stronger(one: Cited<Pressure>, other: Cited<Pressure>) -> Cited<Pressure> {
    if other.value > one.value { other } else { one }
}

/// Least and most factor on the strength of a brittle pipe.
pub(super) const BRITTLE: (f64, f64) = (2.5, 20.0);

impl Resolver<'_> {
    /// One factor on the mean stress, another at the edge.
    pub(super) fn brittle(
        &mut self,
        of: &Listed<'_>,
        (strength, certified): (Cited<Pressure>, Option<Cited<Pressure>>),
        factor: Cited<Ratio>,
    ) -> Resolved<Capacity> {
        let what = format!("{}: factor on the stress at the edge of the joint", of.path);
        let edge_factor = self.taken_ratio(&what, "clay.factor_edge")?;
        Ok(Capacity::Brittle { strength, certified, factor, edge_factor })
    }
}
