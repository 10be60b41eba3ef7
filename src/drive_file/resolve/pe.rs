//! PE pipe, pulled: its wall, and what it bears over time and temperature.

use super::label::{as_written, same_size, size_text};
use super::listed::Listed;
use super::pull::SHORTEST;
use super::row::{Applies, NOT_PUSHED, PULLED, Pulled, Section, keys};
use super::{Resolved, Resolver, no_row, sizes};
use crate::drive::{AssumedValue, Ends, ModulusPoints, PePipe, PeTimes, Pull, PulledPipe, StressSource};
use crate::drive_file::{AnnulusFile, CandidateFile, Filling, Material, PullFile, Series, StressEdition, Welds};
use crate::handbook::{Family, PeMaterialRow, PeWallRow, PullStressRow, Service};
use crate::quantity::shown::{decimal, plain};
use crate::quantity::{Length, Measure, Pressure, Ratio, Role, ThermodynamicTemperature, Time};
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
        let welds = self.given(PullFile::welds);
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

/// Moduli of a PE material.
pub(super) struct Moduli {
    /// By the duration of the load, rising.
    durations: Vec<(Time, Pressure)>,
    longest: (Time, Pressure),
    /// Multipliers around the temperature of the pull.
    around: [(ThermodynamicTemperature, Ratio); 2],
}

impl Moduli {
    /// Around a duration.
    pub(super) fn at(&self, duration: Time) -> ModulusPoints {
        let (before, after) = bracket(&self.durations, duration).unwrap_or((self.longest, self.longest));
        let [below, above] = self.around;
        ModulusPoints { before, after, below, above }
    }
}

