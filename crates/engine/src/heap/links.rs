//! How well do heat, vapour and air pass from cell to cell and to the outside?

use super::air;
use super::cell::{Cell, MJ_PER_D_PER_W};
use super::enclosure::{Enclosure, Face, Shape};
use super::geometry::Geometry;
use super::parameters::Parameters;
use super::weather::Air;

/// Between two cells.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Link {
    pub low: usize,
    pub high: usize,
    pub layer: usize,
    pub ring: usize,
    pub upward: bool,
    /// Conduction [MJ/(d K)].
    pub heat: f64,
    /// Diffusion [kg air/d].
    pub diffusion: f64,
    /// Draught [kg/(d Pa)].
    pub draught: f64,
    /// Pressure that drives air from low to high [Pa].
    pub lift_pa: f64,
    /// Air from low to high [kg/d].
    pub flow: f64,
}

/// Which way a face looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Side {
    Flank,
    Top,
    Bottom,
}

/// Between a cell and the outside.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Outlet {
    pub cell: usize,
    pub layer: usize,
    pub ring: usize,
    pub side: Side,
    /// Conduction [MJ/(d K)].
    pub heat: f64,
    /// Temperature beyond [degrees Celsius].
    pub beyond_c: f64,
    /// Heat by sun, less what the clear sky takes [MJ/d].
    pub sun: f64,
    /// Diffusion and wind [kg air/d].
    pub exchange: f64,
    /// Moisture that leaves the skin for one of humidity [kg air/d].
    pub skin: f64,
    /// Humidity at the skin [kg/kg].
    pub skin_humidity: f64,
    /// Draught [kg/(d Pa)].
    pub draught: f64,
    /// Pressure that drives air outward [Pa].
    pub lift_pa: f64,
    /// Air outward [kg/d].
    pub flow: f64,
}

/// The outside air, with what follows from it.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Outside {
    pub temperature_c: f64,
    pub ground_c: f64,
    pub humidity: f64,
    pub vapour_heat: f64,
    pub density: f64,
    /// Heat transfer at an outer face [W/(m2 K)].
    pub film_w_m2_k: f64,
    /// Moisture transfer at an outer face [kg air/(m2 d)].
    pub film_moisture: f64,
    /// Wind exchange of the outer decimetre, per air space and area [kg air/(m2 d)].
    pub wind: f64,
    /// Warming by sun and cooling by sky of a level face [K].
    pub sun_k: f64,
    pub sky_k: f64,
}

/// Share of the sun that a heap takes up.
const SUN_TAKEN: f64 = 0.8;
/// Cooling of a level face below a clear sky [K]: ASHRAE sol-air temperature (from memory).
const CLEAR_SKY_K: f64 = 4.0;
/// Depth that the wind reaches [m].
const WIND_DEPTH_M: f64 = 0.1;
/// Wetness between which the skin dries out, wet basis. Estimate.
const DRY_SKIN: f64 = 0.20;
const WET_SKIN: f64 = 0.45;
const GRAVITY: f64 = 9.81;

impl Outside {
    pub(crate) fn of(air: &Air, saturation_pa: f64, parameters: &Parameters) -> Self {
        let temperature_c = air.temperature_c;
        let vapour = air.relative_humidity * saturation_pa;
        // Convection 2.5 + 3.5 v, radiation 5 W/(m2 K); together some 5 + 4 v near a
        // sheltered face (ASHRAE, from memory).
        let film = (5.0 + 4.0 * air.wind_m_s) * parameters.surface_factor;
        let convection = (2.5 + 3.5 * air.wind_m_s) * parameters.surface_factor;
        let density = air::density_kg_m3(temperature_c, vapour);
        Self {
            temperature_c,
            ground_c: air.ground_c + parameters.air_offset_k,
            humidity: air::humidity_ratio(vapour),
            vapour_heat: air::VAPOUR_HEAT_AT_ZERO_MJ_KG + air::VAPOUR_HEAT_MJ_KG_K * temperature_c,
            density,
            film_w_m2_k: film,
            // Lewis: moisture transfer is heat transfer over specific heat.
            film_moisture: convection * MJ_PER_D_PER_W / air::AIR_HEAT_MJ_KG_K,
            // Light air of 1.25 m/s exchanges as much as the parameter says.
            wind: parameters.wind_exchange_per_d
                * WIND_DEPTH_M
                * density
                * (0.5 + 0.4 * air.wind_m_s),
            sun_k: SUN_TAKEN * air.solar_w_m2 / film,
            sky_k: CLEAR_SKY_K * (1.0 - air.cloud_cover),
        }
    }
}

