//! From a file to a question: names looked up, amounts understood, every fault with its field.

use heapwright_answers::{
    BalanceQuestion, InReach, MixQuestion, Objective, USUAL_TARGET, WaterSupply,
};
use heapwright_catalogue::{Catalogue, Condition, Match, OwnMaterial, Resolution};
use heapwright_garden::{Custom, Found, Garden, Stated, Stuff};
use heapwright_quantity::{
    Amount, AmountProblem, DecimalMark, Gallon, MeasureWords, PartsProblem, Unit, Vocabulary,
    VolumeUnit, parse_amount, parse_parts,
};
use heapwright_terms::{MaterialId, Target};
use serde::de::DeserializeOwned;

use crate::WireError;
use crate::garden_file::{GardenFile, garden_from};
use crate::request::{
    BalanceFile, CustomFile, MixFile, ObjectiveFile, PartFile, ReachFile, TargetFile, WaterFile,
};
use crate::shape::from_json;

/// The largest input that is read: far above any sensible one.
pub const LARGEST_FILE_BYTES: usize = 1 << 20;

/// The words for measures that the catalogue knows, for the amount parser.
#[must_use]
pub fn vocabulary(catalogue: &Catalogue) -> Vocabulary {
    Vocabulary {
        measures: MeasureWords::new(catalogue.measure_words().iter().cloned()),
        gallon: Gallon::Us,
        decimal: DecimalMark::Unknown,
    }
}

/// Reads the question of `heapwright mix`. `garden` is used where the file has none.
pub fn read_mix(
    catalogue: &Catalogue,
    garden: &Garden,
    text: &str,
) -> Result<(MixQuestion, Garden), WireError> {
    let file: MixFile = json(text)?;
    let garden = own_garden(catalogue, garden, file.garden.as_ref())?;
    let reader = Reader::new(catalogue, &garden);
    let question = MixQuestion {
        parts: reader.parts(&file.parts, "parts")?,
        water_kg: file
            .water
            .as_deref()
            .map_or(Ok(0.0), |text| reader.water_kg(text, "water"))?,
        target: target(file.target.as_ref()),
    };
    if question.parts.is_empty() {
        return Err(WireError::field(
            "parts",
            "the list is empty: name at least one material with its amount",
        ));
    }
    Ok((question, garden))
}

/// Reads the question of `heapwright balance`. `garden` is used where the file has none.
pub fn read_balance(
    catalogue: &Catalogue,
    garden: &Garden,
    text: &str,
) -> Result<(BalanceQuestion, Garden), WireError> {
    let file: BalanceFile = json(text)?;
    let garden = own_garden(catalogue, garden, file.garden.as_ref())?;
    let reader = Reader::new(catalogue, &garden);
    let question = BalanceQuestion {
        have: reader.parts(&file.have, "have")?,
        reach: file
            .reach
            .iter()
            .enumerate()
            .map(|(index, item)| reader.in_reach(item, &format!("reach[{index}]")))
            .collect::<Result<_, _>>()?,
        water: reader.water(&file.water)?,
        target: target(file.target.as_ref()),
        objective: objective(file.objective.unwrap_or_default()),
        alternatives: file.alternatives.unwrap_or(true),
    };
    if question.have.is_empty() {
        return Err(WireError::field(
            "have",
            "the list is empty: name at least one material with its amount",
        ));
    }
    Ok((question, garden))
}

/// Reads a garden's own file.
pub fn read_garden(catalogue: &Catalogue, text: &str) -> Result<Garden, WireError> {
    garden_from(catalogue, &json::<GardenFile>(text)?)
}

/// Understands parts as people say them: "2 buckets vegetable scraps, 1 bucket dry grass".
///
/// `field` names the list in messages.
pub fn spoken_parts(
    catalogue: &Catalogue,
    garden: &Garden,
    text: &str,
    field: &str,
) -> Result<Vec<Found>, WireError> {
    let spoken = parse_parts(text, &vocabulary(catalogue))
        .map_err(|error| WireError::field(field, error))?;
    spoken
        .into_iter()
        .map(|part| {
            let (material, conditions) = resolve(catalogue, garden, &part.name, field)?;
            Ok(Found {
                stuff: Stuff::Known {
                    material,
                    conditions,
                    stated: Stated::default(),
                },
                amount: part.amount,
            })
        })
        .collect()
}

