//! What the checks of every pulled pipe share: the wall that scoring leaves, the bend of the ramp, what it all leaves.

use super::force::OnPipe;
use crate::check::{Absent, Care, Draft, Outcome, Rule, Verdict, Ways, at_least};
use crate::drive::Pull;
use crate::law::{Calc, Doubted};
use crate::laws::deflection::ScoredWall;
use crate::laws::pe::{AllowableTension, AxialStress, BendRadiusForShare, BendingStress};
use crate::laws::pull_limits::TensionBesideBend;
use crate::quantity::{Band, Force, Length, Pressure, Ratio, Role};
use crate::source::{Cited, Origin};

pub(super) const RADIUS_TAKEN: &str = "not given: the ramp is assumed this wide; build it no tighter";
/// Why none bends.
pub(super) const NO_RAMP: &str = "the string comes down no ramp";
const LIGHT: &str = "it bears the lighter fluid but not the heavier: measure the density of the fluid in the bore \
    (fluid_density), and thin it, until it is grouted or drained";

/// Diameter and the wall that counts for strength.
#[derive(Clone, Copy)]
pub(super) struct Section {
    pub(super) outside_diameter: Length,
    pub(super) wall: Length,
}

impl Section {
    /// Less what the bore may scratch away.
    pub(super) fn scored(calc: &mut Calc, outside_diameter: Length, wall: Length, pull: &Pull) -> Self {
        calc.part("wall after scoring");
        Self { outside_diameter, wall: calc.law(ScoredWall { wall, depth_share: pull.works.score.value }) }
    }

    pub(super) fn axial(self, calc: &mut Calc, tension: Force) -> Pressure {
        calc.law(AxialStress { tension, outside_diameter: self.outside_diameter, wall: self.wall })
    }
}

/// The string on the ramp.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bend {
    pub(super) radius: Length,
    pub(super) smallest: Length,
    pub(super) stress: Pressure,
}

impl Bend {
    /// With the given radius, or one that leaves enough stress to the pull.
    pub(super) fn of(
        calc: &mut Calc,
        section: Section,
        smallest: Length,
        modulus: Doubted<Pressure>,
        pull: &Pull,
        allowable: Doubted<Cited<Pressure>>,
    ) -> Self {
        let outside_diameter = section.outside_diameter;
        let modulus = calc.take(modulus);
        let radius = match pull.bend_radius {
            Some(given) => given.value,
            None => {
                let (allowable, share) = (calc.take(allowable).value, pull.bend_share);
                smallest.max(calc.law(BendRadiusForShare { modulus, outside_diameter, allowable, share }))
            }
        };
        let stress = calc.law(BendingStress { modulus, outside_diameter, radius });
        Self { radius, smallest, stress }
    }

    /// The radius against the smallest.
    pub(super) fn check(bend: Doubted<Self>, pull: &Pull, origin: Origin) -> Draft {
        let radius = bend.map(|bend| Band::same(bend.radius));
        let smallest = bend.map(|bend| Cited::new(bend.smallest, origin));
        let check = at_least(Role::Distance, radius, smallest);
        if pull.bend_radius.is_none() { check.with_note(RADIUS_TAKEN) } else { check }
    }
}

/// Whether the string comes down a ramp.
pub(super) fn has_ramp(pull: &Pull) -> bool {
    !pull.works.laydown.is_some_and(|laydown| laydown.in_pit)
}

/// Stress of pull and bend where the string leaves the ramp; none without one.
pub(super) fn on_ramp(
    calc: &mut Calc,
    section: Section,
    on_pipe: &OnPipe,
    bend: Option<Doubted<Bend>>,
) -> Doubted<Band<Pressure>> {
    let Some(bend) = bend else { return Doubted::sure(Band::default()) };
    calc.doubted(|calc| {
        let (at_ramp, bent) = (calc.take(*on_pipe).in_wall_at_ramp(), calc.take(bend).stress);
        at_ramp.map(|tension| section.axial(calc, tension) + bent)
    })
}

