//! What do the keeper's own vessels hold, and how heavy is what goes into them? Weighed step by step, into
//! the journal.

use heapwright_journal::content::{MaterialMeasured, MeasureDefined, WeighedMeasure};
use heapwright_journal::{AmountSaid, Content};
use heapwright_quantity::{MassUnit, UnitSystem, VolumeUnit};
use heapwright_texts::Locale;
use heapwright_texts::messages::forms::NameAndSaid;
use heapwright_wording::settings as words;
use leptos::prelude::*;

use super::steps;
use crate::asking::{self, FaultPlace};
use crate::keeping::device;
use crate::language;
use crate::parts::finder::Finder;
use crate::parts::focus;
use crate::parts::form::{self, Sender, number_in};
use crate::parts::live::{button, live, live_if, live_text};
use crate::places::balance::short_name;
use crate::shell::Hub;
use crate::state::{Action, MEASURES};

/// Water weighs this much [kg/m3]. Between 0 and 25 °C it is 997 to 1,000: far nearer than a filling is to
/// the brim. Source: CODATA, as in the CRC Handbook's table of the density of water.
const WATER_KG_M3: f64 = 1000.0;

/// How far the weighing is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Step {
    Closed,
    Empty,
    Water,
    Material,
}

/// What was entered in the steps; it stays while one goes forth and back with one vessel.
#[derive(Clone, Copy)]
struct Weighing {
    hub: Hub,
    step: RwSignal<Step>,
    vessel: RwSignal<String>,
    empty: RwSignal<String>,
    water: RwSignal<String>,
    holds: RwSignal<String>,
    full: RwSignal<String>,
    material: RwSignal<Option<String>>,
    fault: RwSignal<Option<String>>,
}

/// The section.
pub fn section(hub: Hub) -> AnyView {
    let typed = || RwSignal::new(String::new());
    let weighing = Weighing {
        hub,
        step: RwSignal::new(Step::Closed),
        vessel: RwSignal::new("bucket".to_owned()),
        empty: typed(),
        water: typed(),
        holds: typed(),
        full: typed(),
        material: RwSignal::new(None),
        fault: RwSignal::new(None),
    };
    // What was known of the vessel counts before its weights: whoever weighs after all means the weights.
    Effect::new(move |before: Option<String>| {
        let water = weighing.water.get();
        if before.is_some_and(|before| before != water) {
            weighing.holds.set(String::new());
        }
        water
    });
    let steps = move || match weighing.step.get() {
        Step::Closed => button("main-act", words::weigh(language::locale()), move || {
            weighing.go(Step::Empty)
        }),
        Step::Empty => weighing.empty_step(),
        Step::Water => weighing.water_step(),
        Step::Material => weighing.material_step(),
    };
    view! {
        <section class="card" aria-labelledby="vessels-title">
            <h2 id="vessels-title" tabindex="-1">{words::your_vessels(language::locale())}</h2>
            <p class="hint">{words::vessels_why(language::locale())}</p>
            {live(move || vessels(hub))}
            {only_here(hub)}
            {live(steps)}
        </section>
    }
    .into_any()
}

/// What each vessel holds.
fn vessels(hub: Hub) -> AnyView {
    let locale = hub.page.with(|page| page.locale());
    let now = device::now();
    let rows = MEASURES
        .into_iter()
        .filter_map(|id| language::catalogue().measure(id))
        .map(|measure| {
            let told = hub.keeper.with(|journal| {
                let garden = journal.state.garden();
                let volume_l = garden.volume_l(&measure.id, now)?;
                let since = garden.measures.get(&measure.id)?.last()?.0;
                Some(words::vessel_found(volume_l / 1000.0, since, locale))
            });
            let told =
                told.unwrap_or_else(|| words::vessel_usual(measure.volume_m3.typical, locale));
            view! {
                <li class="shelf"><p><span class="line-name">{measure.name.clone()}</span>" "{told}</p></li>
            }
        })
        .collect_view();
    view! { <ul class="lines">{rows}</ul> }.into_any()
}

/// What was typed before journals kept it, with the way into the journal.
pub fn only_here(hub: Hub) -> AnyView {
    let sender = Sender::new(hub);
    let put = move || {
        let all = hub.page.with(|page| {
            let locale = page.locale();
            page.measures
                .iter()
                .map(|(measure, typed)| Ok(defined(measure.clone(), litres_of(typed, locale)?)))
                .collect::<Result<Vec<Content>, String>>()
        });
        let locale = hub.page.with(|page| page.locale());
        let work = async move {
            for content in all? {
                hub.keeper.log(content, None, locale).await?;
            }
            Ok(())
        };
        sender.run(work, move || hub.act.run(Action::MeasuresKept));
    };
    let rows = move || {
        // The demo garden is in memory: what went into it would be gone with it.
        let is_demo = hub.keeper.with(|journal| journal.is_demo);
        hub.page.with(|page| {
            (!is_demo && !page.measures.is_empty()).then(|| {
                let rows = page
                    .measures
                    .iter()
                    .map(|(id, typed)| {
                        let name = language::catalogue()
                            .measure(id)
                            .map_or_else(|| id.clone(), |measure| measure.name.clone());
                        let place = FaultPlace::Measure(id.clone());
                        let fault = hub
                            .shown
                            .with(|shown| shown.fault(&place).map(str::to_owned));
                        let row = NameAndSaid {
                            name: &name,
                            said: typed,
                        };
                        view! {
                            <li>{row.said(language::locale())}" "<span class="fault">{fault}</span></li>
                        }
                    })
                    .collect_view();
                view! {
                    <div class="note">
                        <p>{words::only_here(language::locale())}</p>
                        <ul class="told-lines">{rows}</ul>
                        {button("", words::into_journal(language::locale()), put)}
                        {sender.fault()}
                    </div>
                }
                .into_any()
            })
        })
    };
    live_if(rows)
}

