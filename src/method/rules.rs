//! Rules that the checks of pushed bodies share: a force that is watched, and what the contractor is asked for.

use super::either::Forces;
use crate::check::{Care, Draft, NOTHING, Rule, Subject, Verdict, Ways, at_most, required};
use crate::drive::{Drive, Pipe, StrengthBy, Stretch};
use crate::handbook::{GroundClass, Method};
use crate::law::Doubted;
use crate::quantity::{Band, Force, Measure, Ratio, Role};
use crate::source::Cited;

const STALLS: &str = "at the high force the drive stalls, and no pit can be dug to it: say how it is freed (`if_stalled`); set the \
    jacks to the limit";
const STALLS_NEAR: &str = "the likely force leaves little below the limit, and at the high one the drive stalls: say how it is freed \
    (`if_stalled`); set the jacks to the limit";
const SET: &str = "set the jacks to no more than the limit; if the drive stalls it is freed as the file says";
const FREED: &str = "the jacks are held to the limit; if the drive stalls it is freed as the file says";
const PLAN: &str = "set the jacks to no more than the limit, and plan how a drive that stalls is freed: a second \
    lubrication, a rescue pit where one can be dug";
const STRONGER: &str = "the high force is more than the rig gives: plan how a drive that stalls is freed, or have stronger jacks at \
    hand where pipe and wall bear them";
const PULL_STRONGER: &str = "the high pull is more than the rig gives: plan a pit over the string for a pull that stalls, or have a stronger \
    rig at hand where the string bears it";
const WINCH_STALLS: &str = "at the high pull the winch stalls: say how the string is freed (`if_stalled`)";
const WINCH_FREED: &str =
    "the winch stops at its rating; if the pull stalls a pit is dug over the string, as the file says";
const WINCH_STRONGER: &str = "the high pull is more than the winch gives: plan a pit over the string for a pull that stalls, or have a \
    stronger winch at hand where the string bears it";
/// Of a rig that is yet to be chosen.
pub(super) const CHOOSE: &str =
    "no rig is chosen: it must be rated for this much; compared with the most that is usual";
/// The limit over the likely force from which how a stalled drive is freed may be left to the contractor where no pit can be
/// dug, of what is pushed and of what is pulled: our judgement.
const SPARE_OF_PUSH: f64 = 1.4;
const SPARE_OF_PULL: f64 = 2.0;
/// The same where a pit can be dug, or a stronger rig is to be had: a likely force nearer to its limit is a toss of a coin.
const SPARE_OVER_A_PIT: f64 = 1.2;
/// Deepest rescue pit in m that may be left to the contractor: our judgement.
const DEEPEST_RESCUE: f64 = 8.0;
const BEYOND: &str = "at the high force the drive stalls too far short of its end to be held and freed: shorten \
    it, lubricate better, work without night stops, or use stronger pipe or plant";
const PULL_STALLS: &str = "at the high pull the string stalls: say how it is freed (`if_stalled`)";
const PULL_FREED: &str = "the rig stops at its rating; if the pull stalls a pit is dug over it, as the file says";

/// The greatest force of the jacks while the pipe goes in: what they are held to, else their rating.
fn held_thrust(drive: &Drive) -> Force {
    let rated = drive.rig.thrust.value;
    drive.rig.held_to.map_or(rated, |held| held.value.min(rated))
}

/// What is pushed with no more than so much.
fn no_more(thrust: Forces, most: Force) -> Forces {
    thrust.map(|thrust| thrust.map(|thrust| thrust.map(|force| force.min(most))))
}

/// What stem and casing are pushed with: no more than the jacks give.
pub(super) fn by_jacks(drive: &Drive, thrust: Forces) -> Forces {
    no_more(thrust, drive.rig.thrust.value)
}

/// What the pipe is pushed with: no more than the jacks are held to.
pub(super) fn by_held_jacks(drive: &Drive, thrust: Forces) -> Forces {
    no_more(thrust, held_thrust(drive))
}

/// Ways to settle a force; where there is none and nobody tells the pilot, one that is drilled, which leaves a bore that
/// stands. One that is pushed, as is taken, would settle nothing.
pub(super) fn or_drilled(drive: &Drive, ways: Ways) -> Ways {
    if !settles_nothing(ways) {
        ways
    } else if drive.hangs_on_pilot() {
        &[&["pilot"]]
    } else if hangs_on_fluid(drive) {
        FLUID
    } else if drive.stretches.iter().any(|stretch| stretch.stem_may_lie_open(Method::PipeJacking)) {
        STANDS
    } else {
        ways
    }
}

/// Ways to settle whether clay or weathered rock stands round what lies in the bore.
const STANDS: Ways = &[&["ground[].soil.undrained_strength", "ground[].hazards"]];

/// Whether the bore of the stem stands only where the fluid is heavy enough, which nobody tells.
fn hangs_on_fluid(drive: &Drive) -> bool {
    drive
        .stretches
        .iter()
        .any(|stretch| stretch.stem_may_lie_open(Method::Pullback) && !stretch.has(GroundClass::is_clay))
}

