//! What is wrong between values that are each well written.

use crate::yaml::{Complaint, Handle};

/// A fault found when values are put together: the field it hangs on, and what is wrong.
#[derive(Debug, Clone)]
pub(crate) struct Flaw {
    pub(crate) path: String,
    pub(crate) at: Handle,
    pub(crate) complaint: Complaint,
    /// The value itself makes no sense, whatever it is used for.
    pub(crate) senseless: bool,
}
