//! What lies between two accepted states? A cubic that meets values and slopes.

/// One accepted step.
#[derive(Clone, Copy, Debug)]
pub struct Step<'a> {
    /// Time at the start.
    pub start: f64,
    /// Time at the end.
    pub end: f64,
    /// State at the start.
    pub y_start: &'a [f64],
    /// Slope at the start.
    pub slope_start: &'a [f64],
    /// State at the end.
    pub y_end: &'a [f64],
    /// Slope at the end.
    pub slope_end: &'a [f64],
}

impl Step<'_> {
    /// The state at a time within the step, into `out`.
    pub fn at(&self, t: f64, out: &mut [f64]) {
        let weights = self.weights(t);
        for (index, out) in out.iter_mut().enumerate() {
            *out = self.weighed(index, weights);
        }
    }

    /// One component at a time within the step.
    #[must_use]
    pub fn component_at(&self, t: f64, index: usize) -> f64 {
        self.weighed(index, self.weights(t))
    }

    fn weighed(&self, index: usize, [end, slope_start, slope_end]: [f64; 3]) -> f64 {
        let start = self.y_start[index];
        start
            + end * (self.y_end[index] - start)
            + slope_start * self.slope_start[index]
            + slope_end * self.slope_end[index]
    }

    /// Weights of the end value and of the two slopes.
    fn weights(&self, t: f64) -> [f64; 3] {
        let length = self.end - self.start;
        let x = ((t - self.start) / length).clamp(0.0, 1.0);
        [
            x * x * (3.0 - 2.0 * x),
            length * x * (1.0 - x) * (1.0 - x),
            length * x * x * (x - 1.0),
        ]
    }
}
