//! Rig and pilot stem, as the engineer writes them.

use super::band::OrNone;
use super::declare::fields;
pub use crate::drive::IfStalled;
use crate::quantity::{Area, Force, Length, Ratio, Torque};
use crate::yaml::key_words;

fields! {
    /// The machine in the launch pit.
    RigFile at ["rig."] {
        /// Greatest thrust.
        thrust: may<Force> as Thrust, Within(kn(1.0), mn(60.0)), usual(kn(20.0), mn(8.0)), ["900 kN", "100 tonf_us"],
            else "not chosen: the page tells the least that does", said ["push", "jacking_force"];
        /// Greatest pull.
        pull: may<Force> as Pull, Within(kn(1.0), mn(60.0)), usual(kn(20.0), mn(8.0)), ["900 kN", "100 tonf_us"],
            else "not chosen: the page tells the least that does", said ["pullback"];
        /// Thrust that the jacks are set to stop at while the pipe goes in.
        held_to: may<Force> as Thrust, Within(kn(10.0), mn(60.0)), ["400 kN", "45 tonf_us"], else "the greatest thrust";
        /// Greatest torque.
        torque: may<Torque> as Torque, Within(kn_m(0.01), kn_m(2_000.0)), usual(kn_m(0.5), kn_m(200.0)),
            ["5 kN*m", "5 kN*m"];
        /// Torque of the auger while casing or pipe is pushed; needs `torque`.
        auger_torque: band<Torque> as Torque, Within(0.0, kn_m(2_000.0)), usual(kn_m(0.5), kn_m(200.0)),
            ["5 kN*m", "5 kN*m"];
        /// Piston area of all main jacks, for readings of their gauge.
        cylinder_area: may<Area> as Area, Within(m2(1e-4), m2(10.0)), ["0.06 m2", "90 in2"];
        /// Force of the jacks over pressure times area.
        efficiency: may<Ratio> as Ratio, Within(0.5, 1.0), usual(0.85, 0.98),
            ["0.9", "0.9"], else "the table of jacking stations";
        /// Stroke of the main jacks.
        stroke: may<Length> as Distance, Within(m(0.1), m(15.0)), usual(m(0.3), m(8.0)), ["3 m", "10 ft"];
        /// Thrust of an intermediate jacking station.
        station_thrust: may<Force> as Thrust, Within(kn(10.0), mn(60.0)), ["900 kN", "100 tonf_us"], else "no station";
    }

    /// The pilot stem.
    StemFile at ["stem."] {
        /// Outside diameter, or `none` for a bore without a stem.
        outside_diameter: must<OrNone<Length>> as Diameter, Within(mm(20.0), mm(400.0)), usual(mm(60.0), mm(330.0)),
            ["300 mm", "12 in"],
            said ["diameter", "od", "size"];
        /// Diameter of the pilot head, where it is larger than the stem.
        head_diameter: may<Length> as Diameter, Within(mm(20.0), m(1.2)), ["120 mm", "5 in"], else "that of the stem";
        /// Whether head and stem are drawn back out of the bore before a pipe is pushed into it. The bore, as wide as the
        /// head, has to stand for that.
        withdrawn: may<bool>, else "false";
        /// Wall of the stem, for weight and buckling.
        wall: may<Length> as Wall, Within(mm(2.0), mm(200.0)), usual(mm(5.0), mm(25.0)), ["12 mm", "0.5 in"];
        /// Longest length of stem without support in the launch pit; with `wall`, buckling is checked.
        free_length: may<Length> as Distance, Within(m(0.05), m(30.0)), usual(m(0.3), m(6.0)), ["3 m", "10 ft"];
        /// Rating of a joint under thrust.
        joint_thrust: may<Force> as Thrust, Within(kn(1.0), mn(10.0)), usual(kn(50.0), mn(2.0)),
            ["900 kN", "100 tonf_us"];
        /// Rating of a joint under pull.
        joint_pull: may<Force> as Pull, Within(kn(1.0), mn(10.0)), usual(kn(50.0), mn(2.0)), ["900 kN", "100 tonf_us"];
        /// Rating of a joint under torque.
        joint_torque: may<Torque> as Torque, Within(kn_m(0.01), kn_m(2_000.0)), usual(kn_m(0.5), kn_m(200.0)),
            ["5 kN*m", "5 kN*m"];
        /// Torque while the stem is pushed; needs `joint_torque` or that of the rig.
        torque: band<Torque> as Torque, Within(0.0, kn_m(2_000.0)), usual(kn_m(0.5), kn_m(200.0)), ["5 kN*m", "5 kN*m"];
    }
}

key_words!(IfStalled, "what is done where the drive stalls", {
    "rescue_pit" => IfStalled::RescuePit,
    "stations" => IfStalled::Stations,
    "second_lubrication" => IfStalled::SecondLubrication,
});
