//! The ground along the drive.

use super::earth::{Column, Earth};
use super::looked_up::readable;
use super::water::{Sides, Water, Way};
use crate::handbook::{GroundClass, Method, TipModel, Treatment};
use crate::quantity::{Band, Length, LineLoad, Pressure, Ratio};
use crate::source::{Equation, labelled};

/// Said where the friction of a class is not in the tables; the band of unknown ground stands in, and decides nothing.
pub(crate) const NO_BAND: Equation = Equation::judged(
    "unit friction by ground class",
    "band of unknown ground in place of one that no source gives",
    "ground without a friction band",
    "ground that the friction bands name, or unit_friction given in the file",
);
/// The same for blow counts.
pub(crate) const NO_COUNT: Equation = Equation::judged(
    "blow counts by ground class",
    "counts of unknown ground in place of those that no source gives",
    "ground without a class row",
    "ground that the class table names, or spt_n given in the file",
);

/// A stretch of like ground.
#[derive(Debug, Clone)]
pub struct Stretch {
    /// Its place among the stretches of the drive.
    pub(crate) index: usize,
    pub(crate) from: Length,
    pub(crate) to: Length,
    pub(crate) way: Way,
    pub(crate) class: GroundClass,
    /// The other ground of a mixed face.
    pub(crate) mixed_with: Option<GroundClass>,
    /// The user's own friction.
    pub(crate) friction_given: bool,
    /// The file says that a drilled bore stands.
    pub(crate) told_to_stand: bool,
    /// Of stem and casing.
    pub(crate) stem_friction: Sides<Band<Pressure>>,
    /// Of a jacked pipe.
    pub(crate) pipe_friction: Sides<Band<Pressure>>,
    /// What a drilled pilot meets, where the pilot is drilled or may be.
    pub(crate) drilled: Option<Drilled>,
    /// What the pilot tip meets.
    pub(crate) tip: Tip,
    /// And in the other ground of a mixed face.
    pub(crate) other_tip: Option<Tip>,
    /// Where no source tells the friction or the blow counts of the class.
    pub(crate) doubt: Option<&'static Equation>,
    /// What keeps that water from the face, by the word of the file.
    pub(crate) treatment: Option<Treatment>,
    /// Boxed, so that what every assessment walks over stays small.
    pub(crate) earth: Box<Earth>,
}

/// What moves in the bore and rubs on the ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Rubbed<'a> {
    /// The pilot stem.
    Stem {
        /// Fluid may hold the bore of a pull.
        method: Method,
        /// How the bore stands round it is taken at its best.
        at_best: bool,
    },
    /// A casing.
    Casing,
    /// A jacked pipe, with how the bore stands round it, and whether that is taken at its best.
    Pipe(&'a [OpenRound], bool),
}

/// What a drilled pilot meets in a stretch.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Drilled {
    /// False where no pilot is told: one that is pushed on the safe side, and this at best.
    pub(crate) is_certain: bool,
    /// Thrust on the bit over its diameter.
    pub(crate) bit: Band<LineLoad>,
    /// How the bore stands round the stem by itself.
    pub(crate) open: OpenRound,
    /// The same where the fluid of a pull stands in it.
    pub(crate) in_fluid: OpenRound,
}

impl Drilled {
    /// How the bore stands round the stem: the fluid of a pull does not stand in the bore of a pipe that is pushed.
    const fn round(&self, method: Method) -> &OpenRound {
        match method {
            Method::PipeJacking => &self.open,
            Method::Pullback => &self.in_fluid,
        }
    }
}

/// How the bore of a drilled pilot stands round the stem in it or a pipe pushed behind it, and the friction by that; none
/// where it lies on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct OpenRound {
    /// With the least strength of what is not told, and the least overcut that is usual.
    pub(crate) safe: Option<(BoreState, Band<Pressure>)>,
    /// With the most of both.
    pub(crate) best: Option<(BoreState, Band<Pressure>)>,
    /// Pressure in the lubricant that keeps clay off it; none where no clay closes by itself.
    pub(crate) kept_off: Option<Band<Pressure>>,
}

impl OpenRound {
    /// Whether it stands, on the safe side.
    pub(crate) fn stands(&self) -> bool {
        self.safe.is_some_and(|(state, _)| state != BoreState::Closed)
    }

    /// Whether it hangs on what the file does not tell.
    pub(crate) fn hangs(&self) -> bool {
        self.safe != self.best
    }

    /// With other friction.
    pub(crate) fn map(self, change: impl Fn(Band<Pressure>) -> Band<Pressure>) -> Self {
        let change = |(state, friction)| (state, change(friction));
        Self { safe: self.safe.map(change), best: self.best.map(change), ..self }
    }

    /// On the safe side, or at best.
    pub(crate) fn state(&self, at_best: bool) -> Option<&(BoreState, Band<Pressure>)> {
        self.best.as_ref().filter(|_| at_best).or(self.safe.as_ref())
    }
}

labelled! {
    /// How a drilled bore stands round what is in it.
    #[derive(Debug, Clone, Copy, PartialEq, Eq)]
    pub enum BoreState {
        /// It stands for as long as it is needed: rock, stiff clay.
        Stands = "stands open",
        /// It stands, and may close on a part of its length before the work is done.
        Partly = "stands open, and may close on a part of its length",
        /// Fluid holds it.
        Held = "held open by fluid",
        /// Clay closes on what is in it, at its best too.
        Closed = "closes on it",
    }
}

