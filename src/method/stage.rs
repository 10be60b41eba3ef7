//! A stage is who is in the bore and what moves. The force at an advance x of the body behind is
//!
//! `F(x) = friction of the body behind over 0..x + friction of the body ahead over x..L + weights on grade + face`
//!
//! so a stage that pushes a string out of the bore starts with the full friction of that string, not from zero.
//! Unit friction is constant in a stretch on either side of the water, so F is linear between the ends of stretches, the
//! places where the water is met and the stops, and its peak is at one of them: the profile is exact there. After a stop the high friction is raised until things move again.

use super::front::{head, tips};
use crate::drive::{Drive, Pipe, Stretch};
use crate::law::{Calc, Doubted, Law, Recorder};
use crate::laws::thrust::{FrictionForce, SignedWeightAlongGrade, WeightAlongGrade};
use crate::quantity::{Angle, Band, Force, Length, LineLoad, Ratio};

/// What may be in the bore.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Body {
    /// The pilot stem.
    Stem,
    /// A temporary steel casing.
    Casing,
    /// The product pipe.
    Pipe,
}

/// Who is in the bore and what moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stage {
    /// What was in the bore before and is driven out, or leads back.
    pub ahead: Option<Body>,
    /// What comes in.
    pub behind: Body,
    /// True when it is pulled back from the launch pit, false when it is pushed from there.
    pub pulls: bool,
    /// True when what is pulled is pushed at its tail as well, from the reception pit.
    pub assisted: bool,
}

impl Stage {
    /// The pilot stem is pushed.
    pub const STEM: Self = Self { ahead: None, behind: Body::Stem, pulls: false, assisted: false };
    /// A casing pushes the stem out.
    pub const CASING: Self = Self { ahead: Some(Body::Stem), behind: Body::Casing, pulls: false, assisted: false };
    /// The pipe pushes the stem out.
    pub const PIPE_AFTER_STEM: Self =
        Self { ahead: Some(Body::Stem), behind: Body::Pipe, pulls: false, assisted: false };
    /// The pipe pushes the casing out.
    pub const PIPE_AFTER_CASING: Self =
        Self { ahead: Some(Body::Casing), behind: Body::Pipe, pulls: false, assisted: false };
    /// The stem pulls a reamer back, and more stem behind it for the next pass.
    pub const REAMING: Self = Self { ahead: Some(Body::Stem), behind: Body::Stem, pulls: true, assisted: false };
    /// The stem pulls reamer and pipe back.
    pub const PULLBACK: Self = Self { ahead: Some(Body::Stem), behind: Body::Pipe, pulls: true, assisted: false };
    /// The stem pulls reamer and pipe back, and a machine at the reception pit pushes the tail of the pipe.
    pub const PUSH_ASSIST: Self = Self { assisted: true, ..Self::PULLBACK };

    /// Title of its working.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match (self.behind, self.ahead, self.pulls) {
            (Body::Stem, _, true) => "reamer pulled back by the stem, stem behind it",
            (Body::Stem, ..) => "pilot stem pushed",
            (Body::Casing, ..) => "casing pushed behind the stem",
            (_, _, true) if self.assisted => "reamer and pipe pulled back, tail of the pipe pushed",
            (_, _, true) => "reamer and pipe pulled back by the stem",
            (_, Some(Body::Casing), _) => "pipe pushes the casing out",
            _ => "pipe pushed behind the stem",
        }
    }
}

/// Outside diameter, unit friction and weight of a body; a bore without a stem has a stem of no diameter.
#[derive(Clone, Copy)]
struct Outside {
    diameter: Length,
    /// A pipe has the friction of a pipe, steel that of steel.
    is_pipe: bool,
    weight: Option<LineLoad>,
    /// Height of the bore that the pipe comes to lie in, by which the water is judged.
    bore: Length,
}

fn outside(drive: &Drive, pipe: &Pipe, body: Body) -> Outside {
    let of_pipe = pipe.outside_diameter.value;
    let bore = pipe.height();
    match body {
        Body::Stem => {
            let diameter = drive.stem.outside_diameter.value;
            Outside { diameter, is_pipe: false, weight: drive.stem.weight, bore }
        }
        Body::Casing => Outside {
            diameter: pipe.casing_diameter().unwrap_or(pipe.outside_diameter.value),
            is_pipe: false,
            bore,
            weight: pipe.casing.as_ref().and_then(|casing| casing.tube.as_deref()).map(|tube| tube.weight),
        },
        Body::Pipe => Outside { diameter: of_pipe, is_pipe: true, weight: pipe.jacked_weight(), bore },
    }
}

impl Outside {
    /// Over a part of a stretch with the water on one side, told in either direction.
    fn laws(self, stretch: &Stretch, (from, to): (Length, Length)) -> Band<FrictionForce> {
        let length = (to - from).abs();
        stretch.friction_at(self.is_pipe, (from + to) / 2.0, self.bore).map(|unit_friction| FrictionForce {
            unit_friction,
            outside_diameter: self.diameter,
            length,
        })
    }

