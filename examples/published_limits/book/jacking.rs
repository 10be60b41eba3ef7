//! Force that a pipe end is allowed, by maker, standard and annex; the contact in a joint that turns.

use super::{Book, Outcome, Read, q};
use jackpull::check::Subject;
use jackpull::handbook::Method;
use jackpull::laws::concrete::{AllowableMeanEndForce, ChineseConcreteEndForce};
use jackpull::laws::packer::RingArea;
use jackpull::laws::turned_joint::StressRatioAtAngle;
use jackpull::quantity::{Area, Force, Measure, Pressure, Ratio};
use std::error::Error;

pub(crate) fn write(book: &Book) -> Outcome {
    ratings_of_clay(book)?;
    small_concrete_pipe(book)?;
    chinese_annex(book)?;
    packer_of_a_joint(book)
}

fn clay_end(book: &Book, size: &str, factor: &str) -> Result<Force, Box<dyn Error>> {
    let lines = format!(
        "length: 20 m\ngroundwater: none\nlubrication: none\n\
         ground: [{{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }}]\n\
         candidates: [{{ material: clay, size: {size}, certificate: astm_c1208, factor: {factor}, joint_stress_ratio: 0.5 }}]\n"
    );
    book.limit(&lines, Method::PipeJacking, Subject::EndCapacity).map(Force::from_si)
}

fn ratings_of_clay(book: &Book) -> Outcome {
    let sheet = book.at("us_clay_pipe_sheet", "seven sizes, columns of factor 2.5, 3.0 and 3.5", Read::Page)?;
    let printed = [
        ("8 in", "34 tonf_us", "29 tonf_us"),
        ("10 in", "50 tonf_us", "43 tonf_us"),
        ("12 in", "66 tonf_us", "56 tonf_us"),
        ("15 in", "91 tonf_us", "78 tonf_us"),
        ("18 in", "117 tonf_us", "100 tonf_us"),
        ("21 in", "145 tonf_us", "124 tonf_us"),
        ("24 in", "188 tonf_us", "161 tonf_us"),
    ];
    for (size, three, more) in printed {
        for (factor, printed) in [("3.0", three), ("3.5", more)] {
            let why = "whole tons are printed, and the least of the three areas behind them is taken";
            let ours = clay_end(book, size, factor)?;
            sheet.about(&format!("clay {size}, factor {factor}"), ours, printed, "0.7 tonf_us", why)?;
        }
    }
    let why = "a factor of 2.5 on even stress leaves 1.25 at the edge of a closed joint; 1.5 is kept there, as the \
               factor of 3.0 has it";
    sheet.is_not_followed("clay 8 in, factor 2.5", clay_end(book, "8 in", "2.5")?, "41 tonf_us", why)
}

/// 13 and 17.5 N/mm2 on the effective area.
fn small_concrete_pipe(book: &Book) -> Outcome {
    let table = book.at("jswas_a6", "table of effective area and allowable force", Read::SecondHand)?;
    for (key, type_50, type_70) in [
        ("dn_250", "542 kN", "730 kN"),
        ("dn_300", "666 kN", "896 kN"),
        ("dn_350", "816 kN", "1099 kN"),
        ("dn_400", "980 kN", "1320 kN"),
        ("dn_450", "1180 kN", "1589 kN"),
        ("dn_500", "1373 kN", "1848 kN"),
        ("dn_600", "1825 kN", "2457 kN"),
        ("dn_700", "2444 kN", "3290 kN"),
    ] {
        for (grade, printed) in [("jswas_50_mean", type_50), ("jswas_70_mean", type_70)] {
            let end_bearing_area = book.row(book.handbook.concrete_small_pipe()?.get(key), key)?.end_area.value;
            let allowable_mean = book.row(book.handbook.concrete_strength()?.get(grade), grade)?.stress.value;
            let ours = book.law(AllowableMeanEndForce { end_bearing_area, allowable_mean });
            let why = "the area too is printed rounded";
            table.about(&format!("concrete {key}, {grade}"), ours, printed, "0.51 kN", why)?;
        }
    }
    Ok(())
}

