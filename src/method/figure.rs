//! Figures as they are worked out.

use crate::law::{Calc, Doubted, Law};
use crate::quantity::{Measure, Role, Shown};
use crate::source::{Cited, Origin};

/// A figure with where it comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Figure {
    /// What it is.
    pub label: &'static str,
    /// The value.
    pub value: Shown,
    /// The equation or row it rests on.
    pub basis: Origin,
    /// False where an equation was used outside its range.
    pub in_range: bool,
    /// What a reader must know of it.
    pub note: Option<&'static str>,
    /// Whether it is room that the work takes beyond the bore.
    pub is_room: bool,
}

/// Figures as they are worked out.
#[derive(Debug, Default)]
pub(super) struct Figures {
    pub(super) calc: Calc,
    pub(super) list: Vec<Figure>,
}

impl Figures {
    /// Adds what `work` gives.
    pub(super) fn add<Q: Measure>(
        &mut self,
        label: &'static str,
        role: Role,
        work: impl FnOnce(&mut Calc) -> Cited<Q>,
    ) {
        let figure = self.calc.doubted(work);
        self.put(label, role, figure);
    }

    /// Adds what a law gives, cited by it.
    pub(super) fn law<L: Law>(&mut self, label: &'static str, role: Role, work: impl FnOnce(&mut Calc) -> L) {
        self.add(label, role, |calc| {
            let law = work(calc);
            Cited::new(calc.law(law), Origin::Law(&L::EQUATION))
        });
    }

    /// Adds what is known already.
    pub(super) fn put<Q: Measure>(&mut self, label: &'static str, role: Role, figure: Doubted<Cited<Q>>) {
        let Cited { value, origin: basis } = figure.in_spite_of_doubt();
        let in_range = figure.doubt().is_none();
        self.list.push(Figure { label, value: Shown::of(value, role), basis, in_range, note: None, is_room: false });
    }

    /// The figure added last is room that the work takes.
    pub(super) fn is_room(&mut self) {
        if let Some(last) = self.list.last_mut() {
            last.is_room = true;
        }
    }

    /// Tells something of the figure added last.
    pub(super) fn note(&mut self, note: &'static str) {
        if let Some(last) = self.list.last_mut() {
            last.note = Some(note);
        }
    }
}
