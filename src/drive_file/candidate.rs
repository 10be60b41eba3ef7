//! A pipe to choose from, as the engineer writes it.

use super::declare::fields;
use super::site::LengthPriceFile;
use crate::quantity::{Angle, Area, Force, FromText, Length, LineLoad, Measure, Pressure, Ratio};
use crate::yaml::{Complaint, Form, FromScalar, Scalar, ToScalar, Words, key_words};

key_words! {
    /// Pipe material as designated.
    pub enum Material: "a pipe material" {
        /// Vitrified clay jacking pipe.
        #[default]
        Clay = "clay",
        /// PE 100.
        Pe100 = "pe100",
        /// PE 80.
        Pe80 = "pe80",
        /// PE4710.
        Pe4710 = "pe4710",
        /// HDPE of older or undeclared designation (PE3408 class).
        Hdpe = "hdpe",
        /// MDPE (PE2406 class).
        Mdpe = "mdpe",
        /// Reinforced concrete jacking pipe.
        Concrete = "concrete",
        /// Steel.
        Steel = "steel",
        /// Glass-reinforced plastic.
        Grp = "grp",
        /// Polymer concrete.
        PolymerConcrete = "polymer_concrete",
        /// Ductile iron.
        DuctileIron = "ductile_iron",
        /// PVC.
        Pvc = "pvc",
        /// PVC pressure pipe, butt-fused into a string.
        PvcFused = "pvc_fused",
        /// PVC pressure pipe with joints that hold pull.
        PvcRestrained = "pvc_restrained",
        /// Fibre cement.
        FibreCement = "fibre_cement",
    }
    meanings {
        "vitrified_clay" => ["clay"],
        "vcp" => ["clay"],
        "rcp" => ["concrete"],
        "reinforced_concrete" => ["concrete"],
        "dip" => ["ductile_iron"],
        "iron" => ["ductile_iron"],
        "frp" => ["grp"],
        "fiberglass" => ["grp"],
        "pe" => ["pe100", "pe4710"],
        "polyethylene" => ["pe100", "pe4710"],
        "hdpe_100" => ["pe100"],
        "fpvc" => ["pvc_fused"],
        "fusible_pvc" => ["pvc_fused"],
        "fused_pvc" => ["pvc_fused"],
        "fiber_cement" => ["fibre_cement"],
    }

    /// Dimension series of PE pipe.
    pub enum Series: "a series of pipe sizes" {
        /// ISO 4427, nominal size is the outside diameter in mm.
        #[default]
        Iso = "iso",
        /// Iron pipe sizes, nominal size in inches.
        Ips = "ips",
        /// Ductile iron pipe sizes, nominal size in inches.
        Dips = "dips",
    }

    /// Certificate of clay strength.
    pub enum Certificate: "a certificate of strength" {
        /// Not known.
        #[default]
        Unknown = "unknown",
        /// ASTM C1208.
        AstmC1208 = "astm_c1208",
        /// EN 295-7.
        En295 = "en_295_7",
    }

    /// What is left round a rigid pipe in service.
    pub enum Annulus: "what is left round the pipe" {
        /// It is not grouted.
        #[default]
        Open = "open",
        /// It is grouted full, specified and recorded.
        Grouted = "grouted",
    }

    /// What drives over the pipe.
    pub enum Traffic: "the traffic over the pipe" {
        /// Nothing.
        None = "none",
        /// A road.
        #[default]
        Highway = "highway",
        /// A railway.
        Railway = "railway",
        /// Aircraft of an airport.
        Aircraft = "aircraft",
    }

    /// Whose rules of traffic count.
    pub enum LoadCode: "a code of traffic loads" {
        /// HL-93 on roads and E-80 on railways.
        #[default]
        Us = "us",
        /// Load models 1 and 71 of EN 1991-2.
        En1991 = "en_1991_2",
    }
}

impl Material {
    /// Whether a pipe of it goes in by pulling alone.
    pub(crate) const fn is_only_pulled(self) -> bool {
        matches!(
            self,
            Self::Pe100 | Self::Pe80 | Self::Pe4710 | Self::Hdpe | Self::Mdpe | Self::PvcFused | Self::PvcRestrained
        )
    }
}

/// Crushing strength of a rigid pipe.
#[derive(Debug, Clone, PartialEq)]
pub enum CrushingFile {
    /// Force per length between three edges.
    Strength(LineLoad),
    /// Key of a row of the table `crushing_class`.
    Class(String),
}

impl Default for CrushingFile {
    fn default() -> Self {
        Self::Class(String::new())
    }
}

