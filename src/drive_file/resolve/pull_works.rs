//! What comes with a pull: bore, contents, stops, strings, pull head, ramp room, returns.

use super::line::Line;
use super::{Resolved, Resolver};
use crate::drive::{
    AssumedValue, CollapsedBore, Fill, HoleState, Laydown, PullReaction, PullWorks, Returns, UsualPull,
};
use crate::drive_file::{CollapsedBoreFile, Contents, Hole, LaydownFile, Place, PullFile, PullHeadFile, ReactionFile};
use crate::laws::soil::water_density;
use crate::quantity::{Length, MassDensity, Measure, Role, Time};
use crate::source::{Equation, Origin};
use crate::yaml::{Field, MayBe};

/// Most stops and joints of one pull that are counted.
const MOST_STOPS: f64 = 2_000.0;

/// What is taken for the contents of the string.
const EMPTY: Equation = Equation::judged(
    "contents of the string",
    "empty; metal pipe empty or full of water, whichever is worse",
    "an empty plastic pipe floats harder in any bore fluid than a filled one sinks",
    "pulled pipe",
);

impl Resolver<'_> {
    pub(super) fn works(
        &mut self,
        pull: &PullFile,
        duration: Time,
        line: &Line,
        length: Length,
    ) -> Resolved<PullWorks> {
        let hole = match pull.hole.given() {
            Some(Hole::DryAndStable) => HoleState::Dry,
            Some(Hole::Fluid) | None => HoleState::Fluid,
        };
        if hole == HoleState::Dry {
            const DRY: &str = "there is no fluid in a dry bore";
            self.wrong("pull", pull, PullFile::unit_drag, DRY);
            self.wrong("pull", pull, PullFile::fluid_stands_for, DRY);
            self.wrong("pull", pull, PullFile::fluid_density, DRY);
            if let Some(returns) = &pull.returns {
                self.flaw(&returns.flow, "pull.returns", DRY);
            }
            if let Some(field) = pull.contents.as_ref().filter(|field| field.value == Contents::Slurry) {
                self.flaw(field, "pull.contents", DRY);
            }
        }
        let row = self.handbook.after_pull()?.value("score")?;
        let score = self.take("pull", pull, PullFile::score).unwrap_or_else(|| {
            self.assume_one("pull.score: deepest score, plastic pipe", row, Role::Percent);
            row
        });
        let least = self.handbook.after_pull()?.value("score_least")?;
        let score_at_best = if pull.score.is_some() { score } else { least };
        let head = pull.pull_head.as_ref();
        let rest = self.handbook.after_pull_wait()?.value("tie_in")?.map(|wait| wait.max(duration));
        let strain = self.handbook.pull_strain()?;
        let strain = (strain.value("pull")?, strain.value("total_low")?);
        Ok(PullWorks {
            hole,
            fill: self.fill(pull),
            unit_drag: pull.unit_drag.given(),
            inside_pressure: pull.inside_pressure.given().unwrap_or_default(),
            collapsed: self.collapsed(pull, line, length)?,
            score,
            score_at_best,
            usual: UsualPull::read(self.handbook)?,
            head_rating: head.and_then(|head| self.take("pull.pull_head", head, PullHeadFile::rating)),
            weak_link: head.and_then(|head| self.take("pull.pull_head", head, PullHeadFile::weak_link)),
            laydown: self.laydown(pull),
            duration_basis: match &pull.duration {
                Some(_) => Origin::File(PullFile::duration.spec.name("pull")),
                None => Origin::Law(&super::pull::DURATION),
            },
            rods: self.rods(pull, length),
            ramp_depth: line.reception(),
            ramp_room: self.take("pull", pull, PullFile::ramp_room),
            reaction: pull.reaction.as_ref().map(|reaction| PullReaction {
                area: reaction.area.value,
                allowable: self.take("pull.reaction", reaction, ReactionFile::allowable_pressure),
            }),
            returns: pull.returns.as_ref().map(|returns| Returns {
                flow: returns.flow.value,
                plastic_viscosity: returns.plastic_viscosity.value,
                yield_point: returns.yield_point.value,
            }),
            ground_temperature: pull.ground_temperature.given(),
            rest,
            strain,
        })
    }

    fn fill(&mut self, pull: &PullFile) -> Option<Fill> {
        match pull.contents.given() {
            Some(Contents::Water) => Some(Fill::Of(water_density())),
            Some(Contents::Empty) => Some(Fill::Of(MassDensity::default())),
            Some(Contents::Slurry) => Some(Fill::Slurry),
            None => {
                let word = AssumedValue::Word(Contents::Empty.key().to_owned());
                self.assume("pull.contents", word, Origin::Law(&EMPTY));
                None
            }
        }
    }

    fn collapsed(&mut self, pull: &PullFile, line: &Line, length: Length) -> Resolved<Option<CollapsedBore>> {
        let Some(file) = &pull.collapsed_bore else { return Ok(None) };
        const PATH: &str = "pull.collapsed_bore";
        let fallen = file.length.value;
        if fallen > length {
            self.wrong(PATH, file, CollapsedBoreFile::length, "is longer than the drive");
        }
        let row = self.handbook.ratio("pull.friction_ground")?;
        Ok(Some(CollapsedBore {
            length: fallen,
            friction: self.or_row(PATH, Some(file), CollapsedBoreFile::friction, row).value,
            unit_weight: file.unit_weight.value,
            depth: line.deepest(),
        }))
    }

    fn laydown(&mut self, pull: &PullFile) -> Option<Laydown> {
        let file = pull.laydown.as_ref()?;
        let in_pit = file.place.given() == Some(Place::Pit);
        if in_pit {
            const WHY: &str = "a string joined in the pit comes down no ramp";
            self.wrong("pull", pull, PullFile::ramp_angle, WHY);
            self.wrong("pull", pull, PullFile::bend_radius, WHY);
            self.wrong("pull", pull, PullFile::ramp_room, WHY);
        }
        Some(Laydown {
            length: file.length.value,
            in_pit,
            joint_time: self.take("pull.laydown", file, LaydownFile::joint_time),
        })
    }

    fn rods(&mut self, pull: &PullFile, length: Length) -> Option<(Length, Time)> {
        let file = pull.stem_removal.as_ref()?;
        let every = file.every.value;
        self.counted(&file.every, "pull.stem_removal.every", length, every);
        Some((every, file.takes.value))
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
        let excess = pull.excess_length.given();
        let excess = excess.or_else(|| self.handbook.length("laydown.handling").ok().map(|row| row.value))?;
        Some(duration + self.joints_take(pull, length + excess)?)
    }

    /// How long a pull stands for the joints of a string of this length, where it is laid out in parts; nothing where the file
    /// does not tell it.
    pub(super) fn joints_take(&mut self, pull: &PullFile, string: Length) -> Option<Time> {
        let Some(file) = &pull.laydown else { return Some(Time::default()) };
        let strings = (string / file.length.value).si();
        if !(strings > 1.0 && strings.is_finite()) {
            return Some(Time::default());
        }
        self.counted(&file.length, "pull.laydown.length", string, file.length.value);
        let Some(joint_time) = &file.joint_time else {
            let why = "the pull stands for joints, and how long is missing";
            let why = (why, "add `joint_time: 2 h`, fusion and cooling included");
            self.flaw(&file.length, "pull.laydown.joint_time", why);
            return None;
        };
        Some(joint_time.value * (strings.ceil() - 1.0))
    }
}
