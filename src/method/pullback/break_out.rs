//! Pressure of the bore fluid at the crown of the bore, against what the ground there may bear, place by place.
//!
//! People work in pits that are kept pumped; how high the fluid stands and what it loses on its way is known only where
//! the file tells it. Until then what it asks of the contractor is the check: the pressure to hold to.

use super::pressed::DRY;
use super::pulled::Pulled;
use crate::check::{Absent, Care, Draft, Outcome, Rule, at_least, at_most, only};
use crate::conditions::{Plan, vertical_stress};
use crate::drive::{BoreState, BreakOutRule, Drive, Ends, HoleState, Pipe, Pull, Stretch};
use crate::handbook::{GroundClass, Method};
use crate::law::{Calc, Doubted};
use crate::laws::collapse::FluidHead;
use crate::laws::fracture::{CavityPressure, FluidPressureLimit, StrainLimitedRadius};
use crate::laws::outside_pressure::NetOutsidePressure;
use crate::laws::reaming::{AnnularFlowLoss, AnnularYieldLoss, ReturnVelocity};
use crate::laws::soil::gravity;
use crate::method::walked::Walked;
use crate::quantity::{Angle, Band, Length, MassDensity, Measure, Pressure, Ratio, Role};
use crate::source::Cited;

const TOLD: &str = "fluid at the crown of the bore, with the loss on its way to a pit";
const HOLD: &str = "hold the fluid within the limit at the least cover, by gauge";
const HOLD_UNDER_WATER: &str = "hold the fluid within the limit at the least cover, by gauge, keep both ways open and watch the stream: \
    stop where returns are lost";
const GAUGED: &str = "a gauge: more than the weight of the ground, which firm clay bears by its strength; keep the ways to both pits \
    open, hold the fluid within the limit and watch the surface";
const UNTOLD: &str = "assumes fluid up to ground level at the higher pit and thick fluid flowing the longer way to \
    a pit: give fluid_level and returns";
const EXPOSED: &str = "hold the fluid within the limit at the least cover, by gauge, expose each service beside the bore and watch it: \
    its bedding leads fluid away";
const RELIEVED: &str = "relief pits: open them over the line, so that no fluid goes farther than 15 m (50 ft) to one, hold it within the limit by \
    gauge and watch the surface";
const LOWERED: &str = "a lower level: the fluid is kept lower in the pits than the file tells, as low as the bore is still held by it, with relief \
    pits no more than 15 m (50 ft) from any place and a gauge";
const FULL: &str = "fluid that holds the bore is more than the ground over it bears with something to spare: say how far below the \
    ground it is kept (`fluid_level`)";
const SHALLOW: &str = "so little cover that fluid under pressure breaks out";

/// What a pressure that is held by a gauge leaves of its limit under a stream, and beside a service: our judgement.
pub(super) const SPARE_TO_BE_SURE: f64 = 2.0;
/// Fluid over the crown of the bore at the higher pit where it is pumped from there: our judgement.
const PUMPED: f64 = 0.5;
/// Share of the drive that the fluid goes to the nearer pit.
const HALF_WAY: f64 = 0.5;
/// The farthest that it goes to a relief pit: our judgement.
const TO_RELIEF: f64 = 15.0;

/// The place where the fluid comes closest to what the ground may bear, of both ends of each stretch, where the surface
/// breaks between, and half way.
pub(in crate::method) fn check(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let Plan { drive, pipe, .. } = **at;
    let Pulled { pull, .. } = at.pulled()?;
    only(pull.works.hole == HoleState::Fluid, DRY)?;
    calc.part("break-out of the bore fluid");
    let bore = Bore::of(drive, pipe, pull);
    // Half way the nearer pit is farthest.
    let middle = drive.length.value * HALF_WAY;
    let is_between = |stretch: &&Stretch| stretch.from < middle && middle < stretch.to;
    let middle =
        drive.stretches.iter().filter(is_between).map(|stretch| (stretch, (middle, stretch.way.invert(middle))));
    let checks = drive.places().chain(middle).map(|(stretch, (along, invert))| bore.at(calc, stretch, along, invert));
    checks.reduce(Draft::worse).ok_or(Absent::Missing)
}

/// A bore full of fluid. Heights are over the invert at the launch pit.
pub(super) struct Bore<'a> {
    drive: &'a Drive,
    pipe: &'a Pipe,
    pull: &'a Pull,
    slope: Ratio,
    /// From the invert up to the crown of the bore.
    pub(super) crown: Length,
    /// Up to where the fluid stands: at its best, and at its worst.
    level: Ends<Length>,
    /// Up to where it stands in pits that are pumped.
    pumped: Length,
}

impl<'a> Bore<'a> {
    /// How high the fluid stands over the crown at a place, at its best and at its worst for what it bursts.
    pub(super) fn over_crown(&self, along: Length) -> Ends<Length> {
        let crown = self.slope * along + self.crown;
        self.level.map(|level| (level - crown).max(Length::default()))
    }

