//! Pits: what the file tells of them, and the rules they are held to.

use super::earth::Ends;
use super::looked_up::looked_up;
use crate::handbook::{Handbook, HandbookError, Spoil};
use crate::quantity::{Area, Force, Length, Pressure, Ratio, Velocity};
use crate::source::Cited;

/// One pit.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Pit {
    pub(crate) invert: Length,
    /// Depth of the floor at its least and at its most.
    pub(crate) base: Ends<Length>,
    /// Depth of the water table.
    pub(crate) water: Option<Length>,
    pub(crate) space: Option<PitSpace>,
    /// Working area round it.
    pub(crate) area: Option<Cited<Area>>,
    /// Whether wells keep the ground water below the floor.
    pub(crate) dewatered: bool,
    /// Whether the base is sealed against water.
    pub(crate) sealed_base: bool,
    /// Whether the file rules out both.
    pub(crate) bare: bool,
    /// Depth of the toe of the shoring below ground.
    pub(crate) toe: Option<Cited<Length>>,
}

impl Pit {
    /// Depth of the floor below ground, as far as the file tells it; else of the invert.
    pub(crate) fn floor(&self) -> Length {
        self.space.map_or(self.invert, |space| space.floor)
    }
}

/// What the file tells of a pit.
#[derive(Debug, Clone, Copy)]
pub(crate) struct PitSpace {
    pub(crate) length: Cited<Length>,
    pub(crate) width: Cited<Length>,
    pub(crate) floor: Length,
    pub(crate) tight: Option<(Length, Pressure)>,
    pub(crate) seepage: Option<(Velocity, Length)>,
    pub(crate) crane: Option<Cited<Force>>,
}

/// Sides of a pit.
#[derive(Debug, Clone, Copy)]
pub(crate) struct PitSides {
    /// Added to the diameter that passes, or the width itself: low and high.
    pub(crate) width: (Length, Cited<Length>),
    /// Added to the longest part that passes, or the length itself: low and high.
    pub(crate) length: (Length, Cited<Length>),
    /// True where the sides are whole, whatever passes.
    pub(crate) whole: bool,
}

looked_up! {
    /// Rules for pits.
    PitRules: Copy of |handbook, spoil: Spoil, has_stem: bool| {
        heave: Cited<Ratio> = handbook.pit_factor()?.cell("base_heave", |row| &row.low)?,
        /// Least and greatest bearing factor of a base whose sides are not given.
        bearing: Ends<Ratio> = Ends::values(["pit.bearing_least", "pit.bearing_most"], |key| handbook.ratio(key))?,
        /// Load beside a pit, where the soil of the file has none.
        beside: Ends<Pressure> =
            Ends::values(["surcharge.pit_least", "surcharge.pit"], |key| handbook.pressure(key))?,
        /// Share of the strength of clay that holds to shoring below the floor.
        adhesion: Ends<Ratio> = Ends::values(["pit.adhesion_least", "pit.adhesion_most"], |key| handbook.ratio(key))?,
        /// Shoring below the floor over the width, at its best where none is told.
        below: Ratio = handbook.ratio("pit.walls_below")?.value,
        boiling: Cited<Ratio> = handbook.pit_factor()?.cell("boiling", |row| &row.low)?,
        /// Most head of water that one stage of wells, or a toe, is asked to hold.
        wells: Cited<Length> = handbook.length("pit.wells")?,
        /// Room without which nothing goes in: length and width beyond what passes.
        least: (Cited<Length>, Cited<Length>) =
            (side(handbook, "length_compact")?.0, side(handbook, "width_least")?.0),
        /// Length of the shortest usual jacking pipe.
        shortest: Length = handbook.jacking_pipe_length()?.row("clay")?.value.low.value,
        /// The longest plug of soil that is kept in a casing: length, or times the bore.
        longest_plug: (Length, Cited<Ratio>) =
            (handbook.length("plug.longest")?.value, handbook.ratio("plug.longest")?),
        uplift: (Ratio, Cited<Ratio>) = handbook.pit_factor()?.span("base_uplift")?,
        plug: (Ratio, Cited<Ratio>) = handbook.pit_factor()?.span("plug_gradient")?,
        /// Friction angle between plug and casing over that of the soil.
        plug_interface: Cited<Ratio> = smooth_steel(handbook)?,
        pumping_start: Cited<Ratio> = handbook.pit_factor()?.cell("pumping_start", |row| &row.value)?,
        /// Launch pit of a jacked pipe.
        launch: PitSides = if spoil == Spoil::Auger && !has_stem {
            PitSides { whole: true, ..PitSides::read(handbook, "auger_width", ["auger_length"; 2])? }
        } else {
            PitSides::guided(handbook)?
        },
        /// Launch pit of a pulled pipe.
        launch_pulled: PitSides = PitSides::guided(handbook)?,
        /// Reception pit.
        reception: PitSides = PitSides::read(handbook, "reception_width", ["reception_length"; 2])?,
        /// Working areas at the launch and at the reception, by method.
        area_jacked: [(Area, Cited<Area>); 2] = if spoil == Spoil::Slurry {
            areas(handbook, ["slurry_launch", "slurry_reception"])?
        } else {
            areas(handbook, ["guided_launch", "guided_reception"])?
        },
        area_pulled: [(Area, Cited<Area>); 2] = areas(handbook, ["pulled_launch", "pulled_reception"])?,
        crane_margin: Cited<Ratio> = handbook.planning_factor()?.cell("crane", |row| &row.low)?,
        /// Length of one jacking pipe where the file does not give it: the longer end of the usual ones of clay.
        pipe_length: Cited<Length> = handbook.jacking_pipe_length()?.row("clay")?.map(|row| row.high.value),
    }
}

