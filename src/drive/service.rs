//! What a pipe meets in service, rigid or flexible.

use super::coefficients::{Creep, FactorPoints};
use super::earth::Ends;
use crate::quantity::{Length, LineLoad, Pressure, Ratio, Time};
use crate::source::Cited;

/// A rigid pipe in service: its crushing strength, and what asks for it along the drive.
#[derive(Debug, Clone)]
pub(crate) struct PipeInService {
    /// Ultimate strength between three edges.
    pub(crate) strength: Cited<LineLoad>,
    /// Nobody warrants any: the strength is the most that can be ordered.
    pub(crate) by_order: bool,
    /// Factor on it.
    pub(crate) safety: Ratio,
    /// Strength at the first crack, where the class has one, and the factor on it.
    pub(crate) cracked: Option<(LineLoad, Ratio)>,
    /// Bore that the earth load hangs in.
    pub(crate) bore: Length,
    pub(crate) earth_bedding: Ratio,
    pub(crate) live_bedding: Ratio,
    /// Column that rests on the pipe whatever the cohesion, over the bore.
    pub(crate) floor_bores: Ratio,
    /// Least outside diameter at which cohesion counts.
    pub(crate) cohesion_from: Length,
    /// One a stretch; none where the cover is less than the table of live load has.
    pub(crate) places: Vec<Option<Place>>,
}

/// What loads the pipe in one stretch, beside the soil of the stretch.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Place {
    /// Side pressure times friction of the ground over the pipe.
    pub(crate) lateral_friction: Ratio,
    /// Pressure of traffic at the least cover.
    pub(crate) live: Pressure,
    /// Impact on it.
    pub(crate) impact: Ratio,
}

/// A flexible pipe in service.
#[derive(Debug, Clone)]
pub(crate) struct RingInService {
    /// Pressure of traffic, impact included, at the shallowest and the deepest place of each stretch; none where the cover
    /// is less than the table of live load has. Least and most where the file does not tell what drives there.
    pub(crate) traffic: Ends<Vec<[Option<Pressure>; 2]>>,
    /// How far it may go out of round: least and most where the file does not tell its lining.
    pub(crate) deflection: Ends<Cited<Ratio>>,
    /// Of a pipe that is pushed.
    pub(crate) jacked: Option<JackedRing>,
    /// Cover from which on an arch in firm ground lasts, and the width over the bore of the column that then hangs; none
    /// under what shakes the ground.
    pub(crate) arch: Option<(Length, Ratio)>,
}

/// The ring of a flexible pipe that is pushed.
#[derive(Debug, Clone, Copy)]
pub(crate) struct JackedRing {
    pub(crate) wall: Length,
    /// Of years.
    pub(crate) modulus: Pressure,
    /// Of PVC, which softens with time.
    pub(crate) creep: Option<Creep>,
    /// What a load of hours counts for at it.
    pub(crate) share: Ratio,
    pub(crate) poisson: Ratio,
}

/// What a main may carry inside.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Carries {
    /// Its class, where the file tells it.
    pub(crate) class: Option<Cited<Pressure>>,
    /// Its wall, where its stress is known.
    pub(crate) wall: Option<MainWall>,
    /// Rating of its joints, where the file tells it.
    pub(crate) joint: Option<Cited<Pressure>>,
    /// Of plastic, and the factors of its class around it.
    pub(crate) temperature: Option<FactorPoints>,
    /// Share of its wall that a pull scores deeper than pipe keeps its class with.
    pub(crate) deep_score: Ratio,
    /// Of its class, what it carries with a recurring and with an occasional surge.
    pub(crate) with_surge: [Ratio; 2],
}

/// The wall of a main, at the stress that it is allowed over its life.
#[derive(Debug, Clone, Copy)]
pub(crate) struct MainWall {
    pub(crate) stress: Cited<Pressure>,
    pub(crate) wall: Length,
    /// The stress is that on the outside diameter, else that in the middle of the wall.
    pub(crate) on_outside: bool,
}

/// A vacuum in a pressure main.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Vacuum {
    /// Least and most where the file gives none.
    pub(crate) pressure: Ends<Pressure>,
    pub(crate) lasts: Time,
}
