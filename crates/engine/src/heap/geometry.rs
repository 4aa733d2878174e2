//! How thick is each layer, how large are the faces, how far apart the cells?
//!
//! Rings are cut at equal fractions of the half width, so ring `r` of `m` holds the
//! share `((r+1)/m)^2 - (r/m)^2` of each layer. Layers keep the outline of the enclosure,
//! or narrow towards the point of a free heap.

use super::enclosure::{Enclosure, Shape};

/// Lowest height of what lies in a holder [m]: less than that is no layer any more, and lies
/// together on a part of the ground. Estimate: the size of the pieces of most feeds.
const LEAST_HEIGHT_M: f64 = 0.01;

/// Sizes of the grid at one moment.
#[derive(Clone, Debug, Default)]
pub(crate) struct Geometry {
    pub layers: usize,
    pub rings: usize,
    /// One cell that stands for the whole heap.
    pub lumped: bool,
    /// Share of a layer's area in each ring.
    pub ring_share: Vec<f64>,
    /// Thickness of each layer [m].
    pub thickness_m: Vec<f64>,
    /// Width of a ring in each layer [m].
    pub ring_width_m: Vec<f64>,
    /// Area of the lower boundary of each layer [m2], and at the end that of the top.
    pub level_m2: Vec<f64>,
    /// Outer side of each layer [m2].
    pub side_m2: Vec<f64>,
    /// Outline of each layer at its middle [m].
    pub outline_m: Vec<f64>,
    /// Volume of each layer [m3].
    pub volume_m3: Vec<f64>,
}

impl Geometry {
    pub(crate) fn new(layers: usize, rings: usize, lumped: bool) -> Self {
        #[allow(clippy::cast_precision_loss)] // a few rings
        let edge = |ring: usize| ring as f64 / rings as f64;
        Self {
            layers,
            rings,
            lumped,
            ring_share: (0..rings)
                .map(|ring| edge(ring + 1) * edge(ring + 1) - edge(ring) * edge(ring))
                .collect(),
            thickness_m: vec![0.0; layers],
            ring_width_m: vec![0.0; layers],
            level_m2: vec![0.0; layers + 1],
            side_m2: vec![0.0; layers],
            outline_m: vec![0.0; layers],
            volume_m3: vec![0.0; layers],
        }
    }

    /// Sizes that follow from `self.volume_m3`; `spread` is the base of a free heap over
    /// that of its full size.
    pub(crate) fn follow_volumes(&mut self, enclosure: &Enclosure, spread: f64) {
        let cone = enclosure.shape == Shape::Cone;
        let total: f64 = self.volume_m3.iter().sum();
        let spread = spread.min(gathered(enclosure, total));
        let base = enclosure.base_area_m2() * spread * spread;
        let outline = enclosure.perimeter_m() * spread;
        let half_width = 2.0 * base / outline;
        #[allow(clippy::cast_precision_loss)] // a few rings
        let rings = self.rings as f64;
        let height = 3.0 * total / base;
        let (mut below, mut lower) = (0.0, 1.0_f64);
        self.level_m2[0] = base;
        for layer in 0..self.layers {
            below += self.volume_m3[layer];
            let upper = if !cone {
                1.0
            } else if layer + 1 == self.layers {
                0.0
            } else {
                libm::cbrt((1.0 - below / total).max(0.0))
            };
            let scale = 0.5 * (lower + upper);
            let thickness = if cone {
                height * (lower - upper)
            } else {
                self.volume_m3[layer] / base
            };
            let inward = half_width * (lower - upper);
            self.thickness_m[layer] = thickness;
            self.ring_width_m[layer] = half_width * scale / rings;
            self.outline_m[layer] = outline * scale;
            self.side_m2[layer] =
                outline * scale * (thickness * thickness + inward * inward).sqrt();
            self.level_m2[layer + 1] = base * upper * upper;
            lower = upper;
        }
    }

    /// Height of the heap [m].
    pub(crate) fn height_m(&self) -> f64 {
        self.thickness_m.iter().sum()
    }

    /// Outer fraction of the half width of a ring.
    #[allow(clippy::cast_precision_loss)] // a few rings
    pub(crate) fn ring_edge(&self, ring: usize) -> f64 {
        (ring + 1) as f64 / self.rings as f64
    }

    /// All outer faces [m2].
    pub(crate) fn surface_m2(&self) -> f64 {
        self.side_m2.iter().sum::<f64>() + self.level_m2[0] + self.level_m2[self.layers]
    }
}

/// Base over that of the full size, as lengths, below which a volume stands as high as pieces
/// do; a volume smaller than a piece stands as high as it is wide.
fn gathered(enclosure: &Enclosure, volume_m3: f64) -> f64 {
    let height = LEAST_HEIGHT_M.min(libm::cbrt(volume_m3));
    let solid = if enclosure.shape == Shape::Cone {
        3.0
    } else {
        1.0
    };
    (solid * volume_m3 / (height * enclosure.base_area_m2())).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn little_lies_together() {
        let mut geometry = Geometry::new(1, 1, false);
        for (volume, height) in [(0.02, 0.02), (0.002, 0.01), (1e-9, 1e-3)] {
            geometry.volume_m3 = vec![volume];
            geometry.follow_volumes(&Enclosure::open_box(1.0, 1.0, 1.0), 1.0);
            assert!((geometry.height_m() - height).abs() < 1e-12);
            assert!((geometry.level_m2[0] * height - volume).abs() < 1e-15);
        }
    }

    #[test]
    fn a_cube_has_its_faces() {
        let mut geometry = Geometry::new(2, 2, false);
        geometry.volume_m3 = vec![0.5, 0.5];
        geometry.follow_volumes(&Enclosure::open_box(1.0, 1.0, 1.0), 1.0);
        assert!((geometry.surface_m2() - 6.0).abs() < 1e-12);
        assert_eq!(geometry.thickness_m, vec![0.5, 0.5]);
        assert_eq!(geometry.ring_width_m, vec![0.25, 0.25]);
        assert_eq!(geometry.ring_share, vec![0.25, 0.75]);
    }

    #[test]
    fn a_cone_has_its_height_and_flank() {
        let enclosure = Enclosure {
            shape: Shape::Cone,
            ..Enclosure::open_box(2.0, 2.0, 1.5)
        };
        let mut geometry = Geometry::new(3, 1, false);
        let volume = std::f64::consts::PI * 1.5 / 3.0;
        geometry.volume_m3 = vec![0.5 * volume, 0.3 * volume, 0.2 * volume];
        geometry.follow_volumes(&enclosure, 1.0);
        assert!((geometry.height_m() - 1.5).abs() < 1e-12);
        // Lateral area pi r sqrt(r^2 + h^2).
        let flank = std::f64::consts::PI * (1.0_f64 + 2.25).sqrt();
        assert!((geometry.side_m2.iter().sum::<f64>() - flank).abs() < 1e-9);
    }
}
