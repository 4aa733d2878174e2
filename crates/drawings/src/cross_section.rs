//! The cross-section: the heap cut open, with one of its fields.
//!
//! Layers lie as they lie in the heap, rings stand on both sides of the middle. Between the centres
//! of cells the field is drawn as it is most likely to run, straight; nothing is smoothed beyond.
//! Steps of the field have a role each, so that the face gives them colours and the lines between
//! them tell without colour.

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
const SIDE: f64 = 40.0;
const TOP: f64 = 12.0;
const BOTTOM: f64 = 28.0;

/// Room for the key of the steps, below.
pub(crate) const KEY: f64 = 44.0;

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

    /// The value at a share of the half width, in a layer and on the way to its neighbours.
    fn value(&self, layer: usize, within: f64, across: f64) -> f64 {
        let at = |layer: usize| along(&self.layers[layer].values, across);
        // From the middle of a layer to that of the next one.
        let here = at(layer);
        if within < 0.5 && layer > 0 {
            here + (at(layer - 1) - here) * (0.5 - within)
        } else if within > 0.5 && layer + 1 < self.layers.len() {
            here + (at(layer + 1) - here) * (within - 0.5)
        } else {
            here
        }
    }
}

/// The value between the middles of rings, at a share of the half width.
fn along(values: &[f64], across: f64) -> f64 {
    #[allow(clippy::cast_precision_loss)] // a few rings
    let place = (across * values.len() as f64 - 0.5).max(0.0);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // not below 0
    let low = (place.floor() as usize).min(values.len() - 1);
    let high = (low + 1).min(values.len() - 1);
    #[allow(clippy::cast_precision_loss)]
    let share = (place - low as f64).clamp(0.0, 1.0);
    values[low] + (values[high] - values[low]) * share
}

/// Draws the cut at `width` by `height` pixels. Layers without rings are left out.
#[must_use]
pub fn cross_section(cut: &Cut, width: f64, height: f64) -> Picture {
    let (room_half_m, room_height_m) = (cut.room_m.0.max(0.05), cut.room_m.1.max(0.05));
    let scale =
        ((width - 2.0 * SIDE) / (2.0 * room_half_m)).min((height - TOP - BOTTOM) / room_height_m);
    let middle = width / 2.0;
    let ground = height - BOTTOM;
    let mut shapes = vec![Shape::Rectangle {
        role: "cut-room",
        x: middle - room_half_m * scale,
        y: ground - room_height_m * scale,
        width: 2.0 * room_half_m * scale,
        height: room_height_m * scale,
        corner: 0.0,
    }];
    let mut base_m = 0.0;
    let mut outline: Vec<(f64, f64)> = Vec::new();
    for (index, layer) in cut.layers.iter().enumerate() {
        if layer.values.is_empty() {
            continue;
        }
        patches(cut, index, base_m, scale, middle, ground, &mut shapes);
        let half = layer.half_width_m * scale;
        outline.push((half, ground - base_m * scale));
        base_m += layer.thickness_m;
        outline.push((half, ground - base_m * scale));
    }
    let left = outline.iter().rev().map(|(half, y)| (middle - half, *y));
    let right = outline.iter().map(|(half, y)| (middle + half, *y));
    shapes.push(Shape::Area {
        role: "cut-outline",
        points: right.chain(left).collect(),
    });
    shapes.push(Shape::Line {
        role: "cut-ground",
        points: vec![(SIDE / 2.0, ground), (width - SIDE / 2.0, ground)],
    });
    rulers(
        room_half_m,
        room_height_m,
        scale,
        middle,
        ground,
        &mut shapes,
    );
    for (across, height_m, words) in &cut.probes {
        let at = (
            middle + across.clamp(0.0, 1.0) * room_half_m * scale,
            ground - height_m.clamp(0.0, room_height_m) * scale,
        );
        shapes.push(Shape::Circle {
            role: "cut-probe",
            centre: at,
            radius: 5.0,
        });
        shapes.push(Shape::Text {
            role: "cut-word",
            at: (at.0 + 9.0, at.1 + 4.0),
            anchor: Anchor::Start,
            text: words.clone(),
        });
    }
    Picture {
        width,
        height,
        shapes,
    }
}

/// The values at the core and at the wall as words, to be put upon the cut: it can then be read
/// without its colours. Of thin layers some are left out.
///
/// `height` is that of the picture with its key below ([`crate::cut_with_key`]).
#[must_use]
pub fn value_labels(cut: &Cut, width: f64, height: f64) -> Vec<Shape> {
    const LETTER: f64 = 15.0;
    let height = height - KEY;
    let (room_half_m, room_height_m) = (cut.room_m.0.max(0.05), cut.room_m.1.max(0.05));
    let scale =
        ((width - 2.0 * SIDE) / (2.0 * room_half_m)).min((height - TOP - BOTTOM) / room_height_m);
    let (middle, mut y) = (width / 2.0, height - BOTTOM);
    let mut shapes = Vec::new();
    let mut taken = f64::INFINITY;
    for layer in &cut.layers {
        let at = y - 0.5 * layer.thickness_m * scale;
        y -= layer.thickness_m * scale;
        // Half the letters' height above and below must lie within the heap.
        if taken - at < LETTER || layer.thickness_m * scale < 0.5 * LETTER {
            continue;
        }
        taken = at;
        let (Some(core), Some(wall)) = (layer.values.first(), layer.values.last()) else {
            continue;
        };
        let half = layer.half_width_m * scale;
        let mut word = |x: f64, anchor: Anchor, value: f64| {
            shapes.push(Shape::Text {
                role: "cut-value",
                at: (x, at + 4.0),
                anchor,
                // As the table beside it rounds.
                text: format!("{}", value.round_ties_even() + 0.0),
            });
        };
        // The core's to the left of the middle, where no probe is drawn.
        word(middle - 0.12 * half, Anchor::End, *core);
        if layer.values.len() > 1 && half > 40.0 {
            word(middle + half - 5.0, Anchor::End, *wall);
        }
    }
    shapes
}

