//! Room that the work needs: sides of a pit, cover, clear distance, the string laid out.

use crate::law::law;
use crate::quantity::{Length, Ratio};
use crate::source::{Equation, Mark};

law! {
    /// Side of a jacking pit: what has to fit in, and room beside it.
    ///
    /// | argument | for the width | for the length |
    /// |---|---|---|
    /// | `part` | outside diameter of the pipe | length of the pipe section |
    /// | `allowance` | 2,000 mm | 1,000 to 5,000 mm by plant |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** pipe to DN 1500; beyond, the site decides, and
    /// the longest section of the shield counts too.
    PitSide {
        /// What has to fit in.
        part: Length as Distance,
        /// Room beside it.
        allowance: Length as Distance,
    } -> Length as Distance
    { Equation {
        name: "side of a jacking pit",
        form: "side = part + allowance",
        source: "thomson_1993",
        locator: "chapter on drive and reception pits, abstract",
        mark: Mark::Published,
        valid: "part positive, allowance not negative; pipe to DN 1500",
    } }
    valid |v| v.part.value > 0.0 && v.allowance.value >= 0.0;
    value |s| s.part + s.allowance;
}

law! {
    /// Least cover: the larger of a length and a multiple of the pipe, `max(c, n D)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` (or bore, as the rule says) | length |
    /// | n | `times` | ratio |
    /// | c | `least` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** arguments not negative.
    LeastCover {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Multiple of it.
        times: Ratio as Ratio,
        /// Least in any case.
        least: Length as Depth,
    } -> Length as Depth
    { Equation {
        name: "least cover",
        form: "cover = max(least, times outside_diameter)",
        source: "asce_36",
        locator: "least cover, with state specifications",
        mark: Mark::Memory,
        valid: "arguments not negative",
    } }
    valid |v| v.outside_diameter.value >= 0.0 && v.times.value >= 0.0 && v.least.value >= 0.0;
    value |s| s.least.max(s.times * s.outside_diameter);
}

law! {
    /// Least clear distance to another line: the larger of a length and a multiple of the bore, `max(c, n D)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `diameter` (outside diameter jacked, bore drilled) | length |
    /// | n | `times` | ratio |
    /// | c | `least` (0 where the rule has none) | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** arguments not negative. The habit says the one
    /// or the other; the larger is the safer.
    ClearDistance {
        /// Diameter that the rule counts in.
        diameter: Length as Diameter,
        /// Multiple of it.
        times: Ratio as Ratio,
        /// Least in any case.
        least: Length as Depth,
    } -> Length as Depth
    { Equation {
        name: "clear distance",
        form: "clear = max(least, times diameter)",
        source: "trade_practice",
        locator: "clear distance of parallel bores and services",
        mark: Mark::CommonPractice,
        valid: "arguments not negative",
    } }
    valid |v| v.diameter.value >= 0.0 && v.times.value >= 0.0 && v.least.value >= 0.0;
    value |s| s.least.max(s.times * s.diameter);
}
