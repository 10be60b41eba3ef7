//! Drives as engineers write them, made at random: each with what is usual of its kind, told or left out by chance.

use serde_json::{Map, Value, json};

/// Random numbers that are the same on every machine (SplitMix64).
pub(crate) struct Chance(u64);

impl Chance {
    pub(crate) const fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A whole number below another.
    pub(crate) fn below(&mut self, end: usize) -> usize {
        (self.next() % end as u64) as usize
    }

    /// One of several.
    pub(crate) fn of<T: Clone>(&mut self, several: &[T]) -> T {
        several[self.below(several.len())].clone()
    }

    /// Holds so many times in ten.
    fn in_ten(&mut self, times: usize) -> bool {
        self.below(10) < times
    }
}

/// Puts a value into an object, most times.
fn maybe(object: &mut Value, chance: &mut Chance, key: &str, value: Value) {
    if chance.in_ten(6) {
        object[key] = value;
    }
}

/// A block of some of these fields; those of the second list always.
fn block(chance: &mut Chance, may: &[(&str, Value)], must: &[(&str, Value)]) -> Value {
    let mut fields: Map<String, Value> = must.iter().map(|(key, value)| ((*key).to_owned(), value.clone())).collect();
    for (key, value) in may {
        if chance.in_ten(7) {
            fields.insert((*key).to_owned(), value.clone());
        }
    }
    Value::Object(fields)
}

/// Soil, told in one of its ways.
fn soil(chance: &mut Chance, angle: &str, undrained: &str) -> Value {
    let mut soil = json!({ "moist": "19 kN/m3", "friction_angle": angle });
    if chance.in_ten(7) {
        soil["saturated"] = json!("20 kN/m3");
    } else {
        soil["buoyant"] = json!("10.2 kN/m3");
    }
    if !undrained.is_empty() {
        soil["undrained_strength"] = json!(undrained);
        maybe(&mut soil, chance, "undrained_modulus", json!("15 MPa"));
        maybe(&mut soil, chance, "cohesion", json!("5 kPa"));
    }
    maybe(&mut soil, chance, "shear_modulus", json!("8 MPa"));
    maybe(&mut soil, chance, "surcharge", json!("10 kPa"));
    if chance.in_ten(3) {
        let mut layer = json!({ "thickness": "1 m", "moist": "18 kN/m3", "friction_angle": "30 deg" });
        let weight = if chance.in_ten(5) { ("saturated", "20 kN/m3") } else { ("buoyant", "10.2 kN/m3") };
        layer[weight.0] = json!(weight.1);
        soil["layers"] = json!([layer]);
    }
    soil
}

fn stretch(chance: &mut Chance, water: &str) -> Value {
    let (class, blows, angle, undrained) = chance.of(&[
        ("firm_to_very_stiff_clay", "12", "24 deg", "60 kPa"),
        ("firm_to_very_stiff_clay", "20", "24 deg", "100 kPa"),
        ("hard_clay", "35", "26 deg", "180 kPa"),
        ("medium_to_dense_sand", "22", "34 deg", ""),
    ]);
    let mut stretch = json!({ "class": class });
    for (key, value) in [("spt_n", blows), ("largest_stone", "20 mm")] {
        if chance.in_ten(8) {
            stretch[key] = json!(value);
        }
    }
    let soil = soil(chance, angle, undrained);
    maybe(&mut stretch, chance, "soil", soil);
    if chance.in_ten(2) {
        stretch["unit_friction"] = json!({ "low": "1 kPa", "likely": "3 kPa", "high": "5 kPa" });
    }
    if chance.in_ten(2) {
        stretch["groundwater"] = json!(water);
    }
    if water == "2.5 m" && undrained.is_empty() && chance.in_ten(5) {
        stretch["treatment"] = json!("dewatered");
    }
    stretch
}

fn ground(chance: &mut Chance, water: &str) -> Value {
    let mut ground = vec![stretch(chance, water)];
    if chance.in_ten(3) {
        ground[0]["to"] = json!("15 m");
        let mut last = stretch(chance, water);
        maybe(&mut last, chance, "from", json!("15 m"));
        ground.push(last);
    }
    if chance.in_ten(2) {
        ground[0]["from"] = json!("0 m");
    }
    json!(ground)
}

