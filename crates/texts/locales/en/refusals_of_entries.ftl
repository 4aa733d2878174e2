# Why an entry cannot go into the journal, and what to do instead.
#
# A message that begins in lower case stands alone, where its first letter becomes a capital.
# $field: a field as in refusals.ftl; it begins the message.

no-such-heap = there is no such heap: start it first.
no-such-bed = there is no such bed: describe it first.
no-such-entry = there is no such entry: look it up in the log.
not-to-be-corrected = a correction is not corrected: correct the entry itself again.
in-the-future = this lies in the future: give a time that is past.
# A day that was typed.
before-journals = this lies before { $year }: enter a day from { $year } on.
not-understood = a newer version made this: use that one to change it.
too-long-for-one-entry = this is too long for one entry: make two of it.

# A figure that cannot be, in words and with its unit. $figure: the last step of its field, by which the words are chosen; $field: the whole field; $most has the unit of the figure where keepers have theirs, such as "2000 cm".
figure-of-entry-outside = { $figure ->
        [air_temperature_c] The temperature of the air must be from { $least } to { $most }.
        [ammonium_nitrogen_mg_kg_dry] The nitrogen in ammonium must be from { $least } to { $most }{"\u00A0"}mg/kg.
        [area_m2] The area must be from { $least } to { $most }.
        [ash_pct_dry] The ash must be from { $least } to { $most }{"\u00A0"}%.
        [bulk_density_kg_m3] The bulk density must be from { $least } to { $most }.
        [bytes] The size of the picture must be from { $least } to { $most }{"\u00A0"}bytes.
        [calcium_pct_dry] The calcium must be from { $least } to { $most }{"\u00A0"}%.
        [carbon_dioxide_mg_g_d] The carbon dioxide must be from { $least } to { $most }{"\u00A0"}mg/g a day.
        [carbon_pct_dry] The carbon must be from { $least } to { $most }{"\u00A0"}%.
        [cn_ratio] C:N must be from { $least } to { $most }.
        [cn_ratio_measured] C:N must be from { $least } to { $most }.
        [coldest_month_c] The temperature of the coldest month must be from { $least } to { $most }.
        [conductivity_ds_m] The conductivity must be from { $least } to { $most }{"\u00A0"}dS/m.
        [control_root_mm] The length of the roots of the control must be from { $least } to { $most }{"\u00A0"}mm.
        [control_sprouted] The number of seeds of the control that sprouted must be from { $least } to { $most }.
        [days] The time in the bag must be from { $least } to { $most }{"\u00A0"}days.
        [depth_m] The depth must be from { $least } to { $most }.
        [dry_kg] The weight of the dried sample must be from { $least } to { $most }.
        [elevation_m] The height above the sea must be from { $least } to { $most }.
        [empty_kg] The weight of the empty vessel must be from { $least } to { $most }.
        [fill_pct] How full it is must be from { $least } to { $most }{"\u00A0"}%.
        [full_kg] The weight of the full vessel must be from { $least } to { $most }.
        [height_m] The height must be from { $least } to { $most }.
        [height_px] The height of the picture must be from { $least } to { $most }{"\u00A0"}pixels.
        [highest_c] The highest temperature must be from { $least } to { $most }.
        [latitude_deg] The latitude must be from { $least } to { $most }{"\u00A0"}degrees.
        [longitude_deg] The longitude must be from { $least } to { $most }{"\u00A0"}degrees.
        [magnesium_pct_dry] The magnesium must be from { $least } to { $most }{"\u00A0"}%.
        [moisture_pct] The moisture must be from { $least } to { $most }{"\u00A0"}%.
        [nitrate_nitrogen_mg_kg_dry] The nitrogen in nitrate must be from { $least } to { $most }{"\u00A0"}mg/kg.
        [nitrogen_pct_dry] The nitrogen must be from { $least } to { $most }{"\u00A0"}%.
        [organic_matter_pct] The organic matter must be from { $least } to { $most }{"\u00A0"}%.
        [ph] The pH must be from { $least } to { $most }.
        [phosphorus_mg_kg] The phosphorus must be from { $least } to { $most }{"\u00A0"}mg/kg.
        [phosphorus_pct_dry] The phosphorus must be from { $least } to { $most }{"\u00A0"}%.
        [potassium_mg_kg] The potassium must be from { $least } to { $most }{"\u00A0"}mg/kg.
        [potassium_pct_dry] The potassium must be from { $least } to { $most }{"\u00A0"}%.
        [room_c] The temperature of the room must be from { $least } to { $most }.
        [root_mm] The length of the roots must be from { $least } to { $most }{"\u00A0"}mm.
        [share_pct] The share must be from { $least } to { $most }{"\u00A0"}%.
        [sieve_mm] The mesh of the sieve must be from { $least } to { $most }{"\u00A0"}mm.
        [sodium_pct_dry] The sodium must be from { $least } to { $most }{"\u00A0"}%.
        [sprouted] The number of seeds that sprouted must be from { $least } to { $most }.
        [temperature_c] The temperature must be from { $least } to { $most }.
        [volume_l] What the vessel holds must be from { $least } to { $most }.
        [warmest_month_c] The temperature of the warmest month must be from { $least } to { $most }.
        [water_l] The water must be from { $least } to { $most }.
        [wet_kg] The weight of the sample must be from { $least } to { $most }.
        [width_m] The width must be from { $least } to { $most }.
        [width_px] The width of the picture must be from { $least } to { $most }{"\u00A0"}pixels.
       *[something] { $field } must be from { $least } to { $most }.
    }

# A bound that is shown in the keeper's units, with its unit. $number: such as "2000".
bound = { $unit ->
        [celsius] { $number }{"\u00A0"}°C
        [fahrenheit] { $number }{"\u00A0"}°F
        [centimetres] { $number }{"\u00A0"}cm
        [inches] { $number }{"\u00A0"}in
        [metres] { $number }{"\u00A0"}m
        [feet] { $number }{"\u00A0"}ft
        [square-metres] { $number }{"\u00A0"}m²
        [square-feet] { $number }{"\u00A0"}sq{"\u00A0"}ft
        [litres] { $number }{"\u00A0"}L
        [gallons] { $number }{"\u00A0"}gal
        [kilograms] { $number }{"\u00A0"}kg
        [pounds] { $number }{"\u00A0"}lb
        [kilograms-in-cubic-metre] { $number }{"\u00A0"}kg/m³
       *[pounds-in-cubic-yard] { $number }{"\u00A0"}lb/cu{"\u00A0"}yd
    }

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
