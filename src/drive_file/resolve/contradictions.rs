//! What the fields of the file may not be beside each other: a row for what is wrong with one, when, and what to do.

use super::Resolver;
use crate::drive_file::{
    AnnulusFile, CandidateFile, CarrierFile, Contents, DriveFile, FacePressureFile, Filling, FlowFile, Hole, IfStalled,
    LaydownFile, OrNone, Over, PaceFile, PitSpaceFile, Place, PullFile, RigFile, SoilFile, Sole, SteeringFile,
    StemFile, StretchFile, SurfaceFile, SurgeFile, Traffic, VacuumFile, WallFile, WorkFile,
};
use crate::handbook::{GroundClass, Guidance, Lubrication, Pilot, Service, Spoil};
use crate::quantity::{Ratio, Time};
use crate::yaml::{Complaint, Field, MayBe};

/// Rows by block: fields, when they are wrong, why, and what to do; of a block of a list the places of all. Nothing is
/// told of a field or a block that is not written.
macro_rules! contradictions {
    ($it:ident, $file:ident: $($block:ident $([$places:expr])? |$own:ident| $rows:tt)+) => {
        impl Resolver<'_> {
            /// What is wrong with the file whatever the handbook says.
            pub(super) fn contradictions(&mut self) {
                let $it = self;
                let $file = $it.file;
                $(contradictions!(@block $it $file $block $([$places])? $own $rows);)+
            }
        }
    };
    (@block $it:ident $file:ident $block:ident $own:ident {
        $($($key:ident),+: $when:expr => $why:expr;)+
    }) => {
        if let Some($own) = $block::in_file($file) {
            $(if $when {
                let why = Complaint::from($why);
                $($it.wrong($block::$key, why.clone());)+
            })+
        }
    };
    (@block $it:ident $file:ident $block:ident [$places:expr] $own:ident {
        $($($key:ident),+: $when:expr => $why:expr;)+
    }) => {
        for (path, $own) in $places {
            $(if $when {
                let why = Complaint::from($why);
                $($it.wrong_at(&path, $own, $block::$key, why.clone());)+
            })+
        }
    };
}

/// Whether some ground in the face is held together by nothing.
fn runs(stretch: &StretchFile) -> bool {
    stretch.class.value.runs() || stretch.mixed_with.given().is_some_and(GroundClass::runs)
}

const NO_MAIN: &str = "is for a pressure main";
const NO_SEWER: &str = "is for gravity sewers";

