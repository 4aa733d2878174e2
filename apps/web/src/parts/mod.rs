//! Controls that places share.

pub mod amount;
pub mod field;
pub mod finder;
pub mod picture;
