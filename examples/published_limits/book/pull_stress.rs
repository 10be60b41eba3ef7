//! Stress and force that a pulled pipe is allowed, by edition, duration and temperature.

use super::{Book, Outcome, Read, Topic, q};
use jackpull::laws::pe::{AllowableTension, TensileDesignStress};
use jackpull::quantity::{Force, Measure, Pressure, ThermodynamicTemperature, Time};
use std::error::Error;

pub(crate) const TOPIC: Topic = Topic { name: "pull_stress", title: "Tension that a pulled pipe is allowed", write };

fn write(book: &Book) -> Outcome {
    editions_of_f1962(book)?;
    products_of_f1804(book)?;
    sewer_rehabilitation_handbook(book)?;
    trenchless_technology_piping(book)
}

/// The same quantity read from two texts, to the last bits.
fn same<Q: Measure>(a: Q, b: Q) -> bool {
    (a.si() - b.si()).abs() <= 1e-9 * b.si().abs()
}

fn stress(book: &Book, edition: &str, material: &str, up_to: &str) -> Result<Pressure, Box<dyn Error>> {
    let duration = q::<Time>(up_to)?;
    let row = book.handbook.pe_pull_stress()?.find(|row| {
        row.edition.value.0 == edition && row.material.value.0 == material && same(row.up_to.value, duration)
    });
    Ok(book.row(row, &format!("{edition}, {material}, {up_to}"))?.stress.value)
}

fn editions_of_f1962(book: &Book) -> Outcome {
    let sheet = book.at("a conduit maker's sheet, name left out on purpose", "safe pull stress of HDPE", Read::Page)?;
    for (up_to, printed) in [("30 min", "1300 psi"), ("24 h", "1100 psi")] {
        sheet.prints(&format!("HDPE, pull of {up_to}"), stress(book, "astm_f1962_1999", "hdpe", up_to)?, printed)?;
    }
    let comparison =
        book.at("comparison sheet of the Plastics Pipe Institute, July 2015", "12 h and 73 degF", Read::Page)?;
    comparison.prints("PE 3408, pull of 12 h", stress(book, "astm_f1962_1999", "hdpe", "12 h")?, "1150 psi")?;
    let row = book.row(book.handbook.pe_material()?.get("pe4710"), "pe4710")?;
    comparison.prints("PE 4710, tensile yield", row.tensile_yield.value, "3500 psi")?;
    let why = "between 1,150 psi of the handbook of 2008 and 1,330 psi of the edition of 2022, which has the same inputs; \
               the least of all editions is the default";
    comparison.is_not_followed(
        "PE 4710, pull of 12 h",
        stress(book, "ppi_2008", "pe4710", "12 h")?,
        "1300 psi",
        why,
    )?;
    let article =
        book.at("astm_f1962_2022", "Underground Infrastructure, March 2023, vol. 78 no. 3", Read::SecondHand)?;
    article.prints("PE 4710, pull of 12 h", stress(book, "astm_f1962_2022", "pe4710", "12 h")?, "1330 psi")
}

/// Factor for design, factor for duration and tensile yield, multiplied, for up to 1, 12 and 24 h.
pub(crate) const PRODUCTS: [(&str, [&str; 3]); 3] = [
    ("mdpe", ["1040 psi", "988 psi", "946 psi"]),
    ("hdpe", ["1280 psi", "1216 psi", "1165 psi"]),
    ("pe4710", ["1400 psi", "1330 psi", "1274 psi"]),
];

fn products_of_f1804(book: &Book) -> Outcome {
    let page = book.at("astm_f1804", "equation 1 and factors", Read::Recalled)?;
    for (material, products) in PRODUCTS {
        for (up_to, printed) in ["1 h", "12 h", "24 h"].into_iter().zip(products) {
            let duration = q::<Time>(up_to)?;
            let factors = book.handbook.pe_duration_factor()?;
            let factor = factors.find(|row| row.edition.value.0 == "astm_f1804" && same(row.up_to.value, duration));
            let ours = book.law(TensileDesignStress {
                design_factor: book.cited(book.handbook.ratio("pe.tensile_design")?),
                duration_factor: book.row(factor, up_to)?.factor.value,
                tensile_yield: book.row(book.handbook.pe_material()?.get(material), material)?.tensile_yield.value,
            });
            page.prints(&format!("{material}, pull of {up_to}"), ours, printed)?;
        }
    }
    Ok(())
}

fn sewer_rehabilitation_handbook(book: &Book) -> Outcome {
    let page = book.at("stein_2001", "section 5.3.2.6.3.1.1.1", Read::Page)?;
    for (at, printed) in [("20 degC", "8 N/mm2"), ("40 degC", "5 N/mm2")] {
        let temperature = q::<ThermodynamicTemperature>(at)?;
        let factors = book.handbook.pe_temperature()?;
        let factor = factors.find(|row| row.set.value.0 == "pull_stress_stein" && same(row.at.value, temperature));
        let ours = book.row(factor, at)?.factor.value * stress(book, "stein_2001", "pe80", "0.5 h")?;
        page.about(&format!("PE-HD, half an hour at {at}"), ours, printed, "0.005 N/mm2", "the row is the figure")?;
    }
    Ok(())
}

/// Safe pull strengths that examples quote.
fn trenchless_technology_piping(book: &Book) -> Outcome {
    let force = |edition, up_to, outside_diameter: &str, dimension_ratio: f64| -> Result<Force, Box<dyn Error>> {
        let (stress, outside_diameter) = (stress(book, edition, "hdpe", up_to)?, q(outside_diameter)?);
        let wall = outside_diameter / dimension_ratio;
        Ok(book.law(AllowableTension { stress, outside_diameter, wall, weld_factor: q("1")? }))
    };
    let example = book.at("ttp_2010", "p. 226, Table 5.2 as the example quotes it", Read::Page)?;
    let average_wall = book.cited(book.handbook.ratio("pe.average_wall")?);
    let ours = average_wall * force("ppi_2008", "1 h", "4.500 in", 11.0)?;
    example.prints("HDPE 4 in DR 11, average wall, pull of 1 h", ours, "7524 lbf")?;
    let bursting = book.at("ttp_2010", "p. 272", Read::Page)?;
    let ours = force("astm_f1962_1999", "12 h", "12.750 in", 17.0)?;
    bursting.about("HDPE 12 in DR 17, pull of 12 h", ours, "32500 lbf", "50 lbf", "printed to a hundred pounds")
}
