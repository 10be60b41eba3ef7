//! Enlarging the pilot bore: spoil, fluid, annulus, and the flow of the returns. No formula of reaming torque
//! is agreed on, and none is here.

use crate::law::law;
use crate::quantity::{DynamicViscosity, Length, Pressure, Ratio, Velocity, Volume, VolumeRate};
use crate::source::{Equation, Mark};
use core::f64::consts::FRAC_PI_4;

law! {
    /// Volume of loose spoil of an enlarged bore: `V = b (pi/4) (D_b² - d²) L`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D_b, d | `bore`, `pilot` (0 for a pilot that displaced nothing) | length |
    /// | L | `length` | length |
    /// | b | `swell_factor`, loose over undisturbed volume | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION); swell is table `soil_swell`, as a share over 1. **Valid
    /// for** factors of at least 1. With slurry the spoil leaves as a fluid: then the fluid volume counts beside.
    SpoilVolume {
        /// Final bore.
        bore: Length as Diameter,
        /// Pilot bore.
        pilot: Length as Diameter,
        /// Length.
        length: Length as Distance,
        /// Loose over undisturbed volume.
        swell_factor: Ratio as Ratio,
    } -> Volume as Volume
    { Equation {
        name: "spoil of an enlarged bore",
        form: "V = swell_factor (pi/4) (bore^2 - pilot^2) length",
        source: "jackpull",
        locator: "volume of a ring, and loose over undisturbed volume",
        mark: Mark::Judgement,
        valid: "bore at least the pilot, swell factor at least 1, length not negative",
    } }
    valid |v| v.pilot.value >= 0.0 && v.bore >= v.pilot && v.length.value >= 0.0 && v.swell_factor.value >= 1.0;
    value |s| s.swell_factor * (FRAC_PI_4 * (s.bore * s.bore - s.pilot * s.pilot)) * s.length;
}

law! {
    /// Volume of fluid pumped to carry the soil out: `V = k (pi/4) (D_b² - d²) L`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D_b, d | `bore`, `pilot` | length |
    /// | L | `length` | length |
    /// | k | `fluid_ratio`, fluid over soil | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION), which has D²/24.5 gal/ft for the hole (exactly 24.51).
    /// **Valid for** non-negative ratios. The ratios are rows of table `fluid_demand`, a trade article.
    ReamingFluid {
        /// Final bore.
        bore: Length as Diameter,
        /// Pilot bore.
        pilot: Length as Diameter,
        /// Length.
        length: Length as Distance,
        /// Fluid over soil.
        fluid_ratio: Ratio as Ratio,
    } -> Volume as FluidVolume
    { Equation {
        name: "fluid pumped in reaming",
        form: "V = fluid_ratio (pi/4) (bore^2 - pilot^2) length",
        source: "national_driller_bore_planning",
        locator: "hole volume D^2/24.5 gal/ft times the ratio of fluid to soil; the pilot taken off is ours",
        mark: Mark::Published,
        valid: "bore at least the pilot, ratio and length not negative",
    } }
    valid |v| v.pilot.value >= 0.0 && v.bore >= v.pilot && v.length.value >= 0.0 && v.fluid_ratio.value >= 0.0;
    value |s| s.fluid_ratio * (FRAC_PI_4 * (s.bore * s.bore - s.pilot * s.pilot)) * s.length;
}

law! {
    /// Volume that fills the annulus: `V = k (pi/4) (D_b² - D²) L`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D_b | `bore` | length |
    /// | D | `outside_diameter` | length |
    /// | L | `length` | length |
    /// | k | `waste`: 1 for the space itself, more for grout lost to ground and overbreak | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** k of at least 1.
    AnnulusVolume {
        /// Bore.
        bore: Length as Diameter,
        /// Outside diameter of the pipe.
        outside_diameter: Length as Diameter,
        /// Length.
        length: Length as Distance,
        /// Volume put in over the volume of the space.
        waste: Ratio as Ratio,
    } -> Volume as Volume
    { Equation {
        name: "annulus volume",
        form: "V = waste (pi/4) (bore^2 - outside_diameter^2) length",
        source: "jackpull",
        locator: "volume of a ring",
        mark: Mark::Judgement,
        valid: "bore at least the pipe, waste at least 1, length not negative",
    } }
    valid |v| v.outside_diameter.value >= 0.0
        && v.bore >= v.outside_diameter
        && v.length.value >= 0.0
        && v.waste.value >= 1.0;
    value |s| {
        s.waste * (FRAC_PI_4 * (s.bore * s.bore - s.outside_diameter * s.outside_diameter)) * s.length
    };
}

