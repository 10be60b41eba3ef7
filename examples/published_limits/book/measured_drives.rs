//! Force of a drive from unit friction, and unit friction of measured drives.

use super::{Book, Outcome, Read, Topic, q};
use jackpull::handbook::{GroundClass, Lubrication, WaterSide};
use jackpull::laws::thrust::{FaceForce, FrictionForce};
use jackpull::quantity::{Band, Force, Measure, Pressure};
use std::error::Error;

pub(crate) const TOPIC: Topic = Topic { name: "measured_drives", title: "Jacking forces and measured drives", write };

fn write(book: &Book) -> Outcome {
    measured_drives(book)?;
    guided_drives(book)?;
    rules_of_thumb(book)
}

/// Unit friction of a drive as printed, in kPa, and the printed force of a metre of it.
#[derive(Debug)]
pub(crate) struct Measured {
    pub(crate) id: &'static str,
    pub(crate) kilopascals: f64,
    /// Force of a metre, and outside diameter.
    pub(crate) a_metre: Option<(&'static str, &'static str)>,
}

const fn drive(id: &'static str, a_metre: &'static str, outside_diameter: &'static str, kilopascals: f64) -> Measured {
    Measured { id, kilopascals, a_metre: Some((a_metre, outside_diameter)) }
}

/// In the order of the tables; values that share a drive stand together. Outside diameters from 0.64 m; none of a guided
/// bore.
pub(crate) const MEASURED: [Measured; 12] = [
    drive("Montmorency, silty sand with clay", "6.79 kN", "1080 mm", 2.001),
    drive("Champigny, sandy clay", "6.69 kN", "760 mm", 2.802),
    drive("Neuilly 1, sand and gravel", "9.55 kN", "640 mm", 4.750),
    drive("Neuilly 2, sand and gravel", "10.37 kN", "660 mm", 5.001),
    drive("Bordeaux, clean sand, low", "0.79 kN", "650 mm", 0.387),
    drive("Bordeaux, clean sand, high", "3.93 kN", "650 mm", 1.925),
    drive("Athens 1, sandy clay", "10.4 kN", "1490 mm", 2.222),
    drive("Athens 2, sandy clay", "16.4 kN", "1490 mm", 3.504),
    drive("H city, organic silt", "1.51 kN", "960 mm", 0.501),
    drive("Shenyang, round gravel, low", "24.6 kN", "4140 mm", 1.891),
    drive("Shenyang, round gravel, high", "50.0 kN", "4140 mm", 3.844),
    Measured { id: "Zheng-Kai, silty loam and silty clay", kilopascals: 1.42, a_metre: None },
];

fn measured_drives(book: &Book) -> Outcome {
    let tables = book.at("Advances in Civil Engineering 2020, article 6594306", "Tables 1 and 3", Read::Page)?;
    for measured in &MEASURED {
        if let Some((printed, outside_diameter)) = measured.a_metre {
            let ours = book.law(FrictionForce {
                unit_friction: q(&format!("{} kPa", measured.kilopascals))?,
                outside_diameter: q(outside_diameter)?,
                length: q("1 m")?,
            });
            tables.prints(&format!("a metre of {}", measured.id), ours, printed)?;
        }
        // Two figures are printed: 5.001 is 5.0.
        let measured_friction = q::<Pressure>(&format!("{:.1} kPa", measured.kilopascals))?;
        let band = band(book, GroundClass::Unknown, Lubrication::Metered)?;
        let within =
            (if measured_friction < band.likely { band.likely - band.low } else { band.high - band.likely }).si();
        let why = "the band of ground that is not known, metered lubricant: from its likely value to its end on that \
                   side. It was drawn round these drives: that it holds them proves nothing";
        tables.about(
            &format!("unit friction of {}", measured.id),
            band.likely,
            &format!("{:.1} kPa", measured.kilopascals),
            &format!("{} kPa", within / 1e3),
            why,
        )?;
    }
    Ok(())
}

/// Likely value of a band, cited, and its ends.
fn band(book: &Book, ground: GroundClass, lubrication: Lubrication) -> Result<Band<Pressure>, Box<dyn Error>> {
    let row = book.handbook.friction_band()?.find(|row| {
        (row.ground.value, row.water.value, row.lubrication.value) == (ground, WaterSide::Any, lubrication)
    });
    let row = book.row(row, "a band of friction")?;
    Ok(Band { low: row.low.value, likely: row.likely.value, high: row.high.value })
}

/// About 20 t on each of three drives, of pipes of 0.35 to 0.61 m over 150 m and more: at most 0.7 to 1.2 kPa.
fn guided_drives(book: &Book) -> Outcome {
    let page = book.at(
        "a contractor's page of 2015, name left out on purpose",
        "three guided drives: 196 kN over 150 m",
        Read::Worked,
    )?;
    for (outside_diameter, printed) in [("0.345 m", "1.2 kPa"), ("0.61 m", "0.7 kPa")] {
        let ours = band(book, GroundClass::Unknown, Lubrication::None)?.low;
        let why = "below the low end of the band without lubricant, of which the page tells nothing; one word without a \
                   log, from who has an interest, and so the band stays";
        page.is_not_followed(&format!("friction of guided pipe of {outside_diameter}"), ours, printed, why)?;
    }
    Ok(())
}

fn rules_of_thumb(book: &Book) -> Outcome {
    let friction = |unit_friction: &str, outside_diameter: &str, length: &str| -> Result<Force, Box<dyn Error>> {
        Ok(book.law(FrictionForce {
            unit_friction: q(unit_friction)?,
            outside_diameter: q(outside_diameter)?,
            length: q(length)?,
        }))
    };
    let thumb = book.at("a coursework question, name left out on purpose", "0.06 ton/ft2 over 2,500 ft", Read::Page)?;
    thumb.prints(
        "48 in over 2,500 ft by the rule of thumb",
        friction("120 psf", "48 in", "2500 ft")?,
        "1885 tonf_us",
    )?;
    let code = book.at("gb_50268", "clause 6.3.4, friction and face", Read::Worked)?;
    code.prints("1.2 m over 100 m at 8 kPa", friction("8 kPa", "1.2 m", "100 m")?, "3015.9 kN")?;
    for (pressure, cut, printed) in [("80 kPa", "1.2 m", "90.5 kN"), ("160 kPa", "1.24 m", "193.2 kN")] {
        let face = book.law(FaceForce {
            pressure: q(pressure)?,
            cut_diameter: q(cut)?,
            guided_diameter: q("0 mm")?,
            least: q("0 N")?,
        });
        code.prints(&format!("face of {cut} under {pressure}"), face, printed)?;
    }
    Ok(())
}
