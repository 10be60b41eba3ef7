//! A pipe after the pull: under water and soil, and with a vacuum inside; PE also while the annulus is grouted, and how
//! far it goes out of round.

use super::section::Section;
use super::strength::{Cold, modulus};
use crate::check::{Check, Subject};
use crate::conditions::vertical_stress;
use crate::drive::{Barrel, Drive, Grout, ModulusPoints, PePipe, Pipe, Pull, PulledPipe, PvcPipe, Soil};
use crate::law::{Calc, Doubt, Doubted, Recorder};
use crate::laws::collapse::{CriticalPressure, OvalityFactor};
use crate::laws::deflection::{BuoyantDeflection, IowaDeflection};
use crate::laws::outside_pressure::{NetOutsidePressure, PressureOfBothTimes, SupportedCollapse};
use crate::laws::soil::{SiloStress, SiloWidthTerzaghi};
use crate::method::scheme::Scheme;
use crate::quantity::unit::STANDARD_GRAVITY;
use crate::quantity::{Angle, Band, Length, Measure, Pressure, Ratio, Role};
use crate::source::Cited;
use uom::si::f64::Acceleration;

const HEAT: &str = "the heat of setting grout softens PE: it is not counted beyond the temperature of the pull";
const WATER_ONLY: &str = "groundwater alone: the soil of every stretch is not given";
const WITH_SOIL: &str = "likely groundwater alone, high the whole weight of soil and water, without support";
const SUPPORTED: &str = "held by hardened grout all round, which is to be proved";
const YEARS: &str =
    "with the modulus of years for every load; high the whole weight of soil and water, where it is known";
const ELASTIC: &str = "as an elastic ring; high the whole weight of soil and water, where it is known";
const LOAD: &str =
    "likely a column of soil that hangs in its sides, high its whole weight; against what collapse counts on";

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
    let water = drive.stretches.iter().map(|stretch| stretch.head).fold(Length::default(), Length::max);
    if let Some(check) = case.in_service(calc, water) {
        scheme.checks.add(check);
    }
    if let (Some((vacuum, _)), Some(points)) = (drive.in_service.vacuum, &pe.times.vacuum) {
        scheme.checks.add(case.vacuum(calc, water, vacuum.value, points));
    }
    if let Some(check) = case.deflection(calc) {
        scheme.checks.add(check);
    }
}

/// Total stress at the invert in the deepest place of every stretch, at its greatest; `None` where any is not known.
fn weight_of_all<R: Recorder>(calc: &mut Calc<R>, drive: &Drive) -> Option<Pressure> {
    let mut greatest = Pressure::default();
    for stretch in &drive.stretches {
        let soil = stretch.soil.as_ref()?;
        greatest = greatest.max(vertical_stress(calc, soil, soil.depths.1)?.total);
    }
    Some(greatest)
}

