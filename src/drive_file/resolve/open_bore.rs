//! How the bore of a drilled pilot stands round the stem in it and round a jacked pipe behind it, stretch by stretch, and
//! the friction on them by it.

use super::contradictions::is_dry;
use super::rating::ToRate;
use super::{Resolved, Resolver};
use crate::drive::{
    AssumedValue, Auger, BoreState, Drilled, Earth, Ends, FluidRule, Held, Lubricant, OpenRound, Pipe, PulledPipe,
    Soil, Stem, Strength, Stretch, Way,
};
use crate::drive_file::{Contents, PullFile, StemFile, StretchFile, Traffic, WorkFile};
use crate::handbook::{Family, GroundClass, GroundHazard};
use crate::law::Law;
use crate::laws::face::StabilityNumber;
use crate::laws::friction::ContactWidth;
use crate::laws::open_bore::{ClosingNumber, ContactAdhesion, MeanOverOutside, SlidingOnBottom, SpoilLeft};
use crate::laws::pull::{NetWeightInFluid, PipeWeight};
use crate::laws::soil::{water_density, water_unit_weight};
use crate::quantity::{Band, Length, LineLoad, MassDensity, Measure, Pressure, Ratio, Role, UnitWeight};
use crate::source::{Equation, Origin};
use crate::yaml::MayBe;
use core::f64::consts::FRAC_PI_4;

/// Said of the state of the bore where the ground tells it.
const STATE: Equation = Equation::judged(
    "state of the bore",
    "by class, strength, depth, water and play: rock stands; clay stands below the number at which it closes half of the play in a week, and in part to that of two days; ground under fluid is held where the fluid stands over the water, or half a metre over a crown that is dry",
    "bore of a drilled pilot",
    "intact clay and sound rock, which a log must tell",
);

/// What is known of the place.
pub(super) struct Place<'a> {
    pub(super) stretch: &'a StretchFile,
    pub(super) way: &'a Way,
    pub(super) earth: &'a Earth,
    pub(super) hazards: &'a [GroundHazard],
}

impl Place<'_> {
    /// Whether the bore stands, by the word of the file.
    fn stands(&self) -> Option<bool> {
        self.stretch.bore_stands.given()
    }

    fn classes(&self) -> impl Iterator<Item = GroundClass> {
        core::iter::once(&self.stretch.class).chain(&self.stretch.mixed_with).map(|field| field.value)
    }
}

/// A body that lies in a bore wider than itself.
#[derive(Clone, Copy)]
struct Lying {
    outside_diameter: Length,
    /// Of the bore.
    bore: Length,
    weight: Band<LineLoad>,
    /// Row of what the waves of the line do to it.
    waves: &'static str,
    /// Whether the bore was surveyed and cleaned with nothing in it: nobody sees what is left round a stem.
    surveyed: bool,
    /// Whether the clay may be counted on to be intact.
    intact: bool,
}

impl Lying {
    /// Between body and bore, on the radius.
    fn play(&self) -> Length {
        (self.bore - self.outside_diameter) / 2.0
    }
}

/// Clay over a bore: at its heaviest and weakest, or at its best.
#[derive(Clone, Copy)]
struct Clay {
    unit_weight: UnitWeight,
    /// What lies on the ground.
    surcharge: Pressure,
    undrained_strength: Pressure,
}

impl Clay {
    /// Of a bore in the stretch, against a pressure that holds it.
    fn number(self, way: &Way, bore: Length, support: Pressure) -> Ratio {
        let Self { unit_weight, surcharge, undrained_strength } = self;
        let cover = (way.deepest - bore).max(Length::default());
        StabilityNumber { surcharge, unit_weight, cover, bore, support, undrained_strength }.value()
    }
}

/// State of the bore and the friction on what lies in it.
type Open = Option<(BoreState, Band<Pressure>)>;

/// A bore that stands by itself, in fluid that may hold it too: no more rubs than where it is held, and what may close by
/// itself does not.
fn lesser(open: Open, held: Open) -> Open {
    let (Some((state, friction)), Some((by_fluid, in_fluid))) = (open, held) else { return open.or(held) };
    let state = if state == BoreState::Partly { by_fluid } else { state };
    Some((state, friction.with(in_fluid, Pressure::min)))
}

