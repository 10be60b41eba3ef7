//! Quantity to text. The role of a value, not its dimension, chooses the unit it is printed in: a pipe diameter
//! in mm, a drive length in m; unit friction in kPa, strength in MPa.

use super::measure::{Dim, Measure};
use super::unit::{self, UnitSystem};
use core::fmt;

/// What a number is used for, which decides how it is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Role {
    /// Pipe, casing or bore diameter.
    Diameter,
    /// Wall thickness.
    Wall,
    /// Length along the drive.
    Distance,
    /// Depth below ground.
    Depth,
    /// Small vertical or radial movements and tolerances.
    Offset,
    /// Jacking force and thrust.
    Thrust,
    /// Pull force.
    Pull,
    /// Unit friction and face pressure.
    UnitFriction,
    /// Strength, stress.
    Strength,
    /// Modulus of a material or of the ground (SI: GPa from 10 GPa on).
    Modulus,
    /// Pressure on a pipe.
    Pressure,
    /// End bearing and section areas.
    Area,
    /// Area of a site.
    GroundArea,
    /// Weight per length of pipe.
    LineWeight,
    /// Weight per volume.
    UnitWeight,
    /// Mass per volume.
    Density,
    /// Plain ratio.
    Ratio,
    /// Ratio as a percentage.
    Percent,
    /// Angle in degrees.
    Angle,
    /// Angle at a joint, where hundredths of a degree count.
    JointAngle,
    /// Temperature.
    Temperature,
    /// Duration.
    Duration,
    /// Pull rate.
    Rate,
    /// A count, for example an SPT N value.
    Count,
    /// Working shifts.
    Shifts,
    /// Torque.
    Torque,
    /// Second moment of area.
    SecondMoment,
    /// Settlement of the ground.
    Settlement,
    /// Slope of a pipe or of the ground.
    Slope,
    /// Volume per length of bore.
    VolumePerLength,
    /// Velocity of water in a pipe.
    FlowSpeed,
    /// Volume per time.
    Flow,
    /// Permeability of the ground.
    Permeability,
    /// Stress of flowing water on the wall of a pipe.
    Tractive,
    /// Volume of spoil, annulus or grout.
    Volume,
    /// Volume of fluid.
    FluidVolume,
    /// Speed of a fluid.
    Speed,
    /// Viscosity of a fluid.
    Viscosity,
    /// Thermal expansion.
    Expansion,
}

impl Role {
    /// Unit symbol and number of decimals.
    const fn print(self, system: UnitSystem) -> (&'static str, usize) {
        match (self, system) {
            (Self::Diameter, UnitSystem::Si) => ("mm", 0),
            (Self::Diameter, UnitSystem::Us) => ("in", 2),
            (Self::Wall, UnitSystem::Si) => ("mm", 1),
            (Self::Wall, UnitSystem::Us) => ("in", 3),
            (Self::Distance, UnitSystem::Si) => ("m", 1),
            (Self::Distance, UnitSystem::Us) => ("ft", 0),
            (Self::Depth, UnitSystem::Si) => ("m", 2),
            (Self::Depth, UnitSystem::Us) => ("ft", 1),
            (Self::Offset, UnitSystem::Si) => ("mm", 0),
            (Self::Offset, UnitSystem::Us) => ("in", 2),
            (Self::Thrust, UnitSystem::Si) => ("kN", 1),
            (Self::Thrust, UnitSystem::Us) => ("kip", 1),
            (Self::Pull, UnitSystem::Si) => ("kN", 1),
            (Self::Pull, UnitSystem::Us) => ("kip", 1),
            (Self::UnitFriction, UnitSystem::Si) => ("kPa", 2),
            (Self::UnitFriction, UnitSystem::Us) => ("psf", 0),
            (Self::Strength, UnitSystem::Si) => ("MPa", 2),
            (Self::Strength, UnitSystem::Us) => ("psi", 0),
            (Self::Modulus, UnitSystem::Si) => ("MPa", 1),
            (Self::Modulus, UnitSystem::Us) => ("psi", 0),
            (Self::Pressure, UnitSystem::Si) => ("kPa", 0),
            (Self::Pressure, UnitSystem::Us) => ("psi", 1),
            (Self::Area, UnitSystem::Si) => ("mm2", 0),
            (Self::Area, UnitSystem::Us) => ("in2", 1),
            (Self::GroundArea, UnitSystem::Si) => ("m2", 0),
            (Self::GroundArea, UnitSystem::Us) => ("ft2", 0),
            (Self::LineWeight, UnitSystem::Si) => ("kN/m", 3),
            (Self::LineWeight, UnitSystem::Us) => ("lbf/ft", 1),
            (Self::UnitWeight, UnitSystem::Si) => ("kN/m3", 1),
            (Self::UnitWeight, UnitSystem::Us) => ("pcf", 0),
            (Self::Density, UnitSystem::Si) => ("kg/m3", 0),
            (Self::Density, UnitSystem::Us) => ("lb/ft3", 1),
            (Self::Ratio, _) => ("", 3),
            (Self::Percent, _) => ("%", 2),
            (Self::Angle, _) => ("deg", 1),
            (Self::JointAngle, _) => ("deg", 3),
            (Self::Temperature, UnitSystem::Si) => ("degC", 1),
            (Self::Temperature, UnitSystem::Us) => ("degF", 0),
            (Self::Duration, _) => ("h", 1),
            (Self::Rate, UnitSystem::Si) => ("m/h", 1),
            (Self::Rate, UnitSystem::Us) => ("ft/h", 0),
            (Self::Count, _) => ("", 0),
            (Self::Shifts, _) => ("", 1),
            (Self::Torque, UnitSystem::Si) => ("kN*m", 1),
            (Self::Torque, UnitSystem::Us) => ("lbf*ft", 0),
            (Self::SecondMoment, UnitSystem::Si) => ("cm4", 1),
            (Self::SecondMoment, UnitSystem::Us) => ("in4", 2),
            (Self::Settlement, UnitSystem::Si) => ("mm", 1),
            (Self::Settlement, UnitSystem::Us) => ("in", 2),
            (Self::Slope, _) => ("%", 3),
            (Self::VolumePerLength, UnitSystem::Si) => ("m3/m", 4),
            (Self::VolumePerLength, UnitSystem::Us) => ("ft3/ft", 3),
            (Self::FlowSpeed, UnitSystem::Si) => ("m/s", 2),
            (Self::FlowSpeed, UnitSystem::Us) => ("ft/s", 2),
            (Self::Flow, UnitSystem::Si) => ("L/s", 2),
            (Self::Flow, UnitSystem::Us) => ("gal_us/min", 1),
            (Self::Permeability, UnitSystem::Si) => ("m/day", 3),
            (Self::Permeability, UnitSystem::Us) => ("ft/day", 2),
            (Self::Tractive, UnitSystem::Si) => ("Pa", 2),
            (Self::Tractive, UnitSystem::Us) => ("psf", 4),
            (Self::Volume, UnitSystem::Si) => ("m3", 2),
            (Self::Volume, UnitSystem::Us) => ("yd3", 2),
            (Self::FluidVolume, UnitSystem::Si) => ("m3", 2),
            (Self::FluidVolume, UnitSystem::Us) => ("gal_us", 0),
            (Self::Speed, UnitSystem::Si) => ("m/s", 3),
            (Self::Speed, UnitSystem::Us) => ("ft/s", 3),
            (Self::Viscosity, UnitSystem::Si) => ("kg/m/s", 4),
            (Self::Viscosity, UnitSystem::Us) => ("lb/ft/s", 4),
            // No degrees Fahrenheit: a scale with a zero of its own cannot be part of a product.
            (Self::Expansion, _) => ("mm/m/K", 4),
        }
    }

