//! A block of the drive file, declared once: one entry for each field gives the struct, its reading and writing, its
//! constructor, and what is said of the field wherever it is named.

/// What stands behind the key of a kind.
macro_rules! kind {
    (must $of:ty) => { $crate::yaml::Field<$of> };
    (may $of:ty) => { Option<$crate::yaml::Field<$of>> };
    (list $of:ty) => { Option<Vec<$crate::yaml::Field<$of>>> };
    (band $of:ty) => { Option<$crate::drive_file::band::BandFile<$of>> };
    (block $of:ty) => { Option<$of> };
    (must_block $of:ty) => { $of };
    (blocks $of:ty) => { Vec<$of> };
    (may_blocks $of:ty) => { Option<Vec<$of>> };
}
pub(super) use kind;

/// What is read behind the key of a kind.
macro_rules! value {
    ($map:ident) => {
        $map.next_value()?
    };
    ($map:ident may $of:ty) => {
        $crate::yaml::told($map)?
    };
    ($map:ident or_unknown $of:ty) => {
        $crate::yaml::listed($map)?
    };
    ($map:ident or_empty $of:ty) => {
        $crate::yaml::listed($map)?.unwrap_or_default()
    };
}
pub(super) use value;

/// The paths of a field, from those of its block.
macro_rules! names {
    ([$($at:literal),+] $key:ident) => {
        &[$($crate::source::FieldName(concat!($at, stringify!($key)))),+]
    };
}
pub(super) use names;

