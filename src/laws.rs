//! The published equations, one topic per file. They know no tables, files or drives.
//!
//! Each law is a struct with named public arguments; `.value()` evaluates it, so another tool can take one law and
//! nothing else. Its [`Law::EQUATION`] holds form, citation and range.

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
pub mod hydraulics;
pub mod inflow;
pub mod outside_pressure;
pub mod packer;
pub mod part_full;
pub mod pe;
pub mod pit_base;
pub mod pull;
pub mod pull_limits;
pub mod pull_rules;
pub mod pull_steel;
pub mod pull_steel_path;
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

use crate::law::Law;
use crate::source::Equation;

/// Every equation of this crate, for listings and for the test that all sources resolve.
pub const EQUATIONS: &[&Equation] = &[
    &thrust::FrictionForce::EQUATION,
    &thrust::FaceForce::EQUATION,
    &thrust::WeightAlongGrade::EQUATION,
    &thrust::SignedWeightAlongGrade::EQUATION,
    &thrust::SlurryFace::EQUATION,
    &thrust::CuttingEdge::EQUATION,
    &thrust::OpenShieldFace::EQUATION,
    &thrust::PilotTipAsCone::EQUATION,
    &thrust::PilotTipInClay::EQUATION,
    &thrust::PilotTipByStrength::EQUATION,
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
    &pull::ReamedBore::EQUATION,
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
    &silo_mean::MeanSiloStress::EQUATION,
    &soil::MeanRingPressure::EQUATION,
    &soil::ModifiedArching::EQUATION,
    &soil::FrictionOfPressure::EQUATION,
    &friction::OpenShieldFriction::EQUATION,
    &friction::ContactForce::EQUATION,
    &friction::ContactWidth::EQUATION,
    &friction::AdhesionOverWidth::EQUATION,
    &soil::MarstonLoad::EQUATION,
    &soil::BoreClosure::EQUATION,
    &stem::TubeStiffness::EQUATION,
    &stem::EulerBuckling::EQUATION,
    &stem::EmbeddedBuckling::EQUATION,
    &stem::BeddingInClay::EQUATION,
    &stem::BeddingInSand::EQUATION,
    &stem::OpenBoreBuckling::EQUATION,
    &stem::BucklingAllowed::EQUATION,
    &settlement::TroughWidth::EQUATION,
    &settlement::FaceLoss::EQUATION,
    &settlement::AnnulusLoss::EQUATION,
    &settlement::GreatestSettlement::EQUATION,
    &settlement::SettlementAtOffset::EQUATION,
    &settlement::SteepestTrough::EQUATION,
    &part_full::WettedAngle::EQUATION,
    &part_full::FlowArea::EQUATION,
    &part_full::HydraulicRadius::EQUATION,
    &part_full::FlowRatio::EQUATION,
    &part_full::DepthForFlow::EQUATION,
    &hydraulics::ManningVelocity::EQUATION,
    &hydraulics::SlopeForVelocity::EQUATION,
    &hydraulics::Flow::EQUATION,
    &hydraulics::DiameterForFlow::EQUATION,
    &hydraulics::TractiveStress::EQUATION,
    &undulation::PeakSlope::EQUATION,
    &undulation::LeastSlope::EQUATION,
    &undulation::SagDepth::EQUATION,
    &undulation::SagVolume::EQUATION,
    &face::StabilityNumber::EQUATION,
    &face::LeastSupport::EQUATION,
    &face::CriticalNumberSphere::EQUATION,
    &face::CriticalNumberCylinder::EQUATION,
    &face::FaceSafety::EQUATION,
    &pit_base::BearingFactorSkempton::EQUATION,
    &pit_base::BaseHeave::EQUATION,
    &pit_base::BaseHeaveTerzaghi::EQUATION,
    &pit_base::BaseUplift::EQUATION,
    &pit_base::CriticalGradient::EQUATION,
    &pit_base::SeepageSafety::EQUATION,
    &pit_base::PlugLength::EQUATION,
    &pit_base::PlugAgainstSliding::EQUATION,
    &inflow::EquivalentRadius::EQUATION,
    &inflow::InfluenceRadius::EQUATION,
    &inflow::InflowUnconfined::EQUATION,
    &room::PitSide::EQUATION,
    &room::LeastCover::EQUATION,
    &room::ClearDistance::EQUATION,
    &wall::ActiveCoefficient::EQUATION,
    &wall::PassiveCoefficient::EQUATION,
    &wall::PassivePressure::EQUATION,
    &wall::PassiveStrip::EQUATION,
    &wall::UndrainedStrip::EQUATION,
    &wall::EyeResistance::EQUATION,
    &wall::AllowableReaction::EQUATION,
    &wall_fit::StripCentroid::EQUATION,
    &wall_fit::ResultantDepth::EQUATION,
    &wall_fit::ThrustEccentricity::EQUATION,
    &wall_fit::PassiveMovement::EQUATION,
    &wall_fit::WidthForThrust::EQUATION,
    &earth_load::FloorColumn::EQUATION,
    &earth_load::FlooredLoad::EQUATION,
    &earth_load::PressureOnPipe::EQUATION,
    &earth_load::CrushingStrengthNeeded::EQUATION,
    &earth_load::StrengthOfClass::EQUATION,
    &stations::StationCount::EQUATION,
    &stations::StationDistance::EQUATION,
    &stations::StationStart::EQUATION,
    &stations::ThrustThroughTail::EQUATION,
    &gauge::GaugePressure::EQUATION,
    &pull_rules::GroundLoadPull::EQUATION,
    &pull_rules::LesserBore::EQUATION,
    &pull_limits::PvcPullStress::EQUATION,
    &pull_limits::FactorAtTemperature::EQUATION,
    &pull_limits::TensionBesideBend::EQUATION,
    &pull_limits::BendStrain::EQUATION,
    &pull_limits::PullStrain::EQUATION,
    &pull_limits::JointThrustRating::EQUATION,
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
    &ramp::RampDepth::EQUATION,
    &outside_pressure::NetOutsidePressure::EQUATION,
    &outside_pressure::SupportedCollapse::EQUATION,
    &outside_pressure::PressureOfBothTimes::EQUATION,
    &outside_pressure::BucklingInSoil::EQUATION,
    &outside_pressure::WaterBuoyancyFactor::EQUATION,
    &outside_pressure::ElasticSupportByDepth::EQUATION,
    &deflection::IowaDeflection::EQUATION,
    &deflection::BuoyantDeflection::EQUATION,
    &deflection::ScoredWall::EQUATION,
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
    &packer::RingArea::EQUATION,
    &packer::ResidualThickness::EQUATION,
    &packer::KernRadius::EQUATION,
    &turned_joint::StressRatioAtAngle::EQUATION,
    &turned_joint::AngleAtForce::EQUATION,
    &steering::JointAngleFromDeviation::EQUATION,
    &steering::JointAngleFromRadius::EQUATION,
    &steering::CurveRadius::EQUATION,
    &steering::JointAngleFromGap::EQUATION,
    &steering::GapAtJointAngle::EQUATION,
    &steering::LeastRadiusOfUndulation::EQUATION,
    &concrete::MeanEndStress::EQUATION,
    &concrete::MeanShareEndForce::EQUATION,
    &concrete::EdgeShareEndForce::EQUATION,
    &concrete::Asce27EndForce::EQUATION,
    &concrete::ChineseConcreteEndForce::EQUATION,
    &concrete::DesignOverCubeStrength::EQUATION,
    &concrete::AllowableMeanEndForce::EQUATION,
    &concrete::MeanAtTurnedJoint::EQUATION,
    &rigid::GrpEndForce::EQUATION,
    &rigid::ForceFromCapacity::EQUATION,
    &steel::ElasticLocalBuckling::EQUATION,
    &steel::LocalBuckling::EQUATION,
    &steel::SteelEndForce::EQUATION,
    &steel::ChineseSteelEndForce::EQUATION,
    &steel::EffectiveShare::EQUATION,
    &steel::CodeAxialForce::EQUATION,
    &column::RadiusOfGyration::EQUATION,
    &column::ElasticColumnStress::EQUATION,
    &column::ColumnStress::EQUATION,
    &column::CrushOrBuckle::EQUATION,
];
