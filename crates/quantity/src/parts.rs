//! What went in? A spoken list ("2 buckets scraps, 1 bucket dry grass and 3 kg manure") to parts.
//!
//! A semicolon or a line break always parts. A comma, "+", "&", "/", "|", a full stop, "and", "with",
//! "plus" or "then" parts only where an amount follows, or where the part so far is a name with its amount behind it; elsewhere it
//! belongs to a name ("bread and butter") or a number ("two and a half").

use std::fmt;

use crate::amount::{Amount, AmountProblem};
use crate::reader::AmountReader;
use crate::shorten::shortened;
use crate::tokens::{Kind, Token, tokens};
use crate::vocabulary::Vocabulary;

/// The most parts in one list.
const MOST_PARTS: usize = 200;
/// The longest list in characters.
const LONGEST_LIST: usize = 20_000;

/// One part of a list: how much of what.
#[derive(Clone, Debug, PartialEq)]
pub struct SpokenPart {
    /// How much.
    pub amount: Amount,
    /// Of what, as typed, with single spaces and without "of" or "of the"; never empty.
    pub name: String,
    /// The whole part as typed.
    pub text: String,
}

/// Why a list of parts cannot be read.
#[derive(Clone, Debug, PartialEq)]
pub enum PartsProblem {
    /// Nothing was typed.
    Empty,
    /// More than 20,000 characters.
    TooLong,
    /// More than 200 parts.
    TooManyParts,
    /// The amount of the part cannot be read.
    Amount(AmountProblem),
    /// An amount of nothing ("2 buckets").
    NoName,
    /// Two amounts in one part, with no separator between ("2 buckets grass 1 bucket straw").
    SeveralAmounts,
    /// The amount stands between words ("old grass 2 buckets from next door").
    AmountInside,
}

impl PartsProblem {
    /// A short fixed name of the kind, for tables and logs.
    #[must_use]
    pub fn name(&self) -> &'static str {
        match self {
            Self::Empty => "empty-list",
            Self::TooLong => "list-too-long",
            Self::TooManyParts => "too-many-parts",
            Self::Amount(problem) => problem.name(),
            Self::NoName => "no-name",
            Self::SeveralAmounts => "several-amounts",
            Self::AmountInside => "amount-inside",
        }
    }
}

/// A list that cannot be read: why, and at which part.
#[derive(Clone, Debug, PartialEq)]
pub struct PartsError {
    /// Why.
    pub problem: PartsProblem,
    /// The place of the part in the list, from 0.
    pub index: usize,
    /// The part as typed, or the list where it cannot be parted; cut at about 40 characters.
    pub text: String,
}

impl fmt::Display for PartsError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let part = self.index + 1;
        let text = &self.text;
        match &self.problem {
            PartsProblem::Empty => formatter.write_str(
                "The list is empty: write parts such as 2 buckets grass, 1 mug coffee grounds.",
            ),
            PartsProblem::TooLong => {
                formatter.write_str("The list is too long: write at most 20000 characters.")
            }
            PartsProblem::TooManyParts => {
                formatter.write_str("The list has too many parts: write at most 200.")
            }
            PartsProblem::Amount(problem) => {
                let asks = matches!(
                    problem,
                    AmountProblem::UnknownUnit {
                        nearest: Some(_),
                        ..
                    }
                );
                let end = if asks { "" } else { "." };
                write!(formatter, "Part {part}, “{text}”, {problem}{end}")
            }
            PartsProblem::NoName => write!(
                formatter,
                "Part {part}, “{text}”, does not say of what: write such as 2 buckets grass."
            ),
            PartsProblem::SeveralAmounts => write!(
                formatter,
                "Part {part}, “{text}”, has several amounts: write a comma between the parts."
            ),
            PartsProblem::AmountInside => write!(
                formatter,
                "Part {part}, “{text}”, has its amount between words: write it first, such as 2 buckets grass."
            ),
        }
    }
}

impl std::error::Error for PartsError {}

