//! Pull on the pipe behind the reamer: tail on the ground and over the ramp, net weight in the bore, drag of the fluid.

use crate::conditions::{vertical_stress, weight};
use crate::drive::{BoreState, Drive, Fill, HeavyIron, HoleState, Pipe, Pull, PulledPipe, Stretch};
use crate::handbook::GroundClass;
use crate::law::{Calc, Doubted};
use crate::laws::inside_pressure::EndThrust;
use crate::laws::pull::{
    Capstan, HydrokineticDrag, NetWeightInFluid, PipePull, PipeWeight, PullWithModelFactor, StraightPull,
};
use crate::laws::reaming::{AnnularFlowLoss, ReturnVelocity};
use crate::laws::soil::water_density;
use crate::laws::thrust::FrictionForce;
use crate::method::rest::{Stands, pull_stands};
use crate::method::stage::{TURNS, peak};
use crate::quantity::{Angle, Band, Force, Length, LineLoad, MassDensity, Measure, Pressure, Ratio};

/// A pipe that is pulled, and how.
#[derive(Clone, Copy)]
pub(in crate::method) struct Pulling<'a> {
    pub(in crate::method) drive: &'a Drive,
    pub(in crate::method) pipe: &'a Pipe,
    pub(in crate::method) pulled: &'a PulledPipe,
    pub(in crate::method) pull: &'a Pull,
}

/// What is pulled on a pipe, with the doubt of what it comes from.
pub(super) type OnPipe = Doubted<PullOnPipe>;

/// Pull on the pipe with its head at either end of the bore. What the string resists is linear between; help from
/// behind takes off as much of it as there is.
#[derive(Debug, Clone, Copy)]
pub(in crate::method) struct PullOnPipe {
    /// Resistance as it enters the bore: the whole string, or the first of several, is outside.
    at_entry: Band<Force>,
    /// Advance from which on no more has to go in than is laid out at once, and resistance there: the last string, as long as
    /// any, has just been joined. None where the whole string is laid out.
    last_joined: Option<(Length, Band<Force>)>,
    /// Resistance as it arrives in the launch pit.
    at_arrival: Band<Force>,
    /// What pushes at the tail.
    assist: Option<Force>,
    /// Where the string leaves the ramp, at its greatest.
    pub(super) at_ramp: Band<Force>,
    /// On the tail as it enters the bore last.
    pub(super) at_tail: Band<Force>,
    /// Where it moves again after a stop, at its greatest.
    pub(super) after_stop: Band<Force>,
    /// Thrust of a pressure held inside on the ends of the string: its wall bears it beside the pull, the rig does not.
    pub(super) end_thrust: Force,
    /// Pressure of the fluid in the annulus over that of its column: what drives the returns of the file, else what is
    /// usually reckoned with. Drag is that of the greater.
    pub(super) annular: Band<Pressure>,
    /// The most that fluid presses with, where more comes up through the ground.
    pub(super) comes_up: Option<Pressure>,
}

impl PullOnPipe {
    /// What fluid presses with that would press so hard, if the ground bore it.
    pub(super) fn presses(&self, pressure: Pressure) -> Pressure {
        self.comes_up.map_or(pressure, |most| pressure.min(most))
    }

    /// With the least pressure in the annulus.
    pub(super) fn at_best(self) -> Self {
        Self { annular: Band::same(self.annular.low), ..self }
    }

    pub(in crate::method) fn peak(self) -> Band<Force> {
        let joined = self.last_joined.map_or(Band::default(), |(_, force)| force);
        peak(self.helped(peak(peak(self.at_entry, joined), self.at_arrival)), self.after_stop)
    }

    /// In the wall of the pipe at its greatest: the pull, and what presses on its ends.
    pub(super) fn in_wall(self) -> Band<Force> {
        self.beside_thrust(self.peak())
    }

    /// The same where the string leaves the ramp.
    pub(super) fn in_wall_at_ramp(self) -> Band<Force> {
        self.beside_thrust(self.at_ramp)
    }

