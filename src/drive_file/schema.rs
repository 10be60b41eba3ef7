//! The drive file as the engineer writes it.

use super::band::WaterTable;
use super::candidate::{CandidateFile, LoadCode, SteeringFile, Traffic};
use super::declare::fields;
use super::ground::{PitFile, StretchFile, WallFile};
use super::pull::{
    AnnulusFile, CollapsedBoreFile, LaydownFile, PullFile, PullHeadFile, PushAssistFile, SurgeFile, VacuumFile,
    WinchFile,
};
use super::rig::{IfStalled, RigFile, StemFile};
use super::site::{
    CarrierFile, ClearingFile, CrossingFile, FacePressureFile, FlowFile, Over, PaceFile, SurfaceFile, WorkFile,
};
use crate::handbook::{CriterionKind, Guidance, Lubrication, Pilot, Service, Spoil};
use crate::quantity::{Force, Length, Pressure, Ratio, VolumeRate};
use crate::yaml::{Field, MayBe, Words};

fields! {
    /// One drive, from its launch pit to its reception pit, and the pipes to choose from.
    DriveFile at [""] {
        /// What the drive is called in the report.
        name: may<Words>, else "unnamed drive";
        /// What the pipe carries.
        service: must<Service>,
            said ["use", "purpose"];
        /// From pit wall to pit wall, along the pipe.
        length: must<Length> as Distance, Within(m(3.0), LONGEST), usual(m(10.0), m(250.0)), ["60 m", "200 ft"];
        /// Where stem and jacking pipe are pushed from.
        launch: must_block<PitFile>,
            said ["launch_pit", "start_pit", "drive_pit"];
        /// Where the stem comes out and a pulled pipe goes in. May be left out where `grade` is given.
        reception: block<PitFile>,
            said ["reception_pit", "receiving_pit", "exit_pit", "receiving"];
        /// Rise from the launch pit to the reception pit over the length; negative when the drive falls.
        grade: may<Ratio> as Slope, Within(-STEEPEST, STEEPEST), usual(percent(-15.0), percent(15.0)),
            ["0.4 %", "0.4 %"], else "by the depths at both pits",
            said ["slope", "fall", "gradient"];
        /// Depth of the invert between the pits, where the surface is not even.
        depths: blocks<DepthFile>;
        /// Depth of the water table below ground, `none`, or `unknown`: each check is then made with it at the surface and without.
        groundwater: must<WaterTable> as Depth, Within(0.0, m(200.0)), usual(0.0, m(60.0)), ["4.2 m", "14 ft"],
            said ["water", "water_table", "water_level", "gwl", "water_depth"];
        /// Lubrication of a jacked pipe.
        lubrication: may<Lubrication>, else "must be there where a pipe can only be pushed; where one may be, none",
            said ["lubricant"];
        /// Pressure of the lubricant round the pipe, at its greatest.
        lubricant_pressure: may<Pressure> as Pressure, Within(0.0, mpa(1.0)), usual(kpa(5.0), kpa(300.0)),
            ["60 kPa", "9 psi"], else "20 to 50 kPa over that of the ground water",
            said ["lubrication_pressure", "injection_pressure", "bentonite_pressure"];
        /// The ground from launch to reception.
        ground: must_block<Vec<StretchFile>>,
            said ["soil", "soils", "geology", "strata"];
        /// Where what moves is planned to stand for more than a shift.
        stops: blocks<StopFile>;
        /// The machine in the launch pit.
        rig: block<RigFile>, else "not chosen: the page tells the least that does",
            said ["machine", "frame", "jacks"];
        /// What is done where the rig cannot push on.
        if_stalled: may<IfStalled>;
        /// When people work.
        work: block<WorkFile>;
        /// The pilot stem.
        stem: block<StemFile>,
            said ["rods", "drill_string"];
        /// How soil is removed at an enlarging head.
        spoil: may<Spoil>, else "by auger";
        /// How the pilot makes its way.
        pilot: may<Pilot>, else "by the ground and the stem";
        /// How the bore is kept to its line.
        guidance: may<Guidance>, else "by the technique",
            said ["laser"];
        /// Thickness of the edge that cuts, where an open edge does.
        cutting_edge: may<Length> as Wall, Within(mm(2.0), mm(60.0)), usual(mm(6.0), mm(25.0)), ["12 mm", "0.5 in"];
        /// Resistance at the enlarging head, instead of the table.
        face: band<Force> as Thrust, Within(0.0, mn(20.0)), usual(kn(1.0), mn(20.0)),
            ["900 kN", "100 tonf_us"], else "the table of faces";
        /// Pressure that the closed face of a slurry machine is held at.
        face_pressure: block<FacePressureFile>;
        /// How far the joints of a jacked pipe turn.
        steering: block<SteeringFile>;
        /// Needed for pipes that are pulled.
        pull: block<PullFile>;
        /// Tolerance of the invert, either way.
        tolerance: may<Length> as Offset, Within(mm(2.0), mm(500.0)), usual(mm(10.0), mm(150.0)),
            ["25 mm", "1 in"], else "the table of tolerances";
        /// Flow that a gravity sewer is built for. Its greatest gives the inside diameter needed where no pipe is named.
        design_flow: block<FlowFile>;
        /// Distance from a high spot of a waving invert to the next low one, gravity sewers only.
        half_wave: may<Length> as Distance, Within(m(0.5), LONGEST), usual(m(3.0), m(50.0)), ["10 m", "30 ft"], else "10 and 30 m";
        /// The surface over the bore.
        surface: block<SurfaceFile>,
            said ["over"];
        /// Services that the bore crosses, `[]` where they were located and there are none.
        crossings: may_blocks<CrossingFile>, else "not known",
            said ["services", "utilities"];
        /// Length of whole soil kept in the mouth of a casing against ground water.
        plug: may<Length> as Distance, UpTo(m(10.0)), usual(0.0, m(3.0)), ["2 m", "6 ft"];
        /// How spoil is carried away.
        clearing: block<ClearingFile>;
        /// The pipe that is laid in a casing afterwards.
        carrier: block<CarrierFile>;
        /// How far the work gets in a shift, and what a shift costs.
        pace: block<PaceFile>;
        /// What drives over the pipe in service.
        traffic: may<Traffic>, else "by what lies over the bore";
        /// Whose rules of traffic count.
        load_code: may<LoadCode>, else "us: HL-93 and E-80";
        /// What becomes of the annulus round a pulled pipe.
        annulus: block<AnnulusFile>;
        /// Greatest pressure that a pressure main has to carry, surge included unless `surge` tells it.
        service_pressure: may<Pressure> as Pressure, Within(0.0, mpa(10.0)), usual(mpa(0.1), mpa(2.5)),
            ["1 MPa", "150 psi"], else "shown what the main carries at most",
            said ["working_pressure", "design_pressure", "pressure"];
        /// What surges add to the pressure of a main.
        surge: block<SurgeFile>;
        /// Vacuum that a pressure main may see in service.
        vacuum: block<VacuumFile>;
        /// The line that the drive is a part of, where it is longer than one drive.
        line: block<LineFile>;
        /// Weights of the criteria of the score, in place of those of the table.
        weights: blocks<WeightFile>;
        /// Inside diameter needed: pipes of every material are proposed beside those listed.
        needed_inside_diameter: may<Length> as Diameter, Within(mm(50.0), m(4.0)), usual(mm(100.0), m(1.5)),
            ["300 mm", "12 in"],
            said ["inside_diameter", "bore_needed"];
        /// Depth over diameter at the greatest design flow, where it gives the inside diameter needed.
        design_depth: may<Ratio> as Ratio, Within(0.05, 1.0), usual(0.5, 0.9),
            ["75 %", "75 %"], else "the table of ratios";
        /// The pipes to choose from; may be left out where pipes are proposed.
        candidates: blocks<CandidateFile>,
            said ["pipes", "pipe", "candidate"];
    }

    /// A line of several drives.
    LineFile at ["line."] {
        /// From its first pit to its last.
        length: must<Length> as Distance, UpTo(km(100.0)), usual(m(3.0), km(10.0)), ["60 m", "200 ft"];
    }

    /// How much one criterion of the score counts.
    WeightFile at ["weights[]."] {
        /// Criterion.
        criterion: must<CriterionKind>;
        /// Weight, on any scale: only the proportions count.
        weight: must<Ratio> as Ratio, Within(0.0, 1e6), ["3", "3"];
    }

    /// Depth of the pipe invert at one place between the pits.
    DepthFile at ["depths[]."] {
        /// Distance from the launch pit.
        at: must<Length> as Distance, UpTo(LONGEST), ["60 m", "200 ft"];
        /// Depth of the pipe invert below ground.
        invert_depth: must<Length> as Depth, Within(m(0.3), DEEPEST), usual(m(1.2), m(12.0)), ["4.2 m", "14 ft"];
    }

    /// A stop of more than a shift.
    StopFile at ["stops[]."] {
        /// How far what moves has come then: from the launch pit when pushed, from the reception pit when pulled.
        at: must<Length> as Distance, UpTo(LONGEST), ["60 m", "200 ft"];
    }
}

