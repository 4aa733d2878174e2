//! Is it compost yet, how much of it will there be, what is in it, and what did it save?
//!
//! - [`signs`]: one test, one sign: formula, class, boundary, source
//! - [`verdict`]: signs of two independent kinds make a verdict
//! - [`accounts`]: what is left of what went in, by the balance of ash, and where each nutrient is
//! - [`learnt`]: what the garden's own harvests tell of the next one
//! - [`diversion`]: what was kept out of the bin, and what that means for the climate
//!
//! In: parts and how far they have come, figures of tests. Out: plain figures with 80 % intervals.
//! Nothing here knows of a journal or of words.
//!
//! Limits: a sign of ripeness is no sign of hygiene. Losses of nitrogen are known to a factor of
//! two at best; those of potassium less well.

pub mod accounts;
pub mod diversion;
pub mod learnt;
pub mod signs;
pub mod verdict;
