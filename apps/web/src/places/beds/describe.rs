//! The form that describes a bed.

use heapwright_catalogue::Spreading;
use heapwright_journal::content::{BedDescribed, Feeding, SoilTest};
use heapwright_quantity::UnitSystem;
use heapwright_wording::beds_on_the_page as words;
use leptos::prelude::*;

use super::SQUARE_METRES_PER_SQUARE_FOOT;
use crate::keeping::device;
use crate::parts::form::{self, Entry};
use crate::parts::live::button;
use crate::shell::Hub;

/// The form.
pub fn form(hub: Hub, done: impl Fn() + Copy + 'static) -> AnyView {
    let unit = match hub.page.with(|page| page.system()) {
        UnitSystem::Metric => "m²",
        UnitSystem::UsCustomary => "sq ft",
    };
    let crops = Spreading::built_in()
        .crops()
        .iter()
        .map(|crop| view! { <option value=crop.name.clone()></option> })
        .collect_view();
    view! {
        <div class="log-form">
            {form::text("bed-name", "Name".to_owned(), "Such as North bed.", false)}
            {form::text("bed-area", format!("Area, {unit}"), "Such as 12, or 3 m x 1.2 m.", false)}
            <div class="field">
                <label for="bed-crop">"What grows there (may be left out)"</label>
                <input id="bed-crop" type="text" autocomplete="off" list="bed-crops"/>
                <datalist id="bed-crops">{crops}</datalist>
            </div>
            {form::select("bed-feeding", "How much it feeds on the soil", Some("as the crop does"), form::words::<Feeding>())}
            <label class="tick">
                <input type="checkbox" name="bed-new-ground" value="0"/>
                <span>"New ground, not dug and fed before"</span>
            </label>
            <details class="more">
                <summary>"Soil test (may be left out)"</summary>
                <div class="fields">
                    {form::text("soil-ph", "pH".to_owned(), "", true)}
                    {form::text("soil-organic", "Organic matter, %".to_owned(), "", true)}
                    {form::text("soil-phosphorus", "Phosphorus (P), mg/kg".to_owned(), "", true)}
                    {form::text("soil-potassium", "Potassium (K), mg/kg".to_owned(), "", true)}
                    {form::text("soil-conductivity", "Conductivity, dS/m".to_owned(), "", true)}
                </div>
            </details>
            {form::when("bed-when")}
            <div class="acts">
                {form::send(hub, "Keep this bed", move || described(hub), done)}
                {button("quiet", "Not now", done)}
            </div>
        </div>
    }
    .into_any()
}

/// What the form says.
fn described(hub: Hub) -> Entry {
    let happened = form::moment("bed-when")?;
    let name = device::value("bed-name").trim().to_owned();
    if name.is_empty() {
        return Err(words::BED_NEEDS_NAME.to_owned());
    }
    let taken = super::named(hub)
        .iter()
        .any(|(_, known)| known.to_lowercase() == name.to_lowercase());
    if taken {
        return Err(words::BED_NAME_TAKEN.to_owned());
    }
    let crop = device::value("bed-crop").trim().to_owned();
    let soil = SoilTest {
        ph: form::number("soil-ph")?,
        organic_matter_pct: form::number("soil-organic")?,
        phosphorus_mg_kg: form::number("soil-phosphorus")?,
        potassium_mg_kg: form::number("soil-potassium")?,
        conductivity_ds_m: form::number("soil-conductivity")?,
    };
    let content = BedDescribed {
        name,
        area_m2: area_m2(
            &device::value("bed-area"),
            hub.page.with(|page| page.system()),
        )?,
        crop: (!crop.is_empty()).then_some(crop),
        feeding: form::chosen::<Feeding>("bed-feeding"),
        new_ground: !device::ticked("bed-new-ground").is_empty(),
        soil: (soil != SoilTest::default()).then_some(soil),
    };
    Ok((content.into(), happened))
}

/// An area as it is typed: a bare number in the units of the page, or with its own.
fn area_m2(typed: &str, system: UnitSystem) -> Result<f64, String> {
    let bare: Option<f64> = typed.trim().replace(',', ".").parse().ok();
    let area_m2 = match bare {
        Some(number) => match system {
            UnitSystem::Metric => number,
            UnitSystem::UsCustomary => number * SQUARE_METRES_PER_SQUARE_FOOT,
        },
        None => heapwright_wire::area_m2(typed, "area").map_err(|_| words::NO_AREA.to_owned())?,
    };
    if area_m2 > 0.0 && area_m2.is_finite() {
        Ok(area_m2)
    } else {
        Err(words::NO_AREA.to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_area_is_read_bare_or_with_its_units() {
        let read = |typed| area_m2(typed, UnitSystem::Metric);
        assert_eq!(read("12"), Ok(12.0));
        assert_eq!(read("1,5"), Ok(1.5));
        assert!((read("3 m x 1.2 m").unwrap() - 3.6).abs() < 1e-12);
        assert!((area_m2("100", UnitSystem::UsCustomary).unwrap() - 9.290_304).abs() < 1e-9);
        for wrong in ["", "much", "0", "-3", "inf", "NaN"] {
            assert_eq!(read(wrong), Err(words::NO_AREA.to_owned()), "{wrong}");
        }
    }
}
