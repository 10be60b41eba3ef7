//! What a material tells in its row: what applies to it, its sizes, and what it bears.

use super::applies::Applies;
use super::jacked::Barrel;
use super::listed::Listed;
use super::sizes::Known;
use super::{Resolved, Resolver};
use crate::drive::{Capacity, JackedPipe, Pull, PulledPipe};
use crate::handbook::Family;
use crate::quantity::{Length, LineLoad, Ratio};
use crate::source::Cited;

/// A pipe before its place in the drive is known.
pub(super) struct Named {
    pub(super) label: String,
    pub(super) family: Family,
    pub(super) outside_diameter: Cited<Length>,
    pub(super) jacked: Option<JackedPipe>,
    pub(super) pulled: Option<PulledPipe>,
}

/// What takes the force on the end of a pushed pipe.
#[derive(PartialEq)]
pub(super) enum End {
    /// An area, of file, packer or table, with a strength that is known; its maker's force alone where there is no area.
    Area,
    /// An area and a strength, both its maker's; or the maker's force alone.
    AreaByMaker,
    /// The whole section: the pipes are welded to one.
    Section,
    /// The joint, which only its maker knows.
    Joint,
}

/// What a pushed pipe weighs and bears.
pub(super) struct Bears {
    pub(super) weight: Option<Cited<LineLoad>>,
    /// Mean over greatest stress in the joint, where the file tells it.
    pub(super) ratio: Option<Cited<Ratio>>,
    pub(super) capacity: Capacity,
}

/// A material to be pushed.
pub(super) struct Pushed {
    /// In the name of a pipe.
    pub(super) what: &'static str,
    /// In a fault.
    pub(super) noun: &'static str,
    /// Whether the size is the true bore.
    pub(super) by_bore: bool,
    /// What to give for a size that no table has.
    pub(super) other_size: &'static str,
    pub(super) family: Family,
    pub(super) applies: Applies,
    pub(super) sizes: fn(&Resolver<'_>) -> Resolved<Vec<Known>>,
    /// Row of its density, where a weight follows from the wall.
    pub(super) density: Option<&'static str>,
    /// Row of what the trade delivers: lengths and squareness of ends. Such a pipe is named by its bore.
    pub(super) trade: Option<&'static str>,
    pub(super) end: End,
    pub(super) bears: fn(&mut Resolver<'_>, &Listed<'_>, &Barrel) -> Resolved<Option<Bears>>,
}

/// Outside diameter and wall.
#[derive(Clone, Copy)]
pub(super) struct Section {
    pub(super) outside_diameter: Cited<Length>,
    pub(super) wall: Cited<Length>,
}

/// A material to be pulled.
pub(super) struct Pulled {
    pub(super) what: &'static str,
    pub(super) family: Family,
    pub(super) applies: Applies,
    pub(super) section: fn(&mut Resolver<'_>, &Listed<'_>) -> Resolved<Option<Section>>,
    pub(super) pipe: fn(&mut Resolver<'_>, &Listed<'_>, &Pull, Section) -> Resolved<Option<PulledPipe>>,
    pub(super) label: fn(&Resolver<'_>, &Listed<'_>, Section) -> Resolved<String>,
}

/// For a size that no table has.
pub(super) const GIVE_DIAMETERS: &str = "give outside_diameter and inside_diameter or wall";
