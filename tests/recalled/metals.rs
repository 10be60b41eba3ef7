//! Metric strengths of ASTM A139 and A252, names of ISO 3183 grades, plate by GB 50017, outside diameters of AWWA C151: all
//! recalled.

use crate::found::{Found, Outcome, near, needed, pages, q};
use jackpull::Handbook;
use std::sync::Arc;

pages!(yields_in_metric, yields_of_europe, design_strength_of_thick_plate, iron_and_pvc_share_their_diameters);

/// A139 A to E 205, 240, 290, 315, 360 MPa; A252 grade 2 and 3 240, 310; ISO 3183 names L245, L290, L360, L415,
/// L450, L485 for B, X42, X52, X60, X65, X70. The metric figures are rounded to 5 MPa.
fn yields_in_metric(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (standard, grade, printed) in [
        ("astm_a139", "a", "205 MPa"),
        ("astm_a139", "b", "240 MPa"),
        ("astm_a139", "c", "290 MPa"),
        ("astm_a139", "d", "315 MPa"),
        ("astm_a139", "e", "360 MPa"),
        ("astm_a53", "b", "240 MPa"),
        ("astm_a252", "2", "240 MPa"),
        ("astm_a252", "3", "310 MPa"),
        ("api_5l", "b", "245 MPa"),
        ("api_5l", "x42", "290 MPa"),
        ("api_5l", "x52", "360 MPa"),
        ("api_5l", "x60", "415 MPa"),
        ("api_5l", "x65", "450 MPa"),
        ("api_5l", "x70", "485 MPa"),
    ] {
        let row = handbook
            .steel_grade()?
            .find(|row| row.standard.value.0 == standard && row.grade.value.0 == grade && row.kind.value.0 == "yield");
        let row = needed(row, || format!("{standard} {grade}"))?.value;
        near(found, &format!("{standard} {grade}"), row.stress.value, printed, "4.5 MPa");
    }
    Ok(())
}

/// Plate of EN 10025-2, table 7, read on a page: 235 and 225 MPa of S235, 275 and 265 of S275, 355 and 345 of S355 up to 16 mm
/// and over. Pipe of L235 by EN 10224, which goes for P235: 235 and 225.
fn yields_of_europe(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (grade, thin, thick) in [
        ("s235", "235 MPa", "225 MPa"),
        ("s275", "275 MPa", "265 MPa"),
        ("s355", "355 MPa", "345 MPa"),
        ("p235", "235 MPa", "225 MPa"),
    ] {
        let row = needed(handbook.steel_grade()?.get(grade), || grade.to_owned())?.value;
        near(found, grade, row.stress.value, thin, "0.5 MPa");
        near(found, grade, needed(row.thick.as_ref(), || grade.to_owned())?.value, thick, "0.5 MPa");
    }
    Ok(())
}

/// Plate over 16 mm has 225 MPa, less a factor 1.087.
fn design_strength_of_thick_plate(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let row = needed(handbook.steel_grade()?.get("q235_design_low"), || "Q235".to_owned())?.value;
    near(found, "Q235", 1.087 * row.stress.value, "225 MPa", "3 MPa");
    Ok(())
}

/// Cast iron sizes: AWWA C151 has 38.30, 44.50 and 50.80 in for 36, 42 and 48 in.
fn iron_and_pvc_share_their_diameters(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (size, printed) in [("36 in", "38.30 in"), ("42 in", "44.50 in"), ("48 in", "50.80 in")] {
        let row = handbook.pvc_pipe()?.find(|row| row.size.value == q(size));
        near(found, size, needed(row, || size.to_owned())?.value.outside_diameter.value, printed, "0.005 in");
    }
    Ok(())
}
