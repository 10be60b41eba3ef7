//! What the end of a jacked pipe bears, by the scheme of its material. Factors of two schemes are never put together;
//! the pipe maker's force is a limit beside ours.

use super::joint::{self, Bearing, Stiffness, Turned};
use super::steel;
use crate::drive::{Capacity, ConcreteEnd, ConcreteScheme, EndArea, JackedPipe, Joint, Packer, PackerModulus};
use crate::law::{Calc, Doubted};
use crate::laws::clay::{ConcentricEndForce, EdgeEndForce, EndAreaFromRating};
use crate::laws::concrete::{
    AllowableMeanEndForce, Asce27EndForce, ChineseConcreteEndForce, EdgeShareEndForce, MeanAtTurnedJoint,
    MeanShareEndForce,
};
use crate::laws::packer::RingArea;
use crate::laws::rigid::{ForceFromCapacity, GrpEndForce};
use crate::quantity::{Angle, Area, Force, Measure, Pressure, Ratio};
use crate::source::{Cited, Origin};

/// Mean over greatest stress of a joint that is just closed: plane geometry.
const CLOSED: f64 = 0.5;

/// What the end bears, by level, and how far past it a high force may go.
#[derive(Debug, Clone, Copy)]
pub(super) struct EndLimits {
    /// At the likely angle.
    pub(super) likely: Cited<Force>,
    /// At the high one.
    pub(super) high: Cited<Force>,
    /// The same with the joint closed: what the best packer and the best line would leave.
    pub(super) closed: Cited<Force>,
    /// At the high angle by the other published scheme, where the file leaves open by which it is judged.
    pub(super) published: Option<Cited<Force>>,
    /// At the high angle and with the joint closed, with what the file leaves open of the end at its best: the best
    /// certificate, the usual grade, or the most end area.
    pub(super) untold: Option<[Cited<Force>; 2]>,
    /// At the high angle, with a packer that nobody has tested at its stiff end; none where the packer decides nothing.
    pub(super) stiff: Option<Force>,
    /// The most that may be ordered: with the joint closed, at the high angle where the line turns it further than pipe is usually
    /// jacked, of the most end area and the best published scheme that the file leaves open.
    pub(super) most: Cited<Force>,
    /// The force that leaves a share on the strength at the edge, with such a packer at its stiff end.
    pub(super) left: Option<Force>,
    /// The factor between the strength of a brittle end and the limit: that of the law that governs.
    pub(super) factor: Option<Origin>,
    /// Whether another scheme of its material is tighter than the one asked for.
    pub(super) tighter: bool,
    /// Whether the maker's force is the limit.
    pub(super) by_maker: bool,
    /// Whether it is more than ours.
    pub(super) over_ours: bool,
}

