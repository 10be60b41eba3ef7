//! Earth load on a pipe, the strength it needs in service, and stress by pressure inside.

use super::{Book, Outcome, Read, Topic, q};
use jackpull::laws::deflection::IowaDeflection;
use jackpull::laws::earth_load::{CrushingStrengthNeeded, StrengthOfClass};
use jackpull::laws::pe::BendingStress;
use jackpull::laws::pull_steel::HoopStress;
use jackpull::laws::soil::MarstonLoad;
use jackpull::quantity::{LineLoad, Ratio};
use std::error::Error;

pub(crate) const TOPIC: Topic = Topic { name: "earth_load", title: "Earth load and strength in service", write };

fn write(book: &Book) -> Outcome {
    example_3_1(book)?;
    required_strength(book)?;
    impact_by_cover(book)?;
    jacked_pipe_under_40_ft(book)?;
    deflection_of_a_ring(book)?;
    steel_under_pressure(book)
}

fn factor(book: &Book, key: &str) -> Result<Ratio, Box<dyn Error>> {
    let row = book.row(book.handbook.earth_load_factor()?.get(key), key)?;
    Ok(row.value.as_ref().ok_or("a factor without a value")?.value)
}

fn needed(book: &Book, earth_load: &str, earth_bedding_factor: Ratio) -> Result<LineLoad, Box<dyn Error>> {
    Ok(book.law(CrushingStrengthNeeded {
        earth_load: q(earth_load)?,
        earth_bedding_factor,
        live_load: q("0 plf")?,
        live_bedding_factor: q("1")?,
        safety: factor(book, "strength_safety")?,
    }))
}

/// A 15 in pipe under 2,592 lb/ft with safety 1.5, strength between three edges, or D-load.
fn example_3_1(book: &Book) -> Outcome {
    let example = book.at("moser_buried_pipe", "p. 81 and 82, example 3.1", Read::Page)?;
    let row = book.row(book.handbook.bedding_factor()?.get("class_d"), "class_d")?;
    let class_d = row.value.as_ref().ok_or("a bedding factor without a value")?.value;
    for (class, bedding, strength, d_load) in [
        ("class D", class_d, "3535 plf", "2828 psf"),
        ("class C", q("1.5")?, "2592 plf", "2074 psf"),
        ("class B", q("1.9")?, "2046 plf", "1637 psf"),
    ] {
        let ours = needed(book, "2592 plf", bedding)?;
        example.about(&format!("strength on {class}"), ours, strength, "0.6 plf", "cut off, not rounded")?;
        let ours = book.law(StrengthOfClass { class_load: q(d_load)?, size: q("15 in")? });
        let why = "the D-load is rounded to 1 lb/ft2, over 15 in";
        example.about(&format!("strength of the D-load on {class}"), ours, strength, "0.8 plf", why)?;
    }
    Ok(())
}

fn required_strength(book: &Book) -> Outcome {
    let page = book.at("moser_buried_pipe", "p. 250", Read::Page)?;
    for (load, printed) in [("11172 plf", "11172 plf"), ("14592 plf", "14592 plf")] {
        page.prints(&format!("strength for {load}, bedding 1.5"), needed(book, load, q("1.5")?)?, printed)?;
    }
    let ours = needed(book, "11172 plf", q("1.9")?)?;
    let why = "a slip of the page: 11,172 x 1.5 / 1.9 are 8,820";
    page.is_not_followed("strength for 11172 plf, bedding 1.9", ours, "8200 plf", why)
}

fn impact_by_cover(book: &Book) -> Outcome {
    let table = book.at("moser_buried_pipe", "p. 35, Table 2.5", Read::Page)?;
    for (key, printed) in [
        ("highway_to_1_ft", "1.50"),
        ("highway_1_to_2_ft", "1.35"),
        ("highway_2_to_3_ft", "1.15"),
        ("highway_over_3_ft", "1.00"),
    ] {
        let ours = book.row(book.handbook.impact_factor()?.get(key), key)?.factor.value;
        table.prints(&format!("impact, {key}"), ours, printed)?;
    }
    Ok(())
}

/// Bore 5 ft, 100 lb/ft2 of cohesion, 120 lb/ft3.
fn jacked_pipe_under_40_ft(book: &Book) -> Outcome {
    let page = book.at("moser_buried_pipe", "p. 22, Eq. 2.9", Read::Worked)?;
    for (lateral_friction, cohesion, printed) in [
        ("0.110", "0 psf", "11290 plf"),
        ("0.110", "100 psf", "7527 plf"),
        ("0.130", "0 psf", "10097 plf"),
        ("0.130", "100 psf", "6731 plf"),
        ("0.165", "100 psf", "5628 plf"),
    ] {
        let ours = book.law(MarstonLoad {
            unit_weight: q("120 pcf")?,
            bore: q("5 ft")?,
            depth: q("40 ft")?,
            lateral_friction: q(lateral_friction)?,
            cohesion: q(cohesion)?,
        });
        let what = format!("jacked pipe under 40 ft, K mu {lateral_friction}, cohesion {cohesion}");
        page.about(&what, ours, printed, "1 plf", "the coefficient is rounded to four digits before")?;
    }
    Ok(())
}

/// In a plain bore the formula is the earth load deflection of the handbook of PE pipe, 0.0125 P 12 (DR - 1)³ / E:
/// 0.15 x 2 psi x 10³ / 28,000 psi.
fn deflection_of_a_ring(book: &Book) -> Outcome {
    let page = book.at("ppi_handbook_2008", "earth load deflection of a plain bore", Read::Recalled)?;
    let of = |key: &str| -> Result<Ratio, Box<dyn Error>> {
        Ok(book.row(book.handbook.deflection_factor()?.get(key), key)?.value)
    };
    let ours = book.law(IowaDeflection {
        lag: of("lag_prism")?,
        bedding: q("0.1")?,
        pressure: q("2 psi")?,
        modulus: q("28000 psi")?,
        outside_diameter: q("11 in")?,
        wall: q("1 in")?,
        soil_modulus: q("0 psi")?,
    });
    page.prints("PE DR 11 under 2 psi for 50 years", ours, "1.0714 %")
}

fn steel_under_pressure(book: &Book) -> Outcome {
    let sheet = book.at("steel_crossing_sheet", "design pressure 8.60 N/mm2", Read::Page)?;
    let ours =
        book.law(HoopStress { pressure: q("8.60 N/mm2")?, outside_diameter: q("711.2 mm")?, wall: q("22.2 mm")? });
    sheet.about("hoop stress of a steel crossing", ours, "137.75 N/mm2", "0.006 N/mm2", "rounded up")?;
    let worked = book.at("steel_crossing_sheet", "bending on the planned curve", Read::Worked)?;
    let ours = book.law(BendingStress {
        modulus: q("29006000 psi")?,
        outside_diameter: q("711.2 mm")?,
        radius: q("51181.10 in")?,
    });
    worked.prints("bending of the same steel crossing", ours, "7934 psi")
}
