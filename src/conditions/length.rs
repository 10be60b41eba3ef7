//! Length of the drive against the published range of the method.

use crate::check::{Check, Subject, Verdict};
use crate::drive::{Drive, Pipe};
use crate::handbook::Method;
use crate::law::Doubted;
use crate::quantity::{Band, Role};

/// A screen: longer drives have been built, and asked for care. Guidance of the pilot limits a pulled pipe too, since
/// its bore follows the same guided pilot.
#[must_use]
pub fn length(drive: &Drive, pipe: &Pipe, method: Method) -> Check {
    let range = match method {
        Method::PipeJacking => pipe.jacking_length,
        Method::Pullback => pipe.pullback_length,
    };
    let Some(range) = range else {
        return Check::rated(Subject::Length, Verdict::NotDecided, drive.guided_length.origin)
            .with_note("the published range of the method does not include this diameter");
    };
    let limit = if range.value < drive.guided_length.value { range } else { drive.guided_length };
    let demand = Doubted { value: Band::same(drive.length.value), doubt: None };
    let check = Check::at_most(Subject::Length, Role::Distance, demand, Doubted { value: limit, doubt: None });
    let check = check.as_screen();
    if check.verdict == Verdict::Within {
        check
    } else {
        check.with_note("longer than the published range of a guided pilot: line and grade need proof")
    }
}
