//! The members of an ensemble on all processors, with their progress on a terminal.

use std::io::{self, IsTerminal, Write};
use std::num::NonZero;
use std::sync::Mutex;
use std::sync::atomic::{AtomicU32, Ordering};
use std::thread;

use heapwright_answers::heap::Run;

/// What has come of each member so far.
type Slots = Mutex<Vec<Option<Run>>>;

/// Runs members on as many threads as there are processors. Which thread ran a member makes no
/// difference to what comes of it.
pub fn on_all_processors(
    count: u32,
    member: &(dyn Fn(u32) -> Option<Run> + Sync),
) -> Vec<Option<Run>> {
    let next = AtomicU32::new(0);
    let done = AtomicU32::new(0);
    let slots: Slots = Mutex::new((0..count).map(|_| None).collect());
    let shown = io::stderr().is_terminal();
    let threads = thread::available_parallelism().map_or(1, NonZero::get);
    thread::scope(|scope| {
        for _ in 0..threads.min(count as usize) {
            scope.spawn(|| {
                loop {
                    let index = next.fetch_add(1, Ordering::Relaxed);
                    if index >= count {
                        break;
                    }
                    let run = member(index);
                    if let Ok(mut slots) = slots.lock() {
                        slots[index as usize] = run;
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
