//! Jacking pipe of concrete, by the coefficients of its scheme; of clay, by its certificate; of GRP and of polymer concrete:
//! its own strength on the end area; of fibre cement: its maker's force.

use super::listed::Listed;
use super::row::{Applies, Bears, End, GIVE_DIAMETERS, NOT_PULLED, PUSHED, Pushed, STRENGTHS, keys};
use super::sizes::{both, clay_in_inches, metric_clay};
use super::{Resolved, Resolver, iron, sizes};
use crate::drive::{
    Asce27, AssumedValue, Capacity, ConcreteAnnex, ConcreteEnd, ConcreteScheme, ConcreteShares, JswasStress,
};
use crate::drive_file::fields::Keys;
use crate::drive_file::{CandidateFile, Certificate, EndScheme};
use crate::handbook::Family;
use crate::law::Law;
use crate::laws::concrete::DesignOverCubeStrength;
use crate::quantity::{Measure, Pressure, Ratio, Role, Shown, UnitSystem};
use crate::source::Cited;
use crate::yaml::{Complaint, MayBe};

const USED: Keys = PUSHED.or(keys![wall, end_bearing_area, joint_stress_ratio, packer, end_squareness, strength]);

pub(super) const GRP: Pushed = Pushed {
    what: "GRP",
    noun: "GRP jacking pipe",
    by_bore: false,
    other_size: GIVE_DIAMETERS,
    family: Family::Grp,
    applies: Applies {
        used: USED,
        reasons: &[
            (keys![factor], "does not apply to GRP: its material factor is fixed"),
            (keys![free_length], "is for steel pipe"),
        ],
        way: NOT_PULLED,
        otherwise: "does not apply to GRP",
        idle: &[],
    },
    sizes: |_| Ok(Vec::new()),
    density: Some("grp"),
    trade: None,
    end: End::AreaByMaker,
    bears: |resolver, of, barrel| {
        let axial_strength = resolver.own_strength(of, "grp.strength_least")?;
        let weight = resolver.jacked_weight(of, barrel)?;
        let ratio = resolver.joint_ratio(of)?;
        let factors = resolver.handbook.jacking_factor()?;
        let (material_factor, greatest) = (factors.value("iso_25780_material")?, factors.value("grp_joint_ratio")?);
        resolver.assume_one(format!("{}: material factor", of.path), material_factor, Role::Ratio);
        let capacity = Capacity::Grp { axial_strength, material_factor, greatest_ratio: greatest.value };
        Ok(Some(Bears { weight, ratio, capacity }))
    },
};

pub(super) const POLYMER_CONCRETE: Pushed = Pushed {
    what: "polymer concrete",
    noun: "polymer concrete jacking pipe",
    family: Family::PolymerConcrete,
    applies: Applies {
        used: USED.or(keys![factor]),
        reasons: &[(keys![free_length], "is for steel pipe")],
        otherwise: "does not apply to polymer concrete",
        ..GRP.applies
    },
    density: Some("polymer_concrete"),
    bears: |resolver, of, barrel| {
        let strength = resolver.own_strength(of, "polymer_concrete.strength_least")?;
        let weight = resolver.jacked_weight(of, barrel)?;
        let ratio = resolver.joint_ratio(of)?;
        let habit = resolver.handbook.jacking_factor()?.value("polymer_habit")?;
        let factor = resolver.ratio_or(of, CandidateFile::factor, BRITTLE, habit);
        let capacity = resolver.brittle(of, (strength, None), factor)?;
        Ok(Some(Bears { weight, ratio, capacity }))
    },
    ..GRP
};

pub(super) const FIBRE_CEMENT: Pushed = Pushed {
    what: "fibre cement",
    noun: "fibre cement jacking pipe",
    family: Family::FibreCement,
    applies: Applies {
        reasons: &[
            (STRENGTHS, "does not apply to fibre cement: its maker's force has the strength in it"),
            (keys![factor], "the maker's force has its factors in it"),
            (keys![end_bearing_area, joint_stress_ratio, packer], "the maker's force stands for the joint"),
            (keys![free_length], "is for steel pipe"),
        ],
        otherwise: "does not apply to fibre cement",
        ..iron::JACKED.applies
    },
    sizes: |_| Ok(Vec::new()),
    density: Some("fibre_cement"),
    ..iron::JACKED
};

