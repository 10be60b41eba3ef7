//! The least weight that must be moved between criteria before another scheme scores as much.

use super::share::difference;
use crate::handbook::CriterionKind;

/// Weight to move. Weights sum to 1.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct WeightShift {
    /// Position in the ranking of the scheme that then scores as much.
    pub to: usize,
    /// Criteria that give weight, and how much.
    pub from: Vec<(CriterionKind, f64)>,
    /// The criterion that takes it.
    pub into: CriterionKind,
    /// Weight moved in all, from 0 to 1.
    pub moved: f64,
}

/// The least shift over all rivals of the first, and which of the list it turns to.
pub(super) fn least(weights: &[(CriterionKind, f64)], values: &[Vec<f64>]) -> Option<(usize, WeightShift)> {
    let (first, rivals) = values.split_first()?;
    let shifts = rivals
        .iter()
        .enumerate()
        .filter_map(|(index, rival)| shift(weights, &difference(first, rival)).map(|shift| (index + 1, shift)));
    shifts.min_by(|a, b| a.1.moved.total_cmp(&b.1.moved))
}

/// Moving weight `m` from criterion `i` to `j` takes `m (d_i - d_j)` off the lead. So the taker is the criterion that
/// speaks most for the rival, and the givers are, in order, those that speak most against it, each down to nothing: no
/// other way needs less.
fn shift(weights: &[(CriterionKind, f64)], differences: &[f64]) -> Option<WeightShift> {
    let mut givers: Vec<(CriterionKind, f64, f64)> =
        weights.iter().zip(differences).map(|((kind, weight), d)| (*kind, *weight, *d)).collect();
    let (into, _, low) = givers.iter().copied().min_by(|a, b| a.2.total_cmp(&b.2))?;
    // No weighting turns a scheme that is at least as good in everything.
    if low >= 0.0 {
        return None;
    }
    givers.sort_by(|a, b| b.2.total_cmp(&a.2));
    let mut lead: f64 = weights.iter().zip(differences).map(|((_, weight), d)| weight * d).sum();
    let (mut from, mut moved) = (Vec::new(), 0.0);
    for (kind, weight, d) in givers {
        if lead <= 0.0 || kind == into {
            break;
        }
        let part = weight.min(lead / (d - low));
        if part > 0.0 {
            from.push((kind, part));
            moved += part;
            lead -= part * (d - low);
        }
    }
    Some(WeightShift { to: 0, from, into, moved })
}
