//! Which single input turns the choice, and at what value.

use super::edit;
use crate::choice::{Choice, choose};
use crate::drive::{Drive, Stretch};
use crate::drive_file::{DriveFile, InputError, OrNone};
use crate::handbook::{Handbook, HandbookError, Lubrication, Method};
use crate::quantity::{Force, Length, Measure, Pressure, Ratio, Role, Shown, ThermodynamicTemperature, Time};
use std::sync::Arc;

/// What is changed, alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Input {
    /// All unit friction, of stem, casing and jacked pipe, by one factor.
    Friction,
    /// Length of the drive.
    Length,
    /// Largest stone.
    Stone,
    /// Depth of the water table.
    Water,
    /// Duration of the pull.
    Duration,
    /// Temperature of the pulled pipe.
    Temperature,
    /// Greatest thrust of the rig.
    Thrust,
    /// Greatest pull of the rig, where a pipe may be pulled.
    Pull,
}

impl Input {
    /// All inputs, in the order of a report.
    pub const ALL: [Self; 8] = [
        Self::Friction,
        Self::Length,
        Self::Stone,
        Self::Water,
        Self::Duration,
        Self::Temperature,
        Self::Thrust,
        Self::Pull,
    ];

    /// As printed and as written in JSON.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Friction => "unit friction",
            Self::Length => "length of the drive",
            Self::Stone => "largest stone",
            Self::Water => "depth of the water table",
            Self::Duration => "duration of the pull",
            Self::Temperature => "pipe temperature in the pull",
            Self::Thrust => "thrust of the rig",
            Self::Pull => "pull of the rig",
        }
    }

    const fn role(self) -> Role {
        match self {
            Self::Friction => Role::Ratio,
            Self::Length => Role::Distance,
            Self::Stone => Role::Diameter,
            Self::Water => Role::Depth,
            Self::Duration => Role::Duration,
            Self::Temperature => Role::Temperature,
            Self::Thrust => Role::Thrust,
            Self::Pull => Role::Pull,
        }
    }

    /// The value in the file, in SI; `None` where the file does not tell it. No water is water below everything.
    fn now(self, file: &DriveFile) -> Option<f64> {
        match self {
            Self::Friction => Some(1.0),
            Self::Length => Some(file.length.value.si()),
            Self::Stone => edit::largest_stone(file).map(|stone| stone.si()),
            Self::Water if file.ground.iter().all(|stretch| stretch.groundwater.is_some()) => None,
            Self::Water => Some(match file.groundwater.value {
                OrNone::None => edit::depths(file)[1].si(),
                OrNone::Some(depth) => depth.si(),
            }),
            Self::Duration => edit::duration(file).map(|time| time.si()),
            Self::Temperature => file.pull.as_ref().map(|pull| pull.pipe_temperature.value.si()),
            Self::Thrust => Some(file.rig.thrust.value.si()),
            Self::Pull => file.pull.as_ref().map(|_| file.rig.pull.value.si()),
        }
    }

    /// Where to look, in SI. Wider than a good site investigation leaves open.
    fn range(self, file: &DriveFile, now: f64) -> (f64, f64) {
        match self {
            Self::Friction | Self::Length | Self::Thrust | Self::Pull => (now / TIMES, now * TIMES),
            Self::Stone => (0.0, now.max(STONE)),
            // Water below the deepest invert changes nothing.
            Self::Water => (0.0, now.max(edit::depths(file)[1].si())),
            Self::Duration => (now / TIMES_DURATION, now * TIMES_DURATION),
            Self::Temperature => (now.min(COLD), now.max(HOT)),
        }
    }

    fn edited(self, file: &DriveFile, si: f64) -> DriveFile {
        match self {
            Self::Friction => file.clone(),
            Self::Length => edit::with_length(file, Length::from_si(si)),
            Self::Stone => edit::with_stone(file, Length::from_si(si)),
            Self::Water => edit::with_water(file, Length::from_si(si)),
            Self::Duration => edit::with_duration(file, Time::from_si(si)),
            Self::Temperature => edit::with_temperature(file, ThermodynamicTemperature::from_si(si)),
            Self::Thrust => edit::with_thrust(file, Force::from_si(si)),
            Self::Pull => edit::with_pull_of_rig(file, Force::from_si(si)),
        }
    }
}

