//! What to beware of with what is in the mixture.

use heapwright_terms::Caution;
use heapwright_texts::messages::balance_explained as texts;
use heapwright_wording as wording;
use leptos::prelude::*;

use crate::language;
use crate::shell::hub;

/// The section; not there when there is nothing to say.
#[component]
pub fn Cautions() -> impl IntoView {
    let hub = hub();
    let materials = Memo::new(move |_| {
        hub.explained.with(|shown| {
            let mut ids: Vec<String> = Vec::new();
            for found in shown.looked_at.iter().flat_map(|mix| &mix.parts) {
                if let Some(material) = &found.material
                    && !ids.iter().any(|id| id == material.id.as_str())
                {
                    ids.push(material.id.as_str().to_owned());
                }
            }
            ids
        })
    });
    let all = move || {
        let catalogue = language::catalogue();
        materials
            .get()
            .iter()
            .filter_map(|id| catalogue.material(id))
            .filter_map(|material| {
                let cautions = catalogue.cautions_for(material);
                (!cautions.is_empty()).then(|| {
                    let lines = cautions
                        .into_iter()
                        .map(|caution| view! { <li><strong>{caution.reason.clone()}</strong>" "{caution.advice.clone()}</li> })
                        .collect_view();
                    let is_kept_out = material.cautions.contains(&Caution::Avoid);
                    view! {
                        <details class="caution" open=is_kept_out>
                            <summary>{material.name.clone()}</summary>
                            <ul>{lines}</ul>
                        </details>
                    }
                })
            })
            .collect_view()
    };
    view! {
        <section class="card cautions" aria-labelledby="cautions-title">
            <h2 id="cautions-title">{wording::page::cautions(language::locale())}</h2>
            <p>{texts::always_take_care(language::locale())}</p>
            {all}
        </section>
    }
}
