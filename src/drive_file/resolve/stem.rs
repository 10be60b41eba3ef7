//! The pilot stem, and what else belongs to the rig: gauge and stations.

use super::listed::Listed;
use super::{Resolved, Resolver, no_row};
use crate::drive::{Auger, Gauge, SandBed, Stem, Tube};
use crate::drive_file::{CandidateFile, Material, OrNone, RigFile, StemFile, StretchFile};
use crate::handbook::{GroundClass, HandbookError, Pilot, PilotStemRow, Service, Spoil, rising};
use crate::law::Law;
use crate::laws::pull::PipeWeight;
use crate::laws::soil::water_unit_weight;
use crate::quantity::{Band, Length, LineLoad, Measure, Ratio, Role};
use crate::source::{Cited, Equation, FieldName, Origin};
use crate::yaml::{Field, MayBe};

/// Said of the stem of a head that is steered itself.
const NO_PILOT: Equation = Equation::judged(
    "pilot stem of a shield or an auger casing",
    "none",
    "slurry machines and open shields are steered by themselves, and an auger casing that holds no gravity line goes as it is set up",
    "where the file plans such a head and neither pilot, stem nor pull",
);

impl<'a> Resolver<'a> {
    /// The stem that goes before by the technique where the file tells none.
    fn usual_stem(&self, pilot: Pilot) -> Resolved<Cited<&'a PilotStemRow>> {
        let pilot = if pilot == Pilot::None { Pilot::Displacement } else { pilot };
        let technique = self.technique_row((pilot, true))?.value;
        let stem = technique.stem.as_ref().ok_or_else(|| no_row("technique", technique.spoil.value.key()))?;
        self.handbook.pilot_stem()?.row(&stem.value.0)
    }

    pub(super) fn stem(&mut self, pilot: Pilot) -> Resolved<Stem> {
        const NAME: &FieldName = &FieldName("stem.outside_diameter");
        let usual = self.usual_stem(pilot)?;
        let wider = usual.map(|usual| usual.head_wider.value);
        let bare = |outside_diameter: Cited<Length>| Stem {
            outside_diameter,
            head: outside_diameter.value,
            withdrawn: false,
            weight: None,
            tube: None,
            joint_thrust: None,
            joint_pull: None,
            joint_torque: None,
            torque: None,
        };
        let none = || bare(Cited::given(Length::default(), NAME));
        let Some(stem) = &self.file.stem else {
            if self.file.pilot.given() == Some(Pilot::None) {
                return Ok(none());
            }
            if self.steers_itself() {
                self.assume_word(NAME.0, "none", Origin::Law(&NO_PILOT));
                return Ok(none());
            }
            // Its head leaves room for the smallest pipe.
            let smallest = self.file.candidates.iter().map(|pipe| pipe.size.value).reduce(Length::min);
            let widest = usual.map(|usual| {
                let least = usual.diameter_least.value;
                smallest.map_or(usual.diameter.value, |pipe| usual.diameter.value.min((pipe - wider.value).max(least)))
            });
            self.assume_one(NAME.0, widest, Role::Diameter);
            let head = widest.value + wider.value;
            self.assume_one("stem.head_diameter", Cited::new(head, wider.origin), Role::Diameter);
            return Ok(Stem { head, ..bare(widest) });
        };
        let outside_diameter = match stem.outside_diameter.value {
            OrNone::None => return Ok(self.no_stem(stem, none())),
            OrNone::Some(diameter) => {
                if self.file.pilot.given() == Some(Pilot::None) {
                    let complaint = ("a stem is the pilot, and `pilot` is \"none\"", "leave one of the two out");
                    self.flaw(&stem.outside_diameter, NAME.0, complaint);
                }
                if !(diameter.si() > 0.0 && diameter.si().is_finite()) {
                    let complaint = ("expected a length above zero or \"none\"", "write for example \"100 mm\"");
                    self.flaw(&stem.outside_diameter, NAME.0, complaint);
                }
                diameter
            }
        };
        let wider = Cited::new(outside_diameter + wider.value, wider.origin);
        let head = self.or_row(StemFile::head_diameter, wider).value;
        if head < outside_diameter {
            let why = "is smaller than the stem, which could not follow it";
            self.wrong(StemFile::head_diameter, why);
        }
        let wall = stem.wall.as_ref().map(|field| self.tube_wall(field, "stem.wall", outside_diameter));
        let weight = wall.map(|wall| self.steel_weight(outside_diameter, wall)).transpose()?;
        let tube = match (wall, &stem.free_length) {
            (Some(wall), Some(_)) => Some(self.tube(wall, stem)?),
            // The wall alone gives the weight.
            _ => None,
        };
        Ok(Stem {
            outside_diameter: Cited::given(outside_diameter, NAME),
            head,
            withdrawn: stem.withdrawn.given() == Some(true),
            weight,
            tube,
            joint_thrust: self.cited(StemFile::joint_thrust),
            joint_pull: self.cited(StemFile::joint_pull),
            joint_torque: self.cited(StemFile::joint_torque),
            torque: self.band(StemFile::torque),
        })
    }

    /// Whether no pilot goes before the head that the file plans: one that keeps its own line, or the auger of a steel casing in
    /// soil that holds no gravity line. Nor is there a pull, which would need its stem.
    fn steers_itself(&self) -> bool {
        let file = self.file;
        let shield = matches!(file.spoil.given(), Some(Spoil::Slurry | Spoil::OpenEdge));
        shield && file.pilot.is_none() && file.pull.is_none() || self.is_bare_casing()
    }

    /// Whether a steel casing goes by its auger alone.
    fn is_bare_casing(&self) -> bool {
        let file = self.file;
        let steel = |pipe: &CandidateFile| pipe.material.value == Material::Steel;
        let soil = |stretch: &StretchFile| {
            !stretch.class.value.is_rock() && !stretch.mixed_with.given().is_some_and(GroundClass::is_rock)
        };
        let level = file.carrier.as_ref().is_none_or(|carrier| carrier.service.value != Service::GravitySewer);
        file.service.value == Service::Casing
            && matches!(file.spoil.given(), None | Some(Spoil::Auger))
            && file.pilot.is_none()
            && file.pull.is_none()
            && level
            && !file.candidates.is_empty()
            && file.candidates.iter().all(steel)
            && file.ground.iter().all(soil)
    }

    /// The stem with what is not told of it at its best: slender, its head no wider.
    pub(super) fn stem_at_best(&self, stem: &Stem, pilot: Pilot) -> Resolved<Option<Stem>> {
        Ok(match &self.file.stem {
            None if stem.is_there() => {
                let outside_diameter = self.usual_stem(pilot)?.map(|usual| usual.diameter_least.value);
                Some(Stem { outside_diameter, head: outside_diameter.value, ..*stem })
            }
            Some(told) if told.head_diameter.is_none() && stem.is_there() => {
                Some(Stem { head: stem.outside_diameter.value, ..*stem })
            }
            _ => None,
        })
    }

    /// A bore without a stem has none of its properties.
    fn no_stem(&mut self, stem: &StemFile, bare: Stem) -> Stem {
        stem.each(&mut |_, spec, value| {
            if let Some((at, rest)) = value.place().filter(|_| !spec.must) {
                self.flaw_at(at, &format!("stem.{}{rest}", spec.key), "there is no stem");
            }
        });
        bare
    }

    /// The auger that clears what is pushed; none where soil leaves otherwise, and behind a stem that is out.
    pub(super) fn auger(&self) -> Resolved<Option<Auger>> {
        let file = self.file;
        let is_out = file.stem.as_ref().is_some_and(|stem| stem.withdrawn.given() == Some(true));
        if is_out || file.spoil.given().is_some_and(|spoil| spoil != Spoil::Auger) {
            return Ok(None);
        }
        let levels = |row| Ok::<_, HandbookError>(self.handbook.auger()?.levels(row)?.value);
        let weight = |row| Ok::<_, HandbookError>(levels(row)?.map(|over: Ratio| over * water_unit_weight()));
        Ok(Some(Auger {
            told: file.spoil.is_some(),
            diameter: levels("diameter")?,
            own_weight: weight("own_weight")?,
            spoil_weight: weight("spoil_weight")?,
            fill: levels("fill")?,
            friction: levels("friction")?,
            progress: levels("progress")?,
        }))
    }

    fn tube(&mut self, wall: Length, stem: &StemFile) -> Resolved<Tube> {
        let free_length = stem.free_length.given().unwrap_or_default();
        let modulus = self.taken("stem: modulus of steel", self.handbook.pressure("stem.modulus"), Role::Modulus)?;
        let end_factor = self.taken_ratio("stem: effective over free length", "stem.end_factor")?;
        let factor = self.taken_ratio("stem: safety factor on buckling", "stem.buckling_factor")?;
        let bedding = self.taken_ratio("stem: bedding modulus over undrained strength of clay", "stem.bedding")?;
        Ok(Tube {
            wall,
            free_length,
            modulus: modulus.value,
            end_factor: end_factor.value,
            factor,
            bedding_per_strength: bedding.value,
            sand: [self.sand_bed("loose")?, self.sand_bed("medium")?, self.sand_bed("dense")?],
        })
    }

    /// The bed in sand of one density: low and likely under water, high above it.
    fn sand_bed(&mut self, density: &str) -> Resolved<SandBed> {
        const TABLE: &str = "sand_bedding";
        let row = self.handbook.sand_bedding()?.row(density)?;
        let bed = SandBed {
            blows_from: row.value.blows_from.value,
            moist: row.value.moist.value,
            submerged: row.value.submerged.value,
            low_share: row.value.low_share.value,
        };
        let low = bed.submerged * bed.low_share;
        let band = rising(TABLE, density, Band { low, likely: bed.submerged, high: bed.moist })?;
        let what = format!("stem: subgrade reaction per depth, {density} sand");
        self.assume_band(what, band, Role::UnitWeight, row.origin);
        Ok(bed)
    }

    /// The wall of a tube, less than half its diameter.
    pub(super) fn tube_wall(&mut self, field: &Field<Length>, path: &str, outside_diameter: Length) -> Length {
        let wall = field.value;
        if 2.0 * wall >= outside_diameter {
            self.flaw(field, path, "is no less than half of the outside diameter");
        }
        wall
    }

    /// Weight of a steel tube per length.
    pub(super) fn steel_weight(&self, outside_diameter: Length, wall: Length) -> Resolved<LineLoad> {
        let density = self.density("steel")?.value;
        Ok(PipeWeight { outside_diameter, wall, density, average_wall: Ratio::from_si(1.0) }.value())
    }
}

/// Most pipes in one drive.
const MOST_SEGMENTS: f64 = 2_000.0;

impl Resolver<'_> {
    pub(super) fn gauge(&mut self) -> Resolved<Option<Gauge>> {
        let Some(cylinder_area) = self.given(RigFile::cylinder_area) else { return Ok(None) };
        let row = self.handbook.jacking_station()?.factor("efficiency", |row| &row.high)?;
        let efficiency = self.or_row(RigFile::efficiency, row).value;
        Ok(Some(Gauge { cylinder_area, efficiency }))
    }

    /// Length of one pipe that is pushed, for the shove plan.
    pub(super) fn segment(&mut self, of: &Listed<'_>, is_jacked: bool) -> Option<Length> {
        let length = self.own(of, CandidateFile::pipe_length).filter(|_| is_jacked)?.value;
        if self.file.length.value / length > Ratio::from(MOST_SEGMENTS) {
            let message = format!("makes more than {MOST_SEGMENTS} pipes of the drive");
            self.fault(of, CandidateFile::pipe_length, message);
        }
        Some(length)
    }
}
