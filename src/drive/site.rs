//! What surrounds the bore: flow, surface, services, pits, pace. Every rule is looked up, every limit is the file's or a
//! row's.

use super::earth::Ends;
use super::looked_up::looked_up;
use crate::handbook::{Handbook, HandbookError, Spoil};
use crate::quantity::{Area, Band, Force, Length, Measure, Pressure, Ratio, Time, Velocity, Volume, VolumeRate};
use crate::source::{Cited, Origin};

/// All that conditions beside force and ground need.
#[derive(Debug, Clone)]
pub(crate) struct Surroundings {
    /// Gravity sewers only.
    pub(crate) gravity: Option<Gravity>,
    pub(crate) surface: Surface,
    pub(crate) crossings: Vec<Crossing>,
    /// Whether the file says which services there are, were it none.
    pub(crate) crossings_are_told: bool,
    pub(crate) movement: Movement,
    pub(crate) break_out: BreakOutRule,
    pub(crate) cover: Cover,
    pub(crate) face: FaceRule,
    pub(crate) launch: Pit,
    pub(crate) reception: Pit,
    pub(crate) pit_rules: PitRules,
    /// Whole soil kept in the mouth of the casing.
    pub(crate) plug: Option<Cited<Length>>,
    /// What is laid in the casing afterwards, where the file tells it.
    pub(crate) carrier: Option<Carrier>,
    pub(crate) clearing: Option<Clearing>,
    pub(crate) pace: Pace,
}

impl Surroundings {
    /// Whether the file limits how far the surface or a crossed service may move.
    pub(crate) fn limits_movement(&self) -> bool {
        self.surface.is_limited || self.crossings.iter().any(|crossing| crossing.is_limited)
    }
}

/// How spoil is carried away.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Clearing {
    pub(crate) tank: Cited<Volume>,
    /// Added water over the soil in the ground.
    pub(crate) water: Ratio,
    /// For which the work stands with each tank.
    pub(crate) emptying: Option<Cited<Time>>,
    /// Volume of the loosened soil over that in the ground, over the whole drive.
    pub(crate) loosened: Cited<Ratio>,
}

/// A pipe that is laid in a casing afterwards.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Carrier {
    /// Over its joints.
    pub(crate) outside_diameter: Cited<Length>,
    /// Of a sewer, the slope that it is set to beyond that of its casing, and whether the file leaves open what that is.
    pub(crate) own_slope: Option<(Ratio, bool)>,
    /// How much wider the casing is to be inside.
    pub(crate) spare: Cited<Length>,
}

looked_up! {
    /// How much pressure of fluid or grout the ground is allowed to bear.
    BreakOutRule: Copy of |handbook| {
        strain: Ratio = handbook.fluid_pressure_limit()?.value("strain_low")?.value,
        margin_sand: Ratio = handbook.fluid_pressure_limit()?.value("margin_sand")?.value,
        margin_other: Ratio = handbook.fluid_pressure_limit()?.value("margin_other")?.value,
        cap: Cited<Ratio> = handbook.fluid_pressure_limit()?.value("cap_total_stress")?,
        /// The same in firm to hard clay with a gauge.
        cap_firm_clay: Cited<Ratio> = handbook.fluid_pressure_limit()?.value("cap_firm_clay")?,
        /// What fluid holds ground that runs.
        holds: FluidRule = FluidRule::read(handbook)?,
        /// Cover of the bore below which fluid under pressure comes up.
        least_cover: Cited<Length> = handbook.length("break_out.cover")?,
        /// Yield point of fluid that is not told: as thin as there is, thin, and thick.
        thinnest: Pressure = handbook.pressure("fluid.yield_least")?.value,
        thin: Pressure = handbook.pressure("fluid.yield_low")?.value,
        thick: Pressure = handbook.pressure("fluid.yield_high")?.value,
        /// Loss of fluid past a pipe that lies on a side of its bore, over that past one in the middle.
        past_lying: Ratio = handbook.ratio("fluid.past_lying")?.value,
        /// What fluid that is held to a pressure leaves under a road.
        spare_under_road: Ratio = handbook.fluid_pressure_limit()?.value("spare_under_road")?.value,
        /// Distance of a service from the axis below which a pressure to hold to is no answer.
        near_service: Cited<Length> = handbook.length("break_out.service")?,
    }

    /// Waves of an invert.
    Waves: Copy of |handbook| {
        /// Half of a wave, of a head that is steered back to its line.
        short: Length = handbook.length("wave.short")?.value,
        /// Half of a wave, of a string from the bottom of its bore to the crown.
        long: Length = handbook.length("wave.long")?.value,
        /// Amplitude of a jacked line, likely and high.
        jacked: (Length, Length) =
            (handbook.length("pilot.pushed_low")?.value, handbook.length("grade.pilot_accuracy")?.value),
    }
}

