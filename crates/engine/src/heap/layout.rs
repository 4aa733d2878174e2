//! Where does each quantity of a cell stand in the vectors?
//!
//! The state vector holds quantity after quantity, each for all cells (bottom to top,
//! core to wall within a layer), and then the ledgers.

/// Quantities that change in time, per cell. Masses in kg.
pub(crate) const RAPID: usize = 0;
pub(crate) const MODERATE: usize = 1;
pub(crate) const SLOW: usize = 2;
pub(crate) const HUMUS: usize = 3;
pub(crate) const MESOPHILES: usize = 4;
pub(crate) const THERMOPHILES: usize = 5;
pub(crate) const ACIDS: usize = 6;
/// Organic nitrogen of the four pools.
pub(crate) const NITROGEN_RAPID: usize = 7;
pub(crate) const NITROGEN_MODERATE: usize = 8;
pub(crate) const NITROGEN_SLOW: usize = 9;
pub(crate) const NITROGEN_HUMUS: usize = 10;
/// Mineral nitrogen.
pub(crate) const AMMONIUM: usize = 11;
pub(crate) const NITRATE: usize = 12;
pub(crate) const WATER: usize = 13;
pub(crate) const POTASSIUM: usize = 14;
/// Enthalpy over dry matter and liquid water at 0 degrees [MJ].
pub(crate) const ENTHALPY: usize = 15;
/// Dry bulk density [kg/m3]; as content of a cell: its volume [m3].
pub(crate) const DENSITY: usize = 16;
/// Number of the above.
pub(crate) const STATES: usize = 17;
/// The same place holds a volume while a cell is taken apart.
pub(crate) const VOLUME: usize = DENSITY;

/// Quantities that only events change, per cell, all of them sums.
pub(crate) const ASH: usize = 17;
/// Bases other than potassium [mol].
pub(crate) const BASES: usize = 18;
pub(crate) const PHOSPHORUS: usize = 19;
pub(crate) const CALCIUM: usize = 20;
pub(crate) const MAGNESIUM: usize = 21;
/// Dry matter ever put in [kg]: the weight of all that follows.
pub(crate) const DRY_FED: usize = 22;
/// Volume when put in [m3].
pub(crate) const VOLUME_FED: usize = 23;
/// Dry matter over its effective grain diameter [kg/m].
pub(crate) const DRY_OVER_GRAIN: usize = 24;
/// Dry matter fed by its longest hot spell so far: five classes.
pub(crate) const HOT: usize = 25;
/// Number of classes of hot spells: none, to 1, to 3, to 7, above 7 days.
pub(crate) const HOT_CLASSES: usize = 5;
/// Surviving germs of three kinds, times dry matter fed.
pub(crate) const GERMS: usize = HOT + HOT_CLASSES;
/// Number of kinds.
pub(crate) const GERM_KINDS: usize = 3;
/// Number of all quantities of a cell.
pub(crate) const CONTENTS: usize = GERMS + GERM_KINDS;

/// All that is in a cell, every entry a sum that adds when cells are put together.
pub(crate) type Contents = [f64; CONTENTS];

/// What has crossed the heap's border, or was made in it, since the start.
pub(crate) mod ledger {
    pub(crate) const DIOXIDE_CARBON: usize = 0;
    pub(crate) const METHANE_CARBON: usize = 1;
    pub(crate) const AMMONIA_NITROGEN: usize = 2;
    pub(crate) const NITROUS_NITROGEN: usize = 3;
    pub(crate) const DINITROGEN: usize = 4;
    /// Water that left as vapour, less what entered.
    pub(crate) const VAPOUR: usize = 5;
    pub(crate) const LEACHED_WATER: usize = 6;
    pub(crate) const LEACHED_AMMONIUM: usize = 7;
    pub(crate) const LEACHED_POTASSIUM: usize = 8;
    pub(crate) const OXYGEN: usize = 9;
    pub(crate) const HEAT: usize = 10;
    pub(crate) const CONDUCTED_SIDE: usize = 11;
    pub(crate) const CONDUCTED_TOP: usize = 12;
    pub(crate) const CONDUCTED_BOTTOM: usize = 13;
    pub(crate) const VAPOUR_HEAT: usize = 14;
    pub(crate) const AIR_HEAT: usize = 15;
    /// Warmth of the water formed less that of the solids that went.
    pub(crate) const MATTER_HEAT: usize = 16;
    pub(crate) const RAIN: usize = 17;
    pub(crate) const RAIN_HEAT: usize = 18;
    pub(crate) const LEACHED_HEAT: usize = 19;
    pub(crate) const WATER_FORMED: usize = 20;
    pub(crate) const SUN_HEAT: usize = 21;
    /// Oxygen that the air brought; as much as was used, but for a trifle in sealed heaps.
    pub(crate) const OXYGEN_BROUGHT: usize = 22;
    pub(crate) const LEACHED_NITRATE: usize = 23;
    /// Number of ledgers.
    pub(crate) const LEDGERS: usize = 24;
}