/// Whether no way is named.
pub(super) fn settles_nothing(ways: Ways) -> bool {
    ways.iter().all(|way| way.is_empty())
}

/// What gives way at the high force, with the most that it may bear.
#[derive(Clone, Copy)]
pub(super) enum Gives {
    /// The rig stops.
    Rig,
    /// What goes into the ground.
    Body(Force),
    /// What stands in the launch pit, and is made stronger there.
    InPit(Force),
}

/// Up to a share of the limit at the high level; beyond it not decided until the file says how a drive that stalls there is
/// freed. Jacks of which it tells no more are set to what may be borne; those that it holds to more do not spare the pipe.
pub(super) fn watched((drive, pipe): (&Drive, &Pipe), check: Draft, share: Ratio, gives: Gives) -> Draft {
    let most = match gives {
        Gives::Rig => None,
        Gives::Body(most) | Gives::InPit(most) => Some(most),
    };
    let in_pit = matches!(gives, Gives::InPit(_));
    let check = check.by(Rule::Watched(share));
    if check.verdict() <= Verdict::WithCare {
        return check;
    }
    let is_freed = drive.is_freed(pipe);
    let spares = |held: Force| most.is_none_or(|most| held <= most);
    let spared = drive.rig.held_to.is_none_or(|held| spares(held.value));
    let ways: Ways = if spared { &[&["if_stalled"]] } else { &[&["rig.held_to", "if_stalled"]] };
    // What a night adds is gone where there is none.
    let beyond: Ways = match (drive.stops_at_night(), is_freed || can_be_dug(drive)) {
        (false, _) => NOTHING,
        (true, true) => &[&["work.round_the_clock"]],
        (true, false) => &[&["work.round_the_clock", "if_stalled"]],
    };
    // Nor does a night make the likely force too much.
    let over = if drive.hangs_on_pilot() { NOTHING } else { beyond };
    let [beyond, over] = [beyond, over].map(|ways| or_drilled(drive, ways));
    let freed = if most.is_some() && drive.rig.held_to.is_none() { SET } else { FREED };
    let by_rig = most.is_none();
    let stalls = if can_be_dug(drive) { STALLS_NEAR } else { STALLS };
    let notes = [stalls, freed, if by_rig { STRONGER } else { PLAN }];
    let stalls = Stalls { notes, ways: [ways, beyond, over], by_rig, in_pit, spare: SPARE_OF_PUSH };
    stalls.judged(drive, check, spared.then_some(is_freed))
}

/// What stem, head and pit face bear of a pull: no more than the rig pulls.
pub(super) fn by_rig(drive: &Drive, pull: Forces) -> Forces {
    no_more(pull, drive.rig.pull.value)
}

/// Ways to settle what hangs on whether fluid holds the bore.
const FLUID: Ways = &[&["pull.fluid_density"]];

const UNHELD: &str = "the fluid presses no harder than the water, so that the ground rubs on all of the stem: make it heavier \
    (`pull.fluid_density`), or stand it higher over the water (`pull.fluid_level`, a pit raised over the ground)";

/// A force on the stem with its cause, where fluid could hold the bore and does not.
pub(super) fn unheld(at: (&Drive, Method), check: Draft) -> Draft {
    let (drive, method) = at;
    let falls = |stretch: &Stretch| {
        let fine = stretch.is_all(|class| class.is_fine() && !class.is_clay());
        fine && stretch.way.is_wet() && stretch.drilled(true).is_some() && stretch.open(method).is_none()
    };
    let named =
        method == Method::Pullback && check.verdict() >= Verdict::NotDecided && drive.stretches.iter().any(falls);
    if named { check.with_note(UNHELD) } else { check }
}

/// Ways to settle a pull that hangs on whether clay closes on the stem, or ground falls on it.
pub(super) fn strength_of_clay(drive: &Drive) -> Ways {
    if hangs_on_fluid(drive) {
        return FLUID;
    }
    let hangs = drive.stretches.iter().any(|stretch| stretch.stem_may_lie_open(Method::Pullback));
    if hangs { &[&["ground[].spt_n"], &["ground[].soil.undrained_strength"]] } else { NOTHING }
}

/// A pull against the rating of the rig, which holds itself there. Only a pit over the pipe frees one that stalls.
pub(super) fn against_rig_pull(drive: &Drive, pull: Forces) -> Draft {
    if !drive.rig.pull.is_given() {
        let asked = pull.check(|pull| required(Role::Pull, pull, drive.rig.pull));
        return asked.with_note(CHOOSE).settled_by(&[&["rig.pull"]]);
    }
    against_pull(drive, pull, drive.rig.pull, [PULL_STALLS, PULL_FREED, PULL_STRONGER])
}

/// The pull of a winch on the pipe against its rating.
pub(super) fn against_winch(drive: &Drive, pull: Forces, rating: Cited<Force>) -> Draft {
    against_pull(drive, pull, rating, [WINCH_STALLS, WINCH_FREED, WINCH_STRONGER])
}

