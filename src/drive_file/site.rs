//! What the engineer writes of flow, surface, crossed services, pits and pace of the work. All of it may be left out.

use super::declare::fields;
use crate::handbook::Service;
use crate::quantity::{Force, Length, Pressure, Ratio, Time, Velocity, Volume, VolumeRate};
use crate::yaml::{Words, key_words};

fields! {
    /// Flow that a gravity sewer is built for.
    FlowFile at ["design_flow."] {
        /// Flow that must keep it clean: the least peak of a day.
        min: may<VolumeRate> as Flow, Within(lps(1e-3), lps(100_000.0)), usual(lps(0.05), lps(20_000.0)),
            ["20 L/s", "300 gal_us/min"];
        /// Greatest flow.
        max: may<VolumeRate> as Flow, Within(lps(1e-3), lps(100_000.0)), usual(lps(0.05), lps(20_000.0)),
            ["20 L/s", "300 gal_us/min"];
        /// Manning roughness, instead of the table.
        roughness: may<Ratio> as Ratio, Within(0.005, 0.05), usual(0.009, 0.015),
            ["0.013", "0.013"], else "the table of roughness";
    }

    /// The pipe that is laid in a casing afterwards.
    CarrierFile at ["carrier."] {
        /// What it carries: a sewer has to be set to its own grade in the casing.
        service: must<Service>;
        /// Its greatest outside diameter, over joints and couplings.
        outside_diameter: must<Length> as Diameter, Within(mm(20.0), m(4.0)), usual(mm(60.0), m(2.0)), ["330 mm", "13 in"];
        /// Rise of a sewer from the launch pit to the reception pit over the length, as that of the drive.
        grade: may<Ratio> as Slope, Within(-STEEPEST, STEEPEST), usual(percent(-15.0), percent(15.0)),
            ["0.4 %", "0.4 %"], else "that of the casing";
    }

    /// How spoil is carried away.
    ClearingFile at ["clearing."] {
        /// Tank or skip that it goes into.
        tank: must<Volume> as Volume, Within(0.02, 500.0), usual(0.2, 40.0), ["4 m3", "5 yd3"];
        /// Water that is added to it, over its volume in the ground.
        water: may<Ratio> as Ratio, Within(0.0, 20.0), usual(0.0, 5.0), ["50 %", "50 %"], else "none, stated";
        /// Time for which the work stands while a full one is away.
        emptying: may<Time> as Duration, Within(min(1.0), hours(48.0)), usual(min(5.0), hours(4.0)), ["30 min", "30 min"];
    }

    /// Pressure that a closed face is held at.
    FacePressureFile at ["face_pressure."] {
        /// The least.
        low: must<Pressure> as Pressure, Within(0.0, mpa(2.0)), ["120 kPa", "17 psi"];
        /// The greatest.
        high: must<Pressure> as Pressure, Within(0.0, mpa(2.0)), ["140 kPa", "20 psi"];
    }

    /// The surface over the bore.
    SurfaceFile at ["surface."] {
        /// What lies over the bore.
        over: may<Over>, else "a road on the safe side, open ground at best, and nothing decided";
        /// What the railway over it permits, by its word: without it a pipe under tracks lies in a casing.
        railway_permits: may<RailwayPermits>;
        /// Settlement that its owner allows.
        allowed_settlement: may<Length> as Settlement, Within(mm(0.5), mm(500.0)), usual(mm(3.0), mm(50.0)),
            ["20 mm", "0.75 in"];
        /// Slope of the settled surface that its owner allows.
        allowed_slope: may<Ratio> as Slope, Within(1.0 / 20_000.0, 1.0 / 20.0), usual(1.0 / 1_000.0, 1.0 / 200.0),
            ["0.2 %", "0.2 %"];
    }

    /// A service that the bore crosses, or that runs beside it.
    CrossingFile at ["crossings[]."] {
        /// Distance from the launch pit.
        at: must<Length> as Distance, Within(0.0, LONGEST), ["60 m", "200 ft"],
            said ["distance", "chainage", "station"];
        /// Depth below ground of the side that faces the bore.
        depth: must<Length> as Depth, Within(m(0.05), DEEPEST), usual(m(0.3), m(8.0)), ["4.2 m", "14 ft"];
        /// How far beside the axis of the bore that side lies, for a service that runs along it.
        beside: may<Length> as Distance, UpTo(m(100.0)), usual(0.0, m(30.0)), ["0.5 m", "2 ft"], else "it crosses";
        /// What it is, in words.
        kind: may<Words>, else "service",
            said ["name", "type"];
        /// Settlement that its owner allows.
        allowed_settlement: may<Length> as Settlement, Within(mm(0.5), mm(500.0)), usual(mm(3.0), mm(50.0)),
            ["20 mm", "0.75 in"];
        /// Slope that its owner allows.
        allowed_slope: may<Ratio> as Slope, Within(1.0 / 20_000.0, 1.0 / 20.0), usual(1.0 / 1_000.0, 1.0 / 200.0),
            ["0.2 %", "0.2 %"];
        /// Clear distance to the bore that its owner asks for.
        clearance: may<Length> as Depth, Within(m(0.05), m(20.0)), usual(m(0.3), m(5.0)), ["0.5 m", "2 ft"];
    }

    /// What is known of a pit beyond its depth.
    PitSpaceFile at ["launch.space.", "reception.space."] {
        /// Length along the drive, inside the shoring.
        length: must<Length> as Distance, Within(m(0.8), m(60.0)), usual(m(2.0), m(15.0)), ["7 m", "23 ft"];
        /// Width, inside the shoring.
        width: must<Length> as Distance, Within(m(0.8), m(60.0)), usual(m(2.0), m(15.0)), ["3 m", "10 ft"];
        /// Depth of the floor below ground, where it is deeper than the invert.
        floor_depth: may<Length> as Depth, Within(m(0.3), m(70.0)), ["4.2 m", "14 ft"], else "the invert";
        /// Tight soil left under the floor, over ground with water under pressure.
        tight_soil: may<Length> as Depth, Within(m(0.05), m(100.0)), ["5 m", "16 ft"];
        /// Water pressure at the foot of the tight soil.
        water_pressure: may<Pressure> as UnitFriction, UpTo(mpa(2.0)), ["40 kPa", "800 psf"];
        /// Permeability of water-bearing ground that the pit stands in.
        permeability: may<Velocity> as Permeability, Within(m_per_s(1e-12), m_per_s(1.0)), ["1e-5 m/s", "3e-5 ft/s"];
        /// Depth below ground of the tight base under that ground.
        tight_base_depth: may<Length> as Depth, Within(m(0.05), m(100.0)), ["5 m", "16 ft"];
        /// What the crane lifts at the radius of the pit.
        crane: may<Force> as Thrust, Within(kn(1.0), mn(20.0)), usual(kn(10.0), mn(2.0)), ["900 kN", "100 tonf_us"];
    }

    /// When people work. What is left standing over a night asks for more force to move on.
    WorkFile at ["work."] {
        /// Length of a shift.
        shift_length: may<Time> as Duration, Within(hours(2.0), hours(24.0)), usual(hours(6.0), hours(12.0)),
            ["8 h", "8 h"], else "that of `pace`, else the table of durations";
        /// Shifts of a day.
        shifts_a_day: may<Ratio> as Count, Within(1.0, 3.0), ["1", "1"], else "one";
        /// Whether each stage is worked through to its end without a night's stop.
        round_the_clock: may<bool>, else "false";
    }

    /// How far the work gets in a shift, by the contractor, and what a shift costs.
    PaceFile at ["pace."] {
        /// Pilot stem.
        pilot: may<Length> as Distance, Within(m(0.1), m(500.0)), usual(m(2.0), m(100.0)),
            ["60 m", "200 ft"], else "the table of rates";
        /// Casing.
        casing: may<Length> as Distance, Within(m(0.1), m(500.0)), usual(m(2.0), m(100.0)),
            ["15 m", "50 ft"], else "the table of rates";
        /// One reaming pass.
        reaming: may<Length> as Distance, Within(m(0.1), m(500.0)), usual(m(2.0), m(100.0)),
            ["60 m", "200 ft"], else "the table of rates";
        /// Pipe pushed.
        jacking: may<Length> as Distance, Within(m(0.1), m(500.0)), usual(m(2.0), m(100.0)),
            ["60 m", "200 ft"], else "the table of rates";
        /// Pipe pulled.
        pullback: may<Length> as Distance, Within(m(0.1), m(500.0)), usual(m(2.0), m(300.0)), ["60 m", "200 ft"];
        /// Price of one shift, in the user's money.
        shift_price: may<Ratio> as Ratio, UpTo(1e12), ["250", "250"];
        /// Price of setting up and leaving.
        setup_price: may<Ratio> as Ratio, UpTo(1e12), ["250", "250"];
        /// Length of a shift, as in `work`.
        shift_length: may<Time> as Duration, Within(hours(2.0), hours(24.0)), usual(hours(6.0), hours(12.0)),
            ["6 h", "6 h"], else "the table of durations";
        /// Shifts to dig and shore both pits.
        pits: may<Ratio> as Shifts, Within(0.0, 10_000.0), ["12", "12"], else "the table of works";
        /// Shifts to set up.
        set_up: may<Ratio> as Shifts, Within(0.0, 10_000.0), ["12", "12"], else "the table of works";
        /// Shifts to grout the annulus.
        grouting: may<Ratio> as Shifts, Within(0.0, 10_000.0), ["12", "12"], else "the table of works";
        /// Shifts to recover the tools and clear the site.
        recovery: may<Ratio> as Shifts, Within(0.0, 10_000.0), ["0.5 %", "0.5 %"], else "the table of works";
        /// Shifts that the programme leaves for the whole of it.
        programme: may<Ratio> as Shifts, UpTo(10_000.0), ["12", "12"];
        /// Price of one pit, in the user's money.
        pit_price: may<Ratio> as Ratio, UpTo(1e12), ["250", "250"];
        /// Price of spoil carried away, measured in the ground.
        spoil_price: block<VolumePriceFile>;
        /// Price of grout.
        grout_price: block<VolumePriceFile>;
        /// What the work may cost, in the user's money.
        budget: may<Ratio> as Ratio, UpTo(1e12), ["90000", "90000"];
    }

    /// Price by volume, in the user's money.
    #[derive(PartialEq)]
    VolumePriceFile at ["pace.spoil_price.", "pace.grout_price."] {
        /// Price.
        price: must<Ratio> as Ratio, UpTo(1e12), ["250", "250"];
        /// Of this volume.
        per: must<Volume> as Volume, UpTo(1e6), ["2 m3", "2 m3"];
    }

    /// Price of a pipe by length, in the user's money.
    #[derive(PartialEq)]
    LengthPriceFile at ["candidates[].price."] {
        /// Price.
        price: must<Ratio> as Ratio, UpTo(1e12), ["250", "250"];
        /// Of this length.
        per: must<Length> as Distance, UpTo(1e6), ["60 m", "200 ft"];
    }
}