impl PitSides {
    /// By the rows of its width, and of its least and its greatest length.
    fn read(handbook: &Handbook, width: &'static str, [least, most]: [&'static str; 2]) -> Result<Self, HandbookError> {
        let width = side(handbook, width)?;
        let length = (side(handbook, least)?.0.value, side(handbook, most)?.1);
        Ok(Self { width: (width.0.value, width.1), length, whole: false })
    }

    fn guided(handbook: &Handbook) -> Result<Self, HandbookError> {
        Self::read(handbook, "width_typical", ["length_to_dn_1500", "length_some_plant"])
    }
}

/// Both ends of a side of a pit.
fn side(handbook: &Handbook, key: &'static str) -> Result<(Cited<Length>, Cited<Length>), HandbookError> {
    let table = handbook.shaft_size()?;
    let row = table.row(key)?;
    let sides = [&row.value.low, &row.value.value, &row.value.high];
    let [low, middle, high] = sides.map(|side| side.as_ref().map(|side| side.value));
    // A row may have one end only.
    let end = |first: Option<Length>, other: Option<Length>| {
        let length = first.or(middle).or(other).ok_or_else(|| table.lacks(key))?;
        Ok(Cited::new(length, row.origin))
    };
    Ok((end(low, high)?, end(high, low)?))
}

/// Both ends of the working areas at the launch and at the reception.
fn areas(handbook: &Handbook, keys: [&'static str; 2]) -> Result<[(Area, Cited<Area>); 2], HandbookError> {
    let table = handbook.work_area()?;
    let ends = |key: &'static str| -> Result<(Area, Cited<Area>), HandbookError> {
        let (low, high) = (table.cell(key, |row| &row.area_low)?.value, table.cell(key, |row| &row.area_high)?);
        let rises = low > Area::default() && low <= high.value;
        table.holds(rises, key, "low and high do not rise from above zero")?;
        Ok((low, high))
    };
    let [launch, reception] = keys;
    Ok([ends(launch)?, ends(reception)?])
}

/// Interface angle of smooth steel over the friction angle of the soil.
fn smooth_steel(handbook: &Handbook) -> Result<Cited<Ratio>, HandbookError> {
    const KEY: &str = "potyondy_smooth_steel";
    let table = handbook.interface_friction()?;
    let row = table.row(KEY)?;
    let share = row.map(|row| row.high.value);
    let is_share = share.value > Ratio::default() && share.value <= Ratio::from(1.0);
    table.holds(is_share, KEY, "must be above 0, at most 1")?;
    Ok(share)
}
