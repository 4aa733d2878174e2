//! The figures as a page.

use std::fmt::Write as _;
use std::time::Duration;

use crate::LARGE;
use crate::measure::{Opened, Taken};

/// A limit and what was measured.
pub struct Gate {
    pub what: String,
    pub measured: String,
    pub passes: bool,
}

/// 200,000 events are opened within this.
const OPENED_WITHIN: Duration = Duration::from_secs(1);
/// One more event is taken in within this, at the 99th percentile.
const TAKEN_WITHIN: Duration = Duration::from_millis(1);
/// Time an event in the largest garden beside the middle one: growth is linear below this. Caches
/// hold less of the larger one.
const MOST_GROWTH: f64 = 2.0;

/// What must hold.
pub fn gates(opened: &[Opened], taken: &[Taken]) -> Vec<Gate> {
    let mut gates = Vec::new();
    if let Some(large) = opened.iter().find(|of| of.events == LARGE) {
        gates.push(Gate {
            what: format!("{} events opened in under 1 s", grouped(LARGE)),
            measured: format!("{:.2} s", large.whole.as_secs_f64()),
            passes: large.whole < OPENED_WITHIN,
        });
    }
    for of in taken {
        gates.push(Gate {
            what: format!("one event more, {}, in under 1 ms (p99)", of.what),
            measured: format!("{:.3} ms", ms(of.p99)),
            passes: of.p99 < TAKEN_WITHIN,
        });
    }
    let per_event = |events| {
        let of = opened.iter().find(|of| of.events == events)?;
        Some(of.whole.as_secs_f64() / of.events as f64)
    };
    if let (Some(middle), Some(largest)) = (per_event(10_000), per_event(1_000_000)) {
        let growth = largest / middle;
        gates.push(Gate {
            what: "growth is linear: time an event at 1,000,000 beside 10,000 below 2".to_owned(),
            measured: format!("{growth:.2}"),
            passes: growth < MOST_GROWTH,
        });
    }
    gates
}

fn ms(time: Duration) -> f64 {
    time.as_secs_f64() * 1000.0
}

/// 1000000 as 1,000,000.
pub fn grouped(number: usize) -> String {
    let digits = number.to_string();
    let mut text = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

/// The whole page.
pub fn text(opened: &[Opened], taken: &[Taken]) -> String {
    let mut text = String::from(
        "# The journal at scale\n\n\
         Invented community gardens of ten years, made by `crates/invented`. Lines lie in memory: what a store needs to hand\n\
         them over is not in these figures. One thread; the best of five runs (of two for the largest), by its time on the\n\
         processor. To measure again, on a machine that does nothing else:\n\n\
         ```sh\ncargo bench -p heapwright-state -- --write\n```\n\n\
         ## Opening a journal\n\n\
         Digest: SHA-256 of every line. Read: digest, and the line understood and checked. Opened: all of it, and the fold into\n\
         heaps, stores, beds and people.\n\n\
         | events | size [MB] | digest [ms] | read [ms] | opened [ms] | an event [µs] |\n|---:|---:|---:|---:|---:|---:|\n",
    );
    for of in opened {
        let _ = writeln!(
            text,
            "| {} | {:.1} | {:.1} | {:.1} | {:.1} | {:.2} |",
            grouped(of.events),
            of.bytes as f64 / 1e6,
            ms(of.digest),
            ms(of.read),
            ms(of.whole),
            ms(of.whole) * 1000.0 / of.events as f64,
        );
    }
    let _ = write!(
        text,
        "\n![Time to open a journal by its number of events](journal-scale.svg)\n\n\
         ## One event more\n\n\
         Into a garden of {} events: a line is read and taken in, 1,000 of each, the best of five runs of each line. Feeds from\n\
         the stores, readings, waterings and what is put by take turns.\n\n\
         | | median [ms] | p99 [ms] | slowest [ms] |\n|---|---:|---:|---:|\n",
        grouped(LARGE)
    );
    for of in taken {
        let _ = writeln!(
            text,
            "| {} | {:.3} | {:.3} | {:.3} |",
            of.what,
            ms(of.median),
            ms(of.p99),
            ms(of.slowest)
        );
    }
    text.push_str("\n## Gates\n\n| gate | measured | passes |\n|---|---:|---|\n");
    for gate in gates(opened, taken) {
        let passes = if gate.passes { "yes" } else { "no" };
        let _ = writeln!(text, "| {} | {} | {passes} |", gate.what, gate.measured);
    }
    text
}
