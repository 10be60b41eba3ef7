//! The checks, one entry each: all that is said of a check is said here, but for how it is worked out.

/// Hands the table to the macro `$then`, in the order of a report. An entry tells
///
/// - what is checked, and its label as printed;
/// - the criterion of the score that reads it, or `none`: margins of `LoadMargin` are the loads;
/// - who decides, by the factor in the limit ([`Decides`](super::Decides));
/// - what goes unchecked and which fields would settle it, where the file may leave them out: `needs`, and the scheme is
///   not decided without it, or `asks`, and that is told (`as` another check: the same). Fields that go together stand
///   side by side, and a comma parts what would do instead;
/// - the function that makes it of `$at`, what is put in and the forces on it, by the laws in `$calc`.
macro_rules! checks {
    ($then:ident $at:ident $calc:ident) => {
        $then! {
            $at $calc
            /// Thrust that pushes the pilot stem, against the rig.
            StemThrust "thrust, pilot stem" LoadMargin Watched(1.25) => stem::thrust($at);
            /// Thrust that pushes the pilot stem, against buckling.
            StemBuckling "pilot stem, buckling" LoadMargin Likely(2.0) => stem::buckling($at, $calc);
            /// Thrust that pushes the pilot stem, against snaking in a bore that is wider than the stem.
            StemSnaking "pilot stem, snaking" none Screen,
                asks "snaking of the pilot stem" ["stem.wall" "stem.free_length"] => stem::snaking($at, $calc);
            /// Thrust that pushes the pilot stem, against the rating of its joints.
            StemJoint "pilot stem, joint under thrust" LoadMargin High => stem::joint($at);
            /// Torque of the pilot stem while it is pushed, against rig and joints.
            StemTorque "torque, pilot stem" LoadMargin High, asks "torque of the pilot stem" ["stem.torque"]
                => stem::turned($at);
            /// Torque of the auger while casing or pipe is pushed, against the rig.
            AugerTorque "torque, auger" LoadMargin High,
                asks "torque of the auger, where there is one" ["rig.auger_torque"] => auger::torque($at);
            /// Torque that auger and spoil take by rubbing on the invert, against the rig, where the whole torque is not told.
            AugerDrag "torque, drag of the auger" none UpTo(f64::INFINITY) => auger::drag($at, $calc);
            /// Thrust that pushes a casing behind the stem, against the rig.
            CasingThrust "thrust, casing" LoadMargin Watched(1.25) => casing::thrust($at);
            /// Thrust that pushes a casing, against its section.
            CasingSection "casing, section" LoadMargin Watched(3.0),
                needs "strength of the casing" ["candidates[].casing_wall"]
                => casing::section($at, $calc);
            /// Thrust that pushes a casing, against its free length as a column.
            CasingColumn "casing in the pit, column" LoadMargin Likely(1.67), needs as CasingSection
                => casing::column($at, $calc);
            /// Thrust that pushes a casing, against the rating of its joints.
            CasingJoint "casing, joint under thrust" LoadMargin High, needs as CasingSection => casing::joint($at);
            /// Jacking force while the pipe is pushed, against the rig.
            JackingThrust "thrust, pipe" LoadMargin Watched(1.25) => jacking::thrust($at);
            /// Jacking force on the pipe, against the capacity of its end.
            EndCapacity "pipe end, jacking force" LoadMargin Watched(1.5) => end::capacity($at, $calc);
            /// Distance from one jacking station to the next, against the least that is met.
            StationSpacing "jacking stations, spacing" none Screen => end::spacing($at);
            /// Angle at the joints of a jacked pipe.
            JointAngle "joint angle" none Screen => end::angle($at);
            /// Push and bend of welded steel in a planned curve, against its yield.
            CurveBending "steel, bending in the curve" LoadMargin High => curve::bending($at, $calc);
            /// Jacking force on a free length of pipe, against its strength as a column.
            PipeColumn "pipe in the pit, column" LoadMargin Likely(1.67) => end::column($at, $calc);
            /// Groundwater and lubricant on the ring of a flexible pipe or a casing while it is pushed, against collapse.
            CollapseWhilePushed "pipe, collapse while pushed" LoadMargin Likely(2.0)
                => pullback::in_service($at, |pipe| pipe.pushed);
            /// Pull on the pipe, against its tension.
            Tension "pipe, tension" LoadMargin UpTo(1.25) => pullback::tension($at);
            /// Stress of pull and bend on the ramp, against the allowable stress.
            TensionAndBending "pipe, tension and bending" LoadMargin UpTo(1.25)
                => pullback::of_pipe($at, |pipe| pipe.with_bending);
            /// Outside pressure during the pull, against collapse.
            Collapse "pipe, collapse in the pull" LoadMargin Likely(2.0),
                needs "collapse in the pull" ["pull.fluid_density", "pull.fluid_stands_for", "pull.returns"] => pullback::of_pipe($at, |pipe| pipe.collapse);
            /// Pull, bend and outside pressure on a steel pipe together, extreme condition.
            SteelInteraction "pipe, combined stress" LoadMargin High => pullback::of_pipe($at, |pipe| pipe.together);
            /// The same, normal condition.
            SteelInteractionNormal "pipe, combined, normal" none Screen
                => pullback::of_pipe($at, |pipe| pipe.together_normal);
            /// Strain of the pull.
            Strain "pipe, strain of the pull" LoadMargin UpTo(1.25) => pullback::of_pipe($at, |pipe| pipe.strain);
            /// Strain of pull and bend on the ramp.
            StrainWithBend "pipe, strain with the bend" LoadMargin UpTo(1.25)
                => pullback::of_pipe($at, |pipe| pipe.strain_with_bend);
            /// Pressure held inside during the pull, against what the wall may hold beside it.
            InsidePressure "pipe, pressure inside" LoadMargin High => pullback::of_pipe($at, |pipe| pipe.inside);
            /// Pull on the pipe, against the rating of pull head and swivel.
            PullHead "pull head" LoadMargin High, asks "rating of pull head and swivel" ["pull.pull_head.rating"]
                => link::head($at);
            /// Setting of the weak link, against what pipe, head and joint may bear.
            WeakLink "weak link, setting" none High, asks "setting of the weak link" ["pull.pull_head.weak_link"]
                => link::set($at, $calc);
            /// Pull on the pipe, against the setting of the weak link.
            WeakLinkPull "weak link, pull" none UpTo(f64::INFINITY), asks as WeakLink => link::pulled($at);
            /// Push at the tail of the pulled string, against its free length as a column.
            PushedTail "pipe, pushed tail" LoadMargin Likely(1.67) => assist::tail($at, $calc);
            /// The same, against snaking in the wider bore.
            TailSnaking "pipe, pushed tail, snaking" none Screen => assist::snaking($at, $calc);
            /// Push at the tail of the pulled string, against the rating of the grip.
            TailGrip "grip at the tail" LoadMargin High, asks "grip at the tail" ["pull.push_assist.grip_rating"]
                => assist::grip($at);
            /// Pull on rig, stem, link and pipe where a named length of bore lies on the pipe, upper bound.
            CollapsedBore "pipe, collapsed bore" none High,
                asks "bore that may fall on the pipe" ["pull.collapsed_bore"] => site::collapsed($at, $calc);
            /// Pressure of liquid grout, against collapse.
            CollapseInGrout "pipe, collapse in grout" LoadMargin Likely(2.0),
                asks "collapse in grout" ["annulus.grout_density", "annulus.grout_pressure"]
                => pullback::in_service($at, |pipe| pipe.grout);
            /// Water and soil in service, against collapse.
            CollapseInService "pipe, collapse in service" LoadMargin Likely(2.0),
                needs "load and deflection in service" ["annulus.soil_modulus", "surface.over", "ground[].soil"]
                => pullback::in_service($at, |pipe| pipe.collapse);
            /// Water and a vacuum inside, against collapse.
            Vacuum "pipe, vacuum in service" LoadMargin Likely(2.0), needs "vacuum in the main" ["vacuum"]
                => pullback::in_service($at, |pipe| pipe.vacuum);
            /// Pressure of a main in service, surge included, against its class.
            ServicePressure "pipe, pressure in service" LoadMargin High => carried::in_service($at, $calc);
            /// Deflection of a flexible pipe in service.
            Deflection "pipe, deflection" none UpTo(1.33), needs as CollapseInService
                => pullback::in_service($at, |pipe| pipe.deflection);
            /// Pressure of the rig on the face of the launch pit while it pulls.
            PullReaction "launch pit face, pull" LoadMargin SetOn(2.0),
                asks "what the rig leans on while it pulls" ["pull.reaction"] => site::reaction($at, $calc);
            /// Pressure of the bore fluid, against what the ground is allowed.
            BreakOut "bore fluid, break-out" none High, needs "break-out of fluid" ["pull.fluid_level" "pull.returns"]
                => break_out::check($at, $calc);
            /// Reamed bore until the pipe is in it: clay by its stability number, ground that runs by the fluid that holds it.
            ReamedBore "reamed bore, stability" none UpTo(1.25) => reamed_bore::check($at, $calc);
            /// Pressure of the lubricant round a pipe that is pushed, against what the ground is allowed.
            LubricantPressure "lubricant, break-out" none High => lubricant::check($at, $calc);
            /// Pressure of liquid grout, against what the ground is allowed.
            GroutPressure "grout, break-out" none High => grout_pressure::check($at, $calc);
            /// Uplift of the pipe in liquid grout, against the ground over it.
            GroutUplift "grout, uplift of the pipe" none High => grout_uplift::check($at, $calc);
            /// Length of the ramp, against the room for it.
            RampRoom "ramp, room" Area High, asks "room for the ramp" ["pull.ramp_room"] => site::ramp_room($at, $calc);
            /// Pull on the rig: pipe, reamer and stem.
            RigPull "rig pull" LoadMargin Watched(1.25) => pullback::rig_pull($at);
            /// Pull of a winch on the pipe, against its rating.
            WinchPull "winch, pull" LoadMargin Watched(1.25) => pullback::winch($at);
            /// Pull on the rig in a reaming pass before the pipe comes.
            ReamingPull "rig pull, reaming" LoadMargin Watched(1.25) => pullback::reaming_pull($at);
            /// Pull on the stem, against the rating of its joints.
            StemPull "stem joint, pull" LoadMargin High, needs "joints of the stem under pull" ["stem.outside_diameter" "stem.joint_pull"]
                => pullback::stem_pull($at);
            /// Torque of the reamer, against rig and stem.
            ReamingTorque "torque, reaming" LoadMargin High, asks "torque of the reamer" ["pull.reaming_torque"]
                => pullback::reaming_torque($at);
            /// Step in diameter of a reaming pass.
            ReamingStep "reaming step" none Screen => pullback::step($at, $calc);
            /// Final bore.
            Bore "final bore" none Screen => pullback::bore($at);
            /// Radius of the string on the ramp.
            BendRadius "bend radius" none Place => pullback::of_pipe($at, |pipe| pipe.radius);
            /// Thrust, against the ground behind the wall in the launch pit.
            ThrustWall "thrust wall" LoadMargin SetOn(2.0), asks "thrust wall" ["launch.wall"] => wall::thrust($at);
            /// Level of the thrust, against that of the reaction of the ground.
            WallLevel "thrust wall, level" none Screen, asks as ThrustWall => wall::level($at, $calc);
            /// Movement of the wall at full resistance, against the tolerance of the invert, gravity sewers only.
            WallMovement "thrust wall, movement" none Screen, asks as ThrustWall => wall::movement($at, $calc);
            /// Wall of a jacked steel pipe, against the least of any casing, and under a railway that of its size.
            LeastWall "least wall of a casing" LoadMargin Place => service::least_wall($at);
            /// Load of a rigid pipe in service, against its crushing strength.
            Crushing "pipe in service, crushing" LoadMargin Likely(1.5),
                needs "strength of a rigid pipe in service" ["candidates[].crushing"]
                => service::crushing($at, $calc);
            /// Invert against its tolerance, gravity sewers only.
            Invert "invert, line and grade" none Surveyed => conditions::invert($at);
            /// Line of sight from the launch pit to the head: the rise of a planned curve, and the reach of a laser.
            Sight "line of sight of the laser" none Place => conditions::sight($at, $calc);
            /// Play round the carrier in its casing.
            CarrierRoom "carrier, room in the casing" none High, asks "room for the carrier" ["carrier"]
                => carrier::clearance($at);
            /// Error of the casing, against what a carrier can be set off its axis.
            CarrierGrade "carrier, its own grade" none Surveyed, asks as CarrierRoom => carrier::grade($at);
            /// Whether the bore stands for a pipe that goes in after the stem is out.
            BoreStands "bore, stands for the pipe" none Place => conditions::stands($at);
            /// Whether clay closes on a jacked pipe.
            ClayCloses "clay, closing on the pipe" none High => conditions::closes($at);
            /// Ground against method.
            Ground "ground" Ground Place => conditions::ground($at);
            /// Values of the file, against what is usual.
            Usual "values of the file" none Screen => conditions::usual($at);
            /// Length of the drive against the published range of the method.
            Length "length" Size Screen => conditions::length($at);
            /// Outside diameter of the pipe, against the published range of the method.
            Diameter "diameter" Size Screen => conditions::diameter($at);
            /// Slope of a gravity sewer, against the least by its size.
            LeastSlope "least slope" none Place => sewer::least_slope($at, $calc, $at.full_flow);
            /// Velocity of the full pipe, against the most that owners allow.
            FullVelocity "velocity, full pipe" none Screen => sewer::velocity($at, $calc);
            /// Steepest wave of the invert, against the slope of the line, gravity sewers only.
            BackFall "back-fall" none Surveyed => sewer::back_fall($at, $calc);
            /// Water that stands in the low spots of a waving invert.
            Sag "standing water" none Surveyed => sewer::sag($at, $calc);
            /// Slope that a pulled line is asked for, against that of the line, gravity sewers only.
            GradeFloor "slope for a pulled line" none Screen => sewer::grade_floor($at);
            /// Greatest flow, against that of the full pipe.
            FlowCapacity "flow, capacity" none High, asks "capacity" ["design_flow.max"]
                => sewer::capacity($at, $at.full_flow);
            /// Stress of the least flow on the wall, against what moves grit.
            SelfCleaning "flow, self-cleaning" none Screen, asks "self-cleaning" ["design_flow.min"]
                => sewer::self_cleaning($at, $calc, $at.full_flow);
            /// Cover, against the least by method.
            Cover "cover" none Place => room::cover($at, $calc);
            /// A pipe under tracks, without a casing round it for good.
            RailwayCasing "railway, casing" none Place, needs "what the railway permits" ["surface.railway_permits"]
                => carrier::casing($at);
            /// Settlement of the surface.
            SurfaceSettlement "settlement, surface" Movement Surveyed,
                needs "settlement of the surface" ["surface.over", "surface.allowed_settlement"]
                => movement::surface_settlement($at, $at.surface);
            /// Slope of the settled surface.
            SurfaceSlope "slope, surface" Movement Surveyed,
                needs "slope of the surface" ["surface.over", "surface.allowed_slope"]
                => movement::surface_slope($at, $at.surface);
            /// Settlement of a crossed service.
            ServiceSettlement "settlement, services" Movement Surveyed,
                needs "settlement of services" ["crossings[].allowed_settlement"] => $at.services.0;
            /// Slope of a crossed service.
            ServiceSlope "slope, services" Movement Surveyed, needs "slope of services" ["crossings[].allowed_slope"]
                => $at.services.1;
            /// Clear distance of a crossed service.
            ServiceClearance "clear distance, services" none Place => room::clearance($at, $calc);
            /// Stability number of an open face in clay.
            FaceStability "face, stability number" none UpTo(4.0 / 3.0),
                needs "strength of the clay in an open face" ["ground[].soil.undrained_strength", "surface.over"]
                => face::stability($at, $calc);
            /// Least pressure that keeps the ground out of a closed face, against the most that the ground bears.
            FaceSupport "face, support" none High => face_support::check($at, $calc);
            /// Heave of the base of a pit in clay.
            PitHeave "pit base, heave" none Likely(1.5)
                => pits::base_heave($at, $calc);
            /// Boiling of the base of a pit in sand.
            PitBoiling "pit base, boiling" none High => pits::boiling($at, $calc);
            /// Uplift of the base of a pit by water below.
            PitUplift "pit base, uplift" none High,
                asks "uplift of the pits" ["launch.space.tight_soil" "launch.space.water_pressure"]
                => pits::uplift($at, $calc);
            /// Soil plug in the mouth of a casing, against the head of water.
            Plug "soil plug" none High => face::plug($at, $calc);
            /// Length of the launch pit.
            PitLength "launch pit, length" Area Screen, asks "room in the launch pit" ["launch.space"]
                => pits::length($at, $calc, Place::Launch);
            /// Width of the launch pit.
            PitWidth "launch pit, width" Area Screen, asks as PitLength => pits::width($at, $calc, Place::Launch);
            /// Length of the reception pit.
            ReceptionLength "reception pit, length" Area Screen, asks "room in the reception pit" ["reception.space"]
                => pits::length($at, $calc, Place::Reception);
            /// Width of the reception pit.
            ReceptionWidth "reception pit, width" Area Screen, asks as ReceptionLength
                => pits::width($at, $calc, Place::Reception);
            /// Working area at the launch.
            LaunchArea "working area, launch" Area Screen, asks "working area at the launch" ["launch.area"]
                => pits::area($at, Place::Launch);
            /// Working area at the reception.
            ReceptionArea "working area, reception" Area Screen, asks "working area at the reception" ["reception.area"]
                => pits::area($at, Place::Reception);
            /// Lift of one pipe into the launch pit.
            CraneLift "crane lift" none High, asks "crane" ["launch.space.crane"] => pits::crane($at);
            /// Length of one pipe, against the stroke of the main jacks.
            JackStroke "pipe length, stroke of the jacks" none Screen,
                asks "pipe length against the stroke of the jacks" ["rig.stroke"] => pits::stroke($at);
            /// Shifts, against those of the programme.
            Programme "time, programme" none Screen, asks "time against the programme" ["pace.programme" "pace"]
                => time::programme($at);
        }
    };
}
pub(crate) use checks;
