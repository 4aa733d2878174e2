//! A picture of the drawings crate as an SVG element.

use heapwright_drawings::Picture;
use leptos::prelude::*;

/// Draws a picture; what it says must stand beside it in words.
#[component]
pub fn Drawn(
    /// The picture.
    picture: Picture,
    /// Class of the element.
    class: &'static str,
) -> impl IntoView {
    let view_box = format!("0 0 {} {}", picture.width, picture.height);
    view! {
        <svg class=class viewBox=view_box aria-hidden="true" focusable="false" inner_html=picture.svg_inside()></svg>
    }
}

/// How wide a picture in a card can be [px]: a card fills a phone, and one of two columns of a desk.
pub fn width_px() -> f64 {
    /// From here on cards stand in two columns [px].
    const DESK: f64 = 1200.0;
    /// The widest page, and what lies beside the columns [px].
    const WIDEST: f64 = 1216.0;
    const BESIDE: f64 = 32.0 + 24.0;
    /// What a card has at its sides [px].
    const RIM: f64 = 34.0;
    let window = window().inner_width().ok().and_then(|width| width.as_f64());
    let window = window.unwrap_or(360.0);
    let column = if window < DESK {
        window - 32.0
    } else {
        (window.min(WIDEST) - BESIDE) / 2.0
    };
    (column - RIM).clamp(250.0, 640.0)
}
