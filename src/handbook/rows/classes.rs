//! Ground by class: friction, what the pilot tip meets, suitability, resistance at a head.

use crate::quantity::{Force, Length, Pressure, Ratio};
use crate::yaml::key_words;

key_words! {
    /// How the ground is named: consistency or density and soil type, as in a borehole log.
    pub enum GroundClass: "a ground class" {
        /// Clay, SPT N below 4.
        SoftClay = "soft_clay",
        /// Clay, N 4 to 30.
        FirmToVeryStiffClay = "firm_to_very_stiff_clay",
        /// Clay, N over 30.
        HardClay = "hard_clay",
        /// Silt.
        Silt = "silt",
        /// Sand, N below 10.
        LooseSand = "loose_sand",
        /// Sand, N 10 to 50.
        MediumToDenseSand = "medium_to_dense_sand",
        /// Gravel and gravelly coarse sand.
        Gravel = "gravel",
        /// Made ground.
        Fill = "fill",
        /// Rock below 20 MPa, shale.
        WeakRock = "weak_rock",
        /// Harder rock.
        HardRock = "hard_rock",
        /// Peat and other organic soil.
        Peat = "peat",
        /// Not known.
        #[default]
        Unknown = "unknown",
    }
    meanings {
        "clay" => ["soft_clay", "firm_to_very_stiff_clay", "hard_clay"],
        "sand" => ["loose_sand", "medium_to_dense_sand"],
        "rock" => ["weak_rock", "hard_rock"],
        "till" => ["firm_to_very_stiff_clay", "hard_clay"],
        "glacial_till" => ["firm_to_very_stiff_clay", "hard_clay"],
        "boulder_clay" => ["firm_to_very_stiff_clay", "hard_clay"],
        "made_ground" => ["fill"],
    }

    /// Where the pipe lies with respect to the water table, or `any` in a table.
    pub enum WaterSide: "above, below or any" {
        /// Whole pipe above.
        Above = "above",
        /// Whole pipe below.
        Below = "below",
        /// Either.
        #[default]
        Any = "any",
    }

    /// How the annulus is lubricated while jacking.
    pub enum Lubrication: "how the pipe is lubricated" {
        /// None.
        #[default]
        None = "none",
        /// Planned, but quantity and pressure are not metered.
        NotMetered = "not_metered",
        /// Injected and metered over the whole length.
        Metered = "metered",
        /// Continuous, the annulus held, and the force logged; the user asserts it.
        Logged = "logged",
    }
    meanings {
        "bentonite" => ["not_metered", "metered"],
        "polymer" => ["not_metered", "metered"],
        "mud" => ["not_metered", "metered"],
        "yes" => ["not_metered", "metered"],
        "true" => ["not_metered", "metered"],
        "no" => ["none"],
        "false" => ["none"],
    }

    /// How the tip of the pilot stem is resisted.
    pub enum TipModel: "clay or sand" {
        /// Bearing factor times undrained strength.
        Clay = "clay",
        /// Cone resistance per blow.
        #[default]
        Sand = "sand",
    }

    /// How well a ground suits a method.
    pub enum Rating: "a suitability" {
        /// Usual practice.
        Suitable = "suitable",
        /// Special tools or experience.
        Marginal = "marginal",
        /// Not done.
        Unsuitable = "unsuitable",
        /// Depends on something the class does not tell; the note says on what.
        #[default]
        Depends = "depends",
    }

    /// How the soil leaves the face of an enlarging head.
    pub enum Spoil: "how the soil is removed" {
        /// By auger.
        #[default]
        Auger = "auger",
        /// By vacuum.
        Vacuum = "vacuum",
        /// As slurry, through a closed machine.
        Slurry = "slurry",
        /// By hand or shovel, behind an open cutting edge.
        OpenEdge = "open_edge",
    }
}

