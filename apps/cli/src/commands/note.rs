//! `heapwright note`: something worth writing down, with a picture if there is one.

use std::fs::File;
use std::io::{Read, Write};
use std::path::Path;

use heapwright_journal::content::{Noted, Picture};
use heapwright_journal::{Digest, WriteError};
use heapwright_state::RecordError;
use imagesize::ImageType;

use crate::arguments::NoteArguments;
use crate::failure::Failure;
use crate::keeping::Keeping;
use crate::naming;
use crate::telling::record_and_tell;

/// The largest picture that the journal takes: 2 MiB.
const LARGEST_PICTURE_BYTES: u32 = 2 << 20;

/// Runs the command.
pub fn run(arguments: &NoteArguments, out: &mut impl Write) -> Result<(), Failure> {
    let mut keeping = Keeping::to_write(&arguments.record.journal)?;
    let text = arguments
        .text
        .as_deref()
        .map(str::trim)
        .filter(|text| !text.is_empty())
        .map(str::to_owned);
    if text.is_none() && arguments.picture.is_none() {
        return Err(Failure::Input(
            "say what to write down, or give a picture with --picture".to_owned(),
        ));
    }
    let heap = arguments
        .heap
        .as_deref()
        .map(|text| keeping.heap(Some(text)))
        .transpose()?;
    let bed = arguments
        .bed
        .as_deref()
        .map(|text| naming::bed(&keeping.state, text))
        .transpose()?;
    let picture = arguments.picture.as_deref().map(picture).transpose()?;
    let (picture, bytes) = picture.unzip();
    let noted = Noted {
        text,
        heap,
        bed,
        picture,
    };
    // Nothing is kept of a note that cannot be.
    let content = heapwright_journal::Content::from(noted);
    content
        .check()
        .map_err(|problem| Failure::from(RecordError::Write(WriteError::Impossible(problem))))?;
    keeping.happened(&arguments.record)?;
    if let Some(bytes) = bytes {
        keeping.keep_picture(&bytes)?;
    }
    record_and_tell(&mut keeping, &arguments.record, vec![content], out)
}

/// A picture that can be kept, and its bytes.
fn picture(path: &Path) -> Result<(Picture, Vec<u8>), Failure> {
    let shown = path.display().to_string();
    let failed = |error| Failure::Read {
        path: shown.clone(),
        error,
    };
    let mut bytes = Vec::new();
    File::open(path)
        .map_err(failed)?
        // One byte more than is kept, so that what is too large is seen to be.
        .take(u64::from(LARGEST_PICTURE_BYTES) + 1)
        .read_to_end(&mut bytes)
        .map_err(failed)?;
    let refuse = |what: &str| Failure::Input(format!("--picture: {shown} {what}"));
    let count = u32::try_from(bytes.len())
        .ok()
        .filter(|count| *count <= LARGEST_PICTURE_BYTES)
        .ok_or_else(|| {
            refuse(
                "has more than 2 MiB and is not made smaller here: save it with fewer pixels first",
            )
        })?;
    let media_type = match imagesize::image_type(&bytes) {
        Ok(ImageType::Jpeg) => "image/jpeg",
        Ok(ImageType::Png) => "image/png",
        Ok(ImageType::Webp) => "image/webp",
        _ => return Err(refuse("is no JPEG, PNG or WebP: save it as one of them")),
    };
    let size = imagesize::blob_size(&bytes)
        .map_err(|_| refuse("does not say how large it is: save it anew"))?;
    let pixels = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    Ok((
        Picture {
            sha256: Digest::of(&bytes).to_string(),
            media_type: media_type.to_owned(),
            width_px: pixels(size.width),
            height_px: pixels(size.height),
            bytes: count,
        },
        bytes,
    ))
}
