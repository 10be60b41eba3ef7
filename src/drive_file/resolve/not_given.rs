//! Proposed pipes whose limit only their maker knows: they go through the door open, where a pipe of the file would be
//! refused.

use super::Resolver;
use super::jacked::Barrel;
use super::steering::Ends;
use crate::drive::{Capacity, EndArea, JackedPipe, NotGiven};
use crate::drive_file::{CandidateFile, DriveFile};
use crate::handbook::HandbookError;
use crate::quantity::LineLoad;
use crate::source::Cited;

impl Resolver<'_> {
    /// True while a pipe is proposed, which then stays open for want of this.
    pub(super) fn is_for_the_maker(&mut self, missing: NotGiven) -> bool {
        let Some(open) = &mut self.proposing else { return false };
        if !open.contains(&missing) {
            open.push(missing);
        }
        true
    }

    /// A proposed pipe to push on, whose end its maker has to rate.
    pub(super) fn pushed_by_its_maker(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        file: &DriveFile,
        barrel: &Barrel,
        ends: &Ends,
        weight: Option<Cited<LineLoad>>,
    ) -> Result<JackedPipe, HandbookError> {
        let ratio = self.handbook.ratio("clay.joint_ratio")?;
        let joint = self.joint(path, candidate, file, ends, ratio)?;
        Ok(JackedPipe {
            end_area: EndArea::Unknown,
            weight,
            joint,
            capacity: Capacity::Rated,
            inside_diameter: barrel.inside_diameter,
            rated_force: None,
            free: None,
        })
    }
}
