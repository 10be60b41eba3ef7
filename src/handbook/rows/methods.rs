//! What the methods are used for, how far they reach and how well they hold line and grade; pits, plant and cover; the bore,
//! its fluid and overcut; friction.

use crate::quantity::{Area, Length, LineLoad, Pressure, Ratio, Time};
use crate::yaml::{Words, key_words};

rows! {
    /// A ratio as one value or a span; what the source leaves out is absent.
    RatioSpanRow {
        /// What the ratio is.
        what: must Words,
        /// Case or ground that it is for.
        case: may Words,
        /// What it is a share of.
        of: may Words,
        /// The value, or the mean where there is a span too.
        value: may Ratio,
        /// Low end, or the least where there is no high end.
        low: may Ratio,
        /// High end, or the most where there is no low end.
        high: may Ratio,
    }

    /// A pipe material listed for a method.
    MethodMaterialRow {
        /// Method.
        method: must Words,
        /// Material.
        material: must Words,
    }

    /// Tolerance or error of line and grade, plus or minus.
    LineToleranceRow {
        /// Method.
        method: must Words,
        /// Whether it is asked for, reached or a locating error.
        kind: must Words,
        /// Low end, as a share.
        share_low: may Ratio,
        /// High end, as a share.
        share_high: may Ratio,
        /// What it is a share of.
        share_of: may Words,
    }

    /// A limit or figure of pilot-tube boring.
    PilotLimitRow {
        /// What it is.
        what: must Words,
        /// Low end of a length.
        low: may Length,
        /// High end of a length.
        high: may Length,
    }

    /// Length put in per shift or day.
    ProductionRateRow {
        /// Method and conditions.
        method: must Words,
        /// Low end.
        low: may Length,
        /// High end.
        high: may Length,
        /// Smallest nominal size of pipe that it is for.
        size_from: may Length,
        /// Largest nominal size of pipe that it is for.
        size_to: may Length,
        /// Shift or day.
        per: must Words,
    }

    /// Shifts for one piece of work beside the bore.
    StageShiftsRow {
        /// The work.
        what: must Words,
        /// Shifts, low.
        low: must Ratio,
        /// Shifts, likely.
        likely: must Ratio,
        /// Shifts, high.
        high: must Ratio,
        /// Depth that they are for each time.
        per_length: may Length,
    }
}

rows! {
    /// Size of a pit, or an addition to the pipe or machine.
    ShaftSizeRow {
        /// Jacking, launch or reception.
        pit: must Words,
        /// Method.
        method: must Words,
        /// Which side of the pit.
        side: must Words,
        /// What the figure is added to; absent where it is the side itself.
        added_to: may Words,
        /// The figure.
        value: may Length,
        /// Low end, or the least.
        low: may Length,
        /// High end, or the most.
        high: may Length,
    }

    /// Area needed at the launch.
    WorkAreaRow {
        /// Work.
        what: must Words,
        /// Area, low end.
        area_low: may Area,
        /// Area, high end.
        area_high: may Area,
    }

    /// Least cover.
    MinimumCoverRow {
        /// Method.
        method: must Words,
        /// Smallest diameter.
        diameter_from: may Length,
        /// Largest diameter.
        diameter_to: may Length,
        /// Ground it is limited to.
        ground: may Words,
        /// Least cover.
        cover: may Length,
        /// Least cover over outside diameter, low end.
        times_low: may Ratio,
        /// Least cover over outside diameter, high end.
        times_high: may Ratio,
    }

    /// A clear distance.
    SeparationRow {
        /// Between what.
        what: must Words,
        /// Least distance.
        clear: may Length,
        /// Least distance as a multiple.
        times: may Ratio,
        /// What it is a multiple of.
        times_of: may Words,
    }

    /// An excavation rule in one number.
    ExcavationRow {
        /// The rule.
        rule: must Words,
        /// Depth, height or distance.
        length: may Length,
    }

    /// Waiting time after a butt fusion.
    JointCoolingRow {
        /// What is waited for.
        what: must Words,
        /// Duration.
        time: must Time,
        /// Wall thickness that the duration is for each time.
        per_wall: may Length,
    }

    /// Butt fusion joints made.
    FusionRateRow {
        /// Smallest pipe size.
        size_from: may Length,
        /// Largest pipe size.
        size_to: must Length,
        /// Joints, low end.
        joints_low: must Ratio,
        /// Joints, high end.
        joints_high: must Ratio,
        /// In what time.
        per: must Words,
    }
}

