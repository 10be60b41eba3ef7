//! What the PE pipe bears: tension, tension with bending on the ramp, strain, collapse.

use super::force::{OnPipe, PullOnPipe, Pulling};
use super::pressed::{self, Ring};
use super::section::{self, Bend, Borne, Section, Strength, bent, has_ramp, on_ramp};
use crate::check::{Draft, Outcome, at_most};
use crate::drive::{ModulusPoints, PePipe, Pull, StressSource};
use crate::law::{Calc, Doubted, Law};
use crate::laws::pe::{
    MinimumBendRadius, ModulusAtDuration, ModulusAtTemperature, PullStressAtTemperature, PullStressForDuration,
    TensileDesignStress,
};
use crate::laws::pull_limits::{BendStrain, PullStrain};
use crate::quantity::{Band, Force, Measure, Pressure, Ratio, Role, Time};
use crate::source::{Cited, Origin};

const TIGHTER_EDITION: &str =
    "another edition that covers the pipe is tighter than the one that counts: agree with the owner which does";

pub(super) fn of(calc: &mut Calc, at: Pulling<'_>, (pe, weld): (&PePipe, Ratio), on_pipe: &OnPipe) -> Strength {
    let Pulling { pipe, pull, .. } = at;
    let section = Section::scored(calc, pipe.outside_diameter.value, pe.wall.value, pull);
    calc.part("allowable tension");
    let stress = allowable_stress(calc, pe, pull);
    let tension = section::tension(calc, section, stress.map(|stress| stress.chosen), weld);
    // A looser edition was asked for: said, and never a plain pass.
    let tighter = stress.in_spite_of_doubt().tighter;
    let edition = |check: Draft| if tighter { check.as_caution(TIGHTER_EDITION) } else { check };

    let limit = stress.map(|stress| stress.chosen.map(|stress| weld * stress));
    let stiff = calc.doubted(|calc| modulus(calc, &pe.stiff, pull, pull.duration, Cold::Credited));
    let bend = has_ramp(pull).then(|| {
        calc.part("tension and bending on the ramp");
        calc.doubted(|calc| {
            let smallest = calc.law(MinimumBendRadius {
                outside_diameter: section.outside_diameter,
                ratio: pull.bend_ratio.value,
                temperature: pull.temperature,
                cold_factor: pull.bend_cold,
            });
            Bend::of(calc, section, smallest, stiff, pull, limit)
        })
    });
    let ramp = on_ramp(calc, section, on_pipe, bend);
    let [strain, strain_with_bend] = strains(calc, section, pe, pull, on_pipe, bend);

    // The fluid stands on the pipe longer than the pull lasts, and cools it: cold stiffness is not credited.
    let points = if pull.load_duration > pull.duration { &pe.soft } else { &pe.times.pull };
    let soft = calc.doubted(|calc| modulus(calc, points, pull, pull.load_duration, Cold::NotCredited));
    let (poisson, ovality) = (pull.poisson, pe.ovality);
    let ring = Ring { section, modulus: soft.map(Band::same), poisson, ovality, bend, allowable: limit };
    let collapse = ring.collapse(calc, pull, on_pipe, ramp);
    let borne = Borne::of(calc, section, pull, tension, (limit, stiff), bend);
    Strength {
        with_bending: bent(bend, |_| edition(at_most(Role::Strength, ramp, limit))),
        radius: bent(bend, |bend| Bend::check(bend, pull, pull.bend_ratio.origin)),
        collapse,
        inside: pressed::inside(calc, section, pull, stress.map(|stress| stress.chosen)),
        strain,
        strain_with_bend,
        ..Strength::of(borne, edition(at_most(Role::Pull, on_pipe.map(PullOnPipe::in_wall), tension)))
    }
}

/// Strain of the pull, and of pull and bend on the ramp.
fn strains(
    calc: &mut Calc,
    section: Section,
    pe: &PePipe,
    pull: &Pull,
    on_pipe: &OnPipe,
    bend: Option<Doubted<Bend>>,
) -> [Outcome; 2] {
    calc.part("strain");
    let soft = calc.doubted(|calc| modulus(calc, &pe.times.pull, pull, pull.duration, Cold::NotCredited));
    let strain = |calc: &mut Calc, tension: Band<Force>| {
        let modulus = calc.take(soft);
        tension.map(|tension| {
            let stress = section.axial(calc, tension);
            calc.law(PullStrain { stress, modulus })
        })
    };
    let (pulled, total) = pull.works.strain;
    let along = calc.doubted(|calc| {
        let peak = calc.take(*on_pipe).in_wall();
        strain(calc, peak)
    });
    let both = bent(bend, |bend| {
        let both = calc.doubted(|calc| {
            let (outside_diameter, radius) = (section.outside_diameter, calc.take(bend).radius);
            let bent = calc.law(BendStrain { outside_diameter, radius });
            let at_ramp = calc.take(*on_pipe).in_wall_at_ramp();
            strain(calc, at_ramp).map(|strain| strain + bent)
        });
        at_most(Role::Percent, both, total)
    });
    [Ok(at_most(Role::Percent, along, pulled)), both]
}

/// The stress of the editions chosen, and whether one that was not chosen is tighter.
#[derive(Debug, Clone, Copy)]
struct Allowable {
    chosen: Cited<Pressure>,
    tighter: bool,
}

/// The least of the editions chosen, at the duration and temperature of the pull.
fn allowable_stress(calc: &mut Calc, pe: &PePipe, pull: &Pull) -> Doubted<Allowable> {
    let none = Cited::new(Pressure::default(), pe.wall.origin);
    let least = |calc: &mut Calc, chosen: bool| {
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
    let other = calc.doubted(|calc| least(calc, false)).in_spite_of_doubt();
    chosen.map(|chosen| Allowable { chosen, tighter: other.is_some_and(|other| other.value < chosen.value) })
}

fn at_duration_and_temperature(calc: &mut Calc, source: &StressSource, pe: &PePipe, pull: &Pull) -> Cited<Pressure> {
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

/// Whether a pipe colder than the table's 73 degF counts as stiffer.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Cold {
    Credited,
    NotCredited,
}

pub(super) fn modulus(calc: &mut Calc, points: &ModulusPoints, pull: &Pull, duration: Time, cold: Cold) -> Pressure {
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