/// All links and outlets of a grid, without their sizes.
pub(crate) fn wired(geometry: &Geometry) -> (Vec<Link>, Vec<Outlet>) {
    let (layers, rings) = (geometry.layers, geometry.rings);
    let (mut links, mut outlets) = (Vec::new(), Vec::new());
    for layer in 0..layers {
        for ring in 0..rings {
            let cell = layer * rings + ring;
            let mut link = |high, upward| {
                links.push(Link {
                    low: cell,
                    high,
                    layer,
                    ring,
                    upward,
                    ..Link::default()
                });
            };
            if ring + 1 < rings {
                link(cell + 1, false);
            }
            if layer + 1 < layers {
                link(cell + rings, true);
            }
            let mut outlet = |side| {
                outlets.push(Outlet {
                    cell,
                    layer,
                    ring,
                    side,
                    heat: 0.0,
                    beyond_c: 0.0,
                    sun: 0.0,
                    exchange: 0.0,
                    skin: 0.0,
                    skin_humidity: 0.0,
                    draught: 0.0,
                    lift_pa: 0.0,
                    flow: 0.0,
                });
            };
            if layer == 0 {
                outlet(Side::Bottom);
            }
            if ring + 1 == rings {
                outlet(Side::Flank);
            }
            if layer + 1 == layers {
                outlet(Side::Top);
            }
        }
    }
    (links, outlets)
}

impl Link {
    /// Sizes from the cells as they are.
    #[inline]
    pub(crate) fn follow(&mut self, geometry: &Geometry, cells: &[Cell], outside: &Outside) {
        let (low, high) = (&cells[self.low], &cells[self.high]);
        let (area, half_low, half_high) = if self.upward {
            (
                geometry.level_m2[self.layer + 1] * geometry.ring_share[self.ring],
                0.5 * geometry.thickness_m[self.layer],
                0.5 * geometry.thickness_m[self.layer + 1],
            )
        } else {
            let half = 0.5 * geometry.ring_width_m[self.layer];
            let edge = geometry.ring_edge(self.ring);
            (
                geometry.outline_m[self.layer] * edge * geometry.thickness_m[self.layer],
                half,
                half,
            )
        };
        // Two halves in a row: their resistances add.
        let series = |one: f64, other: f64| {
            area * one * other / (half_low * other + half_high * one + 1e-300)
        };
        self.heat = series(low.conductivity, high.conductivity);
        self.diffusion = series(low.diffusion, high.diffusion);
        self.draught = series(low.permeability, high.permeability);
        self.lift_pa = if self.upward {
            GRAVITY
                * ((outside.density - low.gas_density) * half_low
                    + (outside.density - high.gas_density) * half_high)
        } else {
            0.0
        };
    }
}

