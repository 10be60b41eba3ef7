//! Stretches of ground, pits and the thrust wall, as the engineer writes them.

use super::band::WaterTable;
use super::declare::fields;
use super::site::PitSpaceFile;
use crate::handbook::{GroundClass, GroundHazard, Treatment};
use crate::quantity::{Angle, Area, Length, Pressure, Ratio, UnitWeight};
use crate::yaml::{MayBe, key_words};

fields! {
    /// A stretch of like ground.
    StretchFile at ["ground[]."] {
        /// Where it begins, measured from the launch pit; the end of the stretch before if left out.
        from: may<Length> as Distance, Within(0.0, LONGEST), ["60 m", "200 ft"], else "the end of the stretch before";
        /// Where it ends; the last one may leave it out and then ends at the reception pit.
        to: may<Length> as Distance, UpTo(LONGEST), ["60 m", "200 ft"], else "the reception pit, in the last stretch";
        /// Class.
        class: must<GroundClass>,
            said ["type", "soil_type", "kind"];
        /// The other ground of a mixed face.
        mixed_with: may<GroundClass>;
        /// Depth of the water table below ground here, where it is not that of the drive; below zero for water over a bed.
        groundwater: may<WaterTable> as Depth, Within(m(-20.0), m(200.0)), usual(m(-5.0), m(60.0)),
            ["4.2 m", "14 ft"], else "that of the drive",
            said ["water", "water_table"];
        /// Standard penetration test blow count.
        spt_n: may<Ratio> as Count, Within(0.0, 200.0), usual(0.0, 50.0), ["12", "12"], else "the counts of the class",
            said ["n", "n_value", "spt", "blows", "blow_count"];
        /// Largest stone expected; `0 mm` for none.
        largest_stone: may<Length> as Diameter, Within(0.0, m(3.0)), usual(0.0, mm(300.0)), ["20 mm", "0.75 in"],
            said ["cobbles", "boulders", "stones", "max_stone"];
        /// What is done against water at the face, for the ground of this stretch.
        treatment: may<Treatment>;
        /// Hazards that the class does not tell; `[]` where it is known that there are none, which fill asks for.
        hazards: list<GroundHazard>;
        /// Whether a drilled bore stands here by itself, where that is known from others beside it: clay and rock of which
        /// it is not certain are then taken so, with care.
        bore_stands: may<bool>, else "as class, strength, depth, water and play tell";
        /// Unit friction on everything in the bore, instead of the table.
        unit_friction: band<Pressure> as UnitFriction, Within(0.0, kpa(200.0)), usual(0.0, kpa(60.0)),
            ["5 kPa", "100 psf"],
            else "the table of friction bands";
        /// Properties of the soil that holds the pipe, and of the layers over it.
        soil: block<SoilFile>;
    }

    /// Properties of the soil that holds the pipe, and of the layers over it.
    SoilFile at ["ground[].soil.", "launch.soil."] {
        /// Unit weight above water.
        moist: may<UnitWeight> as UnitWeight, Within(kn_per_m3(9.0), kn_per_m3(27.0)), usual(kn_per_m3(14.0), kn_per_m3(23.0)),
            ["18 kN/m3", "120 pcf"], else "that of the class, at both ends",
            said ["unit_weight", "weight", "density"];
        /// Unit weight below water, water included.
        saturated: may<UnitWeight> as UnitWeight, Within(kn_per_m3(10.0), kn_per_m3(28.0)), usual(kn_per_m3(16.0), kn_per_m3(24.0)),
            ["18 kN/m3", "120 pcf"];
        /// Unit weight below water less that of water; stands in for `saturated`.
        buoyant: may<UnitWeight> as UnitWeight, Within(kn_per_m3(0.5), kn_per_m3(17.0)), usual(kn_per_m3(5.0), kn_per_m3(13.0)),
            ["10 kN/m3", "64 pcf"];
        /// Friction angle.
        friction_angle: may<Angle> as Angle, Within(0.0, deg(50.0)), ["15 deg", "15 deg"], else "that of the class, at both ends",
            said ["phi"];
        /// Shear modulus, for the pressure that the bore fluid may have.
        shear_modulus: may<Pressure> as Modulus, Within(mpa(0.1), mpa(10_000.0)), usual(mpa(1.0), mpa(200.0)),
            ["10 MPa", "200 ksf"];
        /// Undrained strength of clay.
        undrained_strength: may<Pressure> as UnitFriction, Within(kpa(1.0), mpa(2.0)), ["50 kPa", "1000 psf"],
            said ["su", "cu", "c_u", "shear_strength"];
        /// Cohesion that the earth load in service may count on.
        cohesion: may<Pressure> as UnitFriction, Within(0.0, kpa(500.0)), usual(0.0, kpa(25.0)), ["5 kPa", "100 psf"],
            said ["c"];
        /// Undrained modulus of elasticity of clay.
        undrained_modulus: may<Pressure> as Modulus, Within(mpa(0.2), mpa(2_000.0)), ["10 MPa", "200 ksf"];
        /// Load on the surface.
        surcharge: may<Pressure> as UnitFriction, Within(0.0, kpa(500.0)), usual(0.0, kpa(50.0)),
            ["50 kPa", "1000 psf"], else "no load";
        /// Layers over the soil that holds the pipe, from the surface down.
        layers: blocks<LayerFile>;
    }

    /// A layer over the soil that holds the pipe.
    LayerFile at ["ground[].soil.layers[].", "launch.soil.layers[]."] {
        /// Thickness.
        thickness: must<Length> as Depth, Within(m(0.05), DEEPEST), ["2 m", "7 ft"];
        /// Unit weight above water.
        moist: must<UnitWeight> as UnitWeight, Within(kn_per_m3(9.0), kn_per_m3(27.0)), usual(kn_per_m3(14.0), kn_per_m3(23.0)),
            ["18 kN/m3", "120 pcf"];
        /// Unit weight below water, water included.
        saturated: may<UnitWeight> as UnitWeight, Within(kn_per_m3(10.0), kn_per_m3(28.0)), usual(kn_per_m3(16.0), kn_per_m3(24.0)),
            ["18 kN/m3", "120 pcf"];
        /// Unit weight below water less that of water; stands in for `saturated`.
        buoyant: may<UnitWeight> as UnitWeight, Within(kn_per_m3(0.5), kn_per_m3(17.0)), usual(kn_per_m3(5.0), kn_per_m3(13.0)),
            ["10 kN/m3", "64 pcf"];
        /// Friction angle.
        friction_angle: must<Angle> as Angle, Within(0.0, deg(50.0)), usual(deg(10.0), deg(46.0)), ["15 deg", "15 deg"];
    }
}

