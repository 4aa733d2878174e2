//! Where should a mixture lie?

/// The region in which a heap works well.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Target {
    /// Lowest C:N on the handbook scale.
    pub carbon_to_nitrogen_low: f64,
    /// Highest C:N on the handbook scale.
    pub carbon_to_nitrogen_high: f64,
    /// The C:N to aim at, between the two.
    pub carbon_to_nitrogen_goal: f64,
    /// Lowest moisture, wet basis [kg/kg].
    pub moisture_wet_basis_low: f64,
    /// Highest moisture, wet basis [kg/kg].
    pub moisture_wet_basis_high: f64,
    /// Lowest free air space, share of the volume [m3/m3].
    pub free_air_space_low: f64,
    /// Highest free air space, share of the volume [m3/m3].
    pub free_air_space_high: f64,
}
