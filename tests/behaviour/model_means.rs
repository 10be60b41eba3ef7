//! Friction models along a stretch whose depth changes: the mean against dense sampling, against sums by hand, and cut
//! in two.

use crate::drives::{drive, text};
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::drive::Drive;
use jackpull::law::Law;
use jackpull::laws::silo_mean::MeanSiloStress;
use jackpull::laws::soil::SiloStress;
use jackpull::method::{ModelForce, Over, SoilView, friction_models, model_forces};
use jackpull::quantity::{Length, Measure, Pressure, Ratio, UnitWeight};
use proptest::prelude::*;
use std::f64::consts::{FRAC_PI_4, PI};

const DIAMETER: f64 = 0.4;
/// Low, likely and high coefficient of the fitted sets, as their table has them.
const FITTED: [f64; 3] = [0.02, 0.1, 0.3];

const SAND: &str = "class: medium_to_dense_sand, spt_n: 12";
const LOOSE: &str = "class: loose_sand, spt_n: 8";
const SOIL: &str = "moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 32 deg, surcharge: 5 kPa";

/// A 60 m drive of a 0.4 m pipe under these stretches, invert depth by distance; both pits are among the depths.
fn made(depths: &[(f64, f64)], stretches: &[(f64, &str, &str)], water: &str) -> Drive {
    let text = text(|text| {
        let (before, rest) = text.split_once("ground:\n").unwrap();
        let (_, after) = rest.split_once("rig:").unwrap();
        let ground: String = stretches
            .iter()
            .map(|(to, class, soil)| {
                format!("  - {{ to: {to} m, {class}, largest_stone: 0 mm, soil: {{ {soil} }} }}\n")
            })
            .collect();
        let point = |(at, depth): &(f64, f64)| format!("{{ at: {at} m, invert_depth: {depth} m }}");
        let inner: Vec<String> = depths[1..depths.len() - 1].iter().map(point).collect();
        let (launch, reception) = (depths[0].1, depths[depths.len() - 1].1);
        format!("{before}depths: [{}]\nground:\n{ground}rig:{after}", inner.join(", "))
            .edit("invert_depth: 4.20 m", &format!("invert_depth: {launch} m"))
            .edit(
                "reception: { invert_depth: 3.96 m }",
                &format!("reception: {{ invert_depth: {reception} m }}\ngrade: 0.4 %"),
            )
            .edit("groundwater: 5.5 m", &format!("groundwater: {water}"))
            .edit(
                "size: 10 in }",
                "size: 10 in, outside_diameter: 400 mm, end_bearing_area: 0.03 m2, weight: 1.2 kN/m }",
            )
            .edit("lubrication: metered", "lubrication: none")
    });
    drive(&text)
}

fn views(drive: &Drive) -> Vec<SoilView> {
    friction_models(drive, &drive.candidates()[0]).unwrap()
}

fn forces(drive: &Drive) -> Vec<ModelForce> {
    model_forces(drive, &drive.candidates()[0], &views(drive))
}

/// Crown pressure of a silo without cohesion, pascals.
fn silo(weight: f64, k: f64, depth: f64, load: f64) -> f64 {
    let grip = 2.0 * k;
    weight / grip * -(-grip * depth).exp_m1() + load * (-grip * depth).exp()
}

/// The sets in bare numbers at one crown depth: low, likely, high of each.
fn sets(depth: f64, angle: f64, load: f64) -> Vec<(&'static str, [f64; 3])> {
    let (gamma, d, floors) = (18e3, DIAMETER, [0.0, 3e3, 5e3]);
    let ring = |crown: f64| 0.65 * (crown + gamma * d / 2.0);
    let fitted = |crown: f64| std::array::from_fn(|level| (FITTED[level] * ring(crown)).max(floors[level]));
    let terzaghi = d * (1.0 + 2.0 * (FRAC_PI_4 - angle / 2.0).tan());
    let japan = |d: f64| d * (1.5 * FRAC_PI_4 - angle / 4.0).tan();
    let atv = 3.0_f64.sqrt() * d;
    let at = |width: f64, lateral: f64| silo(gamma, lateral / width, depth, load);
    let (low, high) = ((angle / 2.0).tan(), angle.tan());
    let full = ring(at(terzaghi, high));
    let rest = (1.0 - angle.sin().powi(2)) / (1.0 + angle.sin().powi(2));
    let open = (at(japan(d + 0.1), high) + 1.2e3 / (PI * d)) * low;
    let german = at(atv, 0.5 * low) * low;
    vec![
        ("Terzaghi silo with fitted coefficients", fitted(at(terzaghi, high))),
        ("Terzaghi silo, half to full friction angle", [full * low, full * (low + high) / 2.0, full * high]),
        ("Japanese open-shield form", [open; 3]),
        ("ATV-A 161 silo, half friction angle", [german; 3]),
        ("pipe jacking association silo", fitted(at(japan(d), rest * high))),
    ]
}

