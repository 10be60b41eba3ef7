//! A clay jacking pipe out of designation and size.

use super::Resolver;
use super::label::{as_given, as_written};
use super::pipe::{Named, same_size, size_text};
use super::steering::Ends;
use crate::drive::{AssumedValue, Capacity, EndArea, JackedPipe};
use crate::drive_file::{CandidateFile, Certificate, DriveFile, Series};
use crate::handbook::{Family, HandbookError};
use crate::quantity::{Length, Role};
use crate::source::{Cited, FieldName};
use crate::yaml::Complaint;

/// Share by which a given diameter may differ from that of the row and still be the same pipe: maker's tolerance.
const SAME_PIPE: f64 = 0.01;

impl Resolver<'_> {
    pub(super) fn clay(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        file: &DriveFile,
        size: Length,
    ) -> Result<Option<Named>, HandbookError> {
        self.refuse(path, "series", candidate.series.as_ref(), "a clay pipe has no series");
        self.refuse(path, "sdr", candidate.sdr.as_ref(), "a clay pipe has no dimension ratio");
        self.refuse_strengths(path, candidate, &[], "does not apply to clay pipe: give the certificate");
        self.refuse(path, "free_length", candidate.free_length.as_ref(), "is for steel pipe");
        self.refuse_joint_ratings(path, candidate);
        self.refuse(path, "joint_factor", candidate.joint_factor.as_ref(), "is for fused pipe");
        if let Some(passes) = candidate.passes.as_ref().and_then(|passes| passes.first()) {
            self.flaw(passes, &format!("{path}.passes[0]"), "reaming passes are for pipe that is pulled");
        }
        let table = self.handbook.clay_pipe()?;
        let row = table.find(|row| same_size(row.size.value, size));
        let label = format!("clay {}", as_given(size));
        let outside_diameter = match (&candidate.outside_diameter, row) {
            (Some(field), _) => {
                let diameter = self.positive(field, &format!("{path}.outside_diameter"), Role::Diameter);
                Cited::given(diameter, &FieldName("candidates[].outside_diameter"))
            }
            (None, Some(row)) => row.map(|row| row.outside_diameter.value),
            (None, None) => {
                let sizes = table.rows.iter().map(|row| size_text(row.value.size.value, Series::Ips));
                let known = sizes.collect::<Vec<_>>().join(", ");
                let message = format!("no clay jacking pipe of {} in the table", as_written(&candidate.size));
                let advice = format!("there are {known}; for another give outside_diameter and end_bearing_area");
                self.flaw(&candidate.size, &format!("{path}.size"), Complaint::from(message).advise(advice));
                return Ok(None);
            }
        };
        // A row speaks for its own diameter only: another pipe of that name has another end and another weight.
        let row = row.filter(|row| {
            let printed = row.value.outside_diameter.value;
            (outside_diameter.value - printed).abs() <= printed * SAME_PIPE
        });
        let end_area = match (&candidate.end_bearing_area, row) {
            (Some(field), _) => {
                let area = self.positive(field, &format!("{path}.end_bearing_area"), Role::Area);
                let gross = core::f64::consts::FRAC_PI_4 * outside_diameter.value * outside_diameter.value;
                if area >= gross {
                    let message = "is not smaller than the whole circle of the outside diameter";
                    self.flaw(field, &format!("{path}.end_bearing_area"), message);
                }
                EndArea::Given(Cited::given(area, &FieldName("candidates[].end_bearing_area")))
            }
            (None, Some(row)) => {
                let rated = |key| self.handbook.ratio(key).map(|ratio| ratio.value);
                let ratings = [
                    (row.value.rated_at_2_5.value, rated("clay.factor_2_5")?),
                    (row.value.rated_at_3_0.value, rated("clay.factor_3_0")?),
                    (row.value.rated_at_3_5.value, rated("clay.factor_3_5")?),
                ];
                let word = "behind the printed ratings, net of the joint recess".to_owned();
                self.assume(format!("{path}.end_bearing_area"), AssumedValue::Word(word), row.origin);
                EndArea::Rated { ratings, strength: row.value.rating_strength.value, origin: row.origin }
            }
            (None, None) => {
                let complaint = Complaint::from("the end bearing area of a pipe that is not in the table is missing")
                    .advise("add `end_bearing_area: ...` from the pipe maker; the barrel area is much larger");
                self.flaw(&candidate.size, &format!("{path}.end_bearing_area"), complaint);
                return Ok(None);
            }
        };
        let weight = match (&candidate.weight, row) {
            (Some(field), _) => {
                let weight = self.positive(field, &format!("{path}.weight"), Role::LineWeight);
                Some(Cited::given(weight, &FieldName("candidates[].weight")))
            }
            (None, Some(row)) => {
                let weight = row.map(|row| row.weight.value);
                self.assume_one(format!("{path}.weight"), weight, Role::LineWeight);
                Some(weight)
            }
            (None, None) => None,
        };
        let certificate = candidate.certificate.as_ref().map_or(Certificate::Unknown, |field| field.value);
        let strength = self.handbook.clay_strength()?.value(certificate.key())?;
        if candidate.certificate.is_none() {
            self.assume_one(format!("{path}.certificate (strength)"), strength, Role::Strength);
        }
        let factor = self.handbook.ratio("clay.factor")?;
        let factor = self.ratio_or(candidate.factor.as_ref(), path, "factor", (2.5, 20.0), factor);
        let ratio = self.joint_ratio(path, candidate)?;
        let edge_factor = self.handbook.ratio("clay.factor_edge")?;
        self.assume_one(format!("{path}: factor on the stress at the edge of the joint"), edge_factor, Role::Ratio);
        let capacity = Capacity::Brittle { strength, factor, edge_factor };
        let inside_diameter = candidate
            .inside_diameter
            .as_ref()
            .map(|field| self.positive(field, &format!("{path}.inside_diameter"), Role::Diameter));
        let lengths = self.handbook.jacking_pipe_length()?.row("clay")?;
        let ends = Ends {
            outside_diameter: outside_diameter.value,
            inside_diameter: Some(inside_diameter.unwrap_or(size)).filter(|inside| *inside < outside_diameter.value),
            pipe_length: Some(lengths.map(|row| (row.low.value, row.high.value))),
            squareness: Some("clay"),
            turn: true,
        };
        let joint = self.joint(path, candidate, file, &ends, ratio)?;
        let jacked = Some(JackedPipe {
            end_area,
            weight,
            joint,
            capacity,
            inside_diameter,
            rated_force: self.rated_force(path, candidate),
            free: None,
        });
        Ok(Some(Named { label, family: Family::Clay, outside_diameter, jacked, pulled: None }))
    }
}
