//! The equations, one topic per file, each with its source and mark: published, recalled or our own. They know no tables,
//! files or drives.
//!
//! Each law is a struct with named public arguments; `.value()` evaluates it, so another tool can take one law and
//! nothing else. Its [`EQUATION`](crate::law::Law::EQUATION) holds form, citation and range.

pub mod after_pull;
pub mod clay;
pub mod collapse;
pub mod column;
pub mod concrete;
pub mod deflection;
pub mod earth_load;
pub mod face;
pub mod fracture;
pub mod friction;
pub mod gauge;
pub mod guidance;
pub mod hydraulics;
pub mod inflow;
pub mod inside_pressure;
pub mod open_bore;
pub mod outside_pressure;
pub mod packer;
pub mod part_full;
pub mod pe;
pub mod pit_base;
pub mod pit_water;
pub mod pull;
pub mod pull_limits;
pub mod pull_rules;
pub mod pull_steel;
pub mod ramp;
pub mod reaming;
pub mod rigid;
mod ring;
pub mod room;
pub mod settlement;
pub mod silo_mean;
pub mod soil;
pub mod stations;
pub mod steel;
pub mod steering;
pub mod stem;
pub mod thrust;
pub mod turned_joint;
pub mod undulation;
pub mod wall;
pub mod wall_fit;

use crate::source::Equation;

/// Every equation of this crate, by topic.
pub fn equations() -> impl Iterator<Item = &'static Equation> {
    [
        after_pull::EQUATIONS,
        clay::EQUATIONS,
        collapse::EQUATIONS,
        column::EQUATIONS,
        concrete::EQUATIONS,
        deflection::EQUATIONS,
        earth_load::EQUATIONS,
        face::EQUATIONS,
        fracture::EQUATIONS,
        friction::EQUATIONS,
        gauge::EQUATIONS,
        guidance::EQUATIONS,
        hydraulics::EQUATIONS,
        inflow::EQUATIONS,
        inside_pressure::EQUATIONS,
        open_bore::EQUATIONS,
        outside_pressure::EQUATIONS,
        packer::EQUATIONS,
        part_full::EQUATIONS,
        pe::EQUATIONS,
        pit_base::EQUATIONS,
        pit_water::EQUATIONS,
        pull::EQUATIONS,
        pull_limits::EQUATIONS,
        pull_rules::EQUATIONS,
        pull_steel::EQUATIONS,
        ramp::EQUATIONS,
        reaming::EQUATIONS,
        rigid::EQUATIONS,
        room::EQUATIONS,
        settlement::EQUATIONS,
        silo_mean::EQUATIONS,
        soil::EQUATIONS,
        stations::EQUATIONS,
        steel::EQUATIONS,
        steering::EQUATIONS,
        stem::EQUATIONS,
        thrust::EQUATIONS,
        turned_joint::EQUATIONS,
        undulation::EQUATIONS,
        wall::EQUATIONS,
        wall_fit::EQUATIONS,
    ]
    .into_iter()
    .flatten()
    .copied()
}
