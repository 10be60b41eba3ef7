//! Rows that a user lays over the handbook: none of their numbers is far from what the handbook has there.

use super::written::Written;
use crate::quantity::shown::plain;
use crate::quantity::{
    Angle, Area, Dim, Force, FromText, Length, LineLoad, LinearMassDensity, MassDensity, Pressure, Ratio,
    ThermalExpansion, ThermodynamicTemperature, Time, UnitWeight, Velocity, Volume,
};
use crate::yaml::Complaint;

/// How often a number may be more or less than the handbook's before it is taken for a slip of unit or digit.
const FAR: f64 = 10.0;
/// Tables whose numbers are the user's own affair: weights, and shifts of works as large as they may be.
const FREE: [&str; 2] = ["score_weight", "stage_shifts"];
/// Tables of factors: what is above 1 in the handbook adds safety, and what is below takes it away.
const FACTORS: [&str; 21] = [
    "after_pull",
    "bend_radius",
    "bore_rule",
    "collapse_support",
    "concrete_factor",
    "deflection_factor",
    "earth_load_factor",
    "hole_overcut",
    "impact_factor",
    "jacking_factor",
    "jacking_station",
    "pit_factor",
    "planning_factor",
    "practice_ratio",
    "pull_rule",
    "pvc_ratio",
    "ream_step",
    "restart_factor",
    "steel_factor",
    "steel_pull_factor",
    "thrust_wall",
];

/// What is wrong with the columns of a row laid over a table as it was before.
pub(super) fn wrong(table: &str, before: &[Written], key: &str, columns: &[(String, String)]) -> Option<Complaint> {
    columns.iter().find_map(|(name, text)| {
        let (dim, new) = number(text)?;
        let column = |row: &Written| row.columns.iter().find(|(own, _)| own == name).map(|(_, text)| text.clone());
        let known: Vec<String> = match before.iter().find(|row| row.key == key) {
            Some(row) => column(row).into_iter().collect(),
            None => before.iter().filter_map(column).collect(),
        };
        let known = known.iter().filter_map(|text| Some((number(text).filter(|(of, _)| *of == dim)?.1, text)));
        let least = known.clone().min_by(|a, b| a.0.total_cmp(&b.0))?;
        let most = known.max_by(|a, b| a.0.total_cmp(&b.0))?;
        let book = if least.1 == most.1 { least.1.clone() } else { format!("{} to {}", least.1, most.1) };
        let what = if name.is_empty() { String::new() } else { format!("{name}: ") };
        let told = |why: &str, advice: &str| {
            Some(Complaint::from(format!("{what}{text} {why}, where the handbook has {book}")).advise(advice))
        };
        if FREE.contains(&table) {
            None
        } else if FACTORS.contains(&table) && dim == Dim::NONE && least.0 > 1.0 && new > 0.0 && new < 1.0 {
            told("is a factor below 1", "a factor below 1 takes safety away")
        } else if new > FAR * most.0 && most.0 > 0.0 || new > 0.0 && new < least.0 / FAR {
            told(&format!("is more than {} times off", plain(FAR)), "check the unit and the decimal point")
        } else {
            None
        }
    })
}

/// The number of a text, whatever it measures; none of words.
fn number(text: &str) -> Option<(Dim, f64)> {
    fn read<Q: FromText>(text: &str) -> Option<(Dim, f64)> {
        Q::from_text(text).ok().map(|value| (Q::DIM, value.si()))
    }
    type Reader = fn(&str) -> Option<(Dim, f64)>;
    let readers: [Reader; 15] = [
        read::<Ratio>,
        read::<Length>,
        read::<Area>,
        read::<Volume>,
        read::<Force>,
        read::<Pressure>,
        read::<LineLoad>,
        read::<UnitWeight>,
        read::<MassDensity>,
        read::<LinearMassDensity>,
        read::<Time>,
        read::<Velocity>,
        read::<Angle>,
        read::<ThermodynamicTemperature>,
        read::<ThermalExpansion>,
    ];
    readers.iter().find_map(|read| read(text))
}
