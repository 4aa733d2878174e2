# Was sich nicht verwenden lässt, und was stattdessen geht, wo bisher nur die Befehlszeile fragt.

amount-of-part = Teil { NUMBER($part) }, „{ $text }“,
list-is-empty = Die Liste ist leer: Schreib Teile wie 2 Eimer Rasenschnitt, 1 Becher Kaffeesatz.
list-is-too-long = Die Liste ist zu lang: Schreib höchstens 20000 Zeichen.
list-has-too-many-parts = Die Liste hat zu viele Teile: Schreib höchstens 200.
part-without-name = Teil { NUMBER($part) }, „{ $text }“, sagt nicht, wovon: Schreib es wie 2 Eimer Rasenschnitt.
part-with-several-amounts = Teil { NUMBER($part) }, „{ $text }“, enthält mehrere Mengen: Setz ein Komma zwischen die Teile.
part-with-amount-inside = Teil { NUMBER($part) }, „{ $text }“, hat die Menge mitten im Text: Schreib sie zuerst, wie 2 Eimer Rasenschnitt.
part-of-list-refused = Teil { NUMBER($part) }, „{ $text }“: { $refusal }

figure-of-entry-outside = { $figure ->
        [air_temperature_c] Gib für die Lufttemperatur { $least } bis { $most }{"\u00A0"}°C an.
        [ammonium_nitrogen_mg_kg_dry] Gib für den Ammoniumstickstoff { $least } bis { $most }{"\u00A0"}mg/kg an.
        [area_m2] Gib für die Fläche { $least } bis { $most }{"\u00A0"}m² an.
        [ash_pct_dry] Gib für die Asche { $least } bis { $most }{"\u00A0"}% an.
        [bulk_density_kg_m3] Gib für die Schüttdichte { $least } bis { $most }{"\u00A0"}kg/m³ an.
        [bytes] Gib für die Größe des Bilds { $least } bis { $most }{"\u00A0"}Byte an.
        [calcium_pct_dry] Gib für das Kalzium { $least } bis { $most }{"\u00A0"}% an.
        [carbon_dioxide_mg_g_d] Gib für das Kohlendioxid { $least } bis { $most }{"\u00A0"}mg/g am Tag an.
        [carbon_pct_dry] Gib für den Kohlenstoff { $least } bis { $most }{"\u00A0"}% an.
        [cn_ratio_measured] Gib für C:N { $least } bis { $most } an.
        [coldest_month_c] Gib für die Temperatur des kältesten Monats { $least } bis { $most }{"\u00A0"}°C an.
        [conductivity_ds_m] Gib für die Leitfähigkeit { $least } bis { $most }{"\u00A0"}dS/m an.
        [control_root_mm] Gib für die Wurzellänge in der Kontrolle { $least } bis { $most }{"\u00A0"}mm an.
        [control_sprouted] Gib für die in der Kontrolle gekeimten Samen { $least } bis { $most } an.
        [days] Gib für die Zeit im Beutel { $least } bis { $most }{"\u00A0"}Tage an.
        [depth_m] Gib für die Tiefe { $least } bis { $most }{"\u00A0"}m an.
        [dry_kg] Gib für das Gewicht der getrockneten Probe { $least } bis { $most }{"\u00A0"}kg an.
        [elevation_m] Gib für die Höhe über dem Meer { $least } bis { $most }{"\u00A0"}m an.
        [empty_kg] Gib für das Gewicht des leeren Gefäßes { $least } bis { $most }{"\u00A0"}kg an.
        [fill_pct] Gib für die Füllung { $least } bis { $most }{"\u00A0"}% an.
        [full_kg] Gib für das Gewicht des vollen Gefäßes { $least } bis { $most }{"\u00A0"}kg an.
        [height_m] Gib für die Höhe { $least } bis { $most }{"\u00A0"}m an.
        [height_px] Gib für die Höhe des Bilds { $least } bis { $most }{"\u00A0"}Pixel an.
        [highest_c] Gib für die höchste Temperatur { $least } bis { $most }{"\u00A0"}°C an.
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
        [room_c] Gib für die Temperatur des Raums { $least } bis { $most }{"\u00A0"}°C an.
        [root_mm] Gib für die Wurzellänge { $least } bis { $most }{"\u00A0"}mm an.
        [share_pct] Gib für den Anteil { $least } bis { $most }{"\u00A0"}% an.
        [sieve_mm] Gib für die Maschenweite { $least } bis { $most }{"\u00A0"}mm an.
        [sodium_pct_dry] Gib für das Natrium { $least } bis { $most }{"\u00A0"}% an.
        [sprouted] Gib für die gekeimten Samen { $least } bis { $most } an.
        [temperature_c] Gib für die Temperatur { $least } bis { $most }{"\u00A0"}°C an.
        [volume_l] Gib für den Inhalt des Gefäßes { $least } bis { $most }{"\u00A0"}L an.
        [warmest_month_c] Gib für die Temperatur des wärmsten Monats { $least } bis { $most }{"\u00A0"}°C an.
        [water_l] Gib für das Wasser { $least } bis { $most }{"\u00A0"}L an.
        [wet_kg] Gib für das Gewicht der Probe { $least } bis { $most }{"\u00A0"}kg an.
        [width_m] Gib für die Breite { $least } bis { $most }{"\u00A0"}m an.
        [width_px] Gib für die Breite des Bilds { $least } bis { $most }{"\u00A0"}Pixel an.
       *[something] { $field }: Gib eine Zahl von { $least } bis { $most } an.
    }

no-readings = Seit der Haufen zuletzt leer war, gibt es keine Messung aus dem Kern: Trag welche mit `heapwright read --temperature "58 C core"` ein oder gib mit --csv eine Datei an.
no-such-depth = --depth: In dieser Tiefe gibt es keine Messung: Gib eine der Tiefen der Aufzeichnung an.
no-beds = Es gibt kein Beet zu planen: Beschreib eines mit `heapwright bed new NAME AREA` oder gib Beete in einer Datei an.
nothing-in-heap = In diesem Haufen liegt nichts, soweit das Journal es weiß: Trag mit `heapwright feed` ein, was hineinkommt.
