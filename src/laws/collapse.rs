//! Unconstrained collapse of a plastic pipe under outside pressure.

use crate::law::law;
use crate::quantity::unit::STANDARD_GRAVITY;
use crate::quantity::{Length, MassDensity, Measure, Pressure, Ratio};
use crate::source::{Equation, Mark};
use uom::si::f64::Acceleration;

law! {
    /// Loss of collapse pressure by ovality: `f_o = ((1 - d) / (1 + d)²)³`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | d | `ovality` (diameter deviation over mean diameter) | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 to 12 %, the range of the published chart.
    ///
    /// ```
    /// // 3 % leaves 0.764 (the chart is read as 0.76).
    /// use jackpull::law::Law;
    /// use jackpull::laws::collapse::OvalityFactor;
    /// use jackpull::quantity::{FromText, Ratio};
    /// let factor = OvalityFactor { ovality: Ratio::from_text("3 %")? };
    /// assert!((factor.value().value - 0.764).abs() < 0.0005);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    OvalityFactor {
        /// Ovality.
        ovality: Ratio as Percent,
    } -> Ratio as Ratio
    { Equation {
        name: "ovality factor",
        form: "f_o = ((1 - ovality) / (1 + ovality)^2)^3",
        source: "astm_f1962_1999",
        locator: "ovality compensation chart; formula as in AWWA M28 and ASTM F1216 practice",
        mark: Mark::Memory,
        valid: "ovality 0 to 12 %",
    } }
    valid |v| (0.0..=0.12).contains(&v.ovality.value);
    value |s| {
        let one = Ratio::from_si(1.0);
        let ring = (one - s.ovality) / ((one + s.ovality) * (one + s.ovality));
        ring * ring * ring
    };
}

law! {
    /// Ovality of a bent pipe: `d = (2/3) z + (71/135) z²`, `z = 1.5 (1 - nu²) (D - t)⁴ / (16 t² R²)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | t | `wall` | length |
    /// | R | `radius` | length |
    /// | nu | `poisson` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** z up to 0.2, before the pipe kinks.
    BendOvality {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Wall.
        wall: Length as Wall,
        /// Radius of the bend.
        radius: Length as Distance,
        /// Poisson's ratio.
        poisson: Ratio as Ratio,
    } -> Ratio as Percent
    { Equation {
        name: "ovality of the bend",
        form: "d = (2/3) z + (71/135) z^2, z = 1.5 (1 - poisson^2) (outside_diameter - wall)^4 / (16 wall^2 radius^2)",
        source: "astm_f1962_1999",
        locator: "appendix X2, longitudinal bending (Reissner type)",
        mark: Mark::Memory,
        valid: "z up to 0.2, wall and radius positive",
    } }
    valid |v| v.wall.value > 0.0 && v.radius.value > 0.0 && flattening(v) <= MOST_FLATTENING;
    value |s| {
        let z = flattening(s);
        // The two coefficients are those of the series, in whole numbers.
        Ratio::from_si(2.0 / 3.0 * z + 71.0 / 135.0 * z * z)
    };
}

/// Largest z for which the two-term series is used.
const MOST_FLATTENING: f64 = 0.2;

fn flattening(bend: &BendOvality) -> f64 {
    let mean = (bend.outside_diameter - bend.wall).value;
    let poisson = bend.poisson.value;
    1.5 * (1.0 - poisson * poisson) * mean.powi(4) / (16.0 * (bend.wall * bend.radius).value.powi(2))
}

/// Coefficients of the tensile reduction curve (ASTM F1962; recalled).
const TENSION_CURVE: (f64, f64) = (5.57, 1.09);

