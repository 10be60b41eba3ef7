//! The plant: pilot stem, casing, jacks, and what takes their thrust behind the launch pit.

use super::capacity::{FreeLength, SteelEnd};
use super::earth::{Column, Soil};
use super::looked_up::looked_up;
use crate::handbook::{Handbook, HandbookError};
use crate::quantity::{Area, Band, Force, Length, LineLoad, MassDensity, Pressure, Ratio, Time, Torque, UnitWeight};
use crate::source::Cited;
use core::f64::consts::FRAC_PI_4;

/// The pilot stem.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Stem {
    /// 0 for a bore without a stem.
    pub(crate) outside_diameter: Cited<Length>,
    /// Diameter of the pilot head, which makes the bore.
    pub(crate) head: Length,
    /// Whether it is out of the bore before a pipe is pushed into it.
    pub(crate) withdrawn: bool,
    /// Weight, where the wall is known.
    pub(crate) weight: Option<LineLoad>,
    /// What buckling needs.
    pub(crate) tube: Option<Tube>,
    pub(crate) joint_thrust: Option<Cited<Force>>,
    pub(crate) joint_pull: Option<Cited<Force>>,
    pub(crate) joint_torque: Option<Cited<Torque>>,
    /// While it is pushed.
    pub(crate) torque: Option<Band<Torque>>,
}

impl Stem {
    pub(crate) fn is_there(&self) -> bool {
        self.outside_diameter.value > Length::default()
    }
}

/// The stem as a slender tube.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tube {
    pub(crate) wall: Length,
    /// Longest length without support in the launch pit.
    pub(crate) free_length: Length,
    pub(crate) modulus: Pressure,
    pub(crate) end_factor: Ratio,
    pub(crate) factor: Cited<Ratio>,
    pub(crate) bedding_per_strength: Ratio,
    /// The bed in sand, rising with the count.
    pub(crate) sand: [SandBed; 3],
}

/// The bed that sand of one density gives a slender bar.
#[derive(Debug, Clone, Copy)]
pub(crate) struct SandBed {
    /// Least SPT blows; the first row serves what is looser too.
    pub(crate) blows_from: Ratio,
    /// Modulus of horizontal subgrade reaction, per depth.
    pub(crate) moist: UnitWeight,
    pub(crate) submerged: UnitWeight,
    /// Low end over the value.
    pub(crate) low_share: Ratio,
}

/// A temporary steel casing that is pushed behind the stem and that the pipe pushes out.
#[derive(Debug, Clone)]
pub(crate) struct Casing {
    pub(crate) outside_diameter: Length,
    /// What its wall tells; none where neither file nor table knows it.
    pub(crate) tube: Option<Box<CasingTube>>,
    /// Rating of its joints under thrust.
    pub(crate) joint_thrust: Option<Cited<Force>>,
}

/// Weight and section of a casing.
#[derive(Debug, Clone)]
pub(crate) struct CasingTube {
    pub(crate) weight: LineLoad,
    pub(crate) section: SteelEnd,
    /// The same with wall and yield at their best, where the file leaves them out.
    pub(crate) best: Option<SteelEnd>,
    /// The length that nothing holds, in the launch pit.
    pub(crate) free: FreeLength,
}

/// An auger that clears a pipe or a casing while it is pushed.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Auger {
    /// Whether the file tells that there is one.
    pub(crate) told: bool,
    /// Outside diameter over the inside diameter of what it turns in.
    pub(crate) diameter: Band<Ratio>,
    /// Its weight over the cylinder it turns in.
    pub(crate) own_weight: Band<UnitWeight>,
    pub(crate) spoil_weight: Band<UnitWeight>,
    /// Share of the cylinder it turns in that is full of spoil.
    pub(crate) fill: Band<Ratio>,
    /// On the invert.
    pub(crate) friction: Band<Ratio>,
    /// Progress resistance coefficient of spoil.
    pub(crate) progress: Band<Ratio>,
}

/// An auger and the spoil on it in a pipe of some inside diameter.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Laden {
    pub(crate) diameter: Length,
    pub(crate) auger: LineLoad,
    pub(crate) spoil: LineLoad,
}

