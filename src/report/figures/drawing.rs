//! A drawing: the few marks that the figures are made of, as SVG, which reads in grey and prints without colour; and what
//! the figures look at.

use crate::choice::{Choice, Ranked};
use crate::conditions::Plan;
use crate::drive::Drive;
use crate::quantity::{Measure, Role, Shown, UnitSystem};
use std::fmt::{self, Write as _};

/// A point, from the left and from the top.
pub(super) type At = (f64, f64);

/// Width of every figure.
pub(super) const WIDTH: f64 = 706.0;
/// Height of the title over every figure.
const HEAD: f64 = 20.0;

/// One look for all figures: lines differ by dash and weight, areas by shade, never by colour alone.
const STYLE: &str = "\
text{font:10.5px 'DejaVu Sans',Arial,sans-serif;fill:#0f172a}.small{font-size:9px;fill:#475569}.strong{font-weight:700}\
.end{text-anchor:end}.middle{text-anchor:middle}.grid{stroke:#e2e8f0}.axis{stroke:#334155}\
.low,.likely,.high,.stop,.limit,.thin,.water{fill:none}.likely{stroke:#1e3a8a;stroke-width:2.6}\
.high{stroke:#1e3a8a;stroke-width:1.5}.low{stroke:#1e3a8a;stroke-width:1;stroke-dasharray:1 3}\
.stop{stroke:#92400e;stroke-width:1.5;stroke-dasharray:6 4}.limit{stroke:#b91c1c;stroke-width:2.2;stroke-dasharray:12 3 2 3}\
.water{stroke:#0369a1;stroke-width:1.3;stroke-dasharray:7 3}.thin{stroke:#334155;stroke-dasharray:3 3}\
.band{fill:#3b82f6;fill-opacity:.18}.ground{fill:#efe6d4}.open{fill:#fff;stroke:#334155}.wall{fill:#e2e8f0;stroke:#0f172a;stroke-width:1.4}\
.ghost{fill:none;stroke:#0f172a;stroke-dasharray:4 3}.bar{fill:#f1f5f9}.shade0{fill:#1e3a8a}.shade1{fill:#93b4e8}\
.shade2{fill:#475569}.shade3{fill:#cbd5e1}.shade4{fill:#0f766e}.shade5{fill:#a7d9d2}.shade6{fill:#92400e}.shade7{fill:#ecd3b5}\
.light{fill:#fff}";

/// A drawing as it is made.
#[derive(Debug)]
pub struct Drawing {
    height: f64,
    body: String,
}

impl Drawing {
    /// So many pixels high.
    #[must_use]
    pub const fn new(height: f64) -> Self {
        Self { height, body: String::new() }
    }

    fn put(&mut self, mark: fmt::Arguments<'_>) {
        // Writing to a string cannot fail.
        let _ = writeln!(self.body, "{mark}");
    }

    pub(super) fn line(&mut self, class: &str, from: At, to: At) {
        self.put(format_args!(
            r#"<line class="{class}" x1="{:.1}" y1="{:.1}" x2="{:.1}" y2="{:.1}"/>"#,
            from.0, from.1, to.0, to.1
        ));
    }

