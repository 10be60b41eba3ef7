//! Whether the reamed bore stands until the pipe is in it: clay by its stability number less what the fluid holds, ground
//! that runs by fluid over the water at its crown.

use super::break_out::Bore;
use super::pulled::Pulled;
use crate::check::{Absent, Care, Draft, Outcome, Rule, Verdict, at_least, at_most, only, rated};
use crate::conditions::{Plan, vertical_stress};
use crate::drive::{Column, Ends, Held, HoleState, Pull, Strength, Stretch};
use crate::handbook::GroundClass;
use crate::law::Calc;
use crate::laws::collapse::FluidHead;
use crate::laws::face::StabilityNumber;
use crate::method::walked::Walked;
use crate::quantity::{Band, Length, MassDensity, Pressure, Role};

const CLAY: &str =
    "short term, against collapse: the weight of the ground less what the fluid holds, over the strength of the clay";
const CLAY_BY_BLOWS: &str =
    "short term, against collapse, with the strength by the blow count: give undrained_strength";
const CLAY_OTHER: &str =
    "short term, against collapse; the strength given is more than the other clay has: that one by its blow count";
const RUNS: &str =
    "fluid at the crown of the bore, against the water there and what holds the grains; both pits kept full to it";
const BARELY: &str = "the fluid stands over the crown, or the water there, by less than it ought to: keep both pits full to its level \
                      at all times";
const HOLD: &str = "no fluid level is given: keep both pits full enough to hold at least the demand at the crown";
const DRY: &str = "no fluid holds this bore: it ravels with time; weigh the spoil against the advance";

/// The place where it stands worst.
pub(in crate::method) fn check(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let Plan { drive, pipe, .. } = **at;
    let Pulled { pull, .. } = at.pulled()?;
    only(!at.goes_into_empty_bore(), "whether the empty bore stands is judged by itself")?;
    calc.part("stability of the reamed bore");
    let bore = Bore::of(drive, pipe, pull);
    let places = drive.places().filter(|(stretch, _)| !stretch.is_all(GroundClass::is_rock));
    let checks = places.map(|(stretch, (along, invert))| {
        let height = bore.over_crown(along);
        let grains =
            stretch.has(GroundClass::runs).then(|| held(calc, (&bore, pull), stretch, (invert - bore.crown, height)));
        let clay = stretch.earth.strength.map(|strength| stands(calc, at, pull, (stretch, strength), (invert, height)));
        match (grains, clay) {
            (Some(grains), Some(clay)) => Some(grains.worse(clay)),
            (grains, clay) => grains.or(clay),
        }
    });
    checks.flatten().reduce(Draft::worse).ok_or(Absent::NotApplicable("the bore stands in rock"))
}

fn stands(
    calc: &mut Calc,
    at: &Walked<'_>,
    pull: &Pull,
    (stretch, Strength { ends, by }): (&Stretch, Strength),
    (invert, height): (Length, Ends<Length>),
) -> Draft {
    let (rule, bore) = (&at.drive.site.face, at.pipe.bore.value);
    let axis = (invert - at.pipe.outside_diameter.value / 2.0).max(bore / 2.0);
    let cover = axis - bore / 2.0;
    let mut number = |column: Column<'_>, undrained_strength, over: Pressure, height: Length, density: MassDensity| {
        let number = calc.doubted(|calc| {
            let support = match pull.works.hole {
                HoleState::Fluid => calc.law(FluidHead { density, height: height + bore / 2.0 }),
                HoleState::Dry => Pressure::default(),
            };
            let weight = vertical_stress(calc, column, axis).total - column.soil.surcharge;
            let (unit_weight, surcharge) = (weight / axis, column.soil.surcharge.max(over));
            calc.law(StabilityNumber { surcharge, unit_weight, cover, bore, support, undrained_strength })
        });
        let limit = rule.refuse.map(|refuse| Band { low: refuse, likely: refuse, high: rule.warn });
        at_most(Role::Ratio, number.map(Band::same), limit)
    };
    let over = rule.surcharge;
    let adverse = number(stretch.heavy(), ends.low, over.high, height.low, pull.fluids.light);
    let best = number(stretch.light(), ends.high, over.low, height.high, pull.fluids.clean);
    let check = adverse.with_note(by.note([CLAY, CLAY_BY_BLOWS, CLAY_OTHER])).at_best(best);
    check.settled_by(&[&["ground[].soil.undrained_strength"], &["pull.fluid_level"]])
}

/// Ground that runs, at this depth of the crown.
fn held(
    calc: &mut Calc,
    (bore, pull): (&Bore<'_>, &Pull),
    stretch: &Stretch,
    (crown, height): (Length, Ends<Length>),
) -> Draft {
    let rule = bore.rule();
    if pull.works.hole == HoleState::Dry {
        return rated(Verdict::Within, rule.holds.over_water.origin).as_caution(DRY);
    }
    let stress = vertical_stress(calc, stretch.light(), crown);
    let pore = stress.total - stress.effective;
    let water = stretch.way.table.map_or(Length::default(), |table| (crown - table).max(Length::default()));
    let density = pull.fluids.light;
    let need = bore.need(calc, pore);
    if pull.fluid_level.is_some() {
        let mut by = |density| {
            let pressure = calc.law(FluidHead { density, height: height.low });
            let check = |need| at_least(Role::Pressure, pressure, need).by(Rule::High).with_note(RUNS);
            match rule.holds.holds((height.low, water), (pressure, pore)) {
                Held::Barely => check(need.map(|_| pore)).with_care(Care::Condition, BARELY),
                Held::Not | Held::Well => check(need).settled_by(&[&["pull.fluid_level"]]),
            }
        };
        let safe = by(density);
        // Mud of which no density is told is that of a clean bore at best.
        return if pull.fluids.clean > density {
            safe.at_best(by(pull.fluids.clean)).settled_by(&[&["pull.fluid_density"], &["pull.fluid_level"]])
        } else {
            safe
        };
    }
    let most = rule.cap.map(|cap| cap * stress.total);
    let check = at_most(Role::Pressure, need.value, most).by(Rule::High);
    check.with_care(Care::Condition, HOLD).settled_by(&[&["pull.fluid_level"]])
}
