//! How the bore of a drilled pilot stands round the stem in it, stretch by stretch, and the friction on the stem by it.

use super::Resolver;
use crate::drive::{AssumedValue, BoreState, Drilled, Earth, Ends, Stem, Way};
use crate::drive_file::{DriveFile, Hole, Over, StretchFile};
use crate::handbook::{GroundClass, GroundHazard, HandbookError};
use crate::law::Law;
use crate::laws::face::StabilityNumber;
use crate::laws::open_bore::{
    ClosingNumber, ContactAdhesion, ContactWidth, MeanOverOutside, SlidingOnBottom, SpoilLeft,
};
use crate::laws::soil::WATER_UNIT_WEIGHT;
use crate::quantity::{Band, Length, LineLoad, Measure, Pressure, Ratio, Role, Shown, UnitWeight};
use crate::source::{Equation, Origin};
use core::f64::consts::FRAC_PI_4;

/// Said of the state of the bore where the ground tells it.
const STATE: Equation = Equation::judged(
    "state of the bore",
    "by class, strength, depth, water and play: rock stands; clay stands below the number at which it closes half of the play in a week, and in part to that of two days; ground under fluid is held where the fluid stands ten kPa over the water at the crown",
    "bore round the stem of a drilled pilot",
    "intact clay and sound rock, which a log must tell",
);

/// What is known of the place.
pub(super) struct Place<'a> {
    pub(super) stretch: &'a StretchFile,
    pub(super) way: &'a Way,
    pub(super) earth: &'a Earth,
    pub(super) hazards: &'a [GroundHazard],
}

/// The bore round the stem.
#[derive(Clone, Copy)]
struct Bore {
    diameter: Length,
    /// Between stem and bore, on the radius.
    play: Length,
}