/// A material by its id or name, and the conditions named with it: "wet leaves".
pub fn spoken_material(
    catalogue: &Catalogue,
    garden: &Garden,
    text: &str,
    field: &str,
) -> Result<(MaterialId, Vec<String>), WireError> {
    resolve(catalogue, garden, text.trim(), field)
}

/// Understands what is in reach as people say it: "6 buckets shredded leaves, straw".
///
/// With an amount in vessels, whole ones are handed out, at most so many; with
/// another amount, any part of it; a bare name is plenty.
pub fn spoken_reach(
    catalogue: &Catalogue,
    garden: &Garden,
    text: &str,
    field: &str,
) -> Result<Vec<InReach>, WireError> {
    let vocabulary = vocabulary(catalogue);
    let mut reach = Vec::new();
    // A name alone is no part to the parser: such a list is read item by item.
    for item in text
        .split([',', ';', '\n'])
        .map(str::trim)
        .filter(|item| !item.is_empty())
    {
        let (name, amount) = match parse_parts(item, &vocabulary) {
            Ok(parts) => match <[_; 1]>::try_from(parts) {
                Ok([part]) => (part.name, Some(part.amount)),
                Err(_) => {
                    return Err(WireError::field(
                        field,
                        format!("put a comma between the materials in \"{}\"", shown(item)),
                    ));
                }
            },
            // A sign that is no dash before a name begins an amount.
            Err(error)
                if item.starts_with(|c: char| c.is_ascii_digit() || "-\u{2212}+.".contains(c))
                    && error.problem != PartsProblem::Amount(AmountProblem::NoNumber) =>
            {
                return Err(WireError::field(field, error));
            }
            Err(_) => (item.to_owned(), None),
        };
        let (material, conditions) = resolve(catalogue, garden, &name, field)?;
        let step = amount.as_ref().and_then(|amount| match amount.unit {
            Unit::Measure(_) => Some(Amount {
                count: 1.0,
                unit: amount.unit.clone(),
            }),
            Unit::Mass(_) | Unit::Volume(_) => None,
        });
        reach.push(InReach {
            stuff: Stuff::Known {
                material,
                conditions,
                stated: Stated::default(),
            },
            most: amount,
            step,
            effort: 1.0,
        });
    }
    if reach.is_empty() {
        return Err(WireError::field(
            field,
            "the list is empty: name at least one material, such as 6 buckets straw",
        ));
    }
    Ok(reach)
}

/// The garden's stores as materials in reach.
#[must_use]
pub fn stores_in_reach(garden: &Garden) -> Vec<InReach> {
    garden
        .stores
        .iter()
        .map(|stock| InReach {
            stuff: Stuff::Known {
                material: stock.material.clone(),
                conditions: stock.conditions.clone(),
                stated: Stated::default(),
            },
            most: stock.amount.clone(),
            step: Some(stock.scoop.clone()),
            effort: 1.0,
        })
        .collect()
}

/// Water by mass or volume, as people say it [kg].
pub fn water_kg(
    catalogue: &Catalogue,
    garden: &Garden,
    text: &str,
    field: &str,
) -> Result<f64, WireError> {
    Reader::new(catalogue, garden).water_kg(text, field)
}

fn json<T: DeserializeOwned>(text: &str) -> Result<T, WireError> {
    if text.len() > LARGEST_FILE_BYTES {
        return Err(WireError::TooLarge {
            bytes: text.len(),
            most: LARGEST_FILE_BYTES,
        });
    }
    // A byte-order mark is not JSON, but some editors write one.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    from_json(text)
}

pub(crate) fn own_garden(
    catalogue: &Catalogue,
    garden: &Garden,
    file: Option<&GardenFile>,
) -> Result<Garden, WireError> {
    file.map_or_else(|| Ok(garden.clone()), |file| garden_from(catalogue, file))
}

