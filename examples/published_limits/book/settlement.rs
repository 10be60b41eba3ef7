//! The trough over a bore.

use super::{Book, Outcome, Read, Topic, q};
use jackpull::laws::settlement::{FaceLoss, GreatestSettlement, TroughWidth};

pub(crate) const TOPIC: Topic = Topic { name: "settlement", title: "Settlement", write: trough };

/// Tunnel of 8 m at 30 m, K 0.5, ground loss 0.4 %.
fn trough(book: &Book) -> Outcome {
    let example =
        book.at("a worked example of a study-help site", "trough at the surface and 5 m below", Read::Page)?;
    for (level, width, settlement) in [("0 m", "15 m", "5.35 mm"), ("5 m", "12.5 m", "6.42 mm")] {
        let trough_width = book.law(TroughWidth { ratio: q("0.5")?, axis_depth: q("30 m")?, level: q(level)? });
        let what = format!("half width of the trough at {level}");
        let why = "exact by its inputs: K is the same at every depth, as the example has it";
        example.about(&what, trough_width, width, "0.0005 m", why)?;
        let lost_ground = book.law(FaceLoss { volume_loss: q("0.4 %")?, bore: q("8 m")? });
        let ours = book.law(GreatestSettlement { lost_ground, trough_width });
        example.prints(&format!("greatest settlement at {level}"), ours, settlement)?;
    }
    Ok(())
}
