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
