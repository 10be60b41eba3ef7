//! The equations themselves: each names a source of the bibliography, and says where in it.

use jackpull::Handbook;
use jackpull::laws::equations;
use std::collections::BTreeSet;

#[test]
fn every_source_of_an_equation_is_in_the_bibliography() {
    let handbook = Handbook::embedded();
    let sources = handbook.sources().unwrap();
    let missing: BTreeSet<&str> =
        equations().map(|equation| equation.source).filter(|id| sources.get(id).is_none()).collect();
    assert!(missing.is_empty(), "not in sources.yaml: {missing:?}");
}

#[test]
fn every_equation_says_what_where_and_how_far() {
    for equation in equations() {
        for (what, text) in [("form", equation.form), ("locator", equation.locator), ("range", equation.valid)] {
            assert!(!text.trim().is_empty(), "{} has no {what}", equation.name);
        }
    }
}

#[test]
fn no_two_equations_have_one_name() {
    let names: BTreeSet<&str> = equations().map(|equation| equation.name).collect();
    assert_eq!(names.len(), equations().count());
}
