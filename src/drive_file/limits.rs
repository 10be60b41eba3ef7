//! What a number of the drive file may be at all and what it usually is: the units in which both are written.
//!
//! The bounds stand at the fields. They are our own judgement: the outer ones hold all that was built and leave out slips
//! of unit and digit, the usual ones hold everyday work.

/// Longest drive that is taken, in m: about the longest that pipe was jacked without a pit between.
pub(super) const LONGEST: f64 = m(2_600.0);
/// Deepest invert that is taken, in m: pits for pipe of these sizes are seldom dug below 30 m.
pub(super) const DEEPEST: f64 = m(60.0);
/// Steepest slope of a drive on grade, either way.
pub(super) const STEEPEST: f64 = percent(30.0);
/// Steepest slope that a number without `%` is taken for: -0.4 is a slip for -0.4 %.
pub(super) const STEEPEST_BARE: f64 = 0.1;

/// Declares units: what a number in one of them is in SI base units.
macro_rules! units {
    ($($unit:ident = $si:expr, $name:literal;)+) => { $(
        #[doc = concat!("A number of ", $name, ".")]
        pub(crate) const fn $unit(number: f64) -> f64 {
            number * $si
        }
    )+ };
}

units! {
    mm = 1e-3, "millimetres";
    m = 1.0, "metres";
    km = 1e3, "kilometres";
    m2 = 1.0, "square metres";
    kn = 1e3, "kilonewtons";
    mn = 1e6, "meganewtons";
    pa = 1.0, "pascals";
    kpa = 1e3, "kilopascals";
    mpa = 1e6, "megapascals";
    kn_m = 1e3, "kilonewton metres";
    kn_per_m = 1e3, "kilonewtons per metre";
    kn_per_m3 = 1e3, "kilonewtons per cubic metre";
    kg_per_m3 = 1.0, "kilograms per cubic metre";
    mpa_s = 1e-3, "millipascal seconds";
    lps = 1e-3, "litres per second";
    m_per_s = 1.0, "metres per second";
    m_per_h = 1.0 / 3_600.0, "metres per hour";
    sec = 1.0, "seconds";
    min = 60.0, "minutes";
    hours = 3_600.0, "hours";
    days = 86_400.0, "days";
    deg = core::f64::consts::PI / 180.0, "degrees";
    percent = 1e-2, "percent";
}

/// A temperature in degrees Celsius.
pub(crate) const fn celsius(number: f64) -> f64 {
    number + 273.15
}
