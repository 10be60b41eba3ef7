//! A stage is who is in the bore and what moves. The force at an advance x of the body behind is
//!
//! `F(x) = friction of the body behind over 0..x, and its weight uphill + friction of the body ahead over x..L + face`
//!
//! so a stage that pushes a string out of the bore starts with the full friction of that string, not from zero.
//! Unit friction is constant in a stretch, so F is linear between the ends of stretches and its peak is at one of
//! them: the profile is exact there.

use crate::drive::{Drive, FaceResistance, Pipe, PipeKind, Stretch};
use crate::handbook::TipModel;
use crate::law::{Calc, Doubted, Law, Recorder};
use crate::laws::thrust::{FaceForce, FrictionForce, PilotTipAsCone, PilotTipInClay, WeightAlongGrade};
use crate::quantity::{Band, Force, Length, Pressure};

/// What may be in the bore.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Body {
    /// The pilot stem.
    Stem,
    /// A temporary steel casing.
    Casing,
    /// The reamer.
    Reamer,
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
}

impl Stage {
    /// The pilot stem is pushed.
    pub const STEM: Self = Self { ahead: None, behind: Body::Stem, pulls: false };
    /// A casing pushes the stem out.
    pub const CASING: Self = Self { ahead: Some(Body::Stem), behind: Body::Casing, pulls: false };
    /// The pipe pushes the stem out.
    pub const PIPE_AFTER_STEM: Self = Self { ahead: Some(Body::Stem), behind: Body::Pipe, pulls: false };
    /// The pipe pushes the casing out.
    pub const PIPE_AFTER_CASING: Self = Self { ahead: Some(Body::Casing), behind: Body::Pipe, pulls: false };
    /// The stem pulls reamer and pipe back.
    pub const PULLBACK: Self = Self { ahead: Some(Body::Stem), behind: Body::Pipe, pulls: true };

    /// Title of its working.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match (self.behind, self.ahead, self.pulls) {
            (Body::Stem, ..) => "pilot stem pushed",
            (Body::Casing, ..) => "casing pushed behind the stem",
            (_, _, true) => "reamer and pipe pulled back by the stem",
            (_, Some(Body::Casing), _) => "pipe pushes the casing out",
            _ => "pipe pushed behind the stem",
        }
    }
}

/// Outside diameter and unit friction of a body; a bore without a stem has a stem of no diameter.
#[derive(Clone, Copy)]
struct Outside {
    diameter: Length,
    friction: fn(&Stretch) -> Band<Pressure>,
}

fn outside(drive: &Drive, pipe: &Pipe, body: Body) -> Outside {
    let stem_friction = |stretch: &Stretch| stretch.stem_friction;
    match body {
        Body::Stem => Outside { diameter: drive.stem.value, friction: stem_friction },
        Body::Casing => {
            Outside { diameter: pipe.casing.unwrap_or(pipe.outside_diameter.value), friction: stem_friction }
        }
        Body::Reamer => Outside { diameter: pipe.bore.value, friction: stem_friction },
        Body::Pipe => Outside { diameter: pipe.outside_diameter.value, friction: |stretch| stretch.pipe_friction },
    }
}

impl Outside {
    fn laws(self, stretch: &Stretch, length: Length) -> Band<FrictionForce> {
        (self.friction)(stretch).map(|unit_friction| FrictionForce {
            unit_friction,
            outside_diameter: self.diameter,
            length,
        })
    }
}

fn sum(a: Band<Force>, b: Band<Force>) -> Band<Force> {
    a.with(b, |a, b| a + b)
}

pub(super) fn peak(a: Band<Force>, b: Band<Force>) -> Band<Force> {
    a.with(b, Force::max)
}

/// Friction of a whole body over the whole drive.
pub(super) fn whole_friction<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, body: Body) -> Band<Force> {
    let outside = outside(drive, pipe, body);
    let mut total = Band::<Force>::default();
    for stretch in &drive.stretches {
        total = sum(total, outside.laws(stretch, stretch.to - stretch.from).map(|law| calc.law(law)));
    }
    total
}

/// Friction of a body over a stretch, again; its record was kept by [`whole_friction`].
fn again(outside: Outside, stretch: &Stretch) -> Band<Force> {
    outside.laws(stretch, stretch.to - stretch.from).map(|law| law.value())
}

/// Greatest force along the drive of a stage that pushes, in the launch pit.
pub(super) fn pushed<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    stage: Stage,
) -> Doubted<Band<Force>> {
    calc.part(stage.title());
    calc.doubted(|calc| {
        let mut greatest = Band::<Force>::default();
        walk_pushed(calc, drive, pipe, stage, |_, force| greatest = peak(greatest, force));
        greatest
    })
}

