//! Pits: floor in clay, uplift by water below, room for what goes in, and the crane.

use super::plan::Plan;
use super::stress::weight;
use crate::check::{Absent, Check, Outcome, at_least, at_most, only};
use crate::drive::{Column, Drive, Ends, Pit, PitSides, PitSpace, Strength, StrengthBy, Stretch};
use crate::handbook::Method;
use crate::law::{Calc, Law, Recorder};
use crate::laws::pit_base::{BaseHeave, BaseHeaveTerzaghi, BaseUplift, BearingFactorSkempton};
use crate::laws::room::PitSide;
use crate::quantity::{Area, Band, Force, Length, Pressure, Ratio, Role, UnitWeight};
use crate::source::Cited;

const HEAVE: &str = "undrained strength of the ground at the pit; walls that reach deeper are not counted";
const HEAVE_BY_BLOWS: &str =
    "strength by the blow count: give undrained_strength; walls that reach deeper are not counted";
const HEAVE_OTHER: &str = "the strength given is more than the other clay has: that one by its blow count, list it as the \
                           class; walls that reach deeper are not counted";
const UPLIFT: &str = "by weight alone, without friction on the walls";
const SIDES: &str = "likely with the shortest usual plant, high with plant that is not known";
const OUT: &str =
    "for sections as long as the pipes, or pieces joined in the pit; a machine that comes out may be longer";
const AREA: &str = "pit, plant and store; a string on the ground needs its lay-down beside it";
const LIFT: &str = "one pipe and the margin of the crane; machine and frame may weigh more";
const STROKE: &str = "a longer pipe is pushed with a spacer between jacks and pipe, and stands while that is set";

/// Each pit with the ground at it.
fn ends(drive: &Drive) -> impl Iterator<Item = (&Pit, &Stretch)> {
    let ends = [(&drive.site.launch, drive.stretches.first()), (&drive.site.reception, drive.stretches.last())];
    ends.into_iter().filter_map(|(pit, stretch)| Some((pit, stretch?)))
}

/// The worse of both pits.
pub(crate) fn base_heave<R: Recorder>(at: &Plan<'_>, calc: &mut Calc<R>) -> Outcome {
    let need = at.drive.site.pit_rules.heave;
    let clays = || ends(at.drive).filter_map(|(pit, stretch)| Some((pit, stretch, clay_below(stretch)?)));
    only(clays().next().is_some(), "no clay is told at the pits")?;
    let spaces = clays().filter_map(|(pit, stretch, clay)| Some((pit.space.as_ref()?, stretch, clay)));
    let checks = spaces.map(|(space, stretch, Strength { ends, by })| {
        calc.part("base of a pit in clay");
        // The weakest clay under the heaviest soil; not decided where the best of both would do.
        let [adverse, favourable] =
            [(stretch.heavy(), ends.low), (stretch.light(), ends.high)].map(|(column, clay)| {
                let safety = calc.doubted(|calc| Band::same(heave(calc, space, column, clay)));
                at_least(Role::Ratio, safety, need)
            });
        adverse.with_note(by.note([HEAVE, HEAVE_BY_BLOWS, HEAVE_OTHER])).at_best(favourable)
    });
    checks.reduce(Check::worse).ok_or(Absent::Missing)
}

/// The worse of both pits.
pub(crate) fn uplift<R: Recorder>(at: &Plan<'_>, calc: &mut Calc<R>) -> Outcome {
    let (low, high) = at.drive.site.pit_rules.uplift;
    let need = high.map(|high| Band { low, likely: low, high });
    let tight = ends(at.drive).filter_map(|(pit, stretch)| Some((pit.space.as_ref()?.tight?, stretch)));
    let checks = tight.map(|((thickness, water_pressure), stretch)| {
        calc.part("uplift of the base of a pit");
        let [adverse, favourable] = [stretch.light(), stretch.heavy()].map(|column| {
            let factor = calc.doubted(|calc| {
                let unit_weight = column.soil.at_pipe().map_or(UnitWeight::default(), |layer| layer.saturated);
                Band::same(calc.law(BaseUplift { unit_weight, thickness, water_pressure }))
            });
            at_least(Role::Ratio, factor, need)
        });
        adverse.with_note(UPLIFT).at_best(favourable)
    });
    checks.reduce(Check::worse).ok_or(Absent::Missing)
}

