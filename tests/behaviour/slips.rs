//! The bounds of tables are worth something only if they see a wrong number.

use crate::records::{assert_none, tables_of_numbers};
use crate::relations::table_faults;
use crate::tables::{FREEZING, row_faults};
use jackpull::Handbook;
use jackpull::quantity::{Dim, Length, Measure, Pressure, Ratio};

/// The usual slips of a typist, by what is typed: a digit too many or too few, the other system's unit.
fn slips(dim: Dim) -> Vec<f64> {
    let units: &[f64] = match dim {
        Length::DIM => &[25.4, 12.0 / 0.3048],
        Pressure::DIM => &[6.894_757, 1_000.0],
        Ratio::DIM => &[100.0],
        // Hours, minutes and days.
        Dim { time: 1, .. } => &[24.0, 60.0],
        // Short tons and kilonewtons, pounds and newtons, with and without the foot.
        Dim { mass: 1, time: -2, .. } => &[8.896_443, 4.448_222, 14.593_9],
        _ => &[],
    };
    units.iter().chain(&[10.0]).flat_map(|factor| [*factor, 1.0 / factor]).collect()
}

/// The numbers that can be put wrong by a factor of `slips` without any check of their row or table seeing it.
fn unseen(slips: impl Fn(Dim) -> Vec<f64>) -> Vec<String> {
    let mut missed = Vec::new();
    for rows in tables_of_numbers(&Handbook::embedded()) {
        for (at, row) in rows.iter().enumerate() {
            // Zero has no slip.
            for (column, right) in row.numbers.iter().enumerate().filter(|(_, right)| right.value != 0.0) {
                let wrong = match right.dim {
                    // A temperature scale has its own zero: degF typed as degC.
                    Dim { temperature: 1, .. } => vec![right.value * 1.8 - 459.67 + FREEZING],
                    dim => slips(dim).iter().map(|slip| right.value * slip).collect(),
                };
                for wrong in wrong {
                    let mut slipped = rows.clone();
                    slipped[at].numbers[column].value = wrong;
                    if row_faults(&slipped[at]).is_empty() && table_faults(&slipped).is_empty() {
                        missed.push(format!("{} {} {}: {wrong} SI", row.table, row.key, right.column));
                    }
                }
            }
        }
    }
    missed
}

/// The bounds are worth something only if they see a wrong number: each number of each row is put wrong in turn.
#[test]
fn a_slip_in_any_number_is_seen() {
    assert_none(&unseen(slips));
}

/// Where a catalogue or a standard rules, half and double are seen too. The other tables hold habits and judgements
/// that are honestly wider than that.
#[test]
fn half_or_double_in_a_catalogue_is_seen() {
    let ruled = ["clay_", "pe_", "bore_rule", "ground_suitability", "method_limit", "score_weight"];
    let mut doubled = unseen(|_| vec![2.0, 0.5]);
    doubled.retain(|fault| ruled.iter().any(|table| fault.starts_with(table)));
    assert_none(&doubled);
}
