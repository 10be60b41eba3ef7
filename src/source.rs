//! Where a number comes from.

/// Prints values by a word of theirs.
macro_rules! printed {
    ($($name:ty: $word:ident),+ $(,)?) => {$(
        impl ::core::fmt::Display for $name {
            fn fmt(&self, f: &mut ::core::fmt::Formatter<'_>) -> ::core::fmt::Result {
                f.pad(self.$word())
            }
        }
    )+};
}
pub(crate) use printed;

/// Declares enums with the words that each value is printed by.
macro_rules! labelled {
    ($(
        $(#[$about:meta])+
        pub enum $name:ident { $($(#[$each:meta])+ $variant:ident = $label:literal,)+ }
    )+) => {$(
        $(#[$about])+
        pub enum $name { $($(#[$each])+ $variant,)+ }

        impl $name {
            /// As printed and as written in JSON.
            #[must_use]
            pub const fn label(self) -> &'static str {
                match self {
                    $(Self::$variant => $label,)+
                }
            }

            /// For programs: it stays what it is where the words are changed.
            #[allow(dead_code, reason = "not all are told apart by programs")]
            #[must_use]
            pub fn code(self) -> String {
                $crate::source::code(match self {
                    $(Self::$variant => stringify!($variant),)+
                })
            }
        }

        $crate::source::printed!($name: label);
    )+};
}
pub(crate) use labelled;

/// The name of a variant as programs read it: words in small letters, joined by `_`.
pub(crate) fn code(name: &str) -> String {
    let mut code = String::with_capacity(name.len() + 4);
    for c in name.chars() {
        if c.is_uppercase() && !code.is_empty() {
            code.push('_');
        }
        code.extend(c.to_lowercase());
    }
    code
}

labelled! {
    /// How far a number can be traced. Marks are never upgraded.
    #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
    pub enum Mark {
        /// Its text or table was read.
        Published = "published",
        /// Its own text was not opened; what another print, page or data package tells of it was.
        SecondHand = "published, second hand",
        /// Recalled from a published source that was not at hand.
        Memory = "recalled, not re-read",
        /// Trade habit without a source.
        CommonPractice = "common practice",
        /// Our own judgement.
        Judgement = "our judgement",
        /// The user's own value.
        Given = "given",
    }
}

impl Mark {
    /// All marks.
    pub const ALL: [Self; 6] =
        [Self::Published, Self::SecondHand, Self::Memory, Self::CommonPractice, Self::Judgement, Self::Given];

    /// How far from its source, the nearest first.
    pub(crate) const fn rank(self) -> u8 {
        match self {
            Self::Published => 0,
            // A value of the user's makes no page of a book of what it is put together with, nor the other way round.
            Self::Given => 1,
            Self::SecondHand => 2,
            Self::Memory => 3,
            Self::CommonPractice => 4,
            Self::Judgement => 5,
        }
    }

    /// Of two numbers in one result the mark that can be traced less far.
    #[must_use]
    pub const fn weaker(self, other: Self) -> Self {
        if self.rank() >= other.rank() { self } else { other }
    }
}

/// An equation: its form, citation and range. Docs, working sheet and range check all read this one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Equation {
    /// What it computes, in a few words.
    pub name: &'static str,
    /// The form, in plain text, with the argument names of the law.
    pub form: &'static str,
    /// Source id in `tables/sources.yaml`.
    pub source: &'static str,
    /// Section, equation number or page.
    pub locator: &'static str,
    /// How it was consulted.
    pub mark: Mark,
    /// Range of validity, in words; the law's `in_range` decides.
    pub valid: &'static str,
}

impl Equation {
    /// Our own judgement, with where it is written, in words, for a locator.
    #[must_use]
    pub const fn judged(name: &'static str, form: &'static str, locator: &'static str, valid: &'static str) -> Self {
        Self { name, form, source: "jackpull", locator, mark: Mark::Judgement, valid }
    }
}

/// A row of a table of the handbook it was taken from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct RowId {
    /// Position of the table in the handbook.
    pub table: u16,
    /// Position of the row in the table.
    pub row: u16,
}

/// A field of the drive file, by its path.
#[derive(Debug, PartialEq, Eq)]
pub struct FieldName(pub &'static str);

/// Where one value comes from: a handle of two words; the texts live in the handbook
/// ([`Handbook::reference`](crate::Handbook::reference) prints it).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Origin {
    /// A table row.
    Row(RowId),
    /// Computed by an equation.
    Law(&'static Equation),
    /// The drive file.
    File(&'static FieldName),
}

/// A value and where it comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cited<T> {
    /// The value.
    pub value: T,
    /// Where it comes from.
    pub origin: Origin,
}

impl<T> Cited<T> {
    /// Pairs a value with its origin.
    pub const fn new(value: T, origin: Origin) -> Self {
        Self { value, origin }
    }

    /// A value the user gave.
    pub const fn given(value: T, field: &'static FieldName) -> Self {
        Self { value, origin: Origin::File(field) }
    }

    /// Whether the file tells it.
    pub const fn is_given(&self) -> bool {
        matches!(self.origin, Origin::File(_))
    }

    /// The value changed, the origin kept.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> Cited<U> {
        Cited { value: change(self.value), origin: self.origin }
    }
}
