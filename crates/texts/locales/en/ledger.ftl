# The account of a heap's nutrients: a table, and sentences below it.

# Heads of the table: grams of P2O5, K2O and so on, or of the elements themselves.
head-labels = g as labels name it
head-elements = g of the element
# Heads of the table of what a laboratory or the simulation says.
head-beside = g, beside the account
# Rows of the table; no name may be longer than 30 letters.
not-all-known = not all known:
others-together = others together ({ NUMBER($count) })
went-in = went in, together
left-as-gas = left as gas
washed-out = washed out
is-there = is there
# Set in, for they belong to the row "is there".
at-least = {"  "}at least
at-most = {"  "}at most
per-litre = {"  "}per litre
measured-by-laboratory = measured by the laboratory
simulated = simulated

# Sentences below the table.
how-nutrients-go = Phosphorus, calcium and magnesium stay; potassium may be washed out; nitrogen leaves as gas, the more the closer C:N was, and as old as the stuff is. One case in ten lies below the least, one in ten above the most.
named-materials = Of { NUMBER($all) } materials the { NUMBER($named) } that brought the largest share of any element are named; the others stand together in one row.
# One of $shares below: "N for 57 %".
known-share = { $element } for { NUMBER($percent, maximumFractionDigits: 0) }{"\u00A0"}%
known-in-part = "?" is not known. Of the dry matter that went in there are figures of { $shares }; the rest is not counted, so there is more.
# One of $taken below: "120 g N".
grams-of-element = { $grams }{"\u00A0"}g { $element }
taken-away = Harvested or moved away since the heap was last empty, as it went in and not in the table: { $taken }.
laboratory-apart = Laboratory and account do not meet for { $elements }: weights that were written down, the sample or the ash do not fit.
ash-too-low = The ash that the laboratory found is less than went in: one of the two is wrong.
soil-likely = The ash that the laboratory found speaks of soil that was not written down.
not-followed = Some of it came over more moves between heaps than are followed.
