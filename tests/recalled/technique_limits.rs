//! Limits of the techniques beside the displacing pilot, as recalled from the matrices of suitability (NCHRP Synthesis
//! 242, CPAR guidelines) and the scales of the trade: cobbles above 75 mm (ASTM D2487, recalled) to 100 mm, boulders
//! beyond; clay soft to firm to N 8 and stiff to very stiff to N 30 (Terzaghi and Peck); cutters of a slurry machine
//! reached from 0.6 m with labour and from 1.2 m freely. Ratings are recalled or ours; the pages hold the limits at
//! which they change, through drives.

use crate::found::{Found, Outcome, Stop, checked, drive, holds, pages, scheme};
use jackpull::Handbook;
use jackpull::check::{Subject, Verdict};
use jackpull::handbook::Method;
use std::sync::Arc;

pages!(
    cobbles_and_boulders_before_a_machine,
    open_shield_in_firm_and_stiff_clay,
    cutters_in_hard_rock,
    auger_without_a_pilot_below_water,
    drilled_pilot_in_hard_ground,
    cleared_by_vacuum,
    cleared_through_the_stem,
);

/// Ground check of a jacked pipe of 280 mm, or of another size.
fn ground(handbook: &Arc<Handbook>, lines: &str, stretch: &str, size: &str) -> Result<Verdict, Stop> {
    let water = if stretch.contains("groundwater") { "" } else { ", groundwater: none" };
    let drive = drive(
        handbook,
        &format!(
            "
length: 50 m
groundwater: none
lubrication: none
{lines}
ground: [{{ {stretch}{water}, unit_friction: {{ low: 1 kPa, likely: 2 kPa, high: 3 kPa }} }}]
candidates: [{{ material: clay, size: {size}, outside_diameter: {size}, end_bearing_area: 0.02 m2 }}]
"
        ),
    )?;
    Ok(checked(&scheme(&drive, Method::PipeJacking)?, Subject::Ground)?.verdict)
}

const SLURRY: &str = "spoil: slurry\nstem: { outside_diameter: none }";
const AUGER: &str = "spoil: auger\nstem: { outside_diameter: none }";
const SHIELD: &str = "spoil: open_edge\ncutting_edge: 20 mm\nstem: { outside_diameter: none }";
const DRILLED: &str = "spoil: auger\npilot: drilled";
const VACUUM: &str = "spoil: vacuum";
const OPEN_STEM: &str = "spoil: vacuum\npilot: drilled";

fn say(found: &mut Found, what: &str, got: Verdict, wanted: Verdict) {
    holds(found, &format!("{what}: {} and not {}", wanted.label(), got.label()), got == wanted);
}

fn cobbles_and_boulders_before_a_machine(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (class, blows) in [
        ("soft_clay", "3"),
        ("firm_to_very_stiff_clay", "20"),
        ("hard_clay", "40"),
        ("silt", "20"),
        ("loose_sand", "8"),
        ("medium_to_dense_sand", "20"),
        ("gravel", "20"),
    ] {
        for (stone, wanted) in [("76 mm", Verdict::WithCare), ("93 mm", Verdict::WithCare), ("94 mm", Verdict::Over)] {
            let stretch = format!("class: {class}, spt_n: {blows}, largest_stone: {stone}");
            let got = ground(handbook, SLURRY, &stretch, "280 mm")?;
            say(found, &format!("slurry machine in {class}, stones of {stone}"), got, wanted);
        }
    }
    for (stone, wanted) in [("76 mm", Verdict::NotDecided), ("150 mm", Verdict::Over)] {
        let got = ground(handbook, SLURRY, &format!("class: unknown, spt_n: 20, largest_stone: {stone}"), "280 mm")?;
        say(found, &format!("slurry machine in unknown ground, stones of {stone}"), got, wanted);
    }
    Ok(())
}

fn open_shield_in_firm_and_stiff_clay(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (blows, wanted) in
        [("7", Verdict::WithCare), ("9", Verdict::Within), ("15", Verdict::Within), ("30", Verdict::Within)]
    {
        let stretch = format!("class: firm_to_very_stiff_clay, spt_n: {blows}, largest_stone: 0 mm");
        let got = ground(handbook, SHIELD, &stretch, "280 mm")?;
        say(found, &format!("open shield in clay of {blows} blows"), got, wanted);
    }
    Ok(())
}

fn cutters_in_hard_rock(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (size, wanted) in [
        ("0.59 m", Verdict::Over),
        ("0.61 m", Verdict::WithCare),
        ("1.19 m", Verdict::WithCare),
        // On condition that the strength of the rock is found out.
        ("1.21 m", Verdict::WithCare),
        ("2.3 m", Verdict::WithCare),
    ] {
        let got = ground(handbook, SLURRY, "class: hard_rock", size)?;
        say(found, &format!("slurry machine in hard rock, {size}"), got, wanted);
    }
    Ok(())
}

/// Not done in sand or silt below water unless the water is lowered.
fn auger_without_a_pilot_below_water(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (treatment, wanted) in [("", Verdict::Over), (", treatment: dewatered", Verdict::WithCare)] {
        let stretch =
            format!("class: medium_to_dense_sand, spt_n: 20, largest_stone: 0 mm, groundwater: 4 m{treatment}");
        let got = ground(handbook, AUGER, &stretch, "280 mm")?;
        say(found, &format!("auger casing in sand under 2 m of head{treatment}"), got, wanted);
    }
    Ok(())
}

