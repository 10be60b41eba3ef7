//! A pipe under outside pressure after the pull: while the annulus is grouted, under groundwater, with a vacuum inside,
//! and with soil or grout to hold it.
//!
//! `collapse::CriticalPressure` is the capacity without support, at the modulus of the duration of the load. What grout
//! lifts is `pull::NetWeightInFluid` with the density of the grout.

use crate::law::law;
use crate::quantity::unit::STANDARD_GRAVITY;
use crate::quantity::{Length, MassDensity, Measure, Pressure, Ratio};
use crate::source::{Equation, Mark};
use uom::si::f64::Acceleration;

law! {
    /// Outside less inside pressure: `p = rho g h + p_a - p_i`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | rho | `density` of what stands outside: grout, bore fluid, water | mass density |
    /// | h | `height` of it over the invert | length |
    /// | p_a | `added`: grouting pressure, flow loss, or the vacuum of a pressure main | pressure |
    /// | p_i | `inside` (over the atmosphere) | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** non-negative arguments. It may come out
    /// negative: then the pipe is under pressure from inside.
    NetOutsidePressure {
        /// Density of the fluid outside.
        density: MassDensity as Density,
        /// Height of its column.
        height: Length as Depth,
        /// Pressure added to it.
        added: Pressure as Pressure,
        /// Pressure inside the pipe.
        inside: Pressure as Pressure,
    } -> Pressure as Pressure
    { Equation {
        name: "net outside pressure",
        form: "p = density g height + added - inside",
        source: "jackpull",
        locator: "statics of a fluid column and what is added to it",
        mark: Mark::Judgement,
        valid: "no argument negative",
    } }
    valid |v| v.density.value >= 0.0 && v.height.value >= 0.0 && v.added.value >= 0.0 && v.inside.value >= 0.0;
    value |s| s.density * Acceleration::from_si(STANDARD_GRAVITY) * s.height + s.added - s.inside;
}

law! {
    /// A pressure that stands for years and another that lasts for hours, as one pressure of the hours: plastic is as
    /// much softer under the first as its modulus has fallen, `p = p_l E_s / E_l + p_s`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | p_l | `long` | pressure |
    /// | E_l | `modulus_long` | pressure |
    /// | p_s | `short` | pressure |
    /// | E_s | `modulus_short` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a modulus that falls with time. To be
    /// held against the capacity at the modulus of the hours.
    PressureOfBothTimes {
        /// Pressure that stands for years.
        long: Pressure as Pressure,
        /// Modulus at the end of them.
        modulus_long: Pressure as Modulus,
        /// Pressure that lasts for hours.
        short: Pressure as Pressure,
        /// Modulus at the end of those.
        modulus_short: Pressure as Modulus,
    } -> Pressure as Pressure
    { Equation {
        name: "outside pressure of two times",
        form: "p = long modulus_short / modulus_long + short",
        source: "jackpull",
        locator: "shares of two critical pressures added up, times the one of the hours",
        mark: Mark::Judgement,
        valid: "pressures not negative, moduli positive, the long-term one not the larger",
    } }
    valid |v| v.long.value >= 0.0
        && v.short.value >= 0.0
        && v.modulus_long.value > 0.0
        && v.modulus_long <= v.modulus_short;
    value |s| s.long * (s.modulus_short / s.modulus_long) + s.short;
}

law! {
    /// Outside pressure at which a pipe held closely all round collapses:
    /// `P = 2 K E f_o / ((1 - nu²) (DR - 1)³)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | K | `enhancement` by the support | ratio |
    /// | E | `modulus` (long term) | pressure |
    /// | nu | `poisson` | ratio |
    /// | DR | `dimension_ratio` | ratio |
    /// | f_o | `ovality_factor` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION), made for liners in sewers. **Valid for** an annulus
    /// that is filled with hardened grout, DR 5 to 100 and K from 1 to 7. Where the grout is not proved K is 1.
    SupportedCollapse {
        /// Enhancement factor.
        enhancement: Ratio as Ratio,
        /// Long-term modulus.
        modulus: Pressure as Modulus,
        /// Poisson's ratio.
        poisson: Ratio as Ratio,
        /// Outside diameter over minimum wall.
        dimension_ratio: Ratio as Ratio,
        /// Ovality factor.
        ovality_factor: Ratio as Ratio,
    } -> Pressure as Pressure
    { Equation {
        name: "collapse pressure of a closely held pipe",
        form: "P = 2 enhancement modulus ovality_factor / ((1 - poisson^2) (dimension_ratio - 1)^3)",
        source: "astm_f1216",
        locator: "appendix X1, eq. X1.1, without the factor of safety",
        mark: Mark::Memory,
        valid: "hardened grout all round, dimension ratio 5 to 100, enhancement 1 to 7",
    } }
    valid |v| (5.0..=100.0).contains(&v.dimension_ratio.value)
        && (0.0..=0.5).contains(&v.poisson.value)
        && (0.0..=1.0).contains(&v.ovality_factor.value)
        && (1.0..=7.0).contains(&v.enhancement.value);
    value |s| {
        let one = Ratio::from_si(1.0);
        let slim = s.dimension_ratio - one;
        2.0 * s.enhancement * s.modulus * s.ovality_factor / ((one - s.poisson * s.poisson) * (slim * slim * slim))
    };
}

