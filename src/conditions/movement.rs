//! The trough that lost ground leaves, at the surface and at crossed services. Limits are the file's only.

use super::opened;
use crate::check::{Check, Checks, Subject, Verdict};
use crate::drive::{Crossing, Drive, Pipe};
use crate::handbook::Method;
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::settlement::{
    AnnulusLoss, FaceLoss, GreatestSettlement, SettlementAtOffset, SteepestTrough, TroughWidth,
};
use crate::quantity::{Band, Length, Measure, Ratio, Role};
use crate::source::{Cited, Origin};

const BOTH_ENDS: &str = "likely: middle width of the trough and the usual closing of the annulus; high: the narrow trough \
                         and the whole annulus";
const NO_WIDTH: &str = "no source gives the width of the trough in some ground of the drive";

/// Deepest settlement and steepest slope at one level.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Moved {
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
    drive: &Drive,
    pipe: &Pipe,
    method: Method,
    stretch: usize,
    (invert, level): (Length, Length),
    beside: Length,
) -> Option<Moved> {
    let trough = drive.site.movement.troughs.get(stretch).copied().flatten()?;
    let outside_diameter = pipe.outside_diameter.value;
    let bore = opened(pipe, method);
    let axis_depth = invert - outside_diameter / 2.0;
    if level >= axis_depth {
        return None;
    }
    let (loss_low, loss_high) = drive.site.movement.face_loss;
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
pub(super) fn at_surface<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    method: Method,
) -> Doubted<Option<Moved>> {
    calc.doubted(|calc| {
        let mut worst = Moved::default();
        for (index, trough) in drive.site.movement.troughs.iter().enumerate() {
            let invert = trough.as_ref()?.shallowest;
            worst =
                worst.worse(moved(calc, drive, pipe, method, index, (invert, Length::default()), Length::default())?);
        }
        Some(worst)
    })
}

/// At a service above the axis, with the steepest slope of the trough wherever it lies in it; `None` where it lies below, or its ground has no trough.
pub(super) fn at_service<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    method: Method,
    crossing: &Crossing,
) -> Doubted<Option<Moved>> {
    calc.doubted(|calc| {
        let [first, last] = crossing.stretches;
        let mut at =
            |stretch| moved(calc, drive, pipe, method, stretch, (crossing.invert, crossing.depth), crossing.beside);
        let one = at(first)?;
        if first == last {
            return Some(one);
        }
        // Between two grounds the one that moves more counts.
        Some(one.worse(at(last)?))
    })
}

/// Whether a service lies over the axis of the bore.
fn is_over(crossing: &Crossing, pipe: &Pipe) -> bool {
    crossing.depth < crossing.invert - pipe.outside_diameter.value / 2.0
}

pub(super) fn checks<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, method: Method, checks: &mut Checks) {
    let surface = &drive.site.surface;
    if surface.settlement.is_some() || surface.slope.is_some() {
        calc.part("settlement of the surface");
        let moved = at_surface(calc, drive, pipe, method);
        if let Some(limit) = surface.settlement {
            let demand = moved.map(|moved| moved.map(|moved| moved.settlement));
            checks.add(check(Subject::SurfaceSettlement, Role::Settlement, demand, limit));
        }
        if let Some(limit) = surface.slope {
            let demand = moved.map(|moved| moved.map(|moved| moved.slope));
            checks.add(check(Subject::SurfaceSlope, Role::Slope, demand, limit));
        }
    }
    let limited = |crossing: &&Crossing| crossing.settlement.is_some() || crossing.slope.is_some();
    for crossing in drive.site.crossings.iter().filter(limited).filter(|crossing| is_over(crossing, pipe)) {
        calc.part("settlement of services");
        let moved = at_service(calc, drive, pipe, method, crossing);
        if let Some(limit) = crossing.settlement {
            let demand = moved.map(|moved| moved.map(|moved| moved.settlement));
            checks.add_worse(check(Subject::ServiceSettlement, Role::Settlement, demand, limit));
        }
        if let Some(limit) = crossing.slope {
            let demand = moved.map(|moved| moved.map(|moved| moved.slope));
            checks.add_worse(check(Subject::ServiceSlope, Role::Slope, demand, limit));
        }
    }
}

fn check<Q: Measure>(subject: Subject, role: Role, demand: Doubted<Option<Band<Q>>>, limit: Cited<Q>) -> Check {
    match demand.transpose() {
        Some(demand) => Check::at_most(subject, role, demand, limit).with_note(BOTH_ENDS),
        None => undecided(subject, limit.origin),
    }
}

fn undecided(subject: Subject, origin: Origin) -> Check {
    Check::rated(subject, Verdict::NotDecided, origin).with_note(NO_WIDTH)
}
