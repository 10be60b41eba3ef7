//! A steel pipe that is jacked: section, grade and the coefficients of its schemes.

use super::Resolver;
use super::concrete::ends;
use super::jacked::{Barrel, of_row};
use super::label::as_given;
use super::pipe::{Named, same_size};
use super::steering::Ends;
use crate::drive::{
    Capacity, EndArea, FreeLength, JackedPipe, LocalCurve, RingKind, SteelAnnex, SteelCode, SteelEnd, SteelScheme,
};
use crate::drive_file::{CandidateFile, DriveFile, EndScheme};
use crate::handbook::{Family, HandbookError};
use crate::quantity::{Length, Pressure, Ratio, Role};
use crate::source::{Cited, FieldName};
use crate::yaml::{Complaint, Field, did_you_mean};

impl Resolver<'_> {
    pub(super) fn jacked_steel(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        file: &DriveFile,
        size: Length,
    ) -> Result<Option<Named>, HandbookError> {
        self.refuse_foreign(path, candidate, "steel pipe");
        let spared = ["yield_strength", "steel_grade", "design_strength", "scheme"];
        self.refuse_strengths(
            path,
            candidate,
            &spared,
            "does not apply to steel pipe: give yield_strength or steel_grade",
        );
        let welded = "steel pipe is welded: its section bears";
        self.refuse(path, "end_bearing_area", candidate.end_bearing_area.as_ref(), welded);
        self.refuse(path, "joint_stress_ratio", candidate.joint_stress_ratio.as_ref(), welded);
        self.refuse(path, "packer.thickness", candidate.packer.as_ref().map(|packer| &packer.thickness), welded);
        self.refuse(path, "end_squareness", candidate.end_squareness.as_ref(), welded);
        let casing = self.handbook.steel_casing_pipe()?.find(|row| same_size(row.outside_diameter.value, size));
        let table = match casing {
            Some(row) => {
                let (outside, wall) = (row.value.outside_diameter.value, row.value.wall.value);
                Some(of_row((outside, Some(outside - 2.0 * wall)), row.origin))
            }
            None => {
                let row = self.handbook.pe_ips()?.find(|row| same_size(row.size.value, size));
                match row {
                    // A proposed pipe has the wall that it would be pulled with, and is checked for it.
                    Some(row) if self.proposing.is_some() => {
                        let outside = row.value.outside_diameter.value;
                        let wall = self.guide_wall(outside)?;
                        Some(wall.map(|wall| (outside, Some(outside - 2.0 * wall))))
                    }
                    row => row.map(|row| row.map(|row| (row.outside_diameter.value, None))),
                }
            }
        };
        let Some(barrel) = self.barrel(path, candidate, table) else {
            let sizes = self.handbook.steel_casing_pipe()?.iter().map(|row| row.value.value.outside_diameter.value);
            self.no_such_size(path, candidate, "steel pipe", sizes);
            return Ok(None);
        };
        let Some(inside_diameter) = barrel.inside_diameter else {
            let complaint = Complaint::from("the wall of the steel pipe is missing");
            self.flaw(&candidate.size, &format!("{path}.wall"), complaint.advise("add `wall: 10 mm`"));
            return Ok(None);
        };
        let steel = self.steel_end(path, candidate, file, &barrel, inside_diameter)?;
        let weight = self.jacked_weight(path, candidate, &barrel, None, Some("steel"))?;
        let ratio = self.handbook.ratio("clay.joint_ratio")?;
        let welded = Ends { turn: false, ..ends(&barrel, None) };
        let joint = self.joint(path, candidate, file, &welded, ratio)?;
        let jacked = JackedPipe {
            end_area: EndArea::Ring {
                outside_diameter: barrel.outside_diameter.value,
                inside_diameter,
                kind: RingKind::Section,
            },
            weight,
            joint,
            capacity: Capacity::Steel(steel),
            inside_diameter: Some(inside_diameter),
            rated_force: self.rated_force(path, candidate),
            free: self.free(path, candidate)?,
        };
        Ok(Some(Named {
            label: format!("steel {}", as_given(size)),
            family: Family::Steel,
            outside_diameter: barrel.outside_diameter,
            jacked: Some(jacked),
            pulled: None,
        }))
    }

    fn free(&mut self, path: &str, candidate: &CandidateFile) -> Result<Option<FreeLength>, HandbookError> {
        const NAME: &FieldName = &FieldName("candidates[].free_length");
        let Some(field) = &candidate.free_length else { return Ok(None) };
        self.free_length(field, &format!("{path}.free_length"), NAME).map(Some)
    }

    /// Effective over free length of a column whose head is free to move aside.
    pub(super) fn one_free(&self) -> Result<Cited<Ratio>, HandbookError> {
        self.handbook.column_length()?.value("one_free")
    }

    /// A length that nothing holds, its head free to move aside.
    pub(super) fn free_length(
        &mut self,
        field: &Field<Length>,
        path: &str,
        name: &'static FieldName,
    ) -> Result<FreeLength, HandbookError> {
        let length = Cited::given(self.positive(field, path, Role::Distance), name);
        let length_factor = self.one_free()?;
        self.assume_one(format!("{path}: effective over free length"), length_factor, Role::Ratio);
        Ok(FreeLength { length, length_factor })
    }

    /// A section with the factors of the tables, by the safer of their schemes.
    pub(super) fn steel_section(
        &self,
        file: &DriveFile,
        outside_diameter: Length,
        wall: Length,
        yield_strength: Cited<Pressure>,
    ) -> Result<SteelEnd, HandbookError> {
        let factors = self.handbook.steel_factor()?;
        let annex = SteelAnnex::read(factors)?;
        let long = self.handbook.length("steel.long_drive")?;
        let first = file.ground.first().map(|stretch| stretch.class.value);
        let mixed =
            file.ground.iter().any(|stretch| stretch.mixed_with.is_some() || Some(stretch.class.value) != first);
        let hard = file.length.value >= long.value || mixed;
        let design_strength = self.steel_row("q235_design_low")?;
        Ok(SteelEnd {
            scheme: if hard { SteelScheme::DefaultAndAnnex } else { SteelScheme::Default },
            outside_diameter,
            wall,
            yield_strength,
            modulus: self.steel_modulus()?.value,
            yield_factor: factors.value("default_yield")?,
            local_share: factors.value("default_local")?,
            local: LocalCurve::read(factors)?,
            annex,
            stability: if hard { annex.general } else { annex.short },
            // No design strength lies above the yield of the pipe itself.
            design_strength: if design_strength.value > yield_strength.value {
                yield_strength
            } else {
                design_strength
            },
            code: SteelCode::read(factors)?,
        })
    }

    fn steel_end(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        file: &DriveFile,
        barrel: &Barrel,
        inside_diameter: Length,
    ) -> Result<SteelEnd, HandbookError> {
        let yield_strength = self.yield_strength(path, candidate)?;
        let (outside_diameter, wall) =
            (barrel.outside_diameter.value, (barrel.outside_diameter.value - inside_diameter) / 2.0);
        let safer = self.steel_section(file, outside_diameter, wall, yield_strength)?;
        let yield_factor = match &candidate.factor {
            Some(field) => self.steel_factor(field, &format!("{path}.factor"), &FieldName("candidates[].factor"))?,
            None => {
                self.assume_one(format!("{path}.factor"), safer.yield_factor, Role::Ratio);
                safer.yield_factor
            }
        };
        let scheme = match candidate.scheme.as_ref().map(|field| (field, field.value)) {
            None | Some((_, EndScheme::Default)) => safer.scheme,
            Some((_, EndScheme::CnAnnexE)) => SteelScheme::Annex,
            Some((field, _)) => {
                let complaint = Complaint::from("is for concrete pipe");
                self.flaw(field, &format!("{path}.scheme"), complaint.advise("for steel: default or cn_annex_e"));
                SteelScheme::Default
            }
        };
        let design_strength = match &candidate.design_strength {
            Some(field) => {
                let strength = self.positive(field, &format!("{path}.design_strength"), Role::Strength);
                if strength > yield_strength.value {
                    self.flaw(field, &format!("{path}.design_strength"), "is more than the yield strength");
                }
                Cited::given(strength, &FieldName("candidates[].design_strength"))
            }
            None => {
                let strength = safer.design_strength;
                if scheme != SteelScheme::Default {
                    self.assume_one(format!("{path}.design_strength"), strength, Role::Strength);
                }
                strength
            }
        };
        self.assume_modulus(path)?;
        Ok(SteelEnd { scheme, yield_factor, design_strength, ..safer })
    }

    /// The user's factor on the yield strength; below that of any pipe in microtunnelling it is none.
    pub(super) fn steel_factor(
        &mut self,
        field: &Field<Ratio>,
        path: &str,
        name: &'static FieldName,
    ) -> Result<Cited<Ratio>, HandbookError> {
        let least = self.handbook.steel_factor()?.value("ttp_microtunnel")?.value;
        let (least, most) = (crate::quantity::Measure::si(least), 20.0);
        if !(field.value >= Ratio::from(least) && field.value <= Ratio::from(most)) {
            let read = crate::quantity::shown::plain(crate::quantity::Measure::si(field.value));
            self.flaw(field, path, format!("expected a number from {least} to {most}, got {read}"));
        }
        Ok(Cited::given(field.value, name))
    }

    /// The modulus that the section of a steel tube is reckoned with.
    pub(super) fn assume_modulus(&mut self, path: &str) -> Result<(), HandbookError> {
        let modulus = self.steel_modulus()?;
        self.assume_one(format!("{path}: modulus of steel"), modulus, Role::Modulus);
        Ok(())
    }

    fn steel_modulus(&self) -> Result<Cited<Pressure>, HandbookError> {
        self.handbook.steel_pull_stress()?.value("modulus")
    }

    pub(super) fn steel_row(&self, key: &'static str) -> Result<Cited<Pressure>, HandbookError> {
        Ok(self.handbook.steel_grade()?.row(key)?.map(|row| row.stress.value))
    }

    fn yield_strength(&mut self, path: &str, candidate: &CandidateFile) -> Result<Cited<Pressure>, HandbookError> {
        match (&candidate.yield_strength, &candidate.steel_grade) {
            (Some(field), grade) => {
                if let Some(grade) = grade {
                    self.flaw(grade, &format!("{path}.steel_grade"), "give either steel_grade or yield_strength");
                }
                let strength = self.positive(field, &format!("{path}.yield_strength"), Role::Strength);
                Ok(Cited::given(strength, &FieldName("candidates[].yield_strength")))
            }
            (None, Some(field)) => {
                let table = self.handbook.steel_grade()?;
                let yields = || table.iter().filter(|row| row.value.value.kind.value.0 == "yield");
                if let Some(row) = yields().find(|row| row.value.key == field.value.0) {
                    return Ok(row.map(|row| row.value.stress.value));
                }
                let known = yields().map(|row| row.value.key.as_str()).collect::<Vec<_>>().join(", ");
                let complaint = Complaint::from(format!("no grade of steel \"{}\" in the table", field.value.0));
                let keys: Vec<&str> = yields().map(|row| row.value.key.as_str()).collect();
                let near = did_you_mean(&field.value.0, &keys, &[]);
                self.flaw(field, &format!("{path}.steel_grade"), complaint.advise(format!("{near}there are {known}")));
                self.steel_row("casing_least")
            }
            (None, None) => {
                let strength = self.steel_row("casing_least")?;
                self.assume_one(format!("{path}.yield_strength"), strength, Role::Strength);
                Ok(strength)
            }
        }
    }
}
