//! The guide: what each method does to pipe, rig and ground, how to write a drive file and read the report, and what the
//! numbers are worth; then a page for each group of laws, with a figure that the laws draw. The range of a law stands with
//! the law: a check that uses one outside it is not decided.

/// A module for each page of `src/guide`, which the build has put the figures in.
macro_rules! pages {
    ($($page:ident),+ $(,)?) => {$(
        #[doc = include_str!(concat!(env!("OUT_DIR"), "/", stringify!($page), ".md"))]
        pub mod $page {}
    )+};
}

pages!(
    files, report, jacking, pullback, evidence, thrust, pipe_end, steering, stem, pull, collapse, open_bore, loads,
    settlement, pits, hydraulics, guidance,
);
