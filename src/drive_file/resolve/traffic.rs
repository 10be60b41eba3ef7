//! Traffic over pulled pipe in service.

use super::Resolver;
use crate::drive::{Pipe, Stretch};
use crate::drive_file::Traffic;
use crate::handbook::HandbookError;
use crate::quantity::{Length, Pressure};

impl Resolver<'_> {
    /// Fills in the pressure of the traffic over every pipe that is pulled, by stretch. Where the file tells neither the
    /// traffic nor the soil of every stretch nothing is counted, and the answer is false.
    pub(super) fn over_pulled(
        &self,
        traffic: Traffic,
        is_told: bool,
        stretches: &[Stretch],
        shallowest: Length,
        pipes: &mut [Pipe],
    ) -> Result<bool, HandbookError> {
        let counts = is_told || stretches.iter().all(|stretch| stretch.soil.is_some());
        let mut any = false;
        for pipe in pipes.iter_mut().filter(|pipe| counts && pipe.pulled.is_some()) {
            let mut pressures: Vec<Option<Pressure>> = Vec::new();
            for stretch in stretches {
                let least = stretch.soil.as_ref().map_or(shallowest, |_| stretch.way.shallowest);
                let live = self.live(traffic, least - pipe.outside_diameter.value)?;
                pressures.push(live.map(|(pressure, impact)| pressure * impact));
            }
            pipe.traffic = Some(pressures);
            any = true;
        }
        Ok(any)
    }
}
