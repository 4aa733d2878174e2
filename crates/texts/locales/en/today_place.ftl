# Today: what each heap needs.

# Puts what is needed aside until tomorrow; $need: "Turn Bin 1".
not-today = Not today
not-today-of = Not today: { $need }
# Heading of what was put aside, what becomes of it, and the way back of each.
put-aside = Put aside for today
put-aside-hint = On this device, until tomorrow. What becomes urgent comes back by itself.
bring-back-need = Bring back: { $need }
# Above vessels whose size was typed before journals kept it, with the button that puts them there.
vessels-not-known = Until your journal has what your vessels hold, Today counts them as the usual ones.
# Above a button that logs a feed: what one tap writes down. $entry: a line of the logbook.
writes-down = One tap writes down: { $entry }
