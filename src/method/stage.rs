//! A stage is who is in the bore and what moves. The force at an advance x of the body behind is
//!
//! `F(x) = friction of the body behind over 0..x + friction of the body ahead over x..L + weights on grade + face`
//!
//! so a stage that pushes a string out of the bore starts with the full friction of that string, not from zero.
//! Unit friction is constant in a stretch on either side of the water, so F is linear between the ends of stretches, the
//! places where the water is met and the stops, and its peak is at one of them: the profile is exact there. What stood moves
//! on against more friction, in each stretch by its ground.

pub(super) use super::body::{Body, Stage};
use super::front::{head, tips};
use super::rest::{Put, Stands, pull_stands, stands};
use crate::drive::{Drive, Part, Pipe, Restart, Rubbed, Stretch};
use crate::handbook::Method;
use crate::law::{Calc, Doubted, Law};
use crate::laws::thrust::{CurveFactor, FrictionForce, SignedWeightAlongGrade, StageForce, WeightAlongGrade};
use crate::quantity::{Angle, Band, Force, Length, LineLoad};

/// Outside diameter, unit friction and weight of a body; a bore without a stem has a stem of no diameter.
#[derive(Clone, Copy)]
struct Outside<'a> {
    diameter: Length,
    /// A pipe has the friction of a pipe, steel that of steel.
    rubbed: Rubbed<'a>,
    weight: Option<LineLoad>,
    /// Height of the bore that the pipe comes to lie in, by which the water is judged.
    bore: Length,
}

fn outside(put: Put<'_>, body: Body) -> Outside<'_> {
    let pipe = put.pipe;
    let of_pipe = pipe.outside_diameter.value;
    let bore = pipe.height();
    match body {
        Body::Stem => {
            let stem = put.stem();
            let rubbed = Rubbed::Stem { method: put.method, at_best: put.at_best };
            Outside { diameter: stem.outside_diameter.value, rubbed, weight: stem.weight, bore }
        }
        Body::Casing => Outside {
            diameter: pipe.casing_diameter().unwrap_or(pipe.outside_diameter.value),
            rubbed: Rubbed::Casing,
            bore,
            weight: pipe.casing.as_ref().and_then(|casing| casing.tube.as_deref()).map(|tube| tube.weight),
        },
        Body::Pipe => {
            let rubbed = Rubbed::Pipe(&pipe.open, put.at_best);
            Outside { diameter: of_pipe, rubbed, weight: pipe.jacked_weight(), bore }
        }
    }
}

impl Outside<'_> {
    /// Over a part of a stretch.
    #[inline]
    fn laws(self, stretch: &Stretch, part: Part) -> Band<FrictionForce> {
        let (outside_diameter, length) = (self.diameter, part.length());
        let friction = stretch.friction(self.rubbed, part.water);
        friction.map(|unit_friction| FrictionForce { unit_friction, outside_diameter, length })
    }

    /// Weight of the whole body along the grade over the length: a part of the body has a part of it.
    fn uphill(self, calc: &mut Calc, drive: &Drive) -> Band<LineLoad> {
        let length = drive.length.value;
        along_grade(calc, self.weight, length, drive.grade.value).map(|weight| weight / length)
    }
}

/// Weight along the grade where it works against the movement; downhill it helps at the low level alone.
pub(super) fn along_grade(calc: &mut Calc, weight: Option<LineLoad>, length: Length, rise: Angle) -> Band<Force> {
    let Some(pipe_weight) = weight else { return Band::default() };
    let against = calc.law(WeightAlongGrade { pipe_weight, length, rise });
    let low =
        if rise < Angle::default() { calc.law(SignedWeightAlongGrade { pipe_weight, length, rise }) } else { against };
    Band { low, likely: against, high: against }
}

/// A sum that help has been taken off, at the low level, is no push.
fn no_less_than_nothing(force: Band<Force>) -> Band<Force> {
    Band { low: force.low.max(Force::default()), ..force }
}

/// Friction, what works at the front, and weight on the grade: what help takes off at the low level leaves no pull.
#[inline]
fn in_all(calc: &mut Calc, parts: [Band<Force>; 4]) -> Band<Force> {
    let [behind, ahead, front, weight] = parts;
    calc.levels(behind.zip(ahead).zip(front.zip(weight)), |calc, ((behind, ahead), (front, weight))| {
        calc.law(StageForce { behind, ahead, front, weight })
    })
}

#[inline]
pub(super) fn sum(a: Band<Force>, b: Band<Force>) -> Band<Force> {
    a.with(b, |a, b| a + b)
}

#[inline]
pub(super) fn peak(a: Band<Force>, b: Band<Force>) -> Band<Force> {
    a.with(b, Force::max)
}

/// Friction of what moves, and of the same as it moves on after a stop.
#[derive(Clone, Copy, Default)]
pub(super) struct Friction {
    pub(super) moving: Band<Force>,
    pub(super) after: Band<Force>,
}

impl Friction {
    #[inline]
    fn more(self, part: Band<Force>, restart: Restart) -> Self {
        Self { moving: sum(self.moving, part), after: sum(self.after, restart.of(part)) }
    }

