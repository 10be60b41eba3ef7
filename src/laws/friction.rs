//! Unit friction of a pushed pipe by published forms that rest on soil data.

use crate::law::laws;
use crate::laws::soil::water_unit_weight;
use crate::quantity::{Angle, Length, LineLoad, Pressure, Ratio};
use core::f64::consts::{FRAC_PI_4, PI};

/// Factor of the contact width.
const HASLEM: f64 = 1.6;

laws! {
    /// Japanese form for an open shield, over the whole outside area:
    /// `tau = (q + W / (pi D)) tan(phi/2) + C'`.
    ///
    /// In clay C' governs and must be known.
    ///
    /// ```
    /// // D 1.2 m, q 40 kPa, 30 deg, W 12 kN/m: 43.62 kN per metre of pipe.
    /// use jackpull::law::Law;
    /// use jackpull::laws::friction::OpenShieldFriction;
    /// use jackpull::quantity::{Angle, FromText, Length, LineLoad, Pressure};
    /// let diameter = Length::from_text("1.2 m")?;
    /// let law = OpenShieldFriction {
    ///     pressure: Pressure::from_text("40 kPa")?,
    ///     pipe_weight: LineLoad::from_text("12 kN/m")?,
    ///     outside_diameter: diameter,
    ///     friction_angle: Angle::from_text("30 deg")?,
    ///     adhesion: Pressure::from_text("0 kPa")?,
    /// };
    /// let per_metre: LineLoad = law.value() * diameter * std::f64::consts::PI;
    /// assert!((per_metre - LineLoad::from_text("43.62 kN/m")?).abs() < LineLoad::from_text("5 N/m")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    OpenShieldFriction "unit friction, Japanese open-shield form" {
        /// Vertical pressure of the soil column (silo, Japanese width).
        pressure "q": Pressure as UnitFriction [>= 0.0],
        /// Weight of the pipe.
        pipe_weight "W": LineLoad as LineWeight [>= 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter [> 0.0],
        /// Friction angle of the ground.
        friction_angle "phi": Angle as Angle,
        /// Adhesion.
        adhesion "C'": Pressure as UnitFriction [>= 0.0],
    } -> Pressure as UnitFriction;
    form "tau = (pressure + pipe_weight/(pi outside_diameter)) tan(friction_angle/2) + adhesion";
    from Memory "japan_sewage_guide" "jacking force, hand or cutting-edge shield, friction term over the outside area";
    valid "friction angle 0 to 50 deg, diameter positive, the rest not negative"
        if |v| (0.0..=50.0 * PI / 180.0).contains(&v.friction_angle.value);
    value |s| (s.pressure + s.pipe_weight / (PI * s.outside_diameter)) * (s.friction_angle / 2.0).tan() + s.adhesion;

    /// Width over which a rigid pipe touches the bottom of an open bore in clay:
    /// `b = 1.6 sqrt(P k (1 - nu²) / E)`, `k = D_b D / (D_b - D)`, nu = 1/2, no more than pi D.
    ///
    /// The pipe is taken as rigid beside clay.
    ContactWidth "contact width in an open bore" {
        /// Force between pipe and bore, either way.
        contact_force "P": LineLoad as LineWeight [>= 0.0],
        /// Diameter of the bore.
        bore "D_b": Length as Diameter,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter [> 0.0],
        /// Undrained modulus of the clay.
        ground_modulus "E": Pressure as Modulus [> 0.0],
    } -> Length as Offset;
    form "b = 1.6 sqrt(contact_force k (1 - 1/4)/ground_modulus), k = bore outside_diameter/(bore - outside_diameter), \
          at most pi outside_diameter";
    from Memory "haslem_1986"
        "pipe sliding in a stable bore in clay, cylinder in cylinder; the cap at the circumference is ours";
    valid "bore larger than the pipe, force not negative, modulus positive"
        if |v| v.bore > v.outside_diameter;
    value |s| {
        let around = PI * s.outside_diameter;
        let gap = s.bore - s.outside_diameter;
        if gap.value > 0.0 {
            let curvature = s.bore * s.outside_diameter / gap;
            let compliance = (1.0 - 1.0 / 4.0) / s.ground_modulus;
            (HASLEM * (s.contact_force * curvature * compliance).sqrt()).min(around)
        } else {
            around
        }
    };

    /// Friction of clay on a pipe over part of its circumference, as a mean over the whole outside area:
    /// `tau = a b / (pi D)`.
    AdhesionOverWidth "adhesion over the width in contact" {
        /// Adhesion on the area in contact.
        adhesion "a": Pressure as UnitFriction [>= 0.0],
        /// Width in contact.
        contact_width "b": Length as Offset [>= 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
    } -> Pressure as UnitFriction;
    form "tau = adhesion contact_width/(pi outside_diameter)";
    from Memory "haslem_1986" "force per length is adhesion times the width in contact";
    valid "width from 0 to the circumference"
        if |v| v.contact_width <= PI * v.outside_diameter;
    value |s| s.adhesion * (s.contact_width / (PI * s.outside_diameter));

    /// Weight of a pipe less the lubricant it displaces, either way: `P = |W - (pi/4) D² gamma_f|`.
    ///
    /// A pipe that floats rubs at the crown: the friction does not become negative.
    ContactForce "contact force in the bore" {
        /// Weight of the pipe.
        pipe_weight "W": LineLoad as LineWeight [>= 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter [>= 0.0],
        /// Specific gravity of the fluid round the pipe; 0 for none.
        fluid_gravity "gamma_f / gamma_w": Ratio as Ratio [>= 0.0],
    } -> LineLoad as LineWeight;
    form "P = |pipe_weight - (pi/4) outside_diameter^2 fluid_gravity gamma_water|";
    from Memory "milligan_norris" "pipe sliding in a stable bore, weight less buoyancy";
    valid "weight, diameter and gravity not negative";
    value |s| {
        let fluid = water_unit_weight();
        (s.pipe_weight - FRAC_PI_4 * s.outside_diameter * s.outside_diameter * (s.fluid_gravity * fluid)).abs()
    };
}
