//! What stands in the tables? Reads them as text with the line of every row, and says what is wrong where.
//!
//! Shared by the build script and by the tests that feed it broken tables.

use std::fmt;

/// The columns of a table, in their fixed order.
pub struct Layout {
    /// File name below `tables/`.
    pub file: &'static str,
    /// Header, cell by cell.
    pub columns: &'static [&'static str],
}

/// Materials: composition, moisture, density, cautions, sources.
pub const MATERIALS: Layout = Layout {
    file: "materials.csv",
    columns: &[
        "id",
        "name",
        "group",
        "nitrogen_pct_dry_low",
        "nitrogen_pct_dry_typical",
        "nitrogen_pct_dry_high",
        "cn_low",
        "cn_typical",
        "cn_high",
        "carbon_pct_dry_typical",
        "moisture_pct_wet_low",
        "moisture_pct_wet_typical",
        "moisture_pct_wet_high",
        "bulk_density_kg_m3_low",
        "bulk_density_kg_m3_typical",
        "bulk_density_kg_m3_high",
        "ash_pct_dry",
        "lignin_pct_dry",
        "cellulose_pct_dry",
        "hemicellulose_pct_dry",
        "phosphorus_pct_dry",
        "potassium_pct_dry",
        "calcium_pct_dry",
        "magnesium_pct_dry",
        "sodium_pct_dry",
        "ph",
        "degradability",
        "flags",
        "sources",
        "basis",
        "notes",
    ],
};
/// What people call each material.
pub const NAMES: Layout = Layout {
    file: "names.csv",
    columns: &["id", "name", "kind", "note"],
};
/// Publications behind the figures.
pub const SOURCES: Layout = Layout {
    file: "sources.csv",
    columns: &["key", "kind", "citation", "address"],
};
/// Vessels of known volume.
pub const MEASURES: Layout = Layout {
    file: "measures.csv",
    columns: &[
        "id",
        "name",
        "plural",
        "other_words",
        "volume_l_low",
        "volume_l_typical",
        "volume_l_high",
        "source",
        "note",
    ],
};
/// How a material can be found.
pub const CONDITIONS: Layout = Layout {
    file: "conditions.csv",
    columns: &["id", "name", "other_words"],
};
/// What a condition does to the figures of which materials.
pub const CONDITION_EFFECTS: Layout = Layout {
    file: "condition_effects.csv",
    columns: &[
        "condition",
        "applies_to",
        "moisture_pct_wet_low",
        "moisture_pct_wet_typical",
        "moisture_pct_wet_high",
        "bulk_density_factor_low",
        "bulk_density_factor_typical",
        "bulk_density_factor_high",
        "source",
        "note",
    ],
};
/// What to say about each caution.
pub const CAUTIONS: Layout = Layout {
    file: "cautions.csv",
    columns: &[
        "flag_or_id",
        "reason",
        "advice",
        "local_rule",
        "before_use",
        "food_beds",
        "source",
    ],
};
/// What each published rule of hygiene asks, in words.
pub const HYGIENE_RULES: Layout = Layout {
    file: "hygiene_rules.csv",
    columns: &[
        "id",
        "name",
        "jurisdiction",
        "asks",
        "also_asks",
        "scope",
        "year",
        "source",
    ],
};
/// What is assumed where a row is silent.
pub const ASSUMPTIONS: Layout = Layout {
    file: "assumptions.csv",
    columns: &["key", "low", "typical", "high", "unit", "source", "note"],
};

