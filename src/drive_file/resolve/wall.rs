//! The thrust wall and the ground behind it.

use super::{Resolver, no_row};
use crate::drive::{AssumedValue, Reaction, Soil, Stretch, ThrustWall};
use crate::drive_file::{DriveFile, Movement, OrNone, WallFile};
use crate::handbook::{GroundClass, HandbookError, RatioSpanRow, Table};
use crate::quantity::{Length, Measure, Ratio, Role};
use crate::source::{Cited, Equation, FieldName, Mark, Origin};
use crate::yaml::{Complaint, Field};

const SAFETY: &FieldName = &FieldName("launch.wall.safety");
/// Widest spread of the reaction formula, and the largest safety factor that is no slip of the pen.
const WIDEST: f64 = 2.5;
const SAFEST: f64 = 10.0;

/// Where a wall stands that the file gives no level of.
const TOP: Equation = Equation {
    name: "top of the thrust wall",
    form: "half the height of the wall over the axis of thrust, no higher than the ground",
    source: "jackpull",
    locator: "a wall put with its middle behind the axis of thrust",
    mark: Mark::Judgement,
    valid: "a wall built for this drive",
};

/// What is taken for an opening in the wall.
const NO_EYE: Equation = Equation {
    name: "opening in the thrust wall",
    form: "none",
    source: "jackpull",
    locator: "no drive was broken out through the wall before",
    mark: Mark::Judgement,
    valid: "the first drive from the pit, or one to the other side",
};

/// What is taken for the ground behind the wall.
const FIRST_STRETCH: Equation = Equation {
    name: "ground behind the thrust wall",
    form: "soil of the first stretch",
    source: "jackpull",
    locator: "the ground behind the launch pit is taken as that before it",
    mark: Mark::Judgement,
    valid: "a pit in one ground",
};

/// Row of the table `wall_movement` for a ground; the largest movement where the ground is not known.
const fn movement_row(class: GroundClass) -> &'static str {
    match class {
        GroundClass::MediumToDenseSand | GroundClass::Gravel => "medium_dense_sand",
        GroundClass::LooseSand => "loose_sand",
        GroundClass::Silt => "silt",
        _ => "lean_clay",
    }
}

/// One end of a row of ratios.
pub(super) fn end(
    table: &Table<RatioSpanRow>,
    key: &str,
    column: impl Fn(&RatioSpanRow) -> Option<&Field<Ratio>>,
) -> Result<Cited<Ratio>, HandbookError> {
    let row = table.get(key).ok_or_else(|| no_row(table.id, key))?;
    let value = column(row.value).ok_or_else(|| no_row(table.id, key))?.value;
    if !(value.si() > 0.0) {
        return Err(HandbookError::Unfit { table: table.id, row: key.to_owned(), why: "is not above zero" });
    }
    Ok(Cited::new(value, row.origin))
}

/// The value of a row of ratios.
pub(super) fn value_of(table: &Table<RatioSpanRow>, key: &str) -> Result<Cited<Ratio>, HandbookError> {
    end(table, key, |row| row.value.as_ref())
}

/// Whether all that lies below water, down to a depth, has a weight there.
fn is_weighed(soil: &Soil, depth: Length) -> bool {
    let Some(water) = soil.water_depth.filter(|water| *water < depth) else { return true };
    let mut top = Length::default();
    soil.layers.iter().all(|layer| {
        let reached = top < depth && layer.bottom > water;
        top = layer.bottom;
        !reached || layer.saturated.is_some()
    })
}

