//! Pullback with upsizing: stem pushed, then stem, reamer and pipe pulled back. The reamer makes the new bore larger
//! than the pilot bore; there is no old pipe in it.

mod strength;

use super::profile::{Point, StageProfile};
use super::scheme::Scheme;
use super::stage::{Stage, head, peak, pushed, walk_pulled};
use crate::check::{Check, Subject};
use crate::drive::{Drive, PePipe, Pipe, Pull};
use crate::law::{Calc, Doubted, Recorder, Silent};
use crate::laws::pull::{Capstan, HydrokineticDrag, NetWeightInFluid, PipeWeight, PullWithModelFactor, StraightPull};
use crate::quantity::{Angle, Band, Force, Length, LineLoad, MassDensity, Measure, Ratio, Role};
use crate::source::Cited;

pub(super) fn assess<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    pe: &PePipe,
    pull: &Pull,
    scheme: &mut Scheme,
) {
    let stem = pushed(calc, drive, pipe, Stage::STEM);
    if drive.stem.value.value > 0.0 {
        let thrust = Doubted { value: drive.rig.thrust, doubt: None };
        scheme.checks.add(Check::at_most(Subject::StemThrust, Role::Thrust, stem, thrust));
    }
    calc.part(Stage::PULLBACK.title());
    let on_pipe = calc.doubted(|calc| pull_on_pipe(calc, drive, pipe, pe, pull));
    let reamer = calc.doubted(|calc| head(calc, pull.reamer, pipe.bore.value, drive.stem.value));
    let rig = calc.doubted(|calc| {
        let mut greatest = Band::<Force>::default();
        let on_pipe = |advance| on_pipe.value.at(advance, drive.length.value);
        walk_pulled(calc, drive, pipe, reamer.value, on_pipe, |_, force| greatest = peak(greatest, force));
        greatest
    });
    let rig = Doubted { value: rig.value, doubt: rig.doubt.or(on_pipe.doubt).or(reamer.doubt) };
    scheme.force = Some(on_pipe.value.peak());
    scheme.rig_force = Some(rig.value.with(stem.value, Force::max));

    strength::checks(calc, pipe, pe, pull, &on_pipe, scheme);
    let limit = Doubted { value: drive.rig.pull, doubt: None };
    scheme.checks.add(Check::at_most(Subject::RigPull, Role::Pull, rig, limit));
    scheme.checks.add(bore(pipe));
}

/// Force on rig and pipe along the pullback, by advance from the reception pit.
pub(super) fn profile(drive: &Drive, pipe: &Pipe, pe: &PePipe, pull: &Pull) -> StageProfile {
    let calc = &mut Calc::new(Silent);
    let on_pipe = pull_on_pipe(calc, drive, pipe, pe, pull);
    let reamer = head(calc, pull.reamer, pipe.bore.value, drive.stem.value);
    let pipe_pull = |advance| on_pipe.at(advance, drive.length.value);
    let mut points = Vec::new();
    walk_pulled(calc, drive, pipe, reamer, pipe_pull, |advance, on_rig| {
        points.push(Point { advance, on_rig, on_pipe: Some(pipe_pull(advance)) });
    });
    StageProfile { stage: Stage::PULLBACK, points }
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
}

impl PullOnPipe {
    fn peak(self) -> Band<Force> {
        self.at_entry.with(self.at_arrival, Force::max)
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
    let with_factor = |calc: &mut Calc<R>, band: Band<Force>| Band {
        high: calc.law(PullWithModelFactor { pull: band.high, factor: pull.model_factor }),
        ..band
    };
    let at_entry = drag.map(|drag| longest_tail + drag);
    let at_arrival = inside.with(drag, |inside, drag| last_tail + inside + drag);
    PullOnPipe {
        at_entry: with_factor(calc, at_entry),
        at_arrival: with_factor(calc, at_arrival),
        at_ramp: with_factor(calc, Band::same(longest_tail)),
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
