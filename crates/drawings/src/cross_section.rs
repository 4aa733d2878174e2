//! The cross-section: the heap cut open, with one of its fields.
//!
//! Layers lie as they lie in the heap, rings stand on both sides of the middle. Between the centres
//! of cells the field runs as a smooth curve that keeps the value of each and goes nowhere beyond its
//! neighbours.
//! Steps of the field have a role each, so that the face gives them colours and the lines between
//! them tell without colour. The outline is that of a heap, not of the cells: a crown on top of what
//! stands between walls, a mound where it stands free.

use heapwright_quantity::UnitSystem;

use crate::contours::{Grid, at_least};
use crate::cut_around;
use crate::picture::{Anchor, Picture, Shape};

/// A layer of the heap, from core to wall.
#[derive(Clone, Debug, PartialEq)]
pub struct CutLayer {
    /// How thick it is [m].
    pub thickness_m: f64,
    /// From the middle to the wall [m].
    pub half_width_m: f64,
    /// The field in each ring.
    pub values: Vec<f64>,
}

/// The heap cut open.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// Layers from the ground up.
    pub layers: Vec<CutLayer>,
    /// Bounds between the steps of the field, rising, at most nine.
    pub steps: Vec<f64>,
    /// What the face calls the field: "warm", "wet" or "air".
    pub field: Field,
    /// Room in which it stands: half width and height [m]; the same through time, so that settling
    /// is seen.
    pub room_m: (f64, f64),
    /// What it stands between.
    pub sides: Sides,
    /// What parts whole metres from their parts: "." or ",".
    pub decimal_mark: &'static str,
    /// Whether its rulers are in metres or in feet.
    pub units: UnitSystem,
    /// Where a probe was read: share of the half width from the middle, height [m], and the words.
    pub probes: Vec<(f64, f64, String)>,
}

/// Which field is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// Temperature.
    Warm,
    /// Moisture.
    Wet,
    /// Oxygen.
    Air,
}

/// What a heap stands between.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Sides {
    /// It stands free and runs to a point.
    #[default]
    Free,
    /// It stands upright without walls.
    Bare,
    /// Walls with gaps through which air comes.
    Gaps,
    /// Walls with a few vents.
    Vents,
    /// Closed walls.
    Closed,
}

impl Sides {
    /// All of them.
    pub const ALL: [Self; 5] = [
        Self::Free,
        Self::Bare,
        Self::Gaps,
        Self::Vents,
        Self::Closed,
    ];
}

const WARM: [&str; 10] = [
    "warm-0", "warm-1", "warm-2", "warm-3", "warm-4", "warm-5", "warm-6", "warm-7", "warm-8",
    "warm-9",
];
const WET: [&str; 10] = [
    "wet-0", "wet-1", "wet-2", "wet-3", "wet-4", "wet-5", "wet-6", "wet-7", "wet-8", "wet-9",
];
const AIR: [&str; 10] = [
    "air-0", "air-1", "air-2", "air-3", "air-4", "air-5", "air-6", "air-7", "air-8", "air-9",
];

/// Room for the labels.
pub(crate) const SIDE: f64 = 44.0;
const TOP: f64 = 30.0;
const BOTTOM: f64 = 38.0;

/// Room for the key of the steps, below.
pub(crate) const KEY: f64 = 46.0;

/// How finely a cell is drawn, each way.
const FINE: usize = 6;

impl Cut {
    /// Which step a value lies in.
    fn step(&self, value: f64) -> usize {
        self.steps
            .partition_point(|bound| *bound <= value)
            .min(WARM.len() - 1)
    }

    pub(crate) fn role(&self, step: usize) -> &'static str {
        match self.field {
            Field::Warm => WARM[step],
            Field::Wet => WET[step],
            Field::Air => AIR[step],
        }
    }

    /// Layers of which something is known, from the ground up.
    fn known(&self) -> Self {
        let mut known = self.clone();
        known.layers.retain(|layer| !layer.values.is_empty());
        known
    }
}

