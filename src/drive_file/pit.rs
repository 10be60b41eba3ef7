//! Pits and the thrust wall, as the engineer writes them.

use super::declare::fields;
use super::ground::SoilFile;
use super::site::PitSpaceFile;
use crate::quantity::{Area, Length, Ratio};
use crate::yaml::key_words;

fields! {
    /// A pit.
    PitFile at ["launch.", "reception."] {
        /// Depth of the pipe invert below ground.
        invert_depth: must<Length> as Depth, Within(m(0.3), DEEPEST), usual(m(1.2), m(12.0)), ["4.2 m", "14 ft"],
            said ["depth", "invert"];
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
