//! A picture as a list of shapes, and its text as SVG.

use std::fmt::Write;

/// Where a text hangs on its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// It begins there.
    Start,
    /// Its middle is there.
    Middle,
    /// It ends there.
    End,
}

/// One shape. `role` names what it stands for; coordinates in pixels, y down.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A rectangle with round corners.
    Rectangle {
        /// What it stands for.
        role: &'static str,
        /// Left edge.
        x: f64,
        /// Upper edge.
        y: f64,
        /// Width.
        width: f64,
        /// Height.
        height: f64,
        /// Radius of the corners.
        corner: f64,
    },
    /// A broken line through points.
    Line {
        /// What it stands for.
        role: &'static str,
        /// The points.
        points: Vec<(f64, f64)>,
    },
    /// A closed area through points.
    Area {
        /// What it stands for.
        role: &'static str,
        /// The points.
        points: Vec<(f64, f64)>,
    },
    /// What lies within an odd number of closed loops: an area with its islands and holes.
    Region {
        /// What it stands for.
        role: &'static str,
        /// The loops.
        loops: Vec<Vec<(f64, f64)>>,
    },
    /// Many dots of one kind.
    Dots {
        /// What they stand for.
        role: &'static str,
        /// Their centres.
        points: Vec<(f64, f64)>,
    },
    /// A circle.
    Circle {
        /// What it stands for.
        role: &'static str,
        /// Centre.
        centre: (f64, f64),
        /// Radius.
        radius: f64,
    },
    /// A word.
    Text {
        /// What it stands for.
        role: &'static str,
        /// Where it hangs.
        at: (f64, f64),
        /// How it hangs there.
        anchor: Anchor,
        /// What it says.
        text: String,
    },
}

/// A picture.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Width in pixels.
    pub width: f64,
    /// Height in pixels.
    pub height: f64,
    /// What it shows, back to front.
    pub shapes: Vec<Shape>,
}

impl Picture {
    /// The inside of an `svg` element of this size: elements with a class each and
    /// no style, so that the strictest page policy lets them through.
    #[must_use]
    pub fn svg_inside(&self) -> String {
        let mut text = String::new();
        for shape in &self.shapes {
            write_shape(&mut text, shape);
        }
        text
    }
}

fn write_shape(text: &mut String, shape: &Shape) {
    // Writing to a string cannot fail.
    let _ = match shape {
        Shape::Rectangle {
            role,
            x,
            y,
            width,
            height,
            corner,
        } => write!(
            text,
            r#"<rect class="{role}" x="{}" y="{}" width="{}" height="{}" rx="{}"/>"#,
            short(*x),
            short(*y),
            short(*width),
            short(*height),
            short(*corner)
        ),
        Shape::Line { role, points } => write!(
            text,
            r#"<polyline class="{role}" points="{}"/>"#,
            list(points)
        ),
        Shape::Area { role, points } => write!(
            text,
            r#"<polygon class="{role}" points="{}"/>"#,
            list(points)
        ),
        Shape::Region { role, loops } => {
            let path: String = loops
                .iter()
                .map(|points| format!("M{}Z", list(points)))
                .collect();
            write!(
                text,
                r#"<path class="{role}" fill-rule="evenodd" d="{path}"/>"#
            )
        }
        Shape::Dots { role, points } => {
            // Lines of no length with round ends: one element for all dots.
            let mut path = String::new();
            for (x, y) in points {
                let _ = write!(path, "M{} {}h0", short(*x), short(*y));
            }
            write!(text, r#"<path class="{role}" d="{path}"/>"#)
        }
        Shape::Circle {
            role,
            centre,
            radius,
        } => write!(
            text,
            r#"<circle class="{role}" cx="{}" cy="{}" r="{}"/>"#,
            short(centre.0),
            short(centre.1),
            short(*radius)
        ),
        Shape::Text {
            role,
            at,
            anchor,
            text: words,
        } => {
            let anchor = match anchor {
                Anchor::Start => "start",
                Anchor::Middle => "middle",
                Anchor::End => "end",
            };
            write!(
                text,
                r#"<text class="{role}" x="{}" y="{}" text-anchor="{anchor}">{}</text>"#,
                short(at.0),
                short(at.1),
                escaped(words)
            )
        }
    };
}

fn list(points: &[(f64, f64)]) -> String {
    points
        .iter()
        .map(|(x, y)| format!("{},{}", short(*x), short(*y)))
        .collect::<Vec<_>>()
        .join(" ")
}

/// A tenth of a pixel is finer than any screen.
fn short(value: f64) -> String {
    let text = format!("{value:.1}");
    text.strip_suffix(".0")
        .map_or_else(|| text.clone(), str::to_owned)
}

fn escaped(words: &str) -> String {
    words
        .replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn svg_inside_escapes_words_and_rounds() {
        let picture = Picture {
            width: 10.0,
            height: 10.0,
            shapes: vec![Shape::Text {
                role: "label",
                at: (1.04, 2.0),
                anchor: Anchor::Middle,
                text: "a<b & c".to_owned(),
            }],
        };
        assert_eq!(
            picture.svg_inside(),
            r#"<text class="label" x="1" y="2" text-anchor="middle">a&lt;b &amp; c</text>"#
        );
    }
}
