//! The forces of a pull, stage by stage, and what the pipe bears of it.

use super::force::{PullOnPipe, pull_on_pipe};
use super::section::Strength;
use super::service::{self, InService};
use super::{jointed, pvc, steel, strength};
use crate::drive::{Drive, PePipe, Pipe, Pull, PulledPipe};
use crate::handbook::Method;
use crate::law::{Calc, Doubted, Recorder, Silent};
use crate::method::either::Either;
use crate::method::front::head;
use crate::method::rest::Put;
use crate::method::stage::{Body, Stage, Trailing, along_grade, peak, walk_pulled, whole_friction};
use crate::quantity::{Band, Force, Length, Ratio};

/// The forces of a pull, what the pipe bears of it, and what it bears after it.
pub(in crate::method) struct Pulled<'a> {
    pub(in crate::method) pipe: &'a PulledPipe,
    pub(in crate::method) pull: &'a Pull,
    /// On the rig, in the reaming passes before the pipe comes.
    pub(super) reaming: Option<Either<Doubted<Band<Force>>>>,
    /// On the rig, while the pipe comes.
    pub(super) rig: Either<Doubted<Band<Force>>>,
    pub(in crate::method) on_pipe: Doubted<PullOnPipe>,
    pub(in crate::method) strength: Strength,
    pub(in crate::method) service: InService,
}

impl<'a> Pulled<'a> {
    pub(in crate::method) fn walk<R: Recorder>(
        calc: &mut Calc<R>,
        drive: &Drive,
        pipe: &Pipe,
        pulled: &'a PulledPipe,
        pull: &'a Pull,
    ) -> Self {
        let put = Put::of(drive, pipe, Method::Pullback);
        let reaming = (!pipe.passes.is_empty()).then(|| {
            calc.part(Stage::REAMING.title());
            let best = put.best().map(|best| reaming(&mut Calc::new(Silent), best, pull));
            Either { safe: reaming(calc, put, pull), best }
        });
        calc.part(stage(pull).title());
        let on_pipe = calc.doubted(|calc| {
            let mut on_pipe = pull_on_pipe(calc, drive, pipe, pulled, pull);
            on_pipe.raise_after_stops(drive);
            on_pipe
        });
        let best = put.best().map(|best| on_rig(&mut Calc::new(Silent), best, pull, on_pipe));
        let rig = Either { safe: on_rig(calc, put, pull, on_pipe), best };
        let strength = strength(calc, pipe, pulled, pull, &on_pipe);
        let service = service::of(calc, drive, pipe, pulled, pull);
        Self { pipe: pulled, pull, reaming, rig, on_pipe, strength, service }
    }

    /// On the rig over reaming and pull.
    pub(in crate::method) fn all(&self) -> Either<Doubted<Band<Force>>> {
        let worse = |rig: Doubted<Band<Force>>, reaming| rig.zip(reaming).map(|(rig, reaming)| peak(rig, reaming));
        self.reaming.map_or(self.rig, |reaming| self.rig.with(reaming, worse))
    }
}

/// Greatest force on the rig while the pipe comes.
fn on_rig<R: Recorder>(
    calc: &mut Calc<R>,
    put: Put<'_>,
    pull: &Pull,
    on_pipe: Doubted<PullOnPipe>,
) -> Doubted<Band<Force>> {
    calc.doubted(|calc| {
        let reamer = last_reamer(calc, put.drive, put.pipe, pull);
        let on_pipe = calc.take(on_pipe);
        let trailing = trailing(&on_pipe, reamer, put.drive.length.value);
        let mut greatest = Band::<Force>::default();
        walk_pulled(calc, put, &trailing, |_, force, _| greatest = peak(greatest, force));
        greatest
    })
}

