//! The forces of a pull, stage by stage, and what the pipe bears of it.

use super::force::{OnPipe, PullOnPipe, Pulling, pull_on_pipe};
use super::section::Strength;
use super::service::{self, InService};
use super::{jointed, pvc, steel, strength};
use crate::check::Subject;
use crate::drive::{Pull, PullWorks, PulledPipe};
use crate::handbook::Method;
use crate::law::{Calc, Doubted};
use crate::laws::soil::water_density;
use crate::method::either::{Either, Forces};
use crate::method::front::head;
use crate::method::rest::Put;
use crate::method::stage::{Body, Stage, Trailing, along_grade, peak, walk_pulled, whole_friction};
use crate::quantity::{Band, Force, Length};

/// The forces of a pull, what the pipe bears of it, and what it bears after it.
pub(in crate::method) struct Pulled<'a> {
    pub(in crate::method) pipe: &'a PulledPipe,
    pub(in crate::method) pull: &'a Pull,
    /// On the rig, in the reaming passes before the pipe comes.
    pub(super) reaming: Option<Forces>,
    /// On the rig, or on the winch, while the pipe comes.
    pub(super) rig: Forces,
    pub(in crate::method) on_pipe: OnPipe,
    pub(in crate::method) strength: Strength,
    pub(in crate::method) service: InService,
}

impl<'a> Pulled<'a> {
    pub(in crate::method) fn walk(calc: &mut Calc, at: Pulling<'a>) -> Self {
        let Pulling { drive, pipe, pulled, pull } = at;
        let put = Put::of(drive, pipe, Method::Pullback);
        let reaming = (!pipe.passes.is_empty()).then(|| {
            calc.part(Stage::REAMING.title());
            let best = put.best().map(|best| reaming(&mut Calc::silent(), best, at));
            Either { safe: reaming(calc, put, at), best }
        });
        calc.part(stage(pull).title());
        let on_pipe = calc.doubted(|calc| {
            let mut on_pipe = pull_on_pipe(calc, at);
            on_pipe.raise_after_stops(drive);
            on_pipe
        });
        let rig = if pull.winch.is_some() {
            Either::sure(on_pipe.map(PullOnPipe::peak))
        } else {
            let best = put.best().map(|best| on_rig(&mut Calc::silent(), best, at, on_pipe));
            Either { safe: on_rig(calc, put, at, on_pipe), best }
        };
        let strength = strength(calc, at, &on_pipe);
        let service = service::of(calc, at);
        Self { pipe: pulled, pull, reaming, rig, on_pipe, strength, service }
    }

    /// On the rig over reaming and pull.
    pub(in crate::method) fn all(&self) -> Forces {
        let worse = |rig: Doubted<Band<Force>>, reaming| rig.zip(reaming).map(|(rig, reaming)| peak(rig, reaming));
        self.reaming.map_or(self.rig, |reaming| self.rig.with(reaming, worse))
    }
}

/// Greatest force on the rig while the pipe comes.
fn on_rig(calc: &mut Calc, put: Put<'_>, at: Pulling<'_>, on_pipe: OnPipe) -> Doubted<Band<Force>> {
    calc.doubted(|calc| {
        let reamer = last_reamer(calc, at);
        let on_pipe = calc.take(on_pipe);
        let trailing = trailing(&on_pipe, reamer, put.drive.length.value);
        let mut greatest = Band::<Force>::default();
        walk_pulled(calc, put, &trailing, |_, force, _| greatest = peak(greatest, force));
        greatest
    })
}

/// The stage that brings the pipe.
pub(super) const fn stage(pull: &Pull) -> Stage {
    if pull.winch.is_some() {
        Stage::WINCH
    } else if pull.push_assist.is_some() {
        Stage::PUSH_ASSIST
    } else {
        Stage::PULLBACK
    }
}

/// Reamer and pipe behind the stem.
pub(super) fn trailing(
    on_pipe: &PullOnPipe,
    reamer: Band<Force>,
    length: Length,
) -> Trailing<impl Fn(Length) -> Band<Force> + use<'_>> {
    Trailing { reamer, pull: move |advance| on_pipe.at(advance, length), turns: on_pipe.turns(length), is_stem: false }
}

