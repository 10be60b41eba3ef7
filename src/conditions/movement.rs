//! The trough that lost ground leaves, at the surface and at crossed services, against the limits of the file, else those
//! that owners of roads, railways and services usually set.
//!
//! What is lost round a jacked pipe is its overcut, as far as it closes. The annulus of a pulled one is far larger: what is
//! asked of the contractor is to leave it full, so that no more of it closes than the limit bears.

use super::plan::Plan;
use super::stress::vertical_stress;
use crate::check::{Absent, Care, Draft, Outcome, Rule, Verdict, Ways, at_least, at_most, rated, required};
use crate::drive::{Crossing, Ends, Pipe, Stretch};
use crate::handbook::{Family, GroundClass};
use crate::law::{Calc, Doubted};
use crate::laws::settlement::{
    AnnulusLoss, FaceLoss, GreatestSettlement, SettlementAtOffset, SteepestAlong, SteepestTrough, TroughWidth,
    WideTrough,
};
use crate::quantity::{Band, Length, Measure, Ratio, Role};
use crate::source::Cited;
use core::f64::consts::SQRT_2;

const BOTH_ENDS: &str = "likely: mean trough width and the usual closure of the annulus; high: narrow trough and \
    full closure";
const FULL: &str = "no more than this share of the annulus may close, or the limit is passed at the high trough: keep it full of set fluid or grout";
const GROUT: &str = "no more than this share of the annulus may close, or the limit is passed at the high trough: grout it as the pipe \
    goes in or at once after, since fluid alone lets more close";
const OVERCUT: &str = "no bore is given: cut it no more than this wider round the pipe, on the radius";
const ALLOWED: &str = "no limit of the owner is given: have him allow this much before the drive, the bore cut as narrow as is usual; \
    compared with the most that owners usually allow";
const GROUTED: &str = "high: what grout bleeds of the annulus closes, and the narrow trough";
const STAYS_OPEN: &str = "the file leaves the annulus open: all of it may close";
const UNGROUTED: &str = "under a railway the annulus of a pulled pipe is grouted";
const UNTOLD: &str = "what lies over the bore is not given: tracks or a runway bear less than the road that is assumed";
const STEEP: &str =
    "more than twice the slope that owners usually allow, who seldom limit it beside the settlement: ask the owner";
const WATCH: &str =
    "steeper than owners usually allow, who seldom limit it beside the settlement: expose the service and watch it";
const NO_WIDTH: &str = "no source gives the width of the trough in some ground of the drive";
const OPEN: &str = "nothing over the bore sets a limit";

/// What settles a check: the limit of its owner, or less overcut, or the filling of a pulled annulus.
macro_rules! settles {
    ($limit:literal) => {
        [&[&[$limit]], &[&["candidates[].bore", $limit]], &[&["annulus.filling"], &[$limit]]]
    };
}
const SURFACE_SETTLEMENT: [Ways; 3] = settles!("surface.allowed_settlement");
const SURFACE_SLOPE: [Ways; 3] = settles!("surface.allowed_slope");
const SERVICE_SETTLEMENT: [Ways; 3] = settles!("crossings[].allowed_settlement");
const SERVICE_SLOPE: [Ways; 3] = settles!("crossings[].allowed_slope");

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

/// What is lost round a pipe: at its least and at its most, as far as the file does not tell it; and with the least overcut
/// that may be asked for alone. Of a pulled pipe none of the annulus, and all of it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct By<T> {
    low: T,
    asked: T,
    pub(super) high: T,
}

impl<T: Copy> By<T> {
    fn map<U>(self, mut change: impl FnMut(T) -> U) -> By<U> {
        By { low: change(self.low), asked: change(self.asked), high: change(self.high) }
    }
}

/// How far the ground moves by it.
pub(crate) type Moves = By<Doubted<Option<Moved>>>;

/// A bore, and how much of what is round the pipe in it closes.
#[derive(Clone, Copy)]
struct Lost {
    bore: Length,
    closes: Closes,
    /// In ground that may be any soil, under the widest trough.
    at_best: bool,
}