fn target(file: Option<&TargetFile>) -> Target {
    let mut target = USUAL_TARGET;
    let Some(file) = file else { return target };
    if let Some([low, high]) = file.cn_ratio {
        target.carbon_to_nitrogen_low = low;
        target.carbon_to_nitrogen_high = high;
    }
    let usual_fits = target.carbon_to_nitrogen_goal >= target.carbon_to_nitrogen_low
        && target.carbon_to_nitrogen_goal <= target.carbon_to_nitrogen_high;
    target.carbon_to_nitrogen_goal = match file.cn_goal {
        Some(goal) => goal,
        None if usual_fits => target.carbon_to_nitrogen_goal,
        None => f64::midpoint(
            target.carbon_to_nitrogen_low,
            target.carbon_to_nitrogen_high,
        ),
    };
    if let Some([low, high]) = file.moisture_pct {
        target.moisture_wet_basis_low = low / 100.0;
        target.moisture_wet_basis_high = high / 100.0;
    }
    if let Some([low, high]) = file.free_air_space_pct {
        target.free_air_space_low = low / 100.0;
        target.free_air_space_high = high / 100.0;
    }
    target
}

fn objective(file: ObjectiveFile) -> Objective {
    match file {
        ObjectiveFile::LeastMass => Objective::LeastMass,
        ObjectiveFile::LeastBulk => Objective::LeastBulk,
        ObjectiveFile::BestCentred => Objective::BestCentred,
        ObjectiveFile::UsePlentiful => Objective::UsePlentiful,
        ObjectiveFile::LeastEffort => Objective::LeastEffort,
    }
}

/// A material by its id, or by what people call it.
pub(crate) fn material_id(
    catalogue: &Catalogue,
    garden: &Garden,
    text: &str,
    field: &str,
) -> Result<MaterialId, WireError> {
    resolve(catalogue, garden, text, field).map(|(id, _)| id)
}

/// A material and the conditions named with it: "wet leaves".
fn resolve(
    catalogue: &Catalogue,
    garden: &Garden,
    text: &str,
    field: &str,
) -> Result<(MaterialId, Vec<String>), WireError> {
    let known = garden
        .own_materials
        .iter()
        .any(|own| own.id.as_str() == text)
        || catalogue.material(text).is_some();
    if known {
        return Ok((MaterialId(text.to_owned()), Vec::new()));
    }
    let resolution = if garden.own_materials.is_empty() {
        catalogue.resolve(text)
    } else {
        let own: Vec<OwnMaterial> = garden
            .own_materials
            .iter()
            .map(|own| OwnMaterial {
                id: own.id.clone(),
                group: own.group,
                names: vec![own.name.clone()],
            })
            .collect();
        catalogue.search_index().with_own(&own).resolve(text)
    };
    let names = |matches: &[Match]| {
        or_list(
            matches
                .iter()
                .take(3)
                .map(|found| found.matched_name.as_str()),
        )
    };
    match resolution {
        Resolution::One(found) => Ok((found.material, found.condition_ids)),
        Resolution::Ambiguous { candidates } => Err(WireError::field(
            field,
            format!(
                "\"{}\" can be {}: say which",
                shown(text),
                names(&candidates)
            ),
        )),
        Resolution::Unknown { suggestions } if suggestions.is_empty() => Err(WireError::field(
            field,
            format!(
                "material \"{}\" is not known: look for it with `heapwright materials`",
                shown(text)
            ),
        )),
        Resolution::Unknown { suggestions } => Err(WireError::field(
            field,
            format!(
                "material \"{}\" is not known: did you mean {}?",
                shown(text),
                names(&suggestions)
            ),
        )),
    }
}

/// What was typed, at a length that fits a message.
pub(crate) fn shown(text: &str) -> String {
    const MOST: usize = 40;
    let clean: String = text
        .chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    if clean.chars().count() > MOST {
        clean.chars().take(MOST).chain(['…']).collect()
    } else {
        clean
    }
}

fn or_list<'a>(names: impl Iterator<Item = &'a str>) -> String {
    let mut quoted: Vec<String> = Vec::new();
    for name in names.map(|name| format!("\"{name}\"")) {
        if !quoted.contains(&name) {
            quoted.push(name);
        }
    }
    let last = quoted.pop().unwrap_or_default();
    if quoted.is_empty() {
        last
    } else {
        format!("{} or {last}", quoted.join(", "))
    }
}

/// The ids of conditions by their words, parted by commas.
pub(crate) fn conditions(
    catalogue: &Catalogue,
    text: Option<&str>,
    field: &str,
) -> Result<Vec<String>, WireError> {
    text.unwrap_or_default()
        .split(',')
        .map(str::trim)
        .filter(|word| !word.is_empty())
        .map(|word| {
            condition_named(catalogue, word)
                .map(|condition| condition.id.clone())
                .ok_or_else(|| {
                    let known: Vec<&str> = catalogue
                        .conditions()
                        .iter()
                        .map(|condition| condition.name.as_str())
                        .collect();
                    WireError::field(
                        field,
                        format!(
                            "\"{}\" is not a condition: use one of {}",
                            shown(word),
                            known.join(", ")
                        ),
                    )
                })
        })
        .collect()
}

