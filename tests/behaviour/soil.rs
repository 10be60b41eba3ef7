//! Stress in the ground against hand sums, and the friction models against the recomputed field rows.

use crate::drives::{drive, text};
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::law::Law;
use jackpull::laws::soil::{MeanRingPressure, ModifiedArching, SiloStress, SiloWidthAtv, SiloWidthTerzaghi};
use jackpull::method::{SoilView, friction_models};
use jackpull::quantity::{Angle, Length, Measure, Pressure, Ratio, UnitWeight};

/// A drive with one stretch of this soil at a 6 m invert, and a 0.4 m pipe.
fn view(soil: &str, water: &str, class: &str) -> SoilView {
    let text = text(|text| {
        let (before, rest) = text.split_once("ground:\n").unwrap();
        let (_, after) = rest.split_once("rig:").unwrap();
        let ground = format!("  - {{ class: {class}, spt_n: 12, largest_stone: 0 mm, soil: {{ {soil} }} }}\n");
        format!("{before}ground:\n{ground}rig:{after}")
            .edit("invert_depth: 4.20 m", "invert_depth: 6.4 m")
            .edit("invert_depth: 3.96 m", "invert_depth: 6.4 m")
            .edit("groundwater: 5.5 m", &format!("groundwater: {water}"))
            .edit(
                "size: 10 in }",
                "size: 10 in, outside_diameter: 400 mm, end_bearing_area: 0.03 m2, weight: 1.2 kN/m }",
            )
            .edit("lubrication: metered", "lubrication: none")
    });
    let drive = drive(&text);
    friction_models(&drive, &drive.candidates()[0]).unwrap().remove(0)
}

/// 6 m to the crown: 2 m moist at 18, 4 m saturated at 20 kN/m3, 10 kPa on the surface.
#[test]
fn stress_is_the_sum_of_its_layers() {
    let soil = "moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 32 deg, surcharge: 10 kPa";
    let stress = view(soil, "2 m", "medium_to_dense_sand").at_crown;
    assert_relative_eq!(stress.total.value, 126e3, max_relative = 1e-12);
    // 4 m of water at 9.80665 kN/m3.
    assert_relative_eq!(stress.effective.value, 126e3 - 39_226.6, max_relative = 1e-12);
    let dry = view(soil, "none", "medium_to_dense_sand").at_crown;
    assert_relative_eq!(dry.total.value, 118e3, max_relative = 1e-12);
    assert_eq!(dry.total, dry.effective);
    // Without its saturated unit weight that of its class, at the most 85 pcf and the water.
    let by_class = view("moist: 18 kN/m3, friction_angle: 32 deg", "2 m", "medium_to_dense_sand").at_crown;
    let total = 36e3 + 4.0 * (85.0 * 157.087_46 + 9_806.65);
    assert_relative_eq!(by_class.total.value, total, max_relative = 1e-6);
}

/// Outside diameter m, cover m, unit weight kN/m3, friction angle deg; mean ring pressure by the Terzaghi set, modified
/// arching and the ATV silo at the crown, kPa: the recomputed table of the field rows, printed to 0.1 kPa.
const FIELD: [([f64; 4], [f64; 3]); 7] = [
    ([1.08, 7.0, 19.0, 35.0], [25.9, 6.8, 78.1]),
    ([0.76, 5.0, 18.5, 25.0], [25.4, 8.1, 62.5]),
    ([0.64, 5.0, 20.0, 35.0], [16.2, 4.2, 53.4]),
    ([0.66, 5.0, 20.0, 35.0], [16.7, 4.4, 54.3]),
    ([0.65, 7.0, 19.0, 32.5], [17.2, 4.7, 61.4]),
    ([1.49, 9.0, 19.5, 27.0], [48.1, 14.9, 118.9]),
    ([4.14, 9.0, 19.75, 36.8], [83.7, 24.5, 145.3]),
];

#[test]
fn pressures_agree_with_the_recomputed_field_rows() {
    for ([diameter, cover, weight, degrees], [ring, arching, silo]) in FIELD {
        let outside_diameter = Length::from_si(diameter);
        let unit_weight = UnitWeight::from_si(weight * 1e3);
        let friction_angle = Angle::from_si(degrees.to_radians());
        let depth = Length::from_si(cover);
        let column = |width, lateral_friction| {
            let cohesion = Pressure::default();
            SiloStress { unit_weight, width, depth, lateral_friction, cohesion, surcharge: cohesion }.value()
        };
        let width = SiloWidthTerzaghi { outside_diameter, friction_angle }.value();
        let crown_stress = column(width, friction_angle.tan());
        let lateral_ratio = Ratio::from_si(0.3);
        let mean = MeanRingPressure { crown_stress, unit_weight, outside_diameter, lateral_ratio }.value();
        // Half of the last printed digit.
        assert!((mean.value / 1e3 - ring).abs() <= 0.05 + 1e-9, "{diameter} m: {} and {ring}", mean.value);
        let arched = ModifiedArching { unit_weight, outside_diameter, friction_angle }.value();
        assert!((arched.value / 1e3 - arching).abs() <= 0.05 + 1e-9, "{diameter} m: {} and {arching}", arched.value);
        let german = column(SiloWidthAtv { outside_diameter }.value(), 0.5 * (friction_angle / 2.0).tan());
        assert!((german.value / 1e3 - silo).abs() <= 0.05 + 1e-9, "{diameter} m: {} and {silo}", german.value);
    }
}

