//! A German contractor's page on pilot-tube boring that displaces the ground, after DWA-A 125: soils of loose to medium
//! density or soft to stiff, up to some 30 blows of the heavy probe; single stones of up to 80 mm displaced or carried off
//! as the bore is enlarged; accuracy 0.1 %.

use crate::found::{Found, Outcome, checked, drive, holds, near, pages, scheme};
use jackpull::Handbook;
use jackpull::check::{Subject, Verdict};
use jackpull::handbook::Method;
use std::sync::Arc;

pages!(single_stones, accuracy);

/// Done to 80 mm where the pilot goes well, and not promised to be easy; what is larger, or in dense ground, is not told of.
fn single_stones(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (class, blows, stone, done) in [
        ("soft_clay", 3, "80 mm", true),
        ("soft_clay", 3, "81 mm", false),
        ("firm_to_very_stiff_clay", 6, "80 mm", true),
        ("firm_to_very_stiff_clay", 30, "3 in", true),
        ("firm_to_very_stiff_clay", 6, "81 mm", false),
        ("hard_clay", 45, "80 mm", false),
        ("silt", 4, "80 mm", true),
        ("silt", 4, "81 mm", false),
        ("silt", 30, "80 mm", false),
        ("loose_sand", 8, "80 mm", true),
        ("loose_sand", 8, "81 mm", false),
        ("medium_to_dense_sand", 45, "80 mm", false),
    ] {
        let drive = drive(
            handbook,
            &format!(
                "\nlength: 50 m\npilot: displacement\nspoil: auger\ngroundwater: none\nlubrication: none\n\
                 ground: [{{ class: {class}, spt_n: {blows}, largest_stone: {stone} }}]\n\
                 candidates: [{{ material: clay, size: 280 mm, outside_diameter: 280 mm, end_bearing_area: 0.02 m2 }}]\n"
            ),
        )?;
        let got = checked(&scheme(&drive, Method::PipeJacking)?, Subject::Ground)?.verdict;
        let wanted = if done { Verdict::WithCare } else { Verdict::Over };
        holds(found, &format!("stones of {stone} in {class}, N {blows}: {}", got.label()), got == wanted);
    }
    Ok(())
}

fn accuracy(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    near(found, "accuracy over the length", handbook.ratio("pilot.deflected")?.value, "0.1 %", "0.005 %");
    Ok(())
}
