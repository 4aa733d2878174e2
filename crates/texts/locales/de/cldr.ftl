# Formats of de-DE from the Common Locale Data Repository by ICU; written by tests/cldr.rs.

decimal-mark = ,
date = { $month ->
        [1] { $day }. Januar { $year }
        [2] { $day }. Februar { $year }
        [3] { $day }. März { $year }
        [4] { $day }. April { $year }
        [5] { $day }. Mai { $year }
        [6] { $day }. Juni { $year }
        [7] { $day }. Juli { $year }
        [8] { $day }. August { $year }
        [9] { $day }. September { $year }
        [10] { $day }. Oktober { $year }
        [11] { $day }. November { $year }
       *[other] { $day }. Dezember { $year }
    }
day-of-month = { $month ->
        [1] { $day }. Januar
        [2] { $day }. Februar
        [3] { $day }. März
        [4] { $day }. April
        [5] { $day }. Mai
        [6] { $day }. Juni
        [7] { $day }. Juli
        [8] { $day }. August
        [9] { $day }. September
        [10] { $day }. Oktober
        [11] { $day }. November
       *[other] { $day }. Dezember
    }
month-of-year = { $month ->
        [1] Januar { $year }
        [2] Februar { $year }
        [3] März { $year }
        [4] April { $year }
        [5] Mai { $year }
        [6] Juni { $year }
        [7] Juli { $year }
        [8] August { $year }
        [9] September { $year }
        [10] Oktober { $year }
        [11] November { $year }
       *[other] Dezember { $year }
    }
short-month = { $month ->
        [1] Jan
        [2] Feb
        [3] Mär
        [4] Apr
        [5] Mai
        [6] Jun
        [7] Jul
        [8] Aug
        [9] Sep
        [10] Okt
        [11] Nov
       *[other] Dez
    }
time-of-24-hours = { $hour }:{ $minute }
time-of-12-hours = { $half ->
        [am] { $hour }:{ $minute }{"\u202F"}AM
       *[pm] { $hour }:{ $minute }{"\u202F"}PM
    }
list-pair = { $first } und { $second }
list-middle = { $first }, { $second }
list-end = { $first } und { $second }
