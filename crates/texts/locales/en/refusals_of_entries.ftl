# Why an entry cannot go into the journal, and what to do instead.
#
# A message that begins in lower case stands alone, where its first letter becomes a capital.
# $field: a field as in refusals.ftl; it begins the message.

no-such-heap = there is no such heap: start it first.
no-such-bed = there is no such bed: describe it first.
no-such-entry = there is no such entry: look it up in the log.
not-to-be-corrected = a correction is not corrected: correct the entry itself again.
in-the-future = this lies in the future: give a time that is past.
not-understood = a newer version made this: use that one to change it.
too-long-for-one-entry = this is too long for one entry: make two of it.

outside = { $field } must be from { $least } to { $most }.
above = { $field } must be at most { $most }.
not-above-0 = { $field } must be above 0.
count-of-list = { $field } must hold { NUMBER($least) } to { NUMBER($most) }, not { NUMBER($count) }.
must-not-be-empty = { $field } must not be empty.
too-many-characters = { $field } must have at most { NUMBER($most) } characters, not { NUMBER($count) }.
control-characters = { $field } must not hold control characters.
no-test = { $field } must come with a test.
nothing-read = { $field } must come with something that was read.
no-measurement = { $field } must come with a measurement.
material-or-custom = { $field } must have either a material or a custom one.
# $field: the heap to which another is moved.
same-heap = { $field } must be another heap.
not-an-id = { $field } must be 1 to 60 lower-case letters, digits and underscores.
not-in-order = { $field } must be low, typical and high.
not-a-digest = { $field } must be 64 hexadecimal digits.
not-a-picture = { $field } must be image/jpeg, image/png or image/webp.
# $detail: what the reader of JSON says, in English in every language.
cannot-be-applied = { $field } cannot be applied (“{ $detail }”).

not-a-moment = must be a time with its offset from UTC in the years 1900 to 2199, like 2026-05-01T18:00:00+02:00.

# A line of a file that is taken in.
line-too-long = line { NUMBER($line) } has { NUMBER($bytes) } bytes; an event has at most { NUMBER($most) }.
line-not-text = line { NUMBER($line) } is not text in UTF-8.
line-of-newer-file = line { NUMBER($line) } says that a newer version made this file: take it in with that one.
line-without-braces = line { NUMBER($line) } is no event: it does not stand in braces.
line-without-kind = line { NUMBER($line) } is no event: its kind is no word.
line-cut-off = line { NUMBER($line) } is no event: it is cut off.
# $sign: which sign of the line, counted from 1; $detail: what the reader of JSON says, in English in every language.
line-no-json = line { NUMBER($line) } is no event: its sign { NUMBER($sign) } makes it no JSON (“{ $detail }”).
line-without-field = line { NUMBER($line) } is no event: a field is missing or cannot be as it is (“{ $detail }”).
