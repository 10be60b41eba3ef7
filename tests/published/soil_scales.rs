//! Scales of blow counts: consistency of fine soil by Terzaghi and Peck, Soil Mechanics in Engineering Practice, 1967
//! (read in a general geotechnical library), and density of sand by EM 1110-2-2504, 1994, Table 3-1 (read in a stored
//! copy) with another listing of the same scale. Where one source writes 5-10 and the other 4-10, classes are taken
//! half open.

use crate::found::{Found, Outcome, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::handbook::{GroundClass, GroundClassRow};
use jackpull::quantity::{Pressure, Ratio};
use std::sync::Arc;

pages!(ends_of_the_clay_classes, ends_of_the_sand_classes, likely_count_is_the_middle, strength_per_blow);

fn class(handbook: &Handbook, ground: GroundClass) -> Result<GroundClassRow, crate::found::Stop> {
    let row = handbook.ground_class()?.find(|row| row.ground.value == ground);
    Ok(needed(row, || ground.key().to_owned())?.value.clone())
}

fn ends(handbook: &Handbook, found: &mut Found, ground: GroundClass, low: &str, high: &str) -> Outcome {
    let row = class(handbook, ground)?;
    near(found, &format!("lowest count of {}", ground.key()), row.n_low.value, low, "0.5");
    near(found, &format!("highest count of {}", ground.key()), row.n_high.value, high, "0.5");
    Ok(())
}

/// Very soft and soft 0 to 4, medium 4 to 8, stiff 8 to 15, very stiff 15 to 30, hard over 30.
fn ends_of_the_clay_classes(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    ends(handbook, found, GroundClass::SoftClay, "0", "4")?;
    ends(handbook, found, GroundClass::FirmToVeryStiffClay, "4", "30")?;
    near(found, "lowest count of hard clay", class(handbook, GroundClass::HardClay)?.n_low.value, "30", "0.5");
    Ok(())
}

/// Very loose and loose 0 to 10, medium 10 to 30, dense 30 to 50.
fn ends_of_the_sand_classes(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    ends(handbook, found, GroundClass::LooseSand, "0", "10")?;
    ends(handbook, found, GroundClass::MediumToDenseSand, "10", "50")
}

/// Half way between the printed ends of the class; hard clay is taken to 50.
fn likely_count_is_the_middle(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (ground, low, high) in [
        (GroundClass::SoftClay, 0.0, 4.0),
        (GroundClass::FirmToVeryStiffClay, 4.0, 30.0),
        (GroundClass::HardClay, 30.0, 50.0),
        (GroundClass::LooseSand, 0.0, 10.0),
        (GroundClass::MediumToDenseSand, 10.0, 50.0),
    ] {
        let middle = format!("{}", (low + high) / 2.0);
        let likely = class(handbook, ground)?.n_likely.value;
        near(found, &format!("likely count of {}", ground.key()), likely, &middle, "0.5");
    }
    Ok(())
}

/// Undrained strength 12.5 kPa at N 2, 25 at 4, 50 at 8, half of the printed unconfined strength. Over N 8 the scale is
/// a little steeper: 100 kPa at 15 and 200 at 30.
fn strength_per_blow(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let per_blow = handbook.pressure("clay.strength_per_blow")?.value;
    for (blows, printed, within) in [
        ("2", "12.5 kPa", "0.05 kPa"),
        ("4", "25 kPa", "0.5 kPa"),
        ("8", "50 kPa", "0.5 kPa"),
        ("15", "100 kPa", "7 kPa"),
        ("30", "200 kPa", "13 kPa"),
    ] {
        let strength: Pressure = per_blow * q::<Ratio>(blows);
        near(found, &format!("undrained strength at N {blows}"), strength, printed, within);
    }
    Ok(())
}
