//! One scalar of an input type, counted as it is read.

use super::fault::Complaint;
use crate::quantity::parse::shortened;
use crate::quantity::shown::plain;
use crate::quantity::{Dim, FromText, QuantityError, UnitSystem, unit};
use core::cell::RefCell;
use core::fmt;
use core::marker::PhantomData;
use serde::de::{IgnoredAny, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A scalar as YAML gives it.
#[derive(Debug, Clone, Copy)]
pub enum Scalar<'a> {
    /// Quoted or plain text that is no number, boolean or null.
    Text(&'a str),
    /// A number.
    Number(f64),
    /// `true` or `false`.
    Boolean(bool),
    /// `null`, `~` or nothing.
    Nothing,
}

impl fmt::Display for Scalar<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Text(text) => f.write_str(&shortened(text)),
            Self::Number(number) => f.write_str(&plain(*number)),
            Self::Boolean(boolean) => write!(f, "{boolean}"),
            Self::Nothing => f.write_str("nothing"),
        }
    }
}

/// A type that one scalar can be read into. `Default` stands in for a faulty value until the fault is reported;
/// it never leaves `read`.
pub trait FromScalar: Default {
    /// Reads the scalar.
    ///
    /// # Errors
    /// What was expected, what was read and how it is written.
    fn from_scalar(scalar: Scalar<'_>) -> Result<Self, Complaint>;

    /// Reads what people say for it: of a list of words, one of the trade as well, or as much of one as no other has.
    ///
    /// # Errors
    /// As of [`from_scalar`](Self::from_scalar).
    fn said(words: &str) -> Result<Self, Complaint> {
        Self::from_scalar(Scalar::Text(words))
    }
}

/// What a scalar may be in a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// A quantity of a dimension, and whether it is a temperature on a scale with an offset.
    Quantity(Dim, bool),
    /// One of these words.
    Word(&'static [&'static str]),
    /// Any text.
    Text,
    /// A quantity or one of these words.
    OrWord(Dim, &'static [&'static str]),
    /// A quantity or the key of a row.
    OrKey(Dim),
    /// `true` or `false`.
    YesNo,
}

impl Form {
    /// The dimension, where it may be a quantity.
    #[must_use]
    pub const fn dim(self) -> Option<Dim> {
        match self {
            Self::Quantity(dim, _) | Self::OrWord(dim, _) | Self::OrKey(dim) => Some(dim),
            Self::Word(_) | Self::Text | Self::YesNo => None,
        }
    }
}

/// A type that is written as one scalar, which reads back as the same value, bit by bit.
pub trait ToScalar {
    /// What it may be.
    const FORM: Form;
    /// The number in SI base units, where it is one.
    fn number(&self) -> Option<f64> {
        None
    }
    /// The text of the scalar.
    fn to_scalar(&self) -> String;
}

impl<Q: FromText + Default> FromScalar for Q {
    fn from_scalar(scalar: Scalar<'_>) -> Result<Self, Complaint> {
        let text = match scalar {
            Scalar::Text(text) => text.to_owned(),
            Scalar::Nothing => {
                let (what, example) = unit::describe(Q::DIM);
                let complaint = Complaint::from(format!("expected {what}, got nothing"));
                return Err(complaint.advise(format!("write for example \"{example}\"")));
            }
            other => other.to_string(),
        };
        Q::from_text(&text).map_err(|error: QuantityError| Complaint::from(error.to_string()).advise(error.advice))
    }
}

impl<Q: FromText> ToScalar for Q {
    const FORM: Form = Form::Quantity(Q::DIM, Q::ABSOLUTE);
    fn number(&self) -> Option<f64> {
        Some(self.si())
    }
    fn to_scalar(&self) -> String {
        self.to_text()
    }
}

impl FromScalar for bool {
    fn from_scalar(scalar: Scalar<'_>) -> Result<Self, Complaint> {
        match scalar {
            Scalar::Boolean(yes) => Ok(yes),
            // As the library writes it.
            Scalar::Text("true") => Ok(true),
            Scalar::Text("false") => Ok(false),
            other => {
                let complaint = Complaint::from(format!("expected true or false, got {other}"));
                Err(complaint.advise("write true or false"))
            }
        }
    }
}

