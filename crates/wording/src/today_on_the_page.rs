//! What the page says around the needs of a day: headings, buttons, empty places.

/// No heap yet.
pub const NO_HEAPS: &str =
    "No heap yet. Start one, and this page says each day what it needs and why.";
/// Starts a heap.
pub const START_A_HEAP: &str = "Start a heap";
/// Leads to the balance.
pub const BALANCE_FIRST: &str = "Balance a feed";
/// While the worker looks through the journal.
pub const LOOKING: &str = "Looking through the journal\u{2026}";
/// What to do when nothing is needed.
pub const NOTHING_NEEDED_MORE: &str =
    "Feed a heap when you have something, and look in when its day comes.";
/// Heading of what is needed, for those who do not see it.
pub const NEEDED: &str = "What needs doing";
/// Opens the other reasons.
pub const MORE_REASONS: &str = "More reasons";
/// Leads to all heaps.
pub const ALL_HEAPS: &str = "All heaps";
/// Opens the field of the temperature.
pub const READ_HEAT: &str = "Write the temperature down";
/// Opens the form of what was seen.
pub const LOOK: &str = "Write down what you find";
/// Leads to the heap.
pub const OPEN_THE_HEAP: &str = "Open the heap";
/// Leads to the heap to feed it.
pub const TO_FEED: &str = "Feed the heap";
/// Leads to the heap for what cannot be done here.
pub const TO_THE_HEAP: &str = "Go to the heap";
/// Leads to the heap to take compost out.
pub const TO_HARVEST: &str = "Log the harvest";
/// Leads to the heap to test it.
pub const TO_TEST: &str = "Test the compost";
/// Leads to the stores.
pub const TO_THE_STORES: &str = "Go to the stores";
/// On the button of what was logged just now, until the page knows what follows of it.
pub const LOGGED: &str = "Logged";
/// Heading of where a temperature is logged whatever the day asks.
pub const LOG_TEMPERATURE: &str = "Log a temperature";
/// Which heap was read.
pub const WHICH_HEAP: &str = "Choose the heap you have read.";
/// Back to what the day asks.
pub const TO_THE_DAY: &str = "What needs doing today";

/// Heading of reminders.
pub const REMINDERS: &str = "Reminders";
/// What the page can do, and cannot.
pub const REMINDERS_HINT: &str = "The page has no server that could wake your device, so it cannot remind you while it is closed. A calendar can: take what has a day as a file and open it in yours. Take it again when the plan has changed: a calendar then moves what it has and doubles nothing.";
/// Nothing has a day.
pub const NOTHING_DATED: &str = "Nothing has a day yet.";
/// Writes the calendar.
pub const TO_CALENDAR: &str = "Dates for your calendar";
