//! Random streams, spreads, quantiles, linear programmes, banded equations and stiff systems in time.
//!
//! Knows nothing of compost, and nothing of clocks: every limit is a count, so
//! that the same question has the same answer on every platform. Only additions,
//! multiplications, divisions and square roots are used, which IEEE 754 rounds
//! the same way natively and in WebAssembly, and `libm` for the few other functions.
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod banded;
mod chebyshev;
mod normal;
mod programme;
mod quantile;
mod spread;
mod stream;

pub use banded::{Banded, SymmetricBanded};
pub use chebyshev::{Chebyshev, Cost, Step, Stuck, System};
pub use normal::normal_quantile;
pub use programme::{Comparison, Outcome, Programme, Solved, Variable};
pub use quantile::{outer_deciles, share};
pub use spread::{at_weight, split_triangular_weight};
pub use stream::Stream;
