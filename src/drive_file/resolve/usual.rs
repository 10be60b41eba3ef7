//! The most that is usual of plant that the file does not tell.

use super::{Resolved, Resolver};
use crate::drive::{Usual, UsualStem};
use crate::law::Law;
use crate::laws::stem::{BucklingAllowed, EulerBuckling, TubeStiffness};

impl Resolver<'_> {
    pub(super) fn usual(&self) -> Resolved<Usual> {
        let handbook = self.handbook;
        let outside_diameter = handbook.length("usual.stem_diameter")?;
        let second_moment =
            TubeStiffness { outside_diameter: outside_diameter.value, wall: handbook.length("usual.stem_wall")?.value };
        let factor = handbook.ratio("stem.buckling_factor")?;
        let buckling = EulerBuckling {
            modulus: handbook.pressure("stem.modulus")?.value,
            second_moment: second_moment.value(),
            free_length: handbook.length("usual.stem_free")?.value,
            end_factor: self.one_free()?.value,
        };
        let allowed = BucklingAllowed { buckling: buckling.value(), factor: factor.value };
        Ok(Usual {
            stem: UsualStem {
                buckling: outside_diameter.map(|_| allowed.value()),
                factor,
                joint: handbook.force("usual.stem_joint")?,
            },
            wall: handbook.length("usual.wall")?,
            wall_of_large: handbook.length("usual.wall_of_large")?,
            large: handbook.length("usual.large")?.value,
            floor: handbook.length("usual.pit_floor")?.value,
            wall_share: handbook.ratio("usual.wall_share")?,
        })
    }
}
