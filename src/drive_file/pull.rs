//! How a pipe is pulled, as the engineer writes it.

use super::declare::fields;
use super::pulled::{
    CollapsedBoreFile, Hole, LaydownFile, PullHeadFile, PushAssistFile, ReactionFile, ReturnsFile, StemRemovalFile,
};
use crate::quantity::{
    Angle, Force, Length, MassDensity, Pressure, Ratio, ThermodynamicTemperature, Time, Torque, Velocity,
};
use crate::yaml::key_words;

key_words! {
    /// Contents of a pipe while it is pulled.
    pub enum Contents: "the contents of the pipe" {
        /// Air.
        #[default]
        Empty = "empty",
        /// Water.
        Water = "water",
        /// The fluid of the bore.
        Slurry = "slurry",
    }

    /// What carries the string outside the bore.
    pub enum Support: "what carries the string" {
        /// The ground.
        #[default]
        Ground = "ground",
        /// Rollers.
        Rollers = "rollers",
    }

    /// How sure the welds of a string are.
    pub enum Welds: "how the welds are known" {
        /// Not known.
        #[default]
        Unknown = "unknown",
        /// Butt fusion with records.
        Documented = "documented",
    }

    /// Which table of pull stress governs.
    pub enum StressEdition: "an edition of pull stress" {
        /// The least of all that apply.
        #[default]
        Tightest = "tightest",
        /// ASTM F1962, 1999 to 2011.
        F1962First = "astm_f1962_1999",
        /// ASTM F1962-22.
        F1962Second = "astm_f1962_2022",
        /// Handbook of PE Pipe, second edition.
        Ppi = "ppi_2008",
        /// ASTM F1804.
        F1804 = "astm_f1804",
        /// DVGW GW 321.
        Gw321 = "gw_321",
    }
}

fields! {
    /// How a pipe is pulled.
    PullFile at ["pull."] {
        /// From first to last movement, stops included. Either this or `rate`.
        duration: may<Time> as Duration, Within(min(10.0), days(30.0)), usual(min(30.0), hours(24.0)), ["6 h", "6 h"];
        /// Mean pull rate, stops included.
        rate: may<Velocity> as Rate, Within(m_per_h(0.05), m_per_h(300.0)), usual(m_per_h(5.0), m_per_h(120.0)),
            ["10 m/h", "30 ft/h"];
        /// Mean temperature of the pipe wall.
        pipe_temperature: must<ThermodynamicTemperature> as Temperature, Within(celsius(-20.0), celsius(60.0)), usual(celsius(0.0), celsius(40.0)),
            ["25 degC", "77 degF"];
        /// Contents while pulled.
        contents: may<Contents>, else "empty";
        /// What carries the string outside.
        string_on: may<Support>, else "the ground";
        /// Slope of the ramp from laydown into the reception pit.
        ramp_angle: may<Angle> as Angle, Within(0.0, deg(45.0)), usual(deg(5.0), deg(25.0)),
            ["15 deg", "15 deg"], else "the table of angles";
        /// Radius of the string on the ramp.
        bend_radius: may<Length> as Distance, Within(m(0.1), km(10.0)), ["25 m", "80 ft"],
            else "what leaves half of the stress to the pull";
        /// Length of the string beyond the length of the drive.
        excess_length: may<Length> as Distance, Within(0.0, m(200.0)), usual(m(1.0), m(15.0)),
            ["10 m", "30 ft"], else "the length for handling";
        /// How long the bore fluid stands on the pipe, from its first entry until the annulus is grouted or drained.
        fluid_stands_for: may<Time> as Duration, UpTo(days(366.0)), usual(hours(1.0), days(14.0)),
            ["6 h", "6 h"], else "the table of durations";
        /// Density of the bore fluid with its cuttings.
        fluid_density: may<MassDensity> as Density, Within(kg_per_m3(950.0), kg_per_m3(2_000.0)), usual(kg_per_m3(1_020.0), kg_per_m3(1_500.0)),
            ["1200 kg/m3", "75 lb/ft^3"], else "from that of water to the heaviest of the table";
        /// Depth below ground, at the higher pit, of the level that the bore fluid is kept at.
        fluid_level: may<Length> as Depth, Within(0.0, DEEPEST), ["2 m", "7 ft"], else "not known";
        /// Welds.
        welds: may<Welds>, else "unknown";
        /// Which table of pull stress governs.
        stress_edition: may<StressEdition>, else "the tightest";
        /// Resistance at the reamer, instead of the table.
        reamer: band<Force> as Pull, Within(0.0, mn(5.0)), usual(kn(5.0), kn(300.0)),
            ["40 kN", "5 tonf_us"], else "the table of faces";
        /// Torque of the reamer. No formula for it is agreed on.
        reaming_torque: band<Torque> as Torque, Within(0.0, kn_m(2_000.0)), usual(kn_m(0.5), kn_m(200.0)),
            ["5 kN*m", "5 kN*m"];
        /// A machine at the reception pit that pushes the tail of the string while it is pulled.
        push_assist: block<PushAssistFile>;
        /// What the bore is while the pipe comes in.
        hole: may<Hole>, else "full of fluid";
        /// Drag of the bore fluid on the outside area of the pipe, instead of a pressure in the annulus.
        unit_drag: may<Pressure> as UnitFriction, Within(0.0, kpa(5.0)), usual(kpa(0.05), kpa(0.7)),
            ["345 Pa", "0.05 psi"],
            else "by the pressure in the annulus";
        /// Pressure held inside the pipe during the pull.
        inside_pressure: may<Pressure> as Pressure, Within(0.0, mpa(2.5)), usual(0.0, kpa(200.0)),
            ["50 kPa", "7 psi"], else "none";
        /// A length of bore that may fall on the pipe.
        collapsed_bore: block<CollapsedBoreFile>;
        /// Deepest score that the pipe may take from the bore, over its wall.
        score: may<Ratio> as Percent, Within(0.0, percent(50.0)), usual(percent(5.0), percent(15.0)),
            ["10 %", "10 %"], else "the table of what a pull leaves";
        /// Pull head and weak link.
        pull_head: block<PullHeadFile>;
        /// Room for the string.
        laydown: block<LaydownFile>;
        /// Stops for the rods of the stem.
        stem_removal: block<StemRemovalFile>;
        /// Length along the drive that pit and trench leave for the ramp.
        ramp_room: may<Length> as Distance, Within(0.0, km(1.0)), usual(m(5.0), m(150.0)), ["25 m", "80 ft"];
        /// What the rig leans on while it pulls.
        reaction: block<ReactionFile>;
        /// Flow of the bore fluid.
        returns: block<ReturnsFile>;
        /// Temperature of the ground round the pipe.
        ground_temperature: may<ThermodynamicTemperature> as Temperature, Within(celsius(-5.0), celsius(45.0)), usual(celsius(2.0), celsius(25.0)),
            ["25 degC", "77 degF"];
    }
}
