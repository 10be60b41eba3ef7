//! Stress in the ground, and the pressure of the ground on a pipe by arching models.

use crate::law::law;
use crate::quantity::{Angle, Length, LineLoad, Measure, Pressure, Ratio, UnitWeight};
use crate::source::{Equation, Mark};
use core::f64::consts::{FRAC_PI_4, PI};

/// Unit weight of fresh water at standard gravity, N/m³ (1,000 kg/m³).
pub const WATER_UNIT_WEIGHT: f64 = 1_000.0 * crate::quantity::unit::STANDARD_GRAVITY;

law! {
    /// Vertical stress a layer adds: `s = gamma h`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | gamma | `unit_weight` (moist above water, saturated below for total stress, buoyant for effective) | force per volume |
    /// | h | `thickness` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** non-negative arguments.
    LayerStress {
        /// Unit weight.
        unit_weight: UnitWeight as UnitWeight,
        /// Thickness.
        thickness: Length as Depth,
    } -> Pressure as UnitFriction
    { Equation {
        name: "stress of a layer",
        form: "s = unit_weight thickness",
        source: "jackpull",
        locator: "statics of a level layer",
        mark: Mark::Judgement,
        valid: "unit weight and thickness not negative",
    } }
    valid |v| v.unit_weight.value >= 0.0 && v.thickness.value >= 0.0;
    value |s| s.unit_weight * s.thickness;
}

law! {
    /// Width of the soil column that settles on a pipe, by Terzaghi: `b = D (1 + 2 tan(45 deg - phi/2))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | phi | `friction_angle` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** phi from 0 to 50 deg. Used with K = 1 and
    /// the full friction angle in Japan and in the French recommendations.
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
    SiloWidthTerzaghi {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Friction angle of the ground.
        friction_angle: Angle as Angle,
    } -> Length as Distance
    { Equation {
        name: "width of the soil column, Terzaghi",
        form: "b = outside_diameter (1 + 2 tan(45 deg - friction_angle/2))",
        source: "terzaghi_1943",
        locator: "arching over a yielding strip; as used for pipe jacking in Japan and France",
        mark: Mark::Memory,
        valid: "friction angle 0 to 50 deg",
    } }
    valid |v| (0.0..=STEEPEST).contains(&v.friction_angle.value);
    value |s| s.outside_diameter * (1.0 + 2.0 * (FRAC_PI_4 - s.friction_angle.value / 2.0).tan());
}

law! {
    /// Width of the soil column by the German sheet: `b = sqrt(3) D`. Used with K = 0.5 and half the friction angle.
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a positive diameter. Its pressure is much
    /// higher than the others and is never to be multiplied by a coefficient of interface friction.
    SiloWidthAtv {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
    } -> Length as Distance
    { Equation {
        name: "width of the soil column, ATV-A 161",
        form: "b = sqrt(3) outside_diameter",
        source: "atv_a_161",
        locator: "silo above a jacked pipe",
        mark: Mark::Memory,
        valid: "diameter positive",
    } }
    valid |v| v.outside_diameter.value > 0.0;
    value |s| s.outside_diameter * 3.0_f64.sqrt();
}

law! {
    /// Width of the soil column by the pipe jacking association: `b = D tan(67.5 deg - phi/4)`.
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** phi from 0 to 50 deg. The Japanese width is
    /// the same on a diameter 0.1 m larger.
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
    SiloWidthPja {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Friction angle of the ground.
        friction_angle: Angle as Angle,
    } -> Length as Distance
    { Equation {
        name: "width of the soil column, pipe jacking association",
        form: "b = outside_diameter tan(67.5 deg - friction_angle/4)",
        source: "pja_guide",
        locator: "guide to best practice, ground load",
        mark: Mark::Memory,
        valid: "friction angle 0 to 50 deg",
    } }
    valid |v| (0.0..=STEEPEST).contains(&v.friction_angle.value);
    value |s| s.outside_diameter * (1.5 * FRAC_PI_4 - s.friction_angle.value / 4.0).tan();
}

/// 50 deg, beyond which no soil's friction angle lies.
pub(super) const STEEPEST: f64 = 50.0 * PI / 180.0;

