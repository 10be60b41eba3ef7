//! GB 50268-2008, clause 6.3.4, table of unit friction with thixotropic slurry (also CECS 246:2008), recalled: concrete
//! pipe in clayey soil 3 to 5, silt 5 to 8, fine sand 8 to 11, medium and coarse sand 11 to 16 kPa; steel pipe 3 to 4, 4
//! to 7, 7 to 10 and 10 to 13; and 3 to 5 kPa in any ground while a stable sleeve of slurry is kept round the pipe.

use crate::found::{Found, Outcome, between, friction, near, needed, pages};
use jackpull::Handbook;
use jackpull::handbook::{GroundClass, Lubrication, WaterSide};
use std::sync::Arc;

pages!(
    sleeve_of_slurry_is_the_likely_value,
    sleeve_of_slurry_is_the_top_of_a_logged_drive,
    table_is_the_high_value,
    steel_pipe_and_the_sleeve,
);

/// A metered drive is likely to keep its sleeve.
fn sleeve_of_slurry_is_the_likely_value(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for row in handbook.friction_band()?.rows.iter().filter(|row| row.value.lubrication.value == Lubrication::Metered) {
        between(found, &format!("likely of {}", row.key), row.value.likely.value, "3.0 kPa", "5.0 kPa");
    }
    Ok(())
}

/// A drive that logs its force sees that it does.
fn sleeve_of_slurry_is_the_top_of_a_logged_drive(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for row in handbook.friction_band()?.rows.iter().filter(|row| row.value.lubrication.value == Lubrication::Logged) {
        between(found, &format!("high of {}", row.key), row.value.high.value, "3.0 kPa", "5.0 kPa");
    }
    Ok(())
}

/// Gravel and coarse sand share a band.
fn table_is_the_high_value(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (ground, low, high) in [
        (GroundClass::Silt, "5.0 kPa", "8.0 kPa"),
        (GroundClass::LooseSand, "8.0 kPa", "11.0 kPa"),
        (GroundClass::MediumToDenseSand, "8.0 kPa", "11.0 kPa"),
        (GroundClass::Gravel, "11.0 kPa", "16.0 kPa"),
    ] {
        let row = friction(handbook, ground, WaterSide::Any, Lubrication::Metered)?;
        between(found, &format!("high in {}", ground.key()), row.high.value, low, high);
    }
    Ok(())
}

/// Rows that a friction model of a steel pipe, or of a logged drive, shows.
fn steel_pipe_and_the_sleeve(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (key, low, high) in [
        ("gb_clay_steel", "3.0 kPa", "4.0 kPa"),
        ("gb_silt_steel", "4.0 kPa", "7.0 kPa"),
        ("gb_fine_sand_steel", "7.0 kPa", "10.0 kPa"),
        ("gb_coarse_sand_steel", "10.0 kPa", "13.0 kPa"),
        ("gb_sleeve_concrete", "3.0 kPa", "5.0 kPa"),
        ("gb_sleeve_steel", "3.0 kPa", "5.0 kPa"),
    ] {
        let row = needed(handbook.unit_friction_published()?.get(key), || key.to_owned())?.value;
        let low_end = needed(row.low.as_ref(), || format!("low of {key}"))?.value;
        near(found, &format!("{key}, low"), low_end, low, "0.05 kPa");
        near(found, &format!("{key}, high"), row.high.value, high, "0.05 kPa");
    }
    Ok(())
}
