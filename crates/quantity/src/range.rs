//! How uncertain is a figure? Ranges of what may go in, intervals of what comes out.

/// What a figure of the world may be: its lowest, typical and highest value.
///
/// The three are in one unit, named by whoever holds the range, and ordered
/// `low <= typical <= high`. A range whose three values are equal is exact.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Lowest value that is found in practice.
    pub low: f64,
    /// The value to expect: as many cases lie below as above.
    pub typical: f64,
    /// Highest value that is found in practice.
    pub high: f64,
}

impl Range {
    /// A figure known exactly.
    #[must_use]
    pub const fn exact(value: f64) -> Self {
        Self {
            low: value,
            typical: value,
            high: value,
        }
    }

    /// A range, or `None` when a value is not finite or the order is broken.
    #[must_use]
    pub fn new(low: f64, typical: f64, high: f64) -> Option<Self> {
        let finite = low.is_finite() && typical.is_finite() && high.is_finite();
        (finite && low <= typical && typical <= high).then_some(Self { low, typical, high })
    }

    /// True when the figure carries no spread.
    #[must_use]
    pub fn is_exact(&self) -> bool {
        self.low == self.high
    }

    /// The range with each value multiplied by `factor`, which must not be negative.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        debug_assert!(factor >= 0.0, "a negative factor would turn the range over");
        Self {
            low: self.low * factor,
            typical: self.typical * factor,
            high: self.high * factor,
        }
    }

    /// The range with each value held inside `[least, most]`.
    #[must_use]
    pub fn clamped(&self, least: f64, most: f64) -> Self {
        Self {
            low: self.low.clamp(least, most),
            typical: self.typical.clamp(least, most),
            high: self.high.clamp(least, most),
        }
    }
}

/// A computed figure with its 80 % interval: one case in ten is expected below
/// `low`, one in ten above `high`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    /// The figure at the typical values of all that goes in.
    pub value: f64,
    /// Lower end of the 80 % interval, never above `value`.
    pub low: f64,
    /// Upper end of the 80 % interval, never below `value`.
    pub high: f64,
}

impl Interval {
    /// A figure without spread.
    #[must_use]
    pub const fn exact(value: f64) -> Self {
        Self {
            value,
            low: value,
            high: value,
        }
    }

    /// The interval in another unit: each value multiplied by `factor`.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        Self {
            value: self.value * factor,
            low: self.low * factor,
            high: self.high * factor,
        }
    }
}
