//! Pits: what the file tells of them, and the rules for their room, floor and crane.

use super::{Resolved, Resolver};
use crate::drive::{Ends, Pit, PitRules, PitSides, PitSpace, Stem};
use crate::drive_file::{PitFile, PitSpaceFile};
use crate::handbook::{Spoil, Treatment};
use crate::quantity::{Area, Length, Ratio, Role};
use crate::source::Cited;
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

    /// The longer end of the usual lengths of clay pipe.
    fn usual_pipe_length(&self) -> Resolved<Cited<Length>> {
        Ok(self.handbook.jacking_pipe_length()?.row("clay")?.map(|row| row.high.value))
    }

    /// Both ends of a side of a pit.
    fn side(&self, key: &'static str) -> Resolved<(Cited<Length>, Cited<Length>)> {
        let table = self.handbook.shaft_size()?;
        let row = table.row(key)?;
        let sides = row.value;
        // A row may have one end only.
        let end = |first: &Option<Field<Length>>, other: &Option<Field<Length>>| {
            let length = first.as_ref().or(sides.value.as_ref()).or(other.as_ref());
            Ok(Cited::new(length.ok_or_else(|| table.lacks(key))?.value, row.origin))
        };
        Ok((end(&sides.low, &sides.high)?, end(&sides.high, &sides.low)?))
    }

    /// Both ends of the working areas at the launch and at the reception.
    fn areas(&self, keys: [&'static str; 2]) -> Resolved<[(Area, Cited<Area>); 2]> {
        let table = self.handbook.work_area()?;
        let ends = |key: &'static str| -> Resolved<(Area, Cited<Area>)> {
            let (low, high) = (table.cell(key, |row| &row.area_low)?.value, table.cell(key, |row| &row.area_high)?);
            let rises = low > Area::default() && low <= high.value;
            table.holds(rises, key, "low and high do not rise from above zero")?;
            Ok((low, high))
        };
        let [launch, reception] = keys;
        Ok([ends(launch)?, ends(reception)?])
    }

    /// Interface angle of smooth steel over the friction angle of the soil.
    fn smooth_steel(&self) -> Resolved<Cited<Ratio>> {
        const KEY: &str = "potyondy_smooth_steel";
        let table = self.handbook.interface_friction()?;
        let row = table.row(KEY)?;
        let share = row.map(|row| row.high.value);
        let is_share = share.value > Ratio::default() && share.value <= Ratio::from(1.0);
        table.holds(is_share, KEY, "must be above 0, at most 1")?;
        Ok(share)
    }

    pub(super) fn pit_rules(&mut self, stem: &Stem) -> Resolved<PitRules> {
        let plug_interface = self.smooth_steel()?;
        if self.file.plug.is_some() {
            self.assume_one("plug: friction angle on steel over that of the soil", plug_interface, Role::Ratio);
        }
        let factors = self.handbook.pit_factor()?;
        let sides = |width: &'static str, least: &'static str, most: &'static str| -> Resolved<PitSides> {
            let width = self.side(width)?;
            let length = (self.side(least)?.0, self.side(most)?.1);
            Ok(PitSides { width: (width.0.value, width.1), length: (length.0.value, length.1), whole: false })
        };
        let guided = sides("width_typical", "length_to_dn_1500", "length_some_plant")?;
        let spoil = self.file.spoil.given().unwrap_or(Spoil::Auger);
        let launch = if spoil == Spoil::Auger && !stem.is_there() {
            PitSides { whole: true, ..sides("auger_width", "auger_length", "auger_length")? }
        } else {
            guided
        };
        let ratios = |low, high| -> Resolved<Ends<Ratio>> {
            Ok(Ends { low: self.handbook.ratio(low)?.value, high: self.handbook.ratio(high)?.value })
        };
        let jacked = if spoil == Spoil::Slurry {
            ["slurry_launch", "slurry_reception"]
        } else {
            ["guided_launch", "guided_reception"]
        };
        Ok(PitRules {
            heave: factors.cell("base_heave", |row| &row.low)?,
            bearing: ratios("pit.bearing_least", "pit.bearing_most")?,
            beside: Ends {
                low: self.handbook.pressure("surcharge.pit_least")?.value,
                high: self.handbook.pressure("surcharge.pit")?.value,
            },
            adhesion: ratios("pit.adhesion_least", "pit.adhesion_most")?,
            below: self.handbook.ratio("pit.walls_below")?.value,
            boiling: factors.cell("boiling", |row| &row.low)?,
            wells: self.handbook.length("pit.wells")?,
            least: (self.side("length_compact")?.0, self.side("width_least")?.0),
            shortest: self.handbook.jacking_pipe_length()?.row("clay")?.value.low.value,
            longest_plug: (self.handbook.length("plug.longest")?.value, self.handbook.ratio("plug.longest")?),
            uplift: factors.span("base_uplift")?,
            plug: factors.span("plug_gradient")?,
            plug_interface,
            pumping_start: factors.cell("pumping_start", |row| &row.value)?,
            launch,
            launch_pulled: guided,
            reception: sides("reception_width", "reception_length", "reception_length")?,
            area_jacked: self.areas(jacked)?,
            area_pulled: self.areas(["pulled_launch", "pulled_reception"])?,
            pipe_length: self.usual_pipe_length()?,
            crane_margin: self.handbook.planning_factor()?.cell("crane", |row| &row.low)?,
        })
    }
}
