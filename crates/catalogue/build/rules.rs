//! Does what stands in the tables hold together? Closed lists, limits, order, names, sources, sense.
//!
//! The sense of the materials (which figure must exceed which) is known from
//! the trade; a slip of a digit breaks one of these orders sooner or later.

use std::collections::{BTreeMap, BTreeSet};

use crate::normalise;
use crate::tables::{Fault, Row, Table, Tables};

/// Groups of materials, as the table writes them.
pub const GROUPS: &[&str] = &[
    "kitchen",
    "garden_green",
    "garden_brown",
    "wood",
    "paper",
    "animal_manure",
    "animal_product",
    "mineral",
    "amendment",
    "finished",
];
/// Degradabilities, as the table writes them.
pub const DEGRADABILITIES: &[&str] = &["fast", "medium", "slow", "very_slow", "inert"];
/// Bases of evidence, as the table writes them.
pub const BASES: &[&str] = &["retrieved", "mixed", "memory", "estimate"];
/// Whether compost with it in it goes on beds where food grows, as the table writes it: never, or
/// only once what stands under `before_use` was seen to. Empty where it keeps nothing off them.
pub const FOOD_BEDS: &[&str] = &["never", "doubtful"];
/// Cautions, as the table writes them.
pub const FLAGS: &[&str] = &[
    "acidic",
    "alkaline",
    "attracts_animals",
    "avoid",
    "compacts",
    "contaminant_risk",
    "herbicide_risk",
    "limit_amount",
    "mats_when_wet",
    "pathogen_risk",
    "regulated_animal_byproduct",
    "salty",
    "shred_first",
    "weed_seed_risk",
];
/// Kinds of names.
pub const NAME_KINDS: &[&str] = &["short", "name", "british", "american"];
/// Kinds of sources.
pub const SOURCE_KINDS: &[&str] = &["retrieved", "memory", "derived", "estimate"];
/// Units of assumptions.
pub const UNITS: &[&str] = &["1", "%", "1/%", "kg/m3"];

/// Labels of the `sources` column, the figure they stand for, and a column that holds it.
pub const LABELS: &[(&str, &str, &[&str])] = &[
    ("N", "Nitrogen", &["nitrogen_pct_dry_typical"]),
    ("CN", "CarbonToNitrogen", &["cn_typical"]),
    ("C", "Carbon", &["carbon_pct_dry_typical"]),
    ("H2O", "Moisture", &["moisture_pct_wet_typical"]),
    ("BD", "BulkDensity", &["bulk_density_kg_m3_typical"]),
    ("ash", "Ash", &["ash_pct_dry"]),
    (
        "fibre",
        "Fibre",
        &[
            "lignin_pct_dry",
            "cellulose_pct_dry",
            "hemicellulose_pct_dry",
        ],
    ),
    ("P", "Phosphorus", &["phosphorus_pct_dry"]),
    ("K", "Potassium", &["potassium_pct_dry"]),
    ("Ca", "Calcium", &["calcium_pct_dry"]),
    ("Mg", "Magnesium", &["magnesium_pct_dry"]),
    ("Na", "Sodium", &["sodium_pct_dry"]),
    ("pH", "Ph", &["ph"]),
];

/// Stems of the figures of a material that have low, typical and high.
pub const RANGES: &[&str] = &[
    "nitrogen_pct_dry",
    "cn",
    "moisture_pct_wet",
    "bulk_density_kg_m3",
];
const MINERALS: &[&str] = &[
    "phosphorus_pct_dry",
    "potassium_pct_dry",
    "calcium_pct_dry",
    "magnesium_pct_dry",
    "sodium_pct_dry",
];
/// A button has room for so many letters.
const SHORT_NAME_LETTERS: usize = 18;

