//! Room that the work needs: sides of a pit, cover, clear distance, the string laid out.

use crate::law::laws;
use crate::quantity::{Length, Ratio};

laws! {
    /// Side of a jacking pit: what has to fit in, and room beside it.
    ///
    /// Beyond, the site decides, and the longest section of the shield counts too.
    PitSide "side of a jacking pit" {
        /// What has to fit in: for the width the outside diameter of the pipe, for the length the pipe section.
        part "l": Length as Distance [> 0.0],
        /// Room beside it: 2,000 mm on the width, 1,000 to 5,000 mm by plant on the length.
        allowance "a": Length as Distance [>= 0.0],
    } -> Length as Distance;
    form "side = part + allowance";
    from Published "thomson_1993" "chapter on drive and reception pits, abstract";
    valid "part positive, allowance not negative; pipe to DN 1500";
    value |s| s.part + s.allowance;

    /// Least cover: the larger of a length and a multiple of the pipe, `max(c, n D)`.
    LeastCover "least cover" {
        /// Outside diameter (or bore, as the rule says).
        outside_diameter "D": Length as Diameter [>= 0.0],
        /// Multiple of it.
        times "n": Ratio as Ratio [>= 0.0],
        /// Least in any case.
        least "c": Length as Depth [>= 0.0],
    } -> Length as Depth;
    form "cover = max(least, times outside_diameter)";
    from Memory "asce_36" "least cover, with state specifications";
    valid "arguments not negative";
    value |s| s.least.max(s.times * s.outside_diameter);

    /// Least clear distance to another line: the larger of a length and a multiple of the bore, `max(c, n D)`.
    ///
    /// The habit says the one or the other; the larger is the safer.
    ClearDistance "clear distance" {
        /// Diameter that the rule counts in (outside diameter jacked, bore drilled).
        diameter "D": Length as Diameter [>= 0.0],
        /// Multiple of it.
        times "n": Ratio as Ratio [>= 0.0],
        /// Least in any case (0 where the rule has none).
        least "c": Length as Depth [>= 0.0],
    } -> Length as Depth;
    form "clear = max(least, times diameter)";
    from CommonPractice "trade_practice" "clear distance of parallel bores and services";
    valid "arguments not negative";
    value |s| s.least.max(s.times * s.diameter);
}
