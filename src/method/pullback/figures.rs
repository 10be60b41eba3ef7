//! Figures of a pullback: strings, weak link, ramp, bore by rule, volumes, and the pipe after the pull.

use super::force::{OnPipe, Pulling, annular, pull_on_pipe};
use super::pulled::strength;
use super::section::Borne;
use super::strength::{Cold, modulus};
use super::{assist, link, site};
use crate::conditions::weight;
use crate::drive::{Drive, HoleState, NotGiven, Pipe, Pull, PulledPipe};
use crate::handbook::{GroundClass, HandbookError};
use crate::law::{Doubted, Law};
use crate::laws::after_pull::{
    DelayedStrain, ExcessLength, InvertAfloat, InvertAtRest, PullStretch, RestrainedCoolingStress, ThermalShortening,
};
use crate::laws::pe::AxialStress;
use crate::laws::pull::{FinalBore, NetWeightInFluid};
use crate::laws::pull_rules::LesserBore;
use crate::laws::ramp::{RampDepth, RampLength};
use crate::laws::reaming::{AnnulusVolume, ReamingFluid, SpoilVolume};
use crate::method::figure::Figures;
use crate::quantity::{Length, MassDensity, Measure, Pressure, Ratio, Role, ThermalExpansion, Volume};
use crate::source::{Cited, Equation, Origin};

/// How many strings there are, and joints between them.
const STRINGS: Equation = Equation::judged(
    "strings of a pull",
    "strings = ceil((length + excess_length) / laydown length), joints = strings - 1",
    "whole strings laid out one after another",
    "laydown length above zero",
);

const WHOLE_STRING: &str = "the pull counts as much outside as is laid out at once, as if the next string had just been joined, and no more than has still to go in";

pub(in crate::method) fn figures(figures: &mut Figures, at: Pulling<'_>) -> Result<(), HandbookError> {
    let Pulling { drive, pipe, pulled: _, pull } = at;
    let on_pipe = figures.calc.doubted(|calc| {
        let mut on_pipe = pull_on_pipe(calc, at);
        on_pipe.raise_after_stops(drive);
        on_pipe
    });
    let borne = strength(&mut figures.calc, at, &on_pipe).borne;
    strings(figures, at)?;
    if let Some(column) = assist::column(&mut figures.calc, at, &borne) {
        figures.put("push at the tail, at most", Role::Thrust, column);
    }
    // What only the maker knows sets no link.
    if pipe.not_given.iter().all(|missing| *missing == NotGiven::EndForce) {
        let setting = link::setting(&mut figures.calc, pull, &borne, borne.beside_bend);
        let (most, peak) = (setting.in_spite_of_doubt().value, on_pipe.in_spite_of_doubt().peak());
        figures.put("weak link, set at most to", Role::Pull, setting);
        figures.note(if most < peak.likely {
            "of the pipe and its head, never of the rig; at this setting the link parts in the likely pull"
        } else if most < peak.high {
            "of the pipe and its head, never of the rig; at this setting the link parts in the high pull"
        } else {
            "of the pipe and its head, never of the rig; the reamer does not load it"
        });
    }
    ramp(figures, pull, &borne);
    bores(figures, drive, pipe)?;
    volumes(figures, at)?;
    after(figures, at, &on_pipe)?;
    lie(figures, at);
    Ok(())
}