// Rows that lie outside the carbon and nitrogen of plants, with reason.
const CARBON_ABOVE_58: &[&str] = &[
    "avocado",
    "meat_scraps",
    "cheese",
    "eggs_spoiled",
    "cooking_oil",
    "animal_fat",
    "biochar",
];
const CARBON_BELOW_30: &[&str] = &[
    "urine_human",
    "crustacean_shells",
    "mussel_shellfish_waste",
    "bones_fresh",
    "bone_meal",
    "urea",
];
const NITROGEN_SALTS: &[&str] = &["urea", "ammonium_sulfate"];
const NOT_BYPRODUCTS: &[&str] = &["hair_human", "nail_clippings", "wool", "feathers"];
const GRAZED_OR_SPRAYED: &[&str] = &[
    "hay_grass",
    "hay_legume",
    "straw_wheat",
    "straw_oat",
    "straw_barley",
    "straw_rice",
    "grass_clippings_fresh",
    "grass_clippings_dried",
    "horse_bedding_straw",
    "horse_bedding_shavings",
    "horse_droppings",
    "cow_manure",
    "cattle_fym",
    "sheep_goat",
    "alpaca_llama",
];

/// Each list ascends in the typical value of its column.
const ASCENDING: &[(&str, &[&str])] = &[
    (
        "cn_typical",
        &["urine_human", "blood_meal", "chicken_layer"],
    ),
    (
        "cn_typical",
        &["urine_human", "feather_meal", "chicken_layer"],
    ),
    (
        "cn_typical",
        &[
            "urine_human",
            "fish_meal",
            "chicken_layer",
            "pig",
            "sheep_goat",
            "cow_manure",
            "horse_bedding_straw",
            "horse_bedding_shavings",
        ],
    ),
    ("cn_typical", &["legume_cover_crop", "cereal_cover_crop"]),
    ("cn_typical", &["lettuce", "carrot", "apple"]),
    (
        "cn_typical",
        &[
            "grass_clippings_fresh",
            "weeds_green",
            "hedge_trimmings_fresh",
            "dry_leaves_mixed",
            "straw_wheat",
            "corrugated_cardboard",
            "wood_chip_softwood",
        ],
    ),
    ("cn_typical", &["hay_legume", "hay_grass", "straw_wheat"]),
    ("cn_typical", &["alfalfa_meal", "hay_legume"]),
    ("cn_typical", &["bracken_green", "bracken_dry"]),
    ("cn_typical", &["sawdust_aged", "sawdust_hardwood"]),
    ("cn_typical", &["sawdust_aged", "sawdust_softwood"]),
    (
        "cn_typical",
        &[
            "birch_ash_fruit_leaves",
            "maple_leaves",
            "beech_leaves",
            "oak_leaves",
            "pine_needles",
        ],
    ),
    ("cn_typical", &["finished_compost", "leaf_mould"]),
    (
        "moisture_pct_wet_typical",
        &["grass_clippings_dried", "grass_clippings_fresh"],
    ),
    (
        "moisture_pct_wet_typical",
        &["bracken_dry", "bracken_green"],
    ),
    (
        "moisture_pct_wet_typical",
        &["hay_legume", "legume_cover_crop"],
    ),
    (
        "moisture_pct_wet_typical",
        &["straw_oat", "cereal_cover_crop"],
    ),
    (
        "moisture_pct_wet_typical",
        &["chicken_litter_bedding", "chicken_layer"],
    ),
    ("moisture_pct_wet_typical", &["cattle_fym", "cow_manure"]),
    (
        "moisture_pct_wet_typical",
        &["crisps_stale", "bread", "apple", "sugary_drink"],
    ),
    (
        "bulk_density_kg_m3_typical",
        &["dry_leaves_mixed", "leaves_shredded_dry", "leaves_moist"],
    ),
    (
        "bulk_density_kg_m3_typical",
        &["straw_wheat", "cow_manure", "garden_soil"],
    ),
    (
        "bulk_density_kg_m3_typical",
        &["straw_wheat", "wood_chip_hardwood"],
    ),
    (
        "lignin_pct_dry",
        &[
            "grass_clippings_fresh",
            "straw_wheat",
            "wood_chip_hardwood",
            "wood_chip_softwood",
        ],
    ),
    ("lignin_pct_dry", &["maple_leaves", "oak_leaves"]),
    ("lignin_pct_dry", &["maple_leaves", "beech_leaves"]),
    ("lignin_pct_dry", &["maple_leaves", "pine_needles"]),
];

