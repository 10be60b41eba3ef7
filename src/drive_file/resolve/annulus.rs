//! What becomes of the annulus, and what the pipe has to bear in service.

use super::Resolver;
use crate::drive::{Annulus, Grout, InService, Pipe, Pull, Stretch};
use crate::drive_file::{DriveFile, Filling, Hole, Proof};
use crate::handbook::{HandbookError, Service};
use crate::quantity::{Length, Measure, Role};
use crate::source::{Cited, FieldName};
use crate::yaml::Complaint;

impl Resolver<'_> {
    pub(super) fn annulus(&mut self, file: &DriveFile, pull: Option<&Pull>) -> Result<Annulus, HandbookError> {
        let Some(annulus) = &file.annulus else { return Ok(Annulus::default()) };
        let grouted = annulus.filling.value == Filling::Grouted;
        if !grouted {
            const WHY: &str = "the annulus is not grouted";
            self.refuse("annulus", "grout_density", annulus.grout_density.as_ref(), WHY);
            self.refuse("annulus", "grout_pressure", annulus.grout_pressure.as_ref(), WHY);
            self.refuse("annulus", "grout_sets_in", annulus.grout_sets_in.as_ref(), WHY);
            self.refuse("annulus", "grout_waste", annulus.grout_waste.as_ref(), WHY);
            self.refuse("annulus", "proof", annulus.proof.as_ref(), WHY);
        }
        let row = self.handbook.duration("collapse.load")?;
        let grout = match (&annulus.grout_density, &annulus.grout_pressure) {
            (Some(density), Some(pressure)) => {
                let sets_in = self.given_or(
                    annulus.grout_sets_in.as_ref(),
                    &FieldName("annulus.grout_sets_in"),
                    Role::Duration,
                    row,
                );
                Some(Grout {
                    density: self.positive(density, "annulus.grout_density", Role::Density),
                    pressure: self.not_negative(pressure, "annulus.grout_pressure", Role::Pressure),
                    sets_in: sets_in.value,
                })
            }
            (Some(field), None) => {
                let complaint = Complaint::from("says nothing of the load without the pressure of the grout");
                self.flaw(field, "annulus.grout_density", complaint.advise("add `grout_pressure: 50 kPa`"));
                None
            }
            (None, Some(field)) => {
                let complaint = Complaint::from("says nothing of the load without the density of the grout");
                self.flaw(field, "annulus.grout_pressure", complaint.advise("add `grout_density: 1500 kg/m3`"));
                None
            }
            (None, None) => None,
        };
        if let (Some(field), None) = (&annulus.spacers, pull) {
            self.flaw(field, "annulus.spacers", "are for pipe that is pulled, and no pull is told");
        }
        Ok(Annulus {
            grouted,
            spacer: annulus
                .spacers
                .as_ref()
                .map_or(Length::default(), |field| self.positive(field, "annulus.spacers", Role::Offset)),
            grout,
            grout_waste: annulus.grout_waste.as_ref().map(|field| {
                if !(1.0..=5.0).contains(&field.value.si()) {
                    self.flaw(field, "annulus.grout_waste", "expected a number from 1 to 5");
                }
                field.value
            }),
            proved: annulus.proof.as_ref().is_some_and(|field| field.value == Proof::Proved),
            soil_modulus: annulus
                .soil_modulus
                .as_ref()
                .map(|field| self.positive(field, "annulus.soil_modulus", Role::Modulus)),
        })
    }

    /// Spacers on both sides of the pipe must go into the bore.
    pub(super) fn room_for_spacers(&mut self, file: &DriveFile, pipe: &Pipe) {
        let spacers = file.annulus.as_ref().and_then(|annulus| annulus.spacers.as_ref());
        if let Some(field) = spacers.filter(|_| pipe.pulled.is_some())
            && pipe.outside_diameter.value + 2.0 * field.value > pipe.bore.value
        {
            let message = format!("{} with spacers on both sides does not go into its bore", pipe.label);
            self.flaw(field, "annulus.spacers", message);
        }
    }

    /// A dry bore is above the water everywhere.
    pub(super) fn dry_hole(&mut self, file: &DriveFile, stretches: &[Stretch]) {
        let hole = file.pull.as_ref().and_then(|pull| pull.hole.as_ref());
        if let Some(field) = hole.filter(|field| field.value == Hole::DryAndStable)
            && stretches.iter().any(|stretch| stretch.head > Length::default())
        {
            self.flaw(field, "pull.hole", "groundwater stands over the invert: the bore is not dry");
        }
    }

    pub(super) fn annulus_in_service(&mut self, file: &DriveFile) -> Result<InService, HandbookError> {
        let support = self.handbook.collapse_support()?;
        let deflection = self.handbook.deflection_factor()?;
        let vacuum = file.vacuum.as_ref().map(|vacuum| {
            if file.service.value != Service::PressureMain {
                self.flaw(&vacuum.pressure, "vacuum.pressure", "is for a pressure main");
            }
            if !(vacuum.pressure.value.si() > 0.0 && vacuum.pressure.value.si() <= ATMOSPHERE) {
                let complaint =
                    Complaint::from("expected a pressure below the atmosphere, above zero and to 101.3 kPa");
                self.flaw(&vacuum.pressure, "vacuum.pressure", complaint.advise("write for example \"80 kPa\""));
            }
            let lasts = self.positive(&vacuum.lasts, "vacuum.lasts", Role::Duration);
            (Cited::given(vacuum.pressure.value, &FieldName("vacuum.pressure")), lasts)
        });
        Ok(InService {
            vacuum,
            ovality: self.handbook.ovality()?.value("long_term")?,
            unsupported: support.value("none")?,
            supported: support.value("close_fit")?,
            bedding: deflection.value("bedding_most")?.value,
            lag: (deflection.value("lag")?.value, deflection.value("lag_prism")?.value),
        })
    }
}

/// Standard atmosphere, Pa (exact, CGPM 1954): no vacuum is more.
const ATMOSPHERE: f64 = 101_325.0;
