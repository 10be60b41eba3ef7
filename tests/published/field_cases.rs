//! Measured unit friction of microtunnel drives: Advances in Civil Engineering 2020, article 6594306, Tables 1 and 3
//! (ten of these, read), and Buildings 2025, 15(8) 1337, section 2.2.3 (one, read). Twelve values from ten drives at
//! eight sites; lubrication not stated for eleven of them; outside diameters 0.64 to 4.14 m; none from a guided bore.
//! Two merged cells of Table 3 were read by the fit of round figures.

use crate::book::measured_drives::MEASURED;
use crate::found::{Found, Outcome, drive, friction, holds, near, pages};
use jackpull::Handbook;
use jackpull::handbook::{GroundClass, Lubrication, WaterSide};
use jackpull::quantity::{Measure, Pressure, Ratio};
use std::sync::Arc;

pages!(
    all_values_lie_in_the_band_of_ground_not_split,
    all_values_lie_in_the_band_of_a_logged_drive,
    values_by_ground,
    likely_value_is_the_mean,
    high_value_is_that_of_one_new_drive,
    high_value_in_clay,
);

/// A measured drive and the ground of its name.
struct Case {
    id: &'static str,
    /// Unit friction, in kPa.
    friction: f64,
    ground: Ground,
}

#[derive(PartialEq)]
enum Ground {
    Clay,
    Silt,
    Sand,
    Gravel,
}

fn cases() -> impl Iterator<Item = Case> {
    MEASURED.iter().map(|measured| {
        let ground = match measured.id.split_once(", ").unwrap().1 {
            soil if soil.contains("clay") && !soil.starts_with("silty sand") => Ground::Clay,
            soil if soil.contains("gravel") => Ground::Gravel,
            soil if soil.contains("sand") => Ground::Sand,
            _ => Ground::Silt,
        };
        Case { id: measured.id, friction: measured.kilopascals, ground }
    })
}

fn kilopascals(value: f64) -> Pressure {
    Pressure::from_si(value * 1e3)
}

/// Mean and standard deviation of the logarithms, and their number.
fn log_mean(values: &[f64]) -> (f64, f64, f64) {
    let count = f64::from(u32::try_from(values.len()).unwrap());
    let mean = values.iter().map(|value| value.ln()).sum::<f64>() / count;
    let square = values.iter().map(|value| (value.ln() - mean).powi(2)).sum::<f64>();
    (mean, (square / (count - 1.0)).sqrt(), count)
}

/// One value a drive: the two ends of a range count as their geometric mean.
fn by_drive() -> Vec<f64> {
    let mut values: Vec<f64> = Vec::new();
    let mut site = "";
    for case in cases() {
        let (name, _) = case.id.split_once(',').unwrap();
        match values.last_mut() {
            Some(last) if name == site => *last = (*last * case.friction).sqrt(),
            _ => values.push(case.friction),
        }
        site = name;
    }
    values
}

/// Student's factor for 90 % both ways.
const NINE_DEGREES: f64 = 1.833;
const THREE_DEGREES: f64 = 2.353;

/// Log-normal interval that holds one new drive with 90 %, drives taken as exchangeable.
fn one_new_drive(values: &[f64], student: f64) -> (Pressure, Pressure) {
    let (mean, deviation, count) = log_mean(values);
    let half = student * deviation * (1.0 + 1.0 / count).sqrt();
    (kilopascals((mean - half).exp()), kilopascals((mean + half).exp()))
}

/// Any ground: also of fill, of which nothing was measured.
const NOT_SPLIT: [GroundClass; 2] = [GroundClass::Unknown, GroundClass::Fill];

const ALL_GROUND: [GroundClass; 9] = [
    GroundClass::SoftClay,
    GroundClass::FirmToVeryStiffClay,
    GroundClass::HardClay,
    GroundClass::Silt,
    GroundClass::LooseSand,
    GroundClass::MediumToDenseSand,
    GroundClass::Gravel,
    GroundClass::Fill,
    GroundClass::Unknown,
];

fn all_lie_within(
    handbook: &Handbook,
    found: &mut Found,
    grounds: &[GroundClass],
    lubrication: Lubrication,
) -> Outcome {
    for ground in grounds {
        let row = friction(handbook, *ground, WaterSide::Any, lubrication)?;
        for case in cases() {
            // Readings hold two figures: 5.001 is 5.0.
            let value = kilopascals(case.friction);
            let within = row.low.value <= value && value <= row.high.value * 1.001;
            holds(found, &format!("{} lies in the band of {}", case.id, ground.key()), within);
        }
    }
    Ok(())
}

