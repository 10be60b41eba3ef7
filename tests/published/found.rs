//! What a page is, how it compares, and short ways to a table row or a drive.

use crate::book::SITE;
use jackpull::check::{Check, Subject, Verdict};
use jackpull::drive::Drive;
use jackpull::handbook::{FrictionBandRow, GroundClass, Lubrication, Method, WaterSide};
use jackpull::law::Law;
use jackpull::quantity::{Area, FromText, Length, Measure, Pressure, Ratio, ThermodynamicTemperature, Time};
use jackpull::{Handbook, HandbookError, InputError, Scheme, assess, read_drive};
use std::sync::Arc;

/// What does not agree, one sentence each; empty when all does.
pub(crate) type Found = Vec<String>;
/// A page may stop short when a row that it needs is gone or a drive cannot be read, which is an objection too.
pub(crate) type Outcome = Result<(), Stop>;
/// One printed page, table or example against a handbook.
pub(crate) type Page = fn(&Arc<Handbook>, &mut Found) -> Outcome;

#[derive(Debug)]
pub(crate) struct Stop(pub(crate) String);

impl From<HandbookError> for Stop {
    fn from(error: HandbookError) -> Self {
        Self(error.to_string())
    }
}

impl From<InputError> for Stop {
    fn from(error: InputError) -> Self {
        Self(error.to_string())
    }
}

/// What a page finds.
pub(crate) fn run(page: Page, handbook: &Arc<Handbook>) -> Found {
    let mut found = Found::new();
    if let Err(Stop(why)) = page(handbook, &mut found) {
        found.push(why);
    }
    found
}

/// Lists the pages of a source: as tests against the embedded tables, and for [`crate::doubled`].
macro_rules! pages {
    ($($page:ident),+ $(,)?) => {
        pub(crate) const PAGES: &[(&str, $crate::found::Page)] = &[$((stringify!($page), $page)),+];

        /// All pages of this source.
        pub(crate) fn check(handbook: &std::sync::Arc<jackpull::Handbook>) -> $crate::found::Found {
            PAGES.iter().flat_map(|(_, page)| $crate::found::run(*page, handbook)).collect()
        }

        mod page {
            $(#[test]
            fn $page() {
                let found = $crate::found::run(super::$page, &jackpull::Handbook::embedded());
                assert!(found.is_empty(), "{}", found.join("\n"));
            })+
        }
    };
}
pub(crate) use pages;

/// A printed quantity.
pub(crate) fn q<Q: FromText>(text: &str) -> Q {
    Q::from_text(text).unwrap_or_else(|error| panic!("{error}"))
}

/// `got` must be the printed value, `within` either way.
pub(crate) fn near<Q: FromText>(found: &mut Found, what: &str, got: Q, printed: &str, within: &str) {
    let (value, tolerance) = (q::<Q>(printed).si(), q::<Q>(within).si().abs());
    // Written so that NaN is an objection.
    if !((got.si() - value).abs() <= tolerance * (1.0 + 1e-9)) {
        found.push(format!("{what}: {:.4} times the printed {printed}, allowed {within}", got.si() / value));
    }
}

/// As [`near`], with a share of the printed value.
pub(crate) fn close<Q: FromText>(found: &mut Found, what: &str, got: Q, printed: &str, share: f64) {
    let value = q::<Q>(printed).si();
    if !((got.si() - value).abs() <= share * value.abs()) {
        found.push(format!("{what}: {:.4} times the printed {printed}, allowed {share} of it", got.si() / value));
    }
}

/// `got` must lie in a printed range.
pub(crate) fn between<Q: FromText>(found: &mut Found, what: &str, got: Q, low: &str, high: &str) {
    if !(q::<Q>(low).si() <= got.si() && got.si() <= q::<Q>(high).si()) {
        found.push(format!("{what}: {} in SI base units is not within {low} to {high}", got.si()));
    }
}

/// What must hold.
pub(crate) fn holds(found: &mut Found, what: &str, condition: bool) {
    if !condition {
        found.push(format!("does not hold: {what}"));
    }
}

/// The same quantity read from two texts or computed twice, to the last bits.
pub(crate) fn same<Q: Measure>(a: Q, b: Q) -> bool {
    (a.si() - b.si()).abs() <= 1e-9 * b.si().abs()
}

/// A row that a page needs.
pub(crate) fn needed<T>(row: Option<T>, what: impl FnOnce() -> String) -> Result<T, Stop> {
    row.ok_or_else(|| Stop(format!("there is no row for {}", what())))
}

/// The value of a law in tests without tables.
pub(crate) fn law<L: Law>(law: L) -> L::Out {
    assert!(law.in_range(), "{} is used outside its range", L::EQUATION.name);
    law.value()
}