impl Resolver<'_> {
    /// The strength of the pipe's own certificate, else the least that is usual.
    fn own_strength(&mut self, of: &Listed<'_>, least: &'static str) -> Resolved<Cited<Pressure>> {
        let least = self.handbook.pressure(least)?;
        Ok(self.own_or(of, CandidateFile::strength, least))
    }
}

pub(super) const CLAY: Pushed = Pushed {
    what: "clay",
    noun: "clay jacking pipe",
    by_bore: false,
    other_size: "for another give outside_diameter, and end_bearing_area or rated_force",
    family: Family::Clay,
    applies: Applies {
        used: PUSHED.or(keys![end_bearing_area, certificate, factor, joint_stress_ratio, packer, end_squareness]),
        reasons: &[
            (keys![series], "a clay pipe has no series"),
            (keys![sdr], "a clay pipe has no dimension ratio"),
            (STRENGTHS, "does not apply to clay pipe: give the certificate"),
            (keys![wall], "does not apply to clay pipe: give outside_diameter and inside_diameter"),
            (keys![free_length], "is for steel pipe"),
            (keys![joint_factor], "is for fused pipe"),
        ],
        way: NOT_PULLED,
        otherwise: "does not apply to clay pipe",
        idle: &[],
    },
    sizes: |resolver| both(metric_clay(resolver.handbook), clay_in_inches(resolver.handbook)),
    density: Some("clay"),
    trade: Some("clay"),
    end: End::Area,
    bears: |resolver, of, barrel| {
        let weight = resolver.jacked_weight(of, barrel)?;
        let (strength, certified) = resolver.certified(of)?;
        if of.pipe.certificate.is_none() {
            resolver.assume_one(of.at("certificate (strength)"), strength, Role::Strength);
        }
        let habit = resolver.handbook.ratio("clay.factor")?;
        let factor = resolver.ratio_or(of, CandidateFile::factor, BRITTLE, habit);
        let ratio = resolver.joint_ratio(of)?;
        let capacity = resolver.brittle(of, (strength, certified), factor)?;
        Ok(Some(Bears { weight, ratio, capacity }))
    },
};

fn stronger(one: Cited<Pressure>, other: Cited<Pressure>) -> Cited<Pressure> {
    if other.value > one.value { other } else { one }
}

impl Resolver<'_> {
    /// Strength of the certificate of clay pipe, and that of the best one where none is told.
    pub(super) fn certified(&self, of: &Listed<'_>) -> Resolved<(Cited<Pressure>, Option<Cited<Pressure>>)> {
        let certificate = of.pipe.certificate.given().unwrap_or(Certificate::Unknown);
        let table = self.handbook.clay_strength()?;
        let all = table.iter().map(|row| row.map(|row| row.value.value));
        let best = all.filter(|_| certificate == Certificate::Unknown).reduce(stronger);
        Ok((table.value(certificate.key())?, best))
    }

    /// Mean stress over strength that no scheme of a material goes beyond with the joint closed; none where the maker's
    /// force is all there is.
    pub(super) fn closed_share(&self, family: Family) -> Resolved<Option<Cited<Ratio>>> {
        Ok(match family {
            Family::Concrete => {
                let asce = Asce27::read(self.handbook.concrete_factor()?)?;
                Some(asce.block.map(|block| block * asce.phi * asce.eccentric / asce.load))
            }
            Family::PolymerConcrete => {
                Some(self.handbook.jacking_factor()?.value("polymer_habit")?.map(|_| Ratio::from(1.0 / BRITTLE.0)))
            }
            Family::Grp => {
                let factors = self.handbook.jacking_factor()?;
                let closed = factors.value("grp_joint_ratio")?.value;
                Some(factors.value("iso_25780_material")?.map(|factor| closed / factor))
            }
            _ => None,
        })
    }
}

/// Least and most factor on the strength of a brittle pipe.
pub(super) const BRITTLE: (f64, f64) = (2.5, 20.0);