/// The parts of a list as people say it: "2 buckets scraps, half a handful of sawdust".
///
/// The amount may stand behind the name ("grass: 2 buckets"). Names are given back as typed; which
/// material they mean is not known here.
///
/// # Errors
///
/// The first part that cannot be read, with its place in the list and its text.
pub fn parse_parts(text: &str, vocabulary: &Vocabulary) -> Result<Vec<SpokenPart>, PartsError> {
    let of_list = |problem| PartsError {
        problem,
        index: 0,
        text: shortened(text),
    };
    if text.chars().nth(LONGEST_LIST).is_some() {
        return Err(of_list(PartsProblem::TooLong));
    }
    let tokens = tokens(text);
    let list = List {
        text,
        tokens: &tokens,
        reader: AmountReader::new(text, &tokens, vocabulary),
    };
    let pieces = list.pieces();
    if pieces.is_empty() {
        return Err(of_list(PartsProblem::Empty));
    }
    if pieces.len() > MOST_PARTS {
        return Err(of_list(PartsProblem::TooManyParts));
    }
    let parts = pieces.into_iter().enumerate().map(|(index, piece)| {
        let typed = list.typed(piece.start, piece.end);
        list.part(piece).map_err(|problem| PartsError {
            problem,
            index,
            text: shortened(typed),
        })
    });
    parts.collect()
}

/// An amount found in a piece.
struct Found {
    start: usize,
    next: usize,
    amount: Amount,
    by_article: bool,
}

/// The tokens from one separator to the next.
#[derive(Default)]
struct Piece {
    start: usize,
    end: usize,
    amounts: Vec<Found>,
    /// The first amount that cannot be read; one that is no name by chance goes before others.
    problem: Option<(usize, AmountProblem)>,
    /// True when a comma or colon, and no more, stands in front.
    behind_comma: bool,
}

impl Piece {
    fn is_blank(&self) -> bool {
        self.start >= self.end
    }

    /// True for "grass 2 buckets" up to here.
    fn is_name_then_amount(&self, at: usize) -> bool {
        let first = self.amounts.first();
        first.is_some_and(|first| first.start > self.start)
            && self.amounts.last().is_some_and(|last| last.next == at)
    }

    fn is_name_alone(&self) -> bool {
        self.amounts.is_empty() && self.problem.is_none()
    }
}

struct List<'a> {
    text: &'a str,
    tokens: &'a [Token],
    reader: AmountReader<'a>,
}

impl<'a> List<'a> {
    /// One walk over the tokens; an amount is read once and stepped over, so that an "and" or a
    /// comma inside it never parts.
    fn pieces(&self) -> Vec<Piece> {
        let mut pieces = Vec::new();
        let mut piece = Piece::default();
        let mut at = 0;
        while at < self.tokens.len() {
            if self.is_hard_separator(at) {
                self.close(&mut piece, at, at + 1, &mut pieces);
                piece.behind_comma = false;
                at += 1;
            } else if self.is_soft_separator(at) {
                let behind = self.behind_separators(at);
                let parts = at == piece.start
                    || piece.is_name_then_amount(at)
                    || self.reader.starts_amount(behind);
                if parts {
                    self.close(&mut piece, at, behind, &mut pieces);
                    piece.behind_comma = self.tokens[at].is_sign(',') && behind == at + 1;
                }
                at = behind;
            } else if at == piece.start && self.reader.is_list_number(at) {
                at += 2;
                piece.start = at;
            } else if self.reader.is_dash(at, at == piece.start) {
                if at == piece.start {
                    piece.start += 1;
                }
                at += 1;
            } else {
                at = self.walk(&mut piece, at);
            }
        }
        self.close(&mut piece, at, at, &mut pieces);
        pieces
    }

    fn walk(&self, piece: &mut Piece, at: usize) -> usize {
        match self.reader.amount(at) {
            Ok(read) => {
                piece.amounts.push(Found {
                    start: at,
                    next: read.next,
                    amount: read.amount,
                    by_article: read.by_article,
                });
                read.next
            }
            Err(failure) => {
                let graver = piece.problem.as_ref().is_none_or(|(_, before)| {
                    before.may_be_a_name() && !failure.problem.may_be_a_name()
                });
                if failure.intended && graver {
                    piece.problem = Some((at, failure.problem));
                }
                failure.resume
            }
        }
    }

    fn close(&self, piece: &mut Piece, end: usize, next: usize, pieces: &mut Vec<Piece>) {
        let mut done = std::mem::take(piece);
        piece.start = next;
        done.end = end;
        if done.is_blank() {
            return;
        }
        // "grass, 2 buckets": an amount alone behind a name alone belongs to it.
        let alone = done.problem.is_none()
            && matches!(done.amounts.as_slice(), [only] if only.start == done.start
                && self.reader.behind_of(only.next) == end);
        match pieces.last_mut() {
            Some(before) if alone && done.behind_comma && before.is_name_alone() => {
                before.amounts = done.amounts;
                before.end = end;
            }
            _ => pieces.push(done),
        }
    }

