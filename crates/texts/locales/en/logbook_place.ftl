# The logbook: its filters; and what leads from it to the export of the journal.

# Labels of two lists, and the first choice of each.
heap = Heap
all-heaps = all
what = What
everything = everything
# Below the entries that are shown, when there are more.
show-more = Show more
# Before the sentence that corrections stand apart. $count of entries.
entries-shown = { $count ->
        [one] 1 entry.
       *[other] { NUMBER($count) } entries.
    }
# A link to the settings, behind a warning.
to-the-export = To the export