/// The maker's limit, or the lesser of it and ours where the joints turn further than is usual. `left` is what is to be left
/// on the strength at the edge.
pub(super) fn end_limits(
    calc: &mut Calc,
    jacked: &JackedPipe,
    turned: Doubted<Turned>,
    left: Ratio,
) -> Doubted<EndLimits> {
    calc.part("end capacity of the pipe");
    // Doubt in a scheme that was not asked for is no doubt in the limit.
    let default = calc.doubted(|calc| match &jacked.capacity {
        Capacity::Concrete(end) if end.scheme != ConcreteScheme::Default => {
            let angle = turned.in_spite_of_doubt().high.value;
            let bearing = Some(Bearing { angle, stiffness: Stiffness::Middle });
            Some(concrete(calc, jacked, end, ConcreteScheme::Default, bearing)?.value)
        }
        Capacity::Steel(end) => steel::default_beside(calc, end),
        _ => None,
    });
    let limits = calc.doubted(|calc| {
        let turned = calc.take(turned);
        let rated = jacked.rated_force.map(|rated| {
            let factor = Ratio::from_si(1.0);
            rated.map(|capacity| calc.law(ForceFromCapacity { capacity, factor }))
        });
        // At the angles that pipe is usually jacked at its maker's word goes before ours; beyond, the lesser counts.
        let holds = turned.line <= jacked.joint.steering.screen.value;
        let is_more = |own: Own| rated.zip(own).is_some_and(|(rated, own)| rated.value >= own.0.value);
        let governs = |own: Own| rated.filter(|_| holds || !is_more(own));
        let lesser = |own: Own| {
            // That neither is told is refused at the door.
            let nothing = (Cited::new(Force::default(), jacked.joint.steering.least.origin), None);
            governs(own).map_or_else(|| own.unwrap_or(nothing), |rated| (rated, None))
        };
        let capacity = &jacked.capacity;
        let at = |angle| {
            move |calc: &mut Calc, stiffness| own_limit(calc, jacked, capacity, Some(Bearing { angle, stiffness }))
        };
        let closed = lesser(own_limit(calc, jacked, capacity, None)).0;
        let likely = lesser(middle(calc, jacked, at(turned.likely))).0;
        let high = middle(calc, jacked, at(turned.high.value));
        let untested = matches!(
            jacked.joint,
            Joint { stress_ratio: None, packer: Some(Packer { modulus: PackerModulus::Assumed { .. }, .. }), .. }
        );
        let (stiff, left) = if untested {
            let stiff = at(turned.high.value)(calc, Stiffness::Stiff).map(|stiff| stiff.0.value);
            (stiff, edge_left(calc, jacked, turned.high.value, left))
        } else {
            (None, None)
        };
        let by_strength = of_best_strength(capacity).map(|best| {
            let calc = &mut Calc::silent();
            let bearing = |stiffness| Some(Bearing { angle: turned.high.value, stiffness });
            let high = middle(calc, jacked, |calc, stiffness| own_limit(calc, jacked, &best, bearing(stiffness)));
            [high, own_limit(calc, jacked, &best, None)].map(|own| lesser(own).0)
        });
        let published = published(jacked, turned.high.value).map(|own| lesser(Some((own, None))).0);
        let at_most = |more| [lesser(high).0, closed].map(|limit| limit.map(|force| force * more));
        let untold = by_strength.or(untold(jacked).map(at_most));
        let by_maker = governs(high).is_some();
        let over_ours = by_maker && is_more(high);
        let (high, factor) = lesser(high);
        let by_area = area_untold(jacked).unwrap_or(Ratio::from(1.0));
        let by_scheme = published.map_or(high.value, |published| published.value.max(high.value));
        let at_joint = if holds { by_scheme.max(closed.value * PRINTED) } else { by_scheme };
        let most = high.map(|_| at_joint * by_area);
        EndLimits {
            likely,
            high,
            closed,
            published,
            untold,
            stiff,
            most,
            left,
            factor,
            tighter: false,
            by_maker,
            over_ours,
        }
    });
    limits.map(|limits| {
        let tighter = default.in_spite_of_doubt().is_some_and(|default| default < limits.high.value);
        EndLimits { tighter, ..limits }
    })
}

/// What makers print over a closed joint of the most end area: our judgement, by some 8.5 N/mm2 on the section of a pipe of 50, as
/// sheets and standards of three countries have it.
const PRINTED: f64 = 0.8;

/// A limit, and the factor in it.
type Own = Option<(Cited<Force>, Option<Origin>)>;

/// Our limit with the packer in the middle of what boards are: where the mean stress that it allows is high, a packer is
/// pressed harder and is stiffer.
fn middle(calc: &mut Calc, jacked: &JackedPipe, at: impl Fn(&mut Calc, Stiffness) -> Own) -> Own {
    let usual = at(calc, Stiffness::Middle)?;
    let Some(Packer { modulus: PackerModulus::Assumed { pressed_from, .. }, .. }) = jacked.joint.packer else {
        return Some(usual);
    };
    let pressed = at(calc, Stiffness::Pressed)?;
    // A pipe that bears more is never taken to bear less for it.
    let from = end_area(calc, jacked)? * pressed_from;
    Some(if usual.0.value <= from {
        usual
    } else {
        (usual.0.map(|force| force.min(pressed.0.value.max(from))), pressed.1)
    })
}

/// What a concrete end bears by the less cautious of the published schemes that go by its strength alone, where none is
/// chosen and the other is taken.
fn published(jacked: &JackedPipe, angle: Angle) -> Option<Cited<Force>> {
    let Capacity::Concrete(end @ ConcreteEnd { scheme_told: false, .. }) = &jacked.capacity else { return None };
    let limit = |calc: &mut Calc, stiffness| {
        Some((concrete(calc, jacked, end, ConcreteScheme::Asce27, Some(Bearing { angle, stiffness }))?, None))
    };
    middle(&mut Calc::silent(), jacked, limit).map(|(force, _)| force)
}