/// The force in the launch pit at every advance where it may peak: just before and just after each end of a stretch,
/// and at the start.
pub(super) fn walk_pushed<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    stage: Stage,
    mut at: impl FnMut(Length, Band<Force>),
) {
    let behind = outside(drive, pipe, stage.behind);
    let ahead = stage.ahead.map(|body| outside(drive, pipe, body));
    let face = match stage.behind {
        Body::Stem => Band::default(),
        _ => head(calc, drive.face, behind.diameter, ahead.map_or(Length::default(), |ahead| ahead.diameter)),
    };
    let weight = match (&pipe.kind, stage.behind) {
        (PipeKind::Clay(clay), Body::Pipe) => clay.weight.map(|weight| weight.value),
        _ => None,
    };
    let mut still_ahead = match stage.ahead {
        Some(body) => whole_friction(calc, drive, pipe, body),
        None => Band::default(),
    };
    let mut own = Band::<Force>::default();
    for stretch in &drive.stretches {
        let front = match stage.behind {
            Body::Stem => tip(calc, drive, stretch),
            _ => face,
        };
        // The front meets a stretch at its beginning, with the friction so far.
        at(stretch.from, sum(sum(own, still_ahead), front));
        let length = stretch.to - stretch.from;
        own = sum(own, behind.laws(stretch, length).map(|law| calc.law(law)));
        if let Some(pipe_weight) = weight {
            let rise = drive.grade.value;
            own = sum(own, Band::same(calc.law(WeightAlongGrade { pipe_weight, length, rise })));
        }
        if let Some(ahead) = ahead {
            still_ahead = still_ahead.with(again(ahead, stretch), |total, part| (total - part).max(Force::default()));
        }
        at(stretch.to, sum(sum(own, still_ahead), front));
    }
}

/// Force on the rig while the stem pulls reamer and pipe back, at every advance from the reception pit where it may
/// peak. `pipe_pull` gives the pull on the pipe at an advance.
pub(super) fn walk_pulled<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    reamer: Band<Force>,
    pipe_pull: impl Fn(Length) -> Band<Force>,
    mut at: impl FnMut(Length, Band<Force>),
) {
    let stem = outside(drive, pipe, Body::Stem);
    // The stem leaves the bore at the launch pit, so what is left of it lies between there and the reamer.
    let mut left = whole_friction(calc, drive, pipe, Body::Stem);
    at(Length::default(), sum(sum(left, reamer), pipe_pull(Length::default())));
    for stretch in drive.stretches.iter().rev() {
        left = left.with(again(stem, stretch), |total, part| (total - part).max(Force::default()));
        let advance = drive.length.value - stretch.from;
        at(advance, sum(sum(left, reamer), pipe_pull(advance)));
    }
}

/// Resistance at an enlarging head.
pub(super) fn head<R: Recorder>(
    calc: &mut Calc<R>,
    face: FaceResistance,
    cut_diameter: Length,
    guided_diameter: Length,
) -> Band<Force> {
    match face {
        FaceResistance::Given(force) => force,
        // A pipe no larger than the casing it follows cuts nothing.
        FaceResistance::Table { .. } if cut_diameter <= guided_diameter => Band::default(),
        FaceResistance::Table { pressure, least } => pressure
            .with(least, |pressure, least| calc.law(FaceForce { pressure, cut_diameter, guided_diameter, least })),
    }
}

fn tip<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, stretch: &Stretch) -> Band<Force> {
    let diameter = drive.stem.value;
    match stretch.tip {
        TipModel::Sand => stretch.blows.map(|blows| {
            calc.law(PilotTipAsCone { cone_resistance_per_blow: drive.tip.cone_per_blow, blows, diameter })
        }),
        TipModel::Clay => {
            let bearing = stretch.blows.with(drive.tip.bearing_factor, |blows, bearing_factor| {
                let strength_per_blow = drive.tip.strength_per_blow;
                calc.law(PilotTipInClay { bearing_factor, strength_per_blow, blows, diameter })
            });
            // The cone gives more than the bearing factor in clay; the larger counts where it matters.
            let cone_resistance_per_blow = drive.tip.cone_per_blow_clay;
            let cone = calc.law(PilotTipAsCone { cone_resistance_per_blow, blows: stretch.blows.high, diameter });
            Band { high: bearing.high.max(cone), ..bearing }
        }
    }
}
