//! The target `logger_csv` under libFuzzer.
#![no_main]

libfuzzer_sys::fuzz_target!(|input: &[u8]| {
    let _ = heapwright_fuzz::logger_csv(input);
});
