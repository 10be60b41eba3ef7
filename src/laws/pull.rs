//! Pull force of a long pipe in a straight bore on grade, and the bore it needs.

use crate::law::law;
use crate::quantity::unit::STANDARD_GRAVITY;
use crate::quantity::{Angle, Force, Length, LineLoad, MassDensity, Measure, Pressure, Ratio};
use crate::source::{Equation, Mark};
use core::f64::consts::{FRAC_PI_4, PI};
use uom::si::f64::Acceleration;

/// Bore over pipe below which the pipe no longer runs free: the least clearance of a casing round a carrier pipe in a
/// railway crossing specification (published), used here by judgement.
const TIGHTEST: f64 = 1.1;

fn gravity() -> Acceleration {
    Acceleration::from_si(STANDARD_GRAVITY)
}

law! {
    /// Weight of an empty pipe per length: `w = a pi (D - t) t rho g`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | t | `wall` | length |
    /// | rho | `density` | mass density |
    /// | a | `average_wall` (average over minimum wall) | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a wall below half the outside diameter.
    /// The average wall is adverse for the string on the ground only; in fluid the lighter pipe floats harder.
    PipeWeight {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Minimum wall.
        wall: Length as Wall,
        /// Density of the material.
        density: MassDensity as Density,
        /// Average over minimum wall.
        average_wall: Ratio as Ratio,
    } -> LineLoad as LineWeight
    { Equation {
        name: "weight of the empty pipe",
        form: "w = average_wall pi (outside_diameter - wall) wall density g",
        source: "astm_f1962_1999",
        locator: "pipe weight equation, with wall as diameter over dimension ratio",
        mark: Mark::Memory,
        valid: "wall positive and below half the outside diameter",
    } }
    valid |v| v.wall.value > 0.0 && 2.0 * v.wall < v.outside_diameter;
    value |s| s.average_wall * (PI * (s.outside_diameter - s.wall) * s.wall * s.density * gravity());
}

law! {
    /// Weight of a pipe less what it displaces, per length, positive downwards:
    /// `w_n = w + (pi/4) d² rho_c g - (pi/4) D² rho_f g`, d = D - 2 t.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | w | `pipe_weight` | force per length |
    /// | D | `outside_diameter` | length |
    /// | t | `wall` | length |
    /// | rho_f | `fluid_density` (around the pipe) | mass density |
    /// | rho_c | `contents_density` (0: empty) | mass density |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a wall below half the outside diameter.
    NetWeightInFluid {
        /// Weight of the empty pipe.
        pipe_weight: LineLoad as LineWeight,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Wall.
        wall: Length as Wall,
        /// Density of the fluid in the bore.
        fluid_density: MassDensity as Density,
        /// Density of what fills the pipe; 0 when it is empty.
        contents_density: MassDensity as Density,
    } -> LineLoad as LineWeight
    { Equation {
        name: "net weight in the bore fluid (down positive)",
        form: "w_n = pipe_weight + (pi/4) (outside_diameter - 2 wall)^2 contents_density g \
               - (pi/4) outside_diameter^2 fluid_density g",
        source: "astm_f1962_1999",
        locator: "buoyant weight, empty and filled; the empty form with a fluid of 1.5 is TTP eq. 5.22, p. 222",
        mark: Mark::Memory,
        valid: "wall positive and below half the outside diameter, densities not negative",
    } }
    valid |v| v.wall.value > 0.0
        && 2.0 * v.wall < v.outside_diameter
        && v.fluid_density.value >= 0.0
        && v.contents_density.value >= 0.0;
    value |s| {
        let bore = s.outside_diameter - 2.0 * s.wall;
        s.pipe_weight + FRAC_PI_4 * bore * bore * s.contents_density * gravity()
            - FRAC_PI_4 * s.outside_diameter * s.outside_diameter * s.fluid_density * gravity()
    };
}

law! {
    /// Pull force over a straight length: friction of the net weight, whichever way it acts, and the weight
    /// component along the slope: `F = L (mu |w| cos(phi) + w sin(phi))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | mu | `friction` | ratio |
    /// | w | `net_weight` (down positive) | force per length |
    /// | L | `length` | length |
    /// | phi | `rise` (positive: the pull goes uphill) | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** slopes up to 45 deg either way.
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
    StraightPull {
        /// Friction coefficient.
        friction: Ratio as Ratio,
        /// Net weight, down positive.
        net_weight: LineLoad as LineWeight,
        /// Length pulled.
        length: Length as Distance,
        /// Slope, positive when the pull goes uphill.
        rise: Angle as Angle,
    } -> Force as Pull
    { Equation {
        name: "pull over a straight length",
        form: "F = length (friction |net_weight| cos(rise) + net_weight sin(rise))",
        source: "hdd_utility_2005",
        locator: "eq. 7-4 for the level pull; the slope term is statics, as in STEIN 5.3.2.6.3.1.1.1",
        mark: Mark::Published,
        valid: "friction and length not negative, slope within 45 deg",
    } }
    valid |v| v.friction.value >= 0.0 && v.length.value >= 0.0 && v.rise.value.abs() <= FRAC_PI_4;
    value |s| s.length * (s.friction * s.net_weight.abs() * s.rise.cos() + s.net_weight * s.rise.sin());
}

