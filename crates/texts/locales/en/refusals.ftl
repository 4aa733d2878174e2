# What cannot be used, and what to do instead: amounts, materials and questions.
#
# A message that begins in lower case stands alone, where its first letter becomes a capital, or behind a colon.

# Names of fields, as a file of a question has them: English leaves them, other languages have words.
# They begin a message or stand before a colon.
field-name = { $field ->
        [first-year-and-later-years] first year and later years
        [area-depth-and-amount] area, depth and amount
       *[other] { $field }
    }
# $list: such as "parts"; $index counts from 0, $place from 1.
field-of-list = { $place ->
       *[other] { $list }[{ $index }]
    }
field-inside = { $outer }.{ $inner }

# What was typed as an amount; begins the messages below.
amount-typed = “{ $typed }”
amount-untyped = The amount
amount-is-empty = { $amount } is empty: write an amount such as 2 buckets or 3.5 kg.
amount-is-too-long = { $amount } is too long: write a number and a unit, such as 2 buckets.
amount-has-no-number = { $amount } has no number: write how many, such as 2 buckets.
amount-is-vague = { $amount } says “{ $words }”, which is no number: write how many, such as 3 handfuls.
amount-has-no-unit = { $amount } has no unit: write how much, in a unit, such as 3 buckets or 3 kg.
# $nearest: the known unit that is nearest.
amount-has-unit-like = { $amount } has the unknown unit “{ $word }”: did you mean { $nearest }?
amount-has-unknown-unit = { $amount } has the unknown unit “{ $word }”: write one of your measures, such as a bucket, or kg, lb, L or gal.
# $clear: such as "100 lb or 112 lb".
amount-has-ambiguous-unit = { $amount } says “{ $word }”, which means several units: write { $clear }.
# Ways to write it: the last two, and one that goes before them.
either-or = { $first } or { $second }
either-of-more = { $first }, { $others }
amount-has-ambiguous-number = { $amount } has “{ $number }”, which can be read in two ways: write { $large } or { $small }.
amount-has-misformed-number = { $amount } has “{ $number }”, which is no number: write it like 1234.5 or 1 1/2.
amount-has-several-numbers = { $amount } has several numbers for one amount: write one, such as 2 1/2 buckets.
amount-is-zero = { $amount } is zero: write a number above 0.
amount-is-negative = { $amount } is below zero: write a number above 0.
amount-is-not-finite = { $amount } has no finite number: write one such as 2.5.
amount-is-absurd = { $amount } is more than a garden holds: write at most 100000 kg, 1000 m³ or 100000 measures.
amount-is-too-small = { $amount } is less than can be measured: write at least 0.001 g, 0.001 mL or 0.001 of a measure.
amount-divides-by-zero = { $amount } divides by zero: write a fraction such as 1/2.
amount-goes-on = { $amount } goes on with “{ $words }”: write only a number and a unit, such as 2 buckets.

# A part of a mix. carbon_pct_dry and the like are names of fields in a file: carbon, percent of dry matter.
figure-outside = { $field } must be between { $least } and { $most }, not { $stated }.
too-few-figures = give two of carbon_pct_dry, nitrogen_pct_dry and cn_ratio.
ratio-without-nitrogen = nitrogen_pct_dry is 0, so that there is no cn_ratio: leave cn_ratio out.
ratio-without-carbon = carbon_pct_dry is 0, so that there is no cn_ratio: leave cn_ratio out.
# $follows: the ratio of the two figures.
ratio-contradicts = carbon_pct_dry { $carbon } over nitrogen_pct_dry { $nitrogen } is { $follows }, not the stated cn_ratio { $ratio }: correct one or leave one out.
figures-over-full = carbon_pct_dry, nitrogen_pct_dry, ash_pct_dry add up to { $sum } % of the dry matter: they must stay within 100.
minerals-over-full = carbon, nitrogen, phosphorus_pct_dry, potassium_pct_dry, calcium_pct_dry, magnesium_pct_dry and sodium_pct_dry add up to { $sum } % of the dry matter: they must stay within 100.
# $limit: the most nitrogen, percent.
ratio-over-full = nitrogen_pct_dry and cn_ratio make { $carbon } % carbon and { $nitrogen } % nitrogen of the dry matter: nitrogen must stay within { $limit } and both together within 100.
two-moistures = condition must not be both "{ $first }" and "{ $second }", for each says how wet it is: keep one.
unknown-material = material "{ $id }" is not known: look it up in the list of materials.
no-figures = there are no figures for { $name }, which is best kept out of a heap: leave it out.
unknown-measure = measure "{ $id }" is not known: calibrate it, or give the amount in litres or kilograms.
no-name = name must not be empty.
no-density = bulk_density_kg_m3 is needed when the amount is a volume: state it, or give the amount in kg or lb.

