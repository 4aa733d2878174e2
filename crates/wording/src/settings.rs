//! What the settings say: units and clock, the journal and how it is kept, the garden, its vessels.

use heapwright_journal::Moment;
use heapwright_journal::content::Place;
use heapwright_quantity::{UnitSystem, volume_text};

use crate::journal::day_text;

/// A space that no line breaks at, between a number and its unit.
const NO_BREAK: char = '\u{a0}';

/// How the time of day is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Clock {
    /// "18:05".
    #[default]
    Hours24,
    /// "6:05 pm".
    Hours12,
}

/// The time of day by a clock: "18:05" or "6:05 pm".
#[must_use]
pub fn clock_text(moment: Moment, clock: Clock) -> String {
    let local = moment.local();
    let (hour, minute) = (local.hour(), local.minute());
    match clock {
        Clock::Hours24 => format!("{hour:02}:{minute:02}"),
        Clock::Hours12 => {
            let half = if hour < 12 { "am" } else { "pm" };
            let of_twelve = if hour % 12 == 0 { 12 } else { hour % 12 };
            format!("{of_twelve}:{minute:02}{NO_BREAK}{half}")
        }
    }
}

/// Heading of units, clock and light.
pub const SHOWN: &str = "How things are shown";
/// Units.
pub const UNITS: &str = "Units";
/// The clock.
pub const CLOCK: &str = "Clock";
/// As the device has it.
pub const AS_DEVICE: &str = "As the device";
/// Hours to 24.
pub const HOURS_24: &str = "24 hours, 18:05";
/// Hours to 12.
pub const HOURS_12: &str = "12 hours, 6:05\u{a0}pm";
/// What the clock does not reach.
pub const CLOCK_HINT: &str =
    "Fields in which a time is entered are drawn by the browser and follow the device.";
/// Light.
pub const LIGHT: &str = "Light";
/// For the sun.
pub const BRIGHT_SUN: &str = "Bright sun";
/// For the evening.
pub const DARK: &str = "Dark";

/// Heading of the journal.
pub const YOUR_JOURNAL: &str = "Your journal";
/// It was never exported.
pub const NEVER_EXPORTED: &str = "Never exported.";

/// When it was exported last; `ago` as [`crate::ago_text`] says it.
#[must_use]
pub fn exported_line(ago: &str) -> String {
    format!("Last exported {ago}.")
}

/// Writes the journal to a file.
pub const EXPORT: &str = "Export the journal";
/// Writes its pictures to a file.
pub const EXPORT_PICTURES: &str = "Export its pictures";
/// Why pictures have a file of their own.
pub const PICTURES_HINT: &str = "Pictures are large and have a file of their own. Import both files to have everything again, in either order.";
/// The field for a file.
pub const IMPORT: &str = "Import a file";
/// What can be imported.
pub const IMPORT_HINT: &str = "A journal or its pictures, as they were exported, of at most 256\u{a0}MiB. You see what a journal holds before anything is taken in.";
/// A file is being read.
pub const READING: &str = "Reading\u{2026}";
/// Name of what is told of a file.
pub const FILE_HOLDS: &str = "What the file holds";
/// Takes in a file.
pub const TAKE_IN: &str = "Take in";
/// Leaves a file alone.
pub const LEAVE_IT: &str = "Leave it";
/// A file of pictures was cut or changed.
pub const PICTURES_CUT: &str =
    "Some lines of this file hold no picture and were left out: it was cut or changed.";

/// How many entries were taken in.
#[must_use]
pub fn taken_in(count: u64) -> String {
    match count {
        1 => "Taken in: 1 entry.".to_owned(),
        _ => format!("Taken in: {count} entries."),
    }
}

/// How many pictures were taken in.
#[must_use]
pub fn pictures_taken_in(count: u64) -> String {
    match count {
        1 => "Taken in: 1 picture.".to_owned(),
        _ => format!("Taken in: {count} pictures."),
    }
}

/// Not all pictures of the journal are here to be exported.
#[must_use]
pub fn pictures_missing(count: u64) -> String {
    match count {
        1 => "1 picture of the journal is not on this device, so it is not in the file.".to_owned(),
        _ => format!(
            "{count} pictures of the journal are not on this device, so they are not in the file."
        ),
    }
}

