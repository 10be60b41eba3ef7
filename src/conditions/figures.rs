//! Figures that decide nothing, and that an engineer wants to see: how far the ground moves, how large the pits are,
//! what water comes in, how many shifts the work takes.

use super::amounts::amounts;
use super::cost::cost_plan;
use super::face::plug_needed;
use super::movement::{at_service, at_surface, is_over};
use super::pits::{Place, area_needed, length_needed, lift, width_needed};
use super::plan::Plan;
use super::time::time_plan;
use crate::drive::{Drive, Pit, PitRules};
use crate::law::{Calc, Law};
use crate::laws::inflow::{EquivalentRadius, InflowUnconfined, InfluenceRadius};
use crate::laws::reaming::SpoilVolume;
use crate::quantity::{Band, Length, Ratio, Role, Shown};
use crate::source::{Origin, labelled};

labelled! {
    /// What a figure is about.
    #[derive(Debug, Clone, Copy, PartialEq, Eq)]
    #[non_exhaustive]
    pub enum Topic {
        /// How far the ground moves.
        Movement = "ground movement",
        /// How large the pits are, and what comes into them.
        Pits = "pits",
        /// How much there is of what is moved and used.
        Quantities = "quantities",
        /// How many shifts the work takes.
        Time = "time",
        /// What it costs by the prices of the file.
        Cost = "cost",
    }
}

/// One figure.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct SiteFigure {
    /// What it is about.
    pub topic: Topic,
    /// What it is.
    pub what: String,
    /// Low, likely and high; absent where it is not known.
    pub values: Option<Band<Shown>>,
    /// Where it comes from.
    pub origin: Option<Origin>,
    /// What a reader must know.
    pub note: &'static str,
}

/// The figures of one pipe put in by one method.
#[must_use]
pub fn site_figures(plan: &Plan<'_>) -> Vec<SiteFigure> {
    let mut to = Topical { topic: Topic::Movement, figures: Vec::new() };
    movement(plan, &mut to);
    to.topic = Topic::Pits;
    pits(plan, &mut to);
    to.topic = Topic::Quantities;
    quantities(plan, &mut to);
    to.topic = Topic::Time;
    time(plan, &mut to);
    to.topic = Topic::Cost;
    cost(plan, &mut to);
    to.figures
}

/// Figures, of which the next are about one topic.
struct Topical {
    topic: Topic,
    figures: Vec<SiteFigure>,
}

impl Topical {
    fn add(
        &mut self,
        what: impl Into<String>,
        values: impl Into<Option<Band<Shown>>>,
        origin: impl Into<Option<Origin>>,
        note: &'static str,
    ) {
        let (what, values, origin) = (what.into(), values.into(), origin.into());
        self.figures.push(SiteFigure { topic: self.topic, what, values, origin, note });
    }
}

const NOT_A_LIMIT: &str = "a bound on the high side: all lost ground and the whole annulus arrive";

fn movement(plan: &Plan<'_>, to: &mut Topical) {
    let calc = &mut Calc::silent();
    let Plan { drive, pipe, .. } = *plan;
    let loss = drive.site.movement.face_loss.usual.origin;
    let mut add = |what: &str, moved: Option<super::movement::Moved>| {
        let settlement = moved.map(|moved| moved.settlement.map(|settlement| Shown::of(settlement, Role::Settlement)));
        let slope = moved.map(|moved| moved.slope.map(|slope| Shown::of(slope, Role::Slope)));
        let note = if moved.is_some() { NOT_A_LIMIT } else { "no source gives the width of the trough here" };
        for (kind, values) in [("settlement", settlement), ("slope", slope)] {
            to.add(format!("{kind}, {what}"), values, loss, note);
        }
    };
    let surface = at_surface(calc, plan, Length::default());
    add("surface, shallowest place of each ground", surface.high.if_sure().flatten());
    for (index, crossing) in drive.site.crossings.iter().enumerate() {
        if is_over(crossing, pipe) {
            let moved = at_service(calc, plan, crossing);
            add(&format!("crossings[{index}], {}", crossing.name), moved.high.if_sure().flatten());
        }
    }
}

fn pits(plan: &Plan<'_>, to: &mut Topical) {
    let calc = &mut Calc::silent();
    let drive = plan.drive;
    for (place, names) in [
        (Place::Launch, ["launch pit, length", "launch pit, width", "working area, launch"]),
        (Place::Reception, ["reception pit, length", "reception pit, width", "working area, reception"]),
    ] {
        let (length, width) = (length_needed(calc, plan, place), Some(width_needed(calc, plan, place)));
        let [length_name, width_name, area_name] = names;
        for (what, side) in [(length_name, length), (width_name, width)] {
            let Some(side) = side else { continue };
            let shown = side.value.map(|side| Shown::of(side, Role::Distance));
            to.add(what, shown, side.origin, "inside the shoring; known plant may need less");
        }
        let area = area_needed(plan, place);
        let shown = area.value.map(|area| Shown::of(area, Role::GroundArea));
        to.add(area_name, shown, area.origin, "pit, plant and store; a string needs its lay-down beside it");
    }
    if plan.is_jacked() {
        if let Some(lift) = lift(plan) {
            let shown = Band::same(Shown::of(lift, Role::Thrust));
            let origin = drive.site.pit_rules.crane_margin.origin;
            to.add(
                "crane at the radius of the pit",
                shown,
                origin,
                "one pipe and the margin; the machine may weigh more",
            );
        }
        if let Some((need, origin)) = plug(calc, drive) {
            let note = "whole soil in the mouth of an open casing under water, likely and high by the factor";
            to.add("soil plug", need.map(|need| Shown::of(need, Role::Distance)), origin, note);
        }
    }
    let rules = &drive.site.pit_rules;
    let ends = [("inflow, launch pit", &drive.site.launch), ("inflow, reception pit", &drive.site.reception)];
    for (what, pit) in ends {
        let Some(table) = pit.water else { continue };
        if let Some((steady, start)) = inflow(calc, pit, table, rules) {
            let band = Band { low: steady, likely: steady, high: start };
            let note = "steady, and at the start of pumping; the radius of influence is a rough guess";
            to.add(what, band, rules.pumping_start.origin, note);
        }
    }
}

