//! Figures of sources that were not at hand, or of pages that were not read: recalled, so a slip of memory may stand on
//! both sides. The head of each module says what was read.

pub(crate) mod aisc_360;
pub(crate) mod astm_f1804;
pub(crate) mod astm_f1962;
pub(crate) mod cpar_1998;
pub(crate) mod dvgw_gw_321;
pub(crate) mod en_545;
pub(crate) mod final_bore;
pub(crate) mod gb_50268;
pub(crate) mod jacking_stations;
pub(crate) mod metals;
pub(crate) mod mop_133;
pub(crate) mod prci_1995;
pub(crate) mod pressure_classes;
pub(crate) mod pulled_materials;
pub(crate) mod service_tables;
pub(crate) mod subgrade_sand;
pub(crate) mod suitability_matrix;
pub(crate) mod surroundings;
pub(crate) mod technique_limits;
pub(crate) mod ten_states;
pub(crate) mod uk_friction;
