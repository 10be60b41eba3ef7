//! What the end of a jacked pipe can bear: all that the schemes need, looked up.

use super::coefficients::{Asce27, ConcreteAnnex, ConcreteShares, LocalCurve, SteelAnnex, SteelCode};
use super::looked_up::looked_up;
use crate::quantity::{Angle, Area, Force, Length, Pressure, Ratio};
use crate::source::{Cited, Origin};

/// What the end of a jacked pipe can bear, by scheme.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Capacity {
    /// Brittle material: one factor on the mean stress, another on the stress at the edge.
    Brittle {
        /// Strength in compression.
        strength: Cited<Pressure>,
        /// That of the best certificate, where the file names none.
        certified: Option<Cited<Pressure>>,
        /// Factor on uniform stress.
        factor: Cited<Ratio>,
        /// Factor on the stress at the edge.
        edge_factor: Cited<Ratio>,
    },
    /// Reinforced concrete.
    Concrete(ConcreteEnd),
    /// Steel.
    Steel(SteelEnd),
    /// Glass-reinforced plastic.
    Grp {
        /// Strength along the pipe.
        axial_strength: Cited<Pressure>,
        /// Material factor.
        material_factor: Cited<Ratio>,
        /// Greatest mean over greatest stress that is counted.
        greatest_ratio: Ratio,
    },
    /// Set by the joint: the pipe maker's rated force and nothing else.
    Rated,
}

/// Which scheme sets the capacity of a concrete end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum ConcreteScheme {
    /// Share of the cylinder strength as mean and at the edge.
    Default,
    /// ASCE 27.
    Asce27,
    /// EN 1916, annex B.
    En1916,
    /// A Chinese annex.
    Annex,
    /// JSWAS A-6.
    Jswas,
}

/// A concrete end by every scheme that what is given allows.
#[derive(Debug, Clone, Copy)]
pub(crate) struct ConcreteEnd {
    pub(crate) scheme: ConcreteScheme,
    /// False where the file leaves the scheme open.
    pub(crate) scheme_told: bool,
    /// Cylinder strength.
    pub(crate) strength: Cited<Pressure>,
    /// The most that is usual, where the file does not tell it and the least is taken.
    pub(crate) most_strength: Option<Pressure>,
    pub(crate) shares: ConcreteShares,
    pub(crate) asce: Asce27,
    pub(crate) annex: ConcreteAnnex,
    /// Design strength, without which the Chinese annex says nothing.
    pub(crate) design_strength: Option<Cited<Pressure>>,
    pub(crate) jswas: Option<JswasStress>,
}

/// Stresses of the Japanese standard for one grade.
#[derive(Debug, Clone, Copy)]
pub(crate) struct JswasStress {
    pub(crate) mean: Cited<Pressure>,
    /// Peak on curves, where one is known.
    pub(crate) peak: Option<Pressure>,
}

/// Which scheme sets the capacity of steel.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum SteelScheme {
    /// Yield and local buckling.
    Default,
    /// The same, and the Chinese annex besides: a long drive or mixed ground.
    DefaultAndAnnex,
    /// The Chinese annex.
    Annex,
}

looked_up! {
    /// A steel section by its schemes: the safer of them on a long drive and through mixed ground.
    SteelEnd: Copy of |handbook, tube: (Length, Length), yields_at: Cited<Pressure>, is_hard: bool| {
        scheme: SteelScheme = if is_hard { SteelScheme::DefaultAndAnnex } else { SteelScheme::Default },
        outside_diameter: Length = tube.0,
        wall: Length = tube.1,
        yield_strength: Cited<Pressure> = yields_at,
        /// What it may be at best, where the file does not tell it.
        yield_at_best: Option<Cited<Pressure>> = None,
        modulus: Pressure = handbook.steel_pull_stress()?.value("modulus")?.value,
        yield_factor: Cited<Ratio> = handbook.steel_factor()?.value("default_yield")?,
        local_share: Cited<Ratio> = handbook.steel_factor()?.value("default_local")?,
        local: LocalCurve = LocalCurve::read(handbook.steel_factor()?)?,
        annex: SteelAnnex = SteelAnnex::read(handbook.steel_factor()?)?,
        /// Stability in the Chinese annex.
        stability: Cited<Ratio> = handbook.steel_factor()?.value(if is_hard { "cn_phi4" } else { "cn_phi4_short" })?,
        /// Design strength in the Chinese annex: none lies above the yield of the pipe itself.
        design_strength: Cited<Pressure> = {
            let row = handbook.steel_grade()?.row("q235_design_low")?.map(|row| row.stress.value);
            if row.value > yields_at.value { yields_at } else { row }
        },
        code: SteelCode = SteelCode::read(handbook.steel_factor()?)?,
    }
}

