//! Invert against its tolerance.

use super::plan::{NO_GRAVITY, Plan};
use super::weight;
use crate::check::{Care, Outcome, Rule, Verdict, Ways, at_least, at_most, only};
use crate::drive::{BoreState, HoleState, Pipe, Pull, PulledPipe, Stretch};
use crate::handbook::{GroundClass, Guidance, Lubrication, Method, Service};
use crate::law::{Calc, Law};
use crate::laws::pull::NetWeightInFluid;
use crate::quantity::{Band, Length, LineLoad, MassDensity, Measure, Ratio, Role};
use crate::source::Cited;

/// Play on the diameter that is left round the pipe, in which it lies at the bottom or floats to the crown until it is
/// grouted: less what spacers take of it, and of a jacked line only what the accuracy of installed lines does not hold.
pub(super) fn play(plan: &Plan<'_>) -> Length {
    let Plan { drive, pipe, method } = *plan;
    let around = match (method, pipe.casing_diameter()) {
        (Method::PipeJacking, Some(casing)) => casing.max(pipe.bore.value),
        (Method::PipeJacking, None) => pipe.cut(),
        _ => pipe.bore.value,
    };
    let held = match method {
        Method::PipeJacking => drive.overcut_in_accuracy,
        Method::Pullback => 2.0 * drive.annulus.spacer,
    };
    (around - pipe.outside_diameter.value - held).max(Length::default())
}

/// What of the play on the diameter nobody knows where the pipe lies in, likely and high: half and all of it, and where it
/// lies on the bottom, for which the bore is set, only what clay that may close pushes it by before grout holds it.
pub(super) fn unknown_play(plan: &Plan<'_>) -> (Length, Length) {
    /// Clay that may close is taken to stand as long as it closes half of the play, on the radius.
    const PUSHED: f64 = 4.0;
    let play = play(plan);
    let of_pipe = plan.is_jacked() || plan.goes_into_empty_bore();
    let state = |stretch: &Stretch| {
        if of_pipe { plan.pipe.bore_in(stretch) } else { stretch.open(plan.method).map(|(state, _)| state) }
    };
    // A piece that falls from rock does not close the bore.
    let stands = |stretch: &Stretch| match state(stretch) {
        Some(BoreState::Stands) => true,
        state => state.is_some() && stretch.is_all(GroundClass::is_rock),
    };
    let open = |stretch: &Stretch| stands(stretch) || state(stretch) == Some(BoreState::Partly);
    let stretches = &plan.drive.stretches;
    if !stretches.iter().all(open) || !sinks(plan) {
        (play / 2.0, play)
    } else if stretches.iter().all(stands) {
        (Length::default(), Length::default())
    } else {
        (Length::default(), play / PUSHED)
    }
}

/// Whether the pipe surely sinks in what fills its bore. One that floats is not known to lie at the crown: grout and
/// returns move it, and nothing holds it down but spacers.
fn sinks(plan: &Plan<'_>) -> bool {
    let Plan { drive, pipe, method } = *plan;
    match (method, pipe.pulled.as_ref().zip(drive.pull.as_ref())) {
        // Nothing but air is in a bore from which the stem was drawn.
        (Method::PipeJacking, _) => {
            drive.lubrication_told && drive.lubrication == Lubrication::None || drive.stem.withdrawn
        }
        (Method::Pullback, None) => false,
        (Method::Pullback, Some((pulled, pull))) => {
            pull.works.hole == HoleState::Dry || weight_in_heavy_fluid(pipe, pulled, pull).value > 0.0
        }
    }
}

/// Net weight of a pulled pipe, empty and of its least wall, in the heaviest fluid.
fn weight_in_heavy_fluid(pipe: &Pipe, pulled: &PulledPipe, pull: &Pull) -> LineLoad {
    let (outside_diameter, wall) = (pipe.outside_diameter.value, pulled.wall());
    let pipe_weight = weight::of_pulled(&mut Calc::silent(), pipe, pulled, Ratio::from_si(1.0));
    let (fluid_density, contents_density) = (pull.fluids.heavy, MassDensity::default());
    NetWeightInFluid { pipe_weight, outside_diameter, wall, fluid_density, contents_density }.value()
}

/// How far the invert may be from the design line: the error of the pilot, and likely half, at the high level all of the
/// play in which nobody knows where the pipe lies.
pub fn invert_uncertainty(plan: &Plan<'_>) -> Band<Length> {
    with_play(plan.drive.guided.error.value, plan)
}

fn with_play(error: Band<Length>, plan: &Plan<'_>) -> Band<Length> {
    let (likely, high) = unknown_play(plan);
    Band { low: error.low, likely: error.likely + likely, high: error.high + high }
}

/// Whether a gravity sewer keeps its tolerance by its spacers alone: without them it would float out of it.
pub(crate) fn is_held_by_spacers(plan: &Plan<'_>) -> bool {
    let Plan { drive, pipe, .. } = *plan;
    let afloat = drive.guided.error.value.high + pipe.bore.value - pipe.outside_diameter.value;
    let is_spaced = drive.annulus.spacer > Length::default() && afloat > drive.tolerance.value;
    drive.service == Service::GravitySewer && is_spaced
}

