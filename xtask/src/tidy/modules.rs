//! Does every Rust file open by saying which question it answers?

use super::{File, Findings};

/// Looks at the first line that says anything.
pub fn check(files: &[File]) -> Findings {
    let faults = files
        .iter()
        .filter(|file| file.path.ends_with(".rs"))
        .filter(|file| {
            !file
                .text
                .lines()
                .find(|line| !line.trim().is_empty())
                .is_some_and(|line| line.starts_with("//!"))
        })
        .map(|file| {
            format!(
                "{} does not begin with `//!`; say in a sentence what it is for",
                file.path
            )
        })
        .collect();
    Findings {
        faults,
        ..Findings::default()
    }
}

#[cfg(test)]
mod tests {
    use super::super::file;
    use super::*;

    #[test]
    fn a_file_without_a_head_is_a_fault() {
        let files = [
            file("a.rs", "//! Heat.\nfn a() {}"),
            file("b.rs", "\nfn b() {}"),
            file("c.rs", ""),
            file("d.md", "x"),
        ];
        let faults = check(&files).faults;
        assert_eq!(faults.len(), 2, "{faults:?}");
        assert!(faults[0].starts_with("b.rs") && faults[1].starts_with("c.rs"));
    }
}
