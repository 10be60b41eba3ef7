//! Slope, waves of the invert and flow of a gravity sewer.

use super::plan::{NO_GRAVITY, Plan};
use crate::check::{Absent, Draft, Outcome, Rule, Verdict, at_least, at_most, only, rated};
use crate::drive::{Gravity, Sewer};
use crate::handbook::GroundClass;
use crate::law::{Calc, Doubted};
use crate::laws::hydraulics::{Flow, ManningVelocity, TractiveStress};
use crate::laws::part_full::{DepthForFlow, FlowArea, HydraulicRadius, WettedAngle};
use crate::laws::soil::water_unit_weight;
use crate::laws::undulation::{PeakSlope, SagDepth};
use crate::quantity::{Band, Length, Measure, Ratio, Role, VolumeRate};
use crate::source::Cited;

/// Slopes below this print as level.
const RUNS: f64 = 5e-5;
/// Below this slope no size runs without a flow that is told.
const FLAT: f64 = 0.001;

const FLOW: &str = "flow";
const FLATTER: &str =
    "for 2 ft/s in the full pipe; codes allow flatter where depth and velocity are computed and filed";
const NOT_SHOWN: &str =
    "flatter than the least slope, with nothing to show that the sewer cleans itself: give the least flow";
const CLEANS: &str = "flatter than the least slope; the least flow of the file keeps it clean, which codes want computed and \
                      filed";
const CLOGS: &str = "flatter than the least slope, and the least flow of the file does not keep it clean";
const FAST: &str = "full: above it pipe and manholes wear, and the pipe is anchored on the slope: ask the owner";
const LEVEL: &str = "a sewer without fall does not drain";
const WAVE: &str = "a sine wave: likely by the aim of the target, high by the accuracy of installed lines";
const WAVE_PULLED: &str = "a sine wave: likely by the pilot alone, high as a string that lies from the bottom of its bore to half of the play";
const FULL: &str = "the full pipe, with nothing counted on beyond it";
const CLEAN: &str = "at the least flow, which must come at least once a day";
const TRICKLE: &str = "the least flow moves no grit, though the slope is what codes ask for: flush the sewer";
const FLOOR: &str = "practice of guided drilling on grade: likely the low end, high the safer one";

fn sewer<'a>(at: &Plan<'a>) -> Result<(&'a Gravity, Sewer), Absent> {
    at.drive.site.gravity.as_ref().zip(at.pipe.sewer).ok_or(Absent::NotApplicable(NO_GRAVITY))
}

/// Flatter than the row a sewer has to be shown to clean itself; without a fall it is none.
pub(crate) fn least_slope(at: &Plan<'_>, calc: &mut Calc, full: Option<Doubted<VolumeRate>>) -> Outcome {
    let (gravity, sewer) = sewer(at)?;
    let slope = at.slope();
    let check = at_least(Role::Slope, slope, sewer.least_slope);
    if slope.si() < RUNS {
        return Ok(check.by(Rule::High).with_note(LEVEL));
    }
    if gravity.flow_min.is_none() {
        let shown = check.verdict() == Verdict::Within && slope.si() >= FLAT;
        let asked = || check.as_screen().undecided(NOT_SHOWN).settled_by(&[&["design_flow.min"]]);
        return Ok(if shown { check.with_note(FLATTER) } else { asked() });
    }
    if check.verdict() == Verdict::Within {
        return Ok(check.with_note(FLATTER));
    }
    let cleans = self_cleaning(at, calc, full).is_ok_and(|check| check.by(Rule::High).verdict() == Verdict::Within);
    Ok(if cleans { check.as_screen().with_note(CLEANS).settled_by(&[&["grade"]]) } else { check.with_note(CLOGS) })
}

/// A screen: a fast sewer wears and gives off gas, and owners who allow it anchor the pipe and line the manholes.
pub(crate) fn velocity(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    let (gravity, sewer) = sewer(at)?;
    calc.part(FLOW);
    let velocity = calc.doubted(|calc| {
        let wetted_angle = calc.law(WettedAngle { depth_ratio: Ratio::from_si(1.0) });
        let hydraulic_radius = calc.law(HydraulicRadius { inside_diameter: sewer.inside.value, wetted_angle });
        let roughness = gravity.roughness.value;
        Band::same(calc.law(ManningVelocity { hydraulic_radius, slope: at.slope(), roughness }))
    });
    Ok(at_most(Role::FlowSpeed, velocity, gravity.fastest).with_note(FAST).settled_by(&[&["grade"]]))
}

pub(crate) fn grade_floor(at: &Plan<'_>) -> Outcome {
    let (gravity, _) = sewer(at)?;
    only(!at.is_jacked(), "the pipe is not pulled")?;
    let (low, high) = gravity.pulled_floor;
    let need = high.map(|high| Band { low, likely: low, high });
    Ok(at_least(Role::Slope, at.slope(), need).with_note(FLOOR).settled_by(&[&["grade"]]))
}

/// Amplitude and half length of a wave, likely and high.
#[derive(Debug, Clone, Copy)]
struct Wave {
    amplitude: Band<Length>,
    half: Band<Length>,
}

