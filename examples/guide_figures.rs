//! Draws the figures of the guide, each by the laws of its page, into `src/guide/figures`.
//!
//! ```sh
//! cargo run --example guide_figures
//! ```

use jackpull::law::Law;
use jackpull::laws::collapse::CriticalPressure;
use jackpull::laws::guidance::GuidedError;
use jackpull::laws::open_bore::SlidingOnBottom;
use jackpull::laws::part_full::{FlowRatio, HydraulicRadius, WettedAngle};
use jackpull::laws::pull::{Capstan, StraightPull};
use jackpull::laws::settlement::{AnnulusLoss, GreatestSettlement, SettlementAtOffset, TroughWidth};
use jackpull::laws::soil::{BoreClosure, LayerStress, MarstonLoad};
use jackpull::laws::steering::{JointAngleFromDeviation, JointAngleFromRadius};
use jackpull::laws::stem::{BeddingInClay, EmbeddedBuckling, EulerBuckling, TubeStiffness};
use jackpull::laws::thrust::FrictionForce;
use jackpull::laws::turned_joint::StressRatioAtAngle;
use jackpull::laws::wall::{PassiveCoefficient, PassiveStrip, UndrainedStrip};
use jackpull::quantity::{Angle, LineLoad, Measure, UnitWeight, kilopascals, metres, number};
use jackpull::report::{Drawing, Figure, Scale};

/// A line of a plot: how it is drawn, what it shows, and its height at a place.
type Curve<'a> = (&'static str, &'a str, &'a dyn Fn(f64) -> f64);

/// The ends of an axis, and what it tells.
type Axis = (f64, f64, &'static str);

fn main() -> std::io::Result<()> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/src/guide/figures");
    std::fs::create_dir_all(folder)?;
    for figure in figures() {
        std::fs::write(format!("{folder}/{}.svg", figure.name), figure.svg)?;
    }
    Ok(())
}

/// A figure for each page of a group of laws.
pub(crate) fn figures() -> [Figure; 12] {
    [
        thrust(),
        pipe_end(),
        steering(),
        stem(),
        pull(),
        collapse(),
        open_bore(),
        loads(),
        settlement(),
        pits(),
        hydraulics(),
        guidance(),
    ]
}

/// Lines over one axis, each named at its end.
fn plot(name: &'static str, title: &str, x: Axis, y: Axis, curves: &[Curve<'_>]) -> Figure {
    const STEPS: u32 = 140;
    let along = Scale::new((x.0, x.1), (44.0, 480.0));
    // What goes down is drawn downwards.
    let up = if y.0 < y.1 { Scale::new((y.0, y.1), (206.0, 26.0)) } else { Scale::new((y.1, y.0), (26.0, 206.0)) };
    let mut drawing = Drawing::new(240.0);
    drawing.axes(&along, &up, (x.2, y.2));
    let places = (0..=STEPS).map(|step| x.0 + (x.1 - x.0) * f64::from(step) / f64::from(STEPS));
    let mut labels = Vec::new();
    for (class, label, height) in curves {
        let shown = |place: &f64| (y.0.min(y.1)..=y.0.max(y.1)).contains(&height(*place));
        let points: Vec<_> =
            places.clone().filter(shown).map(|place| (along.at(place), up.at(height(place)))).collect();
        labels.extend(points.last().map(|end| (end.1, (*label).to_owned())));
        drawing.path(class, points);
    }
    let told = curves.iter().map(|(_, label, height)| format!("{label}: {:.3} to {:.3}", height(x.0), height(x.1)));
    let words = format!("{}, over {} from {} to {}. {}", y.2, x.2, x.0, x.1, told.collect::<Vec<_>>().join("; "));
    drawing.labels("small", along.at(x.1) + 6.0, labels);
    drawing.finish(name, title, words)
}

fn degrees(degrees: f64) -> Angle {
    Angle::from_si(degrees.to_radians())
}

