//! Which material do these words mean? Names as people say them, with slips, plurals and conditions.
//!
//! In: what was typed, such as "wet leaves", "shreded cardboard" or "zuchini".
//! Out: materials, best first, each with the name that matched, how it matched,
//! and the conditions that the words hold ("shredded"). The order depends on the
//! words alone, so the same words always give the same list.
//!
//! A phrase is first taken whole; only when no name is equal to it are words of
//! condition set aside. The search looks at twelve words at most.

use std::collections::BTreeMap;

use heapwright_terms::{Group, Material, MaterialId};

use crate::distance;
use crate::normalise;
use crate::records::{Condition, Name};

/// Words of a phrase that are looked at.
const MOST_WORDS: usize = 12;
/// Conditions of one phrase that are tried alone and together.
const MOST_CONDITIONS: usize = 4;
/// Cost of one word more in the name than was said.
const EXTRA_WORD: u32 = 100;
/// Cost of one slip of the finger.
const SLIP: u32 = 1000;
/// Cost of a word that was said and not understood.
const UNUSED_WORD: u32 = 1000;
/// A slip in a shorter word is a guess: "coal" is not "cola".
const SHORTEST_SURE_SLIP: usize = 5;
const SUGGESTIONS: usize = 5;

/// How the words met a name, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum MatchRank {
    /// They are the name.
    Exact,
    /// They are the name once words of condition are set aside.
    ExactWithCondition,
    /// The name holds them all.
    AllWords,
    /// The name holds words that begin like them.
    Prefix,
    /// The name holds words that differ by a slip or two.
    Slip,
    /// They hold the name and something that was not understood.
    NameWithin,
    /// Some of them are in the name.
    Partial,
}

/// A material that the words may mean.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Match {
    /// The material.
    pub material: MaterialId,
    /// The name that met the words.
    pub matched_name: String,
    /// How it met them.
    pub rank: MatchRank,
    /// How far it is off within the rank; 0 is nearest, 100 is about one word.
    pub cost: u32,
    /// True for one of the garden's own materials.
    pub own: bool,
    /// Conditions that the words hold and that have a meaning for the material.
    pub condition_ids: Vec<String>,
    /// Words that neither name nor condition explains, in their plain form.
    pub unused_words: Vec<String>,
}

/// What a phrase means.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Resolution {
    /// One material, clearly.
    One(Match),
    /// Several that fit alike, best first: ask which.
    Ambiguous {
        /// The candidates.
        candidates: Vec<Match>,
    },
    /// None that fits well enough.
    Unknown {
        /// The nearest names, best first; may be empty.
        suggestions: Vec<Match>,
    },
}

/// A material of the garden's own list, for [`SearchIndex::with_own`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnMaterial {
    /// Its id, which may not be one of the catalogue's.
    pub id: MaterialId,
    /// Where it comes from; decides which conditions have a meaning.
    pub group: Group,
    /// What people call it.
    pub names: Vec<String>,
}

#[derive(Clone, Debug)]
struct Entry {
    material: usize,
    name: String,
    /// Places in the vocabulary.
    words: Vec<usize>,
}

#[derive(Clone, Debug)]
struct Word {
    text: String,
    /// One bit a letter, to pass over most words without comparing them.
    letters: u32,
}

impl Word {
    fn new(text: &str) -> Self {
        Self {
            text: text.to_owned(),
            letters: letters_of(text),
        }
    }
}

#[derive(Clone, Debug)]
struct Target {
    id: MaterialId,
    own: bool,
    /// One bit a condition that has a meaning for it.
    conditions: u64,
}

/// Names made ready for search.
#[derive(Clone, Debug)]
pub struct SearchIndex {
    targets: Vec<Target>,
    entries: Vec<Entry>,
    vocabulary: Vec<Word>,
    /// Plurals and other spellings of the vocabulary, so that a slip in them is found too.
    other_spellings: Vec<(Word, usize)>,
    places: BTreeMap<String, usize>,
    /// Entries by their words run together, and by their words in alphabetic order.
    by_joined: BTreeMap<String, Vec<usize>>,
    by_sorted: BTreeMap<String, Vec<usize>>,
    conditions: Vec<Condition>,
    /// Words of a condition and its place in `conditions`, long phrases first.
    condition_phrases: Vec<(Vec<String>, usize)>,
}

