//! What the tables and laws give against figures from outside, one module per source: printed ones here, recalled ones in
//! `tests/recalled`, those that another hand worked out in `tests/worked`.
//!
//! A page is a function of a handbook. It runs once against the embedded tables as a test of its own, and again and
//! again in [`doubled`], which doubles each table value in turn and asks whether any page objects.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp,
    missing_docs,
    reason = "a test that fails should stop"
)]

#[path = "../../examples/published_limits/book/mod.rs"]
mod book;
#[path = "../fixtures/edit.rs"]
mod edit;
#[path = "../fixtures/tenth.rs"]
mod noticed;
#[path = "../fixtures/jobs.rs"]
mod told;

mod found;

mod doubled;
mod files;
mod flipped;
mod laws;
mod moved;
mod tenth;

#[path = "../recalled/mod.rs"]
mod recalled;
#[path = "../worked/mod.rs"]
mod worked;

mod acpa_dd_21;
mod asme_b36_10;
mod astm_c76;
mod astm_f2619;
mod awwa_c151;
mod buried_pipe_texts;
mod clay_sheet;
mod cn_annex_e;
mod dimensions;
mod field_cases;
mod hdd_utility_2005;
mod invert_tolerance;
mod iso_4065;
mod jacked_pipe;
mod jobs;
mod jswas_a6;
mod moser_buried_pipe;
mod pilot_tube_page;
mod pja_introduction;
mod ppi_2008;
mod printed_limits;
mod selections;
mod soil_scales;
mod stein_2001;
mod ttp_2010;
mod ttp_2010_pull;
