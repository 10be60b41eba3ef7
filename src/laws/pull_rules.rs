//! Short rules for a pull: small drilling rigs, a dry host pipe, a collapsed bore, and the smaller of two bores.

use crate::law::law;
use crate::quantity::{Angle, Force, Length, LineLoad, Pressure, Ratio, UnitWeight};
use crate::source::{Equation, Mark};
use core::f64::consts::{FRAC_PI_4, PI};

/// Growth of the pull over a bend of 90 deg, the rounded exp(0.3 pi/2) of Eq. 5.18 (Najafi 2010, p. 221).
const PER_BEND: f64 = 1.6;
/// Most bends of 90 deg that the rule is used with: a bore that turns further is no small straight crossing (ours).
const MOST_BENDS: f64 = 4.0;
/// Bore per unplanned bend of 90 deg, 500 ft, and the drill rod it is for, 2 in (Eq. 5.20 and 5.21, p. 222).
const RUN_PER_BEND: f64 = 500.0 * 0.3048;
const ROD_OF_RUN: f64 = 2.0 * 0.0254;

law! {
    /// Peak pull of an empty PE pipe with a small drilling rig: `T = (L |w_b| / 3) 1.6^n`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | L | `bore_length` | length |
    /// | w_b | `net_weight` (in slurry of specific gravity 1.5) | force per length |
    /// | n | `bends` of 90 deg, planned and unplanned; two of 45 deg are one | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** bores of up to 600 ft and four bends in
    /// sum. Not to be used alone: the full chain with the same inputs is 5 to 12 % higher, and in light fluid the pull
    /// at the entry governs, which this rule does not see. Its limit is half of what the pipe bears,
    /// [`SmallRigPullLimit`].
    SmallRigPull {
        /// Length of the bore.
        bore_length: Length as Distance,
        /// Net weight in the fluid.
        net_weight: LineLoad as LineWeight,
        /// Bends, counted in bends of 90 deg.
        bends: Ratio as Count,
    } -> Force as Pull
    { Equation {
        name: "pull of a small drilling rig",
        form: "T = (bore_length |net_weight| / 3) 1.6^bends",
        source: "ttp_2010",
        locator: "eq. 5.15 and 5.18, p. 220-221 (friction 0.5 outside and 0.3 inside, 20 deg at both ends)",
        mark: Mark::Published,
        valid: "bore up to 600 ft, 0 to 4 bends",
    } }
    valid |v| (0.0..=SMALL_BORE).contains(&v.bore_length.value) && (0.0..=MOST_BENDS).contains(&v.bends.value);
    value |s| s.bore_length * s.net_weight.abs() / 3.0 * PER_BEND.powf(s.bends.value);
}

/// Longest bore of small drilling rigs, 600 ft (plastic pipe association page on small drilling).
const SMALL_BORE: f64 = 600.0 * 0.3048;

law! {
    /// Bends that come about unplanned, in bends of 90 deg: `n = (L / 500 ft) (2 in / d)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | L | `bore_length` | length |
    /// | d | `rod_diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** rods of 1 to 6 in.
    ///
    /// ```
    /// // A rod of 4 in: one bend of 90 deg in 1,000 ft.
    /// use jackpull::law::Law;
    /// use jackpull::laws::pull_rules::UnplannedBends;
    /// use jackpull::quantity::{FromText, Length};
    /// let bends = UnplannedBends {
    ///     bore_length: Length::from_text("1000 ft")?,
    ///     rod_diameter: Length::from_text("4 in")?,
    /// };
    /// assert!((bends.value().value - 1.0).abs() < 1e-9);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    UnplannedBends {
        /// Length of the bore.
        bore_length: Length as Distance,
        /// Diameter of the drill rod.
        rod_diameter: Length as Diameter,
    } -> Ratio as Count
    { Equation {
        name: "unplanned bends",
        form: "n = (bore_length / 500 ft) (2 in / rod_diameter)",
        source: "ttp_2010",
        locator: "eq. 5.20 and 5.21, p. 222 (number of the second inferred)",
        mark: Mark::Published,
        valid: "rod 1 to 6 in, length not negative",
    } }
    valid |v| v.bore_length.value >= 0.0
        && (0.5 * ROD_OF_RUN..=3.0 * ROD_OF_RUN).contains(&v.rod_diameter.value);
    value |s| Ratio::from(s.bore_length.value / RUN_PER_BEND * (ROD_OF_RUN / s.rod_diameter.value));
}

law! {
    /// Pull that the rule for small rigs may reach: `F = k F_allow`, k about one half.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | F_allow | `allowable` pull of the pipe | force |
    /// | k | `share` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION); the share is a row of table `pull_rule`.
    /// **Valid for** shares up to 1. Part of [`SmallRigPull`]: neither is used without the other.
    SmallRigPullLimit {
        /// Allowable pull of the pipe.
        allowable: Force as Pull,
        /// Share of it.
        share: Ratio as Ratio,
    } -> Force as Pull
    { Equation {
        name: "limit of the small rig rule",
        form: "F = share allowable",
        source: "ttp_2010",
        locator: "p. 224: peak of at most about half of the safe pull strength; no margin asked of large rigs",
        mark: Mark::Published,
        valid: "share above 0 and at most 1",
    } }
    valid |v| v.share.value > 0.0 && v.share.value <= 1.0 && v.allowable.value >= 0.0;
    value |s| s.share * s.allowable;
}

