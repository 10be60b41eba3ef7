//! Ground against method, and values of the file beyond what is usual.

use super::plan::Plan;
use crate::check::{Absent, CLASS, Care, Draft, Outcome, Rule, Verdict, Ways, at_most, only, rated};
use crate::drive::{
    BoreState, Drive, Ends, HoleState, OpenRound, PILOT_IN_FLUID, PUSHED_THROUGH_GROUT, SEWER_IN_PEAT, Stretch,
    UNCUT_ROCK, UNTOLD_PILOT, UNTOLD_SPOIL,
};
use crate::handbook::{GroundClass, GroundHazard, Method, Rating};
use crate::quantity::{Role, UnitWeight};
use crate::source::{Cited, Equation, Origin};

/// The worst stretch decides.
pub(crate) fn ground(at: &Plan<'_>) -> Outcome {
    let suits = at.pipe.ground.ok_or(Absent::NotApplicable("the ground is not rated"))?;
    let worst = match at.method {
        Method::PipeJacking => suits.jacking,
        Method::Pullback => suits.pullback,
    };
    let stones = if at.is_jacked() { suits.stones } else { suits.pullback_stones };
    if let Some(Ends { low: takes, high: stone }) = stones {
        let check = at_most(Role::Diameter, stone, Cited::new(takes, worst.origin)).by(Rule::High);
        return Ok(check.with_note(STONES));
    }
    let check = rated(verdict(worst.value), worst.origin);
    let wet = |stretch: &Stretch| stretch.treatment.is_none() && stretch.way.is_wet();
    let rock = at.drive.stretches.iter().all(|stretch| stretch.class.is_rock());
    let untold = at.drive.stretches.iter().any(|stretch| stretch.class == GroundClass::Unknown);
    let [jacked, pulled] = suits.hangs_on;
    let hangs_on = if at.is_jacked() { jacked } else { pulled };
    let told = hangs_on.ways();
    let settling: Ways = if untold {
        CLASS
    } else if let Some(told) = told {
        told
    } else if rock {
        &[&["pilot", "spoil"]]
    } else if at.is_jacked() && at.drive.stretches.iter().any(wet) {
        &[&["ground[].treatment"]]
    } else {
        &[&["ground[].spt_n", "ground[].largest_stone"]]
    };
    let check = check.settled_by(settling);
    let stated = at.drive.stretches.iter().any(|stretch| stretch.told_to_stand);
    let check = match open_bore(at, stated) {
        Some((care, note)) if worst.value == Rating::Suitable || stated && worst.value == Rating::Marginal => {
            check.with_care(care, note)
        }
        _ => check,
    };
    let drained = || at.is_jacked() && !rock && at.drive.site.face.open && at.drive.stretches.iter().any(wet);
    // Where nothing is said the row tells what the ground is.
    let check = match (worst.value, worst.origin) {
        (Rating::Depends, origin) if origin == Origin::Law(&UNTOLD_PILOT) => {
            check.with_note(if at.is_jacked() { NO_PILOT } else { PILOT }).settled_by(&[&["pilot"]])
        }
        (Rating::Depends, origin) if origin == Origin::Law(&UNTOLD_SPOIL) => {
            check.with_note(UNTOLD).settled_by(hangs_on.with_spoil())
        }
        (Rating::Depends, _) if suits.fill => check.with_note(FILL),
        (Rating::Depends, origin) if origin == Origin::Law(&UNCUT_ROCK) => {
            check.with_note(SPOIL).settled_by(if suits.by_machine { VACUUM_OR_SLURRY } else { VACUUM })
        }
        (Rating::Unsuitable, origin) if origin == Origin::Law(&PUSHED_THROUGH_GROUT) => check.with_note(GROUTED),
        (Rating::Unsuitable, origin) if origin == Origin::Law(&SEWER_IN_PEAT) => check.with_note(PEAT),
        (Rating::Unsuitable, _) if at.is_jacked() && suits.runs_in => check.with_note(RUNS_IN),
        (Rating::Unsuitable, origin) if !at.is_jacked() && suits.pilot_stops == Some(origin) => check.with_note(STOPS),
        (Rating::Unsuitable, _) if drained() => check.with_note(UNDER_WATER),
        (Rating::Depends, _) if at.is_jacked() && suits.runs_in => {
            check.with_note(MAY_RUN_IN).settled_by(&[&["ground[].treatment"], &["spoil"]])
        }
        (Rating::Depends, Origin::Law(_)) if untold || rock => check.with_note(NO_RATING),
        (Rating::Depends, Origin::Law(_)) if told.is_none() => {
            check.with_note(NO_RATING).settled_by(&[&["spoil"], &["pilot"]])
        }
        (Rating::Depends, Origin::Law(_)) => check.with_note(NO_RATING),
        (Rating::Depends, _) => check.with_note(UNDECIDED),
        (Rating::Marginal, origin) if origin == Origin::Law(&PILOT_IN_FLUID) => check.with_note(IN_FLUID),
        (Rating::Marginal, Origin::Law(_)) => check.with_note(TREATED),
        _ => check,
    };
    // Whatever else is open, ground that is unknown has to be known first.
    let check = if untold && check.verdict() == Verdict::NotDecided { check.settled_by(CLASS) } else { check };
    let check = match suits.hazard {
        _ if suits.rises && worst.value == Rating::Marginal => {
            rated(Verdict::Within, worst.origin).undecided(RISES).settled_by(&[&["ground[].treatment"]])
        }
        Some(hazard) if worst.value == Rating::Marginal => {
            rated(Verdict::Within, worst.origin).with_care(Care::Condition, remedy(hazard))
        }
        Some(hazard) if worst.value == Rating::Unsuitable => {
            let mut check = check;
            check.note = unless(hazard, at.is_jacked());
            check
        }
        _ => check,
    };
    let (verdict, care) = check.decided();
    let passes = matches!(verdict, Verdict::Within | Verdict::WithCare);
    let check = match at.drive.stretches.iter().any(|stretch| stretch.has(GroundClass::is_rock)) {
        true if passes && care != Some(Care::Condition) => {
            let wet = |stretch: &Stretch| stretch.has(GroundClass::is_rock) && stretch.way.is_wet();
            let wet = at.is_jacked() && at.drive.stretches.iter().any(wet);
            let note = if wet { WET_ROCK } else { ROCK };
            rated(Verdict::Within, worst.origin).with_care(Care::Condition, note)
        }
        _ => check,
    };
    let dry = at.drive.pull.as_ref().is_some_and(|pull| pull.works.hole == HoleState::Dry);
    let runs = |stretch: &Stretch| stretch.has(|class| matches!(class, GroundClass::LooseSand | GroundClass::Gravel));
    let open = at.is_jacked() && at.drive.site.face.open && at.drive.stretches.iter().any(runs);
    let check = if open && check.verdict() == Verdict::WithCare {
        rated(Verdict::Within, worst.origin).with_care(Care::Condition, RUNS_DRY)
    } else {
        check
    };
    Ok(if dry && !at.is_jacked() { dry_hole(at.drive, check) } else { check })
}

