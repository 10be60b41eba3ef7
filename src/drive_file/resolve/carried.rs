//! What a pressure main may carry: by its maker, or by the stress that its wall is allowed over its life.

use super::label::same_size;
use super::pe::{bracket, rising};
use super::{Resolved, Resolver};
use crate::drive::{Carries, Concern, FactorPoints, MainWall, Pipe, PulledPipe};
use crate::drive_file::{CandidateFile, Material, PullFile};
use crate::handbook::{Family, HandbookError, Service, TemperatureFactorRow};
use crate::law::Law;
use crate::laws::inside_pressure::NetIronWall;
use crate::quantity::{Length, Pressure, Ratio, Role, ThermodynamicTemperature};
use crate::source::{Cited, Origin};

impl Resolver<'_> {
    /// Fills in what each pipe of a pressure main may carry. `listed` are the pipes of the file and those proposed.
    pub(super) fn carried(&mut self, listed: &[CandidateFile], pipes: &mut [Pipe]) -> Resolved<()> {
        // With a faulty candidate the two lists do not go together, and there is no drive anyway.
        if self.file.service.value != Service::PressureMain || pipes.len() < listed.len() {
            return Ok(());
        }
        for (index, (candidate, pipe)) in listed.iter().zip(pipes).enumerate() {
            let path = format!("candidates[{index}]");
            let carries = self.about(Concern::Pipe(index), |it| it.carries(&path, candidate, pipe))?;
            pipe.carries = Some(Box::new(carries));
        }
        Ok(())
    }

    fn carries(&mut self, path: &str, candidate: &CandidateFile, pipe: &Pipe) -> Resolved<Carries> {
        let class = CandidateFile::pressure_class.cited(path, candidate);
        let joint = CandidateFile::joint_pressure.cited(path, candidate);
        let with_surge = self.with_surge(pipe.family)?;
        let score = self.given(PullFile::score).unwrap_or_default();
        let allowed = self.handbook.after_pull()?.value("score_allowed")?.value;
        let deep_score = if score > allowed { score } else { Ratio::default() };
        let of = |wall, temperature| Carries { class, wall, joint, temperature, deep_score, with_surge };
        let wall = pipe.pulled.as_ref().map(PulledPipe::wall).or_else(|| pipe.pushed_wall());
        let Some((wall, stress)) = wall.zip(self.main_stress(candidate, pipe)?) else { return Ok(of(None, None)) };
        let held = MainWall { stress, wall, on_outside: true };
        let (held, temperature) = match pipe.family {
            Family::Steel => (held, None),
            Family::DuctileIron => (self.iron_main(path, candidate, held)?, None),
            family => (MainWall { on_outside: false, ..held }, Some(self.class_temperature(family)?)),
        };
        self.assume_one(format!("{path}: hoop stress of the main over its life"), held.stress, Role::Strength);
        Ok(of(Some(held), temperature))
    }

    /// What a main carries with a recurring and with an occasional surge, over its class.
    fn with_surge(&self, family: Family) -> Resolved<[Ratio; 2]> {
        let of = |key| Ok(self.handbook.ratio(key)?.value);
        Ok(match family {
            Family::Pe => [of("surge.pe_recurring")?, of("surge.pe_occasional")?],
            Family::Pvc | Family::PvcFused | Family::PvcRestrained => [Ratio::from(1.0), of("surge.pvc_occasional")?],
            Family::Steel => [of("surge.steel")?; 2],
            _ => [Ratio::from(1.0); 2],
        })
    }

    /// What counts of the wall of iron, and its stress. A metric size goes by EN 545: its least wall, at a third of the
    /// tensile strength. One in inches goes by AWWA C150: what casting and service leave, at half of the yield. A wall that
    /// the file gives is a nominal one.
    fn iron_main(&mut self, path: &str, candidate: &CandidateFile, held: MainWall) -> Resolved<MainWall> {
        let size = candidate.size.value;
        let metric = self.handbook.iron_pipe()?.find(|row| same_size(row.size.value, size)).is_some();
        let told = [&candidate.wall, &candidate.outside_diameter, &candidate.inside_diameter];
        let held = if metric {
            let safety = self.handbook.ratio("main.iron_safety")?;
            let tensile = self.handbook.ductile_iron()?.value("en_545_tensile")?.value;
            MainWall { stress: safety.map(|safety| tensile / safety), on_outside: false, ..held }
        } else {
            held
        };
        if metric && told.iter().all(|field| field.is_none()) {
            return Ok(held);
        }
        let service = if metric { Length::default() } else { self.handbook.length("main.iron_service")?.value };
        let casting = self.handbook.length("iron.wall_allowance")?.value;
        let casting_share = self.handbook.ratio("iron.wall_by_size")?.value;
        let net = NetIronWall { wall: held.wall, size, service, casting, casting_share };
        let net = Cited::new(net.value().max(Length::default()), Origin::Law(&NetIronWall::EQUATION));
        self.assume_one(format!("{path}: net wall of the main"), net, Role::Wall);
        Ok(MainWall { wall: net.value, ..held })
    }

    /// Stress over the life of a main; `None` where only the maker of the pipe knows it.
    fn main_stress(&self, candidate: &CandidateFile, pipe: &Pipe) -> Resolved<Option<Cited<Pressure>>> {
        let plastic = |key| self.handbook.main_stress()?.value(key).map(Some);
        let share = |key, strength: Pressure| Ok(Some(self.handbook.ratio(key)?.map(|share| share * strength)));
        match candidate.material.value {
            of @ (Material::Pe100 | Material::Pe80 | Material::Pe4710 | Material::Hdpe | Material::Mdpe) => {
                plastic(of.key())
            }
            Material::Pvc | Material::PvcFused | Material::PvcRestrained => plastic("pvc"),
            Material::DuctileIron => {
                share("main.iron_share", self.handbook.ductile_iron()?.value("en_545_proof")?.value)
            }
            Material::Steel => match pipe.yield_strength() {
                Some(strength) => share("main.steel_share", strength),
                None => Ok(None),
            },
            Material::Clay | Material::Concrete | Material::Grp | Material::PolymerConcrete | Material::FibreCement => {
                Ok(None)
            }
        }
    }

    /// Temperature that a plastic main is at, and the rows of its class around it; that of its class where the file does
    /// not tell that of the ground.
    fn class_temperature(&mut self, family: Family) -> Resolved<FactorPoints> {
        let of = |row: &TemperatureFactorRow| (row.at.value, row.factor.value);
        let rows: Vec<(ThermodynamicTemperature, Ratio)> = if family == Family::Pe {
            let table = self.handbook.pe_temperature()?;
            let rows = table.rows.iter().map(|row| &row.value);
            rising(rows.filter(|row| row.set.value.0 == "pressure_iso").map(of))
        } else {
            rising(self.handbook.pvc_temperature()?.rows.iter().map(|row| of(&row.value)))
        };
        let no_row = || HandbookError::NoRow { table: "pe_temperature", wanted: "pressure_iso".to_owned() };
        let first = rows.first().ok_or_else(no_row)?.0;
        let told = self.given(PullFile::ground_temperature);
        let at = told.filter(|told| *told > first).unwrap_or(first);
        if told.is_none() {
            let first = self.handbook.main_stress()?.value("pe100")?.map(|_| first);
            self.assume_one("temperature of the main in service", first, Role::Temperature);
        }
        let (below, above) = bracket(&rows, at).ok_or_else(no_row)?;
        Ok(FactorPoints { at, below, above })
    }
}
