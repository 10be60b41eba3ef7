//! Stress in the ground, and the pressure of the ground on a pipe by arching models.

use crate::law::laws;
use crate::quantity::{Angle, Length, LineLoad, MassDensity, Measure, Pressure, Ratio, UnitWeight};
use core::f64::consts::{FRAC_PI_4, PI};
use uom::si::f64::Acceleration;

/// Density of fresh water, kg/m³; the handbooks' 62.4 lb/ft³ is 999.6.
const WATER: f64 = 1_000.0;

/// Standard gravity.
pub(crate) fn gravity() -> Acceleration {
    Acceleration::from_si(crate::quantity::unit::STANDARD_GRAVITY)
}

/// Unit weight of fresh water at standard gravity.
#[must_use]
pub fn water_unit_weight() -> UnitWeight {
    water_density() * gravity()
}

/// Density of fresh water, 1,000 kg/m³.
#[must_use]
pub fn water_density() -> MassDensity {
    MassDensity::from_si(WATER)
}

/// 50 deg, beyond which no soil's friction angle lies.
pub(super) const STEEPEST: f64 = 50.0 * PI / 180.0;

laws! {
    /// Vertical stress a layer adds: `s = gamma h`.
    LayerStress "stress of a layer" {
        /// Unit weight (moist above water, saturated below for total stress, buoyant for effective).
        unit_weight "gamma": UnitWeight as UnitWeight [>= 0.0],
        /// Thickness.
        thickness "h": Length as Depth [>= 0.0],
    } -> Pressure as UnitFriction;
    form "s = unit_weight thickness";
    from Judgement "jackpull" "statics of a level layer";
    valid "unit weight and thickness not negative";
    value |s| s.unit_weight * s.thickness;

    /// Width of the soil column that settles on a pipe, by Terzaghi: `b = D (1 + 2 tan(45 deg - phi/2))`.
    ///
    /// Used with K = 1 and the full friction angle in Japan and in the French recommendations.
    ///
    /// ```
    /// // 1.00 m pipe, 30 deg: 2.155 m.
    /// use jackpull::law::Law;
    /// use jackpull::laws::soil::SiloWidthTerzaghi;
    /// use jackpull::quantity::{Angle, FromText, Length};
    /// let width = SiloWidthTerzaghi {
    ///     outside_diameter: Length::from_text("1 m")?,
    ///     friction_angle: Angle::from_text("30 deg")?,
    /// };
    /// assert!((width.value() - Length::from_text("2.155 m")?).abs() < Length::from_text("0.5 mm")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    SiloWidthTerzaghi "width of the soil column, Terzaghi" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Friction angle of the ground.
        friction_angle "phi": Angle as Angle [>= 0.0 <= STEEPEST],
    } -> Length as Distance;
    form "b = outside_diameter (1 + 2 tan(45 deg - friction_angle/2))";
    from Memory "terzaghi_1943" "arching over a yielding strip; as used for pipe jacking in Japan and France";
    valid "friction angle 0 to 50 deg";
    value |s| s.outside_diameter * (1.0 + 2.0 * (FRAC_PI_4 - s.friction_angle.value / 2.0).tan());

    /// Width of the soil column by the German sheet: `b = sqrt(3) D`. Used with K = 0.5 and half the friction angle.
    ///
    /// Its pressure is much higher than the others and is never to be multiplied by a coefficient of interface
    /// friction.
    SiloWidthAtv "width of the soil column, ATV-A 161" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter [> 0.0],
    } -> Length as Distance;
    form "b = sqrt(3) outside_diameter";
    from Memory "atv_a_161" "silo above a jacked pipe";
    valid "diameter positive";
    value |s| s.outside_diameter * 3.0_f64.sqrt();

    /// Width of the soil column by the pipe jacking association: `b = D tan(67.5 deg - phi/4)`.
    ///
    /// The Japanese width is the same on a diameter 0.1 m larger.
    ///
    /// ```
    /// // 1.00 m pipe, 30 deg: 1.732 m.
    /// use jackpull::law::Law;
    /// use jackpull::laws::soil::SiloWidthPja;
    /// use jackpull::quantity::{Angle, FromText, Length};
    /// let width = SiloWidthPja {
    ///     outside_diameter: Length::from_text("1 m")?,
    ///     friction_angle: Angle::from_text("30 deg")?,
    /// };
    /// assert!((width.value() - Length::from_text("1.732 m")?).abs() < Length::from_text("0.5 mm")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    SiloWidthPja "width of the soil column, pipe jacking association" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Friction angle of the ground.
        friction_angle "phi": Angle as Angle [>= 0.0 <= STEEPEST],
    } -> Length as Distance;
    form "b = outside_diameter tan(67.5 deg - friction_angle/4)";
    from Memory "pja_guide" "guide to best practice, ground load";
    valid "friction angle 0 to 50 deg";
    value |s| s.outside_diameter * (1.5 * FRAC_PI_4 - s.friction_angle.value / 4.0).tan();

    /// Vertical pressure of a soil column that hangs in its sides (Terzaghi):
    /// `s = b (gamma - 2 c / b) / (2 k) (1 - exp(-2 k h / b)) + p exp(-2 k h / b)`, k = K tan(delta), no less than 0.
    /// Without friction (k = 0) it is `(gamma - 2 c / b) h + p`.
    ///
    /// The ATV and F1962 parameter sets are meant with c = 0.
    SiloStress "silo pressure" {
        /// Unit weight (effective below water).
        unit_weight "gamma": UnitWeight as UnitWeight [>= 0.0],
        /// Width of the column.
        width "b": Length as Distance [> 0.0],
        /// Depth of its foot (to the crown).
        depth "h": Length as Depth [>= 0.0],
        /// Lateral pressure ratio times tangent of the wall friction angle.
        lateral_friction "K tan(delta)": Ratio as Ratio [>= 0.0],
        /// Cohesion.
        cohesion "c": Pressure as UnitFriction [>= 0.0],
        /// Load on the surface.
        surcharge "p": Pressure as UnitFriction [>= 0.0],
    } -> Pressure as UnitFriction;
    form "s = width (unit_weight - 2 cohesion/width) / (2 k) (1 - exp(-2 k depth/width)) \
          + surcharge exp(-2 k depth/width), k = lateral_friction";
    from Memory "terzaghi_1943" "arching over a yielding strip";
    valid "width positive, all else not negative";
    value |s| {
        let net = s.unit_weight - 2.0 * s.cohesion / s.width;
        let exponent = 2.0 * s.lateral_friction.value * (s.depth / s.width).value;
        // (1 - exp(-x)) / x, which is 1 where nothing hangs in the sides.
        let kept = if exponent > 0.0 { -(-exponent).exp_m1() / exponent } else { 1.0 };
        (net * s.depth * kept + s.surcharge * (-exponent).exp()).max(Pressure::default())
    };

    /// Mean pressure round a pipe from the pressure at its crown:
    /// `s_m = (1 + K2) / 2 (s + gamma D / 2)`.
    ///
    /// Coefficients of friction fitted to it were found with the total unit weight, dry ground and no cohesion, and
    /// hold only so.
    MeanRingPressure "mean pressure round the pipe" {
        /// Vertical stress at the crown.
        crown_stress "s": Pressure as UnitFriction,
        /// Unit weight beside the pipe.
        unit_weight "gamma": UnitWeight as UnitWeight,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Lateral over vertical pressure (0.3).
        lateral_ratio "K2": Ratio as Ratio [>= 0.0 <= 1.0],
    } -> Pressure as UnitFriction;
    form "s_m = (1 + lateral_ratio)/2 (crown_stress + unit_weight outside_diameter/2)";
    from Memory "pellet_kastner_2002" "applied friction force, divided by pi D L mu";
    valid "lateral ratio 0 to 1";
    value |s| {
        let half = (1.0 + s.lateral_ratio.value) / 2.0;
        half * (s.crown_stress + s.unit_weight * s.outside_diameter / 2.0)
    };

    /// Pressure of granular ground that arches close over the bore and has come down on the pipe:
    /// `s = gamma (D/2) cos(45 deg + phi/2) / tan(phi)`.
    ///
    /// On small bores in sand and gravel it is far too low for capacity.
    ///
    /// ```
    /// // 1.2 m, 19 kN/m3, 33 deg: 8.376 kPa.
    /// use jackpull::law::Law;
    /// use jackpull::laws::soil::ModifiedArching;
    /// use jackpull::quantity::{Angle, FromText, Length, Pressure, UnitWeight};
    /// let stress = ModifiedArching {
    ///     unit_weight: UnitWeight::from_text("19 kN/m3")?,
    ///     outside_diameter: Length::from_text("1.2 m")?,
    ///     friction_angle: Angle::from_text("33 deg")?,
    /// };
    /// assert!((stress.value() - Pressure::from_text("8.376 kPa")?).abs() < Pressure::from_text("0.5 Pa")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    ModifiedArching "pressure by modified arching" {
        /// Unit weight.
        unit_weight "gamma": UnitWeight as UnitWeight,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Friction angle of the ground.
        friction_angle "phi": Angle as Angle,
    } -> Pressure as UnitFriction;
    form "s = unit_weight outside_diameter/2 cos(45 deg + friction_angle/2) / tan(friction_angle)";
    from Memory "georgia_tech_2006" "normal stress on a jacked pipe in granular ground";
    valid "granular ground, friction angle 25 to 45 deg, no lubricant, above water"
        if |v| (FRAC_PI_4 * 25.0 / 45.0..=FRAC_PI_4).contains(&v.friction_angle.value);
    value |s| {
        let shape = (FRAC_PI_4 + s.friction_angle.value / 2.0).cos() / s.friction_angle.value.tan();
        s.unit_weight * s.outside_diameter / 2.0 * shape
    };

    /// Unit friction of a pressure: `tau = mu s`.
    FrictionOfPressure "unit friction of a pressure" {
        /// Pressure on the pipe.
        pressure "s": Pressure as UnitFriction,
        /// Friction coefficient.
        coefficient "mu": Ratio as Ratio [>= 0.0 <= 1.0],
    } -> Pressure as UnitFriction;
    form "tau = coefficient pressure";
    from Judgement "jackpull" "dry friction";
    valid "coefficient 0 to 1";
    value |s| s.coefficient * s.pressure;

    /// Earth load of a jacked pipe (Marston): `W = C B (gamma B - 2 c)`,
    /// `C = (1 - exp(-2 k H / B)) / (2 k)`.
    ///
    /// Beyond, the load of a small bore vanishes, and nothing should be built on that.
    ///
    /// ```
    /// // H 40 ft, B 5 ft, k 0.165, 120 pcf, 100 psf: 5,628 lb/ft.
    /// use jackpull::law::Law;
    /// use jackpull::laws::soil::MarstonLoad;
    /// use jackpull::quantity::{FromText, Length, LineLoad, Pressure, Ratio, UnitWeight};
    /// let load = MarstonLoad {
    ///     unit_weight: UnitWeight::from_text("120 pcf")?,
    ///     bore: Length::from_text("5 ft")?,
    ///     depth: Length::from_text("40 ft")?,
    ///     lateral_friction: Ratio::from_text("0.165")?,
    ///     cohesion: Pressure::from_text("100 psf")?,
    /// };
    /// assert!((load.value() - LineLoad::from_text("5628.1 plf")?).abs() < LineLoad::from_text("0.1 plf")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    MarstonLoad "earth load of a jacked pipe" {
        /// Unit weight.
        unit_weight "gamma": UnitWeight as UnitWeight,
        /// Largest bore (largest bore; the outside diameter of a jacked pipe).
        bore "B": Length as Diameter [> 0.0],
        /// Depth of the crown.
        depth "H": Length as Depth,
        /// Lateral pressure ratio times internal friction coefficient.
        lateral_friction "k = K mu'": Ratio as Ratio [> 0.0],
        /// Cohesion.
        cohesion "c": Pressure as UnitFriction [>= 0.0],
    } -> LineLoad as LineWeight;
    form "W = C bore (unit_weight bore - 2 cohesion), C = (1 - exp(-2 k depth/bore)) / (2 k), k = lateral_friction";
    from Published "moser_buried_pipe" "eq. 2.9, p. 22";
    valid "bore and k positive, 2 cohesion no more than half of unit weight times bore"
        if |v| 4.0 * v.cohesion <= v.unit_weight * v.bore;
    value |s| {
        let double = 2.0 * s.lateral_friction.value;
        let coefficient = -(-double * (s.depth / s.bore).value).exp_m1() / double;
        let net = (s.unit_weight * s.bore - 2.0 * s.cohesion).max(Pressure::default());
        coefficient * s.bore * net
    };

    /// Closure of an unlined bore in clay, undrained and unsupported: elastic while the stability number N is at most
    /// 1, elastic-plastic beyond: `u / r = s_u/(2 G) N` and `u / r = s_u/(2 G) exp(N - 1)`, N = s_v / s_u.
    ///
    /// Compare with the radial overcut, and call the bore open only while less than half of it is closed.
    ///
    /// ```
    /// // 114 kPa, E 10 MPa (G a third of it), r 0.6 m: 16 mm at su 50 kPa, 44 mm at su 30, 79 mm at su 25.
    /// use jackpull::law::Law;
    /// use jackpull::laws::soil::BoreClosure;
    /// use jackpull::quantity::{FromText, Length, Pressure};
    /// for (strength, closure) in [("50 kPa", "16 mm"), ("30 kPa", "44 mm"), ("25 kPa", "79 mm")] {
    ///     let law = BoreClosure {
    ///         overburden: Pressure::from_text("114 kPa")?,
    ///         undrained_strength: Pressure::from_text(strength)?,
    ///         shear_modulus: Pressure::from_text("3.3333 MPa")?,
    ///         bore_radius: Length::from_text("0.6 m")?,
    ///     };
    ///     assert!((law.value() - Length::from_text(closure)?).abs() < Length::from_text("0.6 mm")?);
    /// }
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    BoreClosure "closure of an unlined bore in clay" {
        /// Total vertical stress at the axis.
        overburden "s_v": Pressure as UnitFriction,
        /// Undrained strength.
        undrained_strength "s_u": Pressure as UnitFriction [> 0.0],
        /// Shear modulus.
        shear_modulus "G": Pressure as Modulus [> 0.0],
        /// Radius of the bore.
        bore_radius "r": Length as Offset,
    } -> Length as Offset;
    form "u = bore_radius undrained_strength/(2 shear_modulus) x, x = N up to 1, exp(N - 1) beyond, \
          N = overburden/undrained_strength";
    from Judgement "jackpull" "unloading of a cylindrical cavity in a Tresca soil";
    valid "stability number up to 6, strength and modulus positive"
        if |v| v.overburden <= 6.0 * v.undrained_strength;
    value |s| {
        let number = (s.overburden / s.undrained_strength).si();
        let strain = if number <= 1.0 { number } else { (number - 1.0).exp() };
        s.bore_radius * (s.undrained_strength / (2.0 * s.shear_modulus)).si() * strain
    };
}
