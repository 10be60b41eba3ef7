//! The published equations, one topic per file. They know no tables, files or drives.
//!
//! Each law is a struct with named public arguments; `.value()` evaluates it, so another tool can take one law and
//! nothing else. Its [`Law::EQUATION`] holds form, citation and range.

pub mod clay;
pub mod collapse;
pub mod earth_load;
pub mod pe;
pub mod pull;
pub mod soil;
pub mod stations;
pub mod thrust;
pub mod wall;
pub mod wall_fit;

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