law! {
    /// Allowable pressure against buckling in soil: `q = (1/n) sqrt(32 R_w B' E' E I / D³)`, I = t³/12.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | n | `safety` | ratio |
    /// | R_w | `water_factor` | ratio |
    /// | B' | `elastic_support` | ratio |
    /// | E' | `soil_modulus` | pressure |
    /// | E | `modulus` (long term) | pressure |
    /// | D, t | `outside_diameter`, `wall` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a pipe in full contact with soil or set
    /// fluid. In an open bore E' is 0 and so is q: [`crate::laws::collapse::CriticalPressure`] counts there.
    BucklingInSoil {
        /// Design factor.
        safety: Ratio as Ratio,
        /// Buoyancy factor of the water table.
        water_factor: Ratio as Ratio,
        /// Coefficient of elastic support.
        elastic_support: Ratio as Ratio,
        /// Modulus of soil reaction.
        soil_modulus: Pressure as Modulus,
        /// Modulus of the pipe.
        modulus: Pressure as Modulus,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Wall.
        wall: Length as Wall,
    } -> Pressure as Pressure
    { Equation {
        name: "allowable buckling pressure in soil",
        form: "q = (1/safety) sqrt(32 water_factor elastic_support soil_modulus modulus (wall^3 / 12) \
               / outside_diameter^3)",
        source: "moser_buried_pipe",
        locator: "ch. 3, allowable buckling pressure, p. 113",
        mark: Mark::Published,
        valid: "safety at least 1, factors 0 to 1, wall positive and below half the outside diameter",
    } }
    valid |v| v.safety.value >= 1.0
        && (0.0..=1.0).contains(&v.water_factor.value)
        && (0.0..=1.0).contains(&v.elastic_support.value)
        && v.soil_modulus.value >= 0.0
        && v.modulus.value >= 0.0
        && v.wall.value > 0.0
        && 2.0 * v.wall < v.outside_diameter;
    value |s| {
        let thin = (s.wall / s.outside_diameter).value;
        let held = s.water_factor.value * s.elastic_support.value * s.soil_modulus.value;
        let stiff = s.modulus.value * thin * thin * thin / 12.0;
        Pressure::from_si((32.0 * held * stiff).max(0.0).sqrt()) / s.safety
    };
}

/// Coefficient of the buoyancy factor (Moser, Buried Pipe Design, p. 113).
const WATER_COEFFICIENT: f64 = 0.33;

law! {
    /// Buoyancy factor of the water table: `R_w = 1 - 0.33 h_w / h`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | h_w | `water_height` over the pipe | length |
    /// | h | `cover` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** water up to the surface.
    WaterBuoyancyFactor {
        /// Height of the water table over the pipe.
        water_height: Length as Depth,
        /// Cover.
        cover: Length as Depth,
    } -> Ratio as Ratio
    { Equation {
        name: "buoyancy factor of the water table",
        form: "R_w = 1 - 0.33 water_height / cover",
        source: "moser_buried_pipe",
        locator: "ch. 3, below the allowable buckling pressure, p. 113",
        mark: Mark::Published,
        valid: "water height from 0 to the cover, cover positive",
    } }
    valid |v| v.cover.value > 0.0 && v.water_height.value >= 0.0 && v.water_height <= v.cover;
    value |s| Ratio::from_si(1.0) - WATER_COEFFICIENT * s.water_height / s.cover;
}

/// Fall of the exponent per length of cover, 0.065 per foot (AWWA M11, quoted in a calculation sheet that was read).
const SUPPORT_PER_LENGTH: f64 = 0.065 / 0.3048;

law! {
    /// Coefficient of elastic support from the cover alone: `B' = 1 / (1 + 4 exp(-0.065 H))`, H in feet.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | H | `cover` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** non-negative cover. The lower of the two
    /// forms at the cover of sewers, so the default.
    ElasticSupportByDepth {
        /// Cover.
        cover: Length as Depth,
    } -> Ratio as Ratio
    { Equation {
        name: "elastic support by depth",
        form: "B' = 1 / (1 + 4 exp(-0.065 cover / 1 ft))",
        source: "awwa_m11",
        locator: "ch. 6, empirical coefficient of elastic support; second hand",
        mark: Mark::Published,
        valid: "cover not negative",
    } }
    valid |v| v.cover.value >= 0.0;
    value |s| Ratio::from_si(1.0 / (1.0 + 4.0 * (-SUPPORT_PER_LENGTH * s.cover.value).exp()));
}
