//! A [`Drive`] out of a [`DriveFile`] and the handbook: contradictions found, gaps filled from tables and listed.

mod annulus;
mod bounds;
mod carried;
mod contradictions;
mod earth;
mod face;
mod friction;
mod ground;
mod guidance;
mod iron;
mod jacked;
mod joints;
mod label;
mod line;
mod listed;
mod material;
mod open_bore;
mod pace;
mod pe;
mod pipe;
mod pits;
mod proportions;
mod proposed;
mod pull;
mod pvc;
mod rating;
mod resolver;
mod rests;
mod rigid;
mod row;
mod service;
mod sewer;
mod site;
mod sizes;
mod steel;
mod steering;
mod stem;
mod suits;
mod take;
mod technique;
mod wall;
mod weights;

use super::fields::{self, Keys};
use super::limits::LONGEST;
use super::{DriveFile, Flaw, LineFile, PullFile, RigFile, WaterTable};
use crate::drive::{
    Assumed, AssumedValue, Concern, Drive, Ends, Leeway, Pipe, PulledPipe, Rig, StationRules, Stem, TipResistance,
};
use crate::handbook::{GroundClass, Guidance, Handbook, Service};
use crate::quantity::{Length, Measure, Role};
use crate::source::{Cited, Equation, Origin};
use crate::yaml::{Complaint, Field, MayBe};
use pipe::Before;
use resolver::{Resolved, Resolver, no_row};
use std::sync::Arc;

/// Row of the method whose guided pilot every bore here follows.
const GUIDED: &str = "pilot_tube";

/// What is taken for a water table that nobody knows.
const UNKNOWN_WATER: Equation = Equation::judged(
    "water table that is not known",
    "at the ground surface and none, whichever is worse; over where both are",
    "nothing is over by water that nobody has seen, and nothing passes without it",
    "ground water of unknown depth",
);

/// What is taken for the water under a stream.
const WET_BED: Equation = Equation::judged(
    "ground water under the bed of a stream",
    "at the ground surface, in all of the stretch that the bed lies in, and in every one where no bed is told",
    "the stream feeds it: a stretch of its own under the bed leaves the water at the pits as it is told",
    "a stream, and no water to the surface under it",
);

/// What is taken for lubrication where a pipe may be pushed and none is told.
const UNTOLD_LUBRICATION: Equation = Equation::judged(
    "lubrication of a pipe that may be pushed",
    "none",
    "most friction, on the safe side",
    "a pipe that can be pulled as well, or that is proposed",
);

/// Length in m that stands in for a faulty one where no ground is told to a place.
const ANY_LENGTH: f64 = 50.0;

/// Most pipes of one drive: a person chooses among them.
const MOST_CANDIDATES: usize = 50;

/// Room for so many assumed values, which is enough for most drives.
const MANY: usize = 128;

/// Most stretches times pipes of one drive, each of which adds some 80 kB to the JSON; a borehole log has a dozen stretches.
const MOST_PARTS: usize = 300;

/// The outer error is the handbook's, the inner one the file's.
/// Of a sketch what only the maker of a pipe can tell may be left out.
pub(super) fn resolve(
    file: &DriveFile,
    handbook: &Arc<Handbook>,
    is_sketch: bool,
) -> Resolved<Result<Drive, Vec<Flaw>>> {
    let with_pull = with_pull(file);
    let file = with_pull.as_ref().unwrap_or(file);
    let Some(wet) = file.with_wet_bed() else { return at_either_water(file, handbook, is_sketch) };
    let mut drive = at_either_water(&wet, handbook, is_sketch)?;
    if let Ok(drive) = &mut drive {
        let value = AssumedValue::Word("at the ground surface, under the bed of the stream".to_owned());
        let field = "ground[].groundwater".to_owned();
        let origin = Origin::Law(&WET_BED);
        drive.assumed.push(Assumed { concern: Concern::Drive, field, value, origin, alike: 0 });
    }
    Ok(drive)
}

/// The same file with a pull of which nothing is told, where it has none and lists a pipe that goes in by no other way.
fn with_pull(file: &DriveFile) -> Option<DriveFile> {
    let lacks = file.pull.is_none() && file.candidates.iter().any(|pipe| pipe.material.value.is_only_pulled());
    lacks.then(|| DriveFile { pull: Some(PullFile::default()), ..file.clone() })
}