/// Everything that is wrong with the tables; empty when they may be used.
pub fn faults(tables: &Tables) -> Vec<Fault> {
    let mut found = Vec::new();
    for row in tables.materials.rows() {
        if let Err(fault) = figures(&row, &mut found) {
            found.push(fault);
        }
        words_of_material(&row, &mut found);
        sources_of_material(&row, tables, &mut found);
        flags_of_material(&row, &mut found);
    }
    ascending(&tables.materials, &mut found);
    rows_of_rules(&tables.materials, &mut found);
    ids(&tables.materials, &mut found);
    unique(&tables.materials, "name", &mut found);
    names(tables, &mut found);
    sources(tables, &mut found);
    measures(tables, &mut found);
    conditions(tables, &mut found);
    cautions(tables, &mut found);
    hygiene_rules(tables, &mut found);
    assumptions(tables, &mut found);
    found
}

fn figures(row: &Row, found: &mut Vec<Fault>) -> Result<(), Fault> {
    let within = |column: &str, value: f64, least: f64, most: f64, found: &mut Vec<Fault>| {
        if value < least || value > most {
            let what = format!("{value} is outside {least} to {most}");
            found.push(row.fault(column, what));
        }
    };
    for (stem, least, most) in [
        ("nitrogen_pct_dry", 0.0, 100.0),
        ("cn", 0.1, 2000.0),
        ("moisture_pct_wet", 0.0, 98.0),
        ("bulk_density_kg_m3", 20.0, 1500.0),
    ] {
        if let Some(range) = row.range(stem)? {
            for (end, value) in ["low", "typical", "high"].iter().zip(range) {
                within(&format!("{stem}_{end}"), value, least, most, found);
            }
        }
    }
    for column in [
        "carbon_pct_dry_typical",
        "ash_pct_dry",
        "lignin_pct_dry",
        "cellulose_pct_dry",
        "hemicellulose_pct_dry",
    ]
    .iter()
    .chain(MINERALS)
    {
        if let Some(value) = row.number(column)? {
            within(column, value, 0.0, 100.0, found);
        }
    }
    if let Some(ph) = row.number("ph")? {
        within("ph", ph, 2.0, 13.0, found);
    }
    agreement(row, found)
}

/// Figures of one row that bound one another.
fn agreement(row: &Row, found: &mut Vec<Fault>) -> Result<(), Fault> {
    let (id, group) = (row.id(), row.text("group"));
    let nitrogen = row.number("nitrogen_pct_dry_typical")?;
    let carbon = row.number("carbon_pct_dry_typical")?;
    let ratio = row.number("cn_typical")?;
    let ash = row.number("ash_pct_dry")?;
    if let (Some(nitrogen), Some(carbon), Some(ratio)) = (nitrogen, carbon, ratio) {
        let product = nitrogen * ratio;
        if (product - carbon).abs() > 0.15 * carbon {
            let what = format!(
                "{ratio} times nitrogen {nitrogen} is {product:.1}, not the carbon {carbon}"
            );
            found.push(row.fault("cn_typical", what));
        }
    }
    if nitrogen == Some(0.0) && ratio.is_some() {
        let what = "there is no C:N without nitrogen".to_owned();
        found.push(row.fault("cn_typical", what));
    }
    let grown = group != "mineral" && group != "finished";
    if let Some(carbon) = carbon.filter(|_| grown) {
        if carbon > 58.0 && !CARBON_ABOVE_58.contains(&id) {
            found.push(row.fault("carbon_pct_dry_typical", format!("{carbon} is above 58")));
        }
        if carbon < 30.0 && !CARBON_BELOW_30.contains(&id) {
            found.push(row.fault("carbon_pct_dry_typical", format!("{carbon} is below 30")));
        }
    }
    if let Some([_, _, high]) = row.range("nitrogen_pct_dry")?
        && high > 18.0
        && !NITROGEN_SALTS.contains(&id)
    {
        let what = format!("{high} is more than any plant or animal holds (18)");
        found.push(row.fault("nitrogen_pct_dry_high", what));
    }
    let Some(ash) = ash else { return Ok(()) };
    let mut fibre = 0.0;
    for column in [
        "lignin_pct_dry",
        "cellulose_pct_dry",
        "hemicellulose_pct_dry",
    ] {
        fibre += row.number(column)?.unwrap_or(0.0);
    }
    if ash + fibre > 103.0 {
        let what = format!("ash {ash} and fibre {fibre} are more than the whole");
        found.push(row.fault("ash_pct_dry", what));
    }
    if grown {
        let mut minerals = 0.0;
        for column in MINERALS {
            minerals += row.number(column)?.unwrap_or(0.0);
        }
        if minerals > 1.02 * ash {
            let what = format!("the minerals, {minerals:.2}, are more than the ash {ash}");
            found.push(row.fault("ash_pct_dry", what));
        }
    }
    if let Some(carbon) = carbon
        && carbon > (100.0 - ash) * 0.6
        && !CARBON_ABOVE_58.contains(&id)
    {
        let what = format!("{carbon} is too much carbon beside ash {ash}");
        found.push(row.fault("carbon_pct_dry_typical", what));
    }
    Ok(())
}

