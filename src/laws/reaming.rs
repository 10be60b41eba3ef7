//! Enlarging the pilot bore: spoil, fluid, annulus, and the flow of the returns. No formula of reaming torque
//! is agreed on, and none is here.

use crate::law::laws;
use crate::quantity::{DynamicViscosity, Length, Pressure, Ratio, Velocity, Volume, VolumeRate};
use core::f64::consts::FRAC_PI_4;

/// Density of the heaviest bore fluid that is reckoned with, kg/m³ (table practice_ratio, pull.fluid_heavy).
const HEAVY: f64 = 1_500.0;
/// Reynolds number up to which flow in an annulus stays laminar (handbooks of drilling; recalled).
const LAMINAR: f64 = 2_100.0;

laws! {
    /// Volume of loose spoil of an enlarged bore: `V = b (pi/4) (D_b² - d²) L`.
    ///
    /// Swell is table `soil_swell`, as a share over 1. With slurry the spoil leaves as a fluid: then the fluid volume
    /// counts beside.
    SpoilVolume "spoil of an enlarged bore" {
        /// Final bore.
        bore "D_b": Length as Diameter,
        /// Pilot bore (0 for a pilot that displaced nothing).
        pilot "d": Length as Diameter [>= 0.0],
        /// Length.
        length "L": Length as Distance [>= 0.0],
        /// Loose over undisturbed volume.
        swell_factor "b": Ratio as Ratio [>= 1.0],
    } -> Volume as Volume;
    form "V = swell_factor (pi/4) (bore^2 - pilot^2) length";
    from Judgement "jackpull" "volume of a ring, and loose over undisturbed volume";
    valid "bore at least the pilot, swell factor at least 1, length not negative"
        if |v| v.bore >= v.pilot;
    value |s| s.swell_factor * (FRAC_PI_4 * (s.bore * s.bore - s.pilot * s.pilot)) * s.length;

    /// Volume of fluid pumped to carry the soil out: `V = k (pi/4) (D_b² - d²) L`.
    ///
    /// The source has D²/24.5 gal/ft for the hole (exactly 24.51). The ratios are rows of table `fluid_demand`, from a
    /// trade article.
    ReamingFluid "fluid pumped in reaming" {
        /// Final bore.
        bore "D_b": Length as Diameter,
        /// Pilot bore.
        pilot "d": Length as Diameter [>= 0.0],
        /// Length.
        length "L": Length as Distance [>= 0.0],
        /// Fluid over soil.
        fluid_ratio "k": Ratio as Ratio [>= 0.0],
    } -> Volume as FluidVolume;
    form "V = fluid_ratio (pi/4) (bore^2 - pilot^2) length";
    from Published "national_driller_bore_planning"
        "hole volume D^2/24.5 gal/ft times the ratio of fluid to soil; the pilot taken off is ours";
    valid "bore at least the pilot, ratio and length not negative"
        if |v| v.bore >= v.pilot;
    value |s| s.fluid_ratio * (FRAC_PI_4 * (s.bore * s.bore - s.pilot * s.pilot)) * s.length;

    /// Volume that fills the annulus: `V = k (pi/4) (D_b² - D²) L`.
    AnnulusVolume "annulus volume" {
        /// Bore.
        bore "D_b": Length as Diameter,
        /// Outside diameter of the pipe.
        outside_diameter "D": Length as Diameter [>= 0.0],
        /// Length.
        length "L": Length as Distance [>= 0.0],
        /// Volume put in over the volume of the space (1 for the space itself, more for grout lost to ground and
        /// overbreak).
        waste "k": Ratio as Ratio [>= 1.0],
    } -> Volume as Volume;
    form "V = waste (pi/4) (bore^2 - outside_diameter^2) length";
    from Judgement "jackpull" "volume of a ring";
    valid "bore at least the pipe, waste at least 1, length not negative"
        if |v| v.bore >= v.outside_diameter;
    value |s| {
        s.waste * (FRAC_PI_4 * (s.bore * s.bore - s.outside_diameter * s.outside_diameter)) * s.length
    };

    /// Mean velocity of the returns beside the pipe: what is pumped and what the advancing pipe displaces,
    /// `v = (Q + v_p (pi/4) D²) / ((pi/4) (D_b² - D²))`.
    ///
    /// All returns are taken to leave past the pipe, the adverse case.
    ReturnVelocity "velocity of the returns" {
        /// Flow pumped.
        flow "Q": VolumeRate as Flow [>= 0.0],
        /// Rate of pull.
        pull_rate "v_p": Velocity as Rate [>= 0.0],
        /// Bore.
        bore "D_b": Length as Diameter,
        /// Outside diameter of the pipe.
        outside_diameter "D": Length as Diameter [>= 0.0],
    } -> Velocity as Speed;
    form "v = (flow + pull_rate (pi/4) outside_diameter^2) / ((pi/4) (bore^2 - outside_diameter^2))";
    from Judgement "jackpull" "continuity of the flow in the annulus";
    valid "bore wider than the pipe, flow and rate not negative"
        if |v| v.bore > v.outside_diameter;
    value |s| {
        let pipe = FRAC_PI_4 * (s.outside_diameter * s.outside_diameter);
        (s.flow + s.pull_rate * pipe) / (FRAC_PI_4 * (s.bore * s.bore) - pipe)
    };

    /// Pressure that starts a fluid with a yield point along the annulus, as a slot: `dp = 4 tau L / (D_b - D)`.
    ///
    /// What it loses at the least, however slowly it goes.
    AnnularYieldLoss "loss of a yield point in the annulus" {
        /// Yield point of the loaded fluid.
        yield_point "tau": Pressure as UnitFriction [>= 0.0],
        /// Bore.
        bore "D_b": Length as Diameter,
        /// Outside diameter of the pipe.
        outside_diameter "D": Length as Diameter,
        /// Length of the annulus.
        length "L": Length as Distance [>= 0.0],
    } -> Pressure as Pressure;
    form "dp = 4 yield_point length / (bore - outside_diameter)";
    from Judgement "jackpull" "statics of a plug between the two walls of a slot half as wide as the difference";
    valid "bore wider than the pipe, no argument negative"
        if |v| v.bore > v.outside_diameter;
    value |s| 4.0 * s.yield_point * (s.length / (s.bore - s.outside_diameter));

    /// Pressure lost by a Bingham fluid in laminar flow along the annulus: `dp = (48 mu v / g² + 6 tau / g) L`,
    /// g = D_b - D.
    ///
    /// In centipoise, ft/s, lbf/100 ft², inches, psi and feet the divisors are 1000 and 200, which are 47.9 and 6.0
    /// here; the narrow slot behind them has 48 and 6. For a pipe in the middle; one that lies on the wall loses less.
    /// Cuttings make the fluid thicker than the clean one.
    AnnularFlowLoss "flow loss in the annulus" {
        /// Plastic viscosity of the loaded fluid.
        plastic_viscosity "mu": DynamicViscosity as Viscosity [>= 0.0],
        /// Mean velocity.
        velocity "v": Velocity as Speed [>= 0.0],
        /// Yield point of the loaded fluid.
        yield_point "tau": Pressure as UnitFriction [>= 0.0],
        /// Bore.
        bore "D_b": Length as Diameter,
        /// Outside diameter of the pipe.
        outside_diameter "D": Length as Diameter,
        /// Length of the annulus.
        length "L": Length as Distance [>= 0.0],
    } -> Pressure as Pressure;
    form "dp = (48 plastic_viscosity velocity / (bore - outside_diameter)^2 \
          + 6 yield_point / (bore - outside_diameter)) length";
    from Published "guo_liu_2011" "eq. 2.59, p. 40";
    valid "laminar flow (Reynolds number up to 2,100 in fluid of 1.5), bore wider than the pipe, no argument negative"
        if |v| v.bore > v.outside_diameter && is_laminar(v);
    value |s| {
        let gap = s.bore - s.outside_diameter;
        (48.0 * s.plastic_viscosity * s.velocity / (gap * gap) + 6.0 * s.yield_point / gap) * s.length
    };
}

/// Whether the form holds: thin fluid in a wide annulus turns turbulent, and then loses several times more. The yield
/// point counts as viscosity at the shear rate of the gap (rule of thumb).
fn is_laminar(flow: &AnnularFlowLoss) -> bool {
    let (gap, velocity) = ((flow.bore - flow.outside_diameter).value, flow.velocity.value);
    let stiffness = flow.plastic_viscosity.value * velocity + flow.yield_point.value * gap / 8.0;
    // Re = density velocity gap / (viscosity + yield gap / (8 velocity)), cleared of the division by the velocity.
    HEAVY * velocity * velocity * gap <= LAMINAR * stiffness
}