/// A pilot that is drilled goes where one that displaces ends, at N 50 and in rock, and in sand with fluid in its bore; cobbles
/// stop it as they stop a reamer, and hard rock the auger.
fn drilled_pilot_in_hard_ground(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (stretch, wanted) in [
        ("class: hard_clay, spt_n: 51, largest_stone: 50 mm", Verdict::WithCare),
        ("class: hard_clay, spt_n: 51, largest_stone: 76 mm", Verdict::Over),
        ("class: firm_to_very_stiff_clay, spt_n: 20, largest_stone: 50 mm", Verdict::WithCare),
        ("class: firm_to_very_stiff_clay, spt_n: 20, largest_stone: 76 mm", Verdict::Over),
        ("class: weak_rock, spt_n: 60", Verdict::WithCare),
        ("class: hard_rock", Verdict::Over),
        ("class: medium_to_dense_sand, spt_n: 20, largest_stone: 0 mm", Verdict::WithCare),
    ] {
        say(found, stretch, ground(handbook, DRILLED, stretch, "280 mm")?, wanted);
    }
    Ok(())
}

/// As an auger at best, in the counts of the classes; nothing is rated below water or among cobbles.
fn cleared_by_vacuum(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (class, blows, stone, wanted) in [
        ("soft_clay", "2", "0 mm", Verdict::WithCare),
        ("soft_clay", "4", "50 mm", Verdict::WithCare),
        ("firm_to_very_stiff_clay", "30", "50 mm", Verdict::WithCare),
        ("hard_clay", "50", "50 mm", Verdict::WithCare),
        ("silt", "3", "50 mm", Verdict::WithCare),
        ("silt", "40", "0 mm", Verdict::WithCare),
        ("loose_sand", "5", "50 mm", Verdict::WithCare),
        ("loose_sand", "10", "0 mm", Verdict::WithCare),
        ("medium_to_dense_sand", "40", "50 mm", Verdict::WithCare),
        ("soft_clay", "1", "0 mm", Verdict::NotDecided),
        ("loose_sand", "3", "0 mm", Verdict::NotDecided),
        ("silt", "1", "0 mm", Verdict::NotDecided),
        ("gravel", "20", "0 mm", Verdict::NotDecided),
        // Above 50 blows the pilot is drilled, and clay that is harder is no worse to clear.
        ("hard_clay", "51", "0 mm", Verdict::WithCare),
    ] {
        let stretch = format!("class: {class}, spt_n: {blows}, largest_stone: {stone}");
        say(found, &format!("vacuum, {stretch}"), ground(handbook, VACUUM, &stretch, "280 mm")?, wanted);
    }
    let wet = "class: medium_to_dense_sand, spt_n: 20, largest_stone: 0 mm, groundwater: 5.5 m";
    say(found, "vacuum below water", ground(handbook, VACUUM, wet, "280 mm")?, Verdict::NotDecided);
    for table in handbook.guided_suitability()?.rows.iter().filter(|row| row.value.stone_to.is_some()) {
        let stones = table.value.stone_to.as_ref().is_some_and(|to| to.value.value < 0.075);
        holds(found, &format!("{} ends before cobbles", table.key), stones);
    }
    for row in handbook.guided_suitability()?.rows.iter() {
        let blows = row.value.n_below.as_ref().is_none_or(|below| below.value.value < 52.0);
        let classes = match row.key.as_str() {
            "vacuum_soft_clay" | "open_stem_soft_clay" => 6.0,
            "vacuum_loose_sand_above" => 12.0,
            "vacuum_firm_clay" => 32.0,
            _ => 52.0,
        };
        let ends = row.value.n_below.as_ref().is_none_or(|below| below.value.value < classes);
        holds(found, &format!("{} ends with its class", row.key), blows && ends);
    }
    Ok(())
}

/// A bore that only its ground holds: soft clay from two blows; sand and silt above water ravel; loose sand and gravel run.
fn cleared_through_the_stem(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (stretch, wanted) in [
        ("class: soft_clay, spt_n: 2", Verdict::WithCare),
        ("class: soft_clay, spt_n: 1", Verdict::NotDecided),
        ("class: firm_to_very_stiff_clay, spt_n: 20", Verdict::WithCare),
        ("class: hard_clay, spt_n: 40", Verdict::WithCare),
        ("class: silt, spt_n: 20", Verdict::WithCare),
        ("class: medium_to_dense_sand, spt_n: 20", Verdict::WithCare),
        ("class: loose_sand, spt_n: 8", Verdict::Over),
        ("class: gravel, spt_n: 20", Verdict::Over),
        ("class: silt, spt_n: 20, groundwater: 4 m", Verdict::Over),
        ("class: medium_to_dense_sand, spt_n: 20, groundwater: 4 m", Verdict::Over),
        ("class: fill, spt_n: 10, groundwater: 4 m", Verdict::Over),
    ] {
        let stretch = format!("{stretch}, largest_stone: 0 mm");
        say(found, &format!("open stem, {stretch}"), ground(handbook, OPEN_STEM, &stretch, "280 mm")?, wanted);
    }
    Ok(())
}
