//! Stretches of ground: that they cover the drive, and what each means for friction, tip and suitability.

use super::friction::{Friction, soil_of};
use super::line::Line;
use super::open_bore::Place;
use super::rating::ToRate;
use super::suits::Face;
use super::technique::Technique;
use super::{Resolved, Resolver};
use crate::drive::{AssumedValue, Concern, NO_BAND, NO_COUNT, Side, Sides, Stem, Stretch, Tip};
use crate::drive_file::{Over, StretchFile, SurfaceFile, WaterTable};
use crate::handbook::{GroundClass, GroundClassRow, GroundHazard, Lubrication, OneValue, TipModel, Treatment, rising};
use crate::quantity::shown::plain;
use crate::quantity::{Band, Length, Measure, Pressure, Ratio, Role, Shown};
use crate::source::{Cited, Equation};
use crate::yaml::MayBe;

/// Said of ground that nobody has told: its wide band is a figure, and decides nothing.
const NOT_TOLD: Equation = Equation::judged(
    "ground that is not told",
    "band and counts of unknown ground, which decide nothing",
    "ground of class unknown",
    "ground whose class is told, or unit_friction and spt_n",
);

/// Gaps and overlaps below this are rounding of the user's figures.
const SLACK: f64 = 0.005;

impl Resolver<'_> {
    pub(super) fn ground(
        &mut self,
        length: Length,
        line: &Line,
        (technique, stem): (&Technique<'_>, &Stem),
    ) -> Resolved<Vec<(Stretch, ToRate)>> {
        let mut stretches = Vec::new();
        let mut reached = Length::default();
        let last = self.file.ground.len().saturating_sub(1);
        if self.file.ground.is_empty() {
            self.flaw(&self.file.length, "ground", "expected at least one stretch of ground, got an empty list");
        }
        for (index, stretch) in self.file.ground.iter().enumerate() {
            let path = format!("ground[{index}]");
            let (from, to) = self.extent(stretch, &path, reached, length, index == last);
            reached = to;
            stretches.push(self.stretch(index, stretch, (from, to), line, (technique, stem))?);
        }
        Ok(stretches)
    }

    fn extent(
        &mut self,
        stretch: &StretchFile,
        path: &str,
        reached: Length,
        length: Length,
        last: bool,
    ) -> (Length, Length) {
        let system = self.system;
        let text = |length: Length| Shown::of(length, Role::Distance).display(system).to_string();
        let slack = Length::from_si(SLACK);
        if let Some(from) = stretch.from.given() {
            if from > reached + slack {
                let why = format!("leaves a gap: the ground is given up to {} only", text(reached));
                self.wrong_at(path, stretch, StretchFile::from, why);
            } else if from < reached - slack {
                let why = format!("overlaps: the ground is given up to {} already", text(reached));
                self.wrong_at(path, stretch, StretchFile::from, why);
            }
        }
        let to = match &stretch.to {
            Some(field) => {
                let to = stretch.to.given().unwrap_or_default();
                let place = format!("{path}.to");
                if to <= reached {
                    let message = format!("expected a length above {}, where the stretch begins", text(reached));
                    self.flaw(field, &place, message);
                } else if to > length + slack {
                    self.flaw_of_length(
                        field,
                        &place,
                        format!("lies beyond the drive, which is {} long", text(length)),
                    );
                } else if last && to < length - slack {
                    let message = format!(
                        "the ground ends here, {} short of the drive; stretches lie one behind the other along it",
                        text(length - to)
                    );
                    self.flaw_of_length(field, &place, message);
                }
                to
            }
            None => {
                if !last {
                    self.flaw(&stretch.class, &format!("{path}.to"), "missing: only the last stretch may leave it out");
                } else if length <= reached + slack {
                    self.flaw_of_length(&stretch.class, &format!("{path}.class"), "begins where the drive ends");
                }
                length
            }
        };
        (reached, if last { length } else { to.min(length) })
    }

    fn stretch(
        &mut self,
        index: usize,
        stretch: &StretchFile,
        (from, to): (Length, Length),
        line: &Line,
        (technique, stem): (&Technique<'_>, &Stem),
    ) -> Resolved<(Stretch, ToRate)> {
        let path = format!("ground[{index}]");
        let path = path.as_str();
        let largest = technique.largest;
        let class = stretch.class.value;
        let mixed_with = stretch.mixed_with.given();
        let water = stretch.groundwater.as_ref().unwrap_or(&self.file.groundwater);
        let way = line.way(from, to, water.value.into());
        let (side, head) = (way.side(technique.highest), way.head());
        let over = self.given(SurfaceFile::over);
        if let WaterTable::At(table) = water.value
            && !(table.si().is_finite() && (table.si() >= 0.0 || over == Some(Over::Stream)))
        {
            let place = stretch.groundwater.as_ref().map_or_else(String::new, |_| format!("{path}."));
            self.flaw(
                water,
                &format!("{place}groundwater"),
                "expected the depth below ground, zero or more but under a stream; for artesian water add `hazards: [artesian]`",
            );
        }
        let is_bed = self.file.depths.is_empty() || way.shallowest <= line.shallowest();
        let fed = over == Some(Over::Stream) && is_bed;
        let treatment = self.treatment(stretch, path, side, fed);
        let blows = self.blows(stretch, path)?;
        let model = self.tip_model(class)?;
        let strength = stretch.soil.as_ref().and_then(|soil| soil.undrained_strength.given());
        let tip = Tip { model, blows, strength: strength.filter(|_| model == TipModel::Clay) };
        // Only the class is known of the other ground of a mixed face.
        let other_tip = match mixed_with {
            Some(other) => {
                let blows = self.class_blows(other)?;
                self.assume_alike(
                    path,
                    "spt_n of mixed_with",
                    AssumedValue::band(blows.value, Role::Count),
                    blows.origin,
                );
                let model = self.tip_model(other)?;
                // The strength is told of the clay, whichever ground that is.
                let clay = model == TipModel::Clay && tip.model != TipModel::Clay;
                Some(Tip { model, blows: blows.value, strength: strength.filter(|_| clay) })
            }
            None => None,
        };
        let stone = stretch.largest_stone.given();
        // Ground that is drawn down rubs as it does above the water, or as it did below.
        let drawn_down = treatment == Some(Treatment::Dewatered);
        let by_side = |it: &Self, lubrication| -> Resolved<Sides<Friction>> {
            let sides = it.by_side((class, mixed_with), if drawn_down { Side::Both } else { side }, lubrication)?;
            Ok(if drawn_down { Sides::same(sides.worse) } else { sides })
        };
        let friction = stretch.unit_friction.as_ref();
        let given = friction.and_then(|band| self.band_at(&format!("{path}.unit_friction"), band));
        let (of_stem, pipe) = match given {
            // A friction told for a lubricated pipe says nothing of the dry stem and casing before it.
            Some(band) if self.file.lubrication.given() != Some(Lubrication::None) => {
                let stem = by_side(self, Lubrication::None)?;
                let stem = stem.map(|one| Friction { levels: one.levels.with(band, Pressure::max), ..one });
                self.assume_friction(path, "unit_friction, stem and casing, not lubricated", &stem);
                (stem.map(|one| one.levels), Sides::same(band))
            }
            Some(band) => (Sides::same(band), Sides::same(band)),
            None => {
                let stem = by_side(self, Lubrication::None)?;
                let pipe = by_side(self, self.file.lubricated())?;
                self.assume_friction(path, "unit_friction, stem and casing", &stem);
                self.about(Concern::Jacking, |it| it.assume_friction(path, "unit_friction, jacked pipe", &pipe));
                (stem.map(|one| one.levels), pipe.map(|one| one.levels))
            }
        };
        let face = Face { class, side, head, blows, stone, size: largest, treated: treatment.is_some() };
        let other = mixed_with.zip(other_tip).map(|(class, tip)| Face { class, blows: tip.blows, ..face });
        let hazards = self.hazards(stretch, path, mixed_with);
        let earth = Box::new(self.earth(stretch, path, way.shallowest - largest, (tip, other_tip))?);
        let place = Place { stretch, way: &way, earth: &earth, hazards: &hazards };
        let may_be = technique.pushed == Some(false);
        let drilled = |it: &mut Self| it.drilled(stem, path, &place, technique.drilled);
        let drilled = (technique.drilled || may_be).then(|| self.about(Concern::Stem, drilled)).transpose()?;
        let is_fill = [Some(class), mixed_with].contains(&Some(GroundClass::Fill));
        // Another hazard that is named tells nothing of what obstructs it.
        let says_none = stretch.hazards.as_ref().is_some_and(Vec::is_empty);
        let may_obstruct = is_fill && !says_none && !hazards.contains(&GroundHazard::Obstructions);
        let told = ToRate { face, other, hazards, may_obstruct, grouted: treatment == Some(Treatment::Grouted) };
        let stretch = Stretch {
            index,
            from,
            to,
            class,
            mixed_with,
            friction_given: stretch.unit_friction.is_some(),
            told_to_stand: stretch.bore_stands.given() == Some(true),
            way,
            stem_friction: of_stem,
            pipe_friction: pipe,
            drilled,
            tip,
            other_tip,
            doubt: self.doubt(stretch, mixed_with, technique)?,
            treatment,
            earth,
        };
        Ok((stretch, told))
    }

    /// Whether the sources tell friction and blow counts of the ground; the file's own do.
    fn doubt(
        &self,
        stretch: &StretchFile,
        mixed_with: Option<GroundClass>,
        technique: &Technique<'_>,
    ) -> Resolved<Option<&'static Equation>> {
        let (classes, bands) = (self.handbook.ground_class()?, self.handbook.friction_band()?);
        let counted = |class| classes.find(|row| row.ground.value == class).is_some();
        let banded = |class| bands.find(|row| row.ground.value == class).is_some();
        let class = stretch.class.value;
        // A stem may be pinched, or lie open, where soil and rock meet.
        let face = (class, mixed_with);
        let (rubs, beside) = if technique.stem { face } else { soil_of(face) };
        let friction = stretch.unit_friction.is_some() || (banded(rubs) && beside.is_none_or(banded));
        // A bit asks for no blows.
        let tip = !technique.stem
            || technique.drilled
            || ((stretch.spt_n.is_some() || counted(class)) && mixed_with.is_none_or(counted));
        let unknown = class == GroundClass::Unknown || mixed_with == Some(GroundClass::Unknown);
        let told = stretch.unit_friction.is_some() && (stretch.spt_n.is_some() || !technique.stem);
        Ok(if unknown && !told {
            Some(&NOT_TOLD)
        } else if !friction {
            Some(&NO_BAND)
        } else if !tip {
            Some(&NO_COUNT)
        } else {
            None
        })
    }

    /// The class whose rows stand in, in doubt, where no source tells those of a class.
    fn known(&self, class: GroundClass) -> Resolved<Cited<&GroundClassRow>> {
        let table = self.handbook.ground_class()?;
        let of = |class| table.find(|row| row.ground.value == class);
        of(class).or_else(|| of(GroundClass::Unknown)).ok_or_else(|| table.lacks(GroundClass::Unknown.key()))
    }

    pub(super) fn tip_model(&self, class: GroundClass) -> Resolved<TipModel> {
        Ok(self.known(class)?.value.tip.value)
    }

    /// Blow counts that the class allows.
    fn class_blows(&self, class: GroundClass) -> Resolved<Cited<Band<Ratio>>> {
        let row = self.known(class)?;
        Ok(Cited::new(rising("ground_class", row.value.ground.value.key(), row.value.one())?, row.origin))
    }

    fn blows(&mut self, stretch: &StretchFile, path: &str) -> Resolved<Band<Ratio>> {
        let class = stretch.class.value;
        let of_class = self.class_blows(class)?;
        let Some(n) = stretch.spt_n.given() else {
            self.assume_alike(path, "spt_n", AssumedValue::band(of_class.value, Role::Count), of_class.origin);
            return Ok(of_class.value);
        };
        // The densest classes are open at the top: refusal is the matter of the suitability table.
        let rows = &self.handbook.ground_class()?.rows;
        let top = rows.iter().map(|row| row.value.n_high.value).fold(Ratio::default(), Ratio::max);
        let (low, high) = (of_class.value.low, of_class.value.high);
        // No other class is that of gravel which is loose: what it resists is no less than that of the class.
        if class == GroundClass::Gravel && n < low {
            return Ok(Band { low: n, likely: low, high: low });
        }
        if n < low || (n > high && high < top) {
            let [blows, low, high] = [n, low, high].map(|n| plain(n.si()));
            let message = format!("{blows} blows are not those of {}, which has {low} to {high}", class.key());
            let why = (message, "name the class that the blow count belongs to");
            self.wrong_at(path, stretch, StretchFile::spt_n, why);
        }
        Ok(Band::same(n))
    }
}
