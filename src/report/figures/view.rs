//! A figure, and what the figures are drawn of.

use crate::choice::{Choice, Ranked};
use crate::conditions::Plan;
use crate::drive::Drive;
use crate::quantity::{Measure, Role, Shown, UnitSystem};

/// A figure as SVG.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Figure {
    /// What it is called as a file.
    pub name: &'static str,
    /// What it shows.
    pub title: String,
    /// What can be read from it.
    pub words: String,
    /// The drawing, whole: a file, or a part of a page.
    pub svg: String,
}

/// What the figures are drawn of.
#[derive(Clone, Copy)]
pub(super) struct View<'a> {
    pub(super) drive: &'a Drive,
    pub(super) choice: &'a Choice,
    pub(super) first: &'a Ranked,
    pub(super) system: UnitSystem,
}

impl View<'_> {
    pub(super) fn plan(&self) -> Plan<'_> {
        Plan { drive: self.drive, pipe: &self.first.pipe, method: self.first.scheme.method }
    }

    /// As printed.
    pub(super) fn text<Q: Measure>(&self, quantity: Q, role: Role) -> String {
        self.value(Shown::of(quantity, role))
    }

    pub(super) fn value(&self, shown: Shown) -> String {
        shown.display(self.system).to_string()
    }

    /// In the unit that it is printed in.
    pub(super) fn number<Q: Measure>(&self, quantity: Q, role: Role) -> f64 {
        Shown::of(quantity, role).in_units(self.system).0
    }

    pub(super) fn unit(&self, role: Role) -> &'static str {
        Shown { si: 0.0, role }.in_units(self.system).1
    }
}
