//! What a material tells in its row: which fields apply to it and why others do not, its sizes, and what it bears.

use super::jacked::Barrel;
use super::listed::Listed;
use super::sizes::Known;
use super::{Resolved, Resolver};
use crate::drive::{Capacity, JackedPipe, Pull, PulledPipe};
use crate::drive_file::CandidateFile;
use crate::drive_file::fields::Keys;
use crate::handbook::Family;
use crate::quantity::{Length, LineLoad, Ratio};
use crate::source::{Cited, Equation, Origin};
use crate::yaml::Complaint;

/// A pipe before its place in the drive is known.
pub(super) struct Named {
    pub(super) label: String,
    pub(super) family: Family,
    pub(super) outside_diameter: Cited<Length>,
    pub(super) jacked: Option<JackedPipe>,
    pub(super) pulled: Option<PulledPipe>,
}

/// What takes the force on the end of a pushed pipe.
#[derive(PartialEq)]
pub(super) enum End {
    /// An area, of file, packer or table, with a strength that is known; its maker's force alone where there is no area.
    Area,
    /// An area and a strength, both its maker's; or the maker's force alone.
    AreaByMaker,
    /// The whole section: the pipes are welded to one.
    Section,
    /// The joint, which only its maker knows.
    Joint,
}

/// What a pushed pipe weighs and bears.
pub(super) struct Bears {
    pub(super) weight: Option<Cited<LineLoad>>,
    /// Mean over greatest stress in the joint, where the file tells it.
    pub(super) ratio: Option<Cited<Ratio>>,
    pub(super) capacity: Capacity,
}

/// A material to be pushed.
pub(super) struct Pushed {
    /// In the name of a pipe.
    pub(super) what: &'static str,
    /// In a fault.
    pub(super) noun: &'static str,
    /// Whether the size is the true bore.
    pub(super) by_bore: bool,
    /// What to give for a size that no table has.
    pub(super) other_size: &'static str,
    pub(super) family: Family,
    pub(super) applies: Applies,
    pub(super) sizes: fn(&Resolver<'_>) -> Resolved<Vec<Known>>,
    /// Row of its density, where a weight follows from the wall.
    pub(super) density: Option<&'static str>,
    /// Row of what the trade delivers: lengths and squareness of ends. Such a pipe is named by its bore.
    pub(super) trade: Option<&'static str>,
    pub(super) end: End,
    pub(super) bears: fn(&mut Resolver<'_>, &Listed<'_>, &Barrel) -> Resolved<Option<Bears>>,
}

/// Outside diameter and wall.
#[derive(Clone, Copy)]
pub(super) struct Section {
    pub(super) outside_diameter: Cited<Length>,
    pub(super) wall: Cited<Length>,
}

/// A material to be pulled.
pub(super) struct Pulled {
    pub(super) what: &'static str,
    pub(super) family: Family,
    pub(super) applies: Applies,
    pub(super) section: fn(&mut Resolver<'_>, &Listed<'_>) -> Resolved<Option<Section>>,
    pub(super) pipe: fn(&mut Resolver<'_>, &Listed<'_>, &Pull, Section) -> Resolved<Option<PulledPipe>>,
    pub(super) label: fn(&Resolver<'_>, &Listed<'_>, Section) -> Resolved<String>,
}

/// For a size that no table has.
pub(super) const GIVE_DIAMETERS: &str = "give outside_diameter and inside_diameter or wall";

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
/// What tells how the end of a pipe bears, beside its strength.
pub(super) const END_TOLD: Keys = keys![end_bearing_area, packer, joint_stress_ratio, certificate, factor];
/// Of any pipe that is pushed, and of any that is pulled.
pub(super) const PUSHED: Keys = COMMON.or(keys![inside_diameter, weight, rated_force, pipe_length, casing]);
pub(super) const PULLED: Keys = COMMON.or(keys![wall, passes, joint_diameter]);

/// Fields, and why they are refused.
pub(super) type Reason = (Keys, &'static str);
/// Fields that are used, but not as the file stands: when that is so, and why. They are listed, and no fault.
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

/// Said of what is told and says nothing as the file stands.
const IDLE: Equation = Equation::judged(
    "field of a pipe that says nothing as the file stands",
    "not used",
    "what else is told of the pipe stands for it, or what goes with it is not told",
    "a pipe of the file",
);

/// Why a field is not used.
#[derive(Clone, Copy)]
enum Against {
    Foreign(&'static str),
    Idle(&'static str),
}

impl Applies {
    /// Why a field is not used; `None` where it is.
    fn against(&self, field: u8, pipe: &CandidateFile) -> Option<Against> {
        if self.used.has(field) {
            let mut idle = self.idle.iter();
            return idle
                .find(|(keys, is_idle, _)| keys.has(field) && is_idle(pipe))
                .map(|(.., why)| Against::Idle(why));
        }
        let mut reasons = self.reasons.iter().chain(self.way);
        let why = reasons.find(|(keys, _)| keys.has(field)).map_or(self.otherwise, |(_, why)| *why);
        Some(Against::Foreign(why))
    }
}

impl Resolver<'_> {
    /// Refuses what says nothing of a pipe put in in these ways; one of them that uses a field is enough.
    pub(super) fn refuse_foreign(&mut self, of: &Listed<'_>, ways: &[&Applies]) {
        of.pipe.each(&mut |field, spec, value| {
            let reasons: Option<Vec<Against>> = ways.iter().map(|way| way.against(field, of.pipe)).collect();
            let Some((reasons, (at, rest))) = reasons.zip(value.place()) else { return };
            let idle = |against: &Against| if let Against::Idle(why) = against { Some(*why) } else { None };
            match (reasons.iter().find_map(idle), reasons.first()) {
                (Some(why), _) => self.list_idle(of.at(spec.key), why),
                (None, Some(Against::Foreign(why))) => {
                    self.flaw_at(at, &format!("{}.{}{rest}", of.path, spec.key), *why);
                }
                (None, _) => {}
            }
        });
    }

    /// Lists what is given of a set as not used.
    pub(super) fn not_used(&mut self, of: &Listed<'_>, keys: Keys, why: &str) {
        of.pipe.each(&mut |field, spec, value| {
            if keys.has(field) && !value.is_absent() {
                self.list_idle(of.at(spec.key), why);
            }
        });
    }

    fn list_idle(&mut self, field: String, why: &str) {
        if !self.assumed.iter().any(|told| told.field == field) {
            self.assume_word(field, &format!("not used: {why}"), Origin::Law(&IDLE));
        }
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
