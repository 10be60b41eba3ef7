//! What a file would have to tell so that a scheme that is open is decided, and what is in the way of one that is barred.

use super::standing::{Ranked, not_decided};
use crate::check::{CLASS, Check, Subject, Verdict, Ways};
use crate::drive::{NO_BAND, NO_COUNT};
use crate::quantity::Shown;
use crate::source::Equation;

/// Lines to write, and the checks that they settle.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Ask {
    /// Ways to settle them, any of which does, each the paths in the drive file that go together; empty where no field is
    /// known to settle it.
    pub ways: Vec<Vec<&'static str>>,
    /// Labels of the checks that are open for want of them.
    pub checks: Vec<&'static str>,
    /// Where no field settles them: those that the file tells, and that would have to be others.
    pub told: Vec<&'static str>,
    /// Where no field settles them: what would mend it, in a few words.
    pub mend: Option<&'static str>,
}

impl Ask {
    fn is_of_borings(&self) -> bool {
        matches!(self.ways.as_slice(), [way] if CLASS == [way.as_slice()])
    }

    /// Whether it is found out before any plant or pipe is chosen.
    fn is_of_the_site(&self) -> bool {
        let of_site = |field: &&str| field.starts_with("ground") || *field == "surface.over";
        self.ways.first().is_some_and(|way| way.iter().any(of_site))
    }

    /// Its paths in a few words: what goes together by *and*, what would do instead by *or*.
    #[must_use]
    pub fn line(&self) -> String {
        let line = self.ways.iter().map(|fields| fields.join(" and ")).collect::<Vec<_>>().join(", or ");
        if self.is_of_borings() { format!("{line} from borings") } else { line }
    }
}

/// What would have to be told of a scheme that is open: the fewest lines that settle all of it, ground and water before plant,
/// then the one that settles most, each field once, and last what none settles. Nothing is asked for that the file tells.
#[must_use]
pub fn asks(ranked: &Ranked) -> Vec<Ask> {
    let scheme = &ranked.scheme;
    let is_told = |field: &&str| ranked.pipe.is_told(field);
    let of_ground = scheme.checks.get(Subject::Ground);
    if of_ground.is_some_and(|check| check.verdict == Verdict::NotDecided && check.settled_by == CLASS) {
        // All else is asked once the ground is known.
        let checks = not_decided(scheme).map(Subject::label).collect();
        let ways = CLASS.iter().map(|way| way.to_vec()).collect();
        return vec![Ask { ways, checks, told: Vec::new(), mend: None }];
    }
    let ways_of = |subject: Subject| {
        let check = scheme.checks.get(subject);
        if let Some(ways) = check.and_then(|check| check.doubt).and_then(settles_doubt) {
            return ways;
        }
        let own = check.map_or(&[][..], |check| check.settled_by);
        if own.is_empty() { subject.need().map_or(&[][..], |need| need.ways) } else { own }
    };
    // Of each way what the file does not tell; one of which it tells all does not settle it.
    let mut open: Vec<Wanting> = not_decided(scheme)
        .map(|subject| {
            let ways = ways_of(subject);
            let left = ways.iter().map(|way| without(way, is_told)).filter(|way| !way.is_empty());
            let mut left: Vec<Way> = left.collect();
            left.dedup();
            let told = ways.iter().flat_map(|way| way.iter().copied()).filter(|field| is_told(field)).collect();
            Wanting { subject, ways: left, told }
        })
        .collect();
    let none: Vec<Wanting> = open.extract_if(.., |one| one.ways.is_empty()).collect();
    let mut asks: Vec<Ask> = Vec::new();
    while let Some(way) = settles_most(&open) {
        let settled: Vec<Wanting> = open.extract_if(.., |one| one.is_settled_by(&way)).collect();
        let others = settled.first().map_or(&[][..], |one| &one.ways).iter();
        let same = others.filter(|other| **other != way && settled.iter().all(|one| one.ways.contains(other)));
        let ways: Vec<Way> = [way.clone()].into_iter().chain(same.cloned()).collect();
        let ask =
            Ask { ways, checks: settled.iter().map(|one| one.subject.label()).collect(), told: Vec::new(), mend: None };
        if ask.ways.len() == 1 {
            // What is asked for already is not asked for again.
            for own in open.iter_mut().flat_map(|one| &mut one.ways) {
                own.retain(|field| !way.contains(field));
            }
        }
        asks.push(ask);
    }
    let unsettled = |one: Wanting| Ask {
        ways: Vec::new(),
        checks: vec![one.subject.label()],
        told: one.told,
        mend: Some(mend(one.subject)),
    };
    asks.sort_by_key(|ask| !ask.is_of_the_site());
    asks.extend(none.into_iter().map(unsettled));
    asks
}

/// What settles that a source does not tell of a ground.
fn settles_doubt(doubt: &'static Equation) -> Option<Ways> {
    if *doubt == NO_BAND {
        Some(&[&["ground[].unit_friction"]])
    } else if *doubt == NO_COUNT {
        Some(&[&["ground[].spt_n"]])
    } else {
        None
    }
}

