//! The long worked pulls: a river crossing, a short example, and the longest pull in a dry pipe.

use super::{Book, Outcome, Read, Topic, q};
use jackpull::laws::collapse::FluidHead;
use jackpull::laws::pe::{AllowableTension, AxialStress, BendingStress};
use jackpull::laws::pull::{Capstan, HydrokineticDrag, NetWeightInFluid, PipeWeight, StraightPull};
use jackpull::quantity::{Area, Force, Length, LineLoad, MassDensity, Ratio, UnitWeight};
use std::error::Error;

pub(crate) const TOPIC: Topic = Topic { name: "worked_pull", title: "Worked pulls", write };

fn write(book: &Book) -> Outcome {
    river_crossing(book)?;
    chapter_12_example_1(book)?;
    example_of_page_226(book)?;
    longest_dry_pull(book)
}

/// 24 in DR 11 over two bends of 10 deg, in slurry of 1.5. Water is 0.0361 lb/in3.
fn river_crossing(book: &Book) -> Outcome {
    let example = book.at("ppi_handbook_2008", "chapter 12, appendix B", Read::Recalled)?;
    let (outside_diameter, water) = (q::<Length>("24 in")?, q::<MassDensity>("0.0361 lb/in3")?);
    let wall = outside_diameter / 11.0;
    let density = water * q::<Ratio>("0.95")?;
    let on_ground = book.law(PipeWeight { outside_diameter, wall, density, average_wall: q("1")? });
    example.about("weight of the pipe", on_ground, "61.54 lbf/ft", "0.01 lbf/ft", "water has three digits")?;
    let heavy = book.cited(book.handbook.ratio("pull.fluid_heavy")?);
    let net = book.law(NetWeightInFluid {
        pipe_weight: on_ground,
        outside_diameter,
        wall,
        fluid_density: water * heavy,
        contents_density: MassDensity::default(),
    });
    example.about(
        "net weight in slurry, upward",
        net,
        "-232.41 lbf/ft",
        "0.015 lbf/ft",
        "the weight is taken rounded",
    )?;
    let drag = book.law(HydrokineticDrag {
        pressure: book.cited(book.handbook.pressure("pull.annular")?),
        bore: 1.5 * outside_diameter,
        outside_diameter,
    });
    example.prints("drag of the slurry", drag, "2827 lbf")?;
    let dragged = |friction: &str, net_weight: LineLoad, length: &str| -> Result<Force, Box<dyn Error>> {
        Ok(book.law(StraightPull { friction: q(friction)?, net_weight, length: q(length)?, rise: q("0 deg")? }))
    };
    let bend = |tension: Force, friction: &str| -> Result<Force, Box<dyn Error>> {
        Ok(book.law(Capstan { tension, friction: q(friction)?, angle: q("10 deg")? }))
    };
    let four_figures = "four figures are printed";
    let at_a = bend(dragged("0.4", on_ground, "970 ft")?, "0.4")?;
    example.about("tension at the pipe entry", at_a, "25610 lbf", "5 lbf", four_figures)?;
    let lifted = q::<Length>("35 ft")? * net.abs();
    let left_behind = bend(dragged("0.4", on_ground, "401.07 ft")?, "0.4")?;
    let at_b = bend(at_a + dragged("0.25", net, "401.07 ft")? + lifted - left_behind, "0.25")?;
    example.about("tension after the entry bend", at_b, "48530 lbf", "5 lbf", four_figures)?;
    let axial = book.law(AxialStress { tension: at_a + drag, outside_diameter, wall });
    example.prints("stress of tension and drag", axial, "190.1 psi")?;
    let bending = book.law(BendingStress { modulus: q("57500 psi")?, outside_diameter, radius: q("1021 ft")? });
    example.prints("stress of bending on 1,021 ft", bending, "56.3 psi")
}

fn chapter_12_example_1(book: &Book) -> Outcome {
    let example = book.at("ppi_handbook_2008", "chapter 12, example 1: 6 in DR 11", Read::Recalled)?;
    let head = book.law(FluidHead { density: q("75 lb/ft3")?, height: q("18 ft")? });
    example.about("head of 18 ft of slurry", head, "9.37 psi", "0.0051 psi", "9.375 cut off after three figures")?;
    let outside_diameter = q::<Length>("6.625 in")?;
    let (stress, wall) = (q("1150 psi")?, outside_diameter / 11.0);
    let ours = book.law(AllowableTension { stress, outside_diameter, wall, weld_factor: q("1")? });
    example.about("safe pull at 1,150 psi", ours, "13100 lbf", "50 lbf", "three figures are printed")
}

/// 600 ft of 4 in DR 11 with 2.2 bends of 90 deg, each times 1.6; a third stands for friction and bends of the path.
fn example_of_page_226(book: &Book) -> Outcome {
    let example = book.at("ttp_2010", "p. 226, by Eq. 5.18 and 5.22", Read::Page)?;
    let outside_diameter = q::<Length>("4.500 in")?;
    let own = book.law(PipeWeight {
        outside_diameter,
        wall: outside_diameter / 11.0,
        density: book.row(book.handbook.pe_material()?.get("hdpe"), "hdpe")?.density.value,
        average_wall: book.cited(book.handbook.ratio("pe.average_wall")?),
    });
    example.prints("net weight of 4 in DR 11, upward", 4.5 * 4.5 * q::<LineLoad>("0.5 lbf/ft")? - own, "7.8 lbf/ft")?;
    let straight = book.law(StraightPull {
        friction: q::<Ratio>("1")? / 3.0,
        net_weight: q("-7.8 lbf/ft")?,
        length: q("600 ft")?,
        rise: q("0 deg")?,
    });
    example.prints("peak pull over 600 ft", straight * 1.6_f64.powf(2.2), "4387 lbf")?;
    let page = book.at("ttp_2010", "p. 220, Eq. 5.13", Read::Page)?;
    let friction = book.cited(book.handbook.ratio("pull.friction_fluid")?);
    let bend = book.law(Capstan { tension: q("1 kN")?, friction, angle: q("90 deg")? });
    page.prints("1 kN after a bend of 90 deg", bend, "1.6 kN")
}

/// PE-HD of 9.7 kN/m3, slopes to 10 deg, friction 0.8: whatever the diameter. The weld factor was inferred.
fn longest_dry_pull(book: &Book) -> Outcome {
    let page = book.at("stein_2001", "section 5.3.2.6.3.1.1.1, longest pull", Read::Page)?;
    let (outside_diameter, wall) = (q::<Length>("200 mm")?, q::<Length>("18.2 mm")?);
    let section: Area = core::f64::consts::PI * (outside_diameter - wall) * wall;
    let weld_factor = book.cited(book.handbook.ratio("pe.weld_unknown")?);
    let bears = book.law(AllowableTension { stress: q("8 N/mm2")?, outside_diameter, wall, weld_factor });
    let friction = book.row(book.handbook.pull_rule()?.get("dry_friction"), "dry friction")?;
    let metre = book.law(StraightPull {
        friction: friction.ratio.as_ref().ok_or("dry friction without a ratio")?.value,
        net_weight: section * q::<UnitWeight>("9.7 kN/m3")?,
        length: q("1 m")?,
        rise: q("10 deg")?,
    });
    let ours = q::<Length>("1 m")? * (bears / metre);
    page.about("longest pull in a dry pipe", ours, "680 m", "7 m", "about; the formula gives 686 m")
}
