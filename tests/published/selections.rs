//! Methods that were chosen and built, or recommended, in trade articles and papers: what was built is not barred, and
//! what is known to go wrong raises its caution. What an article does not state is said beside the drive.
//!
//! - Houston sewer relocation: trade article, September 2008, vol. 63 no. 9, pp. 1-2, read.
//! - A sewer by pilot tube in interbedded silt and sand: a designer's sheet, only its title and ground read.
//! - A gravity sewer by on-grade directional drilling in Germantown, Tennessee: pwmag.com, directional drilling for
//!   gravity sewers, read.
//! - International No-Dig 2014, paper 126, first page, read: guided pilot tube for small sizes, slurry machines in
//!   variable ground.

use crate::edit::Edit;
use crate::found::{Found, Outcome, Stop, holds, pages};
use jackpull::check::{Subject, Verdict};
use jackpull::choice::Ranked;
use jackpull::handbook::Method;
use jackpull::{Handbook, Standing, choose, read_drive};
use std::sync::Arc;

pages!(
    clay_pipe_in_stiff_clay_with_the_longest_drive,
    clay_pipe_in_stiff_clay_without_lubrication_is_a_known_gap,
    clay_pipe_in_stiff_clay_with_the_friction_its_rating_bounds,
    pilot_tube_deep_in_silt_and_sand_above_water,
    on_grade_drilling_is_not_barred_and_warns_of_its_grade,
    small_sizes_by_guided_pilot_and_not_in_stony_ground,
);

const RIG: &str = "rig: { thrust: 100 tonf_us, pull: 100 tonf_us }\npull: { rate: 60 ft/h, pipe_temperature: 73 degF, bend_radius: 100 ft }\n";

/// The schemes of one method, excluded ones left out.
fn schemes(handbook: &Arc<Handbook>, method: Method, lines: &str) -> Result<Vec<Ranked>, Stop> {
    let drive = read_drive(&format!("service: gravity_sewer\n{RIG}{lines}"), handbook)?;
    let ranked = choose(&drive)?.ranked;
    Ok(ranked.into_iter().filter(|one| one.scheme.method == method && !one.scheme.is_excluded()).collect())
}

fn verdict(ranked: &Ranked, subject: Subject) -> Option<Verdict> {
    ranked.scheme.checks.get(subject).map(|check| check.verdict)
}

/// Eleven drives of 57 to 301 ft, clay pipe of 8, 10 and 12 in (12 in has no row), a frame of 100 ton. Depth, grade
/// and lubrication are not stated; lubrication is the habit of the method.
fn houston(lubrication: &str) -> String {
    format!(
        "length: 301 ft\nlaunch: {{ invert_depth: 15 ft }}\ngrade: 0.4 %\ngroundwater: none\nlubrication: {lubrication}\n\
         ground: [{{ class: firm_to_very_stiff_clay, largest_stone: 0 in }}]\n\
         candidates: [{{ material: clay, size: 8 in }}, {{ material: clay, size: 10 in }}]\n"
    )
}

fn clay_pipe_in_stiff_clay_with_the_longest_drive(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let built = schemes(handbook, Method::PipeJacking, &houston("metered"))?;
    holds(found, "both sizes are looked at", built.len() == 2);
    for ranked in &built {
        holds(found, "what was built is barred", ranked.standing != Standing::Barred);
        holds(found, "the ground suits", verdict(ranked, Subject::Ground) == Some(Verdict::Within));
        // 301 ft is a foot beyond the 300 ft of the table of methods.
        holds(found, "no word on the length", verdict(ranked, Subject::Length) == Some(Verdict::WithCare));
    }
    Ok(())
}

/// Pipe end and frame bar both sizes behind a pilot that is pushed. The likely friction of clay without
/// lubrication, 8 kPa, is close to the most that the frame could push (8.6 kPa at 0.36 m), not to what was pushed: on
/// 13.3 in over 301 ft it is 780 kN, and the pipe end is rated 445 kN at the guide's factor of 3, 534 kN at the least
/// factor its maker prints. No factor of ours makes that good, and the job does not state pilot, lubrication, force or the
/// size of the longest drive. Where the pilot is left open it is asked for. What the job does bound is the friction, in the
/// page below.
fn clay_pipe_in_stiff_clay_without_lubrication_is_a_known_gap(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (pilot, standing, verdicts) in
        [("", Standing::Open, Verdict::NotDecided), ("pilot: displacement\n", Standing::Barred, Verdict::Over)]
    {
        let built = schemes(handbook, Method::PipeJacking, &format!("{}{pilot}", houston("none")))?;
        holds(found, "both sizes are looked at", built.len() == 2);
        for ranked in &built {
            holds(found, "the gap has changed: say so above", ranked.standing == standing);
            holds(found, "the pipe end", verdict(ranked, Subject::EndCapacity) == Some(verdicts));
            holds(found, "the frame", verdict(ranked, Subject::JackingThrust) == Some(verdicts));
        }
    }
    Ok(())
}

