//! Files in and out: the journal as a file to keep elsewhere, and what a file would bring.

use std::collections::{BTreeSet, HashSet};

use heapwright_journal::store::{Store, facts};
use heapwright_journal::{Content, Digest, Event, FileReader, Header, Line, Summary};
use heapwright_state::Arrival;
use js_sys::{Array, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};

use super::device;
use super::fault::KeepError;
use super::keeper::{Journal, Keeper};
use super::kept::Kept;

/// The largest file that the page reads [bytes]: 256 MiB; a browser gives a page little more room.
pub const LARGEST_FILE_BYTES: f64 = (256 << 20) as f64;
/// The media type of what is exported.
const JSON_LINES: &str = "application/jsonl";
/// The largest picture that is taken in [bytes], as the journal's format has it.
const LARGEST_PICTURE_BYTES: usize = 2 << 20;
/// How much of a file is read in one go [bytes].
const PIECE_BYTES: usize = 4 << 20;

/// The digests of the pictures of notes that count.
fn pictures(journal: &Journal) -> impl Iterator<Item = String> {
    journal
        .state
        .entries()
        .filter_map(|entry| entry.counts())
        .filter_map(|event| match event.content() {
            Some(Content::Noted(noted)) => noted.picture.as_ref(),
            _ => None,
        })
        .map(|picture| picture.sha256.clone())
}

/// The bytes of a pair of digest and bytes that may be kept as a picture: they are what the digest
/// says, begin as a JPEG does and are not too many.
fn sound_picture(pair: &JsValue) -> Option<Vec<u8>> {
    let pair = pair.dyn_ref::<Array>()?;
    let sha256: Digest = pair.get(0).as_string()?.parse().ok()?;
    let bytes = pair.get(1).dyn_into::<Uint8Array>().ok()?.to_vec();
    let is_picture = bytes.starts_with(&[0xff, 0xd8, 0xff])
        && bytes.len() <= LARGEST_PICTURE_BYTES
        && Digest::of(&bytes) == sha256;
    is_picture.then_some(bytes)
}

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
        let opened = self.opened();
        let mut turn = self.turn().await?;
        // Another garden may have been opened while this waited: its lines are not what was asked for.
        self.is_open(opened)?;
        self.put_back(&mut turn).await?;
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
        device::save(&format!("heapwright-{day}.jsonl"), &parts, JSON_LINES);
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

    /// True when a note that counts has a picture.
    pub fn has_pictures(self) -> bool {
        self.with(|journal| pictures(journal).next().is_some())
    }

    /// Offers all pictures of the journal as a file of their own; tells how many are not here.
    pub async fn export_pictures(self) -> Result<u64, String> {
        let opened = self.opened();
        let wanted: BTreeSet<String> = self.peek(|journal| pictures(journal).collect());
        let parts = Array::new();
        let mut missing = 0;
        for sha256 in &wanted {
            match self.picture(sha256).await {
                Some(bytes) => {
                    parts.push(&device::picture_line(sha256, &Uint8Array::from(&bytes[..])));
                }
                None => missing += 1,
            }
            self.is_open(opened).map_err(|error| error.to_string())?;
        }
        let now = device::now();
        let header = format!(
            "{{\"heapwright_pictures\":1,\"pictures\":{},\"exported\":\"{now}\"}}\n",
            parts.length()
        );
        parts.unshift(&JsValue::from_str(&header));
        let day = now.local().date();
        device::save(
            &format!("heapwright-{day}.pictures.jsonl"),
            &parts,
            JSON_LINES,
        );
        Ok(missing)
    }

    /// Takes in a file of pictures; tells how many it kept and how many lines held none. `None` when it
    /// is another file.
    pub async fn take_in_pictures(self, file: &JsValue) -> Result<Option<(u64, u64)>, String> {
        let opened = self.opened();
        let Ok(lines) = device::picture_lines(file).await else {
            return Ok(None);
        };
        let Ok(lines) = lines.dyn_into::<Array>() else {
            return Ok(None);
        };
        let (mut kept, mut faults) = (0, 0);
        for line in lines.iter() {
            let Some(bytes) = sound_picture(&device::picture_in(&line)) else {
                faults += 1;
                continue;
            };
            let taken = async {
                let mut turn = self.turn().await?;
                self.is_open(opened)?;
                turn.store().keep_picture(&bytes).await
            };
            taken.await.map_err(|error: KeepError| error.to_string())?;
            kept += 1;
        }
        Ok(Some((kept, faults)))
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
        let warned = self.peek(|journal| journal.warned.clone());
        let taken = async {
            let mut turn = self.turn().await?;
            self.is_open(opened)?;
            self.put_back(&mut turn).await?;
            self.catch_up(&mut turn).await?;
            let lines: Vec<Line> = looked.new.iter().map(|(line, _)| line.clone()).collect();
            let count = turn.store().append(&lines).await?;
            turn.is_current()?;
            drop(turn);
            self.followed(count, looked);
            Ok::<_, KeepError>(count)
        };
        let count = taken.await.map_err(|error| error.to_string())?;
        self.mended(warned.as_ref(), true);
        self.tell();
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
