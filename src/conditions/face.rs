//! Whether an open face stands: stability number in clay, soil plug in sand and silt under water.

use super::plan::Plan;
use super::stress::weight;
use crate::check::{Absent, Draft, Outcome, Subject, Verdict, Ways, at_least, at_most, only, rated, required};
use crate::drive::{Column, Drive, Strength, StrengthBy, Stretch};
use crate::handbook::GroundClass;
use crate::law::{Calc, Doubted};
use crate::laws::face::{CriticalNumberCylinder, CriticalNumberSphere, FaceSafety, StabilityNumber};
use crate::laws::pit_base::{CriticalGradient, PlugAgainstSliding, PlugLength};
use crate::laws::soil::water_unit_weight;
use crate::quantity::{Angle, Band, Length, Measure, Pressure, Ratio, Role};
use crate::source::Cited;

const SHORT_TERM: &str = "short term, no support on the face; the limits fall with shallow cover";
const BY_BLOWS: &str = "short term, no support on the face, strength by the blow count: give undrained_strength";
const OTHER_CLAY: &str = "short term, no support on the face; the strength given is more than the other clay can \
    have, which is taken by its blow count: list that clay as the class";
const PLUG: &str =
    "whole soil that neither boils nor slides, by its weight on smooth steel; not what an auger has loosened";

fn open(at: &Plan<'_>) -> Result<(), Absent> {
    only(at.is_jacked(), "the pipe is not pushed")?;
    only(at.drive.site.face.open, "the face is not open")
}

/// The worst place of the drive.
pub(crate) fn stability(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    open(at)?;
    let clays = at.drive.stretches.iter().filter_map(|stretch| Some((stretch, stretch.earth.strength?)));
    let places = clays.flat_map(|(stretch, strength)| {
        // The number grows with depth, and so does what it may be: with a surcharge or little cover the shallow place is
        // the worse. Between the two neither can be passed: the number bends up and the limit down.
        stretch.way.depths().map(move |depth| (stretch, depth, strength))
    });
    let checks = places.map(|(stretch, depth, strength)| number(calc, at, (stretch, depth), strength));
    checks.reduce(Draft::worse).ok_or(Absent::NotApplicable("there is no clay in the face"))
}

/// The worst stretch, where water stands over an open casing in silt, sand or gravel: only a plug of soil keeps the ground
/// out.
pub(crate) fn plug(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    open(at)?;
    let wet = || at.drive.stretches.iter().filter(|stretch| wants_plug(stretch));
    only(wet().next().is_some(), "no water stands over an open face in silt, sand or gravel")?;
    let Some(plug) = at.drive.site.plug else {
        let checks = wet().map(|stretch| asked(calc, at, stretch));
        return checks
            .reduce(Draft::worse)
            .ok_or(Absent::Missing)
            .map(|check| check.settled_by(&[&["ground[].treatment"]]));
    };
    wet().map(|stretch| against_water(calc, at.drive, stretch, plug)).reduce(Draft::worse).ok_or(Absent::Missing)
}

fn wants_plug(stretch: &Stretch) -> bool {
    let flows_in = |class: GroundClass| class.is_granular() || class == GroundClass::Silt;
    stretch.has(flows_in) && stretch.head_at_face() > Length::default()
}

/// In the place of a stretch where the invert has this depth, with the weakest clay under the heaviest soil; not decided
/// where the best of both would do.
fn number(
    calc: &mut Calc,
    at: &Plan<'_>,
    (stretch, depth): (&Stretch, Length),
    Strength { ends, by }: Strength,
) -> Draft {
    calc.part("face in clay");
    let over = at.drive.site.face.surcharge;
    let adverse = stands(calc, at, depth, (stretch.heavy(), ends.low, over.high));
    let favourable = stands(calc, at, depth, (stretch.light(), ends.high, over.low));
    // What is asked for is what it fails by with the middle strength of its blows, or what is told, and all else at its best.
    let rule = Subject::FaceStability.decides().rule(&at.drive.leeway);
    let told = matches!(by, StrengthBy::File);
    let middle = (ends.low + ends.high) / 2.0;
    let mut fails = |column, over| stands(calc, at, depth, (column, middle, over)).by(rule).verdict() == Verdict::Over;
    let by_traffic = !at.drive.site.surface.is_told && fails(stretch.light(), over.high);
    let by_weight = fails(stretch.heavy(), over.low);
    const STRENGTH: &str = "ground[].soil.undrained_strength";
    let settled: Ways = match (told, by_traffic, by_weight) {
        (true, true, true) => &[&["surface.over", "ground[].soil"]],
        (true, true, false) => &[&["surface.over"]],
        (true, false, _) => &[&["ground[].soil"]],
        (false, true, _) => &[&[STRENGTH, "surface.over"]],
        (false, false, _) if matches!(by, StrengthBy::Class) => &[&["ground[].spt_n"], &[STRENGTH]],
        (false, false, _) => &[&[STRENGTH]],
    };
    adverse.with_note(by.note([SHORT_TERM, BY_BLOWS, OTHER_CLAY])).at_best(favourable).settled_by(settled)
}