/// How one word of the phrase meets each word of the vocabulary.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Fit {
    Exact,
    /// Letters still missing.
    Prefix(u8),
    /// Slips.
    Slip(u8),
    None,
}

/// The best that was found for one material.
#[derive(Clone, Copy)]
struct Found {
    rank: MatchRank,
    cost: u32,
    entry: usize,
    /// One bit a condition span that was set aside.
    spans: u32,
    /// One bit a word of the phrase that stayed unused.
    unused: u32,
    /// True when it rests on a slip in a short word.
    guessed: bool,
}

/// Words of a condition inside the phrase.
struct Span {
    condition: usize,
    words: std::ops::Range<usize>,
}

/// What was said.
struct Phrase {
    words: Vec<String>,
    spans: Vec<Span>,
}

impl Phrase {
    /// The spans whose bit is set.
    fn chosen(&self, bits: u32) -> impl Iterator<Item = &Span> {
        let spans = self.spans.iter().enumerate();
        spans
            .filter(move |(place, _)| bits >> place & 1 == 1)
            .map(|(_, span)| span)
    }

    /// Places of the words that are left when those spans are set aside.
    fn rest(&self, bits: u32) -> impl Iterator<Item = usize> {
        (0..self.words.len())
            .filter(move |word| self.chosen(bits).all(|span| !span.words.contains(word)))
    }
}

impl SearchIndex {
    /// An index over materials, their lists of names (in the same order) and the conditions, of which there may be 64.
    pub(crate) fn new(
        materials: &[Material],
        names: &[Vec<Name>],
        conditions: &[Condition],
    ) -> Self {
        let mut phrases: Vec<(Vec<String>, usize)> = Vec::new();
        for (place, condition) in conditions.iter().enumerate().take(64) {
            for said in std::iter::once(&condition.name).chain(&condition.other_words) {
                phrases.push((normalise::tokens(said), place));
            }
        }
        phrases.sort_by(|left, right| right.0.len().cmp(&left.0.len()).then(left.cmp(right)));
        let mut index = Self {
            targets: Vec::new(),
            entries: Vec::new(),
            vocabulary: Vec::new(),
            other_spellings: Vec::new(),
            places: BTreeMap::new(),
            by_joined: BTreeMap::new(),
            by_sorted: BTreeMap::new(),
            conditions: conditions.to_vec(),
            condition_phrases: phrases,
        };
        for (material, names) in materials.iter().zip(names) {
            let texts = names.iter().map(|name| name.text.as_str());
            let texts = texts.chain(std::iter::once(material.name.as_str()));
            index.add(&material.id, material.group, false, texts);
        }
        index
    }

    /// The same index with a garden's own materials, which go first where the words fit alike.
    #[must_use]
    pub fn with_own(&self, own: &[OwnMaterial]) -> Self {
        let mut index = self.clone();
        for material in own {
            let names = material.names.iter().map(String::as_str);
            index.add(&material.id, material.group, true, names);
        }
        index
    }

