//! Figures that another hand worked out from the equations and inputs of the sources, in place of printed ones.

pub(crate) mod end_schemes_check;
pub(crate) mod independent_check;
pub(crate) mod joint_check;
pub(crate) mod pressure_models;
pub(crate) mod pull_check;
pub(crate) mod reaction_wall;
pub(crate) mod site_check;
pub(crate) mod whole_drives;
