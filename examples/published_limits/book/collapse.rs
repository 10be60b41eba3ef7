//! Pressure at which a ring collapses, free and in the ground.

use super::{Book, Outcome, Read, Topic, q};
use jackpull::laws::collapse::{CriticalPressure, OvalityFactor};
use jackpull::laws::outside_pressure::{BucklingInSoil, ElasticSupportByDepth, WaterBuoyancyFactor};
use jackpull::quantity::{Length, Measure, Pressure, Ratio, Time};
use std::error::Error;

pub(crate) const TOPIC: Topic = Topic { name: "collapse", title: "Collapse and buckling", write };

fn write(book: &Book) -> Outcome {
    table_5_1(book)?;
    depth_rule(book)?;
    ring_out_of_round(book)?;
    rings_of_pvc(book)?;
    steel_main_in_soil(book)
}

/// Head of water at which an ideal ring of HDPE collapses.
fn head(book: &Book, duration: &str, dimension_ratio: &str) -> Result<Length, Box<dyn Error>> {
    // The modulus of the tensile test is in no table of this crate.
    let modulus = if duration == "short term" {
        q("125000 psi")?
    } else {
        let time = q::<Time>(duration)?;
        let rows = book.handbook.pe_modulus()?;
        let of_time = |given: Time| (given.si() / time.si() - 1.0).abs() < 1e-9;
        let row = rows.find(|row| row.material.value.0 == "pe3xxx" && of_time(row.duration.value));
        book.row(row, duration)?.modulus.value
    };
    let ideal = book.law(CriticalPressure {
        modulus,
        poisson: book.cited(book.handbook.ratio("pe.poisson")?),
        dimension_ratio: q(dimension_ratio)?,
        ovality_factor: q("1")?,
        tension_factor: q("1")?,
    });
    Ok(q::<Length>("1 ft")? * (ideal / q::<Pressure>("62.4 psf")?))
}

fn table_5_1(book: &Book) -> Outcome {
    let table = book.at("ttp_2010", "p. 223, Table 5.1", Read::Page)?;
    for (duration, heads) in [
        ("short term", [2896, 1414, 724, 371, 238, 177, 91]),
        ("1 h", [1714, 837, 429, 219, 141, 105, 54]),
        ("10 h", [1436, 702, 359, 184, 118, 88, 45]),
        ("100 h", [1205, 588, 301, 154, 99, 74, 38]),
        ("1000 h", [1019, 498, 255, 131, 84, 62, 32]),
        ("1 year", [880, 430, 220, 113, 72, 54, 28]),
        ("50 year", [649, 317, 162, 83, 53, 40, 20]),
    ] {
        for (dimension_ratio, printed) in ["7.3", "9", "11", "13.5", "15.5", "17", "21"].into_iter().zip(heads) {
            let within = (0.002 * f64::from(printed)).max(1.0);
            let ours = head(book, duration, dimension_ratio)?;
            let why = "the table was made with other digits of water and modulus: a foot, or 0.2 %";
            let what = format!("HDPE DR {dimension_ratio}, {duration}");
            table.about(&what, ours, &format!("{printed} ft"), &format!("{within} ft"), why)?;
        }
    }
    Ok(())
}

/// The six is the specific gravity 1.5 of the slurry over the ovality factor 0.5, times the margin.
fn depth_rule(book: &Book) -> Outcome {
    let rule = book.at("ttp_2010", "p. 226, Eq. 5.25", Read::Page)?;
    let ratio = |key| book.handbook.ratio(key).map(|ratio| book.cited(ratio));
    let divisor = ratio("pull.fluid_heavy")? / 0.5 * ratio("collapse.safety")?;
    rule.prints("divisor of the head", divisor, "6.0")?;
    let ours = head(book, "1000 h", "11")? / divisor;
    rule.about("safe depth of HDPE DR 11", ours, "42.5 ft", "0.1 ft", "the head is rounded to 255 ft before")
}

fn ring_out_of_round(book: &Book) -> Outcome {
    let example = book.at("ppi_handbook_2008", "chapter 12, example 1: DR 11, ovality 3 %", Read::Recalled)?;
    let ovality_factor = book.law(OvalityFactor { ovality: book.cited(book.handbook.ratio("collapse.ovality")?) });
    example.prints("factor of ovality", ovality_factor, "0.76")?;
    let ours = book.law(CriticalPressure {
        modulus: q("57500 psi")?,
        poisson: book.cited(book.handbook.ratio("pe.poisson")?),
        dimension_ratio: q("11")?,
        ovality_factor: q("0.76")?,
        tension_factor: q("1")?,
    });
    example.prints("critical pressure", ours, "109.6 psi")
}

fn rings_of_pvc(book: &Book) -> Outcome {
    let page = book.at("unibell_handbook", "critical buckling pressure", Read::Recalled)?;
    for (dimension_ratio, printed) in [("14", "426 psi"), ("18", "190 psi"), ("25", "68 psi")] {
        let ours = book.law(CriticalPressure {
            modulus: book.row(book.handbook.pvc_stress()?.get("modulus"), "modulus of PVC")?.value,
            poisson: book.row(book.handbook.pvc_ratio()?.get("poisson"), "Poisson's ratio of PVC")?.value,
            dimension_ratio: q(dimension_ratio)?,
            ovality_factor: q("1")?,
            tension_factor: q("1")?,
        });
        page.about(&format!("PVC DR {dimension_ratio}"), ours, printed, "1 psi", "the other digits are not told")?;
    }
    Ok(())
}

/// 72 in, wall 0.5 in, soil modulus 500 psi, 60 in of cover with water at 40 in.
fn steel_main_in_soil(book: &Book) -> Outcome {
    let sheet =
        book.at("awwa_m11", "a calculation sheet that applies it, name left out on purpose", Read::SecondHand)?;
    let water_factor = book.law(WaterBuoyancyFactor { water_height: q("40 in")?, cover: q("60 in")? });
    sheet.prints("factor of buoyancy", water_factor, "0.78")?;
    let elastic_support = book.law(ElasticSupportByDepth { cover: q("60 in")? });
    sheet.prints("elastic support", elastic_support, "0.26")?;
    let ours = book.law(BucklingInSoil {
        safety: q::<Ratio>("2.0")?,
        water_factor,
        elastic_support,
        soil_modulus: q("500 psi")?,
        modulus: q("30000000 psi")?,
        outside_diameter: q("72 in")?,
        wall: q("0.5 in")?,
    });
    sheet.prints("buckling of a steel main of 72 in", ours, "25.91 psi")
}
