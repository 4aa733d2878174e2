//! Where the word of a marked value stands: beside its line, where it covers least.

use crate::picture::Anchor;

/// Height of a word with the room around it [px].
const HIGH: f64 = 17.0;
/// From the line to the foot of a word above it, and of one below it [px].
const ABOVE: f64 = 5.0;
const BELOW: f64 = 14.0;
/// From the end of the plot to the word [px].
const INSET: f64 = 6.0;
/// Width of a letter [px].
const LETTER: f64 = 7.0;

/// Points from left to right [px].
pub(crate) type Line = Vec<(f64, f64)>;

/// What is drawn already [px].
#[derive(Default)]
pub(crate) struct Drawn {
    /// Edges of the plot: left, top, right, bottom.
    pub plot: (f64, f64, f64, f64),
    /// Bands, the wide one first: upper and lower edge as lines from left to right.
    pub bands: Vec<(Line, Line)>,
    /// Lines from left to right.
    pub lines: Vec<Line>,
    /// What stands at a place: readings.
    pub dots: Vec<(f64, f64)>,
}

/// Where a word hangs and how.
pub(crate) type Hung = ((f64, f64), Anchor);

/// The place of a word beside its line at `y`: at either end, above or below it, and of these the
/// first that covers least.
pub(crate) fn beside(word: &str, y: f64, drawn: &Drawn) -> Hung {
    #[allow(clippy::cast_precision_loss)] // a word
    let wide = word.chars().count() as f64 * LETTER;
    let (left, top, right, bottom) = drawn.plot;
    let feet = [y - ABOVE, y + BELOW];
    let fits = |foot: f64| foot - HIGH + 3.0 >= top && foot + 3.0 <= bottom;
    let ends = [(right - INSET, Anchor::End), (left + INSET, Anchor::Start)];
    let mut best: Option<(u32, Hung)> = None;
    for (x, anchor) in ends {
        for foot in feet.into_iter().filter(|foot| fits(*foot)) {
            let from = if anchor == Anchor::End { x - wide } else { x };
            let covered = drawn.covered((from, foot - HIGH + 3.0, from + wide, foot + 3.0));
            if best.as_ref().is_none_or(|(least, _)| covered < *least) {
                best = Some((covered, ((x, foot), anchor)));
            }
        }
    }
    best.map_or(((right - INSET, y - ABOVE), Anchor::End), |(_, hung)| hung)
}

impl Drawn {
    /// How much a box covers: a line or a dot much, a wide band least.
    fn covered(&self, (left, top, right, bottom): (f64, f64, f64, f64)) -> u32 {
        const LOOKS: u32 = 12;
        let mut covered = 0;
        for look in 0..=LOOKS {
            let x = left + (right - left) * f64::from(look) / f64::from(LOOKS);
            let crossed =
                |line: &&Line| height_at(line, x).is_some_and(|y| (top..=bottom).contains(&y));
            covered += 8 * count(self.lines.iter().filter(crossed).count());
            for (upper, lower) in &self.bands {
                let within = height_at(upper, x)
                    .zip(height_at(lower, x))
                    .is_some_and(|(upper, lower)| upper < bottom && lower > top);
                covered += u32::from(within);
            }
        }
        let hidden = |(x, y): &&(f64, f64)| {
            (left - 4.0..=right + 4.0).contains(x) && (top - 4.0..=bottom + 4.0).contains(y)
        };
        covered + 24 * count(self.dots.iter().filter(hidden).count())
    }
}

fn count(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX / 64)
}

/// How high a line from left to right lies at `x`; nothing beyond its ends.
fn height_at(line: &[(f64, f64)], x: f64) -> Option<f64> {
    let next = line.partition_point(|point| point.0 < x);
    let to = line.get(next)?;
    let Some(from) = next.checked_sub(1).and_then(|before| line.get(before)) else {
        return (to.0 - x < 0.5).then_some(to.1);
    };
    let share = (x - from.0) / (to.0 - from.0).max(1e-9);
    Some(from.1 + (to.1 - from.1) * share)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rising(from: f64, to: f64) -> Vec<(f64, f64)> {
        vec![(36.0, from), (390.0, to)]
    }

    #[test]
    fn a_word_stands_where_nothing_is_drawn() {
        let mut drawn = Drawn {
            plot: (36.0, 22.0, 390.0, 180.0),
            ..Drawn::default()
        };
        let at_the_end = ((384.0, 95.0), Anchor::End);
        assert_eq!(beside("too wet", 100.0, &drawn), at_the_end);
        // A band that rises to the right leaves room above the line at the left.
        drawn
            .bands
            .push((rising(120.0, 50.0), rising(170.0, 130.0)));
        assert_eq!(
            beside("too wet", 100.0, &drawn),
            ((42.0, 95.0), Anchor::Start)
        );
        // With a reading there it goes below the line, where it only touches the band.
        drawn.dots.push((60.0, 90.0));
        assert_eq!(
            beside("too wet", 100.0, &drawn),
            ((42.0, 114.0), Anchor::Start)
        );
        // A line runs where the word would stand.
        let only_below = Drawn {
            plot: drawn.plot,
            lines: vec![rising(90.0, 90.0)],
            ..Drawn::default()
        };
        assert_eq!(
            beside("too wet", 100.0, &only_below),
            ((384.0, 114.0), Anchor::End)
        );
    }

    #[test]
    fn a_word_keeps_within_the_plot() {
        let drawn = Drawn {
            plot: (36.0, 22.0, 390.0, 180.0),
            ..Drawn::default()
        };
        let ((_, near_top), _) = beside("hot", 26.0, &drawn);
        let ((_, near_foot), _) = beside("dry", 178.0, &drawn);
        assert_eq!((near_top, near_foot), (40.0, 173.0));
    }

    #[test]
    fn a_line_is_as_high_between_its_points_and_nowhere_beyond() {
        let line = [(0.0, 0.0), (10.0, 20.0)];
        assert_eq!(height_at(&line, 5.0), Some(10.0));
        assert_eq!(height_at(&line, 0.0), Some(0.0));
        assert_eq!(height_at(&line, 11.0), None);
        assert_eq!(height_at(&line, -3.0), None);
    }
}
