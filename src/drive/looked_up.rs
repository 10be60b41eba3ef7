//! Groups of values that are rows of the handbook, whatever the file says.

/// Declares such groups: each value with how it is looked up.
macro_rules! looked_up {
    ($(
        $(#[$doc:meta])+
        $group:ident of |$handbook:ident| { $($(#[$about:meta])* $name:ident: $kind:ty = $value:expr,)+ }
    )+) => {$(
        $(#[$doc])+
        #[derive(Debug, Clone, Copy)]
        pub(crate) struct $group { $($(#[$about])* pub(crate) $name: $kind,)+ }

        impl $group {
            /// Out of the tables.
            pub(crate) fn read(
                $handbook: &$crate::handbook::Handbook,
            ) -> Result<Self, $crate::handbook::HandbookError> {
                Ok(Self { $($name: $value,)+ })
            }
        }
    )+};
}
pub(super) use looked_up;
