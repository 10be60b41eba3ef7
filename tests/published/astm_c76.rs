//! ASTM C76, reinforced concrete pipe. Not opened; the rules of its walls read on a question-and-answer page of the
//! National Precast Concrete Association: wall A is the diameter in feet, in inches; B an inch more; C 1.75 in more. It
//! works out B of 60 in as 6 in and C of 96 in as 9.75 in.

use crate::found::{Found, Outcome, near, needed, pages, q, same};
use jackpull::Handbook;
use jackpull::quantity::Length;
use std::sync::Arc;

pages!(walls_by_their_rule);

fn walls_by_their_rule(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let thin = [12, 15, 18, 21].map(|size| (size, 1.0));
    let thick = [24, 27, 30, 33].into_iter().chain((36..=108).step_by(6)).map(|size| (size, 1.75));
    let mut rows = 0;
    for (size, more) in thin.into_iter().chain(thick) {
        let nominal = q::<Length>(&format!("{size} in"));
        let row = handbook.concrete_c76_wall()?.find(|row| same(row.size.value, nominal));
        let wall = needed(row, || format!("{size} in"))?.value.wall.value;
        let by_rule = f64::from(size) / 12.0 + more;
        near(found, &format!("wall of {size} in"), wall, &format!("{by_rule} in"), "0.005 in");
        rows += 1;
    }
    crate::found::holds(found, "every row", rows == handbook.concrete_c76_wall()?.rows.len());
    let row = handbook.concrete_c76_wall()?.find(|row| same(row.size.value, q("96 in")));
    near(found, "96 in as printed", needed(row, || "96 in".to_owned())?.value.wall.value, "9.75 in", "0.005 in");
    Ok(())
}