impl FromScalar for CrushingFile {
    fn from_scalar(scalar: Scalar<'_>) -> Result<Self, Complaint> {
        match scalar {
            Scalar::Text(text) if text.starts_with(|c: char| c.is_ascii_alphabetic()) => {
                Ok(Self::Class(text.to_owned()))
            }
            other => LineLoad::from_scalar(other).map(Self::Strength).map_err(|complaint| {
                let advice = complaint.advice.clone().unwrap_or_default();
                complaint.advise(format!("{advice}, or a class such as \"en_295_160\""))
            }),
        }
    }
}

impl ToScalar for CrushingFile {
    const FORM: Form = Form::OrKey(LineLoad::DIM);
    fn number(&self) -> Option<f64> {
        match self {
            Self::Strength(strength) => Some(strength.si()),
            Self::Class(_) => None,
        }
    }
    fn to_scalar(&self) -> String {
        match self {
            Self::Strength(strength) => strength.to_text(),
            Self::Class(class) => class.clone(),
        }
    }
}

impl Traffic {
    /// What drives over ground with this on it.
    pub(crate) const fn of(over: super::Over) -> Self {
        match over {
            super::Over::Open | super::Over::Stream => Self::None,
            super::Over::Road => Self::Highway,
            super::Over::Railway => Self::Railway,
            super::Over::Runway => Self::Aircraft,
        }
    }
}