    /// The pressure may be let off: the low level is without it.
    fn beside_thrust(self, pull: Band<Force>) -> Band<Force> {
        let Band { low, likely, high } = pull;
        Band { low, likely: likely + self.end_thrust, high: high + self.end_thrust }
    }

    /// Help from behind is counted for the low and the likely pull only, since it can fail, and no further than the
    /// string resists: it does not push the reamer.
    fn helped(self, resistance: Band<Force>) -> Band<Force> {
        let Some(assist) = self.assist else { return resistance };
        let less = |resistance: Force| (resistance - assist).max(Force::default());
        Band { low: less(resistance.low), likely: less(resistance.likely), high: resistance.high }
    }

    /// What pushes at the tail: as far as the string resists, and the whole force where its head stands still.
    pub(super) fn pushed(self, advance: Length, length: Length) -> Option<Band<Force>> {
        let assist = self.assist?;
        let resistance = self.resistance(advance, length);
        Some(Band { low: resistance.low.min(assist), likely: resistance.likely.min(assist), high: assist })
    }

    /// Ends of the straight parts of what the string resists.
    fn ends(self, length: Length) -> [Option<(Length, Band<Force>)>; 3] {
        [Some((Length::default(), self.at_entry)), self.last_joined, Some((length, self.at_arrival))]
    }

    /// Advances where the last string has been joined, and where the string begins or ceases to resist more than what pushes
    /// it.
    pub(super) fn turns(self, length: Length) -> [Option<Length>; TURNS] {
        let mut turns = [None; TURNS];
        let mut free = turns.iter_mut();
        let mut put = |turn: Option<Length>| {
            if let (Some(turn), Some(slot)) = (turn, free.next()) {
                *slot = Some(turn);
            }
        };
        put(self.last_joined.map(|(at, _)| at));
        if let Some(assist) = self.assist {
            let mut before: Option<(Length, Band<Force>)> = None;
            for (to, end) in self.ends(length).into_iter().flatten() {
                if let Some((from, start)) = before {
                    let meets = |start: Force, end: Force| {
                        let share = ((assist - start) / (end - start)).value;
                        (share > 0.0 && share < 1.0).then(|| from + (to - from) * share)
                    };
                    for turn in [meets(start.low, end.low), meets(start.likely, end.likely)] {
                        if turn.is_some() {
                            put(turn);
                        }
                    }
                }
                before = Some((to, end));
            }
        }
        // Those there are first, in their order.
        turns.sort_by(|one, other| match (one, other) {
            (Some(one), Some(other)) => one.si().total_cmp(&other.si()),
            (one, other) => other.is_some().cmp(&one.is_some()),
        });
        turns
    }

    pub(super) fn raise_after_stops(&mut self, drive: &Drive) {
        let (length, restart) = (drive.length.value, drive.rests.of_pipe(&drive.stretches));
        let ends = self.ends(length);
        let mut raise = |stop: Length| {
            self.after_stop = peak(self.after_stop, restart.of(self.at(stop, length)));
            self.at_ramp = peak(self.at_ramp, restart.of(self.at_entry));
        };
        match pull_stands(drive) {
            Stands::At(stops) => stops.iter().copied().for_each(raise),
            Stands::Anywhere => ends.into_iter().flatten().for_each(|(end, _)| raise(end)),
            Stands::Each(day) => raise(day),
            Stands::Never => {}
        }
    }

    pub(super) fn at(self, advance: Length, length: Length) -> Band<Force> {
        self.helped(self.resistance(advance, length))
    }

    fn resistance(self, advance: Length, length: Length) -> Band<Force> {
        let (from, to) = match self.last_joined {
            Some(joined) if advance < joined.0 => ((Length::default(), self.at_entry), joined),
            Some(joined) => (joined, (length, self.at_arrival)),
            None => ((Length::default(), self.at_entry), (length, self.at_arrival)),
        };
        let way = to.0 - from.0;
        let share = if way.si() > 0.0 { ((advance - from.0) / way).value } else { 0.0 };
        from.1.with(to.1, |from, to| from + (to - from) * share)
    }
}

