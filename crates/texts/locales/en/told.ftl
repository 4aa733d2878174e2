# What the page says of a heap's heat, ripeness and nutrients, and of what was kept out of the bin.

# Heading of the heat.
heat = Was it hot enough?
# There is no reading to judge.
no-readings = Nobody has read a probe in the core since this heap was last empty. Log a reading, with the place and how deep it was, and this says which published rules it meets.
# Heading of what lasts until harvest; "it" is the compost.
before-use = Before you use it
nothing-lasts = Nothing that is written down of this heap needs to be seen to before its compost is used.
# Heading of the ripeness; "it" is the compost.
ripeness = Is it ready?
nutrients = Nutrients in it
# The table of the account; "they" are nutrients.
account = Where they come from and go to
nothing-in-it = Nothing lies in this heap yet. Log what you feed it, and this page keeps account of it.
# Heading of what was kept out of the waste bin by composting it.
kept-out = Kept out of the bin
nothing-kept-out = Nothing was fed yet that would have been waste. Log what you feed a heap, and it is counted.
# While the page computes.
telling = Adding up what is written down.
not-told = This could not be worked out. Load the page again.
# Label of a choice of places: a name such as "Germany" follows.
whose-rules = Rules of
# Where the choice of rules comes from.
whose-rules-hint = At first as your browser's language has it. The rule of your own place comes before all of these.
no-rule-chosen = Choose a place to see its rules here.
other-rules = Rules of other places
# Heading of what the record shows.
showed = What the probe showed, and for how much of the heap
# Heading of what heat cannot be trusted with.
living = Seeds, diseases and larvae
hours = How long it was how hot, as a table
signs = All signs as a table
no-signs = No test of this compost is written down.
# Opens the sheets of tests that are not next.
other-sheets = How other home tests are done
# Opens the form of a test.
write-test = Write a test down
test-empty = Fill in what the test found.
# A field that may be left out says may-be-left-out.
test-incomplete = This test needs every field that is not marked as one to leave out.
whole-seeds = Seeds are counted in whole numbers from 0 on.
# What of a feed lasts until harvest: sentences follow.
stays-with-heap = This stays with the heap until it is harvested:
# A feed that is most likely a slip of the finger: what it takes up before it settles, and the room of the heap.
more-than-fits = This feed is { $fed } loose, and { $heap } holds { $holds }. Check the amounts.
# Opens the months.
by-month = By month
months = Kept out of the bin, month by month
for-the-climate = For the climate, as carbon dioxide over a century
# Opens what a rule asks; "it" is the rule.
rule-asks = What it asks, and its source
# Over what the outcome of a test says.
sheet-reading = What it says
# Label of a switch between the two ways of naming nutrients that follow: as P or as P2O5.
named-as = Named as
names-elements = elements
names-on-labels = on labels
# What a laboratory found beside the account of nutrients.
beside = Beside the account
about-account = How this account is kept
# Heading of how much compost there will be.
how-much = How much compost it will be
# Label of a choice of the tests that follow.
which-test = Which test
tests-bag = Closed bag
tests-self-heating = Self-heating flask
tests-seeds = Seeds
tests-laboratory = Laboratory
# The button that writes the test down.
log-test = Log the test
# Hint at a field that need not be filled in.
may-be-left-out = May be left out.

# How much of a rule is done.
done = { NUMBER($percent) }{"\u00A0"}% done

# Heads of the table of how much compost it will be.
yield-head-what = When it is finished
yield-head-likely = likely
yield-head-range = eight of ten cases

# Heads of the table of signs of ripeness: of what kind, which test, what it found, what that says, when.
sign-head-of = Of
sign-head-test = Test
sign-head-found = Found
sign-head-says = Says
sign-head-when = When

# What a test needs: $needs is such as "A gloved hand."
needs = You need: { $needs }