key_words! {
    /// What lies over the bore.
    pub enum Over: "what lies over the bore" {
        /// Nothing that has a rule of its own.
        #[default]
        Open = "open",
        /// A road.
        Road = "road",
        /// A railway.
        Railway = "railway",
        /// A runway, taxiway or apron of an airport.
        Runway = "runway",
        /// A stream, river or pond: the least of `depths` is under its bed.
        Stream = "stream",
    }
    meanings {
        "street" => ["road"],
        "highway" => ["road"],
        "motorway" => ["road"],
        "carriageway" => ["road"],
        "pavement" => ["road"],
        "rail" => ["railway"],
        "railroad" => ["railway"],
        "track" => ["railway"],
        "tracks" => ["railway"],
        "airport" => ["runway"],
        "taxiway" => ["runway"],
        "apron" => ["runway"],
        "river" => ["stream"],
        "creek" => ["stream"],
        "brook" => ["stream"],
        "canal" => ["stream"],
        "pond" => ["stream"],
        "field" => ["open"],
        "fields" => ["open"],
        "grass" => ["open"],
    }

    /// What a railway permits under its tracks.
    pub enum RailwayPermits: "what the railway permits" {
        /// A pipe without a casing round it.
        #[default]
        Uncased = "uncased",
    }
}
