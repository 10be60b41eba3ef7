//! Pits: floor in clay, uplift by water below, room for what goes in, and the crane.

use super::plan::Plan;
use super::stress::weight;
use crate::check::{
    Absent, Care, Draft, Outcome, Rule, Subject, Verdict, Ways, at_least, at_most, only, rated, required,
};
use crate::drive::{Column, Drive, Ends, Pit, PitSides, PitSpace, Strength, StrengthBy, Stretch};
use crate::handbook::{GroundClass, Method, Treatment};
use crate::law::{Calc, Law};
use crate::laws::pit_base::{BaseHeave, BaseHeaveTerzaghi, BaseUplift, BearingFactorSkempton, CriticalGradient};
use crate::laws::pit_water::{BoilingInside, CrowdedFlow, HeadAtToe, WallsBelow};
use crate::laws::room::PitSide;
use crate::laws::soil::water_unit_weight;
use crate::quantity::{Area, Band, Force, Length, Pressure, Ratio, Role, UnitWeight};
use crate::source::Cited;

const HEAVE: &str = "undrained strength of the ground at the pit; shoring below the floor counts where its toe \
    depth is given";
const HEAVE_BY_BLOWS: &str =
    "strength by the blow count: give undrained_strength; shoring below the floor counts where its toe depth is given";
const HEAVE_OTHER: &str = "the strength given is more than the other clay can have, which is taken by its blow \
    count: list that clay as the class; shoring below the floor counts where its toe depth is given";
const SHORED: &str = "not all is given of the pits: the floor holds in a pit as told, or else no wider than it is deep, no longer than twice that, and \
    shored to half its width below the floor: build them so, or have the base designed";
const DRAINED: &str = "wells keep the water 0.5 m (20 in) under the floor as long as the pit is open";
const SEALED: &str = "the sealed base is taken from the file: its weight and anchors must hold the water, \
    and a seal at each eye that which stands outside";
const WELLS: &str = "head of water over the floor, of which the file does not say how it is kept out: a sealed base, wells that \
    keep it 0.5 m (20 in) under the floor, or shoring to about one and a half times the head below it";
const BARE: &str =
    "neither wells nor a sealed base: the floor boils unless the shoring goes deep enough below it: give its toe";
const DEEP: &str = "more water stands over the floor than one stage of wells keeps out, and the file does not say how it is kept \
    out: a sealed base, as a plug under water or a caisson has, with a seal at each \
    eye, or deep wells, designed before the pit is dug";
const TOE: &str = "water that flows round the toe of the shoring and up to the floor, more in a narrow pit";
const TIGHT: &str = "the pit is shorter or narrower than what must go in with people beside it";
const UPLIFT: &str = "by weight alone, without friction on the walls";
const SIDES: &str = "with the shortest usual plant; plant that is not known may be longer";
const OUT: &str =
    "for sections as long as the pipes, or pieces joined in the pit; a machine that comes out may be longer";
const AREA: &str = "pit, plant and store; a string on the ground needs its lay-down beside it";
const LIFT: &str = "one pipe and the margin of the crane; machine and frame may weigh more";
const STROKE: &str = "a longer pipe is pushed with a spacer, and stands while that is set";

/// Each pit with the ground at it.
fn ends(drive: &Drive) -> impl Iterator<Item = (&Pit, &Stretch)> {
    let ends = [(&drive.site.launch, drive.stretches.first()), (&drive.site.reception, drive.stretches.last())];
    ends.into_iter().filter_map(|(pit, stretch)| Some((pit, stretch?)))
}

