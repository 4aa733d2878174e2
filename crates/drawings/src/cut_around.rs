//! What stands around a heap that is cut open: walls, ground, rulers, probes.

use heapwright_quantity::UnitSystem;

use crate::cross_section::{Cut, Frame, SIDE, Sides};
use crate::picture::{Anchor, Picture, Shape};

/// Thickness of a wall [px].
const WALL: f64 = 5.0;
/// A board, and the gap to the next [px].
const BOARD: f64 = 11.0;
const GAP: f64 = 5.0;
/// Width of a letter, at most on average [px].
const LETTER: f64 = 6.9;

/// The room in which the heap stood or may stand, and walls at its sides.
pub(crate) fn behind(cut: &Cut, frame: &Frame, shapes: &mut Vec<Shape>) {
    let (half, height) = frame.room;
    if matches!(cut.sides, Sides::Free | Sides::Bare) {
        shapes.push(Shape::Rectangle {
            role: "cut-room",
            x: frame.middle - half,
            y: frame.ground - height,
            width: 2.0 * half,
            height,
            corner: 0.0,
        });
        return;
    }
    let boards = boards(cut.sides, height);
    for x in [frame.middle - half - WALL, frame.middle + half] {
        for (from, to) in &boards {
            shapes.push(Shape::Rectangle {
                role: "cut-wall",
                x,
                y: frame.ground - to,
                width: WALL,
                height: to - from,
                corner: 1.0,
            });
        }
    }
}

/// Where a wall of a height has boards, from the ground up [px].
fn boards(sides: Sides, height: f64) -> Vec<(f64, f64)> {
    let (board, gap) = match sides {
        Sides::Gaps => (BOARD, GAP),
        // Three vents, low down, in the middle and below the brim.
        Sides::Vents => ((height - 3.0 * GAP) / 4.0, GAP),
        Sides::Free | Sides::Bare | Sides::Closed => (height, 0.0),
    };
    let mut boards = Vec::new();
    let mut from = 0.0;
    while from < height - 0.5 {
        // No sliver at the brim.
        let to = if from + board + gap + 3.0 > height {
            height
        } else {
            from + board
        };
        boards.push((from, to));
        from = to + gap;
    }
    boards
}

/// The ground with its earth, heights at the left, the width below.
pub(crate) fn before(cut: &Cut, frame: &Frame, width: f64, shapes: &mut Vec<Shape>) {
    let (left, right) = (SIDE / 2.0, width - SIDE / 2.0);
    shapes.push(Shape::Line {
        role: "cut-ground",
        points: vec![(left, frame.ground), (right, frame.ground)],
    });
    // Strokes of earth in threes, as on a plan.
    const THREES: f64 = 21.0;
    let mut x = left + 8.0;
    while x + 14.0 < right {
        for stroke in [0.0, 5.0, 10.0] {
            shapes.push(Shape::Line {
                role: "cut-earth",
                points: vec![
                    (x + stroke, frame.ground + 2.0),
                    (x + stroke - 4.0, frame.ground + 7.0),
                ],
            });
        }
        x += THREES;
    }
    rulers(cut, frame, shapes);
}

/// A ruler's unit: its sign, and how long it is [m]. A foot is a third of the yard of 1959.
const fn ruler(units: UnitSystem) -> (&'static str, f64) {
    match units {
        UnitSystem::Metric => ("m", 1.0),
        UnitSystem::UsCustomary => ("ft", 0.9144 / 3.0),
    }
}

/// A length for the ticks of a ruler, in its unit as the span is.
fn step(span: f64) -> f64 {
    [0.1, 0.25, 0.5, 1.0, 2.0]
        .into_iter()
        .find(|step| span / step <= 5.0)
        .unwrap_or(5.0)
}

