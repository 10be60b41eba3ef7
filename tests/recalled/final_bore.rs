//! Final bore by size of pipe: D. Bennett and S. Ariaratnam, Horizontal Directional Drilling Good Practices Guidelines
//! (chapter 2 seen, the bands recalled), against the specification of a city (1.5 diameters at most, read).

use crate::found::{Found, Outcome, near, needed, pages, q, same};
use jackpull::Handbook;
use jackpull::handbook::BoreRuleRow;
use jackpull::law::Law;
use jackpull::laws::pull::FinalBore;
use jackpull::quantity::{Length, Ratio};
use std::sync::Arc;

pages!(
    small_pipe_passes_the_agency,
    bands_meet_where_their_bores_do,
    agency_keeps_one_and_a_half,
    sewer_on_grade_as_built,
);

fn row(handbook: &Handbook, key: &str) -> Result<BoreRuleRow, crate::found::Stop> {
    Ok(needed(handbook.bore_rule()?.get(key), || key.to_owned())?.value.clone())
}

fn bore(row: &BoreRuleRow, outside_diameter: Length) -> Length {
    FinalBore { outside_diameter, times: row.times.value, plus: row.plus.value }.value()
}

/// Pipe and four inches: 1.89 diameters at 4.5 in, 1.60 at 6.625 in.
fn small_pipe_passes_the_agency(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let small = row(handbook, "band_small")?;
    for (outside_diameter, printed) in [("4.5 in", "1.89"), ("6.625 in", "1.60")] {
        let outside_diameter = q::<Length>(outside_diameter);
        let over: Ratio = bore(&small, outside_diameter) / outside_diameter;
        near(found, "bore over small pipe", over, printed, "0.005");
    }
    Ok(())
}

/// The rules are continuous at 8 and 24 in.
fn bands_meet_where_their_bores_do(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let bands = [row(handbook, "band_small")?, row(handbook, "band_middle")?, row(handbook, "band_large")?];
    for (place, printed) in [(0, "8 in"), (1, "24 in")] {
        let (below, above) = (&bands[place], &bands[place + 1]);
        let end = needed(below.od_below.as_ref(), || "the end of a band".to_owned())?.value;
        let start = needed(above.od_from.as_ref(), || "the start of a band".to_owned())?.value;
        near(found, "end of the band", end, printed, "0.5 in");
        near(found, "start of the next", start, printed, "0.5 in");
        let at = q::<Length>(printed);
        if !same(bore(below, at), bore(above, at)) {
            found.push(format!("the bands do not meet at {printed}"));
        }
    }
    Ok(())
}

/// The city's largest bore of an 8.625 in pipe is the middle band's.
fn agency_keeps_one_and_a_half(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let at = q::<Length>("8.625 in");
    let agency = bore(&row(handbook, "agency_most")?, at);
    let middle = bore(&row(handbook, "band_middle")?, at);
    crate::found::holds(found, "the city's most is the middle band", same(agency, middle));
    Ok(())
}

/// A sewer of 400 mm was built in bores of 530 mm through sandstone, by a contractor's page.
fn sewer_on_grade_as_built(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    near(found, "bore of a sewer", bore(&row(handbook, "on_grade")?, q("400 mm")), "530 mm", "1 mm");
    Ok(())
}
