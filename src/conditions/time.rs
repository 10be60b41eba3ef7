//! Shifts by stage, from the file's own rates or a table's; each stage says on what it rests. Stops and lost days come
//! on top.

use super::amounts::{amounts, joints_before};
use super::plan::Plan;
use crate::check::{Absent, Outcome, at_most};
use crate::drive::{Drive, Pipe, PulledPipe, Rate, SizedRate};
use crate::handbook::{Handbook, Method};
use crate::quantity::{Band, Length, Measure, Ratio, Role};
use crate::source::{Cited, Mark, Origin};

/// One stage of the work.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct StageTime {
    /// What is done.
    pub what: &'static str,
    /// How often over the whole drive.
    pub passes: usize,
    /// Length put in a shift, low and high; absent where no rate is known, and for work that is not told by its length.
    pub rate: Option<Cited<(Length, Length)>>,
    /// Shifts: the fewest at the high clear rate, the likely at the low clear rate, the most at the low rate as planned
    /// by the week.
    pub shifts: Option<Band<Ratio>>,
    /// Where they come from.
    pub origin: Option<Origin>,
    /// True for work done beside the bore meanwhile, which the sum does not hold.
    pub beside: bool,
}

/// Most stages of a scheme.
const STAGES: usize = 10;

/// The time a scheme takes.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
#[non_exhaustive]
pub struct TimePlan {
    /// Stages in order.
    pub stages: [Option<StageTime>; STAGES],
    /// Shifts in all; absent where a stage has no rate.
    pub shifts: Option<Band<Ratio>>,
}

impl TimePlan {
    fn add(&mut self, stage: StageTime) {
        if let Some(slot) = self.stages.iter_mut().find(|slot| slot.is_none()) {
            *slot = Some(stage);
        }
    }

    /// Where the least sure stage comes from, of those alike the longest: a sum is as sure as that.
    #[must_use]
    pub fn origin(&self, handbook: &Handbook) -> Option<Origin> {
        let counted = self.stages.iter().flatten().filter(|stage| !stage.beside);
        let stages = counted.filter_map(|stage| Some((stage.shifts?.likely.si(), stage.origin?)));
        let unsure = |origin| mark(handbook, origin).rank();
        stages.max_by(|a, b| unsure(a.1).cmp(&unsure(b.1)).then(a.0.total_cmp(&b.0))).map(|least| least.1)
    }

    /// What the shifts of these stages rest on is no more than our judgement.
    pub fn judged(&self, handbook: &Handbook) -> impl Iterator<Item = &'static str> {
        let judged = |stage: &&StageTime| stage.origin.is_some_and(|origin| mark(handbook, origin) == Mark::Judgement);
        self.stages.iter().flatten().filter(judged).map(|stage| stage.what)
    }
}

/// How sure an origin is; of a row that is not there, no more than a judgement.
fn mark(handbook: &Handbook, origin: Origin) -> Mark {
    match origin {
        Origin::Row(row) => handbook.citation(row).map_or(Mark::Judgement, |found| found.2.mark),
        Origin::Law(equation) => equation.mark,
        Origin::File(_) => Mark::Given,
    }
}

/// Work whose shifts are told as such.
fn fixed(what: &'static str, shifts: impl Into<Option<Cited<Band<Ratio>>>>) -> StageTime {
    let shifts = shifts.into();
    let (values, origin) = (shifts.map(|shifts| shifts.value), shifts.map(|shifts| shifts.origin));
    StageTime { what, passes: 1, rate: None, shifts: values, origin, beside: false }
}

/// What is pushed in one go.
#[derive(Clone, Copy)]
pub(crate) enum Pushing {
    Pilot,
    Casing,
    Pipe,
}

fn in_clay(rate: Option<SizedRate>, pipe: &Pipe) -> Option<Rate> {
    rate.and_then(|rate| rate.of(pipe.nominal))
}

/// How far it gets in a shift, where a rate is known.
pub(crate) fn rate(drive: &Drive, pipe: &Pipe, pushing: Pushing) -> Option<Rate> {
    let pace = &drive.site.pace;
    match pushing {
        Pushing::Pilot => in_clay(pace.clay.pilot, pipe).or(pace.pilot),
        Pushing::Casing => pace.casing,
        Pushing::Pipe if pipe.casing.is_some() => pace.behind_casing,
        Pushing::Pipe => in_clay(pace.clay.jacking, pipe).or(pace.jacking),
    }
}