law! {
    /// Vertical pressure of a soil column that hangs in its sides (Terzaghi):
    /// `s = b (gamma - 2 c / b) / (2 k) (1 - exp(-2 k h / b)) + p exp(-2 k h / b)`, k = K tan(delta), no less than 0.
    /// Without friction (k = 0) it is `(gamma - 2 c / b) h + p`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | gamma | `unit_weight` (effective below water) | force per volume |
    /// | b | `width` | length |
    /// | h | `depth` (to the crown) | length |
    /// | K tan(delta) | `lateral_friction` | ratio |
    /// | c | `cohesion` | pressure |
    /// | p | `surcharge` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a positive width, the rest not negative.
    /// The ATV and F1962 parameter sets are meant with c = 0.
    SiloStress {
        /// Unit weight.
        unit_weight: UnitWeight as UnitWeight,
        /// Width of the column.
        width: Length as Distance,
        /// Depth of its foot.
        depth: Length as Depth,
        /// Lateral pressure ratio times tangent of the wall friction angle.
        lateral_friction: Ratio as Ratio,
        /// Cohesion.
        cohesion: Pressure as UnitFriction,
        /// Load on the surface.
        surcharge: Pressure as UnitFriction,
    } -> Pressure as UnitFriction
    { Equation {
        name: "silo pressure",
        form: "s = width (unit_weight - 2 cohesion/width) / (2 k) (1 - exp(-2 k depth/width)) \
               + surcharge exp(-2 k depth/width), k = lateral_friction",
        source: "terzaghi_1943",
        locator: "arching over a yielding strip",
        mark: Mark::Memory,
        valid: "width positive, all else not negative",
    } }
    valid |v| v.width.value > 0.0
        && v.unit_weight.value >= 0.0
        && v.depth.value >= 0.0
        && v.lateral_friction.value >= 0.0
        && v.cohesion.value >= 0.0
        && v.surcharge.value >= 0.0;
    value |s| {
        let net = s.unit_weight - 2.0 * s.cohesion / s.width;
        let exponent = 2.0 * s.lateral_friction.value * (s.depth / s.width).value;
        // (1 - exp(-x)) / x, which is 1 where nothing hangs in the sides.
        let kept = if exponent > 0.0 { -(-exponent).exp_m1() / exponent } else { 1.0 };
        (net * s.depth * kept + s.surcharge * (-exponent).exp()).max(Pressure::default())
    };
}

law! {
    /// Mean pressure round a pipe from the pressure at its crown:
    /// `s_m = (1 + K2) / 2 (s + gamma D / 2)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s | `crown_stress` | pressure |
    /// | gamma | `unit_weight` | force per volume |
    /// | D | `outside_diameter` | length |
    /// | K2 | `lateral_ratio` (0.3) | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** K2 from 0 to 1. Coefficients of friction
    /// fitted to it were found with the total unit weight, dry ground and no cohesion, and hold only so.
    MeanRingPressure {
        /// Vertical stress at the crown.
        crown_stress: Pressure as UnitFriction,
        /// Unit weight beside the pipe.
        unit_weight: UnitWeight as UnitWeight,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Lateral over vertical pressure.
        lateral_ratio: Ratio as Ratio,
    } -> Pressure as UnitFriction
    { Equation {
        name: "mean pressure round the pipe",
        form: "s_m = (1 + lateral_ratio)/2 (crown_stress + unit_weight outside_diameter/2)",
        source: "pellet_kastner_2002",
        locator: "applied friction force, divided by pi D L mu",
        mark: Mark::Memory,
        valid: "lateral ratio 0 to 1",
    } }
    valid |v| (0.0..=1.0).contains(&v.lateral_ratio.value);
    value |s| {
        let half = (1.0 + s.lateral_ratio.value) / 2.0;
        half * (s.crown_stress + s.unit_weight * s.outside_diameter / 2.0)
    };
}

law! {
    /// Pressure of granular ground that arches close over the bore and has come down on the pipe:
    /// `s = gamma (D/2) cos(45 deg + phi/2) / tan(phi)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | gamma | `unit_weight` | force per volume |
    /// | D | `outside_diameter` | length |
    /// | phi | `friction_angle` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** granular ground, phi 25 to 45 deg, no
    /// lubricant, no water. On small bores in sand and gravel it is far too low for capacity.
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
    ModifiedArching {
        /// Unit weight.
        unit_weight: UnitWeight as UnitWeight,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Friction angle of the ground.
        friction_angle: Angle as Angle,
    } -> Pressure as UnitFriction
    { Equation {
        name: "pressure by modified arching",
        form: "s = unit_weight outside_diameter/2 cos(45 deg + friction_angle/2) / tan(friction_angle)",
        source: "georgia_tech_2006",
        locator: "normal stress on a jacked pipe in granular ground",
        mark: Mark::Memory,
        valid: "granular ground, friction angle 25 to 45 deg, no lubricant, above water",
    } }
    valid |v| (FRAC_PI_4 * 25.0 / 45.0..=FRAC_PI_4).contains(&v.friction_angle.value);
    value |s| {
        let shape = (FRAC_PI_4 + s.friction_angle.value / 2.0).cos() / s.friction_angle.value.tan();
        s.unit_weight * s.outside_diameter / 2.0 * shape
    };
}

