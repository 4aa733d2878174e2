//! What went into a compost that keeps it off beds where food grows?
//!
//! By the catalogue's cautions: some things never go on such beds, others only once something was
//! seen to. What nobody named when it was fed cannot be told.

use heapwright_catalogue::{Catalogue, Crop, FoodBeds, Spreading};
use heapwright_garden::Garden;
use heapwright_journal::{EventId, Moment};
use heapwright_state::State;

use super::from_journal::batches_of_heap;
use crate::before_use::BeforeUse;

/// What keeps a compost off beds where food grows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OffFood {
    /// True when something went in that never goes on them.
    pub is_off: bool,
    /// What that was; empty where nobody said more.
    pub never: Vec<BeforeUse>,
    /// What goes on them only once its advice was seen to.
    pub doubtful: Vec<BeforeUse>,
}

impl OffFood {
    /// Of what must be seen to before use.
    pub(super) fn of(found: Vec<BeforeUse>) -> Self {
        let of = |kind: FoodBeds| {
            let those = found.iter().filter(|one| one.food_beds == Some(kind));
            those.cloned().collect::<Vec<BeforeUse>>()
        };
        let never = of(FoodBeds::Never);
        Self {
            is_off: !never.is_empty(),
            never,
            doubtful: of(FoodBeds::Doubtful),
        }
    }

    /// Keys of the sources behind what never goes on them.
    #[must_use]
    pub fn source_keys(&self) -> Vec<String> {
        let mut keys: Vec<String> = Vec::new();
        for key in self.never.iter().flat_map(|one| &one.source_keys) {
            if !keys.contains(key) {
                keys.push(key.clone());
            }
        }
        keys
    }
}

/// Does food grow on a bed of this crop, this year or another? Where no crop is known, it may.
pub(super) fn is_for_food(crop: Option<&Crop>) -> bool {
    crop.is_none_or(|crop| crop.on_food_bed)
}

/// What went into the compost of a heap that never goes on this bed, for food grows there; empty
/// where the bed may have it.
#[must_use]
pub fn never_on_this_bed(
    catalogue: &Catalogue,
    spreading: &Spreading,
    garden: &Garden,
    state: &State,
    (bed, heap): (EventId, EventId),
    now: Moment,
) -> Vec<BeforeUse> {
    let described = state.bed(bed).and_then(|bed| bed.now().described.as_ref());
    let crop = described
        .and_then(|described| described.crop.as_deref())
        .and_then(|crop| spreading.crop(crop));
    if !is_for_food(crop) {
        return Vec::new();
    }
    let (batches, _) = batches_of_heap(catalogue, spreading, garden, state, heap, now);
    OffFood::of(batches.before_use(catalogue, garden)).never
}
