//! ASTM F1804, allowable tensile load for polyethylene gas pipe during pull-in installation, 2008 (2016). Scope read,
//! equation and factors recalled; the product for PE4710 at 12 h is confirmed by ASTM F1962-22 (read second hand).

use crate::found::{Found, Outcome, allowed_stress, close, needed, pages, q, ratio, same};
use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::pe::TensileDesignStress;
use jackpull::quantity::Time;
use std::sync::Arc;

pages!(products_by_material_and_duration, durations_between_the_factors, pe100_yields_like_pe4710);

/// Products up to 1, 12 and 24 h.
const PRODUCTS: [(&str, [&str; 3]); 3] = [
    ("mdpe", ["1040 psi", "988 psi", "946 psi"]),
    ("hdpe", ["1280 psi", "1216 psi", "1165 psi"]),
    ("pe4710", ["1400 psi", "1330 psi", "1274 psi"]),
];
/// Products are printed to 1 psi; 946.4 and 1,164.8 are the roundest of them.
const HALF_A_PSI: f64 = 0.000_5;

fn products_by_material_and_duration(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (material, products) in PRODUCTS {
        let tensile_yield = needed(handbook.pe_material()?.get(material), || material.to_owned())?;
        for (up_to, product) in ["1 h", "12 h", "24 h"].iter().zip(products) {
            let duration = q::<Time>(up_to);
            let factor = handbook
                .pe_duration_factor()?
                .find(|row| row.edition.value.0 == "astm_f1804" && same(row.up_to.value, duration));
            let stress = TensileDesignStress {
                design_factor: ratio(handbook, "pe.tensile_design")?,
                duration_factor: needed(factor, || format!("F1804, {up_to}"))?.value.factor.value,
                tensile_yield: tensile_yield.value.tensile_yield.value,
            };
            close(found, &format!("{material}, {up_to}"), stress.value(), product, HALF_A_PSI);
        }
    }
    Ok(())
}

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
