//! What a flexible pipe meets in service: traffic over it, and how far it may go out of round.

use super::{Resolved, Resolver};
use crate::drive::{Creep, Ends, JackedRing, Pipe, RingInService, Stretch};
use crate::drive_file::{DriveFile, LoadCode, Traffic};
use crate::handbook::{Family, Service};
use crate::quantity::{Measure, Pressure, Ratio};
use crate::source::Cited;
use crate::yaml::MayBe;

/// A dimension ratio that falls short of a row by the rounding of diameter and wall is that of the row.
const ROUNDED: f64 = 0.97;

impl Resolver<'_> {
    /// What drives over the pipe: a road or nothing where the file does not tell.
    pub(super) fn driven_over(file: &DriveFile) -> Ends<Traffic> {
        let over = file.surface.as_ref().and_then(|surface| surface.over.given());
        let told = file.traffic.given().or(over.map(Traffic::of));
        told.map_or(Ends { low: Traffic::None, high: Traffic::Highway }, Ends::same)
    }

    /// Whose rules of traffic count.
    pub(super) fn load_code(file: &DriveFile) -> LoadCode {
        file.load_code.given().unwrap_or_default()
    }

    /// Fills in what every flexible pipe meets in service; false where there is none.
    pub(super) fn rings(&self, traffic: Ends<Traffic>, stretches: &[Stretch], pipes: &mut [Pipe]) -> Resolved<bool> {
        let code = Self::load_code(self.file);
        let shaken = matches!(traffic.high, Traffic::Railway | Traffic::Aircraft);
        let width = self.handbook.ratio("arch.width")?.value;
        let arch = (!shaken).then_some((self.handbook.length("arch.cover")?.value, width));
        let mut any = false;
        for pipe in pipes.iter_mut() {
            let jacked = self.jacked_ring(pipe)?;
            if pipe.pulled.is_none() && jacked.is_none() {
                continue;
            }
            let outside_diameter = pipe.outside_diameter.value;
            let along = |traffic: Traffic| -> Resolved<Vec<[Option<Pressure>; 2]>> {
                let mut pressures = Vec::new();
                for stretch in stretches {
                    let live = |depth| -> Resolved<Option<Pressure>> {
                        let live = self.live((traffic, code), depth - outside_diameter)?;
                        Ok(live.map(|(pressure, impact)| pressure * impact))
                    };
                    pressures.push([live(stretch.way.shallowest)?, live(stretch.way.deepest)?]);
                }
                Ok(pressures)
            };
            let ring = RingInService {
                traffic: Ends { low: along(traffic.low)?, high: along(traffic.high)? },
                deflection: self.most_deflection(self.file.service.value, traffic.high, pipe)?,
                jacked,
                arch,
            };
            pipe.ring = Some(Box::new(ring));
            any = true;
        }
        Ok(any)
    }

    /// The ring of a flexible pipe that is pushed; `None` of a rigid one, and of one whose wall is not known.
    fn jacked_ring(&self, pipe: &Pipe) -> Resolved<Option<JackedRing>> {
        let Some(wall) = pipe.pushed_wall() else { return Ok(None) };
        let (whole, none) = (Ratio::from(1.0), Ratio::default());
        let creep = if pipe.family == Family::Pvc { Some(self.pvc_creep()?) } else { None };
        let (modulus, share, poisson) = match (pipe.family, creep) {
            (_, Some(Creep { short: (_, short), long: (_, long) })) => {
                (long, long / short, self.handbook.pvc_ratio()?.value("poisson")?.value)
            }
            (Family::Steel, _) => (self.handbook.steel_pull_stress()?.value("modulus")?.value, whole, none),
            (Family::DuctileIron, _) => (self.handbook.pressure("iron.modulus")?.value, whole, none),
            (Family::Grp, _) => (self.handbook.pressure("grp.modulus_long")?.value, whole, none),
            _ => return Ok(None),
        };
        Ok(Some(JackedRing { wall, modulus, creep, share, poisson }))
    }

    /// How far a pipe may go out of round in service.
    fn most_deflection(&self, service: Service, traffic: Traffic, pipe: &Pipe) -> Resolved<Ends<Cited<Ratio>>> {
        let table = self.handbook.deflection_limit()?;
        let one = |key| Ok(Ends::same(table.row(key)?.map(|row| row.most.value)));
        let main = service == Service::PressureMain;
        match (pipe.family, &pipe.pulled) {
            (Family::Pe, Some(pulled)) if main => {
                let ratio = pipe.outside_diameter.value / pulled.wall();
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
            (Family::Pvc | Family::PvcFused | Family::PvcRestrained, _) if main => one("pvc_pressure"),
            (Family::DuctileIron, _) => one("iron_cement"),
            (Family::Steel, _) if service == Service::Casing && traffic == Traffic::Railway => one("casing_rail"),
            (Family::Steel, _) if service == Service::Casing => one("steel_bare"),
            (Family::Steel, _) => {
                let [least, most] = ["steel_lined_and_coated", "steel_bare"].map(one);
                Ok(Ends { low: least?.low, high: most?.high })
            }
            (Family::Grp, _) => one("grp"),
            _ => one("plastic_gravity"),
        }
    }
}
