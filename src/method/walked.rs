//! What is put in, how, and what the checks share: every stage is walked once, here; checks read and never walk.

use super::body::Body;
use super::either::Forces;
use super::jacking::behind::{self, Resisting};
use super::jacking::jacked::{Jacked, both};
use super::pullback::force::{PullOnPipe, Pulling};
use super::pullback::pulled::Pulled;
use super::pullback::service::{self, InService};
use super::rest::{Put, Stands, stands};
use super::rules::{by_held_jacks, by_jacks};
use super::stage::{Stage, along_grade, peak, sum, whole_friction};
use crate::check::{Absent, Outcome};
use crate::conditions::{Moves, Plan, movement, sewer};
use crate::drive::{Drive, Pipe};
use crate::handbook::Method;
use crate::law::{Calc, Doubted};
use crate::quantity::{Band, Force, VolumeRate};
use core::ops::Deref;

/// A plan, and what its checks share.
pub(super) struct Walked<'a> {
    plan: Plan<'a>,
    /// Thrust that pushes the stem.
    pub(super) stem: Forces,
    /// Pull that draws the stem back out of the bore, where it is out before the pipe goes in.
    pub(super) stem_drawn: Option<Doubted<Band<Force>>>,
    way: Way<'a>,
    /// What the thrust wall finds behind it, where there is one.
    pub(super) wall: Option<Resisting<'a>>,
    /// Flow of the full pipe, where the file tells a flow.
    pub(super) full_flow: Option<Doubted<VolumeRate>>,
    /// How far the surface moves, where the file limits it.
    pub(super) surface: Option<Moves>,
    /// Settlement and slope of crossed services.
    pub(super) services: (Outcome, Outcome),
}

/// The forces of the stages after the pilot.
#[expect(clippy::large_enum_variant, reason = "no heap where numbers are worked out")]
enum Way<'a> {
    Jacked(Jacked<'a>, InService),
    Pulled(Pulled<'a>),
}

impl<'a> Deref for Walked<'a> {
    type Target = Plan<'a>;

    fn deref(&self) -> &Plan<'a> {
        &self.plan
    }
}

impl<'a> Walked<'a> {
    /// Walks every stage; `None` where the pipe cannot be put in so.
    pub(super) fn walk(calc: &mut Calc, drive: &'a Drive, pipe: &'a Pipe, method: Method) -> Option<Self> {
        let plan = Plan { drive, pipe, method };
        let put = Put::of(drive, pipe, method);
        let stem = |calc: &mut Calc| both(calc, put, Stage::STEM).map(|pushed| pushed.map(|force| force.on_rig));
        let by_winch = drive.pull.as_ref().is_some_and(|pull| pull.winch.is_some());
        let drawn = (drive.stem.withdrawn && (method == Method::PipeJacking || by_winch)).then(|| {
            calc.part("stem drawn back out of the bore");
            calc.doubted(|calc| {
                let rests = !matches!(stands(put, Body::Stem), Stands::Never);
                let friction = whole_friction(calc, put, Body::Stem);
                let weight = along_grade(calc, drive.stem.weight, drive.length.value, -drive.grade.value);
                sum(if rests { friction.after } else { friction.moving }, weight)
            })
        });
        let (stem, way) = match (method, &pipe.jacked, &pipe.pulled, &drive.pull) {
            (Method::PipeJacking, Some(jacked), ..) => {
                (stem(calc), Way::Jacked(Jacked::walk(calc, put, jacked), service::of_jacked(calc, drive, pipe)))
            }
            (Method::Pullback, _, Some(pulled), Some(pull)) => {
                (stem(calc), Way::Pulled(Pulled::walk(calc, Pulling { drive, pipe, pulled, pull })))
            }
            _ => return None,
        };
        Some(Self {
            wall: behind::resisting(calc, drive, pipe),
            full_flow: sewer::full_flow(calc, &plan),
            surface: movement::of_surface(calc, &plan),
            services: movement::of_services(calc, &plan),
            stem_drawn: drawn,
            plan,
            stem,
            way,
        })
    }

    /// The forces on a pipe that is pushed.
    pub(super) const fn jacked(&self) -> Result<&Jacked<'a>, Absent> {
        match &self.way {
            Way::Jacked(jacked, _) => Ok(jacked),
            Way::Pulled(_) => Err(Absent::NotApplicable("the pipe is not pushed")),
        }
    }

    /// The forces on a pipe that is pulled.
    pub(super) const fn pulled(&self) -> Result<&Pulled<'a>, Absent> {
        match &self.way {
            Way::Pulled(pulled) => Ok(pulled),
            Way::Jacked(..) => Err(Absent::NotApplicable("the pipe is not pulled")),
        }
    }

    /// The pipe after it is put in.
    pub(super) const fn served(&self) -> &InService {
        match &self.way {
            Way::Jacked(_, service) => service,
            Way::Pulled(pulled) => &pulled.service,
        }
    }

    /// Greatest force on the pipe, and on the rig over all stages.
    pub(super) fn forces(&self) -> [Band<Force>; 2] {
        let (pipe, rig) = match &self.way {
            Way::Jacked(jacked, _) => (jacked.thrust().safe, self.thrust().safe),
            Way::Pulled(pulled) => {
                let pulls = self.stem_drawn.unwrap_or(pulled.all().safe);
                let rig = pulls.zip(self.stem.safe).map(|(all, stem)| peak(all, stem));
                (pulled.on_pipe.map(PullOnPipe::peak), rig)
            }
        };
        [pipe, rig].map(Doubted::in_spite_of_doubt)
    }

    /// Greatest thrust on the wall of the launch pit over all stages that push.
    pub(super) fn thrust(&self) -> Forces {
        self.greatest(|_, thrust| thrust)
    }

    /// The same, no more than the jacks give.
    pub(super) fn thrust_of_jacks(&self) -> Forces {
        self.greatest(
            |of_pipe, thrust| if of_pipe { by_held_jacks(self.drive, thrust) } else { by_jacks(self.drive, thrust) },
        )
    }

    fn greatest(&self, given: impl Fn(bool, Forces) -> Forces) -> Forces {
        let (casing, pipe) = match &self.way {
            Way::Jacked(jacked, _) => (jacked.casing_thrust(), Some(jacked.thrust())),
            Way::Pulled(_) => (None, None),
        };
        let after =
            [(false, casing), (true, pipe)].into_iter().filter_map(|(of_pipe, thrust)| Some((of_pipe, thrust?)));
        let worse = |most: Doubted<Band<Force>>, force| most.zip(force).map(|(most, force)| peak(most, force));
        after.fold(given(false, self.stem), |most, (of_pipe, force)| most.with(given(of_pipe, force), worse))
    }
}
