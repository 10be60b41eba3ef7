//! Dimensions and allowable jacking force of US vitrified clay jacking pipe: a pipe maker's sheet (name left out on
//! purpose), table read, seven sizes. Beside it ASTM C1208 (strength second hand, in the same sheet), EN 295-7 (recalled; 10,875 psi
//! read in a guide specification that cites it and asks a margin of 3.0), and the mechanics of a joint.

use crate::found::{Found, Outcome, between, close, holds, law, near, needed, pages, q, ratio, same};
use jackpull::Handbook;
use jackpull::handbook::ClayPipeRow;
use jackpull::law::Law;
use jackpull::laws::clay::{ConcentricEndForce, EdgeEndForce, EndAreaFromRating};
use jackpull::quantity::{Area, Force, Length, Pressure, Ratio};
use std::f64::consts::{FRAC_PI_4, PI};
use std::sync::Arc;

pages!(
    one_area_behind_three_ratings,
    barrel_of_the_8_in_pipe,
    net_over_barrel_area,
    weight_against_volume,
    strengths_in_the_other_unit,
    margin_of_the_guide_specification,
    factor_three_is_one_and_a_half_on_a_triangle,
    mean_over_greatest_stress_of_a_closed_joint,
    metric_sizes,
);

const SIZES: [&str; 7] = ["8 in", "10 in", "12 in", "15 in", "18 in", "21 in", "24 in"];

fn row(handbook: &Handbook, size: &str) -> Result<ClayPipeRow, crate::found::Stop> {
    let nominal = q::<Length>(size);
    let row = handbook.clay_pipe()?.find(|row| same(row.size.value, nominal));
    Ok(needed(row, || format!("clay pipe {size}"))?.value.clone())
}

/// One area a row returns all printed ratings.
fn one_area_behind_three_ratings(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let areas = ["29.1 in2", "42.9 in2", "56.3 in2", "78.0 in2", "100.4 in2", "124.2 in2", "161.3 in2"];
    for (size, area) in SIZES.iter().zip(areas) {
        let row = row(handbook, size)?;
        let factors = [
            ratio(handbook, "clay.factor_2_5")?,
            ratio(handbook, "clay.factor_3_0")?,
            ratio(handbook, "clay.factor_3_5")?,
        ];
        let ratings = [row.rated_at_2_5.value, row.rated_at_3_0.value, row.rated_at_3_5.value];
        for (rating, factor) in ratings.into_iter().zip(factors) {
            let strength = row.rating_strength.value;
            let behind = EndAreaFromRating { rating, factor, strength };
            // Ratings are whole tons: half a ton of the smallest, 29, is 1.7 % of its area.
            close(found, &format!("area behind {size} at {}", factor.value), behind.value(), area, 0.018);
            let end_bearing_area = q::<Area>(area);
            let allowed = ConcentricEndForce { end_bearing_area, strength, factor }.value();
            let off = (allowed - rating).abs();
            holds(
                found,
                &format!("{size} at {}: the area returns the rating", factor.value),
                off <= q::<Force>("0.5 tonf_us"),
            );
        }
    }
    Ok(())
}

/// Area of the barrel, with the nominal size as the bore.
fn barrel(row: &ClayPipeRow) -> Area {
    let (outside, inside) = (row.outside_diameter.value, row.size.value);
    FRAC_PI_4 * (outside * outside - inside * inside)
}

/// The barrel would give 52.2 t instead of 34 t.
fn barrel_of_the_8_in_pipe(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let row = row(handbook, "8 in")?;
    let wrong = ConcentricEndForce {
        end_bearing_area: barrel(&row),
        strength: row.rating_strength.value,
        factor: ratio(handbook, "clay.factor")?,
    };
    near(found, "8 in pipe on its barrel", wrong.value(), "52.2 tonf_us", "0.05 tonf_us");
    Ok(())
}

/// Net over barrel area with the nominal size as the bore: 0.651, 0.707, 0.756 and 0.890 for 8, 10, 15 and 21 in, the
/// first 0.650 from 29.1 in2 and 0.653 by another reader; by hand 0.716 of 78.65, 0.827 of 121.35 and 0.754 of 213.83 in2.
fn net_over_barrel_area(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let printed = [
        ("29.1 in2", "0.651"),
        ("42.9 in2", "0.707"),
        ("56.3 in2", "0.716"),
        ("78.0 in2", "0.756"),
        ("100.4 in2", "0.827"),
        ("124.2 in2", "0.890"),
        ("161.3 in2", "0.754"),
    ];
    for (size, (net, printed)) in SIZES.iter().zip(printed) {
        let row = row(handbook, size)?;
        near(found, &format!("net over barrel, {size}"), q::<Area>(net) / barrel(&row), printed, "0.0025");
    }
    Ok(())
}

/// The nominal barrel times 140 lb/ft3 (22 kN/m3 in European data) misses the printed weight by -14 to +6 %, since the
/// nominal size is not the true bore.
fn weight_against_volume(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for size in SIZES {
        let row = row(handbook, size)?;
        let by_volume = barrel(&row) * q::<jackpull::quantity::UnitWeight>("140 pcf");
        let miss = by_volume / row.weight.value - q::<Ratio>("1");
        between(found, &format!("weight of {size} by volume"), miss, "-14.5 %", "6.5 %");
    }
    Ok(())
}

