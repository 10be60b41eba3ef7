//! A [`Drive`] out of a [`DriveFile`] and the handbook: contradictions found, gaps filled from tables and listed.

mod annulus;
mod both;
mod casing;
mod clay;
mod clay_ground;
mod concrete;
mod face;
mod friction;
mod ground;
mod iron;
mod jacked;
mod jacked_steel;
mod jacks;
mod label;
mod line;
mod not_given;
mod pace;
mod pe;
mod pe_strength;
mod pipe;
mod pits;
mod proposed;
mod pull;
mod pull_works;
mod pulled_metal;
mod pulled_pvc;
mod rigid;
mod service;
mod sewer;
mod site;
mod soil;
mod steering;
mod stem;
mod suitability;
mod traffic;
mod wall;
mod weights;
mod works;

use super::examples::example;
use super::fields::{Bounds, Given, Key, Spec};
use super::{BandFile, CandidateFile, DriveFile, Flaw, RigFile};
use crate::drive::{Assumed, AssumedValue, Drive, NotGiven, Pipe, Rig, Stem, TipResistance};
use crate::handbook::{Handbook, HandbookError, rising};
use crate::quantity::{Band, Length, Measure, Ratio, Role, Shown, UnitSystem};
use crate::source::{Cited, Equation, FieldName, Mark, Origin};
use crate::yaml::{Complaint, Field};
use line::{LONGEST, Line};
use std::sync::Arc;

/// What resolving has found so far.
struct Resolver<'a> {
    handbook: &'a Handbook,
    flaws: Vec<Flaw>,
    assumed: Vec<Assumed>,
    /// What the maker of the pipe at hand has to say, while one is proposed; elsewhere its absence is a fault.
    proposing: Option<Vec<NotGiven>>,
    /// The units that the file writes the length of the drive in, for what a fault computes.
    system: UnitSystem,
    /// False where the length of the drive is faulty and another stands in for it.
    length_is_told: bool,
}

impl Resolver<'_> {
    fn flaw<T>(&mut self, at: &Field<T>, path: &str, complaint: impl Into<Complaint>) {
        // What a senseless value does elsewhere is mended with it.
        if !self.flaws.iter().any(|told| told.senseless && told.path == path) {
            self.flaws.push(Flaw {
                path: path.to_owned(),
                at: at.handle(),
                complaint: complaint.into(),
                senseless: false,
            });
        }
    }

    /// Of a value that makes no sense itself: nothing else is told of it.
    fn senseless<T>(&mut self, at: &Field<T>, path: &str, complaint: impl Into<Complaint>) {
        self.flaw(at, path, complaint);
        if let Some(last) = self.flaws.last_mut().filter(|last| last.path == path) {
            last.senseless = true;
        }
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
            let (what, _) = crate::quantity::unit::describe(Q::DIM);
            let example = example(path, Q::DIM, field.written_in().unwrap_or(self.system));
            let read = Shown::of(field.value, role).display(field.written_in().unwrap_or_default());
            let complaint = Complaint::from(format!("expected {what} {expected}, got {read}"));
            self.senseless(field, path, complaint.advise(format!("write for example \"{example}\"")));
        }
        field.value
    }

    /// The value, above zero and at most so much; beyond that it is taken for a slip of unit or digit.
    fn up_to<Q: Measure + PartialOrd>(&mut self, field: &Field<Q>, path: &str, role: Role, most: Q) -> Q {
        if !(field.value <= most) && field.value.si().is_finite() {
            let (what, _) = crate::quantity::unit::describe(Q::DIM);
            let system = field.written_in().unwrap_or_default();
            let [read, most] = [field.value, most].map(|value| Shown::of(value, role).display(system).to_string());
            let complaint = Complaint::from(format!("expected {what} of at most {most}, got {read}"));
            self.senseless(field, path, complaint.advise("see the unit and the decimal point"));
            return field.value;
        }
        self.positive(field, path, role)
    }

    /// The number of a field by its key, within its bounds, cited; a block at this path of the file has it.
    fn take<B, Q: Measure, V: Given<Q>>(&mut self, path: &str, block: &B, key: Key<B, V>) -> V::Of<Cited<Q>> {
        (key.get)(block).made(|field| {
            let at = if path.is_empty() { key.spec.key.to_owned() } else { format!("{path}.{}", key.spec.key) };
            Cited::given(self.bounded(field, &at, key.spec), key.spec.name(path))
        })
    }

    /// The value, within the bounds of its field.
    fn bounded<Q: Measure>(&mut self, field: &Field<Q>, path: &str, spec: &Spec) -> Q {
        let (Some(number), si) = (spec.number, field.value.si()) else { return field.value };
        if !number.bounds.hold(si) {
            let system = field.written_in().unwrap_or_default();
            let shown = |si| Shown { si, role: number.role }.display(system);
            let (what, _) = crate::quantity::unit::describe(Q::DIM);
            if let Bounds::UpTo(most) = number.bounds
                && si > most
                && si.is_finite()
            {
                let complaint = format!("expected {what} of at most {}, got {}", shown(most), shown(si));
                self.senseless(field, path, Complaint::from(complaint).advise("see the unit and the decimal point"));
                return field.value;
            }
            let expected = match number.bounds {
                Bounds::Any => "that is finite".to_owned(),
                Bounds::AboveZero | Bounds::UpTo(_) => "above zero".to_owned(),
                Bounds::NotNegative => "of zero or more".to_owned(),
                Bounds::Within(least, most) => format!("from {} to {}", shown(least), shown(most)),
            };
            let complaint = Complaint::from(format!("expected {what} {expected}, got {}", shown(si)));
            let example = spec.example(field.written_in().unwrap_or(self.system)).unwrap_or_default();
            self.senseless(field, path, complaint.advise(format!("write for example \"{example}\"")));
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
        BandFile { low, likely, high }: &BandFile<Q>,
        path: &str,
        role: Role,
    ) -> Band<Q> {
        let before = self.flaws.len();
        let band = Band {
            low: self.not_negative(low, &format!("{path}.low"), role),
            likely: self.not_negative(likely, &format!("{path}.likely"), role),
            high: self.not_negative(high, &format!("{path}.high"), role),
        };
        if !(band.low <= band.likely && band.likely <= band.high) && self.flaws.len() == before {
            self.flaw(likely, path, "expected low, likely and high in rising order");
        }
        band
    }

    /// A rating of the user's, above zero.
    fn rating<Q: Measure>(&mut self, field: &Field<Q>, name: &'static FieldName, role: Role) -> Cited<Q> {
        Cited::given(self.positive(field, name.0, role), name)
    }
}

