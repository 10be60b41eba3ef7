//! PE pipe, pulled.

use super::applies::{Applies, NOT_PUSHED, PULLED, keys};
use super::label::{as_written, same_size, size_text};
use super::listed::Listed;
use super::row::{Pulled, Section};
use super::{Resolved, Resolver, sizes};
use crate::drive::{AssumedValue, PePipe, Pull, PulledPipe};
use crate::drive_file::{CandidateFile, Material, Series, Welds};
use crate::handbook::{Family, PeWallRow};
use crate::quantity::shown::{decimal, plain};
use crate::quantity::{Length, Measure, Ratio, Role};
use crate::source::Cited;
use crate::yaml::MayBe;

pub(super) const PE: Pulled = Pulled {
    what: "a PE pipe",
    family: Family::Pe,
    applies: Applies {
        used: PULLED.or(keys![series, sdr, ovality]),
        reasons: &[
            (keys![end_bearing_area], "a PE pipe is pulled, not pushed"),
            (keys![joint_factor], "is for PVC pipe; see pull.welds"),
        ],
        way: NOT_PUSHED,
        otherwise: "is for pipe that is jacked",
        idle: &[],
    },
    section: |resolver, of| {
        let series = series(of);
        if of.pipe.series.is_none() {
            let row = resolver.handbook.pe_material()?.row(of.pipe.material.value.key())?;
            resolver.assume(of.at("series"), AssumedValue::Word(series.key().to_owned()), row.origin);
        }
        let outside_diameter = match (resolver.own(of, CandidateFile::outside_diameter), series) {
            (Some(given), _) => given,
            (None, Series::Iso) => Cited::given(of.size, CandidateFile::size.spec.name(of.path)),
            (None, inches) => {
                let (known, what) = match inches {
                    Series::Dips => (sizes::cast_iron(resolver.handbook)?, "no ductile iron pipe size"),
                    _ => (sizes::iron_pipe_sizes(resolver.handbook)?, "no iron pipe size"),
                };
                let Some(known_size) = sizes::of_size(&known, of.size) else {
                    let advice = format!("there are {}", sizes::texts(&known, inches));
                    resolver.no_such_size(of, [what, "in the table"], advice);
                    return Ok(None);
                };
                known_size.outside_diameter()
            }
        };
        let wall = resolver.pe_wall(of, outside_diameter)?;
        Ok(wall.map(|wall| Section { outside_diameter, wall }))
    },
    pipe: |resolver, of, pull, section| resolver.pe_pipe(of, pull, section.wall).map(Some),
    label: |_, of, section| {
        let series = series(of);
        let name = of.pipe.material.value.key().to_uppercase();
        let size = size_text(of.size, series);
        let (whole, kind) = match series {
            Series::Iso => (format!("{name} {size}"), "SDR"),
            Series::Ips => (format!("{name} IPS {size}"), "DR"),
            Series::Dips => (format!("{name} DIPS {size}"), "DR"),
        };
        Ok(match &of.pipe.sdr {
            Some(sdr) => format!("{whole} {kind} {}", sdr.value.si()),
            None => {
                let ratio = section.outside_diameter.value / section.wall.value;
                format!("{whole}, wall ratio {}", decimal(ratio.si(), 1))
            }
        })
    },
};

/// The series of the file, else that of the designation.
fn series(of: &Listed<'_>) -> Series {
    let european = matches!(of.pipe.material.value, Material::Pe100 | Material::Pe80);
    let usual = if european { Series::Iso } else { Series::Ips };
    of.pipe.series.given().unwrap_or(usual)
}

