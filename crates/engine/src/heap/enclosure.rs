//! What holds the heap, and what passes through its faces?

/// Outline of the heap.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// Upright walls on a rectangle.
    Box,
    /// Upright round wall.
    Cylinder,
    /// A heap that stands free and runs to a point.
    Cone,
    /// A closed drum, air on all sides.
    Drum,
}

/// What the sides are made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wall {
    /// Nothing.
    Open,
    /// Wire.
    Mesh,
    /// Boards with gaps.
    Slatted,
    /// Boards without gaps.
    Wood,
    /// Plastic with vents.
    Plastic,
    /// Sheet metal with vents.
    Metal,
    /// Double walls with foam.
    Insulated,
}

/// What lies on top.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cover {
    /// Nothing.
    None,
    /// A sheet on the heap.
    Sheet,
    /// A lid.
    Lid,
    /// A roof at some height.
    Roof,
}

/// What the heap stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ground {
    /// Earth.
    Soil,
    /// Slabs.
    Paving,
}

/// The holder of a heap, or the ground it stands on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Enclosure {
    /// Outline.
    pub shape: Shape,
    /// Width, or diameter [m].
    pub width_m: f64,
    /// Depth [m]; round shapes take the width.
    pub depth_m: f64,
    /// Height to the brim [m].
    pub height_m: f64,
    /// Sides.
    pub wall: Wall,
    /// Top.
    pub cover: Cover,
    /// Bottom.
    pub ground: Ground,
    /// Measured loss of heat of a vessel [W/K], in place of what its walls suggest.
    pub heat_loss_w_per_k: Option<f64>,
    /// Air blown in from below [kg/d], in place of natural draught.
    pub forced_air_kg_per_d: Option<f64>,
}

/// A face towards the outside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Face {
    /// Share of its area that is open to air. Estimates.
    pub openness: f64,
    /// What the way of air to the openings is longer than the straight one through the
    /// heap [m]; infinite where nothing passes.
    pub detour_m: f64,
    /// Resistance of what covers it [m2 K/W], from thickness and conductivity.
    pub resistance_m2_k_w: f64,
    /// Share of the sun that reaches it.
    pub sun: f64,
}

/// Length that slits of a share of a wall add to the way through what lies behind it [m].
///
/// - `share`: of the wall that is open
/// - `spacing_m`: from slit to slit
///
/// Flow lines that gather in evenly spaced slits: the conformal map of a strip gives
/// `spacing / pi * ln(1 / sin(pi * share / 2))`.
#[must_use]
pub fn detour_m(share: f64, spacing_m: f64) -> f64 {
    use std::f64::consts::{FRAC_PI_2, PI};
    -spacing_m / PI * libm::log(libm::sin(FRAC_PI_2 * share))
}

impl Enclosure {
    /// A box of open sides on soil, without cover.
    #[must_use]
    pub fn open_box(width_m: f64, depth_m: f64, height_m: f64) -> Self {
        Self {
            shape: Shape::Box,
            width_m,
            depth_m,
            height_m,
            wall: Wall::Open,
            cover: Cover::None,
            ground: Ground::Soil,
            heat_loss_w_per_k: None,
            forced_air_kg_per_d: None,
        }
    }

    /// Base area [m2].
    #[must_use]
    pub fn base_area_m2(&self) -> f64 {
        match self.shape {
            Shape::Box => self.width_m * self.depth_m,
            Shape::Cylinder | Shape::Drum => {
                0.25 * std::f64::consts::PI * self.width_m * self.width_m
            }
            // An ellipse: free heaps are often longer than wide.
            Shape::Cone => 0.25 * std::f64::consts::PI * self.width_m * self.depth_m,
        }
    }

    /// Length of the outline of the base [m].
    #[must_use]
    pub fn perimeter_m(&self) -> f64 {
        match self.shape {
            Shape::Box => 2.0 * (self.width_m + self.depth_m),
            Shape::Cylinder | Shape::Drum => std::f64::consts::PI * self.width_m,
            Shape::Cone => {
                // Root mean square of the axes; within 3 % up to twice as long as wide.
                let square = 0.5 * (self.width_m * self.width_m + self.depth_m * self.depth_m);
                std::f64::consts::PI * square.sqrt()
            }
        }
    }

