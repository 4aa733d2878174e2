//! How does a figure vary between its low, typical and high value?
//!
//! By the *split triangle*: half of all cases lie below the typical value, half
//! above, and on either side they thin out evenly towards the end. It keeps the
//! three numbers that tables print (nothing falls outside, the typical value is
//! the median) and its inverse needs only a square root.

/// The weight of a uniform draw `u` (0 to 1): -1 at the low end, 0 at the
/// typical value, 1 at the high end.
///
/// Each half is the inverse of a triangular distribution that falls to nothing
/// at the end.
#[must_use]
pub fn split_triangular_weight(u: f64) -> f64 {
    if u < 0.5 {
        (2.0 * u).sqrt() - 1.0
    } else {
        1.0 - (2.0 * (1.0 - u)).sqrt()
    }
}

/// The value at a weight between three values: straight from `typical` to
/// `at_low` (weight -1) and to `at_high` (weight 1).
#[must_use]
pub fn at_weight(at_low: f64, typical: f64, at_high: f64, weight: f64) -> f64 {
    if weight < 0.0 {
        typical + (typical - at_low) * weight
    } else {
        typical + (at_high - typical) * weight
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn split_triangular_weight_meets_its_closed_form() {
        assert_eq!(split_triangular_weight(0.5), 0.0);
        assert_eq!(split_triangular_weight(0.0), -1.0);
        assert_eq!(split_triangular_weight(1.0), 1.0);
        // One in eight lies below half way to the low end: (1 - 1/2)^2 / 2.
        assert_eq!(split_triangular_weight(0.125), -0.5);
        assert_eq!(split_triangular_weight(0.875), 0.5);
    }

    #[test]
    fn at_weight_passes_through_its_three_values() {
        assert_eq!(at_weight(1.0, 2.0, 7.0, -1.0), 1.0);
        assert_eq!(at_weight(1.0, 2.0, 7.0, 0.0), 2.0);
        assert_eq!(at_weight(1.0, 2.0, 7.0, 1.0), 7.0);
    }
}