law! {
    /// Longest straight pull of an empty pipe through a dry host pipe:
    /// `l = s f_S / (gamma (mu cos(phi) + sin(phi)))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s | `stress` | pressure |
    /// | f_S | `weld_factor` | ratio |
    /// | gamma | `unit_weight` of the pipe material | force per volume |
    /// | mu | `friction` | ratio |
    /// | phi | `rise` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION); the pictures of the formula were missing, its form
    /// follows from the list of symbols. **Valid for** a dry hole and slopes from 0 to 45 deg. In slurry the net uplift
    /// is 4 to 10 times the own weight, and the length that much shorter.
    LongestDryPull {
        /// Allowable stress.
        stress: Pressure as Strength,
        /// Factor of the welds.
        weld_factor: Ratio as Ratio,
        /// Unit weight of the material.
        unit_weight: UnitWeight as UnitWeight,
        /// Friction coefficient.
        friction: Ratio as Ratio,
        /// Slope, positive uphill.
        rise: Angle as Angle,
    } -> Length as Distance
    { Equation {
        name: "longest pull through a dry host pipe",
        form: "l = stress weld_factor / (unit_weight (friction cos(rise) + sin(rise)))",
        source: "stein_2001",
        locator: "formula 5.3.2.6.3.1.1.1-3, whose picture was missing: worked out from its list of symbols and the printed lengths",
        mark: Mark::Judgement,
        valid: "dry hole, friction and unit weight positive, slope 0 to 45 deg",
    } }
    valid |v| v.friction.value > 0.0 && v.unit_weight.value > 0.0 && (0.0..=FRAC_PI_4).contains(&v.rise.value);
    value |s| s.stress * s.weld_factor / (s.unit_weight * (s.friction * s.rise.cos() + s.rise.sin()));
}

law! {
    /// Pull against ground that has fallen on the pipe, an upper bound: the full column of soil on the whole
    /// circumference, `T = gamma d pi D L mu`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | gamma | `unit_weight` of the soil | force per volume |
    /// | d | `cover` | length |
    /// | D | `outside_diameter` | length |
    /// | L | `collapsed_length` | length |
    /// | mu | `friction` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION), written for pipe bursting over the whole length.
    /// **Valid for** a length that the engineer names as collapsed. The planning guide beside it keeps a ninth of this
    /// and could not be read in full, so it is not offered.
    GroundLoadPull {
        /// Unit weight of the soil.
        unit_weight: UnitWeight as UnitWeight,
        /// Depth of cover.
        cover: Length as Depth,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Length over which the bore has collapsed.
        collapsed_length: Length as Distance,
        /// Friction of the pipe in soil.
        friction: Ratio as Ratio,
    } -> Force as Pull
    { Equation {
        name: "pull in a collapsed bore, upper bound",
        form: "T = unit_weight cover pi outside_diameter collapsed_length friction",
        source: "ttp_2010",
        locator: "eq. 6.3, p. 270",
        mark: Mark::Published,
        valid: "no argument negative",
    } }
    valid |v| v.unit_weight.value >= 0.0
        && v.cover.value >= 0.0
        && v.outside_diameter.value >= 0.0
        && v.collapsed_length.value >= 0.0
        && v.friction.value >= 0.0;
    value |s| s.unit_weight * s.cover * (PI * s.outside_diameter * s.collapsed_length) * s.friction;
}

law! {
    /// Final bore by the lesser of two rules: `D_b = min(k D, D + a)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` (of pipe or coupling, the larger) | length |
    /// | k | `times` | ratio |
    /// | a | `plus` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION): 1.5 and 12 in. **Valid for** k of at least 1. Below 8
    /// in it keeps the city's 1.5 times, where the guidelines' pipe plus 4 in does not; above 24 in both agree.
    LesserBore {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Multiple of the outside diameter.
        times: Ratio as Ratio,
        /// Added to the outside diameter.
        plus: Length as Diameter,
    } -> Length as Diameter
    { Equation {
        name: "final bore, lesser of two rules",
        form: "D_b = min(times outside_diameter, outside_diameter + plus)",
        source: "asce_mop_108",
        locator: "bore diameter, lesser of 1.5 times the pipe and the pipe plus 12 in",
        mark: Mark::Memory,
        valid: "multiple at least 1, addition not negative",
    } }
    valid |v| v.times.value >= 1.0 && v.plus.value >= 0.0;
    value |s| {
        let (one, other) = (s.times * s.outside_diameter, s.outside_diameter + s.plus);
        if one < other { one } else { other }
    };
}
