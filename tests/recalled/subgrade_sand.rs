//! Modulus of horizontal subgrade reaction of sand, per depth: K. Terzaghi, Geotechnique 5, 1955, as later texts print it
//! in SI units (recalled, not re-read), and the scale of density by blow count of Terzaghi and Peck.

use crate::found::{Found, Outcome, near, needed, pages};
use jackpull::Handbook;
use std::sync::Arc;

pages!(constants_in_si, ranges_of_the_constants, counts_of_density);

/// Loose, medium, dense: 2.2, 6.6 and 17.6 MN/m3 dry or moist; 1.3, 4.4 and 10.7 under water.
fn constants_in_si(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (density, moist, submerged) in [
        ("loose", "2200 kN/m3", "1300 kN/m3"),
        ("medium", "6600 kN/m3", "4400 kN/m3"),
        ("dense", "17600 kN/m3", "10700 kN/m3"),
    ] {
        let row = needed(handbook.sand_bedding()?.get(density), || density.to_owned())?.value;
        near(found, &format!("{density}, moist"), row.moist.value, moist, "50 kN/m3");
        near(found, &format!("{density}, under water"), row.submerged.value, submerged, "50 kN/m3");
    }
    Ok(())
}

/// Loose 100 to 300 about 200, medium 300 to 1000 about 600, dense 1000 to 2000 about 1500.
fn ranges_of_the_constants(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (density, low, value) in [("loose", 100.0, 200.0), ("medium", 300.0, 600.0), ("dense", 1000.0, 1500.0)] {
        let row = needed(handbook.sand_bedding()?.get(density), || density.to_owned())?.value;
        near(found, &format!("{density}, low share"), row.low_share.value, &format!("{}", low / value), "0.005");
    }
    Ok(())
}

/// Loose from 4 blows, medium from 10, dense from 30.
fn counts_of_density(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (density, printed) in [("loose", "4"), ("medium", "10"), ("dense", "30")] {
        let row = needed(handbook.sand_bedding()?.get(density), || density.to_owned())?.value;
        near(found, &format!("{density}, first count"), row.blows_from.value, printed, "0.5");
    }
    Ok(())
}
