//! The words for what can be chosen: how a handful feels, how a heap smells.

use heapwright_journal::content::{
    Cover, Creature, Feeding, Ground, How, Look, ProbePlace, Shape, Smell, Squeeze, Stage, Sun,
    Thoroughness, Wall,
};

/// Something that can be chosen and has a word.
pub trait Word: Copy + PartialEq + 'static {
    /// All that can be chosen.
    fn choices() -> &'static [Self];

    /// What it is called.
    fn word(self) -> &'static str;
}

macro_rules! words {
    ($($name:ident { $($choice:ident = $word:literal),+ $(,)? })+) => {
        $(impl Word for $name {
            fn choices() -> &'static [Self] {
                Self::ALL
            }

            fn word(self) -> &'static str {
                match self {
                    $(Self::$choice => $word,)+
                    Self::Other => "something a newer version knows",
                }
            }
        })+
    };
}

words! {
    Feeding {
        Light = "light",
        Medium = "medium",
        Heavy = "heavy",
    }
    Squeeze {
        Dusty = "dusty",
        Dry = "dry",
        Moist = "moist",
        Wet = "wet",
        Dripping = "dripping",
    }
    Smell {
        Faint = "hardly any smell",
        Earthy = "earthy",
        Fresh = "fresh",
        Ammonia = "ammonia",
        Sour = "sour",
        Rotten = "rotten",
        Musty = "musty",
    }
    Look {
        Steam = "steaming",
        WhiteThreads = "white threads",
        Mould = "mould",
        Matted = "matted",
        Slimy = "slimy",
        DryPockets = "dry pockets",
        Sunk = "sunk",
        Crumbly = "crumbly",
        Unrecognisable = "nothing to be told apart",
        Sprouting = "sprouting",
    }
    Creature {
        Worms = "worms",
        Woodlice = "woodlice",
        Millipedes = "millipedes",
        Ants = "ants",
        FruitFlies = "fruit flies",
        Flies = "flies",
        Maggots = "maggots",
        BeetleGrubs = "beetle grubs",
        Slugs = "slugs",
        Mice = "mice",
        Rats = "rats",
    }
    ProbePlace {
        Core = "core",
        Halfway = "halfway",
        Edge = "edge",
        Top = "top",
        Bottom = "bottom",
    }
    Shape {
        Box = "box",
        Cylinder = "cylinder",
        Cone = "free-standing",
        Drum = "drum",
    }
    Wall {
        Open = "no wall",
        Mesh = "wire mesh",
        Slatted = "slats",
        Wood = "wood",
        Plastic = "plastic",
        Metal = "metal",
        Insulated = "insulated",
    }
    Cover {
        None = "no cover",
        Sheet = "sheet",
        Lid = "lid",
        Roof = "roof",
    }
    Ground {
        Soil = "soil",
        Paving = "paving",
    }
    Sun {
        Shade = "shade",
        Part = "half sun",
        Full = "full sun",
    }
    Stage {
        Active = "active",
        Curing = "curing",
        Finished = "finished",
    }
    Thoroughness {
        Loosened = "loosened",
        ForkedOver = "forked over",
        InsideOut = "inside out",
    }
    How {
        Mulch = "left on top",
        DugIn = "worked in",
        PlantingHole = "into planting holes",
    }
}
