//! Does a feed fit what its heap stands in? What does not is most often a slip of the finger.

use heapwright_engine::heap::{Cover, Enclosure, Ground, Shape, Wall};
use heapwright_journal::content::{
    Enclosure as EnclosureSaid, Ground as GroundSaid, Shape as ShapeSaid, Wall as WallSaid,
};

/// A feed that is more than its heap holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MoreThanFits {
    /// What is fed, as it lies loose [m3].
    pub fed_m3: f64,
    /// What the heap holds to the brim [m3].
    pub holds_m3: f64,
}

/// Loose leaves and grass can be trodden down to half of their volume: more than this many times what
/// a heap holds does not go in at once. An estimate.
const TRODDEN: f64 = 2.0;

/// Tells a feed that cannot go in at once, even into an empty heap.
///
/// - `enclosure`: what the heap stands in
/// - `fed_m3`: the feed as it lies loose
#[must_use]
pub fn more_than_fits(enclosure: &EnclosureSaid, fed_m3: f64) -> Option<MoreThanFits> {
    let holds_m3 = enclosure_of(enclosure).capacity_m3();
    (fed_m3 > TRODDEN * holds_m3).then_some(MoreThanFits { fed_m3, holds_m3 })
}

/// An enclosure as the engine has it, without its cover, which changes. What is not said is open, on
/// soil, as deep as wide.
#[must_use]
pub(crate) fn enclosure_of(said: &EnclosureSaid) -> Enclosure {
    Enclosure {
        shape: match said.shape {
            ShapeSaid::Cylinder => Shape::Cylinder,
            ShapeSaid::Cone => Shape::Cone,
            ShapeSaid::Drum => Shape::Drum,
            ShapeSaid::Box | ShapeSaid::Other => Shape::Box,
        },
        wall: match said.wall {
            Some(WallSaid::Mesh) => Wall::Mesh,
            Some(WallSaid::Slatted) => Wall::Slatted,
            Some(WallSaid::Wood) => Wall::Wood,
            Some(WallSaid::Plastic) => Wall::Plastic,
            Some(WallSaid::Metal) => Wall::Metal,
            Some(WallSaid::Insulated) => Wall::Insulated,
            _ => Wall::Open,
        },
        ground: match said.ground {
            Some(GroundSaid::Paving) => Ground::Paving,
            _ => Ground::Soil,
        },
        cover: Cover::None,
        ..Enclosure::open_box(
            said.width_m,
            said.depth_m.unwrap_or(said.width_m),
            said.height_m,
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(shape: ShapeSaid) -> EnclosureSaid {
        EnclosureSaid {
            shape,
            width_m: 1.0,
            depth_m: None,
            height_m: 0.9,
            wall: None,
            cover: None,
            ground: None,
        }
    }

    #[test]
    fn more_than_twice_the_room_does_not_fit() {
        let told = more_than_fits(&said(ShapeSaid::Box), 1.81).unwrap();
        assert!((told.holds_m3 - 0.9).abs() < 1e-12);
        assert!((told.fed_m3 - 1.81).abs() < 1e-12);
        assert_eq!(more_than_fits(&said(ShapeSaid::Box), 1.79), None);
    }

    #[test]
    fn the_room_is_that_of_the_shape() {
        for (shape, share) in [
            (ShapeSaid::Cylinder, std::f64::consts::FRAC_PI_4),
            (ShapeSaid::Cone, std::f64::consts::PI / 12.0),
        ] {
            let told = more_than_fits(&said(shape), 10.0).unwrap();
            assert!((told.holds_m3 - 0.9 * share).abs() < 1e-12);
        }
    }

    #[test]
    fn a_feed_that_has_no_volume_fits() {
        assert_eq!(more_than_fits(&said(ShapeSaid::Box), 0.0), None);
        assert_eq!(more_than_fits(&said(ShapeSaid::Box), f64::NAN), None);
    }
}