impl Resolver<'_> {
    /// One factor on the mean stress, another at the edge.
    pub(super) fn brittle(
        &mut self,
        of: &Listed<'_>,
        (strength, certified): (Cited<Pressure>, Option<Cited<Pressure>>),
        factor: Cited<Ratio>,
    ) -> Resolved<Capacity> {
        let what = format!("{}: factor on the stress at the edge of the joint", of.path);
        let edge_factor = self.taken_ratio(&what, "clay.factor_edge")?;
        Ok(Capacity::Brittle { strength, certified, factor, edge_factor })
    }
}

pub(super) const CONCRETE: Pushed = Pushed {
    what: "concrete",
    noun: "concrete jacking pipe",
    by_bore: true,
    other_size: GIVE_DIAMETERS,
    family: Family::Concrete,
    applies: Applies {
        used: PUSHED.or(keys![
            wall,
            end_bearing_area,
            joint_stress_ratio,
            packer,
            end_squareness,
            strength,
            cube_strength,
            design_strength,
            concrete_grade,
            scheme,
        ]),
        reasons: &[
            (keys![factor], "does not apply to concrete pipe: choose a `scheme`"),
            (keys![yield_strength, steel_grade, free_length], "is for steel pipe"),
        ],
        way: NOT_PULLED,
        otherwise: "does not apply to concrete pipe",
        idle: &[(
            keys![cube_strength],
            |pipe| pipe.strength.is_some() && pipe.design_strength.is_none() && pipe.concrete_grade.is_none(),
            "says nothing beside `strength` without design_strength or concrete_grade",
        )],
    },
    sizes: |resolver| sizes::concrete(resolver.handbook),
    density: Some("concrete"),
    trade: None,
    end: End::AreaByMaker,
    bears: |resolver, of, barrel| {
        let end = resolver.concrete_end(of)?;
        let weight = resolver.jacked_weight(of, barrel)?;
        let ratio = resolver.joint_ratio(of)?;
        Ok(Some(Bears { weight, ratio, capacity: Capacity::Concrete(end) }))
    },
};

