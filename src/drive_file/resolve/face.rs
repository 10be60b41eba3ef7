//! Resistance at an enlarging head, by the way soil leaves it.

use super::take::advised;
use super::{Resolver, no_row};
use crate::drive::{AssumedValue, FaceIndex, FaceResistance};
use crate::drive_file::DriveFile;
use crate::handbook::{FaceRuleRow, Handbook, HandbookError, Spoil, rising};
use crate::quantity::{Band, LineLoad, Measure, Pressure, Ratio, Role, Shown};
use crate::source::{Cited, Origin};

/// Resistance at an enlarging head, with a row of the table `face`.
pub(super) fn face_row(handbook: &Handbook, spoil: Spoil) -> Result<(FaceResistance, Origin), HandbookError> {
    let row = handbook.face()?.find(|row| row.spoil.value == spoil).ok_or_else(|| no_row("face", spoil.key()))?;
    let values = row.value;
    let pressure = Band { low: values.low.value, likely: values.likely.value, high: values.high.value };
    let least = Band { low: values.least_low.value, likely: values.least_likely.value, high: values.least_high.value };
    let pressure = rising("face", spoil.key(), pressure)?;
    let least = rising("face", spoil.key(), least)?;
    Ok((FaceResistance::Table { pressure, least }, row.origin))
}

/// One column of a row of the table `face_rule`.
fn rule<Q: Measure>(
    handbook: &Handbook,
    key: &str,
    column: impl Fn(&FaceRuleRow) -> Option<Q>,
) -> Result<Cited<Q>, HandbookError> {
    let row = handbook.face_rule()?.row(key)?;
    let value = column(row.value).ok_or_else(|| no_row("face_rule", key))?;
    if !(value.si() >= 0.0) {
        return Err(HandbookError::Unfit { table: "face_rule", row: key.to_owned(), why: "is negative" });
    }
    Ok(Cited::new(value, row.origin))
}

impl Resolver<'_> {
    pub(super) fn face(&mut self, file: &DriveFile) -> Result<FaceResistance, HandbookError> {
        let spoil = file.spoil.as_ref().map(|field| field.value);
        if let (Some(field), true) = (&file.cutting_edge, spoil != Some(Spoil::OpenEdge) || file.face.is_some()) {
            self.flaw(field, "cutting_edge", "is for `spoil: open_edge` without `face`");
        }
        if let Some(face) = self.band("", file, DriveFile::face) {
            return Ok(FaceResistance::Given(face));
        }
        match spoil {
            Some(Spoil::Slurry) => self.slurry(),
            Some(Spoil::OpenEdge) => self.open_edge(file),
            spoil => {
                let (resistance, origin) = face_row(self.handbook, spoil.unwrap_or(Spoil::Auger))?;
                if spoil.is_none() {
                    self.assume("spoil", AssumedValue::Word(Spoil::Auger.key().to_owned()), origin);
                }
                self.assume_face("face", resistance, origin);
                Ok(resistance)
            }
        }
    }

    fn slurry(&mut self) -> Result<FaceResistance, HandbookError> {
        let column = |row: &FaceRuleRow| row.per_blow.as_ref().map(|field| field.value);
        let per_blow: Cited<Pressure> = rule(self.handbook, "japan_slurry_soil", column)?;
        let column = |row: &FaceRuleRow| row.blows_most.as_ref().map(|field| field.value);
        let most: Cited<Ratio> = rule(self.handbook, "japan_slurry_soil", column)?;
        let column = |row: &FaceRuleRow| row.high.as_ref().map(|field| field.value);
        let over_water: Cited<Pressure> = rule(self.handbook, "japan_slurry_water", column)?;
        self.assume_one("face: earth pressure per blow", per_blow, Role::UnitFriction);
        self.assume_one("face: blow count beyond which it does not grow", most, Role::Count);
        self.assume_one("face: slurry over water", over_water, Role::UnitFriction);
        Ok(FaceResistance::Slurry {
            pressure_per_blow: per_blow.value,
            blows_most: most.value,
            slurry_over_water: over_water.value,
        })
    }

    fn open_edge(&mut self, file: &DriveFile) -> Result<FaceResistance, HandbookError> {
        let thickness = self.number("", file, DriveFile::cutting_edge).unwrap_or_else(|| {
            if let Some(spoil) = &file.spoil {
                let why = advised("the thickness of the edge that cuts is missing", "add `cutting_edge: 20 mm`");
                self.flaw(spoil, "cutting_edge", why);
            }
            Measure::from_si(0.0)
        });
        let column = |row: &FaceRuleRow| row.high.as_ref().map(|field| field.value);
        let pressure: Cited<Pressure> = rule(self.handbook, "china_ring", column)?;
        let column = |row: &FaceRuleRow| row.line.as_ref().map(|field| field.value);
        let line_load: Cited<LineLoad> = rule(self.handbook, "japan_open_ordinary", column)?;
        let index = |key| rule(self.handbook, key, |row| row.index.as_ref().map(|field| field.value));
        let index = FaceIndex {
            ordinary: index("japan_open_ordinary")?.value,
            sand: index("japan_open_sand")?.value,
            hard: index("japan_open_hard")?.value,
        };
        self.assume_one("face: pressure under the edge", pressure, Role::UnitFriction);
        self.assume_one("face: force per length of the rim, times an index of the ground", line_load, Role::LineWeight);
        Ok(FaceResistance::CuttingEdge { pressure: pressure.value, thickness, line_load: line_load.value, index })
    }

    /// Both halves of a resistance at a head.
    pub(super) fn assume_face(&mut self, field: &str, resistance: FaceResistance, origin: Origin) {
        if let FaceResistance::Table { pressure, least } = resistance {
            let shown = pressure.map(|level| Shown::of(level, Role::UnitFriction));
            self.assume(format!("{field}: pressure on the cut ring"), AssumedValue::Band(shown), origin);
            let shown = least.map(|level| Shown::of(level, Role::Thrust));
            self.assume(format!("{field}: least force"), AssumedValue::Band(shown), origin);
        }
    }
}