/// Asks the browser to keep the journal.
pub const KEEP: &str = "Keep this journal";
/// Why the browser is asked, before it is.
pub const KEEP_WHY: &str = "When a device runs short of room, a browser may clear what pages keep. It can promise to spare this journal; some browsers ask you first.";
/// The browser was asked and promised nothing.
pub const KEEP_REFUSED: &str = "The browser made no promise this time. It is more willing once the page is on your home screen or has been used for some days. Until then, export the journal now and then.";
/// Heading of what may be lost.
pub const WHAT_CLEARS: &str = "What could clear this journal";
/// Ways in which a browser loses a journal.
///
/// Source: WebKit's announcement of full third-party cookie blocking and more, 24 March 2020, for
/// the seven days; the Storage Standard of the WHATWG for eviction under pressure.
pub const CLEARERS: [&str; 4] = [
    "Clearing \u{201c}website data\u{201d} or \u{201c}history and website data\u{201d} in the browser's settings.",
    "Safari on iPhone, iPad and Mac: a page in a tab loses what it keeps after seven days of browsing without a visit to it. A page on the home screen or in the Dock is spared.",
    "A private window: it forgets everything when it is closed.",
    "A device that is nearly full, as long as the browser has not promised to keep the journal.",
];

/// Heading of the page on the home screen.
pub const ON_THE_HOME_SCREEN: &str = "On the home screen";
/// It runs from there.
pub const IS_INSTALLED: &str = "This page runs from your home screen or as a program of its own.";
/// What the button does.
pub const INSTALL_HINT: &str =
    "There the page opens without a signal, has no address bar, and its journal is spared longest.";
/// Puts it there.
pub const INSTALL: &str = "Put it there";
/// How to do it by hand, where no button can.
pub const INSTALL_BY_HAND: [&str; 3] = [
    "iPhone and iPad, in Safari: the Share button, then \u{201c}Add to Home Screen\u{201d}.",
    "Android: the browser's menu, then \u{201c}Install\u{201d} or \u{201c}Add to Home screen\u{201d}.",
    "Computer: the install sign in the address bar, or in Safari \u{201c}Add to Dock\u{201d} in the File menu.",
];

/// Heading of the version.
pub const THIS_VERSION: &str = "Version of the page";
/// A new version waits.
pub const UPDATE_WAITS: &str = "A new version is here and waits. It takes over when you say so, or at the next start once all tabs of the page were closed.";
/// Takes it.
pub const UPDATE_TAKE: &str = "Use the new version";
/// A form is open.
pub const UPDATE_FORM: &str =
    "Something is being entered. Save it or close the form first: the new version waits.";
/// Looks for one.
pub const UPDATE_LOOK: &str = "Look for a new version";
/// It looks.
pub const UPDATE_LOOKING: &str = "Looking\u{2026}";
/// There is none.
pub const UPDATE_NONE: &str = "This is the newest version there is.";
/// It could not look.
pub const UPDATE_NO_SIGNAL: &str = "No signal: try again when there is one.";

/// Which version this is.
#[must_use]
pub fn version_line(version: &str) -> String {
    format!("This is Heapwright{NO_BREAK}{version}.")
}

/// How much room is used, and how much there may be; `None` when the browser does not tell.
#[must_use]
pub fn room_line(used_bytes: f64, most_bytes: f64) -> Option<String> {
    (most_bytes > 0.0).then(|| {
        format!(
            "The page and its journal use {} of the {} that the browser allows them.",
            bytes_text(used_bytes),
            bytes_text(most_bytes)
        )
    })
}

/// Decimal units, as devices count their room.
fn bytes_text(bytes: f64) -> String {
    let (value, unit) = match bytes {
        ..1e6 => (bytes / 1e3, "kB"),
        ..1e9 => (bytes / 1e6, "MB"),
        _ => (bytes / 1e9, "GB"),
    };
    let number = if value < 10.0 {
        format!("{value:.1}")
    } else {
        format!("{value:.0}")
    };
    format!("{number}{NO_BREAK}{unit}")
}

/// Heading of the garden.
pub const YOUR_GARDEN: &str = "Your garden";
/// Why its place is asked for.
pub const PLACE_WHY: &str = "From its place the page knows the usual weather, which the days ahead of a heap are computed with. It goes into your journal and nowhere else.";
/// Its name.
pub const GARDEN_NAME: &str = "Name of the garden";
/// Its name may be left out.
pub const GARDEN_NAME_HINT: &str = "May be left empty.";
/// Latitude.
pub const LATITUDE: &str = "Latitude, degrees";
/// What latitude is.
pub const LATITUDE_HINT: &str =
    "As maps show it, such as 52.4. South of the equator below zero. One decimal is enough.";
/// Longitude.
pub const LONGITUDE: &str = "Longitude, degrees";
/// What longitude is.
pub const LONGITUDE_HINT: &str = "Such as 13.1. West of Greenwich below zero.";
/// Height.
pub const ELEVATION_HINT: &str = "May be left empty: then sea level.";
/// Temperatures of the months.
pub const MONTHS_HINT: &str =
    "May be left empty. Your own figure, if the usual one for the place misses.";
