//! Length of the drive and diameter of the pipe against the published range of the method. Screens: longer drives and
//! other diameters have been built, and asked for care; how far beyond is told by the utilisation.

use crate::check::{Check, Checks, Subject, Verdict};
use crate::drive::{Drive, Pipe};
use crate::handbook::Method;
use crate::quantity::{Band, Role};
use crate::source::Cited;

const LONGER: &str = "longer than the published range of a guided pilot: line and grade need proof";
const LONGER_DRIVE: &str = "longer than the published range of the method: line and grade need proof";
const LARGER: &str = "larger than the published range of the method: ask who has built it";
const SMALLER: &str = "smaller than the published range of the method: ask who has built it";
const NO_RANGE: &str = "no published range of the method is in the tables";

/// Adds both checks. Guidance of the pilot limits a pulled pipe too, since its bore follows the same guided pilot.
pub fn range(drive: &Drive, pipe: &Pipe, method: Method, checks: &mut Checks) {
    let range = match method {
        Method::PipeJacking => pipe.jacking_range,
        Method::Pullback => pipe.pullback_range,
    };
    let Some(range) = range else {
        let check = Check::rated(Subject::Length, Verdict::NotDecided, drive.guided_length.origin);
        checks.add(check.with_note(NO_RANGE));
        return;
    };
    let guided = drive.stem.is_there() && drive.guided_length.value <= range.length.value;
    let limit = if guided { drive.guided_length } else { range.length };
    let demand = Band::same(drive.length.value);
    let check = Check::at_most(Subject::Length, Role::Distance, demand, limit).as_screen();
    checks.add(noted(check, if guided { LONGER } else { LONGER_DRIVE }));

    let (from, to) = range.diameters;
    let diameter = pipe.outside_diameter.value;
    let origin = range.length.origin;
    if let Some(least) = from.filter(|from| diameter < *from) {
        let check = Check::at_least(Subject::Diameter, Role::Diameter, diameter, Cited::new(least, origin));
        checks.add(noted(check.as_screen(), SMALLER));
    } else if let Some(most) = to {
        let most = Cited::new(most, origin);
        let check = Check::at_most(Subject::Diameter, Role::Diameter, Band::same(diameter), most);
        checks.add(noted(check.as_screen(), LARGER));
    }
}

fn noted(check: Check, beyond: &'static str) -> Check {
    if check.verdict == Verdict::Within { check } else { check.with_note(beyond) }
}