impl Resolver<'_> {
    /// What a drilled pilot meets in a stretch.
    pub(super) fn drilled(
        &mut self,
        file: &DriveFile,
        stem: &Stem,
        path: &str,
        place: &Place<'_>,
    ) -> Result<Drilled, HandbookError> {
        let rock = place.stretch.class.value.is_rock();
        let bit = self.handbook.bit_thrust()?.levels(if rock { "rock" } else { "soil" })?;
        let shown = AssumedValue::Band(bit.value.map(|load| Shown::of(load, Role::LineWeight)));
        self.assume_alike(path, "thrust on the bit over its diameter", shown, bit.origin);
        // The file's own friction is that of the bore as the file knows it.
        let open = match place.stretch.unit_friction {
            Some(_) => None,
            None => self.open(file, stem, place)?,
        };
        let text = open.map_or("closed on the stem", |(state, _)| state.label());
        self.assume_alike(path, "bore round the stem", AssumedValue::Word(text.to_owned()), Origin::Law(&STATE));
        if let Some((_, friction)) = open {
            let shown = AssumedValue::Band(friction.map(|friction| Shown::of(friction, Role::UnitFriction)));
            self.assume_alike(
                path,
                "unit_friction, stem in the open bore",
                shown,
                Origin::Law(&MeanOverOutside::EQUATION),
            );
        }
        Ok(Drilled { bit: bit.value, open })
    }

    /// State of the bore and the friction on the stem; none where it lies on the stem, or no one can say.
    fn open(
        &mut self,
        file: &DriveFile,
        stem: &Stem,
        place: &Place<'_>,
    ) -> Result<Option<(BoreState, Band<Pressure>)>, HandbookError> {
        let classes =
            || core::iter::once(&place.stretch.class).chain(&place.stretch.mixed_with).map(|field| field.value);
        let least_play = self.handbook.length("bore.play")?;
        let outside = stem.outside_diameter.value;
        let diameter = stem.head.max(outside + 2.0 * least_play.value);
        let bore = Bore { diameter, play: (diameter - outside) / 2.0 };
        let broken = [GroundHazard::Karst, GroundHazard::Swelling, GroundHazard::Sensitive, GroundHazard::Obstructions];
        let troubled = place.hazards.iter().any(|hazard| broken.contains(hazard));
        if classes().all(|class| class == GroundClass::HardRock) && !troubled {
            return Ok(Some((BoreState::Stands, self.resting(stem, bore, "rock_friction", None)?)));
        }
        if classes().all(GroundClass::is_rock) {
            // Weathered or blocky: a part of the length may come down.
            let resting = self.resting(stem, bore, "rock_friction", None)?;
            let fallen = self.handbook.pressure("bore.fallen")?.value;
            return Ok(Some((BoreState::Partly, self.with_part(resting, fallen)?)));
        }
        if classes().all(GroundClass::is_clay) {
            let over = file.surface.as_ref().and_then(|surface| surface.over.as_ref());
            let road = over.is_none_or(|over| over.value != Over::Open);
            return self.in_clay(stem, bore, place, (troubled, road));
        }
        let granular =
            |class| matches!(class, GroundClass::Silt | GroundClass::LooseSand | GroundClass::MediumToDenseSand);
        let fluid =
            file.pull.as_ref().is_some_and(|pull| pull.hole.as_ref().is_none_or(|hole| hole.value == Hole::Fluid));
        if classes().all(|class| granular(class) || class.is_clay()) && fluid && self.is_held(bore, place)? {
            return Ok(Some((BoreState::Held, self.in_fluid(stem)?)));
        }
        Ok(None)
    }

    /// Clay by its stability number against those at which it closes half of the play.
    fn in_clay(
        &self,
        stem: &Stem,
        bore: Bore,
        place: &Place<'_>,
        (troubled, road): (bool, bool),
    ) -> Result<Option<(BoreState, Band<Pressure>)>, HandbookError> {
        let Some(strength) = place.earth.strength.map(|strength| strength.ends) else { return Ok(None) };
        let layers = &place.earth.heavy.layers;
        let Some(heaviest) = layers.iter().map(|layer| layer.moist.max(layer.saturated)).reduce(UnitWeight::max) else {
            return Ok(None);
        };
        let traffic = if road { self.handbook.pressure("surcharge.road")?.value } else { Pressure::default() };
        let number = StabilityNumber {
            surcharge: place.earth.heavy.surcharge.max(traffic),
            unit_weight: heaviest,
            cover: (place.way.deepest - bore.diameter).max(Length::default()),
            bore: bore.diameter,
            support: Pressure::default(),
            undrained_strength: strength.low,
        };
        let number = number.value();
        let soft = place.stretch.class.value == GroundClass::SoftClay;
        let stiffness = self.handbook.ratio(if soft { "bore.stiffness_soft" } else { "bore.stiffness" })?.value;
        let closing = |share| {
            ClosingNumber { play: bore.play, stiffness, radius: bore.diameter / 2.0, share: Ratio::from(share) }.value()
        };
        let week = closing(6.0).min(self.handbook.ratio("bore.week_most")?.value);
        let days = closing(3.0).min(self.handbook.ratio("bore.days_most")?.value);
        let least = self.handbook.pressure("bore.least_strength")?.value;
        let resting = || self.resting(stem, bore, "clay_friction", Some((strength, stiffness)));
        Ok(if number <= week && strength.low >= least && !troubled {
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
    fn with_part(&self, open: Band<Pressure>, worse: Pressure) -> Result<Band<Pressure>, HandbookError> {
        let share = self.handbook.open_bore()?.levels("part_closed")?.value.high;
        let high = open.high * (1.0 - share.si()) + worse * share;
        Ok(Band { high: high.max(open.high), ..open })
    }

    /// Friction of a stem that rests on the bottom: its weight, or the clay that clings to it, whichever is more, and the
    /// spoil left round it.
    fn resting(
        &self,
        stem: &Stem,
        bore: Bore,
        friction: &str,
        clay: Option<(Ends<Pressure>, Ratio)>,
    ) -> Result<Band<Pressure>, HandbookError> {
        let table = self.handbook.open_bore()?;
        let outside_diameter = stem.outside_diameter.value;
        let friction = table.levels(friction)?.value;
        let waves = table.levels("waves")?.value;
        let spoil = table.levels("spoil_left")?.value;
        let adhesion = table.levels("adhesion")?.value;
        let most = self.handbook.pressure("bore.adhesion_most")?.value;
        let weight = self.stem_weight(stem)?;
        let sliding = friction.with(waves, |friction, multiplier| (friction, multiplier));
        let sliding = sliding
            .with(weight, |(friction, multiplier), weight| SlidingOnBottom { friction, multiplier, weight }.value());
        let unit_weight = self.handbook.ratio("bore.spoil_density")?.value * UnitWeight::from_si(WATER_UNIT_WEIGHT);
        let left = friction
            .with(spoil, |friction, height| SpoilLeft { friction, height, unit_weight, outside_diameter }.value());
        let clings = |contact: LineLoad, undrained_strength: Pressure, modulus: Pressure, adhesion: Ratio| {
            let width = ContactWidth { contact, bore: bore.diameter, outside_diameter, modulus }.value();
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
        let floor = self.handbook.pressures(["bore.floor_low", "bore.floor_likely", "bore.floor_high"])?.value;
        let mean = all.map(|friction| MeanOverOutside { friction, outside_diameter }.value());
        Ok(mean.with(floor, Pressure::max))
    }

    /// Friction of a stem in fluid: the drag of the fluid, its weight on the bottom, and a part of the length on which
    /// the ground has fallen in.
    fn in_fluid(&self, stem: &Stem) -> Result<Band<Pressure>, HandbookError> {
        let table = self.handbook.open_bore()?;
        let outside_diameter = stem.outside_diameter.value;
        let friction = table.levels("fluid_friction")?.value;
        let drag = self.handbook.pressures(["bore.drag_low", "bore.drag_likely", "bore.drag_high"])?.value;
        let fallen = table.levels("part_fallen")?.value;
        let ravelled = self.handbook.pressure("bore.fallen")?.value;
        // The weight in air: fluid takes off some of it.
        let rests = friction.with(self.stem_weight(stem)?, |friction, weight| {
            let sliding = SlidingOnBottom { friction, multiplier: Ratio::from(1.0), weight };
            MeanOverOutside { friction: sliding.value(), outside_diameter }.value()
        });
        let sum = rests.with(drag, |rests, drag| rests + drag);
        Ok(sum.with(fallen, |sum, share| sum + ravelled * share))
    }

    /// Weight of the stem per length: by its wall, else by habit.
    fn stem_weight(&self, stem: &Stem) -> Result<Band<LineLoad>, HandbookError> {
        if let Some(weight) = stem.weight {
            return Ok(Band::same(weight));
        }
        let diameter = stem.outside_diameter.value;
        let gross = diameter * diameter * FRAC_PI_4;
        let density = self.handbook.open_bore()?.levels("stem_density")?.value;
        Ok(density.map(|density| gross * UnitWeight::from_si(WATER_UNIT_WEIGHT) * density))
    }

    /// Whether fluid that stands up to the ground holds the crown: ten kPa more than the water.
    fn is_held(&self, bore: Bore, place: &Place<'_>) -> Result<bool, HandbookError> {
        let water = UnitWeight::from_si(WATER_UNIT_WEIGHT);
        let light = self.handbook.ratio("pull.fluid_light")?.value;
        let over = self.handbook.pressure("bore.fluid_over_water")?.value;
        let depth = |invert: Length| (invert - bore.diameter).max(Length::default());
        let stands = |invert: Length| {
            let crown = depth(invert);
            let wet = place.way.table.map_or(Length::default(), |table| (crown - table).max(Length::default()));
            water * light * crown >= water * wet + over
        };
        Ok(stands(place.way.shallowest) && stands(place.way.deepest))
    }
}
