# What the settings say: units and clock, the journal and how it is kept, the garden, its vessels.

# How things are shown: units, clock, light.
shown = How things are shown
units = Units
clock = Clock
# A choice of the clock and of the light.
as-device = As the device
hours-24 = 24 hours, 18:05
hours-12 = 12 hours, 6:05{"\u00A0"}pm
clock-hint = Fields in which a time is entered are drawn by the browser and follow the device.
light = Light
bright-sun = Bright sun
dark = Dark

# The journal, exporting and importing it.
your-journal = Your journal
never-exported = Never exported.
# $ago: "just now", "3 hours ago", "on 1 May 2026".
exported = Last exported { $ago }.
export = Export the journal
# "Its": of the journal.
export-pictures = Export its pictures
pictures-hint = Pictures are large and have a file of their own. Import both files to have everything again, in either order.
import = Import a file
import-hint = A journal or its pictures, as they were exported, of at most 256{"\u00A0"}MiB. You see what a journal holds before anything is taken in.
# A file is being read.
reading = Reading…
file-holds = What the file holds
# The two buttons below what a file holds: take it into the journal, or leave it alone.
take-in = Take in
leave-it = Leave it
pictures-cut = Some lines of this file hold no picture and were left out: it was cut or changed.
taken-in = { $count ->
        [one] Taken in: 1 entry.
       *[other] Taken in: { NUMBER($count) } entries.
    }
pictures-taken-in = { $count ->
        [one] Taken in: 1 picture.
       *[other] Taken in: { NUMBER($count) } pictures.
    }
pictures-missing = { $count ->
        [one] 1 picture of the journal is not on this device, so it is not in the file.
       *[other] { NUMBER($count) } pictures of the journal are not on this device, so they are not in the file.
    }

# The button that asks the browser for a promise to keep the journal, and why.
keep = Keep this journal
keep-why = When a device runs short of room, a browser may clear what pages keep. It can promise to spare this journal; some browsers ask you first.
keep-refused = The browser made no promise this time. It is more willing once the page is on your home screen or has been used for some days. Until then, export the journal now and then.
what-clears = What could clear this journal
# The words in quotation marks here and below are those of browsers and devices in this language.
clearer-website-data = Clearing “website data” or “history and website data” in the browser's settings.
clearer-seven-days = Safari on iPhone, iPad and Mac: a page in a tab loses what it keeps after seven days of browsing without a visit to it. A page on the home screen or in the Dock is spared.
clearer-private-window = A private window: it forgets everything when it is closed.
clearer-nearly-full = A device that is nearly full, as long as the browser has not promised to keep the journal.

# Heading; the button below it, install, follows on from it.
on-the-home-screen = On the home screen
is-installed = This page runs from your home screen or as a program of its own.
install-hint = There the page opens without a signal, has no address bar, and its journal is spared longest.
install = Put it there
install-iphone = iPhone and iPad, in Safari: the Share button, then “Add to Home Screen”.
install-android = Android: the browser's menu, then “Install” or “Add to Home screen”.
install-computer = Computer: the install sign in the address bar, or in Safari “Add to Dock” in the File menu.

# Versions of this page.
this-version = Version of the page
version = This is Heapwright{"\u00A0"}{ $version }.
update-waits = A new version is here and waits. It takes over when you say so, or at the next start once all tabs of the page were closed.
update-take = Use the new version
update-form = Something is being entered. Save it or close the form first: the new version waits.
update-look = Look for a new version
update-looking = Looking…
update-none = This is the newest version there is.
update-no-signal = No signal: try again when there is one.

# $used, $most: such as "3.1 MB".
room = The page and its journal use { $used } of the { $most } that the browser allows them.
kilobytes = { $number }{"\u00A0"}kB
megabytes = { $number }{"\u00A0"}MB
gigabytes = { $number }{"\u00A0"}GB