    /// What it holds to the brim [m3].
    #[must_use]
    pub fn capacity_m3(&self) -> f64 {
        let prism = self.base_area_m2() * self.height_m;
        if self.shape == Shape::Cone {
            prism / 3.0
        } else {
            prism
        }
    }

    /// The sides. Resistances: 20 mm board 0.15, 3 mm plastic 0.01, 50 mm foam 1.4 m2 K/W.
    ///
    /// Detours by [`detour_m`]: gaps of 20 mm between boards of 100 mm 0.05 m, joints of
    /// 3 mm 0.12 m, rows of vents 0.15 m apart that are a twenty-fifth of the wall 0.13 m.
    #[must_use]
    pub fn side(&self) -> Face {
        let (openness, detour, resistance_m2_k_w) = match self.wall {
            Wall::Open => (1.0, 0.0, 0.0),
            Wall::Mesh => (0.9, 0.0, 0.0),
            Wall::Slatted => (0.5, detour_m(0.17, 0.12), 0.10),
            Wall::Wood => (0.2, detour_m(0.03, 0.12), 0.15),
            Wall::Plastic => (0.15, detour_m(0.04, 0.15), 0.01),
            Wall::Metal => (0.10, detour_m(0.04, 0.15), 0.0),
            Wall::Insulated => (0.15, detour_m(0.04, 0.15), 1.4),
        };
        Face {
            openness,
            detour_m: detour,
            resistance_m2_k_w,
            sun: if self.shape == Shape::Cone {
                0.5
            } else {
                1.0 / 3.0
            },
        }
    }

    /// The top.
    #[must_use]
    pub fn top(&self) -> Face {
        // Beneath a lid is air that changes ten times its height a day (estimate): as much
        // as a hand's breadth of heap hinders. A sheet lies on and lets air in at its hems.
        let (openness, detour_m, resistance_m2_k_w, sun) = match self.cover {
            Cover::None => (1.0, 0.0, 0.0, 1.0),
            Cover::Sheet => (0.15, 0.5, 0.02, 1.0),
            Cover::Lid if self.wall == Wall::Insulated => (0.2, 0.1, 1.0, 1.0),
            Cover::Lid => (0.2, 0.1, 0.02, 1.0),
            Cover::Roof => (0.9, 0.0, 0.0, 0.0),
        };
        if self.shape == Shape::Drum {
            let side = self.side();
            return Face { sun, ..side };
        }
        Face {
            openness,
            detour_m,
            resistance_m2_k_w,
            sun,
        }
    }

    /// Share of the rain on its plan that reaches the heap.
    #[must_use]
    pub fn rain_share(&self) -> f64 {
        match (self.shape, self.cover) {
            (Shape::Drum, _) | (_, Cover::Lid | Cover::Roof) => 0.0,
            (_, Cover::Sheet) => 0.05,
            (_, Cover::None) => 1.0,
        }
    }

    /// The sides of a covered free heap are covered too.
    pub(crate) fn flank(&self) -> Face {
        if self.shape == Shape::Cone && self.cover == Cover::Sheet {
            let top = self.top();
            return Face {
                sun: self.side().sun,
                ..top
            };
        }
        self.side()
    }

    /// The first entry that has no meaning.
    pub(crate) fn fault(&self) -> Option<&'static str> {
        let length = |value: f64| value.is_finite() && value > 0.01 && value < 1000.0;
        let rate =
            |value: Option<f64>| value.is_none_or(|v| v.is_finite() && (0.0..1e6).contains(&v));
        if !length(self.width_m) {
            Some("width")
        } else if !length(self.depth_m) {
            Some("depth")
        } else if !length(self.height_m) {
            Some("height")
        } else if !rate(self.heat_loss_w_per_k) {
            Some("heat loss")
        } else if !rate(self.forced_air_kg_per_d) {
            Some("forced air")
        } else {
            None
        }
    }
}
