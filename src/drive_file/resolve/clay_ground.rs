//! What is taken of clay that the file does not tell: its weight, and its strength by the blow count.

use super::{Resolver, no_row};
use crate::drive::{AssumedValue, Stretch};
use crate::drive_file::DriveFile;
use crate::handbook::{GroundClass, HandbookError, Spoil};
use crate::quantity::{Role, Shown, UnitWeight};
use crate::source::Cited;

impl Resolver<'_> {
    /// What clay weighs by its class and what a blow tells of its strength, where an open face or a pit is looked at and
    /// the file tells neither. Of a mixed face the heavier ground.
    pub(super) fn clay_ground(
        &mut self,
        stretch: &Stretch,
        path: &str,
        file: &DriveFile,
        pit: bool,
    ) -> Result<Option<Cited<UnitWeight>>, HandbookError> {
        let open = file.spoil.as_ref().is_none_or(|spoil| spoil.value != Spoil::Slurry);
        let clay = stretch.class.is_clay() || stretch.mixed_with.is_some_and(GroundClass::is_clay);
        if !clay || !(open || pit) {
            return Ok(None);
        }
        let place = if pit { "face and pits" } else { "at an open face, jacked pipe" };
        if stretch.soil.as_ref().is_none_or(|soil| soil.undrained.is_none()) {
            let row = self.handbook.pressure("clay.strength_per_blow")?;
            let shown = AssumedValue::One(Shown::of(row.value, Role::UnitFriction));
            self.assume_alike(path, &format!("undrained strength per blow, {place}"), shown, row.origin);
        }
        if stretch.soil.is_some() {
            return Ok(None);
        }
        let mut weight = self.class_weight(stretch.class)?;
        if let Some(other) = stretch.mixed_with {
            let other = self.class_weight(other)?;
            weight = if other.value > weight.value { other } else { weight };
        }
        let shown = AssumedValue::One(Shown::of(weight.value, Role::UnitWeight));
        self.assume_alike(path, &format!("unit weight {place}"), shown, weight.origin);
        Ok(Some(weight))
    }

    /// Unit weight of a class on the heavy side; that of unknown ground where the table does not name it.
    fn class_weight(&self, class: GroundClass) -> Result<Cited<UnitWeight>, HandbookError> {
        let table = self.handbook.soil_weight()?;
        let of = |class| table.find(|row| row.ground.value == class);
        let row = of(class).or_else(|| of(GroundClass::Unknown)).ok_or_else(|| no_row(table.id, class.key()))?;
        Ok(row.map(|row| row.moist_high.value))
    }
}
