//! A drive made in code (invented): the same checks as for a file, then the choice.
use jackpull::drive_file::*;
use jackpull::handbook::{GroundClass, Lubrication, Service};
use jackpull::quantity::{celsius, hours, inches, kilonewtons, metres, millimetres, number, percent};
use jackpull::yaml::Words;
use jackpull::{Handbook, choose};
use std::io::{Write, stdout};

pub(crate) fn main() -> Result<(), Box<dyn std::error::Error>> {
    let stretch = StretchFile {
        spt_n: Some(number(10.0).into()),
        largest_stone: Some(millimetres(0.0).into()),
        ..StretchFile::new(GroundClass::FirmToVeryStiffClay)
    };
    let clay = CandidateFile {
        certificate: Some(Certificate::En295.into()),
        ..CandidateFile::new(Material::Clay, inches(10.0))
    };
    let pe =
        CandidateFile { sdr: Some(number(11.0).into()), ..CandidateFile::new(Material::Pe100, millimetres(280.0)) };
    let (pit, water) = (PitFile::at(metres(3.8)), WaterTable::At(metres(6.0)));
    let drive = DriveFile {
        name: Some(Words("Tannery Row (invented)".to_owned()).into()),
        grade: Some(percent(0.5).into()),
        lubrication: Some(Lubrication::Metered.into()),
        rig: Some(RigFile {
            thrust: Some(kilonewtons(800.0).into()),
            pull: Some(kilonewtons(450.0).into()),
            ..RigFile::new()
        }),
        surface: Some(SurfaceFile { over: Some(Over::Road.into()), ..SurfaceFile::new() }),
        pull: Some(PullFile {
            duration: Some(hours(5.0).into()),
            pipe_temperature: Some(celsius(20.0).into()),
            ..PullFile::new()
        }),
        candidates: vec![clay, pe],
        ..DriveFile::new(Service::GravitySewer, metres(55.0), pit, water, vec![stretch])
    }
    .resolve(&Handbook::embedded())?;

    writeln!(stdout().lock(), "{}", choose(&drive)?.reason)?;
    Ok(())
}
