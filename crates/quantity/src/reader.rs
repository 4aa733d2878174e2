//! Does an amount begin at this word, and where does it end? A count, little words and a unit.

use crate::amount::{Amount, AmountProblem, Unit};
use crate::count::{Count, CountReader, Said};
use crate::nearest::nearest;
use crate::number_words::is_times;
use crate::shorten::shortened;
use crate::tokens::{Kind, Token, is_minus};
use crate::unit_words::{LONGEST_UNIT_WORDS, UnitWord, spellings, unit_named};
use crate::vocabulary::Vocabulary;

/// The most words of a vessel's name that are looked up.
const LONGEST_MEASURE_WORDS: usize = 8;

/// An amount and the token behind it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Read {
    pub amount: Amount,
    pub next: usize,
    /// True when only "a" or "an" gave the number.
    pub by_article: bool,
}

/// Why no amount was read at a place.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Failure {
    pub problem: AmountProblem,
    /// The first token that does not belong to the failed amount.
    pub resume: usize,
    /// True when somebody tried to say an amount here; false for plain words.
    pub intended: bool,
}

/// Reads amounts from the tokens of one text. Each reading looks at a bounded number of tokens.
#[derive(Clone, Copy)]
pub(crate) struct AmountReader<'a> {
    counts: CountReader<'a>,
    vocabulary: &'a Vocabulary,
}

impl<'a> AmountReader<'a> {
    pub fn new(text: &'a str, tokens: &'a [Token], vocabulary: &'a Vocabulary) -> Self {
        Self {
            counts: CountReader {
                text,
                tokens,
                decimal: vocabulary.decimal,
            },
            vocabulary,
        }
    }

    /// The amount that begins at token `at`.
    pub fn amount(self, at: usize) -> Result<Read, Failure> {
        let count = self.counts.count(at).map_err(|failure| {
            let intended = failure.problem != AmountProblem::NoNumber;
            // A plain word gives up only itself: what stands behind it may be a separator.
            let resume = if intended { failure.resume } else { at + 1 };
            Failure {
                problem: failure.problem,
                resume,
                intended,
            }
        })?;
        let by_article = count.said == Said::Article;
        let (unit, mut next) = self.unit_behind(count).map_err(|problem| {
            let unit_missing = matches!(
                problem,
                AmountProblem::NoUnit | AmountProblem::UnknownUnit { .. }
            );
            Failure {
                problem,
                resume: count.next,
                intended: !(by_article && unit_missing),
            }
        })?;
        let mut amount = Amount {
            count: count.value,
            unit,
        };
        if let Some((part, end)) = self.part_behind_unit(count, next) {
            amount.count += part;
            next = end;
        }
        let problem = match &amount {
            much if much.is_absurd() => Some(AmountProblem::Absurd),
            little if little.is_too_small() => Some(AmountProblem::TooSmall),
            _ => None,
        };
        if let Some(problem) = problem {
            return Err(Failure {
                problem,
                resume: next,
                intended: true,
            });
        }
        Ok(Read {
            amount,
            next,
            by_article,
        })
    }

    /// True when an amount begins here, readable or not.
    pub fn starts_amount(self, at: usize) -> bool {
        match self.amount(at) {
            Ok(_) => true,
            Err(failure) => failure.intended,
        }
    }

    /// The problem with a suggestion where a word was not known.
    pub fn explained(self, problem: AmountProblem) -> AmountProblem {
        match problem {
            AmountProblem::UnknownUnit { word, .. } => {
                let plain = crate::tokens::plain_word(&word);
                let known = self.vocabulary.measures.words().chain(spellings());
                AmountProblem::UnknownUnit {
                    nearest: nearest(&plain, known).map(str::to_owned),
                    word,
                }
            }
            other => other,
        }
    }

    /// The place behind "of", "of the", "of some", "full of", or `at` itself.
    pub fn behind_of(self, at: usize) -> usize {
        let mut next = at + usize::from(self.counts.is_word(at, "full"));
        if self.counts.is_word(next, "of") {
            next += 1;
            if self.counts.is_word(next, "the") || self.counts.is_word(next, "some") {
                next += 1;
            }
        } else if self.counts.is_word(next, "some") {
            next += 1;
        }
        next
    }

    fn unit_behind(self, count: Count) -> Result<(Unit, usize), AmountProblem> {
        let place = self.behind_little_words(count)?;
        if let Some((found, next)) = self.unit(place) {
            return found.map(|unit| (unit, next));
        }
        match self.counts.kind(place) {
            Some(Kind::Number | Kind::Fraction(..)) => Err(AmountProblem::SeveralNumbers),
            Some(Kind::Word(word)) if word != "of" => Err(AmountProblem::UnknownUnit {
                word: shortened(self.counts.typed(place)),
                nearest: None,
            }),
            _ => Err(AmountProblem::NoUnit),
        }
    }

