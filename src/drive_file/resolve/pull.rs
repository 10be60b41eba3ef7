//! How a pipe is pulled: friction, fluid, duration; what comes with it: contents, stops, strings, pull head, ramp room.

use super::bounds::SLIP;
use super::contradictions::DRY;
use super::face::face_row;
use super::line::{GROUND_SURFACE, Line};
use super::{Resolved, Resolver};
use crate::drive::{
    AssumedValue, CollapsedBore, FaceResistance, Fill, Fluids, HoleState, Laydown, Pull, PullReaction, PullWorks,
    PushAssist, Returns, StepRule, UsualPull,
};
use crate::drive_file::{
    CollapsedBoreFile, Contents, Hole, LaydownFile, Place, PullFile, PullHeadFile, PushAssistFile, ReactionFile,
    Support, WaterTable, WinchFile,
};
use crate::handbook::{Head, rising};
use crate::laws::soil::water_density;
use crate::quantity::{
    Band, Length, MassDensity, Measure, Ratio, Role, Shown, ThermodynamicTemperature, Time, Velocity,
};
use crate::source::{Cited, Equation, Origin};
use crate::yaml::{Field, MayBe};

/// Slow for a pull of which nothing is told, m/s: 10 m an hour.
const SLOW: f64 = 10.0 / 3_600.0;
/// No rig pulls faster, m/s: 5 m a minute.
const FASTEST: f64 = 5.0 / 60.0;
/// Within which two temperatures are one, K.
const ROUNDING: f64 = 0.01;
/// Shortest duration of the tables of pull stress and modulus, s.
pub(super) const SHORTEST: f64 = 1_800.0;

/// How long a pull takes where its rate is given, and what the shortest one counts for.
pub(super) const DURATION: Equation = Equation::judged(
    "duration of the pull",
    "duration = length / rate + stops for rods and joints, no less than 0.5 h",
    "mean rate with the stops that are not told apart; the tables of pull stress begin at 0.5 h",
    "rate above zero",
);

