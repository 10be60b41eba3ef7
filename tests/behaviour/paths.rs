//! The silent and the recording path: the same bits, and no heap on the silent one.

use crate::drives::{drive, text};
use jackpull::check::Check;
use jackpull::{Method, Scheme, assess, explain};

const METHODS: [Method; 2] = [Method::PipeJacking, Method::Pullback];

/// Every number of a scheme, bit by bit.
fn bits(scheme: &Scheme) -> Vec<u64> {
    let mut bits = Vec::new();
    for band in [scheme.force, scheme.rig_force].into_iter().flatten() {
        bits.extend([band.low, band.likely, band.high].map(|force| force.value.to_bits()));
    }
    let pairs = |check: &Check| [check.likely(), check.high()];
    for (demand, limit) in scheme.checks.iter().flat_map(pairs).flatten() {
        bits.extend([demand.si.to_bits(), limit.si.to_bits()]);
    }
    bits
}

#[test]
fn assess_and_explain_give_the_same_bits() {
    let drive = drive(&text(|text| text));
    let mut numbers = 0;
    for pipe in drive.candidates() {
        for method in METHODS {
            let silent = assess(&drive, pipe, method);
            let (recorded, sheet) = explain(&drive, pipe, method);
            assert_eq!(bits(&silent), bits(&recorded), "{}", pipe.label());
            assert_eq!(silent, recorded);
            assert_eq!(sheet.steps().is_empty(), silent.is_excluded());
            numbers += bits(&silent).len();
        }
    }
    assert!(numbers > 50, "the comparison saw only {numbers} numbers");
}

#[test]
fn assess_does_not_touch_the_heap() {
    let drive = drive(&text(|text| text));
    let mut recorded = 0;
    for pipe in drive.candidates() {
        for method in METHODS {
            let silent = allocation_counter::measure(|| {
                std::hint::black_box(assess(&drive, pipe, method));
            });
            assert_eq!(silent.count_total, 0, "{} by {method:?}", pipe.label());
            let explained = allocation_counter::measure(|| {
                std::hint::black_box(explain(&drive, pipe, method));
            });
            recorded += explained.count_total;
        }
    }
    assert!(recorded > 0, "the counter does not count");
}

/// The working shows the very numbers that decide: the last result of each kind is in the checks.
#[test]
fn the_working_ends_in_the_limits_of_the_checks() {
    let drive = drive(&text(|text| text));
    for pipe in drive.candidates() {
        for method in METHODS {
            let (scheme, sheet) = explain(&drive, pipe, method);
            for check in scheme.checks.iter().filter(|check| {
                use jackpull::check::Subject;
                matches!(check.subject, Subject::EndCapacity | Subject::Tension)
            }) {
                let (_, limit) = check.high().unwrap();
                let shown = sheet.steps().iter().any(|step| step.result.si.to_bits() == limit.si.to_bits());
                assert!(shown, "{:?} of {}", check.subject, pipe.label());
            }
        }
    }
}
