//! How the ground of a drive is rated for a technique and a pipe, and what of it that hangs on.

use super::contradictions::is_dry;
use super::suits::{Face, NOT_RATED, TREATED, worse};
use super::technique::{Column, Technique};
use super::{Resolved, Resolver};
use crate::drive::{
    AssumedValue, Ends, HangsOn, PILOT_IN_FLUID, PUSHED_THROUGH_GROUT, Pipe, Rated, SEWER_IN_PEAT, Side, Stretch,
    UNCUT_ROCK, UNTOLD_PILOT, UNTOLD_SPOIL,
};
use crate::drive_file::StretchFile;
use crate::handbook::{Family, GroundClass, GroundHazard, GuidedTechnique, Rating, Service, Treatment};
use crate::quantity::{Band, Length};
use crate::source::{Cited, Equation, Origin};
use crate::yaml::MayBe;

/// Said of fill where the file does not tell its hazards.
const MAY_OBSTRUCT: Equation = Equation::judged(
    "fill",
    "not decided",
    "fill may hold anything: rated once the file says that nothing obstructs it, or what does",
    "fill of which the file tells no hazards",
);

/// Said of wells in ground under a stream.
const FED: Equation = Equation::judged(
    "wells under a stream",
    "as ground that is not treated",
    "the stream feeds sand and gravel under its bed as fast as wells draw from them: grout it, or close the face",
    "silt, sand, gravel and fill under an open channel",
);

/// What is told of a stretch that a rating asks for.
pub(super) struct ToRate {
    pub(super) face: Face,
    /// The other ground of a mixed face.
    pub(super) other: Option<Face>,
    pub(super) hazards: Vec<GroundHazard>,
    /// Fill of which the file does not say what obstructs it.
    pub(super) may_obstruct: bool,
    /// Grouted before the bore.
    pub(super) grouted: bool,
}

impl ToRate {
    /// As it would be with all told that is not, at its likeliest or best, but for what is left out.
    fn known_but(&self, left_out: HangsOn) -> Self {
        let known = |face: Face| Face {
            stone: if left_out.stone { face.stone } else { face.stone.or(Some(Length::default())) },
            blows: if left_out.count { face.blows } else { Band::same(face.blows.likely) },
            treated: face.treated || !left_out.treatment,
            ..face
        };
        Self {
            face: known(self.face),
            other: self.other.map(known),
            hazards: self.hazards.clone(),
            may_obstruct: self.may_obstruct && left_out.hazards,
            ..*self
        }
    }
}

