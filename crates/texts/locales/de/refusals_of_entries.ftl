# Warum ein Eintrag nicht ins Journal kann, und was stattdessen geht.

no-such-heap = Diesen Haufen gibt es nicht: Beginne ihn zuerst.
no-such-bed = Dieses Beet gibt es nicht: Beschreib es zuerst.
no-such-entry = Diesen Eintrag gibt es nicht: Such ihn im Logbuch.
not-to-be-corrected = Eine Berichtigung wird nicht selbst berichtigt: Berichtige den Eintrag noch einmal.
in-the-future = Das liegt in der Zukunft: Gib eine Zeit an, die vergangen ist.
before-journals = Das liegt vor { $year }: Gib einen Tag ab { $year } an.
not-understood = Das hat eine neuere Version geschrieben: Ändere es mit ihr.
too-long-for-one-entry = Das ist zu lang für einen Eintrag: Mach zwei daraus.

figure-of-entry-outside = { $figure ->
        [air_temperature_c] Gib für die Lufttemperatur { $least } bis { $most } an.
        [ammonium_nitrogen_mg_kg_dry] Gib für den Ammoniumstickstoff { $least } bis { $most }{"\u00A0"}mg/kg an.
        [area_m2] Gib für die Fläche { $least } bis { $most } an.
        [ash_pct_dry] Gib für die Asche { $least } bis { $most }{"\u00A0"}% an.
        [bulk_density_kg_m3] Gib für die Schüttdichte { $least } bis { $most } an.
        [bytes] Gib für die Größe des Bilds { $least } bis { $most }{"\u00A0"}Byte an.
        [calcium_pct_dry] Gib für das Kalzium { $least } bis { $most }{"\u00A0"}% an.
        [carbon_dioxide_mg_g_d] Gib für das Kohlendioxid { $least } bis { $most }{"\u00A0"}mg/g am Tag an.
        [carbon_pct_dry] Gib für den Kohlenstoff { $least } bis { $most }{"\u00A0"}% an.
        [cn_ratio] Gib für C:N { $least } bis { $most } an.
        [cn_ratio_measured] Gib für C:N { $least } bis { $most } an.
        [coldest_month_c] Gib für die Temperatur des kältesten Monats { $least } bis { $most } an.
        [conductivity_ds_m] Gib für die Leitfähigkeit { $least } bis { $most }{"\u00A0"}dS/m an.
        [control_root_mm] Gib für die Wurzellänge in der Kontrolle { $least } bis { $most }{"\u00A0"}mm an.
        [control_sprouted] Gib für die in der Kontrolle gekeimten Samen { $least } bis { $most } an.
        [days] Gib für die Zeit im Beutel { $least } bis { $most }{"\u00A0"}Tage an.
        [depth_m] Gib für die Tiefe { $least } bis { $most } an.
        [dry_kg] Gib für das Gewicht der getrockneten Probe { $least } bis { $most } an.
        [elevation_m] Gib für die Höhe über dem Meer { $least } bis { $most } an.
        [empty_kg] Gib für das Gewicht des leeren Gefäßes { $least } bis { $most } an.
        [fill_pct] Gib für die Füllung { $least } bis { $most }{"\u00A0"}% an.
        [full_kg] Gib für das Gewicht des vollen Gefäßes { $least } bis { $most } an.
        [height_m] Gib für die Höhe { $least } bis { $most } an.
        [height_px] Gib für die Höhe des Bilds { $least } bis { $most }{"\u00A0"}Pixel an.
        [highest_c] Gib für die höchste Temperatur { $least } bis { $most } an.
        [latitude_deg] Gib für den Breitengrad { $least } bis { $most }{"\u00A0"}Grad an.
        [longitude_deg] Gib für den Längengrad { $least } bis { $most }{"\u00A0"}Grad an.
        [magnesium_pct_dry] Gib für das Magnesium { $least } bis { $most }{"\u00A0"}% an.
        [moisture_pct] Gib für die Feuchte { $least } bis { $most }{"\u00A0"}% an.
        [nitrate_nitrogen_mg_kg_dry] Gib für den Nitratstickstoff { $least } bis { $most }{"\u00A0"}mg/kg an.
        [nitrogen_pct_dry] Gib für den Stickstoff { $least } bis { $most }{"\u00A0"}% an.
        [organic_matter_pct] Gib für den Humus { $least } bis { $most }{"\u00A0"}% an.
        [ph] Gib für den pH-Wert { $least } bis { $most } an.
        [phosphorus_mg_kg] Gib für den Phosphor { $least } bis { $most }{"\u00A0"}mg/kg an.
        [phosphorus_pct_dry] Gib für den Phosphor { $least } bis { $most }{"\u00A0"}% an.
        [potassium_mg_kg] Gib für das Kalium { $least } bis { $most }{"\u00A0"}mg/kg an.
        [potassium_pct_dry] Gib für das Kalium { $least } bis { $most }{"\u00A0"}% an.
        [room_c] Gib für die Temperatur des Raums { $least } bis { $most } an.
        [root_mm] Gib für die Wurzellänge { $least } bis { $most }{"\u00A0"}mm an.
        [share_pct] Gib für den Anteil { $least } bis { $most }{"\u00A0"}% an.
        [sieve_mm] Gib für die Maschenweite { $least } bis { $most }{"\u00A0"}mm an.
        [sodium_pct_dry] Gib für das Natrium { $least } bis { $most }{"\u00A0"}% an.
        [sprouted] Gib für die gekeimten Samen { $least } bis { $most } an.
        [temperature_c] Gib für die Temperatur { $least } bis { $most } an.
        [volume_l] Gib für den Inhalt des Gefäßes { $least } bis { $most } an.
        [warmest_month_c] Gib für die Temperatur des wärmsten Monats { $least } bis { $most } an.
        [water_l] Gib für das Wasser { $least } bis { $most } an.
        [wet_kg] Gib für das Gewicht der Probe { $least } bis { $most } an.
        [width_m] Gib für die Breite { $least } bis { $most } an.
        [width_px] Gib für die Breite des Bilds { $least } bis { $most }{"\u00A0"}Pixel an.
       *[something] { $field }: Gib eine Zahl von { $least } bis { $most } an.
    }

