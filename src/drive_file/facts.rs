//! What is known of a drive before there is a file of it, in the words of those who know it.

use super::{CandidateFile, DriveFile, InputError, Material};
use crate::handbook::{GroundClass, Service};
use crate::quantity::{Length, Measure as _, UnitSystem};
use crate::yaml::{self, Complaint, Fault, Field, FromScalar as _};
use serde_json::{Map, Value, json};

/// A few facts, as people say them; [`screen`](crate::vary::screen) looks at the drives that may be meant.
#[derive(Debug, Clone, Copy, Default)]
pub struct Facts<'a> {
    /// Pipes: material, size, and what else is known, as `clay 10 in`, `PE4710 10 in DR 11`, `steel 24 in wall 12.7 mm`.
    pub pipes: &'a [&'a str],
    /// From pit to pit.
    pub length: &'a str,
    /// The ground, as `stiff clay` or `loose sand`.
    pub soil: &'a str,
    /// Depth of the water table, or `none`; left out, it may be as good as at the surface, or not there.
    pub water: Option<&'a str>,
    /// Depth of the invert; left out, a shallow and a deep one are looked at.
    pub depth: Option<&'a str>,
    /// Rise from launch to reception; left out, 1 % up, or less where that would bring the invert up by half of its depth.
    pub grade: Option<&'a str>,
    /// What the pipe carries; left out, a gravity sewer is taken.
    pub service: Option<&'a str>,
}

