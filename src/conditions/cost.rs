//! Cost from the user's own prices, line by line. No price is ever assumed: what has none is not in the sum.

use super::amounts::amounts;
use super::plan::Plan;
use super::time::time_plan;
use crate::drive::Priced;
use crate::quantity::{Band, Measure, Ratio};
use crate::source::{Cited, Origin};

/// One line of the cost.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct CostLine {
    /// What is paid for.
    pub what: &'static str,
    /// In the user's money; absent where the amount or the price of this pipe is not known.
    pub cost: Option<Band<Ratio>>,
    /// Where the price comes from.
    pub origin: Origin,
}

/// The cost of a scheme by what the file prices.
#[derive(Debug, Clone, PartialEq, Default)]
#[non_exhaustive]
pub struct CostPlan {
    /// Lines in order.
    pub lines: Vec<CostLine>,
    /// The sum; absent where a line is not known or the file does not price a shift.
    pub sum: Option<Band<Ratio>>,
}

fn line(what: &'static str, price: Cited<Ratio>, amount: Option<Band<Ratio>>) -> CostLine {
    let cost = amount.map(|amount| amount.map(|amount| amount * price.value));
    CostLine { what, cost, origin: price.origin }
}

/// The cost of one pipe put in by one method.
#[must_use]
pub fn cost_plan(plan: &Plan<'_>) -> CostPlan {
    let Plan { drive, pipe, .. } = *plan;
    let prices = &drive.site.pace.prices;
    let amounts = amounts(plan);
    let once = |count: f64| Some(Band::same(Ratio::from(count)));
    let mut lines = Vec::new();
    if let Some(price) = prices.shift {
        lines.push(line("shifts", price, time_plan(plan).shifts));
    }
    if let Some(price) = prices.setup {
        lines.push(line("setting up and leaving", price, once(1.0)));
    }
    if let Some(price) = prices.pit {
        lines.push(line("pits, two", price, once(2.0)));
    }
    if prices.pipes {
        lines.push(match &pipe.price {
            Some(Priced { price, per }) => line("pipe", *price, Some(Band::same(drive.length.value / *per))),
            None => CostLine { what: "pipe", cost: None, origin: drive.length.origin },
        });
    }
    if let Some(Priced { price, per }) = prices.spoil {
        lines.push(line("spoil of the bore", price, Some(Band::same(amounts.soil() / per))));
    }
    if let (Some(Priced { price, per }), Some(grout)) = (prices.grout, amounts.grout) {
        lines.push(line("grout", price, Some(Band::same(grout.value / per))));
    }
    let sum = prices.shift.and_then(|_| {
        lines.iter().try_fold(Band::<Ratio>::default(), |sum, line| {
            line.cost.map(|cost| sum.with(cost, |sum, cost| sum + cost))
        })
    });
    CostPlan { lines, sum: sum.filter(|sum| sum.high.si().is_finite()) }
}