fn words_of_material(row: &Row, found: &mut Vec<Fault>) {
    listed(row, "group", GROUPS, found);
    listed(row, "degradability", DEGRADABILITIES, found);
    listed(row, "basis", BASES, found);
    for flag in row.list("flags", ';') {
        if !FLAGS.contains(&flag) {
            found.push(row.fault("flags", format!("`{flag}` is not a known flag")));
        }
    }
    let (id, group) = (row.id(), row.text("group"));
    match row.text("degradability") {
        "inert" if group != "mineral" && id != "biochar" => {
            let what = "only minerals and biochar are inert".to_owned();
            found.push(row.fault("degradability", what));
        }
        "fast" => {
            let above = |column: &str, most: f64| {
                let value = row.number(column).ok().flatten();
                value.is_some_and(|value| value > most)
            };
            if above("cn_typical", 500.0) || above("lignin_pct_dry", 15.0) {
                let what = "nothing so woody rots fast (C:N above 500 or lignin above 15)";
                found.push(row.fault("degradability", what.to_owned()));
            }
        }
        _ => {}
    }
}

fn flags_of_material(row: &Row, found: &mut Vec<Fault>) {
    let (id, flags) = (row.id(), row.list("flags", ';'));
    let mut needs = |flag: &str| {
        if !flags.contains(&flag) {
            found.push(row.fault("flags", format!("`{flag}` is missing")));
        }
    };
    if row.text("group") == "animal_product" && !NOT_BYPRODUCTS.contains(&id) {
        needs("regulated_animal_byproduct");
    }
    if row.text("group") == "animal_manure" && id != "urine_human" {
        needs("pathogen_risk");
    }
    if GRAZED_OR_SPRAYED.contains(&id) {
        needs("herbicide_risk");
    }
}

/// The labels and source keys of one row, in the order written.
pub fn source_list<'table>(
    row: &Row<'table>,
) -> Result<Vec<(&'static str, Vec<&'table str>)>, Fault> {
    let mut list: Vec<(&'static str, Vec<&'table str>)> = Vec::new();
    for part in row.list("sources", ';') {
        let Some((labels, keys)) = part.split_once(':') else {
            let what = format!("`{part}` is not of the form figures:sources");
            return Err(row.fault("sources", what));
        };
        let keys: Vec<&str> = keys.split('+').map(str::trim).collect();
        for label in labels.split(',').map(str::trim) {
            let Some((_, figure, _)) = LABELS.iter().find(|(known, ..)| *known == label) else {
                let what = format!("`{label}` is not a known figure");
                return Err(row.fault("sources", what));
            };
            if list.iter().any(|(known, _)| known == figure) {
                let what = format!("`{label}` has two entries");
                return Err(row.fault("sources", what));
            }
            list.push((figure, keys.clone()));
        }
    }
    Ok(list)
}

fn sources_of_material(row: &Row, tables: &Tables, found: &mut Vec<Fault>) {
    let list = match source_list(row) {
        Ok(list) => list,
        Err(fault) => return found.push(fault),
    };
    for (label, figure, columns) in LABELS {
        let given = columns.iter().any(|column| !row.text(column).is_empty());
        let sourced = list.iter().any(|(known, _)| known == figure);
        if given && !sourced {
            found.push(row.fault("sources", format!("`{label}` has a value but no source")));
        }
        if sourced && !given {
            found.push(row.fault("sources", format!("`{label}` has a source but no value")));
        }
    }
    for (_, keys) in &list {
        known_sources(row, "sources", keys, tables, found);
    }
    // What was only recalled or estimated must not be shown as seen.
    if row.text("basis") == "retrieved" {
        for key in list.iter().flat_map(|(_, keys)| keys) {
            let source = tables.sources.row(key);
            let kind = source.map_or("", |source| source.text("kind"));
            if kind == "memory" || kind == "estimate" {
                let what = format!("`retrieved` does not go with the source {key}");
                found.push(row.fault("basis", what));
            }
        }
    }
}

