//! The mix map: the plane of C:N and moisture, the good region, the mixture as a
//! cloud of what it may be, and an arrow for one more scoop of each thing in reach.
//!
//! C:N runs from green at the left to brown at the right, in equal steps for equal
//! ratios; moisture runs up. Both axes are fixed, so that a mixture moves and the
//! ground does not.

use heapwright_answers::{MapPoint, OnTheMap};

use crate::map_arrows::{arrows, distance};
use crate::map_cloud::around;
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
const LEFT_ROOM: f64 = 30.0;
const BOTTOM_ROOM: f64 = 42.0;
const TOP_ROOM: f64 = 24.0;
const RIM: f64 = 6.0;

impl MapScale {
    /// A map of `width` by `height` pixels.
    #[must_use]
    pub fn new(width: f64, height: f64) -> Self {
        Self {
            left: LEFT_ROOM,
            right: width - RIM,
            top: TOP_ROOM,
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
    /// The upright axis with its unit.
    pub moisture: &'a str,
    /// Where C:N is low.
    pub green: &'a str,
    /// Where C:N is high.
    pub brown: &'a str,
    /// Where there is much water.
    pub wet: &'a str,
    /// Where there is little.
    pub dry: &'a str,
    /// What lies within the ring.
    pub nine_of_ten: &'a str,
}

impl MapWords<'static> {
    /// In English.
    pub const ENGLISH: Self = Self {
        moisture: "moisture, %",
        green: "green",
        brown: "brown",
        wet: "wet",
        dry: "dry",
        nine_of_ten: "9 of 10",
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
        corner: 0.0,
    }];
    axes(&scale, words, &mut shapes);
    region(map, &scale, &mut shapes);
    let here = map.mixture.map(|point| scale.at(point));
    let in_hand = map.in_hand.map(|point| scale.at(point));
    let way = in_hand
        .zip(here)
        .filter(|(from, to)| distance(*from, *to) > 14.0);
    if let Some((from, to)) = way {
        shapes.push(Shape::Line {
            role: "map-way",
            points: vec![from, to],
        });
    }
    cloud(map, &scale, words, &mut shapes);
    ends(&scale, words, &mut shapes);
    if let Some((from, _)) = way {
        shapes.push(Shape::Circle {
            role: "map-hand",
            centre: from,
            radius: 5.5,
        });
    }
    if let Some(here) = here {
        let tips: Vec<(f64, f64)> = map.moves.iter().map(|one| scale.at(one.to)).collect();
        let room = (scale.left, scale.top, scale.right, scale.bottom);
        arrows(here, &tips, room, &mut shapes);
        shapes.push(Shape::Circle {
            role: "map-here",
            centre: here,
            radius: 7.5,
        });
    }
    Picture {
        width,
        height,
        shapes,
    }
}

fn axes(scale: &MapScale, words: &MapWords, shapes: &mut Vec<Shape>) {
    let line = |role, points| Shape::Line { role, points };
    let word = |role, at, anchor, text: String| Shape::Text {
        role,
        at,
        anchor,
        text,
    };
    // Lines of one pixel lie on the pixels of the screen.
    let crisp = |place: f64| place.floor() + 0.5;
    for ratio in RATIO_TICKS {
        let x = crisp(scale.x(ratio));
        if ratio > RATIO.0 {
            shapes.push(line("map-grid", vec![(x, scale.top), (x, scale.bottom)]));
        }
        shapes.push(line(
            "map-edge",
            vec![(x, scale.bottom), (x, scale.bottom + 4.0)],
        ));
        let at = (x, scale.bottom + 17.0);
        shapes.push(word("map-tick", at, Anchor::Middle, format!("{ratio:.0}")));
    }
    for moisture in MOISTURE_TICKS {
        let y = crisp(scale.y(moisture));
        shapes.push(line("map-grid", vec![(scale.left, y), (scale.right, y)]));
        shapes.push(line(
            "map-edge",
            vec![(scale.left - 4.0, y), (scale.left, y)],
        ));
        let text = format!("{:.0}", moisture * 100.0);
        shapes.push(word(
            "map-tick",
            (scale.left - 7.0, y + 4.0),
            Anchor::End,
            text,
        ));
    }
    let (left, foot) = (crisp(scale.left), crisp(scale.bottom));
    shapes.push(line(
        "map-edge",
        vec![(left, scale.top), (left, foot), (scale.right, foot)],
    ));
    let middle = f64::midpoint(scale.left, scale.right);
    let (above, below) = ((1.0, scale.top - 9.0), (middle, scale.bottom + 36.0));
    shapes.push(word(
        "map-axis",
        above,
        Anchor::Start,
        words.moisture.to_owned(),
    ));
    shapes.push(word("map-axis", below, Anchor::Middle, "C:N".to_owned()));
}

/// What lies at the ends of the axes, in words.
fn ends(scale: &MapScale, words: &MapWords, shapes: &mut Vec<Shape>) {
    let below = scale.bottom + 36.0;
    for (at, anchor, text) in [
        ((scale.left, below), Anchor::Start, words.green),
        ((scale.right, below), Anchor::End, words.brown),
        (
            (scale.left + 8.0, scale.top + 18.0),
            Anchor::Start,
            words.wet,
        ),
        (
            (scale.left + 8.0, scale.bottom - 9.0),
            Anchor::Start,
            words.dry,
        ),
    ] {
        shapes.push(Shape::Text {
            role: "map-end",
            at,
            anchor,
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

/// The cloud of dots, and the line within which nine of ten lie, with its word where it is lowest.
fn cloud(map: &OnTheMap, scale: &MapScale, words: &MapWords, shapes: &mut Vec<Shape>) {
    let points: Vec<(f64, f64)> = map.cloud.iter().map(|point| scale.at(*point)).collect();
    let line = around(&points).map(|line| -> Vec<(f64, f64)> {
        let within = |(x, y): (f64, f64)| {
            (
                x.clamp(scale.left, scale.right),
                y.clamp(scale.top, scale.bottom),
            )
        };
        line.into_iter().map(within).collect()
    });
    shapes.push(Shape::Dots {
        role: "map-cloud",
        points,
    });
    let Some(line) = line else {
        return;
    };
    let top = line
        .iter()
        .copied()
        .min_by(|one, other| one.1.total_cmp(&other.1));
    shapes.push(Shape::Area {
        role: "map-around",
        points: line,
    });
    // There may be no room for it at the rim.
    if let Some((x, y)) = top.filter(|(_, y)| *y > scale.top + 20.0) {
        const HALF: f64 = 24.0;
        shapes.push(Shape::Text {
            role: "map-word",
            at: (x.clamp(scale.left + HALF, scale.right - HALF), y - 6.0),
            anchor: Anchor::Middle,
            text: words.nine_of_ten.to_owned(),
        });
    }
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
