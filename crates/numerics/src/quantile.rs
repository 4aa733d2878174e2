//! Where do most of the draws lie?

/// The first and the last decile of `draws`: one in ten lies below, one in ten above.
///
/// The order statistics nearest to 0.1 and 0.9 of the way, without interpolation.
/// Leaves `draws` in another order. `None` when there are no draws or one is not
/// a number.
pub fn outer_deciles(draws: &mut [f64]) -> Option<(f64, f64)> {
    if draws.is_empty() || draws.iter().any(|draw| draw.is_nan()) {
        return None;
    }
    let last = draws.len() - 1;
    // Rounded to the nearest order statistic; the ends mirror each other.
    let low_index = (last + 5) / 10;
    let high_index = last - low_index;
    let (_, low, above) = draws.select_nth_unstable_by(low_index, f64::total_cmp);
    let low = *low;
    let high = if high_index == low_index {
        low
    } else {
        *above
            .select_nth_unstable_by(high_index - low_index - 1, f64::total_cmp)
            .1
    };
    Some((low, high))
}

/// The share (0 to 1) of `trues` among all; 0 of none.
#[must_use]
#[allow(clippy::cast_precision_loss)] // counts of draws lie far below 2^52
pub fn share(trues: usize, all: usize) -> f64 {
    if all == 0 {
        0.0
    } else {
        trues as f64 / all as f64
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn outer_deciles_of_eleven_numbers_are_the_second_and_the_tenth() {
        let mut draws: Vec<f64> = (0..=10).rev().map(f64::from).collect();
        assert_eq!(outer_deciles(&mut draws), Some((1.0, 9.0)));
    }

    #[test]
    fn outer_deciles_of_one_number_are_that_number() {
        assert_eq!(outer_deciles(&mut [4.0]), Some((4.0, 4.0)));
        assert_eq!(outer_deciles(&mut []), None);
        assert_eq!(outer_deciles(&mut [1.0, f64::NAN]), None);
    }

    proptest! {
        #[test]
        fn prop_outer_deciles_agree_with_sorting(mut draws in prop::collection::vec(-1e6..1e6_f64, 1..300)) {
            let mut sorted = draws.clone();
            sorted.sort_by(f64::total_cmp);
            let (low, high) = outer_deciles(&mut draws).unwrap();
            let index = (sorted.len() - 1 + 5) / 10;
            prop_assert_eq!(low, sorted[index]);
            prop_assert_eq!(high, sorted[sorted.len() - 1 - index]);
        }
    }
}