impl Resolver<'_> {
    pub(super) fn pull(&mut self, pull: &PullFile, length: Length, line: &Line) -> Resolved<Option<Pull>> {
        let Some(duration) = self.duration(pull, length)? else { return Ok(None) };
        let hottest = self.handbook.pull_temperature()?.value("untold")?;
        // A limit that is written in other units is the limit.
        let is_hottest = |told: &ThermodynamicTemperature| (told.si() - hottest.value.si()).abs() < ROUNDING;
        let told = pull.pipe_temperature.given();
        let temperature = told.filter(|told| !is_hottest(told)).unwrap_or(hottest.value);
        let support = pull.string_on.given();
        let on_rollers = support == Some(Support::Rollers);
        let friction_outside =
            self.handbook.ratio(if on_rollers { "pull.friction_rollers" } else { "pull.friction_ground" })?;
        if support.is_none() {
            self.assume_word("pull.string_on", Support::Ground.key(), friction_outside.origin);
        }
        self.assume_one("pull: friction, string outside the bore", friction_outside, Role::Ratio);
        let dry = pull.hole.given() == Some(Hole::DryAndStable);
        let friction_inside = if dry {
            self.dry_friction()?
        } else {
            let keys = ["pull.friction_fluid_low", "pull.friction_fluid", "pull.friction_fluid"];
            let friction = self.handbook.ratios(keys)?;
            self.assume_band("pull: friction, pipe in the bore fluid", friction.value, Role::Ratio, friction.origin);
            friction.value
        };
        let annular = self.handbook.pressures(["pull.annular_low", "pull.annular", "pull.annular"])?;
        self.assume_band("pull: pressure in the annulus", annular.value, Role::Pressure, annular.origin);
        let ramp = self.or_row(PullFile::ramp_angle, self.handbook.angle("pull.ramp")?);
        let bend_radius = self.cited(PullFile::bend_radius);
        let bend_share = self.handbook.ratio("pe.bend_share")?;
        if bend_radius.is_none() {
            let word = "wide enough to leave half of the allowable stress to the pull; see the check of it";
            self.assume_word("pull.bend_radius", word, bend_share.origin);
        }
        let excess = self.handbook.length("laydown.handling")?;
        let excess_length = self.or_row(PullFile::excess_length, excess).value;
        let reamer = match self.band(PullFile::reamer) {
            Some(band) => FaceResistance::Given(band),
            None if pull.winch.is_some() => FaceResistance::Given(Band::default()),
            // A reamer cuts the same ring of soil as an enlarging head, with an auger's resistance whatever clears
            // the face of a jacked pipe; no published table of reamer drag was found.
            None => {
                let (resistance, origin) = face_row(self.handbook, Head::Auger)?;
                self.assume_face("pull.reamer", resistance, origin);
                resistance
            }
        };
        let fluid_level = self.cited(PullFile::fluid_level);
        let up_to = fluid_level.map_or(Length::default(), |level| level.value);
        let fluid_height = (line.greatest_column() - up_to).max(Length::default());
        if fluid_level.is_none() {
            let column = Cited::new(fluid_height, Origin::Law(&GROUND_SURFACE));
            let what = "pull: column of bore fluid over the lowest invert, up to the highest ground";
            self.assume_one(what, column, Role::Depth);
        }
        let row = self.handbook.duration("collapse.load")?;
        let stands = row.map(|row| row.max(duration));
        let load_duration = self.or_row(PullFile::fluid_stands_for, stands).value;
        if load_duration < duration {
            self.wrong(PullFile::fluid_stands_for, "is shorter than the pull itself");
        }
        let ovality = self.handbook.ratio("collapse.ovality");
        // In the order in which they are told.
        Ok(Some(Pull {
            model_factor: self.taken_ratio("pull: model factor on the high pull", "pull.model_factor")?.value,
            likely_factor: self.taken_ratio("pull: factor on the likely pull", "pull.likely_factor")?.value,
            ovality: self.taken("pull: least ovality of the pipe, bend included", ovality, Role::Percent)?.value,
            poisson: self.taken_ratio("pull: Poisson's ratio of PE", "pe.poisson")?.value,
            average_wall: self
                .taken_ratio("pull: average over minimum wall, string outside the bore", "pe.average_wall")?
                .value,
            duration,
            temperature,
            temperature_told: pull.pipe_temperature.is_some(),
            duration_told: pull.duration.is_some() || pull.rate.is_some(),
            fluid_height,
            fluid_height_pumped: fluid_level.is_none().then(|| self.pumped(line).min(fluid_height)),
            fluid_level,
            load_duration,
            stands_at_least: if pull.fluid_stands_for.is_some() { load_duration } else { duration },
            fluids: self.fluids()?,
            friction_outside: friction_outside.value,
            friction_inside,
            annular_pressure: annular.value,
            ramp: ramp.value,
            bend_radius,
            excess_length,
            reamer,
            step: self.step_rule()?,
            reaming_torque: self.band(PullFile::reaming_torque),
            push_assist: self.push_assist(pull)?,
            winch: pull.winch.as_ref().map(|winch| WinchFile::rating.cited("", winch)),
            collapse_factor: self.handbook.ratio("collapse.safety")?,
            bend_ratio: self.handbook.ratio("pe.bend_radius")?,
            bend_cold: self.handbook.ratio("pe.bend_cold")?.value,
            bend_share: bend_share.value,
            inside_share: self.handbook.ratio("pull.inside_share")?,
            works: self.works(pull, duration, line, length)?,
        }))
    }

    /// The machine that helps from behind.
    fn push_assist(&mut self, pull: &PullFile) -> Resolved<Option<PushAssist>> {
        let Some(assist) = &pull.push_assist else { return Ok(None) };
        let force = PushAssistFile::force.cited("", assist);
        let free_length = assist.free_length.value;
        let end_factor = self.taken("pull.push_assist: effective over free length", self.one_free(), Role::Ratio)?;
        let safety = self.taken_ratio("pull.push_assist: safety factor on buckling", "stem.buckling_factor")?;
        let grip = self.cited(PushAssistFile::grip_rating);
        Ok(Some(PushAssist { force, free_length, end_factor, safety, grip }))
    }

    /// Friction of the pipe on the bottom of a dry bore.
    fn dry_friction(&mut self) -> Resolved<Band<Ratio>> {
        let row = self.handbook.pull_rule()?.cell("dry_friction", |row| &row.ratio)?;
        let low = self.handbook.ratio("pull.friction_ground")?.value;
        let band = rising("pull_rule", "dry_friction", Band { low, likely: row.value, high: row.value })?;
        self.assume_band("pull: friction, pipe in the dry bore", band, Role::Ratio, row.origin);
        Ok(band)
    }

    /// How much a reaming pass enlarges by habit.
    fn step_rule(&self) -> Resolved<StepRule> {
        let table = self.handbook.ream_step()?;
        let soft = table.cell("soft", |row| &row.ratio_high)?;
        let ratio = (table.cell("soft", |row| &row.ratio_low)?.value, soft.value);
        let step = (table.cell("large", |row| &row.step_low)?.value, table.cell("large", |row| &row.step_high)?.value);
        let enlarges = ratio.0.si() >= 1.0 && ratio.0 <= ratio.1 && step.0.si() > 0.0 && step.0 <= step.1;
        table.holds(enlarges, "soft and large", "a step does not enlarge")?;
        Ok(StepRule { ratio, step, origin: soft.origin })
    }

    fn duration(&mut self, pull: &PullFile, length: Length) -> Resolved<Option<Time>> {
        // The tables begin at half an hour; a shorter pull is taken as that long.
        let shortest = Time::from_si(SHORTEST);
        let (duration, given) = match (&pull.duration, &pull.rate) {
            (Some(field), None) => {
                let duration = pull.duration.given().unwrap_or(field.value);
                if let Some(removal) = &pull.stem_removal {
                    let advice = "give `rate`, while it moves, in place of `duration`";
                    let why = ("the duration that is given holds its stops", advice);
                    self.flaw(&removal.takes, "pull.stem_removal", why);
                }
                // Faster than any rig moves, and as long as its joints take.
                let Some(joints) = self.joints_take(pull, length) else { return Ok(None) };
                let least = length / Velocity::from_si(FASTEST) + joints;
                if duration < least {
                    let shown = |time| Shown::of(time, Role::Duration).display(self.system).to_string();
                    let why = format!("is shorter than the pull can be with its joints: {}", shown(least));
                    self.wrong(PullFile::duration, (why, SLIP));
                }
                (duration, duration >= shortest)
            }
            (None, Some(rate)) => {
                let moving = length / pull.rate.given().unwrap_or(rate.value);
                let Some(stopped) = self.with_stops(pull, moving, length) else { return Ok(None) };
                (stopped, false)
            }
            (Some(_), Some(_)) => return Ok(None),
            (None, None) => {
                let row = self.handbook.duration("pull.untold")?;
                let Some(joints) = self.joints_take(pull, length) else { return Ok(None) };
                (row.value.max(length / Velocity::from_si(SLOW) + joints), false)
            }
        };
        let duration = duration.max(shortest);
        if !given {
            self.assume_one("pull.duration", Cited::new(duration, Origin::Law(&DURATION)), Role::Duration);
        }
        Ok(Some(duration))
    }

    fn fluids(&mut self) -> Resolved<Fluids> {
        let density = |ratio: Ratio| water_density() * ratio;
        if let Some(told) = self.given(PullFile::fluid_density) {
            return Ok(Fluids { light: told, clean: told, heavy: told, loaded: told });
        }
        let ratios = self.handbook.ratios(["pull.fluid_light", "pull.fluid_clean", "pull.fluid_heavy"])?;
        let band = ratios.value.map(density);
        self.assume_band("pull.fluid_density", band, Role::Density, ratios.origin);
        let loaded = density(self.handbook.ratio("pull.fluid_loaded")?.value);
        Ok(Fluids { light: band.low, clean: band.likely, heavy: band.high, loaded })
    }
}