/// The longest plug that open ground under water asks for, where its weight is known.
fn plug(calc: &mut Calc, drive: &Drive) -> Option<(Band<Length>, Origin)> {
    if !drive.site.face.open {
        return None;
    }
    let wet = drive.stretches.iter().filter(|stretch| stretch.head_at_face() > Length::default());
    let needs = wet.filter_map(|stretch| plug_needed(calc, drive, stretch, stretch.light())?.if_sure());
    let longest = needs.map(|need| need.value).reduce(|one, other| one.with(other, Length::max))?;
    Some((longest, drive.site.pit_rules.plug.1.origin))
}

fn inflow(calc: &mut Calc, pit: &Pit, table: Length, rules: &PitRules) -> Option<(Shown, Shown)> {
    let space = pit.space.as_ref()?;
    let (permeability, base) = space.seepage?;
    let drawdown = space.floor - table;
    if !(drawdown > Length::default()) {
        return None;
    }
    let (width, length) = (space.width.value, space.length.value);
    let flow = calc.doubted(|calc| {
        let near_radius = calc.law(EquivalentRadius { width, length });
        let reach = calc.law(InfluenceRadius { drawdown, permeability });
        calc.law(InflowUnconfined {
            permeability,
            far_depth: base - table,
            near_depth: base - space.floor,
            far_radius: reach + near_radius,
            near_radius,
        })
    });
    let shown = |flow| Shown::of(flow, Role::Flow);
    flow.if_sure().map(|flow| (shown(flow), shown(flow * rules.pumping_start.value)))
}

fn time(plan: &Plan<'_>, to: &mut Topical) {
    let times = time_plan(plan);
    let count = |band: Band<Ratio>| band.map(|shifts| Shown::of(shifts, Role::Shifts));
    for stage in times.stages.iter().flatten() {
        let passes = if stage.passes > 1 { format!(" ({} of them)", stage.passes) } else { String::new() };
        let note = match (stage.beside, stage.shifts, stage.rate) {
            (_, None, _) => "no rate is known for this work: give `pace`",
            (true, ..) => "made beside the bore meanwhile, by a crew of its own: not in the sum",
            (_, _, Some(_)) => "shifts: clear rates, and the slow one planned by the week",
            (_, _, None) => "shifts of the job as a whole, not by length",
        };
        to.add(format!("{}{passes}, shifts", stage.what), stage.shifts.map(count), stage.origin, note);
    }
    let note = "without stops and lost days; the source is that of the least certain stage";
    to.add("shifts in all", times.shifts.map(count), times.origin(&plan.drive.handbook), note);
}

fn quantities(plan: &Plan<'_>, to: &mut Topical) {
    let amounts = amounts(plan);
    let mut add = |what, value, origin: Origin, note| to.add(what, Band::same(value), origin, note);
    let spoil = Origin::Law(&SpoilVolume::EQUATION);
    for stage in amounts.spoil.iter().flatten() {
        add(stage.what, Shown::of(stage.volume, Role::Volume), spoil, "soil displaced by the pilot is not counted");
    }
    if let Some(tanks) = amounts.tanks {
        let note = "whole tanks of loosened soil, with the water that the file adds to it";
        add("tanks of spoil", Shown::of(tanks.value, Role::Count), tanks.origin, note);
    }
    if let Some(grout) = amounts.grout {
        add("grout", Shown::of(grout.value, Role::Volume), grout.origin, "annulus, and the waste that the file gives");
    }
    if let Some(pipes) = amounts.pipes {
        add("pipes pushed", Shown::of(pipes.value, Role::Count), pipes.origin, "whole pipes");
        if let Some(packers) = amounts.packers {
            add("packers", Shown::of(packers, Role::Count), pipes.origin, "one between two pipes");
        }
    }
    if let Some(joints) = amounts.joints {
        let note = "by the usual length of a pipe; those of the pull are counted there";
        add("joints before the pull", Shown::of(joints.value, Role::Count), joints.origin, note);
    }
}

fn cost(plan: &Plan<'_>, to: &mut Topical) {
    let costs = cost_plan(plan);
    let money = |cost: Band<Ratio>| cost.map(|cost| Shown::of(cost, Role::Count));
    for line in &costs.lines {
        let note = if line.cost.is_some() { "in the money of the file" } else { "not known: its amount or its price" };
        to.add(format!("cost, {}", line.what), line.cost.map(money), line.origin, note);
    }
    if let (Some(price), false) = (plan.drive.site.pace.prices.shift, costs.lines.is_empty()) {
        let note = "in the money of the file: what it prices, and nothing else";
        to.add("cost in all", costs.sum.map(money), price.origin, note);
    }
}
