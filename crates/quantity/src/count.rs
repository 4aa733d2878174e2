//! How many? Digits, fractions and number words at a place in the text to one positive number.

use crate::amount::AmountProblem;
use crate::number::number_value;
use crate::number_words::{is_about, is_times, is_vague, parts_of_one, small_number, tens_number};
use crate::shorten::shortened;
use crate::tokens::{Kind, Token, is_minus};
use crate::vocabulary::DecimalMark;

/// A count that has been read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Count {
    /// Finite, above 0.
    pub value: f64,
    /// The token behind the count.
    pub next: usize,
    /// What was said, which decides the little words that may follow ("half *of a* bucket").
    pub said: Said,
}

/// How a count was said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Said {
    /// "a", "an": may be no count at all ("and a banana").
    Article,
    /// "half", "1/2", "one and three quarters".
    Fraction,
    /// "2", "twelve", "a dozen".
    Number,
}

/// A count that cannot be used.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct CountFailure {
    pub problem: AmountProblem,
    /// The first token that does not belong to the failed count.
    pub resume: usize,
}

type CountResult = Result<Count, CountFailure>;

/// Reads counts from tokens of one text.
#[derive(Clone, Copy)]
pub(crate) struct CountReader<'a> {
    pub text: &'a str,
    pub tokens: &'a [Token],
    pub decimal: DecimalMark,
}

impl<'a> CountReader<'a> {
    /// The count that begins at token `at`; the problem is `NoNumber` when none begins there.
    ///
    /// "about" and the like in front are read over: every count of vessels is about right.
    pub fn count(self, at: usize) -> CountResult {
        let count = match self.kind(at) {
            Some(Kind::Sign('+')) if self.touches(at) => self.unsigned(at + 1)?,
            Some(Kind::Sign(sign)) if is_minus(*sign) => return Err(self.negative(at)),
            Some(Kind::Word(word)) if word == "minus" || word == "negative" => {
                return Err(self.negative(at));
            }
            Some(Kind::Word(word)) if is_about(word) => {
                let point = matches!(self.kind(at + 1), Some(Kind::Sign('.')));
                self.unsigned(at + 1 + usize::from(point))?
            }
            Some(Kind::Sign('~' | '≈')) => self.unsigned(at + 1)?,
            _ => self.unsigned(at)?,
        };
        if count.value > 0.0 {
            Ok(count)
        } else {
            fail(AmountProblem::Zero, count.next)
        }
    }

    fn negative(self, at: usize) -> CountFailure {
        let behind = match self.unsigned(at + 1) {
            Ok(count) => Ok(count.next),
            Err(failure) => match failure.problem {
                AmountProblem::NoNumber => Err(failure),
                _ => Ok(failure.resume),
            },
        };
        match behind {
            Ok(resume) => CountFailure {
                problem: AmountProblem::Negative,
                resume,
            },
            Err(_) => CountFailure {
                problem: AmountProblem::NoNumber,
                resume: at + 1,
            },
        }
    }

    fn unsigned(self, at: usize) -> CountResult {
        let count = match self.kind(at) {
            Some(Kind::Number) => self.digits(at)?,
            Some(Kind::Fraction(top, bottom)) => {
                fraction(f64::from(*top) / f64::from(*bottom), at + 1)
            }
            Some(Kind::Sign('∞')) => return fail(AmountProblem::NotFinite, at + 1),
            Some(Kind::Word(word)) => self.spoken(word, at)?,
            _ => return fail(AmountProblem::NoNumber, at + 1),
        };
        match self.further_number(count.next) {
            Some(resume) => fail(AmountProblem::SeveralNumbers, resume),
            None => Ok(count),
        }
    }

    /// Where a second number behind the first ends ("2-3", "2 to 3", "2 20"), if there is one.
    fn further_number(self, at: usize) -> Option<usize> {
        let joined = match self.kind(at)? {
            Kind::Sign(sign) if is_minus(*sign) => at + 1,
            Kind::Sign('/' | '⁄' | '~') => at + 1,
            Kind::Word(word) if word == "to" || word == "or" || is_times(word) => at + 1,
            Kind::Sign('×' | '*') => at + 1,
            _ => at,
        };
        let numeral = |place| matches!(self.kind(place), Some(Kind::Number | Kind::Fraction(..)));
        if numeral(joined) {
            let mut end = joined + 1;
            while numeral(end) {
                end += 1;
            }
            return Some(end);
        }
        let spelled = self.cardinal(joined);
        spelled.filter(|_| joined > at).map(|(_, end)| end)
    }

