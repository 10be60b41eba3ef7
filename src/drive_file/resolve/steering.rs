//! What turns the joints of a jacked pipe, and the packer between them.

use super::listed::Listed;
use super::{Resolved, Resolver};
use crate::drive::{AssumedValue, Concern, Curve, Joint, Packer, PackerModulus, Steering};
use crate::drive_file::fields::Key;
use crate::drive_file::{CandidateFile, PackerFile, SteeringFile};
use crate::handbook::Lubrication;
use crate::quantity::{Angle, Length, Measure, Ratio, Role};
use crate::source::{Cited, Equation, Origin};
use crate::yaml::MayBe;

/// What a joint is between.
pub(super) struct Ends {
    pub(super) outside_diameter: Length,
    pub(super) inside_diameter: Option<Length>,
    /// Length of one pipe of the table, or shortest and longest of the trade.
    pub(super) pipe_length: Option<Cited<(Length, Length)>>,
    /// Row of the table `end_squareness`.
    pub(super) squareness: &'static str,
    /// False where pipes are welded to one.
    pub(super) turn: bool,
    /// A socket that takes the thrust by its maker.
    pub(super) socket: bool,
    /// Whether what the joint bears is worked out, with a packer in it.
    pub(super) packed: bool,
    /// Whether the end bears so much that its packer is pressed hard from the first.
    pub(super) hard: bool,
}

/// What is taken for the diameters of a packer.
const END: Equation = Equation::judged(
    "diameters of the packer",
    "the ring of the end bearing area, from the bore on",
    "the packer lies where the end bears",
    "a packer that is cut for the pipe",
);

/// Nominal sizes from where the packers of the trade are thicker, m.
const THICKER: [(&str, f64); 4] = [("to_300", 0.3), ("to_600", 0.6), ("to_1200", 1.2), ("beyond", f64::INFINITY)];

/// Times the angle that is advised from which nobody passes a thrust on: our judgement.
const BEYOND_ADVICE: f64 = 2.0;