#[derive(Clone, Copy)]
enum Closes {
    /// As the ground usually does, up to its bound.
    AsUsual,
    /// The least of what is usual.
    Least,
    /// This share.
    Share(Ratio),
}

fn lost(at: &Plan<'_>) -> By<Lost> {
    let opened = at.opened();
    let share = |share: f64| Closes::Share(Ratio::from(share));
    if !at.is_jacked() {
        let all = Lost { bore: opened, closes: share(1.0), at_best: false };
        return By { low: Lost { closes: share(0.0), ..all }, asked: all, high: all };
    }
    let overcut = at.drive.site.movement.overcut;
    let told = at.pipe.bore_is_told();
    let bore = |overcut: Length| if told { opened } else { at.pipe.height() + 2.0 * overcut };
    let least = if at.drive.annulus.grouted { share(0.0) } else { Closes::Least };
    let high = Lost { bore: bore(overcut.high), closes: Closes::AsUsual, at_best: false };
    By {
        low: Lost { bore: bore(overcut.low), closes: least, at_best: true },
        asked: Lost { bore: bore(least_overcut(at)), ..high },
        high,
    }
}

/// The least overcut on the radius that may be asked for.
fn least_overcut(at: &Plan<'_>) -> Length {
    let movement = &at.drive.site.movement;
    if at.pipe.family() == Family::Steel { movement.of_casing } else { movement.overcut.low }
}

/// The overcut on the radius with which no more moves than a limit, by what moves with two of them: what is lost goes with
/// the area round the pipe.
fn overcut_for<Q: Measure>(outside_diameter: Length, limit: Q, [least, most]: [(Length, Q); 2]) -> Length {
    let area = |overcut: Length| overcut.si() * (outside_diameter + overcut).si();
    let (from, to) = (area(least.0), area(most.0));
    let share = (limit.si() - least.1.si()) / (most.1.si() - least.1.si());
    let round = from + (to - from) * share.clamp(0.0, 1.0);
    let radius = outside_diameter.si() / 2.0;
    // Down to a whole millimetre, so that a bore cut as it is told passes.
    Length::from_si((((radius * radius + round).sqrt() - radius) * 1e3 + 1e-6).floor() / 1e3)
}

/// Share of the bore that is lost at the face. Clay of a low stability number hardly yields, and what ravels comes into a
/// shield that is open: a casing keeps its plug.
fn face_loss(at: &Plan<'_>, ground: &Stretch, axis: Length, at_best: bool) -> Ends<Ratio> {
    let (loss, rule) = (&at.drive.site.movement.face_loss, &at.drive.site.face);
    if !at.is_jacked() {
        return loss.usual.value;
    }
    if rule.entered.is_some() && ground.has(|class| !class.is_clay() && !class.is_rock()) {
        return loss.ravelling.value;
    }
    let Some(strength) = ground.earth.strength.filter(|_| ground.is_all(GroundClass::is_clay)) else {
        return loss.usual.value;
    };
    let (column, strength, over) = if at_best {
        (ground.light(), strength.ends.high, rule.surcharge.low)
    } else {
        (ground.heavy(), strength.ends.low, rule.surcharge.high)
    };
    let soil = vertical_stress(&mut Calc::silent(), column, axis).total - column.soil.surcharge;
    let number: Ratio = (soil + column.soil.surcharge.max(over)) / strength;
    if number <= loss.firm_to { loss.firm.value } else { loss.usual.value }
}

/// Whether what is pumped behind a jacked pipe keeps the annulus from closing by more than is usual: of clay only where
/// grout follows.
fn kept_full(at: &Plan<'_>, ground: &Stretch) -> bool {
    let fed = at.drive.lubrication.is_watched();
    at.is_jacked() && fed && (at.drive.annulus.grouted || !ground.has(GroundClass::is_clay))
}

