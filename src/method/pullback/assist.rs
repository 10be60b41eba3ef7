//! A machine at the reception pit that pushes the tail of the string: its grip, and the string as a column before the
//! bore and in it.

use super::force::{Pulling, fills};
use super::pulled::Pulled;
use super::pvc;
use super::section::Borne;
use super::strength::{Cold, modulus};
use crate::check::{Absent, Outcome, Verdict, at_most, only, rated};
use crate::conditions::weight;
use crate::drive::{BY_ITS_MAKER, Fill, HoleState, Pipe, Pull, PulledPipe, PushAssist};
use crate::law::{Calc, Doubted};
use crate::laws::column::CrushOrBuckle;
use crate::laws::pull::NetWeightInFluid;
use crate::method::column::Column;
use crate::method::walked::Walked;
use crate::quantity::{Band, Force, Length, LineLoad, MassDensity, Pressure, Ratio, Role};
use crate::source::Cited;

const TAIL: &str = "string pushed at its tail";
const COLUMN: &str = "the full force that the machine is set to, as on a blocked head, on the free length as a \
    column that can sway, with no more stress than the pull is allowed";
const JOINTS: &str = "a string with joints that turn is no column: ask its maker whether it may be pushed, and how \
    hard";
const SNAKING: &str = "beyond it the string snakes in the wider bore, which costs more friction than the push gains";

fn assist<'a>(at: &Walked<'a>) -> Result<&'a PushAssist, Absent> {
    at.pulled()?.pull.push_assist.as_ref().ok_or(Absent::NotApplicable("nothing pushes the tail"))
}

pub(in crate::method) fn grip(at: &Walked<'_>) -> Outcome {
    let assist = assist(at)?;
    Ok(at_most(Role::Thrust, assist.force.value, assist.grip.ok_or(Absent::Missing)?))
}

pub(in crate::method) fn tail(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let assist = assist(at)?;
    let Pulled { pipe, pull, strength, .. } = at.pulled()?;
    Ok(match column(calc, Pulling { drive: at.drive, pipe: at.pipe, pulled: pipe, pull }, &strength.borne) {
        Some(column) => at_most(Role::Thrust, assist.force.value, column).with_note(COLUMN),
        None => rated(Verdict::NotDecided, BY_ITS_MAKER).with_note(JOINTS),
    })
}

/// Modulus of the string for as long as the pull lasts, no stiffer than it may be; none of a string with joints that
/// turn.
fn stiffness(calc: &mut Calc, pulled: &PulledPipe, pull: &Pull) -> Option<Pressure> {
    match pulled {
        PulledPipe::Pe(pe) => Some(modulus(calc, &pe.times.pull, pull, pull.duration, Cold::NotCredited)),
        PulledPipe::Pvc(pvc) => Some(pvc::modulus(calc, pvc, pull.duration)),
        PulledPipe::Steel(steel) => Some(steel.modulus),
        PulledPipe::Jointed(_) => None,
    }
}

/// What may push the free length before the bore; none of a string with joints that turn.
pub(super) fn column(calc: &mut Calc, at: Pulling<'_>, borne: &Borne) -> Option<Doubted<Cited<Force>>> {
    let Pulling { pipe, pulled, pull, .. } = at;
    let PushAssist { free_length, end_factor, safety, .. } = *pull.push_assist.as_ref()?;
    calc.part(TAIL);
    let allowed = calc.doubted(|calc| {
        let modulus = stiffness(calc, pulled, pull)?;
        let crushing = calc.take(borne.straight).value;
        let (outside_diameter, wall) = (pipe.outside_diameter.value, pulled.wall());
        let tail = Column::of(calc, modulus, outside_diameter, wall, safety.value);
        let buckling = tail.free(calc, free_length, end_factor.value);
        Some(Cited::new(calc.law(CrushOrBuckle { crushing, buckling }), end_factor.origin))
    });
    allowed.transpose()
}

/// A screen: the string in the bore, which holds it by its net weight alone.
pub(in crate::method) fn snaking(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let assist = assist(at)?;
    let Pulled { pipe: pulled, pull, .. } = at.pulled()?;
    only(!matches!(pulled, PulledPipe::Jointed(_)), JOINTS)?;
    let (outside_diameter, wall) = (at.pipe.outside_diameter.value, pulled.wall());
    let clearance = (at.pipe.bore.value - outside_diameter) / 2.0;
    only(clearance > Length::default(), "the bore is no wider than the pipe")?;
    calc.part(TAIL);
    let limit = calc.doubted(|calc| {
        let modulus = stiffness(calc, pulled, pull).unwrap_or_default();
        let tail = Column::of(calc, modulus, outside_diameter, wall, assist.safety.value);
        let weights = net_weight(calc, at.pipe, pulled, pull);
        weights.map(|weight| {
            if weight <= LineLoad::default() {
                return Force::default();
            }
            tail.snaking(calc, weight, clearance)
        })
    });
    let limit = limit.map(|limit| Cited::new(limit, assist.safety.origin));
    Ok(at_most(Role::Thrust, assist.force.value, limit).with_note(SNAKING))
}

/// Least weight, up or down, that holds the string against the wall of the bore: in clean fluid, and at the high level
/// in any of the fluids, nothing where one lifts the string and another does not.
fn net_weight(calc: &mut Calc, pipe: &Pipe, pulled: &PulledPipe, pull: &Pull) -> Band<LineLoad> {
    let (outside_diameter, wall) = (pipe.outside_diameter.value, pulled.wall());
    let pipe_weight = weight::of_pulled(calc, pipe, pulled, Ratio::from(1.0));
    let mut least = |fluids: &[MassDensity]| {
        let mut range: Option<(LineLoad, LineLoad)> = None;
        for fluid in fluids {
            for fill in fills(pulled, pull) {
                let (fluid_density, contents_density) = match (pull.works.hole, fill) {
                    (HoleState::Dry, Fill::Of(density)) => (MassDensity::default(), density),
                    (HoleState::Dry, Fill::Slurry) => Default::default(),
                    (HoleState::Fluid, Fill::Of(density)) => (*fluid, density),
                    (HoleState::Fluid, Fill::Slurry) => (*fluid, *fluid),
                };
                let law = NetWeightInFluid { pipe_weight, outside_diameter, wall, fluid_density, contents_density };
                let weight = calc.law(law);
                let (low, high) = range.unwrap_or((weight, weight));
                range = Some((low.min(weight), high.max(weight)));
            }
        }
        let (low, high) = range.unwrap_or_default();
        if low.value * high.value < 0.0 { LineLoad::default() } else { low.abs().min(high.abs()) }
    };
    let clean = least(&[pull.fluids.clean]);
    let any = least(&[pull.fluids.light, pull.fluids.clean, pull.fluids.heavy]);
    Band { low: clean, likely: clean, high: any }
}
