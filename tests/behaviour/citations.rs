//! Where every row comes from: sources, locators, marks, keys, and what uses it.

use crate::records::{assert_all, assert_none};
use jackpull::handbook::{Citation, Handbook};
use jackpull::source::{Mark, Origin};
use std::collections::BTreeSet;

#[test]
fn every_embedded_table_parses_and_has_rows() {
    let book = Handbook::embedded();
    book.parse_all().unwrap();
    let filled: BTreeSet<&str> = book.citations().unwrap().iter().map(|(table, ..)| *table).collect();
    assert_all(Handbook::TABLES, |table| (!filled.contains(table)).then(|| format!("{table} has no rows")));
}

#[test]
fn the_folder_and_the_embedded_list_agree_both_ways() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tables");
    let files: BTreeSet<String> =
        std::fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    let listed: BTreeSet<String> = Handbook::TABLES.iter().map(|table| format!("{table}.yaml")).collect();
    assert_eq!(files, listed);
    for table in Handbook::TABLES {
        let file = std::fs::read_to_string(folder.join(format!("{table}.yaml"))).unwrap();
        assert_eq!(Handbook::embedded_text(table), Some(file.as_str()), "{table}");
    }
    assert_eq!(Handbook::embedded_text("no_such_table"), None);
}

/// Table and key of each row with what its citation owes.
fn assert_cited(fault: impl Fn(&str, &str, &Citation) -> Option<String>) {
    let book = Handbook::embedded();
    assert_all(book.citations().unwrap(), |(table, key, citation)| {
        fault(table, key, citation).map(|fault| format!("{table} {key}: {fault}"))
    });
}

fn bibliography() -> BTreeSet<String> {
    Handbook::embedded().sources().unwrap().rows.iter().map(|row| row.key.clone()).collect()
}

#[test]
fn every_source_resolves() {
    let known = bibliography();
    assert_cited(|_, _, citation| {
        (!known.contains(&citation.source)).then(|| format!("the source {} is not in sources", citation.source))
    });
}

#[test]
fn every_source_is_used() {
    let book = Handbook::embedded();
    let citations = book.citations().unwrap();
    // An entry of the bibliography that cites itself is no use of it.
    let used: BTreeSet<&str> = citations
        .iter()
        .filter(|(table, ..)| *table != "sources")
        .map(|(.., citation)| citation.source.as_str())
        .chain(jackpull::laws::equations().map(|equation| equation.source))
        .collect();
    let known = bibliography();
    assert!(known.contains("jackpull"));
    assert_all(&known, |source| (!used.contains(source.as_str())).then(|| format!("no row or law uses {source}")));
}

#[test]
fn every_row_has_locator_and_an_honest_mark() {
    assert_cited(|_, _, citation| citation.locator.trim().is_empty().then(|| "no locator".to_owned()));
    assert_cited(|_, _, citation| (citation.mark == Mark::Given).then(|| "an embedded row is never given".to_owned()));
    assert_cited(|_, _, citation| {
        let bare = citation.mark == Mark::Judgement && citation.source != "jackpull" && citation.note.is_none();
        bare.then(|| format!("a judgement on {} without a note", citation.source))
    });
    assert_cited(|_, _, citation| {
        let odd = citation.source == "jackpull" && matches!(citation.mark, Mark::Published | Mark::Memory);
        odd.then(|| "we are no publication".to_owned())
    });
}

#[test]
fn sources_say_what_they_are() {
    const KINDS: [&str; 6] = ["standard", "handbook", "paper", "agency document", "guidance", "own"];
    let book = Handbook::embedded();
    assert_all(&book.sources().unwrap().rows, |row| {
        let kind = row.value.kind.value.0.as_str();
        (!KINDS.contains(&kind)).then(|| format!("{}: the kind \"{kind}\" is none of {KINDS:?}", row.key))
    });
}

#[test]
fn every_origin_leads_back_to_its_row() {
    let book = Handbook::embedded();
    let mut seen = 0;
    for row in book.pe_iso4427().unwrap().iter() {
        let Origin::Row(id) = row.origin else { panic!("{:?}", row.origin) };
        let (table, key, citation) = book.citation(id).unwrap();
        assert_eq!((table, key, citation), ("pe_iso4427", row.value.key.as_str(), &row.value.citation));
        seen += 1;
    }
    assert!(seen > 0);
}

#[test]
fn keys_are_unique() {
    assert_cited(|_, key, _| key.trim().is_empty().then(|| "an empty key".to_owned()));
    let book = Handbook::embedded();
    let mut seen = BTreeSet::new();
    let twice = book.citations().unwrap().into_iter().filter(|(table, key, _)| !seen.insert((*table, key.to_string())));
    assert_none(&twice.map(|(table, key, _)| format!("{table} {key} is given twice")).collect::<Vec<_>>());
}

/// What is said to use a row is a check, a law or a criterion by its name, so that the handbook cannot say less.
#[test]
fn what_uses_a_row_exists() {
    let book = Handbook::embedded();
    let mut names: BTreeSet<&str> = [
        "cautions",
        "time",
        "every citation",
        "standing",
        "score",
        "friction models",
        "figures",
        "candidates proposed",
    ]
    .into();
    names.extend(jackpull::laws::equations().map(|equation| equation.name));
    names.extend(jackpull::check::Subject::ALL.iter().map(|subject| subject.label()));
    names.extend(jackpull::choice::CriterionKind::ALL.iter().map(|kind| kind.label()));
    assert_all(book.citations().unwrap(), |(table, key, citation)| {
        let unknown = citation.used_by.split("; ").find(|name| !names.contains(name))?;
        Some(format!("{table} {key} is said to be used by \"{unknown}\""))
    });
}

/// Sources of laws resolve in the bibliography.
#[test]
fn laws_have_sources() {
    let book = Handbook::embedded();
    let sources = book.sources().unwrap();
    assert_all(jackpull::laws::equations(), |equation| {
        sources.get(equation.source).is_none().then(|| format!("{}: no source {}", equation.name, equation.source))
    });
    let names: BTreeSet<&str> = jackpull::laws::equations().map(|equation| equation.name).collect();
    assert_eq!(names.len(), jackpull::laws::equations().count(), "two laws share a name");
}

/// What is put together of two numbers is published only where both are.
#[test]
fn a_mark_is_never_upgraded() {
    for one in Mark::ALL {
        for other in Mark::ALL {
            let both = one.weaker(other);
            assert_eq!(both, other.weaker(one));
            assert!(both == one || both == other);
            assert_eq!(both == Mark::Published, one == Mark::Published && other == Mark::Published);
        }
        assert_eq!(one.weaker(Mark::Judgement), Mark::Judgement);
    }
}