impl Outlet {
    /// Sizes from the cell as it is.
    ///
    /// - `saturation`: saturation pressure [Pa] at a temperature
    #[inline]
    pub(crate) fn follow(
        &mut self,
        geometry: &Geometry,
        enclosure: &Enclosure,
        cells: &[Cell],
        outside: &Outside,
        parameters: &Parameters,
        saturation: impl Fn(f64) -> f64,
    ) {
        let cell = &cells[self.cell];
        let drum = enclosure.shape == Shape::Drum;
        let (face, area, half): (Face, f64, f64) = match self.side {
            Side::Flank => (
                enclosure.flank(),
                geometry.side_m2[self.layer],
                0.5 * geometry.ring_width_m[self.layer],
            ),
            Side::Top => (
                enclosure.top(),
                geometry.level_m2[geometry.layers] * geometry.ring_share[self.ring],
                0.5 * geometry.thickness_m[self.layer],
            ),
            Side::Bottom => (
                Face {
                    openness: 0.0,
                    detour_m: f64::INFINITY,
                    sun: 0.0,
                    ..enclosure.side()
                },
                geometry.level_m2[0] * geometry.ring_share[self.ring],
                0.5 * geometry.thickness_m[self.layer],
            ),
        };
        // The mean of a sphere stands for a lumped heap: a fifth of its radius from the face.
        let surface = geometry.surface_m2();
        let distance = if geometry.lumped {
            0.6 * geometry.volume_m3[0] / surface
        } else {
            half
        };
        let on_ground = self.side == Side::Bottom && !drum;
        let film = if on_ground {
            parameters.ground_coefficient_w_m2_k
        } else {
            outside.film_w_m2_k
        };
        let resistance = if on_ground {
            0.0
        } else {
            face.resistance_m2_k_w
        };
        let inner = distance * MJ_PER_D_PER_W / cell.conductivity;
        self.beyond_c = if on_ground {
            outside.ground_c
        } else {
            outside.temperature_c
        };
        self.heat = match enclosure.heat_loss_w_per_k {
            Some(loss) => {
                let plain = loss * area / surface;
                if geometry.lumped {
                    plain * MJ_PER_D_PER_W
                } else {
                    area * MJ_PER_D_PER_W / (area / plain.max(1e-12) + inner)
                }
            }
            None => area * MJ_PER_D_PER_W / (1.0 / film + resistance + inner),
        };
        if enclosure.heat_loss_w_per_k.is_some() {
            self.beyond_c = outside.temperature_c;
        }
        let sky = if self.side == Side::Top {
            outside.sky_k
        } else {
            0.0
        };
        self.sun = self.heat * (face.sun * outside.sun_k - sky * face.sun);
        // A vessel that is blown through is closed all round.
        let closed = enclosure.forced_air_kg_per_d.is_some();
        let (open, reached) = if closed {
            (0.0, 0.0)
        } else {
            (face.openness * area, area)
        };
        self.exchange = reached * cell.diffusion / (distance + face.detour_m)
            + open * outside.wind * cell.air_space;
        self.draught = reached * cell.permeability / (half + face.detour_m);
        self.lift_pa = if self.side == Side::Top {
            GRAVITY * (outside.density - cell.gas_density) * half
        } else {
            0.0
        };
        self.skin = 0.0;
        if open > 0.0 && enclosure.heat_loss_w_per_k.is_none() {
            let wetness = ((cell.moisture - DRY_SKIN) / (WET_SKIN - DRY_SKIN)).clamp(0.0, 1.0);
            let share = self.heat / (area * MJ_PER_D_PER_W * film).max(1e-300);
            let warmth = (cell.temperature_c - self.beyond_c) * share.min(1.0)
                + (1.0 - share.min(1.0)) * (face.sun * outside.sun_k - sky * face.sun);
            self.skin_humidity = air::humidity_ratio(saturation(self.beyond_c + warmth));
            let crust = parameters.skin_m / cell.diffusion;
            self.skin = open * wetness / (1.0 / outside.film_moisture + crust);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use heapwright_numerics::SymmetricBanded;

    /// Centre over wall and mean over wall of a long round heap heated evenly, per g R2 / k.
    #[allow(clippy::cast_precision_loss)]
    fn round_heap(rings: usize) -> (f64, f64) {
        let enclosure = Enclosure {
            shape: Shape::Cylinder,
            ..Enclosure::open_box(2.0, 2.0, 1.0)
        };
        let mut geometry = Geometry::new(1, rings, false);
        geometry.volume_m3[0] = std::f64::consts::PI;
        geometry.follow_volumes(&enclosure, 1.0);
        let cells = vec![
            Cell {
                conductivity: 1.0,
                ..Cell::default()
            };
            rings
        ];
        let (mut links, _) = wired(&geometry);
        let mut matrix = SymmetricBanded::new(rings, 1);
        for link in &mut links {
            link.follow(&geometry, &cells, &Outside::default());
            matrix.connect(link.low, link.high, link.heat);
        }
        matrix.ground(
            rings - 1,
            geometry.side_m2[0] / (0.5 * geometry.ring_width_m[0]),
        );
        assert!(matrix.factor());
        let mut rise: Vec<f64> = geometry
            .ring_share
            .iter()
            .map(|share| share * std::f64::consts::PI)
            .collect();
        matrix.solve(&mut rise);
        let mean = rise
            .iter()
            .zip(&geometry.ring_share)
            .map(|(rise, share)| rise * share)
            .sum();
        (rise[0], mean)
    }

    #[test]
    fn even_heating_of_a_cylinder_meets_carslaw_and_jaeger_at_second_order() {
        // Centre g R2 / 4k, mean g R2 / 8k (Carslaw and Jaeger 1959).
        let (coarse, fine) = (round_heap(5), round_heap(20));
        assert!((fine.0 - 0.25).abs() < 2e-3, "{fine:?}");
        assert!((fine.1 - 0.125).abs() < 1e-3, "{fine:?}");
        let order = libm::log2((coarse.1 - 0.125).abs() / (fine.1 - 0.125).abs()) / 2.0;
        assert!(order > 1.7, "order {order}");
    }

    #[test]
    fn the_lumped_distance_is_that_of_a_sphere() {
        // Mean over surface g R2 / 15k means a resistance of R / 5k.
        let radius = 0.62_f64;
        let volume = 4.0 / 3.0 * std::f64::consts::PI * radius * radius * radius;
        let surface = 4.0 * std::f64::consts::PI * radius * radius;
        let distance = 0.6 * volume / surface;
        assert!((distance - radius / 5.0).abs() < 1e-12);
        let rise = 500.0 * volume / surface * distance / 0.40;
        assert!((rise - 32.0).abs() < 0.1, "{rise}");
    }
}
