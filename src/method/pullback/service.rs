//! A pipe after the pull: under water, soil and traffic, and with a vacuum inside; while the annulus is grouted, and how
//! far plastic goes out of round.

use super::in_place::{InPlace, Load, NO_WEIGHT, is_driven_over, is_held, is_too_shallow, judged, lacks_weight};
use super::section::Section;
use super::strength::{Cold, modulus};
use crate::check::{Check, Subject, Verdict};
use crate::drive::{Barrel, Drive, Grout, ModulusPoints, PePipe, Pipe, Pull, PulledPipe, PvcPipe};
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::collapse::{CriticalPressure, OvalityFactor};
use crate::laws::deflection::BuoyantDeflection;
use crate::laws::outside_pressure::{NetOutsidePressure, PressureOfBothTimes};
use crate::method::scheme::Scheme;
use crate::quantity::unit::STANDARD_GRAVITY;
use crate::quantity::{Band, Length, Measure, Pressure, Ratio, Role};
use crate::source::Cited;
use uom::si::f64::Acceleration;

const HEAT: &str = "the heat of setting grout softens PE: it is not counted beyond the temperature of the pull";
const WATER_ONLY: &str = "groundwater alone: the soil of every stretch is not given";
const WATER_AND_TRAFFIC: &str = "groundwater and traffic alone: the soil of every stretch is not given";
const WITH_SOIL: &str = "likely groundwater and traffic, high the whole weight of soil and water too, without \
                         support, out of round as it deflects";
const SUPPORTED: &str = "held by hardened grout all round, which is to be proved";
const YEARS: &str = "against the modulus of years; likely groundwater and traffic, high the whole weight of soil and \
                     water too, where it is known, out of round as it deflects";
const ELASTIC: &str = "as an elastic ring; likely groundwater and traffic, high the whole weight of soil and water too, \
                       where it is known, out of round as it deflects";
const LOAD: &str = "likely a column of soil that hangs in its sides, high its whole weight, both with traffic; against \
                    what collapse counts on at least";

pub(super) fn checks<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    pe: &PePipe,
    pull: &Pull,
    scheme: &mut Scheme,
) {
    let section = Section::scored(calc, pipe.outside_diameter.value, pe.wall.value, pull);
    let case = Case { drive, pipe, pe, pull, section };
    if let (Some(grout), Some(points)) = (drive.annulus.grout, &pe.times.grout) {
        scheme.checks.add(case.in_grout(calc, grout, points));
    }
    let ring = case.ring(calc);
    let deflection = deflection(calc, drive, pipe, ring);
    let laid = Laid { ring, deflection, height: deepest_water(drive) };
    if let Some(check) = case.in_service(calc, laid) {
        scheme.checks.add(judged(pipe, check));
    }
    if let (Some((vacuum, _)), Some(points)) = (drive.in_service.vacuum, &pe.times.vacuum) {
        scheme.checks.add(judged(pipe, case.vacuum(calc, laid, vacuum.value, points)));
    }
    scheme.checks.add_some(deflects(calc, drive, pipe, deflection));
}

/// Not decided where the soil is told without its weight below water; what water and traffic alone overload stays over.
fn weighed(load: Load, check: Check) -> Check {
    if load.lacks_weight { check.undecided(NO_WEIGHT) } else { check }
}

fn deflection<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    ring: InPlace,
) -> Option<Doubted<Band<Ratio>>> {
    calc.part("deflection in service");
    ring.deflection(calc, drive, pipe)
}

/// The deflection of a plastic pipe, against what collapse counts on at least; not decided where the soil is told without
/// its weight below water.
fn deflects<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    deflection: Option<Doubted<Band<Ratio>>>,
) -> Option<Check> {
    let ovality = drive.in_service.ovality;
    let Some(deflection) = deflection else {
        let open = Check::rated(Subject::Deflection, Verdict::NotDecided, ovality.origin).with_note(NO_WEIGHT);
        return (!is_held(drive) && lacks_weight(calc, drive)).then_some(open);
    };
    let limit = Doubted::sure(ovality);
    let check = Check::at_most(Subject::Deflection, Role::Percent, deflection, limit);
    Some(judged(pipe, check.as_screen().with_note(LOAD)))
}

/// A ring in the ground.
#[derive(Clone, Copy)]
struct Laid {
    ring: InPlace,
    deflection: Option<Doubted<Band<Ratio>>>,
    /// Groundwater over the invert.
    height: Length,
}

