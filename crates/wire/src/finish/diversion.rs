//! What was kept out of the bin, as JSON.

use heapwright_answers::DiversionAnswer;
use heapwright_answers::finish::{Climate, Kind};
use heapwright_texts::Locale;
use heapwright_wording as wording;
#[cfg(feature = "schema")]
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::ENGLISH;
use crate::answer::FigureJson;

/// What `heapwright diversion` answers.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct DiversionJson {
    /// The first feed that counts; null when there is none.
    pub from: Option<String>,
    /// Until when it was counted.
    pub to: String,
    /// Months in which something was fed.
    pub months: Vec<MonthJson>,
    /// All of it by kind.
    pub kinds: Vec<KindJson>,
    /// Typical wet mass a week [kg]; null for less than a week.
    pub weekly_kg: Option<f64>,
    /// Fed, but no waste [kg].
    pub not_waste_kg: f64,
    /// The climate's side; null when there is nothing.
    pub climate: Option<ClimateJson>,
    /// What to know about it, as sentences.
    pub notices: Vec<String>,
}

/// One month: typical wet mass of each kind [kg].
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct MonthJson {
    /// "2026-05".
    pub month: String,
    /// From the kitchen.
    pub kitchen_kg: f64,
    /// From the garden.
    pub garden_kg: f64,
    /// Wood.
    pub wood_kg: f64,
    /// Paper and board.
    pub paper_kg: f64,
    /// Anything else.
    pub other_kg: f64,
}

/// One kind.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct KindJson {
    /// "kitchen", "garden", "wood", "paper" or "other".
    pub kind: String,
    /// Wet mass [kg].
    pub wet_mass_kg: FigureJson,
}

/// The climate's side as carbon dioxide over a century [kg].
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct ClimateJson {
    /// From the worst end of all ways it might have gone; below 0 is a loss.
    pub from_kg: f64,
    /// To the best.
    pub to_kg: f64,
    /// Methane of the heap itself.
    pub heap_methane_kg: FigureJson,
    /// Nitrous oxide of the heap itself.
    pub heap_nitrous_oxide_kg: FigureJson,
    /// Carbon that stays in the soil.
    pub stays_kg: FigureJson,
    /// The ways it might have gone.
    pub ways: Vec<WayJson>,
    /// How it was computed.
    pub method: String,
}

/// One way it might have gone.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(JsonSchema))]
pub struct WayJson {
    /// Which way.
    pub instead_of: String,
    /// What that would have given off.
    pub spared_kg: FigureJson,
    /// Spared, less the heap's own gases, plus the carbon that stays.
    pub net_kg: FigureJson,
}

/// The answer as JSON.
#[must_use]
pub fn diversion_json(answer: &DiversionAnswer) -> DiversionJson {
    DiversionJson {
        from: answer.from.map(|from| from.to_string()),
        to: answer.to.to_string(),
        months: answer
            .months
            .iter()
            .map(|month| {
                let of = |kind| {
                    let index = Kind::ALL.iter().position(|other| *other == kind);
                    index.map_or(0.0, |index| month.wet_kg[index])
                };
                MonthJson {
                    month: format!("{}-{:02}", month.year, month.month),
                    kitchen_kg: of(Kind::Food),
                    garden_kg: of(Kind::Garden),
                    wood_kg: of(Kind::Wood),
                    paper_kg: of(Kind::Paper),
                    other_kg: of(Kind::Other),
                }
            })
            .collect(),
        kinds: answer
            .kinds
            .iter()
            .map(|kept| KindJson {
                kind: wording::kind_name(kept.kind, ENGLISH).to_owned(),
                wet_mass_kg: FigureJson::of(kept.wet_kg, 1.0),
            })
            .collect(),
        weekly_kg: answer.weekly_kg,
        not_waste_kg: answer.not_waste_kg,
        climate: answer.climate.as_ref().map(climate_json),
        notices: wording::diversion_lines(answer, Locale::default())
            .into_iter()
            .chain(wording::climate_lines(answer, Locale::default()))
            .collect(),
    }
}

fn climate_json(climate: &Climate) -> ClimateJson {
    ClimateJson {
        from_kg: climate.from_to_kg.0,
        to_kg: climate.from_to_kg.1,
        heap_methane_kg: FigureJson::of(climate.heap_methane_kg, 1.0),
        heap_nitrous_oxide_kg: FigureJson::of(climate.heap_nitrous_oxide_kg, 1.0),
        stays_kg: FigureJson::of(climate.stays_kg, 1.0),
        ways: climate
            .ways
            .iter()
            .map(|way| WayJson {
                instead_of: wording::otherwise_name(way.otherwise, ENGLISH).to_owned(),
                spared_kg: FigureJson::of(way.spared_kg, 1.0),
                net_kg: FigureJson::of(way.net_kg, 1.0),
            })
            .collect(),
        method: wording::climate_method(ENGLISH).to_owned(),
    }
}
