//! Soil said in SI and in US units: stress, friction models, the thrust wall and every check agree to the last digits.

use crate::drives::drive;
use crate::edit::Edit;
use jackpull::check::Subject;
use jackpull::method::{SoilView, friction_models, model_forces};
use jackpull::quantity::Measure;
use jackpull::{Method, assess};
use proptest::prelude::*;
use std::f64::consts::PI;

/// A quantity by its kind, in the unit that SI texts have.
#[derive(Debug, Clone, Copy)]
enum Kind {
    Metres,
    Millimetres,
    SquareMetres,
    KilonewtonsPerCubicMetre,
    Kilopascals,
    Megapascals,
    Degrees,
    Kilonewtons,
    KilonewtonsPerMetre,
    Hours,
    Celsius,
}

use Kind::{
    Celsius, Degrees, Hours, Kilonewtons, KilonewtonsPerCubicMetre, KilonewtonsPerMetre, Kilopascals, Megapascals,
    Metres, Millimetres, SquareMetres,
};

const FOOT: f64 = 0.3048;
const INCH: f64 = 0.0254;
/// Newtons, exact: 0.453 592 37 kg at 9.806 65 m/s2.
const POUND: f64 = 4.448_221_615_260_5;

/// The number and the unit in a system.
fn say(value: f64, kind: Kind, us: bool) -> String {
    let (unit, other, one) = match kind {
        Metres => ("m", "ft", FOOT),
        Millimetres => ("mm", "in", INCH * 1e3),
        SquareMetres => ("m2", "ft2", FOOT * FOOT),
        KilonewtonsPerCubicMetre => ("kN/m3", "pcf", POUND / FOOT.powi(3) / 1e3),
        Kilopascals => ("kPa", "psf", POUND / FOOT.powi(2) / 1e3),
        Megapascals => ("MPa", "ksf", POUND / FOOT.powi(2) / 1e3),
        Degrees => ("deg", "rad", 180.0 / PI),
        Kilonewtons => ("kN", "kip", POUND),
        KilonewtonsPerMetre => ("kN/m", "lbf/ft", POUND / FOOT / 1e3),
        Hours => ("h", "min", 1.0 / 60.0),
        Celsius if us => return format!("{} degF", value * 1.8 + 32.0),
        Celsius => ("degC", "", 1.0),
    };
    if us { format!("{} {other}", value / one) } else { format!("{value} {unit}") }
}

#[derive(Debug, Clone)]
struct Case {
    class: &'static str,
    lubrication: &'static str,
    moist: f64,
    /// Over the moist weight.
    water_in_it: f64,
    angle: f64,
    surcharge: f64,
    strength: f64,
    modulus: f64,
    layers: Vec<(f64, f64, f64)>,
    water: f64,
    depth: f64,
    bore: f64,
}

fn cases() -> impl Strategy<Value = Case> {
    let words = (
        prop::sample::select(&[
            "firm_to_very_stiff_clay, spt_n: 12",
            "soft_clay, spt_n: 4",
            "silt, spt_n: 12",
            "medium_to_dense_sand, spt_n: 20",
            "loose_sand, spt_n: 8, mixed_with: silt",
        ]),
        prop::sample::select(&["none", "metered", "logged"]),
    );
    let soil = (15.0..20.0_f64, 0.5..3.0_f64, 20.0..38.0_f64, 0.0..30.0_f64, 30.0..80.0_f64, 3.0..40.0_f64);
    let layers = prop::collection::vec((0.4..1.2_f64, 15.0..20.0_f64, 20.0..38.0_f64), 0..3);
    (words, soil, layers, 0.5..8.0_f64, 5.0..9.0_f64, 410.0..520.0_f64).prop_map(
        |((class, lubrication), soil, layers, water, depth, bore)| {
            let (moist, water_in_it, angle, surcharge, strength, modulus) = soil;
            Case {
                class,
                lubrication,
                moist,
                water_in_it,
                angle,
                surcharge,
                strength,
                modulus,
                layers,
                water,
                depth,
                bore,
            }
        },
    )
}

