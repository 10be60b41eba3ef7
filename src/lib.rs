//! Which trenchless method and which pipe for a bore driven on grade, and how well that can be defended.
//!
//! A guided bore runs straight from a launch pit to a reception pit. The product pipe goes in by **pipe jacking**
//! (rigid segments pushed in behind the stem) or by **pullback with upsizing** (a long pipe pulled back behind a
//! reamer that makes the new bore larger than the pilot bore; there is no old pipe in it). The flow:
//!
//! ```text
//! drive file --read_drive(&Handbook)--> Drive --choose--> Choice --report--> text | JSON
//!                                       Drive x pipe x method --assess--> Scheme { force band, checks }
//! ```
//!
//! ```
//! use jackpull::{Handbook, choose, read_drive};
//! let text = "
//! service: gravity_sewer
//! length: 30 m
//! launch: { invert_depth: 4.2 m }
//! grade: 1 %
//! groundwater: none
//! lubrication: metered
//! ground: [{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }]
//! rig: { thrust: 900 kN, pull: 500 kN }
//! surface: { over: road }
//! candidates: [{ material: clay, size: 10 in }]
//! ";
//! let drive = read_drive(text, &Handbook::embedded())?;
//! let choice = choose(&drive)?;
//! assert!(choice.chosen().is_some());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! How to read it all is told in the [guide]. Results are a preliminary engineering aid, to be checked by a licensed
//! engineer.

pub mod check;
pub mod choice;
pub mod conditions;
pub mod drive;
pub mod drive_file;
pub mod guide;
pub mod handbook;
pub mod law;
pub mod laws;
pub mod method;
pub mod quantity;
pub mod source;
pub mod vary;
pub mod yaml;

#[cfg(feature = "command")]
pub mod cli;
#[cfg(feature = "report")]
pub mod report;

pub use choice::{Choice, Standing, choose};
pub use drive::Drive;
pub use drive_file::{DriveFile, InputError, read_drive};
pub use handbook::{Handbook, HandbookError};
pub use method::{Method, Scheme, assess, explain};
pub use quantity::uom;
#[cfg(feature = "report")]
pub use report::Report;

/// The examples of the README, run as tests.
#[cfg(doctest)]
#[doc = include_str!("../README.md")]
struct Readme;
