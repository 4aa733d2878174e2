//! How are the home tests done? One sheet each: what is needed, the steps, what the outcome says.

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
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    /// What it is called on the command line.
    pub name: &'static str,
    /// Its title.
    pub title: &'static str,
    /// What it tells.
    pub tells: &'static str,
    /// What is needed.
    pub needs: &'static str,
    /// What is done, step by step.
    pub steps: &'static [&'static str],
    /// What the outcome says.
    pub reading: &'static [&'static str],
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
            .find(|test| test.sheet().name == plain)
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

    /// Its sheet.
    #[must_use]
    pub const fn sheet(self) -> &'static Sheet {
        match self {
            Self::Bag => &BAG,
            Self::SelfHeating => &SELF_HEATING,
            Self::Reheating => &REHEATING,
            Self::Seedlings => &SEEDLINGS,
            Self::Germination => &GERMINATION,
            Self::Squeeze => &SQUEEZE,
            Self::Oven => &OVEN,
            Self::Sample => &SAMPLE,
        }
    }
}

const SAMPLE: Sheet = Sheet {
    name: "sample",
    title: "A sample that speaks for the heap",
    tells: "Every other test is only as good as the handful it is done with.",
    needs: "A trowel, a clean sheet or tray, gloves.",
    steps: &[
        "Choose ten places, at several depths and on all sides.",
        "Scrape the outer 5 to 10 cm away at each; it is drier and cooler than the rest.",
        "Take a trowel from each place and put all on the sheet.",
        "Mix well, pile it into a cone, quarter it, and throw two opposite quarters back.",
        "Repeat until one or two litres are left.",
    ],
    reading: &["Use it the same day, or keep it cool and loosely closed."],
    record: "Nothing to write down.",
};

const SQUEEZE: Sheet = Sheet {
    name: "squeeze",
    title: "The squeeze test",
    tells: "How moist it is; other tests need it moist.",
    needs: "A gloved hand.",
    steps: &[
        "Take a handful from the inside of the heap.",
        "Squeeze it as hard as you can and watch between the fingers.",
        "Open the hand and tap the ball.",
    ],
    reading: &[
        "Water runs: above 65 % water, too wet.",
        "A few drops: 55 to 60 %.",
        "No drops, and the ball holds until it is tapped: 45 to 55 %, right for ripening.",
        "It crumbles or dusts: below 40 %, too dry to work.",
    ],
    record: "heapwright read --squeeze moist",
};

const BAG: Sheet = Sheet {
    name: "bag",
    title: "The closed bag or jar",
    tells: "Whether it is at rest. What still rots uses up the air in there and turns foul.",
    needs: "A zip bag or a jar that closes tightly, a litre of compost, three to seven days.",
    steps: &[
        "Take a sample (see the sheet \"sample\") and bring it to \"no drops, ball holds\".",
        "Fill the bag, press most of the air out and close it; fill a jar two thirds and leave its lid a quarter turn short of tight, so that it cannot burst.",
        "Leave it at room temperature, out of the sun, for three days at least; a week tells more.",
        "See whether the bag has swollen.",
        "Open it outdoors, at arm's length, and fan the smell towards you; do not put your nose in.",
    ],
    reading: &[
        "Earthy or hardly any smell, bag flat: a sign of rest.",
        "Ammonia, sour or rotten, or a swollen bag: not finished.",
    ],
    record: "heapwright test --bag-days 7 --swollen no --bag-smell earthy",
};

const REHEATING: Sheet = Sheet {
    name: "reheating",
    title: "Does it heat again after turning?",
    tells: "Whether it is at rest; for heaps of half a cubic metre or more.",
    needs: "A probe thermometer, a fork, five days.",
    steps: &[
        "See that it is moist; water it while you turn where it is dry.",
        "Turn it, the outside to the inside, and write the turning down.",
        "From the next day on put the probe into the middle once a day, at the same hour, wait two or three minutes, and read the air in the shade as well.",
        "Go on for five days.",
    ],
    reading: &[
        "Less than 8 °C over the air all the time: a sign of rest.",
        "8 to 10 °C: nearly.",
        "More: it still works.",
        "A small or a dry heap stays cool whatever it is, and then this says nothing.",
    ],
    record: "heapwright read --temperature \"18 C core\" --air \"14 C\" --squeeze moist --fill 70%",
};

