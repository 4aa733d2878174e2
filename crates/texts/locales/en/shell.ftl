# What stands around the places, and the controls that come with the first part of the page.

# The name of a place in the bar. Its title is longer: "Balance a feed".
balance = Balance
# The title of the window. $page: the name of the page; $place: "Today".
window-title = { $page }: { $place }
# Name of the bar of places, for those who hear the page.
places = Places
not-kept = This browser does not let the page keep what you type: it is gone when you leave.

# What was done last. $entry: a line of the logbook.
taken-back = Taken back: { $entry }
# Puts an entry back that was taken back.
bring-back = Bring back
# Closes the line that tells what was done last.
dismiss = Dismiss

# An amount for those who hear the page: number, measure, and a step up or down. $name: of what.
how-many = How many, { $name }
measure-of = Measure, { $name }
one-more = One more, { $name }
one-less = One less, { $name }

# So many materials match what was typed.
found = { NUMBER($count) } found
