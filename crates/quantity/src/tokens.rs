//! Where do words and numbers begin and end in what was typed? Text to tokens, one pass.

use std::ops::Range;

/// What a token is.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Kind {
    /// Digits with the marks inside them, as typed: "3", "1,234.5", ".5", "1e3".
    Number,
    /// A fraction in one sign, as numerator and denominator.
    Fraction(u8, u8),
    /// Letters, and digits behind letters ("m3"), in plain form (see `plain_word`).
    Word(String),
    /// Any other sign; a line break is `'\n'`.
    Sign(char),
}

/// A piece of the text with its place in bytes.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Token {
    pub kind: Kind,
    pub span: Range<usize>,
}

impl Token {
    /// True when this token is the given word.
    pub fn is_word(&self, word: &str) -> bool {
        matches!(&self.kind, Kind::Word(own) if own == word)
    }

    /// True when this token is the given sign.
    pub fn is_sign(&self, sign: char) -> bool {
        self.kind == Kind::Sign(sign)
    }
}

/// Lower case, with the dotted and the dotless i of Turkish made plain.
pub(crate) fn plain_word(word: &str) -> String {
    word.chars()
        .flat_map(char::to_lowercase)
        .filter(|&letter| letter != '\u{307}')
        .map(|letter| if letter == 'ı' { 'i' } else { letter })
        .collect()
}

/// Plain words parted by single spaces; hyphens, points and any other signs part words too.
pub(crate) fn plain_phrase(text: &str) -> String {
    let mut phrase = String::new();
    for token in tokens(text) {
        let Some(word) = (match token.kind {
            Kind::Word(word) => Some(word),
            Kind::Number => Some(text[token.span].to_owned()),
            _ => None,
        }) else {
            continue;
        };
        if !phrase.is_empty() {
            phrase.push(' ');
        }
        phrase.push_str(&word);
    }
    phrase
}

/// Signs that stand for minus where a number follows.
pub(crate) fn is_minus(sign: char) -> bool {
    matches!(
        sign,
        '-' | '\u{2212}' | '\u{2010}'..='\u{2014}' | '\u{fe63}' | '\u{ff0d}'
    )
}

/// Cuts text into tokens; white space only parts them.
pub(crate) fn tokens(text: &str) -> Vec<Token> {
    let mut list = Vec::new();
    let mut at = 0;
    while let Some(first) = text[at..].chars().next() {
        let after = at + first.len_utf8();
        let touches_word = matches!(
            list.last(),
            Some(Token { kind: Kind::Word(_) | Kind::Number, span }) if span.end == at
        );
        let (kind, end) = if first == '\n' {
            (Kind::Sign('\n'), after)
        } else if first.is_whitespace() || is_invisible(first) {
            at = after;
            continue;
        } else if starts_number(&text[at..], touches_word) {
            (Kind::Number, at + number_length(&text[at..]))
        } else if let Some((top, bottom)) = fraction_sign(first) {
            (Kind::Fraction(top, bottom), after)
        } else if first.is_alphabetic() {
            let end = at + word_length(&text[at..]);
            (Kind::Word(plain_word(&text[at..end])), end)
        } else {
            (Kind::Sign(first), after)
        };
        list.push(Token {
            kind,
            span: at..end,
        });
        at = end;
    }
    list
}

/// Zero-width signs that come along when text is copied.
fn is_invisible(sign: char) -> bool {
    matches!(
        sign,
        '\u{200b}'..='\u{200f}' | '\u{2060}' | '\u{feff}' | '\u{ad}'
    )
}

fn starts_number(text: &str, touches_word: bool) -> bool {
    let bytes = text.as_bytes();
    bytes[0].is_ascii_digit()
        || (bytes[0] == b'.' && !touches_word && bytes.get(1).is_some_and(u8::is_ascii_digit))
}

/// Bytes of the number at the start of `text`, which begins with a digit or a point and a digit.
fn number_length(text: &str) -> usize {
    let bytes = text.as_bytes();
    let digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
    let mut end = 1;
    loop {
        match bytes.get(end) {
            Some(b'0'..=b'9') => end += 1,
            Some(b'.' | b',') if digit(end + 1) => end += 2,
            Some(b'\'') if digit(end + 1) && digit(end + 2) && digit(end + 3) => end += 4,
            Some(b'e' | b'E') if digit(end + 1) => return end + digits(&bytes[end + 1..]) + 1,
            Some(b'e' | b'E')
                if matches!(bytes.get(end + 1), Some(b'-' | b'+')) && digit(end + 2) =>
            {
                return end + digits(&bytes[end + 2..]) + 2;
            }
            _ => return end,
        }
    }
}

fn digits(bytes: &[u8]) -> usize {
    bytes
        .iter()
        .take_while(|byte| byte.is_ascii_digit())
        .count()
}

/// Bytes of the word at the start of `text`; an apostrophe counts between two letters.
fn word_length(text: &str) -> usize {
    let mut end = 0;
    let mut letters = text.char_indices().peekable();
    while let Some((at, letter)) = letters.next() {
        let apostrophe = matches!(letter, '\'' | '\u{2019}')
            && letters.peek().is_some_and(|(_, next)| next.is_alphabetic());
        let power = matches!(letter, '³' | '\u{300}'..='\u{36f}')
            || (letter == '^' && letters.peek().is_some_and(|(_, next)| *next == '3'));
        if !(letter.is_alphabetic() || letter.is_ascii_digit() || apostrophe || power) {
            break;
        }
        end = at + letter.len_utf8();
    }
    end
}

fn fraction_sign(sign: char) -> Option<(u8, u8)> {
    Some(match sign {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅐' => (1, 7),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cut(text: &str) -> Vec<&str> {
        tokens(text)
            .into_iter()
            .map(|token| &text[token.span])
            .collect()
    }

    #[test]
    fn tokens_part_numbers_from_words() {
        assert_eq!(cut("10kg"), ["10", "kg"]);
        assert_eq!(cut("3,5 kg, 1½"), ["3,5", "kg", ",", "1", "½"]);
        assert_eq!(cut("grass,5 kg"), ["grass", ",", "5", "kg"]);
        assert_eq!(cut("grass .5 m3"), ["grass", ".5", "m3"]);
        assert_eq!(
            cut("2e buckets 1.5e-1kg"),
            ["2", "e", "buckets", "1.5e-1", "kg"]
        );
        assert_eq!(
            cut("fl. oz. of horse's"),
            ["fl", ".", "oz", ".", "of", "horse's"]
        );
    }

    #[test]
    fn tokens_keep_to_character_bounds() {
        assert_eq!(cut("LİTRE\u{a0}ıx𝟙é"), ["LİTRE", "ıx", "𝟙", "é"]);
        assert_eq!(plain_word("LİTRE"), "litre");
        assert_eq!(plain_word("\u{212a}G"), "kg");
    }
}
