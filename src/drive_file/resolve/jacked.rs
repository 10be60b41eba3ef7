//! What jacked pipes of all materials share: section, end area, weight, the maker's force, fields that do not apply.

use super::Resolver;
use super::label::{as_given, as_written};
use super::pipe::same_size;
use crate::drive::{EndArea, RingKind};
use crate::drive_file::CandidateFile;
use crate::handbook::HandbookError;
use crate::law::Law;
use crate::laws::packer::RingArea;
use crate::laws::pull::PipeWeight;
use crate::laws::soil::WATER_UNIT_WEIGHT;
use crate::quantity::unit::STANDARD_GRAVITY;
use crate::quantity::{Force, Length, LineLoad, MassDensity, Measure, Ratio, Role, UnitSystem};
use crate::source::{Cited, FieldName, Origin};
use crate::yaml::Complaint;

/// Share by which a given diameter may differ from that of the row and still be the same pipe: maker's tolerance.
pub(super) const SAME_PIPE: f64 = 0.01;

/// True diameters of a barrel.
#[derive(Debug, Clone, Copy)]
pub(super) struct Barrel {
    pub(super) outside_diameter: Cited<Length>,
    pub(super) inside_diameter: Option<Length>,
}

impl Barrel {
    pub(super) fn wall(&self) -> Option<Length> {
        self.inside_diameter.map(|inside| (self.outside_diameter.value - inside) / 2.0)
    }
}

