//! What is worked out twice: on the safe side of what the file leaves out, and at its best.

use crate::check::Draft;
use crate::law::Doubted;
use crate::quantity::{Band, Force};

/// A value on the safe side, and at its best where that may differ.
#[derive(Debug, Clone, Copy)]
pub(super) struct Either<T> {
    pub(super) safe: T,
    pub(super) best: Option<T>,
}

/// A force on the safe side, and at its best.
pub(super) type Forces = Either<Doubted<Band<Force>>>;

impl<T: Copy> Either<T> {
    /// The same both times.
    pub(super) const fn sure(value: T) -> Self {
        Self { safe: value, best: None }
    }

    pub(super) fn map<U>(self, change: impl Fn(T) -> U) -> Either<U> {
        Either { safe: change(self.safe), best: self.best.map(change) }
    }

    /// Both put together, each side with its own.
    pub(super) fn with<U: Copy, V>(self, other: Either<U>, both: impl Fn(T, U) -> V) -> Either<V> {
        let best = match (self.best, other.best) {
            (None, None) => None,
            (mine, its) => Some(both(mine.unwrap_or(self.safe), its.unwrap_or(other.safe))),
        };
        Either { safe: both(self.safe, other.safe), best }
    }

    /// Both, each side with its own.
    pub(super) fn zip<U: Copy>(self, other: Either<U>) -> Either<(T, U)> {
        self.with(other, |one, other| (one, other))
    }

    /// The check of it, with what is not told at its best beside it.
    pub(super) fn check(self, mut make: impl FnMut(T) -> Draft) -> Draft {
        let safe = make(self.safe);
        match self.best {
            Some(best) => safe.at_best(make(best)),
            None => safe,
        }
    }
}