/// A smooth curve through values that stand one apart, at a place counted from the first. It is
/// level at both ends and at each top and hollow, so that it goes nowhere beyond its neighbours.
fn smooth(values: &[f64], place: f64) -> f64 {
    let last = values.len() - 1;
    #[allow(clippy::cast_precision_loss)] // a few cells
    let place = place.clamp(0.0, last as f64);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // not below 0
    let low = (place.floor() as usize).min(last);
    let high = (low + 1).min(last);
    let slope = |at: usize| {
        if at == 0 || at == last {
            return 0.0;
        }
        let (before, after) = (values[at] - values[at - 1], values[at + 1] - values[at]);
        if before * after <= 0.0 {
            0.0
        } else {
            2.0 * before * after / (before + after)
        }
    };
    #[allow(clippy::cast_precision_loss)]
    let t = place - low as f64;
    let (square, cube) = (t * t, t * t * t);
    values[low] * (2.0 * cube - 3.0 * square + 1.0)
        + slope(low) * (cube - 2.0 * square + t)
        + values[high] * (3.0 * square - 2.0 * cube)
        + slope(high) * (cube - square)
}

/// From metres in the heap to pixels.
pub(crate) struct Frame {
    /// Pixels of a metre.
    pub scale: f64,
    /// Of the heap from the left.
    pub middle: f64,
    /// Of the ground from the top.
    pub ground: f64,
    /// Half width and height of the room [px].
    pub room: (f64, f64),
    /// Height of the heap [m].
    height_m: f64,
    /// Heights of the middles of layers, and how wide they are there, half [m].
    halves_m: Vec<(f64, f64)>,
    is_free: bool,
}

/// How much of its height the crown of a heap between walls stands above its shoulders.
const CROWN: f64 = 0.07;

impl Frame {
    pub(crate) fn of(cut: &Cut, width: f64, height: f64) -> Self {
        let room_m = (cut.room_m.0.max(0.05), cut.room_m.1.max(0.05));
        let scale =
            ((width - 2.0 * SIDE) / (2.0 * room_m.0)).min((height - TOP - BOTTOM) / room_m.1);
        let mut base_m = 0.0;
        let mut halves_m = Vec::new();
        for layer in &cut.layers {
            halves_m.push((base_m + 0.5 * layer.thickness_m, layer.half_width_m));
            base_m += layer.thickness_m;
        }
        Self {
            scale,
            // Lines of one pixel lie on the pixels of the screen.
            middle: (width / 2.0).round(),
            ground: (height - BOTTOM).round(),
            room: (room_m.0 * scale, room_m.1 * scale),
            height_m: base_m,
            halves_m,
            is_free: cut.sides == Sides::Free,
        }
    }

    /// Half the width at a height [m].
    fn half_m(&self, height_m: f64) -> f64 {
        let above = self
            .halves_m
            .partition_point(|(middle_m, _)| *middle_m < height_m);
        let (Some(first), Some(last)) = (self.halves_m.first(), self.halves_m.last()) else {
            return 0.0;
        };
        if !self.is_free {
            return first.1.max(last.1);
        }
        // Straight through the middles of layers, and on beyond the first and the last.
        let upper = above.clamp(1, (self.halves_m.len() - 1).max(1));
        let (Some(one), Some(other)) = (self.halves_m.get(upper - 1), self.halves_m.get(upper))
        else {
            return first.1 * 2.0 * (1.0 - height_m / self.height_m.max(1e-9));
        };
        let share = (height_m - one.0) / (other.0 - one.0).max(1e-9);
        (one.1 + (other.1 - one.1) * share).max(0.0)
    }

    /// Where a point of the heap is drawn: share of the half width from the middle, left below 0,
    /// and height [m].
    pub(crate) fn at(&self, across: f64, height_m: f64) -> (f64, f64) {
        let share = (height_m / self.height_m.max(1e-9)).clamp(0.0, 1.0);
        let mut half_m = self.half_m(height_m);
        let mut up_m = height_m;
        if self.is_free {
            // A mound: its top is round, and its flanks bulge a little.
            let foot_m = self.half_m(0.0).max(1e-9);
            half_m = foot_m * libm::pow((half_m / foot_m).clamp(0.0, 1.0), 0.74);
        } else {
            // A crown: as much above the height in the middle as below it at the shoulders.
            let round = 0.5 - across * across - 0.5 * libm::pow(across.abs(), 10.0);
            up_m += CROWN * self.height_m * share * share * (round + 0.1);
        }
        (
            self.middle + across * half_m * self.scale,
            self.ground - up_m * self.scale,
        )
    }
}

