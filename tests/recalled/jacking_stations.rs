//! GB 50268-2008, section 6.3, with CECS 246, recalled: the first intermediate station at 60 % of the capacity of a
//! station, further ones at 80 %, in use from 90 %. Trade habit: main jacks designed to 80 %.

use crate::found::{Found, Outcome, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::stations::StationStart;
use jackpull::quantity::Ratio;
use std::sync::Arc;

pages!(shares_of_the_stations, margin_of_the_jacks, people_enter_from_1_2_m);

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

/// 80 % of capacity: a quarter of the force is in hand.
fn margin_of_the_jacks(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let main = share(handbook, "main_jacks")?;
    near(found, "main jacks", main, "80 %", "0.5 %");
    near(found, "in hand over the force", q::<Ratio>("1") / main, "1.25", "0.005");
    Ok(())
}

/// Pipe jacking association with the British safety executive, guidance for designers, recalled: entry is to be avoided
/// below 1.2 m inside.
fn people_enter_from_1_2_m(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let key = "stations.person_entry";
    let least = needed(handbook.practice_length()?.get(key), || key.to_owned())?.value.value;
    near(found, "entry", least, "1.2 m", "0.05 m");
    Ok(())
}
