//! A demand against a limit: typed at the door, erased inside.

use crate::law::{Doubt, Doubted};
use crate::quantity::{Band, Measure, Role, Shown};
use crate::source::{Cited, Origin};

/// How a check came out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// The high demand is within the limit.
    Within,
    /// The likely demand is within the limit, the high one is not.
    WithCare,
    /// The likely demand is over the limit.
    Over,
    /// Something needed to judge is unknown, or an equation was used outside its range.
    NotDecided,
}

impl Verdict {
    /// As printed and as written in JSON.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Within => "within",
            Self::WithCare => "with care",
            Self::Over => "over",
            Self::NotDecided => "not decided",
        }
    }
}

/// Which side of the limit is safe.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sense {
    /// The demand must not exceed the limit.
    AtMost,
    /// The supply must not fall below the need.
    AtLeast,
}

impl Sense {
    /// As written in JSON.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::AtMost => "at most",
            Self::AtLeast => "at least",
        }
    }
}

/// What is checked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[repr(u8)]
pub enum Subject {
    /// Thrust that pushes the pilot stem, against the rig.
    StemThrust,
    /// Thrust that pushes the pilot stem, against buckling.
    StemBuckling,
    /// Thrust that pushes the pilot stem, against snaking in a bore that is wider than the stem.
    StemSnaking,
    /// Thrust that pushes the pilot stem, against the rating of its joints.
    StemJoint,
    /// Thrust that pushes a casing behind the stem, against the rig.
    CasingThrust,
    /// Jacking force while the pipe is pushed, against the rig.
    JackingThrust,
    /// Jacking force on the pipe, against the capacity of its end.
    EndCapacity,
    /// Angle at the joints of a jacked pipe.
    JointAngle,
    /// Jacking force on a free length of pipe, against its strength as a column.
    PipeColumn,
    /// Pull on the pipe, against its tension.
    Tension,
    /// Stress of pull and bend on the ramp, against the allowable stress.
    TensionAndBending,
    /// Outside pressure during the pull, against collapse.
    Collapse,
    /// Pull, bend and outside pressure on a steel pipe together, extreme condition.
    SteelInteraction,
    /// The same, normal condition.
    SteelInteractionNormal,
    /// Strain of the pull.
    Strain,
    /// Strain of pull and bend on the ramp.
    StrainWithBend,
    /// Pull on the pipe, against the rating of pull head and swivel.
    PullHead,
    /// Setting of the weak link, against what pipe, head and joint may bear.
    WeakLink,
    /// Pull on the pipe, against the setting of the weak link.
    WeakLinkPull,
    /// Pull on the pipe where a named length of bore lies on it, upper bound.
    CollapsedBore,
    /// Pressure of liquid grout, against collapse.
    CollapseInGrout,
    /// Water and soil in service, against collapse.
    CollapseInService,
    /// Water and a vacuum inside, against collapse.
    Vacuum,
    /// Deflection of a flexible pipe in service.
    Deflection,
    /// Pressure of the rig on the face of the launch pit while it pulls.
    PullReaction,
    /// Pressure of the bore fluid, against what the ground is allowed.
    BreakOut,
    /// Length of the ramp, against the room for it.
    RampRoom,
    /// Pull on the rig: pipe, reamer and stem.
    RigPull,
    /// Pull on the rig in a reaming pass before the pipe comes.
    ReamingPull,
    /// Pull on the stem, against the rating of its joints.
    StemPull,
    /// Torque of the reamer, against rig and stem.
    ReamingTorque,
    /// Step in diameter of a reaming pass.
    ReamingStep,
    /// Final bore.
    Bore,
    /// Radius of the string on the ramp.
    BendRadius,
    /// Thrust, against the ground behind the wall in the launch pit.
    ThrustWall,
    /// Level of the thrust, against that of the reaction of the ground.
    WallLevel,
    /// Movement of the wall at full resistance, against the tolerance of the invert, gravity sewers only.
    WallMovement,
    /// Load of a rigid pipe in service, against its crushing strength.
    Crushing,
    /// Invert against its tolerance, gravity sewers only.
    Invert,
    /// Ground against method.
    Ground,
    /// Length of the drive against the published range of the method.
    Length,
    /// Slope of a gravity sewer, against the least by its size.
    LeastSlope,
    /// Steepest wave of the invert, against the slope of the line, gravity sewers only.
    BackFall,
    /// Water that stands in the low spots of a waving invert.
    Sag,
    /// Slope that a pulled line is asked for, against that of the line, gravity sewers only.
    GradeFloor,
    /// Greatest flow, against that of the full pipe.
    FlowCapacity,
    /// Stress of the least flow on the wall, against what moves grit.
    SelfCleaning,
    /// Cover, against the least by method.
    Cover,
    /// Settlement of the surface.
    SurfaceSettlement,
    /// Slope of the settled surface.
    SurfaceSlope,
    /// Settlement of a crossed service.
    ServiceSettlement,
    /// Slope of a crossed service.
    ServiceSlope,
    /// Clear distance of a crossed service.
    ServiceClearance,
    /// Stability number of an open face in clay.
    FaceStability,
    /// Heave of the base of a pit in clay.
    PitHeave,
    /// Uplift of the base of a pit by water below.
    PitUplift,
    /// Soil plug in the mouth of a casing, against the head of water.
    Plug,
    /// Length of the launch pit.
    PitLength,
    /// Width of the launch pit.
    PitWidth,
    /// Length of the reception pit.
    ReceptionLength,
    /// Width of the reception pit.
    ReceptionWidth,
    /// Working area at the launch.
    LaunchArea,
    /// Working area at the reception.
    ReceptionArea,
    /// Lift of one pipe into the launch pit.
    CraneLift,
    /// Shifts, against those of the programme.
    Programme,
}

