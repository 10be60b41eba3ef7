//! Numbers far out of any drive: no infinity comes out, and no line of three hundred digits.

use crate::drives::{drive, text};
use crate::edit::Edit;
use jackpull::check::{Draft, Subject, Verdict, at_most};
use jackpull::choice::CriterionKind;
use jackpull::quantity::{Force, Measure, Role, Shown, UnitSystem};
use jackpull::source::{Cited, FieldName};
use jackpull::{Handbook, choose, read_drive};

fn check(demand: f64, limit: f64) -> Draft {
    let limit = Cited::given(Force::from_si(limit), &FieldName("rig.thrust"));
    at_most(Role::Thrust, Force::from_si(demand), limit)
}

#[test]
fn a_utilisation_is_a_finite_number_or_none() {
    for (demand, limit) in [(1e300, 1e-300), (1.0, 0.0), (1.0, 5e-324), (f64::MAX, 0.5)] {
        let check = check(demand, limit);
        assert_eq!(check.verdict(), Verdict::Over);
        assert_eq!((check.utilisation(), check.likely_utilisation()), (None, None), "{demand} over {limit}");
    }
    assert_eq!(check(1e300, 1e-5).utilisation(), Some(1e305));
}

/// A load over its limit has no margin, also where it is too far over for a number.
#[test]
fn a_load_far_over_its_limit_has_no_margin() {
    let choice = choose(&drive(&text(|text| text.edit("thrust: 900 kN", "thrust: 1 kN")))).unwrap();
    for ranked in choice.ranked.iter().filter(|ranked| !ranked.scheme.is_excluded()) {
        assert!(ranked.scheme.checks.get(Subject::StemThrust).unwrap().utilisation().unwrap() > 50.0);
        let score = ranked.score.as_ref().unwrap();
        let margin = score.criteria.iter().find(|criterion| criterion.kind == CriterionKind::LoadMargin).unwrap();
        assert_eq!(margin.value, Some(0.0));
    }
    assert!(choice.reason.contains("thrust, pilot stem at over 10 times its limit"), "{}", choice.reason);
}

#[test]
fn huge_numbers_are_shown_by_their_power_of_ten() {
    for (si, role, text) in [
        (1e15, Role::Thrust, "1.000e12 kN"),
        (-2.5e300, Role::Pressure, "-2.500e297 kPa"),
        (f64::MAX, Role::Ratio, "1.798e308"),
        (1e9, Role::Count, "1.000e9"),
        (999_999_999.0, Role::Count, "999999999"),
        (999_999_999.0, Role::Distance, "999999999.0 m"),
    ] {
        assert_eq!(Shown { si, role }.display(UnitSystem::Si).to_string(), text);
    }
}

/// No fault is longer for a longer number.
#[test]
fn faults_of_huge_numbers_stay_short() {
    for (from, to, part) in [
        ("spt_n: 12", "spt_n: 1e300", "expected a plain number or a percentage from 0 to 200, got 1.000e300"),
        ("sdr: 11", "sdr: 1e300", "expected a plain number or a percentage from 5 to 50, got 1.000e300"),
        (
            "size: 10 in",
            "size: 10 in, factor: 1e300",
            "expected a plain number or a percentage from 1 to 20, got 1.000e300",
        ),
        ("size: 10 in", "size: 1e300 m", "expected a length from 25 mm to 4000 mm, got 1.000e303 mm"),
        ("sdr: 11", "sdr: 11, wall: 1e-300 mm", "expected a length from 1.0 mm to 1750.0 mm, got 0.0 mm"),
        ("metered", "1e300", "got \"1e300\""),
        ("4.20 m", "1e300 m", "launch.invert_depth: expected a length from 0.30 m to 60.00 m, got 1.000e300 m"),
        ("length: 60 m", "length: 1e308 m", "length: expected a length from 3.0 m to 2600.0 m, got 1.000e308 m"),
        ("length: 60 m", "length: 1e300", "got 1e300 without a unit"),
    ] {
        let text = text(|text| text.edit(from, to));
        let message = read_drive(&text, &Handbook::embedded()).unwrap_err().to_string();
        assert!(message.contains(part), "{part}: {message}");
        assert!(message.split(' ').all(|word| word.len() < 60), "{message}");
    }
}
