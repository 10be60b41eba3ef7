//! Text to quantity: `number unit^n [* or / unit^n]...`.

use super::measure::{Dim, Measure};
use super::{unit, writing};
use thiserror::Error;

/// Why a text is not the quantity asked for.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("expected {expected}, got {got}")]
#[non_exhaustive]
pub struct QuantityError {
    /// What was expected.
    pub expected: &'static str,
    /// What there is in its place.
    pub got: Misread,
    /// What to write instead, in one line.
    pub advice: String,
}

/// What there is in place of a quantity, with the text as read.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum Misread {
    /// A text that does not start with a number.
    #[error("\"{0}\"")]
    NotANumber(String),
    /// A number that is infinite, not a number, or beyond the range of a 64-bit float.
    #[error("\"{0}\", which is not a finite number")]
    NotFinite(String),
    /// A number without a unit where a unit is due.
    #[error("{0} without a unit")]
    Bare(String),
    /// An unknown or ambiguous unit: the text, and the part that is not a known unit.
    #[error("\"{0}\" with the unknown unit \"{1}\"")]
    UnknownUnit(String, String),
    /// A quantity of another dimension: the text, and what it is.
    #[error("\"{0}\" which is {1}")]
    WrongDimension(String, &'static str),
    /// A temperature below absolute zero.
    #[error("\"{0}\", which is below absolute zero")]
    BelowAbsoluteZero(String),
}

/// A quantity that can be read from text.
pub trait FromText: Measure {
    /// Reads `number unit`, for example `"300 ft"`, `"18 kN/m3"`, `"5 N*m"`, `"0.4 %"`, and a ratio as `"1:200"` or `"1 in 200"`.
    ///
    /// # Errors
    /// [`QuantityError`] when there is no number, no or an unknown unit, another dimension, a value that is not
    /// finite, or a temperature below absolute zero.
    fn from_text(text: &str) -> Result<Self, QuantityError> {
        read(text, Self::DIM, Self::ABSOLUTE).map(Self::from_si)
    }

    /// Writes the value in SI base units, so that [`FromText::from_text`] gives it back bit by bit.
    fn to_text(self) -> String {
        let units = unit::base_units(Self::DIM);
        if units.is_empty() { format!("{:?}", self.si()) } else { format!("{:?} {units}", self.si()) }
    }
}
impl<Q: Measure> FromText for Q {}

/// The length of the decimal number at the start of `text`, 0 if there is none.
fn number_length(text: &str) -> usize {
    let bytes = text.as_bytes();
    let digits = |from: usize| bytes.iter().skip(from).take_while(|byte| byte.is_ascii_digit()).count();
    let mut end = usize::from(matches!(bytes.first(), Some(b'+' | b'-')));
    let whole = digits(end);
    end += whole;
    let mut fraction = 0;
    if bytes.get(end) == Some(&b'.') {
        fraction = digits(end + 1);
        end += 1 + fraction;
    }
    if whole + fraction == 0 {
        return 0;
    }
    if matches!(bytes.get(end), Some(b'e' | b'E')) {
        let sign = usize::from(matches!(bytes.get(end + 1), Some(b'+' | b'-')));
        let exponent = digits(end + 1 + sign);
        if exponent > 0 {
            end += 1 + sign + exponent;
        }
    }
    end
}

/// Splits `m3`, `m^-2` or `m³` into symbol and exponent.
fn symbol_and_exponent(factor: &str) -> Option<(&str, i8)> {
    let cut = factor
        .char_indices()
        .find(|(_, c)| c.is_ascii_digit() || matches!(c, '^' | '²' | '³' | '⁴' | '-'))
        .map_or(factor.len(), |(at, _)| at);
    let (symbol, power) = factor.split_at(cut);
    // "6 ft 1" is no power of a foot, "4 %2" none of a percentage.
    if symbol.ends_with(char::is_whitespace) || (symbol == "%" && !power.is_empty()) {
        return None;
    }
    let power = power.strip_prefix('^').unwrap_or(power);
    let exponent = match power {
        "" if cut == factor.len() => 1,
        "²" => 2,
        "³" => 3,
        "⁴" => 4,
        _ => power.parse().ok().filter(|power| *power != 0)?,
    };
    Some((symbol, exponent))
}

/// A nominal size as it is called, `DN 300` or `NPS 12`, as the length that it names.
fn nominal(text: &str) -> Option<String> {
    let size = |name: &str| {
        let (own, size) = text.split_at_checked(name.len())?;
        let size = size.trim();
        (own.eq_ignore_ascii_case(name) && !size.is_empty() && number_length(size) == size.len()).then_some(size)
    };
    [("DN", "mm"), ("NPS", "in")].into_iter().find_map(|(name, unit)| Some(format!("{} {unit}", size(name)?)))
}

