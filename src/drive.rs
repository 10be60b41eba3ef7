//! What is to be built: every value resolved, with its origin, and valid by construction.

mod pipe;

pub use pipe::{ClayPipe, EndArea, ModulusPoints, PePipe, Pipe, PipeKind, StressSource};

use crate::handbook::{GroundClass, Handbook, Lubrication, Rating, Service, TipModel};
use crate::quantity::{
    Angle, Band, Force, Length, MassDensity, Pressure, Ratio, Shown, ThermodynamicTemperature, Time, UnitWeight,
};
use crate::source::{Cited, Origin};
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
    pub(crate) stretches: Vec<Stretch>,
    pub(crate) rig: Rig,
    pub(crate) stem: Cited<Length>,
    pub(crate) tip: TipResistance,
    pub(crate) face: FaceResistance,
    pub(crate) tolerance: Cited<Length>,
    pub(crate) pilot_accuracy: Cited<Length>,
    pub(crate) guided_length: Cited<Length>,
    pub(crate) pull: Option<Pull>,
    pub(crate) candidates: Vec<Pipe>,
    pub(crate) assumed: Vec<Assumed>,
}

impl Drive {
    /// What the drive is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// What the pipe carries.
    #[must_use]
    pub const fn service(&self) -> Service {
        self.service
    }

    /// From pit wall to pit wall.
    #[must_use]
    pub const fn length(&self) -> Length {
        self.length.value
    }

    /// Slope, positive when it rises from launch to reception.
    #[must_use]
    pub const fn grade(&self) -> Angle {
        self.grade.value
    }

    /// Lubrication of a jacked pipe.
    #[must_use]
    pub const fn lubrication(&self) -> Lubrication {
        self.lubrication
    }

    /// The ground, from launch to reception.
    #[must_use]
    pub fn stretches(&self) -> &[Stretch] {
        &self.stretches
    }

    /// The pipes to choose from, in the order of the file.
    #[must_use]
    pub fn candidates(&self) -> &[Pipe] {
        &self.candidates
    }

    /// Everything that was not given.
    #[must_use]
    pub fn assumed(&self) -> &[Assumed] {
        &self.assumed
    }

    /// The tables the values come from.
    #[must_use]
    pub fn handbook(&self) -> &Handbook {
        &self.handbook
    }
}

/// A stretch of like ground.
#[derive(Debug, Clone, Copy)]
pub struct Stretch {
    pub(crate) from: Length,
    pub(crate) to: Length,
    pub(crate) class: GroundClass,
    /// The user's own friction.
    pub(crate) friction_given: bool,
    pub(crate) stem_friction: Band<Pressure>,
    pub(crate) pipe_friction: Band<Pressure>,
    pub(crate) tip: TipModel,
    pub(crate) blows: Band<Ratio>,
    pub(crate) jacking: Cited<Rating>,
    pub(crate) pullback: Cited<Rating>,
    pub(crate) soil: Option<Soil>,
}

/// Soil above a stretch of pipe, as far as the file tells it.
#[derive(Debug, Clone, Copy)]
pub struct Soil {
    pub(crate) moist: UnitWeight,
    pub(crate) saturated: Option<UnitWeight>,
    pub(crate) friction_angle: Angle,
    pub(crate) surcharge: Pressure,
    /// The deepest invert of the stretch.
    pub(crate) invert_depth: Length,
    /// Depth of the water table, if there is one.
    pub(crate) water_depth: Option<Length>,
}

impl Stretch {
    /// Where it begins and ends, from the launch pit.
    #[must_use]
    pub const fn extent(&self) -> (Length, Length) {
        (self.from, self.to)
    }

    /// Class.
    #[must_use]
    pub const fn class(&self) -> GroundClass {
        self.class
    }

    /// Unit friction of a jacked pipe, and whether it is the user's own.
    #[must_use]
    pub const fn pipe_friction(&self) -> (Band<Pressure>, bool) {
        (self.pipe_friction, self.friction_given)
    }
}

/// The machine in the launch pit.
#[derive(Debug, Clone, Copy)]
pub struct Rig {
    pub(crate) thrust: Cited<Force>,
    pub(crate) pull: Cited<Force>,
}

/// What resists the tip of the pilot stem.
#[derive(Debug, Clone, Copy)]
pub struct TipResistance {
    pub(crate) cone_per_blow: Pressure,
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
}

/// How a pipe is pulled.
#[derive(Debug, Clone, Copy)]
pub struct Pull {
    pub(crate) duration: Time,
    pub(crate) temperature: ThermodynamicTemperature,
    pub(crate) contents: MassDensity,
    pub(crate) fluid_height: Length,
    pub(crate) load_duration: Time,
    pub(crate) fluids: Fluids,
    pub(crate) friction_outside: Ratio,
    pub(crate) friction_inside: Band<Ratio>,
    pub(crate) annular_pressure: Band<Pressure>,
    pub(crate) model_factor: Ratio,
    pub(crate) average_wall: Ratio,
    pub(crate) ramp: Angle,
    pub(crate) bend_radius: Option<Cited<Length>>,
    pub(crate) excess_length: Length,
    pub(crate) reamer: FaceResistance,
    pub(crate) collapse_factor: Cited<Ratio>,
    pub(crate) ovality: Ratio,
    pub(crate) poisson: Ratio,
    pub(crate) bend_ratio: Cited<Ratio>,
    pub(crate) bend_cold: Ratio,
    pub(crate) bend_share: Ratio,
}

/// Densities of the fluid in the bore.
#[derive(Debug, Clone, Copy)]
pub struct Fluids {
    pub(crate) light: MassDensity,
    pub(crate) clean: MassDensity,
    pub(crate) heavy: MassDensity,
}

/// A value that the file does not give.
#[derive(Debug, Clone, PartialEq)]
pub struct Assumed {
    /// Path of the field that would give it.
    pub field: String,
    /// What was taken.
    pub value: AssumedValue,
    /// Where it comes from.
    pub origin: Origin,
    /// How many more stretches of ground it was taken for.
    pub alike: usize,
}

/// What was taken for a value that the file does not give.
#[derive(Debug, Clone, PartialEq)]
pub enum AssumedValue {
    /// One quantity.
    One(Shown),
    /// Low, likely and high.
    Band(Band<Shown>),
    /// A word.
    Word(String),
}