impl DriveFile {
    /// The field of a water table that is not known, where there is one.
    pub(crate) fn unknown_water(&self) -> Option<&'static str> {
        let unknown = |water: &Field<WaterTable>| water.value == WaterTable::Unknown;
        if self.ground.iter().any(|stretch| stretch.groundwater.as_ref().is_some_and(unknown)) {
            return Some("ground[].groundwater");
        }
        let counts = self.ground.is_empty() || self.ground.iter().any(|stretch| stretch.groundwater.is_none());
        (unknown(&self.groundwater) && counts).then_some("groundwater")
    }

    /// The same with the water that is not known here.
    pub(crate) fn with_water(&self, table: WaterTable) -> Self {
        let mut file = self.clone();
        let of_stretches = file.ground.iter_mut().filter_map(|stretch| stretch.groundwater.as_mut());
        for water in of_stretches.chain([&mut file.groundwater]) {
            if water.value == WaterTable::Unknown {
                water.value = table;
            }
        }
        file
    }

    /// The same with the ground under the bed of a stream full of water, where it is told to be drier.
    pub(crate) fn with_wet_bed(&self) -> Option<Self> {
        let is_stream = self.surface.as_ref().and_then(|surface| surface.over.given()) == Some(Over::Stream);
        if !is_stream {
            return None;
        }
        // Where the bed lies nobody tells without depths: it may be anywhere.
        let Some(bed) = self.depths.iter().map(|point| point.invert_depth.value).reduce(Length::min) else {
            let mut wet = self.clone();
            let dry = wet.ground.iter_mut().zip(&self.ground).filter(|(_, told)| !self.is_full(told));
            let changed = dry.map(|(stretch, _)| stretch.groundwater = Some(WaterTable::At(Length::default()).into()));
            return (changed.count() > 0).then_some(wet);
        };
        let ends = || self.ground.iter().map(|stretch| stretch.to.as_ref().map(|to| to.value));
        let starts = core::iter::once(Length::default()).chain(ends().map(Option::unwrap_or_default));
        let reach: Vec<(Length, Option<Length>)> = starts.zip(ends()).collect();
        let mut file = None;
        for point in self.depths.iter().filter(|point| point.invert_depth.value <= bed) {
            let at = point.at.value;
            // A place on a boundary is in either stretch: the bed begins where the wet one does.
            let under = |&(from, to): &(Length, Option<Length>)| from <= at && to.is_none_or(|to| at <= to);
            let mut over = self.ground.iter().zip(&reach).filter(|(_, reach)| under(reach));
            if over.any(|(stretch, _)| self.is_full(stretch)) {
                continue;
            }
            let wet: &mut Self = file.get_or_insert_with(|| self.clone());
            for (stretch, _) in wet.ground.iter_mut().zip(&reach).filter(|(_, reach)| under(reach)) {
                stretch.groundwater = Some(WaterTable::At(Length::default()).into());
            }
        }
        file
    }

    /// Whether a stretch is told to be full of water.
    fn is_full(&self, stretch: &StretchFile) -> bool {
        let water = stretch.groundwater.as_ref().unwrap_or(&self.groundwater).value;
        matches!(water, WaterTable::At(table) if table <= Length::default())
    }

    /// Lubrication as told; none where it is not.
    pub(crate) fn lubricated(&self) -> Lubrication {
        self.lubrication.given().unwrap_or(Lubrication::None)
    }

    /// Greatest flow that the sewer is built for.
    pub(crate) fn greatest_flow(&self) -> Option<&Field<VolumeRate>> {
        self.design_flow.as_ref()?.max.as_ref()
    }
}