impl Resolver<'_> {
    /// Treatment of the ground, which is only of use below water, and wells not where a stream feeds ground that lets
    /// water through.
    pub(super) fn treatment(
        &mut self,
        stretch: &StretchFile,
        path: &str,
        side: Side,
        under_a_stream: bool,
    ) -> Option<Treatment> {
        let field = stretch.treatment.as_ref()?;
        let rises = stretch.hazards.iter().flatten().any(|hazard| hazard.value == GroundHazard::Artesian);
        if side == Side::Above && !rises {
            let complaint =
                ("the pipe lies above the water table here, so there is nothing to treat", "see groundwater");
            self.flaw(field, &format!("{path}.treatment"), complaint);
        }
        let classes = [Some(stretch.class.value), stretch.mixed_with.given()];
        let fed = under_a_stream && classes.into_iter().flatten().any(GroundClass::runs);
        if fed && field.value == Treatment::Dewatered {
            let word = AssumedValue::Word("not counted on".to_owned());
            self.assume_alike(path, "treatment", word, Origin::Law(&FED));
            return None;
        }
        let word = format!("{}: asserted by the file to hold while the face is open", field.value.key());
        self.assume_alike(path, "treatment", AssumedValue::Word(word), Origin::Law(&TREATED));
        Some(field.value)
    }

    /// Hazards of a stretch, with that of rock beside soil where the classes tell it.
    pub(super) fn hazards(
        &mut self,
        stretch: &StretchFile,
        path: &str,
        mixed_with: Option<GroundClass>,
    ) -> Vec<GroundHazard> {
        let mut hazards = Vec::new();
        for (index, field) in stretch.hazards.iter().flatten().enumerate() {
            if hazards.contains(&field.value) {
                self.flaw(field, &format!("{path}.hazards[{index}]"), "is given twice");
            }
            hazards.push(field.value);
        }
        if mixed_with.is_some_and(|other| other.is_rock() != stretch.class.value.is_rock())
            && !hazards.contains(&GroundHazard::MixedFaceRock)
        {
            hazards.push(GroundHazard::MixedFaceRock);
        }
        hazards
    }

    /// Ratings of the ground for a pipe: the worst stretch decides.
    pub(super) fn rated_for(
        &self,
        technique: &Technique<'_>,
        ground: &[(Stretch, ToRate)],
        pipe: &Pipe,
    ) -> Resolved<Option<Rated>> {
        let size = pipe.outside_diameter.value;
        let mut worst: Option<Rated> = None;
        for (stretch, told) in ground {
            let side = stretch.way.side(pipe.height());
            let face = Face { size, side, ..told.face };
            let other = told.other.map(|other| Face { size, side, ..other });
            let casing = self.file.service.value == Service::Casing || pipe.family == Family::Steel;
            let bare = technique.may_be_bare && casing;
            let told = ToRate { face, other, hazards: told.hazards.clone(), ..*told };
            let rated = self.rated((technique, bare), &told)?;
            let hangs_on = |way| self.hangs_on((technique, bare), &told, &rated, way);
            let hangs_on = [hangs_on(|rated| rated.jacking)?, hangs_on(|rated| rated.pullback)?];
            let rated = Rated { hangs_on, ..rated };
            worst = Some(worst.map_or(rated, |so_far| Rated {
                jacking: worse(so_far.jacking, rated.jacking),
                pullback: worse(so_far.pullback, rated.pullback),
                runs_in: so_far.runs_in || rated.runs_in,
                stones: so_far.stones.or(rated.stones),
                pullback_stones: so_far.pullback_stones.or(rated.pullback_stones),
                pilot_stops: rated.pilot_stops.or(so_far.pilot_stops),
                fill: so_far.fill || rated.fill,
                by_machine: so_far.by_machine && rated.by_machine,
                hazard: so_far.hazard.or(rated.hazard),
                rises: so_far.rises || rated.rises,
                hangs_on: [so_far.hangs_on[0].or(rated.hangs_on[0]), so_far.hangs_on[1].or(rated.hangs_on[1])],
            }));
        }
        Ok(worst)
    }

    /// Ratings of a stretch for a jacked and for a pulled pipe.
    fn rated(&self, (technique, bare): (&Technique<'_>, bool), told: &ToRate) -> Resolved<Rated> {
        let (face, other) = (&told.face, told.other.as_ref());
        let one = |column: Column| -> Resolved<Cited<Rating>> {
            let mut rating = self.suitability(face, column)?;
            if let Some(other) = other {
                rating = worse(rating, self.suitability(other, column)?);
            }
            for hazard in &told.hazards {
                rating = worse(rating, self.hazard(*hazard, column)?);
            }
            let untold = Cited::new(Rating::Depends, Origin::Law(&MAY_OBSTRUCT));
            Ok(if told.may_obstruct { worse(rating, untold) } else { rating })
        };
        let mut jacking: Option<Cited<Rating>> = None;
        let mut runs_in = false;
        for column in &technique.columns {
            let rating = one(*column)?;
            let runs = *column == Column::Guided(GuidedTechnique::OpenStem) && rating.value == Rating::Unsuitable;
            runs_in |= runs;
            // Clay in the face may bind the sand.
            let bound = runs && other.is_some_and(|other| other.class.is_clay() != face.class.is_clay());
            let rating = if bound { rating.map(|_| Rating::Depends) } else { rating };
            let drilled = *column == Column::Guided(GuidedTechnique::Drilled);
            let rating = if drilled && rating.origin == NOT_RATED.origin {
                let marginal = Cited::new(Rating::Marginal, Origin::Law(&PILOT_IN_FLUID));
                let pilot = worse(one(Column::Pullback)?, marginal);
                if technique.auger { worse(one(Column::Auger)?, pilot) } else { pilot }
            } else {
                rating
            };
            // A pilot may be cleared by vacuum as well, where the file does not tell.
            let by_vacuum = || -> Resolved<Cited<Rating>> {
                let (stem, head) = (GuidedTechnique::OpenStem, GuidedTechnique::Vacuum);
                Ok(worse(one(Column::Guided(stem))?, one(Column::Guided(head))?))
            };
            let may_be = drilled && !technique.spoil_is_told;
            let hangs = may_be && worse(by_vacuum()?, rating).value != rating.value;
            let rating = if hangs { Cited::new(Rating::Depends, Origin::Law(&UNTOLD_SPOIL)) } else { rating };
            // Nor does what is only taken for granted of the spoil, beside a pilot that is as well.
            let untold = !technique.spoil_is_told && technique.pushed != Some(true);
            let taken = untold && rating.value == Rating::Unsuitable && one(Column::Slurry)?.value != rating.value;
            let rating = if taken { Cited::new(Rating::Depends, Origin::Law(&UNTOLD_SPOIL)) } else { rating };
            jacking = Some(jacking.map_or(rating, |so_far| worse(so_far, rating)));
        }
        let rock = face.class.is_rock() || other.is_some_and(|other| other.class.is_rock());
        if technique.auger && rock {
            let auger = one(Column::Auger)?;
            // The pilot is cut by its bit; with what the rest is, the file has to say.
            let uncut = auger.value == Rating::Unsuitable && !technique.spoil_is_told;
            let auger = if uncut { Cited::new(Rating::Depends, Origin::Law(&UNCUT_ROCK)) } else { auger };
            jacking = Some(jacking.map_or(auger, |so_far| worse(auger, so_far)));
        }
        let mut jacking = jacking.unwrap_or(NOT_RATED);
        let (mut pulled, mut pilot_stops) = (one(technique.pulled)?, None);
        if let Some(is_told) = technique.pushed {
            // What is only taken for granted bars nothing: a drilled pilot may do.
            let known = |pilot: Cited<Rating>| {
                let taken = pilot.value == Rating::Unsuitable && !is_told;
                if taken { Cited::new(Rating::Depends, Origin::Law(&UNTOLD_PILOT)) } else { pilot }
            };
            let pushed = known(one(Column::Pushed)?);
            pilot_stops = Some(pushed.origin).filter(|_| pushed.value == Rating::Unsuitable);
            pulled = worse(pushed, pulled);
            if told.grouted {
                let bound = known(Cited::new(Rating::Unsuitable, Origin::Law(&PUSHED_THROUGH_GROUT)));
                (jacking, pulled) = (worse(jacking, bound), worse(pulled, bound));
            }
        }
        let takes = |columns: &[Column]| -> Resolved<Option<Ends<Length>>> {
            let mut worst: Option<Ends<Length>> = None;
            for (face, column) in [Some(face), other]
                .into_iter()
                .flatten()
                .flat_map(|face| columns.iter().map(move |column| (face, column)))
            {
                let found = self.too_large(face, *column)?;
                worst =
                    worst.into_iter().chain(found).reduce(|one, other| if other.low < one.low { other } else { one });
            }
            Ok(worst)
        };
        let (mut stones, pullback_stones) = (takes(&technique.columns)?, takes(&[technique.pulled])?);
        // What is only taken for granted of pilot and spoil bars nothing that a slurry machine takes.
        let untold = !technique.spoil_is_told && technique.pushed != Some(true);
        if stones.is_some() && untold && takes(&[Column::Slurry])?.is_none() {
            (jacking, stones) = (Cited::new(Rating::Depends, Origin::Law(&UNTOLD_SPOIL)), None);
        }
        // A casing that only an auger clears may have no pilot at all.
        if bare && jacking.value == Rating::Unsuitable && one(Column::Auger)?.value != Rating::Unsuitable {
            (jacking, stones) = (Cited::new(Rating::Depends, Origin::Law(&UNTOLD_PILOT)), None);
        }
        // Nothing but what bored for the stem makes the bore that a winch pulls a pipe into.
        if self.file.pull.as_ref().is_some_and(|pull| pull.winch.is_some() && is_dry(pull)) {
            pulled = worse(pulled, jacking);
        }
        let peat = face.class == GroundClass::Peat || other.is_some_and(|other| other.class == GroundClass::Peat);
        if peat && self.is_on_grade() {
            let lost = Cited::new(Rating::Unsuitable, Origin::Law(&SEWER_IN_PEAT));
            (jacking, pulled) = (lost, lost);
        }
        Ok(Rated {
            jacking,
            pullback: pulled,
            runs_in,
            stones,
            pullback_stones,
            pilot_stops,
            fill: told.may_obstruct,
            by_machine: one(Column::Slurry)?.value != Rating::Unsuitable,
            hazard: told.hazards.iter().copied().find(|hazard| hazard.has_remedy()),
            rises: told.hazards.contains(&GroundHazard::Artesian) && !face.treated,
            hangs_on: Default::default(),
        })
    }

    /// What of the ground a rating of a stretch hangs on: each thing without which it is not decided, were all else told;
    /// nothing where that would not decide it either.
    fn hangs_on(
        &self,
        plan: (&Technique<'_>, bool),
        told: &ToRate,
        rated: &Rated,
        way: fn(&Rated) -> Cited<Rating>,
    ) -> Resolved<HangsOn> {
        let (none, rating) = (HangsOn::default(), way(rated));
        if rating.value != Rating::Depends {
            return Ok(none);
        }
        if rating.origin == Origin::Law(&UNTOLD_SPOIL) {
            // Whatever is told of the spoil: a machine takes the most.
            let columns = vec![Column::Slurry];
            let machine = Technique { columns, spoil_is_told: true, auger: false, ..*plan.0 };
            let plan = (&machine, plan.1);
            return self.hangs_on(plan, told, &self.rated(plan, told)?, way);
        }
        let is_open = |left_out| -> Resolved<bool> {
            Ok(way(&self.rated(plan, &told.known_but(left_out))?).value == Rating::Depends)
        };
        if is_open(none)? {
            return Ok(none);
        }
        let face = &told.face;
        let blows = |face: &Face| face.blows.low < face.blows.high;
        let untold = [
            HangsOn { stone: face.stone.is_none(), ..none },
            HangsOn { count: blows(face) || told.other.as_ref().is_some_and(blows), ..none },
            HangsOn { treatment: face.side != Side::Above && !face.treated, ..none },
            HangsOn { hazards: told.may_obstruct, ..none },
        ];
        let mut hangs_on = none;
        for one in untold.into_iter().filter(|one| *one != none) {
            if is_open(one)? {
                hangs_on = hangs_on.or(one);
            }
        }
        Ok(hangs_on)
    }

    /// Whether what lies in the bore in the end is a sewer whose line has to last.
    fn is_on_grade(&self) -> bool {
        let carrier = self.file.carrier.as_ref().map(|carrier| carrier.service.value);
        [Some(self.file.service.value), carrier].contains(&Some(Service::GravitySewer))
    }
}
