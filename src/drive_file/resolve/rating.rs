//! How the columns of the tables rate the ground of a drive, as far as it is known.

use super::technique::{Column, Technique};
use super::{Resolved, Resolver};
use crate::drive::{
    AssumedValue, Ends, HangsOn, PILOT_IN_FLUID, PUSHED_THROUGH_GROUT, Pipe, Rated, SEWER_IN_PEAT, Side, Stretch,
    UNCUT_ROCK, UNTOLD_PILOT, UNTOLD_SPOIL,
};
use crate::drive_file::StretchFile;
use crate::handbook::{
    Family, GroundClass, GroundHazard, GuidedTechnique, Rating, Service, SuitabilityRow, TipModel, Treatment, WaterSide,
};
use crate::quantity::{Band, Length, Ratio};
use crate::source::{Cited, Equation, Origin};
use crate::yaml::MayBe;

/// Said of a technique that no table rates in this ground.
const NO_RATING: Equation = Equation::judged(
    "ground suitability",
    "not decided",
    "no rating of this technique in this ground was found",
    "ground and technique with a cell in the tables of suitability",
);

/// Said of ground that is treated against water.
pub(super) const TREATED: Equation = Equation::judged(
    "ground treated against water",
    "rated as above water, marginal at best",
    "treatment named in the file; that it works over the whole drive is the file's word",
    "treatment in place while the face is open",
);

/// A quotient of round figures may come out this much too small.
const ROUNDING: f64 = 1.0 + 1e-9;

/// What is known of the ground of a stretch, for a pipe.
#[derive(Debug, Clone, Copy)]
pub(super) struct Face {
    pub(super) class: GroundClass,
    pub(super) side: Side,
    pub(super) head: Length,
    pub(super) blows: Band<Ratio>,
    pub(super) stone: Option<Length>,
    /// Outside diameter of the pipe.
    pub(super) size: Length,
    pub(super) treated: bool,
}

impl Face {
    /// Whether a row of its class may be the one for this ground above or below water, as far as is known, where the plant takes stones
    /// up to this by its bore.
    fn may_be(&self, water: WaterSide, row: &SuitabilityRow, takes: Option<Length>) -> bool {
        let side = row.water.value == WaterSide::Any || row.water.value == water;
        let head = water == WaterSide::Above
            || (row.head_over.given().is_none_or(|over| self.head > over)
                && row.head_to.given().is_none_or(|to| self.head <= to));
        // A count that is not given may be any of the class.
        let blows = row.n_from.given().is_none_or(|from| self.blows.high >= from)
            && row.n_below.given().is_none_or(|below| self.blows.low < below);
        let (over, to) = stones(row, takes);
        let stone =
            self.stone.is_none_or(|stone| over.is_none_or(|over| stone > over) && to.is_none_or(|to| stone <= to));
        let size = row.od_from.given().is_none_or(|from| self.size >= from)
            && row.od_below.given().is_none_or(|below| self.size < below);
        side && head && blows && stone && size
    }
}

/// Stones of a row, over the first and up to the second, where the plant takes stones up to this by its bore: then the
/// bore, and no fixed size, parts cobbles from boulders.
pub(super) fn stones(row: &SuitabilityRow, takes: Option<Length>) -> (Option<Length>, Option<Length>) {
    let [over, to] = [&row.stone_over, &row.stone_to].map(|field| field.as_ref().map(|field| field.value));
    match (over, to, takes) {
        (None, Some(to), Some(takes)) => (None, Some(to.min(takes))),
        (Some(over), Some(_), Some(takes)) => (Some(over), Some(takes.max(over))),
        (Some(_), None, Some(takes)) => (Some(takes), None),
        bounds => (bounds.0, bounds.1),
    }
}

