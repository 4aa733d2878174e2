//! A figure of an entry that cannot be: in words, in the units that the keeper types.

use heapwright_journal::{Problem, WriteError, Wrong};
use heapwright_quantity::{MassUnit, UnitSystem, VolumeUnit, fahrenheit_from_celsius};
use heapwright_state::RecordError;
use heapwright_texts::Locale;
use heapwright_texts::messages::refusals_of_entries as texts;

use super::{field_name, figure};

/// International yard of 1959: 0.9144 m, so a foot is a third and an inch a 36th of it.
const METRES_PER_YARD: f64 = 0.9144;
const METRES_PER_FOOT: f64 = METRES_PER_YARD / 3.0;
const METRES_PER_INCH: f64 = METRES_PER_YARD / 36.0;

/// Bounds in units that they were not chosen in are rounded inwards to so many digits: what a keeper
/// enters between them is taken.
const DIGITS: i32 = 3;

/// What conversion leaves of a round number, and no bound is finer than.
const ROUND_OFF: f64 = 1e-9;

/// What cannot be recorded for one of its figures, in words and with its unit; nothing for the others.
#[must_use]
pub fn figure_refusal(error: &RecordError, locale: Locale) -> Option<String> {
    match error {
        RecordError::Write(WriteError::Impossible(problem)) => {
            let Wrong::Outside { least, most } = &problem.what else {
                return None;
            };
            Some(outside(problem, *least, *most, locale))
        }
        _ => None,
    }
}

/// A figure that lies outside of what can be.
pub(super) fn outside(problem: &Problem, least: f64, most: f64, locale: Locale) -> String {
    // The last step tells the figure and its unit wherever it stands.
    let last = problem.field.rsplit('.').next().unwrap_or_default();
    let (least, most) = match shown_unit(last, locale.units) {
        None => (figure(least, locale), figure(most, locale)),
        Some((unit, convert, is_round)) => {
            let [least, most] = [(least, false), (most, true)].map(|(bound, down)| {
                let digits = if is_round { 12 } else { DIGITS };
                figure(inwards(convert(bound), digits, down), locale)
            });
            let most = texts::Bound {
                number: &most,
                unit,
            };
            (least, most.said(locale))
        }
    };
    texts::FigureOfEntryOutside {
        field: &field_name(&problem.field, locale),
        figure: last,
        least: &least,
        most: &most,
    }
    .said(locale)
}