    #[inline]
    fn less(self, part: Band<Force>, restart: Restart) -> Self {
        let left = |all: Band<Force>, part| all.with(part, |all, part| (all - part).max(Force::default()));
        Self { moving: left(self.moving, part), after: left(self.after, restart.of(part)) }
    }
}

/// Times the friction of a body in a stretch, after a stop.
fn restart(drive: &Drive, body: Body, stretch: &Stretch) -> Restart {
    match body {
        Body::Stem => drive.rests.stem,
        Body::Casing => drive.rests.casing.along(stretch),
        Body::Pipe => drive.rests.pipe.along(stretch),
    }
}

/// Friction of a whole body over the whole drive.
pub(super) fn whole_friction(calc: &mut Calc, put: Put<'_>, body: Body) -> Friction {
    let outside = outside(put, body);
    let mut total = Friction::default();
    for stretch in &put.drive.stretches {
        let restart = restart(put.drive, body, stretch);
        for part in stretch.way.parts(outside.bore, stretch.from, stretch.to) {
            total = total.more(calc.levels(outside.laws(stretch, part), Calc::law), restart);
        }
    }
    total
}

/// Friction of the stem from the launch pit to a distance, unrecorded.
pub(super) fn stem_friction_to(drive: &Drive, pipe: &Pipe, to: Length) -> Band<Force> {
    let stem = outside(Put::of(drive, pipe, Method::Pullback), Body::Stem);
    let mut total = Band::<Force>::default();
    for stretch in drive.stretches.iter().filter(|stretch| stretch.from < to) {
        for part in stretch.way.parts(stem.bore, stretch.from, stretch.to.min(to)) {
            total = sum(total, again(stem, stretch, part));
        }
    }
    total
}

