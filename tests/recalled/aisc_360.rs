//! The column curve of AISC 360, section E3 (recalled), where its two parts meet, and a free end.

use crate::found::{Found, Outcome, Stop, near, needed, pages, q, value};
use jackpull::Handbook;
use jackpull::laws::column::{ColumnStress, ElasticColumnStress};
use jackpull::quantity::{Pressure, Ratio};
use std::sync::Arc;

pages!(column_curve_meets_itself, free_end_doubles_the_length);

fn of_steel(handbook: &Handbook, key: &str) -> Result<Ratio, Stop> {
    Ok(needed(handbook.steel_factor()?.get(key), || format!("factor {key}"))?.value.factor.value)
}

fn column(handbook: &Handbook, elastic_stress: Pressure) -> Result<Pressure, Stop> {
    Ok(value(ColumnStress {
        yield_strength: q("36 ksi"),
        elastic_stress,
        base: of_steel(handbook, "aisc_column_base")?,
        elastic_share: of_steel(handbook, "aisc_column_elastic")?,
        limit: of_steel(handbook, "aisc_column_limit")?,
    }))
}

/// At `K L / r = 4.71 sqrt(E/F_y)`, where yield is 2.25 times the elastic stress, both give 0.39 of yield.
fn column_curve_meets_itself(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (elastic, printed) in [("16.01 ksi", "14.04 ksi"), ("15.99 ksi", "14.03 ksi")] {
        near(found, &format!("critical stress at {elastic}"), column(handbook, q(elastic))?, printed, "0.05 ksi");
    }
    // Slender, yield four times the elastic stress: 0.877 of 9 ksi.
    near(found, "slender", column(handbook, q("9 ksi"))?, "7.89 ksi", "0.005 ksi");
    // A stocky column yields: 0.658 to the power of nearly nothing.
    near(found, "stocky", column(handbook, q("36000 ksi"))?, "36 ksi", "0.02 ksi");
    // One as slender as yield over elastic stress 1: 0.658 of yield.
    near(found, "at one", column(handbook, q("36 ksi"))?, "23.7 ksi", "0.05 ksi");
    let stress = ElasticColumnStress {
        modulus: q("29000 ksi"),
        length_factor: q("1"),
        free_length: q("133.68 in"),
        radius_of_gyration: q("1 in"),
    };
    // 4.71 sqrt(29000/36) = 133.68.
    near(found, "elastic stress at the limit", value(stress), "16.0 ksi", "0.05 ksi");
    Ok(())
}

/// Twice the length by theory, 2.1 for design: a quarter of the stress, or a little less.
fn free_end_doubles_the_length(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let at = |length_factor| {
        value(ElasticColumnStress {
            modulus: q("29000 ksi"),
            length_factor,
            free_length: q("20 ft"),
            radius_of_gyration: q("4.42 in"),
        })
    };
    let free = needed(handbook.column_length()?.get("one_free"), || "K".to_owned())?.value.value;
    near(found, "free end", at(free) / at(q("1")), "0.25", "0.03");
    Ok(())
}
