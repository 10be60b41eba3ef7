//! What the columns of a row owe each other, and the rows of a table.

use crate::coverage::{meet, tiling_faults};
use crate::records::Record;
use crate::tables::{HOUR, INCH, KN, MM, TON, YEAR};

/// Durations that pull stresses are printed for, in hours.
const PULLS: [f64; 6] = [0.5, 1.0, 12.0, 20.0, 24.0, 1_000.0];
/// Durations that moduli are printed for, in hours; the last are 1, 10 and 50 years.
const LOADS: [f64; 11] = [0.5, 1.0, 2.0, 10.0, 12.0, 24.0, 100.0, 1_000.0, 8_766.0, 87_660.0, 438_300.0];
/// Outside diameters of plastic pipe, ISO 161-1, in mm.
const ISO_SIZES: [f64; 33] = [
    20.0, 25.0, 32.0, 40.0, 50.0, 63.0, 75.0, 90.0, 110.0, 125.0, 140.0, 160.0, 180.0, 200.0, 225.0, 250.0, 280.0,
    315.0, 355.0, 400.0, 450.0, 500.0, 560.0, 630.0, 710.0, 800.0, 900.0, 1_000.0, 1_200.0, 1_400.0, 1_600.0, 1_800.0,
    2_000.0,
];
/// Dimension ratios, ISO 4065.
const ISO_SDR: [f64; 11] = [6.0, 7.4, 9.0, 11.0, 13.6, 17.0, 17.6, 21.0, 26.0, 33.0, 41.0];
/// Their pipe series S, the R10 numbers that the walls are computed from: the size over 2 S + 1.
const ISO_SERIES: [f64; 11] =
    [2.511_9, 3.162_3, 3.981_1, 5.011_9, 6.309_6, 7.943_3, 8.333_3, 10.0, 12.589, 15.849, 19.953];
/// Iron pipe sizes below 14 in, ASME B36.10M, in inches; above they are the outside diameter.
const IRON_SIZES: [f64; 11] = [1.25, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0];
/// Their outside diameters.
const IRON_OUTSIDE: [f64; 11] = [1.660, 1.900, 2.375, 2.875, 3.5, 4.5, 5.563, 6.625, 8.625, 10.75, 12.75];

/// How far `value` is from the nearest of `list`, as a share.
fn off_list(value: f64, list: impl IntoIterator<Item = f64>) -> f64 {
    list.into_iter().map(|member| (value / member - 1.0).abs()).fold(f64::INFINITY, f64::min)
}

/// What stands beside `value` in a second list.
fn partner(value: f64, list: &[f64], partners: &[f64]) -> Option<f64> {
    list.iter().zip(partners).find(|(member, _)| off_list(value, [**member]) < 1e-6).map(|(_, partner)| *partner)
}

/// The duration at the end of a key such as `pe80_0_5_h`; a class that is open upwards (`over_20_h`) has none.
fn duration_in(key: &str) -> Option<f64> {
    let (key, unit) = key.rsplit_once('_')?;
    let unit = if unit == "year" { YEAR } else { HOUR };
    let digits: Vec<&str> = key.rsplit('_').take_while(|part| part.parse::<u32>().is_ok()).collect();
    let open = key.contains("over_");
    match digits.as_slice() {
        ["5", "0", ..] => Some(0.5 * unit),
        [whole, ..] if !open => whole.parse::<f64>().ok().map(|whole| whole * unit),
        _ => None,
    }
}