/// Flow and grade.
#[derive(Debug, Clone)]
pub(crate) struct Gravity {
    pub(crate) roughness: Cited<Ratio>,
    pub(crate) flow_min: Option<Cited<VolumeRate>>,
    pub(crate) flow_max: Option<Cited<VolumeRate>>,
    /// From a high spot to the next low one.
    pub(crate) half_wave: Option<Cited<Length>>,
    /// What is taken where the file does not tell it.
    pub(crate) waves: Waves,
    pub(crate) cleaning_stress: Cited<Pressure>,
    /// Velocity of the full pipe, at most.
    pub(crate) fastest: Cited<Velocity>,
    /// Slope that pulled lines are asked for: usual low and high end.
    pub(crate) pulled_floor: (Ratio, Cited<Ratio>),
}

/// What a pipe is as a sewer.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Sewer {
    pub(crate) inside: Cited<Length>,
    pub(crate) least_slope: Cited<Ratio>,
    pub(crate) sag: Cited<Length>,
    /// Whether the sag is a limit of a code, and not a habit.
    pub(crate) sag_is_real: bool,
}

/// The surface.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Surface {
    /// Whether the file says what lies over the bore.
    pub(crate) is_told: bool,
    /// Whether traffic is that of load models, and not that of American railways.
    pub(crate) by_load_model: bool,
    pub(crate) road: bool,
    pub(crate) railway: bool,
    pub(crate) stream: bool,
    /// Tracks, a runway or a stream: no pit is dug in it, and no gauge answers for the fluid that comes up in it.
    pub(crate) guarded: bool,
    /// The railway permits a pipe without a casing, by the word of the file.
    pub(crate) uncased: bool,
    /// Whether the file limits how far it may move.
    pub(crate) is_limited: bool,
    /// As its owner allows; least and most of what owners usually do where the file does not tell; none of open ground.
    pub(crate) settlement: Option<Ends<Cited<Length>>>,
    /// The same of its slope.
    pub(crate) slope: Option<Ends<Cited<Ratio>>>,
}

/// A service that is crossed or runs beside the bore.
#[derive(Debug, Clone)]
pub(crate) struct Crossing {
    pub(crate) name: String,
    #[cfg_attr(not(feature = "report"), expect(dead_code, reason = "only printed"))]
    pub(crate) at: Length,
    pub(crate) depth: Length,
    /// Distance from the axis in plan; zero where it is crossed.
    pub(crate) beside: Length,
    /// Depth of the invert there.
    pub(crate) invert: Length,
    /// Positions of its stretch, and of the next where it lies at the end of one.
    pub(crate) stretches: [usize; 2],
    /// Whether the file limits how far it may move.
    pub(crate) is_limited: bool,
    /// As its owner allows, or least and most of what owners usually do.
    pub(crate) settlement: Ends<Cited<Length>>,
    /// The same of its slope.
    pub(crate) slope: Ends<Cited<Ratio>>,
    pub(crate) clearance: Option<Cited<Length>>,
    pub(crate) gas: bool,
}

impl Crossing {
    /// Distance of its near side from the axis of a bore for a pipe of this outside diameter.
    pub(crate) fn axis_distance(&self, outside_diameter: Length) -> Length {
        (self.invert - outside_diameter / 2.0 - self.depth).hypot(self.beside)
    }
}

