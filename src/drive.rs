//! What is to be built: every value resolved, with its origin, and valid by construction.

mod assumed;
mod capacity;
mod coefficients;
mod cover;
mod earth;
mod ground;
mod held;
mod looked_up;
mod movement;
mod pace;
mod pipe;
mod pits;
mod plant;
mod proposed;
mod pulled;
mod rests;
mod service;
mod site;
mod water;

pub use assumed::{Assumed, AssumedValue, Concern, Unusual};
pub use ground::{BoreState, Stretch};
pub use pipe::Pipe;
pub use proposed::{NotGiven, Proposed};
pub use rests::{IfStalled, Work};

pub(crate) use capacity::*;
pub(crate) use coefficients::*;
pub(crate) use cover::*;
pub(crate) use earth::*;
pub(crate) use ground::*;
pub(crate) use held::*;
pub(crate) use looked_up::*;
pub(crate) use movement::*;
pub(crate) use pace::*;
pub(crate) use pipe::*;
pub(crate) use pits::*;
pub(crate) use plant::*;
pub(crate) use proposed::*;
pub(crate) use pulled::*;
pub(crate) use rests::*;
pub(crate) use service::*;
pub(crate) use site::*;
pub(crate) use water::*;

use crate::handbook::{CriterionKind, GroundClass, Guidance, Handbook, Lubrication, Method, Pilot, Service};
use crate::quantity::{
    Angle, Band, Force, Length, LineLoad, MassDensity, Pressure, Ratio, Role, Shown, ThermodynamicTemperature, Time,
    Torque, UnitSystem,
};
use crate::source::{Cited, Origin};
use looked_up::readable;
use std::sync::Arc;

