//! The figures of a pipe beside each other: what no pipe of its material has is a slip, what few have is told.

use super::bounds::{Range, range};
use super::listed::Listed;
use super::{Resolved, Resolver};
use crate::drive::{Pipe, PulledPipe};
use crate::drive_file::limits::{m, mm, mpa};
use crate::drive_file::{CandidateFile, PullFile};
use crate::handbook::Family;
use crate::quantity::unit::STANDARD_GRAVITY;
use crate::quantity::{Area, Force, Length, LineLoad, Measure, Pressure, Ratio};
use crate::yaml::{Field, MayBe};

/// Usual outside diameter over wall.
const fn usual_slenderness(family: Family, is_pulled: bool) -> (f64, f64) {
    match family {
        Family::Steel if is_pulled => (15.0, 100.0),
        Family::Steel => (15.0, 150.0),
        Family::Pe => (7.0, 33.0),
        Family::Pvc | Family::PvcFused | Family::PvcRestrained => (14.0, 41.0),
        Family::DuctileIron => (15.0, 90.0),
        Family::Clay => (6.0, 14.0),
        Family::Concrete => (5.0, 14.0),
        Family::PolymerConcrete => (5.0, 16.0),
        Family::Grp => (15.0, 60.0),
        Family::FibreCement => (7.0, 20.0),
    }
}

/// Possible and usual strength in compression, in MPa.
const fn strength(family: Family) -> Option<((f64, f64), (f64, f64))> {
    match family {
        Family::Concrete => Some(((15.0, 150.0), (30.0, 80.0))),
        Family::PolymerConcrete => Some(((40.0, 200.0), (80.0, 150.0))),
        Family::Grp => Some(((30.0, 200.0), (60.0, 120.0))),
        _ => None,
    }
}

/// The most that pipe of a material bears along its axis, in Pa: the best of its range, tensile strength for iron.
const fn strongest(family: Family) -> Option<f64> {
    match family {
        Family::Clay => Some(mpa(150.0)),
        Family::DuctileIron => Some(mpa(420.0)),
        Family::Pvc | Family::PvcFused | Family::PvcRestrained => Some(mpa(100.0)),
        Family::FibreCement => Some(mpa(100.0)),
        Family::Concrete | Family::PolymerConcrete | Family::Grp => match strength(family) {
            Some(((_, most), _)) => Some(mpa(most)),
            None => None,
        },
        Family::Pe | Family::Steel => None,
    }
}

/// Section of a barrel, in m².
fn section_of(outside: Length, wall: Length) -> Option<f64> {
    (wall.si() > 0.0).then(|| core::f64::consts::PI * (outside - wall).si() * wall.si())
}

/// The same where its wall is known.
fn section(pipe: &Pipe) -> Option<f64> {
    let wall = pipe.pushed_wall().or_else(|| pipe.pulled.as_ref().map(PulledPipe::wall))?;
    section_of(pipe.outside_diameter.value, wall)
}

/// The same, about, of clay pipe whose wall nobody tells: its size is its bore.
fn ring(pipe: &Pipe) -> Option<f64> {
    let outside = pipe.outside_diameter.value;
    let by_bore = || section_of(outside, (outside - pipe.nominal) / 2.0).filter(|_| pipe.family == Family::Clay);
    section(pipe).or_else(by_bore)
}

/// Row of the table `pipe_density`.
const fn density(family: Family) -> &'static str {
    match family {
        Family::Clay => "clay",
        Family::Concrete => "concrete",
        Family::PolymerConcrete => "polymer_concrete",
        Family::Steel => "steel",
        Family::DuctileIron => "ductile_iron",
        Family::Pe => "pe",
        Family::Pvc | Family::PvcFused | Family::PvcRestrained => "pvc",
        Family::Grp => "grp",
        Family::FibreCement => "fibre_cement",
    }
}

