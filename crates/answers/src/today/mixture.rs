//! What was fed lately, as a mixture: browns, greens or water that bring it to the usual region.

use heapwright_engine::balance::{Objective, WaterSupply};
use heapwright_engine::mixture::{Totals, typical_totals};
use heapwright_garden::{Custom, Found, FoundPart, Stated, Stock, Stuff, found, part_fed};
use heapwright_journal::Content;
use heapwright_journal::content::{Fed, Shape, Smell, Squeeze};
use heapwright_quantity::{Amount, MassUnit, Unit};
use heapwright_state::{Contents, Share};
use heapwright_terms::{PartAmount, Target};
use std::sync::Arc;

use super::gather::{Gathered, after};
use super::limits::{BROWN, FED_LATELY_D, LAYER_M, SOAKS_D, TOO_DRY, TOO_POOR, TOO_RICH, TOO_WET};
use super::need::{Because, Kind, On, Urgency, What};
use super::seen::{Seen, Sight};
use super::water::{
    MOIST, WATER_STEP_KG, dry_now_kg, feel_again, felt_dry, felt_so, is_dry, water, water_of_felt,
};
use crate::question::USUAL_TARGET;
use crate::what_to_add::{BalanceQuestion, Help, InReach, RecipeAnswer, Status, what_to_add};
use crate::yields::moisture_of;

/// Water as a part: what is not water in it must not count [kg/kg].
const WATER_SHARE: f64 = 0.999;

/// What the mixture asks.
pub(super) fn mixture(seen: &Seen, out: &mut Gathered) {
    feel_again(seen, out);
    let felt = seen.squeeze_of_now();
    // What ripens is not fed again.
    let brings_water = !seen.is_curing() && feeding(seen, felt, out);
    if let Some(felt) = felt.filter(|felt| is_dry(felt.what) && !brings_water)
        && let Some(lacking_l) = water_of_felt(seen, felt.what)
    {
        water(seen, lacking_l, felt_so(felt), out);
    }
}

/// What is to be mixed in, for the sake of what was fed and of how it feels; true when water is part
/// of it.
fn feeding(seen: &Seen, felt: Option<Sight<Squeeze>>, out: &mut Gathered) -> bool {
    let lately = Lately::of(seen);
    let figures = lately.as_ref().map(Lately::figures);
    // A hand that was there after the last feed knows more than figures; so it does after what it
    // asked for was poured.
    let moisture = figures
        .map(|(moisture, _)| moisture)
        .filter(|_| felt.is_none() && felt_dry(seen).is_none());
    let ratio = figures.and_then(|(_, ratio)| ratio);
    let too_dry = moisture.filter(|moisture| *moisture < TOO_DRY);
    let mut browns: Vec<Because> = Vec::new();
    if let Some(ammonia) = ammonia(seen) {
        browns.push(Because::Smell {
            smell: ammonia.what,
            at: ammonia.at,
        });
    }
    let dripping = felt.filter(|felt| felt.what == Squeeze::Dripping);
    browns.extend(dripping.map(felt_so));
    if let Some(moisture) = moisture.filter(|moisture| *moisture > TOO_WET) {
        browns.push(Because::FedTooWet { moisture });
    }
    let too_rich = ratio.filter(|ratio| *ratio < TOO_RICH);
    if let Some(carbon_to_nitrogen) = too_rich {
        browns.push(Because::FedTooRich { carbon_to_nitrogen });
    }
    let mut has_recipe = false;
    let mut brings_water = false;
    if !browns.is_empty() {
        // A wet handful alone is answered for the heap as it lies, all else for what was fed.
        let only_wet = browns
            .iter()
            .all(|because| matches!(because, Because::Squeeze { .. }));
        let in_hand = match &lately {
            Some(lately) if !only_wet => Some((lately.in_hand(), target_of(&browns))),
            _ => felt_heap(seen, dripping.map(|sight| sight.what)),
        };
        let (recipe, help) = in_hand.map_or((None, Vec::new()), |(in_hand, target)| {
            recipe(seen, in_hand, target, true)
        });
        has_recipe |= recipe.is_some();
        brings_water |= has_water(recipe.as_ref());
        let (recipe, entry) = with_entry(seen, recipe);
        let mut reasons = browns.into_iter();
        if let Some(first) = reasons.next() {
            let what = What::AddBrowns { recipe, help };
            out.need(what, first, Urgency::Soon, entry);
        }
        for because in reasons {
            let what = What::AddBrowns {
                recipe: None,
                help: Vec::new(),
            };
            out.need(what, because, Urgency::Soon, None);
        }
    } else if let (Some(carbon_to_nitrogen), Some(lately)) =
        (ratio.filter(|ratio| *ratio > TOO_POOR), &lately)
    {
        let (recipe, _) = recipe(seen, lately.in_hand(), USUAL_TARGET, false);
        has_recipe |= recipe.is_some();
        brings_water |= has_water(recipe.as_ref());
        let (recipe, entry) = with_entry(seen, recipe);
        let because = Because::FedTooPoor { carbon_to_nitrogen };
        out.need(
            What::AddGreens { recipe },
            because,
            Urgency::Whenever,
            entry,
        );
    }
    // A recipe brings its own water.
    if let (Some(moisture), Some(lately), false) = (too_dry, &lately, has_recipe) {
        let because = Because::FedTooDry { moisture };
        let last = seen.last_arrival().map(|arrival| arrival.place);
        match seen.poured_since(last) {
            Some((_, at)) if seen.ago_d(at) < SOAKS_D => {
                out.later(Kind::Water, On::Time(after(at, SOAKS_D)), because);
            }
            _ => water(seen, lately.water_to_moist_l(), because, out),
        }
    }
    brings_water
}

