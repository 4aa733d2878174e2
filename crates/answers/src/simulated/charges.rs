//! From a part as it was found to masses by pool.

use heapwright_engine::heap::{Charge, FeedClass, Overrides, Parameters};
use heapwright_garden::{Found, FoundPart, Stuff};
use heapwright_terms::PartAmount;

/// The most that goes in at once [kg]: a hundred lorries.
const MOST_KG: f64 = 1e6;

/// The charge of one part.
///
/// A density that is stated of something weighed can only mean how it lies in the heap, and is
/// taken as it is; stated of something measured by volume it means how it lay in the vessel.
pub(crate) fn charge_of(said: &Found, found: &FoundPart, overrides: &Overrides) -> Charge {
    let class = found
        .material
        .as_ref()
        .map(|material| FeedClass::of(material.group, material.degradability));
    let stated = match &said.stuff {
        Stuff::Known { stated, .. } => stated.bulk_density_kg_m3,
        Stuff::Custom(custom) => custom.bulk_density_kg_m3,
    };
    let mut overrides = *overrides;
    if let (None, Some(density), PartAmount::MassKg(mass_kg)) =
        (overrides.volume_m3, stated, &found.part.amount)
    {
        overrides.volume_m3 = Some(mass_kg / density);
    }
    Charge::of_part(&found.part, class, &overrides, &Parameters::default())
}

/// True when a charge can be put into a heap.
pub(crate) fn is_sound(charge: &Charge) -> bool {
    let parameters = Parameters::default();
    charge.is_sound(&parameters) && charge.wet_mass_kg(&parameters) <= MOST_KG
}
