//! A test of compost is written down.

use heapwright_journal::EventId;
use heapwright_journal::content::{
    BagTest, GerminationTest, Laboratory, SelfHeatingTest, Smell, Tested,
};
use heapwright_quantity::{UnitSystem, celsius_from_fahrenheit};
use heapwright_texts::Locale;
use heapwright_texts::messages::heap_forms as texts;
use heapwright_wording::told as words;
use leptos::prelude::*;

use crate::keeping::device;
use crate::language;
use crate::parts::choices::choices;
use crate::parts::focus;
use crate::parts::form::{self, Entry};
use crate::parts::live::{self, live, live_if};
use crate::places::heap::{Asked, asked_for};
use crate::shell::Hub;

/// Which test.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Bag,
    Flask,
    Seeds,
    Laboratory,
}

const KINDS: [Kind; 4] = [Kind::Bag, Kind::Flask, Kind::Seeds, Kind::Laboratory];

/// A figure of a laboratory: id of its field, label, where it is kept.
type Figure = (
    &'static str,
    fn(Locale) -> &'static str,
    fn(&mut Laboratory) -> &mut Option<f64>,
);

const FIGURES: [Figure; 15] = [
    ("lab-moisture", texts::lab_moisture, |of| {
        &mut of.moisture_pct
    }),
    ("lab-ph", texts::lab_ph, |of| &mut of.ph),
    ("lab-carbon", texts::lab_carbon, |of| &mut of.carbon_pct_dry),
    ("lab-nitrogen", texts::lab_nitrogen, |of| {
        &mut of.nitrogen_pct_dry
    }),
    ("lab-cn", texts::lab_ratio, |of| &mut of.cn_ratio_measured),
    ("lab-ash", texts::lab_ash, |of| &mut of.ash_pct_dry),
    ("lab-p", texts::lab_phosphorus, |of| {
        &mut of.phosphorus_pct_dry
    }),
    ("lab-k", texts::lab_potassium, |of| {
        &mut of.potassium_pct_dry
    }),
    ("lab-ca", texts::lab_calcium, |of| &mut of.calcium_pct_dry),
    ("lab-mg", texts::lab_magnesium, |of| {
        &mut of.magnesium_pct_dry
    }),
    ("lab-na", texts::lab_sodium, |of| &mut of.sodium_pct_dry),
    ("lab-ec", texts::lab_conductivity, |of| {
        &mut of.conductivity_ds_m
    }),
    ("lab-ammonium", texts::lab_ammonium, |of| {
        &mut of.ammonium_nitrogen_mg_kg_dry
    }),
    ("lab-nitrate", texts::lab_nitrate, |of| {
        &mut of.nitrate_nitrogen_mg_kg_dry
    }),
    ("lab-co2", texts::lab_carbon_dioxide, |of| {
        &mut of.carbon_dioxide_mg_g_d
    }),
];

/// The button, and the form that it opens.
pub fn section(hub: Hub, id: EventId) -> AnyView {
    let is_asked = asked_for(id, &[Asked::Test]).is_some();
    let open = RwSignal::new(is_asked);
    if is_asked {
        request_animation_frame(|| focus("ripeness-title"));
    }
    let opener = live::opener(
        "log-act",
        words::write_test(language::locale()),
        None,
        move || open.get(),
        move || open.update(|open| *open = !*open),
    );
    let done = move || {
        open.set(false);
        focus("ripeness-title");
    };
    view! {
        {opener}
        {live_if(move || open.get().then(|| form(hub, id, done)))}
    }
    .into_any()
}

fn form(hub: Hub, id: EventId, done: impl Fn() + Copy + 'static) -> AnyView {
    let locale = hub.page.with(|page| page.locale());
    let which = RwSignal::new(0);
    let kind = move || KINDS.get(which.get()).copied().unwrap_or(Kind::Bag);
    let entry = move || -> Entry {
        let kind = KINDS.get(which.get_untracked()).copied();
        let tested = tested(id, kind.unwrap_or(Kind::Bag), locale)?;
        Ok((tested.into(), form::moment("tested-when")?))
    };
    view! {
        <div class="log-form">
            {choices(
                "test-kind",
                words::which_test(language::locale()).to_owned(),
                words::tests(language::locale()).map(str::to_owned).to_vec(),
                move || which.get(),
                move |index| which.set(index),
            )}
            <div class="fields">{live(move || fields(kind(), locale))}</div>
            {form::when("tested-when")}
            {form::send(hub, words::log_test(language::locale()), entry, done)}
        </div>
    }
    .into_any()
}

