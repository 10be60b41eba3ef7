//! What lies on a flexible pipe in service, place by place, what its ring bears of it and how far it goes out of round.
//!
//! Likely water and a column of soil that hangs in its sides, high the same with less side friction where its arch lasts
//! and the whole column elsewhere, at the modulus of years; traffic at both for its time. Rock that stands likely loads it
//! with nothing, and at the high level as soil that hangs. Nothing holds the ring but what the file tells: at its best the
//! native ground does, unless the file says that the annulus stays open.

use super::section::Section;
use crate::check::Draft;
use crate::conditions::vertical_stress;
use crate::drive::{Column, Drive, Ends, Pipe, RingInService, Stretch};
use crate::handbook::GroundClass;
use crate::law::{Calc, Doubted, Law};
use crate::laws::collapse::OvalityFactor;
use crate::laws::deflection::{IowaDeflection, MOST_DEFLECTION};
use crate::laws::outside_pressure::{BucklingInSoil, ElasticSupportByDepth, SupportedCollapse, WaterBuoyancyFactor};
use crate::laws::soil::{SiloStress, SiloWidthTerzaghi};
use crate::quantity::{Angle, Band, Length, Measure, Pressure, Ratio};
use crate::source::{Cited, Equation};
use core::f64::consts::FRAC_PI_4;

const TOO_SHALLOW: &str =
    "the cover is less than the table of live load has: what traffic puts on the pipe is not known";

/// Said where a ring does not bear the column over it, and nobody has told the ground, which may carry itself.
const NOT_TOLD: Equation = Equation::judged(
    "ground that is not told",
    "the column over the pipe, which decides nothing",
    "flexible pipe in ground of class unknown",
    "ground whose class is told",
);

/// A ring as it stands in service.
#[derive(Clone, Copy)]
pub(super) struct InPlace {
    /// Less what the bore may scratch away: a score opens first.
    pub(super) section: Section,
    /// As delivered: a score is local, and the ring as stiff as without it.
    pub(super) wall: Length,
    /// Bore over which the soil hangs.
    pub(super) bore: Length,
    /// Of years.
    pub(super) modulus: Pressure,
    /// What a load of hours counts for at the modulus of years.
    pub(super) share: Doubted<Ratio>,
    pub(super) poisson: Ratio,
    pub(super) ovality: Ratio,
}

/// What surrounds a pipe at one place.
#[derive(Clone, Copy)]
pub(super) struct Around<'a> {
    column: Column<'a>,
    /// Depth of the invert.
    depth: Length,
    /// Pressure of traffic; none where the cover is less than its table has.
    live: Option<Pressure>,
    /// Of what holds the ring.
    soil_modulus: Pressure,
    /// Of the ground, once what is between is pressed full; none where the file says that it
    /// stays open, or what holds the ring.
    pressed_full: Option<Pressure>,
    /// Rock, which carries itself.
    stands: bool,
    /// Width over the bore of the column that hangs for good; none where nothing keeps it up.
    arch: Option<Ratio>,
    /// Nobody has told the ground.
    unknown: bool,
    /// Pushed into a bore that is hardly wider: no grout round it holds a ring.
    close: bool,
}

/// The shallowest and the deepest place of each stretch: all that is not known on the safe side, and at its best where
/// something is not.
pub(super) fn places<'a>(
    drive: &'a Drive,
    pipe: &'a Pipe,
    ring: &'a RingInService,
) -> impl Iterator<Item = (Around<'a>, Option<Around<'a>>)> {
    let stretches = drive.stretches.iter().enumerate();
    stretches.flat_map(move |(index, stretch)| {
        let live = ring.traffic.each(|traffic| traffic.get(index).copied().unwrap_or_default());
        let (shallowest, deepest) = (stretch.way.shallowest, stretch.way.deepest);
        let shallow = (shallowest < deepest).then(|| (shallowest, live.map(|[shallow, _]| shallow)));
        let deep = Some((deepest, live.map(|[_, deep]| deep)));
        [shallow, deep]
            .into_iter()
            .flatten()
            .map(move |(depth, live)| around(drive, (pipe, ring), stretch, depth, live))
    })
}

fn around<'a>(
    drive: &Drive,
    (pipe, ring): (&Pipe, &RingInService),
    stretch: &'a Stretch,
    depth: Length,
    live: Ends<Option<Pressure>>,
) -> (Around<'a>, Option<Around<'a>>) {
    let stands = stretch.is_all(GroundClass::is_rock);
    let told = drive.annulus.soil_modulus;
    let outside_diameter = pipe.outside_diameter.value;
    let arch = ring.arch.filter(|(cover, _)| depth - outside_diameter >= *cover);
    let adverse = Around {
        column: stretch.heavy(),
        depth: depth.max(outside_diameter),
        live: live.high,
        soil_modulus: told.unwrap_or_default(),
        pressed_full: (told.is_none() && !drive.annulus.open).then_some(stretch.earth.native_modulus.high),
        stands,
        arch: arch.filter(|_| stretch.is_all(GroundClass::keeps_its_arch)).map(|(_, width)| width),
        close: ring.jacked.is_some(),
        unknown: stretch.class == GroundClass::Unknown && !stretch.earth.told && told.is_none(),
    };
    let native = if drive.annulus.open { Pressure::default() } else { stretch.earth.native_modulus.high };
    let best = Around { column: stretch.light(), live: live.low, soil_modulus: told.unwrap_or(native), ..adverse };
    let is_known = stretch.earth.told && live.low == live.high && best.soil_modulus == adverse.soil_modulus;
    (adverse, (!is_known).then_some(best))
}

