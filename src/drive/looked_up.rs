//! Groups of values that are rows of the handbook, whatever the file says: how far past its limit the high demand of a
//! check may be; and of plant that the file does not tell, the most that can be asked for without a word of the contractor.

use crate::quantity::{Force, Length, Ratio};
use crate::source::Cited;

/// Declares such groups: each value with how it is looked up, and those that what the file tells goes into.
macro_rules! looked_up {
    ($(
        $(#[$doc:meta])+
        $group:ident $(: $copy:ident)? of |$handbook:ident$(, $told:ident: $told_kind:ty)*| {
            $($(#[$about:meta])* $name:ident: $kind:ty = $value:expr,)+
        }
    )+) => {$(
        $(#[$doc])+
        #[derive(Debug, Clone $(, $copy)?)]
        pub(crate) struct $group { $($(#[$about])* pub(crate) $name: $kind,)+ }

        impl $group {
            /// Out of the tables.
            pub(crate) fn read(
                $handbook: &$crate::handbook::Handbook,
                $($told: $told_kind,)*
            ) -> Result<Self, $crate::handbook::HandbookError> {
                Ok(Self { $($name: $value,)+ })
            }
        }
    )+};
}
pub(super) use looked_up;

/// What a caller may read of what is private.
macro_rules! readable {
    ($of:ident: $($(#[$doc:meta])+ $name:ident: $kind:ty = |$it:ident| $value:expr;)+) => {
        impl $of {$(
            $(#[$doc])+
            #[must_use]
            pub fn $name(&self) -> $kind {
                let $it = self;
                $value
            }
        )+}
    };
}
pub(super) use readable;

looked_up! {
    /// What is usual.
    Usual: Copy of |handbook, stem_buckling: Cited<Force>| {
        stem: UsualStem = UsualStem::read(handbook, stem_buckling)?,
        /// Side of a square thrust wall, where the width of the pit is not told.
        wall: Cited<Length> = handbook.length("usual.wall")?,
        /// The same in the pit of a large pipe.
        wall_of_large: Cited<Length> = handbook.length("usual.wall_of_large")?,
        /// Outside diameter from which a pipe is one.
        large: Length = handbook.length("usual.large")?.value,
        /// Depth of the floor of a pit below the invert, where it is not told.
        floor: Length = handbook.length("usual.pit_floor")?.value,
        /// Its height over the depth of the floor.
        wall_share: Cited<Ratio> = handbook.ratio("usual.wall_share")?,
    }

    /// A stout pilot stem.
    UsualStem: Copy of |handbook, stem_buckling: Cited<Force>| {
        /// What its free length in the pit buckles at.
        buckling: Cited<Force> = stem_buckling,
        /// What must be left of it.
        factor: Cited<Ratio> = handbook.ratio("stem.buckling_factor")?,
        /// What its joints may be pushed with.
        joint: Cited<Force> = handbook.force("usual.stem_joint")?,
        /// And pulled with.
        pull: Cited<Force> = handbook.force("usual.stem_pull")?,
    }

    /// What must be left of the safety factor in a limit at the high level, and the most that a check may be past it.
    Leeway: Copy of |handbook| {
        /// Left where a force is read while it acts and can be stopped below the limit.
        watched: Ratio = handbook.ratio("left.watched")?.value,
        /// Left of what nobody can watch or undo.
        unwatched: Ratio = handbook.ratio("left.unwatched")?.value,
        /// Left of a wall or plate that the line is set on.
        set_on: Ratio = handbook.ratio("left.set_on")?.value,
        /// The most a limit of use may be passed, which a survey reads and which hurts nobody at once.
        surveyed: Ratio = handbook.ratio("past.surveyed")?.value,
        /// Times its limit that a force may be which is held below it, and freed where the drive stalls.
        held: Ratio = handbook.ratio("past.held")?.value,
        /// The most any limit may be passed.
        most: Ratio = handbook.ratio("past.most")?.value,
    }
}
