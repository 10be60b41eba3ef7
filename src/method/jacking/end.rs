//! Checks of the pipe end, of the angle at its joints, and of a free length.

use super::capacity::{EndLimits, end_limits};
use super::free;
use super::jacked::Jacked;
use super::joint::Turned;
use super::stations::Layout;
use super::steel;
use crate::check::{Absent, Care, Decides, Draft, NOTHING, Outcome, Rule, Verdict, Ways, at_least, at_most, only};
use crate::drive::{Capacity, ConcreteEnd, ConcreteScheme, EndArea, JackedPipe, RingKind};
use crate::law::{Calc, Doubted};
use crate::method::rules::{Gives, by_held_jacks, can_be_held, settles_nothing, stalls_at_most, watched};
use crate::method::walked::Walked;
use crate::quantity::{Angle, Band, Force, Measure, Ratio, Role};
use crate::source::Cited;

const GIVEN: &str = "with the mean over the greatest stress in the joint as given";
const WORKED_OUT: &str = "with the packer at the high angle, both ends out of square; contact beyond the packer is not \
                          modelled";
const TEST_CURVE: &str = "no test gives the stiffness of the packer: with the stiffest usual board the pipe bears \
    less; get a test curve of the packer, or limit the force";
const HOLD: &str = "no packer is given: the usual one is assumed; hold every joint to the joint angle, and give \
    packer and steering";
const HOLD_AND_TEST: &str = "no packer is given: the usual one is assumed; hold every joint to the joint angle, and \
    get a test curve of the packer";
const HOLD_AND_CONFIRM: &str = "neither packer nor scheme is given: the usual packer and EN 1916, the lesser of the published ones, are \
    assumed; hold every joint to the joint angle, and have the maker confirm the limit";
const HOLD_AND_SET: &str = "no packer is given: the usual one is assumed; hold every joint to the joint angle, get a \
    test curve of the packer, set the jacks to no more than the limit, and plan how a drive that stalls is freed";
const TEST_AND_SET: &str = "no test gives the stiffness of the packer: get a test curve, set the jacks to no more than the \
    limit, and plan how a drive that stalls is freed";
const ASK_THE_MAKER: &str = "at this joint angle no force can be passed on: ask the pipe maker what it bears";
const NOT_PASSED: &str = "at this joint angle no force can be passed on without a packer: give one";
const END: &str = "what is not given of the pipe end is taken as the least that is usual: hold every joint to the joint angle, and \
    have the maker confirm the limit";
const END_AND_SET: &str = "what is not given of the pipe end is taken as the least that is usual: hold every joint to the joint angle, \
    have the maker confirm the limit, set the jacks to no more than it, and plan how a drive that stalls is freed";
const ORDER: &str = "the maker's force is not given: order a pipe that its maker warrants for this much at the joint angle; compared with \
    the most that its end usually bears";
const ORDER_AND_SET: &str = "the maker's force is not given, and the limit is the most that the end usually bears: order a pipe that its \
    maker warrants for it at the joint angle, set the jacks to no more, and plan how a drive that stalls is freed";
const SPIGOT: &str =
    "the end area is taken as spigot less bore: chamfer and packer leave less; get the area from the pipe maker";
const LOOSER: &str = "the default scheme is tighter than the one asked for: agree with the owner which counts";
const SET: &str = "set the jacks to no more than the pipe end bears";
const SECTION: &str = "axial force only: eccentric welds, bending on a curve and ground load are not included";
const STATIONS: &str = "with the jacking stations of the file at work, each on its own section; see their places";
const LARGE: &str = "more than is advised at a joint under thrust";
const OVER_OURS: &str = "the pipe maker's force, which is more than ours at this joint angle: have the maker confirm it for the angle \
                         and the packer";
const CONFIRMED: &str = "no scheme is given: the limit is that of EN 1916, the lesser of the published ones: have the maker confirm it \
                         for the packer and the joint angle";
const CONFIRMED_AND_SET: &str = "no scheme is given: the limit is that of EN 1916, the lesser of the published ones: have the maker \
    confirm it for the packer and the joint angle, set the jacks to no more than it, and plan how a drive that stalls is freed";
const RING: &str = "less than the maker's force: more than this the ring does not bear by its strength with the joint closed; ask the \
                    maker which is meant";
const MAKER: &str = "the pipe maker's force; ask for the joint angle it is valid for";

/// How far past the limit of a scheme of concrete with less behind it than the default a high force may go: our judgement.
const OTHER_SCHEMES: f64 = 1.25;

