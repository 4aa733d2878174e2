//! The mix map: the plane of C:N and moisture, the good region, the mixture as a
//! cloud of what it may be, and an arrow for one more scoop of each thing in reach.
//!
//! C:N runs from green at the left to brown at the right, in equal steps for equal
//! ratios; moisture runs up. Both axes are fixed, so that a mixture moves and the
//! ground does not.

use heapwright_answers::{MapPoint, OnTheMap};

use crate::picture::{Anchor, Picture, Shape};

/// From the plane to pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MapScale {
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
}

/// Ends of the axes: scraps of fish and urine lie further left, wood further
/// right; they are drawn at the rim.
const RATIO: (f64, f64) = (10.0, 90.0);
const MOISTURE: (f64, f64) = (0.25, 0.92);

const RATIO_TICKS: [f64; 6] = [10.0, 15.0, 20.0, 30.0, 45.0, 70.0];
const MOISTURE_TICKS: [f64; 6] = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8];

/// Room for the labels of the axes.
const LEFT_ROOM: f64 = 40.0;
const BOTTOM_ROOM: f64 = 40.0;
const RIM: f64 = 10.0;

impl MapScale {
    /// A map of `width` by `height` pixels.
    #[must_use]
    pub fn new(width: f64, height: f64) -> Self {
        Self {
            left: LEFT_ROOM,
            right: width - RIM,
            top: RIM,
            bottom: height - BOTTOM_ROOM,
        }
    }

    /// The horizontal scale alone, from `left` to `right`.
    pub(crate) fn without_labels(left: f64, right: f64) -> Self {
        Self {
            left,
            right,
            top: 0.0,
            bottom: 0.0,
        }
    }

    /// Pixels from the left; beyond the ends at the rim.
    #[must_use]
    pub fn x(&self, carbon_to_nitrogen: f64) -> f64 {
        let (low, high) = (libm::log(RATIO.0), libm::log(RATIO.1));
        let share = (libm::log(carbon_to_nitrogen.clamp(RATIO.0, RATIO.1)) - low) / (high - low);
        self.left + (self.right - self.left) * share
    }

    /// Pixels from the top; beyond the ends at the rim.
    #[must_use]
    pub fn y(&self, moisture_wet_basis: f64) -> f64 {
        let share = (moisture_wet_basis.clamp(MOISTURE.0, MOISTURE.1) - MOISTURE.0)
            / (MOISTURE.1 - MOISTURE.0);
        self.bottom + (self.top - self.bottom) * share
    }

    fn at(&self, point: MapPoint) -> (f64, f64) {
        (
            self.x(point.carbon_to_nitrogen),
            self.y(point.moisture_wet_basis),
        )
    }
}

/// The words at the rim of the map.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MapWords<'a> {
    /// Where C:N is low.
    pub green: &'a str,
    /// Where C:N is high.
    pub brown: &'a str,
    /// Where there is much water.
    pub wet: &'a str,
    /// Where there is little.
    pub dry: &'a str,
}

impl MapWords<'static> {
    /// In English.
    pub const ENGLISH: Self = Self {
        green: "green",
        brown: "brown",
        wet: "wet",
        dry: "dry",
    };
}

/// Draws the map with English words, see [`mix_map_in`].
#[must_use]
pub fn mix_map(map: &OnTheMap, width: f64, height: f64) -> Picture {
    mix_map_in(map, width, height, &MapWords::ENGLISH)
}

/// Draws the map at `width` by `height` pixels.
///
/// Arrows bear the number of their thing in reach, counted from 1.
#[must_use]
pub fn mix_map_in(map: &OnTheMap, width: f64, height: f64, words: &MapWords) -> Picture {
    let scale = MapScale::new(width, height);
    let mut shapes = vec![Shape::Rectangle {
        role: "map-ground",
        x: scale.left,
        y: scale.top,
        width: scale.right - scale.left,
        height: scale.bottom - scale.top,
        corner: 6.0,
    }];
    axes(&scale, words, &mut shapes);
    region(map, &scale, &mut shapes);
    shapes.push(Shape::Dots {
        role: "map-cloud",
        points: map.cloud.iter().map(|point| scale.at(*point)).collect(),
    });
    if let Some(mixture) = map.mixture {
        let here = scale.at(mixture);
        if let Some(in_hand) = map.in_hand.map(|point| scale.at(point))
            && distance(in_hand, here) > 14.0
        {
            shapes.push(Shape::Line {
                role: "map-way",
                points: vec![in_hand, here],
            });
            shapes.push(Shape::Circle {
                role: "map-hand",
                centre: in_hand,
                radius: 5.0,
            });
        }
        let tips: Vec<(f64, f64)> = map.moves.iter().map(|one| scale.at(one.to)).collect();
        arrows(here, &tips, &scale, &mut shapes);
        shapes.push(Shape::Circle {
            role: "map-here",
            centre: here,
            radius: 7.0,
        });
    }
    Picture {
        width,
        height,
        shapes,
    }
}

