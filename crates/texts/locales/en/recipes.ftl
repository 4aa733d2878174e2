# What to put with what is in hand.

# $things: amounts in a list, such as "3 buckets of shredded leaves and 2 L of water".
put-with-it = Put { $things } with it.
needs-nothing = It needs nothing with it.
nothing-brings-it-nearer = Nothing in reach would bring it nearer.

# Headings of recipes, each of a few words: why it is offered.
least-to-carry = Least to carry
least-bulk = Least bulk
# The one with the best chance to lie within the aim.
surest = Surest
from-the-fullest-store = From the fullest store
least-effort = Least effort
# $name: a material as it stands inside a sentence.
without = Without { $name }
with-less-of = With less of the { $name }
another-way = Another way
# Nothing is in hand: what comes nearest to the aim.
nearest = The nearest
# The aim cannot be reached.
nearest-you-can-get = The nearest you can get