/// What may fill the string: what the file says; else air, and in metal pipe air or water, whichever is worse.
pub(super) fn fills(pulled: &PulledPipe, pull: &Pull) -> [Fill; 2] {
    let air = Fill::Of(MassDensity::default());
    match pull.works.fill {
        Some(fill) => [fill; 2],
        None if pulled.is_plastic() => [air; 2],
        None => [air, Fill::Of(water_density())],
    }
}

/// Weight per length with the nominal wall and the lining, which an iron pipe has beyond its least wall.
fn with_lining(calc: &mut Calc, pipe: &Pipe, pulled: &PulledPipe, iron: HeavyIron) -> LineLoad {
    let average_wall = Ratio::from_si(1.0);
    let outside_diameter = pipe.outside_diameter.value;
    let barrel = PipeWeight { outside_diameter, wall: iron.wall, density: pulled.density(), average_wall };
    let inside = outside_diameter - 2.0 * iron.wall;
    let lining = PipeWeight { outside_diameter: inside, wall: iron.lining, density: iron.density, average_wall };
    calc.law(barrel) + calc.law(lining)
}

/// The longest string that hangs outside while this much has still to go in.
fn outside(pull: &Pull, left: Length) -> Length {
    pull.works.laydown.map_or(left, |laydown| left.min(laydown.length))
}