fn against_pull(drive: &Drive, pull: Forces, rating: Cited<Force>, notes: [&'static str; 3]) -> Draft {
    let share = Subject::RigPull.decides().share(&drive.leeway);
    let check = pull.check(|pull| at_most(Role::Pull, pull, rating).by(Rule::Watched(share)));
    let clay = strength_of_clay(drive);
    // What the clay is comes before what is done where it closes.
    const CLAY: Ways = &[&["ground[].spt_n"], &["ground[].soil.undrained_strength"], &["if_stalled"]];
    let uncounted =
        |stretch: &Stretch| stretch.earth.strength.is_some_and(|strength| matches!(strength.by, StrengthBy::Class));
    let by_clay = !settles_nothing(clay) && drive.stretches.iter().any(uncounted);
    let held: Ways = if by_clay { CLAY } else { &[&["if_stalled"]] };
    let stalls = Stalls { notes, ways: [held, clay, clay], by_rig: true, in_pit: false, spare: SPARE_OF_PULL };
    stalls.judged(drive, check, Some(drive.is_dug_free()))
}

/// What is said of a force that stalls at the high level alone, and what settles it.
struct Stalls {
    /// Where nobody says how it is freed, where the file does, and where that can be planned.
    notes: [&'static str; 3],
    /// Where it may be held; where it is too much for that; and where it is over.
    ways: [Ways; 3],
    /// Whether the rig alone stalls: a stronger one is to be had.
    by_rig: bool,
    /// Whether what gives way stands in the launch pit, whatever lies over the line.
    in_pit: bool,
    /// What the limit has to be over the likely force where no pit can be dug.
    spare: f64,
}

impl Stalls {
    /// With care where it is held and freed, up to so many times its limit. Where a pit can be dug, or the likely force is well
    /// below the limit, how it is freed is planned and need not be told. `is_freed` is what the file says of that; none where
    /// it holds the jacks to more than may be borne.
    fn judged(self, drive: &Drive, check: Draft, is_freed: Option<bool>) -> Draft {
        let ([stalls, freed, plan], [ways, beyond, over]) = (self.notes, self.ways);
        let most = drive.leeway.held;
        if check.verdict() == Verdict::Over {
            // What is not told may still be at its best.
            return check.settled_by(over);
        }
        if !stalls_at_most(&check) {
            return check;
        }
        // What the jacks are set to is the limit at the high level.
        let is_far = check
            .likely()
            .zip(check.high())
            .is_some_and(|((demand, limit), (_, held))| demand.si * self.spare <= limit.si.min(held.si));
        let spares = || check.likely().is_some_and(|(demand, limit)| demand.si * SPARE_OVER_A_PIT <= limit.si);
        let is_reached = self.in_pit || can_be_dug(drive) || self.by_rig && is_open(drive);
        let may_plan = is_freed.is_some() && (is_far || is_reached && (self.in_pit || spares()));
        match (can_be_held(&check, most), is_freed == Some(true), may_plan) {
            (false, ..) => check.with_note(BEYOND).settled_by(beyond),
            (true, true, _) => check.by(Rule::Watched(most)).with_care(Care::Condition, freed),
            (true, false, true) => check.by(Rule::Watched(most)).with_care(Care::Condition, plan),
            (true, false, false) => check.with_note(stalls).settled_by(ways),
        }
    }
}

/// Whether the likely force passes, and the high one waits for what is done where it stalls.
pub(super) fn stalls_at_most(check: &Draft) -> bool {
    check.verdict() == Verdict::NotDecided && check.doubt.is_none() && check.likely().is_some()
}

/// Whether a pit can be dug to what stalls anywhere on the line: no deeper than is usual, in ground that is known and under no
/// more water than one stage of wells draws down where it runs, and under what the file tells and nobody guards.
fn can_be_dug(drive: &Drive) -> bool {
    let wells = drive.site.pit_rules.wells.value;
    let dug = |stretch: &Stretch| {
        let is_held = stretch.treatment.is_some() || stretch.way.head() <= wells || !stretch.has(GroundClass::runs);
        is_held && stretch.way.deepest.si() <= DEEPEST_RESCUE && stretch.is_all(|class| class != GroundClass::Unknown)
    };
    is_open(drive) && drive.stretches.iter().all(dug)
}

/// Whether the file tells what lies over the bore, and nobody guards it.
fn is_open(drive: &Drive) -> bool {
    drive.site.surface.is_told && !drive.site.surface.guarded
}

/// Whether jacks that are held below a limit may get through at all: up to so many times that limit at the high level.
pub(super) fn can_be_held(check: &Draft, most: Ratio) -> bool {
    check.high().is_some_and(|(demand, limit)| demand.si <= most.si() * limit.si)
}

/// What is asked of plant that is not told, as it would be judged if it were: the likely force with the whole factor, the
/// high one with what must be left of it.
pub(super) fn asked(thrust: Doubted<Band<Force>>, factor: Ratio, left: Ratio) -> Doubted<Band<Force>> {
    thrust.map(|thrust| Band::same(thrust.likely.max(thrust.high * (left / factor))))
}
