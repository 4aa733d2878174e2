//! A value over time: what is to be expected as bands, what was read as marks, what was done as flags.

use crate::picture::{Anchor, Picture, Shape};

/// What is to be expected at one time: half of the cases lie within `lower` and `upper`, nine of
/// ten within `low` and `high`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BandPoint {
    /// When [d].
    pub day: f64,
    /// One case in twenty lies below.
    pub low: f64,
    /// One case in four lies below.
    pub lower: f64,
    /// As many cases lie above as below.
    pub middle: f64,
    /// One case in four lies above.
    pub upper: f64,
    /// One case in twenty lies above.
    pub high: f64,
}

/// A value over time.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OverTime {
    /// First day that is shown; below 0 is the past.
    pub from_day: f64,
    /// Last day that is shown.
    pub to_day: f64,
    /// What is to be expected, in the order of time.
    pub bands: Vec<BandPoint>,
    /// What else may come: other ways to go on, each with its name.
    pub others: Vec<(String, Vec<(f64, f64)>)>,
    /// What was read.
    pub readings: Vec<(f64, f64)>,
    /// What was or will be done: a day and a word.
    pub flags: Vec<(f64, String)>,
    /// Values that mean something, with their word: "hot from here".
    pub marks: Vec<(f64, String)>,
    /// The unit, for the axis: "°C".
    pub unit: String,
}

/// Room around the plot.
const LEFT: f64 = 44.0;
const RIGHT: f64 = 10.0;
const TOP: f64 = 26.0;
const BOTTOM: f64 = 36.0;

struct Scale {
    days: (f64, f64),
    values: (f64, f64),
    right: f64,
    bottom: f64,
}

impl Scale {
    fn x(&self, day: f64) -> f64 {
        LEFT + (self.right - LEFT)
            * ((day - self.days.0) / (self.days.1 - self.days.0)).clamp(0.0, 1.0)
    }

    fn y(&self, value: f64) -> f64 {
        let share = (value - self.values.0) / (self.values.1 - self.values.0);
        self.bottom + (TOP - self.bottom) * share.clamp(0.0, 1.0)
    }

    fn shows(&self, day: f64) -> bool {
        (self.days.0..=self.days.1).contains(&day)
    }
}

/// A step for the ticks of an axis: 1, 2 or 5 times a power of ten, so that at most `most` fit.
fn step(span: f64, most: f64) -> f64 {
    let least = span / most;
    let mut power = 1e-6;
    while power * 10.0 <= least {
        power *= 10.0;
    }
    [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|factor| factor * power)
        .find(|step| *step >= least)
        .unwrap_or(10.0 * power)
}

pub(crate) fn ticks(low: f64, high: f64, most: f64) -> Vec<f64> {
    let step = step((high - low).max(1e-6), most);
    let first = (low / step).ceil();
    let mut all = Vec::new();
    let mut index = 0.0;
    while (first + index) * step <= high + step * 1e-9 && index < 2.0 * most {
        all.push((first + index) * step);
        index += 1.0;
    }
    all
}

fn values_of(shown: &OverTime) -> (f64, f64) {
    let all = shown
        .bands
        .iter()
        .flat_map(|point| [point.low, point.high])
        .chain(
            shown
                .others
                .iter()
                .flat_map(|(_, line)| line.iter().map(|(_, value)| *value)),
        )
        .chain(shown.readings.iter().map(|(_, value)| *value))
        .chain(shown.marks.iter().map(|(value, _)| *value))
        .filter(|value| value.is_finite());
    let (low, high) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
        (low.min(value), high.max(value))
    });
    if low > high {
        return (0.0, 1.0);
    }
    let room = ((high - low) * 0.06).max(0.5);
    (low - room, high + room)
}

