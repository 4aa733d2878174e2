# One line for each entry of the journal. $heap, $bed: names that the keeper gave.

# How long ago.
just-now = just now
minutes-ago = { $minutes ->
        [one] 1 minute ago
       *[other] { NUMBER($minutes, maximumFractionDigits: 0) } minutes ago
    }
hours-ago = { $hours ->
        [one] 1 hour ago
       *[other] { NUMBER($hours, maximumFractionDigits: 0) } hours ago
    }
yesterday = yesterday
days-ago = { $days ->
        [one] 1 day ago
       *[other] { NUMBER($days, maximumFractionDigits: 0) } days ago
    }
# $day: a date, such as "1 May 2026".
on-day = on { $day }

# Stand in the place of a name.
heap-not-known = a heap that is not known
bed-not-known = a bed that is not known

# Lengths: a depth, a height.
centimetres = { $number }{"\u00A0"}cm
inches = { $number }{"\u00A0"}in

# What a look saw; these stand in a row with commas between.
probe = { $place ->
        [core] { $temperature } in the core
        [halfway] { $temperature } halfway
        [edge] { $temperature } at the edge
        [top] { $temperature } at the top
        [bottom] { $temperature } at the bottom
       *[unknown] { $temperature } at the something a newer version knows
    }
deep = { $length } deep
air = air { $temperature }
# $squeeze: how a handful feels when it is squeezed: "dry", "moist".
feels = feels { $squeeze }
smell = smell: { $smells }
looks = looks: { $looks }
high = { $length } high
full = { $percent } full

# What a test found; these stand in a row with semicolons between.
laboratory = figures of a laboratory
self-heating = self-heating to { $highest } in a room of { $room }
# Control: the same seeds sown without compost.
germination = { NUMBER($sprouted) } of { NUMBER($sown) } seeds sprouted, { NUMBER($control-sprouted) } of { NUMBER($control-sown) } in the control
# The bag test: compost stays closed in a bag, and the bag swells or does not. $days: as written, $count: as a number.
bag-swollen = { $count ->
        [one] bag closed for { $days } day, swollen
       *[other] bag closed for { $days } days, swollen
    }
bag-not-swollen = { $count ->
        [one] bag closed for { $days } day, not swollen
       *[other] bag closed for { $days } days, not swollen
    }

# The lines.
garden-described = Garden described
garden-described-as = Garden described: { $name }
person-described = { $name } works here
measure-defined = One { $measure } holds { $volume }
material-defined = Own material: { $name }
material-measured = Measured: { $name }
heap-started = Started { $heap }
# $things: amounts in a row, such as "2 caddies of vegetable scraps, 2 L of water".
fed = Fed { $heap }: { $things }
turned = Turned { $heap }
# $how: "loosened", "forked over", "inside out".
turned-so = Turned { $heap }: { $how }
watered = Watered { $heap }: { $water }
covered = Covered { $heap }
# $cover: "sheet", "lid", "roof", "no cover".
covered-with = Covered { $heap }: { $cover }
uncovered = Uncovered { $heap }
looked-at = Looked at { $heap }: { $seen }
tested = Tested { $heap }: { $found }
moved-all = Moved all of { $from } to { $to }
moved-share = Moved { $percent } of { $from } to { $to }
# $stage: "active", "curing", "finished".
rested = { $heap } is now { $stage }
# $details: the following in a row, and an amount.
harvested = Harvested { $heap }: { $details }
all-of-it = all of it
share-of-it = { $percent } of it
sieved = sieved
spread = Spread { $amount } on { $bed }
bed-described = Bed described: { $bed }, { $area }{"\u00A0"}m²
# $name: a material as it stands inside a sentence.
stock-put-by = Put by { $amount } of { $name }
stock-used = Took { $amount } of { $name } from the stores
stock-counted = Counted { $amount } of { $name }
stock-counted-none = Counted nothing of { $name }
note = Note: { $text }
# $name: of a heap or a bed.
note-on = Note on { $name }: { $text }
# Stands for the text of a note that has none.
with-a-picture = with a picture
# $line: the line of the entry that was corrected.
corrected = Corrected: { $line }
corrected-a-correction = Corrected: a correction
corrected-something-absent = Corrected: an entry that is not here
taken-back = Taken back: { $line }
taken-back-a-correction = Taken back: a correction
taken-back-something-absent = Taken back: an entry that is not here
# $kind: a word of the file format.
of-a-newer-version = An entry of the kind "{ $kind }" that a newer version made: it is kept and passed on

# The kinds by which the logbook can be narrowed; "--kind" of the command line takes them too.
kind-fed = feeds
kind-read = readings
kind-turned = turnings
kind-watered = waterings
kind-noted = notes
kind-harvested = harvests
kind-heap-started = heaps started
kind-covered = covered
kind-uncovered = uncovered
kind-moved = moves
# Of a heap: active, curing, finished.
kind-rested = stages
kind-tested = tests
kind-spread = spreading
kind-bed-described = beds
kind-stock-put-by = put by
kind-stock-used = taken from stores
kind-stock-counted = stores counted
kind-garden-described = the garden
kind-person-described = people
kind-measure-defined = measures
kind-material-defined = own materials
kind-material-measured = materials measured
kind-amended = corrections
kind-withdrawn = taken back

# Below the mixture of a heap.
as-fed = This is what went in and was not taken out. What has rotted or dried away since is not counted.

# What logging a feed once more would log; $parts is a row of amounts.
feed-again = The same feed again: { $parts }
