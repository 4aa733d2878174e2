//! What was printed, by whom, and how exactly must we meet it? The tables in `published/`.

use std::sync::OnceLock;

use serde::Deserialize;

/// One published figure.
#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct Published {
    /// Id of the check; several figures of one example have `.1`, `.2` behind it.
    pub id: String,
    /// What is given, and what is asked.
    pub given: String,
    /// The answer as its source prints it; "(calculated)" where it prints inputs and method alone.
    pub printed: String,
    /// The answer to meet.
    pub expected: f64,
    /// How far from it we may be.
    pub tolerance: f64,
    /// Why so far.
    pub reason: String,
    /// Unit of `expected`, `tolerance` and `wrong`.
    pub unit: String,
    /// A figure that must not come out: what a wrong method or a misprint gives.
    pub wrong: Option<f64>,
    /// Who published it; "from memory of" where it was not seen again.
    pub source: String,
}

impl Published {
    /// Asserts that a figure meets what was published and is not the wrong one.
    ///
    /// # Panics
    ///
    /// When it does not, or is.
    pub fn meets(&self, found: f64) {
        assert!(
            (found - self.expected).abs() <= self.tolerance,
            "{}: {found} {unit} where {} {unit} is expected to {} ({}), printed as \"{}\" by {}",
            self.id,
            self.expected,
            self.tolerance,
            self.reason,
            self.printed,
            self.source,
            unit = self.unit,
        );
        if let Some(wrong) = self.wrong {
            assert!(
                (found - wrong).abs() > self.tolerance,
                "{}: {found} {} is the figure that must not come out ({})",
                self.id,
                self.unit,
                self.reason
            );
        }
    }

    /// Id of the check without the number of its figure: `B9` of `B9.2`.
    #[must_use]
    pub fn check(&self) -> &str {
        self.id.split('.').next().unwrap_or(&self.id)
    }
}

/// Every published figure, family by family.
///
/// # Panics
///
/// When a table cannot be read.
pub fn all_published() -> &'static [Published] {
    static ALL: OnceLock<Vec<Published>> = OnceLock::new();
    ALL.get_or_init(|| {
        [
            include_str!("../published/moisture.csv"),
            include_str!("../published/carbon_to_nitrogen.csv"),
            include_str!("../published/carbon.csv"),
            include_str!("../published/density.csv"),
            include_str!("../published/nutrients.csv"),
            include_str!("../published/programmes.csv"),
            include_str!("../published/spreading.csv"),
        ]
        .into_iter()
        .flat_map(|table| {
            csv::Reader::from_reader(table.as_bytes())
                .into_deserialize()
                .collect::<Vec<_>>()
        })
        .map(|row| match row {
            Ok(row) => row,
            Err(error) => panic!("a published table cannot be read: {error}"),
        })
        .collect()
    })
}

/// The published figure of an id.
///
/// # Panics
///
/// When there is none.
#[must_use]
pub fn published(id: &str) -> &'static Published {
    match all_published().iter().find(|published| published.id == id) {
        Some(published) => published,
        None => panic!("no table has the check {id}"),
    }
}