fn strings(figures: &mut Figures, at: Pulling<'_>) -> Result<(), HandbookError> {
    let Pulling { drive, pulled, pull, .. } = at;
    if pull.works.rods.is_some() || pull.works.laydown.is_some() {
        let duration = Cited::new(pull.duration, pull.works.duration_basis);
        figures.put("duration of the pull", Role::Duration, Doubted::sure(duration));
    }
    if let Some(laydown) = pull.works.laydown {
        let strings = ((drive.length.value + pull.excess_length) / laydown.length).si().ceil();
        let (strings, joints) = (Ratio::from_si(strings), Ratio::from_si((strings - 1.0).max(0.0)));
        let basis = Origin::Law(&STRINGS);
        figures.put("strings", Role::Count, Doubted::sure(Cited::new(strings, basis)));
        figures.put("joints made during the pull", Role::Count, Doubted::sure(Cited::new(joints, basis)));
        if joints > Ratio::default() {
            figures.note(WHOLE_STRING);
        }
        if let Some(joint_time) = laydown.joint_time {
            figures.put("stop for each joint", Role::Duration, Doubted::sure(joint_time));
        }
    }
    if let (PulledPipe::Pe(_), true) = (pulled, pull.works.laydown.is_some()) {
        let table = drive.handbook.joint_cooling()?;
        let cooling = table.row("under_pressure")?;
        let rest = table.row("before_rough_handling")?.value.time.value;
        let per = cooling.value.per_wall.as_ref().ok_or_else(|| table.lacks("per_wall"))?.value;
        let time = cooling.map(|row| row.time.value * (pulled.wall() / per) + rest);
        figures.put("a butt fusion cools and rests at least", Role::Duration, Doubted::sure(time));
        figures.note("facing, heating and bead removal come on top");
    }
    Ok(())
}

fn ramp(figures: &mut Figures, pull: &Pull, borne: &Borne) {
    let Some(radius) = borne.radius else { return };
    let basis = Origin::Law(&RampLength::EQUATION);
    figures.put("ramp, radius", Role::Distance, radius.map(|radius| Cited::new(radius, basis)));
    figures.add("ramp, length along the drive", Role::Distance, |calc| {
        let radius = calc.take(radius);
        Cited::new(site::ramp(calc, pull, radius), basis)
    });
    figures.note("from the ground down to the invert at the reception pit");
    figures.is_room();
    if let Some(room) = pull.works.ramp_room {
        figures.law("depth that two arcs reach within the room", Role::Depth, |calc| {
            let radius = calc.take(radius);
            RampDepth { length: room.value, radius }
        });
    }
}

/// The final bore by every rule there is, since they disagree; what comes out as planned is not told again.
fn bores(figures: &mut Figures, drive: &Drive, pipe: &Pipe) -> Result<(), HandbookError> {
    let outside_diameter = pipe.widest.value;
    figures.put("final bore, planned", Role::Diameter, Doubted::sure(pipe.bore));
    let planned = pipe.bore.value;
    let differs = |bore: Length| (bore - planned).abs() > planned * 1e-3;
    let table = drive.handbook.bore_rule()?;
    for row in table.iter() {
        let rule = &row.value.value;
        let from = rule.od_from.as_ref().is_none_or(|from| outside_diameter >= from.value);
        let below = rule.od_below.as_ref().is_none_or(|below| outside_diameter < below.value);
        if from && below {
            let label = match row.value.key.as_str() {
                "general" => "final bore, general rule",
                "on_grade" => "final bore, of a sewer on grade",
                "agency_most" => "final bore, an agency's most",
                _ => "final bore, good practice by size",
            };
            let law = FinalBore { outside_diameter, times: rule.times.value, plus: rule.plus.value };
            if differs(law.value()) {
                figures.add(label, Role::Diameter, |calc| Cited::new(calc.law(law), row.origin));
            }
        }
    }
    let lesser = drive.handbook.pull_rule()?.row("lesser_bore")?;
    if let (Some(times), Some(plus)) = (&lesser.value.ratio, &lesser.value.length) {
        let law = LesserBore { outside_diameter, times: times.value, plus: plus.value };
        if differs(law.value()) {
            figures.add("final bore, lesser of two rules", Role::Diameter, |calc| {
                Cited::new(calc.law(law), lesser.origin)
            });
        }
    }
    Ok(())
}