law! {
    /// Tension after a bend: `T2 = T1 exp(mu theta)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | T1 | `tension` | force |
    /// | mu | `friction` | ratio |
    /// | theta | `angle` (sum of the bends) | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** bends up to half a turn in sum.
    Capstan {
        /// Tension before the bend.
        tension: Force as Pull,
        /// Friction coefficient.
        friction: Ratio as Ratio,
        /// Angle turned.
        angle: Angle as Angle,
    } -> Force as Pull
    { Equation {
        name: "tension after bends",
        form: "T2 = tension exp(friction angle)",
        source: "ttp_2010",
        locator: "eq. 5.13, p. 219",
        mark: Mark::Published,
        valid: "angle 0 to 180 deg, friction not negative",
    } }
    valid |v| (0.0..=PI).contains(&v.angle.value) && v.friction.value >= 0.0;
    value |s| s.tension * (s.friction.value * s.angle.value).exp();
}

law! {
    /// Increase of pull from the pressure that drives the fluid out along the annulus:
    /// `dT = dP (pi/8) (D_b² - D²)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | dP | `pressure` | pressure |
    /// | D_b | `bore` | length |
    /// | D | `outside_diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a bore of at least
    /// 1.1 pipe diameters: in a tighter one beads and couplings bind, which the form does not know.
    HydrokineticDrag {
        /// Pressure in the annulus.
        pressure: Pressure as Pressure,
        /// Bore diameter.
        bore: Length as Diameter,
        /// Outside diameter of the pipe.
        outside_diameter: Length as Diameter,
    } -> Force as Pull
    { Equation {
        name: "hydrokinetic drag",
        form: "dT = pressure (pi/8) (bore^2 - outside_diameter^2)",
        source: "astm_f1962_1999",
        locator: "hydrokinetic increment, sec. 8",
        mark: Mark::Memory,
        valid: "bore at least 1.1 outside diameters, pressure not negative",
    } }
    valid |v| v.bore >= TIGHTEST * v.outside_diameter && v.pressure.value >= 0.0;
    value |s| s.pressure * (0.5 * FRAC_PI_4 * (s.bore * s.bore - s.outside_diameter * s.outside_diameter));
}

law! {
    /// Pull with the model factor of small rigs: `T = k T_model`. Of some fifty measured pulls those of small rigs
    /// lay above their predictions.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | T_model | `pull` | force |
    /// | k | `factor` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** factors of at least 1.
    PullWithModelFactor {
        /// Pull by the model.
        pull: Force as Pull,
        /// Model factor.
        factor: Ratio as Ratio,
    } -> Force as Pull
    { Equation {
        name: "pull with model factor",
        form: "T = factor pull",
        source: "jackpull",
        locator: "small rigs pull harder than predicted (parametric study of 2015, no factor printed)",
        mark: Mark::Judgement,
        valid: "factor at least 1",
    } }
    valid |v| v.factor.value >= 1.0;
    value |s| s.factor * s.pull;
}

law! {
    /// Final bore of a pulled pipe by a trade rule: `D_b = k D + a`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` (of pipe or coupling, the larger) | length |
    /// | k | `times` | ratio |
    /// | a | `plus` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION); the rows of table `bore_rule` hold k and a.
    /// **Valid for** k at least 1.
    FinalBore {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Multiple of the outside diameter.
        times: Ratio as Ratio,
        /// Added to it.
        plus: Length as Diameter,
    } -> Length as Diameter
    { Equation {
        name: "final bore",
        form: "D_b = times outside_diameter + plus",
        source: "hdd_utility_2005",
        locator: "ch. 1, Fig. 1-6 page: generally 1.5 times the pipe",
        mark: Mark::Published,
        valid: "multiple at least 1, addition not negative",
    } }
    valid |v| v.times.value >= 1.0 && v.plus.value >= 0.0;
    value |s| s.times * s.outside_diameter + s.plus;
}

law! {
    /// Largest bore that one reaming pass makes by habit: `max(n d, d + s)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | d | `bore_before` | length |
    /// | n | `ratio` | ratio |
    /// | s | `step` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a ratio of 1 and more. Two habits, one for soft
    /// ground and one for large bores; which of them rules a middling bore is not told, so the larger is taken.
    ReamedBore {
        /// Bore before the pass.
        bore_before: Length as Diameter,
        /// New over old bore.
        ratio: Ratio as Ratio,
        /// New less old bore.
        step: Length as Diameter,
    } -> Length as Diameter
    { Equation {
        name: "bore after one reaming pass",
        form: "D = max(ratio bore_before, bore_before + step)",
        source: "trade_practice",
        locator: "reaming steps: ratio in soft ground, step in large bores; that the larger counts is ours",
        mark: Mark::CommonPractice,
        valid: "ratio 1 and more, the rest not negative",
    } }
    valid |v| v.ratio.value >= 1.0 && v.step.value >= 0.0 && v.bore_before.value >= 0.0;
    value |s| (s.bore_before * s.ratio).max(s.bore_before + s.step);
}
