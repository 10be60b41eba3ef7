//! Values of the file beyond what is usual.

use super::plan::Plan;
use crate::check::{Care, Outcome, Verdict, only, rated};
use crate::source::{Equation, Origin};

/// What is asked of a value that is possible and seldom met.
const SELDOM: Equation = Equation::judged(
    "values of the file",
    "each within what is usual of its field",
    "a value that is possible and seldom met is more often a slip: it is used as it is, and asks for care",
    "every value of the file",
);

/// A value that is possible and seldom met asks for care wherever it is used.
pub(crate) fn usual(at: &Plan<'_>) -> Outcome {
    only(at.drive.is_unusual_for(at.pipe, at.method), "every value in the file is a usual one")?;
    let check = rated(Verdict::Within, Origin::Law(&SELDOM));
    Ok(check.with_care(Care::Data, "a value in the file is unusual: see the cautions"))
}
