//! `jackpull template`: a commented drive file to start from.

use super::output::{Outcome, print};
use super::units::Units;
use clap::{Args, ValueEnum};

/// Print a commented drive file to start from.
#[derive(Debug, Args)]
pub(super) struct Template {
    /// What the pipe will carry.
    #[arg(long, value_enum, default_value_t = Service::GravitySewer)]
    service: Service,
    /// Units of the file.
    #[arg(long, value_enum, default_value_t = Units::Si)]
    units: Units,
}

/// What the pipe will carry, as in the drive file.
#[derive(Debug, Clone, Copy, ValueEnum)]
#[value(rename_all = "snake_case")]
enum Service {
    GravitySewer,
    PressureMain,
    Casing,
}

/// Names in angle brackets stand for quantities.
const TEXT: &str = include_str!("template.yaml");

const SI: &[(&str, &str)] = &[
    ("units", "m, mm, kN, kPa, MPa, degC, h, % and others"),
    ("length", "60 m"),
    ("launch", "4.20 m"),
    ("reception", "3.96 m"),
    ("grade", "0.4 %"),
    ("water", "5.5 m"),
    ("none", "0 mm"),
    ("change", "35 m"),
    ("line", "400 m"),
    ("inside", "250 mm"),
    ("stone", "20 mm"),
    ("moist", "19 kN/m3"),
    ("saturated", "20.5 kN/m3"),
    ("low", "3 kPa"),
    ("likely", "8 kPa"),
    ("high", "20 kPa"),
    ("thrust", "900 kN"),
    ("pull", "500 kN"),
    ("stem", "100 mm"),
    ("face_low", "10 kN"),
    ("face_likely", "15 kN"),
    ("face_high", "20 kN"),
    ("tolerance", "20 mm"),
    ("rate", "10 m/h"),
    ("temperature", "25 degC"),
    ("radius", "25 m"),
    ("excess", "20 m"),
    ("radius_less", "2 m"),
    ("torque", "20 kN*m"),
    ("torque_low", "4 kN*m"),
    ("stem_wall", "10 mm"),
    ("free", "2 m"),
    ("offset", "3 mm"),
    ("curve", "1000 m"),
    ("packer", "12 mm"),
    ("wall", "3 m"),
    ("eye", "600 mm"),
    ("flow_min", "4 L/s"),
    ("flow_max", "25 L/s"),
    ("half_wave", "40 m"),
    ("settlement", "20 mm"),
    ("main_depth", "1.2 m"),
    ("site_area", "200 m2"),
    ("clearance", "0.5 m"),
    ("plug", "3 m"),
    ("pace", "12 m"),
    ("pit_length", "7 m"),
    ("pit_width", "3 m"),
    ("floor", "4.6 m"),
    ("crane", "50 kN"),
    ("string", "40 m"),
    ("link", "60 kN"),
    ("drag", "345 Pa"),
    ("plate", "4 m2"),
    ("bearing", "200 kPa"),
    ("flow", "300 L/min"),
    ("ground", "12 degC"),
    ("spacer", "20 mm"),
    ("grout", "1500 kg/m3"),
    ("grouting", "50 kPa"),
    ("cylinders", "50000 mm2"),
];