/// The worse of both pits: the weakest clay under the heaviest soil in the deepest pit that it may be; not decided where
/// the best of all would do.
pub(crate) fn base_heave(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    let need = at.drive.site.pit_rules.heave;
    // No toe counts in a pit of which nobody tells the width.
    const TOES: [Ways; 3] = [
        &[&["launch.space", "launch.wall_toe_depth"]],
        &[&["reception.space", "reception.wall_toe_depth"]],
        &[&["launch.space", "launch.wall_toe_depth", "reception.space", "reception.wall_toe_depth"]],
    ];
    let [launch, reception, both] = TOES;
    let in_clay = ends(at.drive).all(|(_, stretch)| clay_below(stretch).is_some());
    let toes = if in_clay { [both; 2] } else { [launch, reception] };
    let clays = ends(at.drive).zip(toes);
    let checks = clays.filter_map(|((pit, stretch), by_toe)| Some((pit, stretch, by_toe, clay_below(stretch)?))).map(
        |(pit, stretch, by_toe, Strength { ends, by })| {
            calc.part("base of a pit in clay");
            let mut safety = |asked, strengths: Band<Pressure>, best| {
                let safety =
                    calc.doubted(|calc| strengths.map(|clay| heave(calc, at, (pit, asked), stretch, clay, best)));
                at_least(Role::Ratio, safety, need)
            };
            // Likely with a strength between the ends, high with the weakest.
            let middle = (ends.low + ends.high) / 2.0;
            let weak = Band { low: middle, likely: middle, high: ends.low };
            let adverse = safety(None, weak, false);
            let favourable = safety(None, Band::same(ends.high), true);
            let settled: Ways = match by {
                StrengthBy::File => by_toe,
                StrengthBy::Blows | StrengthBy::OtherClay => &[&["ground[].soil.undrained_strength"]],
                StrengthBy::Class => &[&["ground[].spt_n"], &["ground[].soil.undrained_strength"]],
            };
            let check = adverse
                .with_note(by.note([HEAVE, HEAVE_BY_BLOWS, HEAVE_OTHER]))
                .at_best(favourable)
                .settled_by(settled);
            let rule = Subject::PitHeave.decides().rule(&at.drive.leeway);
            let open = check.by(rule).verdict() == Verdict::NotDecided;
            let untold = (pit.space.is_none() || pit.toe.is_none()) && open;
            let shored = untold.then(|| safety(Some(Shored::of(pit, at.drive.site.pit_rules.below)), weak, false));
            let shored = shored.filter(|shored| shored.by(rule).verdict() <= Verdict::WithCare);
            shored.map_or(check, |shored| shored.with_care(Care::Condition, SHORED))
        },
    );
    checks.reduce(Draft::worse).ok_or(Absent::NotApplicable("no clay is given at the pits"))
}

/// Sides of a pit, and its shoring below the floor.
#[derive(Clone, Copy)]
struct Shored {
    width: Length,
    length: Length,
    toe: Option<Length>,
}

impl Shored {
    /// What can be asked for of what nobody tells.
    fn of(pit: &Pit, below: Ratio) -> Self {
        let told = Self::told(pit, pit.base.high);
        let (width, length) = told.map_or((pit.base.high, 2.0 * pit.base.high), |told| (told.width, told.length));
        let toe = pit.toe.map_or(below * width, |toe| (toe.value - pit.base.high).max(Length::default()));
        Self { width, length, toe: Some(toe) }
    }

    /// As the file tells it, under a floor of this depth.
    fn told(pit: &Pit, depth: Length) -> Option<Self> {
        let space = pit.space?;
        let (one, other) = (space.width.value, space.length.value);
        let toe = pit.toe.map(|toe| (toe.value - depth).max(Length::default()));
        Some(Self { width: one.min(other), length: one.max(other), toe })
    }
}

/// Safety of one base in clay: the lesser of the two equations, where the second holds.
fn heave(
    calc: &mut Calc,
    at: &Plan<'_>,
    (pit, asked): (&Pit, Option<Shored>),
    stretch: &Stretch,
    undrained_strength: Pressure,
    best: bool,
) -> Ratio {
    let rules = &at.drive.site.pit_rules;
    let of = |ends: Ends<Ratio>| if best { ends.high } else { ends.low };
    let (column, depth, beside) = if best {
        (stretch.light(), pit.base.low, rules.beside.low)
    } else {
        (stretch.heavy(), pit.base.high, rules.beside.high)
    };
    let told = column.soil.surcharge;
    let surcharge = if told > Pressure::default() { told } else { beside };
    let unit_weight = weight(calc, column, depth) / depth;
    let adhesion = of(rules.adhesion);
    let Some(Shored { width, length, toe }) = asked.or(Shored::told(pit, depth)) else {
        // As deep as its shoring may be and as wide as it is: the gain is that of a square pit.
        let law = WallsBelow { adhesion, toe: rules.below * depth, width: depth, length: depth };
        let walls = if best { calc.law(law) } else { Ratio::default() };
        let bearing_factor = of(rules.bearing) + walls;
        return calc.law(BaseHeave { bearing_factor, undrained_strength, unit_weight, depth, surcharge });
    };
    let toe = toe.unwrap_or_else(|| if best { rules.below * width } else { Length::default() });
    let shape = calc.law(BearingFactorSkempton { depth, width, length });
    let bearing_factor = shape + calc.law(WallsBelow { adhesion, toe, width, length });
    let safety = calc.law(BaseHeave { bearing_factor, undrained_strength, unit_weight, depth, surcharge });
    let wide = BaseHeaveTerzaghi { undrained_strength, unit_weight, depth, width, surcharge };
    if wide.in_range() && toe == Length::default() { safety.min(calc.law(wide)) } else { safety }
}

