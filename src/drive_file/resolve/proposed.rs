//! Pipes proposed from the inside diameter that is needed: of every material and series in the tables the next size up
//! and one more. They go through the same door as the user's; what cannot pass is left out, with the reason.

use super::contradictions::proposes_by_flow;
use super::label::{same_size, size_text};
use super::line::Line;
use super::pipe::Before;
use super::sizes::{self, Known};
use super::{Resolved, Resolver};
use crate::drive::{AssumedValue, Pipe, Proposed};
use crate::drive_file::{CandidateFile, DriveFile, FlowFile, Material, Series};
use crate::handbook::Service;
use crate::law::Law;
use crate::laws::hydraulics::DiameterForFlow;
use crate::laws::part_full::{FlowRatio, WettedAngle};
use crate::quantity::{Length, Measure, Ratio};
use crate::source::{Cited, Equation, Origin};
use crate::yaml::{Complaint, Words};

/// How wide a proposed pipe is inside.
const INSIDE: Equation = Equation::judged(
    "inside diameter of a proposed pipe",
    "clay, concrete, iron: the nominal size; steel: outside diameter - 2 wall; PE, PVC: the same with the average wall",
    "the true bore of a clay pipe is the maker's; row pe.average_wall for plastic",
    "a first list of sizes",
);

/// Sizes proposed of each material and series: the next one up, and one more.
const SIZES: usize = 2;

/// Of pipe that is only pulled.
const NO_PULL: &str = "PE, PVC fused and PVC restrained: they are pulled, and how is missing";

/// What a list of sizes alone proposes nothing of.
const NO_SIZES: &str = "GRP and polymer concrete: outside diameter, wall and strength are each maker's, and no open table \
                        of sizes was found; list the pipe of a maker";
/// By trade habit bare steel is a casing: it rusts in a sewer.
const NO_SEWER: &str = "steel: bare steel is no sewer pipe by trade habit; list it where it is lined, or as the casing of \
                        another";
/// Grade of a proposed steel pipe that is pulled: the least of line pipe.
const STEEL_GRADE: &str = "api_5l_b";
/// Dimension ratios of PE that are pulled most, thick and thin, in metric and in iron pipe sizes.
const PE_RATIOS: [f64; 2] = [11.0, 17.0];
/// Dimension ratios of PVC pressure pipe that is pulled, thick and thin.
const PVC_RATIOS: [f64; 2] = [18.0, 25.0];

/// A kind of pipe, its sizes and how wide they are inside.
struct Kind {
    name: String,
    sizes: Vec<(Length, CandidateFile)>,
}