    fn add<'text>(
        &mut self,
        id: &MaterialId,
        group: Group,
        own: bool,
        names: impl Iterator<Item = &'text str>,
    ) {
        let mut conditions = 0;
        for (place, condition) in self.conditions.iter().enumerate().take(64) {
            if condition.effect_on_id(id, group).is_some() {
                conditions |= 1 << place;
            }
        }
        let material = self.targets.len();
        self.targets.push(Target {
            id: id.clone(),
            own,
            conditions,
        });
        for name in names {
            let spelled = normalise::spelled(name);
            let words: Vec<String> = spelled.iter().map(|(plain, _)| plain.clone()).collect();
            if words.is_empty() {
                continue;
            }
            let entry = self.entries.len();
            let joined = self.by_joined.entry(normalise::joined(&words)).or_default();
            joined.push(entry);
            let sorted = self.by_sorted.entry(normalise::sorted(&words)).or_default();
            sorted.push(entry);
            let words = spelled
                .iter()
                .map(|(plain, spelling)| self.learn(plain, spelling));
            let words = words.collect();
            self.entries.push(Entry {
                material,
                name: name.to_owned(),
                words,
            });
        }
    }

    /// The place of a word in the vocabulary, which grows when the word or its spelling is new.
    fn learn(&mut self, plain: &str, spelling: &str) -> usize {
        let place = match self.places.get(plain) {
            Some(place) => *place,
            None => {
                let place = self.vocabulary.len();
                self.vocabulary.push(Word::new(plain));
                self.places.insert(plain.to_owned(), place);
                for same in normalise::other_spellings(plain) {
                    self.learn_spelling(same, place);
                }
                place
            }
        };
        if spelling != plain {
            self.learn_spelling(spelling, place);
        }
        place
    }

    fn learn_spelling(&mut self, spelling: &str, place: usize) {
        let known = self
            .other_spellings
            .iter()
            .any(|(word, _)| word.text == spelling);
        if !known {
            self.other_spellings.push((Word::new(spelling), place));
        }
    }

    /// The materials that `text` may mean, best first, at most `limit`; empty when no word is known.
    #[must_use]
    pub fn search(&self, text: &str, limit: usize) -> Vec<Match> {
        let phrase = self.phrase(text);
        let mut found = self.ranked(&phrase);
        found.truncate(limit);
        self.told(&phrase, &found)
    }

    /// The one material that `text` means, or what it may have meant.
    ///
    /// One material wins when no other comes within one word of it, and when
    /// every word was understood. A slip in a word of four letters or fewer is
    /// offered as a suggestion, not taken.
    #[must_use]
    pub fn resolve(&self, text: &str) -> Resolution {
        let phrase = self.phrase(text);
        let mut found = self.ranked(&phrase);
        let clear = found.first().filter(|(_, first)| {
            let understood = !matches!(first.rank, MatchRank::NameWithin | MatchRank::Partial);
            understood && !first.guessed
        });
        let Some((material, first)) = clear.copied() else {
            if found.is_empty() {
                found = self.nearest_as_typed(text);
            }
            found.truncate(SUGGESTIONS);
            return Resolution::Unknown {
                suggestions: self.told(&phrase, &found),
            };
        };
        let rivals = found[1..].iter().take_while(|(other, rival)| {
            let yields = self.targets[material].own && !self.targets[*other].own;
            let margin = if yields { 0 } else { EXTRA_WORD };
            rival.rank == first.rank && rival.cost < first.cost + margin
        });
        let rivals = rivals.count();
        found.truncate(rivals + 1);
        let mut candidates = self.told(&phrase, &found);
        if rivals == 0 {
            return Resolution::One(candidates.swap_remove(0));
        }
        Resolution::Ambiguous { candidates }
    }

    /// The names nearest to what was typed, letter by letter.
    ///
    /// Plain forms can hide a slip: "grsas" loses its last letter as if it were a
    /// plural, and no longer looks like "grass".
    fn nearest_as_typed(&self, text: &str) -> Vec<(usize, Found)> {
        let typed = text.trim().to_lowercase();
        if typed.chars().count() < 4 {
            return Vec::new();
        }
        let mut near: Vec<(usize, Found)> = Vec::new();
        for (entry, Entry { material, name, .. }) in self.entries.iter().enumerate() {
            let Some(slips) = distance::slips(&typed, &name.to_lowercase(), 2) else {
                continue;
            };
            #[allow(clippy::cast_possible_truncation)] // two at most
            let found = Found {
                rank: MatchRank::Slip,
                cost: SLIP * slips as u32,
                entry,
                spans: 0,
                unused: 0,
                guessed: true,
            };
            match near.iter_mut().find(|(other, _)| other == material) {
                Some((_, other)) if other.cost > found.cost => *other = found,
                Some(_) => {}
                None => near.push((*material, found)),
            }
        }
        near.sort_by_key(|(material, found)| (found.cost, *material));
        near
    }

    fn phrase(&self, text: &str) -> Phrase {
        let mut words = normalise::tokens(text);
        words.truncate(MOST_WORDS);
        let spans = self.spans(&words);
        Phrase { words, spans }
    }

    /// The best for every material that has anything in common with the phrase, best first.
    fn ranked(&self, phrase: &Phrase) -> Vec<(usize, Found)> {
        let Phrase { words, spans } = phrase;
        let mut best: Vec<Option<Found>> = vec![None; self.targets.len()];
        for chosen in 0..(1_u32 << spans.len()) {
            self.exact(phrase, chosen, &mut best);
        }
        let fits: Vec<Vec<Fit>> = words.iter().map(|word| self.fits(word)).collect();
        self.loose(phrase, &fits, 0, &mut best);
        if !spans.is_empty() {
            self.loose(phrase, &fits, (1 << spans.len()) - 1, &mut best);
        }
        let mut found: Vec<(usize, Found)> = best
            .into_iter()
            .enumerate()
            .filter_map(|(material, found)| found.map(|found| (material, found)))
            .collect();
        found.sort_by_key(|(material, found)| {
            (
                found.rank,
                found.cost,
                !self.targets[*material].own,
                *material,
            )
        });
        found
    }

    /// Conditions said in the phrase, from left to right, long phrases first.
    fn spans(&self, words: &[String]) -> Vec<Span> {
        let mut spans = Vec::new();
        let mut start = 0;
        while start < words.len() && spans.len() < MOST_CONDITIONS {
            let here = self
                .condition_phrases
                .iter()
                .find(|(phrase, _)| words[start..].starts_with(phrase));
            match here {
                Some((phrase, condition)) => {
                    spans.push(Span {
                        condition: *condition,
                        words: start..start + phrase.len(),
                    });
                    start += phrase.len();
                }
                None => start += 1,
            }
        }
        spans
    }

    /// Names equal to the words that are left when the spans in `chosen` are set aside.
    fn exact(&self, phrase: &Phrase, chosen: u32, best: &mut [Option<Found>]) {
        let rest: Vec<String> = phrase
            .rest(chosen)
            .map(|place| phrase.words[place].clone())
            .collect();
        if rest.is_empty() {
            return;
        }
        let joined = self.by_joined.get(&normalise::joined(&rest));
        let sorted = self.by_sorted.get(&normalise::sorted(&rest));
        for entry in joined.into_iter().chain(sorted).flatten() {
            let material = self.entries[*entry].material;
            let chosen_spans = phrase.chosen(chosen);
            let idle = chosen_spans
                .filter(|span| !self.has_meaning(material, span))
                .count() as u32;
            let found = Found {
                rank: if chosen == 0 {
                    MatchRank::Exact
                } else {
                    MatchRank::ExactWithCondition
                },
                cost: (chosen.count_ones() + idle) * EXTRA_WORD,
                entry: *entry,
                spans: chosen,
                unused: 0,
                guessed: false,
            };
            better(&mut best[material], found);
        }
    }

    /// Names near to the words that are left when the spans in `chosen` are set aside.
    fn loose(&self, phrase: &Phrase, fits: &[Vec<Fit>], chosen: u32, best: &mut [Option<Found>]) {
        let rest: Vec<usize> = phrase.rest(chosen).collect();
        for (place, entry) in self.entries.iter().enumerate() {
            if let Some(mut found) = met(entry, phrase, fits, &rest) {
                found.entry = place;
                found.spans = chosen;
                found.cost += chosen.count_ones() * EXTRA_WORD / 2;
                better(&mut best[entry.material], found);
            }
        }
    }

    /// How one word of the phrase meets every word of the vocabulary.
    fn fits(&self, word: &str) -> Vec<Fit> {
        let known = self.places.get(word).copied();
        let most = match word.len() {
            _ if known.is_some() => 0,
            0..=3 => 0,
            4..=7 => 1,
            _ => 2,
        };
        let letters = letters_of(word);
        let fit = |other: &Word| {
            if other.text.len() > word.len() && other.text.starts_with(word) {
                let missing = other.text.len() - word.len();
                return Fit::Prefix(u8::try_from(missing).unwrap_or(u8::MAX));
            }
            // Every slip changes at most two bits.
            let apart = (letters ^ other.letters).count_ones() as usize;
            if most == 0 || apart > 2 * most {
                return Fit::None;
            }
            let slips = distance::slips(word, &other.text, most);
            slips.map_or(Fit::None, |slips| {
                Fit::Slip(u8::try_from(slips).unwrap_or(u8::MAX))
            })
        };
        let mut fits: Vec<Fit> = self.vocabulary.iter().map(fit).collect();
        for (spelling, place) in &self.other_spellings {
            fits[*place] = fits[*place].min(fit(spelling));
        }
        if let Some(known) = known {
            fits[known] = Fit::Exact;
        }
        fits
    }

    fn has_meaning(&self, material: usize, span: &Span) -> bool {
        self.targets[material].conditions >> span.condition & 1 == 1
    }

    fn told(&self, phrase: &Phrase, found: &[(usize, Found)]) -> Vec<Match> {
        let tell = |(material, found): &(usize, Found)| {
            let (mut condition_ids, mut unused) = (Vec::new(), found.unused);
            for span in phrase.chosen(found.spans) {
                if self.has_meaning(*material, span) {
                    let id = &self.conditions[span.condition].id;
                    if !condition_ids.contains(id) {
                        condition_ids.push(id.clone());
                    }
                } else {
                    unused |= span.words.clone().fold(0, |bits, word| bits | 1 << word);
                }
            }
            let said = phrase.words.iter().enumerate();
            Match {
                material: self.targets[*material].id.clone(),
                matched_name: self.entries[found.entry].name.clone(),
                rank: found.rank,
                cost: found.cost,
                own: self.targets[*material].own,
                condition_ids,
                unused_words: said
                    .filter(|(place, _)| unused >> place & 1 == 1)
                    .map(|(_, word)| word.clone())
                    .collect(),
            }
        };
        found.iter().map(tell).collect()
    }
}