impl ToScalar for bool {
    const FORM: Form = Form::YesNo;
    fn to_scalar(&self) -> String {
        self.to_string()
    }
}

/// Free text.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Words(pub String);

impl FromScalar for Words {
    fn from_scalar(scalar: Scalar<'_>) -> Result<Self, Complaint> {
        match scalar {
            Scalar::Nothing => Err("expected a text, got nothing".into()),
            Scalar::Text(text) if text.trim().is_empty() => Err("expected a text, got an empty one".into()),
            // An escape such as "\e" would reach the terminal of whoever reads the report.
            Scalar::Text(text)
                if !is_plain(text) && text.chars().any(|c| c.is_control() && !matches!(c, '\n' | '\t')) =>
            {
                let message = format!("expected a text without control characters, got \"{}\"", shortened(text));
                Err(Complaint::from(message).advise("remove the escape"))
            }
            Scalar::Text(text) => Ok(Self(text.to_owned())),
            other => Ok(Self(other.to_string())),
        }
    }
}

/// Whether it is of printed characters of ASCII alone, as nearly every text is.
fn is_plain(text: &str) -> bool {
    text.bytes().all(|byte| matches!(byte, b' '..=b'~'))
}

impl ToScalar for Words {
    const FORM: Form = Form::Text;
    fn to_scalar(&self) -> String {
        self.0.clone()
    }
}

