//! The clock at work.

use std::hint::black_box;
use std::time::{Duration, Instant};

use heapwright_invented::Plan;
use heapwright_journal::content::{
    Amended, Fed, PartFed, Probe, ProbePlace, Read, Stage, StockPutBy, Watered,
};
use heapwright_journal::{
    AmountSaid, Content, DeviceId, Digest, Event, EventId, Line, Moment, Stamp, What,
};
use heapwright_state::State;

/// The best of so many runs counts: others were disturbed.
const RUNS: usize = 5;

/// What opening a journal took.
pub struct Opened {
    pub events: usize,
    pub bytes: usize,
    /// Digest of every line.
    pub digest: Duration,
    /// Digest, and the line understood.
    pub read: Duration,
    /// All of it: digest, reading, fold.
    pub whole: Duration,
}

/// Time of some work.
fn timed(work: impl FnOnce()) -> Duration {
    let begin = Instant::now();
    work();
    begin.elapsed()
}

/// How long this thread has been on a processor: what others do on the machine is not in it. `None`
/// where the system does not tell.
fn on_processor() -> Option<Duration> {
    let text = std::fs::read_to_string("/proc/thread-self/schedstat").ok()?;
    let ns = text.split(' ').next()?.parse().ok()?;
    Some(Duration::from_nanos(ns))
}

/// The same for long work, by the time on the processor where that is known.
fn timed_long(work: impl FnOnce()) -> Duration {
    let begin = on_processor();
    let by_clock = timed(work);
    match (begin, on_processor()) {
        (Some(begin), Some(end)) => end - begin,
        _ => by_clock,
    }
}

fn read(line: &str) -> (Digest, Event) {
    let (line, event) = Line::read(line).unwrap();
    (line.digest(), event)
}

/// Opens a garden of some size.
pub fn opened(events: usize) -> Opened {
    let lines: Vec<String> = heapwright_invented::lines(&Plan::community(events))
        .map(Result::unwrap)
        .collect();
    assert_eq!(lines.len(), events);
    let runs = if events > 200_000 { 2 } else { RUNS };
    // The system counts the time of a thread in steps of some milliseconds.
    let times = (100_000 / events).max(1);
    Opened {
        events,
        bytes: lines.iter().map(|line| line.len() + 1).sum(),
        digest: best(runs, times, || {
            for line in &lines {
                black_box(Digest::of(line.as_bytes()));
            }
        }),
        read: best(runs, times, || {
            for line in &lines {
                black_box(Line::read(line).unwrap());
            }
        }),
        whole: best(runs, times, || {
            State::fold(lines.iter().map(|line| read(line)))
        }),
    }
}

/// The best time of some runs of work that is done many times over; what it makes is thrown away
/// behind the clock.
fn best<T>(runs: usize, times: usize, work: impl Fn() -> T) -> Duration {
    let run = || {
        let mut made = Vec::with_capacity(times);
        timed_long(|| (0..times).for_each(|_| made.push(black_box(work()))))
    };
    (0..runs).map(|_| run()).min().unwrap() / u32::try_from(times).unwrap()
}

const DAY_MS: i64 = 24 * 3_600_000;

/// What taking in one event took, many times over.
pub struct Taken {
    pub what: &'static str,
    pub median: Duration,
    pub p99: Duration,
    pub slowest: Duration,
}

/// Takes events one by one into a garden of some size.
pub fn taken(size: usize) -> Vec<Taken> {
    let lines = heapwright_invented::lines(&Plan::community(size));
    let state = State::fold(lines.map(|line| read(&line.unwrap())));
    let last_ms = state
        .entries()
        .filter_map(|entry| Some(entry.recorded()?.happened.instant_ms))
        .max()
        .unwrap();
    let mut day = Day::new(&state, last_ms);
    let mut taken: Vec<Taken> = [
        ("at the end", 0),
        ("happened a day before", DAY_MS),
        ("happened a month before", 30 * DAY_MS),
        ("happened a year before", 365 * DAY_MS),
    ]
    .into_iter()
    .map(|(what, earlier_ms)| {
        let lines: Vec<String> = (0..1000).map(|_| day.ordinary(earlier_ms)).collect();
        times(what, &state, &lines)
    })
    .collect();
    let lines: Vec<String> = (0..1000).map(|_| day.amendment(&state)).collect();
    taken.push(times("amends any earlier feed", &state, &lines));
    taken
}

