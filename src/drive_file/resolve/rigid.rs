//! Jacked pipe of GRP, polymer concrete, ductile iron and PVC.

use super::Resolver;
use super::concrete::ends;
use super::jacked::Barrel;
use super::label::as_given;
use super::pipe::{Named, same_size};
use crate::drive::{Capacity, EndArea, JackedPipe, NotGiven};
use crate::drive_file::{CandidateFile, DriveFile, Material};
use crate::handbook::{Family, HandbookError};
use crate::quantity::{Length, Pressure, Ratio, Role};
use crate::source::{Cited, FieldName};
use crate::yaml::Complaint;

impl Resolver<'_> {
    /// GRP or polymer concrete: its own strength on the end area.
    pub(super) fn bound(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        file: &DriveFile,
        size: Length,
    ) -> Result<Option<Named>, HandbookError> {
        let grp = candidate.material.value == Material::Grp;
        let (what, family) = if grp { ("GRP", Family::Grp) } else { ("polymer concrete", Family::PolymerConcrete) };
        self.refuse_foreign(path, candidate, what);
        self.refuse_pulled(path, candidate);
        self.refuse_strengths(path, candidate, &["strength"], &format!("does not apply to {what}"));
        self.refuse(path, "free_length", candidate.free_length.as_ref(), "is for steel pipe");
        let Some(barrel) = self.barrel(path, candidate, None) else {
            self.no_such_size(path, candidate, &format!("{what} jacking pipe"), core::iter::empty());
            return Ok(None);
        };
        let area = self.end_area(path, candidate, &barrel, None);
        let (Some(end_area), Some(strength)) = (area, self.own_strength(path, candidate, grp)) else {
            return Ok(None);
        };
        let weight = self.jacked_weight(path, candidate, &barrel, None, None)?;
        let ratio = self.joint_ratio(path, candidate)?;
        let joint = self.joint(path, candidate, file, &ends(&barrel, None), ratio)?;
        let factors = self.handbook.jacking_factor()?;
        let capacity = if grp {
            self.refuse(
                path,
                "factor",
                candidate.factor.as_ref(),
                "does not apply to GRP: its material factor is fixed",
            );
            let (material_factor, greatest) = (factors.value("iso_25780_material")?, factors.value("grp_joint_ratio")?);
            self.assume_one(format!("{path}: material factor"), material_factor, Role::Ratio);
            Capacity::Grp { axial_strength: strength, material_factor, greatest_ratio: greatest.value }
        } else {
            let habit = factors.value("polymer_habit")?;
            let factor = self.ratio_or(candidate.factor.as_ref(), path, "factor", (2.5, 20.0), habit);
            let edge_factor = self.handbook.ratio("clay.factor_edge")?;
            self.assume_one(format!("{path}: factor on the stress at the edge of the joint"), edge_factor, Role::Ratio);
            Capacity::Brittle { strength, factor, edge_factor }
        };
        let jacked = JackedPipe {
            end_area,
            weight,
            joint,
            capacity,
            inside_diameter: barrel.inside_diameter,
            rated_force: self.rated_force(path, candidate),
            free: None,
        };
        Ok(Some(named(format!("{what} {}", as_given(size)), family, &barrel, jacked)))
    }

    /// The strength of the pipe's own certificate: no default is known that is safe.
    fn own_strength(&mut self, path: &str, candidate: &CandidateFile, grp: bool) -> Option<Cited<Pressure>> {
        let at = format!("{path}.strength");
        let Some(field) = &candidate.strength else {
            let (what, advice) = if grp {
                ("strength along the pipe", "add `strength: 80 MPa`, the axial one and not that of the hoop")
            } else {
                ("strength in compression", "add `strength: 90 MPa` of the pipe's certificate")
            };
            let complaint = Complaint::from(format!("the {what} is missing"));
            self.flaw(&candidate.size, &at, complaint.advise(advice));
            return None;
        };
        Some(Cited::given(self.positive(field, &at, Role::Strength), &FieldName("candidates[].strength")))
    }

    /// Ductile iron or PVC, jacked: the joint sets the force, which only its maker knows.
    pub(super) fn by_its_maker(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        file: &DriveFile,
        size: Length,
    ) -> Result<Option<Named>, HandbookError> {
        let pvc = candidate.material.value == Material::Pvc;
        let (what, family, density) =
            if pvc { ("PVC", Family::Pvc, "pvc") } else { ("ductile iron", Family::DuctileIron, "ductile_iron") };
        self.refuse_foreign(path, candidate, what);
        if pvc {
            self.refuse_pulled(path, candidate);
        }
        self.refuse_strengths(
            path,
            candidate,
            &[],
            &format!("does not apply to jacked {what}: the joint sets the force"),
        );
        self.refuse(path, "factor", candidate.factor.as_ref(), "the maker's force has its factors in it");
        self.refuse(path, "end_bearing_area", candidate.end_bearing_area.as_ref(), "the maker's force stands for it");
        self.refuse(path, "joint_stress_ratio", candidate.joint_stress_ratio.as_ref(), "the maker's force holds it");
        let packer = candidate.packer.as_ref().map(|packer| &packer.thickness);
        self.refuse(path, "packer.thickness", packer, "the maker's force stands for the joint");
        self.refuse(path, "free_length", candidate.free_length.as_ref(), "is for steel pipe");
        // Iron pipe has the same outside diameters, the cast iron sizes.
        let row = self.handbook.pvc_pipe()?.find(|row| same_size(row.size.value, size));
        let table = row.map(|row| row.map(|row| (row.outside_diameter.value, None)));
        let table = if pvc { table } else { table.or(self.metric_iron(size)?) };
        let Some(barrel) = self.barrel(path, candidate, table) else {
            let sizes = self.handbook.pvc_pipe()?.iter().map(|row| row.value.value.size.value);
            self.no_such_size(path, candidate, &format!("{what} pipe"), sizes);
            return Ok(None);
        };
        let rated_force = self.rated_force(path, candidate);
        if rated_force.is_none() && !self.is_for_the_maker(NotGiven::EndForce) {
            let complaint = Complaint::from(format!("the joint sets the force on jacked {what}, and it is missing"));
            let complaint = complaint.advise("add `rated_force: ...` of the joint's maker");
            self.flaw(&candidate.size, &format!("{path}.rated_force"), complaint);
            return Ok(None);
        }
        let weight = self.jacked_weight(path, candidate, &barrel, None, Some(density))?;
        let ratio = self.handbook.ratio("clay.joint_ratio")?;
        let joint = self.joint(path, candidate, file, &ends(&barrel, None), ratio)?;
        let jacked = JackedPipe {
            end_area: EndArea::Unknown,
            weight,
            joint,
            capacity: Capacity::Rated,
            inside_diameter: barrel.inside_diameter,
            rated_force,
            free: None,
        };
        Ok(Some(named(format!("{what} {}", as_given(size)), family, &barrel, jacked)))
    }

    /// Mean over greatest stress: the packer tells it, or the file, or the joint is taken as just closed.
    pub(super) fn joint_ratio(&mut self, path: &str, candidate: &CandidateFile) -> Result<Cited<Ratio>, HandbookError> {
        let ratio = self.handbook.ratio("clay.joint_ratio")?;
        if candidate.packer.is_some() {
            let why = "the packer tells it: give one of the two";
            self.refuse(path, "joint_stress_ratio", candidate.joint_stress_ratio.as_ref(), why);
            return Ok(ratio);
        }
        Ok(self.ratio_or(candidate.joint_stress_ratio.as_ref(), path, "joint_stress_ratio", (0.01, 1.0), ratio))
    }
}

pub(super) fn named(label: String, family: Family, barrel: &Barrel, jacked: JackedPipe) -> Named {
    Named { label, family, outside_diameter: barrel.outside_diameter, jacked: Some(jacked), pulled: None }
}
