//! What the PE pipe bears: tension, tension with bending on the ramp, collapse.

use super::PullOnPipe;
use crate::check::{Check, Subject};
use crate::drive::{ModulusPoints, PePipe, Pipe, Pull, StressSource};
use crate::law::{Calc, Doubted, Law, Recorder};
use crate::laws::collapse::{BendOvality, CriticalPressure, FluidHead, OvalityFactor, TensionFactor};
use crate::laws::pe::{
    AllowableTension, AxialStress, BendRadiusForShare, BendingStress, MinimumBendRadius, ModulusAtDuration,
    ModulusAtTemperature, PullStressAtTemperature, PullStressForDuration, TensileDesignStress,
};
use crate::method::scheme::Scheme;
use crate::quantity::{Band, Force, Length, Measure, Pressure, Ratio, Role, Time};
use crate::source::{Cited, Origin};

const TIGHTER_EDITION: &str = "another edition that covers the pipe is tighter: leave stress_edition out to use it";
const RADIUS_TAKEN: &str = "not given: the ramp is taken as this wide; build it no tighter";
const PAIRED: &str = "with the larger of the stresses in the bore and on the ramp, which is on the safe side";

pub(super) fn checks<R: Recorder>(
    calc: &mut Calc<R>,
    pipe: &Pipe,
    pe: &PePipe,
    pull: &Pull,
    on_pipe: &Doubted<PullOnPipe>,
    scheme: &mut Scheme,
) {
    let section = Section { outside_diameter: pipe.outside_diameter.value, wall: pe.wall.value };
    let peak = on_pipe.map(PullOnPipe::peak);

    calc.part("allowable tension");
    let stress = allowable_stress(calc, pe, pull);
    let tension = calc.doubted(|calc| {
        stress.value.chosen.map(|stress| {
            calc.law(AllowableTension {
                stress,
                outside_diameter: section.outside_diameter,
                wall: section.wall,
                weld_factor: pe.weld_factor.value,
            })
        })
    });
    let tension = Doubted { value: tension.value, doubt: stress.doubt.or(tension.doubt) };
    // A looser edition was asked for: said, and never a plain pass.
    let edition = |check: Check| if stress.value.tighter { check.as_caution(TIGHTER_EDITION) } else { check };
    scheme.checks.add(edition(Check::at_most(Subject::Tension, Role::Pull, peak, tension)));

    calc.part("tension and bending on the ramp");
    let weld = pe.weld_factor.value;
    let limit = stress.map(|stress| stress.chosen.map(|stress| weld * stress));
    let bend = calc.doubted(|calc| Bend::of(calc, section, pe, pull, limit.value.value));
    let bending = bend.map(|bend| bend.stress);
    let on_ramp =
        calc.doubted(|calc| on_pipe.value.at_ramp.map(|tension| section.axial(calc, tension) + bending.value));
    let on_ramp = Doubted { value: on_ramp.value, doubt: on_ramp.doubt.or(bending.doubt).or(on_pipe.doubt) };
    scheme.checks.add(edition(Check::at_most(Subject::TensionAndBending, Role::Strength, on_ramp, limit)));
    let need = Cited::new(bend.value.smallest, pull.bend_ratio.origin);
    let check = Check::at_least(Subject::BendRadius, Role::Distance, bend.value.radius, need).in_doubt(bend.doubt);
    scheme.checks.add(if pull.bend_radius.is_none() { check.with_note(RADIUS_TAKEN) } else { check });

    calc.part("collapse during the pull");
    let pressure = calc.doubted(|calc| outside_pressure(calc, pull));
    let resistance = calc.doubted(|calc| {
        // The fluid stands on the pipe longer than the pull lasts, and cools it: cold stiffness is not credited.
        let modulus = modulus(calc, &pe.soft, pull, pull.load_duration, Cold::NotCredited);
        let bent = calc.law(BendOvality {
            outside_diameter: section.outside_diameter,
            wall: section.wall,
            radius: bend.value.radius,
            poisson: pull.poisson,
        });
        let ovality = (pe.ovality + bent).max(pull.ovality);
        let ovality_factor = calc.law(OvalityFactor { ovality });
        let dimension_ratio = section.outside_diameter / section.wall;
        let stresses = peak.value.with(on_ramp.value, |tension, on_ramp| (tension, on_ramp));
        stresses.map(|(tension, on_ramp)| {
            // The curve takes the peak stress with bending in one standard and the axial stress in a handbook: the
            // larger of the two stations.
            let stress = section.axial(calc, tension).max(on_ramp);
            let tension_factor = calc.law(TensionFactor { stress, allowable: limit.value.value });
            let poisson = pull.poisson;
            calc.law(CriticalPressure { modulus, poisson, dimension_ratio, ovality_factor, tension_factor })
                / pull.collapse_factor.value
        })
    });
    let resistance = Doubted {
        value: Cited::new(resistance.value, pull.collapse_factor.origin),
        doubt: resistance.doubt.or(limit.doubt).or(on_ramp.doubt).or(peak.doubt),
    };
    let check = Check::at_most_by_level(Subject::Collapse, Role::Pressure, pressure, resistance);
    scheme.checks.add(check.with_note(PAIRED));
}