/// Saves it.
pub const SAVE_GARDEN: &str = "Save the garden";
/// Opens the form.
pub const DESCRIBE_GARDEN: &str = "Describe the garden";
/// Latitude without longitude.
pub const PLACE_NEEDS_BOTH: &str = "Give both latitude and longitude, or neither.";
/// Nothing was entered.
pub const NOTHING_OF_GARDEN: &str = "Enter a name, or latitude and longitude.";

/// Name of the button that turns the sign of a field.
#[must_use]
pub fn other_sign(label: &str) -> String {
    format!("Above or below zero, {label}")
}

/// Label of the height of the garden.
#[must_use]
pub fn elevation_label(system: UnitSystem) -> &'static str {
    match system {
        UnitSystem::Metric => "Height above the sea, m",
        UnitSystem::UsCustomary => "Height above the sea, ft",
    }
}

/// Label of the temperature of a month.
#[must_use]
pub fn month_label(coldest: bool, system: UnitSystem) -> &'static str {
    match (coldest, system) {
        (true, UnitSystem::Metric) => "Coldest month, °C",
        (true, UnitSystem::UsCustomary) => "Coldest month, °F",
        (false, UnitSystem::Metric) => "Warmest month, °C",
        (false, UnitSystem::UsCustomary) => "Warmest month, °F",
    }
}

/// Where the garden lies, as its journal has it.
#[must_use]
pub fn place_line(place: Option<&Place>) -> String {
    let Some(place) = place else {
        return "The journal does not say where the garden lies; a usual temperate place stands in."
            .to_owned();
    };
    let north = if place.latitude_deg < 0.0 { 'S' } else { 'N' };
    let east = if place.longitude_deg < 0.0 { 'W' } else { 'E' };
    format!(
        "The garden lies at {}°{NO_BREAK}{north}, {}°{NO_BREAK}{east}.",
        place.latitude_deg.abs(),
        place.longitude_deg.abs()
    )
}

/// Heading of the vessels.
pub const YOUR_VESSELS: &str = "Your vessels";
/// Why they are weighed.
pub const VESSELS_WHY: &str = "Amounts are told in buckets and barrows. Weighed once, yours count for what they hold. A scale for luggage or fish will do.";
/// Opens the steps.
pub const WEIGH: &str = "Weigh a vessel";
/// Closes the steps.
pub const NOT_NOW: &str = "Not now";
/// Forth.
pub const NEXT: &str = "Next";
/// Back.
pub const BACK: &str = "Back";
/// The choice of the vessel.
pub const WHICH_VESSEL: &str = "Which vessel?";
/// First step.
pub const STEP_EMPTY: &str = "Step 1 of 3: weigh it empty";
/// How.
pub const STEP_EMPTY_HOW: &str =
    "Hang or stand it on the scale as it is, dry and with nothing in it.";
/// Second step.
pub const STEP_WATER: &str = "Step 2 of 3: weigh it full of water";
/// How.
pub const STEP_WATER_HOW: &str = "Fill it to the brim and weigh it. A litre of water weighs a kilogram, so the scale tells what it holds.";
/// Too heavy to weigh.
pub const STEP_WATER_HEAVY: &str =
    "Too heavy for the scale? Pour it full from a vessel that you know, and enter what it holds.";
/// Third step.
pub const STEP_MATERIAL: &str = "Step 3 of 3: weigh a material in it";
/// How.
pub const STEP_MATERIAL_HOW: &str = "Fill it as you usually do, with something you often have, and weigh it. This tells how heavy yours is. You can also stop here.";
/// The material.
pub const WHICH_MATERIAL: &str = "What is in it?";
/// Saves the volume.
pub const SAVE_VOLUME: &str = "Save what it holds";
/// Saves the density.
pub const SAVE_DENSITY: &str = "Save this weighing";
/// It is known otherwise.
pub const KNOWN_VOLUME: &str = "I know what it holds";
/// The full vessel is not heavier than the empty one.
pub const NOT_HEAVIER: &str =
    "Full must weigh more than empty: check both weights and the unit they are in.";
/// Nothing was picked.
pub const NO_MATERIAL: &str = "Choose what is in the vessel first.";
/// A weight is missing.
pub const NO_WEIGHT: &str = "Enter a weight, such as 0.8.";
/// A volume is missing.
pub const NO_VOLUME: &str = "Enter what it holds, such as 12.";
/// What was typed before journals kept it.
pub const ONLY_HERE: &str = "These were typed on this device and are not in your journal yet.";
/// Puts them there.
pub const INTO_JOURNAL: &str = "Put them into the journal";

