//! Which file answers this request, and in which form?
//!
//! - A path that names a file of the bundle gets that file; compressed when the browser takes brotli or gzip and the bundle holds it so.
//! - A path whose last segment has no dot is a place inside the page and gets `index.html`, whose references are then
//!   pointed upward, since a policy without `base` leaves no other way to make them hold at any depth.
//! - Everything else is not there.
//!
//! Files with a content hash in their name never change and may be kept for ever; the others are asked for again each time
//! and answered "unchanged" by their entity tag.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::sync::Arc;

const INDEX: &str = "index.html";
const FOR_EVER: &str = "public, max-age=31536000, immutable";
const ASK_AGAIN: &str = "no-cache";

#[derive(rust_embed::RustEmbed)]
#[folder = "$HEAPWRIGHT_BUNDLE"]
struct Embedded;

/// The files of the page.
#[derive(Clone)]
pub struct Page(Source);

#[derive(Clone)]
enum Source {
    Embedded,
    Given(Arc<BTreeMap<String, Vec<u8>>>),
}

/// A body with all that its headers need.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// The bytes to send, already in the encoding that `encoding` names.
    pub body: Cow<'static, [u8]>,
    /// Media type.
    pub content_type: &'static str,
    /// `Cache-Control`.
    pub cache_control: &'static str,
    /// Strong entity tag, quoted; differs between encodings.
    pub entity_tag: String,
    /// `Content-Encoding`, when the body is compressed.
    pub encoding: Option<&'static str>,
}

impl Page {
    /// The bundle that was embedded when the program was built.
    #[must_use]
    pub fn embedded() -> Self {
        Self(Source::Embedded)
    }

    /// A page of the given files, by path; `NAME.br` and `NAME.gz` hold compressed forms of `NAME`.
    #[must_use]
    pub fn of_files(files: BTreeMap<String, Vec<u8>>) -> Self {
        Self(Source::Given(Arc::new(files)))
    }

    /// The answer to a request for `path`, which begins with `/`; `None` when there is no such thing.
    #[must_use]
    pub fn answer(&self, path: &str, takes: Takes) -> Option<Answer> {
        let name = path.strip_prefix('/')?;
        if is_place(name) {
            return self.index(name.matches('/').count(), takes);
        }
        if name == INDEX {
            return self.index(0, takes);
        }
        if !is_plain(name) || name.ends_with(".br") || name.ends_with(".gz") {
            return None;
        }
        self.file(name, takes)
    }

    fn file(&self, name: &str, takes: Takes) -> Option<Answer> {
        let compressed = takes.in_order().find_map(|(encoding, suffix)| {
            let stored = self.read(&format!("{name}.{suffix}"))?;
            Some((Some(encoding), stored))
        });
        let (encoding, stored) = match compressed {
            Some(found) => found,
            None => (None, self.read(name)?),
        };
        Some(Answer {
            entity_tag: entity_tag(&stored),
            body: stored,
            content_type: content_type(name),
            cache_control: if has_content_hash(name) {
                FOR_EVER
            } else {
                ASK_AGAIN
            },
            encoding,
        })
    }

    fn index(&self, depth: usize, takes: Takes) -> Option<Answer> {
        if depth == 0 {
            return self.file(INDEX, takes);
        }
        let mut answer = self.file(INDEX, Takes::default())?;
        let text = String::from_utf8_lossy(&answer.body)
            .replace("=\"./", &format!("=\"{}", "../".repeat(depth)));
        answer.body = Cow::Owned(text.into_bytes());
        answer.entity_tag = entity_tag(&answer.body);
        Some(answer)
    }

    fn read(&self, name: &str) -> Option<Cow<'static, [u8]>> {
        match &self.0 {
            Source::Embedded => Embedded::get(name).map(|file| file.data),
            Source::Given(files) => files.get(name).map(|bytes| Cow::Owned(bytes.clone())),
        }
    }
}

/// A place inside the page rather than a file: the last segment has no dot.
fn is_place(name: &str) -> bool {
    !name.rsplit('/').next().unwrap_or("").contains('.')
}

/// Only names that the bundle could have made: no way up, no hidden file, no escape.
fn is_plain(name: &str) -> bool {
    name.split('/').all(|segment| {
        !segment.is_empty()
            && !segment.starts_with('.')
            && segment
                .bytes()
                .all(|byte| byte.is_ascii_alphanumeric() || matches!(byte, b'.' | b'-' | b'_'))
    })
}

