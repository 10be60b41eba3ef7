//! The length of a pushed steel pipe, or of a casing, that nothing holds in the pit.

use super::steel;
use crate::check::{Draft, at_most, required};
use crate::drive::{FreeLength, SteelEnd};
use crate::law::Calc;
use crate::method::either::Forces;
use crate::method::rules::asked;
use crate::method::walked::Walked;
use crate::quantity::Role;

const FREE: &str = "the free length as a column whose head can sway; a guided head bears more";
const HELD: &str = "no free length is given: support the pipe so that no more than 3 m (10 ft) stands free in the pit";

/// Buckling of the free length of a pushed pipe or casing: as told, else what its free length is to bear, at the most that
/// is usual.
pub(super) fn column(at: &Walked<'_>, calc: &mut Calc, end: &SteelEnd, free: &FreeLength, thrust: Forces) -> Draft {
    let limit = calc.doubted(|calc| steel::free_length(calc, end, free));
    if free.told {
        return thrust.check(|thrust| at_most(Role::Thrust, thrust, limit)).with_note(FREE);
    }
    let (factor, left) = (end.code.omega.value, at.drive.leeway.unwatched);
    thrust.check(|thrust| required(Role::Thrust, asked(thrust, factor, left), limit)).with_note(HELD)
}