    // Digits.

    fn digits(self, at: usize) -> CountResult {
        let (value, next) = self.grouped(at)?;
        if let Some(outcome) = self.slashed(at, next) {
            return outcome;
        }
        if let Some(found) = self.broken_part(next) {
            let (part, end) = found?;
            return self.with_part(value, part, end);
        }
        self.scaled(value, next)
    }

    /// A number with white space between groups of three digits: "1 000,5".
    fn grouped(self, at: usize) -> Result<(f64, usize), CountFailure> {
        let first = self.typed(at);
        let mut typed = first.to_owned();
        let mut next = at + 1;
        let plain = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
        if plain(first) && first.len() <= 3 {
            while let Some(Kind::Number) = self.kind(next) {
                let group = self.typed(next);
                let digits = group.bytes().take_while(u8::is_ascii_digit).count();
                let slash = matches!(self.kind(next + 1), Some(Kind::Sign('/' | '⁄')));
                let one_space = self.gap(next).chars().count() == 1;
                if digits != 3 || slash || !one_space || typed.len() > 30 {
                    break;
                }
                typed.push_str(group);
                next += 1;
                if !plain(group) {
                    break;
                }
            }
        }
        let grouped = next > at + 1;
        // Groups parted by spaces leave only the decimal reading for a point or comma.
        let typed = match typed.find(['.', ',']) {
            Some(mark) if grouped => format!("{}.{}", &typed[..mark], &typed[mark + 1..]),
            _ => typed,
        };
        let decimal = if grouped {
            DecimalMark::Point
        } else {
            self.decimal
        };
        match number_value(&typed, decimal) {
            Ok(value) => Ok((value, next)),
            Err(problem) => Err(CountFailure {
                problem,
                resume: next,
            }),
        }
    }

    /// "1/2" whose numerator is the one number token at `at`.
    fn slashed(self, at: usize, next: usize) -> Option<CountResult> {
        if next != at + 1 || !self.slash_and_number(next) {
            return None;
        }
        let end = next + 2;
        if self.slash_and_number(end) {
            return Some(self.malformed(at, end + 2));
        }
        let parts = self.whole_number(at).zip(self.whole_number(next + 1));
        Some(match parts {
            None => self.malformed(at, end),
            Some((_, 0.0)) => fail(AmountProblem::DivisionByZero, end),
            Some((top, bottom)) => Ok(fraction(top / bottom, end)),
        })
    }

    /// The fraction behind a whole number: "½", "1/2", "-1/2", "and a half", "and 1/2".
    fn broken_part(self, at: usize) -> Option<Result<(f64, usize), CountFailure>> {
        let hyphen = matches!(self.kind(at), Some(Kind::Sign('-')))
            && self.gap(at).is_empty()
            && self.gap(at + 1).is_empty();
        let place = at + usize::from(hyphen || self.is_word(at, "and"));
        match self.kind(place)? {
            Kind::Fraction(top, bottom) => {
                Some(Ok((f64::from(*top) / f64::from(*bottom), place + 1)))
            }
            Kind::Number if self.slash_and_number(place + 1) => {
                let outcome = self.slashed(place, place + 1)?;
                Some(outcome.map(|count| (count.value, count.next)))
            }
            Kind::Word(_) if self.is_word(at, "and") => self.named_fraction(place).map(Ok),
            _ => None,
        }
    }

    /// The fraction behind "and", where one follows: "a half", "three quarters", "1/2", "½".
    pub fn and_fraction(self, at: usize) -> Option<(f64, usize)> {
        if !self.is_word(at, "and") {
            return None;
        }
        self.broken_part(at)?.ok().filter(|(part, _)| *part < 1.0)
    }

    fn with_part(self, whole: f64, part: f64, end: usize) -> CountResult {
        // "2.5 and a half" and "1 3/2" are slips, not numbers.
        if whole % 1.0 != 0.0 || part >= 1.0 {
            return fail(AmountProblem::SeveralNumbers, end);
        }
        Ok(fraction(whole + part, end))
    }

    /// "2 dozen", "2 hundred", "3 quarters".
    fn scaled(self, value: f64, next: usize) -> CountResult {
        let Some(Kind::Word(word)) = self.kind(next) else {
            return Ok(number(value, next));
        };
        let factor = match word.as_str() {
            "dozen" => 12.0,
            "hundred" => 100.0,
            "thousand" => 1000.0,
            _ => {
                return Ok(match parts_of_one(word) {
                    Some(parts) if parts > 2.0 || value == 1.0 => fraction(value / parts, next + 1),
                    _ => number(value, next),
                });
            }
        };
        Ok(number(value * factor, next + 1))
    }