impl Resolver<'_> {
    /// What takes the thrust, where the file tells the ground behind the launch pit.
    pub(super) fn reaction(
        &mut self,
        file: &DriveFile,
        stretches: &[Stretch],
    ) -> Result<Option<Reaction>, HandbookError> {
        const NO_THRUST: &str = "there is no thrust wall in the reception pit";
        if let Some(pit) = &file.reception {
            self.refuse("reception", "wall", pit.wall.as_ref().map(|wall| &wall.width), NO_THRUST);
            self.refuse("reception", "soil", pit.soil.as_ref().map(|soil| &soil.moist), NO_THRUST);
        }
        let given = file.launch.wall.as_ref();
        let invert = file.launch.invert_depth.value;
        let deepest = invert + given.map_or(Length::default(), |wall| wall.height.value);
        let soil = match &file.launch.soil {
            Some(soil) => {
                let water = file.ground.first().and_then(|first| first.groundwater.as_ref());
                let water: &Field<OrNone<Length>> = water.unwrap_or(&file.groundwater);
                // A layer behind the wall may end anywhere.
                let far = Length::from_si(f64::INFINITY);
                Some(self.soil(soil, "launch", (far, far), Length::default(), water))
            }
            None => stretches.first().and_then(|first| first.soil.as_deref().cloned()),
        };
        let Some(soil) = soil else {
            if let Some(wall) = given {
                let complaint = Complaint::from("the ground behind the wall is missing");
                let complaint = complaint.advise(
                    "add `soil: { moist: 19 kN/m3, saturated: 20 kN/m3, friction_angle: 30 deg }` to the launch pit",
                );
                self.flaw(&wall.width, "launch.soil", complaint);
            }
            return Ok(None);
        };
        if !is_weighed(&soil, deepest) {
            // Without a wall there is only nothing to print.
            if let Some(wall) = given {
                let complaint =
                    Complaint::from("the wall reaches below the water, where the weight of the soil is missing");
                self.flaw(
                    &wall.height,
                    "launch.soil.saturated",
                    complaint.advise("add `saturated: 20 kN/m3` to the soil"),
                );
            }
            return Ok(None);
        }
        let table = self.handbook.thrust_wall()?;
        let safety = value_of(table, "safety_default")?;
        let spread = value_of(table, "spread_none")?;
        let class = stretches.first().map_or(GroundClass::Unknown, |first| first.class);
        let movement = value_of(self.handbook.wall_movement()?, movement_row(class))?;
        let mut reaction = Reaction { soil, invert, spread: spread.value, safety, movement, wall: None };
        let Some(wall) = given else { return Ok(Some(reaction)) };
        if file.launch.soil.is_none() {
            let word = AssumedValue::Word("that of the first stretch".to_owned());
            self.assume("launch.soil", word, Origin::Law(&FIRST_STRETCH));
        }
        let least = end(table, "safety", |row| row.low.as_ref())?;
        reaction.spread = self.spread(wall, spread);
        reaction.safety = self.safety(wall, least, safety);
        reaction.wall = Some(self.wall(wall, invert));
        if !reaction.wall.is_some_and(|wall| wall.movement_checked) {
            self.assume_one("launch.wall: movement at full resistance over the height", movement, Role::Percent);
        }
        Ok(Some(reaction))
    }

    fn spread(&mut self, wall: &WallFile, row: Cited<Ratio>) -> Ratio {
        let Some(field) = &wall.spread else {
            self.assume_one("launch.wall.spread", row, Role::Ratio);
            return row.value;
        };
        if !(field.value.si() >= 1.0 && field.value.si() <= WIDEST) {
            let complaint = Complaint::from(format!("expected a number from 1 to {WIDEST}"));
            self.flaw(field, "launch.wall.spread", complaint.advise("1 counts only the ground straight behind"));
        }
        field.value
    }

    /// The user's factor; below the default only with a check of the movement, and then the least.
    fn safety(&mut self, wall: &WallFile, least: Cited<Ratio>, usual: Cited<Ratio>) -> Cited<Ratio> {
        let checked = is_checked(wall);
        let row = if checked { least } else { usual };
        let Some(field) = &wall.safety else {
            self.assume_one("launch.wall.safety", row, Role::Ratio);
            return row;
        };
        if !(field.value >= row.value && field.value.si() <= SAFEST) {
            let message = format!("expected a number from {} to {SAFEST}", row.value.si());
            let advice = if checked {
                "less is asked for nowhere"
            } else {
                "less only with a check of the movement: `movement: checked`"
            };
            self.flaw(field, SAFETY.0, Complaint::from(message).advise(advice));
        }
        Cited::given(field.value, SAFETY)
    }

    fn wall(&mut self, wall: &WallFile, invert: Length) -> ThrustWall {
        let width = self.positive(&wall.width, "launch.wall.width", Role::Distance);
        let height = self.positive(&wall.height, "launch.wall.height", Role::Distance);
        let top = wall.top_depth.as_ref().map(|field| self.not_negative(field, "launch.wall.top_depth", Role::Depth));
        if top.is_none() {
            let word = AssumedValue::Word("half the height of the wall over the axis of thrust".to_owned());
            self.assume("launch.wall.top_depth", word, Origin::Law(&TOP));
        }
        let thrust =
            wall.thrust_depth.as_ref().map(|field| self.positive(field, "launch.wall.thrust_depth", Role::Depth));
        if let (Some(field), Some(top)) = (&wall.top_depth, top) {
            let axis = thrust.unwrap_or(invert);
            if axis <= top || axis >= top + height {
                let complaint = Complaint::from("the thrust goes past a wall between these levels");
                self.flaw(field, "launch.wall.top_depth", complaint.advise("see launch.invert_depth and thrust_depth"));
            }
        }
        let eye = match &wall.eye_diameter {
            Some(field) => {
                let eye = self.positive(field, "launch.wall.eye_diameter", Role::Diameter);
                if eye >= width.min(height) {
                    self.flaw(field, "launch.wall.eye_diameter", "leaves nothing of the wall");
                }
                eye
            }
            None => {
                self.assume("launch.wall.eye_diameter", AssumedValue::Word("none".to_owned()), Origin::Law(&NO_EYE));
                Length::default()
            }
        };
        ThrustWall { width, height, top, thrust, eye, movement_checked: is_checked(wall) }
    }
}

fn is_checked(wall: &WallFile) -> bool {
    wall.movement.as_ref().is_some_and(|field| field.value == Movement::Checked)
}