looked_up! {
    /// Settlement.
    Movement of |handbook, by_stretch: Vec<Option<Trough>>, by_slurry: bool| {
        /// By stretch; none where no source tells the width of the trough in its ground.
        troughs: Vec<Option<Trough>> = by_stretch,
        /// Overcut of a jacked pipe on the radius, where the file tells no bore.
        overcut: Ends<Length> = {
            let row = handbook.hole_overcut()?.row(if by_slurry { "machine_annulus" } else { "guided_stable" })?.value;
            Ends { low: row.low.as_ref().unwrap_or(&row.high).value, high: row.high.value }
        },
        /// The least that can be asked of a steel casing, which is bored as wide as it is.
        of_casing: Length = handbook.length("overcut.casing_least")?.value,
        /// Share of the annulus of a pulled pipe that closes where it is left full.
        closes: Cited<Ratio> = handbook.ratio("settlement.annulus_left")?,
        /// The same where it is grouted.
        closes_grouted: Cited<Ratio> = handbook.ratio("settlement.annulus_grouted")?,
        /// Volume lost at the face.
        face_loss: FaceLosses = FaceLosses::read(handbook)?,
    }

    /// Volume lost at a face, over that of the bore.
    FaceLosses of |handbook| {
        usual: Cited<Ends<Ratio>> = Ends::spanned(handbook.volume_loss()?.span("closed_usual")?),
        /// Of clay that hardly yields, up to a stability number.
        firm: Cited<Ends<Ratio>> = Ends::spanned(handbook.volume_loss()?.span("firm_clay")?),
        firm_to: Ratio = handbook.ratio("settlement.firm_number")?.value,
        /// Of what ravels into an open shield.
        ravelling: Cited<Ends<Ratio>> = Ends::spanned(handbook.volume_loss()?.span("open_ravelling")?),
    }
}

/// The trough over one stretch.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Trough {
    /// Width over depth, low and high.
    pub(crate) ratio: (Ratio, Ratio),
    /// Share of the annulus that closes: low, usual high end, bound.
    pub(crate) closed: (Ratio, Ratio, Ratio),
    /// Whether the ground may be any soil, so that at best the trough is the widest.
    pub(crate) of_any_soil: bool,
    pub(crate) origin: Origin,
}

looked_up! {
    /// Least cover.
    Cover of |handbook, least_invert: Length, in_loose_sand: bool, bed_is_rock: bool, has_depths: bool| {
        /// Least depth of the invert.
        shallowest: Length = least_invert,
        /// Length and multiple of the outside diameter for jacked pipe.
        jacked: (Length, Cited<Ratio>) =
            over(handbook, "jacked", if in_loose_sand { "jacked_loose_sand" } else { "jacked" })?,
        /// Below a road, for drilled bores: largest diameter of the row, and cover; by rising diameter.
        drilled: UpTo = under_road(handbook)?,
        /// Below a railway.
        rail: Cited<Length> = handbook.minimum_cover()?.cell("rail", |row| &row.cover)?,
        /// Below the bed of a stream: usually, and at least, where that is not rock.
        stream: Cited<Length> = handbook.minimum_cover()?.cell("stream", |row| &row.cover)?,
        bed: Option<Cited<Length>> =
            Some(handbook.minimum_cover()?.cell("stream_soil", |row| &row.cover)?).filter(|_| !bed_is_rock),
        /// Whether the file tells the surface between the pits, and with it the bed of a stream.
        bed_is_told: bool = has_depths,
        /// Of any bore: length and multiple of it.
        least: (Length, Cited<Ratio>) = over(handbook, "any", "any")?,
        /// Clear distance of what is dug up and seen before a bore crosses it: least, and multiple.
        exposed: (Length, Cited<Ratio>) = clear(handbook, "exposed_crossing")?,
        /// Clear distance of jacked and of drilled bores beside each other: least, and multiple.
        clear_jacked: Cited<Ratio> = handbook.separation()?.cell("parallel_jacked", |row| &row.times)?,
        clear_drilled: (Length, Cited<Ratio>) = clear(handbook, "parallel_drilled")?,
        /// To a gas main.
        clear_gas: Cited<Length> = handbook.separation()?.cell("gas", |row| &row.clear)?,
    }
}

/// Cover up to a diameter, the last one for any.
type UpTo = Vec<(Option<Length>, Cited<Length>)>;

/// Cover by the rows of its length and of its multiple.
fn over(handbook: &Handbook, length: &str, times: &str) -> Result<(Length, Cited<Ratio>), HandbookError> {
    let table = handbook.minimum_cover()?;
    Ok((table.cell(length, |row| &row.cover)?.value, table.cell(times, |row| &row.times_high)?))
}

fn clear(handbook: &Handbook, key: &str) -> Result<(Length, Cited<Ratio>), HandbookError> {
    let table = handbook.separation()?;
    Ok((table.cell(key, |row| &row.clear)?.value, table.cell(key, |row| &row.times)?))
}

