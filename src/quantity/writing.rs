//! Writings of the trade that are not read, and what to write instead.

use super::measure::Dim;
use super::shown::plain;
use super::unit;

/// What to write instead of a number with units, one symbol of which is not known.
pub(super) fn instead(number: f64, units: &str, symbol: &str) -> Option<String> {
    let refused =
        |symbol: &str| unit::REFUSED.iter().find(|(refused, _)| refused.contains(&symbol)).map(|(_, advice)| *advice);
    let write = |number: f64, unit: &str| {
        let number = rounded(number);
        number.is_finite().then(|| format!("write \"{} {unit}\"", plain(number)))
    };
    if units.starts_with(',') {
        return without_comma(number, units);
    }
    if let Some((number, unit)) = fraction(number, units) {
        return write(number, unit);
    }
    if let Some(feet) = feet_and_inches(number, units) {
        return write(feet, "ft");
    }
    if units.eq_ignore_ascii_case("mgd") {
        return write(number * 1e6, "gal_us/day");
    }
    // A sign for inches or feet, with the number that it belongs to.
    match units {
        "\"" | "\'\'" | "\u{2033}" | "in." => return write(number, "in"),
        "\'" | "\u{2032}" | "ft." => return write(number, "ft"),
        "\u{2030}" => return write(number / 10.0, "%"),
        _ => {}
    }
    refused(symbol).map(ToOwned::to_owned).or_else(|| other_letters(symbol))
}

/// Twelfths come out with digits that nobody wrote; sixty-fourths need six.
fn rounded(number: f64) -> f64 {
    (number * 1e6).round() / 1e6
}

/// `1,200 kN`, which is one thing in one country and another in the next, `60,5 m` and `1,200,000 N`.
fn without_comma(number: f64, units: &str) -> Option<String> {
    const THOUSANDS: usize = 3;
    let end = units.find(|c: char| !c.is_ascii_digit() && !matches!(c, ',' | '.')).unwrap_or(units.len());
    let (digits, unit) = units.split_at(end);
    let (groups, fraction) = digits.split_once('.').map_or((digits, None), |(groups, rest)| (groups, Some(rest)));
    let groups: Vec<&str> = groups.split(',').skip(1).collect();
    if groups.iter().any(|group| group.is_empty()) || number.fract().abs() > 0.0 {
        return None;
    }
    let fraction = fraction.map(|fraction| format!(".{fraction}")).unwrap_or_default();
    let unit = unit.trim();
    // What is advised goes to a terminal.
    if unit.chars().any(char::is_control) {
        return None;
    }
    let whole = format!("\"{}{}{fraction} {unit}\"", plain(number), groups.concat());
    match groups.as_slice() {
        [only] if fraction.is_empty() => {
            let decimal = format!("\"{}.{only} {unit}\"", plain(number));
            Some(if only.len() == THOUSANDS {
                format!("write {whole} or {decimal}")
            } else {
                format!("write {decimal}")
            })
        }
        groups if groups.iter().all(|group| group.len() == THOUSANDS) => Some(format!("write {whole}")),
        _ => None,
    }
}

/// `1/2` and, with the number before, `1 1/2`.
fn parts(text: &str) -> Option<f64> {
    let (above, below) = text.split_once('/')?;
    let whole = |text: &str| text.trim().parse::<u32>().ok().map(f64::from);
    let below = whole(below).filter(|below| *below > 0.0)?;
    let (before, above) = above.rsplit_once(' ').unwrap_or(("0", above));
    Some(whole(before)? + whole(above)? / below)
}

/// `3/8 in` and `1 1/2 in`: the number before is whole, or the upper part of the fraction.
fn fraction(number: f64, units: &str) -> Option<(f64, &str)> {
    let (above, below) = units.split_once('/')?;
    let digits = below.chars().take_while(char::is_ascii_digit).count();
    let (below, unit) = below.split_at(digits);
    let unit = match unit.trim() {
        "\"" => "in",
        unit => unit,
    };
    unit::find(unit)?;
    if number.fract().abs() > 0.0 {
        return None;
    }
    let value = match above.trim() {
        "" => number * parts(&format!("1/{below}"))?,
        above => number + parts(&format!("{above}/{below}"))?.copysign(number),
    };
    Some((value, unit))
}

/// `197 ft 6 in`, `197\' 6"`, `6 ft-2 in` and `6 ft 2 1/2 in`, in feet; twelve inches and more are a slip.
fn feet_and_inches(number: f64, units: &str) -> Option<f64> {
    const INCHES: f64 = 12.0;
    let rest = ["ft", "\'", "\u{2032}"].iter().find_map(|feet| units.strip_prefix(feet))?;
    let rest = rest.trim_start_matches([' ', '-']);
    let inches = ["inch", "in", "\"", "\'\'", "\u{2033}"].iter().find_map(|inches| rest.strip_suffix(inches))?.trim();
    let inches: f64 = inches.parse().ok().or_else(|| parts(inches))?;
    (0.0..INCHES).contains(&inches).then(|| number + (inches / INCHES).copysign(number))
}

/// A unit in other letters; none where letters tell a million from a thousandth.
fn other_letters(symbol: &str) -> Option<String> {
    let alike = |known: &&unit::Unit| known.symbol.eq_ignore_ascii_case(symbol) && !known.symbol.starts_with('M');
    match unit::UNITS.iter().filter(alike).collect::<Vec<_>>().as_slice() {
        [only] => Some(format!("write \"{}\"", only.symbol)),
        _ => None,
    }
}

/// A mass where a force is due, and per length, area or volume: the same with a unit of force.
pub(super) fn as_force(number: f64, units: &str, found: Dim, wanted: Dim) -> Option<String> {
    /// Length over time squared, which is what a force has over a mass.
    const GRAVITY: Dim = Dim::of(1, 0, -2, 0);
    if found.times(GRAVITY, 1) != Some(wanted) {
        return None;
    }
    let end = units.find(['/', '*', '·']).unwrap_or(units.len());
    let (mass, rest) = units.split_at(end);
    let force = match mass.trim() {
        "lb" => "lbf",
        "kg" => "kgf",
        "t" => "tf",
        _ => return None,
    };
    Some(format!("write \"{} {force}{rest}\"", plain(number)))
}
