//! Least cover and clear distances.

use super::looked_up::looked_up;
use crate::handbook::{Handbook, HandbookError};
use crate::quantity::{Length, Measure, Ratio};
use crate::source::Cited;

looked_up! {
    /// Least cover.
    Cover of |handbook, least_invert: Length, in_loose_sand: bool, bed_is_rock: bool, has_depths: bool| {
        /// Least depth of the invert.
        shallowest: Length = least_invert,
        /// Length and multiple of the outside diameter for jacked pipe.
        jacked: (Length, Cited<Ratio>) =
            over(handbook, "jacked", if in_loose_sand { "jacked_loose_sand" } else { "jacked" })?,
        /// Below a road, for drilled bores: largest diameter of the row, and cover; by rising diameter.
        drilled: UpTo = under_road(handbook)?,
        /// Below a railway.
        rail: Cited<Length> = handbook.minimum_cover()?.cell("rail", |row| &row.cover)?,
        /// Below the bed of a stream: usually, and at least, where that is not rock.
        stream: Cited<Length> = handbook.minimum_cover()?.cell("stream", |row| &row.cover)?,
        bed: Option<Cited<Length>> =
            Some(handbook.minimum_cover()?.cell("stream_soil", |row| &row.cover)?).filter(|_| !bed_is_rock),
        /// Whether the file tells the surface between the pits, and with it the bed of a stream.
        bed_is_told: bool = has_depths,
        /// Of any bore: length and multiple of it.
        least: (Length, Cited<Ratio>) = over(handbook, "any", "any")?,
        /// Clear distance of what is dug up and seen before a bore crosses it: least, and multiple.
        exposed: (Length, Cited<Ratio>) = clear(handbook, "exposed_crossing")?,
        /// Clear distance of jacked and of drilled bores beside each other: least, and multiple.
        clear_jacked: Cited<Ratio> = handbook.separation()?.cell("parallel_jacked", |row| &row.times)?,
        clear_drilled: (Length, Cited<Ratio>) = clear(handbook, "parallel_drilled")?,
        /// To a gas main.
        clear_gas: Cited<Length> = handbook.separation()?.cell("gas", |row| &row.clear)?,
    }
}

/// Cover up to a diameter, the last one for any.
type UpTo = Vec<(Option<Length>, Cited<Length>)>;

/// Cover by the rows of its length and of its multiple.
fn over(handbook: &Handbook, length: &str, times: &str) -> Result<(Length, Cited<Ratio>), HandbookError> {
    let table = handbook.minimum_cover()?;
    Ok((table.cell(length, |row| &row.cover)?.value, table.cell(times, |row| &row.times_high)?))
}

fn clear(handbook: &Handbook, key: &str) -> Result<(Length, Cited<Ratio>), HandbookError> {
    let table = handbook.separation()?;
    Ok((table.cell(key, |row| &row.clear)?.value, table.cell(key, |row| &row.times)?))
}

/// Cover of drilled bores under a road, by rising diameter.
fn under_road(handbook: &Handbook) -> Result<UpTo, HandbookError> {
    const METHOD: &str = "directional drilling under a road";
    let table = handbook.minimum_cover()?;
    let mut drilled = Vec::new();
    for row in table.iter().filter(|row| row.value.value.method.value.0 == METHOD) {
        let least = row.value.value.cover.as_ref().ok_or_else(|| table.lacks(METHOD))?.value;
        drilled.push((row.value.value.diameter_to.as_ref().map(|to| to.value), Cited::new(least, row.origin)));
    }
    let end = |to: Option<Length>| to.map_or(f64::INFINITY, Measure::si);
    drilled.sort_by(|a, b| end(a.0).total_cmp(&end(b.0)));
    Ok(drilled)
}
