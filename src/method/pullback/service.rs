//! A pipe after the pull: under water, soil and traffic, and with a vacuum inside; while the annulus is grouted, and how
//! far it goes out of round.

use super::grout;
use super::in_place::{Around, InPlace, is_held, places};
use super::section::Section;
use super::strength::{Cold, modulus};
use crate::check::{Absent, Check, Outcome, at_most, only};
use crate::drive::{Drive, Made, PePipe, Pipe, Pull, PulledPipe};
use crate::handbook::Service;
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::outside_pressure::PressureOfBothTimes;
use crate::quantity::{Band, Length, Pressure, Ratio, Role, Time};

const HELD: &str = "held by hardened grout all round, which is to be proved";
const RING: &str = "likely water, soil that hangs in its sides and traffic for its time, high the whole column with all \
                    traffic, for years; out of round as it deflects";
const ELASTIC: &str = "as an elastic ring; likely water, soil that hangs in its sides and traffic, high the whole column \
                       with all traffic; out of round as it deflects";
const BENT: &str = "likely a column of soil that hangs in its sides, high its whole weight, both with traffic; with the \
                    whole wall";
/// Ratio of outside diameter to wall below which a metal pipe bears any vacuum: habit.
const THICK: f64 = 60.0;

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
        ring.share = share(calc, pe, pull);
    }
    let Some(over) = pipe.ring.as_deref() else {
        return InService {
            grout,
            collapse: Err(Absent::Missing),
            vacuum: Err(Absent::Missing),
            deflection: Err(Absent::Missing),
        };
    };
    let thick = || !pulled.is_plastic() && (pipe.outside_diameter.value / pulled.wall()).value < THICK;
    let vacuum = only(drive.service == Service::PressureMain, "it is no pressure main")
        .and_then(|()| only(!thick(), "metal this thick bears any vacuum"))
        .and_then(|()| drive.in_service.vacuum.ok_or(Absent::Missing));
    let mut made = InService {
        grout,
        collapse: Err(Absent::Missing),
        vacuum: vacuum.and(Err(Absent::Missing)),
        deflection: only(!is_held(drive), "hardened grout that is proved holds the ring").and(Err(Absent::Missing)),
    };
    let worst = |so_far: &mut Outcome, check: Check<()>| {
        *so_far = Ok(so_far.map_or(check, |other| other.worse(check)));
    };
    let served = Served { drive, pipe, pulled, pull, ring };
    for (adverse, best) in places(drive, pipe, over) {
        calc.part("collapse in service");
        let judge = |calc: &mut Calc<R>, at: &Around<'_>| served.collapses(calc, at, None);
        worst(&mut made.collapse, both(calc, (&adverse, best.as_ref()), judge, judge));
        if let Ok(vacuum) = &vacuum {
            calc.part("vacuum in service");
            let under = |pressure| {
                move |calc: &mut Calc<R>, at: &Around<'_>| served.collapses(calc, at, Some((pressure, vacuum.lasts)))
            };
            let best = best.or((vacuum.pressure.low < vacuum.pressure.high).then_some(adverse));
            let ends = vacuum.pressure;
            worst(&mut made.vacuum, both(calc, (&adverse, best.as_ref()), under(ends.high), under(ends.low)));
        }
        if !is_held(drive) {
            calc.part("deflection in service");
            let within = |limit| {
                move |calc: &mut Calc<R>, at: &Around<'_>| {
                    let bent = served.ring.deflection(calc, drive, pipe, at);
                    at.judged(drive, at_most(Role::Percent, bent, limit).with_note(BENT))
                }
            };
            let best = best.or((over.deflection.low.value < over.deflection.high.value).then_some(adverse));
            let ends = over.deflection;
            worst(&mut made.deflection, both(calc, (&adverse, best.as_ref()), within(ends.low), within(ends.high)));
        }
    }
    made
}

/// A check on the safe side, and at its best where something is not known.
fn both<R: Recorder>(
    calc: &mut Calc<R>,
    (adverse, best): (&Around<'_>, Option<&Around<'_>>),
    judge: impl Fn(&mut Calc<R>, &Around<'_>) -> Check<()>,
    judge_best: impl Fn(&mut Calc<R>, &Around<'_>) -> Check<()>,
) -> Check<()> {
    let check = judge(calc, adverse);
    match best {
        Some(best) => check.at_best(judge_best(calc, best)),
        None => check,
    }
}

/// A pipe as it lies there.
#[derive(Clone, Copy)]
struct Served<'a> {
    drive: &'a Drive,
    pipe: &'a Pipe,
    pulled: &'a PulledPipe,
    pull: &'a Pull,
    ring: InPlace,
}

impl Served<'_> {
    /// What lies on it, with a vacuum for a time where there is one, against collapse.
    fn collapses<R: Recorder>(
        &self,
        calc: &mut Calc<R>,
        at: &Around<'_>,
        vacuum: Option<(Pressure, Time)>,
    ) -> Check<()> {
        let Self { drive, pipe, pulled, pull, ring } = *self;
        let case = calc.doubted(|calc| {
            let load = ring.load(calc, pipe, at);
            let load = calc.take(load);
            match (vacuum, pulled) {
                (None, _) => (load, ring),
                // The soil stands for years, the vacuum for hours: each counts at the stiffness of its time.
                (Some((short, lasts)), PulledPipe::Pe(pe)) => {
                    let soft = pe.times.vacuum.as_ref();
                    let soft =
                        soft.map_or(ring.modulus, |points| modulus(calc, points, pull, lasts, Cold::NotCredited));
                    let modulus_long = ring.modulus.min(soft);
                    let load = load
                        .map(|long| calc.law(PressureOfBothTimes { long, modulus_long, short, modulus_short: soft }));
                    (load, InPlace { modulus: soft, ..ring })
                }
                (Some((short, _)), _) => (load.map(|load| load + short), ring),
            }
        });
        let limit = calc.doubted(|calc| {
            let (load, stiff) = calc.take(case);
            let bent = if is_held(drive) {
                Band::default()
            } else {
                let bent = ring.deflection(calc, drive, pipe, at);
                calc.take(bent)
            };
            stiff.limit(calc, drive, pull.collapse_factor, load, (bent, at))
        });
        let note = match (is_held(drive), pulled.is_plastic()) {
            (true, _) => HELD,
            (false, true) => RING,
            (false, false) => ELASTIC,
        };
        at.judged(drive, at_most(Role::Pressure, case.map(|(load, _)| load), limit).with_note(note))
    }
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
    let wall = pulled.wall();
    InPlace { section, wall, modulus, share: Doubted::sure(share), poisson, ovality }
}

/// What traffic counts for on PE: it is taken to stand as long as the fluid of the bore, and comes in seconds.
fn share<R: Recorder>(calc: &mut Calc<R>, pe: &PePipe, pull: &Pull) -> Doubted<Ratio> {
    let soft = calc.doubted(|calc| modulus(calc, &pe.soft, pull, pull.load_duration, Cold::NotCredited));
    soft.map(|soft| (pe.times.long.1 / soft).min(Ratio::from(1.0)))
}
