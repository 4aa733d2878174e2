//! Chance, by a seed and a name.

use heapwright_numerics::Stream;

/// Draws from one stream.
#[derive(Clone, Debug)]
pub(crate) struct Chance {
    stream: Stream,
    drawn: Vec<f64>,
}

impl Chance {
    pub(crate) fn new(seed: u64, name: &str) -> Self {
        Self {
            stream: Stream::new(seed, name),
            drawn: Vec::new(),
        }
    }

    /// Above 0 and below 1.
    pub(crate) fn unit(&mut self) -> f64 {
        if self.drawn.is_empty() {
            self.drawn = self.stream.uniforms(1024);
        }
        self.drawn.pop().unwrap_or(0.5)
    }

    pub(crate) fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.unit()
    }

    /// The same, rounded to a step: what people write down.
    pub(crate) fn stepped(&mut self, least: f64, most: f64, step: f64) -> f64 {
        rounded(self.between(least, most), step).max(step)
    }

    /// A whole number below `bound`; 0 when the bound is 0.
    pub(crate) fn below(&mut self, bound: usize) -> usize {
        ((self.unit() * bound as f64) as usize).min(bound.saturating_sub(1))
    }

    /// True with a probability.
    pub(crate) fn happens(&mut self, probability: f64) -> bool {
        self.unit() < probability
    }

    /// One of some, each as likely; `None` of nothing.
    pub(crate) fn one_of<'a, T>(&mut self, some: &'a [T]) -> Option<&'a T> {
        some.get(self.below(some.len()))
    }

    /// The place of one of some weights, by weight.
    pub(crate) fn weighted(&mut self, weights: &[f64]) -> usize {
        let mut left = self.unit() * weights.iter().sum::<f64>();
        for (place, weight) in weights.iter().enumerate() {
            left -= weight;
            if left < 0.0 {
                return place;
            }
        }
        0
    }

    /// Ten random bytes, for an id.
    pub(crate) fn bytes(&mut self) -> [u8; 10] {
        let mut bytes = [0; 10];
        for four in bytes.chunks_mut(4) {
            let drawn = (self.unit() * 4_294_967_296.0) as u32;
            four.copy_from_slice(&drawn.to_le_bytes()[..four.len()]);
        }
        bytes
    }
}

/// Rounded to a step such as 0.25. Goes over whole numbers, so that what is written is short.
pub(crate) fn rounded(value: f64, step: f64) -> f64 {
    let per_one = (1.0 / step).round();
    if per_one >= 1.0 {
        (value * per_one).round() / per_one
    } else {
        (value / step).round() * step
    }
}
