//! Water that flows into a pit, steady.

use crate::law::laws;
use crate::quantity::{Length, Velocity, VolumeRate};
use core::f64::consts::PI;

/// Coefficient of the radius of influence, in s^(1/2)/m^(1/2) (Sichardt; recalled).
const SICHARDT: f64 = 3_000.0;

laws! {
    /// Radius of the well that stands for a rectangular pit: `r = sqrt(B L / pi)`.
    ///
    /// For pits that are not long slots.
    EquivalentRadius "radius of a pit as a well" {
        /// Shorter side.
        width "B": Length as Distance [> 0.0],
        /// Longer side.
        length "L": Length as Distance [> 0.0],
    } -> Length as Distance;
    form "r = sqrt(width length / pi)";
    from Memory "dupuit_thiem" "circle of the same area";
    valid "sides positive";
    value |s| (s.width * s.length / PI).sqrt();

    /// Distance to which pumping lowers the water: `R = 3000 s sqrt(k)`, s in m and k in m/s.
    ///
    /// A rough guess only: it has no time and no recharge in it and is known to be poor. The inflow hangs on its
    /// logarithm.
    InfluenceRadius "radius of influence, Sichardt" {
        /// Lowering of the water at the pit.
        drawdown "s": Length as Depth [>= 0.0],
        /// Permeability.
        permeability "k": Velocity as Permeability [>= 0.0],
    } -> Length as Distance;
    form "R = 3000 drawdown sqrt(permeability), in m and s";
    from Memory "sichardt_1930" "radius of influence";
    valid "drawdown and permeability not negative";
    value |s| s.drawdown * (SICHARDT * s.permeability.value.sqrt());

    /// Inflow from ground with a free water table: `Q = pi k (H² - h²) / ln(R/r)`.
    ///
    /// For steady flow to a pit without tight walls that reaches the tight base; when pumping starts it is more.
    InflowUnconfined "inflow with a free water table, Dupuit" {
        /// Permeability.
        permeability "k": Velocity as Permeability [>= 0.0],
        /// Depth of water far away (of water over the tight base, at R).
        far_depth "H": Length as Depth,
        /// Depth of water at the pit (the same, at r).
        near_depth "h": Length as Depth [>= 0.0],
        /// Radius of influence.
        far_radius "R": Length as Distance,
        /// Radius of the pit as a well.
        near_radius "r": Length as Distance [> 0.0],
    } -> VolumeRate as Flow;
    form "Q = pi permeability (far_depth^2 - near_depth^2) / ln(far_radius/near_radius)";
    from Memory "dupuit_thiem" "steady flow to a well with a free water table";
    valid "far radius above the near one, far depth no less than the near one"
        if |v| v.near_depth <= v.far_depth && v.near_radius < v.far_radius;
    value |s| {
        let squares = s.far_depth * s.far_depth - s.near_depth * s.near_depth;
        PI * s.permeability * squares / (s.far_radius / s.near_radius).value.ln()
    };
}