/// What classes of crops need.
pub const CROP_GROUPS: Layout = Layout {
    file: "crop_groups.csv",
    columns: &[
        "id",
        "name",
        "nitrogen_g_m2_low",
        "nitrogen_g_m2_typical",
        "nitrogen_g_m2_high",
        "phosphate_g_m2_low",
        "phosphate_g_m2_typical",
        "phosphate_g_m2_high",
        "potash_g_m2_low",
        "potash_g_m2_typical",
        "potash_g_m2_high",
        "source",
        "note",
    ],
};
/// Crops: their class, what is eaten of them, the salt they bear.
pub const CROPS: Layout = Layout {
    file: "crops.csv",
    columns: &[
        "id",
        "name",
        "other_words",
        "group",
        "part",
        "food_bed",
        "likes_acid",
        "salt_threshold_ds_m",
        "salt_slope_pct_per_ds_m",
        "removes_nitrogen_kg_t",
        "removes_phosphate_kg_t",
        "removes_potash_kg_t",
        "source",
        "note",
    ],
};
/// Limits of compost in pots, on lawns, around trees.
pub const COMPOST_USES: Layout = Layout {
    file: "compost_uses.csv",
    columns: &[
        "id",
        "name",
        "kind",
        "low",
        "typical",
        "high",
        "sieve_mm_low",
        "sieve_mm_high",
        "conductivity_ds_m_most",
        "ph_most",
        "needs_mature",
        "advice",
        "source",
        "note",
    ],
};
/// Figures for spreading compost; columns as in [`ASSUMPTIONS`].
pub const SPREADING: Layout = Layout {
    file: "spreading.csv",
    columns: ASSUMPTIONS.columns,
};

/// In which months what comes.
pub const SEASONS: Layout = Layout {
    file: "seasons.csv",
    columns: &["material", "first_month", "last_month", "source", "note"],
};

/// One thing that is wrong, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// File name below `tables/`.
    pub table: &'static str,
    /// Line in the file, from 1.
    pub line: u64,
    /// Id of the row; empty for the header.
    pub row: String,
    /// Column.
    pub column: String,
    /// What is wrong.
    pub what: String,
}

impl fmt::Display for Fault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "tables/{} line {}", self.table, self.line)?;
        if !self.row.is_empty() {
            write!(out, " ({})", self.row)?;
        }
        write!(out, ", column {}: {}", self.column, self.what)
    }
}

/// One row of a table.
pub struct Row<'table> {
    table: &'table Table,
    cells: &'table [String],
    /// Line in the file, from 1.
    pub line: u64,
}

impl<'table> Row<'table> {
    /// The first cell: what the row is called.
    pub fn id(&self) -> &'table str {
        &self.cells[0]
    }

    /// The cell under `column`.
    ///
    /// # Panics
    /// When the layout has no such column: a slip in the build script itself.
    pub fn text(&self, column: &str) -> &'table str {
        let columns = self.table.layout.columns;
        let place = columns.iter().position(|name| *name == column);
        let place = place.unwrap_or_else(|| panic!("no column {column}"));
        &self.cells[place]
    }

    /// The parts of a cell that lists things, without blanks and empty parts.
    pub fn list(&self, column: &str, separator: char) -> Vec<&'table str> {
        let parts = self.text(column).split(separator).map(str::trim);
        parts.filter(|part| !part.is_empty()).collect()
    }

    /// The number under `column`; `None` when the cell is empty.
    pub fn number(&self, column: &str) -> Result<Option<f64>, Fault> {
        let text = self.text(column);
        if text.is_empty() {
            return Ok(None);
        }
        match text.parse::<f64>() {
            Ok(value) if value.is_finite() => Ok(Some(value)),
            _ => Err(self.fault(column, format!("`{text}` is not a number"))),
        }
    }

    /// Low, typical and high of the figure `stem`; `None` when it is not given.
    ///
    /// A side that is empty beside a typical value is read as the typical value.
    pub fn range(&self, stem: &str) -> Result<Option<[f64; 3]>, Fault> {
        let column = |end: &str| match stem {
            "" => end.to_owned(),
            _ => format!("{stem}_{end}"),
        };
        let low = self.number(&column("low"))?;
        let high = self.number(&column("high"))?;
        let Some(typical) = self.number(&column("typical"))? else {
            return match (low, high) {
                (None, None) => Ok(None),
                _ => {
                    let what = "a range needs a typical value".to_owned();
                    Err(self.fault(&column("typical"), what))
                }
            };
        };
        if let Some(low) = low.filter(|low| *low > typical) {
            let what = format!("{low} is above the typical {typical}");
            return Err(self.fault(&column("low"), what));
        }
        if let Some(high) = high.filter(|high| *high < typical) {
            let what = format!("{high} is below the typical {typical}");
            return Err(self.fault(&column("high"), what));
        }
        Ok(Some([
            low.unwrap_or(typical),
            typical,
            high.unwrap_or(typical),
        ]))
    }

    /// Something wrong in this row.
    pub fn fault(&self, column: &str, what: String) -> Fault {
        Fault {
            table: self.table.layout.file,
            line: self.line,
            row: self.id().to_owned(),
            column: column.to_owned(),
            what,
        }
    }
}