/// One drive and the pipes to choose from.
#[derive(Debug, Clone)]
pub struct Drive {
    pub(crate) handbook: Arc<Handbook>,
    pub(crate) name: String,
    pub(crate) service: Service,
    pub(crate) length: Cited<Length>,
    pub(crate) grade: Cited<Angle>,
    pub(crate) lubrication: Lubrication,
    /// False where the file does not tell it, and none is taken for what is pushed.
    pub(crate) lubrication_told: bool,
    /// What clears a pipe while it is pushed, where it is an auger.
    pub(crate) auger: Option<Auger>,
    /// What it presses with; none where the file says that there is none.
    pub(crate) lubricant: Option<Lubricant>,
    /// The same without ground water, where its depth is not known and this drive has it at the surface; and the field
    /// that tells it.
    pub(crate) dry: Option<(Box<Drive>, &'static [&'static [&'static str]])>,
    pub(crate) stretches: Vec<Stretch>,
    pub(crate) rests: Rests,
    pub(crate) rig: Rig,
    /// What is done where the rig cannot push on.
    pub(crate) if_stalled: Option<IfStalled>,
    pub(crate) work: Work,
    pub(crate) reaction: Option<Reaction>,
    pub(crate) gauge: Option<Gauge>,
    pub(crate) stations: StationRules,
    pub(crate) stem: Stem,
    /// The same with what the file leaves out of it at its best, where it leaves out anything.
    pub(crate) stem_at_best: Option<Stem>,
    pub(crate) tip: TipResistance,
    pub(crate) usual: Usual,
    /// How the ground is opened for a jacked pipe, in words.
    pub(crate) technique: String,
    #[cfg_attr(not(feature = "report"), expect(dead_code, reason = "told in the report alone"))]
    pub(crate) pilot: Pilot,
    pub(crate) face: FaceResistance,
    pub(crate) tolerance: Cited<Length>,
    /// The loosest tolerance that an owner may have in mind, where the file gives none: of a jacked line whose pilot
    /// is located from the surface, and of any other.
    pub(crate) loosest_tolerance: Option<Ends<Cited<Length>>>,
    /// How the bore keeps to its line.
    pub(crate) guided: Guided,
    /// Overcut on the diameter that the accuracy of a jacked line holds already.
    pub(crate) overcut_in_accuracy: Length,
    /// Least play on the radius of a pipe that is set into a bore.
    pub(crate) least_play: Cited<Length>,
    /// How far a pilot is sighted, where it is.
    pub(crate) guided_length: Option<Cited<Length>>,
    /// A curve that a jacked line is planned on.
    pub(crate) curve: Option<Curve>,
    pub(crate) site: Box<Surroundings>,
    pub(crate) pull: Option<Pull>,
    pub(crate) weights: Weights,
    /// Length of the line that the drive is a part of.
    pub(crate) line: Option<Length>,
    pub(crate) annulus: Annulus,
    pub(crate) in_service: InService,
    pub(crate) candidates: Vec<Arc<Pipe>>,
    pub(crate) proposed: Option<Proposed>,
    pub(crate) leeway: Leeway,
    pub(crate) assumed: Vec<Assumed>,
    pub(crate) unusual: Vec<Unusual>,
}

readable! {
    Drive:
    /// What the drive is called.
    name: &str = |it| &it.name;
    /// What the pipe carries.
    service: Service = |it| it.service;
    /// From pit wall to pit wall.
    length: Length = |it| it.length.value;
    /// Slope, positive when it rises from launch to reception.
    grade: Angle = |it| it.grade.value;
    /// Lubrication of a jacked pipe.
    lubrication: Lubrication = |it| it.lubrication;
    /// How the ground is opened for a jacked pipe, in words.
    technique: &str = |it| &it.technique;
    /// The ground, from launch to reception.
    stretches: &[Stretch] = |it| &it.stretches;
    /// The pipes to choose from, in the order of the file.
    candidates: &[Arc<Pipe>] = |it| &it.candidates;
    /// Length of the line that the drive is a part of, where the file tells of one.
    line: Option<Length> = |it| it.line;
    /// Everything that was not given.
    assumed: &[Assumed] = |it| &it.assumed;
    /// The tables the values come from.
    handbook: &Handbook = |it| &it.handbook;
    /// Inside diameter needed, where the file tells it or a flow.
    needed_inside_diameter: Option<Length> = |it| it.proposed.as_ref().map(|proposed| proposed.inside_diameter.value);
    /// Whether the file says which services the bore crosses, were it none.
    crossings_are_told: bool = |it| it.site.crossings_are_told;
    /// When people work.
    work: &Work = |it| &it.work;
    /// What is done where the rig cannot push on, where the file tells it.
    if_stalled: Option<IfStalled> = |it| it.if_stalled;
    /// What was proposed.
    proposed: Option<&Proposed> = |it| it.proposed.as_ref();
}

impl Drive {
    /// Both ends of each stretch and where the surface breaks between: distance from the launch pit and depth of the invert.
    pub(crate) fn places(&self) -> impl Iterator<Item = (&Stretch, (Length, Length))> {
        self.stretches.iter().flat_map(|stretch| stretch.way.points.iter().map(move |point| (stretch, *point)))
    }

    /// Whether a drilled pilot would leave a bore that stands, and nobody tells that it is one.
    pub(crate) fn hangs_on_pilot(&self) -> bool {
        self.stretches.iter().any(Stretch::hangs_on_pilot)
    }

    /// Whether nights are taken for stops: the work does not go through them, and the file does not plan one for each.
    pub(crate) fn stops_at_night(&self) -> bool {
        let slow = self.rests.slow.0.value.min(self.rests.slow.1.value);
        let day = self.work.shifts_between_nights().map(|shifts| slow * shifts.value);
        day.is_some_and(|day| !self.rests.are_all(day, self.length.value))
    }

    /// What was not given of all that one pipe put in by one method concerns.
    pub fn assumed_for(&self, candidate: usize, method: Method) -> impl Iterator<Item = &Assumed> {
        self.assumed.iter().filter(move |assumed| self.concerns(assumed.concern, candidate, method))
    }

    /// Values of the file beyond what is usual, of all that one pipe put in by one method concerns.
    pub fn unusual_for(&self, candidate: usize, method: Method) -> impl Iterator<Item = &Unusual> {
        self.unusual.iter().filter(move |unusual| self.concerns(unusual.concern, candidate, method))
    }

    /// Whether there is one for this pipe, put in by this method.
    pub(crate) fn is_unusual_for(&self, pipe: &Pipe, method: Method) -> bool {
        // The pipe knows of its own.
        let any = |unusual: &Unusual| self.concerns(unusual.concern, usize::MAX, method);
        pipe.is_unusual || self.unusual.iter().any(any)
    }

    fn concerns(&self, concern: Concern, candidate: usize, method: Method) -> bool {
        match concern {
            Concern::Drive | Concern::Stem | Concern::Ground => true,
            Concern::Grade => self.service == Service::GravitySewer,
            Concern::Jacking => method == Method::PipeJacking,
            Concern::Pull => method == Method::Pullback,
            Concern::Pipe(of) => of == candidate,
        }
    }

    /// Whether a drive that stalls is to be dug free, where a pit can be dug.
    pub(crate) fn is_dug_free(&self) -> bool {
        self.if_stalled == Some(IfStalled::RescuePit) && !self.site.surface.guarded
    }

    /// Whether the file says how a drive that stalls is freed. No pit is dug in tracks, a runway or a stream, and stations are
    /// put into pipe that people may enter.
    pub(crate) fn is_freed(&self, pipe: &Pipe) -> bool {
        self.if_stalled.is_some_and(|how| match how {
            IfStalled::RescuePit => self.is_dug_free(),
            IfStalled::Stations => pipe.nominal >= self.stations.entry.value,
            IfStalled::SecondLubrication => self.lubrication != Lubrication::None,
        })
    }

    /// Whether a candidate is proposed, not listed in the file.
    #[must_use]
    pub fn is_proposed(&self, candidate: usize) -> bool {
        self.proposed.as_ref().is_some_and(|proposed| candidate >= proposed.first)
    }

    /// The pipes proposed and left out, in one sentence; absent where none was asked for.
    #[must_use]
    pub fn proposal(&self, system: UnitSystem) -> Option<String> {
        let proposed = self.proposed.as_ref()?;
        let needed = Shown::of(proposed.inside_diameter.value, Role::Diameter).display(system);
        let pipes: Vec<&str> = self.candidates.iter().skip(proposed.first).map(|pipe| pipe.label()).collect();
        let pipes = if pipes.is_empty() { "none".to_owned() } else { pipes.join(", ") };
        let left_out = if proposed.left_out.is_empty() {
            String::new()
        } else {
            format!("; not proposed: {}", proposed.left_out.join("; "))
        };
        Some(format!("proposed for an inside diameter of at least {needed}: {pipes}{left_out}"))
    }

    /// Whether a criterion applies. It is a matter of the drive alone, never of one scheme or of which pipes are looked
    /// at: what cannot be told for the drive drops out for every scheme.
    #[must_use]
    pub fn weighs(&self, kind: CriterionKind) -> bool {
        match kind {
            CriterionKind::LoadMargin | CriterionKind::Ground | CriterionKind::Size => true,
            CriterionKind::Grade => matches!(self.service, Service::GravitySewer),
            CriterionKind::Movement => self.site.limits_movement(),
            CriterionKind::Area => self.site.launch.area.is_some() && self.site.reception.area.is_some(),
            CriterionKind::Time => self.site.pace.programme.is_some(),
            CriterionKind::Cost => self.site.pace.prices.shift.is_some() && self.site.pace.prices.budget.is_some(),
        }
    }
}

/// How a bore keeps to its line.
#[derive(Debug, Clone, Copy)]
pub struct Guided {
    /// By what.
    pub(crate) by: Guidance,
    /// Whether the file itself tells so: the guidance, or a pilot that is pushed, which is sighted through its stem.
    pub(crate) told: bool,
    /// How far a laser that stands in the launch pit reaches.
    pub(crate) reach: Cited<Length>,
    /// How far the pilot, or a machine without one, may be off its line at the far end.
    pub(crate) error: Cited<Band<Length>>,
    /// The same where the file does not say by what, and it is kept as well as may be.
    pub(crate) at_best: Option<Band<Length>>,
    /// Amplitude of the waves about it: an error that grows with the square of the length is a bend, and no wave.
    pub(crate) wave: Band<Length>,
    /// What asks for a head that steers: the file tells guidance, and the technique by itself has none.
    pub(crate) by_head: Option<Origin>,
}

impl Guided {
    /// How far it may come up or go down where nothing in the bore steers it.
    pub(crate) fn drift(&self) -> Length {
        if self.by.is_steered() { Length::default() } else { self.error.value.high }
    }
}

/// The machine in the launch pit.
#[derive(Debug, Clone, Copy)]
pub struct Rig {
    pub(crate) thrust: Cited<Force>,
    pub(crate) pull: Cited<Force>,
    /// Thrust that the jacks are set to stop at.
    pub(crate) held_to: Option<Cited<Force>>,
    pub(crate) torque: Option<Cited<Torque>>,
    /// Of the auger while casing or pipe is pushed.
    pub(crate) auger_torque: Option<Band<Torque>>,
    /// Of the main jacks.
    pub(crate) stroke: Option<Cited<Length>>,
}

impl Rig {
    /// The lesser of its torque and that of a joint of the stem, as far as they are known.
    pub(crate) fn torque_through(&self, stem: &Stem) -> Option<Cited<Torque>> {
        match (self.torque, stem.joint_torque) {
            (Some(rig), Some(joint)) => Some(if joint.value < rig.value { joint } else { rig }),
            (rig, joint) => rig.or(joint),
        }
    }
}

/// What resists the tip of the pilot stem.
#[derive(Debug, Clone, Copy)]
pub struct TipResistance {
    pub(crate) cone_per_blow: Band<Pressure>,
    pub(crate) cone_per_blow_clay: Pressure,
    pub(crate) strength_per_blow: Pressure,
    pub(crate) bearing_factor: Band<Ratio>,
}

/// What resists an enlarging head: a table's pressure and least force, or the user's force.
#[derive(Debug, Clone, Copy)]
pub enum FaceResistance {
    /// Pressure on the cut ring, and a least force.
    Table {
        /// Pressure.
        pressure: Band<Pressure>,
        /// Least force.
        least: Band<Force>,
    },
    /// The user's force.
    Given(Band<Force>),
    /// A slurry machine: earth pressure by blow count and slurry over water, on the whole face.
    Slurry {
        /// Earth pressure per blow.
        pressure_per_blow: Pressure,
        /// Blow count beyond which it does not grow.
        blows_most: Ratio,
        /// Pressure of the slurry over that of the water.
        slurry_over_water: Pressure,
    },
    /// An open cutting edge, by two publications.
    CuttingEdge {
        /// Pressure under the edge.
        pressure: Pressure,
        /// Thickness of the edge.
        thickness: Length,
        /// Force per length of the rim.
        line_load: LineLoad,
        /// What multiplies it.
        index: FaceIndex,
    },
}

impl FaceResistance {
    /// Whether it differs from stretch to stretch.
    pub(crate) const fn follows_ground(&self) -> bool {
        matches!(self, Self::Slurry { .. } | Self::CuttingEdge { .. })
    }
}

/// Index of face resistance by ground.
#[derive(Debug, Clone, Copy)]
pub struct FaceIndex {
    pub(crate) ordinary: Ratio,
    pub(crate) sand: Ratio,
    pub(crate) hard: Ratio,
}

impl FaceIndex {
    pub(crate) const fn of(self, class: GroundClass) -> Ratio {
        match class {
            GroundClass::SoftClay | GroundClass::FirmToVeryStiffClay | GroundClass::Silt | GroundClass::Peat => {
                self.ordinary
            }
            GroundClass::LooseSand | GroundClass::MediumToDenseSand => self.sand,
            GroundClass::HardClay
            | GroundClass::Gravel
            | GroundClass::Fill
            | GroundClass::WeakRock
            | GroundClass::HardRock
            | GroundClass::Unknown => self.hard,
        }
    }
}

/// How a pipe is pulled.
#[derive(Debug, Clone, Copy)]
pub struct Pull {
    pub(crate) duration: Time,
    pub(crate) temperature: ThermodynamicTemperature,
    /// False where the hottest of the tables is taken.
    pub(crate) temperature_told: bool,
    /// False where a long one is taken.
    pub(crate) duration_told: bool,
    pub(crate) fluid_height: Length,
    /// The same where it is pumped from the pits, no higher than the highest invert and the ground water; none where the file tells its level.
    pub(crate) fluid_height_pumped: Option<Length>,
    /// Depth below ground at the higher pit of the level that the fluid is kept at.
    pub(crate) fluid_level: Option<Cited<Length>>,
    pub(crate) load_duration: Time,
    /// How long the fluid stands on the pipe at the least: told, or the pull alone.
    pub(crate) stands_at_least: Time,
    pub(crate) fluids: Fluids,
    pub(crate) friction_outside: Ratio,
    pub(crate) friction_inside: Band<Ratio>,
    pub(crate) annular_pressure: Band<Pressure>,
    pub(crate) model_factor: Ratio,
    pub(crate) likely_factor: Ratio,
    pub(crate) average_wall: Ratio,
    pub(crate) ramp: Angle,
    pub(crate) bend_radius: Option<Cited<Length>>,
    pub(crate) excess_length: Length,
    pub(crate) reamer: FaceResistance,
    pub(crate) step: StepRule,
    pub(crate) reaming_torque: Option<Band<Torque>>,
    pub(crate) push_assist: Option<PushAssist>,
    /// What a winch may pull, where one brings the pipe in place of the stem.
    pub(crate) winch: Option<Cited<Force>>,
    pub(crate) collapse_factor: Cited<Ratio>,
    pub(crate) ovality: Ratio,
    pub(crate) poisson: Ratio,
    pub(crate) bend_ratio: Cited<Ratio>,
    pub(crate) bend_cold: Ratio,
    pub(crate) bend_share: Ratio,
    /// Share of the stress that the pull is allowed that a pressure inside may take round the wall.
    pub(crate) inside_share: Cited<Ratio>,
    pub(crate) works: PullWorks,
}

/// How much larger than the bore before it a reamed bore is made by habit: by a ratio or by a step, whichever is more.
#[derive(Debug, Clone, Copy)]
pub struct StepRule {
    /// Usual and greatest ratio.
    pub(crate) ratio: (Ratio, Ratio),
    /// Usual and greatest step.
    pub(crate) step: (Length, Length),
    pub(crate) origin: Origin,
}

/// Densities of the fluid in the bore.
#[derive(Debug, Clone, Copy)]
pub struct Fluids {
    pub(crate) light: MassDensity,
    pub(crate) clean: MassDensity,
    pub(crate) heavy: MassDensity,
    /// Loaded as little as it may be, where nothing is told of it.
    pub(crate) loaded: MassDensity,
}

impl Pull {
    /// In fluid that is no denser than it has to be.
    pub(crate) fn in_light_fluid(&self) -> Self {
        Self { fluids: Fluids { heavy: self.fluids.loaded, ..self.fluids }, ..*self }
    }

    /// With what the file does not tell at its best.
    pub(crate) fn at_best(&self) -> Self {
        let works = PullWorks { score: self.works.score_at_best, ..self.works };
        let fluids = Fluids { heavy: self.fluids.loaded, ..self.fluids };
        Self { works, fluids, load_duration: self.stands_at_least, ..*self }
    }

    /// With the fluid pumped from the pits, where nobody tells its level.
    pub(crate) fn pumped(self) -> Self {
        Self { fluid_height: self.fluid_height_pumped.unwrap_or(self.fluid_height), ..self }
    }

    /// With the string full of water, where nobody tells what is in it.
    pub(crate) fn full(self, water: MassDensity) -> Self {
        let works = PullWorks { fill: self.works.fill.or(Some(Fill::Of(water))), ..self.works };
        Self { works, ..self }
    }
}
