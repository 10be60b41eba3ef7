//! Pull force of a long pipe in a straight bore on grade, and the bore it needs.

use crate::law::laws;
use crate::laws::soil::gravity;
use crate::quantity::{Angle, Force, Length, LineLoad, MassDensity, Pressure, Ratio};
use core::f64::consts::{FRAC_PI_4, PI};

/// Bore over pipe below which the pipe no longer runs free: the least clearance of a casing round a carrier pipe in a
/// railway crossing specification (published), used here by judgement.
const TIGHTEST: f64 = 1.1;

laws! {
    /// Weight of an empty pipe per length: `w = a pi (D - t) t rho g`.
    ///
    /// The average wall is adverse for the string on the ground only; in fluid the lighter pipe floats harder.
    PipeWeight "weight of the empty pipe" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Minimum wall.
        wall "t": Length as Wall [> 0.0],
        /// Density of the material.
        density "rho": MassDensity as Density,
        /// Average over minimum wall.
        average_wall "a": Ratio as Ratio,
    } -> LineLoad as LineWeight;
    form "w = average_wall pi (outside_diameter - wall) wall density g";
    from Memory "astm_f1962_1999" "pipe weight equation, with wall as diameter over dimension ratio";
    valid "wall positive and below half the outside diameter"
        if |v| 2.0 * v.wall < v.outside_diameter;
    value |s| s.average_wall * (PI * (s.outside_diameter - s.wall) * s.wall * s.density * gravity());

    /// Weight of a pipe less what it displaces, per length, positive downwards:
    /// `w_n = w + (pi/4) d² rho_c g - (pi/4) D² rho_f g`, d = D - 2 t.
    NetWeightInFluid "net weight in the bore fluid (down positive)" {
        /// Weight of the empty pipe.
        pipe_weight "w": LineLoad as LineWeight,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
        /// Density of the fluid in the bore (around the pipe).
        fluid_density "rho_f": MassDensity as Density [>= 0.0],
        /// Density of what fills the pipe; 0 when it is empty.
        contents_density "rho_c": MassDensity as Density [>= 0.0],
    } -> LineLoad as LineWeight;
    form "w_n = pipe_weight + (pi/4) (outside_diameter - 2 wall)^2 contents_density g \
          - (pi/4) outside_diameter^2 fluid_density g";
    from Memory "astm_f1962_1999"
        "buoyant weight, empty and filled; the empty form with a fluid of 1.5 is TTP eq. 5.22, p. 222";
    valid "wall positive and below half the outside diameter, densities not negative"
        if |v| 2.0 * v.wall < v.outside_diameter;
    value |s| {
        let bore = s.outside_diameter - 2.0 * s.wall;
        s.pipe_weight + FRAC_PI_4 * bore * bore * s.contents_density * gravity()
            - FRAC_PI_4 * s.outside_diameter * s.outside_diameter * s.fluid_density * gravity()
    };

    /// Pull force over a straight length: friction of the net weight, whichever way it acts, and the weight
    /// component along the slope: `F = L (mu |w| cos(phi) + w sin(phi))`.
    ///
    /// ```
    /// // A level pull is friction coefficient times net weight times length.
    /// use jackpull::law::Law;
    /// use jackpull::laws::pull::StraightPull;
    /// use jackpull::quantity::{Angle, Force, FromText, Length, LineLoad, Ratio};
    /// let pull = StraightPull {
    ///     friction: Ratio::from_text("0.3")?,
    ///     net_weight: LineLoad::from_text("-1 kN/m")?,
    ///     length: Length::from_text("100 m")?,
    ///     rise: Angle::from_text("0 deg")?,
    /// };
    /// assert!((pull.value() - Force::from_text("30 kN")?).abs() < Force::from_text("1 N")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    StraightPull "pull over a straight length" {
        /// Friction coefficient.
        friction "mu": Ratio as Ratio [>= 0.0],
        /// Net weight, down positive.
        net_weight "w": LineLoad as LineWeight,
        /// Length pulled.
        length "L": Length as Distance [>= 0.0],
        /// Slope, positive when the pull goes uphill.
        rise "phi": Angle as Angle,
    } -> Force as Pull;
    form "F = length (friction |net_weight| cos(rise) + net_weight sin(rise))";
    from Published "hdd_utility_2005"
        "eq. 7-4 for the level pull; the slope term is statics, as in STEIN 5.3.2.6.3.1.1.1";
    valid "friction and length not negative, slope within 45 deg"
        if |v| v.rise.value.abs() <= FRAC_PI_4;
    value |s| s.length * (s.friction * s.net_weight.abs() * s.rise.cos() + s.net_weight * s.rise.sin());

    /// Pull on the pipe: the string outside, the pipe in the bore and the drag of the fluid.
    PipePull "pull on the pipe" {
        /// Pull of the string outside the bore.
        tail "T_out": Force as Pull,
        /// Pull of the pipe inside it.
        inside "T_in": Force as Pull,
        /// Drag of the bore fluid.
        drag "T_d": Force as Pull,
    } -> Force as Pull;
    form "F = tail + inside + drag";
    from Judgement "jackpull" "statics: the sum of what resists";
    valid "any forces" if |v| v.tail.value.is_finite();
    value |s| s.tail + s.inside + s.drag;

    /// Tension after a bend: `T2 = T1 exp(mu theta)`.
    Capstan "tension after bends" {
        /// Tension before the bend.
        tension "T1": Force as Pull,
        /// Friction coefficient.
        friction "mu": Ratio as Ratio [>= 0.0],
        /// Angle turned (sum of the bends).
        angle "theta": Angle as Angle [>= 0.0 <= PI],
    } -> Force as Pull;
    form "T2 = tension exp(friction angle)";
    from Published "ttp_2010" "eq. 5.13, p. 219";
    valid "angle 0 to 180 deg, friction not negative";
    value |s| s.tension * (s.friction.value * s.angle.value).exp();

    /// Increase of pull from the pressure that drives the fluid out along the annulus:
    /// `dT = dP (pi/8) (D_b² - D²)`.
    ///
    /// In a bore of less than 1.1 diameters beads and couplings bind, which the form does not know.
    HydrokineticDrag "hydrokinetic drag" {
        /// Pressure in the annulus.
        pressure "dP": Pressure as Pressure [>= 0.0],
        /// Bore diameter.
        bore "D_b": Length as Diameter,
        /// Outside diameter of the pipe.
        outside_diameter "D": Length as Diameter,
    } -> Force as Pull;
    form "dT = pressure (pi/8) (bore^2 - outside_diameter^2)";
    from Memory "astm_f1962_1999" "hydrokinetic increment, sec. 8";
    valid "bore at least 1.1 outside diameters, pressure not negative"
        if |v| v.bore >= TIGHTEST * v.outside_diameter;
    value |s| s.pressure * (0.5 * FRAC_PI_4 * (s.bore * s.bore - s.outside_diameter * s.outside_diameter));

    /// Pull with the model factor of small rigs: `T = k T_model`. Of some fifty measured pulls those of small rigs
    /// lay above their predictions.
    PullWithModelFactor "pull with model factor" {
        /// Pull by the model.
        pull "T_model": Force as Pull,
        /// Model factor.
        factor "k": Ratio as Ratio [>= 1.0],
    } -> Force as Pull;
    form "T = factor pull";
    from Judgement "jackpull" "small rigs pull harder than predicted (parametric study of 2015, no factor printed)";
    valid "factor at least 1";
    value |s| s.factor * s.pull;

    /// Final bore of a pulled pipe by a trade rule: `D_b = k D + a`.
    ///
    /// The rows of table `bore_rule` hold k and a.
    FinalBore "final bore" {
        /// Outside diameter (of pipe or coupling, the larger).
        outside_diameter "D": Length as Diameter,
        /// Multiple of the outside diameter.
        times "k": Ratio as Ratio [>= 1.0],
        /// Added to it.
        plus "a": Length as Diameter [>= 0.0],
    } -> Length as Diameter;
    form "D_b = times outside_diameter + plus";
    from Published "hdd_utility_2005" "ch. 1, Fig. 1-6 page: generally 1.5 times the pipe";
    valid "multiple at least 1, addition not negative";
    value |s| s.times * s.outside_diameter + s.plus;

    /// Largest bore that one reaming pass makes by habit: `max(n d, d + s)`.
    ///
    /// Two habits, one for soft ground and one for large bores; which of them rules a middling bore is not told, so the
    /// larger is taken.
    ReamedBore "bore after one reaming pass" {
        /// Bore before the pass.
        bore_before "d": Length as Diameter [>= 0.0],
        /// New over old bore.
        ratio "n": Ratio as Ratio [>= 1.0],
        /// New less old bore.
        step "s": Length as Diameter [>= 0.0],
    } -> Length as Diameter;
    form "D = max(ratio bore_before, bore_before + step)";
    from CommonPractice "trade_practice"
        "reaming steps: ratio in soft ground, step in large bores; that the larger counts is ours";
    valid "ratio 1 and more, the rest not negative";
    value |s| (s.bore_before * s.ratio).max(s.bore_before + s.step);
}