fn read(text: &str, wanted: Dim, absolute: bool) -> Result<f64, QuantityError> {
    let (expected, example) = unit::describe(wanted);
    let read = || shortened(text);
    let advised = |got, advice: Option<String>| {
        let advice = advice.unwrap_or_else(|| format!("write for example \"{example}\""));
        QuantityError { expected, got, advice }
    };
    let refused = |got: fn(String) -> Misread| advised(got(read()), None);
    let text = text.trim();
    let nominal = if wanted == <super::Length as Measure>::DIM { nominal(text) } else { None };
    let text = nominal.as_deref().unwrap_or(text);
    let (number, units) = text.split_at(number_length(text));
    if number.is_empty() {
        let lower = text.trim_start_matches(['+', '-', '.']).to_ascii_lowercase();
        return Err(if lower.starts_with("nan") || lower.starts_with("inf") {
            refused(Misread::NotFinite)
        } else {
            refused(Misread::NotANumber)
        });
    }
    let number: f64 = number.parse().map_err(|_| refused(Misread::NotANumber))?;
    let units = units.trim();
    let run = [":", "in ", "/"].into_iter().find_map(|sign| units.strip_prefix(sign));
    let is_refusal = |run: &str| number > 1.0 && unit::UNITS.iter().any(|unit| run.trim().ends_with(unit.symbol));
    if let Some(run) = run.filter(|_| wanted == Dim::NONE) {
        if units.starts_with('/') && (run.ends_with('"') || is_refusal(run)) {
            let advice = "blows of a test that was stopped short: write 100, or the count for a foot (300 mm)";
            return Err(advised(Misread::NotANumber(read()), Some(advice.to_owned())));
        }
        // A slope as people say it: one in so many.
        let run = run.trim().parse().ok().filter(|run: &f64| run.is_normal() && *run > 0.0);
        let ratio = run.map(|run| number / run).filter(|ratio| ratio.is_finite());
        return ratio.ok_or_else(|| refused(Misread::NotANumber));
    }
    if units.is_empty() {
        return if wanted != Dim::NONE {
            Err(refused(Misread::Bare))
        } else if number.is_finite() {
            Ok(number)
        } else {
            Err(refused(Misread::NotFinite))
        };
    }
    let unknown = |symbol: &str| {
        let unit = shortened(if symbol.is_empty() { units } else { symbol });
        advised(Misread::UnknownUnit(read(), unit), writing::instead(number, units, symbol))
    };

    let mut dim = Dim::NONE;
    let mut factor = 1.0;
    let mut offset = 0.0;
    let mut rest = units;
    let mut sign: i8 = 1;
    loop {
        let end = rest.find(['*', '·', '/']).unwrap_or(rest.len());
        let (one, more) = rest.split_at(end);
        let (symbol, exponent) = symbol_and_exponent(one.trim()).ok_or_else(|| unknown(one.trim()))?;
        let known = unit::find(symbol).ok_or_else(|| unknown(symbol))?;
        let exponent = exponent.checked_mul(sign).ok_or_else(|| unknown(one.trim()))?;
        dim = dim.times(known.dim, exponent).ok_or_else(|| unknown(one.trim()))?;
        factor *= known.factor.powi(i32::from(exponent));
        if known.offset > 0.0 {
            // A scale with a zero of its own has a meaning only when it stands alone.
            let alone = one.len() == units.len() && exponent == 1;
            if !alone || (wanted == known.dim && !absolute) {
                return Err(unknown(units));
            }
            offset = known.offset;
        }
        let mut marks = more.chars();
        match marks.next() {
            None => break,
            Some(mark) => {
                sign = if mark == '/' { -1 } else { 1 };
                rest = marks.as_str();
            }
        }
    }
    if dim != wanted {
        let (found, _) = unit::describe(dim);
        let advice = writing::as_force(number, units, dim, wanted);
        return Err(advised(Misread::WrongDimension(read(), found), advice));
    }
    // Adding a zero would take the sign off a negative zero.
    let value = if offset > 0.0 { (number + offset) * factor } else { number * factor };
    if absolute && value < 0.0 {
        return Err(refused(Misread::BelowAbsoluteZero));
    }
    if value.is_finite() { Ok(value) } else { Err(refused(Misread::NotFinite)) }
}

/// A text short enough for one line of an error, with line breaks and control characters taken out.
#[must_use]
pub fn shortened(text: &str) -> String {
    const LONGEST: usize = 60;
    let mut short: String = text.chars().map(|c| if c.is_control() { ' ' } else { c }).take(LONGEST).collect();
    if text.chars().count() > LONGEST {
        short.push('…');
    }
    short
}
