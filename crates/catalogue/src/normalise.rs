//! When do two spellings mean the same words? Case, accents, punctuation, plural, British or American.
//!
//! `tokens("Dried leaves, shredded")` and `tokens("dry leaf shredded")` are equal.
//! Shared by the search and by the build, which holds that no two materials share a name.

/// Words that carry no meaning in a name.
const SKIPPED: &[&str] = &[
    "a", "an", "and", "any", "few", "for", "from", "in", "lot", "lots", "my", "of", "or", "our",
    "some", "the", "up", "with",
];

/// Plurals that follow no rule.
const IRREGULAR: &[(&str, &str)] = &[
    ("calves", "calf"),
    ("geese", "goose"),
    ("halves", "half"),
    ("hooves", "hoof"),
    ("leaves", "leaf"),
    ("loaves", "loaf"),
    ("mice", "mouse"),
    ("news", "news"),
    ("turves", "turf"),
];

/// One word for several spellings and near-synonyms, after the plural is gone.
const SAME_WORD: &[(&str, &str)] = &[
    ("catalog", "catalogue"),
    ("chile", "chilli"),
    ("chili", "chilli"),
    ("color", "colour"),
    ("dried", "dry"),
    ("dung", "manure"),
    ("fece", "faece"),
    ("fertilizer", "fertiliser"),
    ("fiber", "fibre"),
    ("gray", "grey"),
    ("leave", "leaf"),
    ("maize", "corn"),
    ("mold", "mould"),
    ("molded", "moulded"),
    ("moldy", "mouldy"),
    ("muck", "manure"),
    ("peeling", "peel"),
    ("poo", "manure"),
    ("pooh", "manure"),
    ("poop", "manure"),
    ("sulfate", "sulphate"),
    ("sulfur", "sulphur"),
    ("woolen", "woollen"),
    ("yoghourt", "yoghurt"),
    ("yogurt", "yoghurt"),
];

/// The words of a phrase in their plain form, in order.
#[must_use]
pub fn tokens(text: &str) -> Vec<String> {
    let words = spelled(text).into_iter();
    words.map(|(plain, _)| plain).collect()
}

/// The words of a phrase in their plain form, each with the spelling it had but for case and accents.
#[must_use]
pub fn spelled(text: &str) -> Vec<(String, String)> {
    let mut words: Vec<(String, String)> = Vec::new();
    for word in folded(text).split(' ') {
        if word.is_empty() || SKIPPED.contains(&word) {
            continue;
        }
        let plain = plain(word);
        // "Maize (corn) cobs" says one thing twice.
        if words.last().is_none_or(|(last, _)| *last != plain) {
            words.push((plain, word.to_owned()));
        }
    }
    words
}

/// The words run together, so that "egg shells" and "eggshells" meet.
#[must_use]
pub fn joined(words: &[String]) -> String {
    words.concat()
}

/// The words in alphabetic order, so that "leaves, oak" and "oak leaves" meet.
#[must_use]
pub fn sorted(words: &[String]) -> String {
    let mut words: Vec<&str> = words.iter().map(String::as_str).collect();
    words.sort_unstable();
    words.join(" ")
}

/// Other spellings that [`tokens`] turns into `word`.
pub fn other_spellings(word: &str) -> impl Iterator<Item = &'static str> {
    let same = SAME_WORD.iter().filter(move |(_, to)| *to == word);
    same.map(|(from, _)| *from)
}

/// Lower case, accents off, everything but letters and digits a blank.
fn folded(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars().flat_map(char::to_lowercase) {
        match letter {
            '\'' | '\u{2019}' | '\u{2018}' | '`' => {}
            'à' | 'á' | 'â' | 'ã' | 'ä' | 'å' | 'ā' => out.push('a'),
            'ç' | 'ć' | 'č' => out.push('c'),
            'è' | 'é' | 'ê' | 'ë' | 'ē' | 'ě' => out.push('e'),
            'ì' | 'í' | 'î' | 'ï' | 'ī' => out.push('i'),
            'ñ' | 'ń' => out.push('n'),
            'ò' | 'ó' | 'ô' | 'õ' | 'ö' | 'ø' | 'ō' => out.push('o'),
            'ù' | 'ú' | 'û' | 'ü' | 'ū' => out.push('u'),
            'š' | 'ś' => out.push('s'),
            'ž' | 'ź' | 'ż' => out.push('z'),
            'ý' | 'ÿ' => out.push('y'),
            'ß' => out.push_str("ss"),
            'æ' => out.push_str("ae"),
            'œ' => out.push_str("oe"),
            // A combining accent belongs to the letter before it.
            '\u{300}'..='\u{36f}' => {}
            letter if letter.is_alphanumeric() => out.push(letter),
            _ => out.push(' '),
        }
    }
    out
}

/// One word in the singular and in our spelling.
fn plain(word: &str) -> String {
    let single = singular(word);
    let same = SAME_WORD.iter().find(|(from, _)| *from == single);
    same.map_or(single, |(_, to)| (*to).to_owned())
}

fn singular(word: &str) -> String {
    if let Some((_, single)) = IRREGULAR.iter().find(|(plural, _)| *plural == word) {
        return (*single).to_owned();
    }
    let letters = word.chars().count();
    let cut = |count: usize| {
        let end = word.char_indices().rev().nth(count - 1);
        end.map_or(word, |(end, _)| &word[..end])
    };
    if letters > 4 && word.ends_with("ies") {
        return format!("{}y", cut(3));
    }
    // "cookies" and "cookie" must end alike.
    if letters > 4 && word.ends_with("ie") {
        return format!("{}y", cut(2));
    }
    if letters <= 3
        || !word.ends_with('s')
        || ["ss", "us", "is"].iter().any(|end| word.ends_with(end))
    {
        return word.to_owned();
    }
    if letters > 4
        && ["oes", "ches", "shes", "sses", "xes", "zzes"]
            .iter()
            .any(|end| word.ends_with(end))
    {
        return cut(2).to_owned();
    }
    cut(1).to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(text: &str) -> String {
        tokens(text).join(" ")
    }

    #[test]
    fn plurals_become_singular() {
        for (plural, single) in [
            ("leaves", "leaf"),
            ("tomatoes", "tomato"),
            ("berries", "berry"),
            ("cookies", "cooky"),
            ("cookie", "cooky"),
            ("boxes", "box"),
            ("bushes", "bush"),
            ("ashes", "ash"),
            ("grass", "grass"),
            ("citrus", "citrus"),
            ("peas", "pea"),
            ("olives", "olive"),
            ("pies", "pie"),
        ] {
            assert_eq!(said(plural), single, "{plural}");
        }
    }

    #[test]
    fn spellings_meet() {
        assert_eq!(said("Leaf-Mold"), said("leaf mould"));
        assert_eq!(said("Crème  brûlée"), "creme brulee");
        assert_eq!(said("brewer's grains"), said("brewers grain"));
        assert_eq!(said("horse muck"), said("horse poo"));
        assert_eq!(said("Dried grass"), said("dry grass"));
        assert_eq!(said("Maize (corn) cobs"), "corn cob");
    }

    #[test]
    fn words_without_meaning_leave() {
        assert_eq!(said("some of the leaves & a few twigs"), "leaf twig");
        assert!(tokens("the, of -- !").is_empty());
        assert!(tokens("").is_empty());
    }

    #[test]
    fn keys_meet_however_written() {
        assert_eq!(joined(&tokens("egg shells")), joined(&tokens("Eggshells")));
        assert_eq!(
            sorted(&tokens("leaves, oak")),
            sorted(&tokens("oak leaves"))
        );
    }
}
