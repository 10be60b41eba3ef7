//! What a few facts say of the ways to build a drive, on a page.

use super::page::{Page, sentence};
use super::plain;
use super::sure::one_check;
use crate::check::{Subject, Verdict};
use crate::choice::reason::{barred_by, if_settled, name, with_verdict};
use crate::choice::{Ranked, Standing};
use crate::conditions::{Plan, Topic, site_figures};
use crate::handbook::{HandbookError, Method};
use crate::method;
use crate::quantity::{Role, Shown, UnitSystem};
use crate::report::words;
use crate::vary::{Case, Screen, Screened};
use std::mem;

/// What the pipe itself has to bear.
const OF_PIPE: [Subject; 2] = [Subject::EndCapacity, Subject::Tension];

/// The page.
pub(in crate::report) fn page(screen: &Screen, system: UnitSystem, columns: usize) -> Result<String, HandbookError> {
    let schemes = screen.schemes();
    let Some(first) = schemes.first() else { return Ok(String::new()) };
    let (case, ranked) = first.best;
    let mut page = Page::new(&case.drive, system);
    page.wrapped("", &answer(case, ranked));
    page.gap();
    let cases: Vec<String> = screen.cases.iter().map(|case| page.case(case)).collect();
    page.wrapped("Looked at ", &cases.join("; "));
    let taken = screen.taken.join(", ");
    page.wrapped(
        "Taken     ",
        &format!("by our own judgement, where nothing is given: {taken}, and a rig that is strong enough"),
    );
    for screened in &schemes {
        page.screened(screened)?;
    }
    Ok(plain::text(&page.blocks, columns))
}

/// The first line of the best case. Of so few facts nothing is chosen: what fits in that case could.
fn answer(case: &Case, first: &Ranked) -> String {
    match first.standing {
        Standing::Open | Standing::Barred => words::answer(&case.drive, &case.choice),
        Standing::Fits | Standing::WithCare => {
            format!("NOT DECIDED: {} could fit; a screen decides nothing", name(first))
        }
    }
}

impl Page<'_> {
    fn case(&self, case: &Case) -> String {
        let text = |length| self.value(Shown::of(length, Role::Depth));
        let water = case.water.map_or_else(|| "no water".to_owned(), |water| format!("water {} down", text(water)));
        format!("invert {} deep, {water}", text(case.depth))
    }

    fn screened(&mut self, screened: &Screened<'_>) -> Result<(), HandbookError> {
        let (case, best) = screened.best;
        let page = &mut Page { blocks: mem::take(&mut self.blocks), drive: &case.drive, system: self.system };
        let standing = match best.standing {
            Standing::Fits | Standing::WithCare => "not decided, could fit".to_owned(),
            Standing::Open => format!("not decided, {}", if_settled(best).unwrap_or("comes closest")),
            Standing::Barred => best.standing.label().to_owned(),
        };
        page.heading(&sentence(&format!("{}: {standing}", name(best))));
        page.wrapped("Against   ", &page.against(screened)?);
        if best.standing != Standing::Barred {
            let open: Vec<String> = with_verdict(best, Verdict::NotDecided).map(one_check).collect();
            if !open.is_empty() {
                page.wrapped("Open      ", &format!("likely and high share of the limit: {}", open.join("; ")));
            }
            page.wrapped("Asks for  ", &page.needs(screened)?.join("; "));
            page.asked_of(best);
        }
        self.blocks = mem::take(&mut page.blocks);
        Ok(())
    }

    /// What bars the scheme, and in which of the cases.
    fn against(&self, screened: &Screened<'_>) -> Result<String, HandbookError> {
        if let Some(origin) = screened.best.1.scheme.excluded().next() {
            let (reason, source) = self.excluded(origin)?;
            return Ok(format!("{reason} ({source})"));
        }
        let mut causes: Vec<(String, Vec<String>)> = Vec::new();
        for (case, ranked) in screened.cases.iter().filter(|(_, ranked)| ranked.standing == Standing::Barred) {
            let by = barred_by(&case.drive, ranked);
            match causes.iter_mut().find(|(cause, _)| *cause == by) {
                Some((_, cases)) => cases.push(self.case(case)),
                None => causes.push((by, vec![self.case(case)])),
            }
        }
        let told: Vec<String> = causes
            .iter()
            .map(|(cause, cases)| match cases.len() == screened.cases.len() {
                true => cause.clone(),
                false => format!("{cause} (with {})", cases.join("; with ")),
            })
            .collect();
        Ok(if told.is_empty() { "nothing in any case looked at".to_owned() } else { told.join("; ") })
    }

    /// The least machine, pipe and room.
    fn needs(&self, screened: &Screened<'_>) -> Result<Vec<String>, HandbookError> {
        let mut needs = Vec::new();
        for (what, least, role) in
            [("thrust", screened.thrusts(), Role::Thrust), ("pull", screened.pulls(), Role::Pull)]
        {
            let least = self.range(least.into_iter().map(|least| Shown::of(least, role)));
            needs.extend(least.map(|least| format!("a rig of at least {least} {what}")));
        }
        for subject in OF_PIPE {
            let checks = screened.cases.iter().filter_map(|(_, ranked)| ranked.scheme.checks.get(subject));
            let demands = checks.filter_map(|check| check.high()).map(|(demand, _)| demand);
            needs.extend(self.range(demands).map(|force| format!("{} {force}", subject.label())));
        }
        let (case, best) = screened.best;
        let (drive, pipe, method) = (&case.drive, &best.pipe, best.scheme.method);
        if method == Method::Pullback {
            needs.push(format!(
                "room to lay out a string of {}",
                self.value(Shown::of(drive.length.value, Role::Distance))
            ));
            let figures = method::figures(drive, pipe, method)?;
            let room = figures.iter().filter(|figure| figure.is_room);
            needs.extend(room.map(|figure| format!("{} {}", figure.label, self.value(figure.value))));
        }
        for figure in site_figures(&Plan { drive, pipe, method }).iter().filter(|figure| figure.topic == Topic::Pits) {
            let range = figure.values.and_then(|values| self.range([values.low, values.high].into_iter()));
            needs.extend(range.map(|range| format!("{} {range}", figure.what)));
        }
        Ok(needs)
    }

    /// The least and the greatest of some values of one kind, once where they read the same.
    fn range(&self, values: impl Iterator<Item = Shown>) -> Option<String> {
        let mut values: Vec<Shown> = values.collect();
        values.sort_by(|one, other| one.si.total_cmp(&other.si));
        let (least, most) = (self.value(*values.first()?), self.value(*values.last()?));
        Some(if least == most { least } else { format!("{least} to {most}") })
    }
}
