//! What a law is: one equation as a struct with named arguments, one value, one range check, one record.

use crate::quantity::{Band, Measure, Role, Shown};
use crate::source::Equation;

/// One equation with its arguments filled in.
pub trait Law: Copy {
    /// The quantity it gives.
    type Out: Measure;
    /// Form, citation and range.
    const EQUATION: Equation;
    /// How its result is printed.
    const OUT: Role;

    /// The equation itself.
    fn value(&self) -> Self::Out;
    /// Hands each argument, by name, to `each`.
    fn inputs(&self, each: &mut dyn FnMut(&'static str, Shown));
    /// False outside the range of validity. The value is then in doubt, not an error.
    fn in_range(&self) -> bool {
        true
    }
    /// Outside that range on the bad side alone: what fails by the value fails, since the form flatters it there.
    fn fails_beyond(&self) -> bool {
        false
    }
}

/// A value and the first equation, if any, that was used outside its range to get it. The value is reached through
/// [`Calc::take`], `map`, `zip` and `and_then`, which keep the doubt, so that nothing is decided without it.
#[derive(Debug, Clone, Copy, PartialEq)]
#[must_use]
pub struct Doubted<T> {
    value: T,
    doubt: Doubt,
    /// Whether an equation is outside its range on a side that may be the better one.
    may_spare: bool,
}

/// The first equation used outside its range, if any.
pub type Doubt = Option<&'static Equation>;

impl<T> Doubted<T> {
    /// A value that no equation puts in doubt.
    pub const fn sure(value: T) -> Self {
        Self { value, doubt: None, may_spare: false }
    }

    /// The value changed, the doubt kept.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> Doubted<U> {
        Doubted { value: change(self.value), doubt: self.doubt, may_spare: self.may_spare }
    }

    /// Both values, with the doubt of the first, else that of the other.
    pub fn zip<U>(self, other: Doubted<U>) -> Doubted<(T, U)> {
        let (doubt, may_spare) = (self.doubt.or(other.doubt), self.may_spare || other.may_spare);
        Doubted { value: (self.value, other.value), doubt, may_spare }
    }

    /// What follows from the value, with the doubt of either.
    pub fn and_then<U>(self, then: impl FnOnce(T) -> Doubted<U>) -> Doubted<U> {
        let next = then(self.value);
        Doubted { may_spare: self.may_spare || next.may_spare, doubt: self.doubt.or(next.doubt), ..next }
    }

    /// With a doubt that goes before its own.
    pub fn in_doubt(self, doubt: Doubt) -> Self {
        Self { doubt: doubt.or(self.doubt), may_spare: self.may_spare || doubt.is_some(), ..self }
    }

    /// Whether what fails by the value may pass.
    pub(crate) const fn may_spare(&self) -> bool {
        self.may_spare
    }

    /// The equation out of range.
    #[must_use]
    pub const fn doubt(&self) -> Doubt {
        self.doubt
    }

    /// The value where there is no doubt.
    pub fn if_sure(self) -> Option<T> {
        self.doubt.is_none().then_some(self.value)
    }

    /// The value, whatever the doubt: to print, to draw and to choose words by, never to decide.
    #[must_use]
    pub fn in_spite_of_doubt(self) -> T {
        self.value
    }
}

impl<T> Doubted<Option<T>> {
    /// The value that there may be, with its doubt.
    pub fn transpose(self) -> Option<Doubted<T>> {
        let Self { doubt, may_spare, .. } = self;
        self.value.map(|value| Doubted { value, doubt, may_spare })
    }
}

impl<T> From<T> for Doubted<T> {
    fn from(value: T) -> Self {
        Self::sure(value)
    }
}

/// One evaluated law.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Step {
    /// The part of the working it belongs to.
    pub part: &'static str,
    /// The level of the band that it is of, where it is of one; else empty.
    pub level: &'static str,
    /// The equation.
    pub equation: &'static Equation,
    /// Arguments by name.
    pub inputs: Vec<(&'static str, Shown)>,
    /// Result.
    pub result: Shown,
    /// False where it was used outside its range.
    pub in_range: bool,
}

/// The steps so far, and where the next one belongs.
#[derive(Debug, Clone, Default)]
struct Record {
    steps: Vec<Step>,
    part: &'static str,
    level: &'static str,
}

impl Record {
    #[cold]
    fn step<L: Law>(&mut self, law: &L, value: L::Out) {
        let mut inputs = Vec::new();
        law.inputs(&mut |name, shown| inputs.push((name, shown)));
        let result = Shown::of(value, L::OUT);
        let Self { part, level, .. } = *self;
        self.steps.push(Step { part, level, equation: &L::EQUATION, inputs, result, in_range: law.in_range() });
    }
}

/// Evaluates laws, notes doubt and, where it is asked to, keeps each step, so that the sheet shows the very evaluation that
/// decided.
#[derive(Debug, Clone, Default)]
pub struct Calc {
    record: Option<Record>,
    doubt: Doubt,
    may_spare: bool,
}

impl Calc {
    /// Keeps no step: the fast path.
    #[must_use]
    pub const fn silent() -> Self {
        Self { record: None, doubt: None, may_spare: false }
    }

