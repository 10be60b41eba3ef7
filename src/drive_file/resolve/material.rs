//! A pipe by the row of its material: the stages of one that is pushed and of one that is pulled are the same for all.

use super::jacked::Barrel;
use super::label::as_given;
use super::listed::Listed;
use super::row::{Applies, Bears, END_TOLD, End, Named, Pulled, Pushed, STRENGTHS, Section, keys};
use super::steering::Ends;
use super::{Resolved, Resolver, iron, pe, pvc, rigid, sizes, steel};
use crate::drive::{Capacity, EndArea, JackedPipe, NotGiven, RingKind};
use crate::drive_file::limits::mm;
use crate::drive_file::{CandidateFile, Material, PackerFile};
use crate::handbook::Family;
use crate::law::Law;
use crate::laws::packer::RingArea;
use crate::quantity::{Force, Measure, Role};
use crate::source::Cited;
use crate::yaml::{Complaint, MayBe};

/// Casings up to this diameter have the walls of the trade: 324 mm and less, in m.
const SMALL_CASING: f64 = mm(330.0);

/// The rows of a material: to be pushed, and to be pulled.
const fn rows(material: Material) -> (Option<&'static Pushed>, Option<&'static Pulled>) {
    match material {
        Material::Clay => (Some(&rigid::CLAY), None),
        Material::Concrete => (Some(&rigid::CONCRETE), None),
        Material::Grp => (Some(&rigid::GRP), None),
        Material::PolymerConcrete => (Some(&rigid::POLYMER_CONCRETE), None),
        Material::Pvc => (Some(&pvc::JACKED), None),
        Material::FibreCement => (Some(&rigid::FIBRE_CEMENT), None),
        Material::Steel => (Some(&steel::JACKED), Some(&steel::PULLED)),
        Material::DuctileIron => (Some(&iron::JACKED), Some(&iron::PULLED)),
        Material::PvcFused => (None, Some(&pvc::FUSED)),
        Material::PvcRestrained => (None, Some(&pvc::RESTRAINED)),
        Material::Pe100 | Material::Pe80 | Material::Pe4710 | Material::Hdpe | Material::Mdpe => (None, Some(&pe::PE)),
    }
}

/// Whether pipe of the material may be pulled in.
pub(super) const fn can_be_pulled(material: Material) -> bool {
    rows(material).1.is_some()
}