fn has_water(recipe: Option<&(RecipeAnswer, Vec<Stuff>)>) -> bool {
    recipe.is_some_and(|(recipe, _)| recipe.whole.water_kg > 0.0)
}

/// Ammonia that was smelt, and no browns since.
fn ammonia(seen: &Seen) -> Option<Sight<Smell>> {
    let smelt = seen.smell(|smell| smell == Smell::Ammonia)?;
    let answered = seen.since(
        smelt.place,
        |content| matches!(content, Content::Fed(fed) if brings_browns(seen, fed)),
    );
    (!answered).then_some(smelt)
}

/// Where the nose says that nitrogen leaves although the figures are as usual, the aim lies higher.
fn target_of(reasons: &[Because]) -> Target {
    let by_nose = reasons
        .iter()
        .any(|because| matches!(because, Because::Smell { .. }));
    if by_nose {
        Target {
            carbon_to_nitrogen_low: USUAL_TARGET.carbon_to_nitrogen_goal,
            carbon_to_nitrogen_goal: USUAL_TARGET.carbon_to_nitrogen_high,
            ..USUAL_TARGET
        }
    } else {
        USUAL_TARGET
    }
}

/// What was fed and poured in the last weeks, as far as it is still there and can be used.
struct Lately {
    parts: Vec<Found>,
    water_kg: f64,
    totals: Totals,
}

impl Lately {
    fn of(seen: &Seen) -> Option<Self> {
        let shares = seen
            .there
            .portions
            .iter()
            .filter(|portion| seen.ago_d(portion.event.happened) <= FED_LATELY_D)
            .map(|portion| Share {
                event: Arc::clone(&portion.event),
                share: portion.left,
            })
            .collect();
        let contents = Contents { shares, cut: false };
        let (mut parts, water_kg) = seen.garden.parts_of(seen.catalogue, seen.state, &contents);
        let mut usable = Vec::new();
        parts.retain(|part| match seen.garden.find(seen.catalogue, part) {
            Ok(found) => {
                usable.push(found.part);
                true
            }
            Err(_) => false,
        });
        let totals = typical_totals(&usable, water_kg);
        (!parts.is_empty() && totals.dry_mass_kg > 0.0).then_some(Self {
            parts,
            water_kg,
            totals,
        })
    }

