//! The one table of units: symbol, exact factor to SI base units, dimension.

use super::measure::Dim;

/// The family of units a report is printed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum UnitSystem {
    /// Metres, kilonewtons, kilopascals.
    #[default]
    Si,
    /// Feet, kips of 1,000 lbf, pounds per square inch.
    Us,
}

/// A unit as it may be written in a file.
#[derive(Debug, Clone, Copy)]
pub struct Unit {
    /// The symbol as written.
    pub symbol: &'static str,
    /// SI base units in one of this unit.
    pub factor: f64,
    /// Added to the number before the factor; only temperatures on a scale have one.
    pub offset: f64,
    /// What the unit measures.
    pub dim: Dim,
}

pub(super) const FOOT: f64 = 0.3048;
pub(crate) const INCH: f64 = 0.0254;
const POUND: f64 = 0.453_592_37;
/// Standard acceleration of free fall, m/s² (exact by definition, CGPM 1901).
pub const STANDARD_GRAVITY: f64 = 9.806_65;
pub(super) const POUND_FORCE: f64 = POUND * STANDARD_GRAVITY;

pub(super) const LENGTH: Dim = Dim::of(1, 0, 0, 0);
pub(super) const AREA: Dim = Dim::of(2, 0, 0, 0);
pub(super) const VOLUME: Dim = Dim::of(3, 0, 0, 0);
const MASS: Dim = Dim::of(0, 1, 0, 0);
pub(super) const TIME: Dim = Dim::of(0, 0, 1, 0);
pub(super) const FORCE: Dim = Dim::of(1, 1, -2, 0);
pub(super) const PRESSURE: Dim = Dim::of(-1, 1, -2, 0);
pub(super) const VISCOSITY: Dim = Dim::of(-1, 1, -1, 0);
pub(super) const LINE_LOAD: Dim = Dim::of(0, 1, -2, 0);
pub(super) const UNIT_WEIGHT: Dim = Dim::of(-2, 1, -2, 0);
pub(super) const TEMPERATURE: Dim = Dim::of(0, 0, 0, 1);
pub(super) const ANGLE: Dim = Dim { angle: 1, ..Dim::NONE };

const fn unit(symbol: &'static str, factor: f64, dim: Dim) -> Unit {
    Unit { symbol, factor, offset: 0.0, dim }
}

/// Every unit that can be read. Factors are products of exact definitions (NIST SP 811, appendix B).
pub const UNITS: &[Unit] = &[
    unit("m", 1.0, LENGTH),
    unit("mm", 1e-3, LENGTH),
    unit("cm", 1e-2, LENGTH),
    unit("km", 1e3, LENGTH),
    unit("in", INCH, LENGTH),
    unit("inch", INCH, LENGTH),
    unit("ft", FOOT, LENGTH),
    unit("yd", 3.0 * FOOT, LENGTH),
    unit("L", 1e-3, VOLUME),
    unit("gal_us", 231.0 * INCH * INCH * INCH, VOLUME),
    unit("ha", 1e4, AREA),
    unit("g", 1e-3, MASS),
    unit("kg", 1.0, MASS),
    unit("t", 1e3, MASS),
    unit("lb", POUND, MASS),
    unit("s", 1.0, TIME),
    unit("min", 60.0, TIME),
    unit("h", 3_600.0, TIME),
    unit("d", 86_400.0, TIME),
    unit("day", 86_400.0, TIME),
    // The Julian year, 365.25 d; durations of plastics need no finer one.
    unit("year", 31_557_600.0, TIME),
    unit("N", 1.0, FORCE),
    unit("kN", 1e3, FORCE),
    unit("MN", 1e6, FORCE),
    unit("lbf", POUND_FORCE, FORCE),
    unit("kip", 1e3 * POUND_FORCE, FORCE),
    unit("kgf", STANDARD_GRAVITY, FORCE),
    unit("tf", 1e3 * STANDARD_GRAVITY, FORCE),
    unit("tonf_us", 2e3 * POUND_FORCE, FORCE),
    // Viscosity of mud is told in mPa*s or centipoise, which are the same.
    unit("mPa", 1e-3, PRESSURE),
    unit("cP", 1e-3, VISCOSITY),
    unit("Pa", 1.0, PRESSURE),
    unit("kPa", 1e3, PRESSURE),
    unit("MPa", 1e6, PRESSURE),
    unit("GPa", 1e9, PRESSURE),
    unit("bar", 1e5, PRESSURE),
    unit("psi", POUND_FORCE / (INCH * INCH), PRESSURE),
    unit("ksi", 1e3 * POUND_FORCE / (INCH * INCH), PRESSURE),
    unit("psf", POUND_FORCE / (FOOT * FOOT), PRESSURE),
    unit("ksf", 1e3 * POUND_FORCE / (FOOT * FOOT), PRESSURE),
    unit("plf", POUND_FORCE / FOOT, LINE_LOAD),
    unit("pcf", POUND_FORCE / (FOOT * FOOT * FOOT), UNIT_WEIGHT),
    unit("%", 1e-2, Dim::NONE),
    unit("rad", 1.0, ANGLE),
    unit("deg", core::f64::consts::PI / 180.0, ANGLE),
    unit("°", core::f64::consts::PI / 180.0, ANGLE),
    unit("K", 1.0, TEMPERATURE),
    Unit { symbol: "degC", factor: 1.0, offset: 273.15, dim: TEMPERATURE },
    Unit { symbol: "°C", factor: 1.0, offset: 273.15, dim: TEMPERATURE },
    Unit { symbol: "degF", factor: 5.0 / 9.0, offset: 459.67, dim: TEMPERATURE },
    Unit { symbol: "°F", factor: 5.0 / 9.0, offset: 459.67, dim: TEMPERATURE },
];

