//! How far a flexible pipe goes out of round after the pull, and what a scored wall leaves.

use crate::law::laws;
use crate::quantity::{Length, Pressure, Ratio, UnitWeight};

/// Share of the modulus of soil reaction in the modified Iowa formula.
const SOIL_SHARE: f64 = 0.061;

/// Largest deflection for which the linear form is used: beyond it the load follows the shape (ours).
pub(crate) const MOST_DEFLECTION: f64 = 0.1;

/// Coefficient of the buoyant deflection (PE handbook, chapter 12; recalled).
const BUOYANT: f64 = 0.1169;

laws! {
    /// Deflection of a flexible pipe under soil, modified Iowa: `d = L_D K P / (E I / r³ + 0.061 E')`, with I = t³/12
    /// and the mean radius r, so `E I / r³` is `2 E t³ / (3 (D - t)³)`; per diameter.
    ///
    /// Without soil modulus, with K 0.1 and no lag, it is the earth load deflection of the PE handbook's chapter on
    /// drilling.
    IowaDeflection "deflection by the modified Iowa formula" {
        /// Deflection lag factor.
        lag "L_D": Ratio as Ratio,
        /// Bedding factor.
        bedding "K": Ratio as Ratio,
        /// Pressure on the pipe (of soil and load on the pipe).
        pressure "P": Pressure as Pressure,
        /// Modulus of the pipe (at the duration of the load).
        modulus "E": Pressure as Modulus [> 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
        /// Modulus of soil reaction (0 in an open bore or thin slurry).
        soil_modulus "E'": Pressure as Modulus [>= 0.0],
    } -> Ratio as Percent;
    form "d = lag bedding pressure / (2 modulus wall^3 / (3 (outside_diameter - wall)^3) + 0.061 soil_modulus)";
    from Published "howard_inspecting" "appendix C, p. 261";
    valid "deflection up to 10 %, wall positive and below half the outside diameter, modulus positive"
        if |v| 2.0 * v.wall < v.outside_diameter && (0.0..=MOST_DEFLECTION).contains(&iowa(v).value);
    fails beyond |v| 2.0 * v.wall < v.outside_diameter && iowa(v).value > MOST_DEFLECTION;
    value |s| iowa(s);

    /// Deflection of an empty pipe by the uplift of fluid or grout around it: `d = 0.1169 gamma (D/2)⁴ / (E I)`,
    /// I = t³/12.
    ///
    /// It adds to the ovality that the collapse check reads.
    BuoyantDeflection "deflection by buoyancy" {
        /// Unit weight of the fluid.
        unit_weight "gamma": UnitWeight as UnitWeight,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
        /// Modulus (at the time the fluid stays liquid).
        modulus "E": Pressure as Modulus [> 0.0],
    } -> Ratio as Percent;
    form "d = 0.1169 unit_weight (outside_diameter / 2)^4 / (modulus wall^3 / 12)";
    from Memory "ppi_handbook_2008" "chapter 12, ring deflection by buoyancy";
    valid "wall positive and below half the outside diameter, modulus positive, deflection up to 10 %"
        if |v| 2.0 * v.wall < v.outside_diameter && (0.0..=MOST_DEFLECTION).contains(&buoyant(v).value);
    fails beyond |v| 2.0 * v.wall < v.outside_diameter && buoyant(v).value > MOST_DEFLECTION;
    value |s| buoyant(s);

    /// Wall that scoring in the bore leaves, for tension and collapse: `t_n = t (1 - x)`.
    ///
    /// The usual limit of 10 % is a row of table `after_pull`.
    ScoredWall "wall after scoring" {
        /// Minimum wall.
        wall "t": Length as Wall [> 0.0],
        /// Depth of the deepest score over the wall.
        depth_share "x": Ratio as Percent [>= 0.0 <= 0.5],
    } -> Length as Wall;
    form "t_n = wall (1 - depth_share)";
    from Judgement "jackpull" "net section of a scored wall: nine tenths at the usual limit of 10 %";
    valid "share from 0 to 50 %, wall positive";
    value |s| s.wall * (1.0 - s.depth_share.value);
}

fn iowa(ring: &IowaDeflection) -> Ratio {
    let thin = ring.wall / (ring.outside_diameter - ring.wall);
    let stiffness = 2.0 / 3.0 * ring.modulus * thin * thin * thin;
    ring.lag * ring.bedding * ring.pressure / (stiffness + SOIL_SHARE * ring.soil_modulus)
}

fn buoyant(ring: &BuoyantDeflection) -> Ratio {
    let radius = ring.outside_diameter / 2.0;
    let slender = radius / ring.wall;
    BUOYANT * 12.0 * ring.unit_weight * radius / ring.modulus * slender * slender * slender
}
