//! How a pipe is pulled, as the engineer writes it.

use super::declare::fields;
use crate::quantity::{
    Angle, Area, DynamicViscosity, Force, Length, MassDensity, Pressure, Ratio, ThermodynamicTemperature, Time, Torque,
    UnitWeight, Velocity, VolumeRate,
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
    #[derive(Default)]
    PullFile at ["pull."] {
        /// From first to last movement, stops included. Either this or `rate`.
        duration: may<Time> as Duration, Within(min(10.0), days(30.0)), usual(min(30.0), hours(24.0)), ["6 h", "6 h"],
            else "by the rate, else a day or longer";
        /// Mean pull rate, stops included.
        rate: may<Velocity> as Rate, Within(m_per_h(0.05), m_per_h(300.0)), usual(m_per_h(5.0), m_per_h(120.0)),
            ["10 m/h", "30 ft/h"];
        /// Mean temperature of the pipe wall.
        pipe_temperature: may<ThermodynamicTemperature> as Temperature, Within(celsius(-20.0), celsius(60.0)), usual(celsius(0.0), celsius(40.0)),
            ["25 degC", "77 degF"], else "the hottest that the tables go to";
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
        /// A winch, or rods, that pull the pipe without a reamer into the bore that a withdrawn stem leaves.
        winch: block<WinchFile>;
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

key_words! {
    /// What the bore is while the pipe comes in.
    pub enum Hole: "what the bore is" {
        /// Full of drilling fluid.
        #[default]
        Fluid = "fluid",
        /// Cleared by vacuum, dry, and standing open: the user asserts it.
        DryAndStable = "dry_and_stable",
    }

    /// Where the string is put together.
    pub enum Place: "where the string is put together" {
        /// On the ground, from where it comes down a ramp.
        #[default]
        Ground = "ground",
        /// Pipe by pipe in the reception pit, without a ramp.
        Pit = "pit",
    }

    /// What becomes of the annulus.
    pub enum Filling: "what becomes of the annulus" {
        /// Left as it is.
        #[default]
        Open = "open",
        /// Grouted.
        Grouted = "grouted",
    }

    /// What weighs a pipe down while its annulus is grouted.
    pub enum Ballast: "what weighs the pipe down in the grout" {
        /// Nothing.
        #[default]
        None = "none",
        /// It is full of water.
        Water = "water",
    }

    /// How far the grout is known.
    pub enum Proof: "how the grout is proved" {
        /// Not proved.
        #[default]
        None = "none",
        /// By volume, pressure and samples along the whole length.
        Proved = "proved",
    }
}

fields! {
    /// Room for the string.
    LaydownFile at ["pull.laydown."] {
        /// Longest string that can lie outside, or the length of one pipe that goes into the pit.
        length: must<Length> as Distance, Within(m(0.5), km(3.0)), usual(m(3.0), km(3.0)), ["60 m", "200 ft"];
        /// Where the strings are joined.
        place: may<Place>, else "on the ground";
        /// How long the pull stands for each joint made during it.
        joint_time: may<Time> as Duration, Within(min(1.0), hours(24.0)), usual(min(10.0), hours(4.0)), ["2 h", "2 h"];
    }

    /// How the pull stands while a rod of the stem is taken out.
    StemRemovalFile at ["pull.stem_removal."] {
        /// Length of one rod.
        every: must<Length> as Distance, Within(m(0.3), m(12.0)), usual(m(0.75), m(6.0)), ["3 m", "10 ft"];
        /// How long the pull stands for it.
        takes: must<Time> as Duration, Within(sec(10.0), hours(8.0)), usual(min(1.0), min(15.0)), ["4 min", "4 min"];
    }

    /// A length of bore that may fall on the pipe.
    CollapsedBoreFile at ["pull.collapsed_bore."] {
        /// Length of pipe that the ground lies on.
        length: must<Length> as Distance, UpTo(LONGEST), usual(0.0, m(10.0)), ["3 m", "10 ft"];
        /// Unit weight of the ground over it, water included.
        unit_weight: must<UnitWeight> as UnitWeight, Within(kn_per_m3(9.0), kn_per_m3(27.0)), usual(kn_per_m3(14.0), kn_per_m3(23.0)),
            ["18 kN/m3", "120 pcf"];
        /// Friction of the pipe in soil.
        friction: may<Ratio> as Ratio, Within(0.05, 1.0), usual(0.2, 0.6),
            ["0.5", "0.5"], else "that of the string on the ground";
    }

    /// What the rig leans on while it pulls.
    ReactionFile at ["pull.reaction."] {
        /// Area of the plate against the face of the launch pit.
        area: must<Area> as Area, Within(m2(0.05), m2(100.0)), usual(m2(1.0), m2(12.0)), ["4 m2", "40 ft2"];
        /// Pressure that the ground behind it is allowed.
        allowable_pressure: must<Pressure> as Pressure, Within(kpa(5.0), mpa(5.0)), usual(kpa(50.0), kpa(500.0)),
            ["200 kPa", "4000 psf"];
    }

    /// Flow of the drilling fluid with what it carries.
    ReturnsFile at ["pull.returns."] {
        /// Flow pumped.
        flow: must<VolumeRate> as Flow, Within(lps(0.01), lps(200.0)), usual(lps(0.3), lps(50.0)),
            ["20 L/s", "300 gal_us/min"];
        /// Plastic viscosity, cuttings included.
        plastic_viscosity: must<DynamicViscosity> as Viscosity, Within(mpa_s(0.5), mpa_s(500.0)), usual(mpa_s(5.0), mpa_s(50.0)),
            ["0.02 Pa*s", "0.02 Pa*s"];
        /// Yield point, cuttings included.
        yield_point: must<Pressure> as UnitFriction, Within(0.0, pa(200.0)), usual(pa(4.0), pa(30.0)),
            ["10 Pa", "0.2 psf"];
    }

    /// The annulus round a pulled pipe.
    AnnulusFile at ["annulus."] {
        /// What becomes of it.
        filling: may<Filling>, else "not known: either, whichever is worse";
        /// Height of spacers on the pipe.
        spacers: may<Length> as Offset, UpTo(m(1.0)), usual(mm(10.0), m(1.0)), ["25 mm", "1 in"], else "none";
        /// Density of the grout.
        grout_density: may<MassDensity> as Density, Within(kg_per_m3(300.0), kg_per_m3(2_300.0)), usual(kg_per_m3(500.0), kg_per_m3(2_000.0)),
            ["1500 kg/m3", "94 lb/ft^3"];
        /// Pressure at which the grout comes in, over its own column.
        grout_pressure: may<Pressure> as Pressure, Within(0.0, mpa(2.0)), usual(0.0, kpa(100.0)), ["50 kPa", "7 psi"];
        /// How long the grout stays liquid.
        grout_sets_in: may<Time> as Duration, Within(min(10.0), days(7.0)), usual(hours(1.0), hours(24.0)),
            ["6 h", "6 h"], else "the table of durations";
        /// What weighs the pipe down while the grout is liquid.
        ballast: may<Ballast>, else "none";
        /// Volume of grout over that of the annulus.
        grout_waste: may<Ratio> as Ratio, Within(1.0, 5.0), usual(1.05, 1.5), ["1.3", "1.3"];
        /// Whether hardened grout all round will be proved.
        proof: may<Proof>, else "not proved";
        /// Modulus of soil reaction of what stands round the pipe.
        soil_modulus: may<Pressure> as Modulus, UpTo(mpa(21.0)), ["5 MPa", "700 psi"];
    }

    /// Surges in a pressure main, over its service pressure.
    SurgeFile at ["surge."] {
        /// Of everyday starts and stops of pumps.
        recurring: may<Pressure> as Pressure, Within(0.0, mpa(10.0)), usual(0.0, mpa(1.0)), ["300 kPa", "40 psi"], else "none";
        /// Seldom, of valves that slam and pumps that fail.
        occasional: may<Pressure> as Pressure, Within(0.0, mpa(10.0)), usual(0.0, mpa(1.5)), ["500 kPa", "70 psi"], else "none";
    }

    /// Vacuum in a pressure main.
    VacuumFile at ["vacuum."] {
        /// Below the atmosphere.
        pressure: must<Pressure> as Pressure, Within(0.0, kpa(101.325)), usual(0.0, kpa(80.0)), ["70 kPa", "10 psi"];
        /// How long it lasts.
        lasts: must<Time> as Duration, Within(sec(1.0), days(366.0)), usual(sec(10.0), hours(24.0)), ["6 h", "6 h"];
    }

    /// The pull head and the link that parts before the pipe does.
    PullHeadFile at ["pull.pull_head."] {
        /// Rating of pull head and swivel.
        rating: may<Force> as Pull, Within(kn(0.5), mn(10.0)), ["900 kN", "100 tonf_us"];
        /// Load at which the weak link parts.
        weak_link: may<Force> as Pull, Within(kn(0.5), mn(10.0)), ["900 kN", "100 tonf_us"];
    }

    /// What pulls a pipe into the bore that a withdrawn stem leaves.
    WinchFile at ["pull.winch."] {
        /// Greatest pull of the winch and its line.
        rating: must<Force> as Pull, Within(kn(1.0), mn(10.0)), usual(kn(10.0), mn(1.0)), ["100 kN", "10 tonf_us"];
    }

    /// A machine that pushes the tail of the string.
    PushAssistFile at ["pull.push_assist."] {
        /// Greatest force that it is set to.
        force: must<Force> as Thrust, Within(0.0, mn(10.0)), ["900 kN", "100 tonf_us"];
        /// Longest length of string without support between its grip and the mouth of the bore.
        free_length: must<Length> as Distance, Within(m(0.05), m(30.0)), usual(m(0.3), m(6.0)), ["3 m", "10 ft"];
        /// Rating of the grip.
        grip_rating: may<Force> as Thrust, Within(kn(0.1), mn(10.0)), ["900 kN", "100 tonf_us"];
    }
}
