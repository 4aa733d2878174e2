//! Views that change, and buttons, each compiled once.
//!
//! The framework compiles its machinery anew for each closure that it is handed; behind a pointer all
//! of them are of one kind, and compiled once.

use std::pin::Pin;

use leptos::prelude::*;
use leptos::task::spawn_local;

/// A view that is made anew when what it reads changes.
pub fn live(view: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    one_kind(Box::new(view))
}

fn one_kind(view: Box<dyn Fn() -> AnyView + Send>) -> AnyView {
    (move || view()).into_any()
}

/// A view that is there only while there is something to show.
pub fn live_if(view: impl Fn() -> Option<AnyView> + Send + 'static) -> AnyView {
    live(move || view().unwrap_or_else(nothing))
}

/// A text that changes.
pub fn live_text(text: impl Fn() -> String + Send + 'static) -> AnyView {
    one_kind_of_text(Box::new(text))
}

fn one_kind_of_text(text: Box<dyn Fn() -> String + Send>) -> AnyView {
    (move || text()).into_any()
}

/// No view.
pub fn nothing() -> AnyView {
    ().into_any()
}

/// A button with a word on it.
pub fn button(class: &'static str, word: &str, press: impl Fn() + 'static) -> AnyView {
    named_button(class, word, None, press)
}

/// A button with a word on it and a longer name for those who do not see what it belongs to.
pub fn named_button(
    class: &'static str,
    word: &str,
    name: Option<String>,
    press: impl Fn() + 'static,
) -> AnyView {
    one_kind_of_button(class, word.to_owned(), name, Box::new(press))
}

fn one_kind_of_button(
    class: &'static str,
    word: String,
    name: Option<String>,
    press: Box<dyn Fn()>,
) -> AnyView {
    view! { <button type="button" class=class aria-label=name on:click=move |_| press()>{word}</button> }.into_any()
}

/// A button that opens and closes something.
pub fn opener(
    class: &'static str,
    word: &'static str,
    name: Option<String>,
    is_open: impl Fn() -> bool + Send + 'static,
    press: impl Fn() + 'static,
) -> AnyView {
    one_kind_of_opener(class, word, name, Box::new(is_open), Box::new(press))
}

fn one_kind_of_opener(
    class: &'static str,
    word: &'static str,
    name: Option<String>,
    is_open: Box<dyn Fn() -> bool + Send>,
    press: Box<dyn Fn()>,
) -> AnyView {
    view! {
        <button
            type="button"
            class=class
            aria-label=name
            aria-expanded=move || if is_open() { "true" } else { "false" }
            on:click=move |_| press()
        >
            {word}
        </button>
    }
    .into_any()
}

/// Lets some work go on by itself.
pub fn spawn(work: impl Future<Output = ()> + 'static) {
    one_kind_of_work(Box::pin(work));
}

fn one_kind_of_work(work: Pin<Box<dyn Future<Output = ()>>>) {
    spawn_local(work);
}