/// The force that leaves a share on the strength at the edge, at the stiff end of what packers are.
fn edge_left(calc: &mut Calc, jacked: &JackedPipe, angle: Angle, left: Ratio) -> Option<Force> {
    let strength = match &jacked.capacity {
        Capacity::Brittle { strength, .. } => strength.value,
        Capacity::Concrete(end) => end.strength.value,
        Capacity::Grp { axial_strength, .. } => axial_strength.value,
        Capacity::Steel(_) | Capacity::Rated => return None,
    };
    let end_bearing_area = end_area(calc, jacked)?;
    let bearing = Some(Bearing { angle, stiffness: Stiffness::Stiff });
    let stress_ratio = joint::stress_ratio(calc, jacked, end_bearing_area, bearing, strength / left);
    Some(calc.law(EdgeEndForce { stress_ratio, end_bearing_area, strength, factor: left }))
}

/// The most end area over the least, where the file names none.
fn area_untold(jacked: &JackedPipe) -> Option<Ratio> {
    match jacked.end_area {
        EndArea::Usual { area, most } => Some(most / area.value),
        _ => None,
    }
}

/// What the most end area and the most strength of concrete that are usual bear over the least, where the file names neither.
fn untold(jacked: &JackedPipe) -> Option<Ratio> {
    let area = area_untold(jacked);
    let strength = match &jacked.capacity {
        Capacity::Concrete(end) => end.most_strength.map(|most| most / end.strength.value),
        _ => None,
    };
    let one = Ratio::from(1.0);
    (area.is_some() || strength.is_some()).then(|| area.unwrap_or(one) * strength.unwrap_or(one))
}

/// An end by the best certificate or the usual grade, where the file names none.
fn of_best_strength(capacity: &Capacity) -> Option<Capacity> {
    match *capacity {
        Capacity::Brittle { certified: Some(strength), factor, edge_factor, .. } => {
            Some(Capacity::Brittle { strength, certified: None, factor, edge_factor })
        }
        Capacity::Steel(end) => steel::at_best(&end).map(Capacity::Steel),
        _ => None,
    }
}

/// Our limit, and the factor in it where the limit itself cites the strength; of a closed joint where no bearing is told.
fn own_limit(calc: &mut Calc, jacked: &JackedPipe, capacity: &Capacity, bearing: Option<Bearing>) -> Own {
    let limit = match capacity {
        Capacity::Brittle { strength, factor, edge_factor, .. } => {
            let end_bearing_area = end_area(calc, jacked)?;
            let greatest = strength.value / edge_factor.value;
            let stress_ratio = joint::stress_ratio(calc, jacked, end_bearing_area, bearing, greatest);
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
        Capacity::Concrete(end) => concrete(calc, jacked, end, end.scheme, bearing)?,
        Capacity::Steel(end) => steel::limit(calc, end),
        Capacity::Grp { axial_strength, material_factor, greatest_ratio } => {
            let end_bearing_area = end_area(calc, jacked)?;
            let greatest = axial_strength.value / material_factor.value;
            let stress_ratio = joint::stress_ratio(calc, jacked, end_bearing_area, bearing, greatest);
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
pub(super) fn concrete(
    calc: &mut Calc,
    jacked: &JackedPipe,
    end: &ConcreteEnd,
    scheme: ConcreteScheme,
    bearing: Option<Bearing>,
) -> Option<Cited<Force>> {
    let end_bearing_area = end_area(calc, jacked)?;
    let strength = end.strength.value;
    let greatest = concrete_edge(end, scheme)?;
    let stress_ratio = joint::stress_ratio(calc, jacked, end_bearing_area, bearing, greatest);
    // A joint that is just closed is the most that a scheme with the triangle in it counts.
    let closed = stress_ratio.min(Ratio::from_si(CLOSED));
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
pub(super) fn edge_stress(jacked: &JackedPipe) -> Option<Pressure> {
    match &jacked.capacity {
        Capacity::Brittle { strength, edge_factor, .. } => Some(strength.value / edge_factor.value),
        Capacity::Concrete(end) => concrete_edge(end, end.scheme),
        Capacity::Grp { axial_strength, material_factor, .. } => Some(axial_strength.value / material_factor.value),
        Capacity::Steel(_) | Capacity::Rated => None,
    }
}

/// The area that bears; `None` where the joint alone sets the force.
pub(super) fn end_area(calc: &mut Calc, jacked: &JackedPipe) -> Option<Area> {
    let area = match jacked.end_area {
        EndArea::Given(area) | EndArea::Usual { area, .. } => area.value,
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
        Some(Packer { outside_diameter: Some(outside_diameter), inside_diameter: Some(inside_diameter), .. }) => {
            area.min(calc.law(RingArea { outside_diameter, inside_diameter }))
        }
        _ => area,
    })
}