/// The worse of both pits, where water stands over a floor in silt, sand, gravel or fill: what the file says of wells and
/// of the base is its word; a toe that it tells is judged; else wells, or a toe, are asked for as far as they go.
pub(crate) fn boiling(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    let rules = &at.drive.site.pit_rules;
    const SETTLED: [[Ways; 2]; 2] = [
        [&[&["launch.dewatered"], &["launch.sealed_base"]], &[&["launch.wall_toe_depth"]]],
        [&[&["reception.dewatered"], &["reception.sealed_base"]], &[&["reception.wall_toe_depth"]]],
    ];
    const BOTH: Ways =
        &[&["launch.dewatered", "reception.dewatered"], &["launch.sealed_base", "reception.sealed_base"]];
    const BOTH_TOES: Ways = &[&["launch.wall_toe_depth", "reception.wall_toe_depth"]];
    let wet = ends(at.drive).zip(SETTLED).filter_map(|((pit, stretch), ways)| {
        let table = pit.water?;
        (boils(stretch) && pit.base.high > table).then_some((pit, stretch, table, ways))
    });
    let checks = wet.map(|(pit, stretch, table, [settled, by_toe])| {
        let drained = pit.dewatered || stretch.treatment == Some(Treatment::Dewatered);
        if drained || pit.sealed_base {
            let note = if drained { DRAINED } else { SEALED };
            return rated(Verdict::Within, rules.boiling.origin).with_care(Care::Condition, note);
        }
        calc.part("base of a pit in sand");
        let Some(toe) = pit.toe else {
            if pit.bare {
                let bare = rated(Verdict::NotDecided, rules.boiling.origin).with_note(BARE);
                return bare.settled_by(by_toe);
            }
            let asked = required(Role::Depth, pit.base.high - table, rules.wells);
            // No head alone bars: how the water is kept out is what the contractor brings.
            return if asked.verdict() == Verdict::WithCare {
                asked.with_note(WELLS)
            } else {
                rated(Verdict::Within, rules.wells.origin).with_care(Care::Condition, DEEP)
            };
        };
        let [adverse, favourable] = [false, true].map(|best| {
            let column = if best { stretch.heavy() } else { stretch.light() };
            let floor = if best { pit.base.low } else { pit.base.high };
            let width = pit.space.map(|space| space.width.value.min(space.length.value));
            let factor = calc.doubted(|calc| {
                Band::same(inside(calc, column, (floor - table, toe.value - floor, width.unwrap_or_default())))
            });
            at_least(Role::Ratio, factor, rules.boiling)
        });
        adverse.with_note(TOE).at_best(favourable).settled_by(settled)
    });
    let mut open = 0;
    let checks = checks.inspect(|check| open += usize::from(check.verdict() == Verdict::NotDecided));
    let worst =
        checks.reduce(Draft::worse).ok_or(Absent::NotApplicable("no water stands over a floor that may boil"))?;
    let bare = at.drive.site.launch.bare || at.drive.site.reception.bare;
    Ok(if open > 1 { worst.settled_by(if bare { BOTH_TOES } else { BOTH }) } else { worst })
}

/// Safety against boiling inside the shoring; a width that is not told is narrow.
fn inside(calc: &mut Calc, column: Column<'_>, (head, toe, width): (Length, Length, Length)) -> Ratio {
    let water_weight = water_unit_weight();
    let saturated = column.soil.at_pipe().map_or(UnitWeight::default(), |layer| layer.saturated);
    let critical_gradient = calc.law(CriticalGradient { buoyant_weight: saturated - water_weight, water_weight });
    let head_at_toe = calc.law(HeadAtToe { head, toe });
    let crowded = calc.law(CrowdedFlow { width, head });
    calc.law(BoilingInside { critical_gradient, toe, head_at_toe, crowded })
}

/// Whether water can come up through the ground at a pit.
fn boils(stretch: &Stretch) -> bool {
    stretch.has(|class| class.runs() && class != GroundClass::Peat)
}

/// The worse of both pits.
pub(crate) fn uplift(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
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
    checks.reduce(Draft::worse).ok_or(Absent::Missing)
}

