//! The tables of the trade: typed rows, each with its source, and a user's overlays.
//!
//! A [`Handbook`] is a value, not a global. Tables are embedded and read on first use.

mod blame;
mod error;
mod lookup;
mod reference;
mod rows;
mod sense;
mod shelf;
mod table;
mod written;

pub use error::HandbookError;
pub(crate) use lookup::{OneValue, rising};
pub use reference::Reference;
pub use rows::*;
pub use table::{Citation, Row, Table};
pub use written::{Written, line};

use crate::quantity::{Angle, Force, Length, Pressure, Ratio, ThermalExpansion, ThermodynamicTemperature, Time};
use crate::source::RowId;
use crate::yaml::Field;
use shelf::{Shelf, keys, shelves};
use std::sync::{Arc, LazyLock};

shelves! {
    /// The bibliography.
    sources: SourceRow,
    /// Vitrified clay jacking pipe.
    clay_pipe: ClayPipeRow,
    /// Vitrified clay jacking pipe in metric sizes.
    clay_pipe_dn: SizeOutsideForceRow,
    /// Compressive strength of vitrified clay by certificate.
    clay_strength: Field<Pressure> as fixed_keys,
    /// PE pipe by ISO 4427.
    pe_iso4427: PeWallRow,
    /// PE pipe in iron pipe sizes.
    pe_ips: SizeOutsideRow,
    /// PE material designations.
    pe_material: PeMaterialRow as fixed_keys,
    /// Allowable pull stress of PE.
    pe_pull_stress: PullStressRow,
    /// Duration factors on PE pull stress and tensile yield.
    pe_duration_factor: DurationFactorRow,
    /// Apparent modulus of PE.
    pe_modulus: ModulusRow,
    /// Temperature multipliers for PE.
    pe_temperature: TemperatureFactorRow,
    /// Unit friction.
    friction_band: FrictionBandRow,
    /// Ground classes.
    ground_class: GroundClassRow,
    /// Ground suitability by method.
    ground_suitability: SuitabilityRow,
    /// Suitability for drilled pilots and for bores cleared by vacuum.
    guided_suitability: GuidedSuitabilityRow,
    /// Hazards of the ground by technique.
    ground_hazard: GroundHazardRow as fixed_keys,
    /// Techniques of opening a bore.
    technique: TechniqueRow as fixed_keys,
    /// Pilot stems by how their bore is made.
    pilot_stem: PilotStemRow as fixed_keys,
    /// Resistance at an enlarging head.
    face: FaceRow as fixed_keys,
    /// Final bore of a pulled pipe.
    bore_rule: BoreRuleRow as fixed_keys,
    /// Length and diameter ranges by method.
    method_limit: MethodLimitRow,
    /// What a pipe family cannot do.
    exclusion: ExclusionRow,
    /// Reinforced concrete jacking pipe with spigot.
    concrete_pipe: ConcretePipeRow,
    /// Small concrete jacking pipe, end area and allowable force.
    concrete_small_pipe: ConcreteSmallPipeRow,
    /// Small concrete jacking pipe, barrel walls.
    concrete_small_wall: SizeWallRow,
    /// Stresses for jacking concrete pipe by scheme.
    concrete_strength: ConcreteStressRow,
    /// Coefficients for jacking concrete pipe by scheme.
    concrete_factor: SchemeFactorRow,
    /// Strength of steel by grade.
    steel_grade: SteelGradeRow,
    /// Coefficients for jacking steel pipe by scheme.
    steel_factor: SchemeFactorRow,
    /// Least wall of steel casings under a railway.
    steel_casing_wall: SteelCasingWallRow,
    /// Walls of reinforced concrete pipe in inches.
    concrete_c76_wall: SizeWallRow,
    /// Outside diameters of steel pipe.
    steel_pipe: SizeOutsideRow,
    /// Steel jacking casings.
    steel_casing_pipe: SteelCasingPipeRow,
    /// Coefficients for jacking GRP and polymer concrete.
    jacking_factor: SchemeFactorRow,
    /// Strength of ductile iron pipe.
    ductile_iron: Field<Pressure>,
    /// Strength and stiffness of PVC pipe.
    pvc_stress: Field<Pressure>,
    /// Factors and ratios of PVC pipe.
    pvc_ratio: Field<Ratio>,
    /// Hoop stress of a pressure main over its life.
    main_stress: Field<Pressure>,
    /// Temperature factors on the pressure rating of PVC pipe.
    pvc_temperature: TemperatureFactorRow,
    /// PVC pipe in cast iron sizes.
    pvc_pipe: SizeOutsideRow,
    /// Ductile iron pipe of metric sizes.
    iron_pipe: SizeOutsideWallRow,
    /// Ductile iron pipe in inches.
    iron_pipe_in: SizeOutsideWallRow,
    /// Thickness of packers.
    packer_thickness: LengthRangeRow,
    /// Secant modulus of packers.
    packer_modulus: Field<Pressure>,
    /// Angles at a jacking joint.
    joint_angle: Field<Angle>,
    /// How far a pipe end may be out of square.
    end_squareness: Field<Length>,
    /// Usual length of one jacking pipe.
    jacking_pipe_length: LengthRangeRow,
    /// Effective over free length of a column.
    column_length: Field<Ratio>,
    /// Smallest bend radius.
    bend_radius: Field<Ratio>,
    /// Ovality limits.
    ovality: Field<Ratio>,
    /// Coefficients of the check of pulled steel pipe.
    steel_pull_factor: SchemeFactorRow,
    /// Stresses in the check of pulled steel pipe.
    steel_pull_stress: Field<Pressure>,
    /// Specific gravity of pipe materials.
    pipe_density: Field<Ratio> as fixed_keys,
    /// Pipe materials by method.
    method_material: MethodMaterialRow,
    /// Line and grade by method.
    line_tolerance: LineToleranceRow,
    /// Slopes that a method can be asked to hold.
    grade_gate: RatioSpanRow,
    /// Limits and figures of pilot-tube boring.
    pilot_limits: PilotLimitRow,
    /// Length put in per shift or day.
    production_rate: ProductionRateRow,
    /// Shifts for the work beside the bore.
    stage_shifts: StageShiftsRow as fixed_keys,
    /// Factors for planning the work.
    planning_factor: RatioSpanRow,
    /// Size of jacking and reception pits.
    shaft_size: ShaftSizeRow,
    /// Area at the launch.
    work_area: WorkAreaRow,
    /// Least cover by method.
    minimum_cover: MinimumCoverRow,
    /// Clear distances.
    separation: SeparationRow,
    /// Factors for the reaction wall.
    thrust_wall: RatioSpanRow,
    /// Safety factors of the pit and of the soil plug.
    pit_factor: RatioSpanRow,
    /// Jacking stations and jack margin.
    jacking_station: RatioSpanRow,
    /// Movement of a wall at full passive pressure, by ground.
    wall_movement: RatioSpanRow,
    /// Excavation rules in numbers.
    excavation: ExcavationRow,
    /// Waiting times after a butt fusion.
    joint_cooling: JointCoolingRow,
    /// Butt fusion joints made per day.
    fusion_rate: FusionRateRow,
    /// Ground lost at the bore.
    volume_loss: RatioSpanRow,
    /// Width of the settlement trough over depth.
    trough_width: RatioSpanRow,
    /// How much of the annulus closes on the pipe.
    annulus_closure: RatioSpanRow,
    /// When and how far ground moves, and when it may rise.
    movement_caution: RatioSpanRow,
    /// How far a flexible pipe may go out of round in service.
    deflection_limit: DeflectionLimitRow,
    /// Pressure of traffic on a pipe by cover.
    live_load: LiveLoadRow,
    /// Impact factor by cover.
    impact_factor: ImpactFactorRow,
    /// Field strength over three-edge bearing strength of a rigid pipe.
    bedding_factor: RatioSpanRow,
    /// Factors for the load on a jacked pipe in service.
    earth_load_factor: RatioSpanRow,
    /// Lengths in the load on a jacked pipe in service.
    earth_load_length: Field<Length>,
    /// Crushing strength of rigid pipe by class, per length and diameter.
    crushing_class: CrushingClassRow,
    /// Three-edge bearing strength of vitrified clay pipe by size.
    clay_crushing: ClayCrushingRow,
    /// Least slope of a gravity sewer.
    sewer_min_slope: SewerMinSlopeRow,
    /// Manning roughness.
    manning_n: ManningRow,
    /// Self-cleaning stress and velocity.
    tractive_stress: TractiveStressRow,
    /// Acceptance of sag and position.
    sag_limit: SagLimitRow,
    /// Published unit friction.
    unit_friction_published: UnitFrictionRow,
    /// Friction between pipe materials and ground.
    interface_friction: InterfaceFrictionRow,
    /// Adhesion of clay on pipe materials.
    adhesion: AdhesionRow as fixed_keys,
    /// Constants of silo models.
    friction_model_set: FrictionModelSetRow as fixed_keys,
    /// Side pressure times friction in the load of Marston.
    marston_friction: Field<Ratio>,
    /// Rules of face resistance and face support.
    face_rule: FaceRuleRow as fixed_keys,
    /// Extra jacking force after a stop.
    restart_factor: RestartFactorRow,
    /// Cone resistance per blow and limits of a displacement pilot.
    pilot_cone: PilotConeRow,
    /// Modulus of horizontal subgrade reaction of sand, per depth.
    sand_bedding: SandBeddingRow as fixed_keys,
    /// Unit weight by ground class.
    soil_weight: SoilWeightRow,
    /// Friction angle, strength and stiffness of ground by class, where the file tells no soil.
    class_soil: ClassSoilRow,
    /// Stability number of a face in clay.
    stability_number: StabilityNumberRow,
    /// Volume of drilling fluid over volume of soil.
    fluid_demand: FluidDemandRow,
    /// Size of a reaming step.
    ream_step: ReamStepRow as fixed_keys,
    /// Limits of fluid pressure in a bore.
    fluid_pressure_limit: Field<Ratio>,
    /// Overcut of a jacked or enlarged bore.
    hole_overcut: HoleOvercutRow,
    /// Numbers of the short rules for a pull.
    pull_rule: PullRuleRow,
    /// Strain of a pulled PE pipe.
    pull_strain: Field<Ratio>,
    /// Temperature of a plastic pipe in the pull.
    pull_temperature: Field<ThermodynamicTemperature>,
    /// Thermal expansion of pipe materials.
    thermal_expansion: Field<ThermalExpansion>,
    /// Least wall of a pulled steel pipe.
    steel_pull_wall: SteelPullWallRow,
    /// Growth of soil in volume when it is dug.
    soil_swell: Field<Ratio>,
    /// Support and safety against collapse in service.
    collapse_support: Field<Ratio>,
    /// Factors of the modified Iowa formula.
    deflection_factor: Field<Ratio>,
    /// Allowances after a pull.
    after_pull: Field<Ratio>,
    /// Waiting times after a pull.
    after_pull_wait: Field<Time>,
    /// Friction and weight of a stem in a drilled bore that stands.
    open_bore: RatioLevelsRow as fixed_keys,
    /// Auger and spoil in a jacked pipe.
    auger: RatioLevelsRow as fixed_keys,
    /// Thrust on the bit of a drilled pilot over its diameter.
    bit_thrust: LineLoadLevelsRow as fixed_keys,
    /// Factors, coefficients and ratios by use.
    practice_ratio: Field<Ratio> as fixed_keys,
    /// Pressures by use.
    practice_pressure: Field<Pressure> as fixed_keys,
    /// Lengths by use.
    practice_length: Field<Length> as fixed_keys,
    /// Forces by use.
    practice_force: Field<Force> as fixed_keys,
    /// Angles by use.
    practice_angle: Field<Angle> as fixed_keys,
    /// Durations by use.
    practice_duration: Field<Time> as fixed_keys,
    /// Weights of the criteria of the score.
    score_weight: Field<Ratio> as fixed_keys,
}

