//! Ductile iron pipe of metric sizes.

use super::Resolver;
use super::pipe::same_size;
use crate::drive::HeavyIron;
use crate::drive_file::CandidateFile;
use crate::handbook::HandbookError;
use crate::quantity::{Length, Measure, Role};
use crate::source::{Cited, FieldName, Origin};

/// Where the lining becomes thicker, m: between the sizes 300 and 350 mm.
const LINED_THICKER: f64 = 0.325;

/// Outside and inside diameter.
type Diameters = Cited<(Length, Option<Length>)>;
/// Outside diameter and wall.
type OutsideAndWall = (Cited<Length>, Cited<Length>);

impl Resolver<'_> {
    /// Outside and inside diameter of a metric size.
    pub(super) fn metric_iron(&self, size: Length) -> Result<Option<Diameters>, HandbookError> {
        let row = self.handbook.iron_pipe()?.find(|row| same_size(row.size.value, size));
        Ok(row.map(|row| {
            row.map(|row| {
                let outside = row.outside_diameter.value;
                (outside, Some(outside - 2.0 * row.wall.value))
            })
        }))
    }

    /// Outside diameter and wall of a metric size; `None` where the file gives the diameter, or the size is another.
    pub(super) fn metric_iron_pipe(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        size: Length,
    ) -> Result<Option<OutsideAndWall>, HandbookError> {
        if candidate.outside_diameter.is_some() {
            return Ok(None);
        }
        let row = self.handbook.iron_pipe()?.find(|row| same_size(row.size.value, size));
        Ok(row.map(|row| {
            let outside_diameter = row.map(|row| row.outside_diameter.value);
            self.assume_one(format!("{path}.outside_diameter"), outside_diameter, Role::Diameter);
            (outside_diameter, row.map(|row| row.wall.value))
        }))
    }

    /// Wall and lining that the pipe may weigh. A wall of the file is taken for the nominal one.
    pub(super) fn heavy_iron(
        &mut self,
        path: &str,
        size: Length,
        wall: Cited<Length>,
        weight_is_given: bool,
    ) -> Result<HeavyIron, HandbookError> {
        let allowance = self.handbook.length("iron.wall_allowance")?;
        let by_size = self.handbook.ratio("iron.wall_by_size")?.value;
        let nominal = match wall.origin {
            Origin::File(_) => wall,
            _ => allowance.map(|allowance| wall.value + allowance + by_size * size),
        };
        let key = if size.si() < LINED_THICKER { "iron.lining_to_300" } else { "iron.lining_to_600" };
        let lining = self.handbook.length(key)?;
        let density = self.density("cement_mortar")?;
        if !weight_is_given {
            self.assume_one(format!("{path}: wall for the weight where it sinks"), nominal, Role::Wall);
            self.assume_one(format!("{path}: cement lining for the weight where it sinks"), lining, Role::Wall);
        }
        Ok(HeavyIron { wall: nominal.value, lining: lining.value, density: density.value })
    }

    /// The user's wall, else the least one of the table.
    pub(super) fn iron_wall(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        outside_diameter: Length,
        table: Option<Cited<Length>>,
    ) -> Option<Cited<Length>> {
        match (&candidate.wall, table) {
            (Some(field), _) => {
                let wall = self.tube_wall(field, &format!("{path}.wall"), outside_diameter);
                Some(Cited::given(wall, &FieldName("candidates[].wall")))
            }
            (None, Some(wall)) => {
                self.assume_one(format!("{path}.wall, the least of class 40"), wall, Role::Wall);
                Some(wall)
            }
            (None, None) => None,
        }
    }
}
