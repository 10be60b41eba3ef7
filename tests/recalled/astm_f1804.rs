//! ASTM F1804, allowable tensile load for polyethylene gas pipe during pull-in installation, 2008 (2016). Scope read,
//! equation and factors recalled; the product for PE4710 at 12 h is confirmed by ASTM F1962-22 (read second hand).

use crate::book::pull_stress::PRODUCTS;
use crate::found::{Found, Outcome, allowed_stress, close, pages};
use jackpull::Handbook;
use std::sync::Arc;

pages!(durations_between_the_factors, pe100_yields_like_pe4710);

/// Products are printed to 1 psi; 946.4 and 1,164.8 are the roundest of them.
const HALF_A_PSI: f64 = 0.000_5;

/// A factor counts up to its duration: over 1 h the next one, over 12 h the last.
fn durations_between_the_factors(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (material, products) in PRODUCTS {
        let durations = [("0.6 h", 0), ("1 h", 0), ("1.1 h", 1), ("12 h", 1), ("12.1 h", 2), ("24 h", 2)];
        for (duration, which) in durations {
            let (stress, _) = allowed_stress(handbook, material, "astm_f1804", duration, "73 degF")?;
            close(found, &format!("{material}, {duration}"), stress, products[which], HALF_A_PSI);
        }
    }
    Ok(())
}

/// PE 100 and PE4710 count as one class of resin for short loads, PE 80 as medium density.
fn pe100_yields_like_pe4710(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (material, product) in [("pe100", "1330 psi"), ("pe80", "988 psi")] {
        let (stress, _) = allowed_stress(handbook, material, "astm_f1804", "6 h", "73 degF")?;
        close(found, material, stress, product, HALF_A_PSI);
    }
    Ok(())
}
