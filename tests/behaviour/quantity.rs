//! The one door between text and quantities: golden values, a peer package, refusals and round trips.

use approx::assert_relative_eq;
use jackpull::quantity::unit::{self, REFUSED, UNITS, Unit};
use jackpull::quantity::{
    Angle, Area, Dim, DynamicViscosity, Force, FromText, Length, LineLoad, MassDensity, Measure, Misread, Pressure,
    QuantityError, Ratio, Role, SecondMomentOfArea, Shown, Si, ThermalExpansion, ThermodynamicTemperature, Time,
    Torque, UnitSystem, UnitWeight, Velocity, Volume,
};
use proptest::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use uom::si::ISQ;
use uom::si::f64::{Frequency, Mass, TemperatureInterval, VolumeRate};
use uom::typenum::{N1, N2, P1, P2, Z0};

type Moment = Si<ISQ<P2, P1, N2, Z0, Z0, Z0, Z0>>;
type MassPerLength = Si<ISQ<N1, P1, Z0, Z0, Z0, Z0, Z0>>;
/// Not `uom`'s own, which counts radians.
type Curvature = Si<ISQ<N1, Z0, Z0, Z0, Z0, Z0, Z0>>;

/// Reads a text as one type and gives SI base units.
type Reader = fn(&str) -> Result<f64, QuantityError>;

fn si<Q: FromText>(text: &str) -> Result<f64, QuantityError> {
    Q::from_text(text).map(Measure::si)
}

/// The reader of each dimension that a unit of the table or a role has.
fn reader(dim: Dim) -> Reader {
    fn pair<Q: FromText>() -> (Dim, Reader) {
        (Q::DIM, si::<Q>)
    }
    let pairs = [
        pair::<Ratio>(),
        pair::<Angle>(),
        pair::<Length>(),
        pair::<Area>(),
        pair::<Volume>(),
        pair::<Mass>(),
        pair::<Time>(),
        pair::<Force>(),
        pair::<Pressure>(),
        pair::<LineLoad>(),
        pair::<UnitWeight>(),
        pair::<ThermodynamicTemperature>(),
        pair::<Velocity>(),
        pair::<MassDensity>(),
        pair::<Torque>(),
        pair::<SecondMomentOfArea>(),
        pair::<VolumeRate>(),
        pair::<DynamicViscosity>(),
        pair::<ThermalExpansion>(),
    ];
    pairs.into_iter().find(|(known, _)| *known == dim).expect("a type for the dimension").1
}

