//! A [`Drive`] out of a [`DriveFile`] and the handbook: contradictions found, gaps filled from tables and listed.

mod clay;
mod ground;
mod label;
mod pe;
mod pe_strength;
mod pipe;
mod pull;

use super::{CandidateFile, DriveFile, Flaw, ForceBandFile, OrNone, schema::PressureBandFile};
use crate::drive::{Assumed, AssumedValue, Drive, FaceResistance, Pipe, PipeKind, Rig, TipResistance};
use crate::handbook::{Family, Handbook, HandbookError, Spoil, rising};
use crate::quantity::shown::decimal;
use crate::quantity::{Angle, Band, Force, Length, Measure, Pressure, Role, Shown, UnitSystem};
use crate::source::{Cited, Equation, FieldName, Mark, Origin};
use crate::yaml::{Complaint, Field};
use std::sync::Arc;

/// What resolving has found so far.
struct Resolver<'a> {
    handbook: &'a Handbook,
    flaws: Vec<Flaw>,
    assumed: Vec<Assumed>,
}

impl Resolver<'_> {
    fn flaw<T>(&mut self, at: &Field<T>, path: &str, complaint: impl Into<Complaint>) {
        self.flaws.push(Flaw { path: path.to_owned(), at: at.handle(), complaint: complaint.into() });
    }

    /// The value, which must be above zero.
    fn positive<Q: Measure>(&mut self, field: &Field<Q>, path: &str, role: Role) -> Q {
        self.checked(field, path, role, field.value.si() > 0.0, "above zero")
    }

    /// The value, which must not be below zero.
    fn not_negative<Q: Measure>(&mut self, field: &Field<Q>, path: &str, role: Role) -> Q {
        self.checked(field, path, role, field.value.si() >= 0.0, "of zero or more")
    }

    fn checked<Q: Measure>(&mut self, field: &Field<Q>, path: &str, role: Role, fits: bool, expected: &str) -> Q {
        if !(fits && field.value.si().is_finite()) {
            let (what, example) = crate::quantity::unit::describe(Q::DIM);
            let read = Shown::of(field.value, role).display(UnitSystem::Si);
            let complaint = Complaint::from(format!("expected {what} {expected}, got {read}"));
            self.flaw(field, path, complaint.advise(format!("write for example \"{example}\"")));
        }
        field.value
    }

    fn assume(&mut self, field: impl Into<String>, value: AssumedValue, origin: Origin) {
        self.assumed.push(Assumed { field: field.into(), value, origin, alike: 0 });
    }

    /// For one stretch; stretches alike share one entry, so that a long list of them stays readable.
    fn assume_alike(&mut self, stretch: &str, what: &str, value: AssumedValue, origin: Origin) {
        let alike =
            |known: &&mut Assumed| known.field.ends_with(what) && known.value == value && known.origin == origin;
        match self.assumed.iter_mut().find(alike) {
            Some(known) => known.alike += 1,
            None => self.assume(format!("{stretch}.{what}"), value, origin),
        }
    }

    fn assume_one<Q: Measure>(&mut self, field: impl Into<String>, value: Cited<Q>, role: Role) {
        self.assume(field, AssumedValue::One(Shown::of(value.value, role)), value.origin);
    }

    /// The user's value, above zero, or the row's, which is then listed as assumed.
    fn given_or<Q: Measure>(
        &mut self,
        given: Option<&Field<Q>>,
        name: &'static FieldName,
        role: Role,
        row: Cited<Q>,
    ) -> Cited<Q> {
        match given {
            Some(field) => Cited::given(self.positive(field, name.0, role), name),
            None => {
                self.assume_one(name.0, row, role);
                row
            }
        }
    }

    /// A band whose levels rise.
    fn band<Q: Measure + PartialOrd>(
        &mut self,
        [low, likely, high]: [&Field<Q>; 3],
        path: &str,
        role: Role,
    ) -> Band<Q> {
        let band = Band {
            low: self.not_negative(low, &format!("{path}.low"), role),
            likely: self.not_negative(likely, &format!("{path}.likely"), role),
            high: self.not_negative(high, &format!("{path}.high"), role),
        };
        if !(band.low <= band.likely && band.likely <= band.high) {
            self.flaw(likely, path, "expected low, likely and high in rising order");
        }
        band
    }

    fn force_band(&mut self, band: &ForceBandFile, path: &str, role: Role) -> Band<Force> {
        self.band([&band.low, &band.likely, &band.high], path, role)
    }

    fn pressure_band(&mut self, band: &PressureBandFile, path: &str, role: Role) -> Band<Pressure> {
        self.band([&band.low, &band.likely, &band.high], path, role)
    }
}

