//! What a stem meets in a drilled bore that stands round it: it rests on the bottom, and nothing lies on it but what was
//! left there.

use crate::law::laws;
use crate::quantity::{Force, Length, LineLoad, Pressure, Ratio, UnitWeight};
use core::f64::consts::PI;

laws! {
    /// Friction of a body that slides on the bottom of a bore that stands, per length: `f = mu m w`.
    ///
    /// The multiplier stands for the waves of the line that a stiff body does not follow.
    SlidingOnBottom "friction on the bottom of the bore" {
        /// Friction coefficient.
        friction "mu": Ratio as Ratio [>= 0.0],
        /// Contact force over the weight.
        multiplier "m": Ratio as Ratio [>= 1.0],
        /// Weight of the body.
        weight "w": LineLoad as LineWeight [>= 0.0],
    } -> LineLoad as LineWeight;
    form "f = friction multiplier weight";
    from Memory "haslem_1986" "weight of the pipe on the base of a stable bore, with O'Reilly and Rogers 1987";
    valid "friction and weight not negative, multiplier at least 1";
    value |s| s.weight * (s.friction * s.multiplier);

    /// Adhesion over the strip of contact, per length: `f = min(alpha s_u, a) b`, the width by
    /// [`ContactWidth`](super::friction::ContactWidth).
    ContactAdhesion "adhesion over the contact" {
        /// Share of the strength that adheres.
        adhesion "alpha": Ratio as Ratio [>= 0.0 <= 1.0],
        /// Undrained strength.
        undrained_strength "s_u": Pressure as UnitFriction [>= 0.0],
        /// Most that clings to steel.
        most "a": Pressure as UnitFriction,
        /// Width of contact.
        width "b": Length as Diameter [>= 0.0],
    } -> LineLoad as LineWeight;
    form "f = min(adhesion undrained_strength, most) width";
    from Memory "haslem_1986" "undrained contact in clay; another description of the friction on the bottom, so that the larger counts and never the sum";
    valid "adhesion from 0 to 1, strength and width not negative";
    value |s| (s.adhesion * s.undrained_strength).min(s.most) * s.width;

    /// Friction of spoil left round the body, felt above and below it, per length: `f = 2 mu k gamma D²`.
    SpoilLeft "friction of spoil left in the bore" {
        /// Friction coefficient.
        friction "mu": Ratio as Ratio [>= 0.0],
        /// Height of the spoil over the diameter.
        height "k": Ratio as Ratio [>= 0.0],
        /// Unit weight of the spoil.
        unit_weight "gamma": UnitWeight as UnitWeight,
        /// Outside diameter of the body.
        outside_diameter "D": Length as Diameter,
    } -> LineLoad as LineWeight;
    form "f = 2 friction height unit_weight outside_diameter^2";
    from Judgement "jackpull" "weight k gamma D^2 of spoil on the body, rubbed above and below";
    valid "friction and height not negative";
    value |s| s.unit_weight * (s.outside_diameter * s.outside_diameter) * (2.0 * s.friction * s.height);

    /// Friction per length as a mean over the outside: `tau = f / (pi D)`.
    MeanOverOutside "mean unit friction" {
        /// Friction per length.
        friction "f": LineLoad as LineWeight,
        /// Outside diameter of the body.
        outside_diameter "D": Length as Diameter [> 0.0],
    } -> Pressure as UnitFriction;
    form "tau = friction / (pi outside_diameter)";
    from Judgement "jackpull" "definition: the same force as a pressure over the whole outside";
    valid "diameter positive";
    value |s| s.friction / (PI * s.outside_diameter);

    /// Stability number at which clay closes a share of the play round a body: with `x = c E / (k r s_u)`,
    /// `N = 1 + ln x`, and `N = x` where that is below 1.
    ///
    /// k is 3 for half of the play and 6 for a quarter, which is half of it once time has doubled the closure.
    ClosingNumber "stability number at which clay closes in" {
        /// Play on the radius.
        play "c": Length as Distance [> 0.0],
        /// Undrained modulus over the strength.
        stiffness "E/s_u": Ratio as Ratio [> 0.0],
        /// Radius of the bore.
        radius "r": Length as Distance [> 0.0],
        /// 1.5 over the share of the play.
        share "k": Ratio as Ratio [> 0.0],
    } -> Ratio as Ratio;
    form "N = 1 + ln(play stiffness / (share radius)), or the quotient where that is below 1";
    from Judgement "jackpull" "closure of an elastic-plastic cavity, u/r = (s_u/2G) e^(N-1), solved for the number";
    valid "play, stiffness, radius and share positive";
    value |s| {
        let quotient = s.play * s.stiffness / (s.share * s.radius);
        if quotient < Ratio::from(1.0) { quotient } else { Ratio::from(1.0 + quotient.value.ln()) }
    };

    /// Thrust on a bit by its diameter: `F = q D`.
    BitThrust "thrust on the bit" {
        /// Thrust per diameter.
        per_diameter "q": LineLoad as LineWeight,
        /// Diameter of the bit.
        diameter "D": Length as Diameter [>= 0.0],
    } -> Force as Thrust;
    form "F = per_diameter diameter";
    from Memory "jackpull" "rotary drilling practice: 500 to 1000 lbf per inch of bit in soft ground, 2000 to 5000 in hard rock";
    valid "diameter not negative";
    value |s| s.per_diameter * s.diameter;
}
