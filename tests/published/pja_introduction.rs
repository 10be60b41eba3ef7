//! Pipe Jacking Association, An introduction to pipe jacking and microtunnelling, sec. 6, p. 23, read: 0.5 to 2.5 t/m2
//! over the outside area as a guide in any ground, down to 0.1 t/m2 with refined lubrication.

use crate::found::{Found, Outcome, between, drive, law, near, needed, pages, q};
use crate::found::{checked, scheme};
use jackpull::Handbook;
use jackpull::check::Subject;
use jackpull::handbook::{GroundClass, Lubrication, Method};
use jackpull::laws::thrust::FaceForce;
use jackpull::quantity::{Force, Measure, Pressure};
use std::sync::Arc;

pages!(guide_range_of_unlubricated_drives, resistance_over_the_outside_area);

/// The range is printed to half a t/m2; the bands that follow its top are rounded to 25 kPa.
const LEAST: &str = "4.9 kPa";
const MOST: &str = "25.0 kPa";

/// High values lie in the range, but for dry loose sand and fill, which other values rule; likely values do in all
/// ground.
fn guide_range_of_unlubricated_drives(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let table = handbook.friction_band()?;
    for row in table.rows.iter().filter(|row| row.value.lubrication.value == Lubrication::None) {
        between(found, &format!("likely of {}", row.key), row.value.likely.value, LEAST, MOST);
        let other = row.value.ground.value == GroundClass::Fill || row.key == "loose_sand_above_none";
        if !other {
            between(found, &format!("high of {}", row.key), row.value.high.value, LEAST, MOST);
        }
    }
    for row in table.rows.iter().filter(|row| row.value.lubrication.value == Lubrication::Metered) {
        let refined = q::<Pressure>("0.1 tf/m2");
        let below = row.value.low.value <= refined && refined <= row.value.likely.value;
        crate::found::holds(found, &format!("0.1 t/m2 is between low and likely of {}", row.key), below);
    }
    Ok(())
}

/// 600 mm, 100 and 200 m at 5 kPa everywhere, without stem and face: 942.5 and 1,885.0 kN.
fn resistance_over_the_outside_area(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (length, printed) in [("100 m", "942.5 kN"), ("200 m", "1885.0 kN")] {
        let drive = drive(
            handbook,
            &format!(
                "
length: {length}
groundwater: none
lubrication: none
ground:
  - class: firm_to_very_stiff_clay
    largest_stone: 0 mm
    unit_friction: {{ low: 5 kPa, likely: 5 kPa, high: 5 kPa }}
stem: {{ outside_diameter: none }}
face: {{ low: 0 kN, likely: 0 kN, high: 0 kN }}
candidates: [{{ material: clay, size: 500 mm, outside_diameter: 600 mm, end_bearing_area: 0.08 m2 }}]
"
            ),
        )?;
        let scheme = scheme(&drive, Method::PipeJacking)?;
        let force = needed(scheme.force, || "the force".to_owned())?;
        for level in [force.low, force.likely, force.high] {
            near(found, &format!("jacking force over {length}"), level, printed, "0.05 kN");
        }
        let (demand, _) = needed(checked(&scheme, Subject::JackingThrust)?.high(), || "the thrust".to_owned())?;
        near(found, &format!("thrust over {length}"), Force::from_si(demand.si), printed, "0.05 kN");
    }
    Ok(())
}

/// 0.981, 4.903 and 24.517 kPa.
#[test]
fn tonnes_per_square_metre() {
    for (tonnes, printed) in [("0.1 tf/m2", "0.981 kPa"), ("0.5 tf/m2", "4.903 kPa"), ("2.5 tf/m2", "24.517 kPa")] {
        let off = q::<Pressure>(tonnes) - q::<Pressure>(printed);
        assert!(off.abs() <= q("0.5 Pa"), "{tonnes}");
    }
}

/// Ring of a worked annulus, 0.0499 m3/m between 0.660 and 0.610 m and 0.365 between 0.915 and 0.610: a pressure of
/// 1 kPa on it, and never less than the least force.
#[test]
fn pressure_on_the_ring() {
    let ring = |cut: &str, least: &str| {
        law(FaceForce { pressure: q("1 kPa"), cut_diameter: q(cut), guided_diameter: q("0.610 m"), least: q(least) })
    };
    assert!((ring("0.660 m", "0 N") - q::<Force>("49.9 N")).abs() < q("0.05 N"));
    assert!((ring("0.915 m", "0 N") - q::<Force>("365 N")).abs() < q("0.5 N"));
    assert_eq!(ring("0.915 m", "1 kN"), q::<Force>("1 kN"));
}