/// Digits as the literature prints them, in groups of three and with the exponent of SP 811.
#[derive(Debug, Clone, Copy)]
enum Digits {
    /// All there are.
    Exact(&'static str),
    /// Rounded at the last one.
    Rounded(&'static str),
}
use Digits::{Exact, Rounded};

impl Digits {
    /// The value, and half of its last digit relative to it.
    fn value_and_tolerance(self) -> (f64, f64) {
        // A few roundings of the factors and of the decimal digits themselves.
        const ROUNDING: f64 = 4.0 * f64::EPSILON;
        let (Exact(printed) | Rounded(printed)) = self;
        let digits = printed.replace(' ', "");
        let value: f64 = digits.parse().unwrap();
        let Rounded(_) = self else { return (value, ROUNDING) };
        let (mantissa, power) = digits.split_once('E').unwrap_or((&digits, "0"));
        let decimals = mantissa.split_once('.').map_or(0, |(_, decimals)| i32::try_from(decimals.len()).unwrap());
        let half = 0.5 * 10_f64.powi(power.parse::<i32>().unwrap() - decimals);
        (value, (half / value.abs()).max(ROUNDING))
    }
}

fn assert_reads(read: Reader, text: &str, digits: Digits) {
    let (golden, max_relative) = digits.value_and_tolerance();
    let got = read(text).unwrap_or_else(|error| panic!("{text}: {error}"));
    let off = (got - golden).abs() / golden.abs();
    assert!(off <= max_relative, "{text}: read {got:e}, golden {golden:e}, off by {off:e} > {max_relative:e}");
}

/// SI base units in one of each unit. NIST SP 811 (2008), appendix B.8, has each of them to seven digits or exactly,
/// apart from those remarked on; its seven digits are continued here from the definitions it gives in its footnotes
/// and sections (foot 0.3048 m, pound 0.453 592 37 kg, free fall 9.806 65 m/s2), worked in decimal arithmetic.
const GOLDEN: &[(&str, Reader, Digits)] = &[
    ("m", si::<Length>, Exact("1")),
    ("mm", si::<Length>, Exact("1 E-03")),
    ("cm", si::<Length>, Exact("1 E-02")),
    ("km", si::<Length>, Exact("1 E+03")),
    ("in", si::<Length>, Exact("2.54 E-02")),
    ("inch", si::<Length>, Exact("2.54 E-02")),
    ("ft", si::<Length>, Exact("3.048 E-01")),
    ("yd", si::<Length>, Exact("9.144 E-01")),
    ("L", si::<Volume>, Exact("1.0 E-03")),
    // 231 in3; SP 811 prints 3.785 412 E-03.
    ("gal_us", si::<Volume>, Exact("3.785 411 784 E-03")),
    ("ha", si::<Area>, Exact("1.0 E+04")),
    ("g", si::<Mass>, Exact("1 E-03")),
    ("kg", si::<Mass>, Exact("1")),
    ("t", si::<Mass>, Exact("1.0 E+03")),
    // SP 811, footnote to the pound (avoirdupois).
    ("lb", si::<Mass>, Exact("4.535 923 7 E-01")),
    ("s", si::<Time>, Exact("1")),
    ("min", si::<Time>, Exact("6.0 E+01")),
    ("h", si::<Time>, Exact("3.6 E+03")),
    ("d", si::<Time>, Exact("8.64 E+04")),
    ("day", si::<Time>, Exact("8.64 E+04")),
    // The Julian year of the IAU, 365.25 d; SP 811 has the years of 365 d (3.1536 E+07), tropical and sidereal.
    ("year", si::<Time>, Exact("31 557 600")),
    ("N", si::<Force>, Exact("1")),
    ("kN", si::<Force>, Exact("1 E+03")),
    ("MN", si::<Force>, Exact("1 E+06")),
    // SP 811, footnote to the pound-force.
    ("lbf", si::<Force>, Exact("4.448 221 615 260 5 E+00")),
    ("kip", si::<Force>, Exact("4.448 221 615 260 5 E+03")),
    ("kgf", si::<Force>, Exact("9.806 65 E+00")),
    // Not in SP 811: 1000 kgf.
    ("tf", si::<Force>, Exact("9.806 65 E+03")),
    // SP 811 prints 8.896 443 E+03.
    ("tonf_us", si::<Force>, Exact("8.896 443 230 521 E+03")),
    ("mPa", si::<Pressure>, Exact("1 E-03")),
    // Centipoise.
    ("cP", si::<DynamicViscosity>, Exact("1.0 E-03")),
    ("Pa", si::<Pressure>, Exact("1")),
    ("kPa", si::<Pressure>, Exact("1 E+03")),
    ("MPa", si::<Pressure>, Exact("1 E+06")),
    ("GPa", si::<Pressure>, Exact("1 E+09")),
    ("bar", si::<Pressure>, Exact("1.0 E+05")),
    // SP 811 prints 6.894 757 E+03.
    ("psi", si::<Pressure>, Rounded("6.894 757 293 168 E+03")),
    ("ksi", si::<Pressure>, Rounded("6.894 757 293 168 E+06")),
    // SP 811 prints 4.788 026 E+01.
    ("psf", si::<Pressure>, Rounded("4.788 025 898 034 E+01")),
    ("ksf", si::<Pressure>, Rounded("4.788 025 898 034 E+04")),
    // SP 811 prints 1.459 390 E+01.
    ("plf", si::<LineLoad>, Rounded("1.459 390 293 721 E+01")),
    // The lbf/ft3, as soil mechanics texts print it: 0.157 087 464 kN/m3.
    ("pcf", si::<UnitWeight>, Rounded("1.570 874 638 462 E+02")),
    ("%", si::<Ratio>, Exact("1 E-02")),
    ("rad", si::<Angle>, Exact("1")),
    // SP 811 prints 1.745 329 E-02.
    ("deg", si::<Angle>, Rounded("1.745 329 251 994 33 E-02")),
    ("°", si::<Angle>, Rounded("1.745 329 251 994 33 E-02")),
    ("K", si::<ThermodynamicTemperature>, Exact("1")),
    ("degC", si::<ThermodynamicTemperature>, Exact("274.15")),
    ("°C", si::<ThermodynamicTemperature>, Exact("274.15")),
    // (1 + 459.67)/1.8
    ("degF", si::<ThermodynamicTemperature>, Rounded("255.927 777 777 78")),
    ("°F", si::<ThermodynamicTemperature>, Rounded("255.927 777 777 78")),
];

#[test]
fn each_unit_has_its_published_value() {
    for &(symbol, read, digits) in GOLDEN {
        assert_reads(read, &format!("1 {symbol}"), digits);
    }
}

#[test]
fn units_and_golden_values_match_one_to_one() {
    let golden: BTreeSet<_> = GOLDEN.iter().map(|(symbol, ..)| *symbol).collect();
    let units: BTreeSet<_> = UNITS.iter().map(|unit| unit.symbol).collect();
    assert_eq!(golden, units);
    assert_eq!((golden.len(), units.len()), (GOLDEN.len(), UNITS.len()), "a symbol occurs twice");
}

#[test]
fn temperatures_meet_the_fixed_points() {
    let read = si::<ThermodynamicTemperature>;
    for (text, digits) in [
        ("0 degC", Exact("273.15")),
        ("100 degC", Exact("373.15")),
        ("-40 degC", Exact("233.15")),
        ("23 °C", Exact("296.15")),
        ("32 degF", Exact("273.15")),
        ("212 degF", Exact("373.15")),
        // The scales cross.
        ("-40 degF", Exact("233.15")),
        ("140 °F", Exact("333.15")),
        ("73 degF", Rounded("295.927 777 777 78")),
        ("0 degF", Rounded("255.372 222 222 22")),
        ("296.15 K", Exact("296.15")),
    ] {
        assert_reads(read, text, digits);
    }
    for absolute_zero in ["-273.15 degC", "-459.67 degF", "0 K"] {
        assert_eq!(read(absolute_zero).unwrap(), 0.0, "{absolute_zero}");
    }
}

#[test]
fn products_quotients_and_powers_of_units_read() {
    let goldens: &[(&str, Reader, Digits)] = &[
        ("120 lbf/ft3", si::<UnitWeight>, Rounded("1.885 049 566 155 E+04")),
        ("120 pcf", si::<UnitWeight>, Rounded("1.885 049 566 155 E+04")),
        ("18 kN/m3", si::<UnitWeight>, Exact("1.8 E+04")),
        ("18 kN/m^3", si::<UnitWeight>, Exact("1.8 E+04")),
        ("18 kN/m³", si::<UnitWeight>, Exact("1.8 E+04")),
        ("18 kN*m^-3", si::<UnitWeight>, Exact("1.8 E+04")),
        ("18 kN / m3", si::<UnitWeight>, Exact("1.8 E+04")),
        ("18 kN/m/m/m", si::<UnitWeight>, Exact("1.8 E+04")),
        ("18 kPa/m", si::<UnitWeight>, Exact("1.8 E+04")),
        ("8 N/mm2", si::<Pressure>, Exact("8 E+06")),
        ("8 N/mm²", si::<Pressure>, Exact("8 E+06")),
        ("1 lbf/in2", si::<Pressure>, Rounded("6.894 757 293 168 E+03")),
        ("5 N*m", si::<Moment>, Exact("5")),
        ("5 N·m", si::<Moment>, Exact("5")),
        // SP 811: foot pound-force 1.355 818 E+00.
        ("1 ft*lbf", si::<Moment>, Exact("1.355 817 948 331 400 4")),
        ("1.5 m/min", si::<Velocity>, Exact("2.5 E-02")),
        // SP 811: foot per minute 5.08 E-03.
        ("1 ft/min", si::<Velocity>, Exact("5.08 E-03")),
        ("2.5 kip/ft", si::<LineLoad>, Rounded("3.648 475 734 302 E+04")),
        ("1 in2", si::<Area>, Exact("6.4516 E-04")),
        ("1 ft²", si::<Area>, Exact("9.290 304 E-02")),
        ("1 in3", si::<Volume>, Exact("1.638 706 4 E-05")),
        ("1 ft^3", si::<Volume>, Exact("2.831 684 659 2 E-02")),
        ("1 in4", si::<SecondMomentOfArea>, Exact("4.162 314 256 E-07")),
        ("800 in^4", si::<SecondMomentOfArea>, Exact("3.329 851 404 8 E-04")),
        ("800 in⁴", si::<SecondMomentOfArea>, Exact("3.329 851 404 8 E-04")),
        // SP 811: pound per cubic foot 1.601 846 E+01.
        ("1 lb/ft3", si::<MassDensity>, Rounded("1.601 846 337 396 E+01")),
        ("1800 kg/m3", si::<MassDensity>, Exact("1.8 E+03")),
        ("60 kg/m", si::<MassPerLength>, Exact("60")),
        // SP 811: gallon (US) per minute 6.309 020 E-05.
        ("1 gal_us/min", si::<VolumeRate>, Exact("6.309 019 64 E-05")),
        ("0.01 m^-1", si::<Curvature>, Exact("1 E-02")),
        ("20 Pa*s", si::<DynamicViscosity>, Exact("2 E+01")),
        ("15 mPa*s", si::<DynamicViscosity>, Exact("1.5 E-02")),
        // SP 811: centipoise 1.0 E-03.
        ("15 cP", si::<DynamicViscosity>, Exact("1.5 E-02")),
        ("0.18 mm/m/K", si::<ThermalExpansion>, Exact("1.8 E-04")),
        ("2 rad/deg", si::<Ratio>, Rounded("1.145 915 590 261 65 E+02")),
    ];
    for &(text, read, digits) in goldens {
        assert_reads(read, text, digits);
    }
}

/// The file says which package, which version and how. Where its last digits differ from ours they are its own
/// roundings (it multiplies through chains such as grain to pound): no constant of it is another one.
#[test]
fn every_unit_agrees_with_a_general_units_package() {
    let fixture: serde_json::Value = serde_json::from_str(include_str!("units_peer.json")).unwrap();
    let table = |key: &str| -> BTreeMap<String, f64> {
        let entries = fixture[key].as_object().unwrap();
        entries.iter().map(|(text, value)| (text.clone(), value.as_f64().unwrap())).collect()
    };
    let units = table("units");
    let symbols: BTreeSet<_> = UNITS.iter().map(|unit| unit.symbol).collect();
    assert_eq!(units.keys().map(String::as_str).collect::<BTreeSet<_>>(), symbols);
    for unit in UNITS {
        let ours = reader(unit.dim)(&format!("1 {}", unit.symbol)).unwrap();
        let theirs = units[unit.symbol];
        assert!((ours - theirs).abs() <= 1e-9 * theirs, "{}: {ours} here, {theirs} there", unit.symbol);
    }

    let readings = table("readings");
    assert_eq!(readings.len(), 15);
    for (text, theirs) in readings {
        let types: &[Reader] = &[
            si::<ThermodynamicTemperature>,
            si::<UnitWeight>,
            si::<Moment>,
            si::<Velocity>,
            si::<LineLoad>,
            si::<MassDensity>,
            si::<SecondMomentOfArea>,
            si::<VolumeRate>,
        ];
        let ours: Vec<f64> = types.iter().filter_map(|read| read(&text).ok()).collect();
        assert_eq!(ours.len(), 1, "{text} must have one meaning");
        assert_relative_eq!(ours[0], theirs, max_relative = 1e-9);
    }
}

#[test]
fn a_slope_reads_as_one_in_so_many() {
    for (text, value) in [("1:200", 0.005), ("1 in 200", 0.005), ("-1:80", -0.0125), ("1 : 2.5", 0.4)] {
        assert_eq!(si::<Ratio>(text), Ok(value), "{text}");
    }
    for text in ["1:0", "1:-200", "1:", "1 in", "1:two", "1:inf", "1:1e-320"] {
        assert!(si::<Ratio>(text).is_err(), "{text}");
    }
    assert!(si::<Length>("1:200").is_err());
}

#[test]
fn odd_spellings_read() {
    let goldens: &[(&str, Reader, Digits)] = &[
        ("12in", si::<Length>, Exact("3.048 E-01")),
        (" 300  ft ", si::<Length>, Exact("91.44")),
        ("\t300\tft\n", si::<Length>, Exact("91.44")),
        ("5e3 mm", si::<Length>, Exact("5")),
        ("5E3mm", si::<Length>, Exact("5")),
        ("5e+3 mm", si::<Length>, Exact("5")),
        ("5e-1 m", si::<Length>, Exact("0.5")),
        (".5 m", si::<Length>, Exact("0.5")),
        ("5. m", si::<Length>, Exact("5")),
        ("+3 m", si::<Length>, Exact("3")),
        ("-3 m", si::<Length>, Exact("-3")),
        ("007 m", si::<Length>, Exact("7")),
        ("0.4 %", si::<Ratio>, Exact("4 E-03")),
        ("0.4%", si::<Ratio>, Exact("4 E-03")),
        ("0.4", si::<Ratio>, Exact("0.4")),
        (" 4e-1 ", si::<Ratio>, Exact("0.4")),
        ("15°", si::<Angle>, Rounded("2.617 993 877 991 49 E-01")),
        ("73degF", si::<ThermodynamicTemperature>, Rounded("295.927 777 777 78")),
        ("73°F", si::<ThermodynamicTemperature>, Rounded("295.927 777 777 78")),
    ];
    for &(text, read, digits) in goldens {
        assert_reads(read, text, digits);
    }
}

/// The example an error gives must itself read.
#[test]
fn examples_of_each_dimension_read() {
    fn check<Q: FromText>() {
        let (name, example) = unit::describe(Q::DIM);
        Q::from_text(example).unwrap_or_else(|error| panic!("the example for {name}: {error}"));
    }
    check::<Ratio>();
    check::<Length>();
    check::<Area>();
    check::<Volume>();
    check::<Mass>();
    check::<Time>();
    check::<Force>();
    check::<Pressure>();
    check::<LineLoad>();
    check::<UnitWeight>();
    check::<ThermodynamicTemperature>();
    check::<Angle>();
    check::<Velocity>();
    check::<MassDensity>();
    check::<MassPerLength>();
    check::<Moment>();
    check::<SecondMomentOfArea>();
    check::<Frequency>();
    check::<Curvature>();
    check::<VolumeRate>();
    check::<DynamicViscosity>();
    check::<ThermalExpansion>();
}

fn variant(error: &QuantityError) -> &'static str {
    match error.got {
        Misread::NotANumber(_) => "NotANumber",
        Misread::NotFinite(_) => "NotFinite",
        Misread::Bare(_) => "Bare",
        Misread::UnknownUnit(..) => "UnknownUnit",
        Misread::WrongDimension(..) => "WrongDimension",
        Misread::BelowAbsoluteZero(_) => "BelowZero",
        _ => "a variant this test does not know",
    }
}

fn assert_refused(read: Reader, text: &str, expected: &str, words: &[&str]) {
    let error = match read(text) {
        Ok(value) => panic!("{text:?} read as {value}"),
        Err(error) => error,
    };
    let message = format!("{error}; {}", error.advice);
    assert_eq!(variant(&error), expected, "{text:?}: {message}");
    for word in words {
        assert!(message.contains(word), "{text:?}: no {word:?} in: {message}");
    }
}

#[test]
fn refused_texts_say_why() {
    let refusals: &[(Reader, &str, &str, &[&str])] = &[
        // A number is not a quantity.
        (si::<Length>, "12", "Bare", &["a length", "got 12 without a unit", "300 ft"]),
        (si::<Area>, "12", "Bare", &["an area", "m2"]),
        (si::<Force>, "12.5", "Bare", &["a force", "kN"]),
        (si::<Pressure>, "5e3", "Bare", &["a pressure or stress", "5e3", "kPa"]),
        (si::<UnitWeight>, "18", "Bare", &["a unit weight", "kN/m3"]),
        (si::<LineLoad>, "1.2", "Bare", &["a force per length", "kN/m"]),
        (si::<Time>, "6", "Bare", &["a duration", "6 h"]),
        (si::<Velocity>, "1", "Bare", &["a speed", "m/min"]),
        (si::<ThermodynamicTemperature>, "25", "Bare", &["a temperature", "degC"]),
        (si::<Angle>, "30", "Bare", &["an angle", "15 deg"]),
        (si::<Length>, "0", "Bare", &["a length"]),
        // No number.
        (si::<Length>, "", "NotANumber", &["a length", "got \"\"", "300 ft"]),
        (si::<Ratio>, "", "NotANumber", &["a plain number"]),
        (si::<Length>, "   ", "NotANumber", &["a length"]),
        (si::<Length>, "m", "NotANumber", &["got \"m\""]),
        (si::<Length>, ". m", "NotANumber", &["got \". m\""]),
        (si::<Length>, "- 3 m", "NotANumber", &["- 3 m"]),
        (si::<Length>, "−3 m", "NotANumber", &["−3 m"]),
        (si::<Length>, "½ in", "NotANumber", &["½ in"]),
        (si::<ThermodynamicTemperature>, "degC*m", "NotANumber", &["a temperature", "degC*m"]),
        // No finite number.
        (si::<Length>, "NaN m", "NotFinite", &["NaN m", "not a finite number"]),
        (si::<Length>, "inf m", "NotFinite", &["inf m", "not a finite number"]),
        (si::<Length>, "-inf m", "NotFinite", &["-inf m"]),
        (si::<Ratio>, "nan", "NotFinite", &["nan"]),
        (si::<Ratio>, "infinity", "NotFinite", &["infinity"]),
        (si::<Length>, "1e999 m", "NotFinite", &["1e999 m", "not a finite number"]),
        (si::<Ratio>, "1e999", "NotFinite", &["1e999"]),
        (si::<Length>, "1e307 km", "NotFinite", &["1e307 km"]),
        // Units that do not exist or mean two things.
        (si::<Length>, "5 M", "UnknownUnit", &["unknown unit \"M\"", "\"m\" for metres", "MN"]),
        (si::<Force>, "12 tonf", "UnknownUnit", &["\"tonf\"", "\"tonf_us\" (2000 lbf)", "\"tf\" (1000 kgf)"]),
        (si::<Force>, "12 ton", "UnknownUnit", &["\"ton\"", "\"tonf_us\" (2000 lbf)", "\"tf\" (1000 kgf)", "mass"]),
        (si::<Volume>, "3 gal", "UnknownUnit", &["\"gal\"", "gal_us", "\"L\""]),
        (si::<Length>, "3 foots", "UnknownUnit", &["\"foots\""]),
        (si::<Force>, "12 Kn", "UnknownUnit", &["\"Kn\""]),
        (si::<Length>, "3 furlong", "UnknownUnit", &["\"furlong\"", "300 ft"]),
        (si::<Length>, "3 MM", "UnknownUnit", &["\"MM\""]),
        (si::<Length>, "1,200 mm", "UnknownUnit", &["1,200 mm", "\",200 mm\""]),
        (si::<Length>, "1_200 mm", "UnknownUnit", &["1_200 mm"]),
        (si::<Length>, "1 200 mm", "UnknownUnit", &["1 200 mm"]),
        (si::<Length>, "1.2.3 m", "UnknownUnit", &["1.2.3 m"]),
        (si::<Length>, "0x10 m", "UnknownUnit", &["0x10 m"]),
        (si::<Length>, "5 e3 mm", "UnknownUnit", &["5 e3 mm"]),
        (si::<Length>, "5e mm", "UnknownUnit", &["\"e mm\""]),
        (si::<Length>, "6 ft 2 in", "UnknownUnit", &["\"ft 2 in\""]),
        (si::<Length>, "10-15 m", "UnknownUnit", &["10-15 m"]),
        (si::<Length>, "1/2 in", "UnknownUnit", &["1/2 in"]),
        (si::<Ratio>, "1 200", "UnknownUnit", &["1 200"]),
        (si::<Ratio>, "10-15", "UnknownUnit", &["10-15"]),
        (si::<Pressure>, "12 kN/m2/", "UnknownUnit", &["unknown unit \"kN/m2/\""]),
        (si::<Pressure>, "12 kN//m2", "UnknownUnit", &["unknown unit \"kN//m2\""]),
        (si::<Pressure>, "12 kN m", "UnknownUnit", &["\"kN m\""]),
        (si::<Pressure>, "12 (kN/m2)", "UnknownUnit", &["\"(kN\""]),
        (si::<Pressure>, "12 kN/m2.0", "UnknownUnit", &["\"m2.0\""]),
        (si::<Length>, "1 m²³", "UnknownUnit", &["\"m²³\""]),
        (si::<Length>, "1 m^", "UnknownUnit", &["\"m^\""]),
        (si::<Length>, "1 m^^2", "UnknownUnit", &["\"m^^2\""]),
        (si::<Length>, "1 m^999", "UnknownUnit", &["\"m^999\""]),
        (si::<Length>, "1 m/m^-128", "UnknownUnit", &["\"m^-128\""]),
        (si::<Length>, "1 m^99*m^99", "UnknownUnit", &["\"m^99\""]),
        // A scale with a zero of its own cannot be part of a product, nor of a difference.
        (si::<ThermodynamicTemperature>, "5 degC*m", "UnknownUnit", &["\"degC*m\""]),
        (si::<ThermodynamicTemperature>, "5 m*degC/m", "UnknownUnit", &["\"m*degC/m\""]),
        (si::<ThermodynamicTemperature>, "5 degF^2", "UnknownUnit", &["\"degF^2\""]),
        (si::<TemperatureInterval>, "5 degC", "UnknownUnit", &["\"degC\""]),
        // Colder than anything: a slip of the sign or of the scale.
        (si::<ThermodynamicTemperature>, "-300 degC", "BelowZero", &["a temperature", "-300 degC", "absolute zero"]),
        (si::<ThermodynamicTemperature>, "-273.16 °C", "BelowZero", &["-273.16 °C", "25 degC"]),
        (si::<ThermodynamicTemperature>, "-459.7 degF", "BelowZero", &["-459.7 degF"]),
        (si::<ThermodynamicTemperature>, "-1 K", "BelowZero", &["-1 K"]),
        // Another dimension.
        (si::<Length>, "12 kN", "WrongDimension", &["expected a length", "12 kN", "which is a force"]),
        (si::<UnitWeight>, "120 lb/ft3", "WrongDimension", &["unit weight", "120 lb/ft3", "a mass density"]),
        (si::<MassDensity>, "120 pcf", "WrongDimension", &["a mass density", "which is a unit weight"]),
        (si::<Force>, "12 t", "WrongDimension", &["a force", "which is a mass"]),
        (si::<Force>, "12 lb", "WrongDimension", &["a force", "which is a mass"]),
        (si::<Angle>, "0.3 %", "WrongDimension", &["an angle", "which is a plain number or a percentage", "15 deg"]),
        (si::<Ratio>, "30 deg", "WrongDimension", &["a plain number or a percentage", "which is an angle"]),
        (si::<Ratio>, "1 rad", "WrongDimension", &["which is an angle"]),
        (si::<Length>, "5 m^99", "WrongDimension", &["a length", "5 m^99", "another kind of quantity"]),
        (si::<Length>, "5 m2", "WrongDimension", &["a length", "which is an area"]),
        (si::<LineLoad>, "5 kN*m", "WrongDimension", &["a force per length", "a moment or torque"]),
        (si::<Area>, "5 m³", "WrongDimension", &["an area", "which is a volume"]),
        (si::<ThermodynamicTemperature>, "30 deg", "WrongDimension", &["a temperature", "which is an angle"]),
        (si::<Angle>, "25 degC", "WrongDimension", &["an angle", "which is a temperature"]),
        (si::<Length>, "25 degC", "WrongDimension", &["a length", "which is a temperature"]),
    ];
    for &(read, text, expected, words) in refusals {
        assert_refused(read, text, expected, words);
    }
}

/// A slip of the hand must not turn into another number: "6 ft 1" is not 6 ft, nor "0.4 %2" 0.4 × 10⁻⁴.
#[test]
fn stray_digits_are_not_exponents() {
    assert_refused(si::<Length>, "6 ft 1", "UnknownUnit", &["\"ft 1\""]);
    assert_refused(si::<Area>, "6 ft 2", "UnknownUnit", &["\"ft 2\""]);
    assert_refused(si::<Time>, "6 h 1", "UnknownUnit", &["\"h 1\""]);
    assert_refused(si::<Ratio>, "0.4 %2", "UnknownUnit", &["\"%2\""]);
    assert_refused(si::<Ratio>, "5 m^0", "UnknownUnit", &["\"m^0\""]);
}

/// Each refused symbol, and what is advised in its place.
fn refused() -> impl Iterator<Item = (&'static str, &'static str)> {
    REFUSED.iter().flat_map(|(symbols, advice)| symbols.iter().map(|symbol| (*symbol, *advice)))
}

#[test]
fn each_ambiguous_symbol_comes_with_advice() {
    // None of the usual slips may fall back to the bare "unknown unit".
    let slips = "ton tons tonf tonne gal M lbs pound degrees mpa Mpa";
    let advised: BTreeSet<_> = refused().map(|(symbol, _)| symbol).collect();
    for slip in slips.split_whitespace() {
        assert!(advised.contains(slip), "no advice for {slip}");
    }
    for (symbol, advice) in refused() {
        assert!(unit::find(symbol).is_none(), "{symbol} is both a unit and refused");
        assert_refused(si::<Length>, &format!("12 {symbol}"), "UnknownUnit", &[&format!("\"{symbol}\""), advice]);
        // What is advised is written between quotes and must exist.
        let advised: Vec<_> = advice.split('"').skip(1).step_by(2).collect();
        assert!(!advised.is_empty(), "{symbol}: nothing advised");
        for factor in advised.iter().flat_map(|units| units.split(['/', '*'])) {
            let unit = factor.trim_end_matches(|c: char| c.is_ascii_digit());
            assert!(unit::find(unit).is_some(), "{symbol}: the advised {unit} is no unit");
        }
    }
}

/// Spellings that can mean one unit alone are read as it.
#[test]
fn other_spellings_of_a_unit_are_read() {
    assert_eq!(si::<Length>("12 feet").unwrap(), 12.0 * 0.3048);
    assert_eq!(si::<Length>("6 metres").unwrap(), 6.0);
    assert_eq!(si::<Time>("4 hrs").unwrap(), 4.0 * 3_600.0);
    assert_relative_eq!(si::<ThermodynamicTemperature>("77 F").unwrap(), 298.15, max_relative = 1e-12);
    assert_relative_eq!(si::<Force>("3 kips").unwrap(), 3.0 * 4_448.221_615_260_5, max_relative = 1e-12);
    for (spellings, symbol) in unit::SAME {
        assert!(unit::find(symbol).is_some_and(|unit| unit.symbol == *symbol), "{symbol}");
        for spelling in *spellings {
            assert_eq!(unit::find(spelling).map(|unit| unit.symbol), Some(*symbol));
            assert!(UNITS.iter().all(|unit| unit.symbol != *spelling), "{spelling} is a unit of its own");
        }
    }
    assert_eq!(unit::family("12 feet"), Some(jackpull::quantity::UnitSystem::Us));
}

/// The base units written must be those of the dimension, not merely some the parser reads back.
#[test]
fn values_are_written_in_base_units() {
    assert_eq!(Length::from_si(0.1).to_text(), "0.1 m");
    assert_eq!(Length::from_si(-0.0).to_text(), "-0.0 m");
    assert_eq!(UnitWeight::from_si(18e3).to_text(), "18000.0 kg*m^-2*s^-2");
    assert_eq!(ThermodynamicTemperature::from_si(296.15).to_text(), "296.15 K");
    assert_eq!(Angle::from_si(0.5).to_text(), "0.5 rad");
    assert_eq!(Ratio::from_si(0.25).to_text(), "0.25");
    for zero in [0.0_f64, -0.0] {
        assert_eq!(si::<Length>(&Length::from_si(zero).to_text()).unwrap().to_bits(), zero.to_bits());
    }
}

#[test]
fn errors_stay_on_one_short_line() {
    let message = si::<Length>(&format!("12 x\n\u{7}{}", "y".repeat(10_000))).unwrap_err().to_string();
    assert!(message.chars().count() < 300 && !message.chars().any(char::is_control), "{message:?}");
    assert!(message.contains('…'), "{message}");
    let (whole, cut) = (jackpull::quantity::parse::shortened(&"y".repeat(60)), "y".repeat(61));
    assert_eq!(whole, "y".repeat(60));
    assert_eq!(jackpull::quantity::parse::shortened(&cut), whole + "…");
}

/// Every role and the type its values have; a role added to the crate fails to compile here and is due in `SHOWN` too.
fn reader_of(role: Role) -> Reader {
    match role {
        Role::Diameter | Role::Wall | Role::Distance | Role::Depth | Role::Offset => si::<Length>,
        Role::Thrust | Role::Pull => si::<Force>,
        Role::UnitFriction | Role::Strength | Role::Modulus | Role::Pressure => si::<Pressure>,
        Role::Area | Role::GroundArea => si::<Area>,
        Role::LineWeight => si::<LineLoad>,
        Role::UnitWeight => si::<UnitWeight>,
        Role::Density => si::<MassDensity>,
        Role::Ratio | Role::Percent | Role::Count | Role::Shifts => si::<Ratio>,
        Role::Angle | Role::JointAngle => si::<Angle>,
        Role::Temperature => si::<ThermodynamicTemperature>,
        Role::Duration => si::<Time>,
        Role::Torque => si::<Torque>,
        Role::SecondMoment => si::<SecondMomentOfArea>,
        Role::Settlement => si::<Length>,
        Role::Slope => si::<Ratio>,
        Role::VolumePerLength => si::<Area>,
        Role::FlowSpeed | Role::Permeability => si::<Velocity>,
        Role::Flow => si::<VolumeRate>,
        Role::Tractive => si::<Pressure>,
        Role::Rate | Role::Speed => si::<Velocity>,
        Role::Volume | Role::FluidVolume => si::<Volume>,
        Role::Viscosity => si::<DynamicViscosity>,
        Role::Expansion => si::<ThermalExpansion>,
    }
}

/// Role, a reading, and the same in both systems, worked by hand from the goldens above.
const SHOWN: &[(Role, &str, &str, &str)] = &[
    (Role::Diameter, "600 mm", "600 mm", "23.62 in"),
    (Role::Wall, "28.6 mm", "28.6 mm", "1.126 in"),
    (Role::Distance, "305 m", "305.0 m", "1001 ft"),
    (Role::Depth, "6.5 m", "6.50 m", "21.3 ft"),
    (Role::Offset, "25 mm", "25 mm", "0.98 in"),
    (Role::Thrust, "4 MN", "4000.0 kN", "899.2 kip"),
    (Role::Pull, "250 kN", "250.0 kN", "56.2 kip"),
    (Role::UnitFriction, "5 kPa", "5.00 kPa", "104 psf"),
    (Role::Strength, "345 MPa", "345.00 MPa", "50038 psi"),
    (Role::Modulus, "1030 MPa", "1030.0 MPa", "149389 psi"),
    (Role::Modulus, "199.94796 GPa", "199.9 GPa", "29000 ksi"),
    (Role::Pressure, "172 kPa", "172 kPa", "24.9 psi"),
    (Role::Area, "0.06 m2", "60000 mm2", "93.0 in2"),
    (Role::GroundArea, "200 m2", "200 m2", "2153 ft2"),
    (Role::LineWeight, "12.345 kN/m", "12.345 kN/m", "845.9 lbf/ft"),
    (Role::UnitWeight, "18 kN/m3", "18.0 kN/m3", "115 pcf"),
    (Role::Density, "1800 kg/m3", "1800 kg/m3", "112.4 lb/ft3"),
    (Role::Ratio, "0.4567", "0.457", "0.457"),
    (Role::Percent, "0.004", "0.40 %", "0.40 %"),
    (Role::Angle, "0.5 rad", "28.6 deg", "28.6 deg"),
    (Role::JointAngle, "0.002 rad", "0.115 deg", "0.115 deg"),
    (Role::Temperature, "23 degC", "23.0 degC", "73 degF"),
    (Role::Duration, "90 min", "1.5 h", "1.5 h"),
    (Role::Rate, "4.5 m/h", "4.5 m/h", "15 ft/h"),
    (Role::Count, "17", "17", "17"),
    (Role::Shifts, "2.25", "2.2", "2.2"),
    (Role::Torque, "5 kN*m", "5.0 kN*m", "3688 lbf*ft"),
    (Role::SecondMoment, "290 cm^4", "290.0 cm4", "6.97 in4"),
    (Role::Settlement, "6.42 mm", "6.4 mm", "0.25 in"),
    (Role::Slope, "0.00037", "0.037 %", "0.037 %"),
    (Role::VolumePerLength, "0.2011 m2", "0.2011 m3/m", "2.165 ft3/ft"),
    (Role::FlowSpeed, "0.6 m/s", "0.60 m/s", "1.97 ft/s"),
    (Role::Flow, "0.3 m3/s", "300.00 L/s", "4755.1 gal_us/min"),
    (Role::Permeability, "0.0001 m/s", "8.640 m/day", "28.35 ft/day"),
    (Role::Tractive, "0.867 Pa", "0.87 Pa", "0.0181 psf"),
    (Role::Volume, "3.5 m3", "3.50 m3", "4.58 yd3"),
    (Role::FluidVolume, "3.5 m3", "3.50 m3", "925 gal_us"),
    (Role::Speed, "0.5 m/s", "0.500 m/s", "1.640 ft/s"),
    // SP 811: pound per foot second 1.488 164 E+00.
    (Role::Viscosity, "0.02 Pa*s", "0.0200 kg/m/s", "0.0134 lb/ft/s"),
    (Role::Expansion, "0.18 mm/m/K", "0.1800 mm/m/K", "0.1800 mm/m/K"),
];

fn shown(role: Role, reading: &str) -> Shown {
    Shown { si: reader_of(role)(reading).unwrap(), role }
}

#[test]
fn each_role_prints_in_its_units() {
    for &(role, reading, metric, us) in SHOWN {
        assert_eq!(shown(role, reading).display(UnitSystem::Si).to_string(), metric);
        assert_eq!(shown(role, reading).display(UnitSystem::Us).to_string(), us);
    }
    assert_eq!(Shown::of(Length::from_si(0.6), Role::Diameter), shown(Role::Diameter, "600 mm"));
}

#[test]
fn each_role_has_the_dimension_of_its_values() {
    for &(role, reading, ..) in SHOWN {
        assert!(reader(role.dim())(reading).is_ok(), "{role:?} is not of the dimension of {reading}");
    }
}

#[test]
fn a_printed_zero_has_no_sign() {
    for &(role, ..) in SHOWN.iter().filter(|(role, ..)| *role != Role::Temperature) {
        for system in [UnitSystem::Si, UnitSystem::Us] {
            let one = unit_step(role, system);
            for part in [-0.0, -1e-9, -0.000_4, -0.004, -0.04, -0.4, -0.5] {
                let printed = Shown { si: part * one, role }.display(system).to_string();
                let number = printed.split(' ').next().unwrap();
                let zero = number.chars().all(|c| matches!(c, '-' | '0' | '.'));
                assert!(!(zero && number.starts_with('-')), "{role:?} {part}: {printed}");
            }
        }
    }
    assert_eq!(shown(Role::Temperature, "-0.4 degF").display(UnitSystem::Us).to_string(), "0 degF");
    assert_eq!(shown(Role::Temperature, "-0.01 degC").display(UnitSystem::Si).to_string(), "0.0 degC");
}

/// `number` in the unit a role prints in.
fn in_unit(role: Role, system: UnitSystem, number: f64) -> String {
    let (_, symbol) = Shown { si: 0.0, role }.in_units(system);
    format!("{number} {symbol}")
}

/// SI base units in one step of the unit a role prints in.
fn unit_step(role: Role, system: UnitSystem) -> f64 {
    let read = |number| reader_of(role)(&in_unit(role, system, number)).unwrap();
    read(1.0) - read(0.0)
}

/// Half of the last printed digit, in SI base units.
fn half_digit(printed: &str, step: f64) -> f64 {
    let number = printed.split(' ').next().unwrap();
    // What is huge is printed by its power of ten.
    let (number, power) = number.split_once('e').unwrap_or((number, "0"));
    let decimals = number.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let power = power.parse::<i32>().unwrap() - i32::try_from(decimals).unwrap();
    // The halves themselves are hit only up to the rounding of binary fractions.
    0.5 * 10_f64.powi(power) * step * (1.0 + 1e-9)
}

/// A role, a system, and a number of the units it prints in.
fn shown_values() -> impl Strategy<Value = Shown> {
    (proptest::sample::select(SHOWN), any::<bool>(), -1.0..1.0_f64, -4..12_i32).prop_map(|(entry, us, part, power)| {
        let role = entry.0;
        let system = if us { UnitSystem::Us } else { UnitSystem::Si };
        // Temperatures stay above absolute zero.
        let number = if role == Role::Temperature { 400.0 + 600.0 * part } else { part * 10_f64.powi(power) };
        Shown { si: reader_of(role)(&in_unit(role, system, number)).unwrap(), role }
    })
}

fn plain_units() -> impl Strategy<Value = &'static Unit> {
    let units: Vec<_> = UNITS.iter().filter(|unit| unit.offset.abs() < f64::MIN_POSITIVE).collect();
    proptest::sample::select(units)
}

