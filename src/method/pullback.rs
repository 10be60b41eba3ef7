//! Pullback with upsizing: stem pushed, then stem, reamer and pipe pulled back. The reamer makes the new bore larger
//! than the pilot bore; there is no old pipe in it.

mod strength;

use super::profile::{Point, StageProfile};
use super::scheme::Scheme;
use super::stage::{Body, Stage, Trailing, head, peak, stem_friction_to, walk_pulled, whole_friction};
use crate::check::{Check, Subject, Verdict};
use crate::drive::{Drive, PePipe, Pipe, Pull, PulledPipe};
use crate::law::{Calc, Doubted, Recorder, Silent};
use crate::laws::pull::{
    Capstan, HydrokineticDrag, NetWeightInFluid, PipeWeight, PullWithModelFactor, ReamedBore, StraightPull,
};
use crate::laws::thrust::WeightAlongGrade;
use crate::quantity::{Angle, Band, Force, Length, LineLoad, MassDensity, Measure, Ratio, Role, Torque};
use crate::source::Cited;

pub(super) fn assess<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    pulled: &PulledPipe,
    pull: &Pull,
    scheme: &mut Scheme,
) {
    let PulledPipe::Pe(pe) = pulled;
    let stem = super::stem::checks(calc, drive, pipe, scheme);
    let reaming = (!pipe.passes.is_empty()).then(|| {
        calc.part(Stage::REAMING.title());
        calc.doubted(|calc| reaming(calc, drive, pipe, pull))
    });
    calc.part(Stage::PULLBACK.title());
    let on_pipe = calc.doubted(|calc| {
        let mut on_pipe = pull_on_pipe(calc, drive, pipe, pe, pull);
        on_pipe.raise_after_stops(drive);
        on_pipe
    });
    let rig = calc.doubted(|calc| {
        let reamer = last_reamer(calc, drive, pipe, pull);
        let trailing = Trailing { reamer, pull: |advance| on_pipe.value.at(advance, drive.length.value) };
        let mut greatest = Band::<Force>::default();
        walk_pulled(calc, drive, pipe, &trailing, |_, force, _| greatest = peak(greatest, force));
        greatest
    });
    let rig = Doubted { value: rig.value, doubt: rig.doubt.or(on_pipe.doubt) };
    let all = reaming
        .map_or(rig, |reaming| Doubted { value: peak(rig.value, reaming.value), doubt: rig.doubt.or(reaming.doubt) });
    scheme.force = Some(on_pipe.value.peak());
    scheme.rig_force = Some(peak(all.value, stem.value));

    strength::checks(calc, pipe, pe, pull, &on_pipe, scheme);
    let limit = Doubted { value: drive.rig.pull, doubt: None };
    scheme.checks.add(Check::at_most(Subject::RigPull, Role::Pull, rig, limit));
    if let Some(reaming) = reaming {
        scheme.checks.add(Check::at_most(Subject::ReamingPull, Role::Pull, reaming, limit));
    }
    if let Some(rating) = drive.stem.joint_pull {
        let rating = Doubted { value: rating, doubt: None };
        scheme.checks.add(Check::at_most(Subject::StemPull, Role::Pull, all, rating));
    }
    scheme.checks.add(step(calc, drive, pipe, pull));
    if let (Some(torque), Some(rating)) = (pull.reaming_torque, least_torque(drive)) {
        let torque = Doubted { value: torque, doubt: None };
        let rating = Doubted { value: rating, doubt: None };
        scheme.checks.add(Check::at_most(Subject::ReamingTorque, Role::Torque, torque, rating));
    }
    scheme.checks.add(bore(pipe));
}

/// Force on rig, stem and pipe along the reaming passes and the pullback, by advance from the reception pit.
pub(super) fn profiles(drive: &Drive, pipe: &Pipe, pulled: &PulledPipe, pull: &Pull) -> Vec<StageProfile> {
    let PulledPipe::Pe(pe) = pulled;
    let calc = &mut Calc::new(Silent);
    let stem = whole_friction(calc, drive, pipe, Body::Stem);
    let mut stages = Vec::new();
    let mut before = drive.stem.head;
    for bore in &pipe.passes {
        let trailing = Trailing {
            reamer: reamer(calc, drive, pull, *bore, before),
            pull: |advance: Length| stem_behind(stem, drive, pipe, advance),
        };
        let mut points = Vec::new();
        walk_pulled(calc, drive, pipe, &trailing, |advance, on_rig, _| {
            points.push(Point { advance, on_rig, on_wall: None, on_stem: Some(on_rig), on_pipe: None });
        });
        stages.push(StageProfile { stage: Stage::REAMING, bore: Some(*bore), points });
        before = *bore;
    }
    let on_pipe = pull_on_pipe(calc, drive, pipe, pe, pull);
    let trailing = Trailing {
        reamer: last_reamer(calc, drive, pipe, pull),
        pull: |advance| on_pipe.at(advance, drive.length.value),
    };
    let mut points = Vec::new();
    walk_pulled(calc, drive, pipe, &trailing, |advance, on_rig, on_pipe| {
        points.push(Point { advance, on_rig, on_wall: None, on_stem: Some(on_rig), on_pipe: Some(on_pipe) });
    });
    stages.push(StageProfile { stage: Stage::PULLBACK, bore: Some(pipe.bore.value), points });
    stages
}

