//! How dense are water and solids themselves, pores left out?

/// Density of water [kg/m3] in the air-space equation. Source: `RICHARD04m`.
pub const WATER_DENSITY_KG_M3: f64 = 1000.0;
/// Density of solid organic matter [kg/m3]. Source: `RICHARD04m`.
pub const ORGANIC_MATTER_DENSITY_KG_M3: f64 = 1600.0;
/// Density of solid ash [kg/m3]. Source: `RICHARD04m`.
pub const ASH_DENSITY_KG_M3: f64 = 2500.0;