fn fields(kind: Kind, locale: Locale) -> AnyView {
    let number = |id, label: &str, hint| form::text(id, label.to_owned(), hint, true);
    let unit = match locale.units {
        UnitSystem::Metric => "\u{b0}C",
        UnitSystem::UsCustomary => "\u{b0}F",
    };
    match kind {
        Kind::Bag => view! {
            {number("bag-days", texts::bag_days(locale), "")}
            {form::select("bag-swollen", texts::bag_was(locale), None, vec![texts::bag_flat(locale), texts::bag_swollen(locale)])}
            {form::select("bag-smell", texts::bag_smell(locale), Some(texts::nobody_smelt(locale)), form::words::<Smell>())}
        }
        .into_any(),
        Kind::Flask => view! {
            {number("flask-highest", &texts::FlaskHighest { unit }.said(locale), "")}
            {number("flask-room", &texts::FlaskRoom { unit }.said(locale), "")}
        }
        .into_any(),
        Kind::Seeds => view! {
            {number("seeds-sown", texts::seeds_sown(locale), "")}
            {number("seeds-up", texts::seeds_sprouted(locale), "")}
            {number("seeds-control-sown", texts::seeds_control_sown(locale), "")}
            {number("seeds-control-up", texts::seeds_sprouted(locale), "")}
            {number("seeds-root", texts::seeds_root(locale), words::may_be_left_out(language::locale()))}
            {number("seeds-control-root", texts::seeds_control_root(locale), words::may_be_left_out(language::locale()))}
        }
        .into_any(),
        Kind::Laboratory => FIGURES
            .into_iter()
            .map(|(id, label, _)| number(id, label(locale), ""))
            .collect_view()
            .into_any(),
    }
}

fn tested(heap: EventId, kind: Kind, locale: Locale) -> Result<Tested, String> {
    let mut tested = Tested {
        heap,
        laboratory: None,
        self_heating: None,
        germination: None,
        bag: None,
    };
    match kind {
        Kind::Bag => {
            tested.bag = Some(BagTest {
                days: needed("bag-days")?,
                swollen: device::value("bag-swollen") == "1",
                smell: form::chosen::<Smell>("bag-smell"),
            });
        }
        Kind::Flask => {
            let celsius = |id| -> Result<f64, String> {
                let degrees = needed(id)?;
                Ok(match locale.units {
                    UnitSystem::Metric => degrees,
                    UnitSystem::UsCustomary => celsius_from_fahrenheit(degrees),
                })
            };
            tested.self_heating = Some(SelfHeatingTest {
                highest_c: celsius("flask-highest")?,
                room_c: celsius("flask-room")?,
            });
        }
        Kind::Seeds => {
            tested.germination = Some(GerminationTest {
                sown: count("seeds-sown")?,
                sprouted: count("seeds-up")?,
                control_sown: count("seeds-control-sown")?,
                control_sprouted: count("seeds-control-up")?,
                root_mm: form::number("seeds-root")?,
                control_root_mm: form::number("seeds-control-root")?,
            });
        }
        Kind::Laboratory => {
            let mut laboratory = Laboratory::default();
            for (id, _, figure) in FIGURES {
                *figure(&mut laboratory) = form::number(id)?;
            }
            if laboratory == Laboratory::default() {
                return Err(words::test_empty(language::locale()).to_owned());
            }
            tested.laboratory = Some(Box::new(laboratory));
        }
    }
    Ok(tested)
}

fn needed(id: &str) -> Result<f64, String> {
    form::number(id)?.ok_or_else(|| words::test_incomplete(language::locale()).to_owned())
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // checked to be whole and small
fn count(id: &str) -> Result<u32, String> {
    let number = needed(id)?;
    if number.fract() != 0.0 || !(0.0..=1e6).contains(&number) {
        return Err(words::whole_seeds(language::locale()).to_owned());
    }
    Ok(number as u32)
}