/// Declares enums of key words, or writes `FromScalar` and `ToScalar` for one that stands elsewhere. Words of the trade
/// for one or more of them are named in the fault, as they are written without capitals and with `_` between them.
macro_rules! key_words {
    ($(
        $(#[$about:meta])+
        pub enum $name:ident: $what:literal {
            $($(#[$each:meta])+ $variant:ident = $word:literal,)+
        }
        $(meanings { $($meanings:tt)* })?
    )+) => {$(
        $(#[$about])+
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
        pub enum $name {
            $($(#[$each])+ $variant,)+
        }
        $crate::yaml::field::key_words!($name, $what, { $($word => $name::$variant),+ }, meanings { $($($meanings)*)? });
    )+};
    ($name:ty, $what:literal, { $($word:literal => $variant:expr),+ $(,)? } $(,)?) => {
        $crate::yaml::field::key_words!($name, $what, { $($word => $variant),+ }, meanings {});
    };
    (
        $name:ty, $what:literal, { $($word:literal => $variant:expr),+ $(,)? },
        meanings { $($trade:literal => [$($key:literal),+]),* $(,)? }
    ) => {
        impl $crate::yaml::field::FromScalar for $name {
            fn from_scalar(scalar: $crate::yaml::field::Scalar<'_>) -> Result<Self, $crate::yaml::fault::Complaint> {
                match scalar {
                    $($crate::yaml::field::Scalar::Text($word) => Ok($variant),)+
                    $crate::yaml::field::Scalar::Nothing => {
                        let complaint = $crate::yaml::fault::Complaint::from(concat!("expected ", $what, ", got nothing"));
                        Err(complaint.advise(format!("write one of: {}", [$($word),+].join(", "))))
                    }
                    other => {
                        let (words, meanings): (&[&str], &[(&str, &[&str])]) =
                            (&[$($word),+], &[$(($trade, &[$($key),+])),*]);
                        let read = other.to_string();
                        match $crate::yaml::meant_surely(&read, words, meanings) {
                            Some(word) => Self::from_scalar($crate::yaml::field::Scalar::Text(word)),
                            None => {
                                Err($crate::yaml::fault::Complaint::unknown_word($what, &read, words, meanings))
                            }
                        }
                    }
                }
            }

            fn said(words: &str) -> Result<Self, $crate::yaml::fault::Complaint> {
                let meant = $crate::yaml::meant(words, &[$($word),+], &[$(($trade, &[$($key),+])),*]);
                Self::from_scalar($crate::yaml::field::Scalar::Text(meant.unwrap_or(words)))
            }
        }

        impl $crate::yaml::field::ToScalar for $name {
            const FORM: $crate::yaml::field::Form = $crate::yaml::field::Form::Word(&[$($word),+]);
            fn to_scalar(&self) -> String {
                self.key().to_owned()
            }
        }

        impl $name {
            /// As written in files.
            #[must_use]
            pub fn key(self) -> &'static str {
                match self {
                    $(value if value == $variant => $word,)+
                    _ => "",
                }
            }
        }
    };
}
pub(crate) use key_words;

/// One scalar of an input file, with the number that finds its place again.
#[derive(Debug, Clone, Default)]
pub struct Field<T> {
    /// The value.
    pub value: T,
    ordinal: Option<u32>,
    written_in: Option<UnitSystem>,
    is_bare: bool,
    is_unknown: bool,
}

/// Fields of one value are equal wherever they stand.
impl<T: PartialEq> PartialEq for Field<T> {
    fn eq(&self, other: &Self) -> bool {
        self.value == other.value
    }
}

impl<T> From<T> for Field<T> {
    /// A value given in code, with no place in a text.
    fn from(value: T) -> Self {
        Self { value, ordinal: None, written_in: None, is_bare: false, is_unknown: false }
    }
}

impl<T> Field<T> {
    /// The handle by which [`locate`](super::locate) finds this field in the text.
    pub(crate) const fn handle(&self) -> Handle {
        Handle(self.ordinal)
    }

    /// The family of the units it is written in; `None` where it has none, or is given in code.
    pub const fn written_in(&self) -> Option<UnitSystem> {
        self.written_in
    }

    /// Whether it is written as a number alone.
    pub(crate) const fn is_bare(&self) -> bool {
        self.is_bare
    }
}

/// A field that may be left out.
pub(crate) trait MayBe<T> {
    /// Its value, where it is given.
    fn given(&self) -> Option<T>;
}

impl<T: Copy> MayBe<T> for Option<Field<T>> {
    fn given(&self) -> Option<T> {
        self.as_ref().map(|field| field.value)
    }
}

/// Finds a field again in the text it was read from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Handle(pub(super) Option<u32>);

/// What the pass under way does with scalars.
pub(super) enum Pass {
    /// Note the number of each faulty one and go on.
    Collect(Vec<(u32, Complaint)>),
    /// Fail at this number.
    FailAt(u32),
}

struct Reading {
    next: u32,
    pass: Pass,
}

thread_local! {
    // serde hands no context to `Deserialize`, so the pass under way is kept beside it.
    static READING: RefCell<Option<Reading>> = const { RefCell::new(None) };
}

/// Most values of one text: each fault costs a reading of all of them, and an alias that a guard does not see multiplies
/// them.
const MOST_VALUES: u32 = 20_000;

/// What may be written for a field that may be left out.
pub(crate) const UNKNOWN: &str = "unknown";

/// Stands in the parser's error text where the message would be.
pub(super) const SENTINEL: &str = "\u{1}";
/// The same for a key that is missing, which has no place of its own at the top level.
pub(super) const MISSING: &str = "missing field \u{1}";

/// Runs `work`, which deserializes, under a pass; what the pass collected comes back with the result, and how many scalars
/// were read.
pub(super) fn under<T>(pass: Pass, work: impl FnOnce() -> T) -> (T, Vec<(u32, Complaint)>, u32) {
    READING.set(Some(Reading { next: 0, pass }));
    let result = work();
    match READING.take() {
        Some(Reading { next, pass: Pass::Collect(faults) }) => (result, faults, next),
        _ => (result, Vec::new(), 0),
    }
}

impl<'de, T: FromScalar> Deserialize<'de> for Field<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(ScalarVisitor(Or::Nothing, PhantomData))
    }
}

impl<T: ToScalar> Serialize for Field<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.value.to_scalar())
    }
}

/// A field that may be left out, or said to be unknown, which is the same.
pub(super) struct Told<T>(pub(super) Option<Field<T>>);

impl<'de, T: FromScalar> Deserialize<'de> for Told<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_option(ToldVisitor(PhantomData)).map(Self)
    }
}

struct ToldVisitor<T>(PhantomData<T>);

