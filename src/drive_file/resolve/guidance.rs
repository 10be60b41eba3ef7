//! How the pilot finds its way, how far it may be off its line, and how the invert waves.

use super::Resolver;
use super::line::Line;
use crate::drive::{Stem, Stretch, Waves};
use crate::drive_file::{DriveFile, OrNone};
use crate::handbook::{GroundClass, Handbook, HandbookError, Pilot};
use crate::law::Law;
use crate::laws::guidance::GuidedError;
use crate::quantity::{Band, Length, Measure, Ratio, Role};
use crate::source::{Cited, Equation, Origin};

/// Said of a drilled pilot that is located from the surface.
const WALKED_OVER: Equation = Equation::judged(
    "error of a walked-over pilot",
    "share of the greatest depth",
    "error of locating from the surface, growing with depth",
    "a pilot located by walking over it",
);
/// Said of a machine that no pilot goes before.
const STEERED: Equation = Equation::judged(
    "error of a steered machine",
    "as a pushed pilot to 90 m, whatever the length",
    "a machine corrects its way by laser as it goes",
    "a machine or casing steered by laser",
);
/// Most stone in m that a pushed pilot takes without being turned off its line: those of clean sand and clay.
const STONE: f64 = 0.05;

/// The kind of pilot that the file tells, or the one that its ground or its stem asks for: in rock, above the blows that a
/// pilot can be pushed through in the harder of clay and sand, and by a wide stem a drilled one.
pub(super) fn pilot_kind(file: &DriveFile, handbook: &Handbook) -> Result<Pilot, HandbookError> {
    /// Stems in m that are wider than those that are pushed, some 90 to 115 mm.
    const WIDE: f64 = 0.15;
    let told = file.pilot.as_ref().map(|field| field.value);
    let most = handbook.pilot_cone()?.iter().filter_map(|row| row.value.value.blows_most.as_ref());
    let most = most.map(|blows| blows.value).fold(Ratio::default(), Ratio::max);
    let hard = |stretch: &crate::drive_file::StretchFile| {
        stretch.class.value.is_rock()
            || stretch.mixed_with.as_ref().is_some_and(|other| other.value.is_rock())
            || stretch.spt_n.as_ref().is_some_and(|blows| blows.value > most)
    };
    let stem = file.stem.as_ref().map(|stem| stem.outside_diameter.value);
    let wide = stem.is_some_and(|stem| matches!(stem, OrNone::Some(diameter) if diameter.si() > WIDE));
    Ok(told.unwrap_or(if wide || file.ground.iter().any(hard) { Pilot::Drilled } else { Pilot::Displacement }))
}

impl Resolver<'_> {
    /// How far the pilot, or the machine that has none, may be off its line at the far end.
    pub(super) fn guidance(
        &mut self,
        file: &DriveFile,
        stem: &Stem,
        stretches: &[Stretch],
        line: &Line,
    ) -> Result<Cited<Band<Length>>, HandbookError> {
        let length = stretches.last().map_or(Length::default(), |stretch| stretch.to);
        let row = |key| self.handbook.length(key).map(|row| row.value);
        let pushed = Band {
            low: row("pilot.pushed_low")?,
            likely: row("pilot.pushed")?,
            high: self.handbook.length("grade.pilot_accuracy")?.value,
        };
        let grown = |error: Band<Length>, least: Band<Length>, told_at| {
            error.with(least, |error, least| GuidedError { error, told_at, length, least }.value())
        };
        let law = Origin::Law(&GuidedError::EQUATION);
        let error = match pilot_kind(file, self.handbook)? {
            _ if !stem.is_there() => Cited::new(pushed, Origin::Law(&STEERED)),
            Pilot::WalkedOver => {
                let shares = self.handbook.line_tolerance()?;
                let low = shares.cell("walk_over", |row| &row.share_low)?.value;
                let high = shares.cell("walk_over", |row| &row.share_high)?.value;
                let depth = line.deepest();
                Cited::new(
                    Band { low: low * depth, likely: low * depth, high: high * depth },
                    Origin::Law(&WALKED_OVER),
                )
            }
            Pilot::Drilled => {
                let error = Band {
                    low: row("pilot.drilled_low")?,
                    likely: row("pilot.drilled")?,
                    high: row("pilot.drilled_high")?,
                };
                let least = Band {
                    low: row("pilot.drilled_least_low")?,
                    likely: row("pilot.drilled_least")?,
                    high: row("pilot.drilled_least_high")?,
                };
                Cited::new(grown(error, least, row("pilot.drilled_at")?), law)
            }
            Pilot::Displacement => {
                let error = grown(pushed, pushed, row("pilot.pushed_at")?);
                let share = self.handbook.ratio("pilot.deflected")?.value;
                let turned = if stretches.iter().any(|stretch| self.turns_pilots(file, stretch)) {
                    share * length
                } else {
                    Length::default()
                };
                Cited::new(Band { high: error.high.max(turned), ..error }, law)
            }
        };
        self.assume_band("error of the pilot at the far end", error.value, Role::Offset, error.origin);
        Ok(error)
    }

    /// Whether stones, hard or layered ground push a pilot off its line.
    fn turns_pilots(&self, file: &DriveFile, stretch: &Stretch) -> bool {
        let stones = file.ground.iter().filter_map(|stretch| stretch.largest_stone.as_ref());
        let comfortable = self.handbook.pilot_cone().ok().and_then(|table| {
            let row = table.find(|row| row.tip.value == stretch.tip.model && row.blows_comfortable.is_some())?;
            row.value.blows_comfortable.as_ref().map(|blows| blows.value)
        });
        stretch.mixed_with.is_some()
            || matches!(stretch.class, GroundClass::Gravel | GroundClass::Fill | GroundClass::Unknown)
            || comfortable.is_some_and(|most: Ratio| stretch.tip.blows.high > most)
            || stones.into_iter().any(|stone| stone.value.si() > STONE)
    }

    /// How the invert of a line waves where the file tells no wave.
    pub(super) fn waves(&self) -> Result<Waves, HandbookError> {
        let row = |key| self.handbook.length(key).map(|row| row.value);
        Ok(Waves {
            short: row("wave.short")?,
            long: row("wave.long")?,
            jacked: (row("pilot.pushed_low")?, row("grade.pilot_accuracy")?),
        })
    }
}
