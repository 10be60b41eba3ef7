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

mod bounds;
mod door;
mod drives;
mod files;
mod flow;
mod forces;
mod monotone;
mod packer;
mod paths;
mod pipe_end;
mod pull_laws;
mod pulled;
mod quantity;
mod service_load;
mod site;
mod soil;
mod stages;
mod stations;
mod tables;
mod walls;
