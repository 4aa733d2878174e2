//! How many slips of the finger lie between two words? Letters added, dropped, changed or swapped.

/// Longest word, in bytes, that is compared letter by letter.
const LONGEST: usize = 32;

/// Slips between two words (restricted Damerau-Levenshtein distance over bytes),
/// or `None` when there are more than `most` or a word is longer than 32 bytes.
///
/// Works on the stack, as it runs over the whole vocabulary at every key pressed.
pub(crate) fn slips(left: &str, right: &str, most: usize) -> Option<usize> {
    let (left, right) = (left.as_bytes(), right.as_bytes());
    if left.len().abs_diff(right.len()) > most || left.len() > LONGEST || right.len() > LONGEST {
        return None;
    }
    let mut before = [0_usize; LONGEST + 1];
    let mut above = [0_usize; LONGEST + 1];
    let mut here = [0_usize; LONGEST + 1];
    for (place, cost) in above.iter_mut().enumerate() {
        *cost = place;
    }
    for row in 1..=left.len() {
        here[0] = row;
        let mut least = row;
        for column in 1..=right.len() {
            let same = left[row - 1] == right[column - 1];
            let changed = above[column - 1] + usize::from(!same);
            let mut cost = changed.min(above[column] + 1).min(here[column - 1] + 1);
            let swapped = row > 1
                && column > 1
                && left[row - 1] == right[column - 2]
                && left[row - 2] == right[column - 1];
            if swapped {
                cost = cost.min(before[column - 2] + 1);
            }
            here[column] = cost;
            least = least.min(cost);
        }
        if least > most {
            return None;
        }
        before = above;
        above = here;
    }
    let cost = above[right.len()];
    (cost <= most).then_some(cost)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::slips;

    #[test]
    fn slips_of_the_finger() {
        assert_eq!(slips("courgette", "courgette", 2), Some(0));
        assert_eq!(slips("leafs", "leaf", 1), Some(1));
        assert_eq!(slips("starw", "straw", 1), Some(1));
        assert_eq!(slips("cofee", "coffee", 1), Some(1));
        assert_eq!(slips("hay", "straw", 2), None);
        assert_eq!(slips("", "ab", 2), Some(2));
    }

    proptest! {
        #[test]
        fn prop_slips_agree_with_strsim(left in "[abc]{0,7}", right in "[abc]{0,7}", most in 0_usize..4) {
            let whole = strsim::osa_distance(&left, &right);
            prop_assert_eq!(slips(&left, &right, most), (whole <= most).then_some(whole));
        }
    }
}