fn thrust() -> Figure {
    let force = |friction: f64, length: f64| {
        let (unit_friction, length) = (kilopascals(friction), metres(length));
        FrictionForce { unit_friction, outside_diameter: metres(0.338), length }.value().value / 1e3
    };
    let sliding = |length: f64| {
        let weight = LineLoad::from_si(1e3);
        let along = SlidingOnBottom { friction: number(0.45), multiplier: number(1.25), weight }.value();
        (along * metres(length)).value / 1e3
    };
    plot(
        "thrust",
        "Friction on a pipe of 338 mm",
        (0.0, 100.0, "length, m"),
        (0.0, 900.0, "force, kN"),
        &[
            ("high", "8 kPa all round", &|length| force(8.0, length)),
            ("likely", "4 kPa all round", &|length| force(4.0, length)),
            ("low", "1 kPa, well lubricated", &|length| force(1.0, length)),
            ("limit", "on the bottom of a bore that stands", &sliding),
        ],
    )
}

fn pipe_end() -> Figure {
    let share = |thickness: f64, angle: f64| {
        let (outside_diameter, inside_diameter, thickness) = (metres(1.0), metres(0.8), metres(thickness));
        let (modulus, greatest_stress, angle) = (kilopascals(80e3), kilopascals(20e3), degrees(angle));
        let joint =
            StressRatioAtAngle { outside_diameter, inside_diameter, thickness, modulus, greatest_stress, angle };
        joint.value().value
    };
    plot(
        "pipe_end",
        "What a turned joint passes on: ring of 1.0 m by 0.8 m, packer of 80 MPa, 20 MPa at the edge",
        (0.0, 1.5, "angle at the joint, deg"),
        (0.0, 1.0, "mean over greatest stress"),
        &[
            ("likely", "packer of 20 mm", &|angle| share(0.020, angle)),
            ("high", "packer of 10 mm", &|angle| share(0.010, angle)),
            ("low", "one half: the joint begins to gape", &|_| 0.5),
        ],
    )
}

fn steering() -> Figure {
    let off = |length: f64| {
        let deviation = metres(0.010);
        JointAngleFromDeviation { deviation, pipe_length: metres(length) }.value().value.to_degrees()
    };
    let curved = |length: f64| {
        JointAngleFromRadius { pipe_length: metres(length), radius: metres(300.0) }.value().value.to_degrees()
    };
    plot(
        "steering",
        "The angle at a joint",
        (0.8, 4.0, "length of a pipe, m"),
        (0.0, 0.8, "angle, deg"),
        &[("likely", "10 mm off the line in each pipe", &off), ("stop", "on a curve of 300 m", &curved)],
    )
}

fn stem() -> Figure {
    let modulus = kilopascals(210e6);
    let tube = |wall: f64| TubeStiffness { outside_diameter: metres(0.1), wall: metres(wall) }.value();
    let free = |wall: f64, length: f64| {
        let (second_moment, free_length) = (tube(wall), metres(length));
        EulerBuckling { modulus, second_moment, free_length, end_factor: number(1.0) }.value().value / 1e3
    };
    let bedding = BeddingInClay { bedding_per_strength: number(67.0), strength: kilopascals(10.0) }.value();
    let held = EmbeddedBuckling { bedding, modulus, second_moment: tube(0.010) }.value().value / 1e3;
    plot(
        "stem",
        "Buckling of a stem of 100 mm, hinged at both ends",
        (1.0, 5.0, "free length, m"),
        (0.0, 3000.0, "force, kN"),
        &[
            ("likely", "wall of 10 mm", &|length| free(0.010, length)),
            ("high", "wall of 6 mm", &|length| free(0.006, length)),
            ("stop", "10 mm, held by clay of 10 kPa", &|_| held),
        ],
    )
}

