//! Every number of the file within what it may be at all and beside the others of the file, and what lies beyond the
//! usual.

use super::{Resolved, Resolver};
use crate::drive::{Concern, Unusual};
use crate::drive_file::examples::example;
use crate::drive_file::fields::{Bounds, FileNumber, Given, Key, Value, within};
use crate::drive_file::limits::{STEEPEST_BARE, kpa, m, mpa, pa};
use crate::drive_file::{
    AnnulusFile, CollapsedBoreFile, DriveFile, Filling, PitFile, PitSpaceFile, PullFile, PushAssistFile, RigFile,
    SoilFile, StemFile, StretchFile, WallFile,
};
use crate::handbook::{GroundClass, Lubrication};
use crate::quantity::shown::plain;
use crate::quantity::{Area, Force, Length, Measure, Pressure, Role, Shown, unit};
use crate::yaml::{Complaint, MayBe};

/// A round number of one family of units may be so much beyond that of the other.
const ROUND: f64 = 1.02;

/// Where most slips are.
pub(super) const SLIP: &str = "check the unit and the decimal point";

impl Resolver<'_> {
    /// Holds every number of the file against the bounds of its field.
    pub(super) fn within_bounds(&mut self) {
        if let Some(spec) = DriveFile::FIELDS.first() {
            self.file.numbers(spec, &mut String::new(), &mut |told| self.held(told));
        }
    }

    /// Holds one number against the bounds of its field.
    fn held(&mut self, told: &FileNumber<'_>) {
        let shown = Shown { si: told.si, role: told.number.role };
        if !told.number.bounds.hold(told.si) {
            let complaint = self.out_of_bounds(told);
            self.senseless(told.at, told.path, complaint);
        } else if told.is_bare && told.number.role == Role::Slope && told.si.abs() > STEEPEST_BARE {
            let (bare, percent) = (plain(told.si), plain(told.si * 100.0));
            let why = format!("expected a slope with its %, got {bare}, which is {percent} %");
            let advice = format!("write \"{bare} %\", or \"{percent} %\" if that is meant");
            self.senseless(told.at, told.path, (why, advice).into());
        } else if let Some((least, most)) = told.number.usual.filter(|_| told.is_judged) {
            self.beyond_usual(told.path, shown, (least, most));
        }
    }

    /// Tells of a value that is beyond what is usual.
    fn beyond_usual(&mut self, path: &str, value: Shown, (least, most): (f64, f64)) {
        // Round numbers of either family of units are within: 6 in for 150 mm, 20 ft for 6 m.
        let (from, to) = (least.min(least / ROUND), most * ROUND);
        if !within(value.si, from, to) {
            let usual = [least, most].map(|si| Shown { si, role: value.role });
            let concern = concern(path);
            self.unusual.push(Unusual { concern, field: path.to_owned(), value, usual });
        }
    }

    fn out_of_bounds(&self, told: &FileNumber<'_>) -> Complaint {
        let role = told.number.role;
        let shown = |si| Shown { si, role }.display(told.written_in.unwrap_or_default());
        let (what, _) = unit::describe(role.dim());
        let example = || {
            let example = example(told.path, role.dim(), told.written_in.unwrap_or(self.system));
            format!("write for example \"{example}\"")
        };
        let slip = || SLIP.to_owned();
        let (expected, advice) = match told.number.bounds {
            _ if !told.si.is_finite() => ("that is finite".to_owned(), example()),
            Bounds::UpTo(most) if told.si > most => (format!("of at most {}", shown(most)), slip()),
            Bounds::Within(least, _) if least > 0.0 && told.si <= 0.0 => ("above zero".to_owned(), example()),
            Bounds::Within(least, _) if least == 0.0 && told.si < 0.0 => ("of zero or more".to_owned(), example()),
            Bounds::Within(least, most) => (format!("from {} to {}", shown(least), shown(most)), slip()),
            Bounds::UpTo(_) => ("above zero".to_owned(), example()),
        };
        (format!("expected {what} {expected}, got {}", shown(told.si)), advice).into()
    }
}

