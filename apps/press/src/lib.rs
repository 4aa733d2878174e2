//! Sets type, for a worker beside the page.
//!
//! A document comes in as text and a PDF goes out. What stands in it was worked out elsewhere: no
//! answer and no catalogue is in this module, only type and the writer of the PDF.
#![cfg_attr(test, allow(clippy::unwrap_used))]

use heapwright_paper::{Document, PageSize, PaperError, typeset};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

/// Typesets a document; `letter` for paper of 8.5 by 11 inches, else A4.
///
/// # Errors
///
/// When the document cannot be read or typeset; a detail for who mends this program, in English.
#[wasm_bindgen]
pub fn press(document: &str, letter: bool) -> Result<Vec<u8>, JsValue> {
    pressed(document, letter).map_err(|detail| JsValue::from_str(&detail))
}

fn pressed(document: &str, letter: bool) -> Result<Vec<u8>, String> {
    let document: Document = serde_json::from_str(document).map_err(|error| error.to_string())?;
    let size = if letter {
        PageSize::Letter
    } else {
        PageSize::A4
    };
    // The sentence around it is the page's, in its language.
    typeset(&document, size).map_err(|error| match error {
        PaperError::Type => "type".to_owned(),
        PaperError::Writer(detail) => detail,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_document_that_was_sent_is_pressed_as_it_is_on_the_command_line() {
        let document = Document {
            title: "A page".to_owned(),
            garden: "A garden".to_owned(),
            language: "en".to_owned(),
            day: "1 May 2026".to_owned(),
            date: (2026, 5, 1),
            blocks: vec![heapwright_paper::Block::Paragraph("Words.".to_owned())],
            ..Document::default()
        };
        let text = serde_json::to_string(&document).unwrap();
        for (letter, size) in [(false, PageSize::A4), (true, PageSize::Letter)] {
            assert_eq!(
                pressed(&text, letter).unwrap(),
                typeset(&document, size).unwrap()
            );
        }
        assert!(pressed("{", false).unwrap_err().starts_with("EOF"));
    }
}