/// The height that a cut with its key takes at a width, at most `most`: no more than its room needs
/// [px].
#[must_use]
pub fn height_of_cut(cut: &Cut, width: f64, most: f64) -> f64 {
    let scale = (width - 2.0 * SIDE) / (2.0 * cut.room_m.0.max(0.05));
    (cut.room_m.1.max(0.05) * scale + TOP + BOTTOM + KEY).min(most)
}

/// Draws the cut at `width` by `height` pixels. Layers without rings are left out.
#[must_use]
pub fn cross_section(cut: &Cut, width: f64, height: f64) -> Picture {
    let cut = &cut.known();
    let frame = Frame::of(cut, width, height);
    let mut shapes = Vec::new();
    cut_around::behind(cut, &frame, &mut shapes);
    if !cut.layers.is_empty() {
        let outline = outline(&frame);
        field(cut, &frame, &outline, &mut shapes);
        grain(cut, &frame, &mut shapes);
        shapes.push(Shape::Area {
            role: "cut-outline",
            points: outline,
        });
    }
    cut_around::before(cut, &frame, width, &mut shapes);
    cut_around::probes(cut, &frame, &mut shapes);
    Picture {
        width,
        height,
        shapes,
    }
}

/// From the left foot over the top to the right foot.
fn outline(frame: &Frame) -> Vec<(f64, f64)> {
    const PARTS: i32 = 24;
    let share = |part: i32| f64::from(part) / f64::from(PARTS);
    // More points where a mound is round.
    let rise = |part: i32| 1.0 - (1.0 - share(part)) * (1.0 - share(part));
    let up = (0..=PARTS).map(|part| (-1.0, rise(part)));
    let over = (1..2 * PARTS).map(|part| (share(part) - 1.0, 1.0));
    let down = (0..=PARTS).rev().map(|part| (1.0, rise(part)));
    up.chain(over)
        .chain(down)
        .map(|(across, up)| frame.at(across, up * frame.height_m))
        .collect()
}

/// The field: what lies lowest as a ground, and upon it what reaches each bound.
fn field(cut: &Cut, frame: &Frame, outline: &[(f64, f64)], shapes: &mut Vec<Shape>) {
    let rings = cut.layers.iter().map(|layer| layer.values.len()).max();
    let half = rings.unwrap_or(1) * FINE;
    #[allow(clippy::cast_precision_loss)] // small counts
    let share = |part: usize, of: usize| part as f64 / of as f64;
    let across = |column: usize| share(column, half) - 1.0;
    let rows = cut.layers.len() * FINE;
    // The layers at each column of the grid, and then the rows through them.
    #[allow(clippy::cast_precision_loss)] // a few rings
    let columns: Vec<Vec<f64>> = (0..=2 * half)
        .map(|column| {
            let at = |layer: &CutLayer| {
                let rings = layer.values.len() as f64;
                smooth(&layer.values, across(column).abs() * rings - 0.5)
            };
            cut.layers.iter().map(at).collect()
        })
        .collect();
    let mut heights_m = Vec::new();
    let mut values = Vec::new();
    let mut base_m = 0.0;
    for row in 0..=rows {
        let layer = (row / FINE).min(cut.layers.len() - 1);
        let within = share(row - layer * FINE, FINE);
        if row > 0 && row.is_multiple_of(FINE) && row < rows {
            base_m += cut.layers[layer - 1].thickness_m;
        }
        heights_m.push(base_m + within * cut.layers[layer].thickness_m);
        let place = share(row, FINE) - 0.5;
        values.extend(columns.iter().map(|layers| smooth(layers, place)));
    }
    let lowest = values.iter().copied().fold(f64::INFINITY, f64::min);
    let highest = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let grid = Grid {
        columns: 2 * half + 1,
        rows: rows + 1,
        values,
    };
    let placed = |(column, row): (f64, f64)| {
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // within the grid
        let below = row.clamp(0.0, share(rows, 1)) as usize;
        let above = (below + 1).min(rows);
        let rise = heights_m[above] - heights_m[below];
        let height_m = heights_m[below] + rise * (row - share(below, 1));
        frame.at(column / share(half, 1) - 1.0, height_m)
    };
    shapes.push(Shape::Area {
        role: cut.role(cut.step(lowest)),
        points: outline.to_vec(),
    });
    for bound in &cut.steps {
        if *bound > lowest && *bound <= highest {
            let loops: Vec<Vec<(f64, f64)>> = at_least(&grid, *bound)
                .into_iter()
                .map(|points| points.into_iter().map(placed).collect())
                .collect();
            // What only just reaches a bound has no area.
            if loops.is_empty() {
                continue;
            }
            shapes.push(Shape::Region {
                role: cut.role(cut.step(*bound)),
                loops,
            });
        }
    }
}

