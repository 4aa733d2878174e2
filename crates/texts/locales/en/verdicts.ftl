# How the mixture is: one word a figure, and sentences of it.

# Said beside every C:N that is opened.
carbon-scale = Carbon is counted as composting handbooks count it: the part of the dry matter that is not ash, divided by 1.8. The aim of about 30 belongs to that scale. A laboratory that measures carbon itself finds less in plants, so its C:N reads lower.
# Said once on every face.
disclaimer = These are estimates from typical figures. Your own stuff differs: the ranges say by how much. Local rules on what may be composted come first.

# One word beside a figure: the C:N, the moisture, the air space.
no-nitrogen = no nitrogen
too-green = too green
too-brown = too brown
good = good
too-dry = too dry
too-wet = too wet
too-tight = too tight
too-loose = too loose
airy = airy
not-known = not known

# The chance that the mixture lies within the aim, in tenths.
nearly-certain = nearly certain
less-than-one-in-ten = less than 1 in 10
about-in-ten = about { NUMBER($tenths, maximumFractionDigits: 0) } in 10

# What is in hand, without anything added.
by-itself-good = By itself this is a good mixture already.
# $faults: a list of the faults below, with "and" before the last.
by-itself = By itself this is { $faults }.
fault-too-dry = too dry ({ $value }; aim { $low } to { $high })
fault-too-wet = too wet ({ $value }; aim { $low } to { $high })
fault-too-green = too green (C:N { $value }; aim { $low } to { $high })
fault-too-brown = too brown (C:N { $value }; aim { $low } to { $high })
fault-no-nitrogen = without any nitrogen, so that it has no C:N
fault-too-tight = too tight ({ $value } air; aim for at least { $low })
fault-too-loose = too loose ({ $value } air; aim for at least { $low })

# $large, $small: two materials, of the first there is more; $volumes, $masses: how many times as much.
volumes-and-masses = { $vessel ->
        [gallon] By volume there is { $volumes } of { $large } to 1 of { $small }, by dry matter { $masses } to 1: a gallon of { $large } weighs { $large-mass } ({ $large-water } water), a gallon of { $small } { $small-mass } ({ $small-water } water).
       *[litre] By volume there is { $volumes } of { $large } to 1 of { $small }, by dry matter { $masses } to 1: a litre of { $large } weighs { $large-mass } ({ $large-water } water), a litre of { $small } { $small-mass } ({ $small-water } water).
    }
