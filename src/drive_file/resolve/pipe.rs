//! Candidates: from designation and size to a pipe with all its figures.

use super::{Resolver, no_row};
use crate::drive::{Pipe, PipeKind, Pull};
use crate::drive_file::{CandidateFile, DriveFile, Material, Series};
use crate::handbook::{HandbookError, Method, MethodLimitRow};
use crate::law::Law;
use crate::laws::pull::FinalBore;
use crate::quantity::shown::plain;
use crate::quantity::{Length, Measure, Ratio, Role, Shown, UnitSystem};
use crate::source::{Cited, FieldName};
use crate::yaml::Field;

/// Label, outside diameter and the rest.
pub(super) type Named = (String, Cited<Length>, PipeKind);

/// Sizes closer than this are the same nominal size.
const SAME_SIZE: f64 = 5e-4;

pub(super) fn same_size(a: Length, b: Length) -> bool {
    (a.si() - b.si()).abs() < SAME_SIZE
}

impl Resolver<'_> {
    pub(super) fn pipe(
        &mut self,
        index: usize,
        candidate: &CandidateFile,
        file: &DriveFile,
        pull: Option<&Pull>,
    ) -> Result<Option<Pipe>, HandbookError> {
        let path = format!("candidates[{index}]");
        let size = self.positive(&candidate.size, &format!("{path}.size"), Role::Diameter);
        let casing =
            candidate.casing.as_ref().map(|field| self.positive(field, &format!("{path}.casing"), Role::Diameter));
        let material = candidate.material.value;
        let dimensions = match material {
            Material::Clay => self.clay(&path, candidate, size)?,
            _ => self.pe(&path, candidate, size, file, pull)?,
        };
        let Some((label, outside_diameter, kind)) = dimensions else { return Ok(None) };
        if let (Some(field), Some(casing)) = (&candidate.casing, casing)
            && casing < outside_diameter.value
        {
            self.flaw(field, &format!("{path}.casing"), format!("is smaller than {label}, which it makes room for"));
        }
        let rule = self.handbook.bore_rule()?.get("general").ok_or_else(|| no_row("bore_rule", "general"))?;
        let needed = FinalBore {
            outside_diameter: outside_diameter.value,
            times: rule.value.times.value,
            plus: rule.value.plus.value,
        };
        let bore_rule = Cited::new(needed.value(), rule.origin);
        let bore = match &candidate.bore {
            Some(field) => {
                let bore = self.positive(field, &format!("{path}.bore"), Role::Diameter);
                if bore <= outside_diameter.value {
                    self.flaw(field, &format!("{path}.bore"), format!("is no larger than {label} itself"));
                }
                Cited::given(bore, &FieldName("candidates[].bore"))
            }
            None => {
                if material != Material::Clay {
                    self.assume_one(format!("{path}.bore"), bore_rule, Role::Diameter);
                }
                bore_rule
            }
        };
        let mut pipe = Pipe {
            jacking_length: self.published_length(Method::PipeJacking, outside_diameter.value)?,
            pullback_length: self.published_length(Method::Pullback, outside_diameter.value)?,
            label,
            outside_diameter,
            kind,
            casing,
            bore,
            bore_rule,
            excluded: Vec::new(),
        };
        for row in self.handbook.exclusion()?.iter() {
            let bars = &row.value.value;
            let family = bars.family.value == pipe.family();
            let service = bars.service.as_ref().is_none_or(|service| service.value == file.service.value);
            if family && service {
                pipe.excluded.push((bars.method.as_ref().map(|method| method.value), row.origin));
            }
        }
        Ok(Some(pipe))
    }

    /// Longest drive of the published range of a method that includes the diameter.
    fn published_length(&self, method: Method, diameter: Length) -> Result<Option<Cited<Length>>, HandbookError> {
        let fits = |row: &MethodLimitRow| {
            row.method.value == method
                && row.od_from.as_ref().is_none_or(|from| diameter >= from.value)
                && row.od_to.as_ref().is_none_or(|to| diameter <= to.value)
        };
        Ok(self.handbook.method_limit()?.find(fits).map(|row| row.map(|row| row.length.value)))
    }

    pub(super) fn refuse<T>(&mut self, path: &str, key: &str, field: Option<&Field<T>>, why: &str) {
        if let Some(field) = field {
            self.flaw(field, &format!("{path}.{key}"), why);
        }
    }

    pub(super) fn ratio_or(
        &mut self,
        given: Option<&Field<Ratio>>,
        path: &str,
        key: &'static str,
        (least, most): (f64, f64),
        row: Cited<Ratio>,
    ) -> Cited<Ratio> {
        let Some(field) = given else {
            self.assume_one(format!("{path}.{key}"), row, Role::Ratio);
            return row;
        };
        if !(field.value.si() >= least && field.value.si() <= most) {
            let message = format!("expected a number from {least} to {most}, got {}", plain(field.value.si()));
            self.flaw(field, &format!("{path}.{key}"), message);
        }
        let name = if key == "factor" { &FieldName("candidates[].factor") } else { JOINT };
        Cited::given(field.value, name)
    }
}

const JOINT: &FieldName = &FieldName("candidates[].joint_stress_ratio");

/// A nominal size as the series writes it.
pub(super) fn size_text(size: Length, series: Series) -> String {
    let system = if series == Series::Iso { UnitSystem::Si } else { UnitSystem::Us };
    let (value, unit) = Shown::of(size, Role::Diameter).in_units(system);
    format!("{} {unit}", plain((value * 100.0).round() / 100.0))
}
