//! A picture in black on white: what colours tell on a screen, hatching, dashes and fills tell here.

use heapwright_drawings::{Anchor, Picture, Shape};
use serde::{Deserialize, Serialize};

/// Points of a pixel: letters of 12 px become 9 pt, the smallest on paper.
pub const POINTS_OF_PIXEL: f64 = 0.75;

/// A drawing; lengths in points, y down.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Drawing {
    /// Width [pt].
    pub width: f64,
    /// Height [pt].
    pub height: f64,
    /// What it shows, back to front.
    pub strokes: Vec<Stroke>,
}

/// One thing that is drawn.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Stroke {
    /// A line through points, or an area when it is closed.
    Path {
        /// How it is drawn.
        ink: Ink,
        /// Through where.
        points: Vec<(f64, f64)>,
        /// Whether the last point is joined to the first.
        closed: bool,
    },
    /// A disc.
    Disc {
        /// How it is drawn.
        ink: Ink,
        /// Its middle.
        centre: (f64, f64),
        /// Its radius.
        radius: f64,
    },
    /// A word.
    Word {
        /// Where it hangs.
        at: (f64, f64),
        /// How it hangs there: 0 begins, 0.5 is in the middle, 1 ends.
        hang: f64,
        /// What it says.
        text: String,
        /// Set in bold.
        strong: bool,
    },
}

/// How something is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Ink {
    /// The rim of a plot.
    Frame,
    /// A thin grey line that only guides the eye.
    Guide,
    /// A thin line.
    Fine,
    /// A line that matters.
    Bold,
    /// Long dashes.
    Dashed,
    /// Points.
    Dotted,
    /// Wide hatching.
    Hatched,
    /// Narrow hatching.
    HatchedDense,
    /// White with a rim.
    Hollow,
    /// White: what lies below is hidden.
    Paper,
    /// Black.
    Solid,
}

impl Drawing {
    /// A picture of the answers, in ink.
    #[must_use]
    pub fn of(picture: &Picture) -> Self {
        Self {
            width: scaled(picture.width),
            height: scaled(picture.height),
            strokes: picture.shapes.iter().flat_map(strokes_of).collect(),
        }
    }
}

fn scaled(pixels: f64) -> f64 {
    pixels * POINTS_OF_PIXEL
}

fn at((x, y): (f64, f64)) -> (f64, f64) {
    (scaled(x), scaled(y))
}

fn strokes_of(shape: &Shape) -> Vec<Stroke> {
    match shape {
        Shape::Rectangle {
            role,
            x,
            y,
            width,
            height,
            ..
        } => {
            let (right, bottom) = (x + width, y + height);
            let corners = [(*x, *y), (right, *y), (right, bottom), (*x, bottom)];
            vec![Stroke::Path {
                ink: ink(role),
                points: corners.map(at).to_vec(),
                closed: true,
            }]
        }
        Shape::Line { role, points } => vec![Stroke::Path {
            ink: ink(role),
            points: points.iter().copied().map(at).collect(),
            closed: false,
        }],
        Shape::Area { role, points } => vec![Stroke::Path {
            ink: ink(role),
            points: points.iter().copied().map(at).collect(),
            closed: true,
        }],
        Shape::Region { role, loops } => loops
            .iter()
            .map(|points| Stroke::Path {
                ink: ink(role),
                points: points.iter().copied().map(at).collect(),
                closed: true,
            })
            .collect(),
        Shape::Dots { points, .. } => points
            .iter()
            .map(|point| Stroke::Disc {
                ink: Ink::Solid,
                centre: at(*point),
                radius: 0.3,
            })
            .collect(),
        Shape::Circle {
            role,
            centre,
            radius,
        } => vec![Stroke::Disc {
            ink: ink(role),
            centre: at(*centre),
            radius: scaled(*radius),
        }],
        Shape::Text {
            role,
            at: point,
            anchor,
            text,
        } => {
            let hang = match anchor {
                Anchor::Start => 0.0,
                Anchor::Middle => 0.5,
                Anchor::End => 1.0,
            };
            let word = Stroke::Word {
                at: at(*point),
                hang,
                text: text.clone(),
                strong: *role == "map-number",
            };
            match *role {
                "map-word" | "map-end" | "time-word" => vec![behind(at(*point), hang, text), word],
                _ => vec![word],
            }
        }
    }
}

/// White behind a word that stands on lines: what a screen does with a rim around its letters.
fn behind((x, y): (f64, f64), hang: f64, text: &str) -> Stroke {
    const LETTER: f64 = 4.6;
    const RIM: f64 = 1.5;
    #[allow(clippy::cast_precision_loss)] // a word
    let wide = text.chars().count() as f64 * LETTER;
    let (left, right) = (x - wide * hang - RIM, x + wide * (1.0 - hang) + RIM);
    let (top, bottom) = (y - 7.0, y + 2.5);
    Stroke::Path {
        ink: Ink::Paper,
        points: vec![(left, top), (right, top), (right, bottom), (left, bottom)],
        closed: true,
    }
}

fn ink(role: &str) -> Ink {
    match role {
        "map-ground" | "time-ground" | "cut-room" | "map-edge" | "time-edge" => Ink::Frame,
        "map-grid" | "time-grid" => Ink::Guide,
        "map-region" | "time-wide" => Ink::Hatched,
        "time-half" => Ink::HatchedDense,
        "map-here" | "map-move-head" | "time-done" => Ink::Solid,
        "map-hand" | "map-badge" | "time-plan" | "time-reading" | "cut-probe" => Ink::Hollow,
        "time-middle" | "time-now" | "map-move" | "cut-ground" => Ink::Bold,
        "time-flag" | "time-other-1" => Ink::Dotted,
        "map-way" | "time-mark" | "time-other-0" | "time-other-2" => Ink::Dashed,
        _ => Ink::Fine,
    }
}
