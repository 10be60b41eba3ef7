//! D. Stein, Instandhaltung von Kanalisationen, 2001, online edition, sections 5.3.2.6.3.1.1.1 (straight line) and .2
//! (curved line), read; the pictures of the formulas were missing, their form follows from the list of symbols.

use crate::found::{Found, Outcome, allowed_stress, holds, law, near, needed, pages, pull_stress, q, ratio};
use jackpull::Handbook;
use jackpull::check::Verdict;
use jackpull::law::Law;
use jackpull::laws::pe::AllowableTension;
use jackpull::laws::pull::{NetWeightInFluid, PipeWeight, StraightPull};
use jackpull::quantity::{Length, LineLoad, MassDensity, Pressure, Ratio};
use std::sync::Arc;

pages!(
    stress_of_pe_hd_at_20_and_40_degc,
    warm_and_slow_pull,
    half_way_to_40_degc,
    longest_pull_in_a_dry_pipe,
    longest_pull_in_slurry,
    net_weight_over_own_weight,
);

/// 8 N/mm2 at 20 degC and 5 N/mm2 at 40 degC, for half an hour; no pull above 40 degC.
fn stress_of_pe_hd_at_20_and_40_degc(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (at, printed) in [("20 degC", "8 N/mm2"), ("40 degC", "5 N/mm2")] {
        let (allowed, verdict) = allowed_stress(handbook, "pe80", "gw_321", "0.5 h", at)?;
        near(found, &format!("PE 80 of the worksheet, {at}"), allowed, printed, "0.005 N/mm2");
        holds(found, &format!("{at} is decided"), verdict != Verdict::NotDecided);
    }
    let (_, hot) = allowed_stress(handbook, "pe80", "gw_321", "0.5 h", "41 degC")?;
    holds(found, "41 degC is not decided", hot == Verdict::NotDecided);
    Ok(())
}

/// Factors multiply: 40 degC and over 30 min leave 0.625 x 0.9 = 0.5625.
fn warm_and_slow_pull(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (stress, _) = allowed_stress(handbook, "pe100", "gw_321", "6 h", "40 degC")?;
    near(found, "PE 100, 40 degC, 6 h, over 10 N/mm2", stress / q::<Pressure>("10 N/mm2"), "0.5625", "0.00005");
    Ok(())
}

/// Straight between the two temperatures: 6.5 N/mm2 at 30 degC.
fn half_way_to_40_degc(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (stress, _) = allowed_stress(handbook, "pe80", "gw_321", "0.5 h", "30 degC")?;
    near(found, "PE 80, 30 degC", stress, "6.5 N/mm2", "0.05 N/mm2");
    Ok(())
}

fn outside_diameter() -> Length {
    q("200 mm")
}
fn wall() -> Length {
    q("18.2 mm")
}

/// Length at which the force of a metre of pipe adds up to what the section bears.
fn longest(stress: Pressure, weld_factor: Ratio, friction: Ratio, net_weight: LineLoad, slope: &str) -> Length {
    let bears = AllowableTension { stress, outside_diameter: outside_diameter(), wall: wall(), weld_factor }.value();
    let metre = StraightPull { friction, net_weight, length: q("1 m"), rise: q(slope) }.value();
    q::<Length>("1 m") * (bears / metre)
}

/// l_zul about 680 m for PE-HD of 0.97e-5 N/mm3, slopes to 10 deg, friction 0.8, whatever the diameter; the weld factor
/// 0.8 was inferred from it. With 0.97e-5 the formula gives 686 m: the source rounds.
fn longest_pull_in_a_dry_pipe(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (stress, _) = pull_stress(handbook, "stein_2001", "pe80", "0.5 h")?;
    let section = core::f64::consts::PI * (outside_diameter() - wall()) * wall();
    let weight = section * q::<jackpull::quantity::UnitWeight>("9.7 kN/m3");
    let weld = ratio(handbook, "pe.weld_unknown")?;
    let friction = needed(handbook.pull_rule()?.get("dry_friction"), || "friction".to_owned())?;
    let friction = needed(friction.value.ratio.as_ref(), || "friction".to_owned())?.value;
    let dry = longest(stress, weld, friction, weight, "10 deg");
    near(found, "longest pull", dry, "686 m", "0.5 m");
    let sure = longest(stress, ratio(handbook, "pe.weld_documented")?, friction, weight, "10 deg");
    near(found, "longest pull without a weld factor", sure, "858 m", "0.5 m");
    Ok(())
}

const SDR: [&str; 3] = ["11", "17", "26"];

fn slurry_weight(handbook: &Handbook, sdr: &str) -> Result<(LineLoad, LineLoad), crate::found::Stop> {
    let row = needed(handbook.pe_material()?.get("hdpe"), || "hdpe".to_owned())?;
    let wall = outside_diameter() / q::<Ratio>(sdr);
    let density = row.value.density.value;
    let own = PipeWeight { outside_diameter: outside_diameter(), wall, density, average_wall: q("1") }.value();
    let net = NetWeightInFluid {
        pipe_weight: own,
        outside_diameter: outside_diameter(),
        wall,
        fluid_density: q::<MassDensity>("1000 kg/m3") * ratio(handbook, "pull.fluid_heavy")?,
        contents_density: MassDensity::default(),
    };
    Ok((own, net.value()))
}

/// The same stress in slurry of 1.5 and friction 0.3 reaches 607, 374 and 237 m only (another hand's sum).
fn longest_pull_in_slurry(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (stress, _) = pull_stress(handbook, "stein_2001", "pe80", "0.5 h")?;
    let (weld, friction) = (ratio(handbook, "pe.weld_unknown")?, ratio(handbook, "pull.friction_fluid")?);
    for (sdr, printed) in SDR.iter().zip(["607 m", "374 m", "237 m"]) {
        let (_, net) = slurry_weight(handbook, sdr)?;
        let wall = outside_diameter() / q::<Ratio>(sdr);
        let bears = AllowableTension { stress, outside_diameter: outside_diameter(), wall, weld_factor: weld }.value();
        let metre = StraightPull { friction, net_weight: net, length: q("1 m"), rise: q("0 deg") }.value();
        near(found, &format!("longest pull, SDR {sdr}"), q::<Length>("1 m") * (bears / metre), printed, "0.5 m");
    }
    Ok(())
}

/// 3.75, 6.1 and 9.6 times the own weight, upwards (another hand's sum).
fn net_weight_over_own_weight(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (sdr, (printed, within)) in SDR.iter().zip([("3.75", "0.005"), ("6.1", "0.05"), ("9.6", "0.05")]) {
        let (own, net) = slurry_weight(handbook, sdr)?;
        near(found, &format!("net over own weight, SDR {sdr}"), -net / own, printed, within);
    }
    Ok(())
}

/// A curve multiplies the pull by exp(friction angle).
#[test]
fn curved_line() {
    let after = law(jackpull::laws::pull::Capstan { tension: q("10 kN"), friction: q("0.8"), angle: q("90 deg") });
    let expected = 10_000.0 * (0.8_f64 * core::f64::consts::FRAC_PI_2).exp();
    assert!((after.value / expected - 1.0).abs() < 1e-12);
}