contradictions! { it, file:
    DriveFile |all| {
        cutting_edge: all.spoil.given() != Some(Spoil::OpenEdge) || all.face.is_some()
            => "is for `spoil: open_edge` without `face`";
        guidance: all.pilot.given() == Some(Pilot::WalkedOver) && all.guidance.given() != Some(Guidance::WalkedOver)
            => "is not that of a pilot which is walked over";
        guidance: all.pilot.given() == Some(Pilot::Displacement) && all.guidance.given().is_some_and(Guidance::turns_corners)
            => ("has no room in a pilot that is pushed, which is sighted through its stem", "write `pilot: drilled` or `pilot: none`");
        if_stalled: all.if_stalled.given() == Some(IfStalled::Stations) && all.machine().station_thrust.is_none()
            => ("needs the thrust of a station", "add `rig: { station_thrust: ... }`");
        lubricant_pressure: all.lubrication.given() == Some(Lubrication::None) => "the pipe is not lubricated";
        lubricant_pressure: all.lubrication.is_none()
            => ("says nothing where nobody says how the pipe is lubricated", "add `lubrication: metered`");
        service_pressure: all.service.value != Service::PressureMain => NO_MAIN;
        half_wave: all.service.value != Service::GravitySewer => NO_SEWER;
        half_wave: all.half_wave.given().is_some_and(|half| half > all.length.value) => "is longer than the drive";
        design_depth: !proposes_by_flow(all) => "is for a design_flow.max from which pipes are proposed";
    }
    RigFile |rig| {
        efficiency: rig.cylinder_area.is_none()
            => ("says nothing without the piston area of the jacks", "add `cylinder_area: 50000 mm2`");
        auger_torque: rig.torque.is_none() => ("says nothing without the torque of the rig", "add `torque: 20 kN*m`");
        auger_torque: file.spoil.given().is_some_and(|spoil| spoil != Spoil::Auger)
            => ("is for soil that leaves by auger", "write `spoil: auger`, or leave it out");
    }
    StemFile |stem| {
        free_length: stem.wall.is_none() && is_there(stem)
            => ("says nothing about buckling without the wall of the stem", "add `wall: 10 mm`");
        withdrawn: stem.withdrawn.given() == Some(true) && stem.head_diameter.is_none() && is_there(stem)
            => ("needs the head that makes the bore of the pipe", "add `head_diameter: 400 mm`");
        torque: stem.joint_torque.is_none() && file.machine().torque.is_none() && is_there(stem)
            => ("says nothing without what stem or rig can bear", "add `joint_torque: 20 kN*m`");
    }
    PullFile |pull| {
        unit_drag, fluid_stands_for, fluid_density: is_dry(pull) => DRY;
        contents: is_dry(pull) && pull.contents.given() == Some(Contents::Slurry) => DRY;
        ramp_angle, bend_radius, ramp_room: LaydownFile::in_file(file).is_some_and(is_in_pit)
            => "a string joined in the pit comes down no ramp";
        reamer, reaming_torque, push_assist, stem_removal: pull.winch.is_some()
            => "is not that of a winch, which pulls the pipe alone";
        winch: file.stem.as_ref().is_none_or(|stem| stem.withdrawn.given() != Some(true))
            => ("pulls the pipe into the bore that the stem was drawn out of", "add `withdrawn: true` to the stem");
        winch: pull.hole.is_none()
            => ("pulls into a bore of which nothing tells what it holds", "add `hole: dry_and_stable`, or `hole: fluid`");
        rate: pull.duration.is_some() => "give either the duration or the rate of the pull, not both";
    }
    AnnulusFile |annulus| {
        grout_density, grout_pressure, grout_sets_in, grout_waste, ballast, proof: annulus.filling.given() == Some(Filling::Open)
            => "the annulus is not grouted";
        grout_density, grout_pressure, grout_sets_in, grout_waste, ballast, proof: annulus.filling.is_none()
            => ("says nothing of an annulus that nobody says is grouted", "add `filling: grouted`");
        grout_density: annulus.grout_pressure.is_none()
            => ("says nothing of the load without the pressure of the grout", "add `grout_pressure: 50 kPa`");
        grout_pressure: annulus.grout_density.is_none()
            => ("says nothing of the load without the density of the grout", "add `grout_density: 1500 kg/m3`");
        spacers: file.pull.is_none() => "are for pipe that is pulled, and no pull is given";
    }
    VacuumFile |_it| { pressure: file.service.value != Service::PressureMain => NO_MAIN; }
    SurgeFile |_it| { recurring, occasional: file.service.value != Service::PressureMain => NO_MAIN; }
    FlowFile |flow| {
        max: file.service.value != Service::GravitySewer && proposes_by_flow(file)
            => ("is for a gravity sewer, whose grade makes it flow", "give needed_inside_diameter");
        min, max: file.service.value != Service::GravitySewer => NO_SEWER;
        min: file.service.value == Service::GravitySewer && flow.max.is_some() && flow.min.given() > flow.max.given()
            => "is more than the greatest flow";
    }
    SteeringFile |steering| {
        wave_amplitude: steering.half_wave.is_none()
            => ("says nothing without the length of the wave", "add `half_wave: 10 m`");
        half_wave: steering.wave_amplitude.is_none()
            => ("says nothing without the amplitude of the wave", "add `wave_amplitude: 10 mm`");
    }
    WorkFile |work| {
        shift_length: PaceFile::in_file(file).is_some_and(|pace| differ(&work.shift_length, &pace.shift_length))
            => ("is not that of `pace.shift_length`", "give it once");
    }
    PaceFile |pace| {
        budget: pace.shift_price.is_none()
            => ("means nothing without the price of a shift", "add `shift_price: 4000`");
    }
    CarrierFile |carrier| {
        service: file.service.value != Service::Casing
            => ("is laid in a casing", "write `service: casing`, or leave `carrier` out");
        service: carrier.service.value == Service::Casing => ("is no carrier", "write what lies in the casing");
        grade: carrier.service.value != Service::GravitySewer => "is for a gravity sewer";
        grade: carrier.grade.given() == Some(Ratio::default()) => "a sewer without fall does not drain";
    }
    SurfaceFile |surface| {
        railway_permits: surface.over.given() != Some(Over::Railway) && file.traffic.given() != Some(Traffic::Railway)
            => ("no railway is given over the bore", "add `over: railway`, or leave it out");
    }
    FacePressureFile |held| {
        low: file.spoil.given() != Some(Spoil::Slurry) => ("is for a closed face", "add `spoil: slurry`");
        high: held.low.value > held.high.value => "is less than the low one";
    }
    StretchFile [listed("ground", &file.ground)] |stretch| {
        mixed_with: stretch.mixed_with.given() == Some(stretch.class.value)
            => ("is the class of the stretch itself", "name the other ground of the face");
        bore_stands: stretch.unit_friction.is_some() => "is in the friction that is given: give one of the two";
        bore_stands: stretch.bore_stands.given() == Some(true) && file.pilot.given() == Some(Pilot::Displacement)
            => ("is for a bore that is drilled: a pilot that is pushed leaves none open", "write `pilot: drilled`");
        bore_stands: stretch.bore_stands.given() == Some(true) && runs(stretch)
            => "no word makes soil stand that is neither clay nor rock: support it by fluid or a casing";
    }
    SoilFile [soils(file)] |soil| {
        undrained_modulus: soil.undrained_strength.is_none()
            => ("means nothing without the undrained strength", "add `undrained_strength`");
    }
    PitSpaceFile [spaces(file)] |space| {
        tight_soil: space.water_pressure.is_none()
            => ("means nothing without the water pressure", "add `water_pressure: 40 kPa`");
        water_pressure: space.tight_soil.is_none()
            => ("means nothing without the soil over it", "add `tight_soil: 3 m`");
        permeability: space.tight_base_depth.is_none()
            => ("means nothing without the tight base", "add `tight_base_depth: 9 m`");
        tight_base_depth: space.permeability.is_none()
            => ("means nothing without the permeability", "add `permeability: 1e-5 m/s`");
    }
    CandidateFile [listed("candidates", &file.candidates)] |_pipe| {
        pressure_class: file.service.value != Service::PressureMain => NO_MAIN;
    }
    WallFile |wall| {
        eye_diameter: wall.eye_diameter.given() >= Some(wall.width.value.min(wall.height.value))
            => "leaves nothing of the wall";
    }
}