/// Friction of the stem that follows a reamer, from the reception pit as far as it has come.
fn stem_behind(whole: Band<Force>, drive: &Drive, pipe: &Pipe, advance: Length) -> Band<Force> {
    let left = stem_friction_to(drive, pipe, drive.length.value - advance);
    whole.with(left, |whole, left| (whole - left).max(Force::default()))
}

/// Resistance of a reamer in the ground where it is greatest.
fn reamer<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pull: &Pull, bore: Length, before: Length) -> Band<Force> {
    // Neither the table nor the user's force of a reamer follows the ground: any stretch does.
    drive.stretches.first().map_or(Band::default(), |any| head(calc, pull.reamer, bore, before, any))
}

/// Resistance of the reamer that brings the pipe.
fn last_reamer<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, pull: &Pull) -> Band<Force> {
    let before = pipe.passes.last().copied().unwrap_or(drive.stem.head);
    reamer(calc, drive, pull, pipe.bore.value, before)
}

/// Greatest force on the rig over the reaming passes before the pipe comes. The stem that follows the reamer takes
/// the place of the stem that has left, so the friction is that of one whole stem all along.
fn reaming<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, pull: &Pull) -> Band<Force> {
    let stem = whole_friction(calc, drive, pipe, Body::Stem);
    let climb = drive.stem.weight.map_or(Force::default(), |pipe_weight| {
        calc.law(WeightAlongGrade { pipe_weight, length: drive.length.value, rise: -drive.grade.value })
    });
    let stem = if drive.stops.is_empty() { stem } else { Band { high: stem.high * drive.restart, ..stem } };
    let mut greatest = Band::<Force>::default();
    let mut before = drive.stem.head;
    for bore in &pipe.passes {
        let reamer = reamer(calc, drive, pull, *bore, before);
        greatest = peak(greatest, reamer.with(stem, |reamer, stem| reamer + stem + climb));
        before = *bore;
    }
    greatest
}

/// The least rating of torque that is known.
fn least_torque(drive: &Drive) -> Option<Cited<Torque>> {
    match (drive.rig.torque, drive.stem.joint_torque) {
        (Some(rig), Some(joint)) => Some(if joint.value < rig.value { joint } else { rig }),
        (rig, joint) => rig.or(joint),
    }
}

const ONE_STEP: &str = "by habit the bore goes up in smaller steps; give `passes` for what is planned";

/// The reaming step that goes furthest beyond habit.
fn step<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, pull: &Pull) -> Check {
    calc.part("reaming steps");
    let rule = &pull.step;
    let mut before = drive.stem.head;
    let mut worst = (Length::default(), Band::same(Length::default()), f64::NEG_INFINITY);
    for bore in pipe.passes.iter().chain([&pipe.bore.value]) {
        let mut most = |ratio, step| calc.law(ReamedBore { bore_before: before, ratio, step });
        let usual = most(rule.ratio.0, rule.step.0);
        let greatest = most(rule.ratio.1, rule.step.1);
        let over = (*bore / usual).value;
        if over > worst.2 {
            worst = (*bore, Band { low: greatest, likely: greatest, high: usual }, over);
        }
        before = *bore;
    }
    let demand = Doubted { value: Band::same(worst.0), doubt: None };
    let limit = Doubted { value: Cited::new(worst.1, rule.origin), doubt: None };
    let check = Check::at_most_by_level(Subject::ReamingStep, Role::Diameter, demand, limit).as_screen();
    if check.verdict == Verdict::Within { check } else { check.with_note(ONE_STEP) }
}

/// Pull on the pipe with its head at either end of the bore; it is linear between.
#[derive(Debug, Clone, Copy)]
pub(super) struct PullOnPipe {
    /// As it enters the bore: the whole string is outside.
    pub(super) at_entry: Band<Force>,
    /// As it arrives in the launch pit.
    pub(super) at_arrival: Band<Force>,
    /// Where the string leaves the ramp, at its greatest.
    pub(super) at_ramp: Band<Force>,
    /// Where it moves again after a stop, at its greatest.
    pub(super) after_stop: Band<Force>,
}

impl PullOnPipe {
    pub(super) fn peak(self) -> Band<Force> {
        peak(peak(self.at_entry, self.at_arrival), self.after_stop)
    }

    fn raise_after_stops(&mut self, drive: &Drive) {
        for stop in &drive.stops {
            let moving = self.at(*stop, drive.length.value);
            self.after_stop = peak(self.after_stop, Band { high: moving.high * drive.restart, ..moving });
            self.at_ramp = peak(self.at_ramp, Band { high: self.at_entry.high * drive.restart, ..self.at_ramp });
        }
    }