/// Each line is taken by several copies of the garden; its best time counts, as the work is the same.
fn times(what: &'static str, state: &State, lines: &[String]) -> Taken {
    let mut times = vec![Duration::MAX; lines.len()];
    for _ in 0..RUNS {
        let mut state = state.clone();
        for (line, best) in lines.iter().zip(&mut times) {
            let took = timed(|| {
                let (digest, event) = read(line);
                assert!(state.take(digest, event));
            });
            *best = took.min(*best);
        }
    }
    times.sort_unstable();
    Taken {
        what,
        median: times[times.len() / 2],
        p99: times[times.len() * 99 / 100],
        slowest: times[times.len() - 1],
    }
}

/// Makes further events.
struct Day {
    heaps: Vec<EventId>,
    feeds: Vec<EventId>,
    last_ms: i64,
    count: u64,
}

impl Day {
    fn new(state: &State, last_ms: i64) -> Self {
        let mut heaps: Vec<_> = state
            .heaps()
            .filter(|heap| heap.now().stage == Stage::Active)
            .collect();
        heaps.sort_by_key(|heap| std::cmp::Reverse(heap.history().len()));
        let mut feeds: Vec<EventId> = state
            .entries()
            .filter_map(|entry| entry.counts())
            .filter(|event| matches!(event.content(), Some(Content::Fed(_))))
            .map(|event| event.id)
            .collect();
        feeds.sort_unstable();
        Self {
            heaps: heaps.iter().map(|heap| heap.id).collect(),
            feeds,
            last_ms,
            count: 0,
        }
    }

    fn line(&mut self, earlier_ms: i64, content: Content) -> String {
        self.count += 1;
        let now_ms = self.last_ms + 60_000 * i64::try_from(self.count).unwrap();
        let wall_ms = u64::try_from(now_ms).unwrap();
        let mut random = [0; 10];
        random[..8].copy_from_slice(&self.count.to_le_bytes());
        let event = Event {
            id: EventId::new(wall_ms, &random),
            stamp: Stamp {
                wall_ms,
                count: 0,
                device: DeviceId(99),
            },
            happened: Moment::new(now_ms - earlier_ms, 60).unwrap(),
            recorded: Moment::new(now_ms, 60).unwrap(),
            by: None,
            batch: None,
            what: What::Known(content),
        };
        event.write().unwrap()
    }

    /// A feed from the stores, a reading, a watering or something put by.
    fn ordinary(&mut self, earlier_ms: i64) -> String {
        let at = usize::try_from(self.count).unwrap();
        let heap = self.heaps[at % self.heaps.len()];
        let amount = AmountSaid {
            count: 0.5,
            unit: "bucket".to_owned(),
        };
        let content = match self.count % 4 {
            0 => Fed {
                heap,
                parts: vec![PartFed {
                    material: Some("leaves_shredded_dry".to_owned()),
                    custom: None,
                    amount,
                    conditions: vec!["dry".to_owned()],
                    moisture_pct: None,
                    nitrogen_pct_dry: None,
                    cn_ratio: None,
                    bulk_density_kg_m3: None,
                    from_stores: true,
                }],
                water_l: Some(1.0),
            }
            .into(),
            1 => Read {
                heap,
                probes: vec![Probe {
                    temperature_c: 55.0,
                    depth_m: Some(0.4),
                    place: Some(ProbePlace::Core),
                }],
                air_temperature_c: None,
                squeeze: None,
                smells: Vec::new(),
                looks: Vec::new(),
                creatures: Vec::new(),
                height_m: None,
                fill_pct: None,
                logger: None,
            }
            .into(),
            2 => Watered { heap, water_l: 5.0 }.into(),
            _ => StockPutBy {
                material: "corrugated_cardboard".to_owned(),
                conditions: vec!["shredded".to_owned()],
                amount,
                scoop: None,
            }
            .into(),
        };
        self.line(earlier_ms, content)
    }

    /// A correction of a feed somewhere in the ten years.
    fn amendment(&mut self, state: &State) -> String {
        let at = usize::try_from(self.count.wrapping_mul(7919)).unwrap() % self.feeds.len();
        let event = self.feeds[at];
        assert!(state.entry(event).is_some());
        let patch = serde_json::from_str(r#"{"water_l":2.5}"#).unwrap();
        let amended = Amended {
            event,
            happened: None,
            patch,
        };
        self.line(0, amended.into())
    }
}
