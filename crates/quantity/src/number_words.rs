//! Which words are numbers, parts of one, or stand in their place?

/// True for the "x" of "2 x buckets".
pub(crate) fn is_times(word: &str) -> bool {
    word == "x"
}

/// True for words that say that a count is about right.
pub(crate) fn is_about(word: &str) -> bool {
    matches!(
        word,
        "about" | "approx" | "approximately" | "around" | "circa" | "roughly"
    )
}

/// True for words that stand where a number should.
pub(crate) fn is_vague(word: &str) -> bool {
    matches!(
        word,
        "some" | "few" | "several" | "many" | "lots" | "plenty" | "loads" | "any"
    )
}

/// How many of the named part make one: 4 for "quarter".
pub(crate) fn parts_of_one(word: &str) -> Option<f64> {
    Some(match word {
        "half" | "halves" => 2.0,
        "third" | "thirds" => 3.0,
        "quarter" | "quarters" | "fourth" | "fourths" => 4.0,
        "fifth" | "fifths" => 5.0,
        "sixth" | "sixths" => 6.0,
        "eighth" | "eighths" => 8.0,
        "tenth" | "tenths" => 10.0,
        _ => return None,
    })
}

/// 1 to 19.
pub(crate) fn small_number(word: &str) -> Option<u32> {
    const WORDS: [&str; 19] = [
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "thirteen",
        "fourteen",
        "fifteen",
        "sixteen",
        "seventeen",
        "eighteen",
        "nineteen",
    ];
    let place = WORDS.iter().position(|known| *known == word)?;
    u32::try_from(place + 1).ok()
}

/// 20, 30 ... 90.
pub(crate) fn tens_number(word: &str) -> Option<u32> {
    const WORDS: [&str; 8] = [
        "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety",
    ];
    let place = WORDS.iter().position(|known| *known == word)?;
    u32::try_from(place * 10 + 20).ok()
}
