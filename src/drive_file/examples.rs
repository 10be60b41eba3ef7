//! How a value of a field is written, for the advice of a fault: a wall in millimetres, a depth in metres.

use crate::quantity::{
    Angle, Area, Dim, Force, Length, LineLoad, Measure, Pressure, Ratio, ThermodynamicTemperature, UnitSystem,
    UnitWeight, Velocity, VolumeRate, parse, unit,
};
use crate::yaml::Fault;

/// Keys with an example in either family of units. A key of several fields has an example of each dimension.
const BY_KEY: &[(&[&str], [&str; 2])] = &[
    (&["invert_depth", "depth", "groundwater", "top_depth", "thrust_depth", "floor_depth"], ["4.2 m", "14 ft"]),
    (&["tight_soil", "tight_base_depth"], ["5 m", "16 ft"]),
    (&["tolerance", "deviation", "wave_amplitude", "spacers"], ["25 mm", "1 in"]),
    (&["allowed_settlement", "largest_stone"], ["20 mm", "0.75 in"]),
    (&["end_squareness", "joint_gap"], ["2 mm", "0.08 in"]),
    (&["wall", "casing_wall", "thickness", "crushed_thickness", "cutting_edge"], ["12 mm", "0.5 in"]),
    (&["size", "outside_diameter", "inside_diameter", "needed_inside_diameter"], ["300 mm", "12 in"]),
    (&["casing", "bore", "passes", "joint_diameter", "eye_diameter"], ["450 mm", "18 in"]),
    (&["head_diameter"], ["120 mm", "5 in"]),
    (&["clearance", "beside"], ["0.5 m", "2 ft"]),
    (&["free_length", "pipe_length", "plug", "every", "width", "height"], ["3 m", "10 ft"]),
    (&["spt_n"], ["12", "12"]),
    (&["sdr"], ["11", "11"]),
    (&["weight", "factor"], ["3", "3"]),
    (&["weight"], ["1.2 kN/m", "80 lbf/ft"]),
    (&["safety", "spread"], ["1.5", "1.5"]),
    (&["price", "shift_price", "setup_price", "pit_price"], ["250", "250"]),
    (&["budget"], ["90000", "90000"]),
    (&["programme", "set_up", "pits", "grouting"], ["12", "12"]),
    (&["efficiency", "joint_factor"], ["0.9", "0.9"]),
    (&["joint_stress_ratio", "friction"], ["0.5", "0.5"]),
    (&["roughness"], ["0.013", "0.013"]),
    (&["grade"], ["0.4 %", "0.4 %"]),
    (&["design_depth"], ["75 %", "75 %"]),
    (&["strength", "cube_strength", "design_strength", "soil_modulus"], ["50 MPa", "7000 psi"]),
    (&["yield_strength"], ["240 MPa", "35 ksi"]),
    (&["inside_pressure", "joint_pressure", "pressure"], ["600 kPa", "90 psi"]),
    (&["undrained_strength", "cohesion", "surcharge"], ["50 kPa", "1000 psf"]),
    (&["undrained_modulus", "shear_modulus"], ["10 MPa", "200 ksf"]),
    (&["area"], ["200 m2", "2000 ft2"]),
];

/// The same where the dimension is all that is known.
const BY_DIMENSION: &[(Dim, [&str; 2])] = &[
    (Length::DIM, ["60 m", "200 ft"]),
    (Ratio::DIM, ["0.5 %", "0.5 %"]),
    (Force::DIM, ["900 kN", "100 tonf_us"]),
    (Pressure::DIM, ["5 kPa", "100 psf"]),
    (Area::DIM, ["0.06 m2", "90 in2"]),
    (LineLoad::DIM, ["1.2 kN/m", "80 lbf/ft"]),
    (UnitWeight::DIM, ["18 kN/m3", "120 pcf"]),
    (ThermodynamicTemperature::DIM, ["25 degC", "77 degF"]),
    (Velocity::DIM, ["10 m/h", "30 ft/h"]),
    (VolumeRate::DIM, ["20 L/s", "300 gal_us/min"]),
    (Angle::DIM, ["15 deg", "15 deg"]),
];

/// How a value of the field at a path is written.
pub(super) fn example(path: &str, dim: Dim, system: UnitSystem) -> &'static str {
    let key = path.rsplit('.').next().unwrap_or_default();
    let key = key.split('[').next().unwrap_or_default();
    // A layer of ground is no packer.
    let layer = path.contains(".layers[") && key == "thickness";
    let of_key = BY_KEY.iter().filter(|(keys, _)| keys.contains(&key) && !layer).map(|(_, texts)| texts);
    let of_key = of_key.into_iter().find(|[si, _]| parse::is_a(si, dim));
    let of_dimension = || BY_DIMENSION.iter().find(|(known, _)| *known == dim).map(|(_, texts)| texts);
    let [si, us] = match of_key.or_else(of_dimension) {
        Some(texts) => texts,
        None => return unit::describe(dim).1,
    };
    if system == UnitSystem::Us { us } else { si }
}

/// The faults of a text with the example of each field in place of that of its dimension.
pub(super) fn by_field(faults: Vec<Fault>, text: &str) -> Vec<Fault> {
    let length = text.lines().find_map(|line| line.strip_prefix("length:")).unwrap_or_default();
    let length = length.split('#').next().unwrap_or_default();
    let system = unit::family(length.trim().trim_matches(['"', '\''])).unwrap_or_default();
    let one = |mut fault: Fault| {
        if let Some(advice) = &mut fault.complaint.advice {
            for (dim, _) in BY_DIMENSION {
                let (_, general) = unit::describe(*dim);
                let here = example(&fault.path, *dim, system);
                *advice = advice.replacen(&format!("example \"{general}\""), &format!("example \"{here}\""), 1);
            }
        }
        fault
    };
    faults.into_iter().map(one).collect()
}
