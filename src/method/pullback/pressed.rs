//! Pressure on a string while it is pulled: fluid outside, and what is held inside.

use super::force::{OnPipe, PullOnPipe};
use super::section::{Bend, Section, has_ramp};
use crate::check::{Care, Draft, Outcome, at_most, only};
use crate::drive::{Fill, HoleState, Pull};
use crate::law::{Calc, Doubted};
use crate::laws::collapse::{BendOvality, CriticalPressure, FluidHead, OvalityFactor, TensionFactor};
use crate::laws::inside_pressure::PressureByRatio;
use crate::quantity::{Band, MassDensity, Pressure, Ratio, Role};
use crate::source::Cited;

/// Why nothing presses on the string.
pub(super) const DRY: &str = "the bore is dry";
const INSIDE: &str =
    "its hoop stress at most a share of the stress that the pull is allowed; its thrust on the ends is in the tension";
const LET_OFF: &str = "the fluid stands on the pipe longer than the inside pressure is held, which is therefore not \
    counted; give fluid_stands_for";
const KEPT_FULL: &str = "counts on a string filled up to the ground: keep it full until the fluid round it is \
    grouted or drained";
const PAIRED: &str = "with the larger of the stresses in the bore and on the ramp, which is on the safe side";

/// A ring of plastic under outside pressure while it is pulled.
pub(super) struct Ring {
    pub(super) section: Section,
    /// By level of the load.
    pub(super) modulus: Doubted<Band<Pressure>>,
    pub(super) poisson: Ratio,
    /// As delivered.
    pub(super) ovality: Ratio,
    pub(super) bend: Option<Doubted<Bend>>,
    pub(super) allowable: Doubted<Cited<Pressure>>,
}

/// Static pressure of the heavy fluid under the highest column there can be, with the pressure in the annulus, less what
/// a pressure held inside takes of it and what fills a string that hangs down a ramp: it stands as high as the fluid
/// outside, or as water does in a string whose tail lies on the ground. From a pit nothing says how high it stands. Fluid
/// that presses harder than the ground bears comes up.
pub(super) fn outside_pressure(
    calc: &mut Calc,
    pull: &Pull,
    on_pipe: &PullOnPipe,
    (section, allowable): (Section, Doubted<Cited<Pressure>>),
) -> Band<Pressure> {
    let height = pull.fluid_height;
    let outside = calc.law(FluidHead { density: pull.fluids.heavy, height });
    let inside = filled(pull).map_or(Pressure::default(), |density| calc.law(FluidHead { density, height }));
    let inside = inside + credited(calc, pull, (section, allowable));
    on_pipe.annular.map(|annular| (on_pipe.presses(outside + annular) - inside).max(Pressure::default()))
}

/// Pressure inside that counts against collapse: it is held during the pull, so that fluid that stands longer meets none
/// of it, and it counts for no more than the wall may hold.
fn credited(calc: &mut Calc, pull: &Pull, (section, allowable): (Section, Doubted<Cited<Pressure>>)) -> Pressure {
    let inside = pull.works.inside_pressure;
    if inside <= Pressure::default() || !is_held_on(pull) {
        return Pressure::default();
    }
    let held = may_hold(calc, section, pull, allowable);
    inside.min(calc.take(held).value)
}

fn is_held_on(pull: &Pull) -> bool {
    pull.load_duration <= pull.duration
}

