//! Pipe that can be jacked and pulled: steel and ductile iron. What is given of it decides what is looked at.

use super::Resolver;
use super::pipe::Named;
use crate::drive::Pull;
use crate::drive_file::{CandidateFile, DriveFile};
use crate::handbook::HandbookError;
use crate::quantity::Length;

impl Resolver<'_> {
    /// Steel: jacked, and pulled too where the file says how; only one of the two where a field is for that one alone.
    pub(super) fn steel(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        size: Length,
        file: &DriveFile,
        pull: Option<&Pull>,
    ) -> Result<Option<Named>, HandbookError> {
        let pushed = candidate.casing.is_some()
            || candidate.factor.is_some()
            || candidate.scheme.is_some()
            || candidate.design_strength.is_some()
            || candidate.rated_force.is_some()
            || candidate.free_length.is_some()
            || candidate.inside_diameter.is_some();
        // The guide's wall of a pulled pipe is none for jacking.
        let only_pulled = candidate.ovality.is_some()
            || candidate.passes.is_some()
            || candidate.joint_diameter.is_some()
            || candidate.wall.is_none() && self.proposing.is_none();
        if file.pull.is_none() || pushed {
            self.refuse_pulled(path, candidate);
            return self.jacked_steel(path, candidate, file, size);
        }
        let flaws = self.flaws.len();
        let Some(pulled) = self.pulled_steel(path, candidate, size, file, pull)? else { return Ok(None) };
        // A fault is told once.
        if only_pulled || self.flaws.len() > flaws {
            return Ok(Some(pulled));
        }
        let Some(jacked) = self.jacked_steel(path, candidate, file, size)? else { return Ok(None) };
        Ok(Some(Named { jacked: jacked.jacked, ..pulled }))
    }

    /// Iron: jacked where its maker rates it for thrust, pulled where its joints hold pull.
    pub(super) fn iron(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        size: Length,
        file: &DriveFile,
        pull: Option<&Pull>,
    ) -> Result<Option<Named>, HandbookError> {
        let holds = candidate.joint_pull.is_some() || candidate.joint_pressure.is_some();
        // A proposed pipe is looked at both ways: what is missing is the maker's to say.
        let proposed = self.proposing.is_some();
        match (candidate.rated_force.is_some() || proposed, holds || proposed && file.pull.is_some()) {
            (true, true) => {
                let Some(pulled) = self.ductile_iron(path, candidate, size, file, pull)? else { return Ok(None) };
                let Some(jacked) = self.by_its_maker(path, candidate, file, size)? else { return Ok(None) };
                Ok(Some(Named { jacked: jacked.jacked, ..pulled }))
            }
            (false, true) => self.ductile_iron(path, candidate, size, file, pull),
            (true, false) => {
                self.refuse_pulled(path, candidate);
                self.by_its_maker(path, candidate, file, size)
            }
            (false, false) if file.pull.is_some() => self.ductile_iron(path, candidate, size, file, pull),
            (false, false) => self.by_its_maker(path, candidate, file, size),
        }
    }
}
