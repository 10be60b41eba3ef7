//! JSWAS A-6-2000, small reinforced concrete jacking pipe: its areas against its forces, read second hand on a page of an
//! association for one jacking method; peak stress on curves from a page of another.

use crate::found::{Found, Outcome, Stop, holds, near, needed, pages, q, value};
use jackpull::Handbook;
use jackpull::laws::concrete::{AllowableMeanEndForce, MeanAtTurnedJoint};
use jackpull::quantity::{Measure, Pressure, Ratio};
use std::sync::Arc;

pages!(ratings_are_area_times_stress, mean_of_a_joint_on_the_edge_of_opening);

fn stress(handbook: &Handbook, key: &str) -> Result<Pressure, Stop> {
    Ok(needed(handbook.concrete_strength()?.get(key), || format!("stress {key}"))?.value.stress.value)
}

/// 13 and 17.5 N/mm2 on the effective area, which is rounded.
fn ratings_are_area_times_stress(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for row in handbook.concrete_small_pipe()?.iter() {
        let (key, row) = (&row.value.key, &row.value.value);
        for (grade, rated) in [("jswas_50_mean", row.rated_type_50.value), ("jswas_70_mean", row.rated_type_70.value)] {
            let allowable_mean = stress(handbook, grade)?;
            let force = value(AllowableMeanEndForce { end_bearing_area: row.end_area.value, allowable_mean });
            holds(found, &format!("{key} by {grade}"), (force - rated).abs() <= q("0.7 kN"));
        }
    }
    Ok(())
}

/// Peak over mean 25/13 is 1.92, under the 2 of a triangle: with any angle 12.5 N/mm2, not 13.
fn mean_of_a_joint_on_the_edge_of_opening(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (allowable_mean, allowable_peak) = (stress(handbook, "jswas_50_mean")?, stress(handbook, "jswas_50_peak")?);
    near(found, "peak over mean", allowable_peak / allowable_mean, "1.92", "0.005");
    let at = |ratio: &str| value(MeanAtTurnedJoint { allowable_mean, allowable_peak, stress_ratio: q(ratio) });
    near(found, "closed joint", at("0.5"), "12.5 N/mm2", "0.05 N/mm2");
    near(found, "no angle", at("1"), "13 N/mm2", "0.05 N/mm2");
    // The small table has 13 N/mm2 as strength over 3.85, 17.5 as strength over 4.0.
    near(found, "type 50", q::<Pressure>("50 N/mm2") / allowable_mean, "3.85", "0.005");
    near(found, "type 70", q::<Pressure>("70 N/mm2") / stress(handbook, "jswas_70_mean")?, "4.0", "0.05");
    Ok(())
}

/// The least of the two limits, whatever the joint.
#[test]
fn never_above_either_limit() {
    for tenth in 1..=10 {
        let stress_ratio = Ratio::from_si(f64::from(tenth) / 10.0);
        let mean = value(MeanAtTurnedJoint { allowable_mean: q("13 MPa"), allowable_peak: q("25 MPa"), stress_ratio });
        assert!(mean <= q("13 MPa") && mean <= stress_ratio * q::<Pressure>("25 MPa"));
    }
}