/// The patches of a layer: neighbours of the same step are one.
fn patches(
    cut: &Cut,
    index: usize,
    base_m: f64,
    scale: f64,
    middle: f64,
    ground: f64,
    shapes: &mut Vec<Shape>,
) {
    let layer = &cut.layers[index];
    let columns = layer.values.len() * FINE;
    #[allow(clippy::cast_precision_loss)] // small counts
    let share = |part: usize, of: usize| part as f64 / of as f64;
    let height = layer.thickness_m * scale / share(FINE, 1);
    for row in 0..FINE {
        let within = share(2 * row + 1, 2 * FINE);
        let top = ground - (base_m + layer.thickness_m * share(row + 1, FINE)) * scale;
        let step =
            |column: usize| cut.step(cut.value(index, within, share(2 * column + 1, 2 * columns)));
        let mut from = 0;
        for column in 1..=columns {
            if column < columns && step(column) == step(from) {
                continue;
            }
            let role = cut.role(step(from));
            let half = layer.half_width_m * scale;
            let (near, far) = (half * share(from, columns), half * share(column, columns));
            // A hair of overlap, or the ground would show between patches.
            let patch = |x: f64, width: f64| Shape::Rectangle {
                role,
                x,
                y: top,
                width: width + 0.2,
                height: height + 0.3,
                corner: 0.0,
            };
            if from == 0 {
                shapes.push(patch(middle - far, 2.0 * far));
            } else {
                shapes.push(patch(middle - far, far - near));
                shapes.push(patch(middle + near, far - near));
            }
            from = column;
        }
    }
}

/// Heights at the left, widths below, in steps of a quarter, half or whole metre.
fn rulers(
    half_m: f64,
    height_m: f64,
    scale: f64,
    middle: f64,
    ground: f64,
    shapes: &mut Vec<Shape>,
) {
    let step = |span_m: f64| {
        [0.1, 0.25, 0.5, 1.0, 2.0]
            .into_iter()
            .find(|step| span_m / step <= 5.0)
            .unwrap_or(5.0)
    };
    let up = step(height_m);
    let mut at_m = up;
    while at_m <= height_m + 1e-9 {
        let y = ground - at_m * scale;
        let x = middle - half_m * scale;
        shapes.push(Shape::Line {
            role: "cut-tick",
            points: vec![(x - 4.0, y), (x, y)],
        });
        shapes.push(Shape::Text {
            role: "cut-label",
            at: (x - 7.0, y + 4.0),
            anchor: Anchor::End,
            text: format!("{}", (at_m * 100.0).round() / 100.0),
        });
        at_m += up;
    }
    shapes.push(Shape::Text {
        role: "cut-label",
        at: (middle, ground + 20.0),
        anchor: Anchor::Middle,
        text: format!("{} m wide", (half_m * 200.0).round() / 100.0),
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cut() -> Cut {
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
            probes: vec![(0.0, 0.4, "58".to_owned())],
        }
    }

    #[test]
    fn values_run_straight_between_the_middles_of_cells() {
        let cut = cut();
        assert_eq!(
            cut.value(1, 0.5, 1.0 / 6.0),
            60.0,
            "in the middle of a cell"
        );
        assert_eq!(cut.value(1, 0.5, 1.0 / 3.0), 55.0, "between two rings");
        assert_eq!(cut.value(1, 0.0, 1.0 / 6.0), 50.0, "between two layers");
        assert_eq!(
            cut.value(0, 0.0, 0.0),
            40.0,
            "no further than the cell at the rim"
        );
        assert_eq!((cut.step(9.0), cut.step(10.0), cut.step(70.0)), (0, 1, 7));
    }

    #[test]
    fn labels_tell_core_and_wall_of_each_layer_within_the_heap() {
        let labels = value_labels(&cut(), 360.0, 344.0);
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
                assert!((40.0..=320.0).contains(&at.0) && (12.0..=276.0).contains(&at.1));
            }
        }
    }

    #[test]
    fn patches_cover_the_cut_once_and_stay_in_the_room() {
        let picture = cross_section(&cut(), 360.0, 300.0);
        let mut area = 0.0;
        let mut room = (0.0, 0.0, 0.0, 0.0);
        for shape in &picture.shapes {
            if let Shape::Rectangle {
                role,
                x,
                y,
                width,
                height,
                ..
            } = shape
            {
                if *role == "cut-room" {
                    room = (*x, *y, x + width, y + height);
                } else {
                    area += (width - 0.2) * (height - 0.3);
                    assert!(*x >= room.0 - 0.5 && x + width <= room.2 + 0.5);
                    assert!(*y >= room.1 - 0.5 && y + height <= room.3 + 0.5);
                }
            }
        }
        let whole = (room.2 - room.0) * (room.3 - room.1) * 0.6;
        assert!((area / whole - 1.0).abs() < 1e-9, "{area} of {whole}");
    }
}
