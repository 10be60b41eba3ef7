//! Pulled pipe other than PE, what comes with a pull, and what is round the pipe after it.

use super::coefficients::{Creep, FactorPoints, SteelFactors};
use super::earth::Ends;
use super::looked_up::looked_up;
use super::service::Vacuum;
use crate::quantity::{
    Angle, Area, DynamicViscosity, Force, Length, LineLoad, MassDensity, Pressure, Ratio, ThermodynamicTemperature,
    Time, UnitWeight, VolumeRate,
};
use crate::source::{Cited, Origin};

/// A PVC pressure pipe.
#[derive(Debug, Clone)]
pub(crate) struct PvcPipe {
    pub(crate) wall: Cited<Length>,
    pub(crate) density: MassDensity,
    pub(crate) tensile: Cited<Pressure>,
    pub(crate) safety: Ratio,
    /// Wall temperature, no less than that of the first row, and the rows around it.
    pub(crate) temperature: FactorPoints,
    /// Strength of a fused joint over that of the pipe; 1 for the barrel of a jointed pipe.
    pub(crate) joint_factor: Cited<Ratio>,
    pub(crate) modulus: Pressure,
    pub(crate) creep: Creep,
    pub(crate) poisson: Ratio,
    pub(crate) ovality: Ratio,
    pub(crate) bend_ratio: Cited<Ratio>,
}

/// A pipe with restrained joints.
#[derive(Debug, Clone)]
pub(crate) struct JointedPipe {
    pub(crate) barrel: Barrel,
    pub(crate) pull: JointPull,
    /// Deflection at a joint and laying length, where they set the radius.
    pub(crate) deflection: Option<(Cited<Angle>, Length)>,
    pub(crate) weight: Option<LineLoad>,
}

/// The barrel of a jointed pipe.
#[derive(Debug, Clone)]
pub(crate) enum Barrel {
    /// PVC.
    Pvc(PvcPipe),
    /// Ductile iron: its joint governs.
    Iron(IronBarrel),
}

/// A barrel of ductile iron.
#[derive(Debug, Clone)]
pub(crate) struct IronBarrel {
    pub(crate) wall: Cited<Length>,
    /// Without lining.
    pub(crate) density: MassDensity,
    pub(crate) modulus: Pressure,
    /// What makes it heavier than its least wall.
    pub(crate) heavy: HeavyIron,
}

/// Iron pipe as it comes from the works, without its socket.
#[derive(Debug, Clone, Copy)]
pub(crate) struct HeavyIron {
    /// Nominal wall, no less than the least one.
    pub(crate) wall: Length,
    /// Thickness of the cement lining.
    pub(crate) lining: Length,
    /// Density of the lining.
    pub(crate) density: MassDensity,
}

/// What a restrained joint holds.
#[derive(Debug, Clone, Copy)]
pub(crate) enum JointPull {
    /// Its maker's rating for pulls.
    Rated(Cited<Force>),
    /// The thrust of its pressure rating.
    Thrust {
        /// Pressure rating.
        pressure: Pressure,
        /// What deflection leaves.
        deflection_factor: Ends<Ratio>,
    },
    /// Not known: of a proposed pipe.
    NotGiven,
}

/// A welded steel pipe.
#[derive(Debug, Clone)]
pub(crate) struct SteelPipe {
    pub(crate) wall: Cited<Length>,
    pub(crate) density: MassDensity,
    pub(crate) weight: Option<LineLoad>,
    pub(crate) yield_strength: Cited<Pressure>,
    pub(crate) modulus: Pressure,
    pub(crate) factors: SteelFactors,
    /// Where the bending strength leaves its first and its second line.
    pub(crate) bending_ends: (Pressure, Pressure),
    pub(crate) bend_ratio: Cited<Ratio>,
}

/// What fills the string.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Fill {
    /// Something of this density, all along; 0 for air.
    Of(MassDensity),
    /// The fluid of the bore, as high as it stands there.
    Slurry,
}

/// What the bore is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum HoleState {
    /// Full of fluid.
    Fluid,
    /// Dry and standing.
    Dry,
}

/// The string as it is laid out.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Laydown {
    pub(crate) length: Length,
    pub(crate) in_pit: bool,
    /// How long the pull stands for a joint.
    pub(crate) joint_time: Option<Cited<Time>>,
}

/// A length of bore that has fallen on the pipe.
#[derive(Debug, Clone, Copy)]
pub(crate) struct CollapsedBore {
    pub(crate) length: Length,
    pub(crate) unit_weight: UnitWeight,
    pub(crate) friction: Ratio,
    /// Greatest depth of the invert.
    pub(crate) depth: Length,
}

/// What the rig leans on while it pulls.
#[derive(Debug, Clone, Copy)]
pub(crate) struct PullReaction {
    pub(crate) area: Area,
    pub(crate) allowable: Cited<Pressure>,
}

/// A machine at the reception pit that pushes the tail of the string while it is pulled. Its grip lies between the ramp
/// and the mouth of the bore.
#[derive(Debug, Clone, Copy)]
pub(crate) struct PushAssist {
    pub(crate) force: Cited<Force>,
    /// From the grip to the mouth of the bore, at its longest.
    pub(crate) free_length: Length,
    /// Effective over free length.
    pub(crate) end_factor: Cited<Ratio>,
    /// Safety factor on buckling.
    pub(crate) safety: Cited<Ratio>,
    /// What the grip may push.
    pub(crate) grip: Option<Cited<Force>>,
}

