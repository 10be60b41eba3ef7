//! What the reader must know: what was not checked, and what no program can check.

use crate::check::{Check, Subject, Verdict};
use crate::choice::{Choice, Ranked};
use crate::conditions::{Plan, invert_uncertainty};
use crate::drive::{Drive, EndArea};
use crate::handbook::{Family, HandbookError, Lubrication, Method, Service};
use crate::method::left_out;
use crate::quantity::shown::decimal;
use crate::quantity::{Pressure, Role, Shown, UnitSystem};
use crate::source::Origin;

/// What a gap is in.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Of {
    Any,
    Jacked,
    Pulled,
    Main,
    Sewer,
}

const NOT_CHECKED: &[(Of, &str)] = &[
    (
        Of::Jacked,
        "joints of a jacked pipe: tightness at an angle, steps between pipes, splitting under a packer that spreads or \
         lies to one side, wear of packers over many pushes",
    ),
    (
        Of::Jacked,
        "first pipe: load from the head, thrust ring out of square; steel: offset at joints, ground load together with \
         the push",
    ),
    (Of::Jacked, "break-out of the fluid that a pilot before a pushed pipe is drilled with"),
    (Of::Any, "structure of the thrust wall and its base"),
    (Of::Jacked, "seals and strokes of jacking stations, and the order in which they push"),
    (
        Of::Any,
        "a casing in ground that gives it no side support; wear and twist of stem and reamers; torque that is not given; \
         twist of a pipe by the auger in it",
    ),
    (Of::Any, "weight of the stem along the grade, where its wall is not given"),
    (Of::Pulled, "pushing a stuck string back out; welding and lowering-in of the string, slings, wear of coatings"),
    (Of::Any, "a curve over part of the line: the whole line is taken as curved"),
    (
        Of::Pulled,
        "curved crossings: pulls are for a straight bore on grade (the ASTM F1962 sequence for curved crossings is in \
         the library only)",
    ),
    (
        Of::Any,
        "annulus: spacers, and what bends the pipe between them; heat, strength and reach of the grout; grout round a jacked pipe",
    ),
    (
        Of::Main,
        "mains: surge fatigue, thrust blocks, joints under pressure on a curve; PE and PVC warmer in service than the \
         ground; flow",
    ),
    (Of::Any, "stability of the bore; drawdown by pumping and the settlement it causes"),
    (Of::Any, "shoring of pits; room at the reception for a machine longer than the pipes"),
    (Of::Any, "amount of heave; long-term settlement"),
    (Of::Sewer, "manholes, branches and steep flow in sewers"),
    (Of::Any, "time: stops, lost days, and rock for which the file gives no pace; prices that the file does not give"),
];

/// What this version does not check of the schemes there are.
pub(super) fn not_checked(drive: &Drive, choice: &Choice) -> impl Iterator<Item = &'static str> {
    let is_put =
        |method| choice.ranked.iter().any(|ranked| ranked.scheme.method == method && !ranked.scheme.is_excluded());
    let [jacked, pulled] = [Method::PipeJacking, Method::Pullback].map(is_put);
    let service = drive.service;
    let is_there = move |of: Of| match of {
        Of::Any => true,
        Of::Jacked => jacked,
        Of::Pulled => pulled,
        Of::Main => service == Service::PressureMain,
        Of::Sewer => service == Service::GravitySewer,
    };
    NOT_CHECKED.iter().filter(move |(of, _)| is_there(*of)).map(|(_, gap)| *gap)
}

/// What goes with help from behind.
const PUSHED: &str = "The likely pull relies on the push at the tail; the high pull does not. Whether the machine \
    holds its setting, and what its grip does to the pipe wall, is not checked. Push no harder than the string follows.";

/// What goes with iron pipe whose weight the file does not give.
const IRON: &str = "The weight of the iron pipe is estimated: least wall alone where it floats, nominal wall and \
    cement lining where it sinks, without sockets and coating. Give the maker's `weight`.";

/// What every result is.
const AID: &str = "A preliminary engineering aid. A licensed engineer checks it against local codes, the pipe maker's data and the \
                   site investigation before anyone relies on it.";

/// What goes for every site.
pub(super) const ON_SITE: [&str; 3] = [
    "Pits: have a competent person inspect them, and treat them as confined spaces where they are.",
    "Utilities: locate and expose every crossing before the drive; stop if fluid is lost or the force jumps.",
    "Keep clear of the line of a loaded string, of a tensioned stem and pulled pipe, and of suspended loads.",
];