/// What moves over a bore whose invert lies at a depth, in the ground of a stretch; `None` where no source tells the
/// width of the trough, or the level is not above the axis. Rock does not move.
fn moved(
    calc: &mut Calc,
    at: &Plan<'_>,
    stretch: usize,
    (invert, level): (Length, Length),
    beside: Length,
    Lost { bore, closes, at_best }: Lost,
) -> Option<Moved> {
    let movement = &at.drive.site.movement;
    let ground = at.drive.stretches.get(stretch)?;
    if ground.is_all(GroundClass::is_rock) {
        return Some(Moved::default());
    }
    let trough = movement.troughs.get(stretch).copied().flatten()?;
    let outside_diameter = at.pipe.outside_diameter.value;
    let axis_depth = invert - outside_diameter / 2.0;
    // What nothing steers may come up on its way.
    let rise = if at_best { Length::default() } else { at.drive.guided.drift() };
    let axis = Band { high: axis_depth - rise, ..Band::same(axis_depth) };
    if level >= axis.high {
        return None;
    }
    let loss = face_loss(at, ground, axis_depth, at_best);
    let losses = Band { low: loss.low, likely: (loss.low + loss.high) / 2.0, high: loss.high };
    let (narrow, wide) = trough.ratio;
    let widths = if at_best && trough.of_any_soil {
        Band::same(wide)
    } else {
        Band { low: wide, likely: (narrow + wide) / 2.0, high: narrow }
    };
    let (low, likely, high) = trough.closed;
    let closed = match closes {
        Closes::AsUsual => Band { low, likely, high: if kept_full(at, ground) { likely } else { high } },
        Closes::Least => Band::same(low),
        Closes::Share(share) => Band::same(share),
    };
    let lost = losses.with(closed, |volume_loss, closed_share| {
        calc.law(FaceLoss { volume_loss, bore }) + calc.law(AnnulusLoss { closed_share, bore, outside_diameter })
    });
    let widths = widths.with(axis, |ratio, axis_depth| calc.law(TroughWidth { ratio, axis_depth, level }));
    let greatest = |calc: &mut Calc, widths| {
        lost.with(widths, |lost_ground, trough_width| calc.law(GreatestSettlement { lost_ground, trough_width }))
    };
    if beside <= Length::default() {
        let settlement = greatest(calc, widths);
        let slope = settlement.with(widths, |greatest_settlement, trough_width| {
            calc.law(SteepestTrough { greatest_settlement, trough_width })
        });
        return Some(Moved { settlement, slope });
    }
    // Of a service that lies off to the side the wide trough is the worse one.
    let widths = if level > Length::default() {
        Band { low: widths.low.max(calc.law(WideTrough { axis_depth, level, bore })), ..widths }
    } else {
        widths
    };
    // At a fixed distance it moves most under a trough of some width: neither end of what that may be need be the worst.
    let mut worst_at = |width: Length| {
        let widths = Band { high: width.max(widths.high).min(widths.low), ..widths };
        let here = greatest(calc, widths).with(widths, |greatest_settlement, trough_width| {
            calc.law(SettlementAtOffset { greatest_settlement, offset: beside, trough_width })
        });
        (here, widths)
    };
    let ((settlement, _), (along, widths)) = (worst_at(beside), worst_at(beside / SQRT_2));
    // What runs along the line is bent as the face goes by.
    let slope = along.with(widths, |settlement, trough_width| calc.law(SteepestAlong { settlement, trough_width }));
    // Far out the narrow trough moves less than the wide one.
    let settlement = Band { low: settlement.low.min(settlement.likely), ..settlement };
    let slope = Band { low: slope.low.min(slope.likely), ..slope };
    Some(Moved { settlement, slope })
}

/// Settlement of the surface so far beside the axis, at the most that is lost, in the ground that settles most; `None`
/// where no source tells the width of the trough, or a law was used outside its range.
#[must_use]
pub fn trough(plan: &Plan<'_>, beside: Length) -> Option<Band<Length>> {
    let moves = at_surface(&mut Calc::silent(), plan, beside);
    moves.high.if_sure().flatten().map(|moved| moved.settlement)
}

