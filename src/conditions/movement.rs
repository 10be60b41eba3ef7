//! The trough that lost ground leaves, at the surface and at crossed services. Limits are the file's only.

use super::plan::Plan;
use crate::check::{Absent, Check, Outcome, Verdict, at_most, rated};
use crate::drive::{Crossing, Pipe};
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::settlement::{
    AnnulusLoss, FaceLoss, GreatestSettlement, SettlementAtOffset, SteepestTrough, TroughWidth,
};
use crate::quantity::{Band, Length, Measure, Ratio, Role};
use crate::source::Cited;

const BOTH_ENDS: &str = "likely: middle width of the trough and the usual closing of the annulus; high: the narrow trough \
                         and the whole annulus";
const NO_WIDTH: &str = "no source gives the width of the trough in some ground of the drive";

/// Deepest settlement and steepest slope at one level.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Moved {
    pub(super) settlement: Band<Length>,
    pub(super) slope: Band<Ratio>,
}

impl Moved {
    fn worse(self, other: Self) -> Self {
        Self {
            settlement: self.settlement.with(other.settlement, Length::max),
            slope: self.slope.with(other.slope, Ratio::max),
        }
    }
}

/// What moves over a bore whose invert lies at a depth, in the ground of a stretch; `None` where no source tells the
/// width of the trough, or the level is not above the axis.
fn moved<R: Recorder>(
    calc: &mut Calc<R>,
    at: &Plan<'_>,
    stretch: usize,
    (invert, level): (Length, Length),
    beside: Length,
) -> Option<Moved> {
    let movement = &at.drive.site.movement;
    let trough = movement.troughs.get(stretch).copied().flatten()?;
    let outside_diameter = at.pipe.outside_diameter.value;
    let bore = at.opened();
    let axis_depth = invert - outside_diameter / 2.0;
    if level >= axis_depth {
        return None;
    }
    let (loss_low, loss_high) = movement.face_loss;
    let losses = Band { low: loss_low, likely: (loss_low + loss_high.value) / 2.0, high: loss_high.value };
    let (narrow, wide) = trough.ratio;
    let widths = Band { low: wide, likely: (narrow + wide) / 2.0, high: narrow };
    let (low, likely, high) = trough.closed;
    let closed = Band { low, likely, high };
    let lost = losses.with(closed, |volume_loss, closed_share| {
        calc.law(FaceLoss { volume_loss, bore }) + calc.law(AnnulusLoss { closed_share, bore, outside_diameter })
    });
    let widths = widths.map(|ratio| calc.law(TroughWidth { ratio, axis_depth, level }));
    let mut greatest = |lost_ground, trough_width| calc.law(GreatestSettlement { lost_ground, trough_width });
    let over = lost.with(widths, &mut greatest);
    let settlement = if beside > Length::default() {
        // At a fixed distance it settles most under a trough just as wide: neither end of the width need be the worst.
        let most = Band { high: beside.max(widths.high).min(widths.low), ..widths };
        let here = lost.with(most, &mut greatest).with(most, |greatest_settlement, trough_width| {
            calc.law(SettlementAtOffset { greatest_settlement, offset: beside, trough_width })
        });
        // Far out the narrow trough moves less than the wide one.
        Band { low: here.low.min(here.likely), ..here }
    } else {
        over
    };
    let slope = over.with(widths, |greatest_settlement, trough_width| {
        calc.law(SteepestTrough { greatest_settlement, trough_width })
    });
    Some(Moved { settlement, slope })
}

/// The worst of the surface; `None` where some ground has no trough.
pub(super) fn at_surface<R: Recorder>(calc: &mut Calc<R>, at: &Plan<'_>) -> Doubted<Option<Moved>> {
    calc.doubted(|calc| {
        let mut worst = Moved::default();
        for (index, stretch) in at.drive.stretches.iter().enumerate() {
            let levels = (stretch.way.shallowest, Length::default());
            worst = worst.worse(moved(calc, at, index, levels, Length::default())?);
        }
        Some(worst)
    })
}

