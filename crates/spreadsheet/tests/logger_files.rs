//! Small files of loggers, in many forms: all invented, of no maker. What is read of each, or which
//! sentence it gets.
#![allow(clippy::unwrap_used)]

use heapwright_journal::Moment;
use heapwright_spreadsheet::{
    Column, DateOrder, LoggerFile, LoggerMapping, OffsetWhy, TemperatureUnit, UnitWhy,
    read_local_logger, read_logger,
};

const DAY_FIRST: Option<DateOrder> = Some(DateOrder::DayFirst);
const MONTH_FIRST: Option<DateOrder> = Some(DateOrder::MonthFirst);

fn plain() -> LoggerMapping {
    LoggerMapping::default()
}

fn celsius() -> LoggerMapping {
    LoggerMapping {
        unit: Some(TemperatureUnit::Celsius),
        ..plain()
    }
}

fn ordered(date_order: Option<DateOrder>) -> LoggerMapping {
    LoggerMapping {
        date_order,
        ..plain()
    }
}

fn columns(time: &str, temperature: &str) -> LoggerMapping {
    LoggerMapping {
        time: Some(time.parse().unwrap()),
        temperature: Some(temperature.parse().unwrap()),
        ..celsius()
    }
}

fn told(file: &LoggerFile) -> String {
    file.rows
        .iter()
        .map(|row| format!("{} {}", row.moment, row.temperature_c.unwrap()))
        .collect::<Vec<_>>()
        .join(" | ")
}

