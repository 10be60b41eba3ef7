//! Tables whose rows must cover every case, and once each.

use crate::records::{Record, assert_all, assert_none, tables_of_numbers};
use jackpull::handbook::{ExclusionRow, Family, GroundClass, Handbook, Lubrication, Method, Service, WaterSide};
use std::collections::BTreeSet;

const GROUNDS: [GroundClass; 9] = [
    GroundClass::SoftClay,
    GroundClass::FirmToVeryStiffClay,
    GroundClass::HardClay,
    GroundClass::Silt,
    GroundClass::LooseSand,
    GroundClass::MediumToDenseSand,
    GroundClass::Gravel,
    GroundClass::Fill,
    GroundClass::Unknown,
];

/// Ground that no source gives friction or blow counts for: drives in it are not decided.
const WITHOUT_BANDS: [GroundClass; 3] = [GroundClass::WeakRock, GroundClass::HardRock, GroundClass::Peat];

/// Whether two sides of the water table have a place in common.
pub(crate) fn meet(one: &str, other: &str) -> bool {
    one == other || one == "any" || other == "any"
}

#[test]
fn every_ground_water_and_lubrication_has_one_friction_row() {
    let book = Handbook::embedded();
    let rows = &book.friction_band().unwrap().rows;
    let mut faults = Vec::new();
    for ground in GROUNDS {
        for side in [WaterSide::Above, WaterSide::Below] {
            for care in [Lubrication::None, Lubrication::Metered, Lubrication::Logged] {
                let fits = rows.iter().filter(|row| {
                    row.value.ground.value == ground
                        && meet(row.value.water.value.key(), side.key())
                        && row.value.lubrication.value == care
                });
                let keys: Vec<&str> = fits.map(|row| row.key.as_str()).collect();
                if keys.len() != 1 {
                    faults.push(format!("{} {} {}: {keys:?}", ground.key(), side.key(), care.key()));
                }
            }
        }
    }
    assert_all(rows, |row| {
        (row.value.lubrication.value == Lubrication::NotMetered)
            .then(|| format!("{}: not metered is put together, not tabled", row.key))
    });
    assert_none(&faults);
}

#[test]
fn every_ground_has_one_class_row() {
    let book = Handbook::embedded();
    for ground in GROUNDS {
        let rows = book.ground_class().unwrap().rows.iter().filter(|row| row.value.ground.value == ground).count();
        assert_eq!(rows, 1, "{}", ground.key());
    }
}

#[derive(Debug, Clone, Copy)]
struct Place {
    ground: &'static str,
    side: &'static str,
    head: f64,
    blows: f64,
    stone: f64,
    size: f64,
}

/// Places on both sides of every limit that practice draws.
fn places() -> Vec<Place> {
    let waters = [("above", 0.0), ("below", 0.2), ("below", 1.0), ("below", 2.0), ("below", 3.0), ("below", 5.0)];
    let blow_counts = [0.0, 1.0, 2.0, 3.9, 4.0, 7.9, 8.0, 10.0, 11.0, 29.9, 30.0, 39.0, 40.0, 49.0, 50.0, 60.0];
    let mut places = Vec::new();
    for ground in GROUNDS.iter().chain(&WITHOUT_BANDS).map(|ground| ground.key()) {
        for (side, head) in waters {
            for blows in blow_counts {
                for stone in [0.01, 0.05, 0.051, 0.08, 0.081, 0.1, 0.15] {
                    let sizes: &[f64] = if blows == 29.9 { &[0.3, 0.599, 0.6, 1.199, 1.2, 2.0] } else { &[0.4] };
                    places.extend(sizes.iter().map(|size| Place { ground, side, head, blows, stone, size: *size }));
                }
            }
        }
    }
    places
}

/// A suitability row as the limits of its place.
struct Tile<'a> {
    row: &'a Record,
    ground: &'a str,
    water: &'a str,
    head: (f64, f64),
    blows: (f64, f64),
    stone: (f64, f64),
    size: (f64, f64),
}

impl<'a> Tile<'a> {
    fn of(row: &'a Record) -> Self {
        let limits = |from, to| (row.open(from).unwrap_or(-1.0), row.open(to).unwrap_or(f64::INFINITY));
        let (head, blows) = (limits("head_over", "head_to"), limits("n_from", "n_below"));
        let (ground, water) = (row.word("ground"), row.word("water"));
        Self {
            row,
            ground,
            water,
            head,
            blows,
            stone: limits("stone_over", "stone_to"),
            size: limits("od_from", "od_below"),
        }
    }

    /// Inclusive and exclusive as documented on the row.
    fn holds(&self, place: &Place) -> bool {
        self.ground == place.ground
            && meet(self.water, place.side)
            && self.head.0 < place.head
            && place.head <= self.head.1
            && self.blows.0 <= place.blows
            && place.blows < self.blows.1
            && self.stone.0 < place.stone
            && place.stone <= self.stone.1
            && self.size.0 <= place.size
            && place.size < self.size.1
    }
}

