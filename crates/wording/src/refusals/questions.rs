//! Why a question cannot be answered.

use heapwright_answers::climate::ClimateError;
use heapwright_answers::heap::SimulationError;
use heapwright_answers::{Accepted, Field, Known, QuestionError};
use heapwright_texts::Locale;
use heapwright_texts::messages::refusals as texts;

use super::{field_name, figure, found, key};
use crate::page::sentence;

/// A question that cannot be answered, as a sentence.
#[must_use]
pub fn question_refusal(error: &QuestionError, locale: Locale) -> String {
    let name = |field: &Field| field_name(&field.0, locale);
    let refusal = match error {
        QuestionError::Empty { field } => texts::Empty {
            field: &name(field),
        }
        .said(locale),
        QuestionError::TooMany { field, most } => texts::TooMany {
            field: &name(field),
            most: number(*most),
        }
        .said(locale),
        QuestionError::Part { field, error } => texts::PartRefused {
            field: &name(field),
            refusal: &found::after_colon(error, locale),
        }
        .said(locale),
        QuestionError::Target { field, accepted } | QuestionError::Number { field, accepted } => {
            must_be(&name(field), *accepted, locale)
        }
        QuestionError::NoBeds => texts::no_beds(locale).to_owned(),
        QuestionError::Unknown {
            field,
            said,
            accepted,
        } => {
            let field = &name(field);
            match accepted {
                Known::Feeding => texts::UnknownFeeding { field, said }.said(locale),
                Known::OneOf(ids) => texts::UnknownId {
                    field,
                    ids: &ids.join(", "),
                    said,
                }
                .said(locale),
            }
        }
        QuestionError::Climate(error) => climate(error, locale),
        QuestionError::WeatherAmiss {
            covered: [known_from, known_to],
            wanted: [begins, ends],
        } => texts::WeatherAmiss {
            begins,
            ends,
            known_from,
            known_to,
        }
        .said(locale),
        QuestionError::OutOfTime => texts::out_of_time(locale).to_owned(),
        QuestionError::NothingInHeap => texts::nothing_in_heap(locale).to_owned(),
        QuestionError::Simulation(error) => return simulation_refusal(error, locale),
    };
    sentence(&refusal)
}

/// A heap that cannot be simulated, as a sentence.
#[must_use]
pub fn simulation_refusal(error: &SimulationError, locale: Locale) -> String {
    let refusal = match error {
        SimulationError::NothingFed => texts::nothing_fed(locale).to_owned(),
        SimulationError::Enclosure(what) => {
            texts::EnclosureWithoutMeaning { what: &key(what) }.said(locale)
        }
        SimulationError::Weather { hour } => texts::WeatherOfNoWeather {
            hour: number(*hour),
        }
        .said(locale),
        SimulationError::WeatherTooShort { days } => texts::WeatherTooShort {
            days: &locale.decimals(*days, 1, 1),
        }
        .said(locale),
        SimulationError::Event { index } => texts::EventWithoutMeaning {
            event: number(*index) + 1.0,
        }
        .said(locale),
        SimulationError::Settings(what) => {
            texts::SettingWithoutMeaning { what: &key(what) }.said(locale)
        }
        SimulationError::Stuck { day } => texts::ComputationStuck {
            day: &locale.decimals(*day, 2, 2),
        }
        .said(locale),
    };
    sentence(&refusal)
}

fn climate(error: &ClimateError, locale: Locale) -> String {
    match error {
        ClimateError::Outside { what, least, most } => texts::ClimateOutside {
            least: &figure(*least, locale),
            most: &figure(*most, locale),
            what: &key(what),
        }
        .said(locale),
        ClimateError::ColdestAboveWarmest => texts::coldest_above_warmest(locale).to_owned(),
    }
}

fn must_be(field: &str, accepted: Accepted, locale: Locale) -> String {
    match accepted {
        Accepted::Above0 => texts::MustBeAbove0 { field }.said(locale),
        Accepted::NumberAbove0 => texts::MustBeNumberAbove0 { field }.said(locale),
        Accepted::ZeroOrMore => texts::MustBe0OrMore { field }.said(locale),
        Accepted::AmountOfZeroOrMore => texts::MustBeAmountOf0OrMore { field }.said(locale),
        Accepted::Within { least, most } => texts::MustBeWithin {
            field,
            least: f64::from(least),
            most: f64::from(most),
        }
        .said(locale),
        Accepted::Percent => texts::MustBePercent { field }.said(locale),
        Accepted::AreaOfBed => texts::MustBeAreaOfBed { field }.said(locale),
        Accepted::AmountOfCompost => texts::MustBeAmountOfCompost { field }.said(locale),
        Accepted::Dressing => texts::MustBeDressing { field }.said(locale),
        Accepted::TwoOfThree => texts::MustBeTwoOfThree { field }.said(locale),
        Accepted::AmountOfMixInstead => texts::MustBeAmountOfMixInstead { field }.said(locale),
        Accepted::AreaInstead => texts::MustBeAreaInstead { field }.said(locale),
        Accepted::DoneInTime => texts::MustBeDoneInTime { field }.said(locale),
        Accepted::Feed => texts::MustBeFeed { field }.said(locale),
        Accepted::TwoRatios => texts::MustBeTwoRatios { field }.said(locale),
        Accepted::RatioWithin => texts::MustBeRatioWithin { field }.said(locale),
        Accepted::TwoPercentages => texts::MustBeTwoPercentages { field }.said(locale),
    }
}

