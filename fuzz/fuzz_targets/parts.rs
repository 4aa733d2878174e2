//! The target `parts` under libFuzzer.
#![no_main]

libfuzzer_sys::fuzz_target!(|input: &[u8]| {
    let _ = heapwright_fuzz::parts(input);
});
