# Balance: what is in hand, what is in reach, and the answer. What is fetched with the first part of the page.

# Follows the sentence that says why the aim is out of reach. $recipe: "Put 3 buckets of leaves with it."
nearest = Nearest: { $recipe }
# Instead of an answer. "In hand" is the heading of what is about to be fed.
no-amount-read = No amount in hand can be read yet. Mend the one that is marked.
# Heading for those who hear the page: below it stands why the answer is what it is, and other recipes.
why-and-other-ways = Why, and other ways

# Names of controls for those who hear the page. $name: a material.
common-materials = Common materials
condition-of = Condition, { $name }
remove = Remove { $name }
# "In reach" is the heading of what may be added.
remove-from-reach = Remove { $name } from reach
add-to-reach = Add something to what is in reach
# Before the field with the amount that is there: "there are 6 buckets".
there-are = there are
# What the field holds; it is named in "How many, $name".
in-store = { $name } in store; empty for plenty
# Under the answer, when an amount in hand cannot be used.
not-all-counted = Not all that is in hand is counted.
# Over what is in reach, before anything is put by; "Stores" is the place (shell.ftl).
example-in-reach = These are invented. Untick what you do not have, or put your own by under Stores.
# At a material that does not belong in a heap; "Take care" is the heading of the cautions below.
best-kept-out = Best kept out of a home heap: read why under Take care.
# A material in no particular condition: the first of a list such as "as usual, wet, shredded".
as-usual = as usual

# What is wrong with what was typed.
enter-a-volume = Enter a volume, such as 12 L.
enter-a-number = Enter a number, such as 1½ or 2.5.
number-between = Enter a number between 1 and { NUMBER($most) }.
limits-crossed = The lower limit must not be above the higher one; the usual aim is taken.
