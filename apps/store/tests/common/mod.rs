//! Lines to write, made from numbers, so that they can be made again and compared.

#![allow(dead_code)]

use heapwright_journal::content::{Noted, Watered};
use heapwright_journal::{Content, DeviceId, Event, EventId, Line, Moment, Stamp, What};

/// 2026-01-01T00:00Z.
const START_MS: u64 = 1_767_225_600_000;

/// The line with a number, of a device. Every third is a note of some length, up to 1,500 letters;
/// numbers that end in 99 are notes that take more than a page.
pub fn line(device: DeviceId, number: u32) -> Line {
    let wall_ms = START_MS + u64::from(number) * 60_000;
    let mut random = [0; 10];
    random[..4].copy_from_slice(&number.to_be_bytes());
    random[4..].copy_from_slice(&device.0.to_be_bytes()[2..]);
    let happened = Moment::new(wall_ms as i64, 60).unwrap();
    let heap = EventId::new(START_MS, &[7; 10]);
    let content: Content = if number % 100 == 99 {
        // Four bytes a letter, and 4,000 letters are the most.
        Noted {
            text: Some("\u{1f41b}".repeat(4000)),
            heap: Some(heap),
            bed: Some(heap),
            picture: None,
        }
        .into()
    } else if number.is_multiple_of(3) {
        Noted {
            text: Some(format!("warm {}", "x".repeat(number as usize * 37 % 1500))),
            heap: None,
            bed: None,
            picture: None,
        }
        .into()
    } else {
        Watered {
            heap,
            water_l: f64::from(number % 40 + 1),
        }
        .into()
    };
    let event = Event {
        id: EventId::new(wall_ms, &random),
        stamp: Stamp {
            wall_ms,
            count: 0,
            device,
        },
        happened,
        recorded: happened,
        by: None,
        batch: None,
        what: What::Known(content),
    };
    let text = event.write().unwrap();
    Line::from(text.as_str())
}

/// The lines with some numbers.
pub fn lines(device: DeviceId, numbers: std::ops::Range<u32>) -> Vec<Line> {
    numbers.map(|number| line(device, number)).collect()
}
