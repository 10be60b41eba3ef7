//! What lies on a pulled pipe in service, what its ring bears of it and how far it goes out of round.
//!
//! Traffic counts in full and at the modulus of years at the high level, at that of its hours at the likely one. The
//! annulus is not taken to hold the pipe unless grout in it is proved.

use super::section::Section;
use crate::check::Check;
use crate::conditions::vertical_stress;
use crate::drive::{Drive, Pipe, Stretch};
use crate::law::{Calc, Doubted, Law, Recorder};
use crate::laws::collapse::OvalityFactor;
use crate::laws::deflection::{IowaDeflection, MOST_DEFLECTION};
use crate::laws::outside_pressure::{NetOutsidePressure, SupportedCollapse};
use crate::laws::soil::{SiloStress, SiloWidthTerzaghi};
use crate::quantity::{Angle, Band, Length, Measure, Pressure, Ratio};
use crate::source::Cited;

/// Why nothing is told of soil that the file weighs in part.
pub(super) const NO_WEIGHT: &str = "below water the saturated unit weight of the ground is needed";

const TOO_SHALLOW: &str =
    "the cover is less than the table of live load has: what traffic puts on the pipe is not known";

/// A ring as it stands in service.
#[derive(Clone, Copy)]
pub(super) struct InPlace {
    pub(super) section: Section,
    /// Of years.
    pub(super) modulus: Pressure,
    /// What a load of hours counts for at the modulus of years.
    pub(super) share: Doubted<Ratio>,
    pub(super) poisson: Ratio,
    pub(super) ovality: Ratio,
}

/// What lies on a pipe.
#[derive(Clone, Copy)]
pub(super) struct Load {
    /// At the modulus of years.
    pub(super) pressure: Band<Pressure>,
    /// Whether the soil of every stretch is known.
    pub(super) knows_soil: bool,
    /// Whether the file tells soil whose weight below water it leaves out.
    pub(super) lacks_weight: bool,
}

/// How far a ring goes out of round: in doubt by its soil and its traffic, and within that by the range of the form that
/// tells it.
pub(super) type Deflection = Doubted<Doubted<Band<Ratio>>>;

/// Pressure of the traffic over a stretch; none where it is not counted or not known.
fn traffic(pipe: &Pipe, stretch: usize) -> Pressure {
    let known = pipe.traffic.as_ref().and_then(|traffic| traffic.get(stretch).copied().flatten());
    known.unwrap_or_default()
}

/// The greatest pressure of traffic.
fn greatest_traffic(pipe: &Pipe) -> Pressure {
    pipe.traffic.iter().flatten().flatten().fold(Pressure::default(), |most, live| most.max(*live))
}

/// Whether traffic counts on the pipe.
pub(super) fn is_driven_over(pipe: &Pipe) -> bool {
    greatest_traffic(pipe) > Pressure::default() || is_too_shallow(pipe)
}

/// Whether it lies too shallow for the table anywhere.
pub(super) fn is_too_shallow(pipe: &Pipe) -> bool {
    pipe.traffic.iter().flatten().any(Option::is_none)
}

/// Not decided where the traffic cannot be told.
pub(super) fn judged(pipe: &Pipe, check: Check<()>) -> Check<()> {
    if is_too_shallow(pipe) { check.undecided(TOO_SHALLOW) } else { check }
}

/// Total stress at the invert in the deepest place of a stretch, at its greatest; `None` where it is not known.
fn whole<R: Recorder>(calc: &mut Calc<R>, stretch: &Stretch) -> Option<Pressure> {
    Some(vertical_stress(calc, stretch.column()?, stretch.way.deepest)?.total)
}

/// Whether any stretch tells its soil, yet not what it weighs below water: less is known of it than the file looks.
pub(super) fn lacks_weight<R: Recorder>(calc: &mut Calc<R>, drive: &Drive) -> bool {
    drive.stretches.iter().any(|stretch| stretch.soil.is_some() && whole(calc, stretch).is_none())
}

/// Weight of soil and water with the traffic over it, where they are most; `None` where the soil of any is not known.
fn whole_of_all<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe) -> Option<Pressure> {
    let mut greatest = Pressure::default();
    for (index, stretch) in drive.stretches.iter().enumerate() {
        greatest = greatest.max(whole(calc, stretch)? + traffic(pipe, index));
    }
    Some(greatest)
}

impl InPlace {
    /// Likely groundwater and traffic alone, high the whole weight of soil and water and the traffic.
    pub(super) fn load<R: Recorder>(
        &self,
        calc: &mut Calc<R>,
        drive: &Drive,
        pipe: &Pipe,
        height: Length,
    ) -> Doubted<Load> {
        let live = greatest_traffic(pipe);
        calc.doubted(|calc| {
            let water = calc.law(NetOutsidePressure {
                density: super::force::water(),
                height,
                added: Pressure::default(),
                inside: Pressure::default(),
            });
            let whole = whole_of_all(calc, drive, pipe);
            let high = (water + live).max(whole.unwrap_or_default());
            let likely = if live > Pressure::default() { water + live * calc.take(self.share) } else { water };
            let pressure = Band { low: water, likely, high };
            Load { pressure, knows_soil: whole.is_some(), lacks_weight: lacks_weight(calc, drive) }
        })
    }