    fn at(self, advance: Length, length: Length) -> Band<Force> {
        let share = if length.si() > 0.0 { (advance / length).value } else { 0.0 };
        self.at_entry.with(self.at_arrival, |entry, arrival| entry + (arrival - entry) * share)
    }
}

fn pull_on_pipe<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, pe: &PePipe, pull: &Pull) -> PullOnPipe {
    let outside_diameter = pipe.outside_diameter.value;
    let wall = pe.wall.value;
    let weigh = |average_wall| PipeWeight { outside_diameter, wall, density: pe.density, average_wall };
    // The string on the ground weighs its average wall, and what fills it; in fluid the minimum wall floats harder.
    let empty = calc.law(weigh(pull.average_wall));
    let on_ground = calc.law(NetWeightInFluid {
        pipe_weight: empty,
        outside_diameter,
        wall,
        fluid_density: MassDensity::default(),
        contents_density: pull.contents,
    });
    let pipe_weight = calc.law(weigh(Ratio::from_si(1.0)));

    // The tail is longest as the pipe enters, and drags over the two bends of the ramp.
    let tail = |calc: &mut Calc<R>, length: Length| {
        let dragged = calc.law(StraightPull {
            friction: pull.friction_outside,
            net_weight: on_ground,
            length,
            rise: Angle::default(),
        });
        calc.law(Capstan { tension: dragged, friction: pull.friction_outside, angle: 2.0 * pull.ramp })
    };
    let longest_tail = tail(calc, drive.length.value + pull.excess_length);
    let last_tail = tail(calc, pull.excess_length);

    let drag = pull
        .annular_pressure
        .map(|pressure| calc.law(HydrokineticDrag { pressure, bore: pipe.bore.value, outside_diameter }));
    let work = InBore { drive, pipe_weight, outside_diameter, wall };
    let inside = Band {
        low: work.greatest(calc, pull, pull.friction_inside.low, [pull.fluids.clean; 2]),
        likely: work.greatest(calc, pull, pull.friction_inside.likely, [pull.fluids.light, pull.fluids.heavy]),
        high: work.greatest(calc, pull, pull.friction_inside.high, [pull.fluids.light, pull.fluids.heavy]),
    };
    // Help from behind is counted for the likely pull only: it can fail.
    let helped = |force: Force| (force - pull.push_assist).max(Force::default());
    let with_factor = |calc: &mut Calc<R>, band: Band<Force>| Band {
        low: helped(band.low),
        likely: helped(band.likely),
        high: calc.law(PullWithModelFactor { pull: band.high, factor: pull.model_factor }),
    };
    let at_entry = drag.map(|drag| longest_tail + drag);
    let at_arrival = inside.with(drag, |inside, drag| last_tail + inside + drag);
    PullOnPipe {
        at_entry: with_factor(calc, at_entry),
        at_arrival: with_factor(calc, at_arrival),
        at_ramp: with_factor(calc, Band::same(longest_tail)),
        after_stop: Band::default(),
    }
}

/// The pipe in the bore fluid.
struct InBore<'a> {
    drive: &'a Drive,
    pipe_weight: LineLoad,
    outside_diameter: Length,
    wall: Length,
}

impl InBore<'_> {
    /// The greatest pull over the bore among the fluids that are possible: heavy fluid is adverse for an
    /// empty pipe, light fluid for a filled one.
    fn greatest<R: Recorder>(
        &self,
        calc: &mut Calc<R>,
        pull: &Pull,
        friction: Ratio,
        fluids: [MassDensity; 2],
    ) -> Force {
        let mut greatest = Force::default();
        for fluid_density in fluids {
            let net_weight = calc.law(NetWeightInFluid {
                pipe_weight: self.pipe_weight,
                outside_diameter: self.outside_diameter,
                wall: self.wall,
                fluid_density,
                contents_density: pull.contents,
            });
            // The pipe travels from the reception pit to the launch pit, against the sense of the grade.
            let rise = -self.drive.grade.value;
            let length = self.drive.length.value;
            greatest = greatest.max(calc.law(StraightPull { friction, net_weight, length, rise }));
        }
        greatest
    }
}

fn bore(pipe: &Pipe) -> Check {
    let check = Check::at_least(Subject::Bore, Role::Diameter, pipe.bore.value, pipe.bore_rule).as_screen();
    let rule = pipe.bore_rule.value;
    // The rule is a usual least and, in an agency's text, a most.
    let slack = Length::from_si(1e-6);
    if pipe.bore.value > rule + slack {
        let need = Doubted { value: Cited::new(rule, pipe.bore_rule.origin), doubt: None };
        let supply = Doubted { value: Band::same(pipe.bore.value), doubt: None };
        Check::at_most(Subject::Bore, Role::Diameter, supply, need)
            .as_screen()
            .with_note("larger than an agency's most: the annulus settles unless it is grouted")
    } else if pipe.bore.value < rule - slack {
        check.with_note("smaller than usual: fluid return, steering and cuttings need proof")
    } else {
        check
    }
}
