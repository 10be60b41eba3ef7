//! The line of the drive under the ground surface.

use super::Resolver;
use crate::drive::{AssumedValue, Way, invert_at};
use crate::drive_file::limits::{DEEPEST, STEEPEST};
use crate::drive_file::{DepthFile, DriveFile, PitFile};
use crate::handbook::Service;
use crate::quantity::shown::decimal;
use crate::quantity::{Angle, Length, Measure, Role, Shown};
use crate::source::{Cited, Equation, Origin};

/// What is taken for the ground surface between the points that the file tells.
pub(super) const GROUND_SURFACE: Equation = Equation::judged(
    "ground surface between the points given",
    "depth(x) = depth_before + (depth_after - depth_before) (x - x_before) / (x_after - x_before)",
    "straight line between the points",
    "an even surface between the points",
);

/// Most points of the surface between the pits.
const MOST_POINTS: usize = 2_000;

/// Depth of the pipe invert below ground along the drive, and the slope of the pipe.
pub(super) struct Line {
    /// Distance from the launch pit and depth, in order; both pits are among them.
    points: Vec<(Length, Length)>,
    pub(super) grade: Cited<Angle>,
}

impl Line {
    fn launch(&self) -> Length {
        self.points.first().map_or(Length::default(), |point| point.1)
    }

    /// Depth of the invert at the reception pit.
    pub(super) fn reception(&self) -> Length {
        self.points.last().map_or(Length::default(), |point| point.1)
    }

    /// Least depth of the invert.
    pub(super) fn shallowest(&self) -> Length {
        self.points.iter().map(|point| point.1).reduce(Length::min).unwrap_or_default()
    }

    /// From the lowest invert up to the highest ground: the bore fluid can stand no higher.
    pub(super) fn greatest_column(&self) -> Length {
        // Heights over the ground at the launch pit.
        let slope = self.grade.value.si().tan();
        let invert = |at: Length| at * slope - self.launch();
        let ground = |(at, depth): &(Length, Length)| invert(*at) + *depth;
        let highest = self.points.iter().map(ground).fold(Length::default(), Length::max);
        let lowest = self.points.iter().map(|point| invert(point.0)).fold(invert(Length::default()), Length::min);
        highest - lowest
    }

    /// From the lowest invert up to the highest.
    pub(super) fn drop(&self) -> Length {
        let slope = self.grade.value.si().tan();
        let inverts = || self.points.iter().map(|point| point.0 * slope);
        let highest = inverts().fold(Length::default(), Length::max);
        highest - inverts().fold(Length::default(), Length::min)
    }

    /// Greatest depth of the invert.
    pub(super) fn deepest(&self) -> Length {
        self.points.iter().map(|point| point.1).reduce(Length::max).unwrap_or_default()
    }

    /// Depth of the invert at a distance.
    pub(super) fn invert(&self, at: Length) -> Length {
        invert_at(&self.points, at)
    }

    /// Between two distances, with the depth of the water there.
    pub(super) fn way(&self, from: Length, to: Length, table: Option<Length>) -> Way {
        let inner = self.points.iter().filter(|point| point.0 > from && point.0 < to).copied();
        let ends = [from, to].map(|end| (end, self.invert(end)));
        let [first, last] = ends;
        Way::new(core::iter::once(first).chain(inner).chain([last]).collect(), table)
    }
}