pub(in crate::method) fn capacity(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let jacked = at.jacked()?;
    let limits = end_limits(calc, jacked.pipe, jacked.angle, at.drive.leeway.watched);
    let EndLimits { factor, tighter, .. } = limits.in_spite_of_doubt();
    let untold = jacked.pipe.joint.is_untold();
    let thrust = by_held_jacks(at.drive, jacked.thrust());
    let safe = held_to_limits(at, jacked, thrust.safe, limits);
    let may_close = untold || jacked.pipe.joint.hangs_on_line();
    let EndLimits { published, untold: of_end, .. } = limits.in_spite_of_doubt();
    let best = limits.map(|limits| at_best(limits, may_close));
    let check = if thrust.best.is_some() || may_close || published.is_some() || of_end.is_some() {
        safe.at_best(held_to_limits(at, jacked, thrust.best.unwrap_or(thrust.safe), best))
    } else {
        safe
    };
    let open = check.verdict() == Verdict::NotDecided;
    if open && is_by_order(jacked.pipe) && !hangs_on_packer(jacked) {
        let most = limits.map(|limits| raised_to(limits, limits.most));
        let order = ordered(thrust.safe, most);
        if passes(&order) {
            return Ok(order);
        }
        let held = held_to_limits(at, jacked, thrust.safe, most);
        if passes(&held) {
            return Ok(held.with_care(Care::Condition, ORDER_AND_SET));
        }
    }
    let check = if open { check.settled_by(settling(at, jacked, thrust.safe, (&safe, best))) } else { check };
    let check = check.with_factor(factor);
    let check = told(check, jacked, limits.in_spite_of_doubt(), untold, tighter);
    Ok(if jacked.stations.is_some() && passes(&check) { check.with_care(Care::Condition, STATIONS) } else { check })
}

fn passes(check: &Draft) -> bool {
    matches!(check.verdict(), Verdict::Within | Verdict::WithCare)
}

/// The ceiling of care by material and by what the file tells of the joint.
fn share(at: &Walked<'_>, jacked: &JackedPipe, limits: &EndLimits) -> Ratio {
    let of = |factor: Ratio| Decides::Watched(factor.si()).share(&at.drive.leeway);
    if limits.by_maker || jacked.joint.is_untold() {
        return Ratio::from(1.0);
    }
    match &jacked.capacity {
        Capacity::Brittle { edge_factor, .. } => of(edge_factor.value),
        Capacity::Grp { material_factor, .. } => of(material_factor.value),
        Capacity::Steel(end) => of(end.yield_factor.value),
        Capacity::Concrete(end) if end.scheme == ConcreteScheme::Default => of(1.0 / end.shares.edge_share.value),
        Capacity::Concrete(_) => Ratio::from_si(OTHER_SCHEMES),
        Capacity::Rated => Ratio::from(1.0),
    }
}

fn held_to_limits(
    at: &Walked<'_>,
    jacked: &Jacked<'_>,
    thrust: Doubted<Band<Force>>,
    limits: Doubted<EndLimits>,
) -> Draft {
    let EndLimits { high, left, .. } = limits.in_spite_of_doubt();
    let share = share(at, jacked.pipe, &limits.in_spite_of_doubt());
    // The doubt of the board and the ceiling are not spent twice.
    let most = left.map_or(share * high.value, |left| left.min(share * high.value)).max(high.value);
    let share = if high.value > Force::default() { most / high.value } else { share };
    let limit = limits.map(|limits| limits.high.map(|high| Band { low: high, likely: limits.likely.value, high }));
    watched((at.drive, at.pipe), at_most(Role::Thrust, thrust, limit), share, Gives::Body(most))
}

/// What the maker is asked to warrant, against the most that the end usually bears at its angle.
fn ordered(thrust: Doubted<Band<Force>>, limits: Doubted<EndLimits>) -> Draft {
    let high = thrust.map(|thrust| Band::same(thrust.high));
    let most = limits.map(|limits| limits.high.map(Band::same));
    at_most(Role::Thrust, high, most).by(Rule::Required).with_note(ORDER)
}

/// At best the packer and the line leave the joint closed, and a published scheme or the best certificate counts.
fn at_best(limits: EndLimits, may_close: bool) -> EndLimits {
    let [high, closed] = limits.untold.unwrap_or([limits.high, limits.closed]);
    let best = if may_close { closed } else { high };
    raised_to(limits, limits.published.map_or(best, |published| no_less(best, published)))
}

fn raised_to(limits: EndLimits, least: Cited<Force>) -> EndLimits {
    EndLimits { likely: no_less(limits.likely, least), high: no_less(limits.high, least), ..limits }
}

fn no_less(one: Cited<Force>, other: Cited<Force>) -> Cited<Force> {
    if one.value < other.value { other } else { one }
}

