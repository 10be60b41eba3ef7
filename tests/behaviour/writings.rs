//! Writings of the trade that are not read, with what to write instead.

use jackpull::quantity::{Area, Force, FromText, Length, LineLoad, Measure as _, Torque, UnitWeight, VolumeRate};

fn advice<Q: FromText>(text: &str) -> String {
    match Q::from_text(text) {
        Err(error) => error.advice,
        Ok(_) => panic!("{text} was read"),
    }
}

/// Reads the writings that an advice names, one in each pair of quotes.
fn advised<Q: FromText>(advice: &str) -> Vec<f64> {
    advice.split('"').skip(1).step_by(2).map(|text| Q::from_text(text).unwrap().si()).collect()
}

/// What is advised is read, as the value that was meant: feet of 12 inches of 25.4 mm.
#[test]
fn a_length_in_feet_inches_and_fractions() {
    for (read, write, inches) in [
        ("3/8 in", "0.375 in", 0.375),
        ("3/8\"", "0.375 in", 0.375),
        ("-3/8 in", "-0.375 in", -0.375),
        ("5/64 in", "0.078125 in", 0.078_125),
        ("1 1/2 in", "1.5 in", 1.5),
        ("1 1/2\"", "1.5 in", 1.5),
        ("-1 1/2 in", "-1.5 in", -1.5),
        ("2 1/2 ft", "2.5 ft", 30.0),
        ("197 ft 6 in", "197.5 ft", 2370.0),
        ("197\' 6\"", "197.5 ft", 2370.0),
        ("197\'-6\"", "197.5 ft", 2370.0),
        ("-4 ft 6 in", "-4.5 ft", -54.0),
        ("6 ft 1 1/2 in", "6.125 ft", 73.5),
        ("6 ft-2 in", "6.166667 ft", 74.0),
        ("12\"", "12 in", 12.0),
        ("12\u{2033}", "12 in", 12.0),
        ("12 in.", "12 in", 12.0),
        ("14\'", "14 ft", 168.0),
        ("14 ft.", "14 ft", 168.0),
    ] {
        let advice = advice::<Length>(read);
        assert_eq!(advice, format!("write \"{write}\""), "{read}");
        let [found] = advised::<Length>(&advice)[..] else { panic!("{advice}") };
        // Six decimals of a foot are a third of a micrometre.
        assert!((found - inches * 0.0254).abs() < 2e-7, "{read}: {found}");
    }
}

/// A comma is a mark of thousands in one country and of decimals in the next.
#[test]
fn a_comma_is_told_both_ways_where_it_can_be_both() {
    for (read, advice, values) in [
        ("1,200 kN", "write \"1200 kN\" or \"1.200 kN\"", &[1.2e6, 1.2e3][..]),
        (
            "1,200 kip",
            "write \"1200 kip\" or \"1.200 kip\"",
            &[1.2e6 * 4.448_221_615_260_5, 1.2e3 * 4.448_221_615_260_5],
        ),
        ("60,5 kN", "write \"60.5 kN\"", &[60.5e3]),
        ("-0,25 kN", "write \"-0.25 kN\"", &[-250.0]),
        ("1,200.5 kN", "write \"1200.5 kN\"", &[1.2005e6]),
        ("1,200,000 N", "write \"1200000 N\"", &[1.2e6]),
    ] {
        assert_eq!(self::advice::<Force>(read), advice, "{read}");
        let found = advised::<Force>(advice);
        assert_eq!(found.len(), values.len());
        for (found, value) in found.iter().zip(values) {
            assert!((found / value - 1.0).abs() < 1e-12, "{read}: {found}");
        }
    }
}

