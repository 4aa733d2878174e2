//! A figure against its aim on one line: the aim as a band, the 80 % interval as a
//! stroke, the value as a mark.

use heapwright_answers::Figure;
use heapwright_quantity::Interval;
use heapwright_terms::Target;

use crate::mix_map::MapScale;
use crate::picture::{Picture, Shape};

const HEIGHT: f64 = 20.0;
const RIM: f64 = 6.0;

/// Draws the bar of a figure that has an aim: C:N, moisture or air space.
///
/// `width` in pixels. `None` for figures without an aim.
#[must_use]
pub fn range_bar(
    figure: Figure,
    interval: &Interval,
    target: &Target,
    width: f64,
) -> Option<Picture> {
    // The C:N has the same steps for the same ratios as on the map.
    let ratio_scale = MapScale::without_labels(RIM, width - RIM);
    let share = |value: f64| RIM + (width - 2.0 * RIM) * value.clamp(0.0, 1.0);
    let (x, low, high): (Box<dyn Fn(f64) -> f64>, f64, f64) = match figure {
        Figure::CarbonToNitrogen => (
            Box::new(move |value| ratio_scale.x(value)),
            target.carbon_to_nitrogen_low,
            target.carbon_to_nitrogen_high,
        ),
        Figure::Moisture => (
            Box::new(share),
            target.moisture_wet_basis_low,
            target.moisture_wet_basis_high,
        ),
        Figure::FreeAirSpace => (
            Box::new(share),
            target.free_air_space_low,
            target.free_air_space_high,
        ),
        Figure::Mass | Figure::Volume => return None,
    };
    let middle = HEIGHT / 2.0;
    Some(Picture {
        width,
        height: HEIGHT,
        shapes: vec![
            Shape::Rectangle {
                role: "bar-ground",
                x: 0.0,
                y: middle - 3.0,
                width,
                height: 6.0,
                corner: 3.0,
            },
            Shape::Rectangle {
                role: "bar-aim",
                x: x(low),
                y: middle - 7.0,
                width: (x(high) - x(low)).max(2.0),
                height: 14.0,
                corner: 4.0,
            },
            Shape::Line {
                role: "bar-range",
                points: vec![(x(interval.low), middle), (x(interval.high), middle)],
            },
            Shape::Circle {
                role: "bar-value",
                centre: (x(interval.value), middle),
                radius: 5.0,
            },
        ],
    })
}
