//! Arrows on the mix map: one more scoop each, with its number where it covers nothing.

use crate::picture::{Anchor, Shape};

/// The body of the mixture's own mark, which arrows leave free [px].
const CLEAR: f64 = 9.0;
/// Radius of the disc of a number [px].
const BADGE: f64 = 9.5;
/// How far from the tip a number stands at best, and then further out [px].
const OUT: [f64; 6] = [14.0, 21.0, 29.0, 38.0, 48.0, 60.0];
/// By how much it may stand off the way of its arrow [rad].
const ASIDE: [f64; 9] = [0.0, 0.45, -0.45, 0.9, -0.9, 1.4, -1.4, 1.9, -1.9];

type Point = (f64, f64);

/// The room that is free for arrows: left, top, right, bottom [px].
pub(crate) type Room = (f64, f64, f64, f64);

/// An arrow from `here` to each tip, its number near its tip.
pub(crate) fn arrows(here: Point, tips: &[Point], room: Room, shapes: &mut Vec<Shape>) {
    // A scoop that hardly moves the mixture has no direction to show.
    let shown: Vec<(usize, Point)> = tips
        .iter()
        .copied()
        .enumerate()
        .filter(|(_, tip)| distance(here, *tip) >= CLEAR + 0.5)
        .collect();
    let mut badges: Vec<Point> = Vec::new();
    let mut numbers = Vec::new();
    for (index, tip) in &shown {
        let along = towards(here, *tip);
        let start = (here.0 + along.0 * CLEAR, here.1 + along.1 * CLEAR);
        let across = (-along.1, along.0);
        let back = |by: f64, side: f64| {
            (
                tip.0 - along.0 * by + across.0 * side,
                tip.1 - along.1 * by + across.1 * side,
            )
        };
        // The shaft ends within the head, so that the tip is sharp.
        let short = distance(start, *tip).min(6.0);
        shapes.push(Shape::Line {
            role: "map-move",
            points: vec![start, back(short, 0.0)],
        });
        shapes.push(Shape::Area {
            role: "map-move-head",
            points: vec![*tip, back(9.0, 4.5), back(7.0, 0.0), back(9.0, -4.5)],
        });
        let badge = place(here, *tip, &shown, &badges, room);
        badges.push(badge);
        if distance(*tip, badge) > OUT[0] + 1.0 {
            let way = towards(*tip, badge);
            shapes.push(Shape::Line {
                role: "map-leader",
                points: vec![(tip.0 + way.0 * 2.0, tip.1 + way.1 * 2.0), badge],
            });
        }
        numbers.push((badge, index + 1));
    }
    for (badge, number) in numbers {
        shapes.push(Shape::Circle {
            role: "map-badge",
            centre: badge,
            radius: BADGE,
        });
        shapes.push(Shape::Text {
            role: "map-number",
            at: (badge.0, badge.1 + 4.3),
            anchor: Anchor::Middle,
            text: number.to_string(),
        });
    }
}

/// The first place for a number, from its tip outwards, that covers no other number, no arrow and
/// not the mixture.
fn place(
    here: Point,
    tip: Point,
    arrows: &[(usize, Point)],
    badges: &[Point],
    (left, top, right, bottom): Room,
) -> Point {
    let along = towards(here, tip);
    let within = |at: Point| {
        (
            at.0.clamp(left + BADGE + 1.0, right - BADGE - 1.0),
            at.1.clamp(top + BADGE + 1.0, bottom - BADGE - 1.0),
        )
    };
    for out in OUT {
        for aside in ASIDE {
            let (sine, cosine) = (libm::sin(aside), libm::cos(aside));
            let way = (
                along.0 * cosine - along.1 * sine,
                along.0 * sine + along.1 * cosine,
            );
            let at = (tip.0 + way.0 * out, tip.1 + way.1 * out);
            let is_free = within(at) == at
                && distance(at, here) >= BADGE + CLEAR + 1.0
                && badges
                    .iter()
                    .all(|other| distance(*other, at) >= 2.0 * BADGE + 3.0)
                && arrows
                    .iter()
                    .all(|(_, other)| from_line(at, here, *other) >= BADGE + 2.0);
            if is_free {
                return at;
            }
        }
    }
    within((tip.0 + along.0 * OUT[0], tip.1 + along.1 * OUT[0]))
}

/// The way from one point to another, of length 1.
fn towards(from: Point, to: Point) -> Point {
    let length = distance(from, to).max(1e-9);
    ((to.0 - from.0) / length, (to.1 - from.1) / length)
}

pub(crate) fn distance(a: Point, b: Point) -> f64 {
    ((a.0 - b.0) * (a.0 - b.0) + (a.1 - b.1) * (a.1 - b.1)).sqrt()
}

/// How far a point lies from the line between two others.
fn from_line(point: Point, from: Point, to: Point) -> f64 {
    let way = (to.0 - from.0, to.1 - from.1);
    let length = (way.0 * way.0 + way.1 * way.1).max(1e-9);
    let share = ((point.0 - from.0) * way.0 + (point.1 - from.1) * way.1) / length;
    let share = share.clamp(0.0, 1.0);
    distance(point, (from.0 + way.0 * share, from.1 + way.1 * share))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_cover_neither_each_other_nor_an_arrow_when_all_go_one_way() {
        let here = (190.0, 150.0);
        let tips = [
            (206.0, 166.0),
            (210.0, 164.0),
            (199.0, 168.0),
            (214.0, 170.0),
        ];
        let mut shapes = Vec::new();
        arrows(here, &tips, (36.0, 24.0, 300.0, 280.0), &mut shapes);
        let badges: Vec<Point> = shapes
            .iter()
            .filter_map(|shape| match shape {
                Shape::Circle { centre, .. } => Some(*centre),
                _ => None,
            })
            .collect();
        assert_eq!(badges.len(), 4);
        for (index, badge) in badges.iter().enumerate() {
            for other in &badges[index + 1..] {
                assert!(distance(*badge, *other) > 2.0 * BADGE, "{badges:?}");
            }
            for tip in &tips {
                assert!(from_line(*badge, here, *tip) > BADGE, "{badges:?}");
            }
        }
    }

    #[test]
    fn a_scoop_that_hardly_moves_the_mixture_has_no_arrow() {
        let mut shapes = Vec::new();
        arrows(
            (100.0, 100.0),
            &[(103.0, 101.0)],
            (0.0, 0.0, 200.0, 200.0),
            &mut shapes,
        );
        assert!(shapes.is_empty());
    }
}
