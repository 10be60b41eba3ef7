//! Every number of the tables named here, inside bounds that another hand wrote from general knowledge: table, column (`*`
//! for any), lowest and highest. Others have tighter ones in `tables.rs`.

use jackpull::Handbook;
use jackpull::quantity::{
    Angle, Area, Force, FromText, Length, LineLoad, LinearMassDensity, Mass, MassDensity, Measure, Pressure, Ratio,
    ThermalExpansion, ThermodynamicTemperature, Time, UnitWeight, Velocity, Volume,
};
use std::collections::BTreeSet;

include!("bounds.in");

/// The value of a text of any dimension, with a mark of the dimension; `None` for words.
fn number(text: &str) -> Option<(usize, f64)> {
    fn read<Q: FromText>(text: &str) -> Option<f64> {
        Q::from_text(text).ok().map(Measure::si)
    }
    let readers: [fn(&str) -> Option<f64>; 16] = [
        read::<Ratio>,
        read::<Length>,
        read::<Area>,
        read::<Volume>,
        read::<Force>,
        read::<Pressure>,
        read::<LineLoad>,
        read::<UnitWeight>,
        read::<MassDensity>,
        read::<Time>,
        read::<Velocity>,
        read::<ThermodynamicTemperature>,
        read::<Angle>,
        read::<Mass>,
        read::<LinearMassDensity>,
        read::<ThermalExpansion>,
    ];
    readers.iter().enumerate().find_map(|(dimension, read)| read(text).map(|value| (dimension, value)))
}

#[test]
fn every_number_is_inside_its_bounds() {
    let mut faults = Vec::new();
    let mut met = BTreeSet::new();
    for table in Handbook::TABLES.iter().filter(|table| BOUNDS.iter().any(|(bounded, ..)| bounded == *table)) {
        for row in Handbook::embedded().written(table).unwrap() {
            for (column, text) in &row.columns {
                let Some((dimension, value)) = number(text) else { continue };
                let bound =
                    BOUNDS.iter().position(|(bounded, of, ..)| bounded == table && (of == column || *of == "*"));
                let Some((place, (.., low, high))) = bound.map(|place| (place, BOUNDS[place])) else {
                    faults.push(format!("{table}/{}/{column}: no bounds", row.key));
                    continue;
                };
                met.insert(place);
                let (low, high) = (number(low).unwrap(), number(high).unwrap());
                assert!(low.0 == high.0 && low.1 < high.1, "{table}/{column}: bad bounds");
                if low.0 != dimension || !(low.1 <= value && value <= high.1) {
                    faults.push(format!("{table}/{}/{column}: {text} is outside {:?}", row.key, BOUNDS[place]));
                }
            }
        }
    }
    faults.extend(
        BOUNDS
            .iter()
            .enumerate()
            .filter(|(place, _)| !met.contains(place))
            .map(|(_, bound)| format!("{bound:?} meets nothing")),
    );
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}