/// Clay at a pit: that of the stretch, and any ground whose undrained strength the file gives.
fn clay_below(stretch: &Stretch) -> Option<Strength> {
    let given = stretch.earth.heavy.undrained;
    let given = given.map(|given| Strength { ends: Ends::same(given.strength), by: StrengthBy::File });
    stretch.earth.strength.or(given)
}

/// The lesser safety of the two equations, where the second holds.
fn heave<R: Recorder>(calc: &mut Calc<R>, space: &PitSpace, column: Column<'_>, undrained_strength: Pressure) -> Ratio {
    let depth = space.floor;
    let (unit_weight, surcharge) = (weight(calc, column, depth) / depth, column.soil.surcharge);
    let (width, length) = (space.width.value.min(space.length.value), space.width.value.max(space.length.value));
    let bearing_factor = calc.law(BearingFactorSkempton { depth, width, length });
    let safety = calc.law(BaseHeave { bearing_factor, undrained_strength, unit_weight, depth, surcharge });
    let wide = BaseHeaveTerzaghi { undrained_strength, unit_weight, depth, width, surcharge };
    if wide.in_range() { safety.min(calc.law(wide)) } else { safety }
}

/// One of the two pits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Place {
    /// Where the stem starts.
    Launch,
    /// Where it arrives.
    Reception,
}

impl Place {
    const fn pit(self, drive: &Drive) -> &Pit {
        match self {
            Self::Launch => &drive.site.launch,
            Self::Reception => &drive.site.reception,
        }
    }
}

/// The longest part and the largest diameter that pass a pit. Jacking: pipes go in at the launch, and what comes out at
/// the reception is no longer than what the launch pit took. Pullback: rods of the stem and the last reamer come out at
/// the launch; at the reception a string comes down its ramp, which has a check of its own, or is joined piece by piece.
fn passes(at: &Plan<'_>, place: Place) -> (Option<Length>, Length) {
    let (pipe, works) = (at.pipe, at.drive.pull.as_ref().map(|pull| &pull.works));
    match (at.method, place) {
        (Method::PipeJacking, _) => {
            (Some(pipe_length(at)), pipe.casing_diameter().unwrap_or(pipe.outside_diameter.value))
        }
        (Method::Pullback, Place::Launch) => {
            let rod = works.and_then(|works| works.rods).map(|(rod, _)| rod);
            (Some(rod.unwrap_or(at.drive.site.pit_rules.pipe_length.value)), pipe.bore.value)
        }
        (Method::Pullback, Place::Reception) => {
            let laydown = works.and_then(|works| works.laydown);
            (laydown.filter(|laydown| laydown.in_pit).map(|laydown| laydown.length), pipe.bore.value)
        }
    }
}

fn rules(at: &Plan<'_>, place: Place) -> PitSides {
    let rules = &at.drive.site.pit_rules;
    match (at.method, place) {
        (_, Place::Reception) => rules.reception,
        (Method::PipeJacking, Place::Launch) => rules.launch,
        (Method::Pullback, Place::Launch) => rules.launch_pulled,
    }
}

/// A side for what passes, likely and high.
fn side<R: Recorder>(
    calc: &mut Calc<R>,
    whole: bool,
    part: Length,
    (low, high): (Length, Cited<Length>),
) -> Cited<Band<Length>> {
    let mut one = |allowance| if whole { allowance } else { calc.law(PitSide { part, allowance }) };
    let low = one(low);
    high.map(|high| Band { low, likely: low, high: one(high) })
}

