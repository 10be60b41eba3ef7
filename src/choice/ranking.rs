//! What a choice is: the schemes, best first, and why.

use super::score::Score;
use super::standing::{IfSettled, Standing};
use crate::drive::Pipe;
use crate::method::Scheme;
use std::sync::Arc;

/// One scheme in the ranking.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Ranked {
    /// The pipe.
    pub pipe: Arc<Pipe>,
    /// Its position among the candidates of the drive.
    pub candidate: usize,
    /// The scheme; apart, since its checks are many and a ranking moves them about.
    pub scheme: Box<Scheme>,
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
    /// Best first: by standing, of what is open by the lines it asks for, then by the least the score can be.
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