/// The same, where the pull and the bed of a stream are told.
fn at_either_water(file: &DriveFile, handbook: &Arc<Handbook>, is_sketch: bool) -> Resolved<Result<Drive, Vec<Flaw>>> {
    let Some(field) = file.unknown_water() else { return resolve_one(file, handbook, is_sketch) };
    let wet = resolve_one(&file.with_water(WaterTable::At(Length::default())), handbook, is_sketch)?;
    let Ok(mut wet) = wet else { return Ok(wet) };
    for pipe in &mut wet.candidates {
        // What is told as not known is no answer.
        let told = &mut Arc::make_mut(pipe).told[0];
        *told = told.iter().copied().filter(|path| *path != field).collect();
    }
    let value = AssumedValue::Word("at the ground surface, and none: each check at both".to_owned());
    let origin = Origin::Law(&UNKNOWN_WATER);
    wet.assumed.push(Assumed { concern: Concern::Drive, field: field.to_owned(), value, origin, alike: 0 });
    // What the file tells of the water, of a stream or of wells, may leave no drive without it.
    if let Ok(dry) = resolve_one(&file.with_water(WaterTable::None), handbook, is_sketch)? {
        let of_drive = field == "groundwater";
        wet.dry = Some((Box::new(dry), if of_drive { &[&["groundwater"]] } else { &[&["ground[].groundwater"]] }));
    }
    Ok(Ok(wet))
}

/// The same, where the water is known.
fn resolve_one(file: &DriveFile, handbook: &Arc<Handbook>, is_sketch: bool) -> Resolved<Result<Drive, Vec<Flaw>>> {
    let mut resolver = Resolver {
        file,
        handbook,
        flaws: Vec::new(),
        assumed: Vec::with_capacity(MANY),
        unusual: Vec::new(),
        concern: Concern::Drive,
        is_sketch,
        proposing: false,
        not_given: Vec::new(),
        system: file.length.written_in().unwrap_or_default(),
        length_is_told: true,
    };
    let drive = match resolver.drive(handbook) {
        // A faulty value can look for a row that there is not: the value is what the user can mend.
        Err(_) if !resolver.flaws.is_empty() => return Ok(Err(resolver.flaws)),
        drive => drive?,
    };
    Ok(match drive {
        Some(drive) if resolver.flaws.is_empty() => {
            Ok(Drive { assumed: resolver.assumed, unusual: resolver.unusual, ..drive })
        }
        _ => Err(resolver.flaws),
    })
}