const SELF_HEATING: Sheet = Sheet {
    name: "self-heating",
    title: "Self-heating in a flask",
    tells: "How far it is from rest, in five classes.",
    needs: "A wide vacuum flask of a litre or more, a thermometer that reaches its lower third, up to ten days.",
    steps: &[
        "Take a sample, pick stones and wood larger than a thumbnail out, and bring it to \"no drops, ball holds\".",
        "Let it come to the temperature of the room, spread on a tray for some hours.",
        "Fill the flask loosely, put the thermometer into the lower third, and lay a cloth on top: air must get in.",
        "Read flask and room twice a day until it has fallen for two days, at most ten days.",
        "Take the largest difference between flask and room.",
    ],
    reading: &[
        "Up to 10 °C over the room: class V, very stable.",
        "10 to 20 °C: class IV. 20 to 30 °C: class III. 30 to 40 °C: class II. More: class I, raw.",
        "A home flask is smaller than the one the classes were made with and flatters, so the program counts one class rawer.",
    ],
    record: "heapwright test --heated-to \"28 C\" --room \"21 C\"",
};

const SEEDLINGS: Sheet = Sheet {
    name: "seedlings",
    title: "Seedlings in compost",
    tells: "Whether plants bear it.",
    needs: "Cress or radish seed, six small pots, clean potting mix or washed sand, ten days.",
    steps: &[
        "Sieve the compost and mix it half and half with the clean mix; that fills three pots. The other three get the mix alone: they are the control.",
        "Sow ten seeds in each pot, at the same depth, and water all alike.",
        "Keep them light and at room temperature, and moist.",
        "When the control is up, after five to ten days, count the seedlings of both.",
        "Look at the leaves too: yellow or curled ones tell of salt, ammonia or weedkiller.",
    ],
    reading: &[
        "As many as 80 % of the control or more: a sign of maturity; above 90 % a better one.",
        "Fewer: not mature.",
        "Cress forgives much, so a pass is weak and a failure is not; Chinese cabbage is the better judge.",
    ],
    record: "heapwright test --sown 30 --sprouted 27 --control-sown 30 --control-sprouted 29",
};

const GERMINATION: Sheet = Sheet {
    name: "germination",
    title: "Germination index",
    tells: "Whether it holds what harms roots: number and length of roots in one figure.",
    needs: "Cress seed, six saucers, filter or kitchen paper, clean water, scales, a ruler, three days.",
    steps: &[
        "Stir one part of dry matter into ten parts of water by weight: about 20 g of moist compost into 100 g of water. Let it stand for an hour and pour it through a cloth.",
        "Lay paper into each saucer; wet three with the extract and three with water, all with the same amount.",
        "Put ten seeds on each, cover, and keep them dark at about 25 °C; cress needs one to three days, radish three to five.",
        "Count the seeds that have sprouted and measure their roots.",
        "Index = sprouted here over sprouted in water, times mean root here over mean root in water.",
    ],
    reading: &[
        "80 % or more: a sign of maturity.",
        "50 to 80 %: nearly.",
        "Less than 50 %: harmful to plants.",
    ],
    record: "heapwright test --sown 30 --sprouted 27 --control-sown 30 --control-sprouted 29 --root-mm 30 --control-root-mm 34",
};

const OVEN: Sheet = Sheet {
    name: "oven",
    title: "Moisture by oven",
    tells: "How much of it is water, better than a squeeze does.",
    needs: "Kitchen scales, a baking tray, an oven, a day; open the window.",
    steps: &[
        "Weigh the empty tray, then the tray with about 200 g of a mixed sample.",
        "Dry it at 100 °C for twelve to twenty-four hours with the door a finger open.",
        "Weigh it, dry for an hour more, weigh again; stop when the weight stays.",
        "Moisture = what was lost over the wet weight without the tray.",
    ],
    reading: &["45 to 55 % suits ripening; 40 to 50 % suits storing and sieving."],
    record: "heapwright test --moisture 48",
};

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_test_is_found_by_its_name_and_has_a_whole_sheet() {
        for test in HomeTest::ALL {
            let sheet = test.sheet();
            assert_eq!(HomeTest::called(sheet.name), Some(test));
            assert!(!sheet.steps.is_empty() && !sheet.reading.is_empty());
            let lines = sheet.steps.iter().chain(sheet.reading);
            for line in lines.chain([&sheet.tells, &sheet.needs]) {
                assert!(line.ends_with('.'), "{line}");
                assert!(!line.to_lowercase().contains("safe"), "{line}");
            }
        }
        assert_eq!(HomeTest::called("Cress"), Some(HomeTest::Seedlings));
        assert_eq!(HomeTest::called("x-ray"), None);
    }
}