impl GroundClass {
    /// Rows of the tables of swell and of fluid; the larger where the class does not tell. The tables have no rock.
    pub(crate) const fn as_spoil(self) -> (&'static str, &'static str) {
        match self {
            Self::LooseSand | Self::MediumToDenseSand => ("sand", "sand"),
            Self::Gravel => ("gravel", "sand"),
            Self::Silt => ("loam", "clay"),
            Self::SoftClay
            | Self::FirmToVeryStiffClay
            | Self::HardClay
            | Self::WeakRock
            | Self::HardRock
            | Self::Peat
            | Self::Fill
            | Self::Unknown => ("clay", "clay"),
        }
    }

    /// Whether it is clay.
    #[must_use]
    pub const fn is_clay(self) -> bool {
        matches!(self, Self::SoftClay | Self::FirmToVeryStiffClay | Self::HardClay)
    }

    /// Whether it has nothing that holds its grains together: neither clay nor rock.
    #[must_use]
    pub const fn runs(self) -> bool {
        !self.is_clay() && !self.is_rock()
    }

    /// Whether a column of it over a bore hangs in its sides for good, as those of firm ground do, and not of loose.
    pub(crate) const fn keeps_its_arch(self) -> bool {
        matches!(self, Self::FirmToVeryStiffClay | Self::HardClay | Self::MediumToDenseSand | Self::Gravel)
    }

    /// Whether it is rock.
    #[must_use]
    pub const fn is_rock(self) -> bool {
        matches!(self, Self::WeakRock | Self::HardRock)
    }
}

rows! {
    /// Unit friction over the whole outside area.
    FrictionBandRow {
        /// Ground.
        ground: must GroundClass,
        /// Water.
        water: must WaterSide,
        /// Lubrication: `none`, `metered` or `logged`; *not metered* is put together from the first two.
        lubrication: must Lubrication,
        /// Low.
        low: must Pressure,
        /// Likely.
        likely: must Pressure,
        /// High.
        high: must Pressure,
    }

    /// SPT blow counts of a ground class.
    GroundClassRow {
        /// Class.
        ground: must GroundClass,
        /// Lowest N of the class.
        n_low: must Ratio,
        /// Middle N.
        n_likely: must Ratio,
        /// Highest N.
        n_high: must Ratio,
        /// Which tip resistance applies.
        tip: must TipModel,
    }

    /// Ground suitability by method.
    SuitabilityRow {
        /// Ground.
        ground: must GroundClass,
        /// Water.
        water: must WaterSide,
        /// Smallest water head over the invert (exclusive), if the row is limited so.
        head_over: may Length,
        /// Largest water head over the invert (inclusive).
        head_to: may Length,
        /// Smallest SPT N (inclusive).
        n_from: may Ratio,
        /// Largest SPT N (exclusive).
        n_below: may Ratio,
        /// Smallest largest stone (exclusive).
        stone_over: may Length,
        /// Largest largest stone (inclusive).
        stone_to: may Length,
        /// Smallest outside diameter (inclusive), if the row is limited so.
        od_from: may Length,
        /// Largest outside diameter (exclusive).
        od_below: may Length,
        /// Pilot-tube guided jacking with a displacement pilot.
        jacking: must Rating,
        /// Pullback with reaming.
        pullback: must Rating,
        /// Pullback of a gravity line, where it is another.
        pullback_gravity: may Rating,
        /// Cased and steered auger bore without a pilot; absent where no rating is known, as the next two.
        auger: may Rating,
        /// Slurry machine.
        slurry: may Rating,
        /// Pipe jacking behind an open shield.
        open_shield: may Rating,
    }

    /// Resistance at an enlarging head.
    FaceRow {
        /// How the soil is removed.
        spoil: must Spoil,
        /// Low pressure on the cut area.
        low: must Pressure,
        /// Likely pressure on the cut area.
        likely: must Pressure,
        /// High pressure on the cut area.
        high: must Pressure,
        /// Least force, low.
        least_low: must Force,
        /// Least force, likely.
        least_likely: must Force,
        /// Least force, high.
        least_high: must Force,
    }
}
