//! Inside a room too the arrows point one way: no module of `src` uses, by way of others, itself.
//!
//! What counts is every path through `crate::`, `super::` or `self::`, and every path of a module through one of its own.
//! A name that a module passes on is followed to the module that has it: passing on alone is no use.

use crate::files::{root, rust_files};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;

type Module = Vec<String>;

/// The text without comments; strings hold no paths.
fn code(text: &str) -> String {
    text.lines().map(|line| line.split("//").next().unwrap()).collect::<Vec<_>>().join("\n")
}

fn word(text: &str) -> &str {
    let end = text.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(text.len());
    &text[..end]
}

/// The words of a text, each with what stands before and behind it.
fn words(text: &str) -> impl Iterator<Item = (&str, &str, &str)> {
    let mut at = 0;
    std::iter::from_fn(move || {
        at += text[at..].find(|c: char| c.is_alphanumeric() || c == '_')?;
        let (start, found) = (at, word(&text[at..]));
        at += found.len();
        Some((&text[..start], found, &text[at..]))
    })
}

/// The paths of a tree such as `a::{b, c::d}` at the start of a text, and what is left of it. A path ends with `*` as it
/// is written.
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
        let name = if text.starts_with('*') { "*" } else { word(text) };
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

/// What one module says: the paths that it brings in, those that it passes on too, and the rest of its text.
struct Text {
    brought: Vec<Module>,
    passed_on: Vec<Module>,
    rest: String,
    items: BTreeSet<String>,
}

/// What stands before the name of an item.
const ITEMS: [&str; 9] = ["struct", "enum", "fn", "const", "type", "trait", "static", "macro_rules!", "union"];

impl Text {
    fn of(code: &str) -> Self {
        let mut text = Self { brought: Vec::new(), passed_on: Vec::new(), rest: String::new(), items: BTreeSet::new() };
        for (index, part) in code.split("use ").enumerate() {
            let line = text.rest.rsplit('\n').next().unwrap().trim().to_owned();
            if index == 0 || !(line.is_empty() || line.starts_with("pub")) {
                text.rest.push_str(if index == 0 { "" } else { "use " });
                text.rest.push_str(part);
                continue;
            }
            let paths = if line.is_empty() { &mut text.brought } else { &mut text.passed_on };
            let behind = tree(part, &[], paths);
            text.rest.push_str(behind);
        }
        // `NAME at [` is a block of the drive file.
        let is_item = |before: &str, behind: &str| {
            behind.starts_with(" at [") || ITEMS.iter().any(|item| before.trim_end().ends_with(item))
        };
        let items = words(&text.rest).filter(|(before, _, behind)| is_item(before, behind));
        text.items = items.map(|(_, name, _)| name.to_owned()).collect();
        text
    }
}

struct Source(BTreeMap<Module, Text>);

impl Source {
    /// The module that has what a path of a module names.
    fn target(&self, path: &[String], within: &Module, depth: usize) -> Option<Module> {
        let (mut place, mut rest) = match path.first()?.as_str() {
            "crate" => (Module::new(), &path[1..]),
            "self" => (within.clone(), &path[1..]),
            _ => (within.clone(), path),
        };
        while let Some((name, behind)) = rest.split_first() {
            if name == "super" {
                place.pop();
            } else {
                let deeper = [place.clone(), vec![name.clone()]].concat();
                if !self.0.contains_key(&deeper) {
                    break;
                }
                place = deeper;
            }
            rest = behind;
        }
        match rest.first() {
            Some(name) => self.behind(&place, name, depth).or(Some(place)),
            None => Some(place),
        }
    }

    /// The module from which another has a name that it does not write itself.
    fn behind(&self, place: &Module, name: &str, depth: usize) -> Option<Module> {
        let text = self.0.get(place).filter(|text| depth < 8 && !text.items.contains(name))?;
        text.brought.iter().chain(&text.passed_on).find_map(|path| {
            let (last, before) = path.split_last()?;
            if last == name && path[0] != name {
                return self.target(path, place, depth + 1);
            }
            let all = (last == "*").then(|| self.target(before, place, depth + 1))??;
            if self.0.get(&all)?.items.contains(name) { Some(all) } else { self.behind(&all, name, depth + 1) }
        })
    }

