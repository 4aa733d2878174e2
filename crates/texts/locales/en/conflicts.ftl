# Why the aim cannot be reached with what may be added ("in reach"), and what would help.

# Limits of the aim, as nouns.
limit-ratio-low = the lowest C:N
limit-ratio-high = the highest C:N
limit-moisture-low = the lowest moisture
limit-moisture-high = the highest moisture
limit-air-low = the least air space
limit-air-high = the most air space

# A limit that is missed; stands by itself and as $misses of `nothing-gets-there-for`. "It" is the mixture.
miss-ratio-low = it stays too green: C:N { $reached }, aim at least { $asked }
miss-ratio-high = it stays too brown: C:N { $reached }, aim at most { $asked }
miss-moisture-low = it stays too dry: moisture { $reached }, aim at least { $asked }
miss-moisture-high = it stays too wet: moisture { $reached }, aim at most { $asked }
miss-air-low = it stays too tight: air space { $reached }, aim at least { $asked }
miss-air-high = it stays too loose: air space { $reached }, aim at most { $asked }
miss-no-nitrogen = there is no nitrogen in it, so that it has no C:N

# A measure is a vessel, such as a bucket.
measures-too-coarse = Whole measures are too coarse for so little: part of one would do.
nothing-gets-there = Nothing in reach gets there.
nothing-gets-there-for = Nothing in reach gets there: { $misses }.

help-dry-brown = Something dry and brown would help: dry leaves, straw, torn cardboard, sawdust.
help-dry-and-richer = Something dry that holds more nitrogen than cardboard or wood would help: dry leaves, hay, dried grass.
help-more-carbon = Something rich in carbon would help: dry leaves, straw, cardboard, wood chip.
help-more-nitrogen = Something green would help: grass, kitchen scraps, coffee grounds, manure.
help-water = Water would help.
help-coarse = Something coarse that holds the heap open would help: shredded prunings, wood chip, straw.
help-fine = Something finer would help: shred or tread it.
help-larger-stock = More of what is in reach already would help.
help-part-of-a-measure = Use part of a measure, or wait until there is more to mix.
