//! Notes, with a picture if there is one.

use serde::{Deserialize, Serialize};

use crate::check::{Problem, Text, Wrong, within};
use crate::id::EventId;

/// Something worth writing down: a text, a picture or both.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Noted {
    /// What was written, at most 4,000 characters.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub text: Option<String>,
    /// About which heap.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heap: Option<EventId>,
    /// About which bed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bed: Option<EventId>,
    /// A picture, which is kept beside the journal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub picture: Option<Picture>,
}

/// A picture that is kept beside the journal under its digest.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Picture {
    /// SHA-256 of its bytes, as 64 hexadecimal digits in lower case.
    pub sha256: String,
    /// "image/jpeg", "image/png" or "image/webp".
    pub media_type: String,
    /// Width in pixels.
    pub width_px: u32,
    /// Height in pixels.
    pub height_px: u32,
    /// How many bytes, at most 2 MiB.
    pub bytes: u32,
}

/// The largest picture that is kept: 2 MiB.
pub const LARGEST_PICTURE_BYTES: u32 = 2 << 20;

impl Noted {
    pub(super) fn check(&self) -> Result<(), Problem> {
        Text::remark("text", self.text.as_deref())?;
        let empty = self
            .text
            .as_deref()
            .is_none_or(|text| text.trim().is_empty());
        let Some(picture) = &self.picture else {
            return if empty {
                Err(Problem::new("text", Wrong::Empty))
            } else {
                Ok(())
            };
        };
        let digest = picture.sha256.len() == 64
            && picture
                .sha256
                .bytes()
                .all(|byte| byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte));
        if !digest {
            return Err(Problem::new("picture.sha256", Wrong::NotADigest));
        }
        if !["image/jpeg", "image/png", "image/webp"].contains(&picture.media_type.as_str()) {
            return Err(Problem::new("picture.media_type", Wrong::NotAPicture));
        }
        for (field, size, most) in [
            ("picture.width_px", picture.width_px, 10_000),
            ("picture.height_px", picture.height_px, 10_000),
            ("picture.bytes", picture.bytes, LARGEST_PICTURE_BYTES),
        ] {
            within(field, f64::from(size), 1.0, f64::from(most))?;
        }
        Ok(())
    }
}
