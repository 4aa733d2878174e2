# What was kept out of the bin, and what that may mean for the climate.

# Said under every climate figure.
climate-method = Method: landfill by the IPCC's first-order decay (2006, volume 5), all methane whenever it forms; the heap's own methane and nitrous oxide as measured at home heaps; 28 and 265 times carbon dioxide over a century; 2 to 14 % of the compost's carbon still in the soil by then. Carbon dioxide from plants counts zero. Left out: driving, peat and fertiliser replaced, power from landfill gas.

# Kinds of waste, as heads of columns and before a mass.
kind-food = kitchen
kind-garden = garden
kind-wood = wood
kind-paper = paper
kind-other = other

# Where it would have gone otherwise: cells under the head "instead of".
open-landfill = a landfill that lets its gas go
landfill-with-capture = a landfill that catches some gas
burnt-or-composted = burning or a composting works

# Heads of the table of months; the last is the sum.
head-month = month
head-all = all
# The last row of that table.
all-months = all

# Heads of the table of the climate.
head-instead-of = instead of
head-spared = spared
head-on-balance = on balance

# From one mass to another.
from-to = { $low } to { $high }

# $kinds: "kitchen 30 kg to 40 kg; garden 12 kg".
by-kind = By kind, with what is not known of weights: { $kinds }.
weekly = That is { $mass } a week.
not-waste = Not counted, for it was no waste (soil, lime, bought stuff, compost): { $mass }.
heap-gave-off = The heap itself gave off methane worth { $methane } and nitrous oxide worth { $nitrous-oxide }; carbon that stays in the soil makes good { $stays }.
lies-between = So it lies between { $low } and { $high }: above zero is a gain. Which end holds depends on where it would have gone, which only you know.
# Both ends read alike.
lies-at = So it is { $mass }: above zero is a gain.
