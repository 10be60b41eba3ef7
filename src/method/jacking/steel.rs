//! What jacked steel bears: yield, local buckling, the Chinese annex, and a free length as a column.

use crate::drive::{FreeLength, SteelEnd, SteelScheme};
use crate::law::Calc;
use crate::laws::column::{ColumnStress, ElasticColumnStress, RadiusOfGyration};
use crate::laws::packer::RingArea;
use crate::laws::steel::{
    ChineseSteelEndForce, CodeAxialForce, EffectiveShare, ElasticLocalBuckling, LocalBuckling, SteelEndForce,
};
use crate::quantity::{Area, Force, Length, Pressure, Ratio};
use crate::source::Cited;

/// The section with the yield that its steel may have at best, where the file does not tell it.
pub(super) fn at_best(end: &SteelEnd) -> Option<SteelEnd> {
    end.yield_at_best.map(|yield_strength| SteelEnd { yield_strength, yield_at_best: None, ..*end })
}

/// The section by its scheme.
pub(super) fn limit(calc: &mut Calc, end: &SteelEnd) -> Cited<Force> {
    match end.scheme {
        SteelScheme::Default => default(calc, end),
        SteelScheme::Annex => annex(calc, end),
        SteelScheme::DefaultAndAnnex => {
            let (one, other) = (default(calc, end), annex(calc, end));
            if other.value < one.value { other } else { one }
        }
    }
}

/// The default, where another scheme was asked for.
pub(super) fn default_beside(calc: &mut Calc, end: &SteelEnd) -> Option<Force> {
    (end.scheme == SteelScheme::Annex).then(|| default(calc, end).value)
}

pub(super) fn default(calc: &mut Calc, end: &SteelEnd) -> Cited<Force> {
    let section_area = section(calc, end);
    let (wall, outside_diameter) = (end.wall, end.outside_diameter);
    let elastic_stress =
        calc.law(ElasticLocalBuckling { coefficient: end.local.elastic, modulus: end.modulus, wall, outside_diameter });
    let local_stress = calc.law(LocalBuckling {
        yield_strength: end.yield_strength.value,
        elastic_stress,
        outside_diameter,
        wall,
        constant: end.local.constant,
        slope: end.local.slope,
        exponent: end.local.exponent,
        compact_ratio: end.local.compact,
        last_ratio: end.local.last,
    });
    let local_share = end.local_share.value;
    let force = calc.law(SteelEndForce {
        section_area,
        yield_strength: end.yield_strength.value,
        yield_factor: end.yield_factor.value,
        local_stress,
        local_share,
    });
    let by_local = local_share * local_stress < end.yield_strength.value / end.yield_factor.value;
    Cited::new(force, if by_local { end.local_share.origin } else { end.yield_factor.origin })
}

pub(super) fn annex(calc: &mut Calc, end: &SteelEnd) -> Cited<Force> {
    let least_end_area = section(calc, end);
    end.stability.map(|stability| {
        calc.law(ChineseSteelEndForce {
            strength_reduction: end.annex.phi1,
            brittleness: end.annex.phi3,
            stability,
            partial_factor: end.annex.gamma,
            design_strength: end.design_strength.value,
            least_end_area,
        })
    })
}

/// The building code on a section with this critical stress.
pub(super) fn by_code(calc: &mut Calc, end: &SteelEnd, critical_stress: Pressure) -> Cited<Force> {
    let section_area = section(calc, end);
    let effective_share = calc.law(EffectiveShare {
        modulus: end.modulus,
        yield_strength: end.yield_strength.value,
        outside_diameter: end.outside_diameter,
        wall: end.wall,
        round_limit: end.code.round,
        slope: end.code.slender,
        last_limit: end.code.last,
    });
    end.code.omega.map(|safety| calc.law(CodeAxialForce { critical_stress, effective_share, section_area, safety }))
}

/// What a free length may be pushed with.
pub(super) fn free_length(calc: &mut Calc, end: &SteelEnd, free: &FreeLength) -> Cited<Force> {
    let critical = column_stress(calc, end, free.length_factor.value, free.length.value);
    Cited::new(by_code(calc, end, critical).value, free.length_factor.origin)
}

fn column_stress(calc: &mut Calc, end: &SteelEnd, length_factor: Ratio, free_length: Length) -> Pressure {
    let inside_diameter = end.outside_diameter - 2.0 * end.wall;
    let radius_of_gyration = calc.law(RadiusOfGyration { outside_diameter: end.outside_diameter, inside_diameter });
    let modulus = end.modulus;
    let elastic_stress = calc.law(ElasticColumnStress { modulus, length_factor, free_length, radius_of_gyration });
    calc.law(ColumnStress {
        yield_strength: end.yield_strength.value,
        elastic_stress,
        base: end.code.base,
        elastic_share: end.code.elastic_share,
        limit: end.code.limit,
    })
}

pub(super) fn section(calc: &mut Calc, end: &SteelEnd) -> Area {
    let inside_diameter = end.outside_diameter - 2.0 * end.wall;
    calc.law(RingArea { outside_diameter: end.outside_diameter, inside_diameter })
}