/// What stands in for what was not told, of our own judgement: everyday work, between two ends where an end can bar.
struct Taken {
    depths: [&'static str; 2],
    water: &'static str,
    pull: [&'static str; 2],
}

const SI: Taken = Taken { depths: ["3 m", "6 m"], water: "1 m", pull: ["10 m/h", "25 degC"] };
const US: Taken = Taken { depths: ["10 ft", "20 ft"], water: "3 ft", pull: ["30 ft/h", "77 degF"] };
/// As steep as most sewers are laid, or less where the invert would rise by more than half of its depth.
const STEEPEST: f64 = 0.01;
const PART_OF_DEPTH: f64 = 0.5;
/// The weakest that pipe is made of.
const STEEL_GRADE: &str = "a139_a";
const LUBRICATION: &str = "metered";
const SERVICE: &str = "gravity sewer";
/// The most that is usual: no rig bars a screen, which tells the least that would do.
const RIG: &str = "8000 kN";

/// The drives that may be meant.
pub(crate) struct Meant {
    /// Each with another depth or water, where those are not told; the last is the deepest and wettest.
    pub(crate) files: Vec<DriveFile>,
    /// The last as it is written.
    pub(crate) written: Written,
    /// What stands in for what nobody told, as field and value.
    pub(crate) taken: Vec<String>,
}

/// A drive file that is made of facts.
#[derive(Debug, Clone, Default)]
pub(crate) struct Written(Value);

impl Written {
    /// Its text, with the thrust and the pull of another rig where they are known.
    ///
    /// # Errors
    /// If it has a shape that YAML cannot hold.
    pub(crate) fn with_rig(&self, rig: [(&str, Option<String>); 2]) -> Result<String, InputError> {
        let mut drive = self.0.clone();
        for (key, rating) in rig {
            if let (Some(rating), Some(place)) = (rating, drive.pointer_mut(&format!("/rig/{key}"))) {
                *place = rating.into();
            }
        }
        yaml::write(&drive).map_err(|fault| InputError::Faults(vec![fault]))
    }
}

impl Facts<'_> {
    /// Reads the words.
    ///
    /// # Errors
    /// Every fact that is not understood, under its name.
    pub(crate) fn meant(&self) -> Result<Meant, InputError> {
        let mut faults = Vec::new();
        let mut wrong = |fact: &str, complaint| {
            faults.push(Fault { path: fact.to_owned(), complaint, place: None });
        };
        let soil = GroundClass::said(self.soil).map_err(|complaint| wrong("soil", complaint));
        let is_casing = self.pipes.iter().any(|words| words.split_whitespace().any(|word| is_word(word, &[CASING])));
        let service = self.service.unwrap_or(if is_casing { CASING } else { SERVICE });
        let service = Service::said(service).map_err(|complaint| wrong("service", complaint));
        let pipes: Vec<Option<Value>> =
            self.pipes.iter().map(|words| pipe(words).map_err(|complaint| wrong("pipe", complaint)).ok()).collect();
        let length = yaml::read::<Field<Length>>(self.length)
            .map_err(|its| its.into_iter().for_each(|fault| wrong("length", fault.complaint)));
        let (Ok(soil), Ok(service), Ok(length), true) = (soil, service, length, faults.is_empty()) else {
            return Err(InputError::Faults(faults));
        };
        let Taken { depths, water, pull: [rate, temperature] } =
            if length.written_in() == Some(UnitSystem::Us) { US } else { SI };
        let depths = self.depth.map_or_else(|| depths.to_vec(), |depth| vec![depth]);
        let least = depths.iter().filter_map(|depth| Some(yaml::read::<Field<Length>>(depth).ok()?.value));
        let flat = least.map(|depth| PART_OF_DEPTH * (depth / length.value).si()).fold(STEEPEST, f64::min);
        // To a hundredth of a per cent.
        let flat = format!("{} %", ((flat * 1e4).floor() / 100.0).max(0.0));
        let grade = self.grade.unwrap_or(&flat);
        let drive = |depth, water| {
            json!({
                "service": service.key(),
                "length": self.length,
                "launch": { "invert_depth": depth },
                "grade": grade,
                "groundwater": water,
                "lubrication": LUBRICATION,
                "ground": [{ "class": soil.key() }],
                "rig": { "thrust": RIG, "pull": RIG },
                "pull": { "rate": rate, "pipe_temperature": temperature },
                "candidates": pipes,
            })
        };
        let waters =
            self.water.filter(|water| *water != "unknown").map_or_else(|| vec!["none", water], |water| vec![water]);
        let (mut files, mut written) = (Vec::new(), Written::default());
        for water in waters {
            for depth in &depths {
                written = Written(drive(*depth, water));
                let text = written.with_rig([("thrust", None), ("pull", None)])?;
                files.push(DriveFile::read(&text).map_err(unplaced)?);
            }
        }
        let told = [("grade", self.grade, grade), ("service", self.service, service.key())];
        let not_told = told.into_iter().filter(|(_, told, _)| told.is_none()).map(|(field, _, taken)| (field, taken));
        let always = [("lubrication", LUBRICATION), ("pull.rate", rate), ("pull.pipe_temperature", temperature)];
        let weakest = |pipe: &Value| pipe["steel_grade"] == STEEL_GRADE;
        let steel = pipes.iter().flatten().any(weakest).then_some(("steel_grade", STEEL_GRADE));
        let taken = not_told.chain(steel).chain(always).map(|(field, taken)| format!("{field} {taken}")).collect();
        Ok(Meant { files, written, taken })
    }
}

/// Faults of a text that nobody wrote have no place in it.
fn unplaced(error: InputError) -> InputError {
    match error {
        InputError::Faults(faults) => {
            InputError::Faults(faults.into_iter().map(|fault| Fault { place: None, ..fault }).collect())
        }
        other => other,
    }
}

/// Words that say nothing of a pipe that its other words do not: what it is for, and its standard.
const IDLE: [&str; 8] = ["dn", CASING, "pipe", "jacking", "awwa", "c900", "c905", "c909"];
const CASING: &str = "casing";

fn is_word(word: &str, of: &[&str]) -> bool {
    of.iter().any(|one| one.eq_ignore_ascii_case(word))
}

/// The material first, where the size is said before it: `10 in clay`.
fn material_first(words: &[&str]) -> Vec<String> {
    let unit = words.get(1).filter(|word| matches!(unit(word), "in" | "mm" | "cm" | "m" | "ft"));
    let (size, rest) = words.split_at(1 + usize::from(unit.is_some()));
    let is_material = |many: &usize| rest.get(..*many).is_some_and(|words| Material::said(&words.join(" ")).is_ok());
    let many = (1..=rest.len()).rev().find(is_material);
    let (material, rest) = rest.split_at(many.unwrap_or(rest.len()));
    [material, size, rest].concat().into_iter().map(ToOwned::to_owned).collect()
}

/// A pipe: material and size in either order, then keys of a pipe in the drive file with their values.
fn pipe(words: &str) -> Result<Value, Complaint> {
    let words = words.replace('"', " in ").replace("-in", " in").replace(',', " ");
    let mut words: Vec<String> =
        words.split_whitespace().filter(|word| !is_word(word, &IDLE)).map(ToOwned::to_owned).collect();
    if words.first().is_some_and(|word| without_dn(word).starts_with(|c: char| c.is_ascii_digit())) {
        words = material_first(&words.iter().map(String::as_str).collect::<Vec<_>>());
    }
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let is_size = |word: &&str| without_dn(word).starts_with(|c: char| c.is_ascii_digit());
    let Some(at) = words.iter().position(is_size) else {
        let got = words.join(" ");
        return Err((format!("expected a pipe with its size, got \"{got}\""), "write for example `clay 10 in`").into());
    };
    let (material, rest) = words.split_at(at);
    let mut pipe = Map::new();
    pipe.insert("material".to_owned(), Material::said(&material.join(" "))?.key().into());
    let mut key = "size".to_owned();
    let mut value = String::new();
    for word in rest {
        let next = if key == "size" && value.is_empty() { None } else { key_of(word) };
        match next {
            Some((next, start)) => {
                pipe.insert(std::mem::replace(&mut key, next), std::mem::replace(&mut value, start).into());
            }
            None => value = format!("{value} {}", if key == "size" { unit(word) } else { word }).trim().to_owned(),
        }
    }
    pipe.insert(key, value.into());
    if let Some(Value::String(size)) = pipe.get_mut("size").filter(|size| size.as_str().is_some_and(is_bare)) {
        // Nominal diameters without a unit are millimetres.
        size.push_str(" mm");
    }
    let is_steel = pipe.get("material").is_some_and(|material| *material == Material::Steel.key());
    if is_steel && !pipe.contains_key("steel_grade") && !pipe.contains_key("yield_strength") {
        pipe.insert("steel_grade".to_owned(), STEEL_GRADE.into());
    }
    Ok(pipe.into())
}

fn is_bare(size: &str) -> bool {
    size.parse::<f64>().is_ok()
}

/// The number of `DN300`.
fn without_dn(word: &str) -> &str {
    word.strip_prefix("DN").or(word.strip_prefix("dn")).unwrap_or(word)
}

/// A word of a size as the drive file has it.
fn unit(word: &str) -> &str {
    match word {
        "inch" | "inches" => "in",
        other => without_dn(other),
    }
}

/// The key that a word is, with the start of its value where that is written to it: `SDR11`. `None` for a part of a value.
fn key_of(word: &str) -> Option<(String, String)> {
    const SHORT: [(&str, &str); 3] = [("dr", "sdr"), ("sdr", "sdr"), ("grade", "steel_grade")];
    let number = word.find(|c: char| c.is_ascii_digit()).unwrap_or(word.len());
    let (name, start) = word.split_at(number);
    let lower = name.to_lowercase();
    let short = SHORT.iter().find(|(short, _)| *short == lower).map(|(_, key)| *key);
    let mut keys = CandidateFile::FIELDS.iter().map(|spec| spec.key);
    let key = short.or_else(|| keys.find(|key| *key == lower && start.is_empty()));
    key.map(|key| (key.to_owned(), start.to_owned()))
}