law! {
    /// Loss of collapse pressure by axial tension: `f_R = sqrt(5.57 - (r + 1.09)²) - 1.09`, r = s / (2 s_allow),
    /// not above 1.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s | `stress` (tensile, at the same place and time) | pressure |
    /// | s_allow | `allowable` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** r from 0 to 0.5, that is a stress within the
    /// allowable one; above it the pipe fails in tension first, and the curve is not followed: it ends at 0.
    TensionFactor {
        /// Tensile stress.
        stress: Pressure as Strength,
        /// Allowable tensile stress.
        allowable: Pressure as Strength,
    } -> Ratio as Ratio
    { Equation {
        name: "tension factor",
        form: "f_R = sqrt(5.57 - (r + 1.09)^2) - 1.09, r = stress / (2 allowable)",
        source: "astm_f1962_1999",
        locator: "tensile reduction factor",
        mark: Mark::Memory,
        valid: "stress from 0 to the allowable stress (r 0 to 0.5)",
    } }
    valid |v| v.allowable.value > 0.0 && v.stress.value >= 0.0 && v.stress <= v.allowable;
    value |s| {
        let (square, shift) = TENSION_CURVE;
        let r = (s.stress.value / (2.0 * s.allowable.value)).clamp(0.0, 1.0);
        let curve = (square - (r + shift) * (r + shift)).max(0.0).sqrt() - shift;
        Ratio::from_si(curve.clamp(0.0, 1.0))
    };
}

law! {
    /// Outside pressure at which an unsupported pipe collapses (Levy):
    /// `P = 2 E f_o f_R / ((1 - nu²) (DR - 1)³)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | E | `modulus` (at duration and temperature of the load) | pressure |
    /// | nu | `poisson` | ratio |
    /// | DR | `dimension_ratio` (outside diameter over minimum wall) | ratio |
    /// | f_o | `ovality_factor` | ratio |
    /// | f_R | `tension_factor` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** DR 5 to 50, factors from 0 to 1.
    ///
    /// ```
    /// // HDPE DR 11, short term (125,000 psi, 0.45): 724 ft of water (table 5.1, p. 223).
    /// use jackpull::law::Law;
    /// use jackpull::laws::collapse::CriticalPressure;
    /// use jackpull::quantity::{FromText, Pressure, Ratio};
    /// let pressure = CriticalPressure {
    ///     modulus: Pressure::from_text("125000 psi")?,
    ///     poisson: Ratio::from_text("0.45")?,
    ///     dimension_ratio: Ratio::from_text("11")?,
    ///     ovality_factor: Ratio::from_text("1")?,
    ///     tension_factor: Ratio::from_text("1")?,
    /// };
    /// let feet_of_water = pressure.value() / Pressure::from_text("62.4 psf")?;
    /// assert!((feet_of_water.value - 724.0).abs() < 1.0);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    CriticalPressure {
        /// Modulus.
        modulus: Pressure as Modulus,
        /// Poisson's ratio.
        poisson: Ratio as Ratio,
        /// Outside diameter over minimum wall.
        dimension_ratio: Ratio as Ratio,
        /// Ovality factor.
        ovality_factor: Ratio as Ratio,
        /// Tension factor.
        tension_factor: Ratio as Ratio,
    } -> Pressure as Pressure
    { Equation {
        name: "unconstrained collapse pressure",
        form: "P = 2 modulus ovality_factor tension_factor / ((1 - poisson^2) (dimension_ratio - 1)^3)",
        source: "ttp_2010",
        locator: "eq. 5.14, p. 219, and eq. 6.6, p. 272 (from ASTM F1962)",
        mark: Mark::Published,
        valid: "dimension ratio 5 to 50, factors 0 to 1, Poisson's ratio 0 to 0.5",
    } }
    valid |v| (5.0..=50.0).contains(&v.dimension_ratio.value)
        && (0.0..=0.5).contains(&v.poisson.value)
        && (0.0..=1.0).contains(&v.ovality_factor.value)
        && (0.0..=1.0).contains(&v.tension_factor.value);
    value |s| {
        let one = Ratio::from_si(1.0);
        let slim = s.dimension_ratio - one;
        2.0 * s.modulus * s.ovality_factor * s.tension_factor / ((one - s.poisson * s.poisson) * (slim * slim * slim))
    };
}

law! {
    /// Pressure under a column of fluid: `p = rho g h`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | rho | `density` | mass density |
    /// | h | `height` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** non-negative arguments.
    FluidHead {
        /// Density of the fluid.
        density: MassDensity as Density,
        /// Height of the column.
        height: Length as Depth,
    } -> Pressure as Pressure
    { Equation {
        name: "static pressure of the bore fluid",
        form: "p = density g height",
        source: "astm_f1962_1999",
        locator: "static head of drilling fluid",
        mark: Mark::Memory,
        valid: "density and height not negative",
    } }
    valid |v| v.density.value >= 0.0 && v.height.value >= 0.0;
    value |s| s.density * Acceleration::from_si(STANDARD_GRAVITY) * s.height;
}
