# Amounts, names and figures as they stand inside sentences.

# "3 buckets of shredded leaves". $name: a material as it stands inside a sentence.
amount-of = { $amount } of { $name }
# "2 L of water"
amount-of-water = { $amount } of water
# "3 buckets". $measure: a vessel by its name, in the plural where there is more than one.
count-of-measure = { $count }{"\u00A0"}{ $measure }
# Never shown. How the name of a thing begins inside a sentence: "small" for a small letter, anything
# else where it keeps the letter that it has.
names-in-a-sentence = small
# "wet shredded leaves". $conditions: how it was found, such as "wet".
name-with-conditions = { $conditions } { $name }
# The same where the name has a parenthesis: "wet beans (cooked)". $inner: what stands in it.
name-with-more-conditions = { $conditions } { $name } ({ $inner })
# "wet shredded": one condition and the next.
conditions = { $first } { $second }
# "57 %"
percent = { $number }{"\u00A0"}%
# Nearly all, and yet not all.
percent-nearly-all = >99{"\u00A0"}%
# "26 to 40": where a figure lies.
interval = { $low } to { $high }
# Two clauses of one sentence.
clauses = { $first }; { $second }