/// What goes with every result.
pub(super) const fn always() -> [&'static str; 4] {
    let [pits, services, clear] = ON_SITE;
    [AID, pits, services, clear]
}

/// What goes unchecked because the file does not give what it needs, and what the forces leave out so.
pub(super) fn not_given(drive: &Drive, ranked: &Ranked) -> Vec<String> {
    let scheme = &ranked.scheme;
    let left_out = left_out(drive, scheme).filter(|_| !scheme.is_excluded());
    scheme.checks.missing().into_iter().chain(left_out).map(|need| need.to_string()).collect()
}

/// The least pipe of the drives behind the lubricated band.
const LUBRICATED: Shown = Shown { si: 0.64, role: Role::Diameter };

/// What a contractor tells of three guided bores, with their pipes in, and how long each was at least.
const TOLD: [Shown; 2] = [Shown { si: 196e3, role: Role::Thrust }, Shown { si: 150.0, role: Role::Distance }];

/// Cautions of one scheme, by what it contains.
///
/// # Errors
/// If the handbook is malformed.
pub(super) fn of(drive: &Drive, ranked: &Ranked, system: UnitSystem) -> Result<Vec<String>, HandbookError> {
    let mut cautions = Vec::new();
    if ranked.scheme.is_excluded() {
        return Ok(cautions);
    }
    let pipe = &ranked.pipe;
    let unusual = drive.unusual_for(ranked.candidate, ranked.scheme.method);
    cautions.extend(unusual.map(|unusual| unusual.text(system)));
    for check in ranked.scheme.checks.iter() {
        if let Some(equation) = check.doubt {
            cautions.push(format!(
                "{}: {} was used outside its range ({}); the value is not relied on",
                check.subject.label(),
                equation.name,
                equation.valid
            ));
        }
        if check.subject == Subject::Ground && check.verdict != Verdict::Within {
            cautions.extend(row_note(drive, check).map(|note| format!("ground: {note}")));
        }
    }
    if drive.stretches.iter().any(|stretch| !stretch.friction_given) {
        let [force, length] = TOLD.map(|shown| shown.display(system));
        cautions.push(format!(
            "Friction: the bands are table values from other kinds of drive. The only force found for a guided bore is a \
             contractor's report of about {force} on each of three drives longer than {length} in soft wet ground, far \
             below these bands. Log the force and compare."
        ));
    }
    cautions.extend(given_friction(drive, system)?);
    if !drive.stem.is_there() {
        cautions.push("No stem: nothing guides this bore, and nothing here checks its line and grade.".to_owned());
    }
    if pipe.jacked.as_ref().is_some_and(|jacked| matches!(jacked.end_area, EndArea::Rated { .. })) {
        cautions.push(
            "The end bearing area is back-calculated from a pipe maker's ratings, rounded to the ton. Get it from \
                the pipe maker."
                .to_owned(),
        );
    }
    cautions.extend(unlisted(drive, ranked)?);
    cautions.extend(breakdown(drive, ranked, system));
    match (ranked.scheme.method, drive.lubrication) {
        (Method::PipeJacking, Lubrication::Metered | Lubrication::Logged) => cautions.push(
            format!(
                "The lubricated band rests on 12 values from 10 drives at 8 sites (9 of them from one compilation, \
                 lubrication stated for only one, outside diameters from {} up). It holds only while the annulus is kept \
                 full.",
                LUBRICATED.display(system)
            ),
        ),
        (Method::PipeJacking, Lubrication::NotMetered) => cautions.push(
            "Lubrication that is not metered counts half for the likely force and not at all for the high one."
                .to_owned(),
        ),
        _ => {}
    }
    cautions.extend(super::around::cautions(drive, ranked, system)?);
    if ranked.scheme.method == Method::Pullback {
        if drive.pull.as_ref().is_some_and(|pull| pull.push_assist.is_some()) {
            cautions.push(PUSHED.to_owned());
        }
        if pipe.pulled.as_ref().is_some_and(|pulled| pulled.heavy_iron().is_some()) {
            cautions.push(IRON.to_owned());
        }
        let annulus = Shown::of(pipe.bore.value - pipe.outside_diameter.value, Role::Offset).display(system);
        cautions.push(format!(
            "The bore is {annulus} larger than the pipe: wherever the annulus is not left full of set fluid or grout, the \
             ground can settle."
        ));
        if drive.service == Service::GravitySewer {
            let uncertain =
                Shown::of(invert_uncertainty(&Plan { drive, pipe, method: Method::Pullback }).high, Role::Offset)
                    .display(system);
            let tolerance = Shown::of(drive.tolerance.value, Role::Offset).display(system);
            cautions.push(format!(
                "Until it is grouted the pipe lies at the bottom of the bore or floats to its crown: the invert is \
                 uncertain by {uncertain} against a tolerance of {tolerance}."
            ));
        }
    }
    Ok(cautions)
}