fn jacked(chance: &mut Chance) -> Value {
    let packer = json!({ "thickness": "12 mm", "modulus": "200 MPa" });
    let mut pipe = match chance.below(4) {
        0 => json!({ "material": "clay", "size": chance.of(&["10 in", "15 in", "21 in"]),
            "certificate": chance.of(&["en_295_7", "astm_c1208"]), "packer": packer, "crushing": "40 kN/m",
            "end_squareness": "1 mm", "pipe_length": "2 m" }),
        1 => json!({ "material": "concrete", "size": "600 mm", "strength": "50 MPa", "outside_diameter": "760 mm",
            "inside_diameter": "600 mm", "end_bearing_area": "0.11 m2", "weight": "4.2 kN/m", "packer": packer,
            "crushing": "60 kN/m", "pipe_length": "2.5 m", "end_squareness": "1.5 mm", "rated_force": "1500 kN" }),
        2 if chance.in_ten(3) => json!({ "material": "steel", "size": "610 mm", "outside_diameter": "610 mm",
            "wall": "9.5 mm", "yield_strength": "240 MPa", "factor": "3" }),
        2 => {
            json!({ "material": "steel", "size": "610 mm", "outside_diameter": "610 mm", "wall": "9.5 mm", "steel_grade": "api_5l_b",
            "free_length": "3 m", "weight": "1.4 kN/m" })
        }
        _ => json!({ "material": "grp", "size": "600 mm", "outside_diameter": "616 mm", "wall": "40 mm",
            "end_bearing_area": "0.05 m2", "strength": "90 MPa", "packer": packer, "pipe_length": "3 m", "weight": "1.4 kN/m",
            "rated_force": "1200 kN" }),
    };
    if pipe["material"] != "steel" && chance.in_ten(3) {
        let outside = chance.of(&["1016 mm", "914 mm"]);
        pipe["casing"] = json!(outside);
        pipe["casing_wall"] = json!("12.7 mm");
        for (key, value) in [
            ("casing_yield_strength", "240 MPa"),
            ("casing_free_length", "3 m"),
            ("casing_joint_thrust", "3 MN"),
            ("casing_factor", "2"),
        ] {
            maybe(&mut pipe, chance, key, json!(value));
        }
    }
    if pipe.get("crushing").is_some() {
        maybe(&mut pipe, chance, "annulus", json!("grouted"));
    }
    maybe(&mut pipe, chance, "price", json!({ "price": "60", "per": "1 m" }));
    match pipe["material"].as_str() {
        Some("clay") => {
            maybe(&mut pipe, chance, "factor", json!("3"));
            if chance.in_ten(3) {
                pipe.as_object_mut().unwrap().remove("packer");
                pipe["joint_stress_ratio"] = json!("0.5");
            }
        }
        Some("concrete") => {
            pipe["packer"]["outside_diameter"] = json!("740 mm");
            pipe["packer"]["inside_diameter"] = json!("620 mm");
            if chance.in_ten(4) {
                pipe["cube_strength"] = json!("60 MPa");
                pipe["scheme"] = json!("cn_annex_e");
                let (key, value) = chance.of(&[("concrete_grade", "c50"), ("design_strength", "23 MPa")]);
                pipe[key] = json!(value);
            }
        }
        _ => {}
    }
    pipe
}

fn pulled(chance: &mut Chance) -> Value {
    let mut pipe = match chance.below(6) {
        0 => json!({ "material": "pvc_fused", "size": "12 in", "sdr": 18, "joint_factor": "0.9" }),
        1 => json!({ "material": "pvc_restrained", "size": "12 in", "sdr": 18, "joint_pressure": "1.6 MPa",
            "joint_deflection_factor": "0.8", "joint_deflection": "2 deg", "pipe_length": "6 m" }),
        2 | 3 => {
            json!({ "material": "pe100", "series": "iso", "size": chance.of(&["315 mm", "250 mm"]), "sdr": 11, "ovality": "1 %" })
        }
        4 => json!({ "material": "pvc_restrained", "size": "12 in", "sdr": 18, "joint_pull": "250 kN",
            "joint_deflection": "2 deg", "pipe_length": "6 m", "joint_diameter": "400 mm" }),
        _ => json!({ "material": "steel", "size": "12 in", "wall": "9.5 mm", "steel_grade": "api_5l_b" }),
    };
    if pipe["material"] != "steel" {
        maybe(&mut pipe, chance, "bore", json!("470 mm"));
    }
    maybe(&mut pipe, chance, "passes", json!(["350 mm"]));
    pipe
}