/// The grain of what lies in layers: broken lines where one ends and the next begins.
fn grain(cut: &Cut, frame: &Frame, shapes: &mut Vec<Shape>) {
    const PARTS: i32 = 16;
    let mut base_m = 0.0;
    let last = cut.layers.len() - 1;
    for layer in &cut.layers[..last] {
        base_m += layer.thickness_m;
        let points = (0..=2 * PARTS)
            .map(|part| frame.at(0.985 * (f64::from(part) / f64::from(PARTS) - 1.0), base_m))
            .collect();
        shapes.push(Shape::Line {
            role: "cut-grain",
            points,
        });
    }
}

/// The values at the core and at the wall as words, to be put upon the cut: it can then be read
/// without its colours. Of thin layers some are left out.
///
/// `height` is that of the picture with its key below ([`crate::cut_with_key`]).
#[must_use]
pub fn value_labels(cut: &Cut, width: f64, height: f64) -> Vec<Shape> {
    const LETTER: f64 = 16.0;
    let cut = &cut.known();
    let frame = Frame::of(cut, width, height - KEY);
    let mut shapes = Vec::new();
    let (mut taken, mut base_m) = (f64::INFINITY, 0.0);
    for layer in &cut.layers {
        let middle_m = base_m + 0.5 * layer.thickness_m;
        base_m += layer.thickness_m;
        let y = frame.at(0.0, middle_m).1;
        // Half the letters' height above and below must lie within the heap.
        if taken - y < LETTER || layer.thickness_m * frame.scale < 0.5 * LETTER {
            continue;
        }
        taken = y;
        let (Some(core), Some(wall)) = (layer.values.first(), layer.values.last()) else {
            continue;
        };
        let mut word = |(x, y): (f64, f64), anchor: Anchor, value: f64| {
            shapes.push(Shape::Text {
                role: "cut-value",
                at: (x, y + 4.0),
                anchor,
                text: whole(value),
            });
        };
        // The core's to the left of the middle, where no probe is drawn.
        word(frame.at(-0.1, middle_m), Anchor::End, *core);
        let edge = frame.at(1.0, middle_m);
        if layer.values.len() > 1 && edge.0 - frame.middle > 40.0 {
            word((edge.0 - 7.0, edge.1), Anchor::End, *wall);
        }
    }
    shapes
}

