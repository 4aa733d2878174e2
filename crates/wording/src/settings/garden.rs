//! What the settings say of the garden and its place.

use heapwright_journal::content::Place;
use heapwright_quantity::UnitSystem;
use heapwright_texts::Locale;
use heapwright_texts::messages::settings as texts;

/// Heading of the garden.
#[must_use]
pub fn your_garden(locale: Locale) -> &'static str {
    texts::your_garden(locale)
}

/// Why its place is asked for.
#[must_use]
pub fn place_why(locale: Locale) -> &'static str {
    texts::place_why(locale)
}

/// Its name.
#[must_use]
pub fn garden_name(locale: Locale) -> &'static str {
    texts::garden_name(locale)
}

/// Its name may be left out.
#[must_use]
pub fn garden_name_hint(locale: Locale) -> &'static str {
    texts::garden_name_hint(locale)
}

/// Latitude.
#[must_use]
pub fn latitude(locale: Locale) -> &'static str {
    texts::latitude(locale)
}

/// What latitude is.
#[must_use]
pub fn latitude_hint(locale: Locale) -> &'static str {
    texts::latitude_hint(locale)
}

/// Longitude.
#[must_use]
pub fn longitude(locale: Locale) -> &'static str {
    texts::longitude(locale)
}

/// What longitude is.
#[must_use]
pub fn longitude_hint(locale: Locale) -> &'static str {
    texts::longitude_hint(locale)
}

/// Height.
#[must_use]
pub fn elevation_hint(locale: Locale) -> &'static str {
    texts::elevation_hint(locale)
}

/// Temperatures of the months.
#[must_use]
pub fn months_hint(locale: Locale) -> &'static str {
    texts::months_hint(locale)
}

/// Saves it.
#[must_use]
pub fn save_garden(locale: Locale) -> &'static str {
    texts::save_garden(locale)
}

/// Opens the form.
#[must_use]
pub fn describe_garden(locale: Locale) -> &'static str {
    texts::describe_garden(locale)
}

/// Latitude without longitude.
#[must_use]
pub fn place_needs_both(locale: Locale) -> &'static str {
    texts::place_needs_both(locale)
}

/// Nothing was entered.
#[must_use]
pub fn nothing_of_garden(locale: Locale) -> &'static str {
    texts::nothing_of_garden(locale)
}

/// Name of the button that turns the sign of a field.
#[must_use]
pub fn other_sign(label: &str, locale: Locale) -> String {
    texts::OtherSign { label }.said(locale)
}

/// Label of the height of the garden.
#[must_use]
pub fn elevation_label(locale: Locale) -> &'static str {
    match locale.units {
        UnitSystem::Metric => texts::elevation_metres(locale),
        UnitSystem::UsCustomary => texts::elevation_feet(locale),
    }
}

/// Label of the temperature of a month.
#[must_use]
pub fn month_label(coldest: bool, locale: Locale) -> &'static str {
    match (coldest, locale.units) {
        (true, UnitSystem::Metric) => texts::coldest_month_celsius(locale),
        (true, UnitSystem::UsCustomary) => texts::coldest_month_fahrenheit(locale),
        (false, UnitSystem::Metric) => texts::warmest_month_celsius(locale),
        (false, UnitSystem::UsCustomary) => texts::warmest_month_fahrenheit(locale),
    }
}

/// Where the garden lies, as its journal has it.
#[must_use]
pub fn place_line(place: Option<&Place>, locale: Locale) -> String {
    let Some(place) = place else {
        return texts::place_not_known(locale).to_owned();
    };
    texts::Place {
        east: if place.longitude_deg < 0.0 {
            "west"
        } else {
            "east"
        },
        latitude: &degrees_text(place.latitude_deg, locale),
        longitude: &degrees_text(place.longitude_deg, locale),
        north: if place.latitude_deg < 0.0 {
            "south"
        } else {
            "north"
        },
    }
    .said(locale)
}

/// Degrees without a sign, with all the digits that were given.
fn degrees_text(degrees: f64, locale: Locale) -> String {
    locale.significant(degrees.abs(), 15)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_is_told_by_its_hemispheres() {
        let place = Place {
            name: None,
            latitude_deg: -33.9,
            longitude_deg: 18.4,
            elevation_m: None,
            coldest_month_c: None,
            warmest_month_c: None,
        };
        assert_eq!(
            place_line(Some(&place), Locale::default()),
            "The garden lies at 33.9°\u{a0}S, 18.4°\u{a0}E."
        );
    }
}
