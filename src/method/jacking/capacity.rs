//! What the end of a jacked pipe bears, by the scheme of its material. Factors of two schemes are never put together;
//! the pipe maker's force is a limit beside ours.

use super::joint;
use super::steel;
use crate::drive::{Capacity, ConcreteEnd, ConcreteScheme, EndArea, JackedPipe, Packer};
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::clay::{ConcentricEndForce, EdgeEndForce, EndAreaFromRating};
use crate::laws::concrete::{
    AllowableMeanEndForce, Asce27EndForce, ChineseConcreteEndForce, EdgeShareEndForce, MeanAtTurnedJoint,
    MeanShareEndForce,
};
use crate::laws::packer::RingArea;
use crate::laws::rigid::{ForceFromCapacity, GrpEndForce};
use crate::quantity::{Angle, Area, Force, Measure, Pressure, Ratio};
use crate::source::{Cited, Origin};

/// What the end bears, and whether another scheme of its material is tighter than the one asked for.
#[derive(Debug, Clone, Copy)]
pub(super) struct EndLimit {
    pub(super) force: Cited<Force>,
    /// The factor between the strength of a brittle end and this limit: that of the law that governs.
    pub(super) factor: Option<Origin>,
    pub(super) tighter: bool,
}

/// The lesser of our limit and the maker's.
pub(super) fn end_limit<R: Recorder>(
    calc: &mut Calc<R>,
    jacked: &JackedPipe,
    angle: Doubted<Option<Angle>>,
) -> Doubted<EndLimit> {
    calc.part("end capacity of the pipe");
    // Doubt in a scheme that was not asked for is no doubt in the limit.
    let default = calc.doubted(|calc| match &jacked.capacity {
        Capacity::Concrete(end) if end.scheme != ConcreteScheme::Default => {
            Some(concrete(calc, jacked, end, ConcreteScheme::Default, angle.in_spite_of_doubt())?.value)
        }
        Capacity::Steel(end) => steel::default_beside(calc, end),
        _ => None,
    });
    calc.doubted(|calc| {
        let angle = calc.take(angle);
        let own = own_limit(calc, jacked, angle);
        let rated = jacked.rated_force.map(|rated| {
            let factor = Ratio::from_si(1.0);
            rated.map(|capacity| calc.law(ForceFromCapacity { capacity, factor }))
        });
        let (force, factor) = match (own, rated) {
            (Some(own), Some(rated)) if !(rated.value < own.0.value) => own,
            (_, Some(rated)) => (rated, None),
            (Some(own), None) => own,
            // Refused at the door.
            (None, None) => (Cited::new(Force::default(), jacked.joint.stress_ratio.origin), None),
        };
        EndLimit { force, factor, tighter: default.in_spite_of_doubt().is_some_and(|default| default < force.value) }
    })
}

/// Our limit, and the factor in it where the limit itself cites the strength.
fn own_limit<R: Recorder>(
    calc: &mut Calc<R>,
    jacked: &JackedPipe,
    angle: Option<Angle>,
) -> Option<(Cited<Force>, Option<Origin>)> {
    let limit = match &jacked.capacity {
        Capacity::Brittle { strength, factor, edge_factor } => {
            let end_bearing_area = end_area(calc, jacked)?;
            let greatest = strength.value / edge_factor.value;
            let stress_ratio = joint::stress_ratio(calc, jacked, angle, greatest);
            let concentric =
                calc.law(ConcentricEndForce { end_bearing_area, strength: strength.value, factor: factor.value });
            let edge = calc.law(EdgeEndForce {
                stress_ratio,
                end_bearing_area,
                strength: strength.value,
                factor: edge_factor.value,
            });
            let by = if edge < concentric { edge_factor.origin } else { factor.origin };
            return Some((Cited::new(concentric.min(edge), strength.origin), Some(by)));
        }
        Capacity::Concrete(end) => concrete(calc, jacked, end, end.scheme, angle)?,
        Capacity::Steel(end) => steel::limit(calc, end),
        Capacity::Grp { axial_strength, material_factor, greatest_ratio } => {
            let end_bearing_area = end_area(calc, jacked)?;
            let greatest = axial_strength.value / material_factor.value;
            let stress_ratio = joint::stress_ratio(calc, jacked, angle, greatest);
            let force = calc.law(GrpEndForce {
                greatest_ratio: *greatest_ratio,
                stress_ratio,
                end_bearing_area,
                axial_strength: axial_strength.value,
                material_factor: material_factor.value,
            });
            Cited::new(force, material_factor.origin)
        }
        Capacity::Rated => return None,
    };
    Some((limit, None))
}