/// A surface with a hump and a hollow, so shallow in one place that the floors hold there and not elsewhere.
const HUMPED: [(f64, f64); 5] = [(0.0, 4.2), (11.0, 0.9), (25.0, 1.7), (41.0, 9.0), (60.0, 3.1)];

fn depth_at(depths: &[(f64, f64)], at: f64) -> f64 {
    let pair = depths.windows(2).find(|pair| at <= pair[1].0).unwrap();
    let ((x0, z0), (x1, z1)) = (pair[0], pair[1]);
    z0 + (z1 - z0) * (at - x0) / (x1 - x0)
}

/// The mean of each set against 400,000 places of the drive: floors that hold all along; floors met on the way down in
/// weak soil; a heavy load that the silo takes off with depth, so that floors are met the other way.
#[test]
fn means_agree_with_dense_sampling() {
    for (degrees, kilopascals) in [(32, 5), (12, 5), (32, 100)] {
        let (angle, load) = (f64::from(degrees).to_radians(), f64::from(kilopascals) * 1e3);
        let soil = format!("moist: 18 kN/m3, friction_angle: {degrees} deg, surcharge: {kilopascals} kPa");
        let view = views(&made(&HUMPED, &[(60.0, SAND, &soil)], "none")).remove(0);
        let places = 400_000_u32;
        let mut sums = sets(1.0, angle, load);
        sums.iter_mut().for_each(|(_, levels)| *levels = [0.0; 3]);
        for place in 0..places {
            let at = 60.0 * (f64::from(place) + 0.5) / f64::from(places);
            for (sum, (_, levels)) in sums.iter_mut().zip(sets(depth_at(&HUMPED, at) - DIAMETER, angle, load)) {
                std::iter::zip(&mut sum.1, levels).for_each(|(sum, level)| *sum += level / f64::from(places));
            }
        }
        for (name, levels) in sums {
            let model = view.models.iter().find(|model| model.name == name).unwrap();
            assert_eq!(model.over, Over::Mean, "{name}");
            let friction = model.friction;
            for (ours, dense) in [friction.low, friction.likely, friction.high].iter().zip(levels) {
                assert!((ours.value / dense - 1.0).abs() <= 1e-9, "{name}, {degrees}: {} and {dense}", ours.value);
            }
        }
    }
}

/// What does not rest on depth says so, and so does what looks at the deepest place.
#[test]
fn each_model_says_where_it_stands() {
    let clay = format!("{SOIL}, undrained_strength: 80 kPa, undrained_modulus: 30 MPa");
    let drive =
        made(&HUMPED, &[(30.0, SAND, SOIL), (60.0, "class: firm_to_very_stiff_clay, spt_n: 12", &clay)], "none");
    for model in views(&drive).iter().flat_map(|view| &view.models) {
        let expected = match model.name {
            "modified arching" | "clay closed on a pipe that stands" | "contractors' table of the United Kingdom" => {
                Over::Any
            }
            name if name.starts_with("open bore") || name.starts_with("closed clay") => Over::Deepest,
            _ => Over::Mean,
        };
        assert_eq!(model.over, expected, "{}", model.name);
    }
    // Of the models of sand and of clay, only those that both have are summed.
    let names: Vec<_> = forces(&drive).iter().map(|force| force.name).collect();
    assert_eq!(names, ["Terzaghi silo with fitted coefficients", "pipe jacking association silo"]);
}

