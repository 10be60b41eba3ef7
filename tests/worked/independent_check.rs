//! Worked by another hand from the equations of the sources: the pilot tip as
//! a penetrometer, the casing that the pipe pushes out, the bends of the ramp, bending against tension. Mechanics with
//! inputs that are stated there; cone resistance per blow and bearing factors are recalled.

use crate::found::{Found, Outcome, drive, law, near, needed, pages, q, ratio};
use crate::found::{checked, scheme};
use jackpull::Handbook;
use jackpull::check::Subject;
use jackpull::drive::Drive;
use jackpull::handbook::Method;
use jackpull::law::Law;
use jackpull::laws::collapse::BendOvality;
use jackpull::laws::pe::{BendRadiusForShare, BendingStress, MinimumBendRadius};
use jackpull::laws::pull::Capstan;
use jackpull::laws::thrust::{FrictionForce, PilotTipAsCone, PilotTipInClay};
use jackpull::method::explain;
use jackpull::quantity::{Angle, Force, Length, Measure, Pressure, Ratio, Shown};
use std::sync::Arc;

pages!(
    pilot_tip_in_sand,
    pilot_tip_in_sand_through_a_drive,
    cone_over_count_by_soil,
    pilot_tip_in_clay,
    pilot_tip_in_clay_through_a_drive,
    pipe_pushes_the_casing_out,
    bends_of_the_ramp,
    bending_at_forty_diameters,
    ovality_of_the_bend,
);

/// A tip of 100 mm, 0.45 MPa a blow: 106 kN at N 30, 177 kN at N 50.
const TIP_IN_SAND: [(&str, &str); 2] = [("30", "106 kN"), ("50", "177 kN")];

fn pilot_tip_in_sand(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (blows, printed) in TIP_IN_SAND {
        let tip = PilotTipAsCone {
            cone_resistance_per_blow: handbook.pressure("tip.cone_per_blow")?.value,
            blows: q(blows),
            diameter: q("100 mm"),
        };
        near(found, &format!("tip in sand, N {blows}"), tip.value(), printed, "0.5 kN");
    }
    Ok(())
}

/// A pilot with next to no friction along its side, with a stem of 100 mm.
fn frictionless(handbook: &Arc<Handbook>, ground: &str, blows: &str) -> Result<Drive, crate::found::Stop> {
    drive(
        handbook,
        &format!(
            "
length: 50 m
groundwater: none
lubrication: none
ground:
  - class: {ground}
    spt_n: {blows}
    largest_stone: 0 mm
    unit_friction: {{ low: 0 kPa, likely: 0 kPa, high: 0.1 kPa }}
pilot: displacement
stem: {{ outside_diameter: 100 mm, head_diameter: 100 mm }}
candidates: [{{ material: clay, size: 300 mm, outside_diameter: 360 mm, end_bearing_area: 0.03 m2 }}]
"
        ),
    )
}

/// Likely and high thrust that the stem needs at its tip: at the high level without 0.1 kPa along 50 m.
fn stem_thrust(drive: &Drive) -> Result<[Force; 2], crate::found::Stop> {
    let stem = checked(&scheme(drive, Method::PipeJacking)?, Subject::StemThrust)?;
    let demand = |pair: Option<(Shown, Shown)>| {
        needed(pair, || "the thrust of the stem".to_owned()).map(|(demand, _)| Force::from_si(demand.si))
    };
    let diameter = q::<Length>("100 mm");
    let along = core::f64::consts::PI * diameter * q::<Length>("50 m") * q::<Pressure>("0.1 kPa");
    Ok([demand(stem.likely())?, demand(stem.high())? - along])
}

fn pilot_tip_in_sand_through_a_drive(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (blows, printed) in TIP_IN_SAND {
        let [likely, high] = stem_thrust(&frictionless(handbook, "medium_to_dense_sand", blows)?)?;
        near(found, &format!("stem in sand, N {blows}"), likely, printed, "0.5 kN");
        near(found, &format!("the same, high, as gravelly sand, N {blows}"), high / likely, "1.333", "0.001");
    }
    Ok(())
}

/// Cone resistance over count by type of soil, in bar: silty sand 3, sand 5, gravelly sand 6 (Robertson et al., Use of
/// piezometer cone data, ASCE In-Situ 86; recalled).
fn cone_over_count_by_soil(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (key, printed, within) in [
        ("tip.cone_per_blow_low", "300 kPa", "5 kPa"),
        ("tip.cone_per_blow", "500 kPa", "60 kPa"),
        ("tip.cone_per_blow_high", "600 kPa", "5 kPa"),
    ] {
        near(found, key, handbook.pressure(key)?.value, printed, within);
    }
    Ok(())
}

/// 9 to 12 times an undrained strength of 200 kPa: 14 to 19 kN. As a cone with 0.1 to 0.2 MPa a blow, N 30: 24 to
/// 47 kN.
fn pilot_tip_in_clay(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let diameter = q("100 mm");
    for (key, printed) in [("tip.clay_low", "14 kN"), ("tip.clay_high", "19 kN")] {
        let tip = PilotTipInClay {
            bearing_factor: ratio(handbook, key)?,
            strength_per_blow: q::<Pressure>("200 kPa") / 30.0,
            blows: q("30"),
            diameter,
        };
        near(found, key, tip.value(), printed, "0.5 kN");
    }
    let upper = handbook.pressure("tip.cone_per_blow_clay")?.value;
    for (cone_resistance_per_blow, printed) in [(upper / 2.0, "24 kN"), (upper, "47 kN")] {
        let tip = PilotTipAsCone { cone_resistance_per_blow, blows: q("30"), diameter };
        near(found, "tip in clay as a cone", tip.value(), printed, "0.5 kN");
    }
    Ok(())
}