/// A silo without friction in its sides is the whole column; a deep one tends to its limit; more cover never lowers it.
#[test]
fn silo_limits() {
    let at = |depth: f64, lateral: f64| {
        SiloStress {
            unit_weight: UnitWeight::from_si(20e3),
            width: Length::from_si(1.5),
            depth: Length::from_si(depth),
            lateral_friction: Ratio::from_si(lateral),
            cohesion: Pressure::default(),
            surcharge: Pressure::default(),
        }
        .value()
        .value
    };
    assert_relative_eq!(at(6.0, 0.0), 120e3, max_relative = 1e-12);
    assert_relative_eq!(at(6.0, 1e-9), 120e3, max_relative = 1e-6);
    assert_relative_eq!(at(1e3, 0.3), 20e3 * 1.5 / 0.6, max_relative = 1e-9);
    for step in 1..100 {
        assert!(at(f64::from(step) * 0.2, 0.3) >= at(f64::from(step - 1) * 0.2, 0.3));
    }
}

/// Which models are shown where, and that the floors hold.
#[test]
fn models_are_named_sets() {
    let soil = "moist: 19 kN/m3, saturated: 20 kN/m3, friction_angle: 33 deg";
    let names = |view: &SoilView| view.models.iter().map(|model| model.name).collect::<Vec<_>>();
    let sand = view(soil, "none", "medium_to_dense_sand");
    let silos = [
        "Terzaghi silo with fitted coefficients",
        "Terzaghi silo, half to full friction angle",
        "modified arching",
        "Japanese open-shield form",
        "ATV-A 161 silo, half friction angle",
        "pipe jacking association silo",
    ];
    assert_eq!(names(&sand), silos);
    let wet = view(soil, "3 m", "medium_to_dense_sand");
    assert_eq!(names(&wet).last(), Some(&"contractors' table of the United Kingdom"));
    let clay = view(soil, "none", "firm_to_very_stiff_clay");
    assert_eq!(names(&clay), [silos[0], silos[5], "contractors' table of the United Kingdom"]);
    let fitted = &sand.models[0];
    assert!(fitted.friction.likely.value >= 3e3 && fitted.friction.high.value >= 5e3);
    let arching = |view: &SoilView| view.models.iter().find(|model| model.name == "modified arching").unwrap().in_range;
    assert!(arching(&sand) && !arching(&view(soil, "3 m", "medium_to_dense_sand")));
}

/// Three layers and water inside the second: the hand sum, and the same by buoyant unit weights.
#[test]
fn layers_add_up() {
    // 1.5 m at 16, then 2.5 m of which 1 m lies above water (3.0 m apart), then 2 m of the soil itself; crown at 6 m.
    let layers = |second: &str, own: &str| {
        format!(
            "moist: 18 kN/m3, {own}, friction_angle: 32 deg, surcharge: 5 kPa, layers: [\
             {{ thickness: 1.5 m, moist: 16 kN/m3, friction_angle: 25 deg }}, \
             {{ thickness: 2.5 m, moist: 17 kN/m3, {second}, friction_angle: 28 deg }}]"
        )
    };
    let water = 9.80665;
    let saturated = view(&layers("saturated: 19 kN/m3", "saturated: 20 kN/m3"), "2.5 m", "medium_to_dense_sand");
    let stress = saturated.at_crown;
    let total = 5.0 + 1.5 * 16.0 + 1.0 * 17.0 + 1.5 * 19.0 + 2.0 * 20.0;
    assert_relative_eq!(stress.total.value, total * 1e3, max_relative = 1e-12);
    assert_relative_eq!(stress.effective.value, (total - 3.5 * water) * 1e3, max_relative = 1e-12);
    let buoyant = view(
        &layers(&format!("buoyant: {} kN/m3", 19.0 - water), &format!("buoyant: {} kN/m3", 20.0 - water)),
        "2.5 m",
        "medium_to_dense_sand",
    );
    assert_relative_eq!(buoyant.at_crown.total.value, total * 1e3, max_relative = 1e-12);
    // Nothing tells the class of a layer: below water it weighs what any ground may, 85 pcf and the water.
    let unknown = layers("saturated: 19 kN/m3", "saturated: 20 kN/m3")
        .edit("moist: 17 kN/m3, saturated: 19 kN/m3", "moist: 17 kN/m3");
    let heavier = 1.5 * (85.0 * 157.087_46 + 9_806.65 - 19e3);
    let stress = view(&unknown, "2.5 m", "medium_to_dense_sand").at_crown;
    assert_relative_eq!(stress.total.value, total * 1e3 + heavier, max_relative = 1e-6);
}

