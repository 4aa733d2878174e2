//! How warm might a heap be? A curve that rises after feeds and turnings and falls as the food goes.
//!
//! Made up for invented gardens alone: no answer of the program rests on it.

/// What makes a heap warm.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Warmth {
    /// Food for warmth, 1 for a good heap full of greens.
    food: f64,
    /// How far the middle is above the air [degC].
    above_air_c: f64,
}

/// Above this the middle never gets [degC].
const HOTTEST_C: f64 = 72.0;

impl Warmth {
    pub(crate) fn fed(&mut self, food: f64) {
        self.food = (self.food + food).min(1.6);
    }

    /// Turning cools now and lets air to what has not rotted yet.
    pub(crate) fn turned(&mut self) {
        self.above_air_c *= 0.55;
        self.food = (self.food * 1.25).min(1.6);
    }

    pub(crate) fn watered(&mut self) {
        self.above_air_c *= 0.93;
        self.food *= 1.04;
    }

    /// A day passes.
    pub(crate) fn day(&mut self) {
        let aim_c = 46.0 * self.food;
        // Warms within two days, cools over ten.
        let pace = if aim_c > self.above_air_c { 0.45 } else { 0.1 };
        self.above_air_c += (aim_c - self.above_air_c) * pace;
        self.food *= 0.93;
    }

    /// The middle, when the air has a temperature [degC].
    pub(crate) fn core_c(&self, air_c: f64) -> f64 {
        (air_c * 0.8 + 2.0 + self.above_air_c).min(HOTTEST_C)
    }

    /// Near the wall.
    pub(crate) fn edge_c(&self, air_c: f64) -> f64 {
        (air_c + 0.45 * self.above_air_c).min(HOTTEST_C)
    }
}