    /// Moisture, and C:N where there is nitrogen.
    fn figures(&self) -> (f64, Option<f64>) {
        (
            self.totals.water_kg() / self.totals.wet_mass_kg,
            ratio_of(&self.totals),
        )
    }

    fn water_to_moist_l(&self) -> f64 {
        (MOIST * self.totals.wet_mass_kg - self.totals.water_kg()) / (1.0 - MOIST)
    }

    /// As parts of a question, the water too.
    fn in_hand(&self) -> Vec<Found> {
        let mut parts = self.parts.clone();
        if self.water_kg > 0.0 {
            parts.push(lump("Water", WATER_SHARE, 1000.0, self.water_kg));
        }
        parts
    }
}

fn ratio_of(totals: &Totals) -> Option<f64> {
    (totals.nitrogen_kg > 0.0).then(|| totals.carbon_kg / totals.nitrogen_kg)
}

/// Something of which only the moisture counts: its dry matter has the C:N that is aimed at.
fn lump(name: &str, moisture: f64, bulk_density_kg_m3: f64, mass_kg: f64) -> Found {
    Found {
        stuff: Stuff::Custom(Custom {
            name: name.to_owned(),
            moisture_wet_basis: moisture,
            carbon_dry_basis: Some(0.45),
            nitrogen_dry_basis: None,
            carbon_to_nitrogen: Some(USUAL_TARGET.carbon_to_nitrogen_goal),
            bulk_density_kg_m3: Some(bulk_density_kg_m3),
            ash_dry_basis: None,
            phosphorus_dry_basis: None,
            potassium_dry_basis: None,
            calcium_dry_basis: None,
            magnesium_dry_basis: None,
            sodium_dry_basis: None,
        }),
        amount: Amount {
            count: mass_kg,
            unit: Unit::Mass(MassUnit::Kilogram),
        },
    }
}

/// The heap as it lies and feels, and a region of moisture alone.
fn felt_heap(seen: &Seen, squeeze: Option<Squeeze>) -> Option<(Vec<Found>, Target)> {
    let moisture = moisture_of(squeeze?)?.typical;
    let mass_kg = dry_now_kg(seen)? / (1.0 - moisture);
    let target = Target {
        carbon_to_nitrogen_low: 1.0,
        carbon_to_nitrogen_high: 1000.0,
        free_air_space_low: 0.0,
        ..USUAL_TARGET
    };
    Some((vec![lump("The heap", moisture, 600.0, mass_kg)], target))
}

/// Whether something is brown: much carbon for its nitrogen.
fn is_brown(seen: &Seen, found: &Found) -> bool {
    let Ok(part) = seen.garden.find(seen.catalogue, found) else {
        return false;
    };
    let totals = typical_totals(std::slice::from_ref(&part.part), 0.0);
    totals.carbon_kg > 0.0 && ratio_of(&totals).is_none_or(|ratio| ratio >= BROWN)
}

/// Whether a feed has something brown in it.
pub(super) fn brings_browns(seen: &Seen, fed: &Fed) -> bool {
    fed.parts.iter().any(|part| is_brown(seen, &found(part)))
}

fn stuff_of(stock: &Stock) -> Stuff {
    Stuff::Known {
        material: stock.material.clone(),
        conditions: stock.conditions.clone(),
        stated: Stated::default(),
    }
}

/// What is in the stores, brown or not.
fn stores<'a>(seen: &'a Seen, brown: bool) -> impl Iterator<Item = (&'a Stock, Stuff)> {
    seen.garden.stores.iter().filter_map(move |stock| {
        let stuff = stuff_of(stock);
        let one = Found {
            stuff: stuff.clone(),
            amount: stock.scoop.clone(),
        };
        let usable = seen.garden.find(seen.catalogue, &one).is_ok();
        (usable && is_brown(seen, &one) == brown).then_some((stock, stuff))
    })
}