    /// What it bears for a load of the time of its modulus, as far out of round as it goes by level. A ring that goes
    /// beyond the range of its deflection bears less than at the end of it: what fails there fails, and what would pass
    /// is in doubt.
    pub(super) fn limit<R: Recorder>(
        &self,
        calc: &mut Calc<R>,
        drive: &Drive,
        safety: Cited<Ratio>,
        demand: Band<Pressure>,
        deflection: Option<Deflection>,
    ) -> Cited<Band<Pressure>> {
        let round = self.ovality.max(drive.in_service.ovality.value);
        let most = Ratio::from(MOST_DEFLECTION);
        // It deflects from the shape it is delivered in.
        let bent = deflection.map_or(Doubted::sure(Band::default()), |deflection| {
            deflection.map(|bent| bent.in_spite_of_doubt().map(|bent| self.ovality + bent))
        });
        // A ring that stays rounder than what counts at least does not rest on its deflection.
        let counts = bent.in_spite_of_doubt().high > round;
        let bent = if counts { calc.take(bent) } else { bent.in_spite_of_doubt() };
        let limit = demand.with(bent, |demand, bent| (demand, bent)).map(|(demand, bent)| {
            let counted = round.max(bent.min(most));
            let limit = self.resists(calc, drive, counted) / safety.value;
            let would_pass = bent > counted && demand > Pressure::default() && demand <= limit;
            calc.take(Doubted::sure(limit).in_doubt(would_pass.then_some(&IowaDeflection::EQUATION)))
        });
        safety.map(|_| limit)
    }

    fn resists<R: Recorder>(&self, calc: &mut Calc<R>, drive: &Drive, ovality: Ratio) -> Pressure {
        let service = &drive.in_service;
        let enhancement = if is_held(drive) { service.supported } else { service.unsupported }.value;
        self.collapse(calc, enhancement, ovality)
    }

    /// Pressure at which it collapses, with what its surroundings add to it.
    pub(super) fn collapse<R: Recorder>(&self, calc: &mut Calc<R>, enhancement: Ratio, ovality: Ratio) -> Pressure {
        let ovality_factor = calc.law(OvalityFactor { ovality });
        calc.law(SupportedCollapse {
            enhancement,
            modulus: self.modulus,
            poisson: self.poisson,
            dimension_ratio: self.section.outside_diameter / self.section.wall,
            ovality_factor,
        })
    }

    /// How far it goes out of round; `None` where the soil of a stretch is not known or proved grout holds the ring.
    pub(super) fn deflection<R: Recorder>(&self, calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe) -> Option<Deflection> {
        if is_held(drive) {
            return None;
        }
        let (first, whole_lag) = drive.in_service.lag;
        let one = Ratio::from(1.0);
        let greatest = calc.doubted(|calc| {
            let share = if is_driven_over(pipe) { calc.take(self.share) } else { one };
            let mut greatest = Doubted::sure(Band::<Ratio>::default());
            for (index, stretch) in drive.stretches.iter().enumerate() {
                let live = traffic(pipe, index);
                let whole = whole(calc, stretch)? + live;
                let arched = arched(calc, pipe, stretch)?;
                let here = calc.doubted(|calc| {
                    let mut likely = self.iowa(calc, drive, arched, first);
                    if live > Pressure::default() {
                        likely += Self { modulus: self.modulus / share, ..*self }.iowa(calc, drive, live, one);
                    }
                    Band { low: likely, likely, high: self.iowa(calc, drive, whole, whole_lag).max(likely) }
                });
                greatest = greatest.zip(here).map(|(greatest, here)| greatest.with(here, Ratio::max));
            }
            Some(greatest)
        });
        greatest.transpose()
    }

    fn iowa<R: Recorder>(&self, calc: &mut Calc<R>, drive: &Drive, pressure: Pressure, lag: Ratio) -> Ratio {
        calc.law(IowaDeflection {
            lag,
            bedding: drive.in_service.bedding,
            pressure,
            modulus: self.modulus,
            outside_diameter: self.section.outside_diameter,
            wall: self.section.wall,
            soil_modulus: drive.annulus.soil_modulus.unwrap_or_default(),
        })
    }
}

/// Whether hardened grout that is proved holds the ring.
pub(super) const fn is_held(drive: &Drive) -> bool {
    drive.annulus.proved && drive.annulus.grouted
}

/// Pressure of a column of soil over the bore that hangs in its sides with half of its friction.
fn arched<R: Recorder>(calc: &mut Calc<R>, pipe: &Pipe, stretch: &Stretch) -> Option<Pressure> {
    let soil = stretch.soil.as_deref()?;
    let layer = soil.at_pipe()?;
    let half = Angle::from_si(layer.friction_angle.si() / 2.0);
    let width = calc.law(SiloWidthTerzaghi { outside_diameter: pipe.bore.value, friction_angle: half });
    Some(calc.law(SiloStress {
        unit_weight: layer.saturated.unwrap_or(layer.moist),
        width,
        depth: stretch.way.deepest,
        lateral_friction: half.tan(),
        cohesion: Pressure::default(),
        surcharge: soil.surcharge,
    }))
}