fn pull(chance: &mut Chance) -> Value {
    let head = block(chance, &[("rating", json!("400 kN")), ("weak_link", json!("90 kN"))], &[]);
    let laydown = json!({ "length": "80 m", "joint_time": "1 h", "place": "ground" });
    let returns = json!({ "flow": "10 L/s", "plastic_viscosity": "0.02 Pa*s", "yield_point": "10 Pa" });
    let may = [
        ("contents", json!("empty")),
        ("string_on", json!("rollers")),
        ("ramp_angle", json!("12 deg")),
        ("bend_radius", json!("30 m")),
        ("excess_length", json!("5 m")),
        ("fluid_stands_for", json!("24 h")),
        ("fluid_level", json!("1 m")),
        ("welds", json!("documented")),
        ("stress_edition", json!("tightest")),
        ("reamer", json!({ "low": "10 kN", "likely": "20 kN", "high": "40 kN" })),
        ("reaming_torque", json!({ "low": "1 kN*m", "likely": "2 kN*m", "high": "4 kN*m" })),
        ("score", json!("10 %")),
        ("pull_head", head),
        ("laydown", laydown),
        ("ramp_room", json!("80 m")),
        ("reaction", json!({ "area": "4 m2", "allowable_pressure": "150 kPa" })),
        ("returns", returns),
        ("ground_temperature", json!("12 degC")),
        ("hole", json!("fluid")),
    ];
    let mut pull = block(chance, &may, &[("duration", json!("6 h")), ("pipe_temperature", json!("23 degC"))]);
    if chance.in_ten(3) {
        pull.as_object_mut().unwrap().remove("duration");
        pull["rate"] = json!("20 m/h");
        maybe(&mut pull, chance, "stem_removal", json!({ "every": "3 m", "takes": "4 min" }));
    }
    if chance.in_ten(2) {
        pull["unit_drag"] = json!("345 Pa");
    }
    if chance.in_ten(2) {
        pull["collapsed_bore"] = json!({ "length": "3 m", "unit_weight": "19 kN/m3", "friction": "0.5" });
    }
    if chance.in_ten(2) {
        pull["push_assist"] = json!({ "force": "20 kN", "free_length": "2 m", "grip_rating": "60 kN" });
    }
    pull
}

fn pit(chance: &mut Chance, depth: &str, launch: bool) -> Value {
    let mut space =
        json!({ "length": "7 m", "width": "4 m", "floor_depth": format!("{} m", depth.parse::<f64>().unwrap() + 0.6) });
    maybe(&mut space, chance, "crane", json!("150 kN"));
    if chance.in_ten(3) {
        space["permeability"] = json!("1e-5 m/s");
        space["tight_base_depth"] = json!("9 m");
    }
    if chance.in_ten(3) {
        space["tight_soil"] = json!("3 m");
        space["water_pressure"] = json!("40 kPa");
    }
    let mut pit = json!({ "invert_depth": format!("{depth} m") });
    maybe(&mut pit, chance, "space", space);
    maybe(&mut pit, chance, "area", json!("300 m2"));
    maybe(&mut pit, chance, "dewatered", json!(true));
    maybe(&mut pit, chance, "sealed_base", json!(true));
    maybe(&mut pit, chance, "wall_toe_depth", json!("8 m"));
    if launch {
        let soil = soil(chance, "28 deg", "60 kPa");
        let may = [
            ("top_depth", json!(format!("{} m", depth.parse::<f64>().unwrap() - 1.7))),
            ("safety", json!("2")),
            ("movement", json!("checked")),
            ("spread", json!("1")),
            ("eye_diameter", json!("500 mm")),
            ("thrust_depth", json!(format!("{} m", depth.parse::<f64>().unwrap() - 0.2))),
        ];
        let wall = block(chance, &may, &[("width", json!("3.5 m")), ("height", json!("3 m"))]);
        if chance.in_ten(6) {
            pit["soil"] = soil;
            maybe(&mut pit, chance, "wall", wall);
        }
    }
    pit
}

