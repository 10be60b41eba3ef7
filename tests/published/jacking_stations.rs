//! GB 50268-2008, section 6.3, with CECS 246, recalled: the first intermediate station at 60 % of the capacity of a
//! station, further ones at 80 %, in use from 90 %. Trade habit: main jacks designed to 80 %, a quarter of force in hand.

use crate::found::{Found, Outcome, law, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::stations::{SectionLength, StationStart};
use jackpull::laws::thrust::FrictionForce;
use jackpull::quantity::{Force, Length, Ratio};
use std::sync::Arc;

pages!(shares_of_the_stations, sections_end_at_their_share, margin_of_the_jacks, people_enter_from_1_2_m);

fn share(handbook: &Handbook, key: &str) -> Result<Ratio, crate::found::Stop> {
    let row = needed(handbook.jacking_station()?.get(key), || key.to_owned())?;
    Ok(needed(row.value.value.as_ref(), || key.to_owned())?.value)
}

fn shares_of_the_stations(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (key, printed) in [("first_station", "60 %"), ("next_stations", "80 %"), ("start", "90 %")] {
        near(found, key, share(handbook, key)?, printed, "0.5 %");
    }
    let start =
        StationStart { utilisation: share(handbook, "start")?, station_capacity: q("2 MN"), main_capacity: q("3 MN") };
    near(found, "stations start", start.value(), "1800 kN", "0.5 kN");
    Ok(())
}

/// 2 MN stations on a 1.2 m pipe at 8 kPa, whose 100 m are 3,015.9 kN: face and friction of the first section are
/// 1,200 kN, friction of the next 1,600 kN, so with 90.5 kN at the face they are 36.8 and 53.1 m long.
fn sections_end_at_their_share(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (key, ahead, force, printed) in
        [("first_station", "90.5 kN", "1200 kN", "36.8 m"), ("next_stations", "0 kN", "1600 kN", "53.1 m")]
    {
        let section = SectionLength {
            capacity: q("2 MN"),
            utilisation: share(handbook, key)?,
            ahead: q(ahead),
            unit_friction: q("8 kPa"),
            outside_diameter: q("1.2 m"),
        };
        near(found, key, section.value(), printed, "0.06 m");
        let friction =
            FrictionForce { unit_friction: q("8 kPa"), outside_diameter: q("1.2 m"), length: section.value() };
        near(found, &format!("force at {key}"), friction.value() + q::<Force>(ahead), force, "0.5 kN");
    }
    Ok(())
}

/// 80 % of capacity and 25 % of force in hand are one margin.
fn margin_of_the_jacks(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let main = share(handbook, "main_jacks")?;
    near(found, "main jacks", main, "80 %", "0.5 %");
    let spare = needed(handbook.jacking_station()?.get("spare"), || "spare".to_owned())?;
    let spare = needed(spare.value.low.as_ref(), || "spare".to_owned())?.value;
    near(found, "in hand", spare, "25 %", "0.5 %");
    near(found, "the same margin", main * (q::<Ratio>("1") + spare), "1", "0.005");
    Ok(())
}

/// Pipe jacking association with the British safety executive, guidance for designers, recalled: entry is to be avoided
/// below 1.2 m inside.
fn people_enter_from_1_2_m(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let row = needed(handbook.method_range()?.get("person_entry"), || "person_entry".to_owned())?;
    let least = needed(row.value.diameter_from.as_ref(), || "a diameter".to_owned())?.value;
    near(found, "entry", least, "1.2 m", "0.05 m");
    Ok(())
}

/// A drive of 360 kN a hundred metres is pushed 200 m by jacks of 800 kN with 80 kN at the face.
#[test]
fn push_of_the_main_jacks_alone() {
    let alone = SectionLength {
        capacity: q("1 MN"),
        utilisation: q("80 %"),
        ahead: q("80 kN"),
        unit_friction: q::<Force>("360 kN") / (core::f64::consts::PI * q::<Length>("1 m") * q::<Length>("100 m")),
        outside_diameter: q("1 m"),
    };
    assert!((law(alone) - q::<Length>("200 m")).abs() < q("1 mm"));
}
