//! Ground by class: friction, properties, what the pilot tip meets, hazards, and how it suits a technique.

use super::GuidedTechnique;
use crate::quantity::{Angle, Force, Length, Pressure, Ratio, UnitWeight};
use crate::yaml::{Words, key_words};

key_words! {
    /// How ground is made ready against water at the face.
    pub enum Treatment: "a treatment of the ground" {
        /// The water table is lowered below the invert while the bore is open.
        #[default]
        Dewatered = "dewatered",
        /// Grout closes the pores round the bore.
        Grouted = "grouted",
    }

    /// What the class of the ground does not tell.
    pub enum GroundHazard: "a hazard of the ground" {
        /// Soil and rock in one face; follows from the classes.
        MixedFaceRock = "mixed_face_rock",
        /// Piles, walls, rubble, old pipes.
        #[default]
        Obstructions = "obstructions",
        /// Clay that swells.
        Swelling = "swelling",
        /// Clay that loses its strength when it is disturbed.
        Sensitive = "sensitive",
        /// Water under pressure below a tight layer.
        Artesian = "artesian",
        /// Karst or other voids.
        Karst = "karst",
        /// Contaminated ground or water.
        Contaminated = "contaminated",
    }
}

impl GroundHazard {
    /// Whether something can be done about it before the bore.
    pub(crate) const fn has_remedy(self) -> bool {
        matches!(self, Self::Swelling | Self::Sensitive | Self::Artesian | Self::Karst | Self::Contaminated)
    }
}

rows! {
    /// Suitability of one ground for one technique of guided boring.
    GuidedSuitabilityRow {
        /// Technique.
        technique: must GuidedTechnique,
        /// Ground.
        ground: must GroundClass,
        /// Water.
        water: must WaterSide,
        /// Smallest SPT N (inclusive).
        n_from: may Ratio,
        /// Largest SPT N (exclusive).
        n_below: may Ratio,
        /// Largest largest stone (inclusive).
        stone_to: may Length,
        /// Rating.
        rating: must Rating,
    }

    /// What a hazard leaves of a technique. A column that is not there has no rating.
    GroundHazardRow {
        /// Hazard.
        hazard: must GroundHazard,
        /// Guided bore with a displacing pilot and an auger.
        jacking: may Rating,
        /// Cased auger bore without a pilot.
        auger: may Rating,
        /// Slurry machine.
        slurry: may Rating,
        /// Open shield.
        open_shield: may Rating,
        /// Pullback with reaming.
        pullback: may Rating,
        /// Pullback of a gravity line, where it is another.
        pullback_gravity: may Rating,
    }
}

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
        "gumbo" => ["soft_clay", "firm_to_very_stiff_clay", "hard_clay"],
        "very_soft_clay" => ["soft_clay"],
        "medium_clay" => ["firm_to_very_stiff_clay"],
        "medium_stiff_clay" => ["firm_to_very_stiff_clay"],
        "stiff_to_hard_clay" => ["firm_to_very_stiff_clay", "hard_clay"],
        "sand" => ["loose_sand", "medium_to_dense_sand"],
        "running_sand" => ["loose_sand"],
        "flowing_sand" => ["loose_sand"],
        "very_loose_sand" => ["loose_sand"],
        "very_dense_sand" => ["medium_to_dense_sand"],
        "loam" => ["silt"],
        "sand_and_gravel" => ["gravel"],
        "rock" => ["weak_rock", "hard_rock"],
        "soft_rock" => ["weak_rock"],
        "shale" => ["weak_rock"],
        "mudstone" => ["weak_rock"],
        "siltstone" => ["weak_rock"],
        "claystone" => ["weak_rock"],
        "weathered_rock" => ["weak_rock"],
        "weathered_shale" => ["weak_rock"],
        "sandstone" => ["weak_rock", "hard_rock"],
        "limestone" => ["weak_rock", "hard_rock"],
        "granite" => ["hard_rock"],
        "basalt" => ["hard_rock"],
        "decomposed_granite" => ["medium_to_dense_sand", "weak_rock"],
        "chalk" => ["weak_rock", "silt"],
        "marl" => ["weak_rock", "hard_clay", "firm_to_very_stiff_clay"],
        "till" => ["firm_to_very_stiff_clay", "hard_clay"],
        "glacial_till" => ["firm_to_very_stiff_clay", "hard_clay"],
        "boulder_clay" => ["firm_to_very_stiff_clay", "hard_clay"],
        "hardpan" => ["hard_clay", "weak_rock"],
        "made_ground" => ["fill"],
        "rubble" => ["fill"],
        "organic_soil" => ["peat"],
        "not_known" => ["unknown"],
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
}

