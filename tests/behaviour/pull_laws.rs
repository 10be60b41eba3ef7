//! Each law of the pull once, inside its range: its arguments have the dimension of their roles and stand in its form,
//! and its value is finite.

use jackpull::law::Law;
use jackpull::quantity::Measure;
use std::collections::BTreeMap;

fn si<Q: Measure>(value: f64) -> Q {
    Q::from_si(value)
}

/// `inputs` checks each role against its dimension; what is left is said here.
fn assert_sound<L: Law>(law: L) {
    let equation = L::EQUATION;
    assert!(law.in_range(), "{} is out of range", equation.name);
    assert!(law.value().si().is_finite(), "{} gives {}", equation.name, law.value().si());
    assert_eq!(L::OUT.dim(), <L::Out as Measure>::DIM, "role of the value of {}", equation.name);
    let mut names = BTreeMap::new();
    law.inputs(&mut |name, _| *names.entry(name).or_insert(0) += 1);
    assert!(names.values().all(|times| *times == 1), "{}: an argument twice", equation.name);
    for name in names.into_keys() {
        let stands = equation.form.split(|c: char| !(c.is_alphanumeric() || c == '_')).any(|word| word == name);
        assert!(stands, "{}: {name} is not in the form {}", equation.name, equation.form);
    }
}

macro_rules! laws {
    ($($test:ident: $topic:ident { $($law:ident { $($field:ident: $value:expr),+ $(,)? })+ })+) => {
        $(
            #[test]
            fn $test() {
                $(
                    assert_sound(jackpull::laws::$topic::$law { $($field: si($value)),+ });
                )+
            }
        )+
    };
}