# A question. $field: a field as above.
empty = { $field } is empty: name at least one material with its amount.
too-many = { $field } has too many entries: give at most { NUMBER($most) }.
# $refusal: one of the messages on a part of a mix.
part-refused = { $field }: { $refusal }
unknown-feeding = { $field }: "{ $said }" is not known: give light, medium or heavy.
# $ids: what may be said, parted by commas.
unknown-id = { $field }: "{ $said }" is not known: give one of { $ids }.
no-beds = there is no bed to plan: describe one.
nothing-in-heap = nothing lies in this heap, as far as the journal tells: write down what goes in.

must-be-above-0 = { $field } must be above 0.
must-be-number-above-0 = { $field } must be a number above 0.
must-be-0-or-more = { $field } must be 0 or more.
must-be-amount-of-0-or-more = { $field } must be an amount of 0 or more.
must-be-within = { $field } must be from { NUMBER($least) } to { NUMBER($most) }.
must-be-percent = { $field } must be from 0 to 100 percent.
must-be-area-of-bed = { $field } must be from 0.01 to 100,000 square metres.
must-be-amount-of-compost = { $field } must be an amount of more than 0, at most 100,000,000 litres.
must-be-dressing = { $field } must be an amount of 0 or more, 0 to 1000 years ago.
must-be-two-of-three = { $field } must be given two at a time: the third is computed.
must-be-amount-of-mix-instead = { $field } must be left out: give the amount of the mix.
must-be-area-instead = { $field } must be left out: give the area.
must-be-done-in-time = { $field } must be something to do between now and the last day that is looked ahead to.
must-be-feed = { $field } must be a feed of a millionth of a kilogram of dry matter or more, and of no more than a heap can hold.
must-be-two-ratios = { $field } must be two numbers from 1 to 1000, the lower first.
must-be-ratio-within = { $field } must be a number within cn_ratio.
must-be-two-percentages = { $field } must be two percentages from 0 to 100, the lower first.

# The climate of a garden.
climate-outside = { $what ->
        [the-latitude-in-degrees] the latitude in degrees must be from { $least } to { $most }; correct it.
        [the-longitude-in-degrees] the longitude in degrees must be from { $least } to { $most }; correct it.
        [the-height-above-the-sea-in-metres] the height above the sea in metres must be from { $least } to { $most }; correct it.
        [the-mean-temperature-of-a-month-in-degC] the mean temperature of a month in degC must be from { $least } to { $most }; correct it.
        [the-rain-of-a-month-in-mm] the rain of a month in mm must be from { $least } to { $most }; correct it.
       *[something] { $what } must be from { $least } to { $most }; correct it.
    }
coldest-above-warmest = the coldest month is warmer than the warmest; exchange the two temperatures.

# Weather of a file. All four are hours of UTC such as "2026-05-01 06:00Z".
weather-amiss = the weather covers { $known-from } to { $known-to }, the simulation { $begins } to { $ends }: give more weather, fewer days, or a climate for what is missing.
out-of-time = weather must lie in the years 1900 to 2199 and be at most 50 years long; correct the dates.

# A simulation of a heap.
nothing-fed = nothing is put into the heap; add a feed.
enclosure-without-meaning = { $what ->
        [width] the width of the enclosure has no meaning; correct it.
        [depth] the depth of the enclosure has no meaning; correct it.
        [height] the height of the enclosure has no meaning; correct it.
        [heat-loss] the heat loss of the enclosure has no meaning; correct it.
        [forced-air] the forced air of the enclosure has no meaning; correct it.
       *[something] the { $what } of the enclosure has no meaning; correct it.
    }
# $hour: which hour, counted from 0.
weather-of-no-weather = hour { NUMBER($hour) } of the weather holds a value that no weather has; correct it.
weather-too-short = the weather ends after { $days } days; add hours or simulate fewer days.
event-without-meaning = event { NUMBER($event) } has a value without meaning or stands out of order; correct it.
setting-without-meaning = { $what ->
        [number-of-days] the number of days has no meaning; correct it.
        [grid] the grid has no meaning; correct it.
        [interval-of-the-series] the interval of the series has no meaning; correct it.
        [tolerance] the tolerance has no meaning; correct it.
       *[something] the { $what } has no meaning; correct it.
    }
# $day: the day reached.
computation-stuck = the computation did not get beyond day { $day }; look for an unusual amount there, or for a feed with hardly any dry matter to its volume.
