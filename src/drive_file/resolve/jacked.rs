//! What jacked pipes of all materials share: section, end area, weight, stress ratio of the joint.

use super::listed::Listed;
use super::sizes::Known;
use super::{Resolved, Resolver};
use crate::drive::{AssumedValue, EndArea, RingKind};
use crate::drive_file::CandidateFile;
use crate::law::Law;
use crate::laws::packer::RingArea;
use crate::laws::pull::PipeWeight;
use crate::quantity::{Length, LineLoad, Measure, Ratio, Role};
use crate::source::Cited;
use crate::yaml::MayBe;

/// Share by which a given diameter may differ from that of the row and still be the same pipe: maker's tolerance.
pub(super) const SAME_PIPE: f64 = 0.01;
/// What is left of a wall that is all recess: next to nothing, so that it bears next to nothing.
const LEAST_LEFT: Ratio = Ratio { dimension: core::marker::PhantomData, units: core::marker::PhantomData, value: 0.01 };
/// Rounding of an area that is reckoned.
const ROUNDING: f64 = 1.0 + 1e-6;

/// True diameters of a barrel, and what the table says of a pipe of that diameter.
#[derive(Debug, Clone, Copy)]
pub(super) struct Barrel {
    pub(super) outside_diameter: Cited<Length>,
    pub(super) inside_diameter: Option<Length>,
    pub(super) known: Option<Known>,
    /// Row of its density.
    density: Option<&'static str>,
}

