//! A value over time: what is to be expected as bands, what was read as marks, and
//! below it what was done.

use crate::events::{self, Doing, Event, LANE};
use crate::mark_words::{self, Drawn};
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
    /// What was or will be done.
    pub events: Vec<Event>,
    /// What each kind of doing is called.
    pub doings: Vec<(Doing, String)>,
    /// Days that may be named on the axis, with their names, the most wanted first; without any the
    /// days are counted.
    pub dates: Vec<(f64, String)>,
    /// What the present is called on the axis.
    pub now: String,
    /// Values that mean something, with their word: "hot from here".
    pub marks: Vec<(f64, String)>,
    /// The unit, for the axis: "°C".
    pub unit: String,
}

/// Room around the plot.
const LEFT: f64 = 36.0;
const RIGHT: f64 = 10.0;
const TOP: f64 = 22.0;
const BOTTOM: f64 = 24.0;
/// Room for the word below days that are only counted.
const COUNTED: f64 = 14.0;
/// Width of a letter of the axes.
const LETTER: f64 = 6.7;

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
    rounded(low - room, high + room)
}

/// Ends of an axis on round numbers, where those are not far beyond.
fn rounded(low: f64, high: f64) -> (f64, f64) {
    let step = step(high - low, MOST_VALUES);
    let near = 0.4 * step;
    let (below, above) = ((low / step).floor() * step, (high / step).ceil() * step);
    (
        if low - below <= near { below } else { low },
        if above - high <= near { above } else { high },
    )
}

/// The most numbers at the axis of values.
const MOST_VALUES: f64 = 6.0;

impl OverTime {
    /// Room that its lanes take below a picture [px].
    fn lanes_px(&self) -> f64 {
        let shown = |event: &&Event| (self.from_day..=self.to_day).contains(&event.day);
        let shown: Vec<Event> = self.events.iter().filter(shown).cloned().collect();
        let lanes = u32::try_from(events::kinds(&shown).count()).unwrap_or(0);
        if lanes == 0 {
            0.0
        } else {
            f64::from(lanes) * LANE + 6.0
        }
    }

    fn scale(&self, width: f64, height: f64) -> Scale {
        let counted = if self.dates.is_empty() { COUNTED } else { 0.0 };
        Scale {
            days: (self.from_day, self.to_day.max(self.from_day + 1e-3)),
            values: values_of(self),
            right: width - RIGHT,
            bottom: height - BOTTOM - counted,
        }
    }

    /// Where values lie in the picture of [`over_time`] [px].
    #[must_use]
    pub fn places(&self, values: &[(f64, f64)], width: f64, height: f64) -> Vec<(f64, f64)> {
        let scale = self.scale(width, height);
        values
            .iter()
            .map(|(day, value)| (scale.x(*day), scale.y(*value)))
            .collect()
    }

    /// Upper and lower edge of the plot in that picture [px].
    #[must_use]
    pub fn plot_px(&self, width: f64, height: f64) -> (f64, f64) {
        (TOP, self.scale(width, height).bottom)
    }
}

/// Draws it at `width` by `height` pixels, and below that a lane for each kind of doing.
#[must_use]
pub fn over_time(shown: &OverTime, width: f64, height: f64) -> Picture {
    let scale = shown.scale(width, height);
    let mut shapes = vec![Shape::Rectangle {
        role: "time-ground",
        x: LEFT,
        y: TOP,
        width: scale.right - LEFT,
        height: scale.bottom - TOP,
        corner: 0.0,
    }];
    axes(shown, &scale, &mut shapes);
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
    }
    // Over the bands, which would hide them.
    for (value, _) in &shown.marks {
        let y = scale.y(*value);
        shapes.push(Shape::Line {
            role: "time-mark",
            points: vec![(LEFT, y), (scale.right, y)],
        });
    }
    if points.len() > 1 {
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
    for (day, value) in shown.readings.iter().filter(|(day, _)| scale.shows(*day)) {
        shapes.push(Shape::Circle {
            role: "time-reading",
            centre: (scale.x(*day), scale.y(*value)),
            radius: 4.0,
        });
    }
    // Words last: nothing covers them.
    let drawn = drawn(shown, &scale, &points);
    for (value, word) in &shown.marks {
        let (at, anchor) = mark_words::beside(word, scale.y(*value), &drawn);
        shapes.push(Shape::Text {
            role: "time-word",
            at,
            anchor,
            text: word.clone(),
        });
    }
    let shown_events: Vec<Event> = shown
        .events
        .iter()
        .filter(|event| scale.shows(event.day))
        .cloned()
        .collect();
    events::lanes(
        &shown_events,
        &shown.doings,
        |day| scale.x(day),
        (LEFT, scale.right, height + 2.0),
        &mut shapes,
    );
    Picture {
        width,
        height: height + shown.lanes_px(),
        shapes,
    }
}