impl Resolver<'_> {
    fn drive(&mut self, handbook: &Arc<Handbook>) -> Resolved<Option<Drive>> {
        self.within_bounds();
        self.beside_each_other()?;
        self.contradictions();
        let told = self.file.length.value;
        let length = if self.is_senseless("length") { self.stand_in() } else { told };
        let Some(line) = self.line(length) else { return Ok(None) };
        let rig = Rig {
            thrust: self.or_row(RigFile::thrust, self.handbook.force("usual.rig_thrust")?),
            pull: self.or_row(RigFile::pull, self.handbook.force("usual.rig_pull")?),
            held_to: self.cited(RigFile::held_to),
            torque: self.cited(RigFile::torque),
            auger_torque: self.band(RigFile::auger_torque),
            stroke: self.cited(RigFile::stroke),
        };
        if rig.held_to.is_some_and(|held| held.value > rig.thrust.value) {
            self.wrong(RigFile::held_to, ("is more than the rig thrusts", "see rig.thrust"));
        }
        let gauge = self.gauge()?;
        let pilot = self.pilot_kind()?;
        let stem = self.about(Concern::Stem, |resolver| resolver.stem(pilot))?;
        let stem_at_best = self.stem_at_best(&stem, pilot)?;
        let plan = self.technique_row((pilot, stem.is_there()))?;
        let face = self.about(Concern::Jacking, |resolver| resolver.face(plan.value))?;
        let tip = self.about(Concern::Stem, |resolver| resolver.tip(&stem))?;
        let pull = match &self.file.pull {
            Some(pull) => self.about(Concern::Pull, |resolver| resolver.pull(pull, length, &line))?,
            None => None,
        };
        let annulus = self.annulus()?;
        let in_service = self.annulus_in_service()?;
        if let Some(one_too_many) = self.file.candidates.get(MOST_CANDIDATES) {
            let message = format!("more than {MOST_CANDIDATES} pipes to choose from");
            self.flaw(&one_too_many.material, &format!("candidates[{MOST_CANDIDATES}]"), message);
            return Ok(None);
        }
        let slender = stem_at_best.as_ref().unwrap_or(&stem);
        let before = Before { line: &line, stem: &stem, slender, pull: pull.as_ref(), technique: plan.value };
        let mut candidates = Vec::new();
        for (index, candidate) in self.file.candidates.iter().enumerate() {
            self.proposing = self.is_sketch;
            let Some(pipe) = self.put(index, candidate, before)? else { continue };
            if self.file.candidates.iter().take(index).any(|other| other == candidate) {
                let message = format!("{} is among the candidates twice", pipe.label);
                self.flaw(&candidate.size, &format!("candidates[{index}]"), message);
            }
            let price = self.pipe_price(index, candidate);
            candidates.push((index, Pipe { price, ..pipe }));
        }
        let mut listed = self.file.candidates.clone();
        let proposed = self.propose(Before { slender: &stem, ..before }, &mut listed, &mut candidates)?;
        let (stretches, pipes) = (self.file.ground.len(), listed.len().max(1));
        if let Some(first) = self.file.ground.first().filter(|_| stretches * pipes > MOST_PARTS) {
            let message = format!("more than {MOST_PARTS} of stretches times pipes, {stretches} times {pipes}");
            self.flaw(&first.class, "ground", (message, "join stretches that are alike, or leave pipes out"));
            return Ok(None);
        }
        if self.file.candidates.is_empty()
            && self.file.needed_inside_diameter.is_none()
            && self.file.greatest_flow().is_none()
        {
            let complaint =
                ("expected at least one pipe to choose from, got none", "list pipes, or give `needed_inside_diameter`");
            self.flaw(&self.file.length, "candidates", complaint);
        }
        self.needed_by(&candidates)?;
        label::tell_apart(&listed, &mut candidates, self.system);
        let unusual = |index| self.unusual.iter().any(|unusual| unusual.concern == Concern::Pipe(index));
        let with_own = |(index, pipe)| Pipe { is_unusual: unusual(index), ..pipe };
        let mut candidates: Vec<Pipe> = candidates.into_iter().map(with_own).collect();
        let largest = candidates.iter().map(|pipe| pipe.outside_diameter.value).fold(Length::default(), Length::max);
        self.about(Concern::Stem, |resolver| resolver.assume_pilot(pilot, stem.is_there()));
        let highest = candidates.iter().map(Pipe::height).fold(largest, Length::max);
        let technique = self.technique(plan, largest, highest);
        let ground = self.about(Concern::Ground, |it| it.ground(length, &line, (&technique, &stem)))?;
        let mut told = fields::told(self.file, "");
        // Ground that is unknown is not told.
        let unknown = self.file.ground.iter().any(|stretch| stretch.class.value == GroundClass::Unknown);
        told.retain(|path| !(path.starts_with("candidates[]") || unknown && *path == "ground[].class"));
        let told: Arc<[_]> = told.into();
        let (auger, lubricant) = (self.auger()?, self.lubricant()?);
        for (index, (pipe, listed)) in candidates.iter_mut().zip(&listed).enumerate() {
            pipe.told = [Arc::clone(&told), fields::told(listed, "candidates[]").into()];
            pipe.ground = self.rated_for(&technique, &ground, pipe)?;
            let open = self.about(Concern::Pipe(index), |it| it.open_round_pipe(&ground, pipe, (auger, lubricant)))?;
            pipe.open = open;
        }
        let stretches: Vec<_> = ground.into_iter().map(|(stretch, _)| stretch).collect();
        let work = self.work()?;
        let site = self.site(&line, &stretches, plan.value, work.shift)?;
        self.assume_site(&site);
        let reaction = self.reaction(&stretches)?;
        self.in_service(&listed, &stretches, &mut candidates)?;
        self.carried(&listed, &mut candidates)?;
        if let Some(lubricant) = &lubricant {
            self.about(Concern::Jacking, |it| it.check_lubricant(lubricant, &candidates, &stretches));
        }
        self.dry_hole(&stretches);
        let tolerance = self.about(Concern::Grade, |it| it.tolerance(largest))?;
        let loosest = match self.file.tolerance {
            Some(_) => None,
            None => Some(Ends::read(["grade.tolerance_loosest_jacked", "grade.tolerance_loosest"], |key| {
                self.handbook.length(key)
            })?),
        };
        let guided = self.about(Concern::Grade, |it| it.guidance(&technique, &stretches, &line))?;
        let overcut_in_accuracy = self.handbook.length("overcut.in_accuracy")?.value;
        // Before a sewer a pilot that nobody tells may be pushed.
        let is_drilled =
            technique.drilled && (self.file.pilot.is_some() || self.file.service.value != Service::GravitySewer);
        // A pushed pilot is sighted through its stem, a drilled one by its laser; what is located has the range of its method.
        let guided_length = match (stem.is_there() && guided.by == Guidance::Laser, is_drilled) {
            (false, _) if guided.by == Guidance::None => Some(self.handbook.length("unsteered.reach")?),
            (false, _) => None,
            (true, true) => Some(guided.reach),
            (true, false) => Some(self.handbook.method_limit()?.row(GUIDED)?.map(|row| row.length.value)),
        };
        Ok(Some(Drive {
            handbook: Arc::clone(handbook),
            name: self.file.name.as_ref().map_or_else(|| "unnamed drive".to_owned(), |name| name.value.0.clone()),
            service: self.file.service.value,
            length: Cited::given(length, DriveFile::length.spec.name("")),
            grade: line.grade,
            lubrication: self.file.lubricated(),
            lubrication_told: self.file.lubrication.is_some(),
            auger,
            lubricant,
            dry: None,
            stretches,
            rests: self.rests(&work, length)?,
            rig,
            if_stalled: self.file.if_stalled.given(),
            work,
            reaction,
            gauge,
            stations: StationRules::read(self.handbook, self.given(RigFile::station_thrust))?,
            stem,
            stem_at_best,
            tip,
            usual: self.usual()?,
            technique: plan.value.words.value.0.clone(),
            pilot,
            face,
            tolerance,
            loosest_tolerance: loosest,
            guided,
            overcut_in_accuracy,
            least_play: self.handbook.length("bore.set_in")?,
            guided_length,
            curve: self.curve()?,
            site: Box::new(site),
            pull,
            weights: self.weights()?,
            line: self.whole_line(length),
            annulus,
            in_service,
            candidates: candidates.into_iter().map(Arc::new).collect(),
            proposed,
            leeway: Leeway::read(self.handbook)?,
            assumed: Vec::new(),
            unusual: Vec::new(),
        }))
    }

    /// What only some pipes need: lubrication where one is pushed, the temperature of plastic that is pulled.
    fn needed_by(&mut self, pipes: &[(usize, Pipe)]) -> Resolved<()> {
        let listed = self.file.candidates.len();
        if self.file.lubrication.is_none() {
            let pushed = |(_, pipe): &&(usize, Pipe)| pipe.jacked.is_some();
            let alone = |(index, pipe): &(usize, Pipe)| *index < listed && pipe.pulled.is_none();
            if pipes.iter().filter(pushed).any(alone) {
                let advice = "add `lubrication: none`, or not_metered, metered or logged";
                let why = ("the lubrication of a pipe that is pushed is missing", advice);
                self.flaw(&self.file.length, "lubrication", why);
            } else if pipes.iter().any(|pipe| pushed(&pipe)) {
                self.about(Concern::Jacking, |it| {
                    it.assume_word("lubrication", "none", Origin::Law(&UNTOLD_LUBRICATION))
                });
            }
        }
        let plastic = |(_, pipe): &(usize, Pipe)| pipe.pulled.as_ref().is_some_and(PulledPipe::is_plastic);
        if self.file.pull.as_ref().is_some_and(|pull| pull.pipe_temperature.is_none()) && pipes.iter().any(plastic) {
            let hottest = self.handbook.pull_temperature()?.value("untold")?;
            self.about(Concern::Pull, |it| it.assume_one("pull.pipe_temperature", hottest, Role::Temperature));
        }
        Ok(())
    }

    /// A length that the places along a drive of a faulty one fit in, so that only the length is told.
    fn stand_in(&mut self) -> Length {
        self.length_is_told = false;
        let ends = self.file.ground.iter().filter_map(|stretch| stretch.to.as_ref());
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
    fn whole_line(&mut self, length: Length) -> Option<Length> {
        let whole = self.file.line.as_ref()?.length.value;
        if whole < length && self.length_is_told {
            let why =
                ("is shorter than the drive, which is a part of it", "the line goes from its first pit to its last");
            self.wrong(LineFile::length, why);
        }
        Some(whole)
    }

    fn tip(&mut self, stem: &Stem) -> Resolved<TipResistance> {
        let keys = ["tip.cone_per_blow_low", "tip.cone_per_blow", "tip.cone_per_blow_high"];
        let sand = self.handbook.pressures(keys)?;
        let clay = self.handbook.pressure("tip.cone_per_blow_clay")?;
        let strength = self.handbook.pressure("clay.strength_per_blow")?;
        let bearing = self.handbook.ratios(["tip.clay_low", "tip.clay_high", "tip.clay_high"])?;
        if stem.is_there() {
            let what = "pilot tip: cone resistance per blow, sand";
            self.assume_band(what, sand.value, Role::Strength, sand.origin);
            self.assume_one("pilot tip: cone resistance per blow, clay, high", clay, Role::Strength);
            self.assume_one("pilot tip: undrained strength per blow, clay", strength, Role::UnitFriction);
            self.assume_band("pilot tip: bearing factor, clay", bearing.value, Role::Ratio, bearing.origin);
        }
        Ok(TipResistance {
            cone_per_blow: sand.value,
            cone_per_blow_clay: clay.value,
            strength_per_blow: strength.value,
            bearing_factor: bearing.value,
        })
    }

    fn tolerance(&mut self, largest: Length) -> Resolved<Cited<Length>> {
        /// Where the tolerance table steps up.
        const WIDE: f64 = 0.6;
        let key = if largest.si() < WIDE { "grade.tolerance_below_600" } else { "grade.tolerance_600_to_1000" };
        let row = self.handbook.length(key)?;
        Ok(self.or_row(DriveFile::tolerance, row))
    }
}