/// Pull that a straight string is allowed at a stress.
pub(super) fn tension(
    calc: &mut Calc,
    section: Section,
    stress: Doubted<Cited<Pressure>>,
    weld_factor: Ratio,
) -> Doubted<Cited<Force>> {
    let Section { outside_diameter, wall } = section;
    calc.doubted(|calc| {
        let stress = calc.take(stress);
        stress.map(|stress| calc.law(AllowableTension { stress, outside_diameter, wall, weld_factor }))
    })
}

/// Whether a high demand is past its limit.
fn past(check: &Draft) -> bool {
    check.utilisation().is_none_or(|used| used > 1.0)
}

/// What of a pull is taken at its best.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Spared {
    /// Pumped from the pits.
    pub(super) level: bool,
    /// Full of water.
    pub(super) contents: bool,
    /// Round the pipe no longer than the pull.
    pub(super) time: bool,
    /// No more pressure in the annulus than it has to be.
    pub(super) annulus: bool,
    /// Scored and welded no worse than it may be.
    pub(super) wall: bool,
}

const fn spared(level: bool, contents: bool, time: bool, annulus: bool) -> Spared {
    Spared { level, contents, time, annulus, wall: false }
}

/// What may spare a string that collapses, the fewest lines first.
const WAYS: [(Spared, Ways); 13] = {
    const LEVEL: &str = "pull.fluid_level";
    const CONTENTS: &str = "pull.contents";
    const TIME: &str = "pull.fluid_stands_for";
    const RETURNS: &str = "pull.returns";
    [
        (spared(true, false, false, false), &[&[LEVEL]]),
        (spared(false, true, false, false), &[&[CONTENTS]]),
        (spared(false, false, true, false), &[&[TIME]]),
        (spared(false, false, false, true), &[&[RETURNS]]),
        (spared(true, true, false, false), &[&[LEVEL, CONTENTS]]),
        (spared(true, false, true, false), &[&[LEVEL, TIME]]),
        (spared(false, true, true, false), &[&[CONTENTS, TIME]]),
        (spared(true, false, false, true), &[&[LEVEL, RETURNS]]),
        (spared(false, false, true, true), &[&[TIME, RETURNS]]),
        (spared(true, true, true, false), &[&[LEVEL, CONTENTS, TIME]]),
        (spared(true, false, true, true), &[&[LEVEL, TIME, RETURNS]]),
        (spared(true, true, true, true), &[&[LEVEL, CONTENTS, TIME, RETURNS]]),
        (
            Spared { level: true, contents: true, time: true, annulus: true, wall: true },
            &[&[LEVEL, CONTENTS, TIME, RETURNS, "pull.score"]],
        ),
    ]
};

/// What a pulled pipe bears of the pull, and the checks of it.
pub(in crate::method) struct Strength {
    pub(super) borne: Borne,
    pub(in crate::method) tension: Draft,
    pub(in crate::method) with_bending: Outcome,
    pub(in crate::method) radius: Outcome,
    pub(in crate::method) collapse: Outcome,
    pub(in crate::method) together: Outcome,
    pub(in crate::method) together_normal: Outcome,
    pub(in crate::method) strain: Outcome,
    pub(in crate::method) strain_with_bend: Outcome,
    pub(in crate::method) inside: Outcome,
}

impl Strength {
    /// Whether every check of it passes plainly.
    pub(super) fn passes(&self) -> bool {
        let others = [
            &self.with_bending,
            &self.collapse,
            &self.together,
            &self.together_normal,
            &self.strain,
            &self.strain_with_bend,
            &self.inside,
        ];
        let plain = |check: &Draft| check.verdict() == Verdict::Within;
        plain(&self.tension) && others.into_iter().all(|other| other.as_ref().map_or(true, plain))
    }

    /// Where it does not collapse in a light fluid, and does in a heavy one, that the fluid is light is a condition.
    pub(super) fn held_by(self, light: impl FnOnce() -> Self) -> Self {
        if !self.collapse.as_ref().is_ok_and(past) {
            return self;
        }
        match light().collapse {
            Ok(light) if !past(&light) => Self { collapse: Ok(light.with_care(Care::Condition, LIGHT)), ..self },
            _ => self,
        }
    }

