//! Water that flows into a pit, steady.

use crate::law::law;
use crate::quantity::{Length, Velocity, VolumeRate};
use crate::source::{Equation, Mark};
use core::f64::consts::PI;

law! {
    /// Radius of the well that stands for a rectangular pit: `r = sqrt(B L / pi)`.
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** pits that are not long slots.
    EquivalentRadius {
        /// Shorter side.
        width: Length as Distance,
        /// Longer side.
        length: Length as Distance,
    } -> Length as Distance
    { Equation {
        name: "radius of a pit as a well",
        form: "r = sqrt(width length / pi)",
        source: "dupuit_thiem",
        locator: "circle of the same area",
        mark: Mark::Memory,
        valid: "sides positive",
    } }
    valid |v| v.width.value > 0.0 && v.length.value > 0.0;
    value |s| (s.width * s.length / PI).sqrt();
}

/// Coefficient of the radius of influence, in s^(1/2)/m^(1/2) (Sichardt; recalled).
const SICHARDT: f64 = 3_000.0;

law! {
    /// Distance to which pumping lowers the water: `R = 3000 s sqrt(k)`, s in m and k in m/s.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s | `drawdown` | length |
    /// | k | `permeability` | velocity |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a rough guess only: it has no time and no
    /// recharge in it and is known to be poor. The inflow hangs on its logarithm.
    InfluenceRadius {
        /// Lowering of the water at the pit.
        drawdown: Length as Depth,
        /// Permeability.
        permeability: Velocity as Permeability,
    } -> Length as Distance
    { Equation {
        name: "radius of influence, Sichardt",
        form: "R = 3000 drawdown sqrt(permeability), in m and s",
        source: "sichardt_1930",
        locator: "radius of influence",
        mark: Mark::Memory,
        valid: "drawdown and permeability not negative",
    } }
    valid |v| v.drawdown.value >= 0.0 && v.permeability.value >= 0.0;
    value |s| s.drawdown * (SICHARDT * s.permeability.value.sqrt());
}

law! {
    /// Inflow from ground with a free water table: `Q = pi k (H² - h²) / ln(R/r)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | k | `permeability` | velocity |
    /// | H | `far_depth` (of water over the tight base, at R) | length |
    /// | h | `near_depth` (the same, at r) | length |
    /// | R | `far_radius` | length |
    /// | r | `near_radius` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** steady flow to a pit without tight walls that
    /// reaches the tight base; when pumping starts it is more.
    InflowUnconfined {
        /// Permeability.
        permeability: Velocity as Permeability,
        /// Depth of water far away.
        far_depth: Length as Depth,
        /// Depth of water at the pit.
        near_depth: Length as Depth,
        /// Radius of influence.
        far_radius: Length as Distance,
        /// Radius of the pit as a well.
        near_radius: Length as Distance,
    } -> VolumeRate as Flow
    { Equation {
        name: "inflow with a free water table, Dupuit",
        form: "Q = pi permeability (far_depth^2 - near_depth^2) / ln(far_radius/near_radius)",
        source: "dupuit_thiem",
        locator: "steady flow to a well with a free water table",
        mark: Mark::Memory,
        valid: "far radius above the near one, far depth no less than the near one",
    } }
    valid |v| v.permeability.value >= 0.0
        && v.near_depth.value >= 0.0
        && v.near_depth <= v.far_depth
        && v.near_radius.value > 0.0
        && v.near_radius < v.far_radius;
    value |s| {
        let squares = s.far_depth * s.far_depth - s.near_depth * s.near_depth;
        PI * s.permeability * squares / (s.far_radius / s.near_radius).value.ln()
    };
}
