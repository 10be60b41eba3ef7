//! Pits: floor in clay, uplift by water below, room for what goes in, and the crane.

use super::clay;
use crate::check::{Check, Checks, Subject, Verdict};
use crate::drive::{Drive, Pipe, Pit, PitSpace, Stretch};
use crate::handbook::Method;
use crate::law::{Calc, Law, Recorder};
use crate::laws::pit_base::{BaseHeave, BaseHeaveTerzaghi, BaseUplift, BearingFactorSkempton};
use crate::laws::room::PitSide;
use crate::quantity::{Area, Band, Force, Length, Pressure, Ratio, Role};
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
const NO_WEIGHT: &str = "the unit weight of the ground is not known below water";

pub(super) fn checks<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, method: Method, checks: &mut Checks) {
    let ends = [(&drive.site.launch, drive.stretches.first()), (&drive.site.reception, drive.stretches.last())];
    for (pit, stretch) in ends {
        base(calc, drive, pit, stretch, checks);
    }
    for place in [Place::Launch, Place::Reception] {
        room(calc, drive, pipe, method, place, checks);
        area(drive, method, place, checks);
    }
    if let (Method::PipeJacking, Some(space)) = (method, &drive.site.launch.space) {
        crane(drive, pipe, space, checks);
    }
}

fn base<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pit: &Pit, stretch: Option<&Stretch>, checks: &mut Checks) {
    let (Some(space), Some(stretch)) = (&pit.space, stretch) else { return };
    let rules = &drive.site.pit_rules;
    if let Some(clay::Strength { levels, told }) = clay_below(drive, stretch) {
        calc.part("base of a pit in clay");
        let safety = calc.doubted(|calc| heave(calc, space, stretch, levels));
        let check = match safety.transpose() {
            Some(factor) => {
                let need = rules.heave.map(Band::same);
                let check = Check::at_least_by_level(Subject::PitHeave, Role::Ratio, factor, need);
                check.with_note(told.note([HEAVE, HEAVE_BY_BLOWS, HEAVE_OTHER]))
            }
            None => Check::rated(Subject::PitHeave, Verdict::NotDecided, rules.heave.origin).with_note(NO_WEIGHT),
        };
        checks.add_worse(check);
    }
    let Some(soil) = stretch.soil.as_deref() else { return };
    if let (Some((thickness, water_pressure)), Some(layer)) = (space.tight, soil.at_pipe()) {
        calc.part("uplift of the base of a pit");
        let unit_weight = layer.saturated.unwrap_or(layer.moist);
        let factor = calc.doubted(|calc| calc.law(BaseUplift { unit_weight, thickness, water_pressure }));
        let (low, high) = rules.uplift;
        let need = Cited::new(Band { low, likely: low, high: high.value }, high.origin);
        let check = Check::at_least_by_level(Subject::PitUplift, Role::Ratio, factor.map(Band::same), need);
        checks.add_worse(check.with_note(UPLIFT));
    }
}

/// Clay at a pit: that of the stretch, and any ground whose undrained strength the file gives.
fn clay_below(drive: &Drive, stretch: &Stretch) -> Option<clay::Strength> {
    let given = stretch.soil.as_deref().and_then(|soil| soil.undrained);
    let given = given.map(|given| clay::Strength { levels: Band::same(given.strength), told: clay::Told::Given });
    clay::strength(drive, stretch).or(given)
}

/// The lesser safety of the two equations, where the second holds.
fn heave<R: Recorder>(
    calc: &mut Calc<R>,
    space: &PitSpace,
    stretch: &Stretch,
    strength: Band<Pressure>,
) -> Option<Band<Ratio>> {
    let depth = space.floor;
    let (unit_weight, surcharge) = clay::load(calc, stretch, depth)?;
    let (width, length) = (space.width.value.min(space.length.value), space.width.value.max(space.length.value));
    let bearing_factor = calc.law(BearingFactorSkempton { depth, width, length });
    Some(strength.map(|undrained_strength| {
        let safety = calc.law(BaseHeave { bearing_factor, undrained_strength, unit_weight, depth, surcharge });
        let wide = BaseHeaveTerzaghi { undrained_strength, unit_weight, depth, width, surcharge };
        if wide.in_range() { safety.min(calc.law(wide)) } else { safety }
    }))
}

/// One of the two pits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Place {
    Launch,
    Reception,
}

impl Place {
    const fn pit(self, drive: &Drive) -> &Pit {
        match self {
            Self::Launch => &drive.site.launch,
            Self::Reception => &drive.site.reception,
        }
    }

    const fn subjects(self) -> [Subject; 2] {
        match self {
            Self::Launch => [Subject::PitLength, Subject::PitWidth],
            Self::Reception => [Subject::ReceptionLength, Subject::ReceptionWidth],
        }
    }
}

