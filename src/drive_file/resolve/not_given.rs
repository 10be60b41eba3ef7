//! Proposed pipes whose limit only their maker knows: they go through the door open, where a pipe of the file would be
//! refused.

use super::Resolver;
use crate::drive::NotGiven;

impl Resolver<'_> {
    /// True while a pipe is proposed, which then stays open for want of this.
    pub(super) fn is_for_the_maker(&mut self, missing: NotGiven) -> bool {
        let Some(open) = &mut self.proposing else { return false };
        if !open.contains(&missing) {
            open.push(missing);
        }
        true
    }
}
