//! What is said of a field of the drive file, and of the value behind its key.

use super::size::as_given;
use crate::quantity::{Length, Measure, Role, Shown, UnitSystem};
use crate::source::{Cited, FieldName};
use crate::yaml::{Field, Form, Handle, Known, ToScalar};

/// What a number must keep to make sense at all, in SI base units: what is beyond is a slip of unit or digit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Bounds {
    /// Above zero and no more than this.
    UpTo(f64),
    /// From the one to the other, both included.
    Within(f64, f64),
}

impl Bounds {
    /// Whether a finite number keeps to them.
    pub(super) fn hold(self, si: f64) -> bool {
        si.is_finite()
            && match self {
                Self::UpTo(most) => si > 0.0 && within(si, 0.0, most),
                Self::Within(least, most) => within(si, least, most),
            }
    }
}

/// Whether a number lies between two, but for what a change of units leaves.
pub(super) fn within(si: f64, least: f64, most: f64) -> bool {
    const UNITS: f64 = 1e-9;
    let slack = |end: f64| UNITS * end.abs();
    least - slack(least) <= si && si <= most + slack(most)
}

/// What is said of the number of a field.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Number {
    /// How it is printed.
    pub role: Role,
    /// What it must keep: beyond it the file is refused.
    pub bounds: Bounds,
    /// Least and greatest of what is usual, in SI base units, of a band at its high level: beyond it the value is used and
    /// told, and what rests on it fits with care at best.
    pub usual: Option<(f64, f64)>,
    /// How it is written for example, in SI and in US units.
    pub example: [&'static str; 2],
}

/// A number of the file, and where it stands.
#[derive(Clone, Copy)]
pub(crate) struct FileNumber<'a> {
    /// What is said of its field.
    pub(crate) number: Number,
    /// Its path.
    pub(crate) path: &'a str,
    /// Its place in the text.
    pub(crate) at: Handle,
    /// In SI base units.
    pub(crate) si: f64,
    /// The family of its units.
    pub(crate) written_in: Option<UnitSystem>,
    /// Whether it is written without a unit.
    pub(crate) is_bare: bool,
    /// False where it is the low or likely level of a band.
    pub(crate) is_judged: bool,
}

/// All that is said of a field, but its value.
#[derive(Debug)]
#[non_exhaustive]
pub struct Spec {
    /// Key in the file.
    pub key: &'static str,
    /// Its paths in the file, with `[]` for the place in a list.
    pub names: &'static [FieldName],
    /// What it is.
    pub doc: &'static str,
    /// False where it may be left out.
    pub must: bool,
    /// Where it is a number.
    pub number: Option<Number>,
    /// The word before its value in the name of a pipe that would else read like another.
    pub label: Option<&'static str>,
    /// What is taken where it is left out.
    pub otherwise: Option<&'static str>,
    /// What people write for its key.
    pub said: &'static [&'static str],
    /// What stands behind the key.
    pub shape: Shape,
}

/// What stands behind a key.
#[derive(Debug, Clone, Copy)]
pub enum Shape {
    /// One value.
    One(Form),
    /// A list of values.
    List(Form),
    /// Low, likely and high of a value.
    Band(Form),
    /// A block of these fields.
    Block(&'static [Spec]),
    /// A list of such blocks.
    Blocks(&'static [Spec]),
}

impl Spec {
    /// What may be written for it, in a few words: its unit, the words to choose from, the fields of its block.
    #[must_use]
    pub fn may_be(&self, system: UnitSystem) -> String {
        let fields = |specs: &[Self]| specs.iter().map(|spec| spec.key).collect::<Vec<_>>().join(", ");
        match self.shape {
            Shape::Block(specs) | Shape::Blocks(specs) => format!("with {}", fields(specs)),
            Shape::One(Form::Word(words)) | Shape::List(Form::Word(words)) => words.join(", "),
            Shape::One(Form::YesNo) => "true or false".to_owned(),
            // A value to copy would be taken for a fact of the drive.
            Shape::One(_) | Shape::List(_) => {
                let unit = self.example(system).and_then(|example| example.split_once(' '));
                unit.map_or_else(String::new, |(_, unit)| format!("with its unit ({unit})"))
            }
            Shape::Band(_) => "with low, likely, high".to_owned(),
        }
    }

    /// The example in a family of units.
    #[must_use]
    pub fn example(&self, system: UnitSystem) -> Option<&'static str> {
        let [si, us] = self.number?.example;
        Some(if system == UnitSystem::Us { us } else { si })
    }

    /// Its key, for the reading of its block.
    pub(super) const fn known(&self) -> Known {
        Known { key: self.key, must: self.must, said: self.said }
    }

    /// Its path for the block at a path, or in each block of the list at that path.
    pub(super) fn in_block(&self, block: &str) -> &'static str {
        let is_of = |name: &&str| {
            let of = name.strip_suffix(self.key).unwrap_or_default().trim_end_matches('.');
            of == block || of.strip_suffix("[]") == Some(block)
        };
        let mut names = self.names.iter().map(|name| name.0);
        names.find(is_of).unwrap_or_default()
    }

