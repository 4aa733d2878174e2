//! Which bed gets how much compost, and why not more?

mod batch;
mod from_journal;
mod ground;
mod notices;
mod off_food;

use heapwright_catalogue::{Crop, CropGroup, Spreading};
use heapwright_engine::spreading::bed::{Bed, BedLimit, Dressing, Maturity, Soil, State, Weighed};
use heapwright_engine::spreading::compost::Compost;
use heapwright_engine::spreading::cover;
use heapwright_engine::spreading::plan::{BedShare, Binding, Plan, Question, plan};
use heapwright_engine::spreading::rules::Rules;
use heapwright_terms::EdiblePart;

use crate::question::{Accepted, Field, Known, QuestionError, SEED};

pub use from_journal::{FromJournal, beds_of_journal, compost_of_heap};
pub use notices::BedsNotice;
pub use off_food::{OffFood, never_on_this_bed};

/// The most beds of one question: the fairest sharing takes up to so many squared programmes.
const MOST_BEDS: usize = 60;
/// The most earlier dressings of one bed.
const MOST_DRESSINGS: usize = 1000;

/// A bed as it is asked about.
#[derive(Clone, Debug, PartialEq)]
pub struct BedAsked {
    /// Its name.
    pub name: String,
    /// Area [m2].
    pub area_m2: f64,
    /// What grows there, in the keeper's words.
    pub crop: Option<String>,
    /// Id of a class of crops, where it was said: light, medium, heavy.
    pub feeding: Option<String>,
    /// True for ground that was not dug and fed before.
    pub new_ground: bool,
    /// What a test of the soil said.
    pub soil: Soil,
    /// Days until something is sown or planted there.
    pub sown_in_days: Option<f64>,
    /// Days until the harvest.
    pub harvest_in_days: Option<f64>,
    /// What was spread before.
    pub dressings: Vec<DressingAsked>,
}

/// Compost that was spread before.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DressingAsked {
    /// How long ago [years].
    pub years_ago: f64,
    /// How much [m3].
    pub volume_m3: f64,
}

/// The compost as it is asked about.
#[derive(Clone, Debug, PartialEq)]
pub struct CompostAsked {
    /// Its figures.
    pub compost: Compost,
    /// True when some of what feeds plants was measured.
    pub is_measured: bool,
    /// True when the conductivity is that of an extract more dilute than the saturation extract, or
    /// nobody said which.
    pub is_dilute_extract: bool,
    /// Is it mature?
    pub maturity: Maturity,
    /// Did raw manure or the like go in, without a heat that was shown to have dealt with it?
    /// `None` when nobody said.
    pub held_raw: Option<bool>,
    /// What keeps it off beds where food grows.
    pub off_food: OffFood,
}

/// The question.
#[derive(Clone, Debug, PartialEq)]
pub struct BedsQuestion {
    /// The beds.
    pub beds: Vec<BedAsked>,
    /// The compost.
    pub compost: CompostAsked,
    /// How much there is [m3].
    pub volume_m3: f64,
    /// True when that is an estimate from what went in.
    pub volume_is_estimated: bool,
}

