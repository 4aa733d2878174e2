//! The target `amount` under libFuzzer.
#![no_main]

libfuzzer_sys::fuzz_target!(|input: &[u8]| {
    let _ = heapwright_fuzz::amount(input);
});
