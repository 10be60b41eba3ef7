//! The guide: a page for every group of laws, with its figure, and every page in the docs.

use std::collections::BTreeSet;
use std::fs;

fn read(path: &str) -> String {
    fs::read_to_string(format!("{}/src/{path}", env!("CARGO_MANIFEST_DIR"))).unwrap()
}

/// Names of the files in a folder of `src` with this ending, without it.
fn names(folder: &str, ending: &str) -> BTreeSet<String> {
    let entries = fs::read_dir(format!("{}/src/{folder}", env!("CARGO_MANIFEST_DIR"))).unwrap();
    let names = entries.map(|entry| entry.unwrap().file_name().into_string().unwrap());
    names.filter_map(|name| name.strip_suffix(ending).map(str::to_owned)).collect()
}

#[test]
fn every_topic_of_the_laws_has_a_page_that_ends_with_it() {
    let pages = names("guide", ".md");
    let told: String = pages
        .iter()
        .filter_map(|page| Some(read(&format!("guide/{page}.md")).split_once("\nLaws: ")?.1.to_owned()))
        .collect();
    let laws = read("laws.rs");
    let topics: Vec<&str> = laws.lines().filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';')).collect();
    assert!(topics.len() > 30, "{topics:?}");
    let missing: Vec<_> = topics.iter().filter(|topic| !told.contains(&format!("(crate::laws::{topic})"))).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

#[test]
fn every_page_is_in_the_docs_and_shows_its_figure() {
    let listed = read("guide.rs");
    let (_, listed) = listed.split_once("\npages!(").unwrap();
    let listed: BTreeSet<String> =
        listed.trim_end_matches([')', ';', '\n']).split(',').map(|page| page.trim().to_owned()).collect();
    let pages = names("guide", ".md");
    assert_eq!(listed.iter().filter(|page| !page.is_empty()).cloned().collect::<BTreeSet<_>>(), pages);
    let drawn: BTreeSet<String> = pages
        .into_iter()
        .filter(|page| read(&format!("guide/{page}.md")).contains(&format!("](figures/{page}.svg)")))
        .collect();
    assert_eq!(drawn, names("guide/figures", ".svg"));
}
