# The forms of a heap: to start one, and to log feeding, reading, moving and tests.

# Shared by the forms.
not-now = Not now
# The first of several choices of which none need be taken.
not-said = not said
# Units behind a label.
centimetres = cm
inches = in

# To start a heap. The first is the button and the heading, the second keeps it.
start-a-heap = Start a heap
start-this-heap = Start this heap
name = Name
name-hint = Such as Bin 1, or By the shed.
stands-in = What it stands in (may be left out)
shape = Shape
width-or-diameter = Width or diameter, { $unit }
depth = Depth, { $unit }
height = Height, { $unit }
wall = Wall
cover = Cover
ground = Ground
sun = Sun
# How it was filled, and the two answers.
filled = Filled
filled-little-by-little = little by little
filled-at-once = at once

# Heading of what can be logged, and the buttons below it: each opens a form, but for "turned", which logs.
log = Log
act-feed = Feed
act-turned = Turned
act-watered = Watered
act-read = Read
act-note = Note
act-harvest = Harvest
act-more = More

# To log a feed. "Balance" is the place where feeds are mixed (shell.ftl, balance).
with-what-answer-adds = With what the answer adds
change-in-balance = Change it in Balance
# The feed is the one with which the balance begins at the first visit.
feed-is-example = This is the example that Balance begins with, not what you have: change it first.
log-feed = Log this feed
# What to beware of in a material.
caution-of = { $material }: { $caution }

# To log water. The first names the amount: "How many, water".
amount-water = water
log-water = Log the water

# To log a note.
note = Note
picture = Picture (may be left out)
log-note = Log the note

# To log a harvest. The second names the amount: "How many, compost harvested".
how-much-compost = How much compost came of it
amount-harvested = compost harvested
share-of-heap = How much of the heap, %
share-of-heap-hint = All of it, if left empty.
log-harvest = Log the harvest

# To log how it was turned, its cover, and how far along it is.
turned = Turned
log-turning = Log the turning
log-cover = Log the cover
stage = Stage
log-stage = Log the stage

# To log a reading.
log-reading = Log the reading
squeezed = A handful, squeezed
smell = Smell
looks = Looks
creatures = Creatures
# Where the probe stood, and how deep.
probe-place = Where
how-deep = How deep, { $unit }
temperature = Temperature, { $unit }
one-degree-less = One degree less
one-degree-more = One degree more

# To write a test down. The bag that stays closed for some days.
bag-days = Days closed
bag-was = The bag was
bag-flat = flat
bag-swollen = swollen
bag-smell = Smell when opened
nobody-smelt = nobody smelt it
# The flask in which compost heats itself.
flask-highest = Highest in the flask, { $unit }
flask-room = The room, { $unit }
# Seeds in compost, and beside them in a control.
seeds-sown = Seeds sown in compost
seeds-sprouted = Of them sprouted
seeds-control-sown = Seeds sown in the control
seeds-root = Mean root in compost, mm
seeds-control-root = Mean root in the control, mm
# Figures of a laboratory.
lab-moisture = Moisture, %
lab-ph = pH
lab-carbon = Carbon, % of dry matter
lab-nitrogen = Nitrogen, % of dry matter
lab-ratio = C:N, measured
lab-ash = Ash, % of dry matter
lab-phosphorus = Phosphorus (P), % of dry matter
lab-potassium = Potassium (K), % of dry matter
lab-calcium = Calcium (Ca), % of dry matter
lab-magnesium = Magnesium (Mg), % of dry matter
lab-sodium = Sodium (Na), % of dry matter
lab-conductivity = Conductivity, dS/m
lab-ammonium = Ammonium nitrogen, mg/kg of dry matter
lab-nitrate = Nitrate nitrogen, mg/kg of dry matter
lab-carbon-dioxide = Carbon dioxide, mg/g of organic matter a day