fn rulers(cut: &Cut, frame: &Frame, shapes: &mut Vec<Shape>) {
    let (half, height) = frame.room;
    let label = |at: (f64, f64), anchor, text: String| Shape::Text {
        role: "cut-label",
        at,
        anchor,
        text,
    };
    let tick = |points: Vec<(f64, f64)>| Shape::Line {
        role: "cut-tick",
        points,
    };
    let (unit, unit_m) = ruler(cut.units);
    let number = |length_m: f64| {
        let rounded = (length_m / unit_m * 100.0).round() / 100.0;
        rounded.to_string().replacen('.', cut.decimal_mark, 1)
    };
    let x = (frame.middle - half - WALL - 4.0).round() + 0.5;
    shapes.push(tick(vec![(x, frame.ground), (x, frame.ground - height)]));
    let up_m = step(cut.room_m.1 / unit_m) * unit_m;
    let mut at_m = up_m;
    while at_m <= cut.room_m.1 + 1e-9 {
        let y = (frame.ground - at_m * frame.scale).round() + 0.5;
        shapes.push(tick(vec![(x - 4.0, y), (x, y)]));
        shapes.push(label((x - 7.0, y + 4.0), Anchor::End, number(at_m)));
        at_m += up_m;
    }
    // The unit, once, above the numbers.
    shapes.push(label(
        (
            x - 7.0,
            (frame.ground - height).min(frame.ground - (at_m - up_m) * frame.scale) - 12.0,
        ),
        Anchor::End,
        unit.to_owned(),
    ));
    let y = (frame.ground + 24.0).round() + 0.5;
    let words = format!("{}\u{a0}{unit}", number(2.0 * cut.room_m.0));
    #[allow(clippy::cast_precision_loss)] // a few letters
    let room = words.chars().count() as f64 * 3.4 + 6.0;
    let (left, right) = (frame.middle - half, frame.middle + half);
    if room < half - 6.0 {
        for (end, inner) in [(left, frame.middle - room), (right, frame.middle + room)] {
            shapes.push(tick(vec![(end, y), (inner, y)]));
            shapes.push(tick(vec![(end, y - 4.0), (end, y + 4.0)]));
        }
    }
    shapes.push(label((frame.middle, y + 4.0), Anchor::Middle, words));
}

/// Probes as rods from above, with what they showed beside their dials.
pub(crate) fn probes(cut: &Cut, frame: &Frame, shapes: &mut Vec<Shape>) {
    let mut places: Vec<(f64, f64, Vec<&str>)> = Vec::new();
    for (across, height_m, words) in &cut.probes {
        let at = (
            frame.middle + across.clamp(0.0, 1.0) * frame.room.0,
            frame.ground - height_m.clamp(0.0, cut.room_m.1) * frame.scale,
        );
        // What was read at one place shares its rod.
        match places
            .iter_mut()
            .find(|place| (place.0 - at.0).abs() < 1.0 && (place.1 - at.1).abs() < 1.0)
        {
            Some(place) if place.2.contains(&words.as_str()) => {}
            Some(place) => place.2.push(words),
            None => places.push((at.0, at.1, vec![words])),
        }
    }
    let mut dial = frame.ground - frame.room.1 - 8.0;
    for (x, y, words) in places {
        shapes.push(Shape::Line {
            role: "cut-rod",
            points: vec![(x, dial), (x, y)],
        });
        shapes.push(Shape::Circle {
            role: "cut-probe",
            centre: (x, dial),
            radius: 5.0,
        });
        shapes.push(Shape::Circle {
            role: "cut-tip",
            centre: (x, y),
            radius: 3.0,
        });
        let text = words.join(", ");
        // To the left of the dial where the right has no room.
        #[allow(clippy::cast_precision_loss)] // a few words
        let ends = x + 9.0 + text.chars().count() as f64 * LETTER;
        let (at, anchor) = if ends > frame.middle + frame.room.0 + SIDE {
            (x - 9.0, Anchor::End)
        } else {
            (x + 9.0, Anchor::Start)
        };
        shapes.push(Shape::Text {
            role: "cut-word",
            at: (at, dial + 4.0),
            anchor,
            text,
        });
        // The next dial stands lower, so that words do not cover each other.
        dial += 18.0;
    }
}