/// What is taken for the ground surface, of which the file tells the two ends at most.
const GROUND_SURFACE: Equation = Equation {
    name: "ground surface between the pits",
    form: "depth(x) = depth_launch + (depth_reception - depth_launch) x / length",
    source: "jackpull",
    locator: "straight line between the pits",
    mark: Mark::Judgement,
    valid: "an even surface",
};

/// Table row missing: said with what was looked for.
fn no_row(table: &'static str, wanted: impl Into<String>) -> HandbookError {
    HandbookError::NoRow { table, wanted: wanted.into() }
}

/// Steepest slope of a drive on grade, either way.
const STEEPEST: f64 = 0.5;

/// Row of the method whose guided pilot every bore here follows.
const GUIDED: &str = "pilot_tube";

/// Most pipes of one drive: a person chooses among them.
const MOST_CANDIDATES: usize = 50;

/// The outer error is the handbook's, the inner one the file's.
pub(super) fn resolve(file: &DriveFile, handbook: &Arc<Handbook>) -> Result<Result<Drive, Vec<Flaw>>, HandbookError> {
    let mut resolver = Resolver { handbook, flaws: Vec::new(), assumed: Vec::new() };
    let drive = match resolver.drive(file, handbook) {
        // A faulty value can look for a row that there is not: the value is what the user can mend.
        Err(_) if !resolver.flaws.is_empty() => return Ok(Err(resolver.flaws)),
        drive => drive?,
    };
    Ok(match drive {
        Some(drive) if resolver.flaws.is_empty() => Ok(Drive { assumed: resolver.assumed, ..drive }),
        _ => Err(resolver.flaws),
    })
}

/// Resistance at an enlarging head by the way soil leaves it.
fn face_row(handbook: &Handbook, spoil: Spoil) -> Result<(FaceResistance, Origin), HandbookError> {
    let row = handbook.face()?.find(|row| row.spoil.value == spoil).ok_or_else(|| no_row("face", spoil.key()))?;
    let values = row.value;
    let pressure = Band { low: values.low.value, likely: values.likely.value, high: values.high.value };
    let least = Band { low: values.least_low.value, likely: values.least_likely.value, high: values.least_high.value };
    let pressure = rising("face", spoil.key(), pressure)?;
    let least = rising("face", spoil.key(), least)?;
    Ok((FaceResistance::Table { pressure, least }, row.origin))
}

/// Depth of the pipe invert below ground at both pits, and the slope between them.
#[derive(Clone, Copy)]
struct Line {
    launch: Length,
    reception: Length,
    grade: Cited<Angle>,
}

impl Line {
    /// From the lowest invert up to the higher of the grounds at the two pits: the bore fluid can stand no higher.
    fn greatest_column(&self, length: Length) -> Length {
        // Heights over the ground at the launch pit.
        let invert_at_launch = -self.launch;
        let invert_at_reception = invert_at_launch + length * self.grade.value.si().tan();
        let higher_ground = (invert_at_reception + self.reception).max(Length::default());
        higher_ground - invert_at_launch.min(invert_at_reception)
    }