/// 32 blows are 200 kPa at the 6.25 kPa of this crate: likely is 12 times that. High is the cone at the count itself.
fn pilot_tip_in_clay_through_a_drive(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let [likely, _] = stem_thrust(&frictionless(handbook, "hard_clay", "32")?)?;
    near(found, "stem in hard clay, likely", likely, "19 kN", "0.5 kN");
    let [_, high] = stem_thrust(&frictionless(handbook, "hard_clay", "30")?)?;
    near(found, "stem in hard clay, high", high, "47 kN", "0.5 kN");
    Ok(())
}

/// Casing 406 mm, pipe 360 mm, 80 m, 8 kPa: 816 kN with the whole casing in the bore, 724 kN at the end.
fn pipe_pushes_the_casing_out(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let drive = drive(
        handbook,
        "
length: 80 m
groundwater: none
lubrication: none
ground:
  - class: firm_to_very_stiff_clay
    largest_stone: 0 mm
    unit_friction: { low: 8 kPa, likely: 8 kPa, high: 8 kPa }
stem: { outside_diameter: none }
face: { low: 0 kN, likely: 0 kN, high: 0 kN }
candidates:
  - { material: clay, size: 300 mm, outside_diameter: 360 mm, end_bearing_area: 0.03 m2, casing: 406 mm }
",
    )?;
    let pipe = needed(drive.candidates().first(), || "the pipe".to_owned())?;
    let (scheme, sheet) = explain(&drive, pipe, Method::PipeJacking);
    for subject in [Subject::CasingThrust, Subject::JackingThrust] {
        let (demand, _) = needed(checked(&scheme, subject)?.high(), || subject.label().to_owned())?;
        near(found, subject.label(), Force::from_si(demand.si), "816 kN", "0.5 kN");
    }
    let pushed = |step: &&jackpull::method::Step| {
        step.part == "pipe pushes the casing out" && step.equation.name == FrictionForce::EQUATION.name
    };
    let last = needed(sheet.steps().iter().rev().find(pushed), || "friction of the pipe alone".to_owned())?;
    near(found, "pipe alone in the bore", Force::from_si(last.result.si), "724 kN", "0.5 kN");
    Ok(())
}

/// An S of two bends multiplies the tail by 1.30 at 15 deg each, by 1.69 at 30 deg, with friction 0.5.
fn bends_of_the_ramp(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let ramp = handbook.angle("pull.ramp")?.value;
    for (angle, printed) in [(2.0 * ramp, "1.30 kN"), (q::<Angle>("60 deg"), "1.69 kN")] {
        let bends = Capstan { tension: q("1 kN"), friction: ratio(handbook, "pull.friction_ground")?, angle };
        near(found, "tail after both bends", bends.value(), printed, "0.005 kN");
    }
    Ok(())
}

/// With 57,500 psi the bend alone takes 719 psi at 40 diameters.
fn bending_at_forty_diameters(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let radius = MinimumBendRadius {
        outside_diameter: q("1 ft"),
        ratio: ratio(handbook, "pe.bend_radius")?,
        temperature: q("20 degC"),
        cold_factor: ratio(handbook, "pe.bend_cold")?,
    };
    let bend = BendingStress { modulus: q("57500 psi"), outside_diameter: q::<Length>("1 ft"), radius: radius.value() };
    near(found, "bending at 40 diameters", bend.value(), "719 psi", "0.5 psi");
    Ok(())
}

/// At 40 diameters a pipe of DR 17, 21 and 26 ovalises by 0.7, 1.1 and 1.8 %; at 20 diameters by 2.9, 4.8 and 7.8 %.
fn ovality_of_the_bend(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let forty = ratio(handbook, "pe.bend_radius")?;
    for (times, printed) in [(forty, ["0.7 %", "1.1 %", "1.8 %"]), (forty / 2.0, ["2.9 %", "4.8 %", "7.8 %"])] {
        for (dimension_ratio, printed) in ["17", "21", "26"].iter().zip(printed) {
            let bend = BendOvality {
                outside_diameter: q("1 ft"),
                wall: q::<Length>("1 ft") / q::<Ratio>(dimension_ratio),
                radius: q::<Length>("1 ft") * times,
                poisson: ratio(handbook, "pe.poisson")?,
            };
            near(found, &format!("ovality of the bend, DR {dimension_ratio}"), bend.value(), printed, "0.05 %");
        }
    }
    Ok(())
}

/// 1,438 psi at 20 diameters and 1,150 at 25; at 40 diameters 431 of 1,150 psi are left to the pull.
#[test]
fn bending_at_other_radii() {
    for (radius, printed) in [("20 ft", "1438 psi"), ("25 ft", "1150 psi")] {
        let bend = law(BendingStress { modulus: q("57500 psi"), outside_diameter: q("1 ft"), radius: q(radius) });
        assert!((bend - q::<Pressure>(printed)).abs() <= q("0.51 psi"), "{radius}: {bend:?}");
    }
    let share: Ratio = q::<Ratio>("1") - q::<Pressure>("431 psi") / q::<Pressure>("1150 psi");
    let radius = law(BendRadiusForShare {
        modulus: q("57500 psi"),
        outside_diameter: q("1 ft"),
        allowable: q("1150 psi"),
        share,
    });
    assert!((radius - q::<Length>("40 ft")).abs() < q("0.05 ft"), "{radius:?}");
}

/// Curve with lubricant, friction 0.1 and 30 deg: 5.4 % more.
#[test]
fn lubricated_curve() {
    let after = law(Capstan { tension: q("100 kN"), friction: q("0.1"), angle: q("30 deg") });
    assert!((after - q::<Force>("105.4 kN")).abs() < q("0.05 kN"), "{after:?}");
}