/// 1 mgd is 1,000,000 US gallons of 231 cubic inches a day of 86,400 s.
#[test]
fn a_flow_in_units_of_the_trade() {
    let cubic_inch = 0.0254_f64.powi(3);
    for (read, number, unit, one) in [
        ("60 gpm", 60.0, "gal_us/min", 231.0 * cubic_inch / 60.0),
        ("60 GPM", 60.0, "gal_us/min", 231.0 * cubic_inch / 60.0),
        ("500 gpd", 500.0, "gal_us/day", 231.0 * cubic_inch / 86_400.0),
        ("3 cfs", 3.0, "ft3/s", 0.3048_f64.powi(3)),
        ("25 lps", 25.0, "L/s", 1e-3),
    ] {
        assert_eq!(advice::<VolumeRate>(read), format!("write \"{unit}\""), "{read}");
        let found = VolumeRate::from_text(&format!("{number} {unit}")).unwrap().si();
        assert!((found / (number * one) - 1.0).abs() < 1e-12, "{read}: {found}");
    }
    for read in ["2.5 mgd", "2.5 MGD"] {
        let advice = advice::<VolumeRate>(read);
        assert_eq!(advice, "write \"2500000 gal_us/day\"");
        let [found] = advised::<VolumeRate>(&advice)[..] else { panic!("{advice}") };
        assert!((found / (2.5e6 * 231.0 * cubic_inch / 86_400.0) - 1.0).abs() < 1e-12, "{found}");
    }
    assert_eq!(advice::<VolumeRate>("2 l/s"), "write \"L\"");
}

#[test]
fn a_unit_in_words_or_in_other_letters() {
    let foot = 0.3048_f64;
    for (read, write, value) in [
        ("60 sq in", "in2", 60.0 * 0.0254 * 0.0254),
        ("2 sq ft", "ft2", 2.0 * foot * foot),
        ("2 sf", "ft2", 2.0 * foot * foot),
        ("2 sq m", "m2", 2.0),
    ] {
        assert_eq!(advice::<Area>(read), format!("write \"{write}\""), "{read}");
        let number = read.split(' ').next().unwrap();
        let found = Area::from_text(&format!("{number} {write}")).unwrap().si();
        assert!((found / value - 1.0).abs() < 1e-12, "{read}: {found}");
    }
    for (read, write) in [("60 FT", "ft"), ("3 MM", "mm"), ("5 Inch", "inch")] {
        assert_eq!(advice::<Length>(read), format!("write \"{write}\""), "{read}");
    }
    for (read, write) in [("15000 ft-lb", "lbf*ft"), ("20 kNm", "kN*m")] {
        assert_eq!(advice::<Torque>(read), format!("write \"{write}\""), "{read}");
        Torque::from_text(&format!("1 {write}")).unwrap();
    }
    assert_eq!(advice::<LineLoad>("3 klf"), "write \"kip/ft\"");
    assert!(advice::<Force>("12 k").starts_with("write \"kip\" (1000 lbf) or \"kN\""));
}

/// A mass stands for the force that it weighs, under standard gravity.
#[test]
fn a_mass_where_a_force_is_due_is_told_as_one() {
    fn told<Q: FromText>(read: &str, write: &str, value: f64) {
        let advice = advice::<Q>(read);
        assert_eq!(advice, format!("write \"{write}\""), "{read}");
        let [found] = advised::<Q>(&advice)[..] else { panic!("{advice}") };
        assert!((found / value - 1.0).abs() < 1e-12, "{read}: {found}");
    }
    let gravity = 9.806_65;
    told::<Force>("200 lb", "200 lbf", 200.0 * 0.453_592_37 * gravity);
    told::<Force>("90t", "90 tf", 90e3 * gravity);
    told::<LineLoad>("65 lb/ft", "65 lbf/ft", 65.0 * 0.453_592_37 * gravity / 0.3048);
    told::<UnitWeight>("1900 kg/m3", "1900 kgf/m3", 1900.0 * gravity);
    assert_eq!(advice::<Force>("3 m"), "write for example \"900 kN\"");
}

/// Odd ends of the same writings: no advice is better than a wrong one.
#[test]
fn what_is_not_understood_has_the_general_example() {
    for read in [
        "3/0 in",
        "3/8 xx",
        "197 ft 13 in",
        "5 ft 3 m",
        "3/8",
        "1 2 3 in",
        "1.5 1/2 in",
        "1 nan/2 in",
        "3 ft nan in",
        "3 mN",
        "1,20,5 m",
        "1.5,2 m",
        "0 ,0\0",
    ] {
        assert_eq!(advice::<Length>(read), "write for example \"300 ft\"", "{read}");
    }
}
