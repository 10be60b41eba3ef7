//! A pipe to choose from.

use super::capacity::{Capacity, EndArea, FreeLength, Joint};
use super::ground::{BoreState, OpenRound, Stretch};
use super::looked_up::readable;
use super::pace::Priced;
use super::plant::Casing;
use super::pulled::{Barrel, HeavyIron, IronBarrel, JointedPipe, PvcPipe, SteelPipe};
use crate::handbook::{Family, GroundHazard, Method, Rating};
use crate::quantity::{Force, Length, LineLoad, MassDensity, Pressure, Ratio, ThermodynamicTemperature, Time};
use crate::source::{Cited, Equation, Origin};
use std::sync::Arc;

/// Published range of a method, of the row whose diameters hold the pipe or come nearest to it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct PublishedRange {
    pub(crate) length: Cited<Length>,
    /// Smallest and largest outside diameter.
    pub(crate) diameters: (Option<Length>, Option<Length>),
}

/// Where the way that soil is taken for granted to leave does not do and the file tells none.
pub(crate) const UNTOLD_SPOIL: Equation = Equation::judged(
    "how the soil is removed, not told",
    "not decided",
    "some ways to remove the soil do not work in this ground, others may",
    "jobs that tell no `spoil`",
);

/// A drilled pilot in ground of which no table rates one: fluid holds its bore, as it does that of a pulled pipe.
pub(crate) const PILOT_IN_FLUID: Equation = Equation::judged(
    "ground suitability of a drilled pilot held by fluid",
    "as for a pulled pipe, marginal at best",
    "ground in which no table rates a drilled pilot; soil cleared by an auger, a slurry machine or an open edge behind it",
    "pilots drilled with fluid",
);

/// Said where only a drilled pilot would do, and the file does not say which it is.
pub(crate) const UNTOLD_PILOT: Equation = Equation::judged(
    "pilot that is not told",
    "not decided",
    "ground that no pilot can be pushed through, and nothing says that it is drilled, or that an auger goes without one",
    "a pilot that the file tells",
);

/// Said of a pilot that is to be pushed through ground that was grouted.
pub(crate) const PUSHED_THROUGH_GROUT: Equation = Equation::judged(
    "pilot pushed through grouted ground",
    "not done",
    "what grout has bound is not displaced: it is drilled or cut",
    "ground that is grouted before the bore",
);

/// Said of a sewer in peat.
pub(crate) const SEWER_IN_PEAT: Equation = Equation::judged(
    "gravity sewer in peat",
    "not done",
    "peat bears nothing and settles for years: the line is lost, whatever puts it in",
    "peat in the face",
);

/// Said where an auger is to follow a drilled pilot through rock that it does not cut.
pub(crate) const UNCUT_ROCK: Equation = Equation::judged(
    "what cuts and clears the bore behind a drilled pilot",
    "not decided",
    "rock that no auger cuts, and nothing says what does",
    "a bore that is cleared by other means",
);

/// Ratings of the ground by method, of its worst stretch.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Rated {
    pub(crate) jacking: Cited<Rating>,
    pub(crate) pullback: Cited<Rating>,
    /// The ground runs or flows into the open stem of the pilot before a jacked pipe.
    pub(crate) runs_in: bool,
    /// The largest stone that pilot and head take, and a larger one that the file tells, where that bars.
    pub(crate) stones: Option<super::earth::Ends<Length>>,
    /// The same of the reamer of a pulled one.
    pub(crate) pullback_stones: Option<super::earth::Ends<Length>>,
    /// What says that the ground stops the pilot that is pushed before a pulled pipe, where it does.
    pub(crate) pilot_stops: Option<Origin>,
    /// Fill of which the file does not tell what obstructs it.
    pub(crate) fill: bool,
    /// Whether a slurry machine may go through it.
    pub(crate) by_machine: bool,
    /// Artesian water that nothing is told to bring down.
    pub(crate) rises: bool,
    /// A hazard that something can be done about.
    pub(crate) hazard: Option<GroundHazard>,
    /// What the file leaves out on which the ratings hang, of a jacked and of a pulled pipe.
    pub(crate) hangs_on: [HangsOn; 2],
}

/// The one way that has the fields named so far and those of what a rating hangs on, in the order they are asked for.
macro_rules! all_of {
    ($told:ident [$($field:literal),*]) => {
        all_of!(
            $told [$($field),*] count "ground[].spt_n" stone "ground[].largest_stone" treatment "ground[].treatment"
            hazards "ground[].hazards"
        )
    };
    ($told:ident [$($field:literal),*] $last:ident $its:literal) => {
        if $told.$last { &[&[$($field,)* $its]] } else { &[&[$($field),*]] }
    };
    ($told:ident [$($field:literal),*] $next:ident $its:literal $($more:tt)+) => {
        if $told.$next { all_of!($told [$($field,)* $its] $($more)+) } else { all_of!($told [$($field),*] $($more)+) }
    };
}