/// A volume as it was typed, in litres.
fn litres_of(typed: &str, locale: Locale) -> Result<f64, String> {
    let unit = match locale.units {
        UnitSystem::Metric => "L",
        UnitSystem::UsCustomary => "gal",
    };
    asking::typed_amount(typed, unit, &asking::vocabulary(language::catalogue()))?
        .cubic_metres()
        .map(|volume_m3| volume_m3 * 1000.0)
        .ok_or_else(|| words::no_volume(language::locale()).to_owned())
}

fn defined(measure: String, volume_l: f64) -> Content {
    // To the millilitre: a scale knows no more, and a journal is read by people.
    let volume_l = (volume_l * 1000.0).round() / 1000.0;
    MeasureDefined { measure, volume_l }.into()
}

impl Weighing {
    fn locale(self) -> Locale {
        self.hub.page.with(|page| page.locale())
    }

    /// Forgets what was entered: it was of one vessel and one filling.
    fn clear(self) {
        for typed in [self.empty, self.water, self.holds, self.full] {
            typed.set(String::new());
        }
        self.material.set(None);
        self.fault.set(None);
    }

    fn choose(self, vessel: String) {
        self.clear();
        self.vessel.set(vessel);
    }

    fn go(self, step: Step) {
        self.fault.set(None);
        if step == Step::Closed {
            self.clear();
        }
        self.step.set(step);
        let title = if step == Step::Closed {
            "vessels-title"
        } else {
            "weigh-step"
        };
        // The step is drawn after this.
        request_animation_frame(move || focus(title));
    }

    /// A weight that was typed [kg].
    fn weight_kg(self, typed: RwSignal<String>) -> Result<f64, String> {
        let unit = match self.locale().units {
            UnitSystem::Metric => MassUnit::Kilogram,
            UnitSystem::UsCustomary => MassUnit::Pound,
        };
        typed
            .with(|typed| number_in(typed))?
            .filter(|number| *number >= 0.0)
            .map(|number| number * unit.kilograms())
            .ok_or_else(|| words::no_weight(language::locale()).to_owned())
    }

    /// What the vessel holds [m3], by what it holds of water or as it was entered.
    fn volume_m3(self) -> Result<f64, String> {
        let unit = match self.locale().units {
            UnitSystem::Metric => VolumeUnit::Litre,
            UnitSystem::UsCustomary => VolumeUnit::UsGallon,
        };
        if let Some(number) = self.holds.with(|typed| number_in(typed))? {
            return (number > 0.0)
                .then_some(number * unit.cubic_metres())
                .ok_or_else(|| words::no_volume(language::locale()).to_owned());
        }
        let water_kg = self.weight_kg(self.water)? - self.weight_kg(self.empty)?;
        (water_kg > 0.0)
            .then_some(water_kg / WATER_KG_M3)
            .ok_or_else(|| words::not_heavier(language::locale()).to_owned())
    }

    /// The vessel as the journal has it now [m3].
    fn kept_m3(self) -> Option<f64> {
        let vessel = self.vessel.get();
        self.hub.keeper.with(|journal| {
            let litres = journal.state.garden().volume_l(&vessel, device::now())?;
            Some(litres / 1000.0)
        })
    }

    /// How heavy the material is that is in the vessel [kg/m3].
    fn density_kg_m3(self) -> Result<f64, String> {
        let mass_kg = self.weight_kg(self.full)? - self.weight_kg(self.empty)?;
        match self.kept_m3() {
            Some(volume_m3) if mass_kg > 0.0 => Ok(mass_kg / volume_m3),
            _ => Err(words::not_heavier(language::locale()).to_owned()),
        }
    }

    fn frame(
        self,
        title: &'static str,
        how: &'static str,
        fields: AnyView,
        acts: AnyView,
    ) -> AnyView {
        view! {
            <div class="log-form" role="group" aria-labelledby="weigh-step">
                <h3 id="weigh-step" tabindex="-1">{title}</h3>
                <p>{how}</p>
                {fields}
                <p class="fault" role="alert">{live_text(move || self.fault.get().unwrap_or_default())}</p>
                <div class="acts">
                    {acts}
                    {button("quiet", words::not_now(language::locale()), move || self.go(Step::Closed))}
                </div>
            </div>
        }
        .into_any()
    }

