//! What holds a face and a bore, and how hard fluid may press on the ground.

use super::earth::Ends;
use super::looked_up::looked_up;
use crate::handbook::{Handbook, HandbookError, Spoil};
use crate::quantity::{Length, Measure, Pressure, Ratio};
use crate::source::Cited;

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
