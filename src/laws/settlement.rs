//! Settlement over a bore: the trough that lost ground leaves at the surface or at the level of a crossed service.

use crate::law::law;
use crate::quantity::{Area, Length, Ratio};
use crate::source::{Equation, Mark};
use core::f64::consts::{FRAC_PI_4, PI};

law! {
    /// Half width of the trough, from its middle to the point of inflection: `i = K (z_0 - z)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | K | `ratio` | ratio |
    /// | z_0 | `axis_depth` (of the bore, below ground) | length |
    /// | z | `level` (below ground; 0 for the surface) | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a level above the axis. Run both ends of K:
    /// the low one gives the deepest and steepest trough, the high one the widest. Below the surface a constant K makes
    /// the trough too narrow in clay.
    ///
    /// ```
    /// // 30 m, K 0.5: 15 m at the surface and 12.5 m at a level of 5 m.
    /// use jackpull::law::Law;
    /// use jackpull::laws::settlement::TroughWidth;
    /// use jackpull::quantity::{FromText, Length, Ratio};
    /// for (level, printed) in [("0 m", "15 m"), ("5 m", "12.5 m")] {
    ///     let width = TroughWidth {
    ///         ratio: Ratio::from_text("0.5")?,
    ///         axis_depth: Length::from_text("30 m")?,
    ///         level: Length::from_text(level)?,
    ///     };
    ///     assert_eq!(width.value(), Length::from_text(printed)?);
    /// }
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    TroughWidth {
        /// Width over depth.
        ratio: Ratio as Ratio,
        /// Depth of the axis of the bore.
        axis_depth: Length as Depth,
        /// Level of the trough, below ground.
        level: Length as Depth,
    } -> Length as Distance
    { Equation {
        name: "width of the trough",
        form: "i = ratio (axis_depth - level)",
        source: "tbm_settlement_article",
        locator: "eq. 1 and the relation of width and depth; level by the worked example on the trough 5 m below ground",
        mark: Mark::Published,
        valid: "ratio above 0 and at most 1, level from 0 to less than the depth of the axis",
    } }
    valid |v| v.ratio.value > 0.0 && v.ratio.value <= 1.0 && v.level.value >= 0.0 && v.level < v.axis_depth;
    value |s| s.ratio * (s.axis_depth - s.level);
}

law! {
    /// Ground lost at the face and round the machine, per length of bore: `V_s = V_L pi D² / 4`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | V_L | `volume_loss` (share of the bore) | ratio |
    /// | D | `bore` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a share from 0 to 1. For a small pipe see
    /// [`AnnulusLoss`] too; the larger of the two counts.
    FaceLoss {
        /// Volume loss.
        volume_loss: Ratio as Percent,
        /// Diameter of the bore.
        bore: Length as Diameter,
    } -> Area as VolumePerLength
    { Equation {
        name: "ground lost at the face",
        form: "V = volume_loss pi bore^2 / 4",
        source: "trough_example_page",
        locator: "step 1 of the solution",
        mark: Mark::Published,
        valid: "volume loss 0 to 1, bore positive",
    } }
    valid |v| (0.0..=1.0).contains(&v.volume_loss.value) && v.bore.value > 0.0;
    value |s| s.volume_loss * FRAC_PI_4 * s.bore * s.bore;
}

law! {
    /// Ground lost into the annulus round the pipe, per length of bore: `V_s = x pi (D_b² - D²) / 4`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | x | `closed_share` | ratio |
    /// | D_b | `bore` | length |
    /// | D | `outside_diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a share from 0 to 1 and a bore no smaller than
    /// the pipe. All of it closes unless set fluid or grout holds it open.
    AnnulusLoss {
        /// Share of the annulus that closes.
        closed_share: Ratio as Percent,
        /// Diameter of the bore.
        bore: Length as Diameter,
        /// Outside diameter of the pipe.
        outside_diameter: Length as Diameter,
    } -> Area as VolumePerLength
    { Equation {
        name: "ground lost into the annulus",
        form: "V = closed_share pi (bore^2 - outside_diameter^2) / 4",
        source: "trade_practice",
        locator: "annulus of a small pipe as upper bound of the loss",
        mark: Mark::CommonPractice,
        valid: "share 0 to 1, bore no smaller than the pipe",
    } }
    valid |v| (0.0..=1.0).contains(&v.closed_share.value)
        && v.outside_diameter.value >= 0.0
        && v.outside_diameter <= v.bore;
    value |s| s.closed_share * FRAC_PI_4 * (s.bore * s.bore - s.outside_diameter * s.outside_diameter);
}

law! {
    /// Settlement in the middle of the trough: `s_max = V_s / (sqrt(2 pi) i)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | V_s | `lost_ground` (per length) | area |
    /// | i | `trough_width` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a positive width. All lost ground is taken to
    /// arrive, as in undrained clay; sand that loosens arrives with less, sand that is shaken dense with more.
    GreatestSettlement {
        /// Ground lost per length of bore.
        lost_ground: Area as VolumePerLength,
        /// Half width of the trough.
        trough_width: Length as Distance,
    } -> Length as Settlement
    { Equation {
        name: "greatest settlement",
        form: "s_max = lost_ground / (sqrt(2 pi) trough_width)",
        source: "trough_example_page",
        locator: "step 3 of the solution",
        mark: Mark::Published,
        valid: "lost ground not negative, width positive",
    } }
    valid |v| v.lost_ground.value >= 0.0 && v.trough_width.value > 0.0;
    value |s| s.lost_ground / ((2.0 * PI).sqrt() * s.trough_width);
}

law! {
    /// Settlement beside the line of the bore: `s = s_max exp(-y² / (2 i²))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s_max | `greatest_settlement` | length |
    /// | y | `offset` (across the line) | length |
    /// | i | `trough_width` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a positive width.
    SettlementAtOffset {
        /// Settlement over the line.
        greatest_settlement: Length as Settlement,
        /// Distance from the line.
        offset: Length as Distance,
        /// Half width of the trough.
        trough_width: Length as Distance,
    } -> Length as Settlement
    { Equation {
        name: "settlement beside the line",
        form: "s = greatest_settlement exp(-offset^2 / (2 trough_width^2))",
        source: "tbm_settlement_article",
        locator: "eq. 1",
        mark: Mark::Published,
        valid: "width positive",
    } }
    valid |v| v.trough_width.value > 0.0;
    value |s| {
        let across = (s.offset / s.trough_width).value;
        s.greatest_settlement * (-across * across / 2.0).exp()
    };
}

law! {
    /// Steepest slope of the trough, at its point of inflection: `s' = s_max / (i sqrt(e))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s_max | `greatest_settlement` | length |
    /// | i | `trough_width` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a positive width.
    SteepestTrough {
        /// Settlement over the line.
        greatest_settlement: Length as Settlement,
        /// Half width of the trough.
        trough_width: Length as Distance,
    } -> Ratio as Slope
    { Equation {
        name: "steepest slope of the trough",
        form: "slope = greatest_settlement / (trough_width sqrt(e))",
        source: "jackpull",
        locator: "slope of the trough of eq. 1 of the article on settlement where it turns",
        mark: Mark::Judgement,
        valid: "width positive",
    } }
    valid |v| v.trough_width.value > 0.0;
    value |s| s.greatest_settlement / s.trough_width * (-0.5_f64).exp();
}