bound = { $unit ->
        [celsius] { $number }{"\u00A0"}°C
        [fahrenheit] { $number }{"\u00A0"}°F
        [centimetres] { $number }{"\u00A0"}cm
        [inches] { $number }{"\u00A0"}Zoll
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

above = { $field }: Gib höchstens { $most } an.
not-above-0 = { $field }: Gib mehr als 0 an.
count-of-list = { $field }: Gib { NUMBER($least) } bis { NUMBER($most) } an, nicht { NUMBER($count) }.
must-not-be-empty = { $field }: Hier muss etwas stehen.
too-many-characters = { $field }: Schreib höchstens { NUMBER($most) } Zeichen, nicht { NUMBER($count) }.
control-characters = { $field }: Lass die Steuerzeichen weg.
no-test = { $field }: Gib mindestens einen Test an.
nothing-read = { $field }: Gib mindestens eine Messung oder Beobachtung an.
no-measurement = { $field }: Gib mindestens eine Messung an.
material-or-custom = { $field }: Gib entweder ein Material oder ein eigenes an.
same-heap = { $field }: Wähle einen anderen Haufen.
not-an-id = { $field }: Schreib 1 bis 60 Kleinbuchstaben ohne Umlaute, Ziffern und Unterstriche.
not-in-order = { $field }: Gib den kleinsten, den üblichen und den größten Wert in dieser Reihenfolge an.
not-a-digest = { $field }: Gib 64 hexadezimale Ziffern an.
not-a-picture = { $field }: Nimm image/jpeg, image/png oder image/webp.
cannot-be-applied = { $field }: Das lässt sich nicht anwenden (der Leser von JSON sagt auf Englisch: “{ $detail }”).

not-a-moment = Gib eine Zeit mit ihrem Abstand zu UTC in den Jahren 1900 bis 2199 an, wie 2026-05-01T18:00:00+02:00.

line-too-long = Zeile { NUMBER($line) } hat { NUMBER($bytes) } Byte; ein Eintrag hat höchstens { NUMBER($most) }.
line-not-text = Zeile { NUMBER($line) } ist kein Text in UTF-8.
line-of-newer-file = Zeile { NUMBER($line) } sagt, dass eine neuere Version diese Datei gemacht hat: Nimm sie mit dieser auf.
line-without-braces = Zeile { NUMBER($line) } ist kein Eintrag: Sie steht nicht in geschweiften Klammern.
line-without-kind = Zeile { NUMBER($line) } ist kein Eintrag: Ihre Art (kind) ist kein Wort.
line-cut-off = Zeile { NUMBER($line) } ist kein Eintrag: Sie ist abgeschnitten.
line-no-json = Zeile { NUMBER($line) } ist kein Eintrag: Das { NUMBER($sign) }. Zeichen macht sie ungültig als JSON (der Leser von JSON sagt auf Englisch: “{ $detail }”).
line-without-field = Zeile { NUMBER($line) } ist kein Eintrag: Ein Feld fehlt oder darf so nicht sein (der Leser von JSON sagt auf Englisch: “{ $detail }”).
