//! What becomes of the annulus, and what the pipe has to bear in service.

use super::{Resolved, Resolver};
use crate::drive::{Annulus, AssumedValue, Concern, Ends, Grout, InService, Lubricant, Pipe, Stretch, Vacuum};
use crate::drive_file::{AnnulusFile, Ballast, DriveFile, Filling, Hole, Proof, PullFile, SurgeFile, VacuumFile};
use crate::handbook::{HandbookError, Lubrication, Service};
use crate::laws::soil::{water_density, water_unit_weight};
use crate::quantity::{MassDensity, Measure, Pressure, Role, Shown, Time, UnitWeight};
use crate::source::Cited;
use crate::yaml::MayBe;

/// No soil weighs more, in N/m3: our judgement.
const HEAVIEST: f64 = 23e3;

impl Resolver<'_> {
    pub(super) fn annulus(&mut self) -> Resolved<Annulus> {
        let Some(annulus) = &self.file.annulus else { return Ok(Annulus::default()) };
        let filling = annulus.filling.given();
        let grouted = filling == Some(Filling::Grouted);
        let row = self.handbook.duration("collapse.load")?;
        let told = annulus.grout_density.given().zip(annulus.grout_pressure.given());
        let grout = match told {
            Some((density, pressure)) => {
                let sets_in = self.or_row(AnnulusFile::grout_sets_in, row).value;
                Some(Ends::same(Grout { density, pressure, sets_in }))
            }
            None if grouted => Some(self.any_grout(annulus)?),
            None => None,
        };
        Ok(Annulus {
            open: filling == Some(Filling::Open),
            grouted,
            spacer: annulus.spacers.given().unwrap_or_default(),
            grout,
            grout_told: told.is_some(),
            ballast: if annulus.ballast.given() == Some(Ballast::Water) {
                water_density()
            } else {
                MassDensity::default()
            },
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
    pub(super) fn lubricant(&mut self) -> Resolved<Option<Lubricant>> {
        if self.file.lubrication.is_some() && self.file.lubricated() == Lubrication::None {
            return Ok(None);
        }
        Ok(Some(Lubricant {
            told: self.cited(DriveFile::lubricant_pressure),
            likely: self.handbook.pressure("lubricant.likely")?.value,
            most: self.handbook.pressure("bore.lubricant")?,
            density: self.handbook.ratio("pull.fluid_clean")?.value * water_density(),
            stands: self.handbook.duration("lubricant.stands")?.value,
        }))
    }

    /// Its pressure lies between that of the water and what the ground bears; one that is not told is listed.
    pub(super) fn check_lubricant(&mut self, lubricant: &Lubricant, pipes: &[Pipe], stretches: &[Stretch]) {
        let Some(told) = lubricant.told else {
            let presses = |pipe: &Pipe| pipe.ring.as_ref().is_some_and(|ring| ring.jacked.is_some());
            if self.file.lubrication.is_some() && pipes.iter().any(presses) {
                let over = AssumedValue::range(lubricant.likely, lubricant.most.value, Role::Pressure);
                self.assume("lubricant_pressure, over that of the ground water", over, lubricant.most.origin);
            }
            return;
        };
        let water = stretches.iter().map(|stretch| water_unit_weight() * stretch.way.head());
        let water = water.fold(Pressure::default(), Pressure::max);
        let strength = |stretch: &Stretch| stretch.earth.strength.map_or(Pressure::default(), |one| one.ends.high);
        let borne = |stretch: &Stretch| UnitWeight::from_si(HEAVIEST) * stretch.way.shallowest + strength(stretch);
        let borne = stretches.iter().map(borne).reduce(Pressure::min);
        let shown = |pressure| Shown::of(pressure, Role::Pressure).display(self.system);
        if told.value < water {
            let why = format!("is less than the {} of the ground water", shown(water));
            self.wrong(DriveFile::lubricant_pressure, (why, "what fills the annulus presses harder"));
        } else if let Some(borne) = borne.filter(|borne| told.value > *borne) {
            let why = format!("is more than the {} that the ground over the pipe bears", shown(borne));
            self.wrong(DriveFile::lubricant_pressure, (why, "it breaks out at the surface"));
        }
    }

    /// Spacers on both sides of the pipe must go into the bore.
    pub(super) fn room_for_spacers(&mut self, pipe: &Pipe) {
        let spacers = self.given(AnnulusFile::spacers).filter(|_| pipe.pulled.is_some());
        if spacers.is_some_and(|spacer| pipe.outside_diameter.value + 2.0 * spacer > pipe.bore.value) {
            let message = format!("{} with spacers on both sides does not go into its bore", pipe.label);
            self.wrong(AnnulusFile::spacers, message);
        }
    }

    /// A dry bore is above the water everywhere.
    pub(super) fn dry_hole(&mut self, stretches: &[Stretch]) {
        let is_dry = self.given(PullFile::hole) == Some(Hole::DryAndStable);
        if is_dry && stretches.iter().any(|stretch| stretch.way.is_wet()) {
            self.wrong(PullFile::hole, "groundwater stands over the invert: the bore is not dry");
        }
    }

    /// How long a vacuum in a main lasts.
    pub(super) fn vacuum_lasts(&self) -> Resolved<Cited<Time>> {
        let row = self.handbook.duration("main.vacuum")?;
        Ok(self.file.vacuum.as_ref().map_or(row, |vacuum| VacuumFile::lasts.cited("vacuum", vacuum)))
    }

    pub(super) fn annulus_in_service(&mut self) -> Resolved<InService> {
        let main = self.file.service.value == Service::PressureMain;
        let vacuum = match &self.file.vacuum {
            Some(vacuum) => Some(Vacuum { pressure: Ends::same(vacuum.pressure.value), lasts: vacuum.lasts.value }),
            None if main => {
                let (pressure, lasts) = (self.handbook.pressure("main.vacuum")?, self.vacuum_lasts()?);
                self.assume_one_of_pull("vacuum.pressure", pressure, Role::Pressure);
                self.assume_one_of_pull("vacuum.lasts", lasts, Role::Duration);
                let pressure = Ends { low: Pressure::default(), high: pressure.value };
                Some(Vacuum { pressure, lasts: lasts.value })
            }
            None => None,
        };
        let surges = [self.given(SurgeFile::recurring), self.given(SurgeFile::occasional)];
        InService::read(self.handbook, self.cited(DriveFile::service_pressure), surges, vacuum)
    }
}