    /// Weight of the whole body along the grade over the length: a part of the body has a part of it.
    fn uphill<R: Recorder>(self, calc: &mut Calc<R>, drive: &Drive) -> Band<LineLoad> {
        let length = drive.length.value;
        along_grade(calc, self.weight, length, drive.grade.value).map(|weight| weight / length)
    }
}

/// Weight along the grade where it works against the movement; downhill it helps at the low level alone.
pub(super) fn along_grade<R: Recorder>(
    calc: &mut Calc<R>,
    weight: Option<LineLoad>,
    length: Length,
    rise: Angle,
) -> Band<Force> {
    let Some(pipe_weight) = weight else { return Band::default() };
    let against = calc.law(WeightAlongGrade { pipe_weight, length, rise });
    let low =
        if rise < Angle::default() { calc.law(SignedWeightAlongGrade { pipe_weight, length, rise }) } else { against };
    Band { low, likely: against, high: against }
}

/// A sum that help has been taken off, at the low level, is no pull.
fn no_less_than_nothing(force: Band<Force>) -> Band<Force> {
    Band { low: force.low.max(Force::default()), ..force }
}

fn sum(a: Band<Force>, b: Band<Force>) -> Band<Force> {
    a.with(b, |a, b| a + b)
}

pub(super) fn peak(a: Band<Force>, b: Band<Force>) -> Band<Force> {
    a.with(b, Force::max)
}

/// Friction after a stop: the high level raised.
fn restarted(friction: Band<Force>, factor: Ratio) -> Band<Force> {
    Band { high: friction.high * factor, ..friction }
}

/// Friction of a whole body over the whole drive.
pub(super) fn whole_friction<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, body: Body) -> Band<Force> {
    let outside = outside(drive, pipe, body);
    let mut total = Band::<Force>::default();
    for stretch in &drive.stretches {
        for part in stretch.way.parts(outside.bore, stretch.from, stretch.to) {
            total = sum(total, outside.laws(stretch, part).map(|law| calc.law(law)));
        }
    }
    total
}

/// Friction of the stem from the launch pit to a distance, unrecorded.
pub(super) fn stem_friction_to(drive: &Drive, pipe: &Pipe, to: Length) -> Band<Force> {
    let stem = outside(drive, pipe, Body::Stem);
    let mut total = Band::<Force>::default();
    for stretch in drive.stretches.iter().filter(|stretch| stretch.from < to) {
        for part in stretch.way.parts(stem.bore, stretch.from, stretch.to.min(to)) {
            total = sum(total, again(stem, stretch, part));
        }
    }
    total
}

/// Friction of a body over a part of a stretch, again; its record was kept by [`whole_friction`].
fn again(outside: Outside, stretch: &Stretch, part: (Length, Length)) -> Band<Force> {
    outside.laws(stretch, part).map(|law| law.value())
}

/// The planned stops after the beginning of a stretch, up to its end.
fn stops_in(stops: &[Length], from: Length, to: Length) -> &[Length] {
    let first = stops.partition_point(|stop| *stop <= from);
    let last = stops.partition_point(|stop| *stop <= to);
    stops.get(first..last).unwrap_or_default()
}

/// Force at one advance of a stage that pushes, or the greatest of all.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Pushed {
    /// In the launch pit: on rig and wall, and on the hind end of the body behind.
    pub(super) on_rig: Band<Force>,
    /// On the body ahead.
    pub(super) on_ahead: Band<Force>,
}

/// Greatest forces along the drive of a stage that pushes: in the launch pit, and on what it drives out.
pub(super) fn pushed<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, stage: Stage) -> Doubted<Pushed> {
    calc.part(stage.title());
    calc.doubted(|calc| {
        let mut greatest = Pushed::default();
        walk_pushed(calc, drive, pipe, stage, |_, force| {
            greatest.on_rig = peak(greatest.on_rig, force.on_rig);
            greatest.on_ahead = peak(greatest.on_ahead, force.on_ahead);
        });
        greatest
    })
}