impl Subject {
    /// All subjects, in the order of a report.
    pub const ALL: &'static [Self] = &[
        Self::StemThrust,
        Self::StemBuckling,
        Self::StemSnaking,
        Self::StemJoint,
        Self::CasingThrust,
        Self::JackingThrust,
        Self::EndCapacity,
        Self::JointAngle,
        Self::PipeColumn,
        Self::Tension,
        Self::TensionAndBending,
        Self::Collapse,
        Self::SteelInteraction,
        Self::SteelInteractionNormal,
        Self::Strain,
        Self::StrainWithBend,
        Self::PullHead,
        Self::WeakLink,
        Self::WeakLinkPull,
        Self::CollapsedBore,
        Self::CollapseInGrout,
        Self::CollapseInService,
        Self::Vacuum,
        Self::Deflection,
        Self::PullReaction,
        Self::BreakOut,
        Self::RampRoom,
        Self::RigPull,
        Self::ReamingPull,
        Self::StemPull,
        Self::ReamingTorque,
        Self::ReamingStep,
        Self::Bore,
        Self::BendRadius,
        Self::ThrustWall,
        Self::WallLevel,
        Self::WallMovement,
        Self::Crushing,
        Self::Invert,
        Self::Ground,
        Self::Length,
        Self::LeastSlope,
        Self::BackFall,
        Self::Sag,
        Self::GradeFloor,
        Self::FlowCapacity,
        Self::SelfCleaning,
        Self::Cover,
        Self::SurfaceSettlement,
        Self::SurfaceSlope,
        Self::ServiceSettlement,
        Self::ServiceSlope,
        Self::ServiceClearance,
        Self::FaceStability,
        Self::PitHeave,
        Self::PitUplift,
        Self::Plug,
        Self::PitLength,
        Self::PitWidth,
        Self::ReceptionLength,
        Self::ReceptionWidth,
        Self::LaunchArea,
        Self::ReceptionArea,
        Self::CraneLift,
        Self::Programme,
    ];
    /// Number of subjects.
    pub const COUNT: usize = Self::ALL.len();

    /// As printed.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::StemThrust => "thrust, pilot stem",
            Self::StemBuckling => "pilot stem, buckling",
            Self::StemSnaking => "pilot stem, snaking",
            Self::StemJoint => "pilot stem, joint under thrust",
            Self::CasingThrust => "thrust, casing",
            Self::JackingThrust => "thrust, pipe",
            Self::EndCapacity => "pipe end, jacking force",
            Self::JointAngle => "joint angle",
            Self::PipeColumn => "pipe in the pit, column",
            Self::Tension => "pipe, tension",
            Self::TensionAndBending => "pipe, tension and bending",
            Self::Collapse => "pipe, collapse in the pull",
            Self::SteelInteraction => "pipe, combined stress",
            Self::SteelInteractionNormal => "same, normal condition",
            Self::Strain => "pipe, strain of the pull",
            Self::StrainWithBend => "pipe, strain with the bend",
            Self::PullHead => "pull head",
            Self::WeakLink => "weak link, setting",
            Self::WeakLinkPull => "weak link, pull",
            Self::CollapsedBore => "pipe, collapsed bore",
            Self::CollapseInGrout => "pipe, collapse in grout",
            Self::CollapseInService => "pipe, collapse in service",
            Self::Vacuum => "pipe, vacuum in service",
            Self::Deflection => "pipe, deflection",
            Self::PullReaction => "launch pit face, pull",
            Self::BreakOut => "bore fluid, break-out",
            Self::RampRoom => "ramp, room",
            Self::RigPull => "rig pull",
            Self::ReamingPull => "rig pull, reaming",
            Self::StemPull => "stem joint, pull",
            Self::ReamingTorque => "torque, reaming",
            Self::ReamingStep => "reaming step",
            Self::Bore => "final bore",
            Self::BendRadius => "bend radius",
            Self::ThrustWall => "thrust wall",
            Self::WallLevel => "thrust wall, level",
            Self::WallMovement => "thrust wall, movement",
            Self::Crushing => "pipe in service, crushing",
            Self::Invert => "invert, line and grade",
            Self::Ground => "ground",
            Self::Length => "length",
            Self::LeastSlope => "least slope",
            Self::BackFall => "back-fall",
            Self::Sag => "standing water",
            Self::GradeFloor => "slope for a pulled line",
            Self::FlowCapacity => "flow, capacity",
            Self::SelfCleaning => "flow, self-cleaning",
            Self::Cover => "cover",
            Self::SurfaceSettlement => "settlement, surface",
            Self::SurfaceSlope => "slope, surface",
            Self::ServiceSettlement => "settlement, services",
            Self::ServiceSlope => "slope, services",
            Self::ServiceClearance => "clear distance, services",
            Self::FaceStability => "face, stability number",
            Self::PitHeave => "pit base, heave",
            Self::PitUplift => "pit base, uplift",
            Self::Plug => "soil plug",
            Self::PitLength => "launch pit, length",
            Self::PitWidth => "launch pit, width",
            Self::ReceptionLength => "reception pit, length",
            Self::ReceptionWidth => "reception pit, width",
            Self::LaunchArea => "working area, launch",
            Self::ReceptionArea => "working area, reception",
            Self::CraneLift => "crane lift",
            Self::Programme => "time, programme",
        }
    }

    /// True for checks of flow, grade, ground movement, face and pits.
    const fn is_surrounding(self) -> bool {
        matches!(
            self,
            Self::LeastSlope
                | Self::BackFall
                | Self::Sag
                | Self::GradeFloor
                | Self::FlowCapacity
                | Self::SelfCleaning
                | Self::Cover
                | Self::SurfaceSettlement
                | Self::SurfaceSlope
                | Self::ServiceSettlement
                | Self::ServiceSlope
                | Self::ServiceClearance
                | Self::FaceStability
                | Self::PitHeave
                | Self::PitUplift
                | Self::Plug
                | Self::PitLength
                | Self::PitWidth
                | Self::ReceptionLength
                | Self::ReceptionWidth
                | Self::LaunchArea
                | Self::ReceptionArea
                | Self::CraneLift
                | Self::Programme
        )
    }

    /// True for checks of a force, stress or pressure, whose margin counts in the score.
    #[must_use]
    pub const fn is_load(self) -> bool {
        !matches!(
            self,
            Self::StemSnaking
                | Self::JointAngle
                | Self::ReamingStep
                | Self::Bore
                | Self::BendRadius
                | Self::WallLevel
                | Self::WallMovement
                | Self::Invert
                | Self::Ground
                | Self::Length
        ) && !self.is_beside_the_load()
            && !self.is_surrounding()
    }

    /// Checks of a force or pressure that say nothing of the margin of pipe and rig: screens, and settings.
    const fn is_beside_the_load(self) -> bool {
        matches!(
            self,
            Self::SteelInteractionNormal
                | Self::WeakLink
                | Self::WeakLinkPull
                | Self::CollapsedBore
                | Self::Deflection
                | Self::BreakOut
                | Self::RampRoom
        )
    }
}