impl Resolver<'_> {
    /// Adds to the pipes of the file those that are proposed, and to the list of what the file would say of them.
    pub(super) fn propose(
        &mut self,
        before: Before<'_>,
        listed: &mut Vec<CandidateFile>,
        pipes: &mut Vec<(usize, Pipe)>,
    ) -> Resolved<Option<Proposed>> {
        let Some(needed) = self.needed(before.line)? else { return Ok(None) };
        // A faulty self.file is told of its own faults, not of what they do to a proposal.
        if !self.flaws.is_empty() {
            return Ok(None);
        }
        let first = pipes.len();
        let mut left_out = Vec::new();
        let mut kinds = self.kinds()?;
        let is_sewer = self.file.service.value == Service::GravitySewer;
        if !is_sewer {
            kinds.push(self.steel_kind()?);
        }
        if self.file.pull.is_none() {
            left_out.push(NO_PULL.to_owned());
        }
        let is_pushed = |kind: &Kind| !kind.sizes.iter().all(|(_, pipe)| pipe.material.value.is_only_pulled());
        let may_go_in = |kind: &Kind| self.file.pull.is_some() || is_pushed(kind);
        for kind in kinds.into_iter().filter(may_go_in) {
            let mut fits: Vec<(Length, CandidateFile)> =
                kind.sizes.into_iter().filter(|(inside, _)| *inside >= needed.value).collect();
            fits.sort_by(|a, b| a.0.si().total_cmp(&b.0.si()));
            if fits.is_empty() {
                left_out.push(format!("{}: no size in the table is wide enough", kind.name));
            }
            for (_, candidate) in fits.into_iter().take(SIZES).filter(|(_, pipe)| !self.file.candidates.contains(pipe))
            {
                match self.try_pipe(listed.len(), &candidate, before)? {
                    Ok(pipe) => {
                        pipes.push((listed.len(), pipe));
                        listed.push(candidate);
                    }
                    Err(why) => left_out.push(format!("{} {why}", kind.name)),
                }
            }
        }
        if is_sewer {
            left_out.push(NO_SEWER.to_owned());
        }
        left_out.push(NO_SIZES.to_owned());
        if pipes.is_empty() {
            let complaint = Complaint::from(format!("no pipe can be proposed: {}", left_out.join("; ")));
            if self.file.needed_inside_diameter.is_some() {
                self.wrong(DriveFile::needed_inside_diameter, complaint);
            } else {
                self.wrong(FlowFile::max, complaint);
            }
        }
        let word = AssumedValue::Word(
            "clay, concrete and iron by nominal size, steel, PE and PVC less twice the (average) wall".to_owned(),
        );
        self.assume("inside diameter of proposed pipes", word, Origin::Law(&INSIDE));
        Ok(Some(Proposed { inside_diameter: needed, first, left_out }))
    }

    /// The pipe, or the first thing that is wrong with it; nothing of it stays behind then.
    fn try_pipe(
        &mut self,
        index: usize,
        candidate: &CandidateFile,
        before: Before<'_>,
    ) -> Resolved<Result<Pipe, String>> {
        let (flaws, assumed) = (self.flaws.len(), self.assumed.len());
        self.proposing = true;
        match self.put(index, candidate, before)? {
            Some(pipe) if self.flaws.len() == flaws => Ok(Ok(pipe)),
            _ => {
                let size = size_text(candidate.size.value, Series::Iso);
                let why = self.flaws.get(flaws).map_or_else(String::new, |flaw| flaw.complaint.message.clone());
                self.flaws.truncate(flaws);
                self.assumed.truncate(assumed);
                Ok(Err(format!("{size}: {why}")))
            }
        }
    }

    /// Inside diameter needed: the user's, or that of the flow at the design depth.
    fn needed(&mut self, line: &Line) -> Resolved<Option<Cited<Length>>> {
        if let Some(needed) = self.cited(DriveFile::needed_inside_diameter) {
            return Ok(Some(needed));
        }
        let flow = self.given(FlowFile::max).filter(|_| proposes_by_flow(self.file));
        let Some(flow) = flow else { return Ok(None) };
        let slope = Ratio::from_si(line.grade.value.si().tan().abs());
        if !(slope.si() > 0.0) {
            let complaint = ("nothing flows in a level sewer", "give a grade, or needed_inside_diameter");
            self.wrong(FlowFile::max, complaint);
            return Ok(None);
        }
        let depth = self.handbook.ratio("flow.design_depth")?;
        let depth = self.or_row(DriveFile::design_depth, depth);
        if self.is_senseless("design_depth") {
            return Ok(None);
        }
        let row = self.handbook.manning_n()?.row("default")?;
        // Whether it is given, and that it is assumed where it is not, is told where the sewer is resolved.
        let roughness = self.given(FlowFile::roughness).unwrap_or(row.value.n.value);
        let flow_ratio = FlowRatio { wetted_angle: WettedAngle { depth_ratio: depth.value }.value() }.value();
        let needed = DiameterForFlow { flow, flow_ratio, slope, roughness };
        Ok(Some(Cited::new(needed.value(), Origin::Law(&DiameterForFlow::EQUATION))))
    }

    /// Every kind of pipe in the tables but steel, and how it is named in the file.
    fn kinds(&self) -> Resolved<Vec<Kind>> {
        let handbook = self.handbook;
        let by_name = |material| move |known: &Known| (known.size, CandidateFile::new(material, known.size));
        let mut kinds = vec![
            kind("clay in inches", &sizes::clay_in_inches(handbook)?, by_name(Material::Clay)),
            kind("metric clay", &sizes::metric_clay(handbook)?, by_name(Material::Clay)),
            // Strength and end area are the maker's, so most files learn only that they are missing.
            kind("concrete", &sizes::concrete(handbook)?, by_name(Material::Concrete)),
            kind("metric ductile iron", &sizes::metric_iron(handbook)?, by_name(Material::DuctileIron)),
            kind("ductile iron in inches", &sizes::iron_in_inches(handbook)?, by_name(Material::DuctileIron)),
        ];
        let average = handbook.ratio("pe.average_wall")?.value.si();
        let inside = |outside: Length, wall: Length| outside - wall * (2.0 * average);
        let cast_iron = sizes::cast_iron(handbook)?;
        let [thick, thin] = PVC_RATIOS;
        for (name, material, ratio) in [
            ("PVC fused", Material::PvcFused, thick),
            ("PVC fused", Material::PvcFused, thin),
            ("PVC restrained", Material::PvcRestrained, thick),
        ] {
            kinds.push(kind(format!("{name} DR {ratio}"), &cast_iron, |known| {
                let sdr = Some(Ratio::from_si(ratio).into());
                let pipe = CandidateFile { sdr, ..CandidateFile::new(material, known.size) };
                (inside(known.outside, known.outside / ratio), pipe)
            }));
        }
        kinds.push(kind("PVC to be jacked", &cast_iron, |known| {
            let wall = known.outside / thick;
            let pipe = CandidateFile { wall: Some(wall.into()), ..CandidateFile::new(Material::Pvc, known.size) };
            (inside(known.outside, wall), pipe)
        }));
        let pe =
            |material, size, sdr: Ratio| CandidateFile { sdr: Some(sdr.into()), ..CandidateFile::new(material, size) };
        let table = handbook.pe_iso4427()?;
        let ratios = PE_RATIOS.map(Ratio::from_si);
        for sdr in ratios {
            let rows = table.iter().map(|row| &row.value.value);
            let rows = rows.filter(|row| (row.sdr.value - sdr).si().abs() < 0.01);
            let sizes =
                rows.map(|row| (inside(row.size.value, row.wall.value), pe(Material::Pe100, row.size.value, sdr)));
            kinds.push(Kind { name: format!("PE100 SDR {}", sdr.si()), sizes: sizes.collect() });
        }
        let iron_sizes = sizes::iron_pipe_sizes(handbook)?;
        for sdr in ratios {
            kinds.push(kind(format!("PE4710 IPS DR {}", sdr.si()), &iron_sizes, |known| {
                (inside(known.outside, known.outside / sdr), pe(Material::Pe4710, known.size, sdr))
            }));
        }
        Ok(kinds)
    }

    /// Line pipe with the wall where the guide begins.
    fn steel_kind(&self) -> Resolved<Kind> {
        let mut sizes = Vec::new();
        let mut taken: Vec<Length> = Vec::new();
        for known in sizes::steel(self.handbook)? {
            // One name for each pipe.
            if taken.iter().any(|outside| same_size(*outside, known.outside)) {
                continue;
            }
            taken.push(known.outside);
            let wall = self.guide_wall(known.outside)?.value;
            let steel_grade = Some(Words(STEEL_GRADE.to_owned()).into());
            let pipe = CandidateFile { steel_grade, ..CandidateFile::new(Material::Steel, known.size) };
            sizes.push((known.outside - wall * 2.0, pipe));
        }
        Ok(Kind { name: "steel".to_owned(), sizes })
    }
}

fn kind(name: impl Into<String>, sizes: &[Known], pipe: impl Fn(&Known) -> (Length, CandidateFile)) -> Kind {
    Kind { name: name.into(), sizes: sizes.iter().map(pipe).collect() }
}
