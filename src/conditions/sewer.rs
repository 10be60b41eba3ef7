//! Slope, waves of the invert and flow of a gravity sewer.

use crate::check::{Check, Checks, Subject};
use crate::drive::{Drive, Pipe};
use crate::handbook::Method;
use crate::law::{Calc, Recorder};
use crate::laws::hydraulics::{Flow, ManningVelocity, TractiveStress};
use crate::laws::part_full::{DepthForFlow, FlowArea, HydraulicRadius, WettedAngle};
use crate::laws::soil::WATER_UNIT_WEIGHT;
use crate::laws::undulation::{PeakSlope, SagDepth};
use crate::quantity::{Band, Length, Measure, Ratio, Role, UnitWeight};
use crate::source::Cited;

const FLATTER: &str =
    "for 2 ft/s in the full pipe; codes allow flatter where depth and velocity are computed and filed";
const WAVE: &str = "a sine wave: likely by the accuracy of the pilot, high with the annulus until it is grouted";
const FULL: &str = "the full pipe, with nothing counted on beyond it";
const CLEAN: &str = "at the least flow, which must come at least once a day";
const FLOOR: &str = "habit of drilling guided on grade: likely the low end, high the safer one";

pub(super) fn checks<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, method: Method, checks: &mut Checks) {
    let (Some(gravity), Some(sewer)) = (&drive.site.gravity, pipe.sewer) else { return };
    let slope = Ratio::from_si(drive.grade.value.si().tan().abs());
    let check = Check::at_least(Subject::LeastSlope, Role::Slope, slope, sewer.least_slope);
    checks.add(check.as_screen().with_note(FLATTER));
    if method == Method::Pullback {
        let (low, high) = gravity.pulled_floor;
        let need = Band { low, likely: low, high: high.value };
        let need = Cited::new(need, high.origin);
        let check = Check::at_least_by_level(Subject::GradeFloor, Role::Slope, Band::same(slope), need);
        checks.add(check.as_screen().with_note(FLOOR));
    }
    if let Some(half_wave) = gravity.half_wave {
        calc.part("waves of the invert");
        let pilot = drive.pilot_accuracy.value;
        let whole = super::invert_uncertainty(drive, pipe, method);
        let amplitude = Band { low: pilot, likely: pilot, high: whole };
        let half_wave = half_wave.value;
        let peak = calc.doubted(|calc| amplitude.map(|amplitude| calc.law(PeakSlope { amplitude, half_wave })));
        let limit = Cited::new(slope, drive.grade.origin);
        checks.add(Check::at_most(Subject::BackFall, Role::Slope, peak, limit).as_screen().with_note(WAVE));
        let depth = calc.doubted(|calc| {
            amplitude.map(|amplitude| calc.law(SagDepth { design_slope: slope, amplitude, half_wave }))
        });
        checks.add(Check::at_most(Subject::Sag, Role::Offset, depth, sewer.sag).as_screen().with_note(WAVE));
    }
    if gravity.flow_min.is_none() && gravity.flow_max.is_none() {
        return;
    }
    calc.part("flow");
    let inside_diameter = sewer.inside.value;
    let full = calc.doubted(|calc| {
        let wetted_angle = calc.law(WettedAngle { depth_ratio: Ratio::from_si(1.0) });
        let hydraulic_radius = calc.law(HydraulicRadius { inside_diameter, wetted_angle });
        let velocity = calc.law(ManningVelocity { hydraulic_radius, slope, roughness: gravity.roughness.value });
        let area = calc.law(FlowArea { inside_diameter, wetted_angle });
        calc.law(Flow { area, velocity })
    });
    if let Some(flow) = gravity.flow_max {
        let demand = Band::same(flow.value);
        let limit = full.map(|full| Cited::new(full, gravity.roughness.origin));
        checks.add(Check::at_most(Subject::FlowCapacity, Role::Flow, demand, limit).with_note(FULL));
    }
    if let Some(flow) = gravity.flow_min {
        let stress = calc.doubted(|calc| {
            let full = calc.take(full);
            let depth_ratio = calc.law(DepthForFlow { flow_ratio: flow.value / full });
            let wetted_angle = calc.law(WettedAngle { depth_ratio });
            let hydraulic_radius: Length = calc.law(HydraulicRadius { inside_diameter, wetted_angle });
            let water_weight = UnitWeight::from_si(WATER_UNIT_WEIGHT);
            calc.law(TractiveStress { water_weight, hydraulic_radius, slope })
        });
        let need = gravity.cleaning_stress.map(Band::same);
        let check = Check::at_least_by_level(Subject::SelfCleaning, Role::Tractive, stress.map(Band::same), need);
        checks.add(check.as_screen().with_note(CLEAN));
    }
}
