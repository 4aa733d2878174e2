//! The figures by which compost is given out; where they come from is not known here.

use heapwright_quantity::Range;

use super::nitrogen::Marks;

/// Figures of the trade; see `crates/catalogue/tables/spreading.csv`.
#[derive(Clone, Debug, PartialEq)]
pub struct Rules {
    /// Share of all nitrogen that is there in the first year where nothing was measured.
    pub nitrogen_first_year: Range,
    /// Share of what remains, in each later year.
    pub nitrogen_later: Range,
    /// Mineral nitrogen over all nitrogen where it was not measured.
    pub mineral_share: Range,
    /// Share of the organic nitrogen that is released in the first year, by C:N.
    pub organic_marks: Marks,
    /// Factors on that share.
    pub organic_spread: Range,
    /// Share of the phosphorus that is there in the first year.
    pub phosphorus_first_year: Range,
    /// Share of the potassium that is there in the first year.
    pub potassium_first_year: Range,
    /// Years whose removal of phosphorus may be given at once.
    pub phosphorus_window_years: f64,
    /// Factor on that where the soil is low in phosphorus.
    pub phosphorus_build_up: f64,
    /// Soil phosphorus below which it is low [kg/kg].
    pub low_soil_phosphorus: f64,
    /// Soil phosphorus above which only one year's removal is given [kg/kg].
    pub high_soil_phosphorus: f64,
    /// Soil potassium above which none is needed [kg/kg].
    pub high_soil_potassium: f64,
    /// Deepest yearly layer on a bed that was fed before [m].
    pub established_depth_m: f64,
    /// Deepest layer, once, on ground that was not [m].
    pub new_ground_depth_m: f64,
    /// How deep it is worked in [m].
    pub dug_m: f64,
    /// Saturation extract of soil that was not tested [dS/m].
    pub soil_conductivity_ds_m: f64,
    /// Days that immature compost lies before anything is sown or planted.
    pub immature_days: f64,
    /// Days before a harvest that touches soil, after what held raw manure.
    pub waiting_touching_days: f64,
    /// The same where it hangs clear of the soil.
    pub waiting_clear_days: f64,
}