/// Cover of drilled bores under a road, by rising diameter.
fn under_road(handbook: &Handbook) -> Result<UpTo, HandbookError> {
    const METHOD: &str = "directional drilling under a road";
    let table = handbook.minimum_cover()?;
    let mut drilled = Vec::new();
    for row in table.iter().filter(|row| row.value.value.method.value.0 == METHOD) {
        let least = row.value.value.cover.as_ref().ok_or_else(|| table.lacks(METHOD))?.value;
        drilled.push((row.value.value.diameter_to.as_ref().map(|to| to.value), Cited::new(least, row.origin)));
    }
    let end = |to: Option<Length>| to.map_or(f64::INFINITY, Measure::si);
    drilled.sort_by(|a, b| end(a.0).total_cmp(&end(b.0)));
    Ok(drilled)
}

looked_up! {
    /// Open face in clay.
    FaceRule: Copy of |handbook, on_surface: Ends<Pressure>, spoil: Spoil, held_at: Option<Ends<Pressure>>| {
        /// Load on the surface where the soil of the file has none: least and most.
        surcharge: Ends<Pressure> = on_surface,
        /// Whether the face stands open.
        open: bool = spoil != Spoil::Slurry,
        /// Where somebody works at the face: the least inside diameter that is entered, and the usual one.
        entered: Option<Ends<Cited<Length>>> =
            Some(Ends::read(["entry.least", "stations.person_entry"], |key| handbook.length(key))?)
                .filter(|_| spoil == Spoil::OpenEdge),
        warn: Ratio = stability(handbook)?[0].value,
        refuse: Cited<Ratio> = stability(handbook)?[1],
        /// Number at failure, without a factor.
        unstable: Ratio = stability(handbook)?[2].value,
        /// Pressure that a closed face is held at, where the file tells it.
        held: Option<Ends<Pressure>> = held_at,
        /// Margin over water and active pressure.
        over_active: Pressure = handbook.pressure("face.over_active")?.value,
        /// Share of the total stress that a closed face is held at, at most.
        greatest: Cited<Ratio> = handbook.ratio("face.greatest")?,
        /// Between the least and the greatest pressure that a machine can hold.
        window: Pressure = handbook.pressure("face.window")?.value,
    }
}

/// Stability numbers at which an open face is looked after, is refused, and fails.
fn stability(handbook: &Handbook) -> Result<[Cited<Ratio>; 3], HandbookError> {
    let table = handbook.stability_number()?;
    let from = |key| table.cell(key, |row| &row.from);
    let [warn, refuse, unstable] = [from("open_face_warn")?, from("open_face_refuse")?, from("unstable")?];
    let rise = warn.value.si() > 0.0 && warn.value <= refuse.value && refuse.value <= unstable.value;
    table.holds(rise, "open_face_warn, open_face_refuse, unstable", "the numbers do not rise")?;
    Ok([warn, refuse, unstable])
}

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

/// Metres a shift, shifts of the work beside the bore, and prices.
#[derive(Debug, Clone)]
pub(crate) struct Pace {
    pub(crate) pilot: Option<Rate>,
    pub(crate) casing: Option<Rate>,
    pub(crate) reaming: Option<Rate>,
    pub(crate) jacking: Option<Rate>,
    /// Pipe that pushes out a casing.
    pub(crate) behind_casing: Option<Rate>,
    pub(crate) pullback: Option<Rate>,
    /// True where the rate of the pipe in clay holds the pilot too.
    pub(crate) pilot_in_pipe: bool,
    /// Rates of a guided bore in clay, which go before those above for pipe of their sizes.
    pub(crate) clay: ClayPace,
    /// Share of the clear rate that is planned with: low and high.
    pub(crate) planned: (Ratio, Cited<Ratio>),
    pub(crate) shift_length: Cited<Time>,
    pub(crate) shifts: WorkShifts,
    pub(crate) fusion: Vec<FusionPace>,
    /// Length of one pipe of a string.
    pub(crate) stick: Cited<Length>,
    pub(crate) programme: Option<Cited<Ratio>>,
    pub(crate) prices: Prices,
}