impl Resolver<'_> {
    /// True diameters: the user's, else those of the table; `None` where neither says the outside diameter.
    pub(super) fn barrel(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        table: Option<Cited<(Length, Option<Length>)>>,
    ) -> Option<Barrel> {
        let inside_path = format!("{path}.inside_diameter");
        let outside = candidate
            .outside_diameter
            .as_ref()
            .map(|field| self.positive(field, &format!("{path}.outside_diameter"), Role::Diameter));
        let inside = candidate.inside_diameter.as_ref().map(|field| self.positive(field, &inside_path, Role::Diameter));
        let wall = candidate.wall.as_ref().map(|field| self.positive(field, &format!("{path}.wall"), Role::Wall));
        let name = &FieldName("candidates[].outside_diameter");
        let outside = match (outside, inside.zip(wall), table) {
            (Some(outside), ..) => Cited::given(outside, name),
            (None, Some((inside, wall)), _) => Cited::given(inside + 2.0 * wall, &FieldName("candidates[].wall")),
            (None, None, Some(table)) => table.map(|(outside, _)| outside),
            (None, None, None) => return None,
        };
        if let (Some(field), Some(inside)) = (&candidate.inside_diameter, inside) {
            if inside >= outside.value {
                self.flaw(field, &inside_path, "is no less than the outside diameter");
            } else if let Some(wall) = wall
                && ((outside.value - inside) / 2.0 - wall).abs() > 0.05 * wall
            {
                self.flaw(field, &inside_path, "contradicts outside diameter and wall: give two of the three");
            }
        }
        if let (Some(field), Some(wall), None) = (&candidate.wall, wall, inside)
            && 2.0 * wall >= outside.value
        {
            self.flaw(field, &format!("{path}.wall"), "leaves no bore inside the pipe");
        }
        // A row speaks for its own diameter only.
        let of_table = table.filter(|table| {
            let printed = table.value.0;
            (outside.value - printed).abs() <= printed * SAME_PIPE
        });
        let inside_diameter =
            inside.or(wall.map(|wall| outside.value - 2.0 * wall)).or(of_table.and_then(|table| table.value.1));
        Some(Barrel { outside_diameter: outside, inside_diameter })
    }

    /// End bearing area: the user's, the ring of a packer with both diameters, else the table's. The barrel is never
    /// taken for it.
    pub(super) fn end_area(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        barrel: &Barrel,
        table: Option<EndArea>,
    ) -> Option<EndArea> {
        let ring = candidate.packer.as_ref().and_then(|packer| {
            let diameters = packer.outside_diameter.as_ref().zip(packer.inside_diameter.as_ref());
            diameters
                .map(|(outside, inside)| (outside.value, inside.value))
                .filter(|(outside, inside)| outside > inside)
        });
        let ring_area =
            ring.map(|(outside_diameter, inside_diameter)| RingArea { outside_diameter, inside_diameter }.value());
        let at = format!("{path}.end_bearing_area");
        if let Some(field) = &candidate.end_bearing_area {
            let area = self.positive(field, &at, Role::Area);
            let outside_diameter = barrel.outside_diameter.value;
            let inside_diameter = barrel.inside_diameter.unwrap_or_default();
            let section = RingArea { outside_diameter, inside_diameter }.value();
            if area > section * (1.0 + 1e-6) {
                self.flaw(field, &at, "is larger than the section of the pipe");
            } else if ring_area.is_some_and(|ring| area > ring * (1.0 + 1e-6)) {
                self.flaw(field, &at, "is larger than the ring of the packer, which is what bears");
            }
            return Some(EndArea::Given(Cited::given(area, &FieldName("candidates[].end_bearing_area"))));
        }
        // The table's area is less than the ring where a socket or an edge takes from it; of both the lesser counts.
        if let (Some((outside_diameter, inside_diameter)), None) = (ring, &table) {
            return Some(EndArea::Ring { outside_diameter, inside_diameter, kind: RingKind::Packer });
        }
        if table.is_none() {
            let complaint = Complaint::from("the end bearing area is missing")
                .advise("add `end_bearing_area: ...` from the pipe maker, or both diameters of the packer; the barrel area is much larger");
            self.flaw(&candidate.size, &at, complaint);
        }
        table
    }

    /// The user's weight, else the table's, else by density where the wall is known.
    pub(super) fn jacked_weight(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        barrel: &Barrel,
        table: Option<Cited<LineLoad>>,
        density: Option<&'static str>,
    ) -> Result<Option<Cited<LineLoad>>, HandbookError> {
        if let Some(field) = &candidate.weight {
            let weight = self.positive(field, &format!("{path}.weight"), Role::LineWeight);
            return Ok(Some(Cited::given(weight, &FieldName("candidates[].weight"))));
        }
        let weight = match (table, density, barrel.wall()) {
            (Some(table), ..) => table,
            (None, Some(key), Some(wall)) => {
                let row = self.handbook.pipe_density()?.value(key)?;
                let density = MassDensity::from_si(row.value.si() * WATER_UNIT_WEIGHT / STANDARD_GRAVITY);
                let outside_diameter = barrel.outside_diameter.value;
                let weight = PipeWeight { outside_diameter, wall, density, average_wall: Ratio::from_si(1.0) };
                Cited::new(weight.value(), row.origin)
            }
            _ => return Ok(None),
        };
        self.assume_one(format!("{path}.weight"), weight, Role::LineWeight);
        Ok(Some(weight))
    }

    pub(super) fn rated_force(&mut self, path: &str, candidate: &CandidateFile) -> Option<Cited<Force>> {
        const NAME: &FieldName = &FieldName("candidates[].rated_force");
        let field = candidate.rated_force.as_ref()?;
        Some(Cited::given(self.positive(field, &format!("{path}.rated_force"), Role::Thrust), NAME))
    }

    /// Sizes there are in a table, for a fault.
    pub(super) fn no_such_size(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        what: &str,
        sizes: impl Iterator<Item = Length>,
    ) {
        let mut known: Vec<Length> = Vec::new();
        for size in sizes {
            if !known.iter().any(|other| same_size(*other, size)) {
                known.push(size);
            }
        }
        known.sort_by(|a, b| a.si().total_cmp(&b.si()));
        let known = known.into_iter().map(as_given).collect::<Vec<_>>().join(", ");
        let message = format!("no {what} of {} in the table", as_written(&candidate.size));
        let listed = if known.is_empty() { String::new() } else { format!("there are {known}; ") };
        let advice = format!("{listed}give outside_diameter and inside_diameter or wall");
        self.flaw(&candidate.size, &format!("{path}.size"), Complaint::from(message).advise(advice));
    }

    /// Fields of pulled plastic and of clay, refused for other jacked pipe.
    pub(super) fn refuse_foreign(&mut self, path: &str, candidate: &CandidateFile, what: &str) {
        let why = format!("does not apply to {what}");
        self.refuse(path, "series", candidate.series.as_ref(), &why);
        self.refuse(path, "ovality", candidate.ovality.as_ref(), &why);
        self.refuse(path, "certificate", candidate.certificate.as_ref(), &why);
        self.refuse(path, "sdr", candidate.sdr.as_ref(), &why);
    }

    /// Fields that only a pulled pipe has, refused for one that is only jacked.
    pub(super) fn refuse_pulled(&mut self, path: &str, candidate: &CandidateFile) {
        const WHY: &str = "is for pipe that is pulled";
        self.refuse_joint_ratings(path, candidate);
        self.refuse(path, "joint_factor", candidate.joint_factor.as_ref(), WHY);
        self.refuse(path, "joint_diameter", candidate.joint_diameter.as_ref(), WHY);
        if let Some(passes) = candidate.passes.as_ref().and_then(|passes| passes.first()) {
            self.flaw(passes, &format!("{path}.passes[0]"), "reaming passes are for pipe that is pulled");
        }
    }

    /// Fields that only a jacked pipe has, refused for one that is only pulled.
    pub(super) fn refuse_jacked(&mut self, path: &str, candidate: &CandidateFile) {
        const WHY: &str = "is for pipe that is jacked";
        self.refuse_strengths(path, candidate, &["steel_grade", "yield_strength"], WHY);
        self.refuse(path, "inside_diameter", candidate.inside_diameter.as_ref(), WHY);
        self.refuse(path, "rated_force", candidate.rated_force.as_ref(), WHY);
        self.refuse(path, "packer.thickness", candidate.packer.as_ref().map(|packer| &packer.thickness), WHY);
        self.refuse(path, "end_squareness", candidate.end_squareness.as_ref(), WHY);
        self.refuse(path, "free_length", candidate.free_length.as_ref(), WHY);
    }

    /// Strength fields and the scheme, but for those named.
    pub(super) fn refuse_strengths(&mut self, path: &str, candidate: &CandidateFile, but: &[&str], why: &str) {
        let refused = |key: &str| !but.contains(&key);
        for (key, field) in [
            ("strength", &candidate.strength),
            ("cube_strength", &candidate.cube_strength),
            ("design_strength", &candidate.design_strength),
            ("yield_strength", &candidate.yield_strength),
        ] {
            self.refuse(path, key, field.as_ref().filter(|_| refused(key)), why);
        }
        self.refuse(path, "steel_grade", candidate.steel_grade.as_ref().filter(|_| refused("steel_grade")), why);
        let grade = candidate.concrete_grade.as_ref().filter(|_| refused("concrete_grade"));
        self.refuse(path, "concrete_grade", grade, why);
        self.refuse(path, "scheme", candidate.scheme.as_ref().filter(|_| refused("scheme")), why);
    }
}

/// Where a value of a table row stands in for one that the row gives by parts.
pub(super) const fn of_row<T>(value: T, origin: Origin) -> Cited<T> {
    Cited::new(value, origin)
}

/// As printed in faults.
pub(super) fn strength_text(strength: crate::quantity::Pressure) -> String {
    crate::quantity::Shown::of(strength, Role::Strength).display(UnitSystem::Si).to_string()
}