/// Friction of a body over a part of a stretch, again; its record was kept by [`whole_friction`].
#[inline]
fn again(outside: Outside<'_>, stretch: &Stretch, part: Part) -> Band<Force> {
    outside.laws(stretch, part).map(|law| law.value())
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
pub(super) fn pushed(calc: &mut Calc, put: Put<'_>, stage: Stage) -> Doubted<Pushed> {
    calc.part(stage.title());
    calc.doubted(|calc| {
        let mut greatest = Pushed::default();
        walk_pushed(calc, put, stage, |_, force| {
            greatest.on_rig = peak(greatest.on_rig, force.on_rig);
            greatest.on_ahead = peak(greatest.on_ahead, force.on_ahead);
        });
        greatest
    })
}

/// The force at every advance where it may peak: just before and just after each end of a stretch, at the start, and
/// at each stop, where what stood moves again.
pub(super) fn walk_pushed(calc: &mut Calc, put: Put<'_>, stage: Stage, mut at: impl FnMut(Length, Pushed)) {
    let Put { drive, pipe, .. } = put;
    let behind = outside(put, stage.behind);
    let ahead = stage.ahead.map(|body| (body, outside(put, body)));
    let guided = ahead.map_or(Length::default(), |(_, ahead)| ahead.diameter);
    let stands = stands(put, stage.behind);
    let anywhere = matches!(stands, Stands::Anywhere);
    let cut = match stage.behind {
        Body::Pipe => pipe.cut().max(behind.diameter),
        Body::Stem | Body::Casing => behind.diameter,
    };
    // Only some faces differ from stretch to stretch.
    let same_face = (stage.behind != Body::Stem && !drive.face.follows_ground())
        .then(|| drive.stretches.first().map_or(Band::default(), |any| head(calc, drive.face, cut, guided, any)));
    let mut still_ahead = match stage.ahead {
        Some(body) => whole_friction(calc, put, body),
        None => Friction::default(),
    };
    let climb_ahead = ahead.map_or(Band::default(), |(_, ahead)| ahead.uphill(calc, drive));
    let climb = behind.uphill(calc, drive);
    let curve = put.curve();
    // Once for the working; the points between have their own.
    if let Some((friction, radius)) = curve {
        calc.law(CurveFactor { friction, length: drive.length.value, radius });
    }
    // What lies ahead is pushed through all of the curve.
    let through = |force: Band<Force>, length: Length| match curve {
        Some((friction, radius)) => {
            let factor = CurveFactor { friction, length, radius }.value();
            Band { low: force.low, likely: force.likely * factor, high: force.high * factor }
        }
        None => force,
    };
    let way = |advance: Length| if ahead.is_some() { drive.length.value } else { advance };
    let mut own = Friction::default();
    for stretch in &drive.stretches {
        let own_restart = restart(drive, stage.behind, stretch);
        let ahead = ahead.map(|(body, outside)| (outside, restart(drive, body, stretch)));
        let front = match (stage.behind, same_face) {
            // Nothing is cut: the bore is there.
            _ if stage == Stage::PIPE_ALONE => Band::default(),
            (Body::Stem, _) => tips(calc, drive, (put.stem().head, put.at_best), stretch),
            (_, Some(face)) => face,
            (_, None) => head(calc, drive.face, cut, guided, stretch),
        };
        let force = |calc: &mut Calc, advance: Length, own: Band<Force>, still_ahead: Band<Force>| {
            let weight_ahead = climb_ahead.map(|climb| climb * (drive.length.value - advance));
            let weight = sum(climb.map(|climb| climb * advance), weight_ahead);
            Pushed {
                on_rig: through(in_all(calc, [own, still_ahead, front, weight]), way(advance)),
                on_ahead: through(no_less_than_nothing(sum(still_ahead, weight_ahead)), drive.length.value - advance),
            }
        };
        let mut emit = |calc: &mut Calc, advance: Length, own: Friction, still_ahead: Friction, rests: bool| {
            let moving = force(calc, advance, own.moving, still_ahead.moving);
            at(advance, moving);
            if rests {
                at(advance, force(calc, advance, own.after, still_ahead.after));
                at(advance, moving);
            }
        };
        // The front meets a stretch at its beginning, with the friction so far.
        emit(calc, stretch.from, own, still_ahead, anywhere);
        let mut from = stretch.from;
        loop {
            let stop = stands.next(from, stretch.to, drive.length.value);
            let end = stop.unwrap_or(stretch.to);
            for part in stretch.way.parts(behind.bore, from, end) {
                own = own.more(calc.levels(behind.laws(stretch, part), Calc::law), own_restart);
                if let Some((ahead, restart)) = ahead {
                    still_ahead = still_ahead.less(again(ahead, stretch, part), restart);
                }
                // Where the water is met the force goes on at another slope.
                if part.to < end {
                    emit(calc, part.to, own, still_ahead, anywhere);
                }
            }
            emit(calc, end, own, still_ahead, anywhere || stop.is_some());
            if stop.is_none() {
                break;
            }
            from = end;
        }
    }
}

/// Most advances where what is pulled is not straight: where the last string is joined, and where help from behind begins or
/// ceases to be all that it resists, at two levels on either side of that.
pub(super) const TURNS: usize = 5;

/// What a pulled stage carries behind the reamer, and what the reamer does.
pub(super) struct Trailing<F> {
    /// Resistance at the reamer.
    pub(super) reamer: Band<Force>,
    /// Pull on what comes behind, at an advance.
    pub(super) pull: F,
    /// Advances where that pull is not straight, in their order.
    pub(super) turns: [Option<Length>; TURNS],
    /// Whether it is more stem: as much weight hangs on the rig all along.
    pub(super) is_stem: bool,
}

/// Force on the rig while the stem pulls a reamer back, at every advance from the reception pit where it may peak.
/// After a stop the friction of the stem and the pull of what trails are raised.
pub(super) fn walk_pulled(
    calc: &mut Calc,
    put: Put<'_>,
    trailing: &Trailing<impl Fn(Length) -> Band<Force>>,
    mut at: impl FnMut(Length, Band<Force>, Band<Force>),
) {
    let drive = put.drive;
    let stem = outside(put, Body::Stem);
    let length = drive.length.value;
    let stands = pull_stands(drive);
    let own_restart = if trailing.is_stem { drive.rests.stem } else { drive.rests.of_pipe(&drive.stretches) };
    let anywhere = matches!(stands, Stands::Anywhere);
    // What is left of the stem lies between the launch pit, where it leaves the bore, and the reamer; it climbs where
    // the drive falls away from that pit.
    let climb = |calc: &mut Calc, left: Length| along_grade(calc, stem.weight, left, -drive.grade.value);
    let mut left = whole_friction(calc, put, Body::Stem);
    let mut emit = |calc: &mut Calc, advance: Length, left: Friction, rests: bool| {
        let weight = climb(calc, if trailing.is_stem { length } else { length - advance });
        let own = (trailing.pull)(advance);
        let mut total = |ahead, behind| in_all(calc, [behind, ahead, trailing.reamer, weight]);
        let moving = total(left.moving, own);
        at(advance, moving, own);
        if rests || anywhere {
            let raised = own_restart.of(own);
            at(advance, total(left.after, raised), raised);
            at(advance, moving, own);
        }
    };
    emit(calc, Length::default(), left, false);
    for stretch in drive.stretches.iter().rev() {
        let (mut from, last) = (length - stretch.to, length - stretch.from);
        loop {
            let stop = stands.next(from, last, length);
            let end = stop.unwrap_or(last);
            let within = move |turn: &Length| *turn > from && *turn < end;
            let turns = trailing.turns.into_iter().flatten().filter(within).map(|turn| (turn, false));
            for (to, rests) in turns.chain([(end, stop.is_some())]) {
                for part in stretch.way.parts(stem.bore, length - from, length - to) {
                    let less = again(stem, stretch, part);
                    left = left.less(less, drive.rests.stem);
                    // Where the water is met the force goes on at another slope.
                    if part.to > length - to {
                        emit(calc, length - part.to, left, false);
                    }
                }
                emit(calc, to, left, rests);
                from = to;
            }
            if stop.is_none() {
                break;
            }
        }
    }
}