    /// A line through points.
    pub fn path(&mut self, class: &str, points: impl IntoIterator<Item = At>) {
        let points = listed(points);
        self.put(format_args!(r#"<polyline class="{class}" points="{points}"/>"#));
    }

    /// What points surround.
    pub(super) fn area(&mut self, class: &str, points: impl IntoIterator<Item = At>) {
        let points = listed(points);
        self.put(format_args!(r#"<polygon class="{class}" points="{points}"/>"#));
    }

    pub(super) fn rect(&mut self, class: &str, at: At, (width, height): At) {
        let (width, height) = (width.max(0.0), height.max(0.0));
        self.put(format_args!(
            r#"<rect class="{class}" x="{:.1}" y="{:.1}" width="{width:.1}" height="{height:.1}"/>"#,
            at.0, at.1
        ));
    }

    pub(super) fn circle(&mut self, class: &str, at: At, radius: f64) {
        self.put(format_args!(r#"<circle class="{class}" cx="{:.1}" cy="{:.1}" r="{radius:.1}"/>"#, at.0, at.1));
    }

    /// Text with its foot there.
    pub(super) fn text(&mut self, class: &str, at: At, text: &str) {
        let text = escaped(text);
        self.put(format_args!(r#"<text class="{class}" x="{:.1}" y="{:.1}">{text}</text>"#, at.0, at.1));
    }

    /// Labels beside the ends of lines, pushed apart so that none covers another.
    pub fn labels(&mut self, class: &str, left: f64, mut labels: Vec<(f64, String)>) {
        /// Height of a line of text.
        const APART: f64 = 12.5;
        labels.sort_by(|one, other| one.0.total_cmp(&other.0));
        let below = labels.iter().rev().scan(f64::INFINITY, |next: &mut f64, label| {
            *next = label.0.min(*next - APART).min(self.height - 4.0);
            Some(*next)
        });
        let mut places: Vec<f64> = below.collect();
        places.reverse();
        let mut last = f64::NEG_INFINITY;
        for (place, (_, text)) in places.into_iter().zip(&labels) {
            last = place.max(last + APART);
            self.text(class, (left, last + 3.5), text);
        }
    }

    /// Both axes of a plot, with a grid and what they tell.
    pub fn axes(&mut self, x: &Scale, y: &Scale, titles: (&str, &str)) {
        for tick in y.ticks() {
            let at = y.at(tick);
            self.line("grid", (x.start, at), (x.end, at));
            self.text("small end", (x.start - 5.0, at + 3.0), &y.label(tick));
        }
        let foot = y.start.max(y.end);
        for tick in x.ticks() {
            let at = x.at(tick);
            self.line("axis", (at, foot), (at, foot + 3.0));
            self.text("small middle", (at, foot + 13.0), &x.label(tick));
        }
        self.line("axis", (x.start, foot), (x.end, foot));
        self.line("axis", (x.start, y.start), (x.start, y.end));
        self.text("small end", (x.end, foot + 25.0), titles.0);
        self.text("small", (x.start - 34.0, y.start.min(y.end) - 8.0), titles.1);
    }

    /// The whole figure, with what it shows in words.
    #[must_use]
    pub fn finish(self, name: &'static str, title: &str, words: String) -> Figure {
        let (told, description) = (escaped(title), escaped(&words));
        let svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {:.0}\" width=\"100%\" role=\"img\" \
             style=\"background:#fff\">\n\
             <title>{told}</title>\n<desc>{description}</desc>\n<style>{STYLE}</style>\n\
             <text class=\"strong\" x=\"0\" y=\"12\">{told}</text>\n<g transform=\"translate(0 {HEAD})\">\n{}</g>\n</svg>\n",
            self.height + HEAD,
            self.body
        );
        Figure { name, title: title.to_owned(), words, svg }
    }
}

fn listed(points: impl IntoIterator<Item = At>) -> String {
    let points = points.into_iter().map(|(x, y)| format!("{x:.1},{y:.1}"));
    points.collect::<Vec<_>>().join(" ")
}

/// Text between tags.
pub(in crate::report) fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            // No form of XML holds them.
            c if c.is_control() && !matches!(c, '\n' | '\t') => {}
            c => escaped.push(c),
        }
    }
    escaped
}

/// Numbers laid along a length of the drawing.
#[derive(Debug, Clone, Copy)]
pub struct Scale {
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) start: f64,
    pub(super) end: f64,
}

impl Scale {
    /// From one number to another.
    #[must_use]
    pub fn new((from, to): (f64, f64), (start, end): (f64, f64)) -> Self {
        // Nothing is laid along nothing.
        let to = if to > from { to } else { from + 1.0 };
        Self { from, to, start, end }
    }

    /// Where a number lies.
    #[must_use]
    pub fn at(&self, value: f64) -> f64 {
        self.start + (value - self.from) / (self.to - self.from) * (self.end - self.start)
    }

    /// Step between ticks: 1, 2 or 5 times a power of ten, some five of them.
    fn step(&self) -> f64 {
        let rough = (self.to - self.from) / 5.0;
        let power = 10_f64.powf(rough.log10().floor());
        let times = [1.0, 2.0, 5.0].into_iter().find(|times| times * power >= rough).unwrap_or(10.0);
        times * power
    }

    fn ticks(&self) -> impl Iterator<Item = f64> + use<> {
        let (step, to) = (self.step(), self.to);
        let first = (self.from / step).ceil() * step;
        std::iter::successors(Some(first), move |tick| Some(tick + step))
            .take_while(move |tick| *tick <= to + step * 1e-6)
    }

    fn label(&self, tick: f64) -> String {
        let decimals = if self.step() >= 1.0 { 0 } else { 1 + usize::from(self.step() < 0.1) };
        let text = format!("{tick:.decimals$}");
        if text.trim_start_matches('-').chars().all(|c| matches!(c, '0' | '.')) { "0".to_owned() } else { text }
    }
}

/// A figure as SVG.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Figure {
    /// What it is called as a file.
    pub name: &'static str,
    /// What it shows.
    pub title: String,
    /// What can be read from it.
    pub words: String,
    /// The drawing, whole: a file, or a part of a page.
    pub svg: String,
}

/// What the figures are drawn of.
#[derive(Clone, Copy)]
pub(super) struct View<'a> {
    pub(super) drive: &'a Drive,
    pub(super) choice: &'a Choice,
    pub(super) first: &'a Ranked,
    pub(super) system: UnitSystem,
}

impl View<'_> {
    pub(super) fn plan(&self) -> Plan<'_> {
        Plan { drive: self.drive, pipe: &self.first.pipe, method: self.first.scheme.method }
    }

    /// As printed.
    pub(super) fn text<Q: Measure>(&self, quantity: Q, role: Role) -> String {
        self.value(Shown::of(quantity, role))
    }

    pub(super) fn value(&self, shown: Shown) -> String {
        shown.display(self.system).to_string()
    }

    /// In the unit that it is printed in.
    pub(super) fn number<Q: Measure>(&self, quantity: Q, role: Role) -> f64 {
        Shown::of(quantity, role).in_units(self.system).0
    }

    pub(super) fn unit(&self, role: Role) -> &'static str {
        Shown { si: 0.0, role }.in_units(self.system).1
    }
}