    /// Held against the same with what the file does not tell at its best.
    pub(super) fn at_best(self, best: &Self) -> Self {
        let both = |check: Outcome, best: Outcome| match (check, best) {
            (Ok(check), Ok(best)) => Ok(check.at_best(best)),
            (check, _) => check,
        };
        Self {
            tension: self.tension.at_best(best.tension),
            with_bending: both(self.with_bending, best.with_bending),
            collapse: both(self.collapse, best.collapse),
            together: both(self.together, best.together),
            together_normal: both(self.together_normal, best.together_normal),
            strain: both(self.strain, best.strain),
            strain_with_bend: both(self.strain_with_bend, best.strain_with_bend),
            inside: both(self.inside, best.inside),
            ..self
        }
    }

    /// What collapses and would not with less that is not told, and a light fluid: held against all of that at its best, it waits
    /// for the fewest lines that spare it, those that an engineer knows first.
    pub(super) fn spared_by(self, rule: Rule, collapse: impl Fn(Spared) -> Outcome) -> Self {
        let Ok(check) = self.collapse else { return self };
        let stands = |check: Draft| check.by(rule).verdict() <= Verdict::WithCare;
        if stands(check) {
            return self;
        }
        let most = WAYS.last().map_or(Spared::default(), |(spared, _)| *spared);
        let held = collapse(most).map_or(check, |best| check.at_best(best));
        let way = WAYS.iter().find(|(spared, _)| collapse(*spared).is_ok_and(stands));
        Self { collapse: Ok(way.map_or(check, |(_, ways)| held.settled_by(ways))), ..self }
    }

    /// Of a pipe of which no more is checked.
    pub(super) const fn of(borne: Borne, tension: Draft) -> Self {
        const OTHER: Outcome = Err(Absent::NotApplicable("no check of this material"));
        Self {
            borne,
            tension,
            with_bending: OTHER,
            radius: OTHER,
            collapse: OTHER,
            together: OTHER,
            together_normal: OTHER,
            strain: OTHER,
            strain_with_bend: OTHER,
            inside: OTHER,
        }
    }
}

/// What a check says of the bend, where the string bends on a ramp.
pub(super) fn bent(bend: Option<Doubted<Bend>>, check: impl FnOnce(Doubted<Bend>) -> Draft) -> Outcome {
    bend.map(check).ok_or(Absent::NotApplicable(NO_RAMP))
}

/// What a pulled pipe may bear at its head, for what is set by it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Borne {
    /// Allowed pull of the pipe, in the straight bore.
    pub(super) straight: Doubted<Cited<Force>>,
    /// What the bend of the ramp leaves of it.
    pub(super) beside_bend: Doubted<Force>,
    /// Radius of the ramp.
    pub(super) radius: Option<Doubted<Length>>,
}

impl Borne {
    /// What a thrust on the ends leaves of it to the pull.
    pub(super) fn beside(self, thrust: Force) -> Self {
        let left = |force: Force| (force - thrust).max(Force::default());
        let straight = self.straight.map(|straight| straight.map(left));
        Self { straight, beside_bend: self.beside_bend.map(left), ..self }
    }

    /// By the allowed pull of the straight string, and the bend of the ramp that takes its share of the stress.
    pub(super) fn of(
        calc: &mut Calc,
        section: Section,
        pull: &Pull,
        straight: Doubted<Cited<Force>>,
        (allowable, modulus): (Doubted<Cited<Pressure>>, Doubted<Pressure>),
        bend: Option<Doubted<Bend>>,
    ) -> Self {
        let Section { outside_diameter, wall } = section;
        let beside_bend = match bend {
            Some(bend) => calc.doubted(|calc| {
                let (allowable, modulus) = (calc.take(allowable).value, calc.take(modulus));
                let radius = calc.take(bend).radius;
                calc.law(TensionBesideBend { allowable, modulus, outside_diameter, wall, radius })
            }),
            None => straight.map(|straight| straight.value),
        };
        Self { straight, beside_bend, radius: ramp_radius(pull, bend) }
    }
}

/// Radius of the ramp: one that the file gives is in no doubt.
pub(super) fn ramp_radius(pull: &Pull, bend: Option<Doubted<Bend>>) -> Option<Doubted<Length>> {
    bend.map(|bend| match pull.bend_radius {
        Some(given) => Doubted::sure(given.value),
        None => bend.map(|bend| bend.radius),
    })
}
