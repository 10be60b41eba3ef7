//! The pressure that a closed face is held at: no less than what keeps the ground in, no more than what it bears without
//! breaking out, place by place.

use super::plan::Plan;
use super::stress::{vertical_stress, weight};
use crate::check::{Care, Draft, Outcome, Rule, Ways, at_least, at_most, only};
use crate::drive::{Column, Ends, StrengthBy, Stretch};
use crate::handbook::{GroundClass, Treatment};
use crate::law::{Calc, Doubted};
use crate::laws::face::{GreatestSupport, LeastSupport, LeastSupportDrained};
use crate::laws::soil::{SiloStress, SiloWidthTerzaghi};
use crate::laws::wall::ActiveCoefficient;
use crate::quantity::{Angle, Band, Length, Pressure, Role, UnitWeight};
use crate::source::Cited;

const HOLD: &str = "hold the face pressure between demand and limit, by gauge: between what holds the ground and \
    nine tenths of its weight";
const NARROW: &str = "the pressures that hold the ground and that lose the slurry are too close for any machine: \
    give the strength of the ground and face_pressure";
const NONE: &str = "holding this face takes more pressure than the ground bears: no pressure will do";
const SWINGS: &str =
    "so close to what holds the ground that the pressure must not swing: hold it by gauge, and weigh the spoil";
const TOLD: &str = "the face pressure, against what holds the ground and against what the ground bears";

/// What a face may be held at.
#[derive(Debug, Clone, Copy)]
struct Window {
    /// Below it the ground comes in.
    least: Pressure,
    /// The same with what the pressure swings by in ground that runs; clay creeps.
    held: Pressure,
    greatest: Pressure,
}

/// The worst place of the drive.
pub(crate) fn check(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    only(at.is_jacked(), "the pipe is not pushed")?;
    only(!at.drive.site.face.open, "the face is open")?;
    let soils = at.drive.stretches.iter().filter(|stretch| needs_support(stretch));
    let places = soils.flat_map(|stretch| stretch.way.depths().map(move |depth| (stretch, depth)));
    let checks = places.map(|(stretch, depth)| place(calc, at, stretch, depth));
    checks.reduce(Draft::worse).ok_or(crate::check::Absent::NotApplicable("the face stands in rock or is grouted"))
}

fn needs_support(stretch: &Stretch) -> bool {
    !stretch.is_all(GroundClass::is_rock) && stretch.treatment != Some(Treatment::Grouted)
}