/// Flow of the bore fluid, cuttings included.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Returns {
    pub(crate) flow: VolumeRate,
    pub(crate) plastic_viscosity: DynamicViscosity,
    pub(crate) yield_point: Pressure,
}

/// What comes with a pull beyond force and strength of PE.
#[derive(Debug, Clone, Copy)]
pub(crate) struct PullWorks {
    pub(crate) hole: HoleState,
    /// `None` where the file does not say.
    pub(crate) fill: Option<Fill>,
    pub(crate) unit_drag: Option<Pressure>,
    pub(crate) inside_pressure: Pressure,
    pub(crate) collapsed: Option<CollapsedBore>,
    pub(crate) score: Cited<Ratio>,
    /// As told, or the least that a bore leaves.
    pub(crate) score_at_best: Cited<Ratio>,
    pub(crate) head_rating: Option<Cited<Force>>,
    pub(crate) weak_link: Option<Cited<Force>>,
    pub(crate) laydown: Option<Laydown>,
    /// Where the duration comes from.
    pub(crate) duration_basis: Origin,
    /// Length of a rod of the stem, and how long the pull stands for it.
    pub(crate) rods: Option<(Length, Time)>,
    /// From the ground down to the invert at the reception pit.
    pub(crate) ramp_depth: Length,
    pub(crate) ramp_room: Option<Cited<Length>>,
    pub(crate) usual: UsualPull,
    pub(crate) reaction: Option<PullReaction>,
    pub(crate) returns: Option<Returns>,
    pub(crate) ground_temperature: Option<ThermodynamicTemperature>,
    /// Rest between the pull and the tie-in.
    pub(crate) rest: Cited<Time>,
    /// Largest strain of the pull, and of pull and bend.
    pub(crate) strain: (Cited<Ratio>, Cited<Ratio>),
}

looked_up! {
    /// The most that is usual of plant that the file does not tell.
    UsualPull: Copy of |handbook| {
        /// Length of a ramp.
        ramp: Cited<Length> = handbook.length("usual.ramp")?,
        /// Area of the plate that the rig leans on while it pulls.
        plate: Cited<Area> = handbook.length("usual.plate")?.map(|side| side * side),
        /// Share of the resistance of the ground that a plate may ask for.
        plate_safety: Ratio = handbook.thrust_wall()?.factor("safety_default", |row| &row.value)?.value,
    }
}

/// What becomes of the annulus.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Annulus {
    /// The file says that it stays open.
    pub(crate) open: bool,
    pub(crate) grouted: bool,
    /// Height of spacers, 0 without.
    pub(crate) spacer: Length,
    /// Where the annulus is grouted: the lightest and gentlest grout that there is, and the heaviest.
    pub(crate) grout: Option<Ends<Grout>>,
    /// Whether the file tells it.
    pub(crate) grout_told: bool,
    /// Of what fills the pipe while it is grouted; 0 where that is nothing.
    pub(crate) ballast: MassDensity,
    pub(crate) grout_waste: Option<Ratio>,
    pub(crate) proved: bool,
    pub(crate) soil_modulus: Option<Pressure>,
}

/// Liquid grout.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Grout {
    pub(crate) density: MassDensity,
    pub(crate) pressure: Pressure,
    pub(crate) sets_in: Time,
}

looked_up! {
    /// What a pipe has to bear in service.
    InService: Copy of |handbook, told: Option<Cited<Pressure>>, surges: [Option<Pressure>; 2], emptied: Option<Vacuum>| {
        /// Greatest pressure that a main has to carry, where the file tells it.
        pressure: Option<Cited<Pressure>> = told,
        /// Recurring and occasional surge over it, where the file tells them.
        surge: [Option<Pressure>; 2] = surges,
        /// Of a pressure main.
        vacuum: Option<Vacuum> = emptied,
        /// Factor on collapse.
        collapse_factor: Cited<Ratio> = handbook.ratio("collapse.safety")?,
        ovality: Cited<Ratio> = handbook.ovality()?.value("long_term")?,
        /// The same under a load of hours.
        ovality_at_first: Ratio = handbook.ratio("collapse.ovality")?.value,
        unsupported: Cited<Ratio> = handbook.collapse_support()?.value("none")?,
        supported: Cited<Ratio> = handbook.collapse_support()?.value("close_fit")?,
        /// Design factor on buckling where soil holds the ring: below a shallow and below a deep cover.
        in_soil: (Ratio, Ratio) = (
            handbook.collapse_support()?.value("buckling_shallow")?.value,
            handbook.collapse_support()?.value("buckling_deep")?.value,
        ),
        bedding: Ratio = handbook.deflection_factor()?.value("bedding_most")?.value,
        /// Lag under a load below the whole column, and under the whole.
        lag: (Ratio, Ratio) = (
            handbook.deflection_factor()?.value("lag")?.value,
            handbook.deflection_factor()?.value("lag_prism")?.value,
        ),
    }
}
