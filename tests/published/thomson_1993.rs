//! J. Thomson, Pipejacking and Microtunnelling, 1993, chapter on drive and reception pits, read as the publisher's
//! abstract: width the outside diameter and 2000 mm, length the pipe section and 1000 mm with the most compact plant, up
//! to 5000 mm with some, 1500 to 2000 mm to DN 1500.

use crate::found::{Found, Outcome, Stop, law, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::laws::room::PitSide;
use jackpull::quantity::Length;
use std::sync::Arc;

pages!(sides_of_a_jacking_pit);

/// The safer end of an allowance.
fn allowance(handbook: &Handbook, key: &str) -> Result<Length, Stop> {
    let row = needed(handbook.shaft_size()?.get(key), || key.to_owned())?.value;
    let field = row.high.as_ref().or(row.value.as_ref());
    Ok(needed(field, || format!("the figure of {key}"))?.value)
}

/// A pipe of 610 mm in sections of 2.5 m.
fn sides_of_a_jacking_pit(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (key, part, side) in [
        ("width_typical", "610 mm", "2610 mm"),
        ("length_compact", "2.5 m", "3.5 m"),
        ("length_some_plant", "2.5 m", "7.5 m"),
        ("length_to_dn_1500", "2.5 m", "4.5 m"),
    ] {
        let got = law(PitSide { part: q(part), allowance: allowance(handbook, key)? });
        near(found, key, got, side, "0.5 mm");
    }
    Ok(())
}