impl Resolver<'_> {
    /// What a drilled pilot meets in a stretch; one that may be no more than pushed, at best alone.
    pub(super) fn drilled(
        &mut self,
        stem: &Stem,
        path: &str,
        place: &Place<'_>,
        is_certain: bool,
    ) -> Resolved<Drilled> {
        let rock = place.classes().any(GroundClass::is_rock);
        let bit = self.handbook.bit_thrust()?.levels(if rock { "rock" } else { "soil" })?;
        // The rows are those of hard rock; in weak rock a bit that is pushed less cuts too, and the least of them does.
        let hard = place.classes().any(|class| class == GroundClass::HardRock);
        let bit = if rock && !hard { bit.map(|bit| Band::same(bit.low)) } else { bit };
        let outside_diameter = stem.outside_diameter.value;
        let bore = stem.head.max(outside_diameter + 2.0 * self.handbook.length("bore.play")?.value);
        let stem = Lying {
            outside_diameter,
            bore,
            weight: self.stem_weight(stem)?,
            waves: "waves",
            surveyed: false,
            intact: true,
        };
        let [worst, best] = self.over(place)?;
        let may_be_held = place.stretch.unit_friction.is_none() && place.stands() != Some(false);
        let is_held = |over, at_best| Ok(may_be_held && self.is_held(&stem, place, (over, at_best))?);
        let round = |over, at_best| {
            let open = self.open(&stem, place, over)?;
            let held = if is_held(over, at_best)? { Some((BoreState::Held, self.rubs_in_fluid(&stem)?)) } else { None };
            Ok((open, lesser(open, held)))
        };
        let (safe, best) = (round(worst, false)?, round(best, true)?);
        let of = |safe: Open, best: Open| OpenRound { safe: safe.filter(|_| is_certain), best, kept_off: None };
        let (open, in_fluid) = (of(safe.0, best.0), of(safe.1, best.1));
        if is_certain {
            let shown = AssumedValue::band(bit.value, Role::LineWeight);
            self.assume_alike(path, "thrust on the bit over its diameter", shown, bit.origin);
            self.assume_open((path, place), "the stem", open.safe);
            if in_fluid.safe != open.safe {
                self.assume_open((path, place), "the stem in fluid", in_fluid.safe);
            }
        }
        Ok(Drilled { is_certain, bit: bit.value, open, in_fluid })
    }

    /// How the bore stands round a jacked pipe, stretch by stretch: with the least overcut that is usual and with the most,
    /// or with what the file tells. Behind a drilled pilot it may stand open; clay may close on any. None where neither.
    pub(super) fn open_round_pipe(
        &mut self,
        ground: &[(Stretch, ToRate)],
        pipe: &Pipe,
        (auger, lubricant): (Option<Auger>, Option<Lubricant>),
    ) -> Resolved<Vec<OpenRound>> {
        let by_winch = self.file.pull.as_ref().is_some_and(|pull| pull.winch.is_some() && is_dry(pull));
        if !(pipe.jacked.is_some() || by_winch) || pipe.casing.is_some() {
            return Ok(Vec::new());
        }
        let outside_diameter = pipe.outside_diameter.value;
        let row = self.handbook.hole_overcut()?.row("guided_stable")?.value;
        let most = row.high.value;
        let usual = [row.low.as_ref().map_or(most, |low| low.value), most].map(|cut| outside_diameter + 2.0 * cut);
        let bores = if pipe.bore_is_told() { [pipe.bore.value; 2] } else { usual };
        let waves = if pipe.segment.is_some() || pipe.family != Family::Steel { "waves_jointed" } else { "waves" };
        let surveyed = self.given(StemFile::withdrawn) == Some(true);
        let is_small = outside_diameter <= self.handbook.length("bore.open_most")?.value;
        let pulled = || pipe.pulled.as_ref().filter(|_| by_winch).map(|pulled| self.pulled_weight(pipe, pulled));
        let weight = pipe.jacked_weight().or_else(pulled);
        // As likely as not at the high level too: what the weight is multiplied by has its own there.
        let laden = auger.map(|auger| auger.laden(pipe.inside()).map(|laden| laden.auger + laden.spoil));
        let laden = laden.map(|laden| Band { high: laden.likely, ..laden });
        // Who does not tell how soil leaves may have no auger.
        let weigh = |weight: LineLoad, at_best: bool| match laden {
            Some(laden) if !at_best || auger.is_some_and(|auger| auger.told) => laden.map(|laden| weight + laden),
            _ => Band::same(weight),
        };
        let may_stand = ground.iter().any(|(stretch, _)| stretch.drilled(true).is_some());
        if let (Some(laden), Some(row), true) =
            (laden, self.handbook.auger()?.get("fill"), weight.is_some() && may_stand)
        {
            self.assume_band("auger and spoil in the pipe, weight", laden, Role::LineWeight, row.origin);
        }
        let watched = lubricant.filter(|_| self.file.lubricated().is_watched());
        let held = |way: &Way| {
            let water = water_unit_weight() * way.head();
            watched.map_or(Pressure::default(), |lubricant| lubricant.held(water).value)
        };
        let mut round = Vec::with_capacity(ground.len());
        for (index, ((stretch, told), in_file)) in ground.iter().zip(&self.file.ground).enumerate() {
            let place = Place { stretch: in_file, way: &stretch.way, earth: &stretch.earth, hazards: &told.hazards };
            let over = self.over(&place)?;
            // What bores rock leaves it open, with or without a pilot.
            let rock = place.classes().all(GroundClass::is_rock);
            let open = |at_best, (bore, over)| match weight {
                Some(weight) if rock || is_small && stretch.drilled(at_best).is_some() => {
                    // Clay may be fissured: round a pipe that takes days, only the file says that nothing is wrong with it.
                    let intact = at_best || in_file.hazards.is_some();
                    let lying =
                        Lying { outside_diameter, bore, weight: weigh(weight, at_best), waves, surveyed, intact };
                    self.open(&lying, &place, over)
                }
                _ => Ok(None),
            };
            let ([least, most], [worst, at_best]) = (bores, over);
            let (safe, best) = ((least, worst), (most, at_best));
            let kept_off = self.kept_off(outside_diameter, [safe, best], &place);
            let closes = kept_off.is_some_and(|needed| needed.low > held(place.way));
            let closed = if closes { Some((BoreState::Closed, self.clinging(&place)?)) } else { None };
            let one = OpenRound { safe: open(false, safe)?.or(closed), best: open(true, best)?.or(closed), kept_off };
            if rock || stretch.drilled(false).is_some() || closes {
                self.assume_open((&format!("ground[{index}]"), &place), "the pipe", one.safe);
            }
            round.push(one);
        }
        Ok(round)
    }

    /// What keeps clay from closing by half of the play on a pipe: at the best of its strength, its stiffness and the
    /// overcut, likely in the middle of them, and on the safe side of all three.
    fn kept_off(
        &self,
        outside_diameter: Length,
        bores: [(Length, Option<Clay>); 2],
        place: &Place<'_>,
    ) -> Option<Band<Pressure>> {
        let is_clay = place.classes().any(GroundClass::is_clay) && place.stretch.unit_friction.is_none();
        let [(least, worst), (most, best)] = bores;
        let shear = place.earth.shear_modulus.filter(|_| is_clay)?;
        let needed = |over: Clay, bore: Length, shear: Pressure| {
            let (play, stiffness) = ((bore - outside_diameter) / 2.0, 3.0 * shear / over.undrained_strength);
            let half = ClosingNumber { play, stiffness, radius: bore / 2.0, share: Ratio::from(3.0) };
            let half = if play > Length::default() { half.value() } else { Ratio::default() };
            (over.number(place.way, bore, Pressure::default()) - half) * over.undrained_strength
        };
        let (worst, best) = (worst?, best?);
        let middle = Clay { undrained_strength: (worst.undrained_strength + best.undrained_strength) / 2.0, ..worst };
        let sheared = Pressure::from_si((shear.low.si() * shear.high.si()).sqrt());
        let needed = Band {
            low: needed(best, most, shear.high),
            likely: needed(middle, (least + most) / 2.0, sheared),
            high: needed(worst, least, shear.low),
        };
        (needed.high > Pressure::default()).then_some(needed)
    }

    /// What clings to a pipe that clay has closed on and that stands at night: no more than the strength, less what the
    /// restart of the band makes of it.
    fn clinging(&self, place: &Place<'_>) -> Resolved<Band<Pressure>> {
        let stands = !self.file.stops.is_empty() || self.given(WorkFile::round_the_clock) != Some(true);
        let Some(strength) = place.earth.strength.filter(|_| stands) else { return Ok(Band::default()) };
        let most = self.handbook.pressure("bore.adhesion_most")?.value;
        // By the least of the factors, so that no lubricant makes more of it.
        let restart = self.handbook.restart_factor()?.cell("logged", |row| &row.high)?.value;
        Ok(Band { high: strength.ends.high.min(most) / restart, ..Band::default() })
    }

    /// Tells the state of the bore and the friction by it.
    fn assume_open(&mut self, (path, place): (&str, &Place<'_>), what: &str, open: Open) {
        if place.stands().is_none() {
            let text = open.map_or("not counted on to stand", |(state, _)| state.label());
            let word = AssumedValue::Word(text.to_owned());
            self.assume_alike(path, &format!("bore round {what}"), word, Origin::Law(&STATE));
        }
        if let Some((_, friction)) = open {
            let shown = AssumedValue::band(friction, Role::UnitFriction);
            let what = format!("unit_friction, {} in the open bore", what.trim_start_matches("the "));
            self.assume_alike(path, &what, shown, Origin::Law(&MeanOverOutside::EQUATION));
        }
    }

    /// State of the bore and the friction on what lies in it; none where the bore lies on it, or no one can say.
    fn open(&self, body: &Lying, place: &Place<'_>, over: Option<Clay>) -> Resolved<Open> {
        // The file's own friction is that of the bore as the file knows it.
        if place.stretch.unit_friction.is_some() || place.stands() == Some(false) {
            return Ok(None);
        }
        // What is not certain is as the file tells it; what is, is not mended by a word.
        let told = place.stands() == Some(true);
        let over = if told { self.over(place)?[1] } else { over };
        let body = &Lying { intact: body.intact || told, ..*body };
        let broken = [GroundHazard::Karst, GroundHazard::Swelling, GroundHazard::Sensitive, GroundHazard::Obstructions];
        let troubled = place.hazards.iter().any(|hazard| broken.contains(hazard));
        if place.classes().all(|class| class == GroundClass::HardRock) && !troubled {
            return Ok(Some((BoreState::Stands, self.resting(body, "rock_friction", None)?)));
        }
        if place.classes().all(GroundClass::is_rock) {
            // Weathered or blocky: a part of the length may come down, unless the file says that nothing is wrong with it.
            let resting = self.resting(body, "rock_friction", None)?;
            let fallen = self.handbook.pressure("bore.fallen")?.value;
            let sound = (told || place.stretch.hazards.is_some()) && !troubled;
            let state = if sound { BoreState::Stands } else { BoreState::Partly };
            return Ok(Some((state, self.with_part(resting, fallen)?)));
        }
        if place.classes().all(GroundClass::is_clay) {
            return self.in_clay(body, place, troubled, over, Pressure::default());
        }
        Ok(None)
    }

    /// What the file tells to lie on the ground, and no less than traffic where a road may be over the bore.
    fn load_on_top(&self, place: &Place<'_>) -> Resolved<Pressure> {
        let traffic = if self.driven_over().high != Traffic::None {
            self.handbook.pressure("surcharge.road")?.value
        } else {
            Pressure::default()
        };
        Ok(place.earth.heavy.surcharge.max(traffic))
    }

    /// The clay of the stretch on the safe side of what is not told of it, and at its best.
    fn over(&self, place: &Place<'_>) -> Resolved<[Option<Clay>; 2]> {
        let earth = place.earth;
        let Some(strength) = earth.strength.map(|strength| strength.ends) else { return Ok([None; 2]) };
        let over = |soil: &Soil, end: fn(UnitWeight, UnitWeight) -> UnitWeight, surcharge, undrained_strength| {
            let weights = soil.layers.iter().map(|layer| end(layer.moist, layer.saturated));
            weights.reduce(end).map(|unit_weight| Clay { unit_weight, surcharge, undrained_strength })
        };
        Ok([
            over(&earth.heavy, UnitWeight::max, self.load_on_top(place)?, strength.low),
            over(&earth.light, UnitWeight::min, earth.light.surcharge, strength.high),
        ])
    }

    /// Clay by its stability number against those at which it closes half of the play.
    fn in_clay(
        &self,
        body: &Lying,
        place: &Place<'_>,
        troubled: bool,
        over: Option<Clay>,
        support: Pressure,
    ) -> Resolved<Open> {
        let (Some(over), Some(Strength { ends: strength, .. })) = (over, place.earth.strength) else { return Ok(None) };
        let number = over.number(place.way, body.bore, support);
        let soft = place.stretch.class.value == GroundClass::SoftClay;
        let stiffness = self.handbook.ratio(if soft { "bore.stiffness_soft" } else { "bore.stiffness" })?.value;
        let closing = |share| {
            ClosingNumber { play: body.play(), stiffness, radius: body.bore / 2.0, share: Ratio::from(share) }.value()
        };
        let week = closing(6.0).min(self.handbook.ratio("bore.week_most")?.value);
        let days = closing(3.0).min(self.handbook.ratio("bore.days_most")?.value);
        let least = self.handbook.pressure("bore.least_strength")?.value;
        let resting = || self.resting(body, "clay_friction", Some((strength, stiffness)));
        Ok(if number <= week && over.undrained_strength >= least && !troubled && body.intact {
            Some((BoreState::Stands, resting()?))
        } else if number <= days {
            // Where it has closed, half of the strength clings all round.
            let most = self.handbook.pressure("bore.adhesion_most")?.value;
            Some((BoreState::Partly, self.with_part(resting()?, (strength.high / 2.0).min(most))?))
        } else {
            None
        })
    }

    /// At the high level a part of the length in a worse state.
    fn with_part(&self, open: Band<Pressure>, worse: Pressure) -> Resolved<Band<Pressure>> {
        let share = self.handbook.open_bore()?.levels("part_closed")?.value.high;
        let high = open.high * (1.0 - share.si()) + worse * share;
        Ok(Band { high: high.max(open.high), ..open })
    }

    /// Friction of a body that rests on the bottom: its weight, or the clay that clings to it, whichever is more, and the
    /// spoil left round it.
    fn resting(&self, body: &Lying, friction: &str, clay: Option<(Ends<Pressure>, Ratio)>) -> Resolved<Band<Pressure>> {
        let table = self.handbook.open_bore()?;
        let Lying { outside_diameter, bore, weight, waves, surveyed, .. } = *body;
        let friction = table.levels(friction)?.value;
        let waves = table.levels(waves)?.value;
        let spoil = table.levels(if surveyed { "spoil_left_surveyed" } else { "spoil_left" })?.value;
        let adhesion = table.levels("adhesion")?.value;
        let most = self.handbook.pressure("bore.adhesion_most")?.value;
        let sliding = friction.zip(waves);
        let sliding = sliding
            .with(weight, |(friction, multiplier), weight| SlidingOnBottom { friction, multiplier, weight }.value());
        let unit_weight = self.handbook.ratio("bore.spoil_density")?.value * water_unit_weight();
        let left = friction
            .with(spoil, |friction, height| SpoilLeft { friction, height, unit_weight, outside_diameter }.value());
        let clings =
            |contact_force: LineLoad, undrained_strength: Pressure, ground_modulus: Pressure, adhesion: Ratio| {
                let width = ContactWidth { contact_force, bore, outside_diameter, ground_modulus }.value();
                ContactAdhesion { adhesion, undrained_strength, most, width }.value()
            };
        let contact = waves.with(weight, |waves, weight| weight * waves);
        let clinging = clay.map_or(Band::default(), |(strength, stiffness)| Band {
            low: LineLoad::default(),
            likely: {
                let middle = (strength.low + strength.high) / 2.0;
                // Likely twice as stiff as at its softest.
                clings(contact.likely, middle, middle * stiffness * 2.0, adhesion.likely)
            },
            high: clings(contact.high, strength.high, strength.low * stiffness, adhesion.high),
        });
        let sum = sliding.with(left, |sliding, left| sliding + left);
        let all = sum.with(clinging, LineLoad::max);
        let highest = if surveyed { "bore.floor_surveyed" } else { "bore.floor_high" };
        let floor = self.handbook.pressures(["bore.floor_low", "bore.floor_likely", highest])?.value;
        let mean = all.map(|friction| MeanOverOutside { friction, outside_diameter }.value());
        Ok(mean.with(floor, Pressure::max))
    }

    /// Friction of a stem in fluid: the drag of the fluid, its weight on the bottom, and a part of the length on which
    /// the ground has fallen in.
    fn rubs_in_fluid(&self, body: &Lying) -> Resolved<Band<Pressure>> {
        let table = self.handbook.open_bore()?;
        let outside_diameter = body.outside_diameter;
        let friction = table.levels("fluid_friction")?.value;
        let drag = self.handbook.pressures(["bore.drag_low", "bore.drag_likely", "bore.drag_high"])?.value;
        let fallen = table.levels("part_fallen")?.value;
        let ravelled = self.handbook.pressure("bore.fallen")?.value;
        // The weight in air: fluid takes off some of it.
        let rests = friction.with(body.weight, |friction, weight| {
            let sliding = SlidingOnBottom { friction, multiplier: Ratio::from(1.0), weight };
            MeanOverOutside { friction: sliding.value(), outside_diameter }.value()
        });
        let sum = rests.with(drag, |rests, drag| rests + drag);
        Ok(sum.with(fallen, |sum, share| sum + ravelled * share))
    }

    /// Weight of a pulled pipe per length in air with what fills it: of metal water, where nothing is told.
    fn pulled_weight(&self, pipe: &Pipe, pulled: &PulledPipe) -> LineLoad {
        let (outside_diameter, wall) = (pipe.outside_diameter.value, pulled.wall());
        let average_wall = Ratio::from_si(1.0);
        let pipe_weight = PipeWeight { outside_diameter, wall, density: pulled.density(), average_wall }.value();
        let contents = self.file.pull.as_ref().and_then(|pull| pull.contents.given());
        let is_full = contents == Some(Contents::Water) || contents.is_none() && !pulled.is_plastic();
        let contents_density = if is_full { water_density() } else { MassDensity::default() };
        let fluid_density = MassDensity::default();
        NetWeightInFluid { pipe_weight, outside_diameter, wall, fluid_density, contents_density }.value()
    }

    /// Weight of the stem per length: by its wall, else by habit.
    fn stem_weight(&self, stem: &Stem) -> Resolved<Band<LineLoad>> {
        if let Some(weight) = stem.weight {
            return Ok(Band::same(weight));
        }
        let diameter = stem.outside_diameter.value;
        let gross = diameter * diameter * FRAC_PI_4;
        let density = self.handbook.open_bore()?.levels("stem_density")?.value;
        Ok(density.map(|density| gross * water_unit_weight() * density))
    }

    /// Whether fluid that stands as high as the file tells, else up to the ground, holds silt or sand open, or clay that would
    /// close without its support. At best it is as heavy as mud of a clean bore, and holds fill in which nothing obstructs.
    fn is_held(&self, body: &Lying, place: &Place<'_>, (over, at_best): (Option<Clay>, bool)) -> Resolved<bool> {
        let clear = at_best && place.stretch.hazards.is_some() && place.hazards.is_empty();
        let fine = |class: GroundClass| class.is_fine() || clear && class == GroundClass::Fill;
        if !self.is_pulled_through_fluid() || !place.classes().all(fine) {
            return Ok(false);
        }
        let water = water_unit_weight();
        let light = match self.given(PullFile::fluid_density) {
            Some(told) => told / water_density(),
            None => self.handbook.ratio(if at_best { "pull.fluid_clean" } else { "pull.fluid_light" })?.value,
        };
        let rule = FluidRule::read(self.handbook)?;
        // Told from the ground at the higher pit: no higher over any other place.
        let level = self.given(PullFile::fluid_level).unwrap_or_default();
        let depth = |invert: Length| (invert - body.bore).max(Length::default());
        if place.classes().all(GroundClass::is_clay) {
            let support = water * light * (depth(place.way.deepest) - level).max(Length::default());
            return Ok(self.in_clay(body, place, true, over, support)?.is_some());
        }
        let stands = |invert: Length| {
            let crown = depth(invert);
            let wet = place.way.table.map_or(Length::default(), |table| (crown - table).max(Length::default()));
            let fluid = (crown - level).max(Length::default());
            rule.holds((fluid, wet), (water * light * fluid, water * wet)) != Held::Not
        };
        Ok(stands(place.way.shallowest) && stands(place.way.deepest))
    }
}