/// What is told of fluid in a bore that the file calls dry.
pub(super) const DRY: &str = "there is no fluid in a dry bore";

pub(super) fn is_dry(pull: &PullFile) -> bool {
    pull.hole.given() == Some(Hole::DryAndStable)
}

fn is_in_pit(laydown: &LaydownFile) -> bool {
    laydown.place.given() == Some(Place::Pit)
}

fn is_there(stem: &StemFile) -> bool {
    stem.outside_diameter.value != OrNone::None
}

/// Whether pipes are proposed from the greatest flow of a sewer.
pub(super) fn proposes_by_flow(file: &DriveFile) -> bool {
    file.greatest_flow().is_some() && file.needed_inside_diameter.is_none() && file.candidates.is_empty()
}

/// Whether both are told, and not alike.
fn differ(one: &Option<Field<Time>>, other: &Option<Field<Time>>) -> bool {
    one.is_some() && other.is_some() && one != other
}

/// Each block of a list with its path.
fn listed<'a, B>(key: &'static str, list: &'a [B]) -> impl Iterator<Item = (String, &'a B)> {
    list.iter().enumerate().map(move |(index, block)| (format!("{key}[{index}]"), block))
}

fn soils(file: &DriveFile) -> impl Iterator<Item = (String, &SoilFile)> {
    let of_stretches =
        listed("ground", &file.ground).filter_map(|(path, stretch)| Some((path, stretch.soil.as_ref()?)));
    of_stretches
        .chain(
            [("launch".to_owned(), file.launch.soil.as_ref())]
                .into_iter()
                .filter_map(|(path, soil)| Some((path, soil?))),
        )
        .map(|(path, soil)| (format!("{path}.soil"), soil))
}

fn spaces(file: &DriveFile) -> impl Iterator<Item = (String, &PitSpaceFile)> {
    let pits = [("launch.space", Some(&file.launch)), ("reception.space", file.reception.as_ref())];
    pits.into_iter().filter_map(|(path, pit)| Some((path.to_owned(), pit?.space.as_ref()?)))
}