/// Other spellings of a symbol, which can mean nothing else.
pub const SAME: &[(&[&str], &str)] = &[
    (&["metre", "metres", "meter", "meters"], "m"),
    (&["inches"], "in"),
    (&["feet", "foot"], "ft"),
    (&["mins", "minutes"], "min"),
    (&["hour", "hours", "hr", "hrs"], "h"),
    (&["days"], "day"),
    (&["kn", "KN"], "kN"),
    (&["kips"], "kip"),
    (&["kpa", "KPa"], "kPa"),
    (&["C"], "degC"),
    (&["F"], "degF"),
];

/// Symbols that mean different things to different readers, and what to write instead.
pub const REFUSED: &[(&[&str], &str)] = &[
    (
        &["ton", "tons"],
        "write \"tonf_us\" (2000 lbf), \"tf\" (1000 kgf) or \"kN\" for a force, \"t\" (1000 kg) for a mass",
    ),
    (&["tonf"], "write \"tonf_us\" (2000 lbf) or \"tf\" (1000 kgf)"),
    (&["tonne"], "write \"t\" (1000 kg) for a mass, \"tf\" (1000 kgf) or \"kN\" for a force"),
    (&["gal"], "write \"gal_us\" or \"L\""),
    (&["M"], "write \"m\" for metres or \"MN\" for meganewtons"),
    (&["lbs", "pound"], "write \"lbf\" for a force, \"lb\" for a mass"),
    (&["deg C"], "write \"degC\""),
    (&["deg F"], "write \"degF\""),
    (&["degrees"], "write \"deg\" for an angle, \"degC\" or \"degF\" for a temperature"),
    (&["gpm", "GPM"], "write \"gal_us/min\""),
    (&["gpd"], "write \"gal_us/day\""),
    (&["cfs"], "write \"ft3/s\""),
    (&["lps"], "write \"L/s\""),
    (&["l"], "write \"L\""),
    (&["sq in"], "write \"in2\""),
    (&["sq ft", "sf", "sqft"], "write \"ft2\""),
    (&["sq m"], "write \"m2\""),
    (&["sq mm"], "write \"mm2\""),
    (&["cu ft", "cf"], "write \"ft3\""),
    (&["cu yd", "cy"], "write \"yd3\""),
    (&["cu m"], "write \"m3\""),
    (&["k"], "write \"kip\" (1000 lbf) or \"kN\" for a force, \"K\" for a temperature"),
    (&["klf"], "write \"kip/ft\""),
    (&["psig"], "write \"psi\""),
    (&["ft-lb", "ft-lbf", "lb-ft"], "write \"lbf*ft\""),
    (&["in-lb"], "write \"lbf*in\""),
    (&["Nm"], "write \"N*m\""),
    (&["kNm"], "write \"kN*m\""),
    (&["mpa", "Mpa"], "write \"MPa\""),
];

