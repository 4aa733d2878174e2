//! Numbers come back as they were written, to the last bit.

#![allow(clippy::unwrap_used)]

use heapwright_journal::content::Watered;
use heapwright_journal::{Clock, Content, DeviceId, Event, EventId, Moment, What};
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(20_000))]

    #[test]
    fn prop_every_number_reads_back_equal(water_l in 1e-3..1e5_f64) {
        let event = Event {
            id: EventId::new(1, &[0; 10]),
            stamp: Clock::new(DeviceId(1)).tick(1),
            happened: Moment::new(0, 0).unwrap(),
            recorded: Moment::new(0, 0).unwrap(),
            by: None,
            batch: None,
            what: What::Known(Content::from(Watered {
                heap: EventId::new(1, &[1; 10]),
                water_l,
            })),
        };
        let line = event.write().unwrap();
        prop_assert_eq!(&Event::read(&line).unwrap(), &event);
        prop_assert_eq!(Event::read(&line).unwrap().write().unwrap(), line);
    }
}