impl Resolver<'_> {
    /// True diameters: the user's, else those of the table; `None` where neither says the outside diameter. `bore` is
    /// the size where the trade names the pipe by its true bore: with it the wall alone tells the outside diameter.
    pub(super) fn barrel(
        &mut self,
        of: &Listed<'_>,
        bore: Option<Length>,
        known: Option<Known>,
        density: Option<&'static str>,
    ) -> Option<Barrel> {
        let outside = self.own(of, CandidateFile::outside_diameter);
        let inside = self.own(of, CandidateFile::inside_diameter).map(|inside| inside.value);
        let wall = self.own(of, CandidateFile::wall);
        let bore = bore.filter(|bore| outside.is_none_or(|outside| wall.is_none() && *bore < outside.value));
        let inside = inside.or(bore.filter(|_| outside.is_some() || wall.is_some()));
        let by_wall = inside.zip(wall).map(|(inside, wall)| wall.map(|wall| inside + 2.0 * wall));
        let outside_diameter = match outside.or(by_wall) {
            Some(told) => told,
            None => self.own_or(of, CandidateFile::outside_diameter, known?.outside_diameter()),
        };
        let outside = outside_diameter.value;
        let by_ratio = of.pipe.sdr.given().map(|ratio| outside / ratio);
        if wall.is_some() && by_ratio.is_some() {
            self.fault(of, CandidateFile::sdr, "give either the wall or the dimension ratio, not both");
        }
        let wall = wall.map(|wall| wall.value).or(by_ratio);
        if let Some(inside) = inside {
            if inside >= outside {
                self.fault(of, CandidateFile::inside_diameter, "is no less than the outside diameter");
            } else if wall.is_some_and(|wall| ((outside - inside) / 2.0 - wall).abs() > 0.05 * wall) {
                let message = "contradicts outside diameter and wall: give two of the three";
                self.fault(of, CandidateFile::inside_diameter, message);
            }
        } else if wall.is_some_and(|wall| 2.0 * wall >= outside) {
            self.fault(of, CandidateFile::wall, "leaves no bore inside the pipe");
        }
        // A row speaks for its own diameter only: another pipe of that name has another end and another weight.
        let known = known.filter(|known| (outside - known.outside).abs() <= known.outside * SAME_PIPE);
        let by_wall = wall.map(|wall| outside - 2.0 * wall);
        let inside_diameter = inside.or(by_wall).or(known.and_then(|known| known.inside));
        Some(Barrel { outside_diameter, inside_diameter, known, density })
    }

    /// End bearing area: the user's, the ring of a packer with both diameters, else the table's, else the least share of
    /// the section that is usual. The barrel is never taken for it.
    pub(super) fn end_area(
        &mut self,
        of: &Listed<'_>,
        barrel: &Barrel,
        recess: Option<&'static str>,
    ) -> Resolved<Option<EndArea>> {
        let ring = of.pipe.packer.as_ref().and_then(|packer| {
            let diameters = packer.outside_diameter.as_ref().zip(packer.inside_diameter.as_ref());
            diameters
                .map(|(outside, inside)| (outside.value, inside.value))
                .filter(|(outside, inside)| outside > inside)
        });
        let area_of = |(outside_diameter, inside_diameter)| RingArea { outside_diameter, inside_diameter }.value();
        if let Some(area) = self.own(of, CandidateFile::end_bearing_area) {
            let section = area_of((barrel.outside_diameter.value, barrel.inside_diameter.unwrap_or_default()));
            if area.value > section * ROUNDING {
                self.fault(of, CandidateFile::end_bearing_area, "is larger than the section of the pipe");
            } else if ring.is_some_and(|ring| area.value > area_of(ring) * ROUNDING) {
                let message = "is larger than the ring of the packer, which is what bears";
                self.fault(of, CandidateFile::end_bearing_area, message);
            }
            return Ok(Some(EndArea::Given(area)));
        }
        let path = of.at("end_bearing_area");
        // The table's area is less than the ring where a socket or an edge takes from it; of both the lesser counts.
        Ok(match (barrel.known.and_then(|known| known.end), ring) {
            (Some(end), _) => {
                if let EndArea::Rated { origin, .. } = end {
                    let word = "behind the printed ratings, net of the joint recess".to_owned();
                    self.assume(path, AssumedValue::Word(word), origin);
                }
                Some(end)
            }
            (None, Some((outside_diameter, inside_diameter))) => {
                Some(EndArea::Ring { outside_diameter, inside_diameter, kind: RingKind::Packer })
            }
            (None, None) => {
                if let Some(recess) = recess {
                    return Ok(Some(self.usual_end_area(path, barrel, recess)?));
                }
                let advice = "add `end_bearing_area: ...` from the pipe maker, both diameters of the packer, or the \
                              maker's `rated_force`; the barrel area is much larger";
                self.lacks(&of.pipe.size, &path, "the end bearing area is missing", advice);
                None
            }
        })
    }

    /// What the joint of any pipe leaves of its section: a share, and of a thin wall what a recess leaves.
    fn usual_end_area(&mut self, path: String, barrel: &Barrel, recess: &'static str) -> Resolved<EndArea> {
        let outside_diameter = barrel.outside_diameter.value;
        let inside_diameter = barrel.inside_diameter.unwrap_or_default();
        let section = RingArea { outside_diameter, inside_diameter }.value();
        let recess = self.handbook.length(recess)?;
        let left = Ratio::from(1.0) - recess.value / ((outside_diameter - inside_diameter) / 2.0);
        let usual = self.handbook.ratio("end.net_share")?;
        let share = if left < usual.value { recess.map(|_| left.max(LEAST_LEFT)) } else { usual };
        let area = share.map(|share| share * section);
        self.assume_one(path, area, Role::Area);
        let most = self.handbook.ratio("end.net_share_most")?.value / usual.value;
        Ok(EndArea::Usual { area, most: most * area.value })
    }

    /// The user's weight, else the table's, else by density where the wall is known.
    pub(super) fn jacked_weight(&mut self, of: &Listed<'_>, barrel: &Barrel) -> Resolved<Option<Cited<LineLoad>>> {
        if let Some(weight) = self.own(of, CandidateFile::weight) {
            return Ok(Some(weight));
        }
        let weight = match (barrel.known.and_then(|known| known.weight), barrel.density, barrel.inside_diameter) {
            (Some(table), ..) => table,
            (None, Some(key), Some(inside)) => {
                let Cited { value: density, origin } = self.density(key)?;
                let outside_diameter = barrel.outside_diameter.value;
                let wall = (outside_diameter - inside) / 2.0;
                let weight = PipeWeight { outside_diameter, wall, density, average_wall: Ratio::from_si(1.0) };
                Cited::new(weight.value(), origin)
            }
            _ => return Ok(None),
        };
        Ok(Some(self.own_or(of, CandidateFile::weight, weight)))
    }

    /// Mean over greatest stress as the file tells it: without a packer no more than that of a joint that is just closed.
    pub(super) fn joint_ratio(&mut self, of: &Listed<'_>) -> Resolved<Option<Cited<Ratio>>> {
        let closed = self.handbook.ratio("clay.joint_ratio")?;
        if of.pipe.packer.is_some() {
            self.fault(of, CandidateFile::joint_stress_ratio, "follows from the packer: give one of the two");
            return Ok(None);
        }
        if of.pipe.joint_stress_ratio.is_none() {
            return Ok(None);
        }
        Ok(Some(self.ratio_or(of, CandidateFile::joint_stress_ratio, (0.01, closed.value.si()), closed)))
    }
}
