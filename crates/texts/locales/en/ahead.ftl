# What the page says of the days ahead of a heap.

# Headings.
looking-ahead = Looking ahead
inside = Inside the heap
# While it is computed, and when it was stopped or could not be.
computing = Computing what is likely…
stopped = Stopped. What was computed until then stands below.
stopped-early = Stopped before there was anything to show.
# "Feed" is the button that opens the form for what goes in.
nothing-ahead = Nothing lies in this heap yet, so there is nothing to look ahead to. Log what goes in with Feed, and its days ahead stand here.
no-simulator = This browser cannot compute the days ahead. Update it, or try another one.
simulator-unfetched = What computes the days ahead could not be fetched. Load the page again when there is signal.
# The page and the worker beside it are of two versions.
question-unread = What computes for this page is of another version than the page. Load the page again.
simulation-broke = The days ahead could not be computed. Try again; if that does not help, load the page again.
# Under a picture over time.
days-from-now = Days are counted from now: what is left of 0 is past.

# What can be looked at over time, short: buttons beside each other.
value-core = Core
value-moisture = Moisture
value-oxygen = Oxygen
value-volume = Volume

# When it is turned: buttons beside each other.
turning-not-at-all = Not at all
turning-now = Now
turning-in-3-days = In 3 days

# Names of ways to go on. $water: "15 L".
leave-alone = Leave it alone
turn-now = Turn it now
turn-in-3-days = Turn it in 3 days
water-now = Water it now with { $water }
water-now-and-turn-now = Water it now with { $water } and turn it now
water-now-and-turn-in-3-days = Water it now with { $water } and turn it in 3 days

# Which weather was taken. $latitude and $longitude are the two messages after the sentence.
weather-of-place = Weather: the usual for this garden's place ({ $latitude }, { $longitude }) on each day of the year; the runs differ around it.
latitude = { $side ->
        [south] { $degrees }°{"\u00A0"}south
       *[north] { $degrees }°{"\u00A0"}north
    }
longitude = { $side ->
        [west] { $degrees }°{"\u00A0"}west
       *[east] { $degrees }°{"\u00A0"}east
    }
weather-without-place = Weather: the usual at 50°{"\u00A0"}north, for the journal does not say where the garden lies; the runs differ around it.
# Follows either of them.
# $degrees: a difference of temperatures, such as "3 °C".
weather-rough = Its temperatures are a guess from latitude and height, good to about { $degrees }.

percent = { NUMBER($percent, maximumFractionDigits: 0) }{"\u00A0"}%
figures = Core { $core }, edge { $edge }, air outside { $outside }; lowest oxygen { $oxygen }; moisture { $moisture }; volume { $volume }.

# A picture over time in a sentence. $name: "Moisture"; the others are figures.
over-time-steady = { $name }: about { $now } now, and so it stays.
over-time = { $name }: about { $now } now; from now on between { $least } and { $most }.
# Follows either of them.
runs-apart = Nine of ten runs lie between { $low } and { $high }.

# A table that compares ways to go on: what stands before its figures, and its rows.
compared-head = From now on
compared-core = Core at its warmest
compared-hot-days = Days at { $limit } or more
compared-oxygen = Lowest oxygen
oxygen-percent = { $number }{"\u00A0"}%
compared-sour-days = Days short of air
compared-driest = Driest
compared-water = Water wanted at the end
water-none = none
water-too-much = none, { $water } too much
compared-volume = Volume at the end
compared-ready = Ready from
not-yet = not yet

# What a way to go on changes against leaving the heap alone. $differences are some of the clauses below, joined as a list.
differences = { $name }: { $differences }.
no-difference = { $name }: no difference that matters.
core-warmer = the core is { $degrees } warmer at its warmest
core-cooler = the core is { $degrees } cooler at its warmest
# $days: "3 days".
hot-longer = it is at { $limit } or more for { $days } longer
hot-less = it is at { $limit } or more for { $days } less
sour-longer = some part is short of air for { $days } longer
sour-less = some part is short of air for { $days } less
# Points of the share of water in its mass.
less-dry = it gets { NUMBER($points, maximumFractionDigits: 0) } percent of moisture less dry
drier = it gets { NUMBER($points, maximumFractionDigits: 0) } percent of moisture drier
ends-smaller = it ends { $volume } smaller
ends-larger = it ends { $volume } larger
ready-sooner = { $days ->
        [one] it is ready { NUMBER($days, maximumFractionDigits: 1) } day sooner
       *[other] it is ready { NUMBER($days, maximumFractionDigits: 1) } days sooner
    }
ready-later = { $days ->
        [one] it is ready { NUMBER($days, maximumFractionDigits: 1) } day later
       *[other] it is ready { NUMBER($days, maximumFractionDigits: 1) } days later
    }
may-be-ready = it may be ready in that time
is-not-ready = it is not ready in that time
