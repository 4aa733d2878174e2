//! What is read off a picture, day by day, and the words that stand in it.

use heapwright_texts::Locale;
use heapwright_texts::messages::pictures_read as texts;

pub use heapwright_texts::messages::pictures_read::{
    day_after, day_before, done_head, field_moisture, field_oxygen, field_temperature, how_to_read,
    key_half, key_nine_of_ten, key_reading, mark_hot, mark_short_of_air, mark_too_dry,
    mark_too_wet, nine_of_ten_draws, now, place_not_told, value_core_temperature,
    value_lowest_oxygen, value_moisture, value_volume,
};

/// What is done to a heap, in a word below a picture: fed, turned, watered, covered, taken out.
#[must_use]
pub fn doings(locale: Locale) -> [&'static str; 5] {
    [
        texts::doing_fed(locale),
        texts::doing_turned(locale),
        texts::doing_watered(locale),
        texts::doing_covered(locale),
        texts::doing_taken_out(locale),
    ]
}

/// The words at the rim of the mix map: moisture, green, brown, wet, dry, nine of ten.
#[must_use]
pub fn map_words(locale: Locale) -> [&'static str; 6] {
    [
        texts::map_moisture(locale),
        texts::map_green(locale),
        texts::map_brown(locale),
        texts::map_wet(locale),
        texts::map_dry(locale),
        texts::map_nine_of_ten(locale),
    ]
}

/// What a picture over time is called: "Core temperature over time".
#[must_use]
pub fn picture_name(value: &str, locale: Locale) -> String {
    texts::PictureName { value }.said(locale)
}

/// A date at an axis: "3 Dec".
#[must_use]
pub fn short_date(day: u8, month: u8, locale: Locale) -> String {
    texts::ShortDate {
        day: f64::from(day),
        month: &locale.short_month(month),
    }
    .said(locale)
}

/// What a probe showed, in the table of a picture: "probe 47 °C".
#[must_use]
pub fn probe_showed(temperature: &str, locale: Locale) -> String {
    texts::ProbeShowed { temperature }.said(locale)
}

/// The same where it was read, in the cut: "47 °C read".
#[must_use]
pub fn temperature_read(temperature_c: f64, locale: Locale) -> String {
    texts::TemperatureRead {
        temperature: &locale.temperature(temperature_c),
    }
    .said(locale)
}

/// A day of a picture of one run: "12 June 2026: 54 °C."
#[must_use]
pub fn day_read(day: &str, value: &str, locale: Locale) -> String {
    texts::DayRead {
        day: &capital(day),
        value,
    }
    .said(locale)
}

/// A day of a picture of many runs: "12 June 2026: 54 °C likely; half of the runs 50 to 57, nine of
/// ten 48 to 60."
#[must_use]
pub fn day_read_of_many(
    day: &str,
    value: &str,
    half: &str,
    nine_of_ten: &str,
    locale: Locale,
) -> String {
    texts::DayReadOfMany {
        day: &capital(day),
        half,
        nine: nine_of_ten,
        value,
    }
    .said(locale)
}

/// What was done on the day that is read: "Done and read on this day: fed, probe 47 °C."
#[must_use]
pub fn done_on_the_day(done: &str, locale: Locale) -> String {
    texts::DoneOnTheDay { done }.said(locale)
}

/// The line of the key for a way to go on, where many runs were made of it.
#[must_use]
pub fn key_middle(plan: &str, locale: Locale) -> String {
    texts::KeyMiddle { plan }.said(locale)
}

/// Heads of the table of a picture, with those of many runs when there are some.
#[must_use]
pub fn table_heads(unit: &str, has_bands: bool, locale: Locale) -> Vec<String> {
    let mut heads = vec![
        texts::head_day(locale).to_owned(),
        texts::HeadMiddle { unit }.said(locale),
    ];
    if has_bands {
        heads.push(texts::head_half(locale).to_owned());
        heads.push(texts::head_nine_of_ten(locale).to_owned());
    }
    heads
}

/// "50 to 57"
#[must_use]
pub fn range(low: &str, high: &str, locale: Locale) -> String {
    texts::Range { low, high }.said(locale)
}

/// Heads of the table of readings: day, where, probe, core as computed.
#[must_use]
pub fn reading_heads(locale: Locale) -> [&'static str; 4] {
    [
        texts::head_day(locale),
        texts::head_where(locale),
        texts::head_probe(locale),
        texts::head_computed(locale),
    ]
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
        let locale = Locale::default();
        assert_eq!(day_read("now", "54 °C", locale), "Now: 54 °C.");
        assert_eq!(
            day_read_of_many("12 June 2026", "54 °C", "50 to 57", "48 to 60", locale),
            "12 June 2026: 54 °C likely; half of the runs 50 to 57, nine of ten 48 to 60."
        );
        assert_eq!(
            done_on_the_day("fed, probe 47 °C", locale),
            "Done and read on this day: fed, probe 47 °C."
        );
    }

    #[test]
    fn dates_at_an_axis_are_short() {
        let locale = Locale::default();
        assert_eq!(short_date(3, 12, locale), "3\u{a0}Dec");
        assert_eq!(short_date(15, 1, locale), "15\u{a0}Jan");
    }
}