/// A material that no published list names for jacking.
fn unlisted(drive: &Drive, ranked: &Ranked) -> Result<Option<String>, HandbookError> {
    const JACKING: [&str; 3] = ["pipe jacking", "microtunnelling", "pilot-tube microtunnelling"];
    if ranked.scheme.method != Method::PipeJacking {
        return Ok(None);
    }
    let family = ranked.pipe.family();
    let key = family.key().replace('_', " ");
    let name = match family {
        Family::Clay => "vitrified clay",
        Family::Concrete => "reinforced concrete",
        Family::Grp => "GRP",
        Family::Pvc => "PVC",
        Family::Pe | Family::PvcFused | Family::PvcRestrained => return Ok(None),
        _ => key.as_str(),
    };
    let listed = drive.handbook.method_material()?.iter().any(|row| {
        let row = &row.value.value;
        JACKING.contains(&row.method.value.0.as_str()) && [name, &key].contains(&row.material.value.0.as_str())
    });
    Ok((!listed).then(|| {
        format!("The published lists of jacked materials do not name {name}: they list usage and ban nothing.")
    }))
}

/// What one breakdown does to the force on a jacked pipe that is pushed round the clock.
pub(super) fn breakdown(drive: &Drive, ranked: &Ranked, system: UnitSystem) -> Option<String> {
    // Planned stops and nights are in the forces already.
    if !drive.rests.planned.is_empty() || drive.work.shifts_between_nights().is_some() {
        return None;
    }
    let factor = drive.rests.breakdown.value;
    let capacity = ranked.scheme.checks.get(Subject::EndCapacity).and_then(|check| check.high());
    let pushed_out = match ranked.pipe.casing.is_some() {
        true => " The casing bears that too while it is pushed out.",
        false => "",
    };
    capacity.map(|(demand, limit)| {
        let raised = Shown { si: demand.si * factor.value, ..demand };
        let share = Some(raised.si / limit.si).filter(|share| limit.si > 0.0 && share.is_finite());
        let share =
            share.map_or_else(String::new, |share| format!(" and {} of what the pipe end bears", decimal(share, 2)));
        format!(
            "Work goes on round the clock: a single breakdown can raise the force to about {}, {} times the high force{share}.{pushed_out}",
            raised.display(system),
            factor.value
        )
    })
}

/// Friction from the file, and where it lies below what is held safe without a logged force.
fn given_friction(drive: &Drive, system: UnitSystem) -> Result<Option<String>, HandbookError> {
    let text = |pressure| Shown::of(pressure, Role::UnitFriction).display(system).to_string();
    let pressure = |key| drive.handbook.pressure(key).map(|pressure| pressure.value);
    let floors = (pressure("friction.floor_likely")?, pressure("friction.floor_high")?);
    let given = || drive.stretches.iter().filter(|stretch| stretch.friction_given);
    let least = given().map(|stretch| stretch.pipe_friction.worse).reduce(|a, b| a.with(b, Pressure::min));
    let most = given().map(|stretch| stretch.pipe_friction.worse).reduce(|a, b| a.with(b, Pressure::max));
    let (Some(least), Some(most)) = (least, most) else { return Ok(None) };
    let below = drive.lubrication != Lubrication::Logged && (least.likely < floors.0 || least.high < floors.1);
    let warning = if below {
        format!(
            " That is below {} likely and {} high, the least considered safe where the force is not logged.",
            text(floors.0),
            text(floors.1)
        )
    } else {
        String::new()
    };
    Ok(Some(format!(
        "Unit friction of {} is given in the file: low {} to {}, likely {} to {}, high {} to {}.{warning}",
        match given().count() {
            1 => "1 stretch".to_owned(),
            count => format!("{count} stretches"),
        },
        text(least.low),
        text(most.low),
        text(least.likely),
        text(most.likely),
        text(least.high),
        text(most.high)
    )))
}

fn row_note(drive: &Drive, check: &Check) -> Option<String> {
    let Origin::Row(row) = check.basis else { return None };
    drive.handbook.citation(row)?.2.note.clone()
}
