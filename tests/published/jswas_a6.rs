//! JSWAS A-6-2000, small reinforced concrete jacking pipe: table of effective area and allowable force, read second hand
//! on a page of an association for one jacking method; peak stress on curves from a page of another.

use crate::found::{Found, Outcome, Stop, near, needed, pages, q, value};
use jackpull::Handbook;
use jackpull::laws::concrete::{AllowableMeanEndForce, MeanAtTurnedJoint};
use jackpull::quantity::{Measure, Pressure, Ratio};
use std::sync::Arc;

pages!(table_of_allowable_forces, mean_of_a_joint_on_the_edge_of_opening);

/// Area, force of type 50 and of type 70.
const PIPES: [(&str, &str, &str, &str); 8] = [
    ("dn_250", "0.0417 m2", "542 kN", "730 kN"),
    ("dn_300", "0.0512 m2", "666 kN", "896 kN"),
    ("dn_350", "0.0628 m2", "816 kN", "1099 kN"),
    ("dn_400", "0.0754 m2", "980 kN", "1320 kN"),
    ("dn_450", "0.0908 m2", "1180 kN", "1589 kN"),
    ("dn_500", "0.1056 m2", "1373 kN", "1848 kN"),
    ("dn_600", "0.1404 m2", "1825 kN", "2457 kN"),
    ("dn_700", "0.1880 m2", "2444 kN", "3290 kN"),
];

fn stress(handbook: &Handbook, key: &str) -> Result<Pressure, Stop> {
    Ok(needed(handbook.concrete_strength()?.get(key), || format!("stress {key}"))?.value.stress.value)
}

/// 13 and 17.5 N/mm2 on the effective area: each printed force within 0.5 kN.
fn table_of_allowable_forces(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (key, area, type_50, type_70) in PIPES {
        let row = needed(handbook.concrete_small_pipe()?.get(key), || key.to_owned())?.value;
        for (grade, rated, printed) in
            [("jswas_50_mean", row.rated_type_50.value, type_50), ("jswas_70_mean", row.rated_type_70.value, type_70)]
        {
            let allowable_mean = stress(handbook, grade)?;
            let force = value(AllowableMeanEndForce { end_bearing_area: q(area), allowable_mean });
            near(found, &format!("{key} by {grade}, area as printed"), force, printed, "0.51 kN");
            near(found, &format!("{key} by {grade}, row"), rated, printed, "0.5 kN");
            let own = value(AllowableMeanEndForce { end_bearing_area: row.end_area.value, allowable_mean });
            near(found, &format!("{key} by {grade}, area of the row"), own, printed, "0.51 kN");
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
