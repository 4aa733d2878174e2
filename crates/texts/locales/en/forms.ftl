# Fields that many forms share, and an entry with what can be done about it.

# Label of a field for a day and a time.
when = When
now-if-empty = Now, if left empty.

# An entry. $entry: its line; $time: "18:05", with the day before it where that is not said above.
day-and-time = { $day }, { $time }
entry-at = { $entry }, { $time }
# Behind the time of an entry whose time was corrected, and behind one that was taken back.
corrected = (corrected)
taken-back = (taken back)
# Buttons, and their names for those who hear the page. $entry: the message entry-at.
take-back = Take back
take-back-entry = Take back: { $entry }
bring-back-entry = Bring back: { $entry }
correct-the-time = Correct the time
correct-the-time-of-entry = Correct the time: { $entry }
# A field, and the button below it.
when-in-truth = When it was in truth
correct = Correct
picture-of-note = Picture of this note

# A control, where several have the same words: "Look, Bin 1". $words are seen, the rest is heard alone; $name: what it is for.
control-of = { $words }, { $name }
# A row of a list: "Autumn leaves, dry: 6 buckets". $name stands out; $said: an amount, or a word or two.
name-and-said = { $name }: { $said }