/// Text that gets past the number more often than any text would.
fn almost_quantities() -> impl Strategy<Value = String> {
    let symbols: Vec<&str> = UNITS.iter().map(|unit| unit.symbol).chain(refused().map(|(symbol, _)| symbol)).collect();
    let piece = prop_oneof![
        4 => proptest::sample::select(symbols).prop_map(str::to_owned),
        2 => proptest::sample::select(vec!["*", "/", "·", " ", "^", "-", "+", ".", ",", "e", "E", "²", "³", "⁴", "°", "µ", "\u{300}", "\0"])
            .prop_map(str::to_owned),
        2 => any::<i16>().prop_map(|number| number.to_string()),
        1 => "\\PC{0,3}",
    ];
    let number = prop_oneof![
        any::<f64>().prop_map(|number| number.to_string()),
        any::<f64>().prop_map(|number| format!("{number:e}")),
        "[+-]?[0-9]{0,3}\\.?[0-9]{0,3}([eE][+-]?[0-9]{0,4})?",
    ];
    (number, proptest::collection::vec(piece, 0..8))
        .prop_map(|(number, pieces)| format!("{number} {}", pieces.concat()))
}

fn assert_orderly(text: &str) -> Result<(), TestCaseError> {
    for read in [si::<Length>, si::<Pressure>, si::<Angle>, si::<ThermodynamicTemperature>, si::<Ratio>] {
        match read(text) {
            Ok(value) => prop_assert!(value.is_finite(), "{text:?} read as {value}"),
            Err(error) => {
                let message = format!("{error}; {}", error.advice);
                prop_assert!(!message.is_empty() && !message.chars().any(char::is_control), "{message:?}");
            }
        }
    }
    Ok(())
}

