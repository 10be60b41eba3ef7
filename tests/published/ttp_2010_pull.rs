//! M. Najafi, Trenchless Technology Piping, 2010: pp. 224, 270-273 and 347 on collapsed bores and the final bore, read page by
//! page.

use crate::found::{Found, Outcome, law, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::pull_rules::{GroundLoadPull, LesserBore};
use jackpull::quantity::{Force, Ratio};
use std::sync::Arc;

pages!(lesser_bore_and_overcut_page_347, half_of_the_safe_pull_page_224);

fn rule(handbook: &Handbook, key: &str) -> Result<jackpull::handbook::PullRuleRow, crate::found::Stop> {
    Ok(needed(handbook.pull_rule()?.get(key), || key.to_owned())?.value.clone())
}

/// 1.5 times at every size up to 24 in, p. 347; beyond, pipe plus 12 in, which the guidelines have too: 48 in for 36
/// in.
fn lesser_bore_and_overcut_page_347(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let row = rule(handbook, "lesser_bore")?;
    let times = needed(row.ratio, || "the multiple".to_owned())?.value;
    let plus = needed(row.length, || "the addition".to_owned())?.value;
    for (pipe, printed) in [("4.5 in", "6.75 in"), ("10 in", "15 in"), ("24 in", "36 in"), ("36 in", "48 in")] {
        let bore = LesserBore { outside_diameter: q(pipe), times, plus };
        near(found, &format!("lesser bore of {pipe}"), bore.value(), printed, "0.01 in");
    }
    Ok(())
}

/// The predicted peak pull of a small rig is desired at no more than about half of the safe pull strength.
fn half_of_the_safe_pull_page_224(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let key = "pull.likely_factor";
    let factor = needed(handbook.practice_ratio()?.get(key), || key.to_owned())?.value.value;
    near(found, "share of the safe pull", q::<Ratio>("1") / factor, "0.5", "0.05");
    Ok(())
}

/// Eq. 6.3, 4 in pipe (4.5 in), 100 ft, 5 ft of 100 lb/ft3, friction 0.3: "in excess of 17,500 lb", that is 17,671 lb.
#[test]
fn full_prism_page_270() {
    let pull = law(GroundLoadPull {
        unit_weight: q("100 pcf"),
        cover: q("5 ft"),
        outside_diameter: q("4.5 in"),
        collapsed_length: q("100 ft"),
        friction: q("0.3"),
    });
    assert!((pull - q::<Force>("17671 lbf")).abs() <= q("0.5 lbf"), "{pull:?}");
    assert!(pull > q("17500 lbf"));
    // The planning guide of the same pages keeps 11.3 % of it: 2,000 lb; it under-predicts the bound 8.8 times.
    assert!(((q::<Force>("2000 lbf") / pull).value - 0.113).abs() < 0.000_5);
}
