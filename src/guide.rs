//! The guide: what each method does to pipe, rig and ground, how to write a drive file and read the report, and what the
//! numbers are worth.

#[doc = include_str!("guide/files.md")]
pub mod files {}

#[doc = include_str!("guide/report.md")]
pub mod report {}

#[doc = include_str!("guide/jacking.md")]
pub mod jacking {}

#[doc = include_str!("guide/pullback.md")]
pub mod pullback {}

#[doc = include_str!("guide/evidence.md")]
pub mod evidence {}
