//! A reinforced concrete jacking pipe out of size, strength and scheme.

use super::Resolver;
use super::jacked::{Barrel, of_row, strength_text};
use super::label::as_given;
use super::pipe::{Named, same_size};
use super::steering::Ends;
use crate::drive::{
    Asce27, Capacity, ConcreteAnnex, ConcreteEnd, ConcreteScheme, ConcreteShares, EndArea, JackedPipe, JswasStress,
    NotGiven, RingKind,
};
use crate::drive_file::{CandidateFile, DriveFile, EndScheme};
use crate::handbook::{ConcretePipeRow, Family, HandbookError};
use crate::law::Law;
use crate::laws::concrete::DesignOverCubeStrength;
use crate::quantity::unit::STANDARD_GRAVITY;
use crate::quantity::{Length, LineLoad, Measure, Pressure, Ratio, Role};
use crate::source::{Cited, FieldName};
use crate::yaml::Complaint;

/// What the tables know of a size.
struct Known {
    diameters: Option<Cited<(Length, Option<Length>)>>,
    end: Option<EndArea>,
    weight: Option<Cited<LineLoad>>,
    pipe_length: Option<Cited<(Length, Length)>>,
}

impl Resolver<'_> {
    pub(super) fn concrete(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        file: &DriveFile,
        size: Length,
    ) -> Result<Option<Named>, HandbookError> {
        self.refuse_foreign(path, candidate, "concrete pipe");
        self.refuse_pulled(path, candidate);
        self.refuse(path, "factor", candidate.factor.as_ref(), "does not apply to concrete pipe: choose a `scheme`");
        self.refuse(path, "yield_strength", candidate.yield_strength.as_ref(), "is for steel pipe");
        self.refuse(path, "steel_grade", candidate.steel_grade.as_ref(), "is for steel pipe");
        self.refuse(path, "free_length", candidate.free_length.as_ref(), "is for steel pipe");
        let known = self.known_concrete(size)?;
        let Some(barrel) = self.barrel(path, candidate, known.diameters) else {
            let spigots = self.handbook.concrete_pipe()?.iter().map(|row| row.value.value.size.value);
            let small = self.handbook.concrete_small_wall()?.iter().map(|row| row.value.value.size.value);
            self.no_such_size(path, candidate, "concrete jacking pipe", spigots.chain(small));
            return Ok(None);
        };
        // A row speaks for its own pipe only.
        let printed = known.diameters.map(|diameters| diameters.value.0);
        let same = printed.is_some_and(|printed| {
            (barrel.outside_diameter.value - printed).abs() <= printed * super::jacked::SAME_PIPE
        });
        let known = if same { known } else { Known { end: None, weight: None, pipe_length: None, ..known } };
        if self.is_for_the_maker(NotGiven::EndForce) {
            let weight = self.jacked_weight(path, candidate, &barrel, known.weight, Some("concrete"))?;
            let ends = Ends { pipe_length: known.pipe_length, ..ends(&barrel, None) };
            let jacked = self.pushed_by_its_maker(path, candidate, file, &barrel, &ends, weight)?;
            return Ok(Some(super::rigid::named(
                format!("concrete {}", as_given(size)),
                Family::Concrete,
                &barrel,
                jacked,
            )));
        }
        let (Some(end_area), Some(end)) =
            (self.end_area(path, candidate, &barrel, known.end), self.concrete_end(path, candidate)?)
        else {
            return Ok(None);
        };
        let weight = self.jacked_weight(path, candidate, &barrel, known.weight, Some("concrete"))?;
        let ratio = self.joint_ratio(path, candidate)?;
        let ends = Ends { pipe_length: known.pipe_length, ..ends(&barrel, None) };
        let joint = self.joint(path, candidate, file, &ends, ratio)?;
        if end.scheme == ConcreteScheme::Jswas
            && let (Some(packer), Some(stress)) = (&candidate.packer, end.jswas)
            && stress.peak.is_none()
        {
            let complaint = Complaint::from("no peak stress of this grade is known, and a turned joint needs one");
            let at = format!("{path}.packer");
            self.flaw(&packer.thickness, &at, complaint.advise("choose another scheme, or grade type_50"));
        }
        let jacked = JackedPipe {
            end_area,
            weight,
            joint,
            capacity: Capacity::Concrete(end),
            inside_diameter: barrel.inside_diameter,
            rated_force: self.rated_force(path, candidate),
            free: None,
        };
        Ok(Some(Named {
            label: format!("concrete {}", as_given(size)),
            family: Family::Concrete,
            outside_diameter: barrel.outside_diameter,
            jacked: Some(jacked),
            pulled: None,
        }))
    }

    fn known_concrete(&self, size: Length) -> Result<Known, HandbookError> {
        if let Some(row) = self.handbook.concrete_pipe()?.find(|row| same_size(row.size.value, size)) {
            let ConcretePipeRow { size, wall, spigot_outside_diameter, length, mass } = row.value;
            let (inside, length) = (size.value, length.value);
            let weight = LineLoad::from_si(mass.value.si() * STANDARD_GRAVITY / length.si());
            return Ok(Known {
                diameters: Some(of_row((inside + 2.0 * wall.value, Some(inside)), row.origin)),
                end: Some(EndArea::Ring {
                    outside_diameter: spigot_outside_diameter.value,
                    inside_diameter: inside,
                    kind: RingKind::Spigot,
                }),
                weight: Some(of_row(weight, row.origin)),
                pipe_length: Some(of_row((length, length), row.origin)),
            });
        }
        let wall = self.handbook.concrete_small_wall()?.find(|row| same_size(row.size.value, size));
        let small = self.handbook.concrete_small_pipe()?.find(|row| same_size(row.size.value, size));
        Ok(Known {
            diameters: wall.map(|row| row.map(|row| (size + 2.0 * row.wall.value, Some(size)))),
            end: small.map(|row| EndArea::Given(row.map(|row| row.end_area.value))),
            weight: None,
            pipe_length: None,
        })
    }

    /// Strength and every scheme that what is given allows.
    fn concrete_end(&mut self, path: &str, candidate: &CandidateFile) -> Result<Option<ConcreteEnd>, HandbookError> {
        let factors = self.handbook.concrete_factor()?;
        let shares = ConcreteShares::read(factors)?;
        let design_strength = self.concrete_design(path, candidate, factors.value("cn_design_over_cube")?.value)?;
        let jswas = self.jswas(candidate)?;
        let scheme = self.concrete_scheme(path, candidate, design_strength.is_some(), jswas.is_some());
        let strength = match (&candidate.strength, &candidate.cube_strength) {
            (Some(field), _) => {
                let strength = self.positive(field, &format!("{path}.strength"), Role::Strength);
                if candidate.cube_strength.as_ref().is_some_and(|cube| strength > cube.value) {
                    let complaint = Complaint::from("is more than the strength on cubes");
                    self.flaw(field, &format!("{path}.strength"), complaint.advise("strength is that on cylinders"));
                }
                Cited::given(strength, &FieldName("candidates[].strength"))
            }
            (None, Some(field)) => {
                let cube = self.positive(field, &format!("{path}.cube_strength"), Role::Strength);
                let strength = factors.value("cylinder_over_cube")?.map(|share| share * cube);
                self.assume_one(format!("{path}.strength, on cylinders"), strength, Role::Strength);
                strength
            }
            (None, None) => {
                let complaint = Complaint::from("the strength of the concrete is missing");
                let complaint = complaint.advise("add `strength: 50 MPa` (on cylinders) or `cube_strength: 60 MPa`");
                self.flaw(&candidate.size, &format!("{path}.strength"), complaint);
                return Ok(None);
            }
        };
        if scheme == ConcreteScheme::Default {
            self.assume_one(format!("{path}: mean stress on the end over strength"), shares.mean_share, Role::Ratio);
            self.assume_one(
                format!("{path}: stress at the edge of the joint over strength"),
                shares.edge_share,
                Role::Ratio,
            );
        }
        let (asce, annex) = (Asce27::read(factors)?, ConcreteAnnex::read(factors)?);
        Ok(Some(ConcreteEnd { scheme, strength, shares, asce, annex, design_strength, jswas }))
    }

    /// Design strength for the Chinese annex, which a characteristic one must not stand in for.
    fn concrete_design(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        most: Ratio,
    ) -> Result<Option<Cited<Pressure>>, HandbookError> {
        let at = format!("{path}.design_strength");
        let design = match &candidate.design_strength {
            Some(field) => {
                let design = self.positive(field, &at, Role::Strength);
                Some(Cited::given(design, &FieldName("candidates[].design_strength")))
            }
            None => self.graded(candidate, "cn_annex_e", "design_strength")?,
        };
        let Some(design) = design else { return Ok(None) };
        let cube = candidate.cube_strength.as_ref();
        match (cube, &candidate.design_strength) {
            (Some(cube), _) => {
                let share = DesignOverCubeStrength { design_strength: design.value, cube_strength: cube.value };
                if !(share.value() <= most) {
                    let message = format!(
                        "{} is no design strength of this class: it is more than {} of the cube strength",
                        strength_text(design.value),
                        most.si()
                    );
                    let on = candidate.design_strength.as_ref().unwrap_or(cube);
                    self.flaw(on, &at, Complaint::from(message).advise("a characteristic strength is not meant here"));
                }
            }
            (None, Some(field)) => {
                let complaint = Complaint::from("cannot be told from a characteristic strength");
                self.flaw(field, &at, complaint.advise("add the `cube_strength` of the class"));
            }
            (None, None) => {}
        }
        Ok(Some(design))
    }

    /// The stress of the grade of the file, in one scheme and of one kind.
    fn graded(
        &self,
        candidate: &CandidateFile,
        scheme: &str,
        kind: &str,
    ) -> Result<Option<Cited<Pressure>>, HandbookError> {
        let Some(grade) = &candidate.concrete_grade else { return Ok(None) };
        let row = self
            .handbook
            .concrete_strength()?
            .find(|row| row.scheme.value.0 == scheme && row.kind.value.0 == kind && row.grade.value.0 == grade.value.0);
        Ok(row.map(|row| row.map(|row| row.stress.value)))
    }

    fn jswas(&self, candidate: &CandidateFile) -> Result<Option<JswasStress>, HandbookError> {
        let Some(mean) = self.graded(candidate, "jswas_a6", "allowable_mean")? else { return Ok(None) };
        let peak = self.graded(candidate, "jswas_a6", "allowable_peak")?.map(|peak| peak.value);
        Ok(Some(JswasStress { mean, peak }))
    }

    fn concrete_scheme(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        has_design: bool,
        has_grade: bool,
    ) -> ConcreteScheme {
        if let Some(field) = &candidate.concrete_grade
            && !(has_grade || has_design && candidate.design_strength.is_none())
        {
            let message = format!("no grade of concrete \"{}\" in the table", field.value.0);
            let complaint = Complaint::from(message);
            let complaint = complaint.advise("there are type_50, type_70, c40, c50, c60; else give strength only");
            self.flaw(field, &format!("{path}.concrete_grade"), complaint);
        }
        let Some(field) = &candidate.scheme else { return ConcreteScheme::Default };
        let missing = match field.value {
            EndScheme::CnAnnexE if !has_design => {
                Some("add `concrete_grade: c50`, or design_strength and cube_strength")
            }
            EndScheme::JswasA6 if !has_grade => Some("add `concrete_grade: type_50` or type_70"),
            _ => None,
        };
        if let Some(advice) = missing {
            let complaint = Complaint::from("lacks the strength that it works with");
            self.flaw(field, &format!("{path}.scheme"), complaint.advise(advice));
        }
        match field.value {
            EndScheme::Default => ConcreteScheme::Default,
            EndScheme::Asce27 => ConcreteScheme::Asce27,
            EndScheme::En1916 => ConcreteScheme::En1916,
            EndScheme::CnAnnexE => ConcreteScheme::Annex,
            EndScheme::JswasA6 => ConcreteScheme::Jswas,
        }
    }
}

/// Ends of a barrel without more from the tables.
pub(super) fn ends(barrel: &Barrel, squareness: Option<&'static str>) -> Ends {
    Ends {
        outside_diameter: barrel.outside_diameter.value,
        inside_diameter: barrel.inside_diameter,
        pipe_length: None,
        squareness,
        turn: true,
    }
}
