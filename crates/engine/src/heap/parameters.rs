//! The numbers of the heap: rates, yields, heat, air and water.
//!
//! Each says where it comes from. "Estimate" is a judgement without direct source;
//! "from memory" means recalled from the named publication.

use super::responses::Cardinal;

/// Everything that the equations take as given.
///
/// The defaults are those of a mixed kitchen and garden heap;
/// [`Parameters::drawn`] varies them within what is known.
#[derive(Clone, Debug, PartialEq)]
pub struct Parameters {
    /// Decay of rapid matter at its best [1/d]. From memory of Haug 1993 and Komilis 2006;
    /// set with the two bench vessels of `tests/heap_bench.rs`.
    pub rapid_rate_per_d: f64,
    /// Decay of moderate matter at its best [1/d]. From memory of Haug 1993; Komilis 2006;
    /// Eklind and Kirchmann 2000.
    pub moderate_rate_per_d: f64,
    /// Decay of slow matter at its best [1/d]. From memory of Tuomela 2000; Komilis and Ham 2003.
    pub slow_rate_per_d: f64,
    /// Decay of humus at its best [1/d]. Estimate after soil organic matter.
    pub humus_rate_per_d: f64,
    /// Largest activity of mesophiles over that of thermophiles. Estimate from bench curves.
    pub mesophile_activity: f64,
    /// Cardinal temperatures of mesophiles. After Oudart 2013, widened (estimate).
    pub mesophiles: Cardinal,
    /// Cardinal temperatures of thermophiles. After Oudart 2013, widened (estimate).
    pub thermophiles: Cardinal,
    /// Cells grown for one of substrate [kg/kg]. From memory of Kaiser 1996, "Modelling
    /// composting as a microbial ecosystem".
    pub growth_yield: f64,
    /// Cells for half of full activity, per degradable matter [kg/kg]. Estimate.
    pub half_activity_cells: f64,
    /// Dying off at the best temperature [1/d]. Within the span of Kaiser 1996 (estimate).
    pub decay_of_cells_per_d: f64,
    /// Dying off at any temperature [1/d]. Estimate.
    pub least_decay_of_cells_per_d: f64,
    /// Death by heat far above the limit [1/d]. Estimate.
    pub heat_death_per_d: f64,
    /// Temperature of half the heat death of mesophiles [degrees Celsius]. Estimate.
    pub mesophile_death_c: f64,
    /// The same of thermophiles [degrees Celsius]. Estimate.
    pub thermophile_death_c: f64,
    /// Survivors of either group (spores, cool rim) per dry matter [kg/kg]. Estimate.
    pub surviving_cells: f64,
    /// Carbon of dead cells that becomes humus. Estimate.
    pub cells_to_humus: f64,
    /// Carbon of decayed slow matter that becomes humus. Estimate.
    pub slow_to_humus: f64,
    /// Oxygen for half of full activity, mole fraction. Richard, Walker and Gossett 2006,
    /// "Effects of oxygen on aerobic solid-state biodegradation kinetics"; Haug 1993.
    pub half_activity_oxygen: f64,
    /// Fermentation without air over decay with air. Estimate.
    pub fermentation: f64,
    /// Oxidation of acids at its best [1/d]. Estimate.
    pub acid_rate_per_d: f64,
    /// Nitrogen of cells per their mass without nitrogen [kg/kg]; C:N 8.
    pub nitrogen_in_cells: f64,
    /// Nitrogen of humus per its mass without nitrogen [kg/kg]; C:N 10.
    pub nitrogen_in_humus: f64,
    /// Mineral nitrogen for half of full growth [kg/kg water]. Estimate.
    pub half_growth_nitrogen: f64,
    /// Ammonium held by dry matter over that in water [kg water per kg]. Within 0.5 to 5 of
    /// ion exchange (estimate); set with the ammonia that manures lose (Kirchmann and Witter
    /// 1989, Paillat and others 2005).
    pub ammonium_sorption: f64,
    /// Nitrification at its best [1/d]. Estimate.
    pub nitrification_per_d: f64,
    /// Free ammonia that halves nitrification [kg N per kg water]. Anthonisen, Loehr, Prakasam
    /// and Srinath 1976, "Inhibition of nitrification by ammonia and nitrous acid":
    /// from 10 to 150 mg/L (from memory), here their middle.
    pub nitrifiers_free_ammonia: f64,
    /// Denitrification without oxygen at 20 degrees [1/d]. Estimate.
    pub denitrification_per_d: f64,
    /// Heat for the oxygen taken [MJ/kg O2]. From memory of Thornton 1917; Battley 1987:
    /// 13.5 to 14.5.
    pub heat_of_oxygen_mj_kg: f64,
    /// Specific heat of dry matter [MJ/(kg K)]. From memory of Mohsenin 1980; Haug 1993.
    pub solids_heat_mj_kg_k: f64,
    /// Factor on thermal conductivity: 1.5 gives a moist mix 0.46 W/(m K), within the 0.03 to
    /// 0.81 of Ahn, Sauer, Richard and Glanville 2009, "Thermal properties of composting
    /// bulking materials". Set so that vessels of 20 to 200 litres stay as cool as they do
    /// (Trautmann and Krasny 1997; checks C8 in `docs/measurements/heap-checks.md`).
    pub conductivity_factor: f64,
    /// Factor on heat and moisture transfer at outer faces.
    pub surface_factor: f64,
    /// Heat transfer to the ground [W/(m2 K)]. Estimate.
    pub ground_coefficient_w_m2_k: f64,
    /// Factor on the effective grain diameter that sets permeability.
    pub grain_factor: f64,
    /// Diffusion in air at 20 degrees [m2/s]. Richard 1996, "Oxygen diffusion in air".
    pub diffusion_m2_s: f64,
    /// Exchange of the outer decimetre's pore air by wind [1/d]. Estimate.
    pub wind_exchange_per_d: f64,
    /// Dry layer through which moisture leaves a wet outer face [m]. Estimate.
    pub skin_m: f64,
    /// Water that fresh organic matter holds against gravity [kg/kg]. With what ash and humus
    /// hold ([`ASH_HOLDS`], [`HUMUS_HOLDS`]) a fresh mix drains to 75 % moisture and finished
    /// compost to 60 to 65 %, as Agnew and Leonard 2003 have it (from memory).
    pub field_capacity: f64,
    /// Drainage of what is above [1/d]. Estimate.
    pub drainage_per_d: f64,
    /// Growth of bulk density with the share decayed. Estimate.
    pub settling_by_decay: f64,
    /// Growth of bulk density with load, power of load over 2 kPa. Estimate.
    pub settling_by_load: f64,
    /// Time of settling [d]. Estimate.
    pub settling_time_d: f64,
    /// Loosening by a turn. Estimate.
    pub loosening: f64,
    /// Heat lost at a turn, share of what is above the air's temperature. Estimate.
    pub turning_heat_loss: f64,
    /// Bases set free at the start; the rest follows decay. Estimate.
    pub bases_at_start: f64,
    /// Bases set free for the share decayed. Estimate.
    pub bases_by_decay: f64,
    /// Weak acids of humus [mol/kg dry]. Estimate.
    pub humic_acid_mol_kg: f64,
    /// Factor on the rapid share of what is fed.
    pub rapid_factor: f64,
    /// Factor on the water of what is fed.
    pub water_factor: f64,
    /// What is added to the air temperature at the place [K].
    pub air_offset_k: f64,
}