impl SoilFile {
    /// Whether nothing of its weight and friction is left to the class.
    pub(super) const fn is_whole(&self) -> bool {
        self.moist.is_some() && self.friction_angle.is_some()
    }
}

fields! {
    /// A pit.
    PitFile at ["launch.", "reception."] {
        /// Depth of the pipe invert below ground. At the launch pit it must be there.
        invert_depth: may<Length> as Depth, Within(m(0.3), DEEPEST), usual(m(1.2), m(12.0)), ["4.2 m", "14 ft"],
            else "at the reception pit by the grade", said ["depth", "invert"];
        /// Sides, floor and crane.
        space: block<PitSpaceFile>;
        /// Whether wells keep the ground water below the floor.
        dewatered: may<bool>, else "false";
        /// Whether the base is sealed against water, by a plug or a cut-off in tight ground.
        sealed_base: may<bool>, else "false";
        /// Depth of the toe of the shoring below ground.
        wall_toe_depth: may<Length> as Depth, UpTo(DEEPEST), ["7 m", "23 ft"], else "at the floor";
        /// Working area at the surface, pit included, lay-down of a string not.
        area: may<Area> as GroundArea, Within(m2(4.0), m2(50_000.0)), usual(m2(30.0), m2(2_000.0)),
            ["200 m2", "2000 ft2"];
        /// Ground behind the wall that takes the thrust, launch pit only; that of the first stretch if left out.
        soil: block<SoilFile>;
        /// The wall that takes the thrust, launch pit only.
        wall: block<WallFile>;
    }

    /// The wall in the launch pit that takes the thrust.
    WallFile at ["launch.wall."] {
        /// Width.
        width: must<Length> as Distance, Within(m(0.3), m(30.0)), usual(m(1.2), m(8.0)), ["3 m", "10 ft"];
        /// Height.
        height: must<Length> as Distance, Within(m(0.3), m(30.0)), usual(m(1.2), m(8.0)), ["3 m", "10 ft"];
        /// Depth of its top below ground.
        top_depth: may<Length> as Depth, Within(0.0, DEEPEST), ["4.2 m", "14 ft"],
            else "half the height of the wall over the axis of thrust";
        /// Depth of the axis of thrust below ground, where it is not that of the pipe.
        thrust_depth: may<Length> as Depth, UpTo(DEEPEST), ["4.2 m", "14 ft"], else "that of the pipe";
        /// Diameter of an opening in the wall at the axis of thrust.
        eye_diameter: may<Length> as Diameter, UpTo(m(30.0)), ["450 mm", "18 in"], else "no opening";
        /// Factor for the ground beside the wall.
        spread: may<Ratio> as Ratio, Within(1.0, 2.5), usual(1.0, 1.0),
            ["1", "1"], else "the table of thrust walls";
        /// Resistance over thrust.
        safety: may<Ratio> as Ratio, Within(1.0, 10.0), usual(2.0, 10.0),
            ["2", "2"], else "the table of thrust walls";
        /// Whether the movement of the wall was checked apart.
        movement: may<Movement>, else "not checked";
    }
}

impl PitFile {
    /// A pit whose invert lies at this depth.
    #[must_use]
    pub fn at(invert_depth: Length) -> Self {
        Self { invert_depth: Some(invert_depth.into()), ..Self::new() }
    }

    /// Depth of the invert; none is told where it follows from the grade.
    pub(crate) fn depth(&self) -> Option<Length> {
        self.invert_depth.given()
    }
}

key_words! {
    /// Whether the movement of a wall was checked apart.
    pub enum Movement: "how the movement of the wall is known" {
        /// It was not.
        #[default]
        NotChecked = "not_checked",
        /// It was, and the line bears it.
        Checked = "checked",
    }
}
