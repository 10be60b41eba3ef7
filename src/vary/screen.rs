//! A drive of which hardly anything is known, wherever that may lie.

use crate::check::Subject;
use crate::choice::{Choice, Ranked, choose};
use crate::drive::Drive;
use crate::drive_file::{Facts, InputError, Written};
use crate::handbook::Handbook;
use crate::quantity::{Force, Length, Role, Shown, UnitSystem};
use std::sync::Arc;

/// What a few facts say of the ways to build a drive.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Screen {
    /// The drives that may be meant: each with another depth or water, where those were not told.
    pub cases: Vec<Case>,
    /// What stands in for what was not told, beside depth, water and rig, as field and value.
    pub taken: Vec<String>,
    /// The deepest and wettest of them, as it is written.
    written: Written,
    /// The family of the units of the length.
    pub system: UnitSystem,
}

/// One drive that may be meant.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Case {
    /// The drive.
    pub drive: Drive,
    /// The depth of its invert at the launch pit.
    pub depth: Length,
    /// The depth of the water; `None` without any.
    pub water: Option<Length>,
    /// What is chosen.
    pub choice: Choice,
}

/// Looks at every drive that the facts may mean.
///
/// ```
/// use jackpull::drive_file::Facts;
/// use jackpull::{Handbook, Standing, vary};
///
/// let facts = Facts { pipes: &["clay 10 in"], length: "300 ft", soil: "stiff clay", ..Facts::default() };
/// let screen = vary::screen(&facts, &Handbook::embedded())?;
/// assert_eq!(screen.schemes()[0].best.1.standing, Standing::Open);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// Facts that are not understood or cannot be, and malformed tables.
pub fn screen(facts: &Facts<'_>, handbook: &Arc<Handbook>) -> Result<Screen, InputError> {
    let meant = facts.meant()?;
    let cases = meant.files.iter().map(|file| {
        let drive = file.sketched(handbook)?;
        let choice = choose(&drive)?;
        let depth = file.launch.depth().unwrap_or_default();
        let water = file.groundwater.value.into();
        Ok(Case { drive, depth, water, choice })
    });
    let cases = cases.collect::<Result<Vec<_>, InputError>>()?;
    let system = meant.files.first().and_then(|file| file.length.written_in()).unwrap_or_default();
    Ok(Screen { cases, taken: meant.taken, written: meant.written, system })
}

/// A scheme in each of the cases.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Screened<'a> {
    /// Where it stands best, and how.
    pub best: (&'a Case, &'a Ranked),
    /// All of them.
    pub cases: Vec<(&'a Case, &'a Ranked)>,
}

/// Checks of a force on the rig against its rating.
const OF_THRUST: [Subject; 3] = [Subject::StemThrust, Subject::CasingThrust, Subject::JackingThrust];
const OF_PULL: [Subject; 2] = [Subject::RigPull, Subject::ReamingPull];

impl Screen {
    /// The schemes, the one that stands best first.
    #[must_use]
    pub fn schemes(&self) -> Vec<Screened<'_>> {
        let Some(first) = self.cases.first() else { return Vec::new() };
        let mut schemes: Vec<Screened<'_>> = first.choice.ranked.iter().map(|one| self.in_each((first, one))).collect();
        schemes.sort_by_key(|screened| screened.best.1.standing);
        schemes
    }

    fn in_each<'a>(&'a self, first: (&'a Case, &'a Ranked)) -> Screened<'a> {
        let (candidate, method) = (first.1.candidate, first.1.scheme.method);
        let is_it = |other: &&Ranked| other.candidate == candidate && other.scheme.method == method;
        let cases = self.cases.iter().filter_map(|case| Some((case, case.choice.ranked.iter().find(is_it)?)));
        let cases: Vec<_> = cases.collect();
        let best = cases.iter().min_by_key(|(_, ranked)| ranked.standing).copied().unwrap_or(first);
        Screened { best, cases }
    }

    /// The text of a drive file to go on with: the deepest and wettest drive, and the least rig that does for its schemes.
    ///
    /// # Errors
    /// If the facts make no file.
    pub fn file(&self) -> Result<String, InputError> {
        let schemes = self.schemes();
        let most = |forces: Vec<Force>| forces.into_iter().reduce(Force::max);
        let thrust = most(schemes.iter().flat_map(Screened::thrusts).collect());
        let pull = most(schemes.iter().flat_map(Screened::pulls).collect()).or(thrust);
        let written = |force: Option<Force>, role| {
            let (number, unit) = Shown::of(force?, role).in_units(self.system);
            Some(format!("{} {unit}", number.ceil()))
        };
        self.written.with_rig([("thrust", written(thrust, Role::Thrust)), ("pull", written(pull, Role::Pull))])
    }
}

impl Screened<'_> {
    /// The least thrust of a rig that the high force leaves enough of, in each of the cases.
    #[must_use]
    pub fn thrusts(&self) -> Vec<Force> {
        self.least(&OF_THRUST, |drive| drive.rig.thrust.value)
    }

    /// The least pull of a rig, in each of the cases; none where nothing is pulled.
    #[must_use]
    pub fn pulls(&self) -> Vec<Force> {
        self.least(&OF_PULL, |drive| drive.rig.pull.value)
    }

    fn least(&self, subjects: &[Subject], rating: impl Fn(&Drive) -> Force) -> Vec<Force> {
        let in_case = |(case, ranked): &(&Case, &Ranked)| {
            let used = |subject: &Subject| ranked.scheme.checks.get(*subject)?.utilisation();
            subjects.iter().filter_map(used).reduce(f64::max).map(|used| rating(&case.drive) * used)
        };
        self.cases.iter().filter_map(in_case).collect()
    }
}
