//! Low, likely and high of a quantity, and a quantity or none.

use crate::quantity::{Force, FromText, Pressure, Torque};
use crate::yaml::{Complaint, Field, FromScalar, Scalar, ToScalar};
use serde::{Deserialize, Serialize};

/// Low, likely and high pressure.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct PressureBandFile {
    /// Low.
    pub low: Field<Pressure>,
    /// Likely.
    pub likely: Field<Pressure>,
    /// High.
    pub high: Field<Pressure>,
}

/// Low, likely and high force.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct ForceBandFile {
    /// Low.
    pub low: Field<Force>,
    /// Likely.
    pub likely: Field<Force>,
    /// High.
    pub high: Field<Force>,
}

/// Low, likely and high torque.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct TorqueBandFile {
    /// Low.
    pub low: Field<Torque>,
    /// Likely.
    pub likely: Field<Torque>,
    /// High.
    pub high: Field<Torque>,
}

/// A quantity or the word `none`.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum OrNone<Q> {
    /// There is none.
    #[default]
    None,
    /// There is this.
    Some(Q),
}

impl<Q: FromText + Default> FromScalar for OrNone<Q> {
    fn from_scalar(scalar: Scalar<'_>) -> Result<Self, Complaint> {
        match scalar {
            Scalar::Text("none") => Ok(Self::None),
            other => Q::from_scalar(other).map(Self::Some).map_err(|complaint| {
                let advice = complaint.advice.clone().unwrap_or_default();
                complaint.advise(format!("{advice}, or \"none\""))
            }),
        }
    }
}

impl<Q: FromText> ToScalar for OrNone<Q> {
    fn to_scalar(&self) -> String {
        match self {
            Self::None => "none".to_owned(),
            Self::Some(quantity) => quantity.to_text(),
        }
    }
}