/// What a bed gets.
#[derive(Clone, Debug, PartialEq)]
pub struct BedAnswer {
    /// As it was asked about.
    pub asked: BedAsked,
    /// The crop, where it is known.
    pub crop: Option<Crop>,
    /// Its class.
    pub group: CropGroup,
    /// What it gets.
    pub share: BedShare,
    /// Keys of the sources behind what keeps the compost off beds where food grows.
    pub off_food_source_keys: Vec<String>,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct BedsAnswer {
    /// The compost as it was understood.
    pub compost: CompostAsked,
    /// How much there is [m3].
    pub volume_m3: f64,
    /// Each bed, in the order of the question.
    pub beds: Vec<BedAnswer>,
    /// The plan of the engine.
    pub plan: Plan,
    /// Depth that the German farm rule allows in a year, of this compost [m].
    pub yardstick_depth_m: f64,
    /// Keys of the sources behind needs, limits and shares.
    pub source_keys: Vec<String>,
    /// What to know about it.
    pub notices: Vec<BedsNotice>,
}

/// The figures of the trade from the tables.
#[must_use]
pub fn rules(spreading: &Spreading) -> Rules {
    let typical = |key: &str| spreading.range(key).typical;
    let mark = |ratio: u32| {
        (
            f64::from(ratio),
            typical(&format!("nitrogen.organic_at_cn_{ratio}")),
        )
    };
    Rules {
        nitrogen_first_year: spreading.range("nitrogen.first_year"),
        nitrogen_later: spreading.range("nitrogen.later_years"),
        mineral_share: spreading.range("nitrogen.mineral_share"),
        organic_marks: [10, 12, 15, 20, 25, 30].map(mark),
        organic_spread: spreading.range("nitrogen.organic_spread"),
        phosphorus_first_year: spreading.range("phosphorus.first_year"),
        potassium_first_year: spreading.range("potassium.first_year"),
        phosphorus_window_years: typical("phosphorus.window"),
        phosphorus_build_up: typical("phosphorus.build_up"),
        low_soil_phosphorus: typical("phosphorus.low_soil"),
        high_soil_phosphorus: typical("phosphorus.high_soil"),
        high_soil_potassium: typical("potassium.high_soil"),
        established_depth_m: typical("depth.established"),
        new_ground_depth_m: typical("depth.new_ground"),
        dug_m: typical("depth.dug"),
        soil_conductivity_ds_m: typical("soil.conductivity"),
        // The longer end of four to eight weeks.
        immature_days: spreading.range("immature.before_sowing").high,
        waiting_touching_days: typical("waiting.touching"),
        waiting_clear_days: typical("waiting.not_touching"),
    }
}

/// Compost that was never analysed, from the tables.
#[must_use]
pub fn compost_of_tables(spreading: &Spreading) -> CompostAsked {
    let range = |key: &str| spreading.range(&format!("compost.{key}"));
    CompostAsked {
        compost: Compost {
            moisture_wet_basis: range("moisture_wet_basis"),
            bulk_density_kg_m3: range("bulk_density"),
            nitrogen_dry_basis: range("nitrogen_dry_basis"),
            phosphorus_dry_basis: range("phosphorus_dry_basis"),
            potassium_dry_basis: range("potassium_dry_basis"),
            calcium_dry_basis: range("calcium_dry_basis"),
            magnesium_dry_basis: range("magnesium_dry_basis"),
            conductivity_ds_m: range("conductivity"),
            carbon_to_nitrogen: None,
            mineral_nitrogen_share: None,
        },
        is_measured: false,
        is_dilute_extract: true,
        maturity: Maturity::Unknown,
        held_raw: None,
        off_food: OffFood::default(),
    }
}

/// Plans the beds.
///
/// # Errors
///
/// When there are no beds or too many, when a class of crops is not known, or a figure has no meaning.
pub fn beds_plan(
    spreading: &Spreading,
    question: &BedsQuestion,
) -> Result<BedsAnswer, QuestionError> {
    check(question)?;
    let question = &judged(spreading, question);
    let mut notices = Vec::new();
    let rules = rules(spreading);
    let mut beds = Vec::new();
    let mut known = Vec::new();
    for (index, asked) in question.beds.iter().enumerate() {
        let (crop, group) = crop_and_group(spreading, asked, index, &mut notices)?;
        beds.push(bed(spreading, asked, crop, group));
        known.push((crop, group));
    }
    let compost = &question.compost;
    let medium = spreading.group("medium").map_or([f64::NAN; 3], |group| {
        [
            group.need.nitrogen_kg_m2.typical,
            group.need.phosphorus_kg_m2.typical,
            group.need.potassium_kg_m2.typical,
        ]
    });
    let plan = plan(&Question {
        beds,
        compost: for_salt(spreading, compost),
        state: State {
            maturity: compost.maturity,
            held_raw: compost.held_raw,
            off_food_beds: compost.off_food.is_off,
        },
        volume_m3: question.volume_m3,
        rules,
        unit_kg_m2: medium,
        seed: SEED,
    });
    let yardstick_depth_m = cover::depth_of_dry_matter_m(
        spreading.range("yardstick.dry_mass").typical,
        compost.compost.bulk_density_kg_m3.typical,
        compost.compost.moisture_wet_basis.typical,
    );
    let beds: Vec<BedAnswer> = question
        .beds
        .iter()
        .zip(known)
        .zip(&plan.beds)
        .map(|((asked, (crop, group)), share)| BedAnswer {
            asked: asked.clone(),
            crop: crop.cloned(),
            group: group.clone(),
            share: share.clone(),
            off_food_source_keys: compost.off_food.source_keys(),
        })
        .collect();
    notices::tell(
        spreading,
        question,
        &beds,
        &plan,
        yardstick_depth_m,
        &mut notices,
    );
    Ok(BedsAnswer {
        compost: compost.clone(),
        volume_m3: question.volume_m3,
        source_keys: source_keys(spreading, &beds),
        beds,
        plan,
        yardstick_depth_m,
        notices,
    })
}

/// The question, where a high C:N tells that compost of which nothing else is known is not mature.
fn judged(spreading: &Spreading, question: &BedsQuestion) -> BedsQuestion {
    let mut question = question.clone();
    let most = spreading.range("immature.carbon_to_nitrogen").typical;
    let compost = &mut question.compost;
    if compost.maturity == Maturity::Unknown
        && compost
            .compost
            .carbon_to_nitrogen
            .is_some_and(|ratio| ratio > most)
    {
        compost.maturity = Maturity::Immature;
    }
    question
}

/// The compost with the conductivity that counts for salt: a dilute extract reads less than the
/// saturation extract, so that is taken as so many times as much.
fn for_salt(spreading: &Spreading, asked: &CompostAsked) -> Compost {
    let mut compost = asked.compost.clone();
    if asked.is_dilute_extract {
        let times = spreading.range("salt.over_dilute").typical;
        compost.conductivity_ds_m = compost.conductivity_ds_m.scaled(times);
    }
    compost
}

fn check(question: &BedsQuestion) -> Result<(), QuestionError> {
    let beds = || Field("beds".to_owned());
    if question.beds.is_empty() {
        return Err(QuestionError::NoBeds);
    }
    if question.beds.len() > MOST_BEDS {
        return Err(QuestionError::TooMany {
            field: beds(),
            most: MOST_BEDS,
        });
    }
    let number = |field: Field, right: bool, accepted: Accepted| {
        if right {
            Ok(())
        } else {
            Err(QuestionError::Number { field, accepted })
        }
    };
    number(
        Field("litres".to_owned()),
        question.volume_m3 > 0.0 && question.volume_m3 <= 1e5,
        Accepted::AmountOfCompost,
    )?;
    let compost = &question.compost.compost;
    let dry = compost.moisture_wet_basis;
    number(
        Field("compost.moisture_pct".to_owned()),
        dry.low >= 0.0 && dry.high <= 0.95,
        Accepted::Within { least: 0, most: 95 },
    )?;
    let density = compost.bulk_density_kg_m3;
    number(
        Field("compost.bulk_density_kg_m3".to_owned()),
        density.low >= 20.0 && density.high <= 2000.0,
        Accepted::Within {
            least: 20,
            most: 2000,
        },
    )?;
    for (index, bed) in question.beds.iter().enumerate() {
        let field = Field::item("beds", index);
        number(
            field.inside("area"),
            (0.01..=1e5).contains(&bed.area_m2),
            Accepted::AreaOfBed,
        )?;
        for (name, days) in [
            ("sown_in_days", bed.sown_in_days),
            ("harvest_in_days", bed.harvest_in_days),
        ] {
            number(
                field.inside(name),
                days.is_none_or(|days| (0.0..=3660.0).contains(&days)),
                Accepted::Within {
                    least: 0,
                    most: 3660,
                },
            )?;
        }
        if bed.dressings.len() > MOST_DRESSINGS {
            return Err(QuestionError::TooMany {
                field: field.inside("dressings"),
                most: MOST_DRESSINGS,
            });
        }
        for (index, dressing) in bed.dressings.iter().enumerate() {
            let field = field.inside(&format!("dressings[{index}]"));
            number(
                field.clone(),
                (0.0..=1000.0).contains(&dressing.years_ago)
                    && (0.0..=1e5).contains(&dressing.volume_m3),
                Accepted::Dressing,
            )?;
        }
    }
    Ok(())
}

/// The crop of a bed and its class: as said, else of the crop, else medium.
fn crop_and_group<'a>(
    spreading: &'a Spreading,
    asked: &BedAsked,
    index: usize,
    notices: &mut Vec<BedsNotice>,
) -> Result<(Option<&'a Crop>, &'a CropGroup), QuestionError> {
    let unknown = |said: &str| QuestionError::Unknown {
        field: Field::item("beds", index).inside("feeding"),
        said: said.to_owned(),
        accepted: Known::Feeding,
    };
    let crop = asked.crop.as_deref().and_then(|text| spreading.crop(text));
    if let (None, Some(text), None) = (crop, &asked.crop, &asked.feeding) {
        notices.push(BedsNotice::CropUnknown {
            bed: asked.name.clone(),
            crop: text.clone(),
        });
    }
    let id = asked
        .feeding
        .as_deref()
        .or(crop.map(|crop| crop.group.as_str()))
        .unwrap_or("medium");
    let group = spreading.group(id).ok_or_else(|| unknown(id))?;
    Ok((crop, group))
}

