//! The working recomputes: each line evaluated anew from its printed digits, by an evaluator and units of its own.

use crate::run::{example, jackpull, stdout};
use serde_json::Value;
use std::collections::HashMap;
use std::f64::consts::PI;

/// Value of a unit in SI, from its definition; products of powers by their parts.
fn unit(symbols: &str) -> Option<f64> {
    const PLAIN: &[(&str, f64)] = &[
        ("m", 1.0),
        ("mm", 1e-3),
        ("cm", 1e-2),
        ("ft", 0.3048),
        ("in", 0.0254),
        ("yd", 0.9144),
        ("kN", 1e3),
        ("lbf", 4.448_221_615_260_5),
        ("kip", 4_448.221_615_260_5),
        ("Pa", 1.0),
        ("kPa", 1e3),
        ("MPa", 1e6),
        ("GPa", 1e9),
        ("psf", 4.448_221_615_260_5 / (0.3048 * 0.3048)),
        ("psi", 4.448_221_615_260_5 / (0.0254 * 0.0254)),
        ("ksi", 4_448.221_615_260_5 / (0.0254 * 0.0254)),
        ("pcf", 4.448_221_615_260_5 / (0.3048 * 0.3048 * 0.3048)),
        ("kg", 1.0),
        ("lb", 0.453_592_37),
        ("s", 1.0),
        ("h", 3600.0),
        ("deg", PI / 180.0),
        ("%", 0.01),
        ("L", 1e-3),
        ("gal_us", 231.0 * 0.0254 * 0.0254 * 0.0254),
        ("min", 60.0),
    ];
    let one = |symbol: &str| {
        let (symbol, power) = match symbol.split_at(symbol.len() - 1) {
            (stem, power) if power.parse::<i32>().is_ok() => (stem, power.parse().unwrap()),
            _ => (symbol, 1),
        };
        Some(PLAIN.iter().find(|plain| plain.0 == symbol)?.1.powi(power))
    };
    let product = |part: &str| part.split('*').map(one).product::<Option<f64>>();
    let mut parts = symbols.split('/');
    let first = product(parts.next()?)?;
    parts.try_fold(first, |value, part| Some(value / product(part)?))
}

/// A printed value in SI, and half of its last digit.
#[derive(Clone, Copy)]
struct Printed {
    value: f64,
    half_digit: f64,
}

impl Printed {
    fn of(text: &str) -> Option<Self> {
        let (number, symbols) = text.split_once(' ').unwrap_or((text, ""));
        let value: f64 = number.parse().ok()?;
        let (mantissa, power) = number.split_once('e').map_or((number, 0), |(m, power)| (m, power.parse().unwrap()));
        let decimals = mantissa.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let half_digit = 0.5 * 10_f64.powi(power - i32::try_from(decimals).unwrap());
        if let Some(at) = ["degC", "degF"].iter().position(|scale| *scale == symbols) {
            let (factor, zero) = [(1.0, 273.15), (1.0 / 1.8, 459.67 / 1.8)][at];
            return Some(Self { value: value * factor + zero, half_digit: half_digit * factor });
        }
        let factor = if symbols.is_empty() { 1.0 } else { unit(symbols)? };
        Some(Self { value: value * factor, half_digit: half_digit * factor })
    }
}

type Known<'a> = HashMap<&'a str, f64>;

/// A form, read from the left: a product and a quotient bind alike, and what stands side by side is multiplied.
struct Form<'a> {
    rest: &'a str,
    known: &'a Known<'a>,
}

impl<'a> Form<'a> {
    fn value(text: &'a str, known: &'a Known<'a>) -> Option<f64> {
        let mut form = Self { rest: text, known };
        let value = form.sum()?;
        form.peek().is_none().then_some(value).filter(|value| value.is_finite())
    }

    fn peek(&mut self) -> Option<char> {
        self.rest = self.rest.trim_start();
        self.rest.chars().next()
    }

    fn take(&mut self, c: char) -> Option<()> {
        (self.peek()? == c).then(|| self.rest = &self.rest[c.len_utf8()..])
    }

