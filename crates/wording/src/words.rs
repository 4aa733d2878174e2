//! The words for what can be chosen: how a handful feels, how a heap smells.

use heapwright_journal::content::{
    Cover, Creature, Feeding, Ground, How, Look, ProbePlace, Shape, Smell, Squeeze, Stage, Sun,
    Thoroughness, Wall,
};
use heapwright_texts::Locale;
use heapwright_texts::messages::words as texts;

/// Something that can be chosen and has a word.
pub trait Word: Copy + PartialEq + 'static {
    /// All that can be chosen.
    fn choices() -> &'static [Self];

    /// What it is called.
    fn word(self, locale: Locale) -> &'static str;
}

macro_rules! words {
    ($($name:ident { $($choice:ident = $word:ident),+ $(,)? })+) => {
        $(impl Word for $name {
            fn choices() -> &'static [Self] {
                Self::ALL
            }

            fn word(self, locale: Locale) -> &'static str {
                match self {
                    $(Self::$choice => texts::$word(locale),)+
                    Self::Other => texts::of_a_newer_version(locale),
                }
            }
        })+
    };
}

words! {
    Feeding {
        Light = feeding_light,
        Medium = feeding_medium,
        Heavy = feeding_heavy,
    }
    Squeeze {
        Dusty = squeeze_dusty,
        Dry = squeeze_dry,
        Moist = squeeze_moist,
        Wet = squeeze_wet,
        Dripping = squeeze_dripping,
    }
    Smell {
        Faint = smell_faint,
        Earthy = smell_earthy,
        Fresh = smell_fresh,
        Ammonia = smell_ammonia,
        Sour = smell_sour,
        Rotten = smell_rotten,
        Musty = smell_musty,
    }
    Look {
        Steam = look_steam,
        WhiteThreads = look_white_threads,
        Mould = look_mould,
        Matted = look_matted,
        Slimy = look_slimy,
        DryPockets = look_dry_pockets,
        Sunk = look_sunk,
        Crumbly = look_crumbly,
        Unrecognisable = look_unrecognisable,
        Sprouting = look_sprouting,
    }
    Creature {
        Worms = creature_worms,
        Woodlice = creature_woodlice,
        Millipedes = creature_millipedes,
        Ants = creature_ants,
        FruitFlies = creature_fruit_flies,
        Flies = creature_flies,
        Maggots = creature_maggots,
        BeetleGrubs = creature_beetle_grubs,
        Slugs = creature_slugs,
        Mice = creature_mice,
        Rats = creature_rats,
    }
    ProbePlace {
        Core = place_core,
        Halfway = place_halfway,
        Edge = place_edge,
        Top = place_top,
        Bottom = place_bottom,
    }
    Shape {
        Box = shape_box,
        Cylinder = shape_cylinder,
        Cone = shape_cone,
        Drum = shape_drum,
    }
    Wall {
        Open = wall_open,
        Mesh = wall_mesh,
        Slatted = wall_slatted,
        Wood = wall_wood,
        Plastic = wall_plastic,
        Metal = wall_metal,
        Insulated = wall_insulated,
    }
    Cover {
        None = cover_none,
        Sheet = cover_sheet,
        Lid = cover_lid,
        Roof = cover_roof,
    }
    Ground {
        Soil = ground_soil,
        Paving = ground_paving,
    }
    Sun {
        Shade = sun_shade,
        Part = sun_part,
        Full = sun_full,
    }
    Stage {
        Active = stage_active,
        Curing = stage_curing,
        Finished = stage_finished,
    }
    Thoroughness {
        Loosened = turned_loosened,
        ForkedOver = turned_forked_over,
        InsideOut = turned_inside_out,
    }
    How {
        Mulch = spread_mulch,
        DugIn = spread_dug_in,
        PlantingHole = spread_planting_hole,
    }
}