pub(crate) fn known_sources(
    row: &Row,
    column: &str,
    keys: &[&str],
    tables: &Tables,
    found: &mut Vec<Fault>,
) {
    for key in keys {
        if tables.sources.row(key).is_none() {
            let what = format!("the source `{key}` is not in sources.csv");
            found.push(row.fault(column, what));
        }
    }
}

fn ascending(materials: &Table, found: &mut Vec<Fault>) {
    for (column, chain) in ASCENDING {
        for pair in chain.windows(2) {
            let (Some(lesser), Some(greater)) = (materials.row(pair[0]), materials.row(pair[1]))
            else {
                continue;
            };
            let (Ok(Some(less)), Ok(Some(more))) = (lesser.number(column), greater.number(column))
            else {
                continue;
            };
            if less >= more {
                let what = format!("{more} must be above the {less} of {}", pair[0]);
                found.push(greater.fault(column, what));
            }
        }
    }
}

/// A row that a rule speaks of must not be dropped or renamed unseen.
fn rows_of_rules(materials: &Table, found: &mut Vec<Fault>) {
    let chains = ASCENDING.iter().flat_map(|(_, chain)| *chain);
    let named = [
        CARBON_ABOVE_58,
        CARBON_BELOW_30,
        NITROGEN_SALTS,
        NOT_BYPRODUCTS,
        GRAZED_OR_SPRAYED,
    ];
    let ids: BTreeSet<&str> = chains.chain(named.into_iter().flatten()).copied().collect();
    for id in ids.into_iter().filter(|id| materials.row(id).is_none()) {
        found.push(Fault {
            table: materials.layout.file,
            line: 1,
            row: String::new(),
            column: "id".to_owned(),
            what: format!("a rule speaks of {id}, but no row has that id"),
        });
    }
}

pub(crate) fn listed(row: &Row, column: &str, list: &[&str], found: &mut Vec<Fault>) {
    let text = row.text(column);
    if !list.contains(&text) {
        let what = format!("`{text}` is not one of {}", list.join(", "));
        found.push(row.fault(column, what));
    }
}

pub(crate) fn ids(table: &Table, found: &mut Vec<Fault>) {
    let column = table.layout.columns[0];
    for row in table.rows() {
        let letter =
            |letter: u8| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == b'_';
        if row.id().is_empty() || !row.id().bytes().all(letter) {
            let what = "an id is lower-case letters, digits and _".to_owned();
            found.push(row.fault(column, what));
        }
    }
    unique(table, column, found);
}

pub(crate) fn unique(table: &Table, column: &str, found: &mut Vec<Fault>) {
    let mut seen = BTreeMap::new();
    for row in table.rows() {
        if let Some(line) = seen.insert(row.text(column), row.line) {
            let what = format!("`{}` stands in line {line} already", row.text(column));
            found.push(row.fault(column, what));
        }
    }
}

pub(crate) fn filled(row: &Row, column: &str, found: &mut Vec<Fault>) {
    if row.text(column).trim().is_empty() {
        found.push(row.fault(column, "must not be empty".to_owned()));
    }
}

