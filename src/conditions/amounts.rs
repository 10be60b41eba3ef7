//! Quantities of a scheme: soil by stage, grout, pipes, packers, sections.

use super::plan::Plan;
use crate::drive::Drive;
use crate::handbook::Method;
use crate::law::{Calc, Law};
use crate::laws::reaming::{AnnulusVolume, SpoilVolume};
use crate::quantity::{Length, Measure, Ratio, Volume};
use crate::source::{Cited, Origin};

/// Soil of one stage, measured in the ground.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct StageSpoil {
    /// The stage.
    pub what: &'static str,
    /// Soil taken out; none where it is pushed aside.
    pub volume: Volume,
}

/// Most stages that take soil out: the pilot, ten reaming passes and the pipe.
const STAGES: usize = 12;

/// What has to be moved and ordered.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
#[non_exhaustive]
pub struct Amounts {
    /// Soil by stage, in order.
    pub spoil: [Option<StageSpoil>; STAGES],
    /// Tanks of spoil, each time a whole one, where the file tells the tank: loosened, with the water that is added.
    pub tanks: Option<Cited<Ratio>>,
    /// Grout, with what is lost.
    pub grout: Option<Cited<Volume>>,
    /// Pipes that are pushed.
    pub pipes: Option<Cited<Ratio>>,
    /// Packers between them.
    pub packers: Option<Ratio>,
    /// Joints of a string before it is pulled.
    pub joints: Option<Cited<Ratio>>,
}

impl Amounts {
    /// All soil.
    #[must_use]
    pub fn soil(&self) -> Volume {
        self.spoil.iter().flatten().fold(Volume::default(), |sum, stage| sum + stage.volume)
    }
}

/// The quantities of one pipe put in by one method. What a pilot pushes aside is not counted, and what a drilled one bores
/// is.
#[must_use]
pub fn amounts(plan: &Plan<'_>) -> Amounts {
    let Plan { drive, pipe, method } = *plan;
    let calc = &mut Calc::silent();
    let length = drive.length.value;
    let mut amounts = Amounts::default();
    let drilled = drive.stretches.iter().any(|stretch| stretch.drilled(false).is_some());
    let mut cut = if drilled { Length::default() } else { drive.stem.head };
    let mut widen = |what, bore: Length| {
        if bore > cut {
            let volume = calc.law(SpoilVolume { bore, pilot: cut, length, swell_factor: Ratio::from(1.0) });
            if let Some(slot) = amounts.spoil.iter_mut().find(|slot| slot.is_none()) {
                *slot = Some(StageSpoil { what, volume });
            }
            cut = bore;
        }
    };
    if drilled {
        widen("soil in the ground, pilot", drive.stem.head);
    }
    match method {
        Method::PipeJacking => {
            if let Some(casing) = pipe.casing_diameter() {
                widen("soil in the ground, casing", casing);
            }
            widen("soil in the ground, pipe pushed", pipe.bore.value.max(pipe.outside_diameter.value));
            let one = plan.pipe_length();
            let pipes = Ratio::from_si((length / one.value).si().ceil());
            amounts.pipes = Some(Cited::new(pipes, one.origin));
            let packed = pipe.jacked.as_ref().is_some_and(|jacked| jacked.joint.packer.is_some());
            amounts.packers = packed.then(|| Ratio::from_si((pipes.si() - 1.0).max(0.0)));
        }
        Method::Pullback => {
            for pass in &pipe.passes {
                widen("soil in the ground, reaming pass", *pass);
            }
            widen("soil in the ground, pipe pulled", pipe.bore.value);
            amounts.joints = joints_before(drive).map(|joints| Cited::new(joints, drive.site.pace.stick.origin));
            if drive.annulus.grouted {
                let waste = drive.annulus.grout_waste.unwrap_or_else(|| Ratio::from(1.0));
                let (bore, outside_diameter) = (pipe.bore.value, pipe.outside_diameter.value);
                let grout = calc.law(AnnulusVolume { bore, outside_diameter, length, waste });
                amounts.grout = Some(Cited::new(grout, Origin::Law(&AnnulusVolume::EQUATION)));
            }
        }
    }
    amounts.tanks = drive.site.clearing.map(|clearing| {
        let by_soil = clearing.loosened.value + clearing.water;
        let tanks = (amounts.soil() * by_soil / clearing.tank.value).si().ceil();
        Cited::new(Ratio::from_si(tanks), clearing.loosened.origin)
    });
    amounts
}

/// Joints of a pulled string that are made before the pull; those made during it are in the duration of the pull.
pub(super) fn joints_before(drive: &Drive) -> Option<Ratio> {
    let pull = drive.pull.as_ref()?;
    let string = drive.length.value + pull.excess_length;
    let during = match pull.works.laydown {
        Some(laydown) if laydown.in_pit => return Some(Ratio::default()),
        Some(laydown) => (string / laydown.length).si().ceil() - 1.0,
        None => 0.0,
    };
    let all = (string / drive.site.pace.stick.value).si().ceil() - 1.0;
    Some(Ratio::from_si((all - during).max(0.0)))
}