fn volumes(figures: &mut Figures, at: Pulling<'_>) -> Result<(), HandbookError> {
    let Pulling { drive, pipe, pull, .. } = at;
    let (bore, pilot) = (pipe.bore.value, drive.stem.head);
    let (swells, demands) = (drive.handbook.soil_swell()?, drive.handbook.fluid_demand()?);
    let mut spoil = Doubted::sure(Volume::default());
    let mut fluid = [spoil; 2];
    let (mut swell_row, mut demand_row) = (None, None);
    for stretch in &drive.stretches {
        let (soil, demand) = stretch.class.as_spoil();
        let length = stretch.to - stretch.from;
        let swell = swells.row(soil)?;
        let swell_factor = Ratio::from(1.0) + swell.value.value;
        spoil =
            figures.calc.doubted(|calc| calc.take(spoil) + calc.law(SpoilVolume { bore, pilot, length, swell_factor }));
        let demand = demands.row(demand)?;
        let low = demand.value.low.value;
        let high = demand.value.high.as_ref().map_or(low, |high| high.value);
        for (volume, fluid_ratio) in fluid.iter_mut().zip([low, high]) {
            *volume = figures
                .calc
                .doubted(|calc| calc.take(*volume) + calc.law(ReamingFluid { bore, pilot, length, fluid_ratio }));
        }
        swell_row.get_or_insert(swell.origin);
        demand_row.get_or_insert(demand.origin);
    }
    if let Some(origin) = swell_row {
        figures.put("spoil, loose", Role::Volume, spoil.map(|spoil| Cited::new(spoil, origin)));
    }
    // No row tells what rock takes.
    let rock = drive.stretches.iter().any(|stretch| stretch.has(GroundClass::is_rock));
    if let (HoleState::Fluid, Some(origin), false) = (pull.works.hole, demand_row, rock) {
        let [low, high] = fluid.map(|fluid| fluid.map(|fluid| Cited::new(fluid, origin)));
        figures.put("fluid pumped in reaming, at least", Role::FluidVolume, low);
        if high.in_spite_of_doubt().value > low.in_spite_of_doubt().value {
            figures.put("fluid pumped in reaming, high", Role::FluidVolume, high);
        }
    }
    let annulus = AnnulusVolume {
        bore,
        outside_diameter: pipe.outside_diameter.value,
        length: drive.length.value,
        waste: Ratio::from(1.0),
    };
    figures.law("annulus", Role::Volume, |_| annulus);
    if let Some(waste) = drive.annulus.grout_waste {
        figures.law("grout to order", Role::Volume, |_| AnnulusVolume { waste, ..annulus });
    }
    if pull.works.hole == HoleState::Fluid {
        let loss = figures.calc.doubted(|calc| annular(calc, at).high);
        let basis = match pull.works.returns {
            Some(_) => Origin::Law(&crate::laws::reaming::AnnularFlowLoss::EQUATION),
            None => drive.handbook.pressure("pull.annular")?.origin,
        };
        figures.put("pressure that drives the returns", Role::Pressure, loss.map(|loss| Cited::new(loss, basis)));
    }
    Ok(())
}

