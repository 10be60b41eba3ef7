//! What the checks of both methods look at.

use crate::drive::{Drive, HoleState, Pipe, Pull};
use crate::handbook::Method;
use crate::quantity::{Length, Measure, Ratio};
use crate::source::{Cited, FieldName};

const SEGMENT: FieldName = FieldName("candidates[].pipe_length");

/// A pipe, and how it is put in.
#[derive(Debug, Clone, Copy)]
pub struct Plan<'a> {
    /// What is to be built.
    pub drive: &'a Drive,
    /// The pipe.
    pub pipe: &'a Pipe,
    /// How it is put in.
    pub method: Method,
}

impl Plan<'_> {
    pub(crate) fn is_jacked(&self) -> bool {
        self.method == Method::PipeJacking
    }

    /// Fall over length of the line, whichever way it falls.
    pub(crate) fn slope(&self) -> Ratio {
        Ratio::from_si(self.drive.grade.value.si().tan().abs())
    }

    /// Whether it goes into a bore that the stem was drawn out of, and that holds nothing but air.
    pub(crate) fn goes_into_empty_bore(&self) -> bool {
        let by_winch = |pull: &Pull| pull.winch.is_some() && pull.works.hole == HoleState::Dry;
        self.drive.stem.withdrawn && (self.is_jacked() || self.drive.pull.as_ref().is_some_and(by_winch))
    }

    /// Length of one jacking pipe: the file's, or the longest usual one of clay.
    pub(crate) fn pipe_length(&self) -> Cited<Length> {
        let usual = self.drive.site.pit_rules.pipe_length;
        self.pipe.segment.map_or(usual, |segment| Cited::given(segment, &SEGMENT))
    }

    /// Diameter of the ground that is opened.
    pub(crate) fn opened(&self) -> Length {
        let pipe = self.pipe;
        match (self.method, pipe.casing_diameter()) {
            (Method::PipeJacking, Some(casing)) => casing.max(pipe.bore.value),
            _ => pipe.bore.value.max(pipe.outside_diameter.value),
        }
    }
}

/// Why a check of line and grade is absent.
pub(crate) const NO_GRAVITY: &str = "it is no gravity sewer";
