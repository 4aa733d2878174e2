//! Which known word did the keeper mean? The nearest by single slips of the finger.

/// Longer words get no suggestion: nobody's vessel is called that, and the work stays small.
const LONGEST_WORD: usize = 24;

/// The known word with the fewest slips from `word`, the first of equals; `None` when even that
/// takes more than one slip (two from four letters on) or would change the whole word.
pub(crate) fn nearest<'a>(word: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let letters: Vec<char> = word.chars().take(LONGEST_WORD + 1).collect();
    if letters.len() > LONGEST_WORD {
        return None;
    }
    let most = if letters.len() < 4 { 1 } else { 2 };
    let mut best: Option<(usize, &str)> = None;
    for candidate in known {
        let other: Vec<char> = candidate.chars().take(LONGEST_WORD + most + 1).collect();
        if other.len().abs_diff(letters.len()) > most {
            continue;
        }
        let count = slips(&letters, &other);
        let shorter = letters.len().min(other.len());
        let fits = count <= most && count < shorter;
        if fits && best.is_none_or(|(fewest, _)| count < fewest) {
            best = Some((count, candidate));
        }
    }
    best.map(|(_, candidate)| candidate)
}

/// Letters added, left out, changed, or swapped with their neighbour, from `from` to `to`
/// (optimal string alignment distance).
fn slips(from: &[char], to: &[char]) -> usize {
    let mut two_back: Vec<usize> = Vec::new();
    let mut back: Vec<usize> = (0..=to.len()).collect();
    for (row, &letter) in from.iter().enumerate() {
        let mut current = vec![row + 1];
        for (column, &other) in to.iter().enumerate() {
            let changed = back[column] + usize::from(letter != other);
            let mut fewest = changed.min(back[column + 1] + 1).min(current[column] + 1);
            if row > 0 && column > 0 && letter == to[column - 1] && from[row - 1] == other {
                fewest = fewest.min(two_back[column - 1] + 1);
            }
            current.push(fewest);
        }
        two_back = std::mem::replace(&mut back, current);
    }
    back[to.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slips_counts_each_kind() {
        let count = |from: &str, to: &str| {
            let letters = |word: &str| word.chars().collect::<Vec<_>>();
            slips(&letters(from), &letters(to))
        };
        assert_eq!(count("bucket", "bucket"), 0);
        assert_eq!(count("buket", "bucket"), 1);
        assert_eq!(count("buckket", "bucket"), 1);
        assert_eq!(count("bicket", "bucket"), 1);
        assert_eq!(count("bukcet", "bucket"), 1);
        assert_eq!(count("kitten", "sitting"), 3);
        assert_eq!(count("", "abc"), 3);
    }

    #[test]
    fn nearest_suggests_only_what_is_near() {
        let known = ["bucket", "barrow", "kg", "g"];
        let find = |word| nearest(word, known.into_iter());
        assert_eq!(find("bukets"), Some("bucket"));
        assert_eq!(find("kq"), Some("kg"));
        assert_eq!(find("avocado"), None);
        assert_eq!(find("z"), None);
        assert_eq!(find(&"b".repeat(1000)), None);
    }
}
