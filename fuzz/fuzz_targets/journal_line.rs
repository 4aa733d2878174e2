//! The target `journal_line` under libFuzzer.
#![no_main]

libfuzzer_sys::fuzz_target!(|input: &[u8]| {
    let _ = heapwright_fuzz::journal_line(input);
});
