//! Force that a pipe end is allowed, by maker, standard and annex; the contact in a joint that turns.

use super::{Book, Outcome, Read, Topic, q};
use jackpull::check::Subject;
use jackpull::handbook::Method;
use jackpull::laws::clay::ConcentricEndForce;
use jackpull::laws::concrete::{
    AllowableMeanEndForce, Asce27EndForce, ChineseConcreteEndForce, EdgeShareEndForce, MeanEndStress, MeanShareEndForce,
};
use jackpull::laws::packer::RingArea;
use jackpull::laws::rigid::{ForceFromCapacity, GrpEndForce};
use jackpull::laws::steel::{CodeAxialForce, EffectiveShare, ElasticLocalBuckling, LocalBuckling, SteelEndForce};
use jackpull::laws::turned_joint::StressRatioAtAngle;
use jackpull::quantity::{Area, Force, Length, Measure, Pressure, Ratio};
use std::error::Error;

pub(crate) const TOPIC: Topic = Topic { name: "jacking_capacity", title: "Jacking capacity of pipe ends", write };

fn write(book: &Book) -> Outcome {
    ratings_of_clay(book)?;
    small_concrete_pipe(book)?;
    chinese_annex(book)?;
    schemes_of_concrete(book)?;
    steel(book)?;
    resin_and_any_pipe(book)?;
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

/// Mean stress that each scheme allows on concrete of 50 N/mm2, of a joint closed over its full face.
fn schemes_of_concrete(book: &Book) -> Outcome {
    let factor = |key: &str| -> Result<Ratio, Box<dyn Error>> {
        Ok(book.row(book.handbook.concrete_factor()?.get(key), key)?.factor.value)
    };
    let (end_bearing_area, strength) = (q::<Area>("1 m2")?, q::<Pressure>("50 N/mm2")?);
    let mean = |force: Force| book.law(MeanEndStress { force, end_bearing_area });
    let asce = book.at("asce_27", "longitudinal thrust, concentric and eccentric", Read::Worked)?;
    for (what, key, printed) in
        [("concentric", None, "31.9 N/mm2"), ("eccentric", Some("asce_27_eccentric"), "15.9 N/mm2")]
    {
        let ours = mean(book.law(Asce27EndForce {
            eccentric_share: key.map_or_else(|| Ok(q("1")?), factor)?,
            stress_block: factor("asce_27_block")?,
            phi: factor("asce_27_phi")?,
            load_factor: factor("asce_27_load")?,
            strength,
            end_bearing_area,
        }));
        asce.prints(&format!("concrete of 50 N/mm2, ASCE 27, {what}"), ours, printed)?;
    }
    let stress_ratio = q("0.5")?;
    let en = book.at("en_1916", "annex B, edge stress of a closed joint: 0.5 x 0.6 x 50", Read::Worked)?;
    let edge_share = factor("en_1916_edge")?;
    let ours = mean(book.law(EdgeShareEndForce { stress_ratio, edge_share, end_bearing_area, strength }));
    en.prints("concrete of 50 N/mm2, EN 1916", ours, "15.0 N/mm2")?;
    let guideline = book.at("rc_guideline_2005", "safety of 3.20 on even stress: 50/3.20", Read::Worked)?;
    let ours = mean(book.law(ConcentricEndForce { end_bearing_area, strength, factor: factor("guideline_uniform")? }));
    guideline.prints("concrete of 50 N/mm2, guideline of 2005", ours, "15.6 N/mm2")?;
    let own = book.at("jackpull", "a factor of 2.5 on the edge of a triangle: 50/2.5/2", Read::Worked)?;
    let mean_share = factor("default_mean")?;
    let ours = mean(book.law(MeanShareEndForce { mean_share, end_bearing_area, strength }));
    own.prints("concrete of 50 N/mm2, our default by the mean", ours, "10.0 N/mm2")?;
    let edge_share = factor("default_edge")?;
    let ours = mean(book.law(EdgeShareEndForce { stress_ratio, edge_share, end_bearing_area, strength }));
    own.prints("concrete of 50 N/mm2, our default by the edge", ours, "10.0 N/mm2")
}

/// Casing of 35 ksi by 0.6 of yield, by a third of it, which is our default, and by AISC 360 where it is slender.
fn steel(book: &Book) -> Outcome {
    let factor = |key: &str| -> Result<Ratio, Box<dyn Error>> {
        Ok(book.row(book.handbook.steel_factor()?.get(key), key)?.factor.value)
    };
    let modulus = book.row(book.handbook.steel_pull_stress()?.get("modulus"), "modulus of steel")?.value;
    let yield_strength = book.row(book.handbook.steel_grade()?.get("casing_least"), "casing")?.stress.value;
    let old = book.at("aisc_360", "the older rule, 0.6 of yield on a short column", Read::Worked)?;
    let own = book.at("jackpull", "a third of yield, or 0.6 of local buckling where that is less", Read::Worked)?;
    let slender = book.at("aisc_360", "section E7, D/t 144 past the limit of 91.1", Read::Worked)?;
    for (diameter, wall, by_old, by_third, by_slender) in [
        ("24 in", "0.375 in", "584 kip", "325 kip", None),
        ("48 in", "0.625 in", "1953 kip", "1085 kip", None),
        ("72 in", "0.500 in", "2359 kip", "1310 kip", Some("2084 kip")),
    ] {
        let what = format!("steel {diameter} x {wall} of 35 ksi");
        let (outside_diameter, wall) = (q::<Length>(diameter)?, q::<Length>(wall)?);
        let area = || book.law(RingArea { outside_diameter, inside_diameter: outside_diameter - 2.0 * wall });
        let ours = book.law(CodeAxialForce {
            critical_stress: yield_strength,
            effective_share: q("1")?,
            section_area: area(),
            safety: q::<Ratio>("1")? / q::<Ratio>("0.6")?,
        });
        old.prints(&format!("{what}, 0.6 of yield"), ours, by_old)?;
        let elastic_stress =
            book.law(ElasticLocalBuckling { coefficient: factor("api_elastic")?, modulus, wall, outside_diameter });
        let local_stress = book.law(LocalBuckling {
            yield_strength,
            elastic_stress,
            outside_diameter,
            wall,
            constant: factor("api_constant")?,
            slope: factor("api_slope")?,
            exponent: factor("api_exponent")?,
            compact_ratio: factor("api_compact")?,
            last_ratio: factor("api_end")?,
        });
        let ours = book.law(SteelEndForce {
            section_area: area(),
            yield_strength,
            yield_factor: factor("default_yield")?,
            local_stress,
            local_share: factor("default_local")?,
        });
        own.about(&format!("{what}, our default"), ours, by_third, "0.51 kip", "1084.5 is printed rounded up")?;
        if let Some(printed) = by_slender {
            let effective_share = book.law(EffectiveShare {
                modulus,
                yield_strength,
                outside_diameter,
                wall,
                round_limit: factor("aisc_round")?,
                slope: factor("aisc_slender_slope")?,
                last_limit: factor("aisc_slender_end")?,
            });
            let ours = book.law(CodeAxialForce {
                critical_stress: yield_strength,
                effective_share,
                section_area: area(),
                safety: factor("aisc_omega")?,
            });
            slender.prints(&format!("{what}, AISC 360"), ours, printed)?;
        }
    }
    Ok(())
}

/// 1.75 on the material and 2 for a triangle are the 3.5 of planning; three on polymer concrete, as on clay; twice the
/// force in microtunnelling with any pipe.
fn resin_and_any_pipe(book: &Book) -> Outcome {
    let factor = |key: &str| -> Result<Ratio, Box<dyn Error>> {
        Ok(book.row(book.handbook.jacking_factor()?.get(key), key)?.factor.value)
    };
    let grp = book.at("iso_25780", "factor of 1.75 and a closed joint: 75/3.5 N/mm2 on 0.1 m2", Read::Worked)?;
    let ours = book.law(GrpEndForce {
        greatest_ratio: factor("grp_joint_ratio")?,
        stress_ratio: q("0.5")?,
        end_bearing_area: q("0.1 m2")?,
        axial_strength: q("75 MPa")?,
        material_factor: factor("iso_25780_material")?,
    });
    grp.prints("GRP of 75 N/mm2, closed joint", ours, "2143 kN")?;
    let habit = book.at("trade_practice", "a factor of 3.0 on even stress: 80/3", Read::Worked)?;
    let factor = factor("polymer_habit")?;
    let ours = book.law(ConcentricEndForce { end_bearing_area: q("0.1 m2")?, strength: q("80 MPa")?, factor });
    habit.prints("polymer concrete of 80 N/mm2", ours, "2667 kN")?;
    let page = book.at("ttp_2010", "p. 318, capacity at least twice the force in microtunnelling", Read::Page)?;
    let factor = book.row(book.handbook.steel_factor()?.get("ttp_microtunnel"), "microtunnelling")?.factor.value;
    page.prints(
        "capacity of 1000 kN, any pipe",
        book.law(ForceFromCapacity { capacity: q("1000 kN")?, factor }),
        "500 kN",
    )
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