/// What is done about a hazard before the bore.
const fn remedy(hazard: GroundHazard) -> &'static str {
    match hazard {
        GroundHazard::Swelling => {
            "clay that swells: swell tests, a wide overcut kept full of a fluid that keeps water from it, and no stop"
        }
        GroundHazard::Sensitive => {
            "sensitive clay: its remoulded strength tested, and face or bore held by fluid at every moment"
        }
        GroundHazard::Artesian => {
            "artesian water: relief wells that bring it down to the floor of the pits, and seals where the bore goes in"
        }
        GroundHazard::Contaminated => {
            "contaminated ground: sample it, handle spoil, fluid and water under permit, and guard people in the pits; pipe and \
             seals that it does not go through"
        }
        _ => "karst: cores and their compressive strength, probe the line, and grout what is found before the bore",
    }
}

/// Where a hazard may be what bars: what else would do.
const fn unless(hazard: GroundHazard, is_jacked: bool) -> Option<&'static str> {
    match hazard {
        GroundHazard::Artesian if !is_jacked => {
            Some("artesian water pushes the fluid out of the bore: relief wells before it, or another line")
        }
        GroundHazard::Sensitive => {
            Some("sensitive clay flows once it is remoulded: a closed face, or another line; no blow count mends it")
        }
        GroundHazard::Artesian => Some("artesian water comes into an open face: a closed face, with relief wells"),
        _ => None,
    }
}

