//! The way of a bore through a stretch of ground, and the water beside it.

use crate::quantity::{Length, Measure};

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

/// Something above the water, below it, and where it stands against the bore.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Sides<T> {
    pub(crate) dry: T,
    pub(crate) worse: T,
    pub(crate) wet: T,
}

impl<T: Copy> Sides<T> {
    pub(crate) const fn same(one: T) -> Self {
        Self { dry: one, worse: one, wet: one }
    }

    pub(crate) fn map<U>(self, change: impl Fn(T) -> U) -> Sides<U> {
        Sides { dry: change(self.dry), worse: change(self.worse), wet: change(self.wet) }
    }

    pub(crate) fn with(self, other: Self, join: impl Fn(T, T) -> T) -> Self {
        Self { dry: join(self.dry, other.dry), worse: join(self.worse, other.worse), wet: join(self.wet, other.wet) }
    }

    pub(crate) const fn of(&self, water: Water) -> T {
        match water {
            Water::Below => self.dry,
            Water::Between => self.worse,
            Water::Over => self.wet,
        }
    }
}

/// Where a whole stretch lies with respect to the water table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Side {
    /// The water is nowhere over the invert.
    Above,
    /// It is over the crown all along.
    Below,
    /// The bore crosses it.
    Both,
}

/// A part of a way, told in either direction, with the water on one side of the bore.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Part {
    pub(crate) from: Length,
    pub(crate) to: Length,
    pub(crate) water: Water,
}

impl Part {
    pub(crate) fn length(&self) -> Length {
        (self.to - self.from).abs()
    }
}

/// The way of the bore through a stretch, and the water table there.
#[derive(Debug, Clone)]
pub(crate) struct Way {
    /// Distance from the launch pit and invert depth at both ends and where the surface breaks between; even in between.
    pub(crate) points: Vec<(Length, Length)>,
    /// Least depth of the invert.
    pub(crate) shallowest: Length,
    /// Greatest depth of the invert.
    pub(crate) deepest: Length,
    /// Depth of the water table, if there is one.
    pub(crate) table: Option<Length>,
}

impl Way {
    pub(crate) fn new(points: Vec<(Length, Length)>, table: Option<Length>) -> Self {
        let depths = || points.iter().map(|point| point.1);
        let shallowest = depths().reduce(Length::min).unwrap_or_default();
        let deepest = depths().reduce(Length::max).unwrap_or_default();
        Self { points, shallowest, deepest, table }
    }

    /// Greatest depth of the invert, and the least where that is another.
    pub(crate) fn depths(&self) -> impl Iterator<Item = Length> {
        core::iter::once(self.deepest).chain((self.shallowest < self.deepest).then_some(self.shallowest))
    }

    /// Depth of the invert at a distance from the launch pit.
    pub(crate) fn invert(&self, place: Length) -> Length {
        invert_at(&self.points, place)
    }

    /// Water over the invert at its deepest.
    pub(crate) fn head(&self) -> Length {
        self.table.map_or(Length::default(), |table| (self.deepest - table).max(Length::default()))
    }

    /// Whether water stands over the invert in some place.
    pub(crate) fn is_wet(&self) -> bool {
        self.table.is_some_and(|table| table < self.deepest)
    }

    /// Of a bore as high as this.
    #[inline]
    pub(crate) fn side(&self, high: Length) -> Side {
        match self.table {
            Some(table) if table < self.deepest => {
                if table <= self.shallowest - high {
                    Side::Below
                } else {
                    Side::Both
                }
            }
            _ => Side::Above,
        }
    }

    /// Where the water stands at a place that crosses it, against a bore as high as this.
    fn at(&self, place: Length, (table, high): (Length, Length)) -> Water {
        let invert = invert_at(&self.points, place);
        if invert <= table {
            Water::Below
        } else if invert - high >= table {
            Water::Over
        } else {
            Water::Between
        }
    }

    /// Parts of a way in it, in its direction, each with the water on one side of a bore as high as this.
    #[inline]
    pub(crate) fn parts(&self, high: Length, from: Length, to: Length) -> impl Iterator<Item = Part> + use<'_> {
        let side = self.side(high);
        let crossed = self.table.filter(|_| side == Side::Both);
        let mut next = Some(from).filter(|from| (*from - to).abs().si() > 0.0);
        core::iter::from_fn(move || {
            let from = next?;
            next = crossed.and_then(|table| self.first_meeting((table, high), from, to));
            let to = next.unwrap_or(to);
            let water = match crossed {
                Some(table) => self.at((from + to) / 2.0, (table, high)),
                None if side == Side::Below => Water::Over,
                None => Water::Below,
            };
            Some(Part { from, to, water })
        })
    }

    /// The first place from one towards another where the table meets the invert or the crown of a bore as high as this.
    fn first_meeting(&self, (table, high): (Length, Length), from: Length, to: Length) -> Option<Length> {
        let pairs = self.points.len().saturating_sub(1);
        let meeting = |pair| self.meeting(pair, (table, high), from, to);
        if to > from {
            let first = self.points.partition_point(|point| point.0 <= from).saturating_sub(1);
            (first..pairs).map_while(|pair| self.before(pair, to)).find_map(meeting)
        } else {
            let last = self.points.partition_point(|point| point.0 < from).min(pairs);
            (0..last).rev().map_while(|pair| self.after(pair, to)).find_map(meeting)
        }
    }

    /// A pair of points that begins before a place.
    fn before(&self, pair: usize, to: Length) -> Option<usize> {
        self.points.get(pair).is_some_and(|point| point.0 < to).then_some(pair)
    }

    /// A pair of points that ends after a place.
    fn after(&self, pair: usize, to: Length) -> Option<usize> {
        self.points.get(pair + 1).is_some_and(|point| point.0 > to).then_some(pair)
    }

    /// The nearer meeting between two points that lies strictly between two places.
    fn meeting(&self, pair: usize, (table, high): (Length, Length), from: Length, to: Length) -> Option<Length> {
        let (one, other) = (self.points.get(pair)?, self.points.get(pair + 1)?);
        let place = |meets: Length| {
            let share = ((meets - one.1) / (other.1 - one.1)).value;
            // Nothing is met where the line runs along the table.
            let place = one.0 + (other.0 - one.0) * share;
            let between = (place > from && place < to) || (place < from && place > to);
            ((0.0..=1.0).contains(&share) && between).then_some(place)
        };
        match (place(table), place(table + high)) {
            (Some(one), Some(other)) => Some(if (other - from).abs() < (one - from).abs() { other } else { one }),
            (one, other) => one.or(other),
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