fn names(tables: &Tables, found: &mut Vec<Fault>) {
    // Owner of each spelling: run together, and in any order of words.
    let mut owners: BTreeMap<String, &str> = BTreeMap::new();
    for row in tables.materials.rows() {
        for key in keys_of(row.text("name")) {
            owners.insert(key, row.id());
        }
    }
    let mut seen: BTreeSet<(&str, String)> = BTreeSet::new();
    let mut short: BTreeSet<&str> = BTreeSet::new();
    for row in tables.names.rows() {
        listed(&row, "kind", NAME_KINDS, found);
        let (id, name) = (row.id(), row.text("name"));
        if tables.materials.row(id).is_none() {
            let what = format!("`{id}` is not in materials.csv");
            found.push(row.fault("id", what));
        }
        let words = normalise::tokens(name);
        if words.is_empty() {
            found.push(row.fault("name", format!("`{name}` holds no word")));
            continue;
        }
        for key in keys_of(name) {
            let owner = *owners.entry(key).or_insert(id);
            if owner != id {
                let what = format!("`{name}` already means {owner}");
                found.push(row.fault("name", what));
                break;
            }
        }
        if !seen.insert((id, normalise::joined(&words))) {
            let what = format!("`{name}` is already among the names of {id}");
            found.push(row.fault("name", what));
        }
        if row.text("kind") == "short" {
            if name.chars().count() > SHORT_NAME_LETTERS {
                let what = format!("`{name}` is longer than {SHORT_NAME_LETTERS} letters");
                found.push(row.fault("name", what));
            }
            if !short.insert(id) {
                found.push(row.fault("kind", format!("{id} has two short names")));
            }
        }
    }
    for row in tables.materials.rows() {
        if !short.contains(row.id()) {
            let what = "has no short name in names.csv".to_owned();
            found.push(row.fault("id", what));
        }
    }
}

fn keys_of(name: &str) -> [String; 2] {
    let words = normalise::tokens(name);
    [normalise::joined(&words), normalise::sorted(&words)]
}

fn sources(tables: &Tables, found: &mut Vec<Fault>) {
    unique(&tables.sources, "key", found);
    for row in tables.sources.rows() {
        listed(&row, "kind", SOURCE_KINDS, found);
        filled(&row, "citation", found);
        let recalled = row.id().ends_with('m');
        if recalled != (row.text("kind") == "memory") {
            let what = "a key ends in m when, and only when, it was recalled".to_owned();
            found.push(row.fault("kind", what));
        }
        if recalled && !row.text("citation").starts_with("Recalled") {
            let what = "must say `Recalled from`".to_owned();
            found.push(row.fault("citation", what));
        }
    }
}

fn measures(tables: &Tables, found: &mut Vec<Fault>) {
    ids(&tables.measures, found);
    let mut owners: BTreeMap<String, &str> = BTreeMap::new();
    for row in tables.measures.rows() {
        known_sources(&row, "source", &row.list("source", '+'), tables, found);
        let range = match row.range("volume_l") {
            Ok(range) => range,
            Err(fault) => {
                found.push(fault);
                continue;
            }
        };
        if !range.is_some_and(|[low, ..]| low > 0.0) {
            let what = "a measure holds more than nothing".to_owned();
            found.push(row.fault("volume_l_low", what));
        }
        let mut words = vec![row.text("name"), row.text("plural")];
        words.extend(row.list("other_words", ';'));
        for word in words {
            let owner = *owners.entry(word.to_lowercase()).or_insert(row.id());
            if owner != row.id() {
                let what = format!("`{word}` already means {owner}");
                found.push(row.fault("other_words", what));
            }
        }
    }
}

fn conditions(tables: &Tables, found: &mut Vec<Fault>) {
    ids(&tables.conditions, found);
    let mut owners: BTreeMap<String, &str> = BTreeMap::new();
    for row in tables.conditions.rows() {
        let mut words = vec![row.text("name")];
        words.extend(row.list("other_words", ';'));
        for word in words {
            let key = normalise::tokens(word).join(" ");
            let owner = *owners.entry(key).or_insert(row.id());
            if owner != row.id() {
                let what = format!("`{word}` already means {owner}");
                found.push(row.fault("other_words", what));
            }
        }
        let has_effect = tables
            .condition_effects
            .rows()
            .any(|effect| effect.id() == row.id());
        if !has_effect {
            let what = "has no line in condition_effects.csv".to_owned();
            found.push(row.fault("id", what));
        }
    }
    let mut seen = BTreeSet::new();
    for row in tables.condition_effects.rows() {
        if tables.conditions.row(row.id()).is_none() {
            let what = format!("`{}` is not in conditions.csv", row.id());
            found.push(row.fault("condition", what));
        }
        for target in row.list("applies_to", ';') {
            if !GROUPS.contains(&target) && tables.materials.row(target).is_none() {
                let what = format!("`{target}` is neither a group nor a material");
                found.push(row.fault("applies_to", what));
            }
            if !seen.insert((row.id(), target)) {
                let what = format!("{} has two effects on {target}", row.id());
                found.push(row.fault("applies_to", what));
            }
        }
        for (stem, most) in [("moisture_pct_wet", 98.0), ("bulk_density_factor", 10.0)] {
            match row.range(stem) {
                Ok(Some([low, _, high])) if low <= 0.0 || high > most => {
                    let what = format!("{low} to {high} is outside 0 to {most}");
                    found.push(row.fault(&format!("{stem}_low"), what));
                }
                Ok(_) => {}
                Err(fault) => found.push(fault),
            }
        }
        known_sources(&row, "source", &row.list("source", '+'), tables, found);
        filled(&row, "source", found);
    }
}

