//! Makes each number of each table and each law a tenth more in turn. The pages that `tenth.txt` names object; what it names
//! no page for is told openly by `cargo run --release --example published_limits -- --coverage`.
//! `JACKPULL_RENEW=1 cargo test --test published tenth` looks for a page of what is new or no longer noticed.

use crate::doubled::{Named, all_cells, catcher, each, first, nothing_is_found_in_the_embedded_tables};
use crate::found::run;
use crate::noticed::LAWS;
pub(crate) use crate::noticed::Listed;
use jackpull::Handbook;
use jackpull::law::tenth::more_of;
use jackpull::laws::equations;
use std::collections::BTreeSet;
use std::sync::Mutex;

fn told((file, page, _): &Named) -> String {
    let folder = if file.matches('/').count() == 1 { "tests/published" } else { "tests" };
    format!("{folder}{file}.rs {page}")
}

/// The pages of a row or law, by what is listed.
fn listed_pages(listed: &Listed, of: &str, pages: &[Named]) -> Vec<Named> {
    let by = listed.by.get(of);
    pages.iter().filter(|page| by.is_some_and(|by| by.contains(&told(page)))).copied().collect()
}

/// Looks at what is listed for each name, of a number or law with that of its row or law, and elsewhere where the list is made
/// anew.
fn hold<C: Sync>(
    of: &[C],
    name: impl Fn(&C) -> (&str, &str) + Sync,
    look: impl Fn(&C, &mut [Named]) -> Option<Named> + Sync,
) {
    // A page that objects anyway would notice everything.
    nothing_is_found_in_the_embedded_tables();
    let (listed, renewed) = (Listed::read(), std::env::var_os("JACKPULL_RENEW").is_some());
    let seen = each(of, |one, pages| {
        let (cell, row) = name(one);
        if listed.unnoticed.contains(cell) {
            return None;
        }
        let mut own = listed_pages(&listed, row, pages);
        look(one, &mut own).or_else(|| if renewed { look(one, pages) } else { None })
    });
    if renewed {
        return renew(seen.into_iter().map(|(one, page)| (name(one), page)).collect());
    }
    let unseen = seen.into_iter().filter(|(one, page)| page.is_none() && !listed.unnoticed.contains(name(one).0));
    let unseen: Vec<&str> = unseen.map(|(one, _)| name(one).0).collect();
    assert!(unseen.is_empty(), "a tenth more is not noticed, and tenth.txt does not say so: {unseen:#?}");
}

/// Writes the list with what was seen in place of what it said of the same tables.
fn renew(seen: Vec<((&str, &str), Option<Named>)>) {
    static FILE: Mutex<()> = Mutex::new(());
    let _one_at_a_time = FILE.lock().unwrap();
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/published/tenth.txt");
    let mut listed = Listed::from(&std::fs::read_to_string(path).unwrap());
    let is_law = seen.iter().any(|((_, row), _)| row.starts_with(LAWS));
    listed.by.retain(|row, _| row.starts_with(LAWS) != is_law);
    listed.unnoticed.retain(|cell| cell.starts_with(LAWS) != is_law);
    for ((cell, row), page) in seen {
        match page {
            Some(page) => drop(listed.by.entry(row.to_owned()).or_default().insert(told(&page))),
            None => drop(listed.unnoticed.insert(cell.to_owned())),
        }
    }
    for cell in Listed::untested() {
        listed.unnoticed.remove(cell);
    }
    std::fs::write(path, listed.text()).unwrap();
}

#[test]
fn a_tenth_more_of_a_number_is_noticed_as_listed() {
    hold(&all_cells(1.1), |cell| (cell.name(), cell.of_row()), catcher);
}

#[test]
fn a_tenth_more_of_a_law_is_noticed_as_listed() {
    let laws: Vec<(String, &str)> =
        equations().map(|equation| (format!("{LAWS}/{}", equation.name), equation.name)).collect();
    let handbook = Handbook::embedded();
    hold(
        &laws,
        |(name, _)| (name, name),
        |(_, law), pages| first(pages, |page| more_of(law, || !run(page, &handbook).is_empty())),
    );
}

/// A row, law or page that is gone would be told of for ever.
#[test]
fn what_is_listed_is_there() {
    let listed = Listed::from(include_str!("tenth.txt"));
    let cells = all_cells(1.1);
    let mut names: BTreeSet<&str> = cells.iter().flat_map(|cell| [cell.name(), cell.of_row()]).collect();
    let laws: Vec<String> = equations().map(|equation| format!("{LAWS}/{}", equation.name)).collect();
    names.extend(laws.iter().map(String::as_str));
    let pages: BTreeSet<String> = crate::doubled::pages().iter().map(told).collect();
    for (name, by) in &listed.by {
        assert!(names.contains(name.as_str()) && by.is_subset(&pages), "{name}: {by:?}");
    }
    for name in &listed.unnoticed {
        assert!(names.contains(name.as_str()), "{name}");
    }
    assert_eq!(listed.text(), include_str!("tenth.txt"));
}
