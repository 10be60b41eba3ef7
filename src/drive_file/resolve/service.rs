//! A pipe in service: strength of a rigid one by class or from the file, bedding; how far a flexible one may go out of
//! round; traffic by cover.

use super::earth::of_face;
use super::label::same_size;
use super::{Resolved, Resolver, no_row};
use crate::drive::{
    AssumedValue, Concern, Creep, Ends, JackedRing, Pipe, PipeInService, Place, RingInService, Stretch,
};
use crate::drive_file::limits::mm;
use crate::drive_file::{Annulus, CandidateFile, CrushingFile, LoadCode, SurfaceFile, Traffic};
use crate::handbook::{CrushingClassRow, Family, GroundClass, HandbookError, LiveLoadRow, Service};
use crate::law::Law;
use crate::laws::earth_load::{RingBreaks, StrengthOfClass};
use crate::quantity::{Length, LineLoad, Measure, Pressure, Ratio, Role, Shown};
use crate::source::{Cited, Equation, FieldName, Origin};
use crate::yaml::MayBe;

/// What is taken for the traffic over the pipe.
const ROAD: Equation = Equation::judged(
    "traffic over the pipe",
    "highway",
    "a road may come to lie anywhere but under a railway",
    "no railway over the drive",
);

/// What is taken for the space left round a pipe.
const NOT_GROUTED: Equation = Equation::judged(
    "space round a pipe in service",
    "open",
    "grout that is not specified and recorded is not counted",
    "any annulus",
);

/// Row of the table `marston_friction` for a ground: the lower, the more load.
const fn friction_row(class: GroundClass, is_wet: bool) -> &'static str {
    match class {
        GroundClass::LooseSand | GroundClass::MediumToDenseSand | GroundClass::Gravel => "sand_and_gravel",
        GroundClass::FirmToVeryStiffClay | GroundClass::HardClay if !is_wet => "clay",
        _ => "saturated_clay",
    }
}

/// A pipe that bears by its own stiffness and cracks.
const fn is_rigid(pipe: &Pipe) -> bool {
    matches!(pipe.family, Family::Clay | Family::Concrete | Family::PolymerConcrete | Family::FibreCement)
}

/// The strengths of a class at the size of a pipe.
fn of_class(row: Cited<&CrushingClassRow>, candidate: &CandidateFile) -> Strength {
    let of_class = |class_load| StrengthOfClass { class_load, size: candidate.size.value }.value();
    Strength {
        ultimate: row.map(|row| of_class(row.ultimate.value)),
        cracked: row.value.cracked.as_ref().map(|cracked| of_class(cracked.value)),
        by_order: false,
    }
}

/// The strengths that a class or the file gives.
#[derive(Clone, Copy)]
struct Strength {
    ultimate: Cited<LineLoad>,
    cracked: Option<LineLoad>,
    /// Nobody warrants any: the most that can be ordered.
    by_order: bool,
}

/// Inside diameter in m from which pipe of class I is made: 60 in, or DN 1500.
const CLASS_I: f64 = mm(1500.0);