fields! {
    /// A pipe to choose from.
    #[derive(PartialEq)]
    CandidateFile at ["candidates[]."] {
        /// Material.
        material: must<Material>,
            said ["type", "pipe"];
        /// Nominal size, as in the table of the series.
        size: must<Length> as Diameter, Within(mm(25.0), m(4.0)), usual(mm(100.0), m(1.5)), ["300 mm", "12 in"],
            said ["diameter", "dn", "nominal_size"],
            or |pipe| pipe.outside_diameter.clone().filter(|_| pipe.material.value == Material::Steel);
        /// Series of a PE pipe.
        series: may<Series>, else "by the material";
        /// Dimension ratio of a PE pipe.
        sdr: may<Ratio> as Ratio, Within(5.0, 50.0), ["11", "11"],
            said ["dr"];
        /// Outside diameter, instead of the table.
        outside_diameter: may<Length> as Diameter, Within(mm(30.0), m(5.0)), ["300 mm", "12 in"],
            label "OD", else "the table of the size",
            said ["od"];
        /// Inside diameter, instead of the wall or the table.
        inside_diameter: may<Length> as Diameter, Within(mm(10.0), m(5.0)),
            ["300 mm", "12 in"], label "ID", else "wall or table",
            said ["id"];
        /// Minimum wall, instead of the table.
        wall: may<Length> as Wall, Within(mm(1.0), m(1.75)), ["12 mm", "0.5 in"], label "wall", else "the table",
            said ["thickness", "wall_thickness"];
        /// Weight per length of a jacking pipe, instead of the table.
        weight: may<LineLoad> as LineWeight, UpTo(kn_per_m(500.0)), ["1.2 kN/m", "80 lbf/ft"],
            label "weight", else "the table, or density and wall";
        /// End bearing area of a jacking pipe, instead of the one behind its rating.
        end_bearing_area: may<Area> as Area, UpTo(m2(20.0)), ["0.06 m2", "90 in2"],
            label "end area", else "the area behind the rating of the size";
        /// Ovality of a PE pipe as delivered: deviation over mean diameter.
        ovality: may<Ratio> as Percent, Within(0.0, percent(12.0)), usual(0.0, percent(3.0)),
            ["1 %", "1 %"], label "ovality", else "round";
        /// Certificate of strength of a clay pipe.
        certificate: may<Certificate>, label "certificate", else "unknown";
        /// Safety factor on uniform stress of a clay pipe.
        factor: may<Ratio> as Ratio, Within(1.0, 20.0), ["3", "3"], label "factor", else "by habit of the material";
        /// Mean over greatest stress in the joint of a jacking pipe.
        joint_stress_ratio: may<Ratio> as Ratio, Within(0.05, 1.0), ["0.5", "0.5"],
            label "joint stress ratio", else "the joint just closed";
        /// Length of one pipe.
        pipe_length: may<Length> as Distance, Within(m(0.3), m(15.0)), ["3 m", "10 ft"],
            label "pipes of", else "the usual lengths of the material",
            said ["length", "segment_length"];
        /// Strength in compression: of concrete on cylinders, of GRP along the pipe, of polymer concrete.
        strength: may<Pressure> as Strength, Within(mpa(15.0), mpa(200.0)), ["50 MPa", "7000 psi"], label "strength";
        /// Cube strength of concrete, of its class.
        cube_strength: may<Pressure> as Strength, Within(mpa(15.0), mpa(200.0)),
            ["50 MPa", "7000 psi"], label "cube strength";
        /// Design strength of concrete or steel, for the scheme that asks for it.
        design_strength: may<Pressure> as Strength, Within(mpa(5.0), mpa(1_000.0)),
            ["50 MPa", "7000 psi"], label "design strength";
        /// Least yield strength of steel, instead of a grade.
        yield_strength: may<Pressure> as Strength, Within(mpa(150.0), mpa(1_000.0)), usual(mpa(205.0), mpa(485.0)),
            ["240 MPa", "35 ksi"], label "yield";
        /// Grade of steel, a key of the table `steel_grade`.
        steel_grade: may<Words>, label "grade",
            said ["grade"];
        /// Grade of concrete, as in the table `concrete_strength`.
        concrete_grade: may<Words>, label "grade";
        /// Scheme of the end capacity of concrete or steel.
        scheme: may<EndScheme>, label "scheme", else "`en_1916` for concrete, `default` for steel";
        /// Greatest jacking force that the pipe maker allows, all factors in it.
        rated_force: may<Force> as Thrust, Within(kn(1.0), mn(100.0)), ["900 kN", "100 tonf_us"], label "rated",
            said ["allowable_force", "jacking_capacity"];
        /// The packer in the joints of a jacked pipe.
        packer: block<PackerFile>, label "packer";
        /// How far the end of a jacking pipe may be out of square, across its diameter.
        end_squareness: may<Length> as Offset, Within(0.0, mm(150.0)), usual(0.0, mm(2.0)), ["1.5 mm", "0.06 in"];
        /// Length of a jacked steel pipe that nothing holds, in the pit.
        free_length: may<Length> as Distance, Within(m(0.05), m(30.0)), usual(m(0.3), m(6.0)),
            ["3 m", "10 ft"], label "free length";
        /// Strength of a fused PVC joint over that of the pipe.
        joint_factor: may<Ratio> as Ratio, UpTo(1.0), usual(0.8, 1.0), ["0.9", "0.9"], label "joint factor";
        /// Pressure class of a pipe for a main, by its maker, at the temperature that it is to lie in.
        pressure_class: may<Pressure> as Pressure, Within(mpa(0.05), mpa(10.0)), usual(mpa(0.2), mpa(4.0)),
            ["1 MPa", "150 psi"], label "class", else "by its wall and material";
        /// Pull that a restrained joint may take, by its maker.
        joint_pull: may<Force> as Pull, Within(kn(1.0), mn(10.0)), ["900 kN", "100 tonf_us"], label "joint pull";
        /// Pressure rating of a restrained joint whose maker gives no pull.
        joint_pressure: may<Pressure> as Pressure, Within(mpa(0.1), mpa(10.0)), usual(mpa(0.6), mpa(4.0)),
            ["600 kPa", "90 psi"], label "joint pressure";
        /// What deflection leaves of the pull by `joint_pressure`.
        joint_deflection_factor: may<Ratio> as Ratio, UpTo(1.0), ["0.5", "0.5"];
        /// Deflection that a restrained joint may take, by its maker.
        joint_deflection: may<Angle> as Angle, Within(deg(0.1), deg(11.0)), usual(deg(0.5), deg(5.0)),
            ["3 deg", "3 deg"], label "deflection";
        /// Outside diameter of the joint of a pulled pipe, where it is wider than the pipe.
        joint_diameter: may<Length> as Diameter, Within(mm(30.0), m(8.0)), ["450 mm", "18 in"],
            label "joint", else "no wider than the pipe";
        /// Outside diameter of a casing pushed behind the stem before the pipe.
        casing: may<Length> as Diameter, Within(mm(50.0), m(4.0)),
            ["450 mm", "18 in"], label "casing", else "no casing";
        /// Wall of that casing, for its weight and its strength.
        casing_wall: may<Length> as Wall, Within(mm(2.0), m(0.8)), ["12 mm", "0.5 in"], label "casing wall";
        /// Yield strength of that casing.
        casing_yield_strength: may<Pressure> as Strength, Within(mpa(150.0), mpa(1_000.0)), usual(mpa(205.0), mpa(485.0)),
            ["240 MPa", "35 ksi"], label "casing yield";
        /// Safety factor on that strength.
        casing_factor: may<Ratio> as Ratio, Within(1.5, 10.0), usual(2.0, 10.0), ["3", "3"], label "casing factor";
        /// Length of that casing that nothing holds, in the launch pit.
        casing_free_length: may<Length> as Distance, Within(m(0.05), m(30.0)), usual(m(0.3), m(6.0)),
            ["3 m", "10 ft"], label "casing free";
        /// Thrust that the joints of that casing may take.
        casing_joint_thrust: may<Force> as Thrust, Within(kn(1.0), mn(60.0)),
            ["900 kN", "100 tonf_us"], label "casing joint";
        /// Final bore round the pipe.
        bore: may<Length> as Diameter, Within(mm(30.0), m(12.0)),
            ["450 mm", "18 in"], label "bore", else "by the rule of the method";
        /// Strength of a rigid pipe between three edges in the test of crushing, or its class.
        crushing: may<CrushingFile> as LineWeight, Within(kn_per_m(5.0), kn_per_m(1_000.0)), usual(kn_per_m(20.0), kn_per_m(550.0)),
            ["40 kN/m", "2700 lbf/ft"], label "crushing";
        /// What is left round a rigid pipe in service.
        annulus: may<Annulus>, label "annulus", else "open";
        /// Bores of the reaming passes before the one that brings the pipe, from the smallest; `[]` for none.
        passes: list<Length> as Diameter, Within(mm(30.0), m(12.0)),
            ["450 mm", "18 in"], label "passes", else "as habit goes up";
        /// Price of the pipe, in the user's money: of every pipe listed, or of none.
        price: block<LengthPriceFile>;
    }
}

