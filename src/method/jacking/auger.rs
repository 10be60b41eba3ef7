//! The torque of an auger that clears what is pushed: as the file tells it, else what auger and spoil take by their weight
//! alone, as they rub on the invert. What the head cuts with comes on top, and no formula of it is agreed on.

use crate::check::{Absent, Draft, Outcome, Ways, at_most, only};
use crate::drive::Laden;
use crate::law::Calc;
use crate::laws::thrust::{AugerWeightTorque, SpoilTorque};
use crate::method::stem;
use crate::method::walked::Walked;
use crate::quantity::{Band, Length, Role, Torque};
use crate::source::Cited;

const DRAG: &str = "auger and spoil alone, as they rub on the invert; what the head cuts with comes on top";
const LEAST: &str = "auger and spoil alone ask for more than the rig turns, at their lightest: a stronger rig, a shorter drive, \
    or spoil that leaves otherwise";

/// Torque that a rig is rated for.
fn rating(at: &Walked<'_>) -> Result<Cited<Torque>, Absent> {
    at.jacked()?;
    at.drive.rig.torque.ok_or(Absent::NotApplicable("the rig is not rated for torque"))
}

/// The torque of the file.
pub(in crate::method) fn torque(at: &Walked<'_>) -> Outcome {
    let rating = rating(at)?;
    stem::torque(at.drive.rig.auger_torque, rating)
}

/// Over where the least is more than the rig turns; what is likely more waits for the torque that the contractor reckons with.
pub(in crate::method) fn drag(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let rating = rating(at)?;
    only(at.drive.rig.auger_torque.is_none(), "the file tells the torque of the auger")?;
    let auger = at.drive.auger.ok_or(Absent::NotApplicable("the soil does not leave by auger"))?;
    calc.part("drag of the auger");
    let length = at.drive.length.value;
    let each = auger.laden(inside(at)?).zip(auger.friction.zip(auger.progress));
    let torque = calc.doubted(|calc| {
        calc.levels(each, |calc, (laden, (friction, progress))| {
            let Laden { diameter, auger, spoil } = laden;
            calc.law(SpoilTorque { spoil, progress, pitch: diameter, length })
                + calc.law(AugerWeightTorque { friction, auger, outside_diameter: diameter, length })
        })
    });
    let ways: Ways = if auger.told { &[&["rig.auger_torque"]] } else { &[&["spoil"], &["rig.auger_torque"]] };
    let least = at_most(Role::Torque, torque.map(|torque| Band::same(torque.low)), rating);
    let passes = |check: &Draft| check.utilisation().is_some_and(|used| used <= 1.0);
    if auger.told && !passes(&least) {
        return Ok(least.with_note(LEAST));
    }
    Ok(at_most(Role::Torque, torque, rating).by_habit().with_note(DRAG).settled_by(ways))
}

/// Inside diameter of what the auger turns in: the casing, where one goes before the pipe.
fn inside(at: &Walked<'_>) -> Result<Length, Absent> {
    let jacked = at.jacked()?;
    if let Some((casing, _)) = jacked.casing {
        let wall = casing.tube.as_deref().map_or(Length::default(), |tube| tube.section.wall);
        return Ok(casing.outside_diameter - 2.0 * wall);
    }
    Ok(at.pipe.inside())
}