/// A level surface has at each place what it has on the mean.
#[test]
fn a_level_surface_gives_the_pressure_itself() {
    for depth in [0.5, 3.0, 12.0] {
        let view = views(&made(&[(0.0, depth), (60.0, depth)], &[(60.0, SAND, SOIL)], "none")).remove(0);
        for (name, levels) in sets(depth - DIAMETER, 32_f64.to_radians(), 5e3) {
            let friction = view.models.iter().find(|model| model.name == name).unwrap().friction;
            for (ours, bare) in [friction.low, friction.likely, friction.high].iter().zip(levels) {
                assert_relative_eq!(ours.value, bare, max_relative = 1e-13);
            }
        }
    }
}

/// No friction in the sides: the overburden half way. ATV of 0 deg is nothing, so the law is asked.
#[test]
fn without_friction_it_is_the_overburden_half_way() {
    let of = |from: f64, to: f64, lateral: f64| {
        MeanSiloStress {
            unit_weight: UnitWeight::from_si(20e3),
            width: Length::from_si(1.5),
            depth_from: Length::from_si(from),
            depth_to: Length::from_si(to),
            lateral_friction: Ratio::from_si(lateral),
            surcharge: Pressure::from_si(7e3),
        }
        .value()
        .value
    };
    assert_relative_eq!(of(2.0, 5.0, 0.0), 77e3, max_relative = 1e-15);
    assert_relative_eq!(of(5.0, 2.0, 1e-12), 77e3, max_relative = 1e-10);
    // Either side of where the series takes over: k d = 0.01.
    let depth = 0.01 * 1.5 / (2.0 * 0.3);
    let (below, above) = (of(1.0, 1.0 + depth * (1.0 - 1e-9), 0.3), of(1.0, 1.0 + depth * (1.0 + 1e-9), 0.3));
    assert_relative_eq!(below, above, max_relative = 1e-10);
}

/// 30 m on the level at 4 m and 30 m at 8 m, whose step is sudden: the force is the sum of two unit frictions.
#[test]
fn forces_are_the_sum_by_hand() {
    let layers = "moist: 18 kN/m3, friction_angle: 32 deg, layers: [{ thickness: 0.4 m, moist: 16 kN/m3, \
                  friction_angle: 25 deg }]";
    let drive = made(&[(0.0, 4.4), (60.0, 4.4)], &[(30.0, SAND, SOIL), (60.0, SAND, layers)], "none");
    let angle = 32_f64.to_radians();
    let lateral = 0.5 * (12.5_f64.to_radians()).tan();
    let load = silo(16e3, lateral / (3.0_f64.sqrt() * DIAMETER), 0.4, 0.0);
    let german = |depth, load| sets(depth, angle, load)[3].1[1];
    let by_hand = PI * DIAMETER * 30.0 * (german(4.0, 5e3) + german(3.6, load));
    let force = forces(&drive).into_iter().find(|force| force.name.starts_with("ATV")).unwrap();
    assert_relative_eq!(force.force.likely.value, by_hand, max_relative = 1e-12);
    assert!(force.in_range);
}

/// Dry loose sand holds harder than wet, so where the water crosses the stretch the table gives both.
#[test]
fn water_that_crosses_loose_sand_lowers_nothing() {
    let high = |water: &str| {
        let drive = made(&[(0.0, 3.0), (60.0, 6.0)], &[(60.0, LOOSE, SOIL)], water);
        let view = views(&drive).remove(0);
        view.models.iter().find(|model| model.name.starts_with("contractors")).unwrap().friction
    };
    let (dry, wet, both) = (high("none"), high("1 m"), high("4.5 m"));
    assert!(wet.high < dry.low);
    assert_eq!((both.low, both.high), (wet.low, dry.high));
}

