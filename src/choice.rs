//! Schemes into a decision: standing, score, ranking, a reason in one sentence.

mod asks;
mod rank;
pub(crate) mod reason;
#[cfg(feature = "robust")]
pub mod robust;
pub(crate) mod score;
mod standing;

pub use asks::{Ask, Cause, asks, causes};
pub use score::{Criterion, CriterionKind, Score};
pub use standing::{Choice, IfSettled, Ranked, Standing, not_decided};

use crate::drive::Drive;
use crate::handbook::{HandbookError, Method};
use crate::method;
use std::sync::Arc;

/// Assesses every candidate with every method, and ranks them.
///
/// # Errors
/// If the table of weights or of exclusions is malformed or lacks a row.
pub fn choose(drive: &Drive) -> Result<Choice, HandbookError> {
    let mut ranked = schemes(drive)?;
    rank::rank(&mut ranked);
    let reason = reason::reason(drive, &ranked)?;
    Ok(Choice { ranked, reason })
}

/// A scheme by the position of its pipe among the candidates, and its method.
type Place = (usize, Method);

/// The scheme that [`choose`] chooses, where it chooses one, and all of them, in the order of the file.
pub(crate) fn chosen(drive: &Drive) -> Result<(Option<Place>, Vec<Ranked>), HandbookError> {
    let schemes = schemes(drive)?;
    let may_be = schemes.iter().filter(|one| one.standing.can_be_chosen());
    let first = may_be.min_by(|one, other| rank::order(one, other));
    Ok((first.map(|first| (first.candidate, first.scheme.method)), schemes))
}

/// Every candidate by every method, in the order of the file.
fn schemes(drive: &Drive) -> Result<Vec<Ranked>, HandbookError> {
    let scales = score::Scales::of(drive)?;
    let mut ranked = Vec::new();
    for (candidate, pipe) in drive.candidates.iter().enumerate() {
        for method in [Method::PipeJacking, Method::Pullback] {
            // What the file says of the pipe is for the other method alone.
            if !method::is_offered(drive, pipe, method) {
                continue;
            }
            let scheme = Box::new(method::assess(drive, pipe, method));
            let standing = Standing::of(&scheme);
            let score = (!scheme.is_excluded()).then(|| score::score(drive, pipe, &scheme, &scales));
            ranked.push(Ranked {
                pipe: Arc::clone(pipe),
                candidate,
                scheme,
                standing,
                score,
                place: 0,
                if_settled: None,
            });
        }
    }
    Ok(ranked)
}
