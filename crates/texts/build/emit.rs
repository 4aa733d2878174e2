//! Writes the messages as Rust for the source language, and as one pack for each other.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use crate::message::{File, Kind, Message, Piece};

// The marks of `src/pattern.rs`; control characters never stand in a sentence.
const ARGUMENT: char = '\u{1}';
const SELECT: char = '\u{2}';
const VARIANT: char = '\u{3}';
const OF_VARIANT: char = '\u{4}';
const END: char = '\u{5}';
const NUMBER: char = '\u{6}';
const MESSAGE: char = '\u{1e}';
const FILE: char = '\u{1d}';

/// A module for each file, with a function for each message.
pub fn functions(files: &BTreeMap<String, File>) -> String {
    let counts: Vec<usize> = files.values().map(Vec::len).collect();
    let mut rust = format!(
        "/// How many messages each file has.\npub(crate) const COUNTS: [usize; {}] = {counts:?};\n\n",
        counts.len()
    );
    let _ = writeln!(
        rust,
        "/// What each file is called.\n#[cfg(feature = \"all-languages\")]\npub(crate) const NAMES: [&str; {}] = {:?};\n",
        files.len(),
        files.keys().collect::<Vec<_>>()
    );
    for (place, (name, file)) in files.iter().enumerate() {
        let module = name.replace('-', "_");
        let _ = write!(
            rust,
            "/// The messages of `{name}.ftl`.\npub mod {module} {{\n    use crate::{{File, Locale}};\n    #[allow(unused_imports)]\n    use crate::pattern::Argument;\n\n    static FILE: File = File {{\n        place: {place},\n        english: &[\n"
        );
        for message in file {
            let _ = writeln!(rust, "            {:?},", encoded(message, message));
        }
        rust.push_str("        ],\n    };\n");
        for (index, message) in file.iter().enumerate() {
            function(&mut rust, index, message);
        }
        listed(&mut rust, name, file);
        rust.push_str("}\n\n");
    }
    let _ = writeln!(
        rust,
        "/// All messages, for tests.\n#[cfg(test)]\npub(crate) static ALL: [&[crate::Listed]; {}] = [{}];",
        files.len(),
        files
            .keys()
            .map(|name| format!("{}::LISTED", name.replace('-', "_")))
            .collect::<Vec<_>>()
            .join(", ")
    );
    rust
}

/// What a test needs to say every message without knowing it.
fn listed(rust: &mut String, name: &str, file: &File) {
    rust.push_str("\n    #[cfg(test)]\n    pub(crate) const LISTED: &[crate::Listed] = &[\n");
    for (index, message) in file.iter().enumerate() {
        let arguments: Vec<String> = message
            .arguments
            .iter()
            .map(|(argument, kind)| format!("({argument:?}, {})", *kind == Kind::Number))
            .collect();
        let _ = writeln!(
            rust,
            "        crate::Listed {{ file: &FILE, name: {name:?}, id: {:?}, index: {index}, arguments: &[{}] }},",
            message.id,
            arguments.join(", ")
        );
    }
    rust.push_str("    ];\n");
}

fn function(rust: &mut String, index: usize, message: &Message) {
    let name = rust_name(&message.id);
    let english = shown(&message.pattern)
        .replace('\\', "\\\\")
        .replace(['\u{a0}', '\n'], " ")
        .replace('[', "\\[")
        .replace(']', "\\]");
    let head = format!("    /// {english}\n    #[must_use]\n");
    if message.arguments.is_empty() {
        let _ = write!(
            rust,
            "\n{head}    pub fn {name}(locale: Locale) -> &'static str {{\n        FILE.text(locale, {index})\n    }}\n"
        );
        return;
    }
    let structure = camel_case(&message.id);
    let lifetime = if message
        .arguments
        .iter()
        .any(|(_, kind)| *kind == Kind::Text)
    {
        "<'a>"
    } else {
        ""
    };
    let anonymous = if lifetime.is_empty() { "" } else { "<'_>" };
    let mut fields = String::new();
    let mut arguments = String::new();
    for (argument, kind) in &message.arguments {
        let field = rust_name(argument);
        let (written, variant) = match kind {
            Kind::Text => ("&'a str", "Text"),
            Kind::Number => ("f64", "Number"),
        };
        let _ = writeln!(
            fields,
            "        /// Stands for `${argument}`.\n        pub {field}: {written},"
        );
        let _ = write!(arguments, "Argument::{variant}(self.{field}), ");
    }
    let _ = write!(
        rust,
        "\n    /// {english}\n    #[derive(Clone, Copy)]\n    pub struct {structure}{lifetime} {{\n{fields}    }}\n\n    impl {structure}{anonymous} {{\n        /// In words.\n        #[must_use]\n        pub fn said(self, locale: Locale) -> String {{\n            FILE.said(locale, {index}, &[{arguments}])\n        }}\n    }}\n"
    );
}

