//! A flexible pipe after it is put in: under water, soil and traffic, and with a vacuum inside; how far it goes out of
//! round; and a pulled one while its annulus is grouted.

use super::force::Pulling;
use super::grout::{self, End};
use super::in_place::{Around, InPlace, is_held, places};
use super::pvc;
use super::section::Section;
use super::strength::{Cold, modulus};
use super::while_pushed;
use crate::check::{Absent, Care, Draft, Outcome, Rule, Subject, Verdict, at_most, only};
use crate::drive::{Drive, JackedRing, Made, PePipe, Pipe, Pull, PulledPipe, RingInService};
use crate::handbook::{Family, Service};
use crate::law::{Calc, Doubted};
use crate::laws::outside_pressure::PressureOfBothTimes;
use crate::quantity::{Band, Length, Pressure, Ratio, Role, Time};

const HELD: &str = "held by hardened grout all round, which must be proved";
const RING: &str = "for years, out of round as it deflects: water, passing traffic, soil arching over the bore; high: \
    with less side friction, where no arch lasts the full column of soil";
const ELASTIC: &str = "as an elastic ring, out of round as it deflects: water, traffic, soil arching over the bore; \
    high: with less side friction, where no arch lasts the full column of soil";
const BENT: &str = "with the whole wall, traffic and soil arching over the bore; high: with less side friction, where no \
    arch lasts the full column of soil";
/// Times its limit that a ring may go out of round before it is grouted: our judgement.
const BENT_TILL_GROUTED: f64 = 1.5;
/// Deflection at which the form of it ends, and the ring snaps through.
const MOST_BENT: f64 = 0.1;
const PRESSED: &str = "alone the ring goes too far: grout the annulus full, at no more pressure than the ring bears alone, and prove it full: the \
    ground then holds it, counted at a fifth of what manuals give it";
/// Ratio of outside diameter to wall below which a metal pipe bears any vacuum: habit.
const THICK: f64 = 60.0;

/// The checks of a flexible pipe by its ring: while it is pushed, and after it is put in.
pub(in crate::method) struct InService {
    pub(in crate::method) pushed: Outcome,
    pub(in crate::method) grout: Outcome,
    pub(in crate::method) collapse: Outcome,
    pub(in crate::method) vacuum: Outcome,
    pub(in crate::method) deflection: Outcome,
}

/// Grout, groundwater, soil, traffic and vacuum on a pulled pipe.
pub(super) fn of(calc: &mut Calc, at: Pulling<'_>) -> InService {
    let Pulling { drive, pipe, pulled, pull } = at;
    let mut ring = ring(calc, at);
    let grout = match pulled.made() {
        Made::Pe(pe) => match pe.times.grout {
            Some(points) => {
                let soft =
                    |calc: &mut Calc, sets_in, at: End| modulus(calc, &at(points), pull, sets_in, Cold::NotCredited);
                grout::check(calc, drive, ring, grout::PE, soft)
            }
            None => Err(Absent::Missing),
        },
        Made::Pvc(pvc) => {
            grout::check(calc, drive, ring, grout::PVC, |calc, sets_in, _| pvc::modulus(calc, pvc, sets_in))
        }
        Made::Iron(_) | Made::Steel(_) => grout::check(calc, drive, ring, grout::METAL, |_, _, _| ring.modulus),
    };
    if let PulledPipe::Pe(pe) = pulled {
        ring.share = share(calc, pe, pull);
    }
    let pe = if let PulledPipe::Pe(pe) = pulled { Some((&**pe, pull)) } else { None };
    let served = Served { drive, pipe, pe, ring, plastic: pulled.is_plastic() };
    match pipe.ring.as_deref() {
        Some(over) => served.checks(calc, over, grout),
        None => InService::absent(grout),
    }
}

/// The same on a flexible pipe that is pushed: its wall is not scored.
pub(in crate::method) fn of_jacked(calc: &mut Calc, drive: &Drive, pipe: &Pipe) -> InService {
    let over = pipe.ring.as_deref();
    let Some((over, jacked)) = over.and_then(|over| Some((over, over.jacked?))) else {
        let rigid = Err(Absent::NotApplicable("the pipe is rigid: see its crushing strength"));
        let pushed = while_pushed::check(calc, drive, pipe, None);
        return InService { pushed, grout: rigid, collapse: rigid, vacuum: rigid, deflection: rigid };
    };
    let JackedRing { wall, modulus, creep, share, poisson } = jacked;
    let section = Section { outside_diameter: pipe.outside_diameter.value, wall };
    let (share, ovality) = (Doubted::sure(share), Ratio::default());
    let ring = InPlace { section, wall, bore: pipe.cut(), modulus, share, poisson, ovality };
    let plastic = matches!(pipe.family, Family::Pvc | Family::Grp);
    let note = if pipe.family == Family::Pvc { grout::PVC } else { grout::METAL };
    let soft = |calc: &mut Calc, sets_in, _| creep.map_or(modulus, |creep| pvc::after(calc, creep, sets_in));
    // Of a pipe that is pushed nobody asks for it.
    let grout = only(drive.annulus.grout.is_some(), "nothing says that the annulus is grouted")
        .and_then(|()| grout::check(calc, drive, ring, note, soft));
    // Only lubricant comes and goes.
    let at_first = match (drive.lubricant, creep) {
        (Some(lubricant), Some(creep)) => InPlace { modulus: pvc::after(calc, creep, lubricant.stands), ..ring },
        _ => ring,
    };
    let pushed = while_pushed::check(calc, drive, pipe, Some(at_first));
    InService { pushed, ..Served { drive, pipe, pe: None, ring, plastic }.checks(calc, over, grout) }
}