    fn sum(&mut self) -> Option<f64> {
        let mut sum = self.product()?;
        while let Some(sign @ ('+' | '-')) = self.peek() {
            self.take(sign)?;
            let next = self.product()?;
            sum += if sign == '+' { next } else { -next };
        }
        Some(sum)
    }

    fn product(&mut self) -> Option<f64> {
        if self.take('-').is_some() {
            return Some(-self.product()?);
        }
        let mut product = self.power()?;
        loop {
            match self.peek() {
                Some('/') => {
                    self.take('/')?;
                    product /= self.power()?;
                }
                Some(c) if c == '(' || c.is_alphanumeric() => product *= self.power()?,
                Some('|') if !self.rest[1..].starts_with([' ', ')', ',']) && self.rest.len() > 1 => {
                    product *= self.power()?
                }
                _ => return Some(product),
            }
        }
    }

    fn power(&mut self) -> Option<f64> {
        let base = self.one()?;
        if self.take('^').is_none() {
            return Some(base);
        }
        Some(base.powf(self.one()?))
    }

    fn one(&mut self) -> Option<f64> {
        let first = self.peek()?;
        if first == '|' {
            self.take('|')?;
            let value = self.sum()?.abs();
            return self.take('|').map(|()| value);
        }
        if first == '(' {
            return self.arguments().filter(|arguments| arguments.len() == 1).map(|arguments| arguments[0]);
        }
        let is_number = first.is_ascii_digit();
        let end = self.rest.find(|c: char| !(c.is_alphanumeric() || c == '_' || is_number && c == '.'));
        let (word, rest) = self.rest.split_at(end.unwrap_or(self.rest.len()));
        self.rest = rest;
        if is_number {
            return word.parse().ok();
        }
        if let Some(known) = self.known.get(word) {
            return Some(*known);
        }
        let of = |function: fn(f64) -> f64, form: &mut Self| form.arguments().map(|arguments| function(arguments[0]));
        match word {
            "pi" => Some(PI),
            "e" => Some(std::f64::consts::E),
            "g" => Some(9.806_65),
            "deg" => Some(PI / 180.0),
            "sqrt" => of(f64::sqrt, self),
            "exp" => of(f64::exp, self),
            "ln" => of(f64::ln, self),
            "sin" => of(f64::sin, self),
            "cos" => of(f64::cos, self),
            "tan" => of(f64::tan, self),
            "cot" => of(|angle| 1.0 / angle.tan(), self),
            "max" => self.arguments()?.into_iter().reduce(f64::max),
            "min" => self.arguments()?.into_iter().reduce(f64::min),
            _ => None,
        }
    }

    fn arguments(&mut self) -> Option<Vec<f64>> {
        self.take('(')?;
        let mut arguments = vec![self.sum()?];
        while self.take(',').is_some() {
            arguments.push(self.sum()?);
        }
        self.take(')').map(|()| arguments)
    }
}

/// `x = ..., y = ...`: the last are worked out first.
fn evaluate<'a>(form: &'a str, known: &Known<'a>) -> Option<f64> {
    let mut known = known.clone();
    let mut parts: Vec<(&str, &str)> = Vec::new();
    for part in form.split(", ") {
        match (part.split_once(" = "), parts.last_mut()) {
            (Some((name, value)), _) if !name.contains([' ', '(']) => parts.push((name, value)),
            // A comma of max or min.
            (None, Some(last)) => last.1 = &form[form.find(last.1)?..form.find(part)? + part.len()],
            _ => return None,
        }
    }
    for (name, value) in parts.iter().skip(1).rev() {
        let value = Form::value(value, &known)?;
        known.insert(name, value);
    }
    Form::value(parts.first()?.1, &known)
}

/// How far a result may be off by the digits that are printed.
fn slack<'a>(form: &'a str, inputs: &HashMap<&'a str, Printed>, value: f64) -> f64 {
    let known: Known = inputs.iter().map(|(name, printed)| (*name, printed.value)).collect();
    let by = |(name, printed): (&&'a str, &Printed)| {
        let moved = [-1.0, 1.0].map(|side| {
            let mut known = known.clone();
            known.insert(name, printed.value + side * printed.half_digit);
            evaluate(form, &known).map_or(0.0, |moved| (moved - value).abs())
        });
        moved[0].max(moved[1])
    };
    inputs.iter().map(by).sum::<f64>() * 1.05 + value.abs() * 1e-9
}

