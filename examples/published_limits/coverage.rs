//! Which laws and rows a check against the outside would notice a tenth more of, and which none.

use super::book::print::place;
use super::book::{Figure, TOPICS, figures};
use super::noticed::{LAWS, Listed};
use jackpull::Handbook;
use jackpull::laws::equations;
use std::collections::BTreeMap;
use std::error::Error;
use std::io::Write;

/// Numbers whose double no test notices, each with the reason: `table/row/column`, two spaces, reason.
const UNTESTED: &str = include_str!("../../tests/published/untested.txt");
/// Ratings that may be called suitable without a test that notices, in the same form.
const UNRATED: &str = include_str!("../../tests/published/unrated.txt");

/// Tables of ratings: `tests/published/flipped.rs` calls each suitable in turn.
const RATED: [&str; 3] = ["ground_suitability", "guided_suitability", "ground_hazard"];

/// The reason why no test looks at it.
fn reason(list: &'static str, cell: &str) -> Option<&'static str> {
    list.lines().find_map(|line| line.strip_prefix(cell)?.strip_prefix("  "))
}

/// What each number of a row, or each law, is noticed by; numbers that are not, by row.
struct Noticed {
    listed: Listed,
    open: BTreeMap<String, Vec<String>>,
}

impl Noticed {
    fn read() -> Self {
        let listed = Listed::read();
        let mut open: BTreeMap<String, Vec<String>> = BTreeMap::new();
        for (row, column) in listed.unnoticed.iter().filter_map(|cell| cell.rsplit_once('/')) {
            open.entry(row.to_owned()).or_default().push(column.to_owned());
        }
        Self { listed, open }
    }

    fn by(&self, name: &str) -> Option<String> {
        let pages: Vec<String> = self.listed.by.get(name)?.iter().map(|page| page.replace(' ', ", page ")).collect();
        Some(pages.join("; "))
    }

    /// Numbers of a row that no page sees a tenth more of: of which twice is seen, and of which not, with the reason.
    fn open(&self, row: &str) -> Option<(bool, String)> {
        let columns = self.open.get(row)?;
        let untested = |column: &String| reason(UNTESTED, &format!("{row}/{column}"));
        let told =
            |column: &String| format!("{column}: {}", untested(column).unwrap_or("twice is noticed, a tenth is not"));
        let is_tested = columns.iter().all(|column| untested(column).is_none());
        Some((is_tested, columns.iter().map(told).collect::<Vec<_>>().join("; ")))
    }
}

/// Ratings of a row that no test notices as suitable.
fn unrated(row: &str) -> Option<String> {
    let lines = UNRATED.lines().filter_map(|line| line.strip_prefix(row)?.strip_prefix('/')?.split_once("  "));
    let told: Vec<String> = lines.map(|(column, reason)| format!("{column}: {reason}")).collect();
    (!told.is_empty()).then(|| told.join("; "))
}

/// Every law, then every row in use, with its mark and what would notice.
pub(crate) fn print(out: &mut impl Write) -> Result<(), Box<dyn Error>> {
    let (handbook, noticed) = (Handbook::embedded(), Noticed::read());
    let mut all = Vec::new();
    for topic in &TOPICS {
        all.extend(figures(topic.write, &handbook)?);
    }
    let here = |rests: &dyn Fn(&Figure) -> bool| {
        let first = all.iter().find(|figure| rests(figure))?;
        Some(match all.iter().filter(|figure| rests(figure)).count() {
            1 => format!("; figure here: {}, {} ({})", first.source, first.what, place(first)),
            number => format!("; {number} figures here, first: {}, {} ({})", first.source, first.what, place(first)),
        })
    };
    let mut counts = Counts::default();
    for equation in equations() {
        let told = match noticed.by(&format!("{LAWS}/{}", equation.name)) {
            Some(pages) => counts.told("noticed", pages),
            None => counts.told("open", "no page from outside notices a tenth more".to_owned()),
        };
        let figures = here(&|figure| figure.equations.contains(&equation)).unwrap_or_default();
        writeln!(out, "law {} ({}): {told}{figures}", equation.name, equation.mark)?;
    }
    counts.print(out, "laws")?;
    for (table, key, citation) in handbook.citations()? {
        if table == "sources" || citation.used_by == "nothing yet" {
            continue;
        }
        let row = format!("{table}/{key}");
        let told = match (noticed.by(&row), noticed.open(&row), unrated(&row)) {
            (Some(pages), None, None) => counts.told("noticed", pages),
            (Some(pages), open, unrated) => {
                let but = open.map(|(_, but)| but).into_iter().chain(unrated).collect::<Vec<_>>().join("; ");
                counts.told("noticed in part", format!("{pages}; but not {but}"))
            }
            (None, Some((true, but)), None) => counts.told("noticed at twice", but),
            (None, Some((_, but)), _) | (None, None, Some(but)) => counts.told("open", but),
            (None, None, None) if RATED.contains(&table) => {
                counts.told("noticed", "each rating, where it is called suitable, by a page".to_owned())
            }
            (None, None, None) => counts.told("words", "no number".to_owned()),
        };
        let figures = here(&|figure| figure.by.iter().any(|by| by.ends_with(&row))).unwrap_or_default();
        writeln!(out, "row {row} ({}): {told}{figures}", citation.mark)?;
    }
    counts.print(out, "rows")
}

/// How many are noticed, and how.
#[derive(Default)]
struct Counts(BTreeMap<&'static str, usize>);

impl Counts {
    fn told(&mut self, how: &'static str, told: String) -> String {
        *self.0.entry(how).or_default() += 1;
        format!("{how}: {told}")
    }

    fn print(&mut self, out: &mut impl Write, of: &str) -> Result<(), Box<dyn Error>> {
        let counts: Vec<String> = self.0.iter().map(|(how, number)| format!("{number} {how}")).collect();
        self.0.clear();
        Ok(writeln!(out, "{of}: {}", counts.join(", "))?)
    }
}
