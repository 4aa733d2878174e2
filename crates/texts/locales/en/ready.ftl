# Is the compost ready? What signs say, why they are weak, what to do next, and how much there will be.
# Signs are of two kinds: of rest (stability: microbes have little left to eat) and of what plants bear (maturity).

limits = Ripe is not the same as free of germs or seeds: these signs say nothing of hygiene. Local rules come first.
simulated-apart = From the simulation, not measured; it enters no verdict:

# What a sign says of ripeness, in a cell of a table.
standing-against = against
standing-between = nearly
standing-for = for
standing-not-counted = not counted

# The verdict; "it" is the compost.
verdict-untested = Whether it is ready cannot be told: no test says anything yet.
verdict-not-ready = Not ready yet.
verdict-nearly = Nearly ready, or ready in one respect only.
verdict-ready = Ready by two independent signs: it has come to rest, and plants bear it.
stability-untested = No sign of rest (stability) counts yet.
stability-against = It still works: the signs of rest fail.
stability-divided = The signs of rest contradict each other.
stability-between = It is nearly at rest.
maturity-untested = No sign that plants bear it (maturity) counts yet.
maturity-against = Plants would suffer: the signs of maturity fail.
maturity-divided = The signs of maturity contradict each other.
maturity-between = Plants nearly bear it.
home-tests-only = This rests on home tests alone, which are rough.

# What to do next, where the sheets of the tests stand below.
next-below = { $tests ->
        [bag-and-seedlings] Try the bag and the cress; how it is done stands below.
        [rest] Test whether it is at rest; how it is done stands below.
       *[plants] Test whether plants bear it; how it is done stands below.
    }
next-turn = Turn it once, keep it as moist as a squeezed sponge, and test again in three or four weeks.
next-ripen = Let it ripen for some weeks more and test again.

# Names of tests, in cells of a table.
test-self-heating = self-heating in a flask
test-reheating = heat after turning
test-bag = closed bag
test-respiration = respiration
test-germination = germination index
test-emergence = seedlings
test-carbon-to-nitrogen = C:N by laboratory
test-ammonium-to-nitrate = ammonium to nitrate
test-ammonium = ammonium

# Of which kind a sign is, in a cell of a table.
family-stability = rest
family-maturity = plants

# What a test found, in cells of a table. $class is one of the classes below.
found-self-heating = { $rise } over the room, { $class } (counted { $counted })
found-reheating = { $rise } over the air
# $smell is such as "earthy", or the words of found-bag-unsmelt.
found-bag = { $state ->
        [swollen] { NUMBER($days) } days, swollen, { $smell }
       *[flat] { NUMBER($days) } days, flat, { $smell }
    }
found-bag-unsmelt = nobody smelt it
found-respiration = { $uptake } mg C/(g{"\u00A0"}d), { $class }
found-germination = { $share } of the control
found-emergence = { $share } of the control, { $class }
found-ammonium-to-nitrate = { $ratio }, { $class }
found-ammonium = { $content } mg/kg, { $class }

# Classes of self-heating, from I (raw) to V.
heating-class = class { $class }
respiration-raw = raw
respiration-unstable = unstable
respiration-moderately-unstable = moderately unstable
respiration-stable = stable
respiration-very-stable = very stable
maturity-immature = immature
maturity-mature = mature
maturity-very-mature = very mature

# Why a sign is weak: one or more of the doubts, with semicolons between them.
weak = Weak: { $doubts }.
doubt-fed-since = something was fed or moved in after it, so it tells of other stuff
doubt-old = it is more than two months old
doubt-bag-says-nothing = it needs three days closed and a nose at the end
doubt-small-heap = a heap of less than 500 L, or of unknown size, stays cool ripe or not
doubt-dry = a dry heap stays cool ripe or not: water it first
doubt-moisture-unknown = nobody squeezed a handful, and a dry heap stays cool
doubt-air-usual = the air was not read, so what is usual in the month was taken
doubt-few-seeds = fewer than 30 seeds say little
doubt-seeds-forgive = cress and radish forgive much: a pass is weak, a failure is not
doubt-home-flask = a home flask flatters, so it counts a class rawer
doubt-nose-only = a nose is a rough instrument
doubt-ratio-alone = wood left over raises it, much nitrogen lowers it, ripe or not

# What nose and eye say: one or more of the hints, with commas between them.
hints = At the last look { $hints }; looks and smells are the weakest signs and enter no verdict.
hint-smells-earthy = it smells earthy
hint-smells-foul = it smells foul
hint-looks-done = it looks done
hint-warm = its core is warm

# What the simulation says. $class is a class of respiration, $share a percentage.
today-uptake = Warm, moist and aired it would take { $uptake } mg of oxygen per g of organic matter and hour: { $class }.
# $degrees: by how much, such as "3 °C".
today-core = { $side ->
        [cooler] Its core is { $degrees } cooler than the air; C:N { $ratio }; ammonium { $share } of the nitrogen.
       *[warmer] Its core is { $degrees } warmer than the air; C:N { $ratio }; ammonium { $share } of the nitrogen.
    }
today-ready = It counts as ready there since day { NUMBER($day) } of { NUMBER($days) }.
today-not-ready = { $days ->
        [one] After { NUMBER($days) } day it does not count as ready there.
       *[other] After { NUMBER($days) } days it does not count as ready there.
    }

# How much compost is to be expected: names of the rows of a table.
yield-dry = dry matter
yield-wet = as it lies
yield-volume = volume
yield-sieved = through a sieve
# What does not pass the sieve.
yield-overs = held back
yield-organic-loss = organic matter gone

# What to know about the yield.
dry-matter-by-ash = The dry matter follows from the ash that the laboratory found: ash neither rots nor evaporates.
dry-matter-by-materials = The dry matter follows from what microbes usually leave of each material; the ash of a laboratory would narrow it.
learnt = { $harvests ->
        [1] Learnt from the one harvest of this garden with a known amount: masses and volumes times { $factor }.
       *[other] Learnt from the { NUMBER($harvests) } harvests of this garden with a known amount: masses and volumes times { $factor }.
    }
learns-from-harvests = Write down how much each harvest gave, with its share of the heap: the next figure learns from it.
unlikely-harvests = { $harvests ->
        [1] One harvest is left out, more than { NUMBER($farthest) } times what was computed or less than 1/{ NUMBER($farthest) } of it: look at its amount and share, and at what was fed.
       *[other] { NUMBER($harvests) } harvests are left out, more than { NUMBER($farthest) } times what was computed or less than 1/{ NUMBER($farthest) } of it: look at their amount and share, and at what was fed.
    }
ash-too-low = The ash that was found is less than went in: one of the two is wrong, and the dry matter put in was taken.
soil-likely = The ash that was found leaves hardly any organic matter: soil came in that was not written down.
# $names are names of materials, with commas between them.
left-out = Left out, for this program cannot use them: { $names }.
