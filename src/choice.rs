//! Schemes into a decision: standing, score, ranking, a reason in one sentence.

mod criterion;
mod rank;
pub(crate) mod reason;
#[cfg(feature = "robust")]
pub mod robust;
pub(crate) mod score;
mod standing;

pub use score::{Criterion, CriterionKind, Score};
pub use standing::{IfSettled, Standing};

use crate::drive::{Drive, Pipe};
use crate::handbook::{HandbookError, Method};
use crate::method::{self, Scheme};
use std::sync::Arc;

/// One scheme in the ranking.
#[derive(Debug, Clone)]
pub struct Ranked {
    /// The pipe.
    pub pipe: Arc<Pipe>,
    /// Its position among the candidates of the drive.
    pub candidate: usize,
    /// The scheme.
    pub scheme: Scheme,
    /// Its standing.
    pub standing: Standing,
    /// Its score; absent where the scheme is excluded before any number.
    pub score: Option<Score>,
    /// Its place, from 1. Schemes of one standing whose scores are equal as printed share it.
    pub place: usize,
    /// Where it would stand at best, if it is open.
    pub if_settled: Option<IfSettled>,
}

/// The ranking, and what is chosen.
#[derive(Debug, Clone)]
pub struct Choice {
    /// Best first: by standing, then by the least the score can be.
    pub ranked: Vec<Ranked>,
    /// Why the first is first, or why none is chosen, in one sentence.
    pub reason: String,
}

impl Choice {
    /// The scheme chosen: the first, if it fits or fits with care.
    #[must_use]
    pub fn chosen(&self) -> Option<&Ranked> {
        self.ranked.first().filter(|first| first.standing.can_be_chosen())
    }
}

/// Assesses every candidate with every method, and ranks them.
///
/// # Errors
/// If the table of weights or of exclusions is malformed or lacks a row.
pub fn choose(drive: &Drive) -> Result<Choice, HandbookError> {
    let scales = score::Scales::of(drive)?;
    let mut ranked = Vec::new();
    for (candidate, pipe) in drive.candidates.iter().enumerate() {
        for method in [Method::PipeJacking, Method::Pullback] {
            // What the file says of the pipe is for the other method alone.
            if !method::is_offered(drive, pipe, method) {
                continue;
            }
            let scheme = method::assess(drive, pipe, method);
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
    rank::rank(&mut ranked);
    let reason = reason::reason(drive, &ranked)?;
    Ok(Choice { ranked, reason })
}
