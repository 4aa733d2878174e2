//! An amount in a form that logs something: what is typed stays here until the form is closed.

use heapwright_quantity::{Amount, UnitSystem};
use leptos::prelude::*;

use super::amount::AmountRow;
use crate::asking;
use crate::language;
use crate::shell::Hub;
use crate::state::stepped;

/// The amount of a form.
#[derive(Clone, Copy)]
pub struct AmountTyped {
    hub: Hub,
    typed: RwSignal<String>,
    unit: RwSignal<String>,
}

impl AmountTyped {
    /// With a number and a measure to begin with.
    pub fn new(hub: Hub, typed: &str, unit: &str) -> Self {
        Self {
            hub,
            typed: RwSignal::new(typed.to_owned()),
            unit: RwSignal::new(unit.to_owned()),
        }
    }

    /// An empty amount in litres or gallons.
    pub fn empty(hub: Hub) -> Self {
        let unit = match hub.page.with(|page| page.locale()).units {
            UnitSystem::Metric => "L",
            UnitSystem::UsCustomary => "gal",
        };
        Self::new(hub, "", unit)
    }

    /// True when nothing is typed.
    pub fn is_empty(self) -> bool {
        self.typed.with_untracked(|typed| typed.trim().is_empty())
    }

    /// What is typed, understood; the error is a sentence.
    pub fn said(self) -> Result<Amount, String> {
        asking::typed_amount(
            &self.typed.get_untracked(),
            &self.unit.get_untracked(),
            &asking::vocabulary(language::catalogue()),
        )
    }

    /// The row.
    ///
    /// - `id`: of its number field
    /// - `name`: what it is an amount of, for those who hear it
    pub fn row(self, id: &str, name: &str) -> AnyView {
        let Self { hub, typed, unit } = self;
        view! {
            <AmountRow
                id=id.to_owned()
                name=name.to_owned()
                typed=typed
                unit=unit
                plain=true
                us_units=Signal::derive(move || hub.page.with(|page| page.us_units))
                fault=Signal::stored(None::<String>)
                on_type=Callback::new(move |text| typed.set(text))
                on_step=Some(Callback::new(move |up| typed.update(|text| *text = stepped(text, up))))
                on_unit=Callback::new(move |text| unit.set(text))
            />
        }
        .into_any()
    }
}