fn condition_named<'a>(catalogue: &'a Catalogue, word: &str) -> Option<&'a Condition> {
    let same = |name: &str| name.eq_ignore_ascii_case(word);
    catalogue.conditions().iter().find(|condition| {
        same(&condition.id)
            || same(&condition.name)
            || condition.other_words.iter().any(|other| same(other))
    })
}

/// What a list of parts is read with.
pub(crate) struct Reader<'a> {
    catalogue: &'a Catalogue,
    garden: &'a Garden,
    vocabulary: Vocabulary,
}

/// The fields that parts and materials in reach share.
struct StuffFields<'a> {
    material: Option<&'a str>,
    custom: Option<&'a CustomFile>,
    condition: Option<&'a str>,
    stated: Stated,
}

impl<'a> Reader<'a> {
    pub(crate) fn new(catalogue: &'a Catalogue, garden: &'a Garden) -> Self {
        Self {
            catalogue,
            garden,
            vocabulary: vocabulary(catalogue),
        }
    }

    fn parts(&self, parts: &[PartFile], list: &str) -> Result<Vec<Found>, WireError> {
        parts
            .iter()
            .enumerate()
            .map(|(index, part)| self.part(part, &format!("{list}[{index}]")))
            .collect()
    }

    /// One part; `field` is its place.
    pub(crate) fn part(&self, part: &PartFile, field: &str) -> Result<Found, WireError> {
        let fields = StuffFields {
            material: part.material.as_deref(),
            custom: part.custom.as_ref(),
            condition: part.condition.as_deref(),
            stated: stated(
                part.moisture_pct,
                part.nitrogen_pct_dry,
                part.cn_ratio,
                part.bulk_density_kg_m3,
            ),
        };
        Ok(Found {
            stuff: self.stuff(&fields, field)?,
            amount: self.amount(&part.amount, &format!("{field}.amount"))?,
        })
    }

    fn in_reach(&self, item: &ReachFile, field: &str) -> Result<InReach, WireError> {
        let fields = StuffFields {
            material: item.material.as_deref(),
            custom: item.custom.as_ref(),
            condition: item.condition.as_deref(),
            stated: stated(
                item.moisture_pct,
                item.nitrogen_pct_dry,
                item.cn_ratio,
                item.bulk_density_kg_m3,
            ),
        };
        let amount = |text: &Option<String>, name: &str| {
            text.as_deref()
                .map(|text| self.amount(text, &format!("{field}.{name}")))
                .transpose()
        };
        Ok(InReach {
            stuff: self.stuff(&fields, field)?,
            most: amount(&item.max, "max")?,
            step: amount(&item.step, "step")?,
            effort: item.effort.unwrap_or(1.0),
        })
    }

    fn stuff(&self, fields: &StuffFields<'_>, field: &str) -> Result<Stuff, WireError> {
        match (fields.material, fields.custom) {
            (Some(_), Some(_)) => Err(WireError::field(
                field,
                "give either material or custom, not both",
            )),
            (None, None) => Err(WireError::field(field, "give material or custom")),
            (Some(text), None) => {
                let (material, mut all) = resolve(
                    self.catalogue,
                    self.garden,
                    text,
                    &format!("{field}.material"),
                )?;
                all.extend(conditions(
                    self.catalogue,
                    fields.condition,
                    &format!("{field}.condition"),
                )?);
                Ok(Stuff::Known {
                    material,
                    conditions: all,
                    stated: fields.stated,
                })
            }
            (None, Some(_)) if fields.condition.is_some() => Err(WireError::field(
                format!("{field}.condition"),
                "belongs to a material: a custom one states its figures outright",
            )),
            (None, Some(file)) => {
                // What the part states hides its own figures, which must be possible all the same.
                stated(
                    Some(file.moisture_pct),
                    file.nitrogen_pct_dry,
                    file.cn_ratio,
                    file.bulk_density_kg_m3,
                )
                .checked()
                .map_err(|error| WireError::field(format!("{field}.custom"), error))?;
                Ok(Stuff::Custom(custom(file, &fields.stated)))
            }
        }
    }

