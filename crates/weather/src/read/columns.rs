//! Which column holds what?

use super::Kind;
use super::header::Header;
use super::quantity::{QUANTITIES, Quantity, Unit};
use super::time::{DayOrder, Stamp, clocked, date, stamp, ymd};

/// Where the time stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct TimeColumns {
    date: Option<usize>,
    time: Option<usize>,
    year_month_day: Option<[usize; 3]>,
}

/// The columns of a file.
#[derive(Clone, Debug)]
pub(super) struct Columns {
    pub headers: Vec<Header>,
    quantities: [Option<usize>; QUANTITIES.len()],
    time: TimeColumns,
    /// Names of places.
    pub station: Option<usize>,
    has_time_of_day: bool,
}

const DATE_WORDS: [&str; 10] = [
    "date",
    "datum",
    "fecha",
    "timestamp",
    "valid",
    "zeitstempel",
    "zeitpunkt",
    "mess",
    "=dt",
    "=yyyymmdd",
];
const TIME_WORDS: [&str; 8] = [
    "=time", "=hour", "=zeit", "uhrzeit", "stunde", "=hora", "=heure", "=utc",
];
const STATION_WORDS: [&str; 9] = [
    "location", "station", "=site", "=city", "=name", "=place", "=ort", "=origin", "standort",
];
/// Running totals of a day are no rain of an hour.
const RUNNING_WORDS: [&str; 3] = ["daily", "today", "tages"];

impl Columns {
    /// What a row says if it is a header: it must name a time and a temperature.
    pub fn find<'a>(cells: impl Iterator<Item = &'a str>) -> Option<Self> {
        let headers: Vec<Header> = cells.map(Header::new).collect();
        let time = TimeColumns::find(&headers)?;
        let mut quantities = [None; QUANTITIES.len()];
        for (slot, quantity) in quantities.iter_mut().zip(QUANTITIES) {
            *slot = headers
                .iter()
                .enumerate()
                .filter(|(index, _)| !time.holds(*index))
                .filter_map(|(index, header)| quantity.named_by(header).map(|score| (score, index)))
                .min()
                .map(|(_, index)| index);
        }
        let station = headers
            .iter()
            .position(|header| STATION_WORDS.iter().any(|word| header.holds(word)));
        let columns = Self {
            headers,
            quantities,
            time,
            station,
            has_time_of_day: true,
        };
        let has = |quantity| columns.index(quantity).is_some();
        let enough = has(Quantity::Temperature) || has(Quantity::Minimum) && has(Quantity::Maximum);
        enough.then_some(columns)
    }

    /// How much was recognised.
    pub fn count(&self) -> usize {
        self.quantities.iter().flatten().count()
    }

    pub fn index(&self, quantity: Quantity) -> Option<usize> {
        QUANTITIES
            .iter()
            .position(|other| *other == quantity)
            .and_then(|place| self.quantities[place])
    }

    pub fn unit(&self, quantity: Quantity) -> Option<Unit> {
        quantity.unit(&self.headers[self.index(quantity)?])
    }

    /// Says whether rows have a time of day, upon which the kind depends.
    pub fn note_time_of_day(&mut self, has_time_of_day: bool) {
        self.has_time_of_day = has_time_of_day;
        let rain = QUANTITIES
            .iter()
            .position(|quantity| *quantity == Quantity::Rain);
        if let (true, Some(place)) = (has_time_of_day, rain) {
            self.quantities[place] = self.quantities[place].filter(|index| {
                !RUNNING_WORDS
                    .iter()
                    .any(|word| self.headers[*index].holds(word))
            });
        }
    }

    pub fn kind(&self) -> Kind {
        if self.has_time_of_day {
            Kind::Hourly
        } else {
            Kind::Daily
        }
    }

    /// Takes the row below the header, which holds units, into the headers.
    pub fn add_units<'a>(&mut self, cells: impl Iterator<Item = &'a str>) {
        for (header, unit) in self.headers.iter_mut().zip(cells) {
            if !unit.trim().is_empty() {
                let unit = unit.trim().trim_matches(['[', ']', '(', ')']);
                *header = Header::new(&format!("{} [{unit}]", header.said));
            }
        }
    }

    /// Header of the column in which a row's time stands.
    pub fn time_header(&self) -> &str {
        self.time
            .first()
            .map_or("", |index| &self.headers[index].said)
    }

    /// The text of the cells in which a row's time stands.
    pub fn time_text(&self, cell: impl Fn(usize) -> String) -> String {
        let cells: Vec<String> = self.time.indices().map(cell).collect();
        cells.join(" ").trim().to_owned()
    }

    /// A row's time.
    pub fn stamp(&self, cell: impl Fn(usize) -> String) -> Option<Stamp> {
        self.time.stamp(cell)
    }

    fn time_headers(&self) -> impl Iterator<Item = &Header> {
        self.time.indices().map(|index| &self.headers[index])
    }

    /// Whether the header says that a row is stamped with the end of its hour.
    pub fn says_hour_ending(&self) -> bool {
        self.time_headers()
            .any(|header| header.holds("ending") || header.holds("=end"))
    }

    /// Whether the header says that times are in UTC.
    pub fn says_utc(&self) -> bool {
        self.time_headers().any(|header| {
            let in_brackets = |word: &str| header.in_brackets().iter().any(|text| text == word);
            ["utc", "gmt"]
                .iter()
                .any(|word| header.words.iter().any(|other| other == word) || in_brackets(word))
        })
    }

    /// The order of day and month that the header says.
    pub fn says_order(&self) -> Option<DayOrder> {
        self.time_headers().find_map(|header| {
            let first = |start: &str| {
                header
                    .in_brackets()
                    .iter()
                    .any(|text| text.starts_with(start))
            };
            if first("mm/dd") || first("mm-dd") {
                Some(DayOrder::MonthFirst)
            } else if first("dd/mm") || first("dd-mm") {
                Some(DayOrder::DayFirst)
            } else {
                None
            }
        })
    }
}

