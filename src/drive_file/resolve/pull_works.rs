//! What comes with a pull: bore, contents, stops, strings, pull head, ramp room, returns.

use super::line::Line;
use super::{Resolver, no_row};
use crate::drive::{
    AssumedValue, BreakOutRule, CollapsedBore, Fill, HoleState, Laydown, PullReaction, PullWorks, Returns,
};
use crate::drive_file::{Contents, Hole, Place, PullFile};
use crate::handbook::HandbookError;
use crate::quantity::{Length, MassDensity, Measure, Pressure, Ratio, Role, Time};
use crate::source::{Cited, Equation, FieldName, Mark, Origin};
use crate::yaml::{Complaint, Field};

/// Most stops and joints of one pull that are counted.
const MOST_STOPS: f64 = 2_000.0;

/// What is taken for the contents of the string.
const EMPTY: Equation = Equation {
    name: "contents of the string",
    form: "empty; metal pipe empty or full of water, whichever is worse",
    source: "jackpull",
    locator: "an empty plastic pipe floats harder in any bore fluid than a filled one sinks",
    mark: Mark::Judgement,
    valid: "pulled pipe",
};

impl Resolver<'_> {
    pub(super) fn works(
        &mut self,
        pull: &PullFile,
        duration: Time,
        line: &Line,
        length: Length,
    ) -> Result<PullWorks, HandbookError> {
        let hole = match pull.hole.as_ref().map(|field| field.value) {
            Some(Hole::DryAndStable) => HoleState::Dry,
            Some(Hole::Fluid) | None => HoleState::Fluid,
        };
        if hole == HoleState::Dry {
            const DRY: &str = "there is no fluid in a dry bore";
            self.refuse("pull", "unit_drag", pull.unit_drag.as_ref(), DRY);
            self.refuse("pull", "fluid_stands_for", pull.fluid_stands_for.as_ref(), DRY);
            if let Some(returns) = &pull.returns {
                self.flaw(&returns.flow, "pull.returns", DRY);
            }
            if let Some(field) = pull.contents.as_ref().filter(|field| field.value == Contents::Slurry) {
                self.flaw(field, "pull.contents", DRY);
            }
        }
        let score = self
            .handbook
            .after_pull()?
            .get("score")
            .ok_or_else(|| no_row("after_pull", "score"))?
            .map(|field| field.value);
        let score = match &pull.score {
            Some(field) => {
                if !(0.0..=0.5).contains(&field.value.si()) {
                    let complaint = Complaint::from("expected a share of the wall from 0 % to 50 %");
                    self.flaw(field, "pull.score", complaint.advise("write for example \"10 %\""));
                }
                Cited::given(field.value, &FieldName("pull.score"))
            }
            None => {
                self.assume_one("pull.score: deepest score, plastic pipe", score, Role::Percent);
                score
            }
        };
        let head = pull.pull_head.as_ref();
        let rating = head.and_then(|head| head.rating.as_ref());
        let link = head.and_then(|head| head.weak_link.as_ref());
        let rest = self
            .handbook
            .after_pull_wait()?
            .get("tie_in")
            .ok_or_else(|| no_row("after_pull_wait", "tie_in"))?
            .map(|field| field.value.max(duration));
        let strain = |key: &str| -> Result<Cited<Ratio>, HandbookError> {
            let row = self.handbook.pull_strain()?.get(key).ok_or_else(|| no_row("pull_strain", key))?;
            Ok(row.map(|field| field.value))
        };
        let strain = (strain("pull")?, strain("total_low")?);
        Ok(PullWorks {
            hole,
            fill: self.fill(pull),
            unit_drag: pull
                .unit_drag
                .as_ref()
                .map(|field| self.not_negative(field, "pull.unit_drag", Role::UnitFriction)),
            inside_pressure: pull
                .inside_pressure
                .as_ref()
                .map_or(Pressure::default(), |field| self.not_negative(field, "pull.inside_pressure", Role::Pressure)),
            collapsed: self.collapsed(pull, line, length)?,
            score,
            head_rating: rating.map(|field| self.rating(field, &FieldName("pull.pull_head.rating"), Role::Pull)),
            weak_link: link.map(|field| self.rating(field, &FieldName("pull.pull_head.weak_link"), Role::Pull)),
            laydown: self.laydown(pull),
            duration_basis: match &pull.duration {
                Some(_) => Origin::File(&FieldName("pull.duration")),
                None => Origin::Law(&super::pull::DURATION),
            },
            rods: self.rods(pull, length),
            ramp_depth: line.reception(),
            ramp_room: pull
                .ramp_room
                .as_ref()
                .map(|field| self.rating(field, &FieldName("pull.ramp_room"), Role::Distance)),
            reaction: pull.reaction.as_ref().map(|reaction| PullReaction {
                area: self.positive(&reaction.area, "pull.reaction.area", Role::Area),
                allowable: self.rating(
                    &reaction.allowable_pressure,
                    &FieldName("pull.reaction.allowable_pressure"),
                    Role::Pressure,
                ),
            }),
            returns: pull.returns.as_ref().map(|returns| Returns {
                flow: self.not_negative(&returns.flow, "pull.returns.flow", Role::Flow),
                plastic_viscosity: self.not_negative(
                    &returns.plastic_viscosity,
                    "pull.returns.plastic_viscosity",
                    Role::Viscosity,
                ),
                yield_point: self.not_negative(&returns.yield_point, "pull.returns.yield_point", Role::UnitFriction),
            }),
            break_out: self.break_out()?,
            ground_temperature: pull.ground_temperature.as_ref().map(|field| {
                if !(field.value.si() > 253.15 && field.value.si() < 323.15) {
                    let complaint =
                        Complaint::from("expected the temperature of the ground between -20 degC and 50 degC");
                    self.flaw(field, "pull.ground_temperature", complaint);
                }
                field.value
            }),
            rest,
            strain,
        })
    }

    fn fill(&mut self, pull: &PullFile) -> Option<Fill> {
        match pull.contents.as_ref().map(|field| field.value) {
            Some(Contents::Water) => Some(Fill::Of(super::pull::water())),
            Some(Contents::Empty) => Some(Fill::Of(MassDensity::default())),
            Some(Contents::Slurry) => Some(Fill::Slurry),
            None => {
                let word = AssumedValue::Word(Contents::Empty.key().to_owned());
                self.assume("pull.contents", word, Origin::Law(&EMPTY));
                None
            }
        }
    }

    fn collapsed(
        &mut self,
        pull: &PullFile,
        line: &Line,
        length: Length,
    ) -> Result<Option<CollapsedBore>, HandbookError> {
        let Some(file) = &pull.collapsed_bore else { return Ok(None) };
        let fallen = self.positive(&file.length, "pull.collapsed_bore.length", Role::Distance);
        if fallen > length {
            self.flaw(&file.length, "pull.collapsed_bore.length", "is longer than the drive");
        }
        let row = self.handbook.ratio("pull.friction_ground")?;
        let friction =
            self.given_or(file.friction.as_ref(), &FieldName("pull.collapsed_bore.friction"), Role::Ratio, row);
        Ok(Some(CollapsedBore {
            length: fallen,
            unit_weight: self.positive(&file.unit_weight, "pull.collapsed_bore.unit_weight", Role::UnitWeight),
            friction: friction.value,
            depth: line.depths(Length::default(), length).1,
        }))
    }

    fn laydown(&mut self, pull: &PullFile) -> Option<Laydown> {
        let file = pull.laydown.as_ref()?;
        let in_pit = file.place.as_ref().is_some_and(|field| field.value == Place::Pit);
        if in_pit {
            const WHY: &str = "a string joined in the pit comes down no ramp";
            self.refuse("pull", "ramp_angle", pull.ramp_angle.as_ref(), WHY);
            self.refuse("pull", "bend_radius", pull.bend_radius.as_ref(), WHY);
            self.refuse("pull", "ramp_room", pull.ramp_room.as_ref(), WHY);
        }
        Some(Laydown {
            length: self.positive(&file.length, "pull.laydown.length", Role::Distance),
            in_pit,
            joint_time: file.joint_time.as_ref().map(|field| {
                let name = &FieldName("pull.laydown.joint_time");
                Cited::given(self.positive(field, name.0, Role::Duration), name)
            }),
        })
    }

    fn rods(&mut self, pull: &PullFile, length: Length) -> Option<(Length, Time)> {
        let file = pull.stem_removal.as_ref()?;
        let every = self.positive(&file.every, "pull.stem_removal.every", Role::Distance);
        self.counted(&file.every, "pull.stem_removal.every", length, every);
        Some((every, self.not_negative(&file.takes, "pull.stem_removal.takes", Role::Duration)))
    }

    fn counted<T>(&mut self, field: &Field<T>, path: &str, length: Length, every: Length) {
        if (length / every).si() > MOST_STOPS {
            self.flaw(field, path, format!("asks for more than {MOST_STOPS} stops"));
        }
    }

    /// How long the pull takes at a rate while it moves, with its stops for rods and for joints.
    pub(super) fn with_stops(&mut self, pull: &PullFile, moving: Time, length: Length) -> Option<Time> {
        let mut duration = moving;
        if let Some(file) = &pull.stem_removal {
            let rods = (length / file.every.value).si();
            if rods.is_finite() && rods > 0.0 {
                // The last rod comes out after the pull.
                duration += file.takes.value * (rods.ceil() - 1.0).max(0.0);
            }
        }
        if let Some(file) = &pull.laydown {
            let excess = pull.excess_length.as_ref().map(|field| field.value);
            let excess = excess.or_else(|| self.handbook.length("laydown.handling").ok().map(|row| row.value))?;
            let strings = ((length + excess) / file.length.value).si();
            if strings > 1.0 && strings.is_finite() {
                self.counted(&file.length, "pull.laydown.length", length + excess, file.length.value);
                let Some(joint_time) = &file.joint_time else {
                    let complaint = Complaint::from("the pull stands for joints, and how long is missing");
                    let complaint = complaint.advise("add `joint_time: 2 h`, fusion and cooling included");
                    self.flaw(&file.length, "pull.laydown.joint_time", complaint);
                    return None;
                };
                duration += joint_time.value * (strings.ceil() - 1.0);
            }
        }
        Some(duration)
    }

    fn break_out(&self) -> Result<BreakOutRule, HandbookError> {
        let table = self.handbook.fluid_pressure_limit()?;
        let row = |key: &str| -> Result<Cited<Ratio>, HandbookError> {
            let row = table.get(key).ok_or_else(|| no_row("fluid_pressure_limit", key))?;
            Ok(row.map(|field| field.value))
        };
        Ok(BreakOutRule {
            strain: row("strain_low")?.value,
            margin_sand: row("margin_sand")?.value,
            margin_other: row("margin_other")?.value,
            cap: row("cap_total_stress")?,
        })
    }
}
