//! Printed limits, tables and worked examples beside what the laws and rows of this crate make of them. Said once: the
//! program of a topic and that of all print them, and a test asks that each agrees.
#![allow(dead_code, reason = "each program and the test read a part")]

pub(crate) mod collapse;
pub(crate) mod earth_load;
pub(crate) mod hydraulics;
pub(crate) mod jacking_capacity;
pub(crate) mod measured_drives;
pub(crate) mod print;
pub(crate) mod pull_stress;
pub(crate) mod settlement;
pub(crate) mod thrust_wall;
pub(crate) mod worked_pull;

use jackpull::check::Subject;
use jackpull::handbook::Method;
use jackpull::law::Law;
use jackpull::quantity::{FromText, QuantityError};
use jackpull::source::{Cited, Equation, Mark};
use jackpull::{Handbook, assess, read_drive};
use std::cell::RefCell;
use std::error::Error;
use std::panic::Location;
use std::sync::Arc;

pub(crate) type Outcome = Result<(), Box<dyn Error>>;

/// Writes the figures of a topic.
pub(crate) type Write = fn(&Book) -> Outcome;

/// A topic: its program in `examples`, its heading and what writes its figures.
#[derive(Debug)]
pub(crate) struct Topic {
    pub(crate) name: &'static str,
    pub(crate) title: &'static str,
    pub(crate) write: Write,
}

pub(crate) const TOPICS: [Topic; 9] = [
    jacking_capacity::TOPIC,
    measured_drives::TOPIC,
    pull_stress::TOPIC,
    worked_pull::TOPIC,
    collapse::TOPIC,
    earth_load::TOPIC,
    thrust_wall::TOPIC,
    settlement::TOPIC,
    hydraulics::TOPIC,
];

/// How the printed figure was come by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Read {
    /// Where it is printed, or in a copy of that page.
    Page,
    /// In another text that quotes it.
    SecondHand,
    /// From memory; nobody opened the page for it.
    Recalled,
    /// Worked out by another hand, from the equation and inputs of the source.
    Worked,
}

impl Read {
    pub(crate) const ALL: [Self; 4] = [Self::Page, Self::SecondHand, Self::Recalled, Self::Worked];

    pub(crate) const fn label(self) -> &'static str {
        match self {
            Self::Page => "page read",
            Self::SecondHand => "second hand",
            Self::Recalled => "recalled",
            Self::Worked => "worked by another hand",
        }
    }
}

/// A printed figure beside ours, in the unit of the print.
#[derive(Debug)]
pub(crate) struct Figure {
    pub(crate) what: String,
    pub(crate) printed: f64,
    pub(crate) ours: f64,
    pub(crate) within: f64,
    pub(crate) unit: String,
    pub(crate) decimals: usize,
    /// Why the tolerance is what it is; of a figure that is not followed, why.
    pub(crate) why: String,
    /// The print is wrong, or another source was taken: ours has to differ.
    pub(crate) is_not_followed: bool,
    pub(crate) source: &'static str,
    pub(crate) locator: &'static str,
    pub(crate) read: Read,
    /// Laws and rows behind ours, and the weakest of their marks.
    pub(crate) by: Vec<String>,
    /// The equations among them.
    pub(crate) equations: Vec<&'static Equation>,
    pub(crate) mark: Mark,
    /// Where they are put together.
    pub(crate) code: &'static Location<'static>,
}

impl Figure {
    pub(crate) fn is_right(&self) -> bool {
        let agrees = (self.ours - self.printed).abs() <= self.within * (1.0 + 1e-9);
        self.ours.is_finite() && agrees != self.is_not_followed
    }
}

/// Collects the figures, and which laws and rows were used for the next one.
#[derive(Debug)]
pub(crate) struct Book {
    pub(crate) handbook: Arc<Handbook>,
    used: RefCell<Vec<(String, Mark)>>,
    equations: RefCell<Vec<&'static Equation>>,
    figures: RefCell<Vec<Figure>>,
}

/// The figures of a topic by a handbook.
pub(crate) fn figures(write: Write, handbook: &Arc<Handbook>) -> Result<Vec<Figure>, Box<dyn Error>> {
    let book = Book {
        handbook: handbook.clone(),
        used: RefCell::default(),
        equations: RefCell::default(),
        figures: RefCell::default(),
    };
    write(&book)?;
    Ok(book.figures.into_inner())
}

/// A quantity from its text.
pub(crate) fn q<Q: FromText>(text: &str) -> Result<Q, QuantityError> {
    Q::from_text(text)
}

/// What every drive of these figures shares.
pub(crate) const SITE: &str = "
service: casing
launch: { invert_depth: 6 m }
grade: 0 %
rig: { thrust: 60 MN, pull: 60 MN }
work: { round_the_clock: true }
";