    // Words.

    fn spoken(self, word: &str, at: usize) -> CountResult {
        match word {
            "nan" | "inf" | "infinity" | "infinite" => fail(AmountProblem::NotFinite, at + 1),
            "a" | "an" => self.behind_article(at),
            "half" => Ok(self.half(at)),
            "couple" | "pair" => Ok(number(2.0, at + 1)),
            "dozen" => Ok(number(12.0, at + 1)),
            _ if is_vague(word) => self.vague(at, at + 1),
            _ => self.spelled(word, at),
        }
    }

    fn behind_article(self, at: usize) -> CountResult {
        let next = at + 1;
        let word = match self.kind(next) {
            Some(Kind::Number | Kind::Fraction(..)) => {
                let count = self.unsigned(next)?;
                return if count.value < 1.0 {
                    Ok(fraction(count.value, count.next))
                } else {
                    fail(AmountProblem::SeveralNumbers, count.next)
                };
            }
            Some(Kind::Word(word)) => word.as_str(),
            _ => "",
        };
        match word {
            "half" => Ok(self.half(next)),
            "couple" | "pair" => Ok(number(2.0, next + 1)),
            "dozen" => Ok(number(12.0, next + 1)),
            "hundred" | "thousand" => {
                let (value, end) = self.cardinal_behind(1, next);
                Ok(number(value as f64, end))
            }
            "bit" | "little" | "lot" | "touch" => self.vague(at, next + 1),
            _ if is_vague(word) => self.vague(at, next + 1),
            _ => Ok(match parts_of_one(word) {
                Some(parts) => fraction(1.0 / parts, next + 1),
                None => Count {
                    value: 1.0,
                    next,
                    said: Said::Article,
                },
            }),
        }
    }

    fn half(self, at: usize) -> Count {
        let article = usize::from(self.is_word(at + 1, "a"));
        if self.is_word(at + 1 + article, "dozen") {
            return number(6.0, at + 2 + article);
        }
        fraction(0.5, at + 1)
    }

    fn spelled(self, word: &str, at: usize) -> CountResult {
        if let Some((value, next)) = self.named_fraction(at) {
            return Ok(fraction(value, next));
        }
        if matches!(word, "zero" | "nought" | "no") {
            return Ok(number(0.0, at + 1));
        }
        let Some((value, next)) = self.cardinal(at) else {
            return fail(AmountProblem::NoNumber, at + 1);
        };
        let value = value as f64;
        let place = self.behind_hyphen(next);
        if self.is_word(place, "and")
            && let Some((part, end)) = self.spelled_part(place)
        {
            return self.with_part(value, part, end);
        }
        self.scaled(value, next)
    }

    /// As `and_fraction`, with hyphens allowed: "two-and-a-half".
    fn spelled_part(self, and: usize) -> Option<(f64, usize)> {
        let place = self.behind_hyphen(and + 1);
        if let Some(found) = self.named_fraction(place) {
            return Some(found);
        }
        self.broken_part(and)?.ok()
    }

    /// "half", "a half", "one third", "three-quarters", "quarter".
    fn named_fraction(self, at: usize) -> Option<(f64, usize)> {
        let counted = if self.is_word(at, "a") {
            Some((1, at + 1))
        } else {
            self.cardinal(at)
        };
        let (top, place) = counted.unwrap_or((1, at));
        let place = self.behind_hyphen(place);
        let Some(Kind::Word(word)) = self.kind(place) else {
            return None;
        };
        let parts = parts_of_one(word)?;
        // "two half buckets" is not one bucket for certain.
        if word == "half" && top != 1 {
            return None;
        }
        Some((top as f64 / parts, place + 1))
    }

    /// "twelve", "twenty-five", "two hundred and fifty", "three thousand"; at most 999,999.
    fn cardinal(self, at: usize) -> Option<(u32, usize)> {
        let (value, next) = self.below_hundred(at)?;
        Some(self.cardinal_behind(value, next))
    }