    /// The place of the unit: behind "x", "of", "of a", a hyphen, "full" or "whole".
    fn behind_little_words(self, count: Count) -> Result<usize, AmountProblem> {
        let counts = self.counts;
        let mut place = count.next;
        let times = match counts.kind(place) {
            Some(Kind::Sign('×' | '*')) => true,
            Some(Kind::Word(word)) => is_times(word),
            _ => false,
        };
        if times {
            place += 1;
            if matches!(counts.count(place), Ok(further) if further.said != Said::Article) {
                return Err(AmountProblem::SeveralNumbers);
            }
        } else if count.said != Said::Article {
            place = counts.behind_hyphen(place);
            place += usize::from(counts.is_word(place, "of"));
            let article = ["a", "an", "the", "one"]
                .iter()
                .any(|word| counts.is_word(place, word));
            let skipped = (count.said == Said::Fraction && article) || counts.is_word(place, "the");
            place += usize::from(skipped);
        }
        let filled = ["full", "whole", "single"]
            .iter()
            .any(|word| counts.is_word(place, word));
        Ok(place + usize::from(filled && self.unit(place).is_none()))
    }

    /// "and a half" behind "a bucket", unless it counts something of its own.
    fn part_behind_unit(self, count: Count, at: usize) -> Option<(f64, usize)> {
        let (part, end) = self.counts.and_fraction(at)?;
        if count.value % 1.0 != 0.0 {
            return None;
        }
        let own = Count {
            value: part,
            next: end,
            said: Said::Fraction,
        };
        match self.unit_behind(own) {
            Ok(_) | Err(AmountProblem::AmbiguousUnit { .. } | AmountProblem::SeveralNumbers) => {
                None
            }
            Err(_) => Some((part, end)),
        }
    }

    /// The longest unit or vessel that begins at a word; vessels win over units of equal length.
    fn unit(self, at: usize) -> Option<(Result<Unit, AmountProblem>, usize)> {
        let own = self.vocabulary.measures.longest_words();
        // One more than the longest unit, for "u. s. fl. oz.".
        let most = (LONGEST_UNIT_WORDS + 1).max(own.min(LONGEST_MEASURE_WORDS));
        let mut phrase = String::new();
        let mut found = None;
        let mut place = at;
        for words in 0..most {
            let start = if words == 0 {
                place
            } else {
                self.counts.behind_hyphen(place)
            };
            let word = match self.counts.kind(start) {
                Some(Kind::Word(word)) => word.as_str(),
                Some(Kind::Number) if words > 0 => self.counts.typed(start),
                _ => break,
            };
            if word.len() > 64 {
                break;
            }
            if phrase == "u" && word == "s" {
                phrase.push('s');
            } else {
                if words > 0 {
                    phrase.push(' ');
                }
                phrase.push_str(word);
            }
            place = start + 1;
            if matches!(self.counts.kind(place), Some(Kind::Sign('.')))
                && self.counts.gap(place).is_empty()
            {
                place += 1;
            }
            if let Some(unit) = self.unit_of_phrase(&phrase, at, start) {
                found = Some((unit, place));
            }
        }
        found
    }

    fn unit_of_phrase(
        self,
        phrase: &str,
        first: usize,
        last: usize,
    ) -> Option<Result<Unit, AmountProblem>> {
        if let Some(id) = self.vocabulary.measures.id_of_plain(phrase) {
            return Some(Ok(Unit::Measure(id.to_owned())));
        }
        Some(match unit_named(phrase, self.vocabulary.gallon)? {
            UnitWord::Mass(unit) => Ok(Unit::Mass(unit)),
            UnitWord::Volume(unit) => Ok(Unit::Volume(unit)),
            UnitWord::Ambiguous(clear) => {
                let tokens = self.counts.tokens;
                let typed = &self.counts.text[tokens[first].span.start..tokens[last].span.end];
                Err(AmountProblem::AmbiguousUnit {
                    word: shortened(typed),
                    clear,
                })
            }
        })
    }

    // For lists of amounts.

    /// True for the "2)" of a numbered list, with an amount behind it.
    pub fn is_list_number(self, at: usize) -> bool {
        let typed = self.counts.typed(at);
        let digits = typed.len() <= 3 && typed.bytes().all(|byte| byte.is_ascii_digit());
        digits
            && matches!(self.counts.kind(at), Some(Kind::Number))
            && matches!(self.counts.kind(at + 1), Some(Kind::Sign(')')))
            && self.starts_amount(at + 2)
    }

    /// True when a minus sign at `at` is a dash between words or the bullet of a line.
    pub fn is_dash(self, at: usize, starts_piece: bool) -> bool {
        let Some(Kind::Sign(sign)) = self.counts.kind(at) else {
            return false;
        };
        if !is_minus(*sign) || *sign == '\u{2212}' {
            return false;
        }
        let joined_before = !starts_piece && at > 0 && self.counts.gap(at).is_empty();
        let behind_word =
            at > 0 && matches!(self.counts.kind(at - 1), Some(Kind::Word(_) | Kind::Number));
        !self.counts.touches(at) || (joined_before && behind_word)
    }
}