/// What the columns of one row owe each other: name, value, least and most.
pub(crate) fn relations(row: &Record) -> Vec<(&'static str, f64, f64, f64)> {
    let number = |column| row.number(column);
    let share = |over, under| number(over) / number(under);
    let on_list = |name, off| (name, off, 0.0, 1e-6);
    let ordered = |low, likely, high, widest| {
        vec![("likely over low", share(likely, low), 1.1, widest), ("high over likely", share(high, likely), 1.2, 4.0)]
    };
    // Key and value were typed by the same hand, but not by the same stroke.
    let keyed = |column| match duration_in(&row.key) {
        Some(duration) => vec![("duration over the one in the key", number(column) / duration, 0.999, 1.001)],
        None => vec![],
    };
    match row.table {
        "clay_pipe" => {
            let ring = core::f64::consts::FRAC_PI_4 * (number("outside_diameter").powi(2) - number("size").powi(2));
            let wall = number("weight") / (22.0 * KN);
            let ultimate = |column, factor| number(column) * factor;
            // A rating is printed to the ton, so that each product is good to half its factor in tons.
            let apart = |a: f64, b: f64, factors: f64| ((a - b) / (TON * factors / 2.0)).abs();
            let (a, b, c) =
                (ultimate("rated_at_2_5", 2.5), ultimate("rated_at_3_0", 3.0), ultimate("rated_at_3_5", 3.5));
            vec![
                ("outside diameter over size", share("outside_diameter", "size"), 1.08, 1.6),
                // Fired clay weighs 20 to 24 kN/m3; size is not the true bore.
                ("weight over ring", number("weight") / ring, 16.0 * KN, 28.0 * KN),
                // The joint takes 15 to 45 % of the wall; the wall by weight, as the bore by size is only nominal.
                ("bearing area over wall", a / number("rating_strength") / wall, 0.55, 0.85),
                ("ratings at 2.5 and 3.0, in roundings", apart(a, b, 5.5), 0.0, 1.0),
                ("ratings at 2.5 and 3.5, in roundings", apart(a, c, 6.0), 0.0, 1.0),
                ("ratings at 3.0 and 3.5, in roundings", apart(b, c, 6.5), 0.0, 1.0),
            ]
        }
        "pe_iso4427" => {
            let series = partner(number("sdr"), &ISO_SDR, &ISO_SERIES).unwrap_or(f64::NAN);
            let exact = number("size") / (2.0 * series + 1.0);
            vec![
                on_list("size is of ISO 161-1, off by", off_list(number("size") / MM, ISO_SIZES)),
                on_list("SDR is of ISO 4065, off by", off_list(number("sdr"), ISO_SDR)),
                ("SDR x wall over size", number("sdr") * number("wall") / number("size"), 0.95, 1.05),
                // Computed walls are rounded up to 0.1 mm; some of the largest are printed up to 1 mm thinner.
                (
                    "wall less the wall of its series, mm",
                    (number("wall") - exact) / MM,
                    if number("size") < 0.95 { -0.06 } else { -1.0 },
                    0.16,
                ),
            ]
        }
        "pe_ips" => {
            let size = number("size") / INCH;
            let large = if size > 13.0 { size } else { f64::NAN };
            let outside = partner(size, &IRON_SIZES, &IRON_OUTSIDE).unwrap_or(large);
            let odd = (size / 2.0 - (size / 2.0).round()).abs();
            vec![
                on_list("outside diameter off ASME B36.10", off_list(number("outside_diameter") / INCH, [outside])),
                ("even inches above 12, off by", if size > 13.0 { odd } else { 0.0 }, 0.0, 1e-6),
            ]
        }
        "pe_pull_stress" | "pe_duration_factor" => {
            [vec![on_list("duration off the printed ones", off_list(number("up_to") / HOUR, PULLS))], keyed("up_to")]
                .concat()
        }
        "pe_modulus" => [
            vec![on_list("duration off the printed ones", off_list(number("duration") / HOUR, LOADS))],
            keyed("duration"),
        ]
        .concat(),
        // Lubricated drives spread over a factor of ten and more; their low serves comparison with logs only.
        "friction_band" => ordered("low", "likely", "high", if row.word("lubrication") == "none" { 3.5 } else { 15.0 }),
        "ground_class" => vec![
            ("likely less low", number("n_likely") - number("n_low"), 0.0, 40.0),
            ("high less likely", number("n_high") - number("n_likely"), 0.0, 60.0),
        ],
        "face" if row.key == "vacuum" => ordered("low", "likely", "high", 3.5),
        "face" => {
            [ordered("low", "likely", "high", 3.5), ordered("least_low", "least_likely", "least_high", 3.5)].concat()
        }
        // 400 mm was built in 530 mm.
        "bore_rule" if row.key == "on_grade" => {
            vec![("bore over a pipe of 400 mm", number("times") + number("plus") / 0.4, 1.3, 1.36)]
        }
        "bore_rule" => {
            let bore = |od: Option<f64>| od.map(|od| number("times") + number("plus") / od);
            // Reaming to 1.3 to 1.6 diameters is the trade's rule; fixed margins weigh more on small pipe.
            [bore(row.open("od_from")), bore(row.open("od_below"))]
                .into_iter()
                .flatten()
                .map(|bore| ("bore over pipe at the end of the range", bore, 1.35, 1.65))
                .collect()
        }
        _ => Vec::new(),
    }
}

#[derive(Clone, Copy, PartialEq)]
enum Sense {
    Rises,
    Falls,
    NeverRises,
}