/// A block that stands at one place of the file.
pub(crate) trait Sole: Sized {
    /// The block, where it is written.
    fn in_file(file: &DriveFile) -> Option<&Self>;
}

macro_rules! sole {
    ($file:ident: $($block:ident = $of:expr;)+) => {$(
        impl Sole for $block {
            fn in_file($file: &DriveFile) -> Option<&Self> {
                $of
            }
        }
    )+};
}

sole! { file:
    DriveFile = Some(file);
    LineFile = file.line.as_ref();
    RigFile = file.rig.as_ref();
    StemFile = file.stem.as_ref();
    WallFile = file.launch.wall.as_ref();
    WorkFile = file.work.as_ref();
    PaceFile = file.pace.as_ref();
    FlowFile = file.design_flow.as_ref();
    CarrierFile = file.carrier.as_ref();
    ClearingFile = file.clearing.as_ref();
    SurfaceFile = file.surface.as_ref();
    FacePressureFile = file.face_pressure.as_ref();
    SteeringFile = file.steering.as_ref();
    AnnulusFile = file.annulus.as_ref();
    SurgeFile = file.surge.as_ref();
    VacuumFile = file.vacuum.as_ref();
    PullFile = file.pull.as_ref();
    PullHeadFile = file.pull.as_ref()?.pull_head.as_ref();
    LaydownFile = file.pull.as_ref()?.laydown.as_ref();
    CollapsedBoreFile = file.pull.as_ref()?.collapsed_bore.as_ref();
    WinchFile = file.pull.as_ref()?.winch.as_ref();
    PushAssistFile = file.pull.as_ref()?.push_assist.as_ref();
}