law! {
    /// Unit friction of a pressure: `tau = mu s`.
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** mu from 0 to 1.
    FrictionOfPressure {
        /// Pressure on the pipe.
        pressure: Pressure as UnitFriction,
        /// Friction coefficient.
        coefficient: Ratio as Ratio,
    } -> Pressure as UnitFriction
    { Equation {
        name: "unit friction of a pressure",
        form: "tau = coefficient pressure",
        source: "jackpull",
        locator: "dry friction",
        mark: Mark::Judgement,
        valid: "coefficient 0 to 1",
    } }
    valid |v| (0.0..=1.0).contains(&v.coefficient.value);
    value |s| s.coefficient * s.pressure;
}

law! {
    /// Earth load of a jacked pipe (Marston): `W = C B (gamma B - 2 c)`,
    /// `C = (1 - exp(-2 k H / B)) / (2 k)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | gamma | `unit_weight` | force per volume |
    /// | B | `bore` (largest bore; the outside diameter of a jacked pipe) | length |
    /// | H | `depth` (to the crown) | length |
    /// | k = K mu' | `lateral_friction` | ratio |
    /// | c | `cohesion` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 2 c no more than half of gamma B: beyond, the
    /// load of a small bore vanishes, and nothing should be built on that.
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
    MarstonLoad {
        /// Unit weight.
        unit_weight: UnitWeight as UnitWeight,
        /// Largest bore.
        bore: Length as Diameter,
        /// Depth of the crown.
        depth: Length as Depth,
        /// Lateral pressure ratio times internal friction coefficient.
        lateral_friction: Ratio as Ratio,
        /// Cohesion.
        cohesion: Pressure as UnitFriction,
    } -> LineLoad as LineWeight
    { Equation {
        name: "earth load of a jacked pipe",
        form: "W = C bore (unit_weight bore - 2 cohesion), C = (1 - exp(-2 k depth/bore)) / (2 k), k = lateral_friction",
        source: "moser_buried_pipe",
        locator: "eq. 2.9, p. 22",
        mark: Mark::Published,
        valid: "bore and k positive, 2 cohesion no more than half of unit weight times bore",
    } }
    valid |v| v.bore.value > 0.0
        && v.lateral_friction.value > 0.0
        && v.cohesion.value >= 0.0
        && 4.0 * v.cohesion <= v.unit_weight * v.bore;
    value |s| {
        let double = 2.0 * s.lateral_friction.value;
        let coefficient = -(-double * (s.depth / s.bore).value).exp_m1() / double;
        let net = (s.unit_weight * s.bore - 2.0 * s.cohesion).max(Pressure::default());
        coefficient * s.bore * net
    };
}

law! {
    /// Closure of an unlined bore in clay, undrained and unsupported: elastic while the stability number N is at most
    /// 1, elastic-plastic beyond: `u / r = s_u/(2 G) N` and `u / r = s_u/(2 G) exp(N - 1)`, N = s_v / s_u.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s_v | `overburden` (total) | pressure |
    /// | s_u | `undrained_strength` | pressure |
    /// | G | `shear_modulus` | pressure |
    /// | r | `bore_radius` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** N up to 6; compare with the radial overcut,
    /// and call the bore open only while less than half of it is closed.
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
    BoreClosure {
        /// Total vertical stress at the axis.
        overburden: Pressure as UnitFriction,
        /// Undrained strength.
        undrained_strength: Pressure as UnitFriction,
        /// Shear modulus.
        shear_modulus: Pressure as Modulus,
        /// Radius of the bore.
        bore_radius: Length as Offset,
    } -> Length as Offset
    { Equation {
        name: "closure of an unlined bore in clay",
        form: "u = bore_radius undrained_strength/(2 shear_modulus) x, x = N up to 1, exp(N - 1) beyond, \
               N = overburden/undrained_strength",
        source: "jackpull",
        locator: "unloading of a cylindrical cavity in a Tresca soil",
        mark: Mark::Judgement,
        valid: "stability number up to 6, strength and modulus positive",
    } }
    valid |v| v.undrained_strength.value > 0.0
        && v.shear_modulus.value > 0.0
        && v.overburden <= 6.0 * v.undrained_strength;
    value |s| {
        let number = (s.overburden / s.undrained_strength).si();
        let strain = if number <= 1.0 { number } else { (number - 1.0).exp() };
        s.bore_radius * (s.undrained_strength / (2.0 * s.shear_modulus)).si() * strain
    };
}