fn after(figures: &mut Figures, at: Pulling<'_>, on_pipe: &OnPipe) -> Result<(), HandbookError> {
    let Pulling { drive, pipe, pulled, pull } = at;
    let key = match pulled {
        PulledPipe::Pe(_) => Some("pe"),
        PulledPipe::Pvc(_) => Some("pvc"),
        PulledPipe::Steel(_) => Some("steel"),
        PulledPipe::Jointed(_) => None,
    };
    let Some(key) = key else { return Ok(()) };
    let length = drive.length.value + pull.excess_length;
    let (outside_diameter, wall) = (pipe.outside_diameter.value, pulled.wall());
    let ends = on_pipe.map(|on_pipe| (on_pipe.peak().high, on_pipe.at_tail.high));
    let drawn = |figures: &mut Figures, label, modulus| {
        let stretch = figures.calc.doubted(|calc| {
            let ((head_tension, tail_tension), modulus) = (calc.take(ends), calc.take(modulus));
            calc.law(PullStretch { head_tension, tail_tension, length, modulus, outside_diameter, wall })
        });
        let cited = stretch.map(|stretch| Cited::new(stretch, Origin::Law(&PullStretch::EQUATION)));
        figures.put(label, Role::Offset, cited);
        stretch
    };
    let whole = "stretch at the end of the pull, high";
    let mut drawn_back = Doubted::sure(Length::default());
    if let PulledPipe::Pe(pe) = pulled {
        // What springs back at once is told by the shortest time of the table of moduli.
        let at_once = pe.times.at_once.before.0;
        let calc = &mut figures.calc;
        let long = calc.doubted(|calc| modulus(calc, &pe.times.pull, pull, pull.duration, Cold::NotCredited));
        let short = calc.doubted(|calc| modulus(calc, &pe.times.at_once, pull, at_once, Cold::Credited));
        drawn_back = drawn(figures, whole, long);
        let _ = drawn(figures, "of which springs back at once", short);
        let rest = pull.works.rest;
        figures.add("rest before the tie-in, at least", Role::Duration, |_| rest);
        figures.add("still to come back after it", Role::Offset, |calc| {
            let (head, tail) = calc.take(ends);
            let tension = (head + tail) / 2.0;
            let stress = calc.law(AxialStress { tension, outside_diameter, wall });
            let since_start = pull.duration + rest.value;
            let modulus_whole = modulus(calc, &pe.times.whole, pull, since_start, Cold::NotCredited);
            let modulus_rest = modulus(calc, &pe.times.rest, pull, rest.value, Cold::NotCredited);
            let strain = calc.law(DelayedStrain { stress, modulus_whole, modulus_rest });
            Cited::new(length * strain, Origin::Law(&DelayedStrain::EQUATION))
        });
    } else if let PulledPipe::Pvc(pvc) = pulled {
        drawn_back = drawn(figures, whole, Doubted::sure(pvc.modulus));
    } else if let PulledPipe::Steel(steel) = pulled {
        drawn_back = drawn(figures, whole, Doubted::sure(steel.modulus));
    }
    let row = drive.handbook.thermal_expansion()?.row(key)?;
    let expansion: ThermalExpansion = row.value.value;
    let mut cooling = Doubted::sure(Length::default());
    let ground = pull.works.ground_temperature.filter(|_| pull.temperature_told);
    if let Some(ground) = ground {
        let warm = pull.temperature;
        cooling = figures.calc.doubted(|calc| calc.law(ThermalShortening { expansion, length, warm, ground }));
        figures.put("shortening by cooling", Role::Offset, cooling.map(|cooling| Cited::new(cooling, row.origin)));
        let held = match pulled {
            PulledPipe::Pe(pe) => pe.times.long.1,
            PulledPipe::Pvc(pvc) => pvc.modulus,
            PulledPipe::Steel(steel) => steel.modulus,
            PulledPipe::Jointed(_) => Pressure::default(),
        };
        let law = RestrainedCoolingStress { modulus: held, expansion, warm, ground };
        figures.law("stress where it is held while it cools", Role::Strength, |_| law);
    }
    let margin = drive.handbook.ratio("after_pull.margin")?.value;
    figures.law("to leave beyond the pits", Role::Distance, |calc| {
        let (stretch, cooling) = (calc.take(drawn_back), calc.take(cooling).max(Length::default()));
        ExcessLength { stretch, cooling, margin }
    });
    figures.note(if ground.is_some() {
        "stretch and cooling, with a margin"
    } else {
        "stretch, with a margin; cooling comes on top: give pull.pipe_temperature and pull.ground_temperature"
    });
    figures.is_room();
    Ok(())
}

/// Where the pipe comes to lie in the bore.
fn lie(figures: &mut Figures, Pulling { drive, pipe, pulled, .. }: Pulling<'_>) {
    let (bore, outside_diameter, wall) = (pipe.bore.value, pipe.outside_diameter.value, pulled.wall());
    let spacer = drive.annulus.spacer;
    figures.law("invert over the bottom of the bore, at rest", Role::Offset, |_| InvertAtRest { spacer, wall });
    let afloat = InvertAfloat { bore, spacer, outside_diameter, wall };
    figures.law("invert over the bottom of the bore, afloat", Role::Offset, |_| afloat);
    if let Some(grout) = drive.annulus.grout.map(|grout| grout.high) {
        figures.law("weight of the empty pipe in liquid grout (down positive)", Role::LineWeight, |calc| {
            let pipe_weight = weight::of_pulled(calc, pipe, pulled, Ratio::from(1.0));
            let contents_density = MassDensity::default();
            let fluid_density = grout.density;
            NetWeightInFluid { pipe_weight, outside_diameter, wall, fluid_density, contents_density }
        });
    }
}
