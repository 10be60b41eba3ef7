//! How the ground is opened, by the technique that the file plans, which columns of the tables rate it, and which kind of
//! pilot goes before.

use super::material::can_be_pulled;
use super::{Resolved, Resolver};
use crate::drive_file::{Hole, OrNone};
use crate::handbook::{
    Before, GroundClass, GroundHazard, GroundHazardRow, Guidance, GuidedTechnique, Pilot, RatedBy, Rating, Service,
    Spoil, SuitabilityRow, TechniqueRow, Tip,
};
use crate::quantity::{Length, Measure};
use crate::source::{Cited, Equation, Origin};
use crate::yaml::MayBe;

/// Said of the pilot where the file says nothing.
const DISPLACING: Equation = Equation::judged(
    "pilot",
    "displacement",
    "what is usual behind a guided pilot; the harder on the ground",
    "pilots pushed without a bit",
);

/// The same in ground that none can be pushed through.
const DRILLED: Equation = Equation::judged(
    "pilot",
    "drilled",
    "rock, or more than 50 blows: no pilot can be pushed through it; a stem wider than those that are pushed; pipe pulled through fluid",
    "ground that only a bit opens, stems from 150 mm",
);

/// One column of the tables of suitability.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Column {
    /// Displacing pilot, auger.
    Jacking,
    /// Displacing pilot alone, before a pipe that is pulled: by the blows of `pilot_cone`.
    Pushed,
    /// A column of its own table.
    Guided(GuidedTechnique),
    Auger,
    Slurry,
    OpenShield,
    Pullback,
    PullbackGravity,
}

impl Column {
    pub(super) const fn of(rated: RatedBy) -> Self {
        match rated {
            RatedBy::DisplacingPilot => Self::Jacking,
            RatedBy::DrilledPilot => Self::Guided(GuidedTechnique::Drilled),
            RatedBy::OpenStem => Self::Guided(GuidedTechnique::OpenStem),
            RatedBy::Vacuum => Self::Guided(GuidedTechnique::Vacuum),
            RatedBy::Auger => Self::Auger,
            RatedBy::Slurry => Self::Slurry,
            RatedBy::OpenShield => Self::OpenShield,
            RatedBy::PushedPilot => Self::Pushed,
        }
    }

    /// The cell of a ground; the outer `None` where the table has no such column.
    pub(super) fn of_ground(self, row: &SuitabilityRow) -> Option<Rating> {
        let open = |field: &Option<crate::yaml::Field<Rating>>| field.given();
        match self {
            Self::Jacking => Some(row.jacking.value),
            Self::Pushed | Self::Guided(_) => None,
            Self::Auger => open(&row.auger),
            Self::Slurry => open(&row.slurry),
            Self::OpenShield => open(&row.open_shield),
            Self::Pullback => Some(row.pullback.value),
            Self::PullbackGravity => open(&row.pullback_gravity).or(Some(row.pullback.value)),
        }
    }

    pub(super) fn of_hazard(self, row: &GroundHazardRow) -> Option<Rating> {
        let cell = match self {
            // What is cleared by vacuum is as open as what an auger clears; a drilled pilot is judged by its fluid.
            Self::Guided(GuidedTechnique::OpenStem | GuidedTechnique::Vacuum) if row.hazard.value.has_remedy() => {
                &row.auger
            }
            Self::Jacking => &row.jacking,
            Self::Pushed if matches!(row.hazard.value, GroundHazard::MixedFaceRock | GroundHazard::Obstructions) => {
                &row.jacking
            }
            Self::Guided(_) => &None,
            Self::Auger => &row.auger,
            Self::Slurry => &row.slurry,
            Self::OpenShield => &row.open_shield,
            Self::Pushed | Self::Pullback => &row.pullback,
            Self::PullbackGravity if row.pullback_gravity.is_some() => &row.pullback_gravity,
            Self::PullbackGravity => &row.pullback,
        };
        cell.given()
    }

    /// Whether a stone goes by a third of the bore: an auger in its casing and the crusher of a machine.
    pub(super) const fn takes_by_bore(self) -> bool {
        matches!(self, Self::Auger | Self::Slurry)
    }

    /// Whether the face stands open to the ground water, so that treating it helps.
    pub(super) const fn is_open(self) -> bool {
        matches!(self, Self::Jacking | Self::Guided(_) | Self::Auger | Self::OpenShield)
    }
}