    /// The rest of a cardinal whose first part is read: "hundred and fifty thousand and two".
    fn cardinal_behind(self, first: u32, at: usize) -> (u32, usize) {
        let (value, next) = self.hundreds(first, at);
        if !self.is_word(next, "thousand") {
            return (value, next);
        }
        let thousands = value * 1000;
        let place = next + 1 + usize::from(self.is_word(next + 1, "and"));
        match self.below_hundred(place) {
            Some((rest, end)) => {
                let (rest, end) = self.hundreds(rest, end);
                (thousands + rest, end)
            }
            None => (thousands, next + 1),
        }
    }

    fn hundreds(self, first: u32, at: usize) -> (u32, usize) {
        if !self.is_word(at, "hundred") {
            return (first, at);
        }
        let hundreds = first * 100;
        // Twenty hundred and more are not said; the bound keeps the sum small.
        if first > 9 {
            return (hundreds.min(9900), at + 1);
        }
        let place = at + 1 + usize::from(self.is_word(at + 1, "and"));
        match self.below_hundred(place) {
            Some((rest, end)) => (hundreds + rest, end),
            None => (hundreds, at + 1),
        }
    }

    fn below_hundred(self, at: usize) -> Option<(u32, usize)> {
        let Some(Kind::Word(word)) = self.kind(at) else {
            return None;
        };
        if let Some(value) = small_number(word) {
            return Some((value, at + 1));
        }
        let tens = tens_number(word)?;
        let place = self.behind_hyphen(at + 1);
        let ones = match self.kind(place) {
            Some(Kind::Word(word)) => small_number(word).filter(|ones| *ones < 10),
            _ => None,
        };
        Some(match ones {
            Some(ones) => (tens + ones, place + 1),
            None => (tens, at + 1),
        })
    }

    // Places in the text.

    pub fn kind(self, at: usize) -> Option<&'a Kind> {
        self.tokens.get(at).map(|token| &token.kind)
    }

    pub fn is_word(self, at: usize, word: &str) -> bool {
        self.tokens.get(at).is_some_and(|token| token.is_word(word))
    }

    pub fn typed(self, at: usize) -> &'a str {
        self.tokens
            .get(at)
            .map_or("", |token| &self.text[token.span.clone()])
    }

    /// The white space in front of a token.
    pub fn gap(self, at: usize) -> &'a str {
        let start = match at.checked_sub(1) {
            Some(before) => self.tokens.get(before).map_or(0, |token| token.span.end),
            None => 0,
        };
        self.tokens
            .get(at)
            .map_or("", |token| &self.text[start..token.span.start])
    }

    /// True when no space stands between a token and the next, and there is a next.
    pub fn touches(self, at: usize) -> bool {
        at + 1 < self.tokens.len() && self.gap(at + 1).is_empty()
    }

    /// The place behind a hyphen that joins two words, or `at` itself.
    pub fn behind_hyphen(self, at: usize) -> usize {
        let hyphen = matches!(
            self.kind(at),
            Some(Kind::Sign('-' | '\u{2010}' | '\u{2011}'))
        );
        let joins = hyphen
            && self.gap(at).is_empty()
            && self.touches(at)
            && matches!(self.kind(at + 1), Some(Kind::Word(_)));
        at + usize::from(joins)
    }

    fn slash_and_number(self, at: usize) -> bool {
        matches!(self.kind(at), Some(Kind::Sign('/' | '⁄' | '∕')))
            && matches!(self.kind(at + 1), Some(Kind::Number))
    }

    fn whole_number(self, at: usize) -> Option<f64> {
        let typed = self.typed(at);
        let digits = typed.bytes().all(|byte| byte.is_ascii_digit());
        (digits && typed.len() <= 9).then(|| typed.parse().ok())?
    }

    fn malformed(self, at: usize, end: usize) -> CountResult {
        let number = shortened(&self.text[self.tokens[at].span.start..self.end_of(end)]);
        fail(AmountProblem::NumberForm { number }, end)
    }

    fn vague(self, at: usize, end: usize) -> CountResult {
        let words = shortened(&self.text[self.tokens[at].span.start..self.end_of(end)]);
        fail(AmountProblem::Vague { words }, end)
    }

    /// Where the token in front of `next` ends, in bytes.
    fn end_of(self, next: usize) -> usize {
        self.tokens[next - 1].span.end
    }
}

fn fail<T>(problem: AmountProblem, resume: usize) -> Result<T, CountFailure> {
    Err(CountFailure { problem, resume })
}

fn number(value: f64, next: usize) -> Count {
    Count {
        value,
        next,
        said: Said::Number,
    }
}

fn fraction(value: f64, next: usize) -> Count {
    Count {
        value,
        next,
        said: Said::Fraction,
    }
}