impl Resolver<'_> {
    /// The largest stone that the plant of a column takes by its bore.
    pub(super) fn takes(&self, face: &Face, column: Column) -> Resolved<Option<Cited<Length>>> {
        let bores = self.handbook.ratio("ground.bore_over_stone")?;
        // Round inches are within.
        Ok(column.takes_by_bore().then(|| bores.map(|bores| face.size / bores * ROUNDING)))
    }

    pub(super) fn hazard(&self, hazard: GroundHazard, column: Column) -> Resolved<Cited<Rating>> {
        let row = self.handbook.ground_hazard()?.fitting(hazard.key(), |row| row.hazard.value == hazard)?;
        Ok(column.of_hazard(row.value).map_or(NOT_RATED, |rating| Cited::new(rating, row.origin)))
    }

    /// The worst rating of the wet and the dry end, each as far as is known.
    pub(super) fn suitability(&self, face: &Face, column: Column) -> Resolved<Cited<Rating>> {
        let dry = || self.suitability_at(face, WaterSide::Above, column);
        let wet = || -> Resolved<Cited<Rating>> {
            if face.treated && column.is_open() {
                let marginal = Cited::new(Rating::Marginal, Origin::Law(&TREATED));
                return Ok(worse(marginal, dry()?));
            }
            self.suitability_at(face, WaterSide::Below, column)
        };
        match face.side {
            Side::Above => dry(),
            Side::Below => wet(),
            Side::Both => Ok(worse(dry()?, wet()?)),
        }
    }

    /// The worst rating that what is known allows; *depends* where what is not known decides between unsuitable
    /// and better.
    fn suitability_at(&self, face: &Face, water: WaterSide, column: Column) -> Resolved<Cited<Rating>> {
        if column == Column::Pushed {
            return self.pushed(face);
        }
        if let Column::Guided(technique) = column {
            return self.guided(face, water, technique);
        }
        let mut worst: Option<Cited<Rating>> = None;
        let mut best = Rating::Unsuitable;
        let takes = self.takes(face, column)?;
        let table = self.handbook.ground_suitability()?;
        for row in table.iter() {
            let values = &row.value.value;
            // Of a table of hundreds of rows the class leaves a few.
            if values.ground.value != face.class || !face.may_be(water, values, takes.map(|takes| takes.value)) {
                continue;
            }
            let rating = column.of_ground(values).map_or(NOT_RATED, |rating| Cited::new(rating, row.origin));
            // Stones beyond those of the row, which the bore alone takes.
            let beyond = face.stone.zip(values.stone_to.given()).is_some_and(|(stone, to)| stone > to);
            let rating = match takes.filter(|_| beyond) {
                Some(takes) => worse(rating, takes.map(|_| Rating::Marginal)),
                None => rating,
            };
            if severity(rating.value) < severity(best) {
                best = rating.value;
            }
            if worst.is_none_or(|worst| severity(rating.value) > severity(worst.value)) {
                worst = Some(rating);
            }
        }
        let worst = worst.ok_or_else(|| table.lacks(face.class.key()))?;
        let open = worst.value == Rating::Unsuitable && best != Rating::Unsuitable;
        Ok(if open { worst.map(|_| Rating::Depends) } else { worst })
    }

    /// Whether a pilot can be pushed through the ground, by its blows: easily, at all, or not.
    fn pushed(&self, face: &Face) -> Resolved<Cited<Rating>> {
        Ok(self.pushed_to(face.class)?.map(|(easy, most)| {
            if face.class.is_rock() || face.blows.low > most {
                Rating::Unsuitable
            } else if face.blows.high > most {
                Rating::Depends
            } else if face.blows.high > easy {
                Rating::Marginal
            } else {
                Rating::Suitable
            }
        }))
    }

    /// Blows that a pilot is pushed through with ease, and at all.
    pub(super) fn pushed_to(&self, class: GroundClass) -> Resolved<Cited<(Ratio, Ratio)>> {
        let table = self.handbook.pilot_cone()?;
        let key = match self.tip_model(class)? {
            TipModel::Clay => "clay_refusal",
            TipModel::Sand => "sand_refusal",
        };
        let easy = table.cell(key, |row| &row.blows_comfortable)?.value;
        Ok(table.cell(key, |row| &row.blows_most)?.map(|most| (easy, most)))
    }

    /// A rating of a sparse table holds only where the whole of what the ground may be lies in its row.
    fn guided(&self, face: &Face, water: WaterSide, technique: GuidedTechnique) -> Resolved<Cited<Rating>> {
        let row = self.handbook.guided_suitability()?.find(|row| {
            row.technique.value == technique
                && row.ground.value == face.class
                && (row.water.value == WaterSide::Any || row.water.value == water)
                && row.n_from.given().is_none_or(|from| face.blows.low >= from)
                && row.n_below.given().is_none_or(|below| face.blows.high < below)
                // Stones of fine ground that nobody tells are taken to be no larger than its rows allow: 50 mm.
                && row.stone_to.given().is_none_or(|to| face.stone.map_or(face.class.is_fine(), |stone| stone <= to))
        });
        Ok(row.map_or(NOT_RATED, |row| row.map(|row| row.rating.value)))
    }
}

/// No table rates it.
pub(super) const NOT_RATED: Cited<Rating> = Cited::new(Rating::Depends, Origin::Law(&NO_RATING));

/// Order of ratings from good to bad.
const fn severity(rating: Rating) -> u8 {
    match rating {
        Rating::Suitable => 0,
        Rating::Marginal => 1,
        Rating::Depends => 2,
        Rating::Unsuitable => 3,
    }
}