pub(super) fn pull_on_pipe(calc: &mut Calc, at: Pulling<'_>) -> PullOnPipe {
    let Pulling { drive, pipe, pulled, pull } = at;
    let outside_diameter = pipe.outside_diameter.value;
    let wall = pulled.wall();
    let length = drive.length.value;
    let fills = fills(pulled, pull);
    // The string on the ground weighs its average wall, and what fills it; in fluid the minimum wall floats harder.
    let one = Ratio::from_si(1.0);
    let iron = pulled.heavy_iron();
    let heavy = match iron {
        Some(iron) => with_lining(calc, pipe, pulled, iron),
        None => weight::of_pulled(calc, pipe, pulled, if pulled.is_plastic() { pull.average_wall } else { one }),
    };
    let least = weight::of_pulled(calc, pipe, pulled, one);
    // Iron may float by its least wall, and full of water it sinks by all that it has.
    let afloat = || [least, heavy].into_iter().take(if iron.is_some() { 2 } else { 1 });
    let net = |calc: &mut Calc, pipe_weight, fluid_density, contents_density| {
        calc.law(NetWeightInFluid { pipe_weight, outside_diameter, wall, fluid_density, contents_density })
    };
    // Slurry stands no higher in the string than in the bore.
    let carried = fills.map(|fill| if let Fill::Of(density) = fill { density } else { MassDensity::default() });
    let [one_fill, other_fill] = carried;
    // The tail is longest as the pipe enters, and drags over the two bends of the ramp; from a pit there is none. What fills
    // a string runs down its ramp: outside it is empty, as the standards of such pulls have it.
    let in_pit = pull.works.laydown.is_some_and(|laydown| laydown.in_pit);
    let full = net(calc, heavy, MassDensity::default(), one_fill.max(other_fill));
    let on_ground = if in_pit { full } else { net(calc, heavy, MassDensity::default(), MassDensity::default()) };
    let tail = |calc: &mut Calc, length: Length| {
        let friction = pull.friction_outside;
        let dragged = calc.law(StraightPull { friction, net_weight: on_ground, length, rise: Angle::default() });
        let angle = if in_pit { Angle::default() } else { 2.0 * pull.ramp };
        calc.law(Capstan { tension: dragged, friction, angle })
    };
    let longest_tail = tail(calc, outside(pull, length + pull.excess_length));
    let last_tail = tail(calc, outside(pull, pull.excess_length));

    // The pipe travels from the reception pit to the launch pit, against the sense of the grade. A slope that helps is
    // counted at the low level alone: it rests on the bore being full, or empty, all along.
    let rise = -drive.grade.value;
    let inside = |calc: &mut Calc, friction: Ratio, fluids: [MassDensity; 2], helps: bool| {
        let mut greatest = Force::default();
        for fluid in fluids {
            for (fill, weight) in fills.into_iter().flat_map(|fill| afloat().map(move |weight| (fill, weight))) {
                let net_weight = match (pull.works.hole, fill) {
                    (HoleState::Dry, _) => full,
                    (HoleState::Fluid, Fill::Of(density)) => net(calc, weight, fluid, density),
                    (HoleState::Fluid, Fill::Slurry) => net(calc, weight, fluid, fluid),
                };
                let on_slope = StraightPull { friction, net_weight, length, rise };
                greatest = greatest.max(calc.law(on_slope));
                if !helps && (net_weight * rise.sin()).value < 0.0 {
                    greatest = greatest.max(calc.law(StraightPull { rise: Angle::default(), ..on_slope }));
                }
            }
        }
        greatest
    };
    let fluids = [pull.fluids.light, pull.fluids.heavy];
    let taken = Band { low: ([pull.fluids.clean; 2], true), ..Band::same((fluids, false)) };
    let each = pull.friction_inside.zip(taken);
    let inside = calc.levels(each, |calc, (friction, (fluids, helps))| inside(calc, friction, fluids, helps));
    let rubs = in_open_bore(calc, at);
    let annular = match pull.works.hole {
        HoleState::Fluid => annular(calc, at),
        HoleState::Dry => Band::default(),
    };
    let (drag_at_entry, drag) = drag(calc, at, annular.with(pull.annular_pressure, Pressure::max));
    // With the head so far in the bore: by weight and fluid, and by what clings in a bore that stands.
    let resisted = |calc: &mut Calc, tail: Force, drag: Band<Force>, share: f64| {
        let by_weight = inside.map(|inside| inside * share).zip(drag);
        let by_weight = calc.levels(by_weight, |calc, (inside, drag)| calc.law(PipePull { tail, inside, drag }));
        let drag = Force::default();
        let clings = rubs.map(|rubs| rubs.map(|rubs| rubs * share));
        let clings = clings.map(|rubs| calc.levels(rubs, |calc, inside| calc.law(PipePull { tail, inside, drag })));
        (by_weight, clings)
    };
    let factored = |calc: &mut Calc, pull_on: Force, factor| calc.law(PullWithModelFactor { pull: pull_on, factor });
    // The band of what clings is its own, and no less than twice the likely pull either.
    let with_factor = |calc: &mut Calc, (band, clings): (Band<Force>, Option<Band<Force>>)| {
        let (most, least) = (pull.model_factor, pull.likely_factor);
        let high = factored(calc, band.high, most).max(factored(calc, band.likely, least));
        let by_weight = Band { high, ..band };
        clings.map_or(by_weight, |clings| {
            let high = clings.high.max(factored(calc, clings.likely, least));
            peak(by_weight, Band { high, ..clings })
        })
    };
    let at_entry = resisted(calc, longest_tail, drag_at_entry, 0.0);
    let at_arrival = resisted(calc, last_tail, drag, 1.0);
    // No string is longer than what has still to go in: from here on what hangs outside is less than is laid out at once.
    let shortens = length + pull.excess_length - outside(pull, length + pull.excess_length);
    let last_joined = (shortens > Length::default() && shortens < length).then(|| {
        let share = (shortens / length).value;
        let drag = drag_at_entry.with(drag, |entry, arrival| entry + (arrival - entry) * share);
        let joined = resisted(calc, longest_tail, drag, share);
        (shortens, with_factor(calc, joined))
    });
    let ramp = if in_pit { Force::default() } else { longest_tail };
    let pressure = pull.works.inside_pressure;
    let end_thrust = if pressure > Pressure::default() {
        calc.law(EndThrust { pressure, outside_diameter, wall })
    } else {
        Force::default()
    };
    PullOnPipe {
        end_thrust,
        at_entry: with_factor(calc, at_entry),
        last_joined,
        at_arrival: with_factor(calc, at_arrival),
        assist: pull.push_assist.map(|assist| assist.force.value),
        at_ramp: with_factor(calc, (Band::same(ramp), None)),
        at_tail: with_factor(calc, (Band::same(last_tail), None)),
        after_stop: Band::default(),
        annular,
        comes_up: comes_up(calc, at),
    }
}