/// What would mend a check that no line of the file settles.
const fn mend(subject: Subject) -> &'static str {
    use Subject as S;
    match subject {
        S::Cover => "deepen the drive",
        S::SurfaceSettlement | S::SurfaceSlope | S::ServiceSettlement | S::ServiceSlope => {
            "less overcut, a filled annulus or a deeper drive"
        }
        S::ServiceClearance => "shift the line",
        S::StemThrust | S::CasingThrust | S::JackingThrust => "more thrust, lubrication or a shorter drive",
        S::StemBuckling | S::StemSnaking => "a stiffer stem, or guides closer together",
        S::StemJoint | S::StemPull | S::CasingJoint => "stronger joints",
        S::StemTorque | S::AugerTorque | S::ReamingTorque => "more torque",
        S::CasingSection | S::CasingColumn | S::LeastWall => "a thicker wall",
        S::EndCapacity => "a stronger pipe or lubrication",
        S::JointAngle => "shorter pipes, or finer steering",
        S::PipeColumn => "a shorter free length",
        S::Tension | S::TensionAndBending | S::Strain | S::StrainWithBend => "a thicker wall, or a shorter pull",
        S::Collapse | S::CollapseInGrout => "a thicker wall, or water in the pipe",
        S::CollapseInService | S::Deflection => "a thicker wall, or grout round the pipe",
        S::Vacuum | S::ServicePressure => "a thicker wall",
        S::BreakOut | S::LubricantPressure | S::GroutPressure | S::GroutUplift => "a deeper drive, or less pressure",
        S::ReamedBore | S::BoreStands | S::ClayCloses => "a bore held by fluid or a casing",
        S::RigPull | S::ReamingPull => "a stronger rig",
        S::ThrustWall | S::WallLevel | S::WallMovement => "a larger wall",
        S::PullReaction => "a larger plate",
        S::Crushing => "a stronger pipe, or grout round it",
        S::Invert | S::BackFall | S::Sag => "a pilot that keeps a finer line, or less play round the pipe",
        S::CarrierRoom | S::CarrierGrade => "a larger casing",
        S::LeastSlope | S::GradeFloor => "a steeper line",
        S::Length | S::Programme => "a pit between",
        S::Diameter => "another size",
        S::FaceStability | S::FaceSupport | S::Ground => "another technique, or treated ground",
        S::PitBoiling => "a plug, deeper walls, or wells",
        S::PitHeave | S::PitUplift => "deeper walls, or wells",
        S::Plug => "a longer plug, or treated ground",
        S::RailwayCasing => "a casing",
        _ => "another pipe or plant",
    }
}

/// Fields that go together.
type Way = Vec<&'static str>;

/// A check that is open, the ways to settle it, and what the file tells of them.
struct Wanting {
    subject: Subject,
    ways: Vec<Way>,
    told: Vec<&'static str>,
}

impl Wanting {
    fn is_settled_by(&self, way: &Way) -> bool {
        self.ways.iter().any(|own| own.iter().all(|field| way.contains(field)))
    }
}

fn without(way: &[&'static str], out: impl Fn(&&str) -> bool) -> Way {
    way.iter().copied().filter(|field| !out(field)).collect()
}

/// The way that settles most of what is open, of equal ones the first told.
fn settles_most(open: &[Wanting]) -> Option<Way> {
    let count = |way: &Way| open.iter().filter(|one| one.is_settled_by(way)).count();
    let ways = open.iter().flat_map(|one| &one.ways);
    ways.rev().max_by_key(|way| count(way)).cloned()
}

/// What bars a scheme: one demand, and every check that it is too much for.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Cause<'a> {
    /// The likely demand, where it is a number that several checks share.
    pub demand: Option<Shown>,
    /// The checks that are over, the worst first.
    pub checks: Vec<&'a Check>,
}

/// What bars a scheme, each cause once: ground, rules and geometry, then what has the most excess.
#[must_use]
pub fn causes(ranked: &Ranked) -> Vec<Cause<'_>> {
    let mut causes: Vec<Cause<'_>> = Vec::new();
    let used = |check: &Check| check.utilisation().unwrap_or(f64::INFINITY);
    for check in ranked.scheme.checks.iter().filter(|check| check.verdict == Verdict::Over) {
        let demand = check.likely().map(|(demand, _)| demand);
        let same = |cause: &&mut Cause<'_>| {
            cause
                .demand
                .zip(demand)
                .is_some_and(|(one, other)| one.role == other.role && one.si.to_bits() == other.si.to_bits())
        };
        match causes.iter_mut().find(same) {
            Some(cause) => cause.checks.push(check),
            None => causes.push(Cause { demand, checks: vec![check] }),
        }
    }
    for cause in &mut causes {
        cause.checks.sort_by(|a, b| used(b).total_cmp(&used(a)));
    }
    let worst = |cause: &Cause<'_>| cause.checks.first().map_or(0.0, |check| used(check));
    let is_of_place = |cause: &Cause<'_>| cause.checks.first().is_some_and(|check| check.subject.is_of_place());
    causes.sort_by(|a, b| is_of_place(b).cmp(&is_of_place(a)).then(worst(b).total_cmp(&worst(a))));
    causes
}
