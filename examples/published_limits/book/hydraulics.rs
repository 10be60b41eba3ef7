//! Part-full circular pipes and self-cleaning slopes.

use super::{Book, Outcome, Read, Topic, q};
use jackpull::laws::hydraulics::{Flow, ManningVelocity, SlopeForVelocity};
use jackpull::laws::part_full::{FlowArea, HydraulicRadius, WettedAngle};
use jackpull::quantity::{Area, Length, Ratio, Velocity, VolumeRate};
use std::error::Error;

pub(crate) const TOPIC: Topic = Topic { name: "hydraulics", title: "Hydraulics", write };

fn write(book: &Book) -> Outcome {
    elements_of_a_circle(book)?;
    worksheets(book)?;
    semicircle(book)?;
    least_slopes(book)
}

fn section(book: &Book, inside_diameter: &str, depth_ratio: &str) -> Result<(Area, Length), Box<dyn Error>> {
    let inside_diameter = q(inside_diameter)?;
    let wetted_angle = book.law(WettedAngle { depth_ratio: q(depth_ratio)? });
    let radius = book.law(HydraulicRadius { inside_diameter, wetted_angle });
    Ok((book.law(FlowArea { inside_diameter, wetted_angle }), radius))
}

/// Depth ratio; area over D², radius and perimeter over D.
fn elements_of_a_circle(book: &Book) -> Outcome {
    let table = book.at("chow_1959", "Table 2-1, in a reproduction to six digits", Read::SecondHand)?;
    let why = "last digits of the reproduction are off here and there";
    for (depth, area, radius, perimeter) in [
        ("0.05", "0.014681 m2", "0.032551 m", "0.451027 m"),
        ("0.10", "0.040875 m2", "0.063520 m", "0.643501 m"),
        ("0.15", "0.073875 m2", "0.092878 m", "0.795399 m"),
        ("0.55", "0.442616 m2", "0.264886 m", "1.670964 m"),
        ("0.60", "0.492028 m2", "0.277644 m", "1.772154 m"),
        ("0.65", "0.540418 m2", "0.288148 m", "1.875489 m"),
        ("0.70", "0.587230 m2", "0.296235 m", "1.982313 m"),
        ("0.75", "0.631852 m2", "0.301687 m", "2.094395 m"),
    ] {
        let ours = section(book, "1 m", depth)?;
        table.about(&format!("area, D 1 m, depth {depth}"), ours.0, area, "0.000002 m2", why)?;
        let ours = section(book, "1 m", depth)?;
        table.about(&format!("hydraulic radius, depth {depth}"), ours.1, radius, "0.000002 m", why)?;
        let ours = section(book, "1 m", depth)?;
        table.about(&format!("perimeter, depth {depth}"), ours.0 / ours.1, perimeter, "0.000001 m", why)?;
    }
    Ok(())
}

fn worksheets(book: &Book) -> Outcome {
    let sheet = book.at("a shared worksheet on Manning flow", "8 in at 70 % and 4 in half full", Read::Page)?;
    for (inside_diameter, depth, area, perimeter, radius) in [
        ("203.2 mm", "0.70", "0.0242 m2", "0.4028 m", "0.060195 m"),
        ("101.6 mm", "0.50", "0.0041 m2", "0.1596 m", "0.0254 m"),
    ] {
        let ours = section(book, inside_diameter, depth)?;
        sheet.prints(&format!("area of {inside_diameter} at {depth}"), ours.0, area)?;
        let ours = section(book, inside_diameter, depth)?;
        sheet.prints(&format!("perimeter of {inside_diameter} at {depth}"), ours.0 / ours.1, perimeter)?;
        let ours = section(book, inside_diameter, depth)?;
        sheet.prints(&format!("hydraulic radius of {inside_diameter} at {depth}"), ours.1, radius)?;
    }
    Ok(())
}

