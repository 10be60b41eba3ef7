//! D. Willoughby, Horizontal Directional Drilling: Utility and Pipeline Applications, McGraw-Hill, 2005 (author and
//! year recalled): Eq. 7-4 with its coefficients and the page of Fig. 1-6, read online. What else prints the same
//! coefficients: pipeline and Dutch guides, both recalled, and the river crossing of the handbook of PE pipe.

use crate::found::{Found, Outcome, between, drive, law, near, needed, pages, q, ratio};
use crate::found::{checked, scheme};
use jackpull::Handbook;
use jackpull::check::Subject;
use jackpull::handbook::Method;
use jackpull::laws::pull::StraightPull;
use jackpull::quantity::{Force, Length, Measure};
use std::sync::Arc;

pages!(coefficients_of_equation_7_4, an_8_in_pipe_asks_for_12_in, rollers_in_other_guides, low_friction_of_the_guide);

/// 0.3 in slurry, 0.5 on the ground, 0.1 on rollers: level pulls of a hundred pounds per foot over 100 ft.
fn coefficients_of_equation_7_4(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (key, printed) in [
        ("pull.friction_fluid", "3000 lbf"),
        ("pull.friction_ground", "5000 lbf"),
        ("pull.friction_rollers", "1000 lbf"),
    ] {
        let friction = ratio(handbook, key)?;
        let pull = StraightPull { friction, net_weight: q("100 lbf/ft"), length: q("100 ft"), rise: q("0 deg") };
        // Coefficients are printed to one decimal.
        near(found, key, jackpull::law::Law::value(&pull), printed, "500 lbf");
    }
    Ok(())
}

/// Through a drive file; the same ratio gives 0.915 m for the 0.610 m of a worked annulus.
fn an_8_in_pipe_asks_for_12_in(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (outside_diameter, printed, within) in [("8 in", "12 in", "0.5 in"), ("0.610 m", "0.915 m", "0.0005 m")] {
        let drive = drive(
            handbook,
            &format!(
                "
length: 50 m
groundwater: none
lubrication: none
ground: [{{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }}]
pull: {{ duration: 6 h, pipe_temperature: 20 degC }}
candidates: [{{ material: hdpe, size: {outside_diameter}, outside_diameter: {outside_diameter}, sdr: 11 }}]
"
            ),
        )?;
        let bore = checked(&scheme(&drive, Method::Pullback)?, Subject::Bore)?;
        let (_, need) = needed(bore.high(), || "the bore".to_owned())?;
        near(found, &format!("bore of {outside_diameter}"), Length::from_si(need.si), printed, within);
    }
    Ok(())
}

/// The pipeline guide of 1995 and the Dutch standard both have 0.1.
fn rollers_in_other_guides(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    near(found, "rollers", ratio(handbook, "pull.friction_rollers")?, "0.1", "0.05");
    Ok(())
}

/// The low end of the pipeline guide, between the 0.2 of the Dutch standard and the 0.25 of the river crossing.
fn low_friction_of_the_guide(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    between(found, "low friction in the bore", ratio(handbook, "pull.friction_fluid_low")?, "0.2", "0.25");
    Ok(())
}

/// The level pull is the same whether the net weight is up or down.
#[test]
fn net_upward_or_downward_force() {
    let pull = |net_weight: &str| {
        law(StraightPull { friction: q("0.3"), net_weight: q(net_weight), length: q("100 ft"), rise: q("0 deg") })
    };
    assert_eq!(pull("-100 lbf/ft"), pull("100 lbf/ft"));
    assert!((pull("-100 lbf/ft") - q::<Force>("3000 lbf")).abs() < q::<Force>("1e-6 lbf"));
}