type Ways = &'static [&'static [&'static str]];

/// What a rating may hang on where the file does not tell it.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(crate) struct HangsOn {
    pub(crate) hazards: bool,
    pub(crate) treatment: bool,
    pub(crate) count: bool,
    pub(crate) stone: bool,
}

impl HangsOn {
    /// Either of two.
    pub(crate) const fn or(self, other: Self) -> Self {
        Self {
            hazards: self.hazards || other.hazards,
            treatment: self.treatment || other.treatment,
            count: self.count || other.count,
            stone: self.stone || other.stone,
        }
    }

    /// The same with how the soil is removed; in fill by all that it is rated by.
    pub(crate) const fn with_spoil(self) -> Ways {
        let Self { hazards, count, stone, .. } = self;
        let told = Self { count: count || hazards, stone: stone || hazards, treatment: false, ..self };
        all_of!(told["spoil"])
    }

    /// The fields that tell it, all of them together; none where it hangs on none.
    pub(crate) const fn ways(self) -> Option<Ways> {
        match (self.hazards, self.treatment || self.count || self.stone) {
            (false, false) => None,
            (true, false) => Some(&[&["ground[].hazards"], &["ground[].class"]]),
            _ => Some(all_of!(self [])),
        }
    }
}

/// A pipe to choose from.
#[derive(Debug, Clone)]
pub struct Pipe {
    pub(crate) label: String,
    pub(crate) family: Family,
    pub(crate) outside_diameter: Cited<Length>,
    /// Nominal size: the inside diameter of a rigid pipe.
    pub(crate) nominal: Length,
    /// Length of one pipe that is pushed, where it is given.
    pub(crate) segment: Option<Length>,
    /// What it is when it is jacked; none where it cannot be.
    pub(crate) jacked: Option<JackedPipe>,
    /// What it is when it is pulled; none where it cannot be.
    pub(crate) pulled: Option<PulledPipe>,
    pub(crate) casing: Option<Casing>,
    /// How the bore stands round it where it is pushed, or pulled into an empty bore, stretch by stretch; empty where none does.
    pub(crate) open: Vec<OpenRound>,
    /// Bores of the reaming passes before the one that brings the pipe.
    pub(crate) passes: Vec<Length>,
    pub(crate) bore: Cited<Length>,
    /// Diameter of the widest part that has to go through the bore: the pipe, or its joint.
    pub(crate) widest: Cited<Length>,
    pub(crate) bore_rule: Cited<Length>,
    pub(crate) jacking_range: Option<PublishedRange>,
    pub(crate) pullback_range: Option<PublishedRange>,
    /// What it is as a sewer; none for another service.
    pub(crate) sewer: Option<super::site::Sewer>,
    /// What it bears in service, where its crushing strength is known or usual: with the least load and the most strength,
    /// and the other way round.
    pub(crate) service: Option<Box<super::earth::Ends<super::service::PipeInService>>>,
    /// What a flexible pipe meets in service.
    pub(crate) ring: Option<Box<super::service::RingInService>>,
    /// What it may carry as a pressure main; none for another service.
    pub(crate) carries: Option<Box<super::service::Carries>>,
    /// How the ground suits it.
    pub(crate) ground: Option<Rated>,
    /// Price per metre, in the user's money, where the file gives it.
    pub(crate) price: Option<Priced<Length>>,
    /// What only the pipe maker knows and nobody has said, of a pipe that is proposed.
    pub(crate) not_given: Vec<super::proposed::NotGiven>,
    /// Whether a value that the file gives of it is beyond what is usual.
    pub(crate) is_unusual: bool,
    /// Rows that bar the pipe: from one method, or from the service and so from both.
    pub(crate) excluded: Vec<(Option<Method>, Origin)>,
    /// Paths of all that the file tells of the drive, and of this pipe.
    pub(crate) told: [Arc<[&'static str]>; 2],
}

readable! {
    Pipe:
    /// As printed, for example `PE100 315 mm SDR 11`.
    label: &str = |it| &it.label;
    /// Outside diameter.
    outside_diameter: Length = |it| it.outside_diameter.value;
    /// Family of the material.
    family: Family = |it| it.family;
}

impl Pipe {
    /// Whether the file tells what stands at a path, for what it is asked for.
    pub(crate) fn is_told(&self, path: &str) -> bool {
        let told = |path: &str| self.told.iter().any(|paths| paths.contains(&path));
        match path {
            // Its strength alone tells nothing of its weight.
            "ground[].soil" => told("ground[].soil.moist") && told("ground[].soil.friction_angle"),
            path => told(path),
        }
    }

    /// Diameter that the head before a jacked pipe cuts. The bore rule is for what is pulled.
    pub(crate) fn cut(&self) -> Length {
        if self.bore.origin == self.bore_rule.origin { self.outside_diameter.value } else { self.bore.value }
    }

    /// Whether its joints may be wider than the pipe, and the file tells nothing of them.
    pub(crate) fn has_sockets_untold(&self) -> bool {
        self.family == Family::DuctileIron && self.widest.origin == self.outside_diameter.origin
    }

    /// Inside diameter of a pipe that is pushed; its size, where that is not known.
    pub(crate) fn inside(&self) -> Length {
        self.jacked.as_ref().and_then(|jacked| jacked.inside_diameter).unwrap_or(self.nominal)
    }

    /// Whether the file tells the bore.
    pub(crate) const fn bore_is_told(&self) -> bool {
        self.bore.is_given()
    }

    /// Height of the bore by which the water is judged: its own, or that of a casing before it.
    pub(crate) fn height(&self) -> Length {
        let own = self.outside_diameter.value;
        self.casing_diameter().map_or(own, |casing| casing.max(own))
    }

    /// Outside diameter of the casing before it.
    pub(crate) fn casing_diameter(&self) -> Option<Length> {
        self.casing.as_ref().map(|casing| casing.outside_diameter)
    }

    /// Wall of a pipe that is pushed, where its bore is known.
    pub(crate) fn pushed_wall(&self) -> Option<Length> {
        let inside = self.jacked.as_ref()?.inside_diameter?;
        Some((self.outside_diameter.value - inside) / 2.0)
    }

    /// Yield strength of a steel pipe.
    pub(crate) fn yield_strength(&self) -> Option<Pressure> {
        match (&self.pulled, self.jacked.as_ref().map(|jacked| &jacked.capacity)) {
            (Some(PulledPipe::Steel(steel)), _) => Some(steel.yield_strength.value),
            (None, Some(Capacity::Steel(end))) => Some(end.yield_strength.value),
            _ => None,
        }
    }

    /// Rows of the table `exclusion` that bar the pipe from a method.
    pub(crate) fn bars(&self, method: Method) -> impl Iterator<Item = Origin> {
        let bars = move |bar: &&(Option<Method>, Origin)| bar.0.is_none_or(|barred| barred == method);
        self.excluded.iter().filter(bars).map(|bar| bar.1)
    }

    /// Whether what nothing tells, the overcut or the ground, decides on how the bore stands.
    pub(crate) fn hangs_on_bore(&self) -> bool {
        self.open.iter().any(OpenRound::hangs)
    }

    /// How the bore stands round it in a stretch where it is pushed or goes into an empty bore, on the safe side.
    pub(crate) fn bore_in(&self, stretch: &Stretch) -> Option<BoreState> {
        self.open.get(stretch.index)?.safe.map(|(state, _)| state)
    }

    /// Weight of a jacked pipe per length, where it is known.
    pub(crate) fn jacked_weight(&self) -> Option<LineLoad> {
        self.jacked.as_ref()?.weight.map(|weight| weight.value)
    }
}

/// A pipe with ends to push on.
#[derive(Debug, Clone)]
pub(crate) struct JackedPipe {
    pub(crate) end_area: EndArea,
    /// Weight per length, where it is known.
    pub(crate) weight: Option<Cited<LineLoad>>,
    pub(crate) joint: Joint,
    pub(crate) capacity: Capacity,
    /// True inside diameter, where it is known.
    pub(crate) inside_diameter: Option<Length>,
    /// Greatest force that the pipe maker allows, beside our own limit and never in it.
    pub(crate) rated_force: Option<Cited<Force>>,
    /// What makers usually allow on the end of such a pipe.
    pub(crate) usual_end: Option<Cited<Force>>,
    /// The length that nothing holds.
    pub(crate) free: FreeLength,
    /// Least wall under a railway, of steel and where a table has one.
    pub(crate) railway_wall: Option<Cited<Length>>,
    /// Least wall anywhere, of steel that is no small pipe.
    pub(crate) least_wall: Option<Cited<Length>>,
}

/// A pipe with joints that carry pull; boxed, since its tables are much larger than the rest.
#[derive(Debug, Clone)]
pub(crate) enum PulledPipe {
    /// Polyethylene.
    Pe(Box<PePipe>),
    /// PVC, butt-fused.
    Pvc(Box<PvcPipe>),
    /// With restrained joints.
    Jointed(Box<JointedPipe>),
    /// Steel, welded.
    Steel(Box<SteelPipe>),
}

/// What the barrel of a pulled pipe is made of, whatever joins it.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Made<'a> {
    Pe(&'a PePipe),
    Pvc(&'a PvcPipe),
    Iron(&'a IronBarrel),
    Steel(&'a SteelPipe),
}

impl PulledPipe {
    /// What its barrel is made of.
    pub(crate) fn made(&self) -> Made<'_> {
        match self {
            Self::Pe(pe) => Made::Pe(pe),
            Self::Pvc(pvc) => Made::Pvc(pvc),
            Self::Jointed(jointed) => match &jointed.barrel {
                Barrel::Pvc(pvc) => Made::Pvc(pvc),
                Barrel::Iron(iron) => Made::Iron(iron),
            },
            Self::Steel(steel) => Made::Steel(steel),
        }
    }

    /// The least wall.
    pub(crate) fn wall(&self) -> Length {
        match self.made() {
            Made::Pe(pe) => pe.wall,
            Made::Pvc(pvc) => pvc.wall,
            Made::Iron(iron) => iron.wall,
            Made::Steel(steel) => steel.wall,
        }
        .value
    }

    /// Density of the material.
    pub(crate) fn density(&self) -> MassDensity {
        match self.made() {
            Made::Pe(pe) => pe.density,
            Made::Pvc(pvc) => pvc.density,
            Made::Iron(iron) => iron.density,
            Made::Steel(steel) => steel.density,
        }
    }

    /// Weight per length of the empty pipe, where the file gives it.
    pub(crate) fn weight(&self) -> Option<LineLoad> {
        match self {
            Self::Pe(_) | Self::Pvc(_) => None,
            Self::Jointed(jointed) => jointed.weight,
            Self::Steel(steel) => steel.weight,
        }
    }

    /// What makes a pipe of iron heavier than its least wall, where the file does not give its weight.
    pub(crate) fn heavy_iron(&self) -> Option<HeavyIron> {
        match (self.made(), self.weight()) {
            (Made::Iron(iron), None) => Some(iron.heavy),
            _ => None,
        }
    }

    /// Whether it is of plastic: lighter than any bore fluid when it is empty, and soft enough to be scored.
    pub(crate) fn is_plastic(&self) -> bool {
        matches!(self.made(), Made::Pe(_) | Made::Pvc(_))
    }
}

/// A PE pipe.
#[derive(Debug, Clone)]
pub(crate) struct PePipe {
    pub(crate) wall: Cited<Length>,
    pub(crate) density: MassDensity,
    pub(crate) ovality: Ratio,
    pub(crate) stresses: Vec<StressSource>,
    pub(crate) upper_temperature: (ThermodynamicTemperature, Ratio),
    pub(crate) weld_factor: Cited<Ratio>,
    /// As told, or that of welds that are documented.
    pub(crate) weld_at_best: Ratio,
    pub(crate) soft: ModulusPoints,
    pub(crate) stiff: ModulusPoints,
    /// Soft moduli for other times.
    pub(crate) times: PeTimes,
}

/// Moduli of PE for the times after the pull.
#[derive(Debug, Clone, Copy)]
pub(crate) struct PeTimes {
    /// While the pipe is pulled, soft.
    pub(crate) pull: ModulusPoints,
    /// Half an hour, for what springs back at once, stiff.
    pub(crate) at_once: ModulusPoints,
    /// From the start of the pull to the end of the rest after it.
    pub(crate) whole: ModulusPoints,
    /// The rest itself.
    pub(crate) rest: ModulusPoints,
    /// While the grout is liquid: as short and as long as that may be.
    pub(crate) grout: Option<super::earth::Ends<ModulusPoints>>,
    /// While a vacuum lasts.
    pub(crate) vacuum: Option<ModulusPoints>,
    /// The longest time of the table, at its reference temperature.
    pub(crate) long: (Time, Pressure),
}

/// One table's pull stress for the duration of the pull, before temperature.
#[derive(Debug, Clone, Copy)]
pub(crate) struct StressSource {
    pub(crate) stress: Pressure,
    pub(crate) yield_design_factor: Option<Ratio>,
    /// False for an edition that was not asked for, kept to say when it is tighter.
    pub(crate) chosen: bool,
    pub(crate) duration_factor: Ratio,
    pub(crate) longest: Time,
    pub(crate) reference: ThermodynamicTemperature,
    pub(crate) origin: Origin,
}

/// Tabulated moduli around the duration, and multipliers around the temperature.
#[derive(Debug, Clone, Copy)]
pub(crate) struct ModulusPoints {
    pub(crate) before: (Time, Pressure),
    pub(crate) after: (Time, Pressure),
    pub(crate) below: (ThermodynamicTemperature, Ratio),
    pub(crate) above: (ThermodynamicTemperature, Ratio),
}
