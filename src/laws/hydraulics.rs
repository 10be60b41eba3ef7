//! Uniform flow in a gravity pipe: Manning, self-cleaning, and the slopes that they ask for.

use crate::law::laws;
use crate::quantity::{Area, Length, Measure, Pressure, Ratio, UnitWeight, Velocity, VolumeRate};

laws! {
    /// Velocity of uniform flow (Manning): `v = R^(2/3) S^(1/2) / n`.
    ///
    /// n is tied to metres and seconds and written without a unit: R enters in m and v leaves in m/s.
    ///
    /// For rough turbulent flow, n the same at every depth. A high n is the safe one for self-cleaning and capacity, a
    /// low one for the largest velocity.
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
    ManningVelocity "velocity of uniform flow, Manning" {
        /// Hydraulic radius.
        hydraulic_radius "R": Length as Diameter [>= 0.0],
        /// Slope of the pipe.
        slope "S": Ratio as Slope [>= 0.0],
        /// Manning roughness.
        roughness "n": Ratio as Ratio [> 0.0],
    } -> Velocity as FlowSpeed;
    form "v = hydraulic_radius^(2/3) slope^(1/2) / roughness, in m and s";
    from Published "scilab_companion_2159" "chapter 7, problem 7.10";
    valid "roughness positive, radius and slope not negative";
    value |s| Velocity::from_si(s.hydraulic_radius.value.powf(2.0 / 3.0) * s.slope.value.sqrt() / s.roughness.value);

    /// Slope that gives a velocity, Manning's equation solved for it: `S = (n v / R^(2/3))²`, in m and s.
    SlopeForVelocity "slope for a velocity, Manning" {
        /// Velocity to reach.
        velocity "v": Velocity as FlowSpeed [>= 0.0],
        /// Hydraulic radius (a quarter of the diameter full).
        hydraulic_radius "R": Length as Diameter [> 0.0],
        /// Manning roughness.
        roughness "n": Ratio as Ratio [> 0.0],
    } -> Ratio as Slope;
    form "S = (roughness velocity / hydraulic_radius^(2/3))^2, in m and s";
    from Published "scilab_companion_2159" "chapter 7, problem 7.9, which solves for the slope";
    valid "radius and roughness positive, velocity not negative";
    value |s| {
        let root = s.roughness.value * s.velocity.value / s.hydraulic_radius.value.powf(2.0 / 3.0);
        Ratio::from_si(root * root)
    };

    /// Flow: `Q = A v`.
    Flow "flow" {
        /// Area of flow.
        area "A": Area as Area [>= 0.0],
        /// Mean velocity.
        velocity "v": Velocity as FlowSpeed [>= 0.0],
    } -> VolumeRate as Flow;
    form "Q = area velocity";
    from Published "scilab_companion_2159" "chapter 7, problem 7.10";
    valid "area and velocity not negative";
    value |s| s.area * s.velocity;

    /// Inside diameter of a pipe that carries a flow at a depth, Manning's equation solved for it:
    /// `D = (4^(5/3) n Q / (pi f S^(1/2)))^(3/8)`, in m and s.
    DiameterForFlow "inside diameter for a flow, Manning" {
        /// Flow to carry.
        flow "Q": VolumeRate as Flow [> 0.0],
        /// Flow at the depth over that of the full pipe.
        flow_ratio "f": Ratio as Ratio [> 0.0],
        /// Slope of the pipe.
        slope "S": Ratio as Slope [> 0.0],
        /// Manning roughness.
        roughness "n": Ratio as Ratio [> 0.0],
    } -> Length as Diameter;
    form "D = (4^(5/3) roughness flow / (pi flow_ratio slope^(1/2)))^(3/8), in m and s";
    from Published "scilab_companion_2159" "chapter 7, problem 7.10, solved for the diameter";
    valid "all arguments positive";
    value |s| {
        let full = s.roughness.value * s.flow.value / (s.flow_ratio.value * s.slope.value.sqrt());
        Length::from_si((4.0_f64.powf(5.0 / 3.0) * full / core::f64::consts::PI).powf(3.0 / 8.0))
    };

    /// Stress of the flow on the wall: `tau = gamma R S`.
    TractiveStress "tractive stress" {
        /// Unit weight of water.
        water_weight "gamma": UnitWeight as UnitWeight [>= 0.0],
        /// Hydraulic radius (at the least flow that counts).
        hydraulic_radius "R": Length as Diameter [>= 0.0],
        /// Slope of the pipe.
        slope "S": Ratio as Slope [>= 0.0],
    } -> Pressure as Tractive;
    form "tau = water_weight hydraulic_radius slope";
    from Published "merritt_2007" "abstract";
    valid "arguments not negative";
    value |s| s.water_weight * s.hydraulic_radius * s.slope;
}
