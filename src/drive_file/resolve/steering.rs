//! What turns the joints of a jacked pipe, and the packer between them.

use super::Resolver;
use crate::drive::{AssumedValue, Joint, Packer, Steering};
use crate::drive_file::{CandidateFile, DriveFile, PackerFile, SteeringFile};
use crate::handbook::HandbookError;
use crate::quantity::{Length, Measure, Ratio, Role, Shown};
use crate::source::{Cited, Equation, FieldName, Origin};
use crate::yaml::{Complaint, Field};

/// What a joint is between.
pub(super) struct Ends {
    pub(super) outside_diameter: Length,
    pub(super) inside_diameter: Option<Length>,
    /// Length of one pipe of the table, or shortest and longest of the trade.
    pub(super) pipe_length: Option<Cited<(Length, Length)>>,
    /// Row of the table `end_squareness`.
    pub(super) squareness: Option<&'static str>,
    /// False where pipes are welded to one.
    pub(super) turn: bool,
}

/// What is taken for the diameters of a packer.
const PIPE_FACE: Equation = Equation::judged(
    "diameters of the packer",
    "those of the pipe, of its nominal bore where the true one is not given",
    "a wider ring gapes at a smaller angle, so this is on the safe side",
    "a packer no wider than the pipe",
);

const ANGLE: &FieldName = &FieldName("steering.joint_angle");
const DEVIATION: &FieldName = &FieldName("steering.deviation");
const RADIUS: &FieldName = &FieldName("steering.curve_radius");
const GAP: &FieldName = &FieldName("steering.joint_gap");
const AMPLITUDE: &FieldName = &FieldName("steering.wave_amplitude");
const HALF_WAVE: &FieldName = &FieldName("steering.half_wave");