    fn is_hard_separator(&self, at: usize) -> bool {
        matches!(self.tokens[at].kind, Kind::Sign(';' | '\n'))
    }

    fn is_soft_separator(&self, at: usize) -> bool {
        match &self.tokens[at].kind {
            Kind::Sign(sign) => matches!(sign, ',' | '.' | '+' | '&' | '/' | '|' | '•' | '·'),
            Kind::Word(word) => matches!(word.as_str(), "and" | "with" | "plus" | "then"),
            Kind::Number | Kind::Fraction(..) => false,
        }
    }

    fn behind_separators(&self, at: usize) -> usize {
        let mut behind = at;
        while behind < self.tokens.len() && self.is_soft_separator(behind) {
            behind += 1;
        }
        behind
    }

    fn part(&self, piece: Piece) -> Result<SpokenPart, PartsProblem> {
        let Piece {
            start,
            end,
            mut amounts,
            problem,
            ..
        } = piece;
        let counts = |(at, problem): &(usize, AmountProblem)| {
            amounts.is_empty() || *at == start || !problem.may_be_a_name()
        };
        if let Some((_, problem)) = problem.filter(counts) {
            return Err(PartsProblem::Amount(self.reader.explained(problem)));
        }
        // "3 kg manure in a sack": an article inside a name counts nothing.
        let first_leads = amounts.first().is_some_and(|found| found.start == start);
        let spoken = |found: &Found| !found.by_article || (found.start == start);
        if amounts.iter().any(spoken) {
            amounts.retain(spoken);
        }
        let mut amounts = amounts.into_iter();
        let (Some(found), further) = (amounts.next(), amounts.next()) else {
            // "a small bucket of grass": the article began an amount after all.
            let problem = match self.reader.amount(start) {
                Ok(_) => AmountProblem::NoNumber,
                Err(failure) => self.reader.explained(failure.problem),
            };
            return Err(PartsProblem::Amount(problem));
        };
        if further.is_some() {
            return Err(PartsProblem::SeveralAmounts);
        }
        let name = if first_leads {
            self.name(self.reader.behind_of(found.next), end)
        } else if self.reader.behind_of(found.next) == end || self.only_signs(found.next, end) {
            // "grass x 2 buckets"
            let name = self.name(start, found.start);
            name.strip_suffix(" x").map_or(name.clone(), str::to_owned)
        } else {
            return Err(PartsProblem::AmountInside);
        };
        if name.is_empty() {
            return Err(PartsProblem::NoName);
        }
        Ok(SpokenPart {
            amount: found.amount,
            name,
            text: self.typed(start, end).to_owned(),
        })
    }

    fn only_signs(&self, from: usize, to: usize) -> bool {
        self.tokens[from..to]
            .iter()
            .all(|token| matches!(token.kind, Kind::Sign(_)))
    }

    /// The text of tokens with single spaces, without signs at its ends that belong to no name.
    fn name(&self, from: usize, to: usize) -> String {
        let loose = |sign: char| {
            sign.is_whitespace()
                || matches!(
                    sign,
                    ',' | '.'
                        | ':'
                        | '/'
                        | '|'
                        | ';'
                        | '='
                        | '+'
                        | '&'
                        | '*'
                        | '×'
                        | '-'
                        | '–'
                        | '—'
                )
        };
        let mut name = self.typed(from, to).trim_matches(loose);
        // "2 buckets (grass)" and "grass (2 buckets)".
        if let Some(inner) = name
            .strip_prefix('(')
            .and_then(|inner| inner.strip_suffix(')'))
        {
            name = inner.trim_matches(loose);
        } else if name.ends_with('(') {
            name = name.trim_end_matches('(').trim_matches(loose);
        }
        let words: Vec<&str> = name.split_whitespace().collect();
        words.join(" ")
    }

    fn typed(&self, from: usize, to: usize) -> &'a str {
        let tokens = self.tokens.get(from..to).unwrap_or_default();
        match (tokens.first(), tokens.last()) {
            (Some(first), Some(last)) => &self.text[first.span.start..last.span.end],
            _ => "",
        }
    }
}