/// The highest column of groundwater over the invert.
fn deepest_water(drive: &Drive) -> Length {
    drive.stretches.iter().map(|stretch| stretch.head).fold(Length::default(), Length::max)
}

/// Liquid grout stands in the bore from its lowest to its highest place, at its pressure.
pub(super) fn grout_pressure<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    grout: Grout,
) -> Band<Pressure> {
    let climb = drive.length.value * drive.grade.value.sin().abs();
    Band::same(calc.law(NetOutsidePressure {
        density: grout.density,
        height: pipe.bore.value + climb,
        added: grout.pressure,
        inside: Pressure::default(),
    }))
}

/// The ring of PVC, at its modulus of years, or of metal; none of PE, which has its own checks.
pub(super) fn ring_of_other<R: Recorder>(
    calc: &mut Calc<R>,
    pipe: &Pipe,
    pulled: &PulledPipe,
    pull: &Pull,
) -> Option<InPlace> {
    let outside_diameter = pipe.outside_diameter.value;
    let mut of_pvc = |pvc: &PvcPipe| InPlace {
        section: Section::scored(calc, outside_diameter, pvc.wall.value, pull),
        modulus: pvc.modulus_long,
        share: Doubted::sure(pvc.modulus_long / pvc.modulus),
        poisson: pvc.poisson,
        ovality: pvc.ovality,
    };
    let (wall, modulus, poisson) = match pulled {
        PulledPipe::Pe(_) => return None,
        PulledPipe::Pvc(pvc) => return Some(of_pvc(pvc)),
        PulledPipe::Jointed(jointed) => match &jointed.barrel {
            Barrel::Pvc(pvc) => return Some(of_pvc(pvc)),
            // Its Poisson's ratio is left out, which is on the safe side.
            Barrel::Iron { wall, modulus, .. } => (wall.value, *modulus, Ratio::default()),
        },
        PulledPipe::Steel(steel) => (steel.wall.value, steel.modulus, steel.factors.poisson),
    };
    let share = Doubted::sure(Ratio::from(1.0));
    Some(InPlace { section: Section { outside_diameter, wall }, modulus, share, poisson, ovality: Ratio::default() })
}

/// Grout, groundwater, soil, traffic and vacuum on a pulled pipe of PVC or metal.
pub(super) fn checks_of_other<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    pulled: &PulledPipe,
    pull: &Pull,
    scheme: &mut Scheme,
) {
    if let Some(grout) = drive.annulus.grout {
        scheme.checks.add_some(super::grout::of_other(calc, drive, pipe, pulled, pull, grout));
    }
    let Some(ring) = ring_of_other(calc, pipe, pulled, pull) else { return };
    let deflection = deflection(calc, drive, pipe, ring);
    calc.part("collapse in service");
    let load = ring.load(calc, drive, pipe, deepest_water(drive));
    let pressure = load.map(|load| load.pressure);
    let safety = pull.collapse_factor;
    let note = if matches!(pulled, PulledPipe::Steel(_)) || !pulled.is_plastic() { ELASTIC } else { YEARS };
    if pressure.value.high > Pressure::default() || is_too_shallow(pipe) {
        let limit = ring.limit(calc, drive, safety, pressure.value, deflection);
        let check = Check::at_most_by_level(Subject::CollapseInService, Role::Pressure, pressure, limit);
        scheme.checks.add(judged(pipe, weighed(load.value, check.with_note(note))));
    }
    if let Some((vacuum, _)) = drive.in_service.vacuum {
        let pressure = pressure.map(|pressure| pressure.map(|stands| stands + vacuum.value));
        let limit = ring.limit(calc, drive, safety, pressure.value, deflection);
        let check = Check::at_most_by_level(Subject::Vacuum, Role::Pressure, pressure, limit);
        scheme.checks.add(judged(pipe, weighed(load.value, check.with_note(note))));
    }
    if pulled.is_plastic() {
        scheme.checks.add_some(deflects(calc, drive, pipe, deflection));
    }
}

struct Case<'a> {
    drive: &'a Drive,
    pipe: &'a Pipe,
    pe: &'a PePipe,
    pull: &'a Pull,
    section: Section,
}