/// `app-0123456789abcdef.css`: sixteen hexadecimal digits between a hyphen and the suffix.
fn has_content_hash(name: &str) -> bool {
    let Some((stem, _)) = name.rsplit_once('.') else {
        return false;
    };
    let Some((_, hash)) = stem.rsplit_once('-') else {
        return false;
    };
    hash.len() == 16
        && hash
            .bytes()
            .all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
}

fn content_type(name: &str) -> &'static str {
    match name.rsplit('.').next().unwrap_or("") {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "webmanifest" => "application/manifest+json",
        "json" => "application/json",
        "jsonl" => "application/jsonl",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// A tag of the bytes alone: 128 bits of two FNV-1a runs, enough to notice a change (it keeps no secret).
fn entity_tag(bytes: &[u8]) -> String {
    let mut tag = String::from("\"");
    for start in [0xcbf2_9ce4_8422_2325_u64, 0x9e37_79b9_7f4a_7c15] {
        let mut hash = start;
        for byte in bytes {
            hash = (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3);
        }
        // Writing to a String cannot fail.
        let _ = write!(tag, "{hash:016x}");
    }
    tag.push('"');
    tag
}

/// Which compressed forms a browser takes.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Takes {
    /// Brotli.
    pub brotli: bool,
    /// Gzip.
    pub gzip: bool,
}

impl Takes {
    /// From an `Accept-Encoding` header: what is named, or covered by `*`, and not with weight 0.
    ///
    /// Among what is taken our own order decides: brotli is the smaller, whatever weights say.
    #[must_use]
    pub fn from_header(accept_encoding: &str) -> Self {
        let weight_of = |wanted: &str| {
            accept_encoding.split(',').find_map(|offer| {
                let mut parts = offer.split(';').map(str::trim);
                if !parts.next()?.eq_ignore_ascii_case(wanted) {
                    return None;
                }
                let weight = parts
                    .find_map(|part| part.strip_prefix("q=").or_else(|| part.strip_prefix("Q=")));
                Some(weight.map_or(1.0, |text| text.parse::<f64>().unwrap_or(0.0)))
            })
        };
        let takes = |name| {
            weight_of(name)
                .or_else(|| weight_of("*"))
                .is_some_and(|weight| weight > 0.0)
        };
        Self {
            brotli: takes("br"),
            gzip: takes("gzip"),
        }
    }

    /// Encodings with the suffix of their files, the smallest first.
    fn in_order(self) -> impl Iterator<Item = (&'static str, &'static str)> {
        let brotli = self.brotli.then_some(("br", "br"));
        brotli
            .into_iter()
            .chain(self.gzip.then_some(("gzip", "gz")))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_form_is_sent_only_where_it_is_taken() {
        let takes = |header| {
            let Takes { brotli, gzip } = Takes::from_header(header);
            (brotli, gzip)
        };
        for header in ["br", "deflate, br, zstd", "gzip;q=0, BR;q=0.5"] {
            assert_eq!(takes(header), (true, false), "{header}");
        }
        for header in ["gzip, br", "*", "gzip;q=1.0, br;q=0.1"] {
            assert_eq!(takes(header), (true, true), "{header}");
        }
        for header in ["gzip", "br;q=0, *", "GZIP;q=0.2"] {
            assert_eq!(takes(header), (false, true), "{header}");
        }
        for header in ["", "br;q=0", "*;q=0", "brotli", "br;q=none", "identity"] {
            assert_eq!(takes(header), (false, false), "{header}");
        }
    }

    #[test]
    fn a_content_hash_is_sixteen_hexadecimal_digits() {
        assert!(has_content_hash("app-0123456789abcdef.css"));
        assert!(has_content_hash("parts/page_bg-0123456789abcdef.wasm"));
        for name in [
            "app.css",
            "app-0123456789ABCDEF.css",
            "app-0123.css",
            "-.",
            "app",
            "a-0123456789abcdef",
        ] {
            assert!(!has_content_hash(name), "{name}");
        }
    }

    #[test]
    fn only_names_that_a_bundle_could_have_are_looked_up() {
        for name in [
            "../Cargo.toml",
            ".git/config.txt",
            "a//b.js",
            "a%2e.js",
            "a\\b.js",
            "/etc/host.conf",
            "parts/../x.js",
        ] {
            assert!(!is_plain(name), "{name}");
        }
        assert!(is_plain("parts/app-0123456789abcdef.css"));
    }

    #[test]
    fn the_entity_tag_follows_the_bytes() {
        assert_eq!(entity_tag(b"heap"), entity_tag(b"heap"));
        assert_ne!(entity_tag(b"heap"), entity_tag(b"heaq"));
    }
}
