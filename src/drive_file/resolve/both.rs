//! Pipe that can be jacked and pulled: steel and ductile iron. What is given of it decides what is looked at.

use super::Resolver;
use super::pipe::{Named, same_size};
use crate::drive::{AssumedValue, Pull};
use crate::drive_file::{CandidateFile, DriveFile};
use crate::handbook::HandbookError;
use crate::quantity::Length;
use crate::source::Cited;

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
        let for_a_pull =
            candidate.ovality.is_some() || candidate.passes.is_some() || candidate.joint_diameter.is_some();
        // The guide's wall of a pulled pipe is none for jacking.
        let only_pulled = for_a_pull || candidate.wall.is_none() && self.proposing.is_none();
        let casing = self.is_casing_alone(candidate, size)?;
        if file.pull.is_none() || pushed || casing.is_some() && !for_a_pull {
            self.refuse_pulled(path, candidate);
            if let (Some(row), false, true) = (casing, pushed, file.pull.is_some()) {
                let word = "jacked alone: the tables have its size as a jacking casing; for a pull give outside_diameter \
                            and wall";
                self.assume(format!("{path}: how it is put in"), AssumedValue::Word(word.to_owned()), row.origin);
            }
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

    /// The row of a size that the tables know as a casing to be jacked and not as an iron pipe size.
    fn is_casing_alone(&self, candidate: &CandidateFile, size: Length) -> Result<Option<Cited<()>>, HandbookError> {
        let pulled = self.handbook.pe_ips()?.find(|row| same_size(row.size.value, size));
        if candidate.outside_diameter.is_some() || pulled.is_some() {
            return Ok(None);
        }
        let row = self.handbook.steel_casing_pipe()?.find(|row| same_size(row.outside_diameter.value, size));
        Ok(row.map(|row| row.map(|_| ())))
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