/// The worst of the surface so far beside the axis; `None` where some ground has no trough.
pub(super) fn at_surface(calc: &mut Calc, at: &Plan<'_>, beside: Length) -> Moves {
    lost(at).map(|lost| {
        calc.doubted(|calc| {
            let mut worst = Moved::default();
            for (index, stretch) in at.drive.stretches.iter().enumerate() {
                let levels = (stretch.way.shallowest, Length::default());
                worst = worst.worse(moved(calc, at, index, levels, beside, lost)?);
            }
            Some(worst)
        })
    })
}

/// At a service above the axis: one that crosses is bent by the steepest slope of the trough, one that runs beside the line
/// along it. `None` where it lies below, or its ground has no trough.
pub(super) fn at_service(calc: &mut Calc, at: &Plan<'_>, crossing: &Crossing) -> Moves {
    lost(at).map(|lost| {
        calc.doubted(|calc| {
            let [first, last] = crossing.stretches;
            // Between two grounds the one that moves more counts.
            let mut worst = Moved::default();
            for stretch in first..=last {
                let levels = (crossing.invert, crossing.depth);
                worst = worst.worse(moved(calc, at, stretch, levels, crossing.beside, lost)?);
            }
            Some(worst)
        })
    })
}

/// Whether a service lies over the axis of the bore.
pub(super) fn is_over(crossing: &Crossing, pipe: &Pipe) -> bool {
    crossing.depth < crossing.invert - pipe.outside_diameter.value / 2.0
}

/// How far the surface moves, where something over it has a limit.
pub(crate) fn of_surface(calc: &mut Calc, at: &Plan<'_>) -> Option<Moves> {
    let surface = &at.drive.site.surface;
    (surface.settlement.is_some() || surface.slope.is_some()).then(|| {
        calc.part("settlement of the surface");
        at_surface(calc, at, Length::default())
    })
}

pub(crate) fn surface_settlement(at: &Plan<'_>, moves: Option<Moves>) -> Outcome {
    let (limits, moves) = at.drive.site.surface.settlement.zip(moves).ok_or(Absent::NotApplicable(OPEN))?;
    Ok(of_the_surface(at, against(at, (Role::Settlement, SURFACE_SETTLEMENT), moves, limits, |moved| moved.settlement)))
}

pub(crate) fn surface_slope(at: &Plan<'_>, moves: Option<Moves>) -> Outcome {
    let surface = &at.drive.site.surface;
    let (limits, moves) = surface.slope.zip(moves).ok_or(Absent::NotApplicable(OPEN))?;
    // Owners of roads and tracks limit the settlement, few its slope: the least that is usual is a habit.
    let by_habit = !only_limit(&limits) && at.is_jacked() && surface.settlement.is_some();
    if let Some(asked) = moves.asked.map(|moved| moved.map(|moved| moved.slope)).transpose().filter(|_| by_habit) {
        let screen = at_most(Role::Slope, asked, limits.low).as_screen();
        let past_all = screen.utilisation().is_some_and(|used| used > 2.0);
        let check = if past_all { screen.undecided(STEEP).settled_by(SURFACE_SLOPE[0]) } else { screen };
        return Ok(of_the_surface(at, check));
    }
    Ok(of_the_surface(at, slope(at, SURFACE_SLOPE, moves, (limits, limits.low), surface.settlement)))
}

/// A railway leaves nothing to a survey; and what lies over the bore is the first thing to tell.
fn of_the_surface(at: &Plan<'_>, check: Draft) -> Draft {
    let surface = &at.drive.site.surface;
    let is_asked = check.is_required() || check.rule() == Some(Rule::Screen);
    let check = if surface.railway && !is_asked { check.by(Rule::High) } else { check };
    if surface.is_told {
        return check;
    }
    // What passes under a road may be barred under tracks, whatever is asked of the contractor.
    check.undecided(UNTOLD).settled_by(&[&["surface.over"]])
}