rows! {
    /// Volume of drilling fluid over volume of soil.
    FluidDemandRow {
        /// Soil.
        soil: must Words,
        /// Least ratio.
        low: must Ratio,
        /// High end, if one is printed.
        high: may Ratio,
    }

    /// Size of a reaming step, as a ratio or as a length.
    ReamStepRow {
        /// Where the habit applies.
        ground: must Words,
        /// Reamer diameter over the bore before it, low end.
        ratio_low: may Ratio,
        /// Reamer diameter over the bore before it, high end.
        ratio_high: may Ratio,
        /// Growth in diameter, low end.
        step_low: may Length,
        /// Growth in diameter, high end.
        step_high: may Length,
    }

    /// Overcut of a jacked or enlarged bore. Where only `high` is there, the source prints one value.
    HoleOvercutRow {
        /// Method.
        method: must Words,
        /// Radius or diameter.
        across: must Across,
        /// `typical`, or `most` for a limit.
        usage: must Words,
        /// Low end.
        low: may Length,
        /// High end.
        high: must Length,
    }

    /// Low, likely and high of a ratio.
    RatioLevelsRow {
        /// Low.
        low: must Ratio,
        /// Likely.
        likely: must Ratio,
        /// High.
        high: must Ratio,
    }

    /// Low, likely and high of a force per length.
    LineLoadLevelsRow {
        /// Low.
        low: must LineLoad,
        /// Likely.
        likely: must LineLoad,
        /// High.
        high: must LineLoad,
    }

    /// Numbers of a short rule for a pull. A column that is not there is another row's subject.
    PullRuleRow {
        /// Factor, share or coefficient.
        ratio: may Ratio,
        /// Length.
        length: may Length,
    }

    /// Least wall of a pulled steel pipe for a band of diameters, as a wall or as a ratio.
    SteelPullWallRow {
        /// Diameter that the row starts above (exclusive).
        size_over: may Length,
        /// Largest diameter (inclusive); none where the row is open above.
        size_to: may Length,
        /// Least wall.
        wall: may Length,
        /// Largest diameter over wall.
        diameter_over_wall: may Ratio,
    }
}

key_words! {
    /// What an overcut counts on.
    pub enum Across: "radius or diameter" {
        /// The radius: the gap on one side.
        #[default]
        Radius = "radius",
        /// The diameter: bore less pipe.
        Diameter = "diameter",
    }
}

rows! {
    /// Published unit friction. Where only `high` is there, the source prints one value or an upper end.
    UnitFrictionRow {
        /// The publication the row belongs to; sets are not mixed.
        set: must Words,
        /// Ground as the source names it, or `any`.
        ground: must Words,
        /// Pipe material, or `any`.
        pipe: must Words,
        /// Lubricant that the value supposes, `none` or `not stated`.
        slurry: must Words,
        /// Low end on the whole outside area.
        low: may Pressure,
        /// High end.
        high: must Pressure,
    }

    /// Friction between a pipe material and the ground. Where only `high` is there, the source prints one value.
    InterfaceFrictionRow {
        /// Surface of the pipe.
        interface: must Words,
        /// Ground as the source names it.
        soil: must Words,
        /// What the value is.
        kind: must FrictionKind,
        /// Static, sliding, or `not stated`.
        state: must Words,
        /// High end.
        high: must Ratio,
    }

    /// Adhesion of clay on a pipe material.
    AdhesionRow {
        /// Surface of the pipe.
        interface: must Words,
        /// Consistency of the clay.
        soil: must Words,
        /// Low end on the area in contact.
        low: must Pressure,
        /// High end.
        high: must Pressure,
        /// Undrained strength that the step ends at, where it goes by consistency.
        strength_to: may Pressure,
    }

    /// Constants of a silo model. A column that is not there is a formula in the source, or not part of it.
    FrictionModelSetRow {
        /// Length added to the outside diameter before the width is worked out.
        width_allowance: may Length,
        /// Side pressure over vertical pressure in the soil column.
        lateral: may Ratio,
        /// Wall friction angle of the soil column over the friction angle.
        wall_over_phi: may Ratio,
        /// Cohesion that the source takes.
        cohesion: may Pressure,
    }

    /// A rule of face resistance or face support. The columns that are there say which form it has.
    FaceRuleRow {
        /// Machine and ground, or what the rule limits.
        machine: must Words,
        /// Force per length of the rim, before the index.
        line: may LineLoad,
        /// Face resistance index that multiplies the line load; not an SPT N.
        index: may Ratio,
        /// Pressure, high end or only value.
        high: may Pressure,
        /// Pressure per SPT blow.
        per_blow: may Pressure,
        /// Most blows that are counted.
        blows_most: may Ratio,
    }

    /// Jacking force after a stop.
    RestartFactorRow {
        /// Ground.
        ground: must Words,
        /// Times the friction, likely.
        likely: may Ratio,
        /// Times the friction, high.
        high: may Ratio,
    }
}

key_words! {
    /// What a friction value of an interface is.
    pub enum FrictionKind: "what a friction value is" {
        /// Tangent of the interface angle: the coefficient of friction.
        #[default]
        TanDelta = "tan_delta",
        /// Interface angle over friction angle of the ground.
        DeltaOverPhi = "delta_over_phi",
    }
}