/// Draws it at `width` by `height` pixels.
#[must_use]
pub fn over_time(shown: &OverTime, width: f64, height: f64) -> Picture {
    let scale = Scale {
        days: (shown.from_day, shown.to_day.max(shown.from_day + 1e-3)),
        values: values_of(shown),
        right: width - RIGHT,
        bottom: height - BOTTOM,
    };
    let mut shapes = vec![Shape::Rectangle {
        role: "time-ground",
        x: LEFT,
        y: TOP,
        width: scale.right - LEFT,
        height: scale.bottom - TOP,
        corner: 4.0,
    }];
    axes(shown, &scale, &mut shapes);
    for (value, word) in &shown.marks {
        let y = scale.y(*value);
        shapes.push(Shape::Line {
            role: "time-mark",
            points: vec![(LEFT, y), (scale.right, y)],
        });
        shapes.push(Shape::Text {
            role: "time-word",
            at: (scale.right - 6.0, y - 5.0),
            anchor: Anchor::End,
            text: word.clone(),
        });
    }
    let points: Vec<BandPoint> = shown
        .bands
        .iter()
        .copied()
        .filter(|point| scale.shows(point.day))
        .collect();
    if points.len() > 1 {
        for (role, below, above) in [
            (
                "time-wide",
                (|point| point.low) as fn(&BandPoint) -> f64,
                (|point| point.high) as fn(&BandPoint) -> f64,
            ),
            ("time-half", |point| point.lower, |point| point.upper),
        ] {
            let up = points
                .iter()
                .map(|point| (scale.x(point.day), scale.y(above(point))));
            let down = points
                .iter()
                .rev()
                .map(|point| (scale.x(point.day), scale.y(below(point))));
            shapes.push(Shape::Area {
                role,
                points: up.chain(down).collect(),
            });
        }
        shapes.push(Shape::Line {
            role: "time-middle",
            points: points
                .iter()
                .map(|point| (scale.x(point.day), scale.y(point.middle)))
                .collect(),
        });
    }
    const OTHERS: [&str; 3] = ["time-other-0", "time-other-1", "time-other-2"];
    for ((_, line), role) in shown.others.iter().zip(OTHERS.into_iter().cycle()) {
        shapes.push(Shape::Line {
            role,
            points: line
                .iter()
                .filter(|(day, _)| scale.shows(*day))
                .map(|(day, value)| (scale.x(*day), scale.y(*value)))
                .collect(),
        });
    }
    if shown.from_day < 0.0 && shown.to_day > 0.0 {
        shapes.push(Shape::Line {
            role: "time-now",
            points: vec![(scale.x(0.0), TOP), (scale.x(0.0), scale.bottom)],
        });
    }
    flags(shown, &scale, &mut shapes);
    for (day, value) in shown.readings.iter().filter(|(day, _)| scale.shows(*day)) {
        shapes.push(Shape::Circle {
            role: "time-reading",
            centre: (scale.x(*day), scale.y(*value)),
            radius: 4.0,
        });
    }
    Picture {
        width,
        height,
        shapes,
    }
}

fn axes(shown: &OverTime, scale: &Scale, shapes: &mut Vec<Shape>) {
    let across = (scale.right - LEFT) / 48.0;
    for day in ticks(scale.days.0, scale.days.1, across.max(2.0)) {
        let x = scale.x(day);
        shapes.push(Shape::Line {
            role: "time-grid",
            points: vec![(x, TOP), (x, scale.bottom)],
        });
        shapes.push(Shape::Text {
            role: "time-tick",
            at: (x, scale.bottom + 16.0),
            anchor: Anchor::Middle,
            text: number(day),
        });
    }
    for value in ticks(scale.values.0, scale.values.1, 6.0) {
        let y = scale.y(value);
        shapes.push(Shape::Line {
            role: "time-grid",
            points: vec![(LEFT, y), (scale.right, y)],
        });
        shapes.push(Shape::Text {
            role: "time-tick",
            at: (LEFT - 6.0, y + 4.0),
            anchor: Anchor::End,
            text: number(value),
        });
    }
    shapes.push(Shape::Text {
        role: "time-axis",
        at: (LEFT - 6.0, TOP - 10.0),
        anchor: Anchor::End,
        text: shown.unit.clone(),
    });
    shapes.push(Shape::Text {
        role: "time-axis",
        at: (scale.right, scale.bottom + 32.0),
        anchor: Anchor::End,
        text: "days".to_owned(),
    });
}

