//! Random streams, spreads, quantiles and linear programmes.
//!
//! Knows nothing of compost, and nothing of clocks: every limit is a count, so
//! that the same question has the same answer on every platform. Only additions,
//! multiplications, divisions and square roots are used, which IEEE 754 rounds
//! the same way natively and in WebAssembly.
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod programme;
mod quantile;
mod spread;
mod stream;

pub use programme::{Comparison, Outcome, Programme, Solved, Variable};
pub use quantile::{outer_deciles, share};
pub use spread::{at_weight, split_triangular_weight};
pub use stream::Stream;
