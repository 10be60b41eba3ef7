//! Which field of a pipe applies to which material put in which way: a table each. What is not used is refused by name,
//! once, and for its own reason.

use super::Resolver;
use super::listed::Listed;
use crate::drive_file::CandidateFile;
use crate::drive_file::fields::Keys;
use crate::yaml::Complaint;

/// A set of fields of a pipe.
macro_rules! keys {
    ($($key:ident),+ $(,)?) => {
        $crate::drive_file::fields::Keys(0)$(.and($crate::drive_file::CandidateFile::$key))+
    };
}
pub(super) use keys;

/// Of a pipe of any material: what it is, how wide, what round it, what it costs. The stage of the casing looks at the
/// parts of a casing itself.
pub(super) const COMMON: Keys =
    CASING_PARTS.or(keys![material, size, outside_diameter, bore, price, crushing, annulus, pressure_class]);
pub(super) const CASING_PARTS: Keys =
    keys![casing_wall, casing_yield_strength, casing_factor, casing_free_length, casing_joint_thrust];
/// Ratings of a joint that holds pull.
pub(super) const RATINGS: Keys = keys![joint_pull, joint_pressure, joint_deflection_factor, joint_deflection];
pub(super) const STRENGTHS: Keys =
    keys![strength, cube_strength, design_strength, yield_strength, steel_grade, concrete_grade, scheme];
/// Of any pipe that is pushed, and of any that is pulled.
pub(super) const PUSHED: Keys = COMMON.or(keys![inside_diameter, weight, rated_force, pipe_length, casing]);
pub(super) const PULLED: Keys = COMMON.or(keys![wall, passes, joint_diameter]);

/// Fields, and why they are refused.
pub(super) type Reason = (Keys, &'static str);
/// Fields that are used, but not as the file stands: when that is so, and why.
pub(super) type Idle = (Keys, fn(&CandidateFile) -> bool, &'static str);

/// Against what only a pulled pipe has.
pub(super) const NOT_PULLED: &[Reason] = &[
    (RATINGS, "is for pipe with restrained joints"),
    (keys![joint_factor, joint_diameter], "is for pipe that is pulled"),
    (keys![passes], "reaming passes are for pipe that is pulled"),
];
/// Against what only a pushed pipe has.
pub(super) const NOT_PUSHED: &[Reason] = &[
    (keys![end_bearing_area, joint_stress_ratio, weight, casing], "is for pipe that is pushed"),
    (keys![certificate, factor], "is for clay pipe"),
    (keys![series], "is for PE pipe"),
    (keys![yield_strength, steel_grade], "is for steel pipe"),
    (keys![joint_factor], "is for fused pipe"),
    (RATINGS, "is for pipe with restrained joints"),
    (keys![pipe_length], "is for pipe with joints"),
];

/// What sets the radius only together with another field.
pub(super) const IDLE_LENGTH: &[Idle] = &[(
    keys![pipe_length],
    |pipe| pipe.joint_deflection.is_none(),
    "sets the radius together with joint_deflection, which is not given",
)];

/// What applies to one material put in one way.
#[derive(Debug)]
pub(super) struct Applies {
    pub(super) used: Keys,
    /// Reasons of the material, before those of the way.
    pub(super) reasons: &'static [Reason],
    pub(super) way: &'static [Reason],
    /// Where there is no other reason.
    pub(super) otherwise: &'static str,
    pub(super) idle: &'static [Idle],
}

impl Applies {
    /// Why a field is refused; `None` where it is used.
    fn against(&self, field: u8, pipe: &CandidateFile) -> Option<&'static str> {
        if self.used.has(field) {
            return self.idle.iter().find(|(keys, is_idle, _)| keys.has(field) && is_idle(pipe)).map(|(.., why)| *why);
        }
        let mut reasons = self.reasons.iter().chain(self.way);
        Some(reasons.find(|(keys, _)| keys.has(field)).map_or(self.otherwise, |(_, why)| *why))
    }
}

impl Resolver<'_> {
    /// Refuses what says nothing of a pipe put in in these ways; one of them that uses a field is enough.
    pub(super) fn refuse_foreign(&mut self, of: &Listed<'_>, ways: &[&Applies]) {
        of.pipe.each(&mut |field, spec, value| {
            let mut reasons = ways.iter().map(|way| way.against(field, of.pipe));
            if let Some(Some(why)) = reasons.next()
                && reasons.all(|why| why.is_some())
                && let Some((at, rest)) = value.place()
            {
                self.flaw_at(at, &format!("{}.{}{rest}", of.path, spec.key), why);
            }
        });
    }

    /// Refuses all that is given of a set.
    pub(super) fn refuse_all(&mut self, of: &Listed<'_>, keys: Keys, why: &Complaint) {
        of.pipe.each(&mut |field, spec, value| {
            if let Some((at, rest)) = value.place().filter(|_| keys.has(field)) {
                self.flaw_at(at, &format!("{}.{}{rest}", of.path, spec.key), why.clone());
            }
        });
    }
}