impl Case {
    fn text(&self, us: bool) -> String {
        let q = |value: f64, kind: Kind| say(value, kind, us);
        let weights = |moist: f64| {
            format!(
                "moist: {}, saturated: {}",
                q(moist, KilonewtonsPerCubicMetre),
                q(moist + self.water_in_it, KilonewtonsPerCubicMetre)
            )
        };
        let layers: Vec<String> = self
            .layers
            .iter()
            .map(|(thickness, moist, angle)| {
                let (thickness, angle) = (q(*thickness, Metres), q(*angle, Degrees));
                format!("{{ thickness: {thickness}, {}, friction_angle: {angle} }}", weights(*moist))
            })
            .collect();
        let clay = if self.class.contains("clay") {
            let (strength, modulus) = (q(self.strength, Kilopascals), q(self.modulus, Megapascals));
            format!(", undrained_strength: {strength}, undrained_modulus: {modulus}")
        } else {
            String::new()
        };
        let soil = format!(
            "soil: {{ {}, friction_angle: {}, surcharge: {}{clay}, layers: [{}] }}",
            weights(self.moist),
            q(self.angle, Degrees),
            q(self.surcharge, Kilopascals),
            layers.join(", ")
        );
        let wall = format!(
            "wall: {{ width: {side}, height: {side}, top_depth: {} }}",
            q(self.depth - 1.7, Metres),
            side = q(3.0, Metres)
        );
        format!(
            "service: gravity_sewer\nlength: {}\nlaunch: {{ invert_depth: {}, {wall} }}\nreception: {{ invert_depth: {} \
             }}\ngroundwater: {}\nlubrication: {}\nground:\n  - {{ class: {}, largest_stone: 0 mm, {soil} }}\n\
             rig: {{ thrust: {}, pull: {} }}\npull: {{ duration: {}, pipe_temperature: {} }}\ncandidates:\n  - {{ \
             material: clay, size: {}, outside_diameter: {}, bore: {}, end_bearing_area: {}, weight: {} }}\n  - {{ \
             material: pe100, size: {}, outside_diameter: {}, wall: {} }}\n",
            q(60.0, Metres),
            q(self.depth, Metres),
            q(self.depth - 0.36, Metres),
            q(self.water, Metres),
            self.lubrication,
            self.class,
            q(900.0, Kilonewtons),
            q(500.0, Kilonewtons),
            q(6.0, Hours),
            q(20.0, Celsius),
            q(400.0, Millimetres),
            q(400.0, Millimetres),
            q(self.bore, Millimetres),
            q(0.03, SquareMetres),
            q(2.0, KilonewtonsPerMetre),
            q(250.0, Millimetres),
            q(250.0, Millimetres),
            q(25.0, Millimetres),
        )
    }
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-12 * one.abs().max(1e-9)
}

/// Names, words and numbers of a view: stress first, then each model.
fn told(view: &SoilView) -> (Vec<(&str, bool, &str)>, Vec<f64>) {
    let words = view.models.iter().map(|model| (model.name, model.in_range, model.note));
    let stress = view.at_crown;
    let numbers = view.models.iter().flat_map(|model| {
        let friction = model.friction;
        [friction.low.si(), friction.likely.si(), friction.high.si()]
    });
    (words.collect(), [stress.total.si(), stress.effective.si()].into_iter().chain(numbers).collect())
}

/// By hand: 120 pcf is 18.850 kN/m3 and 1000 psf is 47.880 kPa, 10 MPa is 208.854 ksf and 30 deg 0.5236 rad.
#[test]
fn units_are_said_as_printed() {
    assert!(say(18.850, KilonewtonsPerCubicMetre, true).starts_with("119.99"));
    assert!(say(47.880, Kilopascals, true).starts_with("999.99"));
    assert!(say(10.0, Megapascals, true).starts_with("208.85"));
    assert!(say(30.0, Degrees, true).starts_with("0.52359"));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn units_make_no_difference_to_soil(case in cases()) {
        let (si, us) = (case.text(false), case.text(true));
        for left in [" m,", " mm,", "kN", "Pa", "deg,", " h,", "degC"] {
            prop_assert!(!us.edit("largest_stone: 0 mm,", "").contains(left), "{left} in {us}");
        }
        let (si, us) = (drive(&si), drive(&us));
        let pipes = si.candidates().iter().zip(us.candidates());
        for (method, (one, other)) in [Method::PipeJacking, Method::Pullback].into_iter().zip(pipes) {
            let (first, second) = (friction_models(&si, one).unwrap(), friction_models(&us, other).unwrap());
            for (first, second) in first.iter().zip(&second) {
                let ((words, numbers), (us_words, us_numbers)) = (told(first), told(second));
                prop_assert_eq!(&words, &us_words);
                prop_assert_eq!(&first.notes, &second.notes);
                for (index, (number, us_number)) in numbers.iter().zip(&us_numbers).enumerate() {
                    prop_assert!(near(*number, *us_number), "{index} of {words:?}: {number} and {us_number}");
                }
            }
            let sums = model_forces(&si, one, &first).into_iter().zip(model_forces(&us, other, &second));
            for (sum, us_sum) in sums {
                prop_assert!(near(sum.force.high.si(), us_sum.force.high.si()), "{sum:?} and {us_sum:?}");
            }
            let (one, other) = (assess(&si, one, method), assess(&us, other, method));
            for (one, other) in one.checks.iter().zip(other.checks.iter()) {
                let subject = one.subject;
                prop_assert_eq!((subject, one.verdict), (other.subject, other.verdict));
                if let (Some(one), Some(other)) = (one.high(), other.high()) {
                    // A difference of two depths of metres: held against its limit, not against itself.
                    let apart = (one.0.si - other.0.si).abs() <= 1e-12 * one.1.si && subject == Subject::WallLevel;
                    let demand = apart || near(one.0.si, other.0.si);
                    prop_assert!(demand && near(one.1.si, other.1.si), "{subject:?} {one:?} {other:?}");
                }
            }
        }
    }
}
