//! Candidates: from designation and size to a pipe with all its figures.

use super::line::Line;
use super::listed::Listed;
use super::row::Named;
use super::{Resolved, Resolver};
use crate::drive::{AssumedValue, Concern, Pipe, PublishedRange, Pull, Stem};
use crate::drive_file::{CandidateFile, StemFile};
use crate::handbook::{Method, MethodLimitRow, Pilot, Service, TechniqueRow};
use crate::law::Law;
use crate::laws::pull::{FinalBore, ReamedBore};
use crate::quantity::{Length, Measure, Role, Shown};
use crate::source::{Cited, Equation, Origin};
use crate::yaml::{Complaint, MayBe};

/// What is taken for the bore round a jacked pipe.
const CLOSE_BORE: Equation = Equation::judged(
    "bore of a jacked pipe",
    "outside diameter of the pipe, or of the casing before it",
    "no overcut unless the file gives one",
    "a pipe pushed close behind the head",
);

/// Most reaming passes of one pipe.
const MOST_PASSES: usize = 10;

/// What is there before a pipe is put in.
#[derive(Clone, Copy)]
pub(super) struct Before<'a> {
    pub(super) line: &'a Line,
    pub(super) stem: &'a Stem,
    /// The stem that leaves the most room round it.
    pub(super) slender: &'a Stem,
    pub(super) pull: Option<&'a Pull>,
    pub(super) technique: &'a TechniqueRow,
}