/// The stage that brings the pipe.
pub(super) const fn stage(pull: &Pull) -> Stage {
    if pull.push_assist.is_some() { Stage::PUSH_ASSIST } else { Stage::PULLBACK }
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
pub(super) fn strength<R: Recorder>(
    calc: &mut Calc<R>,
    pipe: &Pipe,
    pulled: &PulledPipe,
    pull: &Pull,
    on_pipe: &Doubted<PullOnPipe>,
) -> Strength {
    let strength = bears(calc, (pipe, pulled), pull, on_pipe, |pe| pe.weld_factor.value);
    if strength.passes() {
        return strength;
    }
    // A fluid that is kept light is the contractor's: what holds under it alone is a condition.
    let light =
        || bears(&mut Calc::new(Silent), (pipe, pulled), &pull.in_light_fluid(), on_pipe, |pe| pe.weld_factor.value);
    let strength = strength.held_by(light);
    strength.at_best(&best(pipe, pulled, pull, on_pipe))
}

/// What it bears with what the file does not tell at its best.
pub(super) fn best(pipe: &Pipe, pulled: &PulledPipe, pull: &Pull, on_pipe: &Doubted<PullOnPipe>) -> Strength {
    let (pull, on_pipe) = (pull.at_best(), on_pipe.map(PullOnPipe::at_best));
    bears(&mut Calc::new(Silent), (pipe, pulled), &pull, &on_pipe, |pe| pe.weld_at_best)
}

fn bears<R: Recorder>(
    calc: &mut Calc<R>,
    (pipe, pulled): (&Pipe, &PulledPipe),
    pull: &Pull,
    on_pipe: &Doubted<PullOnPipe>,
    weld: impl Fn(&PePipe) -> Ratio,
) -> Strength {
    let strength = match pulled {
        PulledPipe::Pe(pe) => strength::of(calc, pipe, (pe, weld(pe)), pull, on_pipe),
        PulledPipe::Pvc(pvc) => pvc::of(calc, pipe, pvc, pull, on_pipe),
        PulledPipe::Jointed(jointed) => jointed::of(calc, pipe, jointed, pull, on_pipe),
        PulledPipe::Steel(steel) => steel::of(calc, pipe, steel, pull, on_pipe),
    };
    Strength { borne: strength.borne.beside(on_pipe.in_spite_of_doubt().end_thrust), ..strength }
}

/// Resistance of a reamer in the ground where it is greatest.
pub(super) fn reamer<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pull: &Pull,
    bore: Length,
    before: Length,
) -> Band<Force> {
    // Neither the table nor the user's force of a reamer follows the ground: any stretch does.
    drive.stretches.first().map_or(Band::default(), |any| head(calc, pull.reamer, bore, before, any))
}

/// Resistance of the reamer that brings the pipe.
pub(super) fn last_reamer<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, pull: &Pull) -> Band<Force> {
    let before = pipe.passes.last().copied().unwrap_or(drive.stem.head);
    reamer(calc, drive, pull, pipe.bore.value, before)
}

/// Greatest force on the rig over the reaming passes before the pipe comes. The stem that follows the reamer takes
/// the place of the stem that has left, so the friction is that of one whole stem all along.
fn reaming<R: Recorder>(calc: &mut Calc<R>, put: Put<'_>, pull: &Pull) -> Doubted<Band<Force>> {
    let Put { drive, pipe, .. } = put;
    calc.doubted(|calc| {
        let stem = whole_friction(calc, put, Body::Stem);
        let climb = along_grade(calc, drive.stem.weight, drive.length.value, -drive.grade.value);
        let stem = if drive.rests.planned.is_empty() { stem.moving } else { stem.after };
        let mut greatest = Band::<Force>::default();
        let mut before = drive.stem.head;
        for bore in &pipe.passes {
            let reamer = reamer(calc, drive, pull, *bore, before);
            let total = reamer.with(stem, |reamer, stem| reamer + stem).with(climb, |force, climb| force + climb);
            greatest = peak(greatest, total);
            before = *bore;
        }
        greatest
    })
}
