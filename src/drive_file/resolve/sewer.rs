//! Flow and grade of a gravity sewer.

use super::{Resolved, Resolver};
use crate::drive::{Gravity, Pipe, Sewer, Waves};
use crate::drive_file::{DriveFile, FlowFile};
use crate::handbook::Service;
use crate::law::Law;
use crate::laws::hydraulics::SlopeForVelocity;
use crate::quantity::{Length, Measure, Ratio, Role};
use crate::source::{Cited, FieldName};

/// Share by which the true bore may fall short of a size of the table and still count as that size.
const SHORT_OF_SIZE: f64 = 0.05;

impl Resolver<'_> {
    pub(super) fn gravity(&mut self) -> Resolved<Option<Gravity>> {
        if self.file.service.value != Service::GravitySewer {
            return Ok(None);
        }
        let row = self.handbook.manning_n()?.row("default")?.map(|row| row.n.value);
        // Where no flow is told nothing hangs on it.
        let is_used = self.file.design_flow.is_some();
        Ok(Some(Gravity {
            roughness: if is_used { self.or_row(FlowFile::roughness, row) } else { row },
            flow_min: self.cited(FlowFile::min),
            flow_max: self.cited(FlowFile::max),
            half_wave: self.cited(DriveFile::half_wave),
            waves: Waves::read(self.handbook)?,
            fastest: self.handbook.tractive_stress()?.cell("velocity_most", |row| &row.velocity)?,
            cleaning_stress: self.handbook.tractive_stress()?.cell("rounded", |row| &row.stress)?,
            pulled_floor: self.handbook.grade_gate()?.span("on_grade_floor")?,
        }))
    }

    /// What a candidate is as a sewer. A bore that is not known is taken as the nominal size.
    pub(super) fn sewer(&mut self, index: usize, pipe: &Pipe, service: Service) -> Resolved<Option<Sewer>> {
        if service != Service::GravitySewer {
            return Ok(None);
        }
        let inside = match &pipe.pulled {
            Some(pulled) => pipe.outside_diameter.map(|outside| outside - 2.0 * pulled.wall()),
            None => match pipe.jacked.as_ref().and_then(|jacked| jacked.inside_diameter) {
                Some(inside) => pipe.outside_diameter.map(|_| inside),
                None => Cited::given(pipe.nominal, &FieldName("candidates[].size")),
            },
        };
        if !(inside.value.si() > 0.0) {
            return Ok(None);
        }
        if pipe.pulled.is_none() {
            let what = format!("candidates[{index}].inside diameter, for flow and slope");
            self.assume_one(what, inside, Role::Diameter);
        }
        let (sag, sag_is_real) = self.sag(inside.value)?;
        Ok(Some(Sewer { inside, least_slope: self.least_slope(inside.value)?, sag, sag_is_real }))
    }

    /// The row of the largest size that the bore fills, or the slope of the same velocity for a smaller one.
    pub(super) fn least_slope(&self, inside: Length) -> Resolved<Cited<Ratio>> {
        let table = self.handbook.sewer_min_slope()?;
        let fits = |size: Length| size * (1.0 - SHORT_OF_SIZE) <= inside;
        let row = table
            .iter()
            .filter(|row| fits(row.value.value.size.value))
            .max_by(|a, b| a.value.value.size.value.si().total_cmp(&b.value.value.size.value.si()));
        if let Some(row) = row {
            return Ok(row.map(|row| row.value.slope.value));
        }
        let velocity = self.handbook.tractive_stress()?.cell("velocity_full", |row| &row.velocity)?;
        let roughness = self.handbook.manning_n()?.row("default")?.value.n.value;
        let slope = SlopeForVelocity { velocity: velocity.value, hydraulic_radius: inside / 4.0, roughness };
        Ok(velocity.map(|_| slope.value()))
    }

    /// The sag that is accepted for the size, and whether by a code: elsewhere by habit.
    fn sag(&self, inside: Length) -> Resolved<(Cited<Length>, bool)> {
        const CODE: &str = "sewer_6_to_10_in";
        let table = self.handbook.sag_limit()?;
        let row = table.row(CODE)?;
        let slack = 1.0 - SHORT_OF_SIZE;
        let ends = row.value.size_from.as_ref().zip(row.value.size_to.as_ref());
        if ends.is_some_and(|(from, to)| from.value * slack <= inside && inside <= to.value / slack) {
            return Ok((table.cell(CODE, |row| &row.high)?, true));
        }
        Ok((table.cell("share_of_diameter", |row| &row.of_diameter)?.map(|of| of * inside), false))
    }
}