impl Resolver<'_> {
    /// A pipe with the room that it needs, and as a sewer.
    pub(super) fn put(
        &mut self,
        index: usize,
        candidate: &CandidateFile,
        before: Before<'_>,
    ) -> Resolved<Option<Pipe>> {
        let concern = Concern::Pipe(index);
        let pipe = self.about(concern, |it| it.pipe(index, candidate, before))?;
        let not_given = core::mem::take(&mut self.not_given);
        let Some(pipe) = pipe else { return Ok(None) };
        self.room(index, candidate, &pipe, before);
        self.room_for_spacers(&pipe);
        let sewer = self.about(concern, |it| it.sewer(index, &pipe, it.file.service.value))?;
        Ok(Some(Pipe { sewer, not_given, ..pipe }))
    }

    /// Room in the ground for pipe, casing and bore, and room round the stem.
    fn room(&mut self, index: usize, candidate: &CandidateFile, pipe: &Pipe, before: Before<'_>) {
        let Before { line, slender: stem, .. } = before;
        let flaw = |it: &mut Self, key: &str, complaint: Complaint| {
            it.flaw(&candidate.size, &format!("candidates[{index}].{key}"), complaint);
        };
        let pulled = pipe.pulled.is_some();
        let around = pipe.casing_diameter().unwrap_or(pipe.bore.value).max(pipe.bore.value);
        if line.shallowest() <= around {
            let label = &pipe.label;
            let message = format!("{label} stands out of the ground: the invert is too shallow for it or its bore");
            flaw(self, "size", message.into());
        }
        if stem.withdrawn && pipe.casing.is_some() {
            let message = "goes in before the pipe, behind the stem: it is no bore for a pipe without a stem";
            flaw(self, "casing", (message, "see stem.withdrawn").into());
        }
        if pulled && stem.head > pipe.bore.value {
            let message = format!("the bore of {} is smaller than that of the pilot before it", pipe.label);
            flaw(self, "size", (message, "see stem.head_diameter").into());
        }
        let pushed_in = stem.withdrawn && pipe.jacked.is_some();
        if !pulled && !pushed_in && stem.head >= around.min(pipe.outside_diameter.value) {
            let message = format!("{} is no larger than the stem that goes before it", pipe.label);
            flaw(self, "size", (message, "see stem.outside_diameter").into());
        }
        if pulled && !stem.is_there() {
            let complaint = Complaint::from("a pipe that is pulled needs the stem that pulls it");
            let complaint = complaint.advise("give stem.outside_diameter");
            self.flaw(&candidate.material, &format!("candidates[{index}].material"), complaint);
        }
        let weightless = pipe.jacked.as_ref().is_some_and(|jacked| jacked.weight.is_none());
        if weightless && line.grade.value.si() > 0.0 {
            flaw(self, "weight", ("is pushed uphill, and its weight is missing", "add `weight: 1.5 kN/m`").into());
        }
    }

    fn pipe(&mut self, index: usize, candidate: &CandidateFile, before: Before<'_>) -> Resolved<Option<Pipe>> {
        let Before { stem, pull, technique, .. } = before;
        let path = format!("candidates[{index}]");
        let size = candidate.size.value;
        let of = Listed { path: &path, pipe: candidate, pull, size, technique };
        let Some(Named { label, family, outside_diameter, jacked, pulled }) = self.named(&of)? else {
            return Ok(None);
        };
        let casing = self.casing(&of, &label, outside_diameter.value)?;
        let on_grade = self.file.service.value == Service::GravitySewer
            && stem.is_there()
            && self.file.pilot.given() == Some(Pilot::Drilled);
        let rule = self.handbook.bore_rule()?.row(if on_grade { "on_grade" } else { "general" })?;
        let widest = self.joint_diameter(&of, outside_diameter);
        let needed =
            FinalBore { outside_diameter: widest.value, times: rule.value.times.value, plus: rule.value.plus.value };
        let bore_rule = Cited::new(needed.value(), rule.origin);
        // A jacked pipe is pushed close behind what made room for it.
        let close = casing.as_ref().map_or(widest.value, |casing| casing.outside_diameter.max(widest.value));
        // What the pilot has bored already needs no reamer.
        let usual = match pulled {
            Some(_) => bore_rule.map(|bore| bore.max(stem.head)),
            None => Cited::new(close, Origin::Law(&CLOSE_BORE)),
        };
        let jacked = jacked.filter(|_| pulled.is_none() || stem.withdrawn || outside_diameter.value > stem.head);
        let by_winch = pulled.is_some() && pull.is_some_and(|pull| pull.winch.is_some());
        let bore = if stem.withdrawn && (jacked.is_some() || by_winch) {
            if candidate.bore.is_some() {
                self.fault(&of, CandidateFile::bore, "is that of the stem's head, since the stem is withdrawn");
            }
            Cited::given(stem.head, StemFile::head_diameter.spec.name("stem"))
        } else {
            self.own_or(&of, CandidateFile::bore, usual)
        };
        if bore.value <= widest.value {
            self.fault(&of, CandidateFile::bore, format!("is no larger than {label} itself"));
        }
        let passes = if pulled.is_none() || by_winch { Vec::new() } else { self.passes(&of, bore.value, stem) };
        if by_winch && candidate.passes.is_some() {
            let message = "are not bored: a winch pulls the pipe into the bore of the stem's head";
            self.flaw(&candidate.size, &of.at("passes"), message);
        }
        let segment = self.segment(&of, jacked.is_some());
        let mut pipe = Pipe {
            jacking_range: Some(self.jacking_range(technique)?),
            pullback_range: self.pullback_range(outside_diameter.value)?,
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
            ring: None,
            carries: None,
            open: Vec::new(),
            nominal: size,
            segment,
            not_given: Vec::new(),
            is_unusual: false,
            excluded: Vec::new(),
            told: Default::default(),
        };
        // Of a proposed pipe there is nothing that the user could mend.
        if !self.proposing || self.is_sketch {
            self.proportions(&of, &pipe)?;
        }
        for row in self.handbook.exclusion()?.iter() {
            let bars = &row.value.value;
            let family = bars.family.value == pipe.family();
            let service = bars.service.given().is_none_or(|service| service == self.file.service.value);
            if family && service {
                pipe.excluded.push((bars.method.given(), row.origin));
            }
        }
        Ok(Some(pipe))
    }

    /// The widest part of a pipe: its joint, where that is wider.
    fn joint_diameter(&mut self, of: &Listed<'_>, outside_diameter: Cited<Length>) -> Cited<Length> {
        let Some(joint) = self.own(of, CandidateFile::joint_diameter) else { return outside_diameter };
        if joint.value < outside_diameter.value {
            self.fault(of, CandidateFile::joint_diameter, "is smaller than the pipe");
        }
        joint.map(|joint| joint.max(outside_diameter.value))
    }

    /// Bores of the reaming passes before the one that brings the pipe: the user's, or as habit goes up.
    fn passes(&mut self, of: &Listed<'_>, bore: Length, stem: &Stem) -> Vec<Length> {
        let mut before = stem.head;
        let Some(given) = &of.pipe.passes else {
            let mut passes = Vec::new();
            let Some(rule) = of.pull.map(|pull| &pull.step) else { return passes };
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
            self.assume(of.at("passes"), value, rule.origin);
            return passes;
        };
        let mut passes = Vec::new();
        for (index, field) in given.iter().enumerate() {
            let path = format!("{}.passes[{index}]", of.path);
            let pass = field.value;
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

    /// The published range of a technique.
    fn jacking_range(&self, technique: &TechniqueRow) -> Resolved<PublishedRange> {
        Ok(PublishedRange::of(self.handbook.method_limit()?.row(&technique.range.value.0)?))
    }

    /// The published range of a pull that holds the diameter, or the one that comes closest to it.
    fn pullback_range(&self, diameter: Length) -> Resolved<Option<PublishedRange>> {
        let off = |range: &PublishedRange| {
            let (from, to) = range.diameters;
            let below = from.map_or(0.0, |from| (from - diameter).si());
            let above = to.map_or(0.0, |to| (diameter - to).si());
            below.max(above).max(0.0)
        };
        let rows = self.handbook.method_limit()?.iter().map(|row| row.map(|row| &row.value));
        let pulls = rows.filter(|row| row.value.method.value == Method::Pullback).map(PublishedRange::of);
        Ok(pulls.min_by(|a, b| off(a).total_cmp(&off(b))))
    }
}

impl PublishedRange {
    fn of(row: Cited<&MethodLimitRow>) -> Self {
        let diameters = (row.value.od_from.given(), row.value.od_to.given());
        Self { length: row.map(|row| row.length.value), diameters }
    }
}