fn pull() -> Figure {
    // PE 315 mm SDR 11: what lies on the ground comes in over the bend of a ramp, and floats in the bore.
    let dragged = |friction: f64, weight: f64, length: f64| {
        let (friction, net_weight) = (number(friction), LineLoad::from_si(weight));
        StraightPull { friction, net_weight, length: metres(length), rise: degrees(0.0) }.value()
    };
    let through = |bend: f64, within: f64| {
        let tension = dragged(0.5, 270.0, 100.0 - within);
        let tail = Capstan { tension, friction: number(0.5), angle: degrees(bend) }.value();
        (tail + dragged(0.3, -610.0, within)).value / 1e3
    };
    plot(
        "pull",
        "Pull of 100 m of PE 315 mm SDR 11: 0.27 kN/m on the ground, 0.61 kN/m afloat in the bore",
        (0.0, 100.0, "length that is in, m"),
        (0.0, 24.0, "pull, kN"),
        &[
            ("high", "ramp with a bend of 30 deg", &|within| through(30.0, within)),
            ("likely", "bend of 15 deg (thick)", &|within| through(15.0, within)),
            ("low", "straight in (dotted)", &|within| through(0.0, within)),
        ],
    )
}

fn collapse() -> Figure {
    let head = |modulus: f64, dimension_ratio: f64| {
        let (modulus, poisson) = (kilopascals(modulus * 1e3), number(0.45));
        let (dimension_ratio, one) = (number(dimension_ratio), number(1.0));
        let ring = CriticalPressure { modulus, poisson, dimension_ratio, ovality_factor: one, tension_factor: one };
        ring.value().value / 1e3
    };
    plot(
        "collapse",
        "Pressure at which a round ring of PE collapses",
        (9.0, 26.0, "diameter over wall"),
        (0.0, 1000.0, "pressure, kPa"),
        &[
            ("likely", "at once, 800 MPa", &|dimension_ratio| head(800.0, dimension_ratio)),
            ("stop", "after fifty years, 200 MPa", &|dimension_ratio| head(200.0, dimension_ratio)),
        ],
    )
}

fn open_bore() -> Figure {
    let closed = |overburden: f64, strength: f64| {
        let (overburden, undrained_strength) = (kilopascals(overburden), kilopascals(strength));
        // Modulus of 200 times the strength, a third of it in shear.
        let shear_modulus = undrained_strength * (200.0 / 3.0);
        BoreClosure { overburden, undrained_strength, shear_modulus, bore_radius: metres(0.2) }.value().value * 1e3
    };
    plot(
        "open_bore",
        "How far clay closes round an empty bore of 400 mm",
        (20.0, 80.0, "undrained strength, kPa"),
        (0.0, 60.0, "closure on the radius, mm"),
        &[
            ("high", "under 150 kPa, 8 m deep", &|strength| closed(150.0, strength)),
            ("likely", "under 80 kPa, 4 m deep", &|strength| closed(80.0, strength)),
            ("low", "play of 25 mm", &|_| 25.0),
        ],
    )
}

fn loads() -> Figure {
    let (unit_weight, bore) = (UnitWeight::from_si(19e3), metres(0.6));
    let load = |cohesion: f64, depth: f64| {
        let (depth, lateral_friction, cohesion) = (metres(depth), number(0.130), kilopascals(cohesion));
        MarstonLoad { unit_weight, bore, depth, lateral_friction, cohesion }.value().value / 1e3
    };
    let column = |depth: f64| {
        let stress = LayerStress { unit_weight, thickness: metres(depth) }.value();
        (stress * bore).value / 1e3
    };
    plot(
        "loads",
        "Earth load over a bore of 0.6 m",
        (0.0, 8.0, "depth of the crown, m"),
        (0.0, 100.0, "load, kN/m"),
        &[
            ("low", "the whole column", &column),
            ("likely", "hanging in its sides", &|depth| load(0.0, depth)),
            ("high", "with 3 kPa of cohesion", &|depth| load(3.0, depth)),
        ],
    )
}

