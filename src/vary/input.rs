//! Which single input turns the choice, and at what value.

use super::edit;
use super::meets;
use crate::choice::{Choice, Ranked, chosen};
use crate::drive::{Drilled, Drive, Side, Stretch};
use crate::drive_file::{DriveFile, InputError, RigFile, WaterTable};
use crate::handbook::{Handbook, HandbookError, Lubrication, Method};
use crate::quantity::{
    Band, Force, Length, Measure, Pressure, Ratio, Role, Shown, ThermodynamicTemperature, Time, UnitSystem,
};
use crate::source::printed;
use std::rc::Rc;
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
        |file, si| file.groundwater = WaterTable::At(Length::from_si(si)).into();
    /// Duration of the pull.
    Duration: "duration of the pull", Duration, Range::Times(TIMES_DURATION),
        |file| edit::duration(file).map(|time| time.si()),
        |file, si| if let Some(pull) = &mut file.pull {
            (pull.duration, pull.rate) = (Some(Time::from_si(si).into()), None);
        };
    /// Temperature of the pulled pipe.
    Temperature: "pipe temperature in the pull", Temperature, Range::Within(|_, now| (now.min(COLD), now.max(HOT))),
        |file| file.pull.as_ref()?.pipe_temperature.as_ref().map(|told| told.value.si()),
        |file, si| if let Some(pull) = &mut file.pull {
            pull.pipe_temperature = Some(ThermodynamicTemperature::from_si(si).into());
        };
    /// Greatest thrust of the rig.
    Thrust: "thrust of the rig", Thrust, Range::Times(TIMES),
        |file| file.machine().thrust.as_ref().map(|field| field.value.si()),
        |file, si| file.rig.get_or_insert_with(RigFile::new).thrust = Some(Force::from_si(si).into());
    /// Greatest pull of the rig, where a pipe may be pulled.
    Pull: "pull of the rig", Pull, Range::Times(TIMES),
        |file| file.pull.as_ref().and(file.machine().pull.as_ref()).map(|field| field.value.si()),
        |file, si| file.rig.get_or_insert_with(RigFile::new).pull = Some(Force::from_si(si).into());
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

    /// Whether two values are the same to four digits, in either family of units.
    fn reads_alike(self, one: f64, other: f64) -> bool {
        let read = |si, system| self.shown(si).precise(system).to_string();
        [UnitSystem::Si, UnitSystem::Us].iter().all(|&system| read(one, system) == read(other, system))
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
/// Steps to either end of the range.
const STEPS: u32 = 12;
/// Steps between two values at which every scheme stands alike where nothing is looked for: a choice that turns and turns
/// back within them may be missed.
const ALIKE: u32 = STEPS / 2;
/// Most halvings of the step in which the choice turns.
const HALVINGS: u32 = 14;
/// Guesses where it turns, before the halves that are left are looked at one after the other.
const GUESSES: u32 = 4;
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

    /// What would be chosen for a drive, and every scheme.
    fn from(drive: &Drive) -> Result<(Self, Vec<Ranked>), HandbookError> {
        let (first, schemes) = chosen(drive)?;
        Ok((first.map_or(Self::Nothing, |(candidate, method)| Self::Chosen(candidate, method)), schemes))
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

/// Which single input turns the choice, each changed alone, by steps and then by halves until four digits of it are found. An input that the file does
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
    let now = {
        let (outcome, schemes) = Outcome::from(&drive)?;
        Some(Rc::new(Looked { outcome, schemes }))
    };
    let mut found = Vec::new();
    for &input in Input::ALL {
        let Some(value) = (input.varied().now)(file) else { continue };
        let search = Search { file, handbook, drive: &drive, input, now: &now };
        let (low, high) = input.range(file, value);
        let (below, reached_low) = search.towards(value, low)?;
        let (above, reached_high) = search.towards(value, high)?;
        let range = (input.shown(reached_low), input.shown(reached_high));
        let is_none = input == Input::Water && file.groundwater.value == WaterTable::None;
        found.push(InputTurns { input, now: input.shown(value), is_none, range, below, above });
    }
    Ok(Some(found))
}

/// What is chosen without lubrication; `None` where the file plans none.
///
/// # Errors
/// If the file is faulty or a table malformed.
pub fn unlubricated(file: &DriveFile, handbook: &Arc<Handbook>) -> Result<Option<Outcome>, InputError> {
    if file.lubricated() == Lubrication::None {
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
    Ok(Some(Outcome::from(&dry)?.0))
}

struct Search<'a> {
    file: &'a DriveFile,
    handbook: &'a Arc<Handbook>,
    drive: &'a Drive,
    input: Input,
    now: &'a At,
}

/// What is chosen at a value, and every scheme there.
struct Looked {
    outcome: Outcome,
    schemes: Vec<Ranked>,
}

impl Looked {
    /// Whether the same is chosen at two values, and every scheme stands alike.
    fn is_alike(&self, other: &Self) -> bool {
        let standings = self.schemes.iter().map(|one| one.standing);
        self.outcome == other.outcome && standings.eq(other.schemes.iter().map(|one| one.standing))
    }
}

/// What comes of a value; `None` where it makes no drive.
type At = Option<Rc<Looked>>;

/// A step of the way to an end and what comes of it.
type Step<'a> = (u32, &'a At);