/// Flags of what was done: words that would cover each other are left out, their lines are not.
fn flags(shown: &OverTime, scale: &Scale, shapes: &mut Vec<Shape>) {
    const LETTER: f64 = 6.6;
    let mut taken = LEFT - LETTER;
    for (day, word) in shown.flags.iter().filter(|(day, _)| scale.shows(*day)) {
        let x = scale.x(*day);
        shapes.push(Shape::Line {
            role: "time-flag",
            points: vec![(x, TOP - 4.0), (x, scale.bottom)],
        });
        #[allow(clippy::cast_precision_loss)] // words are short
        let half = word.chars().count() as f64 * LETTER / 2.0;
        let middle = x.clamp(LEFT + half, (scale.right - half).max(LEFT + half));
        if middle - half > taken {
            shapes.push(Shape::Text {
                role: "time-word",
                at: (middle, TOP - 10.0),
                anchor: Anchor::Middle,
                text: word.clone(),
            });
            taken = middle + half + LETTER;
        }
    }
}

/// A number of an axis, without digits that mean nothing.
pub(crate) fn number(value: f64) -> String {
    let rounded = (value * 1000.0).round() / 1000.0;
    // Minus nothing is nothing.
    format!("{}", if rounded == 0.0 { 0.0 } else { rounded })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_lie_at_round_numbers_within_the_span() {
        assert_eq!(
            ticks(0.0, 60.0, 6.0),
            [0.0, 10.0, 20.0, 30.0, 40.0, 50.0, 60.0]
        );
        assert_eq!(ticks(-3.0, 7.0, 5.0), [-2.0, 0.0, 2.0, 4.0, 6.0]);
        assert_eq!(
            ticks(0.12, 0.31, 4.0),
            [0.15000000000000002, 0.2, 0.25, 0.30000000000000004]
        );
        assert_eq!(ticks(5.0, 5.0, 4.0).len(), 1);
    }

    #[test]
    fn over_time_draws_bands_readings_and_flags_within_the_plot() {
        let shown = OverTime {
            from_day: -5.0,
            to_day: 30.0,
            bands: (0..=30)
                .map(|day| {
                    let middle = 20.0 + f64::from(day);
                    BandPoint {
                        day: f64::from(day),
                        low: middle - 9.0,
                        lower: middle - 3.0,
                        middle,
                        upper: middle + 3.0,
                        high: middle + 9.0,
                    }
                })
                .collect(),
            others: vec![("not turned".to_owned(), vec![(0.0, 20.0), (30.0, 25.0)])],
            readings: vec![(-4.0, 31.0), (-200.0, 5.0)],
            flags: vec![
                (-1.0, "fed".to_owned()),
                (-0.9, "turned".to_owned()),
                (10.0, "turn".to_owned()),
            ],
            marks: vec![(55.0, "hot".to_owned())],
            unit: "°C".to_owned(),
        };
        let picture = over_time(&shown, 360.0, 240.0);
        let count = |wanted: &str| {
            picture
                .shapes
                .iter()
                .filter(|shape| matches!(shape, Shape::Circle { role, .. } | Shape::Line { role, .. } | Shape::Area { role, .. } if *role == wanted))
                .count()
        };
        assert_eq!(
            (
                count("time-reading"),
                count("time-flag"),
                count("time-wide"),
                count("time-now")
            ),
            (1, 3, 1, 1)
        );
        for shape in &picture.shapes {
            if let Shape::Line { points, .. } | Shape::Area { points, .. } = shape {
                assert!(
                    points
                        .iter()
                        .all(|(x, y)| (0.0..=360.0).contains(x) && (0.0..=240.0).contains(y))
                );
            }
        }
    }
}