law! {
    /// Mean velocity of the returns beside the pipe: what is pumped and what the advancing pipe displaces,
    /// `v = (Q + v_p (pi/4) D²) / ((pi/4) (D_b² - D²))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | Q | `flow` pumped | volume per time |
    /// | v_p | `pull_rate` | speed |
    /// | D_b, D | `bore`, `outside_diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a bore wider than the pipe. All returns
    /// are taken to leave past the pipe, the adverse case.
    ReturnVelocity {
        /// Flow pumped.
        flow: VolumeRate as Flow,
        /// Rate of pull.
        pull_rate: Velocity as Rate,
        /// Bore.
        bore: Length as Diameter,
        /// Outside diameter of the pipe.
        outside_diameter: Length as Diameter,
    } -> Velocity as Speed
    { Equation {
        name: "velocity of the returns",
        form: "v = (flow + pull_rate (pi/4) outside_diameter^2) / ((pi/4) (bore^2 - outside_diameter^2))",
        source: "jackpull",
        locator: "continuity of the flow in the annulus",
        mark: Mark::Judgement,
        valid: "bore wider than the pipe, flow and rate not negative",
    } }
    valid |v| v.outside_diameter.value >= 0.0
        && v.bore > v.outside_diameter
        && v.flow.value >= 0.0
        && v.pull_rate.value >= 0.0;
    value |s| {
        let pipe = FRAC_PI_4 * (s.outside_diameter * s.outside_diameter);
        (s.flow + s.pull_rate * pipe) / (FRAC_PI_4 * (s.bore * s.bore) - pipe)
    };
}

law! {
    /// Pressure lost by a Bingham fluid in laminar flow along the annulus: `dp = (48 mu v / g² + 6 tau / g) L`,
    /// g = D_b - D.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | mu | `plastic_viscosity` | viscosity |
    /// | v | `velocity` | speed |
    /// | tau | `yield_point` | pressure |
    /// | D_b, D | `bore`, `outside_diameter` | length |
    /// | L | `length` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION): in centipoise, ft/s, lbf/100 ft², inches, psi and feet
    /// the divisors are 1000 and 200, which are 47.9 and 6.0 here; the narrow slot behind them has 48 and 6. **Valid
    /// for** laminar flow and a pipe in the middle; one that lies on the wall loses less. Cuttings make the fluid
    /// thicker than the clean one.
    AnnularFlowLoss {
        /// Plastic viscosity of the loaded fluid.
        plastic_viscosity: DynamicViscosity as Viscosity,
        /// Mean velocity.
        velocity: Velocity as Speed,
        /// Yield point of the loaded fluid.
        yield_point: Pressure as UnitFriction,
        /// Bore.
        bore: Length as Diameter,
        /// Outside diameter of the pipe.
        outside_diameter: Length as Diameter,
        /// Length of the annulus.
        length: Length as Distance,
    } -> Pressure as Pressure
    { Equation {
        name: "flow loss in the annulus",
        form: "dp = (48 plastic_viscosity velocity / (bore - outside_diameter)^2 \
               + 6 yield_point / (bore - outside_diameter)) length",
        source: "guo_liu_2011",
        locator: "eq. 2.59, p. 40",
        mark: Mark::Published,
        valid: "laminar flow (Reynolds number up to 2,100 in fluid of 1.5), bore wider than the pipe, no argument negative",
    } }
    valid |v| v.bore > v.outside_diameter
        && v.plastic_viscosity.value >= 0.0
        && v.velocity.value >= 0.0
        && v.yield_point.value >= 0.0
        && v.length.value >= 0.0
        && is_laminar(v);
    value |s| {
        let gap = s.bore - s.outside_diameter;
        (48.0 * s.plastic_viscosity * s.velocity / (gap * gap) + 6.0 * s.yield_point / gap) * s.length
    };
}

/// Density of the heaviest bore fluid that is reckoned with, kg/m³ (table practice_ratio, pull.fluid_heavy).
const HEAVY: f64 = 1_500.0;
/// Reynolds number up to which flow in an annulus stays laminar (handbooks of drilling; recalled).
const LAMINAR: f64 = 2_100.0;

/// Whether the form holds: thin fluid in a wide annulus turns turbulent, and then loses several times more. The yield
/// point counts as viscosity at the shear rate of the gap (rule of thumb).
fn is_laminar(flow: &AnnularFlowLoss) -> bool {
    let (gap, velocity) = ((flow.bore - flow.outside_diameter).value, flow.velocity.value);
    let stiffness = flow.plastic_viscosity.value * velocity + flow.yield_point.value * gap / 8.0;
    // Re = density velocity gap / (viscosity + yield gap / (8 velocity)), cleared of the division by the velocity.
    HEAVY * velocity * velocity * gap <= LAMINAR * stiffness
}