/// The longest part and the largest diameter that pass a pit. Jacking: pipes go in at the launch, and what comes out at
/// the reception is no longer than what the launch pit took. Pullback: rods of the stem and the last reamer come out at
/// the launch; at the reception a string comes down its ramp, which has a check of its own, or is joined piece by piece.
fn passes(drive: &Drive, pipe: &Pipe, method: Method, place: Place) -> (Option<Length>, Length) {
    match (method, place) {
        (Method::PipeJacking, _) => {
            let around = pipe.casing_diameter().unwrap_or(pipe.outside_diameter.value);
            (Some(pipe_length(drive, pipe)), around)
        }
        (Method::Pullback, Place::Launch) => {
            let rod = drive.pull.as_ref().and_then(|pull| pull.works.rods).map(|(rod, _)| rod);
            (Some(rod.unwrap_or(drive.site.pit_rules.pipe_length.value)), pipe.bore.value)
        }
        (Method::Pullback, Place::Reception) => {
            let laydown = drive.pull.as_ref().and_then(|pull| pull.works.laydown);
            (laydown.filter(|laydown| laydown.in_pit).map(|laydown| laydown.length), pipe.bore.value)
        }
    }
}

/// Length and width of a pit, likely and high; no length where a ramp sets it.
pub(super) fn sides<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    method: Method,
    place: Place,
) -> [Option<Cited<Band<Length>>>; 2] {
    let rules = &drive.site.pit_rules;
    let sides = match (method, place) {
        (_, Place::Reception) => rules.reception,
        (Method::PipeJacking, Place::Launch) => rules.launch,
        (Method::Pullback, Place::Launch) => rules.launch_pulled,
    };
    let (length, around) = passes(drive, pipe, method, place);
    let mut side = |part: Length, (low, high): (Length, Cited<Length>)| {
        let mut one = |allowance| if sides.whole { allowance } else { calc.law(PitSide { part, allowance }) };
        let (low, most) = (one(low), one(high.value));
        Cited::new(Band { low, likely: low, high: most }, high.origin)
    };
    [length.map(|length| side(length, sides.length)), Some(side(around, sides.width))]
}

/// Working area at a pit, likely and high.
pub(super) fn area_needed(drive: &Drive, method: Method, place: Place) -> Cited<Band<Area>> {
    let rules = &drive.site.pit_rules;
    let [launch, reception] = match method {
        Method::PipeJacking => rules.area_jacked,
        Method::Pullback => rules.area_pulled,
    };
    let (low, high) = if place == Place::Launch { launch } else { reception };
    high.map(|high| Band { low, likely: low, high })
}

fn area(drive: &Drive, method: Method, place: Place, checks: &mut Checks) {
    let Some(there) = place.pit(drive).area else { return };
    let (supply, need) = (Band::same(there.value), area_needed(drive, method, place));
    let subject = if place == Place::Launch { Subject::LaunchArea } else { Subject::ReceptionArea };
    checks.add(Check::at_least_by_level(subject, Role::GroundArea, supply, need).as_screen().with_note(AREA));
}

/// Length of one jacking pipe: the file's, or the longest usual one of clay.
fn pipe_length(drive: &Drive, pipe: &Pipe) -> Length {
    pipe.segment.unwrap_or(drive.site.pit_rules.pipe_length.value)
}

/// The heaviest known lift with the margin of the crane.
pub(super) fn lift(drive: &Drive, pipe: &Pipe) -> Option<Force> {
    let margin = drive.site.pit_rules.crane_margin.value;
    pipe.jacked_weight().map(|weight| weight * pipe_length(drive, pipe) * (1.0 + margin.value))
}

fn room<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    method: Method,
    place: Place,
    checks: &mut Checks,
) {
    let Some(space) = &place.pit(drive).space else { return };
    calc.part(if place == Place::Launch { "room in the launch pit" } else { "room in the reception pit" });
    let needs = sides(calc, drive, pipe, method, place);
    for ((subject, there), need) in place.subjects().into_iter().zip([space.length, space.width]).zip(needs) {
        let Some(need) = need else { continue };
        let check = Check::at_least_by_level(subject, Role::Distance, Band::same(there.value), need);
        checks.add(check.as_screen().with_note(if place == Place::Launch { SIDES } else { OUT }));
    }
}

fn crane(drive: &Drive, pipe: &Pipe, space: &PitSpace, checks: &mut Checks) {
    if let (Some(crane), Some(lift)) = (space.crane, lift(drive, pipe)) {
        checks.add(Check::at_most(Subject::CraneLift, Role::Thrust, Band::same(lift), crane).with_note(LIFT));
    }
}
