//! Candidates: from designation and size to a pipe with all its figures.

use super::pull::SHORTEST;
use super::{Resolver, no_row};
use crate::drive::{AssumedValue, ClayPipe, EndArea, ModulusPoints, PePipe, Pipe, PipeKind, Pull, StressSource};
use crate::drive_file::{CandidateFile, Certificate, DriveFile, Material, Series, StressEdition, Welds};
use crate::handbook::{HandbookError, Method, MethodLimitRow, PeMaterialRow};
use crate::law::Law;
use crate::laws::pull::FinalBore;
use crate::quantity::{Length, Measure, Pressure, Ratio, Role, Shown, ThermodynamicTemperature, Time, UnitSystem};
use crate::source::{Cited, FieldName};
use crate::yaml::{Complaint, Field};

/// Outside diameter and wall.
type Section = (Cited<Length>, Cited<Length>);
/// Label, outside diameter and the rest.
type Named = (String, Cited<Length>, PipeKind);

/// Sizes closer than this are the same nominal size.
const SAME_SIZE: f64 = 5e-4;

fn same_size(a: Length, b: Length) -> bool {
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

    fn clay(&mut self, path: &str, candidate: &CandidateFile, size: Length) -> Result<Option<Named>, HandbookError> {
        self.refuse(path, "series", candidate.series.as_ref(), "a clay pipe has no series");
        self.refuse(path, "sdr", candidate.sdr.as_ref(), "a clay pipe has no dimension ratio");
        self.refuse(
            path,
            "bore",
            candidate.bore.as_ref(),
            "a clay pipe is pushed; a bore is for a pipe that is pulled",
        );
        let table = self.handbook.clay_pipe()?;
        let row = table.find(|row| same_size(row.size.value, size));
        let label = format!("clay {}", size_text(size, Series::Ips));
        let outside_diameter = match (&candidate.outside_diameter, row) {
            (Some(field), _) => {
                let diameter = self.positive(field, &format!("{path}.outside_diameter"), Role::Diameter);
                Cited::given(diameter, &FieldName("candidates[].outside_diameter"))
            }
            (None, Some(row)) => row.map(|row| row.outside_diameter.value),
            (None, None) => {
                let sizes = table.rows.iter().map(|row| size_text(row.value.size.value, Series::Ips));
                let known = sizes.collect::<Vec<_>>().join(", ");
                let message = format!("no clay jacking pipe of {} in the table", size_text(size, Series::Ips));
                let advice = format!("there are {known}; for another give outside_diameter and end_bearing_area");
                self.flaw(&candidate.size, &format!("{path}.size"), Complaint::from(message).advise(advice));
                return Ok(None);
            }
        };
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
                    (row.value.rated_at_3_0.value, rated("clay.factor")?),
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
        let table = self.handbook.clay_strength()?;
        let strength = table
            .get(certificate.key())
            .ok_or_else(|| no_row("clay_strength", certificate.key()))?
            .map(|strength| strength.value);
        if candidate.certificate.is_none() {
            self.assume_one(format!("{path}.certificate (strength)"), strength, Role::Strength);
        }
        let factor = self.handbook.ratio("clay.factor")?;
        let factor = self.ratio_or(candidate.factor.as_ref(), path, "factor", (2.5, 20.0), factor);
        let ratio = self.handbook.ratio("clay.joint_ratio")?;
        let joint_stress_ratio =
            self.ratio_or(candidate.joint_stress_ratio.as_ref(), path, "joint_stress_ratio", (0.01, 1.0), ratio);
        let edge_factor = self.handbook.ratio("clay.factor_edge")?;
        self.assume_one(format!("{path}: factor on the stress at the edge of the joint"), edge_factor, Role::Ratio);
        Ok(Some((
            label,
            outside_diameter,
            PipeKind::Clay(ClayPipe { end_area, weight, strength, factor, edge_factor, joint_stress_ratio }),
        )))
    }

    fn refuse<T>(&mut self, path: &str, key: &str, field: Option<&Field<T>>, why: &str) {
        if let Some(field) = field {
            self.flaw(field, &format!("{path}.{key}"), why);
        }
    }

    fn ratio_or(
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
            let message = format!("expected a number from {least} to {most}, got {}", field.value.si());
            self.flaw(field, &format!("{path}.{key}"), message);
        }
        let name = if key == "factor" { &FieldName("candidates[].factor") } else { JOINT };
        Cited::given(field.value, name)
    }

    fn pe(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        size: Length,
        file: &DriveFile,
        pull: Option<&Pull>,
    ) -> Result<Option<Named>, HandbookError> {
        self.refuse(path, "end_bearing_area", candidate.end_bearing_area.as_ref(), "a PE pipe is pulled, not pushed");
        self.refuse(path, "weight", candidate.weight.as_ref(), "is for pipe that is pushed");
        self.refuse(path, "certificate", candidate.certificate.as_ref(), "is for clay pipe");
        self.refuse(path, "factor", candidate.factor.as_ref(), "is for clay pipe");
        self.refuse(path, "joint_stress_ratio", candidate.joint_stress_ratio.as_ref(), "is for pipe that is pushed");
        self.refuse(path, "casing", candidate.casing.as_ref(), "is for pipe that is pushed");
        let material = candidate.material.value;
        let row =
            self.handbook.pe_material()?.get(material.key()).ok_or_else(|| no_row("pe_material", material.key()))?;
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
            None => format!("{name} {whole}, wall ratio {:.1}", ratio.si()),
        };
        let welds = file.pull.as_ref().and_then(|pull| pull.welds.as_ref()).map(|field| field.value);
        let documented = welds == Some(Welds::Documented);
        let weld_factor = self.handbook.ratio(if documented { "pe.weld_documented" } else { "pe.weld_unknown" })?;
        self.assume_one(format!("{path}: density"), row.map(|row| row.density.value), Role::Density);
        if welds.is_none() && !self.assumed.iter().any(|assumed| assumed.field.starts_with("pull.welds")) {
            self.assume_one("pull.welds (factor)", weld_factor, Role::Ratio);
        }
        let ovality = candidate.ovality.as_ref().map_or(Ratio::default(), |field| {
            if !(0.0..=0.12).contains(&field.value.si()) {
                let complaint = Complaint::from("expected an ovality from 0 % to 12 %");
                self.flaw(field, &format!("{path}.ovality"), complaint.advise("write for example \"4 %\""));
            }
            field.value
        });
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
        };
        Ok(Some((label, outside_diameter, PipeKind::Pe(Box::new(kind)))))
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
                let message = format!("expected a dimension ratio from 5 to 50, got {}", field.value.si());
                self.flaw(field, &format!("{path}.sdr"), message);
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
                    let message = format!("no iron pipe size {} in the table", size_text(size, series));
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
                    let message = format!("{} contradicts the wall, which gives {by_wall:.1}", sdr.si());
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
                        let message =
                            format!("no ISO 4427 pipe of {} SDR {} in the table", size_text(size, series), sdr.si());
                        let complaint = Complaint::from(message).advise("give wall");
                        self.flaw(&candidate.size, &format!("{path}.size"), complaint);
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

    /// The pull stresses of every edition that covers the material, for the duration of the pull.
    fn stresses(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        material: &Cited<&PeMaterialRow>,
        file: &DriveFile,
        pull: &Pull,
    ) -> Result<Vec<StressSource>, HandbookError> {
        let chosen = file.pull.as_ref().and_then(|pull| pull.stress_edition.as_ref());
        let edition = chosen.map_or(StressEdition::Tightest, |field| field.value);
        // The one row of the 2022 edition says nothing of other durations; it counts where it is asked for.
        let asked = |key: &str| match edition {
            StressEdition::Tightest => key != "astm_f1962_2022",
            edition => edition.key() == key,
        };
        let american = material.value.american.value.0.as_str();
        let german = material.value.german.value.0.as_str();
        let mut stresses = Vec::new();
        for key in ["astm_f1962_1999", "astm_f1962_2022", "ppi_2008"] {
            let row = self.stress_row(key, american, pull.duration)?;
            stresses.extend(row.map(|row| StressSource { chosen: asked(key), ..row }));
        }
        if german != "none" {
            let (duration_factor, longest) = self.duration_factor("gw_321", pull.duration)?;
            let base = self.stress_row("gw_321", german, Time::from_si(SHORTEST))?;
            let chosen = asked("gw_321");
            stresses.extend(base.map(|base| StressSource { chosen, duration_factor, longest, ..base }));
        }
        let (duration_factor, longest) = self.duration_factor("astm_f1804", pull.duration)?;
        let table = self.stress_row("ppi_2008", american, pull.duration)?;
        stresses.push(StressSource {
            stress: material.value.tensile_yield.value,
            yield_design_factor: Some(self.handbook.ratio("pe.tensile_design")?.value),
            chosen: asked("astm_f1804"),
            duration_factor,
            longest,
            reference: table.map_or(pull.temperature, |table| table.reference),
            origin: material.origin,
        });
        if !stresses.iter().any(|stress| stress.chosen) {
            let message =
                format!("edition {} has no pull stress for {}", edition.key(), candidate.material.value.key());
            match chosen {
                Some(field) => self.flaw(field, "pull.stress_edition", message),
                None => self.flaw(&candidate.material, &format!("{path}.material"), message),
            }
        }
        if chosen.is_none() && !self.assumed.iter().any(|assumed| assumed.field == "pull.stress_edition") {
            let word = AssumedValue::Word("the least of all editions that cover the material".to_owned());
            self.assume("pull.stress_edition", word, material.origin);
        }
        Ok(stresses)
    }

    /// The row of the next longer duration, or the longest there is.
    fn stress_row(&self, edition: &str, material: &str, duration: Time) -> Result<Option<StressSource>, HandbookError> {
        let rows = self.handbook.pe_pull_stress()?;
        let mut best: Option<StressSource> = None;
        for row in rows.iter() {
            let values = &row.value.value;
            if values.edition.value.0 != edition || values.material.value.0 != material {
                continue;
            }
            let longest = values.up_to.value;
            let better = best.is_none_or(|best| {
                if best.longest >= duration {
                    longest >= duration && longest < best.longest
                } else {
                    longest > best.longest
                }
            });
            if better {
                best = Some(StressSource {
                    stress: values.stress.value,
                    yield_design_factor: None,
                    chosen: false,
                    duration_factor: Ratio::from_si(1.0),
                    longest,
                    reference: values.at.value,
                    origin: row.origin,
                });
            }
        }
        Ok(best)
    }

    fn duration_factor(&self, edition: &str, duration: Time) -> Result<(Ratio, Time), HandbookError> {
        let mut rows: Vec<(Time, Ratio)> = self
            .handbook
            .pe_duration_factor()?
            .rows
            .iter()
            .filter(|row| row.value.edition.value.0 == edition)
            .map(|row| (row.value.up_to.value, row.value.factor.value))
            .collect();
        rows.sort_by(|a, b| a.0.si().total_cmp(&b.0.si()));
        let next = rows.iter().find(|(longest, _)| *longest >= duration).or(rows.last());
        next.map(|(longest, factor)| (*factor, *longest)).ok_or_else(|| no_row("pe_duration_factor", edition))
    }

    /// Warmest temperature and the factor there of the set used on pull stress, the safer of two.
    fn upper_temperature(&mut self) -> Result<(ThermodynamicTemperature, Ratio), HandbookError> {
        const SET: &str = "pull_stress_stein";
        let table = self.handbook.pe_temperature()?;
        let warmest = table
            .iter()
            .filter(|row| row.value.value.set.value.0 == SET)
            .max_by(|a, b| a.value.value.at.value.si().total_cmp(&b.value.value.at.value.si()))
            .ok_or_else(|| no_row("pe_temperature", SET))?;
        if !self.assumed.iter().any(|assumed| assumed.field.starts_with("pull: temperature factor")) {
            let factor = Cited::new(warmest.value.value.factor.value, warmest.origin);
            self.assume_one("pull: temperature factor on pull stress at 40 degC", factor, Role::Ratio);
        }
        Ok((warmest.value.value.at.value, warmest.value.value.factor.value))
    }

    fn modulus(&self, column: &str, pull: &Pull, duration: Time) -> Result<ModulusPoints, HandbookError> {
        let mut durations: Vec<(Time, Pressure)> = self
            .handbook
            .pe_modulus()?
            .rows
            .iter()
            .filter(|row| row.value.material.value.0 == column)
            .map(|row| (row.value.duration.value, row.value.modulus.value))
            .collect();
        durations.sort_by(|a, b| a.0.si().total_cmp(&b.0.si()));
        let mut temperatures: Vec<(ThermodynamicTemperature, Ratio)> = self
            .handbook
            .pe_temperature()?
            .rows
            .iter()
            .filter(|row| row.value.set.value.0 == "modulus_ppi")
            .map(|row| (row.value.at.value, row.value.factor.value))
            .collect();
        temperatures.sort_by(|a, b| a.0.si().total_cmp(&b.0.si()));
        let around = |missing: &'static str| no_row(missing, column);
        let (before, after) = bracket(&durations, duration).ok_or_else(|| around("pe_modulus"))?;
        let (below, above) = bracket(&temperatures, pull.temperature).ok_or_else(|| around("pe_temperature"))?;
        Ok(ModulusPoints { before, after, below, above })
    }
}

const JOINT: &FieldName = &FieldName("candidates[].joint_stress_ratio");

/// The neighbours of `at` in a sorted list; the end twice where it lies outside.
fn bracket<X: Measure + PartialOrd, Y: Copy>(points: &[(X, Y)], at: X) -> Option<((X, Y), (X, Y))> {
    let above = points.iter().find(|(x, _)| *x >= at).or(points.last())?;
    let below = points.iter().rev().find(|(x, _)| *x <= at).or(points.first())?;
    Some((*below, *above))
}

/// A nominal size as the series writes it.
fn size_text(size: Length, series: Series) -> String {
    let system = if series == Series::Iso { UnitSystem::Si } else { UnitSystem::Us };
    let (value, unit) = Shown::of(size, Role::Diameter).in_units(system);
    format!("{} {unit}", (value * 100.0).round() / 100.0)
}
