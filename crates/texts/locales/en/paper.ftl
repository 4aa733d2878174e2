# What stands on paper only: heads, tables to write in, how to read a handful. Three pages are printed:
# one that hangs beside a heap, the record of the heaps over a time, and the plan of the beds.

# What a reader aloud says for a box to tick.
box-to-tick = box to tick
letters-lacking = Letters that the type of this page lacks stand as ▯. The journal keeps them as they were written.
invented-garden = An invented garden, for looking around.

# In the page: head of the card that makes pages.
on-paper = On paper
# What the page of a heap holds; a caddy is the vessel of kitchen scraps.
on-paper-heap = What goes with each caddy, what comes next, how to read a handful, and lines to write on.
# What the record holds; the probe is the thermometer in the heap.
on-paper-all = What went in over the last year, month by month and heap by heap, what the probe showed, and what came out.
# Buttons.
press-bin = Page for the bin (PDF)
press-season = Record (PDF)
press-beds = Plan (PDF)
# While it is made, and after it.
pressing = Setting the page.
pressed = The page is among your downloads.
not-pressed = The page could not be made. Load this page anew and try again.
# $detail: for who mends this program, in English in every language.
not-pressed-for = The page could not be set in type (“{ $detail }”). Load this page anew and try again; if it fails again, please report it.

# Names of materials in a row, and the next of them; a name may hold a comma where the language wants one.
names-in-a-row = { $first }, { $second }

# The page beside a heap. $heap: its name.
bin-title = { $heap }: what goes in
bin-under = A page to hang beside the heap. Worked out from the journal; print a new one when the scraps or the stores change.
# Head of the table of what goes with one caddy, with two, with three.
with-each-caddy = With the kitchen scraps
caddy-head-scraps = Scraps
caddy-head-with = Put with them, and mix in
nothing-with-them = Nothing: they are right as they are.
# $scraps: names of materials in a row, such as "vegetable scraps, coffee grounds".
scraps-known = Scraps as they mostly came in the last three months: { $scraps }.
scraps-usual = No scraps are written down for the last three months, so usual ones are taken: { $scraps }.
browns-usual = No browns are in the stores, so shredded dry leaves are taken.
not-quite-good = This comes as near to a good mixture as the browns in reach allow; it does not get there.

# What the map of mixtures shows, for whoever cannot see it. Water in percent.
map-told = Map of C:N and moisture. One caddy alone: C:N { $alone-ratio } and { $alone-water } % water. With what goes with it: C:N { $mixed-ratio } and { $mixed-water } % water.
map-told-empty = Map of C:N and moisture, without a mixture.
map-caption = Ring: scraps alone. Black disc: with what goes with them. Points: where that may lie instead. Hatched: where heaps work well.

next = What comes next
next-head-day = Day
next-head-what = What to do
# Over boxes to tick.
next-head-done = Done
nothing-next = The journal tells of nothing that is due. Look at the heap in two weeks at the latest.
next-from = As the journal stands today; what you read or feed from now on changes these days.

# The test by hand: how it feels when it is squeezed, what is seen, what to do. The words in the first
# column are those of words.ftl.
squeeze = Squeeze a handful from the middle
squeeze-head-feels = It feels
squeeze-head-see = You see
squeeze-head-so = So
squeeze-see-dusty = Falls apart as dust
squeeze-so-dusty = Water well while turning; cover it
squeeze-see-dry = Hardly holds together, no sheen
squeeze-so-dry = Water a little; add wet scraps
squeeze-see-moist = Holds together, a drop at most
squeeze-so-moist = Leave it: this is right
squeeze-see-wet = Drops come out
squeeze-so-wet = More browns with the next feed; keep rain off
squeeze-see-dripping = Water runs out
squeeze-so-dripping = Mix in many browns in the next days

# Head of the cautions.
beware = Beware
before-use = Before its compost is used
beware-gloves = Wear gloves, and wash your hands afterwards. Keep wounds covered, and a tetanus vaccination up to date.
beware-dust = Dust and spores come up when dry or mouldy stuff is moved: wet it first and stand upwind. Who has a weak immune system or asthma leaves turning to others.

# The table to write in by hand. $unit: "°C" or "°F". The columns are narrow.
to-write = Write down what you find
writing-head-day = Day
writing-head-core = Core, { $unit }
writing-head-edge = Edge, { $unit }
writing-head-air = Air, { $unit }
writing-head-squeeze = Squeeze
writing-head-rest = Fed, turned, smelt, seen

# The record. $from, $to, $day: dates, such as "1 May 2026".
season-title = Record of the heaps
season-empty = Nothing was written down about any heap in this time.
season-under = From { $from } to { $to }, as the journal has it.
season-months = Kept out of the bin, month by month
# The table of what went into a heap; a feed is what was put in at one time.
went-in-head-month = Month
went-in-head-feeds = Feeds
went-in-head-what = What went in, the most first
went-in-head-together = Together
went-in-head-water = Water
# "shredded leaves 12 kg"
part-with-mass = { $name } { $mass }
# More went in than is named.
parts-and-more = { $parts } …
chart-caption = { $heap }: what the probe showed in the core. Black triangles with a dotted line: turned.
# What the chart shows, for whoever cannot see it.
chart-told = { $turnings ->
        [1] { NUMBER($readings) } readings of the core, the hottest { $hottest } on { $day }; turned once.
       *[other] { NUMBER($readings) } readings of the core, the hottest { $hottest } on { $day }; turned { NUMBER($turnings) } times.
    }
chart-told-empty = { $turnings ->
        [1] No readings of the core; turned once.
       *[other] No readings of the core; turned { NUMBER($turnings) } times.
    }
reading = { $temperature } in the core on { $day }.
no-core = No probe was read in its core in this time.
not-turned = Not turned in this time.
# $days: dates in a row.
turned = { $times ->
        [1] Turned once: { $days }.
       *[other] Turned { NUMBER($times) } times: { $days }.
    }
heat-measured = Heat, as it was measured since the heap was last empty
harvests = Compost taken out
harvest-head-day = Day
harvest-head-how-much = How much
# The mesh through which it was sieved, or that it was not.
harvest-head-sieved = Sieved
not-sieved = no
mesh = { $mesh }{"\u00A0"}mm
all-taken = all of it
share-taken = { $share }{"\u00A0"}% of the heap
ripeness = Ripeness at the end of this time
nutrients = Nutrients in it at the end of this time

# The plan of the beds.
beds-title = Compost for the beds
# A narrow table: barrows and buckets are counted.
beds-head-bed = Bed
beds-head-barrows = Barrows
beds-head-buckets = Buckets
beds-head-depth = Depth
beds-head-amount = Amount
beds-head-weight = Weight
beds-head-done = Done
beds-limited-by = What stops each bed from getting more
beds-know = What to know
sources = Sources
nothing-left = Nothing is left over.
# $line: a sentence; $numbers: numbers of sources in a row, such as "1, 3"; $count: how many.
with-sources = { $count ->
        [one] { $line } (source { $numbers })
       *[other] { $line } (sources { $numbers })
    }
