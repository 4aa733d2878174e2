//! Files of the languages other than English: the texts, the words of the tables, and what the page shows before it has
//! started. A page fetches the one of its language only; `apps/web/static/boot.js` names them.

use std::collections::BTreeMap;

use heapwright_texts::messages::{beds_on_the_page, first_paint, page, shell};
use heapwright_texts::{Direction, Locale, Translation};
use serde_json::json;

use crate::Outcome;
use crate::naming::Files;

/// Begin of the names of these files.
pub const PREFIX: &str = "texts-";

/// Tag, texts and words of the tables of each.
const LANGUAGES: [(&str, &str, &str); 1] =
    [("de", Translation::GERMAN, heapwright_catalogue::GERMAN)];

/// The files by name, as modules.
pub fn files() -> Outcome<Files> {
    LANGUAGES
        .iter()
        .map(|(tag, pack, words)| {
            let translation = Translation::read(tag, pack, words)
                .map_err(|error| format!("the language {tag}: {error}"))?;
            let translation: &'static Translation = Box::leak(Box::new(translation));
            let locale = Locale::default().in_language(Some(translation));
            let direction = match locale.direction() {
                Direction::LeftToRight => "ltr",
                Direction::RightToLeft => "rtl",
            };
            let english = first_painted(Locale::default());
            let paint: BTreeMap<_, _> = english.into_iter().zip(first_painted(locale)).collect();
            let texts = json!({
                "tag": tag,
                "direction": direction,
                "pack": Translation::without_commands(pack),
                "words": words,
                "paint": paint,
            });
            let module = format!("export default {texts};\n");
            Ok((format!("{PREFIX}{tag}.js"), module.into_bytes()))
        })
        .collect()
}

/// Texts of `index.html` and `boot.js`.
fn first_painted(locale: Locale) -> [&'static str; 13] {
    [
        shell::places(locale),
        page::today(locale),
        shell::balance(locale),
        page::heaps(locale),
        beds_on_the_page::stores(locale),
        beds_on_the_page::beds(locale),
        page::logbook(locale),
        page::settings(locale),
        page::balance(locale),
        first_paint::to_the_content(locale),
        page::in_hand(locale),
        first_paint::starting(locale),
        first_paint::could_not_start(locale),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workspace::root;
    use std::fs;

    #[test]
    fn what_is_painted_first_is_what_the_texts_say() {
        let folder = root().join("apps/web/static");
        let written = ["index.html", "boot.js"]
            .map(|name| fs::read_to_string(folder.join(name)).unwrap())
            .concat();
        for text in first_painted(Locale::default()) {
            assert!(written.contains(text), "{text}");
        }
    }

    #[test]
    fn each_language_is_a_module_that_the_page_knows() {
        let boot = fs::read_to_string(root().join("apps/web/static/boot.js")).unwrap();
        for (name, module) in files().unwrap() {
            assert!(boot.contains(&format!("import(\"./{name}\")")), "{name}");
            let module = String::from_utf8(module).unwrap();
            let json = module.trim_start_matches("export default ").trim_end();
            let texts: serde_json::Value =
                serde_json::from_str(json.trim_end_matches(';')).unwrap();
            assert!(texts["paint"].as_object().unwrap().len() == 13);
        }
    }
}