    /// The dimension every value of this role has.
    #[must_use]
    pub const fn dim(self) -> Dim {
        match self {
            Self::Diameter | Self::Wall | Self::Distance | Self::Depth | Self::Offset => Dim::of(1, 0, 0, 0),
            Self::Thrust | Self::Pull => Dim::of(1, 1, -2, 0),
            Self::UnitFriction | Self::Strength | Self::Modulus | Self::Pressure => Dim::of(-1, 1, -2, 0),
            Self::Area | Self::GroundArea => Dim::of(2, 0, 0, 0),
            Self::LineWeight => Dim::of(0, 1, -2, 0),
            Self::UnitWeight => Dim::of(-2, 1, -2, 0),
            Self::Density => Dim::of(-3, 1, 0, 0),
            Self::Ratio | Self::Percent | Self::Count | Self::Shifts => Dim::NONE,
            Self::Angle | Self::JointAngle => Dim { angle: 1, ..Dim::NONE },
            Self::Temperature => Dim::of(0, 0, 0, 1),
            Self::Duration => Dim::of(0, 0, 1, 0),
            Self::Torque => Dim::of(2, 1, -2, 0),
            Self::SecondMoment => Dim::of(4, 0, 0, 0),
            Self::Settlement => Dim::of(1, 0, 0, 0),
            Self::Slope => Dim::NONE,
            Self::VolumePerLength => Dim::of(2, 0, 0, 0),
            Self::FlowSpeed | Self::Permeability => Dim::of(1, 0, -1, 0),
            Self::Flow => Dim::of(3, 0, -1, 0),
            Self::Tractive => Dim::of(-1, 1, -2, 0),
            Self::Rate | Self::Speed => Dim::of(1, 0, -1, 0),
            Self::Volume | Self::FluidVolume => Dim::of(3, 0, 0, 0),
            Self::Viscosity => Dim::of(-1, 1, -1, 0),
            Self::Expansion => Dim::of(0, 0, 0, -1),
        }
    }
}

/// A value with its dimension erased and its role kept, ready to print.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shown {
    /// The value in SI base units.
    pub si: f64,
    /// What it is used for.
    pub role: Role,
}

impl Shown {
    /// Erases the dimension of `quantity`.
    #[must_use]
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
    #[must_use]
    pub const fn display(self, system: UnitSystem) -> ShownIn {
        ShownIn { shown: self, system, digits: None }
    }

    /// The same with as many decimals more as make four digits count: to be computed with.
    #[must_use]
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
