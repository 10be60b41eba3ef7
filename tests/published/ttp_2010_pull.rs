//! M. Najafi, Trenchless Technology Piping, 2010: pp. 217-226 and 270-273 on curved pulls, small rigs and collapsed
//! bores, read page by page. What an independent check worked out on the same equations stands beside.

use crate::found::{Found, Outcome, holds, law, near, needed, pages, q, ratio};
use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::pull::{NetWeightInFluid, PipeWeight};
use jackpull::laws::pull_curved::{
    MeanCurveRadius, SurfaceCurveLength, TensionAfterEntryCurve, TensionAfterLevel, TensionAtEntry, TensionAtExit,
};
use jackpull::laws::pull_rules::{GroundLoadPull, LesserBore, SmallRigPull, SmallRigPullLimit, UnplannedBends};
use jackpull::quantity::{Angle, Force, Length, LineLoad, MassDensity, Ratio};
use std::sync::Arc;

pages!(half_of_the_safe_strength_page_224, lesser_bore_and_overcut_page_347, full_chain_over_the_short_rule);

fn rule(handbook: &Handbook, key: &str) -> Result<jackpull::handbook::PullRuleRow, crate::found::Stop> {
    Ok(needed(handbook.pull_rule()?.get(key), || key.to_owned())?.value.clone())
}

/// Small rigs keep the peak to about half of the safe pull strength: 3,762 lb of the 7,524 lb of the example.
fn half_of_the_safe_strength_page_224(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let share = needed(rule(handbook, "small_rig_share")?.ratio, || "the share".to_owned())?.value;
    let limit = SmallRigPullLimit { allowable: q("7524 lbf"), share };
    near(found, "limit of the small rig rule", limit.value(), "3762 lbf", "0.5 lbf");
    Ok(())
}

/// 1.5 times at every size up to 24 in, p. 347; beyond, pipe plus 12 in, which the guidelines have too: 48 in for 36
/// in.
fn lesser_bore_and_overcut_page_347(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let row = rule(handbook, "lesser_bore")?;
    let times = needed(row.ratio, || "the multiple".to_owned())?.value;
    let plus = needed(row.length, || "the addition".to_owned())?.value;
    for (pipe, printed) in [("4.5 in", "6.75 in"), ("10 in", "15 in"), ("24 in", "36 in"), ("36 in", "48 in")] {
        let bore = LesserBore { outside_diameter: q(pipe), times, plus };
        near(found, &format!("lesser bore of {pipe}"), bore.value(), printed, "0.01 in");
    }
    Ok(())
}

/// A string on the ground and in the bore of the same pipe.
#[derive(Clone, Copy)]
struct Crossing {
    pipe_weight: LineLoad,
    net_weight: LineLoad,
    friction_ground: Ratio,
    friction_bore: Ratio,
    angles: [Angle; 2],
    excess: Length,
    lengths: [Length; 3],
    depth: Length,
}

impl Crossing {
    fn tensions(&self) -> [Force; 4] {
        let Self { pipe_weight, net_weight, friction_ground, friction_bore, depth, .. } = *self;
        let [pipe_side_angle, rig_side_angle] = self.angles;
        let [entry, level, exit] = self.lengths;
        let string = self.excess + entry + level + exit;
        let at_entry = law(TensionAtEntry { pipe_side_angle, friction_ground, pipe_weight, string });
        let after_entry = law(TensionAfterEntryCurve {
            tension_at_entry: at_entry,
            pipe_side_angle,
            friction_ground,
            friction_bore,
            pipe_weight,
            net_weight,
            length: entry,
            depth,
        });
        let after_level = law(TensionAfterLevel {
            tension_after_entry: after_entry,
            pipe_side_angle,
            friction_ground,
            friction_bore,
            pipe_weight,
            net_weight,
            length: level,
        });
        let at_exit = law(TensionAtExit {
            tension_after_level: after_level,
            pipe_side_angle,
            rig_side_angle,
            friction_ground,
            friction_bore,
            pipe_weight,
            net_weight,
            length: exit,
            depth,
        });
        [at_entry, after_entry, after_level, at_exit]
    }
}

/// HDPE of 0.955 in fluid of a specific gravity, on a bore of 400 ft that goes 10 ft deep at 20 deg.
fn short_crossing(handbook: &Handbook, dimension_ratio: &str, gravity: &str) -> Result<Crossing, crate::found::Stop> {
    let outside_diameter = q::<Length>("4.5 in");
    let wall = outside_diameter / q::<Ratio>(dimension_ratio);
    let water = q::<MassDensity>("62.4 lb/ft3");
    let pipe_weight =
        law(PipeWeight { outside_diameter, wall, density: water * q::<Ratio>("0.955"), average_wall: q("1") });
    let net_weight = law(NetWeightInFluid {
        pipe_weight,
        outside_diameter,
        wall,
        fluid_density: water * q::<Ratio>(gravity),
        contents_density: MassDensity::default(),
    });
    let curve = law(SurfaceCurveLength { depth: q("10 ft"), angle: q("20 deg") });
    Ok(Crossing {
        pipe_weight,
        net_weight,
        friction_ground: ratio(handbook, "pull.friction_ground")?,
        friction_bore: ratio(handbook, "pull.friction_fluid")?,
        angles: [q("20 deg"); 2],
        excess: q("40 ft"),
        lengths: [curve, q::<Length>("400 ft") - 2.0 * curve, curve],
        depth: q("10 ft"),
    })
}

