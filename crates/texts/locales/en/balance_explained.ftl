# Balance: what can be done with the answer, and what stands behind it. Fetched after the first part of the page.

# A heading, and the button below it. "Feed" is a noun: what is in hand and what is put with it.
log-this-feed = Log this feed
# Label of a list of heaps.
heap = Heap
# A link, and the sentence that it stands in.
start-a-heap = Start a heap
start-a-heap-to-log = { $link } to log what you feed it.

# What the colours of the mix map stand for.
good-region = good region
the-mixture = the mixture
where-it-may-be = where it may be
in-hand-alone = in hand alone
one-more-scoop = one more scoop, by its number
# The map as a table: its heads and its rows. $number: that of an arrow; $scoop: "1 bucket of leaves".
head-what = What
head-ratio = C:N
head-moisture = Moisture
row-in-hand-alone = In hand alone
row-mixture = The mixture
row-with-more = { NUMBER($number) }: with { $scoop } more
cloud = The cloud is 240 draws of what the mixture may be; the table gives its middle.

# The figures of the mixture. $range: "26 to 40".
in-eight-of-ten = In 8 of 10 cases: { $range }.
on-measured-carbon = On measured carbon this mixture has { $ratio }.
# A table that opens below a figure. $name: the name of the figure.
part-by-part = { $name }, part by part
part = Part
typical-and-range = { $typical } ({ $low } to { $high })
# $sources: the word "Sources"; $name: the name of the figure.
sources-of = { $sources }, { $name }

nutrients = Nutrients
# Beside the mass of nitrogen.
of-nitrogen = nitrogen
nutrients-are = Mass of each element in the mixture; some of it is lost while it rots.
not-known = not known
# $range: "26 to 40 g".
mass-and-range = { $mass } ({ $range })
# Of what share of the dry matter the element is known.
known-for = known for { $percent }
nitrogen = Nitrogen
phosphorus = Phosphorus
potassium = Potassium
calcium = Calcium
magnesium = Magnesium
sodium = Sodium

# Before the cautions for each material.
always-take-care = Gloves on, hands washed after. Wet dusty or mouldy stuff before you move it, and stay upwind.
