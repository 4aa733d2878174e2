//! What the settings say: units and clock, the journal and how it is kept; the garden and its vessels.

mod garden;
mod vessels;

pub use garden::{
    describe_garden, elevation_hint, elevation_label, garden_name, garden_name_hint, latitude,
    latitude_hint, longitude, longitude_hint, month_label, months_hint, nothing_of_garden,
    other_sign, place_line, place_needs_both, place_why, save_garden, your_garden,
};
pub use heapwright_texts::Clock;
pub use vessels::{
    back, density_line, empty_label, full_label, holds_label, holds_line, into_journal,
    known_volume, next, no_material, no_volume, no_weight, not_heavier, not_now, only_here,
    save_density, save_volume, step_empty, step_empty_how, step_material, step_material_how,
    step_water, step_water_heavy, step_water_how, unusual_vessel, vessel_found, vessel_usual,
    vessels_why, water_label, weigh, which_material, which_vessel, your_vessels,
};

use heapwright_texts::Locale;
use heapwright_texts::messages::settings as texts;

use crate::page::number;

/// Heading of units, clock and light.
#[must_use]
pub fn shown(locale: Locale) -> &'static str {
    texts::shown(locale)
}

/// Units.
#[must_use]
pub fn units(locale: Locale) -> &'static str {
    texts::units(locale)
}

/// The clock.
#[must_use]
pub fn clock(locale: Locale) -> &'static str {
    texts::clock(locale)
}

/// As the device has it.
#[must_use]
pub fn as_device(locale: Locale) -> &'static str {
    texts::as_device(locale)
}

/// Hours to 24.
#[must_use]
pub fn hours_24(locale: Locale) -> &'static str {
    texts::hours_24(locale)
}

/// Hours to 12.
#[must_use]
pub fn hours_12(locale: Locale) -> &'static str {
    texts::hours_12(locale)
}

/// What the clock does not reach.
#[must_use]
pub fn clock_hint(locale: Locale) -> &'static str {
    texts::clock_hint(locale)
}

/// Light.
#[must_use]
pub fn light(locale: Locale) -> &'static str {
    texts::light(locale)
}

/// For the sun.
#[must_use]
pub fn bright_sun(locale: Locale) -> &'static str {
    texts::bright_sun(locale)
}

/// For the evening.
#[must_use]
pub fn dark(locale: Locale) -> &'static str {
    texts::dark(locale)
}

/// Heading of the journal.
#[must_use]
pub fn your_journal(locale: Locale) -> &'static str {
    texts::your_journal(locale)
}

/// It was never exported.
#[must_use]
pub fn never_exported(locale: Locale) -> &'static str {
    texts::never_exported(locale)
}

/// When it was exported last; `ago` as [`crate::ago_text`] says it.
#[must_use]
pub fn exported_line(ago: &str, locale: Locale) -> String {
    texts::Exported { ago }.said(locale)
}

/// Writes the journal to a file.
#[must_use]
pub fn export(locale: Locale) -> &'static str {
    texts::export(locale)
}

/// Writes its pictures to a file.
#[must_use]
pub fn export_pictures(locale: Locale) -> &'static str {
    texts::export_pictures(locale)
}

/// Why pictures have a file of their own.
#[must_use]
pub fn pictures_hint(locale: Locale) -> &'static str {
    texts::pictures_hint(locale)
}

/// The field for a file.
#[must_use]
pub fn import(locale: Locale) -> &'static str {
    texts::import(locale)
}

/// What can be imported.
#[must_use]
pub fn import_hint(locale: Locale) -> &'static str {
    texts::import_hint(locale)
}

/// A file is being read.
#[must_use]
pub fn reading(locale: Locale) -> &'static str {
    texts::reading(locale)
}

/// Name of what is told of a file.
#[must_use]
pub fn file_holds(locale: Locale) -> &'static str {
    texts::file_holds(locale)
}

/// Takes in a file.
#[must_use]
pub fn take_in(locale: Locale) -> &'static str {
    texts::take_in(locale)
}

/// Leaves a file alone.
#[must_use]
pub fn leave_it(locale: Locale) -> &'static str {
    texts::leave_it(locale)
}

/// A file of pictures was cut or changed.
#[must_use]
pub fn pictures_cut(locale: Locale) -> &'static str {
    texts::pictures_cut(locale)
}

/// How many entries were taken in.
#[must_use]
pub fn taken_in(count: u64, locale: Locale) -> String {
    texts::TakenIn {
        count: number(count),
    }
    .said(locale)
}

/// How many pictures were taken in.
#[must_use]
pub fn pictures_taken_in(count: u64, locale: Locale) -> String {
    texts::PicturesTakenIn {
        count: number(count),
    }
    .said(locale)
}

/// Not all pictures of the journal are here to be exported.
#[must_use]
pub fn pictures_missing(count: u64, locale: Locale) -> String {
    texts::PicturesMissing {
        count: number(count),
    }
    .said(locale)
}

