//! Divides the wasm: what the first answer needs, and what is fetched after it.
//!
//! Functions marked with `wasm_split` in `apps/web` are the border. What only they reach goes into files of its own, which
//! a script beside them fetches when one of those functions is first called.

use std::fs;
use std::path::{Path, PathBuf};

use wasm_split_cli_support::{Options, transform};

use crate::Outcome;

/// The first part, and the glue that starts it.
pub const NAME: &str = "heapwright_web";

/// Writes the later parts and the script that fetches them into `glue`.
///
/// Returns where the first part is, which wasm-bindgen has yet to see.
pub fn split(wasm: &Path, glue: &Path) -> Outcome<PathBuf> {
    let whole =
        fs::read(wasm).map_err(|error| format!("{} could not be read: {error}", wasm.display()))?;
    let folder = wasm.with_file_name("parts");
    fs::create_dir_all(&folder)
        .map_err(|error| format!("{} could not be made: {error}", folder.display()))?;
    let first = folder.join(format!("{NAME}.wasm"));
    let main_module = format!("./{NAME}.js");
    let mut options = Options::new(&whole);
    options.output_dir = glue;
    options.main_out_path = &first;
    options.main_module = &main_module;
    options.link_name = "./later.js";
    options.target.web();
    let written =
        transform(options).map_err(|error| format!("the wasm could not be divided: {error:#}"))?;
    if written.split_modules.is_empty() {
        return Err(
            "nothing in apps/web is marked with wasm_split, so there is only one part".to_owned(),
        );
    }
    for later in written.split_modules {
        let failed =
            |error: String| format!("{} could not be made smaller: {error}", later.display());
        let bytes = fs::read(&later).map_err(|error| failed(error.to_string()))?;
        let bare = without_names(&bytes).map_err(|error| failed(error.to_string()))?;
        fs::write(&later, bare).map_err(|error| failed(error.to_string()))?;
    }
    Ok(first)
}

/// A module without its custom sections: names and notes, which nobody runs. (From the first part wasm-bindgen takes them.)
fn without_names(wasm: &[u8]) -> Result<Vec<u8>, wasmparser::BinaryReaderError> {
    const CUSTOM: u8 = 0;
    let mut bare = wasm_encoder::Module::new();
    for payload in wasmparser::Parser::new(0).parse_all(wasm) {
        if let Some((id, range)) = payload?.as_section()
            && id != CUSTOM
        {
            let [start, end] =
                [range.start, range.end].map(|at| usize::try_from(at).unwrap_or(usize::MAX));
            bare.section(&wasm_encoder::RawSection {
                id,
                data: wasm.get(start..end).unwrap_or_default(),
            });
        }
    }
    Ok(bare.finish())
}

/// True for what is fetched only after the first answer.
pub fn is_later(name: &str) -> bool {
    name.starts_with("split_") || name.starts_with("chunk_")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_go_and_code_stays() {
        use wasm_encoder::{CustomSection, Module, RawSection};
        let types = RawSection {
            id: 1,
            data: &[1, 0x60, 0, 0],
        };
        let mut bare = Module::new();
        bare.section(&types);
        let mut named = Module::new();
        named.section(&types);
        named.section(&CustomSection {
            name: "name".into(),
            data: b"\0".into(),
        });
        assert_eq!(without_names(&named.finish()).unwrap(), bare.finish());
        assert!(without_names(b"not wasm").is_err());
    }
}
