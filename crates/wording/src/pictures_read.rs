//! What is read off a picture, sample by sample, and the words that stand in it.

/// What is done to a heap, in a word below a picture: fed, turned, watered, covered, taken out.
pub const DOINGS: [&str; 5] = ["fed", "turned", "watered", "covered", "taken out"];

/// What the present is called at an axis of days.
pub const NOW: &str = "now";

/// How to read the picture with keys, for those who reach it with them.
pub const HOW_TO_READ: &str =
    "Arrow keys move from day to day, Page Up and Page Down by a week, Home and End to the ends.";

/// The button that reads the day before.
pub const DAY_BEFORE: &str = "A day earlier";

/// The button that reads the day after.
pub const DAY_AFTER: &str = "A day later";

/// The head of the column of a table that says what was done.
pub const DONE_HEAD: &str = "Done and read";

/// What the ring around the cloud of the mix map means.
pub const NINE_OF_TEN_DRAWS: &str = "nine of ten draws";

/// What a picture over time is called: "Core temperature over time".
#[must_use]
pub fn picture_name(value: &str) -> String {
    format!("{value} over time")
}

/// A date at an axis: "3 Dec".
#[must_use]
pub fn short_date(day: u8, month: usize) -> String {
    const MONTHS: [&str; 12] = [
        "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
    ];
    let month = month.clamp(1, MONTHS.len());
    format!("{day}\u{a0}{}", MONTHS[month - 1])
}

/// What a probe showed, in the table of a picture: "probe 47 °C".
#[must_use]
pub fn probe_showed(temperature: &str) -> String {
    format!("probe {temperature}")
}

/// A day of a picture of one run: "12 June 2026: 54 °C."
#[must_use]
pub fn day_read(day: &str, value: &str) -> String {
    format!("{}: {value}.", capital(day))
}

/// A day of a picture of many runs: "12 June 2026: 54 °C likely; half of the runs 50 to 57, nine of
/// ten 48 to 60."
#[must_use]
pub fn day_read_of_many(day: &str, value: &str, half: &str, nine_of_ten: &str) -> String {
    format!(
        "{}: {value} likely; half of the runs {half}, nine of ten {nine_of_ten}.",
        capital(day)
    )
}

/// What was done on the day that is read: "Done and read on this day: fed, probe 47 °C."
#[must_use]
pub fn done_on_the_day(done: &str) -> String {
    format!("Done and read on this day: {done}.")
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().chain(letters).collect())
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_is_read_in_a_sentence() {
        assert_eq!(day_read("now", "54 °C"), "Now: 54 °C.");
        assert_eq!(
            day_read_of_many("12 June 2026", "54 °C", "50 to 57", "48 to 60"),
            "12 June 2026: 54 °C likely; half of the runs 50 to 57, nine of ten 48 to 60."
        );
        assert_eq!(
            done_on_the_day("fed, probe 47 °C"),
            "Done and read on this day: fed, probe 47 °C."
        );
    }

    #[test]
    fn dates_at_an_axis_are_short() {
        assert_eq!(short_date(3, 12), "3\u{a0}Dec");
        assert_eq!(short_date(15, 1), "15\u{a0}Jan");
    }
}
