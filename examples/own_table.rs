//! An agency's own factor laid over the handbook, and the pipes ranked with it and without.
//!
//! ```sh
//! cargo run --example own_table
//! ```

use jackpull::choice::Ranked;
use jackpull::{Handbook, choose, read_drive};
use std::error::Error;
use std::io::{Write, stdout};
use std::sync::Arc;

const DRIVE: &str = include_str!("fennbridge_mill_lane.yaml");
const FACTORS: &str = r#"
id: practice_ratio
title: factors of our agency
rows:
  - { key: clay.factor, value: "6", locator: "agency manual, section 5" }
"#;

pub(crate) fn main() -> Result<(), Box<dyn Error>> {
    let handbook = Handbook::embedded();
    let ours = Arc::new(handbook.with_overlay("agency.yaml", FACTORS)?);
    let mut out = stdout().lock();
    for (name, tables) in [("handbook", handbook), ("agency", ours)] {
        let choice = choose(&read_drive(DRIVE, &tables)?)?;
        writeln!(out, "by the {name}: {}", choice.reason)?;
        for Ranked { candidate, scheme, standing, .. } in &choice.ranked {
            writeln!(out, "  candidate {candidate} by {}: {standing}", scheme.method)?;
        }
    }
    Ok(())
}
