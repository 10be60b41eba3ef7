//! Quantities in one word, for drives made in code: `metres(90.0)`, `inches(10.0)`. The factors are exact, as in
//! [`unit`](mod@super::unit); those of `uom` are rounded (its kip has seven digits). All else is read from text
//! ([`FromText`](super::FromText)).

use super::measure::Measure;
use super::unit::{FOOT, INCH, POUND_FORCE};
use uom::si::f64::{Force, Length, Pressure, Ratio, ThermodynamicTemperature, Time};

/// Makes a function of each unit: its name, the quantity, and how many SI base units it is.
macro_rules! units {
    ($($(#[$doc:meta])+ $name:ident: $quantity:ident, $factor:expr;)+) => {$(
        $(#[$doc])+
        #[must_use]
        pub fn $name(number: f64) -> $quantity {
            $quantity::from_si(number * $factor)
        }
    )+};
}

units! {
    /// Length in m.
    metres: Length, 1.0;
    /// Length in mm.
    millimetres: Length, 1e-3;
    /// Length in ft of 0.3048 m.
    feet: Length, FOOT;
    /// Length in inches of 25.4 mm.
    inches: Length, INCH;
    /// Force in kN.
    kilonewtons: Force, 1e3;
    /// Force in kip, 1,000 lbf.
    kips: Force, 1e3 * POUND_FORCE;
    /// Pressure, friction per area or strength in kPa.
    kilopascals: Pressure, 1e3;
    /// Pressure or strength in psi.
    psi: Pressure, POUND_FORCE / (INCH * INCH);
    /// A plain number, for example a blow count.
    number: Ratio, 1.0;
    /// Ratio in percent, for example a grade.
    percent: Ratio, 1e-2;
    /// Duration in hours.
    hours: Time, 3_600.0;
}

/// Temperature in degrees Celsius.
#[must_use]
pub fn celsius(degrees: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::from_si(degrees + 273.15)
}

/// Temperature in degrees Fahrenheit.
#[must_use]
pub fn fahrenheit(degrees: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::from_si((degrees + 459.67) * (5.0 / 9.0))
}
