//! Columns that rise or fall with their axis, and pairs of low and high, in the tables that nothing computes with yet.

use jackpull::Handbook;
use jackpull::quantity::Measure;

/// Points sorted by their first number, as the second runs.
fn sorted(points: impl Iterator<Item = (f64, f64)>) -> Vec<(f64, f64)> {
    let mut points: Vec<(f64, f64)> = points.collect();
    points.sort_by(|a, b| a.0.total_cmp(&b.0));
    assert!(points.len() > 2, "too few points to run: {points:?}");
    points
}

fn assert_falls(points: impl Iterator<Item = (f64, f64)>, what: &str) {
    for pair in sorted(points).windows(2) {
        assert!(pair[1].1 < pair[0].1, "{what}: {pair:?} does not fall");
    }
}

fn assert_never_falls(points: impl Iterator<Item = (f64, f64)>, what: &str) {
    for pair in sorted(points).windows(2) {
        assert!(pair[1].1 >= pair[0].1, "{what}: {pair:?} falls");
    }
}

#[test]
fn columns_run_as_physics_wants() {
    let book = Handbook::embedded();
    let slopes = &book.sewer_min_slope().unwrap().rows;
    assert_falls(slopes.iter().map(|row| (row.value.size.value.si(), row.value.slope.value.si())), "slope with size");

    for load in ["H-20", "E-80", "180 kip gear"] {
        let rows = &book.live_load().unwrap().rows;
        let own = rows.iter().filter(|row| row.value.load.value.0 == load);
        assert_falls(own.map(|row| (row.value.cover.value.si(), row.value.pressure.value.si())), load);
    }

    let walls = &book.steel_casing_wall().unwrap().rows;
    let size = |row: &jackpull::handbook::Row<jackpull::handbook::SteelCasingWallRow>| row.value.size.value.si();
    assert_never_falls(walls.iter().map(|row| (size(row), row.value.coated.value.si())), "coated wall with size");
    assert_never_falls(walls.iter().map(|row| (size(row), row.value.bare.value.si())), "bare wall with size");
    for row in walls {
        assert!(row.value.bare.value >= row.value.coated.value, "{}: coating makes a wall thicker", row.key);
    }

    let concrete = &book.concrete_pipe().unwrap().rows;
    let pipe = |row: &jackpull::handbook::Row<jackpull::handbook::ConcretePipeRow>| row.value.size.value.si();
    assert_never_falls(concrete.iter().map(|row| (pipe(row), row.value.wall.value.si())), "concrete wall with size");

    let pvc = &book.pvc_temperature().unwrap().rows;
    assert_falls(pvc.iter().map(|row| (row.value.at.value.si(), row.value.factor.value.si())), "PVC with temperature");

    let covers = &book.minimum_cover().unwrap().rows;
    let drilled = covers.iter().filter(|row| row.key.starts_with("drilled_"));
    let cover = |row: &jackpull::handbook::Row<jackpull::handbook::MinimumCoverRow>| {
        let from = row.value.diameter_from.as_ref().map_or(0.0, |from| from.value.si());
        (from, row.value.cover.as_ref().unwrap().value.si())
    };
    assert_never_falls(drilled.map(cover), "cover with diameter");
}

/// Wherever a table has a low and a high column of the same name, low is not above high, in the text of the book.
#[test]
fn low_is_not_above_high() {
    let number = |text: &str| -> Option<f64> {
        let end = text.find(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-')).unwrap_or(text.len());
        text[..end].parse().ok()
    };
    let mut pairs = 0;
    let book = Handbook::embedded();
    for table in Handbook::TABLES {
        for row in book.written(table).unwrap() {
            for (column, text) in &row.columns {
                let Some(stem) = column.strip_suffix("low") else { continue };
                let high = row.columns.iter().find(|(name, _)| *name == format!("{stem}high"));
                if let (Some(low), Some(high)) = (number(text), high.and_then(|(_, text)| number(text))) {
                    assert!(low <= high, "{table}/{}: {column} {low} is above {high}", row.key);
                    pairs += 1;
                }
            }
        }
    }
    assert!(pairs > 150, "only {pairs} pairs were seen");
}