impl Resolver<'_> {
    fn pe_pipe(&mut self, of: &Listed<'_>, pull: &Pull, wall: Cited<Length>) -> Resolved<PulledPipe> {
        let row = self.handbook.pe_material()?.row(of.pipe.material.value.key())?;
        let welds = self.file.pull.as_ref().and_then(|pull| pull.welds.given());
        let documented = welds == Some(Welds::Documented);
        let best = self.handbook.ratio("pe.weld_documented")?;
        let weld_factor = if documented { best } else { self.handbook.ratio("pe.weld_unknown")? };
        let weld_at_best = if welds.is_none() { best.value } else { weld_factor.value };
        self.assume_one(format!("{}: density", of.path), row.map(|row| row.density.value), Role::Density);
        if welds.is_none() {
            self.assume_one_of_pull("pull.welds (factor)", weld_factor, Role::Ratio);
        }
        let ovality = self.ovality(of);
        let stresses = self.stresses(of, &row, pull)?;
        let (soft, stiff) = (self.moduli(&row.value.soft.value.0, pull)?, self.moduli(&row.value.stiff.value.0, pull)?);
        Ok(PulledPipe::Pe(Box::new(PePipe {
            wall,
            density: row.value.density.value,
            stresses,
            upper_temperature: self.upper_temperature()?,
            weld_factor,
            weld_at_best,
            ovality,
            soft: soft.at(pull.load_duration),
            stiff: stiff.at(pull.duration),
            times: self.times(&soft, &stiff, pull)?,
        })))
    }

    fn pe_wall(&mut self, of: &Listed<'_>, outside_diameter: Cited<Length>) -> Resolved<Option<Cited<Length>>> {
        let sdr = of.pipe.sdr.given();
        let wall = self.given_wall(of, outside_diameter.value);
        Ok(match (wall, sdr) {
            (Some(wall), sdr) => {
                let by_wall = outside_diameter.value / wall.value;
                if let Some(sdr) = sdr
                    && 2.0 * wall.value < outside_diameter.value
                    && ((by_wall / sdr).si() - 1.0).abs() > 0.05
                {
                    let by_wall = decimal(by_wall.si(), 1);
                    let message = format!("{} contradicts the wall, which gives {by_wall}", plain(sdr.si()));
                    self.fault(of, CandidateFile::sdr, message);
                }
                Some(wall)
            }
            (None, Some(sdr)) if series(of) == Series::Iso && of.pipe.outside_diameter.is_none() => {
                let fits = |row: &PeWallRow| {
                    same_size(row.size.value, of.size) && (row.sdr.value.si() - sdr.si()).abs() < 0.01
                };
                let row = self.handbook.pe_iso4427()?.find(fits).map(|row| row.map(|row| row.wall.value));
                if row.is_none() {
                    self.no_iso_pipe(of, sdr)?;
                }
                row
            }
            (None, Some(sdr)) => Some(outside_diameter.map(|outside| outside / sdr)),
            (None, None) => {
                let what = "the wall of the PE pipe is missing";
                self.lacks(&of.pipe.size, &of.at("sdr"), what, "add `sdr: 11` or `wall: ...`");
                None
            }
        })
    }

    /// Which of size and ratio the table does not have, and what it has.
    fn no_iso_pipe(&mut self, of: &Listed<'_>, sdr: Ratio) -> Resolved<()> {
        let rows = &self.handbook.pe_iso4427()?.rows;
        let rising = |values: &mut dyn Iterator<Item = f64>| {
            let mut values: Vec<f64> = values.collect();
            values.sort_by(f64::total_cmp);
            values.dedup();
            values
        };
        let of_size = rows.iter().filter(|row| same_size(row.value.size.value, of.pipe.size.value));
        let ratios = rising(&mut of_size.map(|row| row.value.sdr.value.si()));
        if ratios.is_empty() {
            let sizes = rising(&mut rows.iter().map(|row| row.value.size.value.si()));
            let sizes = sizes.into_iter().map(|size| size_text(Length::from_si(size), Series::Iso));
            let known = sizes.collect::<Vec<_>>().join(", ");
            let message = format!("no ISO 4427 pipe of {} in the table", as_written(&of.pipe.size));
            let advice = format!("there are {known}; for another give wall");
            self.lacks(&of.pipe.size, &of.at("size"), message, &advice);
        } else {
            let size = size_text(of.pipe.size.value, Series::Iso);
            let message = format!("no ISO 4427 pipe of {size} SDR {} in the table", plain(sdr.si()));
            let known = ratios.into_iter().map(plain).collect::<Vec<_>>().join(", ");
            let complaint = (message, format!("there are {known}; for another give wall"));
            self.fault(of, CandidateFile::sdr, complaint);
        }
        Ok(())
    }
}
