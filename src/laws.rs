//! The published equations, one topic per file. They know no tables, files or drives.
//!
//! Each law is a struct with named public arguments; `.value()` evaluates it, so another tool can take one law and
//! nothing else. Its [`Law::EQUATION`] holds form, citation and range.

pub mod clay;
pub mod collapse;
pub mod column;
pub mod concrete;
pub mod packer;
pub mod pe;
pub mod pull;
pub mod rigid;
mod ring;
pub mod soil;
pub mod steel;
pub mod steering;
pub mod thrust;
pub mod turned_joint;

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
    &packer::RingArea::EQUATION,
    &packer::ResidualThickness::EQUATION,
    &packer::ContactDepth::EQUATION,
    &packer::StressRatio::EQUATION,
    &packer::ThinRingStressRatio::EQUATION,
    &packer::ForceOffset::EQUATION,
    &packer::KernRadius::EQUATION,
    &turned_joint::StressRatioAtAngle::EQUATION,
    &turned_joint::ForceAtAngle::EQUATION,
    &turned_joint::AngleAtForce::EQUATION,
    &turned_joint::ContactDepthAtForce::EQUATION,
    &turned_joint::GreatestStress::EQUATION,
    &steering::JointAngleFromDeviation::EQUATION,
    &steering::JointAngleFromOffset::EQUATION,
    &steering::JointAngleFromRadius::EQUATION,
    &steering::CurveRadius::EQUATION,
    &steering::JointAngleFromGap::EQUATION,
    &steering::GapAtJointAngle::EQUATION,
    &steering::PeakSlopeOfUndulation::EQUATION,
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
];