looked_up! {
    /// Shifts of the work beside the bore.
    WorkShifts: Copy of |handbook, both_pits: Cited<Band<Ratio>>| {
        /// Both pits.
        pits: Cited<Band<Ratio>> = both_pits,
        set_up: Cited<Band<Ratio>> = handbook.stage_shifts()?.levels("set_up")?,
        ramp: Cited<Band<Ratio>> = handbook.stage_shifts()?.levels("ramp")?,
        /// One joint.
        weld: Cited<Band<Ratio>> = handbook.stage_shifts()?.levels("weld")?,
        restrained_joint: Cited<Band<Ratio>> = handbook.stage_shifts()?.levels("restrained_joint")?,
        grouting: Cited<Band<Ratio>> = handbook.stage_shifts()?.levels("grouting")?,
        recovery: Cited<Band<Ratio>> = handbook.stage_shifts()?.levels("recovery")?,
    }
}

/// Fused joints a shift, up to a size of pipe.
#[derive(Debug, Clone, Copy)]
pub(crate) struct FusionPace {
    pub(crate) size_to: Length,
    pub(crate) low: Ratio,
    pub(crate) high: Ratio,
    pub(crate) origin: Origin,
}

/// Prices in the user's money; none is ever assumed.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Prices {
    pub(crate) shift: Option<Cited<Ratio>>,
    pub(crate) setup: Option<Cited<Ratio>>,
    pub(crate) pit: Option<Cited<Ratio>>,
    pub(crate) spoil: Option<Priced<Volume>>,
    pub(crate) grout: Option<Priced<Volume>>,
    /// Whether the file prices the pipes it lists.
    pub(crate) pipes: bool,
    pub(crate) budget: Option<Cited<Ratio>>,
}

/// Price of an amount.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Priced<Q> {
    pub(crate) price: Cited<Ratio>,
    pub(crate) per: Q,
}

/// Recalled rates of a guided bore in clay, where the file gives none and clears the soil by auger.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct ClayPace {
    pub(crate) pilot: Option<SizedRate>,
    pub(crate) jacking: Option<SizedRate>,
}

/// A rate for some sizes of pipe.
#[derive(Debug, Clone, Copy)]
pub(crate) struct SizedRate {
    pub(crate) sizes: (Length, Length),
    pub(crate) rate: Rate,
}

impl SizedRate {
    /// The rate, for pipe of a size that it is for.
    pub(crate) fn of(&self, size: Length) -> Option<Rate> {
        (self.sizes.0 <= size && size <= self.sizes.1).then_some(self.rate)
    }
}

/// Length put in a shift.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Rate {
    pub(crate) low: Length,
    pub(crate) high: Length,
    pub(crate) origin: Origin,
}

looked_up! {
    /// What fluid has to be over water, or over the crown where that is dry.
    FluidRule: Copy of |handbook| {
        /// Over the pressure of the water at the crown.
        over_water: Cited<Pressure> = handbook.pressure("bore.fluid_over_water")?,
        /// Over a crown without water.
        over_crown: Cited<Length> = handbook.length("bore.fluid_over_crown")?,
        /// The same where both pits are kept full at all times.
        over_crown_least: Length = handbook.length("bore.fluid_over_crown_least")?.value,
    }
}

/// How fluid holds a bore.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Held {
    /// It presses no harder than the water, or stands hardly over a crown that is dry.
    Not,
    /// It stands over the water, or over a crown that is dry, by less than it ought to.
    Barely,
    /// It holds it.
    Well,
}

/// Pressure of fluid over that of the ground water up to which it holds nothing: our judgement, below the 1.05 of clean mud.
const HARDLY: f64 = 1.03;

impl FluidRule {
    /// Fluid and water over the crown, as they stand and as they press.
    pub(crate) fn holds(&self, (fluid, water): (Length, Length), (pressure, pore): (Pressure, Pressure)) -> Held {
        let dry = Length::default();
        if water <= dry {
            return if fluid >= self.over_crown.value {
                Held::Well
            } else if fluid >= self.over_crown_least {
                Held::Barely
            } else {
                Held::Not
            };
        }
        // Mud hardly heavier than water holds nothing.
        if pressure.si() <= pore.si() * HARDLY {
            Held::Not
        } else if pressure < pore + self.over_water.value {
            Held::Barely
        } else {
            Held::Well
        }
    }
}

/// A curve that the whole of a jacked line is planned on.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Curve {
    pub(crate) radius: Cited<Length>,
    /// Friction coefficient of the pipe on the outer side of the curve: at its best, and on the safe side.
    pub(crate) friction: Ends<Ratio>,
    /// Yield of welded steel over what pushing and bending may come to.
    pub(crate) steel_factor: Cited<Ratio>,
}
