//! Resistance of a stem, casing or pipe that is pushed: friction on the outside, and what stands in front.

use crate::law::laws;
use crate::quantity::{Angle, Force, Length, LineLoad, Measure, Pressure, Ratio, Torque};
use core::f64::consts::{FRAC_PI_4, PI};

laws! {
    /// What a planned curve makes of the force that is pushed through it: `f = exp(mu L / R)`.
    ///
    /// The capstan with all of the force at the far end of the curve; where it grows evenly along it the sum is less, by half
    /// of what the curve adds. The curve is taken to go on at its radius.
    CurveFactor "force through a planned curve" {
        /// Friction coefficient of the pipe on the outer side.
        friction "mu": Ratio as Ratio [>= 0.0],
        /// Length of the curve that is pushed through.
        length "L": Length as Distance [>= 0.0],
        /// Radius.
        radius "R": Length as Distance [> 0.0],
    } -> Ratio as Ratio;
    form "f = exp(friction length / radius)";
    from Judgement "jackpull" "capstan equation, all of the force at the far end";
    valid "radius positive, length from 0 to 3 radii, friction not negative"
        if |v| v.length <= 3.0 * v.radius;
    value |s| Ratio::from((s.friction.value * (s.length / s.radius).value).exp());

    /// Friction on the outside of a body in the bore, from a mean unit friction over the whole outside area.
    ///
    /// `F = tau pi D L`
    ///
    /// ```
    /// use jackpull::law::Law;
    /// use jackpull::laws::thrust::FrictionForce;
    /// use jackpull::quantity::{FromText, Length, Pressure, Force};
    /// let force = FrictionForce {
    ///     unit_friction: Pressure::from_text("5 kPa")?,
    ///     outside_diameter: Length::from_text("600 mm")?,
    ///     length: Length::from_text("100 m")?,
    /// };
    /// assert!((force.value() - Force::from_text("942.478 kN")?).abs() < Force::from_text("1 N")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    FrictionForce "friction on the outside area" {
        /// Mean unit friction.
        unit_friction "tau": Pressure as UnitFriction [>= 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter [>= 0.0],
        /// Length in the bore.
        length "L": Length as Distance [>= 0.0],
    } -> Force as Thrust;
    form "F = unit_friction pi outside_diameter length";
    from Published "pja_introduction" "sec. 6, p. 23: resistance per outside area of the pipeline";
    valid "unit friction, diameter and length not negative";
    value |s| s.unit_friction * (PI * s.outside_diameter * s.length);

    /// Resistance at an enlarging head: a pressure on the ring that is cut, not less than a least force.
    ///
    /// `F = max(p (pi/4) (D² - d²), F_least)`
    FaceForce "resistance at the enlarging head" {
        /// Pressure on the cut area.
        pressure "p": Pressure as UnitFriction [>= 0.0],
        /// Diameter that is cut.
        cut_diameter "D": Length as Diameter,
        /// Diameter of the bore already there.
        guided_diameter "d": Length as Diameter,
        /// Least force.
        least "F_least": Force as Thrust,
    } -> Force as Thrust;
    form "F = max(pressure (pi/4) (cut_diameter^2 - guided_diameter^2), least)";
    from CommonPractice "jackpull" "pressure on the cut ring; the pressures are trade habit, no agreed formula exists";
    valid "cut diameter above guided diameter, pressure not negative"
        if |v| v.cut_diameter > v.guided_diameter;
    value |s| {
        let ring = FRAC_PI_4 * (s.cut_diameter * s.cut_diameter - s.guided_diameter * s.guided_diameter);
        (s.pressure * ring).max(s.least)
    };

    /// Share of its own weight that a pipe pushed uphill adds to the thrust: `F = w L sin(phi)`; pushed downhill it is
    /// not credited, since lubricant carries most of the weight.
    WeightAlongGrade "weight of the pipe along the grade" {
        /// Weight of the pipe.
        pipe_weight "w": LineLoad as LineWeight [>= 0.0],
        /// Length in the bore.
        length "L": Length as Distance [>= 0.0],
        /// Slope, positive when the push goes uphill.
        rise "phi": Angle as Angle,
    } -> Force as Thrust;
    form "F = pipe_weight length sin(rise), no less than 0";
    from Judgement "jackpull" "statics; no credit downhill";
    valid "slope within 45 deg, weight and length not negative"
        if |v| v.rise.value.abs() <= FRAC_PI_4;
    value |s| (s.pipe_weight * s.length * s.rise.sin()).max(Force::default());

    /// Share of its own weight that a pipe adds to the thrust uphill and gives back downhill: `F = w L sin(phi)`.
    ///
    /// For the low level alone: what is not counted on is [`WeightAlongGrade`].
    SignedWeightAlongGrade "weight along the grade, up or down" {
        /// Weight of the pipe.
        pipe_weight "w": LineLoad as LineWeight [>= 0.0],
        /// Length in the bore.
        length "L": Length as Distance [>= 0.0],
        /// Slope, positive when the push goes uphill.
        rise "phi": Angle as Angle,
    } -> Force as Thrust;
    form "F = pipe_weight length sin(rise)";
    from Judgement "jackpull" "statics";
    valid "slope within 45 deg, weight and length not negative"
        if |v| v.rise.value.abs() <= FRAC_PI_4;
    value |s| s.pipe_weight * s.length * s.rise.sin();

    /// Torque that carries spoil along an auger: the power of a screw conveyor, `P = I lambda g L`, over its turns. In a turn
    /// the spoil goes on by a pitch, so that the turns and the weight that passes drop out: `T = w lambda p L / (2 pi)`.
    ///
    /// ```
    /// // 10 t/h over 10 m at 2.5 is 0.681 kW; at 60 rounds a minute and a pitch of 0.3 m 90.8 N/m lie on the screw.
    /// use jackpull::law::Law;
    /// use jackpull::laws::thrust::SpoilTorque;
    /// use jackpull::quantity::{FromText, Length, LineLoad, Ratio, Torque};
    /// let torque = SpoilTorque {
    ///     spoil: LineLoad::from_text("90.8 N/m")?,
    ///     progress: Ratio::from_text("2.5")?,
    ///     pitch: Length::from_text("0.3 m")?,
    ///     length: Length::from_text("10 m")?,
    /// };
    /// let by_power = Torque::from_text("0.1084 kN*m")?;
    /// assert!((torque.value() / by_power - Ratio::from(1.0)).abs() < Ratio::from(1e-3));
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    SpoilTorque "torque that carries spoil along an auger" {
        /// Weight of spoil on the auger.
        spoil "w": LineLoad as LineWeight [>= 0.0],
        /// Progress resistance coefficient.
        progress "lambda": Ratio as Ratio [>= 0.0],
        /// Pitch.
        pitch "p": Length as Diameter [> 0.0],
        /// Length of the auger.
        length "L": Length as Distance [>= 0.0],
    } -> Torque as Torque;
    form "T = spoil progress pitch length / (2 pi)";
    from SecondHand "iso_7119" "power for the progress of material, P = I L lambda / 367 (kW, t/h, m)";
    valid "level auger, coefficient, weight and length not negative";
    value |s| Torque::from_si((s.spoil * s.length * s.pitch).value * s.progress.value / (2.0 * PI));

    /// Torque of the weight of an auger that turns on the invert: `T = mu w (D / 2) L`.
    AugerWeightTorque "torque of the weight of an auger" {
        /// Friction coefficient.
        friction "mu": Ratio as Ratio [>= 0.0],
        /// Weight of the auger.
        auger "w": LineLoad as LineWeight [>= 0.0],
        /// Outside diameter of the auger.
        outside_diameter "D": Length as Diameter,
        /// Length of the auger.
        length "L": Length as Distance [>= 0.0],
    } -> Torque as Torque;
    form "T = friction auger outside_diameter length / 2";
    from Judgement "jackpull" "statics of a shaft that rests all along";
    valid "diameter positive, friction, weight and length not negative";
    value |s| Torque::from_si((s.auger * s.length * s.outside_diameter).value * s.friction.value / 2.0);

    /// Force of a stage at an advance: what rubs on either side of the front, what works at it, and the weight along the
    /// grade; help takes off no more than there is.
    StageForce "force of a stage" {
        /// Friction of what comes behind the front, or its pull.
        behind "F_b": Force as Thrust,
        /// Friction of what lies ahead of it.
        ahead "F_a": Force as Thrust,
        /// Resistance at the front: tip, face or reamer.
        front "F_f": Force as Thrust,
        /// Weight along the grade.
        weight "F_w": Force as Thrust,
    } -> Force as Thrust;
    form "F = max(behind + ahead + front + weight, 0)";
    from Judgement "jackpull" "statics: the sum of what resists";
    valid "any forces" if |v| v.behind.value.is_finite();
    value |s| ((s.behind + s.ahead) + (s.front + s.weight)).max(Force::default());

    /// End resistance of the pilot stem, as a cone: `F = q N (pi/4) d²`.
    ///
    /// Denser ground refuses a displacement pilot.
    ///
    /// ```
    /// // A 100 mm tip at N 30: 106 kN with 0.45 MPa per blow.
    /// use jackpull::law::Law;
    /// use jackpull::laws::thrust::PilotTipAsCone;
    /// use jackpull::quantity::{Force, FromText, Length, Pressure, Ratio};
    /// let tip = PilotTipAsCone {
    ///     cone_resistance_per_blow: Pressure::from_text("0.45 MPa")?,
    ///     blows: Ratio::from_text("30")?,
    ///     diameter: Length::from_text("100 mm")?,
    /// };
    /// assert!((tip.value() - Force::from_text("106 kN")?).abs() < Force::from_text("0.5 kN")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    PilotTipAsCone "pilot tip resistance, as a cone" {
        /// Cone resistance per SPT blow.
        cone_resistance_per_blow "q": Pressure as Strength,
        /// SPT N.
        blows "N": Ratio as Count [>= 0.0 <= 50.0],
        /// Tip diameter.
        diameter "d": Length as Diameter,
    } -> Force as Thrust;
    form "F = cone_resistance_per_blow blows (pi/4) diameter^2";
    from Judgement "jackpull" "cone penetration of the tip, q_c about 0.45 N MPa in sand";
    valid "SPT N 0 to 50";
    value |s| s.cone_resistance_per_blow * s.blows * (FRAC_PI_4 * s.diameter * s.diameter);

    /// End resistance of the pilot stem in clay: bearing factor times undrained strength, the strength taken from
    /// the SPT: `F = f s N (pi/4) d²`.
    PilotTipInClay "pilot tip resistance in clay" {
        /// End bearing factor on undrained strength.
        bearing_factor "f": Ratio as Ratio,
        /// Undrained strength per SPT blow.
        strength_per_blow "s": Pressure as UnitFriction,
        /// SPT N.
        blows "N": Ratio as Count [>= 0.0 <= 50.0],
        /// Tip diameter.
        diameter "d": Length as Diameter,
    } -> Force as Thrust;
    form "F = bearing_factor strength_per_blow blows (pi/4) diameter^2";
    from Judgement "jackpull" "end bearing of a driven tip, 9 to 12 times undrained strength";
    valid "SPT N 0 to 50";
    value |s| s.bearing_factor * s.strength_per_blow * s.blows * (FRAC_PI_4 * s.diameter * s.diameter);

    /// End resistance of the pilot stem in clay of a known strength: `F = f s_u (pi/4) d²`.
    PilotTipByStrength "pilot tip resistance in clay of known strength" {
        /// End bearing factor on undrained strength.
        bearing_factor "f": Ratio as Ratio,
        /// Undrained strength.
        strength "s_u": Pressure as UnitFriction [> 0.0],
        /// Tip diameter.
        diameter "d": Length as Diameter,
    } -> Force as Thrust;
    form "F = bearing_factor strength (pi/4) diameter^2";
    from Judgement "jackpull" "end bearing of a driven tip, 9 to 12 times undrained strength";
    valid "strength positive";
    value |s| s.bearing_factor * s.strength * (FRAC_PI_4 * s.diameter * s.diameter);

    /// Face resistance of a slurry or mud machine, Japanese form: earth pressure by blow count and slurry over water,
    /// on the whole face: `F = (pi/4) D² (p N + p_w + dp)`, N no more than its most.
    ///
    /// ```
    /// // 1.24 m, N 20, water 60 kPa and 20 kPa over it: 193.2 kN.
    /// use jackpull::law::Law;
    /// use jackpull::laws::thrust::SlurryFace;
    /// use jackpull::quantity::{Force, FromText, Length, Pressure, Ratio};
    /// let face = SlurryFace {
    ///     pressure_per_blow: Pressure::from_text("4 kPa")?,
    ///     blows: Ratio::from_text("20")?,
    ///     blows_most: Ratio::from_text("50")?,
    ///     water_pressure: Pressure::from_text("60 kPa")?,
    ///     slurry_over_water: Pressure::from_text("20 kPa")?,
    ///     cut_diameter: Length::from_text("1.24 m")?,
    /// };
    /// assert!((face.value() - Force::from_text("193.2 kN")?).abs() < Force::from_text("50 N")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    SlurryFace "face resistance of a slurry machine" {
        /// Earth pressure per blow (4 kPa).
        pressure_per_blow "p": Pressure as UnitFriction [>= 0.0],
        /// Blow count.
        blows "N": Ratio as Count [>= 0.0],
        /// Blow count beyond which the pressure does not grow (50).
        blows_most "N_max": Ratio as Count [>= 0.0],
        /// Pressure of the groundwater.
        water_pressure "p_w": Pressure as UnitFriction [>= 0.0],
        /// Pressure of the slurry over that of the water (20 kPa).
        slurry_over_water "dp": Pressure as UnitFriction [>= 0.0],
        /// Diameter that is cut.
        cut_diameter "D": Length as Diameter [>= 0.0],
    } -> Force as Thrust;
    form "F = (pi/4) cut_diameter^2 (pressure_per_blow min(blows, blows_most) + water_pressure + slurry_over_water)";
    from Memory "japan_sewage_guide" "face term, slurry and mud machines";
    valid "no argument negative";
    value |s| {
        let earth = s.pressure_per_blow * s.blows.min(s.blows_most);
        (earth + s.water_pressure + s.slurry_over_water) * (FRAC_PI_4 * s.cut_diameter * s.cut_diameter)
    };

    /// Resistance of an open cutting edge, Chinese code: `F = pi (D - t) t R`.
    CuttingEdge "resistance of a cutting edge" {
        /// Pressure under the edge (500 kPa).
        pressure "R": Pressure as UnitFriction [>= 0.0],
        /// Diameter that is cut.
        cut_diameter "D": Length as Diameter,
        /// Thickness of the edge.
        thickness "t": Length as Wall [> 0.0],
    } -> Force as Thrust;
    form "F = pi (cut_diameter - thickness) thickness pressure";
    from Memory "gb_50268" "clause 6.3.4, Table 6.3.4-1, open face with a cutting ring";
    valid "edge positive and thinner than half the diameter, pressure not negative"
        if |v| 2.0 * v.thickness < v.cut_diameter;
    value |s| s.pressure * (PI * (s.cut_diameter - s.thickness) * s.thickness);

    /// Face term of a hand or cutting-edge shield, Japanese form: `F = pi q D N'`.
    ///
    /// ```
    /// // 1.2 m in sand: 124.4 kN.
    /// use jackpull::law::Law;
    /// use jackpull::laws::thrust::OpenShieldFace;
    /// use jackpull::quantity::{Force, FromText, Length, LineLoad, Ratio};
    /// let face = OpenShieldFace {
    ///     line_load: LineLoad::from_text("13.2 kN/m")?,
    ///     cut_diameter: Length::from_text("1.2 m")?,
    ///     index: Ratio::from_text("2.5")?,
    /// };
    /// assert!((face.value() - Force::from_text("124.4 kN")?).abs() < Force::from_text("50 N")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    OpenShieldFace "face resistance of an open shield" {
        /// Force per length of the rim (13.2 kN/m).
        line_load "q": LineLoad as LineWeight [>= 0.0],
        /// Diameter that is cut.
        cut_diameter "D": Length as Diameter [>= 0.0],
        /// Index of the ground (1.0 ordinary, 2.5 sand, 3.0 hard ground or gravel; no blow count).
        index "N'": Ratio as Ratio [>= 0.0],
    } -> Force as Thrust;
    form "F = pi line_load cut_diameter index";
    from Memory "japan_sewage_guide" "jacking force, hand or cutting-edge shield, face term";
    valid "no argument negative";
    value |s| s.line_load * (PI * s.cut_diameter * s.index);
}