impl Resolver<'_> {
    /// The curve that the line is planned on, with the friction of the pipe in it.
    pub(super) fn curve(&mut self) -> Resolved<Option<Curve>> {
        let Some(radius) = self.cited(SteeringFile::curve_radius) else { return Ok(None) };
        let wet = matches!(self.file.lubricated(), Lubrication::Metered | Lubrication::Logged);
        let [least, most] = if wet {
            ["curve.lubricated_least", "curve.lubricated"]
        } else {
            ["curve.friction_least", "curve.friction"]
        };
        let (least, most) = (self.handbook.ratio(least)?, self.handbook.ratio(most)?);
        self.about(Concern::Jacking, |it| {
            let range = AssumedValue::range(least.value, most.value, Role::Ratio);
            it.assume("friction of the pipe in the curve", range, most.origin);
        });
        let friction = crate::drive::Ends { low: least.value, high: most.value };
        Ok(Some(Curve { radius, friction, steel_factor: self.handbook.ratio("curve.steel")? }))
    }

    /// Packer and steering of one pipe: what the file does not tell of them is that of the trade.
    pub(super) fn joint(
        &mut self,
        of: &Listed<'_>,
        ends: &Ends,
        stress_ratio: Option<Cited<Ratio>>,
    ) -> Resolved<Joint> {
        if let Some(packer) = &of.pipe.packer {
            self.check_packer(&of.at("packer"), packer, ends);
        }
        let packer = match &of.pipe.packer {
            _ if !ends.packed => None,
            Some(packer) => self.packer(&of.at("packer"), packer, ends)?,
            None => self.usual_packer(of, ends, stress_ratio.is_none())?,
        };
        let unknown = SteeringFile::new();
        let line = self.file.steering.as_ref().filter(|_| ends.turn).unwrap_or(&unknown);
        let angles = self.handbook.joint_angle()?;
        let most = if ends.socket { "socket" } else { "most" };
        let (screen, most) = (angles.value("screen")?, angles.value(most)?);
        // What a socket turns by is no advice.
        let beyond = if ends.socket { most } else { most.map(|most| most * BEYOND_ADVICE) };
        let squareness = self.squareness(of, ends)?;
        let pipe_length = self.pipe_length(of, ends, line)?;
        let told = line.joint_angle.is_some()
            || line.deviation.is_some()
            || line.wave_amplitude.is_some()
            || line.joint_gap.is_some();
        let least = if told { angles.value("guided")? } else { self.least_angle(of, pipe_length)? };
        if ends.turn && line.joint_angle.given().is_none_or(|told| told < least.value) {
            self.assume_one(format!("{}: angle of the line at a joint", of.path), least, Role::JointAngle);
        }
        let own = |key: Key<_, _>| key.cited("", line);
        let wave = own(SteeringFile::wave_amplitude).zip(line.half_wave.given());
        let steering = Steering {
            deviation: own(SteeringFile::deviation),
            curve_radius: own(SteeringFile::curve_radius),
            joint_gap: own(SteeringFile::joint_gap),
            joint_angle: SteeringFile::joint_angle.cited("", line),
            wave,
            squareness,
            pipe_length,
            least,
            screen,
            most,
            beyond,
            turns: ends.turn,
        };
        Ok(Joint { stress_ratio, packer, packer_told: ends.packed && of.pipe.packer.is_some(), steering })
    }

    /// The angle of a line that the file does not tell: less where it is guided, more where the pipes are longer than those
    /// that the table is for.
    fn least_angle(&self, of: &Listed<'_>, pipe_length: Option<(Length, Length)>) -> Resolved<Cited<Angle>> {
        let least = self.handbook.joint_angle()?.value(&of.technique.joint.value.0)?;
        let usual = self.handbook.length("joint.pipe_length")?.value;
        let longer = pipe_length.map_or(Ratio::from(1.0), |(_, long)| (long / usual).max(Ratio::from(1.0)));
        Ok(least.map(|angle| angle * longer.si()))
    }

    fn squareness(&mut self, of: &Listed<'_>, ends: &Ends) -> Resolved<Option<Cited<Length>>> {
        if let Some(given) = self.own(of, CandidateFile::end_squareness) {
            if given.value > ends.outside_diameter {
                self.fault(of, CandidateFile::end_squareness, "is more than the diameter of the pipe");
            }
            return Ok(Some(given));
        }
        if !ends.turn {
            return Ok(None);
        }
        let row = self.handbook.end_squareness()?.value(ends.squareness);
        self.taken(of.at("end_squareness"), row, Role::Wall).map(Some)
    }

    /// Length of one pipe, which the angles of deviation, curve and wave need.
    fn pipe_length(&mut self, of: &Listed<'_>, ends: &Ends, line: &SteeringFile) -> Resolved<Option<(Length, Length)>> {
        if let Some(length) = self.own(of, CandidateFile::pipe_length) {
            return Ok(Some((length.value, length.value)));
        }
        let path = of.at("pipe_length");
        let needed = line.deviation.is_some() || line.curve_radius.is_some() || line.wave_amplitude.is_some();
        Ok(match ends.pipe_length {
            Some(row) if needed => {
                let row = self.any_length(row)?;
                let (short, long) = row.value;
                self.assume(path, AssumedValue::range(short, long, Role::Distance), row.origin);
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
        })
    }

    /// A range of the trade as it is; where a standard has one length, other ones are made too.
    fn any_length(&self, row: Cited<(Length, Length)>) -> Resolved<Cited<(Length, Length)>> {
        let (short, long) = row.value;
        if short < long {
            return Ok(row);
        }
        let (shortest, longest) =
            (self.handbook.length("joint.shortest_pipe")?, self.handbook.length("joint.longest_pipe")?);
        Ok(longest.map(|longest| (short.min(shortest.value), long.max(longest))))
    }

    /// The ring of a packer lies on the pipe.
    fn check_packer(&mut self, path: &str, file: &PackerFile, ends: &Ends) {
        if file.outside_diameter.as_ref().is_some_and(|field| field.value > ends.outside_diameter) {
            self.wrong_at(path, file, PackerFile::outside_diameter, "is wider than the pipe");
        }
        let most = file.outside_diameter.given().unwrap_or(ends.outside_diameter);
        if file.inside_diameter.as_ref().is_some_and(|field| field.value >= most) {
            self.wrong_at(path, file, PackerFile::inside_diameter, "leaves no ring inside the outside diameter");
        }
    }

    fn packer(&mut self, path: &str, file: &PackerFile, ends: &Ends) -> Resolved<Option<Packer>> {
        let at = |key: &str| format!("{path}.{key}");
        let thickness = file.thickness.value;
        let modulus = match PackerFile::modulus.cited(path, file) {
            Some(modulus) => PackerModulus::Tested(modulus),
            None => self.packer_modulus(at("modulus"), ends)?,
        };
        let (outside, inside) = (file.outside_diameter.given(), file.inside_diameter.given());
        if outside.is_none() || inside.is_none() {
            self.assume_word(at("outside_diameter, inside_diameter"), "where the end bears", Origin::Law(&END));
        }
        let inside_diameter = inside.or(ends.inside_diameter);
        Ok(Some(Packer { outside_diameter: outside, inside_diameter, pipe: ends.outside_diameter, thickness, modulus }))
    }

    /// The packer that the trade fits into a joint of this size; told where it counts.
    fn usual_packer(&mut self, of: &Listed<'_>, ends: &Ends, counts: bool) -> Resolved<Option<Packer>> {
        let key = THICKER.into_iter().find(|(_, below)| of.size.si() < *below).map_or("beyond", |(key, _)| key);
        let thickness = self.handbook.packer_thickness()?.row(key)?.map(|row| row.low.value);
        let path = of.at("packer");
        if counts {
            self.assume_one(format!("{path}.thickness"), thickness, Role::Wall);
        }
        let flaws = self.assumed.len();
        let modulus = self.packer_modulus(format!("{path}.modulus"), ends)?;
        if !counts {
            self.assumed.truncate(flaws);
        }
        let (inside_diameter, pipe) = (ends.inside_diameter, ends.outside_diameter);
        Ok(Some(Packer { outside_diameter: None, inside_diameter, pipe, thickness: thickness.value, modulus }))
    }

    /// The modulus of a board that nobody has tested.
    fn packer_modulus(&mut self, path: String, ends: &Ends) -> Resolved<PackerModulus> {
        let table = self.handbook.packer_modulus()?;
        let (usual, pressed, stiff) = (table.value("default")?, table.value("pressed")?, table.value("stiff")?);
        let pressed_from = self.handbook.pressure("packer.pressed_from")?.value;
        let middle = if ends.hard { pressed } else { usual };
        self.assume(path, AssumedValue::range(middle.value, stiff.value, Role::Modulus), middle.origin);
        Ok(PackerModulus::Assumed { middle, pressed, pressed_from, stiff })
    }
}
