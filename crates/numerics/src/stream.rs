//! Which draws belong to which quantity? A stream of uniform numbers for each name.
//!
//! A stream is chosen by a seed and a name, not by position. So the draws of a
//! quantity do not change when others are added, removed or put in another
//! order, and one quantity that is used twice is drawn once.

use rand_chacha::ChaCha8Rng;
use rand_core::{Rng, SeedableRng};

/// Uniform numbers that depend on a seed and a name alone.
///
/// `ChaCha8` (Bernstein 2008) is value-stable: the same on every platform and in
/// every release of its crate.
#[derive(Clone, Debug)]
pub struct Stream {
    generator: ChaCha8Rng,
}

impl Stream {
    /// The stream of the quantity `name` under `seed`.
    #[must_use]
    pub fn new(seed: u64, name: &str) -> Self {
        let mut key = [0_u8; 32];
        key[..8].copy_from_slice(&seed.to_le_bytes());
        key[8..16].copy_from_slice(&fnv_1a(name, 0xcbf2_9ce4_8422_2325).to_le_bytes());
        key[16..24].copy_from_slice(&fnv_1a(name, 0x9e37_79b9_7f4a_7c15).to_le_bytes());
        Self {
            generator: ChaCha8Rng::from_seed(key),
        }
    }

    /// The next `len` numbers, each above 0 and below 1.
    pub fn uniforms(&mut self, len: usize) -> Vec<f64> {
        const STEP: f64 = 1.0 / 4_294_967_296.0;
        let mut bytes = vec![0_u8; 4 * len];
        self.generator.fill_bytes(&mut bytes);
        bytes
            .as_chunks::<4>()
            .0
            .iter()
            .map(|bytes| (f64::from(u32::from_le_bytes(*bytes)) + 0.5) * STEP)
            .collect()
    }
}

/// The 64-bit hash of Fowler, Noll and Vo (variant 1a, RFC 9923) from a chosen start.
fn fnv_1a(text: &str, start: u64) -> u64 {
    text.bytes().fold(start, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn uniforms_are_the_same_for_the_same_name_and_differ_for_others() {
        let draws = |seed, name: &str| Stream::new(seed, name).uniforms(3);
        assert_eq!(draws(1, "leaves"), draws(1, "leaves"));
        assert_ne!(draws(1, "leaves"), draws(1, "straw"));
        assert_ne!(draws(1, "leaves"), draws(2, "leaves"));
    }

    #[test]
    fn uniforms_have_the_mean_and_variance_of_the_unit_interval() {
        let draws = Stream::new(7, "moments").uniforms(100_000);
        let mean = draws.iter().sum::<f64>() / 1e5;
        let variance = draws.iter().map(|u| (u - mean) * (u - mean)).sum::<f64>() / 1e5;
        // Four standard errors of the mean and of the variance at 100,000 draws.
        assert!((mean - 0.5).abs() < 4.0 * 0.000_913, "mean {mean}");
        assert!(
            (variance - 1.0 / 12.0).abs() < 4.0 * 0.000_236,
            "variance {variance}"
        );
        assert!(draws.iter().all(|u| *u > 0.0 && *u < 1.0));
    }
}
