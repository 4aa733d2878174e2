//! Where a journal is kept: what every store promises, whatever lies beneath.

use crate::line::{Chain, Digest, Line};

/// A place where lines are kept for good.
///
/// Natively SQLite, in the browser IndexedDB; both live in the applications. All of it waits on one
/// thread, so the futures need not travel between threads.
#[allow(async_fn_in_trait)]
pub trait Store {
    /// Why it could not be done.
    type Error: std::error::Error;

    /// Keeps lines; those that are there already are left out. When this returns, they are there
    /// for good, all of them; when it fails, none is. Tells how many were new.
    async fn append(&mut self, lines: &[Line]) -> Result<usize, Self::Error>;

    /// Hands over every line that is sound behind a position, in the order in which they were kept.
    /// Tells the last position and what is damaged.
    async fn read(
        &mut self,
        behind: u64,
        take: &mut dyn FnMut(Line),
    ) -> Result<ReadThrough, Self::Error>;

    /// A fact that the device keeps for itself, such as its id or when it last exported.
    async fn fact(&mut self, name: &str) -> Result<Option<String>, Self::Error>;

    /// Keeps a fact.
    async fn set_fact(&mut self, name: &str, value: &str) -> Result<(), Self::Error>;

    /// A picture by the digest of its bytes.
    async fn picture(&mut self, digest: Digest) -> Result<Option<Vec<u8>>, Self::Error>;

    /// Keeps a picture.
    async fn keep_picture(&mut self, bytes: &[u8]) -> Result<Digest, Self::Error>;
}

/// Facts that every device keeps.
pub mod facts {
    /// The id of the device, 16 hexadecimal digits.
    pub const DEVICE: &str = "device";
    /// Who works here: the id of a person.
    pub const PERSON: &str = "person";
    /// When the journal was last exported or backed up (RFC 3339).
    pub const LAST_EXPORT: &str = "last_export";
}

/// What came of reading a store.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ReadThrough {
    /// The position of the last line; hand it over to read only what comes behind.
    pub last: u64,
    /// What is damaged.
    pub damage: Vec<Damage>,
}

/// Something in a store that is not as it was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Damage {
    /// Where, counted from 1.
    pub position: u64,
    /// What.
    pub kind: DamageKind,
}

/// How something is not as it was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DamageKind {
    /// The line has changed; it is left out.
    Changed,
    /// The line itself is sound, but lines before it are missing or out of place.
    ChainBroken,
    /// Nothing stands where a line should be.
    Missing,
}

/// Follows the chain of a store while its lines are read in order.
#[derive(Clone, Copy, Debug)]
pub struct ChainWalk {
    position: u64,
    chain: Chain,
}

impl ChainWalk {
    /// From the start.
    pub const START: Self = Self {
        position: 0,
        chain: Chain::START,
    };

    /// From behind a line that was checked before.
    #[must_use]
    pub const fn behind(position: u64, chain: Chain) -> Self {
        Self { position, chain }
    }

    /// The link of the last line.
    #[must_use]
    pub const fn chain(&self) -> Chain {
        self.chain
    }

    /// Takes the next line as the store has it: the bytes, the digest and the link that were kept
    /// with them. Tells whether the bytes are sound, and notes every damage.
    pub fn step(
        &mut self,
        position: u64,
        found: Digest,
        kept: Option<Digest>,
        link: Option<Chain>,
        damage: &mut Vec<Damage>,
    ) -> bool {
        if position != self.position + 1 {
            damage.push(Damage {
                position: self.position + 1,
                kind: DamageKind::Missing,
            });
        }
        let sound = kept == Some(found);
        let expected = self.chain.then(kept.unwrap_or(found));
        if !sound {
            damage.push(Damage {
                position,
                kind: DamageKind::Changed,
            });
        } else if link != Some(expected) && position == self.position + 1 {
            damage.push(Damage {
                position,
                kind: DamageKind::ChainBroken,
            });
        }
        self.position = position;
        // Goes on from what was kept, so that one damage is told once.
        self.chain = link.unwrap_or(expected);
        sound
    }
}
