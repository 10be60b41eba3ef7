//! A drive made in code: the same values as in a file, through the same checks.

use super::{
    CandidateFile, DriveFile, OrNone, Over, PitFile, PullFile, RigFile, StemFile, StretchFile, SurfaceFile, WaterTable,
};
use crate::handbook::{Lubrication, Service};
use crate::quantity::{Force, Length, Ratio, ThermodynamicTemperature, Time, Velocity};
use crate::yaml::{self, Fault, MayBe, Words};

/// What every drive needs, by name so that no two lengths can be swapped unseen.
#[derive(Debug, Clone, Copy)]
pub struct Site {
    /// What the pipe carries.
    pub service: Service,
    /// From pit wall to pit wall.
    pub length: Length,
    /// Depth of the pipe invert below ground at the launch pit.
    pub launch_invert_depth: Length,
    /// The other end of the line.
    pub line: LineEnd,
    /// Depth of the water table below ground; `None` for no groundwater.
    pub groundwater: Option<Length>,
    /// Lubrication of a jacked pipe.
    pub lubrication: Lubrication,
    /// Greatest thrust of the rig.
    pub rig_thrust: Force,
    /// Greatest pull of the rig.
    pub rig_pull: Force,
}

/// What fixes the line beyond the depth at the launch pit.
#[derive(Debug, Clone, Copy)]
pub enum LineEnd {
    /// Invert depth at the reception pit; the ground between is taken as level.
    InvertDepth(Length),
    /// Rise from launch to reception over the length; the ground between is taken as level.
    Grade(Ratio),
    /// Both, for a ground surface that is not level.
    DepthAndGrade(Length, Ratio),
}

impl DriveFile {
    /// A drive at this site, still without ground and pipes.
    ///
    /// ```
    /// use jackpull::drive_file::{CandidateFile, DriveFile, LineEnd, Material, Over, Site, StretchFile};
    /// use jackpull::handbook::{GroundClass, Lubrication, Service};
    /// use jackpull::quantity::{Force, FromText, Length, Ratio};
    /// use jackpull::{Handbook, choose};
    ///
    /// let drive = DriveFile::at(Site {
    ///     service: Service::GravitySewer,
    ///     length: Length::from_text("30 m")?,
    ///     launch_invert_depth: Length::from_text("4.2 m")?,
    ///     line: LineEnd::Grade(Ratio::from_text("1 %")?),
    ///     groundwater: None,
    ///     lubrication: Lubrication::Metered,
    ///     rig_thrust: Force::from_text("900 kN")?,
    ///     rig_pull: Force::from_text("500 kN")?,
    /// })
    /// .under(Over::Road)
    /// .through(StretchFile {
    ///     spt_n: Some(Ratio::from_text("12")?.into()),
    ///     largest_stone: Some(Length::from_text("0 mm")?.into()),
    ///     ..StretchFile::new(GroundClass::FirmToVeryStiffClay)
    /// })
    /// .candidate(CandidateFile::new(Material::Clay, Length::from_text("10 in")?))
    /// .resolve(&Handbook::embedded())?;
    /// assert!(choose(&drive)?.chosen().is_some());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn at(site: Site) -> Self {
        let (depth, grade) = match site.line {
            LineEnd::InvertDepth(depth) => (Some(depth), None),
            LineEnd::Grade(grade) => (None, Some(grade)),
            LineEnd::DepthAndGrade(depth, grade) => (Some(depth), Some(grade)),
        };
        let groundwater = site.groundwater.map_or(WaterTable::None, WaterTable::At);
        let rig = RigFile { thrust: Some(site.rig_thrust.into()), pull: Some(site.rig_pull.into()), ..RigFile::new() };
        Self {
            lubrication: Some(site.lubrication.into()),
            reception: depth.map(PitFile::at),
            grade: grade.map(Into::into),
            rig: Some(rig),
            ..Self::new(site.service, site.length, PitFile::at(site.launch_invert_depth), groundwater, Vec::new())
        }
    }

    /// With a name for the report.
    #[must_use]
    pub fn named(self, name: &str) -> Self {
        Self { name: Some(Words(name.to_owned()).into()), ..self }
    }

    /// With what lies over the bore, without which nothing is decided.
    #[must_use]
    pub fn under(mut self, over: Over) -> Self {
        let surface = self.surface.take().unwrap_or_else(SurfaceFile::new);
        Self { surface: Some(SurfaceFile { over: Some(over.into()), ..surface }), ..self }
    }

    /// With one more stretch of ground, after those before.
    #[must_use]
    pub fn through(mut self, stretch: StretchFile) -> Self {
        self.ground.push(stretch);
        self
    }

    /// With one more pipe to choose from.
    #[must_use]
    pub fn candidate(mut self, pipe: CandidateFile) -> Self {
        self.candidates.push(pipe);
        self
    }

    /// With how a pipe is pulled.
    #[must_use]
    pub fn pulled(self, pull: PullFile) -> Self {
        Self { pull: Some(pull), ..self }
    }

    /// As the text of a drive file, in SI base units, which reads back as the same drive bit by bit.
    ///
    /// # Errors
    /// If a value is not finite or a text has control characters, so that no file can hold it. The fault has no place.
    pub fn to_yaml(&self) -> Result<String, Fault> {
        let whole = |complaint: &str| Fault { path: String::new(), complaint: complaint.into(), place: None };
        let text = yaml::write(self)?;
        // Places are those of a text that the caller never sees.
        let unread = |faults: Vec<Fault>| match faults.into_iter().next() {
            Some(fault) => Fault { place: None, ..fault },
            None => whole("cannot be read back"),
        };
        let again: Self = yaml::read(&text).map_err(unread)?;
        if yaml::write(&again)? == text { Ok(text) } else { Err(whole("is not the same when it is read back")) }
    }
}

impl StemFile {
    /// A stem of this outside diameter, nothing else known; `None` for a bore without one.
    #[must_use]
    pub fn of(outside_diameter: Option<Length>) -> Self {
        Self::new(outside_diameter.map_or(OrNone::None, OrNone::Some))
    }
}

impl PullFile {
    /// Temperature of the wall of the pipe, where it is told.
    pub(crate) fn temperature(&self) -> Option<ThermodynamicTemperature> {
        self.pipe_temperature.given()
    }

    /// A pull of this duration, stops included.
    #[must_use]
    pub fn for_duration(duration: Time, pipe_temperature: ThermodynamicTemperature) -> Self {
        Self { duration: Some(duration.into()), pipe_temperature: Some(pipe_temperature.into()), ..Self::new() }
    }

    /// A pull at this mean rate, stops included.
    #[must_use]
    pub fn at_rate(rate: Velocity, pipe_temperature: ThermodynamicTemperature) -> Self {
        Self { rate: Some(rate.into()), pipe_temperature: Some(pipe_temperature.into()), ..Self::new() }
    }
}