impl Rating {
    /// Its place from good to bad.
    #[must_use]
    pub const fn severity(self) -> u8 {
        match self {
            Self::Suitable => 0,
            Self::Marginal => 1,
            Self::Depends => 2,
            Self::Unsuitable => 3,
        }
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

    /// Whether it is sand or gravel.
    pub(crate) const fn is_granular(self) -> bool {
        matches!(self, Self::LooseSand | Self::MediumToDenseSand | Self::Gravel)
    }

    /// Whether it is clay, silt or sand.
    pub(crate) const fn is_fine(self) -> bool {
        self.is_clay() || matches!(self, Self::Silt | Self::LooseSand | Self::MediumToDenseSand)
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

rows! {
    /// Cone resistance per blow at the tip of a displacement pilot, and the blow counts it is driven in.
    PilotConeRow {
        /// Clay or sand.
        tip: must TipModel,
        /// Most SPT blows for easy driving (inclusive).
        blows_comfortable: may Ratio,
        /// Most SPT blows for driving at all (inclusive).
        blows_most: may Ratio,
    }

    /// Modulus of horizontal subgrade reaction of sand, per depth.
    SandBeddingRow {
        /// Density.
        density: must Words,
        /// Least SPT blows (inclusive).
        blows_from: must Ratio,
        /// Dry or moist.
        moist: must UnitWeight,
        /// Under water.
        submerged: must UnitWeight,
        /// Low end of the printed range over the value.
        low_share: must Ratio,
    }

    /// Friction angle, strength and stiffness of ground whose soil is not given: what is adverse to one check is favourable
    /// to another.
    ClassSoilRow {
        /// Ground.
        ground: must GroundClass,
        /// Friction angle that a load counts on.
        phi_load: must Angle,
        /// Friction angle that a resistance counts on.
        phi_resist: must Angle,
        /// Undrained strength per SPT blow, low end; none of ground that drains.
        blow_low: may Pressure,
        /// Undrained strength per SPT blow, high end.
        blow_high: may Pressure,
        /// Undrained modulus over strength, low end.
        modulus_low: may Ratio,
        /// Undrained modulus over strength, high end.
        modulus_high: may Ratio,
        /// Shear modulus of ground that drains, low end.
        shear_low: may Pressure,
        /// Shear modulus of ground that drains, high end.
        shear_high: may Pressure,
        /// Modulus with which the ground holds a ring, low end.
        native_low: must Pressure,
        /// Modulus with which the ground holds a ring, high end.
        native_high: must Pressure,
    }

    /// Unit weight of natural ground.
    SoilWeightRow {
        /// Ground.
        ground: must GroundClass,
        /// Moist, low.
        moist_low: must UnitWeight,
        /// Moist, likely.
        moist_likely: must UnitWeight,
        /// Moist, high.
        moist_high: must UnitWeight,
        /// Buoyant, low; water is already taken off.
        buoyant_low: must UnitWeight,
        /// Buoyant, likely.
        buoyant_likely: must UnitWeight,
        /// Buoyant, high.
        buoyant_high: must UnitWeight,
    }

    /// What a stability number means.
    StabilityNumberRow {
        /// `behaviour` for the bands of the literature, `open_face` for the rule on an open face.
        set: must Words,
        /// Smallest number (inclusive).
        from: may Ratio,
        /// Largest number (exclusive).
        below: may Ratio,
        /// What happens, or `warn` and `refuse`.
        verdict: must Words,
    }
}

impl Lubrication {
    /// Whether its quantity is known, and where it is.
    pub(crate) const fn is_watched(self) -> bool {
        matches!(self, Self::Metered | Self::Logged)
    }
}
