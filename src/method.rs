//! Drive x pipe x method: the forces of each stage, and the checks they meet. No heap, no input or output.

mod figures;
mod front;
mod jacking;
mod models;
mod not_given;
mod profile;
mod pullback;
mod scheme;
mod sheet;
mod stage;
mod stem;

pub use crate::handbook::Method;
pub use figures::{Figure, figures};
pub use jacking::shove::{Shove, StopBy, shove_plan};
pub use jacking::stations::{PlacedStations, Stations, stations};
pub use jacking::wall::{WallNeeded, wall_needed};
pub use models::{FrictionModel, ModelForce, Over, SoilView, friction_models, model_forces};
pub use profile::{Point, StageProfile, profile};
pub use scheme::Scheme;
pub use sheet::{Sheet, Step};
pub use stage::{Body, Stage};

use crate::conditions;
use crate::drive::{Drive, Pipe};
use crate::law::{Calc, Recorder, Silent};

/// Assesses one pipe put in by one method.
#[must_use]
pub fn assess(drive: &Drive, pipe: &Pipe, method: Method) -> Scheme {
    scheme(&mut Calc::new(Silent), drive, pipe, method)
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
    let mut calc = Calc::new(Sheet::default());
    let scheme = scheme(&mut calc, drive, pipe, method);
    (scheme, calc.finish())
}

fn scheme<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, method: Method) -> Scheme {
    let mut scheme = Scheme::new(method);
    for origin in pipe.bars(method) {
        scheme.exclude(origin);
    }
    if scheme.is_excluded() {
        return scheme;
    }
    match (method, &pipe.jacked, &pipe.pulled, &drive.pull) {
        (Method::PipeJacking, Some(jacked), ..) => jacking::assess(calc, drive, pipe, jacked, &mut scheme),
        (Method::Pullback, _, Some(pulled), Some(pull)) => {
            pullback::assess(calc, drive, pipe, pulled, pull, &mut scheme);
        }
        // A pipe without checks for a method stays without checks, which is never a pass.
        _ => return scheme,
    }
    not_given::open(pipe, &mut scheme);
    jacking::wall::checks(calc, drive, pipe, &mut scheme);
    jacking::service::checks(calc, drive, pipe, &mut scheme);
    for check in [conditions::invert(drive, pipe, method), conditions::ground(pipe, method)].into_iter().flatten() {
        scheme.checks.add(check);
    }
    conditions::range(drive, pipe, method, &mut scheme.checks);
    conditions::surroundings(calc, drive, pipe, method, &mut scheme.checks);
    scheme.checks.doubt_loads(conditions::ground_doubt(drive));
    scheme
}