fn surface() -> impl Strategy<Value = Vec<(f64, f64)>> {
    prop::collection::vec(0.5_f64..12.0, 4).prop_map(|depths| {
        let at = [0.0, 17.0, 33.0, 60.0];
        // As written in a file.
        at.into_iter().zip(depths.into_iter().map(|depth| (depth * 1e3).round() / 1e3)).collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(32) })]

    /// Cutting a stretch changes no force by a model that is a mean, and raises none.
    #[test]
    fn splitting_a_stretch_changes_nothing(depths in surface(), cut in 1_u32..600, water in 1_u32..9) {
        let cut = f64::from(cut) / 10.0;
        let water = format!("{water} m");
        let clay = format!("{SOIL}, undrained_strength: 80 kPa, undrained_modulus: 30 MPa");
        for (class, soil) in [(SAND, SOIL), ("class: firm_to_very_stiff_clay, spt_n: 12", clay.as_str())] {
            let whole = forces(&made(&depths, &[(60.0, class, soil)], &water));
            let parts = forces(&made(&depths, &[(cut, class, soil), (60.0, class, soil)], &water));
            prop_assert_eq!(whole.len(), parts.len());
            for (whole, part) in whole.iter().zip(&parts) {
                prop_assert_eq!(whole.name, part.name);
                let levels = whole.force.with(part.force, |whole, part| (part / whole).value - 1.0);
                for level in [levels.low, levels.likely, levels.high] {
                    prop_assert!(level.abs() <= 1e-11, "{}: {level}", whole.name);
                }
            }
        }
    }

    /// Where the water may cross loose sand a table gives both of its sides, and a cut can only tell more.
    #[test]
    fn splitting_loose_sand_raises_nothing(depths in surface(), cut in 1_u32..600, water in 1_u32..9) {
        let (cut, water) = (f64::from(cut) / 10.0, format!("{water} m"));
        let whole = forces(&made(&depths, &[(60.0, LOOSE, SOIL)], &water));
        let parts = forces(&made(&depths, &[(cut, LOOSE, SOIL), (60.0, LOOSE, SOIL)], &water));
        prop_assert_eq!(whole.len(), parts.len());
        for (whole, part) in whole.iter().zip(&parts) {
            let slack = 1.0 + 1e-11;
            prop_assert!(part.force.likely <= whole.force.likely * slack, "{}", whole.name);
            prop_assert!(part.force.high <= whole.force.high * slack, "{}", whole.name);
            prop_assert!(part.force.low * slack >= whole.force.low, "{}", whole.name);
        }
    }

    /// Deeper all along: no model's friction falls, unless it is carrying a load that the silo takes off.
    #[test]
    fn depth_never_lowers_friction(depths in surface(), more in 0.0_f64..5.0) {
        let soil = "moist: 18 kN/m3, friction_angle: 32 deg";
        let deeper: Vec<_> = depths.iter().map(|(at, depth)| (*at, depth + more)).collect();
        let (before, after) = (
            forces(&made(&depths, &[(60.0, SAND, soil)], "none")),
            forces(&made(&deeper, &[(60.0, SAND, soil)], "none")),
        );
        for (before, after) in before.iter().zip(&after) {
            for (before, after) in [(before.force.low, after.force.low), (before.force.high, after.force.high)] {
                prop_assert!(after >= before * (1.0 - 1e-12));
            }
        }
    }

    /// The mean lies between the pressures at its ends.
    #[test]
    fn the_mean_lies_between_its_ends(
        from in 0.0_f64..20.0, change in 0.0_f64..20.0, lateral in 0.0_f64..1.0, load in 0.0_f64..80e3
    ) {
        let (unit_weight, width) = (UnitWeight::from_si(18e3), Length::from_si(0.9));
        let (lateral_friction, surcharge) = (Ratio::from_si(lateral), Pressure::from_si(load));
        let at = |depth: f64| {
            let (depth, cohesion) = (Length::from_si(depth), Pressure::default());
            SiloStress { unit_weight, width, depth, lateral_friction, cohesion, surcharge }.value().value
        };
        let (depth_from, depth_to) = (Length::from_si(from), Length::from_si(from + change));
        let mean = MeanSiloStress { unit_weight, width, depth_from, depth_to, lateral_friction, surcharge };
        let (one, other) = (at(from), at(from + change));
        let slack = 1e-12 * one.max(other);
        prop_assert!(mean.in_range());
        prop_assert!(mean.value().value >= one.min(other) - slack && mean.value().value <= one.max(other) + slack);
    }
}
