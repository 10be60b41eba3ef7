//! How a bore is kept to its line, how far it may be off it, and how the invert waves.

use super::line::Line;
use super::technique::Technique;
use super::{Resolved, Resolver};
use crate::drive::{Guided, Stretch};
use crate::drive_file::limits::mm;
use crate::drive_file::{DriveFile, SteeringFile};
use crate::handbook::{GroundClass, Guidance, Pilot, Steered};
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
/// Said of a bore that nothing steers.
const UNSTEERED: Equation = Equation::judged(
    "error of a bore that is not steered",
    "share of the length",
    "what a published table of methods has for a plain auger casing",
    "a casing or pilot that goes where it was set up to go",
);
/// Said of a machine that no pilot goes before.
const STEERED: Equation = Equation::judged(
    "error of a steered machine",
    "what is specified of such machines, and likely half of it, whatever the length",
    "a machine corrects its way by laser as it goes",
    "a machine or casing steered by laser",
);
/// Most stone in m that a pushed pilot takes without being turned off its line: those of clean sand and clay.
const STONE: f64 = mm(50.8);

impl Resolver<'_> {
    /// How the bore keeps to its line, as the file says or as its technique does.
    pub(super) fn guidance(
        &mut self,
        technique: &Technique<'_>,
        stretches: &[Stretch],
        line: &Line,
    ) -> Resolved<Guided> {
        let walked_over = self.given(DriveFile::pilot) == Some(Pilot::WalkedOver);
        let reach = self.handbook.length("laser.reach")?;
        let told = self.file.guidance.is_some() || self.given(DriveFile::pilot) == Some(Pilot::Displacement);
        let length = stretches.last().map_or(Length::default(), |stretch| stretch.to);
        let (own, best, origin) =
            (technique.row.value.guidance.value, technique.row.value.guidance_best.value, technique.row.origin);
        let is_straight = self.cited(SteeringFile::curve_radius).is_none();
        let (by, at_best) = match &self.file.guidance {
            Some(field) => (field.value, None),
            None if walked_over => (Guidance::WalkedOver, None),
            // No laser from the pit keeps a machine to its line so far.
            None if own == Guidance::Laser && !technique.stem && is_straight && length > reach.value => {
                self.assume_word("guidance", Guidance::TotalStation.key(), reach.origin);
                (Guidance::TotalStation, None)
            }
            None => {
                self.assume_word("guidance", own.key(), origin);
                (own, (best != own).then_some(best))
            }
        };
        let (error, wave) = self.off_line(technique, stretches, line, by)?;
        let best = at_best.map(|best| self.off_line(technique, stretches, line, best)).transpose()?;
        let at_best = best.map(|(error, _)| error.value);
        self.assume_band("error of the pilot at the far end", error.value, Role::Offset, error.origin);
        let by_head = (by.is_steered() && own == Guidance::None).then_some(origin);
        Ok(Guided { by, told, reach, error, at_best, wave, by_head })
    }

    /// How far the bore may be off its line at the far end, and how far it waves about it.
    fn off_line(
        &self,
        technique: &Technique<'_>,
        stretches: &[Stretch],
        line: &Line,
        by: Guidance,
    ) -> Resolved<(Cited<Band<Length>>, Band<Length>)> {
        let length = stretches.last().map_or(Length::default(), |stretch| stretch.to);
        let row = |key| self.handbook.length(key).map(|row| row.value);
        let shares = |key, of: Length| -> Resolved<Band<Length>> {
            let table = self.handbook.line_tolerance()?;
            let low = table.cell(key, |row| &row.share_low)?.value * of;
            Ok(Band { low, likely: low, high: table.cell(key, |row| &row.share_high)?.value * of })
        };
        let pushed = Band {
            low: row("pilot.pushed_low")?,
            likely: row("pilot.pushed")?,
            high: self.handbook.length("grade.pilot_accuracy")?.value,
        };
        let grown = |error: Band<Length>, least: Band<Length>, told_at| {
            error.with(least, |error, least| GuidedError { error, told_at, length, least }.value())
        };
        let law = Origin::Law(&GuidedError::EQUATION);
        let pilot_at = row("pilot.pushed_at")?;
        Ok(match (by, technique.row.value.line.value) {
            (Guidance::WalkedOver, _) => {
                let error = shares("walk_over", line.deepest())?;
                (Cited::new(error, Origin::Law(&WALKED_OVER)), error)
            }
            (Guidance::None, _) => {
                let error = shares("unsteered", length)?;
                (Cited::new(error, Origin::Law(&UNSTEERED)), error)
            }
            (_, Steered::Machine) => {
                let [low, likely, high] = ["machine.error_low", "machine.error", "machine.error_high"].map(row);
                let machine = Band { low: low?, likely: likely?, high: high? };
                (Cited::new(machine, Origin::Law(&STEERED)), machine)
            }
            (_, Steered::Drilled) => {
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
                let drilled = grown(error, least, row("pilot.drilled_at")?);
                // A pilot that nobody tells may be one that is pushed.
                let untold = self.file.pilot.is_none().then(|| grown(pushed, pushed, pilot_at));
                (Cited::new(untold.map_or(drilled, |other| drilled.with(other, Length::max)), law), least)
            }
            (_, Steered::Pushed) => {
                let error = grown(pushed, pushed, pilot_at);
                let share = self.handbook.ratio("pilot.deflected")?.value;
                let turned = if stretches.iter().any(|stretch| self.turns_pilots(stretch)) {
                    share * length
                } else {
                    Length::default()
                };
                let high = |band: Band<Length>| Band { high: band.high.max(turned), ..band };
                (Cited::new(high(error), law), high(pushed))
            }
        })
    }

    /// Whether stones, hard or layered ground push a pilot off its line.
    fn turns_pilots(&self, stretch: &Stretch) -> bool {
        let stones = self.file.ground.iter().filter_map(|stretch| stretch.largest_stone.as_ref());
        let comfortable = self.handbook.pilot_cone().ok().and_then(|table| {
            let row = table.find(|row| row.tip.value == stretch.tip.model && row.blows_comfortable.is_some())?;
            row.value.blows_comfortable.as_ref().map(|blows| blows.value)
        });
        stretch.mixed_with.is_some()
            || matches!(stretch.class, GroundClass::Gravel | GroundClass::Fill | GroundClass::Unknown)
            || comfortable.is_some_and(|most: Ratio| stretch.tip.blows.high > most)
            || stones.into_iter().any(|stone| stone.value.si() > STONE)
    }
}