/// One table as it stands in its file.
pub struct Table {
    /// Its file and columns.
    pub layout: &'static Layout,
    rows: Vec<(u64, Vec<String>)>,
}

impl Table {
    /// Reads a table whose header must be the one of the layout.
    pub fn read(layout: &'static Layout, text: &str) -> Result<Self, Fault> {
        let fault = |line: u64, column: &str, what: String| Fault {
            table: layout.file,
            line,
            row: String::new(),
            column: column.to_owned(),
            what,
        };
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .from_reader(text.as_bytes());
        let mut rows = Vec::new();
        for record in reader.records() {
            let record = record.map_err(|error| {
                let line = error.position().map_or(0, csv::Position::line);
                fault(line, "(whole row)", error.to_string())
            })?;
            let line = record.position().map_or(0, csv::Position::line);
            let cells: Vec<String> = record.iter().map(str::to_owned).collect();
            rows.push((line, cells));
        }
        if rows.is_empty() {
            return Err(fault(1, layout.columns[0], "the file is empty".to_owned()));
        }
        let (_, header) = rows.remove(0);
        for (place, column) in layout.columns.iter().enumerate() {
            let found = header.get(place).map_or("nothing", String::as_str);
            if found != *column {
                let what = format!("the header has `{found}` in its place");
                return Err(fault(1, column, what));
            }
        }
        if let Some(extra) = header.get(layout.columns.len()) {
            return Err(fault(1, extra, "the table has no such column".to_owned()));
        }
        for (line, cells) in &rows {
            if cells.len() != layout.columns.len() {
                let wanted = layout.columns.len();
                let what = format!("the row has {} cells, not {wanted}", cells.len());
                return Err(fault(*line, "(whole row)", what));
            }
        }
        Ok(Self { layout, rows })
    }

    /// The rows in the order of the file.
    pub fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        self.rows.iter().map(|(line, cells)| Row {
            table: self,
            cells,
            line: *line,
        })
    }

    /// The first row of that id.
    pub fn row(&self, id: &str) -> Option<Row<'_>> {
        self.rows().find(|row| row.id() == id)
    }
}

/// All tables of the catalogue.
pub struct Tables {
    /// See [`MATERIALS`].
    pub materials: Table,
    /// See [`NAMES`].
    pub names: Table,
    /// See [`SOURCES`].
    pub sources: Table,
    /// See [`MEASURES`].
    pub measures: Table,
    /// See [`CONDITIONS`].
    pub conditions: Table,
    /// See [`CONDITION_EFFECTS`].
    pub condition_effects: Table,
    /// See [`CAUTIONS`].
    pub cautions: Table,
    /// See [`HYGIENE_RULES`].
    pub hygiene_rules: Table,
    /// See [`ASSUMPTIONS`].
    pub assumptions: Table,
    /// See [`CROP_GROUPS`].
    pub crop_groups: Table,
    /// See [`CROPS`].
    pub crops: Table,
    /// See [`COMPOST_USES`].
    pub compost_uses: Table,
    /// See [`SPREADING`].
    pub spreading: Table,
    /// See [`SEASONS`].
    pub seasons: Table,
}

impl Tables {
    /// Reads every table; `text_of` gives the text of a file below `tables/`.
    pub fn read(text_of: impl Fn(&str) -> String) -> Result<Self, Fault> {
        let table = |layout: &'static Layout| Table::read(layout, &text_of(layout.file));
        Ok(Self {
            materials: table(&MATERIALS)?,
            names: table(&NAMES)?,
            sources: table(&SOURCES)?,
            measures: table(&MEASURES)?,
            conditions: table(&CONDITIONS)?,
            condition_effects: table(&CONDITION_EFFECTS)?,
            cautions: table(&CAUTIONS)?,
            hygiene_rules: table(&HYGIENE_RULES)?,
            assumptions: table(&ASSUMPTIONS)?,
            crop_groups: table(&CROP_GROUPS)?,
            crops: table(&CROPS)?,
            compost_uses: table(&COMPOST_USES)?,
            spreading: table(&SPREADING)?,
            seasons: table(&SEASONS)?,
        })
    }
}