    fn empty_step(self) -> AnyView {
        let options = MEASURES
            .into_iter()
            .filter_map(|id| language::catalogue().measure(id))
            .map(|measure| {
                let id = measure.id.clone();
                let is_chosen = self.vessel.with_untracked(|vessel| *vessel == id);
                view! { <option value=id prop:selected=is_chosen>{measure.name.clone()}</option> }
            })
            .collect_view();
        let fields = view! {
            <div class="field">
                <label for="weigh-vessel">{words::which_vessel(language::locale())}</label>
                <select id="weigh-vessel" on:change=move |event| self.choose(event_target_value(&event))>
                    {options}
                </select>
            </div>
            {steps::row("weigh-empty", words::empty_label(self.locale()), "", 0.1, self.empty)}
        };
        let next = move || match self.weight_kg(self.empty) {
            Ok(_) => self.go(Step::Water),
            Err(why) => self.fault.set(Some(why)),
        };
        let acts = button("main-act", words::next(language::locale()), next);
        self.frame(
            words::step_empty(language::locale()),
            words::step_empty_how(language::locale()),
            fields.into_any(),
            acts,
        )
    }

    fn water_step(self) -> AnyView {
        let locale = self.locale();
        let found = move || {
            self.volume_m3().map_or_else(
                |_| String::new(),
                |volume_m3| words::holds_line(volume_m3, self.locale()),
            )
        };
        let doubt = move || {
            let usual_m3 = self.vessel.with(|vessel| {
                let measure = language::catalogue().measure(vessel)?;
                Some(measure.volume_m3.typical)
            });
            let found_m3 = self.volume_m3().ok();
            found_m3
                .zip(usual_m3)
                .and_then(|(found, usual)| words::unusual_vessel(found, usual, self.locale()))
                .unwrap_or_default()
        };
        let fields = view! {
            {steps::row("weigh-water", words::water_label(locale), "", 0.1, self.water)}
            <details class="caution">
                <summary>{words::known_volume(language::locale())}</summary>
                {steps::row("weigh-holds", words::holds_label(locale), words::step_water_heavy(language::locale()), 0.5, self.holds)}
            </details>
            <p class="verdict" role="status">{live_text(found)}</p>
            <p class="note" role="status">{live_text(doubt)}</p>
        };
        let sender = Sender::new(self.hub);
        let save = move || {
            let entry = self.volume_m3().map(|volume_m3| {
                (
                    defined(self.vessel.get_untracked(), volume_m3 * 1000.0),
                    None,
                )
            });
            sender.send(entry, move || self.go(Step::Material));
        };
        let acts = view! {
            {button("main-act", words::save_volume(language::locale()), save)}
            {button("", words::back(language::locale()), move || self.go(Step::Empty))}
            {sender.fault()}
        };
        self.frame(
            words::step_water(language::locale()),
            words::step_water_how(language::locale()),
            fields.into_any(),
            acts.into_any(),
        )
    }

    fn material_step(self) -> AnyView {
        let found = move || {
            self.density_kg_m3().map_or_else(
                |_| String::new(),
                |density| words::density_line(density, self.locale()),
            )
        };
        let chosen = move || {
            self.material
                .get()
                .map(|id| view! { <p class="line-name">{short_name(&id)}</p> }.into_any())
        };
        let fields = view! {
            <Finder
                id="weigh-material"
                label=words::which_material(language::locale())
                on_pick=Callback::new(move |id| self.material.set(Some(id)))
            />
            <div aria-live="polite">{live_if(chosen)}</div>
            {steps::row("weigh-full", words::full_label(self.locale()), "", 0.1, self.full)}
            <p class="verdict" role="status">{live_text(found)}</p>
        };
        let sender = Sender::new(self.hub);
        let save = move || sender.send(self.measured(), move || self.go(Step::Closed));
        let acts = view! {
            {button("main-act", words::save_density(language::locale()), save)}
            {button("", words::back(language::locale()), move || self.go(Step::Water))}
            {sender.fault()}
        };
        self.frame(
            words::step_material(language::locale()),
            words::step_material_how(language::locale()),
            fields.into_any(),
            acts.into_any(),
        )
    }

    fn measured(self) -> form::Entry {
        let material = self
            .material
            .get_untracked()
            .ok_or_else(|| words::no_material(language::locale()).to_owned())?;
        self.density_kg_m3()?;
        let grams = |mass_kg: f64| (mass_kg * 1000.0).round() / 1000.0;
        let content = MaterialMeasured {
            material,
            laboratory: None,
            dried_sample: None,
            weighed_measure: Some(WeighedMeasure {
                measure: AmountSaid {
                    count: 1.0,
                    unit: self.vessel.get_untracked(),
                },
                full_kg: grams(self.weight_kg(self.full)?),
                empty_kg: grams(self.weight_kg(self.empty)?),
            }),
        };
        Ok((content.into(), None))
    }
}