/// Table, same, axis, column, sense: among the rows that agree in `same`, `column` goes one way along `axis`, and no
/// place on the axis is given twice.
type Order = (&'static str, &'static [&'static str], &'static str, &'static str, Sense);

const ORDERS: &[Order] = &[
    ("clay_pipe", &[], "size", "outside_diameter", Sense::Rises),
    ("clay_pipe", &[], "size", "weight", Sense::Rises),
    ("clay_pipe", &[], "size", "rated_at_2_5", Sense::Rises),
    ("clay_pipe", &[], "size", "rated_at_3_0", Sense::Rises),
    ("clay_pipe", &[], "size", "rated_at_3_5", Sense::Rises),
    ("pe_iso4427", &["sdr"], "size", "wall", Sense::Rises),
    ("pe_iso4427", &["size"], "sdr", "wall", Sense::Falls),
    ("pe_ips", &[], "size", "outside_diameter", Sense::Rises),
    ("pe_pull_stress", &["edition", "material", "at"], "up_to", "stress", Sense::NeverRises),
    ("pe_pull_stress", &["edition", "material", "up_to"], "at", "stress", Sense::Falls),
    ("pe_duration_factor", &["edition"], "up_to", "factor", Sense::NeverRises),
    ("pe_modulus", &["material"], "duration", "modulus", Sense::Falls),
    ("pe_temperature", &["set"], "at", "factor", Sense::Falls),
];

/// What is wrong with the rows of one table taken together.
pub(crate) fn table_faults(rows: &[Record]) -> Vec<String> {
    let mut faults = Vec::new();
    let table = rows.first().map_or("", |row| row.table);
    for (_, same, axis, column, sense) in ORDERS.iter().filter(|order| order.0 == table) {
        let alike = |a: &Record, b: &Record| {
            same.iter().all(|column| a.word(column) == b.word(column) && a.open(column) == b.open(column))
        };
        for (at, first) in rows.iter().enumerate() {
            for second in rows.iter().skip(at + 1).filter(|second| alike(first, second)) {
                let (one, two) = (first.number(axis), second.number(axis));
                let (before, after) = if one < two { (first, second) } else { (second, first) };
                let (from, to) = (before.number(column), after.number(column));
                let right = match sense {
                    Sense::Rises => from < to,
                    Sense::Falls => from > to,
                    Sense::NeverRises => from >= to,
                };
                if one == two || !right {
                    let (before, after) = (&before.key, &after.key);
                    faults.push(format!("{table} {before} to {after}: {column} {from} to {to}"));
                }
            }
        }
    }
    match table {
        "clay_pipe" => {
            for row in rows {
                let [a, b, c] = ["rated_at_2_5", "rated_at_3_0", "rated_at_3_5"].map(|column| row.number(column));
                if !(a > b && b > c) {
                    faults.push(format!("clay_pipe {}: ratings {a}, {b}, {c} do not fall with the factor", row.key));
                }
            }
        }
        "friction_band" => {
            let cares = ["none", "metered", "logged"];
            let care = |row: &Record| cares.iter().position(|care| *care == row.word("lubrication"));
            for less in rows {
                for more in rows.iter().filter(|more| care(more) > care(less)) {
                    let alike =
                        less.word("ground") == more.word("ground") && meet(less.word("water"), more.word("water"));
                    for level in ["likely", "high"].into_iter().filter(|_| alike) {
                        if more.number(level) > less.number(level) {
                            faults.push(format!("friction_band {} above {}: {level}", more.key, less.key));
                        }
                    }
                }
            }
        }
        // No pipe may fall between two bands of the bore or under both.
        "bore_rule" => {
            for half_inches in 4..120 {
                let od = f64::from(half_inches) / 2.0 * INCH;
                let holds = |row: &&Record| {
                    row.key.starts_with("band_")
                        && row.open("od_from").is_none_or(|from| od >= from)
                        && row.open("od_below").is_none_or(|below| od < below)
                };
                let count = rows.iter().filter(holds).count();
                if count != 1 {
                    faults.push(format!("bore_rule: {count} bands for a pipe of {od} m"));
                }
            }
        }
        "ground_suitability" => faults.extend(tiling_faults(rows)),
        "score_weight" => {
            let sum: f64 = rows.iter().map(|row| row.number("value")).sum();
            if (sum - 1.0).abs() > 1e-9 {
                faults.push(format!("score_weight: the weights sum to {sum}"));
            }
        }
        _ => {}
    }
    faults
}
