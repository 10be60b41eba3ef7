//! How the ground of a stretch rates for the technique that the file plans, and what hazards and treatment change.

use super::rating::{Face, NOT_RATED, TREATED, stones, worse};
use super::technique::{Column, Technique};
use super::{Resolved, Resolver};
use crate::drive::{
    AssumedValue, Ends, PILOT_IN_FLUID, Pipe, Rated, Side, Stretch, UNCUT_ROCK, UNTOLD_PILOT, UNTOLD_SPOIL,
};
use crate::drive_file::StretchFile;
use crate::handbook::{GroundClass, GroundHazard, GuidedTechnique, Rating, Treatment};
use crate::quantity::Length;
use crate::source::{Cited, Equation, Origin};

/// Said of fill where the file does not tell its hazards.
const MAY_OBSTRUCT: Equation = Equation::judged(
    "fill",
    "not decided",
    "fill may hold anything: rated once the file says that nothing obstructs it, or what does",
    "fill of which the file tells no hazards",
);

/// What is told of a stretch that a rating asks for.
pub(super) struct ToRate {
    pub(super) face: Face,
    /// The other ground of a mixed face.
    pub(super) other: Option<Face>,
    pub(super) hazards: Vec<GroundHazard>,
    /// Fill of which the file does not say what obstructs it.
    pub(super) may_obstruct: bool,
}

impl Resolver<'_> {
    /// Treatment of the ground, which is only of use below water.
    pub(super) fn treatment(&mut self, stretch: &StretchFile, path: &str, side: Side) -> Option<Treatment> {
        let field = stretch.treatment.as_ref()?;
        if side == Side::Above {
            let complaint =
                ("the pipe lies above the water table here, so there is nothing to treat", "see groundwater");
            self.flaw(field, &format!("{path}.treatment"), complaint);
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
            let rated = self.rated(technique, &face, other.as_ref(), told)?;
            worst = Some(worst.map_or(rated, |so_far| Rated {
                jacking: worse(so_far.jacking, rated.jacking),
                pullback: worse(so_far.pullback, rated.pullback),
                runs_in: so_far.runs_in || rated.runs_in,
                stones: so_far.stones.or(rated.stones),
                pullback_stones: so_far.pullback_stones.or(rated.pullback_stones),
                fill: so_far.fill || rated.fill,
            }));
        }
        Ok(worst)
    }

    /// Ratings of a stretch for a jacked and for a pulled pipe.
    fn rated(&self, technique: &Technique, face: &Face, other: Option<&Face>, told: &ToRate) -> Resolved<Rated> {
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
            let by_vacuum =
                worse(one(Column::Guided(GuidedTechnique::OpenStem))?, one(Column::Guided(GuidedTechnique::Vacuum))?);
            let hangs = drilled && !technique.spoil_is_told && worse(by_vacuum, rating).value != rating.value;
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
            let uncut = auger.value == Rating::Unsuitable;
            let auger = if uncut { Cited::new(Rating::Depends, Origin::Law(&UNCUT_ROCK)) } else { auger };
            jacking = Some(jacking.map_or(auger, |so_far| worse(auger, so_far)));
        }
        let mut pulled = one(technique.pulled)?;
        if let Some(told) = technique.pushed {
            let pilot = one(Column::Pushed)?;
            // What is only taken for granted bars nothing: a drilled pilot may do.
            let taken = pilot.value == Rating::Unsuitable && !told;
            let pilot = if taken { Cited::new(Rating::Depends, Origin::Law(&UNTOLD_PILOT)) } else { pilot };
            pulled = worse(pilot, pulled);
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
        let (stones, pullback_stones) = (takes(&technique.columns)?, takes(&[technique.pulled])?);
        Ok(Rated {
            jacking: jacking.unwrap_or(NOT_RATED),
            pullback: pulled,
            runs_in,
            stones,
            pullback_stones,
            fill: told.may_obstruct,
        })
    }

    /// The largest stone that would do, and that of the file, where a smaller one would.
    pub(super) fn too_large(&self, face: &Face, column: Column) -> Resolved<Option<Ends<Length>>> {
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