impl Auger {
    /// In what is so wide inside.
    pub(crate) fn laden(&self, inside_diameter: Length) -> Band<Laden> {
        let diameter = self.diameter.map(|share| inside_diameter * share);
        let weights = self.own_weight.zip(self.spoil_weight.zip(self.fill));
        diameter.with(weights, |diameter, (own, (spoil, fill))| {
            let gross = diameter * diameter * FRAC_PI_4;
            Laden { diameter, auger: gross * own, spoil: gross * fill * spoil }
        })
    }
}

/// Lubricant in the annulus of a pipe that is pushed.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Lubricant {
    /// Its greatest pressure, where the file tells it.
    pub(crate) told: Option<Cited<Pressure>>,
    /// Over that of the water, where it does not: likely, and at most.
    pub(crate) likely: Pressure,
    pub(crate) most: Cited<Pressure>,
    pub(crate) density: MassDensity,
    /// How long it stands on the pipe.
    pub(crate) stands: Time,
}

impl Lubricant {
    /// What it is held at beside water of a pressure: as told, else the most that is usual over it.
    pub(crate) fn held(&self, water: Pressure) -> Cited<Pressure> {
        self.told.unwrap_or_else(|| self.most.map(|most| most + water))
    }
}

/// What turns a force into a reading of the gauge.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Gauge {
    pub(crate) cylinder_area: Area,
    pub(crate) efficiency: Ratio,
}

looked_up! {
    /// How intermediate jacking stations are placed.
    StationRules: Copy of |handbook, of_one: Option<Force>| {
        /// Thrust of one, where the file gives it.
        thrust: Option<Force> = of_one,
        /// Share of that at which the first is put in, and each further one.
        first: Cited<Ratio> = share(handbook, "first_station")?,
        next: Cited<Ratio> = share(handbook, "next_stations")?,
        /// Share at which they are put to work.
        start: Cited<Ratio> = share(handbook, "start")?,
        /// Share of the main jacks to design for.
        main: Cited<Ratio> = share(handbook, "main_jacks")?,
        /// Least distance from one to the next that is met.
        spacing: Cited<Length> = handbook.length("stations.spacing")?,
        /// Least inside diameter that people enter.
        entry: Cited<Length> = handbook.length("stations.person_entry")?,
    }
}

fn share(handbook: &Handbook, key: &str) -> Result<Cited<Ratio>, HandbookError> {
    let table = handbook.jacking_station()?;
    let row = table.factor(key, |row| &row.value)?;
    table.holds(row.value <= Ratio::from(1.0), key, "is more than the whole")?;
    Ok(row)
}

/// The ground behind the launch pit, and the wall that leans on it.
#[derive(Debug, Clone)]
pub(crate) struct Reaction {
    /// Ground behind the wall. Load on the surface is not counted on.
    pub(crate) soil: Soil,
    /// Depth of the water table, if there is one.
    pub(crate) table: Option<Length>,
    /// Depth of the pipe invert below ground.
    pub(crate) invert: Length,
    /// Factor for the ground beside the wall.
    pub(crate) spread: Ratio,
    /// Resistance over thrust.
    pub(crate) safety: Cited<Ratio>,
    /// Movement at full resistance over the height of the wall.
    pub(crate) movement: Cited<Ratio>,
    /// The wall; none where it is still to be designed.
    pub(crate) wall: Option<ThrustWall>,
    /// How long clay bears.
    pub(crate) clay: Clay,
    /// The same in the ground at its best, where the file gives none of it.
    pub(crate) best: Option<Box<Reaction>>,
}

/// What clay behind a wall bears while it is pushed, for hours.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Clay {
    /// Its strength, which the file tells.
    Undrained,
    /// The lesser of that and what it bears drained: nobody tells it.
    Lesser,
    /// The greater, at best.
    Greater,
}

impl Reaction {
    /// The soil with its water.
    pub(crate) const fn column(&self) -> Column<'_> {
        Column { soil: &self.soil, table: self.table }
    }
}

/// The wall that takes the thrust.
#[derive(Debug, Clone, Copy)]
pub(crate) struct ThrustWall {
    pub(crate) width: Length,
    pub(crate) height: Length,
    /// Depth of its top; none where it stands half its height over the axis of thrust.
    pub(crate) top: Option<Length>,
    /// Depth of the axis of thrust; none where it is that of the pipe.
    pub(crate) thrust: Option<Length>,
    /// Diameter of an opening at the axis of thrust; 0 for none.
    pub(crate) eye: Length,
    /// The file says that its movement was checked apart.
    pub(crate) movement_checked: bool,
}
