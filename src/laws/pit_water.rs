//! Water that comes up into a pit whose shoring ends in sand, and what the shoring below the floor is good for.

use crate::law::laws;
use crate::quantity::{Length, Ratio};

/// Share of the width of a pit to its head of water, and what the head at the toe is more by than between two endless
/// walls: a flow net of a round pit, coarse.
const ROUND: [(f64, f64); 3] = [(2.0 / 3.0, 2.0), (1.0, 1.8), (2.0, 1.5)];

laws! {
    /// Head that is left at the toe of the shoring of a pit, water flowing round the toe up to the floor:
    /// `h_t = h / (1 + (h/d + 1)^(1/3))`.
    ///
    /// Between two long walls, the water standing outside; in a pit more is left: see [`CrowdedFlow`].
    HeadAtToe "head left at the toe of the shoring" {
        /// Head of water outside over the floor.
        head "h": Length as Depth [> 0.0],
        /// Depth of the toe below the floor.
        toe "d": Length as Depth [> 0.0],
    } -> Length as Depth;
    form "h_t = head / (1 + (head/toe + 1)^(1/3))";
    from Judgement "jackpull" "plane flow round the toe of a wall, recalled of recommendations for waterfront structures";
    valid "head and toe positive";
    fails beyond |v| v.head.value > 0.0;
    value |s| if s.toe.value > 0.0 {
        s.head / (1.0 + (s.head / s.toe + Ratio::from(1.0)).value.cbrt())
    } else {
        s.head
    };

    /// How much more head is left at the toe where water comes to a pit from all sides: 1.5 in a pit twice as wide as the
    /// head, 1.8 in one as wide, 2.0 in one of two thirds and less; straight between.
    CrowdedFlow "more head at the toe in a pit" {
        /// Shorter side of the pit.
        width "B": Length as Distance [>= 0.0],
        /// Head of water outside over the floor.
        head "h": Length as Depth [> 0.0],
    } -> Ratio as Ratio;
    form "k = 1.5 at width = 2 head, 1.8 at width = head, 2.0 at width = 2/3 head and less";
    from Judgement "jackpull" "flow net of a round pit, worked out for this library";
    valid "head positive, width not negative";
    value |s| {
        let share = (s.width / s.head).value;
        let [(narrow, most), (square, middle), (wide, least)] = ROUND;
        let between = |from: (f64, f64), to: (f64, f64)| from.1 + (to.1 - from.1) * (share - from.0) / (to.0 - from.0);
        Ratio::from(if share <= narrow {
            most
        } else if share <= square {
            between((narrow, most), (square, middle))
        } else if share <= wide {
            between((square, middle), (wide, least))
        } else {
            least
        })
    };

    /// Safety of the floor of a pit in sand against boiling inside its shoring: `F = i_c d / (k h_t)`.
    BoilingInside "safety of the floor of a pit against boiling" {
        /// Critical gradient.
        critical_gradient "i_c": Ratio as Ratio [> 0.0],
        /// Depth of the toe below the floor.
        toe "d": Length as Depth [> 0.0],
        /// Head left at the toe.
        head_at_toe "h_t": Length as Depth [> 0.0],
        /// More of it in a pit.
        crowded "k": Ratio as Ratio [>= 1.0],
    } -> Ratio as Ratio;
    form "F = critical_gradient toe / (crowded head_at_toe)";
    from Memory "terzaghi_peck_1967" "boiling inside a row of sheet piles; recalled";
    valid "all positive, crowded at least 1";
    fails beyond |v| v.toe.value <= 0.0 && v.head_at_toe.value > 0.0;
    value |s| s.critical_gradient * s.toe / (s.crowded * s.head_at_toe);

    /// What shoring below the floor adds to the bearing factor of a base in clay: `2 a d (1/B + 1/L)`.
    ///
    /// The block of clay between the walls has to come up with the base, and holds to them on all four sides.
    WallsBelow "bearing factor by the walls below the floor" {
        /// Share of the undrained strength that holds to the walls.
        adhesion "a": Ratio as Ratio [>= 0.0],
        /// Depth of the toe below the floor.
        toe "d": Length as Depth [>= 0.0],
        /// Shorter side.
        width "B": Length as Distance [> 0.0],
        /// Longer side.
        length "L": Length as Distance [> 0.0],
    } -> Ratio as Ratio;
    form "gain = 2 adhesion toe (1/width + 1/length)";
    from Judgement "jackpull" "block of clay between the walls, held on its sides; statics";
    valid "sides positive, adhesion and toe not negative";
    value |s| 2.0 * s.adhesion * (s.toe / s.width + s.toe / s.length);
}
