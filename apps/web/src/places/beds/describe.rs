//! The form that describes a bed, or corrects how it was described.

use heapwright_journal::EventId;
use heapwright_journal::content::{Amended, BedDescribed, Feeding, SoilTest};
use heapwright_quantity::UnitSystem;
use heapwright_texts::Locale;
use heapwright_texts::messages::beds_place as texts;
use heapwright_wording::beds_on_the_page as words;
use leptos::prelude::*;
use serde_json::{Map, Value};

use super::SQUARE_METRES_PER_SQUARE_FOOT;
use crate::keeping::device;
use crate::language;
use crate::parts::form::{self, Entry};
use crate::parts::live::button;
use crate::shell::Hub;

/// The form.
///
/// - `bed`: the bed whose description is corrected; `None` for a new one
pub fn form(hub: Hub, bed: Option<EventId>, done: impl Fn() + Copy + 'static) -> AnyView {
    let old = bed.and_then(|bed| {
        hub.keeper
            .peek(|journal| journal.state.bed(bed)?.now().described.clone())
    });
    let locale = hub.page.with(|page| page.locale());
    if let Some(old) = &old {
        form::fill(values(old, locale));
    }
    let was_new_ground = old.as_ref().is_some_and(|old| old.new_ground);
    let send_word = match bed {
        Some(_) => texts::keep_change(locale),
        None => texts::keep_bed(locale),
    };
    let entry = move || entry(hub, bed.zip(old.as_ref()));
    let area = match locale.units {
        UnitSystem::Metric => texts::area_square_metres(locale),
        UnitSystem::UsCustomary => texts::area_square_feet(locale),
    };
    let crops = language::spreading()
        .crops()
        .iter()
        .map(|crop| view! { <option value=crop.name.clone()></option> })
        .collect_view();
    view! {
        <div class="log-form">
            {form::text("bed-name", texts::name(locale).to_owned(), texts::name_hint(locale), false)}
            {form::text("bed-area", area.to_owned(), texts::area_hint(locale), false)}
            <div class="field">
                <label for="bed-crop">{texts::what_grows(locale)}</label>
                <input id="bed-crop" type="text" autocomplete="off" list="bed-crops"/>
                <datalist id="bed-crops">{crops}</datalist>
            </div>
            {form::select("bed-feeding", texts::how_much_it_feeds(locale), Some(texts::as_the_crop(locale)), form::words::<Feeding>())}
            <label class="tick">
                <input type="checkbox" name="bed-new-ground" value="0" checked=was_new_ground/>
                <span>{texts::new_ground(locale)}</span>
            </label>
            <details class="more">
                <summary>{texts::soil_test(locale)}</summary>
                <div class="fields">
                    {form::text("soil-ph", texts::soil_ph(locale).to_owned(), "", true)}
                    {form::text("soil-organic", texts::soil_organic(locale).to_owned(), "", true)}
                    {form::text("soil-phosphorus", texts::soil_phosphorus(locale).to_owned(), "", true)}
                    {form::text("soil-potassium", texts::soil_potassium(locale).to_owned(), "", true)}
                    {form::text("soil-conductivity", texts::soil_conductivity(locale).to_owned(), "", true)}
                </div>
            </details>
            {bed.is_none().then(|| form::when("bed-when"))}
            <div class="acts">
                {form::send(hub, send_word, entry, done)}
                {button("quiet", texts::not_now(locale), done)}
            </div>
        </div>
    }
    .into_any()
}

/// What the form says, as a new bed or as what changes of an old one.
fn entry(hub: Hub, old: Option<(EventId, &BedDescribed)>) -> Entry {
    let new = described(hub, old.map(|(bed, _)| bed))?;
    match old {
        None => Ok((new.into(), form::moment("bed-when")?)),
        Some((bed, old)) => {
            let patch = patch(old, &new);
            if patch.is_empty() {
                return Err(words::bed_unchanged(language::locale()).to_owned());
            }
            let amended = Amended {
                event: bed,
                happened: None,
                patch,
            };
            Ok((amended.into(), None))
        }
    }
}

/// What the fields show of a bed that was described.
fn values(bed: &BedDescribed, locale: Locale) -> Vec<(&'static str, String)> {
    let area = match locale.units {
        UnitSystem::Metric => bed.area_m2,
        UnitSystem::UsCustomary => bed.area_m2 / SQUARE_METRES_PER_SQUARE_FOOT,
    };
    let soil = bed.soil.unwrap_or_default();
    let number =
        |value: Option<f64>| value.map_or_else(String::new, |value| locale.significant(value, 6));
    vec![
        ("bed-name", bed.name.clone()),
        ("bed-area", locale.significant(area, 6)),
        (
            "bed-crop",
            bed.crop
                .as_deref()
                .map(super::crop_shown)
                .unwrap_or_default(),
        ),
        ("bed-feeding", form::option_of(bed.feeding)),
        ("soil-ph", number(soil.ph)),
        ("soil-organic", number(soil.organic_matter_pct)),
        ("soil-phosphorus", number(soil.phosphorus_mg_kg)),
        ("soil-potassium", number(soil.potassium_mg_kg)),
        ("soil-conductivity", number(soil.conductivity_ds_m)),
    ]
}