/// In a place where the invert has this depth: the soil that leaves less between the two, and that which leaves more.
fn place(calc: &mut Calc, at: &Plan<'_>, stretch: &Stretch, depth: Length) -> Draft {
    calc.part("support of a closed face");
    let rule = &at.drive.site.face;
    let clay = stretch.earth.strength.map(|strength| strength.ends);
    let over = rule.surcharge;
    let mut window = |best: bool| {
        let clay = clay.map(|clay| if best { clay.high } else { clay.low });
        let over = if best { over.low } else { over.high };
        let [heavy, light] = [stretch.heavy(), stretch.light()]
            .map(|column| calc.doubted(|calc| between(calc, at, stretch, depth, (column, clay, over))));
        heavy.zip(light).map(|(heavy, light)| {
            let wide = |window: &Window| window.greatest - window.least;
            if (wide(&heavy) > wide(&light)) == best { heavy } else { light }
        })
    };
    let ends = Ends { low: window(false), high: window(true) };
    let settled: Ways = if clay.is_some() { &[&["ground[].soil.undrained_strength"]] } else { &[&["ground[].soil"]] };
    let is_told = stretch.earth.strength.map_or(stretch.earth.told, |strength| matches!(strength.by, StrengthBy::File));
    let cited = |pressure: Doubted<Pressure>| pressure.map(|pressure| Cited::new(pressure, rule.greatest.origin));
    match rule.held {
        Some(held) => {
            let judged = |window: Doubted<Window>, need: fn(Window) -> Pressure| {
                let least = at_least(Role::Pressure, held.low, cited(window.map(need)));
                let greatest = at_most(Role::Pressure, held.high, cited(window.map(|window| window.greatest)));
                (least.by(Rule::High), greatest.by(Rule::High))
            };
            let [adverse, best] = [ends.low, ends.high].map(|window| judged(window, |window| window.least));
            let check = adverse.0.at_best(best.0).worse(adverse.1.at_best(best.1));
            let check = check.with_note(TOLD).settled_by(settled);
            let swings = ends.low.map(|window| held.low < window.held).in_spite_of_doubt();
            if swings { check.with_care(Care::Condition, SWINGS) } else { check }
        }
        None => {
            let judged = |window: Doubted<Window>, need: fn(Window) -> Pressure| {
                let least = window.map(|window| Band::same(need(window)));
                at_most(Role::Pressure, least, cited(window.map(|window| window.greatest))).by(Rule::High)
            };
            let adverse = ends.low.in_spite_of_doubt();
            let wide = adverse.greatest - adverse.least >= rule.window;
            let some = ends.high.map(|window| window.greatest > window.least).in_spite_of_doubt();
            let check = judged(ends.low, |window| window.held).at_best(judged(ends.high, |window| window.least));
            let check = check.settled_by(settled);
            match (wide, some) {
                // A face that stands by itself asks for nothing.
                (true, _) if adverse.held <= Pressure::default() => check,
                (true, _) => check.with_care(Care::Condition, HOLD).settled_by(&[&["face_pressure"]]),
                (false, true) => {
                    check.undecided(NARROW).settled_by(if is_told { &[&["face_pressure"]] } else { settled })
                }
                (false, false) => check.with_note(NONE),
            }
        }
    }
}

/// With one soil: what keeps clay at a safe stability number, or water and the active pressure of ground that arches over the
/// head, with a margin over both, the greater in a mixed face; and a share of the total stress without what lies on the surface.
fn between(
    calc: &mut Calc,
    at: &Plan<'_>,
    stretch: &Stretch,
    depth: Length,
    (column, clay, over): (Column<'_>, Option<Pressure>, Pressure),
) -> Window {
    let (rule, bore) = (&at.drive.site.face, at.opened());
    let column = Column { table: column.table.filter(|_| stretch.treatment.is_none()), ..column };
    let axis = (depth - at.pipe.outside_diameter.value / 2.0).max(bore / 2.0);
    let ground = weight(calc, column, axis);
    let (mut least, mut held) = (Pressure::default(), Pressure::default());
    if let Some(undrained_strength) = clay {
        least = calc.law(LeastSupport {
            surcharge: column.soil.surcharge.max(over),
            unit_weight: ground / axis,
            cover: axis - bore / 2.0,
            bore,
            stability_number: rule.warn,
            undrained_strength,
        });
        held = least;
    }
    if stretch.has(GroundClass::runs) {
        let stress = vertical_stress(calc, column, axis);
        let friction_angle = column.soil.at_pipe().map_or(Angle::default(), |layer| layer.friction_angle);
        // The ground over the head arches: a column that hangs in its sides, with all of the stress across it (Terzaghi).
        let width = calc.law(SiloWidthTerzaghi { outside_diameter: bore, friction_angle });
        let effective_stress = calc.law(SiloStress {
            unit_weight: ((stress.effective - column.soil.surcharge) / axis).max(UnitWeight::default()),
            width,
            depth: axis,
            lateral_friction: friction_angle.tan(),
            cohesion: Pressure::default(),
            surcharge: column.soil.surcharge.max(over),
        });
        let coefficient = calc.law(ActiveCoefficient { friction_angle });
        let mut kept = |margin| {
            let water_pressure = stress.total - stress.effective;
            calc.law(LeastSupportDrained { water_pressure, coefficient, effective_stress, margin })
        };
        least = least.max(kept(Pressure::default()));
        held = held.max(kept(rule.over_active));
    }
    Window { least, held, greatest: calc.law(GreatestSupport { share: rule.greatest.value, total_stress: ground }) }
}
