//! What went into a compost that keeps it off beds where food grows?
//!
//! By the catalogue's cautions: some things never go on such beds, others only once something was
//! seen to. What nobody named when it was fed cannot be told.

use heapwright_catalogue::{Catalogue, FoodBeds, Spreading};
use heapwright_garden::Garden;
use heapwright_journal::{EventId, Moment};
use heapwright_state::State;

use super::batch::Batches;
use super::from_journal::batches_of_heap;
use crate::before_use::{BeforeUse, before_use};

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

/// Does food grow on a bed of which this crop is said, this year or another? It may unless an
/// ornamental crop is named and nothing beside it: "roses", but not "roses and lettuce".
pub(super) fn is_for_food(spreading: &Spreading, said: Option<&str>) -> bool {
    said.and_then(|said| spreading.crop_alone(said))
        .is_none_or(|crop| crop.on_food_bed)
}

/// What must be seen to before compost of this heap is used: of the batches that are left, and of
/// all that lay in it since the last harvest. How much of which batch was spread is never known so
/// well that what can hurt people could be left out for it.
pub(super) fn of_heap(
    catalogue: &Catalogue,
    garden: &Garden,
    state: &State,
    heap: EventId,
    batches: &Batches,
) -> OffFood {
    let mut found = batches.before_use(catalogue, garden);
    for one in before_use(catalogue, garden, &state.contents_since_harvest(heap)) {
        if !found.iter().any(|known| known.material == one.material) {
            found.push(one);
        }
    }
    OffFood::of(found)
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
    let crop = described.and_then(|described| described.crop.as_deref());
    if !is_for_food(spreading, crop) {
        return Vec::new();
    }
    let (batches, _) = batches_of_heap(catalogue, spreading, garden, state, heap, now);
    of_heap(catalogue, garden, state, heap, &batches).never
}

#[cfg(test)]
mod tests {
    use heapwright_terms::EdiblePart;

    use super::*;
    use crate::beds_plan::{BedAsked, BedsNotice, BedsQuestion, beds_plan, compost_of_tables};
    use crate::before_use::lasting_cautions;

    /// Materials whose advice, as it is told before use, says this of food beds.
    fn materials(kind: FoodBeds) -> Vec<&'static str> {
        let catalogue = Catalogue::built_in();
        let says = |material: &&heapwright_terms::Material| {
            let told = lasting_cautions(catalogue, material);
            told.iter().filter_map(|caution| caution.food_beds).min() == Some(kind)
        };
        let those = catalogue.materials().iter().filter(says);
        those.map(|material| material.id.as_str()).collect()
    }

    #[test]
    fn some_materials_never_go_on_food_beds_and_some_only_with_care() {
        assert_eq!(
            materials(FoodBeds::Never),
            ["dog_waste", "cat_litter_waste"]
        );
        let doubtful = materials(FoodBeds::Doubtful);
        for id in ["wood_ash", "sawdust_aged", "vacuum_dust", "glossy_paper"] {
            assert!(doubtful.contains(&id), "{id} in {doubtful:?}");
        }
        for id in ["horse_droppings", "apple", "dry_leaves_mixed"] {
            assert!(!materials(FoodBeds::Never).contains(&id), "{id}");
        }
    }

    #[test]
    fn only_ornamental_crops_make_a_bed_that_is_not_for_food() {
        let spreading = Spreading::built_in();
        let others: Vec<&str> = spreading
            .crops()
            .iter()
            .filter(|crop| !is_for_food(spreading, Some(&crop.name)))
            .inspect(|crop| assert_eq!(crop.part, EdiblePart::NotEaten))
            .map(|crop| crop.id.as_str())
            .collect();
        assert_eq!(others, ["flowers", "heather"]);
        assert!(is_for_food(spreading, None));
        assert!(!is_for_food(spreading, Some("Roses")));
        // Something to eat may stand among them.
        for said in [
            "roses and lettuce",
            "edible flowers",
            "flower sprouts",
            "berry shrubs",
            "perennials",
            "shrubs",
            "border",
        ] {
            assert!(is_for_food(spreading, Some(said)), "{said}");
        }
    }

    #[test]
    fn the_reason_comes_before_all_others_and_nothing_is_offered_for_pots() {
        let spreading = Spreading::built_in();
        let bed = |crop: Option<&str>| BedAsked {
            name: crop.unwrap_or("Open").to_owned(),
            area_m2: 4.0,
            crop: crop.map(str::to_owned),
            feeding: None,
            new_ground: false,
            soil: heapwright_engine::spreading::bed::Soil::default(),
            sown_in_days: Some(0.0),
            harvest_in_days: Some(10.0),
            dressings: Vec::new(),
        };
        let mut compost = compost_of_tables(spreading);
        compost.maturity = heapwright_engine::spreading::bed::Maturity::Mature;
        compost.held_raw = Some(true);
        compost.off_food.is_off = true;
        let question = BedsQuestion {
            beds: [Some("blueberries"), Some("lettuce"), None, Some("roses")]
                .map(bed)
                .to_vec(),
            compost,
            volume_m3: 0.1,
            volume_is_estimated: false,
        };
        let answer = beds_plan(spreading, &question).unwrap();
        let given: Vec<bool> = answer
            .beds
            .iter()
            .map(|bed| bed.share.depth_m > 0.0)
            .collect();
        assert_eq!(given, [false, false, false, true]);
        let named = ["blueberries", "lettuce", "Open"].map(str::to_owned);
        assert_eq!(
            answer.notices.first(),
            Some(&BedsNotice::OffFoodBeds {
                because: Vec::new(),
                beds: named.to_vec(),
            })
        );
        let waits = |notice: &BedsNotice| matches!(notice, BedsNotice::Wait { .. });
        assert!(!answer.notices.iter().any(waits));
        let left = |notice: &BedsNotice| matches!(notice, BedsNotice::Left { off_food: true, .. });
        assert!(answer.notices.iter().any(left));
    }
}