    pub(super) fn of(drive: &'a Drive, pipe: &'a Pipe, pull: &'a Pull) -> Self {
        let slope = drive.grade.value.tan();
        let climb = drive.length.value * slope;
        let [launch, reception] = [&drive.site.launch, &drive.site.reception].map(|pit| pit.invert);
        let ground = launch.max(climb + reception);
        let crown = pipe.outside_diameter.value / 2.0 + pipe.bore.value / 2.0;
        let pumped = (climb.max(Length::default()) + crown + Length::from_si(PUMPED)).min(ground);
        let level = pull.fluid_level.map_or(Ends { low: pumped, high: ground }, |told| Ends::same(ground - told.value));
        Self { drive, pipe, pull, slope, crown, level, pumped }
    }

    fn at(&self, calc: &mut Calc, stretch: &Stretch, along: Length, invert: Length) -> Draft {
        let rule = &self.drive.site.break_out;
        let cover = invert - self.crown;
        if cover < rule.least_cover.value {
            return at_least(Role::Distance, cover, rule.least_cover).by(Rule::High).with_note(SHALLOW);
        }
        let is_told = self.pull.fluid_level.is_some() && self.pull.works.returns.is_some();
        let length = self.drive.length.value;
        let (fluids, crown) = (self.pull.fluids, self.slope * along + self.crown);
        let adverse = self.stands(calc, fluids.heavy, self.level.high - crown, (along.max(length - along), rule.thick));
        // Where no level is told, or a higher one than the ground bears, it is asked to stand as high as sand and silt are held
        // open; clay is held against what stands in pumped pits by another check.
        let relies = stretch.open(Method::Pullback).is_some_and(|open| open.0 == BoreState::Held)
            && !stretch.is_all(GroundClass::is_clay);
        let holding = relies.then(|| {
            let stress = vertical_stress(calc, stretch.light(), cover);
            self.need(calc, stress.total - stress.effective).value / (fluids.clean * gravity())
        });
        // By the nearer pit, past a pipe that lies on a side of its bore.
        let nearer = along.min(length - along) * rule.past_lying.si();
        let mut low =
            |level: Length, way, yield_point| self.stands(calc, fluids.clean, level - crown, (way, yield_point));
        let least = low(self.level.low, nearer, rule.thinnest);
        let asked = self.pumped.max(crown + holding.unwrap_or_default());
        let level = self.pull.fluid_level.map_or(asked, |_| self.level.low);
        let lower = asked.min(level);
        let (way, yield_point) = if is_told { (nearer, rule.thinnest) } else { (length * HALF_WAY, rule.thin) };
        let relief = Length::from_si(TO_RELIEF).min(way);
        let [best, relieved] = [way, relief].map(|way| low(level, way, yield_point));
        let lowered = low(lower, relief, yield_point);
        let mut bears = |best, cap: Cited<Ratio>| (self.bears(calc, stretch, cover, (best, cap.value)), cap);
        let (weak, strong) = (bears(false, rule.cap), bears(true, rule.cap_firm_clay));
        let firm = stretch.is_all(|class| class.is_clay() && class != GroundClass::SoftClay);
        let check = hold(adverse, weak);
        let passes = |pressure, spare| leaves(pressure, weak.0, spare);
        if passes(adverse, Ratio::from(1.0)) {
            return check.with_note(TOLD).at_best(hold(least, strong));
        }
        let site = &self.drive.site;
        let near = site
            .crossings
            .iter()
            .any(|crossing| crossing.axis_distance(self.pipe.outside_diameter.value) < rule.near_service.value);
        // Fluid that breaks out into a stream, or along a service, is lost, and seen: with much to spare it is held from it.
        let (stream, guarded) = (site.surface.stream, site.surface.guarded && !site.surface.stream);
        let spare = if stream || near { Ratio::from(SPARE_TO_BE_SURE) } else { spare(self.drive, rule) };
        let gauged = bears(false, rule.cap_firm_clay);
        // What is told of it is held by a gauge as well as what is not.
        let open = !stream && !near;
        let by_gauge = [
            (stream, best, weak, HOLD_UNDER_WATER),
            (near, best, weak, EXPOSED),
            (open, best, weak, HOLD),
            (open && firm, best, gauged, GAUGED),
            (open, relieved, weak, RELIEVED),
            (open && firm, relieved, gauged, RELIEVED),
            (open, lowered, weak, LOWERED),
            (open && firm, lowered, gauged, LOWERED),
        ];
        let may_hold = !(guarded || stream && near);
        let mut held =
            by_gauge.into_iter().filter(|(may, pressure, limit, _)| *may && leaves(*pressure, limit.0, spare));
        if let Some((_, pressure, limit, note)) = held.next().filter(|_| may_hold) {
            return hold(pressure, limit).with_care(Care::Condition, note);
        }
        if is_told {
            // All is told of the fluid that can be.
            return check.with_note(TOLD).at_best(hold(least, strong)).settled_by(&[&["ground[].soil"]]);
        }
        let check = check.at_best(hold(least, strong));
        if relies && !guarded && self.pull.fluid_level.is_none() {
            return check.with_note(FULL).settled_by(&[&["pull.fluid_level"]]);
        }
        check.with_note(UNTOLD).settled_by(&[&["pull.fluid_level", "pull.returns", "ground[].soil"]])
    }