/// The load over which settling is reckoned [Pa]. Estimate.
pub(crate) const SETTLING_LOAD_PA: f64 = 2000.0;
/// Nitrous oxide of nitrification [kg N/kg N]. Estimate, good to a factor of ten.
pub(crate) const NITROUS_OF_NITRIFIED: f64 = 0.015;
/// Nitrous oxide of denitrification [kg N/kg N]. Estimate, good to a factor of ten.
pub(crate) const NITROUS_OF_DENITRIFIED: f64 = 0.1;
/// Oxygen for half of full nitrification, mole fraction. Estimate.
pub(crate) const HALF_NITRIFICATION_OXYGEN: f64 = 0.05;
/// Potassium held by dry matter, and passed by in the fast ways of water, over that in water
/// [kg water per kg]. Estimate, so that an open heap loses a tenth to a third in its season
/// as measured ones do (0 to 30 %, see `docs/measurements/finish.md`).
pub(crate) const POTASSIUM_HELD: f64 = 12.0;
/// Water that ash holds against gravity [kg/kg]. Estimate after mineral soils.
pub(crate) const ASH_HOLDS: f64 = 0.5;
/// Water that humus holds over that of fresh organic matter. Estimate, see `field_capacity`.
pub(crate) const HUMUS_HOLDS: f64 = 0.7;
/// Density of solids [kg/m3]. From memory of Haug 1993; Agnew and Leonard 2003.
pub(crate) const SOLIDS_KG_M3: f64 = 1600.0;
/// Temperatures at which nitrifiers work: estimate after soils.
pub(crate) const NITRIFIERS: Cardinal = Cardinal {
    least_c: 2.0,
    best_c: 30.0,
    most_c: 45.0,
};
/// Water over which freezing is spread [K], and the share that freezes. Estimate.
pub(crate) const FREEZING_SPAN_K: f64 = 1.5;
/// Share of the water that freezes within the span. Estimate.
pub(crate) const FREEZING_SHARE: f64 = 0.9;