impl Around<'_> {
    /// With the annulus pressed full of grout.
    pub(super) fn pressed_full(&self) -> Option<Self> {
        self.pressed_full.map(|soil_modulus| Self { soil_modulus, ..*self })
    }

    /// Not decided where the traffic cannot be told, with the one field that would settle most.
    pub(super) fn judged(&self, drive: &Drive, check: Draft) -> Draft {
        let check = if self.live.is_none() { check.undecided(TOO_SHALLOW) } else { check };
        // What stands round the ring may be rock.
        if self.unknown && check.utilisation().is_none_or(|used| used > 1.0) {
            return check.in_doubt(Some(&NOT_TOLD)).settled_by(&[&["ground[].class"]]);
        }
        check.settled_by(if drive.annulus.soil_modulus.is_none() && (drive.annulus.open || self.close) {
            &[&["annulus.soil_modulus"]]
        } else if drive.annulus.soil_modulus.is_none() {
            &[&["annulus.soil_modulus"], &["annulus.filling", "annulus.proof"]]
        } else if !drive.site.surface.is_told {
            &[&["surface.over"]]
        } else {
            &[&["ground[].soil"]]
        })
    }

    fn live(&self) -> Pressure {
        self.live.unwrap_or_default()
    }

    /// What the ground likely puts on the pipe, and at most, of a whole column of this pressure: of rock nothing and what
    /// soil puts on it likely, since no bore in rock carries the column to the surface.
    fn lies(&self, calc: &mut Calc, bore: Length, whole: Pressure) -> (Pressure, Pressure) {
        let Some(layer) = self.column.soil.at_pipe() else { return (Pressure::default(), whole) };
        let phi = layer.friction_angle;
        let half = Angle::from_si(phi.si() / 2.0);
        let width = calc.law(SiloWidthTerzaghi { outside_diameter: bore, friction_angle: half });
        let hangs = self.hangs(calc, whole, (width, half.tan()));
        match self.arch {
            _ if self.stands => (Pressure::default(), hangs.min(whole)),
            Some(bores) => {
                let active = Angle::from_si(FRAC_PI_4 - phi.si() / 2.0).tan();
                let most = self.hangs(calc, whole, (bores * bore, active * active * half.tan()));
                (hangs, most.max(hangs).min(whole))
            }
            None => (hangs, whole),
        }
    }

    /// Pressure of a column of soil so wide, whole of this pressure, with such friction in its sides.
    fn hangs(&self, calc: &mut Calc, whole: Pressure, (width, lateral_friction): (Length, Ratio)) -> Pressure {
        let surcharge = self.column.soil.surcharge;
        let unit_weight = (whole - surcharge) / self.depth;
        let cohesion = Pressure::default();
        calc.law(SiloStress { unit_weight, width, depth: self.depth, lateral_friction, cohesion, surcharge })
    }
}

impl InPlace {
    /// What lies on it, at the modulus of years.
    pub(super) fn load(&self, calc: &mut Calc, at: &Around<'_>) -> Doubted<Band<Pressure>> {
        calc.doubted(|calc| {
            let stress = vertical_stress(calc, at.column, at.depth);
            let water = stress.total - stress.effective;
            let (hangs, most) = at.lies(calc, self.bore, stress.effective);
            let live = at.live();
            let share = if live > Pressure::default() { calc.take(self.share) } else { Ratio::from(1.0) };
            let likely = water + hangs + live * share;
            Band { low: water, likely, high: (water + most + live * share).max(likely) }
        })
    }

    /// How far it goes out of round. What is beyond the range of the form fails at the end of it already.
    pub(super) fn deflection(&self, calc: &mut Calc, drive: &Drive, at: &Around<'_>) -> Doubted<Band<Ratio>> {
        let (first, whole_lag) = drive.in_service.lag;
        let one = Ratio::from(1.0);
        calc.doubted(|calc| {
            let total = vertical_stress(calc, at.column, at.depth).total;
            let (hangs, most) = at.lies(calc, self.bore, total);
            let live = at.live();
            let share = if live > Pressure::default() { calc.take(self.share) } else { one };
            let bent = calc.doubted(|calc| {
                // What stands at its sides gives way with time; a ring that nothing holds creeps by itself.
                let mut under = |pressure, lag| {
                    let alone = Around { soil_modulus: Pressure::default(), ..*at };
                    self.iowa(calc, drive, pressure, lag, at).min(self.iowa(calc, drive, pressure, one, &alone))
                };
                let mut likely = under(hangs, first);
                let mut high = under(most, if at.arch.is_some() { first } else { whole_lag });
                if live > Pressure::default() {
                    let quick = Self { modulus: self.modulus / share, ..*self }.iowa(calc, drive, live, one, at);
                    (likely, high) = (likely + quick, high + quick);
                }
                Band { low: likely, likely, high: high.max(likely) }
            });
            bent.in_spite_of_doubt()
        })
    }