/// Declares blocks of the file, each at one or more paths. An entry for each field:
///
/// ```text
/// /// What it is.
/// key: may<Type> as Role, Bounds, usual(least, most), ["SI", "US"], label "word", else "what is taken", said ["other"],
///     or |block| what stands in for it;
/// ```
///
/// `must<T>` is a value, `may<T>` one that may be left out, `list<T>` a list of values that may be, `band<T>` low, likely and
/// high that may be left out; `must_block<B>` is another block, `block<B>` one that may be left out, `blocks<B>` a list of
/// them, `may_blocks<B>` one whose absence says less than an empty one. Role, bounds and examples belong to numbers alone, the
/// rest may be left out.
macro_rules! fields {
    ($(
        $(#[doc = $doc:literal])+
        $(#[derive($($derive:ident),+)])?
        $name:ident at $at:tt {
            $(
                $(#[doc = $about:literal])+
                $key:ident : $(must<$must:ty>)? $(may<$may:ty>)? $(list<$list:ty>)?
                    $(band<$band:ty>)? $(must_block<$must_block:ty>)? $(block<$block:ty>)? $(blocks<$blocks:ty>)?
                    $(may_blocks<$may_blocks:ty>)?
                    $(as $role:ident, $bounds:expr, $(usual($least:expr, $most:expr),)? [$si:literal, $us:literal])?
                    $(, label $label:literal)? $(, else $other:literal)?
                    $(, said [$($said:literal),+])? $(, or $stands_in:expr)?;
            )+
        }
    )+) => {$(
        $(#[doc = $doc])+
        #[derive(Debug, Clone, serde::Serialize $($(, $derive)+)?)]
        pub struct $name {
            $(
                $(#[doc = $about])+
                $(#[doc = concat!("\n\nLeft out: ", $other, ".")])?
                #[serde(skip_serializing_if = "crate::drive_file::fields::Value::is_absent")]
                pub $key: $crate::drive_file::declare::kind!($(must $must)? $(may $may)? $(list $list)?
                    $(band $band)? $(must_block $must_block)? $(block $block)? $(blocks $blocks)?
                    $(may_blocks $may_blocks)?),
            )+
        }

        impl $name {
            /// What is said of each field, in the order of writing.
            pub const FIELDS: &'static [$crate::drive_file::fields::Spec] = &[$({
                #[allow(unused_imports, reason = "a field may be no number")]
                use $crate::drive_file::{fields::{Bounds::*, Number, Spec, first, shape_of}, limits::*};
                const SPEC: Spec = {
                    let (shape, is_needed) = shape_of(|block: &$name| &block.$key);
                    Spec {
                        key: stringify!($key),
                        names: $crate::drive_file::declare::names!($at $key),
                        doc: concat!($($about),+).trim_ascii(),
                        must: is_needed $(|| { type _Of = $must_block; true })?,
                        number: first(&[$(Some(Number {
                            role: $crate::quantity::Role::$role,
                            bounds: $bounds,
                            usual: first(&[$(Some(($least, $most)))?]),
                            example: [$si, $us],
                        }))?]),
                        label: first(&[$(Some($label))?]),
                        otherwise: first(&[$(Some($other))?]),
                        said: &[$($($said),+)?],
                        shape,
                    }
                };
                const {
                    assert!(SPEC.role_fits(), concat!("the role of `", stringify!($key), "` does not print its type"));
                };
                SPEC
            }),+];
            $(
                #[allow(non_upper_case_globals, dead_code, reason = "the name of the field")]
                pub(crate) const $key: $crate::drive_file::fields::Key<
                    Self,
                    $crate::drive_file::declare::kind!($(must $must)? $(may $may)? $(list $list)?
                        $(band $band)? $(must_block $must_block)? $(block $block)? $(blocks $blocks)?
                    $(may_blocks $may_blocks)?)
                > = $crate::drive_file::fields::Key::of(Self::FIELDS, stringify!($key), |block| &block.$key);
            )+

            /// With what must be there, nothing else.
            #[must_use]
            #[allow(clippy::too_many_arguments, clippy::new_without_default, reason = "as many as must be there")]
            pub fn new(
                $($($key: impl Into<$crate::yaml::Field<$must>>,)? $($key: $must_block,)?)+
            ) -> Self {
                #[allow(unused_mut, reason = "not every block has a field that must be there")]
                let mut block = <Self as $crate::yaml::Blank>::blank();
                $(
                    $({
                        let given: $crate::yaml::Field<$must> = $key.into();
                        block.$key = given;
                    })?
                    $({
                        let given: $must_block = $key;
                        block.$key = given;
                    })?
                )+
                block
            }

            /// Hands over each field, in the order of writing.
            #[allow(dead_code, reason = "not every block is looked through")]
            pub(crate) fn each<'a>(
                &'a self,
                each: &mut dyn FnMut(
                    u8,
                    &'static $crate::drive_file::fields::Spec,
                    &'a dyn $crate::drive_file::fields::Value,
                ),
            ) {
                $(each(Self::$key.index, Self::$key.spec, &self.$key);)+
            }
        }

        impl $crate::yaml::Blank for $name {
            fn blank() -> Self {
                Self { $($key: $crate::yaml::Blank::blank(),)+ }
            }
        }

        impl $crate::yaml::Block for $name {
            const IS_FILE: bool = $crate::drive_file::fields::is_file(Self::FIELDS);
            fn known() -> impl Iterator<Item = $crate::yaml::Known> {
                Self::FIELDS.iter().map(|spec| spec.known())
            }
            fn take<'de, A: serde::de::MapAccess<'de>>(&mut self, index: usize, map: &mut A) -> Result<(), A::Error> {
                match index {
                    $(at if at == usize::from(Self::$key.index) => {
                        self.$key = $crate::drive_file::declare::value!(
                            map $(may $may)? $(or_unknown $list)? $(or_unknown $band)? $(or_unknown $block)?
                            $(or_empty $blocks)? $(or_unknown $may_blocks)?
                        );
                    })+
                    _ => {}
                }
                Ok(())
            }
            fn stands_in(&mut self, index: usize) -> bool {
                match index {
                    $($(at if at == usize::from(Self::$key.index) => {
                        let stands_in: fn(&Self) -> Option<_> = $stands_in;
                        let found = stands_in(self);
                        let is_there = found.is_some();
                        if let Some(found) = found {
                            self.$key = found;
                        }
                        is_there
                    })?)+
                    _ => false,
                }
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                $crate::yaml::block(deserializer)
            }
        }

        impl $crate::drive_file::fields::Shaped for $name {
            const SHAPE: $crate::drive_file::fields::Shape = $crate::drive_file::fields::Shape::Block(Self::FIELDS);
        }

        impl $crate::drive_file::fields::Value for $name {
            fn place(&self) -> Option<($crate::yaml::Handle, String)> {
                let mut first = None;
                self.each(&mut |_, spec, value| {
                    if first.is_none() {
                        first = value.place().map(|(at, rest)| (at, format!(".{}{rest}", spec.key)));
                    }
                });
                first
            }
            fn numbers(
                &self,
                _: &$crate::drive_file::fields::Spec,
                path: &mut String,
                each: &mut dyn FnMut(&$crate::drive_file::fields::FileNumber<'_>),
            ) {
                self.each(&mut |_, spec, value| {
                    if !value.is_absent() {
                        $crate::drive_file::fields::behind(path, spec.key, |path| value.numbers(spec, path, each));
                    }
                });
            }
            fn told(&self, path: &str, each: &mut dyn FnMut(&'static str)) {
                self.each(&mut |_, spec, value| {
                    if !value.is_absent() {
                        let path = spec.in_block(path);
                        value.told(path, each);
                        each(path);
                    }
                });
            }
            fn shown(
                &self,
                _: &$crate::drive_file::fields::Spec,
                system: $crate::quantity::UnitSystem,
            ) -> Option<String> {
                let mut first = None;
                self.each(&mut |_, spec, value| {
                    if first.is_none() {
                        first = value.shown(spec, system);
                    }
                });
                first
            }
        }
    )+};
}
pub(super) use fields;