/// A whole language in the order of the source: files and in them messages.
pub fn pack(source: &BTreeMap<String, File>, translated: &BTreeMap<String, File>) -> String {
    let mut pack = String::new();
    for (place, (name, file)) in source.iter().enumerate() {
        if place > 0 {
            pack.push(FILE);
        }
        for (index, message) in file.iter().enumerate() {
            if index > 0 {
                pack.push(MESSAGE);
            }
            let found = translated
                .get(name)
                .and_then(|file| file.iter().find(|found| found.id == message.id));
            pack.push_str(&found.map_or_else(String::new, |found| encoded(found, message)));
        }
    }
    pack
}

/// The pattern as text, arguments by their place among those of the source.
fn encoded(message: &Message, source: &Message) -> String {
    let mut text = String::new();
    pieces(&mut text, &message.pattern, source);
    text
}

fn pieces(text: &mut String, pattern: &[Piece], source: &Message) {
    let place = |name: &str| {
        let at = source.arguments.iter().position(|(known, _)| known == name);
        digit(at.unwrap_or(0))
    };
    for piece in pattern {
        match piece {
            Piece::Text(value) => text.push_str(value),
            Piece::Argument(name) => text.extend([ARGUMENT, place(name)]),
            Piece::Number(name, least, most) => text.extend([
                NUMBER,
                place(name),
                digit(usize::from(*least)),
                digit(usize::from(*most)),
            ]),
            Piece::Select {
                by,
                variants,
                default,
            } => {
                text.extend([SELECT, place(by), digit(*default)]);
                for (key, pattern) in variants {
                    text.push(VARIANT);
                    text.push_str(key);
                    text.push(OF_VARIANT);
                    pieces(text, pattern, source);
                }
                text.push(END);
            }
        }
    }
}

/// A small number as one letter from "A" on.
fn digit(number: usize) -> char {
    u8::try_from(number)
        .ok()
        .and_then(|number| b'A'.checked_add(number))
        .map_or('A', char::from)
}

/// The pattern as a translator would read it.
fn shown(pattern: &[Piece]) -> String {
    let mut text = String::from("");
    for piece in pattern {
        match piece {
            Piece::Text(value) => text.push_str(value),
            Piece::Argument(name) | Piece::Number(name, ..) => {
                let _ = write!(text, "`{name}`");
            }
            Piece::Select {
                variants, default, ..
            } => {
                if let Some((_, pattern)) = variants.get(*default) {
                    text.push_str(&shown(pattern));
                }
            }
        }
    }
    text
}

fn rust_name(id: &str) -> String {
    let name = id.replace('-', "_");
    match name.as_str() {
        "in" | "of" | "for" | "type" | "use" | "where" | "move" | "as" | "if" | "loop" | "box"
        | "match" | "true" | "false" => format!("{name}_"),
        _ => name,
    }
}

fn camel_case(id: &str) -> String {
    id.split('-')
        .map(|word| {
            let mut letters = word.chars();
            letters
                .next()
                .map(|first| first.to_uppercase().collect::<String>() + letters.as_str())
                .unwrap_or_default()
        })
        .collect()
}
