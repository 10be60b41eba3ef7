//! The published equations, one topic per file. They know no tables, files or drives.
//!
//! Each law is a struct with named public arguments; `.value()` evaluates it, so another tool can take one law and
//! nothing else. Its [`Law::EQUATION`] holds form, citation and range.

pub mod after_pull;
pub mod clay;
pub mod collapse;
pub mod deflection;
pub mod fracture;
pub mod outside_pressure;
pub mod pe;
pub mod pull;
pub mod pull_curved;
pub mod pull_limits;
pub mod pull_rules;
pub mod pull_steel;
pub mod pull_steel_path;
pub mod ramp;
pub mod reaming;
pub mod soil;
pub mod thrust;

use crate::law::Law;
use crate::source::Equation;

/// Every equation of this crate, for listings and for the test that all sources resolve.
pub const EQUATIONS: &[&Equation] = &[
    &thrust::FrictionForce::EQUATION,
    &thrust::FaceForce::EQUATION,
    &thrust::WeightAlongGrade::EQUATION,
    &thrust::PilotTipAsCone::EQUATION,
    &thrust::PilotTipInClay::EQUATION,
    &clay::EndAreaFromRating::EQUATION,
    &clay::ConcentricEndForce::EQUATION,
    &clay::EdgeEndForce::EQUATION,
    &pull::PipeWeight::EQUATION,
    &pull::NetWeightInFluid::EQUATION,
    &pull::StraightPull::EQUATION,
    &pull::Capstan::EQUATION,
    &pull::HydrokineticDrag::EQUATION,
    &pull::PullWithModelFactor::EQUATION,
    &pull::FinalBore::EQUATION,
    &pe::TensileDesignStress::EQUATION,
    &pe::PullStressForDuration::EQUATION,
    &pe::PullStressAtTemperature::EQUATION,
    &pe::AllowableTension::EQUATION,
    &pe::AxialStress::EQUATION,
    &pe::BendingStress::EQUATION,
    &pe::MinimumBendRadius::EQUATION,
    &pe::BendRadiusForShare::EQUATION,
    &pe::ModulusAtDuration::EQUATION,
    &pe::ModulusAtTemperature::EQUATION,
    &collapse::OvalityFactor::EQUATION,
    &collapse::BendOvality::EQUATION,
    &collapse::TensionFactor::EQUATION,
    &collapse::CriticalPressure::EQUATION,
    &collapse::FluidHead::EQUATION,
    &soil::LayerStress::EQUATION,
    &soil::SiloWidthTerzaghi::EQUATION,
    &soil::SiloWidthAtv::EQUATION,
    &soil::SiloWidthPja::EQUATION,
    &soil::SiloStress::EQUATION,
    &soil::MeanRingPressure::EQUATION,
    &soil::ModifiedArching::EQUATION,
    &soil::FrictionOfPressure::EQUATION,
    &soil::MarstonLoad::EQUATION,
    &soil::BoreClosure::EQUATION,
    &pull_curved::TensionAtEntry::EQUATION,
    &pull_curved::TensionAfterEntryCurve::EQUATION,
    &pull_curved::TensionAfterLevel::EQUATION,
    &pull_curved::TensionAtExit::EQUATION,
    &pull_curved::MeanCurveRadius::EQUATION,
    &pull_curved::SurfaceCurveLength::EQUATION,
    &pull_curved::RadiusOfTurn::EQUATION,
    &pull_rules::SmallRigPull::EQUATION,
    &pull_rules::UnplannedBends::EQUATION,
    &pull_rules::SmallRigPullLimit::EQUATION,
    &pull_rules::LongestDryPull::EQUATION,
    &pull_rules::GroundLoadPull::EQUATION,
    &pull_rules::LesserBore::EQUATION,
    &pull_limits::PvcPullStress::EQUATION,
    &pull_limits::FactorAtTemperature::EQUATION,
    &pull_limits::TensionBesideBend::EQUATION,
    &pull_limits::StressOfStrain::EQUATION,
    &pull_limits::BendStrain::EQUATION,
    &pull_limits::PullStrain::EQUATION,
    &pull_limits::JointThrustRating::EQUATION,
    &pull_limits::JointedRadius::EQUATION,
    &pull_limits::WeakLinkSetting::EQUATION,
    &pull_steel::SteelBendingStrength::EQUATION,
    &pull_steel::HoopStress::EQUATION,
    &pull_steel::SteelElasticHoop::EQUATION,
    &pull_steel::SteelCriticalHoop::EQUATION,
    &pull_steel::SteelTensionBending::EQUATION,
    &pull_steel::SteelTensionBendingHoop::EQUATION,
    &pull_steel_path::CurveNormalForce::EQUATION,
    &pull_steel_path::CurvedPull::EQUATION,
    &ramp::RampLength::EQUATION,
    &ramp::ShortestRamp::EQUATION,
    &ramp::RampAngle::EQUATION,
    &ramp::RampDepth::EQUATION,
    &ramp::RampRadius::EQUATION,
    &outside_pressure::NetOutsidePressure::EQUATION,
    &outside_pressure::SupportedCollapse::EQUATION,
    &outside_pressure::BucklingInSoil::EQUATION,
    &outside_pressure::WaterBuoyancyFactor::EQUATION,
    &outside_pressure::ElasticSupportLuscher::EQUATION,
    &outside_pressure::ElasticSupportByDepth::EQUATION,
    &deflection::IowaDeflection::EQUATION,
    &deflection::BuoyantDeflection::EQUATION,
    &deflection::ScoredWall::EQUATION,
    &reaming::PassesByRatio::EQUATION,
    &reaming::PassesByStep::EQUATION,
    &reaming::SpoilVolume::EQUATION,
    &reaming::ReamingFluid::EQUATION,
    &reaming::AnnulusVolume::EQUATION,
    &reaming::ReturnVelocity::EQUATION,
    &reaming::AnnularFlowLoss::EQUATION,
    &fracture::CavityPressure::EQUATION,
    &fracture::StrainLimitedRadius::EQUATION,
    &fracture::ClayCracking::EQUATION,
    &fracture::FluidPressureLimit::EQUATION,
    &after_pull::PullStretch::EQUATION,
    &after_pull::DelayedStrain::EQUATION,
    &after_pull::ThermalShortening::EQUATION,
    &after_pull::RestrainedCoolingStress::EQUATION,
    &after_pull::ExcessLength::EQUATION,
    &after_pull::InvertAtRest::EQUATION,
    &after_pull::InvertAfloat::EQUATION,
];
