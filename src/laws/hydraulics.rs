//! Uniform flow in a gravity pipe: Manning, self-cleaning, and the slopes that they ask for.

use crate::law::law;
use crate::quantity::{Area, Length, Measure, Pressure, Ratio, UnitWeight, Velocity, VolumeRate};
use crate::source::{Equation, Mark};

law! {
    /// Velocity of uniform flow (Manning): `v = R^(2/3) S^(1/2) / n`.
    ///
    /// n is tied to metres and seconds and written without a unit: R enters in m and v leaves in m/s.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | R | `hydraulic_radius` | length |
    /// | S | `slope` | ratio |
    /// | n | `roughness` | ratio (s/m^(1/3)) |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** rough turbulent flow, n the same at every
    /// depth. A high n is the safe one for self-cleaning and capacity, a low one for the largest velocity.
    ///
    /// ```
    /// // 8 in full at 0.40 %, n 0.013: 2.19 ft/s.
    /// use jackpull::law::Law;
    /// use jackpull::laws::hydraulics::ManningVelocity;
    /// use jackpull::quantity::{FromText, Length, Ratio, Velocity};
    /// let velocity = ManningVelocity {
    ///     hydraulic_radius: Length::from_text("2 in")?,
    ///     slope: Ratio::from_text("0.40 %")?,
    ///     roughness: Ratio::from_text("0.013")?,
    /// };
    /// assert!((velocity.value() - Velocity::from_text("2.19 ft/s")?).abs() < Velocity::from_text("0.005 ft/s")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    ManningVelocity {
        /// Hydraulic radius.
        hydraulic_radius: Length as Diameter,
        /// Slope of the pipe.
        slope: Ratio as Slope,
        /// Manning roughness.
        roughness: Ratio as Ratio,
    } -> Velocity as FlowSpeed
    { Equation {
        name: "velocity of uniform flow, Manning",
        form: "v = hydraulic_radius^(2/3) slope^(1/2) / roughness, in m and s",
        source: "scilab_companion_2159",
        locator: "chapter 7, problem 7.10",
        mark: Mark::Published,
        valid: "roughness positive, radius and slope not negative",
    } }
    valid |v| v.roughness.value > 0.0 && v.hydraulic_radius.value >= 0.0 && v.slope.value >= 0.0;
    value |s| Velocity::from_si(s.hydraulic_radius.value.powf(2.0 / 3.0) * s.slope.value.sqrt() / s.roughness.value);
}

law! {
    /// Slope that gives a velocity, Manning's equation solved for it: `S = (n v / R^(2/3))²`, in m and s.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | v | `velocity` | velocity |
    /// | R | `hydraulic_radius` (a quarter of the diameter full) | length |
    /// | n | `roughness` | ratio (s/m^(1/3)) |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a positive radius.
    SlopeForVelocity {
        /// Velocity to reach.
        velocity: Velocity as FlowSpeed,
        /// Hydraulic radius.
        hydraulic_radius: Length as Diameter,
        /// Manning roughness.
        roughness: Ratio as Ratio,
    } -> Ratio as Slope
    { Equation {
        name: "slope for a velocity, Manning",
        form: "S = (roughness velocity / hydraulic_radius^(2/3))^2, in m and s",
        source: "scilab_companion_2159",
        locator: "chapter 7, problem 7.9, which solves for the slope",
        mark: Mark::Published,
        valid: "radius and roughness positive, velocity not negative",
    } }
    valid |v| v.hydraulic_radius.value > 0.0 && v.roughness.value > 0.0 && v.velocity.value >= 0.0;
    value |s| {
        let root = s.roughness.value * s.velocity.value / s.hydraulic_radius.value.powf(2.0 / 3.0);
        Ratio::from_si(root * root)
    };
}

law! {
    /// Flow: `Q = A v`.
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** arguments not negative.
    Flow {
        /// Area of flow.
        area: Area as Area,
        /// Mean velocity.
        velocity: Velocity as FlowSpeed,
    } -> VolumeRate as Flow
    { Equation {
        name: "flow",
        form: "Q = area velocity",
        source: "scilab_companion_2159",
        locator: "chapter 7, problem 7.10",
        mark: Mark::Published,
        valid: "area and velocity not negative",
    } }
    valid |v| v.area.value >= 0.0 && v.velocity.value >= 0.0;
    value |s| s.area * s.velocity;
}

law! {
    /// Inside diameter of a pipe that carries a flow at a depth, Manning's equation solved for it:
    /// `D = (4^(5/3) n Q / (pi f S^(1/2)))^(3/8)`, in m and s.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | Q | `flow` | volume/time |
    /// | f | `flow_ratio` (flow at the depth over that of the full pipe) | ratio |
    /// | S | `slope` | ratio |
    /// | n | `roughness` | ratio (s/m^(1/3)) |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** positive arguments.
    DiameterForFlow {
        /// Flow to carry.
        flow: VolumeRate as Flow,
        /// Flow at the depth over that of the full pipe.
        flow_ratio: Ratio as Ratio,
        /// Slope of the pipe.
        slope: Ratio as Slope,
        /// Manning roughness.
        roughness: Ratio as Ratio,
    } -> Length as Diameter
    { Equation {
        name: "inside diameter for a flow, Manning",
        form: "D = (4^(5/3) roughness flow / (pi flow_ratio slope^(1/2)))^(3/8), in m and s",
        source: "scilab_companion_2159",
        locator: "chapter 7, problem 7.10, solved for the diameter",
        mark: Mark::Published,
        valid: "all arguments positive",
    } }
    valid |v| v.flow.value > 0.0 && v.flow_ratio.value > 0.0 && v.slope.value > 0.0 && v.roughness.value > 0.0;
    value |s| {
        let full = s.roughness.value * s.flow.value / (s.flow_ratio.value * s.slope.value.sqrt());
        Length::from_si((4.0_f64.powf(5.0 / 3.0) * full / core::f64::consts::PI).powf(3.0 / 8.0))
    };
}

law! {
    /// Stress of the flow on the wall: `tau = gamma R S`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | gamma | `water_weight` | force per volume |
    /// | R | `hydraulic_radius` (at the least flow that counts) | length |
    /// | S | `slope` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** arguments not negative.
    TractiveStress {
        /// Unit weight of water.
        water_weight: UnitWeight as UnitWeight,
        /// Hydraulic radius.
        hydraulic_radius: Length as Diameter,
        /// Slope of the pipe.
        slope: Ratio as Slope,
    } -> Pressure as Tractive
    { Equation {
        name: "tractive stress",
        form: "tau = water_weight hydraulic_radius slope",
        source: "merritt_2007",
        locator: "abstract",
        mark: Mark::Published,
        valid: "arguments not negative",
    } }
    valid |v| v.water_weight.value >= 0.0 && v.hydraulic_radius.value >= 0.0 && v.slope.value >= 0.0;
    value |s| s.water_weight * s.hydraulic_radius * s.slope;
}