impl Default for Parameters {
    fn default() -> Self {
        Self {
            rapid_rate_per_d: 0.60,
            moderate_rate_per_d: 0.060,
            slow_rate_per_d: 0.008,
            humus_rate_per_d: 0.0004,
            mesophile_activity: 0.85,
            mesophiles: Cardinal {
                least_c: 0.0,
                best_c: 37.0,
                most_c: 49.0,
            },
            thermophiles: Cardinal {
                least_c: 22.0,
                best_c: 56.0,
                most_c: 72.0,
            },
            growth_yield: 0.35,
            half_activity_cells: 0.02,
            decay_of_cells_per_d: 0.15,
            least_decay_of_cells_per_d: 0.02,
            heat_death_per_d: 1.5,
            mesophile_death_c: 50.0,
            thermophile_death_c: 74.0,
            surviving_cells: 0.002,
            cells_to_humus: 0.40,
            slow_to_humus: 0.45,
            half_activity_oxygen: 0.02,
            fermentation: 0.09,
            acid_rate_per_d: 3.0,
            nitrogen_in_cells: 0.066,
            nitrogen_in_humus: 0.055,
            half_growth_nitrogen: 5e-5,
            ammonium_sorption: 1.0,
            nitrification_per_d: 0.06,
            nitrifiers_free_ammonia: 4e-5,
            denitrification_per_d: 0.02,
            heat_of_oxygen_mj_kg: 14.0,
            solids_heat_mj_kg_k: 1.3e-3,
            conductivity_factor: 1.5,
            surface_factor: 1.0,
            ground_coefficient_w_m2_k: 2.0,
            grain_factor: 1.0,
            diffusion_m2_s: 2.0e-5,
            wind_exchange_per_d: 20.0,
            skin_m: 0.02,
            field_capacity: 2.7,
            drainage_per_d: 1.0,
            settling_by_decay: 0.6,
            settling_by_load: 0.15,
            settling_time_d: 8.0,
            loosening: 0.15,
            turning_heat_loss: 0.12,
            bases_at_start: 0.30,
            bases_by_decay: 0.60,
            humic_acid_mol_kg: 0.8,
            rapid_factor: 1.0,
            water_factor: 1.0,
            air_offset_k: 0.0,
        }
    }
}
