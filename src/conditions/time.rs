//! Shifts by stage, from the file's own rates or a table that has one for the work; and cost, where the file prices a
//! shift. Indicative: set-up, stops and lost days come on top.

use crate::drive::{Drive, Pipe, Rate};
use crate::handbook::Method;
use crate::quantity::{Band, Length, Measure, Ratio};
use crate::source::{Cited, Origin};

/// One stage of the work.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StageTime {
    /// What is done.
    pub what: &'static str,
    /// How often over the whole drive.
    pub passes: usize,
    /// Length put in a shift, low and high; absent where no rate is known.
    pub rate: Option<Cited<(Length, Length)>>,
    /// Shifts: the fewest at the high clear rate, the likely at the low clear rate, the most at the low rate as planned
    /// by the week.
    pub shifts: Option<Band<Ratio>>,
}

/// The time a scheme takes.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct TimePlan {
    /// Stages in order.
    pub stages: [Option<StageTime>; 3],
    /// Shifts in all; absent where a stage has no rate.
    pub shifts: Option<Band<Ratio>>,
    /// Cost in the user's money; absent where the time or the price is not known.
    pub cost: Option<Band<Ratio>>,
}

/// Shifts and cost of one pipe put in by one method.
#[must_use]
pub fn time_plan(drive: &Drive, pipe: &Pipe, method: Method) -> TimePlan {
    let pace = &drive.site.pace;
    let planned = pace.planned;
    let stage = |what, passes: usize, rate: Option<Rate>| {
        #[expect(clippy::cast_precision_loss, reason = "a handful of passes")]
        let length = drive.length.value * (passes as f64);
        let shifts = rate.map(|rate| Band {
            low: (length / rate.high),
            likely: length / rate.low,
            high: length / (rate.low * planned.0),
        });
        let rate = rate.map(|rate| Cited::new((rate.low, rate.high), rate.origin));
        Some(StageTime { what, passes, rate, shifts })
    };
    let stem = drive.stem.is_there();
    let casing = pipe.casing.is_some();
    let stages = match method {
        Method::PipeJacking => [
            (stem && (casing || !pace.pilot_in_pipe)).then(|| stage("pilot stem", 1, pace.pilot)).flatten(),
            casing.then(|| stage("casing", 1, pace.casing)).flatten(),
            stage(
                if pace.pilot_in_pipe && !casing { "pilot stem and pipe, together" } else { "pipe pushed" },
                1,
                pace.jacking,
            ),
        ],
        Method::Pullback => [
            stage("pilot stem", 1, pace.pilot),
            (!pipe.passes.is_empty()).then(|| stage("reaming passes", pipe.passes.len(), pace.reaming)).flatten(),
            stage("pipe pulled", 1, pace.pullback),
        ],
    };
    let shifts = stages.iter().flatten().try_fold(Band::<Ratio>::default(), |sum, stage| {
        stage.shifts.map(|shifts| sum.with(shifts, |sum, shifts| sum + shifts))
    });
    let cost = shifts.zip(pace.shift_price).map(|(shifts, price)| {
        let setup = pace.setup_price.map_or(Ratio::default(), |setup| setup.value);
        shifts.map(|shifts| shifts * price.value + setup)
    });
    TimePlan { stages, shifts, cost }
}

impl TimePlan {
    /// Where the rate of the slowest known stage comes from.
    #[must_use]
    pub fn origin(&self) -> Option<Origin> {
        let slowest = self.stages.iter().flatten().filter_map(|stage| Some((stage.shifts?.likely, stage.rate?.origin)));
        slowest.max_by(|a, b| a.0.si().total_cmp(&b.0.si())).map(|slowest| slowest.1)
    }
}
