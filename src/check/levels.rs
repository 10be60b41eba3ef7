//! What a demand and a limit may be given as.

use crate::law::Doubted;
use crate::quantity::{Band, Measure};
use crate::source::Cited;

/// Low, likely and high of one thing, with the doubt in it: a value alone is the same at each level and sure.
pub trait Levels<Q> {
    /// Level by level.
    fn levels(self) -> Doubted<Band<Q>>;
}

impl<Q: Measure> Levels<Q> for Q {
    fn levels(self) -> Doubted<Band<Q>> {
        Band::same(self).levels()
    }
}

impl<Q: Measure> Levels<Q> for Band<Q> {
    fn levels(self) -> Doubted<Self> {
        Doubted::sure(self)
    }
}

impl<Q: Measure> Levels<Q> for Doubted<Band<Q>> {
    fn levels(self) -> Self {
        self
    }
}

/// What a demand is held against, and where it comes from; it may depend on the level itself.
pub trait Limit<Q> {
    /// Level by level.
    fn limit(self) -> Doubted<Cited<Band<Q>>>;
}

impl<Q: Measure> Limit<Q> for Cited<Q> {
    fn limit(self) -> Doubted<Cited<Band<Q>>> {
        self.map(Band::same).limit()
    }
}

impl<Q: Measure> Limit<Q> for Cited<Band<Q>> {
    fn limit(self) -> Doubted<Self> {
        Doubted::sure(self)
    }
}

impl<Q: Measure> Limit<Q> for Doubted<Cited<Q>> {
    fn limit(self) -> Doubted<Cited<Band<Q>>> {
        self.map(|limit| limit.map(Band::same))
    }
}

impl<Q: Measure> Limit<Q> for Doubted<Cited<Band<Q>>> {
    fn limit(self) -> Self {
        self
    }
}