/// At a service above the axis, with the steepest slope of the trough wherever it lies in it; `None` where it lies below,
/// or its ground has no trough.
pub(super) fn at_service<R: Recorder>(
    calc: &mut Calc<R>,
    at: &Plan<'_>,
    crossing: &Crossing,
) -> Doubted<Option<Moved>> {
    calc.doubted(|calc| {
        let [first, last] = crossing.stretches;
        let mut at = |stretch| moved(calc, at, stretch, (crossing.invert, crossing.depth), crossing.beside);
        let one = at(first)?;
        if first == last {
            return Some(one);
        }
        // Between two grounds the one that moves more counts.
        Some(one.worse(at(last)?))
    })
}

/// Whether a service lies over the axis of the bore.
pub(super) fn is_over(crossing: &Crossing, pipe: &Pipe) -> bool {
    crossing.depth < crossing.invert - pipe.outside_diameter.value / 2.0
}

/// How far the surface moves, where the file limits it.
pub(crate) fn of_surface<R: Recorder>(calc: &mut Calc<R>, at: &Plan<'_>) -> Option<Doubted<Option<Moved>>> {
    let surface = &at.drive.site.surface;
    (surface.settlement.is_some() || surface.slope.is_some()).then(|| {
        calc.part("settlement of the surface");
        at_surface(calc, at)
    })
}

pub(crate) fn surface_settlement(at: &Plan<'_>, moved: Option<Doubted<Option<Moved>>>) -> Outcome {
    let (limit, moved) = at.drive.site.surface.settlement.zip(moved).ok_or(Absent::Missing)?;
    Ok(settles(moved, limit))
}

pub(crate) fn surface_slope(at: &Plan<'_>, moved: Option<Doubted<Option<Moved>>>) -> Outcome {
    let (limit, moved) = at.drive.site.surface.slope.zip(moved).ok_or(Absent::Missing)?;
    Ok(tilts(moved, limit))
}

/// Settlement and slope of the crossed services that the file limits, the worst of each.
pub(crate) fn of_services<R: Recorder>(calc: &mut Calc<R>, at: &Plan<'_>) -> (Outcome, Outcome) {
    let over = || at.drive.site.crossings.iter().filter(|crossing| is_over(crossing, at.pipe));
    let absent = match over().next() {
        Some(_) => Absent::Missing,
        None => Absent::NotApplicable("no service is told over the bore"),
    };
    let (mut settlement, mut slope) = (Err(absent), Err(absent));
    let keep = |worst: &mut Outcome, check: Check<()>| *worst = Ok(worst.map_or(check, |other| other.worse(check)));
    for crossing in over().filter(|crossing| crossing.settlement.is_some() || crossing.slope.is_some()) {
        calc.part("settlement of services");
        let moved = at_service(calc, at, crossing);
        if let Some(limit) = crossing.settlement {
            keep(&mut settlement, settles(moved, limit));
        }
        if let Some(limit) = crossing.slope {
            keep(&mut slope, tilts(moved, limit));
        }
    }
    (settlement, slope)
}

fn settles(moved: Doubted<Option<Moved>>, limit: Cited<Length>) -> Check<()> {
    check(Role::Settlement, moved.map(|moved| moved.map(|moved| moved.settlement)), limit)
}

fn tilts(moved: Doubted<Option<Moved>>, limit: Cited<Ratio>) -> Check<()> {
    check(Role::Slope, moved.map(|moved| moved.map(|moved| moved.slope)), limit)
}

fn check<Q: Measure>(role: Role, demand: Doubted<Option<Band<Q>>>, limit: Cited<Q>) -> Check<()> {
    match demand.transpose() {
        Some(demand) => at_most(role, demand, limit).with_note(BOTH_ENDS),
        None => rated(Verdict::NotDecided, limit.origin).with_note(NO_WIDTH),
    }
}