/// A length of jacked steel pipe that nothing holds.
#[derive(Debug, Clone, Copy)]
pub(crate) struct FreeLength {
    pub(crate) length: Cited<Length>,
    /// False where it is the most that is usual.
    pub(crate) told: bool,
    pub(crate) length_factor: Cited<Ratio>,
}

/// End bearing area of a jacking pipe.
#[derive(Debug, Clone, Copy)]
pub(crate) enum EndArea {
    /// Behind the ratings printed at three factors.
    Rated {
        /// Rating and factor.
        ratings: [(Force, Ratio); 3],
        /// Strength they rest on.
        strength: Pressure,
        /// The row.
        origin: Origin,
    },
    /// The user's, or printed as effective.
    Given(Cited<Area>),
    /// The share of the section that the joint of any pipe leaves, and the most that one leaves.
    Usual {
        /// The least.
        area: Cited<Area>,
        /// The most.
        most: Area,
    },
    /// A ring.
    Ring {
        /// Outside diameter.
        outside_diameter: Length,
        /// Inside diameter.
        inside_diameter: Length,
        /// What it is.
        kind: RingKind,
    },
    /// Not asked for: the joint sets the force.
    Unknown,
}

/// What the ring of an end is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum RingKind {
    /// The packer.
    Packer,
    /// The spigot less the bore: chamfer and packer leave less.
    Spigot,
    /// The section of a welded pipe.
    Section,
}

/// The joint of a jacked pipe.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Joint {
    /// Mean over greatest stress, where the file tells it.
    pub(crate) stress_ratio: Option<Cited<Ratio>>,
    /// The file's, else that of the trade; none where pipes are welded to one or their maker's force holds the joint.
    pub(crate) packer: Option<Packer>,
    /// Whether the file tells of the packer.
    pub(crate) packer_told: bool,
    pub(crate) steering: Steering,
}

impl Joint {
    /// Whether the packer is that of the trade, which the file does not tell.
    pub(crate) const fn is_untold(&self) -> bool {
        self.packer.is_some() && !self.packer_told && self.stress_ratio.is_none()
    }

    /// Whether a line that the file does not tell turns what the joint bears.
    pub(crate) fn hangs_on_line(&self) -> bool {
        self.packer.is_some() && self.stress_ratio.is_none() && self.steering.turns && !self.steering.is_known()
    }
}

/// The packer as fitted.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Packer {
    /// Outside diameter of the ring; where it is not told, what the end bears on from the inside on.
    pub(crate) outside_diameter: Option<Length>,
    /// Inside diameter of the ring, or of the pipe; none where neither is known: what bears then lies outside.
    pub(crate) inside_diameter: Option<Length>,
    /// Outside diameter of the pipe.
    pub(crate) pipe: Length,
    pub(crate) thickness: Length,
    pub(crate) modulus: PackerModulus,
}

/// The modulus of a packer on its thickness as fitted, hardened by the work.
#[derive(Debug, Clone, Copy)]
pub(crate) enum PackerModulus {
    /// By a test of the job.
    Tested(Cited<Pressure>),
    /// Of a board that nobody has tested.
    Assumed {
        /// The middle.
        middle: Cited<Pressure>,
        /// The same where the mean stress at the allowed force is high.
        pressed: Cited<Pressure>,
        /// Mean stress from where.
        pressed_from: Pressure,
        /// The stiff end.
        stiff: Cited<Pressure>,
    },
}

/// What turns the joints.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Steering {
    pub(crate) joint_angle: Option<Cited<Angle>>,
    pub(crate) deviation: Option<Cited<Length>>,
    pub(crate) curve_radius: Option<Cited<Length>>,
    pub(crate) joint_gap: Option<Cited<Length>>,
    /// Amplitude and half wave.
    pub(crate) wave: Option<(Cited<Length>, Length)>,
    pub(crate) squareness: Option<Cited<Length>>,
    /// Length of one pipe, from the shortest to the longest it may be.
    pub(crate) pipe_length: Option<(Length, Length)>,
    /// Least angle of the line, by how it is held.
    pub(crate) least: Cited<Angle>,
    /// From here on a joint is looked after.
    pub(crate) screen: Cited<Angle>,
    /// The most that is advised, or that a socket turns by.
    pub(crate) most: Cited<Angle>,
    /// Beyond it nothing is passed.
    pub(crate) beyond: Cited<Angle>,
    /// False where pipes are welded to one.
    pub(crate) turns: bool,
}

impl Steering {
    /// Whether anything is known of the line.
    pub(crate) const fn is_known(&self) -> bool {
        self.joint_angle.is_some()
            || self.deviation.is_some()
            || self.curve_radius.is_some()
            || self.joint_gap.is_some()
            || self.wave.is_some()
    }
}
