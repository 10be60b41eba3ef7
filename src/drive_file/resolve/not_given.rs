//! Pipes whose limit only their maker knows: they go through the door open.

use super::Resolver;
use crate::drive::NotGiven;

impl Resolver<'_> {
    /// The pipe at the door stays open for want of this.
    pub(super) fn ask_the_maker(&mut self, missing: NotGiven) {
        if !self.not_given.contains(&missing) {
            self.not_given.push(missing);
        }
    }
}