impl Resolver<'_> {
    /// The pipe by the rows of its material, in the ways that what is given of it allows.
    pub(super) fn named(&mut self, of: &Listed<'_>) -> Resolved<Option<Named>> {
        let (pushed, pulled) = match rows(of.pipe.material.value) {
            (Some(pushed), Some(pulled)) => {
                let (is_pushed, is_pulled) = match of.pipe.material.value {
                    Material::Steel => self.ways_of_steel(of),
                    _ => self.ways_of_iron(of),
                };
                (is_pushed.then_some(pushed), is_pulled.then_some(pulled))
            }
            one_way => one_way,
        };
        let ways = pushed.iter().map(|row| &row.applies);
        let ways: Vec<&Applies> = pulled.iter().map(|row| &row.applies).chain(ways).collect();
        self.refuse_foreign(of, &ways);
        let flaws = self.flaws.len();
        let drawn = match pulled {
            Some(row) => self.drawn(row, of)?,
            None => None,
        };
        // A fault is told once.
        let Some(row) = pushed.filter(|_| self.flaws.len() == flaws) else { return Ok(drawn) };
        let Some(shoved) = self.shoved(row, of)? else { return Ok(None) };
        Ok(Some(match drawn {
            Some(drawn) => Named { jacked: shoved.jacked, ..drawn },
            None => shoved,
        }))
    }

    /// Iron: pushed where its maker rates it for thrust, pulled where its joints hold pull. A proposed pipe is looked at
    /// both ways: what is missing is the maker's to say.
    fn ways_of_iron(&self, of: &Listed<'_>) -> (bool, bool) {
        let (proposed, is_pulled) = (self.proposing, self.file.pull.is_some());
        let holds = of.pipe.joint_pull.is_some() || of.pipe.joint_pressure.is_some() || proposed && is_pulled;
        let rated = of.pipe.rated_force.is_some() || proposed;
        if rated || holds { (rated, holds) } else { (!is_pulled, is_pulled) }
    }

    /// Steel: pushed, and pulled too where the file says how; only one of the two where a field is for that one alone.
    fn ways_of_steel(&self, of: &Listed<'_>) -> (bool, bool) {
        const PUSHES: super::Keys =
            keys![casing, factor, scheme, design_strength, rated_force, free_length, inside_diameter];
        const PULLS: super::Keys = keys![ovality, passes, joint_diameter];
        let (pushed, for_a_pull) = (of.gives(PUSHES), of.gives(PULLS));
        if self.file.pull.is_none() || pushed {
            return (true, false);
        }
        // The guide's wall of a pulled pipe is none for jacking.
        (!for_a_pull && (of.pipe.wall.is_some() || self.proposing), true)
    }

    /// A pipe to be pushed.
    fn shoved(&mut self, row: &Pushed, of: &Listed<'_>) -> Resolved<Option<Named>> {
        let known = (row.sizes)(self)?;
        let bore = row.by_bore.then_some(of.size);
        let Some(barrel) = self.barrel(of, bore, sizes::of_size(&known, of.size), row.density) else {
            let texts = sizes::rising_texts(&known);
            if texts.is_empty() {
                let what = format!("the diameters of {} of", row.noun);
                self.no_such_size(of, [&what, "are its maker's: no table has them"], row.other_size.to_owned());
            } else {
                let advice = format!("there are {texts}; {}", row.other_size);
                self.no_such_size(of, [&format!("no {} of", row.noun), "in the table"], advice);
            }
            return Ok(None);
        };
        let rated_force = self.rated_force(row, of, &barrel)?;
        let by_ring = rated_force.is_some_and(|rated| !rated.is_given());
        let open = self.is_by_its_maker(row, of, &barrel, by_ring);
        let end_area = match row.end {
            End::Joint => {
                // The joint sets the force.
                if of.pipe.rated_force.is_none() {
                    self.ask_the_maker(NotGiven::EndForce);
                }
                Some(EndArea::Unknown)
            }
            _ if open => Some(EndArea::Unknown),
            End::Section => match barrel.inside_diameter {
                Some(inside_diameter) => {
                    let outside_diameter = barrel.outside_diameter.value;
                    if let (Some(known), None, None) = (barrel.known, &of.pipe.wall, &of.pipe.inside_diameter) {
                        let wall = Cited::new((outside_diameter - inside_diameter) / 2.0, known.origin);
                        self.assume_one(of.at("wall"), wall, Role::Wall);
                    }
                    Some(EndArea::Ring { outside_diameter, inside_diameter, kind: RingKind::Section })
                }
                None => {
                    let what = format!("the wall of the {} is missing", row.noun);
                    self.lacks(&of.pipe.size, &of.at("wall"), what, "add `wall: 10 mm`");
                    return Ok(None);
                }
            },
            End::Area | End::AreaByMaker => self.end_area(of, &barrel, recess(row))?,
        };
        let bears = if open { self.by_its_maker(of, &barrel)? } else { (row.bears)(self, of, &barrel)? };
        let (Some(end_area), Some(Bears { weight, ratio, capacity })) = (end_area, bears) else { return Ok(None) };
        let outside_diameter = barrel.outside_diameter.value;
        let lengths = match row.trade {
            Some(key) => {
                Some(self.handbook.jacking_pipe_length()?.row(key)?.map(|row| (row.low.value, row.high.value)))
            }
            None => barrel.known.and_then(|known| known.pipe_length),
        };
        let by_name = row.trade.map(|_| of.size).filter(|inside| *inside < outside_diameter);
        let ends = Ends {
            outside_diameter,
            inside_diameter: barrel.inside_diameter.or(by_name),
            pipe_length: lengths,
            squareness: row.trade.unwrap_or("jacked_pipe"),
            turn: row.end != End::Section,
            socket: row.end == End::Joint,
            packed: !open && matches!(row.end, End::Area | End::AreaByMaker),
            hard: row.family == Family::Clay,
        };
        let joint = self.joint(of, &ends, ratio)?;
        let jacked = JackedPipe {
            end_area,
            weight,
            joint,
            capacity,
            inside_diameter: barrel.inside_diameter,
            rated_force,
            usual_end: barrel.known.filter(|_| of.pipe.outside_diameter.is_none()).and_then(|known| known.usual_end),
            free: self.free_length(of, CandidateFile::free_length)?,
            least_wall: match row.family {
                Family::Steel if outside_diameter.si() > SMALL_CASING => {
                    Some(self.handbook.length("casing.least_wall")?)
                }
                _ => None,
            },
            railway_wall: match row.family {
                Family::Steel => self.casing_row(outside_diameter)?.map(|row| row.map(|row| row.bare.value)),
                _ => None,
            },
        };
        Ok(Some(Named {
            label: format!("{} {}", row.what, as_given(of.size)),
            family: row.family,
            outside_diameter: barrel.outside_diameter,
            jacked: Some(jacked),
            pulled: None,
        }))
    }

    /// The maker's force, no more than the section bears of the strength that is told with the joint closed.
    fn rated_force(&mut self, row: &Pushed, of: &Listed<'_>, barrel: &Barrel) -> Resolved<Option<Cited<Force>>> {
        let Some(rated) = self.own(of, CandidateFile::rated_force) else { return Ok(None) };
        if let Some(EndArea::Rated { ratings, strength, .. }) = barrel.known.and_then(|known| known.end) {
            let (certified, best) = self.certified(of)?;
            let crushed = ratings.iter().map(|(force, factor)| *force * *factor).fold(Force::default(), Force::max);
            let borne = best.unwrap_or(certified).map(|best| crushed * (best / strength) / rigid::BRITTLE.0);
            return Ok(Some(self.lesser_of_maker(of, rated, borne)));
        }
        let strength = self.own(of, CandidateFile::strength).or(self.own(of, CandidateFile::cube_strength));
        let ring = |inside_diameter| {
            let outside_diameter = barrel.outside_diameter.value;
            RingArea { outside_diameter, inside_diameter }.value()
        };
        let area = of.pipe.end_bearing_area.given().or(barrel.inside_diameter.map(ring));
        let (Some(strength), Some(area), Some(share)) = (strength, area, self.closed_share(row.family)?) else {
            return Ok(Some(rated));
        };
        let borne = share.map(|share| area * strength.value * share);
        Ok(Some(self.lesser_of_maker(of, rated, borne)))
    }

    fn lesser_of_maker(&mut self, of: &Listed<'_>, rated: Cited<Force>, borne: Cited<Force>) -> Cited<Force> {
        if rated.value <= borne.value {
            return rated;
        }
        self.assume_one(of.at("rated_force (what the ring bears)"), borne, Role::Thrust);
        borne
    }

    /// Whether nothing but its maker's force tells what the end bears: its area is not told, or the strength that goes
    /// with it. Where that force is not told either, the pipe is left open.
    fn is_by_its_maker(&mut self, row: &Pushed, of: &Listed<'_>, barrel: &Barrel, by_ring: bool) -> bool {
        let in_table = barrel.known.is_some_and(|known| known.end.is_some());
        if !(row.end == End::AreaByMaker || row.end == End::Area && !in_table) {
            return false;
        }
        let ring = |packer: &PackerFile| packer.outside_diameter.is_some() && packer.inside_diameter.is_some();
        // A table speaks where something is told of the joint, or of what the end bears.
        let joint = of.gives(keys![packer, joint_stress_ratio, scheme, rated_force]);
        let told = of.pipe.end_bearing_area.is_some() || of.pipe.packer.as_ref().is_some_and(ring) || in_table && joint;
        // Strength, and what a joint leaves of the section, may be the least that is usual.
        let usual = recess(row).is_some() && of.pipe.rated_force.is_none() && !self.proposing;
        let strength = row.end == End::Area || usual || of.gives(keys![strength, cube_strength]);
        let area = told || usual && barrel.inside_diameter.is_some();
        if area && strength {
            return false;
        }
        if of.pipe.rated_force.is_some() {
            const FORCE: &str = "the maker's force stands for what the end bears";
            self.not_used(of, if by_ring { END_TOLD } else { END_TOLD.or(STRENGTHS) }, FORCE);
            return true;
        }
        // Without its bore nothing tells its weight.
        let untold = self.proposing || !told && (barrel.inside_diameter.is_some() || of.pipe.weight.is_some());
        if untold {
            self.ask_the_maker(NotGiven::EndForce);
        }
        untold
    }

    /// A pipe to be pulled.
    fn drawn(&mut self, row: &Pulled, of: &Listed<'_>) -> Resolved<Option<Named>> {
        let Some(section) = (row.section)(self, of)? else { return Ok(None) };
        let Some(pull) = of.pull else {
            if self.file.pull.is_none() {
                let complaint = Complaint::from(format!("{} is pulled, and how is missing", row.what))
                    .advise("add `pull: { duration: 6 h, pipe_temperature: 25 degC }`");
                self.flaw(&of.pipe.material, "pull", complaint);
            }
            return Ok(None);
        };
        let Some(pipe) = (row.pipe)(self, of, pull, section)? else { return Ok(None) };
        let label = (row.label)(self, of, section)?;
        let Section { outside_diameter, .. } = section;
        Ok(Some(Named { label, family: row.family, outside_diameter, jacked: None, pulled: Some(pipe) }))
    }

    /// What nobody but its maker can say.
    pub(super) fn by_its_maker(&mut self, of: &Listed<'_>, barrel: &Barrel) -> Resolved<Option<Bears>> {
        let weight = self.jacked_weight(of, barrel)?;
        Ok(Some(Bears { weight, ratio: None, capacity: Capacity::Rated }))
    }
}

/// The row of what a joint takes of the wall of a pipe whose end its maker knows.
fn recess(row: &Pushed) -> Option<&'static str> {
    let recess = if row.family == Family::Grp { "end.recess_grp" } else { "end.recess" };
    (row.end == End::AreaByMaker).then_some(recess)
}