/// What a value of the file concerns, by its block.
fn concern(path: &str) -> Concern {
    let block = path.split(['.', '[']).next().unwrap_or_default();
    match block {
        "stem" => Concern::Stem,
        "ground" => Concern::Ground,
        "tolerance" | "half_wave" | "design_flow" => Concern::Grade,
        "face" | "cutting_edge" | "steering" | "plug" | "lubricant_pressure" => Concern::Jacking,
        "pull" | "annulus" | "vacuum" => Concern::Pull,
        "candidates" => {
            let index = path.split(['[', ']']).nth(1).and_then(|index| index.parse().ok());
            index.map_or(Concern::Drive, Concern::Pipe)
        }
        _ => Concern::Drive,
    }
}

/// Least and greatest.
pub(super) type Range<Q> = Option<[Q; 2]>;

/// A range of quantities out of numbers in SI base units.
pub(super) fn range<Q: Measure>(least: f64, most: f64) -> Range<Q> {
    Some([Q::from_si(least), Q::from_si(most)])
}

/// High unit friction below this is a slip of unit: the least that was met is twenty times as much.
const LEAST_FRICTION: f64 = pa(100.0);

/// Undrained strength that clay of a class usually has.
const fn usual_strength(class: GroundClass) -> Option<(f64, f64)> {
    match class {
        GroundClass::SoftClay => Some((kpa(1.0), kpa(40.0))),
        GroundClass::FirmToVeryStiffClay => Some((kpa(15.0), kpa(300.0))),
        GroundClass::HardClay => Some((kpa(130.0), kpa(800.0))),
        _ => None,
    }
}

/// Friction angle that ground of a class usually has, in degrees.
const fn usual_angle(class: GroundClass) -> Option<(f64, f64)> {
    match class {
        GroundClass::SoftClay | GroundClass::FirmToVeryStiffClay | GroundClass::HardClay => Some((15.0, 32.0)),
        GroundClass::Silt => Some((24.0, 36.0)),
        GroundClass::LooseSand | GroundClass::MediumToDenseSand => Some((27.0, 43.0)),
        GroundClass::Gravel => Some((32.0, 46.0)),
        GroundClass::Fill | GroundClass::Peat => Some((10.0, 35.0)),
        GroundClass::WeakRock | GroundClass::HardRock | GroundClass::Unknown => None,
    }
}