    /// Keeps each step.
    #[must_use]
    pub fn recording() -> Self {
        Self { record: Some(Record::default()), doubt: None, may_spare: false }
    }

    /// Evaluates one law. Its doubt goes to the value of [`Calc::doubted`] around it.
    #[inline]
    pub fn law<L: Law>(&mut self, law: L) -> L::Out {
        let value = law.value();
        if !law.in_range() {
            self.doubt = self.doubt.or(Some(&L::EQUATION));
            self.may_spare |= !law.fails_beyond();
        }
        if let Some(record) = &mut self.record {
            record.step(&law, value);
        }
        value
    }

    /// Each level of a band through `work`; the steps tell which.
    #[inline]
    pub fn levels<T, U>(&mut self, band: Band<T>, mut work: impl FnMut(&mut Self, T) -> U) -> Band<U> {
        let mut at = |level, of| {
            self.level(level);
            work(self, of)
        };
        let all = Band { low: at("low", band.low), likely: at("likely", band.likely), high: at("high", band.high) };
        self.level("");
        all
    }

    #[inline]
    fn level(&mut self, level: &'static str) {
        if let Some(record) = &mut self.record {
            record.level = level;
        }
    }

    /// A value to go on with. Its doubt goes to the value of [`Calc::doubted`] around it.
    pub fn take<T>(&mut self, from: Doubted<T>) -> T {
        self.doubt = self.doubt.or(from.doubt);
        self.may_spare |= from.may_spare;
        from.value
    }

    /// Runs `work` and returns its value with the doubt that arose inside, leaving earlier doubt untouched.
    pub fn doubted<T>(&mut self, work: impl FnOnce(&mut Self) -> T) -> Doubted<T> {
        let before = (self.doubt.take(), core::mem::take(&mut self.may_spare));
        let value = work(self);
        let doubted = Doubted { value, doubt: self.doubt, may_spare: self.may_spare };
        (self.doubt, self.may_spare) = before;
        doubted
    }

    /// Starts a new part of the working.
    pub fn part(&mut self, title: &'static str) {
        if let Some(record) = &mut self.record {
            record.part = title;
        }
    }

    /// The doubt that went to no value: none, unless a law was evaluated or a value taken outside [`Calc::doubted`].
    #[must_use]
    pub const fn leftover(&self) -> Doubt {
        self.doubt
    }

    /// The steps that it kept, in the order of evaluation.
    #[must_use]
    pub fn steps(self) -> Vec<Step> {
        self.record.map_or_else(Vec::new, |record| record.steps)
    }
}

/// In a debug build a test may have one law give a tenth more, to see which page objects.
#[cfg(debug_assertions)]
#[doc(hidden)]
pub mod tenth {
    use crate::quantity::Measure;
    use std::cell::Cell;

