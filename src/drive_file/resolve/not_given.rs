//! Pipes whose limit only their maker knows: they go through the door open, a pipe of the file where nothing is told of its
//! end.

use super::Resolver;
use crate::drive::NotGiven;

impl Resolver<'_> {
    /// Whether a pipe stays open for want of this: any proposed one, and one of the file for want of the force on its end.
    pub(super) fn is_for_the_maker(&mut self, missing: NotGiven) -> bool {
        let is_open = self.proposing || missing == NotGiven::EndForce;
        if is_open && !self.not_given.contains(&missing) {
            self.not_given.push(missing);
        }
        is_open
    }
}
