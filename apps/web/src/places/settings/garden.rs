//! The garden's name and where it lies, in its journal.

use heapwright_journal::content::{GardenDescribed, Place};
use heapwright_quantity::{UnitSystem, celsius_from_fahrenheit, fahrenheit_from_celsius};
use heapwright_texts::Locale;
use heapwright_texts::messages::cldr;
use heapwright_wording::settings as words;
use leptos::prelude::*;

use crate::language;
use crate::parts::form::{self, Entry, number_in};
use crate::parts::live::{button, live_if, live_text, named_button, opener};
use crate::shell::Hub;

/// Metres in a foot, exact (1959).
const METRES_PER_FOOT: f64 = 0.3048;
/// A garden that moves by less than this keeps the name of its place [deg]: about 50 km, as far as the
/// name of a place may reach.
const SAME_PLACE_DEG: f64 = 0.5;

/// The section.
pub fn section(hub: Hub) -> AnyView {
    let open = RwSignal::new(false);
    let place = move || {
        hub.keeper.with(|journal| {
            words::place_line(journal.state.garden().place.as_ref(), language::locale())
        })
    };
    let name = move || {
        hub.keeper
            .with(|journal| journal.state.garden().name.clone().unwrap_or_default())
    };
    view! {
        <section class="card" aria-labelledby="garden-title">
            <h2 id="garden-title" tabindex="-1">{words::your_garden(language::locale())}</h2>
            <p class="line-name">{live_text(name)}</p>
            <p>{live_text(place)}</p>
            <p class="hint">{words::place_why(language::locale())}</p>
            {opener("log-act", words::describe_garden(language::locale()), None, move || open.get(), move || open.update(|open| *open = !*open))}
            {live_if(move || open.get().then(|| describe(hub, move || open.set(false))))}
        </section>
    }
    .into_any()
}

/// The fields, as they are typed.
#[derive(Clone, Copy)]
struct Typed {
    name: RwSignal<String>,
    latitude: RwSignal<String>,
    longitude: RwSignal<String>,
    elevation: RwSignal<String>,
    coldest: RwSignal<String>,
    warmest: RwSignal<String>,
    /// The place as the journal had it when the form was opened.
    kept: StoredValue<Option<Place>>,
}

fn describe(hub: Hub, done: impl Fn() + Copy + 'static) -> AnyView {
    let locale = hub.page.with(|page| page.locale());
    let typed = hub.keeper.peek(|journal| {
        let garden = journal.state.garden();
        let [latitude, longitude, elevation, coldest, warmest] =
            texts_of(garden.place.as_ref(), locale).map(RwSignal::new);
        Typed {
            name: RwSignal::new(garden.name.clone().unwrap_or_default()),
            latitude,
            longitude,
            elevation,
            coldest,
            warmest,
            kept: StoredValue::new(garden.place.clone()),
        }
    });
    view! {
        <div class="log-form">
            {field("garden-name", words::garden_name(language::locale()), words::garden_name_hint(language::locale()), false, typed.name)}
            {signed("garden-latitude", words::latitude(language::locale()), words::latitude_hint(language::locale()), typed.latitude)}
            {signed("garden-longitude", words::longitude(language::locale()), words::longitude_hint(language::locale()), typed.longitude)}
            {field("garden-elevation", words::elevation_label(locale), words::elevation_hint(language::locale()), true, typed.elevation)}
            {signed("garden-coldest", words::month_label(true, locale), words::months_hint(language::locale()), typed.coldest)}
            {signed("garden-warmest", words::month_label(false, locale), words::months_hint(language::locale()), typed.warmest)}
            <div class="acts">
                {form::send(hub, words::save_garden(language::locale()), move || typed.entry(locale), done)}
                {button("quiet", words::not_now(language::locale()), done)}
            </div>
        </div>
    }
    .into_any()
}

impl Typed {
    fn entry(self, locale: Locale) -> Entry {
        let name = self.name.with_untracked(|name| name.trim().to_owned());
        let name = (!name.is_empty()).then_some(name);
        let texts = [
            self.latitude,
            self.longitude,
            self.elevation,
            self.coldest,
            self.warmest,
        ];
        let texts = texts.map(|typed| typed.get_untracked());
        let place = self
            .kept
            .with_value(|kept| place_of(kept.as_ref(), &texts, locale))?;
        if name.is_none() && place.is_none() {
            return Err(words::nothing_of_garden(language::locale()).to_owned());
        }
        let content = GardenDescribed {
            name,
            place,
            ..GardenDescribed::default()
        };
        Ok((content.into(), None))
    }
}

/// Latitude, longitude, elevation, coldest and warmest month of a place as they are typed.
fn texts_of(place: Option<&Place>, locale: Locale) -> [String; 5] {
    let mark = cldr::decimal_mark(locale);
    let text = |number: Option<f64>| {
        number.map_or_else(String::new, |number| number.to_string().replace('.', mark))
    };
    // What is converted shows without its tail.
    let tenths = |number: f64| (number * 10.0).round() / 10.0;
    let metres = |metres: f64| match locale.units {
        UnitSystem::Metric => metres,
        UnitSystem::UsCustomary => tenths(metres / METRES_PER_FOOT),
    };
    let degrees = |celsius: f64| match locale.units {
        UnitSystem::Metric => celsius,
        UnitSystem::UsCustomary => tenths(fahrenheit_from_celsius(celsius)),
    };
    [
        text(place.map(|place| place.latitude_deg)),
        text(place.map(|place| place.longitude_deg)),
        text(place.and_then(|place| place.elevation_m).map(metres)),
        text(place.and_then(|place| place.coldest_month_c).map(degrees)),
        text(place.and_then(|place| place.warmest_month_c).map(degrees)),
    ]
}