/// How the words at `rest` meet one name; `None` when they have nothing in common.
fn met(entry: &Entry, phrase: &Phrase, fits: &[Vec<Fit>], rest: &[usize]) -> Option<Found> {
    let (mut touched, mut exact, mut unused) = (0_u64, 0_u64, 0_u32);
    let (mut slips, mut missing, mut known) = (0_u32, 0_u32, 0_u32);
    let mut guessed = false;
    for word in rest {
        let nearest = entry
            .words
            .iter()
            .take(64)
            .enumerate()
            .map(|(place, known)| (fits[*word][*known], place))
            .min();
        let (fit, place) = nearest?;
        let bit = 1 << place;
        match fit {
            Fit::Exact => {
                exact |= bit;
                known += 1;
            }
            Fit::Prefix(letters) => missing += u32::from(letters),
            Fit::Slip(count) => {
                slips += u32::from(count);
                guessed |= phrase.words[*word].len() < SHORTEST_SURE_SLIP;
            }
            Fit::None => {
                unused |= 1 << word;
                continue;
            }
        }
        touched |= bit;
    }
    if touched == 0 {
        return None;
    }
    let whole = entry.words.len().min(64) as u32;
    let extra = (whole - touched.count_ones()) * EXTRA_WORD;
    let left_over = unused.count_ones() * UNUSED_WORD;
    let (rank, cost) = if unused == 0 {
        if slips > 0 {
            (MatchRank::Slip, slips * SLIP + extra)
        } else if missing > 0 {
            (MatchRank::Prefix, extra + missing.min(EXTRA_WORD - 1))
        } else {
            (MatchRank::AllWords, extra)
        }
    } else if exact.count_ones() == whole {
        (MatchRank::NameWithin, left_over)
    } else {
        // What was understood exactly goes before what was guessed.
        let inexact = rest.len() as u32 - unused.count_ones() - known;
        (
            MatchRank::Partial,
            left_over + inexact * UNUSED_WORD / 2 + extra,
        )
    };
    Some(Found {
        rank,
        cost,
        entry: 0,
        spans: 0,
        unused,
        guessed,
    })
}

fn better(best: &mut Option<Found>, found: Found) {
    if best.is_none_or(|best| (found.rank, found.cost) < (best.rank, best.cost)) {
        *best = Some(found);
    }
}

fn letters_of(word: &str) -> u32 {
    word.bytes().fold(0, |bits, byte| bits | 1 << (byte & 31))
}