impl Resolver<'_> {
    /// Strength and every scheme that what is given allows.
    fn concrete_end(&mut self, of: &Listed<'_>) -> Resolved<ConcreteEnd> {
        let factors = self.handbook.concrete_factor()?;
        let shares = ConcreteShares::read(factors)?;
        let design_strength = self.concrete_design(of, factors.value("cn_design_over_cube")?.value)?;
        let jswas = match self.graded(of, "jswas_a6", "allowable_mean")? {
            Some(mean) => {
                let peak = self.graded(of, "jswas_a6", "allowable_peak")?.map(|peak| peak.value);
                Some(JswasStress { mean, peak })
            }
            None => None,
        };
        let scheme = self.concrete_scheme(of, design_strength.is_some(), jswas);
        let cube = self.own(of, CandidateFile::cube_strength);
        let mut most_strength = None;
        let strength = match (self.own(of, CandidateFile::strength), cube) {
            (Some(strength), cube) => {
                if cube.is_some_and(|cube| strength.value > cube.value) {
                    let complaint = ("is more than the strength on cubes", "strength is that on cylinders");
                    self.fault(of, CandidateFile::strength, complaint);
                }
                strength
            }
            (None, Some(cube)) => {
                let strength = factors.value("cylinder_over_cube")?.map(|share| share * cube.value);
                self.assume_one(of.at("strength, on cylinders"), strength, Role::Strength);
                strength
            }
            (None, None) => {
                most_strength = Some(self.handbook.pressure("concrete.strength_most")?.value);
                let strength = self.handbook.pressure("concrete.strength_least")?;
                self.assume_one(of.at("strength, on cylinders"), strength, Role::Strength);
                strength
            }
        };
        if scheme == ConcreteScheme::Default {
            let path = of.path;
            self.assume_one(format!("{path}: mean stress on the end over strength"), shares.mean_share, Role::Ratio);
            let what = format!("{path}: stress at the edge of the joint over strength");
            self.assume_one(what, shares.edge_share, Role::Ratio);
        }
        let (asce, annex) = (Asce27::read(factors)?, ConcreteAnnex::read(factors)?);
        let scheme_told = of.pipe.scheme.is_some();
        if !scheme_told {
            let word = "en_1916, the lesser of the published ones that go by the strength alone";
            self.assume(of.at("scheme"), AssumedValue::Word(word.to_owned()), shares.en_edge.origin);
        }
        Ok(ConcreteEnd { scheme, scheme_told, strength, most_strength, shares, asce, annex, design_strength, jswas })
    }

    /// Design strength for the Chinese annex, which a characteristic one must not stand in for.
    fn concrete_design(&mut self, of: &Listed<'_>, most: Ratio) -> Resolved<Option<Cited<Pressure>>> {
        let given = self.own(of, CandidateFile::design_strength);
        let Some(design) = given.or(self.graded(of, "cn_annex_e", "design_strength")?) else { return Ok(None) };
        match &of.pipe.cube_strength {
            Some(cube) => {
                let share = DesignOverCubeStrength { design_strength: design.value, cube_strength: cube.value };
                if !(share.value() <= most) {
                    let shown = Shown::of(design.value, Role::Strength).display(UnitSystem::Si);
                    let most = most.si();
                    let message = format!(
                        "{shown} is no design strength of this class: it is more than {most} of the cube strength"
                    );
                    let on = of.pipe.design_strength.as_ref().unwrap_or(cube);
                    self.lacks(on, &of.at("design_strength"), message, "a characteristic strength is not meant here");
                }
            }
            None => {
                let complaint = Complaint::from("cannot be derived from a characteristic strength");
                let complaint = complaint.advise("add the `cube_strength` of the class");
                self.fault(of, CandidateFile::design_strength, complaint);
            }
        }
        Ok(Some(design))
    }

    /// The stress of the grade of the file, in one scheme and of one kind.
    fn graded(&self, of: &Listed<'_>, scheme: &str, kind: &str) -> Resolved<Option<Cited<Pressure>>> {
        let Some(grade) = &of.pipe.concrete_grade else { return Ok(None) };
        let row = self
            .handbook
            .concrete_strength()?
            .find(|row| row.scheme.value.0 == scheme && row.kind.value.0 == kind && row.grade.value.0 == grade.value.0);
        Ok(row.map(|row| row.map(|row| row.stress.value)))
    }

    fn concrete_scheme(&mut self, of: &Listed<'_>, has_design: bool, jswas: Option<JswasStress>) -> ConcreteScheme {
        if let Some(field) = &of.pipe.concrete_grade
            && !(jswas.is_some() || has_design && of.pipe.design_strength.is_none())
        {
            let message = format!("no grade of concrete \"{}\" in the table", field.value.0);
            let advice = "there are type_50, type_70, c40, c50, c60; else give strength only";
            self.fault(of, CandidateFile::concrete_grade, (message, advice));
        }
        let lacks = |advice| ("lacks the strength that it works with", advice);
        let Some(scheme) = of.pipe.scheme.given() else { return ConcreteScheme::En1916 };
        match scheme {
            EndScheme::Default => ConcreteScheme::Default,
            EndScheme::Asce27 => ConcreteScheme::Asce27,
            EndScheme::En1916 => ConcreteScheme::En1916,
            EndScheme::CnAnnexE => {
                if !has_design {
                    let complaint = lacks("add `concrete_grade: c50`, or design_strength and cube_strength");
                    self.fault(of, CandidateFile::scheme, complaint);
                }
                ConcreteScheme::Annex
            }
            EndScheme::JswasA6 => {
                if jswas.is_none() {
                    let complaint = lacks("add `concrete_grade: type_50` or type_70");
                    self.fault(of, CandidateFile::scheme, complaint);
                }
                if let (Some(packer), Some(JswasStress { peak: None, .. })) = (&of.pipe.packer, jswas) {
                    let what = "no peak stress of this grade is known, and a turned joint needs one";
                    let advice = "choose another scheme, or grade type_50";
                    self.lacks(&packer.thickness, &of.at("packer"), what, advice);
                }
                ConcreteScheme::Jswas
            }
        }
    }
}