impl Resolver<'_> {
    /// Holds a number against what others let it be and what they make usual. `beside` names them.
    pub(super) fn beside<B, Q: Measure, V: Given<Q>>(
        &mut self,
        (path, block): (&str, &B),
        key: Key<B, V>,
        possible: Range<Q>,
        usual: Range<Q>,
        beside: &str,
    ) {
        let Some(number) = key.spec.number else { return };
        let within = |[least, most]: [Q; 2], value: Q| within(value.si(), least.si(), most.si());
        (key.get)(block).made(|field| {
            let at = if path.is_empty() { key.spec.key.to_owned() } else { format!("{path}.{}", key.spec.key) };
            // One slip, one fault.
            if self.flaws.iter().any(|told| told.path == at) {
                return;
            }
            match (possible, usual) {
                (Some(ends), _) if !within(ends, field.value) => {
                    let (what, _) = unit::describe(Q::DIM);
                    let shown =
                        |value| Shown::of(value, number.role).display(field.written_in().unwrap_or(self.system));
                    let ([least, most], read) = (ends.map(shown), shown(field.value));
                    let why = format!("expected {what} from {least} to {most} beside {beside}, got {read}");
                    self.flaw(field, &at, (why, SLIP));
                }
                (_, Some([least, most])) => {
                    self.beyond_usual(&at, Shown::of(field.value, number.role), (least.si(), most.si()));
                }
                (_, None) => {}
            }
        });
    }

    /// What is told of rig, stem, pits and ground, each beside what it depends on.
    pub(super) fn beside_each_other(&mut self) -> Resolved<()> {
        let rig = ("rig", self.file.machine());
        if let Some(thrust) = rig.1.thrust.given().map(Measure::si) {
            let area = |most: f64, least: f64| range::<Area>(thrust / mpa(most), thrust / mpa(least));
            self.beside(rig, RigFile::cylinder_area, area(100.0, 1.0), area(70.0, 10.0), "the thrust of the rig");
        }
        if let Some(stem) = &self.file.stem {
            self.stem_beside(stem);
        }
        self.pit_beside("launch", &self.file.launch, self.file.launch.depth());
        if let Some(pit) = &self.file.reception {
            self.pit_beside("reception", pit, pit.depth());
        }
        for (index, stretch) in self.file.ground.iter().enumerate() {
            self.stretch_beside(&format!("ground[{index}]"), stretch, self.file.lubricated());
        }
        if let Some(soil) = &self.file.launch.soil {
            self.clay_beside("launch.soil", soil, None, None);
        }
        let assist = self.file.pull.as_ref().and_then(|pull| pull.push_assist.as_ref());
        if let Some(pull) = &self.file.pull {
            let depths = [Some(&self.file.launch), self.file.reception.as_ref()].into_iter().flatten();
            let deepest = depths.filter_map(|pit| pit.depth()).map(Measure::si).fold(0.0, f64::max);
            let level = range::<Length>(0.0, deepest);
            self.beside(("pull", pull), PullFile::fluid_level, level, None, "the depth of the pits");
            if let Some(collapsed) = &pull.collapsed_bore {
                let whole = range::<Length>(0.0, self.file.length.value.si());
                let block = ("pull.collapsed_bore", collapsed);
                self.beside(block, CollapsedBoreFile::length, whole, None, "the length of the drive");
            }
        }
        if let Some(annulus) = &self.file.annulus {
            let filled = annulus.filling.given() == Some(Filling::Grouted);
            // Without grout it is no more than the native ground gives at its best.
            let table = self.handbook.class_soil()?;
            let of = |stretch: &StretchFile| table.find(|row| row.ground.value == stretch.class.value);
            let native = self.file.ground.iter().filter_map(of).map(|row| row.value.native_high.value.si());
            let native = native.fold(mpa(20.0), f64::min);
            let usual = range::<Pressure>(0.0, if filled { mpa(20.0) } else { native });
            self.beside(("annulus", annulus), AnnulusFile::soil_modulus, None, usual, "the ground");
        }
        if let (Some(assist), Some(pull)) = (assist, rig.1.pull.given()) {
            let usual = range::<Force>(0.0, 0.5 * pull.si());
            self.beside(("pull.push_assist", assist), PushAssistFile::force, None, usual, "the pull of the rig");
        }
        Ok(())
    }

    fn stem_beside(&mut self, stem: &StemFile) {
        let crate::drive_file::OrNone::Some(outside) = stem.outside_diameter.value else { return };
        let (block, outside) = (("stem", stem), outside.si());
        let times = |most| range::<Length>(0.0, most * outside);
        self.beside(block, StemFile::head_diameter, times(3.0), times(2.1), "the diameter of the stem");
        let Some(wall) = stem.wall.given().map(Measure::si).filter(|wall| 2.0 * wall < outside) else {
            return;
        };
        // No steel of rods yields at more.
        let tube = core::f64::consts::PI * (outside - wall) * wall * mpa(1_000.0);
        for key in [StemFile::joint_thrust, StemFile::joint_pull] {
            self.beside(block, key, range::<Force>(0.0, tube), None, "the section of the stem");
        }
    }

    fn pit_beside(&mut self, path: &str, pit: &PitFile, invert: Option<Length>) {
        if let (Some(space), Some(invert)) = (&pit.space, invert) {
            let at = format!("{path}.space");
            let below = |least: f64, most: f64| range::<Length>(invert.si() + least, invert.si() + most);
            let usual = below(m(0.3), m(1.5));
            self.beside(
                (&at, space),
                PitSpaceFile::floor_depth,
                range(0.0, invert.si() + m(10.0)),
                usual,
                "the depth of the invert",
            );
            let floor = space.floor_depth.given().unwrap_or(invert);
            if let Some(tight) = &space.tight_soil {
                // Water that stands more than 5 m over the ground is a hazard of its own.
                let most = 9_810.0 * (floor.si() + tight.value.si() + m(5.0));
                let usual = range::<Pressure>(0.0, most);
                self.beside((&at, space), PitSpaceFile::water_pressure, None, usual, "the depth of the tight soil");
            }
            if let Some(wall) = &pit.wall {
                let wide = range::<Length>(0.0, space.width.value.si());
                self.beside(("launch.wall", wall), WallFile::width, wide, None, "the width of the pit");
            }
        }
        if let Some(wall) = &pit.wall {
            let side = wall.width.value.si().min(wall.height.value.si());
            let (possible, usual) = (range::<Length>(0.0, side), range::<Length>(0.0, side / 2.0));
            self.beside(("launch.wall", wall), WallFile::eye_diameter, possible, usual, "the sides of the wall");
        }
    }

    fn stretch_beside(&mut self, path: &str, stretch: &StretchFile, lubrication: Lubrication) {
        if let Some(friction) = &stretch.unit_friction {
            let at = format!("{path}.unit_friction");
            if friction.high.value.si() < LEAST_FRICTION && !self.is_senseless(&at) {
                let role = Role::UnitFriction;
                let shown = |si| Shown { si, role }.display(friction.high.written_in().unwrap_or(self.system));
                let (least, read) = (shown(LEAST_FRICTION), shown(friction.high.value.si()));
                let why = (format!("expected at least {least} at the high level, got {read}"), SLIP);
                self.flaw(&friction.high, &format!("{at}.high"), why);
            }
            // Less than the least that was met is for a logged force alone.
            if lubrication != Lubrication::Logged {
                let shown = |value| Shown::of(value, Role::UnitFriction);
                self.beyond_usual(&format!("{at}.likely"), shown(friction.likely.value), (kpa(3.0), kpa(60.0)));
                self.beyond_usual(&format!("{at}.high"), shown(friction.high.value), (kpa(5.0), f64::INFINITY));
            }
        }
        if let Some(soil) = &stretch.soil {
            let blows = stretch.spt_n.given().map(Measure::si);
            self.clay_beside(&format!("{path}.soil"), soil, Some(stretch.class.value), blows);
        }
    }

    /// Strength and stiffness of clay by its class and blows, and each beside the other; the friction angle by the class.
    fn clay_beside(&mut self, path: &str, soil: &SoilFile, class: Option<GroundClass>, blows: Option<f64>) {
        /// What is more than this often beyond what is usual of a class or a count contradicts it.
        const CONTRADICTS: f64 = 3.0;
        /// Below this count blows tell little of the strength, and no less than this is taken for the most of it.
        const TELLING: f64 = 2.0;
        /// Strength over blows, in Pa, by the bands of soil handbooks; usual is what lies about them.
        const BANDS: (f64, f64) = (kpa(3.5), kpa(7.0));
        const USUAL: (f64, f64) = (kpa(2.0), kpa(12.0));
        let block = (path, soil);
        let by_class = class.and_then(usual_strength);
        if let Some((least, most)) = by_class {
            let possible = range::<Pressure>(least / CONTRADICTS, most * CONTRADICTS);
            let usual = range(least, most);
            self.beside(block, SoilFile::undrained_strength, possible, usual, "the class of the ground");
        }
        if let Some(blows) = blows.filter(|_| by_class.is_some()) {
            let most = blows.max(TELLING);
            let possible = range::<Pressure>(blows * BANDS.0 / CONTRADICTS, most * BANDS.1 * CONTRADICTS);
            let usual = range(blows * USUAL.0, most * USUAL.1);
            self.beside(block, SoilFile::undrained_strength, possible, usual, "the blow count");
        }
        if let Some(strength) = soil.undrained_strength.given().map(Measure::si) {
            let times = |least: f64, most: f64| range::<Pressure>(least * strength, most * strength);
            let beside = "the undrained strength";
            self.beside(block, SoilFile::undrained_modulus, times(20.0, 3_000.0), times(50.0, 1_000.0), beside);
        }
        if let Some((least, most)) = class.and_then(usual_angle) {
            let usual = range(least.to_radians(), most.to_radians());
            self.beside(block, SoilFile::friction_angle, None, usual, "the class of the ground");
        }
    }
}
