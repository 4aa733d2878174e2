//! Compost in pots, on lawns, around trees, and the caution about tea.

use heapwright_wording::{self as wording, beds_on_the_page as words};
use leptos::prelude::*;

use super::plan::citations;
use crate::language;
use crate::parts::fold::Fold;

/// The section.
pub fn section() -> AnyView {
    view! {
        <section class="card uses">
            <Fold class="more" summary=words::other_uses(language::locale()).into_any()>
                <ul class="told-lines">{rows()}</ul>
                <p class="hint">{wording::uses_limits(language::locale())}</p>
            </Fold>
        </section>
    }
    .into_any()
}

fn rows() -> AnyView {
    language::spreading()
        .uses()
        .iter()
        .map(|use_of| {
            view! {
                <li>
                    <p>{wording::use_line(use_of, &use_of.name, None, language::locale())}</p>
                    <p class="hint">{citations(language::catalogue(), &use_of.source_keys)}</p>
                </li>
            }
        })
        .collect_view()
        .into_any()
}