/// What the file is called, what is said of it, what it holds, and what is read of it: all rows.
type Read = (&'static str, LoggerMapping, &'static str, &'static str);

fn that_are_read() -> Vec<Read> {
    vec![
        (
            "plain",
            plain(),
            "Time,Temperature (°C)\n2026-05-01 18:00,55.5\n2026-05-01 18:30,56\n",
            "2026-05-01T18:00:00Z 55.5 | 2026-05-01T18:30:00Z 56",
        ),
        (
            "a mark in front, returns",
            plain(),
            "\u{feff}timestamp,temp_c\r\n2026-05-01T18:00:00+02:00,55.5\r\n",
            "2026-05-01T18:00:00+02:00 55.5",
        ),
        (
            "returns alone",
            plain(),
            "timestamp,temp_c\r2026-05-01T18:00:00Z,55.5\r2026-05-01T19:00:00Z,54.5\r",
            "2026-05-01T18:00:00Z 55.5 | 2026-05-01T19:00:00Z 54.5",
        ),
        (
            "no line end",
            plain(),
            "timestamp,temp_c\n2026-05-01T18:00:00Z,55.5",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "semicolons and commas",
            plain(),
            "Datum;Temperatur °C\n01.05.2026 18:00;55,5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "tabs",
            plain(),
            "Date/Time\tCelsius\n2026/05/01 18:00:05\t55,5\n",
            "2026-05-01T18:00:05Z 55.5",
        ),
        (
            "quoted decimal commas",
            plain(),
            "\"Time\",\"Temp [°C]\"\n\"2026-05-01 18:00\",\"55,5\"\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "lines above the header",
            plain(),
            "Probe 7\nMade of \"tin\nInterval: 30 min\n\nNo,Date Time,Temp (C)\n1,2026-05-01 18:00,55.5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "remarks",
            plain(),
            "# depth 30 cm\n# time, place\ntime,temperature_c\n2026-05-01 18:00,55.5\n# probe moved\n2026-05-01 19:00,50.5\n",
            "2026-05-01T18:00:00Z 55.5 | 2026-05-01T19:00:00Z 50.5",
        ),
        (
            "header in a remark",
            plain(),
            "#time,temperature_c\n2026-05-01 18:00,55.5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "the delimiter declared",
            plain(),
            "sep=;\nTime;Temp (°C)\n2026-05-01 18:00;55.5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "date and time apart",
            plain(),
            "Date,Time,T1 (°C),Battery\n01/05/2026,18:00:00,55.5,3.1\n13/05/2026,6:05:00,54,3.1\n",
            "2026-05-01T18:00:00Z 55.5 | 2026-05-13T06:05:00Z 54",
        ),
        (
            "date and elapsed time",
            plain(),
            "Elapsed time,Date,Temp °C\n0:00,2026-05-01 18:00,55.5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "a date that says the time, and a time",
            plain(),
            "Date,Time,Temp °C\n2026-05-01 18:00,1800,55.5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "Fahrenheit",
            plain(),
            "Time,Temp (degF)\n2026-05-01 18:00,131\n2026-05-01 19:00,100\n",
            "2026-05-01T18:00:00Z 55 | 2026-05-01T19:00:00Z 37.78",
        ),
        (
            "Fahrenheit behind the numbers",
            plain(),
            "Time,Temp\n2026-05-01 18:00,131 °F\n2026-05-01 19:00,86F\n",
            "2026-05-01T18:00:00Z 55 | 2026-05-01T19:00:00Z 30",
        ),
        (
            "a line of units",
            plain(),
            "Time,Temp\n,°F\n2026-05-01 18:00,131\n",
            "2026-05-01T18:00:00Z 55",
        ),
        (
            "the unit above the header",
            plain(),
            "Unit: Fahrenheit\nTime,Temp\n2026-05-01 18:00,77\n",
            "2026-05-01T18:00:00Z 25",
        ),
        (
            "a guess of Celsius",
            plain(),
            "Time,Temp\n2026-05-01 18:00,12.5\n2026-05-02 18:00,61\n",
            "2026-05-01T18:00:00Z 12.5 | 2026-05-02T18:00:00Z 61",
        ),
        (
            "a guess of Fahrenheit",
            plain(),
            "Time,Temp\n2026-05-01 18:00,59\n2026-05-02 18:00,140\n",
            "2026-05-01T18:00:00Z 15 | 2026-05-02T18:00:00Z 60",
        ),
        (
            "twelve hours",
            plain(),
            "Time,Temp °C\n5/31/2026 12:00:00 AM,55.5\n5/31/2026 1:05 pm,56\n",
            "2026-05-31T00:00:00Z 55.5 | 2026-05-31T13:05:00Z 56",
        ),
        (
            "the whole column tells the order",
            plain(),
            "Time,Temp °C\n01/05/2026 18:00,55.5\n30/05/2026 18:00,50\n",
            "2026-05-01T18:00:00Z 55.5 | 2026-05-30T18:00:00Z 50",
        ),
        (
            "the order is said: month",
            ordered(MONTH_FIRST),
            "Time,Temp °C\n01/05/2026 18:00,55.5\n",
            "2026-01-05T18:00:00Z 55.5",
        ),
        (
            "the order is said: day",
            ordered(DAY_FIRST),
            "Time,Temp °C\n01/05/26 18:00,55.5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "the order is said: year",
            ordered(Some(DateOrder::YearFirst)),
            "Time,Temp °C\n26/05/01 18:00,55.5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "years of two digits",
            plain(),
            "Time,Temp °C\n12-31-26 18:00,55.5\n",
            "2026-12-31T18:00:00Z 55.5",
        ),
        (
            "an offset is said",
            LoggerMapping {
                offset_min: 120,
                ..plain()
            },
            "Time,Temp °C\n2026-05-01 18:00,55.5\n2026-05-01 18:00Z,55.5\n",
            "2026-05-01T18:00:00+02:00 55.5 | 2026-05-01T18:00:00Z 55.5",
        ),
        (
            "an offset in the header",
            LoggerMapping {
                offset_min: 120,
                ..plain()
            },
            "Time (GMT-05:30),Temp °C\n2026-05-01 18:00,55.5\n",
            "2026-05-01T18:00:00-05:30 55.5",
        ),
        (
            "columns by name",
            columns("LOGGED AT", "probe b"),
            "Logged at,Probe A,Probe B\n2026-05-01 18:00,20,55.5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "columns by number",
            columns("2", "3"),
            "x,y,z\n1,2026-05-01 18:00,55.5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "columns by number, and no header",
            columns("1", "3"),
            "2026-05-01 18:00;9;55,5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "one of two temperatures",
            LoggerMapping {
                temperature: Some(Column::Number(3)),
                ..celsius()
            },
            "Time,Temp air,Temp heap\n2026-05-01 18:00,20,55.5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "a column of dates that is named",
            LoggerMapping {
                date: Some(Column::Name("d".into())),
                time: Some(Column::Name("t".into())),
                ..celsius()
            },
            "d,t,temp\n2026-05-01,18:00,55.5\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "two columns and no header",
            celsius(),
            "2026-05-01 18:00,55.5\n2026-05-01 19:00,55\n",
            "2026-05-01T18:00:00Z 55.5 | 2026-05-01T19:00:00Z 55",
        ),
        (
            "humidity and dew point besides",
            plain(),
            "Time,Temperature(°C),Humidity(%),Dew point(°C)\n2026-05-01 18:00,55.5,90,53\n",
            "2026-05-01T18:00:00Z 55.5",
        ),
        (
            "rows without a temperature",
            plain(),
            "Time,Temp °C,Event\n2026-05-01 18:00,,start\n2026-05-01 18:30,55.5,\n",
            "2026-05-01T18:30:00Z 55.5",
        ),
        (
            "marks at the ends of lines",
            plain(),
            "Time,Temp °C\n2026-05-01 18:00,55.5,\n2026-05-01 18:30,55.5,,\n",
            "2026-05-01T18:00:00Z 55.5 | 2026-05-01T18:30:00Z 55.5",
        ),
        (
            "thousandths and a sign",
            plain(),
            "Time,Temp °C\n2026-05-01 18:00:00.125,−3.25\n",
            "2026-05-01T18:00:00.125Z -3.25",
        ),
        (
            "a remark on two lines",
            plain(),
            "Time,Temp °C,Remark\n2026-05-01 18:00,55.5,\"a \"\"b\"\"\nc\"\n2026-05-01 19:00,55,\n",
            "2026-05-01T18:00:00Z 55.5 | 2026-05-01T19:00:00Z 55",
        ),
        (
            "other words",
            plain(),
            "Fecha;Hora;Temperatura (ºC)\n31/05/2026;18:00;55,5\n",
            "2026-05-31T18:00:00Z 55.5",
        ),
    ]
}

#[test]
fn files_are_read() {
    let files = that_are_read();
    assert!(files.len() >= 40);
    for (name, mapping, text, expected) in files {
        let file = read_logger(text.as_bytes(), &mapping).map_err(|error| error.to_string());
        let file = file.unwrap_or_else(|error| panic!("{name}: {error}"));
        assert_eq!(told(&file), expected, "{name}");
        assert_eq!(file.fault_count, 0, "{name}: {:?}", file.faults);
        for sentence in file.understood.sentences() {
            assert!(
                sentence.ends_with('.') && !sentence.contains('\n'),
                "{sentence}"
            );
        }
    }
}

#[test]
fn other_encodings_are_read() {
    let text = "Zeit;Temp °C\n2026-05-01 18:00;55,5\n";
    let latin: Vec<u8> = text
        .chars()
        .map(|c| u8::try_from(u32::from(c)).unwrap())
        .collect();
    let mut sixteen = vec![0xff, 0xfe];
    sixteen.extend(text.encode_utf16().flat_map(u16::to_le_bytes));
    for (bytes, encoding) in [(latin, "Latin-1"), (sixteen, "UTF-16")] {
        let file = read_logger(&bytes, &plain()).unwrap();
        assert_eq!(told(&file), "2026-05-01T18:00:00Z 55.5");
        assert_eq!(file.understood.encoding, encoding);
    }
}

#[test]
fn what_must_be_said_is_asked_for() {
    for (mapping, text, sentence) in [
        (
            plain(),
            "",
            "The file is empty; export it from the logger again.",
        ),
        (
            plain(),
            "PK\u{3}\u{4}abc",
            "This is a workbook and no text; save it as CSV in the spreadsheet program.",
        ),
        (
            plain(),
            "Time,Temp\0",
            "This is no text; save it as CSV in UTF-8.",
        ),
        (
            plain(),
            "a,b,c\n1,2,3\n",
            "No line names columns of times and temperatures; say which they are, by name or number: \"a\", \"b\", \"c\".",
        ),
        (
            columns("when", "x"),
            "a,b\n1,2\n",
            "There is no column \"when\"; take one of these: \"a\", \"b\".",
        ),
        (
            columns("1", "9"),
            "a,b\n2026-05-01 18:00,2\n",
            "There is no column 9; take one of these: \"a\", \"b\".",
        ),
        (
            plain(),
            "Time,T1,T2\n2026-05-01 18:00,55,56\n",
            "Several columns may hold the temperature; say which: \"T1\", \"T2\".",
        ),
        (
            plain(),
            "Timestamp,When,Temp\n2026-05-01 18:00,2026-05-01 18:00,56\n",
            "Several columns may hold the times; say which: \"Timestamp\", \"When\".",
        ),
        (
            plain(),
            "Time,Temp °C/°F\n2026-05-01 18:00,56\n",
            "The column \"Temp °C/°F\" names both units; say whether it holds degrees Celsius or Fahrenheit.",
        ),
        (
            plain(),
            "Time,Temp\n2026-05-01 18:00,45\n2026-05-01 19:00,68\n",
            "Numbers from 45.0 to 68.0 may be degrees Celsius or Fahrenheit; say which.",
        ),
        (
            plain(),
            "Time,Temp °C\n01/05/2026 18:00,56\n",
            "The date in row 2, \"01/05/2026\", can be read in more than one way; say whether day, month or year stands first.",
        ),
        (
            plain(),
            "Time,Temp °C\n31/05/2026 18:00,56\n05/31/2026 18:00,56\n",
            "The date in row 3, \"05/31/2026\", stands in another order than those before it; say whether day, month or year stands first.",
        ),
        (
            plain(),
            "Time,Temp °C\n1777651200,56\n",
            "No row could be read; the first fault is this. Row 2, column 1: \"1777651200\" is a bare number and no time; write times like 2026-05-01 18:00.",
        ),
        (
            plain(),
            "Time,Temp °C\n",
            "The file has no rows with a temperature; export it again.",
        ),
        (
            plain(),
            "Time,Temp °C\n2026-05-01 18:00,55,5\n",
            "No row could be read; the first fault is this. Row 2, column 3: there are 3 fields and the header has 2; put numbers with a comma in quotation marks, or part fields by semicolons.",
        ),
    ] {
        let error = read_logger(text.as_bytes(), &mapping).map(|file| told(&file));
        assert_eq!(
            error.map_err(|error| error.to_string()),
            Err(sentence.to_owned())
        );
    }
}

#[test]
fn faults_are_told_by_row_and_column() {
    let text = "Time,Temp °C,Remark\n\
        2026-05-01 18:00,55.5,\n\
        yesterday,55.5,\n\
        2026-05-01,55.5,\n\
        18:00,55.5,\n\
        2026-02-30 18:00,55.5,\n\
        2026-05-01 18:00,=1+1,\n\
        2026-05-01 18:00,NaN,\n\
        2026-05-01 18:00,-127,\n\
        2026-05-01 18:00,131 °F,\n\
        2026-05-01 18:00,55.5,\"a\" b\n\
        2026-05-01 18:00,55.5,\"a b\n\
        2026-05-01 19:00,55.5,a,b\n\
        2026-05-01 19:00\n\
        2026-05-01 19:00,55.5,\n";
    let file = read_logger(text.as_bytes(), &plain()).unwrap();
    assert_eq!(
        told(&file),
        "2026-05-01T18:00:00Z 55.5 | 2026-05-01T19:00:00Z 55.5"
    );
    let told: Vec<String> = file.faults.iter().map(ToString::to_string).collect();
    assert_eq!(
        told,
        [
            "Row 3, column 1: \"yesterday\" is no time; write it like 2026-05-01 18:00.",
            "Row 4, column 1: \"2026-05-01\" has no time of day; write it like 2026-05-01 18:00.",
            "Row 5, column 1: \"18:00\" has no date; write it like 2026-05-01 18:00 or name the column of dates.",
            "Row 6, column 1: \"2026-02-30\" is not in the calendar of 1900 to 2199; mend it or say in which order day and month stand.",
            "Row 7, column 2: \"=1+1\" is no number; write it like 55.5.",
            "Row 8, column 2: \"NaN\" is no number; write it like 55.5.",
            "Row 9, column 2: -127.0 °C is outside of -60 to 120 °C; take the row out or check the unit.",
            "Row 10, column 2: \"131\" has another unit than the rest; write all in one unit.",
            "Row 11, column 3: something stands behind a closing quotation mark; write marks inside a text twice.",
            "Row 12, column 3: a quotation mark is not closed within 65536 bytes; close it.",
            "Row 13, column 4: there are 4 fields and the header has 3; put numbers with a comma in quotation marks, or part fields by semicolons.",
            "Row 14, column 2: the row has too few fields, 1 of 3; fill in the rest or take the row out.",
        ]
    );
    assert_eq!(file.fault_count, 12);
}

/// Local time has the offset of each day, unless the file says one.
#[test]
fn times_in_local_time_have_the_offset_of_their_day() {
    let summer = |shown: Moment| {
        let day = shown.to_string();
        if ("2026-03-29".."2026-10-25").contains(&day.as_str()) {
            120
        } else {
            60
        }
    };
    let read = |text: &str| {
        let file = read_local_logger(text.as_bytes(), &celsius(), &summer).unwrap();
        let moments: Vec<String> = (file.rows.iter())
            .map(|row| row.moment.to_string())
            .collect();
        (moments.join(" "), file.understood.offset)
    };
    let rows = "2026-01-15 12:00,41\n2026-07-15 12:00,42\n2026-07-15T12:00:00Z,43\n";
    assert_eq!(
        read(&format!("Time,Temp\n{rows}")),
        (
            "2026-01-15T12:00:00+01:00 2026-07-15T12:00:00+02:00 2026-07-15T12:00:00Z".to_owned(),
            OffsetWhy::OfEachDay
        )
    );
    let header = read("\"Time, GMT-05:00\",Temp\n2026-07-15 12:00,42\n");
    assert_eq!(header.0, "2026-07-15T12:00:00-05:00");
    assert_eq!(header.1, OffsetWhy::Header { offset_min: -300 });
    let own = read("Time,Temp\n2026-07-15T12:00:00Z,43\n");
    assert_eq!(own.1, OffsetWhy::InEveryRow);
}

#[test]
fn what_was_understood_is_told() {
    let text = "Time;Temp\n31/05/2026 18:00;140,5\n";
    let file = read_logger(text.as_bytes(), &plain()).unwrap();
    assert!(matches!(file.understood.unit_why, UnitWhy::Guess { .. }));
    assert_eq!(file.understood.offset, OffsetWhy::Said { offset_min: 0 });
    assert_eq!(
        file.understood.sentences(),
        [
            "The file is in UTF-8, its fields are parted by semicolons, and its header is row 1.",
            "Times stand in column 1 (\"Time\"), temperatures in column 2 (\"Temp\").",
            "Temperatures from 140.5 to 140.5 are taken as degrees Fahrenheit: this is a guess, for in degrees Celsius the heap would have boiled; say the unit if it is wrong.",
            "Dates have the day first: only so all of them can be.",
            "Times without an offset are taken as UTC+00:00, summer and winter.",
        ]
    );
}

#[test]
fn limits_are_kept_with_a_sentence() {
    let many = |rows: usize| {
        let mut text = "Time,Temp °C\n".to_owned();
        for row in 0..rows {
            let (hour, minute, second) = (row / 3600 % 24, row / 60 % 60, row % 60);
            let day = row / 86_400 + 1;
            text.push_str(&format!(
                "2026-05-{day:02} {hour:02}:{minute:02}:{second:02},55.5\n"
            ));
        }
        text
    };
    let file = read_logger(many(200_000).as_bytes(), &plain()).unwrap();
    assert_eq!(file.rows.len(), 200_000);
    let wide = format!("{}Time,Temp °C\n", "x,".repeat(199));
    let large = vec![b'a'; (20 << 20) + 1];
    for (bytes, sentence) in [
        (
            many(200_001).into_bytes(),
            "The file has more than 200000 rows; split it.",
        ),
        (
            wide.into_bytes(),
            "The file has 201 columns and at most 200 are read; take some out.",
        ),
        (large, "The file is larger than 20 MiB; split it."),
    ] {
        let error = read_logger(&bytes, &plain()).unwrap_err();
        assert_eq!(error.to_string(), sentence);
    }
    let faulty = format!(
        "Time,Temp °C\n{}2026-05-01 18:00,55.5\n",
        "x,1\n".repeat(1000)
    );
    let file = read_logger(faulty.as_bytes(), &plain()).unwrap();
    assert_eq!(
        (file.fault_count, file.faults.len(), file.rows.len()),
        (1000, 100, 1)
    );
    assert_eq!(file.faults[99].row, 101);
}