/// Pressure for years: likely groundwater alone, high the whole weight of soil and water where it is known.
fn stands<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, height: Length) -> (Band<Pressure>, bool) {
    let law = NetOutsidePressure {
        density: super::force::water(),
        height,
        added: Pressure::default(),
        inside: Pressure::default(),
    };
    let water = calc.law(law);
    let whole = weight_of_all(calc, drive);
    (Band { low: water, likely: water, high: whole.map_or(water, |whole| whole.max(water)) }, whole.is_some())
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

/// A ring as it stands in service.
#[derive(Clone, Copy)]
pub(super) struct InPlace {
    pub(super) section: Section,
    pub(super) modulus: Pressure,
    pub(super) poisson: Ratio,
    pub(super) ovality: Ratio,
}

impl InPlace {
    /// What it bears for a load of the time of its modulus.
    fn resists<R: Recorder>(self, calc: &mut Calc<R>, drive: &Drive) -> Doubted<Pressure> {
        let service = &drive.in_service;
        let held = drive.annulus.proved && drive.annulus.grouted;
        calc.doubted(|calc| {
            let ovality_factor = calc.law(OvalityFactor { ovality: self.ovality.max(service.ovality.value) });
            calc.law(SupportedCollapse {
                enhancement: if held { service.supported } else { service.unsupported }.value,
                modulus: self.modulus,
                poisson: self.poisson,
                dimension_ratio: self.section.outside_diameter / self.section.wall,
                ovality_factor,
            })
        })
    }
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
    Some(InPlace { section: Section { outside_diameter, wall }, modulus, poisson, ovality: Ratio::default() })
}

/// Grout, groundwater, soil and vacuum on a pulled pipe of PVC or metal.
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
    calc.part("collapse in service");
    let water = drive.stretches.iter().map(|stretch| stretch.head).fold(Length::default(), Length::max);
    let pressure = calc.doubted(|calc| stands(calc, drive, water));
    let pressure = pressure.map(|(pressure, _)| pressure);
    let factor = pull.collapse_factor;
    let limit = ring.resists(calc, drive).map(|resistance| factor.map(|factor| resistance / factor));
    let note = if matches!(pulled, PulledPipe::Steel(_)) || !pulled.is_plastic() { ELASTIC } else { YEARS };
    if pressure.value.high > Pressure::default() {
        let check = Check::at_most(Subject::CollapseInService, Role::Pressure, pressure, limit);
        scheme.checks.add(check.with_note(note));
    }
    if let Some((vacuum, _)) = drive.in_service.vacuum {
        let pressure = pressure.map(|pressure| pressure.map(|stands| stands + vacuum.value));
        let check = Check::at_most(Subject::Vacuum, Role::Pressure, pressure, limit);
        scheme.checks.add(check.with_note(note));
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

    /// What the pipe bears for ever, or for a time on top of it.
    fn resists<R: Recorder>(&self, calc: &mut Calc<R>, modulus: Pressure) -> (Pressure, Doubt) {
        let (section, poisson, ovality) = (self.section, self.pull.poisson, self.pe.ovality);
        let resistance = InPlace { section, modulus, poisson, ovality }.resists(calc, self.drive);
        (resistance.value, resistance.doubt)
    }

    fn in_service<R: Recorder>(&self, calc: &mut Calc<R>, height: Length) -> Option<Check> {
        calc.part("collapse in service");
        let stands = calc.doubted(|calc| stands(calc, self.drive, height));
        let pressure = stands.map(|(pressure, _)| pressure);
        let knows_soil = stands.value.1;
        if !(pressure.value.high > Pressure::default()) {
            return None;
        }
        let (value, doubt) = self.resists(calc, self.pe.times.long.1);
        let limit = self.limit(Doubted { value, doubt });
        let check = Check::at_most(Subject::CollapseInService, Role::Pressure, pressure, limit);
        let held = self.drive.annulus.proved && self.drive.annulus.grouted;
        Some(check.with_note(match (held, knows_soil) {
            (true, _) => SUPPORTED,
            (false, true) => WITH_SOIL,
            (false, false) => WATER_ONLY,
        }))
    }

    /// The water stands for years, the vacuum for hours: each counts at the stiffness of its time.
    fn vacuum<R: Recorder>(
        &self,
        calc: &mut Calc<R>,
        height: Length,
        vacuum: Pressure,
        points: &ModulusPoints,
    ) -> Check {
        calc.part("vacuum in service");
        let lasts = self.drive.in_service.vacuum.map_or(self.pull.load_duration, |(_, lasts)| lasts);
        let soft = calc.doubted(|calc| modulus(calc, points, self.pull, lasts, Cold::NotCredited));
        let pressure = calc.doubted(|calc| {
            stands(calc, self.drive, height).0.map(|long| {
                calc.law(PressureOfBothTimes {
                    long,
                    modulus_long: self.pe.times.long.1,
                    short: vacuum,
                    modulus_short: soft.value,
                })
            })
        });
        let (value, doubt) = self.resists(calc, soft.value);
        let limit = self.limit(Doubted { value, doubt: doubt.or(soft.doubt) });
        Check::at_most(Subject::Vacuum, Role::Pressure, pressure, limit)
    }

    /// Where the soil of every stretch is known and no proved grout holds the ring.
    fn deflection<R: Recorder>(&self, calc: &mut Calc<R>) -> Option<Check> {
        if self.drive.annulus.proved && self.drive.annulus.grouted {
            return None;
        }
        calc.part("deflection in service");
        let service = &self.drive.in_service;
        let whole = weight_of_all(calc, self.drive)?;
        let arched = calc.doubted(|calc| {
            let soils = self.drive.stretches.iter().filter_map(|stretch| stretch.soil.as_ref());
            soils.fold(Pressure::default(), |most, soil| most.max(self.arched(calc, soil)))
        });
        let Section { outside_diameter, wall } = self.section;
        let iowa = |pressure, lag| IowaDeflection {
            lag,
            bedding: service.bedding,
            pressure,
            modulus: self.pe.times.long.1,
            outside_diameter,
            wall,
            soil_modulus: self.drive.annulus.soil_modulus.unwrap_or_default(),
        };
        // Beyond its range the form tells too little, and the limit lies well inside: nothing rests on the doubt.
        let deflection = calc.doubted(|calc| {
            let likely = calc.law(iowa(arched.value, service.lag.0));
            Band { low: likely, likely, high: calc.law(iowa(whole, service.lag.1)).max(likely) }
        });
        let deflection = Doubted { value: deflection.value, doubt: arched.doubt };
        let limit = Doubted { value: service.ovality, doubt: None };
        let check = Check::at_most(Subject::Deflection, Role::Percent, deflection, limit);
        Some(check.as_screen().with_note(LOAD))
    }

    /// Pressure of a column of soil over the bore that hangs in its sides with half of its friction.
    fn arched<R: Recorder>(&self, calc: &mut Calc<R>, soil: &Soil) -> Pressure {
        let Some(layer) = soil.at_pipe() else { return Pressure::default() };
        let half = Angle::from_si(layer.friction_angle.si() / 2.0);
        let width = calc.law(SiloWidthTerzaghi { outside_diameter: self.pipe.bore.value, friction_angle: half });
        calc.law(SiloStress {
            unit_weight: layer.saturated.unwrap_or(layer.moist),
            width,
            depth: soil.depths.1,
            lateral_friction: half.tan(),
            cohesion: Pressure::default(),
            surcharge: soil.surcharge,
        })
    }
}