laws! {
    pull_rules_laws: pull_rules {
        GroundLoadPull { unit_weight: 18e3, cover: 3.0, outside_diameter: 0.4, collapsed_length: 90.0, friction: 0.9 }
        LesserBore { outside_diameter: 0.4, times: 1.5, plus: 0.4 }
    }
    pull_limits_laws: pull_limits {
        PvcPullStress { tensile: 9e6, safety: 2.5, temperature_factor: 0.9, joint_factor: 0.9 }
        FactorAtTemperature { temperature: 300.0, below: 295.0, factor_below: 0.9, above: 310.0, factor_above: 0.9 }
        TensionBesideBend { allowable: 9e6, modulus: 400e6, outside_diameter: 0.4, wall: 0.02, radius: 90.0 }
        BendStrain { outside_diameter: 0.4, radius: 90.0 }
        PullStrain { stress: 9e6, modulus: 400e6 }
        JointThrustRating { rated_pressure: 60e3, outside_diameter: 0.4, deflection_factor: 0.9 }
        WeakLinkSetting { pipe: 50e3, pull_head: 50e3, joint: 50e3 }
    }
    steering_laws: steering {
        CurveRadius { pipe_length: 90.0, angle: 0.2 }
    }
    pull_steel_laws: pull_steel {
        SteelBendingStrength {
            yield_strength: 350e6, modulus: 200e9, outside_diameter: 0.4, wall: 0.02, low_share: 0.9,
            middle_constant: 0.9, middle_slope: 0.9, high_constant: 0.9, high_slope: 0.9, low_end: 9e6,
            middle_end: 9e6, last_ratio: 300.0,
        }
        HoopStress { pressure: 60e3, outside_diameter: 0.4, wall: 0.02 }
        SteelElasticHoop { coefficient: 0.9, modulus: 200e9, outside_diameter: 0.4, wall: 0.02 }
        SteelCriticalHoop {
            elastic: 9e6, yield_strength: 9e6, elastic_end: 0.9, linear_constant: 0.9, linear_slope: 0.9,
            linear_end: 0.9, third_numerator: 0.9, third_constant: 0.9, third_end: 0.9,
        }
        SteelTensionBending { axial: 9e6, bending: 9e6, yield_strength: 9e6, tension_share: 0.9, bending_strength: 9e6 }
        SteelTensionBendingHoop {
            axial: 9e6, bending: 9e6, hoop: 9e6, yield_strength: 9e6, critical_hoop: 9e6, axial_factor: 0.9,
            hoop_factor: 0.9, hoop_share: 0.9, poisson: 0.9,
        }
    }
    ramp_laws: ramp {
        RampLength { depth: 6.0, radius: 90.0, angle: 0.2 }
        ShortestRamp { depth: 3.0, radius: 90.0 }
        RampDepth { length: 90.0, radius: 90.0 }
    }
    outside_pressure_laws: outside_pressure {
        NetOutsidePressure { density: 1500.0, height: 3.0, added: 60e3, inside: 60e3 }
        SupportedCollapse {
            enhancement: 1.5, modulus: 200e6, poisson: 0.45, dimension_ratio: 17.0, ovality_factor: 0.9,
        }
        BucklingInSoil {
            safety: 2.5, water_factor: 0.9, elastic_support: 0.9, soil_modulus: 9e6, modulus: 200e6,
            outside_diameter: 0.4, wall: 0.02,
        }
        WaterBuoyancyFactor { water_height: 2.0, cover: 3.0 }
        ElasticSupportByDepth { cover: 3.0 }
    }
    deflection_laws: deflection {
        IowaDeflection {
            lag: 0.9, bedding: 0.9, pressure: 60e3, modulus: 200e6, outside_diameter: 0.4, wall: 0.02,
            soil_modulus: 9e6,
        }
        BuoyantDeflection { unit_weight: 18e3, outside_diameter: 0.4, wall: 0.02, modulus: 200e6 }
        ScoredWall { wall: 0.02, depth_share: 0.1 }
    }
    reaming_laws: reaming {
        SpoilVolume { bore: 0.4, pilot: 0.1, length: 90.0, swell_factor: 1.2 }
        ReamingFluid { bore: 0.4, pilot: 0.1, length: 90.0, fluid_ratio: 0.9 }
        AnnulusVolume { bore: 0.6, outside_diameter: 0.4, length: 90.0, waste: 1.1 }
        ReturnVelocity { flow: 0.01, pull_rate: 0.02, bore: 0.6, outside_diameter: 0.4 }
        AnnularFlowLoss {
            plastic_viscosity: 0.02, velocity: 0.3, yield_point: 20e3, bore: 0.6, outside_diameter: 0.4, length:
            90.0,
        }
    }
    fracture_laws: fracture {
        CavityPressure {
            effective_stress: 60e3, pore_pressure: 60e3, friction_angle: 0.2, cohesion: 20e3, shear_modulus:
            5e6, bore_radius: 0.05, plastic_radius: 3.0,
        }
        StrainLimitedRadius {
            bore_radius: 0.05, strain: 0.02, effective_stress: 60e3, friction_angle: 0.2, cohesion: 20e3,
            shear_modulus: 5e6,
        }
        FluidPressureLimit { cavity: 60e3, safety: 1.5, cap: 1.0, total_stress: 60e3 }
    }
    after_pull_laws: after_pull {
        PullStretch {
            head_tension: 50e3, tail_tension: 50e3, length: 90.0, modulus: 400e6, outside_diameter: 0.4, wall:
            0.02,
        }
        DelayedStrain { stress: 9e6, modulus_whole: 300e6, modulus_rest: 350e6 }
        ThermalShortening { expansion: 1.8e-4, length: 90.0, warm: 300.0, ground: 285.0 }
        RestrainedCoolingStress { modulus: 200e6, expansion: 1.8e-4, warm: 300.0, ground: 285.0 }
        ExcessLength { stretch: 0.05, cooling: 0.05, margin: 1.5 }
        InvertAtRest { spacer: 0.05, wall: 0.02 }
        InvertAfloat { bore: 0.6, spacer: 0.05, outside_diameter: 0.4, wall: 0.02 }
    }
}

/// Water at 0.5 m/s in a gap of 50 mm is turbulent (Re 25,000) and is not to be trusted; stiff fluid is laminar.
#[test]
fn thin_fluid_is_not_taken_for_laminar() {
    let flow = |viscosity: f64, yield_point: f64| {
        let law = jackpull::laws::reaming::AnnularFlowLoss {
            plastic_viscosity: Measure::from_si(viscosity),
            velocity: Measure::from_si(0.5),
            yield_point: Measure::from_si(yield_point),
            bore: Measure::from_si(0.45),
            outside_diameter: Measure::from_si(0.40),
            length: Measure::from_si(60.0),
        };
        law.in_range()
    };
    assert!(!flow(1e-3, 0.0));
    assert!(flow(0.02, 10.0));
}