    thread_local! {
        static MORE: Cell<Option<&'static str>> = const { Cell::new(None) };
    }

    /// Runs `work` while the law of this name gives a tenth more on this thread.
    pub fn more_of<T>(name: &'static str, work: impl FnOnce() -> T) -> T {
        MORE.set(Some(name));
        let done = work();
        MORE.set(None);
        done
    }

    pub(crate) fn of<Q: Measure>(value: Q, name: &str) -> Q {
        if MORE.get().is_some_and(|more| more == name) { Q::from_si(1.1 * value.si()) } else { value }
    }
}

/// Declares the laws of a topic: behind the role of an argument what it must keep by itself, in SI base units, such as
/// `[> 0.0 <= 1.0]`, and behind `if` what they must keep together. From a declaration come the struct with its arguments,
/// the `Law` implementation, the doc table of symbols and dimensions with form, source and range, and the place in the
/// list of laws.
macro_rules! laws {
    ($(
        $(#[$doc:meta])*
        $name:ident $title:literal {
            $(
                $(#[$field_doc:meta])*
                $field:ident $symbol:literal: $type:ident as $role:ident $([$($sign:tt $bound:tt)+])?,
            )+
        } -> $out:ident as $out_role:ident;
        form $form:literal;
        from $mark:ident $source:literal $locator:literal;
        valid $range:literal $(if |$v:ident| $valid:expr)?;
        $(fails beyond |$b:ident| $beyond:expr;)?
        value |$s:ident| $value:expr;
    )+) => {
        /// The equations of this topic.
        pub(super) const EQUATIONS: &[&$crate::source::Equation] = &[$(&<$name as $crate::law::Law>::EQUATION),+];

        $(
            $(#[$doc])*
            ///
            /// | symbol | argument | dimension |
            /// |---|---|---|
            $(#[doc = concat!("| ", $symbol, " | `", stringify!($field), "` | [`", stringify!($type), "`] |")])+
            ///
            #[doc = concat!("**Form** `", $form, "`")]
            ///
            #[doc = concat!("**Source** `", $source, "`, ", $locator, "; ", stringify!($mark))]
            #[doc = concat!("([`Mark`](crate::source::Mark::", stringify!($mark), ")).")]
            ///
            #[doc = concat!("**Valid for** ", $range, ".")]
            #[derive(Debug, Clone, Copy, PartialEq)]
            pub struct $name {
                $($(#[$field_doc])* pub $field: $type,)+
            }

            impl $crate::law::Law for $name {
                type Out = $out;
                const EQUATION: $crate::source::Equation = $crate::source::Equation {
                    name: $title,
                    form: $form,
                    source: $source,
                    locator: $locator,
                    mark: $crate::source::Mark::$mark,
                    valid: $range,
                };
                const OUT: $crate::quantity::Role = $crate::quantity::Role::$out_role;

                #[inline]
                fn value(&self) -> $out {
                    let $s = self;
                    let value: $out = $value;
                    #[cfg(debug_assertions)]
                    let value = $crate::law::tenth::of(value, $title);
                    value
                }

                fn inputs(&self, each: &mut dyn FnMut(&'static str, $crate::quantity::Shown)) {
                    use $crate::quantity::{Role, Shown};
                    $(each(stringify!($field), Shown::of(self.$field, Role::$role));)+
                }

                #[inline]
                fn in_range(&self) -> bool {
                    true $($($(&& self.$field.value $sign $bound)+)?)+ $(&& {
                        let $v = self;
                        $valid
                    })?
                }

                $(fn fails_beyond(&self) -> bool {
                    let $b = self;
                    $beyond
                })?
            }
        )+
    };
}
pub(crate) use laws;
