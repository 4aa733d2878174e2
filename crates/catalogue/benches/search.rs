//! How long does one search take?

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use heapwright_catalogue::Catalogue;

fn search(criterion: &mut Criterion) {
    let catalogue = Catalogue::built_in();
    let mut group = criterion.benchmark_group("search");
    for (what, text) in [
        ("exact", "coffee grounds"),
        ("condition", "wet shredded cardboard"),
        ("prefix", "coff"),
        ("slip", "zuchinni"),
        (
            "long",
            "a few old banana peels and some wet leaves from the shed",
        ),
        ("unknown", "plutonium"),
    ] {
        group.bench_function(what, |bencher| {
            bencher.iter(|| catalogue.search(black_box(text), 8))
        });
    }
    group.finish();
}

criterion_group!(benches, search);
criterion_main!(benches);
