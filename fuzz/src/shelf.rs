//! Where are inputs kept? One file an input, named by its content, in a folder a target.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// The folders `corpus` and `crashers` below one root.
#[derive(Clone, Debug)]
pub struct Shelf {
    root: PathBuf,
}

impl Shelf {
    /// The shelf below a folder.
    #[must_use]
    pub fn new(root: impl Into<PathBuf>) -> Self {
        Self { root: root.into() }
    }

    /// The shelf that is kept with this package.
    #[must_use]
    pub fn of_package() -> Self {
        Self::new(env!("CARGO_MANIFEST_DIR"))
    }

    /// Every input of `corpus` or `crashers` for a target, in the order of file names; none where
    /// the folder is missing.
    ///
    /// # Errors
    ///
    /// When a file cannot be read.
    pub fn inputs(&self, kind: &str, target: &str) -> io::Result<Vec<Vec<u8>>> {
        let folder = self.folder(kind, target);
        if !folder.exists() {
            return Ok(Vec::new());
        }
        let mut files = fs::read_dir(folder)?
            .map(|entry| entry.map(|entry| entry.path()))
            .collect::<io::Result<Vec<_>>>()?;
        files.sort();
        files.iter().map(fs::read).collect()
    }

    /// Keeps an input and gives back its file.
    ///
    /// # Errors
    ///
    /// When the folder or file cannot be written.
    pub fn keep(&self, kind: &str, target: &str, input: &[u8]) -> io::Result<PathBuf> {
        let folder = self.folder(kind, target);
        fs::create_dir_all(&folder)?;
        let file = folder.join(name_of(input));
        fs::write(&file, input)?;
        Ok(file)
    }

    fn folder(&self, kind: &str, target: &str) -> PathBuf {
        Path::new(&self.root).join(kind).join(target)
    }
}

/// The file name of an input: its 64-bit FNV-1a digest in hexadecimal digits.
#[must_use]
pub fn name_of(input: &[u8]) -> String {
    let digest = input
        .iter()
        .fold(0xcbf2_9ce4_8422_2325_u64, |digest, byte| {
            (digest ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
        });
    format!("{digest:016x}")
}

#[cfg(test)]
mod tests {
    use super::name_of;

    /// Values of the published FNV-1a test vectors for "" and "a".
    #[test]
    fn name_of_is_fnv_1a() {
        assert_eq!(name_of(b""), "cbf29ce484222325");
        assert_eq!(name_of(b"a"), "af63dc4c8601ec8c");
    }
}
