//! Groups of coefficients that a scheme reads from one table, each by its key.

use crate::handbook::{HandbookError, SchemeFactorRow, Table};
use crate::quantity::{Pressure, Ratio, ThermodynamicTemperature, Time};
use crate::source::Cited;

impl From<Cited<Ratio>> for Ratio {
    fn from(cited: Cited<Ratio>) -> Self {
        cited.value
    }
}

/// Declares groups and the reading of them: `name: type = "key of its row"`, where the type keeps the origin or not.
macro_rules! coefficients {
    ($($(#[$doc:meta])* $group:ident { $($(#[$about:meta])* $name:ident: $kind:ty = $key:literal,)+ })+) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy)]
        pub(crate) struct $group { $($(#[$about])* pub(crate) $name: $kind,)+ }

        impl $group {
            pub(crate) fn read(table: &Table<SchemeFactorRow>) -> Result<Self, HandbookError> {
                Ok(Self { $($name: table.value($key)?.into(),)+ })
            }
        }
    )+};
}

coefficients! {
    /// Shares of the strength of concrete that the schemes with one coefficient allow.
    ConcreteShares {
        mean_share: Cited<Ratio> = "default_mean",
        edge_share: Cited<Ratio> = "default_edge",
        en_edge: Cited<Ratio> = "en_1916_edge",
        /// Factor of a guideline on uniform stress, shown beside the others.
        uniform: Cited<Ratio> = "guideline_uniform",
    }

    /// Coefficients of ASCE 27.
    Asce27 {
        block: Cited<Ratio> = "asce_27_block",
        phi: Ratio = "asce_27_phi",
        load: Ratio = "asce_27_load",
        eccentric: Ratio = "asce_27_eccentric",
    }

    /// Coefficients of the Chinese annex for concrete.
    ConcreteAnnex {
        eccentric: Ratio = "cn_eccentric",
        phi1: Ratio = "cn_phi1",
        phi2: Ratio = "cn_phi2",
        phi3: Ratio = "cn_phi3",
        phi5: Ratio = "cn_phi5",
        gamma: Ratio = "cn_gamma",
    }

    /// Curve of local buckling.
    LocalCurve {
        elastic: Ratio = "api_elastic",
        constant: Ratio = "api_constant",
        slope: Ratio = "api_slope",
        exponent: Ratio = "api_exponent",
        compact: Ratio = "api_compact",
        last: Ratio = "api_end",
    }

    /// Coefficients of the Chinese annex for steel.
    SteelAnnex {
        phi1: Ratio = "cn_phi1",
        phi3: Ratio = "cn_phi3",
        gamma: Ratio = "cn_gamma",
    }

    /// Coefficients of the building code, for a free length and as upper information.
    SteelCode {
        round: Ratio = "aisc_round",
        slender: Ratio = "aisc_slender_slope",
        last: Ratio = "aisc_slender_end",
        omega: Cited<Ratio> = "aisc_omega",
        base: Ratio = "aisc_column_base",
        elastic_share: Ratio = "aisc_column_elastic",
        limit: Ratio = "aisc_column_limit",
    }

    /// Coefficients of the check of a pulled steel pipe.
    SteelFactors {
        tension: Cited<Ratio> = "tension",
        bending_low: Ratio = "bending_low",
        bending_middle: Ratio = "bending_middle",
        bending_middle_slope: Ratio = "bending_middle_slope",
        bending_high: Ratio = "bending_high",
        bending_high_slope: Ratio = "bending_high_slope",
        last_ratio: Ratio = "bending_end",
        hoop_elastic: Ratio = "hoop_elastic",
        hoop_elastic_end: Ratio = "hoop_elastic_end",
        hoop_linear: Ratio = "hoop_linear_constant",
        hoop_linear_slope: Ratio = "hoop_linear_slope",
        hoop_linear_end: Ratio = "hoop_linear_end",
        hoop_third: Ratio = "hoop_third",
        hoop_third_constant: Ratio = "hoop_third_constant",
        hoop_third_end: Ratio = "hoop_third_end",
        hoop_safety: Cited<Ratio> = "hoop_safety",
        /// Under a load that comes once.
        axial: Cited<Ratio> = "interaction_axial",
        hoop: Ratio = "interaction_hoop",
        /// Under loads of every day.
        axial_normal: Cited<Ratio> = "interaction_axial_normal",
        hoop_normal: Ratio = "interaction_hoop_normal",
        hoop_share: Ratio = "interaction_half_hoop",
        poisson: Ratio = "poisson",
    }
}

/// A temperature and the rows of a table of factors around it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct FactorPoints {
    pub(crate) at: ThermodynamicTemperature,
    pub(crate) below: (ThermodynamicTemperature, Ratio),
    pub(crate) above: (ThermodynamicTemperature, Ratio),
}

/// How PVC softens under a load that stands: its modulus in a test of minutes and over years.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Creep {
    pub(crate) short: (Time, Pressure),
    pub(crate) long: (Time, Pressure),
}
