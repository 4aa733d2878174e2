//! How are the home tests done? One sheet each: what is needed, the steps, what the outcome says.

use heapwright_texts::Locale;
use heapwright_texts::messages::home_tests as messages;

/// A home test with a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HomeTest {
    /// A moist sample in a closed bag or jar.
    Bag,
    /// A sample in an insulated flask.
    SelfHeating,
    /// Whether the heap heats again after a turning.
    Reheating,
    /// Cress in the compost itself.
    Seedlings,
    /// Cress or radish in an extract, roots measured.
    Germination,
    /// A handful, squeezed.
    Squeeze,
    /// Water by an oven.
    Oven,
    /// How to take a sample that speaks for the heap.
    Sample,
}

/// The sheet of a test.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// What it is called on the command line, in every language.
    pub name: &'static str,
    /// Its title.
    pub title: &'static str,
    /// What it tells.
    pub tells: &'static str,
    /// What is needed.
    pub needs: &'static str,
    /// What is done, step by step.
    pub steps: Vec<&'static str>,
    /// What the outcome says.
    pub reading: Vec<&'static str>,
    /// How to write it down.
    pub record: &'static str,
}

impl HomeTest {
    /// All, in the order in which they are listed.
    pub const ALL: [Self; 8] = [
        Self::Sample,
        Self::Squeeze,
        Self::Bag,
        Self::Reheating,
        Self::SelfHeating,
        Self::Seedlings,
        Self::Germination,
        Self::Oven,
    ];

    /// The test that a word names; a jar is a bag, cress is seedlings.
    #[must_use]
    pub fn called(text: &str) -> Option<Self> {
        let plain = text.trim().to_lowercase().replace([' ', '_'], "-");
        Self::ALL
            .into_iter()
            .find(|test| test.name() == plain)
            .or(match plain.as_str() {
                "jar" | "closed-bag" => Some(Self::Bag),
                "flask" | "selfheating" => Some(Self::SelfHeating),
                "cress" | "seedling" | "seeds" | "radish" => Some(Self::Seedlings),
                "fist" | "handful" | "moisture" => Some(Self::Squeeze),
                "sampling" => Some(Self::Sample),
                "turning" => Some(Self::Reheating),
                _ => None,
            })
    }

    /// What it is called on the command line, in every language.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Bag => "bag",
            Self::SelfHeating => "self-heating",
            Self::Reheating => "reheating",
            Self::Seedlings => "seedlings",
            Self::Germination => "germination",
            Self::Squeeze => "squeeze",
            Self::Oven => "oven",
            Self::Sample => "sample",
        }
    }

    /// Its sheet.
    #[must_use]
    pub fn sheet(self, locale: Locale) -> Sheet {
        match self {
            Self::Bag => bag(locale),
            Self::SelfHeating => self_heating(locale),
            Self::Reheating => reheating(locale),
            Self::Seedlings => seedlings(locale),
            Self::Germination => germination(locale),
            Self::Squeeze => squeeze(locale),
            Self::Oven => oven(locale),
            Self::Sample => sample(locale),
        }
    }
}

fn sample(locale: Locale) -> Sheet {
    Sheet {
        name: HomeTest::Sample.name(),
        title: messages::sample_title(locale),
        tells: messages::sample_tells(locale),
        needs: messages::sample_needs(locale),
        steps: vec![
            messages::sample_step_1(locale),
            messages::sample_step_2(locale),
            messages::sample_step_3(locale),
            messages::sample_step_4(locale),
            messages::sample_step_5(locale),
        ],
        reading: vec![messages::sample_says_1(locale)],
        record: messages::sample_record(locale),
    }
}

fn squeeze(locale: Locale) -> Sheet {
    Sheet {
        name: HomeTest::Squeeze.name(),
        title: messages::squeeze_title(locale),
        tells: messages::squeeze_tells(locale),
        needs: messages::squeeze_needs(locale),
        steps: vec![
            messages::squeeze_step_1(locale),
            messages::squeeze_step_2(locale),
            messages::squeeze_step_3(locale),
        ],
        reading: vec![
            messages::squeeze_says_1(locale),
            messages::squeeze_says_2(locale),
            messages::squeeze_says_3(locale),
            messages::squeeze_says_4(locale),
        ],
        record: "heapwright read --squeeze moist",
    }
}

fn bag(locale: Locale) -> Sheet {
    Sheet {
        name: HomeTest::Bag.name(),
        title: messages::bag_title(locale),
        tells: messages::bag_tells(locale),
        needs: messages::bag_needs(locale),
        steps: vec![
            messages::bag_step_1(locale),
            messages::bag_step_2(locale),
            messages::bag_step_3(locale),
            messages::bag_step_4(locale),
            messages::bag_step_5(locale),
        ],
        reading: vec![messages::bag_says_1(locale), messages::bag_says_2(locale)],
        record: "heapwright test --bag-days 7 --swollen no --bag-smell earthy",
    }
}