# The garden and its place.
your-garden = Your garden
place-why = From its place the page knows the usual weather, which the days ahead of a heap are computed with. It goes into your journal and nowhere else.
place-not-known = The journal does not say where the garden lies; a usual temperate place stands in.
# $latitude, $longitude: degrees without a sign; $north, $east: the half of the globe.
place = { $north ->
        [north] { $east ->
            [east] The garden lies at { $latitude }°{"\u00A0"}N, { $longitude }°{"\u00A0"}E.
           *[west] The garden lies at { $latitude }°{"\u00A0"}N, { $longitude }°{"\u00A0"}W.
        }
       *[south] { $east ->
            [east] The garden lies at { $latitude }°{"\u00A0"}S, { $longitude }°{"\u00A0"}E.
           *[west] The garden lies at { $latitude }°{"\u00A0"}S, { $longitude }°{"\u00A0"}W.
        }
    }
describe-garden = Describe the garden
save-garden = Save the garden
# Labels and hints of the fields.
garden-name = Name of the garden
garden-name-hint = May be left empty.
latitude = Latitude, degrees
latitude-hint = As maps show it, such as 52.4. South of the equator below zero. One decimal is enough.
longitude = Longitude, degrees
longitude-hint = Such as 13.1. West of Greenwich below zero.
# $label: of the field whose sign the key turns.
other-sign = Above or below zero, { $label }
elevation-metres = Height above the sea, m
elevation-feet = Height above the sea, ft
elevation-hint = May be left empty: then sea level.
coldest-month-celsius = Coldest month, °C
coldest-month-fahrenheit = Coldest month, °F
warmest-month-celsius = Warmest month, °C
warmest-month-fahrenheit = Warmest month, °F
months-hint = May be left empty. Your own figure, if the usual one for the place misses.
place-needs-both = Give both latitude and longitude, or neither.
nothing-of-garden = Enter a name, or latitude and longitude.

# The vessels, weighed in three steps.
your-vessels = Your vessels
vessels-why = Amounts are told in buckets and barrows. Weighed once, yours count for what they hold. A scale for luggage or fish will do.
weigh = Weigh a vessel
# Closes a form without keeping anything; other sentences name this button.
not-now = Not now
next = Next
back = Back
which-vessel = Which vessel?
step-empty = Step 1 of 3: weigh it empty
step-empty-how = Hang or stand it on the scale as it is, dry and with nothing in it.
step-water = Step 2 of 3: weigh it full of water
step-water-how = Fill it to the brim and weigh it. A litre of water weighs a kilogram, so the scale tells what it holds.
step-water-heavy = Too heavy for the scale? Pour it full from a vessel that you know, and enter what it holds.
step-material = Step 3 of 3: weigh a material in it
# "Yours": the material.
step-material-how = Fill it as you usually do, with something you often have, and weigh it. This tells how heavy yours is. You can also stop here.
which-material = What is in it?
# "It" is the vessel.
save-volume = Save what it holds
save-density = Save this weighing
# Opens a field for those who need not weigh.
known-volume = I know what it holds
not-heavier = Full must weigh more than empty: check both weights and the unit they are in.
no-material = Choose what is in the vessel first.
no-weight = Enter a weight, such as 0.8.
no-volume = Enter what it holds, such as 12.
empty-kilograms = Weight empty, kg
empty-pounds = Weight empty, lb
water-kilograms = Weight full of water, kg
water-pounds = Weight full of water, lb
full-kilograms = Weight full, kg
full-pounds = Weight full, lb
holds-litres = It holds, litres
holds-gallons = It holds, US gallons
# $volume: such as "12 L".
holds = It holds { $volume }.
# Beside what a vessel was found to hold, when that is far from the usual. $volume: such as "10 L".
vessel-unusual = Such a vessel usually holds about { $volume }: check the figures.
density-kilograms = That is { $density }{"\u00A0"}kg in a cubic metre.
density-pounds = That is { $density }{"\u00A0"}lb in a cubic yard.
# Beside the name of a vessel. $day: a date.
vessel-found = { $volume }, found on { $day }
vessel-usual = { $volume }, as is usual
# Calibrations from before journals kept them, and the button that puts them there.
only-here = These were typed on this device and are not in your journal yet.
into-journal = Put them into the journal

# The aim of the balance.
the-aim = The aim
start-again = Start the balance again with the example

language = Language
# Each language calls itself by its own name.
english = English
german = Deutsch
language-hint = Choosing another loads the page anew. Your journal stays as you wrote it.
use-language = Use this language
language-entering = Log or empty what you are entering first: loading the page anew would lose it.
language-not-kept = This browser keeps nothing for the page, so the language stays that of the device.