impl InService {
    const fn absent(grout: Outcome) -> Self {
        Self {
            pushed: Err(Absent::NotApplicable("the pipe is not pushed")),
            grout,
            collapse: Err(Absent::Missing),
            vacuum: Err(Absent::Missing),
            deflection: Err(Absent::Missing),
        }
    }
}

/// A check on the safe side, and at its best where something is not known.
fn both(
    calc: &mut Calc,
    (rule, till_grouted, most): (Rule, f64, f64),
    (adverse, best): (&Around<'_>, Option<&Around<'_>>),
    judge: impl Fn(&mut Calc, &Around<'_>) -> Draft,
    judge_best: impl Fn(&mut Calc, &Around<'_>) -> Draft,
) -> Draft {
    let check = judge(calc, adverse);
    let check = match best {
        Some(best) if check.verdict() != Verdict::Within => check.at_best(judge_best(calc, best)),
        _ => check,
    };
    let verdict = |check: &Draft| check.by(rule).verdict();
    if verdict(&check) != Verdict::NotDecided {
        return check;
    }
    // A pipe is grouted as a matter of course where its ring needs it, and stands till then.
    let alone = check.utilisation().is_some_and(|alone| alone <= till_grouted);
    let stands = alone && check.high().is_some_and(|(demand, _)| demand.si <= most);
    let pressed = adverse.pressed_full().filter(|_| stands).map(|at| judge(calc, &at));
    let pressed = pressed.filter(|pressed| verdict(pressed) <= Verdict::WithCare);
    pressed.map_or(check, |pressed| pressed.with_care(Care::Condition, PRESSED))
}

/// A pipe as it lies there.
#[derive(Clone, Copy)]
struct Served<'a> {
    drive: &'a Drive,
    pipe: &'a Pipe,
    /// PE, which softens with time and by its pull.
    pe: Option<(&'a PePipe, &'a Pull)>,
    ring: InPlace,
    plastic: bool,
}

impl Served<'_> {
    fn checks(&self, calc: &mut Calc, over: &RingInService, grout: Outcome) -> InService {
        let Self { drive, pipe, ring, .. } = *self;
        let thick = !self.plastic && (ring.section.outside_diameter / ring.wall).value < THICK;
        let vacuum = only(drive.service == Service::PressureMain, "it is no pressure main")
            .and_then(|()| only(!thick, "metal this thick bears any vacuum"))
            .and_then(|()| drive.in_service.vacuum.ok_or(Absent::Missing));
        let mut made = InService {
            vacuum: vacuum.and(Err(Absent::Missing)),
            deflection: only(!is_held(drive), "hardened grout that is proved holds the ring").and(Err(Absent::Missing)),
            ..InService::absent(grout)
        };
        // A collapse has its factor till then, a deflection half of its limit.
        let rule = |subject: Subject| {
            let (till_grouted, most) = if subject == Subject::Deflection {
                (BENT_TILL_GROUTED, MOST_BENT)
            } else {
                (drive.in_service.collapse_factor.value.value, f64::INFINITY)
            };
            (subject.decides().rule(&drive.leeway), till_grouted, most)
        };
        let worst = |so_far: &mut Outcome, check: Draft| {
            *so_far = Ok(so_far.map_or(check, |other| other.worse(check)));
        };
        for (adverse, best) in places(drive, pipe, over) {
            calc.part("collapse in service");
            let judge = |calc: &mut Calc, at: &Around<'_>| self.collapses(calc, at, None);
            worst(
                &mut made.collapse,
                both(calc, rule(Subject::CollapseInService), (&adverse, best.as_ref()), judge, judge),
            );
            if let Ok(vacuum) = &vacuum {
                calc.part("vacuum in service");
                let ends = vacuum.pressure;
                let under = |pressure| {
                    move |calc: &mut Calc, at: &Around<'_>| self.collapses(calc, at, Some((pressure, vacuum.lasts)))
                };
                let best = best.or((ends.low < ends.high).then_some(adverse));
                worst(
                    &mut made.vacuum,
                    both(calc, rule(Subject::Vacuum), (&adverse, best.as_ref()), under(ends.high), under(ends.low)),
                );
            }
            if !is_held(drive) {
                calc.part("deflection in service");
                let ends = over.deflection;
                let within = |limit| {
                    move |calc: &mut Calc, at: &Around<'_>| {
                        let bent = ring.deflection(calc, drive, at);
                        at.judged(drive, at_most(Role::Percent, bent, limit).with_note(BENT))
                    }
                };
                let best = best.or((ends.low.value < ends.high.value).then_some(adverse));
                worst(
                    &mut made.deflection,
                    both(
                        calc,
                        rule(Subject::Deflection),
                        (&adverse, best.as_ref()),
                        within(ends.low),
                        within(ends.high),
                    ),
                );
            }
        }
        made
    }

    /// What lies on it, with a vacuum for a time where there is one, against collapse.
    fn collapses(&self, calc: &mut Calc, at: &Around<'_>, vacuum: Option<(Pressure, Time)>) -> Draft {
        let Self { drive, ring, .. } = *self;
        let safety = drive.in_service.collapse_factor;
        let bent = calc.doubted(|calc| {
            if is_held(drive) {
                return Band::default();
            }
            let bent = ring.deflection(calc, drive, at);
            calc.take(bent)
        });
        let case = calc.doubted(|calc| {
            let load = ring.load(calc, at);
            let load = calc.take(load);
            match (vacuum, self.pe) {
                (None, _) => (load, ring),
                // The soil stands for years, the vacuum for hours: each counts at the stiffness of its time.
                (Some((short, lasts)), Some((pe, pull))) => {
                    let soft = pe.times.vacuum.as_ref();
                    let soft =
                        soft.map_or(ring.modulus, |points| modulus(calc, points, pull, lasts, Cold::NotCredited));
                    let bent = bent.in_spite_of_doubt();
                    let mut at_modulus = |modulus| {
                        let stiff = InPlace { modulus, ..ring };
                        (stiff, stiff.bears(calc, drive, safety, (bent, at)))
                    };
                    let (_, long) = at_modulus(ring.modulus.min(soft));
                    let (stiff, short_time) = at_modulus(soft);
                    let load = load.zip(long.zip(short_time)).map(|(long, (bears_long, bears_short))| {
                        calc.law(PressureOfBothTimes { long, bears_long, short, bears_short })
                    });
                    (load, stiff)
                }
                (Some((short, _)), None) => (load.map(|load| load + short), ring),
            }
        });
        let limit = calc.doubted(|calc| {
            let (load, stiff) = calc.take(case);
            let bent = calc.take(bent);
            stiff.limit(calc, drive, safety, load, (bent, at))
        });
        let note = match (is_held(drive), self.plastic) {
            (true, _) => HELD,
            (false, true) => RING,
            (false, false) => ELASTIC,
        };
        at.judged(drive, at_most(Role::Pressure, case.map(|(load, _)| load), limit).with_note(note))
    }
}

