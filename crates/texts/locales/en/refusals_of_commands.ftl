# What cannot be used, and what to do instead, where only the command line asks so far.

# A part of a list such as "2 buckets grass, 1 mug coffee grounds"; stands for $amount in refusals.ftl.
amount-of-part = Part { NUMBER($part) }, “{ $text }”,
list-is-empty = The list is empty: write parts such as 2 buckets grass, 1 mug coffee grounds.
list-is-too-long = The list is too long: write at most 20000 characters.
list-has-too-many-parts = The list has too many parts: write at most 200.
part-without-name = Part { NUMBER($part) }, “{ $text }”, does not say of what: write such as 2 buckets grass.
part-with-several-amounts = Part { NUMBER($part) }, “{ $text }”, has several amounts: write a comma between the parts.
part-with-amount-inside = Part { NUMBER($part) }, “{ $text }”, has its amount between words: write it first, such as 2 buckets grass.
# $refusal: one of the messages on a part of a mix in refusals.ftl.
part-of-list-refused = Part { NUMBER($part) }, “{ $text }”: { $refusal }

# Where a command or an option helps, which stay as they are. "heapwright: " stands before each.
no-readings = there is no reading of the core since the heap was last empty: write some down with `heapwright read --temperature "58 C core"`, or give a file with --csv.
no-such-depth = --depth: there is no reading at that depth: give one of the depths of the record.
no-beds = there is no bed to plan: describe one with `heapwright bed new NAME AREA`, or give beds in a file.
nothing-in-heap = nothing lies in this heap, as far as the journal tells: write down what goes in with `heapwright feed`.
