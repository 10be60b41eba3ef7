//! One pipe put in by one method: every check of the table, made one after the other.

use super::jacking::{auger, casing, curve, end, service, wall};
use super::not_given::settle;
use super::pullback::{assist, break_out, grout_pressure, grout_uplift, link, lubricant, reamed_bore, site};
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
    scheme(&mut Calc::silent(), drive, pipe, method)
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
    let scheme = scheme(&mut calc, drive, pipe, method);
    (scheme, Sheet::of(calc))
}

/// With the worse of both waters, where the water is not known.
fn scheme(calc: &mut Calc, drive: &Drive, pipe: &Pipe, method: Method) -> Scheme {
    // A pipe without checks for a method stays without checks, which is never a pass.
    let mut scheme = Scheme::barred_by(method, pipe.bars(method));
    let walked = if scheme.is_excluded() { None } else { Walked::walk(calc, drive, pipe, method) };
    if let Some(at) = walked {
        [scheme.force, scheme.rig_force] = at.forces().map(Some);
        scheme.thrust = Some(at.thrust().safe);
        // The checks are made where they stay: they are too many to be moved about.
        run_all(&at, calc, &mut scheme.checks);
    }
    if let Some((dry, ways)) = &drive.dry
        && let Some(same) = dry.candidates.iter().find(|other| other.label == pipe.label)
    {
        scheme.either(&self::scheme(&mut Calc::silent(), dry, same, method), ways);
    }
    scheme
}

/// Makes the function that makes every check of the table, one after the other.
macro_rules! run {
    ($at:ident $calc:ident $(
        $(#[$doc:meta])+ $name:ident $label:literal $criterion:ident $decides:ident $(($share:expr))?
            $(, $need:ident $(as $other:ident)? $($what:literal [$($($field:literal)+),+])?)? => $check:expr;
    )+) => {
        fn run_all($at: &Walked<'_>, $calc: &mut Calc, checks: &mut Checks) {
            let doubt = conditions::ground_doubt(&$at);
            $(checks.put(Subject::$name, named($at, Subject::$name, $check, doubt));)+
        }
    };
}
checks!(run at calc);

/// What the maker has to settle is not decided, and a load rests on what is known of the ground.
fn named(at: &Walked<'_>, subject: Subject, outcome: Outcome, ground: Doubt) -> Result<Check, Absent> {
    let check = settle(at, subject, outcome)?;
    let check = if subject.is_load() { check.in_doubt(ground) } else { check };
    Ok(check.of(subject, subject.decides().rule(&at.drive.leeway)))
}
