//! Steel pipe: jacked, its section and the coefficients of its schemes; and pulled, welded into a string;
//! the casing before another pipe.

use super::jacked::SAME_PIPE;
use super::label::as_given;
use super::listed::{Listed, Optional};
use super::row::{
    Applies, Bears, CASING_PARTS, End, GIVE_DIAMETERS, NOT_PULLED, NOT_PUSHED, PULLED as USED_PULLED, PUSHED, Pulled,
    Pushed, Section, keys,
};
use super::{Resolved, Resolver, sizes};
use crate::drive::{
    Capacity, Casing, CasingTube, FreeLength, PulledPipe, SteelEnd, SteelFactors, SteelPipe, SteelScheme,
};
use crate::drive_file::limits::mm;
use crate::drive_file::{CandidateFile, EndScheme};
use crate::handbook::{Family, SteelCasingWallRow, SteelGradeRow, SteelPullWallRow};
use crate::quantity::{Length, Measure, Pressure, Ratio, Role, Shown};
use crate::source::Cited;
use crate::yaml::{Complaint, MayBe, did_you_mean};

const WELDED: &str = "steel pipe is welded: its section bears";
const NO_STEEL: &str = "does not apply to steel pipe: give yield_strength or steel_grade";

pub(super) const JACKED: Pushed = Pushed {
    what: "steel",
    noun: "steel pipe",
    by_bore: false,
    other_size: GIVE_DIAMETERS,
    family: Family::Steel,
    applies: Applies {
        used: PUSHED.or(keys![wall, factor, free_length, design_strength, yield_strength, steel_grade, scheme]),
        reasons: &[
            (keys![strength, cube_strength, concrete_grade], NO_STEEL),
            (keys![end_bearing_area, joint_stress_ratio, packer, end_squareness], WELDED),
        ],
        way: NOT_PULLED,
        otherwise: "does not apply to steel pipe",
        idle: &[],
    },
    sizes: |resolver| resolver.steel_sizes(),
    density: Some("steel"),
    trade: None,
    end: End::Section,
    bears: |resolver, of, barrel| {
        let (outside, inside) = (barrel.outside_diameter.value, barrel.inside_diameter.unwrap_or_default());
        let end = resolver.steel_end(of, outside, (outside - inside) / 2.0)?;
        let weight = resolver.jacked_weight(of, barrel)?;
        let ratio = None;
        Ok(Some(Bears { weight, ratio, capacity: Capacity::Steel(end) }))
    },
};

pub(super) const PULLED: Pulled = Pulled {
    what: "this pipe",
    family: Family::Steel,
    applies: Applies {
        used: USED_PULLED.or(keys![ovality, weight, yield_strength, steel_grade]),
        reasons: &[
            (keys![sdr], "a steel pipe has no dimension ratio"),
            (keys![strength, cube_strength, concrete_grade], NO_STEEL),
            (keys![packer, end_squareness], WELDED),
        ],
        way: NOT_PUSHED,
        otherwise: "is for pipe that is jacked",
        idle: &[],
    },
    section: |resolver, of| {
        let known = sizes::steel(resolver.handbook)?;
        let advice = || format!("there are {}; for another give outside_diameter", sizes::rising_texts(&known));
        let outside = resolver.outside_diameter(of, &known, ["no steel pipe of", "in the table"], advice);
        let Some(outside_diameter) = outside else { return Ok(None) };
        let wall = match resolver.given_wall(of, outside_diameter.value) {
            Some(wall) => wall,
            None => {
                let wall = resolver.guide_wall(outside_diameter.value)?;
                resolver.own_or(of, CandidateFile::wall, wall)
            }
        };
        Ok(Some(Section { outside_diameter, wall }))
    },
    pipe: |resolver, of, _, section| resolver.pulled_steel(of, section.wall),
    label: |resolver, of, section| {
        let wall = Shown::of(section.wall.value, Role::Wall).display(resolver.system);
        Ok(format!("steel {} wall {wall}", as_given(of.size)))
    },
};