/// Friction, length and rig are looked at down to one over this and up to this many times theirs.
const TIMES: f64 = 4.0;
/// The same for the duration of a pull.
const TIMES_DURATION: f64 = 10.0;
/// Largest stone looked at, in m.
const STONE: f64 = 0.3;
/// Temperatures looked at, in K: 0 and 60 degC.
const COLD: f64 = 273.15;
/// See [`COLD`].
const HOT: f64 = 333.15;
/// Steps to either end of the range: a choice that turns and turns back within one step may be missed.
const STEPS: u32 = 12;
/// Halvings of the step in which the choice turns.
const HALVINGS: u32 = 14;
/// Stretches, and points of those that the water crosses, times pipes beyond which nothing is looked for: it would take too long.
const MOST_WORK: usize = 2_000;

/// What the choice turns to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// This scheme is chosen: position of the pipe among the candidates, and method.
    Chosen(usize, Method),
    /// None is.
    Nothing,
}

impl Outcome {
    /// What is chosen.
    #[must_use]
    pub fn of(choice: &Choice) -> Self {
        choice.chosen().map_or(Self::Nothing, |first| Self::Chosen(first.candidate, first.scheme.method))
    }
}

/// Where the choice turns.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turn {
    /// The value at which it has turned.
    pub at: Shown,
    /// What it turns to.
    pub to: Outcome,
}

/// What one input does to the choice.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InputTurns {
    /// The input.
    pub input: Input,
    /// Its value now.
    pub now: Shown,
    /// True where the file says that there is none, and the value stands for that: a water table below everything.
    pub is_none: bool,
    /// The range that was looked through; narrower where values beyond it make no drive.
    pub range: (Shown, Shown),
    /// The nearest turn below.
    pub below: Option<Turn>,
    /// The nearest turn above.
    pub above: Option<Turn>,
}

/// Which single input turns the choice, each changed alone, by steps and then by bisection. An input that the file does
/// not tell is left out; `None` where the drive is so long a list that it would take too long.
///
/// # Errors
/// If the file is faulty or a table malformed.
pub fn turns(file: &DriveFile, handbook: &Arc<Handbook>) -> Result<Option<Vec<InputTurns>>, InputError> {
    let drive = file.resolve(handbook)?;
    let points = |stretch: &Stretch| stretch.crossed.as_ref().map_or(1, |crossed| crossed.path.len());
    if drive.stretches.iter().map(points).sum::<usize>() * drive.candidates.len() > MOST_WORK {
        return Ok(None);
    }
    let now = Outcome::of(&choose(&drive)?);
    let mut found = Vec::new();
    for input in Input::ALL {
        let Some(value) = input.now(file) else { continue };
        let search = Search { file, handbook, drive: &drive, input, now };
        let (low, high) = input.range(file, value);
        let (below, reached_low) = search.towards(value, low)?;
        let (above, reached_high) = search.towards(value, high)?;
        let shown = |si| Shown { si, role: input.role() };
        let range = (shown(reached_low), shown(reached_high));
        let is_none = input == Input::Water && file.groundwater.value == OrNone::None;
        found.push(InputTurns { input, now: shown(value), is_none, range, below, above });
    }
    Ok(Some(found))
}