/// Cutting one soil into layers that are alike changes no model and no stress.
#[test]
fn layers_that_are_alike_are_one() {
    let own = "moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 32 deg, surcharge: 5 kPa";
    let alike = "moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 32 deg";
    let cut = format!("{own}, layers: [{{ thickness: 2 m, {alike} }}, {{ thickness: 1.3 m, {alike} }}]");
    for class in ["medium_to_dense_sand", "firm_to_very_stiff_clay"] {
        let (one, other) = (view(own, "3 m", class), view(&cut, "3 m", class));
        let (whole, parts) = (one.at_crown, other.at_crown);
        assert_relative_eq!(whole.total.value, parts.total.value, max_relative = 1e-12);
        for (a, b) in one.models.iter().zip(&other.models) {
            assert_eq!(a.name, b.name);
            assert_relative_eq!(a.friction.high.value, b.friction.high.value, max_relative = 1e-9);
            assert_relative_eq!(a.friction.low.value, b.friction.low.value, max_relative = 1e-9);
        }
    }
}

/// Where the surface is higher between the pits, the stretch below it is deeper; its water can be its own.
#[test]
fn depth_and_water_are_those_of_the_stretch() {
    let soil = "soil: { moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 32 deg }";
    let text = text(|text| {
        let (before, rest) = text.split_once("ground:\n").unwrap();
        let (_, after) = rest.split_once("rig:").unwrap();
        let stretch = |more: &str| {
            format!("  - {{ {more}, class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm, {soil} }}\n")
        };
        let ground = [stretch("to: 20 m"), stretch("to: 40 m"), stretch("to: 60 m, groundwater: 2 m")].concat();
        format!("{before}depths: [{{ at: 30 m, invert_depth: 7.2 m }}]\nground:\n{ground}rig:{after}")
            .edit("groundwater: 5.5 m", "groundwater: none")
            .edit("reception: { invert_depth: 3.96 m }", "reception: { invert_depth: 4.20 m }\ngrade: 0.4 %")
    });
    let drive = drive(&text);
    let views = friction_models(&drive, &drive.candidates()[0]).unwrap();
    let diameter = drive.candidates()[0].outside_diameter().value;
    // 4.2 m at the pits and 7.2 m half way: 6.2 m at 20 m and at 40 m.
    for (view, depth) in views.iter().zip([6.2, 7.2]) {
        assert_relative_eq!(view.at_crown.total.value, 18e3 * (depth - diameter), max_relative = 1e-9);
    }
    let wet = views[2].at_crown;
    let below = 6.2 - diameter - 2.0;
    assert_relative_eq!(wet.total.value, 2.0 * 18e3 + below * 20e3, max_relative = 1e-9);
    assert_relative_eq!(wet.total.value - wet.effective.value, below * 9_806.65, max_relative = 1e-9);
}

/// Clay closes on a bore when it is soft for its depth: N = 108 kPa over the strength, elastic-plastic beyond 1.
#[test]
fn an_open_bore_is_open_only_while_clay_holds() {
    let model = |strength: &str, modulus: &str| {
        let soil = format!(
            "moist: 18 kN/m3, friction_angle: 20 deg, undrained_strength: {strength}, undrained_modulus: {modulus}"
        );
        let text = text(|text| {
            let (before, rest) = text.split_once("ground:\n").unwrap();
            let (_, after) = rest.split_once("rig:").unwrap();
            let ground = format!(
                "  - {{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm, soil: {{ {soil} }} }}\n"
            );
            format!("{before}ground:\n{ground}rig:{after}").edit("size: 10 in }", "size: 10 in, bore: 400 mm }")
        });
        let drive = drive(&text);
        let view = friction_models(&drive, &drive.candidates()[0]).unwrap().remove(0);
        let open = view.models.iter().find(|model| model.name.starts_with("open bore")).unwrap().clone();
        let closed = view.models.iter().find(|model| model.name.starts_with("clay closed")).unwrap().clone();
        (open, closed)
    };
    let (open, closed) = model("150 kPa", "60 MPa");
    assert!(open.in_range, "{open:?}");
    assert!(open.friction.high < closed.friction.low);
    assert_relative_eq!(closed.friction.high.value, 60e3, max_relative = 1e-12);
    let (soft, closed) = model("16 kPa", "3 MPa");
    assert!(!soft.in_range);
    assert!(closed.friction.high.value <= 16e3 * (1.0 + 1e-12));
}
