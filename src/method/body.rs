//! Who is in the bore, and what moves.

use crate::drive::{Drive, Pipe};

/// What may be in the bore.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Body {
    /// The pilot stem.
    Stem,
    /// A temporary steel casing.
    Casing,
    /// The product pipe.
    Pipe,
}

/// Who is in the bore and what moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct Stage {
    /// What was in the bore before and is driven out, or leads back.
    pub ahead: Option<Body>,
    /// What comes in.
    pub behind: Body,
    /// True when it is pulled back from the launch pit, false when it is pushed from there.
    pub pulls: bool,
    /// True when what is pulled is pushed at its tail as well, from the reception pit.
    pub assisted: bool,
}

impl Stage {
    /// The pilot stem is pushed.
    pub const STEM: Self = Self { ahead: None, behind: Body::Stem, pulls: false, assisted: false };
    /// A casing pushes the stem out.
    pub const CASING: Self = Self { ahead: Some(Body::Stem), behind: Body::Casing, pulls: false, assisted: false };
    /// The pipe pushes the stem out.
    pub const PIPE_AFTER_STEM: Self =
        Self { ahead: Some(Body::Stem), behind: Body::Pipe, pulls: false, assisted: false };
    /// The pipe is pushed into the open bore, the stem drawn out of it before.
    pub const PIPE_ALONE: Self = Self { ahead: None, behind: Body::Pipe, pulls: false, assisted: false };
    /// The pipe pushes the casing out.
    pub const PIPE_AFTER_CASING: Self =
        Self { ahead: Some(Body::Casing), behind: Body::Pipe, pulls: false, assisted: false };
    /// The stem pulls a reamer back, and more stem behind it for the next pass.
    pub const REAMING: Self = Self { ahead: Some(Body::Stem), behind: Body::Stem, pulls: true, assisted: false };
    /// The stem pulls reamer and pipe back.
    pub const PULLBACK: Self = Self { ahead: Some(Body::Stem), behind: Body::Pipe, pulls: true, assisted: false };
    /// The stem pulls reamer and pipe back, and a machine at the reception pit pushes the tail of the pipe.
    pub const PUSH_ASSIST: Self = Self { assisted: true, ..Self::PULLBACK };

    /// A winch pulls the pipe into the open bore.
    pub const WINCH: Self = Self { ahead: None, behind: Body::Pipe, pulls: true, assisted: false };

    /// The stage that pushes a pipe.
    pub(super) const fn of_pipe(drive: &Drive, pipe: &Pipe) -> Self {
        if pipe.casing.is_some() {
            Self::PIPE_AFTER_CASING
        } else if drive.stem.withdrawn {
            Self::PIPE_ALONE
        } else {
            Self::PIPE_AFTER_STEM
        }
    }

    /// The stages of a jacked pipe, in order.
    pub(super) fn of_jacking(drive: &Drive, pipe: &Pipe) -> impl Iterator<Item = Self> {
        let casing = pipe.casing.is_some().then_some(Self::CASING);
        [Some(Self::STEM), casing, Some(Self::of_pipe(drive, pipe))].into_iter().flatten()
    }

    /// Title of its working.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match (self.behind, self.ahead, self.pulls) {
            (Body::Stem, _, true) => "reamer pulled back by the stem, stem behind it",
            (Body::Stem, ..) => "pilot stem pushed",
            (Body::Casing, ..) => "casing pushed behind the stem",
            (_, None, true) => "pipe pulled into the open bore by the winch",
            (_, _, true) if self.assisted => "reamer and pipe pulled back, tail of the pipe pushed",
            (_, _, true) => "reamer and pipe pulled back by the stem",
            (_, Some(Body::Casing), _) => "pipe pushes the casing out",
            (_, None, _) => "pipe pushed into the open bore",
            _ => "pipe pushed behind the stem",
        }
    }
}