/// What a pipe rubs with in a bore that the stem was drawn out of, with the clay that clings to it.
fn in_open_bore(calc: &mut Calc, at: Pulling<'_>) -> Option<Band<Force>> {
    let Pulling { drive, pipe, pull, .. } = at;
    if pull.winch.is_none() || pull.works.hole != HoleState::Dry {
        return None;
    }
    let mut rubs = Band::<Force>::default();
    for (stretch, open) in drive.stretches.iter().zip(&pipe.open) {
        // Where it may not stand nothing is decided, and the force is that of a bore that does.
        let stands = open.safe.filter(|(state, _)| *state == BoreState::Stands);
        let Some((_, friction)) = stands.or(open.best).or(open.safe) else { continue };
        let (length, outside_diameter) = (stretch.to - stretch.from, pipe.outside_diameter.value);
        let law = |unit_friction| FrictionForce { unit_friction, outside_diameter, length };
        let own = calc.levels(friction, |calc, friction| calc.law(law(friction)));
        rubs = rubs.with(own, |so_far, own| so_far + own);
    }
    Some(rubs)
}

/// What surely lifts the ground over the deepest place of the bore. Rock bears more, and under a stream, or what nobody tells,
/// water stands over the ground too.
fn comes_up(calc: &mut Calc, at: Pulling<'_>) -> Option<Pressure> {
    let Pulling { drive, pipe, .. } = at;
    let surface = &drive.site.surface;
    let lifts = |stretch: &Stretch| !stretch.has(|class| class.is_rock() || class == GroundClass::Unknown);
    if !surface.is_told || surface.stream || !drive.stretches.iter().all(lifts) {
        return None;
    }
    let crown = pipe.outside_diameter.value / 2.0 + pipe.bore.value / 2.0;
    let cap = drive.site.break_out.cap_firm_clay.value;
    let over = |stretch: &Stretch| vertical_stress(calc, stretch.heavy(), stretch.way.deepest - crown).total * cap;
    drive.stretches.iter().map(over).reduce(Pressure::max)
}

/// Drag of the fluid with the head at either end of the bore: by the pressure in the annulus, or on the outside area.
fn drag(calc: &mut Calc, at: Pulling<'_>, annular: Band<Pressure>) -> (Band<Force>, Band<Force>) {
    let Pulling { drive, pipe, pull, .. } = at;
    let outside_diameter = pipe.outside_diameter.value;
    match (pull.works.hole, pull.works.unit_drag) {
        (HoleState::Dry, _) => (Band::default(), Band::default()),
        (HoleState::Fluid, Some(unit_friction)) => {
            let length = drive.length.value;
            let drag = calc.law(FrictionForce { unit_friction, outside_diameter, length });
            (Band::default(), Band::same(drag))
        }
        (HoleState::Fluid, None) => {
            let bore = pipe.bore.value;
            let drag =
                calc.levels(annular, |calc, pressure| calc.law(HydrokineticDrag { pressure, bore, outside_diameter }));
            (drag, drag)
        }
    }
}

/// Pressure lost by the returns along the whole annulus, or the pressure that the drag is reckoned with.
pub(super) fn annular(calc: &mut Calc, at: Pulling<'_>) -> Band<Pressure> {
    let Pulling { drive, pipe, pull, .. } = at;
    let Some(returns) = pull.works.returns else { return pull.annular_pressure };
    let (bore, outside_diameter) = (pipe.bore.value, pipe.outside_diameter.value);
    let pull_rate = drive.length.value / pull.duration;
    let velocity = calc.law(ReturnVelocity { flow: returns.flow, pull_rate, bore, outside_diameter });
    Band::same(calc.law(AnnularFlowLoss {
        plastic_viscosity: returns.plastic_viscosity,
        velocity,
        yield_point: returns.yield_point,
        bore,
        outside_diameter,
        length: drive.length.value,
    }))
}
