//! What is checked: one entry a subject, in the order of a report.

/// Makes the enum, its list and its labels of one entry a subject. `load`: a force, stress or pressure whose margin
/// counts in the score; `other`: a screen, a setting or what lies round the bore.
macro_rules! subjects {
    ($($(#[$doc:meta])+ $name:ident $label:literal $kind:ident;)+) => {
        /// What is checked.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        #[repr(u8)]
        pub enum Subject {
            $($(#[$doc])+ $name,)+
        }

        impl Subject {
            /// All subjects, in the order of a report.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];
            /// Number of subjects.
            pub const COUNT: usize = Self::ALL.len();

            /// As printed.
            #[must_use]
            pub const fn label(self) -> &'static str {
                match self {
                    $(Self::$name => $label,)+
                }
            }

            /// True for checks of a force, stress or pressure, whose margin counts in the score.
            #[must_use]
            pub const fn is_load(self) -> bool {
                match self {
                    $(Self::$name => subjects!(@ $kind),)+
                }
            }
        }
    };
    (@ load) => { true };
    (@ other) => { false };
}

subjects! {
    /// Thrust that pushes the pilot stem, against the rig.
    StemThrust "thrust, pilot stem" load;
    /// Thrust that pushes the pilot stem, against buckling.
    StemBuckling "pilot stem, buckling" load;
    /// Thrust that pushes the pilot stem, against snaking in a bore that is wider than the stem.
    StemSnaking "pilot stem, snaking" other;
    /// Thrust that pushes the pilot stem, against the rating of its joints.
    StemJoint "pilot stem, joint under thrust" load;
    /// Torque of the pilot stem while it is pushed, against rig and joints.
    StemTorque "torque, pilot stem" load;
    /// Torque of the auger while casing or pipe is pushed, against the rig.
    AugerTorque "torque, auger" load;
    /// Thrust that pushes a casing behind the stem, against the rig.
    CasingThrust "thrust, casing" load;
    /// Thrust that pushes a casing, against its section.
    CasingSection "casing, section" load;
    /// Thrust that pushes a casing, against its free length as a column.
    CasingColumn "casing in the pit, column" load;
    /// Thrust that pushes a casing, against the rating of its joints.
    CasingJoint "casing, joint under thrust" load;
    /// Jacking force while the pipe is pushed, against the rig.
    JackingThrust "thrust, pipe" load;
    /// Jacking force on the pipe, against the capacity of its end.
    EndCapacity "pipe end, jacking force" load;
    /// Angle at the joints of a jacked pipe.
    JointAngle "joint angle" other;
    /// Jacking force on a free length of pipe, against its strength as a column.
    PipeColumn "pipe in the pit, column" load;
    /// Pull on the pipe, against its tension.
    Tension "pipe, tension" load;
    /// Stress of pull and bend on the ramp, against the allowable stress.
    TensionAndBending "pipe, tension and bending" load;
    /// Outside pressure during the pull, against collapse.
    Collapse "pipe, collapse in the pull" load;
    /// Pull, bend and outside pressure on a steel pipe together, extreme condition.
    SteelInteraction "pipe, combined stress" load;
    /// The same, normal condition.
    SteelInteractionNormal "pipe, combined, normal" other;
    /// Strain of the pull.
    Strain "pipe, strain of the pull" load;
    /// Strain of pull and bend on the ramp.
    StrainWithBend "pipe, strain with the bend" load;
    /// Pull on the pipe, against the rating of pull head and swivel.
    PullHead "pull head" load;
    /// Setting of the weak link, against what pipe, head and joint may bear.
    WeakLink "weak link, setting" other;
    /// Pull on the pipe, against the setting of the weak link.
    WeakLinkPull "weak link, pull" other;
    /// Push at the tail of the pulled string, against its free length as a column.
    PushedTail "pipe, pushed tail" load;
    /// The same, against snaking in the wider bore.
    TailSnaking "pipe, pushed tail, snaking" other;
    /// Push at the tail of the pulled string, against the rating of the grip.
    TailGrip "grip at the tail" load;
    /// Pull on the pipe where a named length of bore lies on it, upper bound.
    CollapsedBore "pipe, collapsed bore" other;
    /// Pressure of liquid grout, against collapse.
    CollapseInGrout "pipe, collapse in grout" load;
    /// Water and soil in service, against collapse.
    CollapseInService "pipe, collapse in service" load;
    /// Water and a vacuum inside, against collapse.
    Vacuum "pipe, vacuum in service" load;
    /// Deflection of a flexible pipe in service.
    Deflection "pipe, deflection" other;
    /// Pressure of the rig on the face of the launch pit while it pulls.
    PullReaction "launch pit face, pull" load;
    /// Pressure of the bore fluid, against what the ground is allowed.
    BreakOut "bore fluid, break-out" other;
    /// Length of the ramp, against the room for it.
    RampRoom "ramp, room" other;
    /// Pull on the rig: pipe, reamer and stem.
    RigPull "rig pull" load;
    /// Pull on the rig in a reaming pass before the pipe comes.
    ReamingPull "rig pull, reaming" load;
    /// Pull on the stem, against the rating of its joints.
    StemPull "stem joint, pull" load;
    /// Torque of the reamer, against rig and stem.
    ReamingTorque "torque, reaming" load;
    /// Step in diameter of a reaming pass.
    ReamingStep "reaming step" other;
    /// Final bore.
    Bore "final bore" other;
    /// Radius of the string on the ramp.
    BendRadius "bend radius" other;
    /// Thrust, against the ground behind the wall in the launch pit.
    ThrustWall "thrust wall" load;
    /// Level of the thrust, against that of the reaction of the ground.
    WallLevel "thrust wall, level" other;
    /// Movement of the wall at full resistance, against the tolerance of the invert, gravity sewers only.
    WallMovement "thrust wall, movement" other;
    /// Load of a rigid pipe in service, against its crushing strength.
    Crushing "pipe in service, crushing" load;
    /// Invert against its tolerance, gravity sewers only.
    Invert "invert, line and grade" other;
    /// Ground against method.
    Ground "ground" other;
    /// Length of the drive against the published range of the method.
    Length "length" other;
    /// Outside diameter of the pipe, against the published range of the method.
    Diameter "diameter" other;
    /// Slope of a gravity sewer, against the least by its size.
    LeastSlope "least slope" other;
    /// Steepest wave of the invert, against the slope of the line, gravity sewers only.
    BackFall "back-fall" other;
    /// Water that stands in the low spots of a waving invert.
    Sag "standing water" other;
    /// Slope that a pulled line is asked for, against that of the line, gravity sewers only.
    GradeFloor "slope for a pulled line" other;
    /// Greatest flow, against that of the full pipe.
    FlowCapacity "flow, capacity" other;
    /// Stress of the least flow on the wall, against what moves grit.
    SelfCleaning "flow, self-cleaning" other;
    /// Cover, against the least by method.
    Cover "cover" other;
    /// Settlement of the surface.
    SurfaceSettlement "settlement, surface" other;
    /// Slope of the settled surface.
    SurfaceSlope "slope, surface" other;
    /// Settlement of a crossed service.
    ServiceSettlement "settlement, services" other;
    /// Slope of a crossed service.
    ServiceSlope "slope, services" other;
    /// Clear distance of a crossed service.
    ServiceClearance "clear distance, services" other;
    /// Stability number of an open face in clay.
    FaceStability "face, stability number" other;
    /// Heave of the base of a pit in clay.
    PitHeave "pit base, heave" other;
    /// Uplift of the base of a pit by water below.
    PitUplift "pit base, uplift" other;
    /// Soil plug in the mouth of a casing, against the head of water.
    Plug "soil plug" other;
    /// Length of the launch pit.
    PitLength "launch pit, length" other;
    /// Width of the launch pit.
    PitWidth "launch pit, width" other;
    /// Length of the reception pit.
    ReceptionLength "reception pit, length" other;
    /// Width of the reception pit.
    ReceptionWidth "reception pit, width" other;
    /// Working area at the launch.
    LaunchArea "working area, launch" other;
    /// Working area at the reception.
    ReceptionArea "working area, reception" other;
    /// Lift of one pipe into the launch pit.
    CraneLift "crane lift" other;
    /// Shifts, against those of the programme.
    Programme "time, programme" other;
}
