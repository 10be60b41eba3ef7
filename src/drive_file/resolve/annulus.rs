//! What becomes of the annulus, and what the pipe has to bear in service.

use super::Resolver;
use crate::drive::{Annulus, AssumedValue, Concern, Ends, Grout, InService, Pipe, Pull, Stretch, Vacuum};
use crate::drive_file::{AnnulusFile, DriveFile, Filling, Hole, Proof, VacuumFile};
use crate::handbook::{HandbookError, Service};
use crate::laws::soil::water_density;
use crate::quantity::{MassDensity, Pressure, Role, Shown, Time};
use crate::source::Cited;

impl Resolver<'_> {
    pub(super) fn annulus(&mut self, file: &DriveFile, pull: Option<&Pull>) -> Result<Annulus, HandbookError> {
        let Some(annulus) = &file.annulus else { return Ok(Annulus::default()) };
        let grouted = annulus.filling.value == Filling::Grouted;
        if !grouted {
            const WHY: &str = "the annulus is not grouted";
            self.wrong("annulus", annulus, AnnulusFile::grout_density, WHY);
            self.wrong("annulus", annulus, AnnulusFile::grout_pressure, WHY);
            self.wrong("annulus", annulus, AnnulusFile::grout_sets_in, WHY);
            self.wrong("annulus", annulus, AnnulusFile::grout_waste, WHY);
            self.wrong("annulus", annulus, AnnulusFile::proof, WHY);
        }
        let row = self.handbook.duration("collapse.load")?;
        let grout = self.both(
            "annulus",
            annulus,
            AnnulusFile::grout_density,
            AnnulusFile::grout_pressure,
            [
                ("says nothing of the load without the pressure of the grout", "add `grout_pressure: 50 kPa`"),
                ("says nothing of the load without the density of the grout", "add `grout_density: 1500 kg/m3`"),
            ],
        );
        let grout_told = grout.is_some();
        let grout = match grout {
            Some((density, pressure)) => {
                let sets_in = self.or_row("annulus", Some(annulus), AnnulusFile::grout_sets_in, row).value;
                Some(Ends::same(Grout { density, pressure, sets_in }))
            }
            None if grouted => Some(self.any_grout(annulus)?),
            None => None,
        };
        if pull.is_none() {
            self.wrong("annulus", annulus, AnnulusFile::spacers, "are for pipe that is pulled, and no pull is told");
        }
        Ok(Annulus {
            open: !grouted,
            grouted,
            spacer: self.number("annulus", annulus, AnnulusFile::spacers).unwrap_or_default(),
            grout,
            grout_told,
            grout_waste: self.number("annulus", annulus, AnnulusFile::grout_waste),
            proved: annulus.proof.as_ref().is_some_and(|field| field.value == Proof::Proved),
            soil_modulus: self.number("annulus", annulus, AnnulusFile::soil_modulus),
        })
    }

    /// Grout of which the file tells neither density nor pressure.
    fn any_grout(&mut self, annulus: &AnnulusFile) -> Result<Ends<Grout>, HandbookError> {
        let density = |key| Ok::<_, HandbookError>(self.handbook.ratio(key)?.map(|gravity| water_density() * gravity));
        let density = Ends { low: density("grout.gravity_least")?, high: density("grout.gravity")? };
        let pressure = |key| self.handbook.pressure(key);
        let pressure = Ends { low: pressure("grout.pressure_least")?, high: pressure("grout.pressure")? };
        let sets_in = self.grout_sets_in(annulus)?;
        self.about(Concern::Pull, |it| {
            let one = density.high.origin;
            let density = density.map(|density| Shown::of(density.value, Role::Density));
            let pressed = pressure.map(|pressure| Shown::of(pressure.value, Role::Pressure));
            let other = pressure.high.origin;
            it.assume("annulus.grout_density", AssumedValue::Range(density.low, density.high), one);
            it.assume("annulus.grout_pressure", AssumedValue::Range(pressed.low, pressed.high), other);
        });
        let of = |density: Cited<MassDensity>, pressure: Cited<Pressure>, sets_in| Grout {
            density: density.value,
            pressure: pressure.value,
            sets_in,
        };
        Ok(Ends {
            low: of(density.low, pressure.low, sets_in.low),
            high: of(density.high, pressure.high, sets_in.high),
        })
    }

    /// How long grout stays liquid of which nothing else is told.
    pub(super) fn grout_sets_in(&self, annulus: &AnnulusFile) -> Result<Ends<Time>, HandbookError> {
        Ok(match &annulus.grout_sets_in {
            Some(told) => Ends::same(told.value),
            None => Ends {
                low: self.handbook.duration("grout.sets_least")?.value,
                high: self.handbook.duration("grout.sets")?.value,
            },
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
            && stretches.iter().any(|stretch| stretch.way.is_wet())
        {
            self.flaw(field, "pull.hole", "groundwater stands over the invert: the bore is not dry");
        }
    }

    /// How long a vacuum in a main lasts.
    pub(super) fn vacuum_lasts(&self, file: &DriveFile) -> Result<Cited<Time>, HandbookError> {
        let row = self.handbook.duration("main.vacuum")?;
        Ok(file
            .vacuum
            .as_ref()
            .map_or(row, |vacuum| Cited::given(vacuum.lasts.value, VacuumFile::lasts.spec.name("vacuum"))))
    }

    pub(super) fn annulus_in_service(&mut self, file: &DriveFile) -> Result<InService, HandbookError> {
        let support = self.handbook.collapse_support()?;
        let deflection = self.handbook.deflection_factor()?;
        let main = file.service.value == Service::PressureMain;
        let vacuum = match &file.vacuum {
            Some(vacuum) => {
                if !main {
                    self.flaw(&vacuum.pressure, "vacuum.pressure", "is for a pressure main");
                }
                let pressure = Ends::same(self.number("vacuum", vacuum, VacuumFile::pressure));
                Some(Vacuum { pressure, lasts: self.number("vacuum", vacuum, VacuumFile::lasts) })
            }
            None if main => {
                let (pressure, lasts) = (self.handbook.pressure("main.vacuum")?, self.vacuum_lasts(file)?);
                self.assume_one_of_pull("vacuum.pressure", pressure, Role::Pressure);
                self.assume_one_of_pull("vacuum.lasts", lasts, Role::Duration);
                let pressure = Ends { low: Pressure::default(), high: pressure.value };
                Some(Vacuum { pressure, lasts: lasts.value })
            }
            None => None,
        };
        Ok(InService {
            pressure: self.take("", file, DriveFile::service_pressure),
            vacuum,
            collapse_factor: self.handbook.ratio("collapse.safety")?,
            ovality: self.handbook.ovality()?.value("long_term")?,
            unsupported: support.value("none")?,
            supported: support.value("close_fit")?,
            in_soil: (support.value("buckling_shallow")?.value, support.value("buckling_deep")?.value),
            bedding: deflection.value("bedding_most")?.value,
            lag: (deflection.value("lag")?.value, deflection.value("lag_prism")?.value),
        })
    }
}
