//! Settlement over a bore: the trough that lost ground leaves at the surface or at the level of a crossed service.

use crate::law::laws;
use crate::quantity::{Area, Length, Ratio};
use core::f64::consts::{FRAC_PI_4, PI};

laws! {
    /// Half width of the trough, from its middle to the point of inflection: `i = K (z_0 - z)`.
    ///
    /// Run both ends of K: the low one gives the deepest and steepest trough, the high one the widest. Below the
    /// surface a constant K makes the trough too narrow in clay.
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
    TroughWidth "width of the trough" {
        /// Width over depth.
        ratio "K": Ratio as Ratio [> 0.0 <= 1.0],
        /// Depth of the axis of the bore.
        axis_depth "z_0": Length as Depth,
        /// Level of the trough, below ground.
        level "z": Length as Depth [>= 0.0],
    } -> Length as Distance;
    form "i = ratio (axis_depth - level)";
    from Published "tbm_settlement_article"
        "eq. 1 and the relation of width and depth; level by the worked example on the trough 5 m below ground";
    valid "ratio above 0 and at most 1, level from 0 to less than the depth of the axis"
        if |v| v.level < v.axis_depth;
    value |s| s.ratio * (s.axis_depth - s.level);

    /// Half width of the trough below the ground at its widest: `i = 0.175 z_0 + 0.325 (z_0 - z)`.
    ///
    /// Found in clay; sand has narrower ones, so that it is the wide end of what may be beside a bore in any soil.
    WideTrough "width of the trough below ground, at its widest" {
        /// Depth of the axis of the bore.
        axis_depth "z_0": Length as Depth,
        /// Level of the trough, below ground.
        level "z": Length as Depth [>= 0.0],
        /// Diameter of the bore.
        bore "D": Length as Diameter [> 0.0],
    } -> Length as Distance;
    form "i = 0.175 axis_depth + 0.325 (axis_depth - level)";
    from Memory "mair_taylor_1997" "troughs below the ground, after Mair, Taylor and Bracegirdle 1993";
    valid "level one and a half diameters or more above the axis: nearer than that the ground moves towards the bore"
        if |v| v.axis_depth - v.level >= 1.5 * v.bore;
    value |s| 0.175 * s.axis_depth + 0.325 * (s.axis_depth - s.level);

    /// Ground lost at the face and round the machine, per length of bore: `V_s = V_L pi D² / 4`.
    ///
    /// For a small pipe see [`AnnulusLoss`] too; the larger of the two counts.
    FaceLoss "ground lost at the face" {
        /// Volume loss (share of the bore).
        volume_loss "V_L": Ratio as Percent [>= 0.0 <= 1.0],
        /// Diameter of the bore.
        bore "D": Length as Diameter [> 0.0],
    } -> Area as VolumePerLength;
    form "V = volume_loss pi bore^2 / 4";
    from Memory "mair_taylor_1997" "settlement over a tunnel as a normal curve";
    valid "volume loss 0 to 1, bore positive";
    value |s| s.volume_loss * FRAC_PI_4 * s.bore * s.bore;

    /// Ground lost into the annulus round the pipe, per length of bore: `V_s = x pi (D_b² - D²) / 4`.
    ///
    /// All of it closes unless set fluid or grout holds it open.
    AnnulusLoss "ground lost into the annulus" {
        /// Share of the annulus that closes.
        closed_share "x": Ratio as Percent [>= 0.0 <= 1.0],
        /// Diameter of the bore.
        bore "D_b": Length as Diameter,
        /// Outside diameter of the pipe.
        outside_diameter "D": Length as Diameter [>= 0.0],
    } -> Area as VolumePerLength;
    form "V = closed_share pi (bore^2 - outside_diameter^2) / 4";
    from CommonPractice "trade_practice" "annulus of a small pipe as upper bound of the loss";
    valid "share 0 to 1, bore no smaller than the pipe"
        if |v| v.outside_diameter <= v.bore;
    value |s| s.closed_share * FRAC_PI_4 * (s.bore * s.bore - s.outside_diameter * s.outside_diameter);

    /// Settlement in the middle of the trough: `s_max = V_s / (sqrt(2 pi) i)`.
    ///
    /// All lost ground is taken to arrive, as in undrained clay; sand that loosens arrives with less, sand that is
    /// shaken dense with more.
    GreatestSettlement "greatest settlement" {
        /// Ground lost per length of bore.
        lost_ground "V_s": Area as VolumePerLength [>= 0.0],
        /// Half width of the trough.
        trough_width "i": Length as Distance [> 0.0],
    } -> Length as Settlement;
    form "s_max = lost_ground / (sqrt(2 pi) trough_width)";
    from Memory "mair_taylor_1997" "settlement over a tunnel as a normal curve, volume of the trough";
    valid "lost ground not negative, width positive";
    value |s| s.lost_ground / ((2.0 * PI).sqrt() * s.trough_width);

    /// Settlement beside the line of the bore: `s = s_max exp(-y² / (2 i²))`.
    SettlementAtOffset "settlement beside the line" {
        /// Settlement over the line.
        greatest_settlement "s_max": Length as Settlement,
        /// Distance from the line.
        offset "y": Length as Distance,
        /// Half width of the trough.
        trough_width "i": Length as Distance [> 0.0],
    } -> Length as Settlement;
    form "s = greatest_settlement exp(-offset^2 / (2 trough_width^2))";
    from Published "tbm_settlement_article" "eq. 1";
    valid "width positive";
    value |s| {
        let across = (s.offset / s.trough_width).value;
        s.greatest_settlement * (-across * across / 2.0).exp()
    };

    /// Steepest slope of the trough, at its point of inflection: `s' = s_max / (i sqrt(e))`.
    SteepestTrough "steepest slope of the trough" {
        /// Settlement over the line.
        greatest_settlement "s_max": Length as Settlement,
        /// Half width of the trough.
        trough_width "i": Length as Distance [> 0.0],
    } -> Ratio as Slope;
    form "slope = greatest_settlement / (trough_width sqrt(e))";
    from Judgement "jackpull" "slope of the trough of eq. 1 of the article on settlement where it turns";
    valid "width positive";
    value |s| s.greatest_settlement / s.trough_width * (-0.5_f64).exp();

    /// Steepest slope along the line, over the face that goes by: `s' = s / (i sqrt(2 pi))`.
    ///
    /// Along the line the settlement grows as the sum of the normal curve does across it.
    SteepestAlong "steepest slope along the line" {
        /// Settlement once the face is far ahead.
        settlement "s": Length as Settlement,
        /// Half width of the trough.
        trough_width "i": Length as Distance [> 0.0],
    } -> Ratio as Slope;
    form "slope = settlement / (trough_width sqrt(2 pi))";
    from Judgement "jackpull" "slope of the cumulative normal curve along the line, where it is steepest";
    valid "width positive";
    value |s| s.settlement / (s.trough_width * (2.0 * PI).sqrt());
}