/// The force at every advance where it may peak: just before and just after each end of a stretch, at the start, and
/// at each stop, where what stood moves again.
pub(super) fn walk_pushed<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    stage: Stage,
    mut at: impl FnMut(Length, Pushed),
) {
    let behind = outside(drive, pipe, stage.behind);
    let ahead = stage.ahead.map(|body| outside(drive, pipe, body));
    let guided = ahead.map_or(Length::default(), |ahead| ahead.diameter);
    let cut = match stage.behind {
        Body::Pipe => pipe.cut().max(behind.diameter),
        Body::Stem | Body::Casing => behind.diameter,
    };
    // Only some faces differ from stretch to stretch.
    let same_face = (stage.behind != Body::Stem && !drive.face.follows_ground())
        .then(|| drive.stretches.first().map_or(Band::default(), |any| head(calc, drive.face, cut, guided, any)));
    let mut still_ahead = match stage.ahead {
        Some(body) => whole_friction(calc, drive, pipe, body),
        None => Band::default(),
    };
    let climb_ahead = ahead.map_or(Band::default(), |ahead| ahead.uphill(calc, drive));
    let climb = behind.uphill(calc, drive);
    let mut own = Band::<Force>::default();
    for stretch in &drive.stretches {
        let front = match (stage.behind, same_face) {
            (Body::Stem, _) => tips(calc, drive, stretch),
            (_, Some(face)) => face,
            (_, None) => head(calc, drive.face, cut, guided, stretch),
        };
        let force = |advance: Length, own: Band<Force>, still_ahead: Band<Force>| {
            let weight_ahead = climb_ahead.map(|climb| climb * (drive.length.value - advance));
            let weight = sum(climb.map(|climb| climb * advance), weight_ahead);
            Pushed {
                on_rig: no_less_than_nothing(sum(sum(own, still_ahead), sum(front, weight))),
                on_ahead: no_less_than_nothing(sum(still_ahead, weight_ahead)),
            }
        };
        // The front meets a stretch at its beginning, with the friction so far.
        at(stretch.from, force(stretch.from, own, still_ahead));
        let mut from = stretch.from;
        let mut stops = stops_in(&drive.stops, stretch.from, stretch.to).iter();
        loop {
            let stop = stops.next();
            let end = *stop.unwrap_or(&stretch.to);
            for part in stretch.way.parts(behind.bore, from, end) {
                own = sum(own, behind.laws(stretch, part).map(|law| calc.law(law)));
                if let Some(ahead) = ahead {
                    let part = again(ahead, stretch, part);
                    still_ahead = still_ahead.with(part, |total, part| (total - part).max(Force::default()));
                }
                // Where the water is met the force goes on at another slope.
                if part.1 < end {
                    at(part.1, force(part.1, own, still_ahead));
                }
            }
            let moving = force(end, own, still_ahead);
            at(end, moving);
            if stop.is_none() {
                break;
            }
            let raise = |friction| restarted(friction, drive.restart);
            at(end, force(end, raise(own), raise(still_ahead)));
            at(end, moving);
            from = end;
        }
    }
}

/// What a pulled stage carries behind the reamer, and what the reamer does.
pub(super) struct Trailing<F> {
    /// Resistance at the reamer.
    pub(super) reamer: Band<Force>,
    /// Pull on what comes behind, at an advance.
    pub(super) pull: F,
    /// Advances where that pull is not straight, in their order.
    pub(super) turns: [Option<Length>; 2],
    /// Whether it is more stem: as much weight hangs on the rig all along.
    pub(super) is_stem: bool,
}

/// Force on the rig while the stem pulls a reamer back, at every advance from the reception pit where it may peak.
/// After a stop the high friction of the stem and the high pull of what trails are raised.
pub(super) fn walk_pulled<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    trailing: &Trailing<impl Fn(Length) -> Band<Force>>,
    mut at: impl FnMut(Length, Band<Force>, Band<Force>),
) {
    let stem = outside(drive, pipe, Body::Stem);
    let length = drive.length.value;
    // What is left of the stem lies between the launch pit, where it leaves the bore, and the reamer; it climbs where
    // the drive falls away from that pit.
    let climb = |calc: &mut Calc<R>, left: Length| along_grade(calc, stem.weight, left, -drive.grade.value);
    let mut left = whole_friction(calc, drive, pipe, Body::Stem);
    let mut emit = |calc: &mut Calc<R>, advance: Length, left: Band<Force>, stands: bool| {
        let weight = climb(calc, if trailing.is_stem { length } else { length - advance });
        let own = (trailing.pull)(advance);
        let reamer = sum(trailing.reamer, weight);
        let total = |left: Band<Force>, own: Band<Force>| no_less_than_nothing(sum(sum(left, own), reamer));
        at(advance, total(left, own), own);
        if stands {
            let raise = |friction| restarted(friction, drive.restart);
            at(advance, total(raise(left), raise(own)), raise(own));
            at(advance, total(left, own), own);
        }
    };
    emit(calc, Length::default(), left, false);
    for stretch in drive.stretches.iter().rev() {
        let (mut from, to) = (length - stretch.to, length - stretch.from);
        let stops = stops_in(&drive.stops, from, to);
        for (end, stands) in stops.iter().map(|stop| (*stop, true)).chain([(to, false)]) {
            let within = move |turn: &Length| *turn > from && *turn < end;
            let turns = trailing.turns.into_iter().flatten().filter(within).map(|turn| (turn, false));
            for (to, stands) in turns.chain([(end, stands)]) {
                for part in stretch.way.parts(stem.bore, length - from, length - to) {
                    let less = again(stem, stretch, part);
                    left = left.with(less, |total, part| (total - part).max(Force::default()));
                    // Where the water is met the force goes on at another slope.
                    if part.1 > length - to {
                        emit(calc, length - part.1, left, false);
                    }
                }
                emit(calc, to, left, stands);
                from = to;
            }
        }
    }
}