/// The value of a law on a page: a doubled table value may take it out of its range, and then the page objects.
pub(crate) fn value<L: Law>(law: L) -> L::Out {
    law.value()
}

/// A ratio of `practice_ratio`.
pub(crate) fn ratio(handbook: &Handbook, key: &str) -> Result<Ratio, Stop> {
    Ok(handbook.ratio(key)?.value)
}

/// Pull stress of an edition, with the temperature that it is for.
pub(crate) fn pull_stress(
    handbook: &Handbook,
    edition: &str,
    material: &str,
    up_to: &str,
) -> Result<(Pressure, ThermodynamicTemperature), Stop> {
    let duration = q::<Time>(up_to);
    let row = handbook.pe_pull_stress()?.find(|row| {
        row.edition.value.0 == edition && row.material.value.0 == material && same(row.up_to.value, duration)
    });
    let row = needed(row, || format!("pull stress, {edition}, {material}, {up_to}"))?;
    Ok((row.value.stress.value, row.value.at.value))
}

/// Apparent modulus.
pub(crate) fn modulus(handbook: &Handbook, material: &str, duration: &str) -> Result<Pressure, Stop> {
    let time = q::<Time>(duration);
    let row = handbook.pe_modulus()?.find(|row| row.material.value.0 == material && same(row.duration.value, time));
    Ok(needed(row, || format!("modulus, {material}, {duration}"))?.value.modulus.value)
}

/// Multiplier of a set at a temperature.
pub(crate) fn multiplier(handbook: &Handbook, set: &str, at: &str) -> Result<Ratio, Stop> {
    let temperature = q::<ThermodynamicTemperature>(at);
    let row = handbook.pe_temperature()?.find(|row| row.set.value.0 == set && same(row.at.value, temperature));
    Ok(needed(row, || format!("multiplier, {set}, {at}"))?.value.factor.value)
}

/// A row of unit friction.
pub(crate) fn friction(
    handbook: &Handbook,
    ground: GroundClass,
    water: WaterSide,
    lubrication: Lubrication,
) -> Result<FrictionBandRow, Stop> {
    let row = handbook
        .friction_band()?
        .find(|row| row.ground.value == ground && row.water.value == water && row.lubrication.value == lubrication);
    Ok(needed(row, || format!("friction, {}, {}", ground.key(), lubrication.key()))?.value.clone())
}

/// A level drive, 6 m deep, with these lines.
pub(crate) fn drive(handbook: &Arc<Handbook>, lines: &str) -> Result<Drive, Stop> {
    Ok(read_drive(&format!("{SITE}{lines}"), handbook)?)
}

/// The first candidate put in by a method.
pub(crate) fn scheme(drive: &Drive, method: Method) -> Result<Scheme, Stop> {
    let pipe = needed(drive.candidates().first(), || "a candidate".to_owned())?;
    Ok(assess(drive, pipe, method))
}

/// A check of a scheme.
pub(crate) fn checked(scheme: &Scheme, subject: Subject) -> Result<Check, Stop> {
    needed(scheme.checks.get(subject).copied(), || subject.label().to_owned())
}

/// Section of the pipe that the next function pulls.
const OUTSIDE_DIAMETER: &str = "200 mm";
const WALL: &str = "18.2 mm";

/// Stress that the check of tension allows, read back from its limit, and its verdict. The section is given in the
/// drive file, so no table of sizes takes part; the welds are documented.
pub(crate) fn allowed_stress(
    handbook: &Arc<Handbook>,
    material: &str,
    edition: &str,
    duration: &str,
    temperature: &str,
) -> Result<(Pressure, Verdict), Stop> {
    let drive = drive(
        handbook,
        &format!(
            "
length: 50 m
groundwater: none
lubrication: none
ground: [{{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }}]
pull:
  duration: {duration}
  pipe_temperature: {temperature}
  score: 0 %
  welds: documented
  stress_edition: {edition}
candidates: [{{ material: {material}, size: 200 mm, outside_diameter: {OUTSIDE_DIAMETER}, wall: {WALL} }}]
"
        ),
    )?;
    let tension = checked(&scheme(&drive, Method::Pullback)?, Subject::Tension)?;
    let (_, limit) = needed(tension.high(), || "the limit of tension".to_owned())?;
    let (outside_diameter, wall) = (q::<Length>(OUTSIDE_DIAMETER), q::<Length>(WALL));
    let section: Area = core::f64::consts::PI * (outside_diameter - wall) * wall;
    Ok((Pressure::from_si(limit.si / section.si()), tension.verdict))
}
