//! Where the water table crosses a bore, and the friction above and below it.

use crate::quantity::{Band, Length, Measure, Pressure};

/// Where the water stands at a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Water {
    /// At or below the invert.
    Below,
    /// Between invert and crown.
    Between,
    /// At or over the crown.
    Over,
}

/// Friction of a body above the water and below it.
#[derive(Debug, Clone, Copy)]
pub struct BySide {
    /// Above the water.
    pub(crate) dry: Band<Pressure>,
    /// Below it.
    pub(crate) wet: Band<Pressure>,
}

/// A stretch that the water table crosses. Where it stands between invert and crown the worse of both sides counts.
#[derive(Debug, Clone)]
pub struct Crossed {
    /// Depth of the water table.
    pub(crate) table: Length,
    /// Distance from the launch pit and invert depth at both ends and where the surface breaks between; even in between.
    pub(crate) path: Vec<(Length, Length)>,
    /// Of stem and casing.
    pub(crate) stem: BySide,
    /// Of a jacked pipe.
    pub(crate) pipe: BySide,
}

impl Crossed {
    /// Where the water stands at a place, against a bore as high as this.
    pub(crate) fn at(&self, place: Length, high: Length) -> Water {
        let invert = invert_at(&self.path, place);
        if invert <= self.table {
            Water::Below
        } else if invert - high >= self.table {
            Water::Over
        } else {
            Water::Between
        }
    }

    /// The first place from one towards another where the table meets the invert or the crown of a bore as high as this.
    pub(crate) fn first_meeting(&self, high: Length, from: Length, to: Length) -> Option<Length> {
        let pairs = self.path.len().saturating_sub(1);
        if to > from {
            let first = self.path.partition_point(|point| point.0 <= from).saturating_sub(1);
            (first..pairs).map_while(|pair| self.before(pair, to)).find_map(|pair| self.meeting(pair, high, from, to))
        } else {
            let last = self.path.partition_point(|point| point.0 < from).min(pairs);
            (0..last).rev().map_while(|pair| self.after(pair, to)).find_map(|pair| self.meeting(pair, high, from, to))
        }
    }

    /// A pair of points that begins before a place.
    fn before(&self, pair: usize, to: Length) -> Option<usize> {
        self.path.get(pair).is_some_and(|point| point.0 < to).then_some(pair)
    }

    /// A pair of points that ends after a place.
    fn after(&self, pair: usize, to: Length) -> Option<usize> {
        self.path.get(pair + 1).is_some_and(|point| point.0 > to).then_some(pair)
    }

    /// The nearer meeting between two points that lies strictly between two places.
    fn meeting(&self, pair: usize, high: Length, from: Length, to: Length) -> Option<Length> {
        let (one, other) = (self.path.get(pair)?, self.path.get(pair + 1)?);
        let place = |meets: Length| {
            let share = ((meets - one.1) / (other.1 - one.1)).value;
            // Nothing is met where the line runs along the table.
            let place = one.0 + (other.0 - one.0) * share;
            let between = (place > from && place < to) || (place < from && place > to);
            ((0.0..=1.0).contains(&share) && between).then_some(place)
        };
        match (place(self.table), place(self.table + high)) {
            (Some(one), Some(other)) => Some(if (other - from).abs() < (one - from).abs() { other } else { one }),
            (one, other) => one.or(other),
        }
    }

    /// With the stem of another, and a pipe that holds no less than its pipe.
    pub(crate) fn no_less_than(&mut self, planned: &Self) {
        self.stem = planned.stem;
        self.pipe.dry = self.pipe.dry.with(planned.pipe.dry, Pressure::max);
        self.pipe.wet = self.pipe.wet.with(planned.pipe.wet, Pressure::max);
    }

    /// Both friction bands times a factor.
    pub(crate) fn scaled(&mut self, times: crate::quantity::Ratio) {
        for side in [&mut self.stem, &mut self.pipe] {
            side.dry = side.dry.map(|friction| friction * times);
            side.wet = side.wet.map(|friction| friction * times);
        }
    }
}

/// Invert depth at a distance from the launch pit, of points that are told by distance; even between them and beyond them.
pub(crate) fn invert_at(path: &[(Length, Length)], place: Length) -> Length {
    let after = path.partition_point(|point| point.0 < place);
    let last = path.len().saturating_sub(1);
    match (path.get(after.saturating_sub(1)), path.get(after.min(last))) {
        (Some(before), Some(after)) if after.0 > before.0 => {
            let share = ((place - before.0) / (after.0 - before.0)).value.clamp(0.0, 1.0);
            before.1 + (after.1 - before.1) * share
        }
        (_, Some(point)) => point.1,
        _ => Length::default(),
    }
}

/// Parts of a way, in its direction, each with the water on one side.
pub(crate) fn parts(
    crossed: Option<&Crossed>,
    high: Length,
    from: Length,
    to: Length,
) -> impl Iterator<Item = (Length, Length)> + use<'_> {
    let mut at = Some(from).filter(|from| (*from - to).abs().si() > 0.0);
    core::iter::from_fn(move || {
        let begin = at?;
        let meeting = crossed.and_then(|crossed| crossed.first_meeting(high, begin, to));
        at = meeting;
        Some((begin, meeting.unwrap_or(to)))
    })
}