impl Resolver<'_> {
    /// Fills in what rigid pipes bear in service, and the traffic over those that are flexible. `listed` are the pipes of
    /// the file and those that are proposed.
    pub(super) fn in_service(
        &mut self,
        listed: &[CandidateFile],
        stretches: &[Stretch],
        pipes: &mut [Pipe],
    ) -> Resolved<()> {
        // With a faulty candidate the two lists do not go together, and there is no drive anyway.
        if pipes.len() < listed.len() {
            return Ok(());
        }
        let asked = pipes.iter().any(is_rigid) || listed.iter().any(|candidate| candidate.crushing.is_some());
        let friction = if asked { self.side_friction(stretches)? } else { Vec::new() };
        let ends = self.driven_over();
        let rings = self.rings(ends, stretches, pipes)?;
        let traffic = ends.high;
        let code = self.load_code();
        if (asked || rings) && self.file.traffic.is_none() {
            let told = self.field(SurfaceFile::over).is_some();
            let origin = if told { Origin::File(&FieldName("surface.over")) } else { Origin::Law(&ROAD) };
            self.assume_word("traffic", traffic.key(), origin);
        }
        for (index, (candidate, pipe)) in listed.iter().zip(pipes).enumerate() {
            let path = format!("candidates[{index}]");
            let Some(strength) = self.crushing(index, &path, candidate, pipe)? else { continue };
            let service = self.about(Concern::Pipe(index), |it| it.service(&path, candidate, pipe, strength))?;
            let outside_diameter = pipe.outside_diameter.value;
            let along = |traffic: Traffic| -> Resolved<Vec<Option<Place>>> {
                let place = |(stretch, friction): (&Stretch, &Ratio)| {
                    let live = self.live((traffic, code), stretch.way.shallowest - outside_diameter)?;
                    Ok(live.map(|(live, impact)| Place { lateral_friction: *friction, live, impact }))
                };
                stretches.iter().zip(&friction).map(place).collect()
            };
            let ends = Ends {
                low: PipeInService { places: along(ends.low)?, ..service.low },
                high: PipeInService { places: along(ends.high)?, ..service.high },
            };
            pipe.service = Some(Box::new(ends));
        }
        Ok(())
    }

    /// Side pressure times friction of every stretch; that of the worse ground of a mixed face.
    fn side_friction(&mut self, stretches: &[Stretch]) -> Resolved<Vec<Ratio>> {
        let one = |(index, stretch): (usize, &Stretch)| {
            let is_wet = stretch.way.is_wet();
            let of = |class| self.handbook.marston_friction()?.value(friction_row(class, is_wet));
            let lesser = |one: Cited<Ratio>, other: Cited<Ratio>| if other.value < one.value { other } else { one };
            let least = of_face((stretch.class, stretch.mixed_with), of, lesser)?;
            let shown = AssumedValue::One(Shown::of(least.value, Role::Ratio));
            let what = "earth load in service, side pressure times friction";
            self.assume_alike(&format!("ground[{index}]"), what, shown, least.origin);
            Ok(least.value)
        };
        stretches.iter().enumerate().map(one).collect()
    }

    /// Strength that is told, else the least and the most that the standard of its material has for its size, of polymer
    /// concrete what its wall bears at most. Fibre cement has none that is known: it stays missing.
    fn crushing(
        &mut self,
        index: usize,
        path: &str,
        candidate: &CandidateFile,
        pipe: &Pipe,
    ) -> Resolved<Option<Ends<Strength>>> {
        let Some(field) = &candidate.crushing else {
            if let Some(usual) = self.usual_crushing(candidate, pipe)? {
                let [low, high] = [usual.low, usual.high].map(|strength| strength.ultimate);
                let least = if usual.low.by_order { LineLoad::default() } else { low.value };
                let value = AssumedValue::range(least, high.value, Role::LineWeight);
                self.about(Concern::Pipe(index), |it| it.assume(format!("{path}.crushing"), value, low.origin));
                return Ok(Some(usual));
            }
            if let Some(annulus) = &candidate.annulus {
                let why = ("says nothing without the crushing strength of the pipe", "add `crushing: 60 kN/m`");
                self.flaw(annulus, &format!("{path}.annulus"), why);
            }
            return Ok(None);
        };
        let place = format!("{path}.crushing");
        if pipe.family == Family::Pe {
            self.flaw(field, &place, "a flexible pipe is not tested for crushing");
            return Ok(None);
        }
        let key = match &field.value {
            CrushingFile::Strength(strength) => {
                if !(strength.si() > 0.0 && strength.si().is_finite()) {
                    let why = "expected a force per length above zero";
                    self.flaw(field, &place, (why, "write for example \"60 kN/m\""));
                }
                let ultimate = Cited::given(*strength, &FieldName("candidates[].crushing"));
                return Ok(Some(Ends::same(Strength { ultimate, cracked: None, by_order: false })));
            }
            CrushingFile::Class(key) => key,
        };
        let table = self.handbook.crushing_class()?;
        let Some(row) = table.get(key) else {
            let known = table.rows.iter().map(|row| row.key.as_str()).collect::<Vec<_>>().join(", ");
            let why = format!("there is no crushing class \"{key}\"");
            self.flaw(field, &place, (why, format!("write one of: {known}; or the strength itself")));
            return Ok(None);
        };
        let of_clay = row.value.standard.value.0 == "EN 295-1";
        let of_concrete = matches!(row.value.standard.value.0.as_str(), "ASTM C76" | "EN 1916");
        if (pipe.family == Family::Clay && of_concrete) || (pipe.family != Family::Clay && of_clay) {
            let why = format!("is a class of {}, which is for another material", row.value.standard.value.0);
            self.flaw(field, &place, why);
            return Ok(None);
        }
        Ok(Some(Ends::same(of_class(row, candidate))))
    }

    /// The least and the most that a pipe of this material and size usually has.
    fn usual_crushing(&self, candidate: &CandidateFile, pipe: &Pipe) -> Resolved<Option<Ends<Strength>>> {
        let classes = |low, high| -> Resolved<Ends<Strength>> {
            let table = self.handbook.crushing_class()?;
            let class = |key| Ok::<_, HandbookError>(of_class(table.row(key)?, candidate));
            Ok(Ends { low: class(low)?, high: class(high)? })
        };
        match pipe.family {
            // What the tables have is pipe for trenches. The wall of one that is jacked is thicker, and bears what it bends.
            Family::Clay => {
                let size = candidate.size.value;
                let row = self.handbook.clay_crushing()?.find(|row| same_size(row.size.value, size));
                let trench = match row {
                    Some(row) => {
                        let ultimate = row.map(|row| row.strength.value);
                        Ends::same(Strength { ultimate, cracked: None, by_order: false })
                    }
                    None => classes("en_295_95", "en_295_160")?,
                };
                let outside_diameter = pipe.outside_diameter.value;
                let wall = (outside_diameter - candidate.inside_diameter.given().unwrap_or(size)) / 2.0;
                let bending = self.handbook.pressure("clay.bending")?;
                let ring = RingBreaks { strength: bending.value, outside_diameter, wall };
                let bears = Cited::new(ring.value(), bending.origin);
                let better = ring.in_range() && bears.value > trench.high.ultimate.value;
                let high =
                    if better { Strength { ultimate: bears, cracked: None, by_order: false } } else { trench.high };
                Ok(Some(Ends { high, ..trench }))
            }
            // Its wall bears what it bends, and nothing less is warranted.
            Family::PolymerConcrete => {
                let outside_diameter = pipe.outside_diameter.value;
                let inside = pipe.jacked.as_ref().and_then(|jacked| jacked.inside_diameter);
                let wall = (outside_diameter - inside.unwrap_or(candidate.size.value)) / 2.0;
                let bending = self.handbook.pressure("polymer_concrete.bending")?;
                let ring = RingBreaks { strength: bending.value, outside_diameter, wall };
                let ultimate = Cited::new(ring.value(), bending.origin);
                Ok(ring.in_range().then(|| Ends::same(Strength { ultimate, cracked: None, by_order: true })))
            }
            // The least class is made in wide pipe alone.
            Family::Concrete if candidate.size.value.si() < CLASS_I => Ok(Some(classes("c76_ii", "c76_v")?)),
            Family::Concrete => Ok(Some(classes("c76_i", "c76_v")?)),
            _ => Ok(None),
        }
    }

    /// Everything but the places: the load that is least and the strength that is most, and the other way round.
    fn service(
        &mut self,
        path: &str,
        candidate: &CandidateFile,
        pipe: &Pipe,
        strength: Ends<Strength>,
    ) -> Resolved<Ends<PipeInService>> {
        let factors = self.handbook.earth_load_factor()?;
        let beddings = self.handbook.bedding_factor()?;
        let lengths = self.handbook.earth_load_length()?;
        let annulus = candidate.annulus.given();
        if annulus.is_none() {
            self.assume_word(format!("{path}.annulus"), Annulus::Open.key(), Origin::Law(&NOT_GROUTED));
        }
        let overcut = self.handbook.hole_overcut()?;
        let low = overcut.cell("guided_stable", |row| &row.low)?;
        let high = overcut.row("guided_stable")?.map(|row| row.high.value);
        let bores = match &candidate.bore {
            Some(_) => Ends::same(pipe.bore.value),
            None => {
                let bores = Ends { low: low.value, high: high.value }.map(|radius| pipe.bore.value + 2.0 * radius);
                let what = format!("{path}: bore that the earth load hangs in");
                self.assume(what, AssumedValue::range(bores.low, bores.high, Role::Diameter), high.origin);
                bores
            }
        };
        // With no more than the usual overcut round it the ground comes to lie on its sides.
        let is_loose = bores.high > pipe.bore.value.min(pipe.outside_diameter.value) + 2.0 * high.value;
        let bedding = |annulus| match annulus {
            Annulus::Grouted => "jacked_grouted",
            Annulus::Open if candidate.bore.is_some() && is_loose => "class_d",
            Annulus::Open => "jacked_not_grouted",
        };
        let earth = beddings.factor(bedding(annulus.unwrap_or_default()), |row| &row.value)?;
        let best = beddings.factor(bedding(annulus.unwrap_or(Annulus::Grouted)), |row| &row.value)?;
        let live = beddings.factor("live_default", |row| &row.high)?;
        self.assume_one(format!("{path}: bedding factor of the earth load"), earth, Role::Ratio);
        let safety = factors.factor("strength_safety", |row| &row.value)?;
        self.assume_one(format!("{path}: factor on the crushing strength"), safety, Role::Ratio);
        let crack_safety = factors.factor("crack_safety", |row| &row.value)?;
        let floor_bores = factors.factor("floor_column", |row| &row.high)?.value;
        let cohesion_from = lengths.value("cohesion_from")?.value;
        let end = |strength: Strength, bore, bedding: Ratio| PipeInService {
            strength: strength.ultimate,
            by_order: strength.by_order,
            safety: safety.value,
            cracked: strength.cracked.map(|cracked| (cracked, crack_safety.value)),
            bore,
            earth_bedding: bedding,
            live_bedding: live.value.min(bedding),
            floor_bores,
            cohesion_from,
            places: Vec::new(),
        };
        Ok(Ends { low: end(strength.high, bores.low, best.value), high: end(strength.low, bores.high, earth.value) })
    }

    /// Pressure of traffic and impact on it at a cover; `None` above the least cover of the table.
    pub(super) fn live(
        &self,
        (traffic, code): (Traffic, LoadCode),
        cover: Length,
    ) -> Resolved<Option<(Pressure, Ratio)>> {
        let loads: &[&str] = match (traffic, code) {
            (Traffic::None, _) => return Ok(Some((Pressure::default(), Ratio::from(1.0)))),
            // The older load is the greater where the other has no row.
            (Traffic::Highway, LoadCode::Us) => &["H-20", "HL-93"],
            (Traffic::Railway, LoadCode::Us) => &["E-80"],
            (Traffic::Highway, LoadCode::En1991) => &["LM1"],
            (Traffic::Railway, LoadCode::En1991) => &["LM71"],
            (Traffic::Aircraft, _) => &["180 kip gear"],
        };
        let mut most: Option<(Pressure, Ratio)> = None;
        for load in loads {
            let one = self.live_load(traffic, load, cover)?;
            let presses = |(pressure, impact): (Pressure, Ratio)| pressure * impact;
            if one.map(presses) > most.map(presses) {
                most = one;
            }
        }
        Ok(most)
    }

    /// Pressure of one load under a cover, and impact on it; none where the cover is less than its rows have.
    fn live_load(&self, traffic: Traffic, load: &str, cover: Length) -> Resolved<Option<(Pressure, Ratio)>> {
        let table = self.handbook.live_load()?;
        let (mut over, mut under) = (None, None);
        for row in table.rows.iter().map(|row| &row.value).filter(|row| row.load.value.0 == load) {
            let nearer = |than: Option<&LiveLoadRow>| {
                than.is_none_or(|than| (row.cover.value - cover).abs() < (than.cover.value - cover).abs())
            };
            let end = if row.cover.value <= cover { &mut over } else { &mut under };
            if nearer(*end) {
                *end = Some(row);
            }
        }
        let Some(row) = over else { return Ok(None) };
        // Even in between, as tables are read; below the last row no less than there. What may lack its impact keeps the row above.
        let is_whole = row.impact.value.0 != "not said";
        let pressure = under.filter(|_| is_whole).map_or(row.pressure.value, |under| {
            let share: Ratio = (cover - row.cover.value) / (under.cover.value - row.cover.value);
            row.pressure.value + (under.pressure.value - row.pressure.value) * share
        });
        if row.impact.value.0 == "included" {
            return Ok(Some((pressure, Ratio::from(1.0))));
        }
        let bands = self.handbook.impact_factor()?.rows.iter().filter(|band| {
            // The European railway has bands of its own.
            (band.value.load.value.0 == load || (load != "LM71" && band.value.load.value.0 == traffic.key()))
                && band.value.cover_from.value <= cover
                && band.value.cover_to.given().is_none_or(|to| cover <= to)
        });
        let impact = bands.map(|band| band.value.factor.value).reduce(Ratio::max);
        let impact = impact.ok_or_else(|| no_row("impact_factor", traffic.key()))?;
        let class = if load == "LM71" { self.handbook.ratio("rail.class")?.value } else { Ratio::from(1.0) };
        Ok(Some((pressure, impact * class)))
    }
}

