//! A ring pressed on one side only: area and moment of the part of it on one side of a straight line. Bare numbers in
//! one unit of length; the laws of the turned joint put the units on.

use core::f64::consts::PI;

/// Smallest depth of contact over outside diameter. A thinner contact is a point, where concrete meets concrete and the
/// sums below lose digits; it is ours.
pub(super) const LEAST_CONTACT: f64 = 1.0 / 1000.0;

/// Steps of the search for a depth, far more than it takes.
const MOST_STEPS: usize = 60;

/// A ring by its radii.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ring {
    pub(super) outer: f64,
    pub(super) inner: f64,
}

/// Area of what is pressed, and its first moment about the line of zero stress.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pressed {
    pub(super) area: f64,
    pub(super) first: f64,
}

impl Ring {
    /// A ring of these diameters.
    pub(super) fn of(outside_diameter: f64, inside_diameter: f64) -> Self {
        Self { outer: outside_diameter / 2.0, inner: inside_diameter / 2.0 }
    }

    /// True for a ring with some width.
    pub(super) fn is_sound(self) -> bool {
        self.inner >= 0.0 && self.outer > self.inner
    }

    pub(super) fn area(self) -> f64 {
        PI * (self.outer - self.inner) * (self.outer + self.inner)
    }

    /// What lies within `depth` of the most pressed edge.
    pub(super) fn pressed(self, depth: f64) -> Pressed {
        let line = self.outer - depth;
        let (whole, hole) = (segment(self.outer, line), segment(self.inner, line));
        Pressed { area: whole.area - hole.area, first: whole.first - hole.first }
    }

    /// Mean over greatest stress, the mean over the whole ring; `radius_over_depth` is 0 for uniform stress.
    pub(super) fn mean_over_greatest(self, radius_over_depth: f64) -> f64 {
        if 2.0 * radius_over_depth <= 1.0 {
            // All of it is pressed: the stress at the centre.
            return 1.0 - radius_over_depth;
        }
        let depth = self.outer / radius_over_depth;
        if depth > 0.0 { (self.pressed(depth).first / (depth * self.area())).max(0.0) } else { 0.0 }
    }

    /// The depth of contact at which mean over greatest stress is `ratio`, below one half: Newton's step, or half the
    /// bracket where the step would leave it. The end of the bracket if there is none inside.
    pub(super) fn depth_at_ratio(self, ratio: f64) -> f64 {
        let area = self.area();
        let (mut low, mut high) = (2.0 * self.outer * LEAST_CONTACT, 2.0 * self.outer);
        let mut depth = high;
        for _ in 0..MOST_STEPS {
            let pressed = self.pressed(depth);
            let now = pressed.first / (depth * area);
            let (value, slope) = (now - ratio, (pressed.area / area - now) / depth);
            if value > 0.0 {
                high = depth;
            } else {
                low = depth;
            }
            let step = depth - value / slope;
            let next = if step > low && step < high { step } else { low + (high - low) / 2.0 };
            let moved = (next - depth).abs();
            depth = next;
            if moved <= f64::EPSILON * depth {
                break;
            }
        }
        depth
    }
}

/// The part of a disc beyond a line at `line` from its centre.
fn segment(radius: f64, line: f64) -> Pressed {
    if radius <= 0.0 || line >= radius {
        return Pressed { area: 0.0, first: 0.0 };
    }
    if line <= -radius {
        let area = PI * radius * radius;
        return Pressed { area, first: -line * area };
    }
    let half_angle = (line / radius).acos();
    let (sin, cos) = half_angle.sin_cos();
    let square = radius * radius;
    let area = square * (half_angle - sin * cos);
    // First moment about the centre.
    let lever = 2.0 / 3.0 * square * radius * sin * sin * sin;
    Pressed { area, first: lever - line * area }
}