/// The places that have no suitability row or more than one.
pub(crate) fn tiling_faults(rows: &[Record]) -> Vec<String> {
    let tiles: Vec<Tile> = rows.iter().map(Tile::of).collect();
    let mut faults = Vec::new();
    for place in places() {
        let mut fits = tiles.iter().filter(|tile| tile.holds(&place));
        match (fits.next(), fits.next()) {
            (Some(_), None) => {}
            (None, _) => faults.push(format!("ground_suitability: no row for {place:?}")),
            (Some(one), Some(two)) => {
                faults.push(format!("ground_suitability: {} and {} for {place:?}", one.row.key, two.row.key));
            }
        }
    }
    faults
}

fn suitability() -> Vec<Record> {
    let tables = tables_of_numbers(&Handbook::embedded());
    tables.into_iter().find(|rows| rows.first().is_some_and(|row| row.table == "ground_suitability")).unwrap()
}

/// Each sampled place with its row.
fn rated(rows: &[Record]) -> Vec<(Place, &Record)> {
    let tiles: Vec<Tile> = rows.iter().map(Tile::of).collect();
    let tile = |place: Place| tiles.iter().find(|tile| tile.holds(&place)).map(|tile| (place, tile.row));
    places().into_iter().filter_map(tile).collect()
}

#[test]
fn suitability_rows_leave_no_gap_and_no_overlap() {
    let rows = suitability();
    assert!(!rows.is_empty());
    assert_none(&tiling_faults(&rows));
}

/// Worse ground never rates better; a rating that depends is neither.
#[test]
fn suitability_never_improves_with_head_or_stone() {
    let rank = |rating: &str| ["suitable", "marginal", "unsuitable"].iter().position(|known| *known == rating);
    let rows = suitability();
    let rated = rated(&rows);
    let mut faults = BTreeSet::new();
    for (easy, of_easy) in &rated {
        let same = |hard: &Place| {
            (hard.ground, hard.side) == (easy.ground, easy.side) && (hard.blows, hard.size) == (easy.blows, easy.size)
        };
        let harder = |hard: &Place| same(hard) && hard.head >= easy.head && hard.stone >= easy.stone;
        for (_, of_hard) in rated.iter().filter(|(hard, _)| harder(hard)) {
            for method in ["jacking", "pullback", "auger", "slurry", "open_shield"] {
                if let (Some(easy), Some(hard)) = (rank(of_easy.word(method)), rank(of_hard.word(method)))
                    && hard < easy
                {
                    faults.insert(format!("{method}: {} is better than {}", of_hard.key, of_easy.key));
                }
            }
        }
    }
    assert_none(&faults.into_iter().collect::<Vec<_>>());
}

/// What a displacement pilot cannot do: go through refusal, push a cobble aside, hold running sand under 5 m of water.
#[test]
fn suitability_of_jacking_has_its_limits() {
    let rows = suitability();
    assert_all(rated(&rows), |(place, row)| {
        let running = ["silt", "loose_sand", "gravel"].contains(&place.ground);
        let rock = ["weak_rock", "hard_rock"].contains(&place.ground);
        let too_much = place.blows >= 60.0 || place.stone >= 0.15 || rock || running && place.head >= 5.0;
        (too_much && row.word("jacking") == "suitable").then(|| format!("{} suits jacking at {place:?}", row.key))
    });
    assert_all(rated(&rows), |(place, row)| {
        let sure = ["jacking", "pullback"].map(|method| row.word(method)).contains(&"suitable");
        (sure && place.ground == "unknown").then(|| format!("{} calls unknown ground suitable", row.key))
    });
}

/// A column that names a column of another table must find it there.
#[test]
fn materials_resolve_in_the_tables_they_name() {
    let book = Handbook::embedded();
    let moduli: BTreeSet<&str> =
        book.pe_modulus().unwrap().rows.iter().map(|row| row.value.material.value.0.as_str()).collect();
    let stresses: BTreeSet<&str> =
        book.pe_pull_stress().unwrap().rows.iter().map(|row| row.value.material.value.0.as_str()).collect();
    let mut faults = Vec::new();
    for row in &book.pe_material().unwrap().rows {
        let value = &row.value;
        for (column, name, known) in [
            ("american", &value.american, &stresses),
            ("german", &value.german, &stresses),
            ("soft", &value.soft, &moduli),
            ("stiff", &value.stiff, &moduli),
        ] {
            let name = name.value.0.as_str();
            let none = column == "german" && name == "none";
            if !none && !known.contains(name) {
                faults.push(format!("{}: {column} names {name}, known are {known:?}", row.key));
            }
        }
    }
    assert_none(&faults);
}

/// Clay has no tensile joint and its joints hold no pressure.
#[test]
fn exclusions_say_what_clay_cannot_do() {
    let book = Handbook::embedded();
    let rows = &book.exclusion().unwrap().rows;
    assert_all(rows, |row| {
        let empty = row.value.method.is_none() && row.value.service.is_none();
        empty.then(|| format!("{} excludes nothing", row.key))
    });
    let method = |row: &ExclusionRow| row.method.as_ref().map(|field| field.value);
    let service = |row: &ExclusionRow| row.service.as_ref().map(|field| field.value);
    let clay = || rows.iter().map(|row| &row.value).filter(|row| row.family.value == Family::Clay);
    assert!(clay().any(|row| method(row) == Some(Method::Pullback) && service(row).is_none()));
    assert!(clay().any(|row| service(row) == Some(Service::PressureMain) && method(row).is_none()));
    assert!(
        !rows.iter().any(|row| method(&row.value) == Some(Method::Pullback) && row.value.family.value == Family::Pe)
    );
}