impl Search<'_> {
    fn at(&self, si: f64) -> Result<At, HandbookError> {
        let (outcome, schemes) = if self.input == Input::Friction {
            Outcome::from(&with_friction(self.drive, Ratio::from_si(si)))?
        } else {
            let mut file = self.file.clone();
            (self.input.varied().change)(&mut file, si);
            match file.resolve(self.handbook) {
                Ok(drive) => {
                    let (outcome, schemes) = Outcome::from(&drive)?;
                    let Some(outcome) = self.named_here(&drive, outcome) else { return Ok(None) };
                    (outcome, schemes)
                }
                Err(InputError::Handbook(error)) => return Err(error),
                Err(_) => return Ok(None),
            }
        };
        Ok(Some(Rc::new(Looked { outcome, schemes })))
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
        if !((end - value).abs() > 0.0) {
            return Ok((None, end));
        }
        let on_the_way = |step: u32| self.between(value, end, f64::from(step) / f64::from(STEPS));
        let last = self.at(end)?;
        Ok(match self.first(&on_the_way, (0, self.now), (STEPS, &last))? {
            Some((step, Some(same), Some(turned))) => {
                (Some(self.halve((on_the_way(step - 1), same), (on_the_way(step), turned))?), end)
            }
            Some((step, ..)) => (None, on_the_way(step - 1)),
            None => (None, end),
        })
    }

    /// The first of some steps at which the choice has turned, and what comes of the one before and of it. Before the first
    /// of the steps it has not; at both ends it is known what comes of them.
    fn first(
        &self,
        on_the_way: &impl Fn(u32) -> f64,
        from: Step<'_>,
        to: Step<'_>,
    ) -> Result<Option<(u32, At, At)>, HandbookError> {
        let steps = to.0 - from.0;
        let is_alike = match (from.1, to.1) {
            (Some(one), Some(other)) => one.is_alike(other),
            (one, other) => one.is_none() && other.is_none(),
        };
        if steps <= ALIKE && is_alike {
            return Ok(None);
        }
        if steps <= 1 {
            return Ok((!self.is_same(to.1)).then(|| (to.0, from.1.clone(), to.1.clone())));
        }
        let step = from.0 + steps / 2;
        let looked = self.at(on_the_way(step))?;
        match self.first(on_the_way, from, (step, &looked))? {
            None => self.first(on_the_way, (step, &looked), to),
            found => Ok(found),
        }
    }

    /// Whether what is chosen now is chosen.
    fn is_same(&self, at: &At) -> bool {
        let outcome = |at: &At| at.as_ref().map(|looked| looked.outcome);
        outcome(at) == outcome(self.now)
    }

    /// Even steps of a ratio where the range is one, of the value elsewhere.
    fn between(&self, from: f64, to: f64, share: f64) -> f64 {
        match self.input.varied().range {
            Range::Times(_) if from > 0.0 && to > 0.0 => from * (to / from).powf(share),
            _ => from + (to - from) * share,
        }
    }

    /// Where the choice turns between two values, by halves. What comes of a half is known without a look where it lies
    /// beyond a value that was looked at: so the halves round a guess are looked at first.
    fn halve(&self, same: Value, turned: Value) -> Result<Turn, HandbookError> {
        let (mut near, mut far) = (same.0, turned.0);
        let towards = far - near;
        let is_past = |value: f64, other: f64| (value - other) * towards >= 0.0;
        let now = same.1.outcome;
        let mut known = [same, turned];
        let mut guesses = GUESSES;
        let mut left = HALVINGS;
        while left > 0 && !self.input.reads_alike(near, far) {
            let middle = self.between(near, far, 0.5);
            let [same, turned] = &known;
            if is_past(same.0, middle) {
                near = middle;
            } else if is_past(middle, turned.0) {
                far = middle;
            } else if let Some(guess) = (guesses > 0).then(|| self.guess(&known)).flatten() {
                guesses -= 1;
                let (mut before, mut after) = (near, far);
                for _ in 0..left {
                    if self.input.reads_alike(before, after) {
                        break;
                    }
                    let middle = self.between(before, after, 0.5);
                    *(if is_past(guess, middle) { &mut before } else { &mut after }) = middle;
                }
                for value in [after, before] {
                    let is_between = !is_past(known[0].0, value) && !is_past(value, known[1].0);
                    if is_between && !self.look(value, &mut known)? {
                        guesses = 0;
                    }
                }
                continue;
            } else if !self.look(middle, &mut known)? {
                break;
            } else {
                continue;
            }
            left -= 1;
        }
        // What it turns to may be another a little further on.
        let [_, turned] = &known;
        let looked = if is_past(turned.0, far) { None } else { self.at(far)? };
        let to = looked.filter(|looked| looked.outcome != now).map_or(turned.1.outcome, |looked| looked.outcome);
        Ok(Turn { at: self.input.shown(far), to })
    }

    /// Looks at a value between two that are known, in place of one of them; false where it makes no drive.
    fn look(&self, value: f64, known: &mut [Value; 2]) -> Result<bool, HandbookError> {
        let at = self.at(value)?;
        let place = usize::from(!self.is_same(&at));
        let Some(looked) = at else { return Ok(false) };
        if let Some(known) = known.get_mut(place) {
            *known = (value, looked);
        }
        Ok(true)
    }

    fn guess(&self, [same, turned]: &[Value; 2]) -> Option<f64> {
        let chosen = [same, turned].map(|(_, looked)| match looked.outcome {
            Outcome::Chosen(candidate, method) => Some((candidate, method)),
            Outcome::Nothing => None,
        });
        let share = meets::share(chosen, [&same.1.schemes, &turned.1.schemes])?;
        Some(self.between(same.0, turned.0, share))
    }
}

/// A value and what comes of it.
type Value = (f64, Rc<Looked>);

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
        let open = Arc::make_mut(pipe).open.iter_mut();
        open.for_each(|round| *round = round.map(raise));
    }
    drive
}