/// What would settle it: where the likely force passes, what is done at the high one, whatever the joint bears; else the
/// joint of which nothing is told, unless it does not bear the force at its best either.
fn settling(
    at: &Walked<'_>,
    jacked: &Jacked<'_>,
    thrust: Doubted<Band<Force>>,
    (safe, best): (&Draft, Doubted<EndLimits>),
) -> Ways {
    let held = can_be_held(safe, at.drive.leeway.held) || at.drive.stops_at_night();
    let joint = &jacked.pipe.joint;
    let EndLimits { published, untold, .. } = best.in_spite_of_doubt();
    let by_certificate = untold.is_some_and(|[high, _]| {
        let limits = best.map(|limits| EndLimits { likely: high, high, ..limits });
        held_to_limits(at, jacked, thrust, limits).verdict() != Verdict::Over
    });
    let of_end = of_end(jacked.pipe);
    let of_joint: Ways = if !settles_nothing(of_end) {
        of_end
    } else if published.is_some() {
        &[&["candidates[].rated_force"], &["candidates[].scheme"]]
    } else if untold.is_some() && matches!(jacked.pipe.capacity, Capacity::Steel(_)) {
        &[&["candidates[].steel_grade"]]
    } else if by_certificate {
        &[&["candidates[].certificate"]]
    } else if untold.is_some() && joint.is_untold() {
        &[&["candidates[].certificate", "candidates[].packer", "steering"]]
    } else if untold.is_some() && joint.hangs_on_line() {
        &[&["candidates[].certificate", "steering"]]
    } else if joint.is_untold() {
        &[&["candidates[].packer", "steering"]]
    } else if joint.hangs_on_line() {
        &[&["steering"]]
    } else {
        NOTHING
    };
    let by_force = stalls_at_most(safe) && held;
    if by_force || settles_nothing(of_joint) || held_to_limits(at, jacked, thrust, best).verdict() == Verdict::Over {
        safe.settled_by
    } else {
        of_joint
    }
}

/// Whether what the end bears is the maker's to warrant: something of it, or the scheme of concrete, is not told.
fn is_by_order(jacked: &JackedPipe) -> bool {
    let no_scheme = matches!(jacked.capacity, Capacity::Concrete(ConcreteEnd { scheme_told: false, .. }));
    jacked.rated_force.is_none() && (no_scheme || !settles_nothing(of_end(jacked)))
}

/// What the file leaves untold of the end of concrete and its like.
fn of_end(jacked: &JackedPipe) -> Ways {
    let no_area = matches!(jacked.end_area, EndArea::Usual { .. });
    let no_strength = matches!(jacked.capacity, Capacity::Concrete(ConcreteEnd { most_strength: Some(_), .. }));
    match (no_area, no_strength) {
        (true, true) => &[&["candidates[].strength"], &["candidates[].rated_force"]],
        (true, false) => &[&["candidates[].rated_force"], &["candidates[].end_bearing_area"]],
        (false, true) => &[&["candidates[].strength"]],
        (false, false) => NOTHING,
    }
}

/// Whether the line is told to turn the joints further than is usual, and nothing of a packer in them.
fn hangs_on_packer(jacked: &Jacked<'_>) -> bool {
    let steering = &jacked.pipe.joint.steering;
    let told_angle = steering.turns && steering.is_known();
    told_angle && !jacked.pipe.joint.packer_told && jacked.angle.in_spite_of_doubt().line > steering.screen.value
}

/// What the reader must know of the capacity, the gravest first.
fn told(check: Draft, jacked: &Jacked<'_>, limits: EndLimits, untold: bool, tighter: bool) -> Draft {
    let steering = &jacked.pipe.joint.steering;
    let rated = matches!(jacked.pipe.capacity, Capacity::Rated);
    if hangs_on_packer(jacked) {
        let note = if rated { ASK_THE_MAKER } else { NOT_PASSED };
        return check.undecided(note).settled_by(if rated { NOTHING } else { &[&["candidates[].packer"]] });
    }
    let passes = passes(&check);
    // Welded pipe has no board, and one that the file gives the stiffness of is tested.
    let stiff = limits.stiff.filter(|_| steering.turns);
    let past_stiff = stiff.is_some_and(|stiff| check.high().is_some_and(|(demand, _)| demand.si > stiff.si()));
    let set = check.utilisation().is_some_and(|used| used > 1.0);
    let no_scheme = matches!(jacked.pipe.capacity, Capacity::Concrete(ConcreteEnd { scheme_told: false, .. }));
    if limits.by_maker && jacked.pipe.rated_force.is_some_and(|rated| !rated.is_given()) {
        return if passes { check.with_care(Care::Condition, RING) } else { check.with_note(RING) };
    }
    if passes && !settles_nothing(of_end(jacked.pipe)) {
        return check.with_care(Care::Condition, if set { END_AND_SET } else { END });
    }
    if untold && passes {
        let note = if set { HOLD_AND_SET } else { HOLD };
        let note = if no_scheme && !set { HOLD_AND_CONFIRM } else { note };
        return check.with_care(Care::Condition, if past_stiff && !set { HOLD_AND_TEST } else { note });
    }
    if limits.over_ours && passes {
        return check.with_care(Care::Condition, OVER_OURS);
    }
    if rated && steering.turns && !steering.is_known() && passes {
        return check.with_care(Care::Condition, MAKER);
    }
    if no_scheme && !limits.by_maker && passes {
        return check.with_care(Care::Condition, if set { CONFIRMED_AND_SET } else { CONFIRMED });
    }
    if tighter && passes {
        return check.as_caution(LOOSER);
    }
    if past_stiff && passes {
        let within = check.verdict() == Verdict::Within;
        let note = if set { TEST_AND_SET } else { TEST_CURVE };
        return if within { check.with_care(Care::Condition, note) } else { check.with_note(note) };
    }
    if matches!(jacked.pipe.end_area, EndArea::Ring { kind: RingKind::Spigot, .. }) && passes {
        return check.as_caution(SPIGOT);
    }
    if check.note.is_some() {
        return check;
    }
    if check.verdict() == Verdict::WithCare {
        return check.with_care(Care::Condition, SET);
    }
    match jacked.pipe.capacity {
        Capacity::Steel(_) => check.with_note(SECTION),
        _ if limits.by_maker => check.with_note(MAKER),
        _ if jacked.pipe.joint.stress_ratio.is_some() => check.with_note(GIVEN),
        _ => check.with_note(WORKED_OUT),
    }
}