impl Handbook {
    /// The embedded tables, parsed once per process.
    #[must_use]
    pub fn embedded() -> Arc<Self> {
        static EMBEDDED: LazyLock<Arc<Handbook>> = LazyLock::new(|| Arc::new(Handbook::new()));
        Arc::clone(&EMBEDDED)
    }

    /// What is laid over: the table, and the name of the user's file, in the order of tables and of laying.
    pub fn overlays(&self) -> impl Iterator<Item = (&'static str, &str)> {
        Self::TABLES.iter().flat_map(|table| {
            let (_, laid) = self.texts(table).unwrap_or_default();
            laid.iter().map(move |(name, _)| (*table, name.as_str()))
        })
    }

    /// Every row's table, key and citation.
    ///
    /// # Errors
    /// The first malformed table.
    pub fn citations(&self) -> Result<Vec<(&'static str, &str, &Citation)>, HandbookError> {
        let mut all = Vec::new();
        for table in Self::TABLES {
            all.extend(self.rows_of(table)?.into_iter().map(|(key, citation)| (*table, key, citation)));
        }
        Ok(all)
    }

    /// These tables with a user's table file laid over the one it names. `name` is printed as its source.
    ///
    /// # Errors
    /// If the text is malformed or names no table.
    pub fn with_overlay(&self, name: &str, text: &str) -> Result<Self, HandbookError> {
        let malformed = |faults| HandbookError::Malformed { table: name.to_owned(), faults };
        let head: table::Head = crate::yaml::read(text).map_err(malformed)?;
        let id = &head.id.value.0;
        let handbook = self.laid_over(id, name, text).ok_or_else(|| HandbookError::NoTable(id.clone()))?;
        let faults = self.senseless(id, text);
        if !faults.is_empty() {
            return Err(malformed(faults));
        }
        // Parsed now, so that a faulty overlay is refused here.
        handbook.title(id)?;
        Ok(handbook)
    }
}