fn by_the_annex(book: &Book, design_strength: Pressure, least_end_area: Area) -> Result<Force, Box<dyn Error>> {
    let factor = |key: &str| -> Result<Ratio, Box<dyn Error>> {
        Ok(book.row(book.handbook.concrete_factor()?.get(key), key)?.factor.value)
    };
    Ok(book.law(ChineseConcreteEndForce {
        eccentric_load: factor("cn_eccentric")?,
        strength_reduction: factor("cn_phi1")?,
        eccentric_enhancement: factor("cn_phi2")?,
        brittleness: factor("cn_phi3")?,
        strength_adjustment: factor("cn_phi5")?,
        partial_factor: factor("cn_gamma")?,
        design_strength,
        least_end_area,
    }))
}

/// Two calculation sheets that apply the annex.
fn chinese_annex(book: &Book) -> Outcome {
    let sheet =
        book.at("cn_annex_e", "a calculation sheet that applies it: bore 1000 mm, wall 100 mm, C50", Read::Page)?;
    let strength = book.row(book.handbook.concrete_strength()?.get("gb_c50_design"), "C50")?.stress.value;
    // The sheet takes the whole barrel, where the annex asks the least effective area: an example of the sum only.
    let ours = by_the_annex(book, strength, q("345400 mm2")?)?;
    sheet.about("concrete 1000 mm, by annex E", ours, "3120215.6 N", "0.5 N", "six factors are multiplied in turn")?;
    let other = book.at("cn_annex_e", "a second sheet that applies it, 3,108,600 mm2", Read::Page)?;
    let strength = book.row(book.handbook.concrete_strength()?.get("gb_c50_design"), "C50")?.stress.value;
    let ours = by_the_annex(book, strength, q("3108600 mm2")?)?;
    let why = "the sheet puts in 32.4 N/mm2, the characteristic strength, where the annex asks the design strength: 40 % \
               too much";
    other.is_not_followed("the same annex, another sheet", ours, "39387.66 kN", why)
}

/// Packer 1160/1010 mm, 15 mm thick, 20 MPa at the edge. Half the modulus doubles the angle.
fn packer_of_a_joint(book: &Book) -> Outcome {
    let place = book.at("jackpull", "linear packer model, by closed form and by quadrature", Read::Worked)?;
    let (outside_diameter, inside_diameter) = (q("1160 mm")?, q("1010 mm")?);
    let greatest_stress = q::<Pressure>("20 MPa")?;
    for (modulus, angle, printed) in [
        ("200 MPa", "0 deg", "5113 kN"),
        ("200 MPa", "0.05 deg", "3388 kN"),
        ("200 MPa", "0.1 deg", "2000 kN"),
        ("200 MPa", "0.2 deg", "1243 kN"),
        ("200 MPa", "0.5 deg", "614 kN"),
        ("100 MPa", "0.1 deg", "3388 kN"),
        ("50 MPa", "0.1 deg", "4250 kN"),
        ("400 MPa", "0.1 deg", "1243 kN"),
        ("600 MPa", "0.1 deg", "931 kN"),
        ("50 MPa", "0.25 deg", "2956 kN"),
        ("200 MPa", "0.25 deg", "1063 kN"),
        ("400 MPa", "0.25 deg", "614 kN"),
        ("600 MPa", "0.25 deg", "407 kN"),
    ] {
        let ratio = book.law(StressRatioAtAngle {
            outside_diameter,
            inside_diameter,
            thickness: q("15 mm")?,
            modulus: q(modulus)?,
            greatest_stress,
            angle: q(angle)?,
        });
        let ours = ratio * book.law(RingArea { outside_diameter, inside_diameter }) * greatest_stress;
        place.prints(&format!("packer of {modulus}, joint turned by {angle}"), ours, printed)?;
    }
    Ok(())
}