/// With the inputs that the short rule is written for the peak of the chain is 1.12, 1.08 and 1.05 times the rule (DR
/// 7.3, 11, 21, tail of a tenth). In fluid of 1.1 the pull after the entry curve is the highest, 55 % above the rule.
fn full_chain_over_the_short_rule(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (dimension_ratio, gravity, peak_at, printed) in
        [("7.3", "1.5", 3, "1.12"), ("11", "1.5", 3, "1.08"), ("21", "1.5", 3, "1.05"), ("7.3", "1.1", 1, "1.55")]
    {
        let crossing = short_crossing(handbook, dimension_ratio, gravity)?;
        let tensions = crossing.tensions();
        let short = law(SmallRigPull { bore_length: q("400 ft"), net_weight: crossing.net_weight, bends: q("0") });
        let what = format!("chain over short rule, DR {dimension_ratio} in {gravity}");
        near(found, &what, tensions[peak_at] / short, printed, "0.005");
        let highest = tensions.iter().all(|tension| *tension <= tensions[peak_at]);
        holds(found, &format!("{what}: it is the highest"), highest);
    }
    Ok(())
}

/// Eq. 5.18 in the example of p. 226: 600 ft of 7.8 lb/ft; one planned bend and 600/500 unplanned: 4,387 lb.
#[test]
fn example_page_226() {
    let unplanned = law(UnplannedBends { bore_length: q("600 ft"), rod_diameter: q("2 in") });
    assert!((unplanned.value - 1.2).abs() < 1e-9);
    let bends = unplanned + q::<Ratio>("1");
    let pull = law(SmallRigPull { bore_length: q("600 ft"), net_weight: q("-7.8 lbf/ft"), bends });
    assert!((pull - q::<Force>("4387 lbf")).abs() <= q("0.5 lbf"), "{pull:?}");
}

/// Eq. 6.3, 4 in pipe (4.5 in), 100 ft, 5 ft of 100 lb/ft3, friction 0.3: "in excess of 17,500 lb", that is 17,671 lb.
#[test]
fn full_prism_page_270() {
    let pull = law(GroundLoadPull {
        unit_weight: q("100 pcf"),
        cover: q("5 ft"),
        outside_diameter: q("4.5 in"),
        collapsed_length: q("100 ft"),
        friction: q("0.3"),
    });
    assert!((pull - q::<Force>("17671 lbf")).abs() <= q("0.5 lbf"), "{pull:?}");
    assert!(pull > q("17500 lbf"));
    // The planning guide of the same pages keeps 11.3 % of it: 2,000 lb; it under-predicts the bound 8.8 times.
    assert!(((q::<Force>("2000 lbf") / pull).value - 0.113).abs() < 0.000_5);
}

/// The river crossing of the PE handbook by the same equations: 25,606 and 48,529 lb; curves 401.07 and 267.38 ft, mean
/// radii 2,298 and 1,021 ft.
#[test]
fn river_crossing_by_the_chain() {
    for (angle, length, radius) in [("10 deg", "401.07 ft", "2298 ft"), ("15 deg", "267.38 ft", "1021 ft")] {
        let got = law(SurfaceCurveLength { depth: q("35 ft"), angle: q(angle) });
        assert!((got - q::<Length>(length)).abs() <= q("0.005 ft"), "{got:?}");
        let got = law(MeanCurveRadius { depth: q("35 ft"), angle: q(angle) });
        assert!((got - q::<Length>(radius)).abs() <= q("0.5 ft"), "{got:?}");
    }
    let crossing = Crossing {
        pipe_weight: q("61.546 lbf/ft"),
        net_weight: q("-232.417 lbf/ft"),
        friction_ground: q("0.4"),
        friction_bore: q("0.25"),
        angles: [q("10 deg"), q("15 deg")],
        excess: q("100 ft"),
        lengths: [q("401.07 ft"), q("201.55 ft"), q("267.38 ft")],
        depth: q("35 ft"),
    };
    let [at_entry, after_entry, ..] = crossing.tensions();
    assert!((at_entry - q::<Force>("25606 lbf")).abs() <= q("1 lbf"), "{at_entry:?}");
    assert!((after_entry - q::<Force>("48529 lbf")).abs() <= q("2 lbf"), "{after_entry:?}");
}

/// Straight and level, DN 315 SDR 7.4, 180 m and 10 m over, fluid of 1.05: 32.4 kN at the entry, and the short rule
/// says 27.7 kN only.
#[test]
fn entry_governs_in_light_fluid() {
    let outside_diameter = q::<Length>("315 mm");
    let wall = outside_diameter / 7.4;
    let pipe_weight = law(PipeWeight { outside_diameter, wall, density: q("955 kg/m3"), average_wall: q("1") });
    let entry =
        law(TensionAtEntry { pipe_side_angle: q("0 deg"), friction_ground: q("0.5"), pipe_weight, string: q("190 m") });
    assert!((entry - q::<Force>("32.4 kN")).abs() <= q("0.05 kN"), "{entry:?}");
    let net_weight = law(NetWeightInFluid {
        pipe_weight,
        outside_diameter,
        wall,
        fluid_density: q("1050 kg/m3"),
        contents_density: MassDensity::default(),
    });
    let short = law(SmallRigPull { bore_length: q("180 m"), net_weight, bends: q("0") });
    assert!((short - q::<Force>("27.7 kN")).abs() <= q("0.05 kN"), "{short:?}");
}

/// Degrees taken for radians are out of range: 12 would multiply the pull by 37.
#[test]
fn degrees_as_radians_are_doubted() {
    let entry = TensionAtEntry {
        pipe_side_angle: q("12 rad"),
        friction_ground: q("0.3"),
        pipe_weight: q("1 kN/m"),
        string: q("100 m"),
    };
    assert!(!entry.in_range());
}