/// Settlement and slope of the crossed services that have a limit, the worst of each.
pub(crate) fn of_services(calc: &mut Calc, at: &Plan<'_>) -> (Outcome, Outcome) {
    let over = || at.drive.site.crossings.iter().filter(|crossing| is_over(crossing, at.pipe));
    let absent = match over().next() {
        Some(_) => Absent::Missing,
        None => Absent::NotApplicable("no service is given over the bore"),
    };
    let (mut settlement, mut steepest) = (Err(absent), Err(absent));
    let keep = |worst: &mut Outcome, check: Draft| *worst = Ok(worst.map_or(check, |other| other.worse(check)));
    for crossing in over() {
        calc.part("settlement of services");
        let moves = at_service(calc, at, crossing);
        let of_settlement = (Role::Settlement, SERVICE_SETTLEMENT);
        keep(&mut settlement, against(at, of_settlement, moves, crossing.settlement, |moved| moved.settlement));
        let asked = moves.asked.map(|moved| moved.map(|moved| moved.slope)).transpose();
        let by_habit = !only_limit(&crossing.slope) && at.is_jacked();
        keep(
            &mut steepest,
            match asked.filter(|_| by_habit) {
                Some(asked) => habitual(asked, crossing.slope.high),
                None => {
                    slope(at, SERVICE_SLOPE, moves, (crossing.slope, crossing.slope.high), Some(crossing.settlement))
                }
            },
        );
    }
    (settlement, steepest)
}

/// The slope against its limit. One that is only usual is a screen beside a settlement that the owner limits: few give both.
fn slope(
    at: &Plan<'_>,
    ways: [Ways; 3],
    moves: Moves,
    (limits, screen): (Ends<Cited<Ratio>>, Cited<Ratio>),
    settlement: Option<Ends<Cited<Length>>>,
) -> Draft {
    let is_told = settlement.is_some_and(|limits| only_limit(&limits));
    match moves.high.map(|moved| moved.map(|moved| moved.slope)).transpose() {
        Some(most) if is_told && !only_limit(&limits) => at_most(Role::Slope, most, screen).as_screen(),
        _ => against(at, (Role::Slope, ways), moves, limits, |moved| moved.slope),
    }
}

/// A slope against what is usual, which bars nothing.
fn habitual(slope: Doubted<Band<Ratio>>, usual: Cited<Ratio>) -> Draft {
    let check = at_most(Role::Slope, slope, usual).as_screen();
    let past_all = check.verdict() == Verdict::NotDecided;
    if past_all { rated(Verdict::Within, usual.origin).as_screen().with_care(Care::Screen, WATCH) } else { check }
}

/// What moves, against a limit: on the safe side of what is not told, and at its best.
fn against<Q: Measure>(
    at: &Plan<'_>,
    (role, [by_limit, by_bore, by_filling]): (Role, [Ways; 3]),
    moves: Moves,
    limits: Ends<Cited<Q>>,
    of: impl Fn(Moved) -> Band<Q>,
) -> Draft {
    let bands = moves.map(|moved| moved.map(|moved| moved.map(&of)).transpose());
    let (Some(least), Some(asked), Some(most)) = (bands.low, bands.asked, bands.high) else {
        return rated(Verdict::NotDecided, limits.low.origin).with_note(NO_WIDTH);
    };
    if at.is_jacked() {
        let check = at_most(role, most, limits.low).with_note(BOTH_ENDS).at_best(at_most(role, least, limits.high));
        // With the least overcut it would do.
        let less = !at.pipe.bore_is_told() && at_most(role, least, limits.low).verdict() == Verdict::Within;
        let check = check.settled_by(if less { by_bore } else { by_limit });
        // How wide the bore is cut is for the contractor, as far as it is not told.
        let would_do = at_most(role, asked, limits.low).by(Rule::High).verdict() == Verdict::Within;
        let may_ask = would_do && check.by(Rule::High).verdict() != Verdict::Within && !at.pipe.bore_is_told();
        if may_ask {
            let check = as_narrow(at, asked.zip(most), limits.low);
            return if only_limit(&limits) { check } else { check.by_habit() };
        }
        // What nobody limits has to be allowed, as far as owners usually do.
        return if only_limit(&limits) { check } else { allowed(check, role, asked, limits.high).by_habit() };
    }
    let usual = at.drive.site.movement.closes.value;
    let check = closing(at, role, (least, most), (limits.low, usual));
    // A limit that is only usual bars nothing that leaves its annulus full.
    let best = || closing(at, role, (least, most), (limits.high, Ratio::default()));
    let check = if only_limit(&limits) { check } else { check.at_best(best()).by_habit() };
    let check = check.settled_by(by_filling);
    if !only_limit(&limits) && at.drive.annulus.open && !at.drive.site.surface.railway {
        return allowed(check, role, most, limits.high);
    }
    let railway = at.drive.site.surface.railway && !at.drive.annulus.grouted;
    if railway { check.undecided(UNGROUTED).settled_by(&[&["annulus.filling"]]) } else { check }
}

