# Beds: what grows where, what was spread on it, and how compost is shared among them.

# Heard as the name of the part with the two buttons below it.
write-down = Write down
describe-a-bed = Describe a bed
spread-compost = Spread compost

square-metres = { $number }{"\u00A0"}m²
square-feet = { $number }{"\u00A0"}sq{"\u00A0"}ft

# A bed. The button that corrects it, and its name for those who hear the page.
change = Change
change-bed = Change { $bed }
# Label of what grows there.
grows = Grows
# "heavy feeding": how much a crop takes from the soil. $feeding: one of words.ftl, feeding-…
feeding-so = { $feeding } feeding
# "beans, heavy feeding"
crop-and-feeding = { $crop }, { $feeding }
# Label of when compost was spread there last, and how much.
last-dressing = Last dressing
dressing-when = { $amount }, { $ago }
what-was-done = What was done

# The form that describes a bed.
not-now = Not now
keep-bed = Keep this bed
keep-change = Keep the change
name = Name
name-hint = Such as North bed.
area-square-metres = Area, m²
area-square-feet = Area, sq ft
area-hint = Such as 12, or 3 m x 1.2 m.
what-grows = What grows there (may be left out)
how-much-it-feeds = How much it feeds on the soil
as-the-crop = as the crop does
new-ground = New ground, not dug and fed before
soil-test = Soil test (may be left out)
soil-ph = pH
soil-organic = Organic matter, %
soil-phosphorus = Phosphorus (P), mg/kg
soil-potassium = Potassium (K), mg/kg
soil-conductivity = Conductivity, dS/m

# The form that writes down what was spread. amount-spread names the amount: "How many, compost".
bed = Bed
amount-spread = compost
# From which heap.
from-heap = From
not-said = not said
how = How
write-it-down = Write it down
# "Bin 1 (finished)"
heap-in-stage = { $heap } ({ $stage })

# The plan: its heading, and what is asked.
share-compost = Share compost among the beds
# Label of a choice of heaps; the other choice is compost from elsewhere.
compost-of = Compost of
somewhere-else = somewhere else
how-much-there-is = How much there is; if left empty, as the journal has it for the heap.
# Names the amount: "How many, compost to share".
amount-to-share = compost to share
about-the-compost = About the compost
is-mature = Mature?
as-tests-say = as its tests say
dog-or-cat-went-in = Did dog or cat waste go in?
went-raw-in = Did raw manure, droppings or meat go in?
as-journal-says = as the journal says
yes = yes
no = no
which-beds = Which beds
# Opens what is soon to happen on a bed.
soon-there = Soon there
sown-now = Sown or planted now
harvest-in-days = Harvest in how many days
plan = Plan

# What the plan says.
print-plan = Print the plan
nothing-left-over = Nothing is left over.
# $line: what stops a bed; $numbers: "1, 3", as the sources are numbered below.
limit-with-sources = { $count ->
        [one] { $line } (source { $numbers })
       *[other] { $line } (sources { $numbers })
    }
# "3 barrows or 25 buckets"
barrows-or-buckets = { $barrows } or { $buckets }
# "3 barrows or 25 buckets, 2 cm deep, 240 L"
share-of-bed = { $vessels }, { $depth } deep, { $volume }
share-none = none
# $limit: "phosphorus".
stops-at = Stops at: { $limit }

# The plan on paper: its title, the heads of its table.
paper-title = Compost for the beds, { $day }
head-bed = Bed
head-barrows = Barrows
head-buckets = Buckets
head-depth = Depth
head-amount = Amount
head-weight = Weight
head-done = Done
