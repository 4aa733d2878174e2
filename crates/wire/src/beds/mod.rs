//! Beds and compost that a file describes, and the plan that comes of them.

mod answer;
mod question;
mod read;

pub(crate) use answer::sources;
pub use answer::{BedsPlanJson, KeyedSourceJson, beds_plan_json};
pub use question::BedsFile;

pub use read::{read_beds, spoken_compost_m3};
