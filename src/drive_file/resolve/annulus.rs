//! What becomes of the annulus, and what the pipe has to bear in service.

use super::{Resolved, Resolver};
use crate::drive::{Annulus, AssumedValue, Concern, Ends, Grout, InService, Lubricant, Pipe, Pull, Stretch, Vacuum};
use crate::drive_file::{AnnulusFile, DriveFile, Filling, Hole, Proof, VacuumFile};
use crate::handbook::{HandbookError, Lubrication, Service};
use crate::laws::soil::water_density;
use crate::quantity::{Pressure, Role, Time};
use crate::source::Cited;
use crate::yaml::{Complaint, MayBe};

impl Resolver<'_> {
    pub(super) fn annulus(&mut self, pull: Option<&Pull>) -> Resolved<Annulus> {
        let Some(annulus) = &self.file.annulus else { return Ok(Annulus::default()) };
        let filling = annulus.filling.given();
        let grouted = filling == Some(Filling::Grouted);
        if !grouted {
            let why = match filling {
                Some(_) => Complaint::from("the annulus is not grouted"),
                None => ("says nothing of an annulus that nobody says is grouted", "add `filling: grouted`").into(),
            };
            self.wrong("annulus", annulus, AnnulusFile::grout_density, why.clone());
            self.wrong("annulus", annulus, AnnulusFile::grout_pressure, why.clone());
            self.wrong("annulus", annulus, AnnulusFile::grout_sets_in, why.clone());
            self.wrong("annulus", annulus, AnnulusFile::grout_waste, why.clone());
            self.wrong("annulus", annulus, AnnulusFile::proof, why);
        }
        let row = self.handbook.duration("collapse.load")?;
        let grout = self.both(
            "annulus",
            annulus,
            (
                AnnulusFile::grout_density,
                "says nothing of the load without the pressure of the grout",
                "add `grout_pressure: 50 kPa`",
            ),
            (
                AnnulusFile::grout_pressure,
                "says nothing of the load without the density of the grout",
                "add `grout_density: 1500 kg/m3`",
            ),
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
            self.wrong("annulus", annulus, AnnulusFile::spacers, "are for pipe that is pulled, and no pull is given");
        }
        Ok(Annulus {
            open: filling == Some(Filling::Open),
            grouted,
            spacer: annulus.spacers.given().unwrap_or_default(),
            grout,
            grout_told,
            grout_waste: annulus.grout_waste.given(),
            proved: annulus.proof.given() == Some(Proof::Proved),
            soil_modulus: annulus.soil_modulus.given(),
        })
    }

    /// Grout of which the file tells neither density nor pressure.
    fn any_grout(&mut self, annulus: &AnnulusFile) -> Resolved<Ends<Grout>> {
        let density = |key| Ok::<_, HandbookError>(self.handbook.ratio(key)?.map(|gravity| water_density() * gravity));
        let density = Ends::read(["grout.gravity_least", "grout.gravity"], density)?;
        let pressure = |key| self.handbook.pressure(key);
        let pressure = Ends::read(["grout.pressure_least", "grout.pressure"], pressure)?;
        let sets_in = self.grout_sets_in(annulus)?;
        let concern = if self.file.pull.is_some() { Concern::Pull } else { Concern::Jacking };
        self.about(concern, |it| {
            let density_range = AssumedValue::range(density.low.value, density.high.value, Role::Density);
            it.assume("annulus.grout_density", density_range, density.high.origin);
            let pressed = AssumedValue::range(pressure.low.value, pressure.high.value, Role::Pressure);
            it.assume("annulus.grout_pressure", pressed, pressure.high.origin);
        });
        Ok(density
            .with(pressure, |density, pressure| (density.value, pressure.value))
            .with(sets_in, |(density, pressure), sets_in| Grout { density, pressure, sets_in }))
    }

    /// How long grout stays liquid of which nothing else is told.
    pub(super) fn grout_sets_in(&self, annulus: &AnnulusFile) -> Resolved<Ends<Time>> {
        Ok(match &annulus.grout_sets_in {
            Some(told) => Ends::same(told.value),
            None => Ends::values(["grout.sets_least", "grout.sets"], |key| self.handbook.duration(key))?,
        })
    }

    /// What the lubricant of a pipe that is pushed presses with; none where the file says that there is none.
    pub(super) fn lubricant(&mut self, pipes: &[Pipe]) -> Resolved<Option<Lubricant>> {
        let file = self.file;
        let is_told = file.lubrication.is_some();
        if file.lubricated() == Lubrication::None {
            let why = if is_told {
                Complaint::from("the pipe is not lubricated")
            } else {
                ("says nothing where nobody says how the pipe is lubricated", "add `lubrication: metered`").into()
            };
            self.wrong("", file, DriveFile::lubricant_pressure, why);
            if is_told {
                return Ok(None);
            }
        }
        let told = self.take("", file, DriveFile::lubricant_pressure);
        let [likely, most] = ["lubricant.likely", "lubricant.most"].map(|row| self.handbook.pressure(row));
        let (likely, most) = (likely?, most?);
        let presses = |pipe: &Pipe| pipe.ring.as_ref().is_some_and(|ring| ring.jacked.is_some());
        if told.is_none() && is_told && pipes.iter().any(presses) {
            let over = AssumedValue::range(likely.value, most.value, Role::Pressure);
            self.assume("lubricant_pressure, over that of the ground water", over, most.origin);
        }
        let density = self.handbook.ratio("pull.fluid_clean")?.value * water_density();
        let stands = self.handbook.duration("lubricant.stands")?.value;
        Ok(Some(Lubricant { told, over_water: (likely.value, most.value), density, stands }))
    }

    /// Spacers on both sides of the pipe must go into the bore.
    pub(super) fn room_for_spacers(&mut self, pipe: &Pipe) {
        let spacers = self.file.annulus.as_ref().and_then(|annulus| annulus.spacers.as_ref());
        if let Some(field) = spacers.filter(|_| pipe.pulled.is_some())
            && pipe.outside_diameter.value + 2.0 * field.value > pipe.bore.value
        {
            let message = format!("{} with spacers on both sides does not go into its bore", pipe.label);
            self.flaw(field, "annulus.spacers", message);
        }
    }

    /// A dry bore is above the water everywhere.
    pub(super) fn dry_hole(&mut self, stretches: &[Stretch]) {
        let hole = self.file.pull.as_ref().and_then(|pull| pull.hole.as_ref());
        if let Some(field) = hole.filter(|field| field.value == Hole::DryAndStable)
            && stretches.iter().any(|stretch| stretch.way.is_wet())
        {
            self.flaw(field, "pull.hole", "groundwater stands over the invert: the bore is not dry");
        }
    }

    /// How long a vacuum in a main lasts.
    pub(super) fn vacuum_lasts(&self) -> Resolved<Cited<Time>> {
        let row = self.handbook.duration("main.vacuum")?;
        Ok(self
            .file
            .vacuum
            .as_ref()
            .map_or(row, |vacuum| Cited::given(vacuum.lasts.value, VacuumFile::lasts.spec.name("vacuum"))))
    }

    pub(super) fn annulus_in_service(&mut self) -> Resolved<InService> {
        let support = self.handbook.collapse_support()?;
        let deflection = self.handbook.deflection_factor()?;
        let main = self.file.service.value == Service::PressureMain;
        let vacuum = match &self.file.vacuum {
            Some(vacuum) => {
                if !main {
                    self.flaw(&vacuum.pressure, "vacuum.pressure", "is for a pressure main");
                }
                let pressure = Ends::same(vacuum.pressure.value);
                Some(Vacuum { pressure, lasts: vacuum.lasts.value })
            }
            None if main => {
                let (pressure, lasts) = (self.handbook.pressure("main.vacuum")?, self.vacuum_lasts()?);
                self.assume_one_of_pull("vacuum.pressure", pressure, Role::Pressure);
                self.assume_one_of_pull("vacuum.lasts", lasts, Role::Duration);
                let pressure = Ends { low: Pressure::default(), high: pressure.value };
                Some(Vacuum { pressure, lasts: lasts.value })
            }
            None => None,
        };
        Ok(InService {
            pressure: self.take("", self.file, DriveFile::service_pressure),
            surge: self
                .file
                .surge
                .as_ref()
                .map_or([None; 2], |surge| [surge.recurring.given(), surge.occasional.given()]),
            vacuum,
            collapse_factor: self.handbook.ratio("collapse.safety")?,
            ovality: self.handbook.ovality()?.value("long_term")?,
            ovality_at_first: self.handbook.ratio("collapse.ovality")?.value,
            unsupported: support.value("none")?,
            supported: support.value("close_fit")?,
            in_soil: (support.value("buckling_shallow")?.value, support.value("buckling_deep")?.value),
            bedding: deflection.value("bedding_most")?.value,
            lag: (deflection.value("lag")?.value, deflection.value("lag_prism")?.value),
        })
    }
}