/// Demand and limit of one case, in SI base units.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Case {
    /// Demand, or supply where it must be at least the limit.
    pub demand: f64,
    /// Limit.
    pub limit: f64,
}

impl Case {
    fn passes(self, sense: Sense) -> Option<bool> {
        (self.demand.is_finite() && self.limit.is_finite()).then_some(match sense {
            Sense::AtMost => self.demand <= self.limit,
            Sense::AtLeast => self.demand >= self.limit,
        })
    }

    fn utilisation(self, sense: Sense) -> Option<f64> {
        let (over, under) = match sense {
            Sense::AtMost => (self.demand, self.limit),
            Sense::AtLeast => (self.limit, self.demand),
        };
        let share = over / under;
        // The limit may be so small that the quotient is no number.
        (under > 0.0 && under.is_finite() && share.is_finite()).then_some(share.max(0.0))
    }
}

/// What the numbers of a check are.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Numbers {
    /// Likely and high case.
    Cases { role: Role, likely: Case, high: Case },
    /// A rating without numbers.
    None,
}

/// One check.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Check {
    /// What is checked.
    pub subject: Subject,
    /// How it came out.
    pub verdict: Verdict,
    /// Which side is safe.
    pub sense: Sense,
    /// Where the limit comes from.
    pub basis: Origin,
    /// The equation used outside its range, if any.
    pub doubt: Doubt,
    /// What a reader must know of this check.
    pub note: Option<&'static str>,
    numbers: Numbers,
}