/// The place that was typed, on from the one that is kept: what stands as it was shown stays as it was
/// kept, to the last digit, and so does what the form does not show.
fn place_of(
    kept: Option<&Place>,
    texts: &[String; 5],
    locale: Locale,
) -> Result<Option<Place>, String> {
    let [latitude, longitude, elevation, coldest, warmest] = texts;
    let (latitude_deg, longitude_deg) = match (number_in(latitude)?, number_in(longitude)?) {
        (Some(latitude_deg), Some(longitude_deg)) => (latitude_deg, longitude_deg),
        (None, None) => return Ok(None),
        _ => return Err(words::place_needs_both(language::locale()).to_owned()),
    };
    let metres = |feet_or_metres: f64| match locale.units {
        UnitSystem::Metric => feet_or_metres,
        UnitSystem::UsCustomary => feet_or_metres * METRES_PER_FOOT,
    };
    let celsius = |degrees: f64| match locale.units {
        UnitSystem::Metric => degrees,
        UnitSystem::UsCustomary => celsius_from_fahrenheit(degrees),
    };
    let elevation_m = number_in(elevation)?.map(metres);
    let coldest_month_c = number_in(coldest)?.map(celsius);
    let warmest_month_c = number_in(warmest)?.map(celsius);
    let typed = Place {
        name: None,
        latitude_deg,
        longitude_deg,
        elevation_m,
        coldest_month_c,
        warmest_month_c,
    };
    let Some(kept) = kept else {
        return Ok(Some(typed));
    };
    let shown = texts_of(Some(kept), locale);
    let as_kept = |at: usize, kept: Option<f64>, typed: Option<f64>| {
        if texts[at] == shown[at] { kept } else { typed }
    };
    let is_near = (latitude_deg - kept.latitude_deg).abs() < SAME_PLACE_DEG
        && (longitude_deg - kept.longitude_deg).abs() < SAME_PLACE_DEG;
    Ok(Some(Place {
        name: kept.name.clone().filter(|_| is_near),
        elevation_m: as_kept(2, kept.elevation_m, typed.elevation_m),
        coldest_month_c: as_kept(3, kept.coldest_month_c, typed.coldest_month_c),
        warmest_month_c: as_kept(4, kept.warmest_month_c, typed.warmest_month_c),
        ..typed
    }))
}

fn field(
    id: &'static str,
    label: &'static str,
    hint: &'static str,
    is_number: bool,
    typed: RwSignal<String>,
) -> AnyView {
    view! {
        <div class="field">
            <label for=id>{label}</label>
            {input(id, is_number, typed)}
            <p class="hint" id=format!("{id}-hint")>{hint}</p>
        </div>
    }
    .into_any()
}

/// A number that may be below zero: keypads of phones have no minus, so a button turns the sign.
fn signed(
    id: &'static str,
    label: &'static str,
    hint: &'static str,
    typed: RwSignal<String>,
) -> AnyView {
    let turn = move || {
        typed.update(|typed| {
            *typed = match typed.trim_start().strip_prefix(['-', '\u{2212}']) {
                Some(rest) => rest.to_owned(),
                None => format!("\u{2212}{typed}"),
            }
        });
    };
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <div class="amount">
                {input(id, true, typed)}
                {named_button("step", "\u{b1}", Some(words::other_sign(label, language::locale())), turn)}
            </div>
            <p class="hint" id=format!("{id}-hint")>{hint}</p>
        </div>
    }
    .into_any()
}

fn input(id: &'static str, is_number: bool, typed: RwSignal<String>) -> AnyView {
    view! {
        <input
            id=id
            type="text"
            inputmode=if is_number { "decimal" } else { "text" }
            autocomplete="off"
            aria-describedby=format!("{id}-hint")
            prop:value=move || typed.get()
            on:input=move |event| typed.set(event_target_value(&event))
        />
    }
    .into_any()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn us_customary() -> Locale {
        Locale::english(UnitSystem::UsCustomary)
    }

    fn kept() -> Place {
        Place {
            name: Some("the allotments".to_owned()),
            latitude_deg: 51.48,
            longitude_deg: -0.3,
            elevation_m: Some(12.0),
            coldest_month_c: Some(4.7),
            warmest_month_c: Some(18.3),
        }
    }

    #[test]
    fn what_is_not_changed_stays_to_the_last_digit_in_either_units() {
        for locale in [Locale::default(), us_customary()] {
            let texts = texts_of(Some(&kept()), locale);
            assert_eq!(place_of(Some(&kept()), &texts, locale), Ok(Some(kept())));
        }
        let texts = texts_of(Some(&kept()), us_customary());
        assert_eq!(texts, ["51.48", "-0.3", "39.4", "40.5", "64.9"]);
    }

    #[test]
    fn what_is_changed_is_taken_and_what_is_emptied_goes() {
        let mut texts = texts_of(Some(&kept()), us_customary());
        texts[2] = "100".to_owned();
        texts[3] = String::new();
        let place = place_of(Some(&kept()), &texts, us_customary())
            .ok()
            .flatten();
        let expected = Place {
            elevation_m: Some(100.0 * METRES_PER_FOOT),
            coldest_month_c: None,
            ..kept()
        };
        assert_eq!(place, Some(expected));
    }

    #[test]
    fn a_garden_that_moves_far_leaves_the_name_of_its_place() {
        let mut texts = texts_of(Some(&kept()), Locale::default());
        texts[0] = "51.5".to_owned();
        let name = |texts: &[String; 5]| {
            place_of(Some(&kept()), texts, Locale::default())
                .ok()
                .flatten()
                .and_then(|place| place.name)
        };
        assert_eq!(name(&texts).as_deref(), Some("the allotments"));
        texts[0] = "-33.9".to_owned();
        assert_eq!(name(&texts), None);
    }
}
