//! What is lost round a bore, and the trough that it leaves.

use super::earth::Ends;
use super::looked_up::looked_up;
use crate::quantity::{Length, Ratio};
use crate::source::{Cited, Origin};

looked_up! {
    /// Settlement.
    Movement of |handbook, by_stretch: Vec<Option<Trough>>, cut: &str| {
        /// By stretch; none where no source tells the width of the trough in its ground.
        troughs: Vec<Option<Trough>> = by_stretch,
        /// Overcut of a jacked pipe on the radius, where the file tells no bore.
        overcut: Ends<Length> = {
            let row = handbook.hole_overcut()?.row(cut)?.value;
            Ends { low: row.low.as_ref().unwrap_or(&row.high).value, high: row.high.value }
        },
        /// The least that can be asked of a steel casing, which is bored as wide as it is.
        of_casing: Length = handbook.length("overcut.casing_least")?.value,
        /// Share of the annulus of a pulled pipe that closes where it is left full.
        closes: Cited<Ratio> = handbook.ratio("settlement.annulus_left")?,
        /// The same where it is grouted.
        closes_grouted: Cited<Ratio> = handbook.ratio("settlement.annulus_grouted")?,
        /// Volume lost at the face.
        face_loss: FaceLosses = FaceLosses::read(handbook)?,
    }

    /// Volume lost at a face, over that of the bore.
    FaceLosses of |handbook| {
        usual: Cited<Ends<Ratio>> = Ends::spanned(handbook.volume_loss()?.span("closed_usual")?),
        /// Of clay that hardly yields, up to a stability number.
        firm: Cited<Ends<Ratio>> = Ends::spanned(handbook.volume_loss()?.span("firm_clay")?),
        firm_to: Ratio = handbook.ratio("settlement.firm_number")?.value,
        /// Of what ravels into an open shield.
        ravelling: Cited<Ends<Ratio>> = Ends::spanned(handbook.volume_loss()?.span("open_ravelling")?),
    }
}

/// The trough over one stretch.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Trough {
    /// Width over depth, low and high.
    pub(crate) ratio: (Ratio, Ratio),
    /// Share of the annulus that closes: low, usual high end, bound.
    pub(crate) closed: (Ratio, Ratio, Ratio),
    /// Whether the ground may be any soil, so that at best the trough is the widest.
    pub(crate) of_any_soil: bool,
    pub(crate) origin: Origin,
}
