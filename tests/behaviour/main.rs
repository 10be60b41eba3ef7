//! Behaviour: what holds whatever the numbers are.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp,
    missing_docs,
    reason = "a test that fails should stop"
)]

#[path = "../fixtures/edit.rs"]
mod edit;

mod advice_units;
mod any_ground;
mod applies;
mod asks;
mod assumed;
mod auger;
mod beside;
mod both_ways;
mod bounds;
mod break_out;
mod broken_text;
mod by_order;
mod candidates;
mod carrier;
mod casing;
mod choosing;
mod citations;
mod closed_clay;
mod contractor;
mod coverage;
mod curve;
mod door;
mod door_bounds;
mod doubt;
mod drives;
mod everyday_door;
mod everyday_sizes;
mod extremes;
mod face_support;
mod field_bounds;
mod field_examples;
mod files;
mod flow;
mod follow;
mod forces;
mod grade;
mod ground;
mod grout;
mod guesses;
mod guide;
mod hard_ground;
mod in_service;
mod inside_pressure;
mod jacked;
mod jacked_door;
mod jacked_jobs;
mod jacked_ring;
mod jacks;
mod knots;
mod left_open;
mod load_code;
mod loads_on_drives;
mod model_means;
mod model_sets;
mod monotone;
mod on_bodies;
mod open_bore;
mod outcomes;
mod over_the_bore;
mod overlays;
mod pace;
mod packer;
mod paths;
mod pipe_end;
mod pit_base;
mod proposed;
mod pull_door;
mod pull_laws;
mod pull_works;
mod pulled;
mod pulled_profile;
mod push_assist;
mod quantity;
mod reamed_bore;
mod reasons;
mod records;
mod relations;
#[cfg(feature = "robust")]
mod robust;
mod safe_ground;
mod safe_side;
mod service_load;
mod settlement;
mod sight;
mod site;
mod slips;
mod soil;
mod soil_units;
mod stages;
mod standing_bore;
mod stations;
mod stem_bed;
mod surroundings;
mod tables;
mod techniques;
mod thrust_wall;
mod told_facts;
mod told_limits;
mod untold_soil;
mod vary;
mod walls;
mod water_line;
mod work;
mod writings;