/// A concrete end by one scheme; `None` where its strength is not known.
pub(super) fn concrete<R: Recorder>(
    calc: &mut Calc<R>,
    jacked: &JackedPipe,
    end: &ConcreteEnd,
    scheme: ConcreteScheme,
    angle: Option<Angle>,
) -> Option<Cited<Force>> {
    let end_bearing_area = end_area(calc, jacked)?;
    let strength = end.strength.value;
    let greatest = concrete_edge(end, scheme)?;
    let stress_ratio = joint::stress_ratio(calc, jacked, angle, greatest);
    // A joint that is just closed is the most that a scheme with the triangle in it counts.
    let closed = stress_ratio.min(jacked.joint.stress_ratio.value);
    Some(match scheme {
        ConcreteScheme::Default => {
            let by_mean =
                calc.law(MeanShareEndForce { mean_share: end.shares.mean_share.value, end_bearing_area, strength });
            let edge_share = end.shares.edge_share.value;
            let by_edge = calc.law(EdgeShareEndForce { stress_ratio, edge_share, end_bearing_area, strength });
            let origin = if by_edge < by_mean { end.shares.edge_share.origin } else { end.shares.mean_share.origin };
            Cited::new(by_mean.min(by_edge), origin)
        }
        ConcreteScheme::En1916 => end.shares.en_edge.map(|edge_share| {
            calc.law(EdgeShareEndForce { stress_ratio: closed, edge_share, end_bearing_area, strength })
        }),
        ConcreteScheme::Asce27 => {
            let asce = end.asce;
            // The eccentric case has the triangle of a closed joint; a gaping one has less.
            let eccentric_share = asce.eccentric.min(stress_ratio);
            asce.block.map(|stress_block| {
                calc.law(Asce27EndForce {
                    eccentric_share,
                    stress_block,
                    phi: asce.phi,
                    load_factor: asce.load,
                    strength,
                    end_bearing_area,
                })
            })
        }
        ConcreteScheme::Annex => {
            let annex = end.annex;
            end.design_strength?.map(|design_strength| {
                calc.law(ChineseConcreteEndForce {
                    eccentric_load: annex.eccentric.min(stress_ratio),
                    strength_reduction: annex.phi1,
                    eccentric_enhancement: annex.phi2,
                    brittleness: annex.phi3,
                    strength_adjustment: annex.phi5,
                    partial_factor: annex.gamma,
                    design_strength,
                    least_end_area: end_bearing_area,
                })
            })
        }
        ConcreteScheme::Jswas => {
            let jswas = end.jswas?;
            let mean = match jswas.peak {
                Some(allowable_peak) => {
                    let allowable_mean = jswas.mean.value;
                    calc.law(MeanAtTurnedJoint { allowable_mean, allowable_peak, stress_ratio })
                }
                None => jswas.mean.value,
            };
            jswas.mean.map(|_| calc.law(AllowableMeanEndForce { end_bearing_area, allowable_mean: mean }))
        }
    })
}

/// Stress that a scheme allows at the edge of the joint.
fn concrete_edge(end: &ConcreteEnd, scheme: ConcreteScheme) -> Option<Pressure> {
    let strength = end.strength.value;
    Some(match scheme {
        ConcreteScheme::Default => end.shares.edge_share.value * strength,
        ConcreteScheme::En1916 => end.shares.en_edge.value * strength,
        ConcreteScheme::Asce27 => end.asce.block.value * end.asce.phi * strength / end.asce.load,
        ConcreteScheme::Annex => {
            let annex = end.annex;
            annex.phi1 * annex.phi2 * annex.phi3 * end.design_strength?.value / (annex.gamma * annex.phi5)
        }
        ConcreteScheme::Jswas => {
            let jswas = end.jswas?;
            jswas.peak.unwrap_or(jswas.mean.value)
        }
    })
}

/// Stress that is allowed at the edge of the joint, by the scheme that counts; `None` where no joint is looked at.
pub(super) fn edge_stress(jacked: &JackedPipe) -> Option<Cited<Pressure>> {
    match &jacked.capacity {
        Capacity::Brittle { strength, edge_factor, .. } => Some(edge_factor.map(|factor| strength.value / factor)),
        Capacity::Concrete(end) => concrete_edge(end, end.scheme).map(|edge| Cited::new(edge, scheme_origin(end))),
        Capacity::Grp { axial_strength, material_factor, .. } => {
            Some(material_factor.map(|factor| axial_strength.value / factor))
        }
        Capacity::Steel(_) | Capacity::Rated => None,
    }
}

fn scheme_origin(end: &ConcreteEnd) -> Origin {
    match end.scheme {
        ConcreteScheme::Default => end.shares.edge_share.origin,
        ConcreteScheme::En1916 => end.shares.en_edge.origin,
        ConcreteScheme::Asce27 => end.asce.block.origin,
        ConcreteScheme::Annex => end.design_strength.unwrap_or(end.strength).origin,
        ConcreteScheme::Jswas => end.jswas.map_or(end.shares.edge_share.origin, |jswas| jswas.mean.origin),
    }
}

/// The area that bears; `None` where the joint alone sets the force.
pub(super) fn end_area<R: Recorder>(calc: &mut Calc<R>, jacked: &JackedPipe) -> Option<Area> {
    let area = match jacked.end_area {
        EndArea::Given(area) => area.value,
        EndArea::Rated { ratings, strength, .. } => {
            let [a, b, c] = ratings.map(|(rating, factor)| calc.law(EndAreaFromRating { rating, factor, strength }));
            a.min(b).min(c)
        }
        EndArea::Ring { outside_diameter, inside_diameter, .. } => {
            calc.law(RingArea { outside_diameter, inside_diameter })
        }
        EndArea::Unknown => return None,
    };
    // What a packer does not press bears nothing.
    Some(match jacked.joint.packer {
        Some(Packer { outside_diameter, inside_diameter, .. }) => {
            area.min(calc.law(RingArea { outside_diameter, inside_diameter }))
        }
        None => area,
    })
}