/// How the ground is opened, and for which pipes.
pub(super) struct Technique<'a> {
    /// All that goes by it.
    pub(super) row: Cited<&'a TechniqueRow>,
    /// Largest outside diameter of the candidates.
    pub(super) largest: Length,
    /// The largest of them and of their casings.
    pub(super) highest: Length,
    /// Whether a pilot stem goes first.
    pub(super) stem: bool,
    /// Whether a bit opens the bore of that pilot.
    pub(super) drilled: bool,
    pub(super) columns: Vec<Column>,
    pub(super) pulled: Column,
    /// The auger behind a drilled pilot, which counts in rock, and where no table rates the two together.
    pub(super) auger: bool,
    /// Whether a pilot that is pushed goes before a pulled pipe, and whether the file says so.
    pub(super) pushed: Option<bool>,
    /// Whether a casing may go by its auger alone: the file tells the auger, and nothing of a pilot or its stem.
    pub(super) may_be_bare: bool,
    /// Whether the file tells how the soil is removed.
    pub(super) spoil_is_told: bool,
}

impl<'a> Resolver<'a> {
    /// The row of what the file plans.
    pub(super) fn technique_row(&self, (pilot, stem): (Pilot, bool)) -> Resolved<Cited<&'a TechniqueRow>> {
        let spoil = self.file.spoil.given().unwrap_or(Spoil::Auger);
        let before = match (stem, pilot) {
            (false, _) | (true, Pilot::None) => Before::Nothing,
            (true, Pilot::Displacement) => Before::Displacement,
            (true, Pilot::Drilled | Pilot::WalkedOver) => Before::Drilled,
        };
        let fits = |row: &TechniqueRow| row.spoil.value == spoil && row.before.value == before;
        self.handbook.technique()?.fitting(spoil.key(), fits)
    }

    /// A pipe behind a pilot needs ground that suits both the pilot and what clears the head.
    pub(super) fn technique(&self, row: Cited<&'a TechniqueRow>, largest: Length, highest: Length) -> Technique<'a> {
        let columns = [&row.value.pilot, &row.value.head].into_iter().flatten().map(|rated| Column::of(rated.value));
        let drilled = row.value.tip.given() == Some(Tip::Bit);
        let gravity = self.file.service.value == Service::GravitySewer;
        Technique {
            row,
            largest,
            highest,
            stem: row.value.tip.is_some(),
            drilled,
            auger: drilled && row.value.spoil.value == Spoil::Auger,
            pushed: row.value.pulled.is_some().then_some(self.file.pilot.is_some()),
            columns: columns.collect(),
            pulled: if gravity { Column::PullbackGravity } else { Column::Pullback },
            may_be_bare: self.file.pilot.is_none()
                && self.file.stem.is_none()
                && self.file.spoil.given() == Some(Spoil::Auger),
            spoil_is_told: self.file.spoil.is_some(),
        }
    }

    /// Says which technique is rated.
    pub(super) fn assume_pilot(&mut self, kind: Pilot, stem: bool) {
        match (&self.file.pilot, stem) {
            (Some(field), false) if field.value != Pilot::None => {
                let complaint =
                    ("there is no stem, so there is no pilot", "give stem.outside_diameter, or leave this out");
                self.flaw(field, "pilot", complaint);
            }
            (None, true) => {
                let by = if kind == Pilot::Displacement { &DISPLACING } else { &DRILLED };
                self.assume_word("pilot", kind.key(), Origin::Law(by));
            }
            _ => {}
        }
    }

    /// The kind of pilot that the file tells, or the one that its ground or its stem asks for: in rock, above the blows that
    /// a pilot can be pushed through, by a wide stem, and before pipe that is pulled through
    /// fluid, a drilled one, as under guidance that no pushed stem has room for.
    pub(super) fn pilot_kind(&self) -> Resolved<Pilot> {
        /// Stems in m that are wider than those that are pushed, some 90 to 115 mm.
        const WIDE: f64 = 0.15;
        let file = self.file;
        let mut hard = false;
        for stretch in &file.ground {
            let most = self.pushed_to(stretch.class.value)?.value.1;
            hard |= stretch.class.value.is_rock()
                || stretch.mixed_with.given().is_some_and(GroundClass::is_rock)
                || stretch.spt_n.given().is_some_and(|blows| blows > most);
        }
        let stem = file.stem.as_ref().map(|stem| stem.outside_diameter.value);
        let wide = stem.is_some_and(|stem| matches!(stem, OrNone::Some(diameter) if diameter.si() > WIDE));
        let all_pulled = match file.candidates.as_slice() {
            [] => file.service.value == Service::PressureMain,
            pipes => pipes.iter().all(|pipe| can_be_pulled(pipe.material.value)),
        };
        let turns = file.guidance.given().is_some_and(Guidance::turns_corners);
        let drilled = turns || wide || self.is_pulled_through_fluid() && all_pulled || hard;
        Ok(file.pilot.given().unwrap_or(if drilled { Pilot::Drilled } else { Pilot::Displacement }))
    }

    /// Whether fluid fills the bore that a pipe is pulled into.
    pub(super) fn is_pulled_through_fluid(&self) -> bool {
        self.file.pull.as_ref().is_some_and(|pull| pull.hole.given().is_none_or(|hole| hole == Hole::Fluid))
    }
}