/// The worse of two ratings, the second where they are alike.
pub(super) const fn worse(one: Cited<Rating>, other: Cited<Rating>) -> Cited<Rating> {
    if severity(other.value) >= severity(one.value) { other } else { one }
}

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
        technique: &Technique,
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
            let hangs_on = self.hangs_on((technique, bare), &told, &rated)?;
            let rated = Rated { hangs_on, ..rated };
            worst = Some(worst.map_or(rated, |so_far| Rated {
                jacking: worse(so_far.jacking, rated.jacking),
                pullback: worse(so_far.pullback, rated.pullback),
                runs_in: so_far.runs_in || rated.runs_in,
                stones: so_far.stones.or(rated.stones),
                pullback_stones: so_far.pullback_stones.or(rated.pullback_stones),
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
    fn rated(&self, (technique, bare): (&Technique, bool), told: &ToRate) -> Resolved<Rated> {
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
        let mut pulled = one(technique.pulled)?;
        if let Some(is_told) = technique.pushed {
            // What is only taken for granted bars nothing: a drilled pilot may do.
            let known = |pilot: Cited<Rating>| {
                let taken = pilot.value == Rating::Unsuitable && !is_told;
                if taken { Cited::new(Rating::Depends, Origin::Law(&UNTOLD_PILOT)) } else { pilot }
            };
            pulled = worse(known(one(Column::Pushed)?), pulled);
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
        // A casing that only an auger clears may have no pilot at all.
        if bare && jacking.value == Rating::Unsuitable && one(Column::Auger)?.value != Rating::Unsuitable {
            (jacking, stones) = (Cited::new(Rating::Depends, Origin::Law(&UNTOLD_PILOT)), None);
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
            fill: told.may_obstruct,
            by_machine: one(Column::Slurry)?.value != Rating::Unsuitable,
            hazard: told.hazards.iter().copied().find(|hazard| hazard.has_remedy()),
            rises: told.hazards.contains(&GroundHazard::Artesian) && !face.treated,
            hangs_on: Default::default(),
        })
    }

    /// What of the ground the ratings of a stretch hang on: each thing without which they are not decided, were all else told;
    /// nothing where that would not decide them either.
    fn hangs_on(&self, plan: (&Technique, bool), told: &ToRate, rated: &Rated) -> Resolved<[HangsOn; 2]> {
        let open = |rated: &Rated| [rated.jacking, rated.pullback].map(|one| one.value == Rating::Depends);
        let is_open = open(rated);
        let none = HangsOn::default();
        let mut hangs_on = [none; 2];
        if is_open == [false; 2] {
            return Ok(hangs_on);
        }
        let face = &told.face;
        let faces = || [Some(face), told.other.as_ref()].into_iter().flatten();
        let untold = [
            HangsOn { stone: face.stone.is_none(), ..none },
            HangsOn { count: faces().any(|face| face.blows.low < face.blows.high), ..none },
            HangsOn { treatment: face.side != Side::Above && !face.treated, ..none },
            HangsOn { hazards: told.may_obstruct, ..none },
        ];
        if rated.jacking.origin == Origin::Law(&UNTOLD_SPOIL) {
            // Whatever is told of the spoil: a machine takes the most.
            let columns = vec![Column::Slurry];
            let machine = Technique { columns, words: String::new(), spoil_is_told: true, auger: false, ..*plan.0 };
            let plan = (&machine, plan.1);
            let [of_machine, _] = self.hangs_on(plan, told, &self.rated(plan, told)?)?;
            hangs_on[0] = of_machine;
            return Ok(hangs_on);
        }
        let known = |left_out: HangsOn| Ok(open(&self.rated(plan, &told.known_but(left_out))?));
        let all = known(none)?;
        for one in untold.into_iter().filter(|one| *one != none) {
            let sides = hangs_on.iter_mut().zip(is_open).zip(all).zip(known(one)?);
            for (((hangs_on, _), _), _) in sides.filter(|(((_, is_open), all), open)| *is_open && !all && *open) {
                *hangs_on = hangs_on.or(one);
            }
        }
        Ok(hangs_on)
    }

    /// Whether what lies in the bore in the end is a sewer whose line has to last.
    fn is_on_grade(&self) -> bool {
        let carrier = self.file.carrier.as_ref().map(|carrier| carrier.service.value);
        [Some(self.file.service.value), carrier].contains(&Some(Service::GravitySewer))
    }

    /// The largest stone that would do, and that of the file, where a smaller one would.
    fn too_large(&self, face: &Face, column: Column) -> Resolved<Option<Ends<Length>>> {
        let Some(stone) = face.stone.filter(|_| !matches!(column, Column::Pushed | Column::Guided(_))) else {
            return Ok(None);
        };
        let does = |stone: Length| -> Resolved<bool> {
            let rating = self.suitability(&Face { stone: Some(stone), ..*face }, column)?;
            Ok(rating.value != Rating::Unsuitable)
        };
        if does(stone)? {
            return Ok(None);
        }
        let takes = self.takes(face, column)?.map(|takes| takes.value);
        let mut most: Option<Length> = None;
        for row in self.handbook.ground_suitability()?.iter() {
            let (_, to) = stones(&row.value.value, takes);
            let Some(to) = to.filter(|to| row.value.value.ground.value == face.class && *to < stone) else { continue };
            if does(to)? {
                most = Some(most.map_or(to, |most| most.max(to)));
            }
        }
        Ok(most.map(|most| Ends { low: most, high: stone }))
    }
}
