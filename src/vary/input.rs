//! Which single input turns the choice, and at what value.

use super::edit;
use crate::choice::{Choice, chosen};
use crate::drive::{Drilled, Drive, Side, Stretch};
use crate::drive_file::{DriveFile, InputError, OrNone};
use crate::handbook::{Handbook, HandbookError, Lubrication, Method};
use crate::quantity::{Band, Force, Length, Measure, Pressure, Ratio, Role, Shown, ThermodynamicTemperature, Time};
use crate::source::printed;
use std::sync::Arc;

printed!(Input: label);

/// Makes the enum, its list and what is known of each input of one entry an input: how it is told, its role, where to
/// look, its value in the file and how it is changed.
macro_rules! inputs {
    ($($(#[$doc:meta])+ $name:ident: $label:literal, $role:ident, $range:expr, $now:expr, $change:expr;)+) => {
        /// What is changed, alone.
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        #[non_exhaustive]
        pub enum Input {
            $($(#[$doc])+ $name,)+
        }

        impl Input {
            /// All inputs, in the order of a report.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// As printed and as written in JSON.
            #[must_use]
            pub const fn label(self) -> &'static str {
                match self {
                    $(Self::$name => $label,)+
                }
            }

            const fn varied(self) -> Varied {
                match self {
                    $(Self::$name => Varied { role: Role::$role, range: $range, now: $now, change: $change },)+
                }
            }
        }
    };
}

inputs! {
    /// All unit friction, of stem, casing and jacked pipe, by one factor. Bands of the tables have no place in the file:
    /// stem and pipe have two, and the file but one.
    Friction: "unit friction", Ratio, Range::Times(TIMES),
        |_| Some(1.0),
        |_, _| {};
    /// Length of the drive.
    Length: "length of the drive", Distance, Range::Times(TIMES),
        |file| Some(file.length.value.si()),
        |file, si| edit::set_length(file, Length::from_si(si));
    /// Largest stone.
    Stone: "largest stone", Diameter, Range::Within(|_, now| (0.0, now.max(STONE))),
        |file| edit::largest_stone(file).map(|stone| stone.si()),
        |file, si| edit::set_stone(file, Length::from_si(si));
    /// Depth of the water table; below the deepest invert it changes nothing.
    Water: "depth of the water table", Depth, Range::Within(|file, now| (0.0, now.max(edit::depths(file)[1].si()))),
        edit::water,
        |file, si| file.groundwater = OrNone::Some(Length::from_si(si)).into();
    /// Duration of the pull.
    Duration: "duration of the pull", Duration, Range::Times(TIMES_DURATION),
        |file| edit::duration(file).map(|time| time.si()),
        |file, si| if let Some(pull) = &mut file.pull {
            (pull.duration, pull.rate) = (Some(Time::from_si(si).into()), None);
        };
    /// Temperature of the pulled pipe.
    Temperature: "pipe temperature in the pull", Temperature, Range::Within(|_, now| (now.min(COLD), now.max(HOT))),
        |file| file.pull.as_ref().map(|pull| pull.pipe_temperature.value.si()),
        |file, si| if let Some(pull) = &mut file.pull {
            pull.pipe_temperature = ThermodynamicTemperature::from_si(si).into();
        };
    /// Greatest thrust of the rig.
    Thrust: "thrust of the rig", Thrust, Range::Times(TIMES),
        |file| Some(file.rig.thrust.value.si()),
        |file, si| file.rig.thrust = Force::from_si(si).into();
    /// Greatest pull of the rig, where a pipe may be pulled.
    Pull: "pull of the rig", Pull, Range::Times(TIMES),
        |file| file.pull.as_ref().map(|_| file.rig.pull.value.si()),
        |file, si| file.rig.pull = Force::from_si(si).into();
}

/// Where the file has an input, where to look and how it is changed; values in SI.
struct Varied {
    role: Role,
    range: Range,
    /// `None` where the file does not tell it.
    now: fn(&DriveFile) -> Option<f64>,
    change: fn(&mut DriveFile, f64),
}

/// Where to look. Wider than a good site investigation leaves open.
enum Range {
    /// From one over this to this many times the value, in even steps of a ratio.
    Times(f64),
    /// Between two values, in even steps.
    Within(fn(&DriveFile, f64) -> (f64, f64)),
}

impl Input {
    fn shown(self, si: f64) -> Shown {
        Shown { si, role: self.varied().role }
    }

    fn range(self, file: &DriveFile, now: f64) -> (f64, f64) {
        match self.varied().range {
            Range::Times(times) => (now / times, now * times),
            Range::Within(ends) => ends(file, now),
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

/// What the choice changes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
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

    /// What would be chosen for a drive.
    fn from(drive: &Drive) -> Result<Self, HandbookError> {
        Ok(chosen(drive)?.map_or(Self::Nothing, |(candidate, method)| Self::Chosen(candidate, method)))
    }
}

/// Where the choice turns.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Turn {
    /// The value at which it has turned.
    pub at: Shown,
    /// What it turns to.
    pub to: Outcome,
}

/// What one input does to the choice.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
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
    let high = drive.candidates.iter().map(|pipe| pipe.height()).fold(Length::default(), Length::max);
    let points = |stretch: &Stretch| if stretch.way.side(high) == Side::Both { stretch.way.points.len() } else { 1 };
    if drive.stretches.iter().map(points).sum::<usize>() * drive.candidates.len() > MOST_WORK {
        return Ok(None);
    }
    let now = Outcome::from(&drive)?;
    let mut found = Vec::new();
    for &input in Input::ALL {
        let Some(value) = (input.varied().now)(file) else { continue };
        let search = Search { file, handbook, drive: &drive, input, now };
        let (low, high) = input.range(file, value);
        let (below, reached_low) = search.towards(value, low)?;
        let (above, reached_high) = search.towards(value, high)?;
        let range = (input.shown(reached_low), input.shown(reached_high));
        let is_none = input == Input::Water && file.groundwater.value == OrNone::None;
        found.push(InputTurns { input, now: input.shown(value), is_none, range, below, above });
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
        dry.drilled = planned.drilled;
        dry.pipe_friction = dry.pipe_friction.with(planned.pipe_friction, |one, other| one.with(other, Pressure::max));
    }
    Ok(Some(Outcome::from(&dry)?))
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
            return Outcome::from(&with_friction(self.drive, Ratio::from_si(si))).map(Some);
        }
        let mut file = self.file.clone();
        (self.input.varied().change)(&mut file, si);
        match file.resolve(self.handbook) {
            Ok(drive) => Ok(self.named_here(&drive, Outcome::from(&drive)?)),
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
        // Where there is no way to go all steps are one.
        let steps = if (end - value).abs() > 0.0 { STEPS } else { 1 };
        for step in 1..=steps {
            let share = f64::from(step) / f64::from(steps);
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
        match self.input.varied().range {
            Range::Times(_) if from > 0.0 && to > 0.0 => from * (to / from).powf(share),
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
        Ok(Turn { at: self.input.shown(turned), to })
    }
}

/// The drive with all unit friction multiplied.
fn with_friction(drive: &Drive, times: Ratio) -> Drive {
    let mut drive = drive.clone();
    let raise = |friction: Band<Pressure>| friction.map(|friction| friction * times);
    for stretch in &mut drive.stretches {
        stretch.stem_friction = stretch.stem_friction.map(raise);
        stretch.drilled = stretch.drilled.map(|drilled| Drilled {
            open: drilled.open.map(raise),
            in_fluid: drilled.in_fluid.map(raise),
            ..drilled
        });
        stretch.pipe_friction = stretch.pipe_friction.map(raise);
    }
    for pipe in &mut drive.candidates {
        let open = Arc::make_mut(pipe).jacked.iter_mut().flat_map(|jacked| &mut jacked.open);
        open.for_each(|round| *round = round.map(raise));
    }
    drive
}
