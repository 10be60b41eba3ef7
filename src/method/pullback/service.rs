//! A pipe after the pull: under water, soil and traffic, and with a vacuum inside; while the annulus is grouted, and how
//! far plastic goes out of round.

use super::grout;
use super::in_place::{
    Deflection, InPlace, Load, NO_WEIGHT, is_driven_over, is_held, is_too_shallow, judged, lacks_weight,
};
use super::section::Section;
use super::strength::{Cold, modulus};
use crate::check::{Absent, Check, Outcome, Verdict, at_most, only, rated};
use crate::drive::{Drive, Made, PePipe, Pipe, Pull, PulledPipe};
use crate::handbook::Service;
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::outside_pressure::PressureOfBothTimes;
use crate::quantity::{Band, Length, Pressure, Ratio, Role};

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

/// The checks of a pipe after the pull.
pub(in crate::method) struct InService {
    pub(in crate::method) grout: Outcome,
    pub(in crate::method) collapse: Outcome,
    pub(in crate::method) vacuum: Outcome,
    pub(in crate::method) deflection: Outcome,
}

/// Grout, groundwater, soil, traffic and vacuum on a pulled pipe.
pub(super) fn of<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    pulled: &PulledPipe,
    pull: &Pull,
) -> InService {
    let mut ring = ring(calc, pipe, pulled, pull);
    let grout = grout::check(calc, (drive, pipe, pull), pulled, ring);
    if let PulledPipe::Pe(pe) = pulled {
        ring.share = share(calc, pipe, pe, pull);
    }
    calc.part("deflection in service");
    let deflection = ring.deflection(calc, drive, pipe);
    calc.part("collapse in service");
    let height = deepest_water(drive);
    let load = ring.load(calc, drive, pipe, height);
    let Load { pressure: stands, knows_soil, lacks_weight } = load.in_spite_of_doubt();
    let collapses = |calc: &mut Calc<R>, case: Doubted<(Band<Pressure>, InPlace)>| {
        let limit = calc.doubted(|calc| {
            let (pressure, ring) = calc.take(case);
            ring.limit(calc, drive, pull.collapse_factor, pressure, deflection)
        });
        at_most(Role::Pressure, case.map(|(pressure, _)| pressure), limit)
    };
    // Not decided where the soil is told without its weight below water; what water and traffic alone overload stays over.
    let weighed = |check: Check<()>| judged(pipe, if lacks_weight { check.undecided(NO_WEIGHT) } else { check });
    let note = match (pulled, is_held(drive), knows_soil) {
        (PulledPipe::Pe(_), true, _) => SUPPORTED,
        (PulledPipe::Pe(_), false, true) => WITH_SOIL,
        (PulledPipe::Pe(_), false, false) if is_driven_over(pipe) => WATER_AND_TRAFFIC,
        (PulledPipe::Pe(_), false, false) => WATER_ONLY,
        _ if pulled.is_plastic() => YEARS,
        _ => ELASTIC,
    };
    let collapse = if stands.high > Pressure::default() || is_too_shallow(pipe) {
        Ok(weighed(collapses(calc, load.map(|load| (load.pressure, ring))).with_note(note)))
    } else {
        Err(Absent::Missing)
    };
    let main = only(drive.service == Service::PressureMain, "it is no pressure main");
    let asked = drive.in_service.vacuum.ok_or(main.err().unwrap_or(Absent::Missing));
    let vacuum = asked.and_then(|(vacuum, lasts)| {
        let with_vacuum = load.map(|load| (load.pressure.map(|stands| stands + vacuum.value), ring));
        match pulled {
            PulledPipe::Pe(pe) => pe.times.vacuum.as_ref().ok_or(Absent::Missing).map(|points| {
                calc.part("vacuum in service");
                // The water stands for years, the vacuum for hours: each counts at the stiffness of its time.
                let case = calc.doubted(|calc| {
                    let soft = modulus(calc, points, pull, lasts, Cold::NotCredited);
                    let load = ring.load(calc, drive, pipe, height);
                    let (short, modulus_long, modulus_short) = (vacuum.value, ring.modulus, soft);
                    let pressure = calc
                        .take(load)
                        .pressure
                        .map(|long| calc.law(PressureOfBothTimes { long, modulus_long, short, modulus_short }));
                    (pressure, InPlace { modulus: soft, ..ring })
                });
                weighed(collapses(calc, case))
            }),
            _ => Ok(weighed(collapses(calc, with_vacuum).with_note(note))),
        }
    });
    let plastic = only(pulled.is_plastic(), "metal is not looked at for its deflection");
    let deflection = plastic.and_then(|()| deflects(calc, drive, pipe, deflection));
    InService { grout, collapse, vacuum, deflection }
}

/// The deflection of a plastic pipe, against what collapse counts on at least; not decided where the soil is told without
/// its weight below water.
fn deflects<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, deflection: Option<Deflection>) -> Outcome {
    only(!is_held(drive), "hardened grout that is proved holds the ring")?;
    let ovality = drive.in_service.ovality;
    let Some(deflection) = deflection else {
        let open = rated(Verdict::NotDecided, ovality.origin).with_note(NO_WEIGHT);
        return if lacks_weight(calc, drive) { Ok(open) } else { Err(Absent::Missing) };
    };
    let deflection = deflection.and_then(|deflection| deflection);
    let check = at_most(Role::Percent, deflection, ovality);
    Ok(judged(pipe, check.with_note(LOAD)))
}

/// The highest column of groundwater over the invert.
fn deepest_water(drive: &Drive) -> Length {
    drive.stretches.iter().map(|stretch| stretch.way.head()).fold(Length::default(), Length::max)
}

/// The ring at its modulus of years, or of metal. What traffic counts for on PE is told by [`share`].
fn ring<R: Recorder>(calc: &mut Calc<R>, pipe: &Pipe, pulled: &PulledPipe, pull: &Pull) -> InPlace {
    let outside_diameter = pipe.outside_diameter.value;
    let one = Ratio::from(1.0);
    let scored = |calc, wall: Length| Section::scored(calc, outside_diameter, wall, pull);
    let metal = Section { outside_diameter, wall: pulled.wall() };
    let (section, modulus, share, poisson, ovality) = match pulled.made() {
        Made::Pe(pe) => (scored(calc, pe.wall.value), pe.times.long.1, one, pull.poisson, pe.ovality),
        Made::Pvc(pvc) => {
            let share = pvc.modulus_long / pvc.modulus;
            (scored(calc, pvc.wall.value), pvc.modulus_long, share, pvc.poisson, pvc.ovality)
        }
        // Its Poisson's ratio is left out, which is on the safe side.
        Made::Iron(iron) => (metal, iron.modulus, one, Ratio::default(), Ratio::default()),
        Made::Steel(steel) => (metal, steel.modulus, one, steel.factors.poisson, Ratio::default()),
    };
    InPlace { section, modulus, share: Doubted::sure(share), poisson, ovality }
}

/// What traffic counts for on PE: it is taken to stand as long as the fluid of the bore, and comes in seconds.
fn share<R: Recorder>(calc: &mut Calc<R>, pipe: &Pipe, pe: &PePipe, pull: &Pull) -> Doubted<Ratio> {
    if !is_driven_over(pipe) {
        return Doubted::sure(Ratio::from(1.0));
    }
    let soft = calc.doubted(|calc| modulus(calc, &pe.soft, pull, pull.load_duration, Cold::NotCredited));
    soft.map(|soft| (pe.times.long.1 / soft).min(Ratio::from(1.0)))
}