/// What resists a pilot tip.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tip {
    pub(crate) model: TipModel,
    pub(crate) blows: Band<Ratio>,
    /// Undrained strength of the clay, where the file gives it.
    pub(crate) strength: Option<Pressure>,
}

impl Tip {
    /// Whether its blow counts are no single number.
    pub(crate) fn hangs(self) -> bool {
        self.blows.low < self.blows.high
    }

    /// With the least of its blow counts.
    pub(crate) fn at_best(self) -> Self {
        Self { blows: Band::same(self.blows.low), ..self }
    }
}

readable! {
    Stretch:
    /// Where it begins and ends, from the launch pit.
    extent: (Length, Length) = |it| (it.from, it.to);
    /// Class.
    class: GroundClass = |it| it.class;
    /// The other ground of a mixed face.
    mixed_with: Option<GroundClass> = |it| it.mixed_with;
}

impl Stretch {
    /// Whether the invert is nowhere nearer to the surface than here: under the bed of a stream.
    pub(crate) fn is_shallowest(&self, least: Length) -> bool {
        self.way.shallowest <= least
    }

    /// Whether all of the face is such ground.
    pub(crate) fn is_all(&self, such: impl Fn(GroundClass) -> bool) -> bool {
        such(self.class) && self.mixed_with.is_none_or(such)
    }

    /// Whether some of the face is such ground.
    pub(crate) fn has(&self, such: impl Fn(GroundClass) -> bool) -> bool {
        such(self.class) || self.mixed_with.is_some_and(such)
    }

    /// Water that stands against an open face: none where the ground is treated.
    pub(crate) fn head_at_face(&self) -> Length {
        if self.treatment.is_some() { Length::default() } else { self.way.head() }
    }

    /// Blow counts of the harder ground of the face.
    pub(crate) fn worst_blows(&self) -> Band<Ratio> {
        self.other_tip.map_or(self.tip.blows, |other| self.tip.blows.with(other.blows, Ratio::max))
    }

    /// How the bore stands open round the stem of a drilled pilot, on the safe side, and the friction on the stem; none
    /// where it does not.
    #[must_use]
    pub fn open(&self, method: Method) -> Option<(BoreState, Band<Pressure>)> {
        self.drilled.as_ref().and_then(|drilled| drilled.round(method).safe)
    }

    /// Whether what the file does not tell decides on how the bore stands round the stem.
    pub(crate) fn stem_may_lie_open(&self, method: Method) -> bool {
        self.drilled.as_ref().is_some_and(|drilled| drilled.round(method).hangs())
    }

    /// Whether the resistance of a pilot tip hangs on blow counts that nobody tells.
    pub(crate) fn tip_hangs(&self) -> bool {
        self.drilled(false).is_none() && self.tip.hangs()
    }

    /// What the pilot meets where it is drilled, or, at best, may be.
    pub(crate) fn drilled(&self, at_best: bool) -> Option<&Drilled> {
        self.drilled.as_ref().filter(|drilled| drilled.is_certain || at_best)
    }

    /// Whether a drilled pilot would leave a bore that stands, and nobody tells that it is one.
    pub(crate) fn hangs_on_pilot(&self) -> bool {
        self.drilled.as_ref().is_some_and(|drilled| !drilled.is_certain && drilled.open.best.is_some())
    }

    /// The soil over it as the file tells it, with its water.
    pub(crate) fn told(&self) -> Option<Column<'_>> {
        self.earth.told.then(|| self.heavy())
    }

    /// The soil over it as a load, with its water: as heavy as it may be.
    pub(crate) fn heavy(&self) -> Column<'_> {
        Column { soil: &self.earth.heavy, table: self.way.table }
    }

    /// The soil over it as a resistance, with its water: as light as it may be.
    pub(crate) fn light(&self) -> Column<'_> {
        Column { soil: &self.earth.light, table: self.way.table }
    }

    /// Unit friction where the water stands so.
    #[inline]
    pub(crate) fn friction(&self, rubbed: Rubbed<'_>, water: Water) -> Band<Pressure> {
        let dry = self.stem_friction.of(water);
        match rubbed {
            Rubbed::Stem { method, at_best } => {
                let open = self.drilled.as_ref().and_then(|drilled| drilled.round(method).state(at_best));
                open.map_or(dry, |(_, friction)| *friction)
            }
            Rubbed::Casing => dry,
            Rubbed::Pipe(round, at_best) => {
                let closed = self.pipe_friction.of(water);
                match round.get(self.index).and_then(|round| round.state(at_best)) {
                    // Nothing slides between clay and pipe where it has closed, whatever is pumped in.
                    Some((BoreState::Closed, clings)) => closed.with(dry, Pressure::max).with(*clings, Pressure::max),
                    // A bore that stands leaves no more on the pipe than one that is closed on it.
                    Some((_, open)) => open.with(closed, Pressure::min),
                    None => closed,
                }
            }
        }
    }

    /// Unit friction of a jacked pipe, the worse of both sides where the water crosses, and whether it is the user's own.
    pub const fn pipe_friction(&self) -> (Band<Pressure>, bool) {
        (self.pipe_friction.worse, self.friction_given)
    }
}
