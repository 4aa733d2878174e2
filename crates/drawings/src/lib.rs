//! Pictures as plain shapes, from answers only.
//!
//! A picture has a size, shapes with the name of their role, and no colour: the
//! face dresses roles by its own style. The same picture goes to the web page,
//! to a file and to paper.
#![cfg_attr(test, allow(clippy::unwrap_used))]

mod calendar;
mod contours;
mod cross_section;
mod cut_around;
mod events;
mod map_arrows;
mod map_cloud;
mod mark_words;
mod mix_map;
mod of_heap;
mod over_time;
mod picture;
mod range_bar;

pub use calendar::{Season, season};
pub use cross_section::{Cut, CutLayer, Field, Sides, cross_section, height_of_cut, value_labels};
pub use events::{Doing, Event};
pub use mix_map::{MapScale, MapWords, mix_map, mix_map_in};
pub use of_heap::{core_line, core_over_time, cut_open, cut_with_key, sides_of};
pub use over_time::{BandPoint, OverTime, over_time};
pub use picture::{Anchor, Picture, Shape};
pub use range_bar::range_bar;