    /// Invert depth at a distance from the launch pit, on a ground surface that is even between the pits.
    fn invert_at(&self, distance: Length, length: Length) -> Length {
        let share = if length.si() > 0.0 { (distance / length).value } else { 0.0 };
        self.launch + (self.reception - self.launch) * share
    }
}

impl Resolver<'_> {
    fn drive(&mut self, file: &DriveFile, handbook: &Arc<Handbook>) -> Result<Option<Drive>, HandbookError> {
        let length = self.positive(&file.length, "length", Role::Distance);
        let Some(line) = self.line(file, length) else { return Ok(None) };
        let rig = Rig {
            thrust: Cited::given(self.positive(&file.rig.thrust, "rig.thrust", Role::Thrust), &FieldName("rig.thrust")),
            pull: Cited::given(self.positive(&file.rig.pull, "rig.pull", Role::Pull), &FieldName("rig.pull")),
        };
        let stem = self.stem(file)?;
        let face = self.face(file)?;
        let tip = self.tip(stem.value)?;
        let pull = match &file.pull {
            Some(pull) => self.pull(pull, length, &line)?,
            None => None,
        };
        if let Some(one_too_many) = file.candidates.get(MOST_CANDIDATES) {
            let message = format!("more than {MOST_CANDIDATES} pipes to choose from");
            self.flaw(&one_too_many.material, &format!("candidates[{MOST_CANDIDATES}]"), message);
            return Ok(None);
        }
        let mut candidates = Vec::new();
        for (index, candidate) in file.candidates.iter().enumerate() {
            if let Some(pipe) = self.pipe(index, candidate, file, pull.as_ref())? {
                self.room(index, candidate, &pipe, &line, stem.value);
                if file.candidates.iter().take(index).any(|other| other == candidate) {
                    let message = format!("{} is among the candidates twice", pipe.label);
                    self.flaw(&candidate.size, &format!("candidates[{index}]"), message);
                }
                candidates.push((index, pipe));
            }
        }
        if file.candidates.is_empty() {
            self.flaw(&file.length, "candidates", "expected at least one pipe to choose from, got an empty list");
        }
        label::tell_apart(&file.candidates, &mut candidates);
        let candidates: Vec<Pipe> = candidates.into_iter().map(|(_, pipe)| pipe).collect();
        let largest = candidates.iter().map(|pipe| pipe.outside_diameter.value).fold(Length::default(), Length::max);
        let stretches = self.ground(file, length, &line, largest)?;
        let tolerance = self.tolerance(file, largest)?;
        let pilot_accuracy = self.handbook.length("grade.pilot_accuracy")?;
        self.assume_one("pilot accuracy", pilot_accuracy, Role::Offset);
        let guided_length = self
            .handbook
            .method_limit()?
            .get(GUIDED)
            .ok_or_else(|| no_row("method_limit", GUIDED))?
            .map(|row| row.length.value);
        Ok(Some(Drive {
            handbook: Arc::clone(handbook),
            name: file.name.as_ref().map_or_else(|| "unnamed drive".to_owned(), |name| name.value.0.clone()),
            service: file.service.value,
            length: Cited::given(length, &FieldName("length")),
            grade: line.grade,
            lubrication: file.lubrication.value,
            stretches,
            rig,
            stem,
            tip,
            face,
            tolerance,
            pilot_accuracy,
            guided_length,
            pull,
            candidates,
            assumed: Vec::new(),
        }))
    }

    /// Room in the ground for pipe, casing and bore, and room round the stem.
    fn room(&mut self, index: usize, candidate: &CandidateFile, pipe: &Pipe, line: &Line, stem: Length) {
        let path = format!("candidates[{index}].size");
        let pulled = pipe.family() == Family::Pe;
        let around = if pulled { pipe.bore.value } else { pipe.casing.unwrap_or(pipe.outside_diameter.value) };
        if line.launch.min(line.reception) <= around {
            let message =
                format!("{} stands out of the ground: the invert is too shallow for it or its bore", pipe.label);
            self.flaw(&candidate.size, &path, message);
        }
        if stem >= around.min(pipe.outside_diameter.value) {
            let message = format!("{} is no larger than the stem that goes before it", pipe.label);
            self.flaw(&candidate.size, &path, Complaint::from(message).advise("see stem.outside_diameter"));
        }
        if pulled && !(stem.si() > 0.0) {
            let complaint = Complaint::from("a pipe that is pulled needs the stem that pulls it");
            let complaint = complaint.advise("give stem.outside_diameter");
            self.flaw(&candidate.material, &format!("candidates[{index}].material"), complaint);
        }
        let weightless = matches!(&pipe.kind, PipeKind::Clay(clay) if clay.weight.is_none());
        if weightless && line.grade.value.si() > 0.0 {
            let complaint = Complaint::from("is pushed uphill, and its weight is missing");
            self.flaw(
                &candidate.size,
                &format!("candidates[{index}].weight"),
                complaint.advise("add `weight: 1.5 kN/m`"),
            );
        }
    }

    fn line(&mut self, file: &DriveFile, length: Length) -> Option<Line> {
        let launch = self.positive(&file.launch.invert_depth, "launch.invert_depth", Role::Depth);
        let reception =
            file.reception.as_ref().map(|pit| self.positive(&pit.invert_depth, "reception.invert_depth", Role::Depth));
        let grade = file.grade.as_ref().map(|field| {
            if !(field.value.si().abs() <= STEEPEST) {
                let complaint = Complaint::from("expected a slope within 50 % either way");
                self.flaw(field, "grade", complaint.advise("write for example \"0.4 %\""));
            }
            Cited::given(Angle::from_si(field.value.si().atan()), &FieldName("grade"))
        });
        let level = || AssumedValue::Word("even between the pits, no other point given".to_owned());
        let judged = Origin::Law(&GROUND_SURFACE);
        match (reception, grade) {
            (Some(reception), Some(grade)) => {
                self.assume("ground surface", level(), judged);
                Some(Line { launch, reception, grade })
            }
            (Some(reception), None) => {
                self.assume("ground surface", AssumedValue::Word("level: gives the grade".to_owned()), judged);
                let slope = ((launch - reception) / length).value;
                if let (true, Some(pit)) = (!(slope.abs() <= STEEPEST), &file.reception) {
                    let complaint = Complaint::from(format!("gives a slope of {} %", decimal(100.0 * slope, 0)));
                    let complaint = complaint.advise("give the grade too where the ground is not level");
                    self.flaw(&pit.invert_depth, "reception.invert_depth", complaint);
                }
                let grade = Angle::from_si(slope.atan());
                Some(Line { launch, reception, grade: Cited::new(grade, judged) })
            }
            (None, Some(grade)) => {
                let reception = launch - length * grade.value.si().tan();
                self.assume(
                    "ground surface",
                    AssumedValue::Word("level: gives the depth at reception".to_owned()),
                    judged,
                );
                if reception.si() <= 0.0 {
                    let read = Shown::of(reception, Role::Depth).display(UnitSystem::Si).to_string();
                    let message = format!(
                        "with this grade the invert comes out of the ground at the reception pit ({read} deep)"
                    );
                    if let Some(field) = &file.grade {
                        self.flaw(field, "grade", message);
                    }
                }
                Some(Line { launch, reception, grade })
            }
            (None, None) => {
                self.flaw(
                    &file.launch.invert_depth,
                    "reception",
                    Complaint::from("the depth at the reception pit is missing, and so is the grade")
                        .advise("add `reception: { invert_depth: ... }` or `grade: 0.4 %`"),
                );
                None
            }
        }
    }

    fn stem(&mut self, file: &DriveFile) -> Result<Cited<Length>, HandbookError> {
        const NAME: &FieldName = &FieldName("stem.outside_diameter");
        let row = self.handbook.length("stem.diameter")?;
        Ok(match file.stem.as_ref().map(|stem| &stem.outside_diameter) {
            None => {
                self.assume_one(NAME.0, row, Role::Diameter);
                row
            }
            Some(Field { value: OrNone::None, .. }) => Cited::given(Length::default(), NAME),
            Some(field @ Field { value: OrNone::Some(diameter), .. }) => {
                if !(diameter.si() > 0.0 && diameter.si().is_finite()) {
                    let complaint = Complaint::from("expected a length above zero or \"none\"");
                    self.flaw(field, NAME.0, complaint.advise("write for example \"100 mm\""));
                }
                Cited::given(*diameter, NAME)
            }
        })
    }

    fn tip(&mut self, stem: Length) -> Result<TipResistance, HandbookError> {
        let sand = self.handbook.pressure("tip.cone_per_blow")?;
        let clay = self.handbook.pressure("tip.cone_per_blow_clay")?;
        let strength = self.handbook.pressure("clay.strength_per_blow")?;
        let low = self.handbook.ratio("tip.clay_low")?;
        let high = self.handbook.ratio("tip.clay_high")?;
        let bearing_factor = Band { low: low.value, likely: high.value, high: high.value };
        let bearing_factor = rising("practice_ratio", "tip.clay_low, tip.clay_high", bearing_factor)?;
        if stem.si() > 0.0 {
            self.assume_one("pilot tip: cone resistance per blow, sand and silt", sand, Role::Strength);
            self.assume_one("pilot tip: cone resistance per blow, clay, high", clay, Role::Strength);
            self.assume_one("pilot tip: undrained strength per blow, clay", strength, Role::UnitFriction);
            let shown = bearing_factor.map(|factor| Shown::of(factor, Role::Ratio));
            self.assume("pilot tip: bearing factor, clay", AssumedValue::Band(shown), high.origin);
        }
        Ok(TipResistance {
            cone_per_blow: sand.value,
            cone_per_blow_clay: clay.value,
            strength_per_blow: strength.value,
            bearing_factor,
        })
    }

    fn face(&mut self, file: &DriveFile) -> Result<FaceResistance, HandbookError> {
        if let Some(face) = &file.face {
            return Ok(FaceResistance::Given(self.force_band(face, "face", Role::Thrust)));
        }
        let spoil = match &file.spoil {
            Some(field) => field.value,
            None => Spoil::Auger,
        };
        let (resistance, origin) = face_row(self.handbook, spoil)?;
        if file.spoil.is_none() {
            self.assume("spoil", AssumedValue::Word(spoil.key().to_owned()), origin);
        }
        self.assume_face("face", resistance, origin);
        Ok(resistance)
    }

    /// Both halves of a resistance at a head.
    fn assume_face(&mut self, field: &str, resistance: FaceResistance, origin: Origin) {
        if let FaceResistance::Table { pressure, least } = resistance {
            let shown = pressure.map(|level| Shown::of(level, Role::UnitFriction));
            self.assume(format!("{field}: pressure on the cut ring"), AssumedValue::Band(shown), origin);
            let shown = least.map(|level| Shown::of(level, Role::Thrust));
            self.assume(format!("{field}: least force"), AssumedValue::Band(shown), origin);
        }
    }

    fn tolerance(&mut self, file: &DriveFile, largest: Length) -> Result<Cited<Length>, HandbookError> {
        /// Where the tolerance table steps up.
        const WIDE: f64 = 0.6;
        let key = if largest.si() < WIDE { "grade.tolerance_below_600" } else { "grade.tolerance_600_to_1000" };
        let row = self.handbook.length(key)?;
        Ok(self.given_or(file.tolerance.as_ref(), &FieldName("tolerance"), Role::Offset, row))
    }
}