impl Resolver<'_> {
    /// Faults of the steering, once for all pipes.
    pub(super) fn check_steering(&mut self, file: &DriveFile) {
        let Some(steering) = &file.steering else { return };
        if let Some(field) = &steering.joint_angle {
            if !(field.value.si() < core::f64::consts::FRAC_PI_4) {
                let complaint = Complaint::from("expected the angle between two pipes, below 45 deg");
                self.flaw(field, ANGLE.0, complaint.advise("write for example \"0.2 deg\""));
            }
            self.not_negative(field, ANGLE.0, Role::JointAngle);
        }
        for (field, name) in
            [(&steering.deviation, DEVIATION), (&steering.joint_gap, GAP), (&steering.wave_amplitude, AMPLITUDE)]
        {
            if let Some(field) = field {
                self.not_negative(field, name.0, Role::Offset);
            }
        }
        for (field, name) in [(&steering.curve_radius, RADIUS), (&steering.half_wave, HALF_WAVE)] {
            if let Some(field) = field {
                self.positive(field, name.0, Role::Distance);
            }
        }
        match (&steering.wave_amplitude, &steering.half_wave) {
            (Some(field), None) => {
                let complaint = Complaint::from("says nothing without the length of the wave");
                self.flaw(field, AMPLITUDE.0, complaint.advise("add `half_wave: 10 m`"));
            }
            (None, Some(field)) => {
                let complaint = Complaint::from("says nothing without the amplitude of the wave");
                self.flaw(field, HALF_WAVE.0, complaint.advise("add `wave_amplitude: 10 mm`"));
            }
            _ => {}
        }
    }

    /// Packer and steering of one pipe. Without either, the ratio of the table stands.
    pub(super) fn joint(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        file: &DriveFile,
        ends: &Ends,
        stress_ratio: Cited<Ratio>,
    ) -> Result<Joint, HandbookError> {
        let packer = match &candidate.packer {
            Some(packer) => self.packer(path, packer, ends)?,
            None => None,
        };
        let unknown = SteeringFile::unknown();
        let line = file.steering.as_ref().filter(|_| ends.turn).unwrap_or(&unknown);
        let known = (file.steering.is_some() || candidate.packer.is_some()) && ends.turn;
        let angles = self.handbook.joint_angle()?;
        let (least, warning) = (angles.value("least_assumed")?, angles.value("warning")?);
        let squareness = self.squareness(path, candidate, ends, known)?;
        if known {
            self.assume_one(format!("{path}: least angle at a joint"), least, Role::JointAngle);
        }
        let pipe_length = self.pipe_length(path, candidate, ends, line);
        let given = |field: &Option<Field<Length>>, name| field.as_ref().map(|field| Cited::given(field.value, name));
        let steering = Steering {
            joint_angle: line.joint_angle.as_ref().map(|field| Cited::given(field.value, ANGLE)),
            deviation: given(&line.deviation, DEVIATION),
            curve_radius: given(&line.curve_radius, RADIUS),
            joint_gap: given(&line.joint_gap, GAP),
            wave: given(&line.wave_amplitude, AMPLITUDE).zip(line.half_wave.as_ref().map(|field| field.value)),
            squareness,
            pipe_length,
            least,
            warning,
        };
        Ok(Joint { stress_ratio, packer, steering })
    }

    fn squareness(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        ends: &Ends,
        known: bool,
    ) -> Result<Option<Cited<Length>>, HandbookError> {
        if let Some(field) = &candidate.end_squareness {
            let given = self.not_negative(field, &format!("{path}.end_squareness"), Role::Wall);
            if given > ends.outside_diameter {
                self.flaw(field, &format!("{path}.end_squareness"), "is more than the diameter of the pipe");
            }
            return Ok(Some(Cited::given(given, &FieldName("candidates[].end_squareness"))));
        }
        let Some(key) = ends.squareness.filter(|_| known) else { return Ok(None) };
        let row = self.handbook.end_squareness()?.value(key)?;
        self.assume_one(format!("{path}.end_squareness"), row, Role::Wall);
        Ok(Some(row))
    }

    /// Length of one pipe, which the angles of deviation, curve and wave need.
    fn pipe_length(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        ends: &Ends,
        line: &SteeringFile,
    ) -> Option<(Length, Length)> {
        let path = format!("{path}.pipe_length");
        if let Some(field) = &candidate.pipe_length {
            let length = self.positive(field, &path, Role::Distance);
            return Some((length, length));
        }
        let needed = line.deviation.is_some() || line.curve_radius.is_some() || line.wave_amplitude.is_some();
        match ends.pipe_length {
            Some(row) if needed => {
                let (short, long) = row.value;
                let shown = |length| Shown::of(length, Role::Distance);
                let value = match (shown(short), shown(long)) {
                    (short, long) if short == long => AssumedValue::One(long),
                    (short, long) => AssumedValue::Range(short, long),
                };
                self.assume(path, value, row.origin);
                Some(row.value)
            }
            Some(row) => Some(row.value),
            None => {
                if needed {
                    let complaint = Complaint::from("the length of one pipe is missing, and the steering needs it");
                    self.flaw(&candidate.size, &path, complaint.advise("add `pipe_length: 2 m`"));
                }
                None
            }
        }
    }

    fn packer(&mut self, path: &str, file: &PackerFile, ends: &Ends) -> Result<Option<Packer>, HandbookError> {
        let path = format!("{path}.packer");
        let thickness = self.positive(&file.thickness, &format!("{path}.thickness"), Role::Wall);
        let residual = self.handbook.packer_residual()?.row("residual")?.map(|row| row.low.value);
        let residual = match &file.crushed_thickness {
            Some(field) => {
                let at = format!("{path}.crushed_thickness");
                let crushed = self.positive(field, &at, Role::Wall);
                if crushed > thickness {
                    self.flaw(field, &at, "is thicker than the packer as fitted");
                }
                Cited::given(crushed / thickness, &FieldName("candidates[].packer.crushed_thickness"))
            }
            None => {
                self.assume_one(format!("{path}: crushed over fitted thickness"), residual, Role::Ratio);
                residual
            }
        };
        let (soft, stiff) = match &file.modulus {
            Some(field) => {
                let modulus = self.positive(field, &format!("{path}.modulus"), Role::Modulus);
                let modulus = Cited::given(modulus, &FieldName("candidates[].packer.modulus"));
                (modulus, modulus)
            }
            None => {
                let table = self.handbook.packer_modulus()?;
                let (soft, stiff) = (table.row("first_load")?, table.row("default")?);
                let (soft, stiff) = (soft.map(|row| row.low.value), stiff.map(|row| row.low.value));
                self.assume_one(format!("{path}.modulus, new"), soft, Role::Modulus);
                self.assume_one(format!("{path}.modulus, crushed"), stiff, Role::Modulus);
                (soft, stiff)
            }
        };
        let outside_diameter = match &file.outside_diameter {
            Some(field) => {
                let at = format!("{path}.outside_diameter");
                let given = self.positive(field, &at, Role::Diameter);
                if given > ends.outside_diameter {
                    self.flaw(field, &at, "is wider than the pipe");
                }
                given
            }
            None => {
                let outside = Cited::new(ends.outside_diameter, Origin::Law(&PIPE_FACE));
                self.assume_one(format!("{path}.outside_diameter"), outside, Role::Diameter);
                ends.outside_diameter
            }
        };
        let inside = match (&file.inside_diameter, ends.inside_diameter) {
            (Some(field), _) => {
                let at = format!("{path}.inside_diameter");
                let given = self.positive(field, &at, Role::Diameter);
                if given >= outside_diameter {
                    self.flaw(field, &at, "leaves no ring inside the outside diameter");
                }
                given
            }
            (None, Some(inside)) => {
                let inside = Cited::new(inside, Origin::Law(&PIPE_FACE));
                self.assume_one(format!("{path}.inside_diameter"), inside, Role::Diameter);
                inside.value
            }
            (None, None) => {
                let complaint = Complaint::from("the inside diameter of pipe and packer is missing");
                let complaint = complaint.advise("add `inside_diameter: ...` to the packer");
                self.flaw(&file.thickness, &format!("{path}.inside_diameter"), complaint);
                return Ok(None);
            }
        };
        Ok(Some(Packer { outside_diameter, inside_diameter: inside, thickness, residual, soft, stiff }))
    }
}