key_words! {
    /// How what the pipe end bears is worked out. Each scheme holds its own factors.
    pub enum EndScheme: "a scheme of end capacity" {
        /// Our own, the most cautious: a mean and an edge stress for concrete, yield and local buckling for steel.
        #[default]
        Default = "default",
        /// ASCE 27, concrete.
        Asce27 = "asce_27",
        /// EN 1916, annex B, concrete.
        En1916 = "en_1916",
        /// A Chinese annex, concrete and steel.
        CnAnnexE = "cn_annex_e",
        /// JSWAS A-6, concrete.
        JswasA6 = "jswas_a6",
    }
}

fields! {
    /// The ring between two pipe ends.
    #[derive(PartialEq)]
    PackerFile at ["candidates[].packer."] {
        /// Thickness as fitted.
        thickness: must<Length> as Wall, Within(mm(3.0), mm(60.0)), usual(mm(8.0), mm(30.0)),
            ["12 mm", "0.5 in"], label "packer";
        /// Outside diameter.
        outside_diameter: may<Length> as Diameter, Within(mm(20.0), m(5.0)),
            ["300 mm", "12 in"], else "where the end bears";
        /// Inside diameter.
        inside_diameter: may<Length> as Diameter, Within(mm(20.0), m(5.0)),
            ["300 mm", "12 in"], else "that of the pipe";
        /// Modulus from a test of the job: reload branch after five cycles, up to the stress at the edge, change of
        /// thickness over the thickness as fitted.
        modulus: may<Pressure> as Modulus, Within(mpa(5.0), mpa(5_000.0)), usual(mpa(90.0), mpa(600.0)),
            ["200 MPa", "30000 psi"], else "of a board that nobody has tested";
    }

    /// How far the joints of a jacked pipe turn. What is left out is taken as none.
    #[derive(PartialEq)]
    SteeringFile at ["steering."] {
        /// Greatest angle between two pipes, squareness of their ends aside.
        joint_angle: may<Angle> as JointAngle, Within(0.0, deg(5.0)), usual(0.0, deg(0.3)), ["0.1 deg", "0.1 deg"];
        /// How far the far end of a pipe leaves the line of the pipe before it.
        deviation: may<Length> as Offset, Within(0.0, m(0.5)), usual(mm(1.0), mm(10.0)), ["3 mm", "0.1 in"];
        /// Radius of a planned curve; what the line deviates comes on top of it.
        curve_radius: may<Length> as Distance, Within(m(10.0), km(50.0)), usual(m(200.0), km(50.0)),
            ["500 m", "1500 ft"];
        /// Widest less narrowest gap of a joint, as measured: squareness and all.
        joint_gap: may<Length> as Offset, Within(0.0, m(0.5)), usual(mm(1.0), mm(10.0)), ["2 mm", "0.08 in"];
        /// Amplitude of a wave in the line, to either side of it.
        wave_amplitude: may<Length> as Offset, Within(0.0, m(1.0)), usual(0.0, mm(50.0)), ["25 mm", "1 in"];
        /// Half of the length of that wave.
        half_wave: may<Length> as Distance, Within(m(1.0), LONGEST), usual(m(3.0), m(50.0)), ["10 m", "30 ft"];
    }
}