/// Shifts of one pipe put in by one method.
#[must_use]
pub fn time_plan(at: &Plan<'_>) -> TimePlan {
    let Plan { drive, pipe, method } = *at;
    let pace = &drive.site.pace;
    let beside = &pace.shifts;
    let planned = pace.planned.0;
    let pilot = rate(drive, pipe, Pushing::Pilot);
    let stage = |what, passes: usize, rate: Option<Rate>| {
        #[expect(clippy::cast_precision_loss, reason = "a handful of passes")]
        let length = drive.length.value * (passes as f64);
        let shifts = rate.map(|rate| {
            let (low, likely, high) = (length / rate.high, length / rate.low, length / (rate.low * planned));
            Cited::new(Band { low, likely, high }, rate.origin)
        });
        let rate = rate.map(|rate| Cited::new((rate.low, rate.high), rate.origin));
        StageTime { passes, rate, ..fixed(what, shifts) }
    };
    let mut plan = TimePlan::default();
    // The row is for soil; a pit in rock takes what the file says.
    let ends = [drive.stretches.first(), drive.stretches.last()].into_iter().flatten();
    let told = beside.pits.is_given();
    let known = told || !ends.into_iter().any(|stretch| stretch.class.is_rock());
    plan.add(fixed("pits dug and shored", known.then_some(beside.pits)));
    plan.add(fixed("setting up", beside.set_up));
    match method {
        Method::PipeJacking => {
            let casing = pipe.casing.is_some();
            let together = pace.pilot_in_pipe && in_clay(pace.clay.jacking, pipe).is_some() && !casing;
            if drive.stem.is_there() && !together {
                plan.add(stage("pilot stem", 1, pilot));
            }
            if casing {
                plan.add(stage("casing", 1, rate(drive, pipe, Pushing::Casing)));
                plan.add(stage("pipe pushed behind the casing", 1, rate(drive, pipe, Pushing::Pipe)));
            } else {
                let what = if together { "pilot stem and pipe, together" } else { "pipe pushed" };
                plan.add(stage(what, 1, rate(drive, pipe, Pushing::Pipe)));
            }
        }
        Method::Pullback => {
            plan.add(stage("pilot stem", 1, pilot));
            if !pipe.passes.is_empty() {
                plan.add(stage("reaming passes", pipe.passes.len(), pace.reaming));
            }
            plan.add(fixed("ramp and laydown made ready", beside.ramp));
            if let Some(joints) = joints(drive, pipe) {
                plan.add(joints);
            }
            plan.add(match (pace.pullback, &drive.pull) {
                (None, Some(pull)) => {
                    let clear: Ratio = pull.duration / pace.shift_length.value;
                    let shifts = Band { low: clear, likely: clear, high: clear / planned };
                    fixed("pipe pulled", Some(Cited::new(shifts, pull.works.duration_basis)))
                }
                (rate, _) => stage("pipe pulled", 1, rate),
            });
            if drive.annulus.grouted {
                plan.add(fixed("annulus grouted", beside.grouting));
            }
        }
    }
    let emptying = drive.site.clearing.and_then(|clearing| clearing.emptying);
    if let Some((emptying, tanks)) = emptying.and_then(|emptying| Some((emptying, amounts(at).tanks?))) {
        let shifts = tanks.value * (emptying.value / pace.shift_length.value);
        plan.add(fixed("work stands while tanks are emptied", Cited::new(Band::same(shifts), emptying.origin)));
    }
    plan.add(fixed("tools recovered, site cleared", beside.recovery));
    let counted = plan.stages.iter().flatten().filter(|stage| !stage.beside);
    plan.shifts = counted.map(|stage| stage.shifts).try_fold(Band::<Ratio>::default(), |sum, shifts| {
        shifts.map(|shifts| sum.with(shifts, |sum, shifts| sum + shifts))
    });
    plan
}

fn joints(drive: &Drive, pipe: &Pipe) -> Option<StageTime> {
    let pace = &drive.site.pace;
    let count = joints_before(drive)?;
    let by_joint = |each: Cited<Band<Ratio>>| each.map(|band| band.map(|shifts| shifts * count));
    let shifts = match pipe.pulled.as_ref()? {
        PulledPipe::Pe(_) | PulledPipe::Pvc(_) => {
            let fits = |row: &&crate::drive::FusionPace| pipe.outside_diameter.value < row.size_to;
            pace.fusion.iter().find(fits).map(|row| {
                let (fewest, likely) = (count / row.high, count / row.low);
                Cited::new(Band { low: fewest, likely, high: likely / pace.planned.0 }, row.origin)
            })
        }
        PulledPipe::Jointed(_) => Some(by_joint(pace.shifts.restrained_joint)),
        PulledPipe::Steel(_) => Some(by_joint(pace.shifts.weld)),
    };
    Some(StageTime { beside: true, ..fixed("joints of the string, before the pull", shifts) })
}

const PROGRAMME: &str =
    "a screen: likely shifts without stops and lost days; where the file gives no pace they rest on wide bands of ours";

/// Shifts against the programme, where the file gives one and every stage has a rate.
pub(crate) fn programme(at: &Plan<'_>) -> Outcome {
    let programme = at.drive.site.pace.programme.ok_or(Absent::Missing)?;
    let shifts = time_plan(at).shifts.ok_or(Absent::Missing)?;
    Ok(at_most(Role::Shifts, shifts, programme).with_note(PROGRAMME))
}