fn cautions(tables: &Tables, found: &mut Vec<Fault>) {
    ids(&tables.cautions, found);
    for row in tables.cautions.rows() {
        let about = row.id();
        if !FLAGS.contains(&about) && tables.materials.row(about).is_none() {
            let what = format!("`{about}` is neither a flag nor a material");
            found.push(row.fault("flag_or_id", what));
        }
        for column in ["reason", "advice", "source"] {
            filled(&row, column, found);
        }
        for column in ["reason", "advice", "local_rule", "before_use"] {
            never_safe(&row, column, found);
        }
        food_beds(&row, found);
        known_sources(&row, "source", &row.list("source", '+'), tables, found);
    }
    for flag in FLAGS {
        if tables.cautions.row(flag).is_none() {
            found.push(Fault {
                table: tables.cautions.layout.file,
                line: 1,
                row: String::new(),
                column: "flag_or_id".to_owned(),
                what: format!("the flag `{flag}` has no line"),
            });
        }
    }
}

/// What the sentence says of food beds and what the program acts on must agree.
fn food_beds(row: &Row, found: &mut Vec<Fault>) {
    let (kind, sentence) = (row.text("food_beds"), row.text("before_use"));
    let mut fault = |what: &str| found.push(row.fault("food_beds", what.to_owned()));
    if !kind.is_empty() && !FOOD_BEDS.contains(&kind) {
        fault(&format!("`{kind}` is not never, doubtful or empty"));
    } else if kind.is_empty() == sentence.contains("food beds") {
        fault("must be filled where before_use speaks of food beds, and only there");
    } else if (kind == "never") != sentence.starts_with("Never on food beds") {
        fault("never stands where before_use begins with \"Never on food beds\", and only there");
    }
}

fn never_safe(row: &Row, column: &str, found: &mut Vec<Fault>) {
    let letters_only = |letter: char| !letter.is_ascii_alphabetic();
    let mut words = row.text(column).split(letters_only);
    if words.any(|word| ["safe", "safely", "safety"].contains(&word.to_lowercase().as_str())) {
        let what = "hygiene is never called safe".to_owned();
        found.push(row.fault(column, what));
    }
}

fn hygiene_rules(tables: &Tables, found: &mut Vec<Fault>) {
    ids(&tables.hygiene_rules, found);
    for row in tables.hygiene_rules.rows() {
        for column in ["name", "jurisdiction", "asks", "scope", "source"] {
            filled(&row, column, found);
        }
        for column in ["name", "asks", "also_asks", "scope"] {
            never_safe(&row, column, found);
        }
        match row.number("year") {
            Ok(Some(year)) if (1950.0..2100.0).contains(&year) => {}
            Ok(_) => found.push(row.fault("year", "must be the year of the rule".to_owned())),
            Err(fault) => found.push(fault),
        }
        known_sources(&row, "source", &row.list("source", '+'), tables, found);
    }
}

fn assumptions(tables: &Tables, found: &mut Vec<Fault>) {
    unique(&tables.assumptions, "key", found);
    for row in tables.assumptions.rows() {
        match row.range("") {
            Ok(Some(_)) => {}
            Ok(None) => found.push(row.fault("typical", "must not be empty".to_owned())),
            Err(fault) => found.push(fault),
        }
        listed(&row, "unit", UNITS, found);
        filled(&row, "source", found);
        filled(&row, "note", found);
        known_sources(&row, "source", &row.list("source", '+'), tables, found);
    }
}
