# What cannot be used, and what to do instead, where only the command line asks so far.

# A part of a list such as "2 buckets grass, 1 mug coffee grounds"; stands for $amount in refusals.ftl.
amount-of-part = Part { NUMBER($part) }, “{ $text }”,
list-is-empty = The list is empty: write parts such as 2 buckets grass, 1 mug coffee grounds.
list-is-too-long = The list is too long: write at most 20000 characters.
list-has-too-many-parts = The list has too many parts: write at most 200.
part-without-name = Part { NUMBER($part) }, “{ $text }”, does not say of what: write such as 2 buckets grass.
part-with-several-amounts = Part { NUMBER($part) }, “{ $text }”, has several amounts: write a comma between the parts.
part-with-amount-inside = Part { NUMBER($part) }, “{ $text }”, has its amount between words: write it first, such as 2 buckets grass.
# $refusal: one of the messages on a part of a mix in refusals.ftl.
part-of-list-refused = Part { NUMBER($part) }, “{ $text }”: { $refusal }

# A figure of an entry that cannot be, in words and with its unit. $figure: the last step of its field, by which the words are chosen; $field: the whole field as in refusals.ftl.
figure-of-entry-outside = { $figure ->
        [air_temperature_c] The temperature of the air must be from { $least } to { $most }{"\u00A0"}°C.
        [ammonium_nitrogen_mg_kg_dry] The nitrogen in ammonium must be from { $least } to { $most }{"\u00A0"}mg/kg.
        [area_m2] The area must be from { $least } to { $most }{"\u00A0"}m².
        [ash_pct_dry] The ash must be from { $least } to { $most }{"\u00A0"}%.
        [bulk_density_kg_m3] The bulk density must be from { $least } to { $most }{"\u00A0"}kg/m³.
        [bytes] The size of the picture must be from { $least } to { $most }{"\u00A0"}bytes.
        [calcium_pct_dry] The calcium must be from { $least } to { $most }{"\u00A0"}%.
        [carbon_dioxide_mg_g_d] The carbon dioxide must be from { $least } to { $most }{"\u00A0"}mg/g a day.
        [carbon_pct_dry] The carbon must be from { $least } to { $most }{"\u00A0"}%.
        [cn_ratio_measured] C:N must be from { $least } to { $most }.
        [coldest_month_c] The temperature of the coldest month must be from { $least } to { $most }{"\u00A0"}°C.
        [conductivity_ds_m] The conductivity must be from { $least } to { $most }{"\u00A0"}dS/m.
        [control_root_mm] The length of the roots of the control must be from { $least } to { $most }{"\u00A0"}mm.
        [control_sprouted] The number of seeds of the control that sprouted must be from { $least } to { $most }.
        [days] The time in the bag must be from { $least } to { $most }{"\u00A0"}days.
        [depth_m] The depth must be from { $least } to { $most }{"\u00A0"}m.
        [dry_kg] The weight of the dried sample must be from { $least } to { $most }{"\u00A0"}kg.
        [elevation_m] The height above the sea must be from { $least } to { $most }{"\u00A0"}m.
        [empty_kg] The weight of the empty vessel must be from { $least } to { $most }{"\u00A0"}kg.
        [fill_pct] How full it is must be from { $least } to { $most }{"\u00A0"}%.
        [full_kg] The weight of the full vessel must be from { $least } to { $most }{"\u00A0"}kg.
        [height_m] The height must be from { $least } to { $most }{"\u00A0"}m.
        [height_px] The height of the picture must be from { $least } to { $most }{"\u00A0"}pixels.
        [highest_c] The highest temperature must be from { $least } to { $most }{"\u00A0"}°C.
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
        [room_c] The temperature of the room must be from { $least } to { $most }{"\u00A0"}°C.
        [root_mm] The length of the roots must be from { $least } to { $most }{"\u00A0"}mm.
        [share_pct] The share must be from { $least } to { $most }{"\u00A0"}%.
        [sieve_mm] The mesh of the sieve must be from { $least } to { $most }{"\u00A0"}mm.
        [sodium_pct_dry] The sodium must be from { $least } to { $most }{"\u00A0"}%.
        [sprouted] The number of seeds that sprouted must be from { $least } to { $most }.
        [temperature_c] The temperature must be from { $least } to { $most }{"\u00A0"}°C.
        [volume_l] What the vessel holds must be from { $least } to { $most }{"\u00A0"}L.
        [warmest_month_c] The temperature of the warmest month must be from { $least } to { $most }{"\u00A0"}°C.
        [water_l] The water must be from { $least } to { $most }{"\u00A0"}L.
        [wet_kg] The weight of the sample must be from { $least } to { $most }{"\u00A0"}kg.
        [width_m] The width must be from { $least } to { $most }{"\u00A0"}m.
        [width_px] The width of the picture must be from { $least } to { $most }{"\u00A0"}pixels.
       *[something] { $field } must be from { $least } to { $most }.
    }

# Where a command or an option helps, which stay as they are. "heapwright: " stands before each.
no-readings = there is no reading of the core since the heap was last empty: write some down with `heapwright read --temperature "58 C core"`, or give a file with --csv.
no-such-depth = --depth: there is no reading at that depth: give one of the depths of the record.
no-beds = there is no bed to plan: describe one with `heapwright bed new NAME AREA`, or give beds in a file.
nothing-in-heap = nothing lies in this heap, as far as the journal tells: write down what goes in with `heapwright feed`.