/// Length of a pit, likely and high; none where a ramp sets it.
pub(super) fn length_needed<R: Recorder>(
    calc: &mut Calc<R>,
    at: &Plan<'_>,
    place: Place,
) -> Option<Cited<Band<Length>>> {
    let sides = rules(at, place);
    passes(at, place).0.map(|part| side(calc, sides.whole, part, sides.length))
}

/// Width of a pit, likely and high.
pub(super) fn width_needed<R: Recorder>(calc: &mut Calc<R>, at: &Plan<'_>, place: Place) -> Cited<Band<Length>> {
    let sides = rules(at, place);
    side(calc, sides.whole, passes(at, place).1, sides.width)
}

fn space<'a, R: Recorder>(at: &Plan<'a>, calc: &mut Calc<R>, place: Place) -> Result<&'a PitSpace, Absent> {
    let space = place.pit(at.drive).space.as_ref().ok_or(Absent::Missing)?;
    calc.part(if place == Place::Launch { "room in the launch pit" } else { "room in the reception pit" });
    Ok(space)
}

fn roomy(there: Cited<Length>, need: Cited<Band<Length>>, place: Place) -> Check<()> {
    let note = if place == Place::Launch { SIDES } else { OUT };
    at_least(Role::Distance, there.value, need).with_note(note)
}

pub(crate) fn length<R: Recorder>(at: &Plan<'_>, calc: &mut Calc<R>, place: Place) -> Outcome {
    only(passes(at, place).0.is_some(), "the ramp of the string sets it")?;
    let space = space(at, calc, place)?;
    let need = length_needed(calc, at, place).ok_or(Absent::Missing)?;
    Ok(roomy(space.length, need, place))
}

pub(crate) fn width<R: Recorder>(at: &Plan<'_>, calc: &mut Calc<R>, place: Place) -> Outcome {
    let space = space(at, calc, place)?;
    Ok(roomy(space.width, width_needed(calc, at, place), place))
}

/// Working area at a pit, likely and high.
pub(super) fn area_needed(at: &Plan<'_>, place: Place) -> Cited<Band<Area>> {
    let rules = &at.drive.site.pit_rules;
    let [launch, reception] = if at.is_jacked() { rules.area_jacked } else { rules.area_pulled };
    let (low, high) = if place == Place::Launch { launch } else { reception };
    high.map(|high| Band { low, likely: low, high })
}

pub(crate) fn area(at: &Plan<'_>, place: Place) -> Outcome {
    let there = place.pit(at.drive).area.ok_or(Absent::Missing)?;
    Ok(at_least(Role::GroundArea, there.value, area_needed(at, place)).with_note(AREA))
}

/// Length of one jacking pipe: the file's, or the longest usual one of clay.
fn pipe_length(at: &Plan<'_>) -> Length {
    at.pipe.segment.unwrap_or(at.drive.site.pit_rules.pipe_length.value)
}

/// The heaviest known lift with the margin of the crane.
pub(super) fn lift(at: &Plan<'_>) -> Option<Force> {
    let margin = at.drive.site.pit_rules.crane_margin.value;
    at.pipe.jacked_weight().map(|weight| weight * pipe_length(at) * (1.0 + margin.value))
}

pub(crate) fn crane(at: &Plan<'_>) -> Outcome {
    only(at.is_jacked(), "the pipe is not pushed")?;
    let lift = lift(at).ok_or(Absent::NotApplicable("the weight of the pipe is not known"))?;
    let crane = at.drive.site.launch.space.and_then(|space| space.crane).ok_or(Absent::Missing)?;
    Ok(at_most(Role::Thrust, lift, crane).with_note(LIFT))
}

pub(crate) fn stroke(at: &Plan<'_>) -> Outcome {
    only(at.is_jacked(), "the pipe is not pushed")?;
    let stroke = at.drive.rig.stroke.ok_or(Absent::Missing)?;
    Ok(at_most(Role::Distance, pipe_length(at), stroke).with_note(STROKE))
}