/// What is said of collapse under fluid.
pub(super) fn pressed_note(pull: &Pull, note: &'static str) -> &'static str {
    if pull.works.inside_pressure > Pressure::default() && !is_held_on(pull) { LET_OFF } else { note }
}

/// Pressure inside that a wall may hold while it is pulled: its hoop stress a share of what the wall is allowed along.
fn may_hold(
    calc: &mut Calc,
    section: Section,
    pull: &Pull,
    allowable: Doubted<Cited<Pressure>>,
) -> Doubted<Cited<Pressure>> {
    let Section { outside_diameter, wall } = section;
    let share = pull.inside_share;
    calc.doubted(|calc| {
        let stress = calc.take(allowable).value * share.value;
        share.map(|_| calc.law(PressureByRatio { stress, outside_diameter, wall }))
    })
}

/// A pressure held inside, against what the wall may hold beside the pull.
pub(super) fn inside(calc: &mut Calc, section: Section, pull: &Pull, allowable: Doubted<Cited<Pressure>>) -> Outcome {
    let pressure = pull.works.inside_pressure;
    only(pressure > Pressure::default(), "no pressure is held inside")?;
    calc.part("pressure inside during the pull");
    Ok(at_most(Role::Pressure, pressure, may_hold(calc, section, pull, allowable)).with_note(INSIDE))
}

/// Density of what fills a string that hangs down a ramp, where it is more than air.
fn filled(pull: &Pull) -> Option<MassDensity> {
    let density = match pull.works.fill? {
        Fill::Of(density) => density,
        Fill::Slurry => pull.fluids.light,
    };
    (has_ramp(pull) && density > MassDensity::default()).then_some(density)
}

/// On condition that it stays full, where what fills it is counted on.
pub(super) fn kept_full(check: Draft, pull: &Pull) -> Draft {
    if filled(pull).is_some() { check.with_care(Care::Condition, KEPT_FULL) } else { check }
}

impl Ring {
    /// Collapse during the pull; in a dry bore nothing presses.
    pub(super) fn collapse(
        &self,
        calc: &mut Calc,
        pull: &Pull,
        on_pipe: &OnPipe,
        on_ramp: Doubted<Band<Pressure>>,
    ) -> Outcome {
        only(pull.works.hole == HoleState::Fluid, DRY)?;
        calc.part("collapse during the pull");
        let pressure = calc.doubted(|calc| {
            let on_pipe = calc.take(*on_pipe);
            outside_pressure(calc, pull, &on_pipe, (self.section, self.allowable))
        });
        let section = self.section;
        let resistance = calc.doubted(|calc| {
            let poisson = self.poisson;
            let bent = self.bend.map_or(Ratio::default(), |bend| {
                let Section { outside_diameter, wall } = section;
                let radius = calc.take(bend).radius;
                calc.law(BendOvality { outside_diameter, wall, radius, poisson })
            });
            let ovality = (self.ovality + bent).max(pull.ovality);
            let ovality_factor = calc.law(OvalityFactor { ovality });
            let dimension_ratio = section.outside_diameter / section.wall;
            let (modulus, allowable) = (calc.take(self.modulus), calc.take(self.allowable).value);
            let (on_ramp, on_pipe) = (calc.take(on_ramp), calc.take(*on_pipe));
            let stresses = on_pipe.in_wall().with(on_ramp, |tension, on_ramp| (tension, on_ramp));
            let loads = stresses.with(modulus, |(tension, on_ramp), modulus| (tension, on_ramp, modulus));
            loads.map(|(tension, on_ramp, modulus)| {
                // The curve takes the peak stress with bending in one standard and the axial stress in a handbook: the
                // larger of the two stations.
                let stress = section.axial(calc, tension).max(on_ramp);
                // The curve ends at the allowable stress. What is past it is over by the tension; the curve goes on falling about
                // as fast as the stress grows.
                let tension_factor = calc.law(TensionFactor { stress: stress.min(allowable), allowable });
                let past = (stress / allowable).max(Ratio::from(1.0));
                calc.law(CriticalPressure { modulus, poisson, dimension_ratio, ovality_factor, tension_factor })
                    / (pull.collapse_factor.value * past)
            })
        });
        let resistance = resistance.map(|resistance| Cited::new(resistance, pull.collapse_factor.origin));
        let check = at_most(Role::Pressure, pressure, resistance).with_note(pressed_note(pull, PAIRED));
        Ok(kept_full(check, pull))
    }
}