/// Were the pipe held to its rating, as a guide specification asks, the mean friction of 10 in pipe over 301 ft was at
/// most (445 kN less a face of 15 kN) over 97.5 m2, 4.4 kPa: with that as likely, and what the frame could push as
/// high, and worked round the clock, the job is not barred.
fn clay_pipe_in_stiff_clay_with_the_friction_its_rating_bounds(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let with = |likely: &str| {
        let friction = format!("unit_friction: {{ low: 2 kPa, likely: {likely}, high: 8.6 kPa }}, class");
        houston("none")
            .edit("class", &friction)
            .edit("{ material: clay, size: 8 in }, ", "")
            .edit("size: 10 in", "size: 10 in, certificate: astm_c1208")
            .edit("lubrication: none", "lubrication: none\nwork: { round_the_clock: true }")
    };
    for (likely, built) in [("4.2 kPa", true), ("4.7 kPa", false)] {
        let schemes = schemes(handbook, Method::PipeJacking, &with(likely))?;
        holds(found, "one size is looked at", schemes.len() == 1);
        for ranked in &schemes {
            holds(found, likely, (ranked.standing != Standing::Barred) == built);
        }
    }
    Ok(())
}

/// 30 to 47 ft deep, mostly above water: a carrier jacked behind a hole enlarger with auger. Length, size and frame are
/// not stated.
fn pilot_tube_deep_in_silt_and_sand_above_water(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let lines = "length: 250 ft\nlaunch: { invert_depth: 47 ft }\ngrade: 0.3 %\ngroundwater: none\nlubrication: metered\n\
                 spoil: auger\nground:\n  - { to: 125 ft, class: silt, spt_n: 20, largest_stone: 0 in }\n  \
                 - { class: medium_to_dense_sand, spt_n: 20, largest_stone: 0 in }\n\
                 candidates: [{ material: clay, size: 15 in }]\n";
    let built = schemes(handbook, Method::PipeJacking, lines)?;
    holds(found, "one scheme", built.len() == 1);
    for ranked in &built {
        holds(found, "what was designed is barred", ranked.standing != Standing::Barred);
        let ground = verdict(ranked, Subject::Ground);
        holds(found, "the ground is barred", matches!(ground, Some(Verdict::Within | Verdict::WithCare)));
    }
    Ok(())
}

/// 1,900 ft in all, manholes 300 to 400 ft apart, about 17 ft deep, a slight slope; ground, pipe, rig and ramp not stated. The
/// author notes that drilling has a mixed record for grade: without a tolerance nothing is decided, and nothing barred.
fn on_grade_drilling_is_not_barred_and_warns_of_its_grade(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let lines = "length: 400 ft\nlaunch: { invert_depth: 17 ft }\ngrade: 0.5 %\ngroundwater: none\nlubrication: none\n\
                 ground: [{ class: firm_to_very_stiff_clay, spt_n: 10, largest_stone: 0 in }]\n\
                 candidates: [{ material: pe4710, size: 8 in, sdr: 11 }]\n";
    let built = schemes(handbook, Method::Pullback, lines)?;
    holds(found, "one scheme", built.len() == 1);
    for ranked in &built {
        holds(found, "what was built is barred", ranked.standing != Standing::Barred);
        holds(found, "no word on the grade", verdict(ranked, Subject::Invert) == Some(Verdict::NotDecided));
        holds(found, "no word on the length", verdict(ranked, Subject::Length) == Some(Verdict::WithCare));
    }
    Ok(())
}

/// DN 150 to 600: guided pilot tube where the ground suits; slurry machines where it varies. Stones are what stops a
/// pilot that displaces the ground.
fn small_sizes_by_guided_pilot_and_not_in_stony_ground(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let lines = |ground: &str| {
        format!(
            "length: 150 ft\nlaunch: {{ invert_depth: 10 ft }}\ngrade: 0.5 %\ngroundwater: none\nlubrication: metered\n\
             ground: [{{ {ground} }}]\ncandidates: [{{ material: clay, size: 8 in }}]\n"
        )
    };
    let suits = lines("class: firm_to_very_stiff_clay, spt_n: 10, largest_stone: 0 in");
    let stony = lines("class: gravel, spt_n: 30, largest_stone: 150 mm");
    for ranked in &schemes(handbook, Method::PipeJacking, &suits)? {
        holds(found, "small pipe in clay is barred", ranked.standing != Standing::Barred);
    }
    for ranked in &schemes(handbook, Method::PipeJacking, &stony)? {
        holds(found, "stones as large as the pilot pass", !ranked.standing.can_be_chosen());
    }
    Ok(())
}
