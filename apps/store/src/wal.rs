//! Did a crash cut the WAL short, or did something change it?
//!
//! SQLite appends what is written to a WAL, a frame a page, with sums that go on from frame to
//! frame, and drops everything from the first frame whose sum is wrong: after a crash that is the
//! rest of what was being written, and as it should be. But a frame that something changed later
//! would take along all that was kept behind it. A next transaction begins only when the one before
//! is on the disk; so when frames of a later one stand behind a wrong frame, it was no crash.
//! The layout is described in SQLite, "Database File Format", section 4.

use crate::schema::PAGE_BYTES;

const HEADER_BYTES: usize = 32;
const FRAME_HEADER_BYTES: usize = 24;
const FRAME_BYTES: usize = FRAME_HEADER_BYTES + PAGE_BYTES;

type Sum = (u32, u32);

fn number(bytes: &[u8], at: usize) -> u32 {
    let four = bytes.get(at..).and_then(<[u8]>::first_chunk);
    four.map_or(0, |four| u32::from_be_bytes(*four))
}

/// Goes on with a sum.
fn sum(big_endian: bool, from: Sum, bytes: &[u8]) -> Sum {
    let word = |four: &[u8; 4]| {
        if big_endian {
            u32::from_be_bytes(*four)
        } else {
            u32::from_le_bytes(*four)
        }
    };
    bytes
        .as_chunks::<8>()
        .0
        .iter()
        .fold(from, |(one, two), eight| {
            let [a, b, c, d, e, f, g, h] = *eight;
            let one = one.wrapping_add(word(&[a, b, c, d])).wrapping_add(two);
            let two = two.wrapping_add(word(&[e, f, g, h])).wrapping_add(one);
            (one, two)
        })
}

fn sum_at(bytes: &[u8], at: usize) -> Sum {
    (number(bytes, at), number(bytes, at + 4))
}

/// The frames of a WAL: each has the number of its page, and says whether it ends a transaction.
pub(crate) fn frames(wal: &[u8]) -> impl Iterator<Item = &[u8]> {
    let frames = wal.get(HEADER_BYTES..).unwrap_or_default();
    frames.chunks_exact(FRAME_BYTES)
}

/// The number of the page in a frame, and its bytes.
pub(crate) fn page(frame: &[u8]) -> (u32, &[u8]) {
    let bytes = frame.get(FRAME_HEADER_BYTES..).unwrap_or_default();
    (number(frame, 0), bytes)
}

/// True when frames of a later transaction stand behind one whose sum is wrong. Old frames under a
/// header that was being written can look like it too: see then whether anything is missing.
pub(crate) fn was_changed(wal: &[u8]) -> bool {
    if wal.len() < HEADER_BYTES {
        return false;
    }
    // The order of bytes in the sums stands in the header, which may be what was changed.
    let orders = [false, true];
    match orders.into_iter().find(|order| is_header(wal, *order)) {
        Some(order) => changed(wal, order, true),
        None => orders.into_iter().any(|order| changed(wal, order, false)),
    }
}

fn is_header(wal: &[u8], big_endian: bool) -> bool {
    number(wal, 0) == 0x377f_0682 + u32::from(big_endian)
        && number(wal, 4) == 3_007_000
        && number(wal, 8) == PAGE_BYTES as u32
        && sum(big_endian, (0, 0), &wal[..24]) == sum_at(wal, 24)
}

fn changed(wal: &[u8], big_endian: bool, header_is_sound: bool) -> bool {
    let header = &wal[..HEADER_BYTES];
    let mut valid = header_is_sound;
    let mut before = sum_at(header, 24);
    // Behind the first wrong frame: has a transaction ended? A header is on the disk before any
    // frame is, so a wrong one counts as one.
    let mut ended = !header_is_sound;
    for (index, frame) in frames(wal).enumerate() {
        // Frames of an earlier round stand behind those of this one until they are written over.
        let of_this_round = !header_is_sound || frame[8..16] == header[16..24];
        let head = sum(big_endian, before, &frame[..8]);
        let follows = sum(big_endian, head, &frame[FRAME_HEADER_BYTES..]) == sum_at(frame, 16);
        if valid {
            valid = follows && of_this_round;
        } else if index > 0 && ended && follows && of_this_round && number(frame, 0) != 0 {
            return true;
        }
        ended |= !valid && of_this_round && number(frame, 4) != 0;
        before = sum_at(frame, 16);
    }
    false
}
