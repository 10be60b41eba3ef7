//! A line longer than a drive: how far apart its pits may be, by scheme.

use super::edit::{depths, one_drive};
use crate::check::{Subject, Verdict};
use crate::choice::{Choice, Ranked, Standing, not_decided};
use crate::drive::Drive;
use crate::drive_file::{DriveFile, InputError};
use crate::handbook::Handbook;
use crate::method::{Scheme, assess};
use crate::quantity::{Length, Measure, Ratio};
use crate::source::{Cited, Origin};
use std::sync::Arc;

/// What sets the longest drive of a scheme.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum PitLimit {
    /// The longest published drive of the method at this diameter.
    Published(Origin),
    /// A check that is over or not decided in a longer drive.
    Check(Subject),
    /// No drive of any length is possible, for this check.
    Never(Subject),
}

impl PitLimit {
    /// As printed and as written in JSON.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Published(_) => "published length",
            Self::Check(subject) | Self::Never(subject) => subject.label(),
        }
    }

    /// Where the published length comes from.
    #[must_use]
    pub const fn origin(self) -> Option<Origin> {
        match self {
            Self::Published(origin) => Some(origin),
            Self::Check(_) | Self::Never(_) => None,
        }
    }
}

/// Drives and pits of a line by one scheme.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Pits {
    /// Position in the ranking.
    pub ranked: usize,
    /// What sets the longest drive.
    pub limit: PitLimit,
    /// The longest drive; nothing where there is none.
    pub longest: Length,
    /// Number of drives, and spacing of the pits, all alike; nothing where there is no drive.
    pub drives: Option<(u32, Length)>,
    /// Standing of the worst of these drives: all of it at the greatest depth, in the worst of the grounds told.
    pub standing: Standing,
    /// That drive, with its checks.
    pub worst: Option<Scheme>,
}

/// Halvings of the search for the longest drive.
const HALVINGS: u32 = 12;
/// Shortest drive looked at, as a share of the published length.
const SHORTEST: f64 = 0.05;
/// Most stretches whose ground is looked at in turn; the work grows with them.
const MOST_GROUNDS: usize = 20;
/// Most drives counted.
const MOST_DRIVES: f64 = 10_000.0;

/// Drives and pits of the line that the file tells of, for every scheme that can be put in; empty where it tells of none
/// or its ground has too many stretches.
///
/// # Errors
/// If a table is malformed.
pub fn pits(
    file: &DriveFile,
    handbook: &Arc<Handbook>,
    drive: &Drive,
    choice: &Choice,
) -> Result<Vec<Pits>, InputError> {
    let Some(line) = drive.line else { return Ok(Vec::new()) };
    if file.ground.len() > MOST_GROUNDS {
        return Ok(Vec::new());
    }
    let grade = Ratio::from_si(drive.grade.value.si().tan());
    let search = Search { file, handbook, grade };
    let mut all = Vec::new();
    for (place, ranked) in choice.ranked.iter().enumerate() {
        if let Some(published) = published(ranked) {
            all.extend(search.line(line, place, ranked, published)?);
        }
    }
    Ok(all)
}

/// The longest published drive.
fn published(ranked: &Ranked) -> Option<Cited<Length>> {
    let check = ranked.scheme.checks.get(Subject::Length)?;
    check.high().map(|(_, limit)| Cited::new(Length::from_si(limit.si), check.basis))
}

struct Search<'a> {
    file: &'a DriveFile,
    handbook: &'a Arc<Handbook>,
    grade: Ratio,
}

impl Search<'_> {
    fn line(
        &self,
        line: Length,
        place: usize,
        ranked: &Ranked,
        published: Cited<Length>,
    ) -> Result<Option<Pits>, InputError> {
        let (longest, limit) = match self.stops(ranked, published.value)? {
            None => (published.value, PitLimit::Published(published.origin)),
            Some(subject) => match self.stops(ranked, published.value * SHORTEST)? {
                Some(subject) => (Length::default(), PitLimit::Never(subject)),
                None => {
                    let (mut fits, mut over, mut why) = (published.value * SHORTEST, published.value, subject);
                    for _ in 0..HALVINGS {
                        let middle = (fits + over) / 2.0;
                        match self.stops(ranked, middle)? {
                            None => fits = middle,
                            Some(subject) => (over, why) = (middle, subject),
                        }
                    }
                    (fits, PitLimit::Check(why))
                }
            },
        };
        let count = (line / longest).si().ceil();
        if !(longest.si() > 0.0 && count <= MOST_DRIVES) {
            let standing = Standing::Barred;
            return Ok(Some(Pits { ranked: place, limit, longest, drives: None, standing, worst: None }));
        }
        let spacing = line / count;
        let Some(worst) = self.worst(ranked, spacing)? else { return Ok(None) };
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "from 1 to the most drives counted"
        )]
        let drives = Some((count as u32, spacing));
        let standing = Standing::of(&worst);
        Ok(Some(Pits { ranked: place, limit, longest, drives, standing, worst: Some(worst) }))
    }

    /// The check that keeps the worst drive of this length from being chosen.
    fn stops(&self, ranked: &Ranked, length: Length) -> Result<Option<Subject>, InputError> {
        let Some(worst) = self.worst(ranked, length)? else { return Ok(Some(Subject::Length)) };
        let over = worst.checks.iter().find(|check| check.verdict == Verdict::Over).map(|check| check.subject);
        Ok(over.or_else(|| not_decided(&worst).next()))
    }

    /// The scheme in the worst ground at this length: by standing, then by the load used most. `None` where the drive
    /// cannot be built so.
    fn worst(&self, ranked: &Ranked, length: Length) -> Result<Option<Scheme>, InputError> {
        let mut worst: Option<Scheme> = None;
        // Load grows with depth, and cover and room for the fluid shrink without it.
        let [least, greatest] = depths(self.file);
        let both = if least < greatest { &[least, greatest][..] } else { &[greatest][..] };
        for (ground, depth) in self.file.ground.iter().flat_map(|ground| both.iter().map(move |depth| (ground, *depth)))
        {
            let file = one_drive(self.file, ground, depth, length, self.grade);
            let drive = match file.resolve(self.handbook) {
                Ok(drive) => drive,
                Err(InputError::Faults(_)) => return Ok(None),
                Err(error) => return Err(error),
            };
            // By name: another drive may have other pipes proposed.
            let pipe = drive.candidates.iter().find(|pipe| pipe.label() == ranked.pipe.label());
            let Some(pipe) = pipe else { return Ok(None) };
            let scheme = assess(&drive, pipe, ranked.scheme.method);
            let harder = |other: &Scheme| {
                Standing::of(&scheme).cmp(&Standing::of(other)).then(used(&scheme).total_cmp(&used(other))).is_gt()
            };
            if worst.as_ref().is_none_or(harder) {
                worst = Some(scheme);
            }
        }
        Ok(worst)
    }
}

fn used(scheme: &Scheme) -> f64 {
    scheme.governing().and_then(|check| check.utilisation()).unwrap_or(0.0)
}