/// In what the keeper types a figure: the key of its unit, how it is reached from the figure's own,
/// and whether round bounds stay round in it.
type ShownUnit = (&'static str, fn(f64) -> f64, bool);

/// In what the keeper types a figure; nothing where its own unit is typed by everybody.
fn shown_unit(last: &str, units: UnitSystem) -> Option<ShownUnit> {
    use UnitSystem::{Metric, UsCustomary};
    // A percentage or a laboratory's figure ends otherwise, a density of kg in m³ before a mass.
    let (_, unit) = match last.rsplit_once("_kg_m3") {
        Some(_) => ("", "kg_m3"),
        None if last.contains("mg_kg") => return None,
        None => last.rsplit_once('_')?,
    };
    Some(match (unit, units) {
        ("c", Metric) => ("celsius", |celsius| celsius, true),
        ("c", UsCustomary) => ("fahrenheit", fahrenheit_from_celsius, true),
        // The conductivity of a soil is in dS/m everywhere.
        ("m", _) if last == "conductivity_ds_m" => return None,
        ("m", Metric) if last == "elevation_m" => ("metres", |metres| metres, true),
        ("m", UsCustomary) if last == "elevation_m" => {
            ("feet", |metres| metres / METRES_PER_FOOT, false)
        }
        ("m", Metric) => ("centimetres", |metres| metres * 100.0, true),
        ("m", UsCustomary) => ("inches", |metres| metres / METRES_PER_INCH, false),
        ("m2", Metric) => ("square-metres", |area_m2| area_m2, true),
        ("m2", UsCustomary) => (
            "square-feet",
            |area_m2| area_m2 / (METRES_PER_FOOT * METRES_PER_FOOT),
            false,
        ),
        ("l", Metric) => ("litres", |litres| litres, true),
        ("l", UsCustomary) => (
            "gallons",
            |litres| litres / 1000.0 / VolumeUnit::UsGallon.cubic_metres(),
            false,
        ),
        ("kg", Metric) => ("kilograms", |kilograms| kilograms, true),
        ("kg", UsCustomary) => (
            "pounds",
            |kilograms| kilograms / MassUnit::Pound.kilograms(),
            false,
        ),
        ("kg_m3", Metric) => ("kilograms-in-cubic-metre", |density| density, true),
        ("kg_m3", UsCustomary) => (
            "pounds-in-cubic-yard",
            |density| density * METRES_PER_YARD.powi(3) / MassUnit::Pound.kilograms(),
            false,
        ),
        _ => return None,
    })
}

/// The nearest number of so many digits that is not below, or not above, another.
fn inwards(bound: f64, digits: i32, down: bool) -> f64 {
    if bound == 0.0 || !bound.is_finite() {
        return bound;
    }
    #[allow(clippy::cast_possible_truncation)] // the place of a digit
    let place = bound.abs().log10().floor() as i32 + 1 - digits;
    let steps = if place >= 0 {
        bound / 10_f64.powi(place)
    } else {
        bound * 10_f64.powi(-place)
    };
    let nearest = steps.round();
    let whole = if (steps - nearest).abs() <= ROUND_OFF * steps.abs() {
        nearest
    } else if down {
        steps.floor()
    } else {
        steps.ceil()
    };
    // Divided by a power of ten, not multiplied by its inverse, which is not exact.
    if place >= 0 {
        whole * 10_f64.powi(place)
    } else {
        whole / 10_f64.powi(-place)
    }
}

#[cfg(test)]
mod tests {
    use heapwright_quantity::UnitSystem::{Metric, UsCustomary};
    use heapwright_texts::Translation;

    use super::*;
    use crate::refusals::problem_refusal;
    use crate::refusals::tests::languages;

    fn problem(field: &str, least: f64, most: f64) -> Problem {
        Problem {
            field: field.to_owned(),
            what: Wrong::Outside { least, most },
        }
    }

    #[test]
    fn a_figure_is_refused_in_words_and_in_the_units_of_the_keeper() {
        for (field, least, most, units, english, german) in [
            (
                "probes[0].temperature_c",
                -60.0,
                120.0,
                Metric,
                "The temperature must be from -60 to 120\u{a0}°C.",
                "Gib für die Temperatur -60 bis 120\u{a0}°C an.",
            ),
            (
                "probes[0].temperature_c",
                -60.0,
                120.0,
                UsCustomary,
                "The temperature must be from -76 to 248\u{a0}°F.",
                "Gib für die Temperatur -76 bis 248\u{a0}°F an.",
            ),
            (
                "enclosure.width_m",
                0.1,
                20.0,
                Metric,
                "The width must be from 10 to 2000\u{a0}cm.",
                "Gib für die Breite 10 bis 2000\u{a0}cm an.",
            ),
            (
                "enclosure.width_m",
                0.1,
                20.0,
                UsCustomary,
                "The width must be from 3.94 to 787\u{a0}in.",
                "Gib für die Breite 3,94 bis 787\u{a0}Zoll an.",
            ),
            (
                "area_m2",
                0.01,
                100_000.0,
                UsCustomary,
                "The area must be from 0.108 to 1070000\u{a0}sq\u{a0}ft.",
                "Gib für die Fläche 0,108 bis 1070000\u{a0}sq\u{a0}ft an.",
            ),
            (
                "place.elevation_m",
                -500.0,
                9000.0,
                UsCustomary,
                "The height above the sea must be from -1640 to 29500\u{a0}ft.",
                "Gib für die Höhe über dem Meer -1640 bis 29500\u{a0}ft an.",
            ),
            (
                "share_pct",
                0.0,
                100.0,
                UsCustomary,
                "The share must be from 0 to 100\u{a0}%.",
                "Gib für den Anteil 0 bis 100\u{a0}% an.",
            ),
            (
                "soil.conductivity_ds_m",
                0.0,
                100.0,
                UsCustomary,
                "The conductivity must be from 0 to 100\u{a0}dS/m.",
                "Gib für die Leitfähigkeit 0 bis 100\u{a0}dS/m an.",
            ),
            (
                "laboratory.ammonium_nitrogen_mg_kg_dry",
                0.0,
                1e6,
                UsCustomary,
                "The nitrogen in ammonium must be from 0 to 1000000\u{a0}mg/kg.",
                "Gib für den Ammoniumstickstoff 0 bis 1000000\u{a0}mg/kg an.",
            ),
            (
                "soil.phosphorus_mg_kg",
                0.0,
                1e5,
                UsCustomary,
                "The phosphorus must be from 0 to 100000\u{a0}mg/kg.",
                "Gib für den Phosphor 0 bis 100000\u{a0}mg/kg an.",
            ),
            (
                "parts[0].bulk_density_kg_m3",
                5.0,
                3000.0,
                Metric,
                "The bulk density must be from 5 to 3000\u{a0}kg/m³.",
                "Gib für die Schüttdichte 5 bis 3000\u{a0}kg/m³ an.",
            ),
            (
                "place.latitude_deg",
                -90.0,
                90.0,
                Metric,
                "The latitude must be from -90 to 90\u{a0}degrees.",
                "Gib für den Breitengrad -90 bis 90\u{a0}Grad an.",
            ),
            (
                "other.thing",
                0.0,
                1.0,
                Metric,
                "Other.thing must be from 0 to 1.",
                "Other, thing: Gib eine Zahl von 0 bis 1 an.",
            ),
        ] {
            let problem = problem(field, least, most);
            let said =
                languages().map(|locale| problem_refusal(&problem, locale.with_units(units)));
            assert_eq!(said, [english, german]);
        }
    }

    #[test]
    fn what_lies_between_the_bounds_that_are_shown_is_taken() {
        for (last, least, most) in [
            ("width_m", 0.1, 20.0),
            ("area_m2", 0.01, 100_000.0),
            ("water_l", 1e-3, 100_000.0),
            ("full_kg", 1e-6, 1e5),
            ("bulk_density_kg_m3", 5.0, 3000.0),
            ("temperature_c", -60.0, 120.0),
        ] {
            for units in [Metric, UsCustomary] {
                let (_, convert, is_round) = shown_unit(last, units).unwrap();
                let digits = if is_round { 12 } else { DIGITS };
                let [least, most] = [convert(least), convert(most)];
                for (bound, down) in [(least, false), (most, true)] {
                    let inside = inwards(bound, digits, down) - bound;
                    let inside = if down { -inside } else { inside };
                    let slack = 1e-12 * bound.abs();
                    assert!(inside >= -slack, "{last}: {bound}");
                    assert!(inside <= 0.01 * bound.abs(), "{last}: {bound}");
                }
            }
        }
    }

    #[test]
    fn the_pack_that_a_page_fetches_has_these_sentences() {
        let pack = Translation::without_commands(Translation::GERMAN);
        let translation = Translation::read("de", Box::leak(pack.into_boxed_str()), "").unwrap();
        let page = Locale::default().in_language(Some(Box::leak(Box::new(translation))));
        let said = problem_refusal(&problem("share_pct", 0.0, 100.0), page);
        assert_eq!(said, "Gib für den Anteil 0 bis 100\u{a0}% an.");
    }

    #[test]
    fn only_a_figure_is_said_by_a_command() {
        let problem = problem("water_l", 0.001, 100_000.0);
        let error = RecordError::Write(WriteError::Impossible(problem.clone()));
        for locale in languages() {
            let said = figure_refusal(&error, locale);
            assert_eq!(said, Some(problem_refusal(&problem, locale)));
            assert_eq!(figure_refusal(&RecordError::InTheFuture, locale), None);
        }
    }
}
