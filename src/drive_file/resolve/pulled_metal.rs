//! Pulled metal pipe: ductile iron with restrained joints, and welded steel.

use super::label::{as_given, as_written};
use super::pipe::{Named, same_size, size_text};
use super::{Resolver, no_row};
use crate::drive::{Barrel, JointedPipe, Pull, PulledPipe, SteelFactors, SteelPipe};
use crate::drive_file::{CandidateFile, DriveFile, Series};
use crate::handbook::{Family, HandbookError, SteelPullWallRow};
use crate::quantity::{Length, LineLoad, Pressure, Ratio, Role, Shown};
use crate::source::{Cited, FieldName};
use crate::yaml::{Complaint, did_you_mean};

impl Resolver<'_> {
    pub(super) fn ductile_iron(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        size: Length,
        file: &DriveFile,
        pull: Option<&Pull>,
    ) -> Result<Option<Named>, HandbookError> {
        self.refuse_pushed(path, candidate);
        self.refuse_steel(path, candidate);
        self.refuse(path, "sdr", candidate.sdr.as_ref(), "an iron pipe has no dimension ratio");
        self.refuse(path, "ovality", candidate.ovality.as_ref(), "is for plastic pipe");
        self.refuse(path, "joint_factor", candidate.joint_factor.as_ref(), "is for fused pipe");
        let metric = self.metric_iron_pipe(path, candidate, size)?;
        let outside_diameter = match metric {
            Some((outside_diameter, _)) => Some(outside_diameter),
            None => self.cast_iron_size(path, candidate, size)?,
        };
        let Some(outside_diameter) = outside_diameter else { return Ok(None) };
        let table = metric.map(|(_, wall)| wall);
        let Some(wall) = self.iron_wall(path, candidate, outside_diameter.value, table) else {
            let complaint =
                Complaint::from("the wall of the iron pipe is missing").advise("add `wall: ...` of its class");
            self.flaw(&candidate.size, &format!("{path}.wall"), complaint);
            return Ok(None);
        };
        let Some(pull) = self.how_pulled(candidate, file, pull) else { return Ok(None) };
        let joint = self.joint_pull(path, candidate, file, pull);
        let deflection = self.joint_deflection(path, candidate, pull, true);
        let Some(joint) = joint else { return Ok(None) };
        let density = self.density("ductile_iron")?;
        let weight = self.given_weight(path, candidate);
        if weight.is_none() {
            self.assume_one(format!("{path}: density, without lining"), density, Role::Density);
        }
        let heavy = self.heavy_iron(path, size, wall, weight.is_some())?;
        let stiff = self.handbook.pressure("iron.modulus")?;
        self.assume_one(format!("{path}: modulus of ductile iron"), stiff, Role::Modulus);
        let barrel = Barrel::Iron { wall, density: density.value, modulus: stiff.value, heavy };
        let pulled = PulledPipe::Jointed(Box::new(JointedPipe { barrel, pull: joint, deflection, weight }));
        let series = if metric.is_some() { Series::Iso } else { Series::Ips };
        let label = format!("ductile iron {}", size_text(size, series));
        Ok(Some(Named { label, family: Family::DuctileIron, outside_diameter, jacked: None, pulled: Some(pulled) }))
    }

    pub(super) fn pulled_steel(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        size: Length,
        file: &DriveFile,
        pull: Option<&Pull>,
    ) -> Result<Option<Named>, HandbookError> {
        self.refuse_pushed(path, candidate);
        self.refuse_joint_ratings(path, candidate);
        self.refuse(path, "sdr", candidate.sdr.as_ref(), "a steel pipe has no dimension ratio");
        self.refuse(path, "joint_factor", candidate.joint_factor.as_ref(), "is for fused pipe");
        let Some(outside_diameter) = self.steel_outside(path, candidate, size)? else { return Ok(None) };
        let Some(wall) = self.steel_wall(path, candidate, outside_diameter.value)? else { return Ok(None) };
        let Some(yield_strength) = self.steel_yield(path, candidate)? else { return Ok(None) };
        if self.how_pulled(candidate, file, pull).is_none() {
            return Ok(None);
        }
        let round = self.handbook.ovality()?.value("steel_formula")?.value;
        if let Some(field) =
            candidate.ovality.as_ref().filter(|field| !(field.value >= Ratio::default() && field.value <= round))
        {
            let message = "the check of outside pressure holds for steel pipe at most 1 % out of round";
            self.flaw(field, &format!("{path}.ovality"), message);
        }
        let density = self.density("steel")?;
        let weight = self.given_weight(path, candidate);
        if weight.is_none() {
            self.assume_one(format!("{path}: density, without coating"), density, Role::Density);
        }
        let bend_ratio = self.bend_ratio("steel_habit")?;
        self.assume_one(format!("{path}: smallest radius over outside diameter, by habit"), bend_ratio, Role::Ratio);
        let modulus = self.steel_pull_stress("modulus")?;
        self.assume_one(format!("{path}: modulus of steel"), modulus, Role::Modulus);
        let steel = SteelPipe {
            wall,
            density: density.value,
            weight,
            yield_strength,
            modulus: modulus.value,
            factors: SteelFactors::read(self.handbook.steel_pull_factor()?)?,
            bending_ends: (
                self.steel_pull_stress("bending_low_end")?.value,
                self.steel_pull_stress("bending_middle_end")?.value,
            ),
            bend_ratio,
        };
        let shown = Shown::of(wall.value, Role::Wall).display(self.system).to_string();
        let label = format!("steel {} wall {shown}", as_given(size));
        let pulled = Some(PulledPipe::Steel(Box::new(steel)));
        Ok(Some(Named { label, family: Family::Steel, outside_diameter, jacked: None, pulled }))
    }

    fn given_weight(&mut self, path: &str, candidate: &CandidateFile) -> Option<LineLoad> {
        candidate.weight.as_ref().map(|field| self.positive(field, &format!("{path}.weight"), Role::LineWeight))
    }

    fn steel_outside(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        size: Length,
    ) -> Result<Option<Cited<Length>>, HandbookError> {
        if let Some(field) = &candidate.outside_diameter {
            let diameter = self.positive(field, &format!("{path}.outside_diameter"), Role::Diameter);
            return Ok(Some(Cited::given(diameter, &FieldName("candidates[].outside_diameter"))));
        }
        // Steel pipe has the outside diameters of the iron pipe sizes.
        let table = self.handbook.pe_ips()?;
        if let Some(row) = table.find(|row| same_size(row.size.value, size)) {
            let diameter = row.map(|row| row.outside_diameter.value);
            self.assume_one(format!("{path}.outside_diameter"), diameter, Role::Diameter);
            return Ok(Some(diameter));
        }
        let message = format!("no iron pipe size {} in the table", as_written(&candidate.size));
        let sizes = table.rows.iter().map(|row| size_text(row.value.size.value, Series::Ips)).collect::<Vec<_>>();
        let casings = self.handbook.steel_casing_pipe()?.rows.iter();
        let casings = casings.map(|row| size_text(row.value.outside_diameter.value, Series::Iso)).collect::<Vec<_>>();
        let complaint = Complaint::from(message).advise(format!(
            "there are {}, and to be jacked alone casings of {}; for another give outside_diameter",
            sizes.join(", "),
            casings.join(", ")
        ));
        self.flaw(&candidate.size, &format!("{path}.size"), complaint);
        Ok(None)
    }

    /// Given, or where the guide begins.
    fn steel_wall(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        outside_diameter: Length,
    ) -> Result<Option<Cited<Length>>, HandbookError> {
        if let Some(field) = &candidate.wall {
            let wall = self.tube_wall(field, &format!("{path}.wall"), outside_diameter);
            return Ok(Some(Cited::given(wall, &FieldName("candidates[].wall"))));
        }
        let wall = self.guide_wall(outside_diameter)?;
        self.assume_one(format!("{path}.wall"), wall, Role::Wall);
        Ok(Some(wall))
    }

    /// Wall where the guide begins.
    pub(super) fn guide_wall(&self, outside_diameter: Length) -> Result<Cited<Length>, HandbookError> {
        // The guide goes by nominal size; the outside diameter is the safer, being no smaller.
        let fits = |row: &SteelPullWallRow| {
            row.size_over.as_ref().is_none_or(|over| outside_diameter > over.value)
                && row.size_to.as_ref().is_none_or(|to| outside_diameter <= to.value)
        };
        let row =
            self.handbook.steel_pull_wall()?.find(fits).ok_or_else(|| no_row("steel_pull_wall", "the diameter"))?;
        let wall = match (&row.value.wall, &row.value.diameter_over_wall) {
            (Some(wall), _) => wall.value,
            (None, Some(ratio)) => outside_diameter / ratio.value,
            (None, None) => return Err(no_row("steel_pull_wall", "a wall")),
        };
        Ok(Cited::new(wall, row.origin))
    }

    fn steel_yield(&mut self, path: &str, candidate: &CandidateFile) -> Result<Option<Cited<Pressure>>, HandbookError> {
        let table = self.handbook.steel_grade()?;
        let least = || table.rows.iter().filter(|row| row.value.kind.value.0 == "yield");
        match (&candidate.yield_strength, &candidate.steel_grade) {
            (Some(field), None) => {
                let value = self.positive(field, &format!("{path}.yield_strength"), Role::Strength);
                Ok(Some(Cited::given(value, &FieldName("candidates[].yield_strength"))))
            }
            (None, Some(field)) => {
                let key = field.value.0.as_str();
                if least().any(|row| row.key == key)
                    && let Some(row) = table.get(key)
                {
                    let value = row.map(|row| row.stress.value);
                    self.assume_one(format!("{path}.steel_grade (yield strength)"), value, Role::Strength);
                    return Ok(Some(value));
                }
                let known = least().map(|row| row.key.as_str()).collect::<Vec<_>>().join(", ");
                let complaint = Complaint::from(format!("no yield strength of the grade \"{key}\" in the table"));
                let keys: Vec<&str> = least().map(|row| row.key.as_str()).collect();
                let near = did_you_mean(key, &keys, &[]);
                let complaint = complaint.advise(format!("{near}there are {known}; or give yield_strength"));
                self.flaw(field, &format!("{path}.steel_grade"), complaint);
                Ok(None)
            }
            (Some(field), Some(_)) => {
                self.flaw(field, &format!("{path}.yield_strength"), "give either the grade or the yield, not both");
                Ok(None)
            }
            (None, None) => {
                let complaint = Complaint::from("the yield strength of the steel is missing");
                let complaint = complaint.advise("add `steel_grade: api_5l_b` or `yield_strength: 35 ksi`");
                self.flaw(&candidate.material, &format!("{path}.steel_grade"), complaint);
                Ok(None)
            }
        }
    }

    fn steel_pull_stress(&self, key: &str) -> Result<Cited<Pressure>, HandbookError> {
        self.handbook.steel_pull_stress()?.value(key)
    }
}
