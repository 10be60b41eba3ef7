//! The thrust wall and the ground behind it; the most that is usual of plant that the file does not tell.

use super::{Resolved, Resolver};
use crate::drive::{Clay, Reaction, Stretch, ThrustWall, Usual};
use crate::drive_file::{Movement, WallFile};
use crate::handbook::GroundClass;
use crate::law::Law;
use crate::laws::stem::{EulerBuckling, TubeStiffness};
use crate::quantity::{Length, Measure, Ratio, Role};
use crate::source::{Cited, Equation, Origin};
use crate::yaml::MayBe;

const SAFEST: f64 = 10.0;

/// Where a wall stands that the file gives no level of.
const TOP: Equation = Equation::judged(
    "top of the thrust wall",
    "half the height of the wall over the axis of thrust, no higher than the ground",
    "a wall put with its middle behind the axis of thrust",
    "a wall built for this drive",
);

/// What is taken for an opening in the wall.
const NO_EYE: Equation = Equation::judged(
    "opening in the thrust wall",
    "none",
    "no drive was broken out through the wall before",
    "the first drive from the pit, or one to the other side",
);

/// What is taken for the ground behind the wall.
const FIRST_STRETCH: Equation = Equation::judged(
    "ground behind the thrust wall",
    "soil of the first stretch",
    "the ground behind the launch pit is taken as that before it",
    "a pit in one ground",
);

/// Row of the table `wall_movement` for a ground; the largest movement where the ground is not known.
const fn movement_row(class: GroundClass) -> &'static str {
    match class {
        GroundClass::MediumToDenseSand | GroundClass::Gravel => "medium_dense_sand",
        GroundClass::LooseSand => "loose_sand",
        GroundClass::Silt => "silt",
        _ => "lean_clay",
    }
}

impl Resolver<'_> {
    /// What takes the thrust, where the file tells the ground behind the launch pit.
    pub(super) fn reaction(&mut self, stretches: &[Stretch]) -> Resolved<Option<Reaction>> {
        const NO_THRUST: &str = "there is no thrust wall in the reception pit";
        if let Some(pit) = &self.file.reception {
            if let Some(wall) = &pit.wall {
                self.flaw(&wall.width, "reception.wall", NO_THRUST);
            }
            if let Some(depth) = pit.soil.as_ref().and(pit.invert_depth.as_ref()) {
                self.flaw(depth, "reception.soil", NO_THRUST);
            }
        }
        let given = self.file.launch.wall.as_ref();
        let invert = self.file.launch.depth().unwrap_or_default();
        let Some(first) = stretches.first() else { return Ok(None) };
        let (soil, best) = match &self.file.launch.soil {
            Some(soil) => {
                let face = (first.class, first.mixed_with);
                let (weights, friction) = (self.class_weights(face)?, self.class_friction(face)?);
                // A layer behind the wall may end anywhere.
                let ends = self.soil(soil, "launch", Length::from_si(f64::INFINITY), (&weights, friction))?;
                (ends.low, (!soil.is_whole()).then_some(ends.high))
            }
            None => (first.earth.resisting(), first.earth.resisting_at_best()),
        };
        let table = first.way.table;
        let rules = self.handbook.thrust_wall()?;
        let safety = rules.factor("safety_default", |row| &row.value)?;
        let usual_spread = rules.factor("spread_none", |row| &row.value)?;
        let movement = self.handbook.wall_movement()?.factor(movement_row(first.class), |row| &row.value)?;
        let (spread, wall) = (usual_spread.value, None);
        // Blows tell the strength of clay as well as a test does, at the low end of what they mean.
        let blows = self.file.ground.first().is_some_and(|stretch| stretch.spt_n.is_some());
        let told = self.file.launch.soil.is_some() || first.earth.told || blows;
        let is_told = told && soil.undrained.is_some() && first.is_all(GroundClass::is_clay);
        let clay = if is_told { Clay::Undrained } else { Clay::Lesser };
        let mut reaction = Reaction { soil, table, invert, spread, safety, movement, wall, clay, best: None };
        let at_best = |reaction: Reaction| {
            let best = best.map(|soil| Box::new(Reaction { soil, clay: Clay::Greater, ..reaction.clone() }));
            Ok(Some(Reaction { best, ..reaction }))
        };
        let Some(wall) = given else { return at_best(reaction) };
        if self.file.launch.soil.is_none() {
            self.assume_word("launch.soil", "that of the first stretch", Origin::Law(&FIRST_STRETCH));
        }
        let least = rules.factor("safety", |row| &row.low)?;
        reaction.spread = self.or_row(WallFile::spread, usual_spread).value;
        reaction.safety = self.safety(wall, least, safety);
        reaction.wall = Some(self.wall(wall, invert));
        if !reaction.wall.is_some_and(|wall| wall.movement_checked) {
            self.assume_one("launch.wall: movement at full resistance over the height", movement, Role::Percent);
        }
        at_best(reaction)
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
            self.flaw(field, "launch.wall.safety", (message, advice));
        }
        Cited::given(field.value, WallFile::safety.spec.path())
    }

    fn wall(&mut self, wall: &WallFile, invert: Length) -> ThrustWall {
        let width = wall.width.value;
        let height = wall.height.value;
        let top = wall.top_depth.given();
        if top.is_none() {
            self.assume_word(
                "launch.wall.top_depth",
                "half the height of the wall over the axis of thrust",
                Origin::Law(&TOP),
            );
        }
        let thrust = wall.thrust_depth.given();
        let axis = thrust.unwrap_or(invert);
        if top.is_some_and(|top| axis <= top || axis >= top + height) {
            let why = "the thrust goes past a wall between these levels";
            let why = (why, "see launch.invert_depth and thrust_depth");
            self.wrong(WallFile::top_depth, why);
        }
        let eye = wall.eye_diameter.given().unwrap_or_else(|| {
            self.assume_word("launch.wall.eye_diameter", "none", Origin::Law(&NO_EYE));
            Length::default()
        });
        ThrustWall { width, height, top, thrust, eye, movement_checked: is_checked(wall) }
    }
}

fn is_checked(wall: &WallFile) -> bool {
    wall.movement.given() == Some(Movement::Checked)
}

impl Resolver<'_> {
    pub(super) fn usual(&self) -> Resolved<Usual> {
        let handbook = self.handbook;
        let outside_diameter = handbook.length("usual.stem_diameter")?;
        let second_moment =
            TubeStiffness { outside_diameter: outside_diameter.value, wall: handbook.length("usual.stem_wall")?.value };
        let buckling = EulerBuckling {
            modulus: handbook.pressure("stem.modulus")?.value,
            second_moment: second_moment.value(),
            free_length: handbook.length("usual.stem_free")?.value,
            end_factor: self.one_free()?.value,
        };
        Usual::read(handbook, outside_diameter.map(|_| buckling.value()))
    }
}
