//! Ductile iron pipe: jacked, where its joint sets the force, and pulled by restrained joints.

use super::label::as_given;
use super::listed::Listed;
use super::row::{
    Applies, End, GIVE_DIAMETERS, IDLE_LENGTH, NOT_PULLED, NOT_PUSHED, PULLED as USED_PULLED, PUSHED, Pulled, Pushed,
    RATINGS, STRENGTHS, Section, keys,
};
use super::sizes::{self, both, iron_in_inches, metric_iron};
use super::{Resolved, Resolver};
use crate::drive::{Barrel, HeavyIron, IronBarrel, JointedPipe, Pull, PulledPipe};
use crate::drive_file::CandidateFile;
use crate::handbook::Family;
use crate::quantity::{Length, Measure, Role};
use crate::source::Cited;

/// Where the lining becomes thicker, m: between the sizes 300 and 350 mm, and 600 and 700 mm.
const LINED_THICKER: [f64; 2] = [0.325, 0.65];

pub(super) const JACKED: Pushed = Pushed {
    what: "ductile iron",
    noun: "ductile iron pipe",
    by_bore: false,
    other_size: GIVE_DIAMETERS,
    family: Family::DuctileIron,
    applies: Applies {
        used: PUSHED.or(keys![wall, end_squareness, joint_diameter]),
        reasons: &[
            (STRENGTHS, "does not apply to jacked ductile iron: the joint sets the force"),
            (keys![factor], "the maker's force has its factors in it"),
            (keys![end_bearing_area], "the maker's force stands for it"),
            (keys![joint_stress_ratio], "the maker's force holds it"),
            (keys![packer], "the maker's force stands for the joint"),
            (keys![free_length], "is for steel pipe"),
        ],
        way: NOT_PULLED,
        otherwise: "does not apply to ductile iron",
        idle: &[],
    },
    sizes: |resolver| both(metric_iron(resolver.handbook), iron_in_inches(resolver.handbook)),
    density: Some("ductile_iron"),
    trade: None,
    end: End::Joint,
    bears: |resolver, of, barrel| resolver.by_its_maker(of, barrel),
};

pub(super) const PULLED: Pulled = Pulled {
    what: "this pipe",
    family: Family::DuctileIron,
    applies: Applies {
        used: USED_PULLED.or(RATINGS).or(keys![weight, pipe_length]),
        reasons: &[(keys![sdr], "an iron pipe has no dimension ratio"), (keys![ovality], "is for plastic pipe")],
        way: NOT_PUSHED,
        otherwise: "is for pipe that is jacked",
        idle: IDLE_LENGTH,
    },
    section: |resolver, of| {
        let known = (JACKED.sizes)(resolver)?;
        let advice =
            || format!("there are {}; for another give outside_diameter and wall", sizes::rising_texts(&known));
        let outside = resolver.outside_diameter(of, &known, ["no ductile iron pipe of", "in the table"], advice);
        let Some(outside_diameter) = outside else { return Ok(None) };
        // A row speaks for its own diameter only.
        let row = sizes::of_size(&known, of.size).filter(|_| of.pipe.outside_diameter.is_none());
        let least = row.and_then(|row| Some(Cited::new((row.outside - row.inside?) / 2.0, row.origin)));
        let wall = match (resolver.given_wall(of, outside_diameter.value), least) {
            (Some(wall), _) => wall,
            (None, Some(least)) => {
                resolver.assume_one(of.at("wall, that of the least class"), least, Role::Wall);
                least
            }
            (None, None) => {
                let what = "the wall of the iron pipe is missing";
                resolver.lacks(&of.pipe.size, &of.at("wall"), what, "add `wall: ...` of its class");
                return Ok(None);
            }
        };
        Ok(Some(Section { outside_diameter, wall }))
    },
    pipe: |resolver, of, pull, section| resolver.pulled_iron(of, pull, section.wall),
    label: |_, of, _| Ok(format!("ductile iron {}", as_given(of.size))),
};

impl Resolver<'_> {
    fn pulled_iron(&mut self, of: &Listed<'_>, pull: &Pull, wall: Cited<Length>) -> Resolved<Option<PulledPipe>> {
        let joint = self.joint_pull(of, pull)?;
        let deflection = self.joint_deflection(of, pull, true);
        let Some(joint) = joint else { return Ok(None) };
        let path = of.path;
        let density = self.density("ductile_iron")?;
        let weight = self.own(of, CandidateFile::weight).map(|weight| weight.value);
        if weight.is_none() {
            self.assume_one(format!("{path}: density, without lining"), density, Role::Density);
        }
        let heavy = self.heavy_iron(of, wall, weight.is_some())?;
        let stiff = self.handbook.pressure("iron.modulus");
        let stiff = self.taken(format!("{path}: modulus of ductile iron"), stiff, Role::Modulus)?;
        let barrel = Barrel::Iron(IronBarrel { wall, density: density.value, modulus: stiff.value, heavy });
        Ok(Some(PulledPipe::Jointed(Box::new(JointedPipe { barrel, pull: joint, deflection, weight }))))
    }

    /// Wall and lining that the pipe may weigh. A wall of the file is taken for the nominal one.
    fn heavy_iron(&mut self, of: &Listed<'_>, wall: Cited<Length>, weight_is_given: bool) -> Resolved<HeavyIron> {
        let allowance = self.handbook.length("iron.wall_allowance")?;
        let by_size = self.handbook.ratio("iron.wall_by_size")?.value;
        let nominal =
            if wall.is_given() { wall } else { allowance.map(|allowance| wall.value + allowance + by_size * of.size) };
        let [thicker, thickest] = LINED_THICKER;
        let key = match of.size.si() {
            size if size < thicker => "iron.lining_to_300",
            size if size < thickest => "iron.lining_to_600",
            _ => "iron.lining_to_1200",
        };
        let lining = self.handbook.length(key)?;
        let density = self.density("cement_mortar")?;
        if !weight_is_given {
            let path = of.path;
            self.assume_one(format!("{path}: wall for the weight where it sinks"), nominal, Role::Wall);
            self.assume_one(format!("{path}: cement lining for the weight where it sinks"), lining, Role::Wall);
        }
        Ok(HeavyIron { wall: nominal.value, lining: lining.value, density: density.value })
    }
}