    /// Whom a module uses.
    fn used_by(&self, module: &Module) -> BTreeSet<Module> {
        let Text { brought, passed_on, rest, .. } = &self.0[module];
        let mut paths: Vec<Module> = brought.clone();
        for (before, first, behind) in words(rest) {
            // Only where a path begins; a visibility is no use.
            if before.ends_with("::") || before.ends_with("(in ") || before.ends_with('.') {
                continue;
            }
            let is_own = self.0.contains_key(&[module.clone(), vec![first.to_owned()]].concat());
            if behind.starts_with("::") && (is_own || ["crate", "super", "self"].contains(&first)) {
                tree(&rest[before.len()..], &[], &mut paths);
            } else if first.starts_with(char::is_uppercase) || behind.starts_with('(') {
                // Passed on, and used here too.
                let named =
                    passed_on.iter().filter(|path| path.last().is_some_and(|last| last == first || last == "*"));
                if named.count() > 0 {
                    paths.push(vec!["self".to_owned(), first.to_owned()]);
                }
            }
        }
        let used = paths.iter().filter_map(|path| self.target(path, module, 0));
        used.filter(|used| used != module && !used.is_empty()).collect()
    }

    fn knots(&self) -> BTreeMap<String, String> {
        let uses = self.0.keys().map(|module| (module, self.used_by(module))).collect();
        let circles = self.0.keys().filter_map(|module| Some((module.join("::"), circle(module, &uses)?.join(" -> "))));
        circles.collect()
    }
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

#[test]
fn no_module_comes_back_to_itself() {
    let source = root().join("src");
    let mut texts = BTreeMap::new();
    for path in rust_files(&source) {
        let inside = path.strip_prefix(&source).unwrap().with_extension("");
        let module: Module = inside.iter().map(|part| part.to_str().unwrap().to_owned()).collect();
        if module != ["lib"] && module != ["main"] {
            texts.insert(module, Text::of(&code(&fs::read_to_string(&path).unwrap())));
        }
    }
    let knots = Source(texts).knots();
    assert!(knots.is_empty(), "circles: {knots:#?}");
}

/// Each form of a path is read: of a sister, of an item of the parent, in a group, of one's own; and what is passed on is
/// followed.
#[test]
fn every_form_of_a_path_is_read() {
    let knots = |one: &str, other: &str, parent: &str| {
        let module = |path: &str| path.split("::").map(str::to_owned).collect::<Module>();
        let texts = [("room", parent), ("room::one", one), ("room::other", other)];
        Source(texts.map(|(path, text)| (module(path), Text::of(&code(text)))).into()).knots()
    };
    let back = "use crate::room::one::Item;";
    for there in ["use super::other::Item;", "use super::{other::{a::B, C}};", "fn f() { crate::room::other::g(); }"] {
        assert_eq!(knots(there, back, "mod one;").len(), 2, "{there}");
        assert!(knots(there, "// super::one", "pub use one::Item;\npub use other::Item;").is_empty(), "{there}");
    }
    let own = knots("use super::Item;", "", "use one::f;\npub struct Item;");
    assert_eq!(own.keys().collect::<Vec<_>>(), ["room", "room::one"]);
    assert_eq!(own["room::one"], "room::one -> room -> room::one");
    assert_eq!(knots("use super::Item;", "", "pub struct Item;\nfn f() { self::one::g() }").len(), 2);
    assert!(knots("use super::Item;", "use super::{Item, one::f};", "pub struct Item;").is_empty());
    // Through the parent, by name and all at once; a parent that uses what it passes on uses it.
    for passed_on in ["pub use other::Item;", "pub(crate) use other::*;"] {
        let (item, user) = ("pub struct Item;", "pub struct Own;\nuse one::f;\nfn g(_: Item) {}");
        assert_eq!(
            knots("use super::Item;", "pub struct Item;\nuse super::one::f;", passed_on).len(),
            2,
            "{passed_on}"
        );
        assert!(knots("use super::Item;", item, &format!("use one::f;\n{passed_on}")).is_empty(), "{passed_on}");
        assert_eq!(
            knots("", "pub struct Item;\nuse super::Own;", &format!("{user}\n{passed_on}")).len(),
            2,
            "{passed_on}"
        );
    }
}
