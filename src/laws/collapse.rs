//! Unconstrained collapse of a plastic pipe under outside pressure.

use crate::law::laws;
use crate::laws::soil::gravity;
use crate::quantity::{Length, MassDensity, Measure, Pressure, Ratio};

/// Largest z for which the two-term series is used.
const MOST_FLATTENING: f64 = 0.2;

/// Coefficients of the tensile reduction curve (ASTM F1962; recalled).
const TENSION_CURVE: (f64, f64) = (5.57, 1.09);

laws! {
    /// Loss of collapse pressure by ovality: `f_o = ((1 - d) / (1 + d)²)³`.
    ///
    /// 12 % is the end of the published chart.
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
    OvalityFactor "ovality factor" {
        /// Ovality (diameter deviation over mean diameter).
        ovality "d": Ratio as Percent [>= 0.0 <= 0.12],
    } -> Ratio as Ratio;
    form "f_o = ((1 - ovality) / (1 + ovality)^2)^3";
    from Memory "astm_f1962_1999" "ovality compensation chart; formula as in AWWA M28 and ASTM F1216 practice";
    valid "ovality 0 to 12 %";
    fails beyond |v| v.ovality.value >= 0.0;
    value |s| {
        let one = Ratio::from_si(1.0);
        let ring = (one - s.ovality) / ((one + s.ovality) * (one + s.ovality));
        ring * ring * ring
    };

    /// Ovality of a bent pipe: `d = (2/3) z + (71/135) z²`, `z = 1.5 (1 - nu²) (D - t)⁴ / (16 t² R²)`.
    ///
    /// Beyond its range the pipe kinks.
    BendOvality "ovality of the bend" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
        /// Radius of the bend.
        radius "R": Length as Distance [> 0.0],
        /// Poisson's ratio.
        poisson "nu": Ratio as Ratio,
    } -> Ratio as Percent;
    form "d = (2/3) z + (71/135) z^2, z = 1.5 (1 - poisson^2) (outside_diameter - wall)^4 / (16 wall^2 radius^2)";
    from Memory "astm_f1962_1999" "appendix X2, longitudinal bending (Reissner type)";
    valid "z up to 0.2, wall and radius positive"
        if |v| flattening(v) <= MOST_FLATTENING;
    fails beyond |v| v.wall.value > 0.0 && v.radius.value > 0.0;
    value |s| {
        let z = flattening(s);
        // The two coefficients are those of the series, in whole numbers.
        Ratio::from_si(2.0 / 3.0 * z + 71.0 / 135.0 * z * z)
    };

    /// Loss of collapse pressure by axial tension: `f_R = sqrt(5.57 - (r + 1.09)²) - 1.09`, r = s / (2 s_allow),
    /// not above 1.
    ///
    /// Above it the pipe fails in tension first, and the curve is not followed: it ends at 0.
    TensionFactor "tension factor" {
        /// Tensile stress (tensile, at the same place and time).
        stress "s": Pressure as Strength [>= 0.0],
        /// Allowable tensile stress.
        allowable "s_allow": Pressure as Strength [> 0.0],
    } -> Ratio as Ratio;
    form "f_R = sqrt(5.57 - (r + 1.09)^2) - 1.09, r = stress / (2 allowable)";
    from Memory "astm_f1962_1999" "tensile reduction factor";
    valid "stress from 0 to the allowable stress (r 0 to 0.5)"
        if |v| v.stress <= v.allowable;
    fails beyond |v| v.stress > v.allowable && v.allowable.value > 0.0;
    value |s| {
        let (square, shift) = TENSION_CURVE;
        let r = (s.stress.value / (2.0 * s.allowable.value)).clamp(0.0, 1.0);
        let curve = (square - (r + shift) * (r + shift)).max(0.0).sqrt() - shift;
        Ratio::from_si(curve.clamp(0.0, 1.0))
    };

    /// Outside pressure at which an unsupported pipe collapses (Levy):
    /// `P = 2 E f_o f_R / ((1 - nu²) (DR - 1)³)`.
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
    CriticalPressure "unconstrained collapse pressure" {
        /// Modulus (at duration and temperature of the load).
        modulus "E": Pressure as Modulus,
        /// Poisson's ratio.
        poisson "nu": Ratio as Ratio [>= 0.0 <= 0.5],
        /// Outside diameter over minimum wall.
        dimension_ratio "DR": Ratio as Ratio [>= 5.0 <= 50.0],
        /// Ovality factor.
        ovality_factor "f_o": Ratio as Ratio [>= 0.0 <= 1.0],
        /// Tension factor.
        tension_factor "f_R": Ratio as Ratio [>= 0.0 <= 1.0],
    } -> Pressure as Pressure;
    form "P = 2 modulus ovality_factor tension_factor / ((1 - poisson^2) (dimension_ratio - 1)^3)";
    from Published "ttp_2010" "eq. 5.14, p. 219, and eq. 6.6, p. 272 (from ASTM F1962)";
    valid "dimension ratio 5 to 50, factors 0 to 1, Poisson's ratio 0 to 0.5";
    fails beyond |v| v.dimension_ratio.value > 50.0;
    value |s| {
        let one = Ratio::from_si(1.0);
        let slim = s.dimension_ratio - one;
        2.0 * s.modulus * s.ovality_factor * s.tension_factor / ((one - s.poisson * s.poisson) * (slim * slim * slim))
    };

    /// Outside pressure at which a thin elastic ring that nothing holds collapses: `P = 2 E f_o / ((1 - nu²) (DR - 1)³)`.
    ///
    /// ```
    /// // Steel of 30,000,000 psi and 0.3, round, at 101: the manual's 66,000,000 (t/d)^3 are 66 psi.
    /// use jackpull::law::Law;
    /// use jackpull::laws::collapse::ThinRing;
    /// use jackpull::quantity::{FromText, Pressure, Ratio};
    /// let pressure = ThinRing {
    ///     modulus: Pressure::from_text("30000000 psi")?,
    ///     poisson: Ratio::from_text("0.3")?,
    ///     dimension_ratio: Ratio::from_text("101")?,
    ///     ovality_factor: Ratio::from_text("1")?,
    /// };
    /// assert!((pressure.value() / Pressure::from_text("66 psi")? - Ratio::from(1.0)).abs() < Ratio::from(2e-3));
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    ThinRing "collapse pressure of a thin ring" {
        /// Modulus (at the end of the load).
        modulus "E": Pressure as Modulus,
        /// Poisson's ratio.
        poisson "nu": Ratio as Ratio [>= 0.0 <= 0.5],
        /// Outside diameter over wall.
        dimension_ratio "DR": Ratio as Ratio [>= 10.0],
        /// Ovality factor.
        ovality_factor "f_o": Ratio as Ratio [>= 0.0 <= 1.0],
    } -> Pressure as Pressure;
    form "P = 2 modulus ovality_factor / ((1 - poisson^2) (dimension_ratio - 1)^3)";
    from Memory "awwa_m11" "ch. 4, external fluid pressure; the loss by ovality is that of plastic pipe";
    valid "wall up to a tenth of the outside diameter, below the yield of the wall, ring free of support";
    value |s| {
        let one = Ratio::from_si(1.0);
        let slim = s.dimension_ratio - one;
        2.0 * s.modulus * s.ovality_factor / ((one - s.poisson * s.poisson) * (slim * slim * slim))
    };

    /// Pressure under a column of fluid: `p = rho g h`.
    FluidHead "static pressure of the bore fluid" {
        /// Density of the fluid.
        density "rho": MassDensity as Density [>= 0.0],
        /// Height of the column.
        height "h": Length as Depth [>= 0.0],
    } -> Pressure as Pressure;
    form "p = density g height";
    from Memory "astm_f1962_1999" "static head of drilling fluid";
    valid "density and height not negative";
    value |s| s.density * gravity() * s.height;
}

fn flattening(bend: &BendOvality) -> f64 {
    let mean = (bend.outside_diameter - bend.wall).value;
    let poisson = bend.poisson.value;
    1.5 * (1.0 - poisson * poisson) * mean.powi(4) / (16.0 * (bend.wall * bend.radius).value.powi(2))
}