/// Label of an empty vessel's weight.
#[must_use]
pub fn empty_label(system: UnitSystem) -> &'static str {
    match system {
        UnitSystem::Metric => "Weight empty, kg",
        UnitSystem::UsCustomary => "Weight empty, lb",
    }
}

/// Label of the weight of a vessel full of water.
#[must_use]
pub fn water_label(system: UnitSystem) -> &'static str {
    match system {
        UnitSystem::Metric => "Weight full of water, kg",
        UnitSystem::UsCustomary => "Weight full of water, lb",
    }
}

/// Label of the weight of a vessel full of a material.
#[must_use]
pub fn full_label(system: UnitSystem) -> &'static str {
    match system {
        UnitSystem::Metric => "Weight full, kg",
        UnitSystem::UsCustomary => "Weight full, lb",
    }
}

/// Label of a volume.
#[must_use]
pub fn holds_label(system: UnitSystem) -> &'static str {
    match system {
        UnitSystem::Metric => "It holds, litres",
        UnitSystem::UsCustomary => "It holds, US gallons",
    }
}

/// What a vessel was found to hold [m3].
#[must_use]
pub fn holds_line(volume_m3: f64, system: UnitSystem) -> String {
    format!("It holds {}.", volume_text(volume_m3, system))
}

/// How heavy a material was found to be [kg/m3].
#[must_use]
pub fn density_line(density_kg_m3: f64, system: UnitSystem) -> String {
    match system {
        UnitSystem::Metric => format!("That is {density_kg_m3:.0}{NO_BREAK}kg in a cubic metre."),
        UnitSystem::UsCustomary => {
            // Pounds and yards of 1959: 0.45359237 kg, 0.9144 m, both exact.
            let pounds = density_kg_m3 * 0.764_554_857_984 / 0.453_592_37;
            format!("That is {pounds:.0}{NO_BREAK}lb in a cubic yard.")
        }
    }
}

/// What a vessel holds as the journal has it, since a day [m3].
#[must_use]
pub fn vessel_found(volume_m3: f64, since: Moment, system: UnitSystem) -> String {
    format!(
        "{}, found on {}",
        volume_text(volume_m3, system),
        day_text(since)
    )
}

/// What a vessel of this name usually holds [m3].
#[must_use]
pub fn vessel_usual(volume_m3: f64, system: UnitSystem) -> String {
    format!("{}, as is usual", volume_text(volume_m3, system))
}

/// Heading of the aim.
pub const THE_AIM: &str = "The aim";
/// Starts the balance anew.
pub const START_AGAIN: &str = "Start the balance again with the example";

#[cfg(test)]
mod tests {
    use super::*;

    fn at(hour: i64, minute: i64) -> Moment {
        Moment::new((hour * 60 + minute) * 60_000, 0).unwrap()
    }

    #[test]
    fn midnight_and_noon_are_twelve_by_the_half_day_clock() {
        let told = |hour, minute, clock| clock_text(at(hour, minute), clock);
        assert_eq!(told(0, 5, Clock::Hours24), "00:05");
        assert_eq!(told(18, 5, Clock::Hours24), "18:05");
        assert_eq!(told(0, 5, Clock::Hours12), "12:05\u{a0}am");
        assert_eq!(told(12, 0, Clock::Hours12), "12:00\u{a0}pm");
        assert_eq!(told(18, 5, Clock::Hours12), "6:05\u{a0}pm");
    }

    #[test]
    fn room_is_told_in_units_that_devices_use() {
        assert_eq!(
            room_line(3_140_000.0, 12.4e9).unwrap(),
            "The page and its journal use 3.1\u{a0}MB of the 12\u{a0}GB that the browser allows them."
        );
        assert_eq!(room_line(1.0, 0.0), None);
    }

    #[test]
    fn a_density_is_the_same_in_both_systems() {
        // 593 kg/m3 is a thousand pounds in a cubic yard.
        let told = density_line(593.276, UnitSystem::UsCustomary);
        assert_eq!(told, "That is 1000\u{a0}lb in a cubic yard.");
    }

    #[test]
    fn a_place_is_told_by_its_hemispheres() {
        let place = Place {
            name: None,
            latitude_deg: -33.9,
            longitude_deg: 18.4,
            elevation_m: None,
            coldest_month_c: None,
            warmest_month_c: None,
        };
        assert_eq!(
            place_line(Some(&place)),
            "The garden lies at 33.9°\u{a0}S, 18.4°\u{a0}E."
        );
    }
}
