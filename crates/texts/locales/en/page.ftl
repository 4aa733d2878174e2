# What the whole page says: the names of its places, the balance, what is told of the journal and of files.

# The name of the program; it stays as it is.
name = Heapwright

# Names of the places, at the foot of the page and as titles.
today = Today
heaps = Heaps
logbook = Logbook
settings = Settings
# Makes the page legible in bright sun; the settings say the same.
bright-sun = Bright sun

# The balance: what to put with what is about to be fed. Its title:
balance = Balance a feed
# Heading of what is about to be fed.
in-hand = In hand
in-hand-hint = Tap what you have. Tap again for one more.
empty-hand = Nothing in hand yet. Tap what you have.
# Heading of what may be added; "it" is what is in hand.
in-reach = In reach
in-reach-hint = What may go with it. Untick what you will not use today.
water = Water from a can
# Heading of the answer; "it" is what is in hand.
answer = What to put with it
# Heading of the other recipes.
ways = Other ways
map = Mix map
map-table = The map as a table
# Heading of the figures of the mixture.
figures = The mixture
# Heading of the cautions.
cautions = Take care
# Label of a search, its hint, and what is said when it finds nothing.
find = Find another material
find-hint = Type what you call it, such as peelings or sawdust.
find-nothing = Nothing is called that. Try a plainer word.
undo = Undo
clear = Clear all
# The stores with which the balance begins before anything is put by.
example = Example stores, invented
# Opens where a figure comes from; in a list the name of the figure follows after a comma.
sources = Sources
# Follows the sentence that says what is wrong with an amount.
not-counted = Not counted until this is mended.
mend-first = Mend or remove what is marked first.
# "It" is the feed that the balance shows.
log-feed-hint = It goes into the heap's log as it stands above, with what the answer adds.

# The invented garden for looking around: its banner, and the links into it and out of it.
demo = Demo garden, invented
demo-told = This garden is invented. Try what you like: nothing here is kept, and your own journal is left as it is.
demo-leave = Leave the demo garden
demo-enter = Look around in an invented garden
no-demo = The invented garden is not on this device yet: open it once with a signal.

# Empty places.
no-heaps = No heap yet. Start one, and everything you do to it is kept in a journal on this device.
no-such-heap = This heap is not in the journal of this device.
opening = Opening the journal…
no-entries = Nothing logged yet.
# "It" is the heap.
nothing-in = Nothing has gone in yet. Feed it, and its figures stand here.
emptied = All that went in was taken out again.

# The logbook. The line of the other version follows.
conflict = Two versions of this entry came; both are kept. The other says:
# Below a count of entries, which does not count corrections.
corrections-apart = Corrections stand under their own kinds.

# How long the browser keeps the journal.
may-be-lost = The browser may clear this journal when the device runs short of room. Install the page or export the journal now and then.
lasts = The browser promised to keep this journal until you remove it.
export-due = This journal is on this device only. Export it and keep the file somewhere else.
cleared = The browser has cleared the journal on this device. It is still on this page: export it now, or log anything, and it is written back. If you cleared it on purpose, close this page.

# What is wrong with a file or with what was entered.
file-not-read = This file could not be read: choose a journal of at most 256 MiB.
picture-not-read = This picture could not be read: choose another, or log the note without it.
file-cut = The file is cut or was changed: it does not hold what its first line says. What is left of it can be taken in.
file-headless = The file has no first line that says how much it holds, so that nobody can tell whether it is whole.
other-garden = This seems to be the journal of another garden: it shares no entry with yours. Taking it in mixes the two.
nothing-new = Nothing in this file is new.
no-number = Enter a number, such as 58 or 3.5.
no-time = Enter a day and a time that are past.
# Of the shape of a heap.
shape-needs-size = Give shape, width and height of what it stands in, or none of them.
# A key beside a temperature; it turns the sign.
below-zero = Below zero
harvest-amount-hint = May be left out. With it, the page learns how much compost your heaps become.
nothing-read = Enter or tick at least one thing that you saw.

# The units, as a choice.
units-metric = Kilograms and litres
units-us = Pounds and US gallons

# Names of the figures of a mixture, and what each means.
figure-carbon-to-nitrogen = C:N
figure-moisture = Moisture
figure-free-air-space = Air space
figure-mass = Mass
figure-volume = Volume
meaning-carbon-to-nitrogen = Kilograms of carbon for each kilogram of nitrogen in the dry matter: low is green, high is brown.
meaning-moisture = The share of the mass that is water.
meaning-free-air-space = The share of the volume that neither water nor solids fill, where air can move.
meaning-mass = The mass as it lies, water and all.
meaning-volume = The volume as it is tipped out, before it settles.

