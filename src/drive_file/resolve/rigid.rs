//! Jacking pipe of GRP and of polymer concrete: its own strength on the end area; of fibre cement: its maker's force.

use super::applies::{Applies, NOT_PULLED, PUSHED, STRENGTHS, keys};
use super::clay::BRITTLE;
use super::listed::Listed;
use super::row::{Bears, End, GIVE_DIAMETERS, Pushed};
use super::{Resolver, iron};
use crate::drive::Capacity;
use crate::drive_file::CandidateFile;
use crate::drive_file::fields::Keys;
use crate::handbook::Family;
use crate::quantity::{Pressure, Role};
use crate::source::Cited;

const USED: Keys = PUSHED.or(keys![wall, end_bearing_area, joint_stress_ratio, packer, end_squareness, strength]);

pub(super) const GRP: Pushed = Pushed {
    what: "GRP",
    noun: "GRP jacking pipe",
    by_bore: false,
    other_size: GIVE_DIAMETERS,
    family: Family::Grp,
    applies: Applies {
        used: USED,
        reasons: &[
            (keys![factor], "does not apply to GRP: its material factor is fixed"),
            (keys![free_length], "is for steel pipe"),
        ],
        way: NOT_PULLED,
        otherwise: "does not apply to GRP",
        idle: &[],
    },
    sizes: |_| Ok(Vec::new()),
    density: Some("grp"),
    trade: None,
    end: End::AreaByMaker,
    bears: |resolver, of, barrel| {
        let advice = "add `strength: 80 MPa`, the axial one and not that of the hoop";
        let Some(axial_strength) = resolver.own_strength(of, "strength along the pipe", advice) else {
            return Ok(None);
        };
        let weight = resolver.jacked_weight(of, barrel)?;
        let ratio = resolver.joint_ratio(of)?;
        let factors = resolver.handbook.jacking_factor()?;
        let (material_factor, greatest) = (factors.value("iso_25780_material")?, factors.value("grp_joint_ratio")?);
        resolver.assume_one(format!("{}: material factor", of.path), material_factor, Role::Ratio);
        let capacity = Capacity::Grp { axial_strength, material_factor, greatest_ratio: greatest.value };
        Ok(Some(Bears { weight, ratio, capacity }))
    },
};

pub(super) const POLYMER_CONCRETE: Pushed = Pushed {
    what: "polymer concrete",
    noun: "polymer concrete jacking pipe",
    family: Family::PolymerConcrete,
    applies: Applies {
        used: USED.or(keys![factor]),
        reasons: &[(keys![free_length], "is for steel pipe")],
        otherwise: "does not apply to polymer concrete",
        ..GRP.applies
    },
    density: Some("polymer_concrete"),
    bears: |resolver, of, barrel| {
        let advice = "add `strength: 90 MPa` of the pipe's certificate";
        let Some(strength) = resolver.own_strength(of, "strength in compression", advice) else { return Ok(None) };
        let weight = resolver.jacked_weight(of, barrel)?;
        let ratio = resolver.joint_ratio(of)?;
        let habit = resolver.handbook.jacking_factor()?.value("polymer_habit")?;
        let factor = resolver.ratio_or(of, CandidateFile::factor, BRITTLE, habit);
        let capacity = resolver.brittle(of, (strength, None), factor)?;
        Ok(Some(Bears { weight, ratio, capacity }))
    },
    ..GRP
};

pub(super) const FIBRE_CEMENT: Pushed = Pushed {
    what: "fibre cement",
    noun: "fibre cement jacking pipe",
    family: Family::FibreCement,
    applies: Applies {
        reasons: &[
            (STRENGTHS, "does not apply to fibre cement: its maker's force has the strength in it"),
            (keys![factor], "the maker's force has its factors in it"),
            (keys![end_bearing_area, joint_stress_ratio, packer], "the maker's force stands for the joint"),
            (keys![free_length], "is for steel pipe"),
        ],
        otherwise: "does not apply to fibre cement",
        ..iron::JACKED.applies
    },
    sizes: |_| Ok(Vec::new()),
    density: Some("fibre_cement"),
    ..iron::JACKED
};

impl Resolver<'_> {
    /// The strength of the pipe's own certificate: no default is known that is safe.
    fn own_strength(&mut self, of: &Listed<'_>, what: &str, advice: &str) -> Option<Cited<Pressure>> {
        let strength = self.own(of, CandidateFile::strength);
        if strength.is_none() {
            self.lacks(&of.pipe.size, &of.at("strength"), format!("the {what} is missing"), advice);
        }
        strength
    }
}