impl Resolver<'_> {
    /// Holds what the file gives of a pipe against the pipe that it makes.
    pub(super) fn proportions(&mut self, of: &Listed<'_>, pipe: &Pipe) -> Resolved<()> {
        const OUTSIDE: &str = "the outside diameter of the pipe";
        const BARREL: &str = "the section of the pipe";
        let block = (of.path, of.pipe);
        let outside = pipe.outside_diameter.value.si();
        let size = of.size.si();
        let times = |least: f64, most: f64| range::<Length>(least * outside, most * outside);
        let is_pulled = pipe.pulled.is_some();
        self.beside(block, CandidateFile::outside_diameter, range(0.9 * size, 1.6 * size), None, "its size");
        self.beside(block, CandidateFile::inside_diameter, times(0.3, 0.99), None, OUTSIDE);
        if matches!(pipe.family, Family::Clay | Family::Concrete) {
            // The size of these is their bore.
            self.beside(block, CandidateFile::inside_diameter, range(0.95 * size, 1.05 * size), None, "its size");
            let walls = range((outside - 1.1 * size) / 2.0, (outside - 0.9 * size) / 2.0);
            self.beside(block, CandidateFile::wall, walls, None, "its size and outside diameter");
        }
        let (thin, thick) = usual_slenderness(pipe.family, is_pulled);
        self.beside(block, CandidateFile::wall, times(0.0, 0.35), times(1.0 / thick, 1.0 / thin), OUTSIDE);
        if let Some(section) = section(pipe) {
            let whole = section * self.density(density(pipe.family))?.value.si() * STANDARD_GRAVITY;
            let weight = |least: f64, most: f64| -> Range<LineLoad> { range(least * whole, most * whole) };
            // A lining of mortar may double the weight of a thin pipe.
            let lined = matches!(pipe.family, Family::DuctileIron | Family::Steel);
            let (possible, usual) = if lined { ((0.5, 3.0), (0.85, 2.0)) } else { ((0.5, 1.5), (0.85, 1.25)) };
            let (possible, usual) = (weight(possible.0, possible.1), weight(usual.0, usual.1));
            self.beside(block, CandidateFile::weight, possible, usual, BARREL);
            let area = |least: f64, most: f64| range::<Area>(least * section, most * section);
            let whole = if pipe.family == Family::Steel { 1.0 } else { 0.9 };
            // A thickness that is rounded makes the barrel a little more than it is.
            self.beside(block, CandidateFile::end_bearing_area, area(0.1, 1.02), area(0.4, whole), BARREL);
        }
        self.beside(block, CandidateFile::end_squareness, times(0.0, 0.03), None, OUTSIDE);
        self.beside(block, CandidateFile::joint_diameter, times(0.0, 1.6), times(0.0, 1.35), OUTSIDE);
        let wider = |least: f64, most: f64| range::<Length>(outside + least, outside + most);
        // A casing that the pipe drives out before it is as wide as the pipe.
        self.beside(block, CandidateFile::casing, wider(mm(-1.0), m(4.0)), wider(mm(-1.0), mm(400.0)), OUTSIDE);
        if let Some(casing) = pipe.casing_diameter() {
            let most = range::<Length>(0.0, 0.2 * casing.si());
            self.beside(block, CandidateFile::casing_wall, most, None, "the diameter of the casing");
        }
        let before = pipe.casing_diameter().map_or(outside, Measure::si).max(pipe.widest.value.si());
        let (possible, usual) = if is_pulled && pipe.jacked.is_none() {
            let most = (1.6 * before).max(before + mm(110.0));
            (range::<Length>(0.0, 3.0 * before), range::<Length>(1.2 * before, most))
        } else {
            (range::<Length>(0.0, 3.0 * before), range::<Length>(before, before + mm(60.0)))
        };
        self.beside(block, CandidateFile::bore, possible, usual, OUTSIDE);
        let drive = self.file.length.value.si();
        let lengths = match (is_pulled, pipe.family) {
            (true, _) => (3.0, 12.0),
            (false, Family::Steel) => (0.75, 12.0),
            (false, Family::DuctileIron | Family::Pvc | Family::Grp) => (0.75, 6.2),
            (false, _) => (0.75, 4.0),
        };
        let usual = range::<Length>(m(lengths.0), m(lengths.1).min(drive));
        self.beside(block, CandidateFile::pipe_length, None, usual, "the length of the drive");
        if let Some((possible, usual)) = strength(pipe.family) {
            let (possible, usual) = (range(mpa(possible.0), mpa(possible.1)), range(mpa(usual.0), mpa(usual.1)));
            self.beside(block, CandidateFile::strength, possible, usual, "the material");
        }
        if let Some(cylinder) = of.pipe.strength.given().map(Measure::si) {
            let times = |least: f64, most: f64| range::<Pressure>(least * cylinder, most * cylinder);
            let beside = "the strength on cylinders";
            self.beside(block, CandidateFile::cube_strength, times(1.05, 1.4), times(1.15, 1.25), beside);
        }
        let ratios = match pipe.family {
            Family::Pe => range::<Ratio>(7.3, 26.0),
            _ => range::<Ratio>(14.0, 41.0),
        };
        self.beside(block, CandidateFile::sdr, None, ratios, "the material");
        if let Some(pull) = self.file.pull.as_ref().filter(|_| is_pulled) {
            let radius = |least: f64, most: f64| range::<Length>(least * outside, most * outside);
            let possible = range(3.0 * outside, f64::INFINITY);
            self.beside(("pull", pull), PullFile::bend_radius, possible, radius(20.0, 1_500.0), OUTSIDE);
        }
        self.by_strength(of, pipe);
        Ok(())
    }

    /// Forces beside what they act on, and strengths beside the grade.
    fn by_strength(&mut self, of: &Listed<'_>, pipe: &Pipe) {
        let (block, given) = ((of.path, of.pipe), of.pipe);
        let si = |field: &Option<Field<Pressure>>| field.given().map(Measure::si);
        let ring = ring(pipe);
        let area = given.end_bearing_area.given().map(Measure::si).or(ring);
        if let Some((area, strength)) = area.zip(si(&given.strength).or(strongest(pipe.family))) {
            let most = area * strength / 1.5;
            let (possible, usual) = (range::<Force>(0.0, most), range::<Force>(0.0, most / 2.0));
            self.beside(block, CandidateFile::rated_force, possible, usual, "end area and strength");
        }
        if let Some((ring, strength)) = ring.zip(strongest(pipe.family)) {
            let most = range::<Force>(0.0, ring * strength);
            self.beside(block, CandidateFile::joint_pull, most, None, "what the barrel bears");
        }
        if let Some((casing, wall)) = pipe.casing_diameter().zip(given.casing_wall.as_ref()) {
            let wall = wall.value.si();
            let section = core::f64::consts::PI * (casing.si() - wall) * wall;
            let most = section * si(&given.casing_yield_strength).unwrap_or(mpa(485.0));
            let most = range::<Force>(0.0, most);
            self.beside(block, CandidateFile::casing_joint_thrust, most, None, "the section of the casing at yield");
        }
        // C50 is 50 MPa on cubes in China and on cylinders in C50/60, type 50 is 50 MPa on cylinders.
        let grade = given.concrete_grade.as_ref().map(|grade| grade.value.0.as_str()).unwrap_or_default();
        let number = |prefix| grade.strip_prefix(prefix).and_then(|number| number.parse::<f64>().ok()).map(mpa);
        let near = |strength: f64| range::<Pressure>(0.9 * strength, 1.1 * strength);
        if let Some(cube) = number("c") {
            self.beside(block, CandidateFile::cube_strength, range(0.9 * cube, 1.35 * cube), None, "the grade");
            self.beside(block, CandidateFile::strength, range(0.72 * cube, 1.1 * cube), None, "the grade");
        }
        if let Some(cylinder) = number("type_") {
            self.beside(block, CandidateFile::strength, near(cylinder), None, "the grade");
        }
    }
}