/// A report in full ends with what was assessed, as it was written.
#[test]
fn the_drive_file_is_echoed() {
    let path = example("fennbridge_mill_lane.yaml");
    let text = stdout(&jackpull(&["assess", "--full", &path]));
    let (_, echoed) = text.split_once("\nDrive file\n----------\n").unwrap();
    for line in std::fs::read_to_string(&path).unwrap().lines() {
        assert!(echoed.contains(line.trim_end()), "{line}");
    }
}

/// Of six drives in both families of units and every scheme that is checked, each line whose form is one of arithmetic
/// gives what is printed behind it, to four digits, and those are most of all. The share of every limit is such a line, at
/// both levels, and so is the sum of what resists in each stage.
#[test]
fn the_working_recomputes() {
    /// Half of the fourth digit of a number that begins with 1.
    const FOURTH: f64 = 5e-4;
    let (mut lines, mut recomputed, mut wrong) = (0, 0, Vec::new());
    let (mut shares, mut sums) = (0, 0);
    for name in ["mill_lane", "quarry_road", "kiln_bank", "osier_road", "sallow_junction", "tarn_head"] {
        for units in ["si", "us"] {
            let path = example(&format!("fennbridge_{name}.yaml"));
            let text = stdout(&jackpull(&["assess", "--format", "markdown", "--full", "--units", units, &path]));
            let report: Value =
                serde_json::from_slice(&jackpull(&["assess", "--format", "json", "--units", units, &path]).stdout)
                    .unwrap();
            let checks =
                report["schemes"].as_array().unwrap().iter().map(|scheme| scheme["checks"].as_array().unwrap());
            let checked = checks.clone().filter(|checks| !checks.is_empty()).count();
            assert_eq!(text.matches("\n## Working: ").count(), checked, "{name}");
            shares += checks
                .flatten()
                .flat_map(|check| [&check["likely_utilisation"], &check["utilisation"]])
                .filter(|used| !used.is_null())
                .count();
            let text: String = text.split_once("## Working: ").unwrap().1.chars().filter(|c| *c != '\\').collect();
            let mut forms: HashMap<&str, &str> = HashMap::new();
            let mut form = "";
            for line in text.lines().filter_map(|line| line.strip_prefix("> ")) {
                let Some((inputs, result)) = line.split_once(" => ") else {
                    let told = line.rsplit_once("  [").and_then(|(told, _)| told.split_once(": "));
                    form = told.map_or_else(|| forms.get(line).copied().unwrap_or_default(), |told| told.1);
                    forms.extend(told);
                    continue;
                };
                lines += 1;
                let inputs = inputs.split_once(": ").map_or(inputs, |(_, inputs)| inputs);
                let inputs: Option<HashMap<&str, Printed>> = inputs
                    .split(", ")
                    .map(|input| input.split_once(' ').and_then(|(name, value)| Some((name, Printed::of(value)?))))
                    .collect();
                let (Some(inputs), Some(result)) = (inputs, Printed::of(result)) else { continue };
                let known = inputs.iter().map(|(name, printed)| (*name, printed.value)).collect();
                let Some(value) = evaluate(form, &known) else { continue };
                recomputed += 1;
                shares -= usize::from(form.starts_with("share = "));
                sums += usize::from(form.starts_with("F = max(behind + ahead"));
                let digit = (result.half_digit * 1.01).min((value.abs() * FOURTH * 1.01).max(1e-9));
                if (value - result.value).abs() > slack(form, &inputs, value) + digit {
                    wrong.push(format!("{name} {units}: {form}: {line}: {value}"));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{} wrong:\n{}", wrong.len(), wrong.join("\n"));
    assert!(recomputed * 4 > lines * 3, "{recomputed} of {lines} lines recompute");
    assert_eq!(shares, 0, "shares of limits that do not recompute");
    assert!(sums > 100, "{sums}");
}
