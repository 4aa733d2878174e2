# Formats of en-GB from the Common Locale Data Repository by ICU; written by tests/cldr.rs.

decimal-mark = .
date = { $month ->
        [1] { $day } January { $year }
        [2] { $day } February { $year }
        [3] { $day } March { $year }
        [4] { $day } April { $year }
        [5] { $day } May { $year }
        [6] { $day } June { $year }
        [7] { $day } July { $year }
        [8] { $day } August { $year }
        [9] { $day } September { $year }
        [10] { $day } October { $year }
        [11] { $day } November { $year }
       *[other] { $day } December { $year }
    }
day-of-month = { $month ->
        [1] { $day } January
        [2] { $day } February
        [3] { $day } March
        [4] { $day } April
        [5] { $day } May
        [6] { $day } June
        [7] { $day } July
        [8] { $day } August
        [9] { $day } September
        [10] { $day } October
        [11] { $day } November
       *[other] { $day } December
    }
month-of-year = { $month ->
        [1] January { $year }
        [2] February { $year }
        [3] March { $year }
        [4] April { $year }
        [5] May { $year }
        [6] June { $year }
        [7] July { $year }
        [8] August { $year }
        [9] September { $year }
        [10] October { $year }
        [11] November { $year }
       *[other] December { $year }
    }
short-month = { $month ->
        [1] Jan
        [2] Feb
        [3] Mar
        [4] Apr
        [5] May
        [6] Jun
        [7] Jul
        [8] Aug
        [9] Sept
        [10] Oct
        [11] Nov
       *[other] Dec
    }
time-of-24-hours = { $hour }:{ $minute }
time-of-12-hours = { $half ->
        [am] { $hour }:{ $minute }{"\u202F"}am
       *[pm] { $hour }:{ $minute }{"\u202F"}pm
    }
list-pair = { $first } and { $second }
list-middle = { $first }, { $second }
list-end = { $first } and { $second }