impl Book {
    fn uses(&self, name: String, mark: Mark) {
        self.used.borrow_mut().push((name, mark));
    }

    /// The value of a law.
    fn law<L: Law>(&self, law: L) -> L::Out {
        let path = std::any::type_name::<L>();
        self.uses(path.strip_prefix("jackpull::").unwrap_or(path).to_owned(), L::EQUATION.mark);
        self.equations.borrow_mut().push(&L::EQUATION);
        law.value()
    }

    /// A cited value.
    fn cited<T>(&self, cited: Cited<T>) -> T {
        let reference = self.handbook.reference(cited.origin);
        self.uses(reference.row_id().unwrap_or_default(), reference.mark);
        cited.value
    }

    /// A row that there has to be.
    fn row<T>(&self, row: Option<Cited<T>>, what: &str) -> Result<T, Box<dyn Error>> {
        row.map(|row| self.cited(row)).ok_or_else(|| format!("there is no row for {what}").into())
    }

    /// The limit of a check of the only candidate of a level drive, in SI base units.
    fn limit(&self, lines: &str, method: Method, subject: Subject) -> Result<f64, Box<dyn Error>> {
        let drive = read_drive(&format!("{SITE}{lines}"), &self.handbook)?;
        let pipe = drive.candidates().first().ok_or("a drive without a candidate")?;
        let scheme = assess(&drive, pipe, method);
        let check = scheme.checks.get(subject).ok_or_else(|| format!("no check of {}", subject.label()))?;
        let reference = self.handbook.reference(check.basis);
        let basis = reference.row_id().unwrap_or_else(|| reference.source.to_owned());
        self.uses(format!("check of a drive: {} by {basis}", subject.label()), reference.mark);
        let (_, limit) = check.high().ok_or("a check without numbers")?;
        Ok(limit.si)
    }

    /// The place where the next figures are printed: a source of the bibliography, or one in words where no row rests on
    /// it.
    fn at(&self, source: &'static str, locator: &'static str, read: Read) -> Result<Place<'_>, Box<dyn Error>> {
        if !source.contains(' ') && self.handbook.sources()?.get(source).is_none() {
            return Err(format!("the bibliography has no {source}").into());
        }
        Ok(Place { book: self, source, locator, read })
    }
}

/// A page, table or example of a source.
#[derive(Debug, Clone, Copy)]
struct Place<'b> {
    book: &'b Book,
    source: &'static str,
    locator: &'static str,
    read: Read,
}

impl Place<'_> {
    /// Ours is the printed figure to half of its last digit.
    #[track_caller]
    fn prints<Q: FromText>(&self, what: &str, ours: Q, printed: &str) -> Outcome {
        self.add(what, ours, printed, None, "half of the last digit", false)
    }

    /// Ours is the printed figure within a tolerance, with its reason.
    #[track_caller]
    fn about<Q: FromText>(&self, what: &str, ours: Q, printed: &str, within: &str, why: &str) -> Outcome {
        self.add(what, ours, printed, Some(within), why, false)
    }

    /// The printed figure is not followed, with the reason.
    #[track_caller]
    fn is_not_followed<Q: FromText>(&self, what: &str, ours: Q, printed: &str, why: &str) -> Outcome {
        self.add(what, ours, printed, None, why, true)
    }

    #[track_caller]
    fn add<Q: FromText>(
        &self,
        what: &str,
        ours: Q,
        printed: &str,
        within: Option<&str>,
        why: &str,
        is_not_followed: bool,
    ) -> Outcome {
        let (number, unit) = printed.split_once(' ').unwrap_or((printed, ""));
        let decimals = number.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let one = q::<Q>(format!("1 {unit}").trim_end())?.si();
        let used = self.book.used.take();
        let Some(mark) = used.iter().map(|(_, mark)| *mark).reduce(Mark::weaker) else {
            return Err(format!("{what}: no law and no row is behind it").into());
        };
        let mut by: Vec<String> = used.into_iter().map(|(name, _)| name).collect();
        by.sort_unstable();
        by.dedup();
        self.book.figures.borrow_mut().push(Figure {
            what: what.to_owned(),
            printed: q::<Q>(printed)?.si() / one,
            ours: ours.si() / one,
            within: match within {
                Some(within) => q::<Q>(within)?.si() / one,
                None => 0.5 * 10_f64.powi(-i32::try_from(decimals)?),
            },
            unit: unit.to_owned(),
            decimals,
            why: why.to_owned(),
            is_not_followed,
            source: self.source,
            locator: self.locator,
            read: self.read,
            by,
            equations: self.book.equations.take(),
            mark,
            code: Location::caller(),
        });
        Ok(())
    }
}