/// Units of the trade in feet and pounds.
const US: &[&str] = &[
    "in", "inch", "ft", "yd", "gal_us", "lb", "lbf", "kip", "tonf_us", "psi", "ksi", "psf", "ksf", "plf", "pcf",
    "degF", "°F",
];

/// Units of both families, and of none.
const NEUTRAL: &[&str] = &["s", "min", "h", "d", "day", "year", "%", "rad", "deg", "°"];

/// The family of the units that a text of a quantity is written in; `None` where it has no unit or one of both.
#[must_use]
pub fn family(text: &str) -> Option<UnitSystem> {
    let after =
        text.trim_start_matches(|c: char| c.is_ascii_digit() || c.is_whitespace() || matches!(c, '.' | '-' | '+'));
    let symbols =
        after.split(|c: char| c.is_whitespace() || c.is_ascii_digit() || matches!(c, '*' | '·' | '/' | '^' | '-'));
    let mut family = None;
    let known = symbols.filter_map(find).map(|unit| unit.symbol);
    for symbol in known.filter(|symbol| !NEUTRAL.contains(symbol)) {
        if US.contains(&symbol) {
            return Some(UnitSystem::Us);
        }
        family = Some(UnitSystem::Si);
    }
    family
}

/// The unit written `symbol`, or as it is spelled otherwise; letter case counts.
#[must_use]
pub fn find(symbol: &str) -> Option<&'static Unit> {
    let same = SAME.iter().find(|(spellings, _)| spellings.contains(&symbol));
    let symbol = same.map_or(symbol, |(_, symbol)| symbol);
    UNITS.iter().find(|unit| unit.symbol == symbol)
}

/// What a dimension is called, with its article, and how one is written.
#[must_use]
pub fn describe(dim: Dim) -> (&'static str, &'static str) {
    const KNOWN: &[(Dim, &str, &str)] = &[
        (Dim::NONE, "a plain number or a percentage", "0.5 %"),
        (LENGTH, "a length", "300 ft"),
        (AREA, "an area", "0.06 m2"),
        (VOLUME, "a volume", "2 m3"),
        (MASS, "a mass", "900 kg"),
        (TIME, "a duration", "6 h"),
        (FORCE, "a force", "900 kN"),
        (PRESSURE, "a pressure or stress", "5 kPa"),
        (LINE_LOAD, "a force per length", "1.2 kN/m"),
        (UNIT_WEIGHT, "a unit weight (force per volume)", "18 kN/m3"),
        (TEMPERATURE, "a temperature", "25 degC"),
        (ANGLE, "an angle", "15 deg"),
        (Dim::of(1, 0, -1, 0), "a speed", "1.5 m/min"),
        (Dim::of(-3, 1, 0, 0), "a mass density", "1800 kg/m3"),
        (Dim::of(-1, 1, 0, 0), "a mass per length", "60 kg/m"),
        (Dim::of(2, 1, -2, 0), "a moment or torque", "5 kN*m"),
        (Dim::of(4, 0, 0, 0), "a second moment of area", "800 in^4"),
        (Dim::of(0, 0, -1, 0), "a rate per time", "2 h^-1"),
        (Dim::of(-1, 0, 0, 0), "a curvature", "0.01 m^-1"),
        (Dim::of(3, 0, -1, 0), "a flow", "200 L/min"),
        (Dim::of(-1, 1, -1, 0), "a viscosity", "0.02 Pa*s"),
        (Dim::of(0, 0, 0, -1), "a thermal expansion", "0.18 mm/m/K"),
    ];
    KNOWN
        .iter()
        .find(|(known, ..)| *known == dim)
        .map_or(("another kind of quantity", ""), |(_, name, example)| (name, example))
}

/// The product of base units of a dimension, as the parser reads it.
#[must_use]
pub fn base_units(dim: Dim) -> String {
    let powers = [("kg", dim.mass), ("m", dim.length), ("s", dim.time), ("K", dim.temperature), ("rad", dim.angle)];
    let factors = powers.iter().filter(|(_, power)| *power != 0).map(|(symbol, power)| match power {
        1 => (*symbol).to_owned(),
        power => format!("{symbol}^{power}"),
    });
    factors.collect::<Vec<_>>().join("*")
}