fn same_bits<Q: FromText>(value: f64) -> Result<(), TestCaseError> {
    let text = Q::from_si(value).to_text();
    let back = si::<Q>(&text).map_err(|error| TestCaseError::fail(format!("{text}: {error}")))?;
    prop_assert_eq!(back.to_bits(), value.to_bits(), "{}", text);
    Ok(())
}

proptest! {
    // A failing case is printed whole; a file of seeds beside the tests is not wanted.
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_text_is_read_or_refused_without_panic(text in any::<String>()) {
        assert_orderly(&text)?;
    }

    #[test]
    fn any_near_miss_is_read_or_refused_without_panic(text in almost_quantities()) {
        assert_orderly(&text)?;
    }

    #[test]
    fn a_number_of_units_is_the_number_times_the_unit(unit in plain_units(), part in -1.0..1.0_f64, power in -9..10_i32) {
        // Temperatures stay above absolute zero.
        let part = if unit.dim == ThermodynamicTemperature::DIM { part.abs() } else { part };
        let number = part * 10_f64.powi(power);
        let read = reader(unit.dim);
        let one = read(&format!("1 {}", unit.symbol)).unwrap();
        for text in [format!("{number} {}", unit.symbol), format!("{number:e}{}", unit.symbol)] {
            let many = read(&text).unwrap();
            prop_assert!((many - number * one).abs() <= 1e-15 * (number * one).abs(), "{text}: {many}");
        }
    }

    #[test]
    fn powers_of_a_unit_cancel(unit in plain_units(), number in 0.001..1e6_f64, power in 1..9_i8) {
        prop_assume!(unit.dim != Dim::NONE);
        let (symbol, read) = (unit.symbol, reader(unit.dim));
        let plain = read(&format!("{number} {symbol}")).unwrap();
        let more = power + 1;
        for text in [
            format!("{number} {symbol}^{more}/{symbol}^{power}"),
            format!("{number} {symbol}{more}*{symbol}-{power}"),
            format!("{number} {symbol}^-{power} · {symbol}^{more}"),
            format!("{number} {symbol}*{symbol}³/{symbol}²/{symbol}"),
        ] {
            let got = read(&text).unwrap();
            prop_assert!((got - plain).abs() <= 1e-13 * plain, "{text}: {got} for {plain}");
        }
    }

    #[test]
    fn values_written_in_base_units_read_back_bit_by_bit(value in any::<f64>()) {
        prop_assume!(value.is_finite());
        same_bits::<Ratio>(value)?;
        same_bits::<Angle>(value)?;
        same_bits::<Length>(value)?;
        same_bits::<Time>(value)?;
        same_bits::<Velocity>(value)?;
        same_bits::<UnitWeight>(value)?;
        same_bits::<LineLoad>(value)?;
        same_bits::<SecondMomentOfArea>(value)?;
        same_bits::<Frequency>(value)?;
        same_bits::<Torque>(value)?;
        same_bits::<TemperatureInterval>(value)?;
        // Only these: what lies below absolute zero is refused.
        same_bits::<ThermodynamicTemperature>(value.abs())?;
    }

    #[test]
    fn printed_values_read_back(shown in shown_values()) {
        let read = reader_of(shown.role);
        let mut back = [(0.0, 0.0); 2];
        for (system, (value, half)) in [UnitSystem::Si, UnitSystem::Us].into_iter().zip(&mut back) {
            let printed = shown.display(system).to_string();
            *value = read(&printed).unwrap();
            let larger = if printed.ends_with("GPa") || printed.ends_with("ksi") { 1e3 } else { 1.0 };
            *half = larger * half_digit(&printed, unit_step(shown.role, system));
            let rounding = 1e-12 * shown.si.abs();
            prop_assert!((*value - shown.si).abs() <= *half + rounding, "{shown:?} as {printed}");

            let (number, symbol) = shown.in_units(system);
            let exact = read(&format!("{number} {symbol}")).unwrap();
            prop_assert!((exact - shown.si).abs() <= rounding, "{shown:?} as {number} {symbol}");
        }
        let [(metric, half_metric), (us, half_us)] = back;
        prop_assert!((metric - us).abs() <= half_metric + half_us + 1e-12 * shown.si.abs(), "{shown:?}");
    }
}
