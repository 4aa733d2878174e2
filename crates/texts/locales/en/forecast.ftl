# What a heap is likely to do, computed many times over with what nobody knows exactly a little
# different each time: each time is a "run".

simulation-limits = This says what is likely, from the kind of what went in and the weather. One cold corner or one wet pocket can differ. It cannot tell hygiene: that takes measured temperatures and the record of turns.
bands = In brackets: where nine of ten runs lie that differ in what nobody knows exactly.

# Pieces that stand in the sentences below.
# A day counted from the start: "day 2.6".
day-of-case = day { NUMBER($day, maximumFractionDigits: 1) }
# Stands where a date would.
now = now
days = { $days ->
        [one] { NUMBER($days, maximumFractionDigits: 1) }{"\u00A0"}day
       *[other] { NUMBER($days, maximumFractionDigits: 1) }{"\u00A0"}days
    }
percent = { NUMBER($percent, maximumFractionDigits: 0) }{"\u00A0"}%
degrees-celsius = { NUMBER($degrees, maximumFractionDigits: 0) }{"\u00A0"}°C
degrees-fahrenheit = { NUMBER($degrees, maximumFractionDigits: 0) }{"\u00A0"}°F
# A figure and where nine of ten runs lie: "58 °C (52 °C to 63 °C)".
with-range = { $middle } ({ $low } to { $high })

# $time is "now", "day 3" or "9 May 2026"; $kind says which of the three: now, day, date.
core-warmest = { $kind ->
        [now] The core is warmest with { $core }, now.
        [day] The core is warmest with { $core }, on { $time }.
       *[date] The core is warmest with { $core }, on { $time }.
    }
# $limit: "55 °C". $days, here and below: "3 days", or "3 days (1 day to 5 days)".
stays-below = It stays below { $limit }.
stays-below-with-luck = It stays below { $limit }; with luck it is above that for { $days }.
is-hot = It is at { $limit } or more for { $days }.

air-short = { $kind ->
        [now] Air runs short in some part for { $days }, down to { $oxygen } % oxygen now: it may go sour there.
        [day] Air runs short in some part for { $days }, down to { $oxygen } % oxygen on { $time }: it may go sour there.
       *[date] Air runs short in some part for { $days }, down to { $oxygen } % oxygen on { $time }: it may go sour there.
    }
# Follows the sentence before this one.
air-short-in-runs = This is so for a day or more in { $share } of the runs.
air-may-run-short = Air may run short in some part: so in { $share } of the runs.

too-dry = It gets too dry to work well: down to { $moisture } moisture.
# $end: "by" when a run ends for good, "at" when a plan for some weeks ends.
wants-water = { $end ->
        [by] It wants { $water } of water by the end.
       *[at] It wants { $water } of water at the end.
    }
wants-water-range = { $end ->
        [by] It wants { $water } of water by the end ({ $low } to { $high }).
       *[at] It wants { $water } of water at the end ({ $low } to { $high }).
    }
too-much-water = { $end ->
        [by] It has { $water } of water too much by the end.
       *[at] It has { $water } of water too much at the end.
    }
too-much-water-range = { $end ->
        [by] It has { $water } of water too much by the end ({ $low } to { $high }).
       *[at] It has { $water } of water too much at the end ({ $low } to { $high }).
    }

ready-from = It may be ready to use from { $time } on.
ready-from-in-runs = { $end ->
        [by] It may be ready to use from { $time } on; by the end it is in { $share } of the runs.
       *[at] It may be ready to use from { $time } on; at the end it is in { $share } of the runs.
    }
not-ready = { $end ->
        [by] It is not ready to use by the end.
       *[at] It is not ready to use at the end.
    }
not-ready-in-all-runs = { $end ->
        [by] It is not ready to use by the end; it is in { $share } of the runs.
       *[at] It is not ready to use at the end; it is in { $share } of the runs.
    }

# Shares: "40 %", or "40 % (35 % to 46 %)".
lost = By the end it has lost { $volume } of its volume, { $dry-mass } of its dry matter and { $nitrogen } of its nitrogen.
ran-out = { $water } ran out below.

# How the readings of the core agree with what was computed.
readings-as-computed = { $count ->
        [one] The one reading of the core so far: as computed.
       *[other] The { NUMBER($count) } readings of the core so far: on average as computed.
    }
readings-warmer = { $count ->
        [one] The one reading of the core so far: { $degrees } warmer than computed.
       *[other] The { NUMBER($count) } readings of the core so far: on average { $degrees } warmer than computed.
    }
readings-cooler = { $count ->
        [one] The one reading of the core so far: { $degrees } cooler than computed.
       *[other] The { NUMBER($count) } readings of the core so far: on average { $degrees } cooler than computed.
    }

# Comes first where the last reading is far from what was computed. $probe and $computed: "60 °C"; $day: a date.
probe-gainsays = The probe showed { $probe } on { $day }, far from the { $computed } that is computed for then: believe the probe. What follows is worked out without it.

# What to know about a simulation. $names: materials or entries, "Straw; Grass, fresh and Leaves".
densities-unknown = No density is known of { $names }: that of similar materials is taken.
figures-estimated = Estimates without a published source: the figures of { $names }.
enclosure-assumed = The heap's enclosure is not described: an open heap of 1 m each way on soil is taken.
# $degrees: a difference of temperatures, such as "3 °C".
climate-rough = The usual temperatures are a guess from latitude and height, good to about { $degrees }.
weather-usual-hours = { $hours ->
        [one] The weather of { NUMBER($hours) } hour is not known: the usual is taken, and runs differ around it.
       *[other] The weather of { NUMBER($hours) } hours is not known: the usual is taken, and runs differ around it.
    }
weather-usual-days = { $days ->
        [one] The weather of { NUMBER($days) } day is not known: the usual is taken, and runs differ around it.
       *[other] The weather of { NUMBER($days) } days is not known: the usual is taken, and runs differ around it.
    }
weather-filled = { $gaps ->
        [one] The weather file has { NUMBER($gaps) } gap in its temperatures: those of up to six hours were bridged, longer ones filled with what is usual there.
       *[other] The weather file has { NUMBER($gaps) } gaps in its temperatures: those of up to six hours were bridged, longer ones filled with what is usual there.
    }
weather-sorted = Rows of the weather file that came twice: { NUMBER($twice) }, of which the later counts; rows put in order: { NUMBER($out-of-order) }.
behind-the-end = { $events ->
        [one] Left out, for they lie behind the last day: { NUMBER($events) } event.
       *[other] Left out, for they lie behind the last day: { NUMBER($events) } events.
    }
overfull = More went in at the start than the enclosure holds: it stands above the brim.
left-out = Left out, for this program cannot use them: { $names }.
moved-in = Compost from another heap is taken as that heap's own history suggests.
old-left-out = { $days ->
        [one] What went in more than { NUMBER($days) } day ago is left out.
       *[other] What went in more than { NUMBER($days) } days ago is left out.
    }
runs-failed = Runs that could not be computed and were left out: { NUMBER($count) }.
