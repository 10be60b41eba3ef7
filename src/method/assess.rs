//! One pipe put in by one method: every check of the table, made one after the other.

use super::jacking::{auger, casing, curve, end, service, wall};
use super::not_given::settle;
use super::pullback::{assist, break_out, grout_pressure, link, reamed_bore, site};
use super::scheme::Scheme;
use super::sheet::Sheet;
use super::walked::Walked;
use super::{jacking, pullback, stem};
use crate::check::{Absent, Check, Checks, Outcome, Subject, checks};
use crate::conditions::{self, Place, carried, carrier, face, face_support, movement, pits, room, sewer, time};
use crate::drive::{Drive, Pipe};
use crate::law::{Calc, Doubt};

use crate::handbook::Method;

/// Assesses one pipe put in by one method.
#[must_use]
pub fn assess(drive: &Drive, pipe: &Pipe, method: Method) -> Scheme {
    either(scheme(&mut Calc::silent(), drive, pipe, method), drive, pipe)
}

/// The same with the worse of both waters, where the water is not known.
fn either(wet: Scheme, drive: &Drive, pipe: &Pipe) -> Scheme {
    let Some((dry, ways)) = &drive.dry else { return wet };
    let Some(same) = dry.candidates.iter().find(|other| other.label == pipe.label) else { return wet };
    wet.either(&scheme(&mut Calc::silent(), dry, same, wet.method), ways)
}

/// Whether the file gives what the method needs of the pipe, or a row says why it cannot be.
#[must_use]
pub fn is_offered(drive: &Drive, pipe: &Pipe, method: Method) -> bool {
    let possible = match method {
        Method::PipeJacking => pipe.jacked.is_some(),
        Method::Pullback => pipe.pulled.is_some() && drive.pull.is_some(),
    };
    possible || pipe.bars(method).next().is_some()
}

/// The same, and the working behind it.
#[must_use]
pub fn explain(drive: &Drive, pipe: &Pipe, method: Method) -> (Scheme, Sheet) {
    let mut calc = Calc::recording();
    let scheme = either(scheme(&mut calc, drive, pipe, method), drive, pipe);
    (scheme, Sheet::of(calc))
}

fn scheme(calc: &mut Calc, drive: &Drive, pipe: &Pipe, method: Method) -> Scheme {
    let is_barred = pipe.bars(method).next().is_some();
    let walked = if is_barred { None } else { Walked::walk(calc, drive, pipe, method) };
    // A pipe without checks for a method stays without checks, which is never a pass.
    let Some(at) = walked else { return Scheme::barred_by(method, pipe.bars(method)) };
    let [force, rig_force] = at.forces().map(Some);
    // The checks are made where they stay: they are too many to be moved about.
    let (thrust, checks) = (Some(at.thrust().safe), Checks::of(run_all(&at, calc)));
    Scheme { method, force, rig_force, thrust, checks, excluded: [None; 2] }
}

/// Makes the function that makes every check of the table, one after the other.
macro_rules! run {
    ($at:ident $calc:ident $(
        $(#[$doc:meta])+ $name:ident $label:literal $criterion:ident $decides:ident $(($share:expr))?
            $(, $need:ident $(as $other:ident)? $($what:literal [$($($field:literal)+),+])?)? => $check:expr;
    )+) => {
        fn run_all($at: &Walked<'_>, $calc: &mut Calc) -> [Result<Check, Absent>; Subject::COUNT] {
            let doubt = conditions::ground_doubt(&$at);
            [$(named($at, Subject::$name, $check, doubt)),+]
        }
    };
}
checks!(run at calc);

/// What the maker has to settle is not decided, and a load rests on what is known of the ground.
fn named(at: &Walked<'_>, subject: Subject, outcome: Outcome, ground: Doubt) -> Result<Check, Absent> {
    let check = settle(at, subject, outcome)?.of(subject, subject.decides().rule(&at.drive.leeway));
    Ok(if subject.is_load() { check.in_doubt(ground) } else { check })
}
