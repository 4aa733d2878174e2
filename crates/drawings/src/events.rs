//! What was and will be done to a heap: a lane for each kind of doing below a picture over time.

use crate::picture::{Anchor, Shape};

/// What is done to a heap.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doing {
    /// Something was put in.
    Fed,
    /// It was turned.
    Turned,
    /// It was watered.
    Watered,
    /// It was covered or uncovered.
    Covered,
    /// Something was taken out.
    TakenOut,
}

impl Doing {
    /// All kinds, in the order of their lanes.
    pub const ALL: [Self; 5] = [
        Self::Fed,
        Self::Turned,
        Self::Watered,
        Self::Covered,
        Self::TakenOut,
    ];

    /// The outline of its sign around a point, within four pixels each way.
    fn sign(self, (x, y): (f64, f64)) -> Vec<(f64, f64)> {
        let outline: &[(f64, f64)] = match self {
            // What comes in points down, what goes out points up.
            Self::Fed => &[(-4.0, -3.5), (4.0, -3.5), (0.0, 4.0)],
            Self::TakenOut => &[(-4.0, 3.5), (4.0, 3.5), (0.0, -4.0)],
            Self::Turned => &[(0.0, -4.5), (4.5, 0.0), (0.0, 4.5), (-4.5, 0.0)],
            // A drop.
            Self::Watered => &[
                (0.0, -5.0),
                (1.6, -2.2),
                (3.1, 0.4),
                (2.9, 2.6),
                (1.6, 4.0),
                (0.0, 4.4),
                (-1.6, 4.0),
                (-2.9, 2.6),
                (-3.1, 0.4),
                (-1.6, -2.2),
            ],
            // A roof.
            Self::Covered => &[(-5.0, 3.0), (-3.4, -2.5), (3.4, -2.5), (5.0, 3.0)],
        };
        outline.iter().map(|(dx, dy)| (x + dx, y + dy)).collect()
    }
}

/// One thing that is done.
#[derive(Clone, Debug, PartialEq)]
pub struct Event {
    /// When [d].
    pub day: f64,
    /// What.
    pub doing: Doing,
    /// True while it is only planned.
    pub planned: bool,
}

/// Height of a lane [px].
pub(crate) const LANE: f64 = 17.0;

/// The kinds of doing among some events.
pub(crate) fn kinds(events: &[Event]) -> impl Iterator<Item = Doing> + '_ {
    Doing::ALL
        .into_iter()
        .filter(|doing| events.iter().any(|event| event.doing == *doing))
}

/// Draws a lane for each kind from `top` down, with its word at the end where that is free.
///
/// `words` names the kinds; `x` places days between `left` and `right`.
pub(crate) fn lanes(
    events: &[Event],
    words: &[(Doing, String)],
    x: impl Fn(f64) -> f64,
    (left, right, top): (f64, f64, f64),
    shapes: &mut Vec<Shape>,
) {
    /// Width of a letter of a lane's word.
    const LETTER: f64 = 6.7;
    for (lane, doing) in kinds(events).enumerate() {
        #[allow(clippy::cast_precision_loss)] // five lanes
        let y = (top + LANE * (lane as f64 + 0.5)).round() + 0.5;
        shapes.push(Shape::Line {
            role: "time-lane",
            points: vec![(left, y), (right, y)],
        });
        let places: Vec<(f64, bool)> = events
            .iter()
            .filter(|event| event.doing == doing)
            .map(|event| (x(event.day), event.planned))
            .collect();
        for (at, planned) in &places {
            shapes.push(Shape::Area {
                role: if *planned { "time-plan" } else { "time-done" },
                points: doing.sign((*at, y)),
            });
        }
        let Some((_, word)) = words.iter().find(|(of, _)| *of == doing) else {
            continue;
        };
        #[allow(clippy::cast_precision_loss)] // words are short
        let room = word.chars().count() as f64 * LETTER + 12.0;
        let is_free = |from: f64, to: f64| !places.iter().any(|(at, _)| (from..to).contains(at));
        // At the end, where nothing is planned yet; else at the start; else in the widest gap.
        let (at, anchor) = if is_free(right - room, right + 5.0) {
            (right - 2.0, Anchor::End)
        } else if is_free(left - 5.0, left + room) {
            (left + 2.0, Anchor::Start)
        } else {
            (widest_gap(&places), Anchor::Middle)
        };
        shapes.push(Shape::Text {
            role: "time-doing",
            at: (at, y + 4.0),
            anchor,
            text: word.clone(),
        });
    }
}

/// The middle of the widest gap between signs [px].
fn widest_gap(places: &[(f64, bool)]) -> f64 {
    let mut all: Vec<f64> = places.iter().map(|(at, _)| *at).collect();
    all.sort_by(f64::total_cmp);
    all.windows(2)
        .max_by(|one, other| (one[1] - one[0]).total_cmp(&(other[1] - other[0])))
        .map_or(0.0, |pair| f64::midpoint(pair[0], pair[1]))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn word_at(days: &[f64]) -> f64 {
        let events: Vec<Event> = days
            .iter()
            .map(|day| Event {
                day: *day,
                doing: Doing::Turned,
                planned: false,
            })
            .collect();
        let words = [(Doing::Turned, "turned".to_owned())];
        let mut shapes = Vec::new();
        lanes(&events, &words, |day| day, (0.0, 200.0, 0.0), &mut shapes);
        shapes
            .iter()
            .find_map(|shape| match shape {
                Shape::Text { at, .. } => Some(at.0),
                _ => None,
            })
            .unwrap()
    }

    #[test]
    fn the_word_of_a_lane_covers_no_sign() {
        assert_eq!(word_at(&[20.0, 60.0]), 198.0, "at the end");
        assert_eq!(word_at(&[70.0, 190.0]), 2.0, "at the start");
        assert_eq!(word_at(&[5.0, 40.0, 190.0]), 115.0, "in the widest gap");
    }

    #[test]
    fn each_kind_has_a_lane_and_each_sign_stays_in_it() {
        let events: Vec<Event> = Doing::ALL
            .into_iter()
            .map(|doing| Event {
                day: 50.0,
                doing,
                planned: doing == Doing::Turned,
            })
            .collect();
        let mut shapes = Vec::new();
        lanes(&events, &[], |day| day, (0.0, 100.0, 10.0), &mut shapes);
        let signs: Vec<(&str, &Vec<(f64, f64)>)> = shapes
            .iter()
            .filter_map(|shape| match shape {
                Shape::Area { role, points } => Some((*role, points)),
                _ => None,
            })
            .collect();
        assert_eq!(signs.len(), 5);
        assert_eq!(
            signs
                .iter()
                .filter(|(role, _)| *role == "time-plan")
                .count(),
            1
        );
        for (lane, (_, points)) in signs.iter().enumerate() {
            let top = 10.0 + LANE * lane as f64;
            assert!(points.iter().all(|(_, y)| (top..=top + LANE).contains(y)));
        }
    }
}
