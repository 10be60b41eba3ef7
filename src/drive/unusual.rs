//! Values of the file that are beyond what is usual: used as they are, and told.

use super::Concern;
use crate::quantity::{Shown, UnitSystem};

/// A value that is possible and seldom met.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Unusual {
    /// What it concerns, and so which schemes fit with care at best.
    pub(crate) concern: Concern,
    /// Path of its field.
    pub(crate) field: String,
    /// The value.
    pub(crate) value: Shown,
    /// Least and greatest of what is usual.
    pub(crate) usual: [Shown; 2],
}

impl Unusual {
    /// As printed.
    #[must_use]
    pub fn text(&self, system: UnitSystem) -> String {
        let [least, most] = self.usual.map(|shown| shown.display(system));
        let (field, value) = (&self.field, self.value.display(system));
        format!("{field}: {value} is outside the usual {least} to {most}; what depends on it fits with care at best.")
    }
}
