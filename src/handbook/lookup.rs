//! Single values by key, from the tables of values by use, and bands that rise.

use super::{
    FrictionBandRow, GroundClassRow, Handbook, HandbookError, LineLoadLevelsRow, RatioLevelsRow, RatioSpanRow,
    SchemeFactorRow, StageShiftsRow, Table,
};
use crate::quantity::{Angle, Band, Force, Length, LineLoad, Measure, Pressure, Ratio, Time};
use crate::source::Cited;
use crate::yaml::Field;

/// Declares the lookups of single values, each in its table.
macro_rules! lookups {
    ($($(#[$doc:meta])+ $name:ident: $quantity:ident in $table:ident;)+) => {
        impl Handbook {
            $(
                $(#[$doc])+
                ///
                /// # Errors
                /// If the table is malformed or has no such row.
                pub fn $name(&self, key: &str) -> Result<Cited<$quantity>, HandbookError> {
                    one(self.$table()?, key)
                }
            )+
        }
    };
}

lookups! {
    /// One ratio from `practice_ratio`.
    ratio: Ratio in practice_ratio;
    /// One pressure from `practice_pressure`.
    pressure: Pressure in practice_pressure;
    /// One length from `practice_length`.
    length: Length in practice_length;
    /// One force from `practice_force`.
    force: Force in practice_force;
    /// One duration from `practice_duration`.
    duration: Time in practice_duration;
    /// One angle from `practice_angle`.
    angle: Angle in practice_angle;
}

impl Handbook {
    /// Low, likely and high ratio from `practice_ratio`; the origin is that of the high one.
    pub(crate) fn ratios(&self, keys: [&'static str; 3]) -> Result<Cited<Band<Ratio>>, HandbookError> {
        three(self.practice_ratio()?, keys)
    }

    /// Low, likely and high pressure from `practice_pressure`; the origin is that of the high one.
    pub(crate) fn pressures(&self, keys: [&'static str; 3]) -> Result<Cited<Band<Pressure>>, HandbookError> {
        three(self.practice_pressure()?, keys)
    }
}

fn three<Q: Measure + PartialOrd>(
    table: &Table<Field<Q>>,
    [low, likely, high]: [&'static str; 3],
) -> Result<Cited<Band<Q>>, HandbookError> {
    let last = one(table, high)?;
    let band = Band { low: one(table, low)?.value, likely: one(table, likely)?.value, high: last.value };
    let mut rows = vec![low, likely, high];
    rows.dedup();
    Ok(Cited::new(rising(table.id, &rows.join(", "), band)?, last.origin))
}

fn one<Q: Measure>(table: &Table<Field<Q>>, key: &str) -> Result<Cited<Q>, HandbookError> {
    let value = table.value(key)?;
    table.holds(value.value.si() >= 0.0, key, "is below zero")?;
    Ok(value)
}

/// A row that tells one value.
pub(crate) trait OneValue {
    type Value: Copy;
    fn one(&self) -> Self::Value;
}

impl<Q: Measure> OneValue for Field<Q> {
    type Value = Q;
    fn one(&self) -> Q {
        self.value
    }
}

impl OneValue for SchemeFactorRow {
    type Value = Ratio;

    fn one(&self) -> Ratio {
        self.factor.value
    }
}

/// Rows of low, likely and high.
macro_rules! levels {
    ($($row:ident: $quantity:ident of $low:ident, $likely:ident, $high:ident;)+) => {$(
        impl OneValue for $row {
            type Value = Band<$quantity>;

            fn one(&self) -> Band<$quantity> {
                Band { low: self.$low.value, likely: self.$likely.value, high: self.$high.value }
            }
        }
    )+};
}

levels! {
    RatioLevelsRow: Ratio of low, likely, high;
    LineLoadLevelsRow: LineLoad of low, likely, high;
    StageShiftsRow: Ratio of low, likely, high;
    FrictionBandRow: Pressure of low, likely, high;
    GroundClassRow: Ratio of n_low, n_likely, n_high;
}

impl<V> Table<V> {
    /// The low, likely and high of the row with a key that the code looks for, refused where they do not rise.
    pub(crate) fn levels<Q: Measure + PartialOrd>(&self, key: &str) -> Result<Cited<Band<Q>>, HandbookError>
    where
        V: OneValue<Value = Band<Q>>,
    {
        let row = self.value(key)?;
        Ok(Cited::new(rising(self.id, key, row.value)?, row.origin))
    }

    /// That a row makes sense, else why not.
    pub(crate) fn holds(&self, makes_sense: bool, row: &str, why: &'static str) -> Result<(), HandbookError> {
        let unfit = || HandbookError::Unfit { table: self.id, row: row.to_owned(), why };
        makes_sense.then_some(()).ok_or_else(unfit)
    }

    /// That it has no such row.
    pub(crate) fn lacks(&self, wanted: &str) -> HandbookError {
        HandbookError::NoRow { table: self.id, wanted: wanted.to_owned() }
    }

    /// The row with a key that the code looks for.
    pub(crate) fn row(&self, key: &str) -> Result<Cited<&V>, HandbookError> {
        self.get(key).ok_or_else(|| self.lacks(key))
    }

    /// The row that fits, which there must be; `wanted` tells what was looked for.
    pub(crate) fn fitting(&self, wanted: &str, fits: impl FnMut(&V) -> bool) -> Result<Cited<&V>, HandbookError> {
        self.find(fits).ok_or_else(|| self.lacks(wanted))
    }

    /// The value of the row with a key that the code looks for.
    pub(crate) fn value(&self, key: &str) -> Result<Cited<V::Value>, HandbookError>
    where
        V: OneValue,
    {
        Ok(self.row(key)?.map(V::one))
    }

    /// A column that the row with a key must have, not below zero.
    pub(crate) fn cell<Q: Measure>(
        &self,
        key: &str,
        column: impl Fn(&V) -> &Option<Field<Q>>,
    ) -> Result<Cited<Q>, HandbookError> {
        let row = self.row(key)?;
        let field = column(row.value).as_ref();
        let field = field.ok_or_else(|| self.lacks(key))?;
        self.holds(field.value.si() >= 0.0, key, "is below zero")?;
        Ok(Cited::new(field.value, row.origin))
    }

    /// The same, above zero.
    pub(crate) fn factor<Q: Measure>(
        &self,
        key: &str,
        column: impl Fn(&V) -> &Option<Field<Q>>,
    ) -> Result<Cited<Q>, HandbookError> {
        let factor = self.cell(key, column)?;
        self.holds(factor.value.si() > 0.0, key, "is not above zero")?;
        Ok(factor)
    }
}

impl Table<RatioSpanRow> {
    /// Both ends of a span, which rise; the origin is that of the row.
    pub(crate) fn span(&self, key: &str) -> Result<(Ratio, Cited<Ratio>), HandbookError> {
        let (low, high) = (self.cell(key, |row| &row.low)?, self.cell(key, |row| &row.high)?);
        self.holds(low.value <= high.value, key, "low and high do not rise")?;
        Ok((low.value, high))
    }
}

/// A band out of a table, refused where it falls or begins below zero. `row` says which it is.
pub(crate) fn rising<Q: Measure + PartialOrd>(
    table: &'static str,
    row: &str,
    band: Band<Q>,
) -> Result<Band<Q>, HandbookError> {
    if band.low.si() >= 0.0 && band.low <= band.likely && band.likely <= band.high {
        return Ok(band);
    }
    Err(HandbookError::Unfit { table, row: row.to_owned(), why: "low, likely and high do not rise" })
}
