//! From when on does a heap need something? Every threshold of today's needs, with its source.

/// At this core temperature, 160 degrees Fahrenheit, whoever keeps large piles is told to turn and wet
/// them [degC].
/// Source: NC-FIRE
pub const TOO_HOT_C: f64 = 71.1;
/// At this one, 185 degrees Fahrenheit, to act at once: chemical heat has taken over from living heat
/// [degC].
/// Source: NRCS317
pub const ALARM_C: f64 = 85.0;
/// A heap that is too hot, dry and higher than this can heat itself further [m]; a lower one is very
/// unlikely to.
/// Source: FIRE-HOMEm
pub const FIRE_HEIGHT_M: f64 = 2.0;
/// Above this most of what works in a heap slows down [degC].
/// Source: practice
pub const HOT_C: f64 = 65.0;
/// From here on a heap counts as working hot, and its temperature is worth following [degC].
/// Source: practice
pub const WARM_C: f64 = 45.0;
/// Below this a heap that was not fed for long counts as having come to rest [degC].
/// Source: practice
pub const COOL_C: f64 = 40.0;
/// A heap that was at least this hot is worth turning when it cools [degC].
/// Source: practice
pub const PEAK_C: f64 = 50.0;
/// By so much it must have cooled since its peak [K]: two probe points of one heap differ by 3 to 8.
/// Source: practice
pub const FALL_K: f64 = 10.0;
/// A peak that lies longer ago tells nothing of today's cooling [d].
/// Source: practice
pub const PEAK_HOLDS_D: f64 = 30.0;
/// A hot heap is read at least every so many days [d].
/// Source: practice
pub const READ_HOT_D: f64 = 3.0;
/// A heap that was too hot is read again so long after it was turned [d].
/// Source: practice
pub const READ_TURNED_D: f64 = 1.0;
/// So long the temperature that was read last still speaks of today [d].
/// Source: practice
pub const HEAT_HOLDS_D: f64 = 7.0;
/// So long a smell, a handful or a look still speaks of today [d].
/// Source: practice
pub const SENSES_HOLD_D: f64 = 14.0;
/// So long rats or mice that were seen call for something [d].
/// Source: practice
pub const ANIMALS_HOLD_D: f64 = 30.0;
/// A working heap is looked at every so many days [d].
/// Source: practice
pub const LOOK_ACTIVE_D: f64 = 14.0;
/// A ripening heap is looked at every so many days [d].
/// Source: practice
pub const LOOK_CURING_D: f64 = 30.0;
/// What was fed within so many days is judged as a mixture; what is older has changed too much [d].
/// Source: practice
pub const FED_LATELY_D: f64 = 30.0;
/// A mixture above this moisture is too wet, wet basis.
/// Source: `NRAES54m`
pub const TOO_WET: f64 = 0.65;
/// A mixture below this moisture is too dry, wet basis.
/// Source: `NRAES54m`
pub const TOO_DRY: f64 = 0.40;
/// A mixture below this C:N loses nitrogen, and smells.
/// Source: `NRAES54m`
pub const TOO_RICH: f64 = 20.0;
/// A mixture above this C:N hardly heats.
/// Source: practice
pub const TOO_POOR: f64 = 50.0;
/// No more is poured at once, two cans: what a heap cannot take up so fast runs out below [L].
/// Source: practice
pub const WATER_AT_ONCE_L: f64 = 20.0;
/// So long water takes to soak in, before a heap is felt or watered again [d].
/// Source: practice
pub const SOAKS_D: f64 = 1.0;
/// What has at least this C:N counts as brown.
/// Source: practice
pub const BROWN: f64 = 40.0;
/// A layer of browns that keeps flies off [m].
/// Source: practice
pub const LAYER_M: f64 = 0.05;
/// A heap that was not fed for so long is left to ripen [d].
/// Source: practice
pub const FED_NO_MORE_D: f64 = 42.0;
/// Compost is left to ripen for so long before it is tested [d].
/// Source: `CCME05m`
pub const CURE_D: f64 = 21.0;
/// After a test that does not say ready, the next one makes sense so many days later [d].
/// Source: practice
pub const TEST_AGAIN_D: f64 = 21.0;
/// A reading once a day keeps a hold of a rule unbroken: over more than 26 hours nothing is credited
/// [d].
/// Source: practice
pub const READ_HOLD_D: f64 = 1.0;
/// When a hold was last read longer ago than this, it is broken, and none is under way [d].
/// Source: practice
pub const HOLD_BROKEN_D: f64 = 2.0;
/// The keeper's own use of a store is taken over so many days [d].
/// Source: practice
pub const USE_OVER_D: f64 = 28.0;
/// A store that lasts no longer than this is to be filled up [d].
/// Source: practice
pub const STORE_LASTS_D: f64 = 14.0;
