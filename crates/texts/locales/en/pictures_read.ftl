# Words in pictures of a heap and below them, and what is read off a picture day by day.

# What is done to a heap, in a word below a picture.
doing-fed = fed
doing-turned = turned
doing-watered = watered
doing-covered = covered
doing-taken-out = taken out

# The present, at an axis of days.
now = now
# For those who reach the picture with keys.
how-to-read = Arrow keys move from day to day, Page Up and Page Down by a week, Home and End to the ends.
day-before = A day earlier
day-after = A day later
# Head of a column of a table.
done-head = Done and read
# What the ring around the cloud of the mix map means.
nine-of-ten-draws = nine of ten draws
# $value: one of the values below, such as "Core temperature".
picture-name = { $value } over time
# A date at an axis, as short as it can be. $month: short name of the month.
short-date = { NUMBER($day) }{"\u00A0"}{ $month }
# What a probe showed, in a table and in a picture.
probe-showed = probe { $temperature }
temperature-read = { $temperature } read
# A day of a picture of one run, and of many runs. $half and $nine are ranges such as "50 to 57".
day-read = { $day }: { $value }.
day-read-of-many = { $day }: { $value } likely; half of the runs { $half }, nine of ten { $nine }.
# $done: a row such as "fed, probe 47 °C".
done-on-the-day = Done and read on this day: { $done }.

# Values of the heap over time.
value-core-temperature = Core temperature
value-moisture = Moisture
value-lowest-oxygen = Lowest oxygen
value-volume = Volume
# Lines across the picture: above or below them it goes wrong.
mark-hot = hot from here
mark-too-dry = too dry below
mark-too-wet = too wet above
mark-short-of-air = short of air below
# The key. $plan: a way to go on, such as "Turn today".
key-middle = { $plan }: middle of the runs
key-half = half of the runs
key-nine-of-ten = nine of ten runs
key-reading = what your probe showed
# Heads of the table. $unit: "°C".
head-day = Day
head-middle = Middle, { $unit }
head-half = Half of the runs
head-nine-of-ten = Nine of ten runs
range = { $low } to { $high }

# What the heap cut open shows.
field-temperature = Temperature
field-moisture = Moisture
field-oxygen = Oxygen
# Heads of the table of readings beside what was computed.
head-where = Where
head-probe = Probe
head-computed = Core as computed
place-not-told = not told

# The rim of the mix map.
map-moisture = moisture, %
map-green = green
map-brown = brown
map-wet = wet
map-dry = dry
map-nine-of-ten = 9 of 10