/// A bore that the file says is dry and stands, in what it goes through: a claim, which the ground may belie.
fn dry_hole(drive: &Drive, check: Draft) -> Draft {
    let stability = drive.site.face.warn;
    let one = |stretch: &Stretch| {
        if stretch.has(|class| matches!(class, GroundClass::LooseSand | GroundClass::Gravel)) {
            return rated(Verdict::Over, Origin::Law(&DRY)).with_note(RUNS);
        }
        let claimed = rated(Verdict::Within, Origin::Law(&DRY)).with_care(Care::Data, CLAIMED);
        let Some(strength) = stretch.earth.strength else { return claimed };
        // Vertical stress over strength, at its worst and at its best.
        let [worst, best] =
            [(stretch.heavy(), strength.ends.low), (stretch.light(), strength.ends.high)].map(|(column, strength)| {
                let weight = column.soil.at_pipe().map_or(UnitWeight::default(), |layer| layer.moist);
                (weight * stretch.way.deepest + column.soil.surcharge) / strength
            });
        if best > stability {
            rated(Verdict::Over, Origin::Law(&DRY)).with_note(CLOSES)
        } else if worst > stability {
            let closes = rated(Verdict::NotDecided, Origin::Law(&DRY)).with_note(CLOSES);
            closes.settled_by(&[&["ground[].soil.undrained_strength"]])
        } else {
            claimed
        }
    };
    drive.stretches.iter().map(one).fold(check, Draft::worse)
}

/// What a bore without fluid is held to.
const DRY: Equation = Equation::judged(
    "bore without fluid before a pulled pipe",
    "not in loose sand or gravel, nor in clay above the stability number of an open face; with care elsewhere",
    "ground that runs falls into an open bore, and clay closes on it",
    "a bore that the file says is dry and stands",
);
const RUNS: &str = "loose sand and gravel run into a bore without fluid, whatever the file says of it";
const CLOSES: &str =
    "the clay closes on a bore without fluid: its weight over its strength is more than an open face may have";
const CLAIMED: &str = "the file states that the bore stands without fluid: ground that ravels or is fissured does not";

/// What has to be so where the bore is taken to stand open round a drilled stem or a pipe behind it: the least sure
/// stretch counts.
fn open_bore(plan: &Plan<'_>, told: bool) -> Option<(Care, &'static str)> {
    let drive = plan.drive;
    let round = if plan.method == Method::PipeJacking { plan.pipe.open.as_slice() } else { &[] };
    let round_pipe = round.iter().filter_map(|round| round.safe).map(|open| open.0);
    let round_stem = drive.stretches.iter().filter_map(|stretch| stretch.open(plan.method).map(|open| open.0));
    let states = || round_stem.clone().chain(round_pipe.clone());
    let any = |state| states().any(|one| one == state);
    let clay = drive.stretches.iter().any(|stretch| stretch.open(plan.method).is_some() && !stretch.class().is_rock());
    if any(BoreState::Held) {
        let level = drive.pull.as_ref().and_then(|pull| pull.fluid_level);
        Some((Care::Condition, if level.is_some() { HELD_TO } else { HELD }))
    } else if any(BoreState::Partly) {
        Some((Care::Data, PARTLY))
    } else if any(BoreState::Stands) && told {
        Some((Care::Data, TOLD))
    } else {
        (any(BoreState::Stands) && clay).then_some((Care::Data, STANDS))
    }
}

