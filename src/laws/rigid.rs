//! What the end of a plastic-bound jacking pipe can bear, and a declared capacity as an allowable. Polymer concrete
//! goes by the laws of [`super::clay`] with its own strength and factors: the equation is the same. Ductile iron and
//! PVC are set by their joints: without a declared capacity there is none.

use crate::law::laws;
use crate::quantity::{Area, Force, Pressure, Ratio};

laws! {
    /// Allowable jacking force of GRP: `P = min(r_max, r) A f / n`.
    ///
    /// The axial strength, not that of the hoop. At r of one half or more it is the planning factor 1.75 x 2; at a
    /// gaping joint that factor is not enough.
    ///
    /// ```
    /// // 0.1 m2 of 80 MPa, 1.75, a closed joint: 2286 kN, the same as 80/3.5 MPa.
    /// use jackpull::law::Law;
    /// use jackpull::laws::rigid::GrpEndForce;
    /// use jackpull::quantity::{Area, Force, FromText, Pressure, Ratio};
    /// let allowed = GrpEndForce {
    ///     greatest_ratio: Ratio::from_text("0.5")?,
    ///     stress_ratio: Ratio::from_text("0.8")?,
    ///     end_bearing_area: Area::from_text("0.1 m2")?,
    ///     axial_strength: Pressure::from_text("80 MPa")?,
    ///     material_factor: Ratio::from_text("1.75")?,
    /// };
    /// assert!((allowed.value() - Force::from_text("2286 kN")?).abs() < Force::from_text("0.5 kN")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    GrpEndForce "allowable jacking force of GRP" {
        /// Greatest ratio counted, whatever the joint.
        greatest_ratio "r_max": Ratio as Ratio [> 0.0 <= 1.0],
        /// Mean over greatest stress (mean over greatest, of the area that the packer presses).
        stress_ratio "r": Ratio as Ratio [> 0.0 <= 1.0],
        /// End bearing area.
        end_bearing_area "A": Area as Area [> 0.0],
        /// Compressive strength along the pipe.
        axial_strength "f": Pressure as Strength [> 0.0],
        /// Material factor.
        material_factor "n": Ratio as Ratio [>= 1.0],
    } -> Force as Thrust;
    form "P = min(greatest_ratio, stress_ratio) end_bearing_area axial_strength / material_factor";
    from Judgement "iso_25780"
        "material factor and factor of linear stress, recalled; the joint ratio in place of the second is ours";
    valid "ratios above 0 and at most 1, area and strength positive, factor at least 1";
    value |s| {
        let ratio = s.greatest_ratio.value.min(s.stress_ratio.value);
        ratio * s.end_bearing_area * s.axial_strength / s.material_factor
    };

    /// Allowable jacking force of a pipe or joint with a known capacity: `P = C / n`.
    ///
    /// The source does not say what capacity is; a force that is declared as allowable takes the factor 1.
    ForceFromCapacity "allowable jacking force from a capacity" {
        /// Capacity of the pipe or its joint.
        capacity "C": Force as Thrust [> 0.0],
        /// Capacity over computed force.
        factor "n": Ratio as Ratio [>= 1.0],
    } -> Force as Thrust;
    form "P = capacity / factor";
    from Published "ttp_2010" "p. 318, microtunnelling, and p. 333, auger boring";
    valid "capacity positive, factor at least 1";
    value |s| s.capacity / s.factor;
}
