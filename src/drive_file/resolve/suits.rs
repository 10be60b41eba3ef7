//! What the columns of the tables say of one ground, as far as it is known.

use super::technique::Column;
use super::{Resolved, Resolver};
use crate::drive::{Ends, Side};
use crate::handbook::{GroundClass, GroundHazard, GuidedTechnique, Rating, SuitabilityRow, TipModel, WaterSide};
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
            if rating.value.severity() < best.severity() {
                best = rating.value;
            }
            if worst.is_none_or(|worst| rating.value.severity() > worst.value.severity()) {
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
                && row.stone_to.given().is_none_or(|to| face.stone.is_some_and(|stone| stone <= to))
        });
        Ok(row.map_or(NOT_RATED, |row| row.map(|row| row.rating.value)))
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

/// No table rates it.
pub(super) const NOT_RATED: Cited<Rating> = Cited::new(Rating::Depends, Origin::Law(&NO_RATING));

/// The worse of two ratings, the second where they are alike.
pub(super) const fn worse(one: Cited<Rating>, other: Cited<Rating>) -> Cited<Rating> {
    if other.value.severity() >= one.value.severity() { other } else { one }
}
