//! Heaps to be simulated, and what comes of them and of the garden's heaps.

mod ahead;
mod answer;
mod forecast;
mod plan;
mod question;
mod read;

pub use ahead::{
    AheadQuestion, AheadShown, ChartShown, FieldShown, FrameShown, LayerShown, OptionShown,
    TableShown,
};
pub use answer::{SimulationJson, simulation_json};
pub use forecast::{ForecastJson, forecast_json};
pub use plan::spoken_plan;
pub use question::SimulationFile;
pub use read::{LARGEST_CASE_BYTES, check_work, read_simulation, read_weather};