fn reheating(locale: Locale) -> Sheet {
    Sheet {
        name: HomeTest::Reheating.name(),
        title: messages::reheating_title(locale),
        tells: messages::reheating_tells(locale),
        needs: messages::reheating_needs(locale),
        steps: vec![
            messages::reheating_step_1(locale),
            messages::reheating_step_2(locale),
            messages::reheating_step_3(locale),
            messages::reheating_step_4(locale),
        ],
        reading: vec![
            messages::reheating_says_1(locale),
            messages::reheating_says_2(locale),
            messages::reheating_says_3(locale),
            messages::reheating_says_4(locale),
        ],
        record: "heapwright read --temperature \"18 C core\" --air \"14 C\" --squeeze moist --fill 70%",
    }
}

fn self_heating(locale: Locale) -> Sheet {
    Sheet {
        name: HomeTest::SelfHeating.name(),
        title: messages::self_heating_title(locale),
        tells: messages::self_heating_tells(locale),
        needs: messages::self_heating_needs(locale),
        steps: vec![
            messages::self_heating_step_1(locale),
            messages::self_heating_step_2(locale),
            messages::self_heating_step_3(locale),
            messages::self_heating_step_4(locale),
            messages::self_heating_step_5(locale),
        ],
        reading: vec![
            messages::self_heating_says_1(locale),
            messages::self_heating_says_2(locale),
            messages::self_heating_says_3(locale),
        ],
        record: "heapwright test --heated-to \"28 C\" --room \"21 C\"",
    }
}

fn seedlings(locale: Locale) -> Sheet {
    Sheet {
        name: HomeTest::Seedlings.name(),
        title: messages::seedlings_title(locale),
        tells: messages::seedlings_tells(locale),
        needs: messages::seedlings_needs(locale),
        steps: vec![
            messages::seedlings_step_1(locale),
            messages::seedlings_step_2(locale),
            messages::seedlings_step_3(locale),
            messages::seedlings_step_4(locale),
            messages::seedlings_step_5(locale),
        ],
        reading: vec![
            messages::seedlings_says_1(locale),
            messages::seedlings_says_2(locale),
            messages::seedlings_says_3(locale),
        ],
        record: "heapwright test --sown 30 --sprouted 27 --control-sown 30 --control-sprouted 29",
    }
}

fn germination(locale: Locale) -> Sheet {
    Sheet {
        name: HomeTest::Germination.name(),
        title: messages::germination_title(locale),
        tells: messages::germination_tells(locale),
        needs: messages::germination_needs(locale),
        steps: vec![
            messages::germination_step_1(locale),
            messages::germination_step_2(locale),
            messages::germination_step_3(locale),
            messages::germination_step_4(locale),
            messages::germination_step_5(locale),
        ],
        reading: vec![
            messages::germination_says_1(locale),
            messages::germination_says_2(locale),
            messages::germination_says_3(locale),
        ],
        record: "heapwright test --sown 30 --sprouted 27 --control-sown 30 --control-sprouted 29 --root-mm 30 --control-root-mm 34",
    }
}

fn oven(locale: Locale) -> Sheet {
    Sheet {
        name: HomeTest::Oven.name(),
        title: messages::oven_title(locale),
        tells: messages::oven_tells(locale),
        needs: messages::oven_needs(locale),
        steps: vec![
            messages::oven_step_1(locale),
            messages::oven_step_2(locale),
            messages::oven_step_3(locale),
            messages::oven_step_4(locale),
        ],
        reading: vec![messages::oven_says_1(locale)],
        record: "heapwright test --moisture 48",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_test_is_found_by_its_name_and_has_a_whole_sheet() {
        for test in HomeTest::ALL {
            let sheet = test.sheet(Locale::default());
            assert_eq!(HomeTest::called(sheet.name), Some(test));
            assert!(!sheet.steps.is_empty() && !sheet.reading.is_empty());
            let lines = sheet.steps.iter().chain(&sheet.reading);
            for line in lines.chain([&sheet.tells, &sheet.needs]) {
                assert!(line.ends_with('.'), "{line}");
                assert!(!line.to_lowercase().contains("safe"), "{line}");
            }
        }
        assert_eq!(HomeTest::called("Cress"), Some(HomeTest::Seedlings));
        assert_eq!(HomeTest::called("x-ray"), None);
    }
}
