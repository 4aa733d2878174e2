# What the page says around the needs of a day: headings, buttons, empty places.

no-heaps = No heap yet. Start one, and this page says each day what it needs and why.
start-a-heap = Start a heap
# A link to the balance; its title is the same.
balance-first = Balance a feed
looking = Looking through the journal…
# Below a line that says that nothing is needed; "its day" is the heap's.
nothing-needed-more = Feed a heap when you have something, and look in when its day comes.
# Heading of what is needed, for those who do not see it.
needed = What needs doing
# Opens the reasons after the first.
more-reasons = More reasons
all-heaps = All heaps

# Buttons of what is needed.
read-heat = Write the temperature down
# Opens the form of what was seen in a heap.
look = Write down what you find
open-the-heap = Open the heap
to-feed = Feed the heap
to-the-heap = Go to the heap
to-harvest = Log the harvest
to-test = Test the compost
to-the-stores = Go to the stores
# On the button of what was logged just now.
logged = Logged

# A temperature may be logged whatever the day asks; then the heap must be chosen.
log-temperature = Log a temperature
which-heap = Choose the heap you have read.
# Back to what the day asks.
to-the-day = What needs doing today

reminders = Reminders
reminders-hint = The page has no server that could wake your device, so it cannot remind you on time while it is closed. A calendar can: take what has a day as a file and open it in yours. Take it again when the plan has changed: a calendar then moves what it has and doubles nothing.
nothing-dated = Nothing has a day yet.
# The button that writes the calendar.
to-calendar = Dates for your calendar

# Reminders that the browser shows, by what it can do.
remind-me = Remind me on this device
remind-not-here = This browser cannot show reminders.
remind-denied = The browser does not let this page show reminders: allow notifications for it in the browser's settings, then load the page again.
remind-closed = This device shows you what is due, from nine in the morning; while the page is closed, whenever the browser comes round to it, which may be late.
remind-open = This device shows you what is due, from nine in the morning, while Today is open on it. At other times only your calendar can.
stop-reminding = Stop reminding