/// What changes from one description to the next, as a merge patch.
fn patch(old: &BedDescribed, new: &BedDescribed) -> Map<String, Value> {
    let fields = |bed: &BedDescribed| match serde_json::to_value(bed) {
        Ok(Value::Object(fields)) => fields,
        _ => Map::new(),
    };
    difference(&fields(old), &fields(new))
}

fn difference(old: &Map<String, Value>, new: &Map<String, Value>) -> Map<String, Value> {
    let gone = old
        .keys()
        .filter(|name| !new.contains_key(*name))
        .map(|name| (name.clone(), Value::Null));
    let changed = new.iter().filter_map(|(name, value)| {
        let change = match (old.get(name), value) {
            (Some(before), _) if before == value => return None,
            (Some(Value::Object(before)), Value::Object(now)) => {
                Value::Object(difference(before, now))
            }
            _ => value.clone(),
        };
        Some((name.clone(), change))
    });
    gone.chain(changed).collect()
}

fn described(hub: Hub, itself: Option<EventId>) -> Result<BedDescribed, String> {
    let name = device::value("bed-name").trim().to_owned();
    if name.is_empty() {
        return Err(words::bed_needs_name(language::locale()).to_owned());
    }
    let taken = super::named(hub)
        .iter()
        .any(|(id, known)| Some(*id) != itself && known.to_lowercase() == name.to_lowercase());
    if taken {
        return Err(words::bed_name_taken(language::locale()).to_owned());
    }
    let crop = device::value("bed-crop").trim().to_owned();
    let soil = SoilTest {
        ph: form::number("soil-ph")?,
        organic_matter_pct: form::number("soil-organic")?,
        phosphorus_mg_kg: form::number("soil-phosphorus")?,
        potassium_mg_kg: form::number("soil-potassium")?,
        conductivity_ds_m: form::number("soil-conductivity")?,
    };
    Ok(BedDescribed {
        name,
        area_m2: area_m2(
            &device::value("bed-area"),
            hub.page.with(|page| page.locale()),
        )?,
        crop: (!crop.is_empty()).then(|| super::crop_kept(&crop)),
        feeding: form::chosen::<Feeding>("bed-feeding"),
        new_ground: !device::ticked("bed-new-ground").is_empty(),
        soil: (soil != SoilTest::default()).then_some(soil),
    })
}

/// An area as it is typed: a bare number in the units of the page, or with its own.
fn area_m2(typed: &str, locale: Locale) -> Result<f64, String> {
    let bare: Option<f64> = typed.trim().replace(',', ".").parse().ok();
    let area_m2 = match bare {
        Some(number) => match locale.units {
            UnitSystem::Metric => number,
            UnitSystem::UsCustomary => number * SQUARE_METRES_PER_SQUARE_FOOT,
        },
        None => heapwright_wire::area_m2(typed, "area")
            .map_err(|_| words::no_area(language::locale()).to_owned())?,
    };
    if area_m2 > 0.0 && area_m2.is_finite() {
        Ok(area_m2)
    } else {
        Err(words::no_area(language::locale()).to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_correction_names_what_changes_and_nothing_else() {
        let old = BedDescribed {
            name: "North bed".to_owned(),
            area_m2: 6.0,
            crop: Some("beans".to_owned()),
            feeding: None,
            new_ground: true,
            soil: Some(SoilTest {
                ph: Some(6.5),
                potassium_mg_kg: Some(120.0),
                ..SoilTest::default()
            }),
        };
        let new = BedDescribed {
            area_m2: 8.0,
            crop: None,
            feeding: Some(Feeding::Heavy),
            new_ground: false,
            soil: Some(SoilTest {
                ph: Some(7.0),
                ..SoilTest::default()
            }),
            ..old.clone()
        };
        assert_eq!(patch(&old, &old), Map::new());
        assert_eq!(
            Value::Object(patch(&old, &new)),
            serde_json::json!({
                "area_m2": 8.0,
                "crop": null,
                "feeding": "heavy",
                "new_ground": null,
                "soil": { "ph": 7.0, "potassium_mg_kg": null }
            })
        );
    }

    #[test]
    fn an_area_is_read_bare_or_with_its_units() {
        let read = |typed| area_m2(typed, Locale::default());
        assert_eq!(read("12"), Ok(12.0));
        assert_eq!(read("1,5"), Ok(1.5));
        assert!((read("3 m x 1.2 m").unwrap() - 3.6).abs() < 1e-12);
        assert!(
            (area_m2("100", Locale::english(UnitSystem::UsCustomary)).unwrap() - 9.290_304).abs()
                < 1e-9
        );
        for wrong in ["", "much", "0", "-3", "inf", "NaN"] {
            assert_eq!(
                read(wrong),
                Err(words::no_area(language::locale()).to_owned()),
                "{wrong}"
            );
        }
    }
}
