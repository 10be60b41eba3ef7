//! ASCE Manual of Practice 133, Pilot Tube and Other Guided Boring Methods, 2017. Contents read; its limits of ground
//! are recalled: displaceable soil with N to about 50, no cobbles or boulders, a head of about 10 ft at most. Classes
//! change where the scales of Terzaghi and Peck (consistency) and of EM 1110-2-2504 (density) do; stones are cobbles
//! above 75 mm (ASTM D2487, recalled). Ratings themselves are those of a recalled matrix and are not tested here, only
//! the limits at which they change.

use crate::found::{Found, Outcome, Stop, checked, drive, holds, near, needed, pages, q, scheme};
use jackpull::Handbook;
use jackpull::check::{Subject, Verdict};
use jackpull::handbook::GroundClass::{
    self, FirmToVeryStiffClay, Gravel, HardClay, LooseSand, MediumToDenseSand, Silt, SoftClay, Unknown,
};
use jackpull::handbook::{Method, Rating, SuitabilityRow, WaterSide};
use jackpull::quantity::{Length, Measure, Ratio};
use jackpull::yaml::Field;
use std::sync::Arc;

pages!(
    displacement_pilot_ends_at_50_blows,
    limits_through_a_drive,
    pilot_before_a_pulled_pipe,
    no_band_reaches_beyond_50_blows,
    dense_sand_is_rated_to_50_blows,
    classes_without_an_end_are_taken_to_50_blows,
    very_soft_clay_and_silt,
    stiff_silt,
    hard_clay,
    very_loose_sand,
    ten_feet_of_head,
    cobbles_in_clay,
    cobbles_in_silt,
    cobbles_in_loose_sand,
    cobbles_in_medium_to_dense_sand,
    cobbles_in_gravel_and_unknown_ground,
);