/// The ring at its modulus of years, or of metal. What traffic counts for on PE is told by [`share`].
fn ring(calc: &mut Calc, Pulling { pipe, pulled, pull, .. }: Pulling<'_>) -> InPlace {
    let outside_diameter = pipe.outside_diameter.value;
    let one = Ratio::from(1.0);
    let scored = |calc, wall: Length| Section::scored(calc, outside_diameter, wall, pull);
    let metal = Section { outside_diameter, wall: pulled.wall() };
    let (section, modulus, share, poisson, ovality) = match pulled.made() {
        Made::Pe(pe) => (scored(calc, pe.wall.value), pe.times.long.1, one, pull.poisson, pe.ovality),
        Made::Pvc(pvc) => {
            let (_, long) = pvc.creep.long;
            (scored(calc, pvc.wall.value), long, long / pvc.modulus, pvc.poisson, pvc.ovality)
        }
        // Its Poisson's ratio is left out, which is on the safe side.
        Made::Iron(iron) => (metal, iron.modulus, one, Ratio::default(), Ratio::default()),
        Made::Steel(steel) => (metal, steel.modulus, one, steel.factors.poisson, Ratio::default()),
    };
    let wall = pulled.wall();
    let bore = pipe.bore.value;
    InPlace { section, wall, bore, modulus, share: Doubted::sure(share), poisson, ovality }
}

/// What traffic counts for on PE: it is taken to stand as long as the fluid of the bore, and comes in seconds.
fn share(calc: &mut Calc, pe: &PePipe, pull: &Pull) -> Doubted<Ratio> {
    let soft = calc.doubted(|calc| modulus(calc, &pe.soft, pull, pull.load_duration, Cold::NotCredited));
    soft.map(|soft| (pe.times.long.1 / soft).min(Ratio::from(1.0)))
}
