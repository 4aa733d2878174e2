//! Who may be connected at once: so many in all, and so many from one place of the network.

use std::collections::HashMap;
use std::net::{IpAddr, Ipv6Addr};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use tokio::sync::{AcquireError, OwnedSemaphorePermit, Semaphore};

/// How many browsers may be connected at once: more than a household or a garden's meeting has.
const MOST: usize = 256;

/// How many connections one place of the network may hold: a browser opens six, and some share an address.
const MOST_OF_ONE: usize = 64;

/// Bits of an address of the newer kind that one household is given to fill as it likes.
const HOUSEHOLD_BITS: u32 = 64;

/// The places.
pub struct Places {
    all: Arc<Semaphore>,
    held: Arc<Mutex<HashMap<IpAddr, usize>>>,
}

/// A place that nobody else holds; given back when dropped.
pub struct Place {
    _of_all: OwnedSemaphorePermit,
    client: IpAddr,
    held: Arc<Mutex<HashMap<IpAddr, usize>>>,
}

impl Places {
    /// All of them free.
    pub fn new() -> Self {
        Self {
            all: Arc::new(Semaphore::new(MOST)),
            held: Arc::default(),
        }
    }

    /// Waits for a place among all.
    ///
    /// # Errors
    ///
    /// Never, while the places are there.
    pub async fn next(&self) -> Result<OwnedSemaphorePermit, AcquireError> {
        Arc::clone(&self.all).acquire_owned().await
    }

    /// The place for a client; `None` when those of its household hold too many already.
    ///
    /// This computer is not counted: what connects from here may stand in front for many.
    pub fn of(&self, of_all: OwnedSemaphorePermit, client: IpAddr) -> Option<Place> {
        let client = household(client);
        let mut held = locked(&self.held);
        let count = held.entry(client).or_default();
        if *count >= MOST_OF_ONE && !client.is_loopback() {
            return None;
        }
        *count += 1;
        drop(held);
        Some(Place {
            _of_all: of_all,
            client,
            held: Arc::clone(&self.held),
        })
    }
}

impl Drop for Place {
    fn drop(&mut self) {
        let mut held = locked(&self.held);
        if let Some(count) = held.get_mut(&self.client) {
            *count -= 1;
            if *count == 0 {
                held.remove(&self.client);
            }
        }
    }
}

/// A count is whole after every step, so that of one who panicked holds as well.
fn locked(held: &Mutex<HashMap<IpAddr, usize>>) -> MutexGuard<'_, HashMap<IpAddr, usize>> {
    held.lock().unwrap_or_else(PoisonError::into_inner)
}

/// The part of an address that stands for one household.
fn household(client: IpAddr) -> IpAddr {
    match client.to_canonical() {
        // Within a house or a garden each device counts for itself.
        IpAddr::V6(address)
            if !address.is_loopback()
                && !address.is_unique_local()
                && !address.is_unicast_link_local() =>
        {
            let kept = u128::MAX << (128 - HOUSEHOLD_BITS);
            IpAddr::V6(Ipv6Addr::from_bits(address.to_bits() & kept))
        }
        address => address,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    async fn place(places: &Places, client: &str) -> Option<Place> {
        let of_all = places.next().await.unwrap();
        places.of(of_all, client.parse().unwrap())
    }

    #[tokio::test]
    async fn one_household_cannot_hold_all_places() {
        let places = Places::new();
        for (one, same, other) in [
            ("192.168.1.7", "::ffff:192.168.1.7", "192.168.1.8"),
            ("2001:db8:1:2::7", "2001:db8:1:2:aaaa::1", "2001:db8:1:3::7"),
            ("fe80::7", "fe80::7", "fe80::8"),
            ("fd00:1::7", "fd00:1::7", "fd00:1::8"),
        ] {
            let mut held = Vec::new();
            for _ in 0..MOST_OF_ONE {
                held.push(place(&places, one).await.unwrap());
            }
            assert!(place(&places, same).await.is_none(), "{same}");
            let another = place(&places, other).await;
            assert!(another.is_some(), "{other}");
            held.pop();
            assert!(place(&places, same).await.is_some(), "one was given back");
        }
        assert!(locked(&places.held).is_empty());
        assert_eq!(places.all.available_permits(), MOST);
    }

    #[tokio::test]
    async fn this_computer_is_bounded_by_all_places_only() {
        let places = Places::new();
        let mut held = Vec::new();
        for _ in 0..MOST {
            held.push(place(&places, "127.0.0.1").await.unwrap());
        }
        assert!(Arc::clone(&places.all).try_acquire_owned().is_err());
    }
}
