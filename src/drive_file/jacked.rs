//! What the engineer writes of jacked pipe beyond size and material: packer, steering, scheme of capacity.

use super::declare::fields;
use crate::quantity::{Angle, Length, Pressure};
use crate::yaml::key_words;

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
        curve_radius: may<Length> as Distance, Within(m(50.0), km(50.0)), usual(m(200.0), km(50.0)),
            ["500 m", "1500 ft"];
        /// Widest less narrowest gap of a joint, as measured: squareness and all.
        joint_gap: may<Length> as Offset, Within(0.0, m(0.5)), usual(mm(1.0), mm(10.0)), ["2 mm", "0.08 in"];
        /// Amplitude of a wave in the line, to either side of it.
        wave_amplitude: may<Length> as Offset, Within(0.0, m(1.0)), usual(0.0, mm(50.0)), ["25 mm", "1 in"];
        /// Half of the length of that wave.
        half_wave: may<Length> as Distance, Within(m(1.0), LONGEST), usual(m(3.0), m(50.0)), ["10 m", "30 ft"];
    }
}
