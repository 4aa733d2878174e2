//! Every event of a store: one thread reads lines from the disk while others read events from them.
//!
//! The state is a fold of a set, so that the order in which threads hand events over is no matter.

use std::num::NonZeroUsize;
use std::sync::{Mutex, PoisonError, mpsc};
use std::thread;

use heapwright_journal::store::{ReadThrough, Store};
use heapwright_journal::{Digest, Event, Line};
use heapwright_store::{Sqlite, StoreError, finished};

/// How many lines are handed over at once.
const LINES_AT_ONCE: usize = 1000;

/// More threads than this wait for the disk.
const MOST_THREADS: usize = 4;

/// What a store holds.
#[derive(Default)]
pub struct Events {
    /// The events, in no order.
    pub events: Vec<(Digest, Event)>,
    /// How many lines are no events.
    pub unread: u64,
}

impl Events {
    fn take(&mut self, lines: &[Line]) {
        for line in lines {
            match Event::read(line.text()) {
                Ok(event) => self.events.push((line.digest(), event)),
                Err(_) => self.unread += 1,
            }
        }
    }
}

/// Reads a store from its first line to its last.
pub fn read(store: &mut Sqlite) -> Result<(Events, ReadThrough), StoreError> {
    let threads = thread::available_parallelism().map_or(1, NonZeroUsize::get);
    let (send, receive) = mpsc::sync_channel::<Vec<Line>>(2 * MOST_THREADS);
    let receive = Mutex::new(receive);
    thread::scope(|scope| {
        let readers: Vec<_> = (0..threads.min(MOST_THREADS))
            .map(|_| {
                scope.spawn(|| {
                    let mut found = Events::default();
                    loop {
                        let next = receive
                            .lock()
                            .unwrap_or_else(PoisonError::into_inner)
                            .recv();
                        match next {
                            Ok(lines) => found.take(&lines),
                            // The last line has come.
                            Err(_) => return found,
                        }
                    }
                })
            })
            .collect();
        let mut lines = Vec::with_capacity(LINES_AT_ONCE);
        let through = finished(store.read(0, &mut |line| {
            lines.push(line);
            if lines.len() == LINES_AT_ONCE {
                // It fails only when no reader is left, and then there is no state either.
                let _ = send.send(std::mem::replace(
                    &mut lines,
                    Vec::with_capacity(LINES_AT_ONCE),
                ));
            }
        }));
        drop(send);
        let mut all = Events::default();
        all.take(&lines);
        for reader in readers {
            match reader.join() {
                Ok(found) => {
                    all.events.extend(found.events);
                    all.unread += found.unread;
                }
                Err(panic) => std::panic::resume_unwind(panic),
            }
        }
        Ok((all, through?))
    })
}
