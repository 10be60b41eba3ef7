//! What the tables know of the sizes of a pipe. The same rows give the pipe of a size, the sizes that a fault names, and
//! those that are proposed.

use super::label::{as_given, same_size, size_text};
use super::{Resolved, Resolver};
use crate::drive::{EndArea, RingKind};
use crate::drive_file::{Series, Traffic};
use crate::handbook::{Handbook, SizeOutsideWallRow, Table};
use crate::quantity::unit::{INCH, STANDARD_GRAVITY};
use crate::quantity::{Force, Length, LineLoad, Measure};
use crate::source::{Cited, Origin};

/// A size that a table has.
#[derive(Debug, Clone, Copy)]
pub(super) struct Known {
    pub(super) size: Length,
    pub(super) outside: Length,
    pub(super) inside: Option<Length>,
    pub(super) origin: Origin,
    pub(super) end: Option<EndArea>,
    /// What makers usually allow on it.
    pub(super) usual_end: Option<Cited<Force>>,
    pub(super) weight: Option<Cited<LineLoad>>,
    /// Length of one pipe, from the shortest to the longest.
    pub(super) pipe_length: Option<Cited<(Length, Length)>>,
}

impl Known {
    pub(super) const fn outside_diameter(&self) -> Cited<Length> {
        Cited::new(self.outside, self.origin)
    }
}

/// Size, outside and inside diameter of each row.
fn rows<V>(table: &Table<V>, of: impl Fn(&V) -> (Length, Length, Option<Length>)) -> Vec<Known> {
    let known = |row: Cited<&crate::handbook::Row<V>>| {
        let (size, outside, inside) = of(&row.value.value);
        Known { size, outside, inside, origin: row.origin, end: None, usual_end: None, weight: None, pipe_length: None }
    };
    table.iter().map(known).collect()
}

pub(super) fn of_size(sizes: &[Known], size: Length) -> Option<Known> {
    sizes.iter().find(|known| same_size(known.size, size)).copied()
}

/// Sizes in a series, in the order of the table.
pub(super) fn texts(sizes: &[Known], series: Series) -> String {
    sizes.iter().map(|known| size_text(known.size, series)).collect::<Vec<_>>().join(", ")
}

/// Sizes as they were most likely written, rising.
pub(super) fn rising_texts(sizes: &[Known]) -> String {
    let mut sizes: Vec<Length> = sizes.iter().map(|known| known.size).collect();
    sizes.sort_by(|a, b| a.si().total_cmp(&b.si()));
    sizes.dedup_by(|a, b| same_size(*a, *b));
    sizes.into_iter().map(as_given).collect::<Vec<_>>().join(", ")
}

/// Clay in inches, with the end behind its ratings.
pub(super) fn clay_in_inches(handbook: &Handbook) -> Resolved<Vec<Known>> {
    let factors = [
        handbook.ratio("clay.factor_2_5")?.value,
        handbook.ratio("clay.factor_3_0")?.value,
        handbook.ratio("clay.factor_3_5")?.value,
    ];
    let known = |row: Cited<&crate::handbook::Row<crate::handbook::ClayPipeRow>>| {
        let values = &row.value.value;
        let [a, b, c] = factors;
        let ratings = [(values.rated_at_2_5.value, a), (values.rated_at_3_0.value, b), (values.rated_at_3_5.value, c)];
        let strength = values.rating_strength.value;
        Known {
            size: values.size.value,
            outside: values.outside_diameter.value,
            inside: None,
            origin: row.origin,
            end: Some(EndArea::Rated { ratings, strength, origin: row.origin }),
            usual_end: None,
            weight: Some(Cited::new(values.weight.value, row.origin)),
            pipe_length: None,
        }
    };
    Ok(handbook.clay_pipe()?.iter().map(known).collect())
}

/// Metric clay, named by its bore.
pub(super) fn metric_clay(handbook: &Handbook) -> Resolved<Vec<Known>> {
    let table = handbook.clay_pipe_dn()?;
    let known = rows(table, |row| (row.size.value, row.outside_diameter.value, Some(row.size.value)));
    let forces = table.iter().map(|row| Some(Cited::new(row.value.value.force.as_ref()?.value, row.origin)));
    Ok(known.into_iter().zip(forces).map(|(known, usual_end)| Known { usual_end, ..known }).collect())
}