/// A pilot that may be off by too much, and likely is not, is surveyed before the pipe goes in, a machine as it goes: what it is held to is the
/// tolerance less the play. One that is located from the surface is as sure as its survey already.
pub(crate) fn invert(at: &Plan<'_>) -> Outcome {
    let Plan { drive, method, .. } = *at;
    // A tolerance that the file gives is a limit, whatever the pipe carries.
    let is_told = drive.loosest_tolerance.is_none();
    only(drive.service == Service::GravitySewer || is_told, NO_GRAVITY)?;
    // Off by half of its fall at either end it has none left, whatever its owner allows.
    let of_sewer = drive.service == Service::GravitySewer;
    let limit =
        drive.tolerance.map(|told| if of_sewer { told.min(fall_over(at, Ratio::default()) / 2.0) } else { told });
    let error = invert_uncertainty(at);
    let unknown = unknown_play(at).1;
    let known = unknown < play(at);
    let (held_to, likely) = (limit.value - unknown, drive.guided.error.map(|error| error.likely));
    let in_doubt = error.likely <= limit.value && error.high > limit.value;
    // A machine is surveyed as it goes, and steered back.
    let machine = !drive.stem.is_there() && drive.guided.by.is_steered() && method == Method::PipeJacking;
    let surveyed = machine || drive.stem.is_there() && drive.guided.by != Guidance::WalkedOver;
    if in_doubt && surveyed && held_to >= likely.value {
        let note = match (machine, known) {
            (true, _) => AS_IT_GOES,
            (false, true) => SURVEYED_SET,
            (false, false) => SURVEYED,
        };
        return Ok(at_least(Role::Offset, held_to, likely).by(Rule::Required).with_note(note));
    }
    let annulus = &drive.annulus;
    let note = match (method, annulus.spacer > Length::default(), annulus.grouted) {
        (Method::Pullback, true, _) => SPACED,
        (Method::Pullback, false, true) => GROUTED,
        _ => LEFT,
    };
    let note = if drive.guided.by == Guidance::None { UNSTEERED } else { note };
    let floats = method == Method::Pullback && annulus.spacer <= Length::default();
    let against = |error: Band<Length>, limit: Cited<Length>| {
        let check = at_most(Role::Offset, error, limit).with_note(note);
        // What floats is held by spacers; without them the likely invert decides what is over.
        if floats && error.likely <= limit.value && error.high > limit.value {
            let held = at_most(Role::Offset, Band::same(error.likely), limit);
            return check.with_note(FLOATS).at_best(held).settled_by(&[&["annulus.filling", "annulus.spacers"]]);
        }
        if known { check.with_care(Care::Condition, SET) } else { check }
    };
    let check = against(error, limit);
    // Who has a jacked sewer located from the surface has no loose line in mind.
    let located = at.is_jacked() && drive.guided.by == Guidance::WalkedOver;
    let loosest = drive.loosest_tolerance.map(|ends| if located { ends.low } else { ends.high });
    let fields: Ways = match (loosest, drive.guided.at_best) {
        (None, None) => return Ok(check),
        (Some(_), None) => &[&["tolerance"]],
        (None, Some(_)) => &[&["guidance"]],
        (Some(_), Some(_)) => &[&["guidance", "tolerance"]],
    };
    if let Some(loosest) = loosest.filter(|_| !at.is_jacked() && drive.guided.at_best.is_none()) {
        let least = at.pipe.sewer.map_or(Ratio::default(), |sewer| sewer.least_slope.value);
        let left = loosest.map(|loosest| loosest.min(fall_over(at, least)));
        let accepted = at_most(Role::Offset, Band::same(error.high), left).by(Rule::High);
        if accepted.verdict() == Verdict::Within && check.by(Rule::High).verdict() > Verdict::WithCare {
            return Ok(accepted.by(Rule::Required).with_note(ACCEPTED));
        }
    }
    let best = with_play(drive.guided.at_best.unwrap_or(drive.guided.error.value), at);
    Ok(check.at_best(against(best, loosest.unwrap_or(limit))).settled_by(fields))
}

/// What the whole line falls over a slope.
fn fall_over(at: &Plan<'_>, least: Ratio) -> Length {
    at.drive.length.value * (at.slope() - least).max(Ratio::default())
}

const ACCEPTED: &str = "an invert that its owner accepts: no tolerance is given, and he must accept one that is off by this much, which \
                        leaves the least slope; compared with the most that an owner may accept, or with the fall to spare";
const UNSTEERED: &str = "nothing steers it: it goes where it was set up to go, and a sewer needs a casing in which its carrier has room \
                         for its own grade";
const SURVEYED: &str = "survey the pilot before the pipe goes in, and go on only where it keeps the tolerance less the \
                        play round the pipe, told here beside its likely error";
const AS_IT_GOES: &str = "survey each pipe as it goes in, and steer back: the tolerance less the play round the pipe, told here \
                          beside the likely error, is what the machine is held to";
const SURVEYED_SET: &str = "survey the pilot before the pipe goes in; set the axis of the bore for a pipe that lies on its \
                            bottom, and hold it there until grout has set";
const SET: &str = "error of the pilot: set the axis of the bore for a pipe that lies on its bottom, and hold it there until \
                   grout has set";
const LEFT: &str =
    "error of the pilot, and the play round the pipe until it is grouted, half of it at the likely level";
const FLOATS: &str = "the pipe may lie anywhere in its bore, and nothing holds it until grout has set";
const GROUTED: &str = "error of the pilot and the play: in liquid grout the pipe floats, and sets where it is";
const SPACED: &str = "error of the pilot and what the spacers leave of the play";