fn bed(spreading: &Spreading, asked: &BedAsked, crop: Option<&Crop>, group: &CropGroup) -> Bed {
    Bed {
        area_m2: asked.area_m2,
        need: group.need,
        salt: crop.and_then(|crop| crop.salt),
        // What is not known may be eaten, and may touch soil.
        part: crop.map_or(EdiblePart::TouchesSoil, |crop| crop.part),
        is_for_food: off_food::is_for_food(spreading, asked.crop.as_deref()),
        likes_acid: crop.is_some_and(|crop| crop.likes_acid),
        new_ground: asked.new_ground,
        soil: asked.soil,
        sown_in_days: asked.sown_in_days,
        harvest_in_days: asked.harvest_in_days,
        dressings: asked
            .dressings
            .iter()
            .map(|dressing| Dressing {
                age_years: dressing.years_ago,
                depth_m: cover::depth_m(dressing.volume_m3, asked.area_m2),
            })
            .collect(),
    }
}

fn source_keys(spreading: &Spreading, beds: &[BedAnswer]) -> Vec<String> {
    let mut keys: Vec<String> = beds
        .iter()
        .flat_map(|bed| {
            let crop = bed.crop.iter().flat_map(|crop| &crop.source_keys);
            crop.chain(&bed.group.source_keys)
        })
        .chain(
            spreading
                .figures()
                .iter()
                .filter(|figure| !figure.key.starts_with("yield."))
                .flat_map(|figure| &figure.source_keys),
        )
        .chain(beds.iter().flat_map(|bed| &bed.off_food_source_keys))
        .cloned()
        .collect();
    keys.sort();
    keys.dedup();
    keys
}

impl BedAnswer {
    /// True when it gets nothing, for it had as much from earlier dressings as it bears.
    #[must_use]
    pub fn is_fed_by_earlier(&self) -> bool {
        let Weighed {
            carried, allowed, ..
        } = &self.share.weighed;
        let is_used_up = |limit: BedLimit| match limit {
            BedLimit::Phosphorus => carried.phosphorus_in_window_kg_m2 > 0.0,
            BedLimit::Nitrogen => carried.nitrogen_kg_m2 > 0.0,
            BedLimit::Depth => carried.depth_this_year_m > 0.0,
            _ => false,
        };
        // Salt comes first among equals, though the same dressings used up the rest as well.
        let by_amount = match self.share.binding {
            Binding::NeedMet => true,
            Binding::Limit(limit) => {
                (limit == BedLimit::Salt || is_used_up(limit))
                    && allowed
                        .iter()
                        .any(|of| of.depth_m <= 0.0 && is_used_up(of.limit))
            }
            Binding::Supply => false,
        };
        self.share.depth_m <= 0.0 && by_amount
    }

    /// What stops it from getting more.
    #[must_use]
    pub fn binding(&self) -> Binding {
        self.share.binding
    }
}