fn all_values_lie_in_the_band_of_ground_not_split(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    all_lie_within(handbook, found, &NOT_SPLIT, Lubrication::Metered)
}

/// The band of a logged drive is not split by ground.
fn all_values_lie_in_the_band_of_a_logged_drive(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    all_lie_within(handbook, found, &ALL_GROUND, Lubrication::Logged)
}

fn values_by_ground(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (ground, class) in [
        (Ground::Clay, GroundClass::SoftClay),
        (Ground::Clay, GroundClass::FirmToVeryStiffClay),
        (Ground::Clay, GroundClass::HardClay),
        (Ground::Silt, GroundClass::Silt),
        (Ground::Sand, GroundClass::LooseSand),
        (Ground::Sand, GroundClass::MediumToDenseSand),
        (Ground::Gravel, GroundClass::Gravel),
    ] {
        let row = friction(handbook, class, WaterSide::Any, Lubrication::Metered)?;
        for case in cases().filter(|case| case.ground == ground) {
            let value = kilopascals(case.friction);
            let within = row.low.value <= value && value <= row.high.value;
            holds(found, &format!("{} lies in the band of {}", case.id, class.key()), within);
        }
    }
    Ok(())
}

/// Mean of the logarithms 2.1 kPa, deviation 0.73. The likely values lie in the 90 % interval of the mean and not below
/// it, since no drive is of the size of a guided bore.
fn likely_value_is_the_mean(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let values = by_drive();
    let (mean, deviation, count) = log_mean(&values);
    near(found, "number of drives", Ratio::from_si(count), "10", "0");
    near(found, "mean friction", kilopascals(mean.exp()), "2.1 kPa", "0.05 kPa");
    near(found, "deviation of the logarithms", Ratio::from_si(deviation), "0.73", "0.005");
    let top = kilopascals((mean + NINE_DEGREES * deviation / count.sqrt()).exp());
    for (grounds, lubrication) in [(&NOT_SPLIT[..], Lubrication::Metered), (&ALL_GROUND[..], Lubrication::Logged)] {
        for ground in grounds {
            let likely = friction(handbook, *ground, WaterSide::Any, lubrication)?.likely.value;
            let fits = kilopascals(mean.exp()) <= likely && likely <= top;
            holds(found, &format!("likely of {}, {}, is the mean", ground.key(), lubrication.key()), fits);
        }
    }
    Ok(())
}

/// 0.52 to 8.6 kPa; the band is rounded to half a kilopascal.
fn high_value_is_that_of_one_new_drive(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (low, high) = one_new_drive(&by_drive(), NINE_DEGREES);
    near(found, "low end for one new drive", low, "0.52 kPa", "0.006 kPa");
    near(found, "high end for one new drive", high, "8.6 kPa", "0.05 kPa");
    for ground in NOT_SPLIT {
        let row = friction(handbook, ground, WaterSide::Any, Lubrication::Metered)?;
        near(found, &format!("high of {}", ground.key()), row.high.value, "8.6 kPa", "0.25 kPa");
    }
    Ok(())
}

/// The same interval over the four values in clay ends at 6.5 kPa. Four values carry little: the band, which weighs
/// in the Chinese code, may differ by a kilopascal.
fn high_value_in_clay(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let clay: Vec<f64> = cases().filter(|case| case.ground == Ground::Clay).map(|case| case.friction).collect();
    let (_, high) = one_new_drive(&clay, THREE_DEGREES);
    near(found, "high end for one new drive in clay", high, "6.5 kPa", "0.05 kPa");
    for ground in [GroundClass::SoftClay, GroundClass::FirmToVeryStiffClay, GroundClass::HardClay] {
        let row = friction(handbook, ground, WaterSide::Any, Lubrication::Metered)?;
        near(found, &format!("high of {}", ground.key()), row.high.value, "6.5 kPa", "1 kPa");
    }
    Ok(())
}

/// Lubrication of the columns of [`PLACES`].
const COLUMNS: [Lubrication; 4] =
    [Lubrication::None, Lubrication::NotMetered, Lubrication::Metered, Lubrication::Logged];