    /// Its path, of one in a block that stands once.
    pub(super) fn path(&self) -> &'static FieldName {
        self.name("")
    }

    /// Its path for the block at a path of the file.
    pub(super) fn name(&self, block: &str) -> &'static FieldName {
        const UNKNOWN: &FieldName = &FieldName("");
        if let [only] = self.names {
            return only;
        }
        let plain = |path: &str| path.chars().filter(|c| !c.is_ascii_digit()).collect::<String>();
        let block = plain(block);
        let fits = |name: &&FieldName| name.0.rsplit_once('.').map_or("", |(of, _)| of) == block;
        self.names.iter().find(fits).or(self.names.first()).unwrap_or(UNKNOWN)
    }

    /// False where the role prints values of another dimension than the field has.
    pub(super) const fn role_fits(&self) -> bool {
        let of = match self.shape {
            Shape::One(form) | Shape::List(form) | Shape::Band(form) => form.dim(),
            Shape::Block(_) | Shape::Blocks(_) => None,
        };
        match (&self.number, of) {
            (Some(number), Some(of)) => number.role.dim().is(of),
            (None, None) => true,
            (Some(_), None) | (None, Some(_)) => false,
        }
    }
}

/// A field by its name: what is said of it, its place in the block, and where its value is.
pub(crate) struct Key<B, V: 'static> {
    pub(crate) spec: &'static Spec,
    pub(crate) index: u8,
    pub(crate) get: for<'a> fn(&'a B) -> &'a V,
}

impl<B, V> Clone for Key<B, V> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<B, V> Copy for Key<B, V> {}

impl<B, V> Key<B, V> {
    /// The field of that key; the block that has it says so at compile time.
    pub(super) const fn of(specs: &'static [Spec], key: &str, get: for<'a> fn(&'a B) -> &'a V) -> Self {
        let (mut rest, mut index) = (specs, 0);
        while let [spec, others @ ..] = rest {
            if same(spec.key, key) {
                return Self { spec, index, get };
            }
            (rest, index) = (others, index + 1);
        }
        #[expect(clippy::panic, reason = "at compile time: the macro asks for fields that it has just declared")]
        {
            panic!("no such field")
        }
    }
}

impl<B, V> Key<B, V> {
    /// The number of the field in the block at a path of the file, cited.
    pub(super) fn cited<Q: Measure>(self, path: &str, block: &B) -> V::Of<Cited<Q>>
    where
        V: Given<Q>,
    {
        (self.get)(block).made(|field| Cited::given(field.value, self.spec.name(path)))
    }
}

/// Whether the block of these fields is the file: its paths are its keys.
pub(super) const fn is_file(specs: &[Spec]) -> bool {
    matches!(specs, [Spec { key, names: [name, ..], .. }, ..] if same(key, name.0))
}

/// Does something with a path that goes on.
pub(super) fn below(path: &mut String, part: &str, work: impl FnOnce(&mut String)) {
    let whole = path.len();
    path.push_str(part);
    work(path);
    path.truncate(whole);
}

/// Does something with the path of a key in the block at a path.
pub(super) fn behind(path: &mut String, key: &str, work: impl FnOnce(&mut String)) {
    let dot = if path.is_empty() { "" } else { "." };
    below(path, dot, |path| below(path, key, work));
}

/// What a field is, by where its value is.
pub(super) const fn shape_of<B, V: Shaped>(_: for<'a> fn(&'a B) -> &'a V) -> (Shape, bool) {
    (V::SHAPE, V::MUST)
}

/// The first of none or one.
pub(super) const fn first<T: Copy>(any: &[Option<T>]) -> Option<T> {
    match any {
        [first, ..] => *first,
        [] => None,
    }
}

const fn same(one: &str, other: &str) -> bool {
    let (mut one, mut other) = (one.as_bytes(), other.as_bytes());
    loop {
        match (one, other) {
            ([], []) => return true,
            ([a, rest @ ..], [b, others @ ..]) if *a == *b => (one, other) = (rest, others),
            _ => return false,
        }
    }
}

/// A number that must be there or may be left out.
pub(crate) trait Given<Q> {
    /// What is made of it.
    type Of<T>;
    /// Makes something of the field where there is one.
    fn made<T>(&self, change: impl FnOnce(&Field<Q>) -> T) -> Self::Of<T>;
}

impl<Q> Given<Q> for Field<Q> {
    type Of<T> = T;
    fn made<T>(&self, change: impl FnOnce(&Field<Q>) -> T) -> T {
        change(self)
    }
}

impl<Q> Given<Q> for Option<Field<Q>> {
    type Of<T> = Option<T>;
    fn made<T>(&self, change: impl FnOnce(&Field<Q>) -> T) -> Option<T> {
        self.as_ref().map(change)
    }
}

/// A set of fields of one block, of at most 64.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct Keys(pub(crate) u64);

impl Keys {
    /// With one more.
    pub(crate) const fn and<B, V>(self, key: Key<B, V>) -> Self {
        Self(self.0 | 1 << key.index)
    }

