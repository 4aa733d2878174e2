//! Compressed forms of a file, made once and handed out as they are.

use std::io::{Result, Write as _};

use brotli::enc::BrotliEncoderParams;
use flate2::Compression;
use flate2::write::GzEncoder;

/// The suffixes of compressed forms.
pub const SUFFIXES: [&str; 2] = ["br", "gz"];

/// The forms that are smaller than the file itself, each with its suffix.
pub fn smaller_forms(bytes: &[u8]) -> Result<Vec<(&'static str, Vec<u8>)>> {
    let [brotli, gzip] = SUFFIXES;
    let mut forms = vec![(brotli, compressed(bytes)?), (gzip, gzipped(bytes)?)];
    forms.retain(|(_, form)| form.len() < bytes.len());
    Ok(forms)
}

/// The brotli form of a file, as small as it gets.
fn compressed(bytes: &[u8]) -> Result<Vec<u8>> {
    let parameters = BrotliEncoderParams {
        quality: 11,
        size_hint: bytes.len(),
        ..BrotliEncoderParams::default()
    };
    let mut result = Vec::new();
    brotli::BrotliCompress(&mut &bytes[..], &mut result, &parameters)?;
    Ok(result)
}

/// Without name and time of the file, so that the same file has the same bytes.
fn gzipped(bytes: &[u8]) -> Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(bytes)?;
    encoder.finish()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_compressed_comes_back_whole() {
        let text = b"leaves and straw ".repeat(100);
        let mut back = Vec::new();
        brotli::BrotliDecompress(&mut compressed(&text).unwrap().as_slice(), &mut back).unwrap();
        assert_eq!(back, text);
        back.clear();
        let zipped = gzipped(&text).unwrap();
        std::io::Read::read_to_end(&mut flate2::read::GzDecoder::new(&zipped[..]), &mut back)
            .unwrap();
        assert_eq!(back, text);
        assert_eq!(zipped, gzipped(&text).unwrap(), "the same each time");
        assert_eq!(smaller_forms(&text).unwrap().len(), 2);
        assert!(
            smaller_forms(b"a").unwrap().is_empty(),
            "no form is larger than the file"
        );
    }
}