/// The key of the steps below a cut: bounds that would touch are left out, the unit stands once.
pub(crate) fn key(cut: &Cut, unit: &str, top: f64, picture: &mut Picture) {
    let steps = cut.steps.len() + 1;
    let left = SIDE;
    #[allow(clippy::cast_precision_loss)] // ten steps
    let each = ((picture.width - 2.0 * SIDE) / steps as f64).floor();
    #[allow(clippy::cast_precision_loss)]
    let place = |step: usize| left + each * step as f64;
    for step in 0..steps {
        picture.shapes.push(Shape::Rectangle {
            role: cut.role(step),
            x: place(step),
            y: top,
            width: each,
            height: 12.0,
            corner: 0.0,
        });
    }
    picture.shapes.push(Shape::Rectangle {
        role: "cut-key",
        x: left,
        y: top,
        width: place(steps) - left,
        height: 12.0,
        corner: 0.0,
    });
    let mut taken = f64::NEG_INFINITY;
    for (step, bound) in cut.steps.iter().enumerate() {
        let x = place(step + 1);
        let text = crate::over_time::number(*bound);
        #[allow(clippy::cast_precision_loss)]
        let half = text.chars().count() as f64 * LETTER / 2.0;
        if x - half < taken + 3.0 {
            continue;
        }
        taken = x + half;
        picture.shapes.push(Shape::Line {
            role: "cut-tick",
            points: vec![(x, top + 12.0), (x, top + 15.0)],
        });
        picture.shapes.push(Shape::Text {
            role: "cut-label",
            at: (x, top + 27.0),
            anchor: Anchor::Middle,
            text,
        });
    }
    picture.shapes.push(Shape::Text {
        role: "cut-label",
        at: (place(steps), top + 27.0),
        anchor: Anchor::Start,
        text: unit.to_owned(),
    });
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cross_section::{Field, cross_section};

    #[test]
    fn walls_have_gaps_where_air_comes_in_and_end_at_the_brim() {
        assert_eq!(boards(Sides::Closed, 100.0), [(0.0, 100.0)]);
        assert_eq!(boards(Sides::Vents, 95.0).len(), 4);
        for height in [40.0, 57.3, 180.0] {
            let slats = boards(Sides::Gaps, height);
            assert_eq!(slats.last().map(|board| board.1), Some(height));
            assert!(slats.iter().all(|(from, to)| to - from >= 3.0));
        }
    }

    fn empty(steps: Vec<f64>) -> Cut {
        Cut {
            layers: Vec::new(),
            steps,
            field: Field::Warm,
            room_m: (0.5, 1.0),
            sides: Sides::Closed,
            decimal_mark: ".",
            units: UnitSystem::Metric,
            probes: Vec::new(),
        }
    }

    #[test]
    fn words_of_the_key_do_not_touch_on_the_narrowest_phone() {
        let steps = vec![50.0, 68.0, 86.0, 104.0, 113.0, 122.0, 131.0, 140.0, 149.0];
        let cut = empty(steps);
        let mut picture = cross_section(&cut, 250.0, 250.0);
        picture.shapes.clear();
        key(&cut, "°F", 210.0, &mut picture);
        let mut ends = Vec::new();
        for shape in &picture.shapes {
            if let Shape::Text { at, text, .. } = shape
                && text != "°F"
            {
                let half = text.chars().count() as f64 * LETTER / 2.0;
                ends.push((at.0 - half, at.0 + half));
            }
        }
        assert!(ends.len() >= 4, "{ends:?}");
        assert!(
            ends.windows(2).all(|pair| pair[0].1 < pair[1].0),
            "{ends:?}"
        );
    }

    #[test]
    fn rulers_are_in_metres_or_in_feet() {
        for (units, told) in [
            (
                UnitSystem::Metric,
                vec!["0.25", "0.5", "0.75", "1", "m", "1\u{a0}m"],
            ),
            (
                UnitSystem::UsCustomary,
                vec!["1", "2", "3", "ft", "3.28\u{a0}ft"],
            ),
        ] {
            let cut = Cut {
                units,
                ..empty(vec![40.0])
            };
            let picture = cross_section(&cut, 360.0, 300.0);
            let labels: Vec<&str> = picture
                .shapes
                .iter()
                .filter_map(|shape| match shape {
                    Shape::Text {
                        role: "cut-label",
                        text,
                        ..
                    } => Some(text.as_str()),
                    _ => None,
                })
                .collect();
            assert_eq!(labels, told);
        }
    }

    #[test]
    fn readings_at_one_place_share_a_rod() {
        let mut cut = empty(vec![40.0]);
        cut.probes = vec![
            (0.0, 0.4, "39 °C read".to_owned()),
            (0.0, 0.4, "39 °C read".to_owned()),
            (0.0, 0.4, "41 °C read".to_owned()),
            (0.8, 0.4, "20 °C read".to_owned()),
        ];
        let picture = cross_section(&cut, 360.0, 300.0);
        let words: Vec<&str> = picture
            .shapes
            .iter()
            .filter_map(|shape| match shape {
                Shape::Text {
                    role: "cut-word",
                    text,
                    ..
                } => Some(text.as_str()),
                _ => None,
            })
            .collect();
        assert_eq!(words, ["39 °C read, 41 °C read", "20 °C read"]);
    }
}