impl Resolver<'_> {
    pub(super) fn line(&mut self, length: Length) -> Option<Line> {
        let deepest = Length::from_si(DEEPEST);
        let Some(at_launch) = &self.file.launch.invert_depth else {
            let why = ("the depth of the invert at the launch pit is missing", "add `invert_depth: 4.2 m`");
            self.flaw(&self.file.length, "launch.invert_depth", why);
            return None;
        };
        let launch = at_launch.value;
        let reception = self.file.reception.as_ref().and_then(PitFile::depth);
        let grade = self.cited(DriveFile::grade);
        let grade = grade.map(|grade| grade.map(|slope| Angle::from_si(slope.si().atan())));
        let between = self.between(length)?;
        let judged = Origin::Law(&GROUND_SURFACE);
        let word = |word: &str| AssumedValue::Word(word.to_owned());
        let (reception, grade) = match (reception, grade) {
            (Some(reception), Some(grade)) => {
                if between.is_empty() {
                    self.assume("ground surface", word("even between the pits, no other point given"), judged);
                }
                (reception, grade)
            }
            (Some(reception), None) => {
                let as_high = if between.is_empty() { "level" } else { "as high at both pits" };
                self.assume("ground surface", word(&format!("{as_high}: gives the grade")), judged);
                let slope = ((launch - reception) / length).value;
                let told = launch <= deepest && reception <= deepest;
                let field = self.file.reception.as_ref().and_then(|pit| pit.invert_depth.as_ref());
                if let (true, Some(field)) = (told && !(slope.abs() <= STEEPEST), field) {
                    let message = format!("gives a slope of {} %", decimal(100.0 * slope, 0));
                    let why = (message, "give the grade too where the ground is not level");
                    self.flaw_of_length(field, "reception.invert_depth", why);
                }
                (reception, Cited::new(Angle::from_si(slope.atan()), judged))
            }
            (None, Some(grade)) => {
                let reception = launch - length * grade.value.si().tan();
                let as_high = if between.is_empty() { "level" } else { "as high at both pits" };
                self.assume("ground surface", word(&format!("{as_high}: gives the depth at reception")), judged);
                if let (true, Some(field)) = (reception.si() <= 0.0, &self.file.grade) {
                    let read = Shown::of(reception, Role::Depth).display(self.system).to_string();
                    let message = format!(
                        "with this grade the invert comes out of the ground at the reception pit ({read} deep)"
                    );
                    self.flaw_of_length(field, "grade", message);
                } else if let (true, Some(field)) = (reception > deepest.max(launch), &self.file.grade) {
                    let [read, most] = [reception, deepest].map(|d| Shown::of(d, Role::Depth).display(self.system));
                    let message = format!("with this grade the reception pit is {read} deep, more than {most}");
                    self.flaw_of_length(field, "grade", message);
                }
                (reception, grade)
            }
            (None, None) if self.file.service.value == Service::PressureMain => {
                self.assume(
                    "reception.invert_depth",
                    word("as deep as the launch pit: nothing of a main hangs on its grade"),
                    judged,
                );
                (launch, Cited::new(Angle::default(), judged))
            }
            (None, None) => {
                let why = "the depth at the reception pit is missing, and so is the grade";
                let why = (why, "add `reception: { invert_depth: ... }` or `grade: 0.4 %`");
                self.flaw(at_launch, "reception", why);
                return None;
            }
        };
        let mut points = vec![(Length::default(), launch)];
        points.extend(between);
        points.push((length, reception));
        Some(Line { points, grade })
    }

    /// Points between the pits, in order.
    fn between(&mut self, length: Length) -> Option<Vec<(Length, Length)>> {
        if let Some(one_too_many) = self.file.depths.get(MOST_POINTS) {
            let message = format!("more than {MOST_POINTS} depths along the drive");
            self.flaw(&one_too_many.at, &format!("depths[{MOST_POINTS}].at"), message);
            return None;
        }
        let mut points = Vec::new();
        let mut reached = Length::default();
        for (index, point) in self.file.depths.iter().enumerate() {
            let path = format!("depths[{index}]");
            let at = point.at.value;
            let depth = point.invert_depth.value;
            if at <= reached || at >= length && self.length_is_told {
                let why = "expected distances from the launch pit that rise, within the drive";
                self.wrong_at(&path, point, DepthFile::at, why);
            }
            reached = reached.max(at);
            points.push((at, depth));
        }
        Some(points)
    }
}
