//! What surrounds the bore: flow, surface, services, pits, pace. Every rule is looked up, every limit is the file's or a
//! row's.

use super::cover::Cover;
use super::earth::Ends;
use super::held::{BreakOutRule, FaceRule};
use super::looked_up::looked_up;
use super::movement::Movement;
use super::pace::Pace;
use super::pits::{Pit, PitRules};
use crate::quantity::{Length, Pressure, Ratio, Time, Velocity, Volume, VolumeRate};
use crate::source::Cited;

/// All that conditions beside force and ground need.
#[derive(Debug, Clone)]
pub(crate) struct Surroundings {
    /// Gravity sewers only.
    pub(crate) gravity: Option<Gravity>,
    pub(crate) surface: Surface,
    pub(crate) crossings: Vec<Crossing>,
    /// Whether the file says which services there are, were it none.
    pub(crate) crossings_are_told: bool,
    pub(crate) movement: Movement,
    pub(crate) break_out: BreakOutRule,
    pub(crate) cover: Cover,
    pub(crate) face: FaceRule,
    pub(crate) launch: Pit,
    pub(crate) reception: Pit,
    pub(crate) pit_rules: PitRules,
    /// Whole soil kept in the mouth of the casing.
    pub(crate) plug: Option<Cited<Length>>,
    /// What is laid in the casing afterwards, where the file tells it.
    pub(crate) carrier: Option<Carrier>,
    pub(crate) clearing: Option<Clearing>,
    pub(crate) pace: Pace,
}

impl Surroundings {
    /// Whether the file limits how far the surface or a crossed service may move.
    pub(crate) fn limits_movement(&self) -> bool {
        self.surface.is_limited || self.crossings.iter().any(|crossing| crossing.is_limited)
    }
}

/// How spoil is carried away.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Clearing {
    pub(crate) tank: Cited<Volume>,
    /// Added water over the soil in the ground.
    pub(crate) water: Ratio,
    /// For which the work stands with each tank.
    pub(crate) emptying: Option<Cited<Time>>,
    /// Volume of the loosened soil over that in the ground, over the whole drive.
    pub(crate) loosened: Cited<Ratio>,
}

/// A pipe that is laid in a casing afterwards.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Carrier {
    /// Over its joints.
    pub(crate) outside_diameter: Cited<Length>,
    /// Of a sewer, the slope that it is set to beyond that of its casing, and whether the file leaves open what that is.
    pub(crate) own_slope: Option<(Ratio, bool)>,
    /// How much wider the casing is to be inside.
    pub(crate) spare: Cited<Length>,
}

looked_up! {
    /// Waves of an invert.
    Waves: Copy of |handbook| {
        /// Half of a wave, of a head that is steered back to its line.
        short: Length = handbook.length("wave.short")?.value,
        /// Half of a wave, of a string from the bottom of its bore to the crown.
        long: Length = handbook.length("wave.long")?.value,
        /// Amplitude of a jacked line, likely and high.
        jacked: (Length, Length) =
            (handbook.length("pilot.pushed_low")?.value, handbook.length("grade.pilot_accuracy")?.value),
    }
}

/// Flow and grade.
#[derive(Debug, Clone)]
pub(crate) struct Gravity {
    pub(crate) roughness: Cited<Ratio>,
    pub(crate) flow_min: Option<Cited<VolumeRate>>,
    pub(crate) flow_max: Option<Cited<VolumeRate>>,
    /// From a high spot to the next low one.
    pub(crate) half_wave: Option<Cited<Length>>,
    /// What is taken where the file does not tell it.
    pub(crate) waves: Waves,
    pub(crate) cleaning_stress: Cited<Pressure>,
    /// Velocity of the full pipe, at most.
    pub(crate) fastest: Cited<Velocity>,
    /// Slope that pulled lines are asked for: usual low and high end.
    pub(crate) pulled_floor: (Ratio, Cited<Ratio>),
}

/// What a pipe is as a sewer.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Sewer {
    pub(crate) inside: Cited<Length>,
    pub(crate) least_slope: Cited<Ratio>,
    pub(crate) sag: Cited<Length>,
    /// Whether the sag is a limit of a code, and not a habit.
    pub(crate) sag_is_real: bool,
}

/// The surface.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Surface {
    /// Whether the file says what lies over the bore.
    pub(crate) is_told: bool,
    /// Whether traffic is that of load models, and not that of American railways.
    pub(crate) by_load_model: bool,
    pub(crate) road: bool,
    pub(crate) railway: bool,
    pub(crate) stream: bool,
    /// Tracks, a runway or a stream: no pit is dug in it, and no gauge answers for the fluid that comes up in it.
    pub(crate) guarded: bool,
    /// The railway permits a pipe without a casing, by the word of the file.
    pub(crate) uncased: bool,
    /// Whether the file limits how far it may move.
    pub(crate) is_limited: bool,
    /// As its owner allows; least and most of what owners usually do where the file does not tell; none of open ground.
    pub(crate) settlement: Option<Ends<Cited<Length>>>,
    /// The same of its slope.
    pub(crate) slope: Option<Ends<Cited<Ratio>>>,
}

/// A service that is crossed or runs beside the bore.
#[derive(Debug, Clone)]
pub(crate) struct Crossing {
    pub(crate) name: String,
    #[cfg_attr(not(feature = "report"), expect(dead_code, reason = "only printed"))]
    pub(crate) at: Length,
    pub(crate) depth: Length,
    /// Distance from the axis in plan; zero where it is crossed.
    pub(crate) beside: Length,
    /// Depth of the invert there.
    pub(crate) invert: Length,
    /// First and last position of the stretches that it feels.
    pub(crate) stretches: [usize; 2],
    /// Whether the file limits how far it may move.
    pub(crate) is_limited: bool,
    /// As its owner allows, or least and most of what owners usually do.
    pub(crate) settlement: Ends<Cited<Length>>,
    /// The same of its slope.
    pub(crate) slope: Ends<Cited<Ratio>>,
    pub(crate) clearance: Option<Cited<Length>>,
    pub(crate) gas: bool,
}

impl Crossing {
    /// Distance of its near side from the axis of a bore for a pipe of this outside diameter.
    pub(crate) fn axis_distance(&self, outside_diameter: Length) -> Length {
        (self.invert - outside_diameter / 2.0 - self.depth).hypot(self.beside)
    }
}

/// A curve that the whole of a jacked line is planned on.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Curve {
    pub(crate) radius: Cited<Length>,
    /// Friction coefficient of the pipe on the outer side of the curve: at its best, and on the safe side.
    pub(crate) friction: Ends<Ratio>,
    /// Yield of welded steel over what pushing and bending may come to.
    pub(crate) steel_factor: Cited<Ratio>,
}
