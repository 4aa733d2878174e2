//! What a probe showed over a season, on the calendar: months below, turnings as flags.

use crate::mark_words::{self, Drawn};
use crate::over_time::{number, ticks};
use crate::picture::{Anchor, Picture, Shape};

/// A season of one heap; times in milliseconds since 1970, local.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Season {
    /// When it begins.
    pub from_ms: f64,
    /// When it ends.
    pub to_ms: f64,
    /// When each month begins, and what it is called.
    pub months: Vec<(f64, String)>,
    /// What was read, in the order of time.
    pub readings: Vec<(f64, f64)>,
    /// When it was turned.
    pub turned: Vec<f64>,
    /// A value that means something, with its word.
    pub mark: Option<(f64, String)>,
    /// The unit.
    pub unit: String,
}

const LEFT: f64 = 40.0;
const RIGHT: f64 = 8.0;
const TOP: f64 = 24.0;
const BOTTOM: f64 = 26.0;
/// A longer time without a reading is not bridged by a line [ms].
const GAP_MS: f64 = 14.0 * 86_400_000.0;
/// Least room for the name of a month [px].
const MONTH: f64 = 34.0;

/// Draws it at `width` by `height` pixels.
#[must_use]
pub fn season(shown: &Season, width: f64, height: f64) -> Picture {
    let (right, bottom) = (width - RIGHT, height - BOTTOM);
    let values = shown.readings.iter().map(|(_, value)| *value);
    let values = values.chain(shown.mark.iter().map(|(value, _)| *value));
    let (low, high) = values.fold((0.0_f64, 20.0_f64), |(low, high), value| {
        (low.min(value), high.max(value))
    });
    let high = high + (high - low) * 0.06;
    let span = (shown.to_ms - shown.from_ms).max(1.0);
    let x = |at: f64| LEFT + (right - LEFT) * ((at - shown.from_ms) / span).clamp(0.0, 1.0);
    let y = |value: f64| bottom + (TOP - bottom) * ((value - low) / (high - low)).clamp(0.0, 1.0);
    let word = |at: (f64, f64), anchor, text: String| Shape::Text {
        role: "time-tick",
        at,
        anchor,
        text,
    };
    let line = |role, points: Vec<(f64, f64)>| Shape::Line { role, points };
    let mut shapes = Vec::new();
    for value in ticks(low, high, 5.0) {
        let y = y(value);
        shapes.push(line("time-grid", vec![(LEFT, y), (right, y)]));
        shapes.push(word((LEFT - 6.0, y + 4.0), Anchor::End, number(value)));
    }
    shapes.push(word(
        (LEFT - 6.0, TOP - 10.0),
        Anchor::End,
        shown.unit.clone(),
    ));
    let mut taken = f64::MIN;
    for (index, (begins, name)) in shown.months.iter().enumerate() {
        let (from, to) = (
            x(*begins),
            shown.months.get(index + 1).map_or(right, |next| x(next.0)),
        );
        if *begins > shown.from_ms {
            shapes.push(line("time-grid", vec![(from, TOP), (from, bottom + 4.0)]));
        }
        let middle = f64::midpoint(from, to);
        if to - from > MONTH * 0.6 && middle - MONTH / 2.0 >= taken {
            shapes.push(word((middle, bottom + 16.0), Anchor::Middle, name.clone()));
            taken = middle + MONTH / 2.0;
        }
    }
    shapes.push(line("cut-tick", vec![(LEFT, bottom), (right, bottom)]));
    if let Some((value, _)) = &shown.mark {
        shapes.push(line(
            "time-mark",
            vec![(LEFT, y(*value)), (right, y(*value))],
        ));
    }
    for at in &shown.turned {
        let x = x(*at);
        shapes.push(line("time-flag", vec![(x, TOP), (x, bottom)]));
        shapes.push(Shape::Area {
            role: "map-move-head",
            points: vec![(x - 4.5, TOP - 9.0), (x + 4.5, TOP - 9.0), (x, TOP)],
        });
    }
    for runs in shown
        .readings
        .chunk_by(|one, next| next.0 - one.0 <= GAP_MS)
    {
        if runs.len() > 1 {
            let points = runs.iter().map(|(at, value)| (x(*at), y(*value))).collect();
            shapes.push(line("cut-outline", points));
        }
    }
    for (at, value) in &shown.readings {
        shapes.push(Shape::Circle {
            role: "time-reading",
            centre: (x(*at), y(*value)),
            radius: 2.6,
        });
    }
    if let Some((value, name)) = &shown.mark {
        let mark = y(*value);
        let readings = shown.readings.iter().map(|(at, value)| (x(*at), y(*value)));
        // A word stands clear of the flags and of their lines.
        let flags = shown.turned.iter().map(|at| x(*at));
        let flags = flags.flat_map(|x| [(x, TOP - 5.0), (x, mark - 8.0), (x, mark + 8.0)]);
        let drawn = Drawn {
            plot: (LEFT, TOP - 14.0, right, bottom),
            dots: readings.chain(flags).collect(),
            ..Drawn::default()
        };
        let (at, anchor) = mark_words::beside(name, mark, &drawn);
        shapes.push(Shape::Text {
            role: "time-word",
            at,
            anchor,
            text: name.clone(),
        });
    }
    Picture {
        width,
        height,
        shapes,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_season_stays_within_its_picture_and_bridges_no_gap() {
        let day = 86_400_000.0;
        let shown = Season {
            from_ms: 0.0,
            to_ms: 90.0 * day,
            months: vec![(0.0, "May".to_owned()), (31.0 * day, "June".to_owned())],
            readings: vec![(day, 55.0), (3.0 * day, 61.0), (60.0 * day, 20.0)],
            turned: vec![10.0 * day],
            mark: Some((55.0, "hot".to_owned())),
            unit: "°C".to_owned(),
        };
        let picture = season(&shown, 400.0, 160.0);
        let lines = |wanted: &str| {
            let of = |shape: &&Shape| matches!(shape, Shape::Line { role, .. } if *role == wanted);
            picture.shapes.iter().filter(of).count()
        };
        assert_eq!((lines("cut-outline"), lines("time-flag")), (1, 1));
        for shape in &picture.shapes {
            if let Shape::Line { points, .. } | Shape::Area { points, .. } = shape {
                assert!(
                    points
                        .iter()
                        .all(|(x, y)| (0.0..=400.0).contains(x) && (0.0..=160.0).contains(y))
                );
            }
        }
    }
}
