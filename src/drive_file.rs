//! From the text of a drive file to a [`Drive`]: all faults at once, each with its place.

mod band;
mod candidate;
mod declare;
mod examples;
mod facts;
pub mod fields;
mod flaw;
mod ground;
mod limits;
mod pull;
mod resolve;
mod rig;
mod schema;
mod site;
mod size;

pub use band::*;
pub use candidate::*;
pub use facts::Facts;
pub(crate) use facts::Written;
pub use ground::*;
pub use pull::*;
pub use rig::*;
pub use schema::*;
pub use site::*;

use crate::drive::Drive;
use crate::handbook::{Handbook, HandbookError};
use crate::yaml::{self, Fault};
use flaw::Flaw;
use std::sync::{Arc, LazyLock};
use thiserror::Error;

/// Why there is no drive.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum InputError {
    /// The file is faulty.
    #[error("{}", .0.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"))]
    Faults(Vec<Fault>),
    /// A table is.
    #[error(transparent)]
    Handbook(#[from] HandbookError),
}

/// A drive file is made in code by its struct, with the same checks as one that is read.
///
/// ```
/// use jackpull::drive_file::{CandidateFile, DriveFile, Material, Over, PitFile, StretchFile, SurfaceFile, WaterTable};
/// use jackpull::handbook::{GroundClass, Lubrication, Service};
/// use jackpull::quantity::{inches, metres, millimetres, number, percent};
/// use jackpull::{Handbook, choose};
///
/// let stretch = StretchFile {
///     spt_n: Some(number(12.0).into()),
///     largest_stone: Some(millimetres(0.0).into()),
///     ..StretchFile::new(GroundClass::FirmToVeryStiffClay)
/// };
/// let pit = PitFile::at(metres(4.2));
/// let drive = DriveFile {
///     grade: Some(percent(1.0).into()),
///     lubrication: Some(Lubrication::Metered.into()),
///     surface: Some(SurfaceFile { over: Some(Over::Road.into()), ..SurfaceFile::new() }),
///     candidates: vec![CandidateFile::new(Material::Clay, inches(10.0))],
///     ..DriveFile::new(Service::GravitySewer, metres(30.0), pit, WaterTable::None, vec![stretch])
/// }
/// .resolve(&Handbook::embedded())?;
/// assert!(choose(&drive)?.chosen().is_some());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
impl DriveFile {
    /// Hands over each number that is written, by its path.
    #[cfg(feature = "report")]
    pub(crate) fn each_number(&self, mut each: impl FnMut(&str, crate::quantity::Shown)) {
        use crate::quantity::Shown;
        use fields::{FileNumber, Value as _};
        if let Some(spec) = Self::FIELDS.first() {
            let mut told = |it: &FileNumber<'_>| each(it.path, Shown { si: it.si, role: it.number.role });
            self.numbers(spec, &mut String::new(), &mut told);
        }
    }

    /// What it tells of the machine.
    pub(crate) fn machine(&self) -> &RigFile {
        static NOT_CHOSEN: LazyLock<RigFile> = LazyLock::new(RigFile::new);
        self.rig.as_ref().unwrap_or(&NOT_CHOSEN)
    }

    /// Reads the text of a drive file.
    ///
    /// # Errors
    /// Every faulty value, every missing or unknown key, and the first of what ends the reading.
    pub fn read(text: &str) -> Result<Self, InputError> {
        yaml::read(text).map_err(|faults| InputError::Faults(examples::by_field(faults, text)))
    }

    /// Puts the values together with those of the handbook.
    ///
    /// # Errors
    /// Every contradiction between values, without places; [`read_drive`] adds them.
    pub fn resolve(&self, handbook: &Arc<Handbook>) -> Result<Drive, InputError> {
        resolve::resolve(self, handbook, false)?.map_err(unplaced)
    }

    /// The same, where what only the maker of a pipe can tell may be left out: a check that needs it is not decided.
    ///
    /// # Errors
    /// As of [`resolve`](Self::resolve).
    pub fn sketched(&self, handbook: &Arc<Handbook>) -> Result<Drive, InputError> {
        resolve::resolve(self, handbook, true)?.map_err(unplaced)
    }

    /// As the text of a drive file, in SI base units, which reads back as the same drive bit by bit.
    ///
    /// # Errors
    /// If a value is not finite or a text has control characters, so that no file can hold it. The fault has no place.
    pub fn to_yaml(&self) -> Result<String, Fault> {
        let whole = |complaint: &str| Fault { path: String::new(), complaint: complaint.into(), place: None };
        let text = yaml::write(self)?;
        // Places are those of a text that the caller never sees.
        let unread = |faults: Vec<Fault>| match faults.into_iter().next() {
            Some(fault) => Fault { place: None, ..fault },
            None => whole("cannot be read back"),
        };
        let again: Self = yaml::read(&text).map_err(unread)?;
        if yaml::write(&again)? == text { Ok(text) } else { Err(whole("is not the same when it is read back")) }
    }

    /// The drive of this file, which was read from `text`: faults have their places in it.
    pub(crate) fn drive(&self, text: &str, handbook: &Arc<Handbook>) -> Result<Drive, InputError> {
        resolve::resolve(self, handbook, false)?.map_err(|flaws| {
            // Each place costs one more reading of the text.
            let mut faults: Vec<Fault> = flaws
                .into_iter()
                .take(yaml::MOST_FAULTS)
                .map(|flaw| {
                    let mut fault = yaml::locate::<DriveFile>(text, flaw.at, flaw.complaint);
                    fault.path = flaw.path;
                    fault
                })
                .collect();
            faults.sort_by_key(|fault| fault.place);
            faults.dedup();
            InputError::Faults(faults)
        })
    }
}

fn unplaced(flaws: Vec<Flaw>) -> InputError {
    let fault = |flaw: Flaw| Fault { path: flaw.path, complaint: flaw.complaint, place: None };
    InputError::Faults(flaws.into_iter().map(fault).collect())
}

/// Reads the text of a drive file and puts its values together with those of the handbook.
///
/// # Errors
/// Every fault that could be found, with field, line, column, what was read and what was expected.
pub fn read_drive(text: &str, handbook: &Arc<Handbook>) -> Result<Drive, InputError> {
    DriveFile::read(text)?.drive(text, handbook)
}
