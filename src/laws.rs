//! The published equations, one topic per file. They know no tables, files or drives.
//!
//! Each law is a struct with named public arguments; `.value()` evaluates it, so another tool can take one law and
//! nothing else. Its [`Law::EQUATION`] holds form, citation and range.

pub mod clay;
pub mod collapse;
pub mod earth_load;
pub mod face;
pub mod friction;
pub mod hydraulics;
pub mod inflow;
pub mod part_full;
pub mod pe;
pub mod pit_base;
pub mod pull;
pub mod room;
pub mod settlement;
pub mod soil;
pub mod stations;
pub mod stem;
pub mod thrust;
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
    &thrust::SlurryFace::EQUATION,
    &thrust::CuttingEdge::EQUATION,
    &thrust::OpenShieldFace::EQUATION,
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
    &stem::OpenBoreBuckling::EQUATION,
    &stem::BucklingAllowed::EQUATION,
    &settlement::TroughWidth::EQUATION,
    &settlement::TroughWidthFit::EQUATION,
    &settlement::TroughWidthMair::EQUATION,
    &settlement::FaceLoss::EQUATION,
    &settlement::AnnulusLoss::EQUATION,
    &settlement::GreatestSettlement::EQUATION,
    &settlement::SettlementAtOffset::EQUATION,
    &settlement::SteepestTrough::EQUATION,
    &part_full::WettedAngle::EQUATION,
    &part_full::FlowArea::EQUATION,
    &part_full::WettedPerimeter::EQUATION,
    &part_full::HydraulicRadius::EQUATION,
    &part_full::VelocityRatio::EQUATION,
    &part_full::FlowRatio::EQUATION,
    &part_full::DepthForFlow::EQUATION,
    &hydraulics::ManningVelocity::EQUATION,
    &hydraulics::SlopeForVelocity::EQUATION,
    &hydraulics::Flow::EQUATION,
    &hydraulics::TractiveStress::EQUATION,
    &hydraulics::SlopeForTractiveStress::EQUATION,
    &hydraulics::SlopeBySize::EQUATION,
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
    &pit_base::PlugThickness::EQUATION,
    &pit_base::CriticalGradient::EQUATION,
    &pit_base::SeepageSafety::EQUATION,
    &pit_base::PlugLength::EQUATION,
    &inflow::EquivalentRadius::EQUATION,
    &inflow::InfluenceRadius::EQUATION,
    &inflow::InflowUnconfined::EQUATION,
    &inflow::InflowConfined::EQUATION,
    &room::PitSide::EQUATION,
    &room::LeastCover::EQUATION,
    &room::ClearDistance::EQUATION,
    &room::LaydownLength::EQUATION,
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
    &wall_fit::WallEdgePressure::EQUATION,
    &wall_fit::PassiveMovement::EQUATION,
    &wall_fit::WidthForThrust::EQUATION,
    &wall_fit::HeightForThrust::EQUATION,
    &earth_load::FloorColumn::EQUATION,
    &earth_load::FlooredLoad::EQUATION,
    &earth_load::PressureOnPipe::EQUATION,
    &earth_load::SurfaceLoadShare::EQUATION,
    &earth_load::WheelLoadOnPipe::EQUATION,
    &earth_load::WheelAside::EQUATION,
    &earth_load::CrushingStrengthNeeded::EQUATION,
    &earth_load::StrengthOfClass::EQUATION,
    &earth_load::ClassNeeded::EQUATION,
    &stations::SectionLength::EQUATION,
    &stations::StationCount::EQUATION,
    &stations::StationDistance::EQUATION,
    &stations::StationStart::EQUATION,
    &stations::ThrustThroughTail::EQUATION,
];