impl Resolver<'_> {
    /// The pull stresses of every edition that covers the material, for the duration of the pull.
    pub(super) fn stresses(
        &mut self,
        of: &Listed<'_>,
        material: &Cited<&PeMaterialRow>,
        pull: &Pull,
    ) -> Resolved<Vec<StressSource>> {
        let chosen = self.field(PullFile::stress_edition);
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
            let material = &of.pipe.material;
            let message = format!("edition {} has no pull stress for {}", edition.key(), material.value.key());
            match chosen {
                Some(_) => self.wrong(PullFile::stress_edition, message),
                None => self.flaw(material, &of.at("material"), message),
            }
        }
        if chosen.is_none() {
            let word = AssumedValue::Word("the least of all editions that cover the material".to_owned());
            self.assume_of_pull("pull.stress_edition", word, material.origin);
        }
        Ok(stresses)
    }

    /// The row of the next longer duration, or the longest there is.
    fn stress_row(&self, edition: &str, material: &str, duration: Time) -> Resolved<Option<StressSource>> {
        let rows = self.handbook.pe_pull_stress()?;
        let own = || {
            let rows = rows.iter().map(|row| row.map(|row| &row.value));
            rows.filter(|row| row.value.edition.value.0 == edition && row.value.material.value.0 == material)
        };
        let longest = |row: &Cited<&PullStressRow>| row.value.up_to.value.si();
        let next = own().filter(|row| longest(row) >= duration.si());
        let next = next.min_by(|a, b| longest(a).total_cmp(&longest(b)));
        // The first of equals.
        let row = next.or_else(|| own().min_by(|a, b| longest(b).total_cmp(&longest(a))));
        Ok(row.map(|row| StressSource {
            stress: row.value.stress.value,
            yield_design_factor: None,
            chosen: false,
            duration_factor: Ratio::from_si(1.0),
            longest: row.value.up_to.value,
            reference: row.value.at.value,
            origin: row.origin,
        }))
    }

    fn duration_factor(&self, edition: &str, duration: Time) -> Resolved<(Ratio, Time)> {
        let table = self.handbook.pe_duration_factor()?;
        let own = table.iter().map(|row| &row.value.value).filter(|row| row.edition.value.0 == edition);
        let rows = rising(own.map(|row| (row.up_to.value, row.factor.value)));
        let next = rows.iter().find(|(longest, _)| *longest >= duration).or(rows.last());
        next.map(|(longest, factor)| (*factor, *longest)).ok_or_else(|| no_row("pe_duration_factor", edition))
    }

    /// Warmest temperature and the factor there of the set used on pull stress, the safer of two.
    pub(super) fn upper_temperature(&mut self) -> Resolved<(ThermodynamicTemperature, Ratio)> {
        const SET: &str = "pull_stress_stein";
        let table = self.handbook.pe_temperature()?;
        let warmest = table
            .iter()
            .filter(|row| row.value.value.set.value.0 == SET)
            // The first of equals.
            .min_by(|a, b| b.value.value.at.value.si().total_cmp(&a.value.value.at.value.si()))
            .ok_or_else(|| no_row("pe_temperature", SET))?;
        let factor = warmest.map(|row| row.value.factor.value);
        self.assume_one_of_pull("pull: temperature factor on pull stress at 40 degC", factor, Role::Ratio);
        Ok((warmest.value.value.at.value, factor.value))
    }

    /// The moduli of a column at the temperature of the pull.
    pub(super) fn moduli(&self, column: &str, pull: &Pull) -> Resolved<Moduli> {
        let (moduli, factors) = (self.handbook.pe_modulus()?, self.handbook.pe_temperature()?);
        let own = moduli.iter().map(|row| &row.value.value).filter(|row| row.material.value.0 == column);
        let durations = rising(own.map(|row| (row.duration.value, row.modulus.value)));
        let own = factors.iter().map(|row| &row.value.value).filter(|row| row.set.value.0 == "modulus_ppi");
        let temperatures = rising(own.map(|row| (row.at.value, row.factor.value)));
        let longest = *durations.last().ok_or_else(|| no_row("pe_modulus", column))?;
        let around = bracket(&temperatures, pull.temperature).ok_or_else(|| no_row("pe_temperature", column))?;
        Ok(Moduli { durations, longest, around: around.into() })
    }

    /// Moduli for the times after the pull. The pipe is taken as warm as in the pull.
    pub(super) fn times(&self, soft: &Moduli, stiff: &Moduli, pull: &Pull) -> Resolved<PeTimes> {
        let rest = pull.works.rest.value;
        let grouted = self.file.annulus.as_ref().filter(|annulus| annulus.filling.given() == Some(Filling::Grouted));
        let grout = match grouted {
            // Told but for how long it sets.
            Some(AnnulusFile { grout_sets_in: None, grout_density: Some(_), .. }) => {
                Some(Ends::same(self.handbook.duration("collapse.load")?.value))
            }
            Some(annulus) => Some(self.grout_sets_in(annulus)?),
            None => None,
        };
        let main = self.file.service.value == Service::PressureMain;
        let vacuum = if main { Some(self.vacuum_lasts()?.value) } else { None };
        Ok(PeTimes {
            pull: soft.at(pull.duration),
            at_once: stiff.at(Time::from_si(SHORTEST)),
            whole: soft.at(pull.duration + rest),
            rest: soft.at(rest),
            grout: grout.map(|Ends { low, high }| Ends { low: soft.at(low), high: soft.at(high) }),
            vacuum: vacuum.map(|lasts| soft.at(lasts)),
            long: soft.longest,
        })
    }
}

/// Points in rising order; of those at one place the first, which is the one laid over last.
pub(super) fn rising<X: Measure + PartialEq, Y>(points: impl Iterator<Item = (X, Y)>) -> Vec<(X, Y)> {
    let mut points: Vec<(X, Y)> = points.collect();
    points.sort_by(|a, b| a.0.si().total_cmp(&b.0.si()));
    points.dedup_by(|later, first| later.0 == first.0);
    points
}

/// The neighbours of `at` in a sorted list; the end twice where it lies outside.
pub(super) fn bracket<X: Measure + PartialOrd, Y: Copy>(points: &[(X, Y)], at: X) -> Option<((X, Y), (X, Y))> {
    let above = points.iter().find(|(x, _)| *x >= at).or(points.last())?;
    let below = points.iter().rev().find(|(x, _)| *x <= at).or(points.first())?;
    Some((*below, *above))
}