/// 7,000 psi is 48.3 MPa; 75 N/mm2 is printed with 10,875 psi, 55 % more. The least of the two counts where no
/// certificate is known.
fn strengths_in_the_other_unit(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let table = handbook.clay_strength()?;
    let strength = |key: &str| -> Result<Pressure, crate::found::Stop> {
        Ok(needed(table.get(key), || key.to_owned())?.value.value)
    };
    let (american, european) = (strength("astm_c1208")?, strength("en_295_7")?);
    near(found, "minimum of ASTM C1208", american, "48.3 MPa", "0.05 MPa");
    // 75 times the rounded factor 145.
    near(found, "minimum of EN 295-7", european, "10875 psi", "5 psi");
    near(found, "one over the other", european / american, "1.55", "0.005");
    let least = american.min(european).value * 1e-6;
    near(found, "without a certificate", strength("unknown")?, &format!("{least} MPa"), "0.05 MPa");
    for size in SIZES {
        let row = row(handbook, size)?;
        near(
            found,
            &format!("strength behind the ratings of {size}"),
            row.rating_strength.value,
            "48.3 MPa",
            "0.05 MPa",
        );
    }
    Ok(())
}

/// The allowable capacity is to be 3.0 times the greatest jacking force.
fn margin_of_the_guide_specification(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    near(found, "factor on uniform stress", ratio(handbook, "clay.factor")?, "3.0", "0.05");
    Ok(())
}

/// A factor 3 on uniform stress is 1.5 on a full-face triangle, 1.05 at a stress ratio of 0.35 and 0.86 at 0.288, where
/// half of a face is in contact (another hand's sum).
fn factor_three_is_one_and_a_half_on_a_triangle(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (factor, edge) = (ratio(handbook, "clay.factor")?, ratio(handbook, "clay.factor_edge")?);
    let joint = ratio(handbook, "clay.joint_ratio")?;
    near(found, "factor at the edge of the assumed joint", factor * joint, "1.5", "0.05");
    near(found, "factor asked at the edge", edge, "1.5", "0.05");
    for (stress_ratio, printed) in [("0.35", "1.05"), ("0.288", "0.86")] {
        near(found, "factor left at the edge", factor * q::<Ratio>(stress_ratio), printed, "0.005");
    }
    let (end_bearing_area, strength) = (q::<Area>("29.1 in2"), q::<Pressure>("7000 psi"));
    let even = ConcentricEndForce { end_bearing_area, strength, factor }.value();
    let turned = EdgeEndForce { stress_ratio: joint, end_bearing_area, strength, factor: edge }.value();
    holds(found, "both limits meet at the angle where the joint begins to open", same(even, turned));
    Ok(())
}

/// Mean over greatest stress of a ring with stress rising from zero at one edge to the other, by summing strips.
fn mean_over_greatest(inner_over_outer: f64) -> f64 {
    const STRIPS: u32 = 200_000;
    let (mut force, mut area) = (0.0, 0.0);
    for strip in 0..STRIPS {
        let x = -1.0 + 2.0 * (f64::from(strip) + 0.5) / f64::from(STRIPS);
        let chord = |radius: f64| 2.0 * (radius * radius - x * x).max(0.0).sqrt();
        let width = chord(1.0) - chord(inner_over_outer);
        area += width;
        force += width * (1.0 + x) / 2.0;
    }
    force / area
}

/// Exactly one half for any annulus at the angle where the far edge is just free of stress.
fn mean_over_greatest_stress_of_a_closed_joint(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    near(found, "stress ratio of a closed joint", ratio(handbook, "clay.joint_ratio")?, "0.5", "0.0005");
    Ok(())
}

#[test]
fn triangle_on_any_annulus() {
    for inner_over_outer in [0.0, 0.6, 0.8, 0.9] {
        assert!((mean_over_greatest(inner_over_outer) - 0.5).abs() < 1e-4, "{inner_over_outer}");
    }
}

/// A solid end of 11 in with 7,000 psi and no factor, for the size of the numbers: area times strength.
#[test]
fn force_of_a_plain_end() {
    let force = law(ConcentricEndForce {
        end_bearing_area: q::<Area>("1 in2") * (PI * 30.25),
        strength: q("7000 psi"),
        factor: q("1"),
    });
    assert!((force - q::<Force>("665232 lbf")).abs() < q::<Force>("1 lbf"), "{force:?}");
}

/// By EN 295-7 the bore is the nominal size within a few percent. The walls are recalled of a maker: 38 to 55 mm to DN 250, 53
/// to 85 mm to DN 800, 138 mm above; of pipe in inches the diameter is 1.2 to 1.4 times the size, and more for the smallest.
fn metric_sizes(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for row in &handbook.clay_pipe_dn()?.rows {
        let size = row.value.size.value.value * 1e3;
        let wall = (row.value.outside_diameter.value.value * 1e3 - size) / 2.0;
        let (least, most) = match size {
            ..251.0 => (31.0, 56.0),
            ..801.0 => (52.0, 86.0),
            _ => (135.0, 140.0),
        };
        holds(found, &format!("{}: wall {wall} mm", row.key), (least..most).contains(&wall));
    }
    Ok(())
}
