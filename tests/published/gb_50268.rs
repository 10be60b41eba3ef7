//! GB 50268-2008, clause 6.3.4, table of unit friction with thixotropic slurry (also CECS 246:2008), recalled: concrete
//! pipe in clayey soil 3 to 5, silt 5 to 8, fine sand 8 to 11, medium and coarse sand 11 to 16 kPa, and 3 to 5 kPa in
//! any ground while a stable sleeve of slurry is kept round the pipe.

use crate::found::{Found, Outcome, between, friction, pages};
use jackpull::Handbook;
use jackpull::handbook::{GroundClass, Lubrication, WaterSide};
use std::sync::Arc;

pages!(sleeve_of_slurry_is_the_likely_value, sleeve_of_slurry_is_the_top_of_a_logged_drive, table_is_the_high_value);

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