/// What nobody limits has to be allowed, as far as owners usually do.
fn allowed<Q: Measure>(check: Draft, role: Role, moves: Doubted<Band<Q>>, most: Cited<Q>) -> Draft {
    let allowed = at_most(role, moves, most).by(Rule::High);
    let may_ask = check.by(Rule::High).verdict() > Verdict::WithCare && allowed.verdict() == Verdict::Within;
    if may_ask { allowed.by(Rule::Required).with_note(ALLOWED) } else { check }
}

/// The overcut that a limit leaves, against the least that may be asked for.
fn as_narrow<Q: Measure>(at: &Plan<'_>, moves: Doubted<(Band<Q>, Band<Q>)>, limit: Cited<Q>) -> Draft {
    let least = least_overcut(at);
    let left = moves.map(|(asked, most)| {
        let ends = [(least, asked.high), (at.drive.site.movement.overcut.high, most.high)];
        Band::same(overcut_for(at.pipe.outside_diameter.value, limit.value, ends).max(least))
    });
    at_least(Role::Diameter, left, Cited::new(least, limit.origin)).by(Rule::Required).with_note(OVERCUT)
}

fn only_limit<Q: Measure>(limits: &Ends<Cited<Q>>) -> bool {
    limits.low.value.si() >= limits.high.value.si()
}

/// The annulus of a pulled pipe, of which none closes and all of it.
fn closing<Q: Measure>(
    at: &Plan<'_>,
    role: Role,
    (none, whole): (Doubted<Band<Q>>, Doubted<Band<Q>>),
    (limit, closes): (Cited<Q>, Ratio),
) -> Draft {
    let between = |none: Q, whole: Q, share: f64| Q::from_si(none.si() + (whole.si() - none.si()) * share);
    let all = at_most(role, whole, limit);
    if all.verdict() == Verdict::Within {
        return all.with_note(BOTH_ENDS);
    }
    if at.drive.annulus.open {
        return all.at_best(at_most(role, none, limit)).undecided(STAYS_OPEN);
    }
    if at.drive.annulus.grouted {
        let closes = at.drive.site.movement.closes_grouted.value;
        let left =
            none.zip(whole).map(|(none, whole)| Band { high: between(none.high, whole.high, closes.si()), ..none });
        return at_most(role, left, limit).with_note(GROUTED);
    }
    // Settlement goes with what closes.
    let share = none.zip(whole).map(|(none, whole)| {
        let share = (limit.value.si() - none.high.si()) / (whole.high.si() - none.high.si());
        Cited::new(Ratio::from_si(share.max(0.0)), limit.origin)
    });
    let full = required(Role::Percent, closes, share).with_note(FULL);
    if full.verdict() == Verdict::WithCare {
        return full;
    }
    let grout = required(Role::Percent, at.drive.site.movement.closes_grouted.value, share).with_note(GROUT);
    if grout.verdict() == Verdict::WithCare { grout } else { full }
}