    /// All that are in either.
    pub(crate) const fn or(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    /// Whether the field at that place in the block is in it.
    pub(crate) const fn has(self, index: u8) -> bool {
        self.0 >> index & 1 == 1
    }
}

/// What stands behind a key, by its type.
pub(crate) trait Shaped: Value {
    /// What it is.
    const SHAPE: Shape;
    /// False where it may be left out.
    const MUST: bool = true;
}

/// A value behind a key, whatever its type.
pub(crate) trait Value {
    /// The place of its first scalar, and what its path adds to that of the field; `None` where nothing is given.
    fn place(&self) -> Option<(Handle, String)>;
    /// As it is told in the name of a pipe.
    fn shown(&self, spec: &Spec, system: UnitSystem) -> Option<String>;
    /// Whether nothing is written.
    fn is_absent(&self) -> bool {
        false
    }
    /// Hands over each number in it. `path` is that of the field.
    fn numbers(&self, spec: &Spec, path: &mut String, each: &mut dyn FnMut(&FileNumber<'_>));
    /// Hands over the path of each field that is written in it, `[]` for the place in a list: of a list what every entry has.
    fn told(&self, _path: &str, _each: &mut dyn FnMut(&'static str)) {}
}

/// Paths of all that is written in a value at a path.
pub(super) fn told(value: &dyn Value, at: &str) -> Vec<&'static str> {
    let mut paths = Vec::new();
    value.told(at, &mut |path| paths.push(path));
    paths
}

impl<T: ToScalar> Shaped for Field<T> {
    const SHAPE: Shape = Shape::One(T::FORM);
}

impl<T: ToScalar> Value for Field<T> {
    fn place(&self) -> Option<(Handle, String)> {
        Some((self.handle(), String::new()))
    }
    fn shown(&self, spec: &Spec, system: UnitSystem) -> Option<String> {
        Some(match (self.value.number(), spec.number) {
            (Some(si), Some(Number { role: Role::Ratio, .. })) => si.to_string(),
            (Some(si), Some(Number { role: Role::Diameter | Role::Wall, .. })) => as_given(Length::from_si(si)),
            (Some(si), Some(Number { role, .. })) => Shown { si, role }.display(system).to_string(),
            _ => self.value.to_scalar(),
        })
    }
    fn numbers(&self, spec: &Spec, path: &mut String, each: &mut dyn FnMut(&FileNumber<'_>)) {
        if let (Some(number), Some(si)) = (spec.number, self.value.number()) {
            let (at, written_in, is_bare) = (self.handle(), self.written_in(), self.is_bare());
            each(&FileNumber { number, path, at, si, written_in, is_bare, is_judged: true });
        }
    }
}

impl<V: Shaped> Shaped for Option<V> {
    const SHAPE: Shape = V::SHAPE;
    const MUST: bool = false;
}

impl<V: Value> Value for Option<V> {
    fn place(&self) -> Option<(Handle, String)> {
        self.as_ref().and_then(V::place)
    }
    fn shown(&self, spec: &Spec, system: UnitSystem) -> Option<String> {
        self.as_ref().and_then(|value| value.shown(spec, system))
    }
    fn is_absent(&self) -> bool {
        self.is_none()
    }
    fn numbers(&self, spec: &Spec, path: &mut String, each: &mut dyn FnMut(&FileNumber<'_>)) {
        if let Some(value) = self {
            value.numbers(spec, path, each);
        }
    }
    fn told(&self, path: &str, each: &mut dyn FnMut(&'static str)) {
        if let Some(value) = self {
            value.told(path, each);
        }
    }
}

impl<V: Shaped> Shaped for Vec<V> {
    const SHAPE: Shape = match V::SHAPE {
        Shape::One(form) | Shape::List(form) | Shape::Band(form) => Shape::List(form),
        Shape::Block(specs) | Shape::Blocks(specs) => Shape::Blocks(specs),
    };
    const MUST: bool = false;
}

impl<V: Value> Value for Vec<V> {
    fn place(&self) -> Option<(Handle, String)> {
        let place = |(index, value): (usize, &V)| value.place().map(|(at, rest)| (at, format!("[{index}]{rest}")));
        self.iter().enumerate().find_map(place)
    }
    fn shown(&self, spec: &Spec, system: UnitSystem) -> Option<String> {
        let all: Vec<String> = self.iter().filter_map(|value| value.shown(spec, system)).collect();
        (!all.is_empty()).then(|| all.join(" and "))
    }
    fn is_absent(&self) -> bool {
        self.is_empty()
    }
    fn numbers(&self, spec: &Spec, path: &mut String, each: &mut dyn FnMut(&FileNumber<'_>)) {
        for (index, value) in self.iter().enumerate() {
            below(path, &format!("[{index}]"), |path| value.numbers(spec, path, each));
        }
    }
    fn told(&self, path: &str, each: &mut dyn FnMut(&'static str)) {
        let entries = self.iter().map(|value| told(value, path));
        let in_all = entries.reduce(|mut all, own| {
            all.retain(|path| own.contains(path));
            all
        });
        in_all.iter().flatten().for_each(|path| each(path));
    }
}