impl Resolver<'_> {
    fn pulled_steel(&mut self, of: &Listed<'_>, wall: Cited<Length>) -> Resolved<Option<PulledPipe>> {
        let Some(yield_strength) = self.yield_strength(of)? else {
            if of.pipe.steel_grade.is_none() {
                let what = "the yield strength of the steel is missing";
                let advice = "add `steel_grade: api_5l_b` or `yield_strength: 35 ksi`";
                self.lacks(&of.pipe.material, &of.at("steel_grade"), what, advice);
            }
            return Ok(None);
        };
        if let (Some(_), None) = (&of.pipe.steel_grade, &of.pipe.yield_strength) {
            self.assume_one(of.at("steel_grade (yield strength)"), yield_strength, Role::Strength);
        }
        let round = self.handbook.ovality()?.value("steel_formula")?.value;
        let ovality = of.pipe.ovality.given();
        if ovality.is_some_and(|ovality| !(ovality >= Ratio::default() && ovality <= round)) {
            let message = "the check of outside pressure holds for steel pipe at most 1 % out of round";
            self.fault(of, CandidateFile::ovality, message);
        }
        let density = self.density("steel")?;
        let weight = self.own(of, CandidateFile::weight).map(|weight| weight.value);
        let path = of.path;
        if weight.is_none() {
            self.assume_one(format!("{path}: density, without coating"), density, Role::Density);
        }
        let what = format!("{path}: smallest radius over outside diameter, by habit");
        let bend_ratio = self.taken(what, self.handbook.bend_radius()?.value("steel_habit"), Role::Ratio)?;
        let modulus = self.assume_modulus(path)?;
        let stresses = self.handbook.steel_pull_stress()?;
        Ok(Some(PulledPipe::Steel(Box::new(SteelPipe {
            wall,
            density: density.value,
            weight,
            yield_strength,
            modulus,
            factors: SteelFactors::read(self.handbook.steel_pull_factor()?)?,
            bending_ends: (stresses.value("bending_low_end")?.value, stresses.value("bending_middle_end")?.value),
            bend_ratio,
        }))))
    }

    /// Wall where the guide begins.
    pub(super) fn guide_wall(&self, outside_diameter: Length) -> Resolved<Cited<Length>> {
        // The guide goes by nominal size; the outside diameter is the safer, being no smaller.
        let fits = |row: &SteelPullWallRow| {
            row.size_over.given().is_none_or(|over| outside_diameter > over)
                && row.size_to.given().is_none_or(|to| outside_diameter <= to)
        };
        let table = self.handbook.steel_pull_wall()?;
        let row = table.fitting("the diameter", fits)?;
        let wall = match (&row.value.wall, &row.value.diameter_over_wall) {
            (Some(wall), _) => wall.value,
            (None, Some(ratio)) => outside_diameter / ratio.value,
            (None, None) => return Err(table.lacks("a wall")),
        };
        Ok(Cited::new(wall, row.origin))
    }

    /// A length that nothing holds, its head free to move aside.
    pub(super) fn free_length(&mut self, of: &Listed<'_>, key: Optional<Length>) -> Resolved<FreeLength> {
        let length_factor = self.one_free()?;
        let Some(length) = self.own(of, key) else {
            let length = self.handbook.length("steel.held_free")?;
            return Ok(FreeLength { length, length_factor, told: false });
        };
        let what = format!("{}: effective over free length", of.at(key.spec.key));
        self.assume_one(what, length_factor, Role::Ratio);
        Ok(FreeLength { length, length_factor, told: true })
    }

    /// Effective over free length of a column whose head is free to move aside.
    pub(super) fn one_free(&self) -> Resolved<Cited<Ratio>> {
        self.handbook.column_length()?.value("one_free")
    }

    /// A section with the factors of the tables, by the safer of their schemes.
    fn steel_section(
        &self,
        outside_diameter: Length,
        wall: Length,
        yield_strength: Cited<Pressure>,
    ) -> Resolved<SteelEnd> {
        let long = self.handbook.length("steel.long_drive")?.value;
        let first = self.file.ground.first().map(|stretch| stretch.class.value);
        let mixed =
            self.file.ground.iter().any(|stretch| stretch.mixed_with.is_some() || Some(stretch.class.value) != first);
        let is_hard = self.file.length.value >= long || mixed;
        SteelEnd::read(self.handbook, (outside_diameter, wall), yield_strength, is_hard)
    }

    fn steel_end(&mut self, of: &Listed<'_>, outside_diameter: Length, wall: Length) -> Resolved<SteelEnd> {
        let (yield_strength, yield_at_best) = match self.yield_strength(of)? {
            Some(given) => (given, None),
            None => {
                let least = self.least_yield()?;
                let usual = self.steel_row("casing_least")?;
                (self.own_or(of, CandidateFile::yield_strength, least), Some(usual))
            }
        };
        let safer = self.steel_section(outside_diameter, wall, yield_strength)?;
        let yield_factor = self.steel_factor(of, CandidateFile::factor, safer.yield_factor)?;
        let scheme = match of.pipe.scheme.given() {
            None | Some(EndScheme::Default) => safer.scheme,
            Some(EndScheme::CnAnnexE) => SteelScheme::Annex,
            Some(EndScheme::Asce27 | EndScheme::En1916 | EndScheme::JswasA6) => {
                let complaint = ("is for concrete pipe", "for steel: default or cn_annex_e");
                self.fault(of, CandidateFile::scheme, complaint);
                SteelScheme::Default
            }
        };
        let design_strength = match self.own(of, CandidateFile::design_strength) {
            Some(given) => {
                if given.value > yield_strength.value {
                    self.fault(of, CandidateFile::design_strength, "is more than the yield strength");
                }
                given
            }
            None if scheme == SteelScheme::Default => safer.design_strength,
            None => self.own_or(of, CandidateFile::design_strength, safer.design_strength),
        };
        self.assume_modulus(of.path)?;
        Ok(SteelEnd { scheme, yield_at_best, yield_factor, design_strength, ..safer })
    }

    /// The factor on the yield strength; below that of any pipe in microtunnelling it is none.
    pub(super) fn steel_factor(
        &mut self,
        of: &Listed<'_>,
        key: Optional<Ratio>,
        row: Cited<Ratio>,
    ) -> Resolved<Cited<Ratio>> {
        let least = self.handbook.steel_factor()?.value("ttp_microtunnel")?.value.si();
        Ok(self.ratio_or(of, key, (least, 20.0), row))
    }

    /// The modulus that a steel tube is reckoned with.
    fn assume_modulus(&mut self, what: &str) -> Resolved<Pressure> {
        let modulus = self.handbook.steel_pull_stress()?.value("modulus");
        Ok(self.taken(format!("{what}: modulus of steel"), modulus, Role::Modulus)?.value)
    }

    fn steel_row(&self, key: &'static str) -> Resolved<Cited<Pressure>> {
        Ok(self.handbook.steel_grade()?.row(key)?.map(|row| row.stress.value))
    }

    /// The least yield of the grades in the table.
    fn least_yield(&self) -> Resolved<Cited<Pressure>> {
        let table = self.handbook.steel_grade()?;
        let yields = table.iter().filter(|row| row.value.value.kind.value.0 == "yield");
        let stresses = yields.map(|row| row.map(|row| row.value.stress.value));
        let least = stresses.reduce(|least, other| if other.value < least.value { other } else { least });
        least.ok_or_else(|| table.lacks("any yield"))
    }

    /// The yield strength of the file, or of the grade that it names; `None` where it tells neither.
    fn yield_strength(&mut self, of: &Listed<'_>) -> Resolved<Option<Cited<Pressure>>> {
        let given = self.own(of, CandidateFile::yield_strength);
        let Some(grade) = &of.pipe.steel_grade else { return Ok(given) };
        if given.is_some() {
            self.fault(of, CandidateFile::yield_strength, "give either steel_grade or yield_strength");
            return Ok(given);
        }
        let table = self.handbook.steel_grade()?;
        let yields = || table.iter().filter(|row| row.value.value.kind.value.0 == "yield");
        let meant = grade_of(&grade.value.0);
        if let Some(row) = yields().find(|row| row.value.key == grade.value.0 || grade_of(&row.value.key) == meant) {
            let thick = of.pipe.wall.given().is_some_and(|wall| wall.si() > THICK);
            let stress = |row: &SteelGradeRow| row.thick.given().filter(|_| thick).unwrap_or(row.stress.value);
            return Ok(Some(row.map(|row| stress(&row.value))));
        }
        let keys: Vec<&str> = yields().map(|row| row.value.key.as_str()).collect();
        let near = did_you_mean(&grade.value.0, &keys, &[]);
        let advice = format!("{near}there are {}; or give yield_strength", keys.join(", "));
        let complaint = (format!("no yield strength of the grade \"{}\" in the table", grade.value.0), advice);
        self.fault(of, CandidateFile::steel_grade, complaint);
        Ok(None)
    }
}

