//! What surrounds the bore: surface, crossed services, cover, settlement, open face.

use super::line::Line;
use super::{Resolved, Resolver};
use crate::drive::{
    AssumedValue, BreakOutRule, Carrier, Clearing, Concern, Cover, Crossing, Ends, FaceRule, Movement, Pit, Stretch,
    Surface, Surroundings, Trough,
};
use crate::drive_file::{
    CarrierFile, ClearingFile, CrossingFile, DriveFile, LoadCode, Over, PitFile, SurfaceFile, Traffic,
};
use crate::handbook::{GroundClass, Service, Spoil, TechniqueRow};
use crate::quantity::{Band, Length, Measure, Pressure, Ratio, Role, Time};
use crate::source::{Cited, FieldName, Origin};
use crate::yaml::MayBe;

/// Most services on one drive.
const MOST_CROSSINGS: usize = 200;
/// Depths of the invert within which a service feels the next ground too: half the width of a usual trough, and no boring
/// tells the end of a ground closer. Our judgement.
const NEAR: f64 = 0.5;
/// What is crossed and is no service.
const LIES_OVER: [&str; 12] = [
    "railway", "railroad", "tracks", "runway", "taxiway", "motorway", "highway", "river", "creek", "stream", "canal",
    "road",
];

impl Resolver<'_> {
    pub(super) fn site(
        &mut self,
        line: &Line,
        stretches: &[Stretch],
        technique: &TechniqueRow,
        shift: Cited<Time>,
    ) -> Resolved<Surroundings> {
        let length = stretches.last().map_or(Length::default(), |stretch| stretch.to);
        let water = |stretch: Option<&Stretch>| stretch.and_then(|stretch| stretch.way.table);
        let file = self.file;
        let mut pit = |pit: Option<&PitFile>, path: &str, at, stretch: Option<&Stretch>| {
            let invert = line.invert(at);
            let area = pit.and_then(|pit| PitFile::area.cited(path, pit));
            let space = pit.and_then(|pit| pit.space.as_ref());
            let found = Pit { area, ..self.pit_space(space, &format!("{path}.space"), invert, water(stretch)) };
            let treated = stretch.and_then(|stretch| stretch.treatment);
            pit.map_or(found, |pit| self.against_water((pit, path), treated, found))
        };
        let launch = pit(Some(&file.launch), "launch", Length::default(), stretches.first());
        let reception = pit(file.reception.as_ref(), "reception", length, stretches.last());
        Ok(Surroundings {
            gravity: self.gravity()?,
            surface: self.surface()?,
            crossings: self.crossings(line, stretches, length)?,
            crossings_are_told: self.file.crossings.is_some(),
            movement: Movement::read(self.handbook, self.troughs(stretches)?, &technique.overcut.value.0)?,
            break_out: BreakOutRule::read(self.handbook)?,
            cover: self.cover(line, stretches)?,
            face: self.face_rule(technique.spoil.value)?,
            launch,
            reception,
            pit_rules: self.pit_rules(technique)?,
            plug: self.cited(DriveFile::plug),
            carrier: self.carrier(line)?,
            clearing: self.clearing(stretches)?,
            pace: self.pace(stretches, technique, [&launch, &reception], shift)?,
        })
    }

    /// How spoil is carried away, loosened as the soils of the drive are in the mean.
    fn clearing(&mut self, stretches: &[Stretch]) -> Resolved<Option<Clearing>> {
        let Some(clearing) = self.file.clearing.as_ref() else { return Ok(None) };
        let swells = self.handbook.soil_swell()?;
        let (mut loose, mut length, mut origin) = (Length::default(), Length::default(), None);
        for stretch in stretches {
            let (soil, _) = stretch.class.as_spoil();
            let swell = swells.row(soil)?;
            let long = stretch.to - stretch.from;
            (loose, length) = (loose + long * (1.0 + swell.value.value.si()), length + long);
            origin.get_or_insert(swell.origin);
        }
        let Some(origin) = origin else { return Ok(None) };
        Ok(Some(Clearing {
            tank: ClearingFile::tank.cited("", clearing),
            water: clearing.water.given().unwrap_or_default(),
            emptying: self.cited(ClearingFile::emptying),
            loosened: Cited::new(loose / length, origin),
        }))
    }

    /// What is laid in a casing afterwards, and what rules about casings ask for round it.
    fn carrier(&mut self, line: &Line) -> Resolved<Option<Carrier>> {
        let Some(carrier) = self.file.carrier.as_ref() else { return Ok(None) };
        let outside_diameter = CarrierFile::outside_diameter.cited("", carrier);
        let is_small = outside_diameter.value < self.handbook.length("carrier.small")?.value;
        let spare = if is_small { "carrier.spare_small" } else { "carrier.spare" };
        let casing = line.grade.value.tan();
        let own_slope = if carrier.service.value == Service::GravitySewer {
            // No steeper than that of a sewer as wide inside as it is outside.
            let least = self.least_slope(outside_diameter.value)?.value;
            Some(match &carrier.grade {
                Some(told) => ((told.value - casing).abs(), false),
                None => ((least - casing.abs()).max(Ratio::default()), least > casing.abs()),
            })
        } else {
            None
        };
        Ok(Some(Carrier { outside_diameter, own_slope, spare: self.handbook.length(spare)? }))
    }

    fn surface(&mut self) -> Resolved<Surface> {
        let told = self.given(SurfaceFile::over);
        let over = told.unwrap_or(Over::Open);
        let traffic = self.file.traffic.given();
        if let (Some(over), Some(traffic)) = (told, traffic) {
            let fits = Traffic::of(over);
            // A road may run beside a stream.
            if traffic != fits && over != Over::Stream {
                let complaint = format!("is {}, but traffic is {}", over.key(), traffic.key());
                // A load that is told is not talked away.
                let under = [Over::Railway, Over::Runway].into_iter().find(|under| Traffic::of(*under) == traffic);
                let advice = match under {
                    Some(under) => format!("write `over: {}`", under.key()),
                    None => format!("leave out `traffic`, or write `traffic: {}`", fits.key()),
                };
                self.wrong(SurfaceFile::over, (complaint, advice));
            }
        }
        let settlement = self.cited(SurfaceFile::allowed_settlement);
        let slope = self.cited(SurfaceFile::allowed_slope);
        // Nothing told of what lies over it: a road may.
        let is_told = told.is_some() || traffic.is_some_and(|told| told != Traffic::None);
        let runs = match self.driven_over().high {
            Traffic::None if !is_told => Traffic::Highway,
            runs => runs,
        };
        let is_railway = runs == Traffic::Railway;
        let usual = match runs {
            Traffic::Railway | Traffic::Aircraft => Some(["settlement.rail_least", "settlement.rail_most"]),
            Traffic::Highway => Some(["settlement.road_least", "settlement.road_most"]),
            Traffic::None => None,
        };
        Ok(Surface {
            uncased: self.field(SurfaceFile::railway_permits).is_some(),
            is_told,
            by_load_model: self.load_code() == LoadCode::En1991,
            road: is_told && matches!(runs, Traffic::Highway | Traffic::Aircraft),
            railway: is_railway,
            stream: over == Over::Stream,
            guarded: matches!(runs, Traffic::Railway | Traffic::Aircraft) || over == Over::Stream,
            is_limited: settlement.is_some() || slope.is_some(),
            settlement: match usual {
                Some(keys) => {
                    Some(self.limit(("surface.allowed_settlement", Role::Settlement), settlement, self.lengths(keys)?))
                }
                None => settlement.map(Ends::same),
            },
            // A pavement follows a trough; a track does not.
            slope: if is_railway {
                Some(self.limit(("surface.allowed_slope", Role::Slope), slope, self.slopes()?))
            } else {
                slope.map(Ends::same)
            },
        })
    }

    /// A limit that the file tells, or what is usual at both ends, the least of which is listed as assumed.
    fn limit<Q: Measure>(
        &mut self,
        (path, role): (&str, Role),
        told: Option<Cited<Q>>,
        usual: Ends<Cited<Q>>,
    ) -> Ends<Cited<Q>> {
        if let Some(told) = told {
            return Ends::same(told);
        }
        self.assume_one(path, usual.low, role);
        usual
    }

    fn slopes(&self) -> Resolved<Ends<Cited<Ratio>>> {
        Ends::read(["settlement.slope_least", "settlement.slope_most"], |key| self.handbook.ratio(key))
    }

    fn lengths(&self, keys: [&'static str; 2]) -> Resolved<Ends<Cited<Length>>> {
        Ends::read(keys, |key| self.handbook.length(key))
    }

    fn crossings(&mut self, line: &Line, stretches: &[Stretch], length: Length) -> Resolved<Vec<Crossing>> {
        let told = self.file.crossings.as_deref().unwrap_or_default();
        if let Some(one_too_many) = told.get(MOST_CROSSINGS) {
            let path = format!("crossings[{MOST_CROSSINGS}]");
            self.flaw(&one_too_many.at, &path, format!("more than {MOST_CROSSINGS} crossed services"));
            return Ok(Vec::new());
        }
        let mut crossings = Vec::new();
        for (index, crossing) in told.iter().enumerate() {
            let path = format!("crossings[{index}]");
            let at = crossing.at.value;
            if at > length {
                self.flaw_of_length(&crossing.at, &format!("{path}.at"), "lies beyond the drive");
            }
            let depth = crossing.depth.value;
            let beside = crossing.beside.given().unwrap_or_default();
            let settlement = CrossingFile::allowed_settlement.cited(&path, crossing);
            let slopes = self.slopes()?;
            let slope = CrossingFile::allowed_slope.cited(&path, crossing);
            let clearance = CrossingFile::clearance.cited(&path, crossing);
            let name = crossing.kind.as_ref().map_or_else(|| "service".to_owned(), |kind| kind.value.0.clone());
            if let Some(kind) = &crossing.kind
                && LIES_OVER.iter().any(|word| name.trim().eq_ignore_ascii_case(word))
            {
                let why = ("is no service: it lies over the bore", "see surface.over, which tells what it asks for");
                self.flaw(kind, &format!("{path}.kind"), why);
            }
            let invert = line.invert(at);
            let reach = NEAR * invert;
            let first = stretches.iter().position(|stretch| at - reach <= stretch.to).unwrap_or_default();
            let last = stretches.iter().rposition(|stretch| at + reach >= stretch.from).unwrap_or(first);
            let stretches = [first, last];
            let is_limited = settlement.is_some() || slope.is_some();
            let usual = self.lengths(if is_called(&name, &BENDS) {
                ["settlement.flexible_least", "settlement.flexible_most"]
            } else {
                ["settlement.service_least", "settlement.service_most"]
            })?;
            let settlement = self.limit((&format!("{path}.allowed_settlement"), Role::Settlement), settlement, usual);
            let slope = self.limit((&format!("{path}.allowed_slope"), Role::Slope), slope, slopes);
            crossings.push(Crossing {
                is_limited,
                gas: is_called(&name, &["gas"]),
                name,
                at,
                depth,
                beside,
                invert,
                stretches,
                settlement,
                slope,
                clearance,
            });
        }
        Ok(crossings)
    }

    fn troughs(&self, stretches: &[Stretch]) -> Resolved<Vec<Option<Trough>>> {
        stretches.iter().map(|stretch| self.trough(stretch)).collect()
    }

    /// Width of the trough and closure of the annulus by ground; both ends of a mixed face.
    fn trough(&self, stretch: &Stretch) -> Resolved<Option<Trough>> {
        let widths = self.handbook.trough_width()?;
        let wet = stretch.way.is_wet();
        let keys = |class: GroundClass| -> &'static [&'static str] {
            match class {
                GroundClass::SoftClay => &["soft_clay"],
                GroundClass::FirmToVeryStiffClay | GroundClass::HardClay => &["clay_observed"],
                _ if class.is_granular() && !wet => &["sand_above_water"],
                // Silt is no sand that stands steeper where it is dry.
                GroundClass::LooseSand | GroundClass::MediumToDenseSand | GroundClass::Gravel | GroundClass::Silt => {
                    &["sands_and_gravels"]
                }
                // Fill may be any of them.
                GroundClass::Fill if wet => &["soft_clay", "clay_observed", "sands_and_gravels"],
                GroundClass::Fill => &["soft_clay", "clay_observed", "sands_and_gravels", "sand_above_water"],
                GroundClass::WeakRock | GroundClass::HardRock | GroundClass::Peat | GroundClass::Unknown => &[],
            }
        };
        let closure = self.handbook.annulus_closure()?;
        let bound = closure.cell("bound", |row| &row.value)?;
        let mut trough: Option<Trough> = None;
        // Rock in a face does not move: the trough is that of the soil.
        let classes =
            || [Some(stretch.class), stretch.mixed_with].into_iter().flatten().filter(|class| !class.is_rock());
        if classes().next().is_none() || classes().any(|class| keys(class).is_empty()) {
            return Ok(None);
        }
        for key in classes().flat_map(keys).copied() {
            let (least, most) = widths.span(key)?;
            let clay = key == "soft_clay" || key == "clay_observed";
            let closed = closure.span(if clay { "clay" } else { "sand" })?;
            let one = Trough {
                ratio: (least, most.value),
                closed: (closed.0, closed.1.value, bound.value),
                of_any_soil: classes().any(|class| class == GroundClass::Fill),
                origin: most.origin,
            };
            trough = Some(trough.map_or(one, |other| Trough {
                ratio: (one.ratio.0.min(other.ratio.0), one.ratio.1.max(other.ratio.1)),
                closed: (one.closed.0.min(other.closed.0), one.closed.1.max(other.closed.1), bound.value),
                ..one
            }));
        }
        Ok(trough)
    }

    fn cover(&mut self, line: &Line, stretches: &[Stretch]) -> Resolved<Cover> {
        let loose = stretches.iter().any(|stretch| stretch.has(|class| class == GroundClass::LooseSand));
        // Where the bed lies nobody tells without `depths`.
        let is_bed = |stretch: &&Stretch| self.file.depths.is_empty() || stretch.is_shallowest(line.shallowest());
        let bed_is_rock = stretches.iter().filter(is_bed).all(|stretch| stretch.is_all(GroundClass::is_rock));
        Cover::read(self.handbook, line.shallowest(), loose, bed_is_rock, !self.file.depths.is_empty())
    }

    fn face_rule(&mut self, spoil: Spoil) -> Resolved<FaceRule> {
        let road = self.handbook.pressure("surcharge.road")?;
        let loads = |traffic| if traffic == Traffic::None { Pressure::default() } else { road.value };
        let surcharge = self.driven_over().map(loads);
        if spoil != Spoil::Slurry && surcharge.high > Pressure::default() {
            self.about(Concern::Jacking, |it| {
                it.assume_one("load on the surface over the face", road, Role::UnitFriction)
            });
        }
        let held = self.file.face_pressure.as_ref().map(|held| Ends { low: held.low.value, high: held.high.value });
        FaceRule::read(self.handbook, surcharge, spoil, held)
    }

    /// Says what settlement and clear distance rest on, where the file asks for either.
    pub(super) fn assume_site(&mut self, site: &Surroundings) {
        let asked = site.surface.settlement.is_some() || site.surface.slope.is_some() || !site.crossings.is_empty();
        if !asked {
            return;
        }
        let losses = &site.movement.face_loss;
        let is_clay = self.file.ground.iter().any(|stretch| stretch.class.value.is_clay());
        let cases = [
            ("settlement: ground lost at the face", losses.usual, true),
            ("settlement: ground lost at a face in clay of a low stability number", losses.firm, is_clay),
            (
                "settlement: ground lost at an open shield where it ravels",
                losses.ravelling,
                site.face.entered.is_some(),
            ),
        ];
        for (what, loss, _) in cases.into_iter().filter(|case| case.2) {
            let Ends { low, high } = loss.value;
            self.assume_band(what, Band { low, likely: (low + high) / 2.0, high }, Role::Percent, loss.origin);
        }
        for (index, trough) in site.movement.troughs.iter().enumerate() {
            let Some(trough) = trough else { continue };
            let (low, high) = trough.ratio;
            let band = AssumedValue::band(Band { low, likely: (low + high) / 2.0, high }, Role::Ratio);
            let path = format!("ground[{index}]");
            self.assume_alike(&path, "width of the trough over depth", band, trough.origin);
            let (low, likely, high) = trough.closed;
            let band = AssumedValue::band(Band { low, likely, high }, Role::Percent);
            self.assume_alike(&path, "share of the annulus that closes", band, trough_origin(self));
        }
    }
}

/// Words for a service that bends with the ground: of plastic, of welded steel, a cable. What is not known breaks.
const BENDS: [&str; 14] = [
    "plastic",
    "pe",
    "hdpe",
    "pvc",
    "polyethylene",
    "steel",
    "cable",
    "cables",
    "electric",
    "power",
    "telecom",
    "fibre",
    "fiber",
    "duct",
];

/// Whether a name has one of the words.
fn is_called(name: &str, words: &[&str]) -> bool {
    name.to_lowercase().split(|letter: char| !letter.is_alphanumeric()).any(|word| words.contains(&word))
}

/// Row of the bound on closure.
fn trough_origin(resolver: &Resolver<'_>) -> Origin {
    let bound = resolver.handbook.annulus_closure().ok().and_then(|table| table.get("bound").map(|row| row.origin));
    bound.unwrap_or(Origin::File(&FieldName("surface")))
}