/// One drive.
pub(crate) fn job(chance: &mut Chance) -> Value {
    let service = chance.of(&["gravity_sewer", "gravity_sewer", "pressure_main", "casing"]);
    let is_sewer = service == "gravity_sewer";
    let length = chance.of(&["30 m", "45 m", "60 m", "90 m"]);
    let depth = chance.of(&["3.0", "4.2", "5.5"]);
    let water = chance.of(&["none", "2.5 m", "6 m"]);
    let mut drive = json!({
        "service": service,
        "length": length,
        "launch": pit(chance, depth, true),
        "reception": pit(chance, depth, false),
        "grade": chance.of(&["0.5 %", "1 %", "2 %"]),
        "groundwater": water,
        "lubrication": chance.of(&["metered", "none", "logged"]),
        "ground": ground(chance, water),
    });
    if drive["lubrication"] == "logged" {
        drive["lubricant_pressure"] = json!("60 kPa");
    }
    let has = |block: &Value, key: &str| block.get(key).is_some();
    let torques = json!({ "low": "1 kN*m", "likely": "2 kN*m", "high": "3 kN*m" });
    let may = [
        ("torque", json!("10 kN*m")),
        ("held_to", json!("800 kN")),
        ("cylinder_area", json!("0.05 m2")),
        ("stroke", json!("3.2 m")),
        ("station_thrust", json!("1 MN")),
        ("efficiency", json!("0.9")),
    ];
    drive["rig"] = block(chance, &may, &[("thrust", json!("1500 kN")), ("pull", json!("700 kN"))]);
    let may = [
        ("head_diameter", json!("125 mm")),
        ("wall", json!("12 mm")),
        ("free_length", json!("1.5 m")),
        ("joint_thrust", json!("1000 kN")),
        ("joint_pull", json!("700 kN")),
        ("joint_torque", json!("10 kN*m")),
    ];
    let mut stem = block(chance, &may, &[("outside_diameter", json!("114 mm"))]);
    if stem.get("wall").is_none() {
        stem.as_object_mut().unwrap().remove("free_length");
    }
    if stem.get("joint_torque").is_some() {
        maybe(&mut stem, chance, "torque", torques.clone());
    }
    let crossing = json!({ "at": "15 m", "depth": "1.2 m", "kind": "water main", "allowed_settlement": "25 mm", "allowed_slope": "0.5 %", "clearance": "0.5 m" });
    let surface = [("allowed_settlement", json!("25 mm")), ("allowed_slope", json!("0.5 %"))];
    let over = chance.of(&["road", "open", "road", "open", "road", "railway", "runway"]);
    let mut surface = block(chance, &surface, &[("over", json!(over))]);
    if over == "railway" {
        maybe(&mut surface, chance, "railway_permits", json!("uncased"));
    }
    let pace = [
        ("pilot", json!("30 m")),
        ("jacking", json!("15 m")),
        ("pullback", json!("60 m")),
        ("programme", json!("60")),
        ("shift_price", json!("4000")),
        ("casing", json!("15 m")),
        ("reaming", json!("30 m")),
        ("setup_price", json!("9000")),
        ("pit_price", json!("20000")),
        ("spoil_price", json!({ "price": "40", "per": "1 m3" })),
        ("grout_price", json!({ "price": "150", "per": "1 m3" })),
        ("pits", json!("8")),
        ("set_up", json!("2")),
        ("grouting", json!("1")),
        ("recovery", json!("1")),
    ];
    let pace = block(chance, &pace, &[("shift_length", json!("8 h"))]);
    let annulus = [
        ("grout_sets_in", json!("8 h")),
        ("proof", json!("proved")),
        ("soil_modulus", json!("3 MPa")),
        ("grout_waste", json!("1.3")),
        ("spacers", json!("15 mm")),
    ];
    let mut annulus = block(chance, &annulus, &[("filling", json!("grouted"))]);
    if chance.in_ten(6) {
        annulus["grout_density"] = json!("1500 kg/m3");
        annulus["grout_pressure"] = json!("10 kPa");
        annulus["ballast"] = json!("water");
    }
    let no_crossing = chance.in_ten(5);
    let may = [
        ("stem", stem),
        (
            "work",
            chance.of(&[json!({ "round_the_clock": true }), json!({ "shift_length": "8 h", "shifts_a_day": "1" })]),
        ),
        ("if_stalled", json!("rescue_pit")),
        ("spoil", json!(chance.of(&["auger", "slurry", "vacuum", "open_edge"]))),
        ("pilot", json!(chance.of(&["displacement", "drilled"]))),
        ("guidance", json!("laser")),
        ("face", json!({ "low": "10 kN", "likely": "15 kN", "high": "20 kN" })),
        (
            "steering",
            chance.of(&[
                json!({ "joint_angle": "0.1 deg" }),
                json!({ "deviation": "2 mm" }),
                json!({ "joint_gap": "1.5 mm" }),
                json!({ "wave_amplitude": "10 mm", "half_wave": "15 m" }),
            ]),
        ),
        ("crossings", if no_crossing { json!([]) } else { json!([crossing]) }),
        ("pace", pace),
    ];
    for (key, value) in may {
        maybe(&mut drive, chance, key, value);
    }
    // Nothing can be chosen without it.
    if chance.in_ten(9) {
        drive["surface"] = surface;
    }
    if drive["rig"].get("torque").is_some() && drive.get("spoil").is_none_or(|spoil| spoil == "auger") {
        maybe(&mut drive["rig"], chance, "auger_torque", torques);
    }
    if drive.get("spoil").is_some_and(|spoil| spoil == "open_edge") {
        drive.as_object_mut().unwrap().remove("face");
        drive["cutting_edge"] = json!("15 mm");
    }
    if has(&drive["rig"], "efficiency") && !has(&drive["rig"], "cylinder_area") {
        drive["rig"].as_object_mut().unwrap().remove("efficiency");
    }
    if has(&drive, "surface") {
        let traffic = match drive["surface"]["over"].as_str() {
            Some("road") => "highway",
            Some("railway") => "railway",
            Some("runway") => "aircraft",
            _ => "none",
        };
        maybe(&mut drive, chance, "traffic", json!(traffic));
    }
    let is_pulled = chance.in_ten(5);
    drive["candidates"] = json!([if is_pulled { pulled(chance) } else { jacked(chance) }]);
    if is_pulled {
        drive["pull"] = pull(chance);
        maybe(&mut drive, chance, "annulus", annulus);
    }
    if is_sewer {
        let tolerance = chance.of(&["25 mm", "50 mm", "100 mm"]);
        maybe(&mut drive, chance, "tolerance", json!(tolerance));
        maybe(&mut drive, chance, "weights", json!([{ "criterion": "grade", "weight": "2" }]));
        maybe(&mut drive, chance, "half_wave", json!("10 m"));
        maybe(&mut drive, chance, "design_flow", json!({ "min": "5 L/s", "max": "20 L/s", "roughness": "0.013" }));
    } else if service == "casing" {
        maybe(
            &mut drive,
            chance,
            "carrier",
            json!({ "service": "gravity_sewer", "outside_diameter": "150 mm", "grade": "0.6 %" }),
        );
    } else if service == "pressure_main" {
        maybe(&mut drive, chance, "vacuum", json!({ "pressure": "50 kPa", "lasts": "1 h" }));
        maybe(&mut drive, chance, "service_pressure", json!("600 kPa"));
        if has(&drive, "service_pressure") {
            drive["surge"] = json!({ "recurring": "200 kPa", "occasional": "400 kPa" });
        }
    }
    drive
}
