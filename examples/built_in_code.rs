//! A drive made in code (invented): the same checks as for a file, then the choice.
use jackpull::drive_file::*;
use jackpull::handbook::{GroundClass, Lubrication, Service};
use jackpull::quantity::{Force, FromText, Length, Ratio, ThermodynamicTemperature, Time};
use jackpull::{Handbook, choose};
use std::io::{Write, stdout};

pub(crate) fn main() -> Result<(), Box<dyn std::error::Error>> {
    let pull = PullFile::for_duration(Time::from_text("5 h")?, ThermodynamicTemperature::from_text("20 degC")?);
    let drive = DriveFile::at(Site {
        service: Service::GravitySewer,
        length: Length::from_text("55 m")?,
        launch_invert_depth: Length::from_text("3.8 m")?,
        line: LineEnd::Grade(Ratio::from_text("0.5 %")?),
        groundwater: Some(Length::from_text("6 m")?),
        lubrication: Lubrication::Metered,
        rig_thrust: Force::from_text("800 kN")?,
        rig_pull: Force::from_text("450 kN")?,
    })
    .named("Tannery Row (invented)")
    .under(Over::Road)
    .through(StretchFile {
        spt_n: Some(Ratio::from_text("10")?.into()),
        largest_stone: Some(Length::from_text("0 mm")?.into()),
        ..StretchFile::new(GroundClass::FirmToVeryStiffClay)
    })
    .candidate(CandidateFile {
        certificate: Some(Certificate::En295.into()),
        ..CandidateFile::new(Material::Clay, Length::from_text("10 in")?)
    })
    .candidate(CandidateFile {
        sdr: Some(Ratio::from_text("11")?.into()),
        ..CandidateFile::new(Material::Pe100, Length::from_text("280 mm")?)
    })
    .pulled(pull)
    .resolve(&Handbook::embedded())?;

    writeln!(stdout().lock(), "{}", choose(&drive)?.reason)?;
    Ok(())
}
