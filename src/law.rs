//! What a law is: one published equation as a struct with named arguments, one value, one range check, one record.

use crate::quantity::{Measure, Role, Shown};
use crate::source::Equation;

/// One published equation with its arguments filled in.
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
}

/// A value and the first equation, if any, that was used outside its range to get it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Doubted<T> {
    /// The value.
    pub value: T,
    /// The equation out of range.
    pub doubt: Doubt,
}

/// The first equation used outside its range, if any.
pub type Doubt = Option<&'static Equation>;

impl<T> Doubted<T> {
    /// The value changed, the doubt kept.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> Doubted<U> {
        Doubted { value: change(self.value), doubt: self.doubt }
    }
}

/// Receives each law as it is evaluated.
pub trait Recorder {
    /// Called once per evaluation.
    fn step<L: Law>(&mut self, law: &L, value: L::Out);
    /// Starts a new part of the working.
    fn part(&mut self, title: &'static str);
}

/// Keeps nothing: the fast path.
#[derive(Debug, Clone, Copy, Default)]
pub struct Silent;

impl Recorder for Silent {
    fn step<L: Law>(&mut self, _law: &L, _value: L::Out) {}
    fn part(&mut self, _title: &'static str) {}
}

/// Evaluates laws, notes doubt and records, so that the sheet shows the very evaluation that decided.
#[derive(Debug, Clone, Default)]
pub struct Calc<R> {
    recorder: R,
    doubt: Doubt,
}

impl<R: Recorder> Calc<R> {
    /// Starts with a recorder.
    pub const fn new(recorder: R) -> Self {
        Self { recorder, doubt: None }
    }

    /// Evaluates one law.
    pub fn law<L: Law>(&mut self, law: L) -> L::Out {
        let value = law.value();
        if !law.in_range() && self.doubt.is_none() {
            self.doubt = Some(&L::EQUATION);
        }
        self.recorder.step(&law, value);
        value
    }

    /// Runs `work` and returns its value with the doubt that arose inside, leaving earlier doubt untouched.
    pub fn doubted<T>(&mut self, work: impl FnOnce(&mut Self) -> T) -> Doubted<T> {
        let before = self.doubt.take();
        let value = work(self);
        let doubt = core::mem::replace(&mut self.doubt, before);
        Doubted { value, doubt }
    }

    /// Starts a new part of the working.
    pub fn part(&mut self, title: &'static str) {
        self.recorder.part(title);
    }

    /// The recorder with what it kept.
    pub fn finish(self) -> R {
        self.recorder
    }
}

/// Writes the `Law` implementation of a struct: arguments with their print roles, equation, range, value.
macro_rules! law {
    (
        $(#[$doc:meta])*
        $name:ident { $($(#[$field_doc:meta])* $field:ident: $type:ty as $role:ident),+ $(,)? } -> $out:ty as $out_role:ident
        $equation:block
        valid |$v:ident| $valid:expr;
        value |$s:ident| $value:expr;
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq)]
        pub struct $name {
            $($(#[$field_doc])* pub $field: $type,)+
        }

        impl $crate::law::Law for $name {
            type Out = $out;
            const EQUATION: $crate::source::Equation = $equation;
            const OUT: $crate::quantity::Role = $crate::quantity::Role::$out_role;

            fn value(&self) -> $out {
                let $s = self;
                $value
            }

            fn inputs(&self, each: &mut dyn FnMut(&'static str, $crate::quantity::Shown)) {
                $(each(stringify!($field), $crate::quantity::Shown::of(self.$field, $crate::quantity::Role::$role));)+
            }

            fn in_range(&self) -> bool {
                let $v = self;
                $valid
            }
        }
    };
}
pub(crate) use law;