#[derive(Clone, Copy)]
struct Section {
    outside_diameter: Length,
    wall: Length,
}

impl Section {
    fn axial<R: Recorder>(self, calc: &mut Calc<R>, tension: Force) -> Pressure {
        calc.law(AxialStress { tension, outside_diameter: self.outside_diameter, wall: self.wall })
    }
}

/// The stress of the editions chosen, and whether one that was not chosen is tighter.
#[derive(Debug, Clone, Copy)]
struct Allowable {
    chosen: Cited<Pressure>,
    tighter: bool,
}

/// The least of the editions chosen, at the duration and temperature of the pull.
fn allowable_stress<R: Recorder>(calc: &mut Calc<R>, pe: &PePipe, pull: &Pull) -> Doubted<Allowable> {
    let none = Cited::new(Pressure::default(), pe.wall.origin);
    let least = |calc: &mut Calc<R>, chosen: bool| {
        let mut least: Option<Cited<Pressure>> = None;
        for source in pe.stresses.iter().filter(|source| source.chosen == chosen) {
            let stress = at_duration_and_temperature(calc, source, pe, pull);
            if least.is_none_or(|least| stress.value < least.value) {
                least = Some(stress);
            }
        }
        least
    };
    // No edition: no stress allowed. Doubt in an edition that was not chosen is no doubt in the limit.
    let chosen = calc.doubted(|calc| least(calc, true).unwrap_or(none));
    let other = calc.doubted(|calc| least(calc, false)).value;
    let tighter = other.is_some_and(|other| other.value < chosen.value.value);
    chosen.map(|chosen| Allowable { chosen, tighter })
}

fn at_duration_and_temperature<R: Recorder>(
    calc: &mut Calc<R>,
    source: &StressSource,
    pe: &PePipe,
    pull: &Pull,
) -> Cited<Pressure> {
    let (stress, duration_factor, origin) = match source.yield_design_factor {
        Some(design_factor) => {
            let law = TensileDesignStress {
                design_factor,
                duration_factor: source.duration_factor,
                tensile_yield: source.stress,
            };
            (calc.law(law), Ratio::from_si(1.0), Origin::Law(&TensileDesignStress::EQUATION))
        }
        None => (source.stress, source.duration_factor, source.origin),
    };
    let duration = pull.duration;
    let stress = calc.law(PullStressForDuration { stress, duration_factor, duration, longest: source.longest });
    let (upper, factor_at_upper) = pe.upper_temperature;
    let warm = PullStressAtTemperature {
        stress,
        temperature: pull.temperature,
        reference: source.reference,
        upper,
        factor_at_upper,
    };
    Cited::new(calc.law(warm), origin)
}

/// The string on the ramp.
#[derive(Debug, Clone, Copy)]
struct Bend {
    radius: Length,
    smallest: Length,
    stress: Pressure,
}

impl Bend {
    /// With the given radius, or one that leaves enough stress to the pull.
    fn of<R: Recorder>(calc: &mut Calc<R>, section: Section, pe: &PePipe, pull: &Pull, allowable: Pressure) -> Self {
        let outside_diameter = section.outside_diameter;
        let smallest = calc.law(MinimumBendRadius {
            outside_diameter,
            ratio: pull.bend_ratio.value,
            temperature: pull.temperature,
            cold_factor: pull.bend_cold,
        });
        let modulus = modulus(calc, &pe.stiff, pull, pull.duration, Cold::Credited);
        let radius = match pull.bend_radius {
            Some(given) => given.value,
            None => {
                let share = pull.bend_share;
                smallest.max(calc.law(BendRadiusForShare { modulus, outside_diameter, allowable, share }))
            }
        };
        let stress = calc.law(BendingStress { modulus, outside_diameter, radius });
        Self { radius, smallest, stress }
    }
}

/// Whether a pipe colder than the table's 73 degF counts as stiffer.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Cold {
    Credited,
    NotCredited,
}

fn modulus<R: Recorder>(
    calc: &mut Calc<R>,
    points: &ModulusPoints,
    pull: &Pull,
    duration: Time,
    cold: Cold,
) -> Pressure {
    let (duration_before, modulus_before) = points.before;
    let (duration_after, modulus_after) = points.after;
    let tabulated =
        calc.law(ModulusAtDuration { duration, duration_before, modulus_before, duration_after, modulus_after });
    let (below, factor_below) = points.below;
    let (above, factor_above) = points.above;
    let temperature = pull.temperature;
    let law = ModulusAtTemperature { modulus: tabulated, temperature, below, factor_below, above, factor_above };
    let warmed = calc.law(law);
    if cold == Cold::Credited { warmed } else { warmed.min(tabulated) }
}

/// Static pressure of the heavy fluid under the highest column there can be, with the pressure in the annulus. What
/// fills the pipe is not credited: nothing says how high it stands.
fn outside_pressure<R: Recorder>(calc: &mut Calc<R>, pull: &Pull) -> Band<Pressure> {
    let outside = calc.law(FluidHead { density: pull.fluids.heavy, height: pull.fluid_height });
    pull.annular_pressure.map(|annular| outside + annular)
}