/// Clay at a pit: that of the stretch, and any ground whose undrained strength the file gives.
fn clay_below(stretch: &Stretch) -> Option<Strength> {
    let given = stretch.earth.heavy.undrained;
    let given = given.map(|given| Strength { ends: Ends::same(given.strength), by: StrengthBy::File });
    stretch.earth.strength.or(given)
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
            (Some(at.pipe_length().value), pipe.casing_diameter().unwrap_or(pipe.outside_diameter.value))
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
fn side(calc: &mut Calc, whole: bool, part: Length, (low, high): (Length, Cited<Length>)) -> Cited<Band<Length>> {
    let mut one = |allowance| if whole { allowance } else { calc.law(PitSide { part, allowance }) };
    let low = one(low);
    high.map(|high| Band { low, likely: low, high: one(high) })
}

/// Length of a pit, likely and high; none where a ramp sets it.
pub(super) fn length_needed(calc: &mut Calc, at: &Plan<'_>, place: Place) -> Option<Cited<Band<Length>>> {
    let sides = rules(at, place);
    passes(at, place).0.map(|part| side(calc, sides.whole, part, sides.length))
}

/// Width of a pit, likely and high.
pub(super) fn width_needed(calc: &mut Calc, at: &Plan<'_>, place: Place) -> Cited<Band<Length>> {
    let sides = rules(at, place);
    side(calc, sides.whole, passes(at, place).1, sides.width)
}

fn space<'a>(at: &Plan<'a>, calc: &mut Calc, place: Place) -> Result<&'a PitSpace, Absent> {
    let space = place.pit(at.drive).space.as_ref().ok_or(Absent::Missing)?;
    calc.part(if place == Place::Launch { "room in the launch pit" } else { "room in the reception pit" });
    Ok(space)
}

/// By habit; and what does not go in at all, where the part is known, is no habit.
fn roomy(there: Cited<Length>, need: Cited<Band<Length>>, place: Place, least: Option<Cited<Length>>) -> Draft {
    let note = if place == Place::Launch { SIDES } else { OUT };
    // Who tells the room knows the plant that is to go into it: the shortest usual one is the habit.
    let need = need.map(|need| Band { high: need.likely, ..need });
    let habit = at_least(Role::Distance, there.value, need).as_screen().with_note(note);
    let least = least.map(|least| at_least(Role::Distance, there.value, least).by(Rule::High).with_note(TIGHT));
    // Room is a matter of the plant: what is far from habit asks for care, and bars no scheme.
    let habit = if habit.verdict() == Verdict::NotDecided {
        rated(Verdict::WithCare, need.origin).with_note(note)
    } else {
        habit
    };
    match least.filter(|least| least.verdict() == Verdict::Over) {
        Some(least) => least,
        None => habit,
    }
}

/// Length without which what is known to go in does not.
fn least_length(at: &Plan<'_>, place: Place) -> Option<Cited<Length>> {
    let rules = &at.drive.site.pit_rules;
    let works = at.drive.pull.as_ref().map(|pull| &pull.works);
    let part = match (at.method, place) {
        (Method::PipeJacking, Place::Launch) => at.pipe.segment.unwrap_or(rules.shortest),
        (Method::PipeJacking, Place::Reception) => return None,
        (Method::Pullback, Place::Launch) => works.and_then(|works| works.rods).map(|(rod, _)| rod)?,
        (Method::Pullback, Place::Reception) => passes(at, place).0?,
    };
    Some(rules.least.0.map(|beside| part + beside))
}

pub(crate) fn length(at: &Plan<'_>, calc: &mut Calc, place: Place) -> Outcome {
    only(passes(at, place).0.is_some(), "the ramp of the string sets it")?;
    let space = space(at, calc, place)?;
    let need = length_needed(calc, at, place).ok_or(Absent::Missing)?;
    Ok(roomy(space.length, need, place, least_length(at, place)))
}

pub(crate) fn width(at: &Plan<'_>, calc: &mut Calc, place: Place) -> Outcome {
    let space = space(at, calc, place)?;
    let least = at.drive.site.pit_rules.least.1.map(|beside| passes(at, place).1 + beside);
    Ok(roomy(space.width, width_needed(calc, at, place), place, Some(least)))
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

/// The heaviest known lift with the margin of the crane.
pub(super) fn lift(at: &Plan<'_>) -> Option<Force> {
    let margin = at.drive.site.pit_rules.crane_margin.value;
    at.pipe.jacked_weight().map(|weight| weight * at.pipe_length().value * (1.0 + margin.value))
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
    Ok(at_most(Role::Distance, at.pipe_length().value, stroke).with_note(STROKE))
}
