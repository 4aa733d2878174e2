//! Files in and out: the journal as a file to keep elsewhere, and what a file would bring.

use std::collections::HashSet;

use heapwright_journal::store::{Store, facts};
use heapwright_journal::{Digest, Event, FileReader, Header, Line, Summary};
use heapwright_state::Arrival;
use js_sys::{Array, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};

use super::device;
use super::fault::KeepError;
use super::keeper::Keeper;
use super::kept::Kept;

/// The largest file that the page reads [bytes]: 256 MiB; a browser gives a page little more room.
pub const LARGEST_FILE_BYTES: f64 = (256 << 20) as f64;
/// How much of a file is read in one go [bytes].
const PIECE_BYTES: usize = 4 << 20;

/// What a file would bring, before anything is written.
pub struct Looked {
    /// What stands in it.
    pub summary: Summary,
    /// What of it is new here.
    pub arrival: Arrival,
    new: Vec<(Line, Event)>,
}

impl Keeper {
    /// Offers all sound lines as a file, in the order in which they are kept.
    pub async fn export(self) -> Result<(), String> {
        self.exported().await.map_err(|error| error.to_string())
    }

    async fn exported(self) -> Result<(), KeepError> {
        let mut turn = self.turn().await?;
        let mut digests: Vec<Digest> = Vec::new();
        let parts = Array::new();
        let mut piece = String::new();
        let mut take = |line: Line| {
            digests.push(line.digest());
            piece.push_str(line.text());
            piece.push('\n');
            if piece.len() >= PIECE_BYTES {
                parts.push(&JsValue::from_str(&piece));
                piece.clear();
            }
        };
        let read = match turn.store() {
            // Read from its start by a reader of its own, so that the store keeps its place.
            Kept::Browser(_) => Kept::on_the_device().read(0, &mut take).await?,
            kept @ Kept::Memory(_) => kept.read(0, &mut take).await?,
        };
        // A file of what is sound in a damaged journal must not pass for the whole of it: it has no
        // header, and does not count as an export.
        let whole = read.damage.is_empty();
        parts.push(&JsValue::from_str(&piece));
        let now = device::now();
        if whole {
            let header = format!("{}\n", Header::of(digests, now).line());
            parts.unshift(&JsValue::from_str(&header));
        }
        let day = now.local().date();
        device::save(&format!("heapwright-{day}.jsonl"), &parts);
        if !whole {
            return Ok(());
        }
        turn.store()
            .set_fact(facts::LAST_EXPORT, &now.to_string())
            .await?;
        if turn.is_current().is_ok() {
            self.change(|journal| journal.last_export = Some(now));
        }
        Ok(())
    }

    /// Reads a file and tells what taking it in would do; `None` when it is too large or cannot be
    /// read.
    pub async fn look(self, file: &JsValue) -> Option<Looked> {
        let size = js_sys::Reflect::get(file, &JsValue::from_str("size"))
            .ok()?
            .as_f64()?;
        if size > LARGEST_FILE_BYTES {
            return None;
        }
        let mut reader = FileReader::default();
        let mut arrival = Arrival::default();
        let mut seen = HashSet::new();
        let mut new = Vec::new();
        #[allow(clippy::cast_precision_loss, clippy::cast_sign_loss)]
        let now_ms = device::now().instant_ms as u64;
        let mut take = |line: &[u8]| {
            let Some((line, event)) = reader.read(line) else {
                return;
            };
            if !seen.insert(line.digest()) {
                arrival.known += 1;
                return;
            }
            let before = arrival.new;
            self.peek(|journal| {
                journal
                    .state
                    .look_at(&mut arrival, line.digest(), &event, now_ms);
            });
            if arrival.new > before {
                new.push((line, event));
            }
        };
        let mut rest: Vec<u8> = Vec::new();
        let mut from = 0.0;
        while from < size {
            #[allow(clippy::cast_precision_loss)]
            let to = (from + PIECE_BYTES as f64).min(size);
            let piece: Uint8Array = device::slice(file, from, to).await.ok()?.dyn_into().ok()?;
            rest.extend(piece.to_vec());
            let Some(end) = rest.iter().rposition(|byte| *byte == b'\n') else {
                from = to;
                continue;
            };
            rest[..end].split(|byte| *byte == b'\n').for_each(&mut take);
            rest.drain(..=end);
            from = to;
        }
        if !rest.is_empty() {
            take(&rest);
        }
        self.peek(|journal| journal.state.looked(&mut arrival));
        Some(Looked {
            summary: reader.finish(),
            arrival,
            new,
        })
    }

    /// Takes in what a file brings, all of it or nothing; tells how many entries were new.
    pub async fn take_in(self, looked: &Looked) -> Result<usize, String> {
        let opened = self.opened();
        let taken = async {
            let mut turn = self.turn().await?;
            self.is_open(opened)?;
            self.catch_up(&mut turn).await?;
            let lines: Vec<Line> = looked.new.iter().map(|(line, _)| line.clone()).collect();
            let count = turn.store().append(&lines).await?;
            turn.is_current()?;
            drop(turn);
            self.followed(count, looked);
            Ok::<_, KeepError>(count)
        };
        let count = taken.await.map_err(|error| error.to_string())?;
        if !self.peek(|journal| journal.is_demo) {
            device::tell();
        }
        Ok(count)
    }

    fn followed(self, count: usize, looked: &Looked) {
        let events = looked
            .new
            .iter()
            .map(|(line, event)| (line.digest(), event.clone()));
        self.change(|journal| {
            journal.state.take_all(events);
            journal.stepped(
                count as u64,
                looked.new.iter().map(|(_, event)| event.stamp),
            );
        });
    }
}
