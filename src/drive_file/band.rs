//! Low, likely and high of a quantity, and a quantity or none.

use super::fields::{FileNumber, Shape, Shaped, Spec, Value, below};
use crate::quantity::{FromText, Length, Measure, UnitSystem};
use crate::yaml::{Blank, Block, Complaint, Field, Form, FromScalar, Handle, Known, Scalar, ToScalar, block};
use serde::de::MapAccess;
use serde::{Deserialize, Deserializer, Serialize};

/// Low, likely and high of one quantity.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(bound(serialize = "Q: ToScalar"))]
pub struct BandFile<Q> {
    /// Low.
    pub low: Field<Q>,
    /// Likely.
    pub likely: Field<Q>,
    /// High.
    pub high: Field<Q>,
}

impl<Q: Default> Blank for BandFile<Q> {
    fn blank() -> Self {
        Self { low: Field::blank(), likely: Field::blank(), high: Field::blank() }
    }
}

impl<Q: FromScalar> Block for BandFile<Q> {
    const IS_FILE: bool = false;
    fn known() -> impl Iterator<Item = Known> {
        ["low", "likely", "high"].into_iter().map(|key| Known { key, must: true, said: &[] })
    }
    fn take<'de, A: MapAccess<'de>>(&mut self, index: usize, map: &mut A) -> Result<(), A::Error> {
        if let Some(level) = [&mut self.low, &mut self.likely, &mut self.high].into_iter().nth(index) {
            *level = map.next_value()?;
        }
        Ok(())
    }
}

impl<'de, Q: FromScalar> Deserialize<'de> for BandFile<Q> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        block(deserializer)
    }
}

impl<Q: ToScalar> Shaped for BandFile<Q> {
    const SHAPE: Shape = Shape::Band(Q::FORM);
}

impl<Q: ToScalar> Value for BandFile<Q> {
    fn place(&self) -> Option<(Handle, String)> {
        Some((self.high.handle(), ".high".to_owned()))
    }
    fn shown(&self, _: &Spec, _: UnitSystem) -> Option<String> {
        None
    }
    fn numbers(&self, spec: &Spec, path: &mut String, each: &mut dyn FnMut(&FileNumber<'_>)) {
        for (level, name, is_judged) in
            [(&self.low, ".low", false), (&self.likely, ".likely", false), (&self.high, ".high", true)]
        {
            below(path, name, |path| level.numbers(spec, path, &mut |told| each(&FileNumber { is_judged, ..*told })));
        }
    }
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
    const FORM: Form = Form::OrWord(Q::DIM, &["none"]);
    fn number(&self) -> Option<f64> {
        match self {
            Self::None => None,
            Self::Some(quantity) => Some(quantity.si()),
        }
    }
    fn to_scalar(&self) -> String {
        match self {
            Self::None => "none".to_owned(),
            Self::Some(quantity) => quantity.to_text(),
        }
    }
}

/// Depth of the water table, the word `none`, or that nobody knows.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum WaterTable {
    /// There is no ground water.
    #[default]
    None,
    /// It is not known: each check is made with the water at the ground surface and without any.
    Unknown,
    /// It lies this deep.
    At(Length),
}

impl From<WaterTable> for Option<Length> {
    fn from(table: WaterTable) -> Self {
        if let WaterTable::At(depth) = table { Some(depth) } else { None }
    }
}

impl FromScalar for WaterTable {
    fn from_scalar(scalar: Scalar<'_>) -> Result<Self, Complaint> {
        match scalar {
            Scalar::Text("unknown") => Ok(Self::Unknown),
            Scalar::Text("none") => Ok(Self::None),
            Scalar::Text("dry" | "not encountered" | "none encountered" | "not found") => Ok(Self::None),
            other => Length::from_scalar(other).map(Self::At).map_err(|complaint| {
                let advice = complaint.advice.clone().unwrap_or_default();
                complaint.advise(format!("{advice}, \"none\" or \"unknown\""))
            }),
        }
    }
}

impl ToScalar for WaterTable {
    const FORM: Form = Form::OrWord(Length::DIM, &["none", "unknown"]);
    fn number(&self) -> Option<f64> {
        Option::<Length>::from(*self).map(Measure::si)
    }
    fn to_scalar(&self) -> String {
        match self {
            Self::None => "none".to_owned(),
            Self::Unknown => "unknown".to_owned(),
            Self::At(depth) => depth.to_text(),
        }
    }
}
