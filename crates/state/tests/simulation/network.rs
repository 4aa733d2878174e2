//! Five replicas and the bad network between them.

use std::collections::BTreeSet;

use heapwright_journal::{
    Clock, DeviceId, Event, EventId, LAST_WALL_MS, Line, Moment, What, journal_digest,
};
use heapwright_state::State;

use crate::edits::{self, Chance, START_MS};

/// How many replicas.
pub const REPLICAS: usize = 5;

const DAY_MS: i64 = 24 * 3_600_000;

/// One device with its journal.
struct Replica {
    clock: Clock,
    /// How far its clock goes wrong [ms].
    off_ms: i64,
    /// The lines that it has kept, in the order in which they came.
    kept: Vec<usize>,
    has: BTreeSet<usize>,
    state: State,
    /// On which side of a parted network it is.
    side: usize,
}

/// All of it.
pub struct World {
    chance: Chance,
    lines: Vec<(Line, Event)>,
    replicas: Vec<Replica>,
    /// Lines on their way, and to whom.
    flying: Vec<(usize, usize)>,
    now_ms: i64,
}

impl World {
    pub fn new(seed: u64) -> Self {
        let mut chance = Chance::new(seed);
        let replicas = (0..REPLICAS)
            .map(|number| Replica {
                clock: Clock::new(DeviceId(number as u64 + 1)),
                off_ms: wrongness(&mut chance),
                kept: Vec::new(),
                has: BTreeSet::new(),
                state: State::default(),
                side: 0,
            })
            .collect();
        Self {
            chance,
            lines: Vec::new(),
            replicas,
            flying: Vec::new(),
            now_ms: START_MS,
        }
    }

    /// Lets things happen, then repairs what was lost; everything must then be the same everywhere.
    pub fn run(&mut self, steps: usize) {
        for _ in 0..steps {
            self.now_ms += self.chance.below(3_600_000) as i64;
            let who = self.chance.below(REPLICAS);
            match self.chance.below(20) {
                0..=8 => self.edit(who),
                9..=12 => self.send(who),
                13..=16 => self.deliver(),
                17 => self.part_or_join(),
                18 => self.crash(who),
                _ => self.set_clock(who),
            }
        }
        self.repair();
        self.compare();
    }

    fn edit(&mut self, who: usize) {
        let chance = &mut self.chance;
        let replica = &mut self.replicas[who];
        let now_ms = clamped(self.now_ms + replica.off_ms);
        // What it knows; those early in the list are the heaps that most edits are about.
        let known: Vec<EventId> = replica.kept.iter().map(|at| self.lines[*at].1.id).collect();
        let again = chance.one_in(12) && !known.is_empty();
        let mut event = Event {
            id: EventId::new(now_ms, &chance.bytes()),
            stamp: replica.clock.tick(now_ms),
            happened: edits::moment(chance),
            recorded: Moment::new(START_MS, 0).unwrap(),
            by: None,
            batch: None,
            what: What::Known(edits::any(chance, &known)),
        };
        if again {
            // The same id with other content, sometimes with the very same stamp.
            let old = &self.lines[replica.kept[chance.below(replica.kept.len())]].1;
            event.id = old.id;
            if chance.one_in(2) {
                event.stamp = old.stamp;
            }
        }
        let text = newer(chance, event.write().unwrap());
        let line = self.intern(&text);
        self.take(who, line);
    }

    fn intern(&mut self, text: &str) -> usize {
        let read = Line::read(text).unwrap();
        match self.lines.iter().position(|(line, _)| *line == read.0) {
            Some(place) => place,
            None => {
                self.lines.push(read);
                self.lines.len() - 1
            }
        }
    }

    fn take(&mut self, who: usize, at: usize) {
        let replica = &mut self.replicas[who];
        let (line, event) = &self.lines[at];
        let new = replica.state.take(line.digest(), event.clone());
        assert_eq!(
            new,
            replica.has.insert(at),
            "new exactly when it was not there"
        );
        if new {
            replica.kept.push(at);
            let now_ms = clamped(self.now_ms + replica.off_ms);
            replica.clock.see(event.stamp, now_ms);
        }
    }

    /// Sends some lines to somebody; a fifth is lost, a fifth comes twice.
    fn send(&mut self, who: usize) {
        let to = self.chance.below(REPLICAS);
        if self.replicas[to].side != self.replicas[who].side {
            return;
        }
        for at in self.replicas[who].kept.clone() {
            match self.chance.below(5) {
                0 => {}
                1 => self.flying.extend([(to, at), (to, at)]),
                _ => self.flying.push((to, at)),
            }
        }
        // As many as a small network holds.
        let chance = &mut self.chance;
        chance.shuffle(&mut self.flying);
        self.flying.truncate(60);
    }