/// A dimension ratio that falls short of a row by the rounding of diameter and wall is that of the row.
const ROUNDED: f64 = 0.97;

impl Resolver<'_> {
    /// What drives over the pipe: a road or nothing where the file does not tell.
    pub(super) fn driven_over(&self) -> Ends<Traffic> {
        let over = self.given(SurfaceFile::over);
        let told = self.file.traffic.given().or(over.map(Traffic::of));
        told.map_or(Ends { low: Traffic::None, high: Traffic::Highway }, Ends::same)
    }

    /// Whose rules of traffic count.
    pub(super) fn load_code(&self) -> LoadCode {
        self.file.load_code.given().unwrap_or_default()
    }

    /// Fills in what every flexible pipe meets in service; false where there is none.
    fn rings(&self, traffic: Ends<Traffic>, stretches: &[Stretch], pipes: &mut [Pipe]) -> Resolved<bool> {
        let code = self.load_code();
        let shaken = matches!(traffic.high, Traffic::Railway | Traffic::Aircraft);
        let width = self.handbook.ratio("arch.width")?.value;
        let arch = (!shaken).then_some((self.handbook.length("arch.cover")?.value, width));
        let mut any = false;
        for pipe in pipes.iter_mut() {
            let jacked = self.jacked_ring(pipe)?;
            if pipe.pulled.is_none() && jacked.is_none() {
                continue;
            }
            let outside_diameter = pipe.outside_diameter.value;
            let along = |traffic: Traffic| -> Resolved<Vec<[Option<Pressure>; 2]>> {
                let live = |depth| -> Resolved<Option<Pressure>> {
                    let live = self.live((traffic, code), depth - outside_diameter)?;
                    Ok(live.map(|(pressure, impact)| pressure * impact))
                };
                let ways = stretches.iter().map(|stretch| &stretch.way);
                ways.map(|way| Ok([live(way.shallowest)?, live(way.deepest)?])).collect()
            };
            let ring = RingInService {
                traffic: Ends { low: along(traffic.low)?, high: along(traffic.high)? },
                deflection: self.most_deflection(self.file.service.value, traffic.high, pipe)?,
                jacked,
                arch,
            };
            pipe.ring = Some(Box::new(ring));
            any = true;
        }
        Ok(any)
    }

    /// The ring of a flexible pipe that is pushed; `None` of a rigid one, and of one whose wall is not known.
    fn jacked_ring(&self, pipe: &Pipe) -> Resolved<Option<JackedRing>> {
        let Some(wall) = pipe.pushed_wall() else { return Ok(None) };
        let (whole, none) = (Ratio::from(1.0), Ratio::default());
        let creep = if pipe.family == Family::Pvc { Some(self.pvc_creep()?) } else { None };
        let (modulus, share, poisson) = match (pipe.family, creep) {
            (_, Some(Creep { short: (_, short), long: (_, long) })) => {
                (long, long / short, self.handbook.pvc_ratio()?.value("poisson")?.value)
            }
            (Family::Steel, _) => (self.handbook.steel_pull_stress()?.value("modulus")?.value, whole, none),
            (Family::DuctileIron, _) => (self.handbook.pressure("iron.modulus")?.value, whole, none),
            (Family::Grp, _) => (self.handbook.pressure("grp.modulus_long")?.value, whole, none),
            _ => return Ok(None),
        };
        Ok(Some(JackedRing { wall, modulus, creep, share, poisson }))
    }

    /// How far a pipe may go out of round in service.
    fn most_deflection(&self, service: Service, traffic: Traffic, pipe: &Pipe) -> Resolved<Ends<Cited<Ratio>>> {
        let table = self.handbook.deflection_limit()?;
        let one = |key| Ok(Ends::same(table.row(key)?.map(|row| row.most.value)));
        let main = service == Service::PressureMain;
        match (pipe.family, &pipe.pulled) {
            (Family::Pe, Some(pulled)) if main => {
                let ratio = pipe.outside_diameter.value / pulled.wall();
                // Of what is thicker than any row the thickest.
                let rows =
                    || table.iter().filter_map(|row| Some((row.value.value.ratio_from.as_ref()?.value.si(), row)));
                let fits = rows().filter(|(from, _)| from * ROUNDED <= ratio.si());
                let closest = fits.max_by(|one, other| one.0.total_cmp(&other.0));
                let row = closest.or_else(|| rows().min_by(|one, other| one.0.total_cmp(&other.0)));
                match row {
                    Some((_, row)) => Ok(Ends::same(row.map(|row| row.value.most.value))),
                    None => one("plastic_gravity"),
                }
            }
            (Family::Pvc | Family::PvcFused | Family::PvcRestrained, _) if main => one("pvc_pressure"),
            (Family::DuctileIron, _) => one("iron_cement"),
            (Family::Steel, _) if service == Service::Casing && traffic == Traffic::Railway => one("casing_rail"),
            (Family::Steel, _) if service == Service::Casing => one("steel_bare"),
            (Family::Steel, _) => {
                let [least, most] = ["steel_lined_and_coated", "steel_bare"].map(one);
                Ok(Ends { low: least?.low, high: most?.high })
            }
            (Family::Grp, _) => one("grp"),
            _ => one("plastic_gravity"),
        }
    }
}