/// Where each value lies by each lubrication, `<` below the band, `=` in it, `>` above it: first by the band of its own
/// ground, then by that of ground that is not known, whose first is what a file gets that tells nothing.
const PLACES: [(&str, &str, &str); 12] = [
    ("Montmorency, silty sand with clay", "<===", "<==="),
    ("Champigny, sandy clay", "<===", "<==="),
    ("Neuilly 1, sand and gravel", "<===", "<==="),
    ("Neuilly 2, sand and gravel", "====", "===="),
    ("Bordeaux, clean sand, low", "<===", "<==="),
    ("Bordeaux, clean sand, high", "<===", "<==="),
    ("Athens 1, sandy clay", "<===", "<==="),
    ("Athens 2, sandy clay", "====", "<==="),
    ("H city, organic silt", "<===", "<==="),
    ("Shenyang, round gravel, low", "<===", "<==="),
    ("Shenyang, round gravel, high", "<===", "<==="),
    ("Zheng-Kai, silty loam and silty clay", "<===", "<==="),
];

/// Low and high end for a ground that stands above water, as a drive has them: not metered is of two rows.
fn band_of(handbook: &Arc<Handbook>, class: GroundClass, lubrication: Lubrication) -> (Pressure, Pressure) {
    let lines = format!(
        "length: 10 m\ngroundwater: none\nlubrication: {}\nground:\n  - {{ class: {}, spt_n: 12, largest_stone: 0 mm \
         }}\ncandidates:\n  - {{ material: clay, size: 10 in }}\n",
        lubrication.key(),
        class.key()
    );
    let (friction, _) = drive(handbook, &lines).unwrap().stretches()[0].pipe_friction();
    (friction.low, friction.high)
}

/// Which values lie below, in and above the band of their own ground and of ground that is not known, row by row, and
/// how wide each band is, high over low. The lubricated bands were drawn to hold these values, so that all of them do
/// proves nothing; most of them lie below the unlubricated bands, as drives with slurry should, and none came from a
/// guided bore. The widths are those of our own rows and no figure of anybody else: this is no page that would prove a
/// row.
#[test]
fn bands_of_each_ground_are_counted() {
    let handbook = Handbook::embedded();
    let mut found = Found::new();
    let classes = [
        (Some(Ground::Clay), GroundClass::FirmToVeryStiffClay, ["6.67", "57.1", "17.1", "14.3"]),
        (Some(Ground::Silt), GroundClass::Silt, ["5", "57.1", "22.9", "14.3"]),
        (Some(Ground::Sand), GroundClass::MediumToDenseSand, ["6.25", "71.4", "25.7", "14.3"]),
        (Some(Ground::Gravel), GroundClass::Gravel, ["5", "71.4", "31.4", "14.3"]),
        (None, GroundClass::Unknown, ["5", "71.4", "24.3", "14.3"]),
    ];
    for (case, (id, own, unknown)) in cases().zip(PLACES) {
        assert_eq!(case.id, id);
        for (ground, class, widths) in &classes {
            let expected = match ground {
                Some(ground) if *ground != case.ground => continue,
                Some(_) => own,
                None => unknown,
            };
            for ((lubrication, width), expected) in COLUMNS.iter().zip(widths).zip(expected.chars()) {
                let (low, high) = band_of(&handbook, *class, *lubrication);
                // Readings hold two figures: 5.001 is 5.0.
                let value = kilopascals(case.friction);
                let place = if value < low { '<' } else { ['=', '>'][usize::from(value > high * 1.001)] };
                let label = format!("{id}, {}, {}", class.key(), lubrication.key());
                holds(&mut found, &format!("{label}: {place} is {expected}"), place == expected);
                near(&mut found, &format!("{label}: high over low"), high / low, width, "0.05");
            }
        }
    }
    // Below, inside, above: 10, 2, 0 without lubricant in the own ground, 11, 1, 0 where a file tells nothing.
    let count = |places: [&str; 12]| ['<', '=', '>'].map(|at| places.iter().filter(|row| row.starts_with(at)).count());
    assert_eq!(count(PLACES.map(|(_, own, _)| own)), [10, 2, 0]);
    assert_eq!(count(PLACES.map(|(_, _, unknown)| unknown)), [11, 1, 0]);
    assert!(found.is_empty(), "{}", found.join("\n"));
}
