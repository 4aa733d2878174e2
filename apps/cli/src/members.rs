//! The members of an ensemble on all processors, with their progress on a terminal.

use std::io::{self, IsTerminal, Write};
use std::num::NonZero;
use std::sync::Mutex;
use std::sync::atomic::{AtomicU32, Ordering};
use std::thread;

use heapwright_answers::MemberRuns;

/// What has come of each member so far.
type Slots = Mutex<Vec<MemberRuns>>;

/// Runs members on as many threads as there are processors. Which thread ran a member makes no
/// difference to what comes of it.
pub fn on_all_processors(
    count: u32,
    member: &(dyn Fn(u32) -> MemberRuns + Sync),
    shown: bool,
) -> Vec<MemberRuns> {
    let next = AtomicU32::new(0);
    let done = AtomicU32::new(0);
    let slots: Slots = Mutex::new((0..count).map(|_| MemberRuns::new()).collect());
    let threads = thread::available_parallelism().map_or(1, NonZero::get);
    thread::scope(|scope| {
        for _ in 0..threads.min(count as usize) {
            scope.spawn(|| {
                loop {
                    let index = next.fetch_add(1, Ordering::Relaxed);
                    if index >= count {
                        break;
                    }
                    let runs = member(index);
                    if let Ok(mut slots) = slots.lock() {
                        slots[index as usize] = runs;
                    }
                    let done = done.fetch_add(1, Ordering::Relaxed) + 1;
                    if shown {
                        progress(done, count);
                    }
                }
            });
        }
    });
    if shown {
        clear();
    }
    slots
        .into_inner()
        .unwrap_or_else(std::sync::PoisonError::into_inner)
}

/// Whether progress is shown: to somebody who sits before a terminal and waits for words or a
/// file, never to a program.
pub fn is_shown(json: bool, to_file: bool) -> bool {
    is_watched(
        json,
        to_file,
        io::stdout().is_terminal(),
        io::stderr().is_terminal(),
    )
}

fn is_watched(json: bool, to_file: bool, out: bool, err: bool) -> bool {
    err && !json && (out || to_file)
}

/// Nobody is lost when this cannot be written.
fn progress(done: u32, count: u32) {
    const WIDE: u32 = 30;
    let filled = (WIDE * done / count.max(1)) as usize;
    let _ = write!(
        io::stderr(),
        "\r[{:<30}] {done} of {count} runs",
        "=".repeat(filled)
    );
}

fn clear() {
    let _ = write!(io::stderr(), "\r{:60}\r", "");
}

#[cfg(test)]
mod tests {
    use super::is_watched;

    #[test]
    fn progress_is_for_those_who_watch() {
        assert!(is_watched(false, false, true, true));
        assert!(is_watched(false, true, false, true));
        for (json, to_file, out, err) in [
            (true, false, true, true),
            (true, true, true, true),
            (false, false, false, true),
            (false, false, true, false),
            (false, true, true, false),
        ] {
            assert!(!is_watched(json, to_file, out, err));
        }
    }
}
