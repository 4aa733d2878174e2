//! Where should the compost go? What it feeds, what each bed bears, and how it is shared out.
//!
//! In: the compost's figures, the beds, the rules. Out: a depth for each bed with what it brings,
//! every limit with the depth that it allows, and the one that binds.
//!
//! - [`compost`] what a litre brings; [`nitrogen`] how much of it feeds a crop, and when
//! - [`bed`] what a bed needs and bears; [`salt`] and [`cover`] for that
//! - [`sharing`] several aims one after the other, as linear programmes
//!
//! Limits: the limits hold at typical figures; ranges enter through the intervals of what is brought.
//! Earlier dressings count as the same compost.

pub mod bed;
pub mod compost;
pub mod cover;
pub mod nitrogen;
pub mod plan;
pub mod rules;
pub mod salt;
pub mod sharing;
