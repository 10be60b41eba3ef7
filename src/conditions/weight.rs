//! Weight of a pulled pipe.

use crate::drive::{Pipe, PulledPipe};
use crate::law::Calc;
use crate::laws::pull::PipeWeight;
use crate::quantity::{LineLoad, Ratio};

/// Weight per length of the empty pipe: as the file gives it, else by its wall.
pub(crate) fn of_pulled(calc: &mut Calc, pipe: &Pipe, pulled: &PulledPipe, average_wall: Ratio) -> LineLoad {
    let law = PipeWeight {
        outside_diameter: pipe.outside_diameter.value,
        wall: pulled.wall(),
        density: pulled.density(),
        average_wall,
    };
    match pulled.weight() {
        Some(given) => given,
        None => calc.law(law),
    }
}
