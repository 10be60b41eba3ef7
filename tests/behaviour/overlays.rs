//! A user's tables laid over those of the handbook.

use jackpull::handbook::{Handbook, HandbookError};
use jackpull::quantity::Measure;
use jackpull::source::{Mark, Origin};

/// A user's file for the table of iron pipe sizes.
fn overlay(rows: &str) -> String {
    format!("id: pe_ips\ntitle: Pipe on our yard\nmark: published\nrows:\n{rows}")
}

fn overlay_row(key: &str, size: &str, outside_diameter: &str) -> String {
    format!("  - key: {key}\n    value:\n      size: {size}\n      outside_diameter: {outside_diameter}\n")
}

#[test]
fn an_overlay_replaces_a_row_by_its_key() {
    let book = Handbook::embedded();
    let before = book.pe_ips().unwrap();
    let at = before.rows.len() / 2;
    let old = &before.rows[at];
    let text = overlay(&overlay_row(&old.key, "20 in", "508 mm")) + "    mark: published\n    range: 500 to 510 mm\n";
    let laid = book.with_overlay("yard.yaml", &text).unwrap();
    let after = laid.pe_ips().unwrap();
    assert_eq!(after.rows.len(), before.rows.len());
    let new = &after.rows[at];
    assert_eq!(new.key, old.key);
    assert!((new.value.outside_diameter.value.si() - 0.508).abs() < 1e-12);
    assert_eq!(new.citation.mark, Mark::Given);
    assert_eq!((new.citation.source.as_str(), new.citation.note.as_deref()), ("yard.yaml", None));
    assert!(new.citation.locator.contains(&old.key));
    assert_eq!(new.citation.range.as_deref(), Some("500 to 510 mm"));
    let kept = new.replaced.as_ref().unwrap();
    assert_eq!((&kept.key, &kept.citation), (&old.key, &old.citation));
    assert_eq!(kept.value.outside_diameter.value.si(), old.value.outside_diameter.value.si());
    // The rows around it, and the handbook it was laid over, are as they were.
    for (old, new) in before.rows.iter().zip(&after.rows).filter(|(row, _)| row.key != kept.key) {
        assert_eq!((&new.key, &new.citation, new.replaced.is_none()), (&old.key, &old.citation, true));
    }
    assert!(book.pe_ips().unwrap().rows.iter().all(|row| row.replaced.is_none()));
    let Origin::Row(id) = after.get(&old.key).unwrap().origin else { panic!("no row") };
    assert_eq!(laid.citation(id), Some(("pe_ips", old.key.as_str(), &new.citation)));
}

#[test]
fn an_overlay_appends_a_new_key_and_overlays_add_up() {
    let book = Handbook::embedded();
    let rows = book.pe_ips().unwrap().rows.len();
    let one = book.with_overlay("one.yaml", &overlay(&overlay_row("ours", "20 in", "508 mm"))).unwrap();
    let two = one.with_overlay("two.yaml", &overlay(&overlay_row("ours", "20 in", "509 mm"))).unwrap();
    let other = two.with_overlay("three.yaml", "id: pe_iso4427\ntitle: none\nrows: []\n").unwrap();
    assert_eq!(one.pe_ips().unwrap().rows.len(), rows + 1);
    let last = other.pe_ips().unwrap().rows.last().unwrap();
    assert_eq!((last.key.as_str(), last.citation.source.as_str()), ("ours", "two.yaml"));
    assert_eq!(last.citation.mark, Mark::Given);
    let kept = last.replaced.as_ref().unwrap();
    assert_eq!((kept.citation.source.as_str(), kept.citation.mark), ("one.yaml", Mark::Given));
    assert!(kept.replaced.is_none());
}

fn refusal(text: &str) -> HandbookError {
    Handbook::embedded().with_overlay("yard.yaml", text).expect_err(text)
}

#[test]
fn an_overlay_of_no_table_is_refused() {
    let text = overlay("").replace("pe_ips", "pe_ipz").replace("rows:\n", "rows: []\n");
    assert_eq!(refusal(&text), HandbookError::NoTable("pe_ipz".to_owned()));
}

/// Each text with what its message must say.
#[test]
fn a_malformed_overlay_is_refused_with_its_line() {
    let row = |key| overlay_row(key, "20 in", "508 mm");
    let twice = row("ours") + &row("other") + &row("ours");
    let cases = [
        // A unit of another dimension, an unknown unit, none.
        (overlay_row("ours", "20 in", "508 kPa"), "line 8", "outside_diameter"),
        (overlay_row("ours", "20 inches", "508 mm"), "line 7", "size"),
        (overlay_row("ours", "20 in", "508"), "line 8", "without a unit"),
        (overlay_row("ours", "20 in", "NaN mm"), "line 8", "not a finite number"),
        (twice, "line 13", "\"ours\" is there twice"),
        (row("ours") + "      wall: 20 mm\n", "line 9", "wall"),
        (row("ours") + "    colour: blue\n", "line 9", "colour"),
        (row("ours") + "    mark: honest\n", "line 9", "mark"),
        ("  - key: ours\n    value:\n      size: 20 in\n".to_owned(), "line 7", "outside_diameter"),
        ("  - key: ours\n    value: [20 in\n".to_owned(), "line", ""),
        ("  - key: ours\n   value: 3\n".to_owned(), "line 6", ""),
    ];
    for (rows, line, word) in cases {
        let error = refusal(&overlay(&rows));
        let message = error.to_string();
        assert!(matches!(&error, HandbookError::Malformed { table, .. } if table == "yard.yaml"), "{error:?}");
        assert!(message.contains(line) && message.contains(word), "no {line} or {word} in: {message}");
    }
}