/// What is advised at a joint under thrust is a habit, up to twice of it: what the end bears at the angle is judged by the
/// force. From a lesser angle on joints are looked after.
pub(in crate::method) fn angle(at: &Walked<'_>) -> Outcome {
    let Jacked { pipe, angle, .. } = at.jacked()?;
    let steering = &pipe.joint.steering;
    only(steering.turns, "the pipes are welded to one")?;
    let (screen, most) = (steering.screen.value, steering.most);
    let limits = most.map(|most| Band { low: screen, likely: screen, high: most });
    let levels = |turned: Turned| Band { low: turned.line, likely: turned.likely, high: turned.high.value };
    let outside = steering.beyond.map(Band::same);
    let judged = |levels: Doubted<Band<Angle>>| {
        let beyond = at_most(Role::JointAngle, levels, outside).by(Rule::High);
        at_most(Role::JointAngle, levels, limits).as_screen().worse(beyond)
    };
    let check = judged(angle.map(levels));
    let known = steering.is_known() && steering.squareness.is_none_or(|ends| ends.is_given());
    // What the file tells of the line counts at its best too; the ends of the pipes are square then.
    let line = angle.map(|turned| if steering.is_known() { turned.line } else { steering.least.value });
    let check = if known {
        check
    } else {
        let ways: Ways = if steering.is_known() { &[&["candidates[].end_squareness"]] } else { &[&["steering"]] };
        check.at_best(judged(line.map(Band::same))).settled_by(ways)
    };
    let large = angle.in_spite_of_doubt().likely > screen || check.verdict() != Verdict::Within;
    Ok(if large { check.with_care(Care::Screen, LARGE) } else { check })
}

pub(in crate::method) fn column(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let jacked = at.jacked()?;
    let Capacity::Steel(end) = &jacked.pipe.capacity else {
        return Err(Absent::NotApplicable("only steel is looked at as a column"));
    };
    calc.part("pipe in the pit as a column");
    let thrust = by_held_jacks(at.drive, jacked.thrust());
    let check = free::column(at, calc, end, &jacked.pipe.free, thrust).settled_by(&[&["candidates[].free_length"]]);
    let Some(best) = steel::at_best(end).filter(|_| !passes(&check)) else { return Ok(check) };
    let best = free::column(at, &mut Calc::silent(), &best, &jacked.pipe.free, thrust);
    Ok(check.at_best(best).settled_by(&[&["candidates[].free_length", "candidates[].steel_grade"]]))
}

const FEW: &str = "no more than one jacking station is needed, or none is given";
const CLOSE: &str =
    "stations so close together take turns at every pipe: lubricate, or take jacks and pipe that bear more";

/// How far jacking stations are apart: each costs its stroke a second push.
pub(in crate::method) fn spacing(at: &Walked<'_>) -> Outcome {
    let apart = at.jacked()?.stations.as_ref().and_then(Layout::apart).ok_or(Absent::NotApplicable(FEW))?;
    let check = at_least(Role::Distance, apart, at.drive.stations.spacing).to_twice().with_note(CLOSE);
    // What a pipe bears that is not told may be more.
    if !is_by_order(at.jacked()?.pipe) {
        return Ok(check);
    }
    let best = at_least(Role::Distance, at.drive.stations.spacing.value, at.drive.stations.spacing);
    Ok(check.at_best(best).settled_by(&[&["candidates[].rated_force"]]))
}
