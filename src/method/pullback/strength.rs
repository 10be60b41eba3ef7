//! What the PE pipe bears: tension, tension with bending on the ramp, strain, collapse.

use super::force::PullOnPipe;
use super::section::{Bend, Borne, Ring, Section, has_ramp, on_ramp};
use crate::check::{Check, Subject};
use crate::drive::{ModulusPoints, PePipe, Pipe, Pull, StressSource};
use crate::law::{Calc, Doubted, Law, Recorder};
use crate::laws::pe::{
    AllowableTension, MinimumBendRadius, ModulusAtDuration, ModulusAtTemperature, PullStressAtTemperature,
    PullStressForDuration, TensileDesignStress,
};
use crate::laws::pull_limits::{BendStrain, PullStrain, TensionBesideBend};
use crate::method::scheme::Scheme;
use crate::quantity::{Band, Force, Measure, Pressure, Ratio, Role, Time};
use crate::source::{Cited, Origin};

const TIGHTER_EDITION: &str = "another edition that covers the pipe is tighter: leave stress_edition out to use it";

pub(super) fn checks<R: Recorder>(
    calc: &mut Calc<R>,
    pipe: &Pipe,
    pe: &PePipe,
    pull: &Pull,
    on_pipe: &Doubted<PullOnPipe>,
    scheme: &mut Scheme,
) -> Borne {
    let section = Section::scored(calc, pipe.outside_diameter.value, pe.wall.value, pull);
    let Section { outside_diameter, wall } = section;
    let peak = on_pipe.map(PullOnPipe::peak);

    calc.part("allowable tension");
    let stress = allowable_stress(calc, pe, pull);
    let tension = calc.doubted(|calc| {
        let weld_factor = pe.weld_factor.value;
        let chosen = stress.value.chosen;
        chosen.map(|stress| calc.law(AllowableTension { stress, outside_diameter, wall, weld_factor }))
    });
    let tension = Doubted { value: tension.value, doubt: stress.doubt.or(tension.doubt) };
    // A looser edition was asked for: said, and never a plain pass.
    let edition = |check: Check| if stress.value.tighter { check.as_caution(TIGHTER_EDITION) } else { check };
    scheme.checks.add(edition(Check::at_most(Subject::Tension, Role::Pull, peak, tension)));

    let weld = pe.weld_factor.value;
    let limit = stress.map(|stress| stress.chosen.map(|stress| weld * stress));
    let stiff = calc.doubted(|calc| modulus(calc, &pe.stiff, pull, pull.duration, Cold::Credited));
    let bend = has_ramp(pull).then(|| {
        calc.part("tension and bending on the ramp");
        let bend = calc.doubted(|calc| {
            let smallest = calc.law(MinimumBendRadius {
                outside_diameter,
                ratio: pull.bend_ratio.value,
                temperature: pull.temperature,
                cold_factor: pull.bend_cold,
            });
            Bend::of(calc, section, smallest, stiff.value, pull, limit.value.value)
        });
        Doubted { value: bend.value, doubt: bend.doubt.or(stiff.doubt) }
    });
    let ramp = on_ramp(calc, section, on_pipe, bend);
    if let Some(bend) = bend {
        scheme.checks.add(edition(Check::at_most(Subject::TensionAndBending, Role::Strength, ramp, limit)));
        scheme.checks.add(Bend::check(bend, pull, Cited::new(bend.value.smallest, pull.bend_ratio.origin)));
    }
    strains(calc, section, pe, pull, on_pipe, bend, scheme);

    // The fluid stands on the pipe longer than the pull lasts, and cools it: cold stiffness is not credited.
    let soft = calc.doubted(|calc| modulus(calc, &pe.soft, pull, pull.load_duration, Cold::NotCredited));
    let radius = bend.map(|bend| bend.value.radius);
    let ring = Ring {
        section,
        modulus: soft.map(Band::same),
        poisson: pull.poisson,
        ovality: pe.ovality,
        radius,
        allowable: limit.map(|limit| limit.value),
    };
    if let Some(check) = ring.collapse(calc, pull, on_pipe, ramp) {
        scheme.checks.add(check);
    }
    let beside_bend = match radius {
        Some(radius) => calc.doubted(|calc| {
            let (allowable, modulus) = (limit.value.value, stiff.value);
            calc.law(TensionBesideBend { allowable, modulus, outside_diameter, wall, radius })
        }),
        None => tension.map(|tension| tension.value),
    };
    Borne { straight: tension, beside_bend, radius }
}

/// Strain of the pull, and of pull and bend on the ramp.
fn strains<R: Recorder>(
    calc: &mut Calc<R>,
    section: Section,
    pe: &PePipe,
    pull: &Pull,
    on_pipe: &Doubted<PullOnPipe>,
    bend: Option<Doubted<Bend>>,
    scheme: &mut Scheme,
) {
    calc.part("strain");
    let soft = calc.doubted(|calc| modulus(calc, &pe.times.pull, pull, pull.duration, Cold::NotCredited));
    let strain = |calc: &mut Calc<R>, tension: Band<Force>| {
        tension.map(|tension| {
            let stress = section.axial(calc, tension);
            calc.law(PullStrain { stress, modulus: soft.value })
        })
    };
    let (pulled, total) = pull.works.strain;
    let along = calc.doubted(|calc| strain(calc, on_pipe.value.peak()));
    let along = Doubted { value: along.value, doubt: along.doubt.or(soft.doubt).or(on_pipe.doubt) };
    let limit = Doubted::sure(pulled);
    scheme.checks.add(Check::at_most(Subject::Strain, Role::Percent, along, limit));
    if let Some(bend) = bend {
        let both = calc.doubted(|calc| {
            let (outside_diameter, radius) = (section.outside_diameter, bend.value.radius);
            let bent = calc.law(BendStrain { outside_diameter, radius });
            strain(calc, on_pipe.value.at_ramp).map(|strain| strain + bent)
        });
        let doubt = both.doubt.or(soft.doubt).or(bend.doubt).or(on_pipe.doubt);
        let limit = Doubted::sure(total);
        let both = Doubted { value: both.value, doubt };
        scheme.checks.add(Check::at_most(Subject::StrainWithBend, Role::Percent, both, limit));
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

/// Whether a pipe colder than the table's 73 degF counts as stiffer.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Cold {
    Credited,
    NotCredited,
}

pub(super) fn modulus<R: Recorder>(
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
