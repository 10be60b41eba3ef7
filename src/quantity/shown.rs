//! Quantity to text. The role of a value, not its dimension, chooses the unit it is printed in: a pipe diameter
//! in mm, a drive length in m; unit friction in kPa, strength in MPa.

use super::measure::{Dim, Measure};
use super::unit::{
    self, ANGLE, AREA, FORCE, LENGTH, LINE_LOAD, PRESSURE, TEMPERATURE, TIME, UNIT_WEIGHT, UnitSystem, VISCOSITY,
    VOLUME,
};
use core::fmt;

/// Declares the roles: dimension, then unit symbol and number of decimals in SI and in US units.
macro_rules! roles {
    ($($(#[$doc:meta])+ $name:ident: $dim:expr, $si:expr, $us:expr;)+) => {
        /// What a number is used for, which decides how it is printed.
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub enum Role {
            $($(#[$doc])+ $name,)+
        }

        impl Role {
            /// Unit symbol and number of decimals.
            const fn print(self, system: UnitSystem) -> (&'static str, usize) {
                let (si, us) = match self {
                    $(Self::$name => ($si, $us),)+
                };
                match system {
                    UnitSystem::Si => si,
                    UnitSystem::Us => us,
                }
            }

            /// Dimension of the quantities that have this role.
            #[must_use]
            pub const fn dim(self) -> Dim {
                match self {
                    $(Self::$name => $dim,)+
                }
            }
        }
    };
}

roles! {
    /// Pipe, casing or bore diameter.
    Diameter: LENGTH, ("mm", 0), ("in", 2);
    /// Wall thickness.
    Wall: LENGTH, ("mm", 1), ("in", 3);
    /// Length along the drive.
    Distance: LENGTH, ("m", 1), ("ft", 0);
    /// Depth below ground.
    Depth: LENGTH, ("m", 2), ("ft", 1);
    /// Small vertical or radial movements and tolerances.
    Offset: LENGTH, ("mm", 0), ("in", 2);
    /// Jacking force and thrust.
    Thrust: FORCE, ("kN", 1), ("kip", 1);
    /// Pull force.
    Pull: FORCE, ("kN", 1), ("kip", 1);
    /// Unit friction and face pressure.
    UnitFriction: PRESSURE, ("kPa", 2), ("psf", 0);
    /// Strength, stress.
    Strength: PRESSURE, ("MPa", 2), ("psi", 0);
    /// Modulus of a material or of the ground (SI: GPa from 10 GPa on).
    Modulus: PRESSURE, ("MPa", 1), ("psi", 0);
    /// Pressure on a pipe.
    Pressure: PRESSURE, ("kPa", 0), ("psi", 1);
    /// End bearing and section areas.
    Area: AREA, ("mm2", 0), ("in2", 1);
    /// Area of a site.
    GroundArea: AREA, ("m2", 0), ("ft2", 0);
    /// Weight per length of pipe.
    LineWeight: LINE_LOAD, ("kN/m", 3), ("lbf/ft", 1);
    /// Weight per volume.
    UnitWeight: UNIT_WEIGHT, ("kN/m3", 1), ("pcf", 0);
    /// Mass per volume.
    Density: Dim::of(-3, 1, 0, 0), ("kg/m3", 0), ("lb/ft3", 1);
    /// Plain ratio.
    Ratio: Dim::NONE, ("", 3), ("", 3);
    /// Ratio as a percentage.
    Percent: Dim::NONE, ("%", 2), ("%", 2);
    /// Angle in degrees.
    Angle: ANGLE, ("deg", 1), ("deg", 1);
    /// Angle at a joint, where hundredths of a degree count.
    JointAngle: ANGLE, ("deg", 3), ("deg", 3);
    /// Temperature.
    Temperature: TEMPERATURE, ("degC", 1), ("degF", 0);
    /// Duration.
    Duration: TIME, ("h", 1), ("h", 1);
    /// Pull rate.
    Rate: Dim::of(1, 0, -1, 0), ("m/h", 1), ("ft/h", 0);
    /// A count, for example an SPT N value.
    Count: Dim::NONE, ("", 0), ("", 0);
    /// Working shifts.
    Shifts: Dim::NONE, ("", 1), ("", 1);
    /// Torque.
    Torque: Dim::of(2, 1, -2, 0), ("kN*m", 1), ("lbf*ft", 0);
    /// Second moment of area.
    SecondMoment: Dim::of(4, 0, 0, 0), ("cm4", 1), ("in4", 2);
    /// Settlement of the ground.
    Settlement: LENGTH, ("mm", 1), ("in", 2);
    /// Slope of a pipe or of the ground.
    Slope: Dim::NONE, ("%", 3), ("%", 3);
    /// Volume per length of bore.
    VolumePerLength: AREA, ("m3/m", 4), ("ft3/ft", 3);
    /// Velocity of water in a pipe.
    FlowSpeed: Dim::of(1, 0, -1, 0), ("m/s", 2), ("ft/s", 2);
    /// Volume per time.
    Flow: Dim::of(3, 0, -1, 0), ("L/s", 2), ("gal_us/min", 1);
    /// Permeability of the ground.
    Permeability: Dim::of(1, 0, -1, 0), ("m/day", 3), ("ft/day", 2);
    /// Stress of flowing water on the wall of a pipe.
    Tractive: PRESSURE, ("Pa", 2), ("psf", 4);
    /// Volume of spoil, annulus or grout.
    Volume: VOLUME, ("m3", 2), ("yd3", 2);
    /// Volume of fluid.
    FluidVolume: VOLUME, ("m3", 2), ("gal_us", 0);
    /// Speed of a fluid.
    Speed: Dim::of(1, 0, -1, 0), ("m/s", 3), ("ft/s", 3);
    /// Viscosity of a fluid.
    Viscosity: VISCOSITY, ("kg/m/s", 4), ("lb/ft/s", 4);
    /// Thermal expansion.
    Expansion: Dim::of(0, 0, 0, -1), ("mm/m/K", 4), ("mm/m/K", 4);
}

/// A value with its dimension erased and its role kept, ready to print.
#[derive(Debug, Clone, Copy, PartialEq)]
#[must_use]
pub struct Shown {
    /// The value in SI base units.
    pub si: f64,
    /// What it is used for.
    pub role: Role,
}

impl Shown {
    /// Erases the dimension of `quantity`.
    pub fn of<Q: Measure>(quantity: Q, role: Role) -> Self {
        debug_assert_eq!(Q::DIM, role.dim(), "role {role:?} does not fit the quantity");
        Self { si: quantity.si(), role }
    }

    /// Unit symbol and number of decimals; a stiff material in a larger unit.
    fn print(self, system: UnitSystem) -> (&'static str, usize) {
        match (self.role, system) {
            (Role::Modulus, UnitSystem::Si) if self.si.abs() >= STIFF => ("GPa", 1),
            (Role::Modulus, UnitSystem::Us) if self.si.abs() >= STIFF => ("ksi", 0),
            _ => self.role.print(system),
        }
    }

    /// The number and the symbol of the unit it is printed in.
    #[must_use]
    pub fn in_units(self, system: UnitSystem) -> (f64, &'static str) {
        let (symbol, _) = self.print(system);
        (from_si(self.si, symbol), symbol)
    }

    /// Formats with the decimals of the role.
    pub const fn display(self, system: UnitSystem) -> ShownIn {
        ShownIn { shown: self, system, digits: None }
    }

    /// The same with as many decimals more as make four digits count: to be computed with.
    pub const fn precise(self, system: UnitSystem) -> ShownIn {
        ShownIn { shown: self, system, digits: Some(4) }
    }
}

/// SI value to the unit written `symbols`, which must be in the unit table (products and quotients too).
fn from_si(si: f64, symbols: &str) -> f64 {
    if symbols.is_empty() {
        return si;
    }
    let mut value = si;
    for (place, product) in symbols.split('/').enumerate() {
        for one in product.split('*') {
            let (symbol, exponent) = match one.char_indices().last() {
                Some((at, c)) if c.is_ascii_digit() => (one.split_at(at).0, c.to_digit(10).map_or(1, u32::cast_signed)),
                _ => (one, 1),
            };
            if let Some(unit) = unit::find(symbol) {
                let factor = unit.factor.powi(exponent);
                value = if place == 0 { value / factor - unit.offset } else { value * factor };
            }
        }
    }
    value
}

/// Modulus from which it is printed in the larger unit, in Pa.
const STIFF: f64 = 1e10;

/// Where digits can no longer be counted at a glance.
const HUGE: f64 = 1e9;

/// A number with so many decimals; in scientific notation where it is huge.
#[must_use]
pub fn decimal(value: f64, decimals: usize) -> String {
    if value.abs() >= HUGE && value.is_finite() { format!("{value:.3e}") } else { format!("{value:.decimals$}") }
}

/// A number with the digits it has; in scientific notation where it is huge.
#[must_use]
pub fn plain(value: f64) -> String {
    if value.abs() >= HUGE && value.is_finite() { format!("{value:e}") } else { value.to_string() }
}

/// Decimals with which so many digits of a number count.
fn decimals_for(value: f64, digits: i32) -> usize {
    /// Beyond it a number is as good as nothing.
    const MOST: i32 = 12;
    #[expect(clippy::cast_possible_truncation, reason = "the exponent of a number has three digits")]
    let whole = if value.is_normal() { value.abs().log10().floor() as i32 + 1 } else { digits };
    usize::try_from((digits - whole).clamp(0, MOST)).unwrap_or_default()
}

/// [`Shown`] in one family of units.
#[derive(Debug, Clone, Copy)]
#[must_use]
pub struct ShownIn {
    shown: Shown,
    system: UnitSystem,
    /// Least number of digits that count, where more may be printed than the role has.
    digits: Option<i32>,
}

impl fmt::Display for ShownIn {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (symbol, decimals) = self.shown.print(self.system);
        let (value, _) = self.shown.in_units(self.system);
        let text = decimal(value, decimals.max(self.digits.map_or(0, |digits| decimals_for(value, digits))));
        // A factor of 9 is no measurement to a thousandth.
        let text = match self.shown.role {
            Role::Ratio if text.contains('.') && !text.contains('e') => {
                text.trim_end_matches('0').trim_end_matches('.')
            }
            _ => &text,
        };
        // A negative zero reads like a mistake.
        let zero = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
        let text = if zero { text.trim_start_matches('-') } else { text };
        match symbol {
            "" => f.write_str(text),
            _ => write!(f, "{text} {symbol}"),
        }
    }
}
