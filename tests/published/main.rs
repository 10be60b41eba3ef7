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

#[path = "../../examples/published_limits/book/mod.rs"]
mod book;
#[path = "../fixtures/edit.rs"]
mod edit;
#[path = "../fixtures/jobs.rs"]
mod told;

mod found;

mod doubled;
mod files;
mod flipped;
mod laws;
mod moved;

mod acpa_dd_21;
mod asme_b36_10;
mod astm_c76;
mod astm_f1804;
mod astm_f1962;
mod astm_f2619;
mod buried_pipe_texts;
mod clay_sheet;
mod cn_annex_e;
mod cpar_1998;
mod dimensions;
mod dvgw_gw_321;
mod en_545;
mod end_schemes_check;
mod field_cases;
mod final_bore;
mod gb_50268;
mod hdd_utility_2005;
mod independent_check;
mod invert_tolerance;
mod iso_4065;
mod jacked_pipe;
mod jacking_stations;
mod jobs;
mod joint_check;
mod jswas_a6;
mod mop_133;
mod moser_buried_pipe;
mod pja_introduction;
mod ppi_2008;
mod prci_1995;
mod pressure_classes;
mod pressure_models;
mod printed_limits;
mod pull_check;
mod pulled_materials;
mod reaction_wall;
mod selections;
mod service_tables;
mod site_check;
mod soil_scales;
mod stein_2001;
mod subgrade_sand;
mod suitability_matrix;
mod surroundings;
mod technique_limits;
mod ten_states;
mod ttp_2010;
mod ttp_2010_pull;
mod ufc_3_220_01a;
mod uk_friction;