/// The wave of the invert, on the safe side and at its best where the file does not tell its length. A jacked line goes
/// as its head was steered; a pulled one as its pilot, and in the play round it over a longer way, since it is stiff.
fn waves(at: &Plan<'_>) -> Result<(Wave, Option<Wave>), Absent> {
    let (gravity, _) = sewer(at)?;
    let rules = gravity.waves;
    let amplitude = if at.is_jacked() {
        let (likely, high) = rules.jacked;
        let play = super::line::unknown_play(at);
        Band { low: likely, likely: likely + play.0, high: high + play.1 }
    } else {
        let pilot = at.drive.guided.wave;
        Band { high: pilot.high + super::line::unknown_play(at).0, ..pilot }
    };
    if let Some(told) = gravity.half_wave {
        return Ok((Wave { amplitude, half: Band::same(told.value) }, None));
    }
    let half = Band { high: if at.is_jacked() { rules.short } else { rules.long }, ..Band::same(rules.short) };
    let best = Wave { amplitude: Band { high: amplitude.likely, ..amplitude }, half: Band::same(rules.long) };
    // Ground that nobody has told may be such as holds the pipe where it lies.
    let untold = at.drive.stretches.iter().any(|stretch| stretch.class() == GroundClass::Unknown);
    let best = match (at.is_jacked(), untold) {
        (true, true) => {
            Wave { amplitude: Band { low: rules.jacked.0, likely: rules.jacked.0, high: rules.jacked.1 }, ..best }
        }
        (true, false) => Wave { amplitude, ..best },
        (false, _) => best,
    };
    Ok((Wave { amplitude, half }, Some(best)))
}

/// A check of the wave, and at its best.
fn of_waves(at: &Plan<'_>, calc: &mut Calc, is_real: bool, check: impl Fn(&mut Calc, Wave) -> Draft) -> Outcome {
    let (wave, best) = waves(at)?;
    calc.part("waves of the invert");
    let mut made = |wave| {
        let check = check(calc, wave).with_note(if at.is_jacked() { WAVE } else { WAVE_PULLED });
        if is_real { check } else { check.as_screen() }
    };
    let worst = made(wave);
    Ok(match best {
        Some(best) => worst.at_best(made(best)).settled_by(&[&["half_wave"]]),
        None => worst.settled_by(&[&["grade"]]),
    })
}

/// A habit for a jacked line, whose waves are small; a limit for a pulled one.
pub(crate) fn back_fall(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    let limit = Cited::new(at.slope(), at.drive.grade.origin);
    of_waves(at, calc, !at.is_jacked(), |calc, wave| {
        let peak = calc.doubted(|calc| {
            let peak =
                wave.amplitude.with(wave.half, |amplitude, half_wave| calc.law(PeakSlope { amplitude, half_wave }));
            // A higher wave may be longer, and then no steeper.
            Band { high: peak.high.max(peak.likely), ..peak }
        });
        at_most(Role::Slope, peak, limit)
    })
}

/// A limit where a code gives one for the size, else a habit.
pub(crate) fn sag(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    let (_, sewer) = sewer(at)?;
    let design_slope = at.slope();
    of_waves(at, calc, sewer.sag_is_real, |calc, wave| {
        let depth = calc.doubted(|calc| {
            let depth = |amplitude, half_wave| calc.law(SagDepth { design_slope, amplitude, half_wave });
            wave.amplitude.with(wave.half, depth)
        });
        at_most(Role::Offset, depth, sewer.sag)
    })
}

/// Flow of the full pipe, where the file tells a flow.
pub(crate) fn full_flow(calc: &mut Calc, at: &Plan<'_>) -> Option<Doubted<VolumeRate>> {
    let (gravity, sewer) = sewer(at).ok()?;
    gravity.flow_min.or(gravity.flow_max)?;
    calc.part(FLOW);
    let (inside_diameter, slope) = (sewer.inside.value, at.slope());
    Some(calc.doubted(|calc| {
        let wetted_angle = calc.law(WettedAngle { depth_ratio: Ratio::from_si(1.0) });
        let hydraulic_radius = calc.law(HydraulicRadius { inside_diameter, wetted_angle });
        let velocity = calc.law(ManningVelocity { hydraulic_radius, slope, roughness: gravity.roughness.value });
        let area = calc.law(FlowArea { inside_diameter, wetted_angle });
        calc.law(Flow { area, velocity })
    }))
}

pub(crate) fn capacity(at: &Plan<'_>, full: Option<Doubted<VolumeRate>>) -> Outcome {
    let (gravity, _) = sewer(at)?;
    let (flow, full) = gravity.flow_max.zip(full).ok_or(Absent::Missing)?;
    let limit = full.map(|full| Cited::new(full, gravity.roughness.origin));
    Ok(at_most(Role::Flow, flow.value, limit).with_note(FULL))
}

pub(crate) fn self_cleaning(at: &Plan<'_>, calc: &mut Calc, full: Option<Doubted<VolumeRate>>) -> Outcome {
    let (gravity, sewer) = sewer(at)?;
    let (flow, full) = gravity.flow_min.zip(full).ok_or(Absent::Missing)?;
    calc.part(FLOW);
    let (inside_diameter, slope) = (sewer.inside.value, at.slope());
    let stress = calc.doubted(|calc| {
        let full = calc.take(full);
        let depth_ratio = calc.law(DepthForFlow { flow_ratio: flow.value / full });
        let wetted_angle = calc.law(WettedAngle { depth_ratio });
        let hydraulic_radius: Length = calc.law(HydraulicRadius { inside_diameter, wetted_angle });
        let water_weight = water_unit_weight();
        Band::same(calc.law(TractiveStress { water_weight, hydraulic_radius, slope }))
    });
    let check = at_least(Role::Tractive, stress, gravity.cleaning_stress).with_note(CLEAN);
    // A line as steep as the codes ask is not held up by the first flow in it.
    let steep = slope >= sewer.least_slope.value && check.doubt.is_none();
    let past = check.as_screen().verdict() == Verdict::NotDecided;
    Ok(if steep && past { rated(Verdict::WithCare, gravity.cleaning_stress.origin).with_note(TRICKLE) } else { check })
}
