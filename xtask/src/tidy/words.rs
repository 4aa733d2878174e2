//! Does any file hold words that tell of the place where it was written rather than of compost?
//!
//! Folders of one machine, hosts of package registries, and talk about how the text came to be help no reader of the project.
//! The words are kept in two halves so that this file does not find itself.

use super::{File, Findings, numbered};

/// Each word in two halves. Those of letters alone are found as whole words, the others anywhere; case does not matter.
const WORDS: [(&str, &str); 15] = [
    ("ses", "sion"),
    ("ses", "sions"),
    ("sub", "agent"),
    ("sub", "agents"),
    ("seed doc", "ument"),
    ("system pro", "mpt"),
    ("language mo", "del"),
    ("/wo", "rk/"),
    ("/tmp/tar", "get"),
    ("/tmp/ws", "-"),
    ("registry.npm", "js.org"),
    ("static.cra", "tes.io"),
    ("index.cra", "tes.io"),
    ("files.python", "hosted.org"),
    ("deb.deb", "ian.org"),
];

/// Written by Cargo, which names the index in its own way.
const NOT_WRITTEN_BY_US: [&str; 1] = ["Cargo.lock"];

/// Looks for the words.
pub fn check(files: &[File]) -> Findings {
    let words: Vec<String> = WORDS
        .iter()
        .map(|(one, other)| format!("{one}{other}"))
        .collect();
    let mut faults = Vec::new();
    for file in files
        .iter()
        .filter(|file| !NOT_WRITTEN_BY_US.contains(&file.path.as_str()))
    {
        for (number, line) in numbered(file) {
            let line = line.to_lowercase();
            for word in words.iter().filter(|word| holds(&line, word)) {
                faults.push(format!("{}:{number} says \"{word}\", which does not belong in this project; say it otherwise", file.path));
            }
        }
    }
    Findings {
        faults,
        ..Findings::default()
    }
}

fn holds(line: &str, word: &str) -> bool {
    let of_letters = word.bytes().all(|byte| byte.is_ascii_alphabetic());
    line.match_indices(word).any(|(start, _)| {
        let before = line[..start].chars().next_back();
        let after = line[start + word.len()..].chars().next();
        let stands_alone = |neighbour: Option<char>| !neighbour.is_some_and(char::is_alphabetic);
        !of_letters || (stands_alone(before) && stands_alone(after))
    })
}

#[cfg(test)]
mod tests {
    use super::super::file;
    use super::*;

    #[test]
    fn words_are_found_whole_and_paths_anywhere() {
        let (half, other) = WORDS[0];
        let (folder, rest) = WORDS[7];
        let text = format!("a {half}{other}.\nob{half}{other}\ncd {folder}{rest}x\ncompost");
        let faults = check(&[file("a.md", &text), file("Cargo.lock", &text)]).faults;
        assert_eq!(faults.len(), 2, "{faults:?}");
        assert!(faults[0].starts_with("a.md:1") && faults[1].starts_with("a.md:3"));
    }
}