/// A grade without the words of its standard round it, and without the letters of its toughness.
fn grade_of(words: &str) -> String {
    let lower = words.to_ascii_lowercase();
    let parts = lower.split(|letter: char| !letter.is_ascii_alphanumeric());
    let told =
        parts.filter(|part| !matches!(*part, "" | "astm" | "api" | "5l" | "en" | "10025" | "grade" | "gr" | "steel"));
    let short = |part: &str| match part.strip_prefix('s').and_then(|number| number.get(..3)) {
        Some(number) if number.bytes().all(|digit| digit.is_ascii_digit()) => format!("s{number}"),
        _ => part.to_owned(),
    };
    told.map(short).collect::<Vec<_>>().join("_")
}

/// Walls in m from which European grades yield earlier.
const THICK: f64 = mm(16.0);
/// In m, that a casing as wide as the pipe may be less by rounding.
const ROUNDING: f64 = mm(1.0);

impl Resolver<'_> {
    /// The casing before a pipe of this name and diameter.
    pub(super) fn casing(&mut self, of: &Listed<'_>, label: &str, pipe: Length) -> Resolved<Option<Casing>> {
        let Some(outside_diameter) = self.own(of, CandidateFile::casing) else {
            self.refuse_all(of, CASING_PARTS, &Complaint::from("there is no casing"));
            return Ok(None);
        };
        let outside_diameter = outside_diameter.value;
        if outside_diameter + Length::from_si(ROUNDING) < pipe {
            let message = format!("is smaller than {label}, which it makes room for");
            self.fault(of, CandidateFile::casing, message);
        }
        let tube = match &of.pipe.casing_wall {
            Some(field) => {
                // The pipe follows the casing and need not go into it.
                let wall = self.tube_wall(field, &of.at("casing_wall"), outside_diameter);
                Some(Box::new(self.casing_tube(of, outside_diameter, wall)?))
            }
            None => {
                let complaint = Complaint::from("says nothing without the wall of the casing");
                let complaint = complaint.advise("add `casing_wall: 10 mm`");
                self.refuse_all(of, keys![casing_factor, casing_yield_strength, casing_free_length], &complaint);
                self.usual_casing(of, outside_diameter)?.map(Box::new)
            }
        };
        let joint_thrust = self.own(of, CandidateFile::casing_joint_thrust);
        Ok(Some(Casing { outside_diameter, tube, joint_thrust }))
    }

    fn casing_tube(&mut self, of: &Listed<'_>, outside_diameter: Length, wall: Length) -> Resolved<CasingTube> {
        let (least, usual) = (self.least_yield()?, self.steel_row("casing_least")?);
        let yield_strength = self.own_or(of, CandidateFile::casing_yield_strength, least);
        let mut section = self.steel_section(outside_diameter, wall, yield_strength)?;
        self.assume_modulus(&of.at("casing"))?;
        section.yield_factor = self.steel_factor(of, CandidateFile::casing_factor, section.yield_factor)?;
        let best = match &of.pipe.casing_yield_strength {
            Some(_) => None,
            None => {
                let best = self.steel_section(outside_diameter, wall, usual)?;
                Some(SteelEnd { yield_factor: section.yield_factor, ..best })
            }
        };
        let free = self.free_length(of, CandidateFile::casing_free_length)?;
        Ok(CasingTube { weight: self.steel_weight(outside_diameter, wall)?, section, best, free })
    }

    /// A casing whose wall is not told: the least that a table has for its size, at best twice that, and as heavy.
    fn usual_casing(&mut self, of: &Listed<'_>, outside_diameter: Length) -> Resolved<Option<CasingTube>> {
        let Some(wall) = self.casing_row(outside_diameter)?.map(|row| row.map(|row| row.coated.value)) else {
            return Ok(None);
        };
        let (least, usual) = (self.least_yield()?, self.steel_row("casing_least")?);
        self.assume_one(of.at("casing_wall"), wall, Role::Wall);
        self.assume_one(of.at("casing_yield_strength"), least, Role::Strength);
        let thick = 2.0 * wall.value;
        Ok(Some(CasingTube {
            weight: self.steel_weight(outside_diameter, thick)?,
            section: self.steel_section(outside_diameter, wall.value, least)?,
            best: Some(self.steel_section(outside_diameter, thick, usual)?),
            free: self.free_length(of, CandidateFile::casing_free_length)?,
        }))
    }

    /// The row of the least wall under a railway, of the size or the next larger.
    pub(super) fn casing_row(&self, outside_diameter: Length) -> Resolved<Option<Cited<&SteelCasingWallRow>>> {
        let rows = self.handbook.steel_casing_wall()?.iter().map(|row| row.map(|row| &row.value));
        let fits = rows.filter(|row| row.value.size.value * (1.0 + SAME_PIPE) >= outside_diameter);
        Ok(fits.min_by(|a, b| a.value.size.value.si().total_cmp(&b.value.size.value.si())))
    }
}
