//! Writes to a journal until it is killed, and says after each append that it was kept.
//!
//! `store-writer FILE DEVICE FIRST COUNT`: the device's number, the number of the first line and
//! how many appends. Each append has one to three lines. After each the number of the next line is
//! printed.

#![allow(clippy::print_stdout, clippy::unwrap_used)]

#[path = "../common/mod.rs"]
mod common;

use std::io::Write as _;
use std::path::Path;

use heapwright_journal::DeviceId;
use heapwright_store::Sqlite;

fn main() {
    let arguments: Vec<String> = std::env::args().collect();
    let [_, file, device, first, count] = arguments.as_slice() else {
        panic!("store-writer FILE DEVICE FIRST COUNT");
    };
    let device = DeviceId(device.parse().unwrap());
    let mut next: u32 = first.parse().unwrap();
    let mut store = match Sqlite::open(Path::new(file), || device) {
        Ok(store) => store,
        Err(error) => panic!("{error}"),
    };
    for _ in 0..count.parse::<u32>().unwrap() {
        let behind = next + 1 + next % 3;
        let lines = common::lines(device, next..behind);
        match store.append_now(&lines) {
            Ok(new) => assert_eq!(new, lines.len()),
            Err(error) => panic!("{error}"),
        }
        next = behind;
        let mut out = std::io::stdout().lock();
        writeln!(out, "{next}").unwrap();
        out.flush().unwrap();
    }
}
