//! A PE pipe out of designation and size.

use super::Resolver;
use super::label::as_written;
use super::pipe::{Named, same_size, size_text};
use crate::drive::{AssumedValue, PePipe, Pull, PulledPipe};
use crate::drive_file::{CandidateFile, DriveFile, Material, Series, Welds};
use crate::handbook::Family;
use crate::handbook::HandbookError;
use crate::quantity::shown::{decimal, plain};
use crate::quantity::{Length, Measure, Ratio, Role, Shown};
use crate::source::{Cited, FieldName};
use crate::yaml::Complaint;

/// Outside diameter and wall.
type Section = (Cited<Length>, Cited<Length>);

impl Resolver<'_> {
    pub(super) fn pe(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        size: Length,
        file: &DriveFile,
        pull: Option<&Pull>,
    ) -> Result<Option<Named>, HandbookError> {
        self.refuse_jacked(path, candidate);
        self.refuse(path, "end_bearing_area", candidate.end_bearing_area.as_ref(), "a PE pipe is pulled, not pushed");
        self.refuse(path, "weight", candidate.weight.as_ref(), "is for pipe that is pushed");
        self.refuse(path, "certificate", candidate.certificate.as_ref(), "is for clay pipe");
        self.refuse(path, "factor", candidate.factor.as_ref(), "is for clay pipe");
        self.refuse(path, "joint_stress_ratio", candidate.joint_stress_ratio.as_ref(), "is for pipe that is pushed");
        self.refuse(path, "casing", candidate.casing.as_ref(), "is for pipe that is pushed");
        self.refuse_joint(path, candidate);
        self.refuse_steel(path, candidate);
        self.refuse(path, "joint_factor", candidate.joint_factor.as_ref(), "is for PVC pipe; see pull.welds");
        let material = candidate.material.value;
        let row = self.handbook.pe_material()?.row(material.key())?;
        let series = match &candidate.series {
            Some(field) => field.value,
            None => {
                let european = matches!(material, Material::Pe100 | Material::Pe80);
                let series = if european { Series::Iso } else { Series::Ips };
                self.assume(format!("{path}.series"), AssumedValue::Word(series.key().to_owned()), row.origin);
                series
            }
        };
        let Some((outside_diameter, wall)) = self.pe_section(path, candidate, size, series)? else {
            return Ok(None);
        };
        let Some(pull) = pull else {
            if file.pull.is_none() {
                let complaint = Complaint::from("a PE pipe is pulled, and how is missing")
                    .advise("add `pull: { duration: 6 h, pipe_temperature: 25 degC }`");
                self.flaw(&candidate.material, "pull", complaint);
            }
            return Ok(None);
        };
        let (whole, name) = match (series, material) {
            (Series::Iso, _) => (size_text(size, series), material.key().to_uppercase()),
            (Series::Ips, _) => (format!("IPS {}", size_text(size, series)), material.key().to_uppercase()),
        };
        let ratio = outside_diameter.value / wall.value;
        let label = match &candidate.sdr {
            Some(sdr) => {
                format!("{name} {whole} {} {}", if series == Series::Iso { "SDR" } else { "DR" }, sdr.value.si())
            }
            None => format!("{name} {whole}, wall ratio {}", decimal(ratio.si(), 1)),
        };
        let welds = file.pull.as_ref().and_then(|pull| pull.welds.as_ref()).map(|field| field.value);
        let documented = welds == Some(Welds::Documented);
        let weld_factor = self.handbook.ratio(if documented { "pe.weld_documented" } else { "pe.weld_unknown" })?;
        self.assume_one(format!("{path}: density"), row.map(|row| row.density.value), Role::Density);
        if welds.is_none() {
            let shown = AssumedValue::One(Shown::of(weld_factor.value, Role::Ratio));
            self.assume_of_pull("pull.welds (factor)", shown, weld_factor.origin);
        }
        let ovality = self.declared_ovality(path, candidate);
        let stresses = self.stresses(path, candidate, &row, file, pull)?;
        let kind = PePipe {
            wall,
            density: row.value.density.value,
            stresses,
            upper_temperature: self.upper_temperature()?,
            weld_factor,
            ovality,
            soft: self.modulus(&row.value.soft.value.0, pull, pull.load_duration)?,
            stiff: self.modulus(&row.value.stiff.value.0, pull, pull.duration)?,
            times: self.times(&row.value.soft.value.0, &row.value.stiff.value.0, pull, file)?,
        };
        let pulled = Some(PulledPipe::Pe(Box::new(kind)));
        Ok(Some(Named { label, family: Family::Pe, outside_diameter, jacked: None, pulled }))
    }

    fn pe_section(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        size: Length,
        series: Series,
    ) -> Result<Option<Section>, HandbookError> {
        const OUTSIDE: &FieldName = &FieldName("candidates[].outside_diameter");
        let sdr = candidate.sdr.as_ref().map(|field| {
            if !(5.0..=50.0).contains(&field.value.si()) {
                let message = format!("expected a dimension ratio from 5 to 50, got {}", plain(field.value.si()));
                self.senseless(field, &format!("{path}.sdr"), message);
            }
            field.value
        });
        let given = candidate.outside_diameter.as_ref().map(|field| {
            Cited::given(self.positive(field, &format!("{path}.outside_diameter"), Role::Diameter), OUTSIDE)
        });
        let outside_diameter = match (given, series) {
            (Some(given), _) => given,
            (None, Series::Iso) => Cited::given(size, &FieldName("candidates[].size")),
            (None, Series::Ips) => {
                let table = self.handbook.pe_ips()?;
                let Some(row) = table.find(|row| same_size(row.size.value, size)) else {
                    let sizes = table.rows.iter().map(|row| size_text(row.value.size.value, series));
                    let known = sizes.collect::<Vec<_>>().join(", ");
                    let message = format!("no iron pipe size {} in the table", as_written(&candidate.size));
                    let complaint = Complaint::from(message).advise(format!("there are {known}"));
                    self.flaw(&candidate.size, &format!("{path}.size"), complaint);
                    return Ok(None);
                };
                row.map(|row| row.outside_diameter.value)
            }
        };
        let wall = match (&candidate.wall, sdr) {
            (Some(field), _) => {
                let wall = self.positive(field, &format!("{path}.wall"), Role::Diameter);
                if 2.0 * wall >= outside_diameter.value {
                    self.flaw(field, &format!("{path}.wall"), "leaves no bore inside the pipe");
                } else if let (Some(sdr), Some(field)) = (sdr, &candidate.sdr)
                    && ((outside_diameter.value / wall).si() / sdr.si() - 1.0).abs() > 0.05
                {
                    let by_wall = (outside_diameter.value / wall).si();
                    let message =
                        format!("{} contradicts the wall, which gives {}", plain(sdr.si()), decimal(by_wall, 1));
                    self.flaw(field, &format!("{path}.sdr"), message);
                }
                Cited::given(wall, &FieldName("candidates[].wall"))
            }
            (None, Some(sdr)) if series == Series::Iso && given.is_none() => {
                let table = self.handbook.pe_iso4427()?;
                let fits = |row: &crate::handbook::PeWallRow| {
                    same_size(row.size.value, size) && (row.sdr.value.si() - sdr.si()).abs() < 0.01
                };
                match table.find(fits) {
                    Some(row) => row.map(|row| row.wall.value),
                    None => {
                        self.no_iso_pipe(path, candidate, sdr)?;
                        return Ok(None);
                    }
                }
            }
            (None, Some(sdr)) => Cited::new(outside_diameter.value / sdr, outside_diameter.origin),
            (None, None) => {
                let complaint =
                    Complaint::from("the wall of the PE pipe is missing").advise("add `sdr: 11` or `wall: ...`");
                self.flaw(&candidate.size, &format!("{path}.sdr"), complaint);
                return Ok(None);
            }
        };
        Ok(Some((outside_diameter, wall)))
    }

    /// Which of size and ratio the table does not have, and what it has.
    fn no_iso_pipe(&mut self, path: &str, candidate: &CandidateFile, sdr: Ratio) -> Result<(), HandbookError> {
        let rows = &self.handbook.pe_iso4427()?.rows;
        let rising = |values: &mut dyn Iterator<Item = f64>| {
            let mut values: Vec<f64> = values.collect();
            values.sort_by(f64::total_cmp);
            values.dedup();
            values
        };
        let of_size = rows.iter().filter(|row| same_size(row.value.size.value, candidate.size.value));
        let ratios = rising(&mut of_size.map(|row| row.value.sdr.value.si()));
        if let (Some(field), false) = (&candidate.sdr, ratios.is_empty()) {
            let size = size_text(candidate.size.value, Series::Iso);
            let message = format!("no ISO 4427 pipe of {size} SDR {} in the table", plain(sdr.si()));
            let known = ratios.into_iter().map(plain).collect::<Vec<_>>().join(", ");
            let complaint = Complaint::from(message).advise(format!("there are {known}; for another give wall"));
            self.flaw(field, &format!("{path}.sdr"), complaint);
        } else {
            let message = format!("no ISO 4427 pipe of {} in the table", as_written(&candidate.size));
            let sizes = rising(&mut rows.iter().map(|row| row.value.size.value.si()));
            let sizes = sizes.into_iter().map(|size| size_text(Length::from_si(size), Series::Iso));
            let known = sizes.collect::<Vec<_>>().join(", ");
            let complaint = Complaint::from(message).advise(format!("there are {known}; for another give wall"));
            self.flaw(&candidate.size, &format!("{path}.size"), complaint);
        }
        Ok(())
    }
}