    pub(super) fn rule(&self) -> &BreakOutRule {
        &self.drive.site.break_out
    }

    /// What fluid takes to hold ground that runs, at this depth of the crown under so much water.
    pub(super) fn need(&self, calc: &mut Calc, pore: Pressure) -> Cited<Pressure> {
        let holds = &self.drive.site.break_out.holds;
        if pore > Pressure::default() {
            return holds.over_water.map(|over| pore + over);
        }
        holds.over_crown.map(|height| calc.law(FluidHead { density: self.pull.fluids.light, height }))
    }

    /// Pressure of fluid that stands so high over the crown, with its loss on the way to a pit.
    fn stands(
        &self,
        calc: &mut Calc,
        density: MassDensity,
        height: Length,
        (way, yield_point): (Length, Pressure),
    ) -> Doubted<Pressure> {
        let (bore, outside_diameter) = (self.pipe.bore.value, self.pipe.outside_diameter.value);
        calc.doubted(|calc| {
            let added = match self.pull.works.returns {
                Some(returns) => {
                    let pull_rate = self.drive.length.value / self.pull.duration;
                    let velocity = calc.law(ReturnVelocity { flow: returns.flow, pull_rate, bore, outside_diameter });
                    calc.law(AnnularFlowLoss {
                        plastic_viscosity: returns.plastic_viscosity,
                        velocity,
                        yield_point: returns.yield_point,
                        bore,
                        outside_diameter,
                        length: way,
                    })
                }
                None => calc.law(AnnularYieldLoss { yield_point, bore, outside_diameter, length: way }),
            };
            let height = height.max(Length::default());
            calc.law(NetOutsidePressure { density, height, added, inside: Pressure::default() })
        })
    }

    /// What the ground at the crown of the bore may bear: of the lightest and weakest, or at its best.
    fn bears(
        &self,
        calc: &mut Calc,
        stretch: &Stretch,
        depth: Length,
        (best, cap): (bool, Ratio),
    ) -> Doubted<Pressure> {
        let rule = &self.drive.site.break_out;
        let column = if best { stretch.heavy() } else { stretch.light() };
        let end = |ends: Ends<Pressure>| if best { ends.high } else { ends.low };
        let earth = &stretch.earth;
        let told = column.soil.undrained.map(|clay| clay.strength);
        let clay =
            told.or(earth.strength.map(|strength| end(strength.ends))).filter(|clay| *clay > Pressure::default());
        calc.doubted(|calc| {
            let stress = vertical_stress(calc, column, depth);
            let Some(shear_modulus) = earth.shear_modulus.map(end) else { return cap * stress.total };
            // Clay is loaded faster than it drains: total stress, no friction.
            let drained = column.soil.at_pipe().map_or(Angle::default(), |layer| layer.friction_angle);
            let (effective_stress, friction_angle, cohesion) = match clay {
                Some(strength) => (stress.total, Angle::default(), strength),
                None => (stress.effective, drained, Pressure::default()),
            };
            let bore_radius = self.pipe.bore.value / 2.0;
            let plastic_radius = calc.law(StrainLimitedRadius {
                bore_radius,
                strain: rule.strain,
                effective_stress,
                friction_angle,
                cohesion,
                shear_modulus,
            });
            let cavity = calc.law(CavityPressure {
                effective_stress,
                pore_pressure: stress.total - effective_stress,
                friction_angle,
                cohesion,
                shear_modulus,
                bore_radius,
                plastic_radius: plastic_radius.min(depth + bore_radius),
            });
            let safety = if stretch.class.is_granular() { rule.margin_sand } else { rule.margin_other };
            calc.law(FluidPressureLimit { cavity, safety, cap, total_stress: stress.total })
        })
    }
}

/// A pressure at the crown, held to what the ground there bears.
pub(super) fn hold(pressure: Doubted<Pressure>, (limit, cap): (Doubted<Pressure>, Cited<Ratio>)) -> Draft {
    let limit = limit.map(|limit| Cited::new(limit, cap.origin));
    at_most(Role::Pressure, pressure.map(Band::same), limit).by(Rule::High)
}

/// Whether a pressure leaves so much of its limit.
pub(super) fn leaves(pressure: Doubted<Pressure>, limit: Doubted<Pressure>, spare: Ratio) -> bool {
    pressure.zip(limit).map(|(pressure, limit)| pressure * spare <= limit).if_sure().unwrap_or(false)
}

/// What a pressure that is held by a gauge leaves of its limit, over its reading: some under a road, or what may be one.
pub(super) fn spare(drive: &Drive, rule: &BreakOutRule) -> Ratio {
    let surface = &drive.site.surface;
    if surface.is_told && !surface.road { Ratio::from(1.0) } else { rule.spare_under_road }
}
