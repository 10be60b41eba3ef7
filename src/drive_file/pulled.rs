//! Blocks of the drive file that only a pulled pipe needs.

use super::declare::fields;
use crate::quantity::{
    Area, DynamicViscosity, Force, Length, MassDensity, Pressure, Ratio, Time, UnitWeight, VolumeRate,
};
use crate::yaml::key_words;

key_words! {
    /// What the bore is while the pipe comes in.
    pub enum Hole: "what the bore is" {
        /// Full of drilling fluid.
        #[default]
        Fluid = "fluid",
        /// Cleared by vacuum, dry, and standing open: the user asserts it.
        DryAndStable = "dry_and_stable",
    }
}

key_words! {
    /// Where the string is put together.
    pub enum Place: "where the string is put together" {
        /// On the ground, from where it comes down a ramp.
        #[default]
        Ground = "ground",
        /// Pipe by pipe in the reception pit, without a ramp.
        Pit = "pit",
    }
}

fields! {
    /// Room for the string.
    LaydownFile at ["pull.laydown."] {
        /// Longest string that can lie outside, or the length of one pipe that goes into the pit.
        length: must<Length> as Distance, AboveZero, ["60 m", "200 ft"];
        /// Where the strings are joined.
        place: may<Place>, else "on the ground";
        /// How long the pull stands for each joint made during it.
        joint_time: may<Time> as Duration, AboveZero, ["2 h", "2 h"];
    }
}

fields! {
    /// How the pull stands while a rod of the stem is taken out.
    StemRemovalFile at ["pull.stem_removal."] {
        /// Length of one rod.
        every: must<Length> as Distance, AboveZero, ["3 m", "10 ft"];
        /// How long the pull stands for it.
        takes: must<Time> as Duration, NotNegative, ["4 min", "4 min"];
    }
}

fields! {
    /// A length of bore that may fall on the pipe.
    CollapsedBoreFile at ["pull.collapsed_bore."] {
        /// Length of pipe that the ground lies on.
        length: must<Length> as Distance, AboveZero, ["60 m", "200 ft"];
        /// Unit weight of the ground over it, water included.
        unit_weight: must<UnitWeight> as UnitWeight, AboveZero, ["18 kN/m3", "120 pcf"];
        /// Friction of the pipe in soil.
        friction: may<Ratio> as Ratio, AboveZero, ["0.5", "0.5"], else "that of the string on the ground";
    }
}

fields! {
    /// What the rig leans on while it pulls.
    ReactionFile at ["pull.reaction."] {
        /// Area of the plate against the face of the launch pit.
        area: must<Area> as Area, AboveZero, ["200 m2", "2000 ft2"];
        /// Pressure that the ground behind it is allowed.
        allowable_pressure: must<Pressure> as Pressure, AboveZero, ["200 kPa", "4000 psf"];
    }
}

fields! {
    /// Flow of the drilling fluid with what it carries.
    ReturnsFile at ["pull.returns."] {
        /// Flow pumped.
        flow: must<VolumeRate> as Flow, NotNegative, ["20 L/s", "300 gal_us/min"];
        /// Plastic viscosity, cuttings included.
        plastic_viscosity: must<DynamicViscosity> as Viscosity, NotNegative, ["0.02 Pa*s", "0.02 Pa*s"];
        /// Yield point, cuttings included.
        yield_point: must<Pressure> as UnitFriction, NotNegative, ["10 Pa", "0.2 psf"];
    }
}

key_words! {
    /// What becomes of the annulus.
    pub enum Filling: "what becomes of the annulus" {
        /// Left as it is.
        #[default]
        Open = "open",
        /// Grouted.
        Grouted = "grouted",
    }
}

fields! {
    /// The annulus round a pulled pipe.
    AnnulusFile at ["annulus."] {
        /// What becomes of it.
        filling: must<Filling>;
        /// Height of spacers on the pipe.
        spacers: may<Length> as Offset, AboveZero, ["25 mm", "1 in"], else "none";
        /// Density of the grout.
        grout_density: may<MassDensity> as Density, AboveZero, ["1500 kg/m3", "94 lb/ft^3"];
        /// Pressure at which the grout comes in, over its own column.
        grout_pressure: may<Pressure> as Pressure, NotNegative, ["50 kPa", "7 psi"];
        /// How long the grout stays liquid.
        grout_sets_in: may<Time> as Duration, AboveZero, ["6 h", "6 h"], else "the table of durations";
        /// Volume of grout over that of the annulus.
        grout_waste: may<Ratio> as Ratio, Within(1.0, 5.0), ["1.3", "1.3"];
        /// Whether hardened grout all round will be proved.
        proof: may<Proof>, else "not proved";
        /// Modulus of soil reaction of what stands round the pipe.
        soil_modulus: may<Pressure> as Modulus, AboveZero, ["50 MPa", "7000 psi"];
    }
}

key_words! {
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
    /// Vacuum in a pressure main.
    VacuumFile at ["vacuum."] {
        /// Below the atmosphere.
        pressure: must<Pressure> as Pressure, UpTo(101_325.0), ["80 kPa", "12 psi"];
        /// How long it lasts.
        lasts: must<Time> as Duration, AboveZero, ["6 h", "6 h"];
    }
}

fields! {
    /// The pull head and the link that parts before the pipe does.
    PullHeadFile at ["pull.pull_head."] {
        /// Rating of pull head and swivel.
        rating: may<Force> as Pull, AboveZero, ["900 kN", "100 tonf_us"];
        /// Load at which the weak link parts.
        weak_link: may<Force> as Pull, AboveZero, ["900 kN", "100 tonf_us"];
    }
}

fields! {
    /// A machine that pushes the tail of the string.
    PushAssistFile at ["pull.push_assist."] {
        /// Greatest force that it is set to.
        force: must<Force> as Thrust, NotNegative, ["900 kN", "100 tonf_us"];
        /// Longest length of string without support between its grip and the mouth of the bore.
        free_length: must<Length> as Distance, AboveZero, ["3 m", "10 ft"];
        /// Rating of the grip.
        grip_rating: may<Force> as Thrust, AboveZero, ["900 kN", "100 tonf_us"];
    }
}
