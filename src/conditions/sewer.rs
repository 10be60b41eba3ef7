//! Slope, waves of the invert and flow of a gravity sewer.

use super::plan::{NO_GRAVITY, Plan};
use crate::check::{Absent, Outcome, at_least, at_most, only};
use crate::drive::{Gravity, Sewer};
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::hydraulics::{Flow, ManningVelocity, TractiveStress};
use crate::laws::part_full::{DepthForFlow, FlowArea, HydraulicRadius, WettedAngle};
use crate::laws::soil::WATER_UNIT_WEIGHT;
use crate::laws::undulation::{PeakSlope, SagDepth};
use crate::quantity::{Band, Length, Measure, Ratio, Role, UnitWeight, VolumeRate};
use crate::source::Cited;

const FLOW: &str = "flow";
const FLATTER: &str =
    "for 2 ft/s in the full pipe; codes allow flatter where depth and velocity are computed and filed";
const WAVE: &str = "a sine wave: likely by the accuracy of the pilot, high with the annulus until it is grouted";
const FULL: &str = "the full pipe, with nothing counted on beyond it";
const CLEAN: &str = "at the least flow, which must come at least once a day";
const FLOOR: &str = "habit of drilling guided on grade: likely the low end, high the safer one";

fn sewer<'a>(at: &Plan<'a>) -> Result<(&'a Gravity, Sewer), Absent> {
    at.drive.site.gravity.as_ref().zip(at.pipe.sewer).ok_or(Absent::NotApplicable(NO_GRAVITY))
}

fn slope(at: &Plan<'_>) -> Ratio {
    Ratio::from_si(at.drive.grade.value.si().tan().abs())
}

pub(crate) fn least_slope(at: &Plan<'_>) -> Outcome {
    let (_, sewer) = sewer(at)?;
    Ok(at_least(Role::Slope, slope(at), sewer.least_slope).as_screen().with_note(FLATTER))
}

pub(crate) fn grade_floor(at: &Plan<'_>) -> Outcome {
    let (gravity, _) = sewer(at)?;
    only(!at.is_jacked(), "the pipe is not pulled")?;
    let (low, high) = gravity.pulled_floor;
    let need = high.map(|high| Band { low, likely: low, high });
    Ok(at_least(Role::Slope, slope(at), need).with_note(FLOOR))
}

/// Amplitude of the waves, and half their length.
fn waves<R: Recorder>(at: &Plan<'_>, calc: &mut Calc<R>) -> Result<(Band<Length>, Length), Absent> {
    let (gravity, _) = sewer(at)?;
    let half_wave = gravity.half_wave.ok_or(Absent::Missing)?.value;
    calc.part("waves of the invert");
    let pilot = at.drive.pilot_accuracy.value;
    let whole = super::line::invert_uncertainty(at);
    Ok((Band { low: pilot, likely: pilot, high: whole }, half_wave))
}

pub(crate) fn back_fall<R: Recorder>(at: &Plan<'_>, calc: &mut Calc<R>) -> Outcome {
    let (amplitude, half_wave) = waves(at, calc)?;
    let peak = calc.doubted(|calc| amplitude.map(|amplitude| calc.law(PeakSlope { amplitude, half_wave })));
    let limit = Cited::new(slope(at), at.drive.grade.origin);
    Ok(at_most(Role::Slope, peak, limit).with_note(WAVE))
}

pub(crate) fn sag<R: Recorder>(at: &Plan<'_>, calc: &mut Calc<R>) -> Outcome {
    let (_, sewer) = sewer(at)?;
    let (amplitude, half_wave) = waves(at, calc)?;
    let design_slope = slope(at);
    let depth =
        calc.doubted(|calc| amplitude.map(|amplitude| calc.law(SagDepth { design_slope, amplitude, half_wave })));
    Ok(at_most(Role::Offset, depth, sewer.sag).with_note(WAVE))
}

/// Flow of the full pipe, where the file tells a flow.
pub(crate) fn full_flow<R: Recorder>(calc: &mut Calc<R>, at: &Plan<'_>) -> Option<Doubted<VolumeRate>> {
    let (gravity, sewer) = sewer(at).ok()?;
    gravity.flow_min.or(gravity.flow_max)?;
    calc.part(FLOW);
    let (inside_diameter, slope) = (sewer.inside.value, slope(at));
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

pub(crate) fn self_cleaning<R: Recorder>(
    at: &Plan<'_>,
    calc: &mut Calc<R>,
    full: Option<Doubted<VolumeRate>>,
) -> Outcome {
    let (gravity, sewer) = sewer(at)?;
    let (flow, full) = gravity.flow_min.zip(full).ok_or(Absent::Missing)?;
    calc.part(FLOW);
    let (inside_diameter, slope) = (sewer.inside.value, slope(at));
    let stress = calc.doubted(|calc| {
        let full = calc.take(full);
        let depth_ratio = calc.law(DepthForFlow { flow_ratio: flow.value / full });
        let wetted_angle = calc.law(WettedAngle { depth_ratio });
        let hydraulic_radius: Length = calc.law(HydraulicRadius { inside_diameter, wetted_angle });
        let water_weight = UnitWeight::from_si(WATER_UNIT_WEIGHT);
        Band::same(calc.law(TractiveStress { water_weight, hydraulic_radius, slope }))
    });
    Ok(at_least(Role::Tractive, stress, gravity.cleaning_stress).with_note(CLEAN))
}
