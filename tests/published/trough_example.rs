//! A worked settlement trough: tunnel of 8 m at a depth of 30 m, K 0.5, ground loss 0.4 %. Read on a study-help site
//! (name left out on purpose); its last figures were cut off.

use crate::found::{Found, Outcome, Stop, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::settlement::{FaceLoss, GreatestSettlement, TroughWidth};
use jackpull::quantity::{Length, Ratio};
use std::sync::Arc;

pages!(trough_at_the_surface, trough_5_m_below_ground);

/// Width and greatest settlement at a level, with the K of design in clay.
fn trough(handbook: &Handbook, level: &str) -> Result<[Length; 2], Stop> {
    let row = handbook.trough_width()?.get("clay_design");
    let row = needed(row, || "trough width of clay in design".to_owned())?.value;
    let ratio: Ratio = needed(row.value.as_ref(), || "its value".to_owned())?.value;
    let trough_width = TroughWidth { ratio, axis_depth: q("30 m"), level: q(level) }.value();
    let lost_ground = FaceLoss { volume_loss: q("0.4 %"), bore: q("8 m") }.value();
    Ok([trough_width, GreatestSettlement { lost_ground, trough_width }.value()])
}

/// i 15 m, 5.35 mm.
fn trough_at_the_surface(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let [width, settlement] = trough(handbook, "0 m")?;
    near(found, "width at the surface", width, "15 m", "0.5 m");
    near(found, "greatest settlement at the surface", settlement, "5.35 mm", "0.005 mm");
    Ok(())
}

/// i 12.5 m, 6.42 mm, with K kept as at the surface.
fn trough_5_m_below_ground(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let [width, settlement] = trough(handbook, "5 m")?;
    near(found, "width 5 m below ground", width, "12.5 m", "0.05 m");
    near(found, "greatest settlement 5 m below ground", settlement, "6.42 mm", "0.005 mm");
    Ok(())
}