    fn deliver(&mut self) {
        for _ in 0..self.chance.below(12) {
            if let Some((to, at)) = self.flying.pop() {
                self.take(to, at);
            }
        }
    }

    fn part_or_join(&mut self) {
        let parted = self.chance.one_in(2);
        for replica in &mut self.replicas {
            replica.side = if parted { self.chance.below(2) } else { 0 };
        }
    }

    /// All that is not kept is gone; what was kept gives the same state as before.
    fn crash(&mut self, who: usize) {
        let restored = self.fold(&self.replicas[who].kept);
        let replica = &mut self.replicas[who];
        assert_eq!(restored, replica.state, "restored from its lines");
        replica.state = restored;
        let mut clock = Clock::new(replica.clock.device());
        for at in &replica.kept {
            clock.see(
                self.lines[*at].1.stamp,
                clamped(self.now_ms + replica.off_ms),
            );
        }
        replica.clock = clock;
    }

    fn set_clock(&mut self, who: usize) {
        self.replicas[who].off_ms = wrongness(&mut self.chance);
    }

    fn fold(&self, which: &[usize]) -> State {
        State::fold(which.iter().map(|at| {
            let (line, event) = Line::read(self.lines[*at].0.text()).unwrap();
            (line.digest(), event)
        }))
    }

    /// Every line reaches everybody, in an order of their own; half of them take all at once.
    fn repair(&mut self) {
        for who in 0..REPLICAS {
            let mut missing: Vec<usize> = (0..self.lines.len())
                .filter(|at| !self.replicas[who].has.contains(at))
                .collect();
            self.chance.shuffle(&mut missing);
            if who % 2 == 0 {
                for at in missing {
                    self.take(who, at);
                }
            } else {
                let lines = missing.iter().map(|at| {
                    let (line, event) = &self.lines[*at];
                    (line.digest(), event.clone())
                });
                let new = self.replicas[who].state.take_all(lines);
                assert_eq!(new, missing.len());
                self.replicas[who].kept.extend(missing);
            }
        }
    }

    fn compare(&mut self) {
        let mut all: Vec<usize> = (0..self.lines.len()).collect();
        self.chance.shuffle(&mut all);
        let union = self.fold(&all);
        let digest = journal_digest(self.lines.iter().map(|(line, _)| line.digest()).collect());
        let conflicts: BTreeSet<EventId> = self.same_ids();
        assert_eq!(*union.conflicts(), conflicts);
        assert_eq!(union.lines(), self.lines.len());
        for replica in &self.replicas {
            assert_eq!(replica.state, union);
            // Equality of states does not look at what is worked out on asking.
            for heap in union.heaps().chain(union.unknown_heaps()) {
                assert_eq!(replica.state.contents(heap.id), union.contents(heap.id));
            }
            let digests = replica.kept.iter().map(|at| self.lines[*at].0.digest());
            assert_eq!(journal_digest(digests.collect()), digest);
        }
    }

    /// Ids that more than one line has, found without the state.
    fn same_ids(&self) -> BTreeSet<EventId> {
        let mut ids: Vec<EventId> = self.lines.iter().map(|(_, event)| event.id).collect();
        ids.sort_unstable();
        ids.windows(2)
            .filter(|two| two[0] == two[1])
            .map(|two| two[0])
            .collect()
    }
}

/// Some lines come from newer programs: with a field, a kind or a version that nobody knows.
fn newer(chance: &mut Chance, line: String) -> String {
    match chance.below(25) {
        0 => line.replacen("\"kind\":", "\"colour\": [1.50],\"kind\":", 1),
        1 => line.replacen("\"kind\":\"", "\"kind\":\"newer_", 1),
        2 => line.replacen("{\"v\":1", "{\"v\":2", 1),
        _ => line,
    }
}

/// Mostly minutes, sometimes days, now and then years.
fn wrongness(chance: &mut Chance) -> i64 {
    let most = match chance.below(10) {
        0 => 3000 * DAY_MS,
        1..=4 => 5 * DAY_MS,
        _ => DAY_MS / 24,
    };
    let off = (chance.next() % most as u64) as i64;
    if chance.one_in(2) { off } else { -off }
}

fn clamped(ms: i64) -> u64 {
    u64::try_from(ms).unwrap_or(0).min(LAST_WALL_MS)
}
