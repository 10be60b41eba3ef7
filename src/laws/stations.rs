//! Intermediate jacking stations: how long the sections are that each pushes, and so how many there are and where.
//!
//! Seen from the shield, the first station takes the face and the friction of the section ahead of it, each further one
//! the friction of its own section, and the main jacks the last section. [`shortest_run`] gives the length of the
//! sections that move through all of the ground and [`reach`] that of the last, which stays at the shaft.
//!
//! ```
//! // 200 m of 1.2 m pipe, 5 kPa, face 300 kN, stations of 2,000 kN at 60 and 80 %, 3,000 kN at the main jacks.
//! use jackpull::law::Law;
//! use jackpull::laws::stations::StationCount;
//! use jackpull::quantity::{FromText, Length, Ratio};
//! // 18.85 kN/m: 47.7 m, 84.9 m and 159.2 m; the main jacks alone push 143.2 m.
//! let count = StationCount {
//!     drive: Length::from_text("200 m")?,
//!     alone: Length::from_text("143.2 m")?,
//!     first: Length::from_text("47.7 m")?,
//!     next: Length::from_text("84.9 m")?,
//!     last: Length::from_text("159.2 m")?,
//! };
//! assert_eq!(count.value(), Ratio::from_text("1")?);
//! # Ok::<(), jackpull::quantity::QuantityError>(())
//! ```

use crate::law::laws;
use crate::quantity::{Force, Length, LineLoad, Ratio};

laws! {
    /// Number of intermediate stations: none where the main jacks push the drive alone, else
    /// `n = 1 + ceil((L - L_1 - L_m) / L_2)`, no less than 1.
    ///
    /// With one utilisation and one capacity throughout it is the total force over the usable push of one, rounded up,
    /// less one.
    StationCount "number of jacking stations" {
        /// Length of the drive.
        drive "L": Length as Distance [> 0.0],
        /// Longest drive without a station (what the main jacks push with the face ahead).
        alone "": Length as Distance [>= 0.0],
        /// Section of the first station.
        first "L_1": Length as Distance [> 0.0],
        /// Section of each further station (section of each further one).
        next "L_2": Length as Distance [> 0.0],
        /// Section of the main jacks (what the main jacks push without the face).
        last "L_m": Length as Distance [> 0.0],
    } -> Ratio as Count;
    form "n = 0 where drive is no more than alone, else 1 + ceil((drive - first - last) / next), no less than 1";
    from Judgement "jackpull" "sections of the stations end to end along the drive";
    valid "drive and sections positive, alone not negative";
    value |s| {
        let further = ((s.drive - s.first - s.last) / s.next).value.ceil().max(0.0);
        Ratio::from(if s.drive <= s.alone { 0.0 } else { 1.0 + further })
    };

    /// Distance of a station behind the face: `x = L_1 + (k - 1) L_2`.
    ///
    /// Rounded down to whole pipes, never up.
    StationDistance "place of a jacking station" {
        /// Which station, counted from the face (1 next to the face).
        station "k": Ratio as Count [>= 1.0],
        /// Section of the first station.
        first "L_1": Length as Distance [>= 0.0],
        /// Section of each further station.
        next "L_2": Length as Distance [>= 0.0],
    } -> Length as Distance;
    form "x = first + (station - 1) next";
    from Judgement "jackpull" "sections of the stations end to end along the drive";
    valid "station at least 1, sections not negative";
    value |s| s.first + (s.station.value - 1.0) * s.next;

    /// Thrust of the main jacks at which the stations are put to work: `F = u min(P_s, P_m)`.
    ///
    /// It is recalled both of the station and of the main jacks: here whichever comes first.
    StationStart "thrust that starts the jacking stations" {
        /// Share of capacity.
        utilisation "u": Ratio as Percent [>= 0.0 <= 1.0],
        /// Capacity of a station.
        station_capacity "P_s": Force as Thrust [>= 0.0],
        /// Capacity of the main jacks.
        main_capacity "P_m": Force as Thrust [>= 0.0],
    } -> Force as Thrust;
    form "F = utilisation min(station_capacity, main_capacity)";
    from Memory "gb_50268" "section 6.3, with CECS 246, start of the intermediate stations; the lesser of two readings";
    valid "utilisation 0 to 1, capacities not negative";
    value |s| s.utilisation * s.station_capacity.min(s.main_capacity);

    /// What reaches the thrust wall while a station pushes: its thrust less the friction that holds the pipe behind it,
    /// `F = max(P - F_t, 0)`.
    ///
    /// Stations relieve the wall of the friction ahead only as far as the pipe behind them holds fast.
    ThrustThroughTail "thrust of a station that reaches the wall" {
        /// Thrust of the station.
        station_thrust "P": Force as Thrust [>= 0.0],
        /// Friction of the pipe behind it (low value, of all pipe behind the station).
        tail_friction "F_t": Force as Thrust [>= 0.0],
    } -> Force as Thrust;
    form "F = station_thrust - tail_friction, no less than 0";
    from Judgement "jackpull" "forces on the pipe behind a station that pushes";
    valid "forces not negative";
    value |s| (s.station_thrust - s.tail_friction).max(Force::default());
}

/// A part of the drive with the same friction per length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Run {
    /// Its length.
    pub length: Length,
    /// Friction of a metre of pipe in it.
    pub friction: LineLoad,
}

/// Length from the start of `runs` over which their friction comes to `force`; `None` where it never does.
///
/// With the runs from the shaft on, this is what the main jacks push behind the last station.
pub fn reach(runs: impl Iterator<Item = Run>, force: Force) -> Option<Length> {
    let (mut length, mut left) = (Length::default(), force);
    for run in runs {
        let friction = run.friction * run.length;
        if friction >= left {
            // A run without friction is only met here where no force is left.
            let within = if friction > Force::default() { left / run.friction } else { Length::default() };
            return Some(length + within.max(Length::default()));
        }
        left -= friction;
        length += run.length;
    }
    None
}

/// Shortest piece of the drive, wherever it lies, whose friction comes to `force`; `None` where not even the whole
/// does.
///
/// A section of pipe behind a station moves through all of the drive: it may be no longer than this. Friction being
/// the same within a run, the shortest piece begins or ends where a run does. The runs are told in both directions.
pub fn shortest_run<A, B>(ahead: impl Fn() -> A, back: impl Fn() -> B, force: Force) -> Option<Length>
where
    A: Iterator<Item = Run>,
    B: Iterator<Item = Run>,
{
    let from = 0..ahead().count();
    let one = from.clone().filter_map(|from| reach(ahead().skip(from), force));
    let other = from.filter_map(|from| reach(back().skip(from), force));
    one.chain(other).reduce(Length::min)
}
