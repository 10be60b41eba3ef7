//! What is checked: one subject an entry of the table.

use super::rule::Decides;
use super::table::checks;
use crate::handbook::CriterionKind;

/// Ways to settle something: any of them does, and the fields of the drive file in one go together.
pub type Ways = &'static [&'static [&'static str]];

/// What no field of the drive file settles.
pub(crate) const NOTHING: Ways = &[&[]];

/// What settles ground that is unknown.
pub(crate) const CLASS: Ways = &[&["ground[].class"]];

/// What the file may leave out so that something goes unchecked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct Need {
    /// What goes unchecked.
    pub what: &'static str,
    /// What settles it.
    pub ways: Ways,
}

impl core::fmt::Display for Need {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let ways: Vec<String> = self.ways.iter().map(|fields| fields.join(" and ")).collect();
        write!(f, "{} ({})", self.what, ways.join(", or "))
    }
}

/// Makes the enum of the table, and what the table says of each.
macro_rules! subjects {
    ($at:ident $calc:ident $(
        $(#[$doc:meta])+ $name:ident $label:literal $criterion:ident $decides:ident $(($share:expr))?
            $(, $need:ident $(as $other:ident)? $($what:literal [$($($field:literal)+),+])?)? => $check:expr;
    )+) => {
        /// What is checked.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        #[repr(u8)]
        #[non_exhaustive]
        pub enum Subject {
            $($(#[$doc])+ $name,)+
        }

        impl Subject {
            /// All subjects, in the order of a report.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];
            /// Number of subjects.
            pub const COUNT: usize = Self::ALL.len();

            /// For programs: it stays what it is where the words are changed.
            #[must_use]
            pub fn code(self) -> String {
                crate::source::code(match self {
                    $(Self::$name => stringify!($name),)+
                })
            }

            /// As printed.
            #[must_use]
            pub const fn label(self) -> &'static str {
                match self {
                    $(Self::$name => $label,)+
                }
            }

            /// The criterion of the score that reads it.
            #[must_use]
            pub const fn criterion(self) -> Option<CriterionKind> {
                match self {
                    $(Self::$name => subjects!(@criterion $criterion),)+
                }
            }

            /// Who decides, where the check itself does not say it.
            pub(crate) const fn decides(self) -> Decides {
                match self {
                    $(Self::$name => Decides::$decides $(($share))?,)+
                }
            }

            /// Whether a scheme for which it is missing is not decided.
            #[must_use]
            pub const fn is_needed(self) -> bool {
                match self {
                    $(Self::$name => subjects!(@needed $($need)?),)+
                }
            }

            /// What the file may leave out so that it goes unchecked.
            #[must_use]
            pub const fn need(self) -> Option<Need> {
                match self {
                    $(Self::$name => subjects!(@need $($(as $other)? $($what [$($($field)+),+])?)?),)+
                }
            }
        }
    };
    (@criterion none) => { None };
    (@criterion $criterion:ident) => { Some(CriterionKind::$criterion) };
    (@needed) => { false };
    (@needed asks) => { false };
    (@needed needs) => { true };
    (@need) => { None };
    (@need as $other:ident) => { Self::$other.need() };
    (@need $what:literal [$($($field:literal)+),+]) => { Some(Need { what: $what, ways: &[$(&[$($field),+]),+] }) };
}

checks!(subjects at calc);

impl Subject {
    /// True for what rules, ground and geometry say of the line, before any force.
    #[must_use]
    pub const fn is_of_place(self) -> bool {
        matches!(self.decides(), Decides::Place)
    }

    /// True for checks of a force, stress or pressure, whose margin counts in the score.
    #[must_use]
    pub const fn is_load(self) -> bool {
        matches!(self.criterion(), Some(CriterionKind::LoadMargin))
    }
}