/// A site: class, blow count, head over the invert in metres if the drive is below water.
#[derive(Clone, Copy)]
struct Site(GroundClass, &'static str, Option<f64>);

const NO_STONE: &str = "0 mm";
/// Where a cobble begins, and one that no page lets a pilot meet.
const STONE: &str = "76 mm";
const COBBLE: &str = "90 mm";

/// The worst of what the rows say; a site that one row bars and another admits is not decided.
fn worst(ratings: &[Rating]) -> Option<Rating> {
    let worst = ratings.iter().copied().max_by_key(|rating| rating.severity())?;
    let admitted = ratings.iter().any(|rating| *rating != Rating::Unsuitable);
    Some(if worst == Rating::Unsuitable && admitted { Rating::Depends } else { worst })
}

/// What the table says of the ground for a jacked and a pulled pipe. Read here by another hand than the crate's, which
/// refuses counts outside the class, so that every row is reached.
fn ratings(handbook: &Handbook, Site(class, blows, head): Site, stone: &str) -> Result<[Rating; 2], Stop> {
    let (blows, stone) = (q::<Ratio>(blows), q::<Length>(stone));
    let side = if head.is_some() { WaterSide::Below } else { WaterSide::Above };
    let head = head.map(Length::from_si);
    let over = |least: &Option<Field<Length>>, value: Length| least.as_ref().is_none_or(|least| value > least.value);
    let up_to = |most: &Option<Field<Length>>, value: Length| most.as_ref().is_none_or(|most| value <= most.value);
    let fits = |row: &SuitabilityRow| {
        row.ground.value == class
            && (row.water.value == side || row.water.value == WaterSide::Any)
            && head.is_none_or(|head| over(&row.head_over, head) && up_to(&row.head_to, head))
            && row.n_from.as_ref().is_none_or(|from| blows >= from.value)
            && row.n_below.as_ref().is_none_or(|below| blows < below.value)
            && over(&row.stone_over, stone)
            && up_to(&row.stone_to, stone)
            && row.od_from.is_none()
    };
    let rows: Vec<&SuitabilityRow> =
        handbook.ground_suitability()?.rows.iter().map(|row| &row.value).filter(|row| fits(row)).collect();
    let one = |column: fn(&SuitabilityRow) -> Rating| {
        let told: Vec<Rating> = rows.iter().map(|row| column(row)).collect();
        needed(worst(&told), || format!("{} with {blows:?} blows, head {head:?}, stone {stone:?}", class.key()))
    };
    Ok([one(|row| row.jacking.value)?, one(|row| row.pullback.value)?])
}

fn jacking(handbook: &Handbook, class: GroundClass, blows: &'static str, head: Option<f64>) -> Result<Rating, Stop> {
    Ok(ratings(handbook, Site(class, blows, head), NO_STONE)?[0])
}

const ABOVE: Option<f64> = None;

/// N 51 is not done in any class. Clay, and ground that is not told well enough, may be done at N 50.
fn displacement_pilot_ends_at_50_blows(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for class in [SoftClay, FirmToVeryStiffClay, HardClay, Silt, LooseSand, MediumToDenseSand, Gravel, Unknown] {
        let not_done = jacking(handbook, class, "51", ABOVE)? == Rating::Unsuitable;
        holds(found, &format!("{} at N 51 is not done", class.key()), not_done);
    }
    let wet = jacking(handbook, Gravel, "51", Some(2.0))?;
    holds(found, "gravel at N 51 below water is not done", wet == Rating::Unsuitable);
    for class in [SoftClay, FirmToVeryStiffClay, HardClay, Gravel, Unknown] {
        let may_be_done = jacking(handbook, class, "50", ABOVE)? != Rating::Unsuitable;
        holds(found, &format!("{} at N 50 may be done", class.key()), may_be_done);
    }
    Ok(())
}

/// The same limit, the head and the stones through a drive file.
fn limits_through_a_drive(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (class, blows, water, stone, verdict) in [
        ("hard_clay", "50", "none", NO_STONE, Verdict::WithCare),
        ("hard_clay", "51", "none", NO_STONE, Verdict::Over),
        ("medium_to_dense_sand", "30", "3.1 m", NO_STONE, Verdict::NotDecided),
        ("medium_to_dense_sand", "30", "2.9 m", NO_STONE, Verdict::Over),
        ("firm_to_very_stiff_clay", "12", "none", NO_STONE, Verdict::Within),
        ("firm_to_very_stiff_clay", "12", "none", COBBLE, Verdict::Over),
    ] {
        let drive = drive(
            handbook,
            &format!(
                "
length: 50 m
pilot: displacement
groundwater: {water}
lubrication: none
ground: [{{ class: {class}, spt_n: {blows}, largest_stone: {stone} }}]
candidates: [{{ material: clay, size: 8 in, outside_diameter: 280 mm, end_bearing_area: 0.02 m2 }}]
"
            ),
        )?;
        let got = checked(&scheme(&drive, Method::PipeJacking)?, Subject::Ground)?.verdict;
        holds(found, &format!("{class}, N {blows}, water at {water}, stones {stone}: {got:?}"), got == verdict);
    }
    Ok(())
}

/// Recalled of a displacement pilot: easily to 35 blows in clay and to 30 in sand, at all to 50 and to 40. The pipe behind it
/// may be pulled as well.
fn pilot_before_a_pulled_pipe(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (class, blows, verdict) in [
        ("hard_clay", "35", Verdict::Within),
        ("hard_clay", "36", Verdict::WithCare),
        ("hard_clay", "50", Verdict::WithCare),
        ("hard_clay", "51", Verdict::Over),
        ("medium_to_dense_sand", "30", Verdict::Within),
        ("medium_to_dense_sand", "31", Verdict::WithCare),
        ("medium_to_dense_sand", "40", Verdict::WithCare),
        ("medium_to_dense_sand", "41", Verdict::Over),
    ] {
        let drive = drive(
            handbook,
            &format!(
                "
length: 50 m
pilot: displacement
groundwater: none
lubrication: none
ground: [{{ class: {class}, spt_n: {blows}, largest_stone: 0 mm }}]
pull: {{ duration: 6 h, pipe_temperature: 20 degC }}
candidates: [{{ material: pe100, size: 315 mm, sdr: 11 }}]
"
            ),
        )?;
        let got = checked(&scheme(&drive, Method::Pullback)?, Subject::Ground)?.verdict;
        holds(found, &format!("{class}, N {blows}: {got:?}"), got == verdict);
    }
    Ok(())
}

/// Counts are whole numbers and ends are exclusive: 51 is over 50.
fn no_band_reaches_beyond_50_blows(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for row in &handbook.ground_suitability()?.rows {
        let ends = row.value.n_below.as_ref().is_none_or(|end| end.value <= q::<Ratio>("51"));
        holds(found, &format!("{} ends by 50 blows", row.key), ends);
    }
    Ok(())
}

/// Every count that the manual speaks of has a rating, above and below water.
fn dense_sand_is_rated_to_50_blows(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for class in [Silt, LooseSand, MediumToDenseSand] {
        for head in [ABOVE, Some(0.5), Some(2.0), Some(4.0)] {
            let rating = jacking(handbook, class, "50", head)?;
            let not_usual = rating != Rating::Suitable;
            holds(found, &format!("{} at N 50 is rated and not usual practice", class.key()), not_usual);
        }
    }
    Ok(())
}

/// Where the scale of a class has no upper end, the count that may be met is that of a pilot which still goes in.
fn classes_without_an_end_are_taken_to_50_blows(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for ground in
        [GroundClass::HardClay, GroundClass::Silt, GroundClass::Gravel, GroundClass::Fill, GroundClass::Unknown]
    {
        let row = handbook.ground_class()?.find(|row| row.ground.value == ground);
        let highest = needed(row, || ground.key().to_owned())?.value.n_high.value;
        near(found, &format!("highest count of {}", ground.key()), highest, "50", "0.5");
    }
    Ok(())
}

/// Two counts on either side of a limit.
fn changes(
    handbook: &Arc<Handbook>,
    found: &mut Found,
    class: GroundClass,
    [usual, special]: [&'static str; 2],
) -> Outcome {
    let changes = jacking(handbook, class, usual, ABOVE)? == Rating::Suitable
        && jacking(handbook, class, special, ABOVE)? == Rating::Marginal;
    holds(found, &format!("{}: usual at N {usual}, marginal at N {special}", class.key()), changes);
    Ok(())
}

/// Terzaghi and Peck: very soft to N 2, soft from there. The pilot sinks in the one and not in the other.
fn very_soft_clay_and_silt(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    changes(handbook, found, SoftClay, ["3", "1"])?;
    changes(handbook, found, Silt, ["3", "1"])
}

/// Terzaghi and Peck: firm to N 8, where the line of soft to firm silt ends.
fn stiff_silt(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    changes(handbook, found, Silt, ["7", "9"])?;
    ends_where_usual(handbook, found, Silt, "8")
}

/// No row of usual practice goes beyond the end of the class on its scale.
fn ends_where_usual(handbook: &Arc<Handbook>, found: &mut Found, ground: GroundClass, end: &str) -> Outcome {
    for row in handbook.ground_suitability()?.rows.iter().filter(|row| row.value.ground.value == ground) {
        if row.value.jacking.value == Rating::Suitable {
            let ends = row.value.n_below.as_ref().is_some_and(|below| below.value <= q(end));
            holds(found, &format!("{} ends by N {end}", row.key), ends);
        }
    }
    Ok(())
}

/// Terzaghi and Peck: hard over 30.
fn hard_clay(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    changes(handbook, found, FirmToVeryStiffClay, ["30", "31"])?;
    ends_where_usual(handbook, found, FirmToVeryStiffClay, "31")
}

/// EM 1110-2-2504: very loose to N 4.
fn very_loose_sand(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    changes(handbook, found, LooseSand, ["5", "3"])
}

/// 10 ft are 3.05 m: sand and gravel may be done below it, not above.
fn ten_feet_of_head(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (class, blows) in [(LooseSand, "8"), (MediumToDenseSand, "20"), (Gravel, "20")] {
        for (head, done) in [(0.5, true), (1.5, true), (2.9, true), (3.1, false)] {
            let rating = jacking(handbook, class, blows, Some(head))?;
            let as_said = (rating != Rating::Unsuitable) == done && rating != Rating::Suitable;
            holds(found, &format!("{} with {head} m of head: may be done is {done}", class.key()), as_said);
        }
    }
    // Silt is held to less; it must be rated at any head.
    for head in [0.5, 1.5, 3.1] {
        let rating = jacking(handbook, Silt, "20", Some(head))?;
        holds(found, &format!("silt with {head} m of head is not usual practice"), rating != Rating::Suitable);
    }
    Ok(())
}

/// Where another page lets a pilot meet single stones of up to 80 mm.
const SINGLE: [(GroundClass, &str); 8] = [
    (SoftClay, "1"),
    (SoftClay, "3"),
    (FirmToVeryStiffClay, "6"),
    (FirmToVeryStiffClay, "20"),
    (Silt, "1"),
    (Silt, "5"),
    (LooseSand, "3"),
    (LooseSand, "8"),
];

/// Neither a pilot tube nor a pullback by default, whatever the blow count and the water.
fn cobbles(
    handbook: &Arc<Handbook>,
    found: &mut Found,
    class: GroundClass,
    sites: &[(&'static str, Option<f64>)],
) -> Outcome {
    for (blows, head) in sites {
        let barred = ratings(handbook, Site(class, blows, *head), COBBLE)? == [Rating::Unsuitable; 2];
        holds(found, &format!("cobbles bar {} at N {blows}, head {head:?}", class.key()), barred);
        let [jacking, pullback] = ratings(handbook, Site(class, blows, *head), STONE)?;
        let single = head.is_none() && SINGLE.contains(&(class, *blows));
        let barred = pullback == Rating::Unsuitable && (single || jacking == Rating::Unsuitable);
        holds(found, &format!("so does a stone of 3 in at N {blows}, head {head:?}"), barred);
    }
    Ok(())
}

fn cobbles_in_clay(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    cobbles(handbook, found, SoftClay, &[("1", ABOVE), ("3", ABOVE), ("51", ABOVE)])?;
    cobbles(handbook, found, FirmToVeryStiffClay, &[("6", ABOVE), ("20", ABOVE), ("40", ABOVE), ("51", ABOVE)])?;
    cobbles(handbook, found, HardClay, &[("40", ABOVE), ("51", ABOVE)])
}

fn cobbles_in_silt(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    cobbles(
        handbook,
        found,
        Silt,
        &[("1", ABOVE), ("5", ABOVE), ("10", ABOVE), ("20", ABOVE), ("45", ABOVE), ("51", ABOVE)],
    )?;
    cobbles(handbook, found, Silt, &[("20", Some(0.5)), ("20", Some(1.5)), ("45", Some(0.5))])
}

const WET: [Option<f64>; 3] = [Some(0.5), Some(2.0), Some(4.0)];

fn cobbles_in_loose_sand(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    cobbles(handbook, found, LooseSand, &[("3", ABOVE), ("8", ABOVE), ("45", ABOVE), ("45", Some(0.5))])?;
    cobbles(handbook, found, LooseSand, &WET.map(|head| ("8", head)))
}

fn cobbles_in_medium_to_dense_sand(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    cobbles(handbook, found, MediumToDenseSand, &[("20", ABOVE), ("45", ABOVE), ("51", ABOVE), ("45", Some(0.5))])?;
    cobbles(handbook, found, MediumToDenseSand, &WET.map(|head| ("20", head)))
}

fn cobbles_in_gravel_and_unknown_ground(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    cobbles(handbook, found, Gravel, &[("20", ABOVE), ("51", ABOVE), ("20", Some(2.0)), ("20", Some(4.0))])?;
    cobbles(handbook, found, Unknown, &[("20", ABOVE), ("51", ABOVE)])
}
