//! Stations and shove plan of a jacked pipe, as plain data.

use super::view::{BandView, OriginView, ValueView};
use crate::method::{Shove, Stations};
use crate::quantity::{Band, Role, Shown};
use serde::Serialize;

/// Intermediate jacking stations.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StationsView {
    /// In a few words.
    pub says: String,
    /// Distances behind the face at the end of the drive, from the face on.
    pub places: Vec<ValueView>,
    /// What one may push.
    pub capacity: Option<ValueView>,
    /// Thrust of the main jacks at which they are put to work.
    pub start: Option<ValueView>,
    /// What reaches the wall at the end of the drive while the hindmost pushes.
    pub on_wall: Option<ValueView>,
    /// Source of the least inside diameter that people enter, or of the shares by which stations are placed.
    pub source: String,
    /// Its locator.
    pub at: String,
    /// Its mark.
    pub mark: &'static str,
    #[serde(skip)]
    pub(super) is_told: bool,
    #[serde(skip)]
    pub(super) basis: OriginView,
}

/// One pipe of the shove plan.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ShoveView {
    /// Which pipe, from 1.
    pub pipe: usize,
    /// Advance at which it begins.
    pub from: ValueView,
    /// Advance at which it ends.
    pub to: ValueView,
    /// Least low, greatest likely and high force on the main jacks while it is pushed.
    pub force: BandView,
    /// Force at which to stop and ask.
    pub stop: ValueView,
    /// What sets it.
    pub stop_by: &'static str,
    /// The force on the gauge of the jacks.
    pub gauge: Option<BandView>,
    /// The stop on the gauge of the jacks.
    pub stop_gauge: Option<ValueView>,
    #[serde(skip)]
    pub(super) changes: bool,
}

/// Stations in words and numbers; `basis` tells the origin of the entry diameter, then of the shares.
pub(super) fn stations(
    stations: &Stations,
    [entry, shares]: [OriginView; 2],
    value: impl Fn(Shown) -> ValueView,
) -> StationsView {
    let thrust = |force| value(Shown::of(force, Role::Thrust));
    let says = match stations {
        Stations::NotNeeded => "none needed".to_owned(),
        Stations::TooSmall(inside, least) => {
            let [inside, least] = [*inside, *least].map(|length| value(Shown::of(length, Role::Diameter)).text);
            format!("would be needed and are no option: {inside} inside is less than the {least} that people enter")
        }
        Stations::NotGiven => "would be needed: give rig.station_thrust".to_owned(),
        Stations::NoUse => "would be needed and are of no use: they cannot push their own sections".to_owned(),
        Stations::Placed(placed) => {
            let at: Vec<String> =
                placed.places.iter().map(|place| value(Shown::of(*place, Role::Distance)).text).collect();
            format!(
                "{} by the high force, {} behind the face at the end of the drive, each of {}, at work from {} at the \
                 main jacks; through the pipe behind the hindmost {} reach the wall, all of it while it enters the bore",
                placed.places.len(),
                at.join(" and "),
                thrust(placed.capacity).text,
                thrust(placed.start).text,
                thrust(placed.on_wall).text
            )
        }
    };
    let placed = if let Stations::Placed(placed) = stations { Some(placed) } else { None };
    let basis = if matches!(stations, Stations::TooSmall(..)) { entry } else { shares };
    StationsView {
        says,
        places: placed.map_or_else(Vec::new, |placed| {
            placed.places.iter().map(|place| value(Shown::of(*place, Role::Distance))).collect()
        }),
        capacity: placed.map(|placed| thrust(placed.capacity)),
        start: placed.map(|placed| thrust(placed.start)),
        on_wall: placed.map(|placed| thrust(placed.on_wall)),
        source: basis.source.clone(),
        at: basis.at.clone(),
        mark: basis.mark,
        is_told: *stations != Stations::NotNeeded,
        basis,
    }
}

/// One pipe of the plan.
pub(super) fn shove(shove: &Shove, value: impl Fn(Shown) -> ValueView) -> ShoveView {
    let band =
        |band: Band<Shown>| BandView { low: value(band.low), likely: value(band.likely), high: value(band.high) };
    let (from, to) = shove.extent;
    ShoveView {
        pipe: shove.number,
        from: value(Shown::of(from, Role::Distance)),
        to: value(Shown::of(to, Role::Distance)),
        force: band(shove.force.map(|force| Shown::of(force, Role::Thrust))),
        stop: value(Shown::of(shove.stop, Role::Thrust)),
        stop_by: shove.stop_by.label(),
        gauge: shove.gauge.map(|(read, _)| band(read.map(|pressure| Shown::of(pressure, Role::Strength)))),
        stop_gauge: shove.gauge.map(|(_, stop)| value(Shown::of(stop, Role::Strength))),
        changes: shove.changes,
    }
}