/// What the pipe bears, with what the file does not tell on the safe side; what then fails is held against it at its best.
pub(super) fn strength(calc: &mut Calc, at: Pulling<'_>, on_pipe: &OnPipe) -> Strength {
    let strength = bears(calc, at, on_pipe, false);
    if strength.passes() {
        return strength;
    }
    // A fluid that is kept light is the contractor's: what holds under it alone is a condition.
    let light = || {
        let at = Pulling { pull: &at.pull.in_light_fluid(), ..at };
        bears(&mut Calc::silent(), at, on_pipe, false)
    };
    let strength = strength.held_by(light).at_best(&best(at, on_pipe));
    let rule = Subject::Collapse.decides().rule(&at.drive.leeway);
    strength.spared_by(rule, |spared| {
        let pull = at.pull.in_light_fluid();
        let pull = if spared.level { pull.pumped() } else { pull };
        let pull = if spared.contents { pull.full(water_density()) } else { pull };
        let pull = if spared.time { Pull { load_duration: pull.stands_at_least, ..pull } } else { pull };
        let score = if spared.wall { pull.works.score_at_best } else { pull.works.score };
        let pull = Pull { works: PullWorks { score, ..pull.works }, ..pull };
        let on_pipe = if spared.annulus { on_pipe.map(PullOnPipe::at_best) } else { *on_pipe };
        bears(&mut Calc::silent(), Pulling { pull: &pull, ..at }, &on_pipe, spared.wall).collapse
    })
}

/// What it bears with what the file does not tell at its best.
pub(super) fn best(at: Pulling<'_>, on_pipe: &OnPipe) -> Strength {
    let (pull, on_pipe) = (at.pull.at_best(), on_pipe.map(PullOnPipe::at_best));
    bears(&mut Calc::silent(), Pulling { pull: &pull, ..at }, &on_pipe, true)
}

fn bears(calc: &mut Calc, at: Pulling<'_>, on_pipe: &OnPipe, best: bool) -> Strength {
    let strength = match at.pulled {
        PulledPipe::Pe(pe) => {
            let weld = if best { pe.weld_at_best } else { pe.weld_factor.value };
            strength::of(calc, at, (pe, weld), on_pipe)
        }
        PulledPipe::Pvc(pvc) => pvc::of(calc, at, pvc, on_pipe),
        PulledPipe::Jointed(jointed) => jointed::of(calc, at, (jointed, best), on_pipe),
        PulledPipe::Steel(steel) => steel::of(calc, at, steel, on_pipe),
    };
    Strength { borne: strength.borne.beside(on_pipe.in_spite_of_doubt().end_thrust), ..strength }
}

/// Resistance of a reamer in the ground where it is greatest.
pub(super) fn reamer(calc: &mut Calc, at: Pulling<'_>, bore: Length, before: Length) -> Band<Force> {
    // Neither the table nor the user's force of a reamer follows the ground: any stretch does.
    at.drive.stretches.first().map_or(Band::default(), |any| head(calc, at.pull.reamer, bore, before, any))
}

/// Resistance of the reamer that brings the pipe.
pub(super) fn last_reamer(calc: &mut Calc, at: Pulling<'_>) -> Band<Force> {
    let before = at.pipe.passes.last().copied().unwrap_or(at.drive.stem.head);
    reamer(calc, at, at.pipe.bore.value, before)
}

/// Greatest force on the rig over the reaming passes before the pipe comes. The stem that follows the reamer takes
/// the place of the stem that has left, so the friction is that of one whole stem all along.
fn reaming(calc: &mut Calc, put: Put<'_>, at: Pulling<'_>) -> Doubted<Band<Force>> {
    let Put { drive, pipe, .. } = put;
    calc.doubted(|calc| {
        let stem = whole_friction(calc, put, Body::Stem);
        let climb = along_grade(calc, drive.stem.weight, drive.length.value, -drive.grade.value);
        let stem = if drive.rests.planned.is_empty() { stem.moving } else { stem.after };
        let mut greatest = Band::<Force>::default();
        let mut before = drive.stem.head;
        for bore in &pipe.passes {
            let reamer = reamer(calc, at, *bore, before);
            let total = reamer.with(stem, |reamer, stem| reamer + stem).with(climb, |force, climb| force + climb);
            greatest = peak(greatest, total);
            before = *bore;
        }
        greatest
    })
}