/// Table row missing: said with what was looked for.
fn no_row(table: &'static str, wanted: impl Into<String>) -> HandbookError {
    HandbookError::NoRow { table, wanted: wanted.into() }
}

/// What is taken where the file plans no stops.
const NO_STOPS: Equation = Equation {
    name: "planned stops",
    form: "none",
    source: "jackpull",
    locator: "work goes on by shifts without a longer stop; the cautions tell what a stop does",
    mark: Mark::Judgement,
    valid: "continuous work",
};

/// Most stops of one drive.
const MOST_STOPS: usize = 200;

/// Row of the method whose guided pilot every bore here follows.
const GUIDED: &str = "pilot_tube";

/// Longest line of drives that is taken, in m: no sewer or main of one file is longer.
const LONGEST_LINE: f64 = 100_000.0;

/// Length in m that stands in for a faulty one where no ground is told to a place.
const ANY_LENGTH: f64 = 50.0;

/// Most pipes of one drive: a person chooses among them.
const MOST_CANDIDATES: usize = 50;

/// The outer error is the handbook's, the inner one the file's.
pub(super) fn resolve(file: &DriveFile, handbook: &Arc<Handbook>) -> Result<Result<Drive, Vec<Flaw>>, HandbookError> {
    let mut resolver = Resolver {
        handbook,
        flaws: Vec::new(),
        assumed: Vec::new(),
        proposing: None,
        system: file.length.written_in().unwrap_or_default(),
        length_is_told: true,
    };
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

impl Resolver<'_> {
    fn drive(&mut self, file: &DriveFile, handbook: &Arc<Handbook>) -> Result<Option<Drive>, HandbookError> {
        let length = self.up_to(&file.length, "length", Role::Distance, Length::from_si(LONGEST));
        let length = if self.flaws.is_empty() { length } else { self.stand_in(file) };
        let Some(line) = self.line(file, length) else { return Ok(None) };
        let rig = Rig {
            thrust: self.take("rig", &file.rig, RigFile::thrust),
            pull: self.take("rig", &file.rig, RigFile::pull),
            torque: self.take("rig", &file.rig, RigFile::torque),
            auger_torque: self.auger_torque(file),
        };
        let gauge = self.gauge(&file.rig)?;
        let stations = self.stations(&file.rig)?;
        let stem = self.stem(file)?;
        let face = self.face(file)?;
        let tip = self.tip(&stem)?;
        let pull = match &file.pull {
            Some(pull) => self.pull(pull, length, &line)?,
            None => None,
        };
        let annulus = self.annulus(file, pull.as_ref())?;
        let in_service = self.annulus_in_service(file)?;
        if let Some(one_too_many) = file.candidates.get(MOST_CANDIDATES) {
            let message = format!("more than {MOST_CANDIDATES} pipes to choose from");
            self.flaw(&one_too_many.material, &format!("candidates[{MOST_CANDIDATES}]"), message);
            return Ok(None);
        }
        self.check_steering(file);
        let mut candidates = Vec::new();
        for (index, candidate) in file.candidates.iter().enumerate() {
            if let Some(pipe) = self.pipe(index, candidate, file, &stem, pull.as_ref())? {
                self.room(index, candidate, &pipe, &line, &stem);
                self.room_for_spacers(file, &pipe);
                if file.candidates.iter().take(index).any(|other| other == candidate) {
                    let message = format!("{} is among the candidates twice", pipe.label);
                    self.flaw(&candidate.size, &format!("candidates[{index}]"), message);
                }
                let sewer = self.sewer(index, &pipe, file.service.value)?;
                let price = self.pipe_price(index, candidate, file);
                candidates.push((index, Pipe { sewer, price, ..pipe }));
            }
        }
        let mut listed = file.candidates.clone();
        let proposed = self.propose(file, &line, &stem, pull.as_ref(), &mut listed, &mut candidates)?;
        if file.candidates.is_empty() && file.needed_inside_diameter.is_none() && file.greatest_flow().is_none() {
            let complaint = Complaint::from("expected at least one pipe to choose from, got none");
            self.flaw(&file.length, "candidates", complaint.advise("list pipes, or give `needed_inside_diameter`"));
        }
        label::tell_apart(&listed, &mut candidates, self.system);
        let mut candidates: Vec<Pipe> = candidates.into_iter().map(|(_, pipe)| pipe).collect();
        let largest = candidates.iter().map(|pipe| pipe.outside_diameter.value).fold(Length::default(), Length::max);
        self.assume_pilot(file, stem.is_there());
        let highest = candidates.iter().map(Pipe::height).fold(largest, Length::max);
        let works = suitability::Works::of(file, stem.is_there(), largest, highest);
        let (stretches, told): (Vec<_>, Vec<_>) = self.ground(file, length, &line, &works)?.into_iter().unzip();
        for pipe in &mut candidates {
            pipe.ground = self.rated_for(&works, &told, pipe)?;
        }
        let site = self.site(file, &line, &stretches, &stem)?;
        self.assume_site(&site);
        let reaction = self.reaction(file, &stretches)?;
        self.in_service(file, &stretches, line.shallowest(), &mut candidates)?;
        self.dry_hole(file, &stretches);
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
            stops: self.stops(file, length),
            restart: self.restart(file)?,
            rig,
            reaction,
            gauge,
            stations,
            stem,
            tip,
            technique: works.technique,
            face,
            tolerance,
            pilot_accuracy,
            guided_length,
            site: Box::new(site),
            pull,
            weights: self.weights(file)?,
            line: self.whole_line(file, length),
            annulus,
            in_service,
            candidates: candidates.into_iter().map(Arc::new).collect(),
            proposed,
            assumed: Vec::new(),
        }))
    }

    /// Room in the ground for pipe, casing and bore, and room round the stem.
    fn room(&mut self, index: usize, candidate: &CandidateFile, pipe: &Pipe, line: &Line, stem: &Stem) {
        let path = format!("candidates[{index}].size");
        let pulled = pipe.pulled.is_some();
        let around = pipe.casing_diameter().unwrap_or(pipe.bore.value).max(pipe.bore.value);
        if line.shallowest() <= around {
            let message =
                format!("{} stands out of the ground: the invert is too shallow for it or its bore", pipe.label);
            self.flaw(&candidate.size, &path, message);
        }
        if stem.head >= around.min(pipe.outside_diameter.value) {
            let message = format!("{} is no larger than the stem that goes before it", pipe.label);
            self.flaw(&candidate.size, &path, Complaint::from(message).advise("see stem.outside_diameter"));
        }
        if pulled && !stem.is_there() {
            let complaint = Complaint::from("a pipe that is pulled needs the stem that pulls it");
            let complaint = complaint.advise("give stem.outside_diameter");
            self.flaw(&candidate.material, &format!("candidates[{index}].material"), complaint);
        }
        let weightless = pipe.jacked.as_ref().is_some_and(|jacked| jacked.weight.is_none());
        if weightless && line.grade.value.si() > 0.0 {
            let complaint = Complaint::from("is pushed uphill, and its weight is missing");
            self.flaw(
                &candidate.size,
                &format!("candidates[{index}].weight"),
                complaint.advise("add `weight: 1.5 kN/m`"),
            );
        }
    }

    /// A length that the places along a drive of a faulty one fit in, so that only the length is told.
    fn stand_in(&mut self, file: &DriveFile) -> Length {
        self.length_is_told = false;
        let ends = file.ground.iter().filter_map(|stretch| stretch.to.as_ref());
        let longest = ends.map(|to| to.value).filter(|to| to.si() <= LONGEST).fold(Length::default(), Length::max);
        longest.max(Length::from_si(ANY_LENGTH))
    }

    /// What is wrong only beside the length of the drive.
    fn flaw_of_length<T>(&mut self, at: &Field<T>, path: &str, complaint: impl Into<Complaint>) {
        if self.length_is_told {
            self.flaw(at, path, complaint);
        }
    }

    /// Length of the line that the drive is a part of.
    fn whole_line(&mut self, file: &DriveFile, length: Length) -> Option<Length> {
        let line = file.line.as_ref()?;
        let whole = self.up_to(&line.length, "line.length", Role::Distance, Length::from_si(LONGEST_LINE));
        if whole < length && self.length_is_told {
            let complaint = Complaint::from("is shorter than the drive, which is a part of it");
            self.flaw(&line.length, "line.length", complaint.advise("the line goes from its first pit to its last"));
        }
        Some(whole)
    }

    /// Planned stops, in order.
    fn stops(&mut self, file: &DriveFile, length: Length) -> Vec<Length> {
        if let Some(one_too_many) = file.stops.get(MOST_STOPS) {
            self.flaw(&one_too_many.at, &format!("stops[{MOST_STOPS}].at"), format!("more than {MOST_STOPS} stops"));
            return Vec::new();
        }
        let mut stops = Vec::new();
        for (index, stop) in file.stops.iter().enumerate() {
            let path = format!("stops[{index}].at");
            let at = self.positive(&stop.at, &path, Role::Distance);
            if at > length {
                self.flaw_of_length(&stop.at, &path, "lies beyond the drive");
            }
            stops.push(at);
        }
        if file.stops.is_empty() {
            let word = AssumedValue::Word("none of more than a shift".to_owned());
            self.assume("stops", word, Origin::Law(&NO_STOPS));
        }
        stops.sort_by(|one, other| one.si().total_cmp(&other.si()));
        stops
    }

    /// How many times the high friction is when what stood for more than a shift moves again.
    fn restart(&mut self, file: &DriveFile) -> Result<Ratio, HandbookError> {
        let row = self.handbook.ratio("thrust.restart")?;
        if !file.stops.is_empty() {
            self.assume_one("restart after a stop: factor on the high friction", row, Role::Ratio);
        }
        Ok(row.value)
    }

    fn tip(&mut self, stem: &Stem) -> Result<TipResistance, HandbookError> {
        let sand = self.handbook.pressure("tip.cone_per_blow")?;
        let sand_ends =
            (self.handbook.pressure("tip.cone_per_blow_low")?, self.handbook.pressure("tip.cone_per_blow_high")?);
        let cone_per_blow = Band { low: sand_ends.0.value, likely: sand.value, high: sand_ends.1.value };
        let cone_per_blow = rising("practice_pressure", "tip.cone_per_blow", cone_per_blow)?;
        let clay = self.handbook.pressure("tip.cone_per_blow_clay")?;
        let strength = self.handbook.pressure("clay.strength_per_blow")?;
        let low = self.handbook.ratio("tip.clay_low")?;
        let high = self.handbook.ratio("tip.clay_high")?;
        let bearing_factor = Band { low: low.value, likely: high.value, high: high.value };
        let bearing_factor = rising("practice_ratio", "tip.clay_low, tip.clay_high", bearing_factor)?;
        if stem.is_there() {
            let shown = cone_per_blow.map(|pressure| Shown::of(pressure, Role::Strength));
            self.assume("pilot tip: cone resistance per blow, sand", AssumedValue::Band(shown), sand_ends.1.origin);
            self.assume_one("pilot tip: cone resistance per blow, clay, high", clay, Role::Strength);
            self.assume_one("pilot tip: undrained strength per blow, clay", strength, Role::UnitFriction);
            let shown = bearing_factor.map(|factor| Shown::of(factor, Role::Ratio));
            self.assume("pilot tip: bearing factor, clay", AssumedValue::Band(shown), high.origin);
        }
        Ok(TipResistance {
            cone_per_blow,
            cone_per_blow_clay: clay.value,
            strength_per_blow: strength.value,
            bearing_factor,
        })
    }

    fn tolerance(&mut self, file: &DriveFile, largest: Length) -> Result<Cited<Length>, HandbookError> {
        /// Where the tolerance table steps up.
        const WIDE: f64 = 0.6;
        let key = if largest.si() < WIDE { "grade.tolerance_below_600" } else { "grade.tolerance_600_to_1000" };
        let row = self.handbook.length(key)?;
        Ok(self.given_or(file.tolerance.as_ref(), &FieldName("tolerance"), Role::Offset, row))
    }
}
