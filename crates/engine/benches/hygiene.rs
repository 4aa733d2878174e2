//! How long does a record of a million points take, and does its memory stay as it is?

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use heapwright_engine::hygiene::{Point, Record, RecordOptions, Turn};

/// A point a minute, up and down around 55 degrees, turned every week.
fn million() -> usize {
    let turns = (1..100)
        .map(|week| Turn {
            time_ms: week * 7 * 86_400_000,
            mixing: 0.0,
        })
        .collect();
    let mut record = Record::new(turns, RecordOptions::default());
    for minute in 0..1_000_000_i64 {
        // A day's wave without a call to a sine.
        #[allow(clippy::cast_precision_loss)]
        let phase = (minute % 1440) as f64 / 1440.0;
        let point = Point {
            time_ms: minute * 60_000,
            temperature_c: 35.0 + 160.0 * phase * (1.0 - phase),
            depth_m: None,
        };
        if record.take(point).is_err() {
            return 0;
        }
    }
    record.findings().len()
}

fn record(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("hygiene");
    group.sample_size(10);
    group.bench_function("a_million_points", |bencher| {
        bencher.iter(|| black_box(million()));
    });
    group.finish();
}

criterion_group!(benches, record);
criterion_main!(benches);