fn stands(
    calc: &mut Calc,
    at: &Plan<'_>,
    depth: Length,
    (column, undrained_strength, over): (Column<'_>, Pressure, Pressure),
) -> Draft {
    let (rule, bore) = (at.drive.site.face, at.opened());
    let axis = depth - at.pipe.outside_diameter.value / 2.0;
    let cover = axis - bore / 2.0;
    let number = calc.doubted(|calc| {
        let (unit_weight, surcharge) = (weight(calc, column, axis) / axis, column.soil.surcharge.max(over));
        let support = Pressure::default();
        let law = StabilityNumber { surcharge, unit_weight, cover, bore, support, undrained_strength };
        calc.law(law)
    });
    let limit = calc.doubted(|calc| {
        let stability_number = calc.take(number);
        let sphere = calc.law(CriticalNumberSphere { cover, bore });
        let cylinder = calc.law(CriticalNumberCylinder { cover, bore });
        let critical_number = sphere.min(cylinder).min(rule.unstable);
        calc.law(FaceSafety { critical_number, stability_number });
        let share: Ratio = critical_number / rule.unstable;
        let refuse = rule.refuse.value * share;
        Cited::new(Band { low: refuse, likely: refuse, high: rule.warn * share }, rule.refuse.origin)
    });
    at_most(Role::Ratio, number.map(Band::same), limit)
}

/// The plug that the contractor has to keep, against the longest that is kept. No length alone bars: the ground may be
/// treated.
fn asked(calc: &mut Calc, at: &Plan<'_>, stretch: &Stretch) -> Draft {
    calc.part("soil plug against the head of water");
    let rules = &at.drive.site.pit_rules;
    let (length, times) = rules.longest_plug;
    let longest = times.map(|times| length.max(times * at.opened()));
    match plug_needed(calc, at.drive, stretch, stretch.light()) {
        Some(need) => {
            let need = need.map(|need| need.value);
            required(Role::Distance, need, longest)
                .at_best(required(Role::Distance, Length::default(), longest))
                .with_note(PLUG)
        }
        None => rated(Verdict::NotDecided, rules.plug.1.origin),
    }
}

/// Against the lightest soil; not decided where the heaviest would do.
fn against_water(calc: &mut Calc, drive: &Drive, stretch: &Stretch, plug: Cited<Length>) -> Draft {
    calc.part("soil plug against the head of water");
    let [adverse, favourable] =
        [stretch.light(), stretch.heavy()].map(|column| plug_needed(calc, drive, stretch, column));
    let check = |need| at_least(Role::Distance, plug.value, need).with_note(PLUG);
    match (adverse, favourable) {
        (Some(adverse), Some(favourable)) => check(adverse).at_best(check(favourable)),
        _ => rated(Verdict::NotDecided, drive.site.pit_rules.plug.1.origin),
    }
}

/// Length of plug that the water of a stretch asks for: the longer of that against boiling and that against sliding,
/// likely and high by the factor; `None` without any soil.
pub(super) fn plug_needed(
    calc: &mut Calc,
    drive: &Drive,
    stretch: &Stretch,
    column: Column<'_>,
) -> Option<Doubted<Cited<Band<Length>>>> {
    let rules = &drive.site.pit_rules;
    let (low, high) = rules.plug;
    let layer = column.soil.at_pipe()?;
    let water_weight = water_unit_weight();
    let buoyant = layer.saturated - water_weight;
    let interface_angle = Angle::from_si(layer.friction_angle.si() * rules.plug_interface.value.si());
    let head = stretch.head_at_face();
    Some(calc.doubted(|calc| {
        let critical_gradient = calc.law(CriticalGradient { buoyant_weight: buoyant, water_weight });
        let mut need = |factor| {
            let boiling = calc.law(PlugLength { factor, head, critical_gradient });
            boiling.max(calc.law(PlugAgainstSliding { factor, head, buoyant, interface_angle }))
        };
        let (likely, most) = (need(low), need(high.value));
        Cited::new(Band { low: likely, likely, high: most }, high.origin)
    }))
}
