//! One law alone: what it takes to pull a string over the ground, the range of the law, and where law and friction are
//! from.
//!
//! ```sh
//! cargo run --example one_law
//! ```

use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::pull::StraightPull;
use jackpull::quantity::{Angle, FromText, Length, LineLoad, Role, Shown, UnitSystem};
use std::error::Error;
use std::io::{Write, stdout};

pub(crate) fn main() -> Result<(), Box<dyn Error>> {
    let handbook = Handbook::embedded();
    let friction = handbook.ratio("pull.friction_ground")?;
    let pull = StraightPull {
        friction: friction.value,
        net_weight: LineLoad::from_text("0.9 kN/m")?,
        length: Length::from_text("60 m")?,
        rise: Angle::from_text("0 deg")?,
    };
    let mut out = stdout().lock();
    writeln!(out, "{}", Shown::of(pull.value(), Role::Pull).display(UnitSystem::Si))?;
    writeln!(out, "within the range of the law: {}", pull.in_range())?;
    let law = StraightPull::EQUATION;
    writeln!(out, "{}: {} ({}, {}, {})", law.name, law.form, law.source, law.locator, law.mark)?;
    writeln!(out, "friction from {}", handbook.reference(friction.origin))?;
    Ok(())
}
