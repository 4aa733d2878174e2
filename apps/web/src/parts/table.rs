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

/// A table of more columns than a phone has room for stands there row by row, a cell a line.
const MOST_SIDE_BY_SIDE: usize = 3;

/// A table that scrolls within its own room; on a phone a wide one is stacked instead.
pub fn table_view(name: &'static str, table: TableShown) -> AnyView {
    let class = if table.heads.len() > MOST_SIDE_BY_SIDE {
        "scroll stacked"
    } else {
        "scroll"
    };
    let heads = table
        .heads
        .iter()
        .map(|head| view! { <th scope="col" role="columnheader">{head.clone()}</th> })
        .collect_view();
    let rows = table
        .rows
        .into_iter()
        .map(|row| {
            let mut cells = row.into_iter().zip(&table.heads);
            let head = cells.next().map(|(cell, _)| cell);
            let cells = cells
                .map(|(cell, head)| view! { <td role="cell" data-head=head.clone()>{cell}</td> })
                .collect_view();
            view! {
                <tr role="row">
                    <th scope="row" role="rowheader">{head}</th>
                    {cells}
                </tr>
            }
        })
        .collect_view();
    // The roles are those that the elements have anyway: stacked, some browsers would forget them.
    view! {
        <div class=class tabindex="0" role="region" aria-label=name>
            <table role="table">
                <thead role="rowgroup">
                    <tr role="row">{heads}</tr>
                </thead>
                <tbody role="rowgroup">{rows}</tbody>
            </table>
        </div>
    }
    .into_any()
}
