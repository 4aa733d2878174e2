# The list of heaps, and one heap: what is in it, what will become of it, what is told of it.

all-heaps = All heaps
# How far along a heap is: active, curing or finished.
stage = Stage
# Heading of the entries of a heap.
what-was-done = What was done
show-more-of = Show more of { NUMBER($count) }

# What is told of a heap in few words; behind each stands how long ago that was.
core = Core
fed = Fed
turned = Turned
looked-at = Looked at
# "58 °C, 3 hours ago"
core-when = { $temperature }, { $ago }

# What is in it.
what-is-in-it = What is in it
# "shredded leaves (3 kg)"
thing-with-mass = { $name } ({ $mass })
things-more = { $count ->
        [one] { NUMBER($count) } more
       *[other] { NUMBER($count) } more
    }
# $water: "5 L".
water-poured-on = { $water } of water poured on
# One of a list that may go on, and the next.
thing-after-thing = { $things }, { $next }
mostly = Mostly { $things }.

# Looking ahead.
stop = Stop
compute-again = Compute again
your-readings = Your readings as a table
what-was-assumed = What was assumed
# Label of a choice of what the picture shows: core, moisture and so on.
over-time = Over time
picture-as-table = This picture as a table
# Label of a choice: not at all, now, in 3 days.
if-you-turn = What if you turn it
# Label of a choice: no-water or water-now.
if-you-water = And if you water it
no-water = No water
water-now = { $water } now
ways-side-by-side = Ways to go on, side by side
# Heading of the figures that compare a way to go on with leaving the heap alone.
against-leaving-alone = Against leaving it alone

# Inside the heap: it is cut open, and the cut can be played through time.
shown-in-the-cut = Shown in the cut
day = Day
earlier = Earlier
later = Later
play = Play
pause = Pause
cut-as-table = This cut as a table
# Heard at the slider. $when: the day; $told: a sentence.
frame-heard = { $when }: { $told }
# The table of the cut. Heads of its columns, from the core outwards, with a unit.
layer = Layer
ring-core = Core, { $unit }
ring-edge = Edge, { $unit }
ring-between = { NUMBER($ring) } from the core, { $unit }
# Its rows.
layer-ground = Ground
layer-top = Top
layer-between = { NUMBER($layer) } up

# Whose rules of heat are shown: the first of the choices.
no-place = no place
# "Germany: Treatment of biowaste"
rule-of-place = { $place }: { $rule }
# Heard at the bar. $share: how much of the rule is met.
rule-met = { $rule }: { $share }