/// What is chosen without lubrication; `None` where the file plans none.
///
/// # Errors
/// If the file is faulty or a table malformed.
pub fn unlubricated(file: &DriveFile, handbook: &Arc<Handbook>) -> Result<Option<Outcome>, InputError> {
    if file.lubrication.value == Lubrication::None {
        return Ok(None);
    }
    let planned = file.resolve(handbook)?;
    let mut dry = edit::without_lubrication(file).resolve(handbook)?;
    // The stem is dry as it is, and the pipe holds no less than with what was planned.
    for (dry, planned) in dry.stretches.iter_mut().zip(&planned.stretches) {
        dry.stem_friction = planned.stem_friction;
        dry.pipe_friction = dry.pipe_friction.with(planned.pipe_friction, Pressure::max);
        if let (Some(dry), Some(planned)) = (&mut dry.crossed, &planned.crossed) {
            dry.no_less_than(planned);
        }
    }
    Ok(Some(Outcome::of(&choose(&dry)?)))
}

struct Search<'a> {
    file: &'a DriveFile,
    handbook: &'a Arc<Handbook>,
    drive: &'a Drive,
    input: Input,
    now: Outcome,
}

impl Search<'_> {
    /// What is chosen at a value; `None` where it makes no drive.
    fn at(&self, si: f64) -> Result<Option<Outcome>, HandbookError> {
        if self.input == Input::Friction {
            // Bands of the tables have no place in the file: stem and pipe have two, and the file but one.
            return Ok(Some(Outcome::of(&choose(&with_friction(self.drive, Ratio::from_si(si)))?)));
        }
        match self.input.edited(self.file, si).resolve(self.handbook) {
            Ok(drive) => Ok(self.named_here(&drive, Outcome::of(&choose(&drive)?))),
            Err(InputError::Handbook(error)) => Err(error),
            Err(_) => Ok(None),
        }
    }

    /// The same pipe in the list of the file as it is: another need proposes other pipes. `None` where it is not there.
    fn named_here(&self, drive: &Drive, outcome: Outcome) -> Option<Outcome> {
        let Outcome::Chosen(candidate, method) = outcome else { return Some(outcome) };
        let label = drive.candidates.get(candidate)?.label();
        let here = self.drive.candidates.iter().position(|pipe| pipe.label() == label)?;
        Some(Outcome::Chosen(here, method))
    }

    /// The nearest turn from a value towards an end, and how far was looked.
    fn towards(&self, value: f64, end: f64) -> Result<(Option<Turn>, f64), HandbookError> {
        let mut before = value;
        for step in 1..=STEPS {
            let share = f64::from(step) / f64::from(STEPS);
            let next = self.between(value, end, share);
            let Some(outcome) = self.at(next)? else { return Ok((None, before)) };
            if outcome != self.now {
                return Ok((Some(self.bisect(before, next, outcome)?), end));
            }
            before = next;
        }
        Ok((None, end))
    }

    /// Even steps of a ratio where the range is one, of the value elsewhere.
    fn between(&self, from: f64, to: f64, share: f64) -> f64 {
        match self.input {
            Input::Friction | Input::Length | Input::Duration | Input::Thrust | Input::Pull
                if from > 0.0 && to > 0.0 =>
            {
                from * (to / from).powf(share)
            }
            _ => from + (to - from) * share,
        }
    }

    fn bisect(&self, mut same: f64, mut turned: f64, mut to: Outcome) -> Result<Turn, HandbookError> {
        for _ in 0..HALVINGS {
            let middle = self.between(same, turned, 0.5);
            match self.at(middle)? {
                Some(outcome) if outcome == self.now => same = middle,
                Some(outcome) => (turned, to) = (middle, outcome),
                None => break,
            }
        }
        Ok(Turn { at: Shown { si: turned, role: self.input.role() }, to })
    }
}

/// The drive with all unit friction multiplied.
fn with_friction(drive: &Drive, times: Ratio) -> Drive {
    let mut drive = drive.clone();
    for stretch in &mut drive.stretches {
        let raise = |friction: Pressure| friction * times;
        stretch.stem_friction = stretch.stem_friction.map(raise);
        stretch.pipe_friction = stretch.pipe_friction.map(raise);
        if let Some(crossed) = &mut stretch.crossed {
            crossed.scaled(times);
        }
    }
    drive
}
