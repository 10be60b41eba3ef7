//! Inside a room too the arrows point one way: no module of `src` uses, by way of others, itself.
//!
//! What counts is every path through `crate::`, `super::` or `self::`, and every path of a module through one of its own.

use crate::files::{root, rust_files};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;

type Module = Vec<String>;

/// Modules that still stand in a circle. The list may only shrink.
const KNOWN: &[&str] = &[
    "drive_file",
    "drive_file::band",
    "drive_file::builder",
    "drive_file::candidate",
    "drive_file::examples",
    "drive_file::fields",
    "drive_file::ground",
    "drive_file::jacked",
    "drive_file::pit",
    "drive_file::pull",
    "drive_file::pulled",
    "drive_file::resolve",
    "drive_file::resolve::concrete",
    "drive_file::resolve::label",
    "drive_file::resolve::line",
    "drive_file::resolve::pipe",
    "drive_file::resolve::rigid",
    "drive_file::resolve::suitability",
    "drive_file::resolve::take",
    "drive_file::rig",
    "drive_file::schema",
    "drive_file::site",
    "handbook",
    "handbook::blame",
    "handbook::lookup",
    "handbook::reference",
    "handbook::shelf",
    "handbook::written",
    "yaml",
    "yaml::field",
];

/// The text without comments; strings hold no paths.
fn code(text: &str) -> String {
    text.lines().map(|line| line.split("//").next().unwrap()).collect::<Vec<_>>().join("\n")
}

fn word(text: &str) -> &str {
    let end = text.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(text.len());
    &text[..end]
}

/// The paths of a tree such as `a::{b, c::d}` at the start of a text, and what is left of it.
fn tree<'a>(mut text: &'a str, before: &[String], paths: &mut Vec<Module>) -> &'a str {
    let mut path = before.to_vec();
    loop {
        text = text.trim_start();
        if let Some(inside) = text.strip_prefix('{') {
            text = inside;
            loop {
                text = tree(text, &path, paths).trim_start();
                match text.strip_prefix(',') {
                    Some(rest) => text = rest,
                    None => return text.strip_prefix('}').unwrap_or(text),
                }
            }
        }
        let name = word(text);
        text = &text[name.len()..];
        if !name.is_empty() {
            path.push(name.to_owned());
        }
        match text.trim_start().strip_prefix("::") {
            Some(rest) if !name.is_empty() => text = rest,
            _ => {
                paths.push(path);
                return text;
            }
        }
    }
}

/// The module that a path of a module leads into: the deepest on its way.
fn target(path: &[String], within: &Module, modules: &BTreeSet<Module>) -> Module {
    let (mut place, rest) = match path[0].as_str() {
        "crate" => (Module::new(), &path[1..]),
        "self" => (within.clone(), &path[1..]),
        _ => (within.clone(), path),
    };
    for name in rest {
        if name == "super" {
            place.pop();
            continue;
        }
        let mut deeper = place.clone();
        deeper.push(name.clone());
        if !modules.contains(&deeper) {
            break;
        }
        place = deeper;
    }
    place
}

/// Whom each module uses.
fn uses(texts: &BTreeMap<Module, String>) -> BTreeMap<&Module, BTreeSet<Module>> {
    let modules: BTreeSet<Module> = texts.keys().cloned().collect();
    let mut uses = BTreeMap::new();
    for (module, text) in texts {
        let own = modules.iter().filter(|other| other.split_last().is_some_and(|(_, parent)| parent == module));
        let own: Vec<&str> = own.map(|other| other.last().unwrap().as_str()).collect();
        let mut used = BTreeSet::new();
        for (at, _) in text.match_indices("::") {
            let start = text[..at].rfind(|c: char| !c.is_alphanumeric() && c != '_').map_or(0, |before| before + 1);
            let first = &text[start..at];
            // Only where a path begins; a visibility is no use.
            if text[..start].ends_with("::")
                || text[..start].ends_with("(in ")
                || !(["crate", "super", "self"].contains(&first) || own.contains(&first))
            {
                continue;
            }
            let mut paths = Vec::new();
            tree(&text[start..], &[], &mut paths);
            used.extend(paths.iter().map(|path| target(path, module, &modules)));
        }
        used.remove(module);
        used.remove(&Module::new());
        uses.insert(module, used);
    }
    uses
}

/// The shortest way from a module back to itself.
fn circle(start: &Module, uses: &BTreeMap<&Module, BTreeSet<Module>>) -> Option<Vec<String>> {
    let mut ways: Vec<Vec<&Module>> = vec![vec![start]];
    let mut seen = BTreeSet::new();
    let mut next = 0;
    while let Some(way) = ways.get(next).cloned() {
        next += 1;
        for used in uses.get(way[way.len() - 1]).into_iter().flatten() {
            if used == start {
                return Some(way.iter().chain([&start]).map(|module| module.join("::")).collect());
            }
            if seen.insert(used) {
                ways.push(way.iter().copied().chain([used]).collect());
            }
        }
    }
    None
}

fn knots(texts: &BTreeMap<Module, String>) -> BTreeMap<String, String> {
    let uses = uses(texts);
    let circles = texts.keys().filter_map(|module| Some((module.join("::"), circle(module, &uses)?.join(" -> "))));
    circles.collect()
}

#[test]
fn no_module_comes_back_to_itself() {
    let source = root().join("src");
    let mut texts = BTreeMap::new();
    for path in rust_files(&source) {
        let inside = path.strip_prefix(&source).unwrap().with_extension("");
        let module: Module = inside.iter().map(|part| part.to_str().unwrap().to_owned()).collect();
        if module != ["lib"] && module != ["main"] {
            texts.insert(module, code(&fs::read_to_string(&path).unwrap()));
        }
    }
    let knots = knots(&texts);
    let strange: Vec<_> = knots.iter().filter(|(module, _)| !KNOWN.contains(&module.as_str())).collect();
    assert!(strange.is_empty(), "circles: {strange:#?}");
    let gone: Vec<_> = KNOWN.iter().filter(|known| !knots.contains_key(**known)).collect();
    assert!(gone.is_empty(), "no circle any more, strike them from the list: {gone:?}");
}

/// Each form of a path is read: of a sister, through the parent, of an item of the parent, in a group, of one's own.
#[test]
fn every_form_of_a_path_is_read() {
    let knots = |one: &str, other: &str, parent: &str| {
        let module = |path: &str| path.split("::").map(str::to_owned).collect::<Module>();
        let texts = [("room", parent), ("room::one", one), ("room::other", other)];
        knots(&texts.map(|(path, text)| (module(path), code(text))).into())
    };
    let back = "use crate::room::one::Item;";
    for there in ["use super::other::Item;", "use super::{other::{a::B, C}};", "fn f() { crate::room::other::g(); }"] {
        assert_eq!(knots(there, back, "mod one;").len(), 2, "{there}");
        assert!(knots(there, "// super::one", "pub use one::Item;\npub use other::Item;").is_empty(), "{there}");
    }
    let through = knots("use super::Item;", "", "mod one;\npub use one::Item;");
    assert_eq!(through.keys().collect::<Vec<_>>(), ["room", "room::one"]);
    assert_eq!(through["room::one"], "room::one -> room -> room::one");
    assert_eq!(knots("use super::Item;", "", "fn f() { self::one::g() }").len(), 2);
    assert!(knots("use super::Item;", "use super::{Item, one::f};", "pub struct Item;").is_empty());
}
