//! How does a new input come from old ones? Seeded changes: the same seed gives the same inputs.

use crate::tree;

/// Most bytes of the few inputs that are blown up.
const HUGE_BYTES: usize = 65_536;
/// One input in so many is blown up.
const HUGE_EVERY: usize = 2000;

/// Makes inputs out of a corpus and a dictionary.
#[derive(Clone, Debug)]
pub struct Mutator {
    state: u64,
    dictionary: &'static [&'static str],
    ordinary_bytes: usize,
}

impl Mutator {
    /// A mutator for one seed; but for the few that are blown up, inputs have at most
    /// `ordinary_bytes`.
    #[must_use]
    pub fn new(seed: u64, dictionary: &'static [&'static str], ordinary_bytes: usize) -> Self {
        // Spread the seed, so that 1 and 2 do not begin alike; xorshift must not begin at 0.
        let state = seed.wrapping_add(1).wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1;
        Self {
            state,
            dictionary,
            ordinary_bytes,
        }
    }

    /// The next input: a member of the corpus, or nothing, with one to eight changes. JSON changes
    /// by whole values in three of four inputs, if `structured`.
    pub fn next_input(&mut self, corpus: &[Vec<u8>], structured: bool) -> Vec<u8> {
        let mut input = self.member(corpus).to_vec();
        if structured && self.below(4) > 0 {
            for _ in 0..=self.below(4) {
                let other = self.member(corpus);
                if let Some(new) = tree::changed(self, &input, other)
                    && new.len() <= self.ordinary_bytes
                {
                    input = new;
                }
            }
            return input;
        }
        for _ in 0..=self.below(8) {
            self.change(&mut input, corpus);
        }
        input.truncate(self.ordinary_bytes);
        if self.below(HUGE_EVERY) == 0 {
            self.blow_up(&mut input);
        }
        input
    }

    fn change(&mut self, input: &mut Vec<u8>, corpus: &[Vec<u8>]) {
        match self.below(10) {
            0 => self.flip_bit(input),
            1 => self.set_byte(input),
            2..=4 => self.insert_word(input),
            5 => self.replace_with_word(input),
            6 => self.duplicate(input),
            7 => self.cut_out(input),
            8 => {
                let end = self.below(input.len() + 1);
                input.truncate(end);
            }
            _ => self.splice(input, corpus),
        }
    }

    fn flip_bit(&mut self, input: &mut [u8]) {
        let (place, bit) = (self.below(input.len()), self.below(8));
        if let Some(byte) = input.get_mut(place) {
            *byte ^= 1 << bit;
        }
    }

    fn set_byte(&mut self, input: &mut [u8]) {
        let (place, value) = (self.below(input.len()), self.next().to_le_bytes()[0]);
        if let Some(byte) = input.get_mut(place) {
            *byte = value;
        }
    }

    fn insert_word(&mut self, input: &mut Vec<u8>) {
        let place = self.below(input.len() + 1);
        let word = self.word();
        input.splice(place..place, word.bytes());
    }

    fn replace_with_word(&mut self, input: &mut Vec<u8>) {
        let (start, end) = self.stretch(input.len());
        let word = self.word();
        input.splice(start..end, word.bytes());
    }

    fn duplicate(&mut self, input: &mut Vec<u8>) {
        let (start, end) = self.stretch(input.len());
        let copy = input[start..end].to_vec();
        let place = self.below(input.len() + 1);
        input.splice(place..place, copy);
    }

    fn cut_out(&mut self, input: &mut Vec<u8>) {
        let (start, end) = self.stretch(input.len());
        input.drain(start..end);
    }

    fn splice(&mut self, input: &mut Vec<u8>, corpus: &[Vec<u8>]) {
        let place = self.below(input.len() + 1);
        let other = self.member(corpus);
        let start = self.below(other.len() + 1);
        input.truncate(place);
        input.extend_from_slice(&other[start..]);
    }

    fn blow_up(&mut self, input: &mut Vec<u8>) {
        let (start, end) = self.stretch(input.len());
        let unit = input[start..end].to_vec();
        if !unit.is_empty() {
            let times = self.below(HUGE_BYTES / unit.len()) + 1;
            input.splice(start..end, unit.repeat(times));
        }
    }

    pub(crate) fn word(&mut self) -> &'static str {
        let place = self.below(self.dictionary.len());
        self.dictionary.get(place).copied().unwrap_or("")
    }

    fn member<'a>(&mut self, corpus: &'a [Vec<u8>]) -> &'a [u8] {
        let place = self.below(corpus.len());
        corpus.get(place).map_or(&[], Vec::as_slice)
    }

    /// Start and end of a stretch inside a length; short ones are the likelier.
    fn stretch(&mut self, length: usize) -> (usize, usize) {
        let start = self.below(length + 1);
        let most = self.below(length - start + 1);
        (start, start + self.below(most + 1))
    }

    /// A number below `bound`; 0 when the bound is 0.
    pub(crate) fn below(&mut self, bound: usize) -> usize {
        // The modulus favours small numbers by less than one part in 2^40 here.
        let bound = bound.max(1) as u64;
        usize::try_from(self.next() % bound).unwrap_or(0)
    }

    /// The next of a xorshift64* stream (Vigna 2016, "An experimental exploration of Marsaglia's
    /// xorshift generators, scrambled").
    fn next(&mut self) -> u64 {
        self.state ^= self.state >> 12;
        self.state ^= self.state << 25;
        self.state ^= self.state >> 27;
        self.state.wrapping_mul(0x2545_f491_4f6c_dd1d) >> 3
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn next_input_depends_on_the_seed_alone() {
        let corpus = vec![b"2 buckets grass".to_vec(), b"3 kg".to_vec()];
        let inputs = |seed| {
            let mut mutator = Mutator::new(seed, &["bucket", "½"], 512);
            (0..500)
                .map(|_| mutator.next_input(&corpus, false))
                .collect::<Vec<_>>()
        };
        assert_eq!(inputs(7), inputs(7));
        assert_ne!(inputs(7), inputs(8));
        let mut distinct = inputs(7);
        distinct.sort();
        distinct.dedup();
        assert!(distinct.len() > 300, "{} distinct inputs", distinct.len());
    }

    #[test]
    fn next_input_makes_do_with_nothing() {
        let mut mutator = Mutator::new(0, &[], 512);
        for _ in 0..1000 {
            assert!(mutator.next_input(&[], false).len() <= HUGE_BYTES + 512);
        }
    }
}