impl Case<'_> {
    fn dimension_ratio(&self) -> Ratio {
        self.section.outside_diameter / self.section.wall
    }

    fn limit(&self, resistance: Doubted<Pressure>) -> Doubted<Cited<Pressure>> {
        let factor = self.pull.collapse_factor;
        resistance.map(|resistance| factor.map(|factor| resistance / factor))
    }

    fn in_grout<R: Recorder>(&self, calc: &mut Calc<R>, grout: Grout, points: &ModulusPoints) -> Check {
        calc.part("collapse while the annulus is grouted");
        let pressure = calc.doubted(|calc| grout_pressure(calc, self.drive, self.pipe, grout));
        let resistance = calc.doubted(|calc| {
            let modulus = modulus(calc, points, self.pull, grout.sets_in, Cold::NotCredited);
            let Section { outside_diameter, wall } = self.section;
            let unit_weight = grout.density * Acceleration::from_si(STANDARD_GRAVITY);
            let afloat = calc.law(BuoyantDeflection { unit_weight, outside_diameter, wall, modulus });
            let ovality = (self.pe.ovality + afloat).max(self.pull.ovality);
            let ovality_factor = calc.law(OvalityFactor { ovality });
            let (poisson, dimension_ratio) = (self.pull.poisson, self.dimension_ratio());
            let tension_factor = Ratio::from(1.0);
            calc.law(CriticalPressure { modulus, poisson, dimension_ratio, ovality_factor, tension_factor })
        });
        Check::at_most(Subject::CollapseInGrout, Role::Pressure, pressure, self.limit(resistance)).with_note(HEAT)
    }

    /// At the modulus of years. Traffic is taken to stand as long as the fluid of the bore: it comes in seconds.
    fn ring<R: Recorder>(&self, calc: &mut Calc<R>) -> InPlace {
        let long = self.pe.times.long.1;
        let share = if is_driven_over(self.pipe) {
            let duration = self.pull.load_duration;
            let soft = calc.doubted(|calc| modulus(calc, &self.pe.soft, self.pull, duration, Cold::NotCredited));
            soft.map(|soft| (long / soft).min(Ratio::from(1.0)))
        } else {
            Doubted::sure(Ratio::from(1.0))
        };
        let (section, poisson, ovality) = (self.section, self.pull.poisson, self.pe.ovality);
        InPlace { section, modulus: long, share, poisson, ovality }
    }

    fn in_service<R: Recorder>(&self, calc: &mut Calc<R>, laid: Laid) -> Option<Check> {
        calc.part("collapse in service");
        let load = laid.ring.load(calc, self.drive, self.pipe, laid.height);
        let pressure = load.map(|load| load.pressure);
        if !(pressure.value.high > Pressure::default() || is_too_shallow(self.pipe)) {
            return None;
        }
        let safety = self.pull.collapse_factor;
        let limit = laid.ring.limit(calc, self.drive, safety, pressure.value, laid.deflection);
        let check = Check::at_most_by_level(Subject::CollapseInService, Role::Pressure, pressure, limit);
        let check = check.with_note(match (is_held(self.drive), load.value.knows_soil) {
            (true, _) => SUPPORTED,
            (false, true) => WITH_SOIL,
            (false, false) if is_driven_over(self.pipe) => WATER_AND_TRAFFIC,
            (false, false) => WATER_ONLY,
        });
        Some(weighed(load.value, check))
    }

    /// The water stands for years, the vacuum for hours: each counts at the stiffness of its time.
    fn vacuum<R: Recorder>(&self, calc: &mut Calc<R>, laid: Laid, vacuum: Pressure, points: &ModulusPoints) -> Check {
        calc.part("vacuum in service");
        let lasts = self.drive.in_service.vacuum.map_or(self.pull.load_duration, |(_, lasts)| lasts);
        let soft = calc.doubted(|calc| modulus(calc, points, self.pull, lasts, Cold::NotCredited));
        let load = laid.ring.load(calc, self.drive, self.pipe, laid.height);
        let pressure = calc.doubted(|calc| {
            load.value.pressure.map(|long| {
                calc.law(PressureOfBothTimes {
                    long,
                    modulus_long: laid.ring.modulus,
                    short: vacuum,
                    modulus_short: soft.value,
                })
            })
        });
        let pressure = Doubted { value: pressure.value, doubt: pressure.doubt.or(load.doubt) };
        let ring = InPlace { modulus: soft.value, ..laid.ring };
        let limit = ring.limit(calc, self.drive, self.pull.collapse_factor, pressure.value, laid.deflection);
        let limit = Doubted { value: limit.value, doubt: limit.doubt.or(soft.doubt) };
        weighed(load.value, Check::at_most_by_level(Subject::Vacuum, Role::Pressure, pressure, limit))
    }
}
