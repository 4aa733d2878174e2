//! Tables, and those that are folded away.

use heapwright_wire::TableShown;
use leptos::prelude::*;

/// A table that is folded away.
pub fn fold(name: &'static str, table: TableShown) -> AnyView {
    view! {
        <details class="more">
            <summary>{name}</summary>
            {table_view(name, table)}
        </details>
    }
    .into_any()
}

/// A table that scrolls within its own room.
pub fn table_view(name: &'static str, table: TableShown) -> AnyView {
    let heads = table
        .heads
        .into_iter()
        .map(|head| view! { <th scope="col">{head}</th> })
        .collect_view();
    let rows = table
        .rows
        .into_iter()
        .map(|row| {
            let mut cells = row.into_iter();
            let head = cells.next();
            view! {
                <tr>
                    <th scope="row">{head}</th>
                    {cells.map(|cell| view! { <td>{cell}</td> }).collect_view()}
                </tr>
            }
        })
        .collect_view();
    view! {
        <div class="scroll" tabindex="0" role="region" aria-label=name>
            <table>
                <thead>
                    <tr>{heads}</tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
    .into_any()
}