impl Resolver<'_> {
    /// Fluid over the lowest invert where the pits are pumped: as high as the highest invert, and as the ground water.
    fn pumped(&self, line: &Line) -> Length {
        let of_file = &self.file.groundwater;
        let waters = self.file.ground.iter().map(|stretch| stretch.groundwater.as_ref().unwrap_or(of_file).value);
        let heads = waters.map(|water| match water {
            WaterTable::None => Length::default(),
            WaterTable::At(table) => line.deepest() - table,
            WaterTable::Unknown => line.greatest_column(),
        });
        heads.fold(line.drop(), Length::max)
    }
}

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
        if let Some(returns) = pull.returns.as_ref().filter(|_| hole == HoleState::Dry) {
            self.flaw(&returns.flow, "pull.returns", DRY);
        }
        let table = self.handbook.after_pull()?;
        let (row, least) = (table.value("score")?, table.value("score_least")?);
        // What the wall after scoring is worked out for.
        for (key, score) in [("score", row), ("score_least", least)] {
            table.holds((0.0..=0.5).contains(&score.value.si()), key, "must be from 0 to 50 %")?;
        }
        let score = self.cited(PullFile::score).unwrap_or_else(|| {
            self.assume_one("pull.score: deepest score, plastic pipe", row, Role::Percent);
            row
        });
        let score_at_best = if pull.score.is_some() { score } else { least };
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
            head_rating: self.cited(PullHeadFile::rating),
            weak_link: self.cited(PullHeadFile::weak_link),
            laydown: pull.laydown.as_ref().map(|file| Laydown {
                length: file.length.value,
                in_pit: file.place.given() == Some(Place::Pit),
                joint_time: self.cited(LaydownFile::joint_time),
            }),
            duration_basis: match &pull.duration {
                Some(_) => Origin::File(PullFile::duration.spec.name("pull")),
                None => Origin::Law(&DURATION),
            },
            rods: self.rods(pull, length),
            ramp_depth: line.reception(),
            ramp_room: self.cited(PullFile::ramp_room),
            reaction: pull.reaction.as_ref().map(|reaction| PullReaction {
                area: reaction.area.value,
                allowable: ReactionFile::allowable_pressure.cited("", reaction),
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
        let fallen = file.length.value;
        if fallen > length {
            self.wrong(CollapsedBoreFile::length, "is longer than the drive");
        }
        let row = self.handbook.ratio("pull.friction_ground")?;
        Ok(Some(CollapsedBore {
            length: fallen,
            friction: self.or_row(CollapsedBoreFile::friction, row).value,
            unit_weight: file.unit_weight.value,
            depth: line.deepest(),
        }))
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
    fn with_stops(&mut self, pull: &PullFile, moving: Time, length: Length) -> Option<Time> {
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
    fn joints_take(&mut self, pull: &PullFile, string: Length) -> Option<Time> {
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
