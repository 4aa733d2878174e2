# Stores: what is put by, and the forms for what came, went and was counted.

# Name of the part with the buttons, for those who hear the page; and the buttons, each of which opens a form.
write-down = Write down
put-by = Put by
use = Use
count = Count
# The last two for one material. $name: "shredded leaves".
use-of = Use { $name }
count-of = Count { $name }

# Name of the list, for those who hear the page.
what-is-put-by = What is put by
# As much as is wanted.
plenty = plenty
# $names: materials in a row.
used-up = Used up: { $names }.

# Fields of the forms. The first asks for the material.
what = What
condition = Condition
# Of what "How many" asks, for those who hear the page.
amount-put-by = put by
amount-used = used
amount-counted = counted
# Label of a list of heaps, and its first choice.
on-a-heap = On a heap, such as a cover
on-none = on none
# "Balance" is the place of that name.
feeds-are-taken-off = What you feed from Balance is taken off by itself.
nothing-is-left = Nothing is left
# Buttons that write the entry.
put-it-by = Put it by
write-use = Write the use down
write-count = Write the count down