/// Large pipe by its spigot, then small pipe by its wall, then pipe in inches by its wall.
pub(super) fn concrete(handbook: &Handbook) -> Resolved<Vec<Known>> {
    let large = handbook.concrete_pipe()?.iter().map(|row| {
        let values = &row.value.value;
        let (inside, length) = (values.size.value, values.length.value);
        let weight = LineLoad::from_si(values.mass.value.si() * STANDARD_GRAVITY / length.si());
        Known {
            size: inside,
            outside: inside + 2.0 * values.wall.value,
            inside: Some(inside),
            origin: row.origin,
            end: Some(EndArea::Ring {
                outside_diameter: values.spigot_outside_diameter.value,
                inside_diameter: inside,
                kind: RingKind::Spigot,
            }),
            usual_end: None,
            weight: Some(Cited::new(weight, row.origin)),
            pipe_length: Some(Cited::new((length, length), row.origin)),
        }
    });
    let ends = handbook.concrete_small_pipe()?;
    let small = rows(handbook.concrete_small_wall()?, |row| {
        (row.size.value, row.size.value + 2.0 * row.wall.value, Some(row.size.value))
    });
    let small = small.into_iter().map(|known| {
        let end = ends.find(|row| same_size(row.size.value, known.size));
        Known { end: end.map(|row| EndArea::Given(row.map(|row| row.end_area.value))), ..known }
    });
    let in_inches = rows(handbook.concrete_c76_wall()?, |row| {
        (row.size.value, row.size.value + 2.0 * row.wall.value, Some(row.size.value))
    });
    Ok(large.chain(small).chain(in_inches).collect())
}

/// Steel casings with their wall, by their outside diameter.
fn casings(handbook: &Handbook) -> Resolved<Vec<Known>> {
    Ok(rows(handbook.steel_casing_pipe()?, |row| {
        let outside = row.outside_diameter.value;
        (outside, outside, Some(outside - 2.0 * row.wall.value))
    }))
}

/// Steel pipe, by nominal size in inches, by outside diameter, and by its DN, which is 25 for each inch of the nominal size.
pub(super) fn steel(handbook: &Handbook) -> Resolved<Vec<Known>> {
    let mut sizes = rows(handbook.steel_pipe()?, |row| (row.size.value, row.outside_diameter.value, None));
    let inches = |known: &Known| known.size.si() / INCH;
    let in_inches = sizes.iter().filter(|known| (inches(known) - inches(known).round()).abs() < 1e-6);
    let by_dn: Vec<Known> = in_inches.map(|known| Known { size: known.size * (25.0 / 25.4), ..*known }).collect();
    sizes.extend(by_dn);
    Ok(sizes)
}

/// Iron pipe sizes of PE.
pub(super) fn iron_pipe_sizes(handbook: &Handbook) -> Resolved<Vec<Known>> {
    Ok(rows(handbook.pe_ips()?, |row| (row.size.value, row.outside_diameter.value, None)))
}

/// Cast iron sizes, of PVC and of PE in the sizes of ductile iron.
pub(super) fn cast_iron(handbook: &Handbook) -> Resolved<Vec<Known>> {
    Ok(rows(handbook.pvc_pipe()?, |row| (row.size.value, row.outside_diameter.value, None)))
}

/// Outside and inside diameter of iron with the least wall.
fn iron(table: &Table<SizeOutsideWallRow>) -> Vec<Known> {
    rows(table, |row| {
        let outside = row.outside_diameter.value;
        (row.size.value, outside, Some(outside - 2.0 * row.wall.value))
    })
}

/// Ductile iron in millimetres.
pub(super) fn metric_iron(handbook: &Handbook) -> Resolved<Vec<Known>> {
    Ok(iron(handbook.iron_pipe()?))
}

/// Ductile iron in inches.
pub(super) fn iron_in_inches(handbook: &Handbook) -> Resolved<Vec<Known>> {
    Ok(iron(handbook.iron_pipe_in()?))
}

/// Sizes of two series.
pub(super) fn both(metric: Resolved<Vec<Known>>, inches: Resolved<Vec<Known>>) -> Resolved<Vec<Known>> {
    let mut sizes = metric?;
    sizes.extend(inches?);
    Ok(sizes)
}

impl Resolver<'_> {
    /// Casings, which have a wall, then pipe by its nominal size. A proposed pipe has the wall that it would be pulled
    /// with, and is checked for it.
    pub(super) fn steel_sizes(&self) -> Resolved<Vec<Known>> {
        let pipes = steel(self.handbook)?;
        if !self.proposing {
            let mut sizes = casings(self.handbook)?;
            if self.driven_over().high == Traffic::Railway {
                // The wall that a railway asks for stands in, until the file tells that of the pipe.
                for known in &mut sizes {
                    let row = self.casing_row(known.outside)?;
                    let thicker = row.map(|row| row.map(|row| known.outside - 2.0 * row.bare.value));
                    if let Some(inside) = thicker.filter(|thicker| known.inside.is_some_and(|own| thicker.value < own))
                    {
                        (known.inside, known.origin) = (Some(inside.value), inside.origin);
                    }
                }
            }
            sizes.extend(pipes);
            return Ok(sizes);
        }
        let with_wall = |known: Known| {
            let wall = self.guide_wall(known.outside)?;
            let inside = Some(known.outside - 2.0 * wall.value);
            Ok(Known { inside, origin: wall.origin, ..known })
        };
        pipes.into_iter().map(with_wall).collect()
    }
}
