//! The matrix of ground and technique as it is recalled of NCHRP Synthesis 242 and the CPAR guidelines, not checked cell by
//! cell: Y suitable, M marginal, N not. Of a pair such as N-M the worse counts. Through drives: the ground comes out no
//! better than the matrix has it, in every class and head that one of its lines is about.

use crate::found::Found;
use crate::found::{Outcome, Stop, checked, drive, holds, pages, scheme};
use jackpull::Handbook;
use jackpull::check::{Subject, Verdict};
use jackpull::handbook::Method;
use std::sync::Arc;

pages!(soft_and_loose_ground, below_water, stones, rock_and_fill);

/// Columns of the matrix: cased auger, open shield, pullback with reaming.
const COLUMNS: [&str; 3] = ["auger", "open shield", "pullback"];

/// The ground check by each column.
fn ground(handbook: &Arc<Handbook>, stretch: &str) -> Result<[Verdict; 3], Stop> {
    let water = if stretch.contains("groundwater") { "" } else { ", groundwater: none" };
    let verdict = |lines: &str, pipe: &str, method| {
        let drive = drive(
            handbook,
            &format!(
                "\nlength: 50 m\ngroundwater: none\nlubrication: none\n{lines}\nground: [{{ {stretch}{water}, \
                 unit_friction: {{ low: 1 kPa, likely: 2 kPa, high: 3 kPa }} }}]\ncandidates: [{{ {pipe} }}]\n"
            ),
        )?;
        Ok::<_, Stop>(checked(&scheme(&drive, method)?, Subject::Ground)?.verdict)
    };
    let clay = "material: clay, size: 280 mm, outside_diameter: 280 mm, end_bearing_area: 0.02 m2";
    let jacked =
        |lines: &str| verdict(&format!("{lines}\nstem: {{ outside_diameter: none }}"), clay, Method::PipeJacking);
    let pull = "pilot: drilled\npull: { duration: 4 h, pipe_temperature: 20 degC }";
    Ok([
        jacked("spoil: auger")?,
        jacked("spoil: open_edge\ncutting_edge: 20 mm")?,
        verdict(pull, "material: pe100, size: 200 mm, sdr: 11", Method::Pullback)?,
    ])
}

/// A line of the matrix: what it says of each column, in this ground.
fn line(handbook: &Arc<Handbook>, found: &mut Found, says: &str, stretch: &str) -> Outcome {
    let got = ground(handbook, stretch)?;
    for ((column, got), said) in COLUMNS.into_iter().zip(got).zip(says.chars()) {
        let least = match said {
            'Y' => Verdict::Within,
            'M' => Verdict::WithCare,
            _ => Verdict::Over,
        };
        holds(found, &format!("{column} in {stretch}: {} and the matrix has {said}", got.label()), got >= least);
    }
    Ok(())
}

fn soft_and_loose_ground(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (says, class, blows) in [
        ("MNM", "soft_clay", 1),
        ("MNM", "silt", 1),
        ("YMY", "soft_clay", 3),
        ("YMY", "silt", 4),
        ("YMY", "firm_to_very_stiff_clay", 6),
        ("MNM", "loose_sand", 2),
        ("MNM", "loose_sand", 8),
        ("YMY", "medium_to_dense_sand", 20),
        ("YMY", "medium_to_dense_sand", 45),
        ("MMM", "gravel", 20),
    ] {
        line(handbook, found, says, &format!("class: {class}, spt_n: {blows}, largest_stone: 0 mm"))?;
    }
    Ok(())
}

/// Auger and open shield not below water unless it is lowered; a reamed bore is held by its cake, marginally.
fn below_water(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (class, blows) in [
        ("silt", 4),
        ("silt", 45),
        ("loose_sand", 8),
        ("medium_to_dense_sand", 20),
        ("medium_to_dense_sand", 45),
        ("gravel", 20),
    ] {
        for depth in ["5.5 m", "4 m", "2 m"] {
            let stretch = format!("class: {class}, spt_n: {blows}, largest_stone: 0 mm, groundwater: {depth}");
            line(handbook, found, "NNM", &stretch)?;
        }
    }
    Ok(())
}

/// Cobbles to 100 mm, and boulders, which an open shield alone has access to.
fn stones(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (class, blows) in [
        ("soft_clay", 3),
        ("firm_to_very_stiff_clay", 20),
        ("hard_clay", 40),
        ("silt", 20),
        ("loose_sand", 8),
        ("medium_to_dense_sand", 20),
        ("gravel", 20),
        ("unknown", 20),
    ] {
        let with = |stone: &str| format!("class: {class}, spt_n: {blows}, largest_stone: {stone}");
        line(handbook, found, "MMN", &with("80 mm"))?;
        line(handbook, found, "MMN", &with("90 mm"))?;
        line(handbook, found, "NYN", &with("150 mm"))?;
    }
    Ok(())
}

fn rock_and_fill(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    line(handbook, found, "MYY", "class: weak_rock")?;
    line(handbook, found, "NMY", "class: hard_rock")?;
    line(
        handbook,
        found,
        "NMM",
        "class: firm_to_very_stiff_clay, spt_n: 20, largest_stone: 0 mm, mixed_with: weak_rock",
    )?;
    line(handbook, found, "MMN", "class: fill, spt_n: 20, largest_stone: 0 mm, hazards: [obstructions]")
}
