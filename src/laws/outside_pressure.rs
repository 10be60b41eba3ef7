//! A pipe under outside pressure after the pull: while the annulus is grouted, under groundwater, with a vacuum inside,
//! and with soil or grout to hold it.
//!
//! `collapse::CriticalPressure` is the capacity without support, at the modulus of the duration of the load. What grout
//! lifts is `pull::NetWeightInFluid` with the density of the grout.

use crate::law::laws;
use crate::laws::soil::gravity;
use crate::quantity::{Length, MassDensity, Measure, Pressure, Ratio};

/// Coefficient of the buoyancy factor (Moser, Buried Pipe Design, p. 113).
const WATER_COEFFICIENT: f64 = 0.33;

/// Fall of the exponent per length of cover, 0.065 per foot (AWWA M11, quoted in a calculation sheet that was read).
const SUPPORT_PER_LENGTH: f64 = 0.065 / 0.3048;

laws! {
    /// Outside less inside pressure: `p = rho g h + p_a - p_i`.
    ///
    /// It may come out negative: then the pipe is under pressure from inside.
    NetOutsidePressure "net outside pressure" {
        /// Density of the fluid outside (of what stands outside: grout, bore fluid, water).
        density "rho": MassDensity as Density [>= 0.0],
        /// Height of its column (of it over the invert).
        height "h": Length as Depth [>= 0.0],
        /// Pressure added to it (grouting pressure, flow loss, or the vacuum of a pressure main).
        added "p_a": Pressure as Pressure [>= 0.0],
        /// Pressure inside the pipe (over the atmosphere).
        inside "p_i": Pressure as Pressure [>= 0.0],
    } -> Pressure as Pressure;
    form "p = density g height + added - inside";
    from Judgement "jackpull" "statics of a fluid column and what is added to it";
    valid "no argument negative";
    value |s| s.density * gravity() * s.height + s.added - s.inside;

    /// A pressure that stands for years and another that lasts for hours, as one pressure of the hours: the first counts
    /// for more by what less a ring bears of it, `p = p_l R_s / R_l + p_s`.
    ///
    /// To be held against the capacity at the modulus of the hours. Alone a ring bears by its modulus, in soil by the root of it.
    PressureOfBothTimes "outside pressure of two times" {
        /// Pressure that stands for years.
        long "p_l": Pressure as Pressure [>= 0.0],
        /// What the ring bears of such a one.
        bears_long "R_l": Pressure as Pressure [> 0.0],
        /// Pressure that lasts for hours.
        short "p_s": Pressure as Pressure [>= 0.0],
        /// What the ring bears of that.
        bears_short "R_s": Pressure as Pressure,
    } -> Pressure as Pressure;
    form "p = long bears_short / bears_long + short";
    from Judgement "jackpull" "shares of two critical pressures added up, times the one of the hours";
    valid "pressures not negative, what the ring bears positive, for years not the more"
        if |v| v.bears_long <= v.bears_short;
    value |s| s.long * (s.bears_short / s.bears_long) + s.short;

    /// Outside pressure at which a pipe held closely all round collapses:
    /// `P = 2 K E f_o / ((1 - nu²) (DR - 1)³)`.
    ///
    /// Made for liners in sewers. Where the grout is not proved K is 1.
    SupportedCollapse "collapse pressure of a closely held pipe" {
        /// Enhancement factor (by the support).
        enhancement "K": Ratio as Ratio [>= 1.0 <= 7.0],
        /// Long-term modulus.
        modulus "E": Pressure as Modulus,
        /// Poisson's ratio.
        poisson "nu": Ratio as Ratio [>= 0.0 <= 0.5],
        /// Outside diameter over minimum wall.
        dimension_ratio "DR": Ratio as Ratio [>= 5.0 <= 100.0],
        /// Ovality factor.
        ovality_factor "f_o": Ratio as Ratio [>= 0.0 <= 1.0],
    } -> Pressure as Pressure;
    form "P = 2 enhancement modulus ovality_factor / ((1 - poisson^2) (dimension_ratio - 1)^3)";
    from Memory "astm_f1216" "appendix X1, eq. X1.1, without the factor of safety";
    valid "hardened grout all round, dimension ratio 5 to 100, enhancement 1 to 7";
    fails beyond |v| v.dimension_ratio.value > 100.0;
    value |s| {
        let one = Ratio::from_si(1.0);
        let slim = s.dimension_ratio - one;
        2.0 * s.enhancement * s.modulus * s.ovality_factor / ((one - s.poisson * s.poisson) * (slim * slim * slim))
    };

    /// Allowable pressure against buckling in soil: `q = (1/n) sqrt(32 R_w B' E' E I / D³)`, I = t³/12.
    ///
    /// For a pipe in full contact with soil or set fluid. In an open bore E' is 0 and so is q:
    /// [`CriticalPressure`](crate::laws::collapse::CriticalPressure) counts there.
    BucklingInSoil "allowable buckling pressure in soil" {
        /// Design factor.
        safety "n": Ratio as Ratio [>= 1.0],
        /// Buoyancy factor of the water table.
        water_factor "R_w": Ratio as Ratio [>= 0.0 <= 1.0],
        /// Coefficient of elastic support.
        elastic_support "B'": Ratio as Ratio [>= 0.0 <= 1.0],
        /// Modulus of soil reaction.
        soil_modulus "E'": Pressure as Modulus [>= 0.0],
        /// Modulus of the pipe (long term).
        modulus "E": Pressure as Modulus [>= 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
    } -> Pressure as Pressure;
    form "q = (1/safety) sqrt(32 water_factor elastic_support soil_modulus modulus (wall^3 / 12) \
          / outside_diameter^3)";
    from Published "moser_buried_pipe" "ch. 3, allowable buckling pressure, p. 113";
    valid "safety at least 1, factors 0 to 1, wall positive and below half the outside diameter"
        if |v| 2.0 * v.wall < v.outside_diameter;
    value |s| {
        let thin = (s.wall / s.outside_diameter).value;
        let held = s.water_factor.value * s.elastic_support.value * s.soil_modulus.value;
        let stiff = s.modulus.value * thin * thin * thin / 12.0;
        Pressure::from_si((32.0 * held * stiff).max(0.0).sqrt()) / s.safety
    };

    /// Buoyancy factor of the water table: `R_w = 1 - 0.33 h_w / h`.
    WaterBuoyancyFactor "buoyancy factor of the water table" {
        /// Height of the water table over the pipe.
        water_height "h_w": Length as Depth [>= 0.0],
        /// Cover.
        cover "h": Length as Depth [> 0.0],
    } -> Ratio as Ratio;
    form "R_w = 1 - 0.33 water_height / cover";
    from Published "moser_buried_pipe" "ch. 3, below the allowable buckling pressure, p. 113";
    valid "water height from 0 to the cover, cover positive"
        if |v| v.water_height <= v.cover;
    value |s| Ratio::from_si(1.0) - WATER_COEFFICIENT * s.water_height / s.cover;

    /// Coefficient of elastic support from the cover alone: `B' = 1 / (1 + 4 exp(-0.065 H))`, H in feet.
    ///
    /// The lower of two forms in use at the cover of sewers.
    ElasticSupportByDepth "elastic support by depth" {
        /// Cover.
        cover "H": Length as Depth [>= 0.0],
    } -> Ratio as Ratio;
    form "B' = 1 / (1 + 4 exp(-0.065 cover / 1 ft))";
    from SecondHand "awwa_m11" "ch. 6, empirical coefficient of elastic support";
    valid "cover not negative";
    value |s| Ratio::from_si(1.0 / (1.0 + 4.0 * (-SUPPORT_PER_LENGTH * s.cover.value).exp()));
}
