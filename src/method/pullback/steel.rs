//! What a welded steel pipe bears: tension, bending, outside pressure, and the three together in two conditions.

use super::force::{OnPipe, PullOnPipe, Pulling};
use super::pressed::{self, DRY, kept_full, outside_pressure, pressed_note};
use super::section::{self, Bend, Borne, Section, Strength, bent, has_ramp};
use crate::check::{Draft, at_most, only};
use crate::drive::{HoleState, SteelPipe};
use crate::law::{Calc, Doubted};
use crate::laws::pe::BendingStress;
use crate::laws::pull_steel::{
    HoopStress, SteelBendingStrength, SteelCriticalHoop, SteelElasticHoop, SteelTensionBending, SteelTensionBendingHoop,
};
use crate::quantity::{Band, Pressure, Ratio, Role};
use crate::source::{Cited, Origin};

const HABIT: &str = "tighter than trade practice; the stress decides";
const COUNTED: &str = "less the pressure that is held inside";
const EXTREME: &str = "with the factors of an extreme condition, a third more being allowed";
const NORMAL: &str = "with the factors of a normal condition, the safer; shown beside the other";

pub(super) fn of(calc: &mut Calc, at: Pulling<'_>, steel: &SteelPipe, on_pipe: &OnPipe) -> Strength {
    let Pulling { pipe, pull, .. } = at;
    let section = Section { outside_diameter: pipe.outside_diameter.value, wall: steel.wall.value };
    let Section { outside_diameter, wall } = section;
    let factors = &steel.factors;
    let fy = steel.yield_strength.value;
    let peak = on_pipe.map(PullOnPipe::in_wall);
    calc.part("allowable tension");
    let allowable = Doubted::sure(factors.tension.map(|share| share * fy));
    let tension = section::tension(calc, section, allowable, Ratio::from(1.0));

    calc.part("tension and bending on the ramp");
    let modulus = steel.modulus;
    let smallest = steel.bend_ratio.value * outside_diameter;
    let bend = has_ramp(pull).then(|| {
        let radius = pull.bend_radius.map_or(smallest, |given| given.value);
        calc.doubted(|calc| Bend {
            radius,
            smallest,
            stress: calc.law(BendingStress { modulus, outside_diameter, radius }),
        })
    });
    let bending_strength = calc.doubted(|calc| bending_strength(calc, section, steel));
    let with_bending = bent(bend, |bend| {
        let ratio = calc.doubted(|calc| {
            let (at_ramp, bending) = (calc.take(*on_pipe).in_wall_at_ramp(), calc.take(bend).stress);
            let bending_strength = calc.take(bending_strength);
            at_ramp.map(|tension| {
                let axial = section.axial(calc, tension);
                let tension_share = factors.tension.value;
                calc.law(SteelTensionBending { axial, bending, yield_strength: fy, tension_share, bending_strength })
            })
        });
        whole(ratio, factors.tension.origin)
    });
    let radius = bent(bend, |bend| {
        let check = Bend::check(bend, pull, steel.bend_ratio.origin).as_screen();
        let narrow = pull.bend_radius.is_some_and(|given| given.value < smallest);
        if narrow { check.with_note(HABIT) } else { check }
    });

    let inside = pressed::inside(calc, section, pull, allowable);
    calc.part("outside pressure");
    let pressed = calc.doubted(|calc| {
        let pressure = match pull.works.hole {
            HoleState::Fluid => {
                let on_pipe = calc.take(*on_pipe);
                outside_pressure(calc, pull, &on_pipe, (section, allowable))
            }
            HoleState::Dry => Band::default(),
        };
        pressure.map(|pressure| calc.law(HoopStress { pressure, outside_diameter, wall }))
    });
    let critical = calc.doubted(|calc| critical_hoop(calc, section, steel));
    let limit = critical.map(|critical| factors.hoop_safety.map(|safety| critical / safety));
    let collapse = only(pull.works.hole == HoleState::Fluid, DRY).map(|()| {
        let check = at_most(Role::Strength, pressed, limit);
        let told = pull.works.inside_pressure > Pressure::default();
        let check = if told { check.with_note(pressed_note(pull, COUNTED)) } else { check };
        kept_full(check, pull)
    });
    // Greatest pull, bend and outside pressure are taken to meet at one place.
    let together = |calc: &mut Calc, (axial_factor, hoop_factor): (Ratio, Ratio)| {
        calc.doubted(|calc| {
            let (peak, hoop) = (calc.take(peak), calc.take(pressed));
            let bending = bend.map_or(Pressure::default(), |bend| calc.take(bend).stress);
            let critical_hoop = calc.take(critical);
            peak.zip(hoop).map(|(tension, hoop)| {
                let axial = section.axial(calc, tension);
                calc.law(SteelTensionBendingHoop {
                    axial,
                    bending,
                    hoop,
                    yield_strength: fy,
                    critical_hoop,
                    axial_factor,
                    hoop_factor,
                    hoop_share: factors.hoop_share,
                    poisson: factors.poisson,
                })
            })
        })
    };
    let extreme = together(calc, (factors.axial.value, factors.hoop));
    let normal = together(calc, (factors.axial_normal.value, factors.hoop_normal));
    let borne = Borne::of(calc, section, pull, tension, (allowable, Doubted::sure(modulus)), bend);
    Strength {
        inside,
        with_bending,
        radius,
        collapse,
        together: Ok(whole(extreme, factors.axial.origin).with_note(EXTREME)),
        together_normal: Ok(whole(normal, factors.axial_normal.origin).with_note(NORMAL)),
        ..Strength::of(borne, at_most(Role::Pull, peak, tension))
    }
}

/// A ratio that may be 1 at most.
fn whole(ratio: Doubted<Band<Ratio>>, origin: Origin) -> Draft {
    at_most(Role::Ratio, ratio, Cited::new(Ratio::from(1.0), origin))
}

fn bending_strength(calc: &mut Calc, section: Section, steel: &SteelPipe) -> Pressure {
    let factors = &steel.factors;
    calc.law(SteelBendingStrength {
        yield_strength: steel.yield_strength.value,
        modulus: steel.modulus,
        outside_diameter: section.outside_diameter,
        wall: section.wall,
        low_share: factors.bending_low,
        middle_constant: factors.bending_middle,
        middle_slope: factors.bending_middle_slope,
        high_constant: factors.bending_high,
        high_slope: factors.bending_high_slope,
        low_end: steel.bending_ends.0,
        middle_end: steel.bending_ends.1,
        last_ratio: factors.last_ratio,
    })
}

fn critical_hoop(calc: &mut Calc, section: Section, steel: &SteelPipe) -> Pressure {
    let factors = &steel.factors;
    let elastic = calc.law(SteelElasticHoop {
        coefficient: factors.hoop_elastic,
        modulus: steel.modulus,
        outside_diameter: section.outside_diameter,
        wall: section.wall,
    });
    calc.law(SteelCriticalHoop {
        elastic,
        yield_strength: steel.yield_strength.value,
        elastic_end: factors.hoop_elastic_end,
        linear_constant: factors.hoop_linear,
        linear_slope: factors.hoop_linear_slope,
        linear_end: factors.hoop_linear_end,
        third_numerator: factors.hoop_third,
        third_constant: factors.hoop_third_constant,
        third_end: factors.hoop_third_end,
    })
}