    fn amount(&self, text: &str, field: &str) -> Result<Amount, WireError> {
        parse_amount(text, &self.vocabulary).map_err(|error| WireError::field(field, error))
    }

    /// Water by mass or volume [kg].
    fn water_kg(&self, text: &str, field: &str) -> Result<f64, WireError> {
        // None at all is a fair answer for water, and for nothing else.
        if text.trim() == "0" {
            return Ok(0.0);
        }
        let amount = self.amount(text, field)?;
        let volume_m3 = match &amount.unit {
            Unit::Measure(id) => self
                .garden
                .filling_m3(self.catalogue, id)
                .map(|filling| filling.typical * amount.count),
            Unit::Volume(_) | Unit::Mass(_) => amount.cubic_metres(),
        };
        amount
            .kilograms()
            .or_else(|| volume_m3.map(kilograms_of_water))
            .ok_or_else(|| WireError::field(field, "give an amount of water, such as \"2 l\""))
    }

    fn water(&self, file: &WaterFile) -> Result<WaterSupply, WireError> {
        Ok(match file {
            WaterFile::Any(there_is) => WaterSupply {
                most_kg: if *there_is { f64::INFINITY } else { 0.0 },
                step_kg: 0.0,
            },
            WaterFile::Limited(limits) => WaterSupply {
                most_kg: limits
                    .max
                    .as_deref()
                    .map_or(Ok(f64::INFINITY), |text| self.water_kg(text, "water.max"))?,
                step_kg: limits
                    .step
                    .as_deref()
                    .map_or(Ok(0.0), |text| self.water_kg(text, "water.step"))?,
            },
        })
    }
}

/// A litre of water weighs a kilogram, by the old definition and within 0.3 % at garden temperatures.
fn kilograms_of_water(volume_m3: f64) -> f64 {
    volume_m3 / VolumeUnit::Litre.cubic_metres()
}

fn stated(
    moisture_pct: Option<f64>,
    nitrogen_pct_dry: Option<f64>,
    cn_ratio: Option<f64>,
    bulk_density_kg_m3: Option<f64>,
) -> Stated {
    Stated {
        moisture_wet_basis: moisture_pct.map(|pct| pct / 100.0),
        nitrogen_dry_basis: nitrogen_pct_dry.map(|pct| pct / 100.0),
        carbon_to_nitrogen: cn_ratio,
        bulk_density_kg_m3,
    }
}

/// A custom material, with what the part states in place of its own figures.
fn custom(file: &CustomFile, stated: &Stated) -> Custom {
    let share = |pct: Option<f64>| pct.map(|pct| pct / 100.0);
    let mut custom = Custom {
        name: file.name.clone(),
        moisture_wet_basis: stated
            .moisture_wet_basis
            .unwrap_or(file.moisture_pct / 100.0),
        carbon_dry_basis: share(file.carbon_pct_dry),
        nitrogen_dry_basis: share(file.nitrogen_pct_dry),
        carbon_to_nitrogen: file.cn_ratio,
        bulk_density_kg_m3: stated.bulk_density_kg_m3.or(file.bulk_density_kg_m3),
        ash_dry_basis: share(file.ash_pct_dry),
        phosphorus_dry_basis: share(file.phosphorus_pct_dry),
        potassium_dry_basis: share(file.potassium_pct_dry),
        calcium_dry_basis: share(file.calcium_pct_dry),
        magnesium_dry_basis: share(file.magnesium_pct_dry),
        sodium_dry_basis: share(file.sodium_pct_dry),
    };
    // What the part states of nitrogen or C:N stands; carbon stays as it is unless
    // the two together say otherwise.
    if stated.nitrogen_dry_basis.is_some() || stated.carbon_to_nitrogen.is_some() {
        let carbon = custom
            .carbon_and_nitrogen()
            .map(|(carbon, _)| carbon)
            .ok()
            .or(custom.carbon_dry_basis);
        custom.nitrogen_dry_basis = stated.nitrogen_dry_basis;
        custom.carbon_to_nitrogen = stated.carbon_to_nitrogen;
        let both = stated.nitrogen_dry_basis.is_some() && stated.carbon_to_nitrogen.is_some();
        custom.carbon_dry_basis = carbon.filter(|_| !both);
    }
    custom
}
