//! Unit friction of a stretch, by ground, water and lubrication.

use super::earth::{Grounds, of_face};
use super::{Resolved, Resolver};
use crate::drive::{AssumedValue, Side, Sides};
use crate::handbook::{FrictionBandRow, GroundClass, HandbookError, Lubrication, OneValue, WaterSide, rising};
use crate::quantity::{Band, Pressure, Role};
use crate::source::{Equation, Origin};

/// The band of lubrication that is planned but not metered.
const NOT_METERED: Equation = Equation::judged(
    "unit friction, lubrication not metered",
    "low of metered, likely half way between none and metered, high of none (table friction_band)",
    "friction bands, lubrication planned but not metered",
    "the ground of the rows",
);

/// The band that holds two bands.
const WORSE: Equation = Equation::judged(
    "unit friction of two rows",
    "low of the lower, likely and high of the higher (table friction_band)",
    "both grounds of a mixed face, both sides of the water",
    "a place that both rows may tell of",
);

/// What rubs in a face: of one in soil and rock the soil, since rock stands round what is pushed.
pub(super) const fn soil_of((class, other): Grounds) -> Grounds {
    match other {
        Some(other) if class.is_rock() && !other.is_rock() => (other, None),
        Some(other) if other.is_rock() && !class.is_rock() => (class, None),
        other => (class, other),
    }
}

#[derive(Clone, Copy)]
pub(super) struct Friction {
    pub(super) levels: Band<Pressure>,
    pub(super) origin: Origin,
}

impl Friction {
    /// The widest band of both.
    fn or_worse(self, other: Self) -> Self {
        let levels = self.levels.or_harder(other.levels);
        let origin = if levels == self.levels {
            self.origin
        } else if levels == other.levels {
            other.origin
        } else {
            Origin::Law(&WORSE)
        };
        Self { levels, origin }
    }
}

impl Resolver<'_> {
    /// Friction on either side of the water, and the worse of both; one friction where it does not cross.
    pub(super) fn by_side(&self, face: Grounds, side: Side, lubrication: Lubrication) -> Resolved<Sides<Friction>> {
        let face = soil_of(face);
        let of = |side| of_face(face, |class| self.friction(class, side, lubrication), Friction::or_worse);
        Ok(match side {
            Side::Both => Sides { dry: of(Side::Above)?, worse: of(Side::Both)?, wet: of(Side::Below)? },
            side => Sides::same(of(side)?),
        })
    }

    /// Tells the friction that is taken, by side of the water where they differ.
    pub(super) fn assume_friction(&mut self, path: &str, what: &str, sides: &Sides<Friction>) {
        let shown = |one: Friction| AssumedValue::band(one.levels, Role::UnitFriction);
        let Sides { dry, worse, wet } = *sides;
        if dry.levels == wet.levels {
            self.assume_alike(path, what, shown(worse), worse.origin);
            return;
        }
        for (one, side) in [(dry, "above water"), (wet, "below water"), (worse, "where water stands against the pipe")]
        {
            self.assume_alike(path, &format!("{what}, {side}"), shown(one), one.origin);
        }
    }

    fn friction(&self, class: GroundClass, side: Side, lubrication: Lubrication) -> Resolved<Friction> {
        let banded = self.handbook.friction_band()?.find(|row| row.ground.value == class).is_some();
        let class = if banded { class } else { GroundClass::Unknown };
        match lubrication {
            Lubrication::NotMetered => {
                // Half way between no and metered lubrication; the worst case is that none arrives.
                let dry = self.friction(class, side, Lubrication::None)?;
                let slick = self.friction(class, side, Lubrication::Metered)?;
                if slick.levels.likely > dry.levels.likely || slick.levels.high > dry.levels.high {
                    let why = "metered lubrication leaves more friction than none";
                    return Err(HandbookError::Unfit { table: "friction_band", row: class.key().to_owned(), why });
                }
                let likely = (dry.levels.likely + slick.levels.likely) / 2.0;
                let levels = Band { low: slick.levels.low, likely, high: dry.levels.high };
                let levels = rising("friction_band", class.key(), levels)?;
                Ok(Friction { levels, origin: Origin::Law(&NOT_METERED) })
            }
            _ => match side {
                Side::Above => self.friction_row(class, WaterSide::Above, lubrication),
                Side::Below => self.friction_row(class, WaterSide::Below, lubrication),
                Side::Both => {
                    let above = self.friction_row(class, WaterSide::Above, lubrication)?;
                    let below = self.friction_row(class, WaterSide::Below, lubrication)?;
                    Ok(above.or_worse(below))
                }
            },
        }
    }

    fn friction_row(&self, class: GroundClass, water: WaterSide, lubrication: Lubrication) -> Resolved<Friction> {
        let fits = |row: &FrictionBandRow| {
            row.ground.value == class
                && row.lubrication.value == lubrication
                && (row.water.value == water || row.water.value == WaterSide::Any)
        };
        let wanted = format!("{}, {}", class.key(), lubrication.key());
        let row = self.handbook.friction_band()?.fitting(&wanted, fits)?;
        let levels = rising("friction_band", &wanted, row.value.one())?;
        Ok(Friction { levels, origin: row.origin })
    }
}