/// Asks the browser to keep the journal.
#[must_use]
pub fn keep(locale: Locale) -> &'static str {
    texts::keep(locale)
}

/// Why the browser is asked, before it is.
#[must_use]
pub fn keep_why(locale: Locale) -> &'static str {
    texts::keep_why(locale)
}

/// The browser was asked and promised nothing.
#[must_use]
pub fn keep_refused(locale: Locale) -> &'static str {
    texts::keep_refused(locale)
}

/// Heading of what may be lost.
#[must_use]
pub fn what_clears(locale: Locale) -> &'static str {
    texts::what_clears(locale)
}

/// Ways in which a browser loses a journal.
///
/// Source: WebKit's announcement of full third-party cookie blocking and more, 24 March 2020, for
/// the seven days; the Storage Standard of the WHATWG for eviction under pressure.
#[must_use]
pub fn clearers(locale: Locale) -> [&'static str; 4] {
    [
        texts::clearer_website_data(locale),
        texts::clearer_seven_days(locale),
        texts::clearer_private_window(locale),
        texts::clearer_nearly_full(locale),
    ]
}

/// Heading of the page on the home screen.
#[must_use]
pub fn on_the_home_screen(locale: Locale) -> &'static str {
    texts::on_the_home_screen(locale)
}

/// It runs from there.
#[must_use]
pub fn is_installed(locale: Locale) -> &'static str {
    texts::is_installed(locale)
}

/// What the button does.
#[must_use]
pub fn install_hint(locale: Locale) -> &'static str {
    texts::install_hint(locale)
}

/// Puts it there.
#[must_use]
pub fn install(locale: Locale) -> &'static str {
    texts::install(locale)
}

/// How to do it by hand, where no button can.
#[must_use]
pub fn install_by_hand(locale: Locale) -> [&'static str; 3] {
    [
        texts::install_iphone(locale),
        texts::install_android(locale),
        texts::install_computer(locale),
    ]
}

/// Heading of the version.
#[must_use]
pub fn this_version(locale: Locale) -> &'static str {
    texts::this_version(locale)
}

/// A new version waits.
#[must_use]
pub fn update_waits(locale: Locale) -> &'static str {
    texts::update_waits(locale)
}

/// Takes it.
#[must_use]
pub fn update_take(locale: Locale) -> &'static str {
    texts::update_take(locale)
}

/// A form is open.
#[must_use]
pub fn update_form(locale: Locale) -> &'static str {
    texts::update_form(locale)
}

/// Looks for one.
#[must_use]
pub fn update_look(locale: Locale) -> &'static str {
    texts::update_look(locale)
}

/// It looks.
#[must_use]
pub fn update_looking(locale: Locale) -> &'static str {
    texts::update_looking(locale)
}

/// There is none.
#[must_use]
pub fn update_none(locale: Locale) -> &'static str {
    texts::update_none(locale)
}

/// It could not look.
#[must_use]
pub fn update_no_signal(locale: Locale) -> &'static str {
    texts::update_no_signal(locale)
}

/// Which version this is.
#[must_use]
pub fn version_line(version: &str, locale: Locale) -> String {
    texts::Version { version }.said(locale)
}

/// How much room is used, and how much there may be; `None` when the browser does not tell.
#[must_use]
pub fn room_line(used_bytes: f64, most_bytes: f64, locale: Locale) -> Option<String> {
    (most_bytes > 0.0).then(|| {
        texts::Room {
            most: &bytes_text(most_bytes, locale),
            used: &bytes_text(used_bytes, locale),
        }
        .said(locale)
    })
}

/// Decimal units, as devices count their room.
fn bytes_text(bytes: f64, locale: Locale) -> String {
    let written = |value: f64| {
        let decimals = usize::from(value < 10.0);
        locale.decimals(value, decimals, decimals)
    };
    match bytes {
        ..1e6 => texts::Kilobytes {
            number: &written(bytes / 1e3),
        }
        .said(locale),
        ..1e9 => texts::Megabytes {
            number: &written(bytes / 1e6),
        }
        .said(locale),
        _ => texts::Gigabytes {
            number: &written(bytes / 1e9),
        }
        .said(locale),
    }
}

/// Heading of the aim.
#[must_use]
pub fn the_aim(locale: Locale) -> &'static str {
    texts::the_aim(locale)
}

/// Starts the balance anew.
#[must_use]
pub fn start_again(locale: Locale) -> &'static str {
    texts::start_again(locale)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn room_is_told_in_units_that_devices_use() {
        assert_eq!(
            room_line(3_140_000.0, 12.4e9, Locale::default()).unwrap(),
            "The page and its journal use 3.1\u{a0}MB of the 12\u{a0}GB that the browser allows them."
        );
        assert_eq!(room_line(1.0, 0.0, Locale::default()), None);
    }
}