/// As the table beside it rounds.
fn whole(value: f64) -> String {
    let whole = value.round_ties_even();
    let minus = if whole < 0.0 { "-" } else { "" };
    format!("{minus}{}", whole.abs())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cut(sides: Sides) -> Cut {
        let layer = |values: [f64; 3]| CutLayer {
            thickness_m: 0.3,
            half_width_m: 0.5,
            values: values.to_vec(),
        };
        Cut {
            layers: vec![layer([40.0, 35.0, 20.0]), layer([60.0, 50.0, 25.0])],
            steps: vec![10.0, 20.0, 30.0, 40.0, 50.0, 55.0, 60.0],
            field: Field::Warm,
            room_m: (0.5, 1.0),
            sides,
            decimal_mark: ".",
            units: UnitSystem::Metric,
            probes: vec![(0.0, 0.4, "58".to_owned())],
        }
    }

    #[test]
    fn the_curve_keeps_each_value_and_goes_nowhere_beyond_its_neighbours() {
        let values = [60.0, 50.0, 25.0, 30.0];
        for (index, value) in values.iter().enumerate() {
            assert_eq!(smooth(&values, index as f64), *value);
        }
        for part in 0..=30 {
            let place = f64::from(part) / 10.0;
            let low = (place.floor() as usize).min(2);
            let (one, other) = (values[low], values[low + 1]);
            let at = smooth(&values, place);
            assert!((one.min(other) - 1e-9..=one.max(other) + 1e-9).contains(&at));
        }
        assert_eq!((smooth(&values, -0.5), smooth(&values, 9.0)), (60.0, 30.0));
        assert_eq!(smooth(&[7.0], 0.3), 7.0, "one cell");
        let cut = cut(Sides::Gaps);
        assert_eq!((cut.step(9.0), cut.step(10.0), cut.step(70.0)), (0, 1, 7));
    }

    #[test]
    fn labels_tell_core_and_wall_of_each_layer_within_the_heap() {
        let labels = value_labels(&cut(Sides::Gaps), 360.0, 346.0);
        let words: Vec<&str> = labels
            .iter()
            .map(|label| match label {
                Shape::Text { text, .. } => text.as_str(),
                _ => "no text",
            })
            .collect();
        assert_eq!(words, ["40", "20", "60", "25"]);
        for label in &labels {
            if let Shape::Text { at, .. } = label {
                assert!((44.0..=316.0).contains(&at.0) && (30.0..=262.0).contains(&at.1));
            }
        }
    }

    /// The area within loops [px2]; islands and holes turn the other way.
    fn area(loops: &[Vec<(f64, f64)>]) -> f64 {
        let one = |points: &Vec<(f64, f64)>| {
            let next = points.iter().cycle().skip(1);
            let sum: f64 = points
                .iter()
                .zip(next)
                .map(|(here, there)| here.0 * there.1 - there.0 * here.1)
                .sum();
            sum / 2.0
        };
        loops.iter().map(one).sum::<f64>().abs()
    }

    #[test]
    fn the_crown_adds_little_to_the_area_and_a_mound_comes_to_its_point() {
        let between = cut(Sides::Gaps);
        let frame = Frame::of(&between, 360.0, 300.0);
        let drawn = area(&[outline(&frame)]);
        let told = 2.0 * 0.5 * 0.6 * frame.scale * frame.scale;
        assert!((drawn / told - 1.0).abs() < 0.02, "{drawn} of {told}");
        let mut free = cut(Sides::Free);
        // A cone of 0.6 m on a foot of 1 m.
        free.layers[0].half_width_m = 0.375;
        free.layers[1].half_width_m = 0.125;
        let frame = Frame::of(&free, 360.0, 300.0);
        assert!((frame.half_m(0.0) - 0.5).abs() < 1e-9);
        assert!(frame.half_m(0.6).abs() < 1e-9);
    }

    #[test]
    fn what_reaches_a_bound_is_drawn_as_large_as_it_is() {
        let layer = |values: Vec<f64>| CutLayer {
            thickness_m: 0.5,
            half_width_m: 0.5,
            values,
        };
        let mut cut = cut(Sides::Gaps);
        // From 60 in the middle of the core's ring to 20 in the middle of the other: 40 half way, where
        // the curve is as far from both.
        cut.layers = vec![layer(vec![60.0, 20.0])];
        cut.steps = vec![40.0];
        let picture = cross_section(&cut, 400.0, 320.0);
        let mut warm = None;
        for shape in &picture.shapes {
            if let Shape::Region { role, loops } = shape {
                assert_eq!(*role, "warm-1");
                warm = Some(area(loops));
            }
        }
        let frame = Frame::of(&cut, 400.0, 320.0);
        let half = 0.5 * 1.0 * 0.5 * frame.scale * frame.scale;
        let warm = warm.unwrap();
        // The crown is higher in the middle, where it is warm.
        assert!((1.0..1.06).contains(&(warm / half)), "{warm} of {half}");
    }

    #[test]
    fn a_low_heap_takes_no_more_height_than_its_room_needs() {
        let cut = cut(Sides::Free);
        // A metre wide and a metre high.
        assert_eq!(
            height_of_cut(&cut, 288.0, 450.0),
            200.0 + TOP + BOTTOM + KEY
        );
        assert_eq!(height_of_cut(&cut, 900.0, 450.0), 450.0);
    }

    #[test]
    fn a_cut_without_layers_is_an_empty_room() {
        let mut cut = cut(Sides::Free);
        cut.layers.clear();
        let picture = cross_section(&cut, 360.0, 300.0);
        assert!(!picture.svg_inside().contains("NaN"));
    }
}