# Heads of the table of what each part of a mixture gives to a figure. First the part's own value:
own-carbon-to-nitrogen = its C:N
own-moisture = its moisture
own-density = its density, kg/m³
# Then the part's share, such as 57 %, of what counts for the figure:
share-of-nitrogen = of the nitrogen
share-of-water = of the water
share-of-volume = of the volume
share-of-mass = of the mass

# $chance: "nearly certain", "about 6 in 10".
chance = Chance to lie within all aims, with all that is uncertain: { $chance }.

# The map in words, for those who do not see it. $aim: the sentence map-aim. Ratios are C:N.
map-aim = The good region is C:N { $ratio-low } to { $ratio-high }, moisture { $moisture-low } to { $moisture-high }.
map-empty = There is no mixture on the map yet. { $aim }
map-mixture = The mixture is at C:N { $ratio }, moisture { $moisture }. { $aim }
map-mixture-and-hand = The mixture is at C:N { $ratio }, moisture { $moisture }; what is in hand alone at C:N { $hand-ratio }, moisture { $hand-moisture }. { $aim }

# A count of entries of the journal, by itself.
entries = { $count ->
        [one] 1 entry
       *[other] { NUMBER($count) } entries
    }
journal-size = { $count ->
        [one] 1 entry on this device.
       *[other] { NUMBER($count) } entries on this device.
    }

# The browser has cleared the journal; $count entries were in it. "It" is the file.
gone = { $count ->
        [one] This browser had a journal of 1 entry and has cleared it. { -import-your-file }
       *[other] This browser had a journal of { NUMBER($count) } entries and has cleared it. { -import-your-file }
    }
-import-your-file = If you have an exported file, import it: that brings back what it holds.

# The journal was written back after the browser had cleared it.
put-back = { $count ->
        [one] The browser had cleared the journal on this device. It was written back from this page: 1 entry. { -pictures-are-lost }
       *[other] The browser had cleared the journal on this device. It was written back from this page: { NUMBER($count) } entries. { -pictures-are-lost }
    }
-pictures-are-lost = Pictures cannot be: import them, if you exported them. Export the journal now.
# Some entries could not be written back; $put-back: the message above.
put-back-in-part = { $lost ->
        [one] { $put-back } Missing: 1 entry that only a newer version understands; import your last file to have them again.
       *[other] { $put-back } Missing: { NUMBER($lost) } entries that only a newer version understands; import your last file to have them again.
    }

# Damage of the journal. $first: the number of the first place that is damaged; $places: whether it is the only one.
damage-order = { $places ->
        [single] Some entries stand out of order in the journal on this device (number { NUMBER($first) }). { -all-others-are-here }
       *[several] Some entries stand out of order in the journal on this device (from number { NUMBER($first) }). { -all-others-are-here }
    }
damage-changed = { $places ->
        [single] 1 entry has changed in the journal on this device and is left out (number { NUMBER($first) }). { -all-others-are-here }
       *[several] { $changed ->
            [one] 1 entry has changed in the journal on this device and is left out (from number { NUMBER($first) }). { -all-others-are-here }
           *[other] { NUMBER($changed) } entries have changed in the journal on this device and are left out (from number { NUMBER($first) }). { -all-others-are-here }
        }
    }
damage-missing = { $places ->
        [single] Entries are missing from the journal on this device (number { NUMBER($first) }). { -all-others-are-here }
       *[several] Entries are missing from the journal on this device (from number { NUMBER($first) }). { -all-others-are-here }
    }
damage-missing-and-changed = { $changed ->
        [one] Entries are missing from the journal on this device, and 1 more has changed (from number { NUMBER($first) }). { -all-others-are-here }
       *[other] Entries are missing from the journal on this device, and { NUMBER($changed) } more have changed (from number { NUMBER($first) }). { -all-others-are-here }
    }
-all-others-are-here = All others are here. { -import-your-file }

# What a file would bring, a line each. The first is always there; the next count entries of the file.
file-holds = { $count ->
        [one] The file holds 1 entry: { NUMBER($new) } new, { NUMBER($known) } known already.
       *[other] The file holds { NUMBER($count) } entries: { NUMBER($new) } new, { NUMBER($known) } known already.
    }
file-conflicts = { $count ->
        [one] 1 is here with other content; both versions will be kept.
       *[other] { NUMBER($count) } are here with other content; both versions will be kept.
    }
# $kinds: words of the file format, in a row.
file-not-understood = { $count ->
        [one] 1 comes from a newer version ({ $kinds }): kept and passed on, not shown in full.
       *[other] { NUMBER($count) } come from a newer version ({ $kinds }): kept and passed on, not shown in full.
    }
file-ahead = { $count ->
        [one] 1 is dated more than a day ahead of this device's clock.
       *[other] { NUMBER($count) } are dated more than a day ahead of this device's clock.
    }
# The lines follow, each with what is wrong with it.
file-faults = { $count ->
        [one] 1 line cannot be used and will be left out:
       *[other] { NUMBER($count) } lines cannot be used and will be left out:
    }