    fn iowa(&self, calc: &mut Calc, drive: &Drive, pressure: Pressure, lag: Ratio, at: &Around<'_>) -> Ratio {
        calc.law(IowaDeflection {
            lag,
            bedding: drive.in_service.bedding,
            pressure,
            modulus: self.modulus,
            outside_diameter: self.section.outside_diameter,
            wall: self.wall,
            soil_modulus: at.soil_modulus,
        })
    }

    /// What it bears for a load of the time of its modulus, as far out of round as it goes by level; more where ground
    /// holds it. A ring that goes beyond the range of its deflection bears less than at the end of it: what fails there
    /// fails, and what would pass is in doubt.
    pub(super) fn limit(
        &self,
        calc: &mut Calc,
        drive: &Drive,
        safety: Cited<Ratio>,
        demand: Band<Pressure>,
        (bent, at): (Band<Ratio>, &Around<'_>),
    ) -> Cited<Band<Pressure>> {
        let held = self.held(calc, drive, at);
        let limit = demand.zip(bent).map(|(demand, bent)| {
            let (counted, bent) = self.out_of_round(drive, bent);
            let limit = self.resists(calc, drive, counted) / safety.value;
            let would_pass = bent > counted && demand <= limit && demand > held;
            calc.take(Doubted::sure(limit.max(held)).in_doubt(would_pass.then_some(&IowaDeflection::EQUATION)))
        });
        safety.map(|_| limit)
    }

    /// What [`limit`](Self::limit) comes to, whatever lies on the ring.
    pub(super) fn bears(
        &self,
        calc: &mut Calc,
        drive: &Drive,
        safety: Cited<Ratio>,
        (bent, at): (Band<Ratio>, &Around<'_>),
    ) -> Band<Pressure> {
        let held = self.held(calc, drive, at);
        bent.map(|bent| (self.resists(calc, drive, self.out_of_round(drive, bent).0) / safety.value).max(held))
    }

    /// How far out of round it counts, and how far it is: it deflects from the shape it is delivered in; what stays rounder
    /// than counts at least does not rest on it.
    fn out_of_round(&self, drive: &Drive, bent: Ratio) -> (Ratio, Ratio) {
        let (round, bent) = (self.ovality.max(drive.in_service.ovality.value), self.ovality + bent);
        (round.max(bent.min(Ratio::from(MOST_DEFLECTION))), bent)
    }

    /// Allowable pressure where ground holds the ring; none in an open bore.
    fn held(&self, calc: &mut Calc, drive: &Drive, at: &Around<'_>) -> Pressure {
        let Section { outside_diameter, wall } = self.section;
        let cover = at.depth - outside_diameter;
        if at.soil_modulus <= Pressure::default() || cover <= Length::default() {
            return Pressure::default();
        }
        let over = at.column.table.map_or(Length::default(), |table| (cover - table).max(Length::default()).min(cover));
        let (shallow, deep) = drive.in_service.in_soil;
        let safety = if cover < 2.0 * outside_diameter { shallow } else { deep };
        let water_factor = calc.law(WaterBuoyancyFactor { water_height: over, cover });
        let elastic_support = calc.law(ElasticSupportByDepth { cover });
        calc.law(BucklingInSoil {
            safety,
            water_factor,
            elastic_support,
            soil_modulus: at.soil_modulus,
            modulus: self.modulus,
            outside_diameter,
            wall,
        })
    }

    fn resists(&self, calc: &mut Calc, drive: &Drive, ovality: Ratio) -> Pressure {
        let service = &drive.in_service;
        let enhancement = if is_held(drive) { service.supported } else { service.unsupported }.value;
        self.collapse(calc, enhancement, ovality)
    }

    /// Pressure at which it collapses, with what its surroundings add to it.
    pub(super) fn collapse(&self, calc: &mut Calc, enhancement: Ratio, ovality: Ratio) -> Pressure {
        let ovality_factor = calc.law(OvalityFactor { ovality });
        calc.law(SupportedCollapse {
            enhancement,
            modulus: self.modulus,
            poisson: self.poisson,
            dimension_ratio: self.section.outside_diameter / self.section.wall,
            ovality_factor,
        })
    }
}

/// Whether hardened grout that is proved holds the ring.
pub(super) const fn is_held(drive: &Drive) -> bool {
    drive.annulus.proved && drive.annulus.grouted
}