impl Check {
    /// A demand that must not exceed a limit.
    #[must_use]
    pub fn at_most<Q: Measure>(
        subject: Subject,
        role: Role,
        demand: Doubted<Band<Q>>,
        limit: Doubted<Cited<Q>>,
    ) -> Self {
        let limits = limit.map(|limit| limit.map(Band::same));
        Self::at_most_by_level(subject, role, demand, limits)
    }

    /// A demand that must not exceed a limit that depends on the level itself.
    #[must_use]
    pub fn at_most_by_level<Q: Measure>(
        subject: Subject,
        role: Role,
        demand: Doubted<Band<Q>>,
        limit: Doubted<Cited<Band<Q>>>,
    ) -> Self {
        Self::new(subject, role, Sense::AtMost, demand, limit)
    }

    /// A supply that must be at least a need.
    #[must_use]
    pub fn at_least<Q: Measure>(subject: Subject, role: Role, supply: Q, need: Cited<Q>) -> Self {
        let supply = Doubted { value: Band::same(supply), doubt: None };
        let need = Doubted { value: need.map(Band::same), doubt: None };
        Self::new(subject, role, Sense::AtLeast, supply, need)
    }

    /// A supply that must be at least a need, either of which may depend on the level itself.
    #[must_use]
    pub fn at_least_by_level<Q: Measure>(
        subject: Subject,
        role: Role,
        supply: Doubted<Band<Q>>,
        need: Doubted<Cited<Band<Q>>>,
    ) -> Self {
        Self::new(subject, role, Sense::AtLeast, supply, need)
    }

    fn new<Q: Measure>(
        subject: Subject,
        role: Role,
        sense: Sense,
        demand: Doubted<Band<Q>>,
        limit: Doubted<Cited<Band<Q>>>,
    ) -> Self {
        debug_assert_eq!(Q::DIM, role.dim(), "role {role:?} does not fit the check of {subject:?}");
        let cases =
            demand.value.with(limit.value.value, |demand, limit| Case { demand: demand.si(), limit: limit.si() });
        let doubt = demand.doubt.or(limit.doubt);
        let verdict = match (doubt, cases.likely.passes(sense), cases.high.passes(sense)) {
            (Some(_), ..) | (None, None, _) | (None, _, None) => Verdict::NotDecided,
            (None, Some(false), _) => Verdict::Over,
            (None, Some(true), Some(false)) => Verdict::WithCare,
            (None, Some(true), Some(true)) => Verdict::Within,
        };
        let numbers = Numbers::Cases { role, likely: cases.likely, high: cases.high };
        Self { subject, verdict, sense, basis: limit.value.origin, doubt, note: None, numbers }
    }

