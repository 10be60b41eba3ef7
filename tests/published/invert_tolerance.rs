//! Level tolerance of a gravity line elsewhere: a code for manhole inverts with plus or minus 20 mm (read, weak), the
//! usual US specification of plus or minus 1 in (read in an article on microtunnelling tolerances). Ours are recalled
//! from EN 12889 and DWA-A 125.

use crate::found::{Found, Outcome, near, pages};
use jackpull::Handbook;
use std::sync::Arc;

pages!(invert_at_a_manhole, usual_us_specification);

fn invert_at_a_manhole(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    near(found, "tolerance below 600 mm", handbook.length("grade.tolerance_below_600")?.value, "20 mm", "0.5 mm");
    Ok(())
}

/// 25.4 mm, printed as 25 mm.
fn usual_us_specification(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    near(found, "tolerance to 1000 mm", handbook.length("grade.tolerance_600_to_1000")?.value, "1 in", "0.5 mm");
    Ok(())
}
