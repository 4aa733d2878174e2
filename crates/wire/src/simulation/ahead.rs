//! What the page asks of the simulator beside it, and what that hands back, ready to be shown.
//!
//! Both are ours and of one version: unlike the files and answers of the program, they may change
//! with it.

use serde::{Deserialize, Serialize};

/// What will become of a heap, asked from the page.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct AheadQuestion {
    /// Lines of the journal that bear on the heap, one below the other.
    pub journal: String,
    /// Id of the heap.
    pub heap: String,
    /// What the clock says.
    pub now: String,
    /// Which turning is looked at: 0 none, 1 now, 2 in some days. Its runs come first.
    pub turn: usize,
    /// True when the heap is watered now.
    pub water: bool,
    /// True for degrees Fahrenheit and gallons.
    pub us_units: bool,
    /// Width of the pictures [px].
    pub width_px: f64,
}

/// All that is shown of a heap's days ahead, as far as it is computed.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct AheadShown {
    /// The ways to go on that are computed; the first is to leave it alone.
    pub options: Vec<OptionShown>,
    /// Where the option of each turning stands in that list.
    pub by_turn: [usize; 3],
    /// True when nothing more is to come.
    pub whole: bool,
    /// Figures of all options side by side.
    pub table: TableShown,
    /// What each option changes against leaving it alone, a sentence each.
    pub differences: Vec<String>,
    /// How much water is meant: "15 L".
    pub water: String,
    /// Which weather is taken, in a sentence.
    pub weather: String,
    /// That the last reading is far from what was computed, in a sentence to be shown first; empty
    /// when it is not.
    pub gainsaid: String,
    /// How the readings agree, in a sentence; empty without readings of the core.
    pub readings: String,
    /// What the probes showed; without rows when nothing was read.
    pub read: TableShown,
    /// What else was assumed, a sentence each.
    pub notices: Vec<String>,
    /// Half width and height of the room in which the heap is drawn [m].
    pub room_m: (f64, f64),
    /// What the heap stands between, counted among the sides that the pictures know.
    pub sides: usize,
    /// Temperature, moisture and oxygen of the cross-section.
    pub fields: Vec<FieldShown>,
    /// Which frame is nearest to now.
    pub frame_now: usize,
}

impl AheadShown {
    /// Takes the frames that are not told again from what was told before.
    pub fn keep_frames(&mut self, before: &Self) {
        for option in &mut self.options {
            if option.frames.is_empty()
                && let Some(same) = before.options.iter().find(|one| one.name == option.name)
            {
                option.frames.clone_from(&same.frames);
            }
        }
    }
}

/// One way to go on.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct OptionShown {
    /// What it is called: "Turn it now".
    pub name: String,
    /// What comes of it, a sentence each.
    pub sentences: Vec<String>,
    /// Core temperature, moisture, oxygen and volume over time.
    pub charts: Vec<ChartShown>,
    /// The heap cut open, at one time after the other; none when they are as they were told before.
    pub frames: Vec<FrameShown>,
}

/// A value over time.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct ChartShown {
    /// What it is: "Core temperature".
    pub name: String,
    /// Width of the picture [px].
    pub width_px: f64,
    /// Its height [px].
    pub height_px: f64,
    /// The inside of its SVG element.
    pub inside: String,
    /// The same in a sentence.
    pub sentence: String,
    /// What its lines and bands are: a class for the sample, and the words.
    pub key: Vec<(String, String)>,
    /// The same as a table, a row a day.
    pub table: TableShown,
    /// Where the value of each row stands in the picture [px].
    pub at: Vec<(f64, f64)>,
    /// Which row is now.
    pub at_now: usize,
    /// Upper and lower edge of the plot [px].
    pub plot_px: (f64, f64),
    /// The unit of the values.
    pub unit: String,
    /// True when the third and the fourth cell of a row tell half and nine of ten of the runs.
    pub has_bands: bool,
    /// True when the last cell of a row tells what was done and read.
    pub has_done: bool,
}

/// A table: a head over each column, and the first cell of a row is its head.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct TableShown {
    /// Heads of the columns.
    pub heads: Vec<String>,
    /// Rows.
    pub rows: Vec<Vec<String>>,
}

/// A field of the cross-section.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct FieldShown {
    /// What it is: "Temperature".
    pub name: String,
    /// Its unit.
    pub unit: String,
    /// Bounds between the steps of its colours, in this unit.
    pub steps: Vec<f64>,
}

/// The heap cut open at one time.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct FrameShown {
    /// The day: "9 May 2026", or "now".
    pub when: String,
    /// Its figures in a sentence.
    pub sentence: String,
    /// Layers from the ground up.
    pub layers: Vec<LayerShown>,
    /// Where a probe was read about then: share of the half width, share of the height, words.
    pub probes: Vec<(f64, f64, String)>,
}

/// A layer of the cross-section.
#[derive(Clone, Debug, Default, Deserialize, PartialEq, Serialize)]
pub struct LayerShown {
    /// How thick it is [m].
    pub thickness_m: f64,
    /// From the middle to the wall [m].
    pub half_width_m: f64,
    /// Each field's values from core to wall, in its unit.
    pub values: [Vec<f64>; 3],
}
