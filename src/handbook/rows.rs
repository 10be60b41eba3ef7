//! The columns of each table. The type of a column is the check of its unit.

/// Declares rows: each column with its type, there in every row (`must`) or not (`may`). Rows are hidden: what others may
/// rely on is a table as written, a citation, and the single values by key.
macro_rules! rows {
    ($(
        $(#[$doc:meta])*
        $name:ident { $($(#[$column_doc:meta])* $column:ident: $(must $must:ident)? $(may $may:ident)?,)+ }
    )+) => { $(
        $(#[$doc])*
        #[derive(Debug, Clone, serde::Deserialize)]
        #[serde(deny_unknown_fields)]
        #[doc(hidden)]
        #[non_exhaustive]
        pub struct $name {
            $(
                $(#[$column_doc])*
                pub $column: $($crate::yaml::Field<$must>)? $(Option<$crate::yaml::Field<$may>>)?,
            )+
        }
    )+ };
}

mod ground;
mod methods;
mod pipes;
mod score;
mod technique;

pub use ground::*;
pub use methods::*;
pub use pipes::*;
pub use score::*;
pub use technique::*;

use crate::quantity::{Force, Length, LineLoad, Pressure, Ratio};
use crate::yaml::{Words, key_words};

rows! {
    /// A bibliography entry.
    SourceRow {
        /// Authors or body, and title.
        title: must Words,
        /// Publisher.
        publisher: must Words,
        /// Edition or year.
        edition: must Words,
        /// Standard, handbook, paper, agency document, guidance, or own.
        kind: must Words,
        /// How it was consulted.
        consulted: must Words,
    }

    /// A vitrified clay jacking pipe. The end bearing area is computed from the ratings.
    ClayPipeRow {
        /// Nominal size; not the true bore.
        size: must Length,
        /// Average outside diameter.
        outside_diameter: must Length,
        /// Weight per length.
        weight: must LineLoad,
        /// Allowable jacking force printed at factor 2.5.
        rated_at_2_5: must Force,
        /// Allowable jacking force printed at factor 3.0.
        rated_at_3_0: must Force,
        /// Allowable jacking force printed at factor 3.5.
        rated_at_3_5: must Force,
        /// Compressive strength the ratings rest on.
        rating_strength: must Pressure,
    }

    /// Final bore of a pulled pipe.
    BoreRuleRow {
        /// Smallest outside diameter the rule is for (inclusive).
        od_from: may Length,
        /// Largest outside diameter (exclusive).
        od_below: may Length,
        /// Times the outside diameter.
        times: must Ratio,
        /// Plus this.
        plus: must Length,
    }

    /// Published range of a method.
    MethodLimitRow {
        /// Method.
        method: must Method,
        /// Smallest outside diameter (inclusive).
        od_from: may Length,
        /// Largest outside diameter (inclusive).
        od_to: may Length,
        /// Longest drive.
        length: must Length,
    }

    /// A pipe family that a method or a service excludes.
    ExclusionRow {
        /// Family.
        family: must Family,
        /// Method it cannot be put in by.
        method: may Method,
        /// Service it cannot bear.
        service: may Service,
        /// Why, in one sentence.
        reason: must Words,
    }
}

key_words! {
    /// A way of putting a pipe into a guided bore.
    pub enum Method: "a method" {
        /// Rigid segments pushed in from the launch pit behind the stem.
        #[default]
        PipeJacking = "pipe jacking",
        /// A long pipe pulled back behind a reamer that makes the new bore larger than the pilot bore.
        Pullback = "pullback",
    }

    /// Family of a pipe material.
    pub enum Family: "a pipe family" {
        /// Vitrified clay.
        #[default]
        Clay = "clay",
        /// Polyethylene.
        Pe = "pe",
        /// Reinforced concrete.
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
        /// PVC, fused into a string.
        PvcFused = "pvc_fused",
        /// PVC with restrained joints.
        PvcRestrained = "pvc_restrained",
        /// Fibre cement.
        FibreCement = "fibre_cement",
    }

    /// What the pipe will carry.
    pub enum Service: "a service" {
        /// Part-full gravity flow.
        #[default]
        GravitySewer = "gravity_sewer",
        /// Under internal pressure.
        PressureMain = "pressure_main",
        /// A casing for a carrier pipe laid later.
        Casing = "casing",
    }
    meanings {
        "water_main" => ["pressure_main"],
        "force_main" => ["pressure_main"],
        "rising_main" => ["pressure_main"],
        "gas_main" => ["pressure_main"],
        "sewer" => ["gravity_sewer"],
        "storm_sewer" => ["gravity_sewer"],
        "storm_drain" => ["gravity_sewer"],
        "culvert" => ["gravity_sewer"],
        "sleeve" => ["casing"],
    }
}

crate::source::printed!(Method: key);