/// A recipe from the stores that reaches the region, or what else would help.
fn recipe(
    seen: &Seen,
    have: Vec<Found>,
    target: Target,
    brown: bool,
) -> (Option<(RecipeAnswer, Vec<Stuff>)>, Vec<Help>) {
    let stuffs: Vec<Stuff> = stores(seen, brown).map(|(_, stuff)| stuff).collect();
    let reach = stores(seen, brown)
        .map(|(stock, stuff)| InReach {
            stuff,
            most: stock.amount.clone(),
            step: Some(stock.scoop.clone()),
            effort: 1.0,
        })
        .collect();
    let question = BalanceQuestion {
        have,
        reach,
        water: WaterSupply {
            most_kg: f64::INFINITY,
            step_kg: WATER_STEP_KG,
        },
        target,
        objective: Objective::LeastMass,
        alternatives: false,
    };
    let Ok(answer) = what_to_add(seen.catalogue, seen.garden, &question) else {
        return (None, Vec::new());
    };
    let help = answer.conflict.map_or(Vec::new(), |found| found.help);
    let met = answer.status == Status::Met;
    let first = answer.recipes.into_iter().next();
    let recipe = first.filter(|recipe| met && !recipe.added.is_empty());
    (recipe.map(|recipe| (recipe, stuffs)), help)
}

/// A recipe with the feed that follows it.
fn with_entry(
    seen: &Seen,
    recipe: Option<(RecipeAnswer, Vec<Stuff>)>,
) -> (Option<Box<RecipeAnswer>>, Option<Content>) {
    let Some((recipe, stuffs)) = recipe else {
        return (None, None);
    };
    let parts = recipe
        .added
        .iter()
        .filter_map(|added| {
            let part = Found {
                stuff: stuffs.get(added.reach)?.clone(),
                amount: added.found.amount.clone(),
            };
            Some(part_fed(&part, true))
        })
        .collect();
    let water_l = Some(recipe.whole.water_kg).filter(|water_kg| *water_kg > 0.0);
    let fed = Fed {
        heap: seen.id,
        parts,
        water_l,
    };
    (Some(Box::new(recipe)), Some(Content::Fed(fed)))
}

/// A layer of the first browns of the stores over the whole heap, or as much as there is, and its
/// entry.
pub(super) fn layer(seen: &Seen) -> Option<(FoundPart, Content)> {
    let area_m2 = seen.heap.enclosure().map_or(1.0, |enclosure| {
        let width_m = enclosure.width_m;
        match enclosure.shape {
            Shape::Box => width_m * enclosure.depth_m.unwrap_or(width_m),
            _ => std::f64::consts::FRAC_PI_4 * width_m * width_m,
        }
    });
    let volume_of = |amount: &Amount| match seen.garden.part_amount(seen.catalogue, amount) {
        Ok(PartAmount::VolumeM3 { count, each_m3, .. }) => Some(count * each_m3.typical),
        _ => None,
    };
    let (stock, stuff) = stores(seen, true).next()?;
    let scoop_m3 = volume_of(&stock.scoop).filter(|volume_m3| *volume_m3 > 0.0);
    let wanted = scoop_m3.map_or(1.0, |scoop_m3| (area_m2 * LAYER_M / scoop_m3).ceil());
    let there = match (stock.amount.as_ref().and_then(volume_of), scoop_m3) {
        (Some(there_m3), Some(scoop_m3)) => (there_m3 / scoop_m3 * (1.0 + 1e-9)).floor(),
        _ => 1.0,
    };
    let scoops = wanted.min(there);
    let part = Found {
        stuff,
        amount: Amount {
            count: stock.scoop.count * scoops,
            unit: stock.scoop.unit.clone(),
        },
    };
    if scoops < 1.0 {
        return None;
    }
    let entry = Content::Fed(Fed {
        heap: seen.id,
        parts: vec![part_fed(&part, true)],
        water_l: None,
    });
    Some((seen.garden.find(seen.catalogue, &part).ok()?, entry))
}