/// What a word could cover.
fn drawn(shown: &OverTime, scale: &Scale, points: &[BandPoint]) -> Drawn {
    let line = |value: fn(&BandPoint) -> f64| -> Vec<(f64, f64)> {
        let at = |point: &BandPoint| (scale.x(point.day), scale.y(value(point)));
        points.iter().map(at).collect()
    };
    let at = |(day, value): &(f64, f64)| (scale.x(*day), scale.y(*value));
    let others = shown.others.iter();
    Drawn {
        plot: (LEFT, TOP, scale.right, scale.bottom),
        bands: vec![
            (line(|point| point.high), line(|point| point.low)),
            (line(|point| point.upper), line(|point| point.lower)),
        ],
        lines: others
            .map(|(_, line)| line.iter().map(at).collect())
            .chain([line(|point| point.middle)])
            .collect(),
        dots: shown
            .readings
            .iter()
            .filter(|(day, _)| scale.shows(*day))
            .map(at)
            .collect(),
    }
}

fn axes(shown: &OverTime, scale: &Scale, shapes: &mut Vec<Shape>) {
    let line = |role, points| Shape::Line { role, points };
    let word = |at: (f64, f64), anchor, text: String| Shape::Text {
        role: "time-tick",
        at,
        anchor,
        text,
    };
    for value in ticks(scale.values.0, scale.values.1, MOST_VALUES) {
        // Lines of one pixel lie on the pixels of the screen.
        let y = scale.y(value).round() + 0.5;
        let role = if value.abs() < 1e-9 {
            "time-zero"
        } else {
            "time-grid"
        };
        shapes.push(line(role, vec![(LEFT, y), (scale.right, y)]));
        shapes.push(word((LEFT - 6.0, y + 4.0), Anchor::End, number(value)));
    }
    for (day, text) in days_named(shown, scale) {
        let x = scale.x(day).round() + 0.5;
        if text != shown.now {
            shapes.push(line("time-grid", vec![(x, TOP), (x, scale.bottom)]));
        }
        shapes.push(line(
            "time-edge",
            vec![(x, scale.bottom), (x, scale.bottom + 4.0)],
        ));
        shapes.push(word((x, scale.bottom + 17.0), Anchor::Middle, text));
    }
    let foot = scale.bottom.round() + 0.5;
    shapes.push(line("time-edge", vec![(LEFT, foot), (scale.right, foot)]));
    shapes.push(Shape::Text {
        role: "time-axis",
        at: (LEFT - 6.0, TOP - 9.0),
        anchor: Anchor::End,
        text: shown.unit.clone(),
    });
    if shown.dates.is_empty() {
        shapes.push(Shape::Text {
            role: "time-axis",
            at: (scale.right, scale.bottom + 32.0),
            anchor: Anchor::End,
            text: "days".to_owned(),
        });
    }
}

/// The days that are named at the axis: now first, and of the others those that stand clear of it
/// and of each other.
fn days_named(shown: &OverTime, scale: &Scale) -> Vec<(f64, String)> {
    if shown.dates.is_empty() {
        let most = ((scale.right - LEFT) / 48.0).max(2.0);
        let days = ticks(scale.days.0, scale.days.1, most).into_iter();
        return days.map(|day| (day, number(day))).collect();
    }
    let half = |text: &str| {
        #[allow(clippy::cast_precision_loss)] // short words
        let letters = text.chars().count() as f64;
        letters * LETTER / 2.0 + 4.0
    };
    let mut named: Vec<(f64, String)> = Vec::new();
    let now = (!shown.now.is_empty() && scale.shows(0.0)).then(|| (0.0, shown.now.clone()));
    for (day, text) in now.into_iter().chain(shown.dates.iter().cloned()) {
        let x = scale.x(day);
        let is_clear = named
            .iter()
            .all(|(other, word)| (scale.x(*other) - x).abs() >= half(word) + half(&text));
        let is_within = x + half(&text) <= scale.right + RIGHT + 4.0 && x - half(&text) >= 0.0;
        if scale.shows(day) && is_clear && is_within {
            named.push((day, text));
        }
    }
    named
}