fn axes(scale: &MapScale, words: &MapWords, shapes: &mut Vec<Shape>) {
    for ratio in RATIO_TICKS {
        let x = scale.x(ratio);
        shapes.push(Shape::Line {
            role: "map-grid",
            points: vec![(x, scale.top), (x, scale.bottom)],
        });
        shapes.push(Shape::Text {
            role: "map-tick",
            at: (x, scale.bottom + 16.0),
            anchor: Anchor::Middle,
            text: format!("{ratio:.0}"),
        });
    }
    for moisture in MOISTURE_TICKS {
        let y = scale.y(moisture);
        shapes.push(Shape::Line {
            role: "map-grid",
            points: vec![(scale.left, y), (scale.right, y)],
        });
        shapes.push(Shape::Text {
            role: "map-tick",
            at: (scale.left - 6.0, y + 4.0),
            anchor: Anchor::End,
            text: format!("{:.0} %", moisture * 100.0),
        });
    }
    for (x, anchor, text) in [
        (scale.left, Anchor::Start, words.green),
        (
            f64::midpoint(scale.left, scale.right),
            Anchor::Middle,
            "C:N",
        ),
        (scale.right, Anchor::End, words.brown),
    ] {
        shapes.push(Shape::Text {
            role: "map-axis",
            at: (x, scale.bottom + 33.0),
            anchor,
            text: text.to_owned(),
        });
    }
    for (y, text) in [
        (scale.top + 17.0, words.wet),
        (scale.bottom - 8.0, words.dry),
    ] {
        shapes.push(Shape::Text {
            role: "map-axis",
            at: (scale.left + 8.0, y),
            anchor: Anchor::Start,
            text: text.to_owned(),
        });
    }
}

fn region(map: &OnTheMap, scale: &MapScale, shapes: &mut Vec<Shape>) {
    let target = &map.target;
    let (left, right) = (
        scale.x(target.carbon_to_nitrogen_low),
        scale.x(target.carbon_to_nitrogen_high),
    );
    let (top, bottom) = (
        scale.y(target.moisture_wet_basis_high),
        scale.y(target.moisture_wet_basis_low),
    );
    shapes.push(Shape::Rectangle {
        role: "map-region",
        x: left,
        y: top,
        width: (right - left).max(2.0),
        height: (bottom - top).max(2.0),
        corner: 8.0,
    });
}

/// An arrow from `here` to each tip, with its number beyond the tip, numbers kept apart.
fn arrows(here: (f64, f64), tips: &[(f64, f64)], scale: &MapScale, shapes: &mut Vec<Shape>) {
    /// The body of the mixture's own mark, which arrows leave free.
    const CLEAR: f64 = 9.0;
    const BADGE: f64 = 9.0;
    let mut badges: Vec<(f64, f64)> = Vec::new();
    for (index, tip) in tips.iter().enumerate() {
        let length = distance(here, *tip);
        // A scoop that hardly moves the mixture has no direction to show.
        if length < CLEAR + 2.0 {
            continue;
        }
        let along = ((tip.0 - here.0) / length, (tip.1 - here.1) / length);
        let start = (here.0 + along.0 * CLEAR, here.1 + along.1 * CLEAR);
        shapes.push(Shape::Line {
            role: "map-move",
            points: vec![start, *tip],
        });
        let across = (-along.1, along.0);
        let back = |by: f64, side: f64| {
            (
                tip.0 - along.0 * by + across.0 * side,
                tip.1 - along.1 * by + across.1 * side,
            )
        };
        shapes.push(Shape::Area {
            role: "map-move-head",
            points: vec![*tip, back(8.0, 4.0), back(8.0, -4.0)],
        });
        let mut badge = (
            tip.0 + along.0 * (BADGE + 4.0),
            tip.1 + along.1 * (BADGE + 4.0),
        );
        // Numbers that would cover each other move on along their arrow.
        while badges
            .iter()
            .any(|other| distance(*other, badge) < 2.0 * BADGE + 1.0)
        {
            badge = (badge.0 + along.0 * BADGE, badge.1 + along.1 * BADGE);
        }
        badge = (
            badge.0.clamp(scale.left + BADGE, scale.right - BADGE),
            badge.1.clamp(scale.top + BADGE, scale.bottom - BADGE),
        );
        badges.push(badge);
        shapes.push(Shape::Circle {
            role: "map-badge",
            centre: badge,
            radius: BADGE,
        });
        shapes.push(Shape::Text {
            role: "map-number",
            at: (badge.0, badge.1 + 4.0),
            anchor: Anchor::Middle,
            text: (index + 1).to_string(),
        });
    }
}

fn distance(a: (f64, f64), b: (f64, f64)) -> f64 {
    ((a.0 - b.0) * (a.0 - b.0) + (a.1 - b.1) * (a.1 - b.1)).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scale_puts_equal_ratios_at_equal_steps_and_wet_above_dry() {
        let scale = MapScale::new(360.0, 300.0);
        let step = |ratio: f64| scale.x(2.0 * ratio) - scale.x(ratio);
        assert!((step(10.0) - step(40.0)).abs() < 1e-9);
        assert!(scale.y(0.8) < scale.y(0.4));
        assert_eq!(scale.x(1.0), scale.left);
        assert_eq!(scale.x(9_999.0), scale.right);
    }
}
