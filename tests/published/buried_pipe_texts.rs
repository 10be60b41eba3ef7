//! Buried flexible pipe, page by page: A. P. Moser, Buried Pipe Design, pp. 91 and 113 (buckling in soil); A. Howard,
//! Inspecting Pipeline Installation, p. 261 (modified Iowa).
//! The PE handbook's ring deflections and ASTM F1216 are recalled. B. Guo and G. Liu, Applied Drilling Circulation
//! Systems, p. 40 (flow in the annulus). A trade page on swell.

use crate::found::{Found, Outcome, close, holds, law, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::handbook::Table;
use jackpull::law::Law;
use jackpull::laws::collapse::CriticalPressure;
use jackpull::laws::deflection::{BuoyantDeflection, IowaDeflection};
use jackpull::laws::outside_pressure::{NetOutsidePressure, SupportedCollapse};
use jackpull::laws::reaming::{AnnularFlowLoss, ReamingFluid, ReturnVelocity, SpoilVolume};
use jackpull::quantity::{Length, Pressure, Ratio, Velocity};
use jackpull::yaml::Field;
use std::sync::Arc;

pages!(
    factors_of_buckling_page_113,
    factors_of_the_iowa_formula,
    close_fit_is_seven_times,
    ten_become_thirteen,
    hole_volume_of_a_12_in_reamer,
);

fn of(table: &Table<Field<Ratio>>, key: &str) -> Result<Ratio, crate::found::Stop> {
    Ok(needed(table.get(key), || key.to_owned())?.value.value)
}

/// 2.5 for cover of two diameters and more, 3.0 below: a sixth less of allowable pressure.
fn factors_of_buckling_page_113(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let table = handbook.collapse_support()?;
    let (deep, shallow) = (of(table, "buckling_deep")?, of(table, "buckling_shallow")?);
    near(found, "deep over shallow", deep / shallow, "0.8333", "0.0005");
    near(found, "factor below two diameters", shallow, "3.0", "0.05");
    Ok(())
}

/// Bedding generally 0.1, 0.083 to 0.110; lag 1.5, but 1.0 with the prism load. In a plain bore with 0.1 and no lag the
/// formula is the earth load deflection of the PE handbook, 0.0125 P 12 (DR - 1)³ / E.
fn factors_of_the_iowa_formula(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let table = handbook.deflection_factor()?;
    let ring = IowaDeflection {
        lag: of(table, "lag_prism")?,
        bedding: q("0.1"),
        pressure: q("2 psi"),
        modulus: q("28000 psi"),
        outside_diameter: q("11 in"),
        wall: q("1 in"),
        soil_modulus: q("0 psi"),
    };
    let more = IowaDeflection { bedding: of(table, "bedding_most")?, ..ring };
    near(found, "bedding at its worst", more.value() / ring.value(), "1.10", "0.005");
    let later = IowaDeflection { lag: of(table, "lag")?, ..ring };
    near(found, "with the lag", later.value() / ring.value(), "1.5", "0.005");
    // 0.061 of the soil modulus counts beside two thirds of E / (DR - 1)³: 500 psi of soil against 18.67 psi of pipe.
    let held = IowaDeflection { soil_modulus: q("500 psi"), ..ring };
    near(found, "with soil beside", ring.value() / held.value(), "2.634", "0.0005");
    Ok(())
}

/// Eq. X1.1 with K = 7 is seven times the unsupported ring; unproved grout gives nothing.
fn close_fit_is_seven_times(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let table = handbook.collapse_support()?;
    let free = law(CriticalPressure {
        modulus: q("28000 psi"),
        poisson: q("0.45"),
        dimension_ratio: q("17"),
        ovality_factor: q("0.64"),
        tension_factor: q("1"),
    });
    for (key, printed) in [("close_fit", "7"), ("none", "1")] {
        let held = SupportedCollapse {
            enhancement: of(table, key)?,
            modulus: q("28000 psi"),
            poisson: q("0.45"),
            dimension_ratio: q("17"),
            ovality_factor: q("0.64"),
        };
        near(found, key, held.value() / free, printed, "0.0005");
    }
    Ok(())
}

/// 50 years, DR 17: 40 ft of water (Najafi 2010, Table 5.1); a main at 6 m under water to the surface with a full
/// vacuum has 58.8 + 101.3 kPa to bear, which is more than its ideal 119 kPa.
#[test]
fn vacuum_in_a_main_under_water() {
    let pressure = law(NetOutsidePressure {
        density: q("1000 kg/m3"),
        height: q("6 m"),
        added: q("101.325 kPa"),
        inside: q("0 kPa"),
    });
    assert!((pressure - q::<Pressure>("160.2 kPa")).abs() <= q("0.05 kPa"), "{pressure:?}");
    assert!(pressure > 40.0 * q::<Length>("0.3048 m") / q::<Length>("1 m") * q::<Pressure>("9.80665 kPa"));
    let filled = law(NetOutsidePressure {
        density: q("1000 kg/m3"),
        height: q("6 m"),
        added: q("0 kPa"),
        inside: q("58.8399 kPa"),
    });
    assert!(filled.abs() < q("1 Pa"), "{filled:?}");
}

/// d = 0.1169 gamma r⁴ / (E t³/12), in inches: 0.0361 lb/in3, r 6 in, t 1 in, 50,000 psi.
#[test]
fn buoyant_deflection_in_inches() {
    let got = law(BuoyantDeflection {
        unit_weight: q("0.0361 lbf/in3"),
        outside_diameter: q("12 in"),
        wall: q("1 in"),
        modulus: q("50000 psi"),
    });
    let expected = 0.1169 * 0.0361 * 1296.0 * 12.0 / 50_000.0;
    assert!((got.value / expected - 1.0).abs() < 1e-9, "{got:?}");
}

/// Swell: 10 yd3 in the ground are 13 loose at 30 %; clay 40, loam 25, sand and gravel 12 %.
fn ten_become_thirteen(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let spoil = |swell: Ratio| {
        law(SpoilVolume { bore: q("1 yd"), pilot: q("0 m"), length: q("1 yd"), swell_factor: q::<Ratio>("1") + swell })
    };
    near(found, "30 %", spoil(q("30 %")) / spoil(q("0 %")), "1.3", "0.0005");
    let table = handbook.soil_swell()?;
    for (key, printed) in [("clay", "1.40"), ("loam", "1.25"), ("gravel", "1.12"), ("sand", "1.12")] {
        near(found, key, spoil(of(table, key)?) / spoil(q("0 %")), printed, "0.005");
    }
    Ok(())
}

/// 144 over 24.5: 5.88 gal/ft (exactly 5.875). Sand twice of it, clay three to five times.
fn hole_volume_of_a_12_in_reamer(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let fluid = |fluid_ratio: Ratio, pilot: &str| {
        law(ReamingFluid { bore: q("12 in"), pilot: q(pilot), length: q("1 ft"), fluid_ratio })
    };
    near(found, "12 in hole", fluid(q("1"), "0 in"), "5.88 gal_us", "0.006 gal_us");
    let hole = SpoilVolume { bore: q("12 in"), pilot: q("0 in"), length: q("1 ft"), swell_factor: q("1") };
    near(found, "soil of the 12 in hole", hole.value(), "5.88 gal_us", "0.006 gal_us");
    near(found, "12 in hole less a 6 in pilot", fluid(q("1"), "6 in") / fluid(q("1"), "0 in"), "0.75", "0.0005");
    let table = handbook.fluid_demand()?;
    for (key, low, high) in [("sand", "11.75 gal_us", None), ("clay", "17.63 gal_us", Some("29.38 gal_us"))] {
        let row = needed(table.get(key), || key.to_owned())?;
        near(found, key, fluid(row.value.low.value, "0 in"), low, "0.005 gal_us");
        holds(found, "a high end where one is printed", row.value.high.is_some() == high.is_some());
        if let (Some(got), Some(printed)) = (row.value.high.as_ref(), high) {
            near(found, key, fluid(got.value, "0 in"), printed, "0.005 gal_us");
        }
    }
    Ok(())
}

/// Eq. 2.59: mu v / (1000 g²) + tau / (200 g), psi per foot; in SI 20.88 and 166.7. Here 48 and 6 of the narrow slot, a
/// fifth and a fiftieth of a per cent off.
#[test]
fn annular_flow_loss_page_40() {
    let mut found = Found::new();
    let loss = AnnularFlowLoss {
        plastic_viscosity: q("0.02 Pa*s"),
        velocity: q("0.5 ft/s"),
        yield_point: q("0 Pa"),
        bore: q("18 in"),
        outside_diameter: q("12 in"),
        length: q("1000 ft"),
    };
    // 20 cP, slow enough to stay laminar: 20 x 0.5 / (1000 x 36) x 1000 = 0.27778 psi.
    close(&mut found, "viscous part", law(loss), "0.27778 psi", 0.003);
    let gelled = AnnularFlowLoss { plastic_viscosity: q("0 Pa*s"), yield_point: q("0.15 psf"), ..loss };
    // 15 lbf/100 ft2: 15 / (200 x 6) x 1000 = 12.5 psi.
    close(&mut found, "yield part", law(gelled), "12.5 psi", 0.000_5);
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// Continuity: 500 L/min beside 0.4 m in 0.6 m is 0.0531 m/s; a pipe pulled at 1 m/min adds four fifths of its speed.
#[test]
fn returns_beside_the_pipe() {
    let returns = |flow: &str, pull_rate: &str| {
        law(ReturnVelocity { flow: q(flow), pull_rate: q(pull_rate), bore: q("0.6 m"), outside_diameter: q("0.4 m") })
    };
    assert!((returns("500 L/min", "0 m/min") - q::<Velocity>("0.05305 m/s")).abs() <= q("0.00001 m/s"));
    assert!((returns("0 L/min", "1 m/min") - q::<Velocity>("0.8 m/min")).abs() <= q("0.0001 m/min"));
}
