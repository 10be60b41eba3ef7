//! Published: what the tables and laws give against figures printed elsewhere, one module per source.
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

mod found;

mod doubled;
mod files;
mod laws;

mod astm_f1804;
mod astm_f1962;
mod astm_f2619;
mod clay_sheet;
mod dimensions;
mod dvgw_gw_321;
mod field_cases;
mod final_bore;
mod gb_50268;
mod hdd_utility_2005;
mod independent_check;
mod invert_tolerance;
mod iso_4065;
mod jacking_stations;
mod mop_133;
mod moser_buried_pipe;
mod pit_examples;
mod pja_introduction;
mod ppi_2008;
mod pressure_models;
mod reaction_wall;
mod section_tables;
mod site_check;
mod soil_scales;
mod stein_2001;
mod ten_states;
mod thomson_1993;
mod trough_example;
mod ttp_2010;
mod uk_friction;