const US: &[(&str, &str)] = &[
    ("units", "ft, in, tonf_us (2000 lbf), lbf, psf, psi, degF, h, % and others"),
    ("length", "200 ft"),
    ("launch", "13.5 ft"),
    ("reception", "12.7 ft"),
    ("grade", "0.4 %"),
    ("water", "18 ft"),
    ("none", "0 in"),
    ("change", "115 ft"),
    ("line", "1300 ft"),
    ("inside", "10 in"),
    ("stone", "0.75 in"),
    ("moist", "120 pcf"),
    ("saturated", "130 pcf"),
    ("low", "60 psf"),
    ("likely", "170 psf"),
    ("high", "420 psf"),
    ("thrust", "100 tonf_us"),
    ("pull", "50 tonf_us"),
    ("stem", "4 in"),
    ("face_low", "2200 lbf"),
    ("face_likely", "3400 lbf"),
    ("face_high", "4500 lbf"),
    ("tolerance", "0.75 in"),
    ("rate", "30 ft/h"),
    ("temperature", "77 degF"),
    ("radius", "80 ft"),
    ("excess", "65 ft"),
    ("radius_less", "7 ft"),
    ("torque", "15000 lbf*ft"),
    ("torque_low", "3000 lbf*ft"),
    ("stem_wall", "0.4 in"),
    ("free", "7 ft"),
    ("offset", "0.1 in"),
    ("curve", "3000 ft"),
    ("packer", "0.5 in"),
    ("wall", "10 ft"),
    ("eye", "24 in"),
    ("flow_min", "60 gal_us/min"),
    ("flow_max", "400 gal_us/min"),
    ("half_wave", "130 ft"),
    ("settlement", "0.75 in"),
    ("main_depth", "4 ft"),
    ("site_area", "2000 ft2"),
    ("clearance", "20 in"),
    ("plug", "10 ft"),
    ("pace", "40 ft"),
    ("pit_length", "23 ft"),
    ("pit_width", "10 ft"),
    ("floor", "15 ft"),
    ("crane", "6 tonf_us"),
    ("string", "130 ft"),
    ("link", "14000 lbf"),
    ("drag", "0.05 psi"),
    ("plate", "40 ft^2"),
    ("bearing", "4000 psf"),
    ("flow", "80 gal_us/min"),
    ("ground", "54 degF"),
    ("spacer", "0.75 in"),
    ("grout", "94 lb/ft^3"),
    ("grouting", "7 psi"),
    ("cylinders", "78 in2"),
];

// Of two rows of one name the second would never be put in; a name of one list alone would be left in the other.
const _: () = assert!(same_names_once(SI, US), "the names of the template are not the same, in one order, each once");

const fn same_names_once(one: &[(&str, &str)], other: &[(&str, &str)]) -> bool {
    let (mut rest, mut others) = (one, other);
    while let [(name, _), behind @ ..] = rest {
        let [(twin, _), others_behind @ ..] = others else { return false };
        if !same(name, twin) {
            return false;
        }
        let mut ahead = behind;
        while let [(next, _), more @ ..] = ahead {
            if same(name, next) {
                return false;
            }
            ahead = more;
        }
        (rest, others) = (behind, others_behind);
    }
    others.is_empty()
}

const fn same(one: &str, other: &str) -> bool {
    let (mut one, mut other) = (one.as_bytes(), other.as_bytes());
    while let ([a, rest @ ..], [b, others @ ..]) = (one, other) {
        if *a != *b {
            return false;
        }
        (one, other) = (rest, others);
    }
    one.is_empty() && other.is_empty()
}

impl Template {
    pub(super) fn run(&self) -> Outcome {
        match print(&self.text()) {
            Ok(()) => Outcome::Chosen,
            Err(outcome) => outcome,
        }
    }

    fn text(&self) -> String {
        let (service, name) = match self.service {
            Service::GravitySewer => ("gravity_sewer", "Sewer from manhole A to manhole B"),
            Service::PressureMain => ("pressure_main", "Water main under the road"),
            Service::Casing => ("casing", "Casing under the railway"),
        };
        let (quantities, pe) = match self.units {
            Units::Si => (SI, "  - { material: pe100, size: 315 mm, sdr: 11 }"),
            Units::Us => (US, "  - { material: pe4710, size: 12 in, sdr: 11 }"),
        };
        // Clay carries no pressure; a file that offers it for a main would only show that.
        let candidates = match self.service {
            Service::PressureMain => pe.to_owned(),
            _ => format!("  - {{ material: clay, size: 10 in }}\n{pe}"),
        };
        let words = [("service", service), ("name", name), ("candidates", candidates.as_str())];
        words
            .iter()
            .chain(quantities)
            .fold(TEXT.to_owned(), |text, (key, value)| text.replace(&format!("<{key}>"), value))
    }
}