/// A number of an axis, without digits that mean nothing.
pub(crate) fn number(value: f64) -> String {
    let rounded = (value * 1000.0).round() / 1000.0;
    // Minus nothing is nothing.
    let minus = if rounded < 0.0 { "\u{2212}" } else { "" };
    format!("{minus}{}", rounded.abs())
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
            events: [
                (-1.0, Doing::Fed),
                (-0.9, Doing::Turned),
                (10.0, Doing::Turned),
            ]
            .map(|(day, doing)| Event {
                day,
                doing,
                planned: day > 0.0,
            })
            .to_vec(),
            doings: Vec::new(),
            dates: Vec::new(),
            now: String::new(),
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
                count("time-done"),
                count("time-wide"),
                count("time-now")
            ),
            (1, 2, 1, 1)
        );
        assert_eq!(picture.height, 240.0 + 2.0 * LANE + 6.0);
        for shape in &picture.shapes {
            if let Shape::Line { points, .. } | Shape::Area { points, .. } = shape {
                assert!(
                    points
                        .iter()
                        .all(|(x, y)| (0.0..=360.0).contains(x)
                            && (0.0..=picture.height).contains(y))
                );
            }
        }
    }

    #[test]
    fn named_days_stand_clear_of_now_and_of_each_other_on_the_narrowest_phone() {
        for width in [250.0, 292.0, 546.0] {
            let shown = OverTime {
                from_day: -30.0,
                to_day: 30.0,
                dates: (-4..5)
                    .map(|week| (7.0 * f64::from(week) + 1.0, format!("{} Dec", 10 + week)))
                    .collect(),
                now: "now".to_owned(),
                ..OverTime::default()
            };
            let scale = shown.scale(width, 200.0);
            let mut ends: Vec<(f64, f64, String)> = days_named(&shown, &scale)
                .into_iter()
                .map(|(day, text)| {
                    let half = text.chars().count() as f64 * LETTER / 2.0;
                    (scale.x(day) - half, scale.x(day) + half, text)
                })
                .collect();
            ends.sort_by(|one, other| one.0.total_cmp(&other.0));
            assert!(ends.len() >= 4, "{width}: {ends:?}");
            assert!(ends.iter().any(|end| end.2 == "now"));
            assert!(
                ends.windows(2).all(|pair| pair[0].1 + 6.0 < pair[1].0),
                "{ends:?}"
            );
            assert!(ends.iter().all(|end| end.0 >= 0.0 && end.1 <= width));
        }
    }

    #[test]
    fn an_axis_ends_on_a_round_number_where_one_is_near() {
        assert_eq!(rounded(-3.5, 58.5), (-3.5, 60.0));
        assert_eq!(rounded(1.0, 99.0), (0.0, 100.0));
    }

    #[test]
    fn places_are_those_of_the_line() {
        let band = |day: f64, middle: f64| BandPoint {
            day,
            low: middle,
            lower: middle,
            middle,
            upper: middle,
            high: middle,
        };
        let shown = OverTime {
            to_day: 2.0,
            bands: vec![band(0.0, 5.0), band(1.0, 9.0), band(2.0, 7.0)],
            ..OverTime::default()
        };
        let picture = over_time(&shown, 300.0, 200.0);
        let line = picture.shapes.iter().find_map(|shape| match shape {
            Shape::Line {
                role: "time-middle",
                points,
            } => Some(points.clone()),
            _ => None,
        });
        let values = [(0.0, 5.0), (1.0, 9.0), (2.0, 7.0)];
        assert_eq!(line, Some(shown.places(&values, 300.0, 200.0)));
    }
}
