//! Candidates: from designation and size to a pipe with all its figures.

use super::Resolver;
use crate::drive::{AssumedValue, JackedPipe, Pipe, PublishedRange, Pull, PulledPipe, Stem};
use crate::drive_file::{CandidateFile, DriveFile, Material, Series};
use crate::handbook::{Family, HandbookError, Method, MethodLimitRow, Spoil};
use crate::law::Law;
use crate::laws::pull::{FinalBore, ReamedBore};
use crate::quantity::shown::plain;
use crate::quantity::{Length, Measure, Ratio, Role, Shown, UnitSystem};
use crate::source::{Cited, Equation, FieldName, Origin};
use crate::yaml::{Complaint, Field};

/// A pipe before its place in the drive is known.
pub(super) struct Named {
    pub(super) label: String,
    pub(super) family: Family,
    pub(super) outside_diameter: Cited<Length>,
    pub(super) jacked: Option<JackedPipe>,
    pub(super) pulled: Option<PulledPipe>,
}

/// What is taken for the bore round a jacked pipe.
const CLOSE_BORE: Equation = Equation::judged(
    "bore of a jacked pipe",
    "outside diameter of the pipe, or of the casing before it",
    "no overcut unless the file gives one",
    "a pipe pushed close behind the head",
);

/// Most reaming passes of one pipe.
const MOST_PASSES: usize = 10;

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
        stem: &Stem,
        pull: Option<&Pull>,
    ) -> Result<Option<Pipe>, HandbookError> {
        let path = format!("candidates[{index}]");
        let size = self.positive(&candidate.size, &format!("{path}.size"), Role::Diameter);
        let material = candidate.material.value;
        let dimensions = match material {
            Material::Clay => self.clay(&path, candidate, file, size)?,
            Material::Concrete => self.concrete(&path, candidate, file, size)?,
            Material::Steel => self.steel(&path, candidate, size, file, pull)?,
            Material::DuctileIron => self.iron(&path, candidate, size, file, pull)?,
            Material::Grp | Material::PolymerConcrete => self.bound(&path, candidate, file, size)?,
            Material::Pvc => self.by_its_maker(&path, candidate, file, size)?,
            Material::PvcFused | Material::PvcRestrained => self.pulled_pvc(&path, candidate, size, file, pull)?,
            _ => self.pe(&path, candidate, size, file, pull)?,
        };
        let Some(Named { label, family, outside_diameter, jacked, pulled }) = dimensions else { return Ok(None) };
        let casing = self.casing(&path, candidate, file, &label, outside_diameter.value)?;
        let rule = self.handbook.bore_rule()?.row("general")?;
        let widest = self.joint_diameter(&path, candidate, outside_diameter.value, pulled.is_some());
        let needed = FinalBore { outside_diameter: widest, times: rule.value.times.value, plus: rule.value.plus.value };
        let bore_rule = Cited::new(needed.value(), rule.origin);
        let bore = match &candidate.bore {
            Some(field) => {
                let bore = self.positive(field, &format!("{path}.bore"), Role::Diameter);
                if bore <= widest {
                    self.flaw(field, &format!("{path}.bore"), format!("is no larger than {label} itself"));
                }
                Cited::given(bore, &FieldName("candidates[].bore"))
            }
            // A jacked pipe is pushed close behind what made room for it.
            None if pulled.is_none() => {
                let bore = casing.as_ref().map_or(outside_diameter.value, |casing| casing.outside_diameter);
                let bore = Cited::new(bore, Origin::Law(&CLOSE_BORE));
                self.assume_one(format!("{path}.bore"), bore, Role::Diameter);
                bore
            }
            None => {
                self.assume_one(format!("{path}.bore"), bore_rule, Role::Diameter);
                bore_rule
            }
        };
        let passes = if pulled.is_none() { Vec::new() } else { self.passes(&path, candidate, bore.value, stem, pull) };
        let segment = self.segment(&path, candidate, file.length.value, jacked.is_some());
        let mut pipe = Pipe {
            jacking_range: self.published_range(Method::PipeJacking, file, outside_diameter.value)?,
            pullback_range: self.published_range(Method::Pullback, file, outside_diameter.value)?,
            label,
            family,
            outside_diameter,
            jacked,
            pulled,
            casing,
            passes,
            bore,
            widest,
            bore_rule,
            sewer: None,
            price: None,
            service: None,
            ground: None,
            traffic: None,
            nominal: size,
            segment,
            not_given: Vec::new(),
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

    /// The widest part of a pulled pipe: its joint, where that is wider than the pipe.
    fn joint_diameter(&mut self, path: &str, candidate: &CandidateFile, diameter: Length, pulled: bool) -> Length {
        let place = format!("{path}.joint_diameter");
        let Some(field) = &candidate.joint_diameter else { return diameter };
        if !pulled {
            self.flaw(field, &place, "is for pipe that is pulled");
        }
        let joint = self.positive(field, &place, Role::Diameter);
        if joint < diameter {
            self.flaw(field, &place, "is smaller than the pipe");
        }
        joint.max(diameter)
    }

    /// Bores of the reaming passes before the one that brings the pipe: the user's, or as habit goes up.
    fn passes(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        bore: Length,
        stem: &Stem,
        pull: Option<&Pull>,
    ) -> Vec<Length> {
        let mut before = stem.head;
        let Some(given) = &candidate.passes else {
            let mut passes = Vec::new();
            let Some(rule) = pull.map(|pull| &pull.step) else { return passes };
            while passes.len() < MOST_PASSES {
                let next = ReamedBore { bore_before: before, ratio: rule.ratio.0, step: rule.step.0 }.value();
                if next >= bore || next <= before {
                    break;
                }
                passes.push(next);
                before = next;
            }
            let value = if passes.is_empty() {
                AssumedValue::Word("none before the pipe comes".to_owned())
            } else {
                AssumedValue::List(passes.iter().map(|bore| Shown::of(*bore, Role::Diameter)).collect())
            };
            self.assume(format!("{path}.passes"), value, rule.origin);
            return passes;
        };
        let mut passes = Vec::new();
        for (index, field) in given.iter().enumerate() {
            let path = format!("{path}.passes[{index}]");
            let pass = self.positive(field, &path, Role::Diameter);
            if index >= MOST_PASSES {
                self.flaw(field, &path, format!("more than {MOST_PASSES} reaming passes"));
                break;
            }
            if pass <= before || pass >= bore {
                let complaint = Complaint::from("expected bores that rise from the pilot head to below the final bore");
                self.flaw(field, &path, complaint);
            }
            before = before.max(pass);
            passes.push(pass);
        }
        passes
    }

    /// Longest drive of the published range of a method that includes the diameter.
    /// The published range that holds the diameter, or the one that comes nearest to it.
    fn published_range(
        &self,
        method: Method,
        file: &DriveFile,
        diameter: Length,
    ) -> Result<Option<PublishedRange>, HandbookError> {
        let spoil = file.spoil.as_ref().map(|field| field.value);
        let own = |spoil| matches!(spoil, Some(Spoil::Slurry | Spoil::OpenEdge));
        // A slurry machine or an open edge has ranges of its own; all else follows a guided pilot.
        let technique = spoil.filter(|_| method == Method::PipeJacking && own(spoil));
        let suits = |row: &MethodLimitRow| {
            row.method.value == method && row.spoil.as_ref().map(|field| field.value) == technique
        };
        let ends =
            |row: &MethodLimitRow| (row.od_from.as_ref().map(|od| od.value), row.od_to.as_ref().map(|od| od.value));
        let off = |row: &MethodLimitRow| {
            let (from, to) = ends(row);
            let below = from.map_or(0.0, |from| (from - diameter).si());
            let above = to.map_or(0.0, |to| (diameter - to).si());
            below.max(above).max(0.0)
        };
        let mut nearest: Option<(f64, PublishedRange)> = None;
        for row in self.handbook.method_limit()?.iter().filter(|row| suits(&row.value.value)) {
            let values = &row.value.value;
            let range = PublishedRange { length: Cited::new(values.length.value, row.origin), diameters: ends(values) };
            let off = off(values);
            if nearest.is_none_or(|(best, _)| off < best) {
                nearest = Some((off, range));
            }
        }
        Ok(nearest.map(|(_, range)| range))
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
