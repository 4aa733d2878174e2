//! The target `simulation_request` under libFuzzer.
#![no_main]

libfuzzer_sys::fuzz_target!(|input: &[u8]| {
    let _ = heapwright_fuzz::simulation_request(input);
});