#[allow(clippy::cast_precision_loss)] // places and counts
fn number(count: usize) -> f64 {
    count as f64
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::refusals::found::tests::errors;
    use crate::refusals::tests::german;

    fn field(name: &str) -> Field {
        Field(name.to_owned())
    }

    #[test]
    fn a_question_is_refused_as_its_error_says_and_in_words() {
        let lists = ["have", "reach", "parts", "beds"].map(|list| QuestionError::TooMany {
            field: field(list),
            most: 200,
        });
        let parts = errors().into_iter().map(|error| QuestionError::Part {
            field: Field::item("have", 0),
            error,
        });
        let unknown = [
            Known::Feeding,
            Known::OneOf(vec!["potting".to_owned(), "mulch".to_owned()]),
        ]
        .map(|accepted| QuestionError::Unknown {
            field: Field::item("beds", 2).inside("feeding"),
            said: "huge".to_owned(),
            accepted,
        });
        let climate = [
            "the latitude in degrees",
            "the longitude in degrees",
            "the height above the sea in metres",
            "the mean temperature of a month in degC",
            "the rain of a month in mm",
        ]
        .map(|what| ClimateError::Outside {
            what,
            least: -90.0,
            most: 90.5,
        });
        let climate = climate
            .into_iter()
            .chain([ClimateError::ColdestAboveWarmest]);
        let others = [
            QuestionError::Empty {
                field: field("have"),
            },
            QuestionError::NoBeds,
            QuestionError::NothingInHeap,
        ];
        for error in (others.into_iter().chain(lists).chain(parts).chain(unknown))
            .chain(climate.map(QuestionError::Climate))
        {
            let german = german(&error, question_refusal);
            assert!(!german.contains('_'), "{german}");
        }
    }

    #[test]
    fn a_figure_of_a_question_is_refused_as_its_error_says_and_in_words() {
        for (name, accepted) in [
            ("depth", Accepted::Above0),
            ("reach[0].effort", Accepted::NumberAbove0),
            ("amount", Accepted::ZeroOrMore),
            ("water", Accepted::AmountOfZeroOrMore),
            (
                "compost.bulk_density_kg_m3",
                Accepted::Within {
                    least: 20,
                    most: 2000,
                },
            ),
            ("first year and later years", Accepted::Percent),
            ("beds[0].area", Accepted::AreaOfBed),
            ("litres", Accepted::AmountOfCompost),
            ("beds[0].dressings[1]", Accepted::Dressing),
            ("area, depth and amount", Accepted::TwoOfThree),
            ("area", Accepted::AmountOfMixInstead),
            ("amount", Accepted::AreaInstead),
            ("plans[0]", Accepted::DoneInTime),
            ("feed", Accepted::Feed),
            ("target.cn_ratio", Accepted::TwoRatios),
            ("target.cn_goal", Accepted::RatioWithin),
            ("target.free_air_space_pct", Accepted::TwoPercentages),
        ] {
            for error in [
                QuestionError::Number {
                    field: field(name),
                    accepted,
                },
                QuestionError::Target {
                    field: field(name),
                    accepted,
                },
            ] {
                let german = german(&error, question_refusal);
                assert!(!german.contains(['_', '[']), "{german}");
            }
        }
    }

    #[test]
    fn a_simulation_is_refused_as_its_error_says() {
        let enclosures = ["width", "depth", "height", "heat loss", "forced air"];
        let settings = [
            "number of days",
            "grid",
            "interval of the series",
            "tolerance",
        ];
        let others = [
            SimulationError::NothingFed,
            SimulationError::Weather { hour: 17 },
            SimulationError::WeatherTooShort { days: 2.0 },
            SimulationError::Event { index: 4 },
            SimulationError::Stuck { day: 12.345 },
        ];
        for error in others
            .into_iter()
            .chain(enclosures.map(SimulationError::Enclosure))
            .chain(settings.map(SimulationError::Settings))
        {
            let german = german(&error, simulation_refusal);
            assert!(!german.contains('('), "{german}");
        }
    }

    #[test]
    fn weather_that_does_not_do_is_refused_as_its_error_says() {
        let amiss = QuestionError::WeatherAmiss {
            covered: ["2026-05-01 00:00Z", "2026-05-02 00:00Z"].map(str::to_owned),
            wanted: ["2026-05-01 06:00Z", "2026-05-08 06:00Z"].map(str::to_owned),
        };
        let said = german(&amiss, question_refusal);
        assert!(said.contains("2026-05-01 06:00Z"), "{said}");
        german(&QuestionError::OutOfTime, question_refusal);
    }
}
