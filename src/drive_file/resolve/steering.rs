//! What turns the joints of a jacked pipe, and the packer between them.

use super::Resolver;
use super::listed::{Listed, Resolved};
use crate::drive::{AssumedValue, Joint, Packer, Steering};
use crate::drive_file::{CandidateFile, DriveFile, PackerFile, SteeringFile};
use crate::quantity::{Length, Ratio, Role, Shown};
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
    pub(super) fn joint(&mut self, of: &Listed<'_>, ends: &Ends, stress_ratio: Cited<Ratio>) -> Resolved<Joint> {
        let packer = match &of.pipe.packer {
            Some(packer) => self.packer(&of.at("packer"), packer, ends)?,
            None => None,
        };
        let unknown = SteeringFile::unknown();
        let line = of.file.steering.as_ref().filter(|_| ends.turn).unwrap_or(&unknown);
        let known = (of.file.steering.is_some() || of.pipe.packer.is_some()) && ends.turn;
        let angles = self.handbook.joint_angle()?;
        let (least, warning) = (angles.value("least_assumed")?, angles.value("warning")?);
        let squareness = self.squareness(of, ends, known)?;
        if known {
            self.assume_one(format!("{}: least angle at a joint", of.path), least, Role::JointAngle);
        }
        let pipe_length = self.pipe_length(of, ends, line);
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

    fn squareness(&mut self, of: &Listed<'_>, ends: &Ends, known: bool) -> Resolved<Option<Cited<Length>>> {
        if let Some(given) = self.own(of, CandidateFile::end_squareness) {
            if given.value > ends.outside_diameter {
                self.fault(of, CandidateFile::end_squareness, "is more than the diameter of the pipe");
            }
            return Ok(Some(given));
        }
        let Some(key) = ends.squareness.filter(|_| known) else { return Ok(None) };
        let row = self.handbook.end_squareness()?.value(key)?;
        self.assume_one(of.at("end_squareness"), row, Role::Wall);
        Ok(Some(row))
    }

    /// Length of one pipe, which the angles of deviation, curve and wave need.
    fn pipe_length(&mut self, of: &Listed<'_>, ends: &Ends, line: &SteeringFile) -> Option<(Length, Length)> {
        if let Some(length) = self.own(of, CandidateFile::pipe_length) {
            return Some((length.value, length.value));
        }
        let path = of.at("pipe_length");
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
                    let what = "the length of one pipe is missing, and the steering needs it";
                    self.lacks(&of.pipe.size, &path, what, "add `pipe_length: 2 m`");
                }
                None
            }
        }
    }

    fn packer(&mut self, path: &str, file: &PackerFile, ends: &Ends) -> Resolved<Option<Packer>> {
        let at = |key: &str| format!("{path}.{key}");
        let thickness = self.take(path, file, PackerFile::thickness).value;
        let residual = match self.take(path, file, PackerFile::crushed_thickness) {
            Some(crushed) => {
                if let Some(field) = file.crushed_thickness.as_ref().filter(|_| crushed.value > thickness) {
                    self.flaw(field, &at("crushed_thickness"), "is thicker than the packer as fitted");
                }
                crushed.map(|crushed| crushed / thickness)
            }
            None => {
                let residual = self.handbook.packer_residual()?.row("residual")?.map(|row| row.low.value);
                self.assume_one(format!("{path}: crushed over fitted thickness"), residual, Role::Ratio);
                residual
            }
        };
        let (soft, stiff) = match self.take(path, file, PackerFile::modulus) {
            Some(modulus) => (modulus, modulus),
            None => {
                let table = self.handbook.packer_modulus()?;
                let (soft, stiff) = (table.row("first_load")?, table.row("default")?);
                let (soft, stiff) = (soft.map(|row| row.low.value), stiff.map(|row| row.low.value));
                self.assume_one(at("modulus, new"), soft, Role::Modulus);
                self.assume_one(at("modulus, crushed"), stiff, Role::Modulus);
                (soft, stiff)
            }
        };
        let outside = self.take(path, file, PackerFile::outside_diameter);
        let outside_diameter = self.of_face(outside, ends.outside_diameter, at("outside_diameter"));
        if let Some(field) = file.outside_diameter.as_ref().filter(|_| outside_diameter > ends.outside_diameter) {
            self.flaw(field, &at("outside_diameter"), "is wider than the pipe");
        }
        let inside = self.take(path, file, PackerFile::inside_diameter);
        let Some(face) = ends.inside_diameter.or(inside.map(|inside| inside.value)) else {
            let what = "the inside diameter of pipe and packer is missing";
            self.lacks(&file.thickness, &at("inside_diameter"), what, "add `inside_diameter: ...` to the packer");
            return Ok(None);
        };
        let inside_diameter = self.of_face(inside, face, at("inside_diameter"));
        if let Some(field) = file.inside_diameter.as_ref().filter(|_| inside_diameter >= outside_diameter) {
            self.flaw(field, &at("inside_diameter"), "leaves no ring inside the outside diameter");
        }
        Ok(Some(Packer { outside_diameter, inside_diameter, thickness, residual, soft, stiff }))
    }

    /// A diameter of the packer, else that of the pipe.
    fn of_face(&mut self, given: Option<Cited<Length>>, pipe: Length, path: String) -> Length {
        if given.is_none() {
            self.assume_one(path, Cited::new(pipe, Origin::Law(&PIPE_FACE)), Role::Diameter);
        }
        given.map_or(pipe, |given| given.value)
    }
}
