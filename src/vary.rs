//! A drive file changed in one place, resolved and chosen again: what a change of input does to the choice, and how far
//! apart the pits of a longer line may be. Everything goes through the same door as the file itself.

mod edit;
mod input;
mod meets;
mod pits;
mod screen;

pub use input::{Input, InputTurns, Outcome, Turn, turns, unlubricated};
pub use pits::{PitLimit, Pits, pits};
pub use screen::{Case, Screen, Screened, screen};
