//! Thrust walls, pits and their bases, and columns of steel.

use super::{Book, Outcome, Read, Topic, q};
use jackpull::laws::column::RadiusOfGyration;
use jackpull::laws::inflow::InflowUnconfined;
use jackpull::laws::packer::RingArea;
use jackpull::laws::pit_base::{BaseUplift, BearingFactorSkempton};
use jackpull::laws::room::PitSide;
use jackpull::laws::soil::LayerStress;
use jackpull::laws::wall::{ActiveCoefficient, PassiveCoefficient, PassiveStrip, UndrainedStrip};
use jackpull::quantity::{Length, Pressure, UnitWeight};

pub(crate) const TOPIC: Topic = Topic { name: "thrust_wall", title: "Thrust walls, pits and columns", write };

fn write(book: &Book) -> Outcome {
    rankine(book)?;
    worked_walls(book)?;
    pit_bases(book)?;
    pit_sides(book)?;
    section_data(book)
}

fn rankine(book: &Book) -> Outcome {
    let page = book.at("moser_buried_pipe", "p. 126", Read::Page)?;
    let friction_angle = q("30 deg")?;
    let passive = book.law(PassiveCoefficient { friction_angle });
    page.about("passive ratio at 30 deg", passive, "3", "0.0005", "exact at this angle")?;
    let across = book.law(ActiveCoefficient { friction_angle }) * q::<Pressure>("2058 psf")?;
    page.prints("pressure across at 30 deg under 2058 psf", across, "686 psf")
}

/// Wall 3 m by 3 m, its top 4 m down: unit weight, friction angle, cohesion, spread.
fn worked_walls(book: &Book) -> Outcome {
    let place = book.at("rankine_1862", "passive strip with stated inputs", Read::Worked)?;
    for (unit_weight, degrees, cohesion, spread, printed) in [
        ("18 kN/m3", "30 deg", "10 kPa", "1", "2985 kN"),
        ("18 kN/m3", "30 deg", "10 kPa", "1.5", "4477 kN"),
        ("18 kN/m3", "25 deg", "10 kPa", "1", "2478 kN"),
        ("18 kN/m3", "35 deg", "10 kPa", "1", "3634 kN"),
        ("8.19 kN/m3", "30 deg", "0 kPa", "1", "1216 kN"),
    ] {
        let weight = q::<UnitWeight>(unit_weight)?;
        let ours = book.law(PassiveStrip {
            spread: q(spread)?,
            width: q("3 m")?,
            height: q("3 m")?,
            top_stress: book.law(LayerStress { unit_weight: weight, thickness: q("4 m")? }),
            unit_weight: weight,
            coefficient: book.law(PassiveCoefficient { friction_angle: q(degrees)? }),
            cohesion: q(cohesion)?,
        });
        place.prints(&format!("wall in {unit_weight}, {degrees}, {cohesion}, spread {spread}"), ours, printed)?;
    }
    // 20 x 5.5 x 3 + 2 x 50 x 3 = 630 kN a metre.
    let clay = book.at("rankine_1862", "undrained form, printed without the width", Read::Worked)?;
    let ours = book.law(UndrainedStrip {
        spread: q("1")?,
        width: q("3 m")?,
        height: q("3 m")?,
        top_stress: q("80 kPa")?,
        unit_weight: q("20 kN/m3")?,
        undrained_strength: q("50 kPa")?,
    });
    clay.prints("wall in clay of 50 kPa", ours, "1890 kN")
}

fn pit_bases(book: &Book) -> Outcome {
    let text = book.at("venkatramaiah", "p. 593, example 14.17 and the one before", Read::Page)?;
    for (depth, factor, pressure) in [("0 m", "5.5", "275 kPa"), ("2 m", "7.7", "385 kPa")] {
        let at_depth = || -> Result<_, Box<dyn std::error::Error>> {
            Ok(book.law(BearingFactorSkempton { depth: q(depth)?, width: q("1 m")?, length: q("2 m")? }))
        };
        text.prints(&format!("bearing factor of 1 m by 2 m, {depth} deep"), at_depth()?, factor)?;
        let bears = at_depth()? * q::<Pressure>("50 kPa")?;
        text.prints(&format!("the same on clay of 50 kPa, {depth} deep"), bears, pressure)?;
    }
    let course = book.at("nptel_soil_mechanics", "chapter 5, example 2: a base that broke", Read::Page)?;
    let thickness = q::<Length>("10.5 m")? - q("7.5 m")?;
    let (unit_weight, water_pressure) = (q("2 tf/m3")?, q("6 tf/m2")?);
    let safety = book.law(BaseUplift { unit_weight, thickness, water_pressure });
    course.about("safety of 3 m of clay over 6 m of water", safety, "1", "0.0005", "exact by its inputs")?;
    let well = book.at("a textbook problem answered on a study-help site", "pumped well", Read::Page)?;
    let flow = book.law(InflowUnconfined {
        permeability: q("0.00014 m/s")?,
        far_depth: q("9.24 m")?,
        near_depth: q("4.53 m")?,
        far_radius: q("27.70 m")?,
        near_radius: q("10 m")?,
    });
    well.prints("flow to a well", flow, "0.028 m3/s")
}

/// A pipe of 610 mm in sections of 2.5 m.
fn pit_sides(book: &Book) -> Outcome {
    let abstract_ = book.at("thomson_1993", "chapter on drive and reception pits, abstract", Read::Page)?;
    for (key, part, printed) in [
        ("width_typical", "610 mm", "2610 mm"),
        ("length_compact", "2.5 m", "3.5 m"),
        ("length_some_plant", "2.5 m", "7.5 m"),
        ("length_to_dn_1500", "2.5 m", "4.5 m"),
    ] {
        let row = book.row(book.handbook.shaft_size()?.get(key), key)?;
        let allowance = row.high.as_ref().or(row.value.as_ref()).ok_or("a row without a length")?.value;
        abstract_.prints(&format!("pit, {key}"), book.law(PitSide { part: q(part)?, allowance }), printed)?;
    }
    Ok(())
}

fn section_data(book: &Book) -> Outcome {
    let table = book.at("UFC 3-220-01A", "table B-1, pipe sections", Read::Page)?;
    for (diameter, wall, area, radius) in [
        ("12 in", "0.250 in", "9.23 in2", "4.16 in"),
        ("12 in", "0.312 in", "11.5 in2", "4.13 in"),
        ("12.75 in", "0.188 in", "7.42 in2", "4.44 in"),
        ("12.75 in", "0.250 in", "9.82 in2", "4.42 in"),
        ("12.75 in", "0.500 in", "19.2 in2", "4.33 in"),
    ] {
        let outside_diameter = q::<Length>(diameter)?;
        let inside_diameter = outside_diameter - 2.0 * q::<Length>(wall)?;
        let ours = book.law(RingArea { outside_diameter, inside_diameter });
        table.prints(&format!("area of {diameter} x {wall}"), ours, area)?;
        let ours = book.law(RadiusOfGyration { outside_diameter, inside_diameter });
        table.prints(&format!("radius of gyration of {diameter} x {wall}"), ours, radius)?;
    }
    Ok(())
}