/// D 1.5 m half full, 0.3 m3/s, n 0.02: 1 in 5864.
fn semicircle(book: &Book) -> Outcome {
    let problem = book.at("scilab_companion_2159", "problem 7.9, whose code prints no answer", Read::Worked)?;
    let (area, hydraulic_radius) = section(book, "1.5 m", "0.50")?;
    let velocity = q::<VolumeRate>("0.3 m3/s")? / area;
    let slope = book.law(SlopeForVelocity { velocity, hydraulic_radius, roughness: q("0.02")? });
    problem.prints("slope of a half full channel", slope, "0.0001705")?;
    let velocity = book.law(ManningVelocity { hydraulic_radius, slope: q("0.0001705")?, roughness: q("0.02")? });
    let flow = book.law(Flow { area, velocity });
    problem.about("flow back from that slope", flow, "0.3 m3/s", "0.0005 m3/s", "the slope has four digits")
}

/// Slopes for 2.0 ft/s in the full pipe at n 0.013, and the velocity that they give.
fn least_slopes(book: &Book) -> Outcome {
    let page = book.at("ten_states", "chapter 33, least slopes", Read::Recalled)?;
    let worked = book.at("ten_states", "velocity of the full pipe at these slopes", Read::Worked)?;
    let roughness = || -> Result<Ratio, Box<dyn Error>> {
        let row = book.handbook.manning_n()?.find(|row| row.material.value.0 == "any, gravity sewer");
        Ok(book.row(row, "roughness of any gravity sewer")?.n.value)
    };
    let full = |size: &str, slope: Ratio| -> Result<Velocity, Box<dyn Error>> {
        let (_, hydraulic_radius) = section(book, size, "1")?;
        Ok(book.law(ManningVelocity { hydraulic_radius, slope, roughness: roughness()? }))
    };
    let least = |size: &str| -> Result<Ratio, Box<dyn Error>> {
        let (inches, hair) = (q::<Length>(size)?, q::<Length>("0.001 mm")?);
        let row = book.handbook.sewer_min_slope()?.find(|row| (row.size.value - inches).abs() < hair);
        Ok(book.row(row, size)?.slope.value)
    };
    for (size, slope, velocity) in [
        ("8 in", "0.40 %", "2.19 ft/s"),
        ("10 in", "0.28 %", "2.13 ft/s"),
        ("12 in", "0.22 %", "2.13 ft/s"),
        ("14 in", "0.17 %", "2.07 ft/s"),
        ("15 in", "0.15 %", "2.04 ft/s"),
        ("16 in", "0.14 %", "2.06 ft/s"),
        ("18 in", "0.12 %", "2.06 ft/s"),
        ("21 in", "0.10 %", "2.08 ft/s"),
        ("24 in", "0.08 %", "2.04 ft/s"),
        ("27 in", "0.067 %", "2.02 ft/s"),
        ("30 in", "0.058 %", "2.01 ft/s"),
        ("36 in", "0.046 %", "2.02 ft/s"),
        ("42 in", "0.037 %", "2.01 ft/s"),
    ] {
        page.prints(&format!("least slope of {size}"), least(size)?, slope)?;
        worked.prints(&format!("velocity of {size} at it"), full(size, least(size)?)?, velocity)?;
    }
    let code =
        book.at("a US city code that copies the slopes, name left out on purpose", "row of 10 in", Read::Page)?;
    let why = "a misprint: at 0.20 % the full pipe runs at 1.80 ft/s, below the 2 ft/s of the code itself";
    code.is_not_followed("least slope of 10 in", least("10 in")?, "0.20 %", why)?;
    let other =
        book.at("another US city code that copies them, name left out on purpose", "16 and 18 in", Read::Page)?;
    for (size, printed) in [("16 in", "0.15 %"), ("18 in", "0.14 %")] {
        let why = "the row seems to be that of the size before it; the lesser slope is enough for 2 ft/s";
        other.is_not_followed(&format!("least slope of {size}"), least(size)?, printed, why)?;
    }
    let worked = book.at("ten_states", "velocity of the full pipe at the misprint", Read::Worked)?;
    worked.prints("velocity of 10 in at 0.20 %", full("10 in", q("0.20 %")?)?, "1.80 ft/s")
}