    /// A judgement without numbers.
    #[must_use]
    pub const fn rated(subject: Subject, verdict: Verdict, basis: Origin) -> Self {
        Self { subject, verdict, sense: Sense::AtMost, basis, doubt: None, note: None, numbers: Numbers::None }
    }

    /// A screen: past the limit it asks for care, it never excludes.
    #[must_use]
    pub fn as_screen(self) -> Self {
        let verdict = if self.verdict == Verdict::Over { Verdict::WithCare } else { self.verdict };
        Self { verdict, ..self }
    }

    /// Never a plain pass: *with care*, and why.
    #[must_use]
    pub fn as_caution(self, note: &'static str) -> Self {
        let verdict = if self.verdict == Verdict::Within { Verdict::WithCare } else { self.verdict };
        Self { verdict, ..self }.with_note(note)
    }

    /// Never a pass, and why; a check that is over stays so.
    #[must_use]
    pub fn undecided(self, note: &'static str) -> Self {
        let verdict = if self.verdict == Verdict::Over { Verdict::Over } else { Verdict::NotDecided };
        Self { verdict, ..self }.with_note(note)
    }

    /// Not decided where there is doubt.
    #[must_use]
    pub fn in_doubt(self, doubt: Doubt) -> Self {
        let verdict = if doubt.is_some() { Verdict::NotDecided } else { self.verdict };
        Self { verdict, doubt: self.doubt.or(doubt), ..self }
    }

    /// With a note for the reader.
    #[must_use]
    pub const fn with_note(self, note: &'static str) -> Self {
        Self { note: Some(note), ..self }
    }

    /// Demand and limit at the high level, which decides *within*.
    #[must_use]
    pub const fn high(&self) -> Option<(Shown, Shown)> {
        self.pair(true)
    }

    /// Demand and limit at the likely level.
    #[must_use]
    pub const fn likely(&self) -> Option<(Shown, Shown)> {
        self.pair(false)
    }

    const fn pair(&self, high_level: bool) -> Option<(Shown, Shown)> {
        match self.numbers {
            Numbers::Cases { role, likely, high } => {
                let case = if high_level { high } else { likely };
                Some((Shown { si: case.demand, role }, Shown { si: case.limit, role }))
            }
            Numbers::None => None,
        }
    }

    /// High demand over limit (inverted where the supply must be at least the need); `None` where the divisor is
    /// not positive, the quotient is beyond all numbers, or there are none.
    #[must_use]
    pub fn utilisation(&self) -> Option<f64> {
        match self.numbers {
            Numbers::Cases { high, .. } => high.utilisation(self.sense),
            Numbers::None => None,
        }
    }

    /// As [`Check::utilisation`], at the likely level, by which schemes are ranked.
    #[must_use]
    pub fn likely_utilisation(&self) -> Option<f64> {
        match self.numbers {
            Numbers::Cases { likely, .. } => likely.utilisation(self.sense),
            Numbers::None => None,
        }
    }
}

/// The checks of a scheme, at most one a subject. A check that does not apply is absent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Checks([Option<Check>; Subject::COUNT]);

impl Default for Checks {
    fn default() -> Self {
        Self::NONE
    }
}

impl Checks {
    /// No checks.
    pub const NONE: Self = Self([None; Subject::COUNT]);

    /// Adds a check.
    pub fn add(&mut self, check: Check) {
        if let Some(slot) = self.0.get_mut(check.subject as usize) {
            *slot = Some(check);
        }
    }

    /// Adds a check where there is one.
    pub fn add_some(&mut self, check: Option<Check>) {
        if let Some(check) = check {
            self.add(check);
        }
    }

    /// Puts every check of a load in doubt.
    pub fn doubt_loads(&mut self, doubt: Doubt) {
        for check in self.0.iter_mut().flatten().filter(|check| check.subject.is_load()) {
            *check = check.in_doubt(doubt);
        }
    }

    /// The checks there are, in the order of [`Subject`].
    pub fn iter(&self) -> impl Iterator<Item = &Check> {
        self.0.iter().flatten()
    }

    /// The check of one subject.
    #[must_use]
    pub fn get(&self, subject: Subject) -> Option<&Check> {
        self.0.get(subject as usize).and_then(Option::as_ref)
    }
}