impl<'de, T: FromScalar> Visitor<'de> for ToldVisitor<T> {
    type Value = Option<Field<T>>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("one value")
    }
    fn visit_none<E: serde::de::Error>(self) -> Result<Self::Value, E> {
        Ok(None)
    }
    fn visit_unit<E: serde::de::Error>(self) -> Result<Self::Value, E> {
        Ok(None)
    }
    fn visit_some<D: Deserializer<'de>>(self, deserializer: D) -> Result<Self::Value, D::Error> {
        let read = deserializer.deserialize_any(ScalarVisitor(Or::Unknown, PhantomData))?;
        Ok(Some(read).filter(|field: &Field<T>| !field.is_unknown))
    }
}

/// What a field may be beside a value of its type.
#[derive(Clone, Copy, PartialEq)]
enum Or {
    Nothing,
    /// The word `unknown`.
    Unknown,
}

struct ScalarVisitor<T>(Or, PhantomData<T>);

impl<'de, T: FromScalar> Visitor<'de> for ScalarVisitor<T> {
    type Value = Field<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("one value")
    }
    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Self::Value, E> {
        if self.0 == Or::Unknown && text == UNKNOWN && T::from_scalar(Scalar::Text(text)).is_err() {
            noted(None, SENTINEL)?;
            return Ok(Field { is_unknown: true, ..Field::default() });
        }
        field(Scalar::Text(text))
    }
    fn visit_bool<E: serde::de::Error>(self, boolean: bool) -> Result<Self::Value, E> {
        field(Scalar::Boolean(boolean))
    }
    fn visit_f64<E: serde::de::Error>(self, number: f64) -> Result<Self::Value, E> {
        field(Scalar::Number(number))
    }
    #[expect(clippy::cast_precision_loss, reason = "no input needs whole numbers beyond 2^53")]
    fn visit_u64<E: serde::de::Error>(self, number: u64) -> Result<Self::Value, E> {
        field(Scalar::Number(number as f64))
    }
    #[expect(clippy::cast_precision_loss, reason = "no input needs whole numbers beyond 2^53")]
    fn visit_i64<E: serde::de::Error>(self, number: i64) -> Result<Self::Value, E> {
        field(Scalar::Number(number as f64))
    }
    fn visit_unit<E: serde::de::Error>(self) -> Result<Self::Value, E> {
        field(Scalar::Nothing)
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Self::Value, A::Error> {
        noted(Some(&Complaint::no_value("a list")), SENTINEL)?;
        while list.next_element::<IgnoredAny>()?.is_some() {}
        Ok(Field::from(T::default()))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut block: A) -> Result<Self::Value, A::Error> {
        noted(Some(&Complaint::no_value("a block of keys")), SENTINEL)?;
        while block.next_entry::<IgnoredAny, IgnoredAny>()?.is_some() {}
        Ok(Field::from(T::default()))
    }
}

fn field<T: FromScalar, E: serde::de::Error>(scalar: Scalar<'_>) -> Result<Field<T>, E> {
    let read = T::from_scalar(scalar);
    let ordinal = noted(read.as_ref().err(), SENTINEL)?;
    let value = read.unwrap_or_default();
    if ordinal.is_none() {
        return Ok(Field::from(value));
    }
    let written_in = match scalar {
        Scalar::Text(text) => unit::family(text),
        _ => None,
    };
    Ok(Field { ordinal, written_in, is_bare: matches!(scalar, Scalar::Number(_)), ..Field::from(value) })
}

/// Counts what is read and notes what is wrong with it; its number, where a pass is under way.
///
/// # Errors
/// `mark`, where the pass asks for the place of this one; the complaint, where none is under way; too many values.
pub(super) fn noted<E: serde::de::Error>(complaint: Option<&Complaint>, mark: &str) -> Result<Option<u32>, E> {
    READING.with_borrow_mut(|reading| {
        let Some(reading) = reading else { return complaint.map_or(Ok(None), |complaint| Err(E::custom(complaint))) };
        let ordinal = reading.next;
        if ordinal == MOST_VALUES {
            return Err(E::custom(format_args!(
                "the file has more than {MOST_VALUES} values; no input file needs as many"
            )));
        }
        reading.next += 1;
        match (&mut reading.pass, complaint) {
            (Pass::FailAt(number), _) if *number == ordinal => return Err(E::custom(mark)),
            (Pass::Collect(faults), Some(complaint)) => faults.push((ordinal, complaint.clone())),
            _ => {}
        }
        Ok(Some(ordinal))
    })
}