fn settlement() -> Figure {
    let sunk = |share: f64, depth: f64, offset: f64| {
        let (closed_share, bore, outside_diameter) = (number(share), metres(0.45), metres(0.315));
        let lost_ground = AnnulusLoss { closed_share, bore, outside_diameter }.value();
        let trough_width = TroughWidth { ratio: number(0.5), axis_depth: metres(depth), level: metres(0.0) }.value();
        let greatest_settlement = GreatestSettlement { lost_ground, trough_width }.value();
        let beside = SettlementAtOffset { greatest_settlement, offset: metres(offset), trough_width };
        beside.value().value * 1e3
    };
    plot(
        "settlement",
        "Settlement over an annulus of 450 mm round 315 mm",
        (-8.0, 8.0, "from the axis, m"),
        (18.0, 0.0, "settlement, mm"),
        &[
            ("high", "all of it closed, 4 m deep", &|offset| sunk(1.0, 4.0, offset)),
            ("likely", "half of it, 4 m deep (thick)", &|offset| sunk(0.5, 4.0, offset)),
            ("stop", "all of it, 8 m deep (dashed)", &|offset| sunk(1.0, 8.0, offset)),
        ],
    )
}

fn pits() -> Figure {
    let (spread, width) = (number(1.0), metres(3.0));
    let (top_stress, unit_weight) = (kilopascals(36.0), UnitWeight::from_si(18e3));
    let sand = |height: f64| {
        let coefficient = PassiveCoefficient { friction_angle: degrees(30.0) }.value();
        let (height, cohesion) = (metres(height), kilopascals(0.0));
        PassiveStrip { spread, width, height, top_stress, unit_weight, coefficient, cohesion }.value().value / 1e3
    };
    let clay = |strength: f64, height: f64| {
        let (height, undrained_strength) = (metres(height), kilopascals(strength));
        UndrainedStrip { spread, width, height, top_stress, unit_weight, undrained_strength }.value().value / 1e3
    };
    plot(
        "pits",
        "Whole resistance behind a wall 3 m wide, its top 2 m down",
        (1.0, 4.0, "height of the wall, m"),
        (0.0, 2700.0, "resistance, kN"),
        &[
            ("likely", "sand of 30 deg, above the water", &sand),
            ("high", "clay of 50 kPa", &|height| clay(50.0, height)),
            ("stop", "clay of 25 kPa", &|height| clay(25.0, height)),
        ],
    )
}

fn hydraulics() -> Figure {
    let wet = |depth: f64| WettedAngle { depth_ratio: number(depth) }.value();
    let flow = |depth: f64| FlowRatio { wetted_angle: wet(depth) }.value().value;
    let speed = |depth: f64| {
        let radius = HydraulicRadius { inside_diameter: metres(1.0), wetted_angle: wet(depth) }.value();
        (radius / metres(0.25)).value.powf(2.0 / 3.0)
    };
    plot(
        "hydraulics",
        "A round pipe part full, over the same pipe full",
        (0.0, 1.0, "depth over diameter"),
        (0.0, 1.2, "share of full"),
        &[("likely", "flow (thick)", &flow), ("stop", "velocity (dashed)", &speed)],
    )
}

fn guidance() -> Figure {
    let strayed = |error: f64, length: f64| {
        let (error, told_at, length, least) = (metres(error), metres(60.0), metres(length), metres(0.010));
        GuidedError { error, told_at, length, least }.value().value * 1e3
    };
    plot(
        "guidance",
        "Error of a pilot that is kept to a beam, at least 10 mm",
        (10.0, 150.0, "length, m"),
        (0.0, 160.0, "error, mm"),
        &[
            ("high", "25 mm at 60 m", &|length| strayed(0.025, length)),
            ("likely", "15 mm at 60 m", &|length| strayed(0.015, length)),
        ],
    )
}