impl TimeColumns {
    fn find(headers: &[Header]) -> Option<Self> {
        let column = |words: &[&str]| {
            headers.iter().position(|header| {
                words.iter().any(|word| header.holds(word)) && !header.holds("zone")
            })
        };
        let date = column(&DATE_WORDS);
        let time = headers.iter().enumerate().position(|(index, header)| {
            Some(index) != date
                && TIME_WORDS.iter().any(|word| header.holds(word))
                && !header.holds("zone")
        });
        let parts = [
            column(&["=year", "=jahr", "=annee", "=ano", "=yyyy", "=yr"]),
            column(&["=month", "=monat", "=mois", "=mes", "=mo"]),
            column(&["=day", "=tag", "=jour", "=dia", "=dy"]),
        ];
        let year_month_day = match parts {
            [Some(year), Some(month), Some(day)] => Some([year, month, day]),
            _ => None,
        };
        (date.is_some() || time.is_some() || year_month_day.is_some()).then_some(Self {
            date,
            time,
            year_month_day,
        })
    }

    fn indices(&self) -> impl Iterator<Item = usize> {
        let parts = self.year_month_day.filter(|_| self.date.is_none());
        self.date
            .into_iter()
            .chain(parts.into_iter().flatten())
            .chain(self.time)
    }

    fn first(&self) -> Option<usize> {
        self.indices().next()
    }

    fn holds(&self, index: usize) -> bool {
        self.indices().any(|other| other == index)
    }

    fn stamp(&self, cell: impl Fn(usize) -> String) -> Option<Stamp> {
        let time_text = self.time.map(&cell);
        let time_of_day = || match time_text.as_deref().map(str::trim) {
            None | Some("") => Some(None),
            Some(text) => clocked(text).map(Some),
        };
        if let Some(index) = self.date {
            let text = cell(index);
            if let Some(whole) = stamp(&text).filter(|whole| whole.clocked.is_some()) {
                return Some(whole);
            }
            return Some(Stamp {
                date: date(&text)?,
                clocked: time_of_day()?,
            });
        }
        // A column of times alone may hold dates too.
        if let Some(whole) = time_text.as_deref().and_then(stamp) {
            return Some(whole);
        }
        let [year, month, day] = self.year_month_day?;
        Some(Stamp {
            date: ymd(&cell(year), &cell(month), &cell(day))?,
            clocked: time_of_day()?,
        })
    }
}
