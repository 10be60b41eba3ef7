//! What a flexible pipe meets in service: traffic over it, and how far it may go out of round.

use super::Resolver;
use crate::drive::{Ends, Made, Pipe, RingInService, Stretch};
use crate::drive_file::{DriveFile, Traffic};
use crate::handbook::{HandbookError, Service};
use crate::quantity::{Measure, Pressure, Ratio};
use crate::source::Cited;

/// A dimension ratio that falls short of a row by the rounding of diameter and wall is that of the row.
const ROUNDED: f64 = 0.97;

impl Resolver<'_> {
    /// What drives over the pipe: a road or nothing where the file does not tell.
    pub(super) fn driven_over(file: &DriveFile) -> Ends<Traffic> {
        let over = file.surface.as_ref().and_then(|surface| surface.over.as_ref()).map(|field| field.value);
        let told = file.traffic.as_ref().map(|field| field.value).or(over.map(Traffic::of));
        told.map_or(Ends { low: Traffic::None, high: Traffic::Highway }, Ends::same)
    }

    /// Fills in what every pipe that is pulled meets in service; false where there is none.
    pub(super) fn rings(
        &self,
        file: &DriveFile,
        traffic: Ends<Traffic>,
        stretches: &[Stretch],
        pipes: &mut [Pipe],
    ) -> Result<bool, HandbookError> {
        let mut any = false;
        for pipe in pipes.iter_mut() {
            let Some(pulled) = &pipe.pulled else { continue };
            let outside_diameter = pipe.outside_diameter.value;
            let along = |traffic: Traffic| -> Result<Vec<[Option<Pressure>; 2]>, HandbookError> {
                let mut pressures = Vec::new();
                for stretch in stretches {
                    let live = |depth| -> Result<Option<Pressure>, HandbookError> {
                        let live = self.live(traffic, depth - outside_diameter)?;
                        Ok(live.map(|(pressure, impact)| pressure * impact))
                    };
                    pressures.push([live(stretch.way.shallowest)?, live(stretch.way.deepest)?]);
                }
                Ok(pressures)
            };
            let main = file.service.value == Service::PressureMain;
            let ratio = outside_diameter / pulled.wall();
            let ring = RingInService {
                traffic: Ends { low: along(traffic.low)?, high: along(traffic.high)? },
                deflection: self.most_deflection(pulled.made(), main, ratio)?,
            };
            pipe.ring = Some(Box::new(ring));
            any = true;
        }
        Ok(any)
    }

    /// How far a pipe may go out of round in service.
    fn most_deflection(&self, made: Made<'_>, main: bool, ratio: Ratio) -> Result<Ends<Cited<Ratio>>, HandbookError> {
        let table = self.handbook.deflection_limit()?;
        let one = |key| Ok(Ends::same(table.row(key)?.map(|row| row.most.value)));
        match made {
            Made::Pe(_) if main => {
                // Of what is thicker than any row the thickest.
                let rows =
                    || table.iter().filter_map(|row| Some((row.value.value.ratio_from.as_ref()?.value.si(), row)));
                let fits = rows().filter(|(from, _)| from * ROUNDED <= ratio.si());
                let closest = fits.max_by(|one, other| one.0.total_cmp(&other.0));
                let row = closest.or_else(|| rows().min_by(|one, other| one.0.total_cmp(&other.0)));
                match row {
                    Some((_, row)) => Ok(Ends::same(row.map(|row| row.value.most.value))),
                    None => one("plastic_gravity"),
                }
            }
            Made::Pvc(_) if main => one("pvc_pressure"),
            Made::Pe(_) | Made::Pvc(_) => one("plastic_gravity"),
            Made::Iron(_) => one("iron_cement"),
            Made::Steel(_) => {
                let [least, most] = ["steel_lined_and_coated", "steel_bare"].map(|key| one(key));
                Ok(Ends { low: least?.low, high: most?.high })
            }
        }
    }
}
