//! Pits: what the file tells of them, and the rules for their room, floor and crane.

use super::{Resolved, Resolver};
use crate::drive::{Ends, Pit, PitRules, PitSpace};
use crate::drive_file::{PitFile, PitSpaceFile};
use crate::handbook::{TechniqueRow, Treatment};
use crate::quantity::{Length, Role};
use crate::yaml::{Field, MayBe};

impl Resolver<'_> {
    pub(super) fn pit_space(
        &mut self,
        space: Option<&PitSpaceFile>,
        path: &str,
        invert: Length,
        water: Option<Length>,
    ) -> Pit {
        let base = self.floor(invert);
        let Some(space) = space else { return Pit { invert, base, water, ..Pit::default() } };
        let told = space.floor_depth.given();
        let base = told.map_or(base, Ends::same);
        let floor = space.floor_depth.given().unwrap_or(invert);
        if floor < invert {
            let why = ("is above the invert of the pipe", "give the depth of the floor below ground");
            self.wrong_at(path, space, PitSpaceFile::floor_depth, why);
        }
        let seepage = space.permeability.given().zip(space.tight_base_depth.given());
        if seepage.is_some_and(|(_, base)| base < floor) {
            self.wrong_at(path, space, PitSpaceFile::tight_base_depth, "is above the floor of the pit");
        }
        let space = PitSpace {
            length: PitSpaceFile::length.cited(path, space),
            width: PitSpaceFile::width.cited(path, space),
            floor,
            tight: space.tight_soil.given().zip(space.water_pressure.given()),
            seepage,
            crane: PitSpaceFile::crane.cited(path, space),
        };
        Pit { invert, base, water, space: Some(space), ..Pit::default() }
    }

    /// Depth of a floor that the file does not tell: under the invert by what stone, rails and frame take.
    fn floor(&self, invert: Length) -> Ends<Length> {
        let under = |key| self.handbook.length(key).map_or(Length::default(), |row| row.value);
        Ends { low: invert + under("pit.floor_least"), high: invert + under("pit.floor_most") }
    }

    /// With what keeps the water from the floor.
    pub(super) fn against_water(
        &mut self,
        (file, path): (&PitFile, &str),
        treated: Option<Treatment>,
        pit: Pit,
    ) -> Pit {
        if treated == Some(Treatment::Dewatered) && file.dewatered.given() == Some(false) {
            let why = (
                "is false, and the ground at the pit is `treatment: dewatered`",
                "wells along the line drain its pits",
            );
            self.wrong_at(path, file, PitFile::dewatered, why);
        }
        let says = |field: &Option<Field<bool>>| field.given() == Some(true);
        let toe = PitFile::wall_toe_depth.cited(path, file);
        if toe.is_some_and(|toe| toe.value < pit.floor()) {
            let why = ("is above the floor of the pit", "give the depth of the toe below ground");
            self.wrong_at(path, file, PitFile::wall_toe_depth, why);
        }
        let bare = [&file.dewatered, &file.sealed_base].iter().all(|field| field.given() == Some(false));
        Pit { dewatered: says(&file.dewatered), sealed_base: says(&file.sealed_base), bare, toe, ..pit }
    }

    pub(super) fn pit_rules(&mut self, technique: &TechniqueRow) -> Resolved<PitRules> {
        let rules = PitRules::read(self.handbook, technique.spoil.value, technique.tip.is_some())?;
        if self.file.plug.is_some() {
            let what = "plug: friction angle on steel over that of the soil";
            self.assume_one(what, rules.plug_interface, Role::Ratio);
        }
        Ok(rules)
    }
}
