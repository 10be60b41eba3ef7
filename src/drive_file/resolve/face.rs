//! Resistance at an enlarging head, by the way soil leaves it.

use super::{Resolved, Resolver};
use crate::drive::{FaceIndex, FaceResistance};
use crate::drive_file::DriveFile;
use crate::handbook::{Handbook, HandbookError, Head, Spoil, TechniqueRow, rising};
use crate::quantity::{Band, Role};
use crate::source::Origin;

/// Resistance at an enlarging head, with a row of the table `face`.
pub(super) fn face_row(handbook: &Handbook, head: Head) -> Resolved<(FaceResistance, Origin)> {
    let row = handbook.face()?.row(head.key())?;
    let values = row.value;
    let pressure = Band { low: values.low.value, likely: values.likely.value, high: values.high.value };
    let least = Band { low: values.least_low.value, likely: values.least_likely.value, high: values.least_high.value };
    let pressure = rising("face", head.key(), pressure)?;
    let least = rising("face", head.key(), least)?;
    Ok((FaceResistance::Table { pressure, least }, row.origin))
}

impl Resolver<'_> {
    pub(super) fn face(&mut self, technique: &TechniqueRow) -> Resolved<FaceResistance> {
        if let Some(face) = self.band(DriveFile::face) {
            return Ok(FaceResistance::Given(face));
        }
        match technique.face.value {
            Head::Slurry => self.slurry(),
            Head::Edge => self.open_edge(),
            head => {
                let (resistance, origin) = face_row(self.handbook, head)?;
                if self.file.spoil.is_none() {
                    self.assume_word("spoil", Spoil::Auger.key(), origin);
                }
                self.assume_face("face", resistance, origin);
                Ok(resistance)
            }
        }
    }

    fn slurry(&mut self) -> Resolved<FaceResistance> {
        let table = self.handbook.face_rule()?;
        let per_blow = table.cell("japan_slurry_soil", |row| &row.per_blow)?;
        let most = table.cell("japan_slurry_soil", |row| &row.blows_most)?;
        let over_water = table.cell("japan_slurry_water", |row| &row.high)?;
        self.assume_one("face: earth pressure per blow", per_blow, Role::UnitFriction);
        self.assume_one("face: blow count beyond which it does not grow", most, Role::Count);
        self.assume_one("face: slurry over water", over_water, Role::UnitFriction);
        Ok(FaceResistance::Slurry {
            pressure_per_blow: per_blow.value,
            blows_most: most.value,
            slurry_over_water: over_water.value,
        })
    }

    fn open_edge(&mut self) -> Resolved<FaceResistance> {
        let thickness = self.or_row(DriveFile::cutting_edge, self.handbook.length("face.cutting_edge")?).value;
        let table = self.handbook.face_rule()?;
        let pressure = table.cell("china_ring", |row| &row.high)?;
        let line_load = table.cell("japan_open_ordinary", |row| &row.line)?;
        let index = |key| Ok::<_, HandbookError>(table.cell(key, |row| &row.index)?.value);
        let index = FaceIndex {
            ordinary: index("japan_open_ordinary")?,
            sand: index("japan_open_sand")?,
            hard: index("japan_open_hard")?,
        };
        self.assume_one("face: pressure under the edge", pressure, Role::UnitFriction);
        self.assume_one("face: force per length of the rim, times an index of the ground", line_load, Role::LineWeight);
        Ok(FaceResistance::CuttingEdge { pressure: pressure.value, thickness, line_load: line_load.value, index })
    }

    /// Both halves of a resistance at a head.
    pub(super) fn assume_face(&mut self, field: &str, resistance: FaceResistance, origin: Origin) {
        if let FaceResistance::Table { pressure, least } = resistance {
            self.assume_band(format!("{field}: pressure on the cut ring"), pressure, Role::UnitFriction, origin);
            self.assume_band(format!("{field}: least force"), least, Role::Thrust, origin);
        }
    }
}
