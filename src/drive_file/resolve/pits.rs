//! Pits: what the file tells of them, and the rules for their room, floor and crane.

use super::{Resolved, Resolver};
use crate::drive::{Ends, Pit, PitRules, PitSpace, Stem};
use crate::drive_file::{PitFile, PitSpaceFile};
use crate::handbook::{Spoil, Treatment};
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
            self.wrong(path, space, PitSpaceFile::floor_depth, why);
        }
        let tight = self.both(
            path,
            space,
            (PitSpaceFile::tight_soil, "means nothing without the water pressure", "add `water_pressure: 40 kPa`"),
            (PitSpaceFile::water_pressure, "means nothing without the soil over it", "add `tight_soil: 3 m`"),
        );
        let seepage = self.both(
            path,
            space,
            (PitSpaceFile::permeability, "means nothing without the tight base", "add `tight_base_depth: 9 m`"),
            (PitSpaceFile::tight_base_depth, "means nothing without the permeability", "add `permeability: 1e-5 m/s`"),
        );
        if seepage.is_some_and(|(_, base)| base < floor) {
            self.wrong(path, space, PitSpaceFile::tight_base_depth, "is above the floor of the pit");
        }
        let space = PitSpace {
            length: self.take(path, space, PitSpaceFile::length),
            width: self.take(path, space, PitSpaceFile::width),
            floor,
            tight,
            seepage,
            crane: self.take(path, space, PitSpaceFile::crane),
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
            self.wrong(path, file, PitFile::dewatered, why);
        }
        let says = |field: &Option<Field<bool>>| field.given() == Some(true);
        let toe = self.take(path, file, PitFile::wall_toe_depth);
        if toe.is_some_and(|toe| toe.value < pit.floor()) {
            let why = ("is above the floor of the pit", "give the depth of the toe below ground");
            self.wrong(path, file, PitFile::wall_toe_depth, why);
        }
        Pit { dewatered: says(&file.dewatered), sealed_base: says(&file.sealed_base), toe, ..pit }
    }

    pub(super) fn pit_rules(&mut self, stem: &Stem) -> Resolved<PitRules> {
        let rules = PitRules::read(self.handbook, self.file.spoil.given().unwrap_or(Spoil::Auger), stem.is_there())?;
        if self.file.plug.is_some() {
            let what = "plug: friction angle on steel over that of the soil";
            self.assume_one(what, rules.plug_interface, Role::Ratio);
        }
        Ok(rules)
    }
}