/// The equation, if any, behind what the tables do not tell of the friction or the blow counts of a stretch: where the
/// bore stands open round all that is pushed nothing of that is in doubt. A pulled pipe asks for the stem alone.
pub(crate) fn ground_doubt(plan: &Plan<'_>) -> Option<&'static Equation> {
    let round = &plan.pipe.open;
    let open = |stretch: &Stretch| round.get(stretch.index).is_some_and(OpenRound::stands);
    let stem = |stretch: &Stretch| !plan.drive.stem.is_there() || stretch.open(plan.method).is_some();
    let settled = |stretch: &&Stretch| stem(stretch) && (plan.method == Method::Pullback || open(stretch));
    plan.drive.stretches.iter().filter(|stretch| !settled(stretch)).find_map(|stretch| stretch.doubt)
}

const STANDS: &str = "the bore is assumed to stand open for a week: the log must show intact clay, without fissures \
    or water-bearing seams";
const TOLD: &str = "the file states that the bore stands open: a log, or bores beside it, must show intact clay or sound rock that no \
    water enters";
const PARTLY: &str = "the bore is assumed to stand open for two days and to close over part of its length: leave it \
    no longer than the work needs, then fill and grout";
const HELD: &str = "fluid is assumed to hold the bore: keep both pits as full of it as holds the bore, and no fuller than its gauge allows";
const HELD_TO: &str = "fluid is assumed to hold the bore: keep it in both pits no lower than the level given";

const STOPS: &str = "no pilot is pushed through rock, or through ground of so many blows: drill it";
const UNDER_WATER: &str =
    "under water it runs into an open face: draw the water down (`treatment`), or use a slurry machine";
const ROCK: &str = "the strength of the rock, which is not told: cores and their compressive strength, and bit, cutters, thrust and rate \
                    by them";
const WET_ROCK: &str = "the strength of the rock and the water in its joints, which are not told: cores, and water pressed into \
                        them; bit and cutters by the one, pumps or a closed face by the other";
const STONES: &str = "the largest stone, against what pilot and head take";
const FILL: &str = "fill may contain anything: state that nothing obstructs it (`hazards: []`), or what does; of fill that has \
    another hazard and no obstructions give the class of its soil";
const RUNS_IN: &str = "the ground runs into the open stem, which digs more than its bore whatever the force: case \
    it at the bit, support it with fluid, or drain it";
const RUNS_DRY: &str = "loose sand and gravel run into an open face: keep a plug of soil in the casing at all times, or boards or a hood \
    at a shield, and weigh the spoil against the advance";
const MAY_RUN_IN: &str = "sand with clay in the face: where the clay does not bind it, it runs into the open stem. \
    Case it at the bit, support it with fluid, or drain it";
const UNTOLD: &str = "not every way to remove the soil works in this ground: state which is meant";
const RISES: &str = "artesian water, of which nothing tells how high it rises: say whether relief wells bring it down to the \
    floor of the pits (`treatment: dewatered`)";
const PILOT: &str = "no pilot can be pushed through some of the ground: say whether it is drilled";
const NO_PILOT: &str =
    "no pilot can be pushed through some of the ground: say whether there is one, and whether it is drilled";
const GROUTED: &str = "no pilot is pushed through ground that grout has bound: drill it";
const PEAT: &str = "peat bears no sewer and settles for years; where the ground is improved or the sewer stands on piles, \
                    describe what it then lies in";
/// What clears the bore in rock that no auger cuts: a machine only where its cutters can be changed.
const VACUUM: Ways = &[&["spoil: vacuum"]];
const VACUUM_OR_SLURRY: Ways = &[&["spoil: vacuum"], &["spoil: slurry"]];
const SPOIL: &str = "no auger cuts this rock: say what else clears the bore behind the pilot";
const IN_FLUID: &str = "no table rates a drilled pilot here: fluid has to hold its bore, as that of a pulled pipe";
const UNDECIDED: &str = "the ground as given does not decide it: see the row; spt_n and largest_stone may";
const NO_RATING: &str = "no published or recalled rating of this technique in this ground was found; see `technique`";
const TREATED: &str = "with the ground treated as the file says: rated as above water, marginal at best";

const fn verdict(rating: Rating) -> Verdict {
    match rating {
        Rating::Suitable => Verdict::Within,
        Rating::Marginal => Verdict::WithCare,
        Rating::Unsuitable => Verdict::Over,
        Rating::Depends => Verdict::NotDecided,
    }
}

/// What is asked of a value that is possible and seldom met.
const SELDOM: Equation = Equation::judged(
    "values of the file",
    "each within what is usual of its field",
    "a value that is possible and seldom met is more often a slip: it is used as it is, and asks for care",
    "every value of the file",
);

/// A value that is possible and seldom met asks for care wherever it is used.
pub(crate) fn usual(at: &Plan<'_>) -> Outcome {
    only(at.drive.is_unusual_for(at.pipe, at.method), "every value in the file is a usual one")?;
    let check = rated(Verdict::Within, Origin::Law(&SELDOM));
    Ok(check.with_care(Care::Data, "a value in the file is unusual: see the cautions"))
}
