//! How far a flexible pipe goes out of round after the pull, and what a scored wall leaves.

use crate::law::law;
use crate::quantity::{Length, Pressure, Ratio, UnitWeight};
use crate::source::{Equation, Mark};

/// Share of the modulus of soil reaction in the modified Iowa formula.
const SOIL_SHARE: f64 = 0.061;

law! {
    /// Deflection of a flexible pipe under soil, modified Iowa: `d = L_D K P / (E I / r³ + 0.061 E')`, with I = t³/12
    /// and the mean radius r, so `E I / r³` is `2 E t³ / (3 (D - t)³)`; per diameter.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | L_D | `lag` | ratio |
    /// | K | `bedding` | ratio |
    /// | P | `pressure` of soil (and load) on the pipe | pressure |
    /// | E | `modulus` (at the duration of the load) | pressure |
    /// | D, t | `outside_diameter`, `wall` | length |
    /// | E' | `soil_modulus` (0 in an open bore or thin slurry) | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** deflections up to 10 %. Without soil
    /// modulus, with K 0.1 and no lag, it is the earth load deflection of the PE handbook's chapter on drilling.
    IowaDeflection {
        /// Deflection lag factor.
        lag: Ratio as Ratio,
        /// Bedding factor.
        bedding: Ratio as Ratio,
        /// Pressure on the pipe.
        pressure: Pressure as Pressure,
        /// Modulus of the pipe.
        modulus: Pressure as Modulus,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Wall.
        wall: Length as Wall,
        /// Modulus of soil reaction.
        soil_modulus: Pressure as Modulus,
    } -> Ratio as Percent
    { Equation {
        name: "deflection by the modified Iowa formula",
        form: "d = lag bedding pressure / (2 modulus wall^3 / (3 (outside_diameter - wall)^3) + 0.061 soil_modulus)",
        source: "howard_inspecting",
        locator: "appendix C, p. 261",
        mark: Mark::Published,
        valid: "deflection up to 10 %, wall positive and below half the outside diameter, modulus positive",
    } }
    valid |v| v.wall.value > 0.0
        && 2.0 * v.wall < v.outside_diameter
        && v.modulus.value > 0.0
        && v.soil_modulus.value >= 0.0
        && (0.0..=MOST_DEFLECTION).contains(&iowa(v).value);
    value |s| iowa(s);
}

/// Largest deflection for which the linear form is used: beyond it the load follows the shape (ours).
pub(crate) const MOST_DEFLECTION: f64 = 0.1;

fn iowa(ring: &IowaDeflection) -> Ratio {
    let thin = ring.wall / (ring.outside_diameter - ring.wall);
    let stiffness = 2.0 / 3.0 * ring.modulus * thin * thin * thin;
    ring.lag * ring.bedding * ring.pressure / (stiffness + SOIL_SHARE * ring.soil_modulus)
}

/// Coefficient of the buoyant deflection (PE handbook, chapter 12; recalled).
const BUOYANT: f64 = 0.1169;

law! {
    /// Deflection of an empty pipe by the uplift of fluid or grout around it: `d = 0.1169 gamma (D/2)⁴ / (E I)`,
    /// I = t³/12.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | gamma | `unit_weight` of the fluid | force per volume |
    /// | D, t | `outside_diameter`, `wall` | length |
    /// | E | `modulus` (at the time the fluid stays liquid) | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** walls below half the outside diameter. It
    /// adds to the ovality that the collapse check reads.
    BuoyantDeflection {
        /// Unit weight of the fluid.
        unit_weight: UnitWeight as UnitWeight,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Wall.
        wall: Length as Wall,
        /// Modulus.
        modulus: Pressure as Modulus,
    } -> Ratio as Percent
    { Equation {
        name: "deflection by buoyancy",
        form: "d = 0.1169 unit_weight (outside_diameter / 2)^4 / (modulus wall^3 / 12)",
        source: "ppi_handbook_2008",
        locator: "chapter 12, ring deflection by buoyancy",
        mark: Mark::Memory,
        valid: "wall positive and below half the outside diameter, modulus positive, deflection up to 10 %",
    } }
    valid |v| v.wall.value > 0.0
        && 2.0 * v.wall < v.outside_diameter
        && v.modulus.value > 0.0
        && (0.0..=MOST_DEFLECTION).contains(&buoyant(v).value);
    value |s| buoyant(s);
}

fn buoyant(ring: &BuoyantDeflection) -> Ratio {
    let radius = ring.outside_diameter / 2.0;
    let slender = radius / ring.wall;
    BUOYANT * 12.0 * ring.unit_weight * radius / ring.modulus * slender * slender * slender
}

law! {
    /// Wall that scoring in the bore leaves, for tension and collapse: `t_n = t (1 - x)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | t | `wall` | length |
    /// | x | `depth_share` of the deepest score | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION); the usual limit of 10 % is a row of table `after_pull`.
    /// **Valid for** shares below one half.
    ScoredWall {
        /// Minimum wall.
        wall: Length as Wall,
        /// Depth of the deepest score over the wall.
        depth_share: Ratio as Percent,
    } -> Length as Wall
    { Equation {
        name: "wall after scoring",
        form: "t_n = wall (1 - depth_share)",
        source: "jackpull",
        locator: "net section of a scored wall: nine tenths at the usual limit of 10 %",
        mark: Mark::Judgement,
        valid: "share from 0 to 50 %, wall positive",
    } }
    valid |v| (0.0..=0.5).contains(&v.depth_share.value) && v.wall.value > 0.0;
    value |s| s.wall * (1.0 - s.depth_share.value);
}
